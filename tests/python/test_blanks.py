"""Mitres, tapers and blanks against readers and libraries that are not ours: shapely for areas and clipped lines, NumPy for vectors, ezdxf for DXF."""

import io
import math
import random
import xml.etree.ElementTree as ElementTree
from typing import Any

import ezdxf.recover
import numpy as np
import pytest
import shapely  # type: ignore[import-untyped]
from ezdxf.filemanagement import read
from seamwright import InputError
from seamwright.trim import BlankPlan, EndFold, FlatBlank, Mitre, PlannedBlank, ReliefHole, Taper, TaperedRun
from seamwright.units import Length

RULE: dict[str, Any] = {"neutral-axis": {"factor": 0.4}}
LEVEL = {"turn": "90 deg", "first_rise": "0 deg", "second_rise": "0 deg"}


def profile(*widths: str, angle: str = "90 deg", hem: bool = False) -> dict[str, Any]:
    """Legs of these widths, every second bend down; the last leg with a hem where asked."""
    ends = ["sheet-edge", *["outer-corner"] * (len(widths) - 1), "outer-tangent" if hem else "sheet-edge"]
    legs = [{"name": f"leg {i}", "length": w, "start": ends[i], "end": ends[i + 1]} for i, w in enumerate(widths)]
    for leg in legs[1:]:
        leg["start"] = "outer-corner"
    bends = [{"angle": angle, "direction": "up" if i % 2 else "down", "inside_radius": "0.8 mm"} for i in range(len(widths) - 1)]
    edge = {"closed-hem": {"width": "12 mm", "direction": "up"}} if hem else "raw"
    return {"thickness": "0.6 mm", "legs": legs, "bends": bends, "painted": "upper", "end_edge": edge}


def slot(bend: Any, depth: str, width: str, diameter: str | None = None) -> dict[str, Any]:
    return {"bend": bend, "depth": depth, "shape": {"slot": {"width": width, "round": diameter}}}


def vee(bend: Any, depth: str, width: str, diameter: str | None = None) -> dict[str, Any]:
    return {"bend": bend, "depth": depth, "shape": {"vee": {"width": width, "round": diameter}}}


TAB = {
    "leg": {"body": 1},
    "from": "20 mm",
    "width": "50 mm",
    "length": "25 mm",
    "angle": "90 deg",
    "direction": "up",
    "inside_radius": "0.8 mm",
    "relief": "3 mm",
}
MITRED = {"mitred": {"corner": {"plan": LEVEL}, "closes_on": "upper"}}


def plan(**more: Any) -> BlankPlan:
    given = {"profile": profile("60 mm", "90 mm", "70 mm", hem=True), "rule": RULE, "length": "800 mm", "tolerance": "0.01 mm"}
    return BlankPlan.from_dict({**given, **more})


PLANS = {
    "plain": plan(),
    "mitred": plan(near={"cut": MITRED}, far={"cut": MITRED}),
    "notched": plan(far={"notches": [vee({"body": 0}, "30 mm", "16 mm"), vee({"body": 1}, "30 mm", "16 mm", "5 mm"), slot("end-hem", "50 mm", "4 mm", "4 mm")]}),
    "keyhole": plan(near={"notches": [slot({"body": 0}, "40 mm", "6 mm", "10 mm")]}, far={"notches": [slot({"body": 1}, "40 mm", "6 mm", "10 mm")]}),
    "tabbed": plan(near={"tabs": [TAB]}, far={"tabs": [TAB], "notches": [{"bend": "end-hem", "depth": "90 mm", "shape": "from-end-edge"}]}),
    "holed": plan(holes=[{"place": {"at": {"x": "100 mm", "y": "300 mm"}}, "diameter": "30 mm"}, {"place": {"at": {"x": "30 mm", "y": "30 mm"}}, "diameter": "3 mm"}]),
    "mixed": plan(near={"cut": MITRED, "notches": [slot({"body": 1}, "40 mm", "6 mm", "6 mm")]}, far={"tabs": [TAB]}),
}
STRAIGHT = ("plain", "mitred", "tabbed")


def pair(p: tuple[Length, Length]) -> tuple[float, float]:
    return p[0].get("mm"), p[1].get("mm")


def polygon(blank: FlatBlank) -> shapely.Polygon:
    """The outline as shapely has it, arcs as chords, less the holes."""
    outline = shapely.Polygon([pair(p) for p in blank.points("0.0001 mm")])
    for centre, diameter in blank.holes:
        outline = outline.difference(shapely.Point(pair(centre)).buffer(diameter.get("mm") / 2, quad_segs=2000))
    return outline


def blanks() -> list[tuple[str, FlatBlank]]:
    fold = {"width": "400 mm", "hem": {"open-hem": {"width": "25 mm", "gap": "4 mm", "direction": "down"}}, "thickness": "0.6 mm", "rule": RULE, "shown": "300 mm"}
    folds = [EndFold.from_dict({**fold, "meeting": f"{m} deg", "ends": e}).compute().blank for m in (35, 90, 130) for e in ("mirrored", {"square": {"clear": "5 mm"}})]
    return [*[(name, p.compute().blank) for name, p in PLANS.items()], ("taper", TAPER.compute().blank), *[(f"fold {i}", f) for i, f in enumerate(folds)]]


TAPER = Taper.from_dict(
    {
        "near": profile("60 mm", "90 mm", "70 mm", hem=True),
        "far": profile("60 mm", "140 mm", "95 mm", hem=True),
        "length": "2 m",
        "rule": RULE,
        "held": "start-edge",
        "tolerance": "0.001 mm",
    }
)


def test_areas_are_shapely_s() -> None:
    for name, blank in blanks():
        shape = polygon(blank)
        assert shape.is_valid, name
        ours, theirs = blank.area.get("mm2"), shape.area
        # Straight outlines to the rounding of floating point, arcs to their chords.
        assert ours == pytest.approx(theirs, rel=1e-12 if name in STRAIGHT else 1e-7), name
        assert blank.mass("4.71 kg/m2").get("kg") == pytest.approx(4.71 * ours / 1e6, rel=1e-12)
        low, high = (pair(p) for p in blank.bounds)
        assert (*low, *high) == pytest.approx(shape.bounds, abs=1e-3), name


def test_bend_lines_are_clipped_as_shapely_clips_them() -> None:
    for name, planned in PLANS.items():
        made = planned.compute()
        shape = polygon(made.blank)
        _, low, _, high = shape.bounds
        for bend, station in zip(made.blank.bends, made.stations, strict=False):
            x = station.get("mm")
            wanted = shapely.LineString([(x, low - 1), (x, high + 1)]).intersection(shape)
            got = shapely.MultiLineString([[pair(a), pair(b)] for a, b in bend.lines])
            assert got.length == pytest.approx(wanted.length, abs=1e-3), (name, bend)
            assert wanted.buffer(1e-3).contains(got), (name, bend)
            assert all(shape.buffer(1e-6).contains(shapely.LineString([pair(a), pair(b)])) for a, b in bend.tangents), (name, bend)


def frame(turn: float, rise: float, roll: float) -> np.ndarray:
    """Right, up and along as rows: a run turned to the left in plan, rising, its section turned about it."""
    along = np.array([-math.sin(turn) * math.cos(rise), math.cos(turn) * math.cos(rise), math.sin(rise)])
    right = np.cross(along, [0.0, 0.0, 1.0])
    right /= np.linalg.norm(right)
    up = np.cross(right, along)
    return np.array([math.cos(roll) * right + math.sin(roll) * up, math.cos(roll) * up - math.sin(roll) * right, along])


def test_cut_angles_are_those_of_the_planes() -> None:
    """A rafter's foot, a hip's cap, a rake's return: the cut of a leg is where its plane meets the mitre plane, by cross products."""
    rng = random.Random(20240229)
    for _ in range(200):
        turn, first, second, heading = rng.uniform(-140, 140), rng.uniform(-50, 50), rng.uniform(-50, 50), rng.uniform(-180, 180)
        corner = {"plan": {"turn": f"{turn} deg", "first_rise": f"{first} deg", "second_rise": f"{second} deg"}}
        strip = {"thickness": "0.6 mm", "legs": [{"name": "strip", "length": "100 mm", "start": "sheet-edge", "end": "sheet-edge"}], "painted": "upper"}
        put = {"leg": {"body": 0}, "face": "lower", "at": {"x": "7 mm", "y": "-3 mm"}, "heading": f"{heading} deg"}
        asked = {"profile": strip, "placement": put, "rule": RULE, "corner": corner, "second": "turned", "closes_on": "lower", "tolerance": "0.01 mm"}
        made = Mitre.from_dict(asked).compute()
        radians = math.radians
        one = frame(0.0, radians(first), 0.0)
        two = frame(radians(turn), radians(second), radians(made.roll.degrees))
        # The plane that halves the runs; the mirror in it takes the one section to the other.
        normal = one[2] + two[2]
        mirror = np.eye(3) - 2 * np.outer(normal, normal) / (normal @ normal)
        assert mirror @ one[0] == pytest.approx(two[0], abs=1e-9) and mirror @ one[1] == pytest.approx(two[1], abs=1e-9)
        for half, run in ((made.first, one), (made.second, two)):
            leg = math.cos(radians(heading)) * run[0] + math.sin(radians(heading)) * run[1]
            cut = np.cross(np.cross(leg, run[2]), normal)
            cut *= np.sign(cut @ leg)
            angle = math.degrees(math.atan2(cut @ leg, cut @ run[2]))
            assert half.legs[0].angle.degrees == pytest.approx(angle, abs=1e-7)
            lean = normal @ np.cross(leg, run[2]) / np.linalg.norm(normal)
            assert half.legs[0].bevel.degrees == pytest.approx(abs(math.degrees(math.asin(lean))), abs=1e-7)
        between = math.degrees(math.acos(float(np.clip(one[2] @ two[2], -1, 1))))
        assert made.turn.degrees == pytest.approx(between, abs=1e-5)


def test_a_frustum_is_developed_as_by_hand() -> None:
    """A hopper of 200 mm at the top, 100 at the bottom, 120 deep, by Pythagoras."""

    def square(side: str) -> dict[str, Any]:
        ends = ["sheet-edge", "tangent", "tangent", "tangent", "sheet-edge"]
        legs = [{"name": str(i), "length": side, "start": ends[i], "end": ends[i + 1]} for i in range(4)]
        return {"thickness": "1 mm", "legs": legs, "bends": [{"angle": "90 deg", "direction": "up", "inside_radius": "0 mm"}] * 3, "painted": "lower"}

    flat: dict[str, Any] = {"neutral-axis": {"factor": 0}}
    offset = {"x": "50 mm", "y": "50 mm"}
    asked = {"near": square("200 mm"), "far": square("100 mm"), "length": "120 mm", "rule": flat, "held": "start-edge", "offset": offset, "tolerance": "0.01 mm"}
    made = Taper.from_dict(asked).compute()
    # Four trapezia about one apex: the corners lie on two circles, of slant 2 sqrt(19400) and sqrt(19400).
    corner = math.sqrt(120**2 + 50**2 + 50**2)
    sides = [made.legs[0].start, *[leg.end for leg in made.legs]]
    apex = np.array(pair(sides[0][0])) + 2 * (np.array(pair(sides[0][1])) - np.array(pair(sides[0][0])))
    for side in sides:
        near, far = (np.array(pair(p)) for p in side)
        assert np.linalg.norm(near - apex) == pytest.approx(2 * corner, abs=1e-6) and np.linalg.norm(far - apex) == pytest.approx(corner, abs=1e-6)
    assert made.area.get("mm2") == pytest.approx(4 * 150 * 130, abs=1e-5)


def test_a_run_s_pieces_give_their_girths() -> None:
    run = {"near": profile("60 mm", "90 mm"), "far": profile("60 mm", "130 mm"), "run": "7 m", "longest": "3 m", "lap": "100 mm"}
    made = TaperedRun.from_dict({**run, "mode": "full-then-rest", "rule": RULE, "held": "start-edge", "tolerance": "0.01 mm"}).compute()
    assert (len(made.pieces), made.laps) == (3, 2)
    girth = made.pieces[0].trim.girths[0]
    for piece in made.pieces:
        for at, got in zip((piece.start, piece.end), piece.trim.girths, strict=True):
            assert (got - girth).get("mm") == pytest.approx(40 * at.get("mm") / 7000, abs=1e-6)
    assert made.pieces[-1].end == Length("7 m") and made.pieces[0].end - made.pieces[1].start == Length("100 mm")


def documents() -> list[tuple[str, bytes, FlatBlank, float]]:
    out = []
    for name, planned in PLANS.items():
        made = planned.compute()
        for unit, factor in (("millimetre", 1.0), ("inch", 25.4)):
            assert made.dxf(name, "mm.1", unit) == planned.compute().dxf(name, "mm.1", unit)
            out.append((name, made.dxf(name, "mm.1", unit), made.blank, factor))
    tapered = TAPER.compute()
    out.append(("taper", tapered.dxf("taper", "mm.1", "millimetre"), tapered.blank, 1.0))
    return out


def test_dxf_passes_the_audit_and_holds_the_blank() -> None:
    for name, data, blank, factor in documents():
        for document, audit in [(d := read(io.StringIO(data.decode("ascii"))), d.audit()), ezdxf.recover.read(io.BytesIO(data))]:
            assert document.dxfversion == "AC1015"
            assert [e.message for e in audit.errors] == [] and [e.message for e in audit.fixes] == [], name
        space: Any = document.modelspace()
        (outline,) = space.query('LWPOLYLINE[layer=="BLANK-EDGE"]')
        area = 0.0
        points = outline.get_points("xyb")
        for (x1, y1, bulge), (x2, y2, _) in zip(points, points[1:] + points[:1], strict=True):
            area += (x1 * y2 - x2 * y1) / 2
            if bulge:
                turn = 4 * math.atan(bulge)
                radius = math.hypot(x2 - x1, y2 - y1) / (2 * math.sin(abs(turn) / 2))
                area += math.copysign(radius**2 * (abs(turn) - math.sin(abs(turn))) / 2, turn)
        holes = list(space.query('LWPOLYLINE[layer=="BLANK-HOLE"]'))
        area -= sum(math.pi * (h.get_points("xyb")[1][0] - h.get_points("xyb")[0][0]) ** 2 / 4 for h in holes)
        assert area * factor**2 == pytest.approx(blank.area.get("mm2"), rel=1e-7), name
        lines = [e for e in space.query("LINE") if e.dxf.layer in ("BEND-UP", "BEND-DOWN")]
        assert len(lines) == sum(len(b.lines) for b in blank.bends) and len(holes) == len(blank.holes)


def test_svg_lies_on_its_page_and_its_distances_do_not_overlap() -> None:
    drawings = [(name, planned.compute().svg(name, "mm.1")) for name, planned in PLANS.items()]
    drawings.append(("taper", TAPER.compute().svg("taper", "mm.1")))
    drawings += [(name, blank.svg(name, "in/16")) for name, blank in blanks()]
    space = "{http://www.w3.org/2000/svg}"
    for name, text in drawings:
        page = ElementTree.fromstring(text.encode())
        _, _, width, height = (float(v) for v in page.attrib["viewBox"].split())
        boxes = []
        for element in page.iter(space + "text"):
            x, y, size, length = (float(element.attrib[k]) for k in ("x", "y", "font-size", "textLength"))
            start = {"start": 0.0, "middle": length / 2, "end": length}[element.attrib["text-anchor"]]
            if "transform" in element.attrib:
                low, high = (x - 0.7 * size, y - length + start), (x, y + start)
            else:
                low, high = (x - start, y - 0.7 * size), (x - start + length, y)
            assert low[0] >= 0 and low[1] >= 0 and high[0] <= width and high[1] <= height, (name, element.text)
            boxes.append((low, high, element.text))
        for i, (low, high, one) in enumerate(boxes):
            for other_low, other_high, two in boxes[:i]:
                apart = low[0] >= other_high[0] or other_low[0] >= high[0] or low[1] >= other_high[1] or other_low[1] >= high[1]
                assert apart, (name, one, two)


def test_refusals_say_where() -> None:
    refused_at: list[tuple[dict[str, Any], str]] = [
        ({"far": {"notches": [slot({"body": 0}, "900 mm", "4 mm")]}}, "far.notches[0].depth"),
        ({"far": {"notches": [slot({"body": 0}, "9 mm", "170 mm")]}}, "far.notches[0].shape.slot.width"),
        ({"holes": [{"place": {"at": {"x": "60 mm", "y": "90 mm"}}, "diameter": "9 mm"}]}, "holes[0]"),
        ({"near": {"tabs": [{**TAB, "from": "1 mm"}]}}, "near.tabs[0].from"),
    ]
    for more, path in refused_at:
        with pytest.raises(InputError) as refused:
            plan(**more).compute()
        assert refused.value.path == path
    def relief(habit: str, radius: str, sheet: str) -> Length:
        return ReliefHole.from_dict({"habit": habit, "inside_radius": radius, "thickness": sheet}).compute()

    with pytest.raises(InputError) as refused:
        relief("thickness", "1 mm", "0.07 in")
    assert refused.value.path == "thickness"
    assert [format(relief(h, "0.05 in", "0.08 in"), "in.4") for h in ("twice-radius", "radius", "thickness")] == ["0.1000 in", "0.1250 in", "0.1875 in"]


def test_a_blank_shows_itself() -> None:
    made: PlannedBlank = PLANS["tabbed"].compute()
    assert made.blank._repr_svg_().startswith("<?xml")
    assert [b.name for b in made.blank.bends] == ["1", "2", "end hem", "tab 1", "tab 2"]
    assert {e.side for e in made.blank.outline} >= {"start-edge", "end-edge", "near-end", "far-end", "tab", "relief", "notch"}
    assert all(a.end == b.start for a, b in zip(made.blank.outline, [*made.blank.outline[1:], made.blank.outline[0]], strict=True))
    arcs = [e for e in PLANS["keyhole"].compute().blank.outline if e.turn is not None]
    assert len(arcs) == 2 and all(e.turn is not None and e.turn.degrees < -180 and e.centre is not None for e in arcs)
