//! The cautions of this room, numbered from 2000.

use crate::record::CautionCode;

/// A pitch under the minimum of its covering.
pub const BELOW_MINIMUM_SLOPE: CautionCode =
    CautionCode { number: 2000, name: "below-minimum-slope", text: "{pitch} is under the minimum of {limit} for {covering}" };

/// A pitch that meets only the rounded percentage that the clause prints.
pub const ROUNDED_PERCENTAGE: CautionCode = CautionCode {
    number: 2001,
    name: "rounded-percentage",
    text: "{pitch} meets the {printed} % that the clause prints, but not the ratio {limit}, of which that percentage is a rounding",
};

/// A minimum that was recalled, not read.
pub const MINIMUM_FROM_MEMORY: CautionCode =
    CautionCode { number: 2002, name: "minimum-from-memory", text: "the minimum of {limit} for {covering} is from memory: confirm it in the document" };

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[BELOW_MINIMUM_SLOPE, ROUNDED_PERCENTAGE, MINIMUM_FROM_MEMORY];
