//! The folded outline: both faces and the neutral line as lines and arcs.

use super::flat::{Flat, FlatBend};
use super::leg::{Direction, Face};
use super::point::Point;
use super::size::{QUICK_MM, round, sum, to_length};
use super::walk::Part;
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::units::{Angle, Length};

/// An arc of an outline.
///
/// ```
/// use seamwright::trim::{Arc, Point};
/// use seamwright::units::{Angle, Length};
/// let arc = Arc { centre: Point::ORIGIN, radius: Length::inches(1), turn: Angle::degrees_from(-90.0)? };
/// assert!(arc.turn < Angle::ZERO); // clockwise
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Arc {
    /// Its centre.
    pub centre: Point,
    /// Its radius; nothing on the inside of a sharp fold.
    pub radius: Length,
    /// How far it turns, counter-clockwise positive.
    pub turn: Angle,
}

/// A line or an arc of an outline.
///
/// ```
/// use seamwright::trim::{BendRule, Face, HandbookMetal, Profile};
/// use seamwright::units::{BendAngle, Length};
/// let l = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(24))
///     .leg("a", Length::inches(2))
///     .up(BendAngle::SQUARE)
///     .leg("b", Length::inches(3))
///     .build()?;
/// let outline = l.unfold(&BendRule::Handbook(HandbookMetal::SoftSteel))?.outline()?;
/// let kinds: Vec<bool> = outline.face(Face::Lower).iter().map(|p| p.arc.is_some()).collect();
/// assert_eq!(kinds, [false, true, false]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Piece {
    /// The leg, where this is a line, or the bend, where it is an arc.
    pub part: Part,
    /// Where it starts.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
    /// The arc; a straight line has none.
    pub arc: Option<Arc>,
}

impl Piece {
    /// Its length.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of a length.
    pub fn length(&self) -> Result<Length, Error> {
        match self.arc {
            Some(arc) => to_length(arc.radius.mm() * arc.turn.radians().abs()),
            None => self.from.distance(self.to),
        }
    }

    /// The same piece from its other end.
    #[must_use]
    pub fn reversed(&self) -> Piece {
        let arc = self.arc.map(|a| Arc { turn: Angle::of_degrees(-a.turn.degrees()), ..a });
        Piece { part: self.part, from: self.to, to: self.from, arc }
    }
}

/// Where a folded outline is put: the flat part of one leg starts here, on this face, and runs in this direction.
///
/// The default puts the first leg of the profile on the x axis, its start at the origin, the lower face on the axis.
///
/// ```
/// use seamwright::trim::{Face, Part, Placement, Point};
/// use seamwright::units::Angle;
/// let p = Placement::default();
/// assert_eq!((p.leg, p.face, p.at, p.heading), (Part::Body(0), Face::Lower, Point::ORIGIN, Angle::ZERO));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Placement {
    /// The leg that is put.
    pub leg: Part,
    /// The face that lies on the point.
    pub face: Face,
    /// Where the flat part of that leg starts on that face.
    pub at: Point,
    /// Its direction from there, counter-clockwise from +x.
    pub heading: Angle,
}

impl Default for Placement {
    fn default() -> Placement {
        Placement { leg: Part::Body(0), face: Face::Lower, at: Point::ORIGIN, heading: Angle::ZERO }
    }
}

/// A box along the axes.
///
/// ```
/// use seamwright::trim::{Bounds, Point};
/// use seamwright::units::Length;
/// let b = Bounds { least: Point::ORIGIN, greatest: Point { x: Length::inches(2), y: Length::inches(1) } };
/// assert_eq!(b.size()?, (Length::inches(2), Length::inches(1)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Bounds {
    /// Lower left.
    pub least: Point,
    /// Upper right.
    pub greatest: Point,
}

impl Bounds {
    /// Width and height.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of a length.
    pub fn size(&self) -> Result<(Length, Length), Error> {
        Ok(((self.greatest.x - self.least.x).length()?, (self.greatest.y - self.least.y).length()?))
    }
}

/// The section as folded.
///
/// Each face, and the neutral line, is a list of pieces from the start edge to the end edge: a line for each leg, an arc for each bend. The neutral
/// line has in each bend the radius whose arc is the bend's allowance, and runs at mid-thickness in the legs: its length is the girth under any
/// rule, and under the neutral-axis rule its arcs lie where the factor says. At a tangent line it may step by a part of the thickness.
///
/// ```
/// use seamwright::trim::{BendRule, Face, NeutralFactor, Profile};
/// use seamwright::units::{BendAngle, Length};
/// let channel = Profile::builder(Length::mils(40))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(60))
///     .leg("a", Length::inches(1))
///     .up(BendAngle::SQUARE)
///     .leg("b", Length::inches(2))
///     .up(BendAngle::SQUARE)
///     .leg("c", Length::inches(1))
///     .build()?;
/// let outline = channel.unfold(&BendRule::neutral_axis(NeutralFactor::MIDDLE))?.outline()?;
/// assert_eq!(outline.bounds().size()?, (Length::inches(1), Length::inches(2)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    // The lower face, the upper face and the neutral line, equally many pieces each, in one store: to get and free three takes longer than the folding.
    pieces: Vec<Piece>,
    bounds: Bounds,
}

/// An outline as it is written.
#[cfg(feature = "serde")]
#[derive(serde::Serialize)]
struct Written<'a> {
    upper: &'a [Piece],
    lower: &'a [Piece],
    neutral: &'a [Piece],
    bounds: Bounds,
}

#[cfg(feature = "serde")]
impl serde::Serialize for Outline {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Written { upper: self.face(Face::Upper), lower: self.face(Face::Lower), neutral: self.neutral(), bounds: self.bounds }.serialize(serializer)
    }
}

impl Outline {
    /// The pieces of one face, from the start edge to the end edge.
    #[must_use]
    pub fn face(&self, face: Face) -> &[Piece] {
        self.third(match face {
            Face::Lower => 0,
            Face::Upper => 1,
        })
    }

    /// The pieces of the neutral line, from the start edge to the end edge.
    #[must_use]
    pub fn neutral(&self) -> &[Piece] {
        self.third(2)
    }

    fn third(&self, which: usize) -> &[Piece] {
        let each = self.pieces.len() / 3;
        self.pieces.get(which * each..(which + 1) * each).unwrap_or_default()
    }

    /// The box around both faces, arcs included.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        self.bounds
    }

    /// The closed contour, counter-clockwise where the section does not cross itself: the lower face, the end edge, the upper face backwards, the start edge.
    #[must_use]
    pub fn contour(&self) -> Vec<Piece> {
        let (low, high) = (self.face(Face::Lower), self.face(Face::Upper));
        let mut out = Vec::with_capacity(2 * low.len() + 2);
        out.extend_from_slice(low);
        if let (Some(lower), Some(upper)) = (low.last(), high.last()) {
            out.push(Piece { part: lower.part, from: lower.to, to: upper.to, arc: None });
        }
        out.extend(high.iter().rev().map(Piece::reversed));
        if let (Some(lower), Some(upper)) = (low.first(), high.first()) {
            out.push(Piece { part: lower.part, from: upper.from, to: lower.from, arc: None });
        }
        out
    }

    /// The closed contour as points, arcs cut into chords that stray from them by at most `tolerance`; the first point is not repeated.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a tolerance of zero or less, [`ErrorKind::TooLarge`] where an arc would need more than 10 000 chords.
    pub fn points(&self, tolerance: Length) -> Result<Vec<Point>, Error> {
        let tolerance = tolerance.positive("tolerance")?.mm();
        let mut out = Vec::new();
        for piece in self.contour() {
            out.push(piece.from);
            if let Some(arc) = piece.arc {
                chords(&piece, &arc, tolerance, &mut out)?;
            }
        }
        Ok(out)
    }
}

/// The points between the ends of an arc.
fn chords(piece: &Piece, arc: &Arc, tolerance: f64, out: &mut Vec<Point>) -> Result<(), Error> {
    const MOST: f64 = 10_000.0;
    let radius = arc.radius.mm();
    if radius <= 0.0 {
        return Ok(());
    }
    // A chord over the angle p strays by r (1 - cos(p/2)); never fewer than four to the turn, so that an arc stays an arc.
    let step = if tolerance < radius { (2.0 * num::acos_deg(1.0 - tolerance / radius)).min(90.0) } else { 90.0 };
    let count = (arc.turn.degrees().abs() / step).ceil();
    // A step of nothing, where the tolerance is lost beside the radius, makes the count infinite.
    if count > MOST || !count.is_finite() {
        return Err(Error::new(ErrorKind::TooLarge, "an arc would need too many chords")
            .at("tolerance")
            .value_of(format_args!("{tolerance} mm"))
            .accepts(format!("for a radius of {} a tolerance of about {} mm or more", arc.radius, radius * 1e-7)));
    }
    let (x, y) = arc.centre.to(piece.from)?;
    let mut i = 1.0;
    while i < count {
        let turn = arc.turn.degrees() * (i / count);
        let (sin, cos) = (num::sin_deg(turn), num::cos_deg(turn));
        out.push(arc.centre.moved(x * cos - y * sin, x * sin + y * cos)?);
        i += 1.0;
    }
    Ok(())
}

/// Where the walk stands: a point of the lower face in the working unit, and its heading.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pen {
    x: f64,
    y: f64,
    pub(super) heading: f64,
    sin: f64,
    cos: f64,
}

/// The centre and the two ends of one bend in the working unit.
pub(super) struct Swing {
    pub(super) centre: (f64, f64),
    /// From the centre towards the sheet, at the start and at the end.
    pub(super) out: (f64, f64),
    pub(super) out_after: (f64, f64),
    pub(super) turn: f64,
    /// Direction of `out` in degrees.
    pub(super) out_heading: f64,
    /// From the centre to the outer face.
    outer: f64,
}

impl Pen {
    pub(super) fn at(x: f64, y: f64, heading: f64) -> Pen {
        let (sin, cos) = num::sin_cos_deg(heading);
        Pen { x, y, heading, sin, cos }
    }

    /// A point of the sheet beside the pen, so far above its lower face.
    #[inline(always)]
    pub(super) fn above(&self, height: f64) -> (f64, f64) {
        (self.x - height * self.sin, self.y + height * self.cos)
    }

    #[inline(always)]
    pub(super) fn forward(&mut self, by: f64) {
        self.x += by * self.cos;
        self.y += by * self.sin;
    }

    #[inline(always)]
    pub(super) fn swing(&mut self, bend: &FlatBend, t: f64) -> Swing {
        let r = bend.inside_radius.mm();
        let sign = bend.direction.sign();
        let turn = sign * bend.angle.degrees();
        let lower = match bend.direction {
            Direction::Up => r + t,
            Direction::Down => r,
        };
        let out = (sign * self.sin, -sign * self.cos);
        let centre = (self.x - lower * out.0, self.y - lower * out.1);
        let before = self.heading;
        let next = Pen::at(0.0, 0.0, self.heading + turn);
        let out_after = (sign * next.sin, -sign * next.cos);
        *self = Pen { x: centre.0 + lower * out_after.0, y: centre.1 + lower * out_after.1, ..next };
        Swing { centre, out, out_after, turn, out_heading: before - sign * 90.0, outer: r + t }
    }
}

/// The lesser of two coordinates, none of which is NaN.
#[inline(always)]
fn less(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// The greater of two coordinates, none of which is NaN.
#[inline(always)]
fn more(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// A box that grows, in the working unit.
struct Reach {
    least: (f64, f64),
    greatest: (f64, f64),
}

impl Reach {
    #[inline(always)]
    fn take(&mut self, p: (f64, f64)) {
        self.least = (less(p.0, self.least.0), less(p.1, self.least.1));
        self.greatest = (more(p.0, self.greatest.0), more(p.1, self.greatest.1));
    }

    /// The outermost points of an arc along the axes, where it passes them.
    #[inline(always)]
    fn take_swing(&mut self, swing: &Swing) {
        // How far the start is turned past the first axis, the way that the bend turns.
        let past = num::within_turn(swing.out_heading * swing.turn.signum());
        let past = if past < 0.0 { past + 360.0 } else { past };
        let side = swing.turn.signum();
        // The axes from there on, of which most bends pass one at most.
        let mut ahead = 0.0;
        let mut way = (1.0, 0.0);
        while ahead < past {
            ahead += 90.0;
            way = (-way.1, way.0);
        }
        while ahead <= past + swing.turn.abs() {
            self.take((swing.centre.0 + swing.outer * way.0, swing.centre.1 + swing.outer * side * way.1));
            ahead += 90.0;
            way = (-way.1, way.0);
        }
    }
}

/// The place of an end of a leg on the lower face, the upper face and the neutral line.
#[derive(Clone, Copy)]
struct Across {
    lower: Point,
    upper: Point,
    neutral: Point,
}

impl Across {
    #[inline(always)]
    fn of(pen: &Pen, t: f64, reach: &mut Reach, put: impl Fn((f64, f64)) -> Result<Point, Error>) -> Result<Across, Error> {
        let (lower, upper) = (pen.above(0.0), pen.above(t));
        reach.take(lower);
        reach.take(upper);
        Ok(Across { lower: put(lower)?, upper: put(upper)?, neutral: put(pen.above(t / 2.0))? })
    }
}

impl Flat {
    /// The section as folded, its first leg along the x axis from the origin.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] where a point is beyond the range of a length.
    pub fn outline(&self) -> Result<Outline, Error> {
        self.outline_at(&Placement::default())
    }

    /// The section as folded, where it is put.
    ///
    /// # Errors
    /// [`ErrorKind::Unknown`] for a leg that the profile does not have, [`ErrorKind::Overflow`] where a point is beyond the range of a length.
    pub fn outline_at(&self, placement: &Placement) -> Result<Outline, Error> {
        let anchor = self.legs().iter().position(|leg| leg.part == placement.leg).ok_or_else(|| {
            Error::new(ErrorKind::Unknown, "the profile has no such leg")
                .at("leg")
                .value_of(placement.leg)
                .accepts(format!("the {} legs of the profile, and its hems", self.legs().iter().filter(|l| matches!(l.part, Part::Body(_))).count()))
        })?;
        let start = self.start_of(anchor, placement, self.thickness().mm());
        // A section that is not kilometres wide or away is put without a question for each point; the rare other one is put again with it.
        let Point { x, y } = placement.at;
        if x.pm().unsigned_abs().max(y.pm().unsigned_abs()) < 1 << 62 {
            let put = |p: (f64, f64)| Ok(Point { x: Length::from_pm(x.pm().wrapping_add(round(p.0))), y: Length::from_pm(y.pm().wrapping_add(round(p.1))) });
            let (near, most) = self.fold(start, put)?;
            if most < QUICK_MM {
                return Ok(near);
            }
        }
        Ok(self.fold(start, |p| placement.at.moved(p.0, p.1))?.0)
    }

    /// The walk along the folded section, and how far from its origin any of its points may lie.
    #[inline(always)]
    fn fold(&self, mut pen: Pen, put: impl Fn((f64, f64)) -> Result<Point, Error>) -> Result<(Outline, f64), Error> {
        let t = self.thickness().mm();
        let each = 2 * self.bends().len() + 1;
        let blank = Piece { part: Part::Body(0), from: Point::ORIGIN, to: Point::ORIGIN, arc: None };
        let mut pieces = vec![blank; 3 * each];
        let (lower, rest) = pieces.split_at_mut(each);
        let (upper, neutral) = rest.split_at_mut(each);
        let mut places = lower.iter_mut().zip(upper).zip(neutral);
        let mut write = |l: Piece, u: Piece, n: Piece| {
            if let Some(((lower, upper), neutral)) = places.next() {
                (*lower, *upper, *neutral) = (l, u, n);
            }
        };
        let mut reach = Reach { least: (f64::INFINITY, f64::INFINITY), greatest: (f64::NEG_INFINITY, f64::NEG_INFINITY) };
        // No centre, and no point of the neutral line, lies farther from the faces than this.
        let mut widest = 0.0;
        // The ends of neighbours are one point, so that a face has no gap of a picometre.
        let mut from = Across::of(&pen, t, &mut reach, &put)?;
        for (i, leg) in self.legs().iter().enumerate() {
            pen.forward(leg.length().mm());
            let to = Across::of(&pen, t, &mut reach, &put)?;
            let line = |from: Point, to: Point| Piece { part: leg.part, from, to, arc: None };
            write(line(from.lower, to.lower), line(from.upper, to.upper), line(from.neutral, to.neutral));
            if let Some(bend) = self.bends().get(i) {
                let swing = pen.swing(bend, t);
                reach.take_swing(&swing);
                from = Across::of(&pen, t, &mut reach, &put)?;
                let (inside, outside) = (bend.inside_radius, sum(bend.inside_radius, self.thickness())?);
                let (below, above) = match bend.direction {
                    Direction::Up => (outside, inside),
                    Direction::Down => (inside, outside),
                };
                let (centre, turn) = (put(swing.centre)?, Angle::of_degrees(swing.turn));
                let arc = |radius: Length, from: Point, to: Point| Piece { part: bend.part, from, to, arc: Some(Arc { centre, radius, turn }) };
                let radius = bend.allowance().mm() / bend.angle.angle().radians();
                widest = more(widest, more(radius, swing.outer));
                let on = |out: (f64, f64)| put((swing.centre.0 + radius * out.0, swing.centre.1 + radius * out.1));
                let middle = arc(to_length(radius)?, on(swing.out)?, on(swing.out_after)?);
                write(arc(below, to.lower, from.lower), arc(above, to.upper, from.upper), middle);
            }
        }
        let bounds = Bounds { least: put(reach.least)?, greatest: put(reach.greatest)? };
        let far = [reach.least.0, reach.least.1, reach.greatest.0, reach.greatest.1].into_iter().fold(0.0, |far, p| more(far, p.abs()));
        Ok((Outline { pieces, bounds }, far + 2.0 * widest))
    }

    /// Where the walk must start so that the anchored leg comes to lie where it is put.
    fn start_of(&self, anchor: usize, placement: &Placement, t: f64) -> Pen {
        let before = self.bends().get(..anchor).unwrap_or_default();
        let heading = placement.heading.degrees() - before.iter().map(|b| b.direction.sign() * b.angle.degrees()).sum::<f64>();
        let mut pen = Pen::at(0.0, 0.0, heading);
        for (leg, bend) in self.legs().iter().zip(before) {
            pen.forward(leg.length().mm());
            pen.swing(bend, t);
        }
        let (x, y) = pen.above(match placement.face {
            Face::Lower => 0.0,
            Face::Upper => t,
        });
        Pen::at(-x, -y, heading)
    }
}
