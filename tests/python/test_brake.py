"""What the brake needs, against shapely: sections, crossings and swings of random profiles. And the classes of it in Python."""

import copy
import math
import pickle
import random
from typing import Any

import pytest
from seamwright import InputError, job, stock, trim
from seamwright.stock import Slitting
from seamwright.trim import (
    Bend,
    BendOrder,
    BendRule,
    Edge,
    FormingCheck,
    Leg,
    NeutralFactor,
    OrderSearch,
    OrderTrial,
    Profile,
    TrimFigures,
)
from seamwright.units import Length
from shapely import LineString, Polygon  # type: ignore[import-untyped]
from shapely.affinity import rotate, scale, translate  # type: ignore[import-untyped]

FACTOR = 0.4
RULE = BendRule.neutral_axis(NeutralFactor(FACTOR))
BARE = {"clamp_line": "bend-line"}


def profile(thickness: float, legs: list[float], bends: list[tuple[float, str, float]]) -> Profile:
    """Legs to the tangent lines, so that their flat parts are known without any rule."""
    last = len(legs) - 1
    made = [Leg(f"leg {i + 1}", f"{flat} mm", "tangent" if i else "sheet-edge", "tangent" if i < last else "sheet-edge") for i, flat in enumerate(legs)]
    return Profile(f"{thickness} mm", made, [Bend(f"{angle} deg", way, f"{radius} mm") for angle, way, radius in bends], "upper")


def any_parts(dice: random.Random, bends: int, shortest: float = 5) -> tuple[float, list[float], list[tuple[float, str, float]]]:
    thickness = dice.choice([0.5, 0.6, 0.8, 1.5])
    legs = [round(dice.uniform(shortest, 60), 3) for _ in range(bends + 1)]
    turns = [(round(dice.uniform(20, 150), 3), dice.choice(["up", "down"]), round(dice.uniform(0, 4), 3)) for _ in range(bends)]
    return thickness, legs, turns


def section(p: Profile, tolerance: str = "0.002 mm") -> Polygon:
    return Polygon([(x.get("mm"), y.get("mm")) for x, y in p.unfold(RULE).contour(tolerance)])


def test_sections_agree_with_shapely() -> None:
    dice = random.Random(20)
    compared = 0
    for _ in range(150):
        p = profile(*any_parts(dice, dice.randrange(0, 7)))
        drawn = section(p, "0.0005 mm")
        if not drawn.is_valid:
            continue
        compared += 1
        figures = p.unfold(RULE).section
        assert figures.area.get("mm2") == pytest.approx(drawn.area, rel=1e-3)
        # Chords of 0.0005 mm on arcs of some 10 mm in a section of at least 5 mm.
        assert [c.get("mm") for c in figures.centroid] == pytest.approx([drawn.centroid.x, drawn.centroid.y], abs=0.02)
        low_x, low_y, high_x, high_y = drawn.bounds
        assert [figures.width.get("mm"), figures.height.get("mm")] == pytest.approx([high_x - low_x, high_y - low_y], abs=0.0011)
        faces = p.unfold(RULE).faces
        both = drawn.length - 2 * p.thickness.get("mm")
        assert faces.both.get("mm") == pytest.approx(both, rel=1e-4) and faces.both == faces.upper + faces.lower
    assert compared > 75


def test_crossings_agree_with_shapely() -> None:
    dice = random.Random(21)
    crossing = 0
    for _ in range(300):
        p = profile(*any_parts(dice, dice.randrange(1, 9)))
        report = FormingCheck.from_dict({"profile": p, "rule": RULE}).compute()
        drawn = section(p, "0.005 mm")
        assert report.forms == drawn.is_valid == LineString([*drawn.exterior.coords]).is_simple, report.faults
        crossing += not report.forms
    # Neither side of the comparison is empty.
    assert 50 < crossing < 250


def swung(thickness: float, legs: list[float], turns: list[tuple[float, str, float]]) -> tuple[Polygon, Polygon, tuple[float, float]]:
    """Both sides of the last bend of a flat in its own plane: what is held, ending at the tangent line, what is swung, and the axis."""
    angle, way, radius = turns[-1]
    held = section(profile(thickness, legs[:-1], turns[:-1]).reversed())
    free = section(profile(thickness, legs[-1:], []))
    allowance = math.radians(angle) * (radius + FACTOR * thickness)
    height = radius + thickness - allowance / 2 / math.tan(math.radians(angle) / 2)
    assert way == "up"
    return scale(held, xfact=-1, origin=(0, 0)), translate(free, allowance), (allowance / 2, height)


def test_swings_agree_with_shapely() -> None:
    dice = random.Random(22)
    hits = works = 0
    for _ in range(60):
        thickness, legs, turns = any_parts(dice, dice.randrange(2, 5), 15)
        turns = [(angle, "up" if dice.random() < 0.8 else "down", radius) for angle, _, radius in turns]
        turns[-1] = (dice.choice([90.0, 120.0, 135.0]), "up", turns[-1][2])
        legs[-1] *= 2
        held, free, axis = swung(thickness, legs, turns)
        if not held.is_valid:
            continue
        steps = [{"bend": {"body": i}, "gauged": "start", "face_up": "upper" if way == "up" else "lower"} for i, (_, way, _) in enumerate(turns)]
        order = {"profile": profile(thickness, legs, turns), "rule": RULE, "plan": {"brake": BARE, "steps": steps}}
        verdict = OrderTrial.from_dict(order).compute()
        mine = [fault.at.degrees for fault in verdict.faults if fault.bend == len(turns) - 1 and fault.at is not None]
        full = turns[-1][0]

        def overlap(degrees: float, held: Polygon = held, free: Polygon = free, axis: tuple[float, float] = axis) -> float:
            return float(rotate(free, degrees, origin=axis).intersection(held).area)

        if overlap(0) > 1e-6:
            # What was bent before lies across the flat: a step before this one has said so.
            assert any(fault.bend != len(turns) - 1 for fault in verdict.faults)
            continue
        first = next((d for d in range(int(full) + 1) if overlap(d) > 1e-4), None)
        if mine and mine[0] < full - 1:
            hits += 1
            assert overlap(mine[0] - 0.01) < 1e-3 and first is not None and mine[0] - 0.01 <= first <= mine[0] + 2, (mine, first)
        elif not mine:
            works += 1
            assert first is None, first
    assert hits > 5 and works > 10


CHANNEL = Profile(
    "1 mm",
    [Leg("a", "50 mm", "sheet-edge", "outer-corner"), Leg("b", "80 mm", "outer-corner", "outer-corner"), Leg("c", "50 mm", "outer-corner", "outer-tangent")],
    [Bend("90 deg", "up", "1 mm"), Bend("90 deg", "up", "1 mm")],
    "upper",
    end_edge=Edge.open_hem("12 mm", "3 mm", "up"),
)
STEPS: list[dict[str, Any]] = [
    {"bend": "end-hem", "gauged": "start", "face_up": "upper", "to": "100 deg"},
    {"bend": "end-hem", "gauged": "start", "face_up": "upper", "way": "press"},
    {"bend": {"body": 0}, "gauged": "start", "face_up": "upper"},
    {"bend": {"body": 1}, "gauged": "end", "face_up": "upper"},
]
BEAM: dict[str, Any] = {"name": "beam", "points": [{"x": "0 mm", "y": "1 mm"}, {"x": "-30 mm", "y": "60 mm"}, {"x": "-100 mm", "y": "60 mm"}, {"x": "-100 mm", "y": "20 mm"}]}
PLAN = {"brake": {"clamp_line": "sight-line", "up": {"still": [BEAM]}}, "springback": {"factor": 0.97}, "steps": [*STEPS[:3], {**STEPS[3], "gauged": "start"}]}
GIVEN = {"profile": CHANNEL, "rule": RULE}
SHEET = {"alloy": "aluminium-3003", "thickness": "1 mm"}
HOLE = {"label": "slot", "station": "47 mm", "size": "5 mm"}
CHECK = {**GIVEN, "least_leg": "10 mm", "metal": {"alloy": "aluminium-3003", "temper": "h14", "grain": "along"}, "holes": [HOLE], "plan": PLAN}
CALCULATIONS: list[tuple[Any, str, dict[str, Any]]] = [
    (TrimFigures, "trim.trim-figures", {**GIVEN, "sheet": SHEET, "piece": Length("3 m")}),
    (BendOrder, "trim.bend-order", {**GIVEN, "plan": {**PLAN, "brake": BARE, "steps": STEPS}}),
    (OrderTrial, "trim.order-trial", {**GIVEN, "plan": PLAN}),
    (OrderSearch, "trim.order-search", {**GIVEN, "brake": BARE, "hem_begun": "100 deg", "most_nodes": 500}),
    (FormingCheck, "trim.forming-check", CHECK),
    (Slitting, "stock.slitting", {"coil_width": '48"', "edge_trim": '1/4"', "blanks": [{"label": "a", "girth": CHANNEL.girth(RULE), "length": "10 ft", "count": 9}]}),
]


def parts(result: Any) -> list[Any]:
    """A result with every part that is read from it."""
    found = [result]
    for name in dir(type(result)):
        value = getattr(result, name) if not name.startswith("_") else None
        for one in value if isinstance(value, list) else [value]:
            if type(one).__module__ in ("seamwright.trim", "seamwright.stock"):
                found += parts(one)
    return found


@pytest.mark.parametrize(("of", "name", "given"), CALCULATIONS, ids=lambda v: v if isinstance(v, str) else "")
def test_a_class_and_its_name_give_the_same(of: Any, name: str, given: dict[str, Any]) -> None:
    made = of.from_dict(given)
    assert made == of.from_json(made.to_json()) == of.from_dict(made.to_dict()) == pickle.loads(pickle.dumps(made)) == copy.deepcopy(made)
    assert hash(made) == hash(of.from_dict(given)) and made.title in repr(made)
    out, sheet = made.explain()
    assert out == made.compute() and sheet.title == made.title
    written = job.compute(name, given)
    assert job.compute(name, made.to_json()) == written and isinstance(written, dict)
    for part in parts(out):
        assert pickle.loads(pickle.dumps(part)) == part and repr(part).startswith("<") and hash(part) == hash(copy.copy(part))


def test_every_class_of_the_brake_is_among_them() -> None:
    seen = {type(part).__name__ for of, _, given in CALCULATIONS for part in [of.from_dict(given), *parts(of.from_dict(given).compute())]}
    seen |= {"StickPlan", "ScrapReport", "CutPlan"}
    assert {*stock.__all__} <= seen
    assert BRAKE <= seen, BRAKE - seen


# The classes of `seamwright.trim` that stand here and not in the list of its values.
BRAKE = {
    *("BendLines", "BendOrder", "FaceWidths", "Figures", "FormingCheck", "FormingFault", "FormingReport", "GaugeStep", "HoleFinding", "OrderFound", "OrderSearch"),
    *("OrderSheet", "OrderTrial", "OrderVerdict", "PieceFigures", "RadiusFinding", "SectionFigures", "StepFault", "TrimFigures"),
}


def test_a_gauge_list() -> None:
    sheet = BendOrder.from_dict(CALCULATIONS[1][2]).compute()
    assert [step.bend for step in sheet.steps] == ["end-hem", "end-hem", 0, 1]
    assert [step.way for step in sheet.steps] == ["swing", "press", "swing", "swing"] and (sheet.turns, sheet.flips) == (1, 0)
    assert sheet.steps[0].folded_to.degrees == pytest.approx(100 / 0.97) and sheet.steps[1].folded_to.degrees == 180
    flat = CHANNEL.unfold(RULE)
    # With the hem closed, its fold stands at the gauge.
    fold, last = flat.bends[2], flat.bends[1]
    assert abs((sheet.steps[3].gauge - (fold.start - last.line + Length("2.5 mm"))).pm) < 10 and sheet.steps[3].stop == "the fold of the end hem"
    lines = flat.lines[0]
    assert sheet.steps[2].from_edge == lines.from_start[1] == flat.girth - lines.from_end[1]


def test_an_order_that_is_in_the_way_is_refused_and_judged() -> None:
    verdict = OrderTrial.from_dict(CALCULATIONS[2][2]).compute()
    assert not verdict.works and {fault.still for fault in verdict.faults} == {"beam"}
    with pytest.raises(InputError) as refused:
        BendOrder.from_dict(CALCULATIONS[2][2]).compute()
    assert refused.value.kind == "impossible" and refused.value.path.startswith("plan.steps[") and "hits" in refused.value.message
    report = FormingCheck.from_dict(CHECK).compute()
    assert {"step", "leg-too-short", "hole-near-bend"} <= {fault.name for fault in report.faults}
    with pytest.raises(InputError, match="the brake needs 10 mm"):
        report.require()
    assert report.radii[0].least == Length.ZERO and report.radii[2].least is None and report.radii[2].source is None


def test_a_search_gives_a_plan() -> None:
    found = OrderSearch.from_dict(CALCULATIONS[3][2]).compute()
    assert found.outcome == "works" and found.nodes <= 500
    sheet = BendOrder.from_dict({**GIVEN, "plan": {"brake": BARE, "steps": found.steps}}).compute()
    assert sheet.turns + sheet.flips == found.handlings
    assert OrderSearch.from_dict({**CALCULATIONS[3][2], "most_nodes": 1}).compute().outcome == "effort-spent"


@pytest.mark.parametrize(
    ("changed", "kind", "path"),
    [
        ({"plan": {"brake": BARE, "steps": STEPS[:3]}}, "missing", "plan.steps"),
        ({"plan": {"brake": BARE, "steps": [*STEPS, STEPS[3]]}}, "conflict", "plan.steps[4].bend"),
        ({"plan": {"brake": BARE, "steps": [{**STEPS[0], "to": "200 deg"}]}}, "out of range", "plan.steps[0].to"),
        ({"plan": {"brake": BARE, "steps": [{**STEPS[2], "face_up": "lower"}]}}, "conflict", "plan.steps[0].face_up"),
        ({"plan": {"brake": {"clamp_line": "nose"}, "steps": []}}, "unknown", "plan.brake.clamp_line"),
        ({"plan": {"brake": BARE, "springback": {"factor": 0}, "steps": STEPS}}, "out of range", "plan.springback.factor"),
        ({"plan": {"brake": {**BARE, "up": {"still": [{"name": "x", "points": BEAM["points"][:2]}]}}, "steps": STEPS}}, "geometry", "plan.brake.up.still[0].points"),
    ],
)
def test_bad_plans_are_refused_with_their_place(changed: dict[str, Any], kind: str, path: str) -> None:
    with pytest.raises(InputError) as refused:
        BendOrder.from_dict({**GIVEN, **changed}).compute()
    assert (refused.value.kind, refused.value.path) == (kind, path)


def test_trim_exports_what_stands_here() -> None:
    assert BRAKE <= set(trim.__all__)
