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

/// The walk over one profile. Its places count the returns and the folds of its edges.
#[derive(Debug, Clone, Copy)]
pub(super) struct Walk<'a> {
    legs: &'a [Leg],
    bends: &'a [Bend],
    /// The folds of each edge, from the leg outwards.
    start: [Option<Fold<'a>>; 2],
    end: [Option<Fold<'a>>; 2],
    /// How many parts stand before the body, and behind it.
    before: usize,
    behind: usize,
}

/// One fold of an edge where the walk meets it.
struct EdgeFold<'w, 'a> {
    part: Part,
    fold: &'w Fold<'a>,
    outermost: bool,
}

impl<'a> Walk<'a> {
    #[inline(always)]
    pub(super) fn of(profile: &'a Profile) -> Walk<'a> {
        Walk {
            legs: &profile.legs,
            bends: &profile.bends,
            start: profile.start_edge.folds(profile.thickness),
            end: profile.end_edge.folds(profile.thickness),
            before: profile.start_edge.fold_count(),
            behind: profile.end_edge.fold_count(),
        }
    }

    /// The leg at this place; nothing behind the last.
    #[inline(always)]
    pub(super) fn leg(&self, at: usize) -> Option<WalkLeg<'a>> {
        let index = self.index(at);
        if let Some(leg) = self.legs.get(index) {
            let Leg { name, length, start, end } = leg;
            return Some(WalkLeg { part: Part::Body(index), name, length: *length, start: *start, end: *end, reach: Length::ZERO });
        }
        let EdgeFold { part, fold, outermost } = self.edge(index, self.legs.len())?;
        let outer = if outermost { LegEnd::SheetEdge } else { LegEnd::OuterTangent };
        let (start, end) = if part.is_of_start_edge() { (outer, LegEnd::OuterTangent) } else { (LegEnd::OuterTangent, outer) };
        Some(WalkLeg { part, name: part.edge_name(), length: fold.width, start, end, reach: fold.reach })
    }

    /// The bend behind the leg at this place; nothing behind the last leg.
    #[inline(always)]
    pub(super) fn bend(&self, at: usize) -> Option<WalkBend<'a>> {
        let index = self.index(at);
        if let Some(bend) = self.bends.get(index) {
            let Bend { angle, direction, inside_radius, rule } = bend;
            let (part, rule) = (Part::Body(index), rule.as_deref());
            return Some(WalkBend { part, angle: *angle, direction: *direction, inside_radius: *inside_radius, rule, nominal: None });
        }
        let EdgeFold { part, fold, .. } = self.edge(index, self.bends.len())?;
        let Fold { angle, direction, inside_radius, rule, nominal, .. } = *fold;
        Some(WalkBend { part, angle, direction, inside_radius, rule, nominal })
    }

    /// The place within the body; in front of it so far below the greatest number, where nothing is found.
    #[inline(always)]
    fn index(&self, at: usize) -> usize {
        at.wrapping_sub(self.before)
    }

    /// The fold of an edge that stands here, where that is not within the body of so many parts.
    #[inline(always)]
    fn edge(&self, index: usize, body: usize) -> Option<EdgeFold<'_, 'a>> {
        let (in_front, behind) = (!index, index.wrapping_sub(body));
        if let Some(fold) = self.start.get(in_front) {
            let part = if in_front == 0 { Part::StartHem } else { Part::StartLip };
            fold.as_ref().map(|fold| EdgeFold { part, fold, outermost: in_front + 1 == self.before })
        } else {
            let part = if behind == 0 { Part::EndHem } else { Part::EndLip };
            self.end.get(behind)?.as_ref().map(|fold| EdgeFold { part, fold, outermost: behind + 1 == self.behind })
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
        self.bends.len() + self.before + self.behind
    }
}
