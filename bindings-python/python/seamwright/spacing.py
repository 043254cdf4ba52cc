"""Stations along a run."""

from ._seamwright.spacing import (
    Stations,
)

__all__ = [
    "Stations",
]
