//! `seamwright.movement.CapMoves`.

use crate::place::part;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::movement as core_movement;

part! {
    /// By how much the two sides under a cap that rides part, close, rise and fall over the year.
    CapMoves(core_movement::CapMoves) in "seamwright.movement",
    shown moves: format_args!("closes by {}, opens by {}", moves.closes, moves.opens);

    /// By how much the gap between the sides closes in the heat, level.
    closes(moves) -> Length = Length(moves.closes);
    /// By how much it opens in the cold.
    opens(moves) -> Length = Length(moves.opens);
    /// The first side; ``None`` where it does not move.
    first(moves, here) -> Option<SideParting> = moves.first.as_ref().map(|side| here.one("first", side));
    /// The second side; ``None`` where it does not move.
    second(moves, here) -> Option<SideParting> = moves.second.as_ref().map(|side| here.one("second", side));
}

part! {
    /// By how much one side under a cap moves over the year.
    SideParting(core_movement::SideParting) in "seamwright.movement",
    shown side: format_args!("closes by {}, opens by {}", side.closes, side.opens);

    /// Level, toward the other side, in the heat.
    closes(side) -> Length = Length(side.closes);
    /// Level, away from it, in the cold.
    opens(side) -> Length = Length(side.opens);
    /// Up, in the heat.
    rises(side) -> Length = Length(side.rises);
    /// Down, in the cold.
    falls(side) -> Length = Length(side.falls);
}
