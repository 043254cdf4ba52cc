//! Figures of trims: closed forms, integrals over the outline, laws and bad input.

use super::flat_tests::any_profile;
use super::*;
use crate::error::ErrorKind;
use crate::metal::{Alloy, Coating, Sheet};
use crate::record::Calculation;
use crate::units::{AreaUnit, BendAngle, Length, LengthUnit, LineMassUnit, MassUnit, SurfaceMassUnit};
use proptest::prelude::*;

fn mm(v: f64) -> Length {
    Length::from_f64(v, LengthUnit::Millimetre).unwrap()
}

fn middle() -> BendRule {
    BendRule::neutral_axis(NeutralFactor::MIDDLE)
}

fn in_mm(l: Length) -> f64 {
    l.get(LengthUnit::Millimetre)
}

/// Area and centroid of a polygon by the shoelace formula, taken about its first point.
fn shoelace(points: &[(f64, f64)]) -> (f64, f64, f64) {
    let (x0, y0) = points[0];
    let (mut area, mut x, mut y) = (0.0, 0.0, 0.0);
    for (a, b) in points.iter().zip(points.iter().cycle().skip(1)) {
        let (a, b) = ((a.0 - x0, a.1 - y0), (b.0 - x0, b.1 - y0));
        let cross = a.0 * b.1 - b.0 * a.1;
        area += cross / 2.0;
        x += (a.0 + b.0) * cross / 6.0;
        y += (a.1 + b.1) * cross / 6.0;
    }
    (area, x0 + x / area, y0 + y / area)
}

/// Half a ring on its own legs of nothing: centroid at 4 (R^3 - r^3) / (3 pi (R^2 - r^2)) from the centre, as handbooks of mechanics print it (from memory).
#[test]
fn half_a_ring() {
    let p = Profile::builder(mm(2.0))
        .painted(Face::Upper)
        .inside_radius(mm(10.0))
        .measured_to(LegEnd::Tangent)
        .leg("a", Length::from_pm(1))
        .up(BendAngle::FOLDED)
        .leg("b", Length::from_pm(1))
        .build()
        .unwrap();
    let s = p.unfold(&middle()).unwrap().section().unwrap();
    let pi = std::f64::consts::PI;
    assert!((s.area.get(AreaUnit::SquareMillimetre) - pi * (144.0 - 100.0) / 2.0).abs() < 1e-8);
    assert!((in_mm(s.centroid.x) - 4.0 * (1728.0 - 1000.0) / (3.0 * pi * 44.0)).abs() < 1e-8);
    assert!((in_mm(s.centroid.y) - 12.0).abs() < 1e-8);
    assert_eq!((s.width, s.height), (Length::from_pm(12_000_000_001), mm(24.0)));
}

/// A channel, sharp inside, against the table of sections: web b x t, two flanges, quarter rounds outside.
#[test]
fn a_channel_by_hand() {
    let p = Profile::builder(mm(1.0))
        .painted(Face::Lower)
        .inside_radius(Length::ZERO)
        .leg("a", mm(20.0))
        .up(BendAngle::SQUARE)
        .leg("b", mm(40.0))
        .up(BendAngle::SQUARE)
        .leg("c", mm(20.0))
        .build()
        .unwrap();
    let flat = p.unfold(&middle()).unwrap();
    let (s, faces) = (flat.section().unwrap(), flat.faces().unwrap());
    let quarter = std::f64::consts::FRAC_PI_4;
    let area = 19.0 * 2.0 + 38.0 + 2.0 * quarter;
    assert!((s.area.get(AreaUnit::SquareMillimetre) - area).abs() < 1e-9);
    let x = (2.0 * 19.0 * 9.5 + 38.0 * 19.5 + 2.0 * quarter * (19.0 + 4.0 / (3.0 * std::f64::consts::PI))) / area;
    assert!((in_mm(s.centroid.x) - x).abs() < 1e-8 && (in_mm(s.centroid.y) - 20.0).abs() < 1e-8);
    assert_eq!((s.width, s.height), (mm(20.0), mm(40.0)));
    assert_eq!(faces.of(Face::Upper), mm(76.0));
    assert!((in_mm(faces.of(Face::Lower)) - 76.0 - std::f64::consts::PI).abs() < 1e-8);
}

#[test]
fn masses_and_areas_of_a_piece() {
    let profile = Profile::builder(mm(0.6))
        .painted(Face::Lower)
        .inside_radius(mm(0.6))
        .leg("a", mm(50.0))
        .down(BendAngle::SQUARE)
        .leg("b", mm(70.0))
        .end(Edge::closed_hem(mm(12.0), Direction::Down))
        .build()
        .unwrap();
    let sheet = Sheet::new(Alloy::ZincCoatedSteel, mm(0.6), Some(Coating::Z275)).unwrap();
    let asked = TrimFigures { profile, rule: middle(), sheet: Some(sheet), piece: Some(mm(3000.0)) };
    let (out, worksheet) = asked.explain().unwrap();
    assert_eq!(out, asked.compute().unwrap());
    assert_eq!(out.painted, out.faces.lower);
    let piece = out.piece.unwrap();
    let of_sheet = sheet.surface_mass().unwrap().get(SurfaceMassUnit::KilogramPerSquareMetre);
    assert!((piece.mass.unwrap().get(MassUnit::Kilogram) - of_sheet * in_mm(out.girth) * 3000.0 / 1e6).abs() < 1e-12);
    assert!((out.line_mass.unwrap().get(LineMassUnit::KilogramPerMetre) * 3.0 - piece.mass.unwrap().get(MassUnit::Kilogram)).abs() < 1e-12);
    assert_eq!(piece.painted, out.painted.times(mm(3000.0)));
    assert!(worksheet.steps().len() > 4);
    let without = TrimFigures { sheet: None, piece: None, ..asked.clone() }.compute().unwrap();
    assert_eq!((without.line_mass, without.piece, without.section), (None, None, out.section));

    let thin = TrimFigures { sheet: Some(Sheet::new(Alloy::Copper, mm(0.5), None).unwrap()), ..asked.clone() }.compute().unwrap_err();
    assert_eq!((thin.kind(), thin.path(), thin.allowed()), (ErrorKind::Conflict, "sheet.thickness", Some("0.6 mm")));
    assert_eq!(TrimFigures { piece: Some(Length::ZERO), ..asked.clone() }.compute().unwrap_err().path(), "piece");
    let mut swallowed = asked;
    swallowed.profile.legs[0].length = mm(0.1);
    assert_eq!(swallowed.compute().unwrap_err().path(), "profile.legs[0].length");
}

proptest! {
    /// Area and centroid agree with the polygon of the outline, and the lines of both edges with the blank.
    #[test]
    fn figures_agree_with_the_outline(p in any_profile()) {
        let flat = p.unfold(&middle()).unwrap();
        let (s, faces) = (flat.section().unwrap(), flat.faces().unwrap());
        let points: Vec<(f64, f64)> = flat.outline().unwrap().points(Length::micrometres(1)).unwrap().iter().map(|p| (in_mm(p.x), in_mm(p.y))).collect();
        let (area, x, y) = shoelace(&points);
        let t = in_mm(p.thickness);
        // Chords lose at most 0.001 mm along every arc.
        let lost = 1e-6 + 0.002 * flat.bends().len() as f64 * 40.0 * std::f64::consts::PI;
        let mine = s.area.get(AreaUnit::SquareMillimetre);
        prop_assert!((area - mine).abs() < lost, "{area} {mine}");
        let size = in_mm(s.width) + in_mm(s.height);
        prop_assert!((in_mm(s.centroid.x) - x).abs() < 2.0 * lost * size / mine && (in_mm(s.centroid.y) - y).abs() < 2.0 * lost * size / mine);
        // The faces lie t/2 either side of the middle line, and so does the area.
        prop_assert!((in_mm(faces.both) / 2.0 * t - mine).abs() < 1e-6);
        for (lines, bend) in flat.lines().unwrap().iter().zip(flat.bends()) {
            prop_assert_eq!((lines.from_start.near, lines.from_start.line, lines.from_start.far), (bend.from, bend.line, bend.to));
            prop_assert_eq!((lines.from_end.line + lines.from_start.line).length().unwrap(), flat.girth());
            prop_assert_eq!((lines.from_end.near + lines.from_start.far).length().unwrap(), flat.girth());
            prop_assert!(lines.from_end.near <= lines.from_end.line && lines.from_end.line <= lines.from_end.far);
        }
    }
}
