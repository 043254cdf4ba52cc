//! What a flashing does at a wall: how high its leg stands, and what covers its top.

use super::draft::{FastenerRow, TrimSheet, Walk, hem, keep_under, leg, refuse_short};
use super::least::LeastRule;
use super::parts::{Adjoining, Along, AlongLine, Bites, JunctionTrim, LayoutLine, Side, Solved};
use super::support::{SectionPoint, Support};
use crate::error::{Error, Faults};
use crate::record::{Recorder, Step};
use crate::trim::{Direction, Edge, Face};
use crate::units::{Angle, Length, Sum};

/// What covers the top of a flashing's leg.
///
/// ```
/// use seamwright::junction::{WallCover, LeastRule};
/// use seamwright::units::Length;
/// let cover = WallCover::Cladding { lap: Length::inches(7), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) };
/// assert!(matches!(cover, WallCover::Cladding { lap, rule, .. } if lap > rule.least));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum WallCover {
    /// The wall's cladding comes down over the leg.
    Cladding {
        /// How much of the leg lies behind the cladding.
        lap: Length,
        /// How much must.
        rule: LeastRule,
        /// What must stay open between the cladding and the flashing's flange.
        clearance: Length,
    },
    /// A counterflashing let into a reglet comes down over the leg.
    Reglet(Box<Counterflashing>),
}

/// A counterflashing let into a reglet.
///
/// In a job file `least_lap` is [`LeastRule::LAP_OVER_LEG`] and `hem` is
/// [`EDGE_HEM`](crate::practice::junction::EDGE_HEM) unless given.
///
/// ```
/// use seamwright::junction::{Counterflashing, FastenerRow, LeastRule};
/// use seamwright::practice::junction as practice;
/// use seamwright::units::Length;
/// let counterflashing = Counterflashing {
///     tongue: Length::inches(2),
///     rule: LeastRule::UFGS_INTO_WALL,
///     above_leg: Length::inches(1),
///     face: Length::inches(5),
///     least_lap: LeastRule::LAP_OVER_LEG,
///     hem: practice::EDGE_HEM,
///     wedges: Some(FastenerRow::UFGS_WEDGES),
///     bead_width: Length::parse("1/4\"")?,
///     bead_depth: Length::parse("1/4\"")?,
/// };
/// assert_eq!(counterflashing.lap()?, Length::inches(4));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Counterflashing {
    /// How far it goes into the wall, from the wall's face.
    pub tongue: Length,
    /// How far it must.
    pub rule: LeastRule,
    /// From the top of the leg up to the tongue.
    pub above_leg: Length,
    /// From the tongue down to its lower edge.
    pub face: Length,
    /// The least lap over the leg.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::lap_over_leg"))]
    pub least_lap: LeastRule,
    /// Width of the closed hem at its lower edge, folded toward the leg; zero for a raw edge.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::edge_hem"))]
    pub hem: Length,
    /// Wedges that hold the tongue in the reglet; in a job file [`UFGS_WEDGES`](FastenerRow::UFGS_WEDGES) unless given, and none, written `null`, where the reglet's own
    /// receiver holds it.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::reglet_wedges"))]
    pub wedges: Option<FastenerRow>,
    /// Width of the bead that fills the reglet along the tongue.
    pub bead_width: Length,
    /// Depth of that bead.
    pub bead_depth: Length,
}

impl Counterflashing {
    /// How far it comes down over the leg.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`](crate::error::ErrorKind::Overflow) beyond the range of a length.
    pub fn lap(&self) -> Result<Length, Error> {
        (self.face - self.above_leg).length()
    }
}

/// The leg of a flashing up a wall.
///
/// ```
/// use seamwright::junction::{FastenerRow, WallCover, WallLeg, LeastRule};
/// use seamwright::units::Length;
/// let leg = WallLeg {
///     leg: Length::inches(9),
///     stands_out: Length::ZERO,
///     upstand: LeastRule::UFC_UPSTAND,
///     fasteners: Some(FastenerRow::UFGS_WALL_LEG),
///     fasteners_below_top: Length::inches(1),
///     cover: WallCover::Cladding { lap: Length::inches(7), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) },
/// };
/// assert!(leg.leg > leg.upstand.least);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WallLeg {
    /// From the flashing's bend up the wall to the leg's top.
    pub leg: Length,
    /// How far the leg stands out from the wall's face: sheathing, barrier.
    pub stands_out: Length,
    /// How high its top must stand above the pan, square to it.
    pub upstand: LeastRule,
    /// The fasteners of the leg to the wall; none where the leg stands free behind its cover, so that the flashing can go with panels that move.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub fasteners: Option<FastenerRow>,
    /// From the leg's top down to them, where there are any; what covers the leg must cover them.
    pub fasteners_below_top: Length,
    /// What covers its top.
    pub cover: WallCover,
}

impl WallLeg {
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.leg.positive("leg"));
        faults.keep(self.stands_out.not_negative("stands_out"));
        faults.keep(self.upstand.least.not_negative("upstand.least"));
        if let Some(row) = &self.fasteners {
            keep_under(&mut faults, "fasteners", row.check());
        }
        faults.keep(self.fasteners_below_top.not_negative("fasteners_below_top"));
        match &self.cover {
            WallCover::Cladding { lap, rule, clearance } => {
                for (path, length) in [("cover.cladding.lap", *lap), ("cover.cladding.rule.least", rule.least), ("cover.cladding.clearance", *clearance)] {
                    faults.keep(length.not_negative(path));
                }
            }
            WallCover::Reglet(c) => {
                if let Some(row) = &c.wedges {
                    keep_under(&mut faults, "cover.reglet.wedges", row.check());
                }
                faults.keep(c.tongue.positive("cover.reglet.tongue"));
                faults.keep(c.face.positive("cover.reglet.face"));
                faults.keep(c.bead_width.positive("cover.reglet.bead_width"));
                faults.keep(c.bead_depth.positive("cover.reglet.bead_depth"));
                for (path, length) in [
                    ("cover.reglet.rule.least", c.rule.least),
                    ("cover.reglet.above_leg", c.above_leg),
                    ("cover.reglet.least_lap.least", c.least_lap.least),
                    ("cover.reglet.hem", c.hem),
                ] {
                    faults.keep(length.not_negative(path));
                }
            }
        }
        faults.check()
    }

    /// The line of the wall that the leg lies on.
    pub(super) fn support(&self) -> Support {
        Support { rise: Angle::SQUARE, height: self.stands_out }
    }

    /// The leg's top, what covers it, and what lies along the wall: for a roof plane at `roof.rise` whose pan lies at `roof.height`, and a flashing with its bend here.
    pub(super) fn solve<R: Recorder>(&self, r: &mut R, roof: Support, bend: SectionPoint, sheet: TrimSheet) -> Result<OnWall, Error> {
        let top = SectionPoint { x: bend.x, z: (bend.z + self.leg).length()? };
        let (sin, cos) = (roof.rise.sin(), roof.rise.cos());
        let upstand = Length::from_mm(top.z.mm() * cos - top.x.mm() * sin - roof.height.mm())?;
        r.step(|| {
            let step = Step::new("upstand, square to the pan").formula("(bend + leg) cos S + distance from the wall sin S - height of the pan");
            step.with("leg", self.leg)
                .with("S", roof.rise)
                .with("pan", roof.height)
                .with("least", self.upstand.least)
                .gives(upstand)
                .source(self.upstand.source.clone())
        });
        let mut faults = Faults::default();
        let cure = match Length::from_mm((self.upstand.least.mm() - upstand.mm()) / cos) {
            Ok(more) => format!("a leg longer by {more}"),
            Err(_) => "a lower pitch".into(),
        };
        self.upstand.check(&mut faults, "leg", upstand, self.leg, cure)?;
        let mut counterflashing = None;
        let mut cladding = None;
        // Marked on the wall before the flashing hides the line: a reglet is cut first, cladding comes down last.
        let (top_edge, row) = ("leg, top edge", "leg fasteners");
        let mut lines = vec![LayoutLine::from_junction(top_edge, Side::Second, top.z.into())?];
        let on_leg = |name: &'static str, by: Sum| LayoutLine::from_line(name, Side::Second, top_edge, top.z, by);
        let mut along = Vec::with_capacity(2);
        if let Some(fasteners) = &self.fasteners {
            lines.push(on_leg(row, -self.fasteners_below_top)?);
            along.push(fasteners.line(row, Side::Second, Bites::Structure, (top.z - self.fasteners_below_top).length()?));
        }
        let covered = match &self.cover {
            WallCover::Cladding { lap, .. } => *lap,
            WallCover::Reglet(c) => c.lap()?,
        };
        if self.fasteners.is_some() {
            let (what, below) = ("the leg's fasteners stand below what covers them", self.fasteners_below_top);
            refuse_short(&mut faults, "fasteners_below_top", what, below - covered, below, "fasteners nearer to the top")?;
        }
        match &self.cover {
            WallCover::Cladding { lap, rule, clearance } => {
                let more = (rule.least - *lap).length()?;
                rule.check(&mut faults, "cover.cladding.lap", *lap, *lap, format!("cladding brought down by {more}, or a leg so much longer"))?;
                refuse_short(
                    &mut faults,
                    "cover.cladding.clearance",
                    "the cladding comes too near the flashing's flange",
                    *clearance + *lap - self.leg,
                    *clearance,
                    "a longer leg",
                )?;
                lines.push(on_leg("cladding, lower edge", -*lap)?);
                cladding = Some(Adjoining::Cladding { lower_edge: (top.z - *lap).length()? });
            }
            WallCover::Reglet(c) => {
                let more = (c.rule.least - c.tongue).length()?;
                c.rule.check(&mut faults, "cover.reglet.tongue", c.tongue, c.tongue, format!("a tongue longer by {more}, in a deeper reglet"))?;
                let lap = c.lap()?;
                let more = (c.least_lap.least - lap).length()?;
                c.least_lap.check(&mut faults, "cover.reglet.face", lap, c.face, format!("a face longer by {more}, or a lower reglet"))?;
                refuse_short(&mut faults, "cover.reglet.face", "the counterflashing passes the flashing's bend", lap - self.leg, c.face, "a shorter face")?;
                let z = (top.z + c.above_leg).length()?;
                // It lies on the outer face of the leg, and off it by the layer of a hem that is folded toward it.
                let off = if c.hem.is_positive() { sheet.thickness } else { Length::ZERO };
                let x = (-(self.stands_out + sheet.thickness + off)).length()?;
                let foot = SectionPoint { x, z: (z - c.face).length()? };
                let legs = [leg("counterflashing face", SectionPoint { x, z }), leg("tongue", SectionPoint { x: c.tongue, z })];
                lines.insert(0, LayoutLine::from_junction("reglet", Side::Second, z.into())?);
                along.extend(c.wedges.as_ref().map(|row| row.line("reglet wedges", Side::Second, Bites::Structure, z)));
                let bead = Along::Bead { width: c.bead_width, depth: c.bead_depth };
                along.push(AlongLine { name: "reglet bead".into(), side: Side::Second, what: bead, from_line: z });
                let walk = Walk {
                    name: "counterflashing",
                    sheet,
                    start: foot,
                    legs: &legs,
                    start_edge: hem(c.hem, Direction::Down),
                    end_edge: Edge::Raw,
                    painted: Face::Upper,
                };
                counterflashing = faults.keep(walk.lay());
            }
        }
        faults.check()?;
        Ok(OnWall { top, counterflashing, along, lines, cladding })
    }
}

/// What a leg gives to its junction.
pub(super) struct OnWall {
    pub(super) top: SectionPoint,
    pub(super) counterflashing: Option<JunctionTrim>,
    pub(super) along: Vec<AlongLine>,
    lines: Vec<LayoutLine>,
    cladding: Option<Adjoining>,
}

impl OnWall {
    /// Adds what lies on the wall to its junction.
    pub(super) fn give(self, solved: &mut Solved) {
        solved.trims.extend(self.counterflashing);
        solved.along.extend(self.along);
        solved.lines.extend(self.lines);
        solved.adjoining.extend(self.cladding);
    }
}
