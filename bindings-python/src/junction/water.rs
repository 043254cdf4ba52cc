//! Water on a junction: the path down its sheets, and what shelters its fasteners.

use crate::document::document;
use crate::names::{name_of, tag_of};
use crate::place::{cautions, part};
use crate::record::{Caution, Source};
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::junction as core_junction;
use seamwright::junction::Shelter;

document! {
    /// A path of water down one slope: sheets, each lying from one height to another in its layer, and the least laps of some over others.
    ///
    /// >>> from seamwright.junction import WaterPath
    /// >>> under = {"name": "underlayment", "low": "0 in", "high": "240 in", "layer": 1}
    /// >>> trim = {"name": "eave trim", "low": "0 in", "high": "4 in", "layer": 2}
    /// >>> [(fault.failure, fault.upper, format(fault.at, "in/16")) for fault in WaterPath.from_dict({"sheets": [under, trim]}).compute().faults]
    /// [('runs-behind', 'eave trim', '4"')]
    WaterPath(core_junction::WaterPath) in "seamwright.junction" gives PathCheck
}

part! {
    /// A path of water as followed from the top of the slope to the bottom.
    PathCheck(core_junction::PathCheck) in "seamwright.junction",
    shown check: format_args!("{} laps, {} faults", check.laps.len(), check.faults.len());

    /// Whether water runs over every lap from the top to the bottom.
    holds(check) -> bool = check.holds;
    /// The sheets from the top of the slope to the bottom.
    order(check) -> Vec<String> = check.order.clone();
    /// Every two sheets that overlap, the highest lap first.
    laps(check, here) -> Vec<PathLap> = here.all("laps", &check.laps);
    /// Where it fails.
    faults(check, here) -> Vec<PathFault> = here.all("faults", &check.faults);
}

part! {
    /// One sheet over another.
    PathLap(core_junction::PathLap) in "seamwright.junction",
    shown lap: format_args!("{} over {}, {}", lap.upper, lap.lower, lap.overlap);

    /// The sheet on top.
    upper(lap) -> String = lap.upper.clone();
    /// The sheet beneath.
    lower(lap) -> String = lap.lower.clone();
    /// How far they overlap up the slope.
    overlap(lap) -> Length = Length(lap.overlap);
    /// The least lap; ``None`` where no rule names it.
    least(lap) -> Option<Length> = lap.least.map(Length);
    /// Whose rule that is.
    source(lap) -> Option<Source> = lap.source.clone().map(Source);
    /// Whether water runs over it, and it is as long as the rule asks.
    holds(lap) -> bool = lap.holds;
}

part! {
    /// A place where a path of water fails.
    PathFault(core_junction::PathFault) in "seamwright.junction",
    shown fault: fault.message();

    /// How: runs-behind, short-lap or open.
    failure(fault) -> String = name_of(&fault.failure)?;
    /// The sheet on top, or above the open stretch.
    upper(fault) -> String = fault.upper.clone();
    /// The sheet beneath, or below the open stretch.
    lower(fault) -> String = fault.lower.clone();
    /// Where on the slope: the upper edge that water runs behind, the lower edge of a short lap, the upper end of an open stretch.
    at(fault) -> Length = Length(fault.at);
    /// By how much a lap is short, or how long a stretch lies open; nothing where water runs behind.
    short(fault) -> Length = Length(fault.short);
    /// It in words.
    message(fault) -> String = fault.message();
    /// What cures it.
    cure(fault) -> String = fault.cure();
}

part! {
    /// Water on a solved section.
    WaterCheck(core_junction::WaterCheck) in "seamwright.junction",
    shown water: format_args!("{} paths, {} rows, {} cautions", water.paths.len(), water.rows.len(), water.cautions.len());

    /// The paths, one for each face and level.
    paths(water, here) -> Vec<FacePath> = here.all("paths", &water.paths);
    /// What keeps each row of fasteners dry.
    rows(water, here) -> Vec<RowShelter> = here.all("rows", &water.rows);
    /// What must be said of it.
    cautions(water) -> Vec<Caution> = cautions(&water.cautions);
    /// Whether every path holds and every row is sheltered.
    holds(water) -> bool = water.holds();
}

part! {
    /// The path of water on one face of a section, at one level.
    FacePath(core_junction::FacePath) in "seamwright.junction",
    shown path: format_args!("{}, {}, {} faults", name_of(&path.face)?, name_of(&path.level)?, path.check.faults.len());

    /// The face: ``first``, ``second`` or ``wall``.
    face(path) -> String = name_of(&path.face)?;
    /// Which way water runs on it: toward the line, away from it, or along it.
    water(path) -> String = name_of(&path.water)?;
    /// The level: ``metal`` or ``underlayment``.
    level(path) -> String = name_of(&path.level)?;
    /// The path.
    check(path, here) -> PathCheck = here.one("check", &path.check);
}

part! {
    /// What keeps a row of fasteners dry.
    RowShelter(core_junction::RowShelter) in "seamwright.junction",
    shown row: format_args!("{}, {}", row.name, tag_of(&row.shelter)?);

    /// The row, by its name in the section.
    name(row) -> String = row.name.clone();
    /// On which side: ``first``, ``second`` or ``riser``.
    side(row) -> String = name_of(&row.side)?;
    /// What keeps it dry: ``under`` a sheet, through a ``face`` that is turned down or plumb, ``raised`` on a flange, or ``none``.
    shelter(row) -> String = tag_of(&row.shelter)?;
    /// The sheet that lies over it.
    under(row) -> Option<String> = if let Shelter::Under(name) = &row.shelter { Some(name.clone()) } else { None };
    /// How far over the pan its flange is raised.
    raised(row) -> Option<Length> = if let Shelter::Raised(by) = &row.shelter { Some(Length(*by)) } else { None };
}
