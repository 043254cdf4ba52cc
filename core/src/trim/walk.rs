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

fn hem_bend(part: Part, fold: Fold<'_>) -> WalkBend<'_> {
    WalkBend { part, angle: fold.angle, direction: fold.direction, inside_radius: fold.inside_radius, rule: fold.rule }
}

/// The legs in order, the returns of hems among them.
#[inline]
pub(super) fn legs(profile: &Profile) -> impl Iterator<Item = WalkLeg<'_>> {
    let first = profile.start_edge.fold().map(|fold| WalkLeg {
        part: Part::StartHem,
        name: "start hem",
        length: fold.width,
        start: LegEnd::SheetEdge,
        end: LegEnd::OuterTangent,
    });
    let last = profile.end_edge.fold().map(|fold| WalkLeg {
        part: Part::EndHem,
        name: "end hem",
        length: fold.width,
        start: LegEnd::OuterTangent,
        end: LegEnd::SheetEdge,
    });
    let body = profile.legs.iter().enumerate().map(|(i, leg): (usize, &Leg)| WalkLeg {
        part: Part::Body(i),
        name: &leg.name,
        length: leg.length,
        start: leg.start,
        end: leg.end,
    });
    first.into_iter().chain(body).chain(last)
}

/// The bends in order, the folds of hems among them.
#[inline]
pub(super) fn bends(profile: &Profile) -> impl Iterator<Item = WalkBend<'_>> {
    let first = profile.start_edge.fold().map(|fold| hem_bend(Part::StartHem, fold));
    let last = profile.end_edge.fold().map(|fold| hem_bend(Part::EndHem, fold));
    let body = profile.bends.iter().enumerate().map(|(i, bend): (usize, &Bend)| WalkBend {
        part: Part::Body(i),
        angle: bend.angle,
        direction: bend.direction,
        inside_radius: bend.inside_radius,
        rule: bend.rule.as_deref(),
    });
    first.into_iter().chain(body).chain(last)
}

/// How many bends are walked.
pub(super) fn bend_count(profile: &Profile) -> usize {
    profile.bends.len() + usize::from(!profile.start_edge.is_raw()) + usize::from(!profile.end_edge.is_raw())
}
