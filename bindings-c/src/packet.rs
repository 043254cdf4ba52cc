//! A whole job, from its document to the packet.

#![allow(unsafe_code, reason = "exports: fixed names, pointers that the caller lends, and the caller's own function")]

use crate::boundary::{ArrayOut, Out, TextOut, bytes_in, caught, guard, handle};
use crate::error::sw_error;
use crate::length::sw_length;
use crate::numbers::{STAGES, find};
use crate::status::{SW_OK, sw_status};
use core::ffi::{c_char, c_void};
use core::ops::ControlFlow;
use seamwright_core::error::{Error, ErrorKind};
use seamwright_core::export::{Artefact, packet_files};
use seamwright_core::job::{Job, Packet, Progress};
use seamwright_core::record::Calculation;
use std::sync::OnceLock;

/// A job worked out: what the shop and the crew work from.
///
/// It never changes, so threads may read it at the same time. Free it with `sw_packet_free`, once, when none does.
#[derive(Debug)]
pub struct sw_packet {
    job: Job,
    packet: Packet,
    /// Written when first asked for: the caller asks twice, for the size and for the text.
    json: OnceLock<Result<String, Error>>,
    /// As `json`; their working costs a second run, which callers without files are spared.
    files: OnceLock<Result<Vec<Artefact>, Error>>,
}

impl sw_packet {
    fn files(&self) -> Result<&[Artefact], Error> {
        let made = self.files.get_or_init(|| {
            let (_, worksheet) = self.job.explain()?;
            packet_files(&self.packet, Some(&worksheet))
        });
        made.as_deref().map_err(Clone::clone)
    }

    fn file(&self, index: usize) -> Result<&Artefact, Error> {
        let files = self.files()?;
        files.get(index).ok_or_else(|| {
            let accepted = format!("less than {}, counted from 0", files.len());
            Error::new(ErrorKind::OutOfRange, "no file of this index").at("index").value_of(index).accepts(accepted)
        })
    }
}

/// A part of the work on a job: one of the `SW_STAGE_` numbers. Later releases may add some.
pub type sw_stage = i32;

/// The planes and lines of the roof.
pub const SW_STAGE_ROOF: sw_stage = 1;
/// The sections of the lines that end panels.
pub const SW_STAGE_SECTIONS: sw_stage = 2;
/// The panels of the planes.
pub const SW_STAGE_PANELS: sw_stage = 3;
/// What lies along the lines.
pub const SW_STAGE_LINES: sw_stage = 4;
/// Clips and movement of the planes.
pub const SW_STAGE_CLIPS: sw_stage = 5;
/// Trims, flat and cut to length.
pub const SW_STAGE_TRIMS: sw_stage = 6;
/// The order.
pub const SW_STAGE_ORDER: sw_stage = 7;

/// Told how far the work is: `done` of `of` things of a stage, and the caller's own `user`. 0 goes on with the work; anything else stops it.
///
/// It runs on the thread of the call that was given it, and may call the library. It must return: no exception and no `longjmp` may leave it.
pub type sw_progress_fn = Option<unsafe extern "C" fn(stage: sw_stage, done: usize, of: usize, user: *mut c_void) -> i32>;

/// A packet in a few figures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(C)]
pub struct sw_summary {
    /// Planes of the roof.
    pub planes: u64,
    /// Lines of the roof.
    pub lines: u64,
    /// Panels as laid.
    pub panels: u64,
    /// Pieces to form: more than panels where end laps divide them.
    pub pieces: u64,
    /// Different order lengths.
    pub lengths: u64,
    /// The shortest order length.
    pub shortest: sw_length,
    /// The longest order length.
    pub longest: sw_length,
    /// Order lengths of all panels together.
    pub panel_length: sw_length,
    /// Length of the coil.
    pub coil: sw_length,
    /// Different trims.
    pub trims: u64,
    /// Stock lengths of trim to buy.
    pub sticks: u64,
    /// Closure pieces.
    pub closures: u64,
    /// Cautions: read them before metal is cut.
    pub cautions: u64,
    /// Rows of fasteners and clips whose spacing an engineer gave.
    pub engineered_rows: u64,
    /// Rows whose spacing nobody engineered.
    pub not_engineered_rows: u64,
    /// Figures among them that rest on memory: to be confirmed before metal is cut.
    pub from_memory: u64,
}

/// The caller's function with what it is given.
struct Caller {
    progress: sw_progress_fn,
    user: *mut c_void,
}

impl Caller {
    /// # Safety
    /// `progress` is NULL or a function of its type, which may be called with `user`.
    unsafe fn tell(&self, p: Progress) -> ControlFlow<()> {
        let number = STAGES.iter().find(|(_, stage)| *stage == p.stage).map_or(0, |(number, _)| *number);
        match self.progress {
            // SAFETY: the caller's promise.
            Some(told) if unsafe { told(number, p.done, p.of, self.user) } != 0 => ControlFlow::Break(()),
            _ => ControlFlow::Continue(()),
        }
    }
}

/// The name of a stage for people: `panels`. `SW_UNKNOWN` for a number of none.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_stage_name(stage: sw_stage, buffer: *mut c_char, capacity: usize, needed: *mut usize, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            let found = find(STAGES, stage).ok_or_else(|| {
                Error::new(ErrorKind::Unknown, "not the number of a stage").at("stage").value_of(stage).accepts("one of the SW_STAGE_ numbers")
            })?;
            Ok(out.put(Some(found.name())))
        })
    }
}

/// Works out the job that a JSON document of at most 64 MiB describes. An error's path leads into the document: `job.roof.planes[3].name`; where the
/// text is not JSON, its span points at the character.
///
/// `progress` is told how far the work is, with `user`, and may stop it: the status is then `SW_CANCELLED`. It may be NULL. Free the packet with
/// `sw_packet_free`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_job_packet(
    job: *const c_char,
    job_len: usize,
    progress: sw_progress_fn,
    user: *mut c_void,
    packet: *mut *mut sw_packet,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(packet, "packet")?;
            let caller = Caller { progress, user };
            let job = Job::from_json(bytes_in(job, job_len, "job")?).map_err(|e| e.under("job"))?;
            // Who stops the work is named by the argument alone, which is not in the document.
            let made = job.packet(&mut |p| caller.tell(p)).map_err(|e| if e.kind() == ErrorKind::Cancelled { e } else { e.under("job") })?;
            out.put(Box::into_raw(Box::new(sw_packet { job, packet: made, json: OnceLock::new(), files: OnceLock::new() })));
            Ok(SW_OK)
        })
    }
}

/// Frees a packet; NULL is left alone.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_packet_free(packet: *mut sw_packet) {
    caught((), || {
        if !packet.is_null() {
            // SAFETY: made by `sw_job_packet` from a Box, and freed once, by the caller's promise.
            drop(unsafe { Box::from_raw(packet) });
        }
    });
}

/// # Safety
/// `packet` is NULL or live for `'a`.
unsafe fn lent<'a>(packet: *const sw_packet) -> Result<&'a sw_packet, Error> {
    // SAFETY: the caller's promise.
    unsafe { handle(packet) }.ok_or_else(|| Error::new(ErrorKind::Missing, "the pointer is NULL").at("packet"))
}

/// The packet in a few figures.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_packet_summary(packet: *const sw_packet, summary: *mut sw_summary, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(summary, "summary")?;
            let s = &lent(packet)?.packet.summary;
            out.put(sw_summary {
                planes: count(s.planes)?,
                lines: count(s.lines)?,
                panels: count(s.panels)?,
                pieces: s.pieces,
                lengths: count(s.lengths)?,
                shortest: s.shortest.into(),
                longest: s.longest.into(),
                panel_length: s.panel_length.into(),
                coil: s.coil.into(),
                trims: count(s.trims)?,
                sticks: s.sticks,
                closures: s.closures,
                cautions: count(s.cautions)?,
                engineered_rows: count(s.engineered_rows)?,
                not_engineered_rows: count(s.not_engineered_rows)?,
                from_memory: count(s.sources.memory)?,
            });
            Ok(SW_OK)
        })
    }
}

fn count(of: usize) -> Result<u64, Error> {
    u64::try_from(of).map_err(|_| Error::new(ErrorKind::Overflow, "too many to count").value_of(of))
}

/// The whole packet as JSON: fields in snake_case, choices in kebab-case, quantities as text with their unit. It is written once and kept with the
/// packet, so that asking for the size first costs little.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_packet_json(
    packet: *const sw_packet,
    buffer: *mut c_char,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            let packet = lent(packet)?;
            let json = packet.json.get_or_init(|| packet.packet.to_json()).as_ref().map_err(Clone::clone)?;
            Ok(out.put(Some(json)))
        })
    }
}

/// How many files the packet has: `packet.json`, lists, the plan, crew sheets, junctions, trims, and papers with the working for the office. They are
/// made when first asked for, and kept with the packet; nothing is written to a disk.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_packet_file_count(packet: *const sw_packet, count: *mut usize, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(count, "count")?;
            out.put(lent(packet)?.files()?.len());
            Ok(SW_OK)
        })
    }
}

/// The name of a file, counted from 0: `lists/panels.csv`, its folders parted by `/`. `SW_OUT_OF_RANGE` beyond the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_packet_file_name(
    packet: *const sw_packet,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            Ok(out.put(Some(&lent(packet)?.file(index)?.name)))
        })
    }
}

/// What a file holds, counted from 0, by the rules of arrays: `*needed` is its size in bytes. `SW_OUT_OF_RANGE` beyond the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_packet_file_bytes(
    packet: *const sw_packet,
    index: usize,
    bytes: *mut u8,
    capacity: usize,
    needed: *mut usize,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = ArrayOut::at(bytes, capacity, needed, "bytes")?;
            Ok(out.put(lent(packet)?.file(index)?.bytes.iter().copied()))
        })
    }
}
