//! The demo's packet: its counts and lengths found again from its parts and from the roof, another way than the library goes.

#![cfg(feature = "serde")]

use super::test_jobs::{at, demo_json, demo_packet, demo_with, work};
use super::*;
use crate::assembly::TrimEnd;
use crate::junction::Side;
use crate::layout::LaidPanel;
use crate::num;
use crate::roof::{Edge, LineKind, Point, Side as RoofSide};
use crate::units::{AreaUnit, Length};
use serde_json::json;

fn sum(lengths: impl Iterator<Item = Length>) -> i64 {
    lengths.map(Length::pm).sum()
}

/// The area of a polygon between two upright lines, by the chord at each x: linear between the vertices.
fn area_between(rings: &[Vec<Point>], left: f64, right: f64) -> f64 {
    let chord = |x: f64| {
        let mut ys: Vec<f64> = Vec::new();
        for ring in rings {
            for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                let (p, q) = if a.x < b.x { (a, b) } else { (b, a) };
                if p.x.mm() < x && x < q.x.mm() {
                    ys.push(p.y.mm() + (q.y.mm() - p.y.mm()) * (x - p.x.mm()) / (q.x.mm() - p.x.mm()));
                }
            }
        }
        ys.sort_by(f64::total_cmp);
        ys.chunks(2).map(|c| c[1] - c[0]).sum::<f64>()
    };
    let mut xs: Vec<f64> = rings.iter().flatten().map(|p| p.x.mm()).filter(|x| *x > left && *x < right).collect();
    xs.extend([left, right]);
    xs.sort_by(f64::total_cmp);
    // Two points within each stretch give its straight line, and so its area.
    xs.windows(2).filter(|w| w[1] - w[0] > 1e-6).map(|w| (chord(w[0] * 0.75 + w[1] * 0.25) + chord(w[0] * 0.25 + w[1] * 0.75)) / 2.0 * (w[1] - w[0])).sum()
}

#[test]
fn panels_fill_their_strips_and_the_roof() {
    let packet = demo_packet();
    let coverage = Length::inches(16);
    let (mut panels, mut pieces, mut covered) = (0, 0, 0.0);
    for (plane, lay) in packet.roof.planes().iter().zip(&packet.planes) {
        let rings: Vec<Vec<Point>> = plane.outline().rings().map(<[Point]>::to_vec).collect();
        let bounds = plane.outline().bounds();
        let mut edges: Vec<Length> = lay.laid.seams.clone();
        for pair in edges.windows(2) {
            assert_eq!((pair[1] - pair[0]).length().unwrap(), coverage, "{}", lay.name);
        }
        edges.extend([bounds.low.x, bounds.high.x]);
        edges.sort();
        edges.dedup();
        let strips: Vec<(Length, Length)> = edges.windows(2).map(|w| (w[0], w[1])).collect();
        assert!(strips.iter().all(|(l, r)| (*r - *l).length().unwrap() <= coverage));
        let mut uncovered = lay.laid.uncovered.get(AreaUnit::SquareMillimetre);
        for (number, (left, right)) in strips.iter().enumerate() {
            let here: Vec<&LaidPanel> = lay.laid.panels.iter().filter(|p| p.strip == number).collect();
            assert!(here.iter().all(|p| p.left >= *left && p.right <= *right));
            let laid: f64 = here.iter().map(|p| p.covered.get(AreaUnit::SquareMillimetre)).sum();
            let whole = area_between(&rings, left.mm(), right.mm());
            uncovered -= whole - laid;
            assert!(laid <= whole * (1.0 + 1e-9), "{} strip {number}", lay.name);
            panels += here.len();
        }
        assert!(uncovered.abs() < 1.0, "{}: {uncovered} mm2", lay.name);
        assert_eq!(lay.laid.panels.iter().map(|p| p.strip + 1).max(), Some(strips.len()));
        for (k, group) in lay.laid.groups.iter().enumerate() {
            let of: Vec<&LaidPanel> = lay.laid.panels.iter().filter(|p| p.group == k).collect();
            assert!(of.iter().all(|p| (p.order, p.width) == (group.order, group.width)));
            assert_eq!(group.count, of.iter().map(|p| u64::from(p.pieces)).sum::<u64>());
            assert_eq!(i128::from(group.total.pm()), i128::from(group.order.pm()) * i128::from(group.count));
            pieces += group.count;
        }
        assert_eq!(lay.laid.coil.length.pm(), sum(lay.laid.groups.iter().map(|g| g.total)));
        covered += lay.laid.covered.get(AreaUnit::SquareMetre) + lay.laid.uncovered.get(AreaUnit::SquareMetre);
    }
    let summary = &packet.summary;
    assert_eq!((summary.panels, summary.pieces), (panels, pieces));
    assert!((covered / packet.roof.area().get(AreaUnit::SquareMetre) - 1.0).abs() < 1e-9);
    let ordered: Vec<&OrderLine> = packet.order.iter().filter(|l| l.group == OrderGroup::Panels).collect();
    assert_eq!(ordered.iter().map(|l| l.count).sum::<u64>(), pieces);
    assert_eq!(sum(ordered.iter().map(|l| l.net.unwrap())), summary.panel_length.pm());
    assert_eq!(summary.coil, summary.panel_length);
}

/// What an edge of a plane's layout adds to a panel, square to its line, as its junction set it.
fn allowance(packet: &Packet, lay: &PlaneLay, edge: usize) -> Option<Length> {
    let line = lay.lines[edge];
    let junction = packet.junctions.iter().find(|j| j.line == line)?;
    let side = if junction.first.plane == lay.plane { Side::First } else { Side::Second };
    junction.section.end(side).map(|e| e.allowance().unwrap())
}

/// A line as struck on a plane: its outline's edge, shifted along the seams by what its end adds.
struct Struck {
    at: (f64, f64),
    slope: f64,
    add: f64,
}

impl Struck {
    fn of(packet: &Packet, lay: &PlaneLay, number: usize, upward: f64) -> Option<(Edge, Struck)> {
        let edge = lay.layout.outline.edges().nth(number)?;
        let (across, up) = (edge.to.x.mm() - edge.from.x.mm(), edge.to.y.mm() - edge.from.y.mm());
        let end = allowance(packet, lay, number).filter(|_| across.abs() > 1e-6)?.mm();
        let slope = up / across;
        let add = upward * end * (1.0 + slope * slope).sqrt();
        Some((edge, Struck { at: (edge.from.x.mm(), edge.from.y.mm()), slope, add }))
    }

    fn y(&self, x: f64) -> f64 {
        self.at.1 + self.slope * (x - self.at.0) + self.add
    }

    /// This line, and those of the edges before and after it where they turn in from it: all of them bound the plane's panels.
    fn with_beside(packet: &Packet, lay: &PlaneLay, number: usize, upward: f64) -> Option<Vec<Struck>> {
        let (own, line) = Struck::of(packet, lay, number, upward)?;
        let mut out = vec![line];
        for (k, other) in lay.layout.outline.edges().enumerate().filter(|(_, e)| e.from == own.to || e.to == own.from) {
            let (one, two) = if other.from == own.to { (own, other) } else { (other, own) };
            let turn =
                (one.to.x.mm() - one.from.x.mm()) * (two.to.y.mm() - two.from.y.mm()) - (one.to.y.mm() - one.from.y.mm()) * (two.to.x.mm() - two.from.x.mm());
            // One that turns back does not bound the same end.
            let onward = (own.to.x > own.from.x) == (other.to.x > other.from.x);
            out.extend(Struck::of(packet, lay, k, upward).filter(|_| turn > 0.0 && onward).map(|(_, s)| s));
        }
        Some(out)
    }
}

#[test]
fn finished_lengths_are_clear_lengths_and_the_two_ends_across_their_skews() {
    let packet = demo_packet();
    let (mut seen, mut cut_beside) = (0, 0);
    for lay in &packet.planes {
        for panel in &lay.laid.panels {
            let ([low], [high]) = (panel.lower.as_slice(), panel.upper.as_slice()) else { continue };
            let Some(feet) = Struck::with_beside(packet, lay, low.edge, -1.0) else { continue };
            let Some(heads) = Struck::with_beside(packet, lay, high.edge, 1.0) else { continue };
            let length = |x: f64| heads.iter().map(|l| l.y(x)).fold(f64::INFINITY, f64::min) - feet.iter().map(|l| l.y(x)).fold(f64::NEG_INFINITY, f64::max);
            let (left, right) = (panel.left.mm(), panel.right.mm());
            // The length is greatest at a side, or where struck lines cross within the width.
            let cross =
                |lines: &[Struck]| lines.iter().skip(1).map(|l| l.at.0 + (lines[0].y(l.at.0) - l.y(l.at.0)) / (l.slope - lines[0].slope)).collect::<Vec<_>>();
            let within = cross(&heads).into_iter().chain(cross(&feet)).filter(|x| *x > left && *x < right);
            cut_beside += usize::from(within.clone().count() > 0);
            let longest = within.chain([left, right]).map(length).fold(f64::NEG_INFINITY, f64::max);
            let name = format!("{} strip {} run {}", lay.name, panel.strip, panel.run);
            assert!((panel.finished.mm() - longest).abs() < 1e-6, "{name}: {} not {longest}", panel.finished);
            assert!((panel.left_length.map_or(0.0, Length::mm) - length(left).max(0.0)).abs() < 1e-6, "{name}");
            assert!((panel.right_length.map_or(0.0, Length::mm) - length(right).max(0.0)).abs() < 1e-6, "{name}");
            seen += 1;
        }
    }
    assert!(seen > packet.summary.panels * 3 / 4, "{seen} of {}", packet.summary.panels);
    assert!(cut_beside > 0);
}

#[test]
fn trims_are_lines_with_their_corners_in_lapped_pieces() {
    let packet = demo_packet();
    let supplies = super::test_jobs::demo().supplies.trims;
    let along: usize = packet.junctions.iter().map(|j| j.along.trims.len()).sum();
    assert_eq!(packet.trims.iter().map(|t| t.runs.len()).sum::<usize>(), along);
    let mut sticks = 0;
    for trim in &packet.trims {
        assert_eq!((trim.lap, trim.gap), (supplies.lap_of(&trim.name), supplies.meet_of(&trim.name).0.gap()));
        for run in &trim.runs {
            let number = run.line.unwrap();
            let junction = packet.junctions.iter().find(|j| j.line == number).unwrap();
            let ends = packet.corners.ends[number];
            let line = &packet.roof.lines()[number];
            assert_eq!((&junction.name, &line.name), (&run.name, &run.name));
            // What only holds ends at the corner, but in a valley it goes on to where its own plane ends; every other trim runs on as its line does.
            let whole = line.length.pm() + ends.at_start.pm() + ends.at_end.pm();
            let holds = junction.section.trims.iter().any(|t| t.name == *trim.name && t.is_holder());
            let in_valley = junction.pan_end.is_some() && holds && run.run.pm() >= line.length.pm() && run.run.pm() < whole;
            assert!(run.run.pm() == if holds { line.length.pm() } else { whole } || in_valley, "{} on {}", trim.name, run.name);
            let laps = i64::try_from(run.pieces.len()).unwrap() - 1;
            assert_eq!(sum(run.pieces.iter().copied()) - laps * (trim.lap.pm() - trim.gap.pm()), run.run.pm(), "{} on {}", trim.name, run.name);
            assert!(run.pieces.iter().all(|p| *p <= Length::feet(10) && *p >= supplies.least_piece.min(run.run)));
        }
        let pieces = sum(trim.runs.iter().flat_map(|r| r.pieces.iter().copied()));
        assert_eq!(trim.cutting.scrap.pieces.pm(), pieces);
        let bought = i64::from(trim.cutting.stick_count()) * Length::feet(10).pm();
        assert_eq!(bought, pieces + trim.cutting.scrap.offcuts.pm() + trim.cutting.scrap.kerf.pm() + trim.cutting.scrap.end_loss.pm());
        sticks += u64::from(trim.cutting.stick_count());
    }
    let bought: Vec<&OrderLine> = packet.order.iter().filter(|l| l.group == OrderGroup::Trims && l.unit == "stick").collect();
    // The lean-to's eave dies into the wall: one kick-out, thrown 4 in, as high as that wall's leg of 9 in.
    let kick_outs: Vec<(&str, u64, &str)> = packet.order.iter().filter(|l| l.item == "kick-out").map(|l| (&*l.mark, l.count, &*l.spec)).collect();
    let [(mark, count, spec)] = kick_outs[..] else { panic!("{kick_outs:?}") };
    assert!((mark, count) == ("K1", 1) && spec.contains("thrown 4\" from the wall and 3\" past the eave, 9\" high, blank "), "{spec}");
    let item = &packet.kick_outs[0];
    let at_corner = packet.corners.corners.iter().flat_map(|c| &c.lines).filter(|l| l.closed == TrimEnd::KickOut).map(|l| l.name.clone());
    assert_eq!(item.lines, at_corner.collect::<Vec<_>>());
    // 1 1/2 in of overhang, the gap, and 3 in past the panels' ends lie within the gutter's 5 in; 4 in do not.
    let said = |p: &Packet| p.cautions.iter().filter(|c| c.code() == KICK_OUT_MISSES_GUTTER).map(|c| c.subject().to_owned()).collect::<Vec<_>>();
    assert!(said(packet).is_empty());
    let mut far = demo_json();
    for kind in far["junctions"]["kinds"].as_array_mut().unwrap() {
        if let Some(kick_out) = kind.pointer_mut("/sidewall/foot/dies-into-wall/kick_out") {
            kick_out["past_eave"] = json!("4 in");
        }
    }
    let far = work(&far).unwrap();
    assert_eq!(said(&far), [format!("lines.{}", item.lines[0])]);
    assert_eq!((bought.iter().map(|l| l.count).sum::<u64>(), packet.summary.sticks), (sticks, sticks));
    assert_eq!(sum(bought.iter().filter_map(|l| l.net)), sum(packet.trims.iter().map(|t| t.total().unwrap())));
}

#[test]
fn every_bay_of_a_covered_end_has_its_closure_and_its_screws() {
    let packet = demo_packet();
    let mut pieces = 0;
    for junction in &packet.junctions {
        for row in &junction.along.closures {
            let bays = &junction.along.sides.iter().find(|s| s.side == row.side).unwrap().bays;
            assert_eq!(row.list.pieces + row.list.without.len(), bays.len(), "{}", junction.name);
            assert_eq!(row.list.groups.iter().map(|g| g.count).sum::<usize>(), row.list.pieces);
            let mut named: Vec<usize> = row.list.groups.iter().flat_map(|g| g.bays.iter().copied()).chain(row.list.without.iter().copied()).collect();
            named.sort_unstable();
            assert_eq!(named, (0..bays.len()).collect::<Vec<_>>());
            let screws = junction.along.rows.iter().find(|r| Some(&r.name) == row.screw_row.as_ref() && r.side == row.side).unwrap();
            assert_eq!(screws.count, row.list.groups.iter().map(|g| g.count * g.screws_each).sum::<usize>());
            for group in &row.list.groups {
                // End screws a set distance from the tabs, and no space between them over the row's spacing.
                let across = group.piece.length.mm() - 2.0 * 38.1;
                assert!(group.screws_each >= 2, "{}", junction.name);
                #[allow(clippy::cast_precision_loss, reason = "a few screws")]
                let room = (group.screws_each - 1) as f64 * screws.spacing.mm();
                assert!(across <= room + 1e-6 && (group.screws_each == 2 || across > room - screws.spacing.mm()), "{}: {}", junction.name, group.piece.length);
            }
            pieces += u64::try_from(row.list.pieces).unwrap();
        }
    }
    assert!(pieces > 100);
    assert_eq!(packet.summary.closures, pieces);
    assert_eq!(packet.order.iter().filter(|l| l.group == OrderGroup::Closures).map(|l| l.count).sum::<u64>(), pieces);
}

#[test]
fn closures_are_counted_from_their_sticks() {
    let sticks = json!({"stock": [{"label": "10 ft", "length": "10 ft"}], "kerf": "1/8\"", "end_loss": "1\""});
    let packet = work(&demo_with("supplies.closures.sticks", sticks.clone())).unwrap();
    let lines = |unit: &str| packet.order.iter().filter(|l| l.group == OrderGroup::Closures && l.unit == unit).collect::<Vec<_>>();
    // The pieces are those of the job without sticks.
    assert_eq!(lines("each").iter().map(|l| l.count).sum::<u64>(), packet.summary.closures);
    // Of each section the blanks, found again from the lines; no fewer sticks can hold them, and fewer than one in two is half empty.
    let groups = || packet.junctions.iter().flat_map(|j| &j.along.closures).flat_map(|c| &c.list.groups);
    let mut sections: Vec<Length> = groups().map(|g| g.piece.blank.width).collect();
    sections.sort();
    sections.dedup();
    assert_eq!(lines("stick").len(), sections.len(), "the demo's closures of one girth are of one section");
    let mut net = 0;
    for line in lines("stick") {
        net += line.net.unwrap().pm();
        let least = (line.net.unwrap().mm() / (120.0 - 1.0 + 0.125) / 25.4).ceil();
        #[allow(clippy::cast_precision_loss, reason = "some hundred sticks")]
        let sticks = line.count as f64;
        // Blanks of at most a bay of 16 in leave less than one of them of a stick, and the last stick is not full.
        assert!(sticks >= least && sticks <= (line.net.unwrap().mm() / ((120.0 - 1.0 - 20.0) * 25.4)).ceil() + 1.0, "{line:?}");
        assert_eq!(line.length, Some(Length::feet(10)));
    }
    assert_eq!(net, groups().map(|g| g.piece.blank.length.pm() * i64::try_from(g.count).unwrap()).sum::<i64>());
    // A stick shorter than a blank, and one that its end loss takes whole.
    for (field, value, path) in
        [("length", json!("8\""), "supplies.closures.sticks.stock[0].length"), ("end", json!("10 ft"), "supplies.closures.sticks.end_loss")]
    {
        let mut bad = sticks.clone();
        *(if field == "end" { &mut bad["end_loss"] } else { &mut bad["stock"][0]["length"] }) = value;
        let e = work(&demo_with("supplies.closures.sticks", bad)).unwrap_err();
        assert_eq!(e.path(), path, "{e}");
    }
}

#[test]
fn a_ridge_that_rides_says_by_how_much_its_sides_part() {
    assert!(demo_packet().junctions.iter().all(|j| j.rides.is_none()), "the demo's caps stand still");
    // A gable of two planes of 8:12, fixed at the eaves.
    let mut json = super::test_jobs::gable();
    for kind in json["junctions"]["kinds"].as_array_mut().unwrap() {
        if let Some(ridge) = kind.get_mut("ridge") {
            for side in ["first", "second"] {
                ridge[side]["bites"] = json!("panel");
                ridge[side].as_object_mut().unwrap().remove("rivets");
            }
        }
        if let Some(eave) = kind.get_mut("eave") {
            eave["panel"]["fixed"] = json!({"up_the_slope": "3\"", "fasteners": {"spacing": "8\"", "source": "common-practice"}});
        }
    }
    let packet = work(&json).unwrap();
    let ridge = packet.junctions.iter().find(|j| j.kind == LineKind::Ridge).unwrap();
    let moves = ridge.rides.as_ref().unwrap();
    // From the eave to the ridge: each panel as cut. Steel, 6.7e-6 for each degF, as handbooks have it; 90 degF up from 70 degF, and 90 down.
    let longest = packet.planes.iter().map(|p| p.laid.panels.iter().map(|l| l.finished.mm()).fold(0.0, f64::max));
    let (cos, sin) = (12.0 / 208.0_f64.sqrt(), 8.0 / 208.0_f64.sqrt());
    let along: Vec<f64> = longest.map(|l| l * 6.7e-6 * 90.0).collect();
    let level: f64 = along.iter().map(|a| a * cos).sum();
    assert!((moves.closes.mm() - level).abs() < 1e-5 && (moves.opens.mm() - level).abs() < 1e-5, "{moves:?} {level}");
    let one = moves.first.as_ref().unwrap();
    assert!((one.rises.mm() - along[0] * sin).abs() < 1e-5 && (one.falls.mm() - one.rises.mm()).abs() < 1e-5);
    assert_eq!(packet.cautions.iter().filter(|c| c.code() == super::CAP_PARTS).count(), 1);
}

#[test]
fn rows_are_counted_from_their_lines() {
    let packet = demo_packet();
    let end = Length::inches(2);
    let mut all = 0;
    for junction in &packet.junctions {
        for row in &junction.along.rows {
            all += u64::try_from(row.count).unwrap();
            let Some(stations) = &row.stations else { continue };
            let between = junction.along.length.pm() - 2 * end.pm();
            let expected = if between < 0 { 1 } else { (between + row.spacing.pm() - 1).div_euclid(row.spacing.pm()) + 1 };
            // One screw fewer fits only where the end ones would coincide.
            let expected = if between == 0 { 1 } else { expected };
            assert_eq!((row.count, stations.count()), (usize::try_from(expected).unwrap(), row.count), "{} of {}", row.name, junction.name);
        }
    }
    let ordered = |group| packet.order.iter().filter(move |l| l.group == group).map(|l| l.count).sum::<u64>();
    let clips: u64 = packet.clips.iter().map(|c| u64::try_from(c.schedule.clips).unwrap()).sum();
    assert_eq!(ordered(OrderGroup::Clips), clips);
    assert_eq!(ordered(OrderGroup::Fasteners), all + 2 * clips);
    let engineered = packet.junctions.iter().flat_map(|j| &j.along.rows).filter(|r| r.engineered).count();
    assert_eq!(packet.summary.engineered_rows, engineered + packet.planes.len());
}

/// By how much each panel of a plane is longer than in the demo.
fn longer(changed: &Packet, plane: &str) -> Vec<f64> {
    let (was, is) = (&demo_packet().plane(plane).unwrap().laid.panels, &changed.plane(plane).unwrap().laid.panels);
    assert_eq!(was.len(), is.len(), "{plane}");
    was.iter().zip(is).map(|(a, b)| b.finished.mm() - a.finished.mm()).collect()
}

fn all_are(found: &[f64], expected: f64) {
    assert!(!found.is_empty() && found.iter().all(|d| (d - expected).abs() < 1e-6), "{found:?}, not {expected}");
}

#[test]
fn a_fold_changes_every_panel_that_ends_at_it_and_no_other() {
    let packet = work(&demo_with("junctions.kinds[0].eave.panel.fold", json!("1 1/8\""))).unwrap();
    let (mut at_eaves, mut elsewhere) = (0, 0);
    for lay in &demo_packet().planes {
        let found = longer(&packet, &lay.name);
        for (panel, longer) in lay.laid.panels.iter().zip(found) {
            let [low] = panel.lower.as_slice() else { continue };
            let eave = demo_packet().roof.lines()[lay.lines[low.edge]].kind == LineKind::Eave;
            let expected = if eave { -3.175 } else { 0.0 };
            assert!((longer - expected).abs() < 1e-6, "{} strip {}: {longer}, not {expected}", lay.name, panel.strip);
            *(if eave { &mut at_eaves } else { &mut elsewhere }) += 1;
        }
    }
    assert!(at_eaves > 100 && elsewhere > 20, "{at_eaves} {elsewhere}");
}

/// By hand, with tape and square: run x slope factor, what the eave has beyond its line (1 1/2 in over, 3/8 in gap, 1 1/4 in fold), and what the upper
/// line takes and gives back (its hold-back, and 1 in turned up).
#[test]
fn square_panels_are_as_long_as_a_foreman_makes_them() {
    for (plane, run, rise_in_12, hold_back, order) in [("porch", 126.75, 3.0_f64, 1.5, "133 1/4\""), ("west lean-to", 138.75, 4.0, 2.0, "148 3/8\"")] {
        let finished = run * (1.0 + rise_in_12 * rise_in_12 / 144.0).sqrt() + 1.5 + 0.375 + 1.25 - hold_back + 1.0;
        for panel in &demo_packet().plane(plane).unwrap().laid.panels {
            assert!((panel.finished.mm() - finished * 25.4).abs() < 1e-6, "{plane}: {} not {finished} in", panel.finished);
            assert_eq!(panel.order, Length::parse(order).unwrap());
        }
    }
}

#[test]
fn a_transition_s_cleat_moves_the_panels_above_it_alone() {
    let first_panels = |packet: &Packet| {
        let lay = demo_packet().plane("main south").unwrap();
        let line = demo_packet().roof.line("steep-to-shallow transition 1").unwrap();
        let at = |e: &crate::layout::EndPart| demo_packet().roof.lines()[lay.lines[e.edge]].name == line.name;
        longer(packet, "main south").into_iter().zip(&lay.laid.panels).map(|(d, p)| (d, p.lower.iter().all(at))).collect::<Vec<_>>()
    };
    let cleat = "junctions.kinds[7].steep-to-shallow";
    // A longer fold; a smaller gap; the cleat's front 1/4 in further up the roof.
    for (field, value, by) in [("cleat.fold", "1 3/8\"", 3.175), ("cleat.gap", "1/4\"", -3.175), ("front_below_top", "5 3/4\"", -6.35)] {
        let packet = work(&demo_with(&format!("{cleat}.{field}"), json!(value))).unwrap();
        let found = first_panels(&packet);
        assert!(found.iter().filter(|(_, there)| *there).count() > 15);
        for (longer, there) in found {
            let expected = if there { by } else { 0.0 };
            // A panel that ends at two lines below is as long as its longer part.
            assert!((longer - expected).abs() < 1e-6 || (!there && longer.abs() <= by.abs() + 1e-6), "{field}: {longer}, not {expected}");
        }
        for plane in ["porch", "main north", "east hip"] {
            all_are(&longer(&packet, plane), 0.0);
        }
    }
}

#[test]
fn a_turn_up_at_a_headwall_is_added_once() {
    let packet = work(&demo_with("junctions.kinds[5].headwall.end.turn_up", json!("1 1/8\""))).unwrap();
    all_are(&longer(&packet, "west lean-to"), 3.175);
    all_are(&longer(&packet, "porch"), 0.0);
}

#[test]
fn a_hold_back_at_the_ridge_shortens_both_sides_of_it_alone() {
    let mut json = demo_json();
    for side in ["first", "second"] {
        *at(&mut json, &format!("junctions.kinds[2].ridge.{side}.hold_back")) = json!("2 1/4\"");
    }
    let packet = work(&json).unwrap();
    for plane in ["porch", "north skirt", "west lean-to", "east hip"] {
        all_are(&longer(&packet, plane), 0.0);
    }
    for plane in ["main south", "main north"] {
        let found = longer(&packet, plane);
        // Where a hip or valley begins within a panel, the longest place of it moves too.
        assert!(found.iter().filter(|d| !(d.abs() < 1e-6 || (*d + 6.35).abs() < 1e-6)).count() <= 2, "{found:?}");
        assert!(found.iter().all(|d| *d < 1e-6 && *d > -6.351), "{found:?}");
        assert!(found.iter().filter(|d| (*d + 6.35).abs() < 1e-6).count() > found.len() / 2, "{found:?}");
    }
}

#[test]
fn a_field_trim_is_ordered_and_not_finished() {
    let mut json = demo_json();
    *at(&mut json, "junctions.kinds[5].headwall.end.field_trim") = json!("2\"");
    let packet = work(&json).unwrap();
    let (was, is) = (&demo_packet().plane("west lean-to").unwrap().laid.panels, &packet.plane("west lean-to").unwrap().laid.panels);
    all_are(&longer(&packet, "west lean-to"), 0.0);
    for (a, b) in was.iter().zip(is) {
        // Rounded to 1/8 in with one finished end, to 1/16 in before.
        assert!((b.order.mm() - a.order.mm() - 50.8).abs() <= 25.4 * (1.0 / 16.0 + 1.0 / 32.0) + 1e-9, "{} {}", a.order, b.order);
    }
}

/// The line of a side, square to it, from a point.
fn off(side: &RoofSide, p: Point) -> f64 {
    let (dx, dy) = (side.end.x.mm() - side.start.x.mm(), side.end.y.mm() - side.start.y.mm());
    ((p.x.mm() - side.start.x.mm()) * dy - (p.y.mm() - side.start.y.mm()) * dx).abs() / num::hypot(dx, dy)
}

#[test]
fn the_edges_of_a_layout_lie_on_their_lines() {
    let packet = demo_packet();
    for lay in &packet.planes {
        assert_eq!(lay.lines.len(), lay.layout.outline.edge_count());
        for (edge, line) in lay.layout.outline.edges().zip(&lay.lines) {
            let side = packet.roof.lines()[*line].sides().find(|s| s.plane == lay.plane).unwrap();
            assert!(off(side, edge.from) < 1e-3 && off(side, edge.to) < 1e-3, "{} {}", lay.name, packet.roof.lines()[*line].name);
        }
        let mut lines = lay.lines.clone();
        lines.sort_unstable();
        lines.dedup();
        assert_eq!(lines.len(), lay.lines.len(), "each line once round {}", lay.name);
    }
}
