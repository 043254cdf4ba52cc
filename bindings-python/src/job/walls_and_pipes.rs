//! The copings, the kick-outs and the pipes of a packet.

use crate::assembly::{CopingCorner, CopingPieces, RunOfCoping};
use crate::junction::{BeadSize, Coping, KickOutPiece, Pipe, PipePlan, Solved};
use crate::metal::Sheet;
use crate::place::part;
use crate::roof::{Point, Vertex};
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::job as core_job;

part! {
    /// A run of coping, worked out.
    CopingItem(core_job::CopingItem) in "seamwright.job",
    shown item: format_args!("{}, {}", item.name, item.run.length);

    /// Its name: coping 1, coping 2 and so on.
    name(item) -> String = item.name.clone();
    /// Where in the job its choice stands.
    choice(item) -> String = item.choice.clone();
    /// Where it runs, and what it meets.
    run(item, here) -> RunOfCoping = here.one("run", &item.run);
    /// The coping as it was worked out.
    coping(item) -> Coping = Coping(item.coping.clone());
    /// Its section.
    section(item, here) -> Solved = here.one("section", &item.section);
    /// What the run takes.
    pieces(item, here) -> CopingPieces = here.one("pieces", &item.pieces);
}

part! {
    /// A corner or tee piece of coping: made once, whichever of its runs it is looked for from.
    CopingCornerItem(core_job::CopingCornerItem) in "seamwright.job",
    shown item: format_args!("{}, {}", item.name, item.runs.join(" and "));

    /// Its name: coping corner 1 and so on.
    name(item) -> String = item.name.clone();
    /// What it is.
    corner(item, here) -> CopingCorner = here.one("corner", &item.corner);
    /// The runs that meet there, by name.
    runs(item) -> (String, String) = (item.runs[0].clone(), item.runs[1].clone());
    /// The leg along each of them; at a tee the first goes through, with a leg to both sides.
    legs(item) -> (Length, Length) = (Length(item.legs[0]), Length(item.legs[1]));
    /// The lengths of coping that it is cut from, each to its longest edge.
    cut(item) -> (Length, Length) = (Length(item.cut[0]), Length(item.cut[1]));
}

part! {
    /// A kick-out as the shop makes it, and where it goes.
    KickOutItem(core_job::KickOutItem) in "seamwright.job",
    shown item: format_args!("{} at {}", item.mark, item.lines.join(", "));

    /// Its mark: K1, K2 and so on.
    mark(item) -> String = item.mark.clone();
    /// Its sheet.
    sheet(item, here) -> Sheet = here.one("sheet", &item.sheet);
    /// The names of the lines that have one at their foot.
    lines(item) -> Vec<String> = item.lines.clone();
    /// The piece.
    piece(item, here) -> KickOutPiece = here.one("piece", &item.piece);
}

part! {
    /// A pipe, worked out.
    PipeItem(core_job::PipeItem) in "seamwright.job",
    shown item: format_args!("{} in panel {}", item.name, item.mark);

    /// Its name.
    name(item) -> String = item.name.clone();
    /// Where in the job its choice stands.
    choice(item) -> String = item.choice.clone();
    /// Number of its plane in the roof.
    plane(item) -> usize = item.plane;
    /// The panels that its base lies on, by number on the plane from 0; its middle goes through the first.
    panels(item) -> Vec<usize> = item.panels.clone();
    /// The mark of that panel in the length list.
    mark(item) -> String = item.mark.clone();
    /// Its middle on the deck.
    at(item) -> Vertex = Vertex(item.at);
    /// The same in the plane: across the slope and up it.
    on_plane(item) -> Point = Point(item.on_plane);
    /// The line at the foot of its panel, by name.
    foot(item) -> String = item.foot.clone();
    /// From that line up to its middle, along the seams.
    above_end(item) -> Length = Length(item.above_end);
    /// The bead around its collar.
    collar_bead(item, here) -> BeadSize = here.one("collar_bead", &item.collar_bead);
    /// The pipe as it was worked out.
    pipe(item) -> Pipe = Pipe(item.pipe.clone());
    /// What it takes.
    made(item, here) -> PipePlan = here.one("made", &item.made);
}
