//! What a flashing does at a wall: how high its leg stands, and what covers its top.

use super::draft::{FastenerRow, TrimSheet, Walk, hem, keep_under, leg, refuse_short};
use super::parts::{Adjoining, Along, AlongLine, Bites, JunctionTrim, LayoutLine, Side, Solved};
use super::support::{SectionPoint, Support};
use crate::error::{Error, Faults};
use crate::record::{Recorder, Seen, Source, Step};
use crate::trim::{Direction, Edge, Face};
use crate::units::{Angle, Length, Sum};
use std::borrow::Cow;

/// A least dimension of a wall flashing, with the document that asks for it.
///
/// ```
/// use seamwright::junction::WallRule;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// assert_eq!(WallRule::UFC_UPSTAND.least, Length::inches(6));
/// let own = WallRule::given("upstand", Length::inches(10), Source::user());
/// assert!(own.least > WallRule::UFGS_UPSTAND.least);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WallRule {
    /// What is measured.
    pub what: Cow<'static, str>,
    /// The least that it may be.
    pub least: Length,
    /// Where the rule stands.
    pub source: Source,
}

impl WallRule {
    /// Watertight flashing connections reach 6 in (150 mm) above the drainage plane.
    pub const UFC_UPSTAND: WallRule = WallRule::of("upstand above the drainage plane", 6, Source::published("UFC 3-110-03", "2006", "4-6", Seen::Text));
    /// Base flashing goes up the wall 8 in (200 mm).
    pub const UFGS_UPSTAND: WallRule = WallRule::of("base flashing up the wall", 8, Source::published("UFGS-07600", "", "3.1.11", Seen::Text));
    /// Base flashing goes under the roof covering 4 in (100 mm).
    pub const UFGS_UNDER_COVERING: WallRule =
        WallRule::of("base flashing under the roof covering", 4, Source::published("UFGS-07600", "", "3.1.11", Seen::Text));
    /// Base flashing goes 6 in (150 mm) behind the wall covering.
    pub const UFGS_BEHIND_CLADDING: WallRule = WallRule::of("leg behind the wall covering", 6, Source::published("UFGS-07600", "", "3.1.11", Seen::Text));
    /// Counterflashing goes 2 in (50 mm) into the wall.
    pub const UFGS_INTO_WALL: WallRule = WallRule::of("counterflashing into the wall", 2, Source::published("UFGS-07600", "", "3.1.12", Seen::Text));
    /// A fascia hooks its edge strip by 3/4 in (20 mm).
    pub const UFGS_HOOK: WallRule =
        WallRule::exactly("fascia hooked over the edge strip", Length::inches_64(48), Source::published("UFGS-07600", "", "3.1.15.1", Seen::Text));
    /// A fascia's backing plate laps each piece by 4 in (100 mm).
    pub const UFGS_PLATE_LAP: WallRule = WallRule::of("joint plate under each piece", 4, Source::published("UFGS-07600", "", "3.1.15.2", Seen::Text));
    /// The pieces of a fascia stand 1/4 in (6 mm) apart.
    pub const UFGS_END_GAP: WallRule =
        WallRule::exactly("gap between pieces", Length::inches_64(16), Source::published("UFGS-07600", "", "3.1.15.2", Seen::Text));
    /// A corner piece has legs of 12 in (300 mm).
    pub const UFGS_CORNER_LEG: WallRule = WallRule::of("leg of a corner piece", 12, Source::published("UFGS-07600", "", "2", Seen::Text));
    /// Penetrations stand 18 in apart.
    pub const NAVFAC_APART: WallRule = WallRule::of("distance between penetrations", 18, Source::published("NAVFAC roofing guidance", "", "", Seen::Text));
    /// A lap that slides is 3 in longer than its movement. Common practice, no published source.
    pub const SLIDING_LAP: WallRule = WallRule::of("lap beside the movement", 3, Source::CommonPractice);
    /// A face comes down 4 in over the leg or the cladding that comes up under it, as a counterflashing does. Common practice, no published source.
    pub const LAP_OVER_LEG: WallRule =
        WallRule::exactly("lap over the leg that comes up under it", crate::practice::junction::COUNTERFLASHING_LAP_LEAST, Source::CommonPractice);
    /// The rake trim's top runs past the top flange of the Z by this: common practice, no published source.
    pub const COVER_OF_Z: WallRule = WallRule::exactly("cover of the Z by the trim", crate::practice::junction::Z_COVER_LEAST, Source::CommonPractice);

    /// Every published rule that the library holds.
    pub const ALL: &'static [WallRule] = &[
        Self::UFC_UPSTAND,
        Self::UFGS_UPSTAND,
        Self::UFGS_UNDER_COVERING,
        Self::UFGS_BEHIND_CLADDING,
        Self::UFGS_INTO_WALL,
        Self::UFGS_HOOK,
        Self::UFGS_PLATE_LAP,
        Self::UFGS_END_GAP,
        Self::UFGS_CORNER_LEG,
        Self::NAVFAC_APART,
    ];

    const fn of(what: &'static str, inches: i16, source: Source) -> WallRule {
        WallRule::exactly(what, Length::inches(inches), source)
    }

    const fn exactly(what: &'static str, least: Length, source: Source) -> WallRule {
        WallRule { what: Cow::Borrowed(what), least, source }
    }

    /// A rule from another document, or the caller's own.
    #[must_use]
    pub fn given(what: impl Into<Cow<'static, str>>, least: Length, source: Source) -> WallRule {
        WallRule { what: what.into(), least, source }
    }

    /// A fault unless `have` is at least the rule's.
    pub(crate) fn check(&self, faults: &mut Faults, path: &str, have: Length, value: Length, cure: String) -> Result<(), Error> {
        if have >= self.least {
            return Ok(());
        }
        let short = (self.least - have).length()?;
        let error = Error::new(crate::error::ErrorKind::Impossible, format!("{}: {have}, too little by {short}", self.what)).at(path).value_of(value);
        faults.add(error.accepts(format!("{} or more ({})", self.least, self.source)).cured_by(cure));
        Ok(())
    }
}

/// What covers the top of a flashing's leg.
///
/// ```
/// use seamwright::junction::{WallCover, WallRule};
/// use seamwright::units::Length;
/// let cover = WallCover::Cladding { lap: Length::inches(7), rule: WallRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) };
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
        rule: WallRule,
        /// What must stay open between the cladding and the flashing's flange.
        clearance: Length,
    },
    /// A counterflashing let into a reglet comes down over the leg.
    Reglet(Counterflashing),
}

/// A counterflashing let into a reglet.
///
/// In a job file `least_lap` is [`COUNTERFLASHING_LAP_LEAST`](crate::practice::junction::COUNTERFLASHING_LAP_LEAST) and `hem` is
/// [`EDGE_HEM`](crate::practice::junction::EDGE_HEM) unless given.
///
/// ```
/// use seamwright::junction::{Counterflashing, WallRule};
/// use seamwright::practice::junction as practice;
/// use seamwright::units::Length;
/// let counterflashing = Counterflashing {
///     tongue: Length::inches(2),
///     rule: WallRule::UFGS_INTO_WALL,
///     above_leg: Length::inches(1),
///     face: Length::inches(5),
///     least_lap: practice::COUNTERFLASHING_LAP_LEAST,
///     hem: practice::EDGE_HEM,
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
    pub rule: WallRule,
    /// From the top of the leg up to the tongue.
    pub above_leg: Length,
    /// From the tongue down to its lower edge.
    pub face: Length,
    /// The least lap over the leg.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::counterflashing_lap"))]
    pub least_lap: Length,
    /// Width of the closed hem at its lower edge, folded toward the leg; zero for a raw edge.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::edge_hem"))]
    pub hem: Length,
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
/// use seamwright::junction::{FastenerRow, WallCover, WallLeg, WallRule};
/// use seamwright::units::Length;
/// let leg = WallLeg {
///     leg: Length::inches(9),
///     stands_out: Length::ZERO,
///     upstand: WallRule::UFC_UPSTAND,
///     fasteners: Some(FastenerRow::UFGS_WALL_LEG),
///     fasteners_below_top: Length::inches(1),
///     cover: WallCover::Cladding { lap: Length::inches(7), rule: WallRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(1) },
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
    pub upstand: WallRule,
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
                faults.keep(c.tongue.positive("cover.reglet.tongue"));
                faults.keep(c.face.positive("cover.reglet.face"));
                faults.keep(c.bead_width.positive("cover.reglet.bead_width"));
                faults.keep(c.bead_depth.positive("cover.reglet.bead_depth"));
                for (path, length) in [
                    ("cover.reglet.rule.least", c.rule.least),
                    ("cover.reglet.above_leg", c.above_leg),
                    ("cover.reglet.least_lap", c.least_lap),
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
                rule.check(&mut faults, "cover.cladding.lap", *lap, *lap, "bring the cladding farther down, or make the leg longer".into())?;
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
                c.rule.check(&mut faults, "cover.reglet.tongue", c.tongue, c.tongue, "a longer tongue in a deeper reglet".into())?;
                let lap = c.lap()?;
                refuse_short(
                    &mut faults,
                    "cover.reglet.face",
                    "the counterflashing laps the leg too little",
                    c.least_lap - lap,
                    c.face,
                    "a longer face, or a lower reglet",
                )?;
                refuse_short(&mut faults, "cover.reglet.face", "the counterflashing passes the flashing's bend", lap - self.leg, c.face, "a shorter face")?;
                let z = (top.z + c.above_leg).length()?;
                // It lies on the outer face of the leg, and off it by the layer of a hem that is folded toward it.
                let off = if c.hem.is_positive() { sheet.thickness } else { Length::ZERO };
                let x = (-(self.stands_out + sheet.thickness + off)).length()?;
                let foot = SectionPoint { x, z: (z - c.face).length()? };
                let legs = [leg("counterflashing face", SectionPoint { x, z }), leg("tongue", SectionPoint { x: c.tongue, z })];
                lines.insert(0, LayoutLine::from_junction("reglet", Side::Second, z.into())?);
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
