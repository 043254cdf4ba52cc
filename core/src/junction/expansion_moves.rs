//! What moves at an expansion joint.

use crate::error::Error;
use crate::movement::HeatRange;
use crate::record::Recorder;
use crate::units::Length;

/// What moves at an expansion joint from the laying temperature, both sides together.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// use seamwright::units::LengthUnit;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/ropewalk_job.json")))?.compute()?;
/// let moves = packet.junction("expansion joint 1").and_then(|j| j.moves).expect("it is a joint");
/// // 122 ft of steel, 90 degF up and 90 degF down at 6.7e-6 /degF: 0.8828 in.
/// assert!((moves.closes.get(LengthUnit::Millimetre) - 6.7e-6 * 122.0 * 304.8 * 90.0).abs() < 1e-6 && moves.opens == moves.closes);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JointMoves {
    /// How far the sides come together from the laying temperature to the hottest.
    pub closes: Length,
    /// How far they part from the laying temperature to the coldest.
    pub opens: Length,
}

impl JointMoves {
    /// Of so much metal on both sides together.
    pub(crate) fn of<R: Recorder>(range: &HeatRange, length: Length, r: &mut R) -> Result<JointMoves, Error> {
        Ok(JointMoves { closes: range.warming(length, r)?, opens: range.cooling(length, r)? })
    }
}
