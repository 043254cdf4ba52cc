//! Mitres.

use super::blank::{At, at};
use super::flat::Part;
use crate::document::document;
use crate::place::part;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use seamwright::trim as core_trim;

document! {
    /// A mitred corner of a trim, at any plan angle and pair of slopes.
    ///
    /// >>> from seamwright.trim import Mitre
    /// >>> legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    /// ...     {"name": "face", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"}]
    /// >>> bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    /// >>> profile = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    /// >>> corner = {"plan": {"turn": "90 deg", "first_rise": "0 deg", "second_rise": "0 deg"}}
    /// >>> mitre = Mitre.from_dict({"profile": profile, "rule": "sharp-corner", "corner": corner, "second": "upright", "closes_on": "upper",
    /// ...     "tolerance": "0.01 mm"})
    /// >>> [cut.angle.degrees for cut in mitre.compute().first.legs]
    /// [45.0, 90.0]
    Mitre(seamwright::trim::Mitre) in "seamwright.trim" gives MitredCorner
}

part! {
    /// A mitred corner, ready to be cut.
    MitredCorner(core_trim::MitredCorner) in "seamwright.trim",
    shown made: format_args!("{} between the runs", made.turn);

    /// The half that arrives at the corner.
    first(made, here) -> MitreHalf = here.one("first", &made.first);
    /// The half that leaves it.
    second(made, here) -> MitreHalf = here.one("second", &made.second);
    /// The angle between the two runs in space: 0 straight on.
    turn(made) -> Angle = Angle(made.turn);
    /// How far the second section is turned about its run from upright, counter-clockwise as it is seen along the run.
    roll(made) -> Angle = Angle(made.roll);
    /// How far the corners of the two halves part, at most: nothing for halves of one profile.
    parts(made) -> Length = Length(made.parts);
}

part! {
    /// One half of a mitred corner: the line on its flat that is cut.
    MitreHalf(core_trim::MitreHalf) in "seamwright.trim",
    shown half: format_args!("{} legs, {} points", half.legs.len(), half.line.len());

    /// The width of its flat.
    girth(half) -> Length = Length(half.flat.girth());
    /// The cut across each leg, returns of hems among them.
    legs(half, here) -> Vec<LegCut> = here.all("legs", &half.legs);
    /// The whole line: stations from the start edge, and how far along the run from the corner's origin.
    line(half) -> Vec<At> = half.line.iter().copied().map(at).collect();
    /// The most that the other face of the sheet parts or overruns, on one half, where the halves close on the surface asked for.
    opening(half) -> Length = Length(half.opening);
}

part! {
    /// The cut across one leg, or across the return of a hem.
    LegCut(core_trim::LegCut) in "seamwright.trim",
    shown cut: format_args!("{} at {}", cut.part, cut.angle);

    /// Which leg of the profile by its index, or ``start-hem`` or ``end-hem``.
    part(cut) -> Part = cut.part.into();
    /// From the bend lines, onward along the run, to the cut: 90 degrees is square.
    angle(cut) -> Angle = Angle(cut.angle);
    /// How far the mitre plane leans from square to the sheet of this leg.
    bevel(cut) -> Angle = Angle(cut.bevel);
    /// Where the cut starts: the station, and how far along the run. (In Rust this is ``from``.)
    start(cut) -> At = at(cut.from);
    /// Where it ends.
    end(cut) -> At = at(cut.to);
}
