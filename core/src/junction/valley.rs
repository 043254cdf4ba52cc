//! The open valley: a pan under both planes, which the panels' skew ends hook.

use super::cautions;
use super::draft::{FastenerRow, TrimSheet, Walk, along, hem, keep_under, leg, refuse_short, turned};
use super::fit::{self, Beside, Deck};
use super::least::LeastRule;
use super::least_by_slope::LeastBySlope;
use super::levels::Levels;
use super::offset_cleat::{CleatPlace, StruckFrom};
use super::parts::{Bites, JunctionTrim, LayoutLine, Side, SideEnd, Solved};
use super::support::{SectionPoint, Support};
use super::top_end::{meets_seams, skew_caution};
use super::transition::BeadSize;
use super::valley_hook::{HookPlace, Receiver, ValleyHook, add_receivers};
use super::valley_widens::{ValleyWidening, grow};
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::{Corner, CornerSide, Pitch, SlopeRule};
use crate::practice::junction as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::{Direction, Face};
use crate::units::{Angle, Length};

/// A folded rib along the centreline, over which water that crosses from one side drops.
///
/// ```
/// use seamwright::junction::SplashRib;
/// use seamwright::units::Length;
/// let rib = SplashRib { height: Length::inches(1), half_width: Length::parse("1/4\"")? };
/// assert!(rib.height > rib.half_width);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SplashRib {
    /// From the centreline of the pan up to the rib's top, in the section.
    pub height: Length,
    /// From the centreline to the rib's foot, along the pan, on each side.
    pub half_width: Length,
}

/// One side of a valley. Distances are along the plane, square to the valley.
///
/// In a job file `least_leg` is [`LeastBySlope::VALLEY_LEG`], `least_beyond` [`LeastRule::BEYOND_HOOK`] and `field_trim`
/// [`SKEW_FIELD_TRIM`](crate::practice::panel::SKEW_FIELD_TRIM) unless given.
///
/// ```
/// use seamwright::junction::{LeastBySlope, LeastRule, ValleyHook, ValleySide};
/// use seamwright::practice::{junction as practice, panel};
/// use seamwright::units::Length;
/// let side = ValleySide {
///     leg: Length::inches(10),
///     least_leg: LeastBySlope::VALLEY_LEG,
///     least_beyond: LeastRule::BEYOND_HOOK,
///     hook: ValleyHook::ReceiverFold {
///         depth: Length::parse("1 1/2\"")?,
///         opening: Length::parse("1/8\"")?,
///         gap: Length::parse("1/4\"")?,
///         fold: panel::END_FOLD,
///         least_engagement: Length::parse("3/8\"")?,
///     },
///     field_trim: panel::SKEW_FIELD_TRIM,
/// };
/// assert_eq!(side.hook.gap(), Length::parse("1/4\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ValleySide {
    /// How far the pan reaches from its centreline.
    pub leg: Length,
    /// How far it must, by the pitch of the valley's flatter plane.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::valley_leg"))]
    pub least_leg: LeastBySlope,
    /// How far it must reach beyond what the panels hook.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::beyond_hook"))]
    pub least_beyond: LeastRule,
    /// What the panels hook.
    pub hook: ValleyHook,
    /// Left on for a cut on the roof.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::skew_field_trim"))]
    pub field_trim: Length,
}

/// What is chosen at a valley.
///
/// In a job file `open_width` is [`VALLEY_OPEN_WIDTH`](crate::practice::junction::VALLEY_OPEN_WIDTH), `least_open_width` [`LeastRule::VALLEY_OPEN`] and
/// `edge_hem` [`EDGE_HEM`](crate::practice::junction::EDGE_HEM) unless given.
///
/// ```
/// use seamwright::junction::{FastenerRow, OffsetCleat, TrimSheet, ValleyDetail, ValleyEndSeal, ValleyHook, ValleySide, LeastBySlope, LeastRule};
/// use seamwright::pitch::SlopeRule;
/// use seamwright::practice::{junction as practice, movement, panel};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let cleat = OffsetCleat {
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     width: practice::CLEAT_WIDTH,
///     tongue: Length::parse("1 1/4\"")?,
///     rise: Length::parse("1/4\"")?,
///     tape_width: Length::parse("1 1/2\"")?,
///     tape: Length::parse("1/16\"")?,
///     screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
///     screws: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
///     gap: Length::parse("1/4\"")?,
///     fold: panel::END_FOLD,
///     least_engagement: movement::ENGAGEMENT,
/// };
/// let side = ValleySide {
///     leg: Length::inches(12),
///     least_leg: LeastBySlope::VALLEY_LEG,
///     least_beyond: LeastRule::BEYOND_HOOK,
///     hook: ValleyHook::OffsetCleat { cleat, least_screw_height: practice::VALLEY_SCREW_HEIGHT_LEAST },
///     field_trim: panel::SKEW_FIELD_TRIM,
/// };
/// let detail = ValleyDetail {
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     bed: Length::ZERO,
///     open_width: practice::VALLEY_OPEN_WIDTH,
///     least_open_width: LeastRule::VALLEY_OPEN,
///     widens: None,
///     rib: None,
///     edge_hem: practice::EDGE_HEM,
///     edge_cleats: None,
///     first: side.clone(),
///     second: side,
///     minimum: SlopeRule::IBC_STANDING_SEAM,
///     end: ValleyEndSeal::default(),
/// };
/// assert!(detail.open_width > detail.least_open_width.least);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ValleyDetail {
    /// The pan's sheet.
    pub sheet: TrimSheet,
    /// From the decks to the underside of the pan, square to each: underlayment and membrane.
    pub bed: Length,
    /// From the panels' nose on one side to their nose on the other, along the pan; where it grows, at the valley's top.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::valley_open_width"))]
    pub open_width: Length,
    /// How wide it must be.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::valley_open"))]
    pub least_open_width: LeastRule,
    /// How it grows downhill; none for a parallel valley. It needs the valley's length, and `open_width` is then that at its top. The pan stays parallel, as wide as its
    /// lower end needs, or tapers with it ([`WideningPan`](super::WideningPan)); the legs of its sides are then those at the top.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub widens: Option<ValleyWidening>,
    /// A rib along the centreline.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rib: Option<SplashRib>,
    /// Width of the closed hems along the pan's edges, folded up against water; zero for raw edges.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::edge_hem"))]
    pub edge_hem: Length,
    /// Cleats that hook those hems on each side, each fastened with two fasteners beside the pan, so that it is held without a hole; their spacing. None where
    /// the screws of offset cleats hold it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub edge_cleats: Option<FastenerRow>,
    /// Side 1.
    pub first: ValleySide,
    /// Side 2.
    pub second: ValleySide,
    /// The least slope that the valley itself may have.
    pub minimum: SlopeRule,
    /// How the pan's lower end is sealed on what it laps over.
    #[cfg_attr(feature = "serde", serde(default))]
    pub end: ValleyEndSeal,
}

/// The sealant under the lower end of a valley's pan, where it laps over an eave's trim or over the roof below.
///
/// ```
/// use seamwright::junction::ValleyEndSeal;
/// use seamwright::practice::junction as practice;
/// assert_eq!(ValleyEndSeal::default().beads, practice::VALLEY_END_BEADS);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ValleyEndSeal {
    /// How many beads; none for an end that lies dry, which then breaks the sealed line.
    pub beads: u32,
    /// Each of them.
    pub bead: BeadSize,
}

impl Default for ValleyEndSeal {
    /// Common practice, no published source: [`VALLEY_END_BEADS`](crate::practice::junction::VALLEY_END_BEADS) of
    /// [`VALLEY_END_BEAD`](crate::practice::junction::VALLEY_END_BEAD).
    fn default() -> ValleyEndSeal {
        ValleyEndSeal { beads: practice::VALLEY_END_BEADS, bead: BeadSize { width: practice::VALLEY_END_BEAD, depth: practice::VALLEY_END_BEAD } }
    }
}

/// An open valley.
///
/// The section lies square to the valley; each plane rises from the line at its backing angle. The pan lies `bed` above both decks, so its centreline lies `bed / cos(bend/2)`
/// above the line. Widths are measured from that centreline. The height of a screw above the flow line is measured in the section, square to the flow line's
/// own slope: it is a little less than the plumb height.
///
/// ```
/// use seamwright::junction::{FastenerRow, Levels, OffsetCleat, TrimSheet, Valley, ValleyDetail, ValleyEndSeal, ValleyHook, ValleySide, LeastBySlope, LeastRule};
/// use seamwright::pitch::{Corner, Pitch, SlopeRule};
/// use seamwright::practice::{junction as practice, movement, panel};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
/// let cleat = OffsetCleat {
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     width: practice::CLEAT_WIDTH,
///     tongue: Length::parse("1 1/4\"")?,
///     rise: Length::parse("1/4\"")?,
///     tape_width: Length::parse("1 1/2\"")?,
///     tape: Length::parse("1/16\"")?,
///     screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
///     screws: FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice },
///     gap: Length::parse("1/4\"")?,
///     fold: panel::END_FOLD,
///     least_engagement: movement::ENGAGEMENT,
/// };
/// let side = ValleySide {
///     leg: Length::inches(12),
///     least_leg: LeastBySlope::VALLEY_LEG,
///     least_beyond: LeastRule::BEYOND_HOOK,
///     hook: ValleyHook::OffsetCleat { cleat, least_screw_height: practice::VALLEY_SCREW_HEIGHT_LEAST },
///     field_trim: panel::SKEW_FIELD_TRIM,
/// };
/// let detail = ValleyDetail {
///     sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) },
///     bed: Length::ZERO,
///     open_width: practice::VALLEY_OPEN_WIDTH,
///     least_open_width: LeastRule::VALLEY_OPEN,
///     widens: None,
///     rib: None,
///     edge_hem: practice::EDGE_HEM,
///     edge_cleats: None,
///     first: side.clone(),
///     second: side,
///     minimum: SlopeRule::IBC_STANDING_SEAM,
///     end: ValleyEndSeal::default(),
/// };
/// let p = Pitch::parse("6:12")?;
/// let corner = Corner { first: p, second: p, plan: Angle::SQUARE };
/// let solved = Valley { corner, first: Levels::default(), second: Levels::default(), length: None, detail }.compute()?;
/// assert_eq!(solved.ends[0].end.allowance()?, Length::inches(-2));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Valley {
    /// The two planes.
    pub corner: Corner,
    /// The layers of the first plane.
    pub first: Levels,
    /// The layers of the second plane.
    pub second: Levels,
    /// Length of the valley: asked for where its open width grows.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub length: Option<Length>,
    /// What is chosen.
    pub detail: ValleyDetail,
}

impl ValleySide {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.leg.positive("leg"));
        keep_under(&mut faults, "least_leg", self.least_leg.check());
        for (path, length) in [("least_beyond.least", self.least_beyond.least), ("field_trim", self.field_trim)] {
            faults.keep(length.not_negative(path));
        }
        self.hook.check(&mut faults);
        faults.check()
    }

    /// One side.
    fn solve<R: Recorder>(&self, r: &mut R, place: &SidePlace<'_>) -> Result<Solved, Error> {
        self.check()?;
        let (side, seen, centre) = (place.side, place.seen, place.centre);
        // From the centreline.
        let front = (place.half_open + self.hook.gap()).length()?;
        let back = (front + self.hook.reach()).length()?;
        r.step(|| Step::new("front of what the panels hook, from the centreline").formula("open width / 2 + gap").with("gap", self.hook.gap()).gives(front));
        let mut faults = Faults::default();
        let least = self.least_leg.at(place.flatter);
        r.step(|| {
            let step = Step::new("pan from its centreline").formula("least, by the flatter plane's pitch").with("pitch", place.flatter.angle());
            step.with("least", least.least).gives(self.leg).source(least.source.clone())
        });
        let more = (least.least - self.leg).length()?;
        least.check(&mut faults, "leg", self.leg, self.leg, format!("a pan wider by {more}, or another rule as least_leg"))?;
        let beyond = (self.leg - back).length()?;
        let more = (self.least_beyond.least - beyond).length()?;
        let cure = format!("a pan wider by {more}, a smaller open width, or another rule as least_beyond");
        self.least_beyond.check(&mut faults, "leg", beyond, self.leg, cure)?;
        refuse_short(
            &mut faults,
            "leg",
            "the hem of the pan's edge reaches what the panels hook",
            back + place.hem - self.leg,
            self.leg,
            "a wider pan, or a narrower hem",
        )?;
        // The pan is set to its edge; everything else is struck on it from its centreline.
        let centreline = "pan centreline";
        let hook = HookPlace {
            cleat: CleatPlace {
                side,
                on: place.on,
                up: if side == Side::First { -1 } else { 1 },
                front: (centre + front).length()?,
                front_below_top: (self.leg - front).length()?,
                struck: StruckFrom::Line(centreline, centre),
                panels: place.levels,
            },
            from_centre: front,
            backing: seen.backing,
        };
        let screws = self.hook.screw_height(r, &hook)?;
        if let Some((height, least)) = screws {
            let (path, cure) = ("hook.offset-cleat.least_screw_height", "a greater open width, or a receiver fold");
            refuse_short(&mut faults, path, "the cleat's screws stand too low above the flow line", least - height, least, cure)?;
        }
        let hooked = self.hook.lay(r, &mut faults, &hook)?;
        faults.check()?;
        let Some(hooked) = hooked else { return Ok(Solved::default()) };
        let lines = vec![LayoutLine::from_junction("pan edge", side, centre + self.leg)?, LayoutLine::from_junction(centreline, side, centre.into())?];
        let through = |(height, _)| Caution::new(cautions::SCREWS_THROUGH_VALLEY, "hook", Source::CommonPractice).arg("height", height);
        let mut solved = Solved { lines, cautions: screws.map(through).into_iter().chain(hooked.cautions).collect(), ..Solved::default() };
        if let Some(cleat) = hooked.cleat {
            cleat.give(&mut solved);
        } else {
            solved.lines.extend(self.hook.nose(side, (centreline, centre), hook.cleat.front)?);
        }
        solved.ends = vec![SideEnd { side, end: hooked.end.end.with_field_trim(self.field_trim) }];
        solved.cautions.extend(skew_caution(seen.meeting(), self.field_trim));
        Ok(solved)
    }
}

/// One side of a valley, as its own detail sees it.
#[derive(Clone, Copy)]
struct SidePlace<'a> {
    side: Side,
    seen: &'a CornerSide,
    /// The pitch of the valley's flatter plane.
    flatter: Pitch,
    /// The face of the pan.
    on: Support,
    levels: Levels,
    /// From the line up the slope to the centreline of the pan.
    centre: Length,
    half_open: Length,
    /// Width of the hem along the pan's edge.
    hem: Length,
}

/// A plane whose panels end at the line and whose water runs to it.
fn holds_water(seen: &CornerSide, path: &str) -> Result<(), Error> {
    meets_seams(seen.meeting(), path)?;
    if seen.backing.degrees() > 0.0 {
        return Ok(());
    }
    Err(Error::new(ErrorKind::Impossible, "this plane does not rise from the valley, which holds no water")
        .at(path)
        .value_of(seen.backing)
        .accepts("a backing angle of more than 0 deg")
        .cured_by("a plane whose own water runs to the line"))
}

impl Valley {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (path, length) in
            [("detail.bed", self.detail.bed), ("detail.least_open_width.least", self.detail.least_open_width.least), ("detail.edge_hem", self.detail.edge_hem)]
        {
            faults.keep(length.not_negative(path));
        }
        keep_under(&mut faults, "detail.sheet", self.detail.sheet.check());
        faults.keep(self.detail.open_width.positive("detail.open_width"));
        for (path, length) in [("detail.end.bead.width", self.detail.end.bead.width), ("detail.end.bead.depth", self.detail.end.bead.depth)] {
            faults.keep(length.positive(path));
        }
        if let Some(row) = &self.detail.edge_cleats {
            keep_under(&mut faults, "detail.edge_cleats", row.check());
            if self.detail.edge_hem == Length::ZERO {
                let error = Error::new(ErrorKind::Conflict, "cleats have no hem to hook").at("detail.edge_hem").value_of(self.detail.edge_hem);
                faults.add(error.accepts("more than zero").cured_by("hems along the pan's edges"));
            }
        }
        if let Some(rib) = self.detail.rib {
            faults.keep(rib.height.positive("detail.rib.height"));
            faults.keep(rib.half_width.positive("detail.rib.half_width"));
        }
        self.check_widening(&mut faults);
        faults.check()
    }

    /// Cautions of the rib, and whether it leaves the water its way.
    fn rib<R: Recorder>(&self, r: &mut R, faults: &mut Faults, half_open: Length) -> Result<Vec<Caution>, Error> {
        let Some(rib) = self.detail.rib else {
            let (first, second) = (self.corner.first, self.corner.second);
            let unequal = first.at_least(&second) != second.at_least(&first);
            let said = || Caution::new(cautions::UNEQUAL_WITHOUT_RIB, "detail.rib", Source::CommonPractice).arg("first", first).arg("second", second);
            return Ok(unequal.then(|| said().arg("least", practice::SPLASH_RIB_LEAST)).into_iter().collect());
        };
        r.step(|| Step::new("splash rib").with("half width", rib.half_width).gives(rib.height).source(Source::user()));
        refuse_short(faults, "detail.rib.half_width", "the rib fills the open width", rib.half_width - half_open, rib.half_width, "a narrower rib")?;
        let mut out = vec![Caution::new(cautions::RIB_AND_SNOW, "detail.rib", Source::CommonPractice).arg("height", rib.height)];
        if rib.height < practice::SPLASH_RIB_LEAST {
            let low = Caution::new(cautions::LOW_SPLASH_RIB, "detail.rib.height", Source::CommonPractice);
            out.push(low.arg("height", rib.height).arg("least", practice::SPLASH_RIB_LEAST));
        }
        Ok(out)
    }
}

impl Calculation for Valley {
    type Out = Solved;

    fn title(&self) -> String {
        format!("valley between {} and {}", self.corner.first, self.corner.second)
    }

    /// Refuses a valley that is too flat, too narrow or too wide for its sheet, or whose cleats stand in the water; all such faults at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let geometry = r.part(|| self.corner.title(), |r| self.corner.run(r).map_err(|e| e.under("corner")))?;
        let (one, two) = (geometry.first, geometry.second);
        let half_open = self.detail.open_width.station(1, 2)?;
        let mut faults = Faults::default();
        faults.keep(holds_water(&one, "corner.first"));
        faults.keep(holds_water(&two, "corner.second"));
        core::mem::take(&mut faults).check()?;

        let own = Pitch::from_angle(geometry.slope).map_err(|e| e.under("corner"))?;
        let slope = self.detail.minimum.check(&own);
        r.step(|| {
            Step::new("the valley's own slope").with("least", self.detail.minimum.limit).gives(geometry.slope).source(self.detail.minimum.source.clone())
        });
        if !slope.passes() {
            let short = self.detail.minimum.limit.angle().degrees() - geometry.slope.degrees();
            let error = Error::new(ErrorKind::Impossible, format!("the valley is too flat by {short:.3} deg")).at("detail.minimum").value_of(geometry.slope);
            faults.add(
                error
                    .accepts(format!("{} or more ({})", self.detail.minimum.limit, self.detail.minimum.source))
                    .cured_by("steeper planes, or another valley lining"),
            );
        }
        let (open, rule) = (self.detail.open_width, &self.detail.least_open_width);
        let cure = format!("an open width greater by {}, or another rule as least_open_width", (rule.least - open).length()?);
        rule.check(&mut faults, "detail.open_width", open, open, cure)?;

        let s1 = Support { rise: Angle::degrees_from(-one.backing.degrees())?, height: (self.first.built_up + self.detail.bed).length()? };
        let s2 = Support { rise: two.backing, height: (self.second.built_up + self.detail.bed).length()? };
        let centre = s1.meets(&s2).map_err(|e| e.under("corner"))?;
        let (a1, a2) = (along(centre, s1.rise)?, along(centre, s2.rise)?);
        // Up the slope of side 1 is toward -x.
        let up = ((-a1).length()?, a2);
        let face = |support: Support| -> Result<Support, Error> { Ok(Support { height: (support.height + self.detail.sheet.thickness).length()?, ..support }) };
        r.step(|| {
            let step = Step::new("centreline of the pan up each slope from the line");
            let step = match s1.height == s2.height {
                true => step.formula("bed tan((C1 + C2) / 2)").with("bed", s1.height),
                false => step.formula("where the beds on both sides meet").with("bed 1", s1.height).with("bed 2", s2.height),
            };
            step.with("C1", one.backing).with("C2", two.backing).gives(up.0).source(Source::geometry())
        });
        let mut cautions: Vec<Caution> = slope.cautions().iter().filter(|_| slope.passes()).map(|c| c.clone().under("detail.minimum")).collect();
        cautions.extend(self.rib(r, &mut faults, half_open)?);
        let (p, q) = (self.corner.first, self.corner.second);
        let flatter = if p.compare(&q).is_le() { p } else { q };
        let places = [
            SidePlace { side: Side::First, seen: &one, flatter, on: face(s1)?, levels: self.first, centre: up.0, half_open, hem: self.detail.edge_hem },
            SidePlace { side: Side::Second, seen: &two, flatter, on: face(s2)?, levels: self.second, centre: up.1, half_open, hem: self.detail.edge_hem },
        ];
        let sides = self.sides(r, &mut faults, &places);
        core::mem::take(&mut faults).check()?;
        let solved = self.gathered(self.pan((s1, a1), (s2, a2), centre, half_open)?, cautions, sides)?;
        self.fits(&solved, (s1, s2))?;
        let (Some(widens), Some(foot)) = (&self.detail.widens, self.at_its_foot(r)?) else { return Ok(solved) };
        let mut solved = solved;
        let at_foot = |e: Error| e.about("the valley's lower end");
        let half_open = foot.detail.open_width.station(1, 2)?;
        let places = places.map(|p| SidePlace { half_open, ..p });
        let sides = r.part(|| "at the lower end".into(), |r| Ok(foot.sides(r, &mut faults, &places)))?;
        faults.check().map_err(at_foot)?;
        let below = foot.gathered(foot.pan((s1, a1), (s2, a2), centre, half_open)?, Vec::new(), sides)?;
        foot.fits(&below, (s1, s2)).map_err(at_foot)?;
        grow(&mut solved, widens.of_a_side()?, below);
        Ok(solved)
    }
}

impl Valley {
    /// That nothing of it runs into anything else.
    fn fits(&self, solved: &Solved, (s1, s2): (Support, Support)) -> Result<(), Error> {
        let cure = "a shorter fold, or a greater open width";
        let hooked = |side: &ValleySide, on: Support| side.hook.heights((on.height + self.detail.sheet.thickness).length()?, self.detail.sheet);
        let decks = [
            Deck::hooked(Side::First, s1.rise, &self.first, hooked(&self.detail.first, s1)?, ("detail.first.hook", cure)),
            Deck::hooked(Side::Second, s2.rise, &self.second, hooked(&self.detail.second, s2)?, ("detail.second.hook", cure)),
        ];
        fit::check(solved, &decks, Beside::Nothing).map(drop)
    }

    /// Both sides; every fault of them is kept.
    fn sides<R: Recorder>(&self, r: &mut R, faults: &mut Faults, places: &[SidePlace<'_>; 2]) -> [Option<Solved>; 2] {
        let mut out = [None, None];
        for ((slot, place), (name, path, side)) in
            out.iter_mut().zip(places).zip([("side 1", "detail.first", &self.detail.first), ("side 2", "detail.second", &self.detail.second)])
        {
            let solved = r.part(|| name.into(), |r| side.solve(r, place));
            *slot = faults.keep(solved.map_err(|e| e.under(path)));
        }
        out
    }

    /// The section of a pan with its sides.
    fn gathered(&self, pan: JunctionTrim, cautions: Vec<Caution>, sides: [Option<Solved>; 2]) -> Result<Solved, Error> {
        let mut solved = Solved { trims: vec![pan], cautions, ..Solved::default() };
        let asked = [(Side::First, "detail.first", &self.detail.first), (Side::Second, "detail.second", &self.detail.second)];
        for ((of, prefix, asked), side) in asked.into_iter().zip(sides) {
            if let Some(side) = side {
                let edge = side.lines.iter().find(|l| l.name == "pan edge").map(|l| l.from_line);
                solved.trims.extend(side.trims);
                solved.along.extend(side.along);
                solved.lines.extend(side.lines);
                solved.ends.extend(side.ends);
                solved.cautions.extend(side.cautions.into_iter().map(|c| c.under(prefix)));
                if let (Some(row), Some(at)) = (&self.detail.edge_cleats, edge) {
                    let beside = (at + practice::EDGE_CLEAT_FASTENERS).length()?;
                    solved.along.push(row.line("edge cleats, two fasteners each", of, Bites::Structure, beside));
                }
            }
            let height = asked.hook.stands_up(self.detail.sheet)?;
            if height.is_positive() {
                solved.cautions.push(Caution::new(cautions::RECEIVER_STANDS_UP, format!("{prefix}.hook"), Source::geometry()).arg("height", height));
            }
        }
        let folds = |side: &ValleySide| matches!(side.hook, ValleyHook::ReceiverFold { .. });
        if self.detail.edge_cleats.is_none() && folds(&self.detail.first) && folds(&self.detail.second) {
            solved.cautions.push(Caution::new(cautions::PAN_NOT_HELD, "detail.edge_cleats", Source::CommonPractice));
        }
        Ok(solved)
    }

    /// The pan, from the edge of side 1 to that of side 2; each side's support with the centreline's place along it.
    fn pan(&self, one: (Support, Length), two: (Support, Length), centre: SectionPoint, half_open: Length) -> Result<JunctionTrim, Error> {
        let receiver =
            |side: &ValleySide| -> Result<Option<Receiver>, Error> { side.hook.receiver(self.detail.sheet, (half_open + side.hook.gap()).length()?, side.leg) };
        let (r1, r2) = (receiver(&self.detail.first)?, receiver(&self.detail.second)?);
        // Where the walk along the pan itself starts and ends: at its edges, or at the backs of its receiver folds.
        let (out1, out2) = (r1.map_or(self.detail.first.leg, |r| r.back), r2.map_or(self.detail.second.leg, |r| r.back));
        let start = one.0.point((one.1 - out1).length()?)?;
        let end = two.0.point((two.1 + out2).length()?)?;
        let mut legs = Vec::with_capacity(4);
        match self.detail.rib {
            None => {
                legs.push(leg("leg 1", centre).long(out1));
                legs.push(leg("leg 2", end).long(out2).bent(turned(two.0.rise, -one.0.rise.degrees())?));
            }
            Some(rib) => {
                legs.push(leg("leg 1", one.0.point((one.1 - rib.half_width).length()?)?).long((out1 - rib.half_width).length()?));
                legs.push(leg("rib 1", SectionPoint { x: centre.x, z: (centre.z + rib.height).length()? }));
                legs.push(leg("rib 2", two.0.point((two.1 + rib.half_width).length()?)?));
                legs.push(leg("leg 2", end).long((out2 - rib.half_width).length()?));
            }
        }
        // A receiver's outer part carries the hem of its side; the back of a receiver is no edge.
        let edge = |r: Option<Receiver>| if r.is_some() { hem(Length::ZERO, Direction::Up) } else { hem(self.detail.edge_hem, Direction::Up) };
        let pan =
            Walk { name: "valley pan", sheet: self.detail.sheet, start, legs: &legs, start_edge: edge(r1), end_edge: edge(r2), painted: Face::Upper }.lay()?;
        add_receivers(pan, (one, r1), (two, r2), hem(self.detail.edge_hem, Direction::Up))
    }
}
