"""
The classes of `seamwright.pitch`.
"""

from .record import Caution, Source, Worksheet
from .units import Angle, BendAngle, Length
from typing import Any, Final, SupportsIndex, final

__all__ = ["BendAt", "Corner", "CornerGeometry", "CornerSide", "Framing", "FramingRow", "JunctionBend", "Pitch", "SlopeCheck", "SlopeRule"]

@final
class BendAt:
    """
    A junction whose bend is asked for, in the section square to its line. Walls and fascias are plumb.

    >>> from seamwright.pitch import BendAt
    >>> str(BendAt.headwall("12:12").compute().bend), BendAt.ridge("12:12", "12:12").compute().turn
    ('45 deg', 'down')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    def compute(self, /) -> JunctionBend:
        """
        The bend.
        """
    @staticmethod
    def eave(pitch: Pitch | str) -> BendAt:
        """
        From the roof down over a plumb fascia at the low edge.
        """
    def explain(self, /) -> tuple[JunctionBend, Worksheet]:
        """
        The bend, and its worksheet.
        """
    @staticmethod
    def headwall(pitch: Pitch | str) -> BendAt:
        """
        From the roof up a plumb wall that it rises to.
        """
    @staticmethod
    def high_eave(pitch: Pitch | str) -> BendAt:
        """
        From the roof down over a plumb face at the high edge of a single slope.
        """
    @staticmethod
    def hip(corner: Corner) -> BendAt:
        """
        A hip.
        """
    @property
    def name(self, /) -> str:
        """
        The junction in the trade's words.
        """
    @staticmethod
    def pitch_transition(lower: Pitch | str, upper: Pitch | str) -> BendAt:
        """
        A change of pitch down one slope.
        """
    @staticmethod
    def rake() -> BendAt:
        """
        From the roof down over a plumb face along the slope.
        """
    @staticmethod
    def ridge(first: Pitch | str, second: Pitch | str) -> BendAt:
        """
        Two planes that fall away from a level line.
        """
    @staticmethod
    def sidewall() -> BendAt:
        """
        From the roof up a plumb wall along the slope.
        """
    @staticmethod
    def valley(corner: Corner) -> BendAt:
        """
        A valley.
        """

@final
class Corner:
    """
    Two planes whose eaves meet at a plan corner: a hip, or the valley of the same two planes.

    The plan angle is the one between the two eaves, 90 degrees for a square building.

    >>> from seamwright.pitch import Corner
    >>> round(Corner("12:12", "12:12", "90 deg").compute().dihedral.degrees, 12)
    120.0
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, first: Pitch | str, second: Pitch | str, plan: Angle | str) -> Corner: ...
    def __reduce__(self, /) -> tuple[type, tuple[Pitch, Pitch, Angle]]: ...
    def __repr__(self, /) -> str: ...
    def compute(self, /) -> CornerGeometry:
        """
        The geometry of the line.
        """
    def explain(self, /) -> tuple[CornerGeometry, Worksheet]:
        """
        The geometry of the line, and its worksheet.
        """
    @property
    def first(self, /) -> Pitch:
        """
        The pitch of side 1.
        """
    @property
    def plan(self, /) -> Angle:
        """
        The plan angle between the two eaves.
        """
    @property
    def second(self, /) -> Pitch:
        """
        The pitch of side 2.
        """

@final
class CornerGeometry:
    """
    The geometry of a hip or valley. It pickles as its corner, which computes it again.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def dihedral(self, /) -> Angle:
        """
        The angle between the two planes: under the roof at a hip, on the weather side at a valley.
        """
    @property
    def first(self, /) -> CornerSide:
        """
        Side 1.
        """
    @property
    def second(self, /) -> CornerSide:
        """
        Side 2.
        """
    @property
    def slope(self, /) -> Angle:
        """
        The slope of the line itself, up from level.
        """

@final
class CornerSide:
    """
    What one side of a hip or valley sees of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[CornerGeometry, str]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def backing(self, /) -> Angle:
        """
        From the plane square to the line's own vertical plane down to this roof plane; negative where the plan angle is more than 90 degrees.
        """
    def drop_over(self, /, coverage: Length | str) -> Length:
        """
        How much farther up the slope the line is met after one coverage along the eave: the drop that is marked on a skew end.
        """
    @property
    def in_plane(self, /) -> Angle:
        """
        In the roof plane, from this side's eave to the line.
        """
    @property
    def length_factor(self, /) -> float:
        """
        True length of the line for each unit of this side's level common run.
        """
    @property
    def meeting(self, /) -> Angle:
        """
        The meeting angle of this side's seams with the line, in the roof plane: 90 degrees is square, 0 is along the seams.
        """
    @property
    def plan(self, /) -> Angle:
        """
        In plan, from this side's eave to the line.
        """
    @property
    def signed_meeting(self, /) -> Angle:
        """
        The meeting angle with its sign: positive where the seam farther from the corner meets the line farther up the slope.
        """
    @property
    def skew(self, /) -> Angle:
        """
        The skew, 90 degrees less the meeting angle, as set on a bevel.
        """

@final
class Framing:
    """
    The framing-square row of a pitch, for a square plan corner with this pitch on both sides.

    >>> from seamwright.pitch import Framing
    >>> row = Framing("6:12", '16"').compute()
    >>> format(row.jack_difference, "in.3"), format(row.hip_per_foot, "in/16")
    ('17.889 in', '18"')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, pitch: Pitch | str, spacing: Length | str) -> Framing: ...
    def __reduce__(self, /) -> tuple[type, tuple[Pitch, Length]]: ...
    def __repr__(self, /) -> str: ...
    def compute(self, /) -> FramingRow:
        """
        The row.
        """
    def explain(self, /) -> tuple[FramingRow, Worksheet]:
        """
        The row, and its worksheet.
        """
    @property
    def pitch(self, /) -> Pitch:
        """
        The pitch of both planes.
        """
    @property
    def spacing(self, /) -> Length:
        """
        The spacing of jacks along the eave: seams, battens or rafters.
        """

@final
class FramingRow:
    """
    One row of the framing square. It pickles as its input, which computes it again.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def backing_ratio(self, /) -> float:
        """
        Tangent of the backing angle, rise over hip length.
        """
    @property
    def common_per_foot(self, /) -> Length:
        """
        Length down the slope for each foot of common run.
        """
    @property
    def hip_per_foot(self, /) -> Length:
        """
        Length of a hip or valley for each foot of common run.
        """
    @property
    def hip_run_per_foot(self, /) -> Length:
        """
        Level run of a hip or valley for each foot of common run.
        """
    @property
    def hip_side_cut(self, /) -> Length:
        """
        The figure to set against 12 in on the tongue for the side cut of a hip or valley.
        """
    @property
    def jack_difference(self, /) -> Length:
        """
        The difference in length of two neighbouring jacks at the spacing.
        """
    @property
    def jack_side_cut(self, /) -> Length:
        """
        The figure to set against 12 in on the tongue for the side cut of a jack.
        """

@final
class JunctionBend:
    """
    A bend that a junction asks for. It pickles as its junction, which computes it again.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bend(self, /) -> BendAngle:
        """
        How far the sheet is bent, from flat.
        """
    @property
    def turn(self, /) -> str:
        """
        To which side a sheet that comes down or across the roof turns: ``down`` away from the weather, ``up`` towards it, or ``none``.
        """

@final
class Pitch:
    """
    The pitch of a roof plane, kept as given: a ratio of two exact lengths, or degrees.

    Text is ``6:12``, ``6 1/2:12``, ``150 mm:300 mm``, ``33.3 %`` or ``26.5 deg``; a bare number is refused. Two ratios are equal if they are
    the same slope; a ratio and degrees are never equal.

    >>> from seamwright.pitch import Pitch
    >>> Pitch("6:12") == Pitch("50 %"), Pitch("5:12").slope_factor * 12
    (True, 13.0)
    """
    FLAT: Final[Pitch]
    """
    No slope at all.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, pitch: Pitch | str) -> Pitch: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def angle(self, /) -> Angle:
        """
        The slope angle, measured up from level.
        """
    @property
    def as_rise_run(self, /) -> tuple[Length, Length] | None:
        """
        The rise and the run as given; ``None`` for a pitch in degrees.
        """
    def at_least(self, /, limit: Pitch | str) -> bool:
        """
        Whether it is as steep as this limit or steeper; ratios are compared exactly.

        >>> Pitch("1:48").at_least("1/4:12"), Pitch("2 %").at_least("1/4:12")
        (True, False)
        """
    def compare(self, /, other: Pitch | str) -> int:
        """
        Which of two pitches is the steeper: -1 where the other is, 0 for the same slope, 1 where this is.

        >>> Pitch("12:12").compare("45 deg")
        0
        """
    @property
    def cosine(self, /) -> float:
        """
        Cosine of the slope angle: level run for each unit of length down the slope.
        """
    @staticmethod
    def from_angle(angle: Angle | str) -> Pitch:
        """
        A pitch from its slope angle, measured up from level.
        """
    @staticmethod
    def in_twelve(rise: Length | str) -> Pitch:
        """
        A pitch by its rise in a run of 12 in.
        """
    @property
    def is_flat(self, /) -> bool:
        """
        Whether it has no slope.
        """
    @property
    def is_in_degrees(self, /) -> bool:
        """
        Whether it was given in degrees.
        """
    @staticmethod
    def parse(text: str) -> Pitch:
        """
        Reads a pitch from its text.
        """
    @property
    def percent(self, /) -> float:
        """
        The rise in percent of the run.
        """
    @property
    def ratio(self, /) -> float:
        """
        Rise over run, the tangent of the slope angle.
        """
    def rise_over(self, /, run: Length | str) -> Length:
        """
        The rise over this level run.

        >>> format(Pitch("7:12").rise_over("8'"), "in/16")
        '56"'
        """
    @staticmethod
    def rise_run(rise: Length | str, run: Length | str) -> Pitch:
        """
        A pitch from a rise and the level run over which it rises, both as measured.

        >>> Pitch.rise_run("1.2 m", "3 m").percent
        40.0
        """
    @property
    def sine(self, /) -> float:
        """
        Sine of the slope angle: rise for each unit of length down the slope.
        """
    @property
    def slope_factor(self, /) -> float:
        """
        True length down the slope for each unit of level run; also surface for each unit of plan area.
        """
    def slope_length(self, /, run: Length | str) -> Length:
        """
        The true length down the slope over this level run.
        """

@final
class SlopeCheck:
    """
    The answer to a slope check, with the rule that gave it. It pickles as its rule and pitch, which check again.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Pitch]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know of the answer.
        """
    @property
    def passes(self, /) -> bool:
        """
        Whether the pitch is the limit or steeper.
        """
    @property
    def pitch(self, /) -> Pitch:
        """
        The pitch that was checked.
        """
    @property
    def rule(self, /) -> SlopeRule:
        """
        The rule.
        """
    @property
    def source(self, /) -> Source:
        """
        The document and clause of the rule.
        """

@final
class SlopeRule:
    """
    The least pitch that a document allows for a covering.

    >>> from seamwright.pitch import SlopeRule
    >>> SlopeRule.IBC_STANDING_SEAM.check("1/4:12").passes
    True
    """
    FLORIDA_LAPPED_SEALED: Final[SlopeRule]
    """
    The residential code of Florida, with applied lap sealant.
    """
    FLORIDA_LAPPED_UNSEALED: Final[SlopeRule]
    """
    The residential code of Florida, without lap sealant.
    """
    FLORIDA_STANDING_SEAM: Final[SlopeRule]
    """
    The residential code of Florida, standing seams.
    """
    IBC_LAPPED_SEALED: Final[SlopeRule]
    """
    Lapped, nonsoldered seams with applied lap sealant.
    """
    IBC_LAPPED_UNSEALED: Final[SlopeRule]
    """
    Lapped, nonsoldered seams without lap sealant.
    """
    IBC_METAL_SHINGLES: Final[SlopeRule]
    """
    Metal roof shingles.
    """
    IBC_STANDING_SEAM: Final[SlopeRule]
    """
    Standing seams.
    """
    IRC_LAPPED_SEALED: Final[SlopeRule]
    """
    The residential code, with applied lap sealant.
    """
    IRC_LAPPED_UNSEALED: Final[SlopeRule]
    """
    The residential code, without lap sealant.
    """
    IRC_METAL_SHINGLES: Final[SlopeRule]
    """
    The residential code, metal roof shingles.
    """
    IRC_STANDING_SEAM: Final[SlopeRule]
    """
    The residential code, standing seams.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, covering: str, limit: Pitch | str, source: Source, printed_percentage: SupportsIndex | None = None) -> SlopeRule: ...
    def __reduce__(self, /) -> tuple[type, tuple[str, Pitch, Source, int | None]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def all() -> list[SlopeRule]:
        """
        Every rule that the library holds.
        """
    def check(self, /, pitch: Pitch | str) -> SlopeCheck:
        """
        Compares a pitch with the rule: ratios exactly, degrees through the tangent.
        """
    @property
    def covering(self, /) -> str:
        """
        The covering that the rule speaks of.
        """
    @staticmethod
    def given(covering: str, limit: Pitch | str, source: Source) -> SlopeRule:
        """
        A rule from another document: the panel's own approval, the engineer, a local code.
        """
    @property
    def limit(self, /) -> Pitch:
        """
        The least pitch.
        """
    @property
    def printed_percentage(self, /) -> int | None:
        """
        The whole percentage that the document prints beside it, if it prints one; it is never compared.
        """
    @property
    def source(self, /) -> Source:
        """
        Where the rule stands.
        """
