"""How metal moves with heat."""

from ._seamwright import (
    LengthChange,
)

__all__ = [
    "LengthChange",
]
