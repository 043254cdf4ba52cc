use super::*;
use crate::error::ErrorKind;
use crate::practice;
use crate::record::Calculation;
use crate::trim::{BendRule, BlankSide, NeutralFactor};
use crate::units::{Angle, AreaUnit, BendAngle, Length};
use proptest::prelude::*;

fn cut(degrees: f64) -> ClosureBlank {
    let bay = ClosureBay {
        coverage: Length::inches(16),
        seam_width_at_foot: Length::inches_64(32),
        seam_height: Length::inches_64(112),
        compressed_tape: Length::inches_64(4),
        meeting: Angle::degrees_from(degrees).unwrap(),
        clearance: Length::inches_64(16),
        tab: practice::closure::TAB,
        lower_flange: Length::inches_64(160),
        top_flange: Length::inches_64(72),
        top_lap: Length::ZERO,
        fasteners: ClosureFasteners::usual(),
    };
    let rule = BendRule::neutral_axis(NeutralFactor::new(0.4).unwrap());
    ClosureBlank { bay, thickness: Length::mils(24), inside_radius: Length::mils(30), relief: Length::inches_64(4), rule }
}

#[test]
fn refusals_name_their_field() {
    let with = |change: fn(&mut ClosureBlank)| {
        let mut c = cut(60.0);
        change(&mut c);
        c.compute().unwrap_err()
    };
    for (change, kind, path) in [
        ((|c| c.thickness = Length::ZERO) as fn(&mut ClosureBlank), ErrorKind::OutOfRange, "thickness"),
        (|c| c.inside_radius = Length::mils(-1), ErrorKind::OutOfRange, "inside_radius"),
        (|c| c.relief = Length::mils(-1), ErrorKind::OutOfRange, "relief"),
        (|c| c.relief = Length::inches(1), ErrorKind::Impossible, "relief"),
        (|c| c.bay.coverage = Length::ZERO, ErrorKind::OutOfRange, "bay.coverage"),
        (|c| c.bay.lower_flange = Length::mils(20), ErrorKind::Impossible, "bay.lower_flange"),
        (|c| c.bay.top_flange = Length::mils(20), ErrorKind::Impossible, "bay.top_flange"),
    ] {
        let e = with(change);
        assert!(std::iter::once(&e).chain(e.others()).any(|e| (e.kind(), e.path()) == (kind, path)), "{path}: {e}");
    }
}

#[test]
fn a_piece_without_a_top_flange_is_an_angle_with_tabs() {
    let mut plain = cut(90.0);
    plain.bay.top_flange = Length::ZERO;
    let made = plain.compute().unwrap();
    // The bend at the foot, and one for each tab.
    assert_eq!((made.planned.blank.bends.len(), made.planned.flat.bends().len()), (3, 1));
    assert!(made.planned.area > made.planned.flat.girth().times(made.piece.length));
}

proptest! {
    /// Both ends follow the seams, so what the flanges gain at one end they lose at the other: the area is that of the Z, its tabs and its laps, less the slots.
    #[test]
    fn the_ends_follow_the_seams(phi in 25.0_f64..155.0, lap in 0_i32..20) {
        let mut asked = cut(phi);
        asked.bay.top_lap = Length::inches_64(lap);
        let made = asked.compute().unwrap();
        let (flat, blank) = (&made.planned.flat, &made.planned.blank);
        let setback = |degrees: f64| 0.054 * 25.4 * crate::num::tan_deg(degrees / 2.0);
        let allowance = |degrees: f64| degrees * core::f64::consts::PI / 180.0 * (0.030 + 0.4 * 0.024) * 25.4;
        let (web, slot) = (flat.legs()[1].length().mm(), 25.4 / 16.0);
        let mut wanted = flat.girth().mm() * made.piece.length.mm() + 2.0 * Length::inches_64(lap).mm() * flat.legs()[2].length().mm();
        for degrees in [phi, 180.0 - phi] {
            // The tab's tip runs on past the end by its length and the allowance, less two setbacks.
            wanted += (web - 2.0 * slot) * (25.4 + allowance(degrees) - 2.0 * setback(degrees)) - 2.0 * slot * setback(degrees);
        }
        let area = made.planned.area.get(AreaUnit::SquareMillimetre);
        prop_assert!((area - wanted).abs() < 1e-4, "{area} {wanted}");
        // The flange's end leaves the line at the meeting angle: uphill it leans toward the far end for less than 90 degrees.
        let flange = flat.legs()[0];
        let edge = blank.outline.iter().filter(|e| e.side == BlankSide::FarEnd).find(|e| e.to.x == Length::ZERO).unwrap();
        let uphill = (edge.from.x.pm() - edge.to.x.pm()) as f64;
        let lean = (edge.to.y.pm() - edge.from.y.pm()) as f64;
        prop_assert!((lean / uphill - crate::num::cos_deg(phi) / crate::num::sin_deg(phi)).abs() < 1e-6);
        prop_assert_eq!(edge.from.x, flange.to);
        let tabs: Vec<f64> = blank.bends.iter().skip(2).map(|b| b.angle.degrees()).collect();
        prop_assert!((tabs[0] - (180.0 - phi)).abs() < 1e-9 && (tabs[1] - phi).abs() < 1e-9);
        prop_assert_eq!(blank.bends[0].angle, BendAngle::SQUARE);
        prop_assert_eq!(asked.explain().unwrap().0, made);
    }
}
