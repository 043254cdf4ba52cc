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
/// Between its rows the deduction is interpolated, in proportion, in the thickness, the radius and the angle; there is no extrapolation, and each thickness (and each
/// radius in it) speaks only for the range of its own rows. In thickness and radius a deduction is straight as long as the neutral line keeps its place.
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

    /// The rows that speak for this size.
    pub(super) fn around(&self, size: BendSize) -> Result<Around<'_>, Error> {
        let thick = neighbours(&self.rows, size.thickness, |d| d.thickness).ok_or_else(|| not_in_table(&self.rows, size, "thickness"))?;
        let mut found = Around { thickness: thick.share, sides: [Side::default(); 2] };
        for (side, rows) in found.sides.iter_mut().zip([thick.low, thick.high]) {
            let round = neighbours(rows, size.inside_radius, |d| d.inside_radius).ok_or_else(|| not_in_table(rows, size, "inside_radius"))?;
            side.radius = round.share;
            for (pair, rows) in side.angles.iter_mut().zip([round.low, round.high]) {
                let turn = neighbours(rows, Turn(size.angle.degrees()), |d| Turn(d.angle.degrees())).ok_or_else(|| not_in_table(rows, size, "angle"))?;
                *pair = Pair { low: turn.low.first(), high: turn.high.first(), share: turn.share };
            }
        }
        Ok(found)
    }
}

/// A quantity by which rows are sorted, and how far one lies between two others.
trait Key: Copy + PartialOrd {
    fn share(self, low: Self, high: Self) -> f64;
}

impl Key for Length {
    fn share(self, low: Length, high: Length) -> f64 {
        (self.mm() - low.mm()) / (high.mm() - low.mm())
    }
}

/// Degrees from flat.
#[derive(Clone, Copy, PartialEq, PartialOrd)]
struct Turn(f64);

impl Key for Turn {
    fn share(self, low: Turn, high: Turn) -> f64 {
        (self.0 - low.0) / (high.0 - low.0)
    }
}

/// The rows of the two keys on either side, and how far this one lies from the lower to the higher; the same rows twice where the key is in the table.
struct Neighbours<'a> {
    low: &'a [Deduction],
    high: &'a [Deduction],
    share: f64,
}

fn neighbours<K: Key>(rows: &[Deduction], at: K, key: impl Fn(&Deduction) -> K) -> Option<Neighbours<'_>> {
    let family = |k: K| {
        let start = rows.partition_point(|d| key(d) < k);
        rows.get(start..rows.partition_point(|d| key(d) <= k)).unwrap_or_default()
    };
    let next = rows.partition_point(|d| key(d) < at);
    let above = rows.get(next).map(&key)?;
    if above == at {
        let same = family(at);
        return Some(Neighbours { low: same, high: same, share: 0.0 });
    }
    let below = next.checked_sub(1).and_then(|i| rows.get(i)).map(&key)?;
    Some(Neighbours { low: family(below), high: family(above), share: at.share(below, above) })
}

/// Two rows of one thickness and radius, on either side of an angle.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Pair<'a> {
    pub(super) low: Option<&'a Deduction>,
    pub(super) high: Option<&'a Deduction>,
    share: f64,
}

/// The rows of one thickness, on either side of a radius.
#[derive(Debug, Clone, Copy, Default)]
struct Side<'a> {
    angles: [Pair<'a>; 2],
    radius: f64,
}

/// The rows that speak for a size: up to eight, on either side of it in thickness, radius and angle.
#[derive(Debug, Clone, Copy)]
pub(super) struct Around<'a> {
    sides: [Side<'a>; 2],
    thickness: f64,
}

impl<'a> Around<'a> {
    /// The deduction between the rows, in proportion in each of the three.
    fn deduction_mm(&self) -> f64 {
        let between = |low: f64, high: f64, share: f64| low + share * (high - low);
        let of = |row: Option<&Deduction>| row.map_or(f64::NAN, |d| d.deduction.mm());
        let [thin, thick] = self.sides.map(|side| {
            let [sharp, round] = side.angles.map(|pair| between(of(pair.low), of(pair.high), pair.share));
            between(sharp, round, side.radius)
        });
        between(thin, thick, self.thickness)
    }

    /// The rows, each once.
    pub(super) fn rows(&self) -> Vec<&'a Deduction> {
        let mut out: Vec<&Deduction> = Vec::new();
        for row in self.sides.iter().flat_map(|s| s.angles.iter().flat_map(|p| [p.low, p.high])).flatten() {
            if !out.iter().any(|d| core::ptr::eq(*d, row)) {
                out.push(row);
            }
        }
        out
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
fn not_in_table(rows: &[Deduction], size: BendSize, field: &'static str) -> Error {
    let (first, last) = (rows.first(), rows.last());
    let said = |d: &Deduction| match field {
        "thickness" => d.thickness.to_string(),
        "inside_radius" => d.inside_radius.to_string(),
        _ => d.angle.to_string(),
    };
    let e = Error::new(ErrorKind::OutOfRange, "the table of deductions does not cover this bend").at(field).value_of(match field {
        "thickness" => size.thickness.to_string(),
        "inside_radius" => size.inside_radius.to_string(),
        _ => size.angle.to_string(),
    });
    match (first, last) {
        (Some(a), Some(b)) if field == "thickness" => e.accepts(format!("{} to {}", said(a), said(b))),
        (Some(a), Some(b)) if field == "inside_radius" => e.accepts(format!("{} to {} in thickness {}", said(a), said(b), a.thickness)),
        (Some(a), Some(b)) => e.accepts(format!("{} to {} from flat in thickness {} with radius {}", said(a), said(b), a.thickness, a.inside_radius)),
        _ => e,
    }
    .cured_by("a row for this bend, or another rule for it")
}

#[inline]
pub(super) fn allowance_mm(table: &DeductionTable, bend: &BendMm) -> Result<f64, Error> {
    Ok(bend.two_setbacks()? - table.around(bend.size)?.deduction_mm())
}

pub(super) fn step(table: &DeductionTable, bend: &BendMm, allowance: Length) -> Step {
    let mut step = Step::new("flat length of the bend BA")
        .formula("2 (R + T) tan(A/2) - BD, BD from the table")
        .with("A", bend.size.angle)
        .with("R", bend.size.inside_radius)
        .with("T", bend.size.thickness);
    if let Ok(around) = table.around(bend.size) {
        let rows = around.rows();
        for row in &rows {
            let name = match rows.as_slice() {
                [_] => "BD".to_owned(),
                _ if rows.iter().all(|d| (d.thickness, d.inside_radius) == (row.thickness, row.inside_radius)) => format!("BD at {}", row.angle),
                _ => format!("BD at {}, {}, {}", row.thickness, row.inside_radius, row.angle),
            };
            step = step.with(name, row.deduction);
        }
    }
    step.gives(allowance).source(table.source.clone())
}
