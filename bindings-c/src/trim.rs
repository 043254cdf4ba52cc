//! Bends by themselves.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::angle::sw_angle;
use crate::boundary::{Out, guard, text_in};
use crate::error::sw_error;
use crate::length::sw_length;
use crate::status::{SW_OK, sw_status};
use core::ffi::c_char;
use seamwright_core::error::Error;
use seamwright_core::trim::{BendRule, BendSize, SetbackFactor, din_compensation};
use seamwright_core::units::{Angle, BendAngle};

/// The size of one bend.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(C)]
pub struct sw_bend_size {
    /// Thickness of the sheet.
    pub thickness: sw_length,
    /// Radius of the inside face.
    pub inside_radius: sw_length,
    /// How far it is bent, from flat: 90 degrees is square, 180 a hem.
    pub angle: sw_angle,
}

impl TryFrom<sw_bend_size> for BendSize {
    type Error = Error;
    fn try_from(s: sw_bend_size) -> Result<BendSize, Error> {
        Ok(BendSize { thickness: s.thickness.into(), inside_radius: s.inside_radius.into(), angle: bend_angle(s.angle)? })
    }
}

/// The core's angle from flat.
fn bend_angle(angle: sw_angle) -> Result<BendAngle, Error> {
    Angle::degrees_from(angle.degrees).and_then(BendAngle::from_flat).map_err(|e| e.at("angle"))
}

/// What a rule says of a bend; the faults are placed at `rule` and at the members of `size`.
///
/// # Safety
/// `rule` is as `text_in` asks.
unsafe fn by_rule<T>(rule: *const c_char, rule_len: usize, size: sw_bend_size, says: impl FnOnce(&BendRule, BendSize) -> Result<T, Error>) -> Result<T, Error> {
    // SAFETY: the caller's promise.
    let json = unsafe { text_in(rule, rule_len, "rule") }?;
    let rule = BendRule::from_json(json.as_bytes()).map_err(|e| e.under("rule"))?;
    BendSize::try_from(size).and_then(|size| says(&rule, size)).map_err(|e| e.under("size"))
}

/// tan(A/2): from inside radius plus thickness to the outside setback. The angle is measured from flat.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_trim_setback_factor(angle: sw_angle, factor: *mut f64, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(factor, "factor")?;
            out.put(SetbackFactor::of(bend_angle(angle)?)?.value());
            Ok(SW_OK)
        })
    }
}

/// The compensation value v of DIN 6935, to be subtracted from the sum of the legs: to the outer tangents of the bend from 90 degrees
/// from flat, to the outer corner below.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_trim_din_compensation(size: sw_bend_size, compensation: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(compensation, "compensation")?;
            out.put(BendSize::try_from(size).and_then(din_compensation).map_err(|e| e.under("size"))?.into());
            Ok(SW_OK)
        })
    }
}

/// The bend allowance: the flat length between the two tangent lines. The rule is JSON: `{"neutral-axis":{"factor":0.4}}`, `"din-6935"`,
/// `{"din-6935-or":{"otherwise":"aviation"}}`, `"din-6935-linear"`, `{"handbook":"soft-steel"}`, `"aviation"`, `{"deductions":{"rows":[...]}}` or
/// `"sharp-corner"`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_trim_allowance(
    rule: *const c_char,
    rule_len: usize,
    size: sw_bend_size,
    allowance: *mut sw_length,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(allowance, "allowance")?;
            out.put(by_rule(rule, rule_len, size, BendRule::allowance)?.into());
            Ok(SW_OK)
        })
    }
}

/// The bend deduction: what two legs measured to the outer corner are together longer than their flat. The rule is as for `sw_trim_allowance`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_trim_deduction(
    rule: *const c_char,
    rule_len: usize,
    size: sw_bend_size,
    deduction: *mut sw_length,
    error: *mut *mut sw_error,
) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(deduction, "deduction")?;
            out.put(by_rule(rule, rule_len, size, BendRule::deduction)?.into());
            Ok(SW_OK)
        })
    }
}
