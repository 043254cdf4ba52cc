"""Cut shapes of panels against shapely: on a convex plane the metal is what all edges, shifted by their ends, leave of the strip."""

from collections.abc import Iterator
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest
import shapely  # type: ignore[import-untyped]
from seamwright import InputError, job

FAR = 1e6
# Shifted lines turn into each other where they cross within reach of both: edges this wide reach far enough for ends of a few centimetres.
LEAST_RUN = 500.0
NANOMETRE = 1e-6


def end(hold_back: int, fold: int, trim: int) -> dict[str, Any]:
    reach = {"hold-back": f"{hold_back} mm"} if hold_back >= 0 else {"overhang": f"{-hold_back} mm"}
    return {"end": {"reach": reach, "fold": f"{fold} mm", "field_trim": f"{trim} mm", "hold": "slides", "source": {"user": {"note": ""}}}}


def layout(ring: npt.NDArray[np.float64], coverage: int, ends: list[dict[str, Any]]) -> dict[str, Any]:
    step = {"increment": "1 mm", "rounding": "ceil"}
    return {
        "outline": {"outer": [{"x": f"{x} mm", "y": f"{y} mm"} for x, y in ring.tolist()]},
        "panel": {"coverage": f"{coverage} mm", "seam_height": "25 mm", "seam": {"double-lock": {"lock": "8 mm"}}},
        "start": "left",
        "edges": ends,
        "rounding": {"both_finished": step, "one_finished": step, "field_cut": step},
    }


def left_by(ring: npt.NDArray[np.float64], beyond: list[float], left: float, right: float) -> shapely.Polygon:
    """What is left of a strip under every edge, shifted outward by so much; edges along the seams end nothing."""
    out = shapely.box(left, -FAR, right, FAR)
    for (a, b), off in zip(zip(ring, np.roll(ring, -1, axis=0), strict=True), beyond, strict=True):
        if a[0] == b[0]:
            continue
        along = (b - a) / np.hypot(*(b - a))
        outward = np.array([along[1], -along[0]])
        p, q = a - FAR * along + off * outward, b + FAR * along + off * outward
        out = shapely.intersection(out, shapely.Polygon([p, q, q - FAR * outward, p - FAR * outward]))
    return out


def points(line: list[dict[str, str]]) -> list[tuple[float, float]]:
    return [(float(p["x"].removesuffix(" mm")), float(p["y"].removesuffix(" mm"))) for p in line]


def apart(found: shapely.Polygon, expected: shapely.Polygon, x: float, y: float) -> float:
    """How far the one, moved by x and y, lies from the other."""
    return float(shapely.hausdorff_distance(shapely.transform(found, lambda p: p + [x, y]), expected))


def between(shape: dict[str, Any], which: str) -> shapely.Polygon:
    lines = [shape[side][which] or shape[side]["cut"] for side in ("lower", "upper")]
    return shapely.Polygon(points(lines[0]) + points(lines[1])[::-1])


def planes(count: int, seed: int) -> Iterator[npt.NDArray[np.float64]]:
    """Convex rings of whole millimetres, counter-clockwise, whose edges are wide enough for their ends or lie along the seams."""
    random = np.random.default_rng(seed)
    while count:
        hull = shapely.convex_hull(shapely.MultiPoint(random.integers(0, [6000, 5000], (int(random.integers(3, 7)), 2))))
        if not isinstance(hull, shapely.Polygon):
            continue
        ring = np.array(shapely.geometry.polygon.orient(hull).exterior.coords[:-1])
        runs = np.abs(np.roll(ring, -1, axis=0) - ring)[:, 0]
        if ((runs == 0) | (runs >= LEAST_RUN)).all():
            count -= 1
            yield ring


def test_convex_planes() -> None:
    random = np.random.default_rng(5)
    panels = folds = 0
    for ring in planes(60, 11):
        coverage = int(random.integers(250, 700))
        ends = [(int(random.integers(-30, 40)), int(random.integers(1, 25)), int(random.integers(1, 50))) for _ in ring]
        document = layout(ring, coverage, [end(*e) for e in ends])
        laid, shapes = job.compute("layout.layout", document), job.compute("layout.cut-shapes", {"layout": document})
        assert len(shapes) == len(laid["panels"])
        low = ring[:, 0].min()
        for shape, panel in zip(shapes, laid["panels"], strict=True):
            left = low + coverage * shape["strip"]
            right = min(left + coverage, ring[:, 0].max())
            cut = left_by(ring, [fold - back for back, fold, _ in ends], left, right)
            found = between(shape, "cut")
            x, y = left, cut.bounds[1] - found.bounds[1]
            assert apart(found, cut, x, y) < NANOMETRE
            # The metal as ordered and the fold lines, as far across as there is finished metal.
            reach = shapely.box(cut.bounds[0], -FAR, cut.bounds[2], FAR)
            ordered = shapely.intersection(left_by(ring, [fold - back + trim for back, fold, trim in ends], left, right), reach)
            assert apart(between(shape, "trim"), ordered, x, y) < NANOMETRE
            folded = left_by(ring, [-back for back, _, _ in ends], left, right)
            if folded.bounds[0] == cut.bounds[0] and folded.bounds[2] == cut.bounds[2]:
                assert apart(between(shape, "fold"), folded, x, y) < NANOMETRE
                folds += 1
            assert float(shape["length"].removesuffix(" mm")) <= float(panel["order"].removesuffix(" mm")) + 1e-3
            panels += 1
    assert panels > 400 and folds > panels / 2


def test_every_fault_of_the_layout_is_named() -> None:
    document = layout(np.array([[0.0, 0.0], [400.0, 0.0], [0.0, 900.0]]), 400, [end(0, 0, 0)] * 2)
    with pytest.raises(InputError, match=r"layout\.edges"):
        job.compute("layout.cut-shapes", {"layout": document})
