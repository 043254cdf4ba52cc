"""Measured roofs from Python: shapes against NumPy's own least squares, folded planes against rotations by hand, snapping and the sheet."""

import itertools
import math
import pickle
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from seamwright import InputError, job
from seamwright.roof import JoinedPlanes, MeasuredPlane, MeasuringSheet, PlaneShape, RoofInput, SketchedRoof, Snapping
from seamwright.units import Length

Array = Any


def mm(length: Length) -> float:
    return length.get("mm")


def plane(names: str, read: dict[str, float], **more: Any) -> dict[str, Any]:
    lengths = [{"from": pair[0], "to": pair[1], "length": f"{value:.9f} mm"} for pair, value in read.items()]
    return {"name": "south", "corners": list(names), "lengths": lengths, **more}


def solved(names: str, read: dict[str, float], tolerance: dict[str, float], start: Array) -> tuple[Array, float]:
    """The weighted least squares by NumPy: Gauss and Newton's steps, each the shortest that `lstsq` finds. Gives places and the sum of squares."""
    at = start.astype(float).copy()
    for _ in range(60):
        rows, right = [], []
        for pair, value in read.items():
            i, j = names.index(pair[0]), names.index(pair[1])
            d = at[j] - at[i]
            far = float(np.hypot(*d))
            row = np.zeros(at.size)
            row[2 * j : 2 * j + 2] = d / far
            row[2 * i : 2 * i + 2] = -d / far
            rows.append(row / tolerance[pair])
            right.append((value - far) / tolerance[pair])
        step = np.linalg.lstsq(np.array(rows), np.array(right), rcond=1e-9)[0]
        at += step.reshape(at.shape)
        if np.abs(step).max() < 1e-10:
            break
    return at, float(np.sum(np.square(right)))


@given(
    st.lists(st.tuples(st.floats(3000, 9000), st.floats(-0.3, 0.3)), min_size=4, max_size=6),
    st.lists(st.floats(-1, 1), min_size=15, max_size=15),
    st.lists(st.floats(1, 4), min_size=15, max_size=15),
)
def test_shapes_are_those_of_numpy(radii: list[tuple[float, float]], offs: list[float], tolerances: list[float]) -> None:
    n = len(radii)
    names = "ABCDEF"[:n]
    turns = [(i + jitter) / n * 2 * math.pi for i, (_, jitter) in enumerate(radii)]
    true = np.array([[r * math.cos(t), 0.8 * r * math.sin(t)] for (r, _), t in zip(radii, turns, strict=True)])
    pairs = [a + b for a, b in itertools.combinations(names, 2)]
    # Each reading is off by a quarter of its tolerance at most: nothing is refused.
    tolerance = dict(zip(pairs, tolerances, strict=False))
    read = {
        p: round(float(np.hypot(*(true[names.index(p[1])] - true[names.index(p[0])]))) + off * tolerance[p] / 4, 9)
        for p, off in zip(pairs, offs, strict=False)
    }
    document = plane(names, read)
    for length in document["lengths"]:
        length["tolerance"] = f"{tolerance[length['from'] + length['to']]:.9f} mm"
    tolerance = {p: round(t, 9) for p, t in tolerance.items()}
    shape = MeasuredPlane.from_dict(document).compute()
    at, squares = solved(names, read, tolerance, true)
    for reading, (p, value) in zip(shape.readings, read.items(), strict=True):
        theirs = float(np.hypot(*(at[names.index(p[1])] - at[names.index(p[0])]))) - value
        assert mm(reading.residual) == pytest.approx(theirs, abs=2e-6)
        assert reading.measured is not None and mm(reading.measured) == pytest.approx(value, abs=1e-9)
    assert shape.checks == len(pairs) - (2 * n - 3)
    assert shape.fit_ratio == pytest.approx(math.sqrt(squares / shape.checks), rel=1e-5, abs=1e-6)
    # Four solved corners lie in one plane: Cayley and Menger's determinant of their distances is 0.
    corners = np.array([[mm(c.at.x), mm(c.at.y)] for c in shape.corners])[:4] / 10_000
    square = np.sum(np.square(corners[:, None, :] - corners[None, :, :]), axis=2)
    bordered = np.ones((5, 5))
    bordered[1:, 1:] = square
    bordered[0, 0] = 0
    assert abs(np.linalg.det(bordered)) < 1e-9


def test_heron() -> None:
    # 13, 14, 15 has the area 84 (Heron of Alexandria, Metrica I.8).
    shape = MeasuredPlane.from_dict(plane("ABC", {"AB": 13.0, "BC": 14.0, "CA": 15.0})).compute()
    (ax, ay), (bx, by), (cx, cy) = ((mm(c.at.x), mm(c.at.y)) for c in shape.corners)
    assert (bx - ax) * (cy - ay) - (cx - ax) * (by - ay) == pytest.approx(168, abs=1e-6)


def turned(axis: Array, angle: float) -> Array:
    x, y, z = axis
    k = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    return np.eye(3) + math.sin(angle) * k + (1 - math.cos(angle)) * (k @ k)


@given(st.floats(3, 12), st.floats(8, 30), st.floats(0, 6.28), st.floats(3, 14), st.floats(3, 14))
def test_a_fold_about_a_ridge_is_a_rotation(deep: float, long: float, turn: float, rise: float, other: float) -> None:
    """The north plane laid flat beside the south one and turned about the ridge by the two slopes, as NumPy does it."""
    outer = [{"x": f"{x:.9f} ft", "y": f"{y:.9f} ft"} for x, y in [(0, 0), (long, 0), (long, deep), (0, deep)]]
    planes = [{"name": n, "outer": outer, "pitch": f"{p:.6f}:12"} for n, p in [("south", rise), ("north", other)]]
    anchor = {"plane": "south", "corner": 0, "at": {"x": "0 ft", "y": "0 ft", "z": "0 ft"}, "down_slope": f"{math.degrees(turn):.12f} deg"}
    ridge = {"first": {"plane": "south", "edge": 2}, "second": {"plane": "north", "edge": 2}}
    joined = JoinedPlanes.from_dict({"planes": planes, "joints": [ridge], "anchor": anchor}).compute()
    south, north = (math.atan(round(r, 6) / 12) for r in (rise, other))
    fall = np.array([math.cos(turn), math.sin(turn), 0])
    across = np.array([-fall[1], fall[0], 0])
    up = -fall * math.cos(south) + np.array([0, 0, math.sin(south)])
    eave = turned(across, -(south + north)) @ (deep * up)
    roof = joined.roof.compute()
    corner = roof.plane("north").rings[0]
    expected = [deep * up + eave + long * across, deep * up + eave]
    for vertex, at in zip([corner[0], corner[1]], expected, strict=True):
        assert [v.get("ft") for v in (vertex.x, vertex.y, vertex.z)] == pytest.approx(at.tolist(), abs=1e-8)
    assert mm(joined.misclosure) < 1e-6 and len(roof.lines_of("ridge")) == 1


def sheet() -> MeasuringSheet:
    def sketched(name: str, *corners: tuple[int, int]) -> dict[str, Any]:
        return {"name": name, "outer": [{"x": f"{x} ft", "y": f"{y} ft"} for x, y in corners]}

    planes = [sketched("south", (0, 0), (40, 0), (40, 12), (0, 12)), sketched("north", (40, 24), (0, 24), (0, 12), (40, 12))]
    return SketchedRoof.from_dict({"planes": planes}).compute()


def test_a_sheet_filled_in_gives_the_roof() -> None:
    made = sheet()
    # Both planes are 40 ft by 20 ft on the slope: 16 ft up over 12 ft, a 3-4-5.
    assert [p.plane for p in made.planes] == ["south", "north"]
    at = {c.name: (mm(c.at.x), (mm(c.at.y) if p.plane == "south" else 24 * 304.8 - mm(c.at.y)) * 20 / 12) for p in made.planes for c in p.corners}
    for p in made.planes:
        for mark in p.marks:
            a, b = at[mark["from"]], at[mark["toward"]]
            part = mm(Length(mark["distance"])) / math.dist(a, b)
            at[mark["name"]] = (a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part)
    read: dict[int, str] = {}
    for p in made.planes:
        for line in p.lines:
            read.setdefault(line.number, f"{math.dist(at[line.start], at[line.end]):.9f} mm")
    shapes = [m.compute() for m in made.filled([read[n + 1] for n in range(made.lines)])]
    assert all(s.misclosure is not None and mm(s.misclosure) < 1e-6 and s.checks == 2 for s in shapes)
    documents = []
    for shape, p in zip(shapes, made.planes, strict=True):
        low = [at[c.name][1] < 1 for c in p.corners]
        eave = next(i for i in range(4) if low[i] and low[(i + 1) % 4])
        documents.append(shape.slope_plane | {"pitch": "16:12", "up": {"level": {"edge": eave, "end": "foot"}}})
    anchor = {"plane": "south", "corner": 0, "at": {"x": "0 ft", "y": "0 ft", "z": "0 ft"}, "down_slope": "270 deg"}
    roof = JoinedPlanes.from_dict({"planes": documents, "joints": made.joints, "anchor": anchor}).compute().roof.compute()
    ridge = roof.line("ridge 1")
    assert ridge.length.get("ft") == pytest.approx(40, abs=1e-8) and ridge.start.z.get("ft") == pytest.approx(16, abs=1e-8)
    page = made.html("boathouse", "letter", "ft-in/16").decode()
    assert page.count('<td class="blank">') == made.lines and "boathouse" in page
    with pytest.raises(InputError) as caught:
        made.html("boathouse", "legal", "ft-in/16")
    assert caught.value.path == "paper"


def test_refusals_name_what_to_do() -> None:
    with pytest.raises(InputError) as caught:
        MeasuredPlane.from_dict(plane("ABCD", {"AB": 40.0, "BC": 24.0, "CD": 40.0, "DA": 24.0})).compute()
    assert (caught.value.kind, caught.value.path, caught.value.cure) == ("missing", "lengths", "measure A-C")
    with pytest.raises(InputError) as caught:
        MeasuredPlane.from_dict(plane("ABC", {"AB": 4000.0, "BC": 3000.0, "CA": 8000.0})).compute()
    assert (caught.value.kind, caught.value.path) == ("impossible", "lengths[2].length")
    with pytest.raises(InputError) as caught:
        sheet().filled(["1 ft"])
    assert caught.value.path == "lengths"
    with pytest.raises(InputError) as caught:
        Snapping.from_dict({"roof": {"planes": []}}).compute()
    assert caught.value.path == "roof.planes"


def test_by_name_and_by_class_are_one() -> None:
    document = plane("ABC", {"AB": 3000.0, "BC": 4000.0, "CA": 5000.0}, level=[{"side": ["A", "B"], "end": "foot"}])
    measured = MeasuredPlane.from_dict(document)
    shape, worksheet = measured.explain()
    named = job.compute("roof.measured-plane", document)
    assert isinstance(shape, PlaneShape) and named["line"] == shape.line and len(worksheet.steps()) == 5
    assert [c["at"]["y"] for c in named["corners"]] == [str(c.at.y) for c in shape.corners]
    assert pickle.loads(pickle.dumps(shape.readings[1])) == shape.readings[1]
    for name in ("joined-planes", "sketched-roof", "snapping"):
        assert f"roof.{name}" in job.names()
    outer = [dict(zip("xyz", (f"{c} ft" for c in corner), strict=True)) for corner in [(0, 0, 0), (9, 0, 0), (9, 9, 5), (0, 9, 5)]]
    roof = RoofInput.from_dict({"planes": [{"name": "a", "shape": {"space": {"outer": outer}}}]})
    snapped = Snapping.from_dict({"roof": roof.to_dict()}).compute()
    assert snapped.roof.compute().area.get("ft2") == pytest.approx(9 * math.hypot(9, 5))
