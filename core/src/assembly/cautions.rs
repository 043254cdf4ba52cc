//! What an assembly says beside its numbers; 7000 and on.

use crate::record::CautionCode;

/// A bay that no closure piece fits.
pub const BAY_TOO_SMALL: CautionCode = CautionCode {
    number: 7000,
    name: "bay-too-small",
    text: "{count} bay(s) of {width}, the first from {from} to {to} along the line, take no closure piece: {reason}; fill them by hand and seal them",
};
/// A row of fasteners that no engineer has given.
pub const ROW_NOT_ENGINEERED: CautionCode =
    CautionCode { number: 7001, name: "row-not-engineered", text: "fasteners at {spacing} on centre are not an engineer's figure but from: {source}" };
/// A row on a run too short for both end distances.
pub const ROW_SHORT: CautionCode = CautionCode {
    number: 7002,
    name: "row-short",
    text: "the run of {run} is too short for an end distance of {end} at both ends: one fastener in its middle",
};
/// Stretches of a line without panels.
pub const NO_PANELS_ALONG: CautionCode =
    CautionCode { number: 7003, name: "no-panels-along", text: "{length} of the line has no panels beside it, the first stretch from {from} to {to}" };
/// Bays that end at a corner of the roof.
pub const CORNER_BAY: CautionCode = CautionCode {
    number: 7004,
    name: "corner-bay",
    text: "{count} bay(s) end at a corner and not at a seam, the first from {from} to {to} along the line: cut their closures on the roof",
};
/// Lines that meet without a rule for which trim laps over which.
pub const NO_CORNER_RULE: CautionCode = CautionCode {
    number: 7005,
    name: "no-corner-rule",
    text: "{kinds} meet at {count} corner(s), the first at {x}, {y}, {z}, and no rule says which laps over which: decide it before the trims are cut",
};
/// A valley that ends on a plane.
pub const VALLEY_RUNS_OUT: CautionCode = CautionCode {
    number: 7016,
    name: "valley-runs-out",
    text: "the valley ends on the roof below it and not at an eave: the pan runs on {run} along its centreline and is cut level over {cut}; the panels that it lies on are broken there, their lower pieces under the pan's end and their upper pieces over it; bed the end, and the pieces' laps beside it, in sealant",
};
/// A seam too short for both end distances of its clips.
pub const SHORT_SEAM: CautionCode = CautionCode {
    number: 7006,
    name: "short-seam",
    text: "{count} seam(s) are too short for an end distance of {end} at both ends: one clip in the middle of each",
};
/// A seam that the hold-backs leave nothing of.
pub const NO_CLIP_ROOM: CautionCode =
    CautionCode { number: 7007, name: "no-clip-room", text: "{count} seam(s) have no room for a clip between the ends of their panels" };
/// Clips at a spacing that no engineer has given.
pub const CLIPS_NOT_ENGINEERED: CautionCode =
    CautionCode { number: 7008, name: "clips-not-engineered", text: "clips at {spacing} on centre are not an engineer's figure but from: {source}" };
/// A seam without a clip in the fixed zone.
pub const NO_FIXED_CLIP: CautionCode = CautionCode {
    number: 7009,
    name: "no-fixed-clip",
    text: "{count} seam(s) have no clip in the fixed zone, the first at {x} across: nothing fixes their panels there",
};
/// A panel pinned at two levels.
pub const TWO_PINS: CautionCode = CautionCode {
    number: 7010,
    name: "two-pins",
    text: "{count} panel(s) are pinned at two levels, the first, {panel}, {apart} apart: they cannot move with heat",
};
/// A panel pinned along its whole side.
pub const PINNED_ALONG: CautionCode = CautionCode {
    number: 7011,
    name: "pinned-along",
    text: "{count} panel(s) are pinned along a side, the first is {panel}: they cannot move with heat and will buckle",
};
/// A panel that nothing pins.
pub const NO_PIN: CautionCode =
    CautionCode { number: 7012, name: "no-pin", text: "{count} panel(s) have no fixed line, the first is {panel}: nothing holds them on the slope" };
/// Panels whose moving end lacks the room.
pub const END_FAILS: CautionCode = CautionCode {
    number: 7013,
    name: "end-fails",
    text: "{count} panel(s) have too little room at their {end} end, the worst, {panel}, over {length}: it has a fold of {fold} and a gap of {gap}, and {needs}",
};
/// A moving end that no fold and gap describe.
pub const END_NOT_CHECKED: CautionCode = CautionCode {
    number: 7014,
    name: "end-not-checked",
    text: "{count} panel(s) move at their {end} end, where they hook nothing: leave room for {travel} over the year",
};
/// Seams whose hollow passes through the line.
pub const PLUG_SEAMS: CautionCode =
    CautionCode { number: 7015, name: "plug-seams", text: "the seams are hollow: plug all {count} where they pass through the closures" };

/// A sealed line that does not go through.
pub const SEAL_BREAKS: CautionCode = CautionCode {
    number: 7017,
    name: "seal-breaks",
    text: "the sealed line on the {side} breaks {count} time(s), the first at {from} along the line{bay} ({name}): {missing} is missing; {cure}",
};
/// Every caution of this room.
pub const ALL: &[CautionCode] = &[
    BAY_TOO_SMALL,
    ROW_NOT_ENGINEERED,
    ROW_SHORT,
    NO_PANELS_ALONG,
    CORNER_BAY,
    NO_CORNER_RULE,
    SHORT_SEAM,
    NO_CLIP_ROOM,
    CLIPS_NOT_ENGINEERED,
    NO_FIXED_CLIP,
    TWO_PINS,
    PINNED_ALONG,
    NO_PIN,
    END_FAILS,
    END_NOT_CHECKED,
    PLUG_SEAMS,
    VALLEY_RUNS_OUT,
    SEAL_BREAKS,
];
