//! Runs longer than a stick: pieces that lap or butt.

use super::input::Piece;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::Length;

/// The most pieces that one run may be split into.
const MOST: u32 = 100_000;

/// How a run is shared out among its pieces.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{LapMode, LapRun};
/// use seamwright::units::Length;
/// let run = LapRun { run: Length::inches(156), longest: Length::feet(10), lap: Length::inches(4), gap: Length::ZERO, least_piece: Length::ZERO, mode: LapMode::Equal };
/// let pieces = run.compute()?.pieces;
/// assert_eq!(pieces.iter().map(|p| p.length).collect::<Vec<_>>(), [80, 80].map(Length::inches));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum LapMode {
    /// Full pieces, then the rest.
    FullThenRest,
    /// Equal pieces, to 1 pm.
    Equal,
}

/// A run to be covered by pieces that lap, or by pieces that butt with a gap between each two.
///
/// The fewest pieces are used: one if the run is not longer than a piece may be, else (run - lap + gap) / (longest - lap + gap), rounded up. A
/// last piece shorter than the least allowed is made that long, at the cost of the one before it; where a gap leaves the last two less than twice the least, or nothing of the last and
/// no least is given, they are of one length.
///
/// # Errors
/// Computing refuses, with the field: a run or longest piece of zero or less, a negative lap, gap or least piece
/// ([`ErrorKind::OutOfRange`]); a lap and a gap both, a lap or a gap that is not shorter than a piece, a least piece over half the longest ([`ErrorKind::Conflict`]); a split
/// into more than 100 000 pieces ([`ErrorKind::TooLarge`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{LapMode, LapRun};
/// use seamwright::units::Length;
/// let run = LapRun { run: Length::feet(25), longest: Length::feet(10), lap: Length::inches(4), gap: Length::ZERO, least_piece: Length::feet(1), mode: LapMode::FullThenRest };
/// let pieces = run.compute()?.pieces;
/// assert_eq!(pieces.iter().map(|p| p.length).collect::<Vec<_>>(), [120, 120, 68].map(Length::inches));
/// assert_eq!(pieces.iter().map(|p| p.cover).collect::<Vec<_>>(), [116, 116, 68].map(Length::inches));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct LapRun {
    /// Length to be covered.
    pub run: Length,
    /// The longest piece that a stick gives.
    pub longest: Length,
    /// How far two pieces lap; nothing where they butt.
    pub lap: Length,
    /// What is left between two pieces that butt; nothing where they lap.
    #[cfg_attr(feature = "serde", serde(default))]
    pub gap: Length,
    /// The shortest piece worth handling; 0 allows any.
    pub least_piece: Length,
    /// How the run is shared out.
    pub mode: LapMode,
}

/// One piece of a lapped run.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{LapMode, LapRun};
/// use seamwright::units::Length;
/// let run = LapRun { run: Length::inches(156), longest: Length::feet(10), lap: Length::inches(4), gap: Length::ZERO, least_piece: Length::ZERO, mode: LapMode::Equal };
/// let pieces = run.compute()?.pieces;
/// assert_eq!((pieces[0].cover, pieces[1].cover), (Length::inches(76), Length::inches(80)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LapPiece {
    /// Its length as cut.
    pub length: Length,
    /// What it adds to the run: its length less the lap onto the next piece, or with the gap before it; the last piece has no next.
    pub cover: Length,
}

/// A run as lapped pieces, in order.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{LapMode, LapRun};
/// use seamwright::units::Length;
/// let run = LapRun { run: Length::feet(25), longest: Length::feet(10), lap: Length::inches(4), gap: Length::ZERO, least_piece: Length::ZERO, mode: LapMode::FullThenRest };
/// let order = run.compute()?.order("eave");
/// assert_eq!(order.iter().map(|p| (p.count, p.length)).collect::<Vec<_>>(), [(2, Length::inches(120)), (1, Length::inches(68))]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LappedRun {
    /// The pieces from the start of the run.
    pub pieces: Vec<LapPiece>,
    /// How many laps there are, or gaps.
    pub laps: u32,
}

impl LappedRun {
    /// The pieces as a cutting asks for them: equal lengths together, in the order in which they first come.
    #[must_use]
    pub fn order(&self, label: &str) -> Vec<Piece> {
        let mut out: Vec<Piece> = Vec::new();
        for p in &self.pieces {
            match out.iter_mut().find(|o| o.length == p.length) {
                Some(o) => o.count += 1,
                None => out.push(Piece { label: label.to_owned(), length: p.length, count: 1 }),
            }
        }
        out
    }
}

impl LapRun {
    fn validate(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.run.positive("run"));
        faults.keep(self.longest.positive("longest"));
        faults.keep(self.lap.not_negative("lap"));
        faults.keep(self.gap.not_negative("gap"));
        faults.keep(self.least_piece.not_negative("least_piece"));
        if self.lap.is_positive() && self.gap.is_positive() {
            let error = Error::new(ErrorKind::Conflict, "pieces that lap have no gap between them").at("gap").value_of(self.gap);
            faults.add(error.accepts("0 mm, or a lap of 0 mm"));
        }
        for (what, length) in [("lap", self.lap), ("gap", self.gap)] {
            if self.longest.is_positive() && length >= self.longest {
                let error = Error::new(ErrorKind::Conflict, format!("the {what} is not shorter than the piece")).at(what).value_of(length);
                faults.add(error.accepts(format!("less than {}", self.longest)));
            }
        }
        if self.longest.is_positive() && self.least_piece + self.least_piece > self.longest.into() {
            faults.add(
                Error::new(ErrorKind::Conflict, "two of the least pieces are longer than the longest piece")
                    .at("least_piece")
                    .value_of(self.least_piece)
                    .accepts(format!("at most half of {}", self.longest)),
            );
        }
        faults.check()
    }
}

impl Calculation for LapRun {
    type Out = LappedRun;

    fn title(&self) -> String {
        "lapped pieces of a run".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<LappedRun, Error> {
        self.validate()?;
        let n = if self.run <= self.longest {
            1
        } else {
            let (run, step) = ((self.run - self.lap + self.gap).pm(), (self.longest - self.lap + self.gap).pm());
            let n = run.div_euclid(step) + i128::from(run.rem_euclid(step) != 0);
            u32::try_from(n).ok().filter(|&n| n <= MOST).ok_or_else(|| {
                Error::new(ErrorKind::TooLarge, "the run would be split into too many pieces")
                    .at("run")
                    .value_of(self.run)
                    .accepts(format!("at most {MOST} pieces"))
            })?
        };
        let laps = n - 1;
        r.step(|| {
            Step::new("pieces")
                .formula("1 if run <= longest, else up((run - lap + gap) / (longest - lap + gap))")
                .with("run", self.run)
                .with("longest", self.longest)
                .with("lap", self.lap)
                .with("gap", self.gap)
                .gives(n)
                .source(Source::geometry())
        });
        // The pieces together are the run and every lap once more, or the run less every gap.
        let total = (self.run + self.lap.station(laps, 1)? - self.gap.station(laps, 1)?).length()?;
        r.step(|| {
            Step::new("length of all pieces")
                .formula("run + laps (lap - gap)")
                .with("run", self.run)
                .with("laps", laps)
                .with("lap", self.lap)
                .with("gap", self.gap)
                .gives(total)
                .source(Source::geometry())
        });
        let mut lengths = Vec::new();
        match self.mode {
            LapMode::Equal => {
                let mut before = Length::ZERO;
                for i in 1..=n {
                    let here = total.station(i, n)?;
                    lengths.push((here - before).length()?);
                    before = here;
                }
            }
            LapMode::FullThenRest => {
                let rest = (total - self.longest.station(laps, 1)?).length()?;
                // The last two share what both have, if the rest is too short, or a gap took all of it.
                let both = (self.longest + rest).length()?;
                let half = both.station(1, 2)?;
                let last = match self.least_piece {
                    least if rest >= least && rest.is_positive() => rest,
                    least if least.is_positive() => least.min(half),
                    _ => half,
                };
                lengths.resize(laps as usize, self.longest);
                match lengths.last_mut() {
                    Some(before) if last != rest => {
                        *before = (both - last).length()?;
                        lengths.push(last);
                    }
                    _ => lengths.push(rest),
                }
            }
        }
        let mut pieces = Vec::with_capacity(lengths.len());
        for (i, &length) in lengths.iter().enumerate() {
            let cover = if i + 1 < lengths.len() { (length - self.lap + self.gap).length()? } else { length };
            pieces.push(LapPiece { length, cover });
        }
        r.step(|| {
            Step::new("lengths")
                .formula("each covers its length less the lap, or with the gap, the last its whole length")
                .gives(lengths.iter().map(Length::to_string).collect::<Vec<_>>().join(", "))
        });
        Ok(LappedRun { pieces, laps })
    }
}
