//! The least inside radius of steel under DIN 6935.

use crate::error::{Error, ErrorKind, Faults};
use crate::metal::Grain;
use crate::record::{Calculation, Recorder, Seen, Source, Step};
use crate::units::{BendAngle, Length, Pressure, PressureUnit};

/// The rows ran together where they were read and were parted again in threes.
static SOURCE: Source = Source::published("DIN 6935", "1975-10", "least inside radius of cold-bent steel, as given in a workshop spreadsheet", Seen::Secondary);

/// Greatest tensile strength of the three columns, in megapascals.
const CLASSES: [f64; 3] = [390.0, 490.0, 640.0];
/// The most that a bend may turn before the next row counts.
const WIDE: f64 = 120.0;

/// Thickness up to, and the radius by strength, in micrometres.
const ROWS: [(i32, [i32; 3]); 15] = [
    (1_000, [1_000, 1_200, 1_600]),
    (1_500, [1_600, 2_000, 2_500]),
    (2_500, [2_500, 3_000, 4_000]),
    (3_000, [3_000, 4_000, 5_000]),
    (4_000, [5_000, 5_000, 6_000]),
    (5_000, [6_000, 8_000, 8_000]),
    (6_000, [8_000, 10_000, 10_000]),
    (7_000, [10_000, 12_000, 12_000]),
    (8_000, [12_000, 16_000, 16_000]),
    (10_000, [16_000, 20_000, 20_000]),
    (12_000, [20_000, 25_000, 25_000]),
    (14_000, [25_000, 28_000, 32_000]),
    (16_000, [28_000, 32_000, 36_000]),
    (18_000, [36_000, 40_000, 45_000]),
    (20_000, [40_000, 45_000, 50_000]),
];

/// A cold bend in steel whose least inside radius DIN 6935 gives.
///
/// The table is for bends of up to 120 degrees across the rolling; for wider bends, or along the rolling, the next thicker row counts.
///
/// ```
/// use seamwright::metal::Grain;
/// use seamwright::record::Calculation;
/// use seamwright::trim::DinMinimumRadius;
/// use seamwright::units::{BendAngle, Length, Pressure};
/// let sheet = DinMinimumRadius {
///     thickness: Length::parse("0.6 mm")?,
///     tensile_strength: Pressure::parse("330 MPa")?,
///     angle: BendAngle::SQUARE,
///     grain: Grain::Across,
/// };
/// assert_eq!(sheet.compute()?, Length::parse("1 mm")?);
/// assert_eq!(DinMinimumRadius { grain: Grain::Along, ..sheet }.compute()?, Length::parse("1.6 mm")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct DinMinimumRadius {
    /// Thickness of the sheet, at most 20 mm.
    pub thickness: Length,
    /// Tensile strength of the steel, at most 640 MPa.
    pub tensile_strength: Pressure,
    /// The bend, from flat, less than 180 degrees.
    pub angle: BendAngle,
    /// How the bend line lies to the rolling.
    pub grain: Grain,
}

impl Calculation for DinMinimumRadius {
    type Out = Length;

    fn title(&self) -> String {
        format!("least inside radius of steel {} under DIN 6935", self.thickness)
    }

    /// # Errors
    /// [`ErrorKind::OutOfRange`] outside the table, for a bend of nothing or of 180 degrees and more, and for a bend that is both wide and along the rolling,
    /// of which the text as read does not speak; all at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Length, Error> {
        let mut faults = Faults::default();
        faults.keep(self.thickness.positive("thickness"));
        let (strength, degrees) = (self.tensile_strength.get(PressureUnit::Megapascal), self.angle.degrees());
        let column = CLASSES.iter().position(|most| strength <= *most);
        if strength <= 0.0 || column.is_none() {
            let e = Error::new(ErrorKind::OutOfRange, "the table does not cover this steel").at("tensile_strength");
            faults.add(e.value_of(self.tensile_strength).accepts("more than 0 MPa, at most 640 MPa"));
        }
        if degrees <= 0.0 || degrees >= 180.0 {
            let e = Error::new(ErrorKind::OutOfRange, "the table does not cover this bend").at("angle").value_of(self.angle);
            faults.add(e.accepts("more than 0 deg, less than 180 deg from flat"));
        }
        let (wide, along) = (degrees > WIDE, self.grain == Grain::Along);
        if wide && along {
            let e = Error::new(ErrorKind::OutOfRange, "the table does not speak of a wide bend along the rolling").at("grain").value_of("along");
            faults.add(e.accepts("across, or at most 120 deg from flat"));
        }
        let row = ROWS.iter().position(|(most, _)| self.thickness <= Length::micrometres(*most)).map(|row| row + usize::from(wide || along));
        let radius = row.and_then(|row| ROWS.get(row)).zip(column).and_then(|((most, radii), column)| Some((*most, *radii.get(column)?)));
        if faults.is_empty() && radius.is_none() {
            let e = Error::new(ErrorKind::OutOfRange, "the table does not cover this thickness").at("thickness").value_of(self.thickness);
            faults.add(e.accepts(if wide || along { "at most 18 mm" } else { "at most 20 mm" }));
        }
        faults.check()?;
        let (most, radius) = radius.unwrap_or_default();
        let radius = Length::micrometres(radius);
        r.step(|| {
            let step = Step::new("least inside radius").formula(if wide || along { "table, next thicker row" } else { "table" });
            let step = step.with("row up to", Length::micrometres(most)).with("s", self.thickness).with("Rm", self.tensile_strength);
            step.with("A", self.angle).gives(radius).source(SOURCE.clone())
        });
        Ok(radius)
    }
}
