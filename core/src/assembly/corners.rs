//! Corners: where lines of the roof meet.

use super::cautions::NO_CORNER_RULE;
use super::corner_rules::line_over;
use super::trim_runs::LineEnds;
use crate::error::{Error, Faults};
use crate::junction::JointMoves;
use crate::practice::assembly as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::roof::{Line, LineKind, Vertex};
use crate::units::Length;
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

    fn check(&self, faults: &mut Faults) {
        faults.keep(self.usual.not_negative("allowances.usual"));
        for (k, own) in self.by_kind.iter().enumerate() {
            faults.keep(own.length.not_negative(&format!("allowances.by_kind[{k}].length")));
        }
    }
}

/// The corners of a roof, from its lines.
///
/// At each, every two lines are set in order by [`laps_over`](super::laps_over), a rake and a transition by which of its planes is the rake's; two of one kind are mitred, or run on where they lie in one
/// straight line; where an expansion joint parts these, they slide, and the lap is longer by what the joint opens in the cold. A valley's lower end where no eave takes its pan dies into the roof below: the pan runs on over the panels there. A line end that laps over
/// another, is mitred, runs on as the first of two, or dies into the roof takes its allowance once, however many it meets.
///
/// # Errors
/// Computing refuses a tolerance of zero or less and a negative allowance ([`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange)).
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
/// let corners = Corners { lines: roof.lines(), tolerance: roof.tolerance(), allowances: &CornerAllowances::usual(), joints: &[] }.compute()?;
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
    /// What its trims run on here.
    pub allowance: Length,
}

/// How the trims of two lines meet.
///
/// See [`Corners`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PairRule {
    /// One laps over the other; the lines by name.
    Laps {
        /// The upper.
        over: String,
        /// The lower.
        under: String,
    },
    /// They are of one kind: mitred and sealed.
    Mitred,
    /// They are of one kind and in one straight line: lapped as along a line.
    RunsOn,
    /// They are of one kind and in one straight line, and an expansion joint parts them: the one laps loose over the other, so that they slide. The lap when laid is
    /// the upper one's allowance here.
    Slides {
        /// The upper: along the panels that on the side on which the joint's cap is fixed, across them that on the upper plane.
        over: String,
        /// The lower.
        under: String,
        /// The joint.
        joint: String,
    },
    /// No rule sets them in order, and a third that laps over both covers them.
    Covered {
        /// The third line.
        by: String,
    },
    /// No rule sets them in order.
    NoRule,
}

/// Two lines at a corner.
///
/// See [`Corners`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CornerPair {
    /// The first, by name.
    pub first: String,
    /// The second, by name.
    pub second: String,
    /// How their trims meet.
    pub rule: PairRule,
    /// Where the rule comes from.
    pub source: Source,
}

/// A corner of the roof.
///
/// See [`Corners`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
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
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RoofCorners {
    /// The corners, in the order of the lines that first end there.
    pub corners: Vec<Corner>,
    /// For each line of the roof, in its order, what its trims run on beyond it.
    pub ends: Vec<LineEnds>,
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

impl<'a> Corners<'a> {
    fn at(&self, line: usize, end: LineEnd) -> Option<(&'a Line, Vertex)> {
        self.lines.get(line).map(|l| (l, if end == LineEnd::Start { l.start } else { l.end }))
    }

    /// Line ends that lie together, found by cells of the tolerance's size, so that a large roof takes no longer a line.
    fn clusters(&self) -> Vec<Vec<(usize, LineEnd)>> {
        let size = i128::from(self.tolerance.pm());
        let mut firsts: BTreeMap<Cell, Vec<(usize, Vertex)>> = BTreeMap::new();
        let mut out: Vec<Vec<(usize, LineEnd)>> = Vec::new();
        for line in 0..self.lines.len() {
            for end in [LineEnd::Start, LineEnd::End] {
                let Some((_, v)) = self.at(line, end) else { continue };
                let [x, y, z] = cell(v, size);
                let around = (0..27).map(|k| [x + k % 3 - 1, y + k / 3 % 3 - 1, z + k / 9 - 1]);
                let found = around.filter_map(|c| firsts.get(&c)).flatten().find(|(_, first)| near(v, *first, self.tolerance.mm())).map(|f| f.0);
                match found.and_then(|k| out.get_mut(k)) {
                    Some(cluster) => cluster.push((line, end)),
                    None => {
                        firsts.entry([x, y, z]).or_default().push((out.len(), v));
                        out.push(vec![(line, end)]);
                    }
                }
            }
        }
        out.retain(|c| c.len() > 1);
        out
    }

    /// Whether two lines go on from each other at a corner, within a degree.
    fn straight(&self, a: (usize, LineEnd), b: (usize, LineEnd)) -> bool {
        let away = |(line, end): (usize, LineEnd)| {
            let (l, from) = self.at(line, end)?;
            let to = if end == LineEnd::Start { l.end } else { l.start };
            let d = |p: Length, q: Length| (q - p).length().map_or(0.0, Length::mm);
            let v = [d(from.x, to.x), d(from.y, to.y), d(from.z, to.z)];
            let norm = v.iter().map(|c| c * c).sum::<f64>().sqrt();
            Some(v.map(|c| c / norm))
        };
        away(a).zip(away(b)).is_some_and(|(a, b)| a.iter().zip(&b).map(|(p, q)| p * q).sum::<f64>() < -0.999_85)
    }

    /// Whether a valley ends here on the roof below: at its lower end, where neither an eave nor another valley that goes on from it takes its water.
    fn runs_out(&self, at: (usize, LineEnd), cluster: &[(usize, LineEnd)]) -> bool {
        let Some((line, here)) = self.at(at.0, at.1).filter(|(l, _)| l.kind == LineKind::Valley) else { return false };
        let there = if at.1 == LineEnd::Start { line.end } else { line.start };
        let takes = |other: &(usize, LineEnd)| {
            self.lines.get(other.0).is_some_and(|l| l.kind == LineKind::Eave || l.kind == LineKind::Valley && *other != at && self.straight(at, *other))
        };
        here.z < there.z && !cluster.iter().any(takes)
    }

    /// The expansion joint at a corner that parts lines of this one's kind, by its number.
    fn joint_between(&self, line: &Line, cluster: &[(usize, LineEnd)]) -> Option<(usize, &'a Line)> {
        let is_joint = |l: &Line| matches!(l.kind, LineKind::ExpansionAlong | LineKind::ExpansionAcross) && l.kind != line.kind;
        cluster.iter().filter_map(|(k, _)| Some((*k, self.lines.get(*k)?))).find(|(_, l)| is_joint(l))
    }

    /// How far it opens in the cold.
    fn opens(&self, joint: usize) -> Length {
        self.joints.iter().find(|(line, _)| *line == joint).map_or(Length::ZERO, |(_, moves)| moves.opens)
    }

    fn pair(&self, a: (usize, LineEnd), b: (usize, LineEnd), cluster: &[(usize, LineEnd)]) -> Option<CornerPair> {
        let (p, q) = (self.lines.get(a.0)?, self.lines.get(b.0)?);
        let laps = |over: &Line, under: &Line| PairRule::Laps { over: over.name.clone(), under: under.name.clone() };
        let third = || cluster.iter().filter_map(|(k, _)| self.lines.get(*k)).find(|t| line_over(t, p) && line_over(t, q));
        let rule = if line_over(p, q) {
            laps(p, q)
        } else if line_over(q, p) {
            laps(q, p)
        } else if p.kind == q.kind && p.kind != LineKind::Unknown {
            if !self.straight(a, b) {
                PairRule::Mitred
            } else if let Some((_, joint)) = self.joint_between(p, cluster) {
                let is_over = |line: &Line| line.sides().any(|s| Some(s.plane) == laps_from(joint));
                let (over, under) = if is_over(q) && !is_over(p) { (q, p) } else { (p, q) };
                PairRule::Slides { over: over.name.clone(), under: under.name.clone(), joint: joint.name.clone() }
            } else {
                PairRule::RunsOn
            }
        } else {
            third().map_or(PairRule::NoRule, |t| PairRule::Covered { by: t.name.clone() })
        };
        Some(CornerPair { first: p.name.clone(), second: q.name.clone(), rule, source: Source::CommonPractice })
    }

    fn corner(&self, cluster: &[(usize, LineEnd)], none: &mut BTreeMap<(LineKind, LineKind), (usize, usize)>, number: usize) -> Result<Option<Corner>, Error> {
        let mut pairs = Vec::new();
        let mut takes = vec![false; cluster.len()];
        let mut take = |k: usize| takes.get_mut(k).map(|t| *t = true);
        let mut slides = vec![Length::ZERO; cluster.len()];
        for (i, a) in cluster.iter().enumerate() {
            for (j, b) in cluster.iter().enumerate().skip(i + 1) {
                let (Some(pair), Some(p), Some(q)) = (self.pair(*a, *b, cluster), self.lines.get(a.0), self.lines.get(b.0)) else { return Ok(None) };
                match &pair.rule {
                    PairRule::Laps { over, .. } => _ = take(if *over == pair.first { i } else { j }),
                    PairRule::Mitred => _ = (take(i), take(j)),
                    PairRule::RunsOn => _ = take(i),
                    PairRule::Slides { over, .. } => {
                        let upper = if *over == pair.first { i } else { j };
                        take(upper);
                        let opens = self.joint_between(p, cluster).map(|(joint, _)| self.opens(joint));
                        if let (Some(slot), Some(opens)) = (slides.get_mut(upper), opens) {
                            *slot = opens.max(*slot);
                        }
                    }
                    PairRule::Covered { .. } => {}
                    PairRule::NoRule => {
                        none.entry((p.kind.min(q.kind), p.kind.max(q.kind))).or_insert((0, number)).0 += 1;
                    }
                }
                pairs.push(pair);
            }
        }
        for (i, at) in cluster.iter().enumerate() {
            if self.runs_out(*at, cluster) {
                take(i);
            }
        }
        let mut lines = Vec::with_capacity(cluster.len());
        for ((&(line, end), takes), slides) in cluster.iter().zip(takes).zip(slides) {
            let Some(l) = self.lines.get(line) else { continue };
            let allowance = if takes { (self.allowances.of(l.kind) + slides).length()? } else { Length::ZERO };
            lines.push(CornerLine { line, name: l.name.clone(), kind: l.kind, end, allowance });
        }
        let Some(&(line, end)) = cluster.first() else { return Ok(None) };
        Ok(self.at(line, end).map(|(_, at)| Corner { at, lines, pairs }))
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
        self.allowances.check(&mut faults);
        faults.check()?;
        let mut none = BTreeMap::new();
        let mut corners = Vec::new();
        let mut ends = vec![LineEnds::default(); self.lines.len()];
        for cluster in self.clusters() {
            corners.extend(self.corner(&cluster, &mut none, corners.len())?);
        }
        for line in corners.iter().flat_map(|c| &c.lines) {
            if let Some(e) = ends.get_mut(line.line) {
                match line.end {
                    LineEnd::Start => e.at_start = line.allowance,
                    LineEnd::End => e.at_end = line.allowance,
                }
            }
            if line.allowance.is_positive() {
                r.step(|| {
                    Step::new(format!("{} runs on at its {}", line.name, if line.end == LineEnd::Start { "start" } else { "end" }))
                        .formula("the corner's allowance, once a line end")
                        .gives(line.allowance)
                        .source(self.allowances.source.clone())
                });
            }
        }
        let cautions = none
            .into_iter()
            .map(|((a, b), (count, first))| {
                Caution::new(NO_CORNER_RULE, format!("corners[{first}]"), Source::CommonPractice).arg("kinds", format_args!("{a} and {b}")).arg("count", count)
            })
            .collect();
        Ok(RoofCorners { corners, ends, cautions })
    }
}
