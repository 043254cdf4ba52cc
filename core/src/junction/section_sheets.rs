//! The sheets of a solved section along each of its faces: where each lies up the slope, and how high over the deck.

use super::levels::Levels;
use super::parts::{Adjoining, JunctionTrim, Side, Solved};
use super::support::SectionPoint;
use crate::error::Error;
use crate::panel::{PanelEnd, Reach};
use crate::roof::Water;
use crate::units::{Angle, Length};

/// The name of the panels among the sheets of a section.
pub(super) const PANELS: &str = "panels";
/// The name of what covers the leg on a wall, where it is cladding.
pub(super) const CLADDING: &str = "cladding";
/// How much of a panel, of cladding and of underlayment is looked at.
pub(super) const SEEN: Length = Length::feet(10);
/// How far out cladding is taken to stand: outside every leg on the wall.
const CLADDING_AT: Length = Length::feet(1);
/// What lies farther than this under a deck is of another face.
const UNDER_DECK: Length = Length::inches_64(-32);
/// What stands farther off a wall than this is no leg on it: a drip, the web of a Z.
const OFF_WALL: Length = Length::inches(2);
/// What hangs before a riser, a curb or a wall under its coping is within this of it: the cap of a joint stands off by all that opens and closes.
const BEFORE: Length = Length::inches(6);
/// A leg before an upright face is within so many degrees of plumb.
const PLUMB: f64 = 5.0;
/// A leg belongs to the face that it is within so many degrees of.
const WITHIN: f64 = 42.0;

/// One side of a section, as water meets it.
///
/// ```
/// use seamwright::junction::{Levels, Side, WaterSide};
/// use seamwright::roof::Water;
/// use seamwright::units::Angle;
/// let eave = WaterSide { side: Side::First, rise: Angle::parse("-20 deg")?, water: Water::Toward, levels: Levels::default() };
/// assert!(eave.rise.degrees() < 0.0); // the first side lies toward -x, and this one falls toward +x
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct WaterSide {
    /// Which side.
    pub side: Side,
    /// The direction of its deck in the section, walking to +x: positive where it rises.
    pub rise: Angle,
    /// Where its water goes, as seen from the line.
    pub water: Water,
    /// The layers on its deck.
    pub levels: Levels,
}

impl WaterSide {
    /// 1 where positions count toward +x, -1 where they count toward -x: up the slope, or, beside a rake or a sidewall, onto the roof.
    pub(super) fn way(&self) -> i32 {
        let onto = if self.side == Side::First { -1 } else { 1 };
        if self.water == Water::Away { -onto } else { onto }
    }
}

/// A sheet of one face of a section.
#[derive(Debug, Clone)]
pub(super) struct FaceSheet<'a> {
    pub(super) name: &'a str,
    /// The trim that it is of, by number.
    pub(super) trim: Option<usize>,
    pub(super) low: Length,
    pub(super) high: Length,
    /// Of its underside over the deck, at its lower and its upper edge.
    pub(super) heights: (Length, Length),
}

impl FaceSheet<'_> {
    pub(super) fn is_at(&self, at: Length) -> bool {
        self.low <= at && at <= self.high
    }

    /// How high it lies over the deck, in its middle.
    pub(super) fn height(&self) -> f64 {
        f64::midpoint(self.heights.0.mm(), self.heights.1.mm())
    }
}

/// A leg of a trim as a face sees it.
struct Leg {
    /// Its direction from level, in degrees.
    heading: f64,
    middle: Length,
    /// Its lower and its upper end.
    ends: (Length, Length),
    /// How far its nearer and its farther end stand off the face.
    lowest: Length,
    out: Length,
}

impl Leg {
    /// How far it turns off a direction, whichever way it is walked.
    fn off(&self, rise: Angle) -> f64 {
        let turned = (self.heading - rise.degrees()).rem_euclid(180.0);
        turned.min(180.0 - turned)
    }
}

/// A direction and the foot from which positions along it are told.
struct Face {
    rise: Angle,
    sin: f64,
    cos: f64,
    way: i32,
    /// Where it begins: the junction line, the edge of a deck over a riser, the foot of a curb.
    origin: SectionPoint,
    /// Whether what lies on it lies toward +x.
    is_mirrored: bool,
}

impl Face {
    fn new(rise: Angle, way: i32) -> Face {
        Face { rise, sin: rise.sin(), cos: rise.cos(), way, origin: SectionPoint { x: Length::ZERO, z: Length::ZERO }, is_mirrored: false }
    }

    /// Along the face, and out of it, as the sections themselves measure.
    fn at(&self, p: SectionPoint) -> Result<(Length, Length), Error> {
        let (x, z) = ((p.x - self.origin.x).length()?.mm(), (p.z - self.origin.z).length()?.mm());
        let x = if self.is_mirrored { -x } else { x };
        let along = Length::from_mm(x * self.cos + z * self.sin)?;
        Ok(((along * self.way).length()?, Length::from_mm(z * self.cos - x * self.sin)?))
    }

    /// The stretch of a trim's legs that lie along this face.
    fn sheet<'a>(&self, number: usize, trim: &'a JunctionTrim, mine: impl Fn(&Leg) -> bool) -> Result<Option<FaceSheet<'a>>, Error> {
        let mut out: Option<FaceSheet<'a>> = None;
        for pair in trim.corners.windows(2) {
            let &[a, b] = pair else { continue };
            let (p, q) = (self.at(a)?, self.at(b)?);
            let way = ((b.x - a.x).length()?.mm(), (b.z - a.z).length()?.mm());
            let leg = Leg {
                heading: crate::num::atan2_deg(way.1, way.0),
                middle: (p.0 + (q.0 - p.0).length()?.station(1, 2)?).length()?,
                ends: (p.0.min(q.0), p.0.max(q.0)),
                lowest: p.1.min(q.1),
                out: p.1.max(q.1),
            };
            if way == (0.0, 0.0) || leg.off(self.rise) > WITHIN || !mine(&leg) {
                continue;
            }
            let (low, high) = if p.0 <= q.0 { (p, q) } else { (q, p) };
            out = Some(match out {
                None => FaceSheet { name: &trim.name, trim: Some(number), low: low.0, high: high.0, heights: (low.1, high.1) },
                Some(s) => {
                    let (low, at_low) = if low.0 < s.low { low } else { (s.low, s.heights.0) };
                    let (high, at_high) = if high.0 > s.high { high } else { (s.high, s.heights.1) };
                    FaceSheet { low, high, heights: (at_low, at_high), ..s }
                }
            });
        }
        Ok(out)
    }
}

/// From the line onto the roof to the outermost point of the panels.
fn edge(end: &PanelEnd) -> Result<Length, Error> {
    let reach = match end.reach {
        Reach::HoldBack(d) => d,
        Reach::Overhang(d) => (-d).length()?,
    };
    (reach - end.gap).length()
}

/// The panels of a side, if they end here.
pub(super) fn panels(solved: &Solved, of: &WaterSide) -> Result<Option<FaceSheet<'static>>, Error> {
    let Some(end) = solved.end(of.side) else { return Ok(None) };
    let edge = edge(end)?;
    let under = of.levels.under_pan()?;
    let (low, high) = if of.water == Water::Away { ((-SEEN - edge).length()?, (-edge).length()?) } else { (edge, (edge + SEEN).length()?) };
    Ok(Some(FaceSheet { name: PANELS, trim: None, low, high, heights: (under, under) }))
}

/// The trims along the deck of a side. Between two decks a leg lies along the one whose direction it is nearer to, if it reaches onto that side; where both have one
/// direction it lies along each that it reaches onto, and where there is one deck alone its middle tells.
pub(super) fn on_deck<'a>(solved: &'a Solved, of: &WaterSide, other: Option<Angle>) -> Result<Vec<FaceSheet<'a>>, Error> {
    // Over a riser stands the upper deck, and on it the trims that reach so high.
    let riser = solved.adjoining.iter().find_map(|a| if let Adjoining::Riser { height } = a { Some(*height) } else { None });
    let raised = riser.filter(|_| of.side == Side::Second).unwrap_or_default();
    let stands = |trim: &JunctionTrim| riser.is_none_or(|h| trim.corners.iter().any(|c| c.z >= h) == (of.side == Side::Second));
    let other = other.filter(|_| riser.is_none());
    let face = Face { origin: SectionPoint { x: Length::ZERO, z: raised }, ..Face::new(of.rise, of.way()) };
    let away = of.water == Water::Away;
    let reaches = |leg: &Leg| if away { leg.ends.0 < Length::ZERO } else { leg.ends.1 > Length::ZERO };
    let mine = |leg: &Leg| match other.map(|rise| leg.off(rise) - leg.off(of.rise)) {
        // Some of it on this side, and none of it under the deck: the drip of the other side may run in this one's direction.
        Some(nearer) if nearer.abs() > 0.5 => nearer > 0.0 && leg.lowest >= UNDER_DECK && reaches(leg),
        // Of two decks in one direction a leg may lie over both: the flashing of a joint across the panels, the cap of one along them.
        Some(_) => reaches(leg),
        None if away => leg.middle < Length::ZERO,
        None => leg.middle > Length::ZERO,
    };
    let mut out = Vec::new();
    for (k, trim) in solved.trims.iter().enumerate().filter(|(_, t)| stands(t)) {
        out.extend(face.sheet(k, trim, mine)?);
    }
    Ok(out)
}

/// An upright face: of a riser, of a curb, of the wall under a coping.
#[derive(Debug, Clone, Copy)]
pub(super) struct Upright {
    /// Its foot or its top edge, from which positions are told, upward.
    pub(super) origin: SectionPoint,
    /// Whether it looks toward +x.
    pub(super) is_mirrored: bool,
}

/// The trims that hang before an upright face, without what holds them. A drip stands off the face and laps nothing.
pub(super) fn before<'a>(solved: &'a Solved, of: Upright) -> Result<Vec<FaceSheet<'a>>, Error> {
    let face = Face { origin: of.origin, is_mirrored: of.is_mirrored, ..Face::new(Angle::SQUARE, 1) };
    let mut out = Vec::new();
    for (k, trim) in solved.trims.iter().enumerate().filter(|(_, t)| !t.is_holder()) {
        out.extend(face.sheet(k, trim, |leg| leg.off(Angle::SQUARE) < PLUMB && leg.lowest >= UNDER_DECK && leg.out <= BEFORE)?);
    }
    Ok(out)
}

/// The trims along a wall at the line and the cladding on it, in positions up the wall.
pub(super) fn on_wall(solved: &Solved) -> Result<Vec<FaceSheet<'_>>, Error> {
    let face = Face::new(Angle::SQUARE, 1);
    let mut out = Vec::new();
    for (k, trim) in solved.trims.iter().enumerate() {
        out.extend(face.sheet(k, trim, |leg| leg.middle > Length::ZERO && leg.out <= OFF_WALL)?);
    }
    for other in &solved.adjoining {
        if let Adjoining::Cladding { lower_edge } = other {
            out.push(FaceSheet { name: CLADDING, trim: None, low: *lower_edge, high: (*lower_edge + SEEN).length()?, heights: (CLADDING_AT, CLADDING_AT) });
        }
    }
    Ok(out)
}
