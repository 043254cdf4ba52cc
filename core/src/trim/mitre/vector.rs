//! The few operations in space that a mitre needs.

pub(super) type V3 = [f64; 3];

pub(super) fn dot(a: V3, b: V3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn cross(a: V3, b: V3) -> V3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

pub(super) fn norm(a: V3) -> f64 {
    dot(a, a).sqrt()
}

pub(super) fn scale(a: V3, by: f64) -> V3 {
    [a[0] * by, a[1] * by, a[2] * by]
}

pub(super) fn add(a: V3, b: V3) -> V3 {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

/// The vector of length 1 that way; nothing for one of no length.
pub(super) fn unit(a: V3) -> Option<V3> {
    let length = norm(a);
    (length > 0.0 && length.is_finite()).then(|| scale(a, 1.0 / length))
}
