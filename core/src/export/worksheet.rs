//! A worksheet as Markdown, for the office.

use crate::record::{Entry, Step, Worksheet};
use core::fmt::Write as _;

/// Markdown has six sizes of headings.
const DEEPEST: usize = 6;

/// The working of a calculation as Markdown: a heading for the sheet and for each part, and a table of the steps in the order of the work.
///
/// ```
/// use seamwright::export::worksheet_markdown;
/// use seamwright::record::{Entry, Source, Step, Worksheet};
/// let mut sheet = Worksheet::new("rafter");
/// let step = Step::new("slope factor").formula("sqrt(1 + m^2)").with("m", 0.5).gives(1.118034).source(Source::geometry());
/// sheet.entries.push(Entry::Step(step));
/// let text = worksheet_markdown(&sheet);
/// assert!(text.starts_with("# rafter\n"));
/// assert!(text.contains("| 1 | slope factor | sqrt(1 + m^2) | m = 0.5 | 1.118034 | geometry \\[derived\\] |\n"));
/// ```
#[must_use]
pub fn worksheet_markdown(sheet: &Worksheet) -> String {
    let mut out = String::new();
    let mut number = 0;
    write_part(&mut out, sheet, 1, &mut number);
    out
}

fn write_part(out: &mut String, sheet: &Worksheet, depth: usize, number: &mut usize) {
    if !out.is_empty() {
        out.push('\n');
    }
    let _ = writeln!(out, "{} {}", "#".repeat(depth.min(DEEPEST)), escaped(&sheet.title));
    let (mut in_table, mut after_part) = (false, false);
    for entry in &sheet.entries {
        match entry {
            Entry::Step(step) => {
                if after_part {
                    let _ = writeln!(out, "\n{} {}, continued", "#".repeat(depth.min(DEEPEST)), escaped(&sheet.title));
                    after_part = false;
                }
                if !in_table {
                    out.push_str("\n| | what | how | with | result | source |\n|--:|---|---|---|---|---|\n");
                    in_table = true;
                }
                *number += 1;
                write_step(out, step, *number);
            }
            Entry::Part(part) => {
                (in_table, after_part) = (false, true);
                write_part(out, part, depth + 1, number);
            }
        }
    }
}

fn write_step(out: &mut String, step: &Step, number: usize) {
    let with: Vec<String> = step.with.iter().map(|(symbol, value)| format!("{} = {}", escaped(symbol), escaped(value))).collect();
    let source = step.source.as_ref().map(|s| escaped(&s.to_string())).unwrap_or_default();
    let _ = writeln!(out, "| {number} | {} | {} | {} | {} | {source} |", escaped(&step.what), escaped(&step.formula), with.join("; "), escaped(&step.result));
}

/// Text that Markdown shows as it is, on one line.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '|' | '#' | '~' | '&' | '$' => {
                out.push('\\');
                out.push(c);
            }
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Source;

    #[test]
    fn parts_are_headed_and_steps_numbered_through() {
        let mut part = Worksheet::new("a part");
        part.entries.push(Entry::Step(Step::new("two").gives("2 mm")));
        let mut sheet = Worksheet::new("whole");
        sheet.entries = vec![Entry::Step(Step::new("one").gives(1)), Entry::Part(part), Entry::Step(Step::new("three").source(Source::CommonPractice))];
        let text = worksheet_markdown(&sheet);
        assert_eq!(
            text,
            "# whole\n\n| | what | how | with | result | source |\n|--:|---|---|---|---|---|\n| 1 | one |  |  | 1 |  |\n\n\
             ## a part\n\n| | what | how | with | result | source |\n|--:|---|---|---|---|---|\n| 2 | two |  |  | 2 mm |  |\n\n\
             # whole, continued\n\n| | what | how | with | result | source |\n|--:|---|---|---|---|---|\n| 3 | three |  |  |  | common practice, no published source |\n"
        );
    }

    #[test]
    fn text_cannot_break_the_table() {
        let mut sheet = Worksheet::new("# a\nb");
        sheet.entries.push(Entry::Step(Step::new("x|y").formula("a*b_c`d`").with("<k>", "1\n2").gives("[3]")));
        let text = worksheet_markdown(&sheet);
        let row = text.lines().last().unwrap();
        assert_eq!(row, "| 1 | x\\|y | a\\*b\\_c\\`d\\` | \\<k\\> = 1 2 | \\[3\\] |  |");
        assert!(text.starts_with("# \\# a b\n"));
    }

    #[test]
    fn headings_stop_at_the_smallest() {
        let mut sheet = Worksheet::new("bottom");
        for depth in 0..9 {
            let mut outer = Worksheet::new(depth.to_string());
            outer.entries.push(Entry::Part(sheet));
            sheet = outer;
        }
        assert!(worksheet_markdown(&sheet).ends_with("\n###### bottom\n"));
    }
}
