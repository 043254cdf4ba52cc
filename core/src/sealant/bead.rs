//! Beads by volume.

use super::tape::{waste_fault, whole};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Area, AreaUnit, Length, Volume, VolumeUnit};

/// The section of a bead.
///
/// ```
/// use seamwright::sealant::BeadSection;
/// use seamwright::units::{AreaUnit, Length};
/// let fillet = BeadSection::Fillet { leg: Length::inches(1) };
/// assert!((fillet.area()?.get(AreaUnit::SquareInch) - 0.5).abs() < 1e-12);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum BeadSection {
    /// As in a joint: width times depth.
    Rectangular {
        /// Width of the joint.
        width: Length,
        /// Depth of the sealant.
        depth: Length,
    },
    /// As it leaves the nozzle: a circle.
    Round {
        /// Its diameter.
        diameter: Length,
    },
    /// In an inside corner: a triangle with two equal legs at a right angle.
    Fillet {
        /// Either leg.
        leg: Length,
    },
}

impl BeadSection {
    /// The area of the section.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a size of zero or less.
    pub fn area(&self) -> Result<Area, Error> {
        let mut faults = Faults::default();
        let area = match *self {
            BeadSection::Rectangular { width, depth } => {
                faults.keep(width.positive("section.width"));
                faults.keep(depth.positive("section.depth"));
                width.times(depth)
            }
            BeadSection::Round { diameter } => {
                faults.keep(diameter.positive("section.diameter"));
                Area::new(diameter.times(diameter).get(AreaUnit::SquareMetre) * core::f64::consts::FRAC_PI_4, AreaUnit::SquareMetre)?
            }
            BeadSection::Fillet { leg } => {
                faults.keep(leg.positive("section.leg"));
                Area::new(leg.times(leg).get(AreaUnit::SquareMetre) / 2.0, AreaUnit::SquareMetre)?
            }
        };
        faults.check()?;
        Ok(area)
    }

    fn formula(&self) -> &'static str {
        match self {
            BeadSection::Rectangular { .. } => "width depth",
            BeadSection::Round { .. } => "pi diameter^2 / 4",
            BeadSection::Fillet { .. } => "leg^2 / 2",
        }
    }
}

/// Sealant for a bead of some length.
///
/// # Errors
/// Computing refuses, with the field: a size, tube or length of zero or less, a waste outside 0 to 10 ([`ErrorKind::OutOfRange`]); more than a
/// million tubes ([`ErrorKind::TooLarge`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::sealant::{BeadOrder, BeadSection};
/// use seamwright::units::{Length, LengthUnit, Volume};
/// let quarter = Length::parse("1/4\"")?;
/// let need = BeadOrder {
///     section: BeadSection::Rectangular { width: quarter, depth: quarter },
///     length: Length::feet(100),
///     waste_ratio: 0.0,
///     tube: Volume::parse("10.1 floz")?,
/// }
/// .compute()?;
/// assert_eq!(need.tubes, 5);
/// assert!((need.length_per_tube.get(LengthUnit::Foot) - 24.3).abs() < 0.05);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BeadOrder {
    /// The section of the bead.
    pub section: BeadSection,
    /// Its length.
    pub length: Length,
    /// Share ordered beyond what is needed: 0.1 is a tenth more.
    pub waste_ratio: f64,
    /// What one tube holds.
    pub tube: Volume,
}

/// What sealant a bead needs.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::sealant::{BeadOrder, BeadSection};
/// use seamwright::units::{Length, Volume};
/// let round = BeadSection::Round { diameter: Length::parse("3/8\"")? };
/// let need = BeadOrder { section: round, length: Length::feet(60), waste_ratio: 0.1, tube: Volume::parse("300 mL")? }.compute()?;
/// assert_eq!(need.tubes, 5);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct BeadNeed {
    /// Area of the section.
    pub area: Area,
    /// Volume without waste.
    pub volume: Volume,
    /// Length of bead from one tube, without waste.
    pub length_per_tube: Length,
    /// Whole tubes, with waste.
    pub tubes: u32,
}

impl Calculation for BeadOrder {
    type Out = BeadNeed;

    fn title(&self) -> String {
        "sealant for a bead".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<BeadNeed, Error> {
        let mut faults = Faults::default();
        let area = faults.keep(self.section.area()).unwrap_or_default();
        faults.keep(self.length.positive("length"));
        faults.keep(waste_fault(self.waste_ratio));
        if self.tube <= Volume::ZERO {
            faults.add(Error::new(ErrorKind::OutOfRange, "a tube must hold something").at("tube").value_of(self.tube).accepts("more than 0 m3"));
        }
        faults.check()?;
        r.step(|| Step::new("section").formula(self.section.formula()).gives(area).source(Source::geometry()));
        let square_mm = area.get(AreaUnit::SquareMillimetre);
        let cubic_mm = square_mm * self.length.mm();
        let volume = Volume::new(cubic_mm * 1e-9, VolumeUnit::CubicMetre)?;
        r.step(|| Step::new("volume").formula("section length").with("section", area).with("length", self.length).gives(volume).source(Source::geometry()));
        let tube_mm3 = self.tube.get(VolumeUnit::CubicMetre) * 1e9;
        let length_per_tube = Length::from_mm(tube_mm3 / square_mm).map_err(|_| {
            let error = Error::new(ErrorKind::Overflow, format!("one tube fills more of a bead of {area} than can be told"));
            error.at("tube").value_of(self.tube).accepts("what fills at most 9 223 372 m")
        })?;
        let tubes = whole(cubic_mm * (1.0 + self.waste_ratio), tube_mm3, "tube")?;
        r.step(|| {
            Step::new("tubes")
                .formula("up(volume (1 + waste) / tube)")
                .with("volume", volume)
                .with("waste", self.waste_ratio)
                .with("tube", self.tube)
                .gives(tubes)
                .source(Source::user())
        });
        Ok(BeadNeed { area, volume, length_per_tube, tubes })
    }
}
