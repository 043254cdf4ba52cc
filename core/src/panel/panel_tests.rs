use super::{Hold, Leg, Panel, PanelEnd, Reach, Seam, along_seam};
use crate::error::ErrorKind;
use crate::record::{Calculation, Source};
use crate::units::{Angle, Length};
use proptest::prelude::*;

fn len(text: &str) -> Length {
    Length::parse(text).unwrap()
}

/// Copper Roofings: A Manual, p. 6, and Copper Flashings: A Manual, p. 54, fig. 72: upstands, allowance, and what a 24 in sheet covers.
#[test]
fn double_lock_upstands_as_published() {
    for (height, low, high, allowance, covers) in [("1\"", "1 1/4\"", "1 1/2\"", "2 3/4\"", "21 1/4\""), ("3/4\"", "1\"", "1 1/4\"", "2 1/4\"", "21 3/4\"")] {
        let seam = Seam::DoubleLock { lock: len("1/4\"") };
        let panel = Panel::from_coil(Length::inches(24), len(height), seam).unwrap();
        let width = panel.compute().unwrap();
        assert_eq!((width.low_leg, width.high_leg), (len(low), len(high)));
        assert_eq!((width.low_leg + width.high_leg).length().unwrap(), len(allowance));
        assert_eq!((panel.coverage, width.pan, width.total), (len(covers), len(covers), Length::inches(24)));
    }
}

#[test]
fn snap_lock_and_batten_by_hand() {
    let snap = Seam::SnapLock {
        male: Leg { upstand: len("1 1/2\""), folds: len("1 3/8\"") },
        female: Leg { upstand: len("1 3/4\""), folds: len("7/8\"") },
        foot: len("1/2\""),
    };
    let mut panel = Panel::new(Length::inches(16), len("1 3/4\""), snap).unwrap();
    // 15 1/2 pan, 2 7/8 and 2 5/8 legs.
    assert_eq!(panel.compute().unwrap().total, Length::inches(21));
    panel.ribs = len("1/4\"");
    assert_eq!(panel.compute().unwrap().total, len("21 1/4\""));
    assert_eq!(panel.seam_foot(Length::mils(24)).unwrap(), len("1/2\""));

    let batten = Seam::Batten { width: len("1 1/2\""), leg: Leg { upstand: len("1 1/2\""), folds: len("1/2\"") }, cap_leg: len("3/4\"") };
    let panel = Panel::new(Length::inches(20), len("1 5/8\""), batten).unwrap();
    let width = panel.compute().unwrap();
    assert_eq!((width.total, width.cap), (len("22 1/2\""), Some(Length::inches(3))));
}

#[test]
fn refuses_sections_that_cannot_be() {
    let lock = |l: &str| Seam::DoubleLock { lock: len(l) };
    let leg = |u: &str| Leg { upstand: len(u), folds: Length::ZERO };
    for (coverage, height, seam, path, kind) in [
        ("0 in", "1 in", lock("1/4 in"), "coverage", ErrorKind::OutOfRange),
        ("16 in", "-1 in", lock("1/4 in"), "seam_height", ErrorKind::OutOfRange),
        ("16 in", "1 in", lock("0 in"), "seam.lock", ErrorKind::OutOfRange),
        ("16 in", "1 in", lock("1 in"), "seam.lock", ErrorKind::Conflict),
        ("1 in", "1 in", Seam::SnapLock { male: leg("1 in"), female: leg("1 in"), foot: len("1 in") }, "seam.foot", ErrorKind::Conflict),
        ("16 in", "2 in", Seam::SnapLock { male: leg("1 in"), female: leg("1 in"), foot: len("1 in") }, "seam.female", ErrorKind::Conflict),
        ("2 in", "1 in", Seam::Batten { width: len("2 in"), leg: leg("1 in"), cap_leg: Length::ZERO }, "seam.width", ErrorKind::Conflict),
    ] {
        let e = Panel::new(len(coverage), len(height), seam).unwrap_err();
        assert_eq!((e.path(), e.kind()), (path, kind), "{e}");
    }
    let both = Panel::new(Length::ZERO, Length::ZERO, lock("0 in")).unwrap_err();
    assert_eq!(both.others().len(), 2);
    let e = Panel::from_coil(len("2 3/4 in"), Length::inches(1), lock("1/4 in")).unwrap_err();
    assert_eq!((e.path(), e.kind()), ("coil_width", ErrorKind::Impossible));
    let panel = Panel::new(Length::inches(16), Length::inches(1), lock("1/4 in")).unwrap();
    assert!(panel.levels(Length::inches(-1), Length::ZERO).unwrap_err().others().len() == 1);
    assert!(panel.seam_foot(Length::ZERO).is_err());
}

#[test]
fn every_part_of_an_end_counts() {
    let end = PanelEnd::overhang(len("3/4\""))
        .with_gap(len("1/8\""))
        .with_fold(Length::inches(1))
        .with_turn_up(len("1/2\""))
        .with_field_trim(Length::inches(2))
        .holding(Hold::Pins)
        .from_source(Source::CommonPractice);
    assert_eq!(end.allowance().unwrap(), len("2 3/8\""));
    assert_eq!(end.along_seam(Angle::degrees_from(30.0).unwrap()).unwrap(), len("4 3/4\""));
    assert_eq!(end.field_trim_along_seam(Angle::degrees_from(150.0).unwrap()).unwrap(), Length::inches(4));
    end.check().unwrap();
    let bad = PanelEnd { reach: Reach::HoldBack(Length::inches(-1)), gap: Length::inches(-1), ..end };
    assert_eq!(bad.check().unwrap_err().others().len(), 1);
}

#[test]
fn refuses_a_line_along_the_seam() {
    for degrees in [0.0, -30.0, 180.0, 270.0] {
        let e = along_seam(Length::inches(1), Angle::degrees_from(degrees).unwrap()).unwrap_err();
        assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "meeting"));
    }
    let e = along_seam(Length::MAX, Angle::degrees_from(0.001).unwrap()).unwrap_err();
    assert_eq!(e.kind(), ErrorKind::Overflow);
}

#[cfg(feature = "serde")]
#[test]
fn reads_and_writes_text() {
    let panel: Panel = serde_json::from_str(r#"{"coverage":"16 in","seam_height":"1.5 in","seam":{"double-lock":{"lock":"0.25 in"}}}"#).unwrap();
    assert_eq!(serde_json::from_str::<Panel>(&serde_json::to_string(&panel).unwrap()).unwrap(), panel);
    assert!(serde_json::from_str::<Panel>(r#"{"coverage":16,"seam_height":"1.5 in","seam":{"double-lock":{"lock":"0.25 in"}}}"#).is_err());
    let end: PanelEnd = serde_json::from_str(r#"{"reach":{"hold-back":"2 in"},"fold":"1 in","hold":"slides","source":"common-practice"}"#).unwrap();
    assert_eq!(serde_json::from_str::<PanelEnd>(&serde_json::to_string(&end).unwrap()).unwrap(), end);
}

proptest! {
    #[test]
    fn computing_and_explaining_agree(coverage in 1_000..1_000_000_i32, height in 1_000..100_000_i32, lock in 1..999_i32, kind in 0..4_u8) {
        let (coverage, height, lock) = (Length::micrometres(coverage), Length::micrometres(height), Length::micrometres(lock));
        let leg = Leg { upstand: height, folds: lock };
        let seam = match kind {
            0 => Seam::SingleLock { lock },
            1 => Seam::DoubleLock { lock },
            2 => Seam::SnapLock { male: leg, female: leg, foot: lock },
            _ => Seam::Batten { width: lock, leg, cap_leg: lock },
        };
        let panel = Panel::new(coverage, height, seam).unwrap();
        let (out, sheet) = panel.explain().unwrap();
        prop_assert_eq!(&out, &panel.compute().unwrap());
        prop_assert!(sheet.steps().iter().any(|s| s.what == "coil width" && s.result == out.total.to_string()));
        // The coil gives the coverage back.
        prop_assert_eq!(Panel::from_coil(out.total, height, seam).unwrap(), panel);
    }

    #[test]
    fn the_skew_only_ever_lengthens(d in 1..1_000_000_i32, degrees in 1.0..90.0_f64) {
        let (d, left) = (Length::micrometres(d), Angle::degrees_from(degrees).unwrap());
        let along = along_seam(d, left).unwrap();
        prop_assert!(along >= d);
        // Square to the line again: d = along * sin.
        prop_assert!((along.mm() * left.sin() - d.mm()).abs() < 1e-8);
        let right = Angle::degrees_from(180.0 - degrees).unwrap();
        prop_assert!((along.mm() - along_seam(d, right).unwrap().mm()).abs() <= 1e-11 * along.mm());
    }
}
