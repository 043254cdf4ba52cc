//! Habits of sizing relief holes where bends cross.

use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Recorder, Seen, Source, Step};
use crate::units::Length;

/// A published habit of sizing a relief hole; they disagree, so the caller chooses.
///
/// A relief hole should reach from 1/32 to 1/16 in behind the inside tangent lines of both bends (same source).
///
/// ```
/// use seamwright::trim::ReliefHabit;
/// use seamwright::units::Length;
/// let (radius, sheet) = (Length::parse("0.16 in")?, Length::mils(40));
/// assert_eq!(ReliefHabit::TwiceRadius.diameter(radius, sheet)?, Length::parse("0.32 in")?);
/// assert_eq!(ReliefHabit::Radius.diameter(radius, sheet)?, Length::parse("0.16 in")?);
/// assert_eq!(ReliefHabit::Radius.diameter(Length::mils(30), sheet)?, Length::parse("1/8\"")?);
/// assert_eq!(ReliefHabit::Thickness.diameter(radius, sheet)?, Length::parse("1/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum ReliefHabit {
    /// About twice the inside radius.
    TwiceRadius,
    /// The inside radius, but not less than 1/8 in.
    Radius,
    /// By the thickness, for aluminium: at least 1/8 in up to 0.064 in, 3/16 in from 0.072 to 0.128 in.
    Thickness,
}

static SOURCE: Source = Source::published("FAA-H-8083-31", "", "chapter 4, relief holes", Seen::Secondary);

impl ReliefHabit {
    /// Every habit.
    pub const ALL: &'static [ReliefHabit] = &[ReliefHabit::TwiceRadius, ReliefHabit::Radius, ReliefHabit::Thickness];

    /// The diameter by this habit.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a negative radius, a thickness of zero or less, or one that the habit does not cover.
    pub fn diameter(self, inside_radius: Length, thickness: Length) -> Result<Length, Error> {
        inside_radius.not_negative("inside_radius")?;
        thickness.positive("thickness")?;
        const EIGHTH: Length = Length::inches_64(8);
        match self {
            ReliefHabit::TwiceRadius => (inside_radius * 2).length(),
            ReliefHabit::Radius => Ok(inside_radius.max(EIGHTH)),
            ReliefHabit::Thickness if thickness <= Length::mils(64) => Ok(EIGHTH),
            ReliefHabit::Thickness if thickness >= Length::mils(72) && thickness <= Length::mils(128) => Ok(Length::inches_64(12)),
            ReliefHabit::Thickness => Err(Error::new(ErrorKind::OutOfRange, "the habit does not cover this thickness")
                .at("thickness")
                .value_of(thickness)
                .accepts("up to 0.064 in, or 0.072 to 0.128 in")),
        }
    }

    /// Where the habit comes from.
    #[must_use]
    pub fn source(self) -> &'static Source {
        &SOURCE
    }
}

/// A relief hole where bends cross, sized by a habit: a calculation, so that it is reached by its name.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{ReliefHabit, ReliefHole};
/// use seamwright::units::Length;
/// let hole = ReliefHole { habit: ReliefHabit::Thickness, inside_radius: Length::mils(40), thickness: Length::mils(40) };
/// assert_eq!(hole.compute()?, Length::parse("1/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ReliefHole {
    /// The habit.
    pub habit: ReliefHabit,
    /// Radius of the inside faces of the bends.
    pub inside_radius: Length,
    /// Thickness of the sheet.
    pub thickness: Length,
}

impl Calculation for ReliefHole {
    type Out = Length;

    fn title(&self) -> String {
        format!("relief hole in sheet {}", self.thickness)
    }

    /// # Errors
    /// As [`ReliefHabit::diameter`].
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Length, Error> {
        let diameter = self.habit.diameter(self.inside_radius, self.thickness)?;
        r.step(|| {
            let step = Step::new("diameter").formula(match self.habit {
                ReliefHabit::TwiceRadius => "2 R",
                ReliefHabit::Radius => "R, at least 1/8 in",
                ReliefHabit::Thickness => "by the thickness",
            });
            step.with("R", self.inside_radius).with("T", self.thickness).gives(diameter).source(self.habit.source().clone())
        });
        Ok(diameter)
    }
}
