"""Runs the reference cases."""

import cases
import pytest
from seamwright import job

ALL = cases.load()
ELSEWHERE = cases.not_in_python()


def test_there_are_cases_with_names_of_their_own() -> None:
    names = [c.name for c in ALL]
    assert names
    assert sorted({n for n in names if names.count(n) > 1}) == []


def test_what_python_leaves_out_is_neither_stale_nor_known() -> None:
    assert ELSEWHERE - {c.op for c in ALL} == set()
    assert ELSEWHERE & set(cases.OPS) == set()


def test_every_source_is_named() -> None:
    for c in ALL:
        if isinstance(c.source, str):
            assert c.source == "common-practice" or (c.source == "bad-input" and "refused" in c.out), c.name
        else:
            assert c.source["document"] and c.source["seen"] in {"text", "secondary", "memory", "derived"}, c.name
            assert set(c.source) <= {"document", "edition", "place", "seen"}, c.name


@pytest.mark.parametrize("case", [c for c in ALL if c.op not in ELSEWHERE], ids=lambda c: f"{c.file}:{c.name}")
def test_case(case: cases.Case) -> None:
    assert case.op in cases.OPS or case.op in job.names(), f"Python does not know {case.op}; if it need not, say so in tests/cases/not_in_python.txt"
    found = cases.differences(case, cases.run(case))
    if case.deviates is None:
        assert found == []
    else:
        assert found != [], f"the print is said to deviate ({case.deviates}), and matches"


@pytest.mark.parametrize(
    ("expected", "got", "tol", "matches"),
    [
        ("1 mm", "1 mm", None, True),
        ("1 mm", "1.000000001 mm", None, False),
        ("1 mm", "1.001 mm", "0.001 mm", True),
        ("0.5", "0.5", None, True),
        ("0.5", "0.501", "0.001", True),
        ("0.5", "0.502", "0.001", False),
        ("30 deg", "30 rad", "1 deg", False),
        ("30 deg", "30.4 deg", "0.5 deg", True),
        ("30 deg", "30.4 deg", "0.5", False),
        ("1 lbf", "4.4482216152605 N", None, True),
        ("1 lbf", "4.5 N", "0.01 lbf", False),
        ("1 lbf", "4.5 N", "0.06 N", True),
        ("1 lbf", "4.4482216152605 Pa", None, False),
        ("1 lb", "1 lbf", "10 lb", False),
        ("true", "true", None, True),
        ("true", "false", None, False),
    ],
)
def test_the_comparison_can_fail(expected: str, got: str, tol: str | None, matches: bool) -> None:
    assert (cases.difference("x", expected, got, tol) is None) is matches


def test_paths_lead_into_results() -> None:
    result, sheet = job.explain("spacing.spacing", {"run": "4 ft", "end_distance": "0 in", "rule": {"equal": {"maximum": "2 ft"}}})
    found = {p: cases.at(result, sheet, p) for p in ("positions.count", "positions[1]", "positions[3]", "positions", "last_spacing", "rule", "value")}
    assert found == {
        "positions.count": "3",
        "positions[1]": "609.6 mm",
        "positions[3]": None,
        "positions": None,
        "last_spacing": "null",
        "rule": None,
        "value": None,
    }
    assert cases.at("1 mm", sheet, "value") == "1 mm"
    assert cases.at(result, sheet, "worksheet.steps[1]") == "2"
    assert cases.at(result, sheet, "worksheet.steps[9]") is None
