"""The metals: how their thickness is named."""

from ._seamwright.metal import (
    Gauge,
    GaugeSystem,
)

__all__ = [
    "Gauge",
    "GaugeSystem",
]
