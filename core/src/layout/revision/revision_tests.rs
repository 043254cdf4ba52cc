use super::super::{CutEdge, cautions};
use super::{FormedRow, ListRow, Revised, Revision, RowState};
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{AreaUnit, Length};
use proptest::prelude::*;

fn row(plane: &str, mark: &str, order: i16, count: u64) -> ListRow {
    ListRow { plane: plane.into(), mark: mark.into(), order: Length::inches(order), width: Length::inches(16), cut: CutEdge::None, count }
}

fn rip(mark: &str, order: i16, width: i16, cut: CutEdge) -> ListRow {
    ListRow { width: Length::inches(width), cut, ..row("s", mark, order, 1) }
}

fn formed(rows: &[(&str, u64)]) -> Vec<FormedRow> {
    rows.iter().map(|&(mark, count)| FormedRow { mark: mark.into(), count }).collect()
}

fn revised(before: Vec<ListRow>, now: Vec<ListRow>, formed: Vec<FormedRow>) -> Revised {
    Revision { before, now, formed, between_planes: false }.compute().unwrap()
}

fn square_inches(r: &Revised) -> f64 {
    r.scrap.get(AreaUnit::SquareInch)
}

#[test]
fn nothing_changed_keeps_everything() {
    let list = || vec![row("s", "1A", 240, 9), row("n", "2A", 240, 9), row("n", "2B", 120, 2)];
    let r = revised(list(), list(), formed(&[("1A", 9), ("2A", 4)]));
    assert!(r.rows.iter().all(|x| x.state == RowState::Kept) && r.void.is_empty() && r.cautions.is_empty());
    assert_eq!(r.rows.iter().map(|x| x.to_form).collect::<Vec<_>>(), [0, 5, 2]);
    assert_eq!((r.to_form, square_inches(&r)), (Length::inches(1440), 0.0));
}

#[test]
fn no_mark_is_renumbered_and_none_is_used_again() {
    let before = vec![row("s", "1A", 240, 4), row("s", "1B", 120, 4), row("n", "2A", 200, 4)];
    // A new longest panel would have made 1A into 1B, and 1B is dropped.
    let now = vec![row("s", "1A", 250, 1), row("s", "1B", 240, 3), row("n", "2A", 210, 4)];
    let r = revised(before, now, vec![]);
    let list: Vec<_> = r.rows.iter().map(|x| (x.plane.as_str(), x.mark.as_str(), x.state, x.before, x.count)).collect();
    assert_eq!(
        list,
        [
            ("s", "1C", RowState::New, 0, 1),
            ("s", "1A", RowState::Recounted, 4, 3),
            ("n", "2B", RowState::New, 0, 4),
            ("s", "1B", RowState::Dropped, 4, 0),
            ("n", "2A", RowState::Dropped, 4, 0)
        ]
    );
}

#[test]
fn pieces_are_cut_down_with_the_least_scrap() {
    // Formed 100, 90 and 60; wanted 95, 85 and 55: each from the next longer.
    let before = vec![row("s", "A", 100, 1), row("s", "B", 90, 1), row("s", "C", 60, 1)];
    let now = vec![row("s", "A", 95, 1), row("s", "B", 85, 1), row("s", "C", 55, 1)];
    let r = revised(before.clone(), now, formed(&[("A", 1), ("B", 1), ("C", 1)]));
    assert!((square_inches(&r) - 15.0 * 16.0).abs() < 1e-9);
    assert_eq!(
        r.rows.iter().take(3).map(|x| (x.mark.as_str(), x.from_formed[0].mark.as_str(), x.to_form)).collect::<Vec<_>>(),
        [("D", "A", 0), ("E", "B", 0), ("F", "C", 0)]
    );
    assert_eq!(r.cautions[0].code(), cautions::CUT_DOWN);
    // One long need and two formed that could serve it: the shorter does, the longer is void.
    let r = revised(before, vec![row("s", "A", 85, 1)], formed(&[("A", 1), ("B", 1), ("C", 1)]));
    assert_eq!(r.rows[0].from_formed[0].mark, "B");
    assert_eq!(r.void.iter().map(|v| v.mark.as_str()).collect::<Vec<_>>(), ["A", "C"]);
}

#[test]
fn a_rip_comes_from_a_whole_panel_and_never_from_the_other_side() {
    let before = vec![row("s", "A", 100, 1), rip("B", 100, 8, CutEdge::Left)];
    let both = || formed(&[("A", 1), ("B", 1)]);
    let r = revised(before.clone(), vec![rip("X", 100, 8, CutEdge::Right)], both());
    assert_eq!((r.rows[0].from_formed[0].mark.as_str(), r.rows[0].from_formed[0].rip_off), ("A", Length::inches(8)));
    let r = revised(before.clone(), vec![rip("X", 90, 8, CutEdge::Left)], both());
    assert_eq!((r.rows[0].from_formed[0].mark.as_str(), r.rows[0].from_formed[0].cut_off), ("B", Length::inches(10)));
    // A rip is no whole panel, nor a rip of another width.
    let r = revised(before, vec![row("s", "X", 90, 2), rip("Y", 90, 7, CutEdge::Left)], both());
    assert_eq!(r.rows.iter().take(2).map(|x| x.to_form).collect::<Vec<_>>(), [1, 1]);
}

#[test]
fn planes_share_only_where_they_may() {
    let revision = |between_planes| {
        Revision { before: vec![row("s", "1A", 100, 1)], now: vec![row("n", "2A", 100, 1)], formed: formed(&[("1A", 1)]), between_planes }.compute().unwrap()
    };
    assert_eq!((revision(false).rows[0].to_form, revision(false).void.len()), (1, 1));
    assert_eq!((revision(true).rows[0].to_form, revision(true).void.len()), (0, 0));
}

#[test]
fn every_fault_is_named() {
    let mut bad = row("s", " ", 0, 1);
    bad.width = Length::ZERO;
    let e = Revision {
        before: vec![row("s", "A", 100, 1), row("n", "A", 90, 1), row("s", "B", 100, 1)],
        now: vec![bad],
        formed: formed(&[("A", 1), ("Z", 1), ("A", 2)]),
        between_planes: false,
    }
    .compute()
    .unwrap_err();
    let all: Vec<_> = core::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path())).collect();
    assert_eq!(
        all,
        [
            (ErrorKind::Conflict, "before[1].mark"),
            (ErrorKind::Conflict, "before[2]"),
            (ErrorKind::OutOfRange, "now[0].order"),
            (ErrorKind::OutOfRange, "now[0].width"),
            (ErrorKind::Missing, "now[0].mark"),
            (ErrorKind::Unknown, "formed[1].mark"),
            (ErrorKind::Conflict, "formed[2].mark"),
        ]
    );
    let many =
        Revision { before: vec![row("s", "A", 100, 1)], now: vec![row("s", "A", 90, u64::MAX)], formed: formed(&[("A", u64::MAX)]), between_planes: false };
    assert_eq!(many.compute().unwrap_err().kind(), ErrorKind::TooLarge);
}

/// The most area of needs that formed pieces can serve, by trying every use.
fn best(needs: &[ListRow], offers: &[ListRow], used: u32) -> i64 {
    let Some((need, rest)) = needs.split_first() else { return 0 };
    let size = |r: &ListRow| (r.order.pm() / 1_000_000_000) * (r.width.pm() / 1_000_000_000);
    let fits = |o: &ListRow| {
        o.order >= need.order
            && ((o.width == need.width && o.cut == need.cut) || (o.cut == CutEdge::None && need.cut != CutEdge::None && o.width >= need.width))
    };
    let with = offers.iter().enumerate().filter(|(k, o)| used & (1 << k) == 0 && fits(o)).map(|(k, _)| size(need) + best(rest, offers, used | (1 << k)));
    with.max().unwrap_or(0).max(best(rest, offers, used))
}

fn pieces() -> impl Strategy<Value = Vec<(i32, i32, u8)>> {
    prop::collection::vec((50..70_i32, 5..10_i32, 0..3_u8), 1..6)
}

fn rows(pieces: &[(i32, i32, u8)], name: char) -> Vec<ListRow> {
    let mut out: Vec<ListRow> = Vec::new();
    for &(order, width, cut) in pieces {
        let (cut, width) = match cut {
            0 => (CutEdge::None, 10),
            1 => (CutEdge::Left, width),
            _ => (CutEdge::Right, width),
        };
        let of = ListRow {
            plane: "s".into(),
            mark: format!("{name}{}", out.len()),
            order: Length::micrometres(order * 1000),
            width: Length::micrometres(width * 1000),
            cut,
            count: 1,
        };
        match out.iter_mut().find(|r| (r.order, r.width, r.cut) == (of.order, of.width, of.cut)) {
            Some(same) => same.count += 1,
            None => out.push(of),
        }
    }
    out
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn no_use_of_formed_pieces_leaves_less(before in pieces(), now in pieces()) {
        let (before, now) = (rows(&before, 'b'), rows(&now, 'n'));
        let all: Vec<FormedRow> = before.iter().map(|r| FormedRow { mark: r.mark.clone(), count: r.count }).collect();
        let r = revised(before.clone(), now.clone(), all);
        let one = |rows: &[ListRow]| rows.iter().flat_map(|r| std::iter::repeat_n(r.clone(), usize::try_from(r.count).unwrap())).collect::<Vec<_>>();
        let (offers, needs) = (one(&before), one(&now));
        let size = |r: &ListRow| (r.order.pm() / 1_000_000_000) * (r.width.pm() / 1_000_000_000);
        let least = offers.iter().map(size).sum::<i64>() - best(&needs, &offers, 0);
        prop_assert!((r.scrap.get(AreaUnit::SquareMillimetre) - least as f64).abs() < 1e-6, "{} over {}", r.scrap, least);
        // Nothing is used twice, and everything is accounted for.
        for row in &before {
            let used: u64 = r.rows.iter().flat_map(|x| &x.from_formed).filter(|u| u.mark == row.mark).map(|u| u.count).sum();
            let void: u64 = r.void.iter().filter(|v| v.mark == row.mark).map(|v| v.count).sum();
            prop_assert_eq!(used + void, row.count);
        }
        for row in r.rows.iter().filter(|x| x.state != RowState::Dropped) {
            prop_assert_eq!(row.from_formed.iter().map(|u| u.count).sum::<u64>() + row.to_form, row.count);
            prop_assert!(row.from_formed.iter().all(|u| !u.cut_off.is_negative() && !u.rip_off.is_negative()));
        }
        // One mark, one meaning.
        let mut marks: Vec<&str> = r.rows.iter().map(|x| x.mark.as_str()).collect();
        marks.sort_unstable();
        prop_assert!(marks.windows(2).all(|w| w[0] != w[1]));
    }
}
