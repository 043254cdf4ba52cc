"""Trims: profiles of legs, bends and hems, bend rules, flat patterns, mitres, tapers, blanks, and what the brake needs."""

from __future__ import annotations

from ._start import open_room

open_room("trim")
from ._seamwright.trim import (
    Bend,
    BendFigures,
    BendFound,
    BendLines,
    BendOrder,
    BendRule,
    BendSize,
    BlankBend,
    BlankEdge,
    BlankPlan,
    Chain,
    Course,
    Deduction,
    DeductionTable,
    DinFactor,
    DinMinimumRadius,
    DrawnTrim,
    Edge,
    EndFold,
    FaceWidths,
    Figures,
    Flat,
    FlatBend,
    FlatBlank,
    FlatLeg,
    FlatPattern,
    FoldedEnd,
    FormingCheck,
    FormingFault,
    FormingReport,
    GaugeStep,
    HoleFinding,
    Joggle,
    JoggleParts,
    Leg,
    LegCut,
    MatchedSection,
    MatchingSection,
    Mitre,
    MitreHalf,
    MitredCorner,
    NeutralFactor,
    NominalBend,
    NominalFlat,
    NominalSeam,
    NominalSum,
    OrderFound,
    OrderSearch,
    OrderSheet,
    OrderTrial,
    OrderVerdict,
    OverBend,
    PieceFigures,
    PlannedBlank,
    Profile,
    RadiusFinding,
    ReliefHole,
    SeamMetal,
    SectionFigures,
    SetbackFactor,
    Springback,
    Sprung,
    StepFault,
    Taper,
    TaperBend,
    TaperLeg,
    TaperedPiece,
    TaperedPieces,
    TaperedRun,
    TaperedTrim,
    Tooled,
    TrialBend,
    TrialFound,
    TrimFigures,
    Vertices,
    _girths_into,
    din_compensation,
)

# NumPy is imported when first needed: the package itself imports nothing.
TYPE_CHECKING = False
if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = [
    "Bend",
    "BendFigures",
    "BendFound",
    "BendLines",
    "BendOrder",
    "BendRule",
    "BendSize",
    "BlankBend",
    "BlankEdge",
    "BlankPlan",
    "Chain",
    "Course",
    "Deduction",
    "DeductionTable",
    "DinFactor",
    "DinMinimumRadius",
    "DrawnTrim",
    "Edge",
    "EndFold",
    "FaceWidths",
    "Figures",
    "Flat",
    "FlatBend",
    "FlatBlank",
    "FlatLeg",
    "FlatPattern",
    "FoldedEnd",
    "FormingCheck",
    "FormingFault",
    "FormingReport",
    "GaugeStep",
    "HoleFinding",
    "Joggle",
    "JoggleParts",
    "Leg",
    "LegCut",
    "MatchedSection",
    "MatchingSection",
    "Mitre",
    "MitreHalf",
    "MitredCorner",
    "NeutralFactor",
    "NominalBend",
    "NominalFlat",
    "NominalSeam",
    "NominalSum",
    "OrderFound",
    "OrderSearch",
    "OrderSheet",
    "OrderTrial",
    "OrderVerdict",
    "OverBend",
    "PieceFigures",
    "PlannedBlank",
    "Profile",
    "RadiusFinding",
    "ReliefHole",
    "SeamMetal",
    "SectionFigures",
    "SetbackFactor",
    "Springback",
    "Sprung",
    "StepFault",
    "Taper",
    "TaperBend",
    "TaperLeg",
    "TaperedPiece",
    "TaperedPieces",
    "TaperedRun",
    "TaperedTrim",
    "Tooled",
    "TrialBend",
    "TrialFound",
    "TrimFigures",
    "Vertices",
    "din_compensation",
    "girths",
]


def girths(
    profile: Profile, rule: BendRule, thickness: npt.ArrayLike, inside_radius: npt.ArrayLike, *, unit: str
) -> npt.NDArray[np.float64]:
    """Give the girths of one profile over arrays of thickness and inside radius, unrounded.

    ``unit`` (in, ft, mm, cm, m, um) is that of both arrays and of the result. The arrays are broadcast against each other as NumPy does; plain
    numbers and lists will do. Every bend of the profile takes the element's radius in place of its own, hems keep theirs. The first element
    that cannot be folded is refused at ``elements[i]``, counted along the result in C order. NumPy is needed; other threads run meanwhile.

    >>> from seamwright.trim import Bend, BendRule, Leg, Profile, girths
    >>> legs = [Leg("deck flange", '4"', "sheet-edge", "outer-corner"), Leg("face", '3"', "outer-corner", "sheet-edge")]
    >>> drip = Profile("0.024 in", legs, [Bend("90 deg", "down", "0.03 in")], painted="upper")
    >>> [round(float(girth), 4) for girth in girths(drip, BendRule.aviation(), [0.024, 0.032], 0.03, unit="in")]
    [6.9559, 6.9455]
    """
    import numpy as np

    from ._arrays import numbers

    given = np.broadcast_arrays(numbers(thickness, "thickness"), numbers(inside_radius, "inside_radius"))
    flat = [np.ascontiguousarray(array).reshape(-1) for array in given]
    out = np.empty(given[0].shape)
    _girths_into(profile, rule, flat[0], flat[1], out.reshape(-1), unit)
    return out
