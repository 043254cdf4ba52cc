//! What stands on a plan of the roof beside its lines: walls with a coping, and pipes.

use super::plan_box::Turned;
use super::plan_text::{Beside, Sheet, Text};
use super::svg::{Look, Point, Svg};
use crate::error::Error;
use crate::job::Packet;
use crate::num;

const COPING: Look = Look { stroke: "#3b4a54", width: 0.25, dashes: &[], fill: "#c9ced2" };
const PIPE: Look = Look { stroke: "#1b1b1b", width: 0.35, dashes: &[], fill: "#ffffff" };
/// No circle is drawn smaller: it could not be seen.
const SEEN: f64 = 0.9;
const SIZE: f64 = 2.1;

/// One of them, in millimetres of the roof's plan.
#[derive(Debug, Clone)]
pub(super) enum PlanMark {
    /// The top of a wall, by its corners.
    Coping { name: String, ring: [Point; 4] },
    /// A pipe, by its middle and half its diameter.
    Pipe { name: String, at: Point, half: f64 },
}

/// Those of a packet.
pub(super) fn of(packet: &Packet) -> Result<Vec<PlanMark>, Error> {
    let mut out = Vec::new();
    for coping in &packet.copings {
        let (a, b) = ((coping.run.start.x.mm(), coping.run.start.y.mm()), (coping.run.end.x.mm(), coping.run.end.y.mm()));
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let long = num::hypot(dx, dy);
        // The roof lies on the left of the outer edge.
        let t = coping.coping.thickness.mm() / long;
        let inward = |p: Point| (p.0 - dy * t, p.1 + dx * t);
        out.push(PlanMark::Coping { name: coping.name.clone(), ring: [a, b, inward(b), inward(a)] });
    }
    for pipe in &packet.pipes {
        let at = (pipe.at.x.mm(), pipe.at.y.mm());
        out.push(PlanMark::Pipe { name: pipe.name.clone(), at, half: pipe.pipe.diameter.mm() / 2.0 });
    }
    Ok(out)
}

/// A mark on paper.
pub(super) struct Drawn {
    shape: Shape,
    pub(super) text: Text,
}

enum Shape {
    Ring([Point; 4]),
    Circle(Point, f64),
}

impl Drawn {
    /// The corners that the paper must hold.
    pub(super) fn corners(&self) -> Vec<Point> {
        match self.shape {
            Shape::Ring(ring) => ring.to_vec(),
            Shape::Circle(at, half) => vec![(at.0 - half, at.1 - half), (at.0 + half, at.1 + half)],
        }
    }

    pub(super) fn ink(&self, svg: &mut Svg, at: &impl Fn(Point) -> Point) {
        match self.shape {
            Shape::Ring(ring) => svg.group("coping", COPING, |svg| svg.polyline(&ring.map(at), true)),
            Shape::Circle(middle, half) => svg.group("pipe", PIPE, |svg| svg.circle(at(middle), half)),
        }
    }
}

/// Every mark with its name beside it, which then takes its place on the sheet.
pub(super) fn place(marks: &[PlanMark], sheet: &mut Sheet, to_paper: &dyn Fn(Point) -> Point, scale: f64) -> Vec<Drawn> {
    let mut out = Vec::with_capacity(marks.len());
    for mark in marks {
        let (shape, name, anchor, towards) = match mark {
            PlanMark::Coping { name, ring } => {
                let ring = ring.map(to_paper);
                let [a, b, ..] = ring;
                (Shape::Ring(ring), name, ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0), num::atan2_deg(b.0 - a.0, a.1 - b.1))
            }
            PlanMark::Pipe { name, at, half } => {
                let (at, half) = (to_paper(*at), (half * scale).max(SEEN));
                (Shape::Circle(at, half), name, at, -45.0)
            }
        };
        let text = sheet.stand_off(anchor, &Beside::new(name, SIZE, towards));
        let text = text.unwrap_or_else(|| Text { text: name.clone(), size: SIZE, place: Turned::text(anchor, name, SIZE, 0.0), leader: None });
        sheet.take(&text);
        out.push(Drawn { shape, text });
    }
    out
}
