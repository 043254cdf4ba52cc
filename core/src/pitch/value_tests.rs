//! Tests of the pitch against the framing-square table, and of its text.

use super::Pitch;
use crate::error::ErrorKind;
use crate::units::{Angle, Length};
use core::cmp::Ordering;
use proptest::prelude::*;
use std::hash::{DefaultHasher, Hash, Hasher};

fn hash(p: Pitch) -> u64 {
    let mut h = DefaultHasher::new();
    p.hash(&mut h);
    h.finish()
}

/// Rise in 12, degrees, percent, common rafter in inches for each foot of run, slope factor: closed forms to six places, as rows
/// of a steel square carry them.
#[allow(clippy::approx_constant, reason = "the row for 12 in 12 is printed as it stands in the table")]
const SQUARE: &[(&str, f64, f64, f64, f64)] = &[
    ("0.25", 1.193_489, 2.0833, 12.002_604, 1.000_217),
    ("0.5", 2.385_944, 4.1667, 12.010_412, 1.000_868),
    ("1", 4.763_642, 8.3333, 12.041_595, 1.003_466),
    ("2", 9.462_322, 16.6667, 12.165_525, 1.013_794),
    ("3", 14.036_243, 25.0, 12.369_317, 1.030_776),
    ("4", 18.434_949, 33.3333, 12.649_111, 1.054_093),
    ("5", 22.619_865, 41.6667, 13.0, 1.083_333),
    ("6", 26.565_051, 50.0, 13.416_408, 1.118_034),
    ("7", 30.256_437, 58.3333, 13.892_444, 1.157_704),
    ("8", 33.690_068, 66.6667, 14.422_205, 1.201_850),
    ("9", 36.869_898, 75.0, 15.0, 1.25),
    ("10", 39.805_571, 83.3333, 15.620_499, 1.301_708),
    ("11", 42.510_447, 91.6667, 16.278_821, 1.356_568),
    ("12", 45.0, 100.0, 16.970_563, 1.414_214),
    ("13", 47.290_610, 108.3333, 17.691_806, 1.474_317),
    ("14", 49.398_705, 116.6667, 18.439_089, 1.536_591),
    ("15", 51.340_192, 125.0, 19.209_373, 1.600_781),
    ("16", 53.130_102, 133.3333, 20.0, 1.666_667),
    ("17", 54.782_407, 141.6667, 20.808_652, 1.734_054),
    ("18", 56.309_932, 150.0, 21.633_308, 1.802_776),
];

#[test]
fn the_framing_square_rows_hold() {
    for &(rise, degrees, percent, rafter, factor) in SQUARE {
        let p = Pitch::parse(&format!("{rise}:12")).unwrap();
        assert!((p.angle().degrees() - degrees).abs() < 1e-6, "{rise}");
        assert!((p.percent() - percent).abs() < 1e-4, "{rise}");
        assert!((p.slope_factor() - factor).abs() < 1e-6, "{rise}");
        let along = p.slope_length(Length::feet(1)).unwrap();
        assert!((along.mm() / 25.4 - rafter).abs() < 1e-6, "{rise}");
        assert!((p.sine() - p.angle().sin()).abs() < 1e-15 && (p.cosine() - p.angle().cos()).abs() < 1e-15, "{rise}");
    }
}

/// Old handbooks name a pitch by its rise over the span (US Army engineer subcourse EN5156).
#[test]
fn fractions_of_the_span() {
    for (pitch, fraction) in [("6:12", 0.25), ("8:12", 1.0 / 3.0), ("10:12", 5.0 / 12.0), ("12:12", 0.5), ("18:12", 0.75), ("24:12", 1.0)] {
        assert!((Pitch::parse(pitch).unwrap().rise_to_span_ratio() - fraction).abs() < 1e-15, "{pitch}");
    }
}

/// Worked lengths: NAVEDTRA 14044, p. 2-12 (7 in 12 over 8 ft, 111 1/8 in), and Hodgson, ABC of the Steel Square (half pitch over a span of 60 ft,
/// whose printed 42 ft 6 1/8 in is 1 in too long).
#[test]
fn worked_rafters_hold() {
    let length = |pitch: &str, run: Length| Pitch::parse(pitch).unwrap().slope_length(run).unwrap().mm() / 25.4;
    assert!((length("7:12", Length::feet(8)) - 111.125).abs() < 0.0625);
    assert!((length("7:12", Length::feet(1)) - 13.89).abs() < 0.005);
    assert!((length("12:12", Length::feet(30)) - (42.0 * 12.0 + 5.125)).abs() < 0.0625);
    assert!((length("13:12", Length::inches(124)) - 182.79).abs() < 0.03);
}

#[test]
fn a_negative_zero_is_zero() {
    let p = Pitch::from_angle(Angle::degrees_from(-0.0).unwrap()).unwrap();
    assert_eq!((p, p.to_string().as_str()), (Pitch::parse("0 deg").unwrap(), "0 deg"));
}

#[test]
fn text_is_canonical() {
    for (given, canonical) in [
        ("6:12", "6:12"),
        (" 6 : 12 ", "6:12"),
        ("1/4:12", "1/4:12"),
        ("6 1/2:12", "6 1/2:12"),
        ("6-1/2 : 12", "6 1/2:12"),
        ("4.3:12", "4.3:12"),
        ("0.05:12", "0.05:12"),
        ("6\":12\"", "6:12"),
        ("6 in:1 ft", "6:12"),
        ("1:2", "1:2"),
        ("150 mm:300 mm", "150 mm:300 mm"),
        ("127 mm:254 mm", "5:10"),
        ("33.3 %", "33.3 %"),
        ("33.3%", "33.3 %"),
        ("0 %", "0 %"),
        ("26.5 deg", "26.5 deg"),
        ("26.5\u{b0}", "26.5 deg"),
        ("0:12", "0:12"),
    ] {
        let p = Pitch::parse(given).unwrap();
        assert_eq!(p.to_string(), canonical, "{given}");
        let back: Pitch = canonical.parse().unwrap();
        assert_eq!((back, back.as_rise_run()), (p, p.as_rise_run()), "{given}");
    }
    assert_eq!(format!("{:>6}", Pitch::parse("6:12").unwrap()), "  6:12");
}

#[test]
fn refusals_say_what_and_where() {
    for (text, kind) in [
        ("", ErrorKind::Parse),
        ("6", ErrorKind::Unit),
        ("6/12", ErrorKind::Unit),
        (":", ErrorKind::Parse),
        ("6:", ErrorKind::Parse),
        (":12", ErrorKind::Parse),
        ("6:12:1", ErrorKind::Parse),
        ("6:0", ErrorKind::OutOfRange),
        ("-6:12", ErrorKind::OutOfRange),
        ("6:-12", ErrorKind::OutOfRange),
        ("6,5:12", ErrorKind::Parse),
        ("150 mm:12", ErrorKind::Unit),
        ("6:12 in", ErrorKind::Unit),
        ("5 mm %", ErrorKind::Unit),
        ("-1 %", ErrorKind::OutOfRange),
        ("%", ErrorKind::Parse),
        ("90 deg", ErrorKind::OutOfRange),
        ("-1 deg", ErrorKind::OutOfRange),
        ("1e999 deg", ErrorKind::NotFinite),
        ("6 kg", ErrorKind::Unit),
        ("9000000000 mm:0.000000001 mm", ErrorKind::OutOfRange),
    ] {
        let e = Pitch::parse(text).unwrap_err();
        assert_eq!(e.kind(), kind, "{text}: {e}");
        assert_eq!(e.value(), Some(text), "{e}");
        assert!(e.allowed().is_some(), "{e}");
    }
    assert_eq!(Pitch::parse("6:1x").unwrap_err().span(), Some((3, 4)));
    assert_eq!(Pitch::rise_run(Length::inches(1), Length::ZERO).unwrap_err().path(), "run");
    assert_eq!(Pitch::rise_run(Length::inches(-1), Length::inches(1)).unwrap_err().path(), "rise");
    assert_eq!(Pitch::from_angle(Angle::SQUARE).unwrap_err().path(), "angle");
    assert!(Pitch::rise_run(Length::MAX, Length::from_pm(1)).is_err());
    let steep = Pitch::rise_run(Length::inches(100), Length::from_pm(1)).unwrap();
    assert_eq!(steep.rise_over(Length::MAX).unwrap_err().kind(), ErrorKind::Overflow);
    assert_eq!(steep.slope_length(Length::MAX).unwrap_err().kind(), ErrorKind::Overflow);
}

#[test]
fn limits_are_compared_exactly() {
    let limit = Pitch::parse("1/4:12").unwrap();
    let just_under = Pitch::rise_run(Length::from_pm(1_000_000_000_000 - 1), Length::from_pm(48_000_000_000_000)).unwrap();
    assert!(Pitch::parse("1:48").unwrap().at_least(&limit));
    assert!(!just_under.at_least(&limit));
    assert!(!Pitch::parse("2.083333333 %").unwrap().at_least(&limit));
    assert!(Pitch::parse("2.083333334 %").unwrap().at_least(&limit));
    assert!(Pitch::parse("45 deg").unwrap().at_least(&Pitch::parse("12:12").unwrap()));
    assert_eq!(Pitch::parse("44.9 deg").unwrap().compare(&Pitch::parse("12:12").unwrap()), Ordering::Less);
    assert_ne!(Pitch::parse("45 deg").unwrap(), Pitch::parse("12:12").unwrap());
    assert!(Pitch::FLAT.is_flat() && Pitch::from_angle(Angle::ZERO).unwrap().is_flat() && !limit.is_flat());
}

#[cfg(feature = "serde")]
#[test]
fn serde_is_text() {
    let p: Pitch = serde_json::from_str("\"6:12\"").unwrap();
    assert_eq!(serde_json::to_string(&p).unwrap(), "\"6:12\"");
    assert!(serde_json::from_str::<Pitch>("6").is_err());
    assert!(serde_json::from_str::<Pitch>("\"6\"").is_err());
}

proptest! {
    #[test]
    fn text_round_trips(rise in 0..i64::MAX / 2, run in 1_000_000..i64::MAX / 2, step in prop::sample::select(vec![1_i64, 1000, 2540, 396_875_000, 49_609_375])) {
        let (rise, run) = (rise / step * step, (run / step).max(1) * step);
        if let Ok(p) = Pitch::rise_run(Length::from_pm(rise), Length::from_pm(run)) {
            let back = Pitch::parse(&p.to_string()).unwrap();
            prop_assert_eq!(back.as_rise_run(), p.as_rise_run());
        }
    }

    #[test]
    fn degrees_round_trip(d in 0.0..90.0_f64) {
        let p = Pitch::from_angle(Angle::degrees_from(d).unwrap()).unwrap();
        prop_assert_eq!(Pitch::parse(&p.to_string()).unwrap(), p);
        prop_assert!((p.ratio() * p.cosine() - p.sine()).abs() < 1e-12);
    }

    #[test]
    fn equal_slopes_are_equal_and_hash_alike(rise in 0..1_000_000_i64, run in 1..1_000_000_i64, k in 1..1_000_i64) {
        let p = Pitch::rise_run(Length::from_pm(rise), Length::from_pm(run)).unwrap();
        let q = Pitch::rise_run(Length::from_pm(rise * k), Length::from_pm(run * k)).unwrap();
        prop_assert_eq!(p, q);
        prop_assert_eq!(hash(p), hash(q));
        let steeper = Pitch::rise_run(Length::from_pm(rise * k + 1), Length::from_pm(run * k)).unwrap();
        prop_assert_eq!(p.compare(&steeper), Ordering::Less);
        prop_assert!(steeper.at_least(&p) && !p.at_least(&steeper));
    }

    #[test]
    fn rise_over_a_multiple_of_the_run_is_exact(rise in 0..1_000_000_000_i64, run in 1..1_000_000_000_i64, k in -1000..1000_i64) {
        let p = Pitch::rise_run(Length::from_pm(rise), Length::from_pm(run)).unwrap();
        prop_assert_eq!(p.rise_over(Length::from_pm(run * k)).unwrap(), Length::from_pm(rise * k));
    }

    #[test]
    fn no_text_panics(text in "[0-9 :%./degin-]{0,12}") {
        let _ = Pitch::parse(&text);
    }
}
