//! The guide's pages on junctions: their pictures, documents and tables are what the library gives, and every kind has a page.
//!
//! A page holds `<!-- section: NAME -->` and `<!-- end -->` around what is written by this test with `SW_WRITE_GUIDE=1`. The figures worked by hand on each
//! page are held against the result here, and reckoned again by `tests/python/test_guide.py` and `tests/c/test_guide.c`.

#![allow(clippy::expect_used, clippy::panic, reason = "a test stops where its files are not what it reads")]

use seamwright::job::{CALCULATIONS, NamedCalculation};
use seamwright::panel::Reach;
use seamwright::trim::{BendRule, NeutralFactor};
use seamwright::{closure, error, export, junction, movement, pitch, practice, record, roof, units};
use seamwright_tests::root;

#[path = "guide_plans.rs"]
mod guide_plans;
#[path = "guide_worked.rs"]
mod guide_worked;
#[path = "../../core/src/export/junction_samples.rs"]
mod junction_samples;

use export::{JunctionDrawing, struck_distance};
use junction::{Along, Datum, Side};
use junction_samples::Sample;
use std::fmt::Write;
use std::path::{Path, PathBuf};
use units::{Length, LengthFormat};

/// Calculations of the room that are parts of a section, and no kind.
const NO_KINDS: &[&str] = &[
    "junction.end-proposal",
    "junction.cap-outline",
    "junction.kick-out",
    "junction.levels",
    "junction.line-order",
    "junction.rule-check",
    "junction.section-fit",
    "junction.water-path",
    "junction.whole-junction",
    "junction.work-plan",
];

fn folder() -> PathBuf {
    root().join("docs/junctions")
}

fn file_stem(name: &str) -> String {
    name.replace(", ", "-").replace(' ', "-")
}

fn format() -> LengthFormat {
    LengthFormat::parse("in/16").expect("a format")
}

fn text(length: Length) -> String {
    format().text(length).expect("a length that can be written").as_str().to_owned()
}

fn way(length: Length, side: Side, sample: &Sample) -> String {
    struck_distance(format(), sample.line, side, length).expect("a length that can be written")
}

/// The file is what it should be; with `SW_WRITE_GUIDE` it is made so.
fn held(path: &Path, wanted: &str, faults: &mut Vec<String>) {
    if std::env::var_os("SW_WRITE_GUIDE").is_some() {
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("the folder of the guide");
        std::fs::write(path, wanted).expect("a file of the guide that can be written");
    }
    if std::fs::read_to_string(path).unwrap_or_default() != wanted {
        faults.push(format!("{} is not what the library gives", path.display()));
    }
}

fn side(side: Side, sample: &Sample) -> &'static str {
    match (side, sample.calculation) {
        (Side::First, "junction.pitch-transition" | "junction.step" | "junction.expansion-across" | "junction.pipe") => "lower",
        (Side::Second, "junction.pitch-transition" | "junction.step" | "junction.expansion-across" | "junction.pipe") => "upper",
        (Side::First, "junction.coping") => "roof side",
        (Side::Second, "junction.coping") => "outside",
        (Side::Riser, _) => "riser",
        (Side::First, _) => "first",
        (Side::Second, _) => "second",
    }
}

/// What a caution says, its lengths as the crew reads them.
fn said_by(caution: &record::Caution) -> String {
    caution.arguments().iter().fold(caution.code().text.to_owned(), |out, (name, value)| {
        out.replace(&format!("{{{name}}}"), &Length::parse(value).map_or_else(|_| value.clone(), text))
    })
}

/// The tables of a section, as Markdown.
fn section(sample: &Sample) -> String {
    let mut out = String::new();
    let stem = file_stem(sample.name);
    let line = |out: &mut String, what: std::fmt::Arguments<'_>| writeln!(out, "{what}").expect("text takes lines");
    line(&mut out, format_args!("![The section: {}](pictures/{stem}.svg)\n", sample.name));
    line(&mut out, format_args!("Given: [inputs/{stem}.json](inputs/{stem}.json), to the calculation `{}`.\n", sample.calculation));
    line(&mut out, format_args!("| strike | side | from | distance | from the junction line |\n|---|---|---|---|---|"));
    for l in &sample.solved.lines {
        let up = if l.datum == Datum::TrimTopEdge { (-l.from_datum).length().expect("a length") } else { l.from_datum };
        line(
            &mut out,
            format_args!("| {} | {} | {} | {} | {} |", l.name, side(l.side, sample), l.datum, way(up, l.side, sample), way(l.from_line, l.side, sample)),
        );
    }
    if !sample.solved.lower_lines.is_empty() {
        line(
            &mut out,
            format_args!("\nThe same at the lower end of the line:\n\n| strike | side | from | distance | from the junction line |\n|---|---|---|---|---|"),
        );
        for l in sample.solved.lower_lines.iter().zip(&sample.solved.lines).filter(|(a, b)| a.from_line != b.from_line).map(|(a, _)| a) {
            let (far, whole) = (way(l.from_datum, l.side, sample), way(l.from_line, l.side, sample));
            line(&mut out, format_args!("| {} | {} | {} | {far} | {whole} |", l.name, side(l.side, sample), l.datum));
        }
    }
    let rule = BendRule::neutral_axis(NeutralFactor::new(0.44).expect("a factor"));
    line(&mut out, format_args!("\n| trim | legs | girth, neutral factor 0.44 |\n|---|---|---|"));
    let tapered = sample.solved.lower_trims.iter().zip(&sample.solved.trims).filter(|(a, b)| a.profile != b.profile).map(|(a, _)| (", lower end", a));
    for (end, t) in sample.solved.trims.iter().map(|t| ("", t)).chain(tapered) {
        let legs: Vec<String> = t.profile.legs.iter().map(|l| format!("{} {}", l.name, text(l.length))).collect();
        let girth = t.profile.girth(&rule).expect("a trim that unfolds");
        line(&mut out, format_args!("| {}{end} | {} | {} |", t.name, legs.join(", "), text(girth)));
    }
    line(&mut out, format_args!("\n| along the line | side | from the junction line | what |\n|---|---|---|---|"));
    for a in &sample.solved.along {
        let what = match &a.what {
            Along::Fasteners { spacing, source, .. } => format!("{} on centre, {source}", text(*spacing)),
            Along::Tape { width, over_seams } => format!("tape {}{}", text(*width), if *over_seams { ", over the seams" } else { "" }),
            Along::Bead { width, depth } => format!("bead {} by {}", text(*width), text(*depth)),
            Along::Closures { web } => format!("closures {} high", text(*web)),
            Along::ContinuousCleat => "continuous cleat".to_owned(),
            Along::OffsetCleat => "offset cleat".to_owned(),
        };
        line(&mut out, format_args!("| {} | {} | {} | {what} |", a.name, side(a.side, sample), way(a.from_line, a.side, sample)));
    }
    for e in &sample.solved.ends {
        let reach = match e.end.reach {
            Reach::HoldBack(l) => format!("held back {}", text(l)),
            Reach::Overhang(l) => format!("over the line by {}", text(l)),
        };
        let mut parts = vec![reach];
        for (name, length) in [("gap", e.end.gap), ("fold", e.end.fold), ("turn-up", e.end.turn_up), ("cut on the roof", e.end.field_trim)] {
            if length != Length::ZERO {
                parts.push(format!("{name} {}", text(length)));
            }
        }
        line(&mut out, format_args!("\nPanel ends, {} side: {}.", side(e.side, sample), parts.join(", ")));
    }
    let mut said: Vec<String> = Vec::new();
    for c in &sample.solved.cautions {
        let words = said_by(c);
        if !said.contains(&words) {
            line(&mut out, format_args!("\n> Caution {}: {words}.", c.code().number));
            said.push(words);
        }
    }
    out
}

/// A drawing that is no section, as Markdown.
fn plan(plan: &guide_plans::Plan) -> String {
    let stem = file_stem(plan.name);
    let given =
        plan.given.as_ref().map_or(String::new(), |(name, _)| format!("\nGiven: [inputs/{stem}.json](inputs/{stem}.json), to the calculation `{name}`.\n"));
    format!("![{}](pictures/{stem}.svg)\n{given}{}", plan.name, plan.shows)
}

#[test]
fn pictures_documents_and_tables_are_what_the_library_gives() {
    let samples = junction_samples::all().expect("samples that are solved");
    let plans = guide_plans::all(&samples).expect("plans that are drawn");
    let mut faults = Vec::new();
    for plan in &plans {
        held(&folder().join("pictures").join(file_stem(plan.name)).with_extension("svg"), &plan.svg, &mut faults);
        if let Some((_, given)) = &plan.given {
            let input = serde_json::to_string_pretty(given).expect("a document") + "\n";
            held(&folder().join("inputs").join(file_stem(plan.name)).with_extension("json"), &input, &mut faults);
        }
    }
    for sample in &samples {
        let drawing = JunctionDrawing::new(sample.name, &sample.solved, sample.first, sample.other, format()).expect("a drawing");
        held(&folder().join("pictures").join(file_stem(sample.name)).with_extension("svg"), &drawing.svg().expect("a drawing as SVG"), &mut faults);
        let input = serde_json::to_string_pretty(&sample.input).expect("a document") + "\n";
        held(&folder().join("inputs").join(file_stem(sample.name)).with_extension("json"), &input, &mut faults);
    }
    let mut shown = Vec::new();
    for page in pages() {
        let old = std::fs::read_to_string(&page).expect("a page");
        let mut new = String::new();
        let mut rest = old.as_str();
        while let Some((before, after)) = rest.split_once("<!-- section: ") {
            let (name, after) = after.split_once(" -->\n").expect("a marker with its end");
            let (_, after) = after.split_once("<!-- end -->").expect("a section with its end");
            let of_plan = plans.iter().find(|p| file_stem(p.name) == name).map(plan);
            let shows = of_plan.unwrap_or_else(|| section(samples.iter().find(|s| file_stem(s.name) == name).unwrap_or_else(|| panic!("no sample {name}"))));
            write!(new, "{before}<!-- section: {name} -->\n{shows}<!-- end -->").expect("text takes text");
            shown.push(name.to_owned());
            rest = after;
        }
        new.push_str(rest);
        held(&page, &new, &mut faults);
    }
    for name in samples.iter().map(|s| s.name).chain(plans.iter().map(|p| p.name)) {
        let picture = format!("pictures/{}.svg", file_stem(name));
        let is_shown = pages().iter().any(|p| std::fs::read_to_string(p).unwrap_or_default().contains(&picture));
        if !is_shown {
            faults.push(format!("no page shows {name}"));
        }
    }
    // What nothing gives any more does not stay.
    for (kind, extension) in [("pictures", "svg"), ("inputs", "json")] {
        for entry in std::fs::read_dir(folder().join(kind)).expect("a folder") {
            let path = entry.expect("an entry").path();
            let given = plans.iter().filter(|p| extension == "svg" || p.given.is_some()).map(|p| p.name);
            if !samples.iter().map(|s| s.name).chain(given).any(|name| path.ends_with(Path::new(&file_stem(name)).with_extension(extension))) {
                faults.push(format!("{} is nothing's", path.display()));
            }
        }
    }
    assert!(faults.is_empty(), "{}\nrun SW_WRITE_GUIDE=1 cargo test -p seamwright-tests --test guide", faults.join("\n"));
}

fn pages() -> Vec<PathBuf> {
    let mut out: Vec<PathBuf> = std::fs::read_dir(folder())
        .expect("the guide's folder")
        .map(|e| e.expect("an entry").path())
        .filter(|p| p.extension().is_some_and(|e| e == "md"))
        .collect();
    out.sort();
    out
}

/// Every section of the guide keeps its own rules, as they are held against each other by name.
#[test]
fn the_rules_of_every_section_can_be_kept() {
    let samples = junction_samples::all().expect("samples that are solved");
    for sample in &samples {
        let (kind, input) = (sample.calculation.trim_start_matches("junction."), &sample.input);
        let rooms = seamwright::job::compute_json("junction.rule-check", &format!(r#"{{"junctions": [{{"{kind}": {input}}}]}}"#));
        let rooms = rooms.unwrap_or_else(|e| panic!("{}: {e}", sample.name));
        assert!(kind == "pipe" || rooms.contains("\"spare\""), "{}", sample.name);
    }
}

#[test]
fn every_kind_of_junction_has_a_page_with_a_worked_example() {
    let index = std::fs::read_to_string(folder().join("README.md")).expect("the index");
    let pages: Vec<String> = pages().iter().filter(|p| !p.ends_with("README.md")).map(|p| std::fs::read_to_string(p).expect("a page")).collect();
    let of_the_room = CALCULATIONS.iter().map(NamedCalculation::name).filter(|n| n.starts_with("junction."));
    for calculation in of_the_room.filter(|n| !NO_KINDS.contains(n)) {
        assert!(pages.iter().any(|p| p.contains(&format!("`{calculation}`"))), "no page for {calculation}");
    }
    for (path, page) in self::pages().iter().filter(|p| !p.ends_with("README.md")).zip(&pages) {
        let name = path.file_name().and_then(std::ffi::OsStr::to_str).expect("a name");
        assert!(index.contains(&format!("({name})")), "the index does not name {name}");
        assert!(page.contains("\n## Worked by hand\n") && page.contains("<!-- section: "), "{name} has no worked example");
    }
}

#[test]
fn figures_worked_by_hand_are_what_the_library_gives() {
    let mut faults = Vec::new();
    for path in pages().iter().filter(|p| !p.ends_with("README.md")) {
        let page = std::fs::read_to_string(path).expect("a page");
        let found = guide_worked::worked(&folder(), &page, &mut faults);
        if found.is_none_or(|figures| figures < 3) {
            faults.push(format!("{} works {found:?} figures of its result", path.display()));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
