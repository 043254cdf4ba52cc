//! Tapered trims.

use super::blank::{At, FlatBlank, at, dxf, svg};
use super::flat::Part;
use super::profile::Profile;
use crate::document::document;
use crate::given::{Given, Text};
use crate::place::part;
use crate::units::{Area, BendAngle, Length, LengthFormat};
use pyo3::prelude::*;
use pyo3::types::PyBytes;
use seamwright::export::BlankDrawing;
use seamwright::trim as core_trim;

document! {
    /// A tapered trim: one profile at its near end, another at its far end, leg by leg the same but for their lengths.
    ///
    /// >>> from seamwright.trim import Taper
    /// >>> def angle(face):
    /// ...     legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    /// ...         {"name": "face", "length": face, "start": "outer-corner", "end": "sheet-edge"}]
    /// ...     bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    /// ...     return {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    /// >>> made = Taper.from_dict({"near": angle("2 in"), "far": angle("3 in"), "length": "10 ft", "rule": "sharp-corner", "held": "start-edge",
    /// ...     "tolerance": "0.01 mm"}).compute()
    /// >>> [format(girth, "in/16") for girth in made.girths]
    /// ['6"', '7"']
    Taper(seamwright::trim::Taper) in "seamwright.trim" gives TaperedTrim
}

document! {
    /// A tapered run that is cut into lapped pieces.
    ///
    /// >>> from seamwright.trim import TaperedRun
    /// >>> def strip(width):
    /// ...     leg = {"name": "strip", "length": width, "start": "sheet-edge", "end": "sheet-edge"}
    /// ...     return {"thickness": "0.024 in", "legs": [leg], "painted": "upper"}
    /// >>> run = TaperedRun.from_dict({"near": strip("4 in"), "far": strip("9 in"), "run": "25 ft", "longest": "10 ft", "lap": "4 in",
    /// ...     "mode": "full-then-rest", "rule": "sharp-corner", "held": "start-edge", "tolerance": "0.01 mm"})
    /// >>> [format(piece.start, "in/16") for piece in run.compute().pieces]
    /// ['0"', '116"', '232"']
    TaperedRun(seamwright::trim::TaperedRun) in "seamwright.trim" gives TaperedPieces
}

part! {
    /// A tapered trim in the flat.
    TaperedTrim(core_trim::TaperedTrim) in "seamwright.trim",
    shown made: format_args!("girths {} and {}", made.near.girth(), made.far.girth());

    /// The girths of the near and of the far end.
    girths(made) -> (Length, Length) = (Length(made.near.girth()), Length(made.far.girth()));
    /// The legs, returns of hems among them.
    legs(made, here) -> Vec<TaperLeg> = here.all("legs", &made.legs);
    /// The bends, folds of hems among them.
    bends(made, here) -> Vec<TaperBend> = here.all("bends", &made.bends);
    /// The blank, its start edge on the y axis.
    blank(made, here) -> FlatBlank = here.one("blank", &made.blank);
    /// The area of its metal.
    area(made) -> Area = Area(made.area);
    /// Whether its near end is cut askew, as the lower end of a valley's pan: then a bend's station there is told square to the start edge.
    near_is_cut(made) -> bool = made.near_is_cut;
    {
        /// A drawing of it with its running distances at both ends, as SVG text.
        fn svg(&self, name: Text, format: Given<LengthFormat>) -> PyResult<String> {
            svg(BlankDrawing::of_taper(&name.0, &self.core, format.at("format")?))
        }

        /// The same as the bytes of a DXF file, in ``millimetre`` or ``inch``, true and whole.
        fn dxf<'py>(&self, py: Python<'py>, name: Text, format: Given<LengthFormat>, unit: Text) -> PyResult<Bound<'py, PyBytes>> {
            dxf(py, BlankDrawing::of_taper(&name.0, &self.core, format.at("format")?), &unit)
        }
    }
}

part! {
    /// A leg of a tapered trim in the flat.
    TaperLeg(core_trim::TaperLeg) in "seamwright.trim",
    shown leg: format_args!("{}, slant {}", leg.part, leg.slant);

    /// Which leg of the profile by its index, or ``start-hem`` or ``end-hem``.
    part(leg) -> Part = leg.part.into();
    /// Its side towards the start edge, from the near end to the far one.
    start(leg) -> (At, At) = (at(leg.start.from), at(leg.start.to));
    /// Its side towards the end edge.
    end(leg) -> (At, At) = (at(leg.end.from), at(leg.end.to));
    /// From end to end in the leg's own plane, square to both ends.
    slant(leg) -> Length = Length(leg.slant);
}

part! {
    /// A bend of a tapered trim.
    TaperBend(core_trim::TaperBend) in "seamwright.trim",
    shown bend: format_args!("{}, turned {}", bend.part, bend.turn);

    /// Which bend of the profile by its index, or ``start-hem`` or ``end-hem``.
    part(bend) -> Part = bend.part.into();
    /// The bend line, from the near end to the far one.
    line(bend) -> (At, At) = (at(bend.line.from), at(bend.line.to));
    /// Where it leaves the near end, measured along that end from the start edge.
    near_station(bend) -> Length = Length(bend.near_station);
    /// Where it comes to the far end, measured along that end from the start edge.
    far_station(bend) -> Length = Length(bend.far_station);
    /// What the brake turns it by, square across the line.
    turn(bend) -> BendAngle = BendAngle(bend.turn);
    /// From tangent line to tangent line, square across.
    across(bend) -> Length = Length(bend.across);
    /// How much wider the blank would be across this line if the bend were round across it.
    round_bend(bend) -> Option<Length> = bend.round_bend.map(Length);
}

part! {
    /// A tapered run as lapped pieces, in order.
    TaperedPieces(core_trim::TaperedPieces) in "seamwright.trim",
    shown made: format_args!("{} pieces", made.pieces.len());

    /// The pieces from the start of the run.
    pieces(made, here) -> Vec<TaperedPiece> = here.all("pieces", &made.pieces);
    /// How many laps there are.
    laps(made) -> u32 = made.laps;
}

part! {
    /// One piece of a tapered run.
    TaperedPiece(core_trim::TaperedPiece) in "seamwright.trim",
    shown piece: format_args!("{} to {}", piece.from, piece.to);

    /// Where it starts on the run. (In Rust this is ``from``, which is a word of Python's own.)
    start(piece) -> Length = Length(piece.from);
    /// Where it ends.
    end(piece) -> Length = Length(piece.to);
    /// The profile where it starts.
    near(piece) -> Profile = Profile(piece.near.clone());
    /// The profile where it ends.
    far(piece) -> Profile = Profile(piece.far.clone());
    /// The piece in the flat, with its girths at both ends.
    trim(piece, here) -> TaperedTrim = here.one("trim", &piece.trim);
}
