//! The classes of `seamwright.underlayment`.

use crate::document::document;
use crate::place::{cautions, lengths, part};
use crate::record::Caution;
use crate::units::{Area, Length};
use pyo3::prelude::*;
use seamwright::underlayment as core_underlayment;

document! {
    /// Courses of underlayment up a plane, from rolls, each lapping the one below.
    ///
    /// >>> from seamwright.underlayment import CourseLayout
    /// >>> corners = [("0 ft", "0 ft"), ("40 ft", "0 ft"), ("40 ft", "14 ft"), ("0 ft", "14 ft")]
    /// >>> plane = {"outer": [{"x": x, "y": y} for x, y in corners]}
    /// >>> rule = {"head_lap": "2 in", "end_lap": "4 in", "stagger": "6 ft", "source": "common-practice"}
    /// >>> laid = CourseLayout.from_dict({"outline": plane, "roll": {"width": "36 in", "length": "72 ft"}, "rule": rule}).compute()
    /// >>> [format(course.top, "in/16") for course in laid.courses], laid.rolls
    /// (['36"', '70"', '104"', '138"', '168"'], 3)
    CourseLayout(core_underlayment::CourseLayout) in "seamwright.underlayment" gives LaidCourses
}

document! {
    /// The membrane along an eave, up to where it must reach inside the wall.
    ///
    /// >>> from seamwright.underlayment import EaveMembrane
    /// >>> reach = {"inside": "24 in", "source": "common-practice"}
    /// >>> eave = EaveMembrane.from_dict({"pitch": "12:12", "overhang": "12 in", "reach": reach, "width": "36 in", "head_lap": "4 in"})
    /// >>> band = eave.compute()
    /// >>> format(band.least, "in.3"), band.courses, format(band.covers, "in/16")
    /// ('50.912 in', 2, '68"')
    EaveMembrane(core_underlayment::EaveMembrane) in "seamwright.underlayment" gives EaveBand
}

document! {
    /// The membrane under a valley's pan, its full length and centred on it.
    ///
    /// >>> from seamwright.underlayment import ValleyMembrane
    /// >>> roll = {"width": "36 in", "length": "66 ft"}
    /// >>> strip = ValleyMembrane.from_dict({"line": "20 ft", "pan": "24 in", "roll": roll, "end_lap": "6 in"}).compute()
    /// >>> strip.pieces, format(strip.length, "in/16"), format(strip.beyond, "in/16")
    /// (1, '240"', '6"')
    ValleyMembrane(core_underlayment::ValleyMembrane) in "seamwright.underlayment" gives ValleyStrip
}

part! {
    /// Courses as they are laid.
    LaidCourses(core_underlayment::LaidCourses) in "seamwright.underlayment",
    shown laid: format_args!("{} courses, {} rolls", laid.courses.len(), laid.rolls);

    /// The courses, from the foot up, the starter strip first.
    courses(laid, here) -> Vec<Course> = here.all("courses", &laid.courses);
    /// Whole rolls that are opened, beside the one in hand.
    rolls(laid) -> u32 = laid.rolls;
    /// All pieces together.
    length(laid) -> Length = Length(laid.length);
    /// What is left on the last roll.
    left(laid) -> Length = Length(laid.left);
    /// The area that is covered, of the plane itself.
    covered(laid) -> Area = Area(laid.covered);
    /// The area of all pieces.
    laid(laid) -> Area = Area(laid.laid);
    /// The share of the rolls, what is left on the last of them left out, that covers nothing.
    waste_ratio(laid) -> f64 = laid.waste_ratio;
    /// What to know before it is ordered.
    cautions(laid) -> Vec<Caution> = cautions(&laid.cautions);
}

part! {
    /// A course of underlayment.
    Course(core_underlayment::Course) in "seamwright.underlayment",
    shown course: format_args!("{} to {}, {} pieces", course.foot, course.top, course.pieces.len());

    /// Its lower edge, up the slope from the plane's lowest point.
    foot(course) -> Length = Length(course.foot);
    /// Its upper edge from there: the running mark.
    top(course) -> Length = Length(course.top);
    /// The width of the strip: the roll's, or the starter's.
    width(course) -> Length = Length(course.width);
    /// What shows of it above the next course's lap, up the slope; the whole of it at the top.
    exposure(course) -> Length = Length(course.exposure);
    /// Its pieces from left to right.
    pieces(course, here) -> Vec<CoursePiece> = here.all("pieces", &course.pieces);
}

part! {
    /// A piece of a course.
    CoursePiece(core_underlayment::CoursePiece) in "seamwright.underlayment",
    shown piece: format_args!("{} to {}", piece.from, piece.to);

    /// Where it starts, across the slope.
    start(piece) -> Length = Length(piece.from);
    /// Where it ends.
    stop(piece) -> Length = Length(piece.to);
    /// Its length, laps and all.
    length(piece) -> Length = Length(piece.length);
}

part! {
    /// A band of membrane along an eave.
    EaveBand(core_underlayment::EaveBand) in "seamwright.underlayment",
    shown band: format_args!("{} courses up to {}", band.courses, band.covers);

    /// How far up the slope from the eave it must reach.
    least(band) -> Length = Length(band.least);
    /// Whether the least of steep roofs governs, and not the wall line.
    steep(band) -> bool = band.steep;
    /// Courses.
    courses(band) -> u32 = band.courses;
    /// How far up the slope they reach.
    covers(band) -> Length = Length(band.covers);
    /// The running marks of their top edges, from the eave.
    marks(band) -> Vec<Length> = lengths(&band.marks);
}

part! {
    /// A membrane under a valley.
    ValleyStrip(core_underlayment::ValleyStrip) in "seamwright.underlayment",
    shown strip: format_args!("{} pieces, {}", strip.pieces, strip.length);

    /// Pieces, from the bottom up.
    pieces(strip) -> u32 = strip.pieces;
    /// All of them, laps and all.
    length(strip) -> Length = Length(strip.length);
    /// How far it reaches beyond the pan on each side; less than nothing where it is narrower.
    beyond(strip) -> Length = Length(strip.beyond);
    /// What to know before it is ordered.
    cautions(strip) -> Vec<Caution> = cautions(&strip.cautions);
}
