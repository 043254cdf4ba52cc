//! The axes of a plane: across the slope and up it.

use super::vertex::Vertex;
use crate::error::Error;
use crate::num::space::{V3, cross, dot};
use crate::roof::Point;
use crate::units::Length;

/// The axes of a plane, and the place that they are measured from.
///
/// Everything is measured from the mean of the outer vertices, which moves, mirrors and renumbers with the roof, and is then shifted so
/// that the outline starts at zero both ways. So the frame gives the same figures wherever the roof stands.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Frame {
    /// Coordinates of the outer vertices added up, and their number.
    total: [i128; 3],
    count: i128,
    pub(super) normal: V3,
    pub(super) across: V3,
    pub(super) up: V3,
    left: f64,
    right: f64,
    low: f64,
    high: f64,
}

impl Frame {
    /// `fall` is the horizontal unit direction that water runs in; `rise_ratio` is rise over run.
    pub(super) fn new(rings: &[Vec<Vertex>], fall: [f64; 2], rise_ratio: f64) -> Frame {
        let outer = rings.first().map_or(&[][..], Vec::as_slice);
        let mut total = [0_i128; 3];
        for v in outer {
            let [x, y, z] = v.pm();
            total = [total[0] + x, total[1] + y, total[2] + z];
        }
        let factor = (1.0 + rise_ratio * rise_ratio).sqrt();
        let (cosine, sine) = (1.0 / factor, rise_ratio / factor);
        let normal = [sine * fall[0], sine * fall[1], cosine];
        let across = [-fall[1] + 0.0, fall[0] + 0.0, 0.0];
        let up = [-fall[0] * cosine, -fall[1] * cosine, sine];
        let count = i128::try_from(outer.len().max(1)).unwrap_or(1);
        let mut frame = Frame { total, count, normal, across, up, left: f64::INFINITY, right: f64::NEG_INFINITY, low: f64::INFINITY, high: f64::NEG_INFINITY };
        for &v in rings.iter().flatten() {
            let d = frame.offset(v);
            let (t, u) = (dot(d, across), dot(d, up));
            frame.left = frame.left.min(t);
            frame.right = frame.right.max(t);
            frame.low = frame.low.min(u);
            frame.high = frame.high.max(u);
        }
        frame
    }

    /// From the mean to this vertex in millimetres.
    #[allow(clippy::cast_precision_loss, reason = "the exact difference is rounded once")]
    pub(super) fn offset(&self, v: Vertex) -> V3 {
        let p = v.pm();
        let one = |i: usize| {
            let (p, total) = (p.get(i).copied().unwrap_or(0), self.total.get(i).copied().unwrap_or(0));
            (p * self.count - total) as f64 / (self.count as f64 * 1e9)
        };
        [one(0), one(1), one(2)]
    }

    /// How far the plane reaches up the slope, in millimetres.
    pub(super) fn reach(&self) -> f64 {
        self.high - self.low
    }

    /// How far the vertex stands above the plane, square to it, in millimetres.
    pub(super) fn above(&self, v: Vertex) -> f64 {
        dot(self.offset(v), self.normal)
    }

    /// Height of the plane at this place in plan.
    pub(super) fn at_plan(&self, x: Length, y: Length) -> Result<Vertex, Error> {
        // The height of the mean is a length after rounding; the rest is measured from there.
        let datum = i64::try_from(self.total[2].div_euclid(self.count)).map_or(Length::ZERO, Length::from_pm);
        let d = self.offset(Vertex { x, y, z: datum });
        let rise = -(d[0] * self.normal[0] + d[1] * self.normal[1]) / self.normal[2] - d[2];
        Ok(Vertex { x, y, z: (datum + Length::from_mm(rise)?).length()? })
    }

    /// The place in the plane under this vertex, square to the plane.
    pub(super) fn point(&self, v: Vertex) -> Result<Point, Error> {
        let d = self.offset(v);
        let (t, u) = (dot(d, self.across), dot(d, self.up));
        // From the nearer end, so that a mirrored plane gives the mirrored figures exactly.
        let x = if t - self.left <= self.right - t {
            Length::from_mm(t - self.left)?
        } else {
            (Length::from_mm(self.right - self.left)? - Length::from_mm(self.right - t)?).length()?
        };
        Ok(Point { x, y: Length::from_mm(u - self.low)? })
    }

    /// The vertex at this place of the plane.
    pub(super) fn vertex(&self, p: Point) -> Result<Vertex, Error> {
        let (t, u) = (p.x.mm() + self.left, p.y.mm() + self.low);
        let one = |i: usize| -> Result<Length, Error> {
            let pick = |v: &V3| v.get(i).copied().unwrap_or(0.0);
            let total = self.total.get(i).copied().unwrap_or(0);
            let whole = i64::try_from(total.div_euclid(self.count)).map_or(Length::ZERO, Length::from_pm);
            #[allow(clippy::cast_precision_loss, reason = "less than the number of vertices")]
            let part = total.rem_euclid(self.count) as f64 / (self.count as f64 * 1e9);
            (whole + Length::from_mm(t * pick(&self.across) + u * pick(&self.up) + part)?).length()
        };
        Ok(Vertex { x: one(0)?, y: one(1)?, z: one(2)? })
    }

    /// The direction into the plane, square to an edge that has the plane on its left.
    pub(super) fn inward(&self, along: V3) -> V3 {
        cross(self.normal, along)
    }
}
