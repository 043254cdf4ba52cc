use super::{PanEnd, PanEndOn, PanEndSide};
use crate::junction::{BeadSize, Side};
use crate::num;
use crate::panel::Growth;
use crate::record::Calculation;
use crate::units::{Angle, Length};
use proptest::prelude::*;

fn side(on: PanEndOn, angle: f64, edge: f64, beyond: f64, fold: f64) -> PanEndSide {
    let mm = |v: f64| Length::from_mm(v).unwrap();
    PanEndSide { on, angle: Angle::degrees_from(angle).unwrap(), centre: mm(1.0), edge: mm(edge), beyond: mm(beyond), fold: mm(fold), grows: None }
}

fn end(first: PanEndSide, second: PanEndSide) -> PanEnd {
    let bead = BeadSize { width: Length::inches_64(16), depth: Length::inches_64(16) };
    PanEnd { first, second, beads: 2, bead }
}

/// Two planes of 6:12 over eaves at right angles: in each the valley leaves the eave at atan2(sqrt(1.25), 1), 48.19 degrees, that is at 131.81 from the eave drawn on. Plane geometry, by hand.
#[test]
fn the_edges_of_a_pan_run_on_farther_than_its_centreline() {
    let t = num::atan2_deg(1.25_f64.sqrt(), 1.0);
    let leg = side(PanEndOn::Eave, 180.0 - t, 305.8, 30.0, 25.4);
    let cut = end(leg, leg).compute().unwrap();
    let past = 55.4 / num::sin_deg(t);
    assert!((cut.first.at_centre.mm() - (past + 1.0 / 1.25_f64.sqrt())).abs() < 1e-9);
    assert!((cut.first.at_edge.mm() - (past + 305.8 / 1.25_f64.sqrt())).abs() < 1e-9);
    assert_eq!(cut.run_on, cut.first.at_edge);
    assert!((cut.bead_length.mm() - 4.0 * 304.8 / num::sin_deg(t)).abs() < 1e-8);
    assert!(cut.cautions.is_empty());
    // A cleat that lies 200 mm out goes on to the eave itself.
    assert!((cut.beside(Side::Second, Length::micrometres(200_000)).unwrap().mm() - 200.0 / 1.25_f64.sqrt()).abs() < 1e-9);
}

#[test]
fn a_pan_that_dies_into_a_plane_is_sealed_there_alone() {
    // The small plane ends against a curb, up from the corner at 60 degrees to the valley: the leg stops short of the line's end there.
    let cut = end(side(PanEndOn::Against, 60.0, 300.0, 0.0, 0.0), side(PanEndOn::Roof, 120.0, 300.0, 200.0, 0.0)).compute().unwrap();
    assert!(cut.first.at_edge.is_negative() && cut.second.at_edge.is_positive());
    assert!((cut.bead_length.mm() - 2.0 * 299.0 / num::sin_deg(60.0)).abs() < 1e-8);
    assert_eq!(cut.cautions.iter().map(|c| (c.code().number, c.subject())).collect::<Vec<_>>(), [(7016, "second")]);
    assert_eq!(cut.beside(Side::First, Length::micrometres(200_000)).unwrap(), Length::ZERO);
}

#[test]
fn bad_ends_are_refused_by_their_fields() {
    let good = side(PanEndOn::Eave, 120.0, 300.0, 30.0, 20.0);
    let bad = PanEndSide { angle: Angle::degrees_from(180.0).unwrap(), edge: Length::ZERO, fold: Length::inches(-1), ..good };
    let e = end(good, bad).compute().unwrap_err();
    let paths: Vec<&str> = std::iter::once(e.path()).chain(e.others().iter().map(|o| o.path())).collect();
    assert_eq!(paths, ["second.angle", "second.edge", "second.fold"]);
}

proptest! {
    /// In the plane, by coordinates: the valley goes up the y axis; the cut's two ends lie so far past the line on which the plane ends.
    #[test]
    fn both_ends_of_a_cut_lie_past_their_line(angle in 20.0_f64..160.0, edge in 100.0_f64..500.0, beyond in -20.0_f64..80.0, fold in 0.0_f64..30.0) {
        let asked = side(PanEndOn::Eave, angle, edge, beyond, fold);
        let cut = end(asked, asked).compute().unwrap();
        let (dx, dy) = (num::sin_deg(angle), num::cos_deg(angle));
        for (x, down) in [(1.0, cut.first.at_centre), (edge, cut.first.at_edge)] {
            // Distance of (x, -down) from the line through the origin along (dx, dy), on the far side of the plane.
            let past = x * dy + down.mm() * dx;
            prop_assert!((past - (beyond + fold)).abs() < 1e-7, "{past}");
        }
        let (a, b) = ((1.0, cut.first.at_centre.mm()), (edge, cut.first.at_edge.mm()));
        prop_assert!((num::hypot(a.0 - b.0, a.1 - b.1) - cut.first.cut.mm()).abs() < 1e-7);
        let (out, _) = end(asked, asked).explain().unwrap();
        prop_assert_eq!(out, cut);
    }
}

/// An edge that goes out by 1 in in 8 ft on its way down, beyond the end of the line as well: it meets its cut where both lines say so.
#[test]
fn an_edge_that_leans_meets_its_cut_farther_down() {
    let growth = Growth { by: Length::inches(1), over: Length::feet(8) };
    let straight = side(PanEndOn::Eave, 130.0, 305.8, 30.0, 25.4);
    let leaning = PanEndSide { grows: Some(growth), ..straight };
    let (a, b) = (end(straight, straight).compute().unwrap().first, end(leaning, leaning).compute().unwrap().first);
    // Down d the edge lies 305.8 + d / 96 out, and the cut 55.4 / sin 130 - out cot 130 down.
    let (sine, cot) = (num::sin_deg(130.0), num::cos_deg(130.0) / num::sin_deg(130.0));
    let down = (55.4 / sine - 305.8 * cot) / (1.0 + cot / 96.0);
    let out = 305.8 + down / 96.0;
    assert!((b.at_edge.mm() - down).abs() < 1e-9 && (down - (55.4 / sine - out * cot)).abs() < 1e-9);
    assert!((b.cut.mm() - (out - 1.0) / sine).abs() < 1e-9 && b.at_centre == a.at_centre && b.at_edge > a.at_edge);
    let bad = PanEndSide { grows: Some(Growth { by: Length::inches(1), over: Length::ZERO }), ..straight };
    assert_eq!(end(straight, bad).compute().unwrap_err().path(), "second.grows.over");
}
