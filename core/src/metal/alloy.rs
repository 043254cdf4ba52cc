//! The metals by name, with their density and expansion, each figure with its own source.

use crate::error::{Error, ErrorKind};
use crate::record::{Seen, Source};
use crate::units::{Density, DensityUnit, Expansion, ExpansionUnit};
use core::fmt;

/// A metal that roofs and their trims are made of.
///
/// ```
/// use seamwright::metal::Alloy;
/// use seamwright::units::DensityUnit;
/// let a: Alloy = "aluminium-3003".parse()?;
/// assert_eq!(a, Alloy::Aluminium3003);
/// assert!((a.density().value.get(DensityUnit::KilogramPerCubicMetre) - 2730.0).abs() < 1e-9);
/// assert!("tin".parse::<Alloy>().is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Alloy {
    /// Uncoated carbon steel.
    CarbonSteel,
    /// Steel sheet with a zinc coating.
    ZincCoatedSteel,
    /// Steel sheet with a coating of 55 % aluminium and zinc.
    AluminiumZincCoatedSteel,
    /// Aluminium 3003.
    Aluminium3003,
    /// Aluminium 3004.
    Aluminium3004,
    /// Aluminium 3105.
    Aluminium3105,
    /// Aluminium 5052.
    Aluminium5052,
    /// Copper sheet for building.
    Copper,
    /// Zinc alloyed with a little copper and titanium.
    TitaniumZinc,
    /// Stainless steel 304.
    Stainless304,
    /// Stainless steel 316.
    Stainless316,
}

/// A density as a source gives it.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct DensityFigure {
    /// The figure.
    pub value: Density,
    /// Where it stands.
    pub source: Source,
}

/// A mean coefficient of linear expansion as a source gives it.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct ExpansionFigure {
    /// The figure.
    pub value: Expansion,
    /// The range of temperature, or the direction of rolling, that the source states for it; empty where it states none.
    pub holds_for: &'static str,
    /// Where it stands.
    pub source: Source,
}

const fn density(value: f64, unit: DensityUnit, source: Source) -> DensityFigure {
    DensityFigure { value: Density::of(value, unit), source }
}

const fn expansion(millionths: f64, unit: ExpansionUnit, holds_for: &'static str, source: Source) -> ExpansionFigure {
    ExpansionFigure { value: Expansion::of(millionths * 1e-6, unit), holds_for, source }
}

use DensityUnit::{GramPerCubicCentimetre as GCM3, KilogramPerCubicMetre as KGM3, PoundPerCubicInch as LBIN3};
use ExpansionUnit::{PerDegreeFahrenheit as PER_F, PerKelvin as PER_K};

const fn memory(document: &'static str) -> Source {
    Source::published(document, "", "", Seen::Memory)
}

const ALUMINIUM_TEXT: Source =
    Source::published("Kissell and Ferry, Aluminum Structures (title from memory)", "", "section 4.10, Tables 4.3 and 4.4", Seen::Text);
const ALUMINIUM_TABLE: Source =
    Source::published("Aluminum Association, typical physical properties", "", "average coefficient, 68 to 212 degF", Seen::Secondary);
const COPPER_HANDBOOK: Source = Source::published("Copper Development Association, Architecture Design Handbook", "", "Table 1.1A", Seen::Text);
const COPPER_FACTS: Source = Source::published("Copper Development Association, Innovations", "August 2001", "fact sheet, Table 5", Seen::Text);
const MOVEMENT_ARTICLE: Source =
    Source::published("Construction Canada, Controlling thermal movement in metal panel roofs", "November 2016", "example 1", Seen::Text);
const STAINLESS: Source = Source::published("EN 10088-1", "", "table of physical properties", Seen::Secondary);
const MATERIALS_TEXT: Source =
    Source::published("Callister, Fundamentals of Materials Science and Engineering", "3rd edition", "Table B.6, p. 816", Seen::Text);
const UNITS_FILE: Source = Source::published("GNU units, definitions file", "2.22", "zinc", Seen::Text);
const STEEL_EUROCODE: Source = Source::published("EN 1993-1-1", "", "3.2.6", Seen::Memory);

/// What is on record of one metal: the figures used by default, then the others.
struct Data {
    density: DensityFigure,
    other_densities: &'static [DensityFigure],
    expansion: ExpansionFigure,
    other_expansions: &'static [ExpansionFigure],
}

const ALUMINIUM_AVERAGE: ExpansionFigure = expansion(13.0, PER_F, "68 to 212 degF, average of aluminium alloys", ALUMINIUM_TEXT);
const BASE_STEEL: Source = memory("coated steel taken as its base, carbon steel");

static CARBON_STEEL: Data = Data {
    density: density(0.283, LBIN3, ALUMINIUM_TEXT),
    other_densities: &[density(7850.0, KGM3, memory("handbook figure for carbon steel"))],
    expansion: expansion(6.7, PER_F, "", MOVEMENT_ARTICLE),
    other_expansions: &[
        expansion(12.0, PER_K, "up to 100 degC", STEEL_EUROCODE),
        expansion(11.7, PER_K, "20 to 100 degC", memory("handbook figure for carbon steel")),
    ],
};
static COATED_STEEL: Data = Data {
    density: density(0.283, LBIN3, BASE_STEEL),
    other_densities: &[density(7850.0, KGM3, BASE_STEEL)],
    expansion: expansion(6.7, PER_F, "", BASE_STEEL),
    other_expansions: &[expansion(12.0, PER_K, "up to 100 degC", BASE_STEEL), expansion(11.7, PER_K, "20 to 100 degC", BASE_STEEL)],
};
static ALUMINIUM_3003: Data = Data {
    density: density(2730.0, KGM3, ALUMINIUM_TEXT),
    other_densities: &[],
    expansion: expansion(12.9, PER_F, "68 to 212 degF", ALUMINIUM_TABLE),
    other_expansions: &[expansion(23.2, PER_K, "20 to 100 degC", Source::published("property sheet for aluminium 3003", "", "", Seen::Text))],
};
static ALUMINIUM_3004: Data = Data {
    density: density(2720.0, KGM3, ALUMINIUM_TEXT),
    other_densities: &[],
    expansion: expansion(13.3, PER_F, "68 to 212 degF", ALUMINIUM_TABLE),
    other_expansions: &[],
};
static ALUMINIUM_3105: Data = Data {
    density: density(2720.0, KGM3, ALUMINIUM_TEXT),
    other_densities: &[],
    expansion: ALUMINIUM_AVERAGE,
    other_expansions: &[expansion(23.6, PER_K, "20 to 100 degC", memory("Aluminum Association, typical physical properties"))],
};
static ALUMINIUM_5052: Data =
    Data { density: density(2680.0, KGM3, ALUMINIUM_TEXT), other_densities: &[], expansion: ALUMINIUM_AVERAGE, other_expansions: &[] };
static COPPER: Data = Data {
    density: density(0.322, LBIN3, COPPER_HANDBOOK),
    other_densities: &[density(8.92, GCM3, COPPER_FACTS), density(8.89, GCM3, COPPER_FACTS)],
    expansion: expansion(16.8, PER_K, "25 to 100 degC", COPPER_FACTS),
    other_expansions: &[
        expansion(17.3, PER_K, "20 to 200 degC", COPPER_FACTS),
        expansion(17.7, PER_K, "20 to 300 degC", COPPER_FACTS),
        expansion(9.8, PER_F, "68 to 572 degF", COPPER_HANDBOOK),
        expansion(17.0, PER_K, "", MATERIALS_TEXT),
    ],
};
static TITANIUM_ZINC: Data = Data {
    density: density(7.2, GCM3, Source::published("EN 988", "", "", Seen::Memory)),
    other_densities: &[density(7.14, GCM3, UNITS_FILE)],
    expansion: expansion(22.0, PER_K, "along rolling", Source::published("EN 988", "", "", Seen::Memory)),
    other_expansions: &[
        expansion(24.0, PER_K, "along rolling", memory("ASM handbook figure for zinc-copper-titanium")),
        expansion(19.4, PER_K, "across rolling", memory("ASM handbook figure for zinc-copper-titanium")),
        expansion(32.5, PER_K, "commercial rolled zinc, the greater of its two directions", MATERIALS_TEXT),
        expansion(23.0, PER_K, "commercial rolled zinc, the lesser of its two directions", MATERIALS_TEXT),
    ],
};
static STAINLESS_304: Data = Data {
    density: density(7900.0, KGM3, STAINLESS),
    other_densities: &[density(8.0, GCM3, memory("US handbook figure for stainless 304"))],
    expansion: expansion(16.0, PER_K, "20 to 100 degC", STAINLESS),
    other_expansions: &[
        expansion(16.5, PER_K, "20 to 200 degC", STAINLESS),
        expansion(17.0, PER_K, "20 to 300 degC", STAINLESS),
        expansion(17.5, PER_K, "20 to 400 degC", STAINLESS),
        expansion(18.0, PER_K, "20 to 500 degC", STAINLESS),
        expansion(9.6, PER_F, "0 to 100 degC", memory("US handbook figure for stainless 304")),
    ],
};
static STAINLESS_316: Data = Data {
    density: density(8000.0, KGM3, STAINLESS),
    other_densities: &[density(8.027, GCM3, STAINLESS_SHEET)],
    expansion: expansion(16.0, PER_K, "20 to 100 degC", STAINLESS),
    other_expansions: &[expansion(9.2, PER_F, "68 to 212 degF", STAINLESS_SHEET), expansion(8.9, PER_F, "32 to 212 degF", STAINLESS_SHEET)],
};
const STAINLESS_SHEET: Source = Source::published("US data sheets for stainless 316", "", "", Seen::Text);

impl Alloy {
    /// Every metal.
    pub const ALL: &'static [Alloy] = &[
        Alloy::CarbonSteel,
        Alloy::ZincCoatedSteel,
        Alloy::AluminiumZincCoatedSteel,
        Alloy::Aluminium3003,
        Alloy::Aluminium3004,
        Alloy::Aluminium3105,
        Alloy::Aluminium5052,
        Alloy::Copper,
        Alloy::TitaniumZinc,
        Alloy::Stainless304,
        Alloy::Stainless316,
    ];

    /// The name as text.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Alloy::CarbonSteel => "carbon-steel",
            Alloy::ZincCoatedSteel => "zinc-coated-steel",
            Alloy::AluminiumZincCoatedSteel => "aluminium-zinc-coated-steel",
            Alloy::Aluminium3003 => "aluminium-3003",
            Alloy::Aluminium3004 => "aluminium-3004",
            Alloy::Aluminium3105 => "aluminium-3105",
            Alloy::Aluminium5052 => "aluminium-5052",
            Alloy::Copper => "copper",
            Alloy::TitaniumZinc => "titanium-zinc",
            Alloy::Stainless304 => "stainless-304",
            Alloy::Stainless316 => "stainless-316",
        }
    }

    /// The metal with this name; `aluminum` is read as `aluminium`.
    ///
    /// # Errors
    /// [`ErrorKind::Unknown`], naming what is accepted.
    pub fn parse(text: &str) -> Result<Alloy, Error> {
        let name = text.trim().replace("aluminum", "aluminium");
        Self::ALL.iter().copied().find(|a| a.name() == name).ok_or_else(|| {
            let names: Vec<&str> = Self::ALL.iter().map(|a| a.name()).collect();
            Error::new(ErrorKind::Unknown, "not a metal that is known here").value_of(text).accepts(names.join(", "))
        })
    }

    /// Whether it is one of the aluminium alloys.
    #[must_use]
    pub const fn is_aluminium(self) -> bool {
        matches!(self, Alloy::Aluminium3003 | Alloy::Aluminium3004 | Alloy::Aluminium3105 | Alloy::Aluminium5052)
    }

    /// Whether it is carbon steel, coated or not.
    #[must_use]
    pub const fn is_carbon_steel(self) -> bool {
        matches!(self, Alloy::CarbonSteel | Alloy::ZincCoatedSteel | Alloy::AluminiumZincCoatedSteel)
    }

    /// Whether it is stainless steel.
    #[must_use]
    pub const fn is_stainless(self) -> bool {
        matches!(self, Alloy::Stainless304 | Alloy::Stainless316)
    }

    const fn data(self) -> &'static Data {
        match self {
            Alloy::CarbonSteel => &CARBON_STEEL,
            Alloy::ZincCoatedSteel | Alloy::AluminiumZincCoatedSteel => &COATED_STEEL,
            Alloy::Aluminium3003 => &ALUMINIUM_3003,
            Alloy::Aluminium3004 => &ALUMINIUM_3004,
            Alloy::Aluminium3105 => &ALUMINIUM_3105,
            Alloy::Aluminium5052 => &ALUMINIUM_5052,
            Alloy::Copper => &COPPER,
            Alloy::TitaniumZinc => &TITANIUM_ZINC,
            Alloy::Stainless304 => &STAINLESS_304,
            Alloy::Stainless316 => &STAINLESS_316,
        }
    }

    /// The density used by default. Of a coated steel it is that of the steel under the coating.
    #[must_use]
    pub const fn density(self) -> &'static DensityFigure {
        &self.data().density
    }

    /// The other densities on record.
    #[must_use]
    pub const fn other_densities(self) -> &'static [DensityFigure] {
        self.data().other_densities
    }

    /// The coefficient of expansion used by default: the one whose range is nearest to that of a roof, and read before recalled.
    #[must_use]
    pub const fn expansion(self) -> &'static ExpansionFigure {
        &self.data().expansion
    }

    /// The other coefficients of expansion on record.
    #[must_use]
    pub const fn other_expansions(self) -> &'static [ExpansionFigure] {
        self.data().other_expansions
    }
}

impl fmt::Display for Alloy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

impl core::str::FromStr for Alloy {
    type Err = Error;
    fn from_str(text: &str) -> Result<Alloy, Error> {
        Alloy::parse(text)
    }
}

#[cfg(feature = "serde")]
crate::units::serde_text!(Alloy => "a metal by name", ["copper"]);
