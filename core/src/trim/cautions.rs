//! What a flat pattern says beside its numbers.

use super::deductions::DeductionTable;
use super::din;
use super::factors::NeutralFactor;
use super::rule::BendRule;
use super::size::to_length;
use super::solve::Solved;
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

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[
    RADIUS_UNDER_THICKNESS,
    NEUTRAL_FACTOR_ABOVE_HALF,
    DIN_COMPENSATION_DROPPED,
    DEDUCTION_INTERPOLATED,
    NOMINAL_SUM,
    TAPER_BEND_OBLIQUE,
    TAPER_BLANK_OVER_STOCK,
    MITRE_TURNED,
    TAB_UNRELIEVED,
];

/// Cautions of one bend.
#[inline]
pub(super) fn of_bend(bend: &Solved<'_>, out: &mut Vec<Caution>) {
    let size = bend.mm.size;
    if size.inside_radius < size.thickness && bend.walk.angle.degrees() < 180.0 {
        out.push(sharp(bend));
    }
    match bend.rule {
        BendRule::Din6935 if bend.walk.angle.degrees() < 15.0 => out.extend(dropped(bend)),
        BendRule::Deductions(table) => out.extend(interpolated(bend, table)),
        _ => {}
    }
    if bend.walk.rule.is_some() {
        of_rule(bend.rule, &bend.walk.part.bend_path(), 1, out);
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
fn sharp(bend: &Solved<'_>) -> Caution {
    let size = bend.mm.size;
    Caution::new(RADIUS_UNDER_THICKNESS, bend.walk.part.bend_path(), Source::CommonPractice).arg("radius", size.inside_radius).arg("thickness", size.thickness)
}

#[cold]
fn dropped(bend: &Solved<'_>) -> Option<Caution> {
    let dropped = to_length(din::dropped_mm(&bend.mm)?).ok()?;
    Some(Caution::new(DIN_COMPENSATION_DROPPED, bend.walk.part.bend_path(), bend.rule.source().clone()).arg("angle", bend.walk.angle).arg("dropped", dropped))
}

fn interpolated(bend: &Solved<'_>, table: &DeductionTable) -> Option<Caution> {
    let (low, high) = table.around(bend.mm.size).ok()?;
    (low.angle != high.angle).then(|| {
        Caution::new(DEDUCTION_INTERPOLATED, bend.walk.part.bend_path(), table.source().clone())
            .arg("angle", bend.walk.angle)
            .arg("low", low.angle)
            .arg("high", high.angle)
    })
}
