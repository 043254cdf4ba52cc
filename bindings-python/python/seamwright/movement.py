"""How metal moves with heat."""

from ._start import open_room

open_room("movement")
from ._seamwright.movement import (
    CapMoves,
    EndVerdict,
    LengthChange,
    SideParting,
)

__all__ = [
    "CapMoves",
    "EndVerdict",
    "LengthChange",
    "SideParting",
]
