//! A section's scene in ink: what is drawn over what, and in which lines, so that it reads in black and white.

use super::section_balloons::RADIUS;
use super::section_dims;
use super::section_marks::Mark;
use super::section_metal::{Piece, SHEET};
use super::section_scene::{LABEL, Scene};
use super::svg::{Anchor, Go, Look, Point, Svg};
use crate::num;

const INK: &str = "#000000";
const METAL: &str = "#000000";
const CLOSURE: &str = "#6f6f6f";
const TAPE: &str = "#c9c9c9";
const PAN: &str = "#2b5f8c";
const SEAM: &str = "#e4ecf3";
const QUIET: &str = "#4a4a4a";
const HATCH: &str = "#9a9a9a";
/// Width of the white line about each piece of metal.
const APART: f64 = 0.12;

/// Draws a scene; trims that are cleats are grey.
pub(super) fn draw(svg: &mut Svg, scene: &Scene, is_cleat: impl Fn(usize) -> bool, map: impl Fn(Point) -> Point + Copy) {
    draw_ground(svg, scene, map);
    draw_metal(svg, scene, is_cleat, map);
    draw_marks(svg, scene, map);
    draw_line(svg, map);
    draw_rows(svg, scene, map);
    draw_slopes(svg, scene, map);
    draw_balloons(svg, scene, map);
}

fn draw_ground(svg: &mut Svg, scene: &Scene, map: impl Fn(Point) -> Point) {
    for band in &scene.bands {
        svg.group(band.name, Look { stroke: HATCH, width: 0.13, dashes: &[], fill: "#ffffff" }, |svg| {
            svg.polyline(&band.ring.iter().map(|p| map(*p)).collect::<Vec<_>>(), true);
            for (from, to) in &band.hatch {
                svg.line(map(*from), map(*to));
            }
        });
        svg.group("face", Look::line(INK, 0.35), |svg| {
            if let (Some(from), Some(to)) = (band.ring.first(), band.ring.get(1)) {
                svg.line(map(*from), map(*to));
            }
        });
    }
    svg.group("of others", Look { stroke: HATCH, width: 0.2, dashes: &[], fill: "#ffffff" }, |svg| {
        for neighbour in scene.neighbours.iter().filter(|n| !n.ring.is_empty() && !n.is_before) {
            svg.polyline(&neighbour.ring.iter().map(|p| map(*p)).collect::<Vec<_>>(), true);
            for (from, to) in &neighbour.hatch {
                svg.line(map(*from), map(*to));
            }
        }
    });
    svg.group("edges of others", Look::dashed(QUIET, 0.35, &[3.0, 1.2]), |svg| {
        for (from, to) in scene.neighbours.iter().flat_map(|n| &n.edges) {
            svg.line(map(*from), map(*to));
        }
    });
    svg.group("seams", Look { stroke: PAN, width: 0.15, dashes: &[], fill: SEAM }, |svg| {
        for panel in scene.panels.iter().filter(|p| !p.seam.is_empty()) {
            svg.polyline(&panel.seam.iter().map(|p| map(*p)).collect::<Vec<_>>(), true);
        }
    });
    if scene.neighbours.iter().any(|n| n.is_before) {
        svg.group("before the seams", Look { stroke: QUIET, width: 0.3, dashes: &[], fill: "#ffffff" }, |svg| {
            for neighbour in scene.neighbours.iter().filter(|n| n.is_before) {
                svg.polyline(&neighbour.ring.iter().map(|p| map(*p)).collect::<Vec<_>>(), true);
            }
        });
    }
    svg.group("breaks", Look::line(QUIET, 0.2), |svg| {
        for line in &scene.breaks {
            svg.polyline(&line.iter().map(|p| map(*p)).collect::<Vec<_>>(), false);
        }
    });
    svg.group("underlayment", Look::dashed(QUIET, 0.3, &[2.2, 1.0]), |svg| {
        for line in &scene.underlayment {
            svg.polyline(&line.iter().map(|p| map(*p)).collect::<Vec<_>>(), false);
        }
    });
}

fn draw_metal(svg: &mut Svg, scene: &Scene, is_cleat: impl Fn(usize) -> bool, map: impl Fn(Point) -> Point) {
    let is_grey = |piece: Piece| match piece {
        Piece::Trim(i) => is_cleat(i),
        Piece::Closure(_) | Piece::Cleat(_) => true,
    };
    svg.group("panels", Look::line(PAN, SHEET), |svg| {
        for panel in &scene.panels {
            svg.polyline(&panel.pan.iter().map(|p| map(*p)).collect::<Vec<_>>(), false);
        }
    });
    let ring = |svg: &mut Svg, points: &[Point]| svg.polyline(&points.iter().map(|p| map(*p)).collect::<Vec<_>>(), true);
    let is_perforated = |piece: Piece| scene.is_vented && matches!(piece, Piece::Closure(_));
    svg.group("closures and cleats", Look { stroke: "#ffffff", width: APART, dashes: &[], fill: CLOSURE }, |svg| {
        for metal in scene.metal.iter().filter(|m| is_grey(m.piece) && !is_perforated(m.piece)) {
            ring(svg, &metal.outline);
        }
    });
    svg.group("perforated closures", Look { stroke: METAL, width: 0.2, dashes: &[0.7, 0.5], fill: "#ffffff" }, |svg| {
        for metal in scene.metal.iter().filter(|m| is_perforated(m.piece)) {
            ring(svg, &metal.outline);
        }
    });
    svg.group("trims", Look { stroke: "#ffffff", width: APART, dashes: &[], fill: METAL }, |svg| {
        for metal in scene.metal.iter().filter(|m| !is_grey(m.piece)) {
            ring(svg, &metal.outline);
        }
    });
}

fn draw_marks(svg: &mut Svg, scene: &Scene, map: impl Fn(Point) -> Point) {
    svg.group("tape", Look { stroke: INK, width: 0.15, dashes: &[], fill: TAPE }, |svg| {
        for mark in &scene.marks {
            if let Mark::Tape(ring) = mark {
                svg.polyline(&ring.iter().map(|p| map(*p)).collect::<Vec<_>>(), true);
            }
        }
    });
    svg.group("beads", Look { stroke: INK, width: 0.2, dashes: &[], fill: TAPE }, |svg| {
        for mark in &scene.marks {
            if let Mark::Bead { at, radius } = mark {
                svg.circle(map(*at), *radius);
            }
        }
    });
    svg.group("fasteners", Look::line(INK, 0.45), |svg| {
        for mark in &scene.marks {
            if let Mark::Fastener { head, point, rivet } = mark {
                let l = num::hypot(point.0 - head.0, point.1 - head.1);
                let (x, y) = if l > 0.0 { ((point.0 - head.0) / l, (point.1 - head.1) / l) } else { (0.0, -1.0) };
                let on = |forward: f64, aside: f64| map((head.0 + x * forward - y * aside, head.1 + y * forward + x * aside));
                svg.line(on(0.0, 0.0), on(l, 0.0));
                if *rivet {
                    svg.polyline(&[on(-0.1, -1.0), on(-0.8, -0.5), on(-0.8, 0.5), on(-0.1, 1.0)], true);
                } else {
                    svg.polyline(&[on(-0.3, -1.2), on(-0.3, 1.2)], false);
                    svg.polyline(&[on(l - 0.9, -0.5), on(l, 0.0), on(l - 0.9, 0.5)], false);
                }
            }
        }
    });
}

/// The junction line, which runs square into the paper.
fn draw_line(svg: &mut Svg, map: impl Fn(Point) -> Point) {
    svg.group("junction line", Look { stroke: INK, width: 0.25, dashes: &[], fill: "#ffffff" }, |svg| {
        svg.circle(map((0.0, 0.0)), 1.1);
        svg.line(map((-1.9, 0.0)), map((1.9, 0.0)));
        svg.line(map((0.0, -1.9)), map((0.0, 1.9)));
    });
}

fn draw_rows(svg: &mut Svg, scene: &Scene, map: impl Fn(Point) -> Point) {
    svg.group("witness lines", Look::line(QUIET, 0.13), |svg| {
        for witness in scene.rows.iter().flat_map(|r| &r.witnesses) {
            svg.polyline(&witness.map(&map), false);
        }
    });
    svg.group("dimension lines", Look::line(INK, 0.2), |svg| {
        for bar in scene.rows.iter().flat_map(|r| &r.bars) {
            svg.line(map(bar.ends.0), map(bar.ends.1));
        }
    });
    svg.group("marks", Look::area(INK), |svg| {
        for bar in scene.rows.iter().flat_map(|r| &r.bars) {
            svg.circle(map(bar.origin), 0.75);
            for tick in &bar.ticks {
                svg.circle(map(*tick), 0.45);
            }
        }
    });
    // Words stand clear of what they are written over.
    svg.group("distances' room", Look::area("#ffffff"), |svg| {
        for figure in scene.rows.iter().flat_map(|r| &r.figures) {
            let [(a, b), (c, d)] = figure.edges;
            svg.polyline(&[a, b, d, c].map(&map), true);
        }
    });
    svg.group("distances", Look::area(INK), |svg| {
        for figure in scene.rows.iter().flat_map(|r| &r.figures) {
            // The base line lies a third of the size below the middle of the text.
            let down = (num::sin_deg(figure.turned), -num::cos_deg(figure.turned));
            let at = (figure.at.0 + down.0 * section_dims::TEXT * 0.35, figure.at.1 + down.1 * section_dims::TEXT * 0.35);
            let anchor = if figure.ends_here { Anchor::End } else { Anchor::Start };
            svg.narrow_text(map(at), section_dims::TEXT, anchor, -figure.turned, &figure.text);
        }
    });
}

fn draw_slopes(svg: &mut Svg, scene: &Scene, map: impl Fn(Point) -> Point) {
    svg.group("pitch", Look::line(INK, 0.25), |svg| {
        for slope in &scene.slopes {
            svg.polyline(&slope.corners.map(&map), true);
        }
    });
    svg.group("pitch figures", Look::area(INK), |svg| {
        for (at, text) in scene.slopes.iter().flat_map(|s| [&s.run, &s.rise]) {
            svg.narrow_text(map(*at), LABEL, Anchor::Middle, 0.0, text);
        }
    });
}

fn draw_balloons(svg: &mut Svg, scene: &Scene, map: impl Fn(Point) -> Point) {
    let all = || scene.balloons.iter().chain(&scene.labels);
    svg.group("leaders' room", Look::line("#ffffff", 0.6), |svg| {
        for placed in all() {
            let (from, to) = placed.leader;
            let share = |t: f64| (from.0 + (to.0 - from.0) * t, from.1 + (to.1 - from.1) * t);
            svg.line(map(share(0.25)), map(to));
        }
    });
    svg.group("leaders", Look { stroke: INK, width: 0.18, dashes: &[], fill: INK }, |svg| {
        for placed in all() {
            svg.path(&[Go::Move(map(placed.leader.0)), Go::Line(map(placed.leader.1))]);
            svg.circle(map(placed.leader.0), 0.4);
        }
    });
    svg.group("balloons", Look { stroke: INK, width: 0.25, dashes: &[], fill: "#ffffff" }, |svg| {
        for placed in &scene.balloons {
            svg.circle(map(placed.centre()), RADIUS);
        }
    });
    svg.group("numbers", Look::area(INK), |svg| {
        for placed in all() {
            let at = map(placed.centre());
            svg.narrow_text((at.0, at.1 + LABEL * 0.36), LABEL, Anchor::Middle, 0.0, &placed.text);
        }
    });
}
