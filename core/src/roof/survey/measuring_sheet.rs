//! What a crew measures, plane by plane in the order of the walk.

use super::joined_planes::Joint;
use super::measured_plane::{Mark, MeasuredLength, MeasuredOpening, MeasuredPlane};
use super::shape::{NamedCorner, NamedOpening};
use crate::error::{Error, ErrorKind};
use crate::units::Length;

/// What a line of a measuring sheet is for.
///
/// ```
/// use seamwright::roof::LinePart;
/// assert_eq!(LinePart::Check.to_string(), "check");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum LinePart {
    /// A side of the plane.
    Side,
    /// A diagonal that the shape needs.
    Diagonal,
    /// A side of an opening in the plane.
    Opening,
    /// A length that places an opening, or shapes it.
    Tie,
    /// A length more than needed, which shows a slip.
    Check,
}

impl core::fmt::Display for LinePart {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.pad(match self {
            LinePart::Side => "side",
            LinePart::Diagonal => "diagonal",
            LinePart::Opening => "opening",
            LinePart::Tie => "tie",
            LinePart::Check => "check",
        })
    }
}

/// One length to measure.
///
/// ```
/// use seamwright::roof::{LinePart, SheetLine};
/// use seamwright::units::Length;
/// let line = SheetLine { number: 5, from: "A".into(), to: "C".into(), part: LinePart::Diagonal, about: Length::feet(46), shared: None };
/// assert!(line.shared.is_none());
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SheetLine {
    /// Its number on the sheet, from 1 in the order of the walk. A side that two planes share has one number.
    pub number: usize,
    /// The corner or mark that it is measured from.
    pub from: String,
    /// The corner or mark that it is measured to.
    pub to: String,
    /// What it is for.
    pub part: LinePart,
    /// Its length in the sketch, in plan: a slope makes it longer.
    pub about: Length,
    /// The plane on whose sheet it was measured already.
    pub shared: Option<String>,
}

/// Whether a plane's pitch must be measured.
///
/// ```
/// use seamwright::roof::PitchNeed;
/// assert_eq!(PitchNeed::Follows(vec!["south".into(), "north".into()]).to_string(), "follows from south and north");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PitchNeed {
    /// It must be, unless a loop of planes that closes gives it: then it is a check.
    Measured,
    /// The sloping lines that it shares with these planes give it, as long as a side of it is level and ticked; a reading is a check.
    Follows(Vec<String>),
}

impl core::fmt::Display for PitchNeed {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            PitchNeed::Measured => f.pad("measure"),
            PitchNeed::Follows(planes) => f.pad(&format!("follows from {}", planes.join(" and "))),
        }
    }
}

/// The sheet of one plane.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneSheet {
    /// The plane's name.
    pub plane: String,
    /// Its number in the sketch.
    pub number: usize,
    /// Its corners, counter-clockwise, from the side that the walk comes to first; where they lie in the sketch.
    pub corners: Vec<NamedCorner>,
    /// Whether its pitch must be measured. Where the sketch does not say which way water runs on it, it must.
    pub pitch: PitchNeed,
    /// Its openings, the corners of each clockwise; where they lie in the sketch.
    pub openings: Vec<NamedOpening>,
    /// Marks to strike for its checks.
    pub marks: Vec<Mark>,
    /// What to measure: sides round the plane, then diagonals, then checks; then for each opening its sides, what ties it to the plane, and its checks.
    pub lines: Vec<SheetLine>,
}

/// What to measure on a roof, in the order of the walk round it. It comes from [`SketchedRoof`](super::SketchedRoof).
///
/// Filled in, it gives the planes to solve.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Point, SketchedPlane, SketchedRoof};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let sheet = SketchedRoof::new(vec![SketchedPlane::new("hip end", vec![p(0, 0), p(12, 0), p(6, 5)])]).compute()?;
/// let read: Vec<Length> = sheet.planes[0].lines.iter().map(|l| l.about).collect();
/// let shape = sheet.filled(&read)?[0].compute()?;
/// assert_eq!((shape.needed, shape.checks), (3, 2));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MeasuringSheet {
    /// The planes in the order of the walk: along the free sides counter-clockwise, then those within.
    pub planes: Vec<PlaneSheet>,
    /// The sides that two planes share from end to end, by the planes' corners as the sheets list them.
    pub joints: Vec<Joint>,
    /// How many lengths there are in all.
    pub lines: usize,
    /// How many marks there are in all.
    pub marks: usize,
}

impl MeasuringSheet {
    /// The planes with these readings, by the number of their lines. The sketch decides where two shapes would fit.
    ///
    /// # Errors
    /// [`ErrorKind::Conflict`] at `lengths` for another number of readings than the sheet has lines.
    pub fn filled(&self, lengths: &[Length]) -> Result<Vec<MeasuredPlane>, Error> {
        if lengths.len() != self.lines {
            let said = Error::new(ErrorKind::Conflict, "one reading for each line of the sheet is needed").at("lengths");
            return Err(said.value_of(format_args!("{} readings", lengths.len())).accepts(format!("{} readings", self.lines)));
        }
        let plane = |sheet: &PlaneSheet| {
            let mut plane = MeasuredPlane::new(&sheet.plane, []);
            plane.corners = sheet.corners.iter().map(|c| c.name.clone()).collect();
            plane.marks.clone_from(&sheet.marks);
            let opening = |o: &NamedOpening| MeasuredOpening { name: o.name.clone(), corners: o.corners.iter().map(|c| c.name.clone()).collect() };
            plane.openings = sheet.openings.iter().map(opening).collect();
            plane.sketch = Some(sheet.corners.iter().chain(sheet.openings.iter().flat_map(|o| &o.corners)).map(|c| c.at).collect());
            let read = |line: &SheetLine| line.number.checked_sub(1).and_then(|i| lengths.get(i)).copied().unwrap_or_default();
            plane.lengths = sheet.lines.iter().map(|l| MeasuredLength::new(&l.from, &l.to, read(l))).collect();
            plane
        };
        Ok(self.planes.iter().map(plane).collect())
    }
}
