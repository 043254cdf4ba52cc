//! Sections that the tests start from, and how they tell that a point lies on a line.

use super::{Bites, CapDrip, ContinuousCleat, DripFace, DripHem, Levels, Row, SectionPoint, TopClosure, TopSide, TrimSheet};
use crate::error::Error;
use crate::num;
use crate::pitch::Pitch;
use crate::practice::{junction as practice, panel};
use crate::record::Source;
use crate::units::{Angle, Length};

pub(super) fn len(text: &str) -> Length {
    Length::parse(text).unwrap()
}

pub(super) fn mm(tenths: i32) -> Length {
    Length::micrometres(tenths * 100)
}

pub(super) fn degrees(d: f64) -> Angle {
    Angle::degrees_from(d).unwrap()
}

pub(super) fn slope(d: f64) -> Pitch {
    Pitch::from_angle(degrees(d)).unwrap()
}

pub(super) fn row() -> Row {
    Row { spacing: len("12\""), source: Source::CommonPractice }
}

pub(super) fn sheet() -> TrimSheet {
    TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(24) }
}

pub(super) fn levels() -> Levels {
    Levels { underlayment: len("1 mm"), pan: len("0.6 mm"), seam_height: len("45 mm"), tape: len("1.4 mm"), ..Levels::default() }
}

pub(super) fn cleat() -> ContinuousCleat {
    ContinuousCleat {
        sheet: TrimSheet { thickness: Length::mils(28), inside_radius: Length::mils(28) },
        height: len("2\""),
        fasteners_above_bend: len("1\""),
        fasteners: row(),
        hem: practice::EDGE_HEM,
        hem_gap: (Length::mils(28) + practice::HOOKED_HEM_ROOM).length().unwrap(),
        short_of_fold: len("1/16\""),
        engagement: len("3/8\""),
    }
}

pub(super) fn face() -> DripFace {
    DripFace { depth: len("4\""), kick: degrees(40.0), clears: len("5/8\""), hem: DripHem::Hooked(cleat()) }
}

/// The layers come to 48 mm.
pub(super) fn top_side(pitch: Pitch) -> TopSide {
    TopSide {
        pitch,
        levels: levels(),
        hold_back: len("2\""),
        turn_up: panel::TURN_UP,
        panel_margin: len("1/2\""),
        closure: TopClosure {
            face: len("5\""),
            lower_flange: len("1 1/4\""),
            top_flange: len("1\""),
            face_to_screws: len("5/8\""),
            tape_width: len("7/8\""),
            tape: len("1/16\""),
            bites: Bites::Structure,
            screws: row(),
        },
        hollow_seams: true,
        cap_tape_width: len("7/8\""),
        cover: len("1\""),
        drip: CapDrip { leg: len("1\""), turn: Angle::SQUARE, hem: practice::EDGE_HEM, above_pan: len("1/4\"") },
        rivets: Some(row()),
    }
}

/// The signed distance of a point from the line through the origin that falls or rises at this angle, toward the left of one who walks to +x.
pub(super) fn off(p: SectionPoint, rise: f64) -> f64 {
    p.z.mm() * num::cos_deg(rise) - p.x.mm() * num::sin_deg(rise)
}

pub(super) fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

pub(super) fn between(a: SectionPoint, b: SectionPoint) -> f64 {
    num::hypot(a.x.mm() - b.x.mm(), a.z.mm() - b.z.mm())
}

/// Every path of an error and of the errors beside it.
pub(super) fn paths(e: &Error) -> Vec<&str> {
    std::iter::once(e.path()).chain(e.others().iter().map(|o| o.path())).collect()
}
