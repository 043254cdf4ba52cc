//! The trims of whole jobs: every line has its run and what its corners add, once, and the order every piece.
#![cfg(feature = "serde")]

use super::test_jobs::{ANNEXE, MALTINGS, ROPEWALK, demo_packet};
use super::{CapHand, Job, Packet};
use crate::assembly::{CornerLine, LineEnd, PairRule, TrimEnd};
use crate::practice;
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
            // What holds others ends at the corner.
            let of_corners = if section.is_holder() { Length::ZERO } else { of_corners };
            if junction.pan_end.is_none() || !section.is_holder() {
                assert_eq!(more, of_corners, "{} of {}", trim.name, line.name);
            }
            let joints = u32::try_from(run.pieces.len()).unwrap() - 1;
            let [laps, gaps] = [trim.lap, trim.gap].map(|each| each.station(joints, 1).unwrap());
            assert_eq!(Length::total(&run.pieces).unwrap(), (run.run + laps - gaps).length().unwrap(), "{} of {}", trim.name, line.name);
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

/// The caps of a packet by line, end, trim and hand.
fn caps(packet: &Packet) -> Vec<(&str, LineEnd, &str, CapHand)> {
    packet.end_caps.iter().map(|c| (c.name.as_str(), c.end, c.trim.as_str(), c.hand)).collect()
}

#[test]
fn every_end_that_nothing_lies_over_has_its_cap_on_the_order() {
    for packet in [demo_packet(), &made(ANNEXE), &made(ROPEWALK), &made(MALTINGS)] {
        let ends = || packet.corners.corners.iter().flat_map(|c| &c.lines);
        let said: Vec<_> = ends().filter(|l| l.closed == TrimEnd::Capped).map(|l| (l.line, l.end, l.above)).collect();
        assert_eq!(packet.end_caps.iter().map(|c| (c.line, c.end, c.above)).collect::<Vec<_>>(), said);
        let ordered: u64 = packet.order.iter().filter(|l| l.item.ends_with(", end cap") && !l.item.starts_with("coping")).map(|l| l.count).sum();
        assert_eq!(ordered, u64::try_from(said.len()).unwrap());
        // Each has a blank, of its trim's sheet and no wider or higher than that trim unfolds, but for tabs on both sides.
        for cap in &packet.end_caps {
            let piece = packet.cap_pieces.iter().find(|p| Some(&p.mark) == cap.piece.as_ref()).unwrap_or_else(|| panic!("{} of {}", cap.trim, cap.name));
            let trim = packet.trims.iter().find(|t| t.mark == cap.mark).unwrap();
            assert_eq!((&piece.trim_mark, &piece.trim, piece.sheet), (&cap.mark, &cap.trim, trim.sheet));
            let (width, height) = piece.made.blank.bounds().unwrap().size().unwrap();
            let most = trim.flat.girth().mm() + 2.0 * practice::junction::CAP_TAB.mm();
            assert!(width.mm() < most && height.mm() < most && piece.made.tabs > 0);
            assert!(packet.order.iter().any(|l| l.mark == piece.mark && l.item == format!("{}, end cap", cap.trim)));
        }
        // A bead across each of them and across what is turned up a wall, as long as the trim is wide when flat.
        for junction in &packet.junctions {
            let closed = ends().filter(|l| l.line == junction.line && matches!(l.closed, TrimEnd::Capped | TrimEnd::TurnedUp)).count();
            let beads: Vec<_> = junction.along.beads.iter().filter(|b| b.name.starts_with("end of the ")).collect();
            assert_eq!(beads.len(), closed, "{}", junction.name);
            for bead in beads {
                let of = packet.trims.iter().find(|t| bead.name.ends_with(&t.name) && t.runs.iter().any(|r| r.line == Some(junction.line))).unwrap();
                assert_eq!(bead.length, of.flat.girth());
            }
        }
    }
}

/// Seen at its eave, a gable has a rake on the left and one on the right: mirror images, whose sections are drawn with the roof on the left.
#[test]
fn caps_are_of_the_hand_of_their_end() {
    let annexe = made(ANNEXE);
    let found = caps(&annexe);
    assert_eq!(
        found,
        [
            ("rake 1", LineEnd::End, "rake trim", CapHand::Opposite),
            ("headwall 1", LineEnd::End, "headwall flashing", CapHand::Opposite),
            ("rake 3", LineEnd::End, "rake trim", CapHand::Opposite),
            ("rake 2", LineEnd::Start, "rake trim", CapHand::AsDrawn),
            ("step 1", LineEnd::Start, "lower flashing", CapHand::AsDrawn),
            ("step 1", LineEnd::End, "lower flashing", CapHand::Opposite),
        ]
    );
    // A ridge's cap between like pitches is alike from both ends; between pitches that differ it is not.
    let hands = |packet: &Packet, kind: LineKind| -> Vec<CapHand> {
        let of = packet.end_caps.iter().filter(|c| packet.roof.lines()[c.line].kind == kind);
        of.map(|c| c.hand).collect()
    };
    let maltings = made(MALTINGS);
    assert_eq!(hands(&maltings, LineKind::Ridge), [CapHand::Either; 2]);
    assert_eq!(hands(demo_packet(), LineKind::Ridge).len(), 4);
}

/// In an inside corner the one wall stands across the end of the other's flashing: no cap could be set there.
#[test]
fn a_flashing_that_ends_at_another_wall_is_turned_up_it() {
    for (packet, end) in [(demo_packet(), LineEnd::End), (&made(ANNEXE), LineEnd::Start)] {
        let headwall = packet.roof.lines().iter().position(|l| l.kind == LineKind::Headwall).unwrap();
        let here: Vec<_> = packet.corners.corners.iter().flat_map(|c| &c.lines).filter(|l| l.line == headwall).collect();
        let closed = |at: LineEnd| here.iter().find(|l| l.end == at).unwrap().closed;
        let other = if end == LineEnd::End { LineEnd::Start } else { LineEnd::End };
        assert_eq!((closed(end), closed(other)), (TrimEnd::TurnedUp, TrimEnd::Capped));
    }
    // The pan behind a curb lets its water out at both ends; its sides end at the curb's outside corners.
    let ends = || demo_packet().corners.corners.iter().flat_map(|c| &c.lines);
    let of = |kind: LineKind| -> Vec<TrimEnd> { ends().filter(|l| l.kind == kind).map(|l| l.closed).collect() };
    assert_eq!(of(LineKind::CurbBack), [TrimEnd::Outlet; 2]);
    assert_eq!(of(LineKind::CurbSide).iter().filter(|c| **c == TrimEnd::Capped).count(), 2);
}

#[test]
fn an_end_without_a_trim_to_cap_is_said() {
    let mut packet = demo_packet().clone();
    let number = packet.junctions.iter().position(|j| j.name == "rake 3").unwrap();
    packet.junctions.remove(number);
    let job = super::test_jobs::demo();
    let ends = super::end_caps::Ends { job: &job, roof: &packet.roof, corners: &packet.corners, junctions: &packet.junctions, trims: &packet.trims };
    let made = ends.closed().unwrap();
    assert_eq!((made.caps.len(), made.cautions.len()), (packet.end_caps.len() - 1, 1));
    assert_eq!(made.cautions[0].code(), super::CAP_WITHOUT_TRIM);
    assert!(made.cautions[0].message().contains("start of rake 3"), "{}", made.cautions[0].message());
}

/// Strips lap 2 in (Copper Flashings, a manual, par. 52-55); cleats butt, common practice, no published source.
#[test]
fn cleats_butt_and_strips_lap_as_their_own_rules_have_it() {
    let packet = demo_packet();
    let of = |name: &str| {
        let trim = packet.trims.iter().find(|t| t.name == name).unwrap();
        (trim.lap, trim.gap)
    };
    let quarter = Length::inches_64(16);
    assert_eq!((of("hook strip"), of("eave trim")), ((Length::inches(2), Length::ZERO), (Length::inches(4), Length::ZERO)));
    assert_eq!((of("continuous cleat"), of("offset cleat")), ((Length::ZERO, quarter), (Length::ZERO, quarter)));
    // A rule of the job's own comes before them, and the name of a trim before the rule of its kind.
    let mut json = super::test_jobs::demo_json();
    json["supplies"]["trims"]["holders"] = serde_json::json!({"offset_cleat": {"meet": {"lap": "3 in"}, "source": "common-practice"}});
    json["supplies"]["trims"]["laps"] = serde_json::json!([{"trim": "hook strip", "lap": "1 in"}]);
    let trims = super::test_jobs::work(&json).unwrap().trims;
    let lap = |name: &str| trims.iter().find(|t| t.name == name).unwrap().lap;
    assert_eq!((lap("hook strip"), lap("offset cleat"), lap("continuous cleat")), (Length::inches(1), Length::inches(3), Length::ZERO));
    for (gap, kind) in [("-1 in", crate::error::ErrorKind::OutOfRange), ("10'", crate::error::ErrorKind::Conflict)] {
        json["supplies"]["trims"]["holders"] = serde_json::json!({"hook_strip": {"meet": {"gap": gap}, "source": "common-practice"}});
        let e = super::test_jobs::refused(&json);
        assert_eq!((e.kind(), e.path()), (kind, "supplies.trims.holders.hook_strip.meet.gap"));
    }
}
