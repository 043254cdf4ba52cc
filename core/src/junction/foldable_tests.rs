use super::test_sections::{len, paths};
use super::{Bending, DripHem, covered_tests, eave_tests, rake_tests, transition_tests};
use crate::num;
use crate::record::Calculation;
use crate::units::Length;

/// What a bend of this angle takes of each leg, to the outer mold line: (r + t) tan(A / 2).
fn setback(degrees: f64, inside: f64, t: f64) -> f64 {
    (inside + t) * num::tan_deg(degrees / 2.0)
}

#[test]
fn a_leg_that_its_bends_swallow_is_told_by_its_input() {
    let mut rake = rake_tests::asked();
    rake.detail.inner.drop = len("1 mm");
    rake.detail.inner.above_pan = Length::ZERO;
    let e = rake.compute().unwrap_err();
    let sheet = rake.detail.sheet;
    assert!(e.message().starts_with("the rake trim, inner edge: the leg is swallowed by the setbacks of its bends by "), "{e}");
    assert_eq!((e.path(), e.value()), ("detail.inner.drop", Some("1 mm")));
    assert!(e.cure().is_some());
    // A right-angled bend at its upper end.
    let needs = setback(90.0, sheet.inside_radius.mm(), sheet.thickness.mm());
    let by = len(e.message().rsplit(" by ").next().unwrap());
    assert!((by.mm() - (needs - 1.0)).abs() < 1e-6, "{e}: {needs}");
}

#[test]
fn a_hem_too_wide_for_its_leg_is_told_by_how_much() {
    let mut hip = covered_tests::hip("6:12", "6:12", 90.0);
    hip.detail.second.drip.hem = len("2\"");
    let e = hip.compute().unwrap_err();
    assert_eq!(paths(&e), ["detail.second.drip.hem"]);
    assert!(e.message().starts_with("the hip cap, hem at the end: ") && e.message().contains(" by ") && e.cure().is_some(), "{e}");
    let mut eave = eave_tests::asked(super::test_sections::slope(20.0));
    if let DripHem::Hooked(cleat) = &mut eave.detail.face.hem {
        cleat.hem_gap = len("77 mm");
        assert_eq!(paths(&eave.compute().unwrap_err()), ["detail.face.clears", "detail.face.hem"]);
    }
}

#[test]
fn a_riser_too_low_to_fold_is_told_by_its_distance() {
    let mut t = transition_tests::transition("3:12", "8:12");
    let s = t.section().unwrap().bend_on_upper;
    // A few hundredths of an inch past where the flanges meet.
    t.detail.bending = Bending::Riser { distance: (s + len("0.08\"")).length().unwrap() };
    let e = t.compute().unwrap_err();
    assert!(e.path() == "detail.bending.riser.distance" && e.message().starts_with("the transition trim, riser: the leg is swallowed"), "{e}");
}
