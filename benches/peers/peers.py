"""The same work as the Rust benches in plain Python and, where arrays make sense, in NumPy.

Prints a JSON object of nanoseconds by piece of work: processor time, the median of several runs. Nothing here uses the
library. It is what a user would write instead: exact fractions for lengths, floats for geometry.
"""

import json
import math
import re
import statistics
import time
from fractions import Fraction

import girths
import numpy as np
import polygons
import shapely

INCH = Fraction(25_400_000_000)
UNITS = {"mm": Fraction(10**9), "m": Fraction(10**12), "in": INCH, '"': INCH, "ft": 12 * INCH, "'": 12 * INCH}
NUMBER = r"\d+(?:\.\d+)?(?:[ -]\d+/\d+)?|\d+/\d+"
LENGTH = re.compile(rf"""\s*(-?)(?:(\d+)\s*(?:'|ft)\s*-?\s*)?({NUMBER})\s*(mm|m|in|ft|"|')\s*""")
# The notations of the Rust bench, and as many of each.
NOTATIONS = {"tape": "12'-3 5/8\"", "inches": '147 5/8"', "decimal": "12ft 3.625in", "metric": "3749.675 mm"}
PICOMETRES = 3_749_675_000_000


def number(text: str) -> Fraction:
    whole, _, part = text.replace("-", " ").rpartition(" ")
    return Fraction(part) + int(whole or 0)


def parse(text: str) -> int:
    found = LENGTH.fullmatch(text)
    if not found:
        raise ValueError(text)
    sign, feet, rest, unit = found.groups()
    total = int(feet or 0) * UNITS["ft"] + number(rest) * UNITS[unit]
    return round(-total if sign else total)


def format_feet(pm: int, denominator: int) -> str:
    parts = round(Fraction(pm * denominator) / INCH)
    feet, rest = divmod(abs(parts), 12 * denominator)
    inches, numerator = divmod(rest, denominator)
    sign = "-" if parts < 0 else ""
    if numerator == 0:
        return f"{sign}{feet}'-{inches}\""
    fraction = Fraction(numerator, denominator)
    return f"{sign}{feet}'-{f'{inches} ' if inches else ''}{fraction.numerator}/{fraction.denominator}\""


def unfold(legs: list[float], bends: list[float], radius: float, thickness: float, factor: float) -> tuple[float, list[float]]:
    """Girth and bend lines under the neutral-axis rule, legs measured to the outer corners."""
    at, setback, lines = 0.0, 0.0, []
    for leg, degrees in zip(legs, bends):
        angle = math.radians(degrees)
        following = (radius + thickness) * math.tan(angle / 2)
        allowance = angle * (radius + factor * thickness)
        at += leg - setback - following
        lines.append(at + allowance / 2)
        at += allowance
        setback = following
    return at + legs[-1] - setback, lines


def unfold_arrays(legs: np.ndarray, bends: np.ndarray, radius: float, thickness: float, factor: float) -> tuple[np.ndarray, np.ndarray]:
    """The same for many profiles at once: one row a profile."""
    angles = np.radians(bends)
    setbacks = (radius + thickness) * np.tan(angles / 2)
    allowances = angles * (radius + factor * thickness)
    flats = legs.copy()
    flats[:, 1:] -= setbacks
    flats[:, :-1] -= setbacks
    ends = np.cumsum(flats[:, :-1], axis=1) + np.cumsum(allowances, axis=1)
    return ends[:, -1] + flats[:, -1], ends - allowances / 2


# The plane of the Rust bench, in inches: a gable with an opening.
OUTLINE = [(0, 0), (480, 0), (480, 120), (240, 240), (0, 120)]
OPENING = [(196, 40), (236, 40), (236, 80), (196, 80)]
COVERAGE = 16.0


def strips(plane: shapely.Polygon) -> np.ndarray:
    """Lower and upper end of every piece of every strip, all strips at once."""
    left, bottom, right, top = plane.bounds
    at = left + COVERAGE * np.arange(math.ceil((right - left) / COVERAGE))
    pieces = shapely.get_parts(shapely.intersection(plane, shapely.box(at, bottom, at + COVERAGE, top)))
    return shapely.bounds(pieces)[:, [1, 3]]


def median(work, times: int, each: int = 1) -> float:
    """Nanoseconds for one of `each` like pieces of work."""
    work()
    taken = []
    for _ in range(times):
        start = time.process_time_ns()
        work()
        taken.append((time.process_time_ns() - start) / each)
    return statistics.median(taken)


def check() -> None:
    for text in NOTATIONS.values():
        assert parse(text) == PICOMETRES, text
    assert format_feet(PICOMETRES, 16) == NOTATIONS["tape"]
    girth, lines = unfold([25.4] * 9, [90.0] * 8, 0.762, 0.6096, 0.44)
    many = unfold_arrays(np.full((2, 9), 25.4), np.full((2, 8), 90.0), 0.762, 0.6096, 0.44)
    assert len(strips(shapely.Polygon(OUTLINE, [OPENING]))) >= 30
    assert np.allclose(many[0], girth) and np.allclose(many[1][1], lines)


def main() -> None:
    check()
    girths.check()
    told: dict[str, float] = {}
    for name, text in NOTATIONS.items():
        texts = [text] * 10_000
        told[f"parse {name}"] = median(lambda: [parse(t) for t in texts], 7, len(texts))
    lengths = [PICOMETRES] * 10_000
    told["format ft-in/16"] = median(lambda: [format_feet(l, 16) for l in lengths], 7, len(lengths))
    told["format mm.1"] = median(lambda: [f"{l / 1e9:.1f} mm" for l in lengths], 7, len(lengths))
    for shape, degrees in (("square", [90.0] * 8), ("different", [30.0, 45.0, 60.0, 75.0, 90.0, 100.0, 110.0, 120.0])):
        legs = [25.4] * 9
        told[f"8 {shape} bends"] = median(lambda: [unfold(legs, degrees, 0.762, 0.6096, 0.44) for _ in range(1000)], 11, 1000)
        rows, turns = np.full((10_000, 9), 25.4), np.tile(degrees, (10_000, 1))
        told[f"8 {shape} bends (arrays)"] = median(lambda: unfold_arrays(rows, turns, 0.762, 0.6096, 0.44), 11, 10_000)
    for name, by_bends, folded in girths.works():
        told[name] = median(by_bends, 7)
        told[f"{name} (folded)"] = median(folded, 11)
    polygon = shapely.Polygon(OUTLINE, [OPENING])
    told["30 strips of a plane"] = median(lambda: [strips(polygon) for _ in range(10)], 11, 10)
    for name, whole, clipped in polygons.works():
        told[f"{name}, intersection"] = median(whole, 5)
        told[f"{name}, clip_by_rect"] = median(clipped, 7)
    print(json.dumps(told))


if __name__ == "__main__":
    main()
