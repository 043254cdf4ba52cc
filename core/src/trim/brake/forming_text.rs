//! The faults of forming in words.

use super::forming::FormingFault;
use crate::trim::walk::Part;
use core::fmt;

/// How a leg or a return is called.
fn leg(part: Part) -> String {
    super::SheetPart::Leg(part).to_string()
}

fn bend(part: Part) -> String {
    super::SheetPart::Bend(part).to_string()
}

pub(super) fn write(fault: &FormingFault, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    match fault {
        FormingFault::LegTooShort { leg: part, flat, least } => write!(f, "{} has a flat part of {flat}, the brake needs {least}", leg(*part)),
        FormingFault::RadiusTooSmall { bend: part, radius, least, source } => {
            write!(f, "{} has an inside radius of {radius}, the metal needs {least} ({source})", bend(*part))
        }
        FormingFault::FoldTooTight { fold, gap, takes } => write!(f, "{} has a gap of {gap} and must take {takes}", bend(*fold)),
        FormingFault::Crosses { one, other } => write!(f, "{one} and {other} overlap when folded"),
        FormingFault::GirthOverStock { girth, stock } => write!(f, "the blank is {girth} wide, the stock {stock}"),
        FormingFault::HoleNearBend { hole, bend: part, distance, .. } if distance.is_negative() => write!(f, "hole {hole} reaches into {}", bend(*part)),
        FormingFault::HoleNearBend { hole, bend: part, distance, least, source } => {
            write!(f, "hole {hole} is {distance} from {}, it must be {least} away ({source})", bend(*part))
        }
        FormingFault::Step { step, fault } => write!(f, "step {}, {fault}", step + 1),
    }
}
