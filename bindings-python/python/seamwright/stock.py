"""Lengths cut from the sticks that are bought, and blanks cut from coil."""

from ._start import open_room

open_room("stock")
from ._seamwright.stock import (
    Across,
    CutPlan,
    DropPlan,
    ScrapReport,
    SlitPlan,
    SlitScrap,
    Slitting,
    StickPlan,
)

__all__ = [
    "Across",
    "CutPlan",
    "DropPlan",
    "ScrapReport",
    "SlitPlan",
    "SlitScrap",
    "Slitting",
    "StickPlan",
]
