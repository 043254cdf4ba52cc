//! A junction's section laid out at a scale: everything that is drawn, in millimetres of paper, y upwards.

use super::fold::Point;
use super::labels::Area;
use super::section_adjoining::{self, Neighbour};
use super::section_axis::{Axes, Axis, Other, SectionPlane};
use super::section_balloons::{self, Figure, Placed, RADIUS, Wanted};
use super::section_dims::{self, LineRead, Row, Struck};
use super::section_ground::{self, Band, DECK};
use super::section_marks::{Ground, Mark};
use super::section_metal::{self, Metal, Piece};
use super::section_panel::{self, Cut, Layers, Panel};
use super::svg::narrow_width;
use crate::error::Error;
use crate::junction::{Adjoining, Side, Solved};
use crate::num;
use crate::panel::PanelEnd;
use crate::units::LengthFormat;

/// Size of labels.
pub(super) const LABEL: f64 = 3.6;
/// Kept about everything.
const EDGE: f64 = 0.6;
/// What must be seen of a plane beyond the last thing on it, in true millimetres.
const BEYOND: f64 = 55.0;
/// What must be seen of a plane at the least, in true millimetres.
const LEAST: f64 = 130.0;

/// What a number in a balloon points at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Target {
    Trim(usize),
    Along(usize),
    Panel(Side),
    Adjoining(usize),
    /// The boot of the pipe at this place.
    Boot(usize),
}

/// A numbered part: its number and everything that it points at.
#[derive(Debug, Clone)]
pub(super) struct Numbered {
    pub(super) number: String,
    pub(super) targets: Vec<Target>,
}

/// What is laid out.
pub(super) struct Asked<'a> {
    pub(super) solved: &'a Solved,
    pub(super) first: &'a SectionPlane,
    pub(super) other: &'a Other,
    pub(super) axes: Axes,
    pub(super) format: LengthFormat,
    pub(super) reads: &'a [LineRead],
    pub(super) parts: &'a [Numbered],
    pub(super) letters: &'a [String],
}

/// The pitch of a plane as a triangle with its figures.
#[derive(Debug, Clone)]
pub(super) struct Slope {
    pub(super) corners: [Point; 3],
    pub(super) run: (Point, String),
    pub(super) rise: (Point, String),
}

/// A section as laid out.
pub(super) struct Scene {
    pub(super) bands: Vec<Band>,
    pub(super) underlayment: Vec<Vec<Point>>,
    /// Where the drawing breaks off.
    pub(super) breaks: Vec<Vec<Point>>,
    pub(super) panels: Vec<Panel>,
    pub(super) metal: Vec<Metal>,
    pub(super) marks: Vec<Mark>,
    /// What others build there.
    pub(super) neighbours: Vec<Neighbour>,
    /// Whether the closures are perforated.
    pub(super) is_vented: bool,
    /// Where a leader may point at each mark, by its place among what lies along the line.
    handles: Vec<(usize, Point)>,
    pub(super) rows: Vec<Row>,
    pub(super) slopes: Vec<Slope>,
    pub(super) balloons: Vec<Placed>,
    pub(super) labels: Vec<Placed>,
    pub(super) area: Area,
}

/// One side's plane on its axis.
struct PlaneSide<'a> {
    side: Side,
    axis: Axis,
    plane: &'a SectionPlane,
    layers: Layers,
    far: f64,
}

impl<'a> Asked<'a> {
    /// With its axes on paper at so many millimetres of it a millimetre.
    pub(super) fn at_scale(&self, scale: f64) -> Asked<'a> {
        Asked { axes: self.axes.scaled(scale), ..*self }
    }
}

impl Asked<'_> {
    fn planes(&self, scale: f64) -> Vec<PlaneSide<'_>> {
        if *self.other == Other::WallTop {
            return Vec::new();
        }
        let mut out = vec![(Side::First, self.axes.first, self.first)];
        if let (Other::Plane(plane), Some(axis)) = (self.other, self.axes.second) {
            out.push((Side::Second, axis, plane));
        }
        out.into_iter()
            .map(|(side, axis, plane)| {
                let far = axis.panels * self.far(side, &axis, scale);
                PlaneSide { side, axis, plane, layers: Layers::of(&plane.levels, scale), far }
            })
            .collect()
    }

    fn around_pipe(&self, planes: &[PlaneSide<'_>], scale: f64) -> Vec<Panel> {
        let hole = self.solved.adjoining.iter().find_map(|a| if let Adjoining::Pipe { hole, .. } = a { Some(*hole) } else { None });
        let Some(hole) = hole else { return Vec::new() };
        let edge = |p: &PlaneSide<'_>| PanelEnd::hold_back(if p.side == Side::First { hole.0 } else { hole.1 });
        planes.iter().map(|p| section_panel::panel(&p.axis, (p.side, &edge(p)), (&p.layers, Cut::Along), &[], p.far, scale)).collect()
    }

    /// How far a side is drawn from the line.
    fn far(&self, side: Side, axis: &Axis, scale: f64) -> f64 {
        let trims = self.solved.trims.iter().flat_map(|t| &t.corners).map(|c| axis.of(super::section_axis::on_paper(*c, scale)).0);
        let along = self.solved.along.iter().filter(|a| a.side == side).map(|a| axis.place(a.from_line, scale));
        let lines = self.solved.lines.iter().filter(|l| l.side == side).map(|l| axis.place(l.from_line, scale));
        let end = self.solved.end(side).map(|e| section_panel::end_at(e, axis, scale) + axis.panels * e.fold.mm() * scale);
        let most = trims.chain(along).chain(lines).chain(end).map(|a| a * axis.panels).fold(0.0, f64::max);
        (most + BEYOND * scale).max(LEAST * scale)
    }

    fn cut(&self) -> Cut {
        match (self.first.rise.degrees() == 0.0, self.other) {
            (true, Other::Fascia { .. }) => Cut::AcrossOnLeg,
            (true, Other::Wall | Other::Nothing | Other::WallTop) => Cut::AcrossFlat,
            // On both sides of a joint along the seams.
            (true, Other::Plane(second)) if second.rise.degrees() == 0.0 => Cut::AcrossFlat,
            _ => Cut::Along,
        }
    }

    /// Whether dimensions stand over the roof: where it meets another plane in a hollow they stand under it, and so
    /// they do where it is so flat that they would stand in the way of a wall.
    fn over(&self) -> bool {
        match self.other {
            Other::Plane(_) if self.axes.riser.is_some() => true,
            Other::Plane(second) => second.rise.degrees() <= self.first.rise.degrees(),
            Other::Wall => self.first.rise.degrees() > 8.0,
            Other::Fascia { .. } | Other::WallTop | Other::Nothing => true,
        }
    }

    /// Lays everything out but the balloons, at so many millimetres of paper a millimetre.
    pub(super) fn lay(&self, scale: f64) -> Result<Scene, Error> {
        let planes = self.planes(scale);
        let mut metal = Vec::new();
        for (i, trim) in self.solved.trims.iter().enumerate() {
            metal.push(section_metal::trim(i, trim, scale)?);
        }
        let axes: Vec<Axis> = core::iter::once(self.axes.first).chain(self.axes.second).chain(self.axes.riser).collect();
        section_metal::part(&mut metal, &axes);
        for p in &planes {
            let cleats = section_panel::cleats(self.solved, &p.axis, p.side, &metal, scale);
            metal.extend(cleats);
        }
        let panels: Vec<Panel> = planes
            .iter()
            .filter_map(|p| Some(section_panel::panel(&p.axis, (p.side, self.solved.end(p.side)?), (&p.layers, self.cut()), &metal, p.far, scale)))
            .collect();
        // Around a pipe the panel has a hole and no end.
        let panels = if panels.is_empty() { self.around_pipe(&planes, scale) } else { panels };
        for p in &planes {
            metal.extend(section_panel::closures(self.solved, &p.axis, p.side, &p.layers, scale));
        }
        let mut marks = Vec::new();
        let mut handles = Vec::new();
        for (i, line) in self.solved.along.iter().enumerate() {
            let axis = self.axes.side(line.side);
            let is_wall = line.side == Side::Riser || (line.side == Side::Second && *self.other == Other::Wall);
            let panel = panels.iter().find(|p| p.side == line.side);
            let is_curb = self.solved.adjoining.iter().any(|a| matches!(a, Adjoining::JointCurbs { .. }));
            let ground = Ground { axis, metal: &metal, panel, trims: &self.solved.trims, scale, is_wall, is_curb };
            if let Some(mark) = ground.mark(line) {
                handles.push((i, mark.handle()));
                marks.push(mark);
            }
        }
        let slot = section_adjoining::slot(self.solved).mm() * scale;
        let neighbours = section_adjoining::neighbours(self.solved, &self.axes, self.other, &panels, &metal, scale);
        let extents: Vec<(Axis, f64)> = planes.iter().map(|p| (p.axis, p.far)).collect();
        let mut bands = section_ground::bands(&extents, slot, self.other, &self.axes, &metal);
        if let (Other::WallTop, Some(outside)) = (self.other, &self.axes.second) {
            bands.push(section_ground::wall_under(&self.axes.first, outside, &metal));
        }
        let underlayment = planes.iter().map(|p| section_ground::underlayment(&p.axis, &p.plane.levels, (p.far, slot), &metal, scale)).collect();

        let top = |p: &PlaneSide<'_>| {
            let seam = if self.cut() == Cut::Along { p.layers.seam } else { 0.0 };
            panels.iter().find(|q| q.side == p.side).map_or(0.0, |q| q.top + seam)
        };
        let breaks = planes.iter().map(|p| section_ground::broken(&p.axis, p.far, top(p))).collect();

        let mut scene = Scene {
            bands,
            underlayment,
            breaks,
            panels,
            metal,
            marks,
            neighbours,
            is_vented: self.solved.adjoining.iter().any(|a| matches!(a, Adjoining::VentSlot { .. })),
            handles,
            rows: Vec::new(),
            slopes: Vec::new(),
            balloons: Vec::new(),
            labels: Vec::new(),
            area: Area::EMPTY,
        };
        self.dimension(&mut scene, &planes, scale)?;
        self.slopes(&mut scene, &planes)?;
        scene.area = scene.extent();
        Ok(scene)
    }

    /// Puts the balloons and the label of the line in their places, within this width and height if there is room.
    pub(super) fn label(&self, scene: &mut Scene, width: f64, height: f64) {
        let mut figure = scene.figure();
        let area = scene.area;
        let (aside, over) = ((width - area.high.0 + area.low.0).max(0.0) / 2.0, (height - area.high.1 + area.low.1).max(0.0) / 2.0);
        // The scene's area has a margin of its own.
        figure.within = Some(Area { low: (area.low.0 - aside, area.low.1 - over), high: (area.high.0 + aside, area.high.1 + over) }.grown(-EDGE));
        let wanted: Vec<Wanted> = self.parts.iter().flat_map(|part| part.targets.iter().filter_map(|t| wanted(part, *t, scene))).collect();
        scene.balloons = section_balloons::place(&wanted, &figure);
        for placed in &scene.balloons {
            let (low, high) = (placed.area.low, placed.area.high);
            figure.words.extend([(low, (high.0, low.1)), ((high.0, low.1), high), (high, (low.0, high.1)), ((low.0, high.1), low), placed.leader]);
        }
        let text = "junction line";
        let half = (narrow_width(text, LABEL) / 2.0, LABEL / 2.0);
        scene.labels = section_balloons::place(&[Wanted { text: text.to_owned(), handles: vec![(0.0, 0.0)], half, round: false }], &figure);
        scene.area = scene.extent();
    }

    fn lines_of(&self, side: Side) -> Vec<Struck<'_>> {
        let all = self.letters.iter().zip(&self.solved.lines).zip(self.reads);
        all.filter(|((_, line), _)| line.side == side).map(|((letter, line), read)| Struck { letter: letter.clone(), line, read: read.from_datum }).collect()
    }

    fn dimension(&self, scene: &mut Scene, planes: &[PlaneSide<'_>], scale: f64) -> Result<(), Error> {
        for p in planes {
            let lines = self.lines_of(p.side);
            let top = scene.panels.iter().find(|q| q.side == p.side).map_or(0.0, |q| q.top);
            let place = if self.over() { (1.0, scene.top_over(&p.axis, p.far) + 3.5, top) } else { (-1.0, -DECK - 4.0, 0.0) };
            scene.rows.extend(section_dims::row(&lines, &p.axis, scale, self.format, place)?);
        }
        if let Some(axis) = &self.axes.riser {
            let lines = self.lines_of(Side::Riser);
            scene.rows.extend(section_dims::row(&lines, axis, scale, self.format, (-1.0, -section_ground::WALL - 4.0, 0.0))?);
        }
        if *self.other == Other::WallTop {
            // On the roof side up is the axis' own way.
            let (axis, lines) = (&self.axes.first, self.lines_of(Side::First));
            scene.rows.extend(section_dims::row(&lines, axis, scale, self.format, (1.0, scene.top_over(axis, -400.0) + 3.5, 0.0))?);
        }
        if let (Other::Wall | Other::Fascia { .. } | Other::WallTop, Some(axis)) = (self.other, &self.axes.second) {
            let lines = self.lines_of(Side::Second);
            let place = match self.other {
                Other::Wall => (-1.0, -section_ground::WALL - 4.0, 0.0),
                _ => (1.0, scene.top_over(axis, 400.0) + 3.5, 0.0),
            };
            scene.rows.extend(section_dims::row(&lines, axis, scale, self.format, place)?);
        }
        // Where both sides say the same at one place it is written once.
        let mut said: Vec<(Point, String)> = Vec::new();
        for row in &mut scene.rows {
            row.figures.retain(|f| {
                let again = said.iter().any(|(at, text)| *text == f.text && num::hypot(at.0 - f.at.0, at.1 - f.at.1) < section_dims::TEXT / 2.0);
                said.push((f.at, f.text.clone()));
                !again
            });
        }
        Ok(())
    }

    fn slopes(&self, scene: &mut Scene, planes: &[PlaneSide<'_>]) -> Result<(), Error> {
        if let (Other::WallTop, Some(outside)) = (self.other, &self.axes.second)
            && self.first.rise.degrees() > 0.0
        {
            let (inner, outer) = (self.axes.first.at(0.0, 0.0), outside.at(0.0, 0.0));
            let touch = (f64::midpoint(inner.0, outer.0), f64::midpoint(inner.1, outer.1) + 5.0);
            scene.slopes.push(slope(touch, self.first.rise.degrees(), false, self.format)?);
        }
        for p in planes {
            let degrees = p.plane.rise.degrees();
            if degrees == 0.0 {
                continue;
            }
            let top = scene.panels.iter().find(|q| q.side == p.side).map_or(p.layers.pan, |q| q.top) + p.layers.seam;
            // Under the upper deck of a step stand the riser's dimensions, over it its own: its pitch stands beyond where it breaks off.
            let is_upper = self.axes.riser.is_some() && p.side == Side::Second;
            let is_over = self.over();
            let touch = match () {
                () if is_upper => p.axis.at(p.far + 9.0 * p.far.signum(), top + 4.0),
                () if is_over => p.axis.at(p.far * 0.8, -DECK - 2.5),
                () => p.axis.at(p.far * 0.8, top + 2.5),
            };
            scene.slopes.push(slope(touch, degrees, is_over, self.format)?);
        }
        Ok(())
    }
}

/// The triangle of a slope that touches a point with its slanting side, below it or above it.
fn slope(touch: Point, degrees: f64, below: bool, format: LengthFormat) -> Result<Slope, Error> {
    const SIZE: f64 = 11.0;
    let (s, c) = (num::sin_deg(degrees), num::cos_deg(degrees));
    let run = SIZE * c.clamp(0.25, 0.9);
    let rise = run * s / c;
    let (run, rise) = if rise.abs() > SIZE { (run * SIZE / rise.abs(), rise * SIZE / rise.abs()) } else { (run, rise) };
    // The slanting side runs through the point; the square corner lies on the far side of it.
    let (low, high) = ((touch.0 - run / 2.0, touch.1 - rise / 2.0), (touch.0 + run / 2.0, touch.1 + rise / 2.0));
    let square = if below == (rise > 0.0) { (high.0, low.1) } else { (low.0, high.1) };
    let level_y = square.1;
    let plumb_x = square.0;
    let (twelve, figure) = super::number::pitch_figures(degrees, format)?;
    let run_at = (f64::midpoint(low.0, high.0), if level_y < touch.1 { level_y - LABEL - 0.4 } else { level_y + 0.9 });
    let side = if plumb_x > touch.0 { 1.0 } else { -1.0 };
    let rise_at = (plumb_x + side * (narrow_width(&figure, LABEL) / 2.0 + 0.9), f64::midpoint(low.1, high.1) - LABEL * 0.35);
    Ok(Slope { corners: [low, high, square], run: (run_at, twelve), rise: (rise_at, figure) })
}

fn wanted(part: &Numbered, target: Target, scene: &Scene) -> Option<Wanted> {
    let metal = |piece: Piece| scene.metal.iter().find(|m| m.piece == piece).map(|m| m.handles.clone());
    let handles = match target {
        Target::Trim(i) => metal(Piece::Trim(i))?,
        Target::Adjoining(i) => scene.neighbours.iter().find(|n| n.index == i)?.handles.clone(),
        // The pipe comes first, then the two sides of its boot.
        Target::Boot(i) => scene.neighbours.iter().filter(|n| n.index == i).nth(1)?.handles.clone(),
        Target::Panel(side) => scene.panels.iter().find(|p| p.side == side)?.handles.clone(),
        Target::Along(i) => match scene.handles.iter().find(|(d, _)| *d == i) {
            Some((_, handle)) => vec![*handle],
            None => metal(Piece::Closure(i)).or_else(|| metal(Piece::Cleat(i)))?,
        },
    };
    Some(Wanted { text: part.number.clone(), handles, half: (RADIUS, RADIUS), round: true })
}

fn ring_chords(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    ring.iter().copied().zip(ring.iter().copied().cycle().skip(1))
}

impl Scene {
    /// The greatest height of what is drawn over a plane.
    fn top_over(&self, axis: &Axis, far: f64) -> f64 {
        let (low, high) = (far.min(0.0), far.max(0.0));
        let points = self.metal.iter().flat_map(|m| &m.outline).chain(self.panels.iter().flat_map(|p| p.pan.iter().chain(&p.seam)));
        let edges = self.neighbours.iter().flat_map(|n| n.edges.iter().flat_map(|(a, b)| [a, b]));
        points.chain(edges).map(|p| axis.of(*p)).filter(|(a, _)| *a >= low - 1.0 && *a <= high + 1.0).map(|(_, h)| h).fold(0.0, f64::max)
    }

    fn figure(&self) -> Figure {
        let mut figure = Figure::default();
        // The mark of the junction line itself.
        figure.chords.extend([((-1.9, 0.0), (1.9, 0.0)), ((0.0, -1.9), (0.0, 1.9))]);
        for band in &self.bands {
            figure.chords.extend(ring_chords(&band.ring));
            figure.solid.push(band.ring.clone());
        }
        for neighbour in &self.neighbours {
            figure.chords.extend(ring_chords(&neighbour.ring).chain(neighbour.edges.iter().copied()));
            figure.solid.push(neighbour.ring.clone());
        }
        for panel in &self.panels {
            figure.chords.extend(panel.pan.iter().copied().zip(panel.pan.iter().copied().skip(1)));
            figure.chords.extend(ring_chords(&panel.seam));
        }
        figure.chords.extend(self.breaks.iter().chain(&self.underlayment).flat_map(|u| u.iter().copied().zip(u.iter().copied().skip(1))));
        figure.chords.extend(self.metal.iter().flat_map(|m| ring_chords(&m.outline)));
        figure.chords.extend(self.marks.iter().flat_map(Mark::chords));
        for row in &self.rows {
            figure.words.extend(row.bars.iter().map(|b| b.ends));
            figure.chords.extend(row.witnesses.iter().flat_map(|w| w.iter().copied().zip(w.iter().copied().skip(1))));
            // All around: a leader may run along a figure's long edges and still lie between them.
            figure.words.extend(row.figures.iter().flat_map(|f| {
                let [(a, b), (c, d)] = f.edges;
                [(a, b), (b, d), (d, c), (c, a)]
            }));
        }
        for slope in &self.slopes {
            figure.words.extend(ring_chords(&slope.corners));
            for (at, text) in [&slope.run, &slope.rise] {
                let half = narrow_width(text, LABEL) / 2.0;
                figure.words.extend([((at.0 - half, at.1), (at.0 + half, at.1)), ((at.0 - half, at.1 + LABEL), (at.0 + half, at.1 + LABEL))]);
            }
        }
        figure
    }

    fn extent(&self) -> Area {
        let mut area = Area::EMPTY;
        let figure = self.figure();
        for (a, b) in figure.chords.iter().chain(&figure.words) {
            area.cover(*a);
            area.cover(*b);
        }
        for placed in self.balloons.iter().chain(&self.labels) {
            area.cover(placed.area.low);
            area.cover(placed.area.high);
        }
        area.grown(EDGE)
    }
}
