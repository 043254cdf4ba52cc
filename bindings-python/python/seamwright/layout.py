"""Panels laid on a plane: strips of one coverage, their lengths, marks, and the coil that they take."""

from ._start import open_room

open_room("layout")
from ._seamwright.layout import (
    Coil,
    EdgeUse,
    EndPart,
    Group,
    LaidPanel,
    LaidPlane,
    Layout,
    LengthLimit,
    NarrowLimit,
    OrderRounding,
    Start,
    mark,
)

__all__ = [
    "Coil",
    "EdgeUse",
    "EndPart",
    "Group",
    "LaidPanel",
    "LaidPlane",
    "Layout",
    "LengthLimit",
    "NarrowLimit",
    "OrderRounding",
    "Start",
    "mark",
]
