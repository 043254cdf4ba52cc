//! Whether every line that the crew strikes is measured from something that is there by then.

use super::parts::{Datum, LayoutLine, Solved};
use super::top_end::side_name;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Length, Sum};

/// What a line that marks a trim's edge is called: the trim is held or set to it, and other lines are then measured from that edge.
const TOP_EDGE: &str = "trim top edge";
const LOWER_EDGE: &str = "trim lower edge";
/// Noise of lengths that are rounded to picometres, once on the way to each.
const NOISE: i128 = 2;

/// The lines of a junction in the order in which they are struck.
///
/// A line lies where its datum puts it. What it is measured from is the junction line, a line of the same side struck before it, or a trim's edge that is
/// itself marked by a line struck before it.
///
/// # Errors
/// Computing refuses a line whose datum is not there yet ([`ErrorKind::Missing`]), two lines of one name on one side, and a line that does not lie where its datum
/// puts it ([`ErrorKind::Conflict`]); all at once, each with the line's name and path.
///
/// ```
/// use seamwright::junction::{Datum, LayoutLine, LineOrder, Side};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let line = |name: &'static str, datum, inches| LayoutLine {
///     name: name.into(), side: Side::First, datum, from_datum: Length::inches(inches), from_line: Length::inches(inches),
/// };
/// let right = vec![line("closure face", Datum::JunctionLine, -6), line("screws", Datum::Line("closure face".into()), 0)];
/// let asked = LineOrder { lines: vec![right[0].clone(), LayoutLine { from_line: Length::inches(-6), ..right[1].clone() }] };
/// assert_eq!(asked.compute()?, 2);
/// let early = LineOrder { lines: vec![line("screws", Datum::Line("closure face".into()), 2)] }.compute().unwrap_err();
/// assert_eq!((early.path(), early.value()), ("lines[0].datum", Some("closure face")));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct LineOrder {
    /// The lines.
    pub lines: Vec<LayoutLine>,
}

/// The line that must have been struck before one can be measured from this; none for the junction line.
pub(super) fn awaited(datum: &Datum) -> Option<&str> {
    match datum {
        Datum::JunctionLine => None,
        Datum::TrimLowerEdge => Some(LOWER_EDGE),
        Datum::TrimTopEdge => Some(TOP_EDGE),
        Datum::Line(name) => Some(name),
    }
}

/// Every fault of lines in this order.
fn check(lines: &[LayoutLine]) -> Result<(), Error> {
    let mut faults = Faults::default();
    for (i, line) in lines.iter().enumerate() {
        let before = |name: &str| lines.iter().take(i).find(|l| l.side == line.side && l.name == name);
        let side = side_name(line.side);
        if before(&line.name).is_some() {
            let error = Error::new(ErrorKind::Conflict, format!("{} is struck twice on the {side}", line.name)).at(format!("lines[{i}].name"));
            faults.add(error.value_of(&line.name).accepts("each name once on a side"));
        }
        let from = match awaited(&line.datum) {
            None => Some(Length::ZERO),
            Some(name) => before(name).map(|l| l.from_line),
        };
        let Some(from) = from else {
            let name = awaited(&line.datum).unwrap_or_default();
            faults.add(
                Error::new(ErrorKind::Missing, format!("{} on the {side} is measured from {}, which is not there yet", line.name, line.datum))
                    .at(format!("lines[{i}].datum"))
                    .value_of(name)
                    .accepts("the junction line, or a line struck before it on the same side")
                    .cured_by(format!("strike {name} before {}", line.name)),
            );
            continue;
        };
        let stepped: Sum = if line.datum == Datum::TrimTopEdge { from - line.from_datum } else { from + line.from_datum };
        let stepped = stepped.length()?;
        if i128::from(stepped.pm()).abs_diff(i128::from(line.from_line.pm())) > NOISE.unsigned_abs() {
            faults.add(
                Error::new(ErrorKind::Conflict, format!("{} does not lie where its datum puts it", line.name))
                    .at(format!("lines[{i}].from_line"))
                    .value_of(line.from_line)
                    .accepts(stepped.to_string()),
            );
        }
    }
    faults.check()
}

impl Solved {
    /// Whether each of its lines is measured from something that is there by then: every junction of a job is checked so, and so is one that a caller gives.
    ///
    /// # Errors
    /// As [`LineOrder`].
    pub fn check_lines(&self) -> Result<(), Error> {
        check(&self.lines)
    }
}

impl Calculation for LineOrder {
    type Out = usize;

    fn title(&self) -> String {
        "order of the lines to strike".into()
    }

    /// Gives how many lines there are.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<usize, Error> {
        check(&self.lines)?;
        for line in &self.lines {
            r.step(|| {
                let step = Step::new(line.name.to_string()).formula(format!("measured from {}", line.datum)).with("from there", line.from_datum);
                step.gives(line.from_line).source(Source::geometry())
            });
        }
        Ok(self.lines.len())
    }
}
