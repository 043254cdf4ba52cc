//! One half of a mitred corner.

use super::cut::{PlaneCut, cut_line};
use super::section::Section;
use crate::error::Error;
use crate::num;
use crate::trim::size::to_length;
use crate::trim::{Flat, Part, Point};
use crate::units::{Angle, Length};

/// The cut across one leg, or across the return of a hem.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, Mitre, MitreCorner, NeutralFactor, Placement, Profile, SecondHalf, SheetSurface};
/// use seamwright::units::{Angle, Length};
/// let strip = Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(4)).build()?;
/// let corner = Mitre {
///     profile: strip,
///     placement: Placement::default(),
///     rule: BendRule::neutral_axis(NeutralFactor::MIDDLE),
///     corner: MitreCorner::Plan { turn: Angle::SQUARE, first_rise: Angle::ZERO, second_rise: Angle::ZERO },
///     second: SecondHalf::Upright,
///     closes_on: SheetSurface::Upper,
///     tolerance: Length::micrometres(1),
/// }
/// .compute()?;
/// // Frame corners on the flat: 45 degrees, and the piece is the longer on the far side of the turn.
/// let cut = &corner.first.legs[0];
/// assert_eq!(cut.angle, Angle::degrees_from(45.0)?);
/// assert_eq!((cut.from.y, cut.to.y), (Length::ZERO, Length::inches(4)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LegCut {
    /// Which leg of the profile.
    pub part: Part,
    /// From the bend lines, onward along the run, to the cut, as the cut runs from the start edge towards the end edge: 90 degrees is square, less
    /// where the cut runs on along the run.
    pub angle: Angle,
    /// How far the mitre plane leans from square to the sheet of this leg: 0 where the cut edge meets it over the whole thickness.
    pub bevel: Angle,
    /// Where the cut starts: the station, and how far along the run from the corner's origin.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

/// One half of a mitred corner: its flat, and the line on it that is cut.
///
/// Points of the line have the station on the flat as x, from the start edge with the upper face up, and as y how far along the run they lie, onward
/// positive, from the section through the corner's origin. The first half is what lies before its line, the second what lies beyond.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, Mitre, MitreCorner, NeutralFactor, Placement, Profile, SecondHalf, SheetSurface};
/// use seamwright::units::{Angle, BendAngle, Length};
/// let angle = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(24))
///     .leg("flange", Length::inches(4))
///     .down(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .build()?;
/// let corner = Mitre {
///     profile: angle,
///     placement: Placement::default(),
///     rule: BendRule::neutral_axis(NeutralFactor::MIDDLE),
///     corner: MitreCorner::Plan { turn: Angle::SQUARE, first_rise: Angle::ZERO, second_rise: Angle::ZERO },
///     second: SecondHalf::Upright,
///     closes_on: SheetSurface::Upper,
///     tolerance: Length::micrometres(1),
/// }
/// .compute()?;
/// // The level flange is cut at 45 degrees, the plumb face square.
/// let angles: Vec<f64> = corner.first.legs.iter().map(|cut| cut.angle.degrees()).collect();
/// assert_eq!(angles, [45.0, 90.0]);
/// assert_eq!(corner.first.line.last().map(|p| p.x), Some(corner.first.flat.girth()));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct MitreHalf {
    /// The flat pattern of its profile.
    pub flat: Flat,
    /// The cut across each leg, returns of hems among them.
    pub legs: Vec<LegCut>,
    /// The whole line from the start edge to the end edge: straight on the legs, in the bends the developed curve, exact at tangent lines and
    /// bend lines and otherwise as close as the tolerance.
    pub line: Vec<Point>,
    /// The most that the other face of the sheet parts or overruns, on one half, where the halves close on the surface asked for.
    pub opening: Length,
}

/// The planes of one half, one for each stretch of its section.
pub(super) struct HalfCut<'a> {
    pub(super) section: &'a Section,
    pub(super) planes: Vec<PlaneCut>,
}

/// The most that the plane runs on for each length square to the sheet, over a bend whose sheet faces this way at its start and turns so far.
fn most_lean(plane: &PlaneCut, facing: f64, turn: f64) -> f64 {
    let steepest = num::atan2_deg(plane.by_y, plane.by_x);
    let ahead = ((steepest - facing) * turn.signum() % 180.0 + 180.0) % 180.0;
    if ahead <= turn.abs() { plane.steepness() } else { plane.slope(facing).abs().max(plane.slope(facing + turn).abs()) }
}

impl HalfCut<'_> {
    pub(super) fn half(&self, flat: &Flat, depth: f64, tolerance: Length) -> Result<MitreHalf, Error> {
        let mut legs = Vec::with_capacity(flat.legs().len());
        let mut opening = 0.0_f64;
        for (stretch, plane) in self.section.0.iter().zip(&self.planes) {
            // What the plane runs on for each length square to the sheet, against what it is long itself in the leg.
            let (slope, lean) = (plane.slope(stretch.heading), plane.slope(stretch.heading + 90.0));
            let steep = (1.0 + slope * slope).sqrt();
            if stretch.is_bend() {
                opening = opening.max(depth * most_lean(plane, stretch.heading + 90.0, stretch.turn));
                continue;
            }
            opening = opening.max(depth * lean.abs());
            legs.push(LegCut {
                part: stretch.part,
                angle: Angle::degrees_from(num::atan2_deg(1.0, slope))?,
                bevel: Angle::degrees_from(num::atan2_deg(lean.abs(), steep))?,
                from: Point { x: to_length(stretch.stations.0)?, y: to_length(plane.along(stretch.from))? },
                to: Point { x: to_length(stretch.stations.1)?, y: to_length(plane.along(stretch.to))? },
            });
        }
        Ok(MitreHalf { flat: flat.clone(), legs, line: cut_line(self.section, &self.planes, tolerance)?, opening: to_length(opening)? })
    }
}
