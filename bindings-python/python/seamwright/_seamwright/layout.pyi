"""
The classes of `seamwright.layout`.
"""

from .panel import Panel, PanelEnd
from .record import Caution, Worksheet
from .roof import Outline, Point
from .units import Angle, Area, Length, Mass, ShopRounding, SurfaceMass
from _typeshed import SupportsGetItem
from typing import Any, Final, SupportsIndex, final

__all__ = ["Coil", "EdgeUse", "EndPart", "Group", "LaidPanel", "LaidPlane", "Layout", "LengthLimit", "NarrowLimit", "OrderRounding", "Start", "mark"]

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
        Panels end there in this way. An edge along the seams ends no panel, whatever it says.
        """
    @property
    def panel_end(self, /) -> PanelEnd | None:
        """
        How panels end there; ``None`` for a side.
        """

@final
class EndPart:
    """
    A stretch of one edge that ends a panel, as seen in the plane.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[LaidPanel, str, int]]: ...
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
        Whether an opening or a notch is cut out of it.
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
class Layout:
    """
    Panels to be laid on a plane: seams run up the slope, along y.

    ``edges`` says what each edge is to the panels, in the order of ``outline.edges``. Order lengths are rounded by common practice unless
    ``rounding`` is given; ``narrow`` is the least width, ``limit`` the greatest length, and with the mass of ``sheet`` for each area the
    coil's mass is known too.

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
    def __new__(cls, /, outline: Outline, panel: Panel, start: Start | str, edges: SupportsGetItem[int, EdgeUse], *, rounding: OrderRounding | None = None, narrow: NarrowLimit | None = None, limit: LengthLimit | None = None, sheet: SurfaceMass | str | None = None) -> Layout: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Outline, Panel, Start, list[EdgeUse], OrderRounding, NarrowLimit | None, LengthLimit | None, SurfaceMass | None]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(outline: Outline, panel: Panel, start: Start | str, edges: SupportsGetItem[int, EdgeUse], rounding: OrderRounding | None, narrow: NarrowLimit | None, limit: LengthLimit | None, sheet: SurfaceMass | str | None) -> Layout:
        """
        For unpickling.
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
class Start:
    """
    Where the laying of a plane starts: at the left or right edge, with a seam or a panel in the middle, or with a seam at a shared datum.

    >>> from seamwright.layout import Start
    >>> Start.LEFT == Start("left"), Start.datum('8"').name
    (True, 'datum')
    """
    CENTRE_PANEL: Final[Start]
    """
    The middle of a panel in the middle; equal rips at both sides.
    """
    CENTRE_SEAM: Final[Start]
    """
    A seam in the middle; equal rips at both sides.
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
    def name(self, /) -> str:
        """
        The name: left, right, centre-seam, centre-panel or datum.
        """
    @property
    def x(self, /) -> Length | None:
        """
        The x of a datum.
        """

def mark(number: SupportsIndex) -> str:
    """
    The mark of this number: A to Z, then AA and so on.

    >>> from seamwright.layout import mark
    >>> mark(0), mark(25), mark(26)
    ('A', 'Z', 'AA')
    """
