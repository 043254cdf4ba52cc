//! One piece of work of one size, to be counted by valgrind: `scaling lines-square 10000`, `lines-row`, `lines-comb`, `lines-corners`, `panels`, `panels-kept`, `pairs`, `snap-tiles`,
//! `strips-4`, `strips-12`, `strips-12-4` (with a hole of 4), `strips-99`. With a third word, `input`, the input alone is made, so that its share can be taken off.

use seamwright::error::Error;
use seamwright::layout::{PolygonArrays, Start, strips};
use seamwright::record::Calculation;
use seamwright::units::{Length, LengthArray, LengthUnit};
use seamwright_benches::polygons::{COVERAGE, FORMS, polygons_of};
use seamwright_benches::roofs::{Stand, comb, hips, list, list_kept, planes, skewed, tiles};
use std::process::ExitCode;

fn work(what: &str, count: u32, input_only: bool) -> Result<Option<usize>, Error> {
    let roof = match what {
        "lines-square" => hips(count, Stand::Square),
        "lines-row" => hips(count, Stand::Row),
        "lines-comb" => comb(count, false),
        "lines-corners" => comb(count, true),
        "panels" => {
            let made = planes(count)?;
            return Ok(Some(if input_only { made.len() } else { list(&made)?.0 }));
        }
        "panels-kept" => {
            let made = planes(count)?;
            return Ok(Some(if input_only { made.len() } else { list_kept(&made)?.iter().map(|(listed, _)| listed.pieces.len()).sum() }));
        }
        "pairs" => {
            let made = skewed(count)?;
            return Ok(Some(if input_only { made.layout.edges.len() } else { made.compute()?.pairs.len() }));
        }
        "snap-tiles" => {
            let made = tiles(count);
            return Ok(Some(if input_only { made.roof.planes.len() } else { made.compute()?.roof.planes.len() }));
        }
        _ => return cut(what, count, input_only),
    };
    Ok(Some(if input_only { roof.planes.len() } else { roof.compute()?.lines().len() }))
}

/// The strips of so many polygons of the form with these numbers of vertices in its outer ring and its hole.
fn cut(what: &str, count: u32, input_only: bool) -> Result<Option<usize>, Error> {
    let Some(form) = FORMS.into_iter().find(|&(outer, hole)| what == if hole > 0 { format!("strips-{outer}-{hole}") } else { format!("strips-{outer}") })
    else {
        return Ok(None);
    };
    let (values, rings, polygons) = polygons_of(form, usize::try_from(count).unwrap_or_default());
    let given = PolygonArrays { coordinates: LengthArray { values: &values, unit: LengthUnit::Millimetre }, rings: &rings, polygons: &polygons };
    let coverage = Length::from_f64(f64::from(COVERAGE), LengthUnit::Millimetre)?;
    Ok(Some(if input_only { given.count() } else { strips(given, coverage, Start::Left, LengthUnit::Millimetre)?.strip.len() }))
}

#[allow(clippy::print_stdout, clippy::print_stderr, reason = "a tool for the command line")]
fn main() -> ExitCode {
    let given: Vec<String> = std::env::args().skip(1).collect();
    let found = match given.as_slice() {
        [what, count, rest @ ..] => count.parse().ok().map(|count| work(what, count, rest.first().is_some_and(|r| r == "input"))),
        _ => None,
    };
    match found {
        Some(Ok(Some(lines))) => println!("{lines}"),
        Some(Err(e)) => {
            eprintln!("{e}");
            return ExitCode::FAILURE;
        }
        _ => {
            eprintln!(
                "which work (lines-square, lines-row, lines-comb, lines-corners, panels, panels-kept, pairs, snap-tiles, strips-4, strips-12, strips-12-4, strips-99), and how many faces, panels or polygons"
            );
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}
