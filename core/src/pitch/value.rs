//! The pitch itself: a ratio of two exact lengths, or an angle, kept as given.

use crate::error::{Error, ErrorKind};
use crate::num;
use crate::units::{Angle, Length, LengthUnit};
use core::cmp::Ordering;
use core::fmt;
use core::hash::{Hash, Hasher};

const ACCEPTS: &str = "6:12, 1/4:12, 6 1/2:12, 150 mm:300 mm, 33.3 %, 26.5 deg";
const STEEPEST: &str = "0 deg to less than 90 deg";

#[derive(Debug, Clone, Copy)]
enum Kept {
    Ratio { rise: Length, run: Length },
    Degrees(Angle),
}

/// The pitch of a roof plane: its rise for its level run, taken straight down the slope. It is from flat up to less than 90 degrees.
///
/// It is kept as given. A ratio of two exact lengths stays a ratio, so that a code minimum such as 1/4:12 is compared without
/// rounding; degrees stay degrees. A percentage is a ratio over 100, read to 1e-9 %.
///
/// Two ratios are equal if they are the same slope (6:12 and 1:2), two pitches in degrees if their degrees are; a ratio and degrees are never
/// equal, because the tangent of an angle is rarely a ratio of lengths. [`Pitch::compare`] orders any two.
///
/// ```
/// use seamwright::pitch::Pitch;
/// use seamwright::units::Length;
/// let p = Pitch::parse("6 1/2:12")?;
/// assert_eq!(p, Pitch::in_twelve(Length::parse("6 1/2\"")?)?);
/// assert_eq!(p.to_string(), "6 1/2:12");
/// assert_eq!(Pitch::parse("6:12")?, Pitch::parse("50 %")?);
/// assert_eq!(Pitch::parse("12:12")?.angle().degrees(), 45.0);
/// assert!(Pitch::parse("90 deg").is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct Pitch(Kept);

impl Pitch {
    /// No slope at all, 0:12.
    pub const FLAT: Pitch = Pitch::of(Length::ZERO, Length::inches(12));

    /// For literals in tables, where the run is more than zero and the rise not negative.
    pub(crate) const fn of(rise: Length, run: Length) -> Pitch {
        Pitch(Kept::Ratio { rise, run })
    }

    /// A pitch from a rise and the level run over which it rises, both as measured.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at `rise` for a negative rise, at `run` for a run of zero or less, and at `rise` where the
    /// slope is so steep that its angle cannot be told from 90 degrees.
    ///
    /// ```
    /// use seamwright::pitch::Pitch;
    /// use seamwright::units::Length;
    /// let p = Pitch::rise_run(Length::parse("1.2 m")?, Length::parse("3 m")?)?;
    /// assert_eq!(p.percent(), 40.0);
    /// assert!(Pitch::rise_run(Length::inches(6), Length::ZERO).is_err());
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn rise_run(rise: Length, run: Length) -> Result<Pitch, Error> {
        let rise = rise.not_negative("rise")?;
        let run = run.positive("run")?;
        let p = Pitch::of(rise, run);
        if p.angle().degrees() < 90.0 {
            Ok(p)
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "a pitch of 90 degrees").at("rise").value_of(format_args!("{rise}:{run}")).accepts(STEEPEST))
        }
    }

    /// A pitch from its slope angle, measured up from level.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at `angle`, if it is negative or 90 degrees or more.
    ///
    /// ```
    /// use seamwright::pitch::Pitch;
    /// use seamwright::units::Angle;
    /// assert_eq!(Pitch::from_angle(Angle::degrees_from(45.0)?)?.ratio(), 1.0);
    /// assert!(Pitch::from_angle(Angle::SQUARE).is_err());
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn from_angle(angle: Angle) -> Result<Pitch, Error> {
        if (0.0..90.0).contains(&angle.degrees()) {
            // Adding zero turns -0.0 into 0.0, so that equal pitches have equal bits.
            Ok(Pitch(Kept::Degrees(Angle::of_degrees(angle.degrees() + 0.0))))
        } else {
            Err(Error::new(ErrorKind::OutOfRange, "a pitch is less than 90 degrees and not negative").at("angle").value_of(angle).accepts(STEEPEST))
        }
    }

    /// A pitch by its rise in a run of 12 in, as the trade in feet and inches says it.
    ///
    /// # Errors
    /// As [`Pitch::rise_run`].
    ///
    /// ```
    /// use seamwright::pitch::Pitch;
    /// use seamwright::units::Length;
    /// assert_eq!(Pitch::in_twelve(Length::inches(5))?.slope_factor(), 13.0 / 12.0);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn in_twelve(rise: Length) -> Result<Pitch, Error> {
        Pitch::rise_run(rise, Length::inches(12))
    }

    /// Reads `6:12`, `1/4:12`, `6 1/2:12`, `150 mm:300 mm` (rise to run), `33.3 %` or `26.5 deg`.
    ///
    /// Both sides of a ratio are lengths in any notation of [`Length::parse`], or both are bare numbers.
    ///
    /// # Errors
    /// [`ErrorKind::Parse`] or [`ErrorKind::Unit`] with a span that points into the text; a number without its notation is refused, and
    /// so is a ratio with a unit on one side only. Those of [`Pitch::rise_run`] and [`Pitch::from_angle`].
    ///
    /// ```
    /// use seamwright::pitch::Pitch;
    /// assert_eq!(Pitch::parse("3'-6\":12'")?.to_string(), "42:144");
    /// assert!(Pitch::parse("6").is_err());
    /// assert!(Pitch::parse("150 mm:12").unwrap_err().message().contains("one side"));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn parse(text: &str) -> Result<Pitch, Error> {
        let placed = |e: Error| e.value_of(text);
        if let Some((rise, run)) = text.split_once(':') {
            let at = rise.len() + 1;
            if let Some(second) = run.find(':') {
                return Err(Error::new(ErrorKind::Parse, "a pitch has one colon").value_of(text).pointing(at + second, at + second + 1).accepts(ACCEPTS));
            }
            let (rise, rise_bare) = side(text, rise, 0, LengthUnit::Inch)?;
            let (run, run_bare) = side(text, run, at, LengthUnit::Inch)?;
            if rise_bare != run_bare {
                let message = "a unit on one side only of a pitch";
                return Err(Error::new(ErrorKind::Unit, message).value_of(text).accepts(ACCEPTS).cured_by("give both sides their unit, or neither"));
            }
            return Pitch::rise_run(rise, run).map_err(placed);
        }
        if let Some(number) = text.trim_end().strip_suffix('%') {
            // In millimetres over 100 mm, so that a percentage is exact to nine decimals.
            let (rise, bare) = side(text, number, 0, LengthUnit::Millimetre)?;
            if !bare {
                return Err(Error::new(ErrorKind::Unit, "a percentage takes no unit of length").value_of(text).accepts(ACCEPTS));
            }
            return Pitch::rise_run(rise, PERCENT_RUN).map_err(placed);
        }
        match Angle::parse(text) {
            Ok(angle) => Pitch::from_angle(angle).map_err(placed),
            Err(e) if e.kind() == ErrorKind::Unit => Err(Error::new(ErrorKind::Unit, "a pitch needs its notation")
                .value_of(text)
                .accepts(ACCEPTS)
                .cured_by("write a ratio with a colon, or add % or deg")),
            Err(e) => Err(e.accepts(ACCEPTS)),
        }
    }

    /// The rise and the run as given; `None` for a pitch in degrees.
    #[must_use]
    pub const fn as_rise_run(&self) -> Option<(Length, Length)> {
        match self.0 {
            Kept::Ratio { rise, run } => Some((rise, run)),
            Kept::Degrees(_) => None,
        }
    }

    /// Whether it was given in degrees.
    #[must_use]
    pub const fn is_in_degrees(&self) -> bool {
        matches!(self.0, Kept::Degrees(_))
    }

    /// The slope angle, measured up from level.
    #[must_use]
    pub fn angle(&self) -> Angle {
        match self.0 {
            Kept::Ratio { rise, run } => Angle::of_degrees(num::atan2_deg(pm(rise), pm(run))),
            Kept::Degrees(a) => a,
        }
    }

    /// Rise over run, the tangent of the slope angle.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        match self.0 {
            Kept::Ratio { rise, run } => pm(rise) / pm(run),
            Kept::Degrees(a) => a.tan(),
        }
    }

    /// The rise in percent of the run.
    #[must_use]
    pub fn percent(&self) -> f64 {
        match self.0 {
            Kept::Ratio { rise, run } => 100.0 * pm(rise) / pm(run),
            Kept::Degrees(a) => 100.0 * a.tan(),
        }
    }

    /// The rise over the whole span of an even gable, half the [`ratio`](Self::ratio): what old handbooks call the pitch (8:12 is a 1/3 pitch).
    #[must_use]
    pub fn rise_to_span_ratio(&self) -> f64 {
        self.ratio() / 2.0
    }

    /// True length down the slope for each unit of level run, sqrt(1 + ratio^2); also surface for each unit of plan area.
    #[must_use]
    pub fn slope_factor(&self) -> f64 {
        let r = self.ratio();
        (1.0 + r * r).sqrt()
    }

    /// Sine of the slope angle: rise for each unit of length down the slope.
    #[must_use]
    pub fn sine(&self) -> f64 {
        match self.0 {
            Kept::Ratio { .. } => self.ratio() / self.slope_factor(),
            Kept::Degrees(a) => a.sin(),
        }
    }

    /// Cosine of the slope angle: level run for each unit of length down the slope.
    #[must_use]
    pub fn cosine(&self) -> f64 {
        match self.0 {
            Kept::Ratio { .. } => 1.0 / self.slope_factor(),
            Kept::Degrees(a) => a.cos(),
        }
    }

    /// The rise over this level run; for a ratio it is exact, rounded half-even once to 1 pm. A negative run gives a negative rise.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of a length.
    ///
    /// ```
    /// use seamwright::pitch::Pitch;
    /// use seamwright::units::Length;
    /// assert_eq!(Pitch::parse("7:12")?.rise_over(Length::feet(8))?, Length::inches(56));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn rise_over(&self, run: Length) -> Result<Length, Error> {
        match self.0 {
            Kept::Ratio { rise, run: unit } => {
                let product = i128::from(rise.pm()) * i128::from(run.pm());
                let unit = i128::from(unit.pm());
                let floor = product.div_euclid(unit);
                let twice = 2 * product.rem_euclid(unit);
                let up = twice > unit || (twice == unit && floor & 1 != 0);
                i64::try_from(floor + i128::from(up))
                    .map(Length::from_pm)
                    .map_err(|_| Error::new(ErrorKind::Overflow, "a rise is too large").at("run").value_of(run).accepts("a rise of at most 9 223 372 m"))
            }
            Kept::Degrees(a) => Length::from_mm(run.mm() * a.tan()).map_err(|e| e.at("run")),
        }
    }

    /// The true length down the slope over this level run, run x [`slope_factor`](Self::slope_factor).
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of a length.
    ///
    /// ```
    /// use seamwright::pitch::Pitch;
    /// use seamwright::units::Length;
    /// assert_eq!(Pitch::parse("5:12")?.slope_length(Length::feet(12))?, Length::feet(13));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn slope_length(&self, run: Length) -> Result<Length, Error> {
        Length::from_mm(run.mm() * self.slope_factor()).map_err(|e| e.at("run"))
    }

    /// Whether it has no slope.
    #[must_use]
    pub fn is_flat(&self) -> bool {
        match self.0 {
            Kept::Ratio { rise, .. } => rise == Length::ZERO,
            Kept::Degrees(a) => a.degrees() <= 0.0,
        }
    }

    /// Which of two pitches is the steeper. Ratios are compared exactly by cross-multiplication and degrees as degrees; only a ratio
    /// and degrees are compared through the tangent.
    ///
    /// ```
    /// use seamwright::pitch::Pitch;
    /// use std::cmp::Ordering;
    /// assert_eq!(Pitch::parse("12:12")?.compare(&Pitch::parse("45 deg")?), Ordering::Equal);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn compare(&self, other: &Pitch) -> Ordering {
        match (self.0, other.0) {
            (Kept::Ratio { rise: a, run: b }, Kept::Ratio { rise: c, run: d }) => {
                (i128::from(a.pm()) * i128::from(d.pm())).cmp(&(i128::from(c.pm()) * i128::from(b.pm())))
            }
            (Kept::Degrees(a), Kept::Degrees(b)) => a.degrees().total_cmp(&b.degrees()),
            _ => self.ratio().total_cmp(&other.ratio()),
        }
    }

    /// Whether it is as steep as this limit or steeper, compared as [`Pitch::compare`] does: 1/4:12 passes a limit of 1/4:12.
    ///
    /// ```
    /// use seamwright::pitch::Pitch;
    /// let limit = Pitch::parse("1/4:12")?;
    /// assert!(Pitch::parse("1:48")?.at_least(&limit));
    /// assert!(!Pitch::parse("2 %")?.at_least(&limit));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn at_least(&self, limit: &Pitch) -> bool {
        self.compare(limit) != Ordering::Less
    }
}

const PERCENT_RUN: Length = Length::micrometres(100_000);

/// One side of a ratio, and whether it had no unit; its fault points into the whole text.
fn side(text: &str, part: &str, offset: usize, bare: LengthUnit) -> Result<(Length, bool), Error> {
    match Length::parse(part) {
        Ok(l) => Ok((l, false)),
        Err(_) => Length::parse_in(part, bare).map(|l| (l, true)).map_err(|e| {
            let (start, end) = e.span().unwrap_or((0, part.len()));
            e.value_of(text).pointing(offset + start, offset + end).accepts(ACCEPTS)
        }),
    }
}

#[allow(clippy::cast_precision_loss, reason = "picometres below 9 km are exact; beyond, the last ones round")]
fn pm(l: Length) -> f64 {
    l.pm() as f64
}

fn common_divisor(mut a: u64, mut b: u64) -> u64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

impl PartialEq for Pitch {
    fn eq(&self, other: &Pitch) -> bool {
        self.is_in_degrees() == other.is_in_degrees() && self.compare(other) == Ordering::Equal
    }
}

impl Eq for Pitch {}

impl Hash for Pitch {
    fn hash<H: Hasher>(&self, state: &mut H) {
        match self.0 {
            Kept::Ratio { rise, run } => {
                let (rise, run) = (rise.pm().unsigned_abs(), run.pm().unsigned_abs());
                let common = common_divisor(rise, run).max(1);
                (0_u8, rise / common, run / common).hash(state);
            }
            Kept::Degrees(a) => (1_u8, a.degrees().to_bits()).hash(state),
        }
    }
}

/// Inches without their mark: in fractions down to 1/512, else in decimals down to 1e-7; `None` where neither is exact.
fn bare_inches(l: Length) -> Option<String> {
    const INCH: i64 = LengthUnit::Inch.picometres();
    let (whole, rest) = (l.pm() / INCH, l.pm() % INCH);
    if rest == 0 {
        return Some(whole.to_string());
    }
    if rest % (INCH / 512) == 0 {
        let parts = rest / (INCH / 512);
        let common = parts.trailing_zeros();
        let fraction = format!("{}/{}", parts >> common, 512 >> common);
        return Some(if whole == 0 { fraction } else { format!("{whole} {fraction}") });
    }
    let step = INCH / 10_000_000;
    if rest % step == 0 {
        let decimals = format!("{:07}", rest / step);
        return Some(format!("{whole}.{}", decimals.trim_end_matches('0')));
    }
    None
}

impl fmt::Display for Pitch {
    /// The canonical text, which reads back as the same rise and run or the same degrees: `6 1/2:12` in inches where both lengths are
    /// exact in them, a percentage where the run is 100 mm, else both lengths in millimetres; degrees as `26.5 deg`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = match self.0 {
            Kept::Degrees(a) => a.to_string(),
            Kept::Ratio { rise, run } if run == PERCENT_RUN => format!("{} %", rise.to_string().trim_end_matches(" mm")),
            Kept::Ratio { rise, run } => match (bare_inches(rise), bare_inches(run)) {
                (Some(rise), Some(run)) => format!("{rise}:{run}"),
                _ => format!("{rise}:{run}"),
            },
        };
        f.pad(&text)
    }
}

impl core::str::FromStr for Pitch {
    type Err = Error;
    fn from_str(text: &str) -> Result<Pitch, Error> {
        Pitch::parse(text)
    }
}

#[cfg(feature = "serde")]
crate::units::serde_text!(Pitch => "a pitch", ["8:12", "4.5:12", "30 deg", "25 %"]);
