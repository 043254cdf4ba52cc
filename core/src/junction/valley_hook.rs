//! What the panels hook over a pan, in a valley or behind a curb: an offset cleat, or a fold of the pan itself.

use super::draft::{TrimSheet, keep_under, refuse_short};
use super::foldable::told;
use super::offset_cleat::{CleatPlace, LaidCleat, OffsetCleat};
use super::parts::{JunctionTrim, LayoutLine, Side, SideEnd};
use super::support::Support;
use crate::error::{Error, Faults};
use crate::panel::{Hold, PanelEnd};
use crate::record::{Caution, Recorder, Source, Step};
use crate::trim::{Bend, Direction, Edge, Leg, LegEnd};
use crate::units::{Angle, BendAngle, Length};

/// What the panels' ends hook on one side of a valley, or behind a curb.
///
/// In a job file a cleat's `least_screw_height` is [`VALLEY_SCREW_HEIGHT_LEAST`](crate::practice::junction::VALLEY_SCREW_HEIGHT_LEAST), a receiver's `fold`
/// [`END_FOLD`](crate::practice::panel::END_FOLD) and its `least_engagement` [`ENGAGEMENT`](crate::practice::movement::ENGAGEMENT) unless given.
///
/// ```
/// use seamwright::junction::ValleyHook;
/// use seamwright::practice;
/// use seamwright::units::Length;
/// let fold = ValleyHook::ReceiverFold {
///     depth: Length::parse("1 1/4\"")?,
///     opening: Length::parse("1/8\"")?,
///     gap: Length::parse("1/4\"")?,
///     fold: practice::panel::END_FOLD,
///     least_engagement: practice::movement::ENGAGEMENT,
/// };
/// assert_eq!(fold.reach(), Length::parse("1 1/4\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ValleyHook {
    /// A Z on tape, screwed through the pan.
    OffsetCleat {
        /// The cleat.
        cleat: OffsetCleat,
        /// How high its screws must stand above the flow line.
        #[cfg_attr(feature = "serde", serde(default = "super::defaults::valley_screw_height"))]
        least_screw_height: Length,
    },
    /// A fold of the pan, open toward the valley: no hole in the pan.
    ReceiverFold {
        /// From its front up to its back, outside to outside.
        depth: Length,
        /// Clear between the pan and the fold over it.
        opening: Length,
        /// From its front to the nose of the panels' fold, at laying.
        gap: Length,
        /// The panels' fold.
        #[cfg_attr(feature = "serde", serde(default = "super::defaults::end_fold"))]
        fold: Length,
        /// The least length that must be hooked.
        #[cfg_attr(feature = "serde", serde(default = "super::defaults::engagement"))]
        least_engagement: Length,
    },
}

/// One side of a valley as its hook sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct HookPlace {
    /// The side, the face of the pan there, and the rest of where a cleat would stand.
    pub(super) cleat: CleatPlace,
    /// From the pan's centreline, or its low line behind a curb, to the hook's front.
    pub(super) from_centre: Length,
    /// How steeply the plane rises from there.
    pub(super) backing: Angle,
}

/// What a hook gives to its side.
pub(super) struct Hooked {
    pub(super) cleat: Option<LaidCleat>,
    pub(super) end: SideEnd,
    pub(super) cautions: Vec<Caution>,
}

impl ValleyHook {
    /// From its front up to its back.
    #[must_use]
    pub fn reach(&self) -> Length {
        match self {
            ValleyHook::OffsetCleat { cleat, .. } => cleat.width,
            ValleyHook::ReceiverFold { depth, .. } => *depth,
        }
    }

    /// From its front to the nose of the panels' fold, at laying.
    #[must_use]
    pub fn gap(&self) -> Length {
        match self {
            ValleyHook::OffsetCleat { cleat, .. } => cleat.gap,
            ValleyHook::ReceiverFold { gap, .. } => *gap,
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

    /// The underside and the top of what the panels hook over the deck, where the pan's face lies at this height.
    pub(super) fn heights(&self, face: Length, sheet: TrimSheet) -> Result<(Length, Length), Error> {
        match self {
            ValleyHook::OffsetCleat { cleat, .. } => cleat.tongue_heights(face),
            ValleyHook::ReceiverFold { opening, .. } => {
                let low = face + *opening;
                Ok((low.length()?, (low + sheet.thickness * 2).length()?))
            }
        }
    }

    pub(super) fn check(&self, faults: &mut Faults) {
        match self {
            ValleyHook::OffsetCleat { cleat, least_screw_height } => {
                keep_under(faults, "hook.offset-cleat.cleat", cleat.check());
                faults.keep(least_screw_height.not_negative("hook.offset-cleat.least_screw_height"));
            }
            ValleyHook::ReceiverFold { depth, opening, gap, fold, least_engagement } => {
                for (path, length) in [("depth", depth), ("opening", opening), ("fold", fold)] {
                    faults.keep(length.positive(path).map_err(|e| e.under("hook.receiver-fold")));
                }
                for (path, length) in [("gap", gap), ("least_engagement", least_engagement)] {
                    faults.keep(length.not_negative(path).map_err(|e| e.under("hook.receiver-fold")));
                }
            }
        }
    }

    /// How high over the pan's low line its screws stand, and how high they must; nothing where it has none.
    pub(super) fn screw_height<R: Recorder>(&self, r: &mut R, place: &HookPlace) -> Result<Option<(Length, Length)>, Error> {
        let ValleyHook::OffsetCleat { cleat, least_screw_height } = self else { return Ok(None) };
        let from_centre = (place.from_centre + cleat.width - cleat.screws_below_tape_edge).length()?;
        let height = Length::from_mm(from_centre.mm() * place.backing.sin())?;
        r.step(|| {
            let step = Step::new("height of the cleat's screws above the flow line").formula("d sin C");
            step.with("d", from_centre).with("C", place.backing).with("least", *least_screw_height).gives(height).source(Source::geometry())
        });
        Ok(Some((height, *least_screw_height)))
    }

    /// What hooks the panels here: the cleat with its lines, or nothing beside the pan, and the end that it sets; every fault of it is kept.
    pub(super) fn lay<R: Recorder>(&self, r: &mut R, faults: &mut Faults, place: &HookPlace) -> Result<Option<Hooked>, Error> {
        match self {
            ValleyHook::OffsetCleat { cleat, .. } => {
                let laid = cleat.lay(r, &place.cleat).map_err(|e| e.under("hook.offset-cleat.cleat"));
                let Some(laid) = faults.keep(laid) else { return Ok(None) };
                let mut cautions = Vec::new();
                if laid.lift.is_negative() {
                    cautions.extend(laid.off_level("hook.offset-cleat.cleat.rise")?);
                }
                cautions.extend(cleat.thick_tape("hook.offset-cleat.cleat.tape")?);
                let end = laid.end.clone();
                Ok(Some(Hooked { cleat: Some(laid), end, cautions }))
            }
            ValleyHook::ReceiverFold { depth, gap, fold, least_engagement, opening } => {
                let path = "hook.receiver-fold.fold";
                let cure = "a longer fold, or a smaller gap";
                refuse_short(faults, path, "the fold engages too little", *gap + *least_engagement - *fold, *fold, cure)?;
                // The cold draws the nose up against it, and the whole fold into it.
                let what = "the fold strikes the back of the pan's in the cold";
                refuse_short(faults, path, what, *fold - *depth, *fold, "a shorter fold, or a deeper fold of the pan")?;
                let tight = place.cleat.panels.pan - *opening;
                let what = "the panels' fold does not fit into the pan's";
                refuse_short(faults, "hook.receiver-fold.opening", what, tight, *opening, "a wider opening")?;
                let end = PanelEnd::hold_back(place.cleat.front).with_gap(*gap).with_fold(*fold).holding(Hold::Slides);
                Ok(Some(Hooked { cleat: None, end: SideEnd { side: place.cleat.side, end }, cautions: Vec::new() }))
            }
        }
    }

    /// The line of a nose that no cleat gives.
    pub(super) fn nose(&self, side: Side, centreline: (&'static str, Length), front: Length) -> Result<Option<LayoutLine>, Error> {
        let ValleyHook::ReceiverFold { gap, .. } = self else { return Ok(None) };
        LayoutLine::from_line("panel nose", side, centreline.0, centreline.1, front - *gap - centreline.1).map(Some)
    }
}

/// A receiver fold of one side, from the pan's centreline or low line along the pan.
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

impl ValleyHook {
    /// The fold, if it is one, in a pan of this sheet that reaches so far, its front so far out.
    pub(super) fn receiver(&self, sheet: TrimSheet, front: Length, leg: Length) -> Result<Option<Receiver>, Error> {
        let ValleyHook::ReceiverFold { depth, opening, .. } = *self else { return Ok(None) };
        Ok(Some(Receiver { front, back: (front + depth).length()?, opening, depth, leg, height: self.stands_up(sheet)? }))
    }
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
    let name = pan.name.clone();
    pan.profile.validate().map_err(|e| told(&e, &name, pan.profile.legs.iter().map(|l| &*l.name)))?;
    Ok(pan)
}
