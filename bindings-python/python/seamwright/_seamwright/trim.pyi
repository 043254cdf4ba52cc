"""
The classes of `seamwright.trim`.
"""

from .record import Caution, Source, Worksheet
from .units import Angle, Area, BendAngle, Length, LengthFormat, LineMass, Mass, SurfaceMass
from _typeshed import SupportsGetItem
from numpy import float64
from numpy.typing import NDArray
from typing import Any, Final, SupportsFloat, SupportsIndex, final

__all__ = ["Bend", "BendFigures", "BendFound", "BendLines", "BendOrder", "BendRule", "BendSize", "BlankBend", "BlankEdge", "BlankPlan", "Chain", "Course", "Deduction", "DeductionTable", "DinFactor", "DinMinimumRadius", "DrawnTrim", "Edge", "EndFold", "FaceWidths", "Figures", "Flat", "FlatBend", "FlatBlank", "FlatLeg", "FlatPattern", "FoldedEnd", "FormingCheck", "FormingFault", "FormingReport", "GaugeStep", "HoleFinding", "Joggle", "JoggleParts", "Leg", "LegCut", "MatchedSection", "MatchingSection", "Mitre", "MitreHalf", "MitredCorner", "NeutralFactor", "NominalBend", "NominalFlat", "NominalSeam", "NominalSum", "OrderFound", "OrderSearch", "OrderSheet", "OrderTrial", "OrderVerdict", "OverBend", "PieceFigures", "PlannedBlank", "Profile", "RadiusFinding", "ReliefHole", "SeamMetal", "SectionFigures", "SetbackFactor", "Springback", "Sprung", "StepFault", "Taper", "TaperBend", "TaperLeg", "TaperedPiece", "TaperedPieces", "TaperedRun", "TaperedTrim", "Tooled", "TrialBend", "TrialFound", "TrimFigures", "Vertices", "_girths_into", "din_compensation"]

@final
class Bend:
    """
    A bend between two legs: its angle from flat, up or down, and its inside radius.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, angle: BendAngle | str, direction: str, inside_radius: Length | str, rule: BendRule | None = None) -> Bend: ...
    def __reduce__(self, /) -> tuple[type, tuple[BendAngle, str, Length, BendRule | None]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def angle(self, /) -> BendAngle:
        """
        How far, from flat.
        """
    @property
    def direction(self, /) -> str:
        """
        Which way: ``up`` or ``down``.
        """
    @property
    def inside_radius(self, /) -> Length:
        """
        Radius of the inside face.
        """
    @property
    def rule(self, /) -> BendRule | None:
        """
        A rule for this bend in place of the profile's.
        """

@final
class BendFigures:
    """
    One bend and its rule, for all that can be said of it.

    >>> from seamwright.trim import BendFigures
    >>> size = {"thickness": "0.04 in", "inside_radius": "0.04 in", "angle": "90 deg"}
    >>> found = BendFigures.from_dict({"size": size, "rule": {"handbook": "soft-steel"}}).compute()
    >>> round(found.neutral_factor, 4), format(found.outside_setback, "in.2")
    (0.4074, '0.08 in')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> BendFigures:
        """
        For unpickling.
        """
    def compute(self, /) -> BendFound:
        """
        The result.
        """
    def explain(self, /) -> tuple[BendFound, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> BendFigures:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> BendFigures:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class BendFound:
    """
    The figures of one bend.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def allowance(self, /) -> Length:
        """
        The bend allowance: flat length between the tangent lines.
        """
    @property
    def deduction(self, /) -> Length | None:
        """
        The bend deduction, for legs to the outer corner; ``None`` at 180 degrees and more.
        """
    @property
    def inside_setback(self, /) -> Length | None:
        """
        From the tangent line to the corner of the inside faces; ``None`` at 180 degrees and more.
        """
    @property
    def neutral_factor(self, /) -> float:
        """
        The neutral-axis factor that gives this allowance.
        """
    @property
    def opening(self, /) -> Angle:
        """
        The angle between the flanges: 180 degrees less the bend.
        """
    @property
    def outside_setback(self, /) -> Length | None:
        """
        From the tangent line to the corner of the outside faces; ``None`` at 180 degrees and more.
        """

@final
class BendLines:
    """
    The lines of a bend: the tangent line nearer to the edge, the bend line, the tangent line farther from it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def from_end(self, /) -> tuple[Length, Length, Length]:
        """
        Distances from the end edge.
        """
    @property
    def from_start(self, /) -> tuple[Length, Length, Length]:
        """
        Distances from the start edge.
        """
    @property
    def part(self, /) -> int | str:
        """
        Which bend of the profile by its index, or ``start-hem`` or ``end-hem``.
        """

@final
class BendOrder:
    """
    The bends of a trim in the order in which the brake makes them. Computing gives the gauge list, and refuses an order in which anything is in the way.

    >>> from seamwright.trim import Bend, BendOrder, BendRule, Leg, NeutralFactor, Profile
    >>> legs = [Leg("a", "50 mm", "sheet-edge", "outer-corner"), Leg("b", "80 mm", "outer-corner", "sheet-edge")]
    >>> profile = Profile("1 mm", legs, [Bend("90 deg", "up", "1 mm")], "upper")
    >>> plan = {"brake": {"clamp_line": "sight-line"}, "steps": [{"bend": {"body": 0}, "gauged": "start", "face_up": "upper"}]}
    >>> order = BendOrder.from_dict({"profile": profile, "rule": BendRule.neutral_axis(NeutralFactor.MIDDLE), "plan": plan})
    >>> order.compute().steps[0].gauge
    Length('49 mm')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> BendOrder:
        """
        For unpickling.
        """
    def compute(self, /) -> OrderSheet:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[OrderSheet, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> BendOrder:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> BendOrder:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class BendRule:
    """
    How much sheet a bend takes.

    >>> from seamwright.trim import BendRule, BendSize, NeutralFactor
    >>> rule = BendRule.neutral_axis(NeutralFactor(0.5))
    >>> format(rule.allowance(BendSize("0.024 in", "0.06 in", "90 deg")), "in.4")
    '0.1131 in'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def allowance(self, /, size: BendSize) -> Length:
        """
        The bend allowance: flat length between the tangent lines.
        """
    @staticmethod
    def aviation() -> BendRule:
        """
        The formula of aviation handbooks.
        """
    def deduction(self, /, size: BendSize) -> Length:
        """
        The bend deduction, for legs measured to the outer corner.
        """
    @staticmethod
    def deductions(table: DeductionTable) -> BendRule:
        """
        A table of measured deductions.
        """
    @staticmethod
    def din_6935() -> BendRule:
        """
        DIN 6935, three ranges.
        """
    @staticmethod
    def din_6935_linear() -> BendRule:
        """
        The older linear rule of DIN 6935, for square bends alone.
        """
    @staticmethod
    def din_6935_or(otherwise: BendRule) -> BendRule:
        """
        DIN 6935 where it holds, and another rule for hems and for bends sharper than it covers.
        """
    @staticmethod
    def handbook(metal: str) -> BendRule:
        """
        The handbook constants: soft-copper, soft-steel or cold-rolled-steel.
        """
    @property
    def name(self, /) -> str:
        """
        The name of the rule, without its figures.
        """
    @staticmethod
    def neutral_axis(factor: NeutralFactor, source: Source | None = None) -> BendRule:
        """
        The neutral-axis rule with its factor, the caller's own unless a source is given.
        """
    @staticmethod
    def sharp_corner() -> BendRule:
        """
        Nominal legs are added and nothing is deducted.
        """
    @property
    def source(self, /) -> Source:
        """
        Where the rule, or the figure in it, comes from.
        """

@final
class BendSize:
    """
    Thickness, inside radius and angle of a bend.

    >>> from seamwright.trim import BendSize
    >>> format(BendSize("0.04 in", "0.16 in", "90 deg").outside_setback(), "in.3")
    '0.200 in'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, thickness: Length | str, inside_radius: Length | str, angle: BendAngle | str) -> BendSize: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, Length, BendAngle]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def angle(self, /) -> BendAngle:
        """
        How far it is bent, from flat.
        """
    @property
    def inside_radius(self, /) -> Length:
        """
        Radius of the inside face.
        """
    def inside_setback(self, /) -> Length:
        """
        From the tangent line to the corner of the inside faces.
        """
    def outside_setback(self, /) -> Length:
        """
        From the tangent line to the corner of the outside faces.
        """
    @property
    def thickness(self, /) -> Length:
        """
        Thickness of the sheet.
        """

@final
class BlankBend:
    """
    A bend of a blank: its line and the tangent lines beside it, as far as they lie on the metal.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def angle(self, /) -> BendAngle:
        """
        How far, from flat, square across the line.
        """
    @property
    def direction(self, /) -> str:
        """
        Which way, with the upper face up: ``up`` or ``down``.
        """
    @property
    def inside_radius(self, /) -> Length:
        """
        Radius of the inside face.
        """
    @property
    def lines(self, /) -> list[tuple[tuple[Length, Length], tuple[Length, Length]]]:
        """
        The bend line; in several pieces where a notch or a hole parts it.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called on drawings: the bends of a profile are numbered from 1.
        """
    @property
    def tangents(self, /) -> list[tuple[tuple[Length, Length], tuple[Length, Length]]]:
        """
        The tangent lines on its two sides, likewise.
        """

@final
class BlankEdge:
    """
    A straight or round stretch of a blank's outline.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def centre(self, /) -> tuple[Length, Length] | None:
        """
        The centre of its arc; none for a straight stretch.
        """
    @property
    def end(self, /) -> tuple[Length, Length]:
        """
        Where it ends.
        """
    @property
    def side(self, /) -> str:
        """
        What it is: start-edge, end-edge, near-end, far-end, notch, tab, relief or end-fold.
        """
    @property
    def start(self, /) -> tuple[Length, Length]:
        """
        Where it starts. (In Rust this is ``from``, which is a word of Python's own.)
        """
    @property
    def turn(self, /) -> Angle | None:
        """
        How far its arc turns, counter-clockwise positive; none for a straight stretch.
        """

@final
class BlankPlan:
    """
    A blank of a trim: its profile, its length along the run, and what is cut at its ends.

    >>> from seamwright.trim import BlankPlan
    >>> legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    ...     {"name": "face", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"}]
    >>> bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    >>> profile = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    >>> notch = {"bend": {"body": 0}, "depth": "2 in", "shape": {"vee": {"width": "1 in"}}}
    >>> plan = BlankPlan.from_dict({"profile": profile, "rule": "sharp-corner", "length": "10 ft", "tolerance": "0.01 mm", "far": {"notches": [notch]}})
    >>> made = plan.compute()
    >>> round(made.area.get("in2"), 6)
    839.0
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> BlankPlan:
        """
        For unpickling.
        """
    def compute(self, /) -> PlannedBlank:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[PlannedBlank, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> BlankPlan:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> BlankPlan:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class Chain:
    """
    A profile said by the corners of one face: the face that lies on the supports.

    >>> from seamwright.trim import Chain
    >>> legs = [{"name": "flange", "to": {"x": "0 in", "y": "0 in"}}, {"name": "face", "to": {"x": "0 in", "y": "-3 in"}}]
    >>> line = {"thickness": "0.024 in", "inside_radius": "0.03 in", "face": "lower", "start": {"x": "-4 in", "y": "0 in"}}
    >>> profile = Chain.from_dict(line | {"legs": legs, "painted": "upper"}).compute()
    >>> profile.legs[0].end, profile.bends[0].direction
    ('inner-corner', 'down')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Chain:
        """
        For unpickling.
        """
    def compute(self, /) -> Profile:
        """
        The result.
        """
    def explain(self, /) -> tuple[Profile, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Chain:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Chain:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class Course:
    """
    A profile as one list of legs, bends and offset bends, with the working of the offset bends.

    >>> from seamwright.trim import Course
    >>> bend = {"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}
    >>> items = [{"leg": {"name": "flange", "length": "4 in"}}, {"bend": bend}, {"leg": {"name": "face", "length": "3 in"}}]
    >>> course = {"thickness": "0.024 in", "items": items, "measured_to": "outer-corner", "painted": "upper"}
    >>> [leg.name for leg in Course.from_dict(course).compute().legs]
    ['flange', 'face']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Course:
        """
        For unpickling.
        """
    def compute(self, /) -> Profile:
        """
        The result.
        """
    def explain(self, /) -> tuple[Profile, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Course:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Course:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class Deduction:
    """
    One measured deduction: what two legs to the outer corner are together longer than their flat.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, thickness: Length | str, inside_radius: Length | str, angle: BendAngle | str, deduction: Length | str) -> Deduction: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, Length, BendAngle, Length]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def angle(self, /) -> BendAngle:
        """
        Angle from flat, less than 180 degrees.
        """
    @property
    def deduction(self, /) -> Length:
        """
        The deduction.
        """
    @property
    def inside_radius(self, /) -> Length:
        """
        Inside radius of the bend.
        """
    @property
    def thickness(self, /) -> Length:
        """
        Thickness of the sheet.
        """

@final
class DeductionTable:
    """
    A table of measured deductions with its source. Between its rows it is interpolated in thickness, radius and angle, and never beyond them.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, rows: SupportsGetItem[int, Deduction], source: Source) -> DeductionTable: ...
    def __reduce__(self, /) -> tuple[type, tuple[list[Deduction], Source]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def rows(self, /) -> list[Deduction]:
        """
        The rows by thickness, radius and angle.
        """
    @property
    def source(self, /) -> Source:
        """
        Whose figures they are.
        """

@final
class DinFactor:
    """
    The factor k of DIN 6935, which is twice a neutral factor.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Length, Length]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def neutral(self, /) -> NeutralFactor:
        """
        The neutral factor that it stands for.
        """
    @staticmethod
    def of(inside_radius: Length | str, thickness: Length | str) -> DinFactor:
        """
        The factor for this radius and thickness.
        """
    @property
    def value(self, /) -> float:
        """
        The factor.
        """

@final
class DinMinimumRadius:
    """
    A cold bend in steel whose least inside radius DIN 6935 gives.

    >>> from seamwright.trim import DinMinimumRadius
    >>> sheet = {"thickness": "0.6 mm", "tensile_strength": "330 MPa", "angle": "90 deg", "grain": "across"}
    >>> str(DinMinimumRadius.from_dict(sheet).compute())
    '1 mm'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> DinMinimumRadius:
        """
        For unpickling.
        """
    def compute(self, /) -> Length:
        """
        The result.
        """
    def explain(self, /) -> tuple[Length, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> DinMinimumRadius:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> DinMinimumRadius:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class DrawnTrim:
    """
    A drawing of a trim: ``section-svg``, ``flat-svg``, ``section-dxf`` or ``flat-dxf``.

    >>> from seamwright.trim import DrawnTrim
    >>> legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    ...     {"name": "face", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"}]
    >>> bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    >>> profile = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    >>> asked = {"profile": profile, "rule": "sharp-corner", "name": "angle", "format": "in/16"}
    >>> 'girth 7"' in DrawnTrim.from_dict(asked | {"view": "flat-svg"}).text().replace("&quot;", '"')
    True
    >>> DrawnTrim.from_dict(asked | {"view": {"flat-dxf": {"unit": "inch", "piece": "10 ft"}}}).text().splitlines()[1]
    'SECTION'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> DrawnTrim:
        """
        For unpickling.
        """
    @staticmethod
    def from_dict(mapping: dict) -> DrawnTrim:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> DrawnTrim:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    def text(self, /) -> str:
        """
        The drawing: the text of an SVG or of a DXF file.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class Edge:
    """
    An edge of a profile: raw, hemmed, or curled round a wire. A hem folded up lies on the upper face.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def closed_hem(width: Length | str, direction: str, rule: BendRule | None = None) -> Edge:
        """
        Folded flat on itself.
        """
    @staticmethod
    def double_hem(width: Length | str, direction: str, rule: BendRule | None = None) -> Edge:
        """
        Folded over twice, the sheet's edge inside.
        """
    @property
    def is_raw(self, /) -> bool:
        """
        Whether it is as cut.
        """
    @staticmethod
    def open_hem(width: Length | str, gap: Length | str, direction: str, rule: BendRule | None = None) -> Edge:
        """
        Folded back with a gap, to hook a cleat.
        """
    @staticmethod
    def raw() -> Edge:
        """
        As cut.
        """
    @property
    def rule(self, /) -> BendRule | None:
        """
        A bend rule of its own, if it has one.
        """
    @staticmethod
    def teardrop_hem(inside_radius: Length | str, return_flat: Length | str, gap: Length | str, direction: str, rule: BendRule | None = None) -> Edge:
        """
        Folded back past 180 degrees, so that the end of the return touches the leg, or clears it by the gap.
        """
    @staticmethod
    def wired_edge(wire: Length | str, direction: str, rule: BendRule | None = None) -> Edge:
        """
        Curled round a wire until the sheet's edge touches the leg.
        """

@final
class EndFold:
    """
    The end of a panel, folded along its junction line at a skew.

    >>> from seamwright.trim import EndFold
    >>> hem = {"closed-hem": {"width": "1 in", "direction": "down"}}
    >>> fold = EndFold.from_dict({"width": "16 in", "meeting": "45 deg", "hem": hem, "thickness": "0.024 in", "rule": "sharp-corner",
    ...     "ends": "mirrored", "shown": "12 in"})
    >>> format(fold.compute().overrun, "in/16")
    '2"'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> EndFold:
        """
        For unpickling.
        """
    def compute(self, /) -> FoldedEnd:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[FoldedEnd, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> EndFold:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> EndFold:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class FaceWidths:
    """
    Developed widths of the two faces as folded.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def both(self, /) -> Length:
        """
        Of both; the cut edges are not counted.
        """
    @property
    def lower(self, /) -> Length:
        """
        Of the lower face.
        """
    @property
    def upper(self, /) -> Length:
        """
        Of the upper face.
        """

@final
class Figures:
    """
    The answers of `TrimFigures`.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be known beside the numbers.
        """
    @property
    def faces(self, /) -> FaceWidths:
        """
        Developed widths of both faces.
        """
    @property
    def girth(self, /) -> Length:
        """
        Width of the blank.
        """
    @property
    def line_mass(self, /) -> LineMass | None:
        """
        Mass for each length, where the sheet is given.
        """
    @property
    def lines(self, /) -> list[BendLines]:
        """
        The lines of every bend, from either edge.
        """
    @property
    def painted(self, /) -> Length:
        """
        Developed width of the painted face.
        """
    @property
    def piece(self, /) -> PieceFigures | None:
        """
        Figures of one piece, where its length is given.
        """
    @property
    def section(self, /) -> SectionFigures:
        """
        Area, centroid and size of the section as folded.
        """

@final
class Flat:
    """
    A flat pattern with the rule that made it. Stations are measured from the start edge, with the upper face up.

    It pickles as its profile and rule, which unfold again.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bends(self, /) -> list[FlatBend]:
        """
        The bends in order, folds of hems among them.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be known beside the numbers.
        """
    def contour(self, /, tolerance: Length | str) -> list[tuple[Length, Length]]:
        """
        The closed contour of the folded section as points, x and y, the first leg along the x axis: arcs cut into chords that stray from them by at most the tolerance.
        """
    @property
    def faces(self, /) -> FaceWidths:
        """
        Developed widths of both faces as folded.
        """
    def from_end(self, /, station: Length | str) -> Length:
        """
        A station measured from the end edge instead of from the start edge, or the other way.
        """
    @property
    def girth(self, /) -> Length:
        """
        The width of the blank: the stretch-out.
        """
    @property
    def legs(self, /) -> list[FlatLeg]:
        """
        The flat parts in order, returns of hems among them; one more than the bends.
        """
    def line_mass(self, /, sheet: SurfaceMass | str) -> LineMass:
        """
        The mass of the trim per length, from the mass of its sheet per area.
        """
    @property
    def lines(self, /) -> list[BendLines]:
        """
        The lines of every bend, from either edge.
        """
    @property
    def rule(self, /) -> BendRule:
        """
        The rule of every bend that has none of its own.
        """
    @property
    def section(self, /) -> SectionFigures:
        """
        Area, centroid and size of the section as folded.
        """
    @property
    def thickness(self, /) -> Length:
        """
        Thickness of the sheet.
        """

@final
class FlatBend:
    """
    A bend in the flat: two tangent lines and the bend line halfway between. It is read from its flat pattern and does not pickle alone.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def allowance(self, /) -> Length:
        """
        The flat length that the bend takes.
        """
    @property
    def angle(self, /) -> BendAngle:
        """
        How far, from flat.
        """
    @property
    def direction(self, /) -> str:
        """
        Which way, with the upper face up: ``up`` or ``down``.
        """
    @property
    def end(self, /) -> Length:
        """
        The tangent line towards the end edge.
        """
    @property
    def inside_radius(self, /) -> Length:
        """
        Radius of the inside face.
        """
    @property
    def line(self, /) -> Length:
        """
        The bend line, halfway between the tangent lines.
        """
    @property
    def part(self, /) -> int | str:
        """
        Which bend of the profile by its index, or the fold of an edge: ``start-hem``, ``end-hem``, or the ``start-lip`` or ``end-lip`` of a double hem.
        """
    @property
    def rule(self, /) -> BendRule:
        """
        The rule that gave its allowance: its own or the pattern's.
        """
    @property
    def start(self, /) -> Length:
        """
        The tangent line towards the start edge. (In Rust this is ``from``, which is a word of Python's own.)
        """

@final
class FlatBlank:
    """
    A flat blank, upper face up. A point of it is a pair: across from the start edge, and along the run from the near end.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    def _repr_svg_(self, /) -> str:
        """
        The drawing that notebooks show, with exact lengths.
        """
    @property
    def area(self, /) -> Area:
        """
        The area of its metal.
        """
    @property
    def bends(self, /) -> list[BlankBend]:
        """
        The bends, those of the profile from the start edge first.
        """
    @property
    def bounds(self, /) -> tuple[tuple[Length, Length], tuple[Length, Length]]:
        """
        Lower left and upper right of the box around it.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be known beside the numbers.
        """
    def dxf(self, /, name: str, format: LengthFormat | str, unit: str) -> bytes:
        """
        The same as the bytes of a DXF file, in ``millimetre`` or ``inch``, true and whole.
        """
    @property
    def holes(self, /) -> list[tuple[tuple[Length, Length], Length]]:
        """
        The holes: centre and diameter of each.
        """
    def mass(self, /, sheet: SurfaceMass | str) -> Mass:
        """
        Its mass, from the mass of the sheet per area.
        """
    @property
    def outline(self, /) -> list[BlankEdge]:
        """
        The outline, counter-clockwise and closed.
        """
    def points(self, /, tolerance: Length | str) -> list[tuple[Length, Length]]:
        """
        The outline as points, arcs cut into chords that stray by at most the tolerance; the first point is not repeated.
        """
    def svg(self, /, name: str, format: LengthFormat | str) -> str:
        """
        A drawing of it as SVG text.
        """
    @property
    def thickness(self, /) -> Length:
        """
        Thickness of the sheet.
        """

@final
class FlatLeg:
    """
    The flat part of a leg, between tangent lines. It is read from its flat pattern and does not pickle alone.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def end(self, /) -> Length:
        """
        Where it ends.
        """
    @property
    def length(self, /) -> Length:
        """
        Its length; never negative.
        """
    @property
    def part(self, /) -> int | str:
        """
        Which leg of the profile by its index, or the return of an edge: ``start-hem``, ``end-hem``, or the ``start-lip`` or ``end-lip`` of a double hem.
        """
    @property
    def start(self, /) -> Length:
        """
        Where it starts. (In Rust this is ``from``, which is a word of Python's own.)
        """

@final
class FlatPattern:
    """
    The flat pattern of a profile under a bend rule, as a calculation that can show each leg and bend.

    >>> from seamwright.trim import Bend, BendRule, FlatPattern, Leg, NeutralFactor, Profile
    >>> legs = [Leg("a", '2"', "sheet-edge", "outer-corner"), Leg("b", '3"', "outer-corner", "sheet-edge")]
    >>> profile = Profile("0.024 in", legs, [Bend("90 deg", "up", "0.024 in")], "upper")
    >>> flat, sheet = FlatPattern(profile, BendRule.neutral_axis(NeutralFactor(0.33))).explain()
    >>> format(flat.girth, "in.3"), len(sheet.steps())
    ('4.954 in', 5)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, profile: Profile, rule: BendRule) -> FlatPattern: ...
    def __reduce__(self, /) -> tuple[type, tuple[Profile, BendRule]]: ...
    def __repr__(self, /) -> str: ...
    def compute(self, /) -> Flat:
        """
        The flat pattern.
        """
    def explain(self, /) -> tuple[Flat, Worksheet]:
        """
        The flat pattern, and its worksheet.
        """
    @property
    def profile(self, /) -> Profile:
        """
        What is unfolded.
        """
    @property
    def rule(self, /) -> BendRule:
        """
        The rule of every bend that has none of its own.
        """

@final
class FoldedEnd:
    """
    A panel's folded end in the flat.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def beyond(self, /) -> Length:
        """
        Beyond the finished end line, square to it: what the blank is longer for the fold.
        """
    @property
    def blank(self, /) -> FlatBlank:
        """
        The end of the panel in the flat.
        """
    @property
    def depth(self, /) -> Length:
        """
        From the bend line to the edge of the fold, square to the line.
        """
    @property
    def overrun(self, /) -> Length:
        """
        What each end would overrun, along the line, if it were left along the seam.
        """

@final
class FormingCheck:
    """
    A trim, and the limits that it is to keep. What is left out is not judged, and a caution says so.

    >>> from seamwright.trim import Bend, BendRule, FormingCheck, Leg, NeutralFactor, Profile
    >>> legs = [Leg("a", "50 mm", "sheet-edge", "outer-corner"), Leg("lip", "8 mm", "outer-corner", "sheet-edge")]
    >>> profile = Profile("1 mm", legs, [Bend("90 deg", "up", "1 mm")], "upper")
    >>> check = {"profile": profile, "rule": BendRule.neutral_axis(NeutralFactor.MIDDLE), "least_leg": "10 mm"}
    >>> [fault.message for fault in FormingCheck.from_dict(check).compute().faults]
    ['leg 2 has a flat part of 6 mm, the brake needs 10 mm']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> FormingCheck:
        """
        For unpickling.
        """
    def compute(self, /) -> FormingReport:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[FormingReport, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> FormingCheck:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> FormingCheck:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class FormingFault:
    """
    Why a trim cannot be formed as asked.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def message(self, /) -> str:
        """
        The sentence.
        """
    @property
    def name(self, /) -> str:
        """
        Its kind, as ``leg-too-short``.
        """
    @property
    def subject(self, /) -> str:
        """
        Where it lies, as a path into the check.
        """

@final
class FormingReport:
    """
    What a `FormingCheck` finds.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What was not judged, what no source limits, and what the flat pattern says.
        """
    @property
    def faults(self, /) -> list[FormingFault]:
        """
        Every fault.
        """
    @property
    def forms(self, /) -> bool:
        """
        Whether no fault was found. What was not judged stands in the cautions.
        """
    @property
    def girth(self, /) -> Length:
        """
        Width of the blank.
        """
    @property
    def holes(self, /) -> list[HoleFinding]:
        """
        Each hole with the bend nearest to it.
        """
    @property
    def radii(self, /) -> list[RadiusFinding]:
        """
        The least inside radius of each bend, where the metal is given.
        """
    def require(self, /) -> None:
        """
        Refuses a trim that cannot be formed.
        """

@final
class GaugeStep:
    """
    One step with its figures.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def after(self, /) -> Angle:
        """
        The bend after the step, from flat.
        """
    @property
    def before(self, /) -> Angle:
        """
        The bend before the step, from flat.
        """
    @property
    def bend(self, /) -> int | str:
        """
        The bend by its index, or ``start-hem`` or ``end-hem``.
        """
    @property
    def clamp_line(self, /) -> Length:
        """
        From the gauged edge to the line that lies at the clamp line, along the sheet.
        """
    @property
    def clamped(self, /) -> Length:
        """
        Flat under the clamp: from the clamp line back to an edge or to a bend made before.
        """
    @property
    def face_up(self, /) -> str:
        """
        The face that lies upwards: ``upper`` or ``lower``.
        """
    @property
    def flipped(self, /) -> bool:
        """
        Whether its other face comes up before the step.
        """
    @property
    def folded_to(self, /) -> Angle:
        """
        The angle that it is folded to, from which it springs back.
        """
    @property
    def folds(self, /) -> str:
        """
        Whether the swung side goes ``up`` or ``down``.
        """
    @property
    def from_edge(self, /) -> Length:
        """
        From the gauged edge to the bend line, along the sheet.
        """
    @property
    def gauge(self, /) -> Length:
        """
        What the back gauge is set to: from the clamp line to the outermost point of the clamped side as it lies in the brake.
        """
    @property
    def gauged(self, /) -> str:
        """
        The edge towards the back gauge: ``start`` or ``end``.
        """
    @property
    def stop(self, /) -> str:
        """
        What of the sheet stands at the gauge, in words.
        """
    @property
    def swung(self, /) -> Length:
        """
        Flat that is swung: from the clamp line on to an edge or to a bend made before.
        """
    @property
    def turned(self, /) -> bool:
        """
        Whether the piece is turned end for end before the step.
        """
    @property
    def way(self, /) -> str:
        """
        How it is closed: ``swing`` or ``press``.
        """

@final
class HoleFinding:
    """
    A hole and the bend nearest to it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bend(self, /) -> int | str:
        """
        The nearest bend by its index, or ``start-hem`` or ``end-hem``.
        """
    @property
    def distance(self, /) -> Length:
        """
        From the hole's edge to that bend's nearer tangent line; negative where the hole reaches into the bend.
        """
    @property
    def hole(self, /) -> str:
        """
        The hole.
        """

@final
class Joggle:
    """
    An offset bend by its depth and angle: two like bends, there and back, and the web between them.

    >>> from seamwright.trim import Joggle
    >>> step = {"name": "step", "depth": '1/2"', "angle": "30 deg", "direction": "up", "inside_radius": "0.03 in", "thickness": "0.024 in"}
    >>> parts = Joggle.from_dict(step).compute()
    >>> format(parts.web.length, "in.3"), parts.second.direction
    ('1.000 in', 'down')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Joggle:
        """
        For unpickling.
        """
    def compute(self, /) -> JoggleParts:
        """
        The result.
        """
    def explain(self, /) -> tuple[JoggleParts, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Joggle:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Joggle:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class JoggleParts:
    """
    What an offset bend stands for in a profile.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def first(self, /) -> Bend:
        """
        The bend there.
        """
    @property
    def run(self, /) -> Length:
        """
        How far the web runs along the legs; negative for one that leans back.
        """
    @property
    def second(self, /) -> Bend:
        """
        The bend back.
        """
    @property
    def web(self, /) -> Leg:
        """
        The web, from the outer corner of the first bend to the inner corner of the second.
        """
    @property
    def web_flat(self, /) -> Length:
        """
        The flat part of the web.
        """

@final
class Leg:
    """
    A straight leg. Its ends say to what it is dimensioned: sheet-edge, outer-corner, inner-corner, outer-tangent or tangent.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, name: str, length: Length | str, start: str, end: str) -> Leg: ...
    def __reduce__(self, /) -> tuple[type, tuple[str, Length, str, str]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end(self, /) -> str:
        """
        To what the end is dimensioned.
        """
    @property
    def length(self, /) -> Length:
        """
        Length between the points that its two ends name.
        """
    @property
    def name(self, /) -> str:
        """
        What the leg is called on drawings and worksheets.
        """
    def reversed(self, /) -> Leg:
        """
        The same leg walked the other way.
        """
    @property
    def start(self, /) -> str:
        """
        To what the start is dimensioned.
        """

@final
class LegCut:
    """
    The cut across one leg, or across the return of a hem.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def angle(self, /) -> Angle:
        """
        From the bend lines, onward along the run, to the cut: 90 degrees is square.
        """
    @property
    def bevel(self, /) -> Angle:
        """
        How far the mitre plane leans from square to the sheet of this leg.
        """
    @property
    def end(self, /) -> tuple[Length, Length]:
        """
        Where it ends.
        """
    @property
    def part(self, /) -> int | str:
        """
        Which leg of the profile by its index, or ``start-hem`` or ``end-hem``.
        """
    @property
    def start(self, /) -> tuple[Length, Length]:
        """
        Where the cut starts: the station, and how far along the run. (In Rust this is ``from``.)
        """

@final
class MatchedSection:
    """
    The matching section. It pickles as its calculation, which computes again.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def placement(self, /) -> dict:
        """
        Where its section is put, as a dict.
        """
    @property
    def profile(self, /) -> Profile:
        """
        The profile of the run that leaves.
        """
    def second_half(self, /, within: Length | str) -> dict:
        """
        Both as the second half of a mitre, whose corners may part by so much.
        """

@final
class MatchingSection:
    """
    The profile of a second run, upright, that closes on a first one's in one plane.

    >>> from seamwright.trim import MatchingSection, Mitre
    >>> legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    ...     {"name": "face", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"}]
    >>> bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    >>> eave = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    >>> corner = {"plan": {"turn": "-90 deg", "first_rise": "0 deg", "second_rise": "26.565 deg"}}
    >>> rake = MatchingSection.from_dict({"profile": eave, "corner": corner, "closes_on": "upper"}).compute()
    >>> round(rake.profile.bends[0].angle.degrees, 2)
    65.91
    >>> mitre = {"profile": eave, "rule": "sharp-corner", "corner": corner, "second": {"matching": {}}, "closes_on": "upper", "tolerance": "0.01 mm"}
    >>> len(Mitre.from_dict(mitre).compute().second.legs)
    2
    >>> mitre["second"] = rake.second_half("0.001 mm")
    >>> str(Mitre.from_dict(mitre).compute().parts)
    '0 mm'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> MatchingSection:
        """
        For unpickling.
        """
    def compute(self, /) -> MatchedSection:
        """
        The result.
        """
    def explain(self, /) -> tuple[MatchedSection, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> MatchingSection:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> MatchingSection:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class Mitre:
    """
    A mitred corner of a trim, at any plan angle and pair of slopes.

    >>> from seamwright.trim import Mitre
    >>> legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    ...     {"name": "face", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"}]
    >>> bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    >>> profile = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    >>> corner = {"plan": {"turn": "90 deg", "first_rise": "0 deg", "second_rise": "0 deg"}}
    >>> mitre = Mitre.from_dict({"profile": profile, "rule": "sharp-corner", "corner": corner, "second": "upright", "closes_on": "upper",
    ...     "tolerance": "0.01 mm"})
    >>> [cut.angle.degrees for cut in mitre.compute().first.legs]
    [45.0, 90.0]
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Mitre:
        """
        For unpickling.
        """
    def compute(self, /) -> MitredCorner:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[MitredCorner, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Mitre:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Mitre:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class MitreHalf:
    """
    One half of a mitred corner: the line on its flat that is cut.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def girth(self, /) -> Length:
        """
        The width of its flat.
        """
    @property
    def legs(self, /) -> list[LegCut]:
        """
        The cut across each leg, returns of hems among them.
        """
    @property
    def line(self, /) -> list[tuple[Length, Length]]:
        """
        The whole line: stations from the start edge, and how far along the run from the corner's origin.
        """
    @property
    def opening(self, /) -> Length:
        """
        The most that the other face of the sheet parts or overruns, on one half, where the halves close on the surface asked for.
        """

@final
class MitredCorner:
    """
    A mitred corner, ready to be cut.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def first(self, /) -> MitreHalf:
        """
        The half that arrives at the corner.
        """
    @property
    def parts(self, /) -> Length:
        """
        How far the corners of the two halves part, at most: nothing for halves of one profile.
        """
    @property
    def roll(self, /) -> Angle:
        """
        How far the second section is turned about its run from upright, counter-clockwise as it is seen along the run.
        """
    @property
    def second(self, /) -> MitreHalf:
        """
        The half that leaves it.
        """
    @property
    def turn(self, /) -> Angle:
        """
        The angle between the two runs in space: 0 straight on.
        """

@final
class NeutralFactor:
    """
    Place of the neutral line as a share of the thickness, from the inside face.

    >>> from seamwright.trim import NeutralFactor
    >>> NeutralFactor.MIDDLE == NeutralFactor(0.5)
    True
    """
    MIDDLE: Final[NeutralFactor]
    """
    The middle of the sheet.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, factor: SupportsFloat | SupportsIndex) -> NeutralFactor: ...
    def __reduce__(self, /) -> tuple[type, tuple[float]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def value(self, /) -> float:
        """
        The factor.
        """

@final
class NominalBend:
    """
    What one bend takes nominally and as developed. It is read from its sum and does not pickle alone.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __repr__(self, /) -> str: ...
    @property
    def developed(self, /) -> Length:
        """
        What it takes as developed.
        """
    @property
    def difference(self, /) -> Length:
        """
        Nominal less developed.
        """
    @property
    def nominal(self, /) -> Length:
        """
        What it takes in the nominal sum.
        """
    @property
    def part(self, /) -> int | str:
        """
        Which bend of the profile by its index, or the fold of an edge by its name.
        """

@final
class NominalFlat:
    """
    A nominal sum worked out.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bends(self, /) -> list[NominalBend]:
        """
        The same bend by bend.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be known beside the numbers.
        """
    @property
    def developed(self, /) -> Length:
        """
        The girth as developed.
        """
    @property
    def difference(self, /) -> Length:
        """
        Nominal less developed: what the leg takes up.
        """
    @property
    def flat(self, /) -> Flat:
        """
        The flat pattern of the piece as made; its girth is the nominal sum.
        """
    @property
    def leg(self, /) -> Length:
        """
        The length to which the leg that takes up is made.
        """
    @property
    def nominal(self, /) -> Length:
        """
        The width of the blank: the nominal sum.
        """

@final
class NominalSeam:
    """
    What a hem, a wired edge or a seam takes as a trade book gives it: hem, double-hem, wired-edge, grooved-seam, single-lock or double-lock.

    >>> from seamwright.trim import NominalSeam
    >>> metal = NominalSeam.from_dict({"double-lock": {"height": "1 in", "lock": '1/4"'}}).compute()
    >>> format(metal.first, "in/16"), format(metal.second, "in/16")
    ('1 1/4"', '1 1/2"')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> NominalSeam:
        """
        For unpickling.
        """
    def compute(self, /) -> SeamMetal:
        """
        The result.
        """
    def explain(self, /) -> tuple[SeamMetal, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> NominalSeam:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> NominalSeam:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class NominalSum:
    """
    A blank cut to the sum of its nominal legs, with the leg that absorbs what the sum is too wide.

    >>> from seamwright.trim import NominalSum
    >>> a, b = {"name": "a", "length": "2 in", "start": "sheet-edge"}, {"name": "b", "length": "3 in", "end": "sheet-edge"}
    >>> legs = [a | {"end": "outer-corner"}, b | {"start": "outer-corner"}]
    >>> bends = [{"angle": "90 deg", "direction": "up", "inside_radius": "0.024 in"}]
    >>> profile = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    >>> made = NominalSum.from_dict({"profile": profile, "rule": {"neutral-axis": {"factor": 0.5}}, "take_up": 0}).compute()
    >>> format(made.nominal, "in.3"), format(made.difference, "in.4"), format(made.leg, "in.4")
    ('5.000 in', '0.0395 in', '2.0395 in')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> NominalSum:
        """
        For unpickling.
        """
    def compute(self, /) -> NominalFlat:
        """
        The result.
        """
    def explain(self, /) -> tuple[NominalFlat, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> NominalSum:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> NominalSum:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class OrderFound:
    """
    What a search found.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def handlings(self, /) -> int | None:
        """
        Turns and flips together, where an order works.
        """
    @property
    def nodes(self, /) -> int:
        """
        The nodes that were looked at.
        """
    @property
    def outcome(self, /) -> str:
        """
        What it can say: ``works``, ``none-works``, or ``effort-spent`` where it is not known whether an order works.
        """
    @property
    def steps(self, /) -> list[dict]:
        """
        The steps as a plan takes them, where an order works.
        """

@final
class OrderSearch:
    """
    A search for an order of bends in which nothing is in the way.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> OrderSearch:
        """
        For unpickling.
        """
    def compute(self, /) -> OrderFound:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[OrderFound, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> OrderSearch:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> OrderSearch:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class OrderSheet:
    """
    The gauge list of an order that works.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def flips(self, /) -> int:
        """
        How often its other face comes up.
        """
    @property
    def steps(self, /) -> list[GaugeStep]:
        """
        The steps in order.
        """
    @property
    def turns(self, /) -> int:
        """
        How often the piece is turned end for end.
        """

@final
class OrderTrial:
    """
    Whether an order works: as `BendOrder`, with what is in the way as a result instead of a refusal.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> OrderTrial:
        """
        For unpickling.
        """
    def compute(self, /) -> OrderVerdict:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[OrderVerdict, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> OrderTrial:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> OrderTrial:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class OrderVerdict:
    """
    The verdict on an order.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def faults(self, /) -> list[StepFault]:
        """
        What is in the way, step by step.
        """
    @property
    def flips(self, /) -> int:
        """
        How often its other face comes up.
        """
    @property
    def steps(self, /) -> list[GaugeStep]:
        """
        The steps, as if each could be done.
        """
    @property
    def turns(self, /) -> int:
        """
        How often the piece is turned end for end.
        """
    @property
    def works(self, /) -> bool:
        """
        Whether nothing is in the way.
        """

@final
class OverBend:
    """
    How far to bend over, and round what radius, for a wanted bend.

    >>> from seamwright.trim import OverBend
    >>> wanted = {"thickness": "1 mm", "inside_radius": "1 mm", "angle": "90 deg", "by": {"table": "dc01"}}
    >>> tool = OverBend.from_dict(wanted).compute()
    >>> tool.angle_ratio, round(tool.over_bend.degrees, 3)
    (0.99, 0.909)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> OverBend:
        """
        For unpickling.
        """
    def compute(self, /) -> Tooled:
        """
        The result.
        """
    def explain(self, /) -> tuple[Tooled, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> OverBend:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> OverBend:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class PieceFigures:
    """
    Areas and mass of one piece of trim.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def blank(self, /) -> Area:
        """
        Area of the blank.
        """
    @property
    def both(self, /) -> Area:
        """
        Area of both faces.
        """
    @property
    def mass(self, /) -> Mass | None:
        """
        Its mass, where the sheet is given.
        """
    @property
    def painted(self, /) -> Area:
        """
        Area of the painted face.
        """

@final
class PlannedBlank:
    """
    A planned blank.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def area(self, /) -> Area:
        """
        The area of its metal.
        """
    @property
    def blank(self, /) -> FlatBlank:
        """
        The blank.
        """
    def dxf(self, /, name: str, format: LengthFormat | str, unit: str) -> bytes:
        """
        The same as the bytes of a DXF file, in ``millimetre`` or ``inch``, true and whole.
        """
    @property
    def girth(self, /) -> Length:
        """
        The width of the sheet: the stretch-out of the profile.
        """
    @property
    def stations(self, /) -> list[Length]:
        """
        The bend lines of the profile, measured from the start edge.
        """
    def svg(self, /, name: str, format: LengthFormat | str) -> str:
        """
        A drawing of it with its running distances, as SVG text.
        """

@final
class Profile:
    """
    The section of a trim: legs joined by bends between two edges, walked from the start edge. Edges are raw unless given.

    >>> from seamwright.trim import Bend, BendRule, Leg, Profile
    >>> legs = [Leg("deck flange", '4"', "sheet-edge", "outer-corner"), Leg("face", '3"', "outer-corner", "sheet-edge")]
    >>> drip = Profile("0.024 in", legs, [Bend("90 deg", "down", "0.03 in")], painted="upper")
    >>> format(drip.girth(BendRule.handbook("soft-steel")), "in.3")
    '6.954 in'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, thickness: Length | str, legs: SupportsGetItem[int, Leg], bends: SupportsGetItem[int, Bend], painted: str, start_edge: Edge | None = None, end_edge: Edge | None = None) -> Profile: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, list[Leg], list[Bend], str, Edge, Edge]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bends(self, /) -> list[Bend]:
        """
        The bends in order: one fewer than legs.
        """
    def closes_on_paint(self, /, direction: str) -> bool:
        """
        Whether a bend this way, ``up`` or ``down``, has the painted face on its inside.
        """
    @property
    def end_edge(self, /) -> Edge:
        """
        The edge where the walk ends.
        """
    def girth(self, /, rule: BendRule) -> Length:
        """
        The girth alone.
        """
    @property
    def legs(self, /) -> list[Leg]:
        """
        The legs in order.
        """
    @property
    def painted(self, /) -> str:
        """
        The painted face, or the face that is shown: ``upper`` or ``lower``.
        """
    def reversed(self, /) -> Profile:
        """
        The piece turned end for end.
        """
    @property
    def start_edge(self, /) -> Edge:
        """
        The edge where the walk starts.
        """
    @property
    def thickness(self, /) -> Length:
        """
        Thickness of the sheet.
        """
    def unfold(self, /, rule: BendRule) -> Flat:
        """
        The flat pattern under a bend rule.
        """
    def validate_with(self, /, rule: BendRule) -> None:
        """
        Refuses a rule that does not cover every bend.
        """

@final
class RadiusFinding:
    """
    The least inside radius of one bend, as far as it is published.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bend(self, /) -> int | str:
        """
        The bend by its index, or ``start-hem`` or ``end-hem``.
        """
    @property
    def least(self, /) -> Length | None:
        """
        The least, where one is published.
        """
    @property
    def radius(self, /) -> Length:
        """
        Its inside radius.
        """
    @property
    def source(self, /) -> Source | None:
        """
        Where it is published.
        """

@final
class ReliefHole:
    """
    A relief hole where bends cross, sized by a published habit; they disagree, so the caller chooses.

    >>> from seamwright.trim import ReliefHole
    >>> hole = ReliefHole.from_dict({"habit": "thickness", "inside_radius": "0.04 in", "thickness": "0.04 in"})
    >>> format(hole.compute(), "in/8")
    '1/8"'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> ReliefHole:
        """
        For unpickling.
        """
    def compute(self, /) -> Length:
        """
        The result.
        """
    def explain(self, /) -> tuple[Length, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> ReliefHole:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> ReliefHole:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class SeamMetal:
    """
    What an edge or a seam takes on each side.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be known beside the numbers.
        """
    @property
    def first(self, /) -> Length:
        """
        The one side, or the low upstand, or the first strip of a hem.
        """
    @property
    def second(self, /) -> Length:
        """
        The other side, or the high upstand, or the second strip of a hem.
        """
    @property
    def total(self, /) -> Length:
        """
        Together.
        """

@final
class SectionFigures:
    """
    The section as folded: its metal, and the box that it needs, the first leg along the x axis.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def area(self, /) -> Area:
        """
        Area of the metal in the section.
        """
    @property
    def centroid(self, /) -> tuple[Length, Length]:
        """
        Its centroid, x and y.
        """
    @property
    def height(self, /) -> Length:
        """
        Height of that box.
        """
    @property
    def width(self, /) -> Length:
        """
        Width of the box around it, along the first leg.
        """

@final
class SetbackFactor:
    """
    The tangent of half the bend, the factor from radius plus thickness to setback.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[BendAngle]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def of(angle: BendAngle | str) -> SetbackFactor:
        """
        The factor for this bend.
        """
    @property
    def value(self, /) -> float:
        """
        The factor.
        """

@final
class Springback:
    """
    What a bend formed to a radius and an angle springs back to.

    >>> from seamwright.trim import Springback
    >>> formed = {"thickness": "0.0359 in", "forming_radius": "0.5 in", "forming_angle": "90 deg", "yield_strength": "40 ksi", "modulus": "29000 ksi"}
    >>> sprung = Springback.from_dict(formed).compute()
    >>> round(sprung.strain_ratio, 4), round(sprung.radius_ratio, 3)
    (0.0192, 0.942)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Springback:
        """
        For unpickling.
        """
    def compute(self, /) -> Sprung:
        """
        The result.
        """
    def explain(self, /) -> tuple[Sprung, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Springback:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Springback:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class Sprung:
    """
    A bend that has sprung back.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def angle(self, /) -> BendAngle:
        """
        The angle that is left, from flat.
        """
    @property
    def angle_ratio(self, /) -> float:
        """
        The angle that is left to the forming angle.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be known beside the numbers.
        """
    @property
    def inside_radius(self, /) -> Length:
        """
        The inside radius that is left.
        """
    @property
    def radius_ratio(self, /) -> float:
        """
        Forming radius to the radius that is left.
        """
    @property
    def strain_ratio(self, /) -> float:
        """
        x = Ri Y/(E T).
        """

@final
class StepFault:
    """
    Why a step cannot be done.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def at(self, /) -> Angle | None:
        """
        The bend's angle from flat when something hits; `None` where the flat is too short.
        """
    @property
    def bend(self, /) -> int | str:
        """
        The bend of the step.
        """
    @property
    def message(self, /) -> str:
        """
        The sentence.
        """
    @property
    def moving(self, /) -> str | None:
        """
        What moves, in words.
        """
    @property
    def still(self, /) -> str | None:
        """
        What it hits, in words.
        """

@final
class Taper:
    """
    A tapered trim: one profile at its near end, another at its far end, leg by leg the same but for their lengths.

    >>> from seamwright.trim import Taper
    >>> def angle(face):
    ...     legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    ...         {"name": "face", "length": face, "start": "outer-corner", "end": "sheet-edge"}]
    ...     bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    ...     return {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    >>> made = Taper.from_dict({"near": angle("2 in"), "far": angle("3 in"), "length": "10 ft", "rule": "sharp-corner", "held": "start-edge",
    ...     "tolerance": "0.01 mm"}).compute()
    >>> [format(girth, "in/16") for girth in made.girths]
    ['6"', '7"']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Taper:
        """
        For unpickling.
        """
    def compute(self, /) -> TaperedTrim:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[TaperedTrim, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Taper:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Taper:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class TaperBend:
    """
    A bend of a tapered trim.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def across(self, /) -> Length:
        """
        From tangent line to tangent line, square across.
        """
    @property
    def far_station(self, /) -> Length:
        """
        Where it comes to the far end, measured along that end from the start edge.
        """
    @property
    def line(self, /) -> tuple[tuple[Length, Length], tuple[Length, Length]]:
        """
        The bend line, from the near end to the far one.
        """
    @property
    def near_station(self, /) -> Length:
        """
        Where it leaves the near end, measured along that end from the start edge.
        """
    @property
    def part(self, /) -> int | str:
        """
        Which bend of the profile by its index, or ``start-hem`` or ``end-hem``.
        """
    @property
    def round_bend(self, /) -> Length | None:
        """
        How much wider the blank would be across this line if the bend were round across it.
        """
    @property
    def turn(self, /) -> BendAngle:
        """
        What the brake turns it by, square across the line.
        """

@final
class TaperLeg:
    """
    A leg of a tapered trim in the flat.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end(self, /) -> tuple[tuple[Length, Length], tuple[Length, Length]]:
        """
        Its side towards the end edge.
        """
    @property
    def part(self, /) -> int | str:
        """
        Which leg of the profile by its index, or ``start-hem`` or ``end-hem``.
        """
    @property
    def slant(self, /) -> Length:
        """
        From end to end in the leg's own plane, square to both ends.
        """
    @property
    def start(self, /) -> tuple[tuple[Length, Length], tuple[Length, Length]]:
        """
        Its side towards the start edge, from the near end to the far one.
        """

@final
class TaperedPiece:
    """
    One piece of a tapered run.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end(self, /) -> Length:
        """
        Where it ends.
        """
    @property
    def far(self, /) -> Profile:
        """
        The profile where it ends.
        """
    @property
    def near(self, /) -> Profile:
        """
        The profile where it starts.
        """
    @property
    def start(self, /) -> Length:
        """
        Where it starts on the run. (In Rust this is ``from``, which is a word of Python's own.)
        """
    @property
    def trim(self, /) -> TaperedTrim:
        """
        The piece in the flat, with its girths at both ends.
        """

@final
class TaperedPieces:
    """
    A tapered run as lapped pieces, in order.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def laps(self, /) -> int:
        """
        How many laps there are.
        """
    @property
    def pieces(self, /) -> list[TaperedPiece]:
        """
        The pieces from the start of the run.
        """

@final
class TaperedRun:
    """
    A tapered run that is cut into lapped pieces.

    >>> from seamwright.trim import TaperedRun
    >>> def strip(width):
    ...     leg = {"name": "strip", "length": width, "start": "sheet-edge", "end": "sheet-edge"}
    ...     return {"thickness": "0.024 in", "legs": [leg], "painted": "upper"}
    >>> run = TaperedRun.from_dict({"near": strip("4 in"), "far": strip("9 in"), "run": "25 ft", "longest": "10 ft", "lap": "4 in",
    ...     "mode": "full-then-rest", "rule": "sharp-corner", "held": "start-edge", "tolerance": "0.01 mm"})
    >>> [format(piece.start, "in/16") for piece in run.compute().pieces]
    ['0"', '116"', '232"']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> TaperedRun:
        """
        For unpickling.
        """
    def compute(self, /) -> TaperedPieces:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[TaperedPieces, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> TaperedRun:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> TaperedRun:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class TaperedTrim:
    """
    A tapered trim in the flat.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def area(self, /) -> Area:
        """
        The area of its metal.
        """
    @property
    def bends(self, /) -> list[TaperBend]:
        """
        The bends, folds of hems among them.
        """
    @property
    def blank(self, /) -> FlatBlank:
        """
        The blank, its start edge on the y axis.
        """
    def dxf(self, /, name: str, format: LengthFormat | str, unit: str) -> bytes:
        """
        The same as the bytes of a DXF file, in ``millimetre`` or ``inch``, true and whole.
        """
    @property
    def girths(self, /) -> tuple[Length, Length]:
        """
        The girths of the near and of the far end.
        """
    @property
    def legs(self, /) -> list[TaperLeg]:
        """
        The legs, returns of hems among them.
        """
    @property
    def near_is_cut(self, /) -> bool:
        """
        Whether its near end is cut askew, as the lower end of a valley's pan: then a bend's station there is told square to the start edge.
        """
    def svg(self, /, name: str, format: LengthFormat | str) -> str:
        """
        A drawing of it with its running distances at both ends, as SVG text.
        """

@final
class Tooled:
    """
    What the tool has to do for a wanted bend.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def angle_ratio(self, /) -> float:
        """
        The angle that is left to the forming angle.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be known beside the numbers.
        """
    @property
    def forming_angle(self, /) -> BendAngle:
        """
        Angle in the tool, from flat.
        """
    @property
    def forming_radius(self, /) -> Length:
        """
        Inside radius in the tool.
        """
    @property
    def over_bend(self, /) -> Angle:
        """
        By how much the tool goes over the wanted angle.
        """
    @property
    def strain_ratio(self, /) -> float | None:
        """
        x = Ri Y/(E T), where the elastic formula gave it.
        """

@final
class TrialBend:
    """
    A strip of known width, bent once, and its two legs measured.

    >>> from seamwright.trim import BendRule, TrialBend
    >>> strip = {"thickness": "0.05 in", "inside_radius": "0.032 in", "angle": "90 deg", "blank": "1.921 in"}
    >>> found = TrialBend.from_dict(strip | {"legs": ["1 in", "1 in"], "measured_to": "outer-corner"}).compute()
    >>> round(found.factor.value, 4), format(found.deduction, "in.3")
    (0.4423, '0.079 in')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> TrialBend:
        """
        For unpickling.
        """
    def compute(self, /) -> TrialFound:
        """
        The result.
        """
    def explain(self, /) -> tuple[TrialFound, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> TrialBend:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> TrialBend:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class TrialFound:
    """
    What a trial bend says.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def allowance(self, /) -> Length:
        """
        What the bend took: the strip less the flat parts of its legs.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What must be known beside the numbers.
        """
    @property
    def deduction(self, /) -> Length | None:
        """
        The deduction, for a table; ``None`` at 180 degrees and more.
        """
    @property
    def factor(self, /) -> NeutralFactor:
        """
        The neutral-axis factor; with its source it makes a rule.
        """
    @property
    def source(self, /) -> Source:
        """
        Where the factor comes from.
        """

@final
class TrimFigures:
    """
    What a shop asks of a trim: lines, size, section, faces, and with a sheet and a length of piece also mass and areas.

    >>> from seamwright.trim import Bend, BendRule, Leg, NeutralFactor, Profile, TrimFigures
    >>> legs = [Leg("a", "20 mm", "sheet-edge", "outer-corner"), Leg("b", "30 mm", "outer-corner", "sheet-edge")]
    >>> profile = Profile("1 mm", legs, [Bend("90 deg", "up", "0 mm")], "upper")
    >>> figures = TrimFigures.from_dict({"profile": profile, "rule": BendRule.neutral_axis(NeutralFactor.MIDDLE)}).compute()
    >>> figures.painted, figures.section.width
    (Length('48 mm'), Length('20 mm'))
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> TrimFigures:
        """
        For unpickling.
        """
    def compute(self, /) -> Figures:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[Figures, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> TrimFigures:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> TrimFigures:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

@final
class Vertices:
    """
    A profile said by the vertices of a drawing whose dimensions are all outside, or all inside, ones.

    >>> from seamwright.trim import Vertices
    >>> legs = [{"name": "flange", "to": {"x": "4 in", "y": "0 in"}}, {"name": "face", "to": {"x": "4 in", "y": "-3 in"}}]
    >>> line = {"thickness": "0.024 in", "inside_radius": "0.03 in", "drawn_to": "outside", "start": {"x": "0 in", "y": "0 in"}}
    >>> profile = Vertices.from_dict(line | {"legs": legs, "painted": "upper"}).compute()
    >>> [str(leg.length) for leg in profile.legs], profile.legs[0].end
    (['101.6 mm', '76.2 mm'], 'outer-corner')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Vertices:
        """
        For unpickling.
        """
    def compute(self, /) -> Profile:
        """
        The result.
        """
    def explain(self, /) -> tuple[Profile, Worksheet]:
        """
        The result, and its worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Vertices:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Vertices:
        """
        Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
        """
    @property
    def title(self, /) -> str:
        """
        What it is, in words.
        """
    def to_dict(self, /) -> dict:
        """
        It as a dict, with every quantity as text in its canonical form.
        """
    def to_json(self, /) -> str:
        """
        It as JSON text, with every quantity in its canonical form and every default written out.
        """

def _girths_into(profile: Profile, rule: BendRule, thickness: NDArray[float64], inside_radius: NDArray[float64], girths: NDArray[float64], unit: str) -> None:
    """
    Fills `girths` with those of the elements, all in this unit. The lock on the interpreter is released meanwhile.
    """

def din_compensation(size: BendSize) -> Length:
    """
    The compensation value of DIN 6935, with the standard's own leg convention: to be subtracted from the sum of the legs.
    """
