//! One plane by the lengths measured between its corners.

use super::observations::{self, Known};
use super::shape::{self, PlaneShape};
use super::starts;
use crate::error::{Error, ErrorKind, Faults};
use crate::practice::roof as practice;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::roof::Point;
use crate::units::{Length, LengthFormat};

/// The most corners that a measured plane may have.
pub(super) const MOST_CORNERS: usize = 64;
/// The most readings, marks, squares and level sides of a plane together: more than twice every pair of its corners.
const MOST_READINGS: usize = 4096;

/// One length read off the tape, between two corners or marks of a plane: a side, a diagonal, or a check.
///
/// ```
/// use seamwright::roof::MeasuredLength;
/// use seamwright::units::Length;
/// let side = MeasuredLength::new("A", "B", Length::feet(24));
/// assert_eq!(side.tolerance, None); // that of the plane
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MeasuredLength {
    /// The corner or mark that it is measured from.
    pub from: String,
    /// The corner or mark that it is measured to.
    pub to: String,
    /// What the tape says.
    pub length: Length,
    /// How far the reading may be off; that of the plane unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tolerance: Option<Length>,
}

impl MeasuredLength {
    /// A reading with the tolerance of its plane.
    #[must_use]
    pub fn new(from: impl Into<String>, to: impl Into<String>, length: Length) -> MeasuredLength {
        MeasuredLength { from: from.into(), to: to.into(), length, tolerance: None }
    }
}

/// A point struck on a straight line between two corners, at a distance from the first: for a 3-4-5 or a check of a triangle.
///
/// ```
/// use seamwright::roof::Mark;
/// use seamwright::units::Length;
/// let mark = Mark { name: "M".into(), from: "A".into(), toward: "B".into(), distance: Length::feet(3) };
/// assert_eq!(mark.toward, "B");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Mark {
    /// Its name, unlike that of any corner or other mark.
    pub name: String,
    /// The corner that its distance is measured from.
    pub from: String,
    /// The corner that it lies toward.
    pub toward: String,
    /// How far along from the first corner.
    pub distance: Length,
}

/// A corner that was found square.
///
/// ```
/// use seamwright::roof::SquareCorner;
/// let square = SquareCorner { at: "B".into(), between: None, tolerance: None };
/// assert!(square.between.is_none()); // between the two sides that meet at B
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SquareCorner {
    /// The corner.
    pub at: String,
    /// The corners that its two arms run to; its neighbours unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub between: Option<[String; 2]>,
    /// How far the end of the shorter arm may stand off square; the tolerance of the plane unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tolerance: Option<Length>,
}

/// Which end of a plane a level side is.
///
/// ```
/// use seamwright::roof::SlopeEnd;
/// assert_ne!(SlopeEnd::Foot, SlopeEnd::Head);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SlopeEnd {
    /// The plane rises from it: an eave, the upper side of a transition.
    Foot,
    /// The plane falls from it: a ridge, the lower side of a transition.
    Head,
}

/// A side that is level.
///
/// ```
/// use seamwright::roof::{LevelSide, SlopeEnd};
/// let eave = LevelSide { side: ["A".into(), "B".into()], end: SlopeEnd::Foot };
/// assert_eq!(eave.side[1], "B");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LevelSide {
    /// The two neighbouring corners between which it runs, in either order.
    pub side: [String; 2],
    /// Whether the plane rises or falls from it.
    pub end: SlopeEnd,
}

/// An opening in a measured plane: a chimney, a skylight, the foot of a dormer.
///
/// ```
/// use seamwright::roof::MeasuredOpening;
/// let hatch = MeasuredOpening::new("hatch", ["E", "F", "G", "H"]);
/// assert_eq!(hatch.corners[1], "F");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MeasuredOpening {
    /// Its name, unlike that of any other opening of the plane.
    pub name: String,
    /// Its corners by name, in order, either way round.
    pub corners: Vec<String>,
}

impl MeasuredOpening {
    /// An opening with these corners.
    #[must_use]
    pub fn new<const N: usize>(name: impl Into<String>, corners: [&str; N]) -> MeasuredOpening {
        MeasuredOpening { name: name.into(), corners: corners.iter().map(|c| (*c).to_owned()).collect() }
    }
}

/// One plane of a roof as a crew measures it: corners by name, and the lengths between them, more than are needed.
///
/// The shape is solved by least squares, each reading weighed by its tolerance. A plane of n corners, those of its openings among them, needs 2n - 3
/// lengths; the rest are checks, and
/// the result says what each reading is off and how far what is left over fails to close.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{LevelSide, MeasuredLength, MeasuredPlane, SlopeEnd};
/// use seamwright::units::{Length, LengthFormat};
/// let ft = |text: &str| Length::parse(text).unwrap();
/// let mut plane = MeasuredPlane::new("south", ["A", "B", "C", "D"]);
/// for (from, to, length) in [("A", "B", "40'"), ("B", "C", "24'"), ("C", "D", "40'-1 3/8\""), ("D", "A", "24'"), ("A", "C", "46'-7 3/4\""), ("B", "D", "46'-8 15/16\"")] {
///     plane.lengths.push(MeasuredLength::new(from, to, ft(length)));
/// }
/// plane.level.push(LevelSide { side: ["A".into(), "B".into()], end: SlopeEnd::Foot });
/// plane.notation = Some(LengthFormat::parse("ft-in/16")?);
/// let shape = plane.compute()?;
/// assert_eq!((shape.needed, shape.checks), (5, 1));
/// assert!(shape.misclosure.unwrap() < Length::inches_64(8));
/// assert_eq!(shape.line, "south: out of square 1 3/8\" over 24'-0\": put it at the left rake D-A");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MeasuredPlane {
    /// Its name.
    pub name: String,
    /// Its corners by name, in order round it, counter-clockwise seen from above.
    pub corners: Vec<String>,
    /// Its openings.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub openings: Vec<MeasuredOpening>,
    /// Points struck on lines between corners.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub marks: Vec<Mark>,
    /// What was measured.
    pub lengths: Vec<MeasuredLength>,
    /// Corners that were found square.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub square: Vec<SquareCorner>,
    /// Sides that are level; the first lays the plane's axes, and is what the others are held to.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub level: Vec<LevelSide>,
    /// Roughly where the corners lie, in the order of `corners` and then of the openings' corners, in any axes: it decides where more than one shape would fit.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub sketch: Option<Vec<Point>>,
    /// How far a reading may be off; [`practice`](crate::practice::roof::TAPE) unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tolerance: Option<Length>,
    /// How the plain line writes lengths; exact millimetres unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub notation: Option<LengthFormat>,
}

impl MeasuredPlane {
    /// A plane with these corners, of which nothing is measured yet.
    #[must_use]
    pub fn new<const N: usize>(name: impl Into<String>, corners: [&str; N]) -> MeasuredPlane {
        MeasuredPlane {
            name: name.into(),
            corners: corners.iter().map(|c| (*c).to_owned()).collect(),
            openings: Vec::new(),
            marks: Vec::new(),
            lengths: Vec::new(),
            square: Vec::new(),
            level: Vec::new(),
            sketch: None,
            tolerance: None,
            notation: None,
        }
    }
}

impl Calculation for MeasuredPlane {
    type Out = PlaneShape;

    fn title(&self) -> String {
        format!("The shape of {} from its measurements", self.name)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<PlaneShape, Error> {
        let known = self.known()?;
        observations::check_reach(&known)?;
        observations::check_enough(&known)?;
        let fitted = starts::best_shape(&known, self.sketch.as_deref())?;
        let shape = shape::shape(self, &known, fitted)?;
        r.step(|| {
            Step::new("lengths needed")
                .formula("2 x corners - 3")
                .with("corners", known.count())
                .with("observations", known.observed.len())
                .gives(shape.needed)
                .source(Source::geometry())
        });
        for reading in &shape.readings {
            r.step(|| {
                let step = Step::new(format!("residual of {}", reading.what)).formula("solved - measured");
                let step = match (reading.solved, reading.measured) {
                    (Some(solved), Some(measured)) => step.with("solved", solved).with("measured", measured),
                    _ => step,
                };
                step.with("tolerance", reading.tolerance).gives(reading.residual).source(Source::geometry())
            });
        }
        r.step(|| Step::new("how true the plane is").with("steps of the search", shape.steps).with("last step", shape.last_step).gives(&shape.line));
        Ok(shape)
    }
}

impl MeasuredPlane {
    /// The observations by number, or every fault of the names and figures.
    fn known(&self) -> Result<Known, Error> {
        let mut faults = Faults::default();
        if self.name.trim().is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a plane needs a name").at("name"));
        }
        let few = |what: &str, n: usize, path: String| {
            (n < 3).then(|| {
                Error::new(ErrorKind::Missing, format!("{what} needs three corners")).at(path).value_of(format_args!("{n} corners")).accepts("3 or more")
            })
        };
        if let Some(said) = few("a plane", self.corners.len(), "corners".to_owned()) {
            faults.add(said);
        }
        for (k, opening) in self.openings.iter().enumerate() {
            if let Some(said) = few("an opening", opening.corners.len(), format!("openings[{k}].corners")) {
                faults.add(said);
            }
            let name = format!("openings[{k}].name");
            if opening.name.trim().is_empty() {
                faults.add(Error::new(ErrorKind::Missing, "an opening needs a name").at(name));
            } else if self.openings.iter().take(k).any(|o| o.name == opening.name) {
                faults.add(Error::new(ErrorKind::Conflict, "two openings have one name").at(name).value_of(&opening.name));
            }
        }
        let n = self.corners.len() + self.openings.iter().map(|o| o.corners.len()).sum::<usize>();
        if n > MOST_CORNERS {
            faults.add(
                Error::new(ErrorKind::TooLarge, "more corners than are solved for")
                    .at("corners")
                    .value_of(format_args!("{n} corners"))
                    .accepts(format!("at most {MOST_CORNERS}")),
            );
        }
        let readings = self.lengths.len() + self.marks.len() + self.square.len() + self.level.len();
        if readings > MOST_READINGS {
            let said = Error::new(ErrorKind::TooLarge, "more readings than are solved at once").at("lengths");
            faults.add(said.value_of(format_args!("{readings} lengths, marks, squares and level sides")).accepts(format!("at most {MOST_READINGS}")));
            faults.check()?;
            return Err(Error::new(ErrorKind::Internal, "a fault was lost"));
        }
        let names = self.corners.iter().enumerate().map(|(i, c)| (format!("corners[{i}]"), c));
        let opened =
            self.openings.iter().enumerate().flat_map(|(k, o)| o.corners.iter().enumerate().map(move |(i, c)| (format!("openings[{k}].corners[{i}]"), c)));
        let names: Vec<(String, &String)> =
            names.chain(opened).chain(self.marks.iter().enumerate().map(|(i, m)| (format!("marks[{i}].name"), &m.name))).collect();
        for (i, (path, name)) in names.iter().enumerate() {
            if name.trim().is_empty() {
                faults.add(Error::new(ErrorKind::Missing, "a corner or mark needs a name").at(path));
            } else if names.iter().take(i).any(|(_, other)| other == name) {
                faults.add(Error::new(ErrorKind::Conflict, "two corners or marks have one name").at(path).value_of(name));
            }
        }
        let tolerance = faults.keep(self.tolerance.unwrap_or(practice::TAPE).positive("tolerance")).unwrap_or(practice::TAPE);
        if let Some(sketch) = self.sketch.as_ref().filter(|s| s.len() != n) {
            let said = Error::new(ErrorKind::Conflict, "the sketch has another number of corners").at("sketch");
            faults.add(said.value_of(format_args!("{} points", sketch.len())).accepts(format!("{n} points, one for each corner")));
        }
        let mut known = Known::new(&self.corners, &self.openings);
        for (i, mark) in self.marks.iter().enumerate() {
            faults.keep(known.mark(mark).map_err(|e| e.under(&format!("marks[{i}]"))));
        }
        for (i, length) in self.lengths.iter().enumerate() {
            faults.keep(known.length(length, tolerance).map_err(|e| e.under(&format!("lengths[{i}]"))));
        }
        for (i, mark) in self.marks.iter().enumerate() {
            let side = |l: &&MeasuredLength| (l.from == mark.from && l.to == mark.toward) || (l.from == mark.toward && l.to == mark.from);
            if let Some(side) = self.lengths.iter().find(side).filter(|side| mark.distance >= side.length) {
                let said = Error::new(ErrorKind::OutOfRange, format!("the mark does not lie between {} and {}", mark.from, mark.toward));
                faults.add(said.at(format!("marks[{i}].distance")).value_of(mark.distance).accepts(format!("less than {}", side.length)));
            }
        }
        for (i, square) in self.square.iter().enumerate() {
            faults.keep(known.square(square, tolerance).map_err(|e| e.under(&format!("square[{i}]"))));
        }
        for (i, level) in self.level.iter().enumerate() {
            faults.keep(known.level(level, tolerance).map_err(|e| e.under(&format!("level[{i}]"))));
        }
        faults.check()?;
        Ok(known)
    }
}
