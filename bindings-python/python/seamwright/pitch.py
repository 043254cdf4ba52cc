"""How steep a roof is, and the geometry that two pitches make where their planes meet."""

from ._start import open_room

open_room("pitch")
from ._seamwright.pitch import (
    BendAt,
    Corner,
    CornerGeometry,
    CornerSide,
    Framing,
    FramingRow,
    JunctionBend,
    Pitch,
    SlopeCheck,
    SlopeRule,
)

__all__ = [
    "BendAt",
    "Corner",
    "CornerGeometry",
    "CornerSide",
    "Framing",
    "FramingRow",
    "JunctionBend",
    "Pitch",
    "SlopeCheck",
    "SlopeRule",
]
