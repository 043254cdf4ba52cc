//! Common-practice defaults of the `roof` room.

use crate::units::{Angle, Length};

/// How far apart two edges, or two vertices, may lie and still be one: 1/16 in, what a tape is read to.
pub const TOLERANCE: Length = Length::inches_64(4);
/// How far a vertex may lie from the plane through its face: 1/8 in.
pub const FLATNESS: Length = Length::inches_64(8);
/// A plane whose mean width is less than this is a sliver: 4 in.
pub const SLIVER: Length = Length::inches(4);
/// An edge within this angle of the fall is a rake or a sidewall, out of square perhaps; beyond it water is what counts.
pub const RAKE_LIMIT: Angle = Angle::of_degrees(15.0);
/// The most that a line may be out of level, or off the fall, and still count as level, or as along the fall. It must be within the
/// tolerance too, so that this matters to short lines only.
pub const TRUE_LIMIT: Angle = Angle::of_degrees(1.0);
/// A line within this angle of the level in both of its planes is a ridge or a transition out of true, not a hip: no hip lies so flat in both.
pub const OUT_OF_LEVEL_LIMIT: Angle = Angle::of_degrees(5.0);
/// Two planes that meet at less than this are one plane.
pub const COPLANAR_LIMIT: Angle = Angle::of_degrees(0.01);
/// A roof reaches less far than this from its first vertex: 5 km; more is a mixed-up unit.
pub const GREATEST_EXTENT: Length = Length::from_pm(5_000_000_000_000_000);
/// Free edges of two planes that run side by side no farther apart than this, and farther than the tolerance, are a gap: 6 in. A gutter between two planes is wider.
pub const GAP: Length = Length::inches(6);
/// A plane as steep as this or steeper is a wall.
pub const STEEPEST: Angle = Angle::of_degrees(89.9);
/// How far a length read off the tape along a roof plane may be off: 1/8 in.
pub const TAPE: Length = Length::inches_64(8);
/// How far the ends of edges measured on two planes may lie apart and still be joined: 1/4 in.
pub const CLOSURE: Length = Length::inches_64(16);
/// Corners of a rough sketch that lie this close are one corner: 1 ft.
pub const SKETCH: Length = Length::feet(1);
/// On a rough sketch a side within this of square to the way that water runs counts as level: 10 degrees.
pub const LEVEL_ON_SKETCH: Angle = Angle::of_degrees(10.0);
/// Marks for a check are struck at whole steps of this: 1 ft.
pub const MARK_STEP: Length = Length::feet(1);
/// Checks that a measuring sheet asks for on each plane beyond what fixes its shape.
pub const CHECKS: usize = 2;
