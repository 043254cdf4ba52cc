"""Lists of panels: the account of the coil and pairs from one blank against shapely, and the classes of the room."""

import json
import math
import pickle
from pathlib import Path
from typing import Any

import pytest
import shapely  # type: ignore[import-untyped]
from hypothesis import given, settings
from hypothesis import strategies as st
from seamwright import InputError
from seamwright.job import Job, JobRevision
from seamwright.layout import EdgeUse, Layout, PanelList, Revision, SeamClearance, Start
from seamwright.panel import Panel, PanelEnd, Seam
from seamwright.roof import Outline
from test_layout_strips import COVERAGES, STARTS, Shape, combs, components, length, points, stars

DEMO = Path(__file__).parents[2] / "core" / "examples" / "demo_job.json"
NOTHING = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}


def document(shape: Shape, coverage: int, start: str) -> dict[str, Any]:
    """A layout without allowances, whose order lengths are the blanks themselves."""
    outer, holes = shape
    outline = Outline(points(outer), [points(hole) for hole in holes])
    place = [[{"x": x, "y": y} for x, y in points(ring)] for ring in (outer, *holes)]
    exact = {"increment": "0.000001 mm", "rounding": "half-even", "tolerance": "0 mm"}
    return {
        "outline": {"outer": place[0], "holes": place[1:]},
        "panel": {"coverage": length(coverage), "seam_height": "50 mm", "seam": {"double-lock": {"lock": "10 mm"}}},
        "start": start,
        "edges": [NOTHING] * len(outline.edges),
        "rounding": {"both_finished": exact, "one_finished": exact, "field_cut": exact},
    }


def account(shape: Shape, coverage: int, start: str) -> None:
    outer, holes = shape
    polygon = shapely.Polygon([(x / 10, y / 10) for x, y in outer], [[(x / 10, y / 10) for x, y in hole] for hole in holes])
    listed = PanelList.from_dict({"layout": document(shape, coverage, start), "choices": {"direction": "left-to-right"}}).compute()
    low, high = 2 * min(x for x, _ in outer), 2 * max(x for x, _ in outer)
    seam = {"left": low, "right": high, "centre-seam": (low + high) // 2, "centre-panel": (low + high) // 2 + coverage}[start]
    edges = range(low - (low - seam) % (2 * coverage), high + 2 * coverage, 2 * coverage)
    coil = rips = skew = 0.0
    developed = listed.coil_width.get("mm")
    for a in (a for a in edges if a < high):
        for part in components(polygon, max(a, low) / 20, min(a + 2 * coverage, high) / 20):
            left, foot, right, head = part.bounds
            coil += (head - foot) * developed
            rips += (head - foot) * (coverage / 10 - (right - left))
            skew += (head - foot) * (right - left) - part.area
    waste, near = listed.waste, polygon.area * 1e-9 + 1e-3
    assert math.isclose(waste.coil.get("mm2"), coil, abs_tol=near + 1e-9 * coil)
    assert math.isclose(waste.covered.get("mm2"), polygon.area, abs_tol=near)
    assert math.isclose(waste.rips.get("mm2"), rips, abs_tol=near + 1e-9 * coil)
    assert math.isclose(waste.skew_cuts.get("mm2"), skew, abs_tol=near + 1e-9 * coil)
    parts = [waste.seams, waste.rips, waste.skew_cuts, waste.ends]
    assert math.isclose(sum(part.get("mm2") for part in parts), waste.coil.get("mm2") - waste.covered.get("mm2"), abs_tol=1e-12 * coil)
    # The last blank of a side lies across the whole strip: nothing is ordered beyond it.
    assert math.isclose(waste.ends.get("mm2"), 0.0, abs_tol=near + 1e-9 * coil)


few = settings(max_examples=40)
PLAIN = STARTS.filter(lambda start: start != "datum")


@few
@given(stars(), COVERAGES, PLAIN)
def test_the_account_of_the_coil_for_polygons_with_holes(shape: Shape, coverage: int, start: str) -> None:
    account(shape, coverage, start)


@few
@given(combs(), COVERAGES, PLAIN)
def test_the_account_of_the_coil_for_edges_along_the_seams(shape: Shape, coverage: int, start: str) -> None:
    account(shape, coverage, start)


@few
@given(st.integers(1, 40), st.integers(4, 12), st.integers(1000, 4000), st.sampled_from([-1, 1]))
def test_paired_pieces_lie_in_their_blank_without_overlap(slope: int, strips: int, tall: int, hand: int) -> None:
    """A parallelogram between a hip and a valley that rise together, as polygons in their blanks."""
    coverage, drop = 4000, 100 * slope
    wide, rise = strips * coverage, strips * drop
    ring = [(0, 0), (wide, 0), (2 * wide, rise), (2 * wide, rise + tall), (wide, rise + tall), (0, tall)]
    ring = [(hand * x, y) for x, y in ring]
    layout = document((ring if hand > 0 else ring[::-1], []), coverage, "left")
    listed = PanelList.from_dict({"layout": layout, "choices": {"direction": "left-to-right", "pairs": {"kerf": "0 mm"}}}).compute()
    assert len(listed.pairs) == strips
    w, d = coverage / 10, drop / 10
    for pair in listed.pairs:
        a, b = (listed.pieces[i].order.get("mm") for i in (pair.below, pair.above))
        blank = pair.blank.get("mm")
        sides = (a - d, a) if hand > 0 else (a, a - d)
        below = shapely.Polygon([(0, 0), (w, 0), (w, sides[1]), (0, sides[0])])
        feet = (blank - b, blank - b + d) if hand > 0 else (blank - b + d, blank - b)
        above = shapely.Polygon([(0, feet[0]), (w, feet[1]), (w, blank), (0, blank)])
        assert below.intersection(above).area < 1e-3
        # And nothing is left between them.
        assert math.isclose(below.area + above.area, w * blank, abs_tol=1e-2)


def test_the_classes_pickle_and_refuse() -> None:
    layout = document(([(0, 0), (9000, 0), (9000, 20000), (0, 20000)], []), 4000, "left")
    listed = PanelList.from_dict({"layout": layout, "choices": {"direction": "left-to-right"}})
    assert pickle.loads(pickle.dumps(listed)) == listed
    groups = listed.compute().groups
    assert pickle.loads(pickle.dumps(groups[1])) == groups[1]
    assert listed.explain()[0] == listed.compute()
    with pytest.raises(InputError) as refused:
        SeamClearance.from_dict({"layout": layout, "clear_of": [], "prefer": "best"})
    assert refused.value.path == "prefer"
    with pytest.raises(InputError) as refused:
        Revision.from_dict({"before": [], "now": [], "formed": [{"mark": "A", "count": 1}]}).compute()
    assert (refused.value.kind, refused.value.path) == ("unknown", "formed[0].mark")


def test_starts_share_out_the_rest() -> None:
    outline = Outline([("0 in", "0 in"), ("68 in", "0 in"), ("68 in", "90 in"), ("0 in", "90 in")])
    end = EdgeUse.end(PanelEnd.hold_back("0 in"))
    panel = Panel("16 in", "1 in", Seam.double_lock('1/4"'))
    for start, ends in [(Start.EQUAL_RIPS, 10), (Start.left_unless_narrow("4 in"), 16), (Start.left_unless_narrow("5 in"), 10)]:
        laid = Layout(outline, panel, start, [end] * 4).compute()
        assert laid.panels[0].width.get("in") == ends
        assert pickle.loads(pickle.dumps(start)) == start
    assert Start.right_unless_narrow("5 in").least == Start.left_unless_narrow("5 in").least


def test_a_job_shows_its_lists_and_marks() -> None:
    job = json.loads(DEMO.read_text())
    job["layout"]["list"] = {"direction": "left-to-right", "bundles": {"count": 10}}
    job["layout"]["marks"] = {"from": "left", "creep": {"each": '1/32"', "every": 10}}
    job["layout"]["columns"] = [{"heading": "n", "field": "count"}, {"heading": "length", "field": {"order-length": "mm.0"}}]
    packet = Job.from_dict(job).compute()
    south = packet.plane("main south")
    assert south is not None and south.listed is not None and south.marks is not None
    assert sum(len(bundle.pieces) for bundle in south.listed.bundles) == len(south.listed.pieces)
    assert south.marks.checks[0].panels == 10
    assert pickle.loads(pickle.dumps(south.listed)) == south.listed
    files = packet.files()
    assert files["lists/panels.csv"].startswith(b"n,length\r\n") and {"lists/pieces.csv", "lists/seam-marks.csv"} <= files.keys()
    rows = json.loads(files["lists/panels.json"])
    assert sum(row["n"] for row in rows) == packet.summary.pieces
    now = json.loads(json.dumps(job))
    now["panel"]["coverage"] = '15 1/2"'
    revised = JobRevision.from_dict({"before": job, "now": now}).compute()
    assert {row.state for row in revised.revised.rows} >= {"new", "dropped"} and revised.panels
