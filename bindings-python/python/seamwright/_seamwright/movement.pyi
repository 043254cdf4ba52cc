"""
The classes of `seamwright.movement`.
"""

from .record import Worksheet
from .units import Expansion, Length, TemperatureDifference
from typing import final

__all__ = ["LengthChange"]

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
