#![cfg(feature = "serde")]

use super::fold::Point;
use super::junction_samples::{self, Sample};
use super::labels::Area;
use super::section_axis::{Axes, on_paper};
use super::section_marks::Mark;
use super::section_metal::{Piece, heights};
use super::section_scene::Scene;
use super::*;
use crate::error::ErrorKind;
use crate::junction::{Adjoining, Along, Bites, Datum, JunctionTrim, LayoutLine, Levels, Side, Solved};
use crate::num;
use crate::units::{Angle, Length, LengthFormat};
use proptest::prelude::*;
use std::sync::LazyLock;

fn format() -> LengthFormat {
    LengthFormat::parse("in/16").unwrap()
}

fn drawing(sample: &Sample) -> JunctionDrawing<'_> {
    JunctionDrawing::new(sample.name, &sample.solved, sample.first, sample.other, format()).unwrap()
}

/// Every sample, solved once for all tests.
fn samples() -> &'static [Sample] {
    static ALL: LazyLock<Vec<Sample>> = LazyLock::new(|| junction_samples::all().unwrap());
    &ALL
}

fn sample(name: &str) -> &'static Sample {
    samples().iter().find(|s| s.name == name).unwrap()
}

/// Every sample's scene, laid out once for all tests, and its scale.
fn laid() -> impl Iterator<Item = (&'static Sample, &'static (Scene, f64))> {
    static ALL: LazyLock<Vec<(Scene, f64)>> = LazyLock::new(|| samples().iter().map(|s| drawing(s).scene().unwrap()).collect());
    samples().iter().zip(ALL.iter())
}

/// Every sample with its scene and its millimetres of paper a millimetre.
fn scenes() -> impl Iterator<Item = (&'static Sample, &'static Scene, f64)> {
    laid().map(|(sample, (scene, n))| (sample, scene, 1.0 / n))
}

/// From a point to the nearest of a segment.
fn distance(p: Point, a: Point, b: Point) -> f64 {
    let (x, y) = (b.0 - a.0, b.1 - a.1);
    let square = x * x + y * y;
    let t = if square > 0.0 { (((p.0 - a.0) * x + (p.1 - a.1) * y) / square).clamp(0.0, 1.0) } else { 0.0 };
    num::hypot(a.0 + x * t - p.0, a.1 + y * t - p.1)
}

/// The names of the elements are opened and closed in turn, and text holds no bare mark.
fn is_well_formed(xml: &str) -> bool {
    let mut open: Vec<&str> = Vec::new();
    let mut rest = xml.strip_prefix("<?xml version=\"1.0\" encoding=\"UTF-8\"?>").unwrap();
    while let Some(start) = rest.find('<') {
        if rest[..start].contains('>') {
            return false;
        }
        let end = start + rest[start..].find('>').unwrap();
        let tag = &rest[start + 1..end];
        if !tag.matches('"').count().is_multiple_of(2) {
            return false;
        }
        if let Some(name) = tag.strip_prefix('/') {
            if open.pop() != Some(name) {
                return false;
            }
        } else if !tag.ends_with('/') {
            open.push(tag.split(' ').next().unwrap());
        }
        rest = &rest[end + 1..];
    }
    open.is_empty() && rest.trim().is_empty()
}

#[test]
fn a_sample_is_what_its_calculation_gives_by_name() {
    for sample in samples() {
        let out = crate::job::named(sample.calculation).unwrap().compute_json(&sample.input.to_string()).unwrap();
        let out: serde_json::Value = serde_json::from_str(&out).unwrap();
        assert_eq!(out.get("section").unwrap_or(&out), &serde_json::to_value(&sample.solved).unwrap(), "{}", sample.name);
    }
}

#[test]
fn distances_in_a_section_across_the_fall_are_said_across() {
    for sample in samples() {
        let said = super::struck_distance(format(), sample.line, Side::First, Length::inches(1)).unwrap();
        assert_eq!(said.ends_with(" up"), sample.first.rise != Angle::ZERO, "{}: {said}", sample.name);
    }
}

#[test]
fn every_kind_is_drawn_well_formed_and_the_same_again() {
    for (sample, (scene, n)) in laid() {
        let svg = drawing(sample).svg().unwrap();
        assert!(is_well_formed(&svg), "{}", sample.name);
        assert_eq!(svg, drawing(sample).write(scene, *n));
        for word in ["NaN", "inf", "-0.000"] {
            assert!(!svg.contains(word), "{}: {word}", sample.name);
        }
    }
}

#[test]
fn every_trim_corner_lies_on_its_metal_and_in_the_figure() {
    for (sample, scene, scale) in scenes() {
        for (i, trim) in sample.solved.trims.iter().enumerate() {
            let metal = scene.metal.iter().find(|m| m.piece == Piece::Trim(i)).unwrap();
            for corner in &trim.corners {
                let p = on_paper(*corner, scale);
                let ring = metal.outline.iter().zip(metal.outline.iter().cycle().skip(1));
                let off = ring.map(|(a, b)| distance(p, *a, *b)).fold(f64::INFINITY, f64::min);
                // Opened hems, receiver folds and sheets drawn apart each give a sheet's drawn thickness or two.
                assert!(off < 1.6, "{}, {}: {off} mm", sample.name, trim.name);
                assert!(scene.area.low.0 <= p.0 && p.0 <= scene.area.high.0 && scene.area.low.1 <= p.1 && p.1 <= scene.area.high.1, "{}", sample.name);
            }
        }
    }
}

#[test]
fn a_plain_trim_lies_where_the_section_says() {
    // Without a hem or a neighbour, opened bends leave the corners of the middle line in place: the lower face is half the extra thickness away.
    let (sample, scene, scale) = scenes().find(|(s, ..)| s.name == "rake").unwrap();
    let at = sample.solved.trims.iter().position(|t| t.name == "rake Z").unwrap();
    let metal = scene.metal.iter().find(|m| m.piece == Piece::Trim(at)).unwrap();
    for corner in &sample.solved.trims[at].corners {
        let p = on_paper(*corner, scale);
        let ring = metal.outline.iter().zip(metal.outline.iter().cycle().skip(1));
        assert!(ring.map(|(a, b)| distance(p, *a, *b)).fold(f64::INFINITY, f64::min) < 0.5);
    }
}

#[test]
fn bars_are_as_long_as_their_figures_say() {
    for (sample, scene, scale) in scenes() {
        let mut drawn: Vec<f64> =
            scene.rows.iter().flat_map(|r| &r.bars).flat_map(|b| b.ticks.iter().map(|t| num::hypot(t.0 - b.origin.0, t.1 - b.origin.1) / scale)).collect();
        let mut said: Vec<f64> = sample.solved.lines.iter().map(|l| l.from_datum.mm().abs()).collect();
        drawn.sort_by(f64::total_cmp);
        said.sort_by(f64::total_cmp);
        assert_eq!(drawn.len(), said.len(), "{}", sample.name);
        for (d, s) in drawn.iter().zip(&said) {
            assert!((d - s).abs() < 1e-6, "{}: {d} {s}", sample.name);
        }
        // A line measured from another starts where that one was struck.
        let texts: Vec<&str> = scene.rows.iter().flat_map(|r| &r.figures).map(|f| f.text.as_str()).collect();
        for (key, line) in drawing(sample).lines().iter().zip(&sample.solved.lines) {
            let from = match &line.datum {
                Datum::JunctionLine => "",
                Datum::TrimLowerEdge | Datum::TrimTopEdge => " from edge",
                Datum::Line(_) => " from ",
            };
            let text = texts.iter().find(|t| t.starts_with(&format!("{}  ", key.mark))).unwrap();
            assert!(text.contains(from), "{}: {text}", sample.name);
        }
    }
}

#[test]
fn every_part_has_its_balloon_and_nothing_lies_on_anything() {
    for (sample, scene, _) in scenes() {
        for part in drawing(sample).parts() {
            assert!(scene.balloons.iter().any(|b| b.text == part.mark), "{}: {}", sample.name, part.text);
        }
        let all: Vec<_> = scene.balloons.iter().chain(&scene.labels).collect();
        let figures: Vec<_> = scene.rows.iter().flat_map(|r| &r.figures).collect();
        for (i, a) in all.iter().enumerate() {
            for b in &all[..i] {
                assert!(!a.area.meets(&b.area), "{}: {} on {}", sample.name, a.text, b.text);
            }
            for f in &figures {
                assert!(f.edges.iter().all(|(p, q)| !a.area.is_hit_by(*p, *q)), "{}: {} on {}", sample.name, a.text, f.text);
            }
            for metal in &scene.metal {
                let mut ring = metal.outline.iter().zip(metal.outline.iter().cycle().skip(1));
                assert!(ring.all(|(p, q)| !a.area.is_hit_by(*p, *q)), "{}: {} on metal", sample.name, a.text);
            }
        }
        // Figures of one row keep their distance.
        for row in &scene.rows {
            for (i, f) in row.figures.iter().enumerate() {
                for g in &row.figures[..i] {
                    assert!(num::hypot(f.at.0 - g.at.0, f.at.1 - g.at.1) > 4.4, "{}: {} on {}", sample.name, f.text, g.text);
                }
            }
        }
        // What two rows say at one place is written once, and no witness runs through the triangle of a pitch.
        for (i, f) in figures.iter().enumerate() {
            let twice = figures[..i].iter().any(|g| g.text == f.text && num::hypot(f.at.0 - g.at.0, f.at.1 - g.at.1) < 1.5);
            assert!(!twice, "{}: {} twice", sample.name, f.text);
        }
        for slope in &scene.slopes {
            let [a, b, c] = slope.corners;
            let area = Area { low: (a.0.min(b.0), a.1.min(b.1)), high: (a.0.max(b.0), a.1.max(b.1)) };
            let mut witnesses = scene.rows.iter().flat_map(|r| &r.witnesses).flat_map(|w| w.windows(2));
            assert!(witnesses.all(|w| !area.is_hit_by(w[0], w[1])), "{}: a witness through the pitch at {c:?}", sample.name);
        }
    }
}

#[test]
fn screws_of_closures_go_through_the_panel_and_its_deck() {
    let mut seen = 0;
    for (sample, scene, scale) in scenes() {
        let axes = Axes::of(&sample.solved, &sample.first, &sample.other).unwrap();
        for line in sample.solved.along.iter().filter(|l| l.name == "closure screws") {
            let axis = axes.side(line.side);
            let panel = scene.panels.iter().find(|p| p.side == line.side).unwrap();
            let a = axis.place(line.from_line, scale);
            // They lie on the panel, and so on its side of the line.
            assert!(a * axis.panels > panel.end * axis.panels && a * axis.panels < panel.far * axis.panels, "{}", sample.name);
            let on_axis = |p: Point| (axis.of(p).0 - a).abs() < 1e-6;
            let screw = scene.marks.iter().any(|m| match m {
                Mark::Fastener { head, point, rivet: false } => on_axis(*head) && axis.of(*head).1 > panel.top && axis.of(*point).1 < 0.0,
                _ => false,
            });
            assert!(screw, "{}", sample.name);
            seen += 1;
        }
    }
    assert!(seen >= 10, "{seen}");
}

#[test]
fn folds_are_drawn_about_what_they_hook() {
    let mut seen = 0;
    for (sample, scene, scale) in scenes() {
        let axes = Axes::of(&sample.solved, &sample.first, &sample.other).unwrap().scaled(scale);
        for panel in &scene.panels {
            // Around a pipe the panel goes on.
            let Some(end) = sample.solved.end(panel.side) else { continue };
            if !end.fold.is_positive() {
                continue;
            }
            let axis = axes.side(panel.side);
            let a = panel.end + axis.panels * end.fold.mm() * scale * 0.7;
            let fold = axis.of(*panel.pan.last().unwrap()).1;
            let hooked = scene.metal.iter().flat_map(|m| heights(&m.outline, axis, a)).any(|(low, high)| low > fold && high < panel.top);
            assert!(hooked, "{}: nothing lies in the fold", sample.name);
            seen += 1;
        }
    }
    assert!(seen >= 7, "{seen}");
}

#[test]
fn text_cannot_break_the_drawing() {
    let mut sample = samples()[0].clone();
    sample.solved.trims[0].name = "<b>&\"".into();
    sample.solved.lines[0].name = "</text>".into();
    let drawing = JunctionDrawing::new("<script>&", &sample.solved, sample.first, sample.other, format()).unwrap();
    let svg = drawing.svg().unwrap();
    assert!(is_well_formed(&svg));
    assert!(svg.contains("&lt;script&gt;&amp;") && svg.contains(">&lt;b&gt;&amp;&quot;</text>") && svg.contains(">&lt;/text&gt;</text>"));
    // A sheet has the title and the lines itself.
    let for_sheet = drawing.for_sheet().svg().unwrap();
    assert!(!for_sheet.contains(">&lt;script&gt;&amp;</text>") && !for_sheet.contains("&lt;/text&gt;"));
}

#[test]
fn what_cannot_be_drawn_is_refused_by_name() {
    let sample = &samples()[0];
    let plane = |degrees: f64| SectionPlane { rise: Angle::degrees_from(degrees).unwrap(), levels: Levels::default() };
    let refused = |first: SectionPlane, other: Other| {
        let e = JunctionDrawing::new("x", &sample.solved, first, other, format()).unwrap_err();
        (e.kind(), e.path().to_owned())
    };
    assert_eq!(refused(plane(90.0), Other::Wall), (ErrorKind::OutOfRange, "first.rise".to_owned()));
    assert_eq!(refused(plane(0.0), Other::Plane(plane(-91.0))), (ErrorKind::OutOfRange, "second.rise".to_owned()));
    assert_eq!(refused(plane(0.0), Other::Fascia { fall: Angle::ZERO }), (ErrorKind::OutOfRange, "other.fall".to_owned()));
    assert_eq!(refused(plane(-10.0), Other::Nothing), (ErrorKind::Conflict, "other".to_owned()));
    let sunk = SectionPlane { levels: Levels { tape: Length::inches(-1), ..Levels::default() }, ..plane(1.0) };
    assert_eq!(refused(sunk, Other::Wall).1, "first.levels.tape");

    let whole = || JunctionDrawing::new("x", &sample.solved, sample.first, sample.other, format()).unwrap();
    assert_eq!(whole().figure(Length::ZERO, Length::inches(4)).unwrap_err().path(), "width");
    assert_eq!(whole().figure(Length::inches(4), Length::inches(-4)).unwrap_err().path(), "height");

    let mut short = sample.solved.clone();
    short.trims[1].corners.truncate(1);
    let e = JunctionDrawing::new("x", &short, sample.first, sample.other, format()).unwrap().svg().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Missing, "solved.trims[1]"));
    let first = short.trims[1].corners[0];
    short.trims[1].corners.push(first);
    let e = JunctionDrawing::new("x", &short, sample.first, sample.other, format()).unwrap().svg().unwrap_err();
    assert_eq!((e.kind(), e.path()), (ErrorKind::Geometry, "solved.trims[1]"));
}

#[test]
fn a_junction_of_nothing_is_a_plane_and_its_line() {
    let plane = SectionPlane { rise: Angle::degrees_from(20.0).unwrap(), levels: Levels::default() };
    let svg = JunctionDrawing::new("x", &Solved::default(), plane, Other::Nothing, LengthFormat::EXACT).unwrap().svg().unwrap();
    // In metric the slope is said in degrees.
    assert!(is_well_formed(&svg) && svg.contains("junction line") && svg.contains(">20\u{b0}</text>"));
}

#[test]
fn letters_leave_out_what_reads_as_a_figure() {
    let line = |i: usize| LayoutLine {
        name: format!("line {i}").into(),
        side: Side::First,
        datum: Datum::JunctionLine,
        from_datum: Length::inches(1),
        from_line: Length::inches(1),
    };
    let solved = Solved { lines: (0..26).map(line).collect(), ..Solved::default() };
    let plane = SectionPlane { rise: Angle::degrees_from(-20.0).unwrap(), levels: Levels::default() };
    let drawing = JunctionDrawing::new("x", &solved, plane, Other::Nothing, format()).unwrap();
    let marks: Vec<String> = drawing.lines().into_iter().map(|k| k.mark).collect();
    assert!(!marks.iter().any(|m| m.contains(['I', 'O'])));
    assert_eq!((marks[8].as_str(), marks[23].as_str(), marks[24].as_str()), ("J", "Z", "A1"));
    assert_eq!(marks.iter().collect::<std::collections::BTreeSet<_>>().len(), 26);
}

#[test]
fn what_is_struck_alike_on_both_sides_has_one_letter() {
    let mut sample = sample("ridge").clone();
    let marks = |sample: &Sample| -> Vec<String> { drawing(sample).lines().into_iter().map(|k| k.mark).collect() };
    let all = marks(&sample);
    assert_eq!((&all[..6], all.len()), (&all[6..], 12));
    // A sixteenth apart, two lines are two; less than the format shows, they are one.
    let (datum, line) = (sample.solved.lines[6].from_datum, sample.solved.lines[6].from_line);
    sample.solved.lines[6].from_datum = (datum - Length::micrometres(10)).length().unwrap();
    sample.solved.lines[6].from_line = (line - Length::micrometres(10)).length().unwrap();
    assert_eq!(marks(&sample)[6], "A");
    sample.solved.lines[6].from_datum = (datum - Length::inches_64(4)).length().unwrap();
    sample.solved.lines[6].from_line = (line - Length::inches_64(4)).length().unwrap();
    assert_eq!(marks(&sample)[6], "G");
}

#[test]
fn what_others_build_is_drawn_where_the_section_knows_it() {
    let of = |name: &str| scenes().find(|(s, ..)| s.name == name).unwrap();
    // The decks end at the slot's edges, 1 in from the ridge along each; without a slot they meet at the line.
    let (_, scene, scale) = of("vented ridge");
    let nearest = |scene: &Scene| -> Vec<f64> {
        let decks = scene.bands.iter().filter(|b| b.name == "deck");
        decks.map(|b| b.ring.iter().map(|p| num::hypot(p.0, p.1)).fold(f64::INFINITY, f64::min)).collect()
    };
    assert!(nearest(scene).iter().all(|d| (d - 25.4 * scale).abs() < 1e-9) && scene.is_vented);
    assert!(nearest(of("ridge").1).iter().all(|d| *d < 1e-9) && !of("ridge").1.is_vented);
    let keys: Vec<String> = drawing(sample("vented ridge")).parts().iter().map(|k| k.text.clone()).collect();
    assert!(keys.iter().any(|k| k == "slot in the deck, 1\" from the line"), "{keys:?}");
    assert!(keys.iter().any(|k| k.starts_with("closures, ") && k.ends_with("perforated (open share 0.4)")), "{keys:?}");
    // The gutter's back and front lip are plumb at their distances from the line.
    let (_, scene, scale) = of("eave");
    let edges: Vec<(f64, f64)> = scene.neighbours[0].edges.iter().map(|(a, b)| (a.0, b.0)).collect();
    assert_eq!(edges, [(0.0, 0.0), (127.0 * scale, 127.0 * scale)]);
    // Cladding starts at the line that is struck for it, outside of the leg.
    let (sample, scene, scale) = of("headwall behind cladding");
    let struck = sample.solved.lines.iter().find(|l| l.name == "cladding, lower edge").unwrap();
    let ring = &scene.neighbours[0].ring;
    let (low, face) = ring.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, face), p| (low.min(p.1), face.max(p.0)));
    assert!((low - struck.from_line.mm() * scale).abs() < 1e-9);
    let leg = scene.metal.iter().flat_map(|m| &m.outline).filter(|p| p.1 > low).map(|p| p.0).fold(f64::INFINITY, f64::min);
    assert!(face < leg, "{face} {leg}");
    assert!(of("headwall with a reglet").1.neighbours.is_empty());
}

/// The samples turned the other way round: x becomes -x.
fn mirrored(solved: &Solved) -> Solved {
    let other = |side: Side| if side == Side::First { Side::Second } else { Side::First };
    let mut out = solved.clone();
    out.ends.iter_mut().for_each(|e| e.side = other(e.side));
    out.along.iter_mut().for_each(|a| a.side = other(a.side));
    out.lines.iter_mut().for_each(|l| l.side = other(l.side));
    let flip = |trim: &JunctionTrim| {
        let corners = trim.corners.iter().rev().map(|c| crate::junction::SectionPoint { x: Length::from_pm(-c.x.pm()), z: c.z }).collect();
        JunctionTrim { profile: trim.profile.reversed(), corners, name: trim.name.clone() }
    };
    out.trims = solved.trims.iter().map(flip).collect();
    out
}

#[test]
fn a_mirrored_junction_is_drawn_mirrored() {
    for sample in samples() {
        let Other::Plane(second) = sample.other else { continue };
        // Of a step, and where the deck is built up, the second plane is the upper one, whichever way it is seen.
        if sample.solved.adjoining.iter().any(|a| matches!(a, Adjoining::Riser { .. } | Adjoining::BuiltUp { .. })) {
            continue;
        }
        let turned = |p: SectionPlane| SectionPlane { rise: Angle::degrees_from(-p.rise.degrees()).unwrap(), ..p };
        let other = mirrored(&sample.solved);
        let one = drawing(sample).figure(Length::feet(3), Length::feet(3)).unwrap().scene().unwrap().0;
        let two = JunctionDrawing::new("x", &other, turned(second), Other::Plane(turned(sample.first)), format()).unwrap();
        let two = two.figure(Length::feet(3), Length::feet(3)).unwrap().scene().unwrap().0;
        let mut places: Vec<(f64, f64)> = one.marks.iter().map(|m| m.handle()).map(|p| (-p.0, p.1)).collect();
        let mut mirror: Vec<(f64, f64)> = two.marks.iter().map(|m| m.handle()).collect();
        let order = |a: &(f64, f64), b: &(f64, f64)| (a.0 + 1e-3 * a.1).total_cmp(&(b.0 + 1e-3 * b.1));
        places.sort_by(order);
        mirror.sort_by(order);
        for (p, q) in places.iter().zip(&mirror) {
            assert!((p.0 - q.0).abs() < 0.02 && (p.1 - q.1).abs() < 0.02, "{}: {p:?} {q:?}", sample.name);
        }
        assert_eq!(places.len(), mirror.len());
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]

    #[test]
    fn any_sample_in_any_figure_is_drawn(at in 0_usize..24, width in 40_u32..400, height in 30_u32..300) {
        let sample = &samples()[at % samples().len()];
        let mm = |n: u32| Length::micrometres(i32::try_from(n).unwrap() * 1000);
        let svg = drawing(sample).figure(mm(width), mm(height)).unwrap().svg().unwrap();
        prop_assert!(is_well_formed(&svg));
        prop_assert!(!svg.contains("NaN"));
    }
}

#[test]
fn fasteners_are_told_apart() {
    for (sample, scene, _) in scenes() {
        let count = |rivet: bool| scene.marks.iter().filter(|m| matches!(m, Mark::Fastener { rivet: r, .. } if *r == rivet)).count();
        let asked =
            |trim: bool| sample.solved.along.iter().filter(|l| matches!(l.what, Along::Fasteners { bites, .. } if (bites == Bites::Trim) == trim)).count();
        assert_eq!((count(true), count(false)), (asked(true), asked(false)), "{}", sample.name);
    }
}

/// Every length of a document, by its place.
fn lengths(of: &serde_json::Value, at: &str, out: &mut Vec<(String, f64)>) {
    match of {
        serde_json::Value::Object(fields) => fields.iter().for_each(|(name, value)| lengths(value, &format!("{at}/{name}"), out)),
        serde_json::Value::Array(items) => items.iter().enumerate().for_each(|(k, value)| lengths(value, &format!("{at}/{k}"), out)),
        serde_json::Value::String(text) => out.extend(text.strip_suffix(" mm").and_then(|n| n.parse().ok()).map(|n: f64| (at.to_owned(), n))),
        _ => {}
    }
}

/// Whatever length of a junction is wrong, what refuses it stands at an input of that junction and says what would do.
#[test]
fn every_refusal_stands_at_an_input() {
    let mut refused = 0;
    for sample in samples() {
        let mut all = Vec::new();
        lengths(&sample.input, "", &mut all);
        for (place, was) in all {
            for factor in [0.05, 20.0, 1000.0] {
                let mut input = sample.input.clone();
                *input.pointer_mut(&place).unwrap() = format!("{:.6} mm", if was == 0.0 { 50.0 * factor } else { was * factor }).into();
                let Err(e) = crate::job::compute_json(sample.calculation, &input.to_string()) else { continue };
                for fault in std::iter::once(&e).chain(e.others()) {
                    let field = fault.path().split(['.', '[']).next().unwrap();
                    assert!(sample.input.get(field).is_some(), "{}, {place} at {was} by {factor}: {fault}", sample.name);
                    assert!(fault.cure().is_some() || fault.allowed().is_some(), "{}, {place}: {fault}", sample.name);
                    refused += 1;
                }
            }
        }
    }
    assert!(refused > 1000, "{refused}");
}
