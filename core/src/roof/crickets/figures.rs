//! The measures of a cricket, from its own pitch, the roof's, and its width.

use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::pitch::{Corner, Pitch, SlopeRule};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Angle, Area, AreaUnit, Length};

/// What is chosen of a cricket.
///
/// Its ridge stands square to the back of the curb, in the middle; its planes fall to both sides.
///
/// ```
/// use seamwright::pitch::Pitch;
/// use seamwright::roof::CricketShape;
/// let shape = CricketShape::of(Pitch::parse("4:12")?);
/// assert_eq!((shape.ridge_fall, shape.valley), (None, None)); // a level ridge, valleys of any slope
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CricketShape {
    /// How steeply its planes fall from the ridge, square to it.
    pub pitch: Pitch,
    /// How steeply the ridge falls away from the curb; none for a level ridge.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub ridge_fall: Option<Pitch>,
    /// How far it reaches past the curb on each side, over the side flashings.
    #[cfg_attr(feature = "serde", serde(default))]
    pub beyond: Length,
    /// The least slope of its valleys, as the valleys' metal asks for; none where that is left to the valley's own detail.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub valley: Option<SlopeRule>,
}

impl CricketShape {
    /// A cricket of this pitch, as wide as its curb, with a level ridge.
    #[must_use]
    pub const fn of(pitch: Pitch) -> CricketShape {
        CricketShape { pitch, ridge_fall: None, beyond: Length::ZERO, valley: None }
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if self.pitch.is_flat() {
            faults.add(Error::new(ErrorKind::OutOfRange, "a cricket needs slope").at("pitch").value_of(self.pitch).accepts("more than 0:12"));
        }
        faults.keep(self.beyond.not_negative("beyond"));
        faults.check()
    }
}

/// A cricket behind a curb in a plane.
///
/// With the roof's slope m, the cricket's own c, the fall of its ridge g and half its width a, each a rise over its run in plan: the planes meet the roof at
/// `v = c (a - u) / (m + g)` up from the curb's back, at `u` beside the ridge. So the ridge runs `c a / (m + g)` in plan and stands `c a` high at the curb, and
/// the valleys leave the curb's back at an angle with the tangent `c / (m + g)`.
///
/// # Errors
/// Computing refuses a pitch of zero, a negative reach past the curb, a width that is not more than zero ([`ErrorKind::OutOfRange`]), and valleys flatter
/// than their rule ([`ErrorKind::Impossible`]), with the pitch that would do.
///
/// ```
/// use seamwright::pitch::Pitch;
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Cricket, CricketShape};
/// use seamwright::units::Length;
/// // Of one pitch with the roof, it reaches half its width up the plan, and its valleys leave the curb at 45 degrees.
/// let p = Pitch::parse("4:12")?;
/// let cricket = Cricket { roof: p, width: Length::inches(48), shape: CricketShape::of(p) }.compute()?;
/// assert_eq!((cricket.ridge, cricket.height), (Length::inches(24), Length::inches(8)));
/// assert!((cricket.valley_plan.degrees() - 45.0).abs() < 1e-12);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Cricket {
    /// The pitch of the plane that the curb stands in.
    pub roof: Pitch,
    /// The width of the curb, level.
    pub width: Length,
    /// What is chosen.
    pub shape: CricketShape,
}

/// The measures of a cricket. Each plane and each valley stands once on either side.
///
/// See [`Cricket`] for an example.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CricketFigures {
    /// Half its width, level: half the curb's and what it reaches past the curb.
    pub half_width: Length,
    /// How high the ridge stands at the curb over the curb's back line.
    pub height: Length,
    /// From the curb's back up the roof to the cricket's top, along the roof's slope.
    pub reach: Length,
    /// The same in plan.
    pub reach_plan: Length,
    /// Length of the ridge.
    pub ridge: Length,
    /// Its slope: 0 where it is level.
    pub ridge_slope: Angle,
    /// True slope of each plane: its own pitch where the ridge is level.
    pub pitch: Pitch,
    /// Length of each valley.
    pub valley: Length,
    /// In plan, from the curb's back to the valley.
    pub valley_plan: Angle,
    /// Slope of the valley itself.
    pub valley_slope: Angle,
    /// How the roof rises from the valley, in the section square to it.
    pub roof_backing: Angle,
    /// How the cricket does.
    pub cricket_backing: Angle,
    /// Between the roof's seams and the valley.
    pub roof_meeting: Angle,
    /// Between the cricket's seams and the valley.
    pub cricket_meeting: Angle,
    /// True area of each plane.
    pub area: Area,
    /// True area of the roof that the cricket covers.
    pub covers: Area,
    /// How high each end of it stands over the roof beside the curb: nothing for one as wide as its curb.
    pub end_height: Length,
}

/// A factor as so much in twelve, rounded up.
fn in_twelve(ratio: f64) -> String {
    format!("{:.2}:12", (ratio * 1200.0).ceil() / 100.0)
}

impl Cricket {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if self.roof.is_flat() {
            faults.add(Error::new(ErrorKind::OutOfRange, "a level roof has no back of a curb").at("roof").value_of(self.roof).accepts("more than 0:12"));
        }
        faults.keep(self.width.positive("width"));
        faults.keep(self.shape.check().map_err(|e| e.under("shape")));
        faults.check()
    }

    /// Refuses valleys flatter than their rule.
    fn check_valley<R: Recorder>(&self, r: &mut R, slope: Angle, (m, g): (f64, f64)) -> Result<(), Error> {
        let Some(rule) = &self.shape.valley else { return Ok(()) };
        let found = rule.check(&Pitch::from_angle(slope)?);
        r.step(|| Step::new("slope of the valleys against their metal").with("least", rule.limit).gives(slope).source(rule.source.clone()));
        if found.passes() {
            return Ok(());
        }
        let least = rule.limit.ratio();
        let cure = if least < m {
            format!("a cricket of {} or steeper", in_twelve(least / (m * m - least * least).sqrt() * (m + g)))
        } else {
            "a steeper roof, or another valley metal".to_owned()
        };
        let short = rule.limit.angle().degrees() - slope.degrees();
        Err(Error::new(ErrorKind::Impossible, format!("the cricket's valleys are too flat by {short:.3} deg"))
            .at("shape.valley")
            .value_of(slope)
            .accepts(format!("{} or more ({})", rule.limit, rule.source))
            .cured_by(cure))
    }
}

impl Calculation for Cricket {
    type Out = CricketFigures;

    fn title(&self) -> String {
        format!("cricket of {} behind a curb {} wide", self.shape.pitch, self.width)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<CricketFigures, Error> {
        self.check()?;
        let (m, c) = (self.roof.ratio(), self.shape.pitch.ratio());
        let g = self.shape.ridge_fall.map_or(0.0, |p| p.ratio());
        let half_width = (self.width.station(1, 2)? + self.shape.beyond).length()?;
        r.step(|| {
            let step = Step::new("half the width").formula("W / 2 + e").with("W", self.width).with("e", self.shape.beyond);
            step.gives(half_width).source(Source::geometry())
        });
        let a = half_width.mm();
        let run = c * a / (m + g);
        let height = Length::from_mm(c * a)?;
        r.step(|| {
            Step::new("ridge over the curb's back").formula("c a").with("c", self.shape.pitch).with("a", half_width).gives(height).source(Source::geometry())
        });
        let reach_plan = Length::from_mm(run)?;
        r.step(|| {
            let step = Step::new("reach up the roof in plan").formula("c a / (m + g)").with("c", self.shape.pitch).with("a", half_width).with("m", self.roof);
            let step = if let Some(fall) = self.shape.ridge_fall { step.with("g", fall) } else { step.with("g", 0) };
            step.gives(reach_plan).source(Source::geometry())
        });
        let reach = Length::from_mm(run * self.roof.slope_factor())?;
        r.step(|| Step::new("reach along the roof").formula("reach in plan x slope factor").with("slope factor", self.roof.slope_factor()).gives(reach));
        let ridge = Length::from_mm(run * (1.0 + g * g).sqrt())?;
        r.step(|| Step::new("ridge").formula("reach in plan x sqrt(1 + g^2)").gives(ridge).source(Source::geometry()));
        let level = g == 0.0;
        let pitch = if level { self.shape.pitch } else { Pitch::from_angle(Angle::degrees_from(num::atan2_deg(num::hypot(c, g), 1.0))?)? };
        // Between the eaves: square where the cricket falls along the curb's back.
        let plan = if level { Angle::SQUARE } else { Angle::degrees_from(num::atan2_deg(c, g))? };
        let corner = Corner { first: self.roof, second: pitch, plan };
        let corner = r.part(|| format!("its valleys: {}", corner.title()), |r| corner.run(r))?;
        self.check_valley(r, corner.slope, (m, g))?;
        let valley = Length::from_mm(num::hypot(num::hypot(a, run), m * run))?;
        r.step(|| {
            let step = Step::new("valley").formula("sqrt(a^2 + v^2 + (m v)^2)").with("a", half_width).with("v", reach_plan).with("m", self.roof);
            step.gives(valley).source(Source::geometry())
        });
        let plan_area = a * run / 2.0;
        let area = Area::of(plan_area * pitch.slope_factor(), AreaUnit::SquareMillimetre);
        let covers = Area::of(2.0 * plan_area * self.roof.slope_factor(), AreaUnit::SquareMillimetre);
        r.step(|| {
            let step = Step::new("area of each plane").formula("a v / 2 x its slope factor").with("a", half_width).with("v", reach_plan);
            step.with("slope factor", pitch.slope_factor()).gives(area).source(Source::geometry())
        });
        Ok(CricketFigures {
            half_width,
            height,
            reach,
            reach_plan,
            ridge,
            ridge_slope: Angle::degrees_from(num::atan2_deg(g, 1.0))?,
            pitch,
            valley,
            valley_plan: corner.first.plan,
            valley_slope: corner.slope,
            roof_backing: corner.first.backing,
            cricket_backing: corner.second.backing,
            roof_meeting: corner.first.meeting(),
            cricket_meeting: corner.second.meeting(),
            area,
            covers,
            end_height: Length::from_mm(c * self.shape.beyond.mm())?,
        })
    }
}
