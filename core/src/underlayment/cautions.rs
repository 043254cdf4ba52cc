//! The cautions of this room, numbered from 5200.

use crate::record::CautionCode;

/// End laps of neighbouring courses that lie too near.
pub const LAPS_TOO_NEAR: CautionCode = CautionCode {
    number: 5200,
    name: "laps-too-near",
    text: "{count} end lap(s) lie nearer than {stagger} to one in the course below, the first in course {course} at {at} across",
};

/// A membrane under hot metal whose rating is not known, or is too low.
pub const NOT_FOR_HOT_METAL: CautionCode = CautionCode {
    number: 5201,
    name: "not-for-hot-metal",
    text: "the {what} lies under metal that reaches {hottest} and is rated to {rated}: choose a high-temperature kind, or confirm it with its maker",
};

/// A valley membrane that does not reach beyond its pan.
pub const VALLEY_MEMBRANE_NARROW: CautionCode = CautionCode {
    number: 5202,
    name: "valley-membrane-narrow",
    text: "the membrane is {width} wide and the valley's pan {pan}: it reaches less than {least} beyond the pan on each side",
};

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[LAPS_TOO_NEAR, NOT_FOR_HOT_METAL, VALLEY_MEMBRANE_NARROW];
