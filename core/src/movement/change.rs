//! Length change with temperature, and its parts across and along a line.

use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Seen, Source, Step};
use crate::units::{Angle, Expansion, ExpansionUnit, Length, TemperatureDifference, TemperatureDifferenceUnit};

/// The law of linear expansion as roofing handbooks use it.
pub(super) const LAW: Source = Source::published("Copper Flashings", "", "p. 60", Seen::Text);

/// Change of a length with a difference of temperature: alpha L dT, positive for growth.
///
/// # Errors
/// Computing refuses a negative length or an expansion under zero ([`ErrorKind::OutOfRange`]), and a change beyond the range of a
/// length ([`ErrorKind::Overflow`]).
///
/// ```
/// use seamwright::movement::LengthChange;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Expansion, Length, LengthUnit, TemperatureDifference};
/// let change = LengthChange {
///     expansion: Expansion::parse("9.5e-6 /degF")?,
///     length: Length::inches(1),
///     difference: TemperatureDifference::parse("60 degF")?,
/// }
/// .compute()?;
/// assert!((change.get(LengthUnit::Inch) - 0.00057).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct LengthChange {
    /// Coefficient of linear expansion.
    pub expansion: Expansion,
    /// The length that moves.
    pub length: Length,
    /// How much warmer it gets; negative for cooling.
    pub difference: TemperatureDifference,
}

/// An expansion that a metal can have.
pub(super) fn expansion_fault(expansion: Expansion) -> Result<(), Error> {
    if expansion < Expansion::ZERO {
        Err(Error::new(ErrorKind::OutOfRange, "metal grows with heat").at("expansion").value_of(expansion).accepts("0 /K or more"))
    } else {
        Ok(())
    }
}

impl Calculation for LengthChange {
    type Out = Length;

    fn title(&self) -> String {
        "length change".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Length, Error> {
        let mut faults = Faults::default();
        faults.keep(self.length.not_negative("length"));
        faults.keep(expansion_fault(self.expansion));
        faults.check()?;
        let change = Length::from_mm(self.length.mm() * self.expansion.get(ExpansionUnit::PerKelvin) * self.difference.get(TemperatureDifferenceUnit::Kelvin))
            .map_err(|e| e.under("length"))?;
        r.step(|| {
            Step::new("length change")
                .formula("alpha L dT")
                .with("alpha", self.expansion)
                .with("L", self.length)
                .with("dT", self.difference)
                .gives(change)
                .source(LAW)
        });
        Ok(change)
    }
}

/// A movement along the seams in its parts at a junction line.
///
/// ```
/// use seamwright::movement::across_line;
/// use seamwright::units::{Angle, Length};
/// let parts = across_line(Length::inches(1), Angle::parse("120 deg")?)?;
/// assert_eq!(parts.along.pm(), -Length::inches_64(32).pm());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct SkewParts {
    /// Square to the line: the movement times the sine of the meeting angle.
    pub across: Length,
    /// Along the line: the movement times the cosine of the meeting angle, negative beyond 90 degrees.
    pub along: Length,
}

/// The parts across and along a line that the seams meet at this angle; 90 degrees is square.
///
/// # Errors
/// [`ErrorKind::OutOfRange`] for a meeting angle of 0 degrees or less, or 180 or more.
///
/// ```
/// use seamwright::movement::across_line;
/// use seamwright::units::{Angle, Length};
/// let parts = across_line(Length::inches(1), Angle::parse("30 deg")?)?;
/// assert_eq!(parts.across, Length::inches_64(32));
/// assert_eq!(across_line(Length::inches(1), Angle::SQUARE)?.along, Length::ZERO);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn across_line(movement: Length, meeting: Angle) -> Result<SkewParts, Error> {
    meeting.meeting()?;
    Ok(SkewParts { across: Length::from_mm(movement.mm() * meeting.sin())?, along: Length::from_mm(movement.mm() * meeting.cos())? })
}
