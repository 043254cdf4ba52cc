"""Calculations by their names, and what is refused on the way in."""

import json
from copy import deepcopy
from typing import Any

import pytest
from demo import DOCUMENT
from seamwright import InputError, job
from seamwright.pitch import Pitch
from seamwright.units import Force, Length

SPACING: dict[str, Any] = {"run": "10 ft", "end_distance": "1 in", "rule": {"fixed": {"start": "1 in", "spacing": "12 in", "last": "at-end-distance"}}}
PLY = {"thickness": "0.0188 in", "ultimate": "33 ksi"}
SCREW: dict[str, Any] = {"edition": "y2012", "head_ply": PLY, "far_ply": dict(PLY), "screw": {"diameter": "0.19 in", "head": "0.34 in"}}


def changed(document: dict[str, Any], path: str, value: Any) -> dict[str, Any]:
    """The document with another value at a path; `...` takes the field away."""
    copy = deepcopy(document)
    *way, last = path.split(".")
    place = copy
    for step in way:
        place = place[step]
    if value is ...:
        del place[last]
    else:
        place[last] = value
    return copy


def refused(name: str, inputs: Any) -> InputError:
    with pytest.raises(InputError) as caught:
        job.compute(name, inputs)
    with pytest.raises(InputError) as again:
        job.explain(name, inputs)
    assert str(caught.value) == str(again.value)
    return caught.value


def test_names_and_results() -> None:
    assert len(job.names()) == len(set(job.names())) >= 25
    result, sheet = job.explain("spacing.spacing", SPACING)
    assert result == job.compute("spacing.spacing", json.dumps(SPACING))
    assert result["last_spacing"] == "254 mm" and len(result["positions"]) == 11
    assert sheet.title and sheet.steps()
    assert job.compute("pitch.bend-at", '"rake"')["bend"] == "90 deg"
    unknown = refused("spacing.spaces", SPACING)
    assert (unknown.kind, unknown.path, unknown.value) == ("unknown", "name", "spacing.spaces")
    assert "spacing.spacing" in (unknown.allowed or "")


def test_many_in_one_call_are_one_after_another() -> None:
    runs = ["10 ft", "11 ft", Length("12 ft")]
    many = [changed(SPACING, "run", run) for run in runs]
    assert job.compute_all("spacing.spacing", [json.dumps(SPACING), *many[1:]]) == [job.compute("spacing.spacing", one) for one in many]
    assert job.compute_all("spacing.spacing", []) == []
    with pytest.raises(InputError) as caught:
        job.compute_all("spacing.spacing", [SPACING, changed(SPACING, "run", "-1 ft"), SPACING, changed(SPACING, "run", ...)])
    assert [(e.kind, e.path) for e in (caught.value, *caught.value.others)] == [("out of range", "inputs[1].run"), ("missing", "inputs[3].run")]
    with pytest.raises(InputError) as caught:
        job.compute_all("spacing.spacing", [SPACING, changed(SPACING, "run", float("nan"))])
    assert caught.value.path == "inputs[1].run"
    with pytest.raises(TypeError, match="a list of documents is expected"):
        job.compute_all("spacing.spacing", SPACING)  # type: ignore[arg-type]


def test_quantities_of_the_package_may_stand_in_the_document() -> None:
    typed = changed(changed(SPACING, "run", Length("10 ft")), "end_distance", Length("1 in"))
    assert job.compute("spacing.spacing", typed) == job.compute("spacing.spacing", SPACING)
    corner = {"first": Pitch("6:12"), "second": "6:12", "plan": "90 deg"}
    assert job.compute("pitch.corner", corner)["first"]["plan"] == "45 deg"
    strength = {"force": Force("1644 lbf"), "document": "common-practice"}
    assert len(job.compute("fastener.screw-connection", changed(SCREW, "screw.shear", strength))["states"]) == 4
    assert job.compute("stock.lap-run", {"run": "20 ft", "longest": "10 ft", "lap": "1 in", "least_piece": "0 in", "mode": "equal"})["laps"] == 2
    supports = {"run": "10 ft", "greatest_end_distance": "1 ft", "maximum": "5 ft", "supports": ("0 ft", Length("5 ft"), "10 ft"), "support_use": "every"}
    assert job.compute("spacing.support-spacing", supports)["used"] == [0, 1, 2]


@pytest.mark.parametrize(
    ("name", "document", "path", "value", "kind", "at"),
    [
        ("spacing.spacing", SPACING, "rule.fixed.end", "1 in", "unknown", "rule.fixed.end"),
        ("spacing.spacing", SPACING, "run", ..., "missing", "run"),
        ("spacing.spacing", SPACING, "rule.fixed.spacing", "0 in", "out of range", "rule.spacing"),
        ("spacing.spacing", SPACING, "run", "NaN ft", "parse", "run"),
        ("spacing.spacing", SPACING, "run", "inf mm", "parse", "run"),
        ("spacing.spacing", SPACING, "run", float("nan"), "not finite", "run"),
        ("spacing.spacing", SPACING, "rule.fixed.spacing", float("-inf"), "not finite", "rule.fixed.spacing"),
        ("spacing.spacing", SPACING, "run", 10, "format", "run"),
        ("spacing.spacing", SPACING, "run", 10**400, "format", "run"),
        ("spacing.spacing", SPACING, "run", None, "format", "run"),
        ("spacing.spacing", SPACING, "run", "\ud800", "parse", "run"),
        ("fastener.screw-connection", SCREW, "head_ply.thickness", "0 in", "out of range", "head_ply.thickness"),
        ("fastener.screw-connection", SCREW, "far_ply.thickness", "-1 mm", "out of range", "far_ply.thickness"),
    ],
)
def test_each_bad_input_has_its_kind_and_its_path(name: str, document: dict[str, Any], path: str, value: Any, kind: str, at: str) -> None:
    job.compute(name, document)
    refusal = refused(name, changed(document, path, value))
    assert (refusal.kind, refusal.path) == (kind, at)


def test_what_is_no_document_is_a_type_error() -> None:
    for inputs, said in [({"run": {1, 2}}, "run: "), ({1: "x"}, "the document: a field's name"), (b"{}", "the document"), (object(), "the document")]:
        with pytest.raises(TypeError, match=said):
            job.compute("spacing.spacing", inputs)  # type: ignore[arg-type]


@pytest.mark.parametrize("text", ["", "not JSON", "{", '{"run" 1}', "{} {}", "\0"])
def test_what_is_not_json_is_pointed_at(text: str) -> None:
    refusal = refused("spacing.spacing", text)
    assert refusal.kind in ("format", "missing")


def test_a_hundred_megabytes_of_garbage_are_refused_by_their_size() -> None:
    refusal = refused("stock.cutting", '["' * (50 << 20))
    assert (refusal.kind, refusal.value, refusal.allowed) == ("too large", "104857600 bytes", "at most 16777216 bytes")
    assert len(str(refusal)) < 200


def test_deep_nesting_is_an_ordinary_refusal() -> None:
    levels = 100_000
    for name in job.names():
        for text in ["[" * levels, '{"rule":' * levels, '{"rule":' + "[" * levels]:
            assert refused(name, text).kind in ("format", "unknown", "missing")
    nested: Any = "1 in"
    for _ in range(levels):
        nested = [nested]
    itself: dict[str, Any] = {"run": []}
    itself["run"].append(itself)
    for inputs in (nested, {"run": nested}, itself):
        refusal = refused("spacing.spacing", inputs)
        assert (refusal.kind, refusal.allowed) == ("too large", "at most 128 levels")


def test_a_job_refuses_rules_that_contradict_each_other() -> None:
    document = deepcopy(DOCUMENT)
    document["supplies"]["movement"] = {"engagement": "2 in"}
    with pytest.raises(InputError) as caught:
        job.Job.from_dict(document).compute()
    rules = refused("job.job-rules", {"job": document})
    faults, told = [caught.value, *caught.value.others], [rules, *rules.others]
    # The same words, at the same places of the job.
    assert [(f.kind, f"job.{f.path}", f.message) for f in faults] == [(f.kind, f.path, f.message) for f in told]
    assert len(faults) > 1 and all("supplies.movement.engagement 50.8 mm" in f.message for f in faults)
