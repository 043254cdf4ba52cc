//! The files of a packet: named bytes, which the caller writes.

use super::blank_drawing::BlankDrawing;
use super::coping_sheets;
use super::course_list::course_list_csv;
use super::crew_page::{CrewSheet, crew_page_html};
use super::crew_sheets::{crew_sheet, drawing};
use super::dxf::DrawingUnit;
use super::junction_drawing::JunctionDrawing;
#[cfg(feature = "serde")]
use super::length_list::panel_rows_json;
use super::length_list::{PanelRow, panel_rows_csv};
use super::mark_list::{creep_checks_csv, seam_marks_csv};
use super::order_list::order_list_csv;
use super::pan_plan::PanPlan;
use super::pipe_sheets;
use super::plan::marked_plan_svg;
use super::plan_marks;
use super::svg::PaperUnit;
use super::trim_drawing::TrimDrawing;
use super::wording::{caution, file_stem};
use super::worksheet::worksheet_markdown;
use crate::error::Error;
use crate::job::{ListColumn, ListField, Packet, Paper, TrimItem};
use crate::record::{Entry, Worksheet};
use crate::roof::LineKind;
use crate::units::Length;
use std::collections::BTreeMap;
use std::fmt::Write;

/// A file of the packet: its name, folders and all, with `/` between them, and its bytes.
///
/// ```
/// use seamwright::export::Artefact;
/// let list = Artefact { name: "lists/panels.csv".into(), bytes: b"mark\r\n".to_vec() };
/// assert!(list.name.ends_with(".csv"));
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Artefact {
    /// Its name in the packet's folder.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

/// Every file of a packet: `packet.json` where the crate writes JSON, the length list and the order as CSV, the plan of the roof, a crew sheet for each
/// line, each trim's section and flat as SVG and its flat as DXF, the cautions with their sources, and, with a worksheet, the working for the office.
/// The same packet gives the same bytes.
///
/// # Errors
/// Those of the writers, with the line or trim that they speak of.
///
/// ```
/// use seamwright::export::packet_files;
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let (packet, worksheet) = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.explain()?;
/// let files = packet_files(&packet, Some(&worksheet))?;
/// assert!(files.iter().any(|f| f.name == "lists/panels.csv") && files.iter().any(|f| f.name == "crew/ridge-1.html"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn packet_files(packet: &Packet, worksheet: Option<&Worksheet>) -> Result<Vec<Artefact>, Error> {
    let mut out = Vec::new();
    let mut add = |name: String, bytes: Vec<u8>| out.push(Artefact { name, bytes });
    #[cfg(feature = "serde")]
    add("packet.json".into(), json(packet)?);
    let format = packet.paperwork.lengths;
    lists(packet, &mut add)?;
    add("lists/order.csv".into(), order_list_csv(&packet.order, format)?);
    add("plan.svg".into(), plan(packet)?.into_bytes());
    for junction in &packet.junctions {
        let about = |e: Error| e.about(&junction.name);
        let drawing = drawing(packet, junction).map_err(about)?;
        let sheet = crew_sheet(packet, junction, &drawing).map_err(about)?;
        sheets(packet, &junction.name, &sheet, &drawing, &mut add).map_err(about)?;
        if junction.kind == LineKind::Valley {
            // The section is seen along its line: from its lower end up, or from behind.
            let first_on_left = packet.roof.lines().get(junction.line).is_none_or(|l| l.start.z <= l.end.z);
            let plan =
                PanPlan { title: &junction.name, solved: &junction.section, end: junction.pan_end.as_ref(), first_on_left, format: packet.paperwork.small() };
            add(format!("junctions/{}-pan.svg", file_stem(&junction.name)), plan.svg().map_err(about)?.into_bytes());
        }
    }
    for coping in &packet.copings {
        let about = |e: Error| e.about(&coping.name);
        let drawing = coping_sheets::drawing(packet, coping).map_err(about)?;
        let sheet = coping_sheets::crew_sheet(packet, coping, &drawing).map_err(about)?;
        sheets(packet, &coping.name, &sheet, &drawing, &mut add).map_err(about)?;
    }
    for pipe in &packet.pipes {
        let about = |e: Error| e.about(&pipe.name);
        let drawing = pipe_sheets::drawing(packet, pipe, pipe_sheets::levels(packet)?).map_err(about)?;
        let sheet = pipe_sheets::crew_sheet(packet, pipe, &drawing).map_err(about)?;
        sheets(packet, &format!("pipe {}", pipe.name), &sheet, &drawing, &mut add).map_err(about)?;
    }
    for trim in &packet.trims {
        trim_files(packet, trim, &mut add).map_err(|e| e.about(&trim.mark))?;
    }
    let kick_outs = packet.kick_outs.iter().map(|k| (&k.mark, "kick-out", "kick-out".to_owned(), &k.piece.blank));
    let caps = packet.cap_pieces.iter().map(|c| (&c.mark, "end-cap", format!("end cap to {} {}", c.trim_mark, c.trim), &c.made.blank));
    for (mark, kind, what, blank) in kick_outs.chain(caps) {
        let (name, format) = (format!("{mark} {what}"), packet.paperwork.small());
        let (drawing, stem) = (BlankDrawing::new(&name, blank, format), format!("trims/{mark}-{kind}"));
        let unit = if format.is_inch() { DrawingUnit::Inch } else { DrawingUnit::Millimetre };
        add(format!("{stem}.svg"), drawing.svg().map_err(|e| e.about(mark))?.into_bytes());
        add(format!("{stem}.dxf"), drawing.dxf(unit).map_err(|e| e.about(mark))?);
    }
    add("office/cautions.md".into(), cautions(packet)?.into_bytes());
    for (name, part) in worksheet.map(|w| office(packet, w)).unwrap_or_default() {
        add(format!("office/{name}.md"), worksheet_markdown(&part).into_bytes());
    }
    Ok(out)
}

/// A crew sheet and its section, by the name of what they show.
fn sheets(packet: &Packet, name: &str, sheet: &CrewSheet, drawing: &JunctionDrawing<'_>, add: &mut impl FnMut(String, Vec<u8>)) -> Result<(), Error> {
    let stem = file_stem(name);
    add(format!("crew/{stem}.html"), crew_page_html(sheet, packet.paperwork.paper)?);
    add(format!("junctions/{stem}.svg"), drawing.svg()?.into_bytes());
    Ok(())
}

#[cfg(feature = "serde")]
fn json(packet: &Packet) -> Result<Vec<u8>, Error> {
    let mut bytes =
        serde_json::to_vec_pretty(packet).map_err(|e| Error::new(crate::error::ErrorKind::Internal, "the packet could not be written as JSON").value_of(e))?;
    bytes.push(b'\n');
    Ok(bytes)
}

fn column(heading: &'static str, field: ListField) -> ListColumn {
    ListColumn { heading: heading.into(), field }
}

/// The job's own columns, or the usual ones.
fn panel_columns(packet: &Packet) -> Vec<ListColumn> {
    if !packet.columns.is_empty() {
        return packet.columns.clone();
    }
    let format = packet.paperwork.lengths;
    vec![
        column("mark", ListField::Mark),
        column("pieces", ListField::Count),
        column("order length", ListField::OrderLength(format)),
        column("covers", ListField::Width(packet.paperwork.small())),
        column("total", ListField::Total(format)),
        column("plane", ListField::Plane),
    ]
}

/// The list of marks, in columns that a grouped list has; then, where the job asks for it, every piece in the order of laying, and the marks of the seams.
fn lists(packet: &Packet, add: &mut impl FnMut(String, Vec<u8>)) -> Result<(), Error> {
    let (format, small) = (packet.paperwork.lengths, packet.paperwork.small());
    let columns = panel_columns(packet);
    let grouped = || packet.planes.iter().flat_map(PanelRow::groups);
    add("lists/panels.csv".into(), panel_rows_csv(grouped(), &columns)?);
    #[cfg(feature = "serde")]
    if !packet.columns.is_empty() {
        add("lists/panels.json".into(), panel_rows_json(grouped(), &columns)?);
    }
    if packet.planes.iter().any(|p| p.listed.is_some()) {
        let columns = [
            column("plane", ListField::Plane),
            column("panel", ListField::Panel),
            column("piece", ListField::Piece),
            column("mark", ListField::Mark),
            column("order length", ListField::OrderLength(format)),
            column("covers", ListField::Width(small)),
            column("edge", ListField::Edge),
            column("lower end above the plane's foot", ListField::Low(format)),
            column("bundle", ListField::Bundle),
            column("shared blank", ListField::Blank),
        ];
        add("lists/pieces.csv".into(), panel_rows_csv(packet.planes.iter().flat_map(PanelRow::pieces), &columns)?);
    }
    if let Some(plan) = &packet.underlayment {
        add("lists/underlayment.csv".into(), course_list_csv(plan, format)?);
    }
    if packet.planes.iter().any(|p| p.marks.is_some()) {
        add("lists/seam-marks.csv".into(), seam_marks_csv(&packet.planes, format)?);
    }
    if packet.planes.iter().filter_map(|p| p.marks.as_ref()).any(|m| !m.checks.is_empty()) {
        add("lists/creep-checks.csv".into(), creep_checks_csv(&packet.planes, format)?);
    }
    Ok(())
}

/// The longer side of the plan's figure: what an upright sheet of the job's paper leaves.
fn plan(packet: &Packet) -> Result<String, Error> {
    let laid: Vec<_> = packet.planes.iter().map(|p| Some(&p.laid)).collect();
    let figure = match packet.paperwork.paper {
        Paper::Letter => Length::micrometres(185_000),
        Paper::A4 => Length::micrometres(180_000),
    };
    marked_plan_svg(&packet.job, &packet.roof, &laid, &plan_marks::of(packet)?, figure, PaperUnit::Millimetre, packet.paperwork.lengths)
}

fn trim_files(packet: &Packet, trim: &TrimItem, add: &mut impl FnMut(String, Vec<u8>)) -> Result<(), Error> {
    let format = packet.paperwork.small();
    let name = format!("{} {}", trim.mark, trim.name);
    let stem = format!("trims/{}-{}", trim.mark, file_stem(&trim.name));
    let drawing = TrimDrawing::new(&name, &trim.profile, trim.flat.rule(), format)?;
    add(format!("{stem}-section.svg"), drawing.section_svg()?.into_bytes());
    add(format!("{stem}-flat.svg"), drawing.flat_svg()?.into_bytes());
    let unit = if format.is_inch() { DrawingUnit::Inch } else { DrawingUnit::Millimetre };
    if let Some(tapered) = &trim.tapered {
        // Each piece has a blank of its own, numbered from the lower end of the run up.
        for (k, piece) in tapered.pieces.iter().enumerate() {
            let name = format!("{name}, piece {} from the lower end", k + 1);
            let blank = BlankDrawing::of_taper(&name, &piece.trim, format);
            add(format!("{stem}-piece-{}.svg", k + 1), blank.svg()?.into_bytes());
            add(format!("{stem}-piece-{}.dxf", k + 1), blank.dxf(unit)?);
        }
        return Ok(());
    }
    // One flat of the longest piece: shorter ones are cut from the same girth.
    let piece = trim.runs.iter().flat_map(|r| &r.pieces).copied().max().unwrap_or_default();
    add(format!("{stem}-flat.dxf"), drawing.flat_dxf(unit, piece)?);
    Ok(())
}

/// What is said, with its source, and of what.
type Said<'a> = BTreeMap<(String, String), Vec<&'a str>>;

/// Every caution once, with the places it speaks of and its source, and the cautions of every site.
fn cautions(packet: &Packet) -> Result<String, Error> {
    let format = packet.paperwork.small();
    let s = &packet.summary;
    let mut out = format!("# Cautions: {}\n\n## On every site\n\n", packet.job);
    for site in &packet.site {
        let _ = writeln!(out, "- {site}");
    }
    let _ = writeln!(
        out,
        "\n## What the figures rest on\n\n| source | figures |\n|---|---|\n| published, seen as text | {} |\n| published, through another document | {} |\n| published, from memory: confirm before metal is cut | {} |\n| derived | {} |\n| common practice, no published source | {} |\n| the engineer | {} |\n| the caller | {} |",
        s.sources.text, s.sources.secondary, s.sources.memory, s.sources.derived, s.sources.common_practice, s.sources.engineer, s.sources.user
    );
    let _ = writeln!(
        out,
        "\nRows of fasteners and clips with an engineer's spacing: {}; **not engineered: {}** (caution 7001 names each).\n\n## Of this job",
        s.engineered_rows, s.not_engineered_rows
    );
    let mut by_code: BTreeMap<(u16, &str), Said<'_>> = BTreeMap::new();
    for c in &packet.cautions {
        let said = (caution(format, c)?, c.source().to_string());
        by_code.entry((c.code().number, c.code().name)).or_default().entry(said).or_default().push(c.subject());
    }
    for ((number, name), said) in by_code {
        let _ = writeln!(out, "\n### {number} {name}\n");
        for ((message, source), subjects) in said {
            let _ = writeln!(out, "- {message} ({source})\n  - {}", subjects.join("; "));
        }
    }
    Ok(out)
}

/// The parts of a worksheet by what they speak of: a line, a plane, or the roof and the job as a whole.
fn office(packet: &Packet, worksheet: &Worksheet) -> BTreeMap<String, Worksheet> {
    let mut out: BTreeMap<String, Worksheet> = BTreeMap::new();
    for entry in &worksheet.entries {
        let title = match entry {
            Entry::Part(part) => part.title.as_str(),
            Entry::Step(_) => "",
        };
        let is_of = |name: &str| title.strip_suffix(name).is_some_and(|before| before.ends_with(' '));
        let apart = packet.copings.iter().map(|c| c.name.as_str()).chain(packet.pipes.iter().map(|p| p.name.as_str()));
        let line = packet.junctions.iter().map(|j| j.name.as_str()).chain(apart).filter(|n| is_of(n)).max_by_key(|n| n.len());
        let plane = packet.planes.iter().map(|p| p.name.as_str()).filter(|n| title.contains(n)).max_by_key(|n| n.len());
        let (name, head) = match (line, plane) {
            (Some(line), _) => (format!("lines/{}", file_stem(line)), line),
            (None, Some(plane)) => (format!("planes/{}", file_stem(plane)), plane),
            (None, None) if packet.trims.iter().any(|t| title.starts_with(&format!("{}, ", t.mark))) => ("trims".to_owned(), "trims"),
            (None, None) => ("roof".to_owned(), "roof"),
        };
        out.entry(name).or_insert_with(|| Worksheet::new(format!("{}: {head}", packet.job))).entries.push(entry.clone());
    }
    out
}

/// The packet in a few lines, for a terminal or a covering note.
///
/// # Errors
/// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) for a length that the job's notation cannot show.
///
/// ```
/// use seamwright::export::packet_summary;
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// assert!(packet_summary(&packet)?.contains("panels"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn packet_summary(packet: &Packet) -> Result<String, Error> {
    let (s, format) = (&packet.summary, packet.paperwork.lengths);
    let mut out = format!("{}\n", packet.job);
    let area = s.area.get(crate::units::AreaUnit::SquareFoot);
    let square_metres = s.area.get(crate::units::AreaUnit::SquareMetre);
    let _ = writeln!(out, "  roof      {} planes, {} lines, {area:.0} ft2 ({square_metres:.1} m2)", s.planes, s.lines);
    let _ = writeln!(
        out,
        "  panels    {} in {} different lengths, {} to {}, {} together",
        s.panels,
        s.lengths,
        format.string(s.shortest)?,
        format.string(s.longest)?,
        format.string(s.panel_length)?
    );
    let mass =
        s.coil_mass.map_or(String::new(), |m| format!(", {:.0} lb ({:.0} kg)", m.get(crate::units::MassUnit::Pound), m.get(crate::units::MassUnit::Kilogram)));
    let _ = writeln!(out, "  coil      {}{mass}", format.string(s.coil)?);
    let _ = writeln!(out, "  trims     {} profiles, {} sticks", s.trims, s.sticks);
    for trim in &packet.trims {
        let _ = writeln!(
            out,
            "            {:4} {:22} girth {:>12}, {} in {} run(s)",
            trim.mark,
            trim.name,
            packet.paperwork.small().string(trim.flat.girth())?,
            format.string(trim.total()?)?,
            trim.runs.len()
        );
    }
    let _ = writeln!(out, "  closures  {}", s.closures);
    let _ = writeln!(out, "  spacing   {} rows engineered, {} NOT ENGINEERED", s.engineered_rows, s.not_engineered_rows);
    let mut counts: BTreeMap<(u16, &str), usize> = BTreeMap::new();
    for c in &packet.cautions {
        *counts.entry((c.code().number, c.code().name)).or_default() += 1;
    }
    let _ = writeln!(out, "  cautions  {} of {} kinds:", s.cautions, counts.len());
    for ((number, name), n) in counts {
        let _ = writeln!(out, "            {number} {name} x {n}");
    }
    Ok(out)
}
