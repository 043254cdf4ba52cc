//! All transcendental functions, the same bits on every platform.
//!
//! The standard library forwards these to the platform, and platforms differ in the last bits. Here they come
//! from the portable `libm` crate, and `.clippy.toml` bans the others. Only `+ - * /` and `sqrt`, which IEEE 754 fixes,
//! are used bare elsewhere. Angles in degrees are reduced before they are turned into radians, so that the angles of
//! the square (0, 90, 180 ...) give exact zeros and ones.
//!
//! ```
//! use seamwright::num;
//! assert_eq!(num::sin_deg(180.0), 0.0);
//! assert_eq!(num::tan_deg(45.0), 1.0);
//! assert_eq!(num::sin_deg(30.0), 0.5);
//! ```

#![allow(clippy::float_cmp, reason = "exact entries of the table are compared exactly")]

pub(crate) mod space;

/// Radians in one degree.
pub const RADIANS_PER_DEGREE: f64 = core::f64::consts::PI / 180.0;

/// Sine of an angle in radians.
#[must_use]
pub fn sin(radians: f64) -> f64 {
    libm::sin(radians)
}

/// Cosine of an angle in radians.
#[must_use]
pub fn cos(radians: f64) -> f64 {
    libm::cos(radians)
}

/// Tangent of an angle in radians.
#[must_use]
pub fn tan(radians: f64) -> f64 {
    libm::tan(radians)
}

/// Angle in radians whose sine is `x`; NaN outside -1 to 1.
#[must_use]
pub fn asin(x: f64) -> f64 {
    libm::asin(x)
}

/// Angle in radians whose cosine is `x`; NaN outside -1 to 1.
#[must_use]
pub fn acos(x: f64) -> f64 {
    libm::acos(x)
}

/// Angle in radians, between -pi/2 and pi/2, whose tangent is `x`.
#[must_use]
pub fn atan(x: f64) -> f64 {
    libm::atan(x)
}

/// Angle in radians of the direction (`x`, `y`), between -pi and pi.
#[must_use]
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// Length of the vector (`x`, `y`) without overflow on the way.
#[must_use]
pub fn hypot(x: f64, y: f64) -> f64 {
    libm::hypot(x, y)
}

/// Logarithm to base 10.
#[must_use]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// Natural exponential.
#[must_use]
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// `x` to the power `y`.
#[must_use]
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// Both at once: the very numbers of [`sin_deg`] and [`cos_deg`], with one reduction of the angle where that is all they need.
#[must_use]
#[inline]
pub(crate) fn sin_cos_deg(degrees: f64) -> (f64, f64) {
    let turn = degrees.abs();
    if turn < 90.0 && turn != 0.0 && turn != 30.0 && turn != 60.0 {
        let (sin, cos) = libm::sincos(turn * RADIANS_PER_DEGREE);
        return (if degrees < 0.0 { -sin } else { sin }, cos);
    }
    (sin_deg(degrees), cos_deg(degrees))
}

/// The angle within one full turn. The remainder of what is less than a full turn is itself, and the division is slow.
#[inline]
pub(crate) fn within_turn(degrees: f64) -> f64 {
    if degrees.abs() < 360.0 { degrees } else { degrees % 360.0 }
}

/// Sine of an angle in degrees; exact at the multiples of 30 where the sine is 0, 1/2 or 1.
#[must_use]
pub fn sin_deg(degrees: f64) -> f64 {
    // Fold into the first quadrant, where an exact table entry is not lost to rounding of pi.
    let turn = within_turn(degrees);
    let (sign, half) = if turn < 0.0 { (-1.0, -turn) } else { (1.0, turn) };
    let (sign, half) = if half > 180.0 { (-sign, half - 180.0) } else { (sign, half) };
    let quarter = if half > 90.0 { 180.0 - half } else { half };
    if quarter == 0.0 {
        return 0.0;
    }
    if quarter == 30.0 {
        return sign * 0.5;
    }
    if quarter == 90.0 {
        return sign;
    }
    sign * libm::sin(quarter * RADIANS_PER_DEGREE)
}

/// Cosine of an angle in degrees; exact at the multiples of 30 where the cosine is 0, 1/2 or 1.
#[must_use]
pub fn cos_deg(degrees: f64) -> f64 {
    let turn = within_turn(degrees).abs();
    let half = if turn > 180.0 { 360.0 - turn } else { turn };
    if half == 90.0 {
        return 0.0;
    }
    if half == 0.0 {
        return 1.0;
    }
    if half == 180.0 {
        return -1.0;
    }
    if half == 60.0 {
        return 0.5;
    }
    if half == 120.0 {
        return -0.5;
    }
    libm::cos(half * RADIANS_PER_DEGREE)
}

/// Tangent of an angle in degrees; exact at the multiples of 45. At 90 degrees it is infinite: callers refuse that first.
#[must_use]
pub fn tan_deg(degrees: f64) -> f64 {
    // The remainder of what is less than a half turn is itself; it is what bends ask for, and the division is slow.
    let turn = if degrees.abs() < 180.0 { degrees } else { degrees % 180.0 };
    let signed = if turn > 90.0 {
        turn - 180.0
    } else if turn < -90.0 {
        turn + 180.0
    } else {
        turn
    };
    let (sign, a) = if signed < 0.0 { (-1.0, -signed) } else { (1.0, signed) };
    if a == 0.0 {
        return 0.0;
    }
    if a == 45.0 {
        return sign;
    }
    if a == 90.0 {
        return sign * f64::INFINITY;
    }
    sign * libm::tan(a * RADIANS_PER_DEGREE)
}

/// Angle in degrees, between -90 and 90, whose tangent is `x`.
#[must_use]
pub fn atan_deg(x: f64) -> f64 {
    atan2_deg(x, 1.0)
}

/// Angle in degrees of the direction (`x`, `y`), between -180 and 180; exact on the axes and diagonals.
#[must_use]
pub fn atan2_deg(y: f64, x: f64) -> f64 {
    let (ay, ax) = (y.abs(), x.abs());
    let first = if ay == 0.0 {
        0.0
    } else if ax == 0.0 {
        90.0
    } else if ay == ax {
        45.0
    } else {
        libm::atan2(ay, ax) / RADIANS_PER_DEGREE
    };
    let half = if x < 0.0 { 180.0 - first } else { first };
    if y < 0.0 { -half } else { half }
}

/// Angle in degrees whose sine is `x`; NaN outside -1 to 1.
#[must_use]
pub fn asin_deg(x: f64) -> f64 {
    if x.abs() == 1.0 {
        return 90.0 * x;
    }
    if x.abs() == 0.5 {
        return 60.0 * x;
    }
    libm::asin(x) / RADIANS_PER_DEGREE
}

/// Angle in degrees whose cosine is `x`; NaN outside -1 to 1.
#[must_use]
pub fn acos_deg(x: f64) -> f64 {
    if x == 0.0 {
        return 90.0;
    }
    if x == 0.5 {
        return 60.0;
    }
    if x == -0.5 {
        return 120.0;
    }
    libm::acos(x) / RADIANS_PER_DEGREE
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sine_and_cosine_at_once_are_those_of_each() {
        let some = (0..40_000).map(|i| f64::from(i) * 0.0237 - 450.0).chain((-48..=48).map(|i| f64::from(i) * 15.0));
        for degrees in some.chain([0.0, -0.0, 1e-9, -1e-9, 1e-300, 29.999_999_999, 89.999_999_999, 1e9]) {
            let (sin, cos) = sin_cos_deg(degrees);
            assert_eq!((sin.to_bits(), cos.to_bits()), (sin_deg(degrees).to_bits(), cos_deg(degrees).to_bits()), "{degrees}");
        }
    }

    #[test]
    #[allow(clippy::float_cmp, reason = "the exact entries are what is tested")]
    fn the_square_is_exact() {
        for (d, s, c) in [(0.0, 0.0, 1.0), (90.0, 1.0, 0.0), (180.0, 0.0, -1.0), (270.0, -1.0, 0.0), (360.0, 0.0, 1.0), (-90.0, -1.0, 0.0)] {
            assert_eq!(sin_deg(d), s, "sin {d}");
            assert_eq!(cos_deg(d), c, "cos {d}");
        }
        assert_eq!((cos_deg(120.0), cos_deg(-720.0), cos_deg(540.0)), (-0.5, 1.0, -1.0));
        assert_eq!(tan_deg(135.0), -1.0);
        assert_eq!(atan2_deg(-1.0, -1.0), -135.0);
        assert_eq!(atan2_deg(0.0, -1.0), 180.0);
    }

    #[test]
    fn degrees_agree_with_radians_over_three_turns() {
        for i in -1080..=1080 {
            let d = f64::from(i);
            assert!((sin_deg(d) - sin(d * RADIANS_PER_DEGREE)).abs() < 1e-14, "{d}");
            assert!((cos_deg(d) - cos(d * RADIANS_PER_DEGREE)).abs() < 1e-14, "{d}");
        }
    }
}
