"""The metals: how their thickness is named."""

from ._start import open_room

open_room("metal")
from ._seamwright.metal import (
    Gauge,
    GaugeSystem,
)

__all__ = [
    "Gauge",
    "GaugeSystem",
]
