//! Cautions about panels: 4000 and on.

use crate::record::CautionCode;

/// Trade allowances add nominal legs.
pub const THICKNESS_IGNORED: CautionCode = CautionCode {
    number: 4000,
    name: "thickness-ignored",
    text: "the developed width {width} adds nominal legs and ignores the sheet's thickness; good to 1/32 in at roof gauges",
};

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[THICKNESS_IGNORED];
