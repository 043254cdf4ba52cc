//! Crickets behind curbs.

use crate::document::document;
use crate::pitch::Pitch;
use crate::place::part;
use crate::units::{Angle, Area, Length};
use pyo3::prelude::*;
use seamwright::roof as core_roof;

document! {
    /// A cricket behind a curb: two small planes with a ridge square to the curb and two valleys. A roof takes them as ``crickets``, each behind a named hole.
    ///
    /// >>> from seamwright.roof import Cricket
    /// >>> cricket = Cricket.from_dict({"roof": "4:12", "width": "48 in", "shape": {"pitch": "4:12"}}).compute()
    /// >>> str(cricket.ridge), str(cricket.height), round(cricket.valley_plan.degrees, 9)
    /// ('609.6 mm', '203.2 mm', 45.0)
    Cricket(core_roof::Cricket) in "seamwright.roof" gives CricketFigures
}

part! {
    /// The measures of a cricket. Each plane and each valley stands once on either side.
    CricketFigures(core_roof::CricketFigures) in "seamwright.roof",
    shown c: format_args!("{} to either side, {} high at the curb", c.half_width, c.height);

    /// Half its width, level.
    half_width(c) -> Length = Length(c.half_width);
    /// How high the ridge stands at the curb over the curb's back line.
    height(c) -> Length = Length(c.height);
    /// From the curb's back up the roof to its top, along the roof's slope.
    reach(c) -> Length = Length(c.reach);
    /// The same in plan.
    reach_plan(c) -> Length = Length(c.reach_plan);
    /// Length of the ridge.
    ridge(c) -> Length = Length(c.ridge);
    /// Its slope: 0 where it is level.
    ridge_slope(c) -> Angle = Angle(c.ridge_slope);
    /// True slope of each plane.
    pitch(c) -> Pitch = Pitch(c.pitch);
    /// Length of each valley.
    valley(c) -> Length = Length(c.valley);
    /// In plan, from the curb's back to the valley.
    valley_plan(c) -> Angle = Angle(c.valley_plan);
    /// Slope of the valley itself.
    valley_slope(c) -> Angle = Angle(c.valley_slope);
    /// How the roof rises from the valley, in the section square to it.
    roof_backing(c) -> Angle = Angle(c.roof_backing);
    /// How the cricket does.
    cricket_backing(c) -> Angle = Angle(c.cricket_backing);
    /// Between the roof's seams and the valley.
    roof_meeting(c) -> Angle = Angle(c.roof_meeting);
    /// Between the cricket's seams and the valley.
    cricket_meeting(c) -> Angle = Angle(c.cricket_meeting);
    /// True area of each plane.
    area(c) -> Area = Area(c.area);
    /// True area of the roof that it covers.
    covers(c) -> Area = Area(c.covers);
    /// How high each end of it stands over the roof beside the curb.
    end_height(c) -> Length = Length(c.end_height);
}

part! {
    /// A cricket of a roof.
    PlacedCricket(core_roof::PlacedCricket) in "seamwright.roof",
    shown c: format_args!("behind {}", c.hole);

    /// Number of the plane in which it stands.
    plane(c) -> usize = c.plane;
    /// The hole behind which it stands.
    hole(c) -> String = c.hole.clone();
    /// Number of its left plane, looking up the slope.
    left(c) -> usize = c.left;
    /// Number of its right plane.
    right(c) -> usize = c.right;
    /// Its measures.
    figures(c, here) -> CricketFigures = here.one("figures", &c.figures);
}
