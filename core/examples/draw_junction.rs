//! Draws the section of every kind of junction into the folder given as the argument, each alone as SVG and on a crew sheet as HTML for print.

#![allow(clippy::print_stdout, reason = "the list of files is what the example is for")]

// The sections are those that the drawings are tested with; they name their rooms from the root of the crate that they stand in.
use seamwright::{closure, error, export, job, junction, movement, pitch, practice, record, roof, units};

#[path = "../src/export/junction_samples.rs"]
mod junction_samples;

use error::Error;
use export::{CautionNote, CrewSheet, FastenerLine, JunctionDrawing, MaterialLine, StrikeLine, crew_page_html, struck_distance};
use job::{Paper, SITE_CAUTIONS};
use junction::{Along, Datum};
use junction_samples::Sample;
use record::Source;
use std::path::Path;
use units::{Length, LengthFormat};

fn sheet(sample: &Sample, drawing: &JunctionDrawing<'_>, format: LengthFormat) -> Result<CrewSheet, Error> {
    let text = |l: Length| -> Result<String, Error> { Ok(format.text(l)?.as_str().to_owned()) };
    // What fills a page anyhow has room for a larger figure, and goes on to the next.
    let height = Length::micrometres(if sample.solved.lines.len() > 12 && drawing.lines().iter().any(|k| k.mark == "N") { 125_000 } else { 96_000 });
    let mut sheet = CrewSheet { title: sample.name.to_owned(), job: "one of every kind".to_owned(), ..CrewSheet::default() };
    sheet.drawings = vec![drawing.clone().for_sheet().figure(Length::micrometres(185_000), height)?.svg()?];
    for (key, line) in drawing.lines().iter().zip(&sample.solved.lines) {
        if sheet.lines.iter().any(|l| l.mark == key.mark) {
            continue;
        }
        let up = if line.datum == Datum::TrimTopEdge { (-line.from_datum).length()? } else { line.from_datum };
        let (from, distance, running) =
            (line.datum.to_string(), struck_distance(format, sample.line, line.side, up)?, struck_distance(format, sample.line, line.side, line.from_line)?);
        sheet.lines.push(StrikeLine { mark: key.mark.clone(), strike: key.text.clone(), from, distance, running, along_seam: String::new() });
    }
    let mut seen: Vec<&str> = Vec::new();
    for line in &sample.solved.along {
        if seen.contains(&&*line.name) {
            continue;
        }
        seen.push(&line.name);
        match &line.what {
            Along::Fasteners { spacing, source, .. } => sheet.fasteners.push(FastenerLine {
                what: line.name.to_string(),
                start: text(Length::inches(1))?,
                spacing: text(*spacing)?,
                count: "31".to_owned(),
                end: text(Length::inches(1))?,
                engineered: matches!(source, Source::Engineer { .. }),
            }),
            Along::Tape { width, .. } => sheet.materials.push(MaterialLine { what: format!("{}, {}", line.name, text(*width)?), quantity: "31 ft".to_owned() }),
            Along::Closures { .. } => sheet.materials.push(MaterialLine { what: line.name.to_string(), quantity: "24".to_owned() }),
            Along::Bead { .. } | Along::ContinuousCleat | Along::OffsetCleat => {}
        }
    }
    for trim in &sample.solved.trims {
        sheet.materials.push(MaterialLine { what: trim.name.to_string(), quantity: "4 of 10 ft".to_owned() });
        sheet.steps.push(format!("Set the {}.", trim.name));
    }
    sheet.cautions =
        sample.solved.cautions.iter().map(|c| CautionNote { number: c.code().number, text: c.message(), source: c.source().to_string() }).collect();
    sheet.cautions.dedup();
    sheet.site_cautions = SITE_CAUTIONS.iter().map(|s| (*s).to_owned()).collect();
    Ok(sheet)
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("give the folder to write to")?;
    std::fs::create_dir_all(&folder)?;
    let write = |name: String, bytes: &[u8]| -> std::io::Result<()> {
        println!("{name}");
        std::fs::write(Path::new(&folder).join(name), bytes)
    };
    let format = LengthFormat::parse("in/16")?;
    for sample in junction_samples::all()? {
        let drawing = JunctionDrawing::new(sample.name, &sample.solved, sample.first, sample.other, format)?;
        let file = sample.name.replace(", ", "-").replace(' ', "-");
        write(format!("{file}.svg"), drawing.svg()?.as_bytes())?;
        // What the calculation of this name is given, for callers in any language.
        write(format!("{file}.{}.json", sample.calculation), &serde_json::to_vec_pretty(&sample.input)?)?;
        write(format!("{file}.html"), &crew_page_html(&sheet(&sample, &drawing, format)?, Paper::Letter)?)?;
    }
    Ok(())
}
