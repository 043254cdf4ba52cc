"""
The classes of `seamwright.stock`.
"""

from .record import Caution, Worksheet
from .units import Area, Length
from typing import Any, final

__all__ = ["Across", "CutPlan", "DropPlan", "ScrapReport", "SlitPlan", "SlitScrap", "Slitting", "StickPlan"]

@final
class Across:
    """
    How many of one blank alone lie side by side.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def count(self, /) -> int:
        """
        How many strips of this girth the trimmed coil gives.
        """
    @property
    def left(self, /) -> Length:
        """
        What is left beside them.
        """

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
class DropPlan:
    """
    Drops that are slit alike.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def count(self, /) -> int:
        """
        How many drops are slit like this.
        """
    @property
    def length(self, /) -> Length:
        """
        The length that is cut off the coil.
        """
    @property
    def offcut(self, /) -> Length:
        """
        Width of what drops off beside the strips, the edge trim not counted.
        """
    @property
    def strips(self, /) -> list[tuple[int, int]]:
        """
        The strips side by side, widest first: the index of the blank, and how many of it.
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
class SlitPlan:
    """
    The slitting list of a coil.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def across(self, /) -> list[Across]:
        """
        For each blank asked for, how many of it alone lie side by side.
        """
    @property
    def bound(self, /) -> Length:
        """
        What no plan of such drops can take less than.
        """
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is cut.
        """
    @property
    def coil_length(self, /) -> Length:
        """
        Length of coil that is cut off.
        """
    @property
    def drop_count(self, /) -> int:
        """
        How many drops are cut off the coil.
        """
    @property
    def drops(self, /) -> list[DropPlan]:
        """
        The drops, longest first, those slit alike together.
        """
    @property
    def proven(self, /) -> bool:
        """
        Whether the plan meets the bound, so that none is better.
        """
    @property
    def scrap(self, /) -> SlitScrap:
        """
        Where the coil goes.
        """

@final
class SlitScrap:
    """
    Where the coil goes.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def blanks(self, /) -> Area:
        """
        Area of the blanks.
        """
    @property
    def coil(self, /) -> Area:
        """
        Area of the coil that is cut off.
        """
    @property
    def edge_trim(self, /) -> Area:
        """
        Area of the edge trim.
        """
    @property
    def offcuts(self, /) -> Area:
        """
        Area of what drops off beside the strips.
        """
    @property
    def scrap_ratio(self, /) -> float:
        """
        The part of the coil that does not end in a blank: 0 is none.
        """

@final
class Slitting:
    """
    Blanks to be cut from a coil: drops of the blanks' lengths, each slit into strips.

    >>> from seamwright.stock import Slitting
    >>> drip = {"label": "drip", "girth": '7"', "length": "10 ft", "count": 13}
    >>> plan = Slitting.from_dict({"coil_width": '48"', "edge_trim": '1/4"', "blanks": [drip]}).compute()
    >>> plan.across[0].count, plan.drop_count, plan.proven
    (6, 3, True)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> Slitting:
        """
        For unpickling.
        """
    def compute(self, /) -> SlitPlan:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[SlitPlan, Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> Slitting:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> Slitting:
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
