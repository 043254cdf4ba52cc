//! The plan of a roof with its panels.

use super::labels::Area;
use super::svg::{Anchor, Look, PaperUnit, Point, Svg, text_width};
use crate::error::{Error, ErrorKind};
use crate::layout::{LaidPanel, LaidPlane};
use crate::num;
use crate::roof::{LineKind, Plane, Roof};
use crate::units::Length;

const TITLE: f64 = 4.2;
const LABEL: f64 = 3.0;
const ROW: f64 = 4.8;
const MARGIN: f64 = 6.0;
/// Half the height of the box behind a plane's name.
const NAME_HALF: f64 = 2.2;
const INK: &str = "#1b1b1b";
const QUIET: &str = "#5b6670";

/// How a kind of line is drawn: level lines of the top blue, sloping outward corners green, gathering lines red, free edges dark, walls brown.
const fn look(kind: LineKind) -> Look {
    match kind {
        LineKind::Ridge => Look::line("#1f5c99", 0.8),
        LineKind::HighEdge => Look::dashed("#1f5c99", 0.6, &[3.0, 1.5]),
        LineKind::Hip => Look::line("#2c7a3f", 0.8),
        LineKind::Valley => Look::line("#b3261a", 0.8),
        LineKind::SteepToShallow => Look::dashed("#8a5a00", 0.7, &[4.0, 1.2]),
        LineKind::ShallowToSteep => Look::dashed("#8a5a00", 0.7, &[1.2, 1.6]),
        LineKind::Eave => Look::line("#1b1b1b", 0.8),
        LineKind::Rake => Look::line("#1b1b1b", 0.4),
        LineKind::Headwall => Look::line("#7a3b12", 1.2),
        LineKind::Sidewall => Look::dashed("#7a3b12", 1.2, &[3.0, 2.2]),
        LineKind::CurbFront => Look::line("#7a2e8a", 0.6),
        LineKind::CurbSide => Look::dashed("#7a2e8a", 0.6, &[2.0, 1.4]),
        LineKind::CurbBack => Look::line("#7a2e8a", 1.1),
        LineKind::Unknown => Look::dashed("#c2185b", 1.2, &[0.3, 1.6]),
    }
}

/// The plan of a roof as SVG, x to the right and y up the page: planes with their panels numbered in the order of the layout and marked as in
/// its length list, an arrow down each slope, and the lines by kind with a legend of those that occur.
///
/// `laid` has one entry for each plane of the roof, `None` where it is not laid. `figure` is the greatest width and height of the drawn roof on paper.
///
/// ```
/// use seamwright::export::{PaperUnit, roof_plan_svg};
/// use seamwright::record::Calculation;
/// use seamwright::roof::{PlaneInput, RoofInput, Shape, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let outer = vec![v(0, 0, 8), v(20, 0, 8), v(20, 10, 13), v(0, 10, 13)];
/// let shed = PlaneInput { name: "shed".into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
/// let roof = RoofInput::new(vec![shed]).compute()?;
/// let svg = roof_plan_svg("shed", &roof, &[None], Length::micrometres(180_000), PaperUnit::Inch)?;
/// assert!(svg.contains("eave") && svg.contains("high edge"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
///
/// # Errors
/// [`ErrorKind::Conflict`] where `laid` does not fit the planes, [`ErrorKind::OutOfRange`] for a figure of zero or less, [`ErrorKind::Overflow`] for panels
/// beyond the range of lengths.
pub fn roof_plan_svg(name: &str, roof: &Roof, laid: &[Option<&LaidPlane>], figure: Length, paper: PaperUnit) -> Result<String, Error> {
    if laid.len() != roof.planes().len() {
        return Err(Error::new(ErrorKind::Conflict, "one entry for each plane of the roof is needed")
            .at("laid")
            .value_of(laid.len())
            .accepts(roof.planes().len().to_string()));
    }
    let figure = figure.positive("figure")?.mm();
    let (mut low, mut high) = ((f64::INFINITY, f64::INFINITY), (f64::NEG_INFINITY, f64::NEG_INFINITY));
    for p in roof.planes().iter().flat_map(|p| p.plan().outer()) {
        low = (low.0.min(p.x.mm()), low.1.min(p.y.mm()));
        high = (high.0.max(p.x.mm()), high.1.max(p.y.mm()));
    }
    let scale = figure / (high.0 - low.0).max(high.1 - low.1);
    let kinds: Vec<LineKind> = LineKind::ALL.iter().copied().filter(|k| roof.lines_of(*k).next().is_some()).collect();
    let note = "Panels: number on the plane, mark of the length list. Arrows point down the slope.";
    let legend_width = kinds.iter().map(|k| 18.0 + text_width(k.name(), LABEL)).fold(text_width(note, LABEL), f64::max);
    let (width, height) = ((high.0 - low.0) * scale, (high.1 - low.1) * scale);
    let inner = legend_width.max(width).max(text_width(name, TITLE));
    let head = MARGIN + TITLE + 4.0;
    let foot = head + height + 5.0;
    let shift = MARGIN + (inner - width) / 2.0;
    let map = |p: Point| ((p.0 - low.0) * scale + shift, (high.1 - p.1) * scale + head);
    let rows = f64::from(u32::try_from(kinds.len()).unwrap_or(u32::MAX)) + 1.0;

    // Everything that can fail comes before the first stroke.
    let mut rings = Vec::new();
    for (plane, laid) in roof.planes().iter().zip(laid) {
        let mut of_plane = Vec::new();
        for panel in laid.iter().flat_map(|l| &l.panels) {
            of_plane.push(panel_ring(plane, panel)?);
        }
        rings.push(of_plane);
    }

    let mut svg = Svg::new(inner + 2.0 * MARGIN, foot + rows * ROW + MARGIN, paper, name);
    svg.group("name", Look::area(INK), |svg| svg.text((MARGIN, MARGIN + TITLE * 0.8), TITLE, Anchor::Start, 0.0, name));
    for ((plane, laid), rings) in roof.planes().iter().zip(laid).zip(&rings) {
        svg.group(plane.name(), Look { stroke: QUIET, width: 0.1, dashes: &[], fill: "#f4f6f7" }, |svg| {
            for ring in plane.plan().rings().take(1) {
                svg.polyline(&ring.iter().map(|p| map((p.x.mm(), p.y.mm()))).collect::<Vec<_>>(), true);
            }
        });
        svg.group("panels", Look { stroke: QUIET, width: 0.12, dashes: &[], fill: "#e3e8eb" }, |svg| {
            for ring in rings {
                svg.polyline(&ring.iter().map(|p| map(*p)).collect::<Vec<_>>(), true);
            }
        });
        svg.group("openings", Look { stroke: QUIET, width: 0.1, dashes: &[], fill: "#ffffff" }, |svg| {
            for ring in plane.plan().holes() {
                svg.polyline(&ring.iter().map(|p| map((p.x.mm(), p.y.mm()))).collect::<Vec<_>>(), true);
            }
        });
        svg.group("panel numbers", Look::area(INK), |svg| {
            let panels = laid.iter().flat_map(|l| l.panels.iter().map(move |p| l.mark_of(p).unwrap_or("")));
            let turned = readable(-plane.down_slope().degrees());
            for ((number, mark), (ring, panel)) in (1_usize..).zip(panels).zip(rings.iter().zip(laid.iter().flat_map(|l| &l.panels))) {
                let ring: Vec<Point> = ring.iter().map(|p| map(*p)).collect();
                let text = format!("{number} {mark}");
                let (middle, size) = fitted(&ring, panel.lower.len(), &text, turned, name_area(plane, map(middle(plane))));
                let (down, right) = (num::cos_deg(turned) * size * 0.35, num::sin_deg(turned) * size * 0.35);
                svg.text((middle.0 - right, middle.1 + down), size, Anchor::Middle, turned, &text);
            }
        });
    }
    for kind in &kinds {
        svg.group(kind.name(), look(*kind), |svg| {
            for line in roof.lines_of(*kind) {
                svg.line(map((line.start.x.mm(), line.start.y.mm())), map((line.end.x.mm(), line.end.y.mm())));
            }
        });
    }
    for plane in roof.planes() {
        let at = map(middle(plane));
        let down = plane.down_slope();
        let way = (down.cos(), -down.sin());
        let area = name_area(plane, at);
        let box_half = at.0 - area.low.0;
        svg.group("plane name", Look::area("#ffffff"), |svg| {
            svg.polyline(&[area.low, (area.high.0, area.low.1), area.high, (area.low.0, area.high.1)], true);
        });
        svg.group("plane name", Look::area(INK), |svg| svg.text((at.0, at.1 + LABEL * 0.36), LABEL, Anchor::Middle, 0.0, &plane_label(plane)));
        svg.group("down the slope", Look::line(INK, 0.4), |svg| {
            // From the rim of the name's box, so that it does not run through the name.
            let out = (box_half / way.0.abs().max(1e-9)).min(NAME_HALF / way.1.abs().max(1e-9));
            let from = (at.0 + way.0 * out, at.1 + way.1 * out);
            let to = (from.0 + way.0 * 8.0, from.1 + way.1 * 8.0);
            svg.line(from, to);
            let barb = |side: f64| (to.0 - way.0 * 2.0 + way.1 * side, to.1 - way.1 * 2.0 - way.0 * side);
            svg.polyline(&[barb(1.0), to, barb(-1.0)], false);
        });
    }
    for (row, kind) in (1_u32..).zip(&kinds) {
        let y = foot + ROW * f64::from(row) - 1.2;
        svg.group("legend", look(*kind), |svg| svg.line((MARGIN, y - 1.0), (MARGIN + 14.0, y - 1.0)));
        svg.group("legend", Look::area(INK), |svg| svg.text((MARGIN + 17.0, y), LABEL, Anchor::Start, 0.0, kind.name()));
    }
    svg.group("note", Look::area(QUIET), |svg| svg.text((MARGIN, foot + ROW * rows - 0.8), LABEL, Anchor::Start, 0.0, note));
    Ok(svg.finish())
}

/// Between junction lines, in plan, counter-clockwise as seen from above: along the lower end to the right, back along the upper.
pub(super) fn panel_ring(plane: &Plane, panel: &LaidPanel) -> Result<Vec<Point>, Error> {
    let lower = panel.lower.iter().flat_map(|e| [e.left, e.right]);
    let upper = panel.upper.iter().rev().flat_map(|e| [e.right, e.left]);
    lower.chain(upper).map(|p| plane.to_space(p).map(|v| (v.x.mm(), v.y.mm()))).collect()
}

fn plane_label(plane: &Plane) -> String {
    format!("{}, {}", plane.name(), plane.pitch())
}

/// The box behind a plane's name, about this point of the paper.
fn name_area(plane: &Plane, at: Point) -> Area {
    Area::about(at, text_width(&plane_label(plane), LABEL) + 2.0, 2.0 * NAME_HALF)
}

/// Where a panel's text lies within the panel and off the plane's name, and how large: the first place from the foot up, at the largest size that has one.
fn fitted(ring: &[Point], lower_parts: usize, text: &str, turned: f64, name: Area) -> (Point, f64) {
    const SIZES: [f64; 6] = [2.2, 1.9, 1.6, 1.3, 1.0, 0.8];
    const PLACES: [f64; 7] = [0.22, 0.3, 0.4, 0.6, 0.7, 0.8, 0.5];
    let (lower, upper) = ring.split_at((2 * lower_parts).min(ring.len()));
    let mean = |points: &[Point]| {
        let count = points.iter().fold(0.0, |n, _| n + 1.0_f64).max(1.0);
        (points.iter().map(|p| p.0).sum::<f64>() / count, points.iter().map(|p| p.1).sum::<f64>() / count)
    };
    let (foot, head) = (mean(lower), mean(upper));
    // The mean of the corners is where a three-cornered panel is roomiest.
    let places = PLACES.iter().map(|t| (foot.0 + (head.0 - foot.0) * t, foot.1 + (head.1 - foot.1) * t)).chain([mean(ring)]);
    let (cos, sin) = (num::cos_deg(turned), num::sin_deg(turned));
    for size in SIZES {
        // Clear of the lines round the panel, too.
        let (along, across) = (text_width(text, size) / 2.0 + 0.5, size * 0.45 + 0.2);
        for at in places.clone() {
            let corner = |(a, c): (f64, f64)| (at.0 + a * cos - c * sin, at.1 + a * sin + c * cos);
            let corners = [(-along, -across), (along, -across), (along, across), (-along, across)].map(corner);
            let mut area = Area::EMPTY;
            corners.iter().for_each(|c| area.cover(*c));
            if corners.iter().all(|c| is_within(ring, *c)) && !area.meets(&name) {
                return (at, size);
            }
        }
    }
    (mean(ring), SIZES.last().copied().unwrap_or(LABEL))
}

/// Whether a point is within a ring.
fn is_within(ring: &[Point], p: Point) -> bool {
    ring.iter().zip(ring.iter().cycle().skip(1)).filter(|(a, b)| (a.1 > p.1) != (b.1 > p.1) && p.0 < a.0 + (b.0 - a.0) * (p.1 - a.1) / (b.1 - a.1)).count() % 2
        == 1
}

/// A turn of text, clockwise, so that it is never upside down.
fn readable(turned: f64) -> f64 {
    let mut t = turned;
    while t >= 90.0 {
        t -= 180.0;
    }
    while t < -90.0 {
        t += 180.0;
    }
    t
}

/// The centre of the outer ring's area.
fn middle(plane: &Plane) -> Point {
    let ring: Vec<Point> = plane.plan().outer().iter().map(|p| (p.x.mm(), p.y.mm())).collect();
    let first = ring.first().copied().unwrap_or_default();
    let (mut area, mut x, mut y) = (0.0, 0.0, 0.0);
    for (p, q) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (p, q) = ((p.0 - first.0, p.1 - first.1), (q.0 - first.0, q.1 - first.1));
        let cross = p.0 * q.1 - q.0 * p.1;
        area += cross;
        x += (p.0 + q.0) * cross;
        y += (p.1 + q.1) * cross;
    }
    (first.0 + x / (3.0 * area), first.1 + y / (3.0 * area))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::{EdgeUse, Layout, Start};
    use crate::panel::{Panel, PanelEnd, Seam};
    use crate::pitch::Pitch;
    use crate::record::Calculation;
    use crate::roof::{PlaneInput, RoofInput, Shape, Vertex};
    use crate::units::{Angle, AreaUnit};

    fn hip() -> (Roof, Vec<LaidPlane>) {
        let p = |(x, y): (i16, i16)| crate::roof::Point::new(Length::feet(x), Length::feet(y));
        let plane = |name: &str, outer: &[(i16, i16)], fall: f64, at: (i16, i16)| PlaneInput {
            name: name.into(),
            shape: Shape::Plan {
                outer: outer.iter().copied().map(p).collect(),
                holes: vec![],
                pitch: Pitch::parse("6:12").unwrap(),
                down_slope: Angle::degrees_from(fall).unwrap(),
                anchor: Vertex::new(Length::feet(at.0), Length::feet(at.1), Length::feet(9)),
            },
        };
        let roof = RoofInput::new(vec![
            plane("south", &[(0, 0), (40, 0), (30, 10), (10, 10)], 270.0, (0, 0)),
            plane("east", &[(40, 0), (40, 20), (30, 10)], 0.0, (40, 0)),
            plane("north", &[(40, 20), (0, 20), (10, 10), (30, 10)], 90.0, (0, 20)),
            plane("west", &[(0, 20), (0, 0), (10, 10)], 180.0, (0, 0)),
        ])
        .compute()
        .unwrap();
        let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) }).unwrap();
        let lay = |plane: &Plane| {
            let end = |_: &crate::roof::Edge| EdgeUse::End(PanelEnd::hold_back(Length::ZERO));
            Layout::new(plane.outline().clone(), panel, Start::Left, end).unwrap().compute().unwrap()
        };
        let laid = roof.planes().iter().map(lay).collect();
        (roof, laid)
    }

    #[test]
    fn panels_in_plan_cover_what_the_layout_says_that_they_cover() {
        let (roof, laid) = hip();
        for (plane, laid) in roof.planes().iter().zip(&laid) {
            let twice: f64 = laid
                .panels
                .iter()
                .map(|panel| {
                    let ring = panel_ring(plane, panel).unwrap();
                    ring.iter().zip(ring.iter().cycle().skip(1)).map(|(p, q)| p.0 * q.1 - q.0 * p.1).sum::<f64>()
                })
                .sum();
            // 6:12 is longer than its plan by the root of 1.25.
            let true_area = twice / 2.0 * 1.25_f64.sqrt() * 1e-6;
            let covered = laid.covered.get(AreaUnit::SquareMetre);
            assert!((true_area - covered).abs() < 1e-6 * covered, "{true_area} {covered}");
        }
    }

    #[test]
    fn a_plan_shows_every_panel_and_the_kinds_that_occur() {
        let (roof, laid) = hip();
        let all: Vec<Option<&LaidPlane>> = laid.iter().map(Some).collect();
        let draw = || roof_plan_svg("hip <house>", &roof, &all, Length::micrometres(180_000), PaperUnit::Millimetre).unwrap();
        let svg = draw();
        assert_eq!(svg, draw());
        let panels: usize = laid.iter().map(|l| l.panels.len()).sum();
        // A polygon for each panel, and for each plane its own and the one behind its name.
        assert_eq!(svg.matches("<polygon").count(), panels + 8);
        assert_eq!(svg.matches(">legend<").count(), 2 * 3);
        assert!(svg.contains(">ridge</text>") && svg.contains(">hip</text>") && svg.contains(">eave</text>") && !svg.contains(">valley</text>"));
        assert!(svg.contains(">1 "));
        assert!(!svg.contains("NaN") && !svg.contains("inf"));
    }

    #[test]
    fn a_layout_too_few_is_refused() {
        let (roof, _) = hip();
        let error = roof_plan_svg("x", &roof, &[None], Length::feet(1), PaperUnit::Inch).unwrap_err();
        assert_eq!((error.kind(), error.path()), (ErrorKind::Conflict, "laid"));
        assert_eq!(roof_plan_svg("x", &roof, &[None; 4], Length::ZERO, PaperUnit::Inch).unwrap_err().path(), "figure");
    }

    #[test]
    fn a_text_lies_within_its_panel_and_off_the_name() {
        let tall = [(0.0, 30.0), (5.0, 30.0), (5.0, 0.0), (0.0, 0.0)];
        let nowhere = Area::about((-50.0, -50.0), 1.0, 1.0);
        let (at, size) = fitted(&tall, 1, "7 B", -90.0, nowhere);
        assert!((at.0 - 2.5).abs() < 1e-12 && (at.1 - 23.4).abs() < 1e-12 && (size - 2.2).abs() < 1e-12);
        // A name over the foot sends the text up the panel.
        let name = Area::about((2.5, 22.0), 20.0, 12.0);
        let (moved, size) = fitted(&tall, 1, "7 B", -90.0, name);
        assert!(moved.1 < 16.0 - size / 2.0, "{moved:?}");
        // A corner panel has room for small text only.
        let corner = [(0.0, 5.0), (5.0, 5.0), (5.0, 0.0), (5.0, 0.0)];
        let (at, size) = fitted(&corner, 1, "30 H", -90.0, nowhere);
        assert!(size < 2.2 && is_within(&corner, at), "{at:?} {size}");
    }

    #[test]
    fn text_is_never_upside_down() {
        for turned in [-360.0, -270.0, -180.0, -90.0, 0.0, 45.0, 91.0, 270.0] {
            let r = readable(turned);
            assert!((-90.0..90.0).contains(&r), "{turned} {r}");
        }
    }
}
