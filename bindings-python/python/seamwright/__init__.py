"""Layout, fabrication and estimating of standing-seam sheet-metal roofs.

Lengths are exact, quantities are text with their unit in and out, and a refusal names the field, the value and what would be accepted.
The rooms have the names of the Rust library's: ``seamwright.units`` and so on.

The library computes; it does not license. Structural spacing, loads, and fire and weather approvals belong to a licensed engineer, the
local code and the panel's own test report.
"""

from . import (
    _start,
    assembly,
    closure,
    error,
    job,
    junction,
    layout,
    metal,
    movement,
    panel,
    pitch,
    record,
    roof,
    spacing,
    stock,
    trim,
    units,
)
from ._seamwright import VERSION as __version__
from .error import InputError, SeamwrightError

__all__ = [
    "InputError",
    "SeamwrightError",
    "__version__",
    "assembly",
    "closure",
    "error",
    "job",
    "junction",
    "layout",
    "metal",
    "movement",
    "panel",
    "pitch",
    "record",
    "roof",
    "spacing",
    "stock",
    "trim",
    "units",
]
