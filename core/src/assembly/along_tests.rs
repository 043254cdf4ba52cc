use super::test_lines::{Laid, choices, closure, covered, engineer, gable, hip, inch, no_ends, plane, ridge, strike, surface};
use super::{
    BayEnd, ClosureRun, FastenerRun, Flank, Hand, JunctionLine, JunctionSide, LineBays, LineEnds, NamedTrim, SideMeeting, StrikeLines, TapeChoice,
    TapeOverPanels, TrimAlong, TrimChoice, cautions, sealant_totals,
};
use crate::closure::{ClosureBay, ClosureFasteners};
use crate::error::ErrorKind;
use crate::junction::{Along, AlongLine, Bites, Datum, LayoutLine, Side, Solved};
use crate::layout::Start;
use crate::record::{Calculation, Source};
use crate::sealant::{SurfacePiece, TapeLine};
use crate::spacing::{Spacing, SpacingRule};
use crate::units::{Angle, Length, LengthFormat, LengthUnit, Sum, VolumeUnit};
use proptest::prelude::*;

fn named<'a>(c: impl IntoIterator<Item = &'a crate::record::Caution>) -> Vec<&'static str> {
    c.into_iter().map(|c| c.code().name).collect()
}

#[test]
fn a_ridge_of_whole_bays() {
    let laid = Laid::new(gable(), Start::Left);
    let out = laid.line("ridge 1", &ridge(), true).unwrap();
    // 30 bays a side of 16 in, less a 1/2 in seam and 1/4 in of clearance: 15 1/4 in, 12 1/4 in between the end screws, 3 screws.
    for (row, side) in out.closures.iter().zip([Side::First, Side::Second]) {
        let group = &row.list.groups[0];
        assert_eq!((row.side, row.list.groups.len(), group.count, group.screws_each, row.list.screws), (side, 1, 30, 3, 90));
        assert_eq!((group.piece.length, group.piece.web_height, group.hand), (inch(15.25), Length::inches(2), Hand::Square));
        assert_eq!((row.screw_row.as_deref(), row.list.without.len()), (Some("closure screws"), 0));
    }
    assert_eq!(out.plugs.iter().map(|p| p.count).collect::<Vec<_>>(), [31, 31]);
    let screws: Vec<_> = out.rows.iter().filter(|r| r.name == "closure screws").collect();
    assert!(screws.len() == 2 && screws.iter().all(|r| r.count == 90 && r.stations.is_none() && !r.engineered && r.bites == Bites::Structure));
    // 480 in with 1 in at both ends: 478 / 8 goes up to 60 spaces.
    let rivets = out.rows.iter().find(|r| r.name == "rivets").unwrap();
    let crew = rivets.stations.as_ref().unwrap().crew();
    assert_eq!((rivets.count, crew.start, crew.end_distance), (61, Length::inches(1), Length::inches(1)));
    assert_eq!(crew.text(LengthFormat::parse("in/16").unwrap()).unwrap(), "start 1\", then 7 15/16\" on centre, 61 in all, last 1\" from the end");
    // Tape: 15 1/2 + 2 + 1/2 + 2 = 20 in a bay over the seams, 480 in along the top.
    let tapes: Vec<_> = out.tapes.iter().map(|t| t.length).collect();
    assert_eq!(tapes, [600, 480, 600, 480].map(Length::inches));
    assert!((out.beads[0].volume.get(VolumeUnit::CubicInch) - 30.0).abs() < 1e-9);
    assert!(named(&out.cautions).contains(&"plug-seams") && named(&out.cautions).contains(&"row-not-engineered"));
    let totals = sealant_totals(&[out.clone(), out]).unwrap();
    assert_eq!((totals.tapes.len(), totals.tapes[0].length, totals.plugs), (1, Length::inches(4320), 124));
    assert_eq!((totals.beads[0].length, totals.tapes[0].order(Length::feet(50), Length::ZERO, 0.1).unwrap().rolls), (Length::inches(1920), 8));
}

#[test]
fn an_engineers_rows_say_so() {
    let laid = Laid::new(gable(), Start::Left);
    let mut solved = covered(Side::First, engineer());
    solved.lines.clear();
    let out = laid.line("ridge 1", &solved, false).unwrap();
    assert!(out.rows.iter().all(|r| r.engineered && r.source == engineer()));
    assert!(!named(&out.cautions).contains(&"row-not-engineered") && out.plugs.is_empty());
}

/// Each group is what the closure room makes of its bay, and no bay is lost.
#[test]
fn a_hip_has_pieces_of_both_hands() {
    let laid = Laid::new(hip(40.0, 10.0), Start::Left);
    let mut hands = Vec::new();
    for name in ["hip 1", "hip 2"] {
        let out = laid.line(name, &ridge(), false).unwrap();
        for row in &out.closures {
            let bays = &out.sides.iter().find(|s| s.side == row.side).unwrap().bays;
            let counted: usize = row.list.groups.iter().map(|g| g.count).sum::<usize>() + row.list.without.len();
            assert_eq!((counted, row.list.pieces), (bays.len(), bays.len() - row.list.without.len()));
            let whole = row.list.groups.iter().find(|g| g.left == BayEnd::Seam && g.right == BayEnd::Seam).unwrap();
            hands.push(whole.hand);
            let by_hand = ClosureBay {
                coverage: Length::inches(16),
                seam_width_at_foot: inch(0.5),
                seam_height: Length::inches(2),
                compressed_tape: Length::ZERO,
                meeting: whole.bay.meeting,
                clearance: inch(0.25),
                tab: Length::inches(1),
                lower_flange: inch(2.5),
                top_flange: Length::inches(1),
                top_lap: Length::ZERO,
                fasteners: ClosureFasteners { from_tab: inch(1.5), engineered: Some(Length::inches(12)) },
            };
            assert_eq!(whole.piece, by_hand.compute().unwrap());
            // 15 1/2 in over the sine of 41.81 degrees, 2/3.
            assert!((whole.piece.length.get(LengthUnit::Inch) - (15.5 * 1.5 - 0.25)).abs() < 1e-9);
            let screws: usize = row.list.groups.iter().map(|g| g.count * g.screws_each).sum();
            assert!(row.list.screws == screws && row.list.groups.iter().all(|g| g.screws_each >= 2));
            // A bay that ends at a corner keeps but half a seam's foot clear.
            let corner = row.list.groups.iter().find(|g| (g.left == BayEnd::Seam) != (g.right == BayEnd::Seam)).unwrap();
            assert_eq!(corner.bay.seam_width_at_foot, inch(0.25));
        }
    }
    assert_ne!(hands[0], hands[1]);
}

#[test]
fn a_bay_too_small_is_reported_and_the_rest_is_made() {
    // 243 in: 15 panels and a rip of 3 in, 2 3/4 in clear less 1/4 in: no room for two screws 1 1/2 in from their tabs.
    let shed = plane("shed", &[(0.0, 0.0), (20.25, 0.0), (20.25, 8.0), (0.0, 8.0)], &[], "4:12", 270.0, (0.0, 0.0, 0.0));
    let laid = Laid::new(vec![shed], Start::Left);
    let out = laid.line("high edge 1", &covered(Side::First, Source::CommonPractice), false).unwrap();
    let list = &out.closures[0].list;
    assert_eq!((list.pieces, list.without.len(), list.screws), (15, 1, 45));
    let said = out.cautions.iter().find(|c| c.code() == cautions::BAY_TOO_SMALL).unwrap();
    assert!(said.message().contains("76.2 mm") && said.message().contains("no room for two fasteners"), "{}", said.message());
    assert_eq!(out.rows[0].count, 45);
}

#[test]
fn tape_over_a_hip_is_the_sealant_rooms_own() {
    let laid = Laid::new(hip(40.0, 10.0), Start::Left);
    let panels = laid.panels();
    let line = laid.roof.line("hip 1").unwrap();
    let mut bays = LineBays { line, flank: Flank::Left, side: Side::First, panels: &panels[line.side.plane] }.compute().unwrap();
    bays.bays.retain(|b| b.seam_ends() == 2);
    let surface = surface();
    let choice = TapeChoice { lap: inch(0.5), laps_per_seam_side: 2 };
    let found = TapeOverPanels { bays: &bays, surface: &surface, choice }.compute().unwrap();
    let piece = |across: f64, rise: f64| SurfacePiece { across: inch(across), rise: inch(rise) };
    let section = vec![piece(15.5, 0.0), piece(0.0, 2.0), piece(0.5, 0.0), piece(0.0, -2.0)];
    let whole = TapeLine {
        section,
        bays: u32::try_from(bays.bays.len()).unwrap(),
        meeting: bays.bays[0].meeting,
        lap: inch(0.5),
        laps_per_bay: 4,
        waste_ratio: 0.0,
        roll: Length::feet(50),
    };
    assert!((found.length.mm() - whole.compute().unwrap().total.mm()).abs() < 1e-6);
    assert!(found.cautions.is_empty());
    let uncut = TapeOverPanels { bays: &bays, surface: &surface, choice: TapeChoice::default() }.compute().unwrap();
    assert_eq!(named(&uncut.cautions), ["skew-without-laps"]);
}

#[test]
fn ribs_lengthen_the_tape_of_whole_bays() {
    let laid = Laid::new(gable(), Start::Left);
    let panels = laid.panels();
    let line = laid.roof.line("ridge 1").unwrap();
    let bays = LineBays { line, flank: Flank::Left, side: Side::First, panels: &panels[line.side.plane] }.compute().unwrap();
    let mut ribbed = surface();
    ribbed.ribs = inch(0.25);
    let tape = |surface| TapeOverPanels { bays: &bays, surface, choice: TapeChoice::default() }.compute().unwrap().length;
    assert_eq!((tape(&ribbed) - tape(&surface())).length().unwrap(), inch(7.5));
}

#[test]
fn lines_are_struck_in_order_and_rounded_once() {
    let step = |name: &'static str, datum, from_datum, from_line| LayoutLine { name: name.into(), side: Side::Second, datum, from_datum, from_line };
    // 1/32 in each: a tape read to 1/16 in that added its readings would be 1/8 in off after four.
    let third = Length::inches_64(2);
    let mut lines = vec![step("0", Datum::TrimTopEdge, Length::inches(1), Length::inches(9))];
    let mut at = Length::inches(9);
    for (k, name) in ["1", "2", "3", "4"].into_iter().enumerate() {
        at = (at - third).length().unwrap();
        let before = ["0", "1", "2", "3"][k];
        lines.push(step(name, Datum::Line(before.into()), (-third).length().unwrap(), at));
    }
    let sides = [SideMeeting { side: Side::Second, meeting: Angle::SQUARE }];
    let struck = StrikeLines { lines: &lines, sides: &sides, choice: strike() }.compute().unwrap();
    assert_eq!(struck.iter().map(|s| s.order).collect::<Vec<_>>(), [1, 2, 3, 4, 5]);
    let last = &struck[4];
    assert_eq!((last.start.clone(), last.start_text.as_str()), (Datum::TrimTopEdge, "the trim's top edge"));
    assert_eq!((last.from_start.exact, last.from_start.read), (inch(1.125), inch(1.125)));
    assert_eq!((last.from_line.exact, last.along_seam.unwrap().read), (inch(8.875), inch(1.125)));
    assert_eq!(last.tolerance, Length::inches_64(4));
}

#[test]
fn lines_that_cannot_be_struck_are_refused() {
    let line = |name: &'static str, datum, from_datum: i16, from_line: i16| LayoutLine {
        name: name.into(),
        side: Side::First,
        datum,
        from_datum: Length::inches(from_datum),
        from_line: Length::inches(from_line),
    };
    let refused = |lines: &[LayoutLine]| {
        let e = StrikeLines { lines, sides: &[], choice: strike() }.compute().unwrap_err();
        (e.kind(), e.path().to_owned())
    };
    let early = [line("screws", Datum::Line("face".into()), 2, -3), line("face", Datum::JunctionLine, -5, -5)];
    assert_eq!(refused(&early), (ErrorKind::Missing, "lines[0].datum".into()));
    let off = [line("face", Datum::JunctionLine, -5, -5), line("screws", Datum::Line("face".into()), 2, -4)];
    assert_eq!(refused(&off), (ErrorKind::Conflict, "lines[1].from_datum".into()));
    let twice = [line("face", Datum::JunctionLine, -5, -5), line("face", Datum::JunctionLine, -4, -4), line("screws", Datum::Line("face".into()), 2, -3)];
    assert_eq!(refused(&twice), (ErrorKind::Conflict, "lines[2].datum".into()));
    let mut choice = strike();
    choice.tolerance = Length::inches(-1);
    assert_eq!(StrikeLines { lines: &[], sides: &[], choice }.compute().unwrap_err().path(), "choice.tolerance");
    // Along the seams there is nothing to measure along.
    let sides = [SideMeeting { side: Side::First, meeting: Angle::ZERO }];
    assert!(StrikeLines { lines: &off[..1], sides: &sides, choice: strike() }.compute().unwrap()[0].along_seam.is_none());
}

#[test]
fn trims_run_on_at_corners_as_they_are_told() {
    let solved = eave_by_hand();
    let laid = Laid::new(gable(), Start::Left);
    let panels = laid.panels();
    let line = laid.roof.line("eave 1").unwrap();
    let side = JunctionSide { side: Side::First, flank: Flank::Left, panels: &panels[0], closure: None, surface: None, hollow_seams: false };
    let mut choices = choices();
    let cleat = TrimChoice { lap: Length::ZERO, takes_corners: false };
    choices.named = vec![NamedTrim { name: "hook strip".into(), choice: cleat }];
    let ends = LineEnds { at_start: Length::inches(4), at_end: Length::ZERO };
    let out =
        JunctionLine { line, solved: &solved, sides: &[side], ends, upper_ends: LineEnds::default(), pan_end: None, choices: &choices }.compute().unwrap();
    let runs: Vec<_> = out.trims.iter().map(|t| (t.name.as_str(), t.length.run, t.length.lap)).collect();
    assert_eq!(runs, [("eave trim", Length::inches(484), Length::inches(4)), ("hook strip", Length::inches(480), Length::ZERO)]);
    assert_eq!(out.cleats.len(), 1);
    assert!(out.trims.iter().zip(&solved.trims).all(|(r, t)| r.profile == t.profile));
}

/// Two trims of one flat leg, and a continuous cleat.
fn eave_by_hand() -> Solved {
    use crate::junction::{JunctionTrim, SectionPoint};
    use crate::trim::{Chain, ChainLeg, Edge, Face, Point};
    let zero = Length::ZERO;
    let trim = |name: &'static str| {
        let chain = Chain {
            thickness: Length::mils(24),
            inside_radius: Length::mils(24),
            face: Face::Lower,
            start: Point { x: zero, y: zero },
            legs: vec![ChainLeg { name: "flange".into(), to: Point { x: Length::inches(4), y: zero } }],
            start_edge: Edge::Raw,
            end_edge: Edge::Raw,
            painted: Face::Upper,
        };
        let corners = vec![SectionPoint { x: zero, z: zero }, SectionPoint { x: Length::inches(4), z: zero }];
        JunctionTrim { name: name.into(), profile: chain.profile().unwrap(), corners }
    };
    let cleat = AlongLine { name: "cleat".into(), side: Side::Second, what: Along::ContinuousCleat, from_line: zero };
    Solved { trims: vec![trim("eave trim"), trim("hook strip")], along: vec![cleat], ..Solved::default() }
}

#[test]
fn what_a_side_lacks_is_named() {
    let laid = Laid::new(gable(), Start::Left);
    let panels = laid.panels();
    let line = laid.roof.line("ridge 1").unwrap();
    let (solved, choices) = (ridge(), choices());
    let (closure, surface) = (closure(), surface());
    let whole =
        JunctionSide { side: Side::First, flank: Flank::Left, panels: &panels[0], closure: Some(&closure), surface: Some(&surface), hollow_seams: false };
    let refused = |sides: &[JunctionSide<'_>]| {
        let e = JunctionLine { line, solved: &solved, sides, ends: no_ends(), upper_ends: no_ends(), pan_end: None, choices: &choices }.compute().unwrap_err();
        (e.kind(), e.path().to_owned())
    };
    assert_eq!(refused(&[whole]), (ErrorKind::Missing, "sides.panels".into()));
    assert_eq!(refused(&[JunctionSide { closure: None, ..whole }]), (ErrorKind::Missing, "sides.closure".into()));
    let other = JunctionSide { side: Side::Second, flank: Flank::Right, panels: &panels[1], ..whole };
    assert_eq!(refused(&[JunctionSide { surface: None, ..whole }, other]), (ErrorKind::Missing, "sides.surface".into()));
    assert_eq!(refused(&[whole, whole]), (ErrorKind::Conflict, "sides[1]".into()));
    let mut bad = super::test_lines::choices();
    bad.row_end_distance = Length::inches(-1);
    let e = JunctionLine { line, solved: &solved, sides: &[whole, other], ends: no_ends(), upper_ends: no_ends(), pan_end: None, choices: &bad }
        .compute()
        .unwrap_err();
    assert_eq!(e.path(), "choices.row_end_distance");
    let bays = LineBays { line, flank: Flank::Left, side: Side::First, panels: &panels[0] }.compute().unwrap();
    let e = ClosureRun { bays: &bays, web: Length::ZERO, choice: &closure, spacing: None }.compute().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::OutOfRange, "web"));
    let bad = super::ClosureChoice { lower_flange: Length::ZERO, ..closure };
    let e = ClosureRun { bays: &bays, web: Length::inches(2), choice: &bad, spacing: None }.compute().unwrap_err();
    assert_eq!(e.path(), "closure.lower_flange");
    let e = TrimAlong { line: Length::ZERO, ends: LineEnds { at_start: Length::inches(-1), at_end: Length::ZERO }, choice: TrimChoice::usual() }
        .compute()
        .unwrap_err();
    assert_eq!((e.path(), e.others()[0].path()), ("line", "ends.at_start"));
}

#[test]
fn a_short_row_has_one_fastener() {
    let row = FastenerRun { run: Length::inches(3), end_distance: Length::inches(2), spacing: Length::inches(6), source: engineer() };
    let found = row.compute().unwrap();
    assert_eq!((found.stations.positions.as_slice(), named(&found.cautions).as_slice()), ([inch(1.5)].as_slice(), ["row-short"].as_slice()));
    let none = FastenerRun { run: Length::ZERO, end_distance: Length::inches(-2), spacing: Length::ZERO, source: engineer() };
    let e = none.compute().unwrap_err();
    assert_eq!((e.path(), e.others().len()), ("run", 2));
    let many = FastenerRun { run: Length::feet(1000), end_distance: Length::ZERO, spacing: Length::from_pm(1), source: engineer() };
    assert_eq!((many.compute().unwrap_err().kind(), many.compute().unwrap_err().path()), (ErrorKind::TooLarge, "spacing"));
}

proptest! {
    /// A row is what the spacing room makes of it.
    #[test]
    fn rows_are_the_spacing_rooms_own(run in 10_i16..2000, end in 0_i16..5, spacing in 1_i16..30) {
        let row = FastenerRun { run: Length::inches(run), end_distance: Length::inches(end), spacing: Length::inches(spacing), source: Source::CommonPractice };
        let (found, sheet) = row.explain().unwrap();
        prop_assert_eq!(&row.compute().unwrap(), &found);
        let own = Spacing { run: row.run, end_distance: row.end_distance, rule: SpacingRule::Equal { maximum: row.spacing } };
        prop_assert_eq!(found.stations, own.compute().unwrap());
        prop_assert!(!sheet.steps().is_empty());
    }

    /// Whatever its bays, a line's closures and screws add up, and its tape is never shorter than the line.
    #[test]
    fn closures_and_tape_add_up(half in 3.0_f64..10.0, datum in 0.0_f64..16.0) {
        let laid = Laid::new(hip(3.0 * half, half), Start::Datum(inch(datum)));
        for name in ["hip 1", "hip 3", "ridge 1"] {
            let out = laid.line(name, &ridge(), false).unwrap();
            for (row, side) in out.closures.iter().zip(&out.sides) {
                let mut seen: Vec<usize> = row.list.groups.iter().flat_map(|g| g.bays.clone()).chain(row.list.without.clone()).collect();
                seen.sort_unstable();
                prop_assert_eq!(seen, (0..side.bays.len()).collect::<Vec<_>>());
                let pieces: Sum = row.list.groups.iter().map(|g| g.piece.length * i32::try_from(g.count).unwrap()).sum();
                prop_assert!(pieces < side.covered.into());
            }
            let over = out.tapes.iter().filter(|t| t.over_seams);
            prop_assert!(over.zip(&out.sides).all(|(t, s)| t.length > s.covered));
        }
    }
}

#[cfg(feature = "serde")]
#[test]
fn choices_come_and_results_go_as_text() {
    let choices = choices();
    let text = serde_json::to_string(&choices).unwrap();
    assert_eq!(serde_json::from_str::<super::LineChoices>(&text).unwrap(), choices);
    let e =
        serde_json::from_str::<super::ClosureChoice>(r#"{"seam_width_at_foot":"1 in","tab":"1 in","lower_flange":"2 in","from_tab":"1 in","colour":"red"}"#);
    assert!(e.unwrap_err().to_string().contains("unknown field `colour`"));
    let laid = Laid::new(gable(), Start::Left);
    let out = laid.line("ridge 1", &ridge(), true).unwrap();
    let value = serde_json::to_value(&out).unwrap();
    assert_eq!(value["closures"][0]["list"]["groups"][0]["piece"]["length"], "387.35 mm");
    assert_eq!((&value["kind"], &value["sides"][1]["bays"][0]["left"]), (&"ridge".into(), &"seam".into()));
    // The same roof gives the same bytes.
    assert_eq!(serde_json::to_string(&laid.line("ridge 1", &ridge(), true).unwrap()).unwrap(), serde_json::to_string(&out).unwrap());
}
