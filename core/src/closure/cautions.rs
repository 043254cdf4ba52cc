//! What a closure says beside its numbers; 5000 and on.

use crate::record::CautionCode;

/// Fasteners at a starting figure, without an engineer's spacing.
pub const FASTENERS_NOT_ENGINEERED: CautionCode =
    CautionCode { number: 5000, name: "closure-fasteners-not-engineered", text: "fasteners at {spacing} on centre at most, a starting figure: not engineered" };
/// End fasteners outside the usual distance from their tabs.
pub const FASTENER_FROM_TAB_UNUSUAL: CautionCode =
    CautionCode { number: 5001, name: "fastener-from-tab-unusual", text: "the end fasteners are {found} from their tabs; {least} to {greatest} is usual" };
/// A blank of nominal sizes.
pub const BENDS_IGNORED: CautionCode =
    CautionCode { number: 5002, name: "bends-ignored", text: "the blank adds the nominal flanges and web; what the bends take is left to the trim's rule" };

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[FASTENERS_NOT_ENGINEERED, FASTENER_FROM_TAB_UNUSUAL, BENDS_IGNORED];
