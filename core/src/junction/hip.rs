//! The hip: a ridge in the plane square to it, where each roof plane falls at its backing angle.

use super::covered_end::{CoveredEnd, meets_seams};
use super::folded::{FoldedSheet, along, trim};
use super::parts::{Side, Solved};
use super::support::Support;
use crate::error::{Error, Faults};
use crate::pitch::Corner;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Angle, Length};

/// A hip with its cap on the seam tops of both sides.
///
/// The section lies square to the hip. The first plane rises toward the line at its signed backing angle and the second falls from it at its own; a
/// negative backing is a plane that goes on rising beyond the line. The cap's bend is the sum of the two. With one level `h` on both sides
/// it stands `h / cos(bend/2)` from the line, on the line that halves the angle.
///
/// ```
/// use seamwright::junction::{Bites, Closure, CoveredEnd, DripEdge, FastenerRow, FoldedSheet, Hip, Levels};
/// use seamwright::pitch::{Corner, Pitch};
/// use seamwright::practice::{junction as practice, panel};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let side = CoveredEnd {
///     levels: Levels { seam_height: Length::parse("1 3/4\"")?, ..Levels::default() },
///     flange: Length::inches(9),
///     drip: DripEdge { depth: Length::parse("3/4\"")?, hem: practice::EDGE_HEM },
///     closure: Closure {
///         setback: seamwright::practice::closure::SET_BACK,
///         face_to_screws: practice::CLOSURE_FACE_TO_SCREWS,
///         screws_to_edge: Length::parse("1/2\"")?,
///         tape_width: Length::parse("7/8\"")?,
///         panel_margin: Length::parse("1/2\"")?,
///     },
///     tape_beneath: Length::parse("1/16\"")?,
///     bites: Bites::Structure,
///     screws: row.clone(),
///     rivets: row,
///     hold_back: Length::inches(2),
///     clearance: Length::parse("1/4\"")?,
///     turn_up: panel::TURN_UP,
///     field_trim: panel::SKEW_FIELD_TRIM,
/// };
/// let p = Pitch::parse("12:12")?;
/// let hip = Hip {
///     corner: Corner { first: p, second: p, plan: Angle::SQUARE },
///     sheet: FoldedSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     first: side.clone(),
///     second: side,
/// };
/// let solved = hip.compute()?;
/// let cap = solved.trim("hip cap").expect("a hip has a cap");
/// // Drip, flange, flange, drip: the ridge of the cap is the middle bend, 60 degrees for two planes of 12:12.
/// assert!((cap.profile.bends[1].angle.degrees() - 60.0).abs() < 1e-6);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Hip {
    /// The two planes.
    pub corner: Corner,
    /// The cap's sheet.
    pub sheet: FoldedSheet,
    /// The end of the panels of side 1.
    pub first: CoveredEnd,
    /// The end of the panels of side 2.
    pub second: CoveredEnd,
}

impl Calculation for Hip {
    type Out = Solved;

    fn title(&self) -> String {
        format!("hip between {} and {}", self.corner.first, self.corner.second)
    }

    /// Refuses a hip whose seams pierce the cap or whose closures miss the panels; the faults of both sides at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        let geometry = r.part(|| self.corner.title(), |r| self.corner.run(r).map_err(|e| e.under("corner")))?;
        r.step(|| {
            let step = Step::new("bend of the cap from flat").formula("C1 + C2 = 180 - the angle between the planes");
            step.with("C1", geometry.first.backing).with("C2", geometry.second.backing).gives(format_args!("{} deg", 180.0 - geometry.dihedral.degrees()))
        });
        let (one, two) = (geometry.first, geometry.second);
        let mut faults = Faults::default();
        faults.keep(meets_seams(one.meeting(), "first"));
        faults.keep(meets_seams(two.meeting(), "second"));
        let heights = (
            faults.keep(r.part(|| "side 1".into(), |r| self.first.levels.run(r)).map_err(|e| e.under("first.levels"))),
            faults.keep(r.part(|| "side 2".into(), |r| self.second.levels.run(r)).map_err(|e| e.under("second.levels"))),
        );
        faults.check()?;
        let (h1, h2) = (heights.0.unwrap_or_default(), heights.1.unwrap_or_default());

        let s1 = Support { rise: one.backing, height: h1 };
        let s2 = Support { rise: Angle::degrees_from(-two.backing.degrees())?, height: h2 };
        let ridge = s1.meets(&s2).map_err(|e| e.under("corner"))?;
        let (a1, a2) = (along(&s1, ridge)?, along(&s2, ridge)?);
        // Up the slope of side 2 is toward -x.
        let (bend1, bend2) = (a1, (-a2).length()?);
        for (n, bend, h, backing) in [(1, bend1, h1, one.backing), (2, bend2, h2, two.backing)] {
            r.step(|| {
                let step = Step::new(format!("bend of the cap along side {n} from the line")).formula("where the planes of the seam tops meet");
                step.with("h", h).with("backing", backing).gives(bend).source(Source::geometry())
            });
        }

        let mut faults = Faults::default();
        let first = r.part(|| "panels of side 1".into(), |r| self.first.solve(r, Side::First, bend1, bend1.min(Length::ZERO), one.meeting()));
        let first = faults.keep(first.map_err(|e| e.under("first")));
        let second = r.part(|| "panels of side 2".into(), |r| self.second.solve(r, Side::Second, bend2, bend2.min(Length::ZERO), two.meeting()));
        let second = faults.keep(second.map_err(|e| e.under("second")));
        faults.check()?;

        let (start, edge1) = self.first.drip.corners(&s1, (a1 - self.first.flange).length()?)?;
        let (end, edge2) = self.second.drip.corners(&s2, (a2 + self.second.flange).length()?)?;
        let mut legs = Vec::with_capacity(4);
        legs.extend(edge1.map(|p| ("drip 1", p)));
        legs.push(("flange 1", ridge));
        legs.push(("flange 2", edge2.unwrap_or(end)));
        legs.extend(edge2.map(|_| ("drip 2", end)));
        let cap = trim("hip cap", self.sheet, start, &legs, (self.first.drip.edge(), self.second.drip.edge()))?;

        let mut solved = Solved { trims: vec![cap], ..Solved::default() };
        for (prefix, covered) in [("first", first), ("second", second)] {
            if let Some(covered) = covered {
                solved.along.extend(covered.along);
                solved.ends.push(covered.end);
                solved.cautions.extend(covered.cautions.into_iter().map(|c| c.under(prefix)));
            }
        }
        Ok(solved)
    }
}
