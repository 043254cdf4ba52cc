//! Whether the parts of a section touch or run into each other.

use super::convex::{Convex, P};
use super::support::SectionPoint;
use crate::error::{Error, ErrorKind, Faults};
use crate::practice::junction as practice;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::Length;

/// What of two parts nearer than this touches: noise of the coordinates.
pub(super) const TOUCH: f64 = 1e-6;

/// A part of a section, as convex pieces that together cover it.
///
/// ```
/// use seamwright::junction::{SectionPart, SectionPoint};
/// use seamwright::units::Length;
/// let at = |x, z| SectionPoint { x: Length::inches(x), z: Length::inches(z) };
/// let deck = SectionPart { name: "deck".into(), pieces: vec![vec![at(0, 0), at(10, 0), at(10, -1), at(0, -1)]] };
/// assert_eq!(deck.pieces.len(), 1);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SectionPart {
    /// What it is called.
    pub name: String,
    /// Its pieces, each a convex polygon of three or more corners, in either order.
    pub pieces: Vec<Vec<SectionPoint>>,
}

/// How two parts of a section meet.
///
/// ```
/// use seamwright::junction::Touch;
/// assert_ne!(Touch::Contact, Touch::Clash);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
pub enum Touch {
    /// They lie on each other, or in each other by no more than sheet metal gives.
    Contact,
    /// One runs into the other.
    Clash,
}

/// Two parts that meet.
///
/// ```
/// use seamwright::junction::{Meeting, SectionPoint, Touch};
/// use seamwright::units::Length;
/// let at = SectionPoint { x: Length::ZERO, z: Length::ZERO };
/// let meeting = Meeting { first: "deck".into(), second: "flange".into(), touch: Touch::Contact, depth: Length::ZERO, at };
/// assert_eq!(meeting.depth, Length::ZERO);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Meeting {
    /// The name of the one.
    pub first: String,
    /// The name of the other.
    pub second: String,
    /// Whether they touch or clash.
    pub touch: Touch,
    /// How far the one must be moved, the shortest way, for its deepest piece to be out of the other; nothing where they only touch.
    pub depth: Length,
    /// The middle of that piece.
    pub at: SectionPoint,
}

/// Every two parts of a section that touch or run into each other.
///
/// What lies in another by no more than [`SHEET_GIVES`](crate::practice::junction::SHEET_GIVES) touches it: bends of unlike radius nest so.
///
/// ```
/// use seamwright::junction::{SectionFit, SectionPart, SectionPoint, Touch};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let at = |x, z| SectionPoint { x: Length::inches(x), z: Length::inches(z) };
/// let block = |name: &str, x, z| SectionPart { name: name.into(), pieces: vec![vec![at(x, z), at(x + 4, z), at(x + 4, z + 2), at(x, z + 2)]] };
/// let met = SectionFit { parts: vec![block("a", 0, 0), block("b", 0, 2), block("c", 3, 3)] }.compute()?;
/// assert_eq!(met.iter().map(|m| (&*m.first, &*m.second, m.touch)).collect::<Vec<_>>(), [("a", "b", Touch::Contact), ("b", "c", Touch::Clash)]);
/// assert_eq!(met[1].depth, Length::inches(1));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SectionFit {
    /// The parts.
    pub parts: Vec<SectionPart>,
}

/// The deepest that any piece of the one lies in a piece of the other, and which of the other's that is; none where they are apart.
pub(super) fn deepest<'a>(one: impl Iterator<Item = &'a Convex> + Clone, other: impl Iterator<Item = &'a Convex>, least: f64) -> Option<(f64, &'a Convex)> {
    let mut out: Option<(f64, &Convex)> = None;
    for b in other {
        for a in one.clone().filter(|a| !a.span().is_far(b.span(), -least)) {
            // Only what is deeper than what was found counts.
            let depth = a.depth(b, out.map_or(least, |(most, _)| most));
            if depth >= least && out.is_none_or(|(most, _)| depth > most) {
                out = Some((depth, b));
            }
        }
    }
    out
}

fn turn(a: P, b: P, c: P) -> f64 {
    (b.0 - a.0) * (c.1 - b.1) - (b.1 - a.1) * (c.0 - b.0)
}

impl SectionPart {
    fn convex(&self, faults: &mut Faults, path: &str) -> Vec<Convex> {
        let mut out = Vec::with_capacity(self.pieces.len());
        for (i, piece) in self.pieces.iter().enumerate() {
            let points: Vec<P> = piece.iter().map(|p| (p.x.mm(), p.z.mm())).collect();
            let turns = || points.iter().zip(points.iter().cycle().skip(1)).zip(points.iter().cycle().skip(2));
            let (left, right) = (turns().any(|((a, b), c)| turn(*a, *b, *c) > 0.0), turns().any(|((a, b), c)| turn(*a, *b, *c) < 0.0));
            if points.len() < 3 || left == right {
                let error = Error::new(ErrorKind::Geometry, "a piece that is not convex").at(format!("{path}.pieces[{i}]")).value_of(points.len());
                faults.add(error.accepts("three or more corners that turn one way").cured_by("cut it into convex pieces"));
            } else {
                out.push(Convex::new(points));
            }
        }
        out
    }
}

impl Calculation for SectionFit {
    type Out = Vec<Meeting>;

    fn title(&self) -> String {
        "parts of a section that meet".into()
    }

    /// Refuses a piece that is not convex.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<Meeting>, Error> {
        let mut faults = Faults::default();
        let parts: Vec<Vec<Convex>> = self.parts.iter().enumerate().map(|(i, p)| p.convex(&mut faults, &format!("parts[{i}]"))).collect();
        faults.check()?;
        let gives = practice::SHEET_GIVES.mm();
        let mut out = Vec::new();
        for (j, (second, name)) in parts.iter().zip(&self.parts).enumerate() {
            for (first, before) in parts.iter().zip(&self.parts).take(j) {
                let Some((depth, piece)) = deepest(first.iter(), second.iter(), -TOUCH) else { continue };
                let touch = if depth > gives { Touch::Clash } else { Touch::Contact };
                let (x, z) = piece.centre();
                let at = SectionPoint { x: Length::from_mm(x)?, z: Length::from_mm(z)? };
                let depth = Length::from_mm(depth.max(0.0))?;
                r.step(|| {
                    let step = Step::new(format!("{} in {}", name.name, before.name)).formula("the shortest way out");
                    step.with("sheet gives", practice::SHEET_GIVES).gives(depth).source(Source::geometry())
                });
                out.push(Meeting { first: before.name.clone(), second: name.name.clone(), touch, depth, at });
            }
        }
        Ok(out)
    }
}
