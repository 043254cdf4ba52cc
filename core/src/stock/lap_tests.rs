use super::*;
use crate::error::ErrorKind;
use crate::record::Calculation;
use crate::units::{Length, LengthUnit};
use proptest::prelude::*;

fn lap(run: Length, mode: LapMode) -> LapRun {
    LapRun { run, longest: Length::feet(10), lap: Length::inches(4), gap: Length::ZERO, least_piece: Length::feet(2), mode }
}

#[test]
fn ten_foot_trims_with_four_inch_laps() {
    // Two ten-foot pieces with one lap cover 19 ft 8 in; a hair more needs a third.
    let two = lap(Length::inches(236), LapMode::FullThenRest).compute().unwrap();
    assert_eq!((two.pieces.len(), two.laps), (2, 1));
    let three = lap(Length::from_pm(Length::inches(236).pm() + 1), LapMode::FullThenRest).compute().unwrap();
    assert_eq!(three.pieces.len(), 3);
    // The last piece is the least allowed, the one before gives it up.
    assert_eq!(three.pieces[2].length, Length::feet(2));
    assert_eq!(three.pieces[1].length.pm(), Length::feet(10).pm() - (Length::feet(2).pm() - Length::inches(4).pm() - 1));
    assert_eq!(lap(Length::feet(10), LapMode::Equal).compute().unwrap().laps, 0);
}

#[test]
fn equal_pieces_of_a_run() {
    let s = lap(Length::feet(25), LapMode::Equal).compute().unwrap();
    let want = Length::inches(308).station(1, 3).unwrap();
    assert!(s.pieces.iter().all(|p| (p.length.pm() - want.pm()).abs() <= 1));
}

#[test]
fn bad_input_names_its_field() {
    let e = LapRun {
        run: Length::ZERO,
        longest: Length::inches(4),
        lap: Length::inches(4),
        gap: Length::ZERO,
        least_piece: Length::inches(3),
        mode: LapMode::Equal,
    }
    .compute()
    .unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "run"));
    assert_eq!(e.others().iter().map(|o| (o.kind(), o.path())).collect::<Vec<_>>(), [(ErrorKind::Conflict, "lap"), (ErrorKind::Conflict, "least_piece")]);
    let e =
        LapRun { run: Length::MAX, longest: Length::from_pm(2), lap: Length::from_pm(1), gap: Length::ZERO, least_piece: Length::ZERO, mode: LapMode::Equal }
            .compute()
            .unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::TooLarge, "run"));
}

/// By hand, in inches: three pieces with two gaps of 1/4 are the run less 1/2; what a gap takes all of is shared.
#[test]
fn pieces_that_butt() {
    let quarter = Length::inches_64(16);
    let run = |run: Length, least_piece: Length| -> Vec<f64> {
        let of = LapRun { run, longest: Length::feet(10), lap: Length::ZERO, gap: quarter, least_piece, mode: LapMode::FullThenRest };
        of.compute().unwrap().pieces.iter().map(|p| p.length.get(LengthUnit::Inch)).collect()
    };
    assert_eq!(run(Length::feet(25), Length::ZERO), [120.0, 120.0, 59.5]);
    let hair = Length::inches_64(120 * 64 + 8);
    assert_eq!(run(hair, Length::ZERO), [59.9375, 59.9375]);
    assert_eq!(run(hair, Length::feet(2)), [95.875, 24.0]);
    assert_eq!(run(hair, Length::feet(5)), [59.9375, 59.9375]);
    assert_eq!(run(Length::feet(10), Length::ZERO), [120.0]);
    let e = LapRun { gap: quarter, ..lap(Length::feet(25), LapMode::Equal) }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "gap"));
    let e = LapRun { lap: Length::ZERO, gap: Length::feet(10), ..lap(Length::feet(25), LapMode::Equal) }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "gap"));
}

proptest! {
    #[test]
    fn covers_add_up_to_the_run(run in 1_i64..100_000_000_000_000, by in -500_000_000_000_i64..500_000_000_000, least in 0_i64..1_500_000_000_000, equal: bool) {
        let (lap, gap) = (by.max(0), (-by).max(0));
        let s = LapRun {
            run: Length::from_pm(run),
            longest: Length::from_pm(3_048_000_000_000),
            lap: Length::from_pm(lap),
            gap: Length::from_pm(gap),
            least_piece: Length::from_pm(least),
            mode: if equal { LapMode::Equal } else { LapMode::FullThenRest },
        };
        let found = s.compute().unwrap();
        prop_assert_eq!(found.pieces.iter().map(|p| p.cover.pm()).sum::<i64>(), run);
        let n = i64::try_from(found.pieces.len()).unwrap();
        prop_assert!(found.pieces.iter().all(|p| p.length <= s.longest && p.length.is_positive()));
        // One piece fewer would not reach.
        prop_assert!(n == 1 || (n - 1) * 3_048_000_000_000 - (n - 2) * (lap - gap) < run);
        if !equal && n > 1 {
            // What a gap takes of two least pieces is no other piece's to give.
            prop_assert!(found.pieces.iter().all(|p| p.length.pm() + gap / 2 + 1 >= s.least_piece.pm()));
        }
        prop_assert_eq!(s.explain().unwrap().0, found);
    }
}
