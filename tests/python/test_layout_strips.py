"""Strips of a layout against shapely: what a polygon has in common with each strip, by a library that knows nothing of panels."""

import math
from collections.abc import Iterator

import shapely  # type: ignore[import-untyped]
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st
from seamwright.layout import EdgeUse, LaidPanel, Layout, Start
from seamwright.panel import Panel, PanelEnd, Seam
from seamwright.roof import Outline
from seamwright.units import Length

# Whole numbers of tenths of a millimetre, so that both sides start from the same figures.
Ring = list[tuple[int, int]]
Shape = tuple[Ring, list[Ring]]
TENTH_PM = 10**8
# Where nothing is added at the ends, a finished length is a clear length.
NOTHING = EdgeUse.end(PanelEnd.hold_back("0 mm"))
NANOMETRE = 1e-6


def star(draw: st.DrawFn, centre: tuple[int, int], least: int, greatest: int) -> Ring:
    """A ring round a centre, seldom convex: at least five vertices, none more than 130 degrees from the next."""
    count = draw(st.integers(5, 11))
    ring = []
    for k in range(count):
        angle = 2 * math.pi * (k + draw(st.integers(0, 80)) / 100) / count
        radius = draw(st.integers(least, greatest))
        ring.append((centre[0] + round(radius * math.cos(angle)), centre[1] + round(radius * math.sin(angle))))
    return ring


@st.composite
def stars(draw: st.DrawFn) -> Shape:
    centre = (draw(st.integers(-50_000, 50_000)), draw(st.integers(-50_000, 50_000)))
    # The disc about the centre that every outer ring leaves free has a radius of 30000 cos 65 deg, more than 12600.
    outer = star(draw, centre, 30_000, 120_000)
    places = draw(st.sampled_from([[], [(0, 0)], [(-6_000, 0), (6_000, 0)], [(0, -6_000), (0, 6_000)]]))
    size = 11_000 if len(places) == 1 else 5_500
    return outer, [star(draw, (centre[0] + x, centre[1] + y), 1_000, size) for x, y in places]


@st.composite
def convex(draw: st.DrawFn) -> Shape:
    points = draw(st.lists(st.tuples(st.integers(0, 200_000), st.integers(0, 100_000)), min_size=3, max_size=10, unique=True))
    hull = shapely.convex_hull(shapely.MultiPoint(points))
    assume(isinstance(hull, shapely.Polygon))
    return [(round(x), round(y)) for x, y in hull.exterior.coords[:-1]], []


@st.composite
def combs(draw: st.DrawFn) -> Shape:
    """Teeth of all lengths on a back: edges along the seams, several runs in a strip."""
    count = draw(st.integers(2, 6))
    ring, x = [(0, 100_000)], 0
    for k in range(count):
        foot = draw(st.integers(0, 60_000))
        ring.append((x, foot))
        x += draw(st.integers(500, 30_000))
        ring.append((x, foot))
        if k + 1 < count:
            top = draw(st.integers(60_001, 90_000))
            ring.append((x, top))
            x += draw(st.integers(500, 30_000))
            ring.append((x, top))
    return [*ring, (x, 100_000)], []


def length(tenths: int) -> Length:
    return Length.from_pm(tenths * TENTH_PM)


def points(ring: Ring) -> list[tuple[Length, Length]]:
    return [(length(x), length(y)) for x, y in ring]


def components(polygon: shapely.Polygon, left: float, right: float) -> list[shapely.Polygon]:
    """What the polygon has in a strip, from the foot up. Corners that touch the strip, and rounding, leave slivers of no size."""
    _, low, _, high = polygon.bounds
    found = shapely.get_parts(shapely.intersection(polygon, shapely.box(left, low - 1, right, high + 1)))
    whole = [part for part in found if part.area > 1e-9]
    return sorted(whole, key=lambda part: (round(part.bounds[1], 3), part.bounds[0]))


def clear(part: shapely.Polygon) -> Iterator[tuple[float, float]]:
    """The clear length at every x where it may bend, once from each side: between two such places it is straight."""
    _, low, _, high = part.bounds

    def at(x: float) -> float:
        _, foot, _, head = shapely.intersection(part, shapely.LineString([(x, low - 1), (x, high + 1)])).bounds
        return float(head - foot)

    xs = sorted({x for ring in (part.exterior, *part.interiors) for x, _ in ring.coords})
    for a, b in zip(xs, xs[1:], strict=False):
        # Vertices of the intersection that are one but for rounding have nothing between them.
        if b - a > 1e-7:
            quarter, three = at(a + (b - a) / 4), at(b - (b - a) / 4)
            yield a, quarter - (three - quarter) / 2
            yield b, three + (three - quarter) / 2


def compare(panel: LaidPanel, part: shapely.Polygon) -> None:
    lengths = list(clear(part))
    left, low, right, high = part.bounds
    # Beside the relative error there is that of a float's own step over the whole roof.
    assert math.isclose(panel.covered.get("mm2"), part.area, rel_tol=1e-9, abs_tol=1e-6)
    assert math.isclose(panel.left.get("mm"), left, abs_tol=NANOMETRE)
    assert math.isclose(panel.right.get("mm"), right, abs_tol=NANOMETRE)
    assert math.isclose(panel.finished.get("mm"), max(y for _, y in lengths), abs_tol=NANOMETRE)
    assert math.isclose(panel.blank.get("mm"), high - low, abs_tol=NANOMETRE)
    for side, (_, expected) in [(panel.left_length, lengths[0]), (panel.right_length, lengths[-1])]:
        assert math.isclose(0.0 if side is None else side.get("mm"), expected, abs_tol=NANOMETRE)


def check(shape: Shape, coverage: int, start: str, datum: int) -> None:
    outer, holes = shape
    polygon = shapely.Polygon([(x / 10, y / 10) for x, y in outer], [[(x / 10, y / 10) for x, y in hole] for hole in holes])
    outline = Outline(points(outer), [points(hole) for hole in holes])
    panel = Panel(length(coverage), "50 mm", Seam.double_lock("10 mm"))
    laid = Layout(outline, panel, Start.datum(length(datum)) if start == "datum" else start, [NOTHING] * len(outline.edges)).compute()

    # In half tenths, so that the middle is a whole number.
    low, high = 2 * min(x for x, _ in outer), 2 * max(x for x, _ in outer)
    seam = {"left": low, "right": high, "centre-seam": (low + high) // 2, "centre-panel": (low + high) // 2 + coverage, "datum": 2 * datum}[start]
    first = low - (low - seam) % (2 * coverage)
    edges = range(first, high + 2 * coverage, 2 * coverage)
    expected = [components(polygon, max(a, low) / 20, min(a + 2 * coverage, high) / 20) for a in edges if a < high]

    assert [x.pm for x in laid.seams] == [x * TENTH_PM // 2 for x in edges if low <= x <= high]
    assert [(p.strip, p.run) for p in laid.panels] == [(s, r) for s, parts in enumerate(expected) for r in range(len(parts))]
    for one in laid.panels:
        compare(one, expected[one.strip][one.run])
    assert math.isclose(laid.covered.get("mm2"), polygon.area, rel_tol=1e-9)
    assert laid.uncovered.get("mm2") == 0.0
    assert math.isclose(outline.area.get("mm2"), polygon.area, rel_tol=1e-9)


STARTS = st.sampled_from(["left", "right", "centre-seam", "centre-panel", "datum"])
COVERAGES = st.integers(6_000, 25_000)
DATUMS = st.integers(-400_000, 400_000)
few = settings(max_examples=80)


@few
@given(convex(), COVERAGES, STARTS, DATUMS)
@example(([(0, 0), (120_000, 0), (120_000, 60_000), (0, 60_000)], []), 12_000, "left", 0)
def test_convex_polygons(shape: Shape, coverage: int, start: str, datum: int) -> None:
    check(shape, coverage, start, datum)


@few
@given(stars(), COVERAGES, STARTS, DATUMS)
def test_polygons_of_any_form_with_holes(shape: Shape, coverage: int, start: str, datum: int) -> None:
    check(shape, coverage, start, datum)


@few
@given(combs(), COVERAGES, STARTS, DATUMS)
def test_edges_along_the_seams(shape: Shape, coverage: int, start: str, datum: int) -> None:
    check(shape, coverage, start, datum)


@few
@given(stars(), COVERAGES, STARTS, DATUMS)
def test_a_mirrored_plane_is_laid_in_mirror_image(shape: Shape, coverage: int, start: str, datum: int) -> None:
    outer, holes = shape
    panel = Panel(length(coverage), "50 mm", Seam.double_lock("10 mm"))

    def lay(sign: int, start: Start) -> list[tuple[int, int, int, int]]:
        outline = Outline(points([(sign * x, y) for x, y in outer]), [points([(sign * x, y) for x, y in hole]) for hole in holes])
        laid = Layout(outline, panel, start, [NOTHING] * len(outline.edges)).compute()
        spans = [sorted([sign * p.left.pm, sign * p.right.pm]) for p in laid.panels]
        return sorted((a, b, p.finished.pm, p.order.pm) for (a, b), p in zip(spans, laid.panels, strict=True))

    there = Start.datum(length(datum)) if start == "datum" else Start(start)
    opposite = {"left": "right", "right": "left"}
    back = Start.datum(length(-datum)) if start == "datum" else Start(opposite.get(start, start))
    assert lay(1, there) == lay(-1, back)
