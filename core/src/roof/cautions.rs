//! What the roof room warns of.

use crate::record::CautionCode;

/// A line that cannot be named from the geometry of its sides.
pub const UNKNOWN_LINE: CautionCode = CautionCode {
    number: 3100,
    name: "unknown-line",
    text: "the line cannot be named from its sides ({why}); say what it is before metal is laid out along it",
};
/// Two planes that are one plane.
pub const COPLANAR: CautionCode = CautionCode { number: 3101, name: "coplanar", text: "{first} and {second} lie in one plane; their panels could run through" };
/// Water that runs into a wall.
pub const WATER_INTO_WALL: CautionCode =
    CautionCode { number: 3102, name: "water-into-wall", text: "water on {plane} runs into the wall {wall}: a dead valley, which needs a cricket or a gutter" };
/// A narrow plane.
pub const SLIVER: CautionCode = CautionCode { number: 3103, name: "sliver", text: "the plane is only {width} wide in the mean, less than {limit}" };
/// A plane below the minimum slope.
pub const BELOW_MINIMUM: CautionCode =
    CautionCode { number: 3104, name: "below-minimum-slope", text: "the plane has {pitch}, less than the minimum of {minimum}" };
/// A wall where two planes meet.
pub const WALL_ON_SHARED_LINE: CautionCode =
    CautionCode { number: 3105, name: "wall-on-shared-line", text: "the wall {wall} stands where {first} and {second} meet; make it a gap between the planes" };
/// A wall that no plane reaches.
pub const UNUSED_WALL: CautionCode = CautionCode { number: 3106, name: "unused-wall", text: "no plane runs into the wall {wall}" };
/// Water of one plane that runs over a sloping line onto another plane.
pub const WATER_ACROSS: CautionCode = CautionCode { number: 3107, name: "water-across", text: "water of {from} runs across the line against {onto}" };
/// A valley without slope of its own.
pub const LEVEL_VALLEY: CautionCode =
    CautionCode { number: 3108, name: "level-valley", text: "the valley between {first} and {second} is level; water stands unless it is built as a gutter" };
/// Two edges that almost meet.
pub const NEAR_MISS: CautionCode = CautionCode {
    number: 3109,
    name: "near-miss",
    text: "{first} and {second} run side by side {gap} apart, more than the tolerance of {tolerance}: they do not meet",
};

/// Water of one plane that runs over a sloping line and away down another plane.
pub const WATER_OVER: CautionCode =
    CautionCode { number: 3110, name: "water-over", text: "water of {from} runs over the line, which bends down, and away down {onto}" };
/// Readings that nothing checks.
pub const UNCHECKED_READINGS: CautionCode = CautionCode {
    number: 3111,
    name: "unchecked-readings",
    text: "nothing checks {readings} on {plane}: a slip there goes into the shape unseen; measure a diagonal more",
};
/// One check only.
pub const ONE_CHECK: CautionCode = CautionCode {
    number: 3112,
    name: "one-check",
    text: "one measurement more than needed shows that {plane} closes, but not which reading is wrong where it does not",
};
/// A measured plane without a level side.
pub const NO_LEVEL_SIDE: CautionCode = CautionCode {
    number: 3113,
    name: "no-level-side",
    text: "no side of {plane} is said to be level: its axes are laid along {side}, and square and parallel are told from there",
};
/// Joined planes without a check.
pub const NOTHING_CLOSES: CautionCode =
    CautionCode { number: 3114, name: "nothing-closes", text: "the joints hold no check: a slip in a plane or a pitch goes into the roof unseen" };

/// A cricket wider than its curb.
pub const CRICKET_END: CautionCode = CautionCode {
    number: 3115,
    name: "cricket-end",
    text: "the cricket behind {hole} reaches past its curb: each end is an upright face, {height} high at the curb, that is framed and closed",
};

/// Every caution of the room.
pub const ALL: &[CautionCode] = &[
    UNKNOWN_LINE,
    COPLANAR,
    WATER_INTO_WALL,
    SLIVER,
    BELOW_MINIMUM,
    WALL_ON_SHARED_LINE,
    UNUSED_WALL,
    WATER_ACROSS,
    LEVEL_VALLEY,
    NEAR_MISS,
    WATER_OVER,
    UNCHECKED_READINGS,
    ONE_CHECK,
    NO_LEVEL_SIDE,
    NOTHING_CLOSES,
    CRICKET_END,
];
