//! The tasks at each kind of junction: what each puts in place, what it needs, and the lines that guide it. Common practice, no published source.

use super::cautions::FLANGE_OVER_UNDERLAYMENT;
use super::parts::Solved;
use crate::roof::LineKind;

/// A task at a junction.
#[derive(Debug, Clone, Copy)]
pub(super) struct Task {
    pub(super) does: &'static str,
    pub(super) gives: &'static [&'static str],
    pub(super) needs: &'static [&'static str],
    /// The lines that must be struck for it, by the beginning of their names.
    pub(super) lines: &'static [&'static str],
    /// The part or line without which a section does not have this task; empty for a task that every section has.
    pub(super) only: &'static str,
}

const fn task(does: &'static str, gives: &'static [&'static str], needs: &'static [&'static str], lines: &'static [&'static str]) -> Task {
    Task { does, gives, needs, lines, only: "" }
}

const fn with(only: &'static str, task: Task) -> Task {
    Task { only, ..task }
}

/// What is there before any work at a junction.
pub(super) const THERE: &[&str] = &["deck", "junction line"];
/// A trim whose top edge lines are measured from, in place.
pub(super) const TOP_EDGE: &str = "trim's top edge";
/// A trim whose lower edge lines are measured from, marked.
pub(super) const LOWER_EDGE: &str = "trim's lower edge";

const CLEAT: Task =
    with("continuous cleat", task("Fasten the continuous cleat to its line.", &["continuous cleat"], &["junction line"], &["continuous cleat"]));
const TAPE: Task =
    task("Press tape along the screw line, across and into the corners of every seam; plug hollow seams.", &["closure tape"], &["panels"], &["closure"]);
const CLOSURES: Task = task(
    "Set the closures between the seams, flange uphill, tabs against the seams; fasten through flange, tape and pan.",
    &["closures"],
    &["closure tape"],
    &[],
);
const TAPE_OVER: Task = task("Run tape on the closures, and sealant in the corners at each seam.", &["tape over"], &["closures"], &[]);
const UPPER_PANELS: &[&str] = &["panel"];
const REGLET: Task = with("counterflashing", task("Cut the reglet in the wall.", &["reglet"], &[], &["reglet"]));
const COVER: &str = "Bring the wall's barrier over the leg, then cladding or counterflashing; fill the reglet.";

const EAVE: &[Task] = &[
    task("Check the eave for line and the deck for square; strike the junction line on the deck.", &["square"], &["junction line"], &[]),
    with("continuous cleat", task("Fasten the continuous cleat to the fascia, to its line.", &["continuous cleat"], &["square"], &["continuous cleat"])),
    task(
        "Set the eave trim to its line, its hem on the cleat where there is one. Lap pieces, the upper over the lower, two beads in each lap.",
        &["eave trim", TOP_EDGE],
        &["square", "continuous cleat"],
        &["trim top edge"],
    ),
    task("Fasten its deck flange.", &["flange fastened"], &["eave trim"], &["deck flange"]),
    task("Bring the underlayment down over the deck flange.", &["underlayment"], &["flange fastened"], &[]),
    task("Set the hook strip to its line and fasten it.", &["hook strip"], &["underlayment", "flange fastened"], &["hook strip"]),
    task("Lay the panels from the datum; fold each end around the strip and leave the gap at the fold.", &["panels"], &["hook strip"], UPPER_PANELS),
];
/// An eave whose flange lies on the underlayment.
const EAVE_OVER: &[Task] = &[
    task("Check the eave for line and the deck for square; strike the junction line on the deck.", &["square"], &["junction line"], &[]),
    task("Lay the underlayment down to the edge of the deck.", &["underlayment"], &["square"], &[]),
    with("continuous cleat", task("Fasten the continuous cleat to the fascia, to its line.", &["continuous cleat"], &["underlayment"], &["continuous cleat"])),
    task(
        "Set the eave trim on the underlayment to its line, its hem on the cleat where there is one. Lap pieces, the upper over the lower, two beads in each lap.",
        &["eave trim", TOP_EDGE],
        &["underlayment", "continuous cleat"],
        &["trim top edge"],
    ),
    task("Fasten its deck flange, and strip in its upper edge.", &["flange fastened"], &["eave trim"], &["deck flange"]),
    task("Set the hook strip to its line and fasten it.", &["hook strip"], &["flange fastened"], &["hook strip"]),
    task("Lay the panels from the datum; fold each end around the strip and leave the gap at the fold.", &["panels"], &["hook strip"], UPPER_PANELS),
];
const RAKE: &[Task] = &[
    CLEAT,
    task("Rip the last panel, or end it on its seam, and turn its edge up.", &["panels"], &["junction line"], &["panel edge"]),
    task(
        "Lay tape, stand the Z beside the turned-up edge on its line, and fasten it.",
        &["rake Z"],
        &["panels"],
        &["web of the Z", "tape under the Z", "screws of the Z"],
    ),
    task(
        "Lay tape on the Z; hook the rake trim on the cleat, lay it on the Z, and rivet it there. Lap pieces, the upper over the lower.",
        &["rake trim"],
        &["rake Z", "continuous cleat"],
        &["trim's edge"],
    ),
];
const CAP: &[Task] = &[
    with("edge of the slot", task("Cut the slot in the deck on both sides.", &["slot"], &["junction line"], &["edge of the slot"])),
    task("Lay the panels; turn each pan up at its upper end before the next one closes the seam.", &["panels"], &["slot", "junction line"], &["panel"]),
    task(
        "Strike the closure line and the screw line on both sides, the same distance from the junction line at both ends, and check one bay.",
        &["closure lines"],
        &["panels"],
        &["closure"],
    ),
    Task { needs: &["closure lines"], lines: &[], ..TAPE },
    CLOSURES,
    TAPE_OVER,
    task(
        "Lay the cap with its flanges on the seam tops of both sides; lap pieces with two beads, the upper over the lower.",
        &["cap"],
        &["tape over"],
        &["trim lower edge"],
    ),
    with("rivets", task("Rivet the turned-down edges to the closures.", &["rivets"], &["cap"], &[])),
];
const HIGH: &[Task] = &[
    CLEAT,
    task("Lay the panels; turn each pan up at its upper end.", &["panels"], &["junction line"], &["panel"]),
    TAPE,
    CLOSURES,
    TAPE_OVER,
    task("Lay the cap on the seam tops, hook or set its wall leg.", &["cap"], &["tape over", "continuous cleat"], &["trim lower edge", "leg"]),
    with("rivets", task("Rivet the turned-down edge to the closures.", &["rivets"], &["cap"], &[])),
];
const VALLEY: &[Task] = &[
    task("Line the valley with membrane its full width.", &["membrane"], &["deck"], &[]),
    task("Lay the valley pan to its lines from the bottom up, lapping each piece over the one below.", &["valley pan"], &["membrane"], &["pan"]),
    task("Bring the field underlayment over the pan's side edges.", &["underlayment"], &["valley pan"], &[]),
    with(
        "offset cleat",
        task("Strike the cleat lines each side of the centreline; tape, set and fasten the cleats.", &["hooks"], &["underlayment"], &["offset cleat", "cleat"]),
    ),
    task("Cut the panels on the skew, fold their ends, hook them, and leave the gap at the fold.", &["panels"], &["hooks", "underlayment"], &["panel"]),
];
const HEADWALL: &[Task] = &[
    task("Lay the panels; turn each pan up at its upper end.", &["panels"], &["junction line"], &["panel"]),
    TAPE,
    CLOSURES,
    TAPE_OVER,
    REGLET,
    task(
        "Set the flashing: flange on the seam tops, leg against the wall; fasten the leg near its top.",
        &["flashing"],
        &["tape over", "reglet"],
        &["trim lower edge", "leg"],
    ),
    with("rivets", task("Rivet the turned-down edge to the closures.", &["rivets"], &["flashing"], &[])),
    task(COVER, &["cover"], &["flashing", "rivets"], &["cladding"]),
];
const SIDEWALL: &[Task] = &[
    task("End the last panel at its line from the wall, and turn its edge up.", &["panels"], &["junction line"], &["panel edge"]),
    with("Z", task("Lay tape, stand the Z on its line, and fasten it.", &["Z"], &["panels"], &["web of the Z", "tape under the Z", "screws of the Z"])),
    with("tape under the flange", task("Lay tape on the pan where the flange lies on it.", &["flange tape"], &["panels"], &["tape under the flange"])),
    REGLET,
    task(
        "Set the wall flashing from the bottom up, with the kick-out at its foot first where the eave dies into the wall.",
        &["flashing"],
        &["panels", "Z", "flange tape", "reglet"],
        &["trim's edge"],
    ),
    task("Fasten the leg near its top; rivet or fasten the flange.", &["leg fastened"], &["flashing"], &["leg", "fasteners of the flange"]),
    task(COVER, &["cover"], &["leg fastened"], &["cladding"]),
];
const TRANSITION: &[Task] = &[
    task(
        "Run the lower underlayment up past the line. Lay the lower panels; turn each pan up at its upper end.",
        &["panels"],
        &["junction line"],
        &["panel end"],
    ),
    task(
        "Hold the trim in the plane of the lower seam tops, its bend where the drawing has it; mark its lower edge and the seams on the panels.",
        &[LOWER_EDGE],
        &["panels"],
        &["trim lower edge"],
    ),
    task("Take the trim away; strike the closure line back from the edge mark, and the screw line from it.", &["closure lines"], &[LOWER_EDGE], &["closure"]),
    task(
        "Press tape along the screw line, across and into the corners of every seam; plug hollow seams; sealant behind the seams.",
        &["closure tape"],
        &["closure lines"],
        &[],
    ),
    task("Set the closures between the seams, flange uphill, tabs against the seams; fasten them; tape on top.", &["closures"], &["closure tape"], &[]),
    task("Set the trim on the closures and on the upper deck or its packing.", &["transition trim", TOP_EDGE], &["closures"], &["trim top edge"]),
    task("Fasten its top edge; rivet its turned-down edge to the closures.", &["trim fastened"], &["transition trim"], &["screws along the top edge"]),
    task(
        "Strike the cleat's front and back down from the trim's top edge; tape, set and fasten the cleat, its screws in the tape and over the deck.",
        &["offset cleat"],
        &["trim fastened"],
        &["offset cleat", "cleat"],
    ),
    task("Bring the upper underlayment down over the trim's top edge.", &["underlayment"], &["trim fastened", "offset cleat"], &[]),
    task(
        "Cut the upper panels with their fold, hook them on the cleat, and leave the gap at the fold.",
        &["upper panels"],
        &["offset cleat", "underlayment"],
        &["panel nose", "seam ends"],
    ),
];
const STEP: &[Task] = &[
    task("Run the lower underlayment up the riser. Lay the lower panels; turn each pan up at its upper end.", &["panels"], &["junction line"], &["panel end"]),
    TAPE,
    CLOSURES,
    TAPE_OVER,
    task(
        "Set the lower flashing: flange on the seam tops, leg against the riser; fasten the leg near its top.",
        &["lower flashing"],
        &["tape over"],
        &["trim lower edge", "leg"],
    ),
    with("rivets", task("Rivet the turned-down edge to the closures.", &["rivets"], &["lower flashing"], &[])),
    with("continuous cleat", task("Fasten the continuous cleat over the leg, to its line.", &["continuous cleat"], &["lower flashing"], &["continuous cleat"])),
    task(
        "Set the upper trim to its line, its face down over the leg, its hem on the cleat where there is one. Lap pieces, two beads in each lap.",
        &["eave trim", TOP_EDGE],
        &["lower flashing", "rivets", "continuous cleat"],
        &["trim top edge"],
    ),
    task("Fasten its deck flange; upper underlayment and flange lap as the drawing has them.", &["flange fastened"], &["eave trim"], &["deck flange"]),
    task("Set the hook strip to its line and fasten it.", &["hook strip"], &["flange fastened"], &["hook strip"]),
    task("Lay the upper panels; fold each end around the strip and leave the gap at the fold.", &["upper panels"], &["hook strip"], UPPER_PANELS),
];
const CURB_BACK: &[Task] = &[
    REGLET,
    task(
        "Set the curb and its back pan before the panels above it: leg against the curb, flange on the deck.",
        &["back pan", TOP_EDGE],
        &["reglet", "deck"],
        &["trim top edge", "leg"],
    ),
    task("Fasten the pan at its top edge.", &["pan fastened"], &["back pan"], &["screws along the top edge"]),
    task("Strike, tape, set and fasten the cleat on the pan.", &["offset cleat"], &["pan fastened"], &["offset cleat", "cleat"]),
    task("Bring the underlayment from above over the pan's top edge.", &["underlayment"], &["pan fastened", "offset cleat"], &[]),
    task(
        "Cut the panels above with their fold, hook them on the cleat: they lap over the pan and slide.",
        &["panels"],
        &["offset cleat", "underlayment"],
        &["panel", "seam ends"],
    ),
    task("Bring the curb's cap or counterflashing over the leg.", &["cover"], &["back pan"], &["cladding"]),
];

/// The tasks of a kind.
pub(super) const fn of_kind(kind: LineKind) -> &'static [Task] {
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
        LineKind::Step => STEP,
        LineKind::Unknown => &[],
    }
}

/// The tasks of a kind in this section: those that it has the parts for.
pub(super) fn of_section(kind: LineKind, solved: &Solved) -> Vec<Task> {
    let over = solved.cautions.iter().any(|c| c.code() == FLANGE_OVER_UNDERLAYMENT);
    let tasks = if kind == LineKind::Eave && over { EAVE_OVER } else { of_kind(kind) };
    let has =
        |name: &str| solved.trims.iter().any(|t| t.name == name) || solved.along.iter().any(|a| a.name == name) || solved.lines.iter().any(|l| l.name == name);
    tasks.iter().filter(|t| t.only.is_empty() || has(t.only)).copied().collect()
}
