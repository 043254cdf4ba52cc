"""Puts the medians of criterion and of the peers side by side. Arguments: criterion's folder, the peers' JSON file, and that of the Python package."""

import json
import sys
from pathlib import Path

from polygons import COUNT, FORMS, PANELS, name

# The Rust bench, the plain Python peer, the array peer.
ROWS = [
    ("parse tape", "parse tape", None),
    ("parse inches", "parse inches", None),
    ("parse decimal", "parse decimal", None),
    ("parse metric", "parse metric", None),
    ("format ft-in/16", "format ft-in/16", None),
    ("format mm.1", "format mm.1", None),
    ("8 square bends, neutral axis, recorder off", "8 square bends", "8 square bends (arrays)"),
    ("8 square bends, neutral axis, without the trait", "8 square bends", "8 square bends (arrays)"),
    ("8 square bends, neutral axis, with the folded outline", None, None),
    ("8 different bends, neutral axis, recorder off", "8 different bends", "8 different bends (arrays)"),
    ("8 different bends, neutral axis, without the trait", "8 different bends", "8 different bends (arrays)"),
    ("8 square bends, DIN 6935, recorder off", None, None),
    ("8 different bends, DIN 6935, recorder off", None, None),
    ("30 strips of a plane", None, "30 strips of a plane"),
    ("roofs/100000 panels, listed and marked", None, None),
    ("roofs/lines of 10000 faces in a square", None, None),
    ("roofs/lines of 10000 faces in a row", None, None),
    ("demo job, read", None, None),
    ("demo job, worked out", None, None),
    ("demo job, read and worked out", None, None),
    ("demo job, with worksheet", None, None),
    ("demo job, packet as JSON", None, None),
]


# A million elements in one call.
BATCHES = [f"a million girths, 8 {shape} bends, {rule}" for shape in ("square", "different") for rule in ("neutral axis", "DIN 6935")]


def told(ns: float | None) -> str:
    if ns is None:
        return "-"
    return f"{ns:.1f} ns" if ns < 1e3 else f"{ns / 1e3:.2f} us" if ns < 1e6 else f"{ns / 1e6:.2f} ms"


def ratio(peer: float | None, own: float) -> str:
    return "-" if peer is None else f"{peer / own:.1f}"


def main() -> None:
    folder, peers, binding = Path(sys.argv[1]), *(json.loads(Path(name).read_text()) for name in sys.argv[2:4])
    own = {}
    for found in folder.glob("**/new/benchmark.json"):
        called = json.loads(found.read_text())["full_id"]
        own[called] = json.loads(found.with_name("estimates.json").read_text())["median"]["point_estimate"]
    print(f"{'':52} {'Rust':>10} {'Python':>10} {'ratio':>7} {'NumPy':>10} {'ratio':>7}")
    for row, plain, arrays in ROWS:
        if row not in own:
            print(f"{row:52} not measured")
            continue
        p, a = peers[plain] if plain else None, peers[arrays] if arrays else None
        print(f"{row:52} {told(own[row]):>10} {told(p):>10} {ratio(p, own[row]):>7} {told(a):>10} {ratio(a, own[row]):>7}")
    print("Strips: the peer is shapely's intersection alone; the Rust figure includes lengths, marks and groups.")

    print(f"\n{'':52} {'Rust':>10} {'by bends':>10} {'ratio':>7} {'folded':>10} {'ratio':>7} {'binding':>10} {'ratio':>7}")
    for row in BATCHES:
        if row not in own:
            print(f"{row:52} not measured")
            continue
        a, f, b = peers[row], peers[f"{row} (folded)"], binding.pop(row)
        figures = (f"{told(a):>10} {ratio(a, own[row]):>7}", f"{told(f):>10} {ratio(f, own[row]):>7}", f"{told(b):>10} {ratio(a, b):>7}")
        print(f"{row:52} {told(own[row]):>10} {' '.join(figures)}")
    print("By bends: NumPy as one would write it. Folded: NumPy folded by hand and in blocks. Binding: seamwright.trim.girths, beside NumPy by bends.")
    print(f"\n{'':52} {'Rust':>10} {'intersect':>10} {'ratio':>7} {'clip':>10} {'ratio':>7} {'binding':>10} {'ratio':>7}")
    strips = [name(form) for form in FORMS]
    for row in strips:
        if row not in own:
            print(f"{row:52} not measured")
            continue
        each = COUNT * PANELS
        whole, clipped, mine, through = (ns / each for ns in (peers[f"{row}, intersection"], peers[f"{row}, clip_by_rect"], own[row], binding[row]))
        figures = (f"{told(whole):>10} {ratio(whole, mine):>7}", f"{told(clipped):>10} {ratio(clipped, mine):>7}", f"{told(through):>10} {ratio(clipped, through):>7}")
        print(f"{row:52} {told(mine):>10} {' '.join(figures)}")
    print("A strip each. Shapely's intersection and its clip_by_rect, both over arrays; the shapes alone. Binding: seamwright.layout.strips, beside clip_by_rect.")
    print("\nThrough the Python package")
    for row, ns in binding.items():
        if row not in [*BATCHES, *strips]:
            print(f"{row:52} {told(ns):>10}")


if __name__ == "__main__":
    main()
