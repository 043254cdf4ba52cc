//! What a cutting plan says beside its numbers; 2200 and on.

use crate::record::CautionCode;

/// The plan is the best found, and a better one has not been ruled out.
pub const NOT_PROVEN: CautionCode = CautionCode {
    number: 2200,
    name: "not-proven",
    text: "the plan takes {found}; no plan can take less than {bound}, and whether one takes less than this is not known",
};

/// A slitting list is the best found, and a shorter one has not been ruled out.
pub const DROPS_NOT_PROVEN: CautionCode = CautionCode {
    number: 2201,
    name: "drops-not-proven",
    text: "the list takes {found}; it cannot be done with fewer than {bound}, and whether fewer than this would do is not known",
};

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[NOT_PROVEN, DROPS_NOT_PROVEN];
