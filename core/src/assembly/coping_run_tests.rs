//! Runs of coping.

use super::{CopingEnd, CopingJoint, CopingRun, CopingTee};
use crate::error::ErrorKind;
use crate::junction::{ContinuousCleat, Coping, CopingDetail, CopingHold, CopingSide, FastenerRow, LeastRule, Side, TrimSheet};
use crate::movement::HeatRange;
use crate::practice::{junction as practice, movement};
use crate::record::Calculation;
use crate::units::{Angle, Expansion, Length, Temperature};
use proptest::prelude::*;

fn len(text: &str) -> Length {
    Length::parse(text).unwrap()
}

fn run() -> CopingRun {
    let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
    let cleat = ContinuousCleat {
        sheet,
        height: len("3\""),
        fasteners_above_bend: len("1\""),
        fasteners: FastenerRow::UFGS_EDGE_STRIP,
        hem: len("7/8\""),
        hem_gap: (sheet.thickness + practice::HOOKED_HEM_ROOM).length().unwrap(),
        short_of_fold: len("1/16\""),
        engagement: LeastRule::UFGS_HOOK.least,
    };
    let kick = Angle::degrees_from(40.0).unwrap();
    let side = CopingSide { behind: Length::ZERO, depth: len("4\""), kick, clears: len("3/4\""), hold: CopingHold::Cleat(cleat), over: None };
    let detail = CopingDetail { sheet, bed: Length::ZERO, fall: "1:12".parse().unwrap(), roof_side: side.clone(), outside: side };
    CopingRun {
        coping: Coping { thickness: len("8\""), detail },
        run: Length::feet(40),
        ends: [CopingEnd::Free; 2],
        corner_leg: LeastRule::UFGS_CORNER_LEG,
        piece: Length::feet(10),
        least_piece: Length::feet(2),
        joint: CopingJoint {
            plate: len("12\""),
            plate_lap: LeastRule::UFGS_PLATE_LAP,
            gap: LeastRule::UFGS_END_GAP,
            clearance: movement::CLEARANCE,
            beads: 2,
            bead_width: len("3/8\""),
            bead_depth: len("1/4\""),
        },
        cleat_piece: Length::feet(10),
        cleat_gap: Length::ZERO,
        end_distance: len("1\""),
        tees: vec![],
        range: HeatRange {
            expansion: Expansion::parse("24e-6 /K").unwrap(),
            coldest: Temperature::parse("-20 degC").unwrap(),
            laid: Temperature::parse("10 degC").unwrap(),
            hottest: Temperature::parse("70 degC").unwrap(),
        },
    }
}

fn covers(run: &CopingRun) -> f64 {
    let made = run.compute().unwrap();
    let legs: f64 = run.ends.iter().map(|e| if let CopingEnd::Corner { leg } = e { leg.mm() } else { 0.0 }).sum();
    let pieces: f64 = made.pieces.iter().map(|p| p.length.mm() * f64::from(u32::try_from(p.count).unwrap())).sum();
    legs + pieces + made.gap_when_laid.mm() * f64::from(u32::try_from(made.joints).unwrap())
}

#[test]
fn a_run_worked_by_hand() {
    let made = run().compute().unwrap();
    // Aluminium, 3.048 m: 24e-6 * 3048 * 60 = 4.38912 mm close in the heat, with 1/8 in of clearance 7.56412 mm, more than the rule's 1/4 in.
    assert!((made.gap_when_laid.mm() - (3.175 + 4.389_12)).abs() < 1e-9);
    // In the cold 30 K more: 2.19456 mm.
    assert!((made.gap_widest.mm() - (7.564_12 + 2.194_56)).abs() < 1e-9 && (made.gap_least.mm() - 3.175).abs() < 1e-9);
    assert!((made.plate_lap.mm() - (304.8 - 9.758_68) / 2.0).abs() < 1e-9);
    // Three gaps make four pieces too long by 22.69 mm: three of 10 ft, and one that much shorter.
    assert_eq!(made.pieces.iter().map(|p| p.count).collect::<Vec<_>>(), [3, 1]);
    assert!((made.pieces[1].length.mm() - (3048.0 - 3.0 * 7.564_12)).abs() < 1e-9);
    assert_eq!((made.joints, made.end_caps), (3, 2));
    // Four beads a joint, of the coping's own width: the plate has five legs.
    let across: f64 = made.plate.legs.iter().map(|l| l.length.mm()).sum();
    assert!((made.bead.mm() - 12.0 * across).abs() < 1e-6);
    assert_eq!(made.cleats.iter().map(|c| (c.pieces, c.length)).collect::<Vec<_>>(), [(4, Length::feet(40)); 2]);
    // 478 in between the first and the last of a row at 12 in: 40 spaces.
    assert_eq!(made.screws.iter().map(|s| (s.count, s.engineered)).collect::<Vec<_>>(), [(41, false); 2]);
}

#[test]
fn corner_pieces_take_their_legs_and_a_short_rest_is_shared() {
    let mut r = run();
    r.ends = [CopingEnd::Corner { leg: len("18\"") }, CopingEnd::Corner { leg: len("12\"") }];
    r.run = (Length::feet(20) + len("42\"")).length().unwrap();
    // 21 ft between the corner pieces, less three gaps: 10 ft and 11 in less the gaps in two, which share.
    let made = r.compute().unwrap();
    assert_eq!((made.joints, made.end_caps), (4, 0));
    assert_eq!(made.pieces.iter().map(|p| p.count).collect::<Vec<_>>(), [1, 2]);
    assert!((covers(&r) - r.run.mm()).abs() < 1e-9);
}

#[test]
fn a_tee_takes_its_piece_out_of_the_run_and_breaks_one_face() {
    let mut r = run();
    r.tees = vec![CopingTee { at: Length::feet(15), width: len("8\""), leg: len("12\""), side: Side::First }];
    let made = r.compute().unwrap();
    // 14 ft less 4 in and 24 ft less 4 in beside the tee piece, less a gap of 7.56412 mm at it and those between the pieces.
    let all: f64 = made.pieces.iter().map(|p| p.length.mm() * f64::from(u32::try_from(p.count).unwrap())).sum();
    let (n, gap) = (made.pieces.iter().map(|p| p.count).sum::<u64>(), made.gap_when_laid.mm());
    assert_eq!((n, made.joints), (5, 5));
    assert!((all + 5.0 * gap + 32.0 * 25.4 - 40.0 * 304.8).abs() < 1e-9);
    // The cleat of the roof side leaves the other wall out, that of the outside goes through; so do the screws.
    let cleat = |side| made.cleats.iter().find(|c| c.side == side).map(|c| (c.pieces, c.length));
    assert_eq!(cleat(Side::First), Some((5, (Length::feet(40) - len("8\"")).length().unwrap())));
    assert_eq!(cleat(Side::Second), Some((4, Length::feet(40))));
    let screws = |side| made.screws.iter().find(|s| s.side == side).map(|s| s.count);
    // 14 ft 8 in and 24 ft 8 in, an inch off at each end of both: 15 and 25 spaces.
    assert_eq!((screws(Side::First), screws(Side::Second)), (Some(16 + 26), Some(41)));
    r.tees[0].leg = len("6\"");
    assert_eq!(r.compute().unwrap_err().path(), "tees[0].leg");
    (r.tees[0].leg, r.tees[0].at) = (len("12\""), len("10\""));
    assert_eq!((r.compute().unwrap_err().kind(), r.compute().unwrap_err().path()), (ErrorKind::Impossible, "tees[0]"));
    r.tees[0] = CopingTee { at: Length::feet(50), side: Side::Riser, ..r.tees[0] };
    assert_eq!(r.compute().unwrap_err().path(), "tees[0].side");
}

#[test]
fn an_end_against_a_wall_has_no_cap() {
    let mut r = run();
    r.ends = [CopingEnd::Wall, CopingEnd::Free];
    let made = r.compute().unwrap();
    assert_eq!((made.end_caps, made.wall_ends, made.joints), (1, 1, 3));
    let across: f64 = made.plate.legs.iter().map(|l| l.length.mm()).sum();
    assert!((made.end_bead.mm() - 2.0 * across).abs() < 1e-6);
}

#[test]
fn faults_are_told_by_how_much() {
    let refused = |change: &dyn Fn(&mut CopingRun)| {
        let mut r = run();
        change(&mut r);
        r.compute().unwrap_err()
    };
    // 8 in of plate less 9.75868 mm in two: short of 4 in by half of that.
    let e = refused(&|r| r.joint.plate = len("8\""));
    assert_eq!((e.kind(), e.path(), e.cure()), (ErrorKind::Impossible, "joint.plate", Some("a plate longer by 9.75868 mm")));
    assert_eq!(e.message(), "joint plate under each piece: 96.72066 mm, too little by 4.87934 mm");
    let e = refused(&|r| r.ends[1] = CopingEnd::Corner { leg: len("6\"") });
    assert_eq!((e.path(), e.message()), ("ends[1].corner.leg", "leg of a corner piece: 152.4 mm, too little by 152.4 mm"));
    let e = refused(&|r| (r.run, r.ends) = (len("30\""), [CopingEnd::Corner { leg: len("15\"") }; 2]));
    assert_eq!((e.kind(), e.path()), (ErrorKind::Impossible, "ends"));
    let e = refused(&|r| r.range.laid = Temperature::parse("80 degC").unwrap());
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "range.laid"));
    let e = refused(&|r| (r.run, r.piece) = (Length::ZERO, len("3 ft")));
    assert_eq!((e.path(), e.others().len()), ("run", 1));
    let e = refused(&|r| (r.piece, r.least_piece, r.run) = (len("0.001 mm"), Length::ZERO, Length::feet(30_000)));
    assert_eq!((e.kind(), e.path()), (ErrorKind::TooLarge, "piece"));
    assert_eq!(refused(&|r| r.coping.thickness = Length::ZERO).path(), "coping.thickness");
}

proptest! {
    #[test]
    fn pieces_gaps_and_corners_cover_the_run(run_mm in 1500_i32..60_000, piece in 1500_i32..6000, corners in 0_usize..3) {
        let mut r = run();
        (r.run, r.piece) = (Length::micrometres(run_mm * 1000), Length::micrometres(piece * 1000));
        for end in r.ends.iter_mut().take(corners) {
            *end = CopingEnd::Corner { leg: len("18\"") };
        }
        prop_assert!((covers(&r) - r.run.mm()).abs() < 1e-6);
        let made = r.compute().unwrap();
        prop_assert!(made.pieces.iter().all(|p| p.length <= r.piece && p.count > 0));
        let n: u64 = made.pieces.iter().map(|p| p.count).sum();
        prop_assert!(n == 1 || made.pieces.iter().all(|p| p.length >= r.least_piece));
        prop_assert_eq!(made.joints, n - 1 + u64::try_from(corners).unwrap());
        prop_assert_eq!(&made, &r.explain().unwrap().0);
    }
}
