//! A notch as stretches of the outline.

use super::end::{Notch, NotchShape};
use super::end_line::EndLine;
use super::shape::{BlankEdge, BlankSide};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::trim::size::to_length;
use crate::trim::{Arc, Flat, FlatBend, PieceEnd, Point};
use crate::units::{Angle, Length};

/// What interrupts an end: from one station to another, in stretches of rising station.
pub(super) struct Feature {
    pub(super) from: Length,
    pub(super) to: Length,
    /// The deepest that it reaches into the blank.
    pub(super) deepest: Length,
    pub(super) edges: Vec<BlankEdge>,
    /// Where it was asked for.
    pub(super) path: String,
    pub(super) name: &'static str,
}

/// A station along the run, so far into the blank from another.
pub(super) fn inward(y: Length, by: Length, end: PieceEnd) -> Result<Length, Error> {
    match end {
        PieceEnd::Near => (y + by).length(),
        PieceEnd::Far => (y - by).length(),
    }
}

fn straight(points: &[Point], side: BlankSide) -> Vec<BlankEdge> {
    points
        .windows(2)
        .filter_map(|pair| match pair {
            [from, to] if from != to => Some(BlankEdge { side, from: *from, to: *to, arc: None }),
            _ => None,
        })
        .collect()
}

/// The stretches with a round bottom: down one side to the circle, around it, up the other.
fn rounded(from: Point, to: Point, centre: Point, diameter: Length, sides: (Point, Point), end: PieceEnd) -> Result<Vec<BlankEdge>, Error> {
    let (a, b) = sides;
    // The angles at the centre between the way back to the end and the two sides.
    let opening = |p: Point| -> Result<f64, Error> {
        let (x, y) = centre.to(p)?;
        let back = if end == PieceEnd::Near { -y } else { y };
        Ok(num::atan2_deg(x.abs(), back))
    };
    let round = 360.0 - opening(a)? - opening(b)?;
    let turn = Angle::degrees_from(if end == PieceEnd::Near { -round } else { round })?;
    let arc = Arc { centre, radius: to_length(diameter.mm() / 2.0)?, turn };
    let mut out = straight(&[from, a], BlankSide::Notch);
    out.push(BlankEdge { side: BlankSide::Notch, from: a, to: b, arc: Some(arc) });
    out.extend(straight(&[b, to], BlankSide::Notch));
    Ok(out)
}

/// A point on the way from `centre` to `p`, this far from the centre.
fn towards(centre: Point, p: Point, by: f64) -> Result<Point, Error> {
    let (x, y) = centre.to(p)?;
    let length = num::hypot(x, y);
    Ok(Point { x: (centre.x + to_length(x / length * by)?).length()?, y: (centre.y + to_length(y / length * by)?).length()? })
}

struct Notched<'a> {
    notch: &'a Notch,
    bend: &'a FlatBend,
    flat: &'a Flat,
    line: &'a EndLine,
    end: PieceEnd,
    path: &'a str,
}

impl Notched<'_> {
    fn half(&self, width: Length, field: &str) -> Result<(Length, Length), Error> {
        let width = width.positive(&format!("{}.shape.{field}.width", self.path))?;
        let half = Length::from_pm(width.pm() / 2);
        let (from, to) = ((self.bend.line - half).length()?, (self.bend.line + half).length()?);
        if from.is_negative() || to > self.flat.girth() {
            let room = self.bend.line.min(self.flat.from_end(self.bend.line)?);
            return Err(Error::new(ErrorKind::Impossible, "the notch reaches beyond the blank's edge")
                .at(format!("{}.shape.{field}.width", self.path))
                .value_of(width)
                .accepts(format!("at most {}", (room * 2).length()?)));
        }
        // It may reach the tangent lines of the next bends, not over them.
        for other in self.flat.bends().iter().filter(|b| b.part != self.bend.part) {
            if other.from < to && other.to > from {
                let room = if other.line > self.bend.line { (other.from - self.bend.line).length()? } else { (self.bend.line - other.to).length()? };
                return Err(Error::new(ErrorKind::Conflict, "the notch lies over another bend line")
                    .at(format!("{}.shape.{field}.width", self.path))
                    .value_of(format_args!("{width}, over the bend line at {}", other.line))
                    .accepts(format!("at most {}", (room * 2).length()?)));
            }
        }
        Ok((from, to))
    }

    fn round(&self, round: Option<Length>, field: &str) -> Result<Option<Length>, Error> {
        round.map(|d| d.positive(&format!("{}.shape.{field}.round", self.path))).transpose()
    }

    fn feature(&self) -> Result<Feature, Error> {
        let depth = self.notch.depth.positive(&format!("{}.depth", self.path))?;
        let on = |x: Length| -> Result<Point, Error> { Ok(Point { x, y: self.line.at(x)? }) };
        let bottom = Point { x: self.bend.line, y: inward(self.line.at(self.bend.line)?, depth, self.end)? };
        let too_wide = |d: Length, field: &str, accepts: String| {
            Error::new(ErrorKind::Impossible, "the round does not fit the notch").at(format!("{}.shape.{field}.round", self.path)).value_of(d).accepts(accepts)
        };
        let (from, to, edges, round) = match self.notch.shape {
            NotchShape::Vee { width, round } => {
                let (x, z) = self.half(width, "vee")?;
                let (a, b) = (on(x)?, on(z)?);
                match self.round(round, "vee")? {
                    None => (x, z, straight(&[a, bottom, b], BlankSide::Notch), Length::ZERO),
                    Some(d) => {
                        let shortest = bottom.distance(a)?.min(bottom.distance(b)?);
                        if d.mm() / 2.0 >= shortest.mm() {
                            return Err(too_wide(d, "vee", format!("less than {}", (shortest * 2).length()?)));
                        }
                        let sides = (towards(bottom, a, d.mm() / 2.0)?, towards(bottom, b, d.mm() / 2.0)?);
                        (x, z, rounded(a, b, bottom, d, sides, self.end)?, d)
                    }
                }
            }
            NotchShape::Slot { width, round } => {
                let (x, z) = self.half(width, "slot")?;
                let (a, b) = (on(x)?, on(z)?);
                match self.round(round, "slot")? {
                    None => (x, z, straight(&[a, Point { x, y: bottom.y }, Point { x: z, y: bottom.y }, b], BlankSide::Notch), Length::ZERO),
                    Some(d) => {
                        if d < width {
                            return Err(too_wide(d, "slot", format!("at least the width, {width}")));
                        }
                        let half = width.mm() / 2.0;
                        let rise = to_length((d.mm() * d.mm() / 4.0 - half * half).max(0.0).sqrt())?;
                        if rise >= depth {
                            return Err(too_wide(d, "slot", "a round that starts within the notch".to_owned()));
                        }
                        let y = inward(bottom.y, Length::from_pm(-rise.pm()), self.end)?;
                        (x, z, rounded(a, b, bottom, d, (Point { x, y }, Point { x: z, y }), self.end)?, d)
                    }
                }
            }
            // The strip goes with its edge, which then starts at the bottom.
            NotchShape::FromStartEdge => {
                let (x, z) = (Length::ZERO, self.bend.to);
                (x, z, straight(&[Point { x, y: bottom.y }, Point { x: z, y: bottom.y }, on(z)?], BlankSide::Notch), Length::ZERO)
            }
            NotchShape::FromEndEdge => {
                let (x, z) = (self.bend.from, self.flat.girth());
                (x, z, straight(&[on(x)?, Point { x, y: bottom.y }, Point { x: z, y: bottom.y }], BlankSide::Notch), Length::ZERO)
            }
        };
        // A round wider than its notch reaches past it to the sides as well.
        let reach = Length::from_pm(round.pm() / 2);
        let (low, high) = ((self.bend.line - reach).length()?.min(from), (self.bend.line + reach).length()?.max(to));
        if let Some(other) = self.flat.bends().iter().find(|b| b.part != self.bend.part && reach.is_positive() && b.from < high && b.to > low) {
            return Err(Error::new(ErrorKind::Conflict, "the notch's round lies over another bend line")
                .at(self.path.to_owned())
                .value_of(format_args!("{round}, over the bend line at {}", other.line))
                .accepts("a smaller round"));
        }
        Ok(Feature { from, to, deepest: inward(bottom.y, reach, self.end)?, edges, path: self.path.to_owned(), name: "notch" })
    }
}

pub(super) fn features(notches: &[Notch], end: PieceEnd, flat: &Flat, line: &EndLine, faults: &mut Faults) -> Vec<Feature> {
    let mut out = Vec::with_capacity(notches.len());
    for (i, notch) in notches.iter().enumerate() {
        let path = format!("{end}.notches[{i}]");
        let bend = flat.bends().iter().find(|b| b.part == notch.bend).ok_or_else(|| no_bend(notch.bend, flat).at(format!("{path}.bend")));
        let made = bend.and_then(|bend| Notched { notch, bend, flat, line, end, path: &path }.feature());
        out.extend(faults.keep(made));
    }
    out
}

pub(super) fn no_bend(part: crate::trim::Part, flat: &Flat) -> Error {
    Error::new(ErrorKind::Unknown, "the profile has no such bend").value_of(part).accepts(format!("one of its {} bends, hems counted", flat.bends().len()))
}
