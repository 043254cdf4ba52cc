//! The status codes: 0, and the fixed numbers of the core's kinds of error.

/// What every call that can fail returns: `SW_OK`, or one of the numbers below. Numbers never change their meaning; later
/// releases may add some, so treat an unknown number as a failure.
pub type sw_status = i32;

/// The call did what it says, and its outputs are written.
pub const SW_OK: sw_status = 0;
/// Text that does not follow the notation; `sw_error_span` points at the character. Also text that is not UTF-8.
pub const SW_PARSE: sw_status = 1;
/// A unit is missing, or is not one for this quantity.
pub const SW_UNIT: sw_status = 2;
/// A number that is NaN or infinite.
pub const SW_NOT_FINITE: sw_status = 3;
/// A value outside the range that has a meaning.
pub const SW_OUT_OF_RANGE: sw_status = 4;
/// Something that is needed and is not there; also a NULL where a pointer is needed.
pub const SW_MISSING: sw_status = 5;
/// A name or a number that is not known.
pub const SW_UNKNOWN: sw_status = 6;
/// Two inputs that contradict each other.
pub const SW_CONFLICT: sw_status = 7;
/// Geometry that cannot be: self-crossing, overlapping, degenerate.
pub const SW_GEOMETRY: sw_status = 8;
/// A design that cannot be built as asked; the value says by how much it fails.
pub const SW_IMPOSSIBLE: sw_status = 9;
/// A result too large for its type.
pub const SW_OVERFLOW: sw_status = 10;
/// A document that is not of the format or version expected.
pub const SW_FORMAT: sw_status = 11;
/// An input larger or deeper than the stated limit.
pub const SW_TOO_LARGE: sw_status = 12;
/// The caller asked the work to stop.
pub const SW_CANCELLED: sw_status = 13;
/// The text did not fit the caller's buffer, which holds its beginning; `*needed` says how many bytes do. No error is made.
pub const SW_BUFFER_TOO_SMALL: sw_status = 200;
/// A fault of the library itself: please report it.
pub const SW_INTERNAL: sw_status = 255;

/// The kinds of error with their constants, for the test that walks the core's list.
#[cfg(test)]
pub(crate) const NAMED: &[(&str, sw_status)] = &[
    ("SW_PARSE", SW_PARSE),
    ("SW_UNIT", SW_UNIT),
    ("SW_NOT_FINITE", SW_NOT_FINITE),
    ("SW_OUT_OF_RANGE", SW_OUT_OF_RANGE),
    ("SW_MISSING", SW_MISSING),
    ("SW_UNKNOWN", SW_UNKNOWN),
    ("SW_CONFLICT", SW_CONFLICT),
    ("SW_GEOMETRY", SW_GEOMETRY),
    ("SW_IMPOSSIBLE", SW_IMPOSSIBLE),
    ("SW_OVERFLOW", SW_OVERFLOW),
    ("SW_FORMAT", SW_FORMAT),
    ("SW_TOO_LARGE", SW_TOO_LARGE),
    ("SW_CANCELLED", SW_CANCELLED),
    ("SW_INTERNAL", SW_INTERNAL),
];
