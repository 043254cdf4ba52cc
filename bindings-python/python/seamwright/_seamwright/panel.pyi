"""
The classes of `seamwright.panel`.
"""

from .record import Caution, Source, Worksheet
from .units import Angle, Length
from typing import Any, final

__all__ = ["DevelopedWidth", "Leg", "Levels", "Panel", "PanelEnd", "Reach", "Seam", "along_seam"]

@final
class DevelopedWidth:
    """
    The sheet that a panel takes across, by its parts. It pickles as its panel, which computes it again.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[()]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cap(self, /) -> Length | None:
        """
        The coil width of a batten's cap; ``None`` for seams without one.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before a coil is ordered by it.
        """
    @property
    def high_leg(self, /) -> Length:
        """
        The leg that laps over.
        """
    @property
    def low_leg(self, /) -> Length:
        """
        The leg that is lapped over.
        """
    @property
    def pan(self, /) -> Length:
        """
        The pan with its beads and ribs.
        """
    @property
    def total(self, /) -> Length:
        """
        All of it: the coil width.
        """

@final
class Leg:
    """
    One upturned leg of a panel, as its drawing gives it: the upstand along the leg, and everything folded after it.

    >>> from seamwright.panel import Leg
    >>> format(Leg('1 3/4"', '7/8"').developed(), "in/16")
    '2 5/8"'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, upstand: Length | str, folds: Length | str) -> Leg: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, Length]]: ...
    def __repr__(self, /) -> str: ...
    def developed(self, /) -> Length:
        """
        The sheet that the leg takes.
        """
    @property
    def folds(self, /) -> Length:
        """
        Everything after the upstand: the top, returns, hooks, and the screw flange if the leg has one.
        """
    @property
    def upstand(self, /) -> Length:
        """
        From the pan up, measured along the leg where it leans.
        """

@final
class Levels:
    """
    Heights square to the roof plane, from the support's surface. They pickle as their panel, which gives them again.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Length, Length]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def pan(self, /) -> Length:
        """
        Upper face of the pan.
        """
    @property
    def seam_top(self, /) -> Length:
        """
        Top of the seam.
        """
    @property
    def underside(self, /) -> Length:
        """
        Underside of the pan.
        """

@final
class Panel:
    """
    A standing-seam panel in cross-section. The pan is flat unless ``ribs`` says how much sheet its beads or ribs take.

    >>> from seamwright.panel import Panel, Seam
    >>> panel = Panel.from_coil('24"', '1"', Seam.double_lock('1/4"'))
    >>> format(panel.coverage, "in/16"), format(panel.compute().total, "in/16")
    ('21 1/4"', '24"')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, coverage: Length | str, seam_height: Length | str, seam: Seam, ribs: Length | str | None = None) -> Panel: ...
    def __reduce__(self, /) -> tuple[type, tuple[Length, Length, Seam, Length]]: ...
    def __repr__(self, /) -> str: ...
    def compute(self, /) -> DevelopedWidth:
        """
        The developed width: what coil the panel takes.
        """
    @property
    def coverage(self, /) -> Length:
        """
        Seam to seam, across the slope.
        """
    def explain(self, /) -> tuple[DevelopedWidth, Worksheet]:
        """
        The developed width, and its worksheet.
        """
    @staticmethod
    def from_coil(coil_width: Length | str, seam_height: Length | str, seam: Seam) -> Panel:
        """
        The panel with a flat pan that uses this coil width up: its coverage is what the legs leave.
        """
    def levels(self, /, stand_off: Length | str, thickness: Length | str) -> Levels:
        """
        The panel's levels above what carries it: a deck with its underlayment, or the supports that clips stand it off.
        """
    @property
    def ribs(self, /) -> Length:
        """
        Sheet taken up by beads or ribs in the pan, beyond its flat width.
        """
    @property
    def seam(self, /) -> Seam:
        """
        How panels join.
        """
    def seam_foot(self, /, thickness: Length | str) -> Length:
        """
        Width of the closed seam where it stands on the pan, in sheet of this thickness: what a closure has to clear.
        """
    @property
    def seam_height(self, /) -> Length:
        """
        From the pan to the top of the finished seam.
        """

@final
class PanelEnd:
    """
    One end of a panel at a junction: distances square to the junction line, which the layout converts along the seams.

    The metal beyond the junction line is overhang (or minus the hold-back) + gap + fold + turn-up. The field trim is no part of the
    finished panel; it is ordered and cut off on the roof. An end slides and is shop-finished unless said otherwise.

    >>> from seamwright.panel import PanelEnd
    >>> end = PanelEnd.hold_back('3"', fold='1"')
    >>> format(end.allowance(), "in/16"), format(end.along_seam("30 deg"), "in/16")
    ('-2"', '-4"')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Reach, Length, Length, Length, Length, str, Source]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(reach: Reach, gap: Length | str, fold: Length | str, turn_up: Length | str, field_trim: Length | str, hold: str, source: Source) -> PanelEnd:
        """
        For unpickling.
        """
    def allowance(self, /) -> Length:
        """
        What the finished panel has beyond the junction line, square to it; negative where it ends short.
        """
    def along_seam(self, /, meeting: Angle | str) -> Length:
        """
        The allowance along a seam that meets the junction line at this angle; 90 degrees is square.
        """
    @property
    def field_trim(self, /) -> Length:
        """
        Left on for a cut on the roof; zero for a shop-finished end.
        """
    def field_trim_along_seam(self, /, meeting: Angle | str) -> Length:
        """
        The field trim along a seam that meets the junction line at this angle.
        """
    @property
    def fold(self, /) -> Length:
        """
        The fold around a cleat or a drip.
        """
    @property
    def gap(self, /) -> Length:
        """
        Room between the fold and what it hooks, at laying.
        """
    @property
    def grows(self, /) -> tuple[Length, Length] | None:
        """
        How the end is held back farther down the line: by so much, over so much of the line; ``None`` where it runs parallel.
        """
    @property
    def hold(self, /) -> str:
        """
        Whether the end pins the panel: ``slides`` or ``pins``.
        """
    @staticmethod
    def hold_back(distance: Length | str, *, gap: Length | str | None = None, fold: Length | str | None = None, turn_up: Length | str | None = None, field_trim: Length | str | None = None, hold: str | None = None, source: Source | None = None) -> PanelEnd:
        """
        An end short of the junction line by this much. ``hold`` is ``slides`` or ``pins``.
        """
    @staticmethod
    def overhang(distance: Length | str, *, gap: Length | str | None = None, fold: Length | str | None = None, turn_up: Length | str | None = None, field_trim: Length | str | None = None, hold: str | None = None, source: Source | None = None) -> PanelEnd:
        """
        An end past the junction line by this much. ``hold`` is ``slides`` or ``pins``.
        """
    @property
    def reach(self, /) -> Reach:
        """
        Hold-back or overhang.
        """
    @property
    def source(self, /) -> Source:
        """
        Where these figures come from.
        """
    @property
    def turn_up(self, /) -> Length:
        """
        The pan turned up behind a closure.
        """

@final
class Reach:
    """
    Where the fold line, or the cut edge without a fold, lies from the junction line.

    >>> from seamwright.panel import PanelEnd, Reach
    >>> PanelEnd.overhang('1"').reach == Reach.overhang('1"')
    True
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Length]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def distance(self, /) -> Length:
        """
        By how much.
        """
    @staticmethod
    def hold_back(distance: Length | str) -> Reach:
        """
        Short of the line by this much.
        """
    @property
    def kind(self, /) -> str:
        """
        Which of the two: ``hold-back`` or ``overhang``.
        """
    @staticmethod
    def overhang(distance: Length | str) -> Reach:
        """
        Past the line by this much.
        """

@final
class Seam:
    """
    How two panels join: snap-lock, single-lock, double-lock or batten.

    >>> from seamwright.panel import Seam
    >>> Seam.double_lock('1/4"').name
    'double-lock'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def batten(width: Length | str, leg: Leg, cap_leg: Length | str) -> Seam:
        """
        Two upturned legs, alike on both sides, with ``width`` between them, and a cap that takes ``cap_leg`` more on each side.
        """
    @property
    def cap_leg(self, /) -> Length | None:
        """
        How much metal a batten's cap takes on each side beyond the batten's width.
        """
    @staticmethod
    def double_lock(lock: Length | str) -> Seam:
        """
        Folded twice on the roof, by 180 degrees: the flanges lie against the upstand.
        """
    @property
    def female(self, /) -> Leg | None:
        """
        The leg that laps over, of a snap-lock seam.
        """
    @property
    def foot(self, /) -> Length | None:
        """
        Width of a closed snap-lock seam where it stands on the pan.
        """
    @property
    def leg(self, /) -> Leg | None:
        """
        The leg of a panel with batten seams.
        """
    @property
    def lock(self, /) -> Length | None:
        """
        Width of the lock of a seam that is folded on the roof.
        """
    @property
    def male(self, /) -> Leg | None:
        """
        The leg that is lapped over, of a snap-lock seam.
        """
    @property
    def name(self, /) -> str:
        """
        The kind: snap-lock, single-lock, double-lock or batten.
        """
    @staticmethod
    def single_lock(lock: Length | str) -> Seam:
        """
        Folded once on the roof, by 90 degrees: the flanges lie level on the seam.
        """
    @staticmethod
    def snap_lock(male: Leg, female: Leg, foot: Length | str) -> Seam:
        """
        The female leg snaps over the male one; ``foot`` is the width of the closed seam where it stands on the pan.
        """
    @property
    def width(self, /) -> Length | None:
        """
        Between the two legs of a batten seam.
        """

def along_seam(distance: Length | str, meeting: Angle | str) -> Length:
    """
    A distance square to a junction line, measured along a seam that meets the line at this angle; 90 degrees is square.

    >>> from seamwright.panel import along_seam
    >>> format(along_seam('3"', "150 deg"), "in/16")
    '6"'
    """
