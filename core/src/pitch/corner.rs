//! The line where two pitched planes meet over a plan corner: hip or valley, at any corner and any two pitches.

use super::Pitch;
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Angle, Length};

/// Two planes whose eaves meet at a plan corner.
///
/// The plan angle is the one between the two eaves on the side where the hip stands, more than 0 and less than 180 degrees: 90 for a square building. A
/// valley is built from the same two planes; its plan angle is the one between the eave lines produced beyond the inner corner, so a
/// square inner corner is again 90.
///
/// ```
/// use seamwright::pitch::{Corner, Pitch};
/// use seamwright::record::Calculation;
/// use seamwright::units::Angle;
/// let hip = Corner { first: Pitch::parse("12:12")?, second: Pitch::parse("12:12")?, plan: Angle::SQUARE }.compute()?;
/// assert!((hip.dihedral.degrees() - 120.0).abs() < 1e-12);
/// assert_eq!(hip.first.plan.degrees(), 45.0);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Corner {
    /// The pitch of side 1.
    pub first: Pitch,
    /// The pitch of side 2.
    pub second: Pitch,
    /// The plan angle between the two eaves.
    pub plan: Angle,
}

/// What one side of a hip or valley sees of it.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct CornerSide {
    /// In plan, from this side's eave to the line (D). The two sides' plan angles add to the corner's.
    pub plan: Angle,
    /// From the plane square to the line's own vertical plane down to this roof plane (C), seen along the line: negative where this side's plan
    /// angle is more than 90 degrees, so that the plane rises towards the line's side instead of falling away from it.
    pub backing: Angle,
    /// In the roof plane, from this side's eave to the line (T); more than 90 degrees where the backing is negative.
    pub in_plane: Angle,
    /// True length of the line for each unit of this side's level common run (k).
    pub length_factor: f64,
}

impl CornerSide {
    /// The meeting angle of this side's seams with the line, in the roof plane: |90 - T|. 90 degrees is square, 0 is along the seams.
    #[must_use]
    pub fn meeting(&self) -> Angle {
        Angle::of_degrees((90.0 - self.in_plane.degrees()).abs())
    }

    /// The meeting angle with its sign, 90 - T. Positive: of two seams, the one farther from the corner (measured along this side's eave from the
    /// corner into the plan angle) meets the line farther up the slope, so at a hip it is the longer and at a valley the shorter. Negative:
    /// the other way round.
    #[must_use]
    pub fn signed_meeting(&self) -> Angle {
        Angle::of_degrees(90.0 - self.in_plane.degrees())
    }

    /// The skew, 90 degrees less the meeting angle, as set on a bevel.
    #[must_use]
    pub fn skew(&self) -> Angle {
        Angle::of_degrees(90.0 - self.meeting().degrees())
    }

    /// How much farther up the slope the line is met after one coverage along the eave, away from the corner: coverage x tan T, which is the drop that
    /// gets marked on a skew end. Negative where [`signed_meeting`](Self::signed_meeting) is.
    ///
    /// # Errors
    /// [`ErrorKind::Geometry`] where the line runs along the seams, so that no seam meets it; [`ErrorKind::Overflow`] beyond the range of a length.
    ///
    /// ```
    /// use seamwright::pitch::{Corner, Pitch};
    /// use seamwright::record::Calculation;
    /// use seamwright::units::{Angle, Length};
    /// let p = Pitch::parse("4:12")?;
    /// let hip = Corner { first: p, second: p, plan: Angle::SQUARE }.compute()?;
    /// let drop = hip.first.drop_over(Length::inches(16))?;
    /// // At a square corner of equal pitches, one step along the eave is one step of common run.
    /// assert!((drop - p.slope_length(Length::inches(16))?).length()?.pm().abs() <= 1);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn drop_over(&self, coverage: Length) -> Result<Length, Error> {
        let t = self.in_plane.tan();
        if !t.is_finite() {
            return Err(Error::new(ErrorKind::Geometry, "the line runs along the seams")
                .at("in_plane")
                .value_of(self.in_plane)
                .accepts("an angle other than 90 deg"));
        }
        Length::from_mm(coverage.mm() * t).map_err(|e| e.at("coverage"))
    }
}

/// The geometry of a hip or valley.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct CornerGeometry {
    /// Side 1.
    pub first: CornerSide,
    /// Side 2.
    pub second: CornerSide,
    /// The slope of the line itself, up from level (R).
    pub slope: Angle,
    /// The angle between the two planes: under the roof at a hip, on the weather side at a valley. Always 180 degrees less both backings.
    pub dihedral: Angle,
}

impl Corner {
    fn validated(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (pitch, path) in [(self.first, "first"), (self.second, "second")] {
            if pitch.is_flat() {
                faults.add(Error::new(ErrorKind::OutOfRange, "a hip or valley needs slope on both sides").at(path).value_of(pitch).accepts("more than 0:12"));
            }
        }
        let w = self.plan.degrees();
        if !(w > 0.0 && w < 180.0) {
            faults.add(Error::new(ErrorKind::OutOfRange, "not a plan corner").at("plan").value_of(self.plan).accepts("more than 0 deg and less than 180 deg"));
        }
        faults.check()
    }

    /// One side: its own pitch, the other's, the line's slope.
    fn side<R: Recorder>(r: &mut R, n: u8, own: Pitch, plan: Angle, slope: Angle) -> CornerSide {
        let (sin_d, cos_d) = (plan.sin(), plan.cos());
        let backing = Angle::of_degrees(num::atan2_deg(slope.sin() * cos_d, sin_d));
        r.step(|| {
            let step = Step::new(format!("backing angle C{n}")).formula(format!("atan(sin R / tan D{n})"));
            step.with("R", slope).with(format!("D{n}"), plan).gives(backing).source(Source::geometry())
        });
        let in_plane = Angle::of_degrees(num::atan2_deg(sin_d, cos_d * own.cosine()));
        r.step(|| {
            let step = Step::new(format!("angle in the roof plane T{n}")).formula(format!("atan(tan D{n} / cos S{n})"));
            step.with(format!("D{n}"), plan).with(format!("S{n}"), own.angle()).gives(in_plane).source(Source::geometry())
        });
        let length_factor = 1.0 / (sin_d * slope.cos());
        r.step(|| {
            let step = Step::new(format!("length of the line for each unit of common run of side {n}")).formula(format!("1 / (sin D{n} cos R)"));
            step.with(format!("D{n}"), plan).with("R", slope).gives(length_factor).source(Source::geometry())
        });
        let side = CornerSide { plan, backing, in_plane, length_factor };
        r.step(|| {
            let step =
                Step::new(format!("meeting angle on side {n}, positive where the seam farther from the corner meets higher")).formula(format!("90 - T{n}"));
            step.with(format!("T{n}"), in_plane).gives(side.signed_meeting()).source(Source::geometry())
        });
        side
    }
}

impl Calculation for Corner {
    type Out = CornerGeometry;

    fn title(&self) -> String {
        format!("Hip or valley between {} and {} at a plan corner of {}", self.first, self.second, self.plan)
    }

    /// D1 = atan(sin W / (m1/m2 + cos W)), written with atan2 so that D beyond 90 degrees keeps its place; tan R = m1 sin D1.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<CornerGeometry, Error> {
        self.validated()?;
        let (m1, m2) = (self.first.ratio(), self.second.ratio());
        let (sin_w, cos_w) = (self.plan.sin(), self.plan.cos());
        let d1 = Angle::of_degrees(num::atan2_deg(m2 * sin_w, m1 + m2 * cos_w));
        let d2 = Angle::of_degrees(num::atan2_deg(m1 * sin_w, m2 + m1 * cos_w));
        for (n, d, own, other) in [(1, d1, m1, m2), (2, d2, m2, m1)] {
            let o = 3 - n;
            r.step(|| {
                let step = Step::new(format!("plan angle D{n} from eave {n} to the line")).formula(format!("atan(sin W / (m{n}/m{o} + cos W))"));
                step.with("W", self.plan).with(format!("m{n}"), own).with(format!("m{o}"), other).gives(d).source(Source::geometry())
            });
        }
        let slope = Angle::of_degrees(num::atan_deg(m1 * d1.sin()));
        r.step(|| Step::new("slope of the line R").formula("atan(m1 sin D1)").with("m1", m1).with("D1", d1).gives(slope).source(Source::geometry()));
        let first = Corner::side(r, 1, self.first, d1, slope);
        let second = Corner::side(r, 2, self.second, d2, slope);
        let dihedral = Angle::of_degrees(180.0 - first.backing.degrees() - second.backing.degrees());
        r.step(|| {
            let step = Step::new("angle between the planes").formula("180 - C1 - C2");
            step.with("C1", first.backing).with("C2", second.backing).gives(dihedral).source(Source::geometry())
        });
        if !(first.length_factor.is_finite() && second.length_factor.is_finite()) {
            return Err(Error::new(ErrorKind::Geometry, "the line cannot be told from an eave")
                .at("plan")
                .value_of(self.plan)
                .accepts("a wider corner, or pitches nearer to each other"));
        }
        Ok(CornerGeometry { first, second, slope, dihedral })
    }
}
