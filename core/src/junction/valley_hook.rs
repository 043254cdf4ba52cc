//! What the panels hook in a valley: an offset cleat, or a fold of the pan itself.

use super::cautions;
use super::draft::{FastenerRow, TrimSheet, refuse_short};
use super::parts::{Along, AlongLine, Bites, JunctionTrim, LayoutLine, Side};
use super::support::Support;
use crate::error::{Error, Faults};
use crate::record::{Caution, Recorder, Source, Step};
use crate::trim::{Bend, Direction, Edge, Leg, LegEnd};
use crate::units::{Angle, BendAngle, Length, Sum};

/// What the panels' ends hook on one side of a valley.
///
/// In a job file a cleat's `width` is [`CLEAT_WIDTH`](crate::practice::junction::CLEAT_WIDTH), its `screws_below_tape_edge`
/// [`CLEAT_SCREWS_BELOW_TAPE_EDGE`](crate::practice::junction::CLEAT_SCREWS_BELOW_TAPE_EDGE) and its `least_screw_height`
/// [`VALLEY_SCREW_HEIGHT_LEAST`](crate::practice::junction::VALLEY_SCREW_HEIGHT_LEAST) unless given.
///
/// ```
/// use seamwright::junction::ValleyHook;
/// use seamwright::units::Length;
/// let fold = ValleyHook::ReceiverFold { depth: Length::parse("1 1/4\"")?, opening: Length::parse("1/8\"")? };
/// assert_eq!(fold.reach(), Length::parse("1 1/4\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ValleyHook {
    /// A Z on tape, screwed through the pan.
    OffsetCleat {
        /// From its front up to its back.
        #[cfg_attr(feature = "serde", serde(default = "super::defaults::cleat_width"))]
        width: Length,
        /// From its front up to its web: the room for the panels' fold.
        tongue: Length,
        /// Width of the tape under it, whose upper edge lies at its back.
        tape_width: Length,
        /// From the tape's upper edge down to the screws.
        #[cfg_attr(feature = "serde", serde(default = "super::defaults::cleat_screws_below_tape_edge"))]
        screws_below_tape_edge: Length,
        /// The screws.
        screws: FastenerRow,
        /// How high they must stand above the flow line.
        #[cfg_attr(feature = "serde", serde(default = "super::defaults::valley_screw_height"))]
        least_screw_height: Length,
    },
    /// A fold of the pan, open toward the valley: no hole in the pan.
    ReceiverFold {
        /// From its front up to its back, outside to outside.
        depth: Length,
        /// Clear between the pan and the fold over it.
        opening: Length,
    },
}

impl ValleyHook {
    /// From its front up to its back.
    #[must_use]
    pub fn reach(&self) -> Length {
        match self {
            ValleyHook::OffsetCleat { width, .. } => *width,
            ValleyHook::ReceiverFold { depth, .. } => *depth,
        }
    }

    /// The room for a fold, from its front.
    #[must_use]
    pub fn tongue(&self) -> Length {
        match self {
            ValleyHook::OffsetCleat { tongue, .. } => *tongue,
            ValleyHook::ReceiverFold { depth, .. } => *depth,
        }
    }

    /// How much higher the pan lies beyond it: two thicknesses and the opening for a fold.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range of a length.
    pub fn stands_up(&self, sheet: TrimSheet) -> Result<Length, Error> {
        match self {
            ValleyHook::OffsetCleat { .. } => Ok(Length::ZERO),
            ValleyHook::ReceiverFold { opening, .. } => (sheet.thickness * 2 + *opening).length(),
        }
    }

    pub(super) fn check(&self, faults: &mut Faults) {
        match self {
            ValleyHook::OffsetCleat { width, tongue, tape_width, screws_below_tape_edge, screws, least_screw_height } => {
                faults.keep(width.positive("hook.offset-cleat.width"));
                faults.keep(tongue.positive("hook.offset-cleat.tongue"));
                faults.keep(screws.spacing.positive("hook.offset-cleat.screws.spacing"));
                faults.keep(tape_width.not_negative("hook.offset-cleat.tape_width"));
                faults.keep(screws_below_tape_edge.not_negative("hook.offset-cleat.screws_below_tape_edge"));
                faults.keep(least_screw_height.not_negative("hook.offset-cleat.least_screw_height"));
            }
            ValleyHook::ReceiverFold { depth, opening } => {
                faults.keep(depth.positive("hook.receiver-fold.depth"));
                faults.keep(opening.positive("hook.receiver-fold.opening"));
            }
        }
    }

    /// What lies along the valley on this side: `front` from the pan's centreline and `from_line` from the junction line, where the plane rises at `backing`.
    pub(super) fn along<R: Recorder>(
        &self,
        r: &mut R,
        faults: &mut Faults,
        side: Side,
        front: Length,
        from_line: Length,
        backing: Angle,
    ) -> Result<(Vec<AlongLine>, Vec<Caution>), Error> {
        let ValleyHook::OffsetCleat { width, tongue, tape_width, screws_below_tape_edge, screws, least_screw_height } = self else {
            return Ok((Vec::new(), Vec::new()));
        };
        let up = (*width - *screws_below_tape_edge).length()?;
        let from_centre = (front + up).length()?;
        let height = Length::from_mm(from_centre.mm() * backing.sin())?;
        r.step(|| {
            let step = Step::new("height of the cleat's screws above the flow line").formula("d sin C");
            step.with("d", from_centre).with("C", backing).with("least", *least_screw_height).gives(height).source(Source::geometry())
        });
        refuse_short(
            faults,
            "hook.offset-cleat.least_screw_height",
            "the cleat's screws stand too low above the flow line",
            *least_screw_height - height,
            *least_screw_height,
            "a greater open width, or a receiver fold",
        )?;
        let path = "hook.offset-cleat.tape_width";
        refuse_short(faults, path, "the cleat's screws miss their tape", *screws_below_tape_edge - *tape_width, *tape_width, "wider tape")?;
        let room = (*width - *tongue).length()?;
        refuse_short(faults, path, "the cleat's tape is wider than its foot", *tape_width - room, *tape_width, "narrower tape, or a wider cleat")?;
        let at = |name: &'static str, what: Along, up: Length| -> Result<AlongLine, Error> {
            Ok(AlongLine { name: name.into(), side, what, from_line: (from_line + up).length()? })
        };
        let tape_centre = (*width - tape_width.station(1, 2)?).length()?;
        let fasteners = Along::Fasteners { bites: Bites::Structure, spacing: screws.spacing, source: screws.source.clone() };
        let along = vec![
            at("cleat tape", Along::Tape { width: *tape_width, over_seams: false }, tape_centre)?,
            at("offset cleat, front", Along::OffsetCleat, Length::ZERO)?,
            at("cleat screws", fasteners, up)?,
        ];
        let through = Caution::new(cautions::SCREWS_THROUGH_VALLEY, "hook", Source::CommonPractice).arg("height", height);
        Ok((along, vec![through]))
    }
}

impl ValleyHook {
    /// The lines of a cleat whose front lies this far from the pan's centreline; a receiver fold is part of the pan.
    pub(super) fn lines(&self, side: Side, centreline: (&'static str, Length), front: Length) -> Result<Vec<LayoutLine>, Error> {
        let ValleyHook::OffsetCleat { width, tape_width, screws_below_tape_edge, .. } = self else { return Ok(Vec::new()) };
        let (name, front_at) = ("offset cleat, front", (centreline.1 + front).length()?);
        let from_front = |line: &'static str, by: Sum| LayoutLine::from_line(line, side, name, front_at, by);
        Ok(vec![
            LayoutLine::from_line(name, side, centreline.0, centreline.1, front.into())?,
            from_front("cleat tape, lower edge", *width - *tape_width)?,
            from_front("cleat screws", *width - *screws_below_tape_edge)?,
            from_front("cleat back", (*width).into())?,
        ])
    }
}

/// A receiver fold of one side, from the centreline along the pan.
#[derive(Debug, Clone, Copy)]
pub(super) struct Receiver {
    pub(super) front: Length,
    pub(super) back: Length,
    pub(super) opening: Length,
    pub(super) depth: Length,
    pub(super) leg: Length,
    /// How much higher the outer part lies.
    pub(super) height: Length,
}

impl Receiver {
    /// The outer part, from its edge to the fold's front, and the return between front and back; with the two bends from the outside in.
    fn parts(&self, names: (&'static str, &'static str), hemmed: bool) -> Result<([Leg; 2], [Bend; 2]), Error> {
        let outer = if hemmed { LegEnd::OuterTangent } else { LegEnd::SheetEdge };
        let tangent = LegEnd::OuterTangent;
        let legs = [
            Leg { name: names.0.into(), length: (self.leg - self.front).length()?, start: outer, end: tangent },
            Leg { name: names.1.into(), length: self.depth, start: tangent, end: tangent },
        ];
        let bend = |direction: Direction, inside: Length| Bend { angle: BendAngle::FOLDED, direction, inside_radius: inside, rule: None };
        Ok((legs, [bend(Direction::Down, Length::ZERO), bend(Direction::Up, self.opening.station(1, 2)?)]))
    }
}

/// The pan with the receiver folds of its sides: its walk from edge to edge, each side's support with the centreline's place along it.
pub(super) fn add_receivers(
    mut pan: JunctionTrim,
    one: ((Support, Length), Option<Receiver>),
    two: ((Support, Length), Option<Receiver>),
    edge: Edge,
) -> Result<JunctionTrim, Error> {
    let hemmed = !edge.is_raw();
    let profile = &mut pan.profile;
    let raise = |support: Support, by: Length| -> Result<Support, Error> { Ok(Support { rise: support.rise, height: (support.height + by).length()? }) };
    if let ((support, centre), Some(receiver)) = one {
        let (legs, bends) = receiver.parts(("outer part 1", "return 1"), hemmed)?;
        if let Some(first) = profile.legs.first_mut() {
            first.start = LegEnd::OuterTangent;
        }
        profile.legs.splice(0..0, legs);
        profile.bends.splice(0..0, bends);
        profile.start_edge = edge.clone();
        let high = raise(support, receiver.height)?;
        let at = |out: Length| high.point((centre - out).length()?);
        pan.corners.splice(0..0, [at(receiver.leg)?, at(receiver.front)?]);
    }
    if let ((support, centre), Some(receiver)) = two {
        let (legs, bends) = receiver.parts(("outer part 2", "return 2"), hemmed)?;
        if let Some(last) = profile.legs.last_mut() {
            last.end = LegEnd::OuterTangent;
        }
        profile.legs.extend(legs.iter().rev().map(Leg::reversed));
        profile.bends.extend(bends.into_iter().rev());
        profile.end_edge = edge;
        let high = raise(support, receiver.height)?;
        let at = |out: Length| high.point((centre + out).length()?);
        pan.corners.extend([at(receiver.front)?, at(receiver.leg)?]);
    }
    profile.validate().map_err(|e| e.under("valley pan"))?;
    Ok(pan)
}
