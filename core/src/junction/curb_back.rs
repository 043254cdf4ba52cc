//! The back of a curb or a chimney: a pan behind it, under the panels above, with a leg up the curb.
//!
//! The other sides of a curb need no kind of their own. Its **front** is a [`Headwall`](super::Headwall) for the panels below, whose wall is the curb; its **sides** are
//! [`Sidewall`](super::Sidewall)s, whose wall is the curb.

use super::cautions::{CRICKET_REQUIRED, RECEIVER_STANDS_UP, WATER_DAMS_BEHIND};
use super::draft::{TrimSheet, Walk, along, keep_under, leg, opposite_sign, turned};
use super::fit::{self, Beside, Deck};
use super::least::LeastRule;
use super::levels::RoofSide;
use super::offset_cleat::{CleatPlace, StruckFrom};
use super::parts::{LayoutLine, Side, Solved};
use super::support::Support;
use super::top_edge::TopEdge;
use super::valley_hook::{HookPlace, ValleyHook, add_receivers};
use super::wall::WallLeg;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Seen, Source, Step};
use crate::trim::{Edge, Face};
use crate::units::Length;

/// How wide a curb may be, across the slope, before a cricket must stand behind it.
///
/// ```
/// use seamwright::junction::CricketRule;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// assert_eq!(CricketRule::IRC.widest, Length::inches(30));
/// assert!(CricketRule::given(Length::inches(24), Source::user()).widest < CricketRule::IRC.widest);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CricketRule {
    /// The widest curb without a cricket.
    pub widest: Length,
    /// Where the rule stands.
    pub source: Source,
}

impl CricketRule {
    /// A cricket or saddle stands on the ridge side of any chimney, in later editions of any penetration, of more than 30 in (762 mm).
    pub const IRC: CricketRule =
        CricketRule { widest: Length::inches(30), source: Source::published("IRC", "2003", "R905.2.8.3; R903.2.2 from 2015", Seen::Secondary) };

    /// Every rule that the library holds.
    pub const ALL: &'static [CricketRule] = &[Self::IRC];

    /// A rule from another document, or the caller's own.
    #[must_use]
    pub const fn given(widest: Length, source: Source) -> CricketRule {
        CricketRule { widest, source }
    }
}

/// How the back of a curb is built. Distances along the slope run up it from the foot of the pan's leg, the pan's low line.
///
/// ```
/// use seamwright::junction::{
///     CricketRule, CurbBackDetail, FastenerRow, OffsetCleat, TopEdge, TrimSheet, ValleyHook, WallCover, WallLeg, LeastRule,
/// };
/// use seamwright::practice::{junction as practice, panel};
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let detail = CurbBackDetail {
///     sheet,
///     wall: WallLeg {
///         leg: Length::inches(9),
///         stands_out: Length::ZERO,
///         upstand: LeastRule::UFGS_UPSTAND,
///         fasteners: Some(FastenerRow::UFGS_WALL_LEG),
///         fasteners_below_top: Length::inches(1),
///         cover: WallCover::Cladding { lap: Length::inches(6), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(2) },
///     },
///     reach: Length::inches(18),
///     top_edge: TopEdge { hem: practice::EDGE_HEM, screws_below: Length::inches(1), screws: row.clone() },
///     under_panels: LeastRule::UFGS_UNDER_COVERING,
///     least_beyond: LeastRule::BEYOND_HOOK,
///     clear_width: Length::inches(6),
///     least_clear_width: LeastRule::CLEAR_BEHIND_CURB,
///     seam_cut_back: Length::parse("1 1/4\"")?,
///     least_to_seams: LeastRule::SEAMS_FROM_CURB,
///     hook: ValleyHook::OffsetCleat {
///         cleat: OffsetCleat {
///             sheet,
///             width: practice::CLEAT_WIDTH,
///             tongue: Length::parse("1 1/4\"")?,
///             rise: Length::parse("1/4\"")?,
///             tape_width: Length::parse("1 1/2\"")?,
///             tape: Length::parse("1/16\"")?,
///             screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
///             screws: row,
///             gap: Length::parse("1/4\"")?,
///             fold: panel::END_FOLD,
///             least_engagement: Length::parse("3/8\"")?,
///         },
///         least_screw_height: practice::VALLEY_SCREW_HEIGHT_LEAST,
///     },
///     cricket: CricketRule::IRC,
/// };
/// assert!(detail.reach > detail.clear_width);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CurbBackDetail {
    /// The sheet of the pan and of a counterflashing.
    pub sheet: TrimSheet,
    /// The leg up the curb. Where the curb carries a cap, the cap is what comes down over the leg as cladding does.
    pub wall: WallLeg,
    /// From the low line up to the pan's top edge.
    pub reach: Length,
    /// The pan's top edge.
    pub top_edge: TopEdge,
    /// How far the pan must reach under the panels, from their nose to its top edge.
    pub under_panels: LeastRule,
    /// How far the pan must reach beyond what the panels hook; in a job file [`LeastRule::BEYOND_HOOK`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::beyond_hook"))]
    pub least_beyond: LeastRule,
    /// From the low line up to the panels' nose, at the laying temperature.
    pub clear_width: Length,
    /// How wide the pan must lie open, so that it can be cleaned; in a job file [`LeastRule::CLEAR_BEHIND_CURB`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::clear_behind_curb"))]
    pub least_clear_width: LeastRule,
    /// From the panels' nose up to the ends of their seams, which are cut back.
    pub seam_cut_back: Length,
    /// How far from the low line the seams must end; in a job file [`LeastRule::SEAMS_FROM_CURB`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::seams_from_curb"))]
    pub least_to_seams: LeastRule,
    /// What the panels hook; its gap moves it up from the nose. A cleat's screws must stand so high above the low line, plumb; a receiver fold of the pan has no hole.
    pub hook: ValleyHook,
    /// When the curb needs a cricket.
    pub cricket: CricketRule,
}

/// The flat back of a curb.
///
/// The junction line is where the deck meets the curb's upper face. The roof is [`Side::First`] and falls toward the curb at +x, its pan lies on the
/// underlayment, and the panels above end over it: their folds hook an offset cleat on the pan, or a fold of the pan itself, and slide there. The pan's leg stands plumb, so its
/// bend from flat is 90 degrees and the pitch. The upstand is measured square to the pan: the leg's `cos S`, less the sheet.
///
/// ```
/// use seamwright::junction::{
///     CricketRule, CurbBack, CurbBackDetail, FastenerRow, Levels, OffsetCleat, RoofSide, Side, TopEdge, TrimSheet, ValleyHook, WallCover, WallLeg,
///     LeastRule,
/// };
/// use seamwright::pitch::Pitch;
/// use seamwright::practice::{junction as practice, panel};
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::Length;
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let curb = CurbBack {
///     roof: RoofSide { pitch: Pitch::parse("4:12")?, levels: Levels { pan: Length::mils(24), seam_height: Length::parse("1 3/4\"")?, ..Levels::default() } },
///     width: Length::inches(36),
///     detail: CurbBackDetail {
///         sheet,
///         wall: WallLeg {
///             leg: Length::inches(9),
///             stands_out: Length::ZERO,
///             upstand: LeastRule::UFGS_UPSTAND,
///             fasteners: Some(FastenerRow::UFGS_WALL_LEG),
///             fasteners_below_top: Length::inches(1),
///             cover: WallCover::Cladding { lap: Length::inches(6), rule: LeastRule::UFGS_BEHIND_CLADDING, clearance: Length::inches(2) },
///         },
///         reach: Length::inches(18),
///         top_edge: TopEdge { hem: practice::EDGE_HEM, screws_below: Length::inches(1), screws: row.clone() },
///         under_panels: LeastRule::UFGS_UNDER_COVERING,
///         least_beyond: LeastRule::BEYOND_HOOK,
///         clear_width: Length::inches(6),
///         least_clear_width: LeastRule::CLEAR_BEHIND_CURB,
///         seam_cut_back: Length::parse("1 1/4\"")?,
///         least_to_seams: LeastRule::SEAMS_FROM_CURB,
///         hook: ValleyHook::OffsetCleat {
///             cleat: OffsetCleat {
///                 sheet,
///                 width: practice::CLEAT_WIDTH,
///                 tongue: Length::parse("1 1/4\"")?,
///                 rise: Length::parse("1/4\"")?,
///                 tape_width: Length::parse("1 1/2\"")?,
///                 tape: Length::parse("1/16\"")?,
///                 screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
///                 screws: row,
///                 gap: Length::parse("1/4\"")?,
///                 fold: panel::END_FOLD,
///                 least_engagement: Length::parse("3/8\"")?,
///             },
///             least_screw_height: practice::VALLEY_SCREW_HEIGHT_LEAST,
///         },
///         cricket: CricketRule::IRC,
///     },
/// };
/// let solved = curb.compute()?;
/// // 6 in to the nose and the gap of the cleat; the fold comes on top of it.
/// assert_eq!(solved.end(Side::First).map(|e| e.allowance()).transpose()?, Some(Length::inches(-5)));
/// assert!(solved.cautions.iter().any(|c| c.code().name == "cricket-required"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CurbBack {
    /// The roof above the curb.
    pub roof: RoofSide,
    /// Width of the curb, across the slope.
    pub width: Length,
    /// How its back is built.
    pub detail: CurbBackDetail,
}

impl CurbBack {
    fn check(&self) -> Result<(), Error> {
        let d = &self.detail;
        let mut faults = Faults::default();
        let slope = self.roof.pitch.angle();
        if slope.degrees() >= 90.0 {
            let error = Error::new(ErrorKind::OutOfRange, "the roof stands as plumb as the curb").at("roof.pitch").value_of(self.roof.pitch);
            faults.add(error.accepts("less than 90 deg"));
        }
        for (layer, height) in self.roof.levels.layers() {
            faults.keep(height.not_negative(&format!("roof.levels.{layer}")));
        }
        faults.keep(self.width.positive("width"));
        keep_under(&mut faults, "detail.sheet", d.sheet.check());
        keep_under(&mut faults, "detail.wall", d.wall.check());
        keep_under(&mut faults, "detail.top_edge", d.top_edge.check());
        for (path, length) in [("detail.reach", d.reach), ("detail.clear_width", d.clear_width)] {
            faults.keep(length.positive(path));
        }
        for (path, length) in [
            ("detail.under_panels.least", d.under_panels.least),
            ("detail.least_beyond.least", d.least_beyond.least),
            ("detail.least_clear_width.least", d.least_clear_width.least),
            ("detail.seam_cut_back", d.seam_cut_back),
            ("detail.least_to_seams.least", d.least_to_seams.least),
            ("detail.cricket.widest", d.cricket.widest),
        ] {
            faults.keep(length.not_negative(path));
        }
        let mut of_hook = Faults::default();
        d.hook.check(&mut of_hook);
        keep_under(&mut faults, "detail", of_hook.check());
        faults.check()
    }

    /// The widths and heights behind the curb; all that is too little at once.
    fn check_widths<R: Recorder>(&self, r: &mut R, faults: &mut Faults, place: &HookPlace) -> Result<Option<Length>, Error> {
        let d = &self.detail;
        let more = (d.least_clear_width.least - d.clear_width).length()?;
        d.least_clear_width.check(faults, "detail.clear_width", d.clear_width, d.clear_width, format!("a clear width greater by {more}"))?;
        let seams = (d.clear_width + d.seam_cut_back).length()?;
        let more = (d.least_to_seams.least - seams).length()?;
        let cure = format!("a clear width greater by {more}, or seams cut back so much farther");
        d.least_to_seams.check(faults, "detail.seam_cut_back", seams, d.seam_cut_back, cure)?;
        let under = (d.reach - d.clear_width).length()?;
        let more = (d.under_panels.least - under).length()?;
        d.under_panels.check(faults, "detail.reach", under, d.reach, format!("a pan that reaches farther up the slope by {more}"))?;
        let back = d.clear_width + d.hook.gap() + d.hook.reach();
        let beyond = (d.reach - back).length()?;
        let more = (d.least_beyond.least - beyond).length()?;
        let cure = format!("a pan that reaches farther up the slope by {more}, or another rule as least_beyond");
        d.least_beyond.check(faults, "detail.reach", beyond, d.reach, cure)?;
        keep_under(faults, "detail.top_edge", d.top_edge.check_screws(d.reach - back));

        let Some((height, least)) = d.hook.screw_height(r, place)? else { return Ok(None) };
        if height < least {
            let short = (least - height).length()?;
            let more = Length::from_mm((least - height).length()?.mm() / self.roof.pitch.sine());
            let cure = match more {
                Ok(more) => format!("a clear width greater by {more}, a receiver fold, or a cricket"),
                Err(_) => "a receiver fold, or a cricket".into(),
            };
            let error = Error::new(ErrorKind::Impossible, format!("the cleat's screws stand too low above the pan's low line by {short}"));
            faults.add(error.at("detail.clear_width").value_of(d.clear_width).accepts(format!("{short} more height")).cured_by(cure));
        }
        Ok(Some(height))
    }

    fn cautions(&self, hooked: Vec<Caution>, screws: Option<Length>) -> Result<Vec<Caution>, Error> {
        let d = &self.detail;
        let dams = Caution::new(WATER_DAMS_BEHIND, "width", Source::CommonPractice).arg("width", self.width);
        let mut out = vec![match screws {
            Some(height) => dams.arg("height", height).arg("what", "the cleat's screws"),
            None => {
                let height = Length::from_mm(d.reach.mm() * self.roof.pitch.sine())?;
                dams.arg("height", height).arg("what", "the pan's top edge")
            }
        }];
        if self.width > d.cricket.widest {
            out.push(Caution::new(CRICKET_REQUIRED, "width", d.cricket.source.clone()).arg("width", self.width).arg("widest", d.cricket.widest));
        }
        out.extend(hooked.into_iter().map(|c| c.under("detail")));
        let height = d.hook.stands_up(d.sheet)?;
        if height.is_positive() {
            out.push(Caution::new(RECEIVER_STANDS_UP, "detail.hook", Source::geometry()).arg("height", height));
        }
        Ok(out)
    }
}

impl Calculation for CurbBack {
    type Out = Solved;

    fn title(&self) -> String {
        format!("back of a curb {} wide in a roof of {}", self.width, self.roof.pitch)
    }

    /// Refuses a back whose leg stands too low, whose pan is too short or too narrow, or whose screws stand too low; all such faults at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let d = &self.detail;
        let slope = self.roof.pitch.angle();
        let fall = opposite_sign(slope)?;
        let bed = Support { rise: fall, height: self.roof.levels.bed()? };
        let face = Support { rise: fall, height: (bed.height + d.sheet.thickness).length()? };
        let corner = bed.meets(&d.wall.support()).map_err(|e| e.under("roof.pitch"))?;
        // Down the slope is toward +x here.
        let low_line = (-along(corner, fall)?).length()?;
        r.step(|| {
            let step = Step::new("low line of the pan up the slope from the line").formula("u tan S + w / cos S");
            step.with("u", bed.height).with("S", slope).with("w", d.wall.stands_out).gives(low_line).source(Source::geometry())
        });
        r.step(|| Step::new("bend of the pan from flat").formula("90 + S").with("S", slope).gives(format_args!("{} deg", 90.0 + slope.degrees())));
        let front = (low_line + d.clear_width + d.hook.gap()).length()?;
        r.step(|| {
            let step = Step::new("front of what the panels hook, from the line").formula("low line + clear width + gap");
            step.with("low line", low_line).with("clear width", d.clear_width).with("gap", d.hook.gap()).gives(front)
        });

        let mut faults = Faults::default();
        let wall = r.part(|| "leg up the curb".into(), |r| d.wall.solve(r, face, corner, d.sheet));
        let wall = faults.keep(wall.map_err(|e| e.under("detail.wall")));
        let from_low_line = (d.clear_width + d.hook.gap()).length()?;
        let front_below_top = (d.reach - from_low_line).length()?;
        let place = HookPlace {
            cleat: CleatPlace { side: Side::First, on: face, up: -1, front, front_below_top, struck: StruckFrom::TopEdge, panels: self.roof.levels },
            from_centre: from_low_line,
            backing: slope,
        };
        let mut of_hook = Faults::default();
        let hooked = r.part(|| "what the panels hook".into(), |r| d.hook.lay(r, &mut of_hook, &place))?;
        keep_under(&mut faults, "detail", of_hook.check());
        let screw_height = self.check_widths(r, &mut faults, &place)?;
        faults.check()?;
        let (Some(wall), Some(hooked)) = (wall, hooked) else {
            return Ok(Solved::default());
        };

        let top = (low_line + d.reach).length()?;
        let receiver = d.hook.receiver(d.sheet, from_low_line, d.reach)?;
        let on_bed = receiver.map_or(d.reach, |fold| fold.back);
        let pan = Walk {
            name: "back pan",
            sheet: d.sheet,
            start: bed.point((-low_line - on_bed).length()?)?,
            legs: &[leg("pan", corner).long(on_bed), leg("leg", wall.top).long(d.wall.leg).bent(turned(slope, 90.0)?)],
            // The top edge of a pan with a fold is that of its outer part.
            start_edge: if receiver.is_some() { Edge::Raw } else { d.top_edge.edge() },
            end_edge: Edge::Raw,
            painted: Face::Upper,
        }
        .lay()?;
        let pan = match receiver {
            None => pan,
            Some(_) => add_receivers(pan, ((bed, (-low_line).length()?), receiver), ((bed, Length::ZERO), None), d.top_edge.edge())?,
        };
        let nose = (low_line + d.clear_width).length()?;
        let mut solved = Solved { trims: vec![pan], cautions: self.cautions(hooked.cautions, screw_height)?, ..Solved::default() };
        d.top_edge.give(Side::First, top, &mut solved)?;
        wall.give(&mut solved);
        match hooked.cleat {
            Some(cleat) => cleat.give(&mut solved),
            None => {
                solved.lines.push(LayoutLine::below_top_edge("panel nose", Side::First, top, (d.reach - d.clear_width).length()?)?);
                solved.ends.push(hooked.end);
            }
        }
        solved.lines.push(LayoutLine::from_line("seam ends", Side::First, "panel nose", nose, d.seam_cut_back.into())?);
        let cure = ("detail.hook", "a shorter fold, or a greater clear width");
        let deck = Deck::hooked(Side::First, fall, &self.roof.levels, d.hook.heights(face.height, d.sheet)?, cure);
        fit::check(&solved, &[deck], Beside::Wall)?;
        Ok(solved)
    }
}
