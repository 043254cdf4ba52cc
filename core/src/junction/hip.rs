//! The hip: a ridge in the plane square to it, where each roof plane falls at its backing angle.

use super::draft::{TrimSheet, along, keep_under, opposite_sign, turned};
use super::fit::{self, Beside, Deck};
use super::levels::Levels;
use super::parts::{Side, Solved};
use super::support::Support;
use super::top_end::{Place, TopEnd, cap, cap_not_held, meets_seams};
use crate::error::{Error, Faults};
use crate::pitch::Corner;
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::Length;

/// What is chosen at a hip.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{Bites, DripEdge, FastenerRow, HipDetail, TopClosure, TopEnd, TrimSheet, LeastRule};
/// use seamwright::practice;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let end = TopEnd {
///     flange: inch("8\"")?,
///     cover: LeastRule::UFGS_UNSOLDERED,
///     drip: DripEdge { leg: inch("3/4\"")?, turn: practice::junction::DRIP_TURN, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///     closure: TopClosure {
///         set_back: practice::closure::SET_BACK,
///         face: Face::Web,
///         lower_flange: inch("1 1/4\"")?,
///         top_flange: inch("1/2\"")?,
///         tape_width: inch("7/8\"")?,
///         tape_beneath: inch("1/16\"")?,
///         panel_margin: LeastRule::PANEL_MARGIN,
///     },
///     bites: Bites::Structure,
///     screws: row.clone(),
///     rivets: Some(row),
///     hollow_seams: false,
///     cap_tape_width: inch("1/2\"")?,
///     hold_back: inch("2\"")?,
///     clearance: inch("1/4\"")?,
///     turn_up: practice::panel::TURN_UP,
///     field_trim: practice::panel::SKEW_FIELD_TRIM,
/// };
/// let detail = HipDetail { first: end.clone(), second: end, sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) } };
/// assert_eq!(detail.first, detail.second);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HipDetail {
    /// The ends of the panels of side 1.
    pub first: TopEnd,
    /// The ends of the panels of side 2.
    pub second: TopEnd,
    /// The cap's sheet.
    pub sheet: TrimSheet,
}

/// A hip with its cap on the seam tops of both sides.
///
/// The section lies square to the hip. The first plane rises toward the line at its signed backing angle and the second falls from it at its own; a
/// negative backing is a plane that goes on rising beyond the line. The cap's bend is the sum of the two. With one level `h` on both sides
/// it stands `h / cos(bend/2)` from the line, on the line that halves the angle.
///
/// ```
/// use seamwright::closure::Face;
/// use seamwright::junction::{Bites, DripEdge, FastenerRow, Hip, HipDetail, Levels, TopClosure, TopEnd, TrimSheet, LeastRule};
/// use seamwright::pitch::{Corner, Pitch};
/// use seamwright::practice;
/// use seamwright::record::{Calculation, Source};
/// use seamwright::units::{Angle, Length};
/// let inch = |text: &str| Length::parse(text);
/// let row = FastenerRow { spacing: Length::inches(12), source: Source::CommonPractice };
/// let end = TopEnd {
///     flange: inch("8\"")?,
///     cover: LeastRule::UFGS_UNSOLDERED,
///     drip: DripEdge { leg: inch("3/4\"")?, turn: practice::junction::DRIP_TURN, hem: practice::junction::EDGE_HEM, above_pan: inch("1/4\"")? },
///     closure: TopClosure {
///         set_back: practice::closure::SET_BACK,
///         face: Face::Web,
///         lower_flange: inch("1 1/4\"")?,
///         top_flange: inch("1/2\"")?,
///         tape_width: inch("7/8\"")?,
///         tape_beneath: inch("1/16\"")?,
///         panel_margin: LeastRule::PANEL_MARGIN,
///     },
///     bites: Bites::Structure,
///     screws: row.clone(),
///     rivets: Some(row),
///     hollow_seams: false,
///     cap_tape_width: inch("1/2\"")?,
///     hold_back: inch("2\"")?,
///     clearance: inch("1/4\"")?,
///     turn_up: practice::panel::TURN_UP,
///     field_trim: practice::panel::SKEW_FIELD_TRIM,
/// };
/// let p = Pitch::parse("12:12")?;
/// let levels = Levels { seam_height: inch("1 3/4\"")?, ..Levels::default() };
/// let hip = Hip {
///     corner: Corner { first: p, second: p, plan: Angle::SQUARE },
///     first: levels,
///     second: levels,
///     detail: HipDetail { first: end.clone(), second: end, sheet: TrimSheet { thickness: Length::mils(24), inside_radius: Length::mils(30) } },
/// };
/// let solved = hip.compute()?;
/// let cap = solved.trim("hip cap").expect("a hip has a cap");
/// // Drip, flange, flange, drip: the ridge of the cap is the middle bend, 60 degrees for two planes of 12:12.
/// assert!((cap.profile.bends[1].angle.degrees() - 60.0).abs() < 1e-6);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Hip {
    /// The two planes.
    pub corner: Corner,
    /// The layers of side 1.
    pub first: Levels,
    /// The layers of side 2.
    pub second: Levels,
    /// What is chosen.
    pub detail: HipDetail,
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
        let detail = &self.detail;
        let mut faults = Faults::default();
        faults.keep(meets_seams(one.meeting(), "corner.first"));
        faults.keep(meets_seams(two.meeting(), "corner.second"));
        keep_under(&mut faults, "detail.sheet", detail.sheet.check());
        let heights = (
            faults.keep(r.part(|| "side 1".into(), |r| self.first.run(r)).map_err(|e| e.under("first"))),
            faults.keep(r.part(|| "side 2".into(), |r| self.second.run(r)).map_err(|e| e.under("second"))),
        );
        faults.check()?;
        let (h1, h2) = (heights.0.unwrap_or_default(), heights.1.unwrap_or_default());

        let s1 = Support { rise: one.backing, height: h1 };
        let s2 = Support { rise: opposite_sign(two.backing)?, height: h2 };
        let ridge = s1.meets(&s2).map_err(|e| e.under("corner"))?;
        let mut solved = Solved::default();
        let mut corners = Vec::with_capacity(2);
        let mut faults = Faults::default();
        for (n, path, end, side, levels, seam_tops, seen) in
            [(1, "detail.first", &detail.first, Side::First, self.first, s1, &one), (2, "detail.second", &detail.second, Side::Second, self.second, s2, &two)]
        {
            // Up the slope of side 2 is toward -x.
            let down = if side == Side::First { -1 } else { 1 };
            let bend = (along(ridge, seam_tops.rise)? * -down).length()?;
            r.step(|| {
                let step = Step::new(format!("bend of the cap along side {n} from the line")).formula("where the planes of the seam tops meet");
                step.with("h", seam_tops.height).with("backing", seen.backing).gives(bend).source(Source::geometry())
            });
            let place = Place { side, levels, bend, limit: bend.min(Length::ZERO), meeting: seen.meeting(), seam_tops, down };
            let ended = r.part(|| format!("panels of side {n}"), |r| end.solve(r, &place)).map_err(|e| e.under(path));
            if let Some(ended) = faults.keep(ended) {
                corners.push(ended.corners);
                ended.give(path, &mut solved);
            }
        }
        faults.check()?;
        let [first, second] = corners[..] else { return Ok(solved) };
        let by = turned(s1.rise, -s2.rise.degrees())?;
        solved.trims.push(cap("hip cap", detail.sheet, (first, &detail.first), (ridge, by), (second, &detail.second))?);
        fit::check(
            &solved,
            &[
                Deck::turned(Side::First, s1.rise, &self.first, &detail.first, "detail.first"),
                Deck::turned(Side::Second, s2.rise, &self.second, &detail.second, "detail.second"),
            ],
            Beside::Nothing,
        )?;
        solved.cautions.extend(cap_not_held("hip cap", &detail.first, &detail.second));
        Ok(solved)
    }
}
