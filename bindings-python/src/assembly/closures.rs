//! Closures along a line.

use crate::closure::ClosurePiece;
use crate::names::name_of;
use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;

part! {
    /// Closures along one side of a line.
    ClosureRow(core_assembly::ClosureRow) in "seamwright.assembly",
    shown row: format_args!("{}, {} pieces", row.name, row.list.pieces);

    /// What they are called in the section.
    name(row) -> String = row.name.clone();
    /// On which side: ``first`` or ``second``.
    side(row) -> String = name_of(&row.side)?;
    /// Height of the web.
    web(row) -> Length = Length(row.web);
    /// The row of screws that they take, by its name in the section; ``None`` where the section has none and the starting figure stands.
    screw_row(row) -> Option<String> = row.screw_row.clone();
    /// The pieces.
    list(row, here) -> ClosureList = here.one("list", &row.list);
}

part! {
    /// The closures of one side of a line, in pieces.
    ClosureList(core_assembly::ClosureList) in "seamwright.assembly",
    shown list: format_args!("{} pieces, {} screws", list.pieces, list.screws);

    /// Identical pieces together, in the order in which they first come along the line.
    groups(list, here) -> Vec<ClosureGroup> = here.all("groups", &list.groups);
    /// How many pieces there are.
    pieces(list) -> usize = list.pieces;
    /// How many screws.
    screws(list) -> usize = list.screws;
    /// The bays that take no piece, by number along the line.
    without(list) -> Vec<usize> = list.without.clone();
    /// What to know before they are cut; each that several pieces share is said once.
    cautions(list) -> Vec<Caution> = cautions(&list.cautions);
}

part! {
    /// Identical closure pieces.
    ClosureGroup(core_assembly::ClosureGroup) in "seamwright.assembly",
    shown group: format_args!("{} of {}", group.count, group.piece.length);

    /// The coverage of the bay that the pieces fit.
    coverage(group) -> Length = Length(group.bay.coverage);
    /// The angle at which its seams meet the line.
    meeting(group) -> Angle = Angle(group.bay.meeting);
    /// The hand: ``square``, ``left`` or ``right``.
    hand(group) -> String = name_of(&group.hand)?;
    /// What the bay ends at on the left, looking up the slope: ``seam``, ``rip`` or ``corner``.
    left(group) -> String = name_of(&group.left)?;
    /// What it ends at on the right: ``seam``, ``rip`` or ``corner``.
    right(group) -> String = name_of(&group.right)?;
    /// The piece.
    piece(group, here) -> ClosurePiece = here.one("piece", &group.piece);
    /// How many.
    count(group) -> usize = group.count;
    /// Screws of one piece.
    screws_each(group) -> usize = group.screws_each;
    /// The bays, by number along the line.
    bays(group) -> Vec<usize> = group.bays.clone();
}
