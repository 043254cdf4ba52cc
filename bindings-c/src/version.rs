//! Which library this is.

#![allow(unsafe_code, reason = "exports: fixed names")]

use crate::abi::SW_ABI_VERSION;
use crate::boundary::caught;
use core::ffi::c_char;

/// The release, which the header carries as a macro of the same name.
pub(crate) const RELEASE: &str = concat!(env!("CARGO_PKG_VERSION"), "\0");

/// The release of the library that runs, as `1.2.3`: constant text, ended by a NUL, not to be freed.
#[unsafe(no_mangle)]
pub extern "C" fn sw_version() -> *const c_char {
    caught(core::ptr::null(), || RELEASE.as_ptr().cast())
}

/// The number of the C interface of the library that runs.
#[unsafe(no_mangle)]
pub extern "C" fn sw_abi_version() -> u32 {
    caught(u32::MAX, || SW_ABI_VERSION)
}
