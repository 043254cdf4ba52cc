//! Vectors of space in millimetres, with nothing of the library under test.

use core::ops::{Add, Mul, Neg, Sub};

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct V3 {
    pub(crate) x: f64,
    pub(crate) y: f64,
    pub(crate) z: f64,
}

pub(crate) const UP: V3 = V3 { x: 0.0, y: 0.0, z: 1.0 };

pub(crate) const fn v(x: f64, y: f64, z: f64) -> V3 {
    V3 { x, y, z }
}

impl V3 {
    pub(crate) fn dot(self, o: V3) -> f64 {
        self.x * o.x + self.y * o.y + self.z * o.z
    }

    pub(crate) fn cross(self, o: V3) -> V3 {
        v(self.y * o.z - self.z * o.y, self.z * o.x - self.x * o.z, self.x * o.y - self.y * o.x)
    }

    pub(crate) fn norm(self) -> f64 {
        self.dot(self).sqrt()
    }

    pub(crate) fn unit(self) -> V3 {
        self * (1.0 / self.norm())
    }
}

impl Add for V3 {
    type Output = V3;
    fn add(self, o: V3) -> V3 {
        v(self.x + o.x, self.y + o.y, self.z + o.z)
    }
}

impl Sub for V3 {
    type Output = V3;
    fn sub(self, o: V3) -> V3 {
        v(self.x - o.x, self.y - o.y, self.z - o.z)
    }
}

impl Neg for V3 {
    type Output = V3;
    fn neg(self) -> V3 {
        self * -1.0
    }
}

impl Mul<f64> for V3 {
    type Output = V3;
    fn mul(self, by: f64) -> V3 {
        v(self.x * by, self.y * by, self.z * by)
    }
}

/// The upward normal of a closed ring, by the sum of cross products, and whether the ring runs counter-clockwise as seen from above.
pub(crate) fn ring_normal(ring: &[V3]) -> (V3, bool) {
    let origin = ring[0];
    let sum = ring.iter().zip(ring.iter().cycle().skip(1)).fold(v(0.0, 0.0, 0.0), |s, (a, b)| s + (*a - origin).cross(*b - origin));
    let n = sum.unit();
    if n.z < 0.0 { (-n, false) } else { (n, true) }
}

/// Numbers as the sequence of Lehmer gives them: the same on every machine.
pub(crate) struct Draw(u64);

impl Draw {
    pub(crate) fn seeded(seed: u64) -> Draw {
        Draw(seed * 2 + 1)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 >> 33
    }

    /// Between two values, the lower one included.
    #[allow(clippy::cast_precision_loss, reason = "31 bits fit")]
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.next() as f64 / 2_147_483_648.0)
    }

    pub(crate) fn one_of<'a, T>(&mut self, of: &'a [T]) -> &'a T {
        let i = usize::try_from(self.next()).unwrap_or(0) % of.len();
        &of[i]
    }

    pub(crate) fn toss(&mut self) -> bool {
        self.next() & 1 == 1
    }
}
