"""
The classes of `seamwright.metal`.
"""

from .record import Caution, Source, Worksheet
from .units import Length, SurfaceMass
from typing import Any, SupportsIndex, final

__all__ = ["Gauge", "GaugeSystem", "MetalMeeting", "MetalsTogether", "Sheet"]

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

@final
class MetalMeeting:
    """
    Two kinds of part whose metals do not go together, or are not judged.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def caution(self, /) -> Caution:
        """
        What must be said of it.
        """
    @property
    def cure(self, /) -> str:
        """
        What cures it.
        """
    @property
    def first(self, /) -> str:
        """
        The one; by run-off, the upper.
        """
    @property
    def first_alloy(self, /) -> str:
        """
        Its metal.
        """
    @property
    def places(self, /) -> list[str]:
        """
        Where: each the line, or the lines that the water crosses one after the other.
        """
    @property
    def second(self, /) -> str:
        """
        The other; by run-off, the lower.
        """
    @property
    def second_alloy(self, /) -> str:
        """
        Its metal.
        """
    @property
    def verdict(self, /) -> str:
        """
        What is said of them: ``keep-apart`` or ``not-judged``.
        """
    @property
    def way(self, /) -> str:
        """
        How they meet: ``contact`` or ``run-off``.
        """

@final
class MetalsTogether:
    """
    The metals of a roof: its parts, those that touch, and those on which another's water runs, which is followed all the way down.

    >>> from seamwright.metal import MetalsTogether
    >>> parts = [{"name": "flashing", "alloy": "copper"}, {"name": "panels", "alloy": "copper"}]
    >>> parts.append({"name": "gutter", "alloy": "aluminium-zinc-coated-steel"})
    >>> drains = [{"first": 0, "second": 1, "at": "headwall 1"}, {"first": 1, "second": 2, "at": "eave 1"}]
    >>> [(m.first, m.second, m.way, m.verdict, m.places) for m in MetalsTogether.from_dict({"parts": parts, "drains": drains}).compute()]
    [('flashing', 'gutter', 'run-off', 'keep-apart', ['headwall 1, eave 1']), ('panels', 'gutter', 'run-off', 'keep-apart', ['eave 1'])]
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @staticmethod
    def _restored(text: str) -> MetalsTogether:
        """
        For unpickling.
        """
    def compute(self, /) -> list[MetalMeeting]:
        """
        What it comes to.
        """
    def explain(self, /) -> tuple[list[MetalMeeting], Worksheet]:
        """
        What it comes to, and the worksheet.
        """
    @staticmethod
    def from_dict(mapping: dict) -> MetalsTogether:
        """
        Reads it from a dict of the same form, in which quantities may stand as themselves.
        """
    @staticmethod
    def from_json(json: str | bytes) -> MetalsTogether:
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
class Sheet:
    """
    A sheet of one alloy, of a thickness, with the coating that a coated steel carries.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def alloy(self, /) -> str:
        """
        The alloy.
        """
    @property
    def base_thickness(self, /) -> Length:
        """
        The thickness without the coating.
        """
    @property
    def coating(self, /) -> str | None:
        """
        The designation of its coating; ``None`` where it carries none.
        """
    @property
    def gauge(self, /) -> Gauge | None:
        """
        The gauge that it was given by; ``None`` where it was given as a length.
        """
    @property
    def surface_mass(self, /) -> SurfaceMass:
        """
        Mass for each area of flat sheet, both sides of the coating included.
        """
    @property
    def thickness(self, /) -> Length:
        """
        The thickness, coating included.
        """
