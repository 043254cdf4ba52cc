//! Which trim laps over which where lines meet.
//!
//! Upper over lower, all the way down: the ridge over hips, valleys and rakes; the hip over valley and eave; the valley's pan and the rake over the
//! eave; a transition's trim over the eave beside it; a wall's flashing over all that is below it, the headwall's and a step's over the sidewall's; at a curb back over
//! side over front, and its sides over the lines that end at it but those that come down on it from above. At a transition the upper plane's rake, hip, valley or expansion joint laps over its trim, and that over the lower
//! plane's, and the flashing of a joint across the panels is as such a trim; a joint along them lies under ridge and hip, and over valley and eave. A step's upper edge is an eave's. Whatever the kinds, what comes down to
//! the corner laps over what goes down from it and over a ridge, a high edge or a wall's front that starts there; and a rake or a hip that goes down from an eave's end lies under what covers both, else
//! under the eave. Common practice, no published source.
//!
//! No single rank holds this: an eave lies over a dormer's cheek, that over a cricket's ridge, and a ridge over an eave; and a hip and a rake, which each lie under a ridge and over a valley, have no order of their own.

use crate::roof::{Line, LineKind};

/// Each kind, and those that its trim laps over.
const OVER: &[(LineKind, &[LineKind])] = &[
    (
        LineKind::Ridge,
        // Where a skewed end cuts a ridge off, its edge on one side is a high edge, on the other an eave.
        &[LineKind::Hip, LineKind::Valley, LineKind::Rake, LineKind::ExpansionAlong, LineKind::HighEdge, LineKind::Eave],
    ),
    // The top of a mono-slope is a one-sided ridge.
    (LineKind::HighEdge, &[LineKind::Hip, LineKind::Valley, LineKind::Rake, LineKind::ExpansionAlong, LineKind::Eave]),
    (LineKind::Hip, &[LineKind::Valley, LineKind::Eave, LineKind::ExpansionAlong]),
    (LineKind::Valley, &[LineKind::Eave]),
    // Between two planes that fall to each other the pan runs out under the rakes on both sides of it; a dormer's rake hangs over its cheek.
    (LineKind::Rake, &[LineKind::Valley, LineKind::CurbSide, LineKind::Eave]),
    (LineKind::ExpansionAlong, &[LineKind::Valley, LineKind::CurbBack, LineKind::Eave]),
    // A dormer's eave drips on the flashing of its cheek.
    (LineKind::Eave, &[LineKind::CurbSide]),
    (LineKind::SteepToShallow, BELOW_A_TRANSITION),
    (LineKind::ShallowToSteep, BELOW_A_TRANSITION),
    (LineKind::ExpansionAcross, BELOW_A_TRANSITION),
    (LineKind::Headwall, BELOW_A_HEADWALL),
    (LineKind::Sidewall, BELOW_WALLS),
    // The flashing at a riser's foot is a headwall's to the plane below it.
    (LineKind::Step, BELOW_A_HEADWALL),
    (LineKind::CurbBack, &[LineKind::CurbSide]),
    (LineKind::CurbSide, BESIDE_A_CURB),
    (LineKind::CurbFront, &[LineKind::ExpansionAlong]),
];

/// A lower roof's transition trim runs over the eave trim that goes on beside it, over the ridge of a roof that runs against it from below, and over a dormer's cheeks.
const BELOW_A_TRANSITION: &[LineKind] = &[LineKind::Ridge, LineKind::Eave, LineKind::CurbSide];

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

/// A cricket's ridge and valleys end at the back of the curb, whose lines on the cricket's planes are sides too, as those of a roof do at a wall.
const BESIDE_A_CURB: &[LineKind] = &[LineKind::CurbFront, LineKind::Ridge, LineKind::Hip, LineKind::Valley];

/// A cricket's planes meet the back of their curb along sidewalls, which lap over its sides as a back does.
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
    LineKind::CurbSide,
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

/// A line as it stands at a corner: its kind there, and whether it climbs from the corner or goes down from it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Standing<'a> {
    pub(super) line: &'a Line,
    /// Its kind; along the upper edge of a step an eave's.
    pub(super) kind: LineKind,
    /// Its far end over this one, in millimetres.
    pub(super) rise: f64,
}

/// Kinds that run level, or nearly so.
const fn runs_level(kind: LineKind) -> bool {
    matches!(kind, LineKind::Ridge | LineKind::HighEdge | LineKind::Headwall | LineKind::Step)
}

/// Kinds that climb the slope.
const fn climbs(kind: LineKind) -> bool {
    matches!(kind, LineKind::Hip | LineKind::Valley | LineKind::Rake | LineKind::Sidewall | LineKind::ExpansionAlong)
}

/// Whether the second, which by its kind laps over the first, lies below it here: it goes down from the corner to which the first comes down, as the side of a curb
/// from a valley that ends behind it; or it runs level from there, as the ridge of a wing from the foot of a hip, or a wall's front from the wall's side.
fn stands_above(here: &Standing<'_>, other: &Standing<'_>, tolerance: f64) -> bool {
    // A ridge may be a little out of level; a skew wall or high edge climbs as other lines do.
    let level = runs_level(other.kind) && (other.kind == LineKind::Ridge || other.rise <= tolerance);
    comes_down_on(here, other, tolerance) || level && climbs(here.kind) && here.rise > tolerance
}

/// Whether a line goes down from the end of an eave that does not: its own plane's eave is at its other end, and this one is above it.
pub(super) fn hangs_from_eave(here: &Standing<'_>, other: &Standing<'_>, tolerance: f64) -> bool {
    other.kind == LineKind::Eave && climbs(here.kind) && here.rise < -tolerance && other.rise >= -tolerance
}

/// Whether one line's trim laps over another's: by their kinds, where the one does not stand below the other, or, where a transition meets what goes on across it, by
/// which of its planes that belongs to.
fn by_kind(over: &Standing<'_>, under: &Standing<'_>, tolerance: f64) -> bool {
    let crossed =
        |at: &Standing<'_>| at.line.crossing().filter(|_| matches!(at.kind, LineKind::SteepToShallow | LineKind::ShallowToSteep | LineKind::ExpansionAcross));
    let climbs = |at: &Standing<'_>, plane: usize| {
        matches!(at.kind, LineKind::Rake | LineKind::Hip | LineKind::Valley | LineKind::ExpansionAlong) && at.line.sides().any(|s| s.plane == plane)
    };
    laps_over(over.kind, under.kind) && !stands_above(under, over, tolerance) && !hangs_from_eave(over, under, tolerance)
        || laps_over(under.kind, over.kind) && stands_above(over, under, tolerance)
        || crossed(under).is_some_and(|(upper, _)| climbs(over, upper))
        || crossed(over).is_some_and(|(_, lower)| climbs(under, lower))
}

/// Whether one line's trim laps over another's of another kind: by their kinds, or, where these say nothing, because it comes down on it.
pub(super) fn line_over(over: &Standing<'_>, under: &Standing<'_>, tolerance: f64) -> bool {
    let unlike = over.kind != under.kind && !by_kind(under, over, tolerance);
    by_kind(over, under, tolerance) || unlike && comes_down_on(over, under, tolerance)
}

/// Whether the first comes down to the corner and the second goes down from it, each by more than the tolerance in millimetres.
pub(super) fn comes_down_on(over: &Standing<'_>, under: &Standing<'_>, tolerance: f64) -> bool {
    over.kind != LineKind::Unknown && under.kind != LineKind::Unknown && over.rise > tolerance && under.rise < -tolerance
}
