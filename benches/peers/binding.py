"""What the library takes through its Python package, in nanoseconds: processor time, the median of several runs. Prints a JSON object."""

import json
import sys

import girths
import numpy as np
import polygons
import shapely
from peers import median
from seamwright import layout, trim


def profile(degrees: list[float]) -> trim.Profile:
    ends = ["sheet-edge"] + ["outer-corner"] * 16 + ["sheet-edge"]
    legs = [trim.Leg(str(i), "1 in", ends[2 * i], ends[2 * i + 1]) for i in range(9)]
    bends = [trim.Bend(f"{d} deg", "down" if i % 2 else "up", "0.03 in") for i, d in enumerate(degrees)]
    return trim.Profile("0.024 in", legs, bends, "upper")


def main() -> None:
    told: dict[str, float] = {}
    rules = {"neutral axis": trim.BendRule.neutral_axis(trim.NeutralFactor(girths.FACTOR)), "DIN 6935": trim.BendRule.din_6935()}
    t, r = girths.elements()
    for shape, degrees in girths.SHAPES.items():
        made = profile(degrees)
        for name, rule in rules.items():
            pattern = trim.FlatPattern(made, rule)
            told[f"8 {shape} bends, {name}, Profile.unfold"] = median(lambda: [made.unfold(rule) for _ in range(2000)], 15, 2000)
            told[f"8 {shape} bends, {name}, FlatPattern.compute"] = median(lambda: [pattern.compute() for _ in range(2000)], 15, 2000)
            told[f"8 {shape} bends, {name}, girth and bend lines read"] = median(
                lambda: [(flat.girth, [b.line for b in flat.bends]) for flat in (made.unfold(rule) for _ in range(2000))], 15, 2000
            )
            told[f"a million girths, 8 {shape} bends, {name}"] = median(lambda: trim.girths(made, rule, t, r, unit="mm"), 9)
    for name, by_bends, _ in girths.works():
        shape, rule = next((s, n) for s in girths.SHAPES for n in rules if s in name and name.endswith(n))
        assert np.allclose(by_bends(), trim.girths(profile(girths.SHAPES[shape]), rules[rule], t, r, unit="mm"), rtol=0, atol=1e-10), name
    for form in polygons.FORMS:
        given = polygons.polygons(form)
        _, coordinates, (rings, starts) = shapely.to_ragged_array(given)
        lay = lambda: layout.strips(coordinates, rings, starts, f"{polygons.COVERAGE} mm", "left", unit="mm")  # noqa: E731
        told[polygons.name(form)] = median(lay, 9)
        found, cut = lay(), polygons.by_intersection(given)
        # Where a corner touches a strip, shapely leaves a point or a line.
        assert len(found) == np.count_nonzero(shapely.area(shapely.get_parts(cut.ravel()))), form
        sums = np.zeros(cut.shape)
        np.add.at(sums, (found.polygon, found.strip), found.area)
        assert np.allclose(sums, shapely.area(cut), rtol=1e-9, atol=1e-6), form
    json.dump(told, sys.stdout)


if __name__ == "__main__":
    main()
