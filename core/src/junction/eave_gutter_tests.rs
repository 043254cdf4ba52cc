#[cfg(feature = "serde")]
use super::test_sections::read_without;
use super::test_sections::{len, near, paths, row, slope};
use super::{Eave, EaveFixing, GutterLip, GutterOpening, eave_tests::asked};
use crate::num;
use crate::practice::junction::{GUTTER_LIP_BELOW_PLANE, GUTTER_LIP_CLEARANCE};
use crate::record::Calculation;
use crate::units::Length;

fn opening(back: &str, front: &str) -> GutterOpening {
    GutterOpening { back: len(back), front: len(front), lip_clearance: GUTTER_LIP_CLEARANCE, lip: None }
}

fn with(degrees: f64, gutter: GutterOpening) -> Eave {
    let mut e = asked(slope(degrees));
    e.detail.gutter = Some(gutter);
    e
}

#[test]
fn the_front_lip_keeps_clear_of_the_nose_in_the_heat() {
    // On a level deck: overhang 1 1/4 in, fold 1 in of which 3/8 in stays hooked: 1 7/8 in out in the heat, and 1/2 in clear.
    assert!(with(0.0, opening("0\"", "2 3/8\"")).compute().is_ok());
    let refused = with(0.0, opening("0\"", "2 1/8\"")).compute().unwrap_err();
    assert_eq!((refused.path(), refused.others().len()), ("detail.gutter.front", 0));
    assert!(refused.message().contains("in the heat") && refused.message().ends_with("by 6.35 mm") && refused.cure().is_some(), "{refused}");
    // Another clearance may be chosen.
    assert!(with(0.0, GutterOpening { lip_clearance: len("1/4\""), ..opening("0\"", "2 1/8\"") }).compute().is_ok());
    // Panels fastened here stay where they were laid: 1 1/2 in and the clearance.
    let mut fixed = with(0.0, opening("0\"", "2\""));
    assert_eq!(fixed.compute().unwrap_err().path(), "detail.gutter.front");
    fixed.detail.panel.fixed = Some(EaveFixing { up_the_slope: len("1\""), fasteners: row() });
    assert!(fixed.compute().is_ok());
}

#[test]
fn water_falls_before_the_back_in_the_cold() {
    // 1 1/4 in and the clearance of 1/8 in: 1 3/8 in out, where 1 1/2 in was laid. The drip stands nearer to the face than either.
    let mut e = with(0.0, opening("1 7/16\"", "5\""));
    e.detail.face.clears = len("1 1/2\"");
    let refused = e.compute().unwrap_err();
    assert_eq!((refused.path(), refused.others().len()), ("detail.gutter.back", 0));
    // 1/16 in.
    assert!(refused.message().contains("in the cold") && refused.message().ends_with("by 1.5875 mm"), "{refused}");
    e.detail.gutter = Some(opening("1 3/8\"", "5\""));
    assert!(e.compute().is_ok());
}

#[test]
fn the_drip_falls_before_the_back() {
    // The nose falls 1 3/8 in out, the drip between that and the face.
    let mut e = with(0.0, opening("1 1/4\"", "5\""));
    let drip = {
        let mut free = e.clone();
        free.detail.gutter = None;
        free.compute().unwrap().trim("eave trim").unwrap().corners.last().unwrap().x
    };
    let refused = e.compute().unwrap_err();
    assert_eq!((refused.path(), refused.others().len()), ("detail.gutter.back", 0));
    assert!(refused.message().ends_with(&format!("drip stands behind the gutter's back by {}", (len("1 1/4\"") - drip).length().unwrap())), "{refused}");
    e.detail.gutter = Some(GutterOpening { back: drip, ..opening("0\"", "5\"") });
    assert!(e.compute().is_ok());
}

#[test]
fn the_front_lip_stands_below_the_plane_of_the_roof() {
    for degrees in [0.0, 5.0, 20.0, 40.0] {
        let lip = |below_line| GutterOpening { lip: Some(GutterLip { below_line, below_plane: GUTTER_LIP_BELOW_PLANE }), ..opening("0\"", "5\"") };
        // The underside of the pans, h square to the deck, is over x at h / cos S - x tan S.
        let h = asked(slope(degrees)).roof.levels.under_pan().unwrap().mm();
        let plane = h / num::cos_deg(degrees) - 127.0 * num::tan_deg(degrees);
        let at = 12.7 - plane;
        assert!(with(degrees, lip(Length::from_mm(at + 1e-6).unwrap())).compute().is_ok(), "{degrees}");
        let refused = with(degrees, lip(Length::from_mm(at - 2.0).unwrap())).compute().unwrap_err();
        assert_eq!(paths(&refused), ["detail.gutter.lip.below_line"]);
        let by = len(refused.message().rsplit(" by ").next().unwrap());
        assert!(near(by.mm(), 2.0) && refused.cure().is_some(), "{refused}");
    }
}

#[test]
fn bad_figures_of_a_gutter_are_told_at_once() {
    let lip = Some(GutterLip { below_line: Length::ZERO, below_plane: len("-1\"") });
    let refused = with(20.0, GutterOpening { lip_clearance: len("-1\""), lip, ..opening("0\"", "5\"") }).compute().unwrap_err();
    assert_eq!(paths(&refused), ["detail.gutter.lip_clearance", "detail.gutter.lip.below_plane"]);
}

#[cfg(feature = "serde")]
#[test]
fn what_a_job_leaves_out_of_a_gutter_is_common_practice() {
    let lip = Some(GutterLip { below_line: len("4\""), below_plane: GUTTER_LIP_BELOW_PLANE });
    let detail = with(20.0, GutterOpening { lip, ..opening("0\"", "5\"") }).detail;
    assert_eq!(read_without(&detail, &["/gutter/lip_clearance", "/gutter/lip/below_plane"]), detail);
}
