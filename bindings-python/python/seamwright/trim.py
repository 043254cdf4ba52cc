"""Trims: profiles of legs, bends and hems, bend rules and flat patterns."""

from ._start import open_room

open_room("trim")
from ._seamwright.trim import (
    Bend,
    BendRule,
    BendSize,
    Deduction,
    DeductionTable,
    DinFactor,
    Edge,
    Flat,
    FlatBend,
    FlatLeg,
    FlatPattern,
    Leg,
    NeutralFactor,
    Profile,
    SetbackFactor,
    din_compensation,
)

__all__ = [
    "Bend",
    "BendRule",
    "BendSize",
    "Deduction",
    "DeductionTable",
    "DinFactor",
    "Edge",
    "Flat",
    "FlatBend",
    "FlatLeg",
    "FlatPattern",
    "Leg",
    "NeutralFactor",
    "Profile",
    "SetbackFactor",
    "din_compensation",
]
