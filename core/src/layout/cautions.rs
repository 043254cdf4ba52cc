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

/// A seam nearer to something than its clearance.
pub const SEAM_NOT_CLEAR: CautionCode = CautionCode {
    number: 6106,
    name: "seam-not-clear",
    text: "no shift keeps the seams clear of everything: one comes to {distance} from {name}, which wants {clearance}",
};
/// Laps that look into the wind.
pub const LAPS_FACE_WIND: CautionCode =
    CautionCode { number: 6107, name: "laps-face-wind", text: "laid {way}, the open edges of the laps look to the side that wind with rain comes from" };
/// Creep that would make the end panel too narrow.
pub const CREEP_NARROWS_END: CautionCode = CautionCode {
    number: 6108,
    name: "creep-narrows-end",
    text: "creep of {each} a panel over {panels} panels would leave the end panel {width} wide, less than its least of {least}; recovered at every mark it is {kept}",
};
/// Creep that would part seams that meet across a line.
pub const CREEP_PARTS_SEAMS: CautionCode = CautionCode {
    number: 6109,
    name: "creep-parts-seams",
    text: "with creep of {each} a panel on both planes, seams that should meet may be {apart} apart at a mark, more than {within}; check at every {every} panels or fewer",
};
/// Creep that cannot be pulled back before the next mark.
pub const PULL_TOO_GREAT: CautionCode = CautionCode {
    number: 6110,
    name: "pull-too-great",
    text: "to recover {drift} over {panels} panels each must be pulled by {pull}, more than the {most} that it can be",
};
/// Pieces shorter than the least that the caller wants.
pub const SHORT_PIECE: CautionCode = CautionCode {
    number: 6111,
    name: "short-piece",
    text: "{count} piece(s) are shorter than {least}, and no neighbour can take them in; the first is of this panel",
};
/// Bundles in which a longer piece lies on a shorter one.
pub const LONGER_ON_TOP: CautionCode = CautionCode {
    number: 6112,
    name: "longer-on-top",
    text: "in {count} bundle(s) a longer piece lies on a shorter one, because it is laid before it: support its end; this is the first",
};
/// Formed panels that a revision cuts down.
pub const CUT_DOWN: CautionCode = CautionCode {
    number: 6113,
    name: "cut-down",
    text: "{count} formed piece(s) are cut down or ripped: an end that was notched or folded is cut off or made again, and each gets its new mark first",
};
/// Every caution of this room.
pub const ALL: &[CautionCode] = &[
    NARROW_PANEL,
    NO_PANEL,
    NOTCHED,
    END_LAPPED,
    BOTH_ENDS_SKEW,
    PINNED_TWICE,
    SEAM_NOT_CLEAR,
    LAPS_FACE_WIND,
    CREEP_NARROWS_END,
    CREEP_PARTS_SEAMS,
    PULL_TOO_GREAT,
    SHORT_PIECE,
    LONGER_ON_TOP,
    CUT_DOWN,
];
