//! Metallic coatings of steel sheet by their designation. Inch and metric classes are paired by the standards, not converted.

use super::Alloy;
use crate::error::{Error, ErrorKind};
use crate::record::{Seen, Source};
use crate::units::{Length, LengthUnit, SurfaceMass, SurfaceMassUnit};
use core::fmt;

/// What a coating is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum CoatingMetal {
    /// Zinc.
    Zinc,
    /// 55 % aluminium and zinc.
    AluminiumZinc,
}

struct Row {
    name: &'static str,
    metal: CoatingMetal,
    unit: SurfaceMassUnit,
    triple: f64,
    one_side: Option<f64>,
    single: f64,
    pair: Coating,
}

macro_rules! coatings {
    ($($inch:ident $inch_name:literal ($it:literal, $io:expr, $is:literal) / $metric:ident $metric_name:literal ($mt:literal, $mo:expr, $ms:literal): $metal:ident;)+) => {
        /// A coating designation; masses are totals of both sides unless said otherwise.
        ///
        /// ```
        /// use seamwright::metal::Coating;
        /// use seamwright::units::SurfaceMass;
        /// let c: Coating = "G90".parse()?;
        /// assert_eq!(c.triple_spot(), SurfaceMass::parse("0.9 oz/ft2")?);
        /// assert_eq!(c.paired(), Coating::Z275);
        /// # Ok::<(), seamwright::error::Error>(())
        /// ```
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Coating {
            $(#[doc = concat!("`", $inch_name, "`, in oz/ft2.")] $inch, #[doc = concat!("`", $metric_name, "`, in g/m2.")] $metric,)+
        }

        impl Coating {
            /// Every designation.
            pub const ALL: &'static [Coating] = &[$(Coating::$inch, Coating::$metric),+];

            const fn row(self) -> Row {
                match self {
                    $(
                        Coating::$inch => Row {
                            name: $inch_name,
                            metal: CoatingMetal::$metal,
                            unit: SurfaceMassUnit::OuncePerSquareFoot,
                            triple: $it,
                            one_side: $io,
                            single: $is,
                            pair: Coating::$metric,
                        },
                        Coating::$metric => Row {
                            name: $metric_name,
                            metal: CoatingMetal::$metal,
                            unit: SurfaceMassUnit::GramPerSquareMetre,
                            triple: $mt,
                            one_side: $mo,
                            single: $ms,
                            pair: Coating::$inch,
                        },
                    )+
                }
            }
        }
    };
}

coatings! {
    G30 "G30" (0.30, Some(0.10), 0.25) / Z90 "Z90" (90.0, Some(30.0), 75.0): Zinc;
    G40 "G40" (0.40, Some(0.12), 0.30) / Z120 "Z120" (120.0, Some(36.0), 90.0): Zinc;
    G60 "G60" (0.60, Some(0.20), 0.50) / Z180 "Z180" (180.0, Some(60.0), 150.0): Zinc;
    G90 "G90" (0.90, Some(0.32), 0.80) / Z275 "Z275" (275.0, Some(94.0), 235.0): Zinc;
    G100 "G100" (1.00, Some(0.36), 0.90) / Z305 "Z305" (305.0, Some(110.0), 275.0): Zinc;
    G115 "G115" (1.15, Some(0.40), 1.00) / Z350 "Z350" (350.0, Some(120.0), 300.0): Zinc;
    G140 "G140" (1.40, Some(0.48), 1.20) / Z450 "Z450" (450.0, Some(154.0), 385.0): Zinc;
    Az50 "AZ50" (0.50, None, 0.43) / Azm150 "AZM150" (150.0, None, 130.0): AluminiumZinc;
    Az55 "AZ55" (0.55, None, 0.50) / Azm165 "AZM165" (165.0, None, 150.0): AluminiumZinc;
    Az60 "AZ60" (0.60, None, 0.52) / Azm180 "AZM180" (180.0, None, 155.0): AluminiumZinc;
}

impl Coating {
    /// The designation.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.row().name
    }

    /// The coating of this designation.
    ///
    /// # Errors
    /// [`ErrorKind::Unknown`], naming what is accepted.
    pub fn parse(text: &str) -> Result<Coating, Error> {
        Self::ALL.iter().copied().find(|c| c.name() == text.trim()).ok_or_else(|| {
            let names: Vec<&str> = Self::ALL.iter().map(|c| c.name()).collect();
            Error::new(ErrorKind::Unknown, "not a coating designation that is known here").value_of(text).accepts(names.join(", "))
        })
    }

    /// What it is made of.
    #[must_use]
    pub const fn metal(self) -> CoatingMetal {
        self.row().metal
    }

    /// The designation that the standard prints beside it in the other system of units.
    #[must_use]
    pub const fn paired(self) -> Coating {
        self.row().pair
    }

    /// The least mass of both sides, mean of three spots (TST).
    #[must_use]
    pub const fn triple_spot(self) -> SurfaceMass {
        SurfaceMass::of(self.row().triple, self.row().unit)
    }

    /// The least mass of one side, mean of three spots, where the standard prints one.
    #[must_use]
    pub const fn triple_spot_one_side(self) -> Option<SurfaceMass> {
        match self.row().one_side {
            Some(mass) => Some(SurfaceMass::of(mass, self.row().unit)),
            None => None,
        }
    }

    /// The least mass of both sides at a single spot (SST).
    #[must_use]
    pub const fn single_spot(self) -> SurfaceMass {
        SurfaceMass::of(self.row().single, self.row().unit)
    }

    /// The thickness of both sides together at the triple-spot mass, by the standard's factor in the designation's own units: zinc 1.68 mil
    /// for each oz/ft2 and 7.14 g/m2 for each micrometre; 55 % aluminium-zinc 3.20 mil and 3.75 g/m2. It is that of the least mass: sheet as delivered usually carries more.
    ///
    /// # Errors
    /// None in practice: every designation's thickness is a length.
    pub fn thickness(self) -> Result<Length, Error> {
        let row = self.row();
        match (row.unit, row.metal) {
            (SurfaceMassUnit::OuncePerSquareFoot, CoatingMetal::Zinc) => Length::from_f64(row.triple * 1.68 / 1000.0, LengthUnit::Inch),
            (SurfaceMassUnit::OuncePerSquareFoot, CoatingMetal::AluminiumZinc) => Length::from_f64(row.triple * 3.20 / 1000.0, LengthUnit::Inch),
            (_, CoatingMetal::Zinc) => Length::from_f64(row.triple / 7.14, LengthUnit::Micrometre),
            (_, CoatingMetal::AluminiumZinc) => Length::from_f64(row.triple / 3.75, LengthUnit::Micrometre),
        }
    }

    /// Where the masses come from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self.metal() {
            CoatingMetal::Zinc => Source::published("ASTM A653/A653M", "2015", "Table 1", Seen::Text),
            CoatingMetal::AluminiumZinc => Source::published("ASTM A792/A792M", "", "Table 1", Seen::Secondary),
        }
    }

    /// Where the thickness factor comes from.
    #[must_use]
    pub const fn thickness_source(self) -> Source {
        match self.metal() {
            CoatingMetal::Zinc => Source::published("ASTM A653/A653M", "", "note on coating thickness", Seen::Secondary),
            CoatingMetal::AluminiumZinc => Source::published("ASTM A792/A792M", "", "Table X1.1", Seen::Memory),
        }
    }

    /// Whether this metal carries such a coating.
    #[must_use]
    pub const fn goes_on(self, alloy: Alloy) -> bool {
        matches!((self.metal(), alloy), (CoatingMetal::Zinc, Alloy::ZincCoatedSteel) | (CoatingMetal::AluminiumZinc, Alloy::AluminiumZincCoatedSteel))
    }
}

impl fmt::Display for Coating {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

impl core::str::FromStr for Coating {
    type Err = Error;
    fn from_str(text: &str) -> Result<Coating, Error> {
        Coating::parse(text)
    }
}

#[cfg(feature = "serde")]
crate::units::serde_text!(Coating => "a coating designation", ["G90", "AZ50"]);
