"""
The classes of `seamwright.trim`.
"""

from .record import Caution, Source, Worksheet
from .units import Angle, Area, BendAngle, Length, LineMass, Mass, SurfaceMass
from _typeshed import SupportsGetItem
from typing import Any, Final, SupportsFloat, SupportsIndex, final

__all__ = ["Bend", "BendLines", "BendOrder", "BendRule", "BendSize", "Deduction", "DeductionTable", "DinFactor", "Edge", "FaceWidths", "Figures", "Flat", "FlatBend", "FlatLeg", "FlatPattern", "FormingCheck", "FormingFault", "FormingReport", "GaugeStep", "HoleFinding", "Leg", "NeutralFactor", "OrderFound", "OrderSearch", "OrderSheet", "OrderTrial", "OrderVerdict", "PieceFigures", "Profile", "RadiusFinding", "SectionFigures", "SetbackFactor", "StepFault", "TrimFigures", "din_compensation"]

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
        The result.
        """
    def explain(self, /) -> tuple[OrderSheet, Worksheet]:
        """
        The result, and the worksheet.
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
        The result.
        """
    def explain(self, /) -> tuple[FormingReport, Worksheet]:
        """
        The result, and the worksheet.
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
        The result.
        """
    def explain(self, /) -> tuple[OrderFound, Worksheet]:
        """
        The result, and the worksheet.
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
        The result.
        """
    def explain(self, /) -> tuple[OrderVerdict, Worksheet]:
        """
        The result, and the worksheet.
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
        The result.
        """
    def explain(self, /) -> tuple[Figures, Worksheet]:
        """
        The result, and the worksheet.
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

def din_compensation(size: BendSize) -> Length:
    """
    The compensation value of DIN 6935, with the standard's own leg convention: to be added to the legs; usually negative.
    """
