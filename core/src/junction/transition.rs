//! The pitch transition: two planes of one fall that meet at a line parallel to the eaves.
//!
//! The trim's lower flange lies in the plane of the lower seam tops, `h` above the lower deck; its upper flange lies on the upper deck, on packing of
//! thickness `p`. With `D` the upper slope angle less the lower one, the two meet on the upper flange at
//! `s = (h - p cos D) / sin D` from the line: up the slope where the roof below is the shallower (D > 0), down it where the roof below is the steeper.

use super::support::{SectionPoint, Support};
use super::{Levels, cautions};
use crate::error::{Error, ErrorKind};
use crate::pitch::{JunctionBend, Pitch, Turn};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Angle, BendAngle, Length};

/// How the trim gets from the lower plane to the upper one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum Bending {
    /// One bend where the two planes meet.
    Direct,
    /// A riser square to the lower plane, over which water drops.
    Riser {
        /// From the junction line to the riser, along the upper flange, on the side where the direct bend lies.
        distance: Length,
    },
}

/// A pitch transition as asked for.
///
/// ```
/// use seamwright::junction::{Bending, Levels, PitchTransition};
/// use seamwright::pitch::Pitch;
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let asked = PitchTransition {
///     lower: Pitch::parse("3:12")?,
///     upper: Pitch::parse("8:12")?,
///     levels: Levels { seam_height: Length::parse("1 3/4\"")?, ..Levels::default() },
///     packing: Length::ZERO,
///     bending: Bending::Direct,
///     lower_hold_back: Length::parse("1\"")?,
///     clearance: Length::parse("1/4\"")?,
///     unsupported_limit: Length::parse("8\"")?,
/// };
/// let section = asked.compute()?;
/// assert!(section.bend_on_upper.is_positive(), "the roof below is the shallower: the bend lies up the slope");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct PitchTransition {
    /// Pitch of the roof below the line.
    pub lower: Pitch,
    /// Pitch of the roof above the line.
    pub upper: Pitch,
    /// The layers between the lower deck and the underside of the trim.
    pub levels: Levels,
    /// From the upper deck to the underside of the upper flange.
    pub packing: Length,
    /// One bend, or a riser.
    pub bending: Bending,
    /// From the junction line down the lower slope to the lower panels' ends.
    pub lower_hold_back: Length,
    /// What must stay free between the lower seams' ends and the trim's bend, where the roof below is the steeper.
    pub clearance: Length,
    /// The width of flange that may hang free between the lower panels' ends and the bend.
    pub unsupported_limit: Length,
}

/// The water step of a riser.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct WaterStep {
    /// How far water drops over the riser, square to the lower plane; never negative.
    pub drop: Length,
}

/// The section as solved.
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
    /// What must be said beside it.
    pub cautions: Vec<Caution>,
}

impl PitchTransition {
    fn check(&self) -> Result<(), Error> {
        let mut faults = crate::error::Faults::default();
        faults.keep(self.packing.not_negative("packing"));
        faults.keep(self.lower_hold_back.not_negative("lower_hold_back"));
        faults.keep(self.clearance.not_negative("clearance"));
        faults.keep(self.unsupported_limit.not_negative("unsupported_limit"));
        if let Bending::Riser { distance } = self.bending {
            faults.keep(distance.not_negative("bending.riser.distance"));
        }
        faults.check()
    }
}

impl Calculation for PitchTransition {
    type Out = TransitionSection;

    fn title(&self) -> String {
        format!("pitch transition, {} below and {} above", self.lower, self.upper)
    }

    /// Refuses a transition that cannot be built, saying by how much and what would cure it.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<TransitionSection, Error> {
        self.check()?;
        let h = r.part(|| self.levels.title(), |r| self.levels.run(r).map_err(|e| e.under("levels")))?;
        let (a, b) = (self.lower.angle(), self.upper.angle());
        let difference = Angle::degrees_from(b.degrees() - a.degrees())?;
        r.step(|| Step::new("D").formula("upper slope angle - lower slope angle").with("upper", b).with("lower", a).gives(difference));
        let (sin, cos) = (difference.sin(), difference.cos());
        let p = self.packing;
        let on_line = Length::from_mm(h.mm() / cos)?;
        // How far the packing falls short of the plane of the lower seam tops at the junction line, square to the lower plane.
        let want = h.mm() - p.mm() * cos;
        let along_upper = match self.bending {
            Bending::Direct => direct_bend(r, want, difference, h, p, on_line)?,
            Bending::Riser { distance } => {
                let side = if sin < 0.0 { -1.0 } else { 1.0 };
                distance.mm() * side
            }
        };
        let drop = Length::from_mm(along_upper * sin - want)?;
        let step = match self.bending {
            Bending::Direct => None,
            Bending::Riser { distance } => {
                r.step(|| {
                    Step::new("drop r").formula("s sin D + p cos D - h").with("s", distance).with("p", p).with("h", h).gives(drop).source(Source::geometry())
                });
                if drop.is_negative() {
                    return Err(Error::new(ErrorKind::Impossible, format!("the riser would dam water by {}", (-drop).length()?))
                        .at("bending.riser.distance")
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
        if difference.degrees() < 0.0 {
            let needed = (Length::from_mm((-along_lower).max(0.0))? + self.clearance).length()?;
            r.step(|| {
                Step::new("least hold-back of the lower seams")
                    .formula("distance of the bend below the line + clearance")
                    .with("clearance", self.clearance)
                    .gives(needed)
            });
            if self.lower_hold_back < needed {
                return Err(Error::new(
                    ErrorKind::Impossible,
                    format!("the lower seams would pierce the upper flange: {} too little hold-back", (needed - self.lower_hold_back).length()?),
                )
                .at("lower_hold_back")
                .value_of(self.lower_hold_back)
                .accepts(format!("{needed} or more")));
            }
        }
        let unsupported = (self.lower_hold_back + bend_on_lower).length()?.max(Length::ZERO);
        let mut cautions = Vec::new();
        if unsupported > self.unsupported_limit {
            cautions.push(
                Caution::new(cautions::UNSUPPORTED_FLANGE, "lower_flange", Source::User { note: "the caller's limit".into() })
                    .arg("width", unsupported)
                    .arg("limit", self.unsupported_limit),
            );
        }
        let foot = Support { rise: a, height: h }.point(bend_on_lower)?;
        let top = Support { rise: b, height: p }.point(bend_on_upper)?;
        let bends = bends(difference, step)?;
        Ok(TransitionSection { h, difference, bends, bend_on_upper, bend_on_lower, foot, top, step, unsupported, cautions })
    }
}

/// A riser of no height is the direct bend; two planes of one slope without a riser need no bend.
fn bends(difference: Angle, step: Option<WaterStep>) -> Result<Vec<JunctionBend>, Error> {
    let d = difference.degrees();
    let bend =
        |degrees: f64, turn: Turn| -> Result<JunctionBend, Error> { Ok(JunctionBend { bend: BendAngle::from_flat(Angle::degrees_from(degrees)?)?, turn }) };
    match step {
        Some(WaterStep { drop }) if drop.is_positive() => Ok(vec![bend(90.0, Turn::Up)?, bend(90.0 - d, Turn::Down)?]),
        _ if d == 0.0 => Ok(Vec::new()),
        _ => Ok(vec![bend(d.abs(), if d > 0.0 { Turn::Up } else { Turn::Down })?]),
    }
}

/// Where the direct bend lies along the upper flange, in millimetres.
fn direct_bend<R: Recorder>(r: &mut R, want: f64, difference: Angle, h: Length, p: Length, on_line: Length) -> Result<f64, Error> {
    let sin = difference.sin();
    if sin == 0.0 {
        if Length::from_mm(want)? == Length::ZERO {
            return Ok(0.0);
        }
        return Err(Error::new(ErrorKind::Impossible, format!("two planes of one slope never meet: the packing is off by {}", Length::from_mm(want)?))
            .at("packing")
            .value_of(p)
            .accepts(format!("{h} for one plane, or more than that with a riser"))
            .cured_by(format!("packing of {h}")));
    }
    let s = want / sin;
    // Beyond a kilometre of flange the planes do not meet on any roof.
    if !s.is_finite() || s.abs() > 1e6 {
        return Err(Error::new(ErrorKind::Impossible, "the slopes differ so little that the bend lies beyond the roof")
            .at("bending")
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
