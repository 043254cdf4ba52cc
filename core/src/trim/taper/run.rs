//! A tapered run in lapped pieces.

use super::ends::{self, HeldLine};
use super::piece::{Taper, TaperedTrim};
use crate::error::{Error, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::stock::{LapMode, LapRun};
use crate::trim::size::to_length;
use crate::trim::{BendRule, Edge, Leg, Point, Profile, cautions};
use crate::units::Length;

/// A tapered run that is cut into lapped pieces: each is a taper of its own between the profiles where it starts and ends.
///
/// Pieces are shared out along the run by [`LapRun`]. Where lines lean, a piece's blank is longer than the piece; one that comes out longer than the
/// stock is said in its cautions.
///
/// # Errors
/// Computing refuses, with the field: as [`Taper`], and as [`LapRun`] of the run, the longest piece and the lap.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::LapMode;
/// use seamwright::trim::{BendRule, Face, HeldLine, NeutralFactor, Point, Profile, TaperedRun};
/// use seamwright::units::Length;
/// let strip = |width: i16| Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(width)).build();
/// let run = TaperedRun {
///     near: strip(4)?,
///     far: strip(9)?,
///     run: Length::feet(25),
///     longest: Length::feet(10),
///     lap: Length::inches(4),
///     mode: LapMode::FullThenRest,
///     least_piece: Length::ZERO,
///     rule: BendRule::neutral_axis(NeutralFactor::MIDDLE),
///     held: HeldLine::StartEdge,
///     offset: Point::ORIGIN,
///     tolerance: Length::micrometres(10),
/// };
/// let pieces = run.compute()?.pieces;
/// // An inch in every five feet: the first piece ends at 6 in, and the second starts a lap before it.
/// assert_eq!((pieces[0].from, pieces[0].to, pieces[0].trim.far.girth()), (Length::ZERO, Length::feet(10), Length::inches(6)));
/// assert_eq!((pieces[1].from, pieces.len()), (Length::inches(116), 3));
/// assert_eq!(pieces[2].trim.far.girth(), Length::inches(9));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TaperedRun {
    /// The profile where the run begins.
    pub near: Profile,
    /// The profile where it ends.
    pub far: Profile,
    /// From the one to the other.
    pub run: Length,
    /// The longest piece, along the run.
    pub longest: Length,
    /// How far two pieces lap.
    pub lap: Length,
    /// How the run is shared out.
    pub mode: LapMode,
    /// The shortest piece worth handling; 0 allows any.
    #[cfg_attr(feature = "serde", serde(default))]
    pub least_piece: Length,
    /// The rule of every bend that has none of its own.
    pub rule: BendRule,
    /// The line that runs straight along.
    pub held: HeldLine,
    /// How far the held line goes aside over the whole run.
    #[cfg_attr(feature = "serde", serde(default))]
    pub offset: Point,
    /// How far a chord of the blanks' ends may stray from the curve in a bend.
    pub tolerance: Length,
}

/// One piece of a tapered run.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::LapMode;
/// use seamwright::trim::{BendRule, Face, HeldLine, NeutralFactor, Point, Profile, TaperedRun};
/// use seamwright::units::Length;
/// let strip = |width: i16| Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(width)).build();
/// let (near, far, rule) = (strip(4)?, strip(6)?, BendRule::neutral_axis(NeutralFactor::MIDDLE));
/// let (held, offset, tolerance) = (HeldLine::StartEdge, Point::ORIGIN, Length::micrometres(10));
/// let (run, longest, lap, least_piece, mode) = (Length::inches(156), Length::feet(10), Length::inches(4), Length::ZERO, LapMode::Equal);
/// let made = TaperedRun { near, far, run, longest, lap, mode, least_piece, rule, held, offset, tolerance }.compute()?;
/// let piece = &made.pieces[1];
/// assert_eq!((piece.from, piece.to), (Length::inches(76), Length::inches(156)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TaperedPiece {
    /// Where it starts on the run.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// The profile where it starts.
    pub near: Profile,
    /// The profile where it ends.
    pub far: Profile,
    /// The piece in the flat, with its girths at both ends.
    pub trim: TaperedTrim,
}

/// A tapered run as lapped pieces, in order.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::LapMode;
/// use seamwright::trim::{BendRule, Face, HeldLine, NeutralFactor, Point, Profile, TaperedRun};
/// use seamwright::units::Length;
/// let strip = |width: i16| Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(width)).build();
/// let (near, far, rule) = (strip(4)?, strip(6)?, BendRule::neutral_axis(NeutralFactor::MIDDLE));
/// let (held, offset, tolerance) = (HeldLine::StartEdge, Point::ORIGIN, Length::micrometres(10));
/// let (run, longest, lap, least_piece, mode) = (Length::feet(9), Length::feet(10), Length::inches(4), Length::ZERO, LapMode::Equal);
/// let made = TaperedRun { near, far, run, longest, lap, mode, least_piece, rule, held, offset, tolerance }.compute()?;
/// assert_eq!((made.pieces.len(), made.laps), (1, 0));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TaperedPieces {
    /// The pieces from the start of the run.
    pub pieces: Vec<TaperedPiece>,
    /// How many laps there are.
    pub laps: u32,
}

/// A length at this place of a run, between the lengths at its ends: rounded half-even once.
fn between(near: Length, far: Length, at: Length, run: Length) -> Result<Length, Error> {
    let (step, at, run) = ((far - near).pm(), i128::from(at.pm()), i128::from(run.pm()));
    // Lengths of a trim and of a run are far below the range of the product.
    let Some(product) = step.checked_mul(at) else { return to_length(near.mm() + (far.mm() - near.mm()) * (at as f64 / run as f64)) };
    let floor = product.div_euclid(run);
    let twice = 2 * product.rem_euclid(run);
    let rounded = if twice > run || (twice == run && floor & 1 != 0) { floor + 1 } else { floor };
    match i64::try_from(rounded) {
        Ok(pm) => (near + Length::from_pm(pm)).length(),
        Err(_) => to_length(near.mm() + (far.mm() - near.mm()) * (at as f64 / run as f64)),
    }
}

fn edge_between(near: &Edge, far: &Edge, at: Length, run: Length) -> Result<Edge, Error> {
    let mut out = near.clone();
    if let (Edge::ClosedHem { width, .. } | Edge::OpenHem { width, .. }, Edge::ClosedHem { width: end, .. } | Edge::OpenHem { width: end, .. }) =
        (&mut out, far)
    {
        *width = between(*width, *end, at, run)?;
    }
    Ok(out)
}

/// The profile at this place of a run that has the one where it begins and the other where it ends; before and beyond it goes on as straight.
pub(crate) fn profile_along(near: &Profile, far: &Profile, at: Length, run: Length) -> Result<Profile, Error> {
    let legs = near.legs.iter().zip(&far.legs);
    Ok(Profile {
        start_edge: edge_between(&near.start_edge, &far.start_edge, at, run)?,
        legs: legs.map(|(a, b)| Ok(Leg { length: between(a.length, b.length, at, run)?, ..a.clone() })).collect::<Result<_, Error>>()?,
        end_edge: edge_between(&near.end_edge, &far.end_edge, at, run)?,
        ..near.clone()
    })
}

impl TaperedRun {
    fn profile_at(&self, at: Length) -> Result<Profile, Error> {
        profile_along(&self.near, &self.far, at, self.run)
    }

    fn offset_over(&self, from: Length, to: Length) -> Result<Point, Error> {
        let over =
            |whole: Length| -> Result<Length, Error> { (between(Length::ZERO, whole, to, self.run)? - between(Length::ZERO, whole, from, self.run)?).length() };
        Ok(Point { x: over(self.offset.x)?, y: over(self.offset.y)? })
    }
}

impl Calculation for TaperedRun {
    type Out = TaperedPieces;

    fn title(&self) -> String {
        "lapped pieces of a tapered run".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<TaperedPieces, Error> {
        let mut faults = Faults::default();
        faults.keep(self.tolerance.positive("tolerance"));
        faults.keep(ends::same_build(&self.near, &self.far));
        let laps = LapRun { run: self.run, longest: self.longest, lap: self.lap, gap: Length::ZERO, least_piece: self.least_piece, mode: self.mode };
        let laid = faults.keep(r.part(|| laps.title(), |r| laps.run(r)));
        faults.check()?;
        // The whole run answers for its angles, its held line and its profiles, under the names that the caller knows.
        let whole = Taper {
            near: self.near.clone(),
            far: self.far.clone(),
            length: self.run,
            rule: self.rule.clone(),
            held: self.held,
            offset: self.offset,
            tolerance: self.tolerance,
        };
        whole.compute()?;
        let laid = laid.unwrap_or(crate::stock::LappedRun { pieces: Vec::new(), laps: 0 });
        let mut pieces = Vec::with_capacity(laid.pieces.len());
        let mut from = Length::ZERO;
        for (i, piece) in laid.pieces.iter().enumerate() {
            let to = (from + piece.length).length()?;
            let taper =
                Taper { near: self.profile_at(from)?, far: self.profile_at(to)?, length: piece.length, offset: self.offset_over(from, to)?, ..whole.clone() };
            let mut trim = r.part(|| format!("piece {}", i + 1), |r| taper.run(r)).map_err(|e| e.under(&format!("pieces[{i}]")))?;
            let height = trim.blank.bounds()?.size()?.1;
            if height > self.longest {
                trim.blank
                    .cautions
                    .push(Caution::new(cautions::TAPER_BLANK_OVER_STOCK, "longest", Source::geometry()).arg("blank", height).arg("longest", self.longest));
            }
            r.step(|| {
                Step::new(format!("girths of piece {}", i + 1))
                    .formula("each leg between its lengths at the ends of the run, by its place on the run")
                    .with("from", from)
                    .with("to", to)
                    .gives(format!("{} and {}", trim.near.girth(), trim.far.girth()))
                    .source(Source::geometry())
            });
            pieces.push(TaperedPiece { from, to, near: taper.near, far: taper.far, trim });
            from = (from + piece.cover).length()?;
        }
        Ok(TaperedPieces { pieces, laps: laid.laps })
    }
}
