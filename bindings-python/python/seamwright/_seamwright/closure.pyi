"""
The classes of `seamwright.closure`.
"""

from .record import Caution
from .spacing import Stations
from .units import Angle, BendAngle, Length
from typing import Any, final

__all__ = ["ClosurePiece"]

@final
class ClosurePiece:
    """
    A closure piece for one bay.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def blank_length(self, /) -> Length:
        """
        Length of the blank, along the bends of flanges and web.
        """
    @property
    def blank_width(self, /) -> Length:
        """
        Width of the blank, across them: lower flange, web and top flange.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is cut.
        """
    @property
    def fasteners(self, /) -> Stations:
        """
        Fasteners along the centreline of the lower flange, from where that line meets the first seam's clearance.
        """
    @property
    def flange_cut(self, /) -> Angle:
        """
        Angle at which the ends of the flanges are cut, from the line.
        """
    @property
    def flange_shift(self, /) -> Length:
        """
        How far the centreline of the lower flange is shifted along the line against the web, by the skew of its ends; toward the first end
        where positive.
        """
    @property
    def length(self, /) -> Length:
        """
        Length of the web, along the line, between its tabs.
        """
    @property
    def tab_bends(self, /) -> tuple[BendAngle, BendAngle]:
        """
        Bends of the two tabs, both turning uphill: at the end to which the seams lean as they rise for a meeting angle under 90 degrees, and
        at the other. They are the meeting angle and 180 degrees less it.
        """
    @property
    def web_height(self, /) -> Length:
        """
        Height of the web.
        """
