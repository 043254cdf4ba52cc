"""End caps against shapely: the hollow under a trim and over the pans, and what the tabs add to it."""

import math
from collections import Counter

import pytest
import shapely
from demo import packet
from hypothesis import given, settings
from hypothesis import strategies as st
from seamwright.junction import CapBlank, CapOutline
from seamwright.units import Length

SHEET = {"thickness": "0.6 mm", "inside_radius": "0.8 mm"}
FAR = 1e4


def mm(length: Length) -> float:
    return length.get("mm")


def made(trim: list[tuple[float, float]], pans: list[tuple[float, float]], tab: float) -> CapBlank:
    corners = [{"x": f"{x} mm", "z": f"{z} mm"} for x, z in trim]
    on = [{"rise": f"{rise} deg", "height": f"{height} mm"} for rise, height in pans]
    return CapOutline.from_dict({"corners": corners, "sheet": SHEET, "on": on, "tab": f"{tab} mm"}).compute()


def face(cap: CapBlank) -> shapely.Polygon:
    return shapely.Polygon([(mm(x), mm(z)) for x, z in cap.face])


def blank(cap: CapBlank) -> shapely.Polygon:
    return shapely.Polygon([(mm(e.start[0]), mm(e.start[1])) for e in cap.blank.outline])


def over(rise: float, height: float) -> shapely.Polygon:
    """What stands over a pan, as far as one looks."""
    t, start = math.tan(math.radians(rise)), height / math.cos(math.radians(rise))
    return shapely.Polygon([(-FAR, start - t * FAR), (FAR, start + t * FAR), (FAR, FAR * 9), (-FAR, FAR * 9)])


@settings(max_examples=200, deadline=None)
@given(st.floats(5, 40), st.floats(5, 40), st.floats(0, 20), st.floats(0, 20), st.lists(st.integers(30, 200), min_size=2, max_size=5), st.integers(0, 20))
def test_the_face_is_the_hollow_that_shapely_finds(a: float, b: float, h1: float, h2: float, steps: list[int], tab: int) -> None:
    a, b, h1, h2 = (round(v, 3) for v in (a, b, h1, h2))
    trim = [(-400.0, -2000.0)]
    x = -380.0
    for i, step in enumerate(steps):
        trim.append((x, 80.0 + 30 * (i % 2)))
        x += step
    trim.append((x + 20, -2000.0))
    cap = made(trim, [(a, h1), (-b, h2)], tab)
    under = shapely.Polygon([*trim, (trim[-1][0], -FAR), (trim[0][0], -FAR)])
    # At a ridge both pans fall from where they meet: over either of them is over the ground.
    hollow = under.intersection(over(a, h1).union(over(-b, h2)))
    assert face(cap).is_valid and hollow.symmetric_difference(face(cap)).area < 1e-6 * hollow.area
    # Each tab is as wide as it is said to be, with mitred ends: what they add lies apart, and is no more than they would be square.
    tabs = blank(cap).area - face(cap).area
    assert blank(cap).is_valid and len(cap.blank.bends) == cap.tabs
    lengths = [math.dist(*[(mm(p[0]), mm(p[1])) for p in bend.lines[0]]) for bend in cap.blank.bends]
    assert tabs <= tab * sum(lengths) + 1e-6 and (tabs == pytest.approx(0, abs=1e-6) or tabs > tab * sum(lengths) / 2 - 1e-6)


def test_every_capped_end_of_the_demo_has_its_blank() -> None:
    p = packet()
    pieces = {piece.mark: piece for piece in p.cap_pieces}
    counts: Counter[str] = Counter()
    for cap in p.end_caps:
        assert cap.piece is not None and pieces[cap.piece].trim_mark == cap.mark and pieces[cap.piece].trim == cap.trim
        counts[cap.piece] += 1
    assert set(counts) == set(pieces)
    for piece in pieces.values():
        assert face(piece.made).is_valid and blank(piece.made).is_valid
        assert blank(piece.made).convex_hull.area >= face(piece.made).area
        assert sum(line.count for line in p.order if line.mark == piece.mark) == counts[piece.mark]


def test_a_ridge_cap_hollow_of_the_demo_by_hand() -> None:
    p = packet()
    (cap,) = {c.piece for c in p.end_caps if c.name == "ridge 1"}
    (piece,) = [c for c in p.cap_pieces if c.mark == cap]
    ridge = p.junction("ridge 1")
    assert ridge is not None
    top = max(mm(c.z) for t in ridge.section.trims if t.name == "ridge cap" for c in t.corners)
    levels = ridge.first.levels
    pan = mm(levels.underlayment) + mm(levels.stand_off) + mm(levels.pan)
    # At its peak the hollow is as high as the cap is over the pans, which meet plumb under it.
    assert mm(piece.made.height) == pytest.approx(top - pan / math.cos(math.radians(abs(ridge.first.rise.degrees))), abs=1e-6)
