//! What a movement says beside its numbers; 3300 and on.

use crate::record::CautionCode;

/// The gap closes: metal buckles or pushes its cleat.
pub const GAP_CLOSES: CautionCode =
    CautionCode { number: 3300, name: "gap-closes", text: "at {temperature} the gap is {found}, {wanted} is wanted; a gap of {would_do} when laid would do" };
/// The fold draws off what it hooks.
pub const FOLD_DRAWS_OFF: CautionCode =
    CautionCode { number: 3301, name: "fold-draws-off", text: "at {temperature} the fold holds by {found}, {wanted} is wanted; a fold of {would_do} would do" };
/// Movement along the line, which a skew end has.
pub const MOVES_ALONG_LINE: CautionCode =
    CautionCode { number: 3302, name: "moves-along-line", text: "the end also moves {along} along the line over the year: leave room at the notches" };

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[GAP_CLOSES, FOLD_DRAWS_OFF, MOVES_ALONG_LINE];
