//! The classes of `seamwright.closure`.

use crate::place::{cautions, part};
use crate::record::Caution;
use crate::spacing::Stations;
use crate::units::{Angle, BendAngle, Length};
use pyo3::prelude::*;
use seamwright::closure as core_closure;

part! {
    /// A closure piece for one bay.
    ClosurePiece(core_closure::ClosurePiece) in "seamwright.closure",
    shown piece: format_args!("{} long, web {}", piece.length, piece.web_height);

    /// Length of the web, along the line, between its tabs.
    length(piece) -> Length = Length(piece.length);
    /// Height of the web.
    web_height(piece) -> Length = Length(piece.web_height);
    /// Bends of the two tabs, both turning uphill: at the end to which the seams lean as they rise for a meeting angle under 90 degrees, and
    /// at the other. They are the meeting angle and 180 degrees less it.
    tab_bends(piece) -> (BendAngle, BendAngle) = (BendAngle(piece.tab_bends.0), BendAngle(piece.tab_bends.1));
    /// Angle at which the ends of the flanges are cut, from the line.
    flange_cut(piece) -> Angle = Angle(piece.flange_cut);
    /// Fasteners along the centreline of the lower flange, from where that line meets the first seam's clearance.
    fasteners(piece, here) -> Stations = here.one("fasteners", &piece.fasteners);
    /// How far the centreline of the lower flange is shifted along the line against the web, by the skew of its ends; toward the first end
    /// where positive.
    flange_shift(piece) -> Length = Length(piece.flange_shift);
    /// Length of the blank, along the bends of flanges and web.
    blank_length(piece) -> Length = Length(piece.blank.length);
    /// Width of the blank, across them: lower flange, web and top flange.
    blank_width(piece) -> Length = Length(piece.blank.width);
    /// What to know before it is cut.
    cautions(piece) -> Vec<Caution> = cautions(&piece.cautions);
}
