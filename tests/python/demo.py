"""The demo job, and documents changed at a path."""

import json
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import Any

from seamwright.job import Job, Packet

TEXT = (Path(__file__).parents[2] / "core" / "examples" / "demo_job.json").read_bytes()
DOCUMENT: dict[str, Any] = json.loads(TEXT)


@cache
def packet() -> Packet:
    return Job.from_json(TEXT).compute()


def changed(document: Any, *way: str | int, value: Any = ...) -> Any:
    """The document with another value at a path; without a value the field is taken away."""
    copy = deepcopy(document)
    place = copy
    for step in way[:-1]:
        place = place[step]
    if value is ...:
        del place[way[-1]]
    else:
        place[way[-1]] = value
    return copy


def detail(kind: str) -> Any:
    """The demo's detail of a kind of line."""
    (found,) = (entry[kind] for entry in DOCUMENT["junctions"]["kinds"] if kind in entry)
    return deepcopy(found)
