"""Closure pieces between the seams."""

from ._seamwright.closure import (
    ClosurePiece,
)

__all__ = [
    "ClosurePiece",
]
