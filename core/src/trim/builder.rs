//! A profile said leg by leg.

use super::edge::Edge;
use super::joggle::Joggle;
use super::leg::{Bend, Direction, Face, Leg, LegEnd};
use super::profile::Profile;
use super::rule::BendRule;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Off, Recorder};
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
    /// The item of a list that is being taken, by which a fault of an order of things is placed.
    item: Option<usize>,
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
            item: None,
        }
    }

    /// What follows comes from this item of a list.
    pub(super) fn of_item(mut self, index: usize) -> Self {
        self.item = Some(index);
        self
    }

    /// Where a fault of what is being said is placed: its item, or what it becomes.
    fn place(&self, becomes: String) -> String {
        self.item.map_or(becomes, |i| format!("items[{i}]"))
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

    /// An offset bend under the radius last said: two like bends, there and back, with a web between them that takes the sheet over by the depth.
    ///
    /// It stands between two legs, as a bend does.
    ///
    /// ```
    /// use seamwright::trim::{BendRule, Direction, Face, HandbookMetal, Profile};
    /// use seamwright::units::{Angle, BendAngle, Length};
    /// let lapped = Profile::builder(Length::mils(24))
    ///     .painted(Face::Upper)
    ///     .inside_radius(Length::mils(30))
    ///     .leg("lap", Length::inches(1))
    ///     .joggle("step", Length::mils(125), BendAngle::from_flat(Angle::parse("45 deg")?)?, Direction::Up)
    ///     .leg("apron", Length::inches(6))
    ///     .build()?;
    /// let bounds = lapped.unfold(&BendRule::Handbook(HandbookMetal::SoftSteel))?.outline()?.bounds();
    /// assert_eq!(bounds.size()?.1, Length::mils(125 + 24));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn joggle(self, name: impl Into<Cow<'static, str>>, depth: Length, angle: BendAngle, direction: Direction) -> Self {
        self.joggle_told(name.into(), depth, angle, direction, &mut Off)
    }

    /// The same, telling its working.
    pub(super) fn joggle_told<R: Recorder>(mut self, name: Cow<'static, str>, depth: Length, angle: BendAngle, direction: Direction, r: &mut R) -> Self {
        let joggle = Joggle { name, depth, angle, direction, inside_radius: self.radius.unwrap_or_default(), thickness: self.thickness };
        let place = self.place(format!("legs[{}]", self.legs.len()));
        let parts = r.part(|| joggle.title(), |r| joggle.run(r));
        // The thickness and a missing radius are told where they stand.
        let parts = match parts {
            Ok(parts) => Some(parts),
            Err(e) if !self.thickness.is_positive() && e.others().is_empty() && e.path() == "thickness" => None,
            Err(e) => {
                self.faults.add(e.under(&place));
                None
            }
        };
        let web = parts.map_or_else(
            || Pending { name: joggle.name.clone(), length: depth, start: Some(LegEnd::OuterCorner), end: Some(LegEnd::InnerCorner) },
            |p| Pending { name: p.web.name, length: p.web.length, start: Some(p.web.start), end: Some(p.web.end) },
        );
        self.turn(angle, direction, None).push(web).turn(angle, direction.opposite(), None)
    }

    /// A leg with as many of its ends as are said.
    pub(super) fn leg_with(self, name: Cow<'static, str>, length: Length, start: Option<LegEnd>, end: Option<LegEnd>) -> Self {
        self.push(Pending { name, length, start, end })
    }

    fn push(mut self, leg: Pending) -> Self {
        if self.legs.len() > self.bends.len() {
            self.faults.add(
                Error::new(ErrorKind::Conflict, "two legs without a bend between them")
                    .at(self.place(format!("legs[{}]", self.legs.len())))
                    .value_of(&leg.name)
                    .accepts("a bend"),
            );
        }
        self.legs.push(leg);
        self
    }

    pub(super) fn turn(mut self, angle: BendAngle, direction: Direction, rule: Option<Box<BendRule>>) -> Self {
        let at = self.bends.len();
        if self.legs.len() <= at {
            let place = self.place(format!("bends[{at}]"));
            self.faults.add(Error::new(ErrorKind::Conflict, "a bend without a leg before it").at(place).value_of(angle).accepts("a leg"));
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
