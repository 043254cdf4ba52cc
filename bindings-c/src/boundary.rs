//! Where C's pointers become Rust's values, and a panic becomes a status.

#![allow(unsafe_code, reason = "the one file that reads and writes through the caller's pointers")]

use crate::error::sw_error;
use crate::status::{SW_BUFFER_TOO_SMALL, SW_INTERNAL, SW_OK, sw_status};
use core::ffi::c_char;
use core::ptr::NonNull;
use seamwright_core::error::{Error, ErrorKind};
use std::panic::{AssertUnwindSafe, catch_unwind};

/// Runs a body and gives `fallback` if it panics: no unwinding leaves the library.
pub(crate) fn caught<T>(fallback: T, body: impl FnOnce() -> T) -> T {
    catch_unwind(AssertUnwindSafe(body)).unwrap_or_else(|payload| {
        // Dropping a payload runs code of whoever panicked, which may panic again.
        core::mem::forget(payload);
        fallback
    })
}

/// Runs a body that may refuse: its status, the error handed over where the caller asked for it, a panic as `SW_INTERNAL`.
///
/// # Safety
/// `error` is NULL or valid for a write.
pub(crate) unsafe fn guard(error: *mut *mut sw_error, body: impl FnOnce() -> Result<sw_status, Error>) -> sw_status {
    caught(SW_INTERNAL, || {
        // SAFETY: the caller's promise.
        unsafe { hand_over(error, None) };
        let fault = match catch_unwind(AssertUnwindSafe(body)) {
            Ok(Ok(status)) => return status,
            Ok(Err(e)) => e,
            Err(payload) => {
                let said = payload.downcast_ref::<&str>().map(|s| (*s).to_owned()).or_else(|| payload.downcast_ref::<String>().cloned());
                core::mem::forget(payload);
                Error::new(ErrorKind::Internal, "a fault of the library itself").value_of(said.unwrap_or_default()).cured_by("report it with the input")
            }
        };
        let status = fault.kind().code();
        // SAFETY: the caller's promise.
        unsafe { hand_over(error, Some(fault)) };
        status
    })
}

/// # Safety
/// `error` is NULL or valid for a write.
unsafe fn hand_over(error: *mut *mut sw_error, fault: Option<Error>) {
    if !error.is_null() && error.is_aligned() {
        let handle = fault.map_or(core::ptr::null_mut(), |e| Box::into_raw(Box::new(sw_error::from(e))));
        // SAFETY: not NULL, aligned, and valid for a write by the caller's promise.
        unsafe { error.write(handle) };
    }
}

fn null(name: &'static str) -> Error {
    Error::new(ErrorKind::Missing, "the pointer is NULL").at(name).accepts("a pointer to memory that holds it")
}

fn misaligned(name: &'static str) -> Error {
    Error::new(ErrorKind::OutOfRange, "the pointer is not aligned for its type").at(name).accepts("a pointer to an object of its type")
}

fn too_large(name: &'static str, count: usize, what: &'static str) -> Error {
    Error::new(ErrorKind::TooLarge, "no object in memory is that large")
        .at(name)
        .value_of(format_args!("{count} {what}"))
        .accepts("the length of the object pointed to")
}

/// Where one output goes; checked before any work, written once after it.
pub(crate) struct Out<T>(NonNull<T>);

impl<T> Out<T> {
    /// # Safety
    /// `pointer` is NULL or, until `put`, valid for a write of `T`.
    pub(crate) unsafe fn at(pointer: *mut T, name: &'static str) -> Result<Out<T>, Error> {
        let pointer = NonNull::new(pointer).ok_or_else(|| null(name))?;
        if pointer.is_aligned() { Ok(Out(pointer)) } else { Err(misaligned(name)) }
    }

    pub(crate) fn put(self, value: T) {
        // SAFETY: valid by the promise made to `at`; aligned, as checked there.
        unsafe { self.0.write(value) };
    }
}

/// A handle lent by the caller.
///
/// # Safety
/// `pointer` is NULL or points to a live object of the library for `'a`.
pub(crate) unsafe fn handle<'a, T>(pointer: *const T) -> Option<&'a T> {
    if pointer.is_aligned() {
        // SAFETY: NULL or live by the caller's promise; aligned.
        unsafe { pointer.as_ref() }
    } else {
        None
    }
}

/// An array lent by the caller; NULL will do for an empty one.
///
/// # Safety
/// `pointer` is NULL or points to `count` objects that stay as they are for `'a`.
pub(crate) unsafe fn array<'a, T>(pointer: *const T, count: usize, name: &'static str) -> Result<&'a [T], Error> {
    if count == 0 {
        return Ok(&[]);
    }
    if pointer.is_null() {
        return Err(null(name));
    }
    if !pointer.is_aligned() {
        return Err(misaligned(name));
    }
    if count.checked_mul(size_of::<T>()).is_none_or(|bytes| isize::try_from(bytes).is_err()) {
        return Err(too_large(name, count, "elements"));
    }
    // SAFETY: not NULL, aligned, not larger than an object can be, and readable by the caller's promise.
    Ok(unsafe { core::slice::from_raw_parts(pointer, count) })
}

/// A document lent by the caller, whose reader checks that it is UTF-8.
///
/// # Safety
/// `pointer` is NULL or points to `len` bytes that stay as they are for `'a`.
pub(crate) unsafe fn bytes_in<'a>(pointer: *const c_char, len: usize, name: &'static str) -> Result<&'a [u8], Error> {
    if pointer.is_null() {
        return Err(null(name));
    }
    if isize::try_from(len).is_err() {
        return Err(too_large(name, len, "bytes"));
    }
    // SAFETY: not NULL, not larger than an object can be, and readable by the caller's promise; bytes need no alignment.
    Ok(unsafe { core::slice::from_raw_parts(pointer.cast::<u8>(), len) })
}

/// Text lent by the caller as UTF-8.
///
/// # Safety
/// As for `bytes_in`.
pub(crate) unsafe fn text_in<'a>(pointer: *const c_char, len: usize, name: &'static str) -> Result<&'a str, Error> {
    // SAFETY: the caller's promise.
    let bytes = unsafe { bytes_in(pointer, len, name) }?;
    core::str::from_utf8(bytes).map_err(|e| {
        let start = e.valid_up_to();
        // The value keeps what comes before the fault as it was, so that the span still points at it.
        Error::new(ErrorKind::Parse, "the text is not UTF-8")
            .at(name)
            .value_of(String::from_utf8_lossy(bytes))
            .pointing(start, start + char::REPLACEMENT_CHARACTER.len_utf8())
            .accepts("text in UTF-8")
    })
}

/// The caller's buffer for text; checked before any work.
pub(crate) struct TextOut {
    buffer: Option<NonNull<u8>>,
    capacity: usize,
    needed: Option<Out<usize>>,
}

impl TextOut {
    /// # Safety
    /// `buffer` is NULL or valid for `capacity` bytes of writing, `needed` is NULL or valid for a write, both until `put`.
    pub(crate) unsafe fn at(buffer: *mut c_char, capacity: usize, needed: *mut usize) -> Result<TextOut, Error> {
        let buffer = NonNull::new(buffer.cast::<u8>());
        if buffer.is_none() && (capacity > 0 || needed.is_null()) {
            return Err(null(if capacity > 0 { "buffer" } else { "needed" }));
        }
        if isize::try_from(capacity).is_err() {
            return Err(too_large("capacity", capacity, "bytes"));
        }
        let needed = if needed.is_null() {
            None
        } else {
            // SAFETY: the caller's promise.
            Some(unsafe { Out::at(needed, "needed") }?)
        };
        Ok(TextOut { buffer, capacity, needed })
    }

    /// Writes the text, or as many whole characters as fit, always ended by a NUL. No text at all is an empty one of which nothing is
    /// needed, not even the NUL.
    pub(crate) fn put(self, text: Option<&str>) -> sw_status {
        if let Some(out) = self.needed {
            out.put(text.map_or(0, |t| t.len() + 1));
        }
        self.buffer.map_or(SW_OK, |buffer| Self::fill(buffer, self.capacity, text.unwrap_or_default()))
    }

    fn fill(buffer: NonNull<u8>, capacity: usize, text: &str) -> sw_status {
        let Some(room) = capacity.checked_sub(1) else { return SW_BUFFER_TOO_SMALL };
        let mut end = room.min(text.len());
        while !text.is_char_boundary(end) {
            end -= 1;
        }
        // SAFETY: `end` + 1 bytes are no more than `capacity`, valid by the promise made to `at`; `end` is within the text, and the
        // caller's buffer cannot overlap it, for nothing that the library holds is lent for writing.
        unsafe {
            buffer.as_ptr().copy_from_nonoverlapping(text.as_ptr(), end);
            buffer.add(end).write(0);
        }
        if end < text.len() { SW_BUFFER_TOO_SMALL } else { SW_OK }
    }
}

/// The caller's array for a list; checked before any work.
pub(crate) struct ArrayOut<T> {
    first: Option<NonNull<T>>,
    capacity: usize,
    needed: Option<Out<usize>>,
}

impl<T> ArrayOut<T> {
    /// # Safety
    /// `pointer` is NULL or valid for writing `capacity` objects, `needed` is NULL or valid for a write, both until `put`.
    pub(crate) unsafe fn at(pointer: *mut T, capacity: usize, needed: *mut usize, name: &'static str) -> Result<ArrayOut<T>, Error> {
        let first = NonNull::new(pointer);
        match first {
            None if capacity > 0 => return Err(null(name)),
            None if needed.is_null() => return Err(null("needed")),
            Some(p) if !p.is_aligned() => return Err(misaligned(name)),
            _ => {}
        }
        if capacity.checked_mul(size_of::<T>()).is_none_or(|bytes| isize::try_from(bytes).is_err()) {
            return Err(too_large("capacity", capacity, "elements"));
        }
        let needed = if needed.is_null() {
            None
        } else {
            // SAFETY: the caller's promise.
            Some(unsafe { Out::at(needed, "needed") }?)
        };
        Ok(ArrayOut { first, capacity, needed })
    }

    /// Writes the list, or as much of its beginning as fits.
    pub(crate) fn put(self, list: impl ExactSizeIterator<Item = T>) -> sw_status {
        let count = list.len();
        if let Some(out) = self.needed {
            out.put(count);
        }
        let Some(first) = self.first else { return SW_OK };
        for (i, item) in list.take(self.capacity).enumerate() {
            // SAFETY: `i` is less than `capacity`, valid by the promise made to `at`; aligned, as checked there.
            unsafe { first.add(i).write(item) };
        }
        if count > self.capacity { SW_BUFFER_TOO_SMALL } else { SW_OK }
    }
}
