"""
The classes of `seamwright.trim`.
"""

from .record import Caution, Source, Worksheet
from .units import BendAngle, Length, LineMass, SurfaceMass
from _typeshed import SupportsGetItem
from numpy import float64
from numpy.typing import NDArray
from typing import Any, Final, SupportsFloat, SupportsIndex, final

__all__ = ["Bend", "BendRule", "BendSize", "Deduction", "DeductionTable", "DinFactor", "Edge", "Flat", "FlatBend", "FlatLeg", "FlatPattern", "Leg", "NeutralFactor", "Profile", "SetbackFactor", "_girths_into", "din_compensation"]

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

def _girths_into(profile: Profile, rule: BendRule, thickness: NDArray[float64], inside_radius: NDArray[float64], girths: NDArray[float64], unit: str) -> None:
    """
    Fills `girths` with those of the elements, all in this unit. The lock on the interpreter is released meanwhile.
    """

def din_compensation(size: BendSize) -> Length:
    """
    The compensation value of DIN 6935, with the standard's own leg convention: to be added to the legs; usually negative.
    """
