//! The lines that the crew strikes, with their running totals.

use super::plane_panels::same_place;
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{Datum, LayoutLine, Side};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Angle, Length, ShopRounding, TapeReading};

/// How lines are read off the crew's tape.
///
/// ```
/// use seamwright::assembly::StrikeChoice;
/// use seamwright::units::{Length, Rounding, ShopRounding};
/// let tape = ShopRounding::new(Length::inches_64(4), Rounding::HalfAway)?;
/// let choice = StrikeChoice { tape, tolerance: Length::inches_64(4) };
/// assert_eq!(choice.tape.increment(), choice.tolerance);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StrikeChoice {
    /// What the tape is read to.
    pub tape: ShopRounding,
    /// How far off a struck line may be.
    pub tolerance: Length,
}

/// The meeting angle of a side, without sign.
///
/// ```
/// use seamwright::assembly::SideMeeting;
/// use seamwright::junction::Side;
/// use seamwright::units::Angle;
/// let ridge = SideMeeting { side: Side::First, meeting: Angle::SQUARE };
/// assert_eq!(ridge.meeting.degrees(), 90.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SideMeeting {
    /// Which side.
    pub side: Side,
    /// Between the seams and the line: 90 degrees is square, 0 is along the seams.
    pub meeting: Angle,
}

/// The lines of a junction, to be struck in their order.
///
/// Each is measured as one running total from what was there before any line was struck (the junction line, or a trim's edge), so that readings do not add
/// up their rounding.
///
/// # Errors
/// Computing refuses a negative tolerance ([`ErrorKind::OutOfRange`]), a line whose datum is not struck yet ([`ErrorKind::Missing`]), a datum that several
/// lines may be, and a line that does not lie where its datum and its distance put it ([`ErrorKind::Conflict`]).
///
/// ```
/// use seamwright::assembly::{SideMeeting, StrikeChoice, StrikeLines};
/// use seamwright::junction::{Datum, LayoutLine, Side};
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length, Rounding, ShopRounding};
/// let lines = [
///     LayoutLine { name: "closure face".into(), side: Side::First, datum: Datum::JunctionLine, from_datum: Length::inches(-5), from_line: Length::inches(-5) },
///     LayoutLine { name: "screws".into(), side: Side::First, datum: Datum::Line("closure face".into()), from_datum: Length::inches(2), from_line: Length::inches(-3) },
/// ];
/// let choice = StrikeChoice { tape: ShopRounding::new(Length::inches_64(4), Rounding::HalfAway)?, tolerance: Length::inches_64(4) };
/// let sides = [SideMeeting { side: Side::First, meeting: Angle::parse("30 deg")? }];
/// let struck = StrikeLines { lines: &lines, sides: &sides, choice }.compute()?;
/// assert_eq!((struck[1].order, struck[1].from_start.exact, struck[1].start_text.as_str()), (2, Length::inches(-3), "the junction line"));
/// assert_eq!(struck[1].along_seam.unwrap().exact, Length::inches(-6));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct StrikeLines<'a> {
    /// The lines in the order of the work.
    pub lines: &'a [LayoutLine],
    /// The meeting angle of each side with panels; a line on another side is struck square only.
    pub sides: &'a [SideMeeting],
    /// How they are read.
    pub choice: StrikeChoice,
}

/// A line to strike.
///
/// See [`StrikeLines`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StruckLine {
    /// When it is struck, from 1.
    pub order: usize,
    /// What goes on it.
    pub name: String,
    /// On which side.
    pub side: Side,
    /// What it is measured from in the section.
    pub datum: Datum,
    /// From that datum, square to the line, with the section's sign.
    pub from_datum: TapeReading,
    /// What the running total starts from: the junction line or a trim's edge.
    pub start: Datum,
    /// The same in words.
    pub start_text: String,
    /// The running total from there, square to the line: up the slope, or down it from a trim's top edge; negative the other way.
    pub from_start: TapeReading,
    /// From the junction line, square to it, positive up the slope.
    pub from_line: TapeReading,
    /// The running total along a seam, read as 0 where it is square to the line; `None` where the seams run along the line or no panels lie there.
    pub along_seam: Option<TapeReading>,
    /// How far off it may be.
    pub tolerance: Length,
}

impl StrikeLines<'_> {
    fn along_seam(&self, side: Side, square: Length) -> Result<Option<TapeReading>, Error> {
        let Some(meeting) = self.sides.iter().find(|s| s.side == side).map(|s| s.meeting) else { return Ok(None) };
        // Along the seams to a nanometre per metre there is no crossing to measure to.
        let sine = meeting.sin();
        if sine.abs() < 1e-9 {
            return Ok(None);
        }
        let exact = Length::from_mm(square.mm() / sine)?;
        // What the tape reads as on its datum square to the line is on it along a seam too: a skew would only make a mark of what rounds away.
        if TapeReading::of(square, self.choice.tape)?.read == Length::ZERO {
            return Ok(Some(TapeReading { exact, read: Length::ZERO }));
        }
        Ok(Some(TapeReading::of(exact, self.choice.tape)?))
    }

    /// The running total, and what it starts from.
    fn total(&self, line: &LayoutLine, before: &[StruckLine], faults: &mut Faults, at: usize) -> Result<Option<(Datum, Length)>, Error> {
        let Datum::Line(name) = &line.datum else { return Ok(Some((line.datum.clone(), line.from_datum))) };
        let meant: Vec<&StruckLine> = before.iter().filter(|b| b.side == line.side && b.name == **name).collect();
        if meant.len() > 1 {
            faults.add(
                Error::new(ErrorKind::Conflict, format!("{} is measured from a name that several lines have", line.name))
                    .at(format!("lines[{at}].datum"))
                    .value_of(name)
                    .accepts("the name of one line"),
            );
            return Ok(None);
        }
        let Some(datum) = meant.first() else {
            faults.add(
                Error::new(ErrorKind::Missing, format!("{} is measured from a line that is not struck yet", line.name))
                    .at(format!("lines[{at}].datum"))
                    .value_of(name)
                    .accepts("the junction line, a trim's edge, or a line before it on the same side"),
            );
            return Ok(None);
        };
        let expected = (datum.from_line.exact + line.from_datum).length()?;
        if !same_place(expected, line.from_line) {
            faults.add(
                Error::new(ErrorKind::Conflict, format!("{} does not lie where its datum puts it", line.name))
                    .at(format!("lines[{at}].from_datum"))
                    .value_of(line.from_datum)
                    .accepts(format!("{}, from {name}", (line.from_line - datum.from_line.exact).length()?)),
            );
            return Ok(None);
        }
        // From a top edge totals count down the slope, from a struck line up it.
        let total = if datum.start == Datum::TrimTopEdge { datum.from_start.exact - line.from_datum } else { datum.from_start.exact + line.from_datum };
        Ok(Some((datum.start.clone(), total.length()?)))
    }
}

impl Calculation for StrikeLines<'_> {
    type Out = Vec<StruckLine>;

    fn title(&self) -> String {
        "lines to strike".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<StruckLine>, Error> {
        let mut faults = Faults::default();
        faults.keep(self.choice.tolerance.not_negative("choice.tolerance"));
        let mut out: Vec<StruckLine> = Vec::with_capacity(self.lines.len());
        for (k, line) in self.lines.iter().enumerate() {
            let Some((start, total)) = self.total(line, &out, &mut faults, k)? else { continue };
            let read = |exact: Length| TapeReading::of(exact, self.choice.tape);
            let struck = StruckLine {
                order: k + 1,
                name: line.name.clone().into_owned(),
                side: line.side,
                datum: line.datum.clone(),
                from_datum: read(line.from_datum)?,
                start_text: start.to_string(),
                start,
                from_start: read(total)?,
                from_line: read(line.from_line)?,
                along_seam: self.along_seam(line.side, total)?,
                tolerance: self.choice.tolerance,
            };
            r.step(|| {
                let step = Step::new(struck.name.clone())
                    .formula(format!("running total from {}, square to the line, rounded once", struck.start_text))
                    .with("exact", struck.from_start.exact)
                    .gives(struck.from_start.read)
                    .source(Source::geometry());
                match struck.along_seam {
                    Some(seam) => step.with("along a seam, / sin phi", seam.exact),
                    None => step,
                }
            });
            out.push(struck);
        }
        faults.check()?;
        Ok(out)
    }
}
