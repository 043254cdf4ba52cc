//! Pitches.

#![allow(unsafe_code, reason = "exports: fixed names, and pointers that the caller lends")]

use crate::angle::sw_angle;
use crate::boundary::{Out, TextOut, guard, text_in};
use crate::error::sw_error;
use crate::length::sw_length;
use crate::status::{SW_OK, sw_status};
use core::ffi::c_char;
use seamwright_core::error::{Error, ErrorKind};
use seamwright_core::pitch::{Corner, CornerSide, Framing, Pitch};
use seamwright_core::record::Calculation;
use seamwright_core::units::{Angle, Length};

/// How a pitch was given: one of the `SW_PITCH_` numbers.
pub type sw_pitch_form = i32;

/// As a rise and a run.
pub const SW_PITCH_RATIO: sw_pitch_form = 1;
/// As an angle.
pub const SW_PITCH_ANGLE: sw_pitch_form = 2;

/// The pitch of a roof plane, kept as given. Make it with `sw_pitch_parse`, `sw_pitch_rise_run` or `sw_pitch_from_angle`; every call
/// checks it again, and refuses one whose unused members are not 0. Members do not tell whether two pitches are equal (6:12 is 1:2):
/// `sw_pitch_compare` does.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(C)]
pub struct sw_pitch {
    /// Which members count.
    pub form: sw_pitch_form,
    /// The rise of a ratio.
    pub rise: sw_length,
    /// The level run of a ratio.
    pub run: sw_length,
    /// The angle up from level.
    pub angle: sw_angle,
}

impl From<Pitch> for sw_pitch {
    fn from(p: Pitch) -> sw_pitch {
        match p.as_rise_run() {
            Some((rise, run)) => sw_pitch { form: SW_PITCH_RATIO, rise: rise.into(), run: run.into(), angle: Angle::ZERO.into() },
            None => sw_pitch { form: SW_PITCH_ANGLE, rise: Length::ZERO.into(), run: Length::ZERO.into(), angle: p.angle().into() },
        }
    }
}

impl TryFrom<sw_pitch> for Pitch {
    type Error = Error;
    fn try_from(p: sw_pitch) -> Result<Pitch, Error> {
        let unused = |path: &'static str, value: String| {
            Err(Error::new(ErrorKind::Conflict, "a pitch is a ratio or an angle, not both")
                .at(path)
                .value_of(value)
                .accepts("0 in a member that its form does not use"))
        };
        match p.form {
            SW_PITCH_RATIO if p.angle.degrees.to_bits() != 0 => unused("angle", format!("{} deg", p.angle.degrees)),
            SW_PITCH_RATIO => Pitch::rise_run(p.rise.into(), p.run.into()),
            SW_PITCH_ANGLE if p.rise.pm != 0 => unused("rise", Length::from(p.rise).to_string()),
            SW_PITCH_ANGLE if p.run.pm != 0 => unused("run", Length::from(p.run).to_string()),
            SW_PITCH_ANGLE => Angle::degrees_from(p.angle.degrees).map_err(|e| e.at("angle")).and_then(Pitch::from_angle),
            other => {
                Err(Error::new(ErrorKind::Unknown, "not the number of a form of pitch").at("form").value_of(other).accepts("SW_PITCH_RATIO or SW_PITCH_ANGLE"))
            }
        }
    }
}

/// The core's pitch of an argument of this name.
fn given(pitch: sw_pitch, name: &str) -> Result<Pitch, Error> {
    Pitch::try_from(pitch).map_err(|e| e.under(name))
}

/// Reads a pitch: `6:12`, `1/4:12`, `150 mm:300 mm` (rise to run), `33.3 %` or `26.5 deg`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_parse(text: *const c_char, text_len: usize, pitch: *mut sw_pitch, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(pitch, "pitch")?;
            out.put(Pitch::parse(text_in(text, text_len, "text")?)?.into());
            Ok(SW_OK)
        })
    }
}

/// A pitch from a rise and the level run over which it rises, both as measured.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_rise_run(rise: sw_length, run: sw_length, pitch: *mut sw_pitch, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(pitch, "pitch")?;
            out.put(Pitch::rise_run(rise.into(), run.into())?.into());
            Ok(SW_OK)
        })
    }
}

/// A pitch from its slope angle, measured up from level: 0 to less than 90 degrees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_from_angle(angle: sw_angle, pitch: *mut sw_pitch, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(pitch, "pitch")?;
            let angle = Angle::degrees_from(angle.degrees).map_err(|e| e.at("angle"))?;
            out.put(Pitch::from_angle(angle)?.into());
            Ok(SW_OK)
        })
    }
}

/// Writes a pitch as its canonical text, which `sw_pitch_parse` reads back as the same.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_text(pitch: sw_pitch, buffer: *mut c_char, capacity: usize, needed: *mut usize, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = TextOut::at(buffer, capacity, needed)?;
            Ok(out.put(Some(&given(pitch, "pitch")?.to_string())))
        })
    }
}

/// The slope angle, measured up from level.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_angle(pitch: sw_pitch, angle: *mut sw_angle, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(angle, "angle")?;
            out.put(given(pitch, "pitch")?.angle().into());
            Ok(SW_OK)
        })
    }
}

/// Rise over run.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_ratio(pitch: sw_pitch, ratio: *mut f64, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(ratio, "ratio")?;
            out.put(given(pitch, "pitch")?.ratio());
            Ok(SW_OK)
        })
    }
}

/// The rise in percent of the run.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_percent(pitch: sw_pitch, percent: *mut f64, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(percent, "percent")?;
            out.put(given(pitch, "pitch")?.percent());
            Ok(SW_OK)
        })
    }
}

/// True length down the slope for each unit of level run; also surface for each unit of plan area.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_slope_factor(pitch: sw_pitch, factor: *mut f64, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(factor, "factor")?;
            out.put(given(pitch, "pitch")?.slope_factor());
            Ok(SW_OK)
        })
    }
}

/// The rise over a level run.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_rise_over(pitch: sw_pitch, run: sw_length, rise: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(rise, "rise")?;
            out.put(given(pitch, "pitch")?.rise_over(run.into())?.into());
            Ok(SW_OK)
        })
    }
}

/// The true length down the slope over a level run.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_slope_length(pitch: sw_pitch, run: sw_length, length: *mut sw_length, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(length, "length")?;
            out.put(given(pitch, "pitch")?.slope_length(run.into())?.into());
            Ok(SW_OK)
        })
    }
}

/// -1, 0 or 1 where the first pitch is less steep than, as steep as, or steeper than the second; two ratios are compared exactly.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_compare(first: sw_pitch, second: sw_pitch, order: *mut i32, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(order, "order")?;
            out.put(given(first, "first")?.compare(&given(second, "second")?) as i32);
            Ok(SW_OK)
        })
    }
}

/// Whether a pitch is as steep as a limit or steeper, compared as `sw_pitch_compare` does: 1/4:12 passes a limit of 1/4:12.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_at_least(pitch: sw_pitch, minimum: sw_pitch, passes: *mut bool, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(passes, "passes")?;
            out.put(given(pitch, "pitch")?.at_least(&given(minimum, "minimum")?));
            Ok(SW_OK)
        })
    }
}

/// What one side of a hip or valley sees of it.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(C)]
pub struct sw_corner_side {
    /// In plan, from this side's eave to the line.
    pub plan: sw_angle,
    /// From the plane square to the line's own vertical plane down to this roof plane; negative where the roof rises from it.
    pub backing: sw_angle,
    /// In the roof plane, from this side's eave to the line.
    pub in_plane: sw_angle,
    /// Between this side's seams and the line in the roof plane, signed: positive where, of two seams, the one farther from the corner meets the line
    /// farther up the slope. 90 degrees either way is square.
    pub meeting: sw_angle,
    /// True length of the line for each unit of this side's level common run.
    pub length_factor: f64,
}

impl From<CornerSide> for sw_corner_side {
    fn from(s: CornerSide) -> sw_corner_side {
        sw_corner_side {
            plan: s.plan.into(),
            backing: s.backing.into(),
            in_plane: s.in_plane.into(),
            meeting: s.signed_meeting().into(),
            length_factor: s.length_factor,
        }
    }
}

/// The geometry of a hip or valley.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(C)]
pub struct sw_corner {
    /// Side 1.
    pub first: sw_corner_side,
    /// Side 2.
    pub second: sw_corner_side,
    /// The slope of the line itself, up from level.
    pub slope: sw_angle,
    /// Between the two planes: under the roof at a hip, on the weather side at a valley.
    pub dihedral: sw_angle,
}

/// The hip or valley where two planes meet over a plan corner. `plan` is the angle between the two eaves on the side where the hip
/// stands, 90 degrees for a square building; a square inner corner with its valley is again 90.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_corner(first: sw_pitch, second: sw_pitch, plan: sw_angle, corner: *mut sw_corner, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(corner, "corner")?;
            let plan = Angle::degrees_from(plan.degrees).map_err(|e| e.at("plan"))?;
            let g = Corner { first: given(first, "first")?, second: given(second, "second")?, plan }.compute()?;
            out.put(sw_corner { first: g.first.into(), second: g.second.into(), slope: g.slope.into(), dihedral: g.dihedral.into() });
            Ok(SW_OK)
        })
    }
}

/// One row of the framing square, for two planes of one pitch over a square corner.
#[derive(Debug, Clone, Copy, PartialEq)]
#[repr(C)]
pub struct sw_framing_row {
    /// Length down the slope for each foot of common run.
    pub common_per_foot: sw_length,
    /// Length of a hip or valley for each foot of common run.
    pub hip_per_foot: sw_length,
    /// Level run of a hip or valley for each foot of common run; the trade says 17 in.
    pub hip_run_per_foot: sw_length,
    /// The difference in length of two neighbouring jacks at the spacing.
    pub jack_difference: sw_length,
    /// The figure to set against 12 in on the tongue for the side cut of a jack.
    pub jack_side_cut: sw_length,
    /// The figure to set against 12 in on the tongue for the side cut of a hip or valley.
    pub hip_side_cut: sw_length,
    /// Tangent of the backing angle, rise over hip length.
    pub backing_ratio: f64,
}

/// The framing-square row of a pitch, with jacks at this spacing along the eave.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sw_pitch_framing(pitch: sw_pitch, spacing: sw_length, row: *mut sw_framing_row, error: *mut *mut sw_error) -> sw_status {
    // SAFETY: the caller's promises, passed on.
    unsafe {
        guard(error, || {
            let out = Out::at(row, "row")?;
            let found = Framing { pitch: given(pitch, "pitch")?, spacing: spacing.into() }.compute()?;
            out.put(sw_framing_row {
                common_per_foot: found.common_per_foot.into(),
                hip_per_foot: found.hip_per_foot.into(),
                hip_run_per_foot: found.hip_run_per_foot.into(),
                jack_difference: found.jack_difference.into(),
                jack_side_cut: found.jack_side_cut.into(),
                hip_side_cut: found.hip_side_cut.into(),
                backing_ratio: found.backing_ratio,
            });
            Ok(SW_OK)
        })
    }
}
