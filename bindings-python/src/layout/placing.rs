//! Where seams are put, and their marks.

use crate::assembly::TapeReading;
use crate::document::document;
use crate::layout::Start;
use crate::names::name_of;
use crate::place::{cautions, part};
use crate::record::Caution;
use crate::roof::Point;
use crate::units::{Angle, Area, Length, Mass};
use pyo3::prelude::*;
use seamwright::layout as core_layout;

document! {
    /// The seams of a plane moved as a whole, so that they keep clear of what stands in it.
    ///
    /// >>> from seamwright.layout import SeamClearance
    /// >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    /// >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("72 in", "0 in"), ("72 in", "90 in"), ("0 in", "90 in")]]
    /// >>> step = {"increment": '1/16"', "rounding": "half-away"}
    /// >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    /// ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    /// ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    /// >>> pipe = {"name": "pipe", "what": {"point": {"x": "33 in", "y": "40 in"}}, "clearance": "4 in"}
    /// >>> found = SeamClearance.from_dict({"layout": layout, "clear_of": [pipe], "prefer": "nearest"}).compute()
    /// >>> format(found.shift, "in/16"), found.clear, found.asked.panels, found.found.panels
    /// ('-3"', True, 5, 5)
    SeamClearance(core_layout::SeamClearance) in "seamwright.layout" gives SeamShift
}

part! {
    /// The shift found, with what it costs.
    SeamShift(core_layout::SeamShift) in "seamwright.layout",
    shown found: format_args!("{}, clear: {}", found.shift, found.clear);

    /// The start to lay by: a datum on a seam.
    start(found) -> Start = Start::of(found.start);
    /// How far the seams move from the start asked for, to the right.
    shift(found) -> Length = Length(found.shift);
    /// Whether every clearance holds.
    clear(found) -> bool = found.clear;
    /// How far seams are from each thing, in the order given.
    distances(found, here) -> Vec<SeamDistance> = here.all("distances", &found.distances);
    /// Every shift that keeps everything clear, as its first and last.
    ranges(found) -> Vec<(Length, Length)> = found.ranges.iter().map(|r| (Length(r.from), Length(r.to))).collect();
    /// The width of the panel at the left bound of the plane.
    left_end(found) -> Length = Length(found.left_end);
    /// The width of the panel at the right bound.
    right_end(found) -> Length = Length(found.right_end);
    /// What the start asked for would take; ``None`` where it is refused.
    asked(found, here) -> Option<LayCost> = found.asked.as_ref().map(|cost| here.one("asked", cost));
    /// What the shift takes.
    found(found, here) -> LayCost = here.one("found", &found.found);
    /// What to know before it is laid so.
    cautions(found) -> Vec<Caution> = cautions(&found.cautions);
}

part! {
    /// How far the seams are from one thing.
    SeamDistance(core_layout::SeamDistance) in "seamwright.layout",
    shown of: format_args!("{}, {}", of.name, of.distance);

    /// What it is called.
    name(of) -> String = of.name.clone();
    /// The x of the nearest seam line.
    seam(of) -> Length = Length(of.seam);
    /// How far that is from it; less than zero where the seam runs through it.
    distance(of) -> Length = Length(of.distance);
    /// What is left of the distance beyond the clearance.
    spare(of) -> Length = Length(of.spare);
}

part! {
    /// What a plane takes as it is laid.
    LayCost(core_layout::LayCost) in "seamwright.layout",
    shown cost: format_args!("{} panels, {}", cost.panels, cost.coil);

    /// Panels.
    panels(cost) -> usize = cost.panels;
    /// Pieces to form.
    pieces(cost) -> u64 = cost.pieces;
    /// Different marks.
    lengths(cost) -> usize = cost.lengths;
    /// The coil.
    coil(cost) -> Length = Length(cost.coil);
    /// Its mass, where the sheet's is known.
    mass(cost) -> Option<Mass> = cost.mass.map(Mass);
}

document! {
    /// A layout whose direction of laying is to be chosen.
    ///
    /// >>> from seamwright.layout import DirectionOfLay
    /// >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    /// >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("72 in", "0 in"), ("72 in", "90 in"), ("0 in", "90 in")]]
    /// >>> step = {"increment": '1/16"', "rounding": "half-away"}
    /// >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    /// ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    /// ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    /// >>> ways = DirectionOfLay.from_dict({"layout": layout, "wind_from": "left"}).compute()
    /// >>> [format(way.widest_offcut, "in/16") for way in (ways.left_to_right, ways.right_to_left)], ways.left_to_right.laps_face_wind
    /// (['9 1/4"', '9 1/2"'], True)
    DirectionOfLay(core_layout::DirectionOfLay) in "seamwright.layout" gives LayDirections
}

part! {
    /// Both directions of laying.
    LayDirections(core_layout::LayDirections) in "seamwright.layout",
    shown ways: format_args!("{} or {} ripped off", ways.left_to_right.offcut, ways.right_to_left.offcut);

    /// From left to right.
    left_to_right(ways, here) -> DirectionCost = here.one("left_to_right", &ways.left_to_right);
    /// From right to left.
    right_to_left(ways, here) -> DirectionCost = here.one("right_to_left", &ways.right_to_left);
    /// What to know of the choice.
    cautions(ways) -> Vec<Caution> = cautions(&ways.cautions);
}

part! {
    /// What one direction costs.
    DirectionCost(core_layout::DirectionCost) in "seamwright.layout",
    shown cost: format_args!("{} ripped, {}", cost.ripped, cost.offcut);

    /// The direction.
    direction(cost) -> String = name_of(&cost.direction)?;
    /// Whether the first strip to be laid has a cut edge.
    starts_on_rip(cost) -> bool = cost.starts_on_rip;
    /// Panels with a cut edge beside the slope.
    ripped(cost) -> usize = cost.ripped;
    /// Ripped panels whose open leg is cut away.
    open_legs_cut(cost) -> usize = cost.open_legs_cut;
    /// Ripped panels whose overlapping leg is cut away.
    overlapping_legs_cut(cost) -> usize = cost.overlapping_legs_cut;
    /// The widest strip that is ripped off a panel, its leg with it.
    widest_offcut(cost) -> Length = Length(cost.widest_offcut);
    /// Everything that is ripped off.
    offcut(cost) -> Area = Area(cost.offcut);
    /// Its mass, where the sheet's is known.
    offcut_mass(cost) -> Option<Mass> = cost.offcut_mass.map(Mass);
    /// Whether the laps look into the wind, where its side is known.
    laps_face_wind(cost) -> Option<bool> = cost.laps_face_wind;
}

document! {
    /// Whole panels between two edges that are not parallel, each drawn out or pushed together a little.
    ///
    /// >>> from seamwright.layout import TaperedLay
    /// >>> rake = {"foot": "320 in", "head": "321 in", "run": "20 ft", "coverage": "16 in", "wider": '1/8"', "narrower": '1/8"'}
    /// >>> laid = TaperedLay.from_dict(rake).compute()
    /// >>> laid.panels, format(laid.head, "in.2"), len(laid.marks)
    /// (20, '16.05 in', 21)
    TaperedLay(core_layout::TaperedLay) in "seamwright.layout" gives TaperedPanels
}

part! {
    /// A tapered stretch.
    TaperedPanels(core_layout::TaperedPanels) in "seamwright.layout",
    shown of: format_args!("{} panels, {} to {}", of.panels, of.foot, of.head);

    /// How many.
    panels(of) -> u32 = of.panels;
    /// The fewest that the panel allows.
    fewest(of) -> u32 = of.fewest;
    /// The most.
    most(of) -> u32 = of.most;
    /// What each covers at the foot.
    foot(of) -> Length = Length(of.foot);
    /// What each covers at the head.
    head(of) -> Length = Length(of.head);
    /// Foot less coverage.
    foot_off(of) -> Length = Length(of.foot_off);
    /// Head less coverage.
    head_off(of) -> Length = Length(of.head_off);
    /// How much wider each is at the head than at the foot.
    taper(of) -> Length = Length(of.taper);
    /// The angle between the first and the last seam.
    out_of_square(of) -> Angle = Angle(of.out_of_square);
    /// Every seam, at the foot and at the head, from the first.
    marks(of) -> Vec<(Length, Length)> = of.marks.iter().map(|m| (Length(m.foot), Length(m.head))).collect();
}

document! {
    /// The seams of a layout, to be marked on the roof, with the checks that keep creep from adding up.
    ///
    /// >>> from seamwright.layout import SeamMarks
    /// >>> nothing = {"end": {"reach": {"hold-back": "0 in"}, "hold": "slides", "source": "common-practice"}}
    /// >>> ring = [{"x": x, "y": y} for x, y in [("0 in", "0 in"), ("72 in", "0 in"), ("72 in", "90 in"), ("0 in", "90 in")]]
    /// >>> step = {"increment": '1/16"', "rounding": "half-away"}
    /// >>> layout = {"outline": {"outer": ring}, "start": "left", "edges": [nothing, "side", nothing, "side"],
    /// ...     "panel": {"coverage": "16 in", "seam_height": "1 in", "seam": {"double-lock": {"lock": '1/4"'}}},
    /// ...     "rounding": {"both_finished": step, "one_finished": step, "field_cut": step}}
    /// >>> creep = {"each": '1/32"', "every": 2}
    /// >>> marked = SeamMarks.from_dict({"layout": layout, "from": "left", "tape": step, "creep": creep}).compute()
    /// >>> [format(seam.across.read, "in/16") for seam in marked.seams], [check.panels for check in marked.checks]
    /// (['0"', '16"', '32"', '48"', '64"'], [2, 4])
    SeamMarks(core_layout::SeamMarks) in "seamwright.layout" gives MarkedSeams
}

part! {
    /// Every seam's marks.
    MarkedSeams(core_layout::MarkedSeams) in "seamwright.layout",
    shown marked: format_args!("{} seams, {} checks", marked.seams.len(), marked.checks.len());

    /// The x that marks run from.
    datum(marked) -> Length = Length(marked.from);
    /// The marks, from the left.
    seams(marked, here) -> Vec<SeamMark> = here.all("seams", &marked.seams);
    /// Where the crew checks for creep.
    checks(marked, here) -> Vec<CreepCheck> = here.all("checks", &marked.checks);
    /// What to know before the first panel is laid.
    cautions(marked) -> Vec<Caution> = cautions(&marked.cautions);
}

part! {
    /// The marks of one seam.
    SeamMark(core_layout::SeamMark) in "seamwright.layout",
    shown mark: format_args!("{} at {}", mark.seam, mark.across.read);

    /// Its number among the seams of the laid plane.
    seam(mark) -> usize = mark.seam;
    /// Its x.
    x(mark) -> Length = Length(mark.x);
    /// From the datum, across the slope.
    across(mark, here) -> TapeReading = here.one("across", &mark.across);
    /// Where it meets its lowest edge.
    foot(mark, here) -> Option<EndMark> = mark.foot.as_ref().map(|end| here.one("foot", end));
    /// Where it meets its highest edge.
    head(mark, here) -> Option<EndMark> = mark.head.as_ref().map(|end| here.one("head", end));
}

part! {
    /// Where a seam meets the edge that its panels end at.
    EndMark(core_layout::EndMark) in "seamwright.layout",
    shown mark: format_args!("edge {}, {}", mark.edge, mark.along.read);

    /// The edge, in the order of the outline's edges.
    edge(mark) -> usize = mark.edge;
    /// The point, on the junction line.
    at(mark) -> Point = Point(mark.at);
    /// Along the edge, from its end that is the nearer to where marks run from.
    along(mark, here) -> TapeReading = here.one("along", &mark.along);
}

part! {
    /// A mark that the crew checks against.
    CreepCheck(core_layout::CreepCheck) in "seamwright.layout",
    shown check: format_args!("after {} panels, {}", check.panels, check.across.read);

    /// Which way from the datum: left or right.
    toward(check) -> String = name_of(&check.toward)?;
    /// After how many panels from the datum.
    panels(check) -> u32 = check.panels;
    /// The x of the seam.
    x(check) -> Length = Length(check.x);
    /// From the datum, across the slope.
    across(check, here) -> TapeReading = here.one("across", &check.across);
    /// How far off the seam may be here if every mark before was recovered.
    allowed(check) -> Length = Length(check.allowed);
    /// How far off it may be if nobody ever looked.
    unchecked(check) -> Length = Length(check.unchecked);
    /// Panels from here to the next mark, or to the end.
    recover_over(check) -> u32 = check.recover_over;
    /// What each of those is pulled by.
    pull(check) -> Length = Length(check.pull);
}
