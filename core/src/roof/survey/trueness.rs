//! How far a plane is out of square and out of parallel, and where to put the difference.

use super::observations::Known;
use crate::error::Error;
use crate::practice::roof as practice;
use crate::roof::Point;
use crate::units::{Length, LengthFormat, LengthStyle};
use core::fmt;

/// Where a side of a plane lies, looking up the slope.
///
/// ```
/// use seamwright::roof::PlaneSide;
/// assert_eq!(PlaneSide::LeftRake.to_string(), "left rake");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PlaneSide {
    /// Along the lower end.
    Foot,
    /// Along the upper end.
    Head,
    /// Up the slope, with the plane on its right.
    LeftRake,
    /// Up the slope, with the plane on its left.
    RightRake,
}

impl PlaneSide {
    fn is_rake(self) -> bool {
        matches!(self, PlaneSide::LeftRake | PlaneSide::RightRake)
    }
}

impl fmt::Display for PlaneSide {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            PlaneSide::Foot => "foot",
            PlaneSide::Head => "head",
            PlaneSide::LeftRake => "left rake",
            PlaneSide::RightRake => "right rake",
        })
    }
}

/// A side that ought to be square or parallel to the level one, and how far it is off: sides within
/// [`RAKE_LIMIT`](crate::practice::roof::RAKE_LIMIT) of it; hips and valleys are not meant to be.
///
/// ```
/// use seamwright::roof::{OutOfTrue, PlaneSide};
/// use seamwright::units::Length;
/// let rake = OutOfTrue { from: "D".into(), to: "A".into(), side: PlaneSide::LeftRake, off: Length::inches(1), over: Length::feet(24) };
/// assert!(rake.off.is_positive()); // it leans to the right as it rises: the plane is narrower above
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OutOfTrue {
    /// Where the side starts, counter-clockwise.
    pub from: String,
    /// Where it ends.
    pub to: String,
    /// What it is.
    pub side: PlaneSide,
    /// How far it is off from one end to the other: a rake to the right as it rises, a foot or head upward as it runs to the right.
    pub off: Length,
    /// Over this length square to that: up the slope for a rake, across it for a foot or head.
    pub over: Length,
}

/// The sides that ought to be true to the side from `axis[0]` to `axis[1]`, which lies along x.
pub(super) fn out_of_true(known: &Known, points: &[Point], axis: [usize; 2]) -> Result<Vec<OutOfTrue>, Error> {
    let limit = practice::RAKE_LIMIT.tan();
    let mut out = Vec::new();
    for (i, (a, b)) in points.iter().zip(points.iter().cycle().skip(1)).enumerate().filter(|(i, _)| *i != axis[0]) {
        let (dx, dy) = ((b.x - a.x).length()?, (b.y - a.y).length()?);
        let size = |l: Length| Length::from_pm(l.pm().saturating_abs());
        let turned = |l: Length, back: bool| if back { (-l).length() } else { Ok(l) };
        let (side, off, over) = if size(dx).mm() <= limit * size(dy).mm() {
            (if dy.is_positive() { PlaneSide::RightRake } else { PlaneSide::LeftRake }, turned(dx, dy.is_negative())?, size(dy))
        } else if size(dy).mm() <= limit * size(dx).mm() {
            (if dx.is_positive() { PlaneSide::Foot } else { PlaneSide::Head }, turned(dy, dx.is_negative())?, size(dx))
        } else {
            continue;
        };
        out.push(OutOfTrue { from: known.name(i).to_owned(), to: known.name((i + 1) % points.len()).to_owned(), side, off, over });
    }
    Ok(out)
}

/// One line for the plane: each side that is out by more than the tolerance, and that the difference goes there.
pub(super) fn line(plane: &str, sides: &[OutOfTrue], tolerance: Length, notation: LengthFormat) -> Result<String, Error> {
    let write = |l: Length| {
        let size = Length::from_pm(l.pm().saturating_abs());
        // What is less than a foot is said in inches alone.
        match notation.style() {
            LengthStyle::FeetInches { denominator } if size < Length::feet(1) => {
                LengthFormat::new(LengthStyle::Inches { denominator }, notation.rounding())?.string(size)
            }
            _ => notation.string(size),
        }
    };
    let mut parts = Vec::new();
    for s in sides.iter().filter(|s| s.off.pm().saturating_abs() > tolerance.pm()) {
        let of = if s.side.is_rake() { "square" } else { "parallel" };
        parts.push(format!("out of {of} {} over {}: put it at the {} {}-{}", write(s.off)?, write(s.over)?, s.side, s.from, s.to));
    }
    if !parts.is_empty() {
        return Ok(format!("{plane}: {}", parts.join("; ")));
    }
    let what = match (sides.iter().any(|s| s.side.is_rake()), sides.iter().any(|s| !s.side.is_rake())) {
        (true, true) => "square and parallel",
        (true, false) => "square",
        (false, true) => "parallel",
        (false, false) => return Ok(format!("{plane}: no side that ought to be square or parallel to the level one")),
    };
    Ok(format!("{plane}: {what} within {}", write(tolerance)?))
}
