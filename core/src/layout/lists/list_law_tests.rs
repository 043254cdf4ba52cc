use super::super::test_shapes::{Shape, by_length, mirrored, outline, panel, shapes};
use super::super::{Governs, LayDirection, Layout, Start};
use super::{BundleLimits, EndLaps, GreatestLength, LapArrangement, ListChoices, ListedPlane, MarkOrder, PairChoice, PanelList};
use crate::record::Calculation;
use crate::units::{Area, AreaUnit, Length, Mass, MassUnit, SurfaceMass};
use proptest::prelude::*;

/// Choices of every kind at once.
fn choices() -> impl Strategy<Value = ListChoices> {
    let laps = prop::option::of((2500..9000_i32, 50..200_i32, prop::option::of(50..400_i32), 0..1200_i32));
    let bundles = prop::option::of((1..9_u32, 100.0..400.0_f64));
    (any::<bool>(), any::<bool>(), prop::option::of(0..300_i32), laps, prop::option::of(0..5_i32), bundles).prop_map(
        |(left, as_laid, tolerance, laps, kerf, bundles)| {
            let mm = |v: i32| Length::micrometres(v * 1000);
            ListChoices {
                direction: if left { LayDirection::LeftToRight } else { LayDirection::RightToLeft },
                marks: if as_laid { MarkOrder::AsLaid } else { MarkOrder::LongestFirst },
                tolerance: tolerance.map(mm),
                laps: laps.map(|(limit, lap, by, least)| EndLaps {
                    limits: vec![GreatestLength { length: mm(limit), governs: Governs::Shipping }],
                    lap: mm(lap),
                    arrangement: by.map_or(LapArrangement::InLine, |by| LapArrangement::Staggered { by: mm(by) }),
                    least_piece: mm(least),
                }),
                pairs: kerf.map(|k| PairChoice { kerf: mm(k) }),
                bundles: bundles.map(|(count, kg)| BundleLimits { mass: Some(Mass::new(kg, MassUnit::Kilogram).unwrap()), length: None, count: Some(count) }),
            }
        },
    )
}

fn layout(shape: &Shape, by: (i64, i64), coverage: i32, start: Start) -> Layout {
    Layout::new(outline(shape, by), panel(coverage), start, by_length).unwrap().with_sheet(SurfaceMass::parse("5 kg/m2").unwrap())
}

fn list(shape: &Shape, by: (i64, i64), coverage: i32, start: Start, choices: &ListChoices) -> ListedPlane {
    PanelList { layout: layout(shape, by, coverage, start), choices: choices.clone() }.compute().unwrap()
}

/// Everything that must not change when a plane is moved or seen from elsewhere.
#[allow(clippy::type_complexity, reason = "a test's fixture")]
fn seen(l: &ListedPlane) -> (Vec<(usize, u32, Length, Length, Length, usize)>, Vec<(String, Length, Length, u64)>, [Area; 6], Length, Vec<usize>) {
    let w = &l.waste;
    (
        l.pieces.iter().map(|p| (p.number, p.piece, p.low, p.own, p.order, p.group)).collect(),
        l.groups.iter().map(|g| (g.mark.clone(), g.order, g.width, g.count)).collect(),
        [w.coil, w.covered, w.seams, w.rips, w.skew_cuts, w.ends],
        l.coil.length,
        l.bundles.iter().map(|b| b.pieces.len()).collect(),
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn the_account_of_the_coil_closes(shape in shapes(), coverage in 150_000..900_000_i32, choices in choices()) {
        let l = list(&shape, (0, 0), coverage, Start::Left, &choices);
        let laid = layout(&shape, (0, 0), coverage, Start::Left).compute().unwrap();
        let mm = |a: Area| a.get(AreaUnit::SquareMillimetre);
        let w = &l.waste;
        let parts = mm(w.seams) + mm(w.rips) + mm(w.skew_cuts) + mm(w.ends);
        prop_assert!((mm(w.coil) - mm(w.covered) - parts).abs() <= 1e-12 * mm(w.coil));
        approx::assert_relative_eq!(mm(w.covered) + mm(laid.uncovered), mm(outline(&shape, (0, 0)).area()), max_relative = 1e-9);
        approx::assert_relative_eq!(mm(w.coil), mm(l.coil.length.times(l.coil.width)), max_relative = 1e-12);
    }

    #[test]
    fn no_piece_is_shorter_than_its_own_length_and_none_too_long(shape in shapes(), coverage in 150_000..900_000_i32, choices in choices()) {
        let l = list(&shape, (0, 0), coverage, Start::Right, &choices);
        let tolerance = choices.tolerance.unwrap_or_default();
        for p in &l.pieces {
            prop_assert!(p.order >= p.own && (p.order - p.own).length().unwrap() <= tolerance);
            prop_assert_eq!(l.groups[p.group].order, p.order);
            if let Some(laps) = &choices.laps {
                prop_assert!(laps.allows(p.own));
            }
        }
        prop_assert_eq!(l.groups.iter().map(|g| g.count).sum::<u64>(), l.pieces.len() as u64);
    }

    /// Pieces of a panel lap by what is asked for or more, and together reach from its foot to its head.
    #[test]
    fn lapped_pieces_reach_over_the_whole_panel(shape in shapes(), coverage in 150_000..900_000_i32, choices in choices()) {
        let l = list(&shape, (0, 0), coverage, Start::Left, &choices);
        let laid = layout(&shape, (0, 0), coverage, Start::Left).compute().unwrap();
        let Some(laps) = &choices.laps else { return Ok(()) };
        // The shop's rounding takes an excess of a micrometre for noise.
        let noise = crate::units::ShopRounding::TOLERANCE;
        for pair in l.pieces.windows(2).filter(|w| w[0].panel == w[1].panel) {
            prop_assert!(pair[0].low + pair[0].own - pair[1].low + noise >= laps.lap.into());
        }
        for (i, panel) in laid.panels.iter().enumerate() {
            let of: Vec<_> = l.pieces.iter().filter(|p| p.panel == i).collect();
            let reach = (of.last().unwrap().low + of.last().unwrap().own - of[0].low + noise).length().unwrap();
            // The shop's nearest step may take up to half of it off a panel in one piece.
            prop_assert!(reach >= panel.blank || of.len() == 1, "{} of {}", reach, panel.blank);
        }
    }

    #[test]
    fn bundles_are_complete_and_within_their_limits(shape in shapes(), coverage in 150_000..900_000_i32, choices in choices()) {
        let l = list(&shape, (0, 0), coverage, Start::Left, &choices);
        let Some(limits) = choices.bundles else { prop_assert!(l.bundles.is_empty()); return Ok(()) };
        let order: Vec<usize> = l.bundles.iter().flat_map(|b| b.pieces.iter().copied()).collect();
        prop_assert_eq!(order, (0..l.pieces.len()).collect::<Vec<_>>());
        for (k, b) in l.bundles.iter().enumerate() {
            prop_assert!(b.pieces.len() <= limits.count.unwrap() as usize);
            prop_assert!(b.mass.unwrap().get(MassUnit::Kilogram) <= limits.mass.unwrap().get(MassUnit::Kilogram));
            prop_assert!(b.pieces.iter().all(|&i| l.pieces[i].bundle == Some(k) && l.pieces[i].order <= b.length));
        }
    }

    #[test]
    fn pairs_never_take_more_than_singles(shape in shapes(), coverage in 150_000..900_000_i32, choices in choices()) {
        let with = ListChoices { pairs: Some(PairChoice { kerf: Length::ZERO }), ..choices.clone() };
        let (alone, paired) = (list(&shape, (0, 0), coverage, Start::Left, &ListChoices { pairs: None, ..choices }), list(&shape, (0, 0), coverage, Start::Left, &with));
        prop_assert!(paired.coil.length <= alone.coil.length);
        let mut used: Vec<usize> = paired.pairs.iter().flat_map(|p| [p.below, p.above]).collect();
        used.sort_unstable();
        prop_assert!(used.windows(2).all(|w| w[0] < w[1]) && paired.pairs.iter().all(|p| p.saved.is_positive()));
    }

    #[test]
    fn a_moved_renumbered_or_turned_plane_has_the_same_list(
        shape in shapes(), coverage in 150_000..900_000_i32, choices in choices(), dx in -1_000_000_000_000_000_i64..1_000_000_000_000_000, first in 0..20_usize
    ) {
        let here = list(&shape, (0, 0), coverage, Start::CentrePanel, &choices);
        prop_assert_eq!(seen(&here), seen(&list(&shape, (dx, -dx), coverage, Start::CentrePanel, &choices)));
        let mut other = shape.clone();
        let n = other.outer.len();
        other.outer.rotate_left(first % n);
        other.outer.reverse();
        other.hole.reverse();
        prop_assert_eq!(seen(&here), seen(&list(&other, (0, 0), coverage, Start::CentrePanel, &choices)));
    }

    #[test]
    fn a_mirrored_plane_laid_the_other_way_has_the_same_list(shape in shapes(), coverage in 150_000..900_000_i32, choices in choices(), datum in -9_000_000..9_000_000_i32) {
        let d = Length::micrometres(datum);
        let there = ListChoices { direction: choices.direction.mirrored(), ..choices.clone() };
        for (start, opposite) in [
            (Start::Left, Start::Right),
            (Start::EqualRips, Start::EqualRips),
            (Start::LeftUnlessNarrow(Length::micrometres(coverage / 3)), Start::RightUnlessNarrow(Length::micrometres(coverage / 3))),
            (Start::Datum(d), Start::Datum(Length::micrometres(-datum))),
        ] {
            let (a, b) = (list(&shape, (0, 0), coverage, start, &choices), list(&mirrored(&shape), (0, 0), coverage, opposite, &there));
            prop_assert_eq!(seen(&a), seen(&b));
            let cuts = |l: &ListedPlane| l.groups.iter().map(|g| g.cut).collect::<Vec<_>>();
            prop_assert_eq!(cuts(&a), cuts(&b).into_iter().map(super::CutEdge::mirrored).collect::<Vec<_>>());
            prop_assert_eq!(a.pairs.len(), b.pairs.len());
        }
    }

    #[test]
    fn computing_and_explaining_agree(shape in shapes(), coverage in 150_000..900_000_i32, choices in choices()) {
        let of = PanelList { layout: layout(&shape, (0, 0), coverage, Start::Left), choices };
        prop_assert_eq!(of.explain().unwrap().0, of.compute().unwrap());
    }
}
