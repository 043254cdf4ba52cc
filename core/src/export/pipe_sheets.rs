//! The crew's sheet of a pipe.

use super::crew_page::{CrewSheet, FastenerLine, MaterialLine, StrikeLine};
use super::crew_sheets::{bites, note, steps};
use super::junction_drawing::JunctionDrawing;
use super::section_axis::{Other, SectionPlane};
use super::wording::{UP_OR_DOWN, directed};
use crate::error::{Error, ErrorKind};
use crate::job::{Packet, PipeItem};
use crate::junction::{Bites, FixedLine, Levels, SectionKind, SectionWork};
use crate::record::Calculation;
use crate::units::Length;

pub(super) fn drawing<'a>(packet: &Packet, pipe: &'a PipeItem, levels: Levels) -> Result<JunctionDrawing<'a>, Error> {
    let plane = SectionPlane { rise: pipe.pipe.pitch.angle(), levels };
    JunctionDrawing::new(&pipe.name, &pipe.made.section, plane, Other::Plane(plane), packet.paperwork.small())
}

/// The layers of the deck that a pipe goes through: every section of the packet stands on the same, but for what builds a deck up.
pub(super) fn levels(packet: &Packet) -> Result<Levels, Error> {
    let first = packet.junctions.first().map(|j| Levels { built_up: Length::ZERO, ..j.first.levels });
    first.ok_or_else(|| Error::new(ErrorKind::Missing, "a packet without a line has no section to show a pipe in").at("junctions"))
}

pub(super) fn crew_sheet(packet: &Packet, item: &PipeItem, drawing: &JunctionDrawing<'_>) -> Result<CrewSheet, Error> {
    let (long, format) = (packet.paperwork.lengths, packet.paperwork.small());
    let (pipe, made) = (&item.pipe, &item.made);
    let plane = packet.planes.get(item.plane).map_or("", |p| p.name.as_str());
    let numbers = item.panels.iter().map(|n| (n + 1).to_string()).collect::<Vec<_>>().join(", ");
    let title = format!("{}, {plane}, panel {numbers}", item.name);
    let mut sheet = CrewSheet { title, job: packet.job.clone(), ..CrewSheet::default() };
    sheet.drawings = vec![drawing.clone().for_sheet().figure(Length::micrometres(185_000), Length::micrometres(76_000))?.svg()?];
    let across = |what: &str, from: &str, distance: Length| -> Result<StrikeLine, Error> {
        let distance = format.string(distance)?;
        Ok(StrikeLine {
            mark: String::new(),
            strike: what.to_owned(),
            from: from.to_owned(),
            distance: distance.clone(),
            running: distance,
            along_seam: String::new(),
        })
    };
    let middle = across("the pipe's middle, across", "the left seam of the panel", pipe.from_seam)?;
    let up = long.string(item.above_end)?;
    let foot = item.foot.as_str();
    sheet.lines = vec![
        StrikeLine { running: String::new(), ..middle },
        StrikeLine { strike: "the pipe's middle, up".into(), from: format!("{foot}, along the seam"), distance: format!("{up} up"), ..StrikeLine::default() },
    ];
    for (key, line) in drawing.lines().iter().zip(&made.section.lines) {
        let from = if line.datum == crate::junction::Datum::JunctionLine { "the pipe's middle".to_owned() } else { line.datum.to_string() };
        let (distance, running) = (directed(format, UP_OR_DOWN, line.from_datum)?, directed(format, UP_OR_DOWN, line.from_line)?);
        sheet.lines.push(StrikeLine { mark: key.mark.clone(), strike: line.name.to_string(), from, distance, running, along_seam: String::new() });
    }
    let half = |l: Length| l.station(1, 2);
    sheet.lines.push(across("hole, each side", "the pipe's middle", half(made.hole_across)?)?);
    sheet.lines.push(across("base, each side", "the pipe's middle", half(made.base_across)?)?);
    sheet.fasteners.push(FastenerLine {
        what: format!("screws of the base, {}", bites(Bites::Panel)),
        start: format!("{} from its edge", format.string(pipe.base.screws_from_edge)?),
        spacing: format!("at most {}", format.string(pipe.base.screws.spacing)?),
        count: made.screws.to_string(),
        end: String::new(),
        engineered: made.engineered,
    });
    let mut add = |what: String, quantity: String| sheet.materials.push(MaterialLine { what, quantity });
    let size = format!("{} by {}", format.string(made.base_across)?, format.string((made.base_down + made.base_up).length()?)?);
    add(format!("boot with a {} base, {size}", pipe.base.shape.word()), "1".into());
    add(format!("tape under the base, {} wide", format.string(pipe.base.tape_width)?), long.string(made.tape)?);
    add("bead and clamp around the collar".into(), long.string(made.collar)?);
    let work = SectionWork { kind: SectionKind::Pipe, solved: &made.section };
    sheet.steps = steps(&work.compute()?, drawing);
    let fixed = if pipe.fixed == FixedLine::Above { "above" } else { "below" };
    let [left, right] = made.to_seam;
    sheet.steps.push(format!(
        "The panel is fixed {} {fixed}. From the base to the seams: {} on the left, {} on the right.",
        long.string(pipe.to_fixed)?,
        format.string(left)?,
        format.string(right)?
    ));
    for c in &made.section.cautions {
        note(format, c, &mut sheet)?;
    }
    sheet.site_cautions = packet.site.iter().map(ToString::to_string).collect();
    Ok(sheet)
}
