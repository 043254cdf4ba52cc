//! The headwall: a roof's upper end against a plumb wall.

use super::covered_end::CoveredEnd;
use super::folded::{FoldedSheet, along, trim};
use super::parts::{Side, Solved};
use super::support::Support;
use super::wall::WallLeg;
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::Pitch;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::Edge;
use crate::units::{Angle, Length};

/// A headwall: a one-sided ridge whose other leg goes up the wall.
///
/// The junction line is where the deck meets the wall's face. The flange lies on the seam tops, `h` above the deck; with the leg `w` out from the wall, the bend
/// lies `h / cos S - w tan S` above the line. The bend is 90 degrees less the pitch. The leg's top stands `h + leg cos S` above the deck, square to it, whatever `w` is.
///
/// ```
/// use seamwright::junction::{
///     Bites, Closure, CoveredEnd, DripEdge, FastenerRow, FoldedSheet, Headwall, Levels, WallCover, WallLeg, WallRule,
/// };
/// use seamwright::pitch::Pitch;
/// use seamwright::practice::{junction as practice, panel};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::Length;
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let headwall = Headwall {
///     pitch: Pitch::parse("4:12")?,
///     sheet: FoldedSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     end: CoveredEnd {
///         levels: Levels { seam_height: Length::parse("1 3/4\"")?, ..Levels::default() },
///         flange: Length::inches(8),
///         drip: DripEdge { depth: Length::parse("3/4\"")?, hem: practice::EDGE_HEM },
///         closure: Closure {
///             setback: seamwright::practice::closure::SET_BACK,
///             face_to_screws: practice::CLOSURE_FACE_TO_SCREWS,
///             screws_to_edge: Length::parse("1/2\"")?,
///             tape_width: Length::parse("7/8\"")?,
///             panel_margin: Length::parse("1/2\"")?,
///         },
///         tape_beneath: Length::parse("1/16\"")?,
///         bites: Bites::Structure,
///         screws: row.clone(),
///         rivets: row,
///         hold_back: Length::inches(1),
///         clearance: Length::parse("1/4\"")?,
///         turn_up: panel::TURN_UP,
///         field_trim: Length::ZERO,
///     },
///     wall: WallLeg {
///         leg: Length::inches(9),
///         stands_out: Length::parse("1/8\"")?,
///         upstand: WallRule::UFGS_UPSTAND,
///         fasteners: FastenerRow::UFGS_WALL_LEG,
///         fasteners_below_top: Length::inches(1),
///         cover: WallCover::Cladding { lap: Length::inches(7), rule: WallRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) },
///     },
/// };
/// let solved = headwall.compute()?;
/// let flashing = solved.trim("headwall flashing").expect("a headwall has a flashing");
/// assert_eq!(flashing.profile.legs.last().map(|l| l.length), Some(Length::inches(9)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Headwall {
    /// The roof's pitch, up to the wall.
    pub pitch: Pitch,
    /// The sheet of the flashing and of a counterflashing.
    pub sheet: FoldedSheet,
    /// The end of the panels, with the flange over it.
    pub end: CoveredEnd,
    /// The leg up the wall.
    pub wall: WallLeg,
}

impl Calculation for Headwall {
    type Out = Solved;

    fn title(&self) -> String {
        format!("headwall above a roof of {}", self.pitch)
    }

    /// Refuses a headwall whose leg stands too low, whose panels touch the wall or whose closures miss the panels; all such faults at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        let slope = self.pitch.angle();
        let mut faults = Faults::default();
        if slope.degrees() >= 90.0 {
            faults.add(Error::new(ErrorKind::OutOfRange, "the roof stands as plumb as the wall").at("pitch").value_of(self.pitch).accepts("less than 90 deg"));
        }
        if let Err(e) = self.wall.check() {
            faults.add(e.under("wall"));
        }
        let h = faults.keep(r.part(|| self.end.levels.title(), |r| self.end.levels.run(r)).map_err(|e| e.under("end.levels")));
        faults.check()?;
        let h = h.unwrap_or_default();
        let seams = Support { rise: slope, height: h };
        let corner = seams.meets(&self.wall.support()).map_err(|e| e.under("pitch"))?;
        let bend = along(&seams, corner)?;
        r.step(|| {
            let step = Step::new("bend above the line").formula("h / cos S - w tan S");
            step.with("h", h).with("S", slope).with("w", self.wall.stands_out).gives(corner.z).source(Source::geometry())
        });
        r.step(|| Step::new("bend of the flashing from flat").formula("90 - S").with("S", slope).gives(format_args!("{} deg", 90.0 - slope.degrees())));
        // The foot of the panels' ends is what comes nearest to the wall: everything above it leans back.
        let limit = Length::from_mm(-self.wall.stands_out.mm() / slope.cos())?;
        let mut faults = Faults::default();
        let covered = r.part(|| "panels below the wall".into(), |r| self.end.solve(r, Side::First, bend, limit, Angle::SQUARE));
        let covered = faults.keep(covered.map_err(|e| e.under("end")));
        let levels = &self.end.levels;
        let pan = Support { rise: slope, height: (levels.underlayment + levels.stand_off + levels.pan).length()? };
        let wall = faults.keep(r.part(|| "leg up the wall".into(), |r| self.wall.solve(r, pan, corner, self.sheet)).map_err(|e| e.under("wall")));
        faults.check()?;
        let (Some(covered), Some(wall)) = (covered, wall) else {
            return Ok(Solved::default());
        };

        let (start, edge) = self.end.drip.corners(&seams, (bend - self.end.flange).length()?)?;
        let mut legs = Vec::with_capacity(3);
        legs.extend(edge.map(|p| ("drip", p)));
        legs.push(("flange", corner));
        legs.push(("leg", wall.top));
        let flashing = trim("headwall flashing", self.sheet, start, &legs, (self.end.drip.edge(), Edge::Raw))?;
        let mut trims = vec![flashing];
        trims.extend(wall.counterflashing);
        let along = covered.along.into_iter().chain(wall.along).collect();
        Ok(Solved { trims, ends: vec![covered.end], along, lines: Vec::new(), cautions: covered.cautions.into_iter().map(|c| c.under("end")).collect() })
    }
}
