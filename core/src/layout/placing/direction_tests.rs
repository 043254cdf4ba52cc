use super::super::{EdgeUse, Layout, Start, cautions};
use super::{DirectionOfLay, LayDirection, PlaneSide};
use crate::panel::{Leg, Panel, PanelEnd, Seam};
use crate::record::Calculation;
use crate::roof::{Outline, Point};
use crate::units::{AreaUnit, Length, MassUnit, SurfaceMass};

fn inch(v: i16) -> Length {
    Length::inches(v)
}

fn layout(width: i16, start: Start) -> Layout {
    let p = |x, y| Point::new(inch(x), inch(y));
    // Snap-lock: the open leg takes 2 in, the overlapping one 3 in.
    let seam = Seam::SnapLock { male: Leg { upstand: inch(1), folds: inch(1) }, female: Leg { upstand: inch(1), folds: inch(2) }, foot: Length::ZERO };
    let panel = Panel::new(inch(16), inch(1), seam).unwrap();
    let outline = Outline::new(vec![p(0, 0), p(width, 0), p(width, 100), p(0, 100)], vec![]).unwrap();
    Layout::new(outline, panel, start, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO))).unwrap()
}

#[test]
fn equal_rips_cost_the_same_both_ways() {
    let ways = DirectionOfLay { layout: layout(40, Start::CentrePanel), wind_from: None }.compute().unwrap();
    for way in [ways.left_to_right, ways.right_to_left] {
        assert_eq!((way.ripped, way.open_legs_cut, way.overlapping_legs_cut, way.starts_on_rip), (2, 1, 1, true));
        // Two panels of 100 in that cover 12 of 16 in lose 4 in and a leg each: 4 + 2 and 4 + 3.
        assert!((way.offcut.get(AreaUnit::SquareInch) - 1300.0).abs() < 1e-9);
        assert_eq!((way.widest_offcut, way.laps_face_wind, way.offcut_mass), (inch(7), None, None));
    }
    assert!(ways.cautions.is_empty());
}

#[test]
fn one_rip_costs_the_leg_that_it_loses() {
    let layout = layout(40, Start::Left).with_sheet(SurfaceMass::parse("1 lb/ft2").unwrap());
    let ways = DirectionOfLay { layout, wind_from: Some(PlaneSide::Right) }.compute().unwrap();
    let (a, b) = (ways.of(LayDirection::LeftToRight), ways.of(LayDirection::RightToLeft));
    // The panel at the right covers 8 of 16 in and loses its right leg.
    assert_eq!((a.open_legs_cut, a.widest_offcut, a.starts_on_rip, a.laps_face_wind), (1, inch(10), false, Some(false)));
    assert_eq!((b.overlapping_legs_cut, b.widest_offcut, b.starts_on_rip, b.laps_face_wind), (1, inch(11), true, Some(true)));
    assert!((b.offcut_mass.unwrap().get(MassUnit::Pound) - 1100.0 / 144.0).abs() < 1e-9);
    assert_eq!(ways.cautions[0].code(), cautions::LAPS_FACE_WIND);
    assert!(ways.cautions[0].message().contains("from right to left"));
}

#[test]
fn a_mirrored_plane_has_the_mirrored_ways() {
    let ways = |start, wind| DirectionOfLay { layout: layout(40, start), wind_from: Some(wind) }.compute().unwrap();
    let (here, there) = (ways(Start::Left, PlaneSide::Left), ways(Start::Right, PlaneSide::Right));
    for direction in [LayDirection::LeftToRight, LayDirection::RightToLeft] {
        let mut back = *there.of(direction.mirrored());
        back.direction = direction;
        assert_eq!(*here.of(direction), back);
    }
}
