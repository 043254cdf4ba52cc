"""Copings, a pipe and a step in a job, against figures by hand and polygons of shapely."""

import json
import pickle
from pathlib import Path
from typing import Any

import pytest
from demo import changed
from seamwright import InputError
from seamwright.job import Job, Packet
from seamwright.units import Length, Temperature
from shapely.geometry import Point, Polygon

TEXT = (Path(__file__).parents[2] / "core" / "examples" / "annexe_job.json").read_bytes()
DOCUMENT: dict[str, Any] = json.loads(TEXT)


@pytest.fixture(scope="module")
def packet() -> Packet:
    return Job.from_json(TEXT).compute()


def mm(length: Length) -> float:
    return length.get("mm")


def test_the_tops_of_the_walls_are_the_offset_of_the_roof(packet: Packet) -> None:
    """Both outer edges, by shapely: the faces moved out by the thickness, mitred."""
    width, depth, thick = 38 * 304.8, 22 * 304.8, 8 * 25.4
    room = Polygon([(-1e6, -1e6), (width, -1e6), (width, depth), (-1e6, depth)])
    out = room.buffer(thick, join_style="mitre").exterior
    for coping in packet.copings:
        for end in (coping.run.start, coping.run.end):
            assert out.distance(Point(mm(end.x), mm(end.y))) < 1e-6
    lengths = [mm(c.run.length) for c in packet.copings]
    assert lengths == pytest.approx([depth + thick, width + thick], abs=1e-6)
    (corner,) = packet.coping_corners
    assert corner.corner.kind == "outside" and corner.corner.turn.degrees == pytest.approx(90, abs=1e-9)
    assert corner.runs == tuple(c.name for c in packet.copings)
    # A mitre of a square corner is cut across the coping's whole width: the legs are what the caller chose, the blanks as long as their longest edge.
    assert all(cut >= leg for cut, leg in zip(corner.cut, corner.legs, strict=True))
    ends = [(end.kind, end.corner, end.wall) for c in packet.copings for end in c.run.ends]
    assert [e for e in ends if e[0] == "corner"] == [("corner", 0, None)] * 2 and all(e in (("corner", 0, None), ("free", None, None)) for e in ends)


def test_pieces_joints_and_the_corner_fill_each_run(packet: Packet) -> None:
    for coping in packet.copings:
        made = coping.pieces
        pieces = sum(p.count * mm(p.length) for p in made.pieces)
        assert pieces + made.joints * mm(made.gap_when_laid) + 18 * 25.4 == pytest.approx(mm(coping.run.length), abs=1e-6)
    cut = [run for trim in packet.trims if trim.name == "coping" for run in trim.runs]
    assert all(run.line is None for run in cut)
    assert sum(len(run.pieces) for run in cut) == sum(p.count for c in packet.copings for p in c.pieces.pieces) + 2


def test_the_flue_is_clear_of_the_seams(packet: Packet) -> None:
    (flue,) = packet.pipes
    given = flue.pipe.to_dict()
    coverage, foot, least = (mm(Length(given[field])) for field in ("coverage", "seam_width", "least_to_seam"))
    left, right = (mm(d) for d in flue.made.to_seam)
    base = mm(flue.made.base_across)
    assert left + base + right + foot == pytest.approx(coverage, abs=1e-6)
    assert min(left, right) >= least
    # A round base covers the hole with one diameter, its middle in the middle of the hole.
    assert base == pytest.approx(mm(flue.made.base_down) + mm(flue.made.base_up), abs=1e-6)
    # Its middle on the deck is its middle in the plane, and it stands in the panel that the list names.
    plane = packet.roof.planes[flue.plane]
    assert plane.to_space(flue.on_plane) == flue.at
    panel = packet.planes[flue.plane].laid.panels[flue.panels[0]]
    assert panel.mark == flue.mark and panel.left < flue.on_plane.x < panel.right
    assert flue.made == flue.pipe.compute() and flue.collar_bead.width.get("mm") > 0


def test_the_step_is_a_line_of_the_roof(packet: Packet) -> None:
    step = packet.roof.line("step 1")
    assert step.riser is not None and step.riser.get("mm") == pytest.approx(15 * 25.4)
    assert packet.roof.line("eave 1").riser is None
    item = packet.junction("step 1")
    assert item is not None and [t.name for t in item.section.trims][0] == "lower flashing"


def test_what_stands_on_walls_and_goes_through_pans_pickles_by_its_place(packet: Packet) -> None:
    (coping, _), (corner,), (pipe,) = packet.copings, packet.coping_corners, packet.pipes
    parts: list[Any] = [coping, coping.run, *coping.run.ends, coping.coping, coping.section, coping.pieces, corner, corner.corner, pipe, pipe.collar_bead, pipe.made]
    parts += [packet.metals, packet.metals.panel, packet.temperatures, packet.paperwork, *(clips.rule for clips in packet.clips)]
    again = pickle.loads(pickle.dumps(parts))
    assert again == parts and [hash(p) for p in again] == [hash(p) for p in parts] and [repr(p) for p in again] == [repr(p) for p in parts]
    assert coping != packet.copings[1] and coping.coping.compute().trims == coping.section.trims


def test_what_the_packet_keeps_of_its_job(packet: Packet) -> None:
    given = DOCUMENT
    assert [str(sheet.alloy) for sheet in packet.metals.trims] == [sheet["alloy"] for sheet in given["metals"]["trims"]]
    panel = packet.metals.panel
    assert panel.thickness == Length(given["metals"]["panel"]["thickness"]) and panel.coating == given["metals"]["panel"]["coating"] and panel.gauge is None
    assert panel.base_thickness < panel.thickness and packet.metals.gutter is None
    # Steel of the thickness under the coating, from 0.283 to 0.284 lb/in3 in handbooks, and the coating's own mass, 0.50 oz/ft2 on both sides together: ASTM
    # A792, from memory.
    least, most = (density * 144 * panel.base_thickness.get("in") + 0.50 / 16 for density in (0.2829, 0.2841))
    assert least < panel.surface_mass.get("lb/ft2") < most
    assert all(trim.sheet in packet.metals.trims for trim in packet.trims)
    for trim in packet.trims:
        (bought,) = [line.spec for line in packet.order if line.mark == trim.mark and line.spec.startswith("girth")]
        assert f"{trim.sheet.alloy} {trim.sheet.coating}," in bought and str(trim.sheet) == f"{trim.sheet.thickness} {trim.sheet.alloy} {trim.sheet.coating}"
    heat = packet.temperatures
    assert heat is not None and [heat.laid, heat.coldest, heat.hottest] == [Temperature(given["temperatures"][k]) for k in ("laid", "coldest", "hottest")]
    paper = packet.paperwork
    assert (paper.lengths, paper.small) == (packet.lengths, packet.details) and paper.details == packet.details
    for clips in packet.clips:
        rule = clips.rule
        assert (rule.kind, rule.supports, rule.support_use) == ("spaced", None, None)
        assert (rule.spacing, rule.end_distance, rule.source) == (clips.spacing, clips.end_distance, clips.source)


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
