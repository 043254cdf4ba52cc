use super::cautions::{EDITION_NOT_CONFIRMED, HEAD_COUNTED_TO_LIMIT, HEAD_UNDER_MINIMUM, SCREW_STRENGTH_UNKNOWN};
use super::*;
use crate::error::ErrorKind;
use crate::record::{Calculation, Seen, Source};
use crate::units::{Force, ForceUnit, Length, Pressure};
use proptest::prelude::*;

#[derive(Debug, Clone, Copy, PartialEq)]
enum Kind {
    Shear,
    PullOut,
    PullOver,
}

/// SSMA product guide, "Screw Capacities" (AISI S100 section E4, allowable, safety factor 3): screw, both plies, pounds printed.
const GUIDE: &[(&str, &str, Kind, f64)] = &[
    ("#6", "0.0188 in", Kind::PullOut, 24.0),
    ("#8", "0.0188 in", Kind::PullOut, 29.0),
    ("#8", "0.0188 in", Kind::PullOver, 84.0),
    ("#10", "0.0188 in", Kind::Shear, 52.0),
    ("#10", "0.0188 in", Kind::PullOut, 33.0),
    ("#10", "0.0188 in", Kind::PullOver, 105.0),
    ("#12", "0.0188 in", Kind::Shear, 55.0),
    ("#12", "0.0188 in", Kind::PullOut, 38.0),
    ("#12", "0.0188 in", Kind::PullOver, 105.0),
    ("1/4", "0.0188 in", Kind::Shear, 60.0),
    ("1/4", "0.0188 in", Kind::PullOut, 44.0),
    ("#6", "0.0283 in", Kind::PullOut, 37.0),
    ("#6", "0.0283 in", Kind::PullOver, 127.0),
    ("#10", "0.0283 in", Kind::Shear, 96.0),
    ("#10", "0.0283 in", Kind::PullOut, 50.0),
    ("#10", "0.0283 in", Kind::PullOver, 159.0),
    ("#12", "0.0283 in", Kind::Shear, 102.0),
    ("#12", "0.0283 in", Kind::PullOut, 57.0),
    ("1/4", "0.0283 in", Kind::Shear, 110.0),
    ("1/4", "0.0283 in", Kind::PullOut, 66.0),
];

fn guide() -> Source {
    Source::published("SSMA product guide", "", "Screw Capacities", Seen::Text)
}

/// The guide's screws: diameter and head in mils, own shear and tension in pounds.
fn screw(size: &str) -> Screw {
    let (d, head, shear, tension) = match size {
        "#6" => (138, 272, 643.0, 419.0),
        "#8" => (164, 272, 1278.0, 586.0),
        "#10" => (190, 340, 1644.0, 1158.0),
        "#12" => (216, 340, 2330.0, 2325.0),
        "1/4" => (250, 409, 3048.0, 3201.0),
        _ => panic!("{size}"),
    };
    let own = |lbf| Some(NominalResistance { force: Force::new(lbf, ForceUnit::PoundForce).unwrap(), document: guide() });
    Screw { diameter: Length::mils(d), head: Length::mils(head), washer: None, shear: own(shear), tension: own(tension) }
}

fn ply(thickness: &str, ultimate: &str) -> Ply {
    Ply { thickness: Length::parse(thickness).unwrap(), ultimate: Pressure::parse(ultimate).unwrap() }
}

fn same(edition: ScrewEdition, thickness: &str, size: &str) -> ScrewConnection {
    let p = ply(thickness, "33 ksi");
    ScrewConnection { edition, head_ply: p, far_ply: p, penetration: None, screw: screw(size) }
}

fn pounds(force: Force) -> f64 {
    force.get(ForceUnit::PoundForce)
}

fn nominal(s: &ScrewStrength, state: LimitState) -> f64 {
    pounds(s.nominal(state).unwrap().force)
}

#[test]
fn a_published_table_of_allowable_screws() {
    for edition in [ScrewEdition::Y2007, ScrewEdition::Y2012, ScrewEdition::Y2016] {
        for &(size, thickness, kind, printed) in GUIDE {
            let s = same(edition, thickness, size).compute().unwrap();
            let allowable = |state| {
                let l = s.states.iter().find(|l| l.state == state).unwrap();
                pounds(l.nominal.allowable(&l.safety).unwrap().force)
            };
            let found = match kind {
                Kind::Shear => pounds(s.allowable_shear.force),
                Kind::PullOut => allowable(LimitState::PullOut).min(allowable(LimitState::ScrewTension)),
                Kind::PullOver => allowable(LimitState::PullOver).min(allowable(LimitState::ScrewTension)),
            };
            assert!((found - printed).abs() <= 0.5, "{size} {thickness} {kind:?}: {found} against {printed}");
        }
    }
}

#[test]
fn worked_examples_of_the_design_manual() {
    // AISI D110-16, p. 1-31 as quoted in an open program's tests: 0.0566 in of 65 ksi over 0.0451 in of 45 ksi, screw 0.190 in; p. 2-23 for pull-over.
    let c = ScrewConnection {
        edition: ScrewEdition::Y2016S3,
        head_ply: ply("0.0566 in", "65 ksi"),
        far_ply: ply("0.0451 in", "45 ksi"),
        penetration: None,
        screw: Screw { diameter: Length::mils(190), head: Length::mils(400), washer: None, shear: None, tension: None },
    };
    let (s, sheet) = c.explain().unwrap();
    assert!((nominal(&s, LimitState::SheetShear) - 789.0).abs() <= 0.5);
    assert!((nominal(&s, LimitState::PullOver) - 1324.0).abs() <= 0.5);
    let step = |what: &str| {
        let text = &sheet.steps().into_iter().find(|s| s.what == what).unwrap().result;
        pounds(Force::parse(text).unwrap())
    };
    assert!((step("bearing of the head ply") - 1887.0).abs() <= 0.5);
    assert!((step("bearing of the far ply") - 1041.0).abs() <= 0.5);
    let codes: Vec<_> = s.cautions.iter().map(|c| c.code()).collect();
    assert_eq!(codes, [EDITION_NOT_CONFIRMED, SCREW_STRENGTH_UNKNOWN, SCREW_STRENGTH_UNKNOWN]);
}

#[test]
fn the_supplement_takes_from_pull_out_of_thin_sheet() {
    // 1.63 x 0.0188^0.18 = 0.797; at 0.0451 in of 45 ksi with a 0.190 in screw 327.8 lb became 305.9 lb.
    let thin = |edition| nominal(&same(edition, "0.0188 in", "#10").compute().unwrap(), LimitState::PullOut);
    assert!((thin(ScrewEdition::Y2016S3) / thin(ScrewEdition::Y2016) - 0.797).abs() < 0.0005);
    let mut c = same(ScrewEdition::Y2016, "0.0451 in", "#10");
    c.far_ply.ultimate = Pressure::parse("45 ksi").unwrap();
    assert!((nominal(&c.compute().unwrap(), LimitState::PullOut) - 327.8).abs() < 0.1);
    c.edition = ScrewEdition::Y2016S3;
    assert!((nominal(&c.compute().unwrap(), LimitState::PullOut) - 305.9).abs() < 0.1);
}

#[test]
fn tilting_counts_where_the_far_ply_is_not_thicker() {
    // The far ply decides: at t2/t1 of 2.5 and more, bearing alone; at 1 and less, tilting as well.
    let with = |far: &str| {
        let mut c = same(ScrewEdition::Y2016, "0.0188 in", "#12");
        c.far_ply = ply(far, "33 ksi");
        nominal(&c.compute().unwrap(), LimitState::SheetShear)
    };
    let bearing = 2.7 * 0.0188 * 0.216 * 33_000.0;
    assert!((with("0.047 in") - bearing).abs() < 1e-6);
    assert!(with("0.0188 in") < bearing);
    assert!((with("0.0469999999 in") - bearing).abs() < 1e-4);
}

#[test]
fn a_washer_widens_the_head_up_to_the_limit() {
    let mut c = same(ScrewEdition::Y2012, "0.0283 in", "#10");
    c.screw.washer = Some(Washer { diameter: Length::inches(1), thickness: Length::mils(60) });
    // 0.340 + 2 x 0.060 + 0.0283 = 0.4883 in, under 1/2 in.
    let s = c.compute().unwrap();
    assert!((nominal(&s, LimitState::PullOver) - 1.5 * 0.0283 * 0.4883 * 33_000.0).abs() < 1e-6);
    assert_eq!(s.cautions, []);
    c.screw.washer = Some(Washer { diameter: Length::inches(1), thickness: Length::mils(90) });
    let s = c.compute().unwrap();
    assert!((nominal(&s, LimitState::PullOver) - 1.5 * 0.0283 * 0.5 * 33_000.0).abs() < 1e-6);
    assert_eq!(s.cautions.iter().map(|c| c.code()).collect::<Vec<_>>(), [HEAD_COUNTED_TO_LIMIT]);
    let small = same(ScrewEdition::Y2012, "0.0283 in", "#6").compute().unwrap();
    assert_eq!(small.cautions.iter().map(|c| c.code()).collect::<Vec<_>>(), [HEAD_UNDER_MINIMUM]);
}

#[test]
fn a_weak_screw_governs_in_thick_sheet() {
    let s = same(ScrewEdition::Y2016, "0.2 in", "#6").compute().unwrap();
    assert!((pounds(s.allowable_shear.force) - 643.0 / 3.0).abs() < 1e-9);
    assert!((pounds(s.design_tension.force) - 419.0 / 2.0).abs() < 1e-9);
    assert_eq!(s.allowable_shear.document, guide());
}

#[test]
fn bad_input_names_its_field() {
    let mut c = same(ScrewEdition::Y2016, "0.0188 in", "#6");
    c.head_ply.thickness = Length::ZERO;
    c.far_ply.ultimate = Pressure::ZERO;
    c.screw.diameter = Length::mils(251);
    c.penetration = Some(Length::mils(19));
    c.screw.shear = Some(NominalResistance { force: Force::ZERO, document: guide() });
    let e = c.compute().unwrap_err();
    let all: Vec<&str> = core::iter::once(&e).chain(e.others()).map(crate::error::Error::path).collect();
    assert_eq!(all, ["head_ply.thickness", "far_ply.ultimate", "screw.diameter", "screw.shear.force", "penetration"]);
    let mut c = same(ScrewEdition::Y2016, "0.0188 in", "#6");
    c.screw.head = c.screw.diameter;
    c.screw.washer = Some(Washer { diameter: Length::mils(100), thickness: Length::ZERO });
    let e = c.compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.others().len()), (ErrorKind::OutOfRange, "screw.head", 2));
}

proptest! {
    #[test]
    fn more_metal_is_never_weaker_and_explaining_agrees(t1 in 10_i32..120, t2 in 10_i32..120, more in 0_i32..60, which in 0_usize..4, size in 0_usize..5) {
        let edition = ScrewEdition::ALL[which];
        let mut c = same(edition, "0.0188 in", ["#6", "#8", "#10", "#12", "1/4"][size]);
        c.head_ply.thickness = Length::mils(t1);
        c.far_ply.thickness = Length::mils(t2);
        let a = c.compute().unwrap();
        prop_assert_eq!(&c.explain().unwrap().0, &a);
        c.far_ply.thickness = Length::mils(t2 + more);
        let b = c.compute().unwrap();
        for state in [LimitState::SheetShear, LimitState::PullOut, LimitState::PullOver] {
            prop_assert!(nominal(&b, state) >= nominal(&a, state) - 1e-9);
        }
    }
}
