//! One step at the brake: how the sheet lies, where the gauge stands, and whether anything hits while it swings.
//!
//! The swung side turns as one piece about the one axis that carries it from where it lies before the swing to where it lies after: over the bend line, for a
//! bend of A from flat with inside radius R, thickness T and allowance BA at `R + T - BA/2 cot(A/2)` above the outer face. Source: geometry.

use super::plan::{BendStep, Brake, ClampLine, FoldWay, SheetEdge, Tooling};
use super::report::{GaugeStep, Handling, HitBody, StepFault};
use super::strip::{Contour, SKIN, SheetPart, Stretch, Strip, allowance_at, shorten_end, shorten_start};
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::trim::curves::{Curve, Motion, Xy, first_contact, length, minus, plus, times};
use crate::trim::flat::{Flat, FlatBend};
use crate::trim::leg::{Direction, Face};
use crate::trim::size::to_length;
use crate::trim::springback::SpringbackBy;
use crate::units::{Angle, BendAngle};
use robust::{Coord, orient2d};
use std::collections::BTreeSet;

/// A piece of sheet on its way through the steps.
pub(super) struct Work<'a> {
    pub(super) flat: &'a Flat,
    pub(super) brake: &'a Brake,
    pub(super) springback: Option<SpringbackBy>,
    /// How far each bend is made, in degrees.
    pub(super) made: Vec<f64>,
    /// How the piece lay in the step before.
    lay: Option<(SheetEdge, Face)>,
    /// Every two parts that have overlapped after a step, which has told it.
    crossed: BTreeSet<(SheetPart, SheetPart)>,
}

/// What a step gives.
pub(super) struct Done {
    pub(super) step: GaugeStep,
    pub(super) faults: Vec<StepFault>,
}

/// A face as plans write it.
const fn face_name(face: Face) -> &'static str {
    match face {
        Face::Upper => "upper",
        Face::Lower => "lower",
    }
}

/// What is asked of one step, resolved against the sheet.
struct Asked<'a> {
    bend: &'a FlatBend,
    index: usize,
    step: BendStep,
    tooling: &'a Tooling,
    /// 1 for a fold upwards.
    sense: f64,
    /// Before, after springback, and while folded, in degrees.
    from: f64,
    to: f64,
    folded: f64,
}

impl<'a> Work<'a> {
    pub(super) fn new(flat: &'a Flat, brake: &'a Brake, springback: Option<SpringbackBy>) -> Work<'a> {
        Work { flat, brake, springback, made: vec![0.0; flat.bends().len()], lay: None, crossed: BTreeSet::new() }
    }

    fn asked(&self, step: BendStep) -> Result<Asked<'a>, Error> {
        let bends = self.flat.bends();
        let index = bends.iter().position(|b| b.part == step.bend).ok_or_else(|| {
            let known: Vec<String> = bends.iter().map(|b| b.part.to_string()).collect();
            Error::new(ErrorKind::Unknown, "the profile has no such bend").at("bend").value_of(step.bend).accepts(match known.len() {
                0 => "none: the profile has no bend".to_owned(),
                1..=20 => known.join(", "),
                n => format!("the {n} bends of the profile, and its hems"),
            })
        })?;
        let (Some(bend), Some(&from)) = (bends.get(index), self.made.get(index)) else {
            return Err(Error::new(ErrorKind::Internal, "a bend was lost"));
        };
        let full = bend.angle.degrees();
        let to = step.to.map_or(full, BendAngle::degrees);
        if from >= full {
            return Err(Error::new(ErrorKind::Conflict, "the bend has been made already")
                .at("bend")
                .value_of(step.bend)
                .accepts("each bend once to its full angle"));
        }
        if to <= from || to > full {
            return Err(Error::new(ErrorKind::OutOfRange, "the step does not bring the bend on")
                .at("to")
                .value_of(format_args!("{to} deg"))
                .accepts(format!("more than {from} deg, at most {full} deg")));
        }
        let up = bend.direction.inside() == step.face_up;
        let tooling = match (up, &self.brake.down) {
            (true, _) => &self.brake.up,
            (false, Some(down)) => down,
            (false, None) => {
                return Err(Error::new(ErrorKind::Conflict, "the bend closes on the face that lies down, and the brake folds upwards only")
                    .at("face_up")
                    .value_of(face_name(step.face_up))
                    .accepts(face_name(step.face_up.opposite()))
                    .cured_by("the piece turned over, or tools for folding downwards"));
            }
        };
        let folded = match (step.way, self.springback) {
            (FoldWay::Swing, Some(by)) => by.folded(self.flat.thickness(), bend.inside_radius, to).map_err(|e| e.at("bend"))?,
            _ => to,
        };
        if folded >= 360.0 {
            return Err(Error::new(ErrorKind::OutOfRange, "the bend would be folded by a full turn to spring back to its angle")
                .at("to")
                .value_of(format_args!("{folded} deg"))
                .accepts("less than 360 deg while folding"));
        }
        Ok(Asked { bend, index, step, tooling, sense: if up { 1.0 } else { -1.0 }, from, to, folded })
    }

    /// The bends as they are, but for one.
    fn with(&self, index: usize, degrees: f64) -> Vec<f64> {
        let mut out = self.made.clone();
        if let Some(d) = out.get_mut(index) {
            *d = degrees;
        }
        out
    }

    /// Of the parts that now overlap and did not after any step before, the two nearest to the bend. All of them count as told.
    ///
    /// Which overlap, and which of them are nearest, does not hang on the end from which the sheet is walked.
    fn newly_crossed(&mut self, made: &[f64], bend: usize, gauged: SheetEdge) -> Result<Option<(SheetPart, SheetPart)>, Error> {
        let mut found = Strip::fold(self.flat, made, SKIN)?.contour().crossings(&self.crossed);
        // How far from the bend in the walk, and whether towards the gauge.
        let place = |part: SheetPart| {
            let (legs, bends) = (self.flat.legs(), self.flat.bends());
            let at = match part {
                SheetPart::Leg(leg) => legs.iter().position(|l| l.part == leg).map(|i| 2 * i),
                SheetPart::Bend(own) => bends.iter().position(|b| b.part == own).map(|i| 2 * i + 1),
            };
            let (at, bend) = (at.unwrap_or_default(), 2 * bend + 1);
            (at.abs_diff(bend), (at < bend) == (gauged == SheetEdge::Start))
        };
        let told = found.iter().map(|&(a, b)| {
            let (far, near) = if place(a) > place(b) { (a, b) } else { (b, a) };
            // What is held stands still; on one side, what is farther from the bend.
            let swings = place(near).0 == 0 || !place(near).1 || place(far).1;
            ((place(far), place(near)), if swings { (near, far) } else { (far, near) })
        });
        let nearest = told.min_by_key(|t| t.0).map(|t| t.1);
        self.crossed.append(&mut found);
        Ok(nearest)
    }

    /// Takes the step: the gauge and every fault of it. The bend is made afterwards, whatever was found.
    pub(super) fn take(&mut self, step: BendStep) -> Result<Done, Error> {
        let asked = self.asked(step)?;
        let laid = Laid::new(self, &asked)?;
        let mut faults = laid.limits(self.brake, &asked)?;
        faults.extend(laid.hits(&asked)?);
        let after = self.with(asked.index, asked.to);
        let crossed = self.newly_crossed(&after, asked.index, asked.step.gauged)?;
        if let Some((moving, still)) = crossed
            && !faults.iter().any(|f| matches!(f, StepFault::Hits { moving: HitBody::Sheet(_), still: HitBody::Sheet(_), .. }))
        {
            // What the swing does not see: the fold itself in the way.
            faults.push(StepFault::Hits { bend: step.bend, at: Angle::degrees_from(asked.to)?, moving: HitBody::Sheet(moving), still: HitBody::Sheet(still) });
        }
        let handling = self.lay.map_or(Handling::default(), |(gauged, up)| Handling::between((gauged, up), (step.gauged, step.face_up)));
        let step = laid.gauge(&asked, handling, self.flat)?;
        self.made = after;
        self.lay = Some((asked.step.gauged, asked.step.face_up));
        Ok(Done { step, faults })
    }
}

/// The sheet in the brake: both sides of the bend as they are when folded, in the brake's coordinates.
struct Laid {
    clamped: Vec<Stretch>,
    swung: Vec<Stretch>,
    /// The swung side before the bend was begun, flat on from the clamped side: how the folding beam lies against it.
    unbent: Vec<Stretch>,
    /// The axis of the swing.
    axis: Xy,
    /// Where the bend line lies.
    line: f64,
    /// The allowance taken while folded.
    taken: f64,
    /// Of the clamped side, how far it reaches towards the back gauge, and what of it.
    outermost: (f64, SheetPart),
    /// Flat from the clamp line back, and on, to an edge or to a bend made before.
    clamped_flat: f64,
    swung_flat: f64,
    /// Not held against tools beside the bend, where they work: one outside radius.
    zone: f64,
}

/// The stretches of these legs, and of the bends between them.
fn side(strip: &Strip, legs: &core::ops::Range<usize>) -> Vec<Stretch> {
    let mut leg = 0;
    let mut out = Vec::new();
    for (i, s) in strip.stretches.iter().enumerate() {
        if i > 0 && matches!(s.piece, SheetPart::Leg(_)) {
            leg += 1;
        }
        // A bend follows its leg, and belongs to a side only where its next leg does too.
        let between = matches!(s.piece, SheetPart::Leg(_)) || leg + 1 < legs.end;
        if legs.contains(&leg) && between {
            out.push(*s);
        }
    }
    out
}

fn moved(motion: &Motion, stretches: &[Stretch]) -> Vec<Stretch> {
    stretches.iter().map(|s| Stretch { piece: s.piece, lower: motion.curve(&s.lower), upper: motion.curve(&s.upper) }).collect()
}

/// The flat run from a bend line outwards, leg by leg, to an edge or to a bend that is made.
fn flat_run(unbent: &Strip, made: &[f64], legs: impl Iterator<Item = usize>, towards_end: bool) -> f64 {
    let mut run = 0.0;
    for leg in legs {
        run += unbent.legs.get(leg).map_or(0.0, |l| length(minus(l.1, l.0)));
        let next = if towards_end { Some(leg) } else { leg.checked_sub(1) };
        if next.and_then(|bend| made.get(bend)).is_some_and(|d| *d > 0.0) {
            break;
        }
    }
    run
}

impl Laid {
    fn new(work: &Work<'_>, asked: &Asked<'_>) -> Result<Laid, Error> {
        let (flat, k) = (work.flat, asked.index);
        let t = flat.thickness().mm();
        let fold = |degrees: f64, skin: f64| Strip::fold(flat, &work.with(k, degrees), skin);
        let (before, after, unbent) = (fold(asked.from, 0.0)?, fold(asked.folded, SKIN)?, fold(0.0, SKIN)?);
        let from_start = asked.step.gauged == SheetEdge::Start;
        let sides = [0..k + 1, k + 1..flat.legs().len()];
        let ([held, free], [held_side, free_side]) = if from_start { ([k, k + 1], [&sides[0], &sides[1]]) } else { ([k + 1, k], [&sides[1], &sides[0]]) };

        let taken = allowance_at(asked.bend, asked.folded);
        let radius = asked.bend.inside_radius.mm();
        let tangent = match work.brake.clamp_line {
            ClampLine::BendLine => -taken / 2.0,
            ClampLine::SightLine => -radius,
        };
        // The walk runs along +x with the upper face up. Set to the end edge it is seen from its other end; with the lower face up it lies on its back.
        let upper_up = asked.step.face_up == Face::Upper;
        let signs = (if from_start { 1.0 } else { -1.0 }, if upper_up { 1.0 } else { -1.0 });
        let base = if upper_up { 0.0 } else { t };
        let end_of = |strip: &Strip, leg: usize, towards_end: bool| {
            let found = strip.legs.get(leg).map(|l| (if towards_end { l.1 } else { l.0 }, -l.2));
            found.ok_or_else(|| Error::new(ErrorKind::Internal, "a leg was lost"))
        };
        let placed = |(point, turn): (Xy, f64), to: Xy| Motion::placing(point, turn, signs, to);
        let place = placed(end_of(&after, held, from_start)?, (tangent, base));
        // The far end of the clamped leg stays where it is, however far the bend is made.
        let far = place.point(end_of(&after, held, !from_start)?.0);
        let place_before = placed(end_of(&before, held, !from_start)?, far);
        let place_unbent = placed(end_of(&unbent, held, !from_start)?, far);
        let (p, q) = (place_before.point(end_of(&before, free, from_start)?.0), place.point(end_of(&after, free, from_start)?.0));

        let line = tangent + taken / 2.0;
        let run = |towards_end: bool| {
            let legs: Box<dyn Iterator<Item = usize>> = if towards_end { Box::new(sides[1].clone()) } else { Box::new(sides[0].clone().rev()) };
            flat_run(&unbent, &work.made, legs, towards_end)
        };
        let mut outermost = (f64::INFINITY, SheetPart::Bend(asked.step.bend));
        for s in moved(&place_before, &side(&before, held_side)) {
            let x = s.lower.least_x().min(s.upper.least_x());
            if x < outermost.0 - 1e-9 {
                outermost = (x, s.piece);
            }
        }
        Ok(Laid {
            clamped: moved(&place, &side(&after, held_side)),
            swung: moved(&place, &side(&after, free_side)),
            unbent: moved(&place_unbent, &side(&unbent, free_side)),
            axis: pivot(p, q, asked.sense * (asked.folded - asked.from)),
            line,
            taken,
            outermost,
            clamped_flat: run(!from_start) - line,
            swung_flat: run(from_start) + line,
            zone: radius + t,
        })
    }

    /// A side without so much of it beside the bend.
    fn cut(stretches: &[Stretch], by: f64, bend_is_first: bool) -> Contour {
        let mut out = stretches.to_vec();
        if bend_is_first {
            shorten_start(&mut out, by)
        } else {
            shorten_end(&mut out, by)
        }
        Contour::around(out)
    }

    /// What of the brake's limits the step does not keep.
    fn limits(&self, brake: &Brake, asked: &Asked<'_>) -> Result<Vec<StepFault>, Error> {
        let mut out = Vec::new();
        let (clamped, swung) = (to_length(self.clamped_flat)?, to_length(self.swung_flat)?);
        if let Some(least) = brake.least_clamped.filter(|l| clamped < *l) {
            out.push(StepFault::ClampedTooShort { bend: asked.step.bend, flat: clamped, least });
        }
        if let Some(least) = brake.least_swung.filter(|l| swung < *l) {
            out.push(StepFault::SwungTooShort { bend: asked.step.bend, flat: swung, least });
        }
        Ok(out)
    }

    /// The first thing that hits, if anything does.
    fn hits(&self, asked: &Asked<'_>) -> Result<Option<StepFault>, Error> {
        let from_start = asked.step.gauged == SheetEdge::Start;
        let span = asked.folded - asked.from;
        let back = Motion::turning(self.axis, -asked.sense * span);
        let mut first: Option<(f64, HitBody, HitBody)> = None;
        let mut take = |at: f64, moving: HitBody, still: HitBody| {
            if first.as_ref().is_none_or(|f| at < f.0) {
                first = Some((at, moving, still));
            }
        };
        let sheet = |contour: &Contour, i: usize| HitBody::Sheet(contour.pieces.get(i).copied().unwrap_or(SheetPart::Bend(asked.step.bend)));

        let (clamped, swung) = (Contour::around(self.clamped.clone()), Contour::around(self.swung.clone()));
        if let Some((turn, i, j)) = sweep(&back.curves(&swung.curves), &clamped.curves, self.axis, asked.sense, span) {
            take(asked.from + turn, sheet(&swung, i), sheet(&clamped, j));
        }
        if asked.step.way == FoldWay::Swing {
            let clamped = Laid::cut(&self.clamped, self.zone, !from_start);
            let swung = Laid::cut(&self.swung, self.zone, from_start);
            let unbent = Laid::cut(&self.unbent, self.taken / 2.0 + self.zone, from_start);
            let swung_before = back.curves(&swung.curves);
            for tool in &asked.tooling.still {
                let (sides, name) = (tool.curves(), || HitBody::Tool(tool.name.clone()));
                if let Some(i) = overlap(&clamped.curves, &sides) {
                    take(asked.from, sheet(&clamped, i), name());
                } else if let Some(i) = overlap(&swung_before, &sides) {
                    take(asked.from, sheet(&swung, i), name());
                } else if let Some((turn, i, _)) = sweep(&swung_before, &sides, self.axis, asked.sense, span) {
                    take(asked.from + turn, sheet(&swung, i), name());
                }
            }
            for tool in &asked.tooling.swinging {
                let (sides, name) = (tool.curves(), || HitBody::Tool(tool.name.clone()));
                if let Some(i) = overlap(&unbent.curves, &sides) {
                    take(asked.from, name(), sheet(&unbent, i));
                } else if let Some(i) = overlap(&clamped.curves, &sides) {
                    take(asked.from, name(), sheet(&clamped, i));
                } else if let Some((turn, _, j)) = sweep(&sides, &clamped.curves, self.axis, asked.sense, asked.folded) {
                    take(turn, name(), sheet(&clamped, j));
                }
            }
        }
        first.map(|(at, moving, still)| Ok(StepFault::Hits { bend: asked.step.bend, at: Angle::degrees_from(at)?, moving, still })).transpose()
    }

    fn gauge(&self, asked: &Asked<'_>, handling: Handling, flat: &Flat) -> Result<GaugeStep, Error> {
        let from_edge = match asked.step.gauged {
            SheetEdge::Start => asked.bend.line,
            SheetEdge::End => flat.from_end(asked.bend.line)?,
        };
        let (x, stop) = self.outermost;
        Ok(GaugeStep {
            bend: asked.step.bend,
            gauged: asked.step.gauged,
            face_up: asked.step.face_up,
            folds: if asked.sense > 0.0 { Direction::Up } else { Direction::Down },
            way: asked.step.way,
            from: Angle::degrees_from(asked.from)?,
            to: Angle::degrees_from(asked.to)?,
            folded_to: Angle::degrees_from(asked.folded)?,
            handling,
            from_edge,
            clamp_line: (from_edge - to_length(self.line)?).length()?,
            gauge: to_length(-x)?,
            stop,
            clamped: to_length(self.clamped_flat)?,
            swung: to_length(self.swung_flat)?,
        })
    }
}

/// The one point that stays where it is when `p` goes to `q` in a turn of so many degrees.
fn pivot(p: Xy, q: Xy, degrees: f64) -> Xy {
    let way = minus(q, p);
    let cotangent = 1.0 / num::tan_deg(degrees / 2.0);
    plus(times(plus(p, q), 0.5), times((-way.1, way.0), cotangent / 2.0))
}

/// The least turn at which one of the moving curves meets one of those that stand still, and which.
fn sweep(moving: &[Curve], still: &[Curve], axis: Xy, sense: f64, most: f64) -> Option<(f64, usize, usize)> {
    let rings: Vec<(f64, f64)> = still.iter().map(|c| c.reach(axis)).collect();
    let mut first: Option<(f64, usize, usize)> = None;
    for (i, m) in moving.iter().enumerate() {
        let (near, far) = m.reach(axis);
        for (j, (s, ring)) in still.iter().zip(&rings).enumerate() {
            if ring.0 <= far && near <= ring.1 {
                let most = first.map_or(most, |f| f.0);
                if let Some(turn) = first_contact(m, s, axis, sense, most)
                    && first.is_none_or(|f| turn < f.0)
                {
                    first = Some((turn, i, j));
                }
            }
        }
    }
    first
}

/// The first of the sheet's curves that overlaps a tool.
fn overlap(sheet: &[Curve], tool: &[Curve]) -> Option<usize> {
    let meets = |c: &Curve| {
        let extent = c.extent();
        tool.iter().any(|side| side.extent().meets(&extent) && side.meets(c))
    };
    sheet.iter().position(meets).or_else(|| sheet.first().filter(|c| inside(c.from, tool)).map(|_| 0))
}

/// Whether a point lies in a polygon, by exact signs.
fn inside(p: Xy, polygon: &[Curve]) -> bool {
    let at = |p: Xy| Coord { x: p.0, y: p.1 };
    let crossings = polygon.iter().filter(|s| {
        let rises = s.from.1 <= p.1 && p.1 < s.to.1;
        let falls = s.to.1 <= p.1 && p.1 < s.from.1;
        let side = orient2d(at(s.from), at(s.to), at(p));
        (rises && side > 0.0) || (falls && side < 0.0)
    });
    crossings.count() % 2 == 1
}
