//! The crew's sheet of a run of coping.

use super::crew_page::{CrewSheet, FastenerLine, MaterialLine, StrikeLine};
use super::crew_sheets::{bites, counted, note, steps};
use super::junction_drawing::JunctionDrawing;
use super::section_axis::{Other, SectionPlane};
use super::wording::{UP_OR_DOWN, directed};
use crate::assembly::CopingMeets;
use crate::error::Error;
use crate::job::{CopingItem, Packet};
use crate::junction::{LayoutLine, Levels, SectionKind, SectionWork, Side};
use crate::record::Calculation;
use crate::units::{Length, LengthFormat};

pub(super) fn drawing<'a>(packet: &Packet, coping: &'a CopingItem) -> Result<JunctionDrawing<'a>, Error> {
    let first = SectionPlane { rise: coping.coping.detail.fall.angle(), levels: Levels::default() };
    JunctionDrawing::new(&coping.name, &coping.section, first, Other::WallTop, packet.paperwork.small())
}

fn on(side: Side) -> &'static str {
    if side == Side::First { "roof side" } else { "outside" }
}

fn strike(format: LengthFormat, mark: &str, line: &LayoutLine) -> Result<StrikeLine, Error> {
    let from = match &line.datum {
        crate::junction::Datum::JunctionLine => "the wall's top edge".to_owned(),
        other => other.to_string(),
    };
    let strike = format!("{}, {}", line.name, on(line.side));
    let (distance, running) = (directed(format, UP_OR_DOWN, line.from_datum)?, directed(format, UP_OR_DOWN, line.from_line)?);
    Ok(StrikeLine { mark: mark.to_owned(), strike, from, distance, running, along_seam: String::new() })
}

pub(super) fn crew_sheet(packet: &Packet, coping: &CopingItem, drawing: &JunctionDrawing<'_>) -> Result<CrewSheet, Error> {
    let (long, format) = (packet.paperwork.lengths, packet.paperwork.small());
    let (run, made) = (&coping.run, &coping.pieces);
    let title = format!("{}, {}: {}", coping.name, run.walls.join(" and "), long.string(run.length)?);
    let mut sheet = CrewSheet { title, job: packet.job.clone(), ..CrewSheet::default() };
    sheet.drawings = vec![drawing.clone().for_sheet().figure(Length::micrometres(185_000), Length::micrometres(92_000))?.svg()?];
    for (key, line) in drawing.lines().iter().zip(&coping.section.lines) {
        let line = strike(format, &key.mark, line)?;
        // Where both faces strike it alike it is lettered once.
        match sheet.lines.iter_mut().find(|l| l.mark == line.mark) {
            Some(same) if (&same.distance, &same.running) == (&line.distance, &line.running) => {
                same.strike = same.strike.replace(", roof side", ", both faces")
            }
            _ => sheet.lines.push(line),
        }
    }
    for row in &made.screws {
        sheet.fasteners.push(FastenerLine {
            what: format!("{}, {}, {}", row.name, on(row.side), bites(row.bites)),
            start: "by the stretch".to_owned(),
            spacing: format!("at most {}", format.string(row.spacing)?),
            count: row.count.to_string(),
            end: String::new(),
            engineered: row.engineered,
        });
    }
    let mut add = |what: String, quantity: String| sheet.materials.push(MaterialLine { what, quantity });
    for trim in &packet.trims {
        for of in trim.runs.iter().filter(|r| r.line.is_none() && r.name == coping.name) {
            add(format!("{} {}", trim.mark, trim.name), counted(long, &of.pieces)?);
        }
    }
    for corner in packet.coping_corners.iter().filter(|c| c.runs.contains(&coping.name)) {
        let with = corner.runs.iter().find(|n| **n != coping.name).map_or(String::new(), |n| format!(" with {n}"));
        add(format!("{}, {}{with}", corner.name, corner.corner.kind.name()), "1 for both".to_owned());
    }
    for (what, n) in [("end cap", made.end_caps), ("end turned up against a wall", made.wall_ends)] {
        if n > 0 {
            add(what.to_owned(), n.to_string());
        }
    }
    add("bead at joints and ends".to_owned(), long.string((made.bead + made.end_bead).length()?)?);
    let work = SectionWork { kind: SectionKind::Coping, solved: &coping.section };
    sheet.steps = steps(&work.compute()?, drawing);
    sheet.steps.push(format!(
        "{} joints. Gap at each: {} when laid; over the year {} to {}.",
        made.joints,
        format.string(made.gap_when_laid)?,
        format.string(made.gap_least)?,
        format.string(made.gap_widest)?
    ));
    for (end, meets) in ["start", "end"].iter().zip(&run.ends) {
        sheet.steps.push(match meets {
            CopingMeets::Free => format!("At its {end}: a cap."),
            CopingMeets::Wall { wall } => format!("At its {end}: turned up against {wall}, behind what covers its face."),
            CopingMeets::Corner { corner } => {
                let piece = packet.coping_corners.get(*corner);
                let kind = piece.map_or("corner", |c| c.corner.kind.name());
                let leg = piece.and_then(|c| c.runs.iter().position(|n| *n == coping.name).and_then(|k| c.legs.get(k)));
                format!("At its {end}: {kind}, {} of this run.", leg.map_or(Ok(String::new()), |l| format.string(*l))?)
            }
        });
    }
    for tee in &run.tees {
        sheet.steps.push(format!("A tee {} from its start, on the {}.", long.string(tee.at)?, on(tee.side)));
    }
    for c in coping.section.cautions.iter().chain(&made.cautions) {
        note(format, c, &mut sheet)?;
    }
    sheet.site_cautions = packet.site.iter().map(ToString::to_string).collect();
    Ok(sheet)
}
