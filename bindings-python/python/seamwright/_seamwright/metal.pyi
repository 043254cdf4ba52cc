"""
The classes of `seamwright.metal`.
"""

from .record import Source
from .units import Length, SurfaceMass
from typing import SupportsIndex, final

__all__ = ["Gauge", "GaugeSystem"]

@final
class Gauge:
    """
    A gauge in its system; a bare gauge number is refused.

    >>> from seamwright.metal import Gauge
    >>> format(Gauge("24 ga galvanized").charted_thickness, "in.4")
    '0.0276 in'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, gauge: Gauge | str) -> Gauge: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def charted_thickness(self, /) -> Length:
        """
        The thickness as charts print it.
        """
    @property
    def defining_weight(self, /) -> SurfaceMass | None:
        """
        The weight that defines it, where one does.
        """
    @property
    def least_thickness(self, /) -> Length | None:
        """
        The least thickness, where the system gives one.
        """
    @staticmethod
    def new(system: GaugeSystem | str, number: SupportsIndex) -> Gauge:
        """
        The gauge of this number: for Brown and Sharpe 0000 is -3; for copper the number is its weight in oz/ft2.
        """
    @property
    def number(self, /) -> int:
        """
        Its number in the system.
        """
    @staticmethod
    def parse(text: str) -> Gauge:
        """
        Reads a gauge with its system.
        """
    @property
    def source(self, /) -> Source:
        """
        Where its thickness comes from.
        """
    @property
    def system(self, /) -> GaugeSystem:
        """
        Its system.
        """
    @property
    def thickness(self, /) -> Length:
        """
        Its thickness, unrounded.
        """

@final
class GaugeSystem:
    """
    A system of gauges by its name: us-standard, manufacturers-standard, galvanized, brown-and-sharpe, zinc-gauge or copper.

    >>> from seamwright.metal import GaugeSystem
    >>> GaugeSystem("brown-and-sharpe").nearest("0.0216 in").number
    23
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, system: GaugeSystem | str) -> GaugeSystem: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @staticmethod
    def all() -> list[GaugeSystem]:
        """
        Every system.
        """
    @property
    def name(self, /) -> str:
        """
        The name as text.
        """
    def nearest(self, /, thickness: Length | str) -> Gauge:
        """
        The gauge whose thickness differs least.
        """
    @property
    def numbers(self, /) -> str:
        """
        The numbers that it has, in words.
        """
    @staticmethod
    def parse(text: str) -> GaugeSystem:
        """
        The system with this name.
        """
