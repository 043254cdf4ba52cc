//! Cautions about layouts: 6100 and on.

use crate::record::CautionCode;

/// A panel narrower than the caller's limit.
pub const NARROW_PANEL: CautionCode =
    CautionCode { number: 6100, name: "narrow-panel", text: "the panel is {width} wide, less than the least of {least}; another start would move it" };
/// A run that the hold-backs leave nothing of.
pub const NO_PANEL: CautionCode = CautionCode {
    number: 6101,
    name: "no-panel",
    text: "{count} part(s) of the plane get no panel, because the hold-backs of their ends are longer than they are; this is the first",
};
/// A panel with an opening or a notch within its width.
pub const NOTCHED: CautionCode = CautionCode {
    number: 6102,
    name: "notched",
    text: "{count} panel(s) pass an opening or a notch within their width and are cut around it; this is the first",
};
/// Panels in more than one piece.
pub const END_LAPPED: CautionCode = CautionCode {
    number: 6103,
    name: "end-lapped",
    text: "{count} panel(s) are longer than {limit} ({governs}) and come in pieces with end laps of {lap}; this is the first",
};
/// Panels whose flat rectangle is longer than any of their seams.
pub const BOTH_ENDS_SKEW: CautionCode = CautionCode {
    number: 6104,
    name: "both-ends-skew",
    text: "{count} panel(s) have two skew ends and are ordered longer than any seam measures; this is the first",
};
/// Panels that are held at both ends.
pub const PINNED_TWICE: CautionCode =
    CautionCode { number: 6105, name: "pinned-twice", text: "{count} panel(s) are pinned at both ends and cannot move with heat; this is the first" };

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[NARROW_PANEL, NO_PANEL, NOTCHED, END_LAPPED, BOTH_ENDS_SKEW, PINNED_TWICE];
