//! What a job's packet says beside its numbers.

use crate::record::CautionCode;

/// A line that the roof could not name.
pub const LINE_UNKNOWN: CautionCode = CautionCode {
    number: 8001,
    name: "line-unknown",
    text: "the line's kind is unknown: panels end at it with no hold-back and no trim is made for it; work it out by hand",
};

/// Heat movement without temperatures.
pub const MOVEMENT_UNCHECKED: CautionCode =
    CautionCode { number: 8002, name: "movement-unchecked", text: "the job gives no temperatures: no fold, gap or clip is checked for heat movement" };

/// A job that does not say how shallow its panel may lie.
pub const SLOPE_OF_PANEL_UNKNOWN: CautionCode = CautionCode {
    number: 8003,
    name: "slope-of-panel-unknown",
    text: "the job gives no minimum slope of the panel: planes are held only to the {minimum} that the code asks of {covering}",
};

/// A panel whose edge is turned up at an expansion joint, of more sheet than the coil has.
pub const JOINT_EDGE_SHEET: CautionCode = CautionCode {
    number: 8004,
    name: "joint-edge-sheet",
    text: "at the joint the panel on {plane} takes {needed} of sheet from its seam to the top of its edge, and the coil of {coil} has {flat} there",
};

/// A cap over sides that part.
pub const CAP_PARTS: CautionCode = CautionCode {
    number: 8005,
    name: "cap-parts",
    text: "under the cap the two sides close by {closes} in the heat and open by {opens} in the cold, level; the ends rise by {rises} and fall by {falls}: the cap must let all of it pass",
};

/// Receiver folds that lap with their pan.
pub const RECEIVERS_LAP: CautionCode = CautionCode {
    number: 8006,
    name: "receivers-lap",
    text: "the pan laps {count} time(s) with its receiver folds, open {opening}: over {lap} open the lower piece's fold to {lower} and the front of the upper piece's to {upper}, and slide the one into the other; a fold that is cut away at the lap holds neither the piece nor the panels there",
};

/// An end that wants a cap, of a line without a trim.
pub const CAP_WITHOUT_TRIM: CautionCode = CautionCode {
    number: 8007,
    name: "cap-without-trim",
    text: "nothing lies over the {end} of {line}, and no trim of it is known: what closes it there is not ordered",
};

/// A kick-out that throws past the gutter, or short of it.
pub const KICK_OUT_MISSES_GUTTER: CautionCode = CautionCode {
    number: 8008,
    name: "kick-out-misses-gutter",
    text: "the kick-out's outer end stands {out} past the line of {eave}, whose gutter lies open from {back} to {front}: another past_eave brings it over the gutter",
};

/// Every caution of this room.
pub const ALL: &[CautionCode] =
    &[LINE_UNKNOWN, MOVEMENT_UNCHECKED, SLOPE_OF_PANEL_UNKNOWN, JOINT_EDGE_SHEET, CAP_PARTS, RECEIVERS_LAP, CAP_WITHOUT_TRIM, KICK_OUT_MISSES_GUTTER];
