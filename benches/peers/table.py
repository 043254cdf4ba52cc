"""Puts the medians of criterion and of the peers side by side. Arguments: criterion's folder, the peers' JSON file."""

import json
import sys
from pathlib import Path

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
    ("demo job, read", None, None),
    ("demo job, worked out", None, None),
    ("demo job, read and worked out", None, None),
    ("demo job, with worksheet", None, None),
    ("demo job, packet as JSON", None, None),
]


def told(ns: float | None) -> str:
    if ns is None:
        return "-"
    return f"{ns:.1f} ns" if ns < 1e3 else f"{ns / 1e3:.2f} us" if ns < 1e6 else f"{ns / 1e6:.2f} ms"


def ratio(peer: float | None, own: float) -> str:
    return "-" if peer is None else f"{peer / own:.1f}"


def main() -> None:
    folder, peers = Path(sys.argv[1]), json.loads(Path(sys.argv[2]).read_text())
    own = {}
    for found in folder.glob("*/new/benchmark.json"):
        name = json.loads(found.read_text())["full_id"]
        own[name] = json.loads(found.with_name("estimates.json").read_text())["median"]["point_estimate"]
    print(f"{'':52} {'Rust':>10} {'Python':>10} {'ratio':>7} {'NumPy':>10} {'ratio':>7}")
    for name, plain, arrays in ROWS:
        if name not in own:
            print(f"{name:52} not measured")
            continue
        p, a = peers[plain] if plain else None, peers[arrays] if arrays else None
        print(f"{name:52} {told(own[name]):>10} {told(p):>10} {ratio(p, own[name]):>7} {told(a):>10} {ratio(a, own[name]):>7}")
    print("Strips: the peer is shapely's intersection alone; the Rust figure includes lengths, marks and groups.")


if __name__ == "__main__":
    main()
