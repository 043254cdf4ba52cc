"""Lengths cut from the sticks that are bought."""

from ._start import open_room

open_room("stock")
from ._seamwright.stock import (
    CutPlan,
    ScrapReport,
    StickPlan,
)

__all__ = [
    "CutPlan",
    "ScrapReport",
    "StickPlan",
]
