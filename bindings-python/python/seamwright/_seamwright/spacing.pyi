"""
The classes of `seamwright.spacing`.
"""

from .record import Caution
from .units import Length, LengthFormat
from typing import Any, final

__all__ = ["Stations"]

@final
class Stations:
    """
    Stations along a run, in order from its start.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple]: ...
    def __repr__(self, /) -> str: ...
    @property
    def cautions(self, /) -> list[Caution]:
        """
        What to know before it is built.
        """
    @property
    def count(self, /) -> int:
        """
        How many stations there are.
        """
    def crew(self, /, format: LengthFormat | str) -> str:
        """
        What the crew works from, in words: start, spacing, count and end distance, with lengths in this format.
        """
    @property
    def last_end_distance(self, /) -> Length:
        """
        Distance of the last station from the end of the run.
        """
    @property
    def last_spacing(self, /) -> Length | None:
        """
        The last spacing, where it differs from the common one.
        """
    @property
    def positions(self, /) -> list[Length]:
        """
        Distance of each station from the start of the run.
        """
    @property
    def spacing(self, /) -> Length | None:
        """
        The common spacing on centre, the first one as laid out; ``None`` where there is a single station.
        """
    @property
    def start(self, /) -> Length:
        """
        Distance of the first station from the start of the run.
        """
