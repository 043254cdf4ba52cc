//! Where the seams lie.
//!
//! Positions here are whole numbers of half picometres from the middle of the outline's bounds. So the middle itself is exact, and
//! a mirrored outline has exactly the opposite numbers.

use crate::error::{Error, ErrorKind};
use crate::roof::Bounds;
use crate::units::Length;
use core::iter::once;

/// Strips that one plane may have.
const STRIPS: i128 = 1_000_000;

/// Where the laying of a plane starts.
///
/// ```
/// use seamwright::layout::Start;
/// assert_ne!(Start::Left, Start::Right);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Start {
    /// A full panel at the outline's leftmost point; the remainder is ripped at the right.
    Left,
    /// A full panel at the outline's rightmost point; the remainder is ripped at the left.
    Right,
    /// A seam in the middle; equal rips at both sides.
    CentreSeam,
    /// The middle of a panel in the middle; equal rips at both sides.
    CentrePanel,
    /// A seam at this x, which other planes can share.
    Datum(Length),
    /// Equal rips at both sides, as wide as they can be: of a seam and a panel in the middle, what takes fewer panels. A plane of whole panels has no rip.
    EqualRips,
    /// A full panel at the leftmost point, unless what is left at the right is narrower than this: then it is shared out between both ends, as
    /// [`EqualRips`](Start::EqualRips).
    LeftUnlessNarrow(Length),
    /// A full panel at the rightmost point, unless what is left at the left is narrower than this: then it is shared out between both ends.
    RightUnlessNarrow(Length),
}

impl Start {
    /// The x of a seam of the plane within these bounds, from which the others lie whole coverages away.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a coverage or a least width that is not more than zero, [`ErrorKind::Impossible`] where no ends are as wide as asked for,
    /// [`ErrorKind::TooLarge`] for too many strips.
    ///
    /// ```
    /// use seamwright::layout::Start;
    /// use seamwright::roof::{Bounds, Point};
    /// use seamwright::units::Length;
    /// let bounds = Bounds { low: Point::default(), high: Point::new(Length::inches(40), Length::inches(90)) };
    /// assert_eq!(Start::Right.seam(&bounds, Length::inches(16))?, Length::inches(-8));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn seam(self, bounds: &Bounds, coverage: Length) -> Result<Length, Error> {
        Grid::new(bounds, coverage, self)?.seam()
    }
}

/// The seam lines of one plane.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Grid {
    /// Lowest plus highest x, in picometres: twice the middle.
    twice_middle: i128,
    /// The bounds lie at this and minus this.
    half_width: i128,
    first: i128,
    pitch: i128,
    count: i128,
}

impl Grid {
    pub(crate) fn new(bounds: &Bounds, coverage: Length, start: Start) -> Result<Grid, Error> {
        coverage.positive("panel.coverage")?;
        let (low, high) = (i128::from(bounds.low.x.pm()), i128::from(bounds.high.x.pm()));
        let (twice_middle, half_width) = (low + high, high - low);
        let pitch = 2 * i128::from(coverage.pm());
        let seam = match start {
            Start::Left => -half_width,
            Start::Right => half_width,
            Start::CentreSeam => 0,
            Start::CentrePanel => pitch / 2,
            Start::Datum(x) => 2 * i128::from(x.pm()) - twice_middle,
            Start::EqualRips => equal_rips(half_width, pitch),
            Start::LeftUnlessNarrow(least) => unless_narrow(half_width, pitch, least, -half_width)?,
            Start::RightUnlessNarrow(least) => unless_narrow(half_width, pitch, least, half_width)?,
        };
        // The last seam at or left of the left bound, and strips from there until the right bound is passed.
        let first = -half_width - (-half_width - seam).rem_euclid(pitch);
        let count = (half_width - first + pitch - 1).div_euclid(pitch);
        if count > STRIPS {
            return Err(Error::new(ErrorKind::TooLarge, "the coverage gives too many strips")
                .at("panel.coverage")
                .value_of(coverage)
                .accepts(format!("at most {STRIPS} strips on a plane")));
        }
        Ok(Grid { twice_middle, half_width, first, pitch, count })
    }

    /// The x of one of its seams.
    pub(crate) fn seam(&self) -> Result<Length, Error> {
        self.length(self.first)
    }

    /// The sides of the strips from the left, in millimetres from the middle: one more than there are strips.
    pub(crate) fn sides(self) -> impl Iterator<Item = f64> {
        // The seams between two strips lie within the bounds.
        let [mut seam, pitch] = [self.first + self.pitch, self.pitch].map(word);
        let between = (1..self.count()).map(move |_| {
            let here = seam;
            seam = seam.wrapping_add(pitch);
            millimetres(here)
        });
        once(mm_within(-self.half_width)).chain(between).chain((self.count > 0).then(|| mm_within(self.half_width)))
    }

    /// The strips from the left.
    pub(crate) fn strips(self) -> impl Iterator<Item = Strip> {
        let mut sides = self.sides();
        let mut left = sides.next().unwrap_or_default();
        sides.map(move |right| {
            // One strip starts where the one before it ends.
            let strip = Strip { left, right };
            left = right;
            strip
        })
    }

    /// The seam lines within the bounds, from the left.
    pub(crate) fn seams(self) -> impl Iterator<Item = Result<Length, Error>> {
        (0..=self.count).map(move |k| self.first + k * self.pitch).filter(move |x| x.abs() <= self.half_width).map(move |x| self.length(x))
    }

    /// Whether this position, in millimetres from the middle, is one of the grid's seams.
    pub(crate) fn is_seam(&self, mm: f64) -> Result<bool, Error> {
        let from_first = half_picometres(mm)? - self.first;
        // Mostly both fit a word, in which the remainder is quick.
        Ok(match (i64::try_from(from_first), i64::try_from(self.pitch)) {
            (Ok(from_first), Ok(pitch)) if pitch > 0 => from_first % pitch == 0,
            _ => from_first.rem_euclid(self.pitch) == 0,
        })
    }

    /// The x of a position in millimetres from the middle.
    pub(crate) fn x(&self, mm: f64) -> Result<Length, Error> {
        self.length(half_picometres(mm)?)
    }

    fn length(&self, position: i128) -> Result<Length, Error> {
        let doubled = position + self.twice_middle;
        // Half down, and from the middle to the even one.
        let floor = doubled >> 1;
        let half = floor + (doubled & floor & 1);
        i64::try_from(half).map(Length::from_pm).map_err(|_| Error::new(ErrorKind::Overflow, "a seam is too far").accepts("at most 9 223 372 m"))
    }

    /// How many strips there are.
    pub(crate) fn count(&self) -> usize {
        usize::try_from(self.count).unwrap_or(0)
    }

    /// The x of the middle in millimetres.
    pub(crate) fn middle_mm(&self) -> f64 {
        mm_of(self.twice_middle)
    }

    /// From so many picometres from the left bound to millimetres from the middle: the same number as [`mm`](Self::mm) of the x there.
    pub(crate) fn mm_from_left(&self) -> impl Fn(f64) -> f64 {
        // Less than 2^53, and so is the difference.
        let half_width = whole(word(self.half_width));
        move |across| (2.0 * across - half_width) / 2e9
    }

    /// Millimetres from the middle of an x of the outline.
    pub(crate) fn mm(&self, x: Length) -> f64 {
        mm_within(2 * i128::from(x.pm()) - self.twice_middle)
    }
}

/// A seam that leaves equal ends of half a panel or more. Bounds and pitch are even here, so the half is whole.
fn equal_rips(half_width: i128, pitch: i128) -> i128 {
    match (2 * half_width).rem_euclid(pitch) {
        0 => -half_width,
        rest => (rest + pitch) / 2 - half_width,
    }
}

/// The seam of `whole`, where it leaves no panel or one of `least` at the other end; else that of equal ends.
fn unless_narrow(half_width: i128, pitch: i128, least: Length, whole: i128) -> Result<i128, Error> {
    let asked = 2 * i128::from(least.positive("start")?.pm());
    let rest = (2 * half_width).rem_euclid(pitch);
    if rest == 0 || rest >= asked {
        return Ok(whole);
    }
    let ends = ((rest + pitch) / 2).min(2 * half_width);
    if ends < asked {
        return Err(Error::new(ErrorKind::Impossible, "not even equal ends are that wide")
            .at("start")
            .value_of(least)
            .accepts(format!("at most {}", Length::from_pm(i64::try_from(ends / 2).unwrap_or(i64::MAX))))
            .cured_by("a narrower least width, or another panel"));
    }
    Ok(equal_rips(half_width, pitch))
}

/// One strip, in millimetres from the middle.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Strip {
    pub(crate) left: f64,
    pub(crate) right: f64,
}

#[allow(clippy::cast_precision_loss, reason = "rounded once here, the same for both signs")]
fn mm_of(half_picometres: i128) -> f64 {
    half_picometres as f64 / 2e9
}

/// The same for what lies within an outline's bounds, which are less than 9 km across: it fits into one word, which makes a sweep of strips quick.
fn mm_within(half_picometres: i128) -> f64 {
    millimetres(word(half_picometres))
}

fn millimetres(half_picometres: i64) -> f64 {
    whole(half_picometres) / 2e9
}

#[allow(clippy::cast_precision_loss, reason = "rounded once here, the same for both signs")]
fn whole(half_picometres: i64) -> f64 {
    half_picometres as f64
}

fn word(half_picometres: i128) -> i64 {
    i64::try_from(half_picometres).unwrap_or(if half_picometres < 0 { i64::MIN } else { i64::MAX })
}

fn half_picometres(mm: f64) -> Result<i128, Error> {
    Ok(i128::from(Length::from_mm(mm * 2.0)?.pm()))
}
