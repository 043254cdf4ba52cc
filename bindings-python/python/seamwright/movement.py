"""How metal moves with heat."""

from ._seamwright.movement import (
    EndVerdict,
    LengthChange,
)

__all__ = [
    "EndVerdict",
    "LengthChange",
]
