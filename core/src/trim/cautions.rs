//! What a flat pattern says beside its numbers.

use super::deductions::DeductionTable;
use super::din;
use super::factors::NeutralFactor;
use super::rule::BendRule;
use super::size::to_length;
use super::solve::Solved;
use super::walk::WalkBend;
use crate::record::{Caution, CautionCode, Source};

/// A bend sharper than the sheet is thick: whether the metal bears it is not known here.
pub const RADIUS_UNDER_THICKNESS: CautionCode = CautionCode {
    number: 3000,
    name: "radius-under-thickness",
    text: "inside radius {radius} is less than the thickness {thickness}: check it against the minimum for this metal",
};

/// A neutral-axis factor above mid-thickness: possible for one solved back from a measured bend, unlikely otherwise.
pub const NEUTRAL_FACTOR_ABOVE_HALF: CautionCode = CautionCode {
    number: 3001,
    name: "neutral-factor-above-half",
    text: "neutral-axis factor {factor} lies beyond mid-thickness: right only if it was solved back from a measured bend",
};

/// DIN 6935 takes v as zero here; this is what that drops.
pub const DIN_COMPENSATION_DROPPED: CautionCode = CautionCode {
    number: 3002,
    name: "din-compensation-dropped",
    text: "DIN 6935 takes v as 0 at a bend of {angle} from flat; its second range would give {dropped}",
};

/// A deduction that lies between two rows of the table.
pub const DEDUCTION_INTERPOLATED: CautionCode =
    CautionCode { number: 3003, name: "deduction-interpolated", text: "the deduction at {angle} was interpolated between {low} and {high}" };

/// Nominal legs were added without deduction.
pub const NOMINAL_SUM: CautionCode = CautionCode {
    number: 3004,
    name: "nominal-sum",
    text: "nominal legs were added and nothing was deducted for {bends} bends: the blank is wider than the developed profile",
};

/// No source limits the inside radius of this bend in this metal.
pub const NO_PUBLISHED_RADIUS: CautionCode = CautionCode {
    number: 3050,
    name: "no-published-radius",
    text: "no published limit for the inside radius of {alloy}, {thickness}, bent {angle}: ask the supplier, or bend a trial piece",
};

/// A question that was not answered, because what it needs was not given.
pub const NOT_JUDGED: CautionCode = CautionCode { number: 3051, name: "not-judged", text: "{what} was not judged: `{lacks}` is not given" };

/// A bend line of a tapered trim that leans so far that a round bend would change the blank.
pub const TAPER_BEND_OBLIQUE: CautionCode = CautionCode {
    number: 3040,
    name: "taper-bend-oblique",
    text: "the bend is {section} in the sections and {turn} across its leaning line: a bend that is round across the line would change the blank there by {by}",
};

/// A tapered piece whose blank is longer than the stock.
pub const TAPER_BLANK_OVER_STOCK: CautionCode = CautionCode {
    number: 3041,
    name: "taper-blank-over-stock",
    text: "the blank is {blank} long where its lines lean, more than the {longest} of a piece: shorten the longest piece",
};

/// The section of a piece that leaves a corner is turned about its run there.
pub const MITRE_TURNED: CautionCode = CautionCode {
    number: 3042,
    name: "mitre-turned",
    text: "the piece closes at this corner only with its section turned by {roll} about its run from upright",
};

/// A tab without slots, whose bend lies short of the end beside it.
pub const TAB_UNRELIEVED: CautionCode = CautionCode {
    number: 3043,
    name: "tab-unrelieved",
    text: "the tab's bend lies short of the end beside it and has no slots: the metal there tears or is crushed",
};

/// A deduction that lies between rows of other thicknesses or radii.
pub const DEDUCTION_BETWEEN_SIZES: CautionCode = CautionCode {
    number: 3020,
    name: "deduction-between-sizes",
    text: "the deduction at thickness {thickness}, radius {radius} and {angle} was interpolated between {rows} rows of other sizes",
};

/// The chosen rule was used where DIN 6935 does not hold.
pub const OUTSIDE_DIN: CautionCode = CautionCode {
    number: 3021,
    name: "outside-din-6935",
    text: "a bend of {angle} with inside radius {radius} is outside DIN 6935: by choice the {rule} was used",
};

/// A leg that is made other than drawn, because the blank is a nominal sum.
pub const TAKEN_UP: CautionCode = CautionCode {
    number: 3022,
    name: "taken-up",
    text: "leg {leg} is made {made} and not {drawn} as drawn: it takes up what the nominal sum and the bends differ by",
};

/// A sum of widths from a trade book.
pub const THICKNESS_LEFT_OUT: CautionCode = CautionCode {
    number: 3023,
    name: "thickness-left-out",
    text: "the sum leaves the thickness of the sheet out: close enough for marking out at roof gauges, not for thicker sheet",
};

/// How a sum is shared between the sides of a seam was recalled.
pub const SHARE_FROM_MEMORY: CautionCode = CautionCode {
    number: 3024,
    name: "share-from-memory",
    text: "that half of the metal goes to each side was recalled, not read: confirm it with a trial seam",
};

/// A figure that was recalled.
pub const FIGURE_FROM_MEMORY: CautionCode =
    CautionCode { number: 3025, name: "figure-from-memory", text: "recalled, not read: {source}; confirm it with a trial bend" };

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[
    RADIUS_UNDER_THICKNESS,
    NEUTRAL_FACTOR_ABOVE_HALF,
    DIN_COMPENSATION_DROPPED,
    DEDUCTION_INTERPOLATED,
    NOMINAL_SUM,
    NO_PUBLISHED_RADIUS,
    NOT_JUDGED,
    TAPER_BEND_OBLIQUE,
    TAPER_BLANK_OVER_STOCK,
    MITRE_TURNED,
    TAB_UNRELIEVED,
    DEDUCTION_BETWEEN_SIZES,
    OUTSIDE_DIN,
    TAKEN_UP,
    THICKNESS_LEFT_OUT,
    SHARE_FROM_MEMORY,
    FIGURE_FROM_MEMORY,
];

/// Cautions of one bend.
#[inline]
pub(super) fn of_bend(bend: &WalkBend<'_>, solved: &Solved<'_>, out: &mut Vec<Caution>) {
    let size = solved.mm.size;
    if size.inside_radius < size.thickness && bend.angle.degrees() < 180.0 {
        out.push(sharp(bend, solved));
    }
    match solved.rule {
        BendRule::Din6935 if bend.angle.degrees() < 15.0 => out.extend(dropped(bend, solved)),
        BendRule::Din6935Or(rule) => match rule.other_for(&solved.mm) {
            Some(other) => out.push(outside(bend, other)),
            None => out.extend(dropped(bend, solved)),
        },
        BendRule::Deductions(table) => out.extend(interpolated(bend, solved, table)),
        _ => {}
    }
    if bend.rule.is_some() {
        of_rule(solved.rule, &bend.part.bend_path(), 1, out);
    }
}

/// Cautions of a rule as a whole, used for so many bends.
#[inline]
pub(super) fn of_rule(rule: &BendRule, subject: &str, bends: usize, out: &mut Vec<Caution>) {
    match rule {
        BendRule::NeutralAxis(axis) if axis.factor > NeutralFactor::MIDDLE => {
            out.push(Caution::new(NEUTRAL_FACTOR_ABOVE_HALF, subject, axis.source.clone()).arg("factor", axis.factor));
        }
        BendRule::SharpCorner if bends > 0 => out.push(Caution::new(NOMINAL_SUM, subject, rule.source().clone()).arg("bends", bends)),
        _ => {}
    }
}

#[cold]
fn sharp(bend: &WalkBend<'_>, solved: &Solved<'_>) -> Caution {
    let size = solved.mm.size;
    Caution::new(RADIUS_UNDER_THICKNESS, bend.part.bend_path(), Source::CommonPractice).arg("radius", size.inside_radius).arg("thickness", size.thickness)
}

#[cold]
fn dropped(bend: &WalkBend<'_>, solved: &Solved<'_>) -> Option<Caution> {
    let dropped = to_length(din::dropped_mm(&solved.mm)?).ok()?;
    Some(Caution::new(DIN_COMPENSATION_DROPPED, bend.part.bend_path(), solved.rule.source().clone()).arg("angle", bend.angle).arg("dropped", dropped))
}

#[cold]
fn interpolated(bend: &WalkBend<'_>, solved: &Solved<'_>, table: &DeductionTable) -> Option<Caution> {
    let size = solved.mm.size;
    let rows = table.around(size).ok()?.rows();
    match rows.as_slice() {
        [] | [_] => None,
        [low, high] if (low.thickness, low.inside_radius) == (high.thickness, high.inside_radius) => {
            let caution = Caution::new(DEDUCTION_INTERPOLATED, bend.part.bend_path(), table.source().clone()).arg("angle", bend.angle);
            Some(caution.arg("low", low.angle).arg("high", high.angle))
        }
        rows => {
            let caution = Caution::new(DEDUCTION_BETWEEN_SIZES, bend.part.bend_path(), table.source().clone());
            let caution = caution.arg("thickness", size.thickness).arg("radius", size.inside_radius);
            Some(caution.arg("angle", bend.angle).arg("rows", rows.len()))
        }
    }
}

#[cold]
fn outside(bend: &WalkBend<'_>, other: &BendRule) -> Caution {
    Caution::new(OUTSIDE_DIN, bend.part.bend_path(), other.source().clone()).arg("angle", bend.angle).arg("radius", bend.inside_radius).arg("rule", other)
}
