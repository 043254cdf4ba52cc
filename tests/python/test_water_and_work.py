"""Sealed lines, water, order of work, metals and underlayment as classes: against shapely, NumPy, graphlib and trigonometry, and in a packet."""

import graphlib
import json
import math
import pickle
from typing import Any

import numpy as np
import pytest
import shapely  # type: ignore[import-untyped]
from demo import DOCUMENT, changed
from hypothesis import given, settings
from hypothesis import strategies as st
from seamwright import job
from seamwright.assembly import SealedLine
from seamwright.error import InputError
from seamwright.job import Job
from seamwright.junction import LineOrder, Ridge, Valley, WaterPath, WorkPlan
from seamwright.metal import MetalsTogether
from seamwright.underlayment import CourseLayout, EaveMembrane, ValleyMembrane
from seamwright.units import Length
from test_junction_kinds import document as sample

METALS = {"MetalMeeting", "MetalsTogether"}
ROLL = {"width": "36 in", "length": "72 ft"}
RULE = {"head_lap": "2 in", "end_lap": "4 in", "stagger": "6 ft", "source": "common-practice"}


def same_by_name(name: str, asked: Any) -> None:
    """The class and the name read alike, and what the class gives pickles."""
    assert type(asked).from_json(asked.to_json()) == asked and pickle.loads(pickle.dumps(asked)) == asked
    result = asked.compute()
    assert pickle.loads(pickle.dumps(result)) == result == asked.explain()[0]
    plain = job.compute(name, asked.to_json())
    for field, value in plain.items() if isinstance(plain, dict) else ():
        if isinstance(value, (bool, int)):
            assert getattr(result, field) == value
        elif isinstance(value, list):
            assert len(getattr(result, field)) == len(value), field


STRETCHES = st.lists(st.tuples(st.integers(0, 40), st.integers(0, 40)).map(sorted), max_size=6)


@given(STRETCHES, st.integers(0, 8))
@settings(deadline=None, max_examples=60)
def test_a_sealed_line_breaks_where_nothing_lies(stretches: list[list[int]], limit: int) -> None:
    layer = {"name": "tape", "need": "tape", "stretches": [{"from": f"{a} mm", "to": f"{b} mm"} for a, b in stretches]}
    asked = SealedLine.from_dict({"run": "40 mm", "longest_gap": f"{limit} mm", "layers": [layer]})
    check = asked.compute()
    laid = shapely.union_all([shapely.LineString([(a, 0), (b, 0)]) for a, b in stretches if a < b])
    left = shapely.LineString([(0, 0), (40, 0)]).difference(laid)
    parts = [part.bounds for part in getattr(left, "geoms", [left]) if part.length > 0]
    gaps = sorted((round(x0), round(x1)) for x0, _, x1, _ in parts)
    assert [(b.start.get("mm"), b.stop.get("mm")) for b in check.breaks] == [gap for gap in gaps if gap[1] - gap[0] > limit]
    assert check.continuous == (not check.breaks) and all(b.missing == "tape" and b.lacks == "sealant tape" for b in check.breaks)
    assert check.widest_gap.get("mm") == max([b - a for a, b in gaps if b - a <= limit], default=0)
    same_by_name("assembly.sealed-line", asked)


def test_a_passage_without_its_plug_breaks_the_line() -> None:
    seam = {"name": "hollow of seam 1", "need": "plug", "at": "1 ft", "sealed": False}
    bays = [{"from": "0 in", "to": "10 in"}, {"from": "10 in", "to": "24 in"}]
    (found,) = SealedLine.from_dict({"run": "2 ft", "longest_gap": "0 in", "bays": bays, "passages": [seam]}).compute().breaks
    assert (found.name, found.missing, found.bay, found.start, found.stop) == ("hollow of seam 1", "plug", 2, Length("1 ft"), Length("1 ft"))
    assert "plug" in found.lacks and "plug" in found.cure


def test_water_runs_over_laps_and_behind_none() -> None:
    # Worked by hand, in inches up the slope: the flange ends above the pan under it, the panels lap it by 2, and from 10 to 12 lies nothing.
    sheets = {"cap": (12, 20, 3), "panels": (4, 10, 3), "pan": (-1, 8, 1), "flange": (0, 6, 2)}
    pile = [{"name": name, "low": f"{low} in", "high": f"{high} in", "layer": layer} for name, (low, high, layer) in sheets.items()]
    rules = [{"upper": "panels", "lower": "flange", "least": "4 in", "source": "common-practice"}]
    asked = WaterPath.from_dict({"sheets": pile, "rules": rules})
    check = asked.compute()
    assert not check.holds and check.order == ["cap", "panels", "flange", "pan"]
    laps = {(lap.upper, lap.lower): (lap.overlap, lap.least, lap.holds) for lap in check.laps}
    assert laps[("panels", "flange")] == (Length("2 in"), Length("4 in"), False)
    assert laps[("panels", "pan")] == (Length("4 in"), None, True)
    faults = {(fault.failure, fault.upper, fault.lower): (fault.at, fault.short) for fault in check.faults}
    assert faults[("short-lap", "panels", "flange")] == (Length("4 in"), Length("2 in"))
    assert faults[("open", "cap", "panels")] == (Length("12 in"), Length("2 in"))
    # The panels cover the flange's upper edge, so that water does not run behind it.
    assert set(faults) == {("short-lap", "panels", "flange"), ("open", "cap", "panels")}
    assert all(fault.message and fault.cure for fault in check.faults)
    same_by_name("junction.water-path", asked)
    bare = WaterPath.from_dict({"sheets": [sheet for sheet in pile if sheet["name"] in ("pan", "flange")]}).compute()
    assert [(fault.failure, fault.at) for fault in bare.faults] == [("runs-behind", Length("6 in"))]


def test_a_line_is_measured_from_what_is_there() -> None:
    rows = [(f"line {n}", {"line": f"line {n - 1}"} if n else "junction-line", f"{n + 1} in") for n in range(4)]
    lines = [{"name": name, "side": "first", "datum": datum, "from_datum": "1 in", "from_line": at} for name, datum, at in rows]
    asked = LineOrder.from_dict({"lines": lines})
    assert asked.compute() == 4
    same_by_name("junction.line-order", asked)
    with pytest.raises(InputError) as refused:
        LineOrder.from_dict({"lines": [lines[1], lines[0]]}).compute()
    assert (refused.value.path, refused.value.value) == ("lines[0].datum", "line 0")


@given(st.lists(st.sets(st.integers(0, 9), max_size=3), min_size=1, max_size=10))
@settings(deadline=None, max_examples=60)
def test_work_comes_in_an_order_that_graphlib_takes(needs: list[set[int]]) -> None:
    waits = {task: {n for n in before if n < len(needs)} for task, before in enumerate(needs)}
    tasks = [{"does": f"task {task}", "gives": [f"part {task}"], "needs": [f"part {n}" for n in sorted(before)]} for task, before in waits.items()]
    asked = WorkPlan.from_dict({"tasks": tasks})
    try:
        list(graphlib.TopologicalSorter(waits).static_order())
    except graphlib.CycleError:
        with pytest.raises(InputError) as refused:
            asked.compute()
        assert refused.value.path.startswith("tasks[")
        return
    order = asked.compute()
    assert sorted(order) == list(range(len(needs)))
    assert all(order.index(n) < order.index(task) for task, before in waits.items() for n in before)
    same_by_name("junction.work-plan", asked)


@given(st.lists(st.booleans(), min_size=2, max_size=7), st.sets(st.tuples(st.integers(0, 6), st.integers(0, 6)), max_size=9))
@settings(deadline=None, max_examples=60)
def test_copper_is_told_wherever_its_water_comes(copper: list[bool], drains: set[tuple[int, int]]) -> None:
    count = len(copper)
    edges = [(a, b) for a, b in sorted(drains) if a < count and b < count and a != b]
    parts = [{"name": f"part {n}", "alloy": "copper" if c else "titanium-zinc"} for n, c in enumerate(copper)]
    asked = MetalsTogether.from_dict({"parts": parts, "drains": [{"first": a, "second": b, "at": f"line {a}-{b}"} for a, b in edges]})
    reach = np.zeros((count, count), dtype=bool)
    for a, b in edges:
        reach[a, b] = True
    for k in range(count):
        reach |= np.outer(reach[:, k], reach[k])
    # Copper above zinc is kept apart; zinc above copper does it no harm (common practice, no published source).
    expected = {(f"part {a}", f"part {b}") for a in range(count) for b in range(count) if reach[a, b] and copper[a] and not copper[b]}
    met = asked.compute()
    assert {(m.first, m.second) for m in met} == expected
    assert {(m.first_alloy, m.second_alloy, m.way, m.verdict) for m in met} <= {("copper", "titanium-zinc", "run-off", "keep-apart")}
    assert all(m.places and m.cure and m.caution.number == 2104 for m in met)
    assert json.loads(asked.to_json())["parts"] == parts
    assert pickle.loads(pickle.dumps(met)) == met


@pytest.mark.parametrize(("width", "height"), [(40, 14), (71, 9), (150, 31)])
def test_courses_cover_a_plane(width: int, height: int) -> None:
    corners = [(0, 0), (width, 0), (width, height), (width // 3, height)]
    outer = [{"x": f"{x} ft", "y": f"{y} ft"} for x, y in corners]
    asked = CourseLayout.from_dict({"outline": {"outer": outer}, "roll": ROLL, "rule": RULE})
    laid = asked.compute()
    # Courses of 36 in lap 2, so each adds 34.
    assert len(laid.courses) == 1 + math.ceil((12 * height - 36) / 34)
    assert all(course.pieces and course.top > course.foot for course in laid.courses)
    polygon = shapely.Polygon(corners)
    assert laid.covered.get("ft2") == pytest.approx(polygon.area, rel=1e-9)
    pieces = [piece for course in laid.courses for piece in course.pieces]
    assert laid.length == Length.total(piece.length for piece in pieces)
    assert all(piece.stop > piece.start and piece.length <= Length("72 ft") for piece in pieces)
    for course in laid.courses:
        band = polygon.intersection(shapely.box(-1, course.foot.get("ft"), width + 1, course.top.get("ft")))
        assert course.pieces[0].start.get("ft") <= band.bounds[0] + 1e-6 and course.pieces[-1].stop.get("ft") >= band.bounds[2] - 1e-6
    assert laid.laid.get("ft2") >= polygon.area and 0 < laid.waste_ratio < 1
    same_by_name("underlayment.course-layout", asked)


@pytest.mark.parametrize(("rise", "overhang"), [(3, 6), (6, 12), (12, 12), (18, 30)])
def test_a_membrane_reaches_inside_the_wall(rise: int, overhang: int) -> None:
    reach = {"inside": "24 in", "steep_from": "8:12", "steep_least": "36 in", "source": "common-practice"}
    asked = EaveMembrane.from_dict({"pitch": f"{rise}:12", "overhang": f"{overhang} in", "reach": reach, "width": "36 in", "head_lap": "4 in"})
    band = asked.compute()
    wall = (overhang + 24) * math.hypot(rise, 12) / 12
    least = max(wall, 36) if rise >= 8 else wall
    assert band.least.get("in") == pytest.approx(least, abs=1e-8) and band.steep == (rise >= 8 and wall < 36)
    assert band.courses == 1 + max(0, math.ceil((least - 36) / 32)) == len(band.marks)
    assert band.covers == band.marks[-1] == Length(f"{36 + 32 * (band.courses - 1)} in")
    same_by_name("underlayment.eave-membrane", asked)


def test_a_membrane_lies_under_a_valley() -> None:
    asked = ValleyMembrane.from_dict({"line": "100 ft", "pan": "30 in", "roll": ROLL, "end_lap": "1 ft"})
    strip = asked.compute()
    # 72 ft, then 71 more: two pieces, with one lap; 3 in on each side is narrow.
    assert (strip.pieces, strip.length, strip.beyond) == (2, Length("101 ft"), Length("3 in"))
    assert [caution.name for caution in strip.cautions] == ["valley-membrane-narrow"]
    same_by_name("underlayment.valley-membrane", asked)


def test_a_packet_has_them_all() -> None:
    eave = {"roll": ROLL, "overhang": "12 in", "head_lap": "4 in", "end_lap": "6 in"}
    supply = {"roll": ROLL, "eave": eave, "valley": {"roll": ROLL, "end_lap": "6 in"}}
    packet = Job.from_dict(changed(DOCUMENT, "supplies", "underlayment", value=supply)).compute()
    plain = packet.to_dict()
    plan = packet.underlayment
    assert plan is not None and pickle.loads(pickle.dumps(plan.planes[0].field)) == plan.planes[0].field
    assert (plan.field_rolls, plan.eave_rolls, plan.valley_rolls) == tuple(plain["underlayment"][f"{part}_rolls"] for part in ("field", "eave", "valley"))
    assert [plane.plane for plane in plan.planes] == [plane["name"] for plane in DOCUMENT["roof"]["planes"]]
    valleys = [item.name for item in packet.junctions if item.kind == "valley"]
    assert [valley.name for valley in plan.valleys] == valleys and all(valley.strip.pieces >= 1 for valley in plan.valleys)
    assert all(eave.band.covers >= eave.band.least and eave.laid.courses for plane in plan.planes for eave in plane.eaves)
    assert [(m.first, m.second, m.places) for m in packet.metals_met] == [(m["first"], m["second"], m["places"]) for m in plain["metals_met"]]
    assert any(item.sealed for item in packet.junctions) and all(item.water.paths and item.work for item in packet.junctions)
    for item, written in zip(packet.junctions, plain["junctions"], strict=True):
        assert [(seal.side, seal.check.continuous, len(seal.check.breaks)) for seal in item.sealed] == [
            (seal["side"], seal["check"]["continuous"], len(seal["check"]["breaks"])) for seal in written["sealed"]
        ]
        assert [side.flank for side in item.along.sides] == [side["flank"] for side in written["along"]["sides"]]
        assert all((seal.caution is None) == seal.check.continuous for seal in item.sealed)
        assert [(path.face, path.water, path.level, path.check.holds) for path in item.water.paths] == [
            (path["face"], path["water"], path["level"], path["check"]["holds"]) for path in written["water"]["paths"]
        ]
        shelters = [row["shelter"] for row in written["water"]["rows"]]
        assert [row.shelter for row in item.water.rows] == [shelter if isinstance(shelter, str) else next(iter(shelter)) for shelter in shelters]
        assert all((row.under is not None) == (row.shelter == "under") and (row.raised is not None) == (row.shelter == "raised") for row in item.water.rows)
        assert [step.does for step in item.work] == [step["does"] for step in written["work"]]
        # Every line is struck for one step, and what a step needs was given by then.
        assert sorted(n for step in item.work for n in step.lines) == list(range(len(item.section.lines)))
        assert pickle.loads(pickle.dumps(item.work[0])) == item.work[0]
        assert [it.what for it in item.section.adjoining] == [next(iter(it)) for it in written["section"]["adjoining"]]


def test_a_section_has_what_others_build_and_lines_that_turn() -> None:
    (slot,) = [it for it in Ridge.from_dict(sample("vented-ridge")).compute().adjoining if it.what == "vent-slot"]
    assert slot.width is not None and slot.open_ratio is not None and 0 < slot.open_ratio < 1 and slot.gap is None
    asked = sample("valley-with-cleats")
    assert Valley.from_dict(asked).compute().lower_lines == []
    # The published rule: 1 in for each 8 ft (Copper Roofings manual, par. 29 and 32), half of it on each side.
    sides = {side: asked["detail"][side] | {"leg": "16 in"} for side in ("first", "second")}
    widens = {"growth": {"by": "1 in", "over": "8 ft"}, "source": "common-practice"}
    asked |= {"length": "24 ft", "detail": asked["detail"] | sides | {"widens": widens}}
    solved = Valley.from_dict(asked).compute()
    assert [line.name for line in solved.lower_lines] == [line.name for line in solved.lines]
    turned = {(below.from_line - above.from_line).get("in") for above, below in zip(solved.lines, solved.lower_lines, strict=True)}
    assert {round(abs(by), 9) for by in turned} <= {0.0, 1.5} and 1.5 in {round(abs(by), 9) for by in turned}
