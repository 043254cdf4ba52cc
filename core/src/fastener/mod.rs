//! Fastener spacing from load, and the strength of steel screws in sheet.
//!
//! Pressures are at service or at strength level, resistances are ultimate, nominal, allowable or design ones: each is a type
//! of its own, and a [`LoadCase`] pairs service with allowable and strength with design. Mixing them, which is off by 1.6 to 2, does not
//! compile:
//!
//! ```compile_fail
//! use seamwright::fastener::{LoadCase, ServicePressure, UltimateResistance};
//! use seamwright::record::Source;
//! use seamwright::units::{Force, Pressure};
//! let pressure = ServicePressure(Pressure::parse("30 psf").unwrap());
//! let resistance = UltimateResistance { force: Force::parse("200 lbf").unwrap(), document: Source::user() };
//! let case = LoadCase::Service { pressure, resistance };
//! ```
//!
//! The figures do not replace the standard, the local code, the panel's own test report or a licensed engineer. In most tests
//! seam and clip fail below the screws: a screw's strength is a check beside the test, never a substitute.

pub mod cautions;
mod level;
mod load;
mod screw;
mod screw_rules;

#[cfg(test)]
mod load_tests;
#[cfg(test)]
mod screw_tests;

pub use level::{
    AllowableResistance, DesignResistance, NominalResistance, ResistanceFactor, SafetyFactor, ServicePressure, StrengthPressure, UltimateResistance,
};
pub use load::{FastenerCheck, FastenerVerdict, LoadCase, LoadSpacing, SpacingCap, SpacingFromLoad};
pub use screw::{LimitState, LimitStrength, Ply, Screw, ScrewConnection, ScrewStrength, Washer};
pub use screw_rules::ScrewEdition;
