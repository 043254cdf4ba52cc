//! The error object and its readers.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::boundary::{Out, TextOut, caught, guard, handle};
use crate::status::{SW_INTERNAL, SW_OK, sw_status};
use core::ffi::c_char;
use core::ptr::{null, null_mut};
use seamwright_core::error::{Error, ErrorKind};

/// A refusal: what is wrong, where, with which value, and what would be accepted.
///
/// A call that refuses stores one where its last argument points; free it with `sw_error_free`. It never changes, so threads
/// may read it at the same time. Free it once, when none does.
#[derive(Debug)]
pub struct sw_error {
    fault: Error,
    /// The fault's others, as handles that can be lent.
    others: Vec<sw_error>,
}

impl From<Error> for sw_error {
    fn from(fault: Error) -> sw_error {
        let others = fault.others().iter().cloned().map(sw_error::from).collect();
        sw_error { fault, others }
    }
}

/// Frees an error that a call stored; NULL is left alone. Errors from `sw_error_other_at` go with the one that holds them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_free(error: *mut sw_error) {
    caught((), || {
        if !error.is_null() {
            // SAFETY: made by `guard` from a Box, and freed once, by the caller's promise.
            drop(unsafe { Box::from_raw(error) });
        }
    });
}

/// The kind of fault, the same number as the status of the call; `SW_OK` for NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_kind(error: *const sw_error) -> sw_status {
    caught(SW_INTERNAL, || {
        // SAFETY: NULL or live by the caller's promise.
        unsafe { handle(error) }.map_or(SW_OK, |e| e.fault.kind().code())
    })
}

/// One text of an error into the caller's buffer: `choose` picks it.
///
/// # Safety
/// `error` is NULL or live, the others as `TextOut::at` asks.
unsafe fn part(
    error: *const sw_error,
    buffer: *mut c_char,
    capacity: usize,
    needed: *mut usize,
    choose: impl FnOnce(&Error) -> Option<&str>,
) -> Result<sw_status, Error> {
    // SAFETY: the caller's promises.
    let (out, error) = unsafe { (TextOut::at(buffer, capacity, needed)?, lent(error)?) };
    Ok(out.put(choose(error)))
}

/// # Safety
/// `error` is NULL or live for `'a`.
unsafe fn lent<'a>(error: *const sw_error) -> Result<&'a Error, Error> {
    // SAFETY: the caller's promise.
    unsafe { handle(error) }.map(|e| &e.fault).ok_or_else(|| Error::new(ErrorKind::Missing, "the pointer is NULL").at("error"))
}

/// What is wrong, without path and value.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_message(error: *const sw_error, buffer: *mut c_char, capacity: usize, needed: *mut usize) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe { guard(null_mut(), || part(error, buffer, capacity, needed, |e| Some(e.message()))) }
}

/// The whole error as text: path, message, value, what is accepted, the cure, and a line for each further fault.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_text(error: *const sw_error, buffer: *mut c_char, capacity: usize, needed: *mut usize) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(null_mut(), || {
            let out = TextOut::at(buffer, capacity, needed)?;
            Ok(out.put(Some(&lent(error)?.to_string())))
        })
    }
}

/// Where the fault is: the name of the argument, or the path into a document, as in `roof.planes[3].pitch`. Empty where the
/// only input is at fault.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_path(error: *const sw_error, buffer: *mut c_char, capacity: usize, needed: *mut usize) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe { guard(null_mut(), || part(error, buffer, capacity, needed, |e| Some(e.path()))) }
}

/// The offending value as text; none (`*needed` is 0) where the error has none. It may hold a NUL of the input: `*needed` - 1
/// is its length.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_value(error: *const sw_error, buffer: *mut c_char, capacity: usize, needed: *mut usize) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe { guard(null_mut(), || part(error, buffer, capacity, needed, Error::value)) }
}

/// What would be accepted; none (`*needed` is 0) where the error does not say.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_allowed(error: *const sw_error, buffer: *mut c_char, capacity: usize, needed: *mut usize) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe { guard(null_mut(), || part(error, buffer, capacity, needed, Error::allowed)) }
}

/// The input that would cure it; none (`*needed` is 0) where none can be named.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_cure(error: *const sw_error, buffer: *mut c_char, capacity: usize, needed: *mut usize) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe { guard(null_mut(), || part(error, buffer, capacity, needed, Error::cure)) }
}

/// The bytes of the value that the error points at, `*start` to before `*end`; `SW_MISSING`, and nothing written, where it points at none.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_span(error: *const sw_error, start: *mut usize, end: *mut usize) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(null_mut(), || {
            let (start, end) = (Out::at(start, "start")?, Out::at(end, "end")?);
            let span = lent(error)?.span().ok_or_else(|| Error::new(ErrorKind::Missing, "the error points at no character"))?;
            start.put(span.0);
            end.put(span.1);
            Ok(SW_OK)
        })
    }
}

/// How many further faults the same check found; 0 for NULL.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_other_count(error: *const sw_error) -> usize {
    caught(0, || {
        // SAFETY: NULL or live by the caller's promise.
        unsafe { handle(error) }.map_or(0, |e| e.others.len())
    })
}

/// One of the further faults, counted from 0; NULL beyond the last. It belongs to `error`: do not free it, nor read it after that is freed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_error_other_at(error: *const sw_error, index: usize) -> *const sw_error {
    caught(null(), || {
        // SAFETY: NULL or live by the caller's promise.
        unsafe { handle(error) }.and_then(|e| e.others.get(index)).map_or(null(), core::ptr::from_ref)
    })
}
