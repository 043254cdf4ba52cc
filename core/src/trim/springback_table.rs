//! Springback factors kR by metal and by inside radius over thickness.

use crate::error::{Error, ErrorKind};
use crate::record::{Seen, Source};

/// The rows were read in a German metal-trades table book; the heads of the columns were recalled, and a table is no better than its heads.
static SOURCE: Source =
    Source::published("a German metal-trades table book", "", "springback factors kR; the columns r/s = 1 to 100 are recalled", Seen::Memory);

const COLUMNS: [f64; 11] = [1.0, 1.6, 2.5, 4.0, 6.3, 10.0, 16.0, 25.0, 40.0, 63.0, 100.0];

/// A metal of the table of springback factors, by the name of its standard.
///
/// ```
/// use seamwright::trim::SpringbackMetal;
/// assert_eq!(SpringbackMetal::Dc01.factor(1.0)?, 0.99);
/// assert_eq!(SpringbackMetal::Dc01.factor(100.0)?, 0.66);
/// assert!(SpringbackMetal::Dc01.factor(100.1).is_err() && SpringbackMetal::Dc01.factor(0.9).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum SpringbackMetal {
    /// DC04, soft deep-drawing steel.
    Dc04,
    /// DC01, soft cold-rolled steel.
    Dc01,
    /// X12CrNi18-8, austenitic stainless steel.
    X12CrNi188,
    /// E-Cu-R20, copper.
    ECuR20,
    /// CuZn33-R29, brass.
    CuZn33R29,
    /// EN AW-Al99.0, pure aluminium.
    Al990,
    /// EN AW-AlCuMg1.
    AlCuMg1,
    /// EN AW-AlSiMgMn.
    AlSiMgMn,
}

impl SpringbackMetal {
    /// Every metal of the table.
    pub const ALL: &'static [SpringbackMetal] = &[
        SpringbackMetal::Dc04,
        SpringbackMetal::Dc01,
        SpringbackMetal::X12CrNi188,
        SpringbackMetal::ECuR20,
        SpringbackMetal::CuZn33R29,
        SpringbackMetal::Al990,
        SpringbackMetal::AlCuMg1,
        SpringbackMetal::AlSiMgMn,
    ];

    /// The metal as its standard names it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            SpringbackMetal::Dc04 => "DC04",
            SpringbackMetal::Dc01 => "DC01",
            SpringbackMetal::X12CrNi188 => "X12CrNi18-8",
            SpringbackMetal::ECuR20 => "E-Cu-R20",
            SpringbackMetal::CuZn33R29 => "CuZn33-R29",
            SpringbackMetal::Al990 => "EN AW-Al99.0",
            SpringbackMetal::AlCuMg1 => "EN AW-AlCuMg1",
            SpringbackMetal::AlSiMgMn => "EN AW-AlSiMgMn",
        }
    }

    /// Where the table comes from.
    #[must_use]
    pub fn source() -> Source {
        SOURCE.clone()
    }

    /// The row; a metal that ends before the last column has fewer.
    const fn row(self) -> &'static [f64] {
        match self {
            SpringbackMetal::Dc04 => &[0.99, 0.99, 0.99, 0.98, 0.97, 0.97, 0.96, 0.94, 0.91, 0.87, 0.83],
            SpringbackMetal::Dc01 => &[0.99, 0.99, 0.99, 0.97, 0.96, 0.96, 0.93, 0.90, 0.85, 0.77, 0.66],
            SpringbackMetal::X12CrNi188 => &[0.99, 0.98, 0.97, 0.95, 0.93, 0.89, 0.84, 0.76, 0.63],
            SpringbackMetal::ECuR20 => &[0.98, 0.97, 0.97, 0.96, 0.95, 0.93, 0.90, 0.85, 0.79, 0.72, 0.60],
            SpringbackMetal::CuZn33R29 => &[0.97, 0.97, 0.96, 0.95, 0.94, 0.93, 0.89, 0.86, 0.83, 0.77, 0.73],
            SpringbackMetal::Al990 => &[0.99, 0.99, 0.99, 0.99, 0.98, 0.98, 0.97, 0.97, 0.96, 0.95, 0.93],
            SpringbackMetal::AlCuMg1 => &[0.98, 0.98, 0.98, 0.98, 0.97, 0.97, 0.96, 0.95, 0.93, 0.91, 0.87],
            SpringbackMetal::AlSiMgMn => &[0.98, 0.98, 0.97, 0.96, 0.95, 0.93, 0.90, 0.86, 0.82, 0.76, 0.72],
        }
    }

    /// The factor at an inside radius of so many thicknesses: between two columns in proportion, never outside the metal's own columns.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at `inside_radius` outside the printed range.
    pub fn factor(self, ratio: f64) -> Result<f64, Error> {
        let row = self.row();
        let mut last: Option<(f64, f64)> = None;
        for (&column, &factor) in COLUMNS.iter().zip(row) {
            if ratio.total_cmp(&column).is_eq() {
                return Ok(factor);
            }
            if let Some((before, low)) = last
                && ratio > before
                && ratio < column
            {
                return Ok(low + (ratio - before) / (column - before) * (factor - low));
            }
            last = Some((column, factor));
        }
        let greatest = last.map_or(0.0, |(column, _)| column);
        Err(Error::new(ErrorKind::OutOfRange, "the table of springback factors does not cover this bend")
            .at("inside_radius")
            .value_of(format_args!("r/s = {ratio}"))
            .accepts(format!("an inside radius of 1 to {greatest} thicknesses for {}", self.name()))
            .cured_by("the elastic formula, or a trial bend"))
    }
}
