//! The trims of whole jobs: every line has its run and what its corners add, once, and the order every piece.
#![cfg(feature = "serde")]

use super::test_jobs::{ANNEXE, ROPEWALK, demo_packet};
use super::{Job, Packet};
use crate::assembly::{CornerLine, LineEnd, PairRule, TrimEnd};
use crate::record::Calculation;
use crate::roof::LineKind;
use crate::units::Length;

fn made(json: &[u8]) -> Packet {
    Job::from_json(json).unwrap().compute().unwrap()
}

/// Sums that a clerk would make: runs from the lines and the corners, pieces from the runs and the laps.
fn check(packet: &Packet) {
    let lines = packet.roof.lines();
    assert!(!packet.cautions.iter().any(|c| c.code().number == 7005));
    let mut taken = Length::ZERO;
    for trim in &packet.trims {
        let mut ordered = 0_i128;
        for run in &trim.runs {
            let Some(number) = run.line else { continue };
            let line = &lines[number];
            let junction = packet.junctions.iter().find(|j| j.line == number).unwrap();
            // A valley has a cleat of one name on each side.
            let (section, length) = junction
                .along
                .trims
                .iter()
                .filter(|t| t.name == trim.name && t.length.run == run.run)
                .map(|t| (&junction.section.trims[t.trim], t.length))
                .next()
                .unwrap();
            assert_eq!((length.line, length.lap), (line.length, trim.lap), "{} of {}", trim.name, line.name);
            // What corners add: each end of the line at its own corner, the upper trims of a step at those over its riser.
            let upper = line.kind == LineKind::Step && section.name != "lower flashing";
            let mut at_ends: Vec<Length> = Vec::new();
            for l in packet.corners.corners.iter().flat_map(|c| &c.lines).filter(|l| l.line == number && l.above.is_some() == upper) {
                at_ends.push(l.allowance);
            }
            assert_eq!(at_ends.len(), 2, "{}", line.name);
            let more = (run.run - line.length).length().unwrap();
            let of_corners = Length::total(&at_ends).unwrap();
            if junction.pan_end.is_none() || !section.is_holder() {
                assert_eq!(more, of_corners, "{} of {}", trim.name, line.name);
            }
            let laps = trim.lap.station(u32::try_from(run.pieces.len()).unwrap() - 1, 1).unwrap();
            assert_eq!(Length::total(&run.pieces).unwrap(), (run.run + laps).length().unwrap(), "{} of {}", trim.name, line.name);
            ordered += i128::from(Length::total(&run.pieces).unwrap().pm());
            taken = (taken + more).length().unwrap();
        }
        // What is cut from the sticks is what is set; blanks of a taper are a little longer.
        if trim.tapered.is_none() && trim.runs.iter().all(|r| r.line.is_some()) {
            assert_eq!(i128::from(trim.cutting.scrap.pieces.pm()), ordered, "{}", trim.name);
        }
    }
    assert!(taken.is_positive());
    // Every trim of every section of every line is ordered once.
    for junction in &packet.junctions {
        for t in &junction.section.trims {
            let of = packet.trims.iter().filter(|i| i.name == *t.name).flat_map(|i| &i.runs).filter(|r| r.line == Some(junction.line)).count();
            assert_eq!(of, junction.section.trims.iter().filter(|u| u.name == t.name).count(), "{} of {}", t.name, junction.name);
        }
    }
    assert!(packet.corners.corners.iter().flat_map(|c| &c.lines).all(|l| l.closed != TrimEnd::Undecided));
}

/// Whatever stands over two lines that go down from a peak, its upper edges meet there: no run-on is less than the height over the tangent of the cut.
#[test]
fn what_stands_over_a_peak_meets_there() {
    let made = [ANNEXE, ROPEWALK].map(made);
    let mut peaks = 0;
    for packet in made.iter().chain([demo_packet()]) {
        for corner in &packet.corners.corners {
            for pair in corner.pairs.iter().filter(|p| p.rule == PairRule::Mitred && p.plan.degrees() > 179.0) {
                let of = |name: &String| corner.lines.iter().find(|l| l.name == *name).unwrap();
                let (a, b) = (of(&pair.first), of(&pair.second));
                let goes_down = |l: &CornerLine| {
                    let line = &packet.roof.lines()[l.line];
                    let other = if l.end == LineEnd::Start { line.end } else { line.start };
                    other.z < corner.at.z
                };
                if !(goes_down(a) && goes_down(b)) {
                    continue;
                }
                let height = |l: &CornerLine| {
                    let section = packet.junctions.iter().find(|j| j.line == l.line).map(|j| &j.section);
                    section.into_iter().flat_map(|s| &s.trims).flat_map(|t| &t.corners).map(|c| c.z.mm()).fold(0.0, f64::max)
                };
                let least = height(a).max(height(b)) / pair.cut.unwrap().tan();
                assert!(a.allowance.mm() + 1e-6 >= least && b.allowance.mm() + 1e-6 >= least, "{pair:?} {least}");
                peaks += 1;
            }
        }
    }
    assert!(peaks > 0);
}

#[test]
fn orders_are_runs_and_laps_and_what_corners_take() {
    check(demo_packet());
    for json in [ANNEXE, ROPEWALK] {
        check(&made(json));
    }
}
