//! One walk over a profile from edge to edge, hems and all: the only place where an edge becomes legs and bends.

use super::edge::{Fold, Nominal};
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
    /// The lip of a double hem at the start edge: its second return, or the fold before it.
    StartLip,
    /// The return, or the fold, of the hem at the start edge.
    StartHem,
    /// The leg, or the bend, of this index in the profile.
    Body(usize),
    /// The return, or the fold, of the hem at the end edge.
    EndHem,
    /// The lip of a double hem at the end edge: its second return, or the fold before it.
    EndLip,
}

impl Part {
    /// Whether it belongs to the start edge and not to the profile's own legs and bends.
    ///
    /// ```
    /// use seamwright::trim::Part;
    /// assert!(Part::StartLip.is_of_start_edge() && !Part::Body(0).is_of_start_edge());
    /// ```
    #[must_use]
    pub const fn is_of_start_edge(self) -> bool {
        matches!(self, Part::StartLip | Part::StartHem)
    }

    /// Whether it belongs to the end edge and not to the profile's own legs and bends.
    ///
    /// ```
    /// use seamwright::trim::Part;
    /// assert!(Part::EndHem.is_of_end_edge() && !Part::Body(0).is_of_end_edge());
    /// ```
    #[must_use]
    pub const fn is_of_end_edge(self) -> bool {
        matches!(self, Part::EndHem | Part::EndLip)
    }

    /// What a part of an edge is called.
    pub(super) const fn edge_name(self) -> &'static str {
        match self {
            Part::StartLip => "start lip",
            Part::StartHem => "start hem",
            Part::Body(_) => "body",
            Part::EndHem => "end hem",
            Part::EndLip => "end lip",
        }
    }

    /// The field of a profile that a bend comes from.
    pub(super) fn bend_path(self) -> String {
        match self {
            Part::StartLip | Part::StartHem => "start_edge".to_owned(),
            Part::Body(i) => format!("bends[{i}]"),
            Part::EndHem | Part::EndLip => "end_edge".to_owned(),
        }
    }

    /// The field of a profile that a leg comes from.
    pub(super) fn leg_path(self) -> String {
        match self {
            Part::StartLip | Part::StartHem => "start_edge".to_owned(),
            Part::Body(i) => format!("legs[{i}]"),
            Part::EndHem | Part::EndLip => "end_edge".to_owned(),
        }
    }
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Part::Body(i) => i.fmt(f),
            edge => f.write_str(edge.edge_name()),
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
    /// How far a return reaches back over the leg that it lies on; nothing for a leg of the profile's own.
    pub(super) reach: Length,
}

/// A bend as walked.
#[derive(Debug, Clone, Copy)]
pub(super) struct WalkBend<'a> {
    pub(super) part: Part,
    pub(super) angle: BendAngle,
    pub(super) direction: Direction,
    pub(super) inside_radius: Length,
    pub(super) rule: Option<&'a BendRule>,
    /// What it takes under nominal sums, where that is not the rule of two legs.
    pub(super) nominal: Option<Nominal>,
}

/// The folds of each edge, from the leg outwards.
const AT_START: [Part; 2] = [Part::StartHem, Part::StartLip];
const AT_END: [Part; 2] = [Part::EndHem, Part::EndLip];

#[inline]
fn start_folds(profile: &Profile) -> impl Iterator<Item = (Part, Fold<'_>)> {
    let folds = (0..profile.start_edge.fold_count()).rev();
    folds.filter_map(|i| Some((*AT_START.get(i)?, profile.start_edge.fold(i, profile.thickness)?)))
}

#[inline]
fn end_folds(profile: &Profile) -> impl Iterator<Item = (Part, Fold<'_>)> {
    let folds = 0..profile.end_edge.fold_count();
    folds.filter_map(|i| Some((*AT_END.get(i)?, profile.end_edge.fold(i, profile.thickness)?)))
}

fn fold_bend((part, fold): (Part, Fold<'_>)) -> WalkBend<'_> {
    WalkBend { part, angle: fold.angle, direction: fold.direction, inside_radius: fold.inside_radius, rule: fold.rule, nominal: fold.nominal }
}

/// A return, its outer end at the sheet's edge or at the next fold.
fn return_leg<'a>((part, fold): (Part, Fold<'_>), last: bool) -> WalkLeg<'a> {
    let outer = if last { LegEnd::SheetEdge } else { LegEnd::OuterTangent };
    let (start, end) = if part.is_of_start_edge() { (outer, LegEnd::OuterTangent) } else { (LegEnd::OuterTangent, outer) };
    WalkLeg { part, name: part.edge_name(), length: fold.width, start, end, reach: fold.reach }
}

/// The legs in order, the returns of hems among them.
#[inline]
pub(super) fn legs(profile: &Profile) -> impl Iterator<Item = WalkLeg<'_>> {
    let ends = profile.end_edge.fold_count();
    let first = start_folds(profile).enumerate().map(|(i, fold)| return_leg(fold, i == 0));
    let last = end_folds(profile).enumerate().map(move |(i, fold)| return_leg(fold, i + 1 == ends));
    let body = profile.legs.iter().enumerate().map(|(i, leg): (usize, &Leg)| WalkLeg {
        part: Part::Body(i),
        name: &leg.name,
        length: leg.length,
        start: leg.start,
        end: leg.end,
        reach: Length::ZERO,
    });
    first.chain(body).chain(last)
}

/// The bends in order, the folds of hems among them.
#[inline]
pub(super) fn bends(profile: &Profile) -> impl Iterator<Item = WalkBend<'_>> {
    let body = profile.bends.iter().enumerate().map(|(i, bend): (usize, &Bend)| WalkBend {
        part: Part::Body(i),
        angle: bend.angle,
        direction: bend.direction,
        inside_radius: bend.inside_radius,
        rule: bend.rule.as_deref(),
        nominal: None,
    });
    start_folds(profile).map(fold_bend).chain(body).chain(end_folds(profile).map(fold_bend))
}

/// How many bends are walked.
pub(super) fn bend_count(profile: &Profile) -> usize {
    profile.bends.len() + profile.start_edge.fold_count() + profile.end_edge.fold_count()
}
