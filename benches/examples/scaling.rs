//! One piece of work of one size, to be counted by valgrind: `scaling lines-square 10000`, `lines-row`, `lines-comb`, `lines-corners`, `panels`. With a third
//! word, `input`, the input alone is made, so that its share can be taken off.

use seamwright::error::Error;
use seamwright::record::Calculation;
use seamwright_benches::roofs::{Stand, comb, hips, list, planes};
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
        _ => return Ok(None),
    };
    Ok(Some(if input_only { roof.planes.len() } else { roof.compute()?.lines().len() }))
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
            eprintln!("which work (lines-square, lines-row, lines-comb, lines-corners, panels), and how many faces or panels");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}
