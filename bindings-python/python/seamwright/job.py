"""The job, and any calculation by its name."""

from __future__ import annotations

from ._seamwright import _calculation_names, _compute_all_json, _compute_json, _explain_json
from ._start import open_room

open_room("job")
from ._seamwright.job import (
    CapItem,
    CopingCornerItem,
    CopingItem,
    EaveUnderlayment,
    EndCap,
    Job,
    JobRevised,
    JobRevision,
    JunctionItem,
    KickOutItem,
    Metals,
    OrderLine,
    Packet,
    PanelChange,
    Paperwork,
    PipeItem,
    PlaneClips,
    PlaneHeat,
    PlaneLay,
    PlaneUnderlayment,
    Progress,
    SectionSide,
    SourceCount,
    Summary,
    Temperatures,
    TrimItem,
    TrimRun,
    UnderlaymentPlan,
    ValleyUnderlayment,
)

# ``typing`` and ``json`` are imported when first needed: the package itself imports nothing.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from .record import Worksheet

__all__ = [
    "CapItem",
    "CopingCornerItem",
    "CopingItem",
    "EaveUnderlayment",
    "EndCap",
    "Job",
    "JobRevised",
    "JobRevision",
    "JunctionItem",
    "KickOutItem",
    "Metals",
    "OrderLine",
    "Packet",
    "PanelChange",
    "Paperwork",
    "PipeItem",
    "PlaneClips",
    "PlaneHeat",
    "PlaneLay",
    "PlaneUnderlayment",
    "Progress",
    "SectionSide",
    "SourceCount",
    "Summary",
    "Temperatures",
    "TrimItem",
    "TrimRun",
    "UnderlaymentPlan",
    "ValleyUnderlayment",
    "compute",
    "compute_all",
    "explain",
    "names",
]


def compute(name: str, inputs: dict[str, Any] | str) -> Any:
    """Compute the calculation with this name, as ``closure.closure-bay``: the room, and the type in Rust.

    The inputs are a dict in the library's serial form, or its JSON text: fields in snake_case, choices in kebab-case, quantities as
    text with their unit or as the classes of ``seamwright.units``. A choice with values of its own is a dict of one entry. An unknown
    field is refused. The result comes in the same form: a dict, or text or a number where it is a single value.

    >>> from seamwright.job import compute
    >>> lines = compute(
    ...     "closure.closure-setting",
    ...     {"set_back": '1/2"', "face": "leading-edge", "lower_flange": '2 1/2"', "top_flange": '1 1/8"'},
    ... )
    >>> lines["fasteners"]
    '73.025 mm'
    """
    import json

    return json.loads(_compute_json(name, inputs))


def compute_all(name: str, inputs: list[dict[str, Any] | str]) -> list[Any]:
    """Compute the calculation with this name for many inputs in one call; the results stand in their order.

    Each input is as for :func:`compute`. Where some are refused, the error tells each with its number: ``inputs[17].rule.spacing``.

    >>> from seamwright.job import compute_all
    >>> compute_all("sealant.joint-depth", [{"rule": "half-width", "width": width} for width in ("20 mm", '3/4"')])
    ['10 mm', '9.525 mm']
    """
    import json

    return json.loads(_compute_all_json(name, inputs))


def explain(name: str, inputs: dict[str, Any] | str) -> tuple[Any, Worksheet]:
    """Compute the calculation with this name, and give its worksheet beside the result.

    >>> from seamwright.job import explain
    >>> change, sheet = explain("movement.length-change", {"expansion": "12e-6 /K", "length": "10 m", "difference": "50 K"})
    >>> change, len(sheet.steps())
    ('6 mm', 1)
    """
    import json

    out, sheet = _explain_json(name, inputs)
    return json.loads(out), sheet


def names() -> list[str]:
    """The names of all calculations, by floor and room.

    >>> from seamwright.job import names
    >>> "spacing.spacing" in names()
    True
    """
    return _calculation_names()
