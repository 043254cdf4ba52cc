//! The kick-out at the foot of a wall's flashing.

use crate::document::document;
use crate::place::part;
use crate::trim::FlatBlank;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use seamwright::junction as core_junction;

/// A corner: its name, where it lies on the blank, and folded: out from the wall, past the turn, up.
type Corner = (String, (Length, Length), (Length, Length, Length));

document! {
    /// The kick-out at the foot of a wall's flashing, where an eave dies into the wall: an angle whose lower end is turned off the wall, in one piece of sheet.
    ///
    /// >>> from seamwright.junction import KickOut
    /// >>> sheet = {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> asked = {"pitch": "4:12", "sheet": sheet, "flange": '3 1/2"', "leg": "8 in", "wall": "right", "detail": {"throw": "4 in"}}
    /// >>> made = KickOut.from_dict(asked).compute()
    /// >>> round(made.turn.degrees, 2), round(made.notch.degrees, 2), format(made.turned, "in/16")
    /// (53.13, 49.37, '5 1/4"')
    KickOut(core_junction::KickOut) in "seamwright.junction" gives KickOutPiece
}

part! {
    /// A kick-out as the shop makes it.
    KickOutPiece(core_junction::KickOutPiece) in "seamwright.junction",
    shown made: format_args!("thrown {}, wall on the {}", made.asked.detail.throw, made.asked.wall.name());

    /// What was asked.
    asked(made) -> KickOut = KickOut(made.asked.clone());
    /// How far the leg is turned off the wall, in plan.
    turn(made) -> Angle = Angle(made.turn);
    /// The V cut out of the flange.
    notch(made) -> Angle = Angle(made.notch);
    /// How far the line of the turn leans up the slope, on the leg, from square to the fold.
    lean(made) -> Angle = Angle(made.lean);
    /// How far the apron is bent to the turned leg, from flat.
    apron_bend(made) -> Angle = Angle(made.apron_bend);
    /// How far the tab is bent to the apron, from flat.
    tab_bend(made) -> Angle = Angle(made.tab_bend);
    /// How far the apron falls from level, down the slope.
    apron_fall(made) -> Angle = Angle(made.apron_fall);
    /// Along the fold, from the turn up to the upper end.
    upper(made) -> Length = Length(made.upper);
    /// Along the fold, from the turn out to the outer end.
    turned(made) -> Length = Length(made.turned);
    /// How far that end lies below the turn.
    drop(made) -> Length = Length(made.drop);
    /// The blank: up the slope where the wall is on the right, down it where it is on the left.
    blank(made, here) -> FlatBlank = here.one("blank", &made.blank);
    /// Its corners: the name, the place on the blank, and folded how far out from the wall, past the turn and up.
    corners(made) -> Vec<Corner> = made
        .corners
        .iter()
        .map(|c| (c.name.to_string(), (Length(c.flat.x), Length(c.flat.y)), (Length(c.from_wall), Length(c.past_turn), Length(c.up))))
        .collect();
}
