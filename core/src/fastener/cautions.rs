//! What a fastener's strength or spacing says beside its numbers; 3200 and on.

use crate::record::CautionCode;

/// A resistance that no document or engineer stands behind.
pub const NOT_ENGINEERED: CautionCode = CautionCode { number: 3200, name: "not-engineered", text: "the resistance rests on {source}: not engineered" };
/// A resistance or factor that was recalled, not read.
pub const RESTS_ON_MEMORY: CautionCode = CautionCode { number: 3201, name: "rests-on-memory", text: "a figure rests on {source}: confirm it in the document" };
/// A screw whose own strength is not given.
pub const SCREW_STRENGTH_UNKNOWN: CautionCode =
    CautionCode { number: 3202, name: "screw-strength-unknown", text: "the screw's own {which} strength is not given; only the sheet was checked" };
/// A rule of which the edition is not certain.
pub const EDITION_NOT_CONFIRMED: CautionCode =
    CautionCode { number: 3203, name: "edition-not-confirmed", text: "the edition of the {which} rule was not confirmed: check it in the standard" };
/// A head or washer smaller than the standard wants for pull-over.
pub const HEAD_UNDER_MINIMUM: CautionCode =
    CautionCode { number: 3204, name: "head-under-minimum", text: "{which} of {found} is under {least}, the least for pull-over" };
/// A head or washer larger than what pull-over may count.
pub const HEAD_COUNTED_TO_LIMIT: CautionCode =
    CautionCode { number: 3205, name: "head-counted-to-limit", text: "the effective pull-over diameter of {found} is counted as {limit} only" };

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[NOT_ENGINEERED, RESTS_ON_MEMORY, SCREW_STRENGTH_UNKNOWN, EDITION_NOT_CONFIRMED, HEAD_UNDER_MINIMUM, HEAD_COUNTED_TO_LIMIT];
