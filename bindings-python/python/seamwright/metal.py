"""The metals: how their thickness is named, and which of them go together."""

from ._start import open_room

open_room("metal")
from ._seamwright.metal import (
    Gauge,
    GaugeSystem,
    MetalMeeting,
    MetalsTogether,
    Sheet,
)

__all__ = [
    "Gauge",
    "GaugeSystem",
    "MetalMeeting",
    "MetalsTogether",
    "Sheet",
]
