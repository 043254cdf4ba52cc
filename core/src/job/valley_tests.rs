//! Jobs whose valleys widen under tapered pans: the pieces, their blanks, and what is ordered.

#![cfg(feature = "serde")]

use super::OrderGroup;
use super::test_jobs::{at, demo, demo_json, work};
use crate::assembly::LineEnd;
use crate::error::ErrorKind;
use crate::junction::Side;
use crate::num;
use crate::record::Calculation;
use crate::roof::LineKind;
use crate::trim::{BlankLine, BlankSide, HeldLine, Part, Point, Profile, Taper};
use crate::units::{AreaUnit, Length};
use serde_json::{Value, json};

/// The demo with pans that reach 10 in on the first side and 13 in, with a receiver fold, on the second; their open width grows by 2 in in 8 ft.
fn widening(pan: &str) -> Value {
    let mut job = demo_json();
    let kinds = at(&mut job, "junctions.kinds").as_array_mut().unwrap();
    let valley = kinds.iter_mut().find_map(|k| k.get_mut("valley")).unwrap();
    valley["widens"] = json!({ "growth": { "by": "2\"", "over": "8 ft" }, "source": "common-practice", "pan": pan });
    valley["first"]["leg"] = json!("10\"");
    valley["second"]["leg"] = json!("13\"");
    valley["second"]["hook"] = json!({ "receiver-fold": { "depth": "1 1/2\"", "opening": "1/8\"", "gap": "1/2\"", "fold": "1 1/4\"" } });
    job["supplies"]["trims"]["greatest_girth"] = json!("60\"");
    job
}

fn leg(profile: &Profile, name: &str) -> Length {
    profile.legs.iter().find(|l| l.name == name).unwrap().length
}

/// 1/8 in of opening and sheets of the pan: the lower piece's fold takes the upper piece's pan and return, the upper piece's front the lower one's return and outer part.
#[test]
fn receiver_folds_that_lap_say_how_they_lie_in_each_other() {
    let packet = work(&widening("tapered")).unwrap();
    let said: Vec<_> = packet.cautions.iter().filter(|c| c.code() == super::RECEIVERS_LAP).collect();
    let pans: Vec<_> = packet.trims.iter().filter(|t| t.name == "valley pan").collect();
    assert!(!said.is_empty() && said.len() == pans.len());
    for (caution, pan) in said.iter().zip(pans) {
        let sheets = (pan.profile.thickness * 2).length().unwrap();
        let lower = (sheets + Length::parse("1/8\"").unwrap()).length().unwrap();
        let laps: usize = pan.runs.iter().map(|r| r.pieces.len() - 1).sum();
        let text = caution.to_string();
        assert!(
            text.contains(&format!("laps {laps} time(s)")) && text.contains(&format!("fold to {lower} and")) && text.contains(&format!("piece's to {sheets},")),
            "{text}"
        );
    }
    assert!(super::test_jobs::demo_packet().cautions.iter().all(|c| c.code() != super::RECEIVERS_LAP), "cleats alone");
}

#[test]
fn tapered_pans_are_cut_piece_by_piece_and_ordered() {
    let packet = work(&widening("tapered")).unwrap();
    let valleys: Vec<_> = packet.junctions.iter().filter(|j| j.kind == LineKind::Valley).collect();
    assert!(!valleys.is_empty());
    for valley in valleys {
        let (item, run) =
            packet.trims.iter().filter(|t| t.name == "valley pan").find_map(|t| Some((t, t.runs.iter().find(|r| r.line == Some(valley.line))?))).unwrap();
        let made = item.tapered.as_ref().unwrap();
        let line = &packet.roof.lines()[valley.line];
        let up = line.start.z <= line.end.z;
        let ends = valley.along.trims[0].length.ends;
        let below = if up { ends.at_start } else { ends.at_end };
        assert_eq!(below, valley.pan_end.as_ref().unwrap().run_on);
        // From end to end once, each piece a lap under the one above it, none longer in the flat than the stock.
        assert!(made.pieces.len() > 1 && made.pieces[0].from == Length::ZERO && made.pieces.last().unwrap().to == run.run);
        for pair in made.pieces.windows(2) {
            assert_eq!((pair[0].to - pair[1].from).length().unwrap(), item.lap);
            // The upper piece starts below the lower one's end, where the pan is wider.
            assert!(leg(&pair[1].near, "leg 1") > leg(&pair[0].far, "leg 1"));
        }
        assert!(made.pieces.iter().all(|p| p.trim.blank.bounds().unwrap().size().unwrap().1 <= Length::feet(10)));
        assert_eq!(run.pieces, made.pieces.iter().map(|p| (p.to - p.from).length().unwrap()).collect::<Vec<_>>());
        // Half of 2 in in 8 ft on each side, beyond the line's ends too; the fold is as deep all the way.
        let at_top = |station: Length| (line.length.mm() + below.mm() - station.mm()) / 96.0;
        let mut blanks = 0.0;
        for piece in &made.pieces {
            for (profile, station) in [(&piece.near, piece.from), (&piece.far, piece.to)] {
                assert!((leg(profile, "leg 1").mm() - (10.0 * 25.4 + at_top(station))).abs() < 1e-6);
                assert!((leg(profile, "leg 2").mm() - (5.0 * 25.4 + at_top(station))).abs() < 1e-6, "{}", leg(profile, "leg 2"));
                assert_eq!(leg(profile, "return 2"), Length::parse("1 1/2\"").unwrap());
            }
            // Seen up the valley the section's own first side lies on the left where the line runs up, and on the right where it runs down.
            assert_eq!(piece.near.legs[0].name == "leg 1", up);
            // The centreline is as long as the piece, the edges that lean from it are longer; but for the lowest, whose end is cut.
            let is_lowest = piece.from == Length::ZERO;
            let long = |l: &crate::trim::BlankLine| l.length().unwrap().mm() - (piece.to - piece.from).length().unwrap().mm();
            assert_eq!(piece.trim.bends.iter().filter(|b| long(&b.line).abs() < 1e-6).count(), usize::from(!is_lowest));
            assert!(is_lowest || long(&piece.trim.legs[0].start) > 1e-3);
            blanks += piece.trim.blank.bounds().unwrap().size().unwrap().1.mm();
            assert!(piece.trim.blank.outline.iter().any(|e| e.side == BlankSide::StartEdge));
        }
        let wide = made.pieces[0].trim.near.girth();
        assert_eq!(item.flat.girth(), wide);
        assert!((item.cutting.scrap.pieces.mm() / item.runs.len() as f64 - blanks).abs() < 1e-6);
        let lines: Vec<_> = packet.order.iter().filter(|l| l.group == OrderGroup::Trims && l.mark == item.mark).collect();
        assert_eq!(lines.iter().map(|l| l.count).sum::<u64>(), u64::from(item.cutting.stick_count()));
        assert!(lines.iter().all(|l| l.spec.contains(" tapering to ")) && lines[0].net == Some(item.total().unwrap()));
        // The cleat of the first side is one Z all along, and the fold needs none.
        assert_eq!(valley.along.trims.iter().filter(|t| t.name == "offset cleat").count(), 1);
        assert!(valley.section.along.iter().all(|a| a.side == Side::First));
        let end = if up { LineEnd::Start } else { LineEnd::End };
        let here = packet.corners.corners.iter().flat_map(|c| &c.lines).find(|l| l.line == valley.line && l.end == end).unwrap();
        assert_eq!(here.allowance, below);
    }
}

#[test]
fn a_fold_of_a_parallel_pan_cannot_turn() {
    let e = work(&widening("parallel")).unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Conflict, "junctions.kinds[4].valley.second.hook"), "{e}");
    assert!(e.cure().unwrap().contains("tapered pan"), "{e}");
}

/// At the demo's inside corners both eaves stand square to each other: the pan's edges run on to the eaves, and its end hooks them as the panels do.
#[test]
fn a_pan_over_two_eaves_runs_on_to_where_both_are() {
    let packet = work(&demo_json()).unwrap();
    for valley in packet.junctions.iter().filter(|j| j.kind == LineKind::Valley) {
        let cut = valley.pan_end.as_ref().unwrap();
        for side in [Side::First, Side::Second] {
            let meeting = valley.along.sides.iter().find(|s| s.side == side).unwrap().meeting;
            let leg = cut.leg(side);
            assert!((leg.angle.degrees() - 90.0 - meeting.degrees()).abs() < 1e-9, "{} {meeting}", leg.angle);
            let edge = valley.section.lines.iter().find(|l| l.side == side && l.name == "pan edge").unwrap().from_line;
            let eave = packet.junctions.iter().find(|j| j.kind == LineKind::Eave).unwrap();
            let panels = eave.section.end(Side::First).unwrap();
            let past = panels.allowance().unwrap().mm();
            assert_eq!(leg.fold, panels.fold);
            let skew = leg.angle.degrees();
            let want = (past - edge.mm() * crate::num::cos_deg(skew)) / crate::num::sin_deg(skew);
            assert!((leg.at_edge.mm() - want).abs() < 1e-6, "{leg:?} {want}");
        }
        assert!(cut.run_on > Length::inches(8), "more than a lap: {}", cut.run_on);
        assert!(valley.sealed.iter().all(|s| s.check.continuous), "{:?}", valley.sealed);
        assert_eq!(valley.along.beads.iter().filter(|b| b.name.contains("pan's end")).map(|b| b.length).collect::<Vec<_>>(), [cut.bead_length]);
    }
    // An end that lies dry breaks the line there.
    let mut job = demo_json();
    let kinds = at(&mut job, "junctions.kinds").as_array_mut().unwrap();
    let valley = kinds.iter_mut().find_map(|k| k.get_mut("valley")).unwrap();
    valley["end"] = json!({ "beads": 0, "bead": { "width": "1/4\"", "depth": "1/4\"" } });
    let dry = work(&job).unwrap();
    let valley = dry.junctions.iter().find(|j| j.kind == LineKind::Valley).unwrap();
    assert!(valley.sealed.iter().flat_map(|s| &s.check.breaks).any(|b| b.name.contains("lower end")), "{:?}", valley.sealed);
}

/// The lower end of a tapered pan in its blank: in the plane of each leg beside the centreline the cut is straight, at the end's own angle to it, and meets it where the end says. Plane
/// geometry, by hand.
#[test]
fn the_lowest_piece_is_cut_as_its_end_lies() {
    let packet = work(&widening("tapered")).unwrap();
    let valleys: Vec<_> = packet.junctions.iter().filter(|j| j.kind == LineKind::Valley).collect();
    assert!(!valleys.is_empty());
    for valley in valleys {
        let item = packet.trims.iter().find(|t| t.name == "valley pan" && t.runs.iter().any(|r| r.line == Some(valley.line))).unwrap();
        let first = &item.tapered.as_ref().unwrap().pieces[0];
        let (end, trim, long) = (valley.pan_end.as_ref().unwrap(), &first.trim, (first.to - first.from).length().unwrap().mm());
        let leg_of = |name: &str| {
            let k = first.near.legs.iter().position(|l| l.name == name).unwrap();
            trim.legs.iter().find(|l| l.part == Part::Body(k)).unwrap()
        };
        let (one, two) = (leg_of("leg 1"), leg_of("leg 2"));
        let up = first.near.legs[0].name == "leg 1";
        for (leg, side) in [(one, Side::First), (two, Side::Second)] {
            let told = end.leg(side);
            // Its side along the centreline runs straight up the piece; the other lies out from it.
            let before = (side == Side::First) == up;
            let (near, far) = if before { (leg.end, leg.start) } else { (leg.start, leg.end) };
            let along = ((near.to.x - near.from.x).length().unwrap().mm(), (near.to.y - near.from.y).length().unwrap().mm());
            let cut = ((far.from.x - near.from.x).length().unwrap().mm(), (far.from.y - near.from.y).length().unwrap().mm());
            let (height, width) = (num::hypot(along.0, along.1), num::hypot(cut.0, cut.1));
            let cosine = (along.0 * cut.0 + along.1 * cut.1) / (height * width);
            assert!((cosine - num::cos_deg(told.angle.degrees())).abs() < 1e-9, "{side:?} {cosine} {}", told.angle);
            // From the upper end of the piece down to the cut, less what the centreline's own bend is wide.
            let at = long - (end.run_on.mm() - told.at_centre.mm());
            assert!((height - at).abs() < 1.0, "{height} {at}");
            // The first side has no fold: its leg is all of the pan there, but for its hem.
            assert!(if side == Side::First { (width - told.cut.mm()).abs() < 3.0 } else { width < told.cut.mm() }, "{width} {}", told.cut);
        }
        // What the cut takes off: over each leg the mean of what it takes at both sides.
        let whole = Taper {
            near: first.near.clone(),
            far: first.far.clone(),
            length: (first.to - first.from).length().unwrap(),
            rule: demo().bend_rule,
            held: HeldLine::Bend(if up { one.part } else { two.part }),
            offset: Point::ORIGIN,
            tolerance: Length::micrometres(10),
        };
        let whole = whole.compute().unwrap();
        let off: f64 = trim
            .legs
            .iter()
            .zip(&whole.legs)
            .map(|(cut, leg)| {
                let taken = |a: &BlankLine, b: &BlankLine| b.length().unwrap().mm() - a.length().unwrap().mm();
                let wide = (leg.end.from.x - leg.start.from.x).length().unwrap().mm();
                (taken(&cut.start, &leg.start) + taken(&cut.end, &leg.end)) / 2.0 * wide
            })
            .sum();
        let gone = whole.area.get(AreaUnit::SquareMillimetre) - trim.area.get(AreaUnit::SquareMillimetre);
        assert!(off > 1e4 && (gone - off).abs() < 0.03 * off, "{gone} {off}");
        // Its lowest place is where the run begins.
        let least = trim.legs.iter().zip(&whole.legs).flat_map(|(cut, leg)| [(cut.start, leg.start), (cut.end, leg.end)]);
        let least = least.map(|(cut, leg)| leg.length().unwrap().mm() - cut.length().unwrap().mm()).fold(f64::INFINITY, f64::min);
        assert!((-1e-6..3.0).contains(&least), "{least}");
        assert_eq!(trim.area, trim.blank.area().unwrap());
        // On the cut end a bend's place is told square to the start edge; the pieces above are square.
        assert!(trim.near_is_cut && item.tapered.as_ref().unwrap().pieces[1..].iter().all(|p| !p.trim.near_is_cut));
        assert!(trim.bends.iter().all(|b| b.near_station == b.line.from.x));
    }
}
