//! Hips and valleys against a table worked with 90 digits, against plane normals, and against spherical trigonometry.

use super::{Corner, Pitch};
use crate::error::ErrorKind;
use crate::num;
use crate::record::Calculation;
use crate::units::{Angle, Length};
use proptest::prelude::*;

fn corner(p1: &str, p2: &str, w: f64) -> Corner {
    let pitch = |p: &str| Pitch::parse(&format!("{p}:12")).unwrap();
    Corner { first: pitch(p1), second: pitch(p2), plan: Angle::degrees_from(w).unwrap() }
}

/// Rise 1, rise 2 (in 12), W, then D1, R, C1, C2, dihedral, T1, T2, k.
type Row = (&'static str, &'static str, f64, [f64; 8]);

#[rustfmt::skip]
#[allow(clippy::approx_constant, reason = "factors that happen to be roots are part of the table")]
const ROWS: &[Row] = &[
    ("0.25", "0.25", 90.0, [45.0000000000, 0.8439854977, 0.8438939476, 0.8438939476, 178.3122121048, 45.0062156411, 45.0062156411, 1.4143670060]),
    ("0.5", "0.5", 90.0, [45.0000000000, 1.6876048942, 1.6868733263, 1.6868733263, 176.6262533474, 45.0248463949, 45.0248463949, 1.4148272372]),
    ("2", "2", 90.0, [45.0000000000, 6.7213693394, 6.6755921661, 6.6755921661, 166.6488156678, 45.3924491206, 45.3924491206, 1.4240006242]),
    ("3", "3", 90.0, [45.0000000000, 10.0249878621, 9.8749613978, 9.8749613978, 160.2500772044, 45.8682507880, 45.8682507880, 1.4361406616]),
    ("4", "4", 90.0, [45.0000000000, 13.2626760083, 12.9209663816, 12.9209663816, 154.1580672368, 46.5084806549, 46.5084806549, 1.4529663145]),
    ("6", "6", 90.0, [45.0000000000, 19.4712206345, 18.4349488229, 18.4349488229, 143.1301023542, 48.1896851042, 48.1896851042, 1.5000000000]),
    ("8", "8", 90.0, [45.0000000000, 25.2394018207, 23.0934692698, 23.0934692698, 133.8130614604, 50.2378408482, 50.2378408482, 1.5634719199]),
    ("9", "9", 90.0, [45.0000000000, 27.9383527296, 25.1040902502, 25.1040902502, 129.7918194996, 51.3401917459, 51.3401917459, 1.6007810594]),
    ("12", "12", 90.0, [45.0000000000, 35.2643896828, 30.0000000000, 30.0000000000, 120.0000000000, 54.7356103172, 54.7356103172, 1.7320508076]),
    ("18", "18", 90.0, [45.0000000000, 46.6861433417, 36.0398934303, 36.0398934303, 107.9202131394, 60.9828593754, 60.9828593754, 2.0615528128]),
    ("10", "8", 90.0, [38.6598082541, 27.5005479739, 29.9933862577, 20.2745161316, 129.7320976107, 46.1608931820, 56.3506665013, 1.8047006523]),
    ("10", "7", 90.0, [34.9920201986, 25.5424492142, 31.6318638620, 16.7951679112, 131.5729682269, 42.3396503419, 58.8409443844, 1.9326822737]),
    ("7", "12", 90.0, [59.7435628365, 26.7422110354, 14.7075860650, 37.6462069675, 127.6462069675, 63.2577889646, 39.5211963586, 1.2963624322]),
    ("4", "12", 90.0, [71.5650511771, 17.5484006138, 5.7391704773, 42.1304147614, 132.1304147614, 72.4515993862, 25.2394018207, 1.1055415968]),
    ("3", "8", 90.0, [69.4439547804, 13.1747121596, 4.8852222984, 31.2908049649, 143.8239727367, 70.0084392729, 24.2607995849, 1.0968705484]),
    ("0.5", "6", 90.0, [85.2363583093, 2.3777118783, 0.1980850000, 26.4661370817, 153.3357779183, 85.2404690582, 5.3228527935, 1.0043308994]),
    ("6", "6", 135.0, [67.5000000000, 24.7940929341, 9.8541794176, 9.8541794176, 160.2916411648, 69.6711446225, 69.6711446225, 1.1922973099]),
    ("8", "8", 120.0, [60.0000000000, 30.0000000000, 16.1021137520, 16.1021137520, 147.7957724960, 64.3410937267, 64.3410937267, 1.3333333333]),
    ("5", "9", 135.0, [102.0969528964, 22.1666858164, -4.6231996585, 30.2487138383, 154.3744858202, 101.1908400906, 38.9643929775, 1.1043308649]),
    ("6", "10", 75.0, [48.3592276045, 20.4888416419, 17.2867897857, 34.9051413211, 127.8080688931, 51.5065759631, 33.1447760367, 1.4284695680]),
];

#[test]
fn the_table_of_corners_holds() {
    assert_eq!(ROWS.len(), 20);
    for (n, &(p1, p2, w, want)) in ROWS.iter().enumerate() {
        let g = corner(p1, p2, w).compute().unwrap();
        let got = [g.first.plan, g.slope, g.first.backing, g.second.backing, g.dihedral, g.first.in_plane, g.second.in_plane].map(Angle::degrees);
        for (i, (got, want)) in got.iter().chain([&g.first.length_factor]).zip(want).enumerate() {
            assert!((got - want).abs() < 1e-9, "row {}, column {i}: {got} is not {want}", n + 1);
        }
    }
}

#[test]
fn equal_pitches_at_a_square_corner_are_exact() {
    let g = corner("12", "12", 90.0).compute().unwrap();
    assert!((g.dihedral.degrees() - 120.0).abs() < 1e-12);
    assert!((g.first.backing.degrees() - 30.0).abs() < 1e-12);
    assert_eq!(g.first.plan, g.second.plan);
    assert_eq!(g.first, g.second);
}

#[test]
fn a_side_past_square_has_negative_backing_and_meeting() {
    let g = corner("5", "9", 135.0).compute().unwrap();
    assert!(g.first.plan.degrees() > 90.0 && g.first.backing.degrees() < 0.0 && g.first.signed_meeting().degrees() < 0.0);
    assert!(g.second.signed_meeting().degrees() > 0.0);
    assert!((g.first.meeting().degrees() - 11.191).abs() < 0.001);
    assert!((g.first.skew().degrees() + g.first.meeting().degrees() - 90.0).abs() < 1e-12);
    assert!(g.first.drop_over(Length::inches(16)).unwrap().is_negative());
}

/// Common practice: a 1 in fold at a 4:12 hip, its ends left along the seams, overruns by 2 fold cot(phi) = 2.1 in when folded.
#[test]
fn the_overrun_of_a_skew_fold() {
    let g = corner("4", "4", 90.0).compute().unwrap();
    let overrun = 2.0 / g.first.meeting().tan();
    assert!((overrun - 2.1).abs() < 0.05);
    let drop = g.first.drop_over(Length::inches(2)).unwrap();
    assert!((drop.mm() / 25.4 - overrun).abs() < 1e-9);
}

#[test]
fn a_line_along_the_seams_has_no_drop() {
    // W with cos W = -m1/m2 puts the line square to eave 1 in plan, and so in the plane.
    let mut g = corner("6", "12", 120.0).compute().unwrap();
    assert!((g.first.in_plane.degrees() - 90.0).abs() < 1e-12);
    g.first.in_plane = Angle::SQUARE;
    assert_eq!(g.first.drop_over(Length::inches(16)).unwrap_err().kind(), ErrorKind::Geometry);
}

#[test]
fn every_fault_is_reported() {
    let c = Corner { first: Pitch::FLAT, second: Pitch::FLAT, plan: Angle::degrees_from(180.0).unwrap() };
    let e = c.compute().unwrap_err();
    let paths: Vec<&str> = core::iter::once(&e).chain(e.others()).map(|e| e.path()).collect();
    assert_eq!(paths, ["first", "second", "plan"]);
    assert!(corner("6", "6", 0.0).compute().is_err() && corner("6", "6", -90.0).compute().is_err());
}

#[test]
fn the_worksheet_shows_the_work() {
    let (out, sheet) = corner("10", "8", 90.0).explain().unwrap();
    assert_eq!(out, corner("10", "8", 90.0).compute().unwrap());
    assert_eq!(sheet.steps().len(), 12);
    assert!(sheet.steps().iter().all(|s| s.source.is_some() && !s.result.is_empty()));
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    let ([ax, ay, az], [bx, by, bz]) = (a, b);
    [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx]
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

fn unit(a: [f64; 3]) -> [f64; 3] {
    let n = dot(a, a).sqrt();
    a.map(|x| x / n)
}

fn between(a: [f64; 3], b: [f64; 3]) -> f64 {
    let c = cross(a, b);
    num::atan2_deg(dot(c, c).sqrt(), dot(a, b))
}

proptest! {
    #[test]
    fn plane_normals_agree(r1 in 1..9600_i32, r2 in 1..9600_i32, w in 5.0..175.0_f64) {
        let pitch = |r: i32| Pitch::in_twelve(Length::mils(r * 5)).unwrap();
        let c = Corner { first: pitch(r1), second: pitch(r2), plan: Angle::degrees_from(w).unwrap() };
        let (g, sheet) = c.explain().unwrap();
        prop_assert_eq!(c.compute().unwrap(), g);
        prop_assert!(!sheet.entries.is_empty());
        let (m1, m2, sw, cw) = (c.first.ratio(), c.second.ratio(), num::sin_deg(w), num::cos_deg(w));
        let (n1, n2) = (unit([0.0, -m1, 1.0]), unit([-m2 * sw, m2 * cw, 1.0]));
        let (eave1, eave2) = ([1.0, 0.0, 0.0], [cw, sw, 0.0]);
        let mut h = unit(cross(n1, n2));
        if h[2] < 0.0 {
            h = h.map(|x| -x);
        }
        let level = unit([h[0], h[1], 0.0]);
        let near = |got: Angle, want: f64| (got.degrees() - want).abs() < 1e-7;
        prop_assert!(near(g.first.plan, between(level, eave1)), "D1 {:?}", g);
        prop_assert!(near(g.second.plan, between(level, eave2)), "D2 {:?}", g);
        prop_assert!(near(g.slope, num::atan2_deg(h[2], dot(h, level))), "R {:?}", g);
        prop_assert!(near(g.first.in_plane, between(h, eave1)), "T1 {:?}", g);
        prop_assert!(near(g.second.in_plane, between(h, eave2)), "T2 {:?}", g);
        prop_assert!(near(g.dihedral, 180.0 - between(n1, n2)), "dihedral {:?}", g);
        // Signed backing, from the level direction across the line towards side 1, and the direction square to the line in its vertical plane.
        let across = unit([level[1], -level[0], 0.0]);
        let up = unit(cross(across, h));
        let up = if up[2] < 0.0 { up.map(|x| -x) } else { up };
        prop_assert!(near(g.first.backing, num::atan2_deg(dot(n1, across), dot(n1, up))), "C1 {:?}", g);
        prop_assert!(near(g.second.backing, num::atan2_deg(-dot(n2, across), dot(n2, up))), "C2 {:?}", g);
        // Common run of side 1 at the point h is its distance from eave 1.
        prop_assert!((g.first.length_factor * h[1] - 1.0).abs() < 1e-9);
    }

    #[test]
    fn spherical_trigonometry_agrees(s1 in 1.0..80.0_f64, s2 in 1.0..80.0_f64, w in 5.0..175.0_f64) {
        let pitch = |s: f64| Pitch::from_angle(Angle::degrees_from(s).unwrap()).unwrap();
        let g = Corner { first: pitch(s1), second: pitch(s2), plan: Angle::degrees_from(w).unwrap() }.compute().unwrap();
        let (sin1, cos1, sin2, cos2) = (num::sin_deg(s1), num::cos_deg(s1), num::sin_deg(s2), num::cos_deg(s2));
        let (sw, cw) = (num::sin_deg(w), num::cos_deg(w));
        prop_assert!((num::cos_deg(g.dihedral.degrees()) - (sin1 * sin2 * cw - cos1 * cos2)).abs() < 1e-11);
        let t1 = num::atan2_deg(sw * sin2, cw * cos1 * sin2 + sin1 * cos2);
        prop_assert!((g.first.in_plane.degrees() - t1).abs() < 1e-8);
        prop_assert!((g.slope.sin() - num::sin_deg(t1) * sin1).abs() < 1e-11);
        prop_assert!((g.first.length_factor * num::sin_deg(t1) * cos1 - 1.0).abs() < 1e-9);
        prop_assert!((g.first.plan.degrees() + g.second.plan.degrees() - w).abs() < 1e-9);
        prop_assert!((g.dihedral.degrees() + g.first.backing.degrees() + g.second.backing.degrees() - 180.0).abs() < 1e-12);
        prop_assert_eq!(g.first.backing.degrees() < 0.0, g.first.plan.degrees() > 90.0);
    }

    #[test]
    fn sides_may_be_named_either_way(r1 in 1..480_i32, r2 in 1..480_i32, w in 5.0..175.0_f64) {
        let pitch = |r: i32| Pitch::in_twelve(Length::inches_64(r * 4)).unwrap();
        let plan = Angle::degrees_from(w).unwrap();
        let a = Corner { first: pitch(r1), second: pitch(r2), plan }.compute().unwrap();
        let b = Corner { first: pitch(r2), second: pitch(r1), plan }.compute().unwrap();
        prop_assert_eq!(a.first.plan, b.second.plan);
        prop_assert!((a.slope.degrees() - b.slope.degrees()).abs() < 1e-10);
        prop_assert!((a.first.length_factor / b.second.length_factor - 1.0).abs() < 1e-12);
    }
}
