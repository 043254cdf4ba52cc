//! The fold and the gap that an end needs.

use super::change::{LengthChange, across_line, expansion_fault};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Angle, Expansion, Length, Temperature, TemperatureDifference};

/// Which way an end moves with heat.
///
/// ```
/// use seamwright::movement::{EndMovement, MovingEnd};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Expansion, Length, Temperature};
/// let movement = EndMovement {
///     end: MovingEnd::UpperSliding,
///     expansion: Expansion::parse("12e-6 /K")?,
///     to_fixed: Length::feet(30),
///     coldest: Temperature::parse("-20 degC")?,
///     laid: Temperature::parse("20 degC")?,
///     hottest: Temperature::parse("70 degC")?,
///     clearance: Length::inches_64(8),
///     engagement: Length::inches_64(24),
///     meeting: Angle::SQUARE,
/// };
/// // The gap at an upper end closes in the heat, by the larger part of this range.
/// let room = movement.compute()?;
/// assert!(room.closing > room.opening);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum MovingEnd {
    /// Hooked over a drip or cleat, the fixed line above it: cold closes the gap, heat draws the fold off.
    LowerHooked,
    /// Sliding under or into something, the fixed line below it: heat closes the gap, cold draws it out.
    UpperSliding,
}

/// The movement of one panel end over the year.
///
/// # Errors
/// Computing refuses, with the field: a negative distance, clearance or engagement, an expansion under zero, a meeting angle
/// outside 0 to 180 degrees ([`ErrorKind::OutOfRange`]); a laying temperature outside coldest to hottest ([`ErrorKind::Conflict`]).
///
/// ```
/// use seamwright::movement::{EndMovement, MovingEnd};
/// use seamwright::practice;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Expansion, Length, LengthUnit, Temperature};
/// let room = EndMovement {
///     end: MovingEnd::LowerHooked,
///     expansion: Expansion::parse("12.8e-6 /degF")?,
///     to_fixed: Length::feet(40),
///     coldest: Temperature::parse("-20 degF")?,
///     laid: Temperature::parse("70 degF")?,
///     hottest: Temperature::parse("160 degF")?,
///     clearance: practice::movement::CLEARANCE,
///     engagement: practice::movement::ENGAGEMENT,
///     meeting: Angle::SQUARE,
/// }
/// .compute()?;
/// assert!((room.least_fold.get(LengthUnit::Inch) - 1.61).abs() < 0.005);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct EndMovement {
    /// Which way the end moves.
    pub end: MovingEnd,
    /// Coefficient of linear expansion of the panel.
    pub expansion: Expansion,
    /// Distance from the end to the fixed line, along the seam.
    pub to_fixed: Length,
    /// The coldest that the metal gets.
    pub coldest: Temperature,
    /// Temperature of the metal when it is laid.
    pub laid: Temperature,
    /// The hottest that the metal gets.
    pub hottest: Temperature,
    /// Least gap that must stay, square to the line.
    pub clearance: Length,
    /// Least length that must stay hooked, square to the line.
    pub engagement: Length,
    /// Angle between seams and line; 90 degrees is square.
    pub meeting: Angle,
}

/// What an end needs, square to its line.
///
/// ```
/// use seamwright::movement::{EndMovement, MovingEnd};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Expansion, Length, Temperature};
/// let movement = EndMovement {
///     end: MovingEnd::LowerHooked,
///     expansion: Expansion::parse("12e-6 /K")?,
///     to_fixed: Length::feet(30),
///     coldest: Temperature::parse("-20 degC")?,
///     laid: Temperature::parse("20 degC")?,
///     hottest: Temperature::parse("70 degC")?,
///     clearance: Length::inches_64(8),
///     engagement: Length::inches_64(24),
///     meeting: Angle::SQUARE,
/// };
/// let room = movement.compute()?;
/// assert_eq!((room.closing + movement.clearance).length()?, room.gap_when_laid);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EndRoom {
    /// The least fold: clearance, engagement and the whole travel.
    pub least_fold: Length,
    /// The gap to leave at the laying temperature.
    pub gap_when_laid: Length,
    /// How far the gap closes from the laying temperature.
    pub closing: Length,
    /// How far it opens from the laying temperature.
    pub opening: Length,
    /// Movement along the line over the year, not signed.
    pub along: Length,
}

impl EndMovement {
    pub(super) fn validate(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(expansion_fault(self.expansion));
        faults.keep(self.to_fixed.not_negative("to_fixed"));
        faults.keep(self.clearance.not_negative("clearance"));
        faults.keep(self.engagement.not_negative("engagement"));
        faults.keep(self.meeting.meeting());
        if self.coldest > self.hottest {
            faults.add(
                Error::new(ErrorKind::Conflict, "the coldest is warmer than the hottest")
                    .at("coldest")
                    .value_of(self.coldest)
                    .accepts(format!("at most {}", self.hottest)),
            );
        } else if self.laid < self.coldest || self.laid > self.hottest {
            faults.add(
                Error::new(ErrorKind::Conflict, "laid outside the range of the year")
                    .at("laid")
                    .value_of(self.laid)
                    .accepts(format!("{} to {}", self.coldest, self.hottest)),
            );
        }
        faults.check()
    }

    /// Movement square to the line, and along it, for this warming.
    fn moves<R: Recorder>(&self, difference: TemperatureDifference, r: &mut R) -> Result<(Length, Length), Error> {
        let change = LengthChange { expansion: self.expansion, length: self.to_fixed, difference }.run(r)?;
        let parts = across_line(change, self.meeting)?;
        r.step(|| {
            Step::new("square to the line")
                .formula("change sin(phi)")
                .with("change", change)
                .with("phi", self.meeting)
                .gives(parts.across)
                .source(Source::geometry())
        });
        Ok((parts.across, parts.along))
    }

    /// The temperature at which the gap is least.
    pub(super) fn closes_at(&self) -> Temperature {
        match self.end {
            MovingEnd::LowerHooked => self.coldest,
            MovingEnd::UpperSliding => self.hottest,
        }
    }

    /// The temperature at which the fold holds least.
    pub(super) fn opens_at(&self) -> Temperature {
        match self.end {
            MovingEnd::LowerHooked => self.hottest,
            MovingEnd::UpperSliding => self.coldest,
        }
    }
}

impl Calculation for EndMovement {
    type Out = EndRoom;

    fn title(&self) -> String {
        match self.end {
            MovingEnd::LowerHooked => "fold and gap at a hooked lower end".into(),
            MovingEnd::UpperSliding => "fold and gap at a sliding upper end".into(),
        }
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<EndRoom, Error> {
        self.validate()?;
        let (travel, along) = self.moves(self.hottest.above(self.coldest), r)?;
        let (below, _) = self.moves(self.laid.above(self.coldest), r)?;
        let above = (travel - below).length()?;
        let (closing, opening) = match self.end {
            MovingEnd::LowerHooked => (below, above),
            MovingEnd::UpperSliding => (above, below),
        };
        let least_fold = (self.clearance + self.engagement + travel).length()?;
        r.step(|| {
            Step::new("least fold")
                .formula("clearance + engagement + travel")
                .with("clearance", self.clearance)
                .with("engagement", self.engagement)
                .with("travel", travel)
                .gives(least_fold)
                .source(Source::geometry())
        });
        let gap_when_laid = (self.clearance + closing).length()?;
        r.step(|| {
            Step::new("gap when laid")
                .formula("clearance + what closes")
                .with("clearance", self.clearance)
                .with("what closes", closing)
                .gives(gap_when_laid)
                .source(Source::geometry())
        });
        Ok(EndRoom { least_fold, gap_when_laid, closing, opening, along: Length::from_pm(along.pm().saturating_abs()) })
    }
}
