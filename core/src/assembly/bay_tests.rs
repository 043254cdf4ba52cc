use super::test_lines::{Laid, gable, hip, inch, plane, shed_with_curb, tee};
use super::{BayEnd, Flank, Hand, LineBays, PanelEdge, PlanePanels, SideBays};
use crate::error::ErrorKind;
use crate::junction::Side;
use crate::layout::{EdgeUse, Start};
use crate::panel::PanelEnd;
use crate::record::Calculation;
use crate::roof::{LineKind, RoofInput};
use crate::units::{Length, LengthUnit, Sum};
use proptest::prelude::*;

fn total(bays: &SideBays) -> Length {
    bays.bays.iter().map(|b| b.length).sum::<Sum>().length().unwrap()
}

/// Bays follow on each other and cover their line; each is width / sin(meeting angle) long.
fn hold_the_laws(laid: &Laid) {
    for (line, flank, side) in laid.all_bays() {
        if side.meeting.degrees() < 1e-6 {
            assert!(side.bays.is_empty() && !side.beside.is_empty(), "{}", line.name);
            continue;
        }
        assert_eq!(total(&side), side.covered);
        let open = side.gaps.iter().map(|g| (g.to - g.from).length().unwrap()).sum::<Sum>();
        let want = (line.length - open).length().unwrap();
        assert!((side.covered.mm() - want.mm()).abs() < 1e-6, "{} {flank:?}: {} of {want}", line.name, side.covered);
        assert!(side.bays.windows(2).all(|w| w[0].to <= w[1].from));
        for b in &side.bays {
            assert!((b.length.mm() - b.width.mm() / b.meeting.sin()).abs() < 1e-6, "{}: {b:?}", line.name);
            let panel = &laid.planes[side.plane].panels[b.panel];
            assert_eq!((panel.strip, panel.run), (b.strip, b.run));
            assert_eq!(laid.planes[side.plane].mark_of(panel), Some(b.mark.as_str()));
            assert!((b.meeting.degrees() - side.meeting.degrees()).abs() < 1e-9 || (180.0 - b.meeting.degrees() - side.meeting.degrees()).abs() < 1e-9);
        }
    }
}

#[test]
fn a_gable_from_seam_to_seam() {
    let laid = Laid::new(gable(), Start::Left);
    hold_the_laws(&laid);
    let bays = laid.all_bays();
    let ridge: Vec<&SideBays> = bays.iter().filter(|(l, ..)| l.name == "ridge 1").map(|(.., b)| b).collect();
    assert_eq!((ridge[0].bays.len(), ridge[1].bays.len(), ridge[0].seams.len()), (30, 30, 31));
    assert_eq!(ridge[0].covered, Length::feet(40));
    assert!(ridge[0].bays.iter().all(|b| b.seam_ends() == 2 && b.hand == Hand::Square && b.end == PanelEdge::Upper));
    // The second side's panels come in the other order along the line than the first's.
    assert!(ridge[0].bays.windows(2).all(|w| w[0].strip > w[1].strip) && ridge[1].bays.windows(2).all(|w| w[0].strip < w[1].strip));
    let rake = bays.iter().find(|(l, ..)| l.kind == LineKind::Rake).map(|(.., b)| b).unwrap();
    assert_eq!((rake.beside.len(), rake.beside[0].at, rake.beside[0].width), (1, BayEnd::Seam, inch(16.0)));
    assert_eq!(rake.beside[0].stretch.from, Length::ZERO);
}

#[test]
fn ripped_ends_are_bays_of_their_own() {
    let laid = Laid::new(vec![plane("shed", &[(0.0, 0.0), (21.0, 0.0), (21.0, 8.0), (0.0, 8.0)], &[], "4:12", 270.0, (0.0, 0.0, 0.0))], Start::CentreSeam);
    hold_the_laws(&laid);
    let bays = laid.all_bays();
    let (.., eave) = bays.iter().find(|(l, ..)| l.kind == LineKind::Eave).unwrap();
    // 252 in: 7 whole panels each side of the middle, and 14 in left over.
    let (first, last) = (&eave.bays[0], eave.bays.last().unwrap());
    assert_eq!((first.width, first.left, first.right), (Length::inches(14), BayEnd::Rip, BayEnd::Seam));
    assert_eq!((last.width, last.left, last.right), (Length::inches(14), BayEnd::Seam, BayEnd::Rip));
    assert_eq!(eave.seams.len(), eave.bays.len() - 1);
    assert!(eave.cautions.is_empty());
    let rakes: Vec<_> = bays.iter().filter(|(l, ..)| l.kind == LineKind::Rake).collect();
    assert!(rakes.iter().all(|(.., b)| b.beside[0].at == BayEnd::Rip && b.beside[0].width == Length::inches(14)));
}

#[test]
fn a_hip_roof_is_covered_along_every_line() {
    let laid = Laid::new(hip(40.0, 10.0), Start::Left);
    hold_the_laws(&laid);
    let bays = laid.all_bays();
    for (line, _, side) in bays.iter().filter(|(l, ..)| l.kind == LineKind::Hip) {
        assert!(side.gaps.is_empty(), "{}", line.name);
        // 6:12: the hip rises by 1 in 3 of its own length in plan sqrt 2; seams meet it at 45 degrees in plan, 41.81 in the plane.
        assert!((side.meeting.tan() - 2.0 / 5.0_f64.sqrt()).abs() < 1e-9);
        let full: Vec<_> = side.bays.iter().filter(|b| b.width == Length::inches(16) && b.seam_ends() == 2).collect();
        assert!(full.len() >= 5 && full.iter().all(|b| b.hand == full[0].hand));
        // 10 ft of plan across the seams on either side.
        assert_eq!(side.bays.iter().map(|b| b.width).sum::<Sum>().length().unwrap(), Length::feet(10));
        assert!(side.cautions.iter().any(|c| c.code().name == "corner-bay"));
    }
    // The two sides of one hip lean away from each other, and the two hips of one plane are of opposite hand.
    let hand = |name: &str, plane: &str| {
        let number = laid.roof.planes().iter().position(|p| p.name() == plane).unwrap();
        bays.iter().find(|(l, _, b)| l.name == name && b.plane == number).map(|(.., b)| b.bays[0].hand).unwrap()
    };
    let hips = |plane: &str| {
        let number = laid.roof.planes().iter().position(|p| p.name() == plane).unwrap();
        laid.roof.lines_round(number).filter(|l| l.kind == LineKind::Hip).map(|l| l.name.clone()).collect::<Vec<_>>()
    };
    let south = hips("south");
    assert_ne!(hand(&south[0], "south"), hand(&south[1], "south"));
}

#[test]
fn a_line_that_is_part_of_an_edge_cuts_its_last_bay() {
    let laid = Laid::new(tee(), Start::Left);
    hold_the_laws(&laid);
    let bays = laid.all_bays();
    let north: Vec<_> = bays.iter().filter(|(l, _, b)| l.kind == LineKind::Ridge && b.plane == 0).collect();
    assert_eq!(north.len(), 2);
    // 25 ft each: 18 panels and 12 in of the one in the middle, 4 in of it on the other line.
    let widths: Vec<Length> = north.iter().flat_map(|(.., b)| b.bays.iter().map(|b| b.width)).filter(|w| *w != Length::inches(16)).collect();
    assert_eq!(widths.len(), 3, "{widths:?}");
    assert!(widths.contains(&Length::inches(12)) && widths.contains(&Length::inches(4)) && widths.contains(&Length::inches(8)));
    assert!(north.iter().all(|(.., b)| b.cautions.iter().any(|c| c.code().name == "corner-bay")));
}

#[test]
fn an_opening_has_bays_below_and_above_it() {
    let laid = Laid::new(shed_with_curb(), Start::Left);
    hold_the_laws(&laid);
    let bays = laid.all_bays();
    let of = |kind| bays.iter().filter(move |(l, ..)| l.kind == kind).map(|(.., b)| b).collect::<Vec<_>>();
    let (front, back) = (of(LineKind::CurbFront)[0], of(LineKind::CurbBack)[0]);
    assert_eq!((front.covered, back.covered), (Length::feet(5), Length::feet(5)));
    assert_eq!((front.bays[0].end, back.bays[0].end), (PanelEdge::Upper, PanelEdge::Lower));
    // 120 to 180 in over seams at 16 in: 112, 128, 144, 160, 176.
    let mut widths: Vec<f64> = front.bays.iter().map(|b| b.width.get(LengthUnit::Inch)).collect();
    widths.sort_by(f64::total_cmp);
    assert_eq!(widths, [4.0, 8.0, 16.0, 16.0, 16.0]);
    // The two at the corners of the opening go on past it.
    assert!([front, back].iter().all(|s| s.bays.iter().all(|b| b.notched == (b.width < Length::inches(16)))));
    assert!(front.bays.iter().filter(|b| b.notched).all(|b| b.seam_ends() == 1 && (b.left == BayEnd::Corner || b.right == BayEnd::Corner)));
    let sides = of(LineKind::CurbSide);
    assert!(sides.iter().all(|b| b.beside.len() == 1 && b.beside[0].at == BayEnd::Rip));
}

#[test]
fn what_hold_backs_leave_nothing_of_is_a_gap() {
    let laid = Laid::with_ends(hip(40.0, 10.0), Start::Left, |kind| match kind {
        LineKind::Rake => EdgeUse::Side,
        LineKind::Hip => EdgeUse::End(PanelEnd::hold_back(Length::inches(24))),
        _ => EdgeUse::End(PanelEnd::hold_back(Length::ZERO)),
    });
    hold_the_laws(&laid);
    let bays = laid.all_bays();
    let hip = bays.iter().find(|(l, ..)| l.kind == LineKind::Hip).map(|(.., b)| b).unwrap();
    assert!(!hip.gaps.is_empty());
    assert!(hip.cautions.iter().any(|c| c.code().name == "no-panels-along"));
}

#[test]
fn panels_of_another_outline_are_refused() {
    let (gable, hip) = (Laid::new(gable(), Start::Left), Laid::new(hip(40.0, 10.0), Start::Left));
    let (g, h) = (gable.panels(), hip.panels());
    let line = gable.roof.line("ridge 1").unwrap();
    let e = LineBays { line, flank: Flank::Left, side: Side::First, panels: &h[1] }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "side"));
    let eave = gable.roof.line("eave 1").unwrap();
    let e = LineBays { line: eave, flank: Flank::Right, side: Side::Second, panels: &g[0] }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "flank"));
    let e = PlanePanels::new("mixed", &hip.layouts[1], &gable.planes[0]).err().unwrap();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "laid.panels[7]"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Any hip roof, wherever its seams lie.
    #[test]
    fn any_hip_roof_is_covered(half in 3.0_f64..12.0, ridge in 0.5_f64..20.0, datum in -50.0_f64..50.0) {
        let laid = Laid::new(hip(2.0 * half + ridge, half), Start::Datum(inch(datum)));
        hold_the_laws(&laid);
    }

    /// A roof told from the other end has the same bays, with the other hand.
    #[test]
    fn mirrored_planes_have_the_bays_of_the_other_hand(a in 4.0_f64..9.0, b in 10.0_f64..20.0) {
        let outer = [(0.0, 0.0), (24.0, 0.0), (24.0, b), (0.0, a)];
        let mirrored = outer.map(|(x, y)| (-x, y));
        let lay = |outer: &[(f64, f64)], start| Laid::new(vec![plane("p", outer, &[], "4:12", 270.0, (0.0, 0.0, 0.0))], start);
        let (one, two) = (lay(&outer, Start::Left), lay(&mirrored, Start::Right));
        let top = |laid: &Laid| laid.all_bays().into_iter().map(|(.., b)| b).find(|b| b.bays.iter().any(|b| b.end == PanelEdge::Upper)).unwrap();
        let (p, q) = (top(&one), top(&two));
        prop_assert_eq!(p.bays.len(), q.bays.len());
        for (x, y) in p.bays.iter().zip(q.bays.iter().rev()) {
            prop_assert!((x.length.mm() - y.length.mm()).abs() < 1e-6 && x.width == y.width);
            prop_assert!((x.meeting.degrees() + y.meeting.degrees() - 180.0).abs() < 1e-9);
            prop_assert_eq!((x.left, x.right), (y.right, y.left));
        }
    }

    #[test]
    fn explaining_changes_nothing(half in 3.0_f64..8.0) {
        let laid = Laid::new(hip(3.0 * half, half), Start::CentrePanel);
        let panels = laid.panels();
        for line in laid.roof.lines() {
            let bays = LineBays { line, flank: Flank::Left, side: Side::First, panels: &panels[line.side.plane] };
            prop_assert_eq!(bays.compute().unwrap(), bays.explain().unwrap().0);
        }
    }
}

#[test]
fn the_roof_of_the_tests_is_one() {
    assert!(RoofInput::new(tee()).compute().unwrap().lines().iter().all(|l| l.kind != LineKind::Unknown));
}
