"""The metals: how their thickness is named."""

from ._seamwright import (
    Gauge,
    GaugeSystem,
)

__all__ = [
    "Gauge",
    "GaugeSystem",
]
