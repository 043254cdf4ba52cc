use super::super::{EdgeUse, Governs, LayDirection, Layout, LengthLimit, Start, cautions};
use super::{BundleLimits, CutEdge, EndLaps, GreatestLength, LapArrangement, ListChoices, ListedPlane, MarkOrder, PairChoice, PanelList};
use crate::error::ErrorKind;
use crate::panel::{Panel, PanelEnd, Seam};
use crate::record::Calculation;
use crate::roof::{Outline, Point};
use crate::units::{AreaUnit, Length, Mass, Rounding, ShopRounding, SurfaceMass};

fn inch(v: i16) -> Length {
    Length::inches(v)
}

fn p(x: i16, y: i16) -> Point {
    Point::new(inch(x), inch(y))
}

fn layout(outer: Vec<Point>) -> Layout {
    let panel = Panel::new(inch(16), inch(1), Seam::DoubleLock { lock: Length::inches_64(16) }).unwrap();
    Layout::new(Outline::new(outer, vec![]).unwrap(), panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO))).unwrap()
}

fn box_of(width: i16, height: i16) -> Layout {
    layout(vec![p(0, 0), p(width, 0), p(width, height), p(0, height)])
}

fn plain() -> ListChoices {
    ListChoices::laid(LayDirection::LeftToRight)
}

fn list(layout: Layout, choices: ListChoices) -> ListedPlane {
    PanelList { layout, choices }.compute().unwrap()
}

fn laps(arrangement: LapArrangement, limit: i16, least: i16) -> ListChoices {
    let limits = vec![GreatestLength { length: inch(limit), governs: Governs::Lifting }, GreatestLength { length: inch(900), governs: Governs::Shipping }];
    ListChoices { laps: Some(EndLaps { limits, lap: inch(6), arrangement, least_piece: inch(least) }), ..plain() }
}

fn rows(l: &ListedPlane) -> Vec<(usize, u32, f64, f64)> {
    let f = |l: Length| l.get(crate::units::LengthUnit::Inch);
    l.pieces.iter().map(|p| (p.number, p.piece, f(p.low), f(p.order))).collect()
}

#[test]
fn laps_in_line_are_at_one_height() {
    let l = list(box_of(32, 300), laps(LapArrangement::InLine, 120, 24));
    // Three pieces and two laps of 6 in over 300 in: 104 in each.
    assert_eq!(rows(&l), [(1, 1, 0.0, 104.0), (1, 2, 98.0, 104.0), (1, 3, 196.0, 104.0), (2, 1, 0.0, 104.0), (2, 2, 98.0, 104.0), (2, 3, 196.0, 104.0)]);
    assert_eq!((l.groups.len(), l.groups[0].count, l.coil.length), (1, 6, inch(624)));
    let said = l.cautions.iter().find(|c| c.code() == cautions::END_LAPPED).unwrap();
    assert!(said.message().contains("lifting"), "{}", said.message());
}

#[test]
fn staggered_laps_are_raised_in_every_second_strip() {
    let l = list(box_of(32, 300), laps(LapArrangement::Staggered { by: inch(12) }, 120, 24));
    // Pieces of 104 in would still do: the lowest of the second strip is 116 in.
    assert_eq!(rows(&l), [(1, 1, 0.0, 104.0), (1, 2, 98.0, 104.0), (1, 3, 196.0, 104.0), (2, 1, 0.0, 116.0), (2, 2, 110.0, 104.0), (2, 3, 208.0, 92.0)]);
    // Where they would not, one more lap is taken.
    let l = list(box_of(32, 300), laps(LapArrangement::Staggered { by: inch(20) }, 120, 24));
    assert_eq!(l.pieces.iter().filter(|p| p.number == 1).count(), 4);
    assert!(l.pieces.iter().all(|p| p.order <= inch(120)));
    // The other way round the other strip is raised.
    let right = ListChoices { direction: LayDirection::RightToLeft, ..laps(LapArrangement::Staggered { by: inch(12) }, 120, 24) };
    assert_eq!(list(box_of(32, 300), right).pieces[0].panel, 1);
}

#[test]
fn short_ends_go_to_their_neighbours_or_are_said() {
    // A step: strips of 300 and of 205 in. The line at 202 in would leave 3 in and its lap.
    let steps = || layout(vec![p(0, 0), p(32, 0), p(32, 205), p(16, 205), p(16, 300), p(0, 300)]);
    let l = list(steps(), laps(LapArrangement::InLine, 120, 24));
    assert_eq!(rows(&l)[3..], [(2, 1, 0.0, 104.0), (2, 2, 98.0, 107.0)]);
    assert!(!l.cautions.iter().any(|c| c.code() == cautions::SHORT_PIECE));
    let tight = list(steps(), laps(LapArrangement::InLine, 105, 24));
    assert_eq!(rows(&tight)[3..], [(2, 1, 0.0, 104.0), (2, 2, 98.0, 104.0), (2, 3, 196.0, 9.0)]);
    let said = tight.cautions.iter().find(|c| c.code() == cautions::SHORT_PIECE).unwrap();
    assert_eq!((said.subject(), said.message().starts_with("1 piece(s)")), ("strips[1].runs[0]", true));
}

#[test]
fn the_layout_s_own_limit_gives_equal_pieces() {
    let limit = LengthLimit { length: inch(144), governs: Governs::Shipping, end_lap: Some(inch(6)) };
    let l = list(box_of(16, 240).with_limit(limit), plain());
    assert_eq!(rows(&l), [(1, 1, 0.0, 123.0), (1, 2, 117.0, 123.0)]);
    let both = PanelList { layout: box_of(16, 240).with_limit(limit), choices: laps(LapArrangement::InLine, 120, 24) }.compute().unwrap_err();
    assert_eq!((both.kind(), both.path()), (ErrorKind::Conflict, "choices.laps"));
}

/// A plane between a valley at the left and a hip at the right, both at 45 degrees, both rising to the right: 64 in up from eave to ridge.
fn between() -> Layout {
    layout(vec![p(64, 0), p(128, 0), p(192, 64), p(64, 64), p(0, 64)].into_iter().filter(|q| *q != p(64, 64)).collect())
}

#[test]
fn a_hip_top_and_a_valley_foot_share_a_blank() {
    // The valley falls to the right here: its pieces are skew below the other way, and none pairs.
    assert!(list(between(), ListChoices { pairs: Some(PairChoice { kerf: Length::ZERO }), ..plain() }).pairs.is_empty());
    // Both rise to the right: tops cut by a hip that rises to 64 in, feet by a valley that rises from 64 in on.
    let plane = layout(vec![p(0, 0), p(64, 0), p(128, 64), p(128, 128), p(64, 128), p(0, 64)]);
    let single = list(plane.clone(), plain());
    let paired = list(plane.clone(), ListChoices { pairs: Some(PairChoice { kerf: Length::ZERO }), ..plain() });
    // Strips 1 to 4 end at the hip: 80, 96, 112, 128 in; strips 5 to 8 begin at the valley: 128, 112, 96, 80 in. Each pair saves 16 in.
    assert_eq!(single.pieces.iter().map(|p| p.order).collect::<Vec<_>>(), [80, 96, 112, 128, 128, 112, 96, 80].map(inch));
    assert_eq!(paired.pairs.len(), 4);
    for pair in &paired.pairs {
        let of = |i: usize| paired.pieces[i].order;
        assert_eq!((pair.saved, pair.blank), (inch(16), (of(pair.below) + of(pair.above) - inch(16)).length().unwrap()));
        assert!(pair.below < 4 && pair.above >= 4);
        assert_eq!(paired.pieces[pair.below].pair, paired.pieces[pair.above].pair);
    }
    assert_eq!((single.coil.length, paired.coil.length), (inch(832), inch(768)));
    assert!((paired.waste.skew_cuts.get(AreaUnit::SquareInch)).abs() < 1e-9);
    // A kerf of 1/2 in takes its length along the seam, and what is saved goes down to the shop's step of 1 in.
    let kerf = list(plane.clone(), ListChoices { pairs: Some(PairChoice { kerf: Length::inches_64(32) }), ..plain() });
    assert!(kerf.pairs.iter().all(|p| p.saved == inch(15)));
    // No blank is longer than can be formed: 112 in of the hip with 96 of the valley, and so on.
    let limit = LengthLimit { length: inch(180), governs: Governs::Forming, end_lap: None };
    let limited = list(plane.clone().with_limit(limit), ListChoices { pairs: Some(PairChoice { kerf: Length::ZERO }), ..plain() });
    assert!(limited.pairs.iter().all(|p| p.blank <= inch(180)));
    // 80 with 112 or 96, 96 with 96 or 80, 112 with 80: three.
    assert_eq!(limited.pairs.len(), 3);
    // Field trim stays between the two; the shop's step for such ends is 1 in.
    let mut trimmed = plane;
    trimmed.edges = trimmed
        .outline
        .edges()
        .map(|e| {
            EdgeUse::End(if e.from.x != e.to.x && e.from.y != e.to.y {
                PanelEnd::hold_back(Length::ZERO).with_field_trim(inch(1))
            } else {
                PanelEnd::hold_back(Length::ZERO)
            })
        })
        .collect();
    assert_eq!(list(trimmed, ListChoices { pairs: Some(PairChoice { kerf: Length::ZERO }), ..plain() }).pairs.len(), 4);
}

#[test]
fn opposite_hands_never_share_a_blank() {
    // A hip at the left and one at the right: tops of both hands, no feet.
    let hips = layout(vec![p(0, 0), p(160, 0), p(96, 64), p(64, 64)]);
    assert!(list(hips, ListChoices { pairs: Some(PairChoice { kerf: Length::ZERO }), ..plain() }).pairs.is_empty());
}

#[test]
fn lengths_within_the_tolerance_become_the_longest() {
    let hip = || layout(vec![p(0, 0), p(64, 0), p(64, 104), p(0, 100)]);
    let l = list(hip(), ListChoices { tolerance: Some(inch(1)), ..plain() });
    assert_eq!(l.pieces.iter().map(|p| p.own).collect::<Vec<_>>(), [101, 102, 103, 104].map(inch));
    assert_eq!(l.pieces.iter().map(|p| p.order).collect::<Vec<_>>(), [102, 102, 104, 104].map(inch));
    assert_eq!(l.groups.iter().map(|g| (g.mark.as_str(), g.count)).collect::<Vec<_>>(), [("A", 2), ("B", 2)]);
    assert_eq!(list(hip(), plain()).groups.len(), 4);
    let as_laid = list(hip(), ListChoices { marks: MarkOrder::AsLaid, ..plain() });
    assert_eq!(as_laid.groups.iter().map(|g| g.order).collect::<Vec<_>>(), [101, 102, 103, 104].map(inch));
    assert_eq!((0..4).filter_map(|i| as_laid.mark_of(i)).collect::<Vec<_>>(), ["A", "B", "C", "D"]);
}

#[test]
fn bundles_keep_to_every_limit_in_the_order_of_opening() {
    // Panels of 100 in in a coil of 18 3/4 in, at 1 lb/ft2: 13.02 lb each.
    let sheet = SurfaceMass::parse("1 lb/ft2").unwrap();
    let of = |bundles| ListChoices { bundles: Some(bundles), ..plain() };
    let sizes = |l: &ListedPlane| l.bundles.iter().map(|b| b.pieces.len()).collect::<Vec<_>>();
    let ten = || box_of(160, 100).with_sheet(sheet);
    let mass = BundleLimits { mass: Some(Mass::parse("40 lb").unwrap()), ..BundleLimits::default() };
    assert_eq!(sizes(&list(ten(), of(mass))), [3, 3, 3, 1]);
    let both = BundleLimits { count: Some(2), ..mass };
    let l = list(ten(), of(both));
    assert_eq!(sizes(&l), [2; 5]);
    assert_eq!(l.bundles[3].pieces, [6, 7]);
    assert_eq!((l.pieces[6].bundle, l.bundles[3].number), (Some(3), 4));
    let e = PanelList { layout: ten(), choices: of(BundleLimits { length: Some(inch(99)), mass: Some(Mass::parse("1 lb").unwrap()), count: None }) }
        .compute()
        .unwrap_err();
    assert_eq!((e.kind(), e.path(), e.others().len()), (ErrorKind::Impossible, "choices.bundles.length", 19));
    let unknown = PanelList { layout: box_of(160, 100), choices: of(mass) }.compute().unwrap_err();
    assert_eq!((unknown.kind(), unknown.path()), (ErrorKind::Missing, "choices.bundles.mass"));
    // Laid from the long side of a hip, the longer panel lies on the shorter.
    let hip = layout(vec![p(0, 0), p(64, 0), p(64, 104), p(0, 100)]);
    let whole = BundleLimits { count: Some(4), ..BundleLimits::default() };
    let over = |direction| list(hip.clone(), ListChoices { bundles: Some(whole), ..ListChoices::laid(direction) });
    assert!(over(LayDirection::RightToLeft).cautions.iter().any(|c| c.code() == cautions::LONGER_ON_TOP));
    assert!(!over(LayDirection::LeftToRight).cautions.iter().any(|c| c.code() == cautions::LONGER_ON_TOP));
}

#[test]
fn rips_of_two_sides_have_two_marks() {
    let mut lay = box_of(40, 100);
    lay.start = Start::CentrePanel;
    let l = list(lay, plain());
    assert_eq!(l.groups.iter().map(|g| (g.mark.as_str(), g.cut)).collect::<Vec<_>>(), [("A", CutEdge::None), ("B", CutEdge::Left), ("C", CutEdge::Right)]);
}

#[test]
fn every_bad_choice_is_named() {
    let mut bad = laps(LapArrangement::Staggered { by: inch(50) }, 100, 200);
    bad.tolerance = Some(inch(-1));
    bad.pairs = Some(PairChoice { kerf: inch(-1) });
    bad.bundles = Some(BundleLimits { mass: Some(Mass::ZERO), length: Some(Length::ZERO), count: Some(0) });
    let e = PanelList { layout: box_of(32, 100), choices: bad }.compute().unwrap_err();
    let paths: Vec<_> = core::iter::once(&e).chain(e.others()).map(|e| e.path()).collect();
    assert_eq!(
        paths,
        [
            "choices.tolerance",
            "choices.laps.lap",
            "choices.laps.least_piece",
            "choices.pairs.kerf",
            "choices.bundles.mass",
            "choices.bundles.length",
            "choices.bundles.count"
        ]
    );
    let mut none = laps(LapArrangement::InLine, 100, 10);
    none.laps.as_mut().unwrap().limits.clear();
    let e = PanelList { layout: box_of(32, 100), choices: none }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "choices.laps.limits"));
    // A step as coarse as the piece leaves nothing of it.
    let mut coarse = box_of(32, 300);
    coarse.rounding.both_finished = ShopRounding::new(inch(90), Rounding::Ceil).unwrap();
    let e = PanelList { layout: coarse, choices: laps(LapArrangement::Staggered { by: inch(40) }, 100, 10) }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "choices.laps.lap"));
}
