use super::cautions::{ALL, FOLD_DRAWS_OFF, GAP_CLOSES, MOVES_ALONG_LINE};
use super::*;
use crate::error::ErrorKind;
use crate::practice;
use crate::record::Calculation;
use crate::units::{Angle, Expansion, ExpansionUnit, Length, LengthUnit, Temperature, TemperatureScale};
use proptest::prelude::*;

fn end(end: MovingEnd, alpha_per_f: f64, laid: f64) -> EndMovement {
    let at = |f| Temperature::new(f, TemperatureScale::Fahrenheit).unwrap();
    EndMovement {
        end,
        expansion: Expansion::new(alpha_per_f, ExpansionUnit::PerDegreeFahrenheit).unwrap(),
        to_fixed: Length::feet(40),
        coldest: at(-20.0),
        laid: at(laid),
        hottest: at(160.0),
        clearance: practice::movement::CLEARANCE,
        engagement: practice::movement::ENGAGEMENT,
        meeting: Angle::SQUARE,
    }
}

#[test]
fn forty_feet_and_180_degrees() {
    // Common practice: clearance 1/8 in, engagement 3/8 in: steel 1.06 in, aluminium 1.61 in.
    let fold = |alpha| end(MovingEnd::LowerHooked, alpha, 70.0).compute().unwrap().least_fold.get(LengthUnit::Inch);
    assert!((fold(6.5e-6) - 1.06).abs() < 0.005);
    assert!((fold(12.8e-6) - 1.61).abs() < 0.005);
}

#[test]
fn a_roof_laid_in_summer_gets_the_wider_gap_below_and_the_narrower_above() {
    let gap = |which, laid| end(which, 6.5e-6, laid).compute().unwrap().gap_when_laid;
    assert!(gap(MovingEnd::LowerHooked, 110.0) > gap(MovingEnd::LowerHooked, 30.0));
    assert!(gap(MovingEnd::UpperSliding, 110.0) < gap(MovingEnd::UpperSliding, 30.0));
    // Laid at the coldest, a lower end's gap only opens.
    assert_eq!(gap(MovingEnd::LowerHooked, -20.0), practice::movement::CLEARANCE);
    assert_eq!(gap(MovingEnd::UpperSliding, 160.0), practice::movement::CLEARANCE);
}

#[test]
fn a_check_names_what_fails_and_what_would_do() {
    let movement = end(MovingEnd::LowerHooked, 6.5e-6, 70.0);
    let v = EndCheck { movement, fold: Length::inches(1), gap: Length::ZERO }.compute().unwrap();
    assert!(!v.holds && v.least_gap.is_negative());
    assert_eq!(v.cautions.iter().map(|c| c.code()).collect::<Vec<_>>(), [GAP_CLOSES]);
    assert!(v.cautions[0].message().contains("-28.8"), "{}", v.cautions[0]);
    let v = EndCheck { movement, fold: Length::inches(1), gap: Length::inches_64(32) }.compute().unwrap();
    assert_eq!(v.cautions.iter().map(|c| c.code()).collect::<Vec<_>>(), [FOLD_DRAWS_OFF]);
    assert_eq!(v.gaps, None);
    let would = v.would_do;
    let v = EndCheck { movement, fold: would.least_fold, gap: would.gap_when_laid }.compute().unwrap();
    assert!(v.holds);
    assert_eq!(v.gaps, Some((would.gap_when_laid, would.gap_when_laid)));
}

#[test]
fn a_skew_end_moves_along_its_line_too() {
    let mut movement = end(MovingEnd::UpperSliding, 12.8e-6, 70.0);
    let square = movement.compute().unwrap();
    movement.meeting = Angle::degrees_from(150.0).unwrap();
    let skew = movement.compute().unwrap();
    let travel = |r: &EndRoom| (r.closing + r.opening).length().unwrap().get(LengthUnit::Inch);
    // sin 150 = 1/2, |cos 150| = sqrt(3)/2.
    assert!((travel(&skew) - travel(&square) / 2.0).abs() < 1e-9);
    assert!((skew.along.get(LengthUnit::Inch) - travel(&square) * 3.0_f64.sqrt() / 2.0).abs() < 1e-9);
    let v = EndCheck { movement, fold: Length::inches(3), gap: Length::inches(1) }.compute().unwrap();
    assert!(v.holds);
    assert_eq!(v.cautions[0].code(), MOVES_ALONG_LINE);
}

#[test]
fn metal_that_does_not_move_allows_any_distance() {
    let movement = end(MovingEnd::LowerHooked, 0.0, 70.0);
    let v = EndCheck { movement, fold: Length::inches_64(32), gap: Length::inches_64(8) }.compute().unwrap();
    assert!(v.holds);
    assert_eq!(v.greatest_to_fixed, None);
}

#[test]
fn bad_input_names_its_field() {
    let mut m = end(MovingEnd::LowerHooked, 6.5e-6, 200.0);
    m.to_fixed = Length::from_pm(-1);
    m.meeting = Angle::ZERO;
    let e = EndCheck { movement: m, fold: Length::from_pm(-1), gap: Length::ZERO }.compute().unwrap_err();
    let all: Vec<(ErrorKind, &str)> = core::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path())).collect();
    assert_eq!(
        all,
        [
            (ErrorKind::OutOfRange, "fold"),
            (ErrorKind::OutOfRange, "movement.to_fixed"),
            (ErrorKind::OutOfRange, "movement.meeting"),
            (ErrorKind::Conflict, "movement.laid")
        ]
    );
    core::mem::swap(&mut m.coldest, &mut m.hottest);
    assert!(core::iter::once(&m.compute().unwrap_err()).chain(m.compute().unwrap_err().others()).any(|e| e.path() == "coldest"));
}

#[test]
fn caution_numbers_are_this_rooms_and_differ() {
    for (i, c) in ALL.iter().enumerate() {
        assert_eq!(usize::from(c.number), 3300 + i);
    }
}

proptest! {
    /// The closed form at every temperature of the year, worked out here from the law alone.
    #[test]
    fn the_least_room_is_enough_and_no_less_is(
        upper: bool, alpha in 1e-6_f64..2e-5, inches in 1_i16..2000, cold in -60.0_f64..40.0, spans in (0.0_f64..100.0, 0.0_f64..100.0), degrees in 5.0_f64..175.0,
    ) {
        let which = if upper { MovingEnd::UpperSliding } else { MovingEnd::LowerHooked };
        let mut m = end(which, alpha, 0.0);
        let at = |f| Temperature::new(f, TemperatureScale::Fahrenheit).unwrap();
        (m.coldest, m.laid, m.hottest) = (at(cold), at(cold + spans.0), at(cold + spans.0 + spans.1));
        m.to_fixed = Length::inches(inches);
        m.meeting = Angle::degrees_from(degrees).unwrap();
        let room = m.compute().unwrap();
        let (c, e) = (m.clearance.get(LengthUnit::Inch), m.engagement.get(LengthUnit::Inch));
        let (fold, gap) = (room.least_fold.get(LengthUnit::Inch), room.gap_when_laid.get(LengthUnit::Inch));
        let (mut least_gap, mut least_hold) = (f64::MAX, f64::MAX);
        for i in 0..=10 {
            let t = cold + (spans.0 + spans.1) * f64::from(i) / 10.0;
            let grown = alpha * f64::from(inches) * (t - cold - spans.0) * crate::num::sin_deg(degrees);
            let g = if upper { gap - grown } else { gap + grown };
            least_gap = least_gap.min(g);
            least_hold = least_hold.min(fold - g);
        }
        prop_assert!((least_gap - c).abs() < 1e-8);
        prop_assert!((least_hold - e).abs() < 1e-8);
        let check = EndCheck { movement: m, fold: room.least_fold, gap: room.gap_when_laid };
        let v = check.compute().unwrap();
        prop_assert!(v.holds);
        let less = EndCheck { fold: Length::from_pm(room.least_fold.pm() - 1), ..check }.compute().unwrap();
        prop_assert!(!less.holds && less.gaps.is_none());
        if let Some(l) = v.greatest_to_fixed {
            prop_assert!((l.mm() - m.to_fixed.mm()).abs() < 1e-6 * (1.0 + m.to_fixed.mm()) / (spans.0 + spans.1).min(1.0).max(1e-6));
        }
        prop_assert_eq!(check.explain().unwrap().0, v);
    }
}
