"""
The classes of `seamwright.stock`.
"""

from .record import Caution
from .units import Length
from typing import Any, final

__all__ = ["CutPlan", "ScrapReport", "StickPlan"]

@final
class CutPlan:
    """
    A cutting plan with what no plan can beat.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bound(self, /) -> Length | int:
        """
        What no plan can take less than.
        """
    @property
    def buy(self, /) -> list[int]:
        """
        How many of each stock length are bought, in the order of the input.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is cut.
        """
    @property
    def proven(self, /) -> bool:
        """
        Whether the plan meets the bound, so that none is better.
        """
    @property
    def scrap(self, /) -> ScrapReport:
        """
        Where the bought length goes.
        """
    @property
    def stick_count(self, /) -> int:
        """
        How many sticks are bought in all.
        """
    @property
    def sticks(self, /) -> list[StickPlan]:
        """
        The sticks, those cut alike together.
        """
    @property
    def takes(self, /) -> Length | int:
        """
        What the plan takes: the total length of the sticks, or their cost where costs are given.
        """

@final
class ScrapReport:
    """
    Where the bought length goes. The four parts add up to it exactly.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def bought(self, /) -> Length:
        """
        Total length of the sticks.
        """
    @property
    def end_loss(self, /) -> Length:
        """
        Lost at the ends.
        """
    @property
    def kerf(self, /) -> Length:
        """
        Lost to cuts.
        """
    @property
    def offcuts(self, /) -> Length:
        """
        Left over.
        """
    @property
    def pieces(self, /) -> Length:
        """
        Total length of the pieces.
        """
    @property
    def scrap_ratio(self, /) -> float:
        """
        The part of the bought length that does not end in a piece: 0 is none.
        """

@final
class StickPlan:
    """
    Sticks that are cut alike.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def count(self, /) -> int:
        """
        How many sticks are cut like this.
        """
    @property
    def kerf(self, /) -> Length:
        """
        What the cuts take of each stick.
        """
    @property
    def offcut(self, /) -> Length:
        """
        What is left of each stick.
        """
    @property
    def pieces(self, /) -> list[tuple[int, int]]:
        """
        What is cut from each, longest first: the index of the piece, and how many of it.
        """
    @property
    def stock(self, /) -> int:
        """
        Index into the stock lengths.
        """
