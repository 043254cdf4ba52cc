//! Sheet gauges, each in its named system. A gauge number without its system means nothing, and is refused.

use super::Alloy;
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::record::{Seen, Source};
use crate::units::{Length, LengthUnit, SurfaceMass, SurfaceMassUnit};
use core::fmt;

/// A system of sheet gauges.
///
/// ```
/// use seamwright::metal::GaugeSystem;
/// assert_eq!(GaugeSystem::parse("manufacturers-standard")?, GaugeSystem::ManufacturersStandard);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum GaugeSystem {
    /// The US Standard gauge of 1893, by weight of wrought iron at 480 lb/ft3: thickness = (oz/ft2)/640 in. Stainless sheet uses its decimals.
    UsStandard,
    /// The Manufacturers' Standard gauge for uncoated steel: the same weights at 41.82 lb/ft2 for each inch.
    ManufacturersStandard,
    /// The gauge of galvanized steel sheet: 2.5 oz/ft2 more, at 41.82 lb/ft2 for each inch, coating included.
    Galvanized,
    /// Brown and Sharpe, for aluminium and copper: 0.005 in x 92^((36 - g)/39). 0000 is -3, 000 is -2, 00 is -1.
    BrownAndSharpe,
    /// The zinc gauge, which rises with its number.
    Zinc,
    /// Copper by its weight in ounces for each square foot.
    CopperWeight,
}

/// Weights of US Standard gauges 14 to 30 in oz/ft2.
const OUNCES: [i64; 17] = [50, 45, 40, 36, 32, 28, 24, 22, 20, 18, 16, 14, 12, 11, 10, 9, 8];
const FIRST: i16 = 14;

/// Breakpoints of the zinc gauge, number and thickness in thousandths of an inch; between them it is linear and in whole thousandths.
const ZINC: [(i16, i32); 6] = [(1, 2), (10, 20), (15, 40), (19, 60), (23, 100), (24, 125)];

/// Copper: oz/ft2, nominal and least thickness in ten-thousandths of an inch. Data, not a formula: no one density gives every row.
const COPPER: [(i16, i32, Option<i32>); 9] = [
    (6, 81, Some(71)),
    (8, 108, Some(97)),
    (10, 135, Some(124)),
    (12, 162, Some(150)),
    (16, 216, Some(204)),
    (20, 270, None),
    (24, 323, Some(308)),
    (32, 431, Some(411)),
    (48, 646, None),
];

impl GaugeSystem {
    /// Every system.
    pub const ALL: &'static [GaugeSystem] = &[
        GaugeSystem::UsStandard,
        GaugeSystem::ManufacturersStandard,
        GaugeSystem::Galvanized,
        GaugeSystem::BrownAndSharpe,
        GaugeSystem::Zinc,
        GaugeSystem::CopperWeight,
    ];

    /// The name as text.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            GaugeSystem::UsStandard => "us-standard",
            GaugeSystem::ManufacturersStandard => "manufacturers-standard",
            GaugeSystem::Galvanized => "galvanized",
            GaugeSystem::BrownAndSharpe => "brown-and-sharpe",
            GaugeSystem::Zinc => "zinc-gauge",
            GaugeSystem::CopperWeight => "copper",
        }
    }

    /// The system with this name.
    ///
    /// # Errors
    /// [`ErrorKind::Unknown`], naming what is accepted.
    pub fn parse(text: &str) -> Result<GaugeSystem, Error> {
        Self::ALL
            .iter()
            .copied()
            .find(|s| s.name() == text.trim())
            .ok_or_else(|| Error::new(ErrorKind::Unknown, "not a gauge system that is known here").value_of(text).accepts(SYSTEMS))
    }

    /// The numbers that it has, in words.
    #[must_use]
    pub const fn numbers(self) -> &'static str {
        match self {
            GaugeSystem::UsStandard | GaugeSystem::ManufacturersStandard | GaugeSystem::Galvanized => "14 to 30",
            GaugeSystem::BrownAndSharpe => "0000, 000, 00, 0, 1 to 40",
            GaugeSystem::Zinc => "1 to 24",
            GaugeSystem::CopperWeight => "6, 8, 10, 12, 16, 20, 24, 32, 48 oz",
        }
    }

    const fn range(self) -> core::ops::RangeInclusive<i16> {
        match self {
            GaugeSystem::UsStandard | GaugeSystem::ManufacturersStandard | GaugeSystem::Galvanized => 14..=30,
            GaugeSystem::BrownAndSharpe => -3..=40,
            GaugeSystem::Zinc => 1..=24,
            GaugeSystem::CopperWeight => 6..=48,
        }
    }

    /// Whether it is the system that the trade uses for this metal (common practice).
    #[must_use]
    pub const fn is_usual_for(self, alloy: Alloy) -> bool {
        match self {
            GaugeSystem::UsStandard => alloy.is_stainless(),
            GaugeSystem::ManufacturersStandard => alloy.is_carbon_steel(),
            GaugeSystem::Galvanized => matches!(alloy, Alloy::ZincCoatedSteel | Alloy::AluminiumZincCoatedSteel),
            GaugeSystem::BrownAndSharpe => alloy.is_aluminium() || matches!(alloy, Alloy::Copper),
            GaugeSystem::Zinc => matches!(alloy, Alloy::TitaniumZinc),
            GaugeSystem::CopperWeight => matches!(alloy, Alloy::Copper),
        }
    }

    /// The gauge of this system whose thickness differs least; of two equally near, the one with the lower number.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a thickness of zero or less.
    ///
    /// ```
    /// use seamwright::metal::GaugeSystem;
    /// use seamwright::units::Length;
    /// let g = GaugeSystem::BrownAndSharpe.nearest(Length::parse("0.0216 in")?)?;
    /// assert_eq!(g.number(), 23);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn nearest(self, thickness: Length) -> Result<Gauge, Error> {
        let thickness = thickness.positive("thickness")?;
        let mut best: Option<(i128, Gauge)> = None;
        for number in self.range() {
            let Ok(gauge) = Gauge::new(self, number) else { continue };
            let apart = (gauge.thickness() - thickness).pm().abs();
            if best.is_none_or(|(least, _)| apart < least) {
                best = Some((apart, gauge));
            }
        }
        best.map(|(_, gauge)| gauge).ok_or_else(|| Error::new(ErrorKind::Internal, "a gauge system without gauges").value_of(self.name()))
    }
}

impl fmt::Display for GaugeSystem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

impl core::str::FromStr for GaugeSystem {
    type Err = Error;
    fn from_str(text: &str) -> Result<GaugeSystem, Error> {
        GaugeSystem::parse(text)
    }
}

const SYSTEMS: &str = "us-standard, manufacturers-standard, galvanized, brown-and-sharpe, zinc-gauge, copper (by weight)";
const ACCEPTS: &str = "24 ga manufacturers-standard, 24 ga galvanized, 16 ga us-standard, 20 ga brown-and-sharpe, 14 ga zinc-gauge, 16 oz copper";

/// A gauge in its system, with its thickness.
///
/// ```
/// use seamwright::metal::Gauge;
/// let g: Gauge = "24 ga galvanized".parse()?;
/// assert_eq!(g.charted_thickness().format("in.4".parse()?)?.as_str(), "0.0276 in");
/// let bare = Gauge::parse("24 ga").unwrap_err();
/// assert!(bare.allowed().unwrap().contains("manufacturers-standard"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Gauge {
    system: GaugeSystem,
    number: i16,
    thickness: Length,
}

impl Gauge {
    /// The gauge of this number: for Brown and Sharpe 0 is 0 and 00, 000, 0000 are -1, -2, -3; for copper the number is its weight in oz/ft2.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at `number` where the system has no such number.
    pub fn new(system: GaugeSystem, number: i16) -> Result<Gauge, Error> {
        let refuse = || Error::new(ErrorKind::OutOfRange, "no such gauge in this system").at("number").value_of(number).accepts(system.numbers());
        if !system.range().contains(&number) {
            return Err(refuse());
        }
        let ounces = || usize::try_from(number - FIRST).ok().and_then(|i| OUNCES.get(i)).copied().ok_or_else(refuse);
        let thickness = match system {
            GaugeSystem::UsStandard => Length::from_pm(ounces()? * (LengthUnit::Inch.picometres() / 640)),
            // Weights in half ounces, so that the allowance of the galvanized gauge is whole.
            GaugeSystem::ManufacturersStandard => by_weight(2 * ounces()?),
            GaugeSystem::Galvanized => by_weight(2 * ounces()? + 5),
            GaugeSystem::BrownAndSharpe => {
                let inches = 0.005 * num::pow(92.0, f64::from(36 - number) / 39.0);
                Length::from_f64(inches, LengthUnit::Inch)?
            }
            GaugeSystem::Zinc => zinc(number).ok_or_else(refuse)?,
            GaugeSystem::CopperWeight => copper(number).map(|(nominal, _)| tenths_of_mils(nominal)).ok_or_else(refuse)?,
        };
        Ok(Gauge { system, number, thickness })
    }

    /// Reads `24 ga manufacturers-standard`, or `16 oz copper` for copper by weight.
    ///
    /// # Errors
    /// [`ErrorKind::Unit`] for a gauge without its system, [`ErrorKind::Unknown`] for a system that is not known, [`ErrorKind::OutOfRange`] for a
    /// number that the system does not have, [`ErrorKind::Parse`] for other text. The message names the systems.
    pub fn parse(text: &str) -> Result<Gauge, Error> {
        let fault = |kind, message| Error::new(kind, message).value_of(text).accepts(ACCEPTS);
        let trimmed = text.trim();
        let digits = trimmed.find(|c: char| !c.is_ascii_digit()).unwrap_or(trimmed.len());
        let (number, rest) = trimmed.split_at(digits);
        if number.is_empty() || number.len() > 4 {
            return Err(fault(ErrorKind::Parse, "not a gauge"));
        }
        let mut words = rest.split_whitespace();
        let unit = words.next().unwrap_or("");
        let system = words.next();
        if words.next().is_some() {
            return Err(fault(ErrorKind::Parse, "not a gauge"));
        }
        let Some(name) = system else {
            return Err(match unit {
                "ga" | "gauge" | "" => fault(ErrorKind::Unit, "a gauge needs the name of its system"),
                "oz" => fault(ErrorKind::Unit, "a weight in ounces needs the metal that it is of"),
                _ => fault(ErrorKind::Parse, "not a gauge"),
            });
        };
        let system = GaugeSystem::parse(name).map_err(|e| e.value_of(text))?;
        let by_weight = system == GaugeSystem::CopperWeight;
        if !matches!((unit, by_weight), ("ga" | "gauge", false) | ("oz", true)) {
            return Err(fault(ErrorKind::Unit, "a unit that does not go with this gauge system"));
        }
        let no_such = || Error::new(ErrorKind::OutOfRange, "no such gauge in this system").value_of(text).accepts(system.numbers());
        let number: i16 = if system == GaugeSystem::BrownAndSharpe && number.len() > 1 && number.bytes().all(|b| b == b'0') {
            1 - i16::try_from(number.len()).map_err(|_| no_such())?
        } else {
            number.parse().map_err(|_| no_such())?
        };
        Gauge::new(system, number).map_err(|_| no_such())
    }

    /// The system.
    #[must_use]
    pub const fn system(self) -> GaugeSystem {
        self.system
    }

    /// The number, as [`Gauge::new`] counts it.
    #[must_use]
    pub const fn number(self) -> i16 {
        self.number
    }

    /// The nominal thickness by the system's law, or for copper as its table prints it. The least thickness that a mill may deliver is another matter: see
    /// [`least_thickness`](Self::least_thickness).
    #[must_use]
    pub const fn thickness(self) -> Length {
        self.thickness
    }

    /// The thickness as charts print it, to the nearest 0.0001 in.
    #[must_use]
    pub const fn charted_thickness(self) -> Length {
        const STEP: i64 = LengthUnit::Inch.picometres() / 10_000;
        Length::from_pm((self.thickness.pm() + STEP / 2) / STEP * STEP)
    }

    /// The least thickness that the source prints: for copper by weight in most rows, else `None`.
    #[must_use]
    pub fn least_thickness(self) -> Option<Length> {
        if self.system == GaugeSystem::CopperWeight { copper(self.number).and_then(|(_, least)| least).map(tenths_of_mils) } else { None }
    }

    /// The weight that defines the gauge, where a weight does.
    #[must_use]
    pub fn defining_weight(self) -> Option<SurfaceMass> {
        let ounces = usize::try_from(self.number - FIRST).ok().and_then(|i| OUNCES.get(i)).copied();
        #[allow(clippy::cast_precision_loss, reason = "ounces are at most 50")]
        let of = |oz: i64, more: f64| SurfaceMass::of(oz as f64 + more, SurfaceMassUnit::OuncePerSquareFoot);
        match self.system {
            GaugeSystem::UsStandard | GaugeSystem::ManufacturersStandard => ounces.map(|oz| of(oz, 0.0)),
            GaugeSystem::Galvanized => ounces.map(|oz| of(oz, 2.5)),
            GaugeSystem::CopperWeight => Some(of(i64::from(self.number), 0.0)),
            GaugeSystem::BrownAndSharpe | GaugeSystem::Zinc => None,
        }
    }

    /// Where the law or the row comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self.system {
            // Gauges 27 to 30 were read in a comparison chart only.
            GaugeSystem::UsStandard if self.number > 26 => Source::published("15 U.S.C. 206", "Act of 3 March 1893", "table, gauges 27 to 30", Seen::Secondary),
            GaugeSystem::UsStandard => Source::published("15 U.S.C. 206", "Act of 3 March 1893", "table", Seen::Text),
            GaugeSystem::ManufacturersStandard => Source::published(
                "Manufacturers' Standard gauge for steel sheet",
                "",
                "41.82 lb/ft2 for each inch, as a steel merchant's chart prints it",
                Seen::Secondary,
            ),
            GaugeSystem::Galvanized => {
                Source::published("galvanized sheet gauge", "", "(oz + 2.5)/16/41.82 in, inferred from the 17 rows of a steel merchant's chart", Seen::Derived)
            }
            GaugeSystem::BrownAndSharpe => Source::published("ASTM B258", "", "fixed points 36 = 0.005 in, 0000 = 0.46 in", Seen::Secondary),
            GaugeSystem::Zinc => Source::published("GNU units, definitions file", "2.22", "zinc gauge", Seen::Text),
            GaugeSystem::CopperWeight => Source::published("Copper Development Association, Architecture Design Handbook", "", "Table 1.1.3", Seen::Text),
        }
    }
}

/// Thickness at 41.82 lb/ft2 for each inch: half ounces / 32 / 41.82 in, rounded half-up to 1 pm; exact halves do not occur.
fn by_weight(half_ounces: i64) -> Length {
    const INCH_HUNDRED: i64 = LengthUnit::Inch.picometres() * 100;
    const DIVISOR: i64 = 32 * 4182;
    Length::from_pm((half_ounces * INCH_HUNDRED + DIVISOR / 2) / DIVISOR)
}

fn zinc(number: i16) -> Option<Length> {
    ZINC.iter().zip(ZINC.iter().skip(1)).find(|((a, _), (b, _))| (*a..=*b).contains(&number)).map(|((a, low), (b, high))| {
        let step = (high - low) / i32::from(b - a);
        Length::mils(low + step * i32::from(number - a))
    })
}

fn copper(ounces: i16) -> Option<(i32, Option<i32>)> {
    COPPER.iter().find(|(oz, _, _)| *oz == ounces).map(|(_, nominal, least)| (*nominal, *least))
}

fn tenths_of_mils(n: i32) -> Length {
    Length::from_pm(i64::from(n) * (LengthUnit::Inch.picometres() / 10_000))
}

impl fmt::Display for Gauge {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = match self.system {
            GaugeSystem::CopperWeight => format!("{} oz copper", self.number),
            GaugeSystem::BrownAndSharpe if self.number < 0 => format!("{} ga {}", "0".repeat(usize::from(self.number.unsigned_abs()) + 1), self.system),
            _ => format!("{} ga {}", self.number, self.system),
        };
        f.pad(&text)
    }
}

impl core::str::FromStr for Gauge {
    type Err = Error;
    fn from_str(text: &str) -> Result<Gauge, Error> {
        Gauge::parse(text)
    }
}

#[cfg(feature = "serde")]
crate::units::serde_text!(
    GaugeSystem => "a gauge system", ["galvanized", "us-standard"];
    Gauge => "a gauge with its system", ["24 ga galvanized", "16 oz copper"];
);
