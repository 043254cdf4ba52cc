//! Works out a job and writes its packet.
//!
//! Without arguments: the demo job, into `target/packet`. With a job file and a folder: that job, into that folder, which must not be there yet or
//! must be a packet's own. The files are written beside the folder first and moved into place when all are whole.

#![allow(clippy::print_stdout, clippy::print_stderr, reason = "a program for the terminal")]

use core::ops::ControlFlow;
use seamwright::export::{Artefact, packet_files, packet_summary};
use seamwright::job::{Job, Progress};
use std::error::Error;
use std::io::{IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::{fs, io};

const DEMO: &[u8] = include_bytes!("demo_job.json");

/// What tells a folder of ours from any other, so that nothing else is ever replaced.
const OURS: &str = "packet.json";

fn write(files: &[Artefact], folder: &Path) -> io::Result<()> {
    if folder.exists() && !folder.join(OURS).is_file() && fs::read_dir(folder)?.next().is_some() {
        return Err(io::Error::other(format!("{} is there and is no packet: give another folder", folder.display())));
    }
    let name = folder.file_name().ok_or_else(|| io::Error::other("give a folder for the packet"))?.to_string_lossy().into_owned();
    let beside = folder.with_file_name(format!(".{name}.new"));
    if beside.exists() {
        fs::remove_dir_all(&beside)?;
    }
    for file in files {
        let path = beside.join(&file.name);
        if let Some(parent) = path.parent() {
            fs::create_dir_all(parent)?;
        }
        fs::write(path, &file.bytes)?;
    }
    // The old packet goes only when the new one is whole.
    let old = folder.with_file_name(format!(".{name}.old"));
    if old.exists() {
        fs::remove_dir_all(&old)?;
    }
    if folder.exists() {
        fs::rename(folder, &old)?;
    }
    fs::rename(&beside, folder)?;
    if old.exists() {
        fs::remove_dir_all(&old)?;
    }
    Ok(())
}

fn run() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args_os().skip(1);
    let (job, folder) = match (arguments.next(), arguments.next(), arguments.next()) {
        (None, ..) => (Job::from_json(DEMO)?, PathBuf::from("target/packet")),
        (Some(file), Some(folder), None) => {
            let bytes = fs::read(&file).map_err(|e| format!("{}: {e}", Path::new(&file).display()))?;
            (Job::from_json(&bytes)?, PathBuf::from(folder))
        }
        _ => return Err("give nothing for the demo job, or a job file and a folder".into()),
    };
    let shows = io::stderr().is_terminal();
    let mut tell = |p: Progress| {
        if shows {
            eprint!("\r\x1b[K{p}");
            let _ = io::stderr().flush();
        }
        ControlFlow::Continue(())
    };
    let (packet, worksheet) = job.packet_explained(&mut tell)?;
    if shows {
        eprint!("\r\x1b[K");
    }
    let files = packet_files(&packet, Some(&worksheet))?;
    write(&files, &folder)?;
    print!("{}", packet_summary(&packet)?);
    println!("  wrote     {} files, {} kB, into {}", files.len(), files.iter().map(|f| f.bytes.len()).sum::<usize>() / 1000, folder.display());
    println!("            start with crew/*.html, lists/panels.csv, lists/order.csv, plan.svg and office/cautions.md");
    println!("The library computes; it does not license: loads, spacing, fire and weather are for the engineer, the code and the panel's test report.");
    Ok(())
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(e) => {
            eprintln!("{e}");
            ExitCode::FAILURE
        }
    }
}
