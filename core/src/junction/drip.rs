//! A face that goes down over a fascia or a wall, kicks out to a drip, and hooks a continuous cleat if there is one.

use super::cautions::DRIP_NEAR_FACE;
use super::draft::{FastenerRow, LegTo, TrimSheet, Walk, keep_under, leg, reaching, refuse_short, step, through, turned, within};
use super::least::LeastRule;
use super::parts::{Along, AlongLine, Bites, JunctionTrim, LayoutLine, Side, Solved};
use super::support::{SectionPoint, Support};
use crate::error::{Error, ErrorKind, Faults};
use crate::practice::junction as practice;
use crate::record::{Caution, Recorder, Source, Step};
use crate::trim::{Direction, Edge, Face};
use crate::units::{Angle, Length, Sum};
use std::borrow::Cow;

/// A continuous cleat on the face, and the open hem that hooks it.
///
/// ```
/// use seamwright::junction::{ContinuousCleat, FastenerRow, TrimSheet};
/// use seamwright::practice::junction as practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let cleat = ContinuousCleat {
///     sheet: TrimSheet { thickness: Length::mils(28), inside_radius: Length::mils(30) },
///     height: Length::inches(2),
///     fasteners_above_bend: Length::inches(1),
///     fasteners: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
///     hem: practice::EDGE_HEM,
///     hem_gap: (Length::mils(28) + practice::HOOKED_HEM_ROOM).length()?,
///     short_of_fold: Length::parse("1/16\"")?,
///     engagement: Length::parse("1/4\"")?,
/// };
/// // Of a hem of 1/2 in, the fold's own sheet and the room short of it are not engaged.
/// assert_eq!(cleat.engaged(Length::mils(24))?, Length::parse("0.4135\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ContinuousCleat {
    /// Its sheet; gauge and fastening are the engineer's.
    pub sheet: TrimSheet,
    /// From the bend of the kick-out up the face to its upper edge.
    pub height: Length,
    /// From the bend of the kick-out up to its fasteners.
    pub fasteners_above_bend: Length,
    /// Its fasteners.
    pub fasteners: FastenerRow,
    /// Width of the trim's open hem, from the outside of its fold to the sheet's edge; in a job file
    /// [`EDGE_HEM`](crate::practice::junction::EDGE_HEM) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::edge_hem"))]
    pub hem: Length,
    /// Clear inside that hem: the cleat's thickness and what its hooking needs.
    pub hem_gap: Length,
    /// From the inside of the hem's fold to the cleat's edge.
    pub short_of_fold: Length,
    /// The least length that must be engaged.
    pub engagement: Length,
}

impl ContinuousCleat {
    /// How far the cleat reaches into the hem of a trim of this thickness; negative where it misses it.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range.
    pub fn engaged(&self, trim_thickness: Length) -> Result<Length, Error> {
        (self.hem - trim_thickness - self.short_of_fold).length()
    }

    pub(super) fn check(&self, trim_thickness: Length) -> Result<(), Error> {
        let mut faults = Faults::default();
        keep_under(&mut faults, "sheet", self.sheet.check());
        keep_under(&mut faults, "fasteners", self.fasteners.check());
        faults.keep(self.height.positive("height"));
        faults.keep(self.fasteners_above_bend.not_negative("fasteners_above_bend"));
        faults.keep(self.hem.positive("hem"));
        faults.keep(self.hem_gap.positive("hem_gap"));
        faults.keep(self.short_of_fold.not_negative("short_of_fold"));
        faults.keep(self.engagement.not_negative("engagement"));
        core::mem::take(&mut faults).check()?;
        refuse_short(
            &mut faults,
            "hem_gap",
            "the hem is tighter than the cleat is thick",
            self.sheet.thickness - self.hem_gap,
            self.hem_gap,
            "a hem opened to the cleat's thickness and 1/8 in",
        )?;
        refuse_short(
            &mut faults,
            "hem",
            "the hem holds the cleat too little",
            self.engagement - self.engaged(trim_thickness)?,
            self.hem,
            "a wider hem, or a cleat nearer to its fold",
        )?;
        refuse_short(
            &mut faults,
            "fasteners_above_bend",
            "the fasteners miss the cleat",
            self.fasteners_above_bend - self.height,
            self.fasteners_above_bend,
            "a higher cleat",
        )?;
        faults.check()
    }
}

/// How the edge of a drip is finished.
///
/// ```
/// use seamwright::junction::DripHem;
/// use seamwright::practice::junction as practice;
/// let stiff = DripHem::Closed { width: practice::EDGE_HEM };
/// assert!(stiff.cleat().is_none());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum DripHem {
    /// A closed hem that only stiffens: nothing holds the face but its stiffness.
    Closed {
        /// From the outside of the fold to the sheet's edge; in a job file [`EDGE_HEM`](crate::practice::junction::EDGE_HEM) unless given.
        #[cfg_attr(feature = "serde", serde(default = "super::defaults::edge_hem"))]
        width: Length,
    },
    /// An open hem that hooks a continuous cleat.
    Hooked(ContinuousCleat),
}

impl DripHem {
    /// The cleat, if there is one.
    #[must_use]
    pub const fn cleat(&self) -> Option<&ContinuousCleat> {
        match self {
            DripHem::Closed { .. } => None,
            DripHem::Hooked(cleat) => Some(cleat),
        }
    }
}

/// A face with its drip.
///
/// ```
/// use seamwright::junction::{DripFace, DripHem};
/// use seamwright::practice::junction as practice;
/// use seamwright::units::{Angle, Length};
/// let face = DripFace {
///     depth: Length::inches(3),
///     kick: Angle::parse("30 deg")?,
///     clears: practice::DRIP_CLEARS_FACE,
///     hem: DripHem::Closed { width: practice::EDGE_HEM },
/// };
/// // A leg of 1 in at 30 degrees stands out 1/2 in.
/// assert_eq!(face.drip_leg()?, Length::inches(1));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DripFace {
    /// From the junction line, at deck level, down the face to the bend of the kick-out.
    pub depth: Length,
    /// How far the drip turns out from the face.
    pub kick: Angle,
    /// How far the drip's edge stands out from the trim's face, square to it; in a job file
    /// [`DRIP_CLEARS_FACE`](crate::practice::junction::DRIP_CLEARS_FACE) unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::drip_clears_face"))]
    pub clears: Length,
    /// The drip's edge.
    pub hem: DripHem,
}

/// A face as drawn.
pub(super) struct LaidFace {
    /// The bend of the kick-out, then the drip's edge.
    pub(super) bend: SectionPoint,
    pub(super) drip: SectionPoint,
    pub(super) edge: Edge,
    /// Lengths of the face and of the drip, and the bend between them.
    legs: (Length, Length, Angle),
    cleat: Option<LaidCleat>,
    cautions: Vec<Caution>,
}

struct LaidCleat {
    trim: JunctionTrim,
    along: Vec<AlongLine>,
    lines: Vec<LayoutLine>,
}

impl LaidFace {
    /// The legs of the face and of its drip, after a bend from flat into the face.
    pub(super) fn legs(&self, names: (&'static str, &'static str), into: Angle) -> [LegTo; 2] {
        let (face, drip, kick) = self.legs;
        [leg(names.0, self.bend).long(face).bent(into), leg(names.1, self.drip).long(drip).bent(kick)]
    }

    /// The face of a wall that has two, in its place: drawn at the origin, as a face that looks toward +x.
    pub(super) fn placed(self, place: &FacePlace, side: Side, cleat_name: &'static str) -> Result<LaidFace, Error> {
        let cleat = self.cleat.map(|c| -> Result<LaidCleat, Error> {
            let named = |name: Cow<'static, str>| if name == "continuous cleat" { Cow::Borrowed(cleat_name) } else { name };
            let along = c.along.into_iter().map(|a| AlongLine { side, name: named(a.name), ..a }).collect();
            let lines = c.lines.into_iter().map(|l| LayoutLine { side, ..l }).collect();
            Ok(LaidCleat { trim: JunctionTrim { name: cleat_name.into(), ..place.trim(c.trim)? }, along, lines })
        });
        Ok(LaidFace { bend: place.of(self.bend)?, drip: place.of(self.drip)?, cleat: cleat.transpose()?, ..self })
    }

    /// The start of a walk at the drip's edge, and its legs up to the corner over the face.
    pub(super) fn legs_up(&self, names: (&'static str, &'static str), corner: SectionPoint) -> (SectionPoint, [LegTo; 2]) {
        let (face, drip, kick) = self.legs;
        (self.drip, [leg(names.0, self.bend).long(drip), leg(names.1, corner).long(face).bent(kick)])
    }

    /// Adds the cleat, which is set before the trim, and the cautions, under the detail's path.
    pub(super) fn give(self, solved: &mut Solved) {
        self.give_under(solved, "detail");
    }

    /// As [`give`](Self::give), the cautions under this path.
    pub(super) fn give_under(self, solved: &mut Solved, path: &str) {
        if let Some(cleat) = self.cleat {
            solved.trims.push(cleat.trim);
            solved.along.extend(cleat.along);
            solved.lines.extend(cleat.lines);
        }
        solved.cautions.extend(self.cautions.into_iter().map(|c| c.under(path)));
    }
}

/// Where a face stands that is drawn at the origin, looking toward +x; mirrored it looks toward -x.
#[derive(Debug, Clone, Copy)]
pub(super) struct FacePlace {
    pub(super) origin: SectionPoint,
    pub(super) is_mirrored: bool,
}

impl FacePlace {
    fn sign(&self) -> i32 {
        if self.is_mirrored { -1 } else { 1 }
    }

    /// A point of the face's own in the section.
    pub(super) fn of(&self, p: SectionPoint) -> Result<SectionPoint, Error> {
        Ok(SectionPoint { x: (self.origin.x + p.x * self.sign()).length()?, z: (self.origin.z + p.z).length()? })
    }

    /// A trim of the face's own in the section.
    pub(super) fn trim(&self, trim: JunctionTrim) -> Result<JunctionTrim, Error> {
        let mut corners = trim.corners.iter().map(|p| self.of(*p)).collect::<Result<Vec<_>, _>>()?;
        if !self.is_mirrored {
            return Ok(JunctionTrim { corners, ..trim });
        }
        // Walked the other way, its supports lie on the right hand again and its bends turn as before.
        corners.reverse();
        Ok(JunctionTrim { name: trim.name, profile: trim.profile.reversed(), corners })
    }

    /// A point of the section in the face's own terms.
    pub(super) fn back(&self, p: SectionPoint) -> Result<SectionPoint, Error> {
        Ok(SectionPoint { x: ((p.x - self.origin.x).length()? * self.sign()).length()?, z: (p.z - self.origin.z).length()? })
    }
}

impl DripFace {
    /// Length of the drip's leg from the bend to its edge.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a kick-out that is not between 0 and 90 degrees, [`ErrorKind::Overflow`] beyond the range.
    pub fn drip_leg(&self) -> Result<Length, Error> {
        let mut faults = Faults::default();
        within(&mut faults, "kick", self.kick, 0.0, 90.0);
        faults.check()?;
        reaching(self.clears, self.kick)
    }

    /// A fault unless the face comes so far down, under `detail.face`.
    pub(super) fn check_below(&self, faults: &mut Faults, rule: &LeastRule) -> Result<(), Error> {
        let more = (rule.least - self.depth).length()?;
        rule.check(faults, "detail.face.depth", self.depth, self.depth, format!("a face deeper by {more}"))
    }

    /// What lies between the fascia and the trim's face.
    pub(super) fn packing(&self) -> Length {
        self.hem.cleat().map_or(Length::ZERO, |c| c.sheet.thickness)
    }

    pub(super) fn check(&self, sheet: TrimSheet) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.depth.positive("depth"));
        faults.keep(self.clears.positive("clears"));
        within(&mut faults, "kick", self.kick, 0.0, 90.0);
        match &self.hem {
            DripHem::Closed { width } => {
                faults.keep(width.positive("hem.closed.width"));
            }
            DripHem::Hooked(cleat) => keep_under(&mut faults, "hem.hooked", cleat.check(sheet.thickness)),
        }
        faults.check()
    }

    /// Draws the face on the line of this direction through the junction line, below the corner where the trim comes onto it.
    pub(super) fn lay<R: Recorder>(&self, r: &mut R, sheet: TrimSheet, heading: Angle, corner: SectionPoint) -> Result<LaidFace, Error> {
        self.lay_over(r, sheet, heading, corner, Length::ZERO)
    }

    /// As [`lay`](Self::lay), the cleat and the face before something so thick that lies on the fascia.
    pub(super) fn lay_over<R: Recorder>(&self, r: &mut R, sheet: TrimSheet, heading: Angle, corner: SectionPoint, behind: Length) -> Result<LaidFace, Error> {
        let face = Support { rise: heading, height: (self.packing() + behind).length()? };
        let bend = face.point(self.depth)?;
        let length = (self.depth - super::draft::along(corner, heading)?).length()?;
        if !length.is_positive() {
            return Err(Error::new(ErrorKind::Impossible, format!("the face ends {} above the corner where it starts", (-length).length()?))
                .at("face.depth")
                .value_of(self.depth)
                .accepts("a face that reaches below its corner")
                .cured_by("a deeper face"));
        }
        r.step(|| Step::new("face leg").formula("depth - place of the corner").with("depth", self.depth).gives(length).source(Source::geometry()));
        let drip_leg = self.drip_leg()?;
        r.step(|| {
            Step::new("drip leg").formula("clears / sin(kick)").with("clears", self.clears).with("kick", self.kick).gives(drip_leg).source(Source::geometry())
        });
        let out = turned(heading, self.kick.degrees())?;
        let drip = step(bend, out, drip_leg)?;
        let mut cautions = Vec::new();
        if self.clears < practice::DRIP_CLEARS_FACE {
            cautions.push(
                Caution::new(DRIP_NEAR_FACE, "face.clears", Source::CommonPractice).arg("clears", self.clears).arg("practice", practice::DRIP_CLEARS_FACE),
            );
        }
        let (edge, cleat) = match &self.hem {
            DripHem::Closed { width } => (Edge::closed_hem(*width, Direction::Down), None),
            DripHem::Hooked(cleat) => {
                let engaged = cleat.engaged(sheet.thickness)?;
                r.step(|| {
                    Step::new("engaged length of the hem")
                        .formula("hem - trim thickness - short of the fold")
                        .with("hem", cleat.hem)
                        .with("trim thickness", sheet.thickness)
                        .with("short of the fold", cleat.short_of_fold)
                        .gives(engaged)
                        .source(Source::geometry())
                });
                (Edge::open_hem(cleat.hem, cleat.hem_gap, Direction::Down), Some(self.lay_cleat(cleat, sheet, (heading, behind), out, drip)?))
            }
        };
        Ok(LaidFace { bend, drip, edge, legs: (length, drip_leg, self.kick), cleat, cautions })
    }

    /// The cleat lies on the fascia and, below, behind the drip; its edge stands inside the hem.
    fn lay_cleat(
        &self,
        cleat: &ContinuousCleat,
        sheet: TrimSheet,
        (heading, behind): (Angle, Length),
        out: Angle,
        drip: SectionPoint,
    ) -> Result<LaidCleat, Error> {
        let fascia = Support { rise: heading, height: behind };
        let drip_line = through(drip, out)?;
        let behind = Support { rise: out, height: (drip_line.height - cleat.sheet.thickness).length()? };
        let bend = fascia.meets(&behind)?;
        let bend_at = super::draft::along(bend, heading)?;
        let top = (bend_at - cleat.height).length()?;
        let mut faults = Faults::default();
        let what = "the cleat passes the upper edge of the face that it lies on";
        refuse_short(&mut faults, "face.hem.hooked.height", what, -top, cleat.height, "a lower cleat, or a deeper face")?;
        faults.check()?;
        let edge_at = (super::draft::along(drip, out)? - sheet.thickness - cleat.short_of_fold).length()?;
        let trim = Walk {
            name: "continuous cleat",
            sheet: cleat.sheet,
            start: fascia.point(top)?,
            legs: &[leg("face", bend).long(cleat.height), leg("hook", behind.point(edge_at)?).bent(self.kick)],
            start_edge: Edge::Raw,
            end_edge: Edge::Raw,
            painted: Face::Upper,
        }
        .lay()?;
        // On the fascia, up is positive and the walk goes down.
        let up = |at: Sum| (-at).length();
        let fasteners = (bend_at - cleat.fasteners_above_bend).length()?;
        let (top_at, fasteners_at) = (up(top.into())?, up(fasteners.into())?);
        let (row, edge) = ("continuous cleat's fasteners", "continuous cleat, top edge");
        let along = vec![
            AlongLine { name: "continuous cleat".into(), side: Side::Second, what: Along::ContinuousCleat, from_line: top_at },
            cleat.fasteners.line(row, Side::Second, Bites::Structure, fasteners_at),
        ];
        let lines =
            vec![LayoutLine::from_junction(edge, Side::Second, top_at.into())?, LayoutLine::from_line(row, Side::Second, edge, top_at, fasteners_at - top_at)?];
        Ok(LaidCleat { trim, along, lines })
    }
}
