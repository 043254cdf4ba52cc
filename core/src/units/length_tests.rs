use super::{Length, LengthFormat, LengthUnit, Rounding, ShopRounding};
use crate::error::ErrorKind;
use proptest::prelude::*;

fn in64(n: i32) -> Length {
    Length::inches_64(n)
}

#[test]
fn reads_every_notation() {
    let twelve_three = in64((147 * 64) + 40);
    for text in [
        "12' 3-5/8\"",
        "12'-3 5/8\"",
        "147 5/8\"",
        "12ft 3.625in",
        "12 ft 3 5/8 in",
        "12'3 5\u{2044}8\"",
        "12\u{2032} 3\u{215d}\u{2033}",
        "12\u{2019}-3 5/8\u{201d}",
        "12' 3 5/8''",
        "12' 3 5/8",
        "12'\u{a0}3\u{a0}5/8\"",
        " 12'-3.625\" ",
        "12 feet 3 5/8 inches",
        "12FT 3-5/8IN",
        "12 ft. 3.625 in.",
        "12ft. 3 5/8inches.",
        "3749.675 mm\u{a0}",
        "12'-3 \u{215d}\"",
        "147.625 in.",
        "3749.675 mm",
        "374.9675 cm",
        "3.749675 m",
    ] {
        assert_eq!(Length::parse(text).unwrap(), twelve_three, "{text}");
    }
    for (text, expected) in [
        ("0'-7/16\"", in64(28)),
        ("-1/2\"", in64(-32)),
        ("\u{2212}1/2\"", in64(-32)),
        ("60.3 mm", Length::micrometres(60_300)),
        ("12'", Length::feet(12)),
        ("12.5'", Length::inches(150)),
        ("12 1/2'", Length::inches(150)),
        (".5\"", in64(32)),
        ("3 um", Length::micrometres(3)),
        ("\u{bd}\"", in64(32)),
        ("0\"", Length::ZERO),
        ("+2\"", in64(128)),
        ("-12'-3\"", Length::inches(-147)),
        ("5 \u{b5}m", Length::micrometres(5)),
    ] {
        assert_eq!(Length::parse(text).unwrap(), expected, "{text}");
    }
}

#[test]
fn refuses_and_points_at_the_character() {
    for (text, kind, at) in [
        ("12-3", ErrorKind::Parse, 2),
        ("3,5 mm", ErrorKind::Parse, 1),
        ("1,200 mm", ErrorKind::Parse, 1),
        ("3\" 12'", ErrorKind::Parse, 0),
        ("3 1/0\"", ErrorKind::Parse, 4),
        ("12", ErrorKind::Unit, 2),
        ("", ErrorKind::Parse, 0),
        ("abc", ErrorKind::Parse, 0),
        ("12' 3' ", ErrorKind::Parse, 5),
        ("12' 3 mm", ErrorKind::Parse, 6),
        ("12 furlong", ErrorKind::Unit, 3),
        ("3.5 5/8\"", ErrorKind::Parse, 4),
        ("12.5' 3\"", ErrorKind::Parse, 0),
        ("1 mm x", ErrorKind::Parse, 5),
        (".\"", ErrorKind::Parse, 0),
        ("3 /8\"", ErrorKind::Parse, 2),
        ("1/\"", ErrorKind::Parse, 2),
        ("--1\"", ErrorKind::Parse, 1),
        ("1.2.3 mm", ErrorKind::Parse, 3),
        ("5' -", ErrorKind::Parse, 3),
        ("5 mm.", ErrorKind::Parse, 4),
        ("5 mmm", ErrorKind::Unit, 2),
        ("5 inn", ErrorKind::Unit, 2),
        ("5 in\u{b5}", ErrorKind::Unit, 2),
        ("5 ft\u{b5}m", ErrorKind::Unit, 2),
    ] {
        let e = Length::parse(text).expect_err(text);
        assert_eq!((e.kind(), e.span().unwrap().0), (kind, at), "{text}: {e}");
    }
    assert_eq!(Length::parse("99999999999999999999 mm").unwrap_err().kind(), ErrorKind::Overflow);
    assert_eq!(Length::parse("9999999999 m").unwrap_err().kind(), ErrorKind::Overflow);
}

#[test]
fn rounds_half_even_to_a_picometre_and_says_so_when_asked() {
    assert_eq!(Length::parse("1/3\"").unwrap().pm(), 8_466_666_667);
    assert_eq!(Length::parse("0.0000000005 mm").unwrap().pm(), 0);
    assert_eq!(Length::parse("0.0000000015 mm").unwrap().pm(), 2);
    // One digit far beyond the half decides.
    assert_eq!(Length::parse("0.00000000050000000000000000000000000000001 mm").unwrap().pm(), 1);
    assert_eq!(Length::parse("0.00000000050000000000000000000000000000000 mm").unwrap().pm(), 0);
    assert!(Length::parse_exact("0.0000000005 mm").is_err());
    assert!(Length::parse_exact("1/3\"").is_err());
    assert!(Length::parse_exact("0.123456789 mm").is_ok());
}

#[test]
fn converts_floating_point_exactly_in_its_own_bits() {
    assert_eq!(Length::from_f64(0.1, LengthUnit::Metre).unwrap().pm(), 100_000_000_000);
    assert_eq!(Length::from_f64(-1.5, LengthUnit::Inch).unwrap(), in64(-96));
    assert_eq!(Length::from_f64(1e-300, LengthUnit::Metre).unwrap(), Length::ZERO);
    assert_eq!(Length::from_f64(0.5e-9, LengthUnit::Millimetre).unwrap().pm(), 1); // The nearest double to 0.5e-9 lies above it.
    assert_eq!(Length::from_f64(1e300, LengthUnit::Metre).unwrap_err().kind(), ErrorKind::Overflow);
    assert_eq!(Length::from_f64(1e9, LengthUnit::Metre).unwrap_err().kind(), ErrorKind::Overflow);
    assert_eq!(Length::from_f64(f64::INFINITY, LengthUnit::Metre).unwrap_err().kind(), ErrorKind::NotFinite);
}

#[test]
fn directed_rounding_ignores_noise() {
    let step = Length::inches(1);
    let noisy = Length::from_pm(Length::inches(10).pm() + 999_999);
    let over = Length::from_pm(Length::inches(10).pm() + 1_000_001);
    let up = ShopRounding::new(step, Rounding::Ceil).unwrap();
    assert_eq!(up.round(noisy).unwrap(), Length::inches(10));
    assert_eq!(up.round(over).unwrap(), Length::inches(11));
    let down = ShopRounding::new(step, Rounding::Floor).unwrap();
    assert_eq!(down.round(Length::from_pm(Length::inches(10).pm() - 999_999)).unwrap(), Length::inches(10));
    assert_eq!(up.round(Length::MAX).unwrap_err().kind(), ErrorKind::Overflow);
    assert!(ShopRounding::new(Length::ZERO, Rounding::Ceil).is_err());
    assert!(up.tolerating(step).is_err());
    for (r, expected) in
        [(Rounding::Ceil, -1), (Rounding::Floor, -2), (Rounding::Away, -2), (Rounding::Toward, -1), (Rounding::HalfEven, -2), (Rounding::HalfAway, -2)]
    {
        assert_eq!(ShopRounding::new(step, r).unwrap().round(in64(-96)).unwrap(), Length::inches(expected), "{r:?}");
    }
}

#[test]
fn formats_signs_and_zeros() {
    let ft = LengthFormat::parse("ft-in/16").unwrap();
    for (l, text) in
        [(Length::ZERO, "0'-0\""), (in64(-32), "-0'-0 1/2\""), (Length::inches(-147), "-12'-3\""), (in64(63), "0'-1\""), (Length::MIN, "-30260406'-11 5/16\"")]
    {
        assert_eq!(l.format(ft).unwrap().as_str(), text);
    }
    assert_eq!(Length::MIN.to_string(), "-9223372036.854775808 mm");
    for bad in ["in/3", "in/1024", "in.9", "km.1", "ft-in", "in/16 sideways", "", "mm.", "in/+4"] {
        assert!(LengthFormat::parse(bad).is_err(), "{bad}");
    }
}

proptest! {
    #[test]
    fn canonical_round_trip_is_the_identity(pm in any::<i64>()) {
        let l = Length::from_pm(pm);
        prop_assert_eq!(Length::parse_exact(&l.to_string()).unwrap(), l);
    }

    #[test]
    fn tape_round_trip_is_within_half_a_step(pm in -10_000_000_000_000_000_i64..10_000_000_000_000_000) {
        for f in ["ft-in/16", "in/64", "in.3", "ft.4", "mm.1", "cm.2", "m.3", "ft-in/512"] {
            let f = LengthFormat::parse(f).unwrap();
            let back = Length::parse(Length::from_pm(pm).format(f).unwrap().as_str()).unwrap();
            prop_assert_eq!(back, f.rounded(Length::from_pm(pm)).unwrap());
            prop_assert!((back.pm() - pm).abs() * 2 <= f.step().pm());
        }
    }

    #[test]
    fn from_f64_undoes_get_for_real_lengths(pm in -4_000_000_000_000_000_i64..4_000_000_000_000_000) {
        // Under 2^52 pm (4.5 km) the millimetre number carries the picometre.
        let l = Length::from_pm(pm);
        prop_assert!((Length::from_f64(l.get(LengthUnit::Millimetre), LengthUnit::Millimetre).unwrap().pm() - pm).abs() <= 1);
    }

    #[test]
    fn sums_commute_and_cancel(a in any::<i64>(), b in any::<i64>(), c in any::<i64>()) {
        let (a, b, c) = (Length::from_pm(a), Length::from_pm(b), Length::from_pm(c));
        prop_assert_eq!(a + b + c, c + b + a);
        prop_assert_eq!((a + b - b).length().unwrap(), a);
    }

    #[test]
    fn stations_are_within_half_a_picometre_and_monotone(pm in any::<i64>(), n in 1_u32..1000) {
        let l = Length::from_pm(pm);
        prop_assert_eq!(l.station(0, n).unwrap(), Length::ZERO);
        prop_assert_eq!(l.station(n, n).unwrap(), l);
        for i in 1..=n.min(20) {
            let exact = i128::from(pm) * i128::from(i);
            prop_assert!((i128::from(l.station(i, n).unwrap().pm()) * i128::from(n) - exact).abs() * 2 <= i128::from(n));
        }
    }

    #[test]
    fn garbage_never_panics(text in "\\PC{0,40}") {
        let _ = Length::parse(&text);
        let _ = LengthFormat::parse(&text);
        let _ = crate::units::Angle::parse(&text);
        let _ = crate::units::Pressure::parse(&text);
    }

    #[test]
    fn near_misses_never_panic(text in "[-+0-9 ./'\"ftinmcu,\u{2032}\u{215d}\u{2044}\u{a0}]{0,24}") {
        if let Ok(l) = Length::parse(&text) {
            prop_assert_eq!(Length::parse(&l.to_string()).unwrap(), l);
        }
    }
}

/// The conversion by ordinary arithmetic must be that by the number's bits, in value and in refusal.
fn converts_alike(value: f64) -> Result<(), TestCaseError> {
    for &unit in LengthUnit::ALL {
        match (Length::from_f64(value, unit), Length::from_bits_of(value, unit)) {
            (Ok(quick), Ok(exact)) => prop_assert_eq!(quick, exact, "{} {:?}", value, unit),
            (Err(quick), Err(exact)) => prop_assert_eq!(quick.to_string(), exact.to_string()),
            (quick, exact) => prop_assert!(false, "{value} {unit:?}: {quick:?} {exact:?}"),
        }
    }
    Ok(())
}

#[test]
fn quick_conversion_is_the_exact_one_at_every_limit() {
    let edges =
        [0.0, f64::MIN_POSITIVE, 5e-324, 1e-300, 0.5e-9, 0.5e-12, 0.25, 0.5, 1.0, 1.5, 4e6, 9_223_372.0, 9_223_372_036.0, f64::MAX, f64::INFINITY, f64::NAN];
    for value in edges {
        // Each with its neighbours, and either sign.
        for value in [value, f64::from_bits(value.to_bits().saturating_add(1)), f64::from_bits(value.to_bits().saturating_sub(1))] {
            converts_alike(value).unwrap();
            converts_alike(-value).unwrap();
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn quick_conversion_is_the_exact_one(
        bits in any::<u64>(), value in -5e6..5e6_f64, small in -1e-3..1e-3_f64, n in -4_000_000_000_i64..4_000_000_000, off in -8_i64..8, at in 0..LengthUnit::ALL.len()
    ) {
        let pm = LengthUnit::ALL[at].picometres() as f64;
        // Halves, which go to even, and the numbers next to them: of a picometre, and binary fractions of the unit.
        let half = (n as f64 + 0.5) / pm;
        let beside = f64::from_bits(half.to_bits().wrapping_add_signed(off));
        for value in [f64::from_bits(bits), value, small, beside, (n as f64 + 0.4999) / pm, n as f64 / 1024.0, n as f64 / f64::from(1 << 30), (n >> 10) as f64 + half] {
            converts_alike(value)?;
        }
    }
}
