//! The pitch transition: two planes of one fall that meet at a line parallel to the eaves.
//!
//! The trim's lower flange lies in the plane of the lower seam tops, `h` above the lower deck; its upper flange lies on the upper deck, on packing of
//! thickness `p`. With `D` the upper slope angle less the lower one, the two meet on the upper flange at
//! `s = (h - p cos D) / sin D` from the line: up the slope where the roof below is the shallower (D > 0), down it where the roof below is the steeper.

use super::draft::{TrimSheet, Walk, keep_under, leg, refuse_short, turned};
use super::fit::{self, Beside, Deck};
use super::least::LeastRule;
use super::levels::{Levels, RoofSide};
use super::offset_cleat::{CleatPlace, OffsetCleat, StruckFrom};
use super::parts::{Adjoining, JunctionTrim, Side, Solved};
use super::support::{SectionPoint, Support};
use super::top_edge::TopEdge;
use super::top_end::{Place, TopEnd};
use super::transition_lines::add_lower;
use super::transition_section::{Bending, NOISE, TransitionSection};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::record::{Calculation, Off, Recorder, Step};
use crate::trim::Face;
use crate::units::{Angle, Length, Sum};

/// The cross-section of a bead of gun sealant.
///
/// ```
/// use seamwright::junction::BeadSize;
/// use seamwright::units::Length;
/// let bead = BeadSize { width: Length::parse("3/8\"")?, depth: Length::parse("1/4\"")? };
/// assert!(bead.depth < bead.width);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BeadSize {
    /// Width.
    pub width: Length,
    /// Depth.
    pub depth: Length,
}

/// How a pitch transition is built: what is chosen, whatever roofs it joins.
///
/// Distances on the lower flange run up the slope from the trim's lower edge, those on the upper flange down it from the trim's top edge. In a job file
/// `front_below_top` is [`CLEAT_FRONT_BELOW_TOP`](crate::practice::junction::CLEAT_FRONT_BELOW_TOP) unless given.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{Bending, Bites, DripEdge, FastenerRow, OffsetCleat, PackingReach, PitchTransitionDetail, TopClosure, TopEdge, TopEnd, TrimSheet, LeastRule};
/// use seamwright::practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let detail = PitchTransitionDetail {
///     sheet,
///     end: TopEnd {
///         flange: Length::inches(12),
///         cover: LeastRule::UFGS_UNSOLDERED,
///         drip: DripEdge { leg: inch("3/4\"")?, turn: practice::junction::DRIP_TURN, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///         closure: TopClosure {
///             set_back: practice::closure::SET_BACK,
///             face: Face::LeadingEdge,
///             lower_flange: inch("2 1/2\"")?,
///             top_flange: inch("1 1/8\"")?,
///             tape_width: inch("7/8\"")?,
///             tape_beneath: inch("1/16\"")?,
///             panel_margin: LeastRule::PANEL_MARGIN,
///         },
///         bites: Bites::Structure,
///         screws: row.clone(),
///         rivets: None,
///         hollow_seams: false,
///         cap_tape_width: inch("7/8\"")?,
///         hold_back: Length::inches(1),
///         clearance: inch("1/4\"")?,
///         turn_up: practice::panel::TURN_UP,
///         field_trim: Length::ZERO,
///     },
///     seam_bead: None,
///     packing: Length::ZERO,
///     packing_reach: PackingReach::UnderPanels,
///     bending: Bending::Direct,
///     unsupported_limit: Length::inches(8),
///     upper_flange: Length::inches(8),
///     top_edge: TopEdge { hem: practice::junction::EDGE_HEM, screws_below: Length::inches(1), screws: row.clone() },
///     cleat: OffsetCleat {
///         sheet,
///         width: practice::junction::CLEAT_WIDTH,
///         tongue: inch("1 1/4\"")?,
///         rise: inch("1/4\"")?,
///         tape_width: inch("1 1/2\"")?,
///         tape: inch("1/16\"")?,
///         screws_below_tape_edge: practice::junction::CLEAT_SCREWS_BELOW_TAPE_EDGE,
///         screws: row,
///         gap: inch("1/4\"")?,
///         fold: practice::panel::END_FOLD,
///         least_engagement: inch("3/8\"")?,
///     },
///     front_below_top: practice::junction::CLEAT_FRONT_BELOW_TOP,
///     head_lap: LeastRule::HEAD_LAP,
/// };
/// assert!(detail.front_below_top > detail.cleat.width);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PitchTransitionDetail {
    /// The trim's sheet.
    pub sheet: TrimSheet,
    /// The upper end of the lower panels, with the lower flange over it; its flange runs from the bend, or the riser's foot, down to the trim's lower edge.
    pub end: TopEnd,
    /// The bead behind the lower seams, at their upper ends; none where they are sealed otherwise.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub seam_bead: Option<BeadSize>,
    /// From the upper deck to the underside of the upper flange.
    pub packing: Length,
    /// How far the packing goes on up the slope; in a job file under all of the panels unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "PackingReach::is_under_panels"))]
    pub packing_reach: PackingReach,
    /// One bend, or a riser.
    pub bending: Bending,
    /// The width of flange that may hang free.
    pub unsupported_limit: Length,
    /// From the bend, or the riser's top, up to the trim's top edge.
    pub upper_flange: Length,
    /// The trim's top edge.
    pub top_edge: TopEdge,
    /// The cleat that the upper panels hook.
    pub cleat: OffsetCleat,
    /// From the top edge down to the cleat's front.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::cleat_front_below_top"))]
    pub front_below_top: Length,
    /// From the bend, or the riser's top, up to the cleat's front, at the least; in a job file [`LeastRule::HEAD_LAP`] unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::head_lap"))]
    pub head_lap: LeastRule,
}

/// How far the packing under a transition's upper flange goes on up the slope.
///
/// ```
/// use seamwright::junction::PackingReach;
/// assert_eq!(PackingReach::default(), PackingReach::UnderPanels);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PackingReach {
    /// Under all of the upper plane's panels: its deck is built up, and whatever lies on that plane stands as much higher.
    #[default]
    UnderPanels,
    /// To the flange's top edge, and tapered off above it: the upper panels come down from it onto the deck.
    UnderFlange,
}

impl PackingReach {
    #[cfg(feature = "serde")]
    #[allow(clippy::trivially_copy_pass_by_ref, reason = "as serde asks")]
    fn is_under_panels(&self) -> bool {
        *self == PackingReach::UnderPanels
    }
}

/// A pitch transition as asked for: the lower panels are those of [`Side::First`], the upper ones those of [`Side::Second`].
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{
///     Bending, Bites, DripEdge, FastenerRow, Levels, OffsetCleat, PackingReach, PitchTransition, PitchTransitionDetail, RoofSide, Side, TopClosure, TopEdge, TopEnd,
///     TrimSheet, LeastRule,
/// };
/// use seamwright::pitch::Pitch;
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let levels = Levels { pan: Length::mils(24), seam_height: inch("1 3/4\"")?, ..Levels::default() };
/// let sheet = TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) };
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let transition = PitchTransition {
///     lower: RoofSide { pitch: Pitch::parse("3:12")?, levels },
///     upper: RoofSide { pitch: Pitch::parse("8:12")?, levels },
///     detail: PitchTransitionDetail {
///         sheet,
///         end: TopEnd {
///             flange: Length::inches(12),
///             cover: LeastRule::UFGS_UNSOLDERED,
///             drip: DripEdge { leg: inch("3/4\"")?, turn: practice::junction::DRIP_TURN, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///             closure: TopClosure {
///                 set_back: practice::closure::SET_BACK,
///                 face: Face::LeadingEdge,
///                 lower_flange: inch("2 1/2\"")?,
///                 top_flange: inch("1 1/8\"")?,
///                 tape_width: inch("7/8\"")?,
///                 tape_beneath: inch("1/16\"")?,
///                 panel_margin: LeastRule::PANEL_MARGIN,
///             },
///             bites: Bites::Structure,
///             screws: row.clone(),
///             rivets: None,
///             hollow_seams: false,
///             cap_tape_width: inch("7/8\"")?,
///             hold_back: Length::inches(1),
///             clearance: inch("1/4\"")?,
///             turn_up: practice::panel::TURN_UP,
///             field_trim: Length::ZERO,
///         },
///         seam_bead: None,
///         packing: Length::ZERO,
///         packing_reach: PackingReach::UnderPanels,
///         bending: Bending::Direct,
///         unsupported_limit: Length::inches(8),
///         upper_flange: Length::inches(8),
///         top_edge: TopEdge { hem: practice::junction::EDGE_HEM, screws_below: Length::inches(1), screws: row.clone() },
///         cleat: OffsetCleat {
///             sheet,
///             width: practice::junction::CLEAT_WIDTH,
///             tongue: inch("1 1/4\"")?,
///             rise: inch("1/4\"")?,
///             tape_width: inch("1 1/2\"")?,
///             tape: inch("1/16\"")?,
///             screws_below_tape_edge: practice::junction::CLEAT_SCREWS_BELOW_TAPE_EDGE,
///             screws: row,
///             gap: inch("1/4\"")?,
///             fold: practice::panel::END_FOLD,
///             least_engagement: inch("3/8\"")?,
///         },
///         front_below_top: practice::junction::CLEAT_FRONT_BELOW_TOP,
///         head_lap: LeastRule::HEAD_LAP,
///     },
/// };
/// let solved = transition.compute()?;
/// let from_datum = |name: &str| solved.lines.iter().find(|l| l.name == name).map(|l| l.from_datum);
/// assert_eq!(from_datum("closure screws"), Some(inch("2 7/8\"")?));
/// assert_eq!(from_datum("cleat back"), Some(inch("2 1/2\"")?));
/// assert_eq!(solved.end(Side::Second).map(|e| e.fold), Some(Length::inches(1)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct PitchTransition {
    /// The roof below the line.
    pub lower: RoofSide,
    /// The roof above the line.
    pub upper: RoofSide,
    /// How the transition is built.
    pub detail: PitchTransitionDetail,
}

impl PitchTransition {
    /// The section alone: where the flanges meet, what hangs free, and how far water drops over a riser.
    ///
    /// # Errors
    /// [`ErrorKind::Impossible`](crate::error::ErrorKind::Impossible) at `detail.packing` or `detail.bending` where the planes never meet, at
    /// `detail.bending.riser.distance` for a riser that dams water and at `detail.end.hold_back` where the lower seams would pierce the upper
    /// flange, each saying by how much; [`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange) for a figure without a meaning.
    pub fn section(&self) -> Result<TransitionSection, Error> {
        self.check()?;
        self.run_section(&mut Off)
    }

    fn check(&self) -> Result<(), Error> {
        let d = &self.detail;
        let mut faults = Faults::default();
        for (side, levels) in [("lower", &self.lower.levels), ("upper", &self.upper.levels)] {
            for (layer, height) in levels.layers() {
                faults.keep(height.not_negative(&format!("{side}.levels.{layer}")));
            }
        }
        keep_under(&mut faults, "detail.sheet", d.sheet.check());
        faults.keep(d.upper_flange.positive("detail.upper_flange"));
        keep_under(&mut faults, "detail.top_edge", d.top_edge.check());
        if let Some(bead) = d.seam_bead {
            faults.keep(bead.width.positive("detail.seam_bead.width"));
            faults.keep(bead.depth.positive("detail.seam_bead.depth"));
        }
        for (path, length) in [
            ("detail.packing", d.packing),
            ("detail.unsupported_limit", d.unsupported_limit),
            ("detail.front_below_top", d.front_below_top),
            ("detail.head_lap.least", d.head_lap.least),
            ("detail.end.hold_back", d.end.hold_back),
            ("detail.end.clearance", d.end.clearance),
        ] {
            faults.keep(length.not_negative(path));
        }
        if let Bending::Riser { distance } = d.bending {
            faults.keep(distance.not_negative("detail.bending.riser.distance"));
        }
        let built_up = self.upper.levels.built_up;
        if d.packing_reach == PackingReach::UnderPanels && built_up != Length::ZERO && built_up != d.packing {
            let what = format!("the packing goes on under all of the upper panels, whose deck is built up by {built_up}");
            faults.add(Error::new(ErrorKind::Conflict, what).at("detail.packing").value_of(d.packing).accepts(built_up.to_string()));
        }
        faults.check()
    }

    /// Each line of the upper flange on the metal that it needs, and over the deck that backs its fasteners.
    fn check_upper(&self, faults: &mut Faults, section: &TransitionSection, front: Sum) -> Result<(), Error> {
        let d = &self.detail;
        let cure = "a longer upper flange, or a front nearer to the top edge";
        let lap = (front - section.bend_on_upper).length()?;
        let more = (d.head_lap.least - lap).length()?;
        d.head_lap.check(faults, "detail.front_below_top", lap, d.front_below_top, format!("{cure}, by {more}; or another rule as head_lap"))?;
        let nose = d.cleat.gap - d.head_lap.least;
        refuse_short(faults, "detail.cleat.gap", "the nose of the fold passes the head-lap", nose, d.cleat.gap, "a greater head-lap, or a smaller gap")?;
        keep_under(faults, "detail.top_edge", d.top_edge.check_screws(d.front_below_top - d.cleat.width));
        // Below the line nothing but air carries the flange. Over a steeper roof the whole cleat lies above it; elsewhere at least its tape and its
        // screws do, and with them every screw above them.
        let lowest = if section.difference.degrees() < 0.0 { front } else { front + d.cleat.width - d.cleat.tape_width };
        refuse_short(faults, "detail.front_below_top", "the cleat misses the upper deck", -lowest, d.front_below_top, cure)
    }

    /// The trim, from its lower edge to its top one.
    fn trim(&self, section: &TransitionSection, corners: (SectionPoint, Option<SectionPoint>), top: Length) -> Result<JunctionTrim, Error> {
        let d = &self.detail;
        let (start, flange_edge) = corners;
        let flange_start = flange_edge.unwrap_or(start);
        let end = Support { rise: self.upper.pitch.angle(), height: d.packing }.point(top)?;
        let mut legs = Vec::with_capacity(4);
        legs.extend(flange_edge.map(|p| d.end.drip.leg_to("drip", p)));
        let upper = leg("upper flange", end).long(d.upper_flange);
        if section.has_riser() {
            let back = turned(section.difference, -90.0)?;
            legs.extend([d.end.flange_to("lower flange", section.foot), leg("riser", section.top).bent(Angle::SQUARE), upper.bent(back)]);
        } else if stands_out(section.foot, flange_start, end)? {
            legs.extend([d.end.flange_to("lower flange", section.foot), upper.bent(section.difference)]);
        } else {
            legs.push(leg("flange", end).long((d.end.flange + d.upper_flange).length()?).bent(d.end.drip.turn));
        }
        let edges = (d.end.drip.edge(), d.top_edge.edge());
        Walk { name: "transition trim", sheet: d.sheet, start, legs: &legs, start_edge: edges.0, end_edge: edges.1, painted: Face::Upper }.lay()
    }
}

impl PitchTransition {
    /// The layers of the upper plane, whose deck the packing builds up where it goes on under all of the panels.
    pub(super) fn upper_levels(&self) -> Levels {
        match self.detail.packing_reach {
            PackingReach::UnderPanels => Levels { built_up: self.detail.packing, ..self.upper.levels },
            PackingReach::UnderFlange => self.upper.levels,
        }
    }

    /// Where the packing begins: no lower than the upper deck, and cut back to the bend, below which it would stand through the lower flange.
    fn packing_start(section: &TransitionSection) -> Length {
        section.bend_on_upper.max(Length::ZERO)
    }

    /// The packing over the upper deck.
    fn packing(&self, section: &TransitionSection, top: Length) -> Option<Adjoining> {
        let height = self.detail.packing;
        height.is_positive().then(|| match self.detail.packing_reach {
            PackingReach::UnderPanels => Adjoining::BuiltUp { height, from: Self::packing_start(section) },
            PackingReach::UnderFlange => Adjoining::Packing { height, reach: (Self::packing_start(section), top) },
        })
    }

    /// Where the slopes differ so little that the bend lies beyond the lower flange, packing cures what a longer flange or another hold-back hardly could.
    fn far_bend(&self, section: &TransitionSection, e: Error) -> Error {
        let difference = self.upper.pitch.angle().degrees() - self.lower.pitch.angle().degrees();
        match Length::from_mm(section.h.mm() / num::cos_deg(difference)) {
            Ok(packing) => e.cured_by(format!("packing of {packing}, which puts the bend on the line, or a flange that reaches from the panels to the bend")),
            Err(_) => e,
        }
    }
}

/// Whether a point stands out of the line between two others by more than noise, so that there is a bend at it.
fn stands_out(point: SectionPoint, from: SectionPoint, to: SectionPoint) -> Result<bool, Error> {
    let way = |a: SectionPoint, b: SectionPoint| -> Result<(f64, f64), Error> { Ok(((b.x - a.x).length()?.mm(), (b.z - a.z).length()?.mm())) };
    let ((x, z), (u, v)) = (way(from, to)?, way(from, point)?);
    Ok((x * v - z * u).abs() >= NOISE.mm() * num::hypot(x, z))
}

impl Calculation for PitchTransition {
    type Out = Solved;

    fn title(&self) -> String {
        format!("pitch transition, {} below and {} above", self.lower.pitch, self.upper.pitch)
    }

    /// Refuses a transition that cannot be built, saying by how much and what would cure it, and a line that misses the metal that it needs or what must
    /// back its fasteners; all such faults at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Solved, Error> {
        self.check()?;
        let d = &self.detail;
        let section = r.part(|| "section".into(), |r| self.run_section(r))?;
        let top = (section.bend_on_upper + d.upper_flange).length()?;
        let front = (top - d.front_below_top).length()?;

        let mut faults = Faults::default();
        let end = Place {
            side: Side::First,
            levels: self.lower.levels,
            bend: section.bend_on_lower,
            // The lower panels end before the line, where the upper deck begins, and before the bend, where their seam tops would meet the upper flange.
            limit: section.bend_on_lower.min(Length::ZERO),
            meeting: Angle::SQUARE,
            seam_tops: Support { rise: self.lower.pitch.angle(), height: section.h },
            down: -1,
        };
        let ended = r.part(|| "lower panels".into(), |r| d.end.solve(r, &end));
        let ended = ended.map_err(|e| e.under("detail.end"));
        let ended = faults.keep(if section.bend_on_lower > d.end.flange { ended.map_err(|e| self.far_bend(&section, e)) } else { ended });
        let panels = self.upper_levels();
        let on = Support { rise: self.upper.pitch.angle(), height: (d.packing + d.sheet.thickness).length()? };
        let place = CleatPlace { side: Side::Second, on, up: 1, front, front_below_top: d.front_below_top, struck: StruckFrom::TopEdge, panels };
        r.step(|| {
            let step = Step::new("cleat's front from the line").formula("bend + upper flange - front below the top");
            step.with("bend", section.bend_on_upper).with("upper flange", d.upper_flange).with("front below the top", d.front_below_top).gives(front)
        });
        let cleat = r.part(|| "offset cleat".into(), |r| d.cleat.lay(r, &place));
        let cleat = faults.keep(cleat.map_err(|e| e.under("detail.cleat")));
        self.check_upper(&mut faults, &section, front.into())?;
        faults.check()?;
        let (Some(ended), Some(cleat)) = (ended, cleat) else {
            return Ok(Solved::default());
        };

        let trim = self.trim(&section, ended.corners, top)?;
        // Under a riser the upper deck is cut back to it, as packing is to the bend.
        let is_cut = section.has_riser() || panels.built_up.is_positive();
        let step = if is_cut { Self::packing_start(&section) } else { Length::ZERO };
        let adjoining = self.packing(&section, top).into_iter().collect();
        let mut solved = Solved { trims: vec![trim], cautions: section.cautions, adjoining, ..Solved::default() };
        let edge = (section.bend_on_lower - d.end.flange).length()?;
        let rivets = add_lower(r, ended, d, edge, &mut solved)?;
        d.top_edge.give(Side::Second, top, &mut solved)?;
        solved.along.extend(rivets);
        // Without packing, what lifts the panels is the cleat's own rise, and they bend over it.
        if cleat.lift.is_negative() || d.packing.is_positive() {
            solved.cautions.extend(cleat.off_level("detail.cleat.rise")?);
        }
        solved.cautions.extend(d.cleat.thick_tape("detail.cleat.tape")?);
        cleat.give(&mut solved);
        let cure = ("detail.cleat.fold", "a shorter fold, or a smaller gap");
        fit::check(
            &solved,
            &[
                Deck::turned(Side::First, self.lower.pitch.angle(), &self.lower.levels, &d.end, "detail.end"),
                Deck::hooked(Side::Second, on.rise, &panels, d.cleat.tongue_heights(on.height)?, cure).beginning(step),
            ],
            Beside::Nothing,
        )?;
        Ok(solved)
    }
}
