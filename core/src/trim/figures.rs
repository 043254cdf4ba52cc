//! What a shop asks of a trim beside its blank: lines from either edge, size and section as folded, faces to paint, mass.

use super::flat::Flat;
use super::leg::Face;
use super::outline::{Arc, Outline, Piece};
use super::point::Point;
use super::profile::Profile;
use super::rule::BendRule;
use super::size::to_length;
use super::walk::Part;
use crate::error::{Error, ErrorKind};
use crate::metal::Sheet;
use crate::num;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Area, AreaUnit, Length, LineMass, LineMassUnit, Mass, MassUnit, Sum};

/// The three lines of a bend, measured from one edge of the blank.
///
/// ```
/// use seamwright::trim::{BendRule, Face, NeutralFactor, Profile};
/// use seamwright::units::{BendAngle, Length};
/// let l = Profile::builder(Length::mils(50)).painted(Face::Upper).inside_radius(Length::mils(50));
/// let l = l.leg("a", Length::inches(1)).up(BendAngle::SQUARE).leg("b", Length::inches(2)).build()?;
/// let flat = l.unfold(&BendRule::neutral_axis(NeutralFactor::MIDDLE))?;
/// let lines = &flat.lines()?[0];
/// assert_eq!((lines.from_start.near, lines.from_end.near), (Length::mils(900), Length::mils(1900)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BendLines {
    /// Which bend of the profile, or which hem.
    pub part: Part,
    /// Distances from the start edge.
    pub from_start: LinesFromEdge,
    /// Distances from the end edge.
    pub from_end: LinesFromEdge,
}

/// Where a bend lies, seen from one edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LinesFromEdge {
    /// To the tangent line nearer to that edge.
    pub near: Length,
    /// To the bend line.
    pub line: Length,
    /// To the tangent line farther from that edge.
    pub far: Length,
}

/// The section as folded: its metal, and the box that it needs.
///
/// Coordinates are those of [`Flat::outline`]: the first leg of the profile along the x axis, its start at the origin, lower face on the axis.
///
/// ```
/// use seamwright::trim::{BendRule, Face, NeutralFactor, Profile};
/// use seamwright::units::{AreaUnit, BendAngle, Length};
/// let l = Profile::builder(Length::micrometres(1000)).painted(Face::Upper).inside_radius(Length::ZERO);
/// let l = l.leg("a", Length::micrometres(20_000)).up(BendAngle::SQUARE).leg("b", Length::micrometres(30_000)).build()?;
/// let section = l.unfold(&BendRule::neutral_axis(NeutralFactor::MIDDLE))?.section()?;
/// assert_eq!((section.width, section.height), (Length::micrometres(20_000), Length::micrometres(30_000)));
/// // Two flats of 19 and 29 mm, and a quarter of a circle of 1 mm.
/// let area = 19.0 + 29.0 + std::f64::consts::FRAC_PI_4;
/// assert!((section.area.get(AreaUnit::SquareMillimetre) - area).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SectionFigures {
    /// Area of the metal in the section. Where bends are stretched thin it is a little more than girth times thickness.
    pub area: Area,
    /// Its centroid.
    pub centroid: Point,
    /// Width of the box around it, along the first leg.
    pub width: Length,
    /// Height of that box.
    pub height: Length,
}

/// Developed widths of the two faces as folded: area to paint, for each length of trim.
///
/// ```
/// use seamwright::trim::{BendRule, Face, NeutralFactor, Profile};
/// use seamwright::units::{BendAngle, Length};
/// let l = Profile::builder(Length::micrometres(1000)).painted(Face::Upper).inside_radius(Length::ZERO);
/// let l = l.leg("a", Length::micrometres(20_000)).up(BendAngle::SQUARE).leg("b", Length::micrometres(30_000)).build()?;
/// let faces = l.unfold(&BendRule::neutral_axis(NeutralFactor::MIDDLE))?.faces()?;
/// // The upper face is the inside of the bend, which is sharp.
/// assert_eq!(faces.upper, Length::micrometres(48_000));
/// assert!(faces.lower > Length::micrometres(49_570) && faces.both == (faces.upper + faces.lower).length()?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FaceWidths {
    /// Of the upper face.
    pub upper: Length,
    /// Of the lower face.
    pub lower: Length,
    /// Of both; the cut edges are not counted.
    pub both: Length,
}

impl FaceWidths {
    /// Of one face.
    #[must_use]
    pub const fn of(&self, face: Face) -> Length {
        match face {
            Face::Upper => self.upper,
            Face::Lower => self.lower,
        }
    }
}

fn square_mm(v: f64) -> Result<Area, Error> {
    Area::new(v, AreaUnit::SquareMillimetre)
}

/// Area and first moments in the working unit, about the origin of the outline.
#[derive(Default)]
struct Moments {
    area: f64,
    x: f64,
    y: f64,
}

impl Moments {
    fn take(&mut self, area: f64, (x, y): (f64, f64)) {
        self.area += area;
        self.x += area * x;
        self.y += area * y;
    }

    /// A rectangle between the two faces of a leg.
    fn leg(&mut self, lower: &Piece, upper: &Piece, t: f64) -> Result<(), Error> {
        let along = lower.from.distance(lower.to)?.mm();
        let (from, to) = (Point::ORIGIN.to(lower.from)?, Point::ORIGIN.to(upper.to)?);
        self.take(along * t, ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0));
        Ok(())
    }

    /// A sector of a ring between the two faces of a bend.
    fn bend(&mut self, outer: &Piece, arc: &Arc, inner: f64) -> Result<(), Error> {
        let radius = arc.radius.mm();
        let half = arc.turn.degrees() / 2.0;
        let (x, y) = arc.centre.to(outer.from)?;
        let (sin, cos) = (num::sin_deg(half), num::cos_deg(half));
        let half = half.abs() * num::RADIANS_PER_DEGREE;
        let area = half * (radius * radius - inner * inner);
        // From the centre along the bisector: 2 sin(a) (R^3 - r^3) / (3 a (R^2 - r^2)), a half the sector's angle.
        let cubes = radius * radius + radius * inner + inner * inner;
        let reach = 2.0 * sin.abs() * cubes / (3.0 * half * (radius + inner)) / radius;
        let centre = Point::ORIGIN.to(arc.centre)?;
        self.take(area, (centre.0 + reach * (x * cos - y * sin), centre.1 + reach * (x * sin + y * cos)));
        Ok(())
    }
}

impl Flat {
    /// The lines of every bend, from either edge.
    ///
    /// # Errors
    /// None in practice: the lines lie in the sheet.
    pub fn lines(&self) -> Result<Vec<BendLines>, Error> {
        self.bends()
            .iter()
            .map(|b| {
                let from_start = LinesFromEdge { near: b.from, line: b.line, far: b.to };
                let from_end = LinesFromEdge { near: self.from_end(b.to)?, line: self.from_end(b.line)?, far: self.from_end(b.from)? };
                Ok(BendLines { part: b.part, from_start, from_end })
            })
            .collect()
    }

    /// Area, centroid and size of the section as folded. Source: geometry (rectangles and sectors of rings).
    ///
    /// # Errors
    /// As [`Flat::outline`].
    pub fn section(&self) -> Result<SectionFigures, Error> {
        section_of(self, &self.outline()?)
    }

    /// Developed widths of both faces as folded.
    ///
    /// # Errors
    /// As [`Flat::outline`].
    pub fn faces(&self) -> Result<FaceWidths, Error> {
        faces_of(&self.outline()?)
    }
}

fn section_of(flat: &Flat, outline: &Outline) -> Result<SectionFigures, Error> {
    let mut moments = Moments::default();
    for (lower, upper) in outline.face(Face::Lower).iter().zip(outline.face(Face::Upper)) {
        match (&lower.arc, &upper.arc) {
            (Some(a), Some(b)) if a.radius > b.radius => moments.bend(lower, a, b.radius.mm())?,
            (Some(a), Some(b)) => moments.bend(upper, b, a.radius.mm())?,
            _ => moments.leg(lower, upper, flat.thickness().mm())?,
        }
    }
    let (width, height) = outline.bounds().size()?;
    let centroid = Point { x: to_length(moments.x / moments.area)?, y: to_length(moments.y / moments.area)? };
    Ok(SectionFigures { area: square_mm(moments.area)?, centroid, width, height })
}

fn faces_of(outline: &Outline) -> Result<FaceWidths, Error> {
    let width = |face: Face| outline.face(face).iter().map(Piece::length).try_fold(Sum::ZERO, |sum, l| Ok::<_, Error>(sum + l?))?.length();
    let (upper, lower) = (width(Face::Upper)?, width(Face::Lower)?);
    Ok(FaceWidths { upper, lower, both: (upper + lower).length()? })
}

/// What a shop asks of a trim: lines, size, section, faces, and with a sheet and a length of piece also mass and areas.
///
/// The mass is that of the blank, girth times the sheet's mass for each area: bending takes no metal away.
///
/// ```
/// use seamwright::metal::{Alloy, Sheet};
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, NeutralFactor, Profile, TrimFigures};
/// use seamwright::units::{BendAngle, Length, LineMassUnit, MassUnit};
/// let l = Profile::builder(Length::mils(32)).painted(Face::Upper).inside_radius(Length::mils(32));
/// let profile = l.leg("a", Length::inches(2)).up(BendAngle::SQUARE).leg("b", Length::inches(3)).build()?;
/// let figures = TrimFigures {
///     profile,
///     rule: BendRule::neutral_axis(NeutralFactor::MIDDLE),
///     sheet: Some(Sheet::new(Alloy::Aluminium3003, Length::mils(32), None)?),
///     piece: Some(Length::feet(10)),
/// }
/// .compute()?;
/// let (line, piece) = (figures.line_mass.unwrap(), figures.piece.unwrap());
/// assert!((piece.mass.unwrap().get(MassUnit::Pound) - 10.0 * line.get(LineMassUnit::PoundPerFoot)).abs() < 1e-9);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TrimFigures {
    /// The profile.
    pub profile: Profile,
    /// The rule of every bend that has none of its own.
    pub rule: BendRule,
    /// The sheet, for masses; of the profile's thickness.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub sheet: Option<Sheet>,
    /// Length of a piece, for its areas and mass.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub piece: Option<Length>,
}

/// The answers of [`TrimFigures`].
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Figures {
    /// Width of the blank.
    pub girth: Length,
    /// The lines of every bend, from either edge.
    pub lines: Vec<BendLines>,
    /// Area, centroid and size of the section as folded.
    pub section: SectionFigures,
    /// Developed widths of both faces.
    pub faces: FaceWidths,
    /// Developed width of the painted face.
    pub painted: Length,
    /// Mass for each length, where the sheet is given.
    pub line_mass: Option<LineMass>,
    /// Figures of one piece, where its length is given.
    pub piece: Option<PieceFigures>,
    /// What must be known beside the numbers: of the flat pattern, and of the sheet.
    pub cautions: Vec<Caution>,
}

/// Areas and mass of one piece of trim.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PieceFigures {
    /// Area of the painted face.
    pub painted: Area,
    /// Area of both faces.
    pub both: Area,
    /// Area of the blank.
    pub blank: Area,
    /// Its mass, where the sheet is given.
    pub mass: Option<Mass>,
}

impl Calculation for TrimFigures {
    type Out = Figures;

    fn title(&self) -> String {
        format!("figures of a trim, {}, sheet {}", self.rule, self.profile.thickness)
    }

    /// # Errors
    /// As [`Profile::unfold`], under `profile`; [`ErrorKind::Conflict`] at `sheet.thickness` for a sheet of another thickness; [`ErrorKind::OutOfRange`] at
    /// `piece` for a length of zero or less.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Figures, Error> {
        let piece = self.piece.map(|p| p.positive("piece")).transpose()?;
        if let Some(sheet) = self.sheet.filter(|s| s.thickness() != self.profile.thickness) {
            return Err(Error::new(ErrorKind::Conflict, "the sheet is not of the profile's thickness")
                .at("sheet.thickness")
                .value_of(sheet.thickness_as_given())
                .accepts(self.profile.thickness.to_string()));
        }
        let flat = self.profile.unfold(&self.rule).map_err(|e| e.under("profile"))?;
        let outline = flat.outline()?;
        let (section, faces) = (section_of(&flat, &outline)?, faces_of(&outline)?);
        let painted = faces.of(self.profile.painted);
        r.step(|| Step::new("girth").formula("sum of the flat parts and the bends").gives(flat.girth()).source(flat.rule().source().clone()));
        r.step(|| Step::new("area of the section").formula("flats x thickness + sectors of rings").gives(section.area).source(Source::geometry()));
        r.step(|| Step::new("width of the painted face").formula("flats + arcs of that face").gives(painted).source(Source::geometry()));
        let mut cautions = flat.cautions().to_vec();
        let line_mass = match &self.sheet {
            Some(sheet) => {
                cautions.extend(sheet.cautions().into_iter().map(|c| c.under("sheet")));
                let of_sheet = r.part(|| sheet.title(), |r| sheet.run(r))?;
                let line = flat.line_mass(of_sheet)?;
                r.step(|| {
                    Step::new("mass for each length")
                        .formula("girth x mass for each area")
                        .with("girth", flat.girth())
                        .with("mass for each area", of_sheet)
                        .gives(line)
                        .source(Source::geometry())
                });
                Some(line)
            }
            None => None,
        };
        let piece = piece.map(|length| Self::piece(length, &flat, painted, faces.both, line_mass)).transpose()?;
        Ok(Figures { girth: flat.girth(), lines: flat.lines()?, section, faces, painted, line_mass, piece, cautions })
    }
}

impl TrimFigures {
    fn piece(length: Length, flat: &Flat, painted: Length, both: Length, line: Option<LineMass>) -> Result<PieceFigures, Error> {
        let mass = line.map(|m| Mass::new(m.get(LineMassUnit::KilogramPerMetre) * (length.mm() / 1000.0), MassUnit::Kilogram)).transpose()?;
        Ok(PieceFigures { painted: painted.times(length), both: both.times(length), blank: flat.girth().times(length), mass })
    }
}
