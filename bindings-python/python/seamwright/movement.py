"""How metal moves with heat."""

from ._start import open_room

open_room("movement")
from ._seamwright.movement import (
    EndVerdict,
    LengthChange,
)

__all__ = [
    "EndVerdict",
    "LengthChange",
]
