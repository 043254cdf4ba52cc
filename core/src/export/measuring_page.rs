//! The measuring sheet of a roof, for print: a sketch and blank fields for each plane, in the order of the walk.

use super::crew_page::{STYLE, in_uri};
use super::measuring_drawing::{opening_svg, overview_svg, plane_svg};
use super::svg::escaped;
use crate::error::Error;
use crate::job::Paper;
use crate::roof::{LinePart, MeasuringSheet, PitchNeed, PlaneSheet};
use crate::units::{LengthFormat, LengthStyle, LengthUnit, Rounding};
use core::fmt::Write as _;

const OWN_STYLE: &str = "\
section.plane { break-inside: avoid; border-top: 1pt solid #000; margin-top: 3mm; padding-top: 1mm; }
section.plane h2 { font-size: 13pt; margin: 0 0 1mm 0; }
.plane .pair > section { flex: 0 0 auto; }
.plane .pair > section.wide { flex: 1 1 0; }
.plane table.list td { height: 6.4mm; vertical-align: middle; }
.plane table.list td, .plane table.list th { white-space: nowrap; }
.plane table.list td.blank { width: 40mm; border-bottom: 0.8pt solid #000; }
.plane table.list td.tie { width: 24mm; border-bottom: 0.8pt solid #000; border-left: 0.4pt solid #000; }
.plane table.list .level { width: 14mm; text-align: center; }
.box { display: inline-block; width: 3.6mm; height: 3.6mm; border: 0.8pt solid #000; vertical-align: -0.5mm; }
.rule { display: inline-block; border-bottom: 0.8pt solid #000; height: 5mm; }
p.fields { margin: 2mm 0 0 0; }
p.how { margin: 0 0 1mm 0; }
";

/// How the crew fills the sheet in.
const HOW: &[&str] = &[
    "Walk the planes in the order of their numbers. Go round each in the order of its lines.",
    "Measure on the roof surface, along the deck, tape tight and straight. Write what the tape says; do not add or round.",
    "Tick each side that a level shows level, and say whether it is the foot or the head of the plane.",
    "Diagonals fix the shape; checks show a slip before the metal is cut. Leave neither out.",
    "An opening is measured at its foot on the deck, round its sides and to the corners that its ties name; no tape runs across it.",
    "Strike the marks (m) on their side at the distance given, from the corner named first.",
    "Measure each pitch that the sheet asks for; where it says that a pitch follows from other planes, a reading is a check.",
    "Tie off before you go to an edge. Stay off wet, frosted or slick metal.",
];

/// The measuring sheet as one HTML page for print, black on white: no script, nothing from outside. First the walk round the roof, then for each plane its
/// sketch with corners and numbered lines, and a table with a blank for every length; sides that an earlier plane has are said and not asked for again.
///
/// ```
/// use seamwright::export::measuring_sheet_html;
/// use seamwright::job::Paper;
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Point, SketchedPlane, SketchedRoof};
/// use seamwright::units::{Length, LengthFormat};
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let shed = SketchedPlane::new("boat shed", vec![p(0, 0), p(20, 0), p(20, 12), p(0, 12)]);
/// let sheet = SketchedRoof::new(vec![shed]).compute()?;
/// let page = measuring_sheet_html(&sheet, "boathouse", Paper::Letter, LengthFormat::parse("ft-in/16")?)?;
/// let page = String::from_utf8(page).unwrap();
/// assert!(page.contains("1. boat shed") && page.matches("<td class=\"blank\">").count() == sheet.lines);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
///
/// # Errors
/// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) for lengths that cannot be rounded to the notation.
pub fn measuring_sheet_html(sheet: &MeasuringSheet, job: &str, paper: Paper, notation: LengthFormat) -> Result<Vec<u8>, Error> {
    let size = match paper {
        Paper::Letter => "letter",
        Paper::A4 => "A4",
    };
    let job = escaped(job);
    let mut out = String::from("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    let between = if job.is_empty() { "" } else { " - " };
    let _ = writeln!(out, "<title>Measuring sheet{between}{job}</title>");
    let _ = writeln!(out, "<style>\n@page {{ size: {size} portrait; margin: 8mm 10mm 8mm 10mm; }}\n{STYLE}{OWN_STYLE}</style>\n</head>\n<body>");
    let _ =
        writeln!(out, "<table class=\"sheet\">\n<thead><tr><td><header><h1>Measuring sheet</h1><span>{job}</span></header></td></tr></thead>\n<tbody><tr><td>");
    out.push_str("<p class=\"fields\">Measured by <span class=\"rule\" style=\"width: 55mm\"></span> on <span class=\"rule\" style=\"width: 35mm\"></span> tape no. <span class=\"rule\" style=\"width: 25mm\"></span></p>\n");
    let _ = writeln!(out, "<img class=\"drawing\" alt=\"the walk\" src=\"data:image/svg+xml,{}\">", in_uri(&overview_svg(sheet)));
    let _ = writeln!(out, "<h2>How</h2>\n<ol>{}</ol>", HOW.iter().map(|h| format!("<li>{h}</li>")).collect::<String>());
    for (number, plane) in (1_usize..).zip(&sheet.planes) {
        write_plane(&mut out, number, plane, notation)?;
    }
    write_ties(&mut out, sheet, notation)?;
    out.push_str("</td></tr></tbody>\n</table>\n</body>\n</html>\n");
    Ok(out.into_bytes())
}

/// What holds planes that meet no other in a line.
fn write_ties(out: &mut String, sheet: &MeasuringSheet, notation: LengthFormat) -> Result<(), Error> {
    if sheet.ties.is_empty() {
        return Ok(());
    }
    out.push_str("<section class=\"plane\">\n<h2>Ties</h2>\n<p class=\"how\">Planes that meet no other in a line. Along: level, from the first corner of the edge toward the second. Out: level, square from the edge, away from its plane; - over it. Up: plumb from the first corner of the edge; - below it.</p>\n");
    out.push_str("<table class=\"list\">\n<thead><tr><th class=\"mark\"></th><th>corner</th><th>from the edge</th><th>about</th><th>along</th><th>out</th><th>up</th></tr></thead>\n<tbody>\n");
    let rough = rough(notation)?;
    for tie in &sheet.ties {
        let [from, toward] = tie.side.each_ref().map(|n| escaped(n));
        let (corner, plane, of) = (escaped(&tie.named), escaped(&tie.plane), escaped(&tie.from.plane));
        let about = escaped(&rough.string(tie.along)?);
        let blanks = "<td class=\"tie\"></td>".repeat(3);
        let number = tie.number;
        let _ = writeln!(
            out,
            "<tr><td class=\"mark\">T{number}</td><td>{corner} of {plane}</td><td>{from} - {toward} of {of}</td><td class=\"number\">{about}</td>{blanks}</tr>"
        );
    }
    out.push_str("</tbody>\n</table>\n</section>\n");
    Ok(())
}

/// A sketch is good to the inch or the decimetre at best, not to the notation's fraction.
fn rough(notation: LengthFormat) -> Result<LengthFormat, Error> {
    let rough = if notation.is_inch() { LengthStyle::FeetInches { denominator: 1 } } else { LengthStyle::Decimal { unit: LengthUnit::Metre, places: 1 } };
    LengthFormat::new(rough, Rounding::HalfEven)
}

fn write_plane(out: &mut String, number: usize, plane: &PlaneSheet, notation: LengthFormat) -> Result<(), Error> {
    let name = escaped(&plane.plane);
    let _ = writeln!(out, "<section class=\"plane\">\n<h2>{number}. {name}</h2>\n<div class=\"pair\">");
    let _ = writeln!(out, "<section><img alt=\"{name}\" src=\"data:image/svg+xml,{}\">", in_uri(&plane_svg(plane)));
    for (k, opening) in plane.openings.iter().enumerate() {
        let name = escaped(&opening.name);
        let _ = writeln!(out, "<p class=\"how\"><b>{name}</b><br><img alt=\"{name}\" src=\"data:image/svg+xml,{}\"></p>", in_uri(&opening_svg(plane, k)));
    }
    out.push_str("</section>\n");
    out.push_str("<section class=\"wide\">\n<table class=\"list\">\n<thead><tr><th class=\"mark\"></th><th>from - to</th><th></th><th class=\"number\">about</th><th>measured</th><th class=\"level\">level</th></tr></thead>\n<tbody>\n");
    let rough = rough(notation)?;
    let mut openings = plane.openings.iter();
    let mut before = LinePart::Side;
    for line in &plane.lines {
        if line.part == LinePart::Opening && before != LinePart::Opening {
            let name = openings.next().map_or("", |o| o.name.as_str());
            let _ = writeln!(out, "<tr><td class=\"mark\"></td><td colspan=\"5\"><b>{}</b></td></tr>", escaped(name));
        }
        before = line.part;
        let _ = write!(out, "<tr><td class=\"mark\">{}</td><td>{} - {}</td><td>{}</td>", line.number, escaped(&line.from), escaped(&line.to), line.part);
        let level = if line.part == LinePart::Side { "<span class=\"box\"></span>" } else { "" };
        match &line.shared {
            Some(earlier) => {
                let _ = writeln!(out, "<td class=\"number\"></td><td>as on {}</td><td class=\"level\">{level}</td></tr>", escaped(earlier));
            }
            None => {
                let about = rough.string(line.about)?;
                let _ = writeln!(out, "<td class=\"number\">{}</td><td class=\"blank\"></td><td class=\"level\">{level}</td></tr>", escaped(&about));
            }
        }
    }
    out.push_str("</tbody>\n</table>\n");
    for mark in &plane.marks {
        let at = notation.string(mark.distance)?;
        let _ = writeln!(
            out,
            "<p class=\"how\">Strike <b>{}</b> on {}-{}, {} from {}.</p>",
            escaped(&mark.name),
            escaped(&mark.from),
            escaped(&mark.toward),
            escaped(&at),
            escaped(&mark.from)
        );
    }
    let need = match &plane.pitch {
        PitchNeed::Measured => "<b>measure</b>".to_owned(),
        follows @ PitchNeed::Follows(_) => escaped(&follows.to_string()),
    };
    let _ = writeln!(out, "<p class=\"fields\">Pitch <span class=\"rule\" style=\"width: 16mm\"></span> in 12: {need}</p>");
    out.push_str("<p class=\"fields\">Level side is <span class=\"box\"></span> foot <span class=\"box\"></span> head</p>\n");
    out.push_str("<p class=\"fields\">Remarks <span class=\"rule\" style=\"width: 75%\"></span></p>\n</section>\n</div>\n</section>\n");
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Calculation;
    use crate::roof::{Opening, Point, SketchedPlane, SketchedRoof};
    use crate::units::Length;

    fn sheet() -> MeasuringSheet {
        let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
        let plane = |name: &str, outer: Vec<Point>| SketchedPlane::new(name, outer);
        SketchedRoof::new(vec![
            plane("south <1>", vec![p(0, 0), p(40, 0), p(30, 10), p(10, 10)]),
            plane("east & co", vec![p(40, 0), p(40, 20), p(30, 10)]),
            plane("north", vec![p(40, 20), p(0, 20), p(10, 10), p(30, 10)]),
            plane("west", vec![p(0, 20), p(0, 0), p(10, 10)]),
        ])
        .compute()
        .unwrap()
    }

    #[test]
    fn every_length_has_a_blank_and_shared_sides_have_none() {
        let sheet = sheet();
        let page = String::from_utf8(measuring_sheet_html(&sheet, "hall \"7\"", Paper::A4, LengthFormat::parse("ft-in/16").unwrap()).unwrap()).unwrap();
        assert_eq!(page.matches("<td class=\"blank\">").count(), sheet.lines);
        let shared = sheet.planes.iter().flat_map(|p| &p.lines).filter(|l| l.shared.is_some()).count();
        assert_eq!(page.matches("<td>as on ").count(), shared);
        assert!(
            page.contains("size: A4 portrait")
                && page.contains("as on south &lt;1&gt;")
                && page.contains("2. east &amp; co")
                && page.contains("hall &quot;7&quot;")
        );
        // The sketch does not say which way water runs.
        assert_eq!(page.matches("in 12: <b>measure</b>").count(), sheet.planes.len());
        assert!(!page.contains("<script") && !page.contains("src=\"http") && !page.contains("href="), "all inside, as encoded images");
        assert_eq!(
            page,
            String::from_utf8(measuring_sheet_html(&self::sheet(), "hall \"7\"", Paper::A4, LengthFormat::parse("ft-in/16").unwrap()).unwrap()).unwrap()
        );
    }

    #[test]
    fn an_opening_has_its_name_and_its_lines() {
        let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
        let holes = vec![Opening { name: "flue & cap".into(), ring: vec![p(10, 4), p(13, 4), p(13, 7), p(10, 7)] }];
        let south = SketchedPlane { holes, ..SketchedPlane::new("south", vec![p(0, 0), p(30, 0), p(30, 12), p(0, 12)]) };
        let sheet = SketchedRoof::new(vec![south]).compute().unwrap();
        let page = String::from_utf8(measuring_sheet_html(&sheet, "", Paper::Letter, LengthFormat::parse("ft-in/16").unwrap()).unwrap()).unwrap();
        assert_eq!(page.matches("<td class=\"blank\">").count(), sheet.lines);
        assert_eq!(page.matches("<b>flue &amp; cap</b>").count(), 2);
        let svg = plane_svg(&sheet.planes[0]) + &opening_svg(&sheet.planes[0], 0);
        for line in &sheet.planes[0].lines {
            assert!(svg.contains(&format!(">{}</text>", line.number)), "{}", line.number);
        }
        for corner in &sheet.planes[0].openings[0].corners {
            assert!(svg.contains(&format!(">{}</text>", corner.name)), "{}", corner.name);
        }
    }

    #[test]
    fn every_corner_and_line_is_drawn() {
        for plane in &sheet().planes {
            let svg = plane_svg(plane);
            for corner in &plane.corners {
                assert!(svg.contains(&format!(">{}</text>", corner.name)), "{} of {}", corner.name, plane.plane);
            }
            for line in &plane.lines {
                assert!(svg.contains(&format!(">{}</text>", line.number)), "{} of {}", line.number, plane.plane);
            }
            assert_eq!(svg.matches("<g ").count(), svg.matches("</g>").count());
        }
    }
}
