"""The demo job in Python: its packet against figures worked out again from the packet's own parts, and what is refused on the way in."""

import copy
import csv
import io
import json
import math
import pickle
import threading
import time
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import ezdxf
import pytest
import shapely  # type: ignore[import-untyped]
from demo import DOCUMENT, TEXT, changed, packet
from seamwright import InputError, SeamwrightError
from seamwright.assembly import Corner
from seamwright.job import Job, JunctionItem, Packet, PlaneLay, Progress, compute
from seamwright.layout import LaidPanel
from seamwright.panel import PanelEnd
from seamwright.units import Angle, Length, LengthFormat, Mass

STAGES = ["roof", "sections", "panels", "lines", "clips", "trims", "order"]
# Core holds coordinates in picometres and works between in floating millimetres, as this file does.
NANOMETRE = 1e-6


def mm(length: Length) -> float:
    return length.get("mm")


def test_the_summary_counts_what_is_there() -> None:
    p = packet()
    s = p.summary
    groups = [group for plane in p.planes for group in plane.laid.groups]
    assert (s.planes, s.lines) == (len(p.planes), len(p.roof.lines)) == (len(DOCUMENT["roof"]["planes"]), len(p.roof.lines))
    assert s.panels == sum(len(plane.laid.panels) for plane in p.planes) >= 150
    assert s.pieces == sum(group.count for group in groups) == sum(panel.pieces for plane in p.planes for panel in plane.laid.panels)
    orders = {group.order for group in groups}
    assert (s.lengths, s.shortest, s.longest) == (len(orders), min(orders), max(orders))
    assert s.panel_length == Length.total(panel.order * panel.pieces for plane in p.planes for panel in plane.laid.panels)
    assert s.coil == Length.total(plane.laid.coil.length for plane in p.planes)
    assert s.coil_mass is not None
    masses = [plane.laid.coil.mass for plane in p.planes]
    assert s.coil_mass.get("kg") == pytest.approx(sum(m.get("kg") for m in masses if isinstance(m, Mass)), rel=1e-12)
    assert (s.trims, s.sticks) == (len(p.trims), sum(stick.count for trim in p.trims for stick in trim.cutting.sticks))
    assert s.closures == sum(group.count for j in p.junctions for row in j.along.closures for group in row.list.groups) > 0
    rows = [row.engineered for j in p.junctions for row in j.along.rows] + [clips.schedule.engineered for clips in p.clips]
    assert (s.engineered_rows, s.not_engineered_rows) == (rows.count(True), rows.count(False))
    assert s.cautions == len(p.cautions)
    sources = [s.sources.text, s.sources.secondary, s.sources.memory, s.sources.derived, s.sources.common_practice, s.sources.engineer, s.sources.user]
    assert sum(sources) == len(p.cautions) + len(rows) + len(p.trims)


def ends_by_line(p: Packet, plane: PlaneLay) -> dict[int, PanelEnd]:
    """What each junction gives to the panels of a plane, by the line's number in the roof."""
    found = {}
    for junction in p.junctions:
        for name, side in (("first", junction.first), ("second", junction.second)):
            if side is not None and side.plane == plane.plane and (end := junction.section.end(name)) is not None:
                found[junction.line] = end
    return found


Edge = tuple[tuple[float, float], tuple[float, float], int]


def edges_at(edges: list[Edge], x: float) -> list[tuple[float, Edge]]:
    """The edges that a seam at this x crosses, from below."""
    found = []
    for edge in edges:
        (ax, ay), (bx, by), _ = edge
        if min(ax, bx) - NANOMETRE <= x <= max(ax, bx) + NANOMETRE and abs(ax - bx) > 1:
            found.append((ay + (by - ay) * (x - ax) / (bx - ax), edge))
    return sorted(found)


def beyond(end: PanelEnd, edge: Edge) -> float:
    """What an end adds along the seam: its parts, square to the line, over the sine of the angle between line and seam."""
    (ax, ay), (bx, by), _ = edge
    sine = abs(bx - ax) / math.hypot(bx - ax, by - ay)
    reach = mm(end.reach.distance) * (1 if end.reach.kind == "overhang" else -1)
    return (reach + mm(end.gap) + mm(end.fold) + mm(end.turn_up)) / sine


Struck = Callable[[float], float]


def struck(edge: Edge, ends: dict[int, PanelEnd], up: int) -> Struck:
    """The line as struck for the panels' ends: shifted along the seams, up at an upper end and down at a lower one."""
    (ax, ay), (bx, by), line = edge
    add = up * beyond(ends[line], edge)
    return lambda x: ay + (by - ay) * (x - ax) / (bx - ax) + add


def with_beside(edge: Edge, edges: list[Edge], ends: dict[int, PanelEnd], up: int) -> list[Struck]:
    """The line that ends a panel, and those before and after it where the outline turns in: all of them bound what it ends."""
    found = [struck(edge, ends, up)]
    for other in edges:
        (one, two) = (edge, other) if other[0] == edge[1] else (other, edge)
        (ax, ay), (bx, by), _ = one
        (cx, cy), (dx, dy), line = two
        if (bx, by) != (cx, cy) or other is edge or (bx - ax) * (dx - cx) <= 0 or other[2] not in ends:
            continue
        if (bx - ax) * (dy - cy) - (by - ay) * (dx - cx) > 0:
            found.append(struck(other, ends, up))
    return found


def crossings(lines: list[Struck]) -> list[float]:
    """Where the first line meets the others."""
    found = []
    for line in lines[1:]:
        apart = [lines[0](x) - line(x) for x in (0.0, 1.0)]
        found.append(apart[0] / (apart[0] - apart[1]))
    return found


def recomputed(p: Packet) -> Iterator[tuple[LaidPanel, str, float, float, float]]:
    """Panels that one line ends below and one above: their kinds of ends, both side lengths and the longest, by the strip that shapely cuts out."""
    kinds = [line.kind for line in p.roof.lines]
    for plane in p.planes:
        outline = plane.layout.outline
        rings = [[(mm(point.x), mm(point.y)) for point in ring] for ring in (outline.outer, *outline.holes)]
        polygon = shapely.Polygon(rings[0], rings[1:])
        edges = []
        for edge, line in zip(outline.edges, plane.lines, strict=True):
            edges.append(((mm(edge.start.x), mm(edge.start.y)), (mm(edge.end.x), mm(edge.end.y)), line))
        ends = ends_by_line(p, plane)
        _, low, _, high = polygon.bounds
        for panel in plane.laid.panels:
            left, right = mm(panel.left), mm(panel.right)
            strip = shapely.get_parts(shapely.intersection(polygon, shapely.box(left, low - 1, right, high + 1)))
            strip = [part for part in strip if part.area > NANOMETRE]
            middle = edges_at(edges, (left + right) / 2)
            # Four corners: no vertex of the outline lies within the strip, so that the same two edges end it throughout.
            if len(strip) != 1 or len(middle) != 2 or len(shapely.remove_repeated_points(strip[0], NANOMETRE).exterior.coords) != 5:
                continue
            (_, below), (_, above) = middle
            _, foot, _, head = strip[0].bounds
            at = [(edges_at([below], x)[0][0], edges_at([above], x)[0][0]) for x in (left, right)]
            # The strip's own bounds are those of its two edges.
            assert (foot, head) == pytest.approx((min(b for b, _ in at), max(a for _, a in at)), abs=1e-6)
            feet, heads = with_beside(below, edges, ends, -1), with_beside(above, edges, ends, 1)

            def length(x: float, feet: list[Struck] = feet, heads: list[Struck] = heads) -> float:
                return min(line(x) for line in heads) - max(line(x) for line in feet)

            within = [x for x in (*crossings(feet), *crossings(heads)) if left < x < right]
            longest = max(length(x) for x in (left, right, *within))
            yield panel, f"{kinds[below[2]]} to {kinds[above[2]]}", length(left), length(right), longest


def test_panel_lengths_are_the_plane_s_strips_and_what_the_junctions_add() -> None:
    found = list(recomputed(packet()))
    ends = Counter(kinds for _, kinds, *_ in found)
    assert len(found) >= 150 and len(ends) >= 8, ends
    skew = 0
    for panel, _, left, right, longest in found:
        for given, worked in ((panel.left_length, left), (panel.right_length, right)):
            if given is not None:
                assert mm(given) == pytest.approx(worked, abs=NANOMETRE)
            else:
                assert worked <= NANOMETRE
        assert mm(panel.finished) == pytest.approx(longest, abs=NANOMETRE)
        skew += abs(left - right) > 1
    assert skew >= 30


def test_order_lengths_are_finished_lengths_as_the_shop_rounds() -> None:
    rounded = 0
    for plane in packet().planes:
        shop = plane.layout.rounding
        for panel in plane.laid.panels:
            ends = [plane.layout.edges[part.edge].panel_end for part in (*panel.lower, *panel.upper)]
            if all(end is not None and end.field_trim == Length("0 in") for end in ends) and panel.finished == panel.blank and panel.pieces == 1:
                off = abs(mm(panel.order) - mm(panel.finished))
                assert off <= max(mm(shop.both_finished.increment), mm(shop.one_finished.increment))
                rounded += 1
    assert rounded >= 50


def test_what_lies_along_a_line_adds_up() -> None:
    p = packet()
    for junction in p.junctions:
        line = p.roof.lines[junction.line]
        assert (junction.name, junction.kind) == (line.name, line.kind) == (junction.along.name, junction.along.kind)
        assert junction.along.length == line.length
        assert [s.name for s in junction.along.struck] == [line.name for line in junction.section.lines]
        for side in junction.along.sides:
            assert side.covered == Length.total(bay.length for bay in side.bays)
            # Along the line a bay is its width over the sine of the angle at which the seams meet it.
            for bay in side.bays:
                assert mm(bay.length) == pytest.approx(mm(bay.width) / bay.meeting.sin(), rel=1e-9, abs=1e-6)
            mark = {number: panel.mark for number, panel in enumerate(p.planes[side.plane].laid.panels)}
            assert all(bay.mark == mark[bay.panel] for bay in side.bays)
        for row in junction.along.closures:
            (bays,) = (side.bays for side in junction.along.sides if side.side == row.side)
            served = sorted([*row.list.without, *(bay for group in row.list.groups for bay in group.bays)])
            assert served == list(range(len(bays)))
            assert row.list.pieces == sum(group.count for group in row.list.groups)
            assert row.list.screws == sum(group.count * group.screws_each for group in row.list.groups)
        for bead in junction.along.beads:
            assert bead.volume.get("mL") == pytest.approx(mm(bead.width) * mm(bead.depth) * mm(bead.length) / 1000, rel=1e-12)
        for fasteners in junction.along.rows:
            if fasteners.stations is not None:
                assert fasteners.count == fasteners.stations.count == len(fasteners.stations.positions)
                steps = [b - a for a, b in zip(fasteners.stations.positions, fasteners.stations.positions[1:], strict=False)]
                assert max(steps, default=Length("0 in")) <= fasteners.spacing
        assert junction.not_engineered == [row.name for row in junction.along.rows if not row.engineered]


def test_lines_to_strike_follow_from_their_datums() -> None:
    checked = 0
    for junction in packet().junctions:
        meeting = {side.side: side.meeting for side in junction.along.sides}
        struck = {(line.side, line.name): line for line in junction.along.struck}
        for line in junction.along.struck:
            if line.datum_line is not None:
                datum = struck[line.side, line.datum_line]
                assert datum.order < line.order
                assert line.from_line.exact == datum.from_line.exact + line.from_datum.exact
                checked += 1
            if line.along_seam is not None:
                sine = meeting[line.side].sin()
                assert mm(line.along_seam.exact) == pytest.approx(mm(line.from_start.exact) / sine, rel=1e-9, abs=1e-6)
            assert abs(mm(line.from_start.exact) - mm(line.from_start.read)) <= 25.4 / 32 + NANOMETRE
    assert checked >= 10


def test_trims_are_cut_as_they_run() -> None:
    p = packet()
    for trim in p.trims:
        assert trim.flat == trim.profile.unfold(trim.flat.rule)
        assert trim.total == Length.total(run.run for run in trim.runs)
        for run in trim.runs:
            # Pieces and laps make up the run.
            assert Length.total(run.pieces) + (trim.gap - trim.lap) * (len(run.pieces) - 1) == run.run
            section = next(j.section for j in p.junctions if j.line == run.line)
            assert any(t.name == trim.name for t in section.trims)
        scrap = trim.cutting.scrap
        assert Length.total([scrap.pieces, scrap.kerf, scrap.end_loss, scrap.offcuts]) == scrap.bought
        assert scrap.pieces == Length.total(piece for run in trim.runs for piece in run.pieces)
        assert trim.cutting.stick_count == sum(trim.cutting.buy) == sum(stick.count for stick in trim.cutting.sticks)
        assert isinstance(trim.cutting.takes, Length) and trim.cutting.takes == scrap.bought
        assert len(trim.stock) == len(trim.cutting.buy)
    runs = [(j.line, t.run) for j in p.junctions for t in j.along.trims]
    assert Counter(runs) == Counter((run.line, run.run) for trim in p.trims for run in trim.runs)


def test_the_order_counts_the_parts() -> None:
    p = packet()

    def count(group: str, unit: str | None = None) -> int:
        return sum(line.count for line in p.order if line.group == group and unit in (None, line.unit))

    clips = sum(of.schedule.clips for of in p.clips)
    screws = sum(of.schedule.screws for of in p.clips) + sum(row.count for j in p.junctions for row in j.along.rows)
    assert (count("panels"), count("trims", "stick"), count("closures")) == (p.summary.pieces, p.summary.sticks, p.summary.closures)
    # What is no stick is an end cap, to the section of a trim and of a hand, or a kick-out, one at the foot of the one sidewall that dies into its wall.
    made: Counter[str] = Counter()
    for line in p.order:
        if line.group == "trims" and line.unit != "stick":
            made[line.item] += line.count
    assert made == Counter([f"{cap.trim}, end cap" for cap in p.end_caps] + ["kick-out"])
    capped = [(line.line, line.end) for corner in p.corners.corners for line in corner.lines if line.closed == "capped"]
    assert [(cap.line, cap.end) for cap in p.end_caps] == capped
    for cap in p.end_caps:
        trim = p.trim(cap.mark)
        assert trim is not None and trim.name == cap.trim and cap.line in [run.line for run in trim.runs]
    (kick_out,) = p.kick_outs
    (bought,) = (line for line in p.order if line.item == "kick-out")
    assert (bought.mark, bought.count) == (kick_out.mark, len(kick_out.lines)) == ("K1", 1)
    of_line = p.junction(kick_out.lines[0])
    assert of_line is not None and of_line.section.kick_out is not None and of_line.section.kick_out.turned == kick_out.piece.turned
    assert {"trims/K1-kick-out.svg", "trims/K1-kick-out.dxf"} <= set(p.files())
    assert (count("clips"), count("fasteners")) == (clips, screws)
    assert {line.engineered is None for line in p.order if line.group in ("clips", "fasteners")} == {False}
    for of in p.clips:
        assert of.schedule.clips == sum(group.seams * len(group.positions) for group in of.schedule.groups)


def test_heat_is_checked_where_the_job_gives_temperatures() -> None:
    p = packet()
    for plane, of in zip(p.planes, p.heat, strict=True):
        assert (of.plane, len(of.pins.panels)) == (plane.name, len(plane.laid.panels))
        assert of.movement is not None
        for end in of.movement.ends:
            assert end.verdict is None or end.verdict.holds is (end.failing == 0)
    cold = Job.from_dict(changed(DOCUMENT, "temperatures")).compute()
    assert all(of.movement is None for of in cold.heat)
    assert "movement-unchecked" in [caution.name for caution in cold.cautions]


def test_corners_name_their_lines() -> None:
    corners = packet().corners
    kinds = {pair.rule for corner in corners.corners for pair in corner.pairs}
    assert kinds <= {"laps", "mitred", "runs-on", "slides", "covered", "no-rule"} and "laps" in kinds
    for corner in corners.corners:
        assert len(corner.pairs) == len(corner.lines) * (len(corner.lines) - 1) // 2
        for line in corner.lines:
            ends = corners.ends if line.above is None else corners.upper_ends
            assert ends[line.line][0 if line.end == "start" else 1] == line.allowance
            assert line.closed in {"capped", "turned-up", "kick-out", "joined", "covered", "outlet"}
        for pair in corner.pairs:
            assert 0.0 < pair.between.degrees <= 180.0 and (pair.cut is None) == (pair.rule in {"covered", "no-rule"})
            assert pair.cut is None or 0.0 < pair.cut.degrees <= 90.0


def test_a_flashing_is_turned_up_where_another_wall_stands_across_its_end() -> None:
    """An inside corner of two walls is one of which their plane fills less than half of a small disc, by shapely; in an outside corner the flashing is capped."""
    walls = {"headwall", "sidewall", "curb-front", "curb-side", "step"}
    found: Counter[tuple[bool, str]] = Counter()
    annexe = Job.from_json((Path(__file__).parents[2] / "core" / "examples" / "annexe_job.json").read_bytes()).compute()
    for p in (packet(), annexe):
        outlines = [[[(mm(v.x), mm(v.y)) for v in ring] for ring in plane.rings] for plane in p.roof.planes]
        planes = [shapely.Polygon(rings[0], rings[1:]) for rings in outlines]
        for corner in p.corners.corners:
            here = [line for line in corner.lines if line.kind in walls and line.above is None]
            if len(here) != 2 or len({p.roof.lines[line.line].side.plane for line in here}) != 1:
                continue
            disc = shapely.Point(mm(corner.at.x), mm(corner.at.y)).buffer(10)
            inside = disc.intersection(planes[p.roof.lines[here[0].line].side.plane]).area < disc.area / 2
            found.update((inside, line.closed) for line in here)
    # The demo's headwall and the annexe's end at a sidewall; the sides of the demo's curb lap over its front at two outside corners.
    assert found == {(True, "turned-up"): 2, (True, "covered"): 2, (False, "capped"): 2, (False, "covered"): 2}


def test_corners_are_cut_by_the_angles_of_their_lines() -> None:
    p = packet()

    def way(corner: Corner, name: str) -> tuple[float, float, float]:
        (at,) = [x for x in corner.lines if x.name == name]
        line = p.roof.lines[at.line]
        near, far = (line.start, line.end) if at.end == "start" else (line.end, line.start)
        return mm(far.x) - mm(near.x), mm(far.y) - mm(near.y), mm(far.z) - mm(near.z)

    def angle(a: tuple[float, ...], b: tuple[float, ...]) -> float:
        return math.degrees(math.acos(max(-1.0, min(1.0, sum(x * y for x, y in zip(a, b, strict=True)) / math.hypot(*a) / math.hypot(*b)))))

    seen = set()
    for corner in p.corners.corners:
        for pair in corner.pairs:
            a, b = way(corner, pair.first), way(corner, pair.second)
            between, plan = angle(a, b), angle(a[:2], b[:2])
            assert pair.between.degrees == pytest.approx(between, abs=1e-5) and pair.plan.degrees == pytest.approx(plan, abs=1e-5)
            if pair.rule == "mitred":
                assert pair.cut is not None and pair.cut.degrees == pytest.approx(between / 2, abs=1e-5)
                assert pair.cut_plan is None or pair.cut_plan.degrees == pytest.approx(plan / 2, abs=1e-5)
            elif pair.rule == "laps" and pair.cut is not None and pair.cut.degrees < 89.9 and pair.cut_plan is not None:
                # Along the other line, in the plane of both and from above.
                assert pair.cut.degrees == pytest.approx(min(between, 180 - between), abs=1e-5)
                assert pair.cut_plan.degrees == pytest.approx(min(plan, 180 - plan), abs=1e-5)
            seen.add(pair.rule)
    assert {"laps", "mitred"} <= seen


def test_corners_by_name_are_those_of_the_job() -> None:
    own = packet().corners.corners
    made = compute("assembly.corner-plan", {"roof": DOCUMENT["roof"]})
    assert [[line["name"] for line in corner["lines"]] for corner in made["corners"]] == [[line.name for line in corner.lines] for corner in own]
    for corner, other in zip(made["corners"], own, strict=True):
        assert [pair["cut"] if "cut" in pair else None for pair in corner["pairs"]] == [pair.cut and str(pair.cut) for pair in other.pairs]
        # A job knows how wide its pans are, and so what they run on over eaves.
        assert [line["closed"] for line in corner["lines"]] == [line.closed for line in other.lines]
    for line in made["lines"]:
        along = line["along"]
        assert Length(along["run"]) == Length.total([Length(along["length"]), *(Length(along[end]["allowance"]) for end in ("at_start", "at_end"))])
    assert sum(of["count"] for of in made["closed"]) == 2 * (len(made["lines"]) + sum("upper" in line for line in made["lines"]))
    with pytest.raises(InputError) as refused:
        compute("assembly.corner-plan", {"roof": DOCUMENT["roof"], "joints": [{"line": "ridge 1", "opens": "1 in"}]})
    assert (refused.value.path, refused.value.value) == ("joints[0].line", "ridge 1")


def test_the_packet_finds_its_parts_by_name() -> None:
    p = packet()
    assert p.plane("porch") == next(plane for plane in p.planes if plane.name == "porch")
    assert p.junction("ridge 1") == next(j for j in p.junctions if j.name == "ridge 1")
    assert p.trim("T2") == p.trims[1]
    assert (p.plane("Porch"), p.junction("ridge 99"), p.trim("")) == (None, None, None)
    # What lies half way between two steps reads as the crew's tape reads it.
    assert DOCUMENT["supplies"]["crew"]["tape"]["rounding"] == "half-away"
    assert p.lengths == LengthFormat(DOCUMENT["paperwork"]["lengths"] + " half-away")
    assert p.details == LengthFormat(DOCUMENT["paperwork"].get("details", DOCUMENT["paperwork"]["lengths"]) + " half-away")
    assert Job.from_dict(changed(DOCUMENT, "paperwork", "details", value="mm.1")).compute().details == LengthFormat("mm.1 half-away")
    assert Job.from_dict(changed(DOCUMENT, "paperwork", "details", value="mm.1 ceil")).compute().details == LengthFormat("mm.1 ceil")
    assert p.site and all(isinstance(text, str) for text in p.site)
    junction = p.junction("ridge 1")
    assert isinstance(junction, JunctionItem) and junction.second is not None
    assert isinstance(junction.first.rise, Angle) and junction.first.levels.seam_height == Length('1 3/4"')


def test_json_goes_round() -> None:
    job = Job.from_json(TEXT)
    assert Job.from_json(TEXT.decode()) == job == Job.from_dict(DOCUMENT) and hash(Job.from_dict(DOCUMENT)) == hash(job)
    assert Job.from_json(job.to_json()) == job == Job.from_dict(job.to_dict())
    assert Job.from_json(job.to_json()).to_json() == job.to_json()
    typed = changed(DOCUMENT, "panel", "coverage", value=Length('16"'))
    assert Job.from_dict(typed) == job
    p = packet()
    document = p.to_dict()
    assert document == json.loads(p.to_json())
    assert (document["format"], document["version"]) == (p.format, p.version) == ("seamwright-packet", 1)
    assert document["summary"]["panels"] == p.summary.panels
    assert document["planes"][0]["laid"]["panels"][0]["order"] == str(p.planes[0].laid.panels[0].order)
    assert Job.from_dict(DOCUMENT).compute().to_json() == p.to_json()


def test_explaining_gives_the_same_packet() -> None:
    explained, sheet = Job.from_json(TEXT).explain()
    assert explained == packet() and explained.to_json() == packet().to_json()
    assert len(sheet.steps()) > 1000 and sheet.title == packet().job.name


def test_the_files_are_those_of_the_packet() -> None:
    p, sheet = Job.from_json(TEXT).explain()
    files, with_sheet = packet().files(), p.files(sheet)
    assert all(type(name) is str and type(held) is bytes and held for name, held in with_sheet.items())
    # The working is added and nothing else differs.
    more = set(with_sheet) - set(files)
    assert more and all(name.startswith("office/") and name.endswith(".md") for name in more)
    assert {name: held for name, held in with_sheet.items() if name not in more} == files
    assert p.files(worksheet=None) == files
    assert json.loads(files["packet.json"]) == p.to_dict()
    rows = list(csv.reader(io.StringIO(files["lists/panels.csv"].decode(), newline="")))
    assert sum(int(row[rows[0].index("pieces")]) for row in rows[1:]) == p.summary.pieces
    order = list(csv.reader(io.StringIO(files["lists/order.csv"].decode(), newline="")))
    assert len(order) == len(p.order) + 1
    endings = Counter(name.rpartition(".")[2] for name in files)
    assert (endings["html"], endings["dxf"], endings["json"], endings["csv"]) == (len(p.junctions), len(p.trims) + len(p.kick_outs) + len(p.cap_pieces), 1, 2)
    for name, held in files.items():
        if name.endswith(".svg"):
            assert ElementTree.fromstring(held).tag.endswith("svg"), name
        if name.endswith(".dxf"):
            audit = ezdxf.read(io.StringIO(held.decode())).audit()  # type: ignore[attr-defined]
            assert not audit.errors and not audit.fixes, name
    with pytest.raises(TypeError):
        p.files("all")  # type: ignore[arg-type]


def parts(p: Packet) -> list[Any]:
    plane, ridge, valley = p.planes[3], p.junction("ridge 1"), p.junction("valley 1")
    assert ridge is not None and valley is not None
    laid: list[Any] = [plane, plane.laid, plane.laid.panels[0], plane.laid.panels[-1].upper[0], plane.layout]
    section: list[Any] = [ridge.section, ridge.section.trims[0], ridge.section.ends[1], ridge.section.along[0], ridge.section.lines[-1]]
    section += [ridge.section.trims[0].corners[1], ridge.section.trim(ridge.section.trims[0].name), ridge.first, ridge.second]
    row = ridge.along.closures[0]
    along: list[Any] = [ridge, ridge.along, ridge.along.sides[0], ridge.along.sides[1].bays[2], ridge.along.tapes[0], ridge.along.rows[0], row]
    along += [row.list, row.list.groups[0], row.list.groups[0].piece, row.list.groups[0].piece.fasteners, ridge.along.struck[0].from_start]
    along += [valley.along.cleats[0], valley.along.trims[0]]
    trims: list[Any] = [p.trims[0], p.trims[0].flat, p.trims[0].runs[0], p.trims[0].cutting, p.trims[0].cutting.sticks[0], p.trims[0].cutting.scrap]
    heat = p.heat[0]
    assert heat.movement is not None
    rest: list[Any] = [p.metals, p.metals.trims[0], p.temperatures, p.paperwork, p.clips[0].rule, p.summary, p.summary.sources, p.corners, p.corners.corners[0].pairs[0], p.clips[0], p.clips[0].schedule.groups[0], p.order[0], p.end_caps[0]]
    rest += [heat, heat.pins.panels[0], heat.movement.ends[0], heat.movement.ends[0].verdict, p.cautions[0], p.roof, p.roof.lines[0]]
    return [p, *laid, *section, *along, *trims, *rest]


def test_parts_compare_hash_and_pickle() -> None:
    these, those = parts(packet()), parts(Job.from_json(TEXT).compute())
    # One pickle for all: the packet is worked out once and not for each of its parts.
    again = pickle.loads(pickle.dumps(these))
    for one, other, restored in zip(these, those, again, strict=True):
        assert one == other == restored and type(restored) is type(one), one
        assert hash(one) == hash(other) == hash(restored), one
        assert repr(restored) == repr(one) and repr(one)
    # A packet gives its panels marks that no other plane has, which the layout alone cannot know.
    plane = packet().planes[3]
    assert plane.laid != plane.layout.compute() and plane.laid.groups[0].mark == pickle.loads(pickle.dumps(plane.laid)).groups[0].mark
    assert plane != packet().planes[1]


def test_a_job_pickles_and_copies() -> None:
    job = Job.from_json(TEXT)
    for other in (pickle.loads(pickle.dumps(job)), copy.copy(job), copy.deepcopy(job)):
        assert type(other) is Job and other == job and other.to_json() == job.to_json()
    with pytest.raises(AttributeError):
        job.name = "another"  # type: ignore[misc]


def test_progress_is_told_from_first_to_last() -> None:
    seen: list[Progress] = []
    told = Job.from_json(TEXT).compute(progress=seen.append)
    assert told == packet()
    assert list(dict.fromkeys(p.stage for p in seen)) == STAGES
    for stage in STAGES:
        of_stage = [p for p in seen if p.stage == stage]
        assert of_stage[-1].done == of_stage[-1].of
        assert [p.done for p in of_stage] == sorted(p.done for p in of_stage)
    panels = [p for p in seen if p.stage == "panels"]
    assert len(panels) == panels[0].of == len(packet().planes)
    assert str(panels[2]) == f"panels 3 of {panels[0].of}" and panels[2] == Progress("panels", 3, panels[0].of)
    assert pickle.loads(pickle.dumps(panels)) == panels and eval(repr(panels[0])) == panels[0]
    explained: list[Progress] = []
    Job.from_json(TEXT).explain(lambda p: explained.append(p))
    assert explained == seen


@pytest.mark.parametrize("work", [Job.compute, Job.explain], ids=["compute", "explain"])
def test_false_stops_the_work(work: Callable[..., Any]) -> None:
    seen: list[str] = []

    def until_lines(p: Progress) -> bool | None:
        seen.append(p.stage)
        return False if p.stage == "lines" else None if p.stage == "roof" else True

    with pytest.raises(SeamwrightError) as caught:
        work(Job.from_json(TEXT), until_lines)
    assert not isinstance(caught.value, ValueError)
    assert (caught.value.kind, caught.value.path) == ("cancelled", "progress")
    assert seen.count("lines") == 1 and seen[-1] == "lines"


def test_what_progress_raises_is_raised() -> None:
    class Own(Exception):
        pass

    own = Own("enough")

    def raises(p: Progress) -> None:
        if p.stage == "panels":
            raise own

    with pytest.raises(Own) as caught:
        Job.from_json(TEXT).compute(raises)
    assert caught.value is own
    with pytest.raises(KeyboardInterrupt):
        Job.from_json(TEXT).explain(lambda p: (_ for _ in ()).throw(KeyboardInterrupt))
    with pytest.raises(TypeError, match="progress must return None, or False to stop the work, not the int 0"):
        Job.from_json(TEXT).compute(lambda p: 0)  # type: ignore[arg-type, return-value]
    with pytest.raises(TypeError, match="a function of one argument, not str"):
        Job.from_json(TEXT).compute("often")  # type: ignore[arg-type]
    with pytest.raises(InputError) as unknown:
        Progress("walls", 1, 2)
    assert unknown.value.allowed == ", ".join(STAGES)


def test_other_threads_run_while_a_job_is_worked_out() -> None:
    job, ticks, done = Job.from_json(TEXT), [0], threading.Event()

    def tick() -> None:
        while not done.is_set():
            ticks[0] += 1
            time.sleep(0)

    thread = threading.Thread(target=tick)
    thread.start()
    before = ticks[0]
    try:
        results = [job.compute().summary.panels for _ in range(3)]
    finally:
        done.set()
        thread.join()
    assert ticks[0] > before and set(results) == {packet().summary.panels}


def refused(document: Any) -> InputError:
    with pytest.raises(InputError) as caught:
        (Job.from_dict if isinstance(document, dict) else Job.from_json)(document).compute()
    return caught.value


@pytest.mark.parametrize(
    ("way", "value", "kind", "path"),
    [
        (("colour",), "red", "unknown", "colour"),
        (("panel", "hue"), "red", "unknown", "panel.hue"),
        (("junctions", "kinds", 0, "eave", "strips"), [], "unknown", "junctions.kinds[0].eave.strips"),
        (("panel",), ..., "missing", "panel"),
        (("metals", "panel", "thickness"), ..., "missing", "metals.panel.thickness"),
        (("panel", "coverage"), 'NaN"', "parse", "panel.coverage"),
        (("panel", "coverage"), float("nan"), "not finite", "panel.coverage"),
        (("supplies", "sealant", "tape_waste_ratio"), float("inf"), "not finite", "supplies.sealant.tape_waste_ratio"),
        (("panel", "coverage"), 16, "format", "panel.coverage"),
        (("panel", "coverage"), '0"', "out of range", "panel.coverage"),
        (("version",), 2, "format", "version"),
        (("name",), " ", "missing", "name"),
        (("layout", "planes", 0, "plane"), "nowhere", "unknown", "layout.planes[0].plane"),
        (("junctions", "kinds", 0), ..., "missing", "junctions.kinds"),
        (("supplies", "clips", "spacing"), "0 in", "out of range", "supplies.clips.spacing"),
        (("roof", "planes", 0, "shape", "plan", "pitch"), "90 deg", "out of range", "roof.planes[0].shape.plan.pitch"),
        (("format",), "other", "unknown", "format"),
    ],
)
def test_each_bad_job_has_its_kind_and_its_path(way: tuple[str | int, ...], value: Any, kind: str, path: str) -> None:
    refusal = refused(changed(DOCUMENT, *way, value=value))
    assert (refusal.kind, refusal.path) == (kind, path), str(refusal)


@pytest.mark.parametrize("text", ["", "not JSON", "{", '{"format" 1}', TEXT.decode() + "{}", "\0", "NaN", b"\xff\xfe{}", b"\xef\xbb\xbf{}", "\ud800"])
def test_what_is_not_json_is_refused(text: str | bytes) -> None:
    assert refused(text).kind in ("format", "missing", "parse")


def test_too_much_and_too_deep_are_ordinary_refusals() -> None:
    garbage = '["' * (50 << 20)
    for text in (garbage, garbage.encode()):
        refusal = refused(text)
        assert (refusal.kind, refusal.value) == ("too large", "104857600 bytes") and len(str(refusal)) < 200
    for deep in ("[" * 100_000, '{"roof":' * 100_000, b"[" * 100_000):
        assert refused(deep).kind in ("format", "unknown", "missing")
    itself = dict(DOCUMENT)
    itself["roof"] = itself
    assert refused(itself).kind == "too large"


def test_what_is_no_document_is_a_type_error() -> None:
    wrongs: list[Any] = [None, 1, [], bytearray(b"{}")]
    for wrong in wrongs:
        with pytest.raises(TypeError):
            Job.from_json(wrong)
        with pytest.raises(TypeError):
            Job.from_dict(wrong)
    with pytest.raises(TypeError, match="roof: "):
        Job.from_dict(changed(DOCUMENT, "roof", value={1, 2}))
    for cls in (Job, Packet, JunctionItem):
        with pytest.raises(TypeError):
            cls()
