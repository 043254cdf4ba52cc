//! The framing square's rows, recomputed in closed form to six places.

use super::{Corner, Framing, Pitch};
use crate::record::Calculation;
use crate::units::{Angle, Length, LengthUnit};
use proptest::prelude::*;

/// Rise in 12; common and hip in inches for each foot of common run, jacks at 16 in and 24 in, side cuts of jack and hip.
#[rustfmt::skip]
const ROWS: &[(&str, [f64; 6])] = &[
    ("0.25", [12.002604, 16.972404, 16.003472, 24.005208, 11.997397, 11.998698]),
    ("0.5", [12.010412, 16.977927, 16.013883, 24.020824, 11.989597, 11.994795]),
    ("1", [12.041595, 17.000000, 16.055459, 24.083189, 11.958549, 11.979221]),
    ("2", [12.165525, 17.088007, 16.220700, 24.331050, 11.836727, 11.917525]),
    ("3", [12.369317, 17.233688, 16.492423, 24.738634, 11.641710, 11.816783]),
    ("4", [12.649111, 17.435596, 16.865481, 25.298221, 11.384200, 11.679942]),
    ("5", [13.000000, 17.691806, 17.333333, 26.000000, 11.076923, 11.510795]),
    ("6", [13.416408, 18.000000, 17.888544, 26.832816, 10.733126, 11.313708]),
    ("7", [13.892444, 18.357560, 18.523259, 27.784888, 10.365347, 11.093346]),
    ("8", [14.422205, 18.761663, 19.229607, 28.844410, 9.984604, 10.854408]),
    ("9", [15.000000, 19.209373, 20.000000, 30.000000, 9.600000, 10.601427]),
    ("10", [15.620499, 19.697716, 20.827332, 31.240999, 9.218655, 10.338597]),
    ("11", [16.278821, 20.223748, 21.705094, 32.557641, 8.845850, 10.069684]),
    ("12", [16.970563, 20.784610, 22.627417, 33.941125, 8.485281, 9.797959]),
    ("13", [17.691806, 21.377558, 23.589075, 35.383612, 8.139361, 9.526193]),
    ("14", [18.439089, 22.000000, 24.585452, 36.878178, 7.809496, 9.256671]),
    ("15", [19.209373, 22.649503, 25.612497, 38.418745, 7.496341, 8.991224]),
    ("16", [20.000000, 23.323808, 26.666667, 40.000000, 7.200000, 8.731283]),
    ("17", [20.808652, 24.020824, 27.744869, 41.617304, 6.920198, 8.477925]),
    ("18", [21.633308, 24.738634, 28.844410, 43.266615, 6.656402, 8.231932]),
];

#[test]
fn the_rows_hold() {
    assert_eq!(ROWS.len(), 20);
    for &(rise, want) in ROWS {
        let pitch = Pitch::parse(&format!("{rise}:12")).unwrap();
        let at16 = Framing { pitch, spacing: Length::inches(16) }.compute().unwrap();
        let at24 = Framing { pitch, spacing: Length::inches(24) }.compute().unwrap();
        let got = [at16.common_per_foot, at16.hip_per_foot, at16.jack_difference, at24.jack_difference, at16.jack_side_cut, at16.hip_side_cut];
        for (i, (got, want)) in got.iter().zip(want).enumerate() {
            assert!((got.get(LengthUnit::Inch) - want).abs() < 1e-6, "{rise}, column {i}");
        }
        assert!((at16.hip_run_per_foot.get(LengthUnit::Inch) - 16.970_563).abs() < 1e-6);
    }
}

/// NAVEDTRA 14044, pp. 2-21 and 2-33; Audel, Carpenters and Builders Guide, vol. 3, p. 975; Hodgson; Radford.
#[test]
fn handbook_figures_hold() {
    let row = |pitch: &str, spacing: i16| Framing { pitch: Pitch::parse(pitch).unwrap(), spacing: Length::inches(spacing) }.compute().unwrap();
    let inches = |l: Length| l.get(LengthUnit::Inch);
    assert!((inches(row("8:12", 16).hip_per_foot) * 1.25 - 23.45).abs() < 0.005);
    assert!((inches(row("8:12", 16).hip_run_per_foot) * 1.25 - 21.21).abs() < 0.005);
    assert!((inches(row("8:12", 16).jack_side_cut) - 10.0).abs() < 0.0312);
    assert!((inches(row("10:12", 16).jack_difference) - 20.83).abs() < 0.005);
    assert!((inches(row("10:12", 20).jack_difference) - 26.0).abs() < 0.0625);
    assert!((inches(row("10:12", 16).common_per_foot) - 15.625).abs() < 0.0625);
    assert_eq!(row("6:12", 16).hip_per_foot, Length::inches(18));
    // Tangent of the backing at 6 in 12 is 6 over 18; a print of 8 over 18 is a misprint.
    assert!((row("6:12", 16).backing_ratio - 1.0 / 3.0).abs() < 1e-15);
}

#[test]
fn a_spacing_of_nothing_is_refused() {
    let e = Framing { pitch: Pitch::FLAT, spacing: Length::ZERO }.compute().unwrap_err();
    assert_eq!(e.path(), "spacing");
}

proptest! {
    #[test]
    fn a_square_corner_of_equal_pitches_agrees(rise in 1..2000_i32, spacing in 1..10_000_i32) {
        let pitch = Pitch::in_twelve(Length::inches_64(rise)).unwrap();
        let f = Framing { pitch, spacing: Length::inches_64(spacing) };
        let (row, _) = f.explain().unwrap();
        prop_assert_eq!(f.compute().unwrap(), row);
        let g = Corner { first: pitch, second: pitch, plan: Angle::SQUARE }.compute().unwrap();
        prop_assert!((row.hip_per_foot.get(LengthUnit::Foot) - g.first.length_factor).abs() < 1e-9);
        prop_assert!((row.backing_ratio - g.first.backing.tan()).abs() < 1e-12);
        let drop = g.first.drop_over(f.spacing).unwrap();
        prop_assert!((drop - row.jack_difference).length().unwrap().pm().abs() < 1000);
    }
}
