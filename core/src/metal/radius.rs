//! The least inside radius of a bend, where a published table gives one, and 'no published limit' where none does.

use super::Alloy;
use crate::error::Error;
use crate::record::{Calculation, Recorder, Seen, Source, Step};
use crate::units::{BendAngle, Length};
use core::fmt;

/// The temper of a sheet. The letters and numbers are those of the standards: aluminium O and H, copper strip R (EN).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum Temper {
    /// Annealed.
    O,
    /// Strain-hardened, quarter hard.
    H12,
    /// Strain-hardened, half hard.
    H14,
    /// Strain-hardened, three-quarter hard.
    H16,
    /// Strain-hardened and partly annealed.
    H25,
    /// Strain-hardened and stabilised, quarter hard.
    H32,
    /// Strain-hardened and stabilised, half hard.
    H34,
    /// Copper strip of 220 MPa.
    R220,
    /// Copper strip of 240 MPa.
    R240,
    /// Copper strip of 290 MPa.
    R290,
    /// Copper strip of 360 MPa.
    R360,
    /// Not known, or none of these.
    Unknown,
}

/// How the bend line lies to the direction of rolling.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum Grain {
    /// The bend line runs across the direction of rolling: the kinder way.
    Across,
    /// The bend line runs along the direction of rolling.
    Along,
}

/// A bend whose least inside radius is asked for.
///
/// ```
/// use seamwright::metal::{Alloy, Grain, MinimumRadius, RadiusLimit, Temper};
/// use seamwright::record::Calculation;
/// use seamwright::units::{BendAngle, Length};
/// let bend = MinimumRadius {
///     alloy: Alloy::Aluminium3003, temper: Temper::H16, thickness: Length::parse("1/32\"")?, bend: BendAngle::SQUARE, grain: Grain::Along,
/// };
/// let RadiusLimit::Published { radius, .. } = bend.compute()? else { unreachable!() };
/// assert_eq!(radius, Length::parse("1/32\"")?);
/// let steel = MinimumRadius { alloy: Alloy::ZincCoatedSteel, temper: Temper::Unknown, ..bend };
/// assert_eq!(steel.compute()?.to_string(), "no published limit");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct MinimumRadius {
    /// The alloy.
    pub alloy: Alloy,
    /// Its temper.
    pub temper: Temper,
    /// The sheet's thickness.
    pub thickness: Length,
    /// The bend, from flat.
    pub bend: BendAngle,
    /// How the bend line lies to the rolling.
    pub grain: Grain,
}

/// The least inside radius.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
pub enum RadiusLimit {
    /// A table gives it.
    Published {
        /// The least inside radius; it may be 0.
        radius: Length,
        /// The same in thicknesses.
        thickness_factor: f64,
        /// The table.
        source: Source,
    },
    /// No published limit is on record for this alloy, temper, thickness and bend. It does not mean that any radius will do: ask the supplier, or bend a trial piece.
    NoPublishedLimit,
}

impl fmt::Display for RadiusLimit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            RadiusLimit::Published { radius, thickness_factor, source } => f.pad(&format!("{radius} ({thickness_factor} thicknesses; {source})")),
            RadiusLimit::NoPublishedLimit => f.pad("no published limit"),
        }
    }
}

/// Half thicknesses at 1/64, 1/32, 1/16, 1/8, 3/16, 1/4, 3/8 and 1/2 in, for a cold bend of 90 degrees.
const ALUMINIUM: [(Alloy, Temper, &[i32]); 8] = [
    (Alloy::Aluminium3003, Temper::O, &[0, 0, 0, 0, 1, 2, 2, 3]),
    (Alloy::Aluminium3003, Temper::H12, &[0, 0, 0, 1, 2, 2, 3, 4]),
    (Alloy::Aluminium3003, Temper::H14, &[0, 0, 0, 2, 2, 3, 4, 5]),
    (Alloy::Aluminium3003, Temper::H16, &[1, 2, 2, 3, 5, 6, 7, 8]),
    (Alloy::Aluminium3105, Temper::H25, &[1, 1, 1]),
    (Alloy::Aluminium5052, Temper::O, &[0, 0, 0, 1, 2, 2, 3, 3]),
    (Alloy::Aluminium5052, Temper::H32, &[0, 0, 2, 3, 3, 3, 3, 4]),
    (Alloy::Aluminium5052, Temper::H34, &[0, 2, 3, 4, 4, 5, 5, 6]),
];
const COLUMNS: [Length; 8] = [
    Length::inches_64(1),
    Length::inches_64(2),
    Length::inches_64(4),
    Length::inches_64(8),
    Length::inches_64(12),
    Length::inches_64(16),
    Length::inches_64(24),
    Length::inches_64(32),
];
const ALUMINIUM_SOURCE: Source = Source::published("Aluminum Design Manual", "2005", "Part VII, Table 3-1", Seen::Secondary);

/// Half thicknesses for strip up to 0.5 mm: 90 degrees across and along the rolling, 180 degrees across and along.
const COPPER: [(Temper, [i32; 4]); 4] =
    [(Temper::R220, [0, 0, 0, 0]), (Temper::R240, [0, 0, 0, 0]), (Temper::R290, [0, 1, 1, 2]), (Temper::R360, [2, 4, 3, 5])];
const COPPER_THICKEST: Length = Length::micrometres(500);
const COPPER_SOURCE: Source = Source::published("data sheet for Cu-ETP CW004A strip", "", "bending radii, strip up to 0.5 mm", Seen::Text);

impl MinimumRadius {
    /// Half thicknesses and the table they stand in. A thickness between two columns is read in the thicker one, a bend under the tabled
    /// angle at the tabled angle: both ask for no less than the bend needs.
    fn tabled(&self) -> Option<(i32, Source)> {
        let degrees = self.bend.degrees();
        if self.alloy == Alloy::Copper {
            let (_, [square_across, square_along, full_across, full_along]) = COPPER.iter().find(|(t, _)| *t == self.temper)?;
            let halves = match (degrees <= 90.0, self.grain) {
                _ if degrees > 180.0 || self.thickness > COPPER_THICKEST => return None,
                (true, Grain::Across) => square_across,
                (true, Grain::Along) => square_along,
                (false, Grain::Across) => full_across,
                (false, Grain::Along) => full_along,
            };
            return Some((*halves, COPPER_SOURCE));
        }
        if degrees > 90.0 {
            return None;
        }
        let (_, _, row) = ALUMINIUM.iter().find(|(a, t, _)| *a == self.alloy && *t == self.temper)?;
        let column = COLUMNS.iter().position(|c| self.thickness <= *c)?;
        row.get(column).map(|halves| (*halves, ALUMINIUM_SOURCE))
    }
}

impl Calculation for MinimumRadius {
    type Out = RadiusLimit;

    fn title(&self) -> String {
        format!("Least inside radius of {} at {}, bent {}", self.alloy, self.thickness, self.bend)
    }

    /// The aluminium table does not speak of the direction of rolling, so the grain does not change its answer.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<RadiusLimit, Error> {
        let thickness = self.thickness.positive("thickness")?;
        let Some((halves, source)) = self.tabled() else {
            r.step(|| Step::new("least inside radius").with("alloy", self.alloy).with("thickness", thickness).gives(RadiusLimit::NoPublishedLimit));
            return Ok(RadiusLimit::NoPublishedLimit);
        };
        let thickness_factor = f64::from(halves) / 2.0;
        let radius = (thickness * halves).length()?.station(1, 2)?;
        r.step(|| {
            let step = Step::new("least inside radius").formula("factor x thickness").with("factor", thickness_factor).with("thickness", thickness);
            step.gives(radius).source(source.clone())
        });
        Ok(RadiusLimit::Published { radius, thickness_factor, source })
    }
}
