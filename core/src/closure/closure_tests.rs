use super::cautions::{ALL, BENDS_IGNORED, FASTENER_FROM_TAB_UNUSUAL, FASTENERS_NOT_ENGINEERED};
use super::*;
use crate::error::ErrorKind;
use crate::num;
use crate::practice;
use crate::record::Calculation;
use crate::units::{Angle, Length, LengthUnit};
use proptest::prelude::*;

fn inches(text: &str) -> Length {
    Length::parse_in(text, LengthUnit::Inch).unwrap()
}

fn bay(degrees: f64) -> ClosureBay {
    ClosureBay {
        coverage: inches("16"),
        seam_width_at_foot: inches("1/2"),
        seam_height: inches("1 3/4"),
        compressed_tape: inches("1/16"),
        meeting: Angle::degrees_from(degrees).unwrap(),
        clearance: inches("1/4"),
        tab: practice::closure::TAB,
        lower_flange: inches("2 1/2"),
        top_flange: inches("1 1/8"),
        top_lap: Length::ZERO,
        fasteners: ClosureFasteners::usual(),
    }
}

#[test]
fn facts_of_the_trade() {
    // Common practice: set 1/2 in back, with 2 3/8 in from the face to the flange's centre, the fasteners are 2 7/8 in from the trim's edge.
    let mut s = ClosureSetting { set_back: practice::closure::SET_BACK, face: Face::LeadingEdge, lower_flange: inches("2 1/2"), top_flange: inches("1 1/8") };
    let lines = s.compute().unwrap();
    assert_eq!((lines.leading_edge, lines.web, lines.fasteners, lines.back), (inches("1/2"), inches("1 5/8"), inches("2 7/8"), inches("4 1/8")));
    // The same from the web of a closure with a wider flange.
    (s.face, s.lower_flange) = (Face::Web, inches("4 3/4"));
    assert_eq!(s.compute().unwrap().fasteners, inches("2 7/8"));
    // Tabs and folds 1 in; fasteners at 12 in on centre until engineered.
    assert_eq!((practice::closure::TAB, practice::closure::ON_CENTRE), (inches("1"), inches("12")));
}

#[test]
fn a_square_bay() {
    let p = bay(90.0).compute().unwrap();
    assert_eq!((p.length, p.web_height, p.flange_shift), (inches("15 1/4"), inches("1 11/16"), Length::ZERO));
    assert_eq!((p.tab_bends.0.degrees(), p.tab_bends.1.degrees(), p.flange_cut), (90.0, 90.0, Angle::SQUARE));
    // 15 1/4 less 1 1/2 at both ends is 12 1/4: two spaces.
    assert_eq!(p.fasteners.positions, [inches("1 1/2"), inches("7 5/8"), inches("13 3/4")]);
    assert_eq!(p.blank, Blank { length: inches("17 1/4"), width: inches("5 5/16") });
    assert_eq!(p.cautions.iter().map(|c| c.code()).collect::<Vec<_>>(), [FASTENERS_NOT_ENGINEERED, BENDS_IGNORED]);
}

#[test]
fn an_engineers_spacing_replaces_the_starting_figure() {
    let mut b = bay(90.0);
    b.fasteners = ClosureFasteners { from_tab: inches("3"), engineered: Some(inches("6")) };
    let p = b.compute().unwrap();
    assert_eq!((p.fasteners.count(), p.fasteners.spacing), (3, Some(inches("4 5/8"))));
    assert_eq!(p.cautions.iter().map(|c| c.code()).collect::<Vec<_>>(), [FASTENER_FROM_TAB_UNUSUAL, BENDS_IGNORED]);
}

#[test]
fn a_45_degree_bay() {
    // sin 45 = cos 45: the bay is sqrt 2 times the clear width, the flange overhangs by its own width.
    let p = bay(45.0).compute().unwrap();
    assert!((p.length.get(LengthUnit::Inch) - (15.5 * 2.0_f64.sqrt() - 0.25)).abs() < 1e-9);
    assert_eq!((p.tab_bends.0.degrees(), p.tab_bends.1.degrees()), (45.0, 135.0));
    assert!((p.flange_shift.get(LengthUnit::Inch) - 1.25).abs() < 1e-9);
    let want = p.length.get(LengthUnit::Inch) + 2.5 + 1.125;
    assert!((p.blank.length.get(LengthUnit::Inch) - want).abs() < 1e-9);
}

#[test]
fn bad_input_names_its_field() {
    let paths = |b: ClosureBay| {
        let e = b.compute().unwrap_err();
        core::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path().to_owned())).collect::<Vec<_>>()
    };
    let mut b = bay(0.0);
    (b.coverage, b.clearance, b.fasteners.engineered) = (Length::ZERO, inches("-1"), Some(Length::ZERO));
    let range = |p: &str| (ErrorKind::OutOfRange, p.to_owned());
    assert_eq!(paths(b), [range("coverage"), range("clearance"), range("fasteners.engineered"), range("meeting")]);
    let not = |p: &str| [(ErrorKind::Impossible, p.to_owned())];
    let mut b = bay(90.0);
    b.seam_width_at_foot = inches("16");
    assert_eq!(paths(b), not("seam_width_at_foot"));
    let mut b = bay(90.0);
    b.compressed_tape = inches("2");
    assert_eq!(paths(b), not("compressed_tape"));
    let mut b = bay(90.0);
    b.clearance = inches("15 1/2");
    assert_eq!(paths(b), not("clearance"));
    let mut b = bay(90.0);
    b.tab = inches("15 1/4");
    assert!(b.compute().is_ok());
    b.tab = inches("15 5/16");
    assert_eq!(paths(b), not("tab"));
    b.tab = Length::ZERO;
    assert_eq!(paths(b), [range("tab")]);
    let mut b = bay(90.0);
    b.coverage = inches("3 3/4");
    assert_eq!(paths(b), not("fasteners.from_tab"));
    let e = ClosureSetting { set_back: inches("-1"), face: Face::Web, lower_flange: Length::ZERO, top_flange: inches("-1") }.compute().unwrap_err();
    assert_eq!((e.path(), e.others().len()), ("set_back", 2));
}

#[test]
fn a_lap_needs_a_top_flange_and_a_piece_longer_than_itself() {
    let refused = |change: fn(&mut ClosureBay)| {
        let mut b = bay(60.0);
        change(&mut b);
        let e = b.compute().unwrap_err();
        (e.kind(), e.path().to_owned(), e.value().map(str::to_owned))
    };
    let lap = Some("50.8 mm".to_owned());
    assert_eq!(refused(|b| (b.top_flange, b.top_lap) = (Length::ZERO, Length::inches(2))), (ErrorKind::Conflict, "top_lap".into(), lap.clone()));
    assert_eq!(
        refused(|b| (b.top_flange, b.top_lap) = (Length::inches(1), Length::inches(48))),
        (ErrorKind::Impossible, "top_lap".into(), Some("1219.2 mm".into()))
    );
    // Too many fasteners, and flanges whose skew runs out of range, are said at what is given.
    assert_eq!(refused(|b| b.fasteners.engineered = Some(Length::from_pm(1))).1, "fasteners.engineered");
    let far = Length::from_pm(i64::MAX / 2);
    assert_eq!(refused(|b| (b.fasteners.engineered, b.coverage) = (None, Length::from_pm(i64::MAX / 4))).1, "coverage");
    let mut b = bay(1.0);
    b.lower_flange = far;
    assert_eq!((b.compute().unwrap_err().kind(), b.compute().unwrap_err().path()), (ErrorKind::Overflow, "lower_flange"));
}

#[test]
fn caution_numbers_are_this_rooms_and_differ() {
    for (i, c) in ALL.iter().enumerate() {
        assert_eq!(usize::from(c.number), 5000 + i);
    }
}

proptest! {
    /// The piece against lines laid out in the plane: two seams, the junction line between them, and the directions along both.
    #[test]
    fn the_piece_fits_between_two_seams(degrees in 10.0_f64..170.0, coverage in 8_i16..36, engineered in prop::option::of(2_i16..20)) {
        let mut b = bay(degrees);
        b.coverage = Length::inches(coverage);
        b.fasteners.engineered = engineered.map(Length::inches);
        let p = b.compute().unwrap();
        // Seams rise along s = (cos, sin); the line runs along x. Feet of the seams are half a seam width inside each seam line.
        let (sx, sy) = (num::cos_deg(degrees), num::sin_deg(degrees));
        let square = |x: f64| x * sy;
        let clear = f64::from(coverage) - 0.5;
        prop_assert!((square(p.length.get(LengthUnit::Inch) + 0.25) - clear).abs() < 1e-9);
        // Both tabs turn uphill onto the seam's direction: from +x and from -x.
        let first = num::acos_deg(sx);
        let other = num::acos_deg(-sx);
        prop_assert!((p.tab_bends.0.degrees() - first).abs() < 1e-9 && (p.tab_bends.1.degrees() - other).abs() < 1e-9);
        // A point of the flange's centreline, up the slope by half its width along the seam, is shifted along the line by that much.
        prop_assert!((p.flange_shift.get(LengthUnit::Inch) - 1.25 / sy * sx).abs() < 1e-9);
        prop_assert!(p.fasteners.count() >= 2);
        prop_assert!(p.blank.length.get(LengthUnit::Inch) >= p.length.get(LengthUnit::Inch) + 2.0 - 1e-9);
        prop_assert_eq!(b.explain().unwrap().0, p);
        // Mirrored, the same piece with its ends swapped.
        let mut mirrored = b;
        mirrored.meeting = Angle::degrees_from(180.0 - degrees).unwrap();
        let m = mirrored.compute().unwrap();
        prop_assert!((m.length.mm() - b.compute().unwrap().length.mm()).abs() < 1e-9);
        prop_assert!((m.tab_bends.0.degrees() - other).abs() < 1e-9);
    }
}
