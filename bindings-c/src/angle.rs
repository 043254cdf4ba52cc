//! Angles.

use seamwright_core::units::Angle;

/// An angle in degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(C)]
pub struct sw_angle {
    /// Degrees, a finite number.
    pub degrees: f64,
}

impl From<Angle> for sw_angle {
    fn from(a: Angle) -> sw_angle {
        sw_angle { degrees: a.degrees() }
    }
}
