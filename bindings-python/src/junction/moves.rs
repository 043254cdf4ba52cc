//! `seamwright.junction.JointMoves`.

use crate::place::part;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::junction as core_junction;

part! {
    /// What moves at an expansion joint from the laying temperature, both sides together.
    JointMoves(core_junction::JointMoves) in "seamwright.junction",
    shown moves: format_args!("closes by {}, opens by {}", moves.closes, moves.opens);

    /// How far the sides come together from the laying temperature to the hottest.
    closes(moves) -> Length = Length(moves.closes);
    /// How far they part from the laying temperature to the coldest.
    opens(moves) -> Length = Length(moves.opens);
}
