//! End caps against areas worked out otherwise, and the trims of the guide's own sections.

use super::test_sections::{len, near, paths};
use super::{CapBlank, CapOutline, SectionPoint, Support, TrimSheet};
use crate::error::ErrorKind;
use crate::num;
use crate::practice::junction::CAP_TAB;
use crate::record::Calculation;
use crate::trim::BlankSide;
use crate::units::{Angle, Length};
use proptest::prelude::*;

fn point(x: f64, z: f64) -> SectionPoint {
    SectionPoint { x: Length::from_mm(x).unwrap(), z: Length::from_mm(z).unwrap() }
}

fn on(rise: f64, height: f64) -> Support {
    Support { rise: Angle::of_degrees(rise), height: Length::from_mm(height).unwrap() }
}

fn cap(corners: &[(f64, f64)], on: Vec<Support>, tab: Length) -> CapOutline {
    let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
    CapOutline { corners: corners.iter().map(|(x, z)| point(*x, *z)).collect(), sheet, on, tab }
}

fn area(made: &CapBlank) -> f64 {
    let p: Vec<(f64, f64)> = made.face.iter().map(|p| (p.x.mm(), p.z.mm())).collect();
    p.iter().zip(p.iter().cycle().skip(1)).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>() / 2.0
}

/// A ridge cap of 6 in 12 that stands 50 mm plumb over the pans, 200 mm level to each side, with plumb edges down to 10 mm over them.
#[test]
fn a_ridge_s_cap_is_two_strips() {
    let slope: f64 = 0.5;
    let trim = [(-200.0, -90.0), (-200.0, -50.0), (0.0, 50.0), (200.0, -50.0), (200.0, -90.0)];
    let rise = num::atan2_deg(slope, 1.0);
    let made = cap(&trim, vec![on(rise, 0.0), on(-rise, 0.0)], CAP_TAB).compute().unwrap();
    // Plumb 50 mm everywhere; at each lower edge, 10 mm over the pan, the cap's end is square to the pan, and leaves out what lies below that.
    let left_out = 10.0 * 10.0 * slope / (1.0 + slope * slope) / 2.0;
    assert!((area(&made) - (2.0 * 200.0 * 50.0 - 2.0 * left_out)).abs() < 1e-6, "{}", area(&made));
    assert!(near(made.height.mm(), 50.0));
    // The slopes and the two edges, which are long enough, have tabs.
    assert_eq!(made.tabs, 2);
    let tips = made.blank.outline.iter().filter(|e| e.side == BlankSide::Tab).count();
    assert_eq!(tips, 3 * made.tabs);
}

#[test]
fn a_cap_ends_plumb_at_a_wall_and_where_a_face_comes_down_past_the_pan() {
    // Under a wall's flashing that falls by 1 in 3 to a free edge: a parallelogram, its upper end plumb.
    let rise = num::atan2_deg(1.0, 3.0);
    let wall = [(-150.0, -10.0), (0.0, 40.0), (0.0, 240.0)];
    let made = cap(&wall, vec![on(rise, 0.0)], Length::ZERO).compute().unwrap();
    assert_eq!((made.face[0], made.face.len()), (point(0.0, 40.0), 4));
    assert_eq!(made.face[3], point(0.0, 0.0));
    // At a rake on a level pan: down the face to the pan, and the drip below it is left out.
    let rake = [(-86.0, 24.0), (-86.0, 49.0), (1.0, 49.0), (1.0, -127.0), (13.0, -140.0)];
    let made = cap(&rake, vec![on(0.0, 2.0)], CAP_TAB).compute().unwrap();
    assert!((area(&made) - 87.0 * 47.0).abs() < 1e-6);
    assert!(made.face.contains(&point(1.0, 2.0)) && made.face.contains(&point(-86.0, 2.0)));
    // Tabs on the top and the face; the inner edge, 25 mm, has none between two square mitres.
    assert_eq!(made.tabs, 2);
    assert_eq!(made.blank.bounds().unwrap().size().unwrap(), (len("106.05 mm"), len("66.05 mm")));
}

#[test]
fn an_edge_in_the_way_of_no_other_tab() {
    // A hollow folded in at a right angle: two tabs would meet in it, so each is cut back by its own half of the corner.
    let trim = [(-300.0, 0.0), (-300.0, 60.0), (-100.0, 60.0), (-100.0, 160.0), (200.0, 160.0), (200.0, 0.0)];
    let made = cap(&trim, vec![on(0.0, 0.0)], CAP_TAB).compute().unwrap();
    assert_eq!(made.tabs, 5);
    assert!(made.blank.check().is_ok());
}

/// The ground bends under the middle of a straight flange: no corner there, and one tab.
#[test]
fn a_straight_flange_has_one_tab_over_whatever_it_stands() {
    let made = cap(&[(-200.0, 0.0), (-200.0, 60.0), (150.0, 60.0), (150.0, -200.0)], vec![on(0.0, 0.0), on(-20.0, 0.0)], CAP_TAB).compute().unwrap();
    assert_eq!((made.tabs, made.face.len()), (3, 5));
}

#[test]
fn what_leaves_no_hollow_is_refused() {
    let e = cap(&[(-100.0, 1.0), (0.0, 3.0), (100.0, 1.0)], vec![on(0.0, 0.0)], CAP_TAB).compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Impossible, "corners", Some("3 mm")));
    assert_eq!(e.cure(), Some("the trim's end folded down"));
    let e = cap(&[(-100.0, -9.0), (100.0, -1.0)], vec![on(0.0, 0.0)], CAP_TAB).compute().unwrap_err();
    assert_eq!(e.kind(), ErrorKind::Impossible);
    let mut bad = cap(&[(0.0, 9.0)], vec![], len("-1 mm"));
    bad.sheet.thickness = Length::ZERO;
    assert_eq!(paths(&bad.compute().unwrap_err()), ["sheet.thickness", "tab", "corners", "on"]);
    let e = cap(&[(-100.0, 9.0), (0.0, 30.0)], vec![on(89.5, 0.0)], CAP_TAB).compute().unwrap_err();
    assert_eq!(e.path(), "on[0].rise");
}

proptest! {
    /// A peaked trim that comes down through the pans on both sides: its cap's area is the integral of what stands over them, its lower corners lie on them, and its upper ones on the trim.
    #[test]
    fn the_face_is_what_stands_over_the_pans(
        rises in (-40.0..40.0_f64, -40.0..40.0_f64),
        heights in (-20.0..20.0_f64, -20.0..20.0_f64),
        steps in proptest::collection::vec((20.0..200.0_f64, 0.0..1.0_f64), 2..6),
        tab in 0..25_i32,
    ) {
        let mut trim = vec![(-500.0, -3000.0)];
        let mut x = -450.0;
        for (step, up) in steps {
            trim.push((x, 600.0 + 100.0 * up));
            x += step;
        }
        trim.push((x + 50.0, -3000.0));
        let sides = vec![on(rises.0, heights.0), on(rises.1, heights.1)];
        let made = cap(&trim, sides, Length::micrometres(tab * 1000)).compute().unwrap();
        let tan = |a: f64| num::sin_deg(a) / num::cos_deg(a);
        let (t1, t2) = (tan(rises.0), tan(rises.1));
        let (z1, z2) = (heights.0 / num::cos_deg(rises.0), heights.1 / num::cos_deg(rises.1));
        let bend = (z2 - z1) / (t1 - t2);
        let ground = |x: f64| if x < bend { z1 + t1 * x } else { z2 + t2 * x };
        let top = |x: f64| {
            let i = trim.windows(2).position(|w| w[0].0 <= x && x <= w[1].0).unwrap();
            let (a, b) = (trim[i], trim[i + 1]);
            a.1 + (x - a.0) / (b.0 - a.0) * (b.1 - a.1)
        };
        let (from, to, n) = (trim[0].0, trim[trim.len() - 1].0, 200_000);
        let dx = (to - from) / f64::from(n);
        let wanted: f64 = (0..n).map(|i| from + (f64::from(i) + 0.5) * dx).map(|x| (top(x) - ground(x)).max(0.0) * dx).sum();
        prop_assert!((area(&made) - wanted).abs() < 1e-5 * wanted, "{} {}", area(&made), wanted);
        for p in &made.face {
            let (x, z) = (p.x.mm(), p.z.mm());
            prop_assert!((z - ground(x)).abs() < 1e-6 || (z - top(x)).abs() < 1e-6);
        }
    }
}
