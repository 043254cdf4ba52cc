"""A kick-out's blank, folded up with NumPy by its bend lines alone, and its area by shapely."""

import math
from typing import Any

import numpy as np
import pytest
import shapely
from seamwright.junction import KickOut, KickOutPiece

UPPER = ("flange's edge, upper end", "flange's edge, at the notch", "turn, at the fold", "fold, upper end")


def made(rise: int, past: int, wall: str, tab: str = "1 in") -> KickOutPiece:
    detail = {"throw": "4 in", "past_eave": f"{past} in", "tab": tab}
    sheet = {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    return KickOut.from_dict({"pitch": f"{rise}:12", "sheet": sheet, "flange": "4 in", "leg": "8 in", "wall": wall, "detail": detail}).compute()


def turn(bend: Any, beyond: np.ndarray) -> Any:
    """The rotation about a bend line that takes what lies beyond it up, or down."""
    ((a, b),) = [tuple(np.array([p[0].get("mm"), p[1].get("mm"), 0.0]) for p in line) for line in bend.lines]
    axis = (b - a) / np.linalg.norm(b - a)
    way = np.sign(np.cross(axis, beyond - a)[2]) * (1 if bend.direction == "up" else -1)
    angle = math.radians(way * bend.angle.degrees)
    k = np.array([[0, -axis[2], axis[1]], [axis[2], 0, -axis[0]], [-axis[1], axis[0], 0]])
    matrix = np.eye(3) + math.sin(angle) * k + (1 - math.cos(angle)) * (k @ k)
    return lambda p: a + matrix @ (p - a)


@pytest.mark.parametrize("wall", ["left", "right"])
@pytest.mark.parametrize(("rise", "past"), [(0, 4), (3, 3), (4, 3), (8, 2), (12, 5), (18, 3)])
def test_the_blank_folds_to_what_it_says(rise: int, past: int, wall: str) -> None:
    piece = made(rise, past, wall)
    flat = {name: np.array([at[0].get("mm"), at[1].get("mm"), 0.0]) for name, at, _ in piece.corners}
    space = {name: np.array([x.get("mm") for x in at]) for name, _, at in piece.corners}
    leg = turn(piece.blank.bends[0], flat["leg, upper end"])
    off = turn(piece.blank.bends[1], flat["outer end, top"])
    apron = turn(piece.blank.bends[2], flat["apron's edge, lower end"])
    faces = dict.fromkeys(UPPER, lambda p: p)
    faces |= dict.fromkeys(("leg, upper end", "turn, top"), leg)
    faces |= dict.fromkeys(("outer end, top", "outer end, at the fold"), lambda p: leg(off(p)))
    faces |= dict.fromkeys(("apron's edge, at the notch", "apron's edge, lower end"), lambda p: leg(off(apron(p))))
    slope = math.atan(rise / 12)
    up_slope = 1 if wall == "right" else -1
    for name, face in faces.items():
        x, y, z = face(flat[name]) - flat["turn, at the fold"]
        y *= up_slope
        folded = np.array([-x, -y * math.cos(slope) + z * math.sin(slope), y * math.sin(slope) + z * math.cos(slope)])
        assert np.allclose(folded, space[name], rtol=0, atol=1e-6), name
    # Thrown so far, and so far past the eave; the turned leg plumb, the apron's lower edge level.
    assert np.allclose(space["outer end, at the fold"][:2], [101.6, 25.4 * past], rtol=0, atol=1e-6)
    assert np.allclose(space["outer end, top"][:2], space["outer end, at the fold"][:2], rtol=0, atol=1e-6)
    assert np.allclose(space["apron's edge, lower end"][1:], space["outer end, at the fold"][1:], rtol=0, atol=1e-6)


def test_the_blank_is_one_simple_piece() -> None:
    for wall in ("left", "right"):
        blank = made(6, 3, wall).blank
        polygon = shapely.Polygon([(x.get("mm"), y.get("mm")) for x, y in blank.points("0.1 mm")])
        assert polygon.is_valid and polygon.exterior.is_ccw
        assert math.isclose(polygon.area, blank.area.get("mm2"), rel_tol=1e-9)
        # The tab fills its part of the notch; without it the blank is less by just that.
        tab = [n for n, _, _ in made(6, 3, wall).corners if n.startswith("tab")]
        bare = shapely.Polygon([(x.get("mm"), y.get("mm")) for x, y in made(6, 3, wall, "0 in").blank.points("0.1 mm")])
        assert len(tab) == 3 and polygon.covers(bare.buffer(-1e-6)) and polygon.area > bare.area
