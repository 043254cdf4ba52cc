//! A crew sheet: one printed page for one junction.

use super::svg::escaped;
use crate::error::{Error, ErrorKind, Faults};
use crate::job::Paper;
use core::fmt::Write as _;

/// A line to strike, as the sheet says it.
///
/// ```
/// use seamwright::export::StrikeLine;
/// let line = StrikeLine {
///     mark: "A".into(),
///     strike: "closure face".into(),
///     from: "the trim's lower edge".into(),
///     distance: "1/2\" up".into(),
///     running: "11 1/2\" down".into(),
///     along_seam: String::new(), // square
/// };
/// assert_eq!(line.mark, "A");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StrikeLine {
    /// Its letter on the drawing.
    pub mark: String,
    /// What it is.
    pub strike: String,
    /// What it is measured from.
    pub from: String,
    /// How far from there.
    pub distance: String,
    /// How far from the junction line.
    pub running: String,
    /// The same along a seam, where seams meet the line at a skew.
    pub along_seam: String,
}

/// A row of fasteners, as the sheet says it.
///
/// ```
/// use seamwright::export::FastenerLine;
/// let row = FastenerLine { what: "closure screws".into(), start: "1\"".into(), spacing: "12\"".into(), ..FastenerLine::default() };
/// assert!(!row.engineered);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FastenerLine {
    /// What they are, and through what.
    pub what: String,
    /// From the start of the run to the first.
    pub start: String,
    /// On centre.
    pub spacing: String,
    /// How many.
    pub count: String,
    /// From the last to the end of the run.
    pub end: String,
    /// Whether the spacing is an engineer's.
    pub engineered: bool,
}

/// A thing to bring, as the sheet says it.
///
/// ```
/// use seamwright::export::MaterialLine;
/// let tape = MaterialLine { what: "sealant tape, 7/8\"".into(), quantity: "2 rolls".into() };
/// assert_eq!(tape.quantity, "2 rolls");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct MaterialLine {
    /// What.
    pub what: String,
    /// How much, with its unit.
    pub quantity: String,
}

/// A caution, as the sheet says it.
///
/// ```
/// use seamwright::export::CautionNote;
/// let note = CautionNote { number: 6007, text: "the drip stands near the face".into(), source: "common practice".into() };
/// assert_eq!(note.number, 6007);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CautionNote {
    /// Its number.
    pub number: u16,
    /// What it says.
    pub text: String,
    /// Where the rule behind it comes from.
    pub source: String,
}

/// What stands on a crew sheet: plain text, already written in the caller's units. What is empty is left out.
///
/// ```
/// use seamwright::export::{CrewSheet, StrikeLine, crew_page_html};
/// use seamwright::job::Paper;
/// let sheet = CrewSheet {
///     title: "Ridge R1".into(),
///     job: "boathouse".into(),
///     lines: vec![StrikeLine { mark: "A".into(), strike: "closure face".into(), ..StrikeLine::default() }],
///     ..CrewSheet::default()
/// };
/// let page = String::from_utf8(crew_page_html(&sheet, Paper::Letter)?).unwrap();
/// assert!(page.contains("closure face") && !page.contains("Fasteners"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CrewSheet {
    /// What the sheet is for.
    pub title: String,
    /// The name of the job.
    pub job: String,
    /// Drawings as SVG documents; they keep their size where the paper is wide enough.
    pub drawings: Vec<String>,
    /// The lines to strike, in the order of the work.
    pub lines: Vec<StrikeLine>,
    /// Their plan as an SVG document, which stands beside them.
    pub line_plan: Option<String>,
    /// The rows of fasteners.
    pub fasteners: Vec<FastenerLine>,
    /// Materials and counts.
    pub materials: Vec<MaterialLine>,
    /// The order of work, a step each.
    pub steps: Vec<String>,
    /// The cautions of this junction.
    pub cautions: Vec<CautionNote>,
    /// The usual cautions of a site.
    pub site_cautions: Vec<String>,
}

/// What stands once on a sheet with spacings that no engineer gave.
const NOT_ENGINEERED: &str = "Not engineered: starting figures, not strengths. Get the engineer's figures before fastening.";

/// The sheet as one HTML page for print, black on white: no script, nothing from outside. An ordinary junction fills one page; a longer one goes on to the
/// next under the same heading.
///
/// # Errors
/// [`ErrorKind::Missing`] for a sheet without a title; [`ErrorKind::Format`] for a drawing that is no SVG document.
pub fn crew_page_html(sheet: &CrewSheet, paper: Paper) -> Result<Vec<u8>, Error> {
    let mut faults = Faults::default();
    if sheet.title.trim().is_empty() {
        faults.add(Error::new(ErrorKind::Missing, "a sheet needs its title").at("title").accepts("text"));
    }
    let drawings = sheet.drawings.iter().enumerate().map(|(i, d)| (format!("drawings[{i}]"), d));
    for (path, drawing) in drawings.chain(sheet.line_plan.iter().map(|d| ("line_plan".to_owned(), d))) {
        let start = drawing.trim_start();
        if !(start.starts_with("<?xml") || start.starts_with("<svg")) || !drawing.trim_end().ends_with("</svg>") {
            let head: String = drawing.chars().take(20).collect();
            let error = Error::new(ErrorKind::Format, "not an SVG document").at(path).value_of(head);
            faults.add(error.accepts("text from <?xml or <svg to </svg>"));
        }
    }
    faults.check()?;

    let size = match paper {
        Paper::Letter => "letter",
        Paper::A4 => "A4",
    };
    let (title, job) = (escaped(&sheet.title), escaped(&sheet.job));
    let mut out = String::from("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    let between = if job.is_empty() { "" } else { " - " };
    let _ = writeln!(out, "<title>{title}{between}{job}</title>");
    let _ = writeln!(out, "<style>\n@page {{ size: {size} portrait; margin: 8mm 10mm 8mm 10mm; }}\n{STYLE}</style>\n</head>\n<body>");
    // A table's heading is what printing repeats on every page.
    let _ = writeln!(out, "<table class=\"sheet\">\n<thead><tr><td><header><h1>{title}</h1><span>{job}</span></header></td></tr></thead>\n<tbody><tr><td>");
    for drawing in &sheet.drawings {
        let _ = writeln!(out, "<img class=\"drawing\" alt=\"{title}\" src=\"data:image/svg+xml,{}\">", in_uri(drawing));
    }
    if let Some(plan) = &sheet.line_plan {
        let _ = writeln!(out, "<div class=\"lines\">\n<section>");
        write_lines(&mut out, &sheet.lines);
        let _ = writeln!(out, "</section>\n<img class=\"plan\" alt=\"plan of the lines\" src=\"data:image/svg+xml,{}\">\n</div>", in_uri(plan));
    } else {
        write_lines(&mut out, &sheet.lines);
    }
    write_fasteners(&mut out, &sheet.fasteners);
    if !(sheet.steps.is_empty() && sheet.cautions.is_empty() && sheet.materials.is_empty()) {
        out.push_str("<div class=\"pair\">\n");
        if !(sheet.steps.is_empty() && sheet.cautions.is_empty()) {
            out.push_str("<section class=\"wide\">");
            write_steps(&mut out, &sheet.steps);
            write_cautions(&mut out, &sheet.cautions);
            out.push_str("</section>\n");
        }
        write_materials(&mut out, &sheet.materials);
        out.push_str("</div>\n");
    }
    write_site_cautions(&mut out, &sheet.site_cautions);
    out.push_str("</td></tr></tbody>\n</table>\n</body>\n</html>\n");
    Ok(out.into_bytes())
}

pub(super) const STYLE: &str = "\
* { box-sizing: border-box; }
html { font: 11pt/1.15 'Liberation Sans', Arial, Helvetica, sans-serif; color: #000; background: #fff; }
body { margin: 0; }
table { border-collapse: collapse; width: 100%; }
table.sheet > thead > tr > td, table.sheet > tbody > tr > td { padding: 0; }
header { display: flex; justify-content: space-between; align-items: baseline; gap: 5mm; border-bottom: 1.5pt solid #000; margin-bottom: 1mm; }
h1 { font-size: 16pt; margin: 0 0 0.5mm 0; }
header span { font-size: 12pt; }
h2 { font-size: 11.5pt; margin: 1.4mm 0 0.2mm 0; break-after: avoid; }
img.drawing { display: block; max-width: 100%; margin: 0 auto; break-inside: avoid; }
.lines { display: flex; gap: 3mm; align-items: flex-start; }
.lines > section { flex: 1 1 0; }
.lines table.list { font-size: 10pt; line-height: 1.1; }
.lines table.list th, .lines table.list td { padding-left: 0.8mm; padding-right: 0.8mm; }
.lines table.list th.number { white-space: normal; }
.lines table.list .mark { width: 6mm; }
img.plan { flex: none; width: 60mm; margin-top: 1.4mm; break-inside: avoid; }
table.list { break-inside: auto; }
table.list th { text-align: left; font-weight: bold; border-bottom: 0.8pt solid #000; padding: 0 1.5mm; vertical-align: bottom; }
table.list td { border-bottom: 0.3pt solid #777; padding: 0.1mm 1.5mm; vertical-align: top; }
table.list tr { break-inside: avoid; }
table.list .mark { width: 9mm; font-weight: bold; text-align: center; }
table.list .number { text-align: right; white-space: nowrap; }
table.list .flag { text-align: center; white-space: nowrap; }
.pair { display: flex; gap: 6mm; align-items: flex-start; }
.pair > section { flex: 1 1 0; }
.pair table.list .number { white-space: normal; width: 42%; }
.pair > section.wide { flex: 1.25 1 0; }
section.whole { break-inside: avoid; }
ol, ul { margin: 0; padding-left: 6mm; }
li { break-inside: avoid; }
p.note { margin: 0.6mm 0 0 0; font-weight: bold; break-inside: avoid; }
ul.cautions { list-style: none; padding: 0; }
ul.cautions b { margin-right: 1.5mm; }
p.site { margin: 0; font-size: 9.5pt; border: 1pt solid #000; padding: 0.8mm 1.5mm; break-inside: avoid; }
";

fn cell(out: &mut String, class: &str, text: &str) {
    let class = if class.is_empty() { String::new() } else { format!(" class=\"{class}\"") };
    let _ = write!(out, "<td{class}>{}</td>", escaped(text));
}

/// A heading and a table with these columns, by class and name.
fn table(out: &mut String, heading: &str, columns: &[(&str, &str)], rows: impl FnOnce(&mut String)) {
    let _ = writeln!(out, "<h2>{heading}</h2>\n<table class=\"list\">");
    out.push_str("<thead><tr>");
    for (class, name) in columns {
        let _ = write!(out, "<th class=\"{class}\">{name}</th>");
    }
    out.push_str("</tr></thead>\n<tbody>\n");
    rows(out);
    out.push_str("</tbody>\n</table>\n");
}

fn write_lines(out: &mut String, lines: &[StrikeLine]) {
    if lines.is_empty() {
        return;
    }
    let is_skew = lines.iter().any(|l| !l.along_seam.is_empty());
    let mut columns = vec![("mark", ""), ("", "Strike"), ("", "measured from"), ("number", "distance"), ("number", "from junction line")];
    if is_skew {
        columns.push(("number", "along a seam"));
    }
    table(out, "Lines", &columns, |out| {
        for line in lines {
            out.push_str("<tr>");
            for (class, text) in [("mark", &line.mark), ("", &line.strike), ("", &line.from), ("number", &line.distance), ("number", &line.running)] {
                cell(out, class, text);
            }
            if is_skew {
                cell(out, "number", &line.along_seam);
            }
            out.push_str("</tr>\n");
        }
    });
}

fn write_fasteners(out: &mut String, rows: &[FastenerLine]) {
    if rows.is_empty() {
        return;
    }
    let all = rows.iter().all(|r| r.engineered);
    let columns = [("", "What"), ("number", "start"), ("number", "spacing"), ("number", "count"), ("number", "end"), ("flag", "engineered")];
    // The mark and what it means stay on one page.
    out.push_str("<section class=\"whole\">");
    table(out, "Fasteners", &columns, |out| {
        for row in rows {
            out.push_str("<tr>");
            for (class, text) in [("", &row.what), ("number", &row.start), ("number", &row.spacing), ("number", &row.count), ("number", &row.end)] {
                cell(out, class, text);
            }
            cell(out, "flag", if row.engineered { "yes" } else { "no *" });
            out.push_str("</tr>\n");
        }
    });
    if !all {
        let _ = writeln!(out, "<p class=\"note\">* {NOT_ENGINEERED}</p>");
    }
    out.push_str("</section>\n");
}

fn write_steps(out: &mut String, steps: &[String]) {
    if steps.is_empty() {
        return;
    }
    out.push_str("<h2>Order of work</h2>\n<ol>\n");
    for step in steps {
        let _ = writeln!(out, "<li>{}</li>", escaped(step));
    }
    out.push_str("</ol>\n");
}

fn write_materials(out: &mut String, materials: &[MaterialLine]) {
    if materials.is_empty() {
        return;
    }
    out.push_str("<section>");
    table(out, "Materials", &[("", "What"), ("number", "how much")], |out| {
        for line in materials {
            out.push_str("<tr>");
            cell(out, "", &line.what);
            cell(out, "number", &line.quantity);
            out.push_str("</tr>\n");
        }
    });
    out.push_str("</section>\n");
}

fn write_cautions(out: &mut String, cautions: &[CautionNote]) {
    if cautions.is_empty() {
        return;
    }
    out.push_str("<h2>Cautions</h2>\n<ul class=\"cautions\">\n");
    for note in cautions {
        let _ = write!(out, "<li><b>{}</b>{}", note.number, escaped(&note.text));
        if !note.source.is_empty() {
            let _ = write!(out, " ({})", escaped(&note.source));
        }
        out.push_str("</li>\n");
    }
    out.push_str("</ul>\n");
}

fn write_site_cautions(out: &mut String, cautions: &[String]) {
    if cautions.is_empty() {
        return;
    }
    let texts: Vec<String> = cautions.iter().map(|t| escaped(t)).collect();
    let _ = writeln!(out, "<h2>On site</h2>\n<p class=\"site\">{}</p>", texts.join(" "));
}

/// A document within an attribute that holds it as a URI: an image can neither run a script nor fetch anything.
pub(super) fn in_uri(text: &str) -> String {
    let mut out = String::with_capacity(text.len() * 5 / 4);
    for byte in text.bytes() {
        match byte {
            b'A'..=b'Z' | b'a'..=b'z' | b'0'..=b'9' | b'-' | b'_' | b'.' | b'~' | b' ' | b'=' | b':' | b'/' | b',' | b'(' | b')' => out.push(char::from(byte)),
            _ => {
                let _ = write!(out, "%{byte:02X}");
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheet() -> CrewSheet {
        CrewSheet {
            title: "Ridge <R1>".into(),
            job: "a & b".into(),
            drawings: vec!["<svg xmlns=\"http://www.w3.org/2000/svg\"><script>alert(1)</script></svg>".into()],
            lines: vec![StrikeLine {
                mark: "A".into(),
                strike: "closure \"face\"".into(),
                from: "the junction line".into(),
                distance: "5\"".into(),
                running: "5\"".into(),
                along_seam: String::new(),
            }],
            line_plan: Some("<svg xmlns=\"http://www.w3.org/2000/svg\"></svg>".into()),
            fasteners: vec![
                FastenerLine { what: "screws".into(), spacing: "12\"".into(), ..FastenerLine::default() },
                FastenerLine { what: "rivets".into(), spacing: "6\"".into(), engineered: true, ..FastenerLine::default() },
            ],
            materials: vec![MaterialLine { what: "tape".into(), quantity: "1 roll".into() }],
            steps: vec!["strike the lines".into()],
            cautions: vec![CautionNote { number: 6016, text: "plug the seams".into(), source: "common practice".into() }],
            site_cautions: crate::job::SITE_CAUTIONS.iter().map(|s| (*s).to_owned()).collect(),
        }
    }

    fn page(sheet: &CrewSheet, paper: Paper) -> String {
        String::from_utf8(crew_page_html(sheet, paper).unwrap()).unwrap()
    }

    #[test]
    fn text_cannot_become_markup_and_drawings_cannot_run() {
        let html = page(&sheet(), Paper::Letter);
        assert!(html.contains("<h1>Ridge &lt;R1&gt;</h1>") && html.contains("a &amp; b") && html.contains("closure &quot;face&quot;"));
        assert!(!html.contains("<script") && !html.contains("<svg"));
        assert!(html.contains("src=\"data:image/svg+xml,%3Csvg xmlns=%22http://www.w3.org/2000/svg%22%3E%3Cscript%3Ealert(1)%3C/script%3E%3C/svg%3E\""));
        // Nothing is fetched: the sources are the drawing and the plan themselves, and the style names no other.
        assert_eq!((html.matches("src=").count(), html.matches("src=\"data:image/svg+xml,").count()), (2, 2));
        assert!(!html.contains("href") && !html.contains("url(") && !html.contains("@import"));
    }

    #[test]
    fn the_page_has_its_paper_and_the_same_bytes_again() {
        let html = page(&sheet(), Paper::A4);
        assert!(html.contains("size: A4 portrait") && page(&sheet(), Paper::Letter).contains("size: letter portrait"));
        assert_eq!(html, page(&sheet(), Paper::A4));
        for tag in ["table", "thead", "tbody", "tr", "td", "th", "h2", "ol", "ul", "li", "section", "div", "p"] {
            let opened = html.matches(&format!("<{tag}>")).count() + html.matches(&format!("<{tag} ")).count();
            assert_eq!(opened, html.matches(&format!("</{tag}>")).count(), "{tag}");
        }
    }

    #[test]
    fn not_engineered_stands_once_and_points_at_its_lines() {
        let mut s = sheet();
        let html = page(&s, Paper::Letter);
        assert_eq!(html.matches("Not engineered").count(), 1);
        assert_eq!((html.matches("no *</td>").count(), html.matches("yes</td>").count()), (1, 1));
        s.fasteners.remove(0);
        assert_eq!(page(&s, Paper::Letter).matches("Not engineered").count(), 0);
    }

    #[test]
    fn what_is_empty_is_left_out() {
        let html = page(&CrewSheet { title: "x".into(), ..CrewSheet::default() }, Paper::Letter);
        for absent in ["Lines", "Fasteners", "Materials", "Order of work", "Cautions", "On site", "<img"] {
            assert!(!html.contains(absent), "{absent}");
        }
        assert!(html.contains("<title>x</title>"));
    }

    #[test]
    fn a_sheet_without_title_and_what_is_no_drawing_are_refused_together() {
        let error = crew_page_html(&CrewSheet { title: " ".into(), drawings: vec!["<html>".into()], ..CrewSheet::default() }, Paper::A4).unwrap_err();
        assert_eq!((error.kind(), error.path()), (ErrorKind::Missing, "title"));
        assert_eq!(error.others().iter().map(|e| (e.kind(), e.path())).collect::<Vec<_>>(), [(ErrorKind::Format, "drawings[0]")]);
    }
}
