"""Standing-seam panels: the cross-section, the coil that it takes, and how an end meets a junction."""

from ._start import open_room

open_room("panel")
from ._seamwright.panel import (
    DevelopedWidth,
    Leg,
    Levels,
    Panel,
    PanelEnd,
    Reach,
    Seam,
    along_seam,
)

__all__ = [
    "DevelopedWidth",
    "Leg",
    "Levels",
    "Panel",
    "PanelEnd",
    "Reach",
    "Seam",
    "along_seam",
]
