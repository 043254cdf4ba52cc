"""Panels laid on a plane: strips of one coverage, their lengths, marks and lists, the coil that they take, and what a revision does to them."""

from __future__ import annotations

from ._start import open_room

open_room("layout")
from ._seamwright.layout import (
    BlankPair,
    Bundle,
    Coil,
    CoilTotal,
    CoilTotals,
    CreepCheck,
    CutShapes,
    DirectionCost,
    DirectionOfLay,
    EdgeUse,
    EndMark,
    EndPart,
    EndShape,
    FormedUse,
    Group,
    LaidPanel,
    LaidPlane,
    LayCost,
    LayDirections,
    Layout,
    LengthLimit,
    ListGroup,
    ListedPiece,
    ListedPlane,
    MarkedSeams,
    NarrowLimit,
    Notch,
    NotchShape,
    OrderRounding,
    PanelBreak,
    PanelList,
    PanelShape,
    Revised,
    RevisedRow,
    Revision,
    SeamClearance,
    SeamDistance,
    SeamMark,
    SeamMarks,
    SeamShift,
    Start,
    TaperedLay,
    TaperedPanels,
    VoidRow,
    Waste,
    _strips,
    mark,
)

# NumPy is imported when first needed: the package itself imports nothing.
TYPE_CHECKING = False
if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    from .units import Length

__all__ = [
    "BlankPair",
    "Bundle",
    "Coil",
    "CoilTotal",
    "CoilTotals",
    "CreepCheck",
    "CutShapes",
    "DirectionCost",
    "DirectionOfLay",
    "EdgeUse",
    "EndMark",
    "EndPart",
    "EndShape",
    "FormedUse",
    "Group",
    "LaidPanel",
    "LaidPlane",
    "LayCost",
    "LayDirections",
    "Layout",
    "LengthLimit",
    "ListGroup",
    "ListedPiece",
    "ListedPlane",
    "MarkedSeams",
    "NarrowLimit",
    "Notch",
    "NotchShape",
    "OrderRounding",
    "PanelBreak",
    "PanelList",
    "PanelShape",
    "Revised",
    "RevisedRow",
    "Revision",
    "SeamClearance",
    "SeamDistance",
    "SeamMark",
    "SeamMarks",
    "SeamShift",
    "Start",
    "StripArrays",
    "TaperedLay",
    "TaperedPanels",
    "VoidRow",
    "Waste",
    "mark",
    "strips",
]


class StripArrays:
    """The runs of the strips of many polygons, an array a column: polygon by polygon, strip by strip from the left, in a strip from the foot up.

    Nothing is rounded, and nothing is added at the ends: lengths are clear lengths.
    """

    __slots__ = ("area", "clear", "foot", "head", "left", "polygon", "right", "run", "strip")

    polygon: npt.NDArray[np.uint32]
    """The polygon of each run, from 0."""
    strip: npt.NDArray[np.uint32]
    """Its strip, from the left, from 0."""
    run: npt.NDArray[np.uint32]
    """Its number in the strip, from the foot, from 0."""
    left: npt.NDArray[np.float64]
    """The x of its left side."""
    right: npt.NDArray[np.float64]
    """The x of its right side."""
    foot: npt.NDArray[np.float64]
    """The y of its lowest point."""
    head: npt.NDArray[np.float64]
    """The y of its highest point."""
    clear: npt.NDArray[np.float64]
    """The greatest clear length along the seams."""
    area: npt.NDArray[np.float64]
    """Its area, in the square of the unit."""

    def __len__(self) -> int:
        return len(self.area)

    def __repr__(self) -> str:
        return f"<StripArrays of {len(self)} runs>"


def strips(
    coordinates: npt.ArrayLike, rings: npt.ArrayLike, polygons: npt.ArrayLike, coverage: Length | str, start: Start | str, *, unit: str
) -> StripArrays:
    """Cut many polygons into strips of one coverage in one call, each from its own start.

    The polygons come as GeoArrow lays them out and ``shapely.to_ragged_array`` gives them: ``coordinates`` with x (across the slope) and y (up it) of
    all vertices, ``rings`` where each ring starts among them and where the last one ends, ``polygons`` the same among the rings; the first ring of a
    polygon is its outer one. ``unit`` (in, ft, mm, cm, m, um) is that of the coordinates and of the result. Every polygon at fault is named, at
    ``polygons[i]``. NumPy is needed; other threads run meanwhile.

    >>> from seamwright.layout import strips
    >>> gable = [[0, 0], [4, 0], [4, 2], [2, 3], [0, 2]]
    >>> found = strips(gable, [0, 5], [0, 1], "1 m", "left", unit="m")
    >>> found.clear.tolist(), float(found.area.sum())
    ([2.5, 3.0, 3.0, 2.5], 10.0)
    """
    from ._arrays import numbers, offsets

    flat = numbers(coordinates, "coordinates")
    if flat.ndim != 2 or flat.shape[1] != 2:
        raise TypeError(f"coordinates: x and y of each vertex are expected, not the shape {flat.shape}")
    found = StripArrays()
    counted, figures = _strips(flat.reshape(-1), offsets(rings, "rings"), offsets(polygons, "polygons"), coverage, start, unit)
    found.polygon, found.strip, found.run = counted
    found.left, found.right, found.foot, found.head, found.clear, found.area = figures
    return found
