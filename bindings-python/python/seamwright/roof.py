"""The roof's planes and the lines where they meet."""

from ._start import open_room

open_room("roof")
from ._seamwright.roof import (
    Bounds,
    Drain,
    Edge,
    Line,
    Outline,
    Plane,
    Point,
    Roof,
    RoofInput,
    Side,
    Vertex,
    Wall,
)

__all__ = [
    "Bounds",
    "Drain",
    "Edge",
    "Line",
    "Outline",
    "Plane",
    "Point",
    "Roof",
    "RoofInput",
    "Side",
    "Vertex",
    "Wall",
]
