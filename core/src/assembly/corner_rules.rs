//! Which trim laps over which where lines meet.
//!
//! Upper over lower, all the way down: the ridge over hips, valleys and rakes; the hip over valley and eave; the valley's pan and the rake over the
//! eave; a transition's trim over the eave beside it; a wall's flashing over all that is below it, the headwall's and a step's over the sidewall's; at a curb back over
//! side over front, and its sides over the lines of a cricket behind it. At a transition the upper plane's rake laps over its trim, and that over the lower plane's rake; so does the cap of an
//! expansion joint along the panels, which lies under ridge and hip, and over valley and eave. The flashing of a joint across the panels is as a transition's trim. Common practice, no published source.

use crate::roof::{Line, LineKind};

/// Each kind, and those that its trim laps over.
const OVER: &[(LineKind, &[LineKind])] = &[
    (LineKind::Ridge, &[LineKind::Hip, LineKind::Valley, LineKind::Rake, LineKind::ExpansionAlong]),
    // The top of a mono-slope is a one-sided ridge.
    (LineKind::HighEdge, &[LineKind::Hip, LineKind::Valley, LineKind::Rake, LineKind::ExpansionAlong]),
    (LineKind::Hip, &[LineKind::Valley, LineKind::Eave, LineKind::ExpansionAlong]),
    (LineKind::Valley, &[LineKind::Eave]),
    (LineKind::Rake, &[LineKind::Eave]),
    (LineKind::ExpansionAlong, &[LineKind::Valley, LineKind::Eave]),
    // A lower roof's transition trim runs over the eave trim that goes on beside it.
    (LineKind::SteepToShallow, &[LineKind::Eave]),
    (LineKind::ShallowToSteep, &[LineKind::Eave]),
    (LineKind::ExpansionAcross, &[LineKind::Eave]),
    (LineKind::Headwall, BELOW_A_HEADWALL),
    (LineKind::Sidewall, BELOW_WALLS),
    // The flashing at a riser's foot is a headwall's to the plane below it.
    (LineKind::Step, BELOW_A_HEADWALL),
    (LineKind::CurbBack, &[LineKind::CurbSide]),
    (LineKind::CurbSide, BESIDE_A_CURB),
];

const BELOW_A_HEADWALL: &[LineKind] = &[
    LineKind::Sidewall,
    LineKind::Ridge,
    LineKind::HighEdge,
    LineKind::Hip,
    LineKind::Valley,
    LineKind::SteepToShallow,
    LineKind::ShallowToSteep,
    LineKind::Rake,
    LineKind::ExpansionAlong,
    LineKind::ExpansionAcross,
    LineKind::Eave,
];

/// Behind a curb a cricket's ridge and valleys end at the curb as those of a roof do at a wall.
const BESIDE_A_CURB: &[LineKind] = &[LineKind::CurbFront, LineKind::Ridge, LineKind::Hip, LineKind::Valley, LineKind::Rake];

const BELOW_WALLS: &[LineKind] = &[
    LineKind::Ridge,
    LineKind::HighEdge,
    LineKind::Hip,
    LineKind::Valley,
    LineKind::SteepToShallow,
    LineKind::ShallowToSteep,
    LineKind::ExpansionAcross,
    LineKind::Rake,
    LineKind::Eave,
];

/// Whether a trim of the first kind laps over one of the second.
///
/// ```
/// use seamwright::assembly::laps_over;
/// use seamwright::roof::LineKind;
/// assert!(laps_over(LineKind::Ridge, LineKind::Hip) && laps_over(LineKind::Rake, LineKind::Eave));
/// assert!(!laps_over(LineKind::Eave, LineKind::Hip));
/// ```
#[must_use]
pub fn laps_over(over: LineKind, under: LineKind) -> bool {
    OVER.iter().any(|(kind, below)| *kind == over && below.contains(&under))
}

/// Whether one line's trim laps over another's: by their kinds, or, where a rake or a joint along the panels meets a transition or a joint across them, by which of its planes that belongs to.
pub(super) fn line_over(over: &Line, under: &Line) -> bool {
    let crossed =
        |line: &Line| line.crossing().filter(|_| matches!(line.kind, LineKind::SteepToShallow | LineKind::ShallowToSteep | LineKind::ExpansionAcross));
    let climbs = |line: &Line, plane: usize| matches!(line.kind, LineKind::Rake | LineKind::ExpansionAlong) && line.sides().any(|s| s.plane == plane);
    laps_over(over.kind, under.kind)
        || crossed(under).is_some_and(|(upper, _)| climbs(over, upper))
        || crossed(over).is_some_and(|(_, lower)| climbs(under, lower))
}
