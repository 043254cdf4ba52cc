//! What runs into what: pieces whose depth is known by hand, sections that fit, and sections made not to.

use super::test_sections::{degrees, len, slope};
use super::{DripEdge, DripHem, Meeting, SectionFit, SectionPart, SectionPoint, Touch, eave_tests, rake_tests, ridge_tests};
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{Angle, Length};

fn at(x: f64, z: f64) -> SectionPoint {
    SectionPoint { x: Length::from_mm(x).unwrap(), z: Length::from_mm(z).unwrap() }
}

fn part(name: &str, piece: &[(f64, f64)]) -> SectionPart {
    SectionPart { name: name.into(), pieces: vec![piece.iter().map(|(x, z)| at(*x, *z)).collect()] }
}

fn block(name: &str, x: (f64, f64), z: (f64, f64)) -> SectionPart {
    part(name, &[(x.0, z.0), (x.1, z.0), (x.1, z.1), (x.0, z.1)])
}

fn met(parts: Vec<SectionPart>) -> Vec<Meeting> {
    SectionFit { parts }.compute().unwrap()
}

#[test]
fn what_touches_and_what_clashes() {
    let sheet = || block("sheet", (0.0, 100.0), (0.0, 1.0));
    assert_eq!(met(vec![sheet(), block("over", (0.0, 100.0), (1.1, 2.0))]), []);
    let on = met(vec![sheet(), block("on", (0.0, 100.0), (1.0, 2.0))]);
    assert_eq!((on[0].touch, on[0].depth), (Touch::Contact, Length::ZERO));
    // A sheet 30 mm high that stands 20 mm through another, 1 mm thick: up by 21 mm it is out.
    let through = met(vec![sheet(), block("leg", (50.0, 51.0), (-20.0, 10.0))]);
    assert_eq!((through[0].touch, through[0].depth), (Touch::Clash, Length::from_mm(10.0).unwrap()));
    // 1/32 in is what sheet gives.
    let gives = |z: f64| met(vec![sheet(), block("in", (0.0, 100.0), (1.0 - z, 3.0 - z))])[0].touch;
    assert_eq!((gives(0.79), gives(0.80)), (Touch::Contact, Touch::Clash));
}

#[test]
fn a_skew_piece_leaves_by_its_shortest_way() {
    // A square on its corner, whose corner lies 3 mm in a block: 3 mm up, or 3 / sqrt 2 along its own side where the block ends.
    let square = part("square", &[(50.0, 7.0), (60.0, 17.0), (50.0, 27.0), (40.0, 17.0)]);
    let m = met(vec![block("block", (0.0, 100.0), (0.0, 10.0)), square]);
    assert_eq!(m[0].depth, Length::from_mm(3.0).unwrap());
    // Two triangles that touch by a corner.
    let m = met(vec![part("a", &[(0.0, 0.0), (10.0, 0.0), (0.0, 10.0)]), part("b", &[(10.0, 0.0), (20.0, 0.0), (20.0, 10.0)])]);
    assert_eq!((m[0].touch, m[0].depth), (Touch::Contact, Length::ZERO));
}

#[test]
fn what_is_not_convex_is_refused() {
    let dart = part("dart", &[(0.0, 0.0), (10.0, 0.0), (2.0, 2.0), (0.0, 10.0)]);
    let line = part("line", &[(0.0, 0.0), (10.0, 0.0), (20.0, 0.0)]);
    let e = SectionFit { parts: vec![block("a", (0.0, 1.0), (0.0, 1.0)), dart, line] }.compute().unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("parts[1].pieces[0]", "parts[2].pieces[0]"));
}

#[test]
fn a_strip_that_comes_down_on_the_drip_is_refused() {
    // A roof of 40 degrees over a face 1/2 in deep, whose drip runs out almost level: the strip, 40 degrees down, crosses it.
    let mut e = eave_tests::asked(slope(40.0));
    e.detail.face.hem = DripHem::Closed { width: len("1/4\"") };
    (e.detail.face.depth, e.detail.face.kick, e.detail.face.clears) = (len("1/2\""), degrees(80.0), len("3\""));
    (e.detail.panel.overhang, e.detail.panel.fold) = (len("3\""), len("1 1/2\""));
    let refused = e.compute().unwrap_err();
    assert_eq!((refused.kind(), refused.path()), (ErrorKind::Impossible, "detail.panel.overhang"), "{refused}");
    assert!(refused.message().starts_with("eave trim and hook strip run into each other by 10.4"), "{refused}");
    // As deep as a board is high it clears.
    e.detail.face.depth = len("6\"");
    assert!(e.compute().is_ok());
}

#[test]
fn a_hem_that_runs_into_what_lies_behind_it_is_refused() {
    // The hem along the trim's inner edge folds toward the Z, whose top flange ends at the same place.
    let mut r = rake_tests::asked();
    r.detail.sheet.thickness = len("0.05\"");
    (r.detail.inner.cover, r.detail.z_cover.least) = (Length::ZERO, Length::ZERO);
    (r.detail.inner.drop, r.detail.inner.hem) = (len("3/4\""), len("0.66\""));
    r.detail.z.sheet.thickness = len("0.1\"");
    let refused = r.compute().unwrap_err();
    assert_eq!(refused.path(), "detail.inner.cover", "{refused}");
    // It lies in it by its own thickness.
    assert!(refused.message().ends_with("by 1.27 mm"), "{refused}");
    r.detail.inner.cover = len("1/8\"");
    assert!(r.compute().is_ok());

    // A hem under a flange that is not turned down, with no tape between it and the seams.
    let mut cap = ridge_tests::asked(slope(20.0), slope(20.0));
    cap.detail.sheet.thickness = len("0.05\"");
    cap.detail.first.drip = DripEdge { leg: Length::ZERO, turn: Angle::SQUARE, hem: len("1/2\""), above_pan: Length::ZERO };
    cap.first.levels.tape = Length::ZERO;
    let refused = cap.compute().unwrap_err();
    assert_eq!(refused.path(), "detail.first.drip.hem", "{refused}");
    cap.first.levels.tape = len("1/16\"");
    assert!(cap.compute().is_ok());
}
