//! The crew's sheet of each line of a packet.

use super::crew_joints;
use super::crew_page::{CautionNote, CrewSheet, FastenerLine, MaterialLine, StrikeLine};
use super::crew_water;
use super::junction_drawing::JunctionDrawing;
use super::line_plan::{LinePlan, PlanSide};
use super::pan_plan;
use super::section_axis::{Other, SectionPlane};
use super::wording::{caution, skew_total, struck_distance};
use crate::assembly::cautions::{PLUG_SEAMS, ROW_NOT_ENGINEERED};
use crate::assembly::{BayEnd, StruckLine};
use crate::error::Error;
use crate::job::{CapHand, JunctionItem, Packet, SectionSide};
use crate::junction::{Bites, Datum, Side, WorkStep};
use crate::panel::Reach;
use crate::record::Caution;
use crate::roof::{LineKind, Water};
use crate::units::{Angle, Length, LengthFormat, Temperature, TemperatureScale};

fn section_plane(side: SectionSide) -> SectionPlane {
    SectionPlane { rise: side.rise, levels: side.levels }
}

/// What stands on the second side, where no plane does.
fn other(junction: &JunctionItem) -> Other {
    match (junction.second, junction.kind) {
        (Some(side), _) => Other::Plane(section_plane(side)),
        (None, LineKind::Headwall | LineKind::Sidewall | LineKind::CurbFront | LineKind::CurbSide | LineKind::CurbBack) => Other::Wall,
        (None, LineKind::Eave | LineKind::Rake | LineKind::HighEdge) => Other::Fascia { fall: Angle::SQUARE },
        (None, _) => Other::Nothing,
    }
}

/// The drawing of a line's section.
pub(super) fn drawing<'a>(packet: &Packet, junction: &'a JunctionItem) -> Result<JunctionDrawing<'a>, Error> {
    JunctionDrawing::new(&junction.name, &junction.section, section_plane(junction.first), other(junction), packet.paperwork.small())?
        .struck(&junction.along.struck)
}

/// The sheet of one line, with its section's drawing.
pub(super) fn crew_sheet(packet: &Packet, junction: &JunctionItem, drawing: &JunctionDrawing<'_>) -> Result<CrewSheet, Error> {
    let (long, format) = (packet.paperwork.lengths, packet.paperwork.small());
    let planes: Vec<&str> =
        [Some(junction.first), junction.second].into_iter().flatten().filter_map(|s| packet.planes.get(s.plane).map(|p| p.name.as_str())).collect();
    let title = format!("{}, {}: {}", junction.name, planes.join(" to "), long.string(junction.along.length)?);
    // A transition is long: smaller than this its drawing could not be read.
    let height = if junction.kind.parts_a_slope() { 118_000 } else { 82_000 };
    let mut sheet = CrewSheet { title, job: packet.job.clone(), ..CrewSheet::default() };
    sheet.drawings = vec![drawing.clone().for_sheet().figure(Length::micrometres(185_000), Length::micrometres(height))?.svg()?];
    for (key, struck) in drawing.lines().iter().zip(&junction.along.struck) {
        // Where both sides strike it alike it is lettered once.
        if sheet.lines.iter().any(|l| l.mark == key.mark) {
            continue;
        }
        let mut line = strike(format, junction.kind, &key.mark, struck)?;
        if let Some(lower) = junction.along.struck_lower.iter().find(|l| (l.order, l.side) == (struck.order, struck.side) && l.from_line != struck.from_line) {
            let lower = strike(format, junction.kind, &key.mark, lower)?;
            line.distance = at_both_ends(&line.distance, &lower.distance);
            line.running = at_both_ends(&line.running, &lower.running);
            line.along_seam = at_both_ends(&line.along_seam, &lower.along_seam);
        }
        sheet.lines.push(line);
    }
    sheet.line_plan = line_plan(packet, junction, drawing, format)?;
    fasteners(format, junction, &mut sheet)?;
    materials(packet, junction, &mut sheet)?;
    sheet.steps = steps(&junction.work, drawing);
    sheet.steps.extend(movement(packet, junction, format)?);
    sheet.steps.extend(crew_joints::steps(packet, junction, format)?);
    sheet.water = crew_water::lines(packet, junction, format)?;
    let seals: Vec<_> = junction.sealed.iter().filter_map(crate::assembly::SideSeal::caution).collect();
    for c in junction.section.cautions.iter().chain(&junction.along.cautions).chain(&junction.water.cautions).chain(&seals) {
        // The materials count the plugs: they are not said twice.
        if c.code() != PLUG_SEAMS {
            note(format, c, &mut sheet)?;
        }
    }
    sheet.site_cautions = packet.site.iter().map(ToString::to_string).collect();
    Ok(sheet)
}

/// Adds a caution once.
pub(super) fn note(format: LengthFormat, c: &Caution, sheet: &mut CrewSheet) -> Result<(), Error> {
    // The column of the table says which rows are not engineered.
    if c.code() == ROW_NOT_ENGINEERED {
        return Ok(());
    }
    let note = CautionNote { number: c.code().number, text: caution(format, c)?, source: c.source().to_string() };
    if !sheet.cautions.contains(&note) {
        sheet.cautions.push(note);
    }
    Ok(())
}

/// The pieces of one length together, in the order in which they come.
pub(super) fn counted(format: LengthFormat, pieces: &[Length]) -> Result<String, Error> {
    let mut out: Vec<(Length, usize)> = Vec::new();
    for piece in pieces {
        match out.iter_mut().find(|(length, _)| length == piece) {
            Some((_, n)) => *n += 1,
            None => out.push((*piece, 1)),
        }
    }
    let out = out.into_iter().map(|(length, n)| Ok(format!("{n} of {}", format.string(length)?))).collect::<Result<Vec<_>, Error>>()?;
    Ok(out.join(", "))
}

/// An order of work, each step with the letters of the lines that are struck for it.
pub(super) fn steps(work: &[WorkStep], drawing: &JunctionDrawing<'_>) -> Vec<String> {
    let keys = drawing.lines();
    let mut out = Vec::with_capacity(work.len());
    for step in work {
        let mut marks: Vec<&str> = step.lines.iter().filter_map(|i| keys.get(*i)).map(|k| k.mark.as_str()).collect();
        marks.sort_unstable();
        marks.dedup();
        let lines = match marks.len() {
            0 => String::new(),
            1 => format!(" Line {}.", marks.join("")),
            _ => format!(" Lines {}.", marks.join(", ")),
        };
        out.push(format!("{}{lines}", step.does));
    }
    out
}

/// The plan of what is struck along the line, where anything is.
fn line_plan(packet: &Packet, junction: &JunctionItem, drawing: &JunctionDrawing<'_>, format: LengthFormat) -> Result<Option<String>, Error> {
    if junction.along.struck.is_empty() {
        return Ok(None);
    }
    let mut sides = Vec::new();
    for (side, plane) in [(Side::First, Some(junction.first.plane)), (Side::Second, junction.second.map(|s| s.plane))] {
        let line = packet.roof.lines().get(junction.line);
        let (Some(plane), Some(line)) = (plane, line) else { continue };
        let (Some(of), Some(end), Some(lay)) = (line.sides().find(|s| s.plane == plane), junction.section.end(side), packet.planes.get(plane)) else {
            continue;
        };
        let panels_from = match end.reach {
            Reach::HoldBack(l) if of.water == Water::Away || matches!(junction.kind, LineKind::Sidewall | LineKind::CurbSide) => (-l).length()?,
            Reach::Overhang(l) if of.water == Water::Toward => (-l).length()?,
            Reach::HoldBack(l) | Reach::Overhang(l) => l,
        };
        sides.push(PlanSide { side, name: &lay.name, skew: of.skew, panels_from });
    }
    LinePlan::new(&junction.name, junction.kind, &junction.along.struck, &drawing.lines(), sides, format)?.svg().map(Some)
}

/// The gap at the day of laying and how far each side's panel ends travel at this line, where movement was worked out.
fn movement(packet: &Packet, junction: &JunctionItem, format: LengthFormat) -> Result<Vec<String>, Error> {
    let mut out = Vec::new();
    for side in [Some(junction.first), junction.second].into_iter().flatten() {
        let (Some(lay), Some(heat)) = (packet.planes.get(side.plane), packet.heat.get(side.plane)) else { continue };
        for end in heat.movement.iter().flat_map(|m| &m.ends).filter(|e| lay.lines.get(e.edge) == Some(&junction.line)) {
            let travel = format.string(end.travel)?;
            out.push(match &end.verdict {
                Some(verdict) => {
                    let laid = packet.temperatures.map_or(String::new(), |t| format!(", metal at {}", temperature(format, t.laid)));
                    let holds = if verdict.holds { "the fold holds" } else { "THE FOLD DOES NOT HOLD" };
                    format!("Gap at the fold on {}: {} when laid{laid}. The ends travel {travel} over the year; {holds}.", lay.name, format.string(end.gap)?)
                }
                None => format!("The ends on {} travel {travel} over the year: leave them free.", lay.name),
            });
        }
    }
    Ok(out)
}

/// To the degree, in the scale of the notation's system.
pub(super) fn temperature(format: LengthFormat, temperature: Temperature) -> String {
    let scale = if format.is_inch() { TemperatureScale::Fahrenheit } else { TemperatureScale::Celsius };
    format!("{:.0} {}", temperature.get(scale), scale.symbol())
}

fn strike(format: LengthFormat, kind: LineKind, mark: &str, line: &StruckLine) -> Result<StrikeLine, Error> {
    // From a trim's top edge the section counts down the slope.
    let up = if line.datum == Datum::TrimTopEdge { (-line.from_datum.read).length()? } else { line.from_datum.read };
    let distance = |l| struck_distance(format, kind, line.side, l);
    let running = distance(line.from_line.read)?;
    let along_seam = skew_total(line).map_or(Ok(String::new()), |seam| format.string(seam.max((-seam).length()?)))?;
    // Each surface of a step is measured from a line of its own.
    let from = match (kind, line.side, &line.datum) {
        (LineKind::Step, Side::First, Datum::JunctionLine) => "the riser's foot".to_owned(),
        (LineKind::Step, _, Datum::JunctionLine) => "the upper deck's edge".to_owned(),
        (_, _, datum) => datum.to_string(),
    };
    Ok(StrikeLine { mark: mark.to_owned(), strike: line.name.clone(), from, distance: distance(up)?, running, along_seam })
}

/// A figure at the line's upper and lower end: once where they are one.
fn at_both_ends(upper: &str, lower: &str) -> String {
    if upper == lower { upper.to_owned() } else { format!("at the top {upper}; at the foot {lower}") }
}

pub(super) fn bites(bites: Bites) -> &'static str {
    match bites {
        Bites::Structure => "into the structure",
        Bites::Panel => "into the panel alone",
        Bites::Slot => "through slots",
        Bites::Trim => "through sheets",
    }
}

fn fasteners(format: LengthFormat, junction: &JunctionItem, sheet: &mut CrewSheet) -> Result<(), Error> {
    for row in &junction.along.rows {
        let what = format!("{}, {}", row.name, bites(row.bites));
        let spacing = format.string(row.spacing)?;
        let line = match &row.stations {
            Some(stations) => {
                let crew = stations.crew();
                // What the crew sets out: equal spaces of the run itself, no wider than the row allows.
                let spacing = crew.spacing.map_or(Ok(spacing), |s| format.string(s))?;
                FastenerLine {
                    what,
                    start: format.string(crew.start)?,
                    spacing,
                    count: crew.count.to_string(),
                    end: format.string(crew.end_distance)?,
                    engineered: row.engineered,
                }
            }
            None => FastenerLine {
                what,
                start: "by the bay".to_owned(),
                spacing: format!("at most {spacing}"),
                count: row.count.to_string(),
                end: String::new(),
                engineered: row.engineered,
            },
        };
        match sheet
            .fasteners
            .iter_mut()
            .find(|l| (&l.what, &l.start, &l.spacing, &l.end, l.engineered) == (&line.what, &line.start, &line.spacing, &line.end, line.engineered))
        {
            // The same row on both sides is one line of the table.
            Some(same) => same.count = format!("{} + {}", same.count, line.count),
            None => sheet.fasteners.push(line),
        }
    }
    Ok(())
}

fn materials(packet: &Packet, junction: &JunctionItem, sheet: &mut CrewSheet) -> Result<(), Error> {
    let (long, format) = (packet.paperwork.lengths, packet.paperwork.small());
    // The same on both sides is one line of the table.
    let mut add = |what: String, quantity: String| match sheet.materials.iter_mut().find(|m| m.what == what) {
        Some(same) => same.quantity = format!("{} + {quantity}", same.quantity),
        None => sheet.materials.push(MaterialLine { what, quantity }),
    };
    for trim in &packet.trims {
        for run in trim.runs.iter().filter(|r| r.line == Some(junction.line)) {
            let tapers = match trim.tapered.as_ref().and_then(|t| Some((t.pieces.first()?, t.pieces.last()?))) {
                Some((low, high)) => {
                    format!(
                        ", tapered from a girth of {} up to {}, in this order",
                        format.string(low.trim.near.girth())?,
                        format.string(high.trim.far.girth())?
                    )
                }
                None => String::new(),
            };
            let joints = if trim.gap.is_positive() { format!("butted, gap {}", format.string(trim.gap)?) } else { format!("lap {}", format.string(trim.lap)?) };
            add(format!("{} {}, {joints}{tapers}", trim.mark, trim.name), counted(long, &run.pieces)?);
        }
    }
    for item in packet.kick_outs.iter().filter(|k| k.lines.contains(&junction.name)) {
        let asked = &item.piece.asked;
        let (thrown, past) = (format.string(asked.detail.throw)?, format.string(asked.detail.past_eave)?);
        let end = format!("its outer end {thrown} from the wall and {past} past the panels' ends");
        add(format!("{} kick-out, {end}; up under the flashing {}", item.mark, format.string(item.piece.upper)?), "1".to_owned());
    }
    for cap in packet.end_caps.iter().filter(|c| c.line == junction.line) {
        let hand = if cap.hand == CapHand::Either { String::new() } else { format!(", {}", cap.hand.name()) };
        if let Some(piece) = &cap.piece {
            add(format!("{piece} end cap to {} {}{hand}", cap.mark, cap.trim), "1".to_owned());
        }
    }
    if let Some(cut) = &junction.pan_end {
        for (name, leg) in [("first", &cut.first), ("second", &cut.second)] {
            let on = pan_plan::on(leg.on);
            let below = |at: Length| pan_plan::below(format, at);
            let fold = if leg.fold == Length::ZERO { String::new() } else { format!(", of which {} is folded under", format.string(leg.fold_along)?) };
            let what = format!(
                "the pan's lower end, {name} side, {on}: cut from {} the end of the line at its centreline to {} it at its edge{fold}",
                below(leg.at_centre)?,
                below(leg.at_edge)?
            );
            add(what, format!("{} of cut", format.string(leg.cut)?));
        }
    }
    for row in &junction.along.closures {
        for group in &row.list.groups {
            let ends = match (group.left, group.right) {
                (BayEnd::Seam, BayEnd::Seam) => "",
                _ => ", one end cut on the roof",
            };
            let skew = group.piece.flange_cut.degrees();
            let cut = if (skew - 90.0).abs() < 1e-9 { String::new() } else { format!(", flange cut at {skew:.1} deg") };
            add(format!("closure {}, web {}{cut}{ends}", format.string(group.piece.length)?, format.string(group.piece.web_height)?), group.count.to_string());
        }
    }
    for tape in &junction.along.tapes {
        let over = if tape.over_seams { ", over the seams" } else { "" };
        add(format!("{}, {} wide{over}", tape.name, format.string(tape.width)?), long.string(tape.length)?);
    }
    for bead in &junction.along.beads {
        add(format!("{}, {} by {}", bead.name, format.string(bead.width)?, format.string(bead.depth)?), long.string(bead.length)?);
    }
    for plugs in junction.along.plugs.iter().filter(|p| p.count > 0) {
        add("seam plugs".to_owned(), plugs.count.to_string());
    }
    Ok(())
}
