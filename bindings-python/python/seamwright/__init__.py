"""Layout, fabrication and estimating of standing-seam sheet-metal roofs.

Lengths are exact, quantities are text with their unit in and out, and a refusal names the field, the value and what would be accepted.
The rooms have the names of the Rust library's: ``seamwright.units`` and so on.

The library computes; it does not license. Structural spacing, loads, and fire and weather approvals belong to a licensed engineer, the
local code and the panel's own test report.
"""

from . import _start as _start
from ._errors import InputError, SeamwrightError
from ._seamwright import VERSION as __version__

TYPE_CHECKING = False
if TYPE_CHECKING:
    from . import (
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
        underlayment,
        units,
    )
else:

    def __getattr__(name: str) -> object:
        """A room, imported when it is first asked for: one that is not used costs nothing."""
        if name in __all__:
            __import__(f"{__name__}.{name}")
            return globals()[name]
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")

    def __dir__() -> list[str]:
        return sorted({*globals(), *__all__})


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
    "underlayment",
    "units",
]
