//! Plans of every common kind of roof: what they show, and that it can be read.
#![cfg(feature = "serde")]

use super::plan::{Texts, ToPaper, between, field, look, panel_ring, roof_plan_svg};
use super::plan_box::Turned;
use super::plan_text::Sheet;
use super::svg::{PaperUnit, Point};
use crate::error::ErrorKind;
use crate::layout::{EdgeUse, LaidPanel, LaidPlane, Layout, Start};
use crate::num;
use crate::panel::{Panel, PanelEnd, Seam};
use crate::record::Calculation;
use crate::roof::sample_roofs::{SAMPLES, Sample};
use crate::roof::{Beyond, LineKind, Plane, Roof, RoofInput};
use crate::units::{AreaUnit, Length, LengthFormat};

fn format() -> LengthFormat {
    LengthFormat::parse("ft-in/16").unwrap()
}

fn laid(roof: &Roof) -> Vec<LaidPlane> {
    let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) }).unwrap();
    let lay = |plane: &Plane| {
        let end = |_: &crate::roof::Edge| EdgeUse::End(PanelEnd::hold_back(Length::inches(1)));
        Layout::new(plane.outline().clone(), panel, Start::CentrePanel, end).unwrap().compute().unwrap()
    };
    roof.planes().iter().map(lay).collect()
}

fn sample(name: &str) -> &'static Sample {
    SAMPLES.iter().find(|s| s.name == name).unwrap()
}

fn draw(name: &str, roof: &Roof, laid: &[LaidPlane], figure: i64) -> String {
    let all: Vec<Option<&LaidPlane>> = laid.iter().map(Some).collect();
    roof_plan_svg(name, roof, &all, Length::micrometres(i32::try_from(figure * 1000).unwrap()), PaperUnit::Millimetre, format()).unwrap()
}

/// A text as a reader of SVG sets it: the four corners of its capitals and descenders, from the attributes alone.
fn text_boxes(svg: &str) -> Vec<(String, [(f64, f64); 4])> {
    let value = |element: &str, name: &str| -> Option<String> {
        let from = element.find(&format!(" {name}=\""))? + name.len() + 3;
        Some(element[from..].split('"').next().unwrap().to_owned())
    };
    let number = |element: &str, name: &str| value(element, name).unwrap().parse::<f64>().unwrap();
    svg.split("<text")
        .skip(1)
        .map(|rest| {
            let (open, words) = rest.split_once('>').unwrap();
            let (x, y, size, width) = (number(open, "x"), number(open, "y"), number(open, "font-size"), number(open, "textLength"));
            let left = if value(open, "text-anchor").unwrap() == "middle" { -width / 2.0 } else { 0.0 };
            let turn = value(open, "transform").map_or(0.0, |t| t["rotate(".len()..].split(' ').next().unwrap().parse::<f64>().unwrap());
            let (c, s) = (num::cos_deg(turn), num::sin_deg(turn));
            let corners = [(left, -0.72 * size), (left + width, -0.72 * size), (left + width, 0.2 * size), (left, 0.2 * size)];
            (words.split('<').next().unwrap().to_owned(), corners.map(|(a, b)| (x + a * c - b * s, y + a * s + b * c)))
        })
        .collect()
}

/// Two boxes are apart where a side of one of them has all of the other beyond it.
fn overlap(a: &[(f64, f64); 4], b: &[(f64, f64); 4]) -> bool {
    let parts = |a: &[(f64, f64); 4], b: &[(f64, f64); 4]| {
        (0..4).any(|i| {
            let (p, q) = (a[i], a[(i + 1) % 4]);
            b.iter().all(|r| (q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0) <= 0.0)
        })
    };
    !parts(a, b) && !parts(b, a)
}

#[test]
fn on_no_plan_does_a_text_lie_on_another_or_leave_the_sheet() {
    for sample in SAMPLES {
        let roof = sample.roof();
        let laid = laid(&roof);
        for figure in [180, 240] {
            let svg = draw("a roof", &roof, &laid, figure);
            assert!(!svg.contains("NaN") && !svg.contains("inf"), "{}", sample.name);
            let sheet: Vec<f64> = svg.split("viewBox=\"").nth(1).unwrap().split('"').next().unwrap().split(' ').map(|n| n.parse().unwrap()).collect();
            let texts = text_boxes(&svg);
            for (i, (words, corners)) in texts.iter().enumerate() {
                let within = |p: &(f64, f64)| (0.0..=sheet[2]).contains(&p.0) && (0.0..=sheet[3]).contains(&p.1);
                assert!(corners.iter().all(within), "{} {figure}: {words} {corners:?} of {sheet:?}", sample.name);
                let other = texts[..i].iter().find(|(_, o)| overlap(corners, o));
                assert!(other.is_none(), "{} {figure}: {words} over {other:?}", sample.name);
            }
            // Each panel has its number and mark, each line that is not of a hole its name, each plane its name, each kind its place in the legend.
            let shown = |text: &str| texts.iter().filter(|(words, _)| words == text).count();
            for (number, mark) in laid.iter().flat_map(|l| (1..).zip(&l.panels).map(|(n, p)| (n, l.mark_of(p).unwrap()))) {
                assert!(shown(&format!("{number} {mark}")) > 0, "{} {number} {mark}", sample.name);
            }
            let panels: usize = laid.iter().map(|l| l.panels.len()).sum();
            let lines = roof.lines().iter().filter(|l| !matches!(l.beyond, Beyond::Hole(_)));
            for line in lines.clone() {
                assert!(texts.iter().any(|(words, _)| words.split(',').next() == Some(&line.name)), "{} {}", sample.name, line.name);
            }
            for plane in roof.planes() {
                assert!(texts.iter().any(|(words, _)| words.starts_with(&format!("{}, ", plane.name()))), "{} {}", sample.name, plane.name());
            }
            for (kind, _) in sample.lines {
                assert_eq!(shown(kind.name()), 1, "{} {kind}", sample.name);
            }
            let openings = match sample.name {
                "curbs" => 4,
                "chimney-cricket" => 1,
                _ => 0,
            };
            assert_eq!(texts.len(), 1 + panels + lines.count() + roof.planes().len() + sample.lines.len() + openings + 1, "{}", sample.name);
        }
    }
}

#[test]
fn the_panels_that_a_plan_draws_make_up_the_area_of_each_plane() {
    for sample in SAMPLES {
        let roof = sample.roof();
        for (plane, laid) in roof.planes().iter().zip(&laid(&roof)) {
            let origin = plane.rings().first().and_then(|r| r.first()).copied().unwrap();
            let twice_area = |ring: Vec<Point>| {
                let ring: Vec<Point> = ring.iter().map(|p| (p.0 - origin.x.mm(), p.1 - origin.y.mm())).collect();
                ring.iter().zip(ring.iter().cycle().skip(1)).map(|(p, q)| p.0 * q.1 - q.0 * p.1).sum::<f64>()
            };
            let notches = |p: &LaidPanel| p.notches.iter().map(|n| twice_area(between(plane, &n.lower, &n.upper).unwrap())).sum::<f64>();
            let twice: f64 = laid.panels.iter().map(|panel| twice_area(panel_ring(plane, panel).unwrap()) - notches(panel)).sum();
            let (drawn, area) = (twice / 2.0 * plane.pitch().slope_factor() * 1e-6, plane.area().get(AreaUnit::SquareMetre));
            // Corners in plan are whole picometres of metres.
            approx::assert_relative_eq!(drawn, area, max_relative = 1e-9);
            approx::assert_relative_eq!(laid.covered.get(AreaUnit::SquareMetre), area, max_relative = 1e-9);
        }
    }
}

#[test]
fn no_two_kinds_of_line_are_alike_in_grey() {
    // In grey what is left of a look is its dashes and its width.
    for (i, a) in LineKind::ALL.iter().enumerate() {
        for b in LineKind::ALL.iter().take(i) {
            let (x, y) = (look(*a), look(*b));
            assert!(x.dashes != y.dashes || (x.width - y.width).abs() > 0.35, "{a} {b}");
        }
        // A round cap takes half a width from both ends of a gap.
        let gaps = look(*a).dashes.iter().skip(1).step_by(2);
        assert!(gaps.into_iter().all(|gap| gap - look(*a).width > 0.5), "{a}");
    }
}

#[test]
fn a_plan_shows_every_panel_and_the_kinds_that_occur() {
    let roof = sample("hip").roof();
    let laid = laid(&roof);
    let svg = draw("hip <house>", &roof, &laid, 180);
    assert_eq!(svg, draw("hip <house>", &roof, &laid, 180));
    let panels: usize = laid.iter().map(|l| l.panels.len()).sum();
    // The title, panels, planes, 4 eaves, 4 hips and a ridge, 3 rows of the legend and the note.
    assert_eq!(svg.matches("<text").count(), 1 + panels + 4 + 9 + 3 + 1);
    assert_eq!(svg.matches(">legend<").count(), 2 * 3);
    assert!(svg.contains(">ridge</text>") && svg.contains(">hip</text>") && svg.contains(">eave</text>") && !svg.contains(">valley</text>"));
    assert!(svg.contains(">1 "));
}

#[test]
fn a_layout_too_few_is_refused() {
    let roof = sample("hip").roof();
    let error = roof_plan_svg("x", &roof, &[None], Length::feet(1), PaperUnit::Inch, format()).unwrap_err();
    assert_eq!((error.kind(), error.path()), (ErrorKind::Conflict, "laid"));
    assert_eq!(roof_plan_svg("x", &roof, &[None; 4], Length::ZERO, PaperUnit::Inch, format()).unwrap_err().path(), "figure");
}

/// Every text has a place of its own, in what it names or at the end of a leader, on any sheet from letter upright to two pages wide.
#[test]
fn no_text_of_a_real_roof_lies_on_another() {
    let job: serde_json::Value = serde_json::from_str(include_str!("../../examples/demo_job.json")).unwrap();
    let input: RoofInput = serde_json::from_value(job["roof"].clone()).unwrap();
    let roof = input.compute().unwrap();
    let laid = laid(&roof);
    for figure in [180.0, 240.0, 400.0] {
        let to_paper = ToPaper::new(&roof, figure);
        let fields = roof.planes().iter().zip(&laid).map(|(p, l)| field(p, Some(l), &to_paper).unwrap()).collect();
        let texts = Texts::place(&roof, Sheet::new(fields), &to_paper, format()).unwrap();
        let taken: Vec<Turned> = texts.sheet.taken().iter().copied().chain(texts.panels.iter().map(|t| t.place)).collect();
        for (i, a) in taken.iter().enumerate() {
            // A leader touches the text that it leads to.
            let other = taken.iter().take(i.saturating_sub(1)).find(|b| a.meets(b));
            assert!(other.is_none(), "{figure}: {a:?} {other:?}");
        }
        let panels: usize = laid.iter().map(|l| l.panels.len()).sum();
        assert_eq!(texts.panels.len() + texts.apart.len(), panels + 1);
        assert_eq!(texts.lines.len(), roof.lines().len() - 4);
    }
}
