//! What a junction's result says beside its numbers.

use crate::record::CautionCode;

/// A flange that nothing carries over some width.
pub const UNSUPPORTED_FLANGE: CautionCode = CautionCode {
    number: 6001,
    name: "unsupported-flange",
    text: "nothing carries the flange over {width}, more than the limit of {limit}: a boot or snow bends it; give packing or a filler under it",
};

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[UNSUPPORTED_FLANGE];
