"""Stations along a run."""

from ._start import open_room

open_room("spacing")
from ._seamwright.spacing import (
    Stations,
)

__all__ = [
    "Stations",
]
