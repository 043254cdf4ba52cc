//! Sealed lines by hand, and that each way of leaving one open is found.

use super::test_lines::{Laid, choices as line_choices, covered, inch};
use super::{
    ClosureChoice, Flank, JunctionLine, JunctionSide, LineAssembly, LineEnds, LineSeals, SealChoices, SealLayer, SealNeed, SealPassage, SealedLine,
    SeamSurface, SideSeal, Stretch, TapeChoice, TrimJoints,
};
use crate::error::ErrorKind;
use crate::junction::{Along, AlongLine, Side, Solved};
use crate::layout::Start;
use crate::record::{Calculation, Source};
use crate::units::Length;
use proptest::prelude::*;

fn on(from: f64, to: f64) -> Stretch {
    Stretch { from: inch(from), to: inch(to) }
}

fn layer(stretches: Vec<Stretch>) -> SealLayer {
    SealLayer { name: "tape".into(), need: SealNeed::Tape, stretches }
}

fn line(layers: Vec<SealLayer>, passages: Vec<SealPassage>) -> SealedLine {
    SealedLine { run: inch(48.0), longest_gap: inch(0.0625), bays: vec![on(0.0, 16.0), on(16.0, 32.0), on(32.0, 48.0)], layers, passages }
}

#[test]
fn gaps_of_the_limit_pass_and_longer_ones_are_named() {
    // 1/16 in is let pass; 1/8 in is not, and tape that stops an inch short of the last bay's end leaves an inch.
    let check = line(vec![layer(vec![on(16.0625, 30.0), on(0.0, 16.0), on(30.125, 47.0)])], vec![]).compute().unwrap();
    let told: Vec<_> = check.breaks.iter().map(|b| (b.from, b.to, b.bay, b.missing)).collect();
    assert_eq!(told, [(inch(30.0), inch(30.125), Some(2), SealNeed::Tape), (inch(47.0), inch(48.0), Some(3), SealNeed::Tape)]);
    assert_eq!((check.continuous, check.widest_gap), (false, inch(0.0625)));
    assert!(line(vec![layer(vec![on(0.0, 48.0)])], vec![]).compute().unwrap().continuous);
}

#[test]
fn each_layer_must_go_through_by_itself() {
    let closures = SealLayer { name: "closures".into(), need: SealNeed::Closure, stretches: vec![on(0.0, 16.0), on(32.0, 48.0)] };
    let check = line(vec![layer(vec![on(0.0, 48.0)]), closures], vec![]).compute().unwrap();
    assert_eq!(check.breaks.iter().map(|b| (b.bay, b.missing)).collect::<Vec<_>>(), [(Some(2), SealNeed::Closure)]);
    assert!(check.breaks[0].cure.contains("by hand"));
    // A layer that was never laid is open from end to end.
    let none = line(vec![layer(vec![])], vec![]).compute().unwrap();
    assert_eq!((none.breaks[0].from, none.breaks[0].to), (Length::ZERO, inch(48.0)));
}

#[test]
fn a_line_of_nothing_is_refused_and_a_limit_as_long_as_the_run_lets_nothing_through() {
    let e = line(vec![], vec![]).compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "layers"));
    let mut open = line(vec![layer(vec![])], vec![]);
    open.longest_gap = inch(100.0);
    assert!(!open.compute().unwrap().continuous);
}

#[test]
fn what_does_not_lie_on_the_run_is_refused_by_its_path() {
    let mut bad = line(vec![layer(vec![on(4.0, 2.0), on(0.0, 50.0)])], vec![]);
    bad.passages.push(SealPassage { name: "seam".into(), need: SealNeed::Plug, at: inch(-1.0), sealed: true });
    bad.bays.push(on(47.0, 49.0));
    let e = bad.compute().unwrap_err();
    let paths: Vec<&str> = std::iter::once(e.path()).chain(e.others().iter().map(crate::error::Error::path)).collect();
    assert_eq!(paths, ["bays[3]", "layers[0].stretches[0]", "layers[0].stretches[1]", "passages[0].at"]);
    bad = SealedLine { run: Length::ZERO, longest_gap: inch(-1.0), bays: vec![], layers: vec![], passages: vec![] };
    let e = bad.compute().unwrap_err();
    assert_eq!((e.kind(), e.path(), e.others()[0].path()), (ErrorKind::OutOfRange, "run", "longest_gap"));
}

/// Tape under and over closures.
fn closing_section() -> Solved {
    let mut out = covered(Side::First, Source::CommonPractice);
    out.along.retain(|a| !matches!(a.what, Along::Bead { .. }));
    out
}

/// The high edge of a shed of 40 ft: 30 bays of 16 in, closures between tapes, hollow seams.
fn shed(section: &Solved, clearance: Length, hollow_seams: bool, see: impl FnOnce(&LineAssembly)) {
    let shed = super::test_lines::plane("shed", &[(0.0, 0.0), (40.0, 0.0), (40.0, 16.0), (0.0, 16.0)], &[], "6:12", 270.0, (0.0, 0.0, 9.0));
    let laid = Laid::new(vec![shed], Start::Left);
    let panels = laid.panels();
    let closure = ClosureChoice { clearance, ..ClosureChoice::usual(inch(1.0), inch(2.0)) };
    let surface = SeamSurface::upright(inch(2.0), inch(1.0)).unwrap();
    let side = JunctionSide { side: Side::First, flank: Flank::Left, panels: &panels[0], closure: Some(&closure), surface: Some(&surface), hollow_seams };
    let choices = line_choices();
    let line = laid.roof.line("high edge 1").unwrap();
    see(&JunctionLine { line, solved: section, sides: &[side], ends: LineEnds::default(), upper_ends: LineEnds::default(), pan_end: None, choices: &choices }
        .compute()
        .unwrap());
}

fn seals(along: &LineAssembly, solved: &Solved, tape: TapeChoice, choices: &SealChoices, joints: &[TrimJoints], joined: [bool; 2]) -> SideSeal {
    LineSeals { along, solved, tape, choices, joints, joined }.compute().unwrap().remove(0)
}

#[test]
fn a_high_edge_with_everything_goes_through() {
    let section = closing_section();
    shed(&section, Length::ZERO, true, |along| {
        let joints = [TrimJoints::of("cap", (inch(18.0), inch(4.0)), &[inch(120.0); 4], Length::ZERO, along.length).unwrap()];
        assert_eq!(joints[0].at, [inch(118.0), inch(234.0), inch(350.0)]);
        let seal = seals(along, &section, TapeChoice::default(), &SealChoices::default(), &joints, [true, true]);
        assert!(seal.check.continuous && seal.caution().is_none(), "{:?}", seal.check.breaks);
        // Tape under, closures, tape over; 31 seams, each with its hollow and its tape, three laps and two corners.
        assert_eq!((seal.check.layers, seal.check.passages), (3, 2 * 31 + 3 + 2));
        // Two beads of 18 in in each of three laps; 30 bays between 31 seams have a corner at each end, as high as the web.
        let (tape, choices) = (TapeChoice::default(), SealChoices::default());
        let of = |choices: &SealChoices| LineSeals { along, solved: &section, tape, choices, joints: &joints, joined: [true, true] }.beads().unwrap();
        let beads = of(&choices);
        let found: Vec<(&str, Length)> = beads.iter().map(|b| (&*b.name, b.length)).collect();
        let web = along.closures[0].web;
        assert_eq!(found, [("laps of the cap", inch(108.0)), ("corners of the closures", web.station(60, 1).unwrap())]);
        // 108 in of 1/4 by 1/8 in.
        let cubic_inch = 25.4 * 25.4 * 25.4 * 1e-9;
        let volume = beads[0].volume.get(crate::units::VolumeUnit::CubicMetre);
        assert!((volume - 108.0 / 32.0 * cubic_inch).abs() < 1e-15, "{volume}");
        assert_eq!(of(&SealChoices { bedded_laps: false, ..choices }).len(), 1);
        assert!(of(&SealChoices { lap_beads: 0, corner_bead: crate::junction::BeadSize { depth: Length::ZERO, ..choices.corner_bead }, ..choices }).is_empty());
    });
}

fn missing(seal: &SideSeal, need: SealNeed) -> usize {
    assert!(seal.check.breaks.iter().all(|b| b.missing == need), "{:?}", seal.check.breaks);
    seal.check.breaks.len()
}

#[test]
fn each_thing_left_undone_breaks_it() {
    let section = closing_section();
    shed(&section, Length::ZERO, true, |along| {
        let joints = [TrimJoints { trim: "cap".into(), girth: inch(18.0), lap: inch(4.0), at: vec![inch(118.0)] }];
        let usual = SealChoices::default();
        let with = |choices: SealChoices, tape: TapeChoice| seals(along, &section, tape, &choices, &joints, [true, true]);
        assert_eq!(missing(&with(SealChoices { plugs: false, ..usual }, TapeChoice::default()), SealNeed::Plug), 31);
        assert_eq!(missing(&with(SealChoices { bedded_laps: false, ..usual }, TapeChoice::default()), SealNeed::TrimLap), 1);
        assert_eq!(missing(&with(SealChoices { joined_corners: false, ..usual }, TapeChoice::default()), SealNeed::Corner), 2);
        // Cut at every seam and not lapped.
        assert_eq!(missing(&with(usual, TapeChoice { lap: Length::ZERO, laps_per_seam_side: 2 }), SealNeed::TapeLap), 31);
        // Both tapes stop 2 in short of the end: the last bay, which is the first along a line that runs from right to left or the thirtieth.
        let short = with(SealChoices { stops_short: LineEnds { at_start: Length::ZERO, at_end: inch(2.0) }, ..usual }, TapeChoice::default());
        assert_eq!(missing(&short, SealNeed::Tape), 2);
        assert_eq!((short.check.breaks[0].from, short.check.breaks[0].to, short.check.breaks[0].bay), (inch(478.0), inch(480.0), Some(30)));
        let caution = short.caution().unwrap();
        assert_eq!(caution.code().number, 7017);
        assert!(caution.message().contains("bay 30") && caution.message().contains("sealant tape is missing"), "{}", caution.message());
        let open = seals(along, &section, TapeChoice::default(), &usual, &joints, [true, false]);
        assert_eq!((missing(&open, SealNeed::Corner), open.check.breaks[0].from), (1, inch(480.0)));
        // Pieces that butt.
        let butt = [TrimJoints { trim: "cap".into(), girth: inch(18.0), lap: Length::ZERO, at: vec![inch(118.0)] }];
        assert_eq!(missing(&seals(along, &section, TapeChoice::default(), &usual, &butt, [true, true]), SealNeed::TrimLap), 1);
    });
    // A piece 1/2 in shorter than its bay stands 1/4 in off the seam at each of its ends.
    shed(&section, inch(0.5), true, |along| {
        let seal = seals(along, &section, TapeChoice::default(), &SealChoices::default(), &[], [true, true]);
        assert_eq!(missing(&seal, SealNeed::Closure), 60);
        assert_eq!((seal.check.breaks[0].to - seal.check.breaks[0].from).length().unwrap(), inch(0.25));
    });
}

#[test]
fn a_section_that_forgets_a_tape_is_open_from_end_to_end() {
    for over_seams in [true, false] {
        let mut section = closing_section();
        section.along.retain(|a| !matches!(a.what, Along::Tape { over_seams: is, .. } if is == over_seams));
        shed(&section, Length::ZERO, false, |along| {
            let seal = seals(along, &section, TapeChoice::default(), &SealChoices::default(), &[], [true, true]);
            assert_eq!(missing(&seal, SealNeed::Tape), 1);
            assert_eq!((seal.check.breaks[0].from, seal.check.breaks[0].to), (Length::ZERO, inch(480.0)));
        });
    }
}

#[test]
fn nothing_sealed_is_no_line_and_a_negative_limit_is_refused() {
    let section =
        Solved { along: vec![AlongLine { name: "cleat".into(), side: Side::First, what: Along::OffsetCleat, from_line: inch(2.0) }], ..Solved::default() };
    shed(&section, Length::ZERO, false, |along| {
        let of =
            |choices: &SealChoices| LineSeals { along, solved: &section, tape: TapeChoice::default(), choices, joints: &[], joined: [true, true] }.compute();
        assert!(of(&SealChoices::default()).unwrap().is_empty());
        assert_eq!(of(&SealChoices { longest_gap: inch(-1.0), ..SealChoices::default() }).unwrap_err().path(), "choices.longest_gap");
    });
}

proptest! {
    /// A line is whole exactly where a walk in small steps finds no step of the run outside every stretch.
    #[test]
    fn gaps_are_those_that_a_walk_finds(cuts in proptest::collection::vec((0_i16..96, 0_i16..24), 0..8)) {
        let half = |n: i16| Length::from_pm(Length::inches(n).pm() / 2);
        let stretches: Vec<Stretch> = cuts.iter().map(|&(from, long)| Stretch { from: half(from), to: half((from + long).min(96)) }).collect();
        let check = SealedLine { longest_gap: Length::ZERO, ..line(vec![layer(stretches.clone())], vec![]) }.compute().unwrap();
        let mut open = 0;
        let mut was_open = false;
        for step in 0..96_i16 {
            let is_open = !stretches.iter().any(|s| s.from <= half(step) && half(step + 1) <= s.to);
            open += usize::from(is_open && !was_open);
            was_open = is_open;
        }
        prop_assert_eq!(check.breaks.len(), open);
        prop_assert_eq!(check.continuous, open == 0);
    }
}
