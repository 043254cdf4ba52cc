"""
The classes of `seamwright.layout`.
"""

from .assembly import TapeReading
from .panel import Panel, PanelEnd
from .record import Caution, Worksheet
from .roof import Outline, Point
from .units import Angle, Area, Length, Mass, ShopRounding, SurfaceMass
from _typeshed import SupportsGetItem
from numpy import float64, uint32, uintp
from numpy.typing import NDArray
from typing import Any, Final, SupportsIndex, final

__all__ = ["BlankPair", "Bundle", "Coil", "CoilTotal", "CoilTotals", "CreepCheck", "CutShapes", "DirectionCost", "DirectionOfLay", "EdgeUse", "EndMark", "EndPart", "EndShape", "FormedUse", "Group", "LaidPanel", "LaidPlane", "LayCost", "LayDirections", "Layout", "LengthLimit", "ListGroup", "ListedPiece", "ListedPlane", "MarkedSeams", "NarrowLimit", "Notch", "NotchShape", "OrderRounding", "PanelBreak", "PanelList", "PanelShape", "Revised", "RevisedRow", "Revision", "SeamClearance", "SeamDistance", "SeamMark", "SeamMarks", "SeamShift", "Start", "TaperedLay", "TaperedPanels", "VoidRow", "Waste", "_strips", "mark"]

@final
class BlankPair:
    """
    Two skew pieces from one blank.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def above(self, /) -> int:
        """
        The piece whose lower end is skew, by number.
        """
    @property
    def below(self, /) -> int:
        """
        The piece whose upper end is skew, by number.
        """
    @property
    def blank(self, /) -> Length:
        """
        The length of the blank.
        """
    @property
    def saved(self, /) -> Length:
        """
        What it saves beside two blanks.
        """

@final
class Bundle:
    """
    A bundle, opened from the top in the order of its pieces.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def length(self, /) -> Length:
        """
        Its longest piece.
        """
    @property
    def mass(self, /) -> Mass | None:
        """
        Its mass, where the sheet's is known.
        """
    @property
    def number(self, /) -> int:
        """
        Its number in the order in which the crew opens them, from 1.
        """
    @property
    def pieces(self, /) -> list[int]:
        """
        Its pieces from the top, by number.
        """

@final
class Coil:
    """
    The coil that the panels of a plane take.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[LaidPlane, str]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def area(self, /) -> Area:
        """
        Its area.
        """
    @property
    def length(self, /) -> Length:
        """
        Its length: all order lengths together.
        """
    @property
    def mass(self, /) -> Mass | None:
        """
        Its mass, if the sheet's is known.
        """
    @property
    def width(self, /) -> Length:
        """
        Its width: the panel's developed width. Ripped panels are cut from it too.
        """

@final
class CoilTotal:
    """
    The coil of one colour, sheet and width.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def alloy(self, /) -> str:
        """
        The metal of its sheet.
        """
    @property
    def area(self, /) -> Area:
        """
        The area.
        """
    @property
    def colour(self, /) -> str:
        """
        The colour, as the caller calls it; empty for bare metal.
        """
    @property
    def length(self, /) -> Length:
        """
        The length.
        """
    @property
    def mass(self, /) -> Mass:
        """
        The mass, coating and all.
        """
    @property
    def thickness(self, /) -> Length:
        """
        The thickness of its sheet.
        """
    @property
    def width(self, /) -> Length:
        """
        The width.
        """

@final
class CoilTotals:
    """
    Coil added up by colour, sheet and width, over any number of planes and trims.

    >>> from seamwright.layout import CoilTotals
    >>> sheet = {"alloy": "aluminium-3003", "thickness": "0.032 in"}
    >>> use = lambda colour, length: {"colour": colour, "sheet": sheet, "width": "20 in", "length": length}
    >>> totals = CoilTotals.from_dict({"uses": [use("slate", "900 ft"), use("white", "10 ft"), use("slate", "100 ft")]}).compute()
    >>> [(total.colour, format(total.length, "ft-in/16")) for total in totals]
    [('slate', '1000\\'-0"'), ('white', '10\\'-0"')]
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> CoilTotals:
        """
        For unpickling.
        """
    def compute(self, /) -> list[CoilTotal]:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[list[CoilTotal], Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> CoilTotals:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> CoilTotals:
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
class CreepCheck:
    """
    A mark that the crew checks against.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def across(self, /) -> TapeReading:
        """
        From the datum, across the slope.
        """
    @property
    def allowed(self, /) -> Length:
        """
        How far off the seam may be here if every mark before was recovered.
        """
    @property
    def panels(self, /) -> int:
        """
        After how many panels from the datum.
        """
    @property
    def pull(self, /) -> Length:
        """
        What each of those is pulled by.
        """
    @property
    def recover_over(self, /) -> int:
        """
        Panels from here to the next mark, or to the end.
        """
    @property
    def toward(self, /) -> str:
        """
        Which way from the datum: left or right.
        """
    @property
    def unchecked(self, /) -> Length:
        """
        How far off it may be if nobody ever looked.
        """
    @property
    def x(self, /) -> Length:
        """
        The x of the seam.
        """

@final
class CutShapes:
    """
    Each panel of a plane as it is cut: its skew cuts, notches round holes, and folds.

    >>> from seamwright.layout import CutShapes
    >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("16 in", "0 in"), ("16 in", "112 in"), ("0 in", "100 in")]]
    >>> step = {"increment": '1/16"', "rounding": "half-away"}
    >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    >>> [shape] = CutShapes.from_dict({"layout": layout}).compute()
    >>> [format(p.y, "in/16") for p in shape.upper.cut], format(shape.width, "in/16"), shape.notches
    (['100"', '112"'], '16"', [])
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> CutShapes:
        """
        For unpickling.
        """
    def compute(self, /) -> list[PanelShape]:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[list[PanelShape], Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> CutShapes:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> CutShapes:
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
class DirectionCost:
    """
    What one direction costs.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def direction(self, /) -> str:
        """
        The direction.
        """
    @property
    def laps_face_wind(self, /) -> bool | None:
        """
        Whether the laps look into the wind, where its side is known.
        """
    @property
    def offcut(self, /) -> Area:
        """
        Everything that is ripped off.
        """
    @property
    def offcut_mass(self, /) -> Mass | None:
        """
        Its mass, where the sheet's is known.
        """
    @property
    def open_legs_cut(self, /) -> int:
        """
        Ripped panels whose open leg is cut away.
        """
    @property
    def overlapping_legs_cut(self, /) -> int:
        """
        Ripped panels whose overlapping leg is cut away.
        """
    @property
    def ripped(self, /) -> int:
        """
        Panels with a cut edge beside the slope.
        """
    @property
    def starts_on_rip(self, /) -> bool:
        """
        Whether the first strip to be laid has a cut edge.
        """
    @property
    def widest_offcut(self, /) -> Length:
        """
        The widest strip that is ripped off a panel, its leg with it.
        """

@final
class DirectionOfLay:
    """
    A layout whose direction of laying is to be chosen.

    >>> from seamwright.layout import DirectionOfLay
    >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("72 in", "0 in"), ("72 in", "90 in"), ("0 in", "90 in")]]
    >>> step = {"increment": '1/16"', "rounding": "half-away"}
    >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    >>> ways = DirectionOfLay.from_dict({"layout": layout, "wind_from": "left"}).compute()
    >>> [format(way.widest_offcut, "in/16") for way in (ways.left_to_right, ways.right_to_left)], ways.left_to_right.laps_face_wind
    (['9 1/4"', '9 1/2"'], True)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> DirectionOfLay:
        """
        For unpickling.
        """
    def compute(self, /) -> LayDirections:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[LayDirections, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> DirectionOfLay:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> DirectionOfLay:
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
class EdgeUse:
    """
    What an edge of the outline is to the panels: an end that they meet in some way, or a side that they run along.

    >>> from seamwright.layout import EdgeUse
    >>> from seamwright.panel import PanelEnd
    >>> ridge = EdgeUse.end(PanelEnd.hold_back('3"'))
    >>> ridge.panel_end.reach.kind, EdgeUse.SIDE.panel_end
    ('hold-back', None)
    """
    SIDE: Final[EdgeUse]
    """
    Panels run along it: a rake or a sidewall. Where it is out of parallel it cuts panels without any allowance.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _side() -> EdgeUse:
        """
        For unpickling.
        """
    @staticmethod
    def end(panel_end: PanelEnd) -> EdgeUse:
        """
        Panels end there in this way. An edge along the seams ends no panel, whatever it says; one almost along them is refused, unless nothing is added there.
        """
    @property
    def panel_end(self, /) -> PanelEnd | None:
        """
        How panels end there; ``None`` for a side.
        """

@final
class EndMark:
    """
    Where a seam meets the edge that its panels end at.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def along(self, /) -> TapeReading:
        """
        Along the edge, from its end that is the nearer to where marks run from.
        """
    @property
    def at(self, /) -> Point:
        """
        The point, on the junction line.
        """
    @property
    def edge(self, /) -> int:
        """
        The edge, in the order of the outline's edges.
        """

@final
class EndPart:
    """
    A stretch of one edge that ends a panel, as seen in the plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Any, str, int]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def edge(self, /) -> int:
        """
        The edge, in the order of the outline's edges.
        """
    @property
    def left(self, /) -> Point:
        """
        Its left end, on the junction line.
        """
    @property
    def meeting(self, /) -> Angle:
        """
        The angle between the seams and the line: 90 degrees is square.
        """
    @property
    def right(self, /) -> Point:
        """
        Its right end, on the junction line.
        """
    @property
    def skew(self, /) -> Angle:
        """
        The skew cut, from square: positive where the line rises to the right.
        """

@final
class EndShape:
    """
    Lines across a panel where it ends, each from left to right. Where an end steps, two points stand over each other.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cut(self, /) -> list[Point]:
        """
        Where the finished metal ends, its fold or turn-up laid flat: the skew cut.
        """
    @property
    def fold(self, /) -> list[Point]:
        """
        Where it is folded over, or the pan is turned up; empty for an end without either.
        """
    @property
    def trim(self, /) -> list[Point]:
        """
        Where the metal ends as ordered, what is cut off on the roof with it; empty for an end without field trim.
        """

@final
class FormedUse:
    """
    Formed pieces that serve a row.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def count(self, /) -> int:
        """
        How many.
        """
    @property
    def cut_off(self, /) -> Length:
        """
        What is cut off each one's length.
        """
    @property
    def mark(self, /) -> str:
        """
        The mark under which they were formed.
        """
    @property
    def rip_off(self, /) -> Length:
        """
        What is ripped off each one's width.
        """

@final
class Group:
    """
    Panels of one order length and one width.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[LaidPlane, str, int]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def count(self, /) -> int:
        """
        How many pieces.
        """
    @property
    def mark(self, /) -> str:
        """
        The mark: A for the longest, then B and so on.
        """
    @property
    def order(self, /) -> Length:
        """
        The order length.
        """
    @property
    def total(self, /) -> Length:
        """
        Their order lengths together.
        """
    @property
    def width(self, /) -> Length:
        """
        The width that they cover.
        """

@final
class LaidPanel:
    """
    One panel as laid. Lengths are along the seams; sides are as seen from below the plane, looking up it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[LaidPlane, str, int]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def blank(self, /) -> Length:
        """
        The upright extent of the finished panel.
        """
    @property
    def covered(self, /) -> Area:
        """
        The area of the plane that it covers, between the junction lines.
        """
    @property
    def finished(self, /) -> Length:
        """
        The greatest finished length over its width.
        """
    @property
    def group(self, /) -> int:
        """
        Its group in the length list, by number.
        """
    @property
    def left(self, /) -> Length:
        """
        The x of its left side.
        """
    @property
    def left_length(self, /) -> Length | None:
        """
        Finished length along its left side; ``None`` where nothing is left of it there.
        """
    @property
    def left_on_seam(self, /) -> bool:
        """
        Whether its left side is a seam; else it is ripped there or ends in a point.
        """
    @property
    def lower(self, /) -> list[EndPart]:
        """
        The lines that end it below, from left to right.
        """
    @property
    def mark(self, /) -> str:
        """
        Its mark in the length list.
        """
    @property
    def notched(self, /) -> bool:
        """
        Whether an opening or a notch is cut out of it, or its end steps.
        """
    @property
    def notches(self, /) -> list[Notch]:
        """
        What is cut out of it between its lowest and its highest line.
        """
    @property
    def order(self, /) -> Length:
        """
        The length to order, of each piece.
        """
    @property
    def pieces(self, /) -> int:
        """
        Pieces, lapped at their ends; 1 for a panel in one length.
        """
    @property
    def pinned_twice(self, /) -> bool:
        """
        Whether both its ends pin it.
        """
    @property
    def right(self, /) -> Length:
        """
        The x of its right side.
        """
    @property
    def right_length(self, /) -> Length | None:
        """
        Finished length along its right side; ``None`` where nothing is left of it there.
        """
    @property
    def right_on_seam(self, /) -> bool:
        """
        Whether its right side is a seam.
        """
    @property
    def run(self, /) -> int:
        """
        Its run in the strip, from the foot, from 0.
        """
    @property
    def strip(self, /) -> int:
        """
        Its strip, from the left, from 0.
        """
    @property
    def upper(self, /) -> list[EndPart]:
        """
        The lines that end it above, from left to right.
        """
    @property
    def width(self, /) -> Length:
        """
        How wide it covers; less than the coverage where it is ripped.
        """

@final
class LaidPlane:
    """
    A plane with its panels laid. It pickles as its layout, which computes it again, or as its place in a packet, which gives it marks of its
    own; its parts pickle as their place in it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before metal is formed.
        """
    @property
    def coil(self, /) -> Coil:
        """
        The coil.
        """
    @property
    def covered(self, /) -> Area:
        """
        The area that the panels cover, between the junction lines.
        """
    @property
    def groups(self, /) -> list[Group]:
        """
        The grouped length list, the longest first, at one length the widest first.
        """
    @property
    def layout(self, /) -> Layout:
        """
        What was laid.
        """
    def mark_of(self, /, panel: LaidPanel) -> str | None:
        """
        The mark of a panel of this plane.
        """
    @property
    def panels(self, /) -> list[LaidPanel]:
        """
        The panels, strip by strip from the left, in a strip from the foot up.
        """
    @property
    def seams(self, /) -> list[Length]:
        """
        The x of every seam line within the outline's bounds, its edges among them where a seam falls there.
        """
    @property
    def uncovered(self, /) -> Area:
        """
        The area of the parts that get no panel, because hold-backs leave nothing of it.
        """

@final
class LayCost:
    """
    What a plane takes as it is laid.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def coil(self, /) -> Length:
        """
        The coil.
        """
    @property
    def lengths(self, /) -> int:
        """
        Different marks.
        """
    @property
    def mass(self, /) -> Mass | None:
        """
        Its mass, where the sheet's is known.
        """
    @property
    def panels(self, /) -> int:
        """
        Panels.
        """
    @property
    def pieces(self, /) -> int:
        """
        Pieces to form.
        """

@final
class LayDirections:
    """
    Both directions of laying.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know of the choice.
        """
    @property
    def left_to_right(self, /) -> DirectionCost:
        """
        From left to right.
        """
    @property
    def right_to_left(self, /) -> DirectionCost:
        """
        From right to left.
        """

@final
class Layout:
    """
    Panels to be laid on a plane: seams run up the slope, along y.

    ``edges`` says what each edge is to the panels, in the order of ``outline.edges``. Order lengths are rounded by common practice unless
    ``rounding`` is given; ``narrow`` is the least width, ``limit`` the greatest length, and with the mass of ``sheet`` for each area the
    coil's mass is known too. ``breaks`` are the stretches across which panels are broken in two.

    >>> from seamwright.layout import EdgeUse, Layout
    >>> from seamwright.panel import Panel, PanelEnd, Seam
    >>> from seamwright.roof import Outline
    >>> outline = Outline([("0 ft", "0 ft"), ("40 ft", "0 ft"), ("40 ft", "20 ft"), ("0 ft", "20 ft")])
    >>> eave = EdgeUse.end(PanelEnd.overhang('1"', fold='1"'))
    >>> ridge = EdgeUse.end(PanelEnd.hold_back('3"', turn_up='1"'))
    >>> panel = Panel('16"', '2"', Seam.double_lock('3/8"'))
    >>> laid = Layout(outline, panel, "left", [eave, EdgeUse.SIDE, ridge, EdgeUse.SIDE]).compute()
    >>> [(group.mark, group.count, format(group.order, "ft-in/16")) for group in laid.groups]
    [('A', 30, '20\\'-0"')]
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, outline: Outline, panel: Panel, start: Start | str, edges: SupportsGetItem[int, EdgeUse], *, rounding: OrderRounding | None = None, narrow: NarrowLimit | None = None, limit: LengthLimit | None = None, sheet: SurfaceMass | str | None = None, breaks: SupportsGetItem[int, PanelBreak] | None = None) -> Layout: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Outline, Panel, Start, list[EdgeUse], OrderRounding, NarrowLimit | None, LengthLimit | None, SurfaceMass | None, list[PanelBreak]]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(outline: Outline, panel: Panel, start: Start | str, edges: SupportsGetItem[int, EdgeUse], rounding: OrderRounding | None, narrow: NarrowLimit | None, limit: LengthLimit | None, sheet: SurfaceMass | str | None, breaks: SupportsGetItem[int, PanelBreak] | None) -> Layout:
        """
        For unpickling.
        """
    @property
    def breaks(self, /) -> list[PanelBreak]:
        """
        Where panels are broken in two.
        """
    def compute(self, /) -> LaidPlane:
        """
        The plane with its panels laid.
        """
    @property
    def edges(self, /) -> list[EdgeUse]:
        """
        What each edge is to the panels, in the order of the outline's edges.
        """
    def explain(self, /) -> tuple[LaidPlane, Worksheet]:
        """
        The plane with its panels laid, and the worksheet.
        """
    @property
    def limit(self, /) -> LengthLimit | None:
        """
        The greatest length of a panel; ``None`` for no limit.
        """
    @property
    def narrow(self, /) -> NarrowLimit | None:
        """
        The least width of a panel; ``None`` for no limit.
        """
    @property
    def outline(self, /) -> Outline:
        """
        The plane's outline: x across, y up the slope.
        """
    @property
    def panel(self, /) -> Panel:
        """
        The panel.
        """
    @property
    def rounding(self, /) -> OrderRounding:
        """
        The shop's rounding of order lengths.
        """
    @property
    def sheet(self, /) -> SurfaceMass | None:
        """
        Mass of the sheet for each area of it; ``None`` leaves the coil's mass out.
        """
    @property
    def start(self, /) -> Start:
        """
        Where the seams lie.
        """

@final
class LengthLimit:
    """
    The greatest order length, what sets it (movement, forming, shipping or lifting), and how far pieces lap beyond it.

    Without ``end_lap`` end laps are refused.

    >>> from seamwright.layout import LengthLimit
    >>> LengthLimit("45'", "shipping").end_lap is None
    True
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, length: Length | str, governs: str, end_lap: Length | str | None = None) -> LengthLimit: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, str, Length | None]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def end_lap(self, /) -> Length | None:
        """
        How far pieces lap at an end lap; ``None`` where end laps are refused.
        """
    @property
    def governs(self, /) -> str:
        """
        What sets it: movement, forming, shipping or lifting.
        """
    @property
    def length(self, /) -> Length:
        """
        The greatest order length of a piece.
        """

@final
class ListGroup:
    """
    Pieces of one order length, width and cut edge.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def count(self, /) -> int:
        """
        How many pieces.
        """
    @property
    def cut(self, /) -> str:
        """
        Which edge is cut: none, left, right or both.
        """
    @property
    def mark(self, /) -> str:
        """
        The mark.
        """
    @property
    def order(self, /) -> Length:
        """
        The order length.
        """
    @property
    def total(self, /) -> Length:
        """
        Their order lengths together.
        """
    @property
    def width(self, /) -> Length:
        """
        The width that they cover.
        """

@final
class ListedPiece:
    """
    One piece, in the order of laying.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bundle(self, /) -> int | None:
        """
        Its bundle, by number, where there are bundles.
        """
    @property
    def group(self, /) -> int:
        """
        Its group, by number.
        """
    @property
    def low(self, /) -> Length:
        """
        From the lowest point of the plane's outline to the piece's lower end.
        """
    @property
    def number(self, /) -> int:
        """
        The panel's number in the order of laying, from 1.
        """
    @property
    def order(self, /) -> Length:
        """
        The length that it is formed to.
        """
    @property
    def own(self, /) -> Length:
        """
        Its own order length.
        """
    @property
    def pair(self, /) -> int | None:
        """
        Its pair, by number, where it shares a blank.
        """
    @property
    def panel(self, /) -> int:
        """
        The panel, by its number in the laid plane.
        """
    @property
    def piece(self, /) -> int:
        """
        The piece of the panel from the foot, from 1.
        """

@final
class ListedPlane:
    """
    The list of a plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bundles(self, /) -> list[Bundle]:
        """
        Bundles, in the order in which the crew opens them.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before metal is formed.
        """
    @property
    def coil_length(self, /) -> Length:
        """
        The coil's length: all order lengths less what pairs save.
        """
    @property
    def coil_mass(self, /) -> Mass | None:
        """
        The coil's mass, where the sheet's is known.
        """
    @property
    def coil_width(self, /) -> Length:
        """
        The coil's width.
        """
    @property
    def direction(self, /) -> str:
        """
        The way in which panels follow each other: left-to-right or right-to-left.
        """
    @property
    def groups(self, /) -> list[ListGroup]:
        """
        The grouped list, in the order of its marks.
        """
    @property
    def pairs(self, /) -> list[BlankPair]:
        """
        Pairs from one blank.
        """
    @property
    def pieces(self, /) -> list[ListedPiece]:
        """
        Every piece, in the order of laying.
        """
    @property
    def waste(self, /) -> Waste:
        """
        Where the coil goes that covers nothing.
        """

@final
class MarkedSeams:
    """
    Every seam's marks.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before the first panel is laid.
        """
    @property
    def checks(self, /) -> list[CreepCheck]:
        """
        Where the crew checks for creep.
        """
    @property
    def datum(self, /) -> Length:
        """
        The x that marks run from.
        """
    @property
    def seams(self, /) -> list[SeamMark]:
        """
        The marks, from the left.
        """

@final
class NarrowLimit:
    """
    The least width of a panel, and what happens under it: ``report`` (laid with a caution) or ``refuse``.

    >>> from seamwright.layout import NarrowLimit
    >>> NarrowLimit('6"', "report").choice
    'report'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, least: Length | str, choice: str) -> NarrowLimit: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, str]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def choice(self, /) -> str:
        """
        What happens under it: ``report`` or ``refuse``.
        """
    @property
    def least(self, /) -> Length:
        """
        The least width.
        """

@final
class Notch:
    """
    What is cut out of a panel between its ends: an opening within its width, or what lies beside an arm of the plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[LaidPanel, str, int]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def lower(self, /) -> list[EndPart]:
        """
        The lines that bound it below, from left to right: the panel's metal ends upward there.
        """
    @property
    def upper(self, /) -> list[EndPart]:
        """
        The lines that bound it above, from left to right.
        """

@final
class NotchShape:
    """
    What is cut out of a panel between its ends, down to the metal: its folds and turn-ups stand in it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def lower(self, /) -> EndShape:
        """
        Its lower edge: the metal below it ends upward there.
        """
    @property
    def upper(self, /) -> EndShape:
        """
        Its upper edge.
        """

@final
class OrderRounding:
    """
    The shop's rounding of order lengths, by how many of the two ends are finished in the shop (have no field trim).

    >>> from seamwright.layout import OrderRounding
    >>> format(OrderRounding.common_practice().field_cut.round('100 1/16"'), "in/16")
    '101"'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, both_finished: ShopRounding, one_finished: ShopRounding, field_cut: ShopRounding) -> OrderRounding: ...
    def __reduce__(self, /) -> tuple[type, tuple[ShopRounding, ShopRounding, ShopRounding]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def all(rule: ShopRounding) -> OrderRounding:
        """
        One rule for every panel.
        """
    @property
    def both_finished(self, /) -> ShopRounding:
        """
        Both ends finished.
        """
    @staticmethod
    def common_practice() -> OrderRounding:
        """
        The rule unless another is given (common practice).
        """
    @property
    def field_cut(self, /) -> ShopRounding:
        """
        Both ends cut on the roof.
        """
    @property
    def one_finished(self, /) -> ShopRounding:
        """
        One end finished, one cut on the roof.
        """

@final
class PanelBreak:
    """
    A level stretch of a plane across which every panel that lies on it is broken in two, over the panel's whole width: as where the pan of a valley
    runs out between them.

    ``at`` is its height up the plane, ``start`` and ``stop`` are its two ends across; ``below`` says how the pieces below it end there, ``above`` how
    those above it do. Its two edges are numbered after those of the outline, that of the pieces below first.

    >>> from seamwright.layout import PanelBreak
    >>> from seamwright.panel import PanelEnd
    >>> PanelBreak('40"', '20"', '24"', PanelEnd.hold_back('0"'), PanelEnd.overhang('8"')).at
    Length('1016 mm')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, at: Length | str, start: Length | str, stop: Length | str, below: PanelEnd, above: PanelEnd) -> PanelBreak: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, Length, Length, PanelEnd, PanelEnd]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def above(self, /) -> PanelEnd:
        """
        How those above it end there.
        """
    @property
    def at(self, /) -> Length:
        """
        How far up the plane, as a y of the outline.
        """
    @property
    def below(self, /) -> PanelEnd:
        """
        How the pieces below it end there.
        """
    @property
    def start(self, /) -> Length:
        """
        Its left end, as an x of the outline.
        """
    @property
    def stop(self, /) -> Length:
        """
        Its right end.
        """

@final
class PanelList:
    """
    The panels of a plane as a list for shop and crew: pieces in the order of laying, marks, end laps, pairs from one blank, bundles, coil and waste.

    >>> from seamwright.layout import PanelList
    >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("72 in", "0 in"), ("72 in", "90 in"), ("0 in", "90 in")]]
    >>> step = {"increment": '1/16"', "rounding": "half-away"}
    >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    >>> choices = {"direction": "right-to-left", "bundles": {"count": 3}}
    >>> listed = PanelList.from_dict({"layout": layout, "choices": choices}).compute()
    >>> [(group.mark, group.count, group.cut) for group in listed.groups], [bundle.pieces for bundle in listed.bundles]
    ([('A', 4, 'none'), ('B', 1, 'right')], [[0, 1, 2], [3, 4]])
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> PanelList:
        """
        For unpickling.
        """
    def compute(self, /) -> ListedPlane:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[ListedPlane, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> PanelList:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> PanelList:
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
class PanelShape:
    """
    The shape of one panel's pan: x from the left side of what it covers, y up the slope from the foot of its blank.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def length(self, /) -> Length:
        """
        The length of the rectangle that just holds it, field trims included, before the shop rounds it.
        """
    @property
    def lower(self, /) -> EndShape:
        """
        Its lower end.
        """
    @property
    def notches(self, /) -> list[NotchShape]:
        """
        What is cut out of it.
        """
    @property
    def run(self, /) -> int:
        """
        Its run in the strip, from the foot, from 0.
        """
    @property
    def strip(self, /) -> int:
        """
        Its strip, from the left, from 0.
        """
    @property
    def upper(self, /) -> EndShape:
        """
        Its upper end.
        """
    @property
    def width(self, /) -> Length:
        """
        The width that it covers: that of the rectangle.
        """

@final
class Revised:
    """
    A revised list.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before anything is cut down.
        """
    @property
    def rows(self, /) -> list[RevisedRow]:
        """
        The rows, those of the list now in its order and then those that are dropped.
        """
    @property
    def scrap(self, /) -> Area:
        """
        What is formed and serves nothing; no other use of the formed pieces leaves less.
        """
    @property
    def to_form(self, /) -> Length:
        """
        What is still to be formed, all lengths together.
        """
    @property
    def void(self, /) -> list[VoidRow]:
        """
        Formed pieces that serve nothing.
        """

@final
class RevisedRow:
    """
    A row of the list as revised.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def before(self, /) -> int:
        """
        How many there were.
        """
    @property
    def count(self, /) -> int:
        """
        How many there are.
        """
    @property
    def cut(self, /) -> str:
        """
        Which edge is cut: none, left, right or both.
        """
    @property
    def from_formed(self, /) -> list[FormedUse]:
        """
        Formed pieces that serve it.
        """
    @property
    def mark(self, /) -> str:
        """
        The mark: that of the list before wherever there is one, and else one that was never used.
        """
    @property
    def order(self, /) -> Length:
        """
        The order length.
        """
    @property
    def plane(self, /) -> str:
        """
        The plane.
        """
    @property
    def state(self, /) -> str:
        """
        What became of it: kept, recounted, new or dropped.
        """
    @property
    def to_form(self, /) -> int:
        """
        How many are still to be formed.
        """
    @property
    def width(self, /) -> Length:
        """
        The width that a piece covers.
        """

@final
class Revision:
    """
    A list before and a list now, and what is formed by the list before.

    >>> from seamwright.layout import Revision
    >>> row = {"plane": "south", "mark": "A", "order": "20 ft", "width": "16 in", "count": 3}
    >>> now = [row | {"order": "21 ft", "count": 1}, row | {"mark": "B", "count": 2}]
    >>> revised = Revision.from_dict({"before": [row], "now": now, "formed": [{"mark": "A", "count": 3}]}).compute()
    >>> [(r.mark, r.state, r.to_form) for r in revised.rows], [(v.mark, v.count) for v in revised.void]
    ([('B', 'new', 1), ('A', 'recounted', 0)], [('A', 1)])
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Revision:
        """
        For unpickling.
        """
    def compute(self, /) -> Revised:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[Revised, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Revision:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Revision:
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
class SeamClearance:
    """
    The seams of a plane moved as a whole, so that they keep clear of what stands in it.

    >>> from seamwright.layout import SeamClearance
    >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("72 in", "0 in"), ("72 in", "90 in"), ("0 in", "90 in")]]
    >>> step = {"increment": '1/16"', "rounding": "half-away"}
    >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    >>> pipe = {"name": "pipe", "what": {"point": {"x": "33 in", "y": "40 in"}}, "clearance": "4 in"}
    >>> found = SeamClearance.from_dict({"layout": layout, "clear_of": [pipe], "prefer": "nearest"}).compute()
    >>> format(found.shift, "in/16"), found.clear, found.asked.panels, found.found.panels
    ('-3"', True, 5, 5)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> SeamClearance:
        """
        For unpickling.
        """
    def compute(self, /) -> SeamShift:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[SeamShift, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> SeamClearance:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> SeamClearance:
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
class SeamDistance:
    """
    How far the seams are from one thing.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def distance(self, /) -> Length:
        """
        How far that is from it; less than zero where the seam runs through it.
        """
    @property
    def name(self, /) -> str:
        """
        What it is called.
        """
    @property
    def seam(self, /) -> Length:
        """
        The x of the nearest seam line.
        """
    @property
    def spare(self, /) -> Length:
        """
        What is left of the distance beyond the clearance.
        """

@final
class SeamMark:
    """
    The marks of one seam.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def across(self, /) -> TapeReading:
        """
        From the datum, across the slope.
        """
    @property
    def foot(self, /) -> EndMark | None:
        """
        Where it meets its lowest edge.
        """
    @property
    def head(self, /) -> EndMark | None:
        """
        Where it meets its highest edge.
        """
    @property
    def seam(self, /) -> int:
        """
        Its number among the seams of the laid plane.
        """
    @property
    def x(self, /) -> Length:
        """
        Its x.
        """

@final
class SeamMarks:
    """
    The seams of a layout, to be marked on the roof, with the checks that keep creep from adding up.

    >>> from seamwright.layout import SeamMarks
    >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("72 in", "0 in"), ("72 in", "90 in"), ("0 in", "90 in")]]
    >>> step = {"increment": '1/16"', "rounding": "half-away"}
    >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    >>> creep = {"each": '1/32"', "every": 2}
    >>> marked = SeamMarks.from_dict({"layout": layout, "from": "left", "tape": step, "creep": creep}).compute()
    >>> [format(seam.across.read, "in/16") for seam in marked.seams], [check.panels for check in marked.checks]
    (['0"', '16"', '32"', '48"', '64"'], [2, 4])
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> SeamMarks:
        """
        For unpickling.
        """
    def compute(self, /) -> MarkedSeams:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[MarkedSeams, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> SeamMarks:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> SeamMarks:
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
class SeamShift:
    """
    The shift found, with what it costs.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def asked(self, /) -> LayCost | None:
        """
        What the start asked for would take; ``None`` where it is refused.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is laid so.
        """
    @property
    def clear(self, /) -> bool:
        """
        Whether every clearance holds.
        """
    @property
    def distances(self, /) -> list[SeamDistance]:
        """
        How far seams are from each thing, in the order given.
        """
    @property
    def found(self, /) -> LayCost:
        """
        What the shift takes.
        """
    @property
    def left_end(self, /) -> Length:
        """
        The width of the panel at the left bound of the plane.
        """
    @property
    def ranges(self, /) -> list[tuple[Length, Length]]:
        """
        Every shift that keeps everything clear, as its first and last.
        """
    @property
    def right_end(self, /) -> Length:
        """
        The width of the panel at the right bound.
        """
    @property
    def shift(self, /) -> Length:
        """
        How far the seams move from the start asked for, to the right.
        """
    @property
    def start(self, /) -> Start:
        """
        The start to lay by: a datum on a seam.
        """

@final
class Start:
    """
    Where the laying of a plane starts: at the left or right edge, with a seam or a panel in the middle, with equal rips, or with a seam at a shared
    datum.

    >>> from seamwright.layout import Start
    >>> Start.LEFT == Start("left"), Start.datum('8"').name, Start.left_unless_narrow('6"').least
    (True, 'datum', Length('152.4 mm'))
    """
    CENTRE_PANEL: Final[Start]
    """
    The middle of a panel in the middle; equal rips at both sides.
    """
    CENTRE_SEAM: Final[Start]
    """
    A seam in the middle; equal rips at both sides.
    """
    EQUAL_RIPS: Final[Start]
    """
    Equal rips at both sides, as wide as they can be.
    """
    LEFT: Final[Start]
    """
    A full panel at the outline's leftmost point; the remainder is ripped at the right.
    """
    RIGHT: Final[Start]
    """
    A full panel at the outline's rightmost point; the remainder is ripped at the left.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, start: Start | str) -> Start: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def datum(x: Length | str) -> Start:
        """
        A seam at this x, which other planes can share.
        """
    @property
    def least(self, /) -> Length | None:
        """
        The least width of the end panel, where the start has one.
        """
    @staticmethod
    def left_unless_narrow(least: Length | str) -> Start:
        """
        A full panel at the left, unless what is left at the right is narrower than this: then it is shared out between both ends.
        """
    @property
    def name(self, /) -> str:
        """
        The name: left, right, centre-seam, centre-panel, equal-rips, left-unless-narrow, right-unless-narrow or datum.
        """
    @staticmethod
    def right_unless_narrow(least: Length | str) -> Start:
        """
        A full panel at the right, unless what is left at the left is narrower than this: then it is shared out between both ends.
        """
    @property
    def x(self, /) -> Length | None:
        """
        The x of a datum.
        """

@final
class TaperedLay:
    """
    Whole panels between two edges that are not parallel, each drawn out or pushed together a little.

    >>> from seamwright.layout import TaperedLay
    >>> rake = {"foot": "320 in", "head": "321 in", "run": "20 ft", "coverage": "16 in", "wider": '1/8"', "narrower": '1/8"'}
    >>> laid = TaperedLay.from_dict(rake).compute()
    >>> laid.panels, format(laid.head, "in.2"), len(laid.marks)
    (20, '16.05 in', 21)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> TaperedLay:
        """
        For unpickling.
        """
    def compute(self, /) -> TaperedPanels:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[TaperedPanels, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> TaperedLay:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> TaperedLay:
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
class TaperedPanels:
    """
    A tapered stretch.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def fewest(self, /) -> int:
        """
        The fewest that the panel allows.
        """
    @property
    def foot(self, /) -> Length:
        """
        What each covers at the foot.
        """
    @property
    def foot_off(self, /) -> Length:
        """
        Foot less coverage.
        """
    @property
    def head(self, /) -> Length:
        """
        What each covers at the head.
        """
    @property
    def head_off(self, /) -> Length:
        """
        Head less coverage.
        """
    @property
    def marks(self, /) -> list[tuple[Length, Length]]:
        """
        Every seam, at the foot and at the head, from the first.
        """
    @property
    def most(self, /) -> int:
        """
        The most.
        """
    @property
    def out_of_square(self, /) -> Angle:
        """
        The angle between the first and the last seam.
        """
    @property
    def panels(self, /) -> int:
        """
        How many.
        """
    @property
    def taper(self, /) -> Length:
        """
        How much wider each is at the head than at the foot.
        """

@final
class VoidRow:
    """
    Formed pieces that serve nothing.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def count(self, /) -> int:
        """
        How many.
        """
    @property
    def mark(self, /) -> str:
        """
        The mark under which they were formed.
        """
    @property
    def order(self, /) -> Length:
        """
        Their order length.
        """
    @property
    def width(self, /) -> Length:
        """
        The width that they cover.
        """

@final
class Waste:
    """
    Where the coil goes that covers nothing. The last four parts are together the coil less what is covered.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def coil(self, /) -> Area:
        """
        The coil.
        """
    @property
    def covered(self, /) -> Area:
        """
        What panels cover of the plane.
        """
    @property
    def ends(self, /) -> Area:
        """
        Beyond the junction lines: folds, turn-ups, overhangs, laps, field trim and rounding, less hold-backs.
        """
    @property
    def rips(self, /) -> Area:
        """
        Ripped off beside the width that is covered.
        """
    @property
    def seams(self, /) -> Area:
        """
        The legs of the seams.
        """
    @property
    def skew_cuts(self, /) -> Area:
        """
        Skew ends, openings and notches, less what pairs save.
        """

def _strips(coordinates: NDArray[float64], rings: NDArray[uintp], polygons: NDArray[uintp], coverage: Length | str, start: Start | str, unit: str) -> tuple[tuple[NDArray[uint32], NDArray[uint32], NDArray[uint32]], tuple[NDArray[float64], NDArray[float64], NDArray[float64], NDArray[float64], NDArray[float64], NDArray[float64]]]:
    """
    The strips of polygons in ragged arrays, all in this unit. The lock on the interpreter is released meanwhile.
    """

def mark(number: SupportsIndex) -> str:
    """
    The mark of this number: A to Z, then AA and so on.

    >>> from seamwright.layout import mark
    >>> mark(0), mark(25), mark(26)
    ('A', 'Z', 'AA')
    """
