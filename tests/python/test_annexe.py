"""Copings, a pipe and a step in a job, against figures by hand and polygons of shapely."""

import json
from pathlib import Path
from typing import Any

import pytest
from demo import changed
from seamwright import InputError
from seamwright.job import Job, Packet
from seamwright.units import Length
from shapely.geometry import Point, Polygon

TEXT = (Path(__file__).parents[2] / "core" / "examples" / "annexe_job.json").read_bytes()
DOCUMENT: dict[str, Any] = json.loads(TEXT)


@pytest.fixture(scope="module")
def packet() -> Packet:
    return Job.from_json(TEXT).compute()


def mm(length: str) -> float:
    return Length(length).get("mm")


def test_the_tops_of_the_walls_are_the_offset_of_the_roof(packet: Packet) -> None:
    """Both outer edges, by shapely: the faces moved out by the thickness, mitred."""
    width, depth, thick = 38 * 304.8, 22 * 304.8, 8 * 25.4
    room = Polygon([(-1e6, -1e6), (width, -1e6), (width, depth), (-1e6, depth)])
    out = room.buffer(thick, join_style="mitre").exterior
    for coping in packet.copings:
        for end in ("start", "end"):
            at = Point(mm(coping["run"][end]["x"]), mm(coping["run"][end]["y"]))
            assert out.distance(at) < 1e-6
    lengths = [mm(c["run"]["length"]) for c in packet.copings]
    assert lengths == pytest.approx([depth + thick, width + thick], abs=1e-6)
    assert [c["corner"]["kind"] for c in packet.coping_corners] == ["outside"]


def test_pieces_joints_and_the_corner_fill_each_run(packet: Packet) -> None:
    for coping in packet.copings:
        made = coping["pieces"]
        pieces = sum(p["count"] * mm(p["length"]) for p in made["pieces"])
        assert pieces + made["joints"] * mm(made["gap_when_laid"]) + 18 * 25.4 == pytest.approx(mm(coping["run"]["length"]), abs=1e-6)
    cut = [run for trim in packet.trims if trim.name == "coping" for run in trim.runs]
    assert all(run.line is None for run in cut)
    assert sum(len(run.pieces) for run in cut) == sum(p["count"] for c in packet.copings for p in c["pieces"]["pieces"]) + 2


def test_the_flue_is_clear_of_the_seams(packet: Packet) -> None:
    (flue,) = packet.pipes
    left, right = (mm(d) for d in flue["made"]["to_seam"])
    base, coverage, foot = mm(flue["made"]["base_across"]), mm(flue["pipe"]["coverage"]), mm(flue["pipe"]["seam_width"])
    assert left + base + right + foot == pytest.approx(coverage, abs=1e-6)
    assert min(left, right) >= mm(flue["pipe"]["least_to_seam"])
    # A round base covers the hole with one diameter, its middle in the middle of the hole.
    assert base == pytest.approx(mm(flue["made"]["base_down"]) + mm(flue["made"]["base_up"]), abs=1e-6)


def test_the_step_is_a_line_of_the_roof(packet: Packet) -> None:
    step = packet.roof.line("step 1")
    assert step.riser is not None and step.riser.get("mm") == pytest.approx(15 * 25.4)
    assert packet.roof.line("eave 1").riser is None
    item = packet.junction("step 1")
    assert item is not None and [t.name for t in item.section.trims][0] == "lower flashing"


def test_files_of_copings_and_pipes(packet: Packet) -> None:
    files = packet.files()
    for name in ("crew/coping-1.html", "crew/coping-2.html", "crew/pipe-boiler-flue.html", "crew/step-1.html", "junctions/coping-1.svg"):
        assert files[name]
    assert b">coping 1<" in files["plan.svg"]


@pytest.mark.parametrize(
    ("way", "value", "path"),
    [
        (("copings", 0, "corner"), "6 in", "copings[0].corner"),
        (("copings", 0, "walls", 1), "south parapet", "copings[0].walls[1]"),
        (("pipes", 0, "place", "off-line", "along"), "12 ft", "pipes[0].place"),
        (("pipes", 0, "colour"), "red", "pipes[0].colour"),
        (("roof", "steps", 0, "lower"), "porch", "roof.steps[0].lower"),
    ],
)
def test_refusals_name_their_field(way: tuple[str | int, ...], value: str, path: str) -> None:
    with pytest.raises(InputError) as refused:
        Job.from_dict(changed(DOCUMENT, *way, value=value)).compute()
    assert refused.value.path == path
