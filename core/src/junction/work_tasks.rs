//! The tasks at each kind of junction: what each puts in place, what it needs, and the lines that guide it. Common practice, no published source.

use super::cautions::FLANGE_OVER_UNDERLAYMENT;
use super::parts::Solved;
use super::section_kind::SectionKind;
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
const COVER: &str = "Bring the wall's barrier over the leg, then cladding or counterflashing; wedge its tongue and fill the reglet.";

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
    with(
        "rake Z",
        task(
            "Lay tape, stand the Z beside the turned-up edge on its line, and fasten it.",
            &["rake Z"],
            &["panels"],
            &["web of the Z", "tape under the Z", "screws of the Z"],
        ),
    ),
    with(
        "rake cleat",
        task(
            "Stand the cleat on the deck, its flange over the turned-up edge, on its line, and fasten its foot.",
            &["rake cleat"],
            &["panels"],
            &["web of the cleat", "screws of the cleat"],
        ),
    ),
    task(
        "Lay tape on the top flange; hook the rake trim on the fascia's cleat, lay it on the flange, and rivet it there. Lap pieces, the upper over the lower.",
        &["rake trim"],
        &["rake Z", "rake cleat", "continuous cleat"],
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
    with(
        "edge cleats, two fasteners each",
        task("Hook the pan's hems with cleats and fasten these beside the pan, two fasteners each.", &["pan held"], &["valley pan"], &[]),
    ),
    task("Bring the field underlayment over the pan's side edges.", &["underlayment"], &["valley pan", "pan held"], &[]),
    with(
        "offset cleat",
        task("Strike the cleat lines each side of the centreline; tape, set and fasten the cleats.", &["hooks"], &["underlayment"], &["offset cleat", "cleat"]),
    ),
    task("Cut the panels on the skew, fold their ends, hook them, and leave the gap at the fold.", &["panels"], &["hooks", "underlayment"], &["panel"]),
];
const HEADWALL: &[Task] = &[
    with("edge of the slot", task("Cut the slot in the deck beside the wall.", &["slot"], &["junction line"], &["edge of the slot"])),
    task("Lay the panels; turn each pan up at its upper end.", &["panels"], &["slot", "junction line"], &["panel"]),
    TAPE,
    CLOSURES,
    TAPE_OVER,
    REGLET,
    task("Set the flashing: flange on the seam tops, leg against the wall.", &["flashing"], &["tape over", "reglet"], &["trim lower edge", "leg, top edge"]),
    with("leg fasteners", task("Fasten the leg near its top.", &["leg fastened"], &["flashing"], &["leg fasteners"])),
    with("rivets", task("Rivet the turned-down edge to the closures.", &["rivets"], &["flashing"], &[])),
    task(COVER, &["cover"], &["flashing", "leg fastened", "rivets"], &["cladding"]),
];
const SIDEWALL: &[Task] = &[
    task("End the last panel at its line from the wall, and turn its edge up.", &["panels"], &["junction line"], &["panel edge"]),
    with(
        "Z",
        task(
            "Lay tape, stand the Z on its line, and fasten it; lay tape on its top flange.",
            &["Z"],
            &["panels"],
            &["web of the Z", "tape under the Z", "screws of the Z"],
        ),
    ),
    with("tape under the flange", task("Lay tape on the pan where the flange lies on it.", &["flange tape"], &["panels"], &["tape under the flange"])),
    REGLET,
    task(
        "Set the wall flashing from the bottom up; where the eave dies into the wall first the kick-out, turned at the panels' ends, the flashing's leg cut plumb over it.",
        &["flashing"],
        &["panels", "Z", "flange tape", "reglet"],
        &["trim's edge", "leg, top edge"],
    ),
    task("Rivet or fasten the flange.", &["flange fastened"], &["flashing"], &["fasteners of the flange"]),
    with("leg fasteners", task("Fasten the leg near its top.", &["leg fastened"], &["flange fastened"], &["leg fasteners"])),
    task(COVER, &["cover"], &["flange fastened", "leg fastened"], &["cladding"]),
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
    task("Fasten its top edge.", &["trim fastened"], &["transition trim"], &["screws along the top edge"]),
    with("rivets", task("Rivet its turned-down edge to the closures.", &["rivets"], &["trim fastened"], &[])),
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

const COPING: &[Task] = &[
    task("Build the wall's top to its fall toward the roof; bring the wall's membrane over it and down both faces.", &["wall's top"], &["junction line"], &[]),
    task("See that the base flashing's leg, and what comes up the outside, stand fastened under the lines of the coping.", &["faces"], &["wall's top"], &[]),
    task(
        "Snap a line for the top edge of each cleat, down from the wall's top edge; fasten the cleats to it, with gaps between their pieces.",
        &["cleats"],
        &["faces"],
        &["continuous cleat"],
    ),
    task("Set the corner pieces first, then a joint plate at each joint in its two beads a side.", &["joint plates"], &["cleats"], &[]),
    task(
        "Hook each piece of coping on its cleat, the outer one first, and roll it over the top. Leave the gap at each joint as the temperature of the day asks; put no fastener through the top or the joint plates.",
        &["coping"],
        &["cleats", "joint plates"],
        &[],
    ),
    with("face screws", task("Screw the face without a cleat through the middle of its slots.", &["face screws"], &["coping"], &["face screws"])),
];
const STEP_LOWER: Task = task(
    "Set the lower flashing: flange on the seam tops, leg against the riser; fasten the leg near its top.",
    &["lower flashing"],
    &["tape over"],
    &["trim lower edge", "leg"],
);
const STEP_FOOT: Task = task("Run the lower underlayment up the riser, and the riser's barrier over it.", &["lower underlayment"], &["junction line"], &[]);
const STEP_PANELS: Task = task("Lay the lower panels; turn each pan up at its upper end.", &["panels"], &["lower underlayment"], &["panel end"]);
const STEP_RIVETS: Task = with("rivets", task("Rivet the turned-down edge to the closures.", &["rivets"], &["lower flashing"], &[]));
const STEP_CLEAT: Task =
    with("continuous cleat", task("Fasten the continuous cleat over the leg, to its line.", &["continuous cleat"], &["lower flashing"], &["continuous cleat"]));
const STEP_TRIM: Task = task(
    "Set the upper trim, its face down over the leg and its hem on the cleat where there is one.",
    &["upper trim", TOP_EDGE],
    &["lower flashing", "continuous cleat"],
    &["trim top edge"],
);
const STEP_UPPER: Task =
    task("Lay the upper panels; fold each end around the strip and leave the gap at the fold.", &["upper panels"], &["hook strip"], UPPER_PANELS);
const STEP: &[Task] = &[
    STEP_FOOT,
    STEP_PANELS,
    TAPE,
    CLOSURES,
    TAPE_OVER,
    STEP_LOWER,
    STEP_RIVETS,
    STEP_CLEAT,
    STEP_TRIM,
    task("Fasten its deck flange.", &["flange fastened"], &["upper trim"], &["deck flange"]),
    task("Bring the upper underlayment down over the deck flange.", &["underlayment"], &["flange fastened"], &[]),
    task("Set the hook strip to its line and fasten it.", &["hook strip"], &["underlayment", "flange fastened"], &["hook strip"]),
    STEP_UPPER,
];
/// A step whose upper flange lies on the underlayment.
const STEP_OVER: &[Task] = &[
    STEP_FOOT,
    STEP_PANELS,
    TAPE,
    CLOSURES,
    TAPE_OVER,
    STEP_LOWER,
    STEP_RIVETS,
    STEP_CLEAT,
    task("Lay the upper underlayment down to the edge of the riser.", &["underlayment"], &["junction line"], &[]),
    Task { needs: &["lower flashing", "continuous cleat", "underlayment"], ..STEP_TRIM },
    task("Fasten its deck flange, and strip in its upper edge.", &["flange fastened"], &["upper trim"], &["deck flange"]),
    task("Set the hook strip to its line and fasten it.", &["hook strip"], &["flange fastened"], &["hook strip"]),
    STEP_UPPER,
];
const EXPANSION_ACROSS: &[Task] = &[
    task(
        "Run the lower underlayment up past the joint. Lay the lower panels; turn each pan up at its upper end.",
        &["panels"],
        &["junction line"],
        &["panel end"],
    ),
    task("Build the deck above the joint up by the packing: as high as the lower seam tops with their tape.", &["packing"], &["junction line"], &[]),
    task(
        "Hold the flashing on the lower seam tops and the packing; mark its lower edge and the seams on the panels.",
        &[LOWER_EDGE],
        &["panels", "packing"],
        &["trim lower edge"],
    ),
    task(
        "Take the flashing away; strike the closure line back from the edge mark, and the screw line from it.",
        &["closure lines"],
        &[LOWER_EDGE],
        &["closure"],
    ),
    Task { needs: &["closure lines"], lines: &[], ..TAPE },
    CLOSURES,
    TAPE_OVER,
    task("Set the flashing on closures and packing.", &["flashing", TOP_EDGE], &["tape over", "packing"], &["trim top edge"]),
    task("Fasten its top edge into the deck.", &["flashing fastened"], &["flashing"], &["screws along the top edge"]),
    with("rivets", task("Rivet its turned-down edge to the closures.", &["rivets"], &["flashing"], &[])),
    task(
        "Strike the cleat's front and back down from the flashing's top edge; tape, set and fasten the cleat.",
        &["offset cleat"],
        &["flashing fastened"],
        &["offset cleat", "cleat"],
    ),
    task("Bring the upper underlayment down over the flashing's top edge.", &["underlayment"], &["flashing fastened", "offset cleat"], &[]),
    task(
        "Cut the upper panels with their fold, hook them on the cleat, and leave the gap at the fold as the temperature of the day asks. Nothing fastens them here.",
        &["upper panels"],
        &["offset cleat", "underlayment"],
        &["panel nose", "seam ends"],
    ),
];
const EXPANSION_ALONG: &[Task] = &[
    task(
        "Fasten the curbs to their lines, the gap between them as the temperature of the day asks; bring the underlayment up both.",
        &["curbs"],
        &["junction line"],
        &["curb"],
    ),
    task("Hang an insulated flexible membrane in the gap, loose enough for the widest opening.", &["membrane"], &["curbs"], &[]),
    task(
        "Lay the panels of both sides to their lines; turn their edges up against the curbs. No fastener goes through a turned-up edge.",
        &["panels"],
        &["curbs"],
        &["panel edge"],
    ),
    task(
        "Set the cleats on the curbs' tops, their legs down before the turned-up edges; fasten them into the tops.",
        &["cleats"],
        &["panels", "membrane"],
        &["cleat fasteners"],
    ),
    task(
        "Slide the cap on from one end: its return under the sliding cleat's hook, its plain leg on the fixed cleat. Lap its pieces, the upper over the lower.",
        &["joint cap"],
        &["cleats"],
        &[],
    ),
    task("Rivet the plain leg to the fixed cleat. Leave the sliding side free over its whole length.", &["rivets"], &["joint cap"], &[]),
    task("Close the cap's lower end; lap the ridge's cap over its upper end with room for the movement.", &["ends"], &["rivets"], &[]),
];
const PIPE: &[Task] = &[
    task("Bring the underlayment up the pipe and strip it in.", &["underlayment"], &["junction line"], &[]),
    task("Lay the panel over the pipe's place, or slit it from its end; keep the pipe in the pan, clear of the seams.", &["panel"], &["underlayment"], &[]),
    task("Mark the pipe's middle on the pan; cut the hole, with its room for the movement up and down the slope.", &["hole"], &["panel"], &["hole"]),
    task(
        "Slide the boot down the pipe; mark its base on the pan; press tape on the base's line, ends lapped at the lower edge.",
        &["tape"],
        &["hole"],
        &["base"],
    ),
    task(
        "Set the base; screw it to the pan alone, from the middle of each side outward. No screw reaches the deck.",
        &["base"],
        &["tape"],
        &["screws of the base"],
    ),
    task("Leave the boot loose between base and collar by the movement; clamp the collar and run its bead.", &["collar"], &["base"], &[]),
];

/// The tasks of a kind.
pub(super) const fn of_kind(kind: SectionKind) -> &'static [Task] {
    match kind {
        SectionKind::Line(kind) => of_line(kind),
        SectionKind::Coping => COPING,
        SectionKind::Pipe => PIPE,
    }
}

/// The tasks at a line of the roof.
const fn of_line(kind: LineKind) -> &'static [Task] {
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
        LineKind::ExpansionAlong => EXPANSION_ALONG,
        LineKind::ExpansionAcross => EXPANSION_ACROSS,
        LineKind::Unknown => &[],
    }
}

/// The tasks of a kind in this section: those that it has the parts for.
pub(super) fn of_section(kind: SectionKind, solved: &Solved) -> Vec<Task> {
    let over = solved.cautions.iter().any(|c| c.code() == FLANGE_OVER_UNDERLAYMENT);
    let tasks = match kind {
        SectionKind::Line(LineKind::Eave) if over => EAVE_OVER,
        SectionKind::Line(LineKind::Step) if over => STEP_OVER,
        _ => of_kind(kind),
    };
    let has =
        |name: &str| solved.trims.iter().any(|t| t.name == name) || solved.along.iter().any(|a| a.name == name) || solved.lines.iter().any(|l| l.name == name);
    tasks.iter().filter(|t| t.only.is_empty() || has(t.only)).copied().collect()
}
