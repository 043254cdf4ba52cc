//! What every section is drawn with: the sheet of a trim, a row of fasteners, and steps along lines.

use super::cautions::TAPE_TOO_THICK;
use super::foldable::told;
use super::parts::{Along, AlongLine, Bites, JunctionTrim, Side};
use super::support::{SectionPoint, Support};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::practice::junction as practice;
use crate::record::{Caution, Seen, Source};
use crate::trim::{Chain, ChainLeg, Direction, Edge, Face, Point};
use crate::units::{Angle, BendAngle, Length, Sum};

/// The sheet of a trim and how sharply it is bent.
///
/// ```
/// use seamwright::junction::TrimSheet;
/// use seamwright::units::Length;
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// assert!(sheet.inside_radius > sheet.thickness);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TrimSheet {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// Radius of the inside face at every bend.
    pub inside_radius: Length,
}

impl TrimSheet {
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.thickness.positive("thickness"));
        faults.keep(self.inside_radius.not_negative("inside_radius"));
        faults.check()
    }
}

/// The spacing of a row of fasteners and whose figure it is.
///
/// ```
/// use seamwright::junction::FastenerRow;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// assert_eq!(row.spacing, Length::feet(1));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FastenerRow {
    /// On centre.
    pub spacing: Length,
    /// Whose spacing it is.
    pub source: Source,
}

impl FastenerRow {
    /// Base flashing is fastened at its upper edge at 6 in on centre.
    pub const UFGS_WALL_LEG: FastenerRow = FastenerRow { spacing: Length::inches(6), source: Source::published("UFGS-07600", "", "3.1.11", Seen::Text) };
    /// Sheets wider than 18 in are held along their edges by cleats at 12 in at the most.
    pub const UFGS_CLEATS: FastenerRow = FastenerRow { spacing: Length::inches(12), source: Source::published("UFGS-07600", "", "3.1.4", Seen::Text) };
    /// Wedges that hold a counterflashing in its reglet stand at 18 in.
    pub const UFGS_WEDGES: FastenerRow = FastenerRow { spacing: Length::inches(18), source: Source::published("UFGS-07600", "", "3.1.13.1", Seen::Text) };
    /// Screws of an edge strip in masonry stand at 12 in at the most.
    pub const UFGS_EDGE_STRIP: FastenerRow = FastenerRow { spacing: Length::inches(12), source: Source::published("UFGS-07600", "", "3.1.15.1", Seen::Text) };

    pub(super) fn check(&self) -> Result<(), Error> {
        self.spacing.positive("spacing").map(|_| ())
    }

    pub(super) fn line(&self, name: &'static str, side: Side, bites: Bites, from_line: Length) -> AlongLine {
        AlongLine { name: name.into(), side, what: Along::Fasteners { bites, spacing: self.spacing, source: self.source.clone() }, from_line }
    }
}

/// Tape along the line.
pub(super) fn tape(name: &'static str, side: Side, width: Length, over_seams: bool, from_line: Length) -> AlongLine {
    AlongLine { name: name.into(), side, what: Along::Tape { width, over_seams }, from_line }
}

/// A closed hem of this width, or a raw edge for none.
pub(super) fn hem(width: Length, direction: Direction) -> Edge {
    if width == Length::ZERO { Edge::Raw } else { Edge::closed_hem(width, direction) }
}

/// Keeps the fault of a part, behind the part's name.
pub(super) fn keep_under(faults: &mut Faults, path: &str, checked: Result<(), Error>) {
    faults.keep(checked.map_err(|e| e.under(path)));
}

/// A fault where something is short by a positive amount: what fails and by how much, and the cure.
pub(super) fn refuse_short(faults: &mut Faults, path: &str, what: &'static str, short: Sum, value: Length, cure: &'static str) -> Result<(), Error> {
    if short > Sum::ZERO {
        let short = short.length()?;
        faults
            .add(Error::new(ErrorKind::Impossible, format!("{what} by {short}")).at(path).value_of(value).accepts(format!("{short} more room")).cured_by(cure));
    }
    Ok(())
}

/// The refusal of tape so thick that what stands on it has no height left: by how much it passes what it stands under, and less than what would do.
pub(super) fn tape_too_thick(path: &str, what: &'static str, tape: Length, height: Length) -> Result<Error, Error> {
    let over = (-height).length()?;
    let limit = (tape + height).length()?;
    Ok(Error::new(ErrorKind::Impossible, format!("nothing of the seam height is left for {what} above its tape: the tape is too thick by {over}"))
        .at(path)
        .value_of(tape)
        .accepts(format!("less than {limit}"))
        .cured_by(format!("tape thinner by more than {over}, or higher seams")))
}

/// Said of tape thicker than a seal is.
pub(super) fn thick_tape(subject: &str, part: &'static str, tape: Length) -> Result<Option<Caution>, Error> {
    let over = (tape - practice::TAPE_THICKEST).length()?;
    let said = || Caution::new(TAPE_TOO_THICK, subject.to_owned(), Source::CommonPractice).arg("part", part).arg("tape", tape).arg("over", over);
    Ok(over.is_positive().then(|| said().arg("practice", practice::TAPE_THICKEST)))
}

/// A fault unless the angle lies between the two, the limits themselves left out.
pub(super) fn within(faults: &mut Faults, path: &str, angle: Angle, low: f64, high: f64) {
    if !(angle.degrees() > low && angle.degrees() < high) {
        faults.add(
            Error::new(ErrorKind::OutOfRange, "an angle without meaning here")
                .at(path)
                .value_of(angle)
                .accepts(format!("more than {low} deg and less than {high} deg")),
        );
    }
}

/// The point this far from another in this direction, counter-clockwise from +x.
pub(super) fn step(from: SectionPoint, heading: Angle, by: Length) -> Result<SectionPoint, Error> {
    let d = by.mm();
    Ok(SectionPoint { x: (from.x + Length::from_mm(d * heading.cos())?).length()?, z: (from.z + Length::from_mm(d * heading.sin())?).length()? })
}

/// Where a point lies along a direction, from the foot of the junction line.
pub(super) fn along(point: SectionPoint, rise: Angle) -> Result<Length, Error> {
    Length::from_mm(point.x.mm() * rise.cos() + point.z.mm() * rise.sin())
}

/// The line through a point in this direction.
pub(super) fn through(point: SectionPoint, rise: Angle) -> Result<Support, Error> {
    Ok(Support { rise, height: Length::from_mm(point.z.mm() * rise.cos() - point.x.mm() * rise.sin())? })
}

/// The direction turned by so much, counter-clockwise.
pub(super) fn turned(heading: Angle, by: f64) -> Result<Angle, Error> {
    Angle::degrees_from(heading.degrees() + by)
}

/// The angle the other way.
pub(super) fn opposite_sign(angle: Angle) -> Result<Angle, Error> {
    Angle::degrees_from(-angle.degrees())
}

/// A leg of a walk to its corner. What is asked for, its length or the bend before it, is kept as asked: measured between corners, which are rounded to
/// picometres, 90 degrees would come out beside 90.
#[derive(Debug, Clone, Copy)]
pub(super) struct LegTo {
    name: &'static str,
    to: SectionPoint,
    length: Option<Length>,
    bend: Option<Angle>,
}

/// A leg that is measured between its corners.
pub(super) const fn leg(name: &'static str, to: SectionPoint) -> LegTo {
    LegTo { name, to, length: None, bend: None }
}

impl LegTo {
    /// With the length that was asked for.
    pub(super) const fn long(self, length: Length) -> LegTo {
        LegTo { length: Some(length), ..self }
    }

    /// With the bend before it, from flat, whichever way it turns.
    pub(super) const fn bent(self, bend: Angle) -> LegTo {
        LegTo { bend: Some(bend), ..self }
    }
}

/// A trim walked with its supports on the right hand.
pub(super) struct Walk<'a> {
    pub(super) name: &'static str,
    pub(super) sheet: TrimSheet,
    pub(super) start: SectionPoint,
    pub(super) legs: &'a [LegTo],
    pub(super) start_edge: Edge,
    pub(super) end_edge: Edge,
    pub(super) painted: Face,
}

impl Walk<'_> {
    pub(super) fn lay(self) -> Result<JunctionTrim, Error> {
        let point = |p: SectionPoint| Point { x: p.x, y: p.z };
        let chain = Chain {
            thickness: self.sheet.thickness,
            inside_radius: self.sheet.inside_radius,
            face: Face::Lower,
            start: point(self.start),
            legs: self.legs.iter().map(|leg| ChainLeg { name: leg.name.into(), to: point(leg.to) }).collect(),
            start_edge: self.start_edge,
            end_edge: self.end_edge,
            painted: self.painted,
        };
        let mut profile = chain.profile().map_err(|e| told(&e, self.name, self.legs.iter().map(|l| l.name)))?;
        for (own, asked) in profile.legs.iter_mut().zip(self.legs) {
            own.length = asked.length.unwrap_or(own.length);
        }
        for (own, asked) in profile.bends.iter_mut().zip(self.legs.iter().skip(1)) {
            if let Some(bend) = asked.bend {
                own.angle = BendAngle::from_flat(Angle::degrees_from(bend.degrees().abs())?)?;
            }
        }
        let corners = std::iter::once(self.start).chain(self.legs.iter().map(|leg| leg.to)).collect();
        Ok(JunctionTrim { name: self.name.into(), profile, corners })
    }
}

/// Length of a leg that reaches this far out at this angle.
pub(super) fn reaching(out: Length, angle: Angle) -> Result<Length, Error> {
    Length::from_mm(out.mm() / num::sin_deg(angle.degrees()))
}
