"""The classes of seamwright.roof as Python sees them. The geometry itself is tested in Rust; the figures here have closed forms."""

import copy
import json
import math
import pickle
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from seamwright import InputError, job, roof
from seamwright.pitch import Pitch
from seamwright.roof import Bounds, Cricket, JoinedPlanes, MeasuredPlane, Outline, Point, Roof, RoofInput, SketchedRoof, Snapping, Vertex
from seamwright.units import Angle, Length

Document = dict[str, Any]


def xyz(*figures: int) -> Document:
    return dict(zip("xyz", (f"{f} ft" for f in figures), strict=False))


def in_space(name: str, *corners: tuple[int, int, int]) -> Document:
    return {"name": name, "shape": {"space": {"outer": [xyz(*c) for c in corners]}}}


# A house of 40 ft by 40 ft at 6:12 with a ridge across, and a shed at 3:12 below its southern eave that runs into a wall at its west.
SOUTH = in_space("south", (0, 0, 10), (40, 0, 10), (40, 20, 20), (0, 20, 20))
NORTH = in_space("north", (40, 40, 10), (0, 40, 10), (0, 20, 20), (40, 20, 20))
SHED: Document = {
    "name": "shed",
    "shape": {
        "plan": {
            "outer": [xyz(0, -16), xyz(40, -16), xyz(40, 0), xyz(0, 0)],
            "holes": [{"name": "curb", "ring": [xyz(10, -10), xyz(14, -10), xyz(14, -6), xyz(10, -6)]}],
            "pitch": Pitch("3:12"),
            "down_slope": Angle("270 deg"),
            "anchor": {"x": Length("0 ft"), "y": Length("0 ft"), "z": Length("10 ft")},
        }
    },
}
DOCUMENT: Document = {
    "planes": [SOUTH, NORTH, SHED],
    "walls": [{"name": "tower", "from": xyz(0, -20), "to": xyz(0, 0)}],
    "minimum_slope": Pitch("4:12"),
}
HOUSE = Roof.from_dict(DOCUMENT)
# Two slopes at 12:12 about a square corner.
HIP = Roof.from_dict({"planes": [in_space("south", (0, 0, 0), (20, 0, 0), (10, 10, 10)), in_space("west", (0, 20, 0), (0, 0, 0), (10, 10, 10))]})

# Its ring is given clockwise, and turned.
TURNED = Outline([("0 ft", "0 ft"), ("0 ft", "3 ft"), ("4 ft", "0 ft")])


def in_plan(name: str, *corners: tuple[int, int]) -> Document:
    return {"name": name, "outer": [xyz(*c) for c in corners]}


MEASURED = MeasuredPlane.from_dict(
    {
        "name": "south",
        "corners": list("ABCD"),
        "lengths": [
            {"from": a, "to": b, "length": length}
            for a, b, length in [("A", "B", "40'"), ("B", "C", "24'"), ("C", "D", "40'-1\""), ("D", "A", "24'"), ("A", "C", "46'-7 3/4\"")]
        ],
    }
)
SHAPE = MEASURED.compute()
JOINED = JoinedPlanes.from_dict(
    {
        "planes": [in_plan("south", (0, 0), (40, 0), (40, 20), (0, 20)) | {"pitch": "9:12"}, in_plan("north", (0, 0), (40, 0), (40, 20), (0, 20)) | {"pitch": "8:12"}],
        "joints": [{"first": {"plane": "south", "edge": 2}, "second": {"plane": "north", "edge": 2}}],
        "anchor": {"plane": "south", "corner": 0, "at": xyz(0, 0, 9), "down_slope": "270 deg"},
    }
)
SKETCHED = SketchedRoof.from_dict({"planes": [in_plan("south", (0, 0), (40, 0), (30, 10), (10, 10)), in_plan("east", (40, 0), (40, 20), (30, 10))]})
OPENING = {"name": "curb", "ring": [xyz(10, 5), xyz(14, 5), xyz(14, 9), xyz(10, 9)]}
OPENED = SketchedRoof.from_dict({"planes": [in_plan("south", (0, 0), (40, 0), (40, 20), (0, 20)) | {"holes": [OPENING]}]}).compute()
# The second face meets the first along part of an edge, nearly; the third is in one plane with the first; one vertex stands twice.
SNAPPING = Snapping.from_dict(
    {
        "roof": {
            "planes": [
                in_space("a", (0, 0, 0), (20, 0, 0), (20, 10, 5), (20, 10, 5), (0, 10, 5)),
                {"name": "b", "shape": {"space": {"outer": [xyz(12, 20, 0), xyz(4, 20, 0), xyz(4, 10, 5), {"x": "12 ft", "y": "10 ft", "z": "5.002 ft"}]}}},
                in_space("c", (20, 0, 0), (40, 0, 0), (40, 10, 5), (20, 10, 5)),
            ]
        },
        "merge_coplanar": True,
    }
)
SNAPPED = SNAPPING.compute()
# A cricket at the roof's own pitch behind the shed's curb, and one twice as steep by itself.
CRICKETED = Roof.from_dict({"planes": [SHED], "crickets": [{"plane": "shed", "hole": "curb", "shape": {"pitch": "3:12"}}]})
CRICKET = Cricket.from_dict({"roof": "3:12", "width": "4 ft", "shape": {"pitch": "6:12"}})
VALUES: list[Any] = [
    *[Point("1 ft", "2 ft"), Point("1 ft", "3 ft"), Vertex("1 ft", "2 ft", "3 ft"), Vertex("1 ft", "2 ft", "4 ft")],
    *[Bounds(Point("0 ft", "0 ft"), ("4 ft", "3 ft")), Bounds(("0 ft", "0 ft"), ("4 ft", "4 ft"))],
    *[TURNED, HOUSE.plane("shed").outline],
    *TURNED.edges,
    *[HOUSE.input, HIP.input, HOUSE, HIP],
    *HOUSE.planes,
    *HOUSE.lines,
    *[HOUSE.line("ridge 1").side, HOUSE.line("ridge 1").other],
    *HOUSE.walls,
    *HOUSE.drains,
    *[MEASURED, SHAPE, *SHAPE.corners, *SHAPE.readings, *SHAPE.out_of_true],
    *[JOINED, JOINED.compute(), *JOINED.compute().joints, *JOINED.compute().planes],
    *[SKETCHED, SKETCHED.compute(), *SKETCHED.compute().planes, *SKETCHED.compute().planes[0].lines],
    *OPENED.planes[0].openings,
    *[*CRICKETED.crickets, CRICKETED.crickets[0].figures, CRICKET, CRICKET.compute()],
    *[SNAPPING, SNAPPED, *SNAPPED.moves[:2], *SNAPPED.splits, *SNAPPED.dropped, *SNAPPED.flattened, *SNAPPED.merged],
]


def kind_of(value: Any) -> str:
    return type(value).__name__


def test_every_class_stands_in_the_list() -> None:
    assert {kind_of(v) for v in VALUES} == set(roof.__all__)


def test_a_cricket_at_the_roof_s_pitch_is_as_long_as_half_its_curb() -> None:
    (placed,) = CRICKETED.crickets
    # Where both slopes are 3:12 the valleys run at 45 degrees in plan: 2 ft out from the middle, 2 ft up.
    assert (placed.hole, placed.figures.ridge, placed.figures.height) == ("curb", Length("2 ft"), Length("6 in"))
    assert placed.figures.valley_plan.degrees == pytest.approx(45, abs=1e-9)
    assert [CRICKETED.planes[number].name for number in (placed.left, placed.right)] == ["shed curb cricket left", "shed curb cricket right"]
    assert placed.figures == Cricket.from_dict({"roof": "3:12", "width": "4 ft", "shape": {"pitch": "3:12"}}).compute()


def test_values_are_told_apart() -> None:
    for i, a in enumerate(VALUES):
        for j, b in enumerate(VALUES):
            assert (a == b) is (i == j), (a, b)
    assert len(set(VALUES)) == len(VALUES)


@pytest.mark.parametrize("value", VALUES, ids=kind_of)
def test_value_semantics(value: Any) -> None:
    again = [pickle.loads(pickle.dumps(value, protocol)) for protocol in range(pickle.HIGHEST_PROTOCOL + 1)]
    for other in (*again, copy.copy(value), copy.deepcopy(value)):
        assert type(other) is type(value) and other == value and hash(other) == hash(value)
        assert repr(other) == repr(value) and str(other) == str(value)
    assert value != "text" and value is not None
    with pytest.raises(AttributeError):
        value.anything = 1
    with pytest.raises(TypeError):
        type("Derived", (type(value),), {})
    if not repr(value).startswith("<"):
        assert eval(repr(value), vars(roof)) == value


def test_parts_pickle_their_roof_once() -> None:
    alone, all_of_them = len(pickle.dumps(HOUSE.lines[0])), len(pickle.dumps(HOUSE.lines))
    assert all_of_them < alone + 100 * len(HOUSE.lines)


def test_json_and_dict_are_one_form() -> None:
    text = HOUSE.input.to_json()
    assert json.loads(text) == HOUSE.input.to_dict()
    assert RoofInput.from_json(text) == HOUSE.input == RoofInput.from_dict(HOUSE.input.to_dict())
    assert Roof.from_json(text) == HOUSE == HOUSE.input.compute() == HOUSE.input.explain()[0]
    assert HOUSE.input.to_dict()["minimum_slope"] == "4:12"
    assert [s.what for s in HOUSE.input.explain()[1].steps()][0] == "area of plane 0, south"


def test_a_roof_by_its_name_gives_the_same() -> None:
    named = job.compute("roof.roof-input", DOCUMENT)
    assert [(line["name"], line["kind"], line["length"]) for line in named["lines"]] == [(x.name, x.kind, str(x.length)) for x in HOUSE.lines]
    assert [plane["outline"]["outer"][2] for plane in named["planes"]] == [
        {"x": str(p.outline.outer[2].x), "y": str(p.outline.outer[2].y)} for p in HOUSE.planes
    ]


def test_planes() -> None:
    south, _, shed = HOUSE.planes
    assert south == HOUSE.plane("south") and south.name == "south" and shed.hole_names == ["curb"]
    assert shed.pitch == Pitch("3:12") and shed.down_slope == Angle("270 deg") and shed.off_plane == Length.ZERO
    assert south.slope.degrees == pytest.approx(math.degrees(math.atan(0.5)), rel=1e-14)
    assert south.normal == pytest.approx((0, -1 / math.sqrt(5), 2 / math.sqrt(5)), abs=1e-15)
    assert south.across == pytest.approx((1, 0, 0)) and south.up == pytest.approx((0, 2 / math.sqrt(5), 1 / math.sqrt(5)))
    assert south.plan_area.get("ft2") == pytest.approx(800, rel=1e-14)
    assert south.area.get("ft2") == pytest.approx(400 * math.sqrt(5), rel=1e-14)
    assert south.outline.area.get("ft2") == pytest.approx(400 * math.sqrt(5), rel=1e-12)
    # In the plane: x across, y up the slope.
    rise = south.outline.bounds.high.y
    assert rise.get("ft") == pytest.approx(10 * math.sqrt(5), rel=1e-12) and south.outline.bounds.low == Point("0 ft", "0 ft")
    assert south.outline.outer == [Point("0 ft", "0 ft"), Point("40 ft", "0 ft"), Point("40 ft", rise), Point("0 ft", rise)]
    assert south.origin() == Vertex("0 ft", "0 ft", "10 ft") == south.to_space(("0 ft", "0 ft"))
    assert south.to_plane(Vertex("40 ft", "20 ft", "20 ft")) == Point("40 ft", rise)
    assert south.at_plan(("7 ft", "10 ft")) == Vertex("7 ft", "10 ft", "15 ft")
    assert south.rings == [[Vertex(*(f"{f} ft" for f in c)) for c in [(0, 0, 10), (40, 0, 10), (40, 20, 20), (0, 20, 20)]]]
    assert south.plan.outer[2] == Point("40 ft", "20 ft") and len(shed.outline.holes) == 1
    assert HOUSE.area.get("ft2") == pytest.approx(sum(p.area.get("ft2") for p in HOUSE.planes), rel=1e-14)


def test_lines() -> None:
    assert [line.name for line in HOUSE.lines_of("ridge")] == ["ridge 1"]
    ridge = HOUSE.line("ridge 1")
    assert ridge.kind == "ridge" and ridge.length == ridge.plan_length == Length("40 ft") and ridge.slope == Angle.ZERO
    assert {ridge.start, ridge.end} == {Vertex("0 ft", "20 ft", "20 ft"), Vertex("40 ft", "20 ft", "20 ft")}
    fold = 2 * math.degrees(math.atan(0.5))
    assert ridge.dihedral is not None and ridge.dihedral.degrees == pytest.approx(180 - fold, rel=1e-14)
    assert ridge.bend is not None and ridge.bend.degrees == pytest.approx(fold, rel=1e-14)
    assert ridge.other is not None and ridge.sides == [ridge.side, ridge.other] and ridge.beyond == "plane" and ridge.crossing is None
    side = ridge.side
    assert (side.plane, side.ring, side.edge, side.given_edge, side.water) == (0, 0, 2, 2, "away")
    assert (side.meeting_angle, side.skew) == (Angle.SQUARE, Angle.ZERO) and side.backing.degrees == pytest.approx(fold / 2, rel=1e-14)
    assert {side.start.x, side.end.x} == {Length("0 ft"), Length("40 ft")} and side.start.y == side.end.y
    (step,) = HOUSE.lines_of("steep-to-shallow")
    assert step.crossing == (0, 2) and step.name == "steep-to-shallow transition 1"
    (wall,) = HOUSE.lines_of("sidewall")
    assert (wall.beyond, wall.wall, wall.hole, wall.other, wall.dihedral, wall.bend) == ("wall", "tower", None, None, None, None)
    (curb,) = HOUSE.lines_of("curb-front")
    assert (curb.beyond, curb.hole, curb.side.ring) == ("hole", "curb", 1) and HOUSE.lines_of("rake")[0].beyond == "open"
    assert {line.name for line in HOUSE.lines_round(1)} == {"ridge 1", "eave 1", "rake 3", "rake 4"}
    assert HOUSE.lines_of("valley") == []
    (hip,) = HIP.lines_of("hip")
    assert hip.dihedral is not None and hip.dihedral.degrees == pytest.approx(120, rel=1e-13)
    assert hip.slope.degrees == pytest.approx(math.degrees(math.atan(1 / math.sqrt(2))), rel=1e-13)
    for side in hip.sides:
        assert side.meeting_angle.degrees == pytest.approx(90 - abs(side.skew.degrees), rel=1e-14)
        assert side.meeting_angle.degrees == pytest.approx(math.degrees(math.atan(1 / math.sqrt(2))), rel=1e-13)


def test_drains_walls_and_cautions() -> None:
    lines = HOUSE.lines
    found = {(HOUSE.planes[d.plane].name, lines[d.line].kind): (d.to, d.onto) for d in HOUSE.drains}
    assert found == {
        ("south", "steep-to-shallow"): ("plane", 2),
        ("north", "eave"): ("off", None),
        ("shed", "eave"): ("off", None),
        ("shed", "curb-back"): ("curb", None),
    }
    (tower,) = HOUSE.walls
    assert (tower.name, tower.start, tower.end, tower.top) == ("tower", Point("0 ft", "-20 ft"), Point("0 ft", "0 ft"), None)
    assert HOUSE.tolerance > Length.ZERO
    assert any("shed" in str(c) or "planes[2]" in c.subject for c in HOUSE.cautions), HOUSE.cautions


def test_an_outline_keeps_the_plane_on_its_left() -> None:
    assert TURNED.outer == [Point("0 ft", "0 ft"), Point("4 ft", "0 ft"), Point("0 ft", "3 ft")]
    assert [(e.ring, e.index, e.given) for e in TURNED.edges] == [(0, 0, 2), (0, 1, 1), (0, 2, 0)]
    assert all(e.end == f.start for e, f in zip(TURNED.edges, [*TURNED.edges[1:], TURNED.edges[0]], strict=True))
    same = Outline(TURNED.outer)
    assert same == TURNED and hash(same) == hash(TURNED) and [e.given for e in same.edges] == [0, 1, 2]
    # The winding as given survives, though the comparison does not see it.
    for outline in (TURNED, same):
        again = pickle.loads(pickle.dumps(outline))
        assert [e.given for e in again.edges] == [e.given for e in outline.edges]
    curbed = HOUSE.plane("shed").plan
    assert curbed.contains(("9 ft", "-8 ft")) and curbed.contains(("10 ft", "-8 ft")) and not curbed.contains(("12 ft", "-8 ft"))
    assert [(e.ring, e.index, e.given) for e in curbed.edges][4:] == [(1, 0, 3), (1, 1, 2), (1, 2, 1), (1, 3, 0)]
    assert TURNED.contains(Point("1 ft", "1 ft")) and TURNED.contains(("4 ft", "0 ft")) and not TURNED.contains(("4 ft", "1 ft"))
    assert TURNED.bounds.width() == Length("4 ft") and TURNED.bounds.height() == Length("3 ft")
    assert TURNED.area.get("ft2") == pytest.approx(6, rel=1e-14)


coordinates = st.integers(-(10**12), 10**12).map(Length.from_pm)


@given(coordinates, coordinates, coordinates)
def test_points_order_by_x_then_y_then_z(x: Length, y: Length, z: Length) -> None:
    assert Point(x, y) == Point(str(x), str(y)) and (Point(x, y) < Point(y, x)) is ((x, y) < (y, x))
    assert (Vertex(x, y, z) <= Vertex(z, y, x)) is ((x, y, z) <= (z, y, x))
    assert pickle.loads(pickle.dumps(Vertex(x, y, z))) == Vertex(x, y, z)


def changed(**fields: Any) -> Document:
    return {**DOCUMENT, **fields}


def shed(**fields: Any) -> Document:
    return changed(planes=[{"name": "shed", "shape": {"plan": {**SHED["shape"]["plan"], **fields}}}])


def nested(levels: int) -> Any:
    value: Any = []
    for _ in range(levels):
        value = [value]
    return value


REFUSED: list[tuple[Callable[[], object], str, str]] = [
    (lambda: Roof.from_json("{"), "format", ""),
    (lambda: Roof.from_json(""), "format", ""),
    (lambda: Roof.from_json("[" * 100_000), "format", ""),
    (lambda: Roof.from_json('{"planes": []}'), "missing", "planes"),
    (lambda: Roof.from_json(" " * (17 << 20)), "too large", ""),
    (lambda: Roof.from_json("\ud800"), "parse", ""),
    (lambda: Roof.from_dict({}), "missing", "planes"),
    (lambda: Roof.from_dict(changed(plane=[])), "unknown", "plane"),
    (lambda: Roof.from_dict(changed(tolerance="1")), "unit", "tolerance"),
    (lambda: Roof.from_dict(changed(tolerance=1)), "format", "tolerance"),
    (lambda: Roof.from_dict(changed(tolerance=math.nan)), "not finite", "tolerance"),
    (lambda: Roof.from_dict(changed(tolerance="0 mm")), "out of range", "tolerance"),
    (lambda: Roof.from_dict(changed(planes=[SOUTH, SOUTH])), "conflict", "planes[1].name"),
    (lambda: Roof.from_dict(changed(planes=[{"name": "a", "shape": {"solid": {}}}])), "unknown", "planes[0].shape"),
    (lambda: Roof.from_dict(shed(pitch="90 deg")), "out of range", "planes[0].shape.plan.pitch"),
    (lambda: Roof.from_dict(shed(pitch="3")), "unit", "planes[0].shape.plan.pitch"),
    (lambda: Roof.from_dict(shed(outer=[xyz(0, 0), xyz(4, 4), xyz(4, 0), xyz(0, 3)])), "geometry", "planes[0].shape.plan.outer[0]"),
    (lambda: Roof.from_dict({"planes": nested(200)}), "too large", "planes[0][0][0]"),
    (lambda: HOUSE.line("ridge 7"), "unknown", "name"),
    (lambda: HOUSE.plane("east"), "unknown", "name"),
    (lambda: HOUSE.lines_of("ridges"), "unknown", "kind"),
    (lambda: Outline([]), "geometry", "outer"),
    (lambda: Outline([("0 ft", "0 ft"), ("4 ft", "0"), ("4 ft", "3 ft")]), "unit", "outer[1].y"),
    (lambda: Outline(TURNED.outer, [[("0 ft", "0 ft"), ("1 ft", "0 ft"), ("1 x", "1 ft")]]), "unit", "holes[0][2].x"),
    (lambda: Outline([("0 ft", "0 ft"), ("4 ft", "3 ft"), ("4 ft", "0 ft"), ("0 ft", "3 ft")]), "geometry", "outer"),
    (lambda: Outline([("0 km", "0 m"), ("10000 m", "0 m"), ("10000 m", "1 m")]), "unit", "outer[0].x"),
    (lambda: Outline([("0 m", "0 m"), ("10000 m", "0 m"), ("10000 m", "1 m")]), "out of range", ""),
    (lambda: Point("1", "1 ft"), "unit", "x"),
    (lambda: Vertex("1 ft", "1 ft", "one"), "parse", "z"),
]


@pytest.mark.parametrize("number", range(len(REFUSED)))
def test_bad_input_names_its_kind_and_place(number: int) -> None:
    call, kind, path = REFUSED[number]
    with pytest.raises(InputError) as caught:
        call()
    every = [(e.kind, e.path) for e in (caught.value, *caught.value.others)]
    assert (kind, path) in every, (every, str(caught.value))


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: Roof.from_json(DOCUMENT), "text is expected, not dict"),  # type: ignore[arg-type]
        (lambda: Roof.from_dict("{}"), "str"),  # type: ignore[arg-type]
        (lambda: Roof.from_dict({"planes": [SOUTH, object()]}), "planes[1]: a dict, list"),
        (lambda: Roof.from_dict({1: []}), "a field's name must be text, not the int 1"),
        (lambda: Outline("outer"), "not one text"),  # type: ignore[arg-type]
        (lambda: Outline([("0 ft", "0 ft"), "1 ft"]), "a Point or a tuple"),  # type: ignore[list-item]
        (lambda: Outline([("0 ft", "0 ft"), (1, "1 ft")]), "a bare number has no unit"),  # type: ignore[list-item]
        (lambda: Outline([("0 ft", "0 ft", "0 ft")]), "a Point or a tuple"),  # type: ignore[list-item]
        (lambda: Roof(), "Roof"),
    ],
)
def test_what_is_of_another_type_is_a_type_error(call: Callable[[], object], said: str) -> None:
    with pytest.raises(TypeError) as caught:
        call()
    assert said in str(caught.value)


def test_gaps_are_refused_with_their_vertex_planes_and_distance() -> None:
    """The ridge of the house, open by an inch at the same height: 25.4 mm by definition."""
    north = in_space("north", (40, 40, 10), (0, 40, 10), (0, 20, 20), (40, 20, 20))
    for corner in north["shape"]["space"]["outer"]:
        corner["y"] = Length(corner["y"]) + Length("1 in")
    open_ridge: Document = {"planes": [SOUTH, north], "gaps": "refuse"}
    with pytest.raises(InputError) as caught:
        Roof.from_dict(open_ridge)
    error = caught.value
    assert (error.kind, error.path, error.value, error.others) == ("geometry", "planes[0].shape.space.outer[2]", "25.4 mm", ())
    assert "edge 2 of south" in str(error) and "north" in str(error)
    told = Roof.from_dict(open_ridge | {"gaps": "report"})
    assert [c.name for c in told.cautions] == ["near-miss"] and not told.lines_of("ridge")
    assert len(Roof.from_dict(open_ridge | {"tolerance": "1 in"}).lines_of("ridge")) == 1
