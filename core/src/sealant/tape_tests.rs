use super::cautions::{ALL, SKEW_WITHOUT_LAPS};
use super::*;
use crate::error::ErrorKind;
use crate::num;
use crate::record::Calculation;
use crate::units::{Angle, Length, LengthUnit};
use proptest::prelude::*;

fn piece(across: i16, rise: i16) -> SurfacePiece {
    SurfacePiece { across: Length::inches(across), rise: Length::inches(rise) }
}

fn tape(degrees: f64) -> TapeLine {
    TapeLine {
        section: vec![piece(13, 0), piece(1, 2), piece(1, 0), piece(1, -2)],
        bays: 10,
        meeting: Angle::degrees_from(degrees).unwrap(),
        lap: Length::inches(1),
        laps_per_bay: 0,
        waste_ratio: 0.0,
        roll: Length::feet(25),
    }
}

#[test]
fn a_trapezoid_seam_square_and_skew() {
    let p = tape(90.0).compute().unwrap();
    assert_eq!(p.straight_per_bay, Length::inches(16));
    assert!((p.per_bay.get(LengthUnit::Inch) - (14.0 + 2.0 * 5.0_f64.sqrt())).abs() < 1e-9);
    assert_eq!(p.cautions, []);
    // At 30 degrees everything across doubles, the rises stay.
    let p = tape(30.0).compute().unwrap();
    assert!((p.per_bay.get(LengthUnit::Inch) - (28.0 + 2.0 * 8.0_f64.sqrt())).abs() < 1e-9);
    assert_eq!(p.cautions[0].code(), SKEW_WITHOUT_LAPS);
    assert!(p.cautions[0].message().contains("each of the 4 changes"));
    assert_eq!(tape(106.0).compute().unwrap().cautions.len(), 1);
    assert_eq!(tape(104.0).compute().unwrap().cautions.len(), 0);
}

#[test]
fn whole_rolls_are_bought() {
    let mut t = tape(90.0);
    t.section = vec![piece(15, 0)];
    // Ten bays of 15 in are 12 1/2 ft; with 100 percent waste exactly one roll, with a hair more two.
    t.waste_ratio = 1.0;
    assert_eq!(t.compute().unwrap().rolls, 1);
    t.waste_ratio = 1.000_01;
    assert_eq!(t.compute().unwrap().rolls, 2);
    t.laps_per_bay = 2;
    assert_eq!(t.compute().unwrap().total, Length::inches(170));
    // 750 in in rolls of 300 in: two splices of 1 in, and 898 in hold it; 899 in do not.
    let mut t = tape(90.0);
    (t.section, t.bays) = (vec![piece(15, 0)], 50);
    let need = t.compute().unwrap();
    assert_eq!((need.total, need.rolls, need.splices), (Length::inches(750), 3, 2));
    (t.section, t.bays) = (vec![piece(898, 0)], 1);
    assert_eq!((t.compute().unwrap().rolls, t.compute().unwrap().splices), (3, 2));
    t.section = vec![piece(899, 0)];
    assert_eq!((t.compute().unwrap().rolls, t.compute().unwrap().splices), (4, 3));
    t.lap = Length::feet(25);
    assert_eq!(t.compute().unwrap_err().path(), "roll");
}

#[test]
fn bad_input_names_its_field() {
    let mut t = tape(180.0);
    (t.bays, t.lap, t.roll, t.waste_ratio) = (0, Length::inches(-1), Length::ZERO, f64::NAN);
    t.section.clear();
    let e = t.compute().unwrap_err();
    let paths: Vec<&str> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    assert_eq!(paths, ["section", "bays", "meeting", "lap", "waste_ratio", "roll"]);
    let mut t = tape(90.0);
    t.section = vec![piece(1, 0), piece(-1, 2)];
    assert_eq!(t.compute().unwrap_err().kind(), ErrorKind::Geometry);
    let mut t = tape(90.0);
    (t.lap, t.roll) = (Length::ZERO, Length::from_pm(1));
    assert_eq!(t.compute().unwrap_err().kind(), ErrorKind::TooLarge);
    t.bays = u32::MAX;
    t.section = vec![SurfacePiece { across: Length::MAX, rise: Length::ZERO }];
    assert_eq!(t.compute().unwrap_err().kind(), ErrorKind::Overflow);
}

#[test]
fn more_than_can_be_told_names_its_field() {
    let refused = |change: fn(&mut TapeLine)| {
        let mut t = tape(90.0);
        change(&mut t);
        let e = t.compute().unwrap_err();
        (e.kind(), e.path().to_owned(), e.value().map(str::to_owned))
    };
    let most = Some("4294967295".to_owned());
    assert_eq!(refused(|t| (t.laps_per_bay, t.lap) = (u32::MAX, Length::feet(10))), (ErrorKind::Overflow, "laps_per_bay".into(), most.clone()));
    assert_eq!(refused(|t| t.bays = u32::MAX), (ErrorKind::Overflow, "bays".into(), most));
    assert_eq!(refused(|t| (t.bays, t.roll) = (10_000_000, Length::inches(12))).1, "roll");
}

#[test]
fn caution_numbers_are_this_rooms_and_differ() {
    for (i, c) in ALL.iter().enumerate() {
        assert_eq!(usize::from(c.number), 5100 + i);
    }
}

proptest! {
    /// The line cut out of the extruded surface in three dimensions: points where it meets each edge.
    #[test]
    fn developed_length_is_that_of_the_line_in_space(degrees in 5.0_f64..175.0, parts in prop::collection::vec((1_i16..20, -4_i16..5), 1..8)) {
        let mut t = tape(degrees);
        t.section = parts.iter().map(|&(x, z)| piece(x, z)).collect();
        let found = t.compute().unwrap();
        // Seams run along y; the line's plane turns by the meeting angle, so a step dx across moves dx cot(phi) along y.
        let cot = num::cos_deg(degrees) / num::sin_deg(degrees);
        let want: f64 = parts.iter().map(|&(x, z)| {
            let (x, z) = (f64::from(x), f64::from(z));
            num::hypot(num::hypot(x, x * cot), z)
        }).sum();
        prop_assert!((found.per_bay.get(LengthUnit::Inch) - want).abs() < 1e-8 * want);
        prop_assert!(found.per_bay >= found.straight_per_bay || (found.per_bay.pm() - found.straight_per_bay.pm()).abs() <= 1);
        prop_assert_eq!(t.explain().unwrap().0, found);
    }
}
