//! The fold and the gap of panels' ends that hook, proposed from the temperatures, in the junction that asks for them.

use super::eave::Eave;
use super::expansion_across::ExpansionAcross;
use super::offset_cleat::OffsetCleat;
use super::parts::Side;
use super::step::Step as RoofStep;
use super::valley_hook::ValleyHook;
use super::whole::JunctionInput;
use crate::error::{Error, ErrorKind, Faults};
use crate::movement::{EndCheck, EndMovement, HeatRange, MovingEnd};
use crate::panel::PanelEnd;
use crate::practice::movement as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Angle, Length, ShopRounding};

/// A junction whose panels' ends are to be given the fold and the gap that their movement needs.
///
/// Every end of the junction that hooks something and slides is proposed: an eave's, a step's upper one, an offset cleat's, a receiver fold's. What stands in the junction for fold and gap is
/// not read; what holds the fold is made to fit it: the strip's overhang (and its width, so that its upper edge stays), the cleat's tongue (and its width), the receiver's depth. All else
/// stays as it is.
///
/// An expansion joint across the panels has temperatures and a fixed line of its own: it takes on those asked with, what moves below the joint is its own `below_to_fixed`, and the front of
/// its flashing comes down, with as much upper flange, where the lap beside the movement asks for it.
///
/// # Errors
/// Computing refuses a junction at which no panel's end hooks ([`ErrorKind::Conflict`] at `of`), what [`EndMovement`] refuses, and what the junction's own section refuses with the proposed
/// ends in it, under `proposed`: by how much, and with what would cure it.
///
/// ```
/// use seamwright::junction::{EndProposal, JunctionInput};
/// use seamwright::record::{Calculation, read_json};
/// let eave = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../docs/junctions/inputs/eave.json"));
/// let range = r#"{"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}"#;
/// let asked = format!(r#"{{"of": {{"eave": {eave}}}, "range": {range}, "to_fixed": "12 m"}}"#);
/// let proposed = read_json::<EndProposal>(asked.as_bytes(), 1 << 20)?.compute()?;
/// let end = &proposed.ends[0];
/// // 12 m move 5.76 mm in the cold and 7.2 mm in the heat.
/// assert_eq!(end.gap.to_string(), "8.935 mm");
/// assert_eq!((end.clearance_in_the_cold.to_string(), end.engagement_in_the_heat.to_string()), ("3.175 mm".into(), "9.525 mm".into()));
/// // The junction goes on as it is, and is built.
/// let JunctionInput::Eave(eave) = &proposed.of else { unreachable!() };
/// assert_eq!((eave.detail.panel.gap, &eave.compute()?.ends[0].end), (end.gap, &end.end));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct EndProposal {
    /// The junction.
    pub of: JunctionInput,
    /// The panels' metal and its temperatures.
    pub range: HeatRange,
    /// From the ends to the line that fixes the panels, along the seams; of the longest panel.
    pub to_fixed: Length,
    /// The same of the panels of the second side, where both sides hook; as `to_fixed` unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub second_to_fixed: Option<Length>,
    /// The least gap that must stay; an eave's own, or [`CLEARANCE`](crate::practice::movement::CLEARANCE), unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub clearance: Option<Length>,
    /// How the brake and the tape round: fold and gap are brought up to it; exact unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rounding: Option<ShopRounding>,
}

/// An end with the fold and the gap that its movement needs.
///
/// See [`EndProposal`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct ProposedEnd {
    /// On which side.
    pub side: Side,
    /// The end as the layout takes it: hold-back or overhang, gap and fold.
    pub end: PanelEnd,
    /// From the nose to what the fold hooks, when laid.
    pub gap: Length,
    /// The fold.
    pub fold: Length,
    /// How far the end moves over the year, square to the line.
    pub travel: Length,
    /// The gap that is left on the coldest night.
    pub clearance_in_the_cold: Length,
    /// The length that is hooked on the hottest afternoon.
    pub engagement_in_the_heat: Length,
}

/// A junction with the ends that were proposed for it.
///
/// See [`EndProposal`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct ProposedEnds {
    /// The junction, as every calculation takes it.
    pub of: JunctionInput,
    /// Each of its ends that hooks and slides.
    pub ends: Vec<ProposedEnd>,
    /// What else to know.
    pub cautions: Vec<Caution>,
}

/// What a movement asks of one end.
#[derive(Clone, Copy)]
struct Needs {
    fold: Length,
    gap: Length,
    clearance: Length,
}

impl Needs {
    /// How far the fold's edge reaches up from what it hooks when the gap is least.
    fn deepest(&self) -> Result<Length, Error> {
        (self.fold - self.clearance).length()
    }
}

impl OffsetCleat {
    fn take(&mut self, needs: Needs) -> Result<(), Error> {
        (self.fold, self.gap) = (needs.fold, needs.gap);
        let longer = (needs.deepest()? - self.tongue).length()?.max(Length::ZERO);
        self.tongue = (self.tongue + longer).length()?;
        self.width = (self.width + longer).length()?;
        Ok(())
    }
}

impl ValleyHook {
    fn least_engagement(&self) -> Length {
        match self {
            ValleyHook::OffsetCleat { cleat, .. } => cleat.least_engagement,
            ValleyHook::ReceiverFold { least_engagement, .. } => *least_engagement,
        }
    }

    fn take(&mut self, needs: Needs) -> Result<(), Error> {
        match self {
            ValleyHook::OffsetCleat { cleat, .. } => cleat.take(needs)?,
            ValleyHook::ReceiverFold { depth, gap, fold, .. } => {
                (*fold, *gap) = (needs.fold, needs.gap);
                *depth = (*depth).max(needs.deepest()?);
            }
        }
        Ok(())
    }
}

impl Eave {
    fn take(&mut self, needs: Needs, behind: Length) -> Result<(), Error> {
        let p = &mut self.detail.panel;
        (p.fold, p.gap, p.clearance) = (needs.fold, needs.gap, needs.clearance);
        let farther = (self.face_at(behind)? + needs.deepest()? - self.detail.panel.overhang).length()?.max(Length::ZERO);
        self.detail.panel.overhang = (self.detail.panel.overhang + farther).length()?;
        self.detail.strip.width = (self.detail.strip.width + farther).length()?;
        Ok(())
    }
}

impl RoofStep {
    fn take(&mut self, needs: Needs) -> Result<(), Error> {
        let (mut eave, behind) = self.upper_eave()?;
        eave.take(needs, behind)?;
        (self.detail.upper.panel, self.detail.upper.strip) = (eave.detail.panel, eave.detail.strip);
        Ok(())
    }
}

impl ExpansionAcross {
    fn take(&mut self, needs: Needs, travel: Length) -> Result<(), Error> {
        let (d, least) = (&mut self.detail.flashing, self.detail.lap.least);
        d.cleat.take(needs)?;
        self.detail.clearance = needs.clearance;
        let lower = (least + travel - needs.gap - d.front_below_top).length()?.max(Length::ZERO);
        d.front_below_top = (d.front_below_top + lower).length()?;
        d.upper_flange = (d.upper_flange + lower).length()?;
        Ok(())
    }
}

/// What an end is to keep, and how it stands.
struct Keeps {
    clearance: Length,
    engagement: Length,
    /// Between the seams and the junction line.
    meeting: Angle,
    /// What moves beyond the junction, beside the panels.
    beyond: Length,
}

impl EndProposal {
    fn needs<R: Recorder>(&self, r: &mut R, side: Side, keeps: &Keeps) -> Result<(Needs, ProposedEnd, Vec<Caution>), Error> {
        let &Keeps { clearance, engagement, meeting, beyond } = keeps;
        let (field, own) = match (side, self.second_to_fixed) {
            (Side::Second, Some(own)) => ("second_to_fixed", own),
            _ => ("to_fixed", self.to_fixed),
        };
        own.not_negative(field)?;
        let to_fixed = (own + beyond).length()?;
        let HeatRange { expansion, coldest, laid, hottest } = self.range;
        let movement = EndMovement { end: MovingEnd::LowerHooked, expansion, to_fixed, coldest, laid, hottest, clearance, engagement, meeting };
        let placed = |e: Error| ["expansion", "coldest", "laid", "hottest"].iter().fold(e.moved("to_fixed", field), |e, f| e.moved(f, &format!("range.{f}")));
        let room = r.part(|| movement.title(), |r| movement.run(r)).map_err(placed)?;
        let up = |length: Length| self.rounding.map_or(Ok(length), |by| by.round(length));
        // A gap brought up leaves the fold as much less.
        let gap = up(room.gap_when_laid)?.max(room.gap_when_laid);
        let least = (gap + room.opening + engagement).length()?.max(room.least_fold);
        let fold = up(least)?.max(least);
        r.step(|| {
            let step = Step::new("fold and gap as they are made").formula("brought up to what the brake and the tape round to").with("gap", gap);
            step.gives(fold).source(Source::user())
        });
        let check = EndCheck { movement, fold, gap };
        let verdict = r.part(|| check.title(), |r| check.run(r)).map_err(placed)?;
        let end = ProposedEnd {
            side,
            end: PanelEnd::hold_back(Length::ZERO),
            gap,
            fold,
            travel: (room.closing + room.opening).length()?,
            clearance_in_the_cold: verdict.least_gap,
            engagement_in_the_heat: verdict.least_engagement,
        };
        let cautions = verdict.cautions.into_iter().map(|c| c.under(if side == Side::Second { "second" } else { "first" })).collect();
        Ok((Needs { fold, gap, clearance }, end, cautions))
    }

    fn no_hook(&self) -> Error {
        let error = Error::new(ErrorKind::Conflict, "no panel's end hooks and slides at this junction").at("of").value_of(self.of.name());
        error
            .accepts("an eave or a step whose panels are not fixed there, a valley, a pitch-transition, a curb-back, an expansion-across")
            .cured_by("the movement of other ends is checked as movement.end-check")
    }
}

impl Calculation for EndProposal {
    type Out = ProposedEnds;

    fn title(&self) -> String {
        format!("fold and gap proposed for a {}", self.of.name())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<ProposedEnds, Error> {
        let mut faults = Faults::default();
        if let Some(clearance) = self.clearance {
            faults.keep(clearance.not_negative("clearance"));
        }
        faults.check()?;
        let clearance = self.clearance.unwrap_or(practice::CLEARANCE);
        let mut out = ProposedEnds { of: self.of.clone(), ends: Vec::new(), cautions: Vec::new() };
        let square = |clearance: Length, engagement: Length| Keeps { clearance, engagement, meeting: Angle::SQUARE, beyond: Length::ZERO };
        let mut propose = |r: &mut R, side: Side, keeps: Keeps| -> Result<(Needs, Length), Error> {
            let (needs, end, cautions) = self.needs(r, side, &keeps)?;
            let travel = end.travel;
            out.ends.push(end);
            out.cautions.extend(cautions);
            Ok((needs, travel))
        };
        let mut of = self.of.clone();
        match &mut of {
            JunctionInput::Eave(eave) if eave.detail.panel.fixed.is_none() => {
                let keeps = square(self.clearance.unwrap_or(eave.detail.panel.clearance), eave.detail.panel.engagement);
                let (needs, _) = propose(r, Side::First, keeps)?;
                eave.take(needs, Length::ZERO).map_err(|e| e.under("of.eave"))?;
            }
            JunctionInput::Step(step) if step.detail.upper.panel.fixed.is_none() => {
                let panel = &step.detail.upper.panel;
                let (needs, _) = propose(r, Side::Second, square(self.clearance.unwrap_or(panel.clearance), panel.engagement))?;
                step.take(needs).map_err(|e| e.under("of.step"))?;
            }
            JunctionInput::ExpansionAcross(joint) => {
                (joint.range, joint.to_fixed) = (self.range, self.second_to_fixed.unwrap_or(self.to_fixed));
                let keeps = square(self.clearance.unwrap_or(joint.detail.clearance), joint.detail.flashing.cleat.least_engagement);
                let beyond = joint.below_to_fixed.not_negative("of.expansion-across.below_to_fixed")?;
                let (needs, travel) = propose(r, Side::Second, Keeps { beyond, ..keeps })?;
                joint.take(needs, travel)?;
            }
            JunctionInput::PitchTransition(t) => {
                let (needs, _) = propose(r, Side::Second, square(clearance, t.detail.cleat.least_engagement))?;
                t.detail.cleat.take(needs)?;
            }
            JunctionInput::CurbBack(c) => {
                let (needs, _) = propose(r, Side::First, square(clearance, c.detail.hook.least_engagement()))?;
                c.detail.hook.take(needs)?;
            }
            JunctionInput::Valley(v) => {
                let at = v.corner.compute().map_err(|e| e.under("of.valley.corner"))?;
                for (side, own, seen) in [(Side::First, &mut v.detail.first, at.first), (Side::Second, &mut v.detail.second, at.second)] {
                    let keeps = Keeps { meeting: seen.meeting(), ..square(clearance, own.hook.least_engagement()) };
                    let (needs, _) = propose(r, side, keeps)?;
                    own.hook.take(needs)?;
                }
            }
            _ => return Err(self.no_hook()),
        }
        let section = r.part(|| "the section with the proposed ends".into(), |r| of.solve(r)).map_err(|e| e.under(&format!("proposed.{}", of.name())))?;
        for proposed in &mut out.ends {
            proposed.end = section.end(proposed.side).cloned().ok_or_else(|| Error::new(ErrorKind::Internal, "a section without its end"))?;
        }
        out.of = of;
        Ok(out)
    }
}
