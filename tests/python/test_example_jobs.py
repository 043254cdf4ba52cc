"""The example jobs against the figures that `tests/jobs` holds, which are what Rust gives: through the packet's document, and through its classes."""

import json
import pickle
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from seamwright.job import Job, Packet
from seamwright.units import Length

ROOT = Path(__file__).resolve().parents[2]
JOBS = ("annexe", "ropewalk", "maltings")
# Parts of a packet whose classes have the names of its document all the way down.
TYPED = re.compile(
    r"(paperwork|metals|temperatures|summary|copings|coping_corners|pipes|end_caps|clips|order)\b"
    r"|planes\[\d+\]\.(name|laid\.(groups|panels))|junctions\[\d+\]\.(name|kind|along\.length|section|moves|rides|along\.struck)|trims\[\d+\]"
)
# What a class says with one attribute more, or names by itself: an end of a run with the number or the name of what it meets, a source in words.
OWN = re.compile(r"\.run\.ends\[|\.source|\.rule\.spaced|\.pieces\.plate\b")


def packets() -> Iterator[tuple[str, Packet]]:
    for name in JOBS:
        yield name, Job.from_json((ROOT / "core" / "examples" / f"{name}_job.json").read_bytes()).compute()


PACKETS = dict(packets())


def figures(name: str) -> list[tuple[str, str]]:
    text = (ROOT / "tests" / "jobs" / f"{name}.figures").read_text(encoding="ascii")
    return [(path, value) for path, _, value in (line.partition(" = ") for line in text.splitlines())]


def steps(path: str) -> list[str | int]:
    return [int(number) if number else field for field, number in re.findall(r"([a-z0-9_-]+)|\[(\d+)\]", path)]


def at(place: Any, path: str) -> Any:
    for step in steps(path):
        if step == "count" and isinstance(place, (list, tuple)):
            return len(place)
        if isinstance(step, int) or isinstance(place, dict):
            place = place[step]
        else:
            place = getattr(place, step)
    return place


def text(value: Any) -> str:
    return {True: "true", False: "false", None: "null"}[value] if value is None or isinstance(value, bool) else str(value)


@pytest.mark.parametrize("name", JOBS)
def test_the_document_gives_the_pinned_figures(name: str) -> None:
    document, held = PACKETS[name].to_dict(), figures(name)
    assert len(held) > 1000
    assert [(path, text(at(document, path))) for path, _ in held] == held


@pytest.mark.parametrize("name", JOBS)
def test_the_classes_give_the_same_figures(name: str) -> None:
    held = [(path, value) for path, value in figures(name) if TYPED.match(path) and not OWN.search(path)]
    assert len(held) > 700
    assert [(path, text(at(PACKETS[name], path))) for path, _ in held] == held


def test_the_jobs_have_what_they_are_examples_of() -> None:
    annexe, ropewalk = PACKETS["annexe"], PACKETS["ropewalk"]
    assert (len(annexe.copings), len(annexe.coping_corners), len(annexe.pipes)) == (2, 1, 1) and "step" in {j.kind for j in annexe.junctions}
    assert "expansion-across" in {j.kind for j in PACKETS["maltings"].junctions}
    assert "expansion-along" in {j.kind for j in ropewalk.junctions} and not (ropewalk.copings or ropewalk.coping_corners or ropewalk.pipes)


def test_trims_that_cross_a_joint_slide_by_what_it_opens() -> None:
    """Steel moves 6.7e-6 of its length for each degF, as handbooks have it: 122 ft over 90 degF."""
    packet = PACKETS["ropewalk"]
    joint = next(j for j in packet.junctions if j.name == "expansion joint 1")
    assert joint.moves is not None and abs(joint.moves.opens.get("in") - 6.7e-6 * 122 * 12 * 90) < 1e-6 and joint.moves.opens == joint.moves.closes
    (eaves,) = [(c, p) for c in packet.corners.corners for p in c.pairs if p.rule == "slides" and "eave" in p.first and p.joint == joint.name]
    corner, pair = eaves
    assert (pair.over, {pair.first, pair.second}) == ("eave 1", {"eave 1", "eave 2"})
    laps = {line.name: line.allowance for line in corner.lines}
    assert laps["eave 1"] == joint.moves.opens + Length("4 in") and laps["eave 2"] == Length("0 in")
    assert all(j.moves is None for j in packet.junctions if not j.kind.startswith("expansion"))


def riding() -> Packet:
    """The ropewalk, its ridge's closures fixed to panels that are themselves fixed at the eaves."""
    job: dict[str, Any] = json.loads((ROOT / "core" / "examples" / "ropewalk_job.json").read_text(encoding="utf-8"))
    for kind in job["junctions"]["kinds"]:
        for side in ("first", "second") if "ridge" in kind else ():
            kind["ridge"][side]["bites"] = "panel"
            kind["ridge"][side].pop("rivets", None)
        if "eave" in kind:
            kind["eave"]["panel"]["fixed"] = {"up_the_slope": '3"', "fasteners": {"spacing": '8"', "source": "common-practice"}}
    return Job.from_dict(job).compute()


def test_a_cap_that_rides_says_by_how_much_its_sides_part() -> None:
    """Steel moves 6.7e-6 of its length for each degF, as handbooks have it: from 70 degF 90 up and 90 down."""
    packet = riding()
    assert all(j.rides is None for j in PACKETS["ropewalk"].junctions)
    ridges = [j for j in packet.junctions if j.kind == "ridge"]
    assert ridges
    for ridge in ridges:
        moves = ridge.rides
        assert moves is not None and moves.first is not None and moves.second is not None
        level = []
        for side, of in ((moves.first, ridge.first), (moves.second, ridge.second)):
            assert of is not None
            longest = max(p.finished.get("mm") for p in packet.planes[of.plane].laid.panels)
            slope = packet.roof.planes[of.plane].pitch.angle
            level.append(longest * 6.7e-6 * 90 * slope.cos())
            assert side.closes.get("mm") == pytest.approx(level[-1], abs=1e-5) and side.opens == side.closes
            assert side.rises.get("mm") == pytest.approx(level[-1] * slope.tan(), abs=1e-5) and side.falls == side.rises
        assert moves.closes.get("mm") == pytest.approx(sum(level), abs=1e-5) and moves.opens == moves.closes
        again = pickle.loads(pickle.dumps([moves, moves.first]))
        assert again == [moves, moves.first] and hash(again[0]) == hash(moves) and repr(again[1]) == repr(moves.first)
