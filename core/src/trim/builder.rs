//! A profile said leg by leg.

use super::edge::Edge;
use super::leg::{Bend, Direction, Face, Leg, LegEnd};
use super::profile::Profile;
use super::rule::BendRule;
use crate::error::{Error, ErrorKind, Faults};
use crate::units::{BendAngle, Length};
use std::borrow::Cow;

struct Pending {
    name: Cow<'static, str>,
    length: Length,
    start: Option<LegEnd>,
    end: Option<LegEnd>,
}

/// Builds a [`Profile`]: legs and bends in turn, between two edges.
///
/// Where a leg's ends are not said, they go to the outer corner at a bend (or as [`ProfileBuilder::measured_to`] says), to the sheet's edge at a raw
/// edge and to the outside of the fold at a hem. The radius is the one last said; there is no default radius, and the painted face must be said.
///
/// ```
/// use seamwright::trim::{Direction, Edge, Face, LegEnd, Profile};
/// use seamwright::units::{BendAngle, Length};
/// let z = Profile::builder(Length::mils(24))
///     .painted(Face::Lower)
///     .inside_radius(Length::mils(30))
///     .start(Edge::open_hem(Length::inches_64(32), Length::inches_64(10), Direction::Up))
///     .leg("lower flange", Length::inches(2))
///     .up(BendAngle::SQUARE)
///     .leg_between("web", Length::inches(1), LegEnd::OuterCorner, LegEnd::InnerCorner)
///     .down(BendAngle::SQUARE)
///     .leg("upper flange", Length::inches(2))
///     .build()?;
/// assert_eq!(z.legs[0].start, LegEnd::OuterTangent);
/// assert_eq!(z.legs[2].end, LegEnd::SheetEdge);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[must_use = "a builder does nothing until build"]
pub struct ProfileBuilder {
    thickness: Length,
    painted: Option<Face>,
    start_edge: Edge,
    end_edge: Edge,
    measure: LegEnd,
    radius: Option<Length>,
    legs: Vec<Pending>,
    bends: Vec<Bend>,
    faults: Faults,
}

impl core::fmt::Debug for ProfileBuilder {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("ProfileBuilder").field("legs", &self.legs.len()).field("bends", &self.bends.len()).finish_non_exhaustive()
    }
}

impl ProfileBuilder {
    pub(super) fn new(thickness: Length) -> ProfileBuilder {
        ProfileBuilder {
            thickness,
            painted: None,
            start_edge: Edge::Raw,
            end_edge: Edge::Raw,
            measure: LegEnd::OuterCorner,
            radius: None,
            legs: Vec::new(),
            bends: Vec::new(),
            faults: Faults::default(),
        }
    }

    /// The painted face, or the face shown.
    pub fn painted(mut self, face: Face) -> Self {
        self.painted = Some(face);
        self
    }

    /// The inside radius of the bends that follow.
    pub fn inside_radius(mut self, radius: Length) -> Self {
        self.radius = Some(radius);
        self
    }

    /// To what the legs are dimensioned where they do not say it themselves.
    pub fn measured_to(mut self, end: LegEnd) -> Self {
        self.measure = end;
        self
    }

    /// The edge where the walk starts; raw unless said.
    pub fn start(mut self, edge: Edge) -> Self {
        self.start_edge = edge;
        self
    }

    /// The edge where the walk ends; raw unless said.
    pub fn end(mut self, edge: Edge) -> Self {
        self.end_edge = edge;
        self
    }

    /// A leg.
    pub fn leg(self, name: impl Into<Cow<'static, str>>, length: Length) -> Self {
        self.push(Pending { name: name.into(), length, start: None, end: None })
    }

    /// A leg with what its ends are dimensioned to.
    pub fn leg_between(self, name: impl Into<Cow<'static, str>>, length: Length, start: LegEnd, end: LegEnd) -> Self {
        self.push(Pending { name: name.into(), length, start: Some(start), end: Some(end) })
    }

    /// A bend that closes on the upper face.
    pub fn up(self, angle: BendAngle) -> Self {
        self.turn(angle, Direction::Up, None)
    }

    /// A bend that closes on the lower face.
    pub fn down(self, angle: BendAngle) -> Self {
        self.turn(angle, Direction::Down, None)
    }

    /// A bend under a rule of its own.
    pub fn bend_by(self, angle: BendAngle, direction: Direction, rule: BendRule) -> Self {
        self.turn(angle, direction, Some(Box::new(rule)))
    }

    fn push(mut self, leg: Pending) -> Self {
        if self.legs.len() > self.bends.len() {
            self.faults.add(
                Error::new(ErrorKind::Conflict, "two legs without a bend between them")
                    .at(format!("legs[{}]", self.legs.len()))
                    .value_of(&leg.name)
                    .accepts("a bend"),
            );
        }
        self.legs.push(leg);
        self
    }

    fn turn(mut self, angle: BendAngle, direction: Direction, rule: Option<Box<BendRule>>) -> Self {
        let at = self.bends.len();
        if self.legs.len() <= at {
            self.faults.add(Error::new(ErrorKind::Conflict, "a bend without a leg before it").at(format!("bends[{at}]")).value_of(angle).accepts("a leg"));
        }
        if self.radius.is_none() {
            self.faults.add(Error::new(ErrorKind::Missing, "no inside radius").at(format!("bends[{at}].inside_radius")).accepts("a length of 0 mm or more"));
        }
        self.bends.push(Bend { angle, direction, inside_radius: self.radius.unwrap_or_default(), rule });
        self
    }

    /// The profile, checked by [`Profile::validate`].
    ///
    /// # Errors
    /// Every fault in the order of the legs and bends, a missing radius or painted face, and those of [`Profile::validate`].
    pub fn build(mut self) -> Result<Profile, Error> {
        let Some(painted) = self.painted else {
            self.faults.add(Error::new(ErrorKind::Missing, "no painted face").at("painted").accepts("upper, lower"));
            return Err(self.faults.check().err().unwrap_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost")));
        };
        self.faults.check()?;
        let count = self.legs.len();
        let at_edge = |edge: &Edge| if edge.is_raw() { LegEnd::SheetEdge } else { LegEnd::OuterTangent };
        let (first, last) = (at_edge(&self.start_edge), at_edge(&self.end_edge));
        let legs = self
            .legs
            .into_iter()
            .enumerate()
            .map(|(i, leg)| Leg {
                name: leg.name,
                length: leg.length,
                start: leg.start.unwrap_or(if i == 0 { first } else { self.measure }),
                end: leg.end.unwrap_or(if i + 1 == count { last } else { self.measure }),
            })
            .collect();
        let profile = Profile { thickness: self.thickness, start_edge: self.start_edge, legs, bends: self.bends, end_edge: self.end_edge, painted };
        profile.validate()?;
        Ok(profile)
    }
}
