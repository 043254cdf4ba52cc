use super::super::{EdgeUse, Layout, NarrowChoice, NarrowLimit, PlaneSide, Start, cautions};
use super::{Creep, MarkFrom, MarkedSeams, SeamMarks};
use crate::error::ErrorKind;
use crate::panel::{Panel, PanelEnd, Seam};
use crate::record::Calculation;
use crate::roof::{Outline, Point};
use crate::units::{Length, Rounding, ShopRounding};

fn len(text: &str) -> Length {
    Length::parse(text).unwrap()
}

fn layout(width: i16, coverage: &str, start: Start) -> Layout {
    let p = |x: i16, y: i16| Point::new(Length::inches(x), Length::inches(y));
    let panel = Panel::new(len(coverage), Length::inches(1), Seam::DoubleLock { lock: Length::inches_64(16) }).unwrap();
    let outline = Outline::new(vec![p(0, 0), p(width, 0), p(width, 100), p(0, 100)], vec![]).unwrap();
    Layout::new(outline, panel, start, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO))).unwrap()
}

fn tape() -> ShopRounding {
    ShopRounding::new(Length::inches_64(4), Rounding::HalfAway).unwrap()
}

fn marked(layout: Layout, from: MarkFrom, creep: Option<Creep>) -> MarkedSeams {
    SeamMarks { layout, from, tape: tape(), creep }.compute().unwrap()
}

fn creep(each: &str, every: u32) -> Creep {
    Creep { each: len(each), every, pull: None, meets_within: None }
}

#[test]
fn no_mark_is_further_off_than_half_a_step_of_the_tape() {
    // 16.03 in a panel: rounded one by one and added up, sixty panels would be 1.8 in short.
    let m = marked(layout(965, "16.03 in", Start::Left), MarkFrom::Left, None);
    assert_eq!(m.seams.len(), 61);
    for (k, seam) in m.seams.iter().enumerate() {
        let exact = len("16.03 in").pm() * i64::try_from(k).unwrap();
        assert_eq!(seam.across.exact.pm(), exact);
        assert!((seam.across.read.pm() - exact).abs() <= Length::inches_64(2).pm());
        for end in [seam.foot.unwrap(), seam.head.unwrap()] {
            assert_eq!((end.along, end.at.x), (seam.across, seam.x));
        }
    }
}

#[test]
fn marks_run_from_what_they_are_told() {
    let lay = || layout(40, "16 in", Start::Left);
    let across = |from| marked(lay(), from, None).seams.iter().map(|s| s.across.exact).collect::<Vec<_>>();
    let inch = Length::inches;
    assert_eq!(across(MarkFrom::Left), [inch(0), inch(16), inch(32)]);
    assert_eq!(across(MarkFrom::Right), [inch(40), inch(24), inch(8)]);
    assert_eq!(across(MarkFrom::Datum(inch(20))), [inch(-20), inch(-4), inch(12)]);
}

/// Common practice, no published source: over 60 panels 1/32 in each is 1 7/8 in.
#[test]
fn sixty_panels_of_a_thirty_second_creep_by_one_and_seven_eighths() {
    let m = marked(layout(976, "16 in", Start::Left), MarkFrom::Left, Some(creep("1/32\"", 10)));
    assert_eq!(m.checks.iter().map(|c| c.panels).collect::<Vec<_>>(), [10, 20, 30, 40, 50, 60]);
    let last = &m.checks[5];
    assert_eq!((last.unchecked, last.allowed, last.recover_over), (len("1 7/8\""), len("5/16\""), 1));
    // Ten panels' creep in the one panel that is left.
    assert_eq!((m.checks[0].pull, last.pull), (len("1/32\""), len("5/16\"")));
    assert_eq!((last.x, last.across.read, last.toward), (len("960 in"), len("960 in"), PlaneSide::Right));
    assert!(m.cautions.is_empty());
}

#[test]
fn creep_that_narrows_the_end_panel_is_said() {
    let narrow = NarrowLimit { least: Length::inches(6), choice: NarrowChoice::Report };
    // 20 panels and 6 1/2 in: 21 panels of creep take 21/32 in.
    let outline = |extra: &str| {
        let mut l = layout(326, "16 in", Start::Left).with_narrow(narrow);
        let w = (Length::inches(320) + len(extra)).length().unwrap();
        let p = |x, y| Point::new(x, Length::inches(y));
        l.outline = Outline::new(vec![p(Length::ZERO, 0), p(w, 0), p(w, 100), p(Length::ZERO, 100)], vec![]).unwrap();
        l
    };
    let m = marked(outline("6 1/2 in"), MarkFrom::Left, Some(creep("1/32\"", 10)));
    let c = &m.cautions[0];
    assert_eq!((c.code(), c.subject()), (cautions::CREEP_NARROWS_END, "checks.right"));
    assert!(c.message().contains("148.431250 mm") || c.message().contains("148.43125 mm"), "{}", c.message());
    assert!(marked(outline("6 3/4 in"), MarkFrom::Left, Some(creep("1/32\"", 10))).cautions.is_empty());
}

#[test]
fn creep_that_parts_two_planes_is_said_with_the_interval_that_would_do() {
    let with = |every| Creep { meets_within: Some(len("1/4\"")), ..creep("1/32\"", every) };
    // Both planes apart by 1/32 in a panel each: 1/4 in after four.
    let m = marked(layout(400, "16 in", Start::Left), MarkFrom::Left, Some(with(5)));
    assert_eq!(m.cautions[0].code(), cautions::CREEP_PARTS_SEAMS);
    assert!(m.cautions[0].message().contains("check at every 4 panels"), "{}", m.cautions[0].message());
    assert!(marked(layout(400, "16 in", Start::Left), MarkFrom::Left, Some(with(4))).cautions.is_empty());
}

#[test]
fn a_pull_beyond_what_a_panel_gives_is_said() {
    let with = |most: &str| Creep { pull: Some(len(most)), ..creep("1/32\"", 12) };
    // 25 panels: after 24 one is left to pull back 3/8 in.
    let m = marked(layout(400, "16 in", Start::Left), MarkFrom::Left, Some(with("1/8\"")));
    assert_eq!(m.cautions[0].code(), cautions::PULL_TOO_GREAT);
    assert!(marked(layout(400, "16 in", Start::Left), MarkFrom::Left, Some(with("3/8\""))).cautions.is_empty());
}

#[test]
fn a_datum_in_the_middle_is_checked_both_ways() {
    let m = marked(layout(400, "16 in", Start::Datum(Length::inches(200))), MarkFrom::Datum(Length::inches(200)), Some(creep("1/32\"", 5)));
    let ways: Vec<_> = m.checks.iter().map(|c| (c.toward, c.panels, c.x)).collect();
    let inch = Length::inches;
    assert_eq!(ways, [(PlaneSide::Right, 5, inch(280)), (PlaneSide::Right, 10, inch(360)), (PlaneSide::Left, 5, inch(120)), (PlaneSide::Left, 10, inch(40))]);
    // From the right, the other way round.
    let left = marked(layout(400, "16 in", Start::Left), MarkFrom::Left, Some(creep("1/32\"", 5)));
    let right = marked(layout(400, "16 in", Start::Right), MarkFrom::Right, Some(creep("1/32\"", 5)));
    assert_eq!(left.checks.iter().map(|c| (c.panels, c.pull)).collect::<Vec<_>>(), right.checks.iter().map(|c| (c.panels, c.pull)).collect::<Vec<_>>());
    assert!(right.checks.iter().all(|c| c.toward == PlaneSide::Left));
}

#[test]
fn an_opening_does_not_hide_the_eave() {
    let p = |x: i16, y: i16| Point::new(Length::inches(x), Length::inches(y));
    let mut lay = layout(64, "16 in", Start::Left);
    lay.outline = Outline::new(vec![p(0, 0), p(64, 0), p(64, 100), p(0, 100)], vec![vec![p(20, 40), p(20, 60), p(44, 60), p(44, 40)]]).unwrap();
    lay.edges = vec![EdgeUse::End(PanelEnd::hold_back(Length::ZERO)); 8];
    let m = marked(lay, MarkFrom::Left, None);
    assert_eq!((m.seams[2].foot.unwrap().at, m.seams[2].head.unwrap().at), (p(32, 0), p(32, 100)));
}

#[test]
fn bad_creep_is_refused() {
    let bad = Creep { each: Length::inches(-1), every: 0, pull: Some(Length::inches(-1)), meets_within: None };
    let e = SeamMarks { layout: layout(40, "16 in", Start::Left), from: MarkFrom::Left, tape: tape(), creep: Some(bad) }.compute().unwrap_err();
    let all: Vec<_> = core::iter::once(&e).chain(e.others()).map(|e| (e.kind(), e.path())).collect();
    assert_eq!(all, [(ErrorKind::OutOfRange, "creep.each"), (ErrorKind::OutOfRange, "creep.every"), (ErrorKind::OutOfRange, "creep.pull")]);
}
