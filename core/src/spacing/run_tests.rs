use super::cautions::{ALL, LAST_FAR_FROM_END, ONE_STATION};
use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{Length, LengthFormat};
use proptest::prelude::*;

fn equal(run: Length, end: Length, maximum: Length) -> Spacing {
    Spacing { run, end_distance: end, rule: SpacingRule::Equal { maximum } }
}

fn fixed(run: Length, end: Length, start: Length, spacing: Length, last: LastStation) -> Spacing {
    Spacing { run, end_distance: end, rule: SpacingRule::Fixed { start, spacing, last } }
}

#[test]
fn equal_spaces_are_the_fewest_within_the_maximum() {
    // 96 in between the ends: 8 spaces of 12, 9 stations; a hair more needs a ninth space.
    let s = equal(Length::inches(100), Length::inches(2), Length::inches(12)).compute().unwrap();
    assert_eq!((s.count(), s.start(), s.spacing, s.last_end_distance), (9, Length::inches(2), Some(Length::inches(12)), Length::inches(2)));
    let s = equal(Length::from_pm(Length::inches(100).pm() + 1), Length::inches(2), Length::inches(12)).compute().unwrap();
    assert_eq!(s.count(), 10);
}

#[test]
fn thirds_do_not_add_up_an_error() {
    // 10 000 spaces of a run that no picometre divides: the last station is exactly the run.
    let run = Length::from_pm(999_999_999_999_937);
    let s = equal(run, Length::ZERO, Length::from_pm(99_999_999_999)).compute().unwrap();
    assert_eq!(s.positions.last(), Some(&run));
    assert_eq!(s.count(), 10_002);
}

#[test]
fn a_run_that_is_all_end_distance_has_one_station() {
    let s = equal(Length::inches(4), Length::inches(2), Length::inches(12)).compute().unwrap();
    assert_eq!((s.positions.as_slice(), s.spacing), ([Length::inches(2)].as_slice(), None));
    assert_eq!(s.cautions[0].code(), ONE_STATION);
    let text = s.crew().text(LengthFormat::parse("in/16").unwrap()).unwrap();
    assert_eq!(text, "start 2\", 1 in all, last 2\" from the end");
}

#[test]
fn fixed_spacing_falls_or_closes() {
    let (run, end, start, step) = (Length::inches(50), Length::inches(1), Length::inches(3), Length::inches(12));
    let falls = fixed(run, end, start, step, LastStation::AsItFalls).compute().unwrap();
    assert_eq!(falls.positions, [3, 15, 27, 39].map(Length::inches));
    assert_eq!((falls.last_end_distance, falls.cautions[0].code()), (Length::inches(11), LAST_FAR_FROM_END));
    let closes = fixed(run, end, start, step, LastStation::AtEndDistance).compute().unwrap();
    assert_eq!(closes.positions, [3, 15, 27, 39, 49].map(Length::inches));
    assert_eq!((closes.last_spacing, closes.last_end_distance, closes.cautions.len()), (Some(Length::inches(10)), end, 0));
    let text = closes.crew().text(LengthFormat::parse("in/16").unwrap()).unwrap();
    assert_eq!(text, "start 3\", then 12\" on centre, the last space 10\", 5 in all, last 1\" from the end");
}

#[test]
fn a_fixed_spacing_longer_than_the_run_keeps_its_closing_space_as_the_spacing() {
    let s = fixed(Length::inches(10), Length::inches(1), Length::inches(1), Length::inches(12), LastStation::AtEndDistance).compute().unwrap();
    assert_eq!((s.count(), s.spacing, s.last_spacing), (2, Some(Length::inches(8)), None));
}

#[test]
fn bad_input_names_its_field() {
    let e = equal(Length::ZERO, Length::from_pm(-1), Length::ZERO).compute().unwrap_err();
    assert_eq!((e.path(), e.kind()), ("run", ErrorKind::OutOfRange));
    assert_eq!(e.others().iter().map(crate::error::Error::path).collect::<Vec<_>>(), ["end_distance", "rule.maximum"]);
    let e = fixed(Length::inches(1), Length::ZERO, Length::from_pm(-1), Length::inches(-12), LastStation::AsItFalls).compute().unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("rule.start", "rule.spacing"));
    let e = equal(Length::inches(4), Length::inches(3), Length::inches(12)).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "end_distance"));
    let e = equal(Length::MAX, Length::ZERO, Length::from_pm(1)).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::TooLarge, "rule.maximum"));
}

#[test]
fn caution_numbers_are_this_rooms_and_differ() {
    for (i, c) in ALL.iter().enumerate() {
        assert_eq!(usize::from(c.number), 2300 + i, "{}", c.name);
    }
}

#[cfg(feature = "serde")]
#[test]
fn input_round_trips_as_text_and_refuses_unknown_fields() {
    let s = equal(Length::inches(100), Length::inches(2), Length::inches(12));
    let text = serde_json::to_string(&s).unwrap();
    assert_eq!(text, r#"{"run":"2540 mm","end_distance":"50.8 mm","rule":{"equal":{"maximum":"304.8 mm"}}}"#);
    assert_eq!(serde_json::from_str::<Spacing>(&text).unwrap(), s);
    assert!(serde_json::from_str::<Spacing>(r#"{"run":"1 m","end_distance":"0 m","rule":{"equal":{"maximum":"1 m"}},"x":1}"#).is_err());
}

proptest! {
    #[test]
    fn equal_spacing_laws(run in 1_i64..10_000_000_000_000, end in 0_i64..1_000_000_000_000, max in 10_000_000_000_i64..1_000_000_000_000) {
        let s = equal(Length::from_pm(run), Length::from_pm(end), Length::from_pm(max));
        match s.compute() {
            Ok(found) => {
                prop_assert!(2 * end <= run);
                prop_assert_eq!(found.positions[0].pm(), end);
                prop_assert_eq!(found.positions[found.count() - 1].pm(), run - end);
                let n = i64::try_from(found.count()).unwrap() - 1;
                // Fewest: one space less would break the maximum.
                prop_assert!(n == 0 || (n - 1) * max < run - 2 * end);
                for w in found.positions.windows(2) {
                    prop_assert!(w[1] > w[0]);
                    prop_assert!(w[1].pm() - w[0].pm() <= max);
                }
                let (again, sheet) = s.explain().unwrap();
                prop_assert_eq!(again, found);
                prop_assert!(sheet.steps().len() >= 3);
            }
            Err(e) => {
                prop_assert_eq!(e.kind(), ErrorKind::Impossible);
                prop_assert!(2 * end > run);
            }
        }
    }

    #[test]
    fn fixed_spacing_laws(run in 1_i64..10_000_000_000_000, end in 0_i64..100_000_000_000, start in 0_i64..100_000_000_000, step in 10_000_000_000_i64..1_000_000_000_000, closes: bool) {
        let last = if closes { LastStation::AtEndDistance } else { LastStation::AsItFalls };
        let s = fixed(Length::from_pm(run), Length::from_pm(end), Length::from_pm(start), Length::from_pm(step), last);
        if let Ok(found) = s.compute() {
            prop_assert_eq!(found.positions[0].pm(), start);
            let at = found.positions[found.count() - 1].pm();
            prop_assert_eq!(found.last_end_distance.pm(), run - at);
            prop_assert!(run - at >= end);
            let end_holds = if closes { run - at == end } else { run - at < end + step };
            prop_assert!(end_holds);
            for w in found.positions.windows(2) {
                prop_assert!(w[1] > w[0] && w[1].pm() - w[0].pm() <= step);
            }
            prop_assert_eq!(s.explain().unwrap().0, found);
        } else {
            prop_assert!(start + end > run);
        }
    }
}
