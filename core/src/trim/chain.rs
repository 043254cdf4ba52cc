//! A profile from the line that one of its faces follows.

use super::edge::Edge;
use super::leg::{Bend, Direction, Face, Leg, LegEnd};
use super::outline::Placement;
use super::point::Point;
use super::profile::Profile;
use super::size::to_length;
use super::walk::Part;
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::record::{Calculation, Off, Recorder, Source, Step};
use crate::units::{Angle, BendAngle, Length};
use std::borrow::Cow;

/// How far a vertex must stand out of the line of its neighbours to be a bend; anything less is noise of the coordinates.
const NOISE: Length = Length::micrometres(1);

/// One leg of a [`Chain`]: its name and the vertex where it ends.
///
/// ```
/// use seamwright::trim::{ChainLeg, Point};
/// let leg = ChainLeg { name: "face".into(), to: Point::ORIGIN };
/// assert_eq!(leg.name, "face");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ChainLeg {
    /// What the leg is called.
    pub name: Cow<'static, str>,
    /// The corner where it ends: of the given face's lines, or the sheet's edge, or the outside of a hem's fold.
    pub to: Point,
}

/// A profile said by the corners of one face: the face that lies on the supports.
///
/// At each vertex the given face is either the outside or the inside of the bend, and the legs are dimensioned to the outer or to the inner
/// corner accordingly. At a hem the outermost vertex is the outside of the fold.
///
/// ```
/// use seamwright::trim::{Chain, ChainLeg, Edge, Face, LegEnd, Point};
/// use seamwright::units::Length;
/// let at = |x, y| Point { x: Length::inches(x), y: Length::inches(y) };
/// // A trim whose lower face runs along a deck and down a fascia.
/// let chain = Chain {
///     thickness: Length::mils(24),
///     inside_radius: Length::mils(30),
///     face: Face::Lower,
///     start: at(-4, 0),
///     legs: vec![ChainLeg { name: "deck flange".into(), to: at(0, 0) }, ChainLeg { name: "face".into(), to: at(0, -3) }],
///     start_edge: Edge::Raw,
///     end_edge: Edge::Raw,
///     painted: Face::Upper,
/// };
/// let profile = chain.profile()?;
/// assert_eq!(profile.legs[0].length, Length::inches(4));
/// assert_eq!(profile.legs[0].end, LegEnd::InnerCorner);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Chain {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// Radius of the inside face at every bend.
    pub inside_radius: Length,
    /// The face that follows the vertices.
    pub face: Face,
    /// The first vertex.
    pub start: Point,
    /// The legs in order.
    pub legs: Vec<ChainLeg>,
    /// The edge where the walk starts.
    #[cfg_attr(feature = "serde", serde(default))]
    pub start_edge: Edge,
    /// The edge where the walk ends.
    #[cfg_attr(feature = "serde", serde(default))]
    pub end_edge: Edge,
    /// The painted face, or the face that is shown.
    pub painted: Face,
}

impl Chain {
    /// The profile whose given face follows the vertices.
    ///
    /// # Errors
    /// [`ErrorKind::Geometry`] at `legs[i].to` for a vertex on the one before it, in the line of its neighbours (within 1 micrometre) or doubling back;
    /// and every fault of [`Profile::validate`].
    pub fn profile(&self) -> Result<Profile, Error> {
        self.run(&mut Off)
    }

    fn line(&self) -> Line<'_> {
        Line { start: self.start, legs: &self.legs, inside_radius: self.inside_radius }
    }

    /// Where the folded outline of this chain's profile must be put to lie on the vertices.
    ///
    /// # Errors
    /// As [`Chain::profile`].
    pub fn placement(&self) -> Result<Placement, Error> {
        let mut faults = Faults::default();
        let first = self.line().steps(&mut faults).first().copied();
        faults.check()?;
        let (x, y) = first.ok_or_else(|| Error::new(ErrorKind::Missing, "a chain needs a leg").at("legs").accepts("at least one leg"))?;
        let at = if self.start_edge.is_raw() {
            self.start
        } else {
            // The flat part starts at the tangent line of the hem's fold.
            let back = (self.start_edge.first_radius(self.thickness) + self.thickness).length()?.mm() / num::hypot(x, y);
            self.start.moved(x * back, y * back)?
        };
        Ok(Placement { leg: Part::Body(0), face: self.face, at, heading: Angle::degrees_from(num::atan2_deg(y, x))? })
    }
}

impl Calculation for Chain {
    type Out = Profile;

    fn title(&self) -> String {
        format!("profile whose {} face follows {} vertices", if self.face == Face::Upper { "upper" } else { "lower" }, self.legs.len() + 1)
    }

    /// # Errors
    /// As [`Chain::profile`].
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Profile, Error> {
        let corner = |bend: &Bend| if bend.direction.inside() == self.face { LegEnd::InnerCorner } else { LegEnd::OuterCorner };
        self.line().profile(self.thickness, (&self.start_edge, &self.end_edge), self.painted, corner, r)
    }
}

/// A line through vertices, of which a profile's legs and bends are made.
#[derive(Clone, Copy)]
pub(super) struct Line<'a> {
    pub(super) start: Point,
    pub(super) legs: &'a [ChainLeg],
    pub(super) inside_radius: Length,
}

/// A leg of a line: the way that it is laid, and its length.
type Laid = ((f64, f64), Length);

impl Line<'_> {
    /// The profile whose legs lie between the vertices, dimensioned to the corner that each bend is given.
    pub(super) fn profile<R: Recorder>(
        &self,
        thickness: Length,
        edges: (&Edge, &Edge),
        painted: Face,
        corner: impl Fn(&Bend) -> LegEnd,
        r: &mut R,
    ) -> Result<Profile, Error> {
        let mut faults = Faults::default();
        let steps = self.steps(&mut faults);
        faults.check()?;
        let laid = lay(&steps)?;
        let mut faults = Faults::default();
        let mut bends = Vec::with_capacity(laid.len());
        for (i, pair) in laid.windows(2).enumerate() {
            if let [(before, _), (after, _)] = pair {
                bends.extend(faults.keep(self.bend(*before, *after).map_err(|e| e.at(format!("legs[{i}].to")))));
            }
        }
        faults.check()?;

        let at_edge = |edge: &Edge| if edge.is_raw() { LegEnd::SheetEdge } else { LegEnd::OuterTangent };
        let end_at = |bend: Option<&Bend>, edge: &Edge| bend.map_or_else(|| at_edge(edge), &corner);
        let mut legs = Vec::with_capacity(self.legs.len());
        for (i, (leg, (_, length))) in self.legs.iter().zip(&laid).enumerate() {
            r.step(|| {
                let step = Step::new(format!("leg {}", leg.name)).formula("from where the legs before it end to its vertex");
                step.with("vertex", format_args!("{}, {}", leg.to.x, leg.to.y)).gives(length).source(Source::geometry())
            });
            let bend = bends.get(i);
            if let Some(bend) = bend {
                r.step(|| Step::new(format!("bend {}", i + 1)).formula("turn from leg to leg").gives(bend.angle).source(Source::geometry()));
            }
            let start = end_at(i.checked_sub(1).and_then(|b| bends.get(b)), edges.0);
            legs.push(Leg { name: leg.name.clone(), length: *length, start, end: end_at(bend, edges.1) });
        }
        let profile = Profile { thickness, start_edge: edges.0.clone(), legs, bends, end_edge: edges.1.clone(), painted };
        profile.validate()?;
        Ok(profile)
    }

    /// The way from each vertex to the next.
    fn steps(&self, faults: &mut Faults) -> Vec<(f64, f64)> {
        let mut out = Vec::with_capacity(self.legs.len());
        let mut from = self.start;
        for (i, leg) in self.legs.iter().enumerate() {
            let path = || format!("legs[{i}].to");
            match from.to(leg.to) {
                Ok((x, y)) if num::hypot(x, y) >= NOISE.mm() => out.push((x, y)),
                Ok(_) => faults.add(
                    Error::new(ErrorKind::Geometry, "a vertex lies on the one before it")
                        .at(path())
                        .value_of(format_args!("{}, {}", leg.to.x, leg.to.y))
                        .accepts("vertices at least 0.001 mm apart"),
                ),
                Err(e) => faults.add(e.at(path())),
            }
            from = leg.to;
        }
        out
    }

    fn bend(&self, before: (f64, f64), after: (f64, f64)) -> Result<Bend, Error> {
        let cross = before.0 * after.1 - before.1 * after.0;
        let dot = before.0 * after.0 + before.1 * after.1;
        let turn = num::atan2_deg(cross, dot);
        // The vertex's distance from the line through its neighbours; doubling back, the shorter leg's end from the longer leg.
        let span =
            if dot > 0.0 { num::hypot(before.0 + after.0, before.1 + after.1) } else { num::hypot(before.0, before.1).max(num::hypot(after.0, after.1)) };
        if cross.abs() < NOISE.mm() * span {
            let e = Error::new(ErrorKind::Geometry, if dot > 0.0 { "a vertex in the line of its neighbours" } else { "the chain doubles back" })
                .value_of(format_args!("a turn of {turn} deg"));
            return Err(if dot > 0.0 {
                e.accepts("a vertex at least 0.001 mm out of line").cured_by("join the two legs into one")
            } else {
                e.accepts("a turn of less than 180 deg").cured_by("a hem at the edge")
            });
        }
        let direction = if turn > 0.0 { Direction::Up } else { Direction::Down };
        let angle = BendAngle::from_flat(Angle::degrees_from(turn.abs())?)?;
        Ok(Bend { angle, direction, inside_radius: self.inside_radius, rule: None })
    }
}

/// Lays the legs of a line one on the other: each is aimed from where the legs before it end, so that what their lengths lose to the picometre does not add up.
/// No corner then lies more than half a picometre off its vertex.
fn lay(steps: &[(f64, f64)]) -> Result<Vec<Laid>, Error> {
    let mut out = Vec::with_capacity(steps.len());
    // How far beyond its vertex the last leg ends.
    let mut past = (0.0, 0.0);
    for step in steps {
        let way = (step.0 - past.0, step.1 - past.1);
        let span = num::hypot(way.0, way.1);
        let length = to_length(span)?;
        let share = (length.mm() - span) / span;
        past = (way.0 * share, way.1 * share);
        out.push((way, length));
    }
    Ok(out)
}
