//! What a crew measures, plane by plane in the order of the walk.

use super::joined_planes::{Joint, PlaneEdge, PlaneTie};
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

/// What to measure between two planes that meet in no line, for one corner of the later one: a level length along an edge of the earlier one, a level
/// length square to that, and a plumb height.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Point, SketchedPlane, SketchedRoof, SketchedWall};
/// use seamwright::units::Length;
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let house = SketchedPlane::new("house", vec![p(0, 0), p(40, 0), p(40, 12), p(0, 12)]);
/// let porch = SketchedPlane::new("porch", vec![p(5, -8), p(25, -8), p(25, 0), p(5, 0)]);
/// let wall = SketchedWall { from: p(0, 0), to: p(40, 0) };
/// let sheet = SketchedRoof { walls: vec![wall], ..SketchedRoof::new(vec![house, porch]) }.compute()?;
/// assert_eq!(sheet.ties.iter().map(|t| (t.plane.as_str(), t.along)).collect::<Vec<_>>(), [("porch", Length::feet(25)), ("porch", Length::feet(5))]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SheetTie {
    /// Its number among the ties, from 1.
    pub number: usize,
    /// The plane that is tied.
    pub plane: String,
    /// The corner of it, by number on its sheet.
    pub corner: usize,
    /// That corner's name.
    pub named: String,
    /// The edge of the earlier plane, by the corners as its sheet lists them.
    pub from: PlaneEdge,
    /// The names of that edge's corners: it is measured from the first toward the second.
    pub side: [String; 2],
    /// How far along the edge in the sketch.
    pub along: Length,
    /// How far out from the edge in the sketch, away from its plane.
    pub out: Length,
}

/// What was measured for a tie.
///
/// ```
/// use seamwright::roof::TieReading;
/// use seamwright::units::Length;
/// let read = TieReading { along: Length::feet(5), out: Length::ZERO, up: Length::feet(-3) };
/// assert!(read.up.is_negative()); // below the edge
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TieReading {
    /// Level, along the edge, from its first corner.
    pub along: Length,
    /// Level, square to the edge, away from its plane.
    pub out: Length,
    /// Plumb, up from the edge's first corner; less than 0 below it.
    pub up: Length,
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
    /// What ties planes that no line joins to those before them, two for each group of them.
    pub ties: Vec<SheetTie>,
    /// How many lengths there are in all, without those of the ties.
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

    /// The ties with these readings, by their numbers.
    ///
    /// # Errors
    /// [`ErrorKind::Conflict`] at `ties` for another number of readings than the sheet has ties.
    pub fn tied(&self, read: &[TieReading]) -> Result<Vec<PlaneTie>, Error> {
        if read.len() != self.ties.len() {
            let said = Error::new(ErrorKind::Conflict, "one reading for each tie of the sheet is needed").at("ties");
            return Err(said.value_of(format_args!("{} readings", read.len())).accepts(format!("{} readings", self.ties.len())));
        }
        let tie = |(tie, read): (&SheetTie, &TieReading)| PlaneTie {
            plane: tie.plane.clone(),
            corner: tie.corner,
            from: tie.from.clone(),
            along: read.along,
            out: read.out,
            up: read.up,
        };
        Ok(self.ties.iter().zip(read).map(tie).collect())
    }
}
