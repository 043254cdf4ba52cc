use super::cautions::SUPPORTS_NOT_USED;
use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::Length;
use proptest::prelude::*;

fn on(run: i16, end: i16, maximum: i16, supports: &[i16], support_use: SupportUse) -> SupportSpacing {
    SupportSpacing {
        run: Length::feet(run),
        greatest_end_distance: Length::feet(end),
        maximum: Length::feet(maximum),
        supports: supports.iter().copied().map(Length::feet).collect(),
        support_use,
    }
}

#[test]
fn every_support_on_the_run_carries_a_station() {
    let s = on(20, 1, 5, &[-3, 0, 5, 10, 15, 20, 25], SupportUse::Every).compute().unwrap();
    assert_eq!(s.positions, [0, 5, 10, 15, 20].map(Length::feet));
    assert_eq!((s.not_used.as_slice(), s.greatest_spacing), ([0, 6].as_slice(), Some(Length::feet(5))));
    assert_eq!(s.cautions[0].code(), SUPPORTS_NOT_USED);
}

#[test]
fn an_error_says_which_support_to_add() {
    let e = on(20, 1, 5, &[0, 5, 15, 20], SupportUse::Every).compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.cure()), (ErrorKind::Impossible, "supports", Some("add supports at 3048 mm")));
    let e = on(20, 1, 5, &[4, 8, 12, 16, 20], SupportUse::Every).compute().unwrap_err();
    assert_eq!(e.cure(), Some("add supports at 304.8 mm"));
    let e = on(20, 1, 5, &[0, 5, 10, 14], SupportUse::Fewest).compute().unwrap_err();
    assert_eq!(e.cure(), Some("add supports at 5791.2 mm"));
    let e = on(11, 1, 5, &[], SupportUse::Every).compute().unwrap_err();
    assert_eq!(e.cure(), Some("add supports at 304.8 mm, 1676.4 mm, 3048 mm"));
}

#[test]
fn bad_input_names_its_field() {
    let mut s = on(10, 1, 5, &[5, 5, 4], SupportUse::Every);
    s.maximum = Length::ZERO;
    let e = s.compute().unwrap_err();
    assert_eq!(e.path(), "maximum");
    assert_eq!(e.others().iter().map(crate::error::Error::path).collect::<Vec<_>>(), ["supports[1]", "supports[2]"]);
}

/// The fewest supports by trying every subset.
fn fewest_by_trial(s: &SupportSpacing) -> Option<usize> {
    let at: Vec<i64> = s.supports.iter().map(|l| l.pm()).collect();
    (1_u32..1 << at.len())
        .filter(|mask| {
            let chosen: Vec<i64> = at.iter().enumerate().filter(|(i, _)| mask >> i & 1 == 1).map(|(_, &p)| p).collect();
            chosen[0] <= s.greatest_end_distance.pm()
                && chosen[0] >= 0
                && chosen[chosen.len() - 1] >= s.run.pm() - s.greatest_end_distance.pm()
                && chosen[chosen.len() - 1] <= s.run.pm()
                && chosen.windows(2).all(|w| w[1] - w[0] <= s.maximum.pm())
        })
        .map(|mask| mask.count_ones() as usize)
        .min()
}

proptest! {
    #[test]
    fn the_fewest_is_the_fewest_and_the_cure_cures(run in 1_i16..40, end in 0_i16..6, maximum in 1_i16..12, mut feet in prop::collection::vec(-3_i16..44, 0..9)) {
        feet.sort_unstable();
        feet.dedup();
        let mut s = on(run, end, maximum, &feet, SupportUse::Fewest);
        match s.compute() {
            Ok(found) => {
                prop_assert_eq!(Some(found.positions.len()), fewest_by_trial(&s));
                prop_assert_eq!(s.explain().unwrap().0, found);
            }
            Err(first) => {
                prop_assert_eq!(fewest_by_trial(&s), None);
                // Adding what each refusal names leads to a run that holds.
                let mut error = Some(first);
                for _ in 0..20 {
                    let Some(e) = error else { break };
                    prop_assert_eq!(e.kind(), ErrorKind::Impossible);
                    for text in e.cure().unwrap().trim_start_matches("add supports at ").split(", ") {
                        s.supports.push(Length::parse(text).unwrap());
                    }
                    s.supports.sort_unstable();
                    s.supports.dedup();
                    error = s.compute().err();
                }
                prop_assert!(error.is_none());
            }
        }
    }
}
