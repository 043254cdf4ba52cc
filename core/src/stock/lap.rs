//! Runs longer than a stick: pieces with laps.

use super::input::Piece;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::Length;

/// The most pieces that one run may be split into.
const MOST: u32 = 100_000;

/// How a run is shared out among its pieces.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
pub enum LapMode {
    /// Full pieces, then the rest.
    FullThenRest,
    /// Equal pieces, to 1 pm.
    Equal,
}

/// A run to be covered by pieces that lap.
///
/// The fewest pieces are used: one if the run is not longer than a piece may be, else (run - lap) / (longest - lap), rounded up. A
/// last piece shorter than the least allowed is made that long, at the cost of the one before it.
///
/// # Errors
/// Computing refuses, with the field: a run or longest piece of zero or less, a negative lap or least piece
/// ([`ErrorKind::OutOfRange`]); a lap that is not shorter than a piece, a least piece over half the longest ([`ErrorKind::Conflict`]); a split
/// into more than 100 000 pieces ([`ErrorKind::TooLarge`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{LapMode, LapRun};
/// use seamwright::units::Length;
/// let run = LapRun { run: Length::feet(25), longest: Length::feet(10), lap: Length::inches(4), least_piece: Length::feet(1), mode: LapMode::FullThenRest };
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
    /// How far two pieces lap.
    pub lap: Length,
    /// The shortest piece worth handling; 0 allows any.
    pub least_piece: Length,
    /// How the run is shared out.
    pub mode: LapMode,
}

/// One piece of a lapped run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LapPiece {
    /// Its length as cut.
    pub length: Length,
    /// What it adds to the run: its length less the lap onto the next piece; the last piece has no next.
    pub cover: Length,
}

/// A run as lapped pieces, in order.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{LapMode, LapRun};
/// use seamwright::units::Length;
/// let run = LapRun { run: Length::feet(25), longest: Length::feet(10), lap: Length::inches(4), least_piece: Length::ZERO, mode: LapMode::FullThenRest };
/// let order = run.compute()?.order("eave");
/// assert_eq!(order.iter().map(|p| (p.count, p.length)).collect::<Vec<_>>(), [(2, Length::inches(120)), (1, Length::inches(68))]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LappedRun {
    /// The pieces from the start of the run.
    pub pieces: Vec<LapPiece>,
    /// How many laps there are.
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
        faults.keep(self.least_piece.not_negative("least_piece"));
        if self.longest.is_positive() && self.lap >= self.longest {
            faults.add(
                Error::new(ErrorKind::Conflict, "the lap is not shorter than the piece")
                    .at("lap")
                    .value_of(self.lap)
                    .accepts(format!("less than {}", self.longest)),
            );
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
            let (run, step) = ((self.run - self.lap).pm(), (self.longest - self.lap).pm());
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
                .formula("1 if run <= longest, else up((run - lap) / (longest - lap))")
                .with("run", self.run)
                .with("longest", self.longest)
                .with("lap", self.lap)
                .gives(n)
                .source(Source::geometry())
        });
        // The pieces together are the run and every lap once more.
        let total = (self.run + self.lap.station(laps, 1)?).length()?;
        r.step(|| {
            Step::new("length of all pieces")
                .formula("run + laps lap")
                .with("run", self.run)
                .with("laps", laps)
                .with("lap", self.lap)
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
                let short = (self.least_piece - rest).length()?;
                lengths.resize(laps as usize, self.longest);
                if short.is_positive()
                    && let Some(last_full) = lengths.last_mut()
                {
                    *last_full = (self.longest - short).length()?;
                    lengths.push(self.least_piece);
                } else {
                    lengths.push(rest);
                }
            }
        }
        let mut pieces = Vec::with_capacity(lengths.len());
        for (i, &length) in lengths.iter().enumerate() {
            let cover = if i + 1 < lengths.len() { (length - self.lap).length()? } else { length };
            pieces.push(LapPiece { length, cover });
        }
        r.step(|| {
            Step::new("lengths")
                .formula("each covers its length less the lap, the last its whole length")
                .gives(lengths.iter().map(Length::to_string).collect::<Vec<_>>().join(", "))
        });
        Ok(LappedRun { pieces, laps })
    }
}
