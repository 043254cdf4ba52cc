//! What sealant says beside its numbers; 5100 and on.

use crate::record::CautionCode;

/// Tape on a skew line without laps.
pub const SKEW_WITHOUT_LAPS: CautionCode = CautionCode {
    number: 5100,
    name: "skew-without-laps",
    text: "at {meeting} a ribbon cannot follow the surface uncut: allow a lap at each of the {changes} changes of face of a bay",
};

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[SKEW_WITHOUT_LAPS];
