//! How far sheet is bent to lie on both sides of a junction, in the section square to the junction line.

use super::{Corner, Pitch};
use crate::error::Error;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Angle, BendAngle};

/// To which side a sheet that comes down or across the roof turns at a junction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum Turn {
    /// Away from the weather, as over a ridge, a hip or an eave.
    Down,
    /// Towards the weather, as in a valley or up a wall.
    Up,
    /// Not at all: the two sides are in one plane.
    None,
}

/// A bend that a junction asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct JunctionBend {
    /// How far the sheet is bent, from flat.
    pub bend: BendAngle,
    /// To which side.
    pub turn: Turn,
}

/// A junction whose bend is asked for. Walls and fascias are plumb.
///
/// ```
/// use seamwright::pitch::{BendAt, Corner, Pitch, Turn};
/// use seamwright::record::Calculation;
/// use seamwright::units::Angle;
/// let p = Pitch::parse("12:12")?;
/// assert_eq!(BendAt::Ridge { first: p, second: p }.compute()?.bend.degrees(), 90.0);
/// assert_eq!(BendAt::Headwall { pitch: p }.compute()?.bend.degrees(), 45.0);
/// let hip = BendAt::Hip(Corner { first: p, second: p, plan: Angle::SQUARE }).compute()?;
/// assert!((hip.bend.degrees() - 60.0).abs() < 1e-12 && hip.turn == Turn::Down);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum BendAt {
    /// Two planes that fall away from a level line: the sum of the pitches.
    Ridge {
        /// One plane.
        first: Pitch,
        /// The other.
        second: Pitch,
    },
    /// The sum of the signed backing angles.
    Hip(Corner),
    /// The sum of the signed backing angles of the same two planes.
    Valley(Corner),
    /// A change of pitch down one slope: the difference of the pitches, up where the lower is the shallower.
    PitchTransition {
        /// The plane below the line.
        lower: Pitch,
        /// The plane above the line.
        upper: Pitch,
    },
    /// From the roof down over a plumb fascia at the low edge: 90 degrees less the pitch.
    Eave {
        /// The roof's pitch.
        pitch: Pitch,
    },
    /// From the roof down over a plumb face at the high edge of a single slope: 90 degrees and the pitch.
    HighEave {
        /// The roof's pitch.
        pitch: Pitch,
    },
    /// From the roof up a plumb wall that it rises to: 90 degrees less the pitch.
    Headwall {
        /// The roof's pitch.
        pitch: Pitch,
    },
    /// From the roof down over a plumb face along the slope: square, whatever the pitch.
    Rake,
    /// From the roof up a plumb wall along the slope: square, whatever the pitch.
    Sidewall,
}

impl BendAt {
    /// The junction in the trade's words.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            BendAt::Ridge { .. } => "ridge",
            BendAt::Hip(_) => "hip",
            BendAt::Valley(_) => "valley",
            BendAt::PitchTransition { .. } => "pitch transition",
            BendAt::Eave { .. } => "eave",
            BendAt::HighEave { .. } => "high eave",
            BendAt::Headwall { .. } => "headwall",
            BendAt::Rake => "rake",
            BendAt::Sidewall => "sidewall",
        }
    }
}

impl Calculation for BendAt {
    type Out = JunctionBend;

    fn title(&self) -> String {
        format!("Bend at the {}", self.name())
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<JunctionBend, Error> {
        let (formula, with, degrees, turn): (_, [Option<(&str, Angle)>; 2], f64, Turn) = match *self {
            BendAt::Ridge { first, second } => {
                let (a, b) = (first.angle(), second.angle());
                ("S1 + S2", [Some(("S1", a)), Some(("S2", b))], a.degrees() + b.degrees(), Turn::Down)
            }
            BendAt::Hip(corner) | BendAt::Valley(corner) => {
                let g = r.part(|| corner.title(), |r| corner.run(r))?;
                let (a, b) = (g.first.backing, g.second.backing);
                let turn = if matches!(self, BendAt::Hip(_)) { Turn::Down } else { Turn::Up };
                ("C1 + C2", [Some(("C1", a)), Some(("C2", b))], a.degrees() + b.degrees(), turn)
            }
            BendAt::PitchTransition { lower, upper } => {
                let (a, b) = (lower.angle(), upper.angle());
                let turn = if a < b { Turn::Up } else { Turn::Down };
                ("|S upper - S lower|", [Some(("S upper", b)), Some(("S lower", a))], (b.degrees() - a.degrees()).abs(), turn)
            }
            BendAt::Eave { pitch } => ("90 - S", [Some(("S", pitch.angle())), None], 90.0 - pitch.angle().degrees(), Turn::Down),
            BendAt::HighEave { pitch } => ("90 + S", [Some(("S", pitch.angle())), None], 90.0 + pitch.angle().degrees(), Turn::Down),
            BendAt::Headwall { pitch } => ("90 - S", [Some(("S", pitch.angle())), None], 90.0 - pitch.angle().degrees(), Turn::Up),
            BendAt::Rake => ("90", [None, None], 90.0, Turn::Down),
            BendAt::Sidewall => ("90", [None, None], 90.0, Turn::Up),
        };
        let bend = BendAngle::from_flat(Angle::of_degrees(degrees)).map_err(|e| e.at("bend"))?;
        let turn = if degrees > 0.0 { turn } else { Turn::None };
        r.step(|| {
            let step = Step::new("bend from flat").formula(formula);
            with.iter().flatten().fold(step, |s, (symbol, value)| s.with(*symbol, value)).gives(bend).source(Source::geometry())
        });
        Ok(JunctionBend { bend, turn })
    }
}
