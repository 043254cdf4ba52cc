"""
The compiled part of `seamwright`; use `seamwright` and its rooms instead.
"""

from _typeshed import SupportsGetItem
from collections.abc import Iterable
from fractions import Fraction
from typing import Any, Final, SupportsFloat, SupportsIndex, final

__all__ = ["VERSION", "Angle", "Area", "Bend", "BendAngle", "BendAt", "BendRule", "BendSize", "Caution", "Corner", "CornerGeometry", "CornerSide", "Deduction", "DeductionTable", "Density", "DinFactor", "Edge", "Expansion", "Flat", "FlatBend", "FlatLeg", "FlatPattern", "Force", "Framing", "FramingRow", "Gauge", "GaugeSystem", "JunctionBend", "Leg", "Length", "LengthChange", "LengthFormat", "LineLoad", "LineMass", "Mass", "NeutralFactor", "Pitch", "Pressure", "Profile", "SetbackFactor", "ShopRounding", "SlopeCheck", "SlopeRule", "Source", "Step", "SurfaceMass", "Temperature", "TemperatureDifference", "Volume", "Worksheet", "_calculation_names", "_compute_json", "_error_kinds", "_explain_json", "_raise_kind", "din_compensation"]

VERSION: Final[str]
"""
The version of the library.
"""

@final
class Angle:
    """
    An angle in degrees, kept as given. Text is ``18.5 deg``, ``18.5°`` or ``0.3 rad``; a bare number is refused.

    >>> from seamwright.units import Angle
    >>> Angle("30 deg").sin()
    0.5
    """
    SQUARE: Final[Angle]
    """
    The square.
    """
    ZERO: Final[Angle]
    """
    No angle.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, angle: Angle | str) -> Angle: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def cos(self, /) -> float:
        """
        Its cosine.
        """
    @property
    def degrees(self, /) -> float:
        """
        The angle in degrees.
        """
    @staticmethod
    def degrees_from(degrees: SupportsFloat | SupportsIndex) -> Angle:
        """
        An angle of so many degrees.
        """
    @staticmethod
    def parse(text: str) -> Angle:
        """
        Reads an angle with its unit.
        """
    @property
    def radians(self, /) -> float:
        """
        The angle in radians.
        """
    def sin(self, /) -> float:
        """
        Its sine.
        """
    def tan(self, /) -> float:
        """
        Its tangent; infinite at 90 degrees.
        """

@final
class Area:
    """
    An area: ``12 ft2``, ``1 square`` (100 ft2).
    """
    ZERO: Final[Area]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Area | str) -> Area: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Area:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Area:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

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
class BendAngle:
    """
    How far sheet is bent, measured from flat: 0 is flat, 90 is square, 180 is folded back on itself. Text gives degrees from flat.

    >>> from seamwright.units import BendAngle
    >>> BendAngle.between_flanges("120 deg") == BendAngle.from_flat("60 deg")
    True
    """
    FOLDED: Final[BendAngle]
    """
    A fold back on itself, as in a hem.
    """
    SQUARE: Final[BendAngle]
    """
    A square bend.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, from_flat: BendAngle | str) -> BendAngle: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def angle(self, /) -> Angle:
        """
        The angle from flat.
        """
    @staticmethod
    def between_flanges(angle: Angle | str) -> BendAngle:
        """
        The bend whose flanges stand at this angle to each other.
        """
    @property
    def degrees(self, /) -> float:
        """
        Degrees from flat.
        """
    @staticmethod
    def from_flat(angle: Angle | str) -> BendAngle:
        """
        The bend, measured from flat.
        """
    def half_tangent(self, /) -> float:
        """
        Tangent of half the bend, the factor from radius to setback; infinite at 180 degrees.
        """
    @property
    def opening(self, /) -> Angle:
        """
        The angle between the flanges; negative where the bend goes past 180 degrees.
        """

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
class Caution:
    """
    Something that the reader must know before metal is cut by the result.

    >>> from seamwright.pitch import SlopeRule
    >>> [caution.name for caution in SlopeRule.IBC_STANDING_SEAM.check("2 %").cautions]
    ['below-minimum-slope', 'rounded-percentage']
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, number: SupportsIndex, name: str, subject: str, message: str, arguments: dict[str, str], source: Source, text: str) -> Caution: ...
    def __reduce__(self, /) -> tuple[type, tuple[int, str, str, str, dict[str, str], Source, str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def arguments(self, /) -> dict[str, str]:
        """
        Its arguments by name.
        """
    @property
    def message(self, /) -> str:
        """
        The sentence.
        """
    @property
    def name(self, /) -> str:
        """
        The short name of its kind.
        """
    @property
    def number(self, /) -> int:
        """
        The fixed number of its kind.
        """
    @property
    def source(self, /) -> Source:
        """
        Where the rule behind it comes from.
        """
    @property
    def subject(self, /) -> str:
        """
        What it is about, as a path.
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
    A table of measured deductions with its source. Between two rows of one thickness and radius the angle is interpolated.
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
class Density:
    """
    A density: ``8.89 g/cm3``.
    """
    ZERO: Final[Density]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Density | str) -> Density: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Density:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Density:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
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
class Edge:
    """
    An edge of a profile: raw, or with a closed or an open hem. A hem folded up lies on the upper face.
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

@final
class Expansion:
    """
    A coefficient of linear thermal expansion: ``17.3e-6 /K``.
    """
    ZERO: Final[Expansion]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Expansion | str) -> Expansion: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Expansion:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Expansion:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
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
    def rule(self, /) -> BendRule:
        """
        The rule of every bend that has none of its own.
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
        Which bend of the profile by its index, or ``start-hem`` or ``end-hem``.
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
        Which leg of the profile by its index, or ``start-hem`` or ``end-hem``.
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
class Force:
    """
    A force: ``200 lbf``, ``0.9 kN``.
    """
    ZERO: Final[Force]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Force | str) -> Force: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Force:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Force:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
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
class Gauge:
    """
    A gauge in its system; a bare gauge number is refused.

    >>> from seamwright.metal import Gauge
    >>> format(Gauge("24 ga galvanized").charted_thickness, "in.4")
    '0.0276 in'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, gauge: Gauge | str) -> Gauge: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def charted_thickness(self, /) -> Length:
        """
        The thickness as charts print it.
        """
    @property
    def defining_weight(self, /) -> SurfaceMass | None:
        """
        The weight that defines it, where one does.
        """
    @property
    def least_thickness(self, /) -> Length | None:
        """
        The least thickness, where the system gives one.
        """
    @staticmethod
    def new(system: GaugeSystem | str, number: SupportsIndex) -> Gauge:
        """
        The gauge of this number: for Brown and Sharpe 0000 is -3; for copper the number is its weight in oz/ft2.
        """
    @property
    def number(self, /) -> int:
        """
        Its number in the system.
        """
    @staticmethod
    def parse(text: str) -> Gauge:
        """
        Reads a gauge with its system.
        """
    @property
    def source(self, /) -> Source:
        """
        Where its thickness comes from.
        """
    @property
    def system(self, /) -> GaugeSystem:
        """
        Its system.
        """
    @property
    def thickness(self, /) -> Length:
        """
        Its thickness, unrounded.
        """

@final
class GaugeSystem:
    """
    A system of gauges by its name: us-standard, manufacturers-standard, galvanized, brown-and-sharpe, zinc-gauge or copper.

    >>> from seamwright.metal import GaugeSystem
    >>> GaugeSystem("brown-and-sharpe").nearest("0.0216 in").number
    23
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, system: GaugeSystem | str) -> GaugeSystem: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @staticmethod
    def all() -> list[GaugeSystem]:
        """
        Every system.
        """
    @property
    def name(self, /) -> str:
        """
        The name as text.
        """
    def nearest(self, /, thickness: Length | str) -> Gauge:
        """
        The gauge whose thickness differs least.
        """
    @property
    def numbers(self, /) -> str:
        """
        The numbers that it has, in words.
        """
    @staticmethod
    def parse(text: str) -> GaugeSystem:
        """
        The system with this name.
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
class Length:
    """
    A length, held as a whole number of picometres (``pm``), so that inches and millimetres add, compare and hash without drift.

    Made from text with its unit, in any notation of a tape, a drawing or a spreadsheet; a bare number is refused.

    >>> from seamwright.units import Length
    >>> Length("12'-3 5/8\\"") == Length("3749.675 mm")
    True
    >>> format(Length("10'") + Length('3 1/2"'), "ft-in/16")
    '10\\'-3 1/2"'
    """
    MAX: Final[Length]
    """
    The greatest length.
    """
    MIN: Final[Length]
    """
    The least length.
    """
    ZERO: Final[Length]
    """
    No length.
    """
    def __abs__(self, /) -> Length: ...
    def __add__(self, value: object, /) -> Length: ...
    def __bool__(self, /) -> bool: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __format__(self, /, format_spec: str) -> str: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __mul__(self, value: object, /) -> Length: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __neg__(self, /) -> Length: ...
    def __new__(cls, /, length: Length | str) -> Length: ...
    def __pos__(self, /) -> Length: ...
    def __radd__(self, value: object, /) -> Length: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __rmul__(self, value: object, /) -> Length: ...
    def __rsub__(self, value: object, /) -> Length: ...
    def __str__(self, /) -> str: ...
    def __sub__(self, value: object, /) -> Length: ...
    @staticmethod
    def feet(n: SupportsIndex) -> Length:
        """
        So many whole feet.
        """
    def format(self, /, format: LengthFormat | str) -> str:
        """
        The length as text in this format, as ``format(length, "ft-in/16")`` gives it.
        """
    def fraction(self, /, unit: str) -> Fraction:
        """
        The number of this unit (in, ft, mm, cm, m, um), exactly.

        >>> Length("3 5/8\\"").fraction("in")
        Fraction(29, 8)
        """
    @staticmethod
    def from_f64(value: SupportsFloat | SupportsIndex, unit: str) -> Length:
        """
        The one conversion from a floating-point number: exact in its bits, then rounded half-even to a picometre.

        >>> Length.from_f64(0.5, "in")
        Length('12.7 mm')
        """
    @staticmethod
    def from_pm(pm: SupportsIndex) -> Length:
        """
        A length of so many picometres.
        """
    def get(self, /, unit: str) -> float:
        """
        The number of this unit (in, ft, mm, cm, m, um) in floating point.

        >>> Length("1'").get("in")
        12.0
        """
    @staticmethod
    def inches(n: SupportsIndex) -> Length:
        """
        So many whole inches.
        """
    @staticmethod
    def inches_64(n: SupportsIndex) -> Length:
        """
        So many 64ths of an inch.
        """
    @property
    def is_negative(self, /) -> bool:
        """
        Whether it is less than nothing.
        """
    @property
    def is_positive(self, /) -> bool:
        """
        Whether it is more than nothing.
        """
    @staticmethod
    def micrometres(n: SupportsIndex) -> Length:
        """
        So many whole micrometres.
        """
    @staticmethod
    def mils(n: SupportsIndex) -> Length:
        """
        So many thousandths of an inch.
        """
    @staticmethod
    def parse(text: str) -> Length:
        """
        Reads a length with its unit.

        >>> Length.parse("3 5/8\\"").pm
        92075000000
        """
    @staticmethod
    def parse_exact(text: str) -> Length:
        """
        Reads a length with its unit, and refuses one that is not a whole number of picometres.
        """
    @staticmethod
    def parse_in(text: str, unit: str) -> Length:
        """
        Reads a length; ``unit`` (in, ft, mm, cm, m, um) is that of a number without one.

        >>> Length.parse_in("39", "in") == Length('39"')
        True
        """
    @property
    def pm(self, /) -> int:
        """
        Picometres, exact.
        """
    def station(self, /, i: SupportsIndex, n: SupportsIndex) -> Length:
        """
        The end of the ``i``-th of ``n`` equal parts, rounded once: stations do not accumulate error.

        >>> Length("10\\"").station(3, 3) == Length("10\\"")
        True
        """
    def times(self, /, other: Length | str) -> Area:
        """
        The area of a rectangle with these two sides.
        """
    @staticmethod
    def total(lengths: Iterable[Length | str]) -> Length:
        """
        The sum of lengths, checked once at the end.

        >>> Length.total(["1'", "6\\""])
        Length('457.2 mm')
        """

@final
class LengthChange:
    """
    How much longer a length of metal gets with heat; shorter with a negative difference.

    >>> from seamwright.movement import LengthChange
    >>> format(LengthChange("9.5e-6 /degF", '1"', "60 degF").compute(), "in.5")
    '0.00057 in'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, expansion: Expansion | str, length: Length | str, difference: TemperatureDifference | str) -> LengthChange: ...
    def __reduce__(self, /) -> tuple[type, tuple[Expansion, Length, TemperatureDifference]]: ...
    def __repr__(self, /) -> str: ...
    def compute(self, /) -> Length:
        """
        The change.
        """
    @property
    def difference(self, /) -> TemperatureDifference:
        """
        How much warmer it gets; negative for cooling.
        """
    @property
    def expansion(self, /) -> Expansion:
        """
        Coefficient of linear expansion.
        """
    def explain(self, /) -> tuple[Length, Worksheet]:
        """
        The change, and its worksheet.
        """
    @property
    def length(self, /) -> Length:
        """
        The length that moves.
        """

@final
class LengthFormat:
    """
    How a length is written, itself written as text.

    ``mm`` is exact; ``ft-in/16`` and ``in/32`` are feet, inches and fractions; ``in.3``, ``ft.4``, ``mm.1``, ``cm.1``, ``m.3`` and
    ``um.0`` are decimal. A direction may follow: ``in/16 ceil``. Without one, ties go to the even step.

    >>> from seamwright.units import LengthFormat
    >>> LengthFormat("in/2 floor").text('3 5/8"')
    '3 1/2"'
    """
    EXACT: Final[LengthFormat]
    """
    The canonical form: decimal millimetres, whose round trip is the identity.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, format: LengthFormat | str) -> LengthFormat: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @staticmethod
    def parse(text: str) -> LengthFormat:
        """
        Reads a format from its text.
        """
    def rounded(self, /, length: Length | str) -> Length:
        """
        The length as this format rounds it.
        """
    @property
    def rounding(self, /) -> str:
        """
        The direction of rounding: ceil, floor, away, toward, half-even or half-away.
        """
    @property
    def step(self, /) -> Length:
        """
        The step that this format shows; a picometre for the exact form.
        """
    def text(self, /, length: Length | str) -> str:
        """
        The length as text.
        """

@final
class LineLoad:
    """
    A force for each length: ``60 lbf/ft``.
    """
    ZERO: Final[LineLoad]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: LineLoad | str) -> LineLoad: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> LineLoad:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> LineLoad:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class LineMass:
    """
    A mass for each length, of a trim: ``1 lb/ft``.
    """
    ZERO: Final[LineMass]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: LineMass | str) -> LineMass: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> LineMass:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> LineMass:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Mass:
    """
    A mass: ``2 lb``, ``0.9 kg``.
    """
    ZERO: Final[Mass]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Mass | str) -> Mass: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Mass:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Mass:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
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
class Pressure:
    """
    A pressure or a stress: ``30 psf``, ``1.4 kPa``, ``36 ksi``.
    """
    ZERO: Final[Pressure]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Pressure | str) -> Pressure: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Pressure:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Pressure:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
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
class ShopRounding:
    """
    The shop's rule: a step, a direction (ceil, floor, away, toward, half-even, half-away), and a tolerance within which an excess is noise.

    The tolerance is a micrometre unless given.

    >>> from seamwright.units import ShopRounding
    >>> format(ShopRounding('1"', "ceil").round('120 1/16"'), "in/16")
    '121"'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, increment: Length | str, rounding: str, tolerance: Length | str | None = None) -> ShopRounding: ...
    def __reduce__(self, /) -> tuple[type, tuple[str, str, str]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def increment(self, /) -> Length:
        """
        The step.
        """
    def round(self, /, length: Length | str) -> Length:
        """
        The length at the whole step.
        """
    @property
    def rounding(self, /) -> str:
        """
        The direction: ceil, floor, away, toward, half-even or half-away.
        """
    @property
    def tolerance(self, /) -> Length:
        """
        The tolerance.
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

@final
class Source:
    """
    Where a rule, a figure or a choice comes from: a published document, common practice, the engineer or the user.

    >>> from seamwright.record import Source
    >>> str(Source.engineer("of record", "calculation 12"))
    'engineer of record, calculation 12'
    """
    COMMON_PRACTICE: Final[Source]
    """
    A habit of the trade without a published source.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @staticmethod
    def _common_practice() -> Source:
        """
        For unpickling.
        """
    @property
    def document(self, /) -> str | None:
        """
        The document of a published source or of the engineer.
        """
    @property
    def edition(self, /) -> str | None:
        """
        The edition of a published source; empty where the copy did not show one.
        """
    @staticmethod
    def engineer(name: str, document: str) -> Source:
        """
        The engineer's own figure.
        """
    @property
    def place(self, /) -> str | None:
        """
        Clause, table or page of a published source.
        """
    @staticmethod
    def published(document: str, edition: str, place: str, seen: str) -> Source:
        """
        A published place; ``seen`` says how it was seen: text, secondary, memory or derived.
        """
    @property
    def rests_on_memory(self, /) -> bool:
        """
        Whether the figure was recalled and not read: to be confirmed before metal is cut by it.
        """
    @property
    def seen(self, /) -> str | None:
        """
        How a published source was seen: text, secondary, memory or derived.
        """
    @staticmethod
    def user(note: str) -> Source:
        """
        The user's own figure, with what is said of it.
        """

@final
class Step:
    """
    One step of a worksheet, as a foreman would check it by hand.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, what: str, formula: str, inputs: SupportsGetItem[int, tuple[str, str]], result: str, source: Source | None) -> Step: ...
    def __reduce__(self, /) -> tuple[type, tuple[str, str, list[tuple[str, str]], str, Source | None]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def formula(self, /) -> str:
        """
        The formula in words and symbols.
        """
    @property
    def inputs(self, /) -> list[tuple[str, str]]:
        """
        The values put in, each with its symbol. (In Rust this is ``with``, which is a word of Python's own.)
        """
    @property
    def result(self, /) -> str:
        """
        The result.
        """
    @property
    def source(self, /) -> Source | None:
        """
        The source of the rule, where it is more than arithmetic.
        """
    @property
    def what(self, /) -> str:
        """
        What is computed.
        """

@final
class SurfaceMass:
    """
    A mass for each area, of a sheet or of its coating: ``275 g/m2``.
    """
    ZERO: Final[SurfaceMass]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: SurfaceMass | str) -> SurfaceMass: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> SurfaceMass:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> SurfaceMass:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Temperature:
    """
    A temperature, held in degrees Celsius. Text is ``20 degC``, ``68 degF`` or ``293.15 K``.

    >>> from seamwright.units import Temperature
    >>> Temperature("32 degF").get("degC")
    0.0
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, temperature: Temperature | str) -> Temperature: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def above(self, /, other: Temperature | str) -> TemperatureDifference:
        """
        How much warmer this is than the other; negative where it is colder.
        """
    def get(self, /, scale: str) -> float:
        """
        The number on this scale (degC, degF, K).
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, scale: str) -> Temperature:
        """
        A temperature on this scale (degC, degF, K).
        """
    @staticmethod
    def parse(text: str) -> Temperature:
        """
        Reads a number with its scale.
        """

@final
class TemperatureDifference:
    """
    A difference of temperature, never a temperature: ``200 degF`` here is 111 K.
    """
    ZERO: Final[TemperatureDifference]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: TemperatureDifference | str) -> TemperatureDifference: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> TemperatureDifference:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> TemperatureDifference:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Volume:
    """
    A volume: ``300 mL``, ``10.1 floz``.
    """
    ZERO: Final[Volume]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Volume | str) -> Volume: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Volume:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Volume:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Worksheet:
    """
    The recorded working of a calculation.

    >>> from seamwright.pitch import Corner
    >>> geometry, sheet = Corner("12:12", "12:12", "90 deg").explain()
    >>> print(sheet.steps()[0])
    plan angle D1 from eave 1 to the line = atan(sin W / (m1/m2 + cos W)) with W = 90 deg, m1 = 1, m2 = 1 = 45 deg (geometry [derived])
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, title: str, entries: SupportsGetItem[int, Step | Worksheet]) -> Worksheet: ...
    def __reduce__(self, /) -> tuple[type, tuple[str, list[Step | Worksheet]]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def entries(self, /) -> list[Step | Worksheet]:
        """
        Steps and parts in the order of the work.
        """
    def steps(self, /) -> list[Step]:
        """
        Every step of this sheet and of its parts, in order.
        """
    @property
    def title(self, /) -> str:
        """
        What the sheet, or this part of it, works out.
        """

def _calculation_names() -> list[str]:
    """
    The names of all calculations.
    """

def _compute_json(name: str, inputs: object) -> str:
    """
    The result of a calculation as JSON.
    """

def _error_kinds() -> list[tuple[int, str]]:
    """
    Every kind of fault: its fixed number and its name.
    """

def _explain_json(name: str, inputs: object) -> tuple[str, Worksheet]:
    """
    The result of a calculation as JSON, and its worksheet.
    """

def _raise_kind(code: SupportsIndex) -> None:
    """
    Raises a fault of the kind with this number, to test what arrives in Python.
    """

def din_compensation(size: BendSize) -> Length:
    """
    The compensation value of DIN 6935, with the standard's own leg convention: to be added to the legs; usually negative.
    """
