"""Checked by mypy, not run: the types that a user's editor shows."""

from fractions import Fraction
from typing import assert_type

import seamwright
from seamwright import InputError
from seamwright.assembly import Bay, ClipRule, ClosureGroup, CopingMeets, FastenerRow, LineAssembly, StruckLine, TeeOnRun
from seamwright.job import CopingCornerItem, CopingItem, EndCap, Job, JunctionItem, Metals, Packet, Paperwork, PipeItem, Progress, Temperatures, TrimItem
from seamwright.junction import Eave, JointMoves, JunctionTrim, Pipe, SectionPoint, SideEnd, Solved
from seamwright.layout import EdgeUse, Group, LaidPanel, LaidPlane, Layout
from seamwright.metal import Gauge
from seamwright.movement import CapMoves
from seamwright.panel import Panel, PanelEnd, Seam
from seamwright.pitch import BendAt, Corner, CornerGeometry, Pitch, SlopeRule
from seamwright.record import Caution, Step, Worksheet
from seamwright.roof import JoinedPlanes, Line, MeasuredPlane, Outline, Plane, PlaneShape, Point, Reading, Roof, Side, SketchedRoof, Snapping
from seamwright.trim import BendRule, Flat, FlatPattern, Profile
from seamwright.units import Angle, Area, Length, LengthFormat, Mass, ShopRounding, SurfaceMass, Temperature, TemperatureDifference

length = Length('3 5/8"')
assert_type(length + Length("1 mm"), Length)
assert_type(length * 2, Length)
assert_type(2 * length, Length)
assert_type(-length, Length)
assert_type(length.fraction("in"), Fraction)
assert_type(length.pm, int)
assert_type(length.get("mm"), float)
assert_type(length.times("1 ft"), Area)
assert_type(length.format(LengthFormat("in/16")), str)
assert_type(Length.total(["1 mm", length]), Length)
assert_type(ShopRounding(length, "ceil").round("3 mm"), Length)
assert_type(Angle("3 deg").sin(), float)
assert_type(Area.new(1, "ft2").get("m2"), float)
assert_type(Temperature("3 K").above("2 K"), TemperatureDifference)
assert_type(length < Length("1 mm"), bool)
assert_type(Pitch("6:12").angle, Angle)
assert_type(Pitch("6:12").as_rise_run, tuple[Length, Length] | None)
assert_type(Corner("6:12", Pitch("6:12"), "90 deg").explain(), tuple[CornerGeometry, Worksheet])
assert_type(BendAt.rake().explain()[1].entries, list[Step | Worksheet])
assert_type(SlopeRule.IBC_STANDING_SEAM.check("3:12").cautions, list[Caution])


def of_a_trim(profile: Profile) -> None:
    assert_type(profile.unfold(BendRule.aviation()), Flat)
    assert_type(FlatPattern(profile, BendRule.aviation()).explain(), tuple[Flat, Worksheet])
    assert_type(profile.girth(BendRule.aviation()), Length)


def of_a_roof(roof: Roof) -> None:
    assert_type(roof.planes, list[Plane])
    assert_type(roof.planes[0].outline, Outline)
    assert_type(roof.line("ridge 1"), Line)
    assert_type(roof.lines_of("hip")[0].other, Side | None)
    outline = Outline([("0 ft", "0 ft"), ("4 ft", Length("0 ft")), Point("4 ft", "3 ft")])
    panel = Panel("16 in", length, Seam.single_lock("3/8 in"))
    layout = Layout(outline, panel, "left", [EdgeUse.SIDE, EdgeUse.end(PanelEnd.hold_back("3 in", fold=length)), EdgeUse.SIDE])
    assert_type(layout.explain(), tuple[LaidPlane, Worksheet])
    assert_type(layout.compute().panels, list[LaidPanel])
    assert_type(layout.compute().groups[0], Group)
    assert_type(layout.compute().panels[0].left_length, Length | None)


def of_a_job(job: Job) -> None:
    def progress(at: Progress) -> bool:
        assert_type((at.stage, at.done, at.of), tuple[str, int, int])
        return at.done < 3

    packet = job.compute(progress)
    assert_type(packet, Packet)
    assert_type(job.explain(progress=lambda at: None), tuple[Packet, Worksheet])
    assert_type(packet.summary.panel_length, Length)
    assert_type(packet.planes[0].laid, LaidPlane)
    assert_type(packet.junction("ridge 1"), JunctionItem | None)
    along = packet.junctions[0].along
    assert_type(along, LineAssembly)
    assert_type((along.struck, along.rows), tuple[list[StruckLine], list[FastenerRow]])
    assert_type((along.sides[0].bays[0], along.closures[0].list.groups[0]), tuple[Bay, ClosureGroup])
    assert_type(packet.trims[0], TrimItem)
    assert_type((packet.trims[0].profile, packet.trims[0].flat), tuple[Profile, Flat])
    assert_type(packet.trims[0].cutting.takes, Length | int)
    assert_type(packet.order[0].mass, Mass | None)
    assert_type(packet.files(), dict[str, bytes])
    assert_type(packet.end_caps, list[EndCap])
    assert_type((packet.copings, packet.coping_corners, packet.pipes), tuple[list[CopingItem], list[CopingCornerItem], list[PipeItem]])
    assert_type((packet.copings[0].run.tees, packet.copings[0].run.ends), tuple[list[TeeOnRun], list[CopingMeets]])
    assert_type((packet.pipes[0].pipe, packet.pipes[0].made.screws), tuple[Pipe, int])
    assert_type((packet.metals, packet.temperatures, packet.paperwork), tuple[Metals, Temperatures | None, Paperwork])
    assert_type((packet.metals.panel.gauge, packet.metals.panel.surface_mass), tuple[Gauge | None, SurfaceMass])
    assert_type((packet.clips[0].rule, packet.clips[0].rule.supports), tuple[ClipRule, list[Length] | None])
    assert_type((packet.junctions[0].moves, packet.junctions[0].rides), tuple[JointMoves | None, CapMoves | None])


def of_a_junction(eave: Eave) -> None:
    assert_type(eave.explain(), tuple[Solved, Worksheet])
    assert_type(eave.compute().end("first"), PanelEnd | None)
    assert_type((eave.compute().trims[0], eave.compute().ends[0]), tuple[JunctionTrim, SideEnd])
    assert_type(eave.compute().trims[0].corners, list[SectionPoint])


try:
    Length("3")
except InputError as refusal:
    assert_type(refusal.path, str)
    assert_type(refusal.value, str | None)
    assert_type(refusal.span, tuple[int, int] | None)
    assert_type(refusal.others, tuple[seamwright.SeamwrightError, ...])
assert_type(MeasuredPlane.from_json("{}").compute(), PlaneShape)
assert_type(MeasuredPlane.from_json("{}").compute().readings, list[Reading])
assert_type(JoinedPlanes.from_json("{}").compute().roof.compute(), Roof)
assert_type(SketchedRoof.from_json("{}").compute().filled(["1 ft"]), list[MeasuredPlane])
assert_type(Snapping.from_json("{}").compute().moves[0].by, Length)
