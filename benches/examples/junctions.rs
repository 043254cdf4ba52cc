//! Junctions to be counted by valgrind: `junctions eave 100` works the eave of the guide out a hundred times, `junctions eave 0` only reads it; without words
//! the kinds are listed, and `junctions demo 1` works out the demo job.

use seamwright::error::Error;
use seamwright::job::Job;
use seamwright::record::{Calculation, compute_all};
use seamwright_benches::junctions::all;
use std::process::ExitCode;

const DEMO: &[u8] = include_bytes!("../../core/examples/demo_job.json");

fn demo(count: usize) -> Result<usize, Error> {
    let job = Job::from_json(DEMO)?;
    (0..count).try_fold(0, |sum, _| Ok(sum + job.compute()?.junctions.len()))
}

#[allow(clippy::print_stdout, clippy::print_stderr, reason = "a tool for the command line")]
fn main() -> ExitCode {
    let given: Vec<String> = std::env::args().skip(1).collect();
    let junctions = match all() {
        Ok(junctions) => junctions,
        Err(e) => {
            eprintln!("{e}");
            return ExitCode::FAILURE;
        }
    };
    let [name, count] = given.as_slice() else {
        junctions.iter().for_each(|(name, _)| println!("{name}"));
        return ExitCode::SUCCESS;
    };
    let count = count.parse().unwrap_or(1);
    let found = if name == "demo" {
        Some(demo(count))
    } else {
        junctions.into_iter().find(|(known, _)| known == name).map(|(_, j)| compute_all(&vec![j; count]).map(|all| all.len()))
    };
    match found {
        Some(Ok(things)) => println!("{things}"),
        Some(Err(e)) => {
            eprintln!("{e}");
            return ExitCode::FAILURE;
        }
        None => {
            eprintln!("no junction is called {name}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}
