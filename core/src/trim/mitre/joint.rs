//! The mitre itself.

use super::corner::{Frame, MitreCorner, Way};
use super::cut::PlaneCut;
use super::half::{HalfCut, MitreHalf};
use super::matching::MatchingSection;
use super::section::{Section, SheetSurface};
use super::unlike;
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::num::space::{V3, add, dot, norm, scale};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::size::to_length;
use crate::trim::{BendRule, Face, Flat, Placement, Profile};
use crate::units::{Angle, Length};

/// How the second half of a mitre is made.
///
/// ```
/// use seamwright::trim::SecondHalf;
/// assert_ne!(SecondHalf::Turned, SecondHalf::Upright);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum SecondHalf {
    /// The same profile, turned about its run as the mirror image of the first asks: it closes at any corner, and the result says how far it is turned.
    Turned,
    /// The same profile, upright: only at corners where the mirror image of the first stands upright, which are those without a turn in plan and those
    /// where the one run falls as steeply as the other rises, or both are level.
    Upright,
    /// A profile of its own, both upright: leg by leg the two halves meet where the planes of the legs meet, and each bend must come to lie on the other's.
    Other {
        /// The profile: the same legs and bends in their order, of other lengths and angles.
        profile: Profile,
        /// Where its section is put.
        #[cfg_attr(feature = "serde", serde(default))]
        placement: Placement,
        /// How far the corners of the two halves may part.
        within: Length,
    },
    /// The profile that closes on the first one in one plane ([`MatchingSection`]), upright; both are cut by that plane.
    Matching {
        /// A way square to the plane; the plumb plane that halves the turn in plan where it is left out.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        plane: Option<Way>,
    },
}

/// A mitred corner of a trim.
///
/// Both halves lie with their sections' origins on the two runs, which meet at the corner's origin; where [`Placement`] puts the profile is where it lies
/// beside the run. On each leg the cut is the line in which the mitre plane meets the leg; in the bends it is the developed curve.
///
/// A sheet is cut square to its face, so where the mitre plane leans against a leg the halves close on one surface of the sheet and part or overrun
/// by a little on the others: `closes_on` says which closes.
///
/// # Errors
/// Computing refuses, with the field: every fault of [`Profile::validate_with`]; a run that turns back on itself or has no direction
/// ([`ErrorKind::OutOfRange`], [`ErrorKind::Geometry`]); an upright second half where it would have to be turned, by how much; two profiles whose legs
/// do not meet, by how much ([`ErrorKind::Impossible`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, Mitre, MitreCorner, NeutralFactor, Placement, Profile, SecondHalf, SheetSurface};
/// use seamwright::units::{Angle, BendAngle, Length};
/// let profile = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(24))
///     .leg("flange", Length::inches(4))
///     .down(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .build()?;
/// let square = MitreCorner::Plan { turn: Angle::SQUARE, first_rise: Angle::ZERO, second_rise: Angle::parse("18.435 deg")? };
/// let rule = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// let (placement, tolerance) = (Placement::default(), Length::micrometres(1));
/// let mitre = Mitre { profile, placement, rule, corner: square, second: SecondHalf::Turned, closes_on: SheetSurface::Upper, tolerance };
/// let corner = mitre.compute()?;
/// // Level eave to a rake of 4 in 12: the rake's section is turned.
/// assert!((corner.roll.degrees().abs() - 18.435).abs() < 1e-9);
/// let upright = Mitre { second: SecondHalf::Upright, ..mitre };
/// assert_eq!(upright.compute().unwrap_err().path(), "second");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Mitre {
    /// The profile of the run that arrives.
    pub profile: Profile,
    /// Where its section is put, seen along the run: x to the right, y upward, the run through the origin.
    #[cfg_attr(feature = "serde", serde(default))]
    pub placement: Placement,
    /// The rule of every bend that has none of its own.
    pub rule: BendRule,
    /// The two runs.
    pub corner: MitreCorner,
    /// How the second half is made.
    pub second: SecondHalf,
    /// The surface of the sheet on which the halves close.
    pub closes_on: SheetSurface,
    /// How far a chord of the cut may stray from the curve in a bend.
    pub tolerance: Length,
}

/// A mitred corner, ready to be cut.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, Mitre, MitreCorner, NeutralFactor, Placement, Profile, SecondHalf, SheetSurface};
/// use seamwright::units::{Angle, Length};
/// let strip = Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(4)).build()?;
/// let corner = Mitre {
///     profile: strip,
///     placement: Placement::default(),
///     rule: BendRule::neutral_axis(NeutralFactor::MIDDLE),
///     corner: MitreCorner::Plan { turn: Angle::SQUARE, first_rise: Angle::ZERO, second_rise: Angle::ZERO },
///     second: SecondHalf::Turned,
///     closes_on: SheetSurface::Upper,
///     tolerance: Length::micrometres(1),
/// }
/// .compute()?;
/// // The second half is the mirror image of the first.
/// for (a, b) in corner.first.line.iter().zip(&corner.second.line) {
///     assert_eq!((a.x, a.y.pm()), (b.x, -b.y.pm()));
/// }
/// assert_eq!((corner.roll, corner.parts), (Angle::ZERO, Length::ZERO));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct MitredCorner {
    /// The half that arrives at the corner.
    pub first: MitreHalf,
    /// The half that leaves it.
    pub second: MitreHalf,
    /// The angle between the two runs in space: 0 straight on.
    pub turn: Angle,
    /// How far the second section is turned about its run from upright, counter-clockwise as it is seen along the run.
    pub roll: Angle,
    /// How far the corners of the two halves part, at most: nothing for halves of one profile. For a matching one, whose corners meet, how far the middles of two
    /// fellow bends part, which are round on both halves.
    pub parts: Length,
}

/// A second half of its own section.
struct OtherHalf<'a> {
    flat: Flat,
    placement: &'a Placement,
    within: Length,
}

/// The mirror in which the run that arrives becomes the run that leaves.
fn mirrored(v: V3, normal: V3) -> V3 {
    add(v, scale(normal, -2.0 * dot(v, normal) / dot(normal, normal)))
}

impl Mitre {
    fn flats(&self) -> Result<(Flat, Option<OtherHalf<'_>>), Error> {
        let mut faults = Faults::default();
        faults.keep(self.tolerance.positive("tolerance"));
        let flat = faults.keep(self.profile.unfold(&self.rule).map_err(|e| e.under("profile")));
        let other = match &self.second {
            SecondHalf::Other { profile, placement, within } => {
                faults.keep(within.not_negative("second.other.within"));
                let flat = faults.keep(profile.unfold(&self.rule).map_err(|e| e.under("second.other.profile")));
                flat.map(|flat| OtherHalf { flat, placement, within: *within })
            }
            _ => None,
        };
        faults.check()?;
        Ok((flat.ok_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost"))?, other))
    }

    fn depth(&self, flat: &Flat) -> f64 {
        match self.closes_on {
            SheetSurface::Middle => flat.thickness().mm() / 2.0,
            _ => flat.thickness().mm(),
        }
    }

    /// One plane for both halves, in which the second is the first one's mirror image.
    fn one_plane<R: Recorder>(&self, r: &mut R, flat: &Flat, frames: (Frame, Frame)) -> Result<MitredCorner, Error> {
        let (first, upright) = frames;
        let normal = add(first.along, upright.along);
        let image = mirrored(first.x, normal);
        let roll = num::atan2_deg(dot(image, upright.y), dot(image, upright.x));
        // Noise of the frames is no turn.
        let roll = if roll.abs() < 1e-9 { 0.0 } else { roll };
        let section = Section::of(flat, &self.placement, self.closes_on).map_err(|e| e.under("placement"))?;
        if roll != 0.0 && self.second == SecondHalf::Upright {
            let reach = section.0.iter().flat_map(|s| [s.from, s.to]).map(|(x, y)| num::hypot(x, y)).fold(0.0, f64::max);
            let parts = to_length(2.0 * reach * num::sin_deg(roll.abs() / 2.0))?;
            return Err(Error::new(ErrorKind::Impossible, "upright, the two halves do not meet in one plane")
                .at("second")
                .value_of(format_args!("the second section would have to be turned by {roll} deg; upright the halves part by up to {parts}"))
                .accepts("turned, or a corner where one run falls as the other rises")
                .cured_by("turned, or a profile of its own for the second half"));
        }
        let plane = plane_cut(normal, &first);
        let turn = num::acos_deg(dot(first.along, upright.along).clamp(-1.0, 1.0));
        r.step(|| {
            Step::new("how far the mitre plane runs on along the first run")
                .formula("x kx + y ky; kx = -(u2 X1)/(1 + u1 u2), ky = -(u2 Y1)/(1 + u1 u2)")
                .with("angle between the runs u1 and u2", Angle::of_degrees(turn))
                .with("turn of the second section", Angle::of_degrees(roll))
                .gives(format!("kx = {}, ky = {}", plane.by_x, plane.by_y))
                .source(Source::geometry())
        });
        let back = PlaneCut { at_origin: 0.0, by_x: -plane.by_x, by_y: -plane.by_y };
        let half = |plane: PlaneCut| HalfCut { section: &section, planes: vec![plane; section.0.len()] }.half(flat, self.depth(flat), self.tolerance);
        let (first, second) = (half(plane)?, half(back)?);
        for (cut, stretch) in first.legs.iter().zip(section.0.iter().filter(|s| !s.is_bend())) {
            r.step(|| {
                Step::new(format!("cut of leg {}", cut.part))
                    .formula("cot(angle) = kx cos(h) + ky sin(h), h the leg's heading in the section")
                    .with("h", Angle::of_degrees(stretch.heading))
                    .gives(cut.angle)
                    .source(Source::geometry())
            });
        }
        Ok(MitredCorner { first, second, turn: Angle::degrees_from(turn)?, roll: Angle::degrees_from(roll)?, parts: Length::ZERO })
    }
}

/// A plane through the corner's origin, as it cuts the run of this frame.
fn plane_cut(normal: V3, frame: &Frame) -> PlaneCut {
    let facing = dot(normal, frame.along);
    PlaneCut { at_origin: 0.0, by_x: -dot(normal, frame.x) / facing, by_y: -dot(normal, frame.y) / facing }
}

impl Mitre {
    /// The second half's profile worked out from the first, both cut by the plane in which they close.
    fn matching<R: Recorder>(&self, r: &mut R, flat: &Flat, frames: (Frame, Frame), plane: Option<Way>) -> Result<MitredCorner, Error> {
        let closes_on = match self.closes_on {
            SheetSurface::Upper => Face::Upper,
            SheetSurface::Lower => Face::Lower,
            SheetSurface::Middle => {
                return Err(Error::new(ErrorKind::Conflict, "a matching section closes on a face").at("closes_on").value_of("middle").accepts("upper, lower"));
            }
        };
        let asked = MatchingSection { profile: self.profile.clone(), placement: self.placement, corner: self.corner, plane, closes_on };
        let found = r.part(|| asked.title(), |r| asked.run(r)).map_err(|e| if e.path() == "plane" { e.under("second.matching") } else { e })?;
        let second = found.profile.unfold(&self.rule).map_err(|e| e.under("second"))?;
        let sections = (Section::of(flat, &self.placement, self.closes_on)?, Section::of(&second, &found.placement, self.closes_on)?);
        let normal = asked.normal(frames.0.along, frames.1.along)?;
        let planes = (plane_cut(normal, &frames.0), plane_cut(normal, &frames.1));
        let mut parts = 0.0_f64;
        for (a, b) in sections.0.0.iter().zip(&sections.1.0).filter(|(a, _)| a.is_bend()) {
            let (p, q) = (a.at(0.5), b.at(0.5));
            let apart = add(frames.0.point(p, planes.0.along(p)), scale(frames.1.point(q, planes.1.along(q)), -1.0));
            parts = parts.max(norm(apart));
        }
        let parts = to_length(parts)?;
        let turn = num::acos_deg(dot(frames.0.along, frames.1.along).clamp(-1.0, 1.0));
        r.step(|| {
            let step =
                Step::new("how far the middles of fellow bends part").formula("both halves cut by the plane; corners and legs close, bends are round on both");
            step.with("angle between the runs", Angle::of_degrees(turn)).gives(parts).source(Source::geometry())
        });
        let half = |section: &Section, plane: PlaneCut, flat: &Flat| {
            HalfCut { section, planes: vec![plane; section.0.len()] }.half(flat, self.depth(flat), self.tolerance)
        };
        let (first, second) = (half(&sections.0, planes.0, flat)?, half(&sections.1, planes.1, &second)?);
        Ok(MitredCorner { first, second, turn: Angle::degrees_from(turn)?, roll: Angle::ZERO, parts })
    }
}

impl Calculation for Mitre {
    type Out = MitredCorner;

    fn title(&self) -> String {
        "mitre of a trim".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<MitredCorner, Error> {
        let (flat, other) = self.flats()?;
        let frames = self.corner.frames().map_err(|e| e.under("corner"))?;
        match other {
            None => match self.second {
                SecondHalf::Matching { plane } => self.matching(r, &flat, frames, plane),
                _ => self.one_plane(r, &flat, frames),
            },
            Some(OtherHalf { flat: second, placement, within }) => {
                let sections = (
                    Section::of(&flat, &self.placement, self.closes_on).map_err(|e| e.under("placement"))?,
                    Section::of(&second, placement, self.closes_on).map_err(|e| e.under("second.other.placement"))?,
                );
                let met = unlike::meet(&sections, frames, within).map_err(|e| e.under("second.other"))?;
                let turn = num::acos_deg(dot(frames.0.along, frames.1.along).clamp(-1.0, 1.0));
                r.step(|| {
                    Step::new("how far the corners of the two halves part")
                        .formula("each leg is cut where its plane meets the plane of the other's; the most that the cuts of two legs part at their bend")
                        .with("angle between the runs", Angle::of_degrees(turn))
                        .gives(met.parts)
                        .source(Source::geometry())
                });
                let (one, two) = met.planes;
                let first = HalfCut { section: &sections.0, planes: one }.half(&flat, self.depth(&flat), self.tolerance)?;
                let second = HalfCut { section: &sections.1, planes: two }.half(&second, self.depth(&second), self.tolerance)?;
                Ok(MitredCorner { first, second, turn: Angle::degrees_from(turn)?, roll: Angle::ZERO, parts: met.parts })
            }
        }
    }
}
