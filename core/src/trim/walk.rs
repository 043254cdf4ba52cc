//! One walk over a profile from edge to edge, hems and all: the only place where an edge becomes legs and bends.

use super::edge::Fold;
use super::leg::{Bend, Direction, Leg, LegEnd};
use super::profile::Profile;
use super::rule::BendRule;
use crate::units::{BendAngle, Length};
use core::fmt;

/// Which leg or bend of the profile a part of the flat or of the outline is.
///
/// ```
/// use seamwright::trim::Part;
/// assert_eq!(Part::Body(2).to_string(), "2");
/// assert_eq!(Part::StartHem.to_string(), "start hem");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Part {
    /// The return, or the fold, of the hem at the start edge.
    StartHem,
    /// The leg, or the bend, of this index in the profile.
    Body(usize),
    /// The return, or the fold, of the hem at the end edge.
    EndHem,
}

impl Part {
    /// The field of a profile that a bend comes from.
    pub(super) fn bend_path(self) -> String {
        match self {
            Part::StartHem => "start_edge".to_owned(),
            Part::Body(i) => format!("bends[{i}]"),
            Part::EndHem => "end_edge".to_owned(),
        }
    }

    /// The field of a profile that a leg comes from.
    pub(super) fn leg_path(self) -> String {
        match self {
            Part::StartHem => "start_edge".to_owned(),
            Part::Body(i) => format!("legs[{i}]"),
            Part::EndHem => "end_edge".to_owned(),
        }
    }
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Part::StartHem => f.write_str("start hem"),
            Part::Body(i) => i.fmt(f),
            Part::EndHem => f.write_str("end hem"),
        }
    }
}

/// A leg as walked.
#[derive(Debug, Clone, Copy)]
pub(super) struct WalkLeg<'a> {
    pub(super) part: Part,
    pub(super) name: &'a str,
    pub(super) length: Length,
    pub(super) start: LegEnd,
    pub(super) end: LegEnd,
}

/// A bend as walked.
#[derive(Debug, Clone, Copy)]
pub(super) struct WalkBend<'a> {
    pub(super) part: Part,
    pub(super) angle: BendAngle,
    pub(super) direction: Direction,
    pub(super) inside_radius: Length,
    pub(super) rule: Option<&'a BendRule>,
}

/// The walk over one profile. Its places count the returns and the folds of hems.
#[derive(Debug, Clone, Copy)]
pub(super) struct Walk<'a> {
    legs: &'a [Leg],
    bends: &'a [Bend],
    start_hem: Option<Fold<'a>>,
    end_hem: Option<Fold<'a>>,
}

impl<'a> Walk<'a> {
    #[inline(always)]
    pub(super) fn of(profile: &'a Profile) -> Walk<'a> {
        Walk { legs: &profile.legs, bends: &profile.bends, start_hem: profile.start_edge.fold(), end_hem: profile.end_edge.fold() }
    }

    /// The leg at this place; nothing behind the last.
    #[inline(always)]
    pub(super) fn leg(&self, at: usize) -> Option<WalkLeg<'a>> {
        let index = self.index(at);
        if let Some(leg) = self.legs.get(index) {
            return Some(WalkLeg { part: Part::Body(index), name: &leg.name, length: leg.length, start: leg.start, end: leg.end });
        }
        let (part, fold) = self.hem(index, self.legs.len())?;
        let (name, start, end) = match part {
            Part::StartHem => ("start hem", LegEnd::SheetEdge, LegEnd::OuterTangent),
            _ => ("end hem", LegEnd::OuterTangent, LegEnd::SheetEdge),
        };
        Some(WalkLeg { part, name, length: fold.width, start, end })
    }

    /// The bend behind the leg at this place; nothing behind the last leg.
    #[inline(always)]
    pub(super) fn bend(&self, at: usize) -> Option<WalkBend<'a>> {
        let index = self.index(at);
        if let Some(bend) = self.bends.get(index) {
            let Bend { angle, direction, inside_radius, rule } = bend;
            return Some(WalkBend { part: Part::Body(index), angle: *angle, direction: *direction, inside_radius: *inside_radius, rule: rule.as_deref() });
        }
        let (part, fold) = self.hem(index, self.bends.len())?;
        Some(WalkBend { part, angle: fold.angle, direction: fold.direction, inside_radius: fold.inside_radius, rule: fold.rule })
    }

    /// The place within the body; in front of it the greatest number, where nothing is found.
    #[inline(always)]
    fn index(&self, at: usize) -> usize {
        at.wrapping_sub(usize::from(self.start_hem.is_some()))
    }

    /// The hem that stands here, where that is not within the body of so many parts.
    #[inline(always)]
    fn hem(&self, index: usize, body: usize) -> Option<(Part, &Fold<'a>)> {
        if index == usize::MAX {
            self.start_hem.as_ref().map(|fold| (Part::StartHem, fold))
        } else if index == body {
            self.end_hem.as_ref().map(|fold| (Part::EndHem, fold))
        } else {
            None
        }
    }

    /// The legs in order.
    pub(super) fn legs(self) -> impl Iterator<Item = WalkLeg<'a>> {
        (0..).map_while(move |at| self.leg(at))
    }

    /// The bends in order.
    pub(super) fn bends(self) -> impl Iterator<Item = WalkBend<'a>> {
        (0..).map_while(move |at| self.bend(at))
    }

    /// How many bends are walked.
    #[inline(always)]
    pub(super) fn bend_count(&self) -> usize {
        self.bends.len() + usize::from(self.start_hem.is_some()) + usize::from(self.end_hem.is_some())
    }
}
