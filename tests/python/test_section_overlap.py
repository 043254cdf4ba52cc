"""Sections rebuilt in shapely from what a junction gives: metal lies on what it should, and no part runs into another.

The sheets are strips on the corners of the face that lies on the supports; shapely knows nothing of junctions.
"""

import json
import math
import random
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import shapely  # type: ignore[import-untyped]
from demo import detail
from hypothesis import assume, given
from hypothesis import strategies as st
from seamwright import job
from seamwright.error import InputError
from seamwright.junction import (
    Coping,
    CurbBack,
    Eave,
    ExpansionAcross,
    ExpansionAlong,
    Headwall,
    HighSide,
    Hip,
    PitchTransition,
    Rake,
    Ridge,
    Sidewall,
    Solved,
    Step,
    Valley,
)
from seamwright.units import Length
from shapely.affinity import scale, translate  # type: ignore[import-untyped]

# What sheet gives: 1/32 in, common practice, no published source.
GIVES = 25.4 / 32
TOUCH = 1e-6
# The demo's trims: where a hem lies between two sheets, they are this far apart.
SHEET = 25.4 * 0.0276
# What must stay within or beyond another length is drawn on its own side of what it is: tape within a cleat's foot, a fold under its tongue.
SPREADS = {
    "set_back": (0.0, 1.0),
    "flange": (1.1, 1.5),
    "clears": (1.3, 1.7),
    "clear_width": (1.0, 1.1),
    "face": (1.0, 1.1),
    "tape_width": (0.95, 1.0),
    "fold": (0.97, 1.0),
    "tongue": (1.0, 1.08),
}
FIXED = ("thickness", "clearance", "rule", "upstand", "under_panels", "panel_margin", "head_lap", "above_pan", "cricket", "minimum")


def spread(value: Any, name: str, draw: random.Random) -> Any:
    """A detail with every length of it drawn around what it is."""
    if isinstance(value, dict):
        return {n: v if n in FIXED or n.startswith("least") else spread(v, n, draw) for n, v in value.items()}
    if isinstance(value, str) and value.endswith(('"', " in", " mm")):
        low, high = SPREADS.get(name, (0.97, 1.08))
        return f"{Length(value).get('mm') * draw.uniform(low, high):.6f} mm"
    return value


def levels(draw: random.Random) -> dict[str, str]:
    # Without stand-off and with layers as the demo has them, its details fit under and over them.
    layers = {"underlayment": (0.5, 2.0), "pan": (0.4, 0.8), "seam_height": (42.0, 48.0), "closure_metal": (0.4, 0.8), "tape": (0.8, 2.0)}
    return {name: f"{draw.uniform(*between):.6f} mm" for name, between in layers.items()}


def pitch(draw: random.Random, low: float = 8.0, high: float = 45.0) -> tuple[float, str]:
    degrees = round(draw.uniform(low, high), 4)
    return degrees, f"{degrees} deg"


Made = tuple[Solved, float, float | None, dict[str, str]]


def high_edge() -> dict[str, Any]:
    return {"end": detail("ridge")["first"], "sheet": detail("ridge")["sheet"], "face": detail("rake")["face"]}


def made(kind: str, draw: random.Random) -> Made:
    """The junction, and how steeply the first and the second plane rise toward +x; no second one where there is none."""
    asked = spread(high_edge() if kind == "high-edge" else detail(kind), kind, draw)
    layers = levels(draw)
    (a, first), (b, second) = pitch(draw), pitch(draw)
    roof = {"pitch": first, "levels": layers}
    other = {"pitch": second, "levels": layers}
    if kind == "eave":
        asked.pop("gutter", None)
        return Eave.from_dict({"roof": roof, "detail": asked}).compute(), -a, None, layers
    if kind == "high-edge":
        return HighSide.from_dict({"roof": roof, "detail": asked}).compute(), a, None, layers
    if kind in ("headwall", "curb-front"):
        return Headwall.from_dict({"roof": roof, "detail": asked}).compute(), a, None, layers
    if kind == "curb-back":
        return CurbBack.from_dict({"roof": roof, "width": "500 mm", "detail": asked}).compute(), -a, None, layers
    if kind == "ridge":
        return Ridge.from_dict({"first": roof, "second": other, "detail": asked}).compute(), a, -b, layers
    if kind == "steep-to-shallow":
        (low, lower), (high, upper) = sorted([(a, first), (b, second)])
        document = {"lower": {"pitch": lower, "levels": layers}, "upper": {"pitch": upper, "levels": layers}, "detail": asked}
        return PitchTransition.from_dict(document).compute(), low, high, layers
    if kind in ("rake", "sidewall", "curb-side"):
        seam = layers["seam_height"]
        if kind == "rake":
            asked |= {"turn_up": seam}
            return Rake.from_dict({"levels": layers, "edge": "ripped", "end_panel": "300 mm", "detail": asked}).compute(), 0.0, None, layers
        asked |= {"edge": {"turned-up": {"height": seam}}}
        return Sidewall.from_dict({"roof": roof, "first_seam_from_wall": "300 mm", "detail": asked}).compute(), 0.0, None, layers
    (a, first), (b, second) = pitch(draw, 22.0, 45.0), pitch(draw, 22.0, 45.0)
    corner = {"first": first, "second": second, "plan": "90 deg"}
    cls: Any = Hip if kind == "hip" else Valley
    solved = cls.from_dict({"corner": corner, "first": layers, "second": layers, "detail": asked}).compute()
    # Square to the line of two planes in a square corner: tan C = sin(slope of the line) / tan(plan angle of it to the eave).
    p, q = math.tan(math.radians(a)), math.tan(math.radians(b))
    slope = math.atan(p * q / math.hypot(p, q))
    backing = [math.degrees(math.atan(math.sin(slope) * ratio)) for ratio in (p / q, q / p)]
    return solved, (backing[0] if kind == "hip" else -backing[0]), (-backing[1] if kind == "hip" else backing[1]), layers


def corners(trim: Any) -> list[tuple[float, float]]:
    return [(c.x.get("mm"), c.z.get("mm")) for c in trim.corners]


def strip(trim: Any) -> Any:
    """The sheet with sharp bends, to the left of the face that lies on the supports."""
    thickness = trim.profile.thickness.get("mm")
    return shapely.LineString(corners(trim)).buffer(thickness, single_sided=True, join_style="mitre", mitre_limit=20)


def middle(trim: Any) -> Any:
    thickness = trim.profile.thickness.get("mm")
    return shapely.offset_curve(shapely.LineString(corners(trim)), thickness / 2, join_style="mitre", mitre_limit=20)


def half_plane(rise: float, onto: float, deep: float = 15.0) -> Any:
    """What lies under a deck on one side of the line, cut plumb there."""
    sin, cos = math.sin(math.radians(rise)), math.cos(math.radians(rise))
    far = (onto * 900 * cos, onto * 900 * sin)
    back = onto * deep * 3
    return shapely.Polygon([(0, 0), far, (far[0] + deep * sin, far[1] - deep * cos), (back * cos + deep * sin, back * sin - deep * cos)])


KINDS = ["eave", "rake", "ridge", "hip", "valley", "high-edge", "headwall", "sidewall", "steep-to-shallow", "curb-front", "curb-side", "curb-back"]
GUIDE = Path(__file__).parents[2] / "docs" / "junctions" / "inputs"


def length(text: str) -> float:
    return float(Length(text).get("mm"))


def asked(name: str, draw: random.Random) -> Any:
    """The guide's document of that name, with every length of its detail a little greater than it is."""

    def more(value: Any, name: str) -> Any:
        if isinstance(value, dict):
            return {n: v if n in FIXED or n.startswith("least") else more(v, n) for n, v in value.items()}
        return f"{length(value) * draw.uniform(1.0, 1.06):.6f} mm" if isinstance(value, str) and value.endswith(" mm") else value

    document = json.loads((GUIDE / f"{name}.json").read_text())
    return document | {"detail": more(document["detail"], "detail")}


# The junction, what it stands on, and what was asked for.
Stands = tuple[Solved, list[Any], Any]


def coping(draw: random.Random) -> Stands:
    document = asked("coping-on-cleats", draw)
    thick = draw.uniform(120.0, 400.0)
    fall, text = pitch(draw, 0.5, 12.0)
    document |= {"thickness": f"{thick:.6f} mm"}
    document["detail"] |= {"fall": text}
    for side in ("roof_side", "outside"):
        document["detail"][side]["behind"] = f"{draw.uniform(0.0, 3.0):.6f} mm"
    thick = length(document["thickness"])
    low = -thick * math.tan(math.radians(fall))
    wall = shapely.Polygon([(0, 0), (-thick, low), (-thick, -900), (0, -900)])
    return Coping.from_dict(document).compute(), [wall], document


def step(draw: random.Random) -> Stands:
    document = asked("step", draw)
    (a, lower), (b, upper) = pitch(draw, 5.0, 30.0), pitch(draw, 5.0, 35.0)
    document["lower"] = {"pitch": lower, "levels": levels(draw)}
    document["upper"] = {"pitch": upper, "levels": levels(draw)}
    document["detail"]["lower"]["below_edge"] = f"{draw.uniform(12.0, 24.0):.6f} mm"
    document["riser"] = f"{draw.uniform(310.0, 500.0):.6f} mm"
    riser = length(document["riser"])
    decks = [half_plane(a, -1.0), shapely.box(0, -60, 45, riser), translate(half_plane(b, 1.0), 0, riser)]
    return Step.from_dict(document).compute(), decks, document


def expansion_across(draw: random.Random) -> Stands:
    document = asked("expansion-joint-across-the-panels", draw)
    a, text = pitch(draw, 5.0, 40.0)
    layers = levels(draw)
    document["roof"] = {"pitch": text, "levels": layers}
    # Two planes of one slope: the packing is as high as the flange on the lower seams lies.
    packing = sum(mm(layers, name) for name in layers)
    document["detail"]["flashing"]["packing"] = f"{packing:.9f} mm"
    sin, cos = math.sin(math.radians(a)), math.cos(math.radians(a))
    return ExpansionAcross.from_dict(document).compute(), [half_plane(a, -1.0), translate(half_plane(a, 1.0), -packing * sin, packing * cos)], document


def expansion_along(draw: random.Random) -> Stands:
    document = asked("expansion-joint-along-the-panels", draw)
    for side in ("first", "second"):
        document[side]["levels"] = levels(draw)
    d = document["detail"]
    inner, height = length(d["gap"]) / 2, length(d["curb_height"])
    outer = inner + length(d["curb_width"])
    one = shapely.union(shapely.box(inner, -40, outer, height), shapely.box(inner, -40, 900, 0))
    return ExpansionAlong.from_dict(document).compute(), [one, scale(one, -1, 1, origin=(0, 0))], document


# Those that stand on more than two decks that meet.
STANDING: dict[str, Callable[[random.Random], Stands]] = {
    "coping": coping,
    "step": step,
    "expansion-across": expansion_across,
    "expansion-along": expansion_along,
}


def standing(kind: str, draw: random.Random) -> Stands:
    """The junction, and all that it stands on."""
    if kind in STANDING:
        return STANDING[kind](draw)
    solved, first, second, _ = made(kind, draw)
    return solved, [half_plane(first, -1.0)] + ([] if second is None else [half_plane(second, 1.0)]), {}


@pytest.mark.parametrize("kind", [*KINDS, *STANDING])
def test_no_sheet_runs_into_another_or_into_the_deck(kind: str) -> None:
    built = 0
    for seed in range(60):
        try:
            solved, decks, _ = standing(kind, random.Random(seed))
        except InputError:
            continue
        built += 1
        for trim in solved.trims:
            for deck in decks:
                assert strip(trim).intersection(deck.buffer(-GIVES)).area < TOUCH, f"{kind} {seed}: {trim.name} in the deck"
        for i, one in enumerate(solved.trims):
            for other in solved.trims[i + 1 :]:
                names = f"{kind} {seed}: {one.name} and {other.name}"
                assert not middle(one).crosses(middle(other)), f"{names} cross"
                assert strip(one).intersection(strip(other)).buffer(-GIVES / 2).is_empty, f"{names} lie in each other"
    assert built >= 15, f"{kind}: {built} built"


def lie_on(one: str, other: str, apart: Callable[[dict[str, str]], float]) -> Callable[[Solved, dict[str, str], int], None]:
    def check(solved: Solved, layers: dict[str, str], seed: int) -> None:
        a, b = solved.trim(one), solved.trim(other)
        assert a is not None and b is not None
        gap = strip(a).distance(strip(b))
        assert abs(gap - apart(layers)) < TOUCH, f"{seed}: {one} lies {gap} mm off {other}"

    return check


def mm(layers: dict[str, str], name: str) -> float:
    return float(Length(layers[name]).get("mm"))


@pytest.mark.parametrize(
    ("kind", "check"),
    [
        ("eave", lie_on("hook strip", "eave trim", lambda _: 0.0)),
        ("rake", lie_on("rake Z", "rake trim", lambda layers: mm(layers, "tape"))),
        ("sidewall", lie_on("Z", "sidewall flashing", lambda _: SHEET)),
        ("headwall", lie_on("headwall flashing", "counterflashing", lambda _: SHEET)),
    ],
    ids=lambda v: v if isinstance(v, str) else "",
)
def test_what_lies_on_what(kind: str, check: Callable[[Solved, dict[str, str], int], None]) -> None:
    seen = 0
    for seed in range(40):
        try:
            solved, _, _, layers = made(kind, random.Random(seed))
        except InputError:
            continue
        check(solved, layers, seed)
        seen += 1
    assert seen >= 10


def named(solved: Solved, name: str) -> Any:
    trim = solved.trim(name)
    assert trim is not None, [t.name for t in solved.trims]
    return trim


def apart(one: Any, other: Any, by: float, what: str) -> None:
    gap = one.distance(other)
    assert abs(gap - by) < TOUCH, f"{what}: {gap} mm apart, and not {by}"


def all_built(kind: str) -> list[Stands]:
    out = []
    for seed in range(60):
        try:
            out.append(standing(kind, random.Random(seed)))
        except InputError:
            continue
    assert len(out) >= 15, f"{kind}: {len(out)} built"
    return out


def test_a_coping_lies_on_its_bed_and_on_its_cleats() -> None:
    for solved, (wall,), document in all_built("coping"):
        chosen = document["detail"]
        cap, top = named(solved, "coping"), list(wall.exterior.coords)[:2]
        # The wall's top as a line, drawn out to both sides: the coping's own lies along it, over the bed.
        (x0, z0), (x1, z1) = top
        line = shapely.LineString([(2 * x0 - x1, 2 * z0 - z1), (2 * x1 - x0, 2 * z1 - z0)])
        for p in corners(cap)[2:4]:
            apart(shapely.Point(p), line, length(chosen["bed"]), "the bed")
        for name, side in (("continuous cleat, roof side", "roof_side"), ("continuous cleat, outside", "outside")):
            cleat = strip(named(solved, name))
            apart(cleat, strip(cap), 0.0, f"{name} and the coping")
            apart(cleat, wall, length(chosen[side]["behind"]), f"{name} and the wall")


def test_a_steps_leg_stands_between_its_riser_and_the_upper_trims_cleat() -> None:
    for solved, (_, riser, _), document in all_built("step"):
        leg = strip(named(solved, "lower flashing"))
        apart(leg, riser, length(document["detail"]["lower"]["stands_out"]), "the leg and the riser")
        apart(strip(named(solved, "hook strip")), strip(named(solved, "eave trim")), 0.0, "the strip and the trim")
        apart(strip(named(solved, "continuous cleat")), leg, 0.0, "the cleat and the leg")


def test_a_joints_flashing_lies_on_its_packing_and_its_cleat_on_its_tape() -> None:
    for solved, (_, packing), document in all_built("expansion-across"):
        trim, cleat = (strip(named(solved, name)) for name in ("transition trim", "offset cleat"))
        apart(trim, packing, 0.0, "the flashing and the packing")
        apart(cleat, trim, length(document["detail"]["flashing"]["cleat"]["tape"]), "the cleat and the flashing")


def test_a_joints_cleats_lie_on_their_curbs_and_its_cap_on_both() -> None:
    for solved, curbs, _ in all_built("expansion-along"):
        cap = strip(named(solved, "joint cap"))
        right, left = curbs
        for name, curb in (("joint cleat, fixed side", left), ("joint cleat, sliding side", right)):
            cleat = strip(named(solved, name))
            apart(cleat, curb, 0.0, f"{name} and its curb")
            apart(cleat, cap, 0.0, f"{name} and the cap")


def test_closures_stand_between_the_panels_and_the_flange() -> None:
    seen = 0
    for seed in range(60):
        try:
            solved, first, _, layers = made("ridge", random.Random(seed))
        except InputError:
            continue
        row = next(a for a in solved.along if a.what == "closures" and a.side == "first")
        assert row.web is not None
        sin, cos = math.sin(math.radians(first)), math.cos(math.radians(first))
        pan = mm(layers, "underlayment") + mm(layers, "pan")
        top = pan + mm(layers, "seam_height")
        at = row.from_line.get("mm")
        web = shapely.LineString([(at * cos - h * sin, at * sin + h * cos) for h in (top - row.web.get("mm"), top)])
        cap = solved.trim("ridge cap")
        assert cap is not None
        # From the seam tops to the flange lie the closures' metal and the tape.
        assert abs(web.distance(strip(cap)) - mm(layers, "closure_metal") - mm(layers, "tape")) < TOUCH, seed
        seen += 1
    assert seen >= 20


point = st.tuples(st.integers(-200, 200), st.integers(-200, 200)).map(lambda p: (p[0] / 10, p[1] / 10))


def convex(points: list[tuple[float, float]]) -> Any:
    hull = shapely.convex_hull(shapely.MultiPoint(points))
    assume(isinstance(hull, shapely.Polygon) and hull.area > 1.0)
    return hull


def part(name: str, hull: Any) -> dict[str, Any]:
    ring = list(hull.exterior.coords)[:-1]
    return {"name": name, "pieces": [[{"x": f"{x} mm", "z": f"{z} mm"} for x, z in ring]]}


@given(st.lists(point, min_size=4, max_size=8), st.lists(point, min_size=4, max_size=8))
def test_the_depth_is_the_shortest_way_out(ones: list[tuple[float, float]], others: list[tuple[float, float]]) -> None:
    one, other = convex(ones), convex(others)
    met = job.compute("junction.section-fit", {"parts": [part("one", one), part("other", other)]})
    if one.distance(other) > TOUCH * 2:
        assert met == []
        return
    (meeting,) = met
    depth = Length(meeting["depth"]).get("mm")
    assert (meeting["touch"] == "clash") == (depth > GIVES)
    # However it is moved by less, they still overlap; along the normal of some edge that much and a little more frees them.
    for k in range(24):
        way = (math.cos(k * math.pi / 12), math.sin(k * math.pi / 12))
        moved = translate(other, way[0] * depth * 0.999, way[1] * depth * 0.999)
        assert one.distance(moved) <= TOUCH
    normals = []
    for hull in (one, other):
        ring = list(hull.exterior.coords)
        for (x0, y0), (x1, y1) in zip(ring, ring[1:], strict=False):
            length = math.hypot(x1 - x0, y1 - y0)
            normals += [((y1 - y0) / length * s, (x0 - x1) / length * s) for s in (1, -1)]
    by = depth + 1e-4
    assert any(one.distance(translate(other, n[0] * by, n[1] * by)) > 0 for n in normals)

