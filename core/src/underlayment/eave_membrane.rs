//! The membrane along an eave: how far up the slope it must reach, and its courses.

use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::Pitch;
use crate::record::{Calculation, Recorder, Seen, Source, Step};
use crate::units::Length;

/// How far a membrane along an eave must reach.
///
/// ```
/// use seamwright::underlayment::EaveReach;
/// use seamwright::units::Length;
/// assert_eq!(EaveReach::irc().inside, Length::inches(24));
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EaveReach {
    /// Inside the exterior wall line, level.
    pub inside: Length,
    /// On roofs of this pitch and steeper it also reaches at least `steep_least` along the slope.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub steep_from: Option<Pitch>,
    /// The least along the slope on such roofs, from the edge of the eave.
    #[cfg_attr(feature = "serde", serde(default))]
    pub steep_least: Length,
    /// Whose rule it is.
    pub source: Source,
}

impl EaveReach {
    /// From the lowest edge to at least 24 in inside the exterior wall line; from 8:12 on also at least 36 in along the slope.
    #[must_use]
    pub fn irc() -> EaveReach {
        EaveReach {
            inside: Length::inches(24),
            steep_from: Pitch::in_twelve(Length::inches(8)).ok(),
            steep_least: Length::inches(36),
            source: Source::published("International Residential Code", "2018", "R905.1.2", Seen::Secondary),
        }
    }
}

/// A membrane along an eave.
///
/// # Errors
/// Computing refuses a width of zero or less, negative distances ([`ErrorKind::OutOfRange`]) and a lap that takes all of the width ([`ErrorKind::Impossible`]).
///
/// ```
/// use seamwright::pitch::Pitch;
/// use seamwright::record::Calculation;
/// use seamwright::underlayment::{EaveMembrane, EaveReach};
/// use seamwright::units::{Length, LengthUnit};
/// // 12 in of overhang and 24 in inside at 12:12: 36 in level is 50.91 in along the slope; two courses of 36 in that lap 4.
/// let asked = EaveMembrane {
///     pitch: Pitch::parse("12:12")?, overhang: Length::inches(12), reach: EaveReach::irc(), width: Length::inches(36), head_lap: Length::inches(4),
/// };
/// let band = asked.compute()?;
/// assert!((band.least.get(LengthUnit::Inch) - 50.911_688).abs() < 1e-6);
/// assert_eq!((band.courses, band.covers), (2, Length::inches(68)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct EaveMembrane {
    /// The plane's pitch.
    pub pitch: Pitch,
    /// From the eave's edge in to the exterior wall line, level.
    pub overhang: Length,
    /// How far it must reach.
    pub reach: EaveReach,
    /// Width of the roll.
    pub width: Length,
    /// How far a course laps over the one below.
    pub head_lap: Length,
}

/// A band of membrane along an eave.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EaveBand {
    /// How far up the slope from the eave it must reach.
    pub least: Length,
    /// Whether the least of steep roofs governs, and not the wall line.
    pub steep: bool,
    /// Courses.
    pub courses: u32,
    /// How far up the slope they reach.
    pub covers: Length,
    /// The running marks of their top edges, from the eave.
    pub marks: Vec<Length>,
}

impl Calculation for EaveMembrane {
    type Out = EaveBand;

    fn title(&self) -> String {
        format!("membrane along an eave of {}", self.pitch)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<EaveBand, Error> {
        let mut faults = Faults::default();
        faults.keep(self.width.positive("width"));
        let lengths =
            [("overhang", self.overhang), ("reach.inside", self.reach.inside), ("reach.steep_least", self.reach.steep_least), ("head_lap", self.head_lap)];
        for (path, length) in lengths {
            faults.keep(length.not_negative(path));
        }
        if faults.is_empty() && self.head_lap > self.width.station(9, 10)? {
            let error = Error::new(ErrorKind::Impossible, "the lap leaves too little of the roll").at("head_lap").value_of(self.head_lap);
            faults.add(error.accepts(format!("at most nine tenths of {}", self.width)));
        }
        faults.check()?;
        let slope = self.pitch.angle();
        let level = (self.overhang + self.reach.inside).length()?;
        let inside = Length::from_mm(level.mm() / slope.cos())?;
        r.step(|| {
            let step =
                Step::new("up the slope from the eave to the mark inside the wall").formula("(overhang + inside) / cos S").with("overhang", self.overhang);
            step.with("inside", self.reach.inside).with("S", slope).gives(inside).source(self.reach.source.clone())
        });
        let steep_least =
            if self.reach.steep_from.is_some_and(|from| slope.degrees() >= from.angle().degrees()) { self.reach.steep_least } else { Length::ZERO };
        let (least, steep) = (inside.max(steep_least), steep_least > inside);
        let exposure = (self.width - self.head_lap).length()?;
        let mut marks = vec![self.width];
        while let Some(top) = marks.last().copied().filter(|top| *top < least) {
            marks.push((top + exposure).length()?);
        }
        let courses = u32::try_from(marks.len()).unwrap_or(u32::MAX);
        let covers = marks.last().copied().unwrap_or_default();
        r.step(|| {
            let step = Step::new("courses").formula("width, then width - lap each, until they reach").with("width", self.width).with("lap", self.head_lap);
            step.with("least", least).gives(courses).source(Source::geometry())
        });
        Ok(EaveBand { least, steep, courses, covers, marks })
    }
}
