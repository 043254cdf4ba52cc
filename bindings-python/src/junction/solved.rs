//! What a junction gives, solved in its section.

use super::{Adjoining, KickOutPiece};
use crate::given::Text;
use crate::names::{name_of, named};
use crate::panel::PanelEnd;
use crate::place::{Here, cautions, part};
use crate::record::{Caution, Source};
use crate::trim::Profile;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::junction as core_junction;
use seamwright::junction::Along;
use seamwright::junction::Datum;

part! {
    /// A junction as solved in its section. It pickles as its place in what gave it.
    Solved(core_junction::Solved) in "seamwright.junction",
    shown solved: format_args!("{} trims, {} lines to strike", solved.trims.len(), solved.lines.len());

    /// The trims, in the order in which they are set.
    trims(solved, here) -> Vec<JunctionTrim> = here.all("trims", &solved.trims);
    /// The panel ends.
    ends(solved, here) -> Vec<SideEnd> = here.all("ends", &solved.ends);
    /// What lies along the line, in the order of the work.
    along(solved, here) -> Vec<AlongLine> = here.all("along", &solved.along);
    /// The lines that the crew strikes, in the order of the work; each refers to what is there by then.
    lines(solved, here) -> Vec<LayoutLine> = here.all("lines", &solved.lines);
    /// The same lines at the lower end of the junction line, where they turn away from it: then ``lines`` are those at its upper end. Else none.
    lower_lines(solved, here) -> Vec<LayoutLine> = here.all("lower_lines", &solved.lower_lines);
    /// The same trims as they are and lie at the lower end of the line, where they turn away from it or taper; else none.
    lower_trims(solved, here) -> Vec<JunctionTrim> = here.all("lower_trims", &solved.lower_trims);
    /// The piece that turns the water off a wall at the foot of its flashing, where an eave dies into the wall; else ``None``.
    kick_out(solved, here) -> Option<KickOutPiece> = solved.kick_out.as_ref().map(|piece| here.one("kick_out", piece));
    /// What others build there.
    adjoining(solved, here) -> Vec<Adjoining> = here.all("adjoining", &solved.adjoining);
    /// What must be said beside it.
    cautions(solved) -> Vec<Caution> = cautions(&solved.cautions);
    {
        /// The end for the panels of this side, ``first`` or ``second``; ``None`` if none end there.
        fn end(&self, side: Text) -> PyResult<Option<PanelEnd>> {
            Ok(self.core.end(named(&side, "side")?).cloned().map(PanelEnd))
        }

        /// The trim of this name, if there is one.
        fn trim(&self, py: Python<'_>, name: Text) -> Option<JunctionTrim> {
            let number = self.core.trims.iter().position(|t| t.name == name.0)?;
            Here { py, place: &self.place }.all("trims", &self.core.trims).into_iter().nth(number)
        }
    }
}

part! {
    /// A trim of the section, with where it lies.
    JunctionTrim(core_junction::JunctionTrim) in "seamwright.junction",
    shown trim: format_args!("{}, {} legs", trim.name, trim.profile.legs.len());

    /// What it is called.
    name(trim) -> String = trim.name.to_string();
    /// Its profile.
    profile(trim) -> Profile = Profile(trim.profile.clone());
    /// The corners of the face that lies on the supports, in the order of the legs; the first is the start edge.
    corners(trim) -> Vec<SectionPoint> = trim.corners.iter().copied().map(SectionPoint).collect();
}

/// A point of a section: ``x`` level and square to the junction line, positive toward the second side; ``z`` up, from the line at deck level.
#[pyclass(module = "seamwright.junction", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct SectionPoint(core_junction::SectionPoint);

#[pymethods]
impl SectionPoint {
    #[new]
    fn new(x: crate::given::Given<Length>, z: crate::given::Given<Length>) -> PyResult<SectionPoint> {
        Ok(SectionPoint(core_junction::SectionPoint { x: x.at("x")?, z: z.at("z")? }))
    }

    /// Level distance from the junction line.
    #[getter]
    fn x(&self) -> Length {
        Length(self.0.x)
    }

    /// Height above the junction line.
    #[getter]
    fn z(&self) -> Length {
        Length(self.0.z)
    }

    fn __repr__(&self) -> String {
        format!("SectionPoint('{}', '{}')", self.0.x, self.0.z)
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, pyo3::types::PyType>, (Length, Length)) {
        (slf.get_type(), (slf.get().x(), slf.get().z()))
    }
}

part! {
    /// The end that a junction sets for the panels of one side.
    SideEnd(core_junction::SideEnd) in "seamwright.junction",
    shown of: format_args!("{} side, {}", name_of(&of.side)?, PanelEnd(of.end.clone()).__repr__()?);

    /// Which side: ``first`` or ``second``.
    side(of) -> String = name_of(&of.side)?;
    /// The end.
    end(of) -> PanelEnd = PanelEnd(of.end.clone());
}

/// What lies along a line, by name.
fn kind(what: &Along) -> &'static str {
    match what {
        Along::Fasteners { .. } => "fasteners",
        Along::Tape { .. } => "tape",
        Along::Bead { .. } => "bead",
        Along::Closures { .. } => "closures",
        Along::ContinuousCleat => "continuous-cleat",
        Along::OffsetCleat => "offset-cleat",
    }
}

part! {
    /// Something along the line, with where it lies in the section. What it has not is ``None``: only fasteners bite, only a bead has a depth.
    AlongLine(core_junction::AlongLine) in "seamwright.junction",
    shown line: format_args!("{}, {}", line.name, kind(&line.what));

    /// What it is called.
    name(line) -> String = line.name.to_string();
    /// On which side of the junction: ``first`` or ``second``.
    side(line) -> String = name_of(&line.side)?;
    /// What it is: fasteners, tape, bead, closures, continuous-cleat or offset-cleat.
    what(line) -> &'static str = kind(&line.what);
    /// Its distance from the junction line, along its own plane and square to the line. On a roof and on a wall or a fascia, positive is up;
    /// across the slope, at a rake positive is toward the roof, and at a sidewall negative is.
    from_line(line) -> Length = Length(line.from_line);
    /// What fasteners bite: structure, panel, slot or trim.
    bites(line) -> Option<String> = match &line.what {
        Along::Fasteners { bites, .. } => Some(name_of(bites)?),
        _ => None,
    };
    /// The spacing of fasteners, on centre.
    spacing(line) -> Option<Length> = match &line.what {
        Along::Fasteners { spacing, .. } => Some(Length(*spacing)),
        _ => None,
    };
    /// Whose spacing it is.
    source(line) -> Option<Source> = match &line.what {
        Along::Fasteners { source, .. } => Some(Source(source.clone())),
        _ => None,
    };
    /// The width of tape or of a bead.
    width(line) -> Option<Length> = match &line.what {
        Along::Tape { width, .. } | Along::Bead { width, .. } => Some(Length(*width)),
        _ => None,
    };
    /// The depth of a bead.
    depth(line) -> Option<Length> = match &line.what {
        Along::Bead { depth, .. } => Some(Length(*depth)),
        _ => None,
    };
    /// Whether tape crosses the seams, and so follows the panels' surface.
    over_seams(line) -> Option<bool> = match &line.what {
        Along::Tape { over_seams, .. } => Some(*over_seams),
        _ => None,
    };
    /// The height of a closure's web.
    web(line) -> Option<Length> = match &line.what {
        Along::Closures { web } => Some(Length(*web)),
        _ => None,
    };
}

/// The name of a line that others are measured from.
pub(crate) fn datum_line(datum: &Datum) -> Option<String> {
    match datum {
        Datum::Line(name) => Some(name.to_string()),
        Datum::JunctionLine | Datum::TrimLowerEdge | Datum::TrimTopEdge => None,
    }
}

part! {
    /// A line to strike, parallel to the junction line; or, where it lies over the edge of the deck, to gauge.
    LayoutLine(core_junction::LayoutLine) in "seamwright.junction",
    shown line: format_args!("{}, {} from {}", line.name, line.from_datum, line.datum);

    /// What goes on it.
    name(line) -> String = line.name.to_string();
    /// On which side of the junction it is struck: ``first`` or ``second``.
    side(line) -> String = name_of(&line.side)?;
    /// What it is measured from, in words: the junction line, the trim's lower or top edge, or the name of a line.
    datum(line) -> String = line.datum.to_string();
    /// The name of the line that it is measured from; ``None`` where it is no struck line.
    datum_line(line) -> Option<String> = datum_line(&line.datum);
    /// How far from its datum, along the slope and square to the line: up it from the junction line, a lower edge and a struck line (negative
    /// is down), down it from a top edge.
    from_datum(line) -> Length = Length(line.from_datum);
    /// Where it is, along its own plane from the junction line.
    from_line(line) -> Length = Length(line.from_line);
}
