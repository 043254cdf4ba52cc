//! The section of a pitch transition: where the trim's two flanges meet, or what a riser between them does.

use super::cautions;
use super::support::{SectionPoint, Support};
use super::transition::PitchTransition;
use crate::error::{Error, ErrorKind};
use crate::pitch::{BendAt, JunctionBend, Turn};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Angle, BendAngle, Length};

/// A drop less than this is noise of the coordinates, and no riser.
pub(super) const NOISE: Length = Length::micrometres(1);

/// How the trim gets from the lower plane to the upper one.
///
/// ```
/// use seamwright::junction::Bending;
/// use seamwright::units::Length;
/// assert_ne!(Bending::Direct, Bending::Riser { distance: Length::inches(2) });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Bending {
    /// One bend where the two planes meet.
    Direct,
    /// A riser square to the lower plane, over which water drops.
    Riser {
        /// From the junction line to the riser, along the upper flange, on the side where the direct bend lies.
        distance: Length,
    },
}

/// The water step of a riser.
///
/// ```
/// use seamwright::junction::WaterStep;
/// use seamwright::units::Length;
/// assert!(WaterStep { drop: Length::inches(1) }.drop.is_positive());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct WaterStep {
    /// How far water drops over the riser, square to the lower plane; never negative.
    pub drop: Length,
}

/// The section as solved by [`PitchTransition::section`].
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct TransitionSection {
    /// The height of the trim's underside above the lower deck.
    pub h: Length,
    /// Upper slope angle less lower slope angle; positive where the roof below is the shallower.
    pub difference: Angle,
    /// The bends of the trim from its lower flange to its upper one: one for a direct bend (none where the planes are one), two for a riser.
    pub bends: Vec<JunctionBend>,
    /// The bend, or the top of the riser, along the upper flange from the foot of the junction line; positive up the slope.
    pub bend_on_upper: Length,
    /// The bend, or the foot of the riser, along the lower flange from the foot of the junction line; positive up the slope.
    pub bend_on_lower: Length,
    /// The bend, or the foot of the riser, in the section.
    pub foot: SectionPoint,
    /// The bend, or the top of the riser, in the section.
    pub top: SectionPoint,
    /// The riser's drop, where there is a riser.
    pub step: Option<WaterStep>,
    /// The width of lower flange that hangs free between the lower panels' ends and the bend.
    pub unsupported: Length,
    /// The width of upper flange that hangs free between the bend and the junction line, where the bend lies below it.
    pub unsupported_above: Length,
    /// What must be said beside it.
    pub cautions: Vec<Caution>,
}

impl TransitionSection {
    /// Whether the flanges meet in a riser that is more than noise of the coordinates.
    pub(super) fn has_riser(&self) -> bool {
        riser(self.step)
    }
}

fn riser(step: Option<WaterStep>) -> bool {
    step.is_some_and(|s| s.drop >= NOISE)
}

impl PitchTransition {
    /// The section's geometry; the faults are those of [`PitchTransition::section`].
    pub(super) fn run_section<R: Recorder>(&self, r: &mut R) -> Result<TransitionSection, Error> {
        let d = &self.detail;
        let levels = &self.lower.levels;
        let h = r.part(|| levels.title(), |r| levels.run(r).map_err(|e| e.under("lower.levels")))?;
        let (a, b) = (self.lower.pitch, self.upper.pitch);
        let at = BendAt::PitchTransition { lower: a, upper: b };
        let direct = r.part(|| at.title(), |r| at.run(r))?;
        let difference = Angle::degrees_from(if direct.turn == Turn::Down { -direct.bend.degrees() } else { direct.bend.degrees() })?;
        let (sin, cos) = (difference.sin(), difference.cos());
        let p = d.packing;
        let on_line = Length::from_mm(h.mm() / cos)?;
        // How far the packing falls short of the plane of the lower seam tops at the junction line, square to the lower plane.
        let want = h.mm() - p.mm() * cos;
        let along_upper = match d.bending {
            Bending::Direct => direct_bend(r, want, difference, h, p, on_line)?,
            Bending::Riser { distance } => {
                let side = if sin < 0.0 { -1.0 } else { 1.0 };
                distance.mm() * side
            }
        };
        let drop = Length::from_mm(along_upper * sin - want)?;
        let step = match d.bending {
            Bending::Direct => None,
            Bending::Riser { distance } => {
                r.step(|| {
                    Step::new("drop r").formula("s sin D + p cos D - h").with("s", distance).with("p", p).with("h", h).gives(drop).source(Source::geometry())
                });
                if drop.is_negative() {
                    return Err(Error::new(ErrorKind::Impossible, format!("the riser would dam water by {}", (-drop).length()?))
                        .at("detail.bending.riser.distance")
                        .value_of(distance)
                        .accepts("a riser over which water drops")
                        .cured_by(dam_cure(want, sin, on_line)?));
                }
                Some(WaterStep { drop })
            }
        };
        let along_lower = along_upper * cos - p.mm() * sin;
        let bend_on_upper = Length::from_mm(along_upper)?;
        let bend_on_lower = Length::from_mm(along_lower)?;
        r.step(|| {
            Step::new("bend along the lower flange")
                .formula("s cos D - p sin D")
                .with("s", bend_on_upper)
                .with("p", p)
                .gives(bend_on_lower)
                .source(Source::geometry())
        });
        let hold_back = d.end.hold_back;
        if difference.degrees() < 0.0 {
            let needed = (Length::from_mm((-along_lower).max(0.0))? + d.end.clearance).length()?;
            r.step(|| {
                Step::new("least hold-back of the lower seams")
                    .formula("distance of the bend below the line + clearance")
                    .with("clearance", d.end.clearance)
                    .gives(needed)
            });
            if hold_back < needed {
                return Err(Error::new(
                    ErrorKind::Impossible,
                    format!("the lower seams would pierce the upper flange: {} too little hold-back", (needed - hold_back).length()?),
                )
                .at("detail.end.hold_back")
                .value_of(hold_back)
                .accepts(format!("{needed} or more")));
            }
        }
        let unsupported = (hold_back + bend_on_lower).length()?.max(Length::ZERO);
        let unsupported_above = (-bend_on_upper).length()?.max(Length::ZERO);
        let mut cautions = Vec::new();
        for (subject, width) in [("detail.end.flange", unsupported), ("detail.upper_flange", unsupported_above)] {
            if width > d.unsupported_limit {
                let caution = Caution::new(cautions::UNSUPPORTED_FLANGE, subject, Source::User { note: "the caller's limit".into() });
                cautions.push(caution.arg("width", width).arg("limit", d.unsupported_limit));
            }
        }
        let foot = Support { rise: a.angle(), height: h }.point(bend_on_lower)?;
        let top = Support { rise: b.angle(), height: p }.point(bend_on_upper)?;
        let bends = bends(direct, difference, step)?;
        Ok(TransitionSection { h, difference, bends, bend_on_upper, bend_on_lower, foot, top, step, unsupported, unsupported_above, cautions })
    }
}

/// A riser of no height is the direct bend; two planes of one slope without a riser need no bend.
fn bends(direct: JunctionBend, difference: Angle, step: Option<WaterStep>) -> Result<Vec<JunctionBend>, Error> {
    if riser(step) {
        let bend = |degrees: f64| BendAngle::from_flat(Angle::degrees_from(degrees)?);
        let up = JunctionBend { bend: bend(90.0)?, turn: Turn::Up };
        return Ok(vec![up, JunctionBend { bend: bend(90.0 - difference.degrees())?, turn: Turn::Down }]);
    }
    Ok(if direct.turn == Turn::None { Vec::new() } else { vec![direct] })
}

/// Where the direct bend lies along the upper flange, in millimetres.
fn direct_bend<R: Recorder>(r: &mut R, want: f64, difference: Angle, h: Length, p: Length, on_line: Length) -> Result<f64, Error> {
    let sin = difference.sin();
    if sin == 0.0 {
        if Length::from_mm(want)? == Length::ZERO {
            return Ok(0.0);
        }
        return Err(Error::new(ErrorKind::Impossible, format!("two planes of one slope never meet: the packing is off by {}", Length::from_mm(want)?))
            .at("detail.packing")
            .value_of(p)
            .accepts(format!("{h} for one plane, or more than that with a riser"))
            .cured_by(format!("packing of {h}")));
    }
    let s = want / sin;
    // Beyond a kilometre of flange the planes do not meet on any roof.
    if !s.is_finite() || s.abs() > 1e6 {
        return Err(Error::new(ErrorKind::Impossible, "the slopes differ so little that the bend lies beyond the roof")
            .at("detail.bending")
            .value_of(difference)
            .accepts("a greater difference of slope, or packing")
            .cured_by(format!("packing of {on_line} puts the bend on the line")));
    }
    r.step(|| {
        Step::new("bend along the upper flange s")
            .formula("(h - p cos D) / sin D")
            .with("h", h)
            .with("p", p)
            .with("D", difference)
            .gives(format_args!("{} ({})", Length::from_mm(s).unwrap_or_default(), if s < 0.0 { "down the slope" } else { "up the slope" }))
            .source(Source::geometry())
    });
    Ok(s)
}

fn dam_cure(want: f64, sin: f64, on_line: Length) -> Result<String, Error> {
    if sin == 0.0 {
        return Ok(format!("packing of {on_line} or more"));
    }
    Ok(format!("a distance of {} or more, or packing of {on_line}", Length::from_mm((want / sin).abs())?))
}
