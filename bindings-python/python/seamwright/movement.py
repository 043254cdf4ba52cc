"""How metal moves with heat."""

from ._seamwright.movement import (
    LengthChange,
)

__all__ = [
    "LengthChange",
]
