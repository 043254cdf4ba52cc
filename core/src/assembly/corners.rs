//! Corners: where lines of the roof meet.

use super::cautions::NO_CORNER_RULE;
use super::corner_ends::{Meeting, PairRule, STRAIGHT, TrimEnd, Ways, turns};
use super::corner_rules::{Standing, comes_down_on, hangs_from_eave, line_over};
use super::trim_runs::LineEnds;
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::JointMoves;
use crate::practice::assembly as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::roof::{Line, LineKind, Vertex};
use crate::units::{Angle, Length};
use std::collections::BTreeMap;

/// What a trim runs on beyond its line at a corner, by the kind of its line.
///
/// ```
/// use seamwright::assembly::CornerAllowances;
/// use seamwright::practice;
/// use seamwright::roof::LineKind;
/// let usual = CornerAllowances::usual();
/// assert_eq!(usual.of(LineKind::Valley), practice::assembly::VALLEY_CORNER_ALLOWANCE);
/// assert_eq!(usual.of(LineKind::Eave), practice::assembly::CORNER_ALLOWANCE);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CornerAllowances {
    /// For every kind without one of its own.
    pub usual: Length,
    /// For lines of a kind.
    #[cfg_attr(feature = "serde", serde(default))]
    pub by_kind: Vec<KindAllowance>,
    /// Where the figures come from.
    pub source: Source,
}

/// What a trim on a line of this kind runs on beyond it.
///
/// ```
/// use seamwright::assembly::KindAllowance;
/// use seamwright::roof::LineKind;
/// use seamwright::units::Length;
/// assert_eq!(KindAllowance { kind: LineKind::Rake, length: Length::inches(2) }.kind.name(), "rake");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct KindAllowance {
    /// The kind.
    pub kind: LineKind,
    /// How far.
    pub length: Length,
}

impl CornerAllowances {
    /// As is common practice.
    #[must_use]
    pub fn usual() -> CornerAllowances {
        let valley = KindAllowance { kind: LineKind::Valley, length: practice::VALLEY_CORNER_ALLOWANCE };
        CornerAllowances { usual: practice::CORNER_ALLOWANCE, by_kind: vec![valley], source: Source::CommonPractice }
    }

    /// That of a kind.
    #[must_use]
    pub fn of(&self, kind: LineKind) -> Length {
        self.by_kind.iter().find(|k| k.kind == kind).map_or(self.usual, |k| k.length)
    }

    pub(super) fn check(&self, path: &str, faults: &mut Faults) {
        faults.keep(self.usual.not_negative(&format!("{path}.usual")));
        for (k, own) in self.by_kind.iter().enumerate() {
            faults.keep(own.length.not_negative(&format!("{path}.by_kind[{k}].length")));
            if self.by_kind.iter().take(k).any(|o| o.kind == own.kind) {
                let error = Error::new(ErrorKind::Conflict, "a kind with two allowances").at(format!("{path}.by_kind[{k}].kind")).value_of(own.kind);
                faults.add(error.accepts("each kind once"));
            }
        }
    }
}

/// The corners of a roof, from its lines.
///
/// At each, every two lines are set in order by [`laps_over`](super::laps_over), what goes on across a transition by which of its planes it belongs to; two of one kind run on where they lie in one
/// straight line, or slide where an expansion joint parts them, the lap longer by what the joint opens in the cold; lap where one comes down on the other, or are mitred. Of two that no rule of kinds sets in order, what comes down to the corner laps over what goes down from it; else a
/// third may cover both. A step ends at two corners on each side: with the trims of its lower plane at the riser's foot, and with those of its upper plane, as an eave, at the top of it.
/// A valley's lower end where no eave takes its pan dies into the roof below: the pan runs on over the panels there. A line end that laps over
/// another, is mitred, runs on as the first of two, or dies into the roof takes its allowance once, however many it meets; at a peak so much more as the legs that stand over two mitred lines take to meet. A line that ends alone has a corner of its own, where its trim is capped.
/// In an inside corner of two walls the trim that lies over the other is not capped but turned up the wall across its end.
///
/// # Errors
/// Computing refuses a tolerance of zero or less, a negative allowance and a negative height ([`ErrorKind::OutOfRange`]), and a kind with two allowances ([`ErrorKind::Conflict`]).
///
/// ```
/// use seamwright::assembly::{CornerAllowances, Corners, PairRule};
/// use seamwright::record::Calculation;
/// use seamwright::roof::{PlaneInput, RoofInput, Shape, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let plane = |name: &str, outer| PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
/// let roof = RoofInput::new(vec![
///     plane("south", vec![v(0, 0, 10), v(40, 0, 10), v(40, 20, 20), v(0, 20, 20)]),
///     plane("north", vec![v(40, 40, 10), v(0, 40, 10), v(0, 20, 20), v(40, 20, 20)]),
/// ])
/// .compute()?;
/// let corners = Corners { lines: roof.lines(), tolerance: roof.tolerance(), allowances: &CornerAllowances::usual(), joints: &[], stands: &[] }.compute()?;
/// assert_eq!(corners.corners.len(), 6);
/// let ridge = roof.lines().iter().position(|l| l.name == "ridge 1").unwrap();
/// assert_eq!((corners.ends[ridge].at_start, corners.ends[ridge].at_end), (Length::inches(4), Length::inches(4)));
/// let pair = &corners.corners[0].pairs[0];
/// assert!(matches!(&pair.rule, PairRule::Laps { over, .. } if over.starts_with("rake") || over.starts_with("ridge")));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct Corners<'a> {
    /// The roof's lines.
    pub lines: &'a [Line],
    /// How far apart their ends may lie and still be one corner.
    pub tolerance: Length,
    /// What trims run on.
    pub allowances: &'a CornerAllowances,
    /// What moves at expansion joints, each by the number of its line; one that is not given is taken not to move.
    pub joints: &'a [(usize, JointMoves)],
    /// How high the trims of each line stand over it, by its number: where two go down from a peak their upper legs meet only so much farther on. What is not given takes its allowance alone.
    pub stands: &'a [Length],
}

/// An end of a line.
///
/// ```
/// use seamwright::assembly::LineEnd;
/// assert_ne!(LineEnd::Start, LineEnd::End);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum LineEnd {
    /// Its start.
    Start,
    /// Its end.
    End,
}

/// A line's end at a corner.
///
/// See [`Corners`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CornerLine {
    /// The line's number among the roof's lines.
    pub line: usize,
    /// Its name.
    pub name: String,
    /// Its kind.
    pub kind: LineKind,
    /// Which end of it.
    pub end: LineEnd,
    /// Along the upper edge of a step, how far over the line's own end the corner stands: its riser. None at any other.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub above: Option<Length>,
    /// What its trims run on here.
    pub allowance: Length,
    /// How the end of its trim is closed here.
    pub closed: TrimEnd,
}

/// Two lines at a corner.
///
/// See [`Corners`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CornerPair {
    /// The first, by name.
    pub first: String,
    /// The second, by name.
    pub second: String,
    /// How their trims meet.
    pub rule: PairRule,
    /// Between the two lines at the corner.
    pub between: Angle,
    /// The same as seen from above.
    pub plan: Angle,
    /// The bevel on the sheet: from a trim's own line to the cut across its end, in the plane of both lines. Along the line that it laps over, and along an eave always; square where another line than
    /// an eave leaves at more than a right angle, since that one's own leg lies under it there, and where both are in one straight line; half way between two that are mitred, that are of one kind
    /// or that go on from each other over a bend of the slope. None where neither is cut to the other.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub cut: Option<Angle>,
    /// The same cut as seen from above, from the trim's own line. None where it cannot be set from there: half way between lines of unlike slope, square to
    /// a sloping line, and where the one line lies over the other.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub cut_plan: Option<Angle>,
    /// Where the rule comes from.
    pub source: Source,
}

/// A corner of the roof.
///
/// See [`Corners`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Corner {
    /// Where it is: the end of its first line.
    pub at: Vertex,
    /// The lines that end there, in the roof's order.
    pub lines: Vec<CornerLine>,
    /// Every two of them.
    pub pairs: Vec<CornerPair>,
}

/// All corners, and what each line's trims run on.
///
/// See [`Corners`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RoofCorners {
    /// The corners, in the order of the lines that first end there.
    pub corners: Vec<Corner>,
    /// For each line of the roof, in its order, what its trims run on beyond it.
    pub ends: Vec<LineEnds>,
    /// The same for the trims along the upper edge of each step; nothing at any other line.
    pub upper_ends: Vec<LineEnds>,
    /// What to decide before trims are cut.
    pub cautions: Vec<Caution>,
}

type Cell = [i128; 3];

fn cell(v: Vertex, size: i128) -> Cell {
    [v.x, v.y, v.z].map(|c| i128::from(c.pm()).div_euclid(size))
}

fn near(a: Vertex, b: Vertex, tolerance: f64) -> bool {
    let d = |p: Length, q: Length| (p - q).length().map_or(f64::INFINITY, Length::mm);
    let (x, y, z) = (d(a.x, b.x), d(a.y, b.y), d(a.z, b.z));
    x * x + y * y + z * z <= tolerance * tolerance
}

/// The plane whose lines lap over those beyond a joint: along the panels the one on which its cap is fixed, across them the upper one.
fn laps_from(joint: &Line) -> Option<usize> {
    if joint.kind == LineKind::ExpansionAcross { joint.crossing().map(|(upper, _)| upper) } else { Some(joint.side.plane) }
}

/// An end of a line, at its own height or on top of its riser.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Place {
    line: usize,
    end: LineEnd,
    is_above: bool,
}

/// For each two kinds that no rule sets in order: how many corners, the number of the first, and where it is.
type WithoutRule = BTreeMap<(LineKind, LineKind), (usize, usize, Vertex)>;

impl<'a> Corners<'a> {
    /// Where a place is, and where its line's other end is.
    fn at(&self, place: Place) -> Option<(&'a Line, Vertex, Vertex)> {
        let l = self.lines.get(place.line)?;
        let up = if place.is_above { l.riser? } else { Length::ZERO };
        let raised = |v: Vertex| Some(Vertex { z: (v.z + up).length().ok()?, ..v });
        let (here, there) = if place.end == LineEnd::Start { (l.start, l.end) } else { (l.end, l.start) };
        Some((l, raised(here)?, raised(there)?))
    }

    /// Line ends that lie together, found by cells of the tolerance's size, so that a large roof takes no longer a line.
    fn clusters(&self) -> Vec<Vec<Place>> {
        let size = i128::from(self.tolerance.pm());
        let mut firsts: BTreeMap<Cell, Vec<(usize, Vertex)>> = BTreeMap::new();
        let mut out: Vec<Vec<Place>> = Vec::new();
        let ends = |line| {
            [(LineEnd::Start, false), (LineEnd::End, false), (LineEnd::Start, true), (LineEnd::End, true)].map(|(end, is_above)| Place { line, end, is_above })
        };
        for place in (0..self.lines.len()).flat_map(ends) {
            let Some((_, v, _)) = self.at(place) else { continue };
            let [x, y, z] = cell(v, size);
            let around = (0..27).map(|k| [x + k % 3 - 1, y + k / 3 % 3 - 1, z + k / 9 - 1]);
            let found = around.filter_map(|c| firsts.get(&c)).flatten().find(|(_, first)| near(v, *first, self.tolerance.mm())).map(|f| f.0);
            match found.and_then(|k| out.get_mut(k)) {
                Some(cluster) => cluster.push(place),
                None => {
                    firsts.entry([x, y, z]).or_default().push((out.len(), v));
                    out.push(vec![place]);
                }
            }
        }
        out
    }

    fn standing(&self, place: Place) -> Option<Standing<'a>> {
        let (line, here, there) = self.at(place)?;
        let rise = (there.z - here.z).length().map_or(0.0, Length::mm);
        Some(Standing { line, kind: if place.is_above { LineKind::Eave } else { line.kind }, rise })
    }

    /// Two lines at a corner, away from it.
    fn ways(&self, a: Place, b: Place) -> Option<Ways> {
        let ((_, p, to_a), (_, q, to_b)) = (self.at(a)?, self.at(b)?);
        Ways::of((p, to_a), (q, to_b))
    }

    /// Whether a valley ends here on the roof below: at its lower end, where neither an eave nor another valley that goes on from it takes its water.
    fn runs_out(&self, at: Place, cluster: &[Place]) -> bool {
        let Some((_, here, there)) = self.at(at).filter(|(l, ..)| l.kind == LineKind::Valley) else { return false };
        let takes = |other: &Place| {
            self.standing(*other).is_some_and(|l| {
                l.kind == LineKind::Eave
                    || l.kind == LineKind::Valley && *other != at && self.ways(at, *other).is_some_and(|ways| ways.between.degrees() > STRAIGHT)
            })
        };
        here.z < there.z && !cluster.iter().any(takes)
    }

    /// The expansion joint at a corner that parts lines of this one's kind, by its number.
    fn joint_between(&self, line: &Line, cluster: &[Place]) -> Option<(usize, &'a Line)> {
        let is_joint = |l: &Line| l.kind.is_expansion_joint() && l.kind != line.kind;
        cluster.iter().filter_map(|k| Some((k.line, self.lines.get(k.line)?))).find(|(_, l)| is_joint(l))
    }

    /// How far it opens in the cold.
    fn opens(&self, joint: usize) -> Length {
        self.joints.iter().find(|(line, _)| *line == joint).map_or(Length::ZERO, |(_, moves)| moves.opens)
    }

    /// How far two trims that go down from a peak and are mitred there run on until their upper edges meet; nothing at another mitre, whose legs lie within the bend.
    fn to_meet(&self, (a, p): (Place, &Standing<'_>), (b, q): (Place, &Standing<'_>), pair: &CornerPair) -> Result<Length, Error> {
        let is_down = |s: &Standing<'_>| s.rise < -self.tolerance.mm();
        let Some(cut) = pair.cut.filter(|_| is_down(p) && is_down(q) && pair.plan.degrees() > STRAIGHT) else { return Ok(Length::ZERO) };
        let stands = |place: Place| self.stands.get(place.line).copied().filter(|_| !place.is_above).unwrap_or_default();
        Length::from_mm(stands(a).max(stands(b)).mm() / cut.tan())
    }

    /// Two trims in one straight line: lapped, or loose where a joint parts them.
    fn goes_on(&self, p: &Line, q: &Line, cluster: &[Place]) -> PairRule {
        let Some((_, joint)) = self.joint_between(p, cluster) else { return PairRule::RunsOn };
        let is_over = |line: &Line| line.sides().any(|s| Some(s.plane) == laps_from(joint));
        let (over, under) = if is_over(q) && !is_over(p) { (q, p) } else { (p, q) };
        PairRule::Slides { over: over.name.clone(), under: under.name.clone(), joint: joint.name.clone() }
    }

    /// Whether walls stand along both lines and meet in an inside corner of their plane, so that each stands across the other's end.
    fn walls_meet_inside(&self, a: Place, b: Place) -> bool {
        let wall = |at: Place| self.at(at).filter(|(l, ..)| l.kind.stands_at_a_wall() && !at.is_above);
        let (Some((p, here, to_a)), Some((q, _, to_b))) = (wall(a), wall(b)) else { return false };
        // Their plane lies on the left of both: one comes to the corner, the other goes out from it.
        p.side.plane == q.side.plane
            && match (a.end, b.end) {
                (LineEnd::Start, LineEnd::End) => turns(here, to_a, to_b) > 0.0,
                (LineEnd::End, LineEnd::Start) => turns(here, to_b, to_a) > 0.0,
                _ => false,
            }
    }

    fn pair(&self, a: Place, b: Place, cluster: &[Place]) -> Option<CornerPair> {
        let (p, q) = (self.standing(a)?, self.standing(b)?);
        let ways = self.ways(a, b)?;
        let tolerance = self.tolerance.mm();
        let laps = |over: &Standing<'_>, under: &Standing<'_>| PairRule::Laps { over: over.line.name.clone(), under: under.line.name.clone() };
        let over = |p: &Standing<'_>, q: &Standing<'_>| line_over(p, q, tolerance);
        let hangs = |p: &Standing<'_>, q: &Standing<'_>| hangs_from_eave(p, q, tolerance);
        let third = || cluster.iter().filter_map(|k| self.standing(*k)).find(|t| over(t, &p) && over(t, &q));
        let alike = p.kind == q.kind && p.kind != LineKind::Unknown;
        let rule = match () {
            () if over(&p, &q) => laps(&p, &q),
            () if over(&q, &p) => laps(&q, &p),
            () if alike && ways.between.degrees() > STRAIGHT => self.goes_on(p.line, q.line, cluster),
            () if comes_down_on(&p, &q, tolerance) => laps(&p, &q),
            () if comes_down_on(&q, &p, tolerance) => laps(&q, &p),
            () if alike => PairRule::Mitred,
            () => match third() {
                Some(t) => PairRule::Covered { by: t.line.name.clone() },
                None if hangs(&p, &q) => laps(&q, &p),
                None if hangs(&q, &p) => laps(&p, &q),
                None => PairRule::NoRule,
            },
        };
        let first_over = matches!(&rule, PairRule::Laps { over, .. } if *over == p.line.name);
        let (cut, cut_plan) = ways.cut(Meeting { rule: &rule, alike, first_over, over_eave: (if first_over { q.kind } else { p.kind }) == LineKind::Eave });
        let Ways { between, plan, .. } = ways;
        Some(CornerPair { first: p.line.name.clone(), second: q.line.name.clone(), rule, between, plan, cut, cut_plan, source: Source::CommonPractice })
    }

    fn corner(&self, cluster: &[Place], none: &mut WithoutRule, number: usize) -> Result<Option<Corner>, Error> {
        let standing: Option<Vec<Standing<'_>>> = cluster.iter().map(|place| self.standing(*place)).collect();
        let (Some(standing), Some((_, at, _))) = (standing, cluster.first().and_then(|place| self.at(*place))) else { return Ok(None) };
        let mut pairs = Vec::new();
        let mut takes = vec![false; cluster.len()];
        let mut closed = vec![TrimEnd::Capped; cluster.len()];
        let mut slides = vec![Length::ZERO; cluster.len()];
        let mut least = slides.clone();
        let mut take = |k: usize| takes.get_mut(k).map(|t| *t = true);
        let mut close = |k: usize, how: TrimEnd| closed.get_mut(k).map(|c| *c = (*c).max(how));
        for (i, (a, p)) in cluster.iter().zip(&standing).enumerate() {
            for (j, (b, q)) in cluster.iter().zip(&standing).enumerate().skip(i + 1) {
                let Some(pair) = self.pair(*a, *b, cluster) else { return Ok(None) };
                match &pair.rule {
                    PairRule::Laps { over, .. } => {
                        let (over, under) = if *over == pair.first { (i, j) } else { (j, i) };
                        _ = (take(over), close(under, TrimEnd::Covered));
                        if self.walls_meet_inside(*a, *b) {
                            close(over, TrimEnd::TurnedUp);
                        }
                    }
                    PairRule::Mitred => {
                        _ = (take(i), take(j), close(i, TrimEnd::Joined), close(j, TrimEnd::Joined));
                        let to_meet = self.to_meet((*a, p), (*b, q), &pair)?;
                        [i, j].iter().for_each(|k| {
                            if let Some(slot) = least.get_mut(*k) {
                                *slot = to_meet.max(*slot)
                            }
                        });
                    }
                    PairRule::RunsOn => _ = (take(i), close(i, TrimEnd::Joined), close(j, TrimEnd::Joined)),
                    PairRule::Slides { over, .. } => {
                        let upper = if *over == pair.first { i } else { j };
                        _ = (take(upper), close(i, TrimEnd::Joined), close(j, TrimEnd::Joined));
                        let opens = self.joint_between(p.line, cluster).map(|(joint, _)| self.opens(joint));
                        if let (Some(slot), Some(opens)) = (slides.get_mut(upper), opens) {
                            *slot = opens.max(*slot);
                        }
                    }
                    PairRule::Covered { .. } => _ = (close(i, TrimEnd::Covered), close(j, TrimEnd::Covered)),
                    PairRule::NoRule => {
                        none.entry((p.kind.min(q.kind), p.kind.max(q.kind))).or_insert((0, number, at)).0 += 1;
                        _ = (close(i, TrimEnd::Undecided), close(j, TrimEnd::Undecided));
                    }
                }
                pairs.push(pair);
            }
        }
        let has = |kind| standing.iter().any(|s| s.kind == kind);
        for (i, (place, s)) in cluster.iter().zip(&standing).enumerate() {
            if self.runs_out(*place, cluster) {
                take(i);
            }
            if s.kind == LineKind::CurbBack || s.kind == LineKind::Valley && s.rise >= -self.tolerance.mm() {
                close(i, TrimEnd::Outlet);
            } else if matches!(s.kind, LineKind::Sidewall | LineKind::CurbSide) && s.rise > 0.0 && has(LineKind::Eave) {
                close(i, TrimEnd::KickOut);
            }
        }
        let mut lines = Vec::with_capacity(cluster.len());
        for (((((place, s), takes), closed), slides), least) in cluster.iter().zip(&standing).zip(takes).zip(closed).zip(slides).zip(least) {
            let allowance = if takes { (self.allowances.of(s.kind).max(least) + slides).length()? } else { Length::ZERO };
            let above = s.line.riser.filter(|_| place.is_above);
            lines.push(CornerLine { line: place.line, name: s.line.name.clone(), kind: s.line.kind, end: place.end, above, allowance, closed });
        }
        Ok(Some(Corner { at, lines, pairs }))
    }
}

impl Calculation for Corners<'_> {
    type Out = RoofCorners;

    fn title(&self) -> String {
        "corners of the roof".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<RoofCorners, Error> {
        let mut faults = Faults::default();
        faults.keep(self.tolerance.positive("tolerance"));
        self.allowances.check("allowances", &mut faults);
        for (k, height) in self.stands.iter().enumerate() {
            faults.keep(height.not_negative(&format!("stands[{k}]")));
        }
        faults.check()?;
        let mut none = BTreeMap::new();
        let mut corners = Vec::new();
        let mut ends = vec![LineEnds::default(); self.lines.len()];
        let mut upper_ends = ends.clone();
        for cluster in self.clusters() {
            corners.extend(self.corner(&cluster, &mut none, corners.len())?);
        }
        for line in corners.iter().flat_map(|c| &c.lines) {
            if let Some(e) = if line.above.is_some() { &mut upper_ends } else { &mut ends }.get_mut(line.line) {
                match line.end {
                    LineEnd::Start => e.at_start = line.allowance,
                    LineEnd::End => e.at_end = line.allowance,
                }
            }
            if line.allowance.is_positive() {
                r.step(|| {
                    Step::new(format!("{} runs on at its {}", line.name, if line.end == LineEnd::Start { "start" } else { "end" }))
                        .formula("the corner's allowance, once a line end; at a peak at least height / tan(cut)")
                        .gives(line.allowance)
                        .source(self.allowances.source.clone())
                });
            }
        }
        let cautions = none
            .into_iter()
            .map(|((a, b), (count, first, at))| {
                let said = Caution::new(NO_CORNER_RULE, format!("corners[{first}]"), Source::CommonPractice).arg("kinds", format_args!("{a} and {b}"));
                said.arg("count", count).arg("x", at.x).arg("y", at.y).arg("z", at.z)
            })
            .collect();
        Ok(RoofCorners { corners, ends, upper_ends, cautions })
    }
}
