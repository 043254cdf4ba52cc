"""The reference cases: read from tests/cases and run through the public API of the Python package.

An operation is one of `OPS`, or the name of a calculation, which `seamwright.job` runs.
"""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from seamwright import InputError, job, units
from seamwright.metal import Gauge, GaugeSystem
from seamwright.movement import LengthChange
from seamwright.pitch import Corner, Framing, Pitch
from seamwright.record import Worksheet
from seamwright.trim import BendRule, BendSize, NeutralFactor, SetbackFactor, din_compensation
from seamwright.units import Length, LengthFormat, ShopRounding

ROOT = Path(__file__).resolve().parents[2]
CASES = ROOT / "tests" / "cases"

Values = Mapping[str, str]

SI: dict[Callable[[str], Any], str] = {
    units.Area: "m2",
    units.Volume: "m3",
    units.Mass: "kg",
    units.Force: "N",
    units.Pressure: "Pa",
    units.LineLoad: "N/m",
    units.SurfaceMass: "kg/m2",
    units.LineMass: "kg/m",
    units.Density: "kg/m3",
    units.Expansion: "/K",
}


@dataclass(frozen=True)
class Case:
    """One case as its file has it, with the file for messages."""

    file: str
    name: str
    op: str
    inputs: dict[str, Any]
    out: dict[str, str]
    source: str | dict[str, str]
    tol: dict[str, str] = field(default_factory=dict)
    row: str | None = None
    deviates: str | None = None


def load(folder: Path = CASES) -> list[Case]:
    """Every case of every file; `rows.toml` is the list of rows and not a file of cases."""
    cases = []
    for path in sorted(folder.rglob("*.toml")):
        if path.name == "rows.toml":
            continue
        with path.open("rb") as file:
            document = tomllib.load(file)
        if set(document) != {"case"}:
            raise ValueError(f"{path}: only [[case]] is expected, not {sorted(document)}")
        for table in document["case"]:
            inputs = table.pop("in")
            cases.append(Case(file=str(path.relative_to(folder)), inputs=inputs, **table))
    return cases


def not_in_python(folder: Path = CASES) -> set[str]:
    """Operations that Python does not run, one a line, with the reason after a `#`."""
    path = folder / "not_in_python.txt"
    if not path.exists():
        return set()
    lines = (line.split("#", 1)[0].strip() for line in path.read_text(encoding="utf-8").splitlines())
    return {line for line in lines if line}


def _number(text: str) -> tuple[float, str] | None:
    """A number and its unit; `None` for other text."""
    head, _, unit = text.partition(" ")
    if not re.fullmatch(r"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?", head):
        return None
    return float(head), unit


def _held(expected: str, got: str, tol: str | None) -> list[float] | None:
    """Texts of one quantity as numbers of its SI unit. A temperature is not among them: `5 K` is one and a difference too."""
    for quantity, unit in SI.items():
        try:
            return [quantity(text).get(unit) if text is not None else 0.0 for text in (expected, got, tol)]
        except InputError:
            continue
    return None


def _length(text: str) -> Length | None:
    try:
        return Length(text)
    except InputError:
        return None


def difference(name: str, expected: str, got: str, tol: str | None) -> str | None:
    """What does not match.

    A length compares by its picometres, a number with its unit by its value, a quantity in another unit by what it is in the unit that the
    library holds, the rest as text.
    """
    fault = f"{name}: expected {expected}, got {got}"
    a, b = _length(expected), _length(got)
    if a is not None and b is not None:
        allowed = Length(tol).pm if tol is not None else 0
        off = a.pm - b.pm
        return None if abs(off) <= allowed else f"{fault}, off by {off} pm"
    x, y = _number(expected), _number(got)
    if x is None or y is None:
        return None if expected == got else fault
    t = _number(tol) if tol is not None else (0.0, x[1])
    if x[1] != y[1] or t is None or t[1] != x[1]:
        held = _held(expected, got, tol)
        if held is None:
            return f"{fault}, or its tolerance {tol}, in another unit"
        x, y, t = ((value, "") for value in held)
    allowance = t[0]
    # A printed decimal and its tolerance are themselves rounded to the nearest double.
    noise = 4 * 2.0**-52 * max(abs(x[0]), abs(y[0]))
    return None if abs(x[0] - y[0]) <= allowance + noise else f"{fault}, off by {y[0] - x[0]}"


def differences(case: Case, got: Values) -> list[str]:
    """Every output that does not match, one line each."""
    found = []
    for name, expected in case.out.items():
        if name not in got:
            found.append(f"{name}: no such output")
        elif fault := difference(name, expected, got[name], case.tol.get(name)):
            found.append(fault)
    return found


def _convert(i: Values) -> str:
    name = "".join(part.capitalize() for part in i["quantity"].split("-"))
    return repr(getattr(units, name)(i["value"]).get(i["unit"]))


def _round(i: Values) -> str:
    return str(ShopRounding(i["increment"], i["rounding"]).round(i["length"]))


def _corner(i: Values) -> dict[str, Any]:
    g = Corner(i["first"], i["second"], i["plan"]).compute()
    return {
        "plan_first": g.first.plan,
        "plan_second": g.second.plan,
        "slope": g.slope,
        "backing_first": g.first.backing,
        "backing_second": g.second.backing,
        "dihedral": g.dihedral,
        "in_plane_first": g.first.in_plane,
        "in_plane_second": g.second.in_plane,
        "factor": g.first.length_factor,
    }


def _framing(i: Values) -> dict[str, Any]:
    row = Framing(i["pitch"], i["spacing"]).compute()
    names = ("common_per_foot", "hip_per_foot", "hip_run_per_foot", "jack_difference", "jack_side_cut", "hip_side_cut")
    return {name: getattr(row, name) for name in names}


def _gauge(i: Values) -> dict[str, Any]:
    gauge = Gauge(i["gauge"])
    out: dict[str, Any] = {"thickness": gauge.thickness}
    if gauge.defining_weight is not None:
        out["weight"] = f"{gauge.defining_weight.get('lb/ft2')!r} lb/ft2"
    return out


def _size(i: Values) -> BendSize:
    return BendSize(i["thickness"], i["inside_radius"], i["angle"])


def _rule(i: Values) -> BendRule:
    """A rule by its name, then its figure or its metal."""
    name, _, argument = i["rule"].partition(" ")
    if name == "neutral-axis":
        return BendRule.neutral_axis(NeutralFactor(float(argument)))
    if name == "handbook":
        return BendRule.handbook(argument)
    return {"din-6935": BendRule.din_6935, "aviation": BendRule.aviation, "sharp-corner": BendRule.sharp_corner}[name]()


OPS: dict[str, Callable[[Values], dict[str, Any]]] = {
    "units.length.parse": lambda i: {"length": Length.parse(i["text"])},
    "units.length.format": lambda i: {"text": Length(i["length"]).format(LengthFormat(i["format"]))},
    "units.length.round": lambda i: {"length": _round(i)},
    "units.length.station": lambda i: {"length": Length(i["length"]).station(int(i["i"]), int(i["n"]))},
    "metal.gauge": _gauge,
    "metal.nearest_gauge": lambda i: {"number": GaugeSystem(i["system"]).nearest(Gauge(i["gauge"]).thickness).number},
    "movement.length_change": lambda i: {"change": LengthChange(i["expansion"], i["length"], i["difference"]).compute()},
    "trim.setback_factor": lambda i: {"factor": SetbackFactor.of(i["angle"]).value},
    "trim.din_compensation": lambda i: {"compensation": din_compensation(_size(i))},
    "trim.allowance": lambda i: {"allowance": _rule(i).allowance(_size(i))},
    "trim.deduction": lambda i: {"deduction": _rule(i).deduction(_size(i))},
    "pitch.angle": lambda i: {"angle": Pitch(i["pitch"]).angle},
    "pitch.percent": lambda i: {"percent": Pitch(i["pitch"]).percent},
    "pitch.slope_factor": lambda i: {"factor": Pitch(i["pitch"]).slope_factor},
    "pitch.slope_length": lambda i: {"length": Pitch(i["pitch"]).slope_length(i["run"])},
    "pitch.at_least": lambda i: {"passes": str(Pitch(i["pitch"]).at_least(i["minimum"])).lower()},
    "pitch.corner": _corner,
    "pitch.framing": _framing,
    "units.convert": lambda i: {"value": _convert(i)},
}


def at(result: Any, worksheet: Worksheet, path: str) -> str | None:
    """What stands at a path of a result: `positions[2]`, `positions.count`, `value` for a result that is a single value.

    A path that begins with `worksheet.` leads into the worksheet: `worksheet.steps[0]` is the result of the first of all its steps.
    """
    if asked := re.fullmatch(r"worksheet\.steps\[(\d+)\]", path):
        steps = worksheet.steps()
        return steps[int(asked[1])].result if int(asked[1]) < len(steps) else None
    here = result
    for step in [] if path == "value" and not isinstance(here, dict) else re.split(r"\.|(?=\[)", path):
        if isinstance(here, list) and step == "count":
            return str(len(here))
        if isinstance(here, list) and step.startswith("[") and int(step[1:-1]) < len(here):
            here = here[int(step[1:-1])]
        elif isinstance(here, dict) and step in here:
            here = here[step]
        else:
            return None
    if isinstance(here, (dict, list)):
        return None
    return here if isinstance(here, str) else json.dumps(here)


def by_name(case: Case) -> dict[str, str]:
    """The outputs of a calculation that the case expects; explaining it gives the same."""
    result = job.compute(case.op, case.inputs)
    explained, worksheet = job.explain(case.op, json.dumps(case.inputs))
    assert explained == result
    found = {path: at(result, worksheet, path) for path in case.out}
    return {path: value for path, value in found.items() if value is not None}


def run(case: Case) -> dict[str, str]:
    """The outputs of a case as text; a refusal gives its kind as `refused` and its path as `refused_at`."""
    try:
        if case.op not in OPS:
            return by_name(case)
        return {name: str(value) for name, value in OPS[case.op](case.inputs).items()}
    except InputError as refusal:
        if "refused" not in case.out:
            raise
        return {"refused": refusal.kind, "refused_at": refusal.path}
