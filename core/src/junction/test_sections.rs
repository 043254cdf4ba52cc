//! Sections that the tests start from, and how they tell that a point lies on a line.

use super::{Bites, ContinuousCleat, DripEdge, DripFace, DripHem, FastenerRow, LeastRule, Levels, RoofSide, SectionPoint, TopClosure, TopEnd, TrimSheet};
use crate::closure::Face;
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

pub(super) fn row() -> FastenerRow {
    FastenerRow { spacing: len("12\""), source: Source::CommonPractice }
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

/// Layers that come to 48 mm.
pub(super) fn roof(pitch: Pitch) -> RoofSide {
    RoofSide { pitch, levels: levels() }
}

/// Closures whose web stands 1 in back from the drip, their screws 1 5/8 in and their lower flange's edge 2 1/4 in.
pub(super) fn top_end() -> TopEnd {
    TopEnd {
        flange: len("8\""),
        cover: LeastRule::UFGS_UNSOLDERED,
        drip: DripEdge { leg: len("1\""), turn: practice::DRIP_TURN, hem: practice::EDGE_HEM, above_pan: len("1/4\"") },
        closure: TopClosure {
            set_back: len("1\""),
            face: Face::Web,
            lower_flange: len("1 1/4\""),
            top_flange: len("1\""),
            tape_width: len("7/8\""),
            tape_beneath: len("1/16\""),
            panel_margin: LeastRule::PANEL_MARGIN,
        },
        bites: Bites::Structure,
        screws: row(),
        rivets: Some(row()),
        hollow_seams: true,
        cap_tape_width: len("7/8\""),
        hold_back: len("2\""),
        clearance: Length::ZERO,
        turn_up: panel::TURN_UP,
        field_trim: Length::ZERO,
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

/// What is read back from a value's text without these members, each given as its path of names.
#[cfg(feature = "serde")]
pub(super) fn read_without<T: serde::Serialize + serde::de::DeserializeOwned>(value: &T, left_out: &[&str]) -> T {
    let mut json = serde_json::to_value(value).unwrap();
    for path in left_out {
        let (parent, name) = path.rsplit_once('/').unwrap();
        let members = json.pointer_mut(parent).unwrap().as_object_mut().unwrap();
        assert!(members.remove(name).is_some(), "{path}");
    }
    serde_json::from_value(json).unwrap()
}
