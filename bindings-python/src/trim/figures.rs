//! Figures of a trim beside its blank.

use super::flat::Part as FlatPart;
use crate::document::document;
use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::{Area, Length, LineMass, Mass};
use pyo3::prelude::*;
use seamwright::trim as core_trim;

document! {
    /// What a shop asks of a trim: lines, size, section, faces, and with a sheet and a length of piece also mass and areas.
    ///
    /// >>> from seamwright.trim import Bend, BendRule, Leg, NeutralFactor, Profile, TrimFigures
    /// >>> legs = [Leg("a", "20 mm", "sheet-edge", "outer-corner"), Leg("b", "30 mm", "outer-corner", "sheet-edge")]
    /// >>> profile = Profile("1 mm", legs, [Bend("90 deg", "up", "0 mm")], "upper")
    /// >>> figures = TrimFigures.from_dict({"profile": profile, "rule": BendRule.neutral_axis(NeutralFactor.MIDDLE)}).compute()
    /// >>> figures.painted, figures.section.width
    /// (Length('48 mm'), Length('20 mm'))
    TrimFigures(core_trim::TrimFigures) in "seamwright.trim" gives Figures
}

part! {
    /// The answers of `TrimFigures`.
    Figures(core_trim::Figures) in "seamwright.trim",
    shown figures: format_args!("girth {}, {} by {}", figures.girth, figures.section.width, figures.section.height);

    /// Width of the blank.
    girth(figures) -> Length = Length(figures.girth);
    /// The lines of every bend, from either edge.
    lines(figures, here) -> Vec<BendLines> = here.all("lines", &figures.lines);
    /// Area, centroid and size of the section as folded.
    section(figures, here) -> SectionFigures = here.one("section", &figures.section);
    /// Developed widths of both faces.
    faces(figures, here) -> FaceWidths = here.one("faces", &figures.faces);
    /// Developed width of the painted face.
    painted(figures) -> Length = Length(figures.painted);
    /// Mass for each length, where the sheet is given.
    line_mass(figures) -> Option<LineMass> = figures.line_mass.map(LineMass);
    /// Figures of one piece, where its length is given.
    piece(figures, here) -> Option<PieceFigures> = figures.piece.as_ref().map(|p| here.one("piece", p));
    /// What must be known beside the numbers.
    cautions(figures) -> Vec<Caution> = cautions(&figures.cautions);
}

part! {
    /// The lines of a bend: the tangent line nearer to the edge, the bend line, the tangent line farther from it.
    BendLines(core_trim::BendLines) in "seamwright.trim",
    shown lines: format_args!("{}: {} from the start", lines.part, lines.from_start.line);

    /// Which bend of the profile by its index, or ``start-hem`` or ``end-hem``.
    part(lines) -> FlatPart = lines.part.into();
    /// Distances from the start edge.
    from_start(lines) -> (Length, Length, Length) = (Length(lines.from_start.near), Length(lines.from_start.line), Length(lines.from_start.far));
    /// Distances from the end edge.
    from_end(lines) -> (Length, Length, Length) = (Length(lines.from_end.near), Length(lines.from_end.line), Length(lines.from_end.far));
}

part! {
    /// The section as folded: its metal, and the box that it needs, the first leg along the x axis.
    SectionFigures(core_trim::SectionFigures) in "seamwright.trim",
    shown section: format_args!("{}, {} by {}", section.area, section.width, section.height);

    /// Area of the metal in the section.
    area(section) -> Area = Area(section.area);
    /// Its centroid, x and y.
    centroid(section) -> (Length, Length) = (Length(section.centroid.x), Length(section.centroid.y));
    /// Width of the box around it, along the first leg.
    width(section) -> Length = Length(section.width);
    /// Height of that box.
    height(section) -> Length = Length(section.height);
}

part! {
    /// Developed widths of the two faces as folded.
    FaceWidths(core_trim::FaceWidths) in "seamwright.trim",
    shown faces: format_args!("upper {}, lower {}", faces.upper, faces.lower);

    /// Of the upper face.
    upper(faces) -> Length = Length(faces.upper);
    /// Of the lower face.
    lower(faces) -> Length = Length(faces.lower);
    /// Of both; the cut edges are not counted.
    both(faces) -> Length = Length(faces.both);
}

part! {
    /// Areas and mass of one piece of trim.
    PieceFigures(core_trim::PieceFigures) in "seamwright.trim",
    shown piece: format_args!("{} painted, {} in all", piece.painted, piece.both);

    /// Area of the painted face.
    painted(piece) -> Area = Area(piece.painted);
    /// Area of both faces.
    both(piece) -> Area = Area(piece.both);
    /// Area of the blank.
    blank(piece) -> Area = Area(piece.blank);
    /// Its mass, where the sheet is given.
    mass(piece) -> Option<Mass> = piece.mass.map(Mass);
}
