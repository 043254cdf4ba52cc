"""The polygons whose strips are timed: the same as in `benches/src/polygons.rs`, so that both sides cut the same shapes."""

import math
from collections.abc import Callable, Iterator

import numpy as np
import shapely

COUNT, PANELS, COVERAGE = 1000, 50, 400
FORMS = [(4, 0), (12, 0), (12, 4), (99, 0)]
Point = tuple[float, float]


def name(form: tuple[int, int]) -> str:
    return f"{COUNT} polygons of {form[0]} vertices{' and a hole' if form[1] else ''}, {PANELS} strips each"


def draws() -> Iterator[float]:
    state = 20_240_229
    while True:
        state = (state * 6_364_136_223_846_793_005 + 1_442_695_040_888_963_407) % 2**64
        yield (state >> 32) / 2**32


def star(count: int, least: float, greatest: float, draw: Iterator[float]) -> list[Point]:
    ring = []
    for k in range(count):
        angle = 2 * math.pi * (k + 0.6 * next(draw)) / count
        radius = least + (greatest - least) * next(draw)
        ring.append((radius * math.cos(angle), radius * math.cos(angle - math.pi / 2)))
    return ring


def polygons(form: tuple[int, int]) -> np.ndarray:
    draw, out = draws(), []
    for _ in range(COUNT):
        outer = star(form[0], 600, 1000, draw)
        low = min(x for x, _ in outer)
        by = PANELS * COVERAGE / (max(x for x, _ in outer) - low)
        hole = [star(form[1], 100, 300, draw)] if form[1] else []
        rings = [[(math.floor((x - low) * by * 10 + 0.5) / 10, math.floor(y * 100 + 0.5) / 10) for x, y in ring] for ring in [outer, *hole]]
        out.append(shapely.Polygon(rings[0], rings[1:]))
    return np.array(out)


def edges() -> np.ndarray:
    return COVERAGE * np.arange(PANELS + 1.0)


def by_intersection(given: np.ndarray) -> np.ndarray:
    """Every polygon with every strip, in one call."""
    at = edges()
    return shapely.intersection(given[:, None], shapely.box(at[:-1], -2e4, at[1:], 2e4)[None, :])


def by_clip(given: np.ndarray) -> list[np.ndarray]:
    """All polygons at once, strip by strip: the rectangle of a call is one for all its polygons."""
    at = edges()
    return [shapely.clip_by_rect(given, a, -2e4, b, 2e4) for a, b in zip(at, at[1:])]


def works() -> Iterator[tuple[str, Callable[[], object], Callable[[], object]]]:
    for form in FORMS:
        given = polygons(form)
        shapely.prepare(given)
        yield name(form), lambda given=given: by_intersection(given), lambda given=given: by_clip(given)
