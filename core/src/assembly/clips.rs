//! Clips along the seams of a plane.

use super::cautions::{CLIPS_NOT_ENGINEERED, NO_CLIP_ROOM, NO_FIXED_CLIP, SHORT_SEAM};
use super::closures::keep_once;
use super::fastener_rows::is_engineered;
use super::plane_panels::PlanePanels;
use super::seam_runs::{SeamRun, seam_runs};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::spacing::{Spacing, SpacingRule, SupportSpacing, SupportUse};
use crate::units::Length;
use core::cmp::Reverse;
use std::collections::BTreeMap;

/// Where clips sit along a seam.
///
/// ```
/// use seamwright::assembly::ClipRule;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let rule = ClipRule::Spaced { spacing: Length::inches(24), end_distance: Length::inches(6), source: Source::CommonPractice };
/// assert_eq!(rule.spacing(), Length::inches(24));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ClipRule {
    /// On a deck: equal spaces, the fewest that keep to the spacing.
    Spaced {
        /// Greatest spacing on centre.
        spacing: Length,
        /// Distance of the first and last clip from the ends of the seam.
        end_distance: Length,
        /// Whose spacing it is.
        source: Source,
    },
    /// On open framing: only where a support is.
    OnSupports {
        /// The supports, as heights up the slope in the plane's own axes, ascending.
        supports: Vec<Length>,
        /// Greatest spacing on centre.
        spacing: Length,
        /// The farthest that the first and last clip may be from the ends of the seam.
        end_distance: Length,
        /// Which supports carry a clip.
        support_use: SupportUse,
        /// Whose spacing it is.
        source: Source,
    },
}

impl ClipRule {
    /// The greatest spacing.
    #[must_use]
    pub const fn spacing(&self) -> Length {
        let (ClipRule::Spaced { spacing, .. } | ClipRule::OnSupports { spacing, .. }) = self;
        *spacing
    }

    /// The end distance.
    #[must_use]
    pub const fn end_distance(&self) -> Length {
        let (ClipRule::Spaced { end_distance, .. } | ClipRule::OnSupports { end_distance, .. }) = self;
        *end_distance
    }

    /// Whose spacing it is.
    #[must_use]
    pub const fn source(&self) -> &Source {
        let (ClipRule::Spaced { source, .. } | ClipRule::OnSupports { source, .. }) = self;
        source
    }
}

/// The band of fixed clips, up the slope in the plane's own axes; every other clip slides.
///
/// ```
/// use seamwright::assembly::FixedZone;
/// use seamwright::units::Length;
/// let zone = FixedZone { from: Length::feet(9), to: Length::feet(11) };
/// assert!(zone.holds(Length::feet(10)) && !zone.holds(Length::feet(12)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct FixedZone {
    /// Its lower end.
    pub from: Length,
    /// Its upper end.
    pub to: Length,
}

impl FixedZone {
    /// Whether a height lies within it.
    #[must_use]
    pub fn holds(&self, y: Length) -> bool {
        self.from <= y && y <= self.to
    }

    pub(super) fn check(&self, path: &str) -> Result<(), Error> {
        if self.from <= self.to {
            return Ok(());
        }
        Err(Error::new(ErrorKind::Conflict, "the fixed zone ends below its start").at(path).value_of(self.to).accepts(format!("{} or more", self.from)))
    }
}

/// Clips for every seam of a plane.
///
/// A seam's run is what lies between the lines that end its panels, less their hold-backs; an overhang takes no clip. A seam too short for
/// both end distances takes one clip in its middle, with a caution.
///
/// # Errors
/// Computing refuses a spacing of zero or less, a negative end distance, a clip without screws ([`ErrorKind::OutOfRange`]), a fixed zone that ends below
/// its start or supports out of order ([`ErrorKind::Conflict`]), and supports that cannot give the spacing ([`ErrorKind::Impossible`]), whose cure names those to
/// add, from the seam's lower end.
///
/// ```
/// use seamwright::assembly::{ClipPlan, ClipRule, PlanePanels};
/// use seamwright::layout::{EdgeUse, Layout, Start};
/// use seamwright::panel::{Panel, PanelEnd, Seam};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::roof::{Outline, Point};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let panel = Panel::new(Length::inches(16), Length::inches(2), Seam::DoubleLock { lock: Length::inches_64(24) })?;
/// let outline = Outline::new(vec![p(0, 0), p(40, 0), p(40, 20), p(0, 20)], vec![])?;
/// let layout = Layout::new(outline, panel, Start::Left, |_| EdgeUse::End(PanelEnd::hold_back(Length::ZERO)))?;
/// let laid = layout.compute()?;
/// let panels = PlanePanels::new("south", &layout, &laid)?;
/// let rule = ClipRule::Spaced { spacing: Length::inches(24), end_distance: Length::inches(12), source: Source::CommonPractice };
/// let clips = ClipPlan { panels: &panels, rule: &rule, along_edges: false, fixed: None, screws_each: 2 }.compute()?;
/// // 29 seams between 30 panels, each with clips at 1 ft, 3 ft ... 19 ft.
/// assert_eq!((clips.groups.len(), clips.groups[0].seams(), clips.clips, clips.screws), (1, 29, 290, 580));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct ClipPlan<'a> {
    /// The plane's panels.
    pub panels: &'a PlanePanels<'a>,
    /// Where clips sit.
    pub rule: &'a ClipRule,
    /// Whether the sides of panels along rakes and walls take clips too.
    pub along_edges: bool,
    /// The band of fixed clips; `None` where all slide, or all are alike.
    pub fixed: Option<FixedZone>,
    /// Screws in each clip.
    pub screws_each: u32,
}

/// Seams with one schedule.
///
/// See [`ClipPlan`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClipGroup {
    /// The length of seam between the ends of its panels.
    pub run: Length,
    /// Whether they are panels' sides along an edge, and no seams.
    pub on_edge: bool,
    /// Where each is, across the plane.
    pub at: Vec<Length>,
    /// The clips, from the seam's lower end.
    pub positions: Vec<Length>,
    /// How many of them are fixed, by number along the seam.
    pub fixed: Vec<usize>,
}

impl ClipGroup {
    /// How many seams have this schedule.
    #[must_use]
    pub fn seams(&self) -> usize {
        self.at.len()
    }
}

/// The clips of a plane.
///
/// See [`ClipPlan`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClipSchedule {
    /// Seams of one schedule together, the longest first.
    pub groups: Vec<ClipGroup>,
    /// All clips.
    pub clips: usize,
    /// Those in the fixed zone.
    pub fixed: usize,
    /// The others; all of them where no fixed zone is given.
    pub sliding: usize,
    /// Screws.
    pub screws: usize,
    /// Whether the spacing is an engineer's.
    pub engineered: bool,
    /// What to know before it is built.
    pub cautions: Vec<Caution>,
}

/// Two lengths that differ by noise have one number. The steps lie where no shop length ends.
fn stepped(length: Length) -> i64 {
    length.pm().saturating_add(333_333).div_euclid(1_000_000)
}

impl ClipPlan<'_> {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.rule.spacing().positive("rule.spacing"));
        faults.keep(self.rule.end_distance().not_negative("rule.end_distance"));
        if self.screws_each == 0 {
            faults.add(Error::new(ErrorKind::OutOfRange, "a clip needs a screw").at("screws_each").value_of(0).accepts("1 or more"));
        }
        if let Some(zone) = self.fixed {
            faults.keep(zone.check("fixed"));
        }
        faults.check()
    }

    /// Clips from the lower end of a seam; whether it was too short.
    fn positions(&self, seam: &SeamRun, cautions: &mut Vec<Caution>) -> Result<(Vec<Length>, bool), Error> {
        match self.rule {
            ClipRule::Spaced { end_distance, .. } if *end_distance * 2 >= seam.run.into() => Ok((vec![seam.run.station(1, 2)?], true)),
            ClipRule::Spaced { spacing, end_distance, .. } => {
                let found = Spacing { run: seam.run, end_distance: *end_distance, rule: SpacingRule::Equal { maximum: *spacing } }.compute()?;
                found.cautions.into_iter().for_each(|c| keep_once(cautions, c));
                Ok((found.positions, false))
            }
            ClipRule::OnSupports { supports, spacing, end_distance, support_use, .. } => {
                let mut here = Vec::with_capacity(supports.len());
                for s in supports {
                    let at = (*s - seam.foot).length()?;
                    if !at.is_negative() && at <= seam.run {
                        here.push(at);
                    }
                }
                let rule = SupportSpacing { run: seam.run, greatest_end_distance: *end_distance, maximum: *spacing, supports: here, support_use: *support_use };
                let found = rule.compute().map_err(|e| e.under(&format!("rule, seam at {} across", seam.x)))?;
                found.cautions.into_iter().for_each(|c| keep_once(cautions, c));
                Ok((found.positions, false))
            }
        }
    }
}

impl Calculation for ClipPlan<'_> {
    type Out = ClipSchedule;

    fn title(&self) -> String {
        format!("clips of {}", self.panels.name())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<ClipSchedule, Error> {
        self.check()?;
        let found = seam_runs(self.panels, self.along_edges)?;
        // Where clips depend on the height at which a seam starts, seams of one length differ.
        let by_foot = self.fixed.is_some() || matches!(self.rule, ClipRule::OnSupports { .. });
        let mut alike: BTreeMap<(Reverse<i64>, i64, bool), Vec<SeamRun>> = BTreeMap::new();
        for seam in found.runs {
            let foot = if by_foot { stepped(seam.foot) } else { 0 };
            alike.entry((Reverse(stepped(seam.run)), foot, seam.on_edge)).or_default().push(seam);
        }
        let mut out =
            ClipSchedule { groups: Vec::new(), clips: 0, fixed: 0, sliding: 0, screws: 0, engineered: is_engineered(self.rule.source()), cautions: Vec::new() };
        let (mut short, mut unfixed, mut first_unfixed) = (0, 0, None);
        for seams in alike.into_values() {
            let Some(first) = seams.first() else { continue };
            let (positions, is_short) = self.positions(first, &mut out.cautions)?;
            let mut fixed = Vec::new();
            if let Some(zone) = self.fixed {
                for (k, at) in positions.iter().enumerate() {
                    if zone.holds((first.foot + *at).length()?) {
                        fixed.push(k);
                    }
                }
                if fixed.is_empty() {
                    unfixed += seams.len();
                    first_unfixed.get_or_insert(first.x);
                }
            }
            r.step(|| {
                Step::new(if first.on_edge { "clips along an edge" } else { "clips along a seam" })
                    .formula("up((run - 2 end distance) / spacing) + 1, or the supports")
                    .with("run", first.run)
                    .with("spacing", self.rule.spacing())
                    .with("end distance", self.rule.end_distance())
                    .with("seams alike", seams.len())
                    .gives(positions.len())
                    .source(self.rule.source().clone())
            });
            short += if is_short { seams.len() } else { 0 };
            out.clips += positions.len() * seams.len();
            out.fixed += fixed.len() * seams.len();
            out.groups.push(ClipGroup { run: first.run, on_edge: first.on_edge, at: seams.iter().map(|s| s.x).collect(), positions, fixed });
        }
        out.sliding = out.clips - out.fixed;
        out.screws = out.clips.saturating_mul(usize::try_from(self.screws_each).unwrap_or(usize::MAX));
        r.step(|| {
            Step::new("screws of the clips").formula("clips x screws each").with("clips", out.clips).with("screws each", self.screws_each).gives(out.screws)
        });
        let rule = |code, path: &str| Caution::new(code, path, self.rule.source().clone());
        if !out.engineered && out.clips > 0 {
            out.cautions.push(rule(CLIPS_NOT_ENGINEERED, "rule.spacing").arg("spacing", self.rule.spacing()).arg("source", self.rule.source()));
        }
        if short > 0 {
            out.cautions.push(Caution::new(SHORT_SEAM, "rule.end_distance", Source::CommonPractice).arg("count", short).arg("end", self.rule.end_distance()));
        }
        if found.vanished > 0 {
            out.cautions.push(Caution::new(NO_CLIP_ROOM, "rule", Source::geometry()).arg("count", found.vanished));
        }
        if let Some(x) = first_unfixed {
            out.cautions.push(Caution::new(NO_FIXED_CLIP, "fixed", Source::user()).arg("count", unfixed).arg("x", x));
        }
        Ok(out)
    }
}
