//! A shop's own table of bend deductions.

use super::size::{BendMm, BendSize};
#[cfg(feature = "serde")]
use crate::error::told::Told;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Source, Step};
use crate::units::{BendAngle, Length};
use std::sync::Arc;

/// One measured deduction: what two legs to the outer corner are together longer than their flat.
///
/// ```
/// use seamwright::trim::Deduction;
/// use seamwright::units::{BendAngle, Length};
/// let d = Deduction { thickness: Length::mils(50), inside_radius: Length::mils(32), angle: BendAngle::SQUARE, deduction: Length::mils(79) };
/// assert_eq!(d.deduction, Length::mils(79));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Deduction {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// Inside radius of the bend.
    pub inside_radius: Length,
    /// Angle from flat, less than 180 degrees.
    pub angle: BendAngle,
    /// The deduction BD: sum of the legs to the outer corner, less their flat length.
    pub deduction: Length,
}

/// A table of measured deductions with its source; cloning shares the rows.
///
/// Thickness and radius are found exactly. Between two rows of one thickness and radius the deduction is interpolated linearly in the angle;
/// there is no extrapolation.
///
/// ```
/// use seamwright::record::Source;
/// use seamwright::trim::{BendRule, BendSize, Deduction, DeductionTable};
/// use seamwright::units::{BendAngle, Length};
/// let row = Deduction { thickness: Length::mils(50), inside_radius: Length::mils(32), angle: BendAngle::SQUARE, deduction: Length::mils(79) };
/// let rule = BendRule::Deductions(DeductionTable::new(vec![row], Source::user())?);
/// let size = BendSize { thickness: Length::mils(50), inside_radius: Length::mils(32), angle: BendAngle::SQUARE };
/// assert_eq!(rule.deduction(size)?, Length::mils(79));
/// assert!(rule.deduction(BendSize { thickness: Length::mils(51), ..size }).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "TableForm", into = "TableForm"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DeductionTable {
    rows: Arc<[Deduction]>,
    source: Source,
}

#[cfg(feature = "serde")]
#[derive(serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
struct TableForm {
    rows: Vec<Deduction>,
    #[serde(default = "Source::user")]
    source: Source,
}

#[cfg(feature = "serde")]
impl TryFrom<TableForm> for DeductionTable {
    type Error = Told;
    fn try_from(form: TableForm) -> Result<Self, Told> {
        Ok(DeductionTable::new(form.rows, form.source)?)
    }
}

#[cfg(feature = "serde")]
impl From<DeductionTable> for TableForm {
    fn from(table: DeductionTable) -> Self {
        TableForm { rows: table.rows.to_vec(), source: table.source }
    }
}

fn order(a: &Deduction, b: &Deduction) -> core::cmp::Ordering {
    (a.thickness, a.inside_radius).cmp(&(b.thickness, b.inside_radius)).then(a.angle.degrees().total_cmp(&b.angle.degrees()))
}

impl DeductionTable {
    /// A table of these rows, in any order.
    ///
    /// # Errors
    /// All faults at once: no rows ([`ErrorKind::Missing`]); a row that is no bend, has 180 degrees or more or a negative deduction
    /// ([`ErrorKind::OutOfRange`]); a deduction longer than both setbacks ([`ErrorKind::Impossible`]); two rows of one size ([`ErrorKind::Conflict`]).
    pub fn new(mut rows: Vec<Deduction>, source: Source) -> Result<DeductionTable, Error> {
        let mut faults = Faults::default();
        if rows.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a table of deductions without rows").at("rows").accepts("at least one row"));
        }
        for (i, row) in rows.iter().enumerate() {
            if let Err(e) = check_row(row) {
                faults.add(e.under(&format!("rows[{i}]")));
            }
        }
        faults.check()?;
        rows.sort_by(order);
        for pair in rows.windows(2) {
            if let [a, b] = pair
                && order(a, b).is_eq()
            {
                return Err(Error::new(ErrorKind::Conflict, "two rows for one thickness, radius and angle")
                    .at("rows")
                    .value_of(format_args!("{}, {}, {}", a.thickness, a.inside_radius, a.angle))
                    .accepts("one row for each size"));
            }
        }
        Ok(DeductionTable { rows: rows.into(), source })
    }

    /// The rows, sorted by thickness, radius and angle.
    #[must_use]
    pub fn rows(&self) -> &[Deduction] {
        &self.rows
    }

    /// Where the table comes from.
    #[must_use]
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// The rows on either side of this size in angle; the same row twice where it is in the table.
    pub(super) fn around(&self, size: BendSize) -> Result<(&Deduction, &Deduction), Error> {
        let key = (size.thickness, size.inside_radius);
        let start = self.rows.partition_point(|d| (d.thickness, d.inside_radius) < key);
        let rest = self.rows.get(start..).unwrap_or_default();
        let family = rest.get(..rest.partition_point(|d| (d.thickness, d.inside_radius) == key)).unwrap_or_default();
        let at = family.partition_point(|d| d.angle.degrees() < size.angle.degrees());
        match (at.checked_sub(1).and_then(|i| family.get(i)), family.get(at)) {
            (_, Some(row)) if row.angle == size.angle => Ok((row, row)),
            (Some(low), Some(high)) => Ok((low, high)),
            _ => Err(not_in_table(size, family)),
        }
    }
}

fn check_row(row: &Deduction) -> Result<(), Error> {
    let size = BendSize { thickness: row.thickness, inside_radius: row.inside_radius, angle: row.angle };
    let setback = size.outside_setback()?;
    row.deduction.not_negative("deduction")?;
    if (setback * 2 - row.deduction).pm() < 0 {
        return Err(Error::new(ErrorKind::Impossible, "a deduction longer than both setbacks would leave no metal in the bend")
            .at("deduction")
            .value_of(row.deduction)
            .accepts(format!("at most {}", (setback * 2).length()?)));
    }
    Ok(())
}

#[cold]
fn not_in_table(size: BendSize, family: &[Deduction]) -> Error {
    let e = Error::new(ErrorKind::OutOfRange, "the table of deductions does not cover this bend")
        .value_of(format_args!("thickness {}, radius {}, {}", size.thickness, size.inside_radius, size.angle));
    match (family.first(), family.last()) {
        (Some(first), Some(last)) => e.at("angle").accepts(format!("{} to {} from flat", first.angle, last.angle)),
        _ => e.at("inside_radius").accepts("a thickness and radius of the table, exactly"),
    }
    .cured_by("a row for this bend, or another rule for it")
}

#[inline]
pub(super) fn allowance_mm(table: &DeductionTable, bend: &BendMm) -> Result<f64, Error> {
    let two = bend.two_setbacks()?;
    let (low, high) = table.around(bend.size)?;
    let (d0, d1) = (low.deduction.mm(), high.deduction.mm());
    let span = high.angle.degrees() - low.angle.degrees();
    let share = if span > 0.0 { (bend.degrees() - low.angle.degrees()) / span } else { 0.0 };
    Ok(two - (d0 + share * (d1 - d0)))
}

pub(super) fn step(table: &DeductionTable, bend: &BendMm, allowance: Length) -> Step {
    let step = Step::new("flat length of the bend BA")
        .formula("2 (R + T) tan(A/2) - BD, BD from the table")
        .with("A", bend.size.angle)
        .with("R", bend.size.inside_radius)
        .with("T", bend.size.thickness);
    let step = match table.around(bend.size) {
        Ok((low, high)) if low.angle == high.angle => step.with("BD", low.deduction),
        Ok((low, high)) => step.with(format!("BD at {}", low.angle), low.deduction).with(format!("BD at {}", high.angle), high.deduction),
        Err(_) => step,
    };
    step.gives(allowance).source(table.source.clone())
}
