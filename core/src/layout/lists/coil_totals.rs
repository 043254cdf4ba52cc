//! Coil by colour and gauge, over any number of planes and trims.

use crate::error::{Error, ErrorKind, Faults};
use crate::metal::Sheet;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Area, AreaUnit, Length, Mass, MassUnit, Sum, SurfaceMassUnit};

/// Coil that something takes.
///
/// ```
/// use seamwright::layout::CoilUse;
/// use seamwright::metal::{Alloy, Sheet};
/// use seamwright::units::Length;
/// let sheet = Sheet::new(Alloy::Aluminium3003, Length::mils(32), None)?;
/// let hall = CoilUse { colour: "slate".into(), sheet, width: Length::inches(20), length: Length::feet(900) };
/// assert_eq!(hall.colour, "slate");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct CoilUse {
    /// Its colour, as the caller calls it; empty for bare metal.
    pub colour: String,
    /// Its sheet.
    pub sheet: Sheet,
    /// Its width.
    pub width: Length,
    /// Its length.
    pub length: Length,
}

/// Coil to be added up by colour, sheet and width.
///
/// ```
/// use seamwright::layout::{CoilTotals, CoilUse};
/// use seamwright::metal::{Alloy, Sheet};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let of = |colour: &str, mils, feet| -> Result<CoilUse, seamwright::error::Error> {
///     let sheet = Sheet::new(Alloy::Aluminium3003, Length::mils(mils), None)?;
///     Ok(CoilUse { colour: colour.into(), sheet, width: Length::inches(20), length: Length::feet(feet) })
/// };
/// let totals = CoilTotals { uses: vec![of("slate", 32, 900)?, of("slate", 40, 50)?, of("slate", 32, 100)?, of("white", 32, 10)?] }.compute()?;
/// assert_eq!(totals.iter().map(|t| (t.colour.as_str(), t.length)).collect::<Vec<_>>(), [
///     ("slate", Length::feet(1000)), ("slate", Length::feet(50)), ("white", Length::feet(10)),
/// ]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct CoilTotals {
    /// What takes coil.
    pub uses: Vec<CoilUse>,
}

/// The coil of one colour, sheet and width.
///
/// ```
/// use seamwright::layout::{CoilTotals, CoilUse};
/// use seamwright::metal::{Alloy, Sheet};
/// use seamwright::record::Calculation;
/// use seamwright::units::{AreaUnit, Length};
/// let sheet = Sheet::new(Alloy::Aluminium3003, Length::mils(32), None)?;
/// let one = CoilUse { colour: "slate".into(), sheet, width: Length::inches(24), length: Length::feet(50) };
/// let total = &CoilTotals { uses: vec![one] }.compute()?[0];
/// assert!((total.area.get(AreaUnit::SquareFoot) - 100.0).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct CoilTotal {
    /// The colour.
    pub colour: String,
    /// The sheet.
    pub sheet: Sheet,
    /// The width.
    pub width: Length,
    /// The length.
    pub length: Length,
    /// The area.
    pub area: Area,
    /// The mass, coating and all.
    pub mass: Mass,
}

impl Calculation for CoilTotals {
    type Out = Vec<CoilTotal>;

    fn title(&self) -> String {
        "coil by colour and gauge".to_owned()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<CoilTotal>, Error> {
        let mut faults = Faults::default();
        if self.uses.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "nothing takes coil").at("uses").accepts("one use or more"));
        }
        for (i, one) in self.uses.iter().enumerate() {
            faults.keep(one.width.positive(&format!("uses[{i}].width")));
            faults.keep(one.length.not_negative(&format!("uses[{i}].length")));
        }
        faults.check()?;
        // In the order in which they first come.
        let mut sums: Vec<(&CoilUse, Sum)> = Vec::new();
        for one in &self.uses {
            match sums.iter_mut().find(|(of, _)| (&of.colour, of.sheet, of.width) == (&one.colour, one.sheet, one.width)) {
                Some((_, sum)) => *sum += one.length,
                None => sums.push((one, one.length.into())),
            }
        }
        let total = |(of, sum): (&CoilUse, Sum)| -> Result<CoilTotal, Error> {
            let length = sum.length().map_err(|e| e.under("uses"))?;
            let (area, sheet) = (length.times(of.width), of.sheet.surface_mass()?);
            let kilograms = area.get(AreaUnit::SquareMetre) * sheet.get(SurfaceMassUnit::KilogramPerSquareMetre);
            Ok(CoilTotal { colour: of.colour.clone(), sheet: of.sheet, width: of.width, length, area, mass: Mass::of(kilograms, MassUnit::Kilogram) })
        };
        let totals = sums.into_iter().map(total).collect::<Result<Vec<_>, _>>()?;
        for t in &totals {
            r.step(|| {
                let step = Step::new(format!("coil, {} {}", t.colour, t.sheet.alloy())).formula("sum of lengths x width x mass of the sheet for each area");
                step.with("length", t.length).with("width", t.width).gives(format_args!("{}, {}", t.area, t.mass)).source(Source::geometry())
            });
        }
        Ok(totals)
    }
}
