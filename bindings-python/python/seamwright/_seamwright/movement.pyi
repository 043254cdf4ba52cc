"""
The classes of `seamwright.movement`.
"""

from .record import Caution, Worksheet
from .units import Expansion, Length, TemperatureDifference
from typing import Any, final

__all__ = ["CapMoves", "EndVerdict", "LengthChange", "SideParting"]

@final
class CapMoves:
    """
    By how much the two sides under a cap that rides part, close, rise and fall over the year.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def closes(self, /) -> Length:
        """
        By how much the gap between the sides closes in the heat, level.
        """
    @property
    def first(self, /) -> SideParting | None:
        """
        The first side; ``None`` where it does not move.
        """
    @property
    def opens(self, /) -> Length:
        """
        By how much it opens in the cold.
        """
    @property
    def second(self, /) -> SideParting | None:
        """
        The second side; ``None`` where it does not move.
        """

@final
class EndVerdict:
    """
    The verdict on the fold and the gap of an end that moves, with what would do.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What fails, and what else to know.
        """
    @property
    def gap_when_laid(self, /) -> Length:
        """
        The gap to leave with it at the laying temperature.
        """
    @property
    def gaps(self, /) -> tuple[Length, Length] | None:
        """
        The least and greatest gap when laid that would do with this fold; ``None`` where no gap does.
        """
    @property
    def greatest_to_fixed(self, /) -> Length | None:
        """
        The greatest distance to the fixed line that this fold allows; ``None`` where the metal does not move.
        """
    @property
    def holds(self, /) -> bool:
        """
        Whether both the clearance and the engagement are kept all year.
        """
    @property
    def least_engagement(self, /) -> Length:
        """
        The least hooked length of the year; negative where the fold is off.
        """
    @property
    def least_fold(self, /) -> Length:
        """
        The least fold that would do: clearance, engagement and the whole travel.
        """
    @property
    def least_gap(self, /) -> Length:
        """
        The least gap of the year; negative where metal pushes.
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
class SideParting:
    """
    By how much one side under a cap moves over the year.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def closes(self, /) -> Length:
        """
        Level, toward the other side, in the heat.
        """
    @property
    def falls(self, /) -> Length:
        """
        Down, in the cold.
        """
    @property
    def opens(self, /) -> Length:
        """
        Level, away from it, in the cold.
        """
    @property
    def rises(self, /) -> Length:
        """
        Up, in the heat.
        """
