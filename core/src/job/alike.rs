//! When two pieces of sheet are one to make.

use crate::trim::Point;
use crate::units::Length;

/// Corners apart by no more than this are one: what the geometry of two like planes may differ by.
const ALIKE: Length = Length::micrometres(1);

/// Whether two blanks have the same corners, in the same order.
pub(super) fn alike_corners(a: &[Point], b: &[Point]) -> bool {
    let near = |p: Length, q: Length| (p - q).length().is_ok_and(|d| d <= ALIKE && -d.pm() <= ALIKE.pm());
    a.len() == b.len() && a.iter().zip(b).all(|(p, q)| near(p.x, q.x) && near(p.y, q.y))
}
