"""Closure pieces between the seams."""

from ._start import open_room

open_room("closure")
from ._seamwright.closure import (
    ClosurePiece,
)

__all__ = [
    "ClosurePiece",
]
