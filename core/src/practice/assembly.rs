//! Common practice where junction lines meet the panels.

use crate::units::{Angle, Length};

/// How far a trim runs on beyond its line where it laps over, or is mitred to, another: 4 in, as its laps along the line.
pub const CORNER_ALLOWANCE: Length = Length::inches(4);
/// The same for a valley's pan, whose laps carry more water: 8 in.
pub const VALLEY_CORNER_ALLOWANCE: Length = Length::inches(8);
/// Lap of a trim's pieces along its line: 4 in.
pub const TRIM_LAP: Length = Length::inches(4);
/// Lap of a valley pan's pieces: 8 in.
pub const VALLEY_LAP: Length = Length::inches(8);

/// Lap of the pieces of a strip along an eave, which the panels' folds hook: 2 in.
pub const HOOK_STRIP_LAP: Length = Length::inches(2);
/// Between the pieces of a cleat, which butt: 1/4 in.
pub const CLEAT_GAP: Length = Length::inches_64(16);

/// Walls that turn by no more are in line, and their copings one run.
pub const COPING_IN_LINE: Angle = Angle::of_degrees(0.5);
/// Two walls that leave less than this between them are folded back on each other, and no corner piece is bent for them.
pub const COPING_SHARPEST: Angle = Angle::of_degrees(10.0);
