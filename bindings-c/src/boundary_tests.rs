#![allow(unsafe_code, clippy::undocumented_unsafe_blocks, reason = "calls the exports as C does, with pointers to locals")]

use crate::boundary::{ArrayOut, TextOut, array, caught, guard, text_in};
use crate::error::*;
use crate::length::{sw_length, sw_length_format, sw_length_parse};
use crate::pitch::{sw_pitch, sw_pitch_parse};
use crate::quantity::sw_convert;
use crate::status::*;
use proptest::prelude::*;
use seamwright_core::error::{Error, ErrorKind, Faults};
use seamwright_core::pitch::Pitch;
use seamwright_core::units::{Angle, Length};
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
    fn array_out_never_leaves_the_array(list in proptest::collection::vec(any::<u64>(), 0..20), capacity in 0_usize..24, asked in any::<bool>()) {
        let mut array = [0x55_u64; 32];
        let mut needed = usize::MAX;
        let out = unsafe { ArrayOut::at(array.as_mut_ptr(), capacity, if asked { &raw mut needed } else { null_mut() }, "array") }.unwrap();
        let status = out.put(list.iter().copied());
        let kept = capacity.min(list.len());
        prop_assert_eq!(needed, if asked { list.len() } else { usize::MAX });
        prop_assert_eq!(status, if kept == list.len() { SW_OK } else { SW_BUFFER_TOO_SMALL });
        prop_assert_eq!(&array[..kept], &list[..kept]);
        prop_assert!(array[kept..].iter().all(|&x| x == 0x55));
    }

    #[test]
    fn any_bytes_are_read_or_refused_without_a_write(
        bytes in prop_oneof![proptest::collection::vec(any::<u8>(), 0..40), "[-0-9 '\"/:.%a-z⁄½°]{0,16}".prop_map(String::into_bytes)],
        quantity in 0..16_i32,
        pm in any::<i64>(),
    ) {
        let (text, len) = (bytes.as_ptr().cast(), bytes.len());
        let (mut length, mut pitch, mut value, mut needed) = (sw_length { pm: 77 }, sw_pitch::from(Pitch::FLAT), 77.0_f64, 77_usize);
        let mut buffer = [0x55; 64];
        let mut error: *mut sw_error = null_mut();
        let error_at = &raw mut error;
        let ended = |status: sw_status, unwritten: bool| {
            prop_assert_ne!(status, SW_INTERNAL);
            prop_assert_eq!(status == SW_OK, unsafe { error_at.read() }.is_null());
            prop_assert_eq!(unsafe { sw_error_kind(error_at.read()) }, status);
            prop_assert!(status == SW_OK || unwritten);
            unsafe { sw_error_free(error_at.read()) };
            Ok(())
        };
        let status = unsafe { sw_length_parse(text, len, &raw mut length, error_at) };
        ended(status, length.pm == 77)?;
        let status = unsafe { sw_pitch_parse(text, len, &raw mut pitch, error_at) };
        ended(status, pitch == sw_pitch::from(Pitch::FLAT))?;
        let status = unsafe { sw_convert(quantity, text, len, text, len, &raw mut value, error_at) };
        ended(status, value.to_bits() == 77.0_f64.to_bits())?;
        let status = unsafe { sw_length_format(sw_length { pm }, text, len, buffer.as_mut_ptr(), buffer.len(), &raw mut needed, error_at) };
        ended(status, needed == 77 && buffer == [0x55; 64])?;
    }

    #[test]
    fn a_pitch_goes_to_c_and_back_as_it_was(rise in 0..i64::MAX, run in 1..i64::MAX, degrees in 0.0..90.0_f64) {
        let ratio = Pitch::rise_run(Length::from_pm(rise), Length::from_pm(run));
        let angle = Angle::degrees_from(degrees).and_then(Pitch::from_angle);
        for pitch in [ratio, angle].into_iter().flatten() {
            let back = Pitch::try_from(sw_pitch::from(pitch)).unwrap();
            prop_assert_eq!((back.as_rise_run(), back), (pitch.as_rise_run(), pitch));
        }
    }
}
