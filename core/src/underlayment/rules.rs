//! Rolls, and how courses lap.

use super::cautions::NOT_FOR_HOT_METAL;
use crate::error::{Error, ErrorKind, Faults};
use crate::practice::underlayment as practice;
use crate::record::{Caution, Seen, Source};
use crate::units::{Length, Temperature, TemperatureScale};

/// A roll of underlayment or membrane.
///
/// ```
/// use seamwright::underlayment::Roll;
/// use seamwright::units::{Length, Temperature};
/// let felt = Roll { width: Length::inches(36), length: Length::feet(72), rated: None };
/// assert!(felt.hot_caution("underlayment", Some(Temperature::parse("75 degC")?)).is_some(), "nobody says what it is rated to");
/// let hot = Roll { rated: Some(Temperature::parse("121 degC")?), ..felt };
/// assert!(hot.hot_caution("underlayment", Some(Temperature::parse("75 degC")?)).is_none());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Roll {
    /// Its width.
    pub width: Length,
    /// Its length.
    pub length: Length,
    /// The temperature to which its maker rates it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rated: Option<Temperature>,
}

impl Roll {
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.width.positive("width"));
        faults.keep(self.length.positive("length"));
        faults.check()
    }

    /// What is said where it lies under metal that gets this hot, and it is not known to bear that. Without a temperature of the job the
    /// [figure of common practice](crate::practice::underlayment::HOT_METAL_CELSIUS) stands.
    #[must_use]
    pub fn hot_caution(&self, what: &str, hottest: Option<Temperature>) -> Option<Caution> {
        let celsius = |t: Temperature| t.get(TemperatureScale::Celsius);
        let needed = hottest.map_or(practice::HOT_METAL_CELSIUS, celsius);
        if self.rated.is_some_and(|r| celsius(r) >= needed) {
            return None;
        }
        let rated = self.rated.map_or("nothing that is known".to_owned(), |r| format!("{:.0} degC", celsius(r)));
        let caution = Caution::new(NOT_FOR_HOT_METAL, "rated", Source::CommonPractice).arg("what", what);
        Some(caution.arg("hottest", format_args!("{needed:.0} degC")).arg("rated", rated))
    }
}

/// How courses lap.
///
/// ```
/// use seamwright::underlayment::CourseRule;
/// use seamwright::units::Length;
/// assert_eq!(CourseRule::IRC_ONE_LAYER.head_lap, Length::inches(2));
/// assert_eq!(CourseRule::IRC_TWO_LAYERS.starter, Some(Length::inches(19)));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CourseRule {
    /// How far a course laps over the one below, up the slope.
    pub head_lap: Length,
    /// How far two pieces of one course lap, across the slope.
    pub end_lap: Length,
    /// How far end laps of neighbouring courses lie apart at least.
    #[cfg_attr(feature = "serde", serde(default))]
    pub stagger: Length,
    /// The width of a strip that is laid along the foot before the first course, cut from the same roll; none for a single layer.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub starter: Option<Length>,
    /// Whose rule it is.
    pub source: Source,
}

impl CourseRule {
    /// [`CourseRule::IRC_ONE_LAYER`].
    #[must_use]
    pub const fn irc_one_layer() -> CourseRule {
        CourseRule::IRC_ONE_LAYER
    }

    /// One layer, from 4:12 on: courses lap 2 in, end laps 4 in and 6 ft apart.
    pub const IRC_ONE_LAYER: CourseRule = CourseRule {
        head_lap: Length::inches(2),
        end_lap: Length::inches(4),
        stagger: Length::feet(6),
        starter: None,
        source: Source::published("International Residential Code", "2015", "Table R905.1.1(2)", Seen::Secondary),
    };
    /// Two layers of 36 in, from 2:12 to less than 4:12: a strip of 19 in along the eave, then courses that lap 19 in.
    pub const IRC_TWO_LAYERS: CourseRule = CourseRule {
        head_lap: Length::inches(19),
        end_lap: Length::inches(4),
        stagger: Length::feet(6),
        starter: Some(Length::inches(19)),
        source: Source::published("International Residential Code", "2015", "Table R905.1.1(2)", Seen::Secondary),
    };
    /// Felt under sheet metal laps 3 in.
    pub const UFGS_FELT: CourseRule = CourseRule {
        head_lap: Length::inches(3),
        end_lap: Length::inches(3),
        stagger: Length::ZERO,
        starter: None,
        source: Source::published("UFGS 07612N", "", "3.3.1", Seen::Text),
    };

    pub(super) fn check(&self, roll: &Roll) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, length) in [("head_lap", self.head_lap), ("end_lap", self.end_lap), ("stagger", self.stagger)] {
            faults.keep(length.not_negative(path));
        }
        // Of a roll that is all lap nothing is left to lay.
        for (path, lap, most) in [("head_lap", self.head_lap, roll.width.station(9, 10)?), ("end_lap", self.end_lap, roll.length.station(1, 2)?)] {
            if lap > most {
                let error = Error::new(ErrorKind::Impossible, "the lap leaves too little of the roll").at(path).value_of(lap);
                faults.add(error.accepts(format!("at most {most}")));
            }
        }
        if let Some(starter) = self.starter {
            faults.keep(starter.positive("starter"));
            if starter > roll.width {
                faults.add(
                    Error::new(ErrorKind::Impossible, "the strip is wider than the roll")
                        .at("starter")
                        .value_of(starter)
                        .accepts(format!("at most {}", roll.width)),
                );
            }
        }
        faults.check()
    }
}
