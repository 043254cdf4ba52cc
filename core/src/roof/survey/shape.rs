//! The solved shape of a measured plane, with what each reading is off.

use super::measured_plane::{MeasuredPlane, SlopeEnd};
use super::observations::{Known, Observed, V2, length, sub};
use super::slope_plane::{SlopePlane, SlopeUp};
use super::starts::Fitted;
use super::trueness::{self, OutOfTrue};
use crate::error::Error;
use crate::practice::roof as practice;
use crate::record::{Caution, Source};
use crate::roof::{Opening, Point, cautions};
use crate::units::{Length, LengthFormat};

/// A reading of a redundancy of less than this is checked by nothing.
const UNCHECKED: f64 = 1e-6;

/// A corner of a measured plane where it was solved to lie.
///
/// ```
/// use seamwright::roof::{NamedCorner, Point};
/// let a = NamedCorner { name: "A".into(), at: Point::default() };
/// assert_eq!(a.name, "A");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NamedCorner {
    /// Its name.
    pub name: String,
    /// Where it lies in the plane: x across the slope, y up it.
    pub at: Point,
}

/// An opening with its corners where they lie.
///
/// ```
/// use seamwright::roof::NamedOpening;
/// let hatch = NamedOpening { name: "hatch".into(), corners: vec![] };
/// assert_eq!(hatch.name, "hatch");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NamedOpening {
    /// Its name.
    pub name: String,
    /// Its corners, in order.
    pub corners: Vec<NamedCorner>,
}

/// One observation after the shape was solved.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{MeasuredLength, MeasuredPlane};
/// use seamwright::units::Length;
/// // 3-4-5, and the 5 read an eighth short: nothing checks it, so it takes the whole.
/// let mut plane = MeasuredPlane::new("gablet", ["A", "B", "C"]);
/// for (from, to, length) in [("A", "B", Length::feet(3)), ("B", "C", Length::feet(4)), ("C", "A", Length::inches_64(60 * 64 - 8))] {
///     plane.lengths.push(MeasuredLength::new(from, to, length));
/// }
/// let shape = plane.compute()?;
/// assert!(shape.readings.iter().all(|r| r.residual == Length::ZERO && r.against_the_rest.is_none()));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Reading {
    /// What was observed: `A-C`, `square at B to A and C`, `C-D parallel to A-B`.
    pub what: String,
    /// What the tape said; none for a square corner or a parallel side.
    pub measured: Option<Length>,
    /// What the solved shape gives.
    pub solved: Option<Length>,
    /// Solved less measured; for a square or a parallel how far the end of the shorter arm stands off.
    pub residual: Length,
    /// How far it may be off.
    pub tolerance: Length,
    /// How far the reading is off what the other readings alone say: what the rest make it, less what it says. None where nothing checks it.
    pub against_the_rest: Option<Length>,
}

/// The shape of a measured plane. It comes from [`MeasuredPlane`].
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneShape {
    /// The plane's name.
    pub name: String,
    /// Its corners, in the order given; the shape touches x = 0 and y = 0.
    pub corners: Vec<NamedCorner>,
    /// Its openings, in the order given, in the same axes.
    pub openings: Vec<NamedOpening>,
    /// Every observation with its residual: lengths, squares, parallels, each in the order given.
    pub readings: Vec<Reading>,
    /// How many lengths the shape needs: two for each corner, those of the openings among them, less three.
    pub needed: usize,
    /// How many more were given.
    pub checks: usize,
    /// The greatest that a reading is off what the rest say; none where nothing is checked.
    pub misclosure: Option<Length>,
    /// The root of the mean square of the residuals over their tolerances, for each check; none without a check.
    pub fit_ratio: Option<f64>,
    /// Steps that the search took.
    pub steps: u32,
    /// The greatest move of its last step.
    pub last_step: Length,
    /// The sides that should be square or parallel to the level side and how far they are off, in order round the plane.
    pub out_of_true: Vec<OutOfTrue>,
    /// How true the plane is and where the difference goes, in one line.
    pub line: String,
    /// The plane for joining with others: edge i runs from corner i to the next.
    pub slope_plane: SlopePlane,
    /// What the reader must know before metal is cut.
    pub cautions: Vec<Caution>,
}

/// The corners with the level side along x, shifted to touch the axes.
fn laid(known: &Known, at: &[V2]) -> Result<Vec<Point>, Error> {
    let (side, end) = known.axis.unwrap_or(([0, 1], SlopeEnd::Foot));
    let corner = |i: usize| at.get(i).copied().unwrap_or_default();
    let mut d = sub(corner(side[1]), corner(side[0]));
    // Counter-clockwise a foot runs to the right, a head to the left.
    if end == SlopeEnd::Head {
        d = [-d[0], -d[1]];
    }
    let long = length(d).max(f64::MIN_POSITIVE);
    let u = [d[0] / long, d[1] / long];
    let turned: Vec<V2> = at
        .iter()
        .map(|p| {
            let q = sub(*p, corner(side[0]));
            [q[0] * u[0] + q[1] * u[1], q[1] * u[0] - q[0] * u[1]]
        })
        .collect();
    let low = turned.iter().fold([f64::INFINITY; 2], |l, p| [l[0].min(p[0]), l[1].min(p[1])]);
    turned.iter().map(|p| Ok(Point::new(Length::from_mm(p[0] - low[0])?, Length::from_mm(p[1] - low[1])?))).collect()
}

pub(super) fn shape(plane: &MeasuredPlane, known: &Known, fitted: Fitted) -> Result<PlaneShape, Error> {
    let n = known.count();
    let needed = 2 * n - 3;
    let points = laid(known, &fitted.state)?;
    let leverage = fitted.linear.factored().leverage();
    let mut readings = Vec::new();
    let mut square_sum = 0.0;
    for ((o, residual), taken) in known.observed.iter().zip(&fitted.linear.residuals).zip(&leverage) {
        square_sum += residual * residual;
        let off = residual * o.tolerance.mm();
        let measured = if let Observed::Distance { length, .. } = o.observed { Some(length) } else { None };
        let residual = Length::from_mm(off)?;
        let free = 1.0 - taken;
        readings.push(Reading {
            what: o.what.clone(),
            measured,
            solved: measured.map(|m| (m + residual).length()).transpose()?,
            residual,
            tolerance: o.tolerance,
            against_the_rest: if free > UNCHECKED { Some(Length::from_mm(off / free)?) } else { None },
        });
    }
    let checks = known.observed.len().saturating_sub(needed);
    let misclosure = readings.iter().filter_map(|r| r.against_the_rest).map(|l| Length::from_pm(l.pm().saturating_abs())).max();
    #[allow(clippy::cast_precision_loss, reason = "a handful")]
    let fit_ratio = (checks > 0).then(|| (square_sum / checks as f64).sqrt());
    let tolerance = plane.tolerance.unwrap_or(practice::TAPE);
    let (side, end) = known.axis.unwrap_or(([0, 1], SlopeEnd::Foot));
    let out_of_true = trueness::out_of_true(known, known.outer(&points), side)?;
    let line = trueness::line(&plane.name, &out_of_true, tolerance, plane.notation.unwrap_or(LengthFormat::EXACT))?;

    let mut said = Vec::new();
    let caution = |code| Caution::new(code, "", Source::geometry()).arg("plane", &plane.name);
    let unchecked: Vec<&str> = readings.iter().filter(|r| r.against_the_rest.is_none()).map(|r| r.what.as_str()).collect();
    if !unchecked.is_empty() {
        said.push(caution(cautions::UNCHECKED_READINGS).arg("readings", unchecked.join(", ")));
    }
    if checks == 1 {
        said.push(caution(cautions::ONE_CHECK));
    }
    if known.axis.is_none() {
        said.push(caution(cautions::NO_LEVEL_SIDE).arg("side", known.pair(side)));
    }
    let up = if known.axis.is_some() { SlopeUp::Level { edge: side[0], end } } else { SlopeUp::Unknown };
    let holes = plane.openings.iter().zip(known.openings(&points)).map(|(o, ring)| Opening { name: o.name.clone(), ring: ring.to_vec() }).collect();
    let slope_plane = SlopePlane { name: plane.name.clone(), outer: known.outer(&points).to_vec(), holes, up, pitch: None };
    let named: Vec<NamedCorner> = known.corners.iter().cloned().zip(points).map(|(name, at)| NamedCorner { name, at }).collect();
    let openings = plane.openings.iter().zip(known.openings(&named)).map(|(o, ring)| NamedOpening { name: o.name.clone(), corners: ring.to_vec() }).collect();
    let corners = known.outer(&named).to_vec();
    Ok(PlaneShape {
        name: plane.name.clone(),
        corners,
        openings,
        readings,
        needed,
        checks,
        misclosure,
        fit_ratio,
        steps: fitted.steps,
        last_step: Length::from_mm(fitted.last_mm)?,
        out_of_true,
        line,
        slope_plane,
        cautions: said,
    })
}
