"""
The classes of `seamwright.trim`.
"""

from .record import Caution, Source, Worksheet
from .units import Angle, Area, BendAngle, Length, LengthFormat, LineMass, Mass, SurfaceMass
from _typeshed import SupportsGetItem
from typing import Any, Final, SupportsFloat, SupportsIndex, final

__all__ = ["Bend", "BendRule", "BendSize", "BlankBend", "BlankEdge", "BlankPlan", "Deduction", "DeductionTable", "DinFactor", "Edge", "EndFold", "Flat", "FlatBend", "FlatBlank", "FlatLeg", "FlatPattern", "FoldedEnd", "Leg", "LegCut", "Mitre", "MitreHalf", "MitredCorner", "NeutralFactor", "PlannedBlank", "Profile", "SetbackFactor", "Taper", "TaperBend", "TaperLeg", "TaperedPiece", "TaperedPieces", "TaperedRun", "TaperedTrim", "din_compensation", "relief_diameter"]

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
        The result.
        """
    def explain(self, /) -> tuple[PlannedBlank, Worksheet]:
        """
        The result, and the worksheet.
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
        The result.
        """
    def explain(self, /) -> tuple[FoldedEnd, Worksheet]:
        """
        The result, and the worksheet.
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
        The result.
        """
    def explain(self, /) -> tuple[MitredCorner, Worksheet]:
        """
        The result, and the worksheet.
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
        The result.
        """
    def explain(self, /) -> tuple[TaperedTrim, Worksheet]:
        """
        The result, and the worksheet.
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
        The result.
        """
    def explain(self, /) -> tuple[TaperedPieces, Worksheet]:
        """
        The result, and the worksheet.
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
    def svg(self, /, name: str, format: LengthFormat | str) -> str:
        """
        A drawing of it with its running distances at both ends, as SVG text.
        """

def din_compensation(size: BendSize) -> Length:
    """
    The compensation value of DIN 6935, with the standard's own leg convention: to be added to the legs; usually negative.
    """

def relief_diameter(habit: str, inside_radius: Length | str, thickness: Length | str) -> Length:
    """
    The diameter of a relief hole by a published habit: ``twice-radius``, ``radius`` or ``thickness``. The habits disagree.

    >>> from seamwright.trim import relief_diameter
    >>> format(relief_diameter("twice-radius", "0.16 in", "0.04 in"), "in.2")
    '0.32 in'
    """
