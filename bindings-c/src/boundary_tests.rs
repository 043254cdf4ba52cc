#![allow(unsafe_code, clippy::undocumented_unsafe_blocks, reason = "calls the exports as C does, with pointers to locals")]

use crate::boundary::{TextOut, array, caught, guard, text_in};
use crate::error::*;
use crate::length::{sw_length, sw_length_parse};
use crate::status::*;
use proptest::prelude::*;
use seamwright_core::error::{Error, ErrorKind, Faults};
use std::ptr::{null, null_mut};

#[test]
fn a_panic_becomes_a_status_and_an_error() {
    let mut error: *mut sw_error = null_mut();
    let status = unsafe { guard(&raw mut error, || panic!("the guard's own test, {}", 1)) };
    assert_eq!(status, SW_INTERNAL);
    assert_eq!(unsafe { sw_error_kind(error) }, SW_INTERNAL);
    let mut buffer = [0; 64];
    assert_eq!(unsafe { sw_error_value(error, buffer.as_mut_ptr(), buffer.len(), null_mut()) }, SW_OK);
    assert_eq!(unsafe { std::ffi::CStr::from_ptr(buffer.as_ptr()) }, c"the guard's own test, 1");
    unsafe { sw_error_free(error) };
    assert_eq!(unsafe { guard(null_mut(), || std::panic::panic_any(7)) }, SW_INTERNAL);
    assert_eq!(caught(9, || panic!("the guard's own test")), 9);
}

#[test]
fn a_refusal_is_handed_over_and_success_clears_it() {
    let mut error: *mut sw_error = std::ptr::dangling_mut();
    assert_eq!(unsafe { guard(&raw mut error, || Ok(SW_OK)) }, SW_OK);
    assert!(error.is_null());
    assert_eq!(unsafe { guard(&raw mut error, || Err(Error::new(ErrorKind::Unit, "x"))) }, SW_UNIT);
    assert!(!error.is_null());
    unsafe { sw_error_free(error) };
}

#[test]
fn further_faults_are_read_in_place() {
    let mut faults = Faults::default();
    faults.add(Error::new(ErrorKind::Missing, "first").at("a"));
    faults.add(Error::new(ErrorKind::Parse, "second").at("b").value_of("v").pointing(0, 1));
    let mut error: *mut sw_error = null_mut();
    assert_eq!(unsafe { guard(&raw mut error, || faults.check().map(|()| SW_OK)) }, SW_MISSING);
    unsafe {
        assert_eq!(sw_error_other_count(error), 1);
        let other = sw_error_other_at(error, 0);
        assert_eq!(sw_error_kind(other), SW_PARSE);
        let (mut start, mut end) = (9, 9);
        assert_eq!(sw_error_span(other, &raw mut start, &raw mut end), SW_OK);
        assert_eq!((start, end), (0, 1));
        assert_eq!(sw_error_span(error, &raw mut start, &raw mut end), SW_MISSING);
        assert_eq!((start, end), (0, 1));
        assert!(sw_error_other_at(error, 1).is_null());
        sw_error_free(error);
    }
}

#[test]
fn null_and_misaligned_pointers_are_refused() {
    let refused = |e: Error| (e.kind(), e.path().to_owned());
    assert_eq!(unsafe { text_in(null(), 0, "text") }.map_err(refused), Err((ErrorKind::Missing, "text".to_owned())));
    assert_eq!(unsafe { array::<u64>(null(), 1, "items") }.map_err(refused), Err((ErrorKind::Missing, "items".to_owned())));
    assert_eq!(unsafe { array::<u64>(null(), 0, "items") }, Ok(&[][..]));
    let bytes = [0_u64; 2];
    let odd = bytes.as_ptr().cast::<u8>().wrapping_add(1).cast::<u64>();
    assert_eq!(unsafe { array(odd, 1, "items") }.map_err(refused), Err((ErrorKind::OutOfRange, "items".to_owned())));
    assert_eq!(unsafe { array(bytes.as_ptr(), usize::MAX / 2, "items") }.map_err(refused), Err((ErrorKind::TooLarge, "items".to_owned())));
    assert_eq!(unsafe { text_in(c"x".as_ptr(), usize::MAX, "text") }.map_err(refused), Err((ErrorKind::TooLarge, "text".to_owned())));
}

#[test]
fn text_that_is_not_utf_8_is_pointed_at() {
    let bytes = b"12\xff mm";
    let e = unsafe { text_in(bytes.as_ptr().cast(), bytes.len(), "text") }.unwrap_err();
    assert_eq!((e.kind(), e.span(), e.value()), (ErrorKind::Parse, Some((2, 5)), Some("12\u{fffd} mm")));
}

proptest! {
    #[test]
    fn text_out_never_leaves_the_buffer_and_is_always_ended(text in ".{0,40}", capacity in 0_usize..64) {
        let mut buffer = [0x55_u8; 80];
        let mut needed = usize::MAX;
        let out = unsafe { TextOut::at(buffer.as_mut_ptr().cast(), capacity, &raw mut needed) }.unwrap();
        let status = out.put(Some(&text));
        prop_assert_eq!(needed, text.len() + 1);
        prop_assert_eq!(status, if capacity > text.len() { SW_OK } else { SW_BUFFER_TOO_SMALL });
        prop_assert!(buffer[capacity..].iter().all(|&b| b == 0x55));
        if capacity > 0 {
            let kept = (0..capacity).rev().find(|&n| n <= text.len() && text.is_char_boundary(n)).unwrap();
            prop_assert_eq!(&buffer[..kept], &text.as_bytes()[..kept]);
            prop_assert_eq!(buffer[kept], 0);
        }
    }

    #[test]
    fn any_bytes_parse_or_are_refused_without_a_write(bytes in proptest::collection::vec(any::<u8>(), 0..40)) {
        let mut length = sw_length { pm: 77 };
        let mut error: *mut sw_error = null_mut();
        let status = unsafe { sw_length_parse(bytes.as_ptr().cast(), bytes.len(), &raw mut length, &raw mut error) };
        prop_assert_ne!(status, SW_INTERNAL);
        prop_assert_eq!(status == SW_OK, error.is_null());
        if status != SW_OK {
            prop_assert_eq!(length.pm, 77);
            prop_assert_eq!(unsafe { sw_error_kind(error) }, status);
            unsafe { sw_error_free(error) };
        }
    }
}
