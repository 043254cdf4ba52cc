"""Strips of many polygons in one call, against shapely and against NumPy."""

import sys
import threading
import time

import numpy as np
import numpy.typing as npt
import pytest
import shapely  # type: ignore[import-untyped]
from seamwright import InputError
from seamwright.layout import StripArrays, strips
from seamwright.units import Length

COVERAGE = 400.0


def stars(count: int, seed: int) -> list[shapely.Polygon]:
    """Rings about a centre, seldom convex, each with one hole or two; in tenths of a millimetre, so that both sides start from the same figures."""
    random = np.random.default_rng(seed)
    out = []
    for k in range(count):
        middle = random.uniform(-1e5, 1e5, 2)

        def ring(vertices: int, least: float, greatest: float, centre: npt.NDArray[np.float64] = middle) -> npt.NDArray[np.float64]:
            angles = 2 * np.pi * (np.arange(vertices) + random.uniform(0, 0.7, vertices)) / vertices
            radii = random.uniform(least, greatest, vertices)
            found: npt.NDArray[np.float64] = np.round(centre + np.stack([radii * np.cos(angles), radii * np.sin(angles)], axis=1), 1)
            return found

        # Neighbours stand at most 122 degrees apart, so every outer ring leaves a disc of 2500 cos 61 deg free, more than 1200.
        if k % 2:
            holes = [ring(int(random.integers(3, 9)), 80, 700)]
        else:
            holes = [ring(int(random.integers(3, 9)), 80, 400, middle + [x, x / 3]) for x in (-600, 600)]
        out.append(shapely.Polygon(ring(int(random.integers(5, 40)), 2500, 12000), holes))
    return out


def cut(polygons: list[shapely.Polygon], start: str = "left") -> StripArrays:
    _, coordinates, (rings, starts) = shapely.to_ragged_array(polygons)
    return strips(coordinates, rings, starts, f"{COVERAGE} mm", start, unit="mm")


def test_a_thousand_polygons_with_holes_against_shapely() -> None:
    polygons = stars(1000, 7)
    found = cut(polygons)
    at = 0
    for k, polygon in enumerate(polygons):
        low, foot, high, head = polygon.bounds
        edges = low + COVERAGE * np.arange(np.ceil((high - low) / COVERAGE) + 1)
        edges[-1] = high
        pieces = shapely.intersection(polygon, shapely.box(edges[:-1], foot - 1, edges[1:], head + 1))
        parts, strip = shapely.get_parts(pieces, return_index=True)
        # Corners that touch a strip, and rounding, leave slivers of no size.
        whole = shapely.area(parts) > 1e-6
        parts, strip = parts[whole], strip[whole]
        order = np.lexsort((np.round(shapely.bounds(parts)[:, 1], 3), strip))
        parts, strip = parts[order], strip[order]
        own = slice(at, at + len(parts))
        at += len(parts)
        assert (found.polygon[own] == k).all() and (found.strip[own] == strip).all()
        bounds = shapely.bounds(parts)
        for column, expected in [(found.left, 0), (found.foot, 1), (found.right, 2), (found.head, 3)]:
            assert np.allclose(column[own], bounds[:, expected], rtol=0, atol=1e-6)
        assert np.allclose(found.area[own], shapely.area(parts), rtol=1e-9, atol=1e-3)
    assert at == len(found)
    sums = np.bincount(found.polygon, found.area)
    assert np.allclose(sums, shapely.area(polygons), rtol=1e-9)
    # Runs count from the foot, and start anew in each strip.
    anew = (np.diff(found.polygon, prepend=-1) != 0) | (np.diff(found.strip, prepend=-1) != 0)
    assert ((found.run == 0) == anew).all()


def test_clear_lengths_of_a_hip_against_its_closed_form() -> None:
    # A right triangle of 12 m by 9 m: the line falls by 3/4 from the left.
    found = strips([[0, 0], [12, 0], [0, 9]], [0, 3], [0, 1], Length("500 mm"), "left", unit="m")
    assert np.allclose(found.clear, 9 - 0.75 * found.left)
    assert np.allclose(found.head, found.clear) and (found.foot == 0).all()
    assert np.allclose(found.area.sum(), 54)


def test_units_and_starts() -> None:
    square = [[0, 0], [40, 0], [40, 90], [0, 90]]
    inches = strips(square, [0, 4], [0, 1], '16"', "right", unit="in")
    assert np.allclose(inches.left, [0, 8, 24], atol=1e-12) and np.allclose(inches.right, [8, 24, 40])
    assert np.allclose(inches.area, [720, 1440, 1440]) and repr(inches) == "<StripArrays of 3 runs>"
    assert inches.polygon.dtype == np.uint32


def test_nothing_gives_nothing() -> None:
    assert len(strips(np.empty((0, 2)), [0], [0], '16"', "left", unit="in")) == 0


def test_every_bad_polygon_is_named() -> None:
    coordinates: npt.NDArray[np.float64] = np.array([[0, 0], [1, 1], [1, 0], [0, 1.5], [0, 0], [1, 0], [1, 1], [5, 5], [6, 5], [6, 6]], dtype=float)
    with pytest.raises(InputError, match=r"polygons\[0\]\.outer\[0\]") as refused:
        strips(coordinates, [0, 4, 7, 10, 10], [0, 1, 2, 3, 4], "400 mm", "left", unit="m")
    assert [e.path for e in (refused.value, *refused.value.others)] == ["polygons[0].outer[0]", "polygons[3].outer"]
    with pytest.raises(InputError, match=r"rings\[1\]"):
        strips(coordinates, [0, 99], [0, 1], "400 mm", "left", unit="m")
    with pytest.raises(InputError, match="coverage"):
        strips(coordinates[4:7], [0, 3], [0, 1], "0 mm", "left", unit="m")


def test_arrays_of_other_kinds_are_refused() -> None:
    triangle = [[0, 0], [1, 0], [1, 1]]
    with pytest.raises(TypeError, match="coordinates: x and y of each vertex"):
        strips([0, 0, 1, 0, 1, 1], [0, 3], [0, 1], "400 mm", "left", unit="m")
    with pytest.raises(TypeError, match="rings: whole numbers"):
        strips(triangle, [0.0, 3.0], [0, 1], "400 mm", "left", unit="m")
    with pytest.raises(ValueError, match="polygons: no place is less than 0"):
        strips(triangle, [0, 3], [-1, 1], "400 mm", "left", unit="m")
    with pytest.raises(TypeError, match="masked"):
        strips(np.ma.masked_greater(np.array(triangle, dtype=float), 0.5), [0, 3], [0, 1], "400 mm", "left", unit="m")


def test_other_threads_run_meanwhile() -> None:
    _, coordinates, (rings, starts) = shapely.to_ragged_array(stars(300, 3) * 4)
    done, counted, interval = threading.Event(), [0], sys.getswitchinterval()

    def count() -> None:
        while not done.is_set():
            counted[0] += 1
            time.sleep(0)

    thread = threading.Thread(target=count)
    thread.start()
    # From here on nobody takes the interpreter's lock from a thread that holds it: the counter moves only while it is given away.
    sys.setswitchinterval(1000)
    try:
        moved = False
        for _ in range(100):
            before = counted[0]
            strips(coordinates, rings, starts, f"{COVERAGE} mm", "left", unit="mm")
            moved = counted[0] > before
            if moved:
                break
    finally:
        sys.setswitchinterval(interval)
        done.set()
        thread.join()
    assert moved
