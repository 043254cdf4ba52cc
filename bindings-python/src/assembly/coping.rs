//! Runs of coping.

use crate::document::document;
use crate::names::{name_of, tag_of};
use crate::place::{cautions, part};
use crate::record::{Caution, Source};
use crate::roof::Vertex;
use crate::trim::Profile;
use crate::units::{Angle, Length};
use pyo3::prelude::*;
use seamwright::assembly as core_assembly;

document! {
    /// A run of coping along one wall: its pieces, joints, cleats, beads and screws.
    ///
    /// >>> from seamwright.assembly import CopingRun
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> cleat = {"sheet": sheet, "height": "3 in", "fasteners_above_bend": '1 1/2"', "fasteners": row, "hem": '7/8"', "hem_gap": "0.165 in",
    /// ...     "short_of_fold": '1/16"', "engagement": '3/4"'}
    /// >>> side = {"behind": "0 in", "depth": "4 in", "kick": "40 deg", "clears": '3/4"', "hold": {"cleat": cleat}}
    /// >>> coping = {"thickness": "8 in", "detail": {"sheet": sheet, "bed": "0.04 in", "fall": "1:12", "roof_side": side, "outside": side}}
    /// >>> def least(what, length):
    /// ...     return {"what": what, "least": length, "source": "common-practice"}
    /// >>> joint = {"plate": "12 in", "plate_lap": least("plate", "4 in"), "gap": least("gap", '1/4"'), "clearance": '1/8"', "beads": 2,
    /// ...     "bead_width": '3/8"', "bead_depth": '1/4"'}
    /// >>> temperatures = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    /// >>> run = CopingRun.from_dict({"coping": coping, "run": "42 ft", "ends": [{"corner": {"leg": "18 in"}}, "free"], "corner_leg": least("leg", "12 in"),
    /// ...     "piece": "10 ft", "least_piece": "2 ft", "joint": joint, "cleat_piece": "10 ft", "cleat_gap": '1/4"', "end_distance": "1 in",
    /// ...     "range": temperatures})
    /// >>> made = run.compute()
    /// >>> [piece.count for piece in made.pieces], made.joints, made.end_caps, format(made.gap_when_laid, "in/16")
    /// ([3, 2], 5, 1, '1/4"')
    CopingRun(core_assembly::CopingRun) in "seamwright.assembly" gives CopingPieces
}

part! {
    /// What a run of coping takes.
    CopingPieces(core_assembly::CopingPieces) in "seamwright.assembly",
    shown made: format_args!("{} joints", made.joints);

    /// Its pieces, corner pieces left out.
    pieces(made, here) -> Vec<CopingPiece> = here.all("pieces", &made.pieces);
    /// Joints with a plate: between its pieces and to its corner pieces.
    joints(made) -> u64 = made.joints;
    /// Free ends, each with a cap.
    end_caps(made) -> u64 = made.end_caps;
    /// Ends turned up against a higher wall.
    wall_ends(made) -> u64 = made.wall_ends;
    /// The gap to leave at the laying temperature.
    gap_when_laid(made) -> Length = Length(made.gap_when_laid);
    /// The gap at its widest, in the cold.
    gap_widest(made) -> Length = Length(made.gap_widest);
    /// The gap at its narrowest, in the heat.
    gap_least(made) -> Length = Length(made.gap_least);
    /// How far a plate then lies under each piece.
    plate_lap(made) -> Length = Length(made.plate_lap);
    /// The plate's profile.
    plate(made) -> Profile = Profile(made.plate.clone());
    /// Beads in all joints together.
    bead(made) -> Length = Length(made.bead);
    /// Beads in caps and wall ends together: one across each.
    end_bead(made) -> Length = Length(made.end_bead);
    /// The cleats.
    cleats(made, here) -> Vec<CopingCleat> = here.all("cleats", &made.cleats);
    /// The rows of screws.
    screws(made, here) -> Vec<CopingScrews> = here.all("screws", &made.screws);
    /// What to know before it is made.
    cautions(made) -> Vec<Caution> = cautions(&made.cautions);
}

part! {
    /// Pieces of coping of one length.
    CopingPiece(core_assembly::CopingPiece) in "seamwright.assembly",
    shown piece: format_args!("{} of {}", piece.count, piece.length);

    /// How many.
    count(piece) -> u64 = piece.count;
    /// Their length.
    length(piece) -> Length = Length(piece.length);
}

part! {
    /// The pieces of one cleat of a coping.
    CopingCleat(core_assembly::CopingCleat) in "seamwright.assembly",
    shown cleat: format_args!("{} pieces, {} together", cleat.pieces, cleat.length);

    /// On which face: ``first``, the roof side, or ``second``, the outside.
    side(cleat) -> String = name_of(&cleat.side)?;
    /// How many pieces.
    pieces(cleat) -> u64 = cleat.pieces;
    /// Their length together: the run less the gaps, and less what other walls take of it.
    length(cleat) -> Length = Length(cleat.length);
}

part! {
    /// A row of screws along a coping.
    CopingScrews(core_assembly::CopingScrews) in "seamwright.assembly",
    shown row: format_args!("{}, {}", row.name, row.count);

    /// What it is called in the section.
    name(row) -> String = row.name.clone();
    /// On which face: ``first``, the roof side, or ``second``, the outside.
    side(row) -> String = name_of(&row.side)?;
    /// What they bite: ``structure``, ``panel``, ``slot`` or ``trim``.
    bites(row) -> String = name_of(&row.bites)?;
    /// On centre, at the most.
    spacing(row) -> Length = Length(row.spacing);
    /// How many.
    count(row) -> u64 = row.count;
    /// Whether an engineer gave the spacing.
    engineered(row) -> bool = row.engineered;
    /// Whose spacing it is.
    source(row) -> Source = Source(row.source.clone());
}

part! {
    /// Where a coping runs without a break, and what it meets.
    RunOfCoping(core_assembly::RunOfCoping) in "seamwright.assembly",
    shown run: format_args!("{}, {}", run.walls.join(", "), run.length);

    /// The number of its coping among the job's choices.
    coping(run) -> usize = run.coping;
    /// Its walls by name, in order.
    walls(run) -> Vec<String> = run.walls.clone();
    /// Where its outer edge starts; the roof lies on the left.
    start(run) -> Vertex = Vertex(run.start);
    /// Where it ends.
    end(run) -> Vertex = Vertex(run.end);
    /// Length of the outer edge.
    length(run) -> Length = Length(run.length);
    /// What it meets at its start and at its end.
    ends(run, here) -> Vec<CopingMeets> = here.all("ends", &run.ends);
    /// Where other runs meet it between them, from its start on.
    tees(run, here) -> Vec<TeeOnRun> = here.all("tees", &run.tees);
}

part! {
    /// What an end of a run of coping meets. What it has not is ``None``.
    CopingMeets(core_assembly::CopingMeets) in "seamwright.assembly",
    shown end: tag_of(end)?;

    /// What it is: ``free``, ``corner`` or ``wall``.
    kind(end) -> String = tag_of(end)?;
    /// The number of the corner or tee, among the packet's ``coping_corners``.
    corner(end) -> Option<usize> = match end { core_assembly::CopingMeets::Corner { corner } => Some(*corner), _ => None };
    /// The name of the higher wall.
    wall(end) -> Option<String> = match end { core_assembly::CopingMeets::Wall { wall } => Some(wall.clone()), _ => None };
}

part! {
    /// Another run that ends on this one.
    TeeOnRun(core_assembly::TeeOnRun) in "seamwright.assembly",
    shown tee: format_args!("{} from the start", tee.at);

    /// Its number among the corners.
    corner(tee) -> usize = tee.corner;
    /// From the start of the run to the middle of the other wall.
    at(tee) -> Length = Length(tee.at);
    /// How much of the run the other wall takes.
    width(tee) -> Length = Length(tee.width);
    /// Which face the other wall stands against: ``first`` looks to the roof.
    side(tee) -> String = name_of(&tee.side)?;
}

part! {
    /// Where two runs of coping meet.
    CopingCorner(core_assembly::CopingCorner) in "seamwright.assembly",
    shown corner: format_args!("{}, {}", corner.kind.name(), corner.turn);

    /// What is made there: ``outside``, ``inside`` or ``tee``.
    kind(corner) -> String = name_of(&corner.kind)?;
    /// Where: the outer edges' corner, or the middle of the wall that ends at a tee.
    at(corner) -> Vertex = Vertex(corner.at);
    /// How far the second run turns from the first in plan; at a tee, from the run that goes through to the one that ends on it.
    turn(corner) -> Angle = Angle(corner.turn);
    /// The two runs by number; at a tee the first goes through.
    runs(corner) -> (usize, usize) = (corner.runs[0], corner.runs[1]);
}
