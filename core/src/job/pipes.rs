//! The pipes of a job: where they stand, which panels they go through, and what each takes.

use super::build::Scheduled;
use super::input::Job;
use super::lay::PlaneLay;
use super::plane_work::PlaneHeat;
use crate::assembly::{Fixing, Hand};
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{Along, AlongLine, BeadSize, Bites, FixedLine, LeastRule, Pipe, PipeBase, PipePlan, PipeShape, PipeSpacing, Side, UpperEdge};
use crate::layout::{ClearOf, EndPart, LaidPanel, Obstacle, Prefer, SeamClearance, Start};
use crate::num;
use crate::record::{Calculation, Recorder};
use crate::roof::{Plane, Point, Roof, Vertex, has_plane, plane_number};
use crate::units::Length;

/// Where a pipe stands: its middle.
///
/// ```
/// use seamwright::assembly::Hand;
/// use seamwright::job::PipePlace;
/// use seamwright::units::Length;
/// let place = PipePlace::OffLine { line: "eave 1".into(), from: Hand::Left, along: Length::feet(12), off: Length::feet(9) };
/// assert_ne!(place, PipePlace::Plan(Default::default()));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PipePlace {
    /// By its point in plan, as the roof's vertices are.
    Plan(Point),
    /// On the slope, from an end of a line of its plane that crosses the fall.
    OffLine {
        /// The line, by the name that the roof gives it.
        line: String,
        /// From which of its ends, looking up the slope.
        from: Hand,
        /// So far along the line.
        along: Length,
        /// Then square to it on the slope, up; below the line it is negative.
        off: Length,
    },
}

/// How a pipe is flashed.
///
/// ```
/// use seamwright::job::Job;
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/annexe_job.json")))?;
/// assert!(!job.pipes[0].detail.may_cross_seams);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PipeDetail {
    /// Its base.
    pub base: PipeBase,
    /// From the edge of the base to the foot of a seam, at the least.
    pub least_to_seam: Length,
    /// Between the pipe and the hole's edge at the worst of the year.
    pub clearance: Length,
    /// What the base's upper edge does.
    pub upper_edge: UpperEdge,
    /// Whether a base that fits between no two seams may cross them.
    pub may_cross_seams: bool,
    /// The bead around the collar.
    pub collar_bead: BeadSize,
    /// How far it must be from the next pipe or curb of its plane; none where no rule asks for it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub apart: Option<LeastRule>,
}

/// A round pipe through the roof.
///
/// ```
/// use seamwright::job::Job;
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/annexe_job.json")))?;
/// assert_eq!((job.pipes[0].name.as_str(), job.pipes[0].plane.as_str()), ("boiler flue", "annexe"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PipeChoice {
    /// Its name, unlike that of any other pipe.
    pub name: String,
    /// The plane that it goes through, by name.
    pub plane: String,
    /// Where it stands.
    pub place: PipePlace,
    /// Its outside diameter.
    pub diameter: Length,
    /// How it is flashed.
    pub detail: PipeDetail,
}

/// A pipe, worked out.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/annexe_job.json")))?.compute()?;
/// let flue = &packet.pipes[0];
/// assert_eq!(flue.panels.len(), 1, "clear of both seams");
/// assert!(flue.made.to_seam.iter().all(|d| *d >= flue.pipe.least_to_seam));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PipeItem {
    /// Its name.
    pub name: String,
    /// Where in the job its choice stands.
    pub choice: String,
    /// Number of its plane in the roof.
    pub plane: usize,
    /// The panels that its base lies on, by number on the plane from 0; its middle goes through the first.
    pub panels: Vec<usize>,
    /// The mark of that panel in the length list.
    pub mark: String,
    /// Its middle on the deck.
    pub at: Vertex,
    /// The same in the plane: across the slope and up it.
    pub on_plane: Point,
    /// The line at the foot of its panel, by name.
    pub foot: String,
    /// From that line up to its middle, along the seams.
    pub above_end: Length,
    /// The bead around its collar.
    pub collar_bead: BeadSize,
    /// The pipe as it was worked out.
    pub pipe: Pipe,
    /// What it takes.
    pub made: PipePlan,
}

/// The level of an end of a panel at so far across, in millimetres.
fn level(parts: &[EndPart], x: f64) -> Option<f64> {
    let part = parts.iter().find(|p| p.left.x.mm() <= x && x <= p.right.x.mm())?;
    let (x0, x1) = (part.left.x.mm(), part.right.x.mm());
    let share = if x1 > x0 { (x - x0) / (x1 - x0) } else { 0.0 };
    Some(part.left.y.mm() + (part.right.y.mm() - part.left.y.mm()) * share)
}

/// From where to where a panel lies at so far across.
fn lies(panel: &LaidPanel, x: f64) -> Option<(f64, f64)> {
    if x < panel.left.mm() || x > panel.right.mm() {
        return None;
    }
    Some((level(&panel.lower, x)?, level(&panel.upper, x)?))
}

/// The name of the line at the foot of a panel, at so far across.
fn foot_of(roof: &Roof, lay: &PlaneLay, panel: &LaidPanel, x: f64) -> String {
    let part = panel.lower.iter().find(|p| p.left.x.mm() <= x && x <= p.right.x.mm());
    let line = part.and_then(|p| lay.line_of(p.edge)).and_then(|line| roof.lines().get(line));
    line.map_or_else(String::new, |l| l.name.clone())
}

/// The notch of a panel at this level, as a band.
fn notch(panel: &LaidPanel) -> Option<(f64, f64)> {
    let ys = panel.notches.iter().flat_map(|n| n.lower.iter().chain(&n.upper)).flat_map(|p| [p.left.y.mm(), p.right.y.mm()]);
    ys.fold(None, |band, y| Some(band.map_or((y, y), |(low, high): (f64, f64)| (low.min(y), high.max(y)))))
}

/// From a point to the nearest edge of a ring.
fn to_ring(ring: &[Point], at: Point) -> f64 {
    let xy = |p: &Point| (p.x.mm() - at.x.mm(), p.y.mm() - at.y.mm());
    ring.iter().zip(ring.iter().cycle().skip(1)).fold(f64::INFINITY, |least, (a, b)| {
        let ((ax, ay), (bx, by)) = (xy(a), xy(b));
        let (dx, dy) = (bx - ax, by - ay);
        let t = (-(ax * dx + ay * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
        least.min(num::hypot(ax + dx * t, ay + dy * t))
    })
}

/// A pipe's place in its plane.
struct Stood<'a> {
    number: usize,
    choice: &'a PipeChoice,
    plane: usize,
    at: Point,
}

impl PipeChoice {
    fn stand(&self, roof: &Roof, plane: usize, path: &str) -> Result<Point, Error> {
        let own: &Plane = roof.planes().get(plane).ok_or_else(|| Error::new(ErrorKind::Internal, "a plane is missing").value_of(plane))?;
        match &self.place {
            PipePlace::Plan(point) => own.to_plane(own.at_plan(*point)?),
            PipePlace::OffLine { line: name, from, along, off } => {
                let path = format!("{path}.place.off-line.line");
                let line = roof.lines_round(plane).find(|l| l.name == *name);
                let side = line.and_then(|l| l.sides().find(|s| s.plane == plane)).ok_or_else(|| {
                    let names = roof.lines_round(plane).map(|l| l.name.as_str()).collect::<Vec<_>>().join(", ");
                    Error::new(ErrorKind::Unknown, "the pipe's plane has no line of this name").at(path.as_str()).value_of(name).accepts(names)
                })?;
                let (left, right) = if side.start.x <= side.end.x { (side.start, side.end) } else { (side.end, side.start) };
                let d = ((right.x - left.x).length()?.mm(), (right.y - left.y).length()?.mm());
                let length = num::hypot(d.0, d.1);
                if d.0 <= crate::practice::roof::RAKE_LIMIT.sin() * length {
                    let error = Error::new(ErrorKind::Conflict, "the line runs with the fall, and has no left and right end").at(path).value_of(name);
                    return Err(error.accepts("a line that crosses the fall: an eave, a ridge, a headwall"));
                }
                let (start, way) = if *from == Hand::Left { (left, 1.0) } else { (right, -1.0) };
                let u = (d.0 / length, d.1 / length);
                let by = |x: f64| Length::from_mm(x);
                let (a, o) = (along.mm() * way, off.mm());
                Ok(Point { x: (start.x + by(u.0 * a - u.1 * o)?).length()?, y: (start.y + by(u.1 * a + u.0 * o)?).length()? })
            }
        }
    }
}

impl Job {
    /// What can be checked before the roof is known.
    pub(super) fn check_pipes(&self, planes: &[&str], faults: &mut Faults) {
        for (i, pipe) in self.pipes.iter().enumerate() {
            let path = format!("pipes[{i}]");
            if pipe.name.trim().is_empty() {
                faults.add(Error::new(ErrorKind::Missing, "a pipe needs a name").at(format!("{path}.name")).value_of(&pipe.name).accepts("a name"));
            } else if self.pipes.iter().take(i).any(|other| other.name == pipe.name) {
                let error = Error::new(ErrorKind::Conflict, "two pipes have one name").at(format!("{path}.name")).value_of(&pipe.name);
                faults.add(error.accepts("a name that no other pipe has"));
            }
            has_plane(planes, &pipe.plane, &format!("{path}.plane"), faults);
            faults.keep(pipe.diameter.positive(&format!("{path}.diameter")));
            if let PipePlace::OffLine { along, .. } = &pipe.place {
                faults.keep(along.not_negative(&format!("{path}.place.off-line.along")));
            }
            for (field, length) in [("width", pipe.detail.collar_bead.width), ("depth", pipe.detail.collar_bead.depth)] {
                faults.keep(length.positive(&format!("{path}.detail.collar_bead.{field}")));
            }
            if let Some(apart) = &pipe.detail.apart {
                faults.keep(apart.least.not_negative(&format!("{path}.detail.apart.least")));
            }
        }
        if !self.pipes.is_empty() && self.temperatures.is_none() {
            let error = Error::new(ErrorKind::Missing, "the hole around a pipe follows from the metal's temperatures").at("temperatures");
            faults.add(error.accepts("the metal's temperatures when laid, at its coldest and at its hottest"));
        }
    }

    /// Every pipe.
    pub(super) fn pipes<R: Recorder>(
        &self,
        r: &mut R,
        roof: &Roof,
        planes: &[PlaneLay],
        heat: &[PlaneHeat],
        scheduled: &mut Scheduled,
    ) -> Result<Vec<PipeItem>, Error> {
        let (mut stood, mut faults) = (Vec::with_capacity(self.pipes.len()), Faults::default());
        for (number, choice) in self.pipes.iter().enumerate() {
            let path = format!("pipes[{number}]");
            let named = plane_number(roof.planes().iter().map(Plane::name), &choice.plane, format!("{path}.plane"));
            let Some(plane) = faults.keep(named) else { continue };
            let at = faults.keep(choice.stand(roof, plane, &path).map_err(|e| if e.path().is_empty() { e.at(format!("{path}.place")) } else { e }));
            stood.extend(at.map(|at| Stood { number, choice, plane, at }));
        }
        faults.check()?;
        let (mut out, mut faults) = (Vec::with_capacity(stood.len()), Faults::default());
        for pipe in &stood {
            let found = r.part(|| format!("pipe {}", pipe.choice.name), |r| self.pipe(r, roof, planes, heat, &stood, pipe, scheduled));
            out.extend(faults.keep(found.map_err(|e| e.about(&pipe.choice.name))));
        }
        faults.check()?;
        Ok(out)
    }

    #[allow(clippy::too_many_arguments, reason = "what the first half of the work gave")]
    fn pipe<R: Recorder>(
        &self,
        r: &mut R,
        roof: &Roof,
        planes: &[PlaneLay],
        heat: &[PlaneHeat],
        all: &[Stood<'_>],
        own: &Stood<'_>,
        scheduled: &mut Scheduled,
    ) -> Result<PipeItem, Error> {
        let (choice, detail, path) = (own.choice, &own.choice.detail, format!("pipes[{}]", own.number));
        let lost = || Error::new(ErrorKind::Internal, "a plane is missing").value_of(own.plane);
        let (lay, heat) = planes.get(own.plane).zip(heat.get(own.plane)).ok_or_else(lost)?;
        let place = roof.planes().get(own.plane).ok_or_else(lost)?;
        let (x, y) = (own.at.x.mm(), own.at.y.mm());
        let within = |p: &LaidPanel| lies(p, x).is_some_and(|(low, high)| low <= y && y <= high);
        let (number, panel) = lay.laid.panels.iter().enumerate().find(|(_, p)| within(p)).ok_or_else(|| {
            let at = format!("{} across and {} up", own.at.x, own.at.y);
            Error::new(ErrorKind::Geometry, "no panel of the plane lies at the pipe's place")
                .at(format!("{path}.place"))
                .value_of(at)
                .accepts("a place on a panel of its plane")
        })?;
        let (low, high) = lies(panel, x).unwrap_or_default();
        let (fixed, to_fixed) = fixed_line(panel, number, heat, (low, high), y).ok_or_else(|| {
            Error::new(ErrorKind::Impossible, "nothing fixes the pipe's panel, so that what the hole must leave is not known")
                .at(format!("{path}.place"))
                .value_of(format!("panel {} of {}", number + 1, lay.name))
                .accepts("a panel with a fixed line")
                .cured_by("an end of the panel fastened to the structure")
        })?;
        let t = self.temperatures.ok_or_else(|| Error::new(ErrorKind::Missing, "the metal's temperatures are not known").at("temperatures"))?;
        let mut screws = vec![AlongLine {
            name: "screws of the base".into(),
            side: Side::First,
            what: Along::Fasteners { bites: Bites::Panel, spacing: detail.base.screws.spacing, source: detail.base.screws.source.clone() },
            from_line: Length::ZERO,
        }];
        scheduled.apply_named(self, &choice.name, "pipe", &mut screws);
        let mut base = detail.base.clone();
        if let Some(Along::Fasteners { spacing, source, .. }) = screws.into_iter().next().map(|a| a.what) {
            (base.screws.spacing, base.screws.source) = (spacing, source);
        }
        let pipe = Pipe {
            diameter: choice.diameter,
            pitch: place.pitch(),
            coverage: panel.width,
            seam_width: self.panel.seam_foot(self.metals.panel.thickness()).map_err(|e| e.under("panel"))?,
            from_seam: (own.at.x - panel.left).length()?,
            least_to_seam: detail.least_to_seam,
            clearance: detail.clearance,
            fixed,
            to_fixed: Length::from_mm(to_fixed)?,
            range: t.range(&self.metals.panel),
            base,
            upper_edge: detail.upper_edge,
            may_cross_seams: detail.may_cross_seams,
            next: self.next(place, all, own)?,
        };
        let made = match pipe.run(r) {
            Ok(made) => made,
            Err(e) if e.path() == "from_seam" => return Err(self.shifted(e, lay, all, own, &pipe).at(format!("{path}.place"))),
            Err(e) => return Err(placed(e, &path)),
        };
        let panels = on_panels(lay, number, &pipe, &made, (x, y)).map_err(|e| e.at(format!("{path}.place")))?;
        Ok(PipeItem {
            name: choice.name.clone(),
            choice: path,
            plane: own.plane,
            panels,
            mark: lay.laid.mark_of(panel).unwrap_or_default().to_owned(),
            at: place.to_space(own.at)?,
            on_plane: own.at,
            foot: foot_of(roof, lay, panel, x),
            above_end: Length::from_mm(y - low)?,
            collar_bead: detail.collar_bead,
            pipe,
            made,
        })
    }

    /// The nearest other pipe or opening of the plane.
    fn next(&self, place: &Plane, all: &[Stood<'_>], own: &Stood<'_>) -> Result<Option<PipeSpacing>, Error> {
        let Some(rule) = own.choice.detail.apart.clone() else { return Ok(None) };
        let half = own.choice.diameter.mm() / 2.0;
        let pipes = all
            .iter()
            .filter(|o| o.plane == own.plane && o.number != own.number)
            .map(|o| num::hypot(o.at.x.mm() - own.at.x.mm(), o.at.y.mm() - own.at.y.mm()) - half - o.choice.diameter.mm() / 2.0);
        let holes = place.outline().holes().iter().map(|hole| to_ring(hole, own.at) - half);
        let nearest = pipes.chain(holes).fold(f64::INFINITY, f64::min);
        if nearest.is_finite() { Ok(Some(PipeSpacing { distance: Length::from_mm(nearest.max(0.0))?, rule })) } else { Ok(None) }
    }

    /// The refusal of a pipe too near to a seam, with the start of the plane's seams that clears all of its pipes, where there is one.
    fn shifted(&self, e: Error, lay: &PlaneLay, all: &[Stood<'_>], own: &Stood<'_>, pipe: &Pipe) -> Error {
        let clear_of = |o: &Stood<'_>| -> Result<ClearOf, Error> {
            // In the middle of a panel its base is what it is, and no seam is near.
            let coverage = self.panel.coverage;
            let alone = Pipe { coverage, from_seam: coverage.station(1, 2)?, may_cross_seams: true, next: None, ..pipe.clone() };
            let alone = if o.number == own.number {
                alone
            } else {
                let d = &o.choice.detail;
                Pipe { diameter: o.choice.diameter, base: d.base.clone(), least_to_seam: d.least_to_seam, clearance: d.clearance, ..alone }
            };
            let across = alone.compute()?.base_across;
            let clearance = (alone.least_to_seam + alone.seam_width.station(1, 2)?).length()?;
            Ok(ClearOf { name: o.choice.name.clone(), what: Obstacle::Round { centre: o.at, diameter: across }, clearance })
        };
        let things = all.iter().filter(|o| o.plane == own.plane).map(clear_of).collect::<Result<Vec<_>, Error>>();
        let found = things.and_then(|clear_of| SeamClearance { layout: lay.layout.clone(), clear_of, prefer: Prefer::Nearest }.compute());
        match found {
            Ok(shift) if shift.clear => match shift.start {
                Start::Datum(datum) => {
                    let own = e.cure().map(|c| c.split(", or that of all").next().unwrap_or_default().to_owned()).unwrap_or_default();
                    e.cured_by(format!(
                        "{own}, or that of all seams of {} by {}: {{\"datum\": \"{datum}\"}} as its start in layout.planes",
                        lay.name, shift.shift
                    ))
                }
                _ => e,
            },
            _ => e,
        }
    }
}

/// Where the panel of a pipe is fixed, and how far that is, in millimetres along the seams.
fn fixed_line(panel: &LaidPanel, number: usize, heat: &PlaneHeat, (low, high): (f64, f64), y: f64) -> Option<(FixedLine, f64)> {
    let fixing = heat.pins.panels.iter().find(|p| p.panel == number)?.fixing;
    match fixing {
        Fixing::Lower => Some((FixedLine::Below, y - low)),
        // Held at two levels or along a side it does not move as it should, which its plane is warned of: the room is that for the farther.
        Fixing::Upper | Fixing::Twice | Fixing::Along => Some((FixedLine::Above, high - y)),
        Fixing::Opening => {
            let (from, to) = notch(panel)?;
            Some(if from >= y { (FixedLine::Above, to - y) } else { (FixedLine::Below, y - from) })
        }
        Fixing::Zone | Fixing::Nowhere => None,
    }
}

/// The panels that a base lies on, the pipe's own first; refused where it reaches past an end of one or into an opening.
fn on_panels(lay: &PlaneLay, own: usize, pipe: &Pipe, made: &PipePlan, (x, y): (f64, f64)) -> Result<Vec<usize>, Error> {
    let half = match pipe.base.shape {
        PipeShape::Round => (made.base_down.mm() + made.base_up.mm()) / 2.0,
        PipeShape::Rectangular => made.base_across.mm() / 2.0,
    };
    let (from, to) = (y - made.base_down.mm(), y + made.base_up.mm());
    let mut out = vec![own];
    for (number, panel) in lay.laid.panels.iter().enumerate() {
        let (left, right) = ((x - half).max(panel.left.mm()), (x + half).min(panel.right.mm()));
        if left >= right {
            continue;
        }
        let spans = [left, (left + right) / 2.0, right].map(|x| lies(panel, x));
        if spans.iter().flatten().all(|(low, high)| to < *low || *high < from) {
            continue;
        }
        for (low, high) in spans.into_iter().flatten() {
            let (past, end) = if low - from > to - high { (low - from, "lower") } else { (to - high, "upper") };
            if past > 1e-6 {
                let short = Length::from_mm(past)?;
                return Err(Error::new(ErrorKind::Impossible, format!("the base reaches past the {end} end of panel {} by {short}", number + 1))
                    .value_of(format!("{} up", Length::from_mm(y)?))
                    .accepts(format!("a place {short} farther from that end"))
                    .cured_by(format!("the pipe's shift of {short} {} the slope", if end == "lower" { "up" } else { "down" })));
            }
        }
        if number != own {
            out.push(number);
        }
    }
    Ok(out)
}

/// A refusal of a pipe in the job's own terms.
fn placed(e: Error, path: &str) -> Error {
    let mut e = e.under(path);
    for (from, to) in [
        ("base", "detail.base"),
        ("least_to_seam", "detail.least_to_seam"),
        ("clearance", "detail.clearance"),
        ("next.distance", "place"),
        ("next.rule", "detail.apart"),
        ("coverage", "place"),
        ("from_seam", "place"),
        ("to_fixed", "place"),
        ("pitch", "plane"),
    ] {
        e = e.moved(&format!("{path}.{from}"), &format!("{path}.{to}"));
    }
    e.moved(&format!("{path}.range"), "temperatures").moved(&format!("{path}.seam_width"), "panel.seam")
}
