//! The order of work at each kind of junction: what must be in place before what. Common practice, no published source.

use crate::roof::LineKind;

const EAVE: &[&str] = &[
    "Check the eave for line and the deck for square; strike the junction line on the deck.",
    "Fasten the continuous cleat to the fascia, where there is one, to its line.",
    "Set the eave trim: hook its hem on the cleat, fasten its deck flange. Lap pieces, the upper over the lower, two beads in each lap.",
    "Bring the underlayment down over the deck flange.",
    "Set the hook strip to its line and fasten it.",
    "Lay the panels from the datum; fold each end around the strip and leave the gap at the fold.",
];
const RAKE: &[&str] = &[
    "Fasten the continuous cleat to the fascia, to its line.",
    "Rip the last panel, or end it on its seam, and turn its edge up.",
    "Lay tape, stand the Z beside the turned-up edge on its line, and fasten it.",
    "Lay tape on the Z; hook the rake trim on the cleat, lay it on the Z, and rivet it there. Lap pieces, the upper over the lower.",
];
const CAP: &[&str] = &[
    "Lay the panels; turn each pan up at its upper end before the next one closes the seam.",
    "Strike the closure line and the screw line on both sides, the same distance from the junction line at both ends, and check one bay.",
    "Press tape along the screw line, across and into the corners of every seam; plug hollow seams.",
    "Set the closures between the seams, flange uphill, tabs against the seams; fasten through flange, tape and pan.",
    "Run tape on the closures, and sealant in the corners at each seam.",
    "Lay the cap with its flanges on the seam tops of both sides; lap pieces with two beads, the upper over the lower.",
    "Rivet the turned-down edges to the closures.",
];
const HIGH: &[&str] = &[
    "Fasten the continuous cleat to the wall, where there is one, to its line.",
    "Lay the panels; turn each pan up at its upper end.",
    "Strike the closure line and the screw line; press tape along it and into the corners of every seam; plug hollow seams.",
    "Set the closures, flange uphill, and fasten them; tape on top.",
    "Lay the cap on the seam tops, hook or set its wall leg, rivet the turned-down edge to the closures.",
];
const VALLEY: &[&str] = &[
    "Line the valley with membrane its full width; strike the centreline.",
    "Lay the valley pan from the bottom up, lapping each piece over the one below.",
    "Bring the field underlayment over the pan's side edges.",
    "Strike the cleat lines each side of the centreline; tape, set and fasten the cleats, or hook the receiver folds.",
    "Cut the panels on the skew, fold their ends, hook them, and leave the gap at the fold.",
];
const HEADWALL: &[&str] = &[
    "Lay the panels; turn each pan up at its upper end.",
    "Strike the closure line and the screw line; press tape along it and into the corners of every seam; plug hollow seams.",
    "Set the closures, flange uphill, and fasten them; tape on top.",
    "Set the flashing: flange on the seam tops, leg against the wall; fasten the leg near its top; rivet the turned-down edge.",
    "Bring the wall's barrier over the leg, then cladding or counterflashing; fill the reglet.",
];
const SIDEWALL: &[&str] = &[
    "End the last panel at its line from the wall, and turn its edge up.",
    "Lay tape, stand the Z on its line, and fasten it; or lay tape on the pan where the flange lies on it.",
    "Set the wall flashing from the bottom up, with the kick-out at its foot first where the eave dies into the wall.",
    "Fasten the leg near its top, rivet the flange.",
    "Bring the wall's barrier over the leg, then cladding or counterflashing; fill the reglet.",
];
const TRANSITION: &[&str] = &[
    "Run the lower underlayment up past the line. Lay the lower panels; turn each pan up at its upper end.",
    "Hold the trim in the plane of the lower seam tops, its bend where the drawing has it; mark its lower edge and the seams on the panels.",
    "Take the trim away; strike the closure line back from the edge mark, and the screw line from it.",
    "Press tape along the screw line, across and into the corners of every seam; plug hollow seams; sealant behind the seams.",
    "Set the closures between the seams, flange uphill, tabs against the seams; fasten them; tape on top.",
    "Set the trim on the closures and on the upper deck or its packing; fasten its top edge; rivet its turned-down edge to the closures.",
    "Strike the cleat's front and back down from the trim's top edge; tape, set and fasten the cleat, its screws in the tape and over the deck.",
    "Bring the upper underlayment down over the trim's top edge.",
    "Cut the upper panels with their fold, hook them on the cleat, and leave the gap at the fold.",
];
const CURB_BACK: &[&str] = &[
    "Set the curb and its back pan before the panels above it: leg against the curb, flange on the deck, fastened at its top edge.",
    "Bring the underlayment from above over the pan's top edge.",
    "Strike, tape, set and fasten the cleat on the pan.",
    "Cut the panels above with their fold, hook them on the cleat: they lap over the pan and slide.",
];

/// The steps of a junction of this kind, in order. Common practice, no published source; none for a line without a name.
///
/// ```
/// use seamwright::junction::order_of_work;
/// use seamwright::roof::LineKind;
/// assert!(order_of_work(LineKind::SteepToShallow).len() > 5);
/// assert!(order_of_work(LineKind::Unknown).is_empty());
/// ```
#[must_use]
pub const fn order_of_work(kind: LineKind) -> &'static [&'static str] {
    match kind {
        LineKind::Eave => EAVE,
        LineKind::Rake => RAKE,
        LineKind::Ridge | LineKind::Hip => CAP,
        LineKind::HighEdge => HIGH,
        LineKind::Valley => VALLEY,
        LineKind::Headwall | LineKind::CurbFront => HEADWALL,
        LineKind::Sidewall | LineKind::CurbSide => SIDEWALL,
        LineKind::SteepToShallow | LineKind::ShallowToSteep => TRANSITION,
        LineKind::CurbBack => CURB_BACK,
        LineKind::Unknown => &[],
    }
}
