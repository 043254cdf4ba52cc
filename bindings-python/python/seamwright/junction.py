"""The section of each kind of junction, solved in the plane square to its line."""

from ._start import open_room

open_room("junction")
from ._seamwright.junction import (
    AlongLine,
    CurbBack,
    Eave,
    Headwall,
    HighSide,
    Hip,
    JunctionTrim,
    LayoutLine,
    Levels,
    PitchTransition,
    Rake,
    Ridge,
    SectionPoint,
    SideEnd,
    Sidewall,
    Solved,
    Valley,
)

__all__ = [
    "AlongLine",
    "CurbBack",
    "Eave",
    "Headwall",
    "HighSide",
    "Hip",
    "JunctionTrim",
    "LayoutLine",
    "Levels",
    "PitchTransition",
    "Rake",
    "Ridge",
    "SectionPoint",
    "SideEnd",
    "Sidewall",
    "Solved",
    "Valley",
]
