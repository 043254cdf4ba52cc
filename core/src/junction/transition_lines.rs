//! The lines that the crew strikes at a pitch transition, and the checks that each lies on what it needs.
//!
//! The lower lines step back up the slope from the trim's lower edge and lie on the lower panel. The upper lines step down from the trim's top edge and
//! lie on the upper flange, over the upper deck.

use super::parts::{Datum, LayoutLine, Side};
use super::transition::{PitchTransition, TransitionSection};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::{Length, Sum};

/// The closures under the lower flange.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Closure {
    /// From the trim's lower edge up the slope to the closure's face.
    pub setback: Length,
    /// From the face to the centre of the lower flange, where its screws go.
    pub face_to_screws: Length,
    /// From the screws to the upper edge of that flange.
    pub screws_to_edge: Length,
    /// Width of the tape under that flange, centred on the screws.
    pub tape_width: Length,
    /// What the panel must still reach beyond the flange.
    pub panel_margin: Length,
}

/// The cleat that the upper panels hook, and what holds it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Cleat {
    /// From the trim's top edge down to the cleat's front.
    pub front_below_top: Length,
    /// The cleat's width up the slope, from its front to its back.
    pub width: Length,
    /// Width of the tape under the cleat, its upper edge at the cleat's back.
    pub tape_width: Length,
    /// From the tape's upper edge down to the cleat's screws.
    pub screws_below_tape_edge: Length,
    /// From the trim's top edge down to the screws along that edge.
    pub top_screws_below_top: Length,
    /// From the bend up to the cleat's front, at the least.
    pub head_lap: Length,
    /// From the cleat's front down to the nose of the fold, at the laying temperature.
    pub gap: Length,
    /// The fold of the panel's end under the cleat.
    pub fold: Length,
}

/// A pitch transition with its flanges, closures and cleat.
///
/// ```
/// use seamwright::junction::{Bending, Cleat, Closure, Levels, PitchTransition, TransitionLines};
/// use seamwright::pitch::Pitch;
/// use seamwright::practice::junction as practice;
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let inch = |text: &str| Length::parse(text);
/// let lines = TransitionLines {
///     transition: PitchTransition {
///         lower: Pitch::parse("3:12")?,
///         upper: Pitch::parse("8:12")?,
///         levels: Levels { seam_height: inch("1 3/4\"")?, ..Levels::default() },
///         packing: Length::ZERO,
///         bending: Bending::Direct,
///         lower_hold_back: inch("1\"")?,
///         clearance: inch("1/4\"")?,
///         unsupported_limit: inch("8\"")?,
///     },
///     lower_flange: inch("12\"")?,
///     upper_flange: inch("8\"")?,
///     closure: Closure {
///         setback: seamwright::practice::closure::SET_BACK,
///         face_to_screws: practice::CLOSURE_FACE_TO_SCREWS,
///         screws_to_edge: inch("1/2\"")?,
///         tape_width: inch("7/8\"")?,
///         panel_margin: inch("1/2\"")?,
///     },
///     cleat: Cleat {
///         front_below_top: practice::CLEAT_FRONT_BELOW_TOP,
///         width: practice::CLEAT_WIDTH,
///         tape_width: inch("1 1/2\"")?,
///         screws_below_tape_edge: practice::CLEAT_SCREWS_BELOW_TAPE_EDGE,
///         top_screws_below_top: inch("1\"")?,
///         head_lap: inch("1\"")?,
///         gap: inch("1/4\"")?,
///         fold: seamwright::practice::panel::END_FOLD,
///     },
/// };
/// let out = lines.compute()?;
/// assert_eq!(out.line("closure screws").map(|l| l.from_datum), Some(inch("2 7/8\"")?));
/// assert_eq!(out.line("cleat back").map(|l| l.from_datum), Some(inch("2 1/2\"")?));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct TransitionLines {
    /// The section.
    pub transition: PitchTransition,
    /// From the bend, or the riser's foot, down to the trim's lower edge.
    pub lower_flange: Length,
    /// From the bend, or the riser's top, up to the trim's top edge.
    pub upper_flange: Length,
    /// The closures.
    pub closure: Closure,
    /// The cleat.
    pub cleat: Cleat,
}

/// The lines, with the section that they lie in.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct TransitionLinesOut {
    /// The section.
    pub section: TransitionSection,
    /// The lower lines up the slope, then the upper lines down it.
    pub lines: Vec<LayoutLine>,
    /// What an upper panel adds beyond its length to the cleat's front: gap and fold, the bend itself left out.
    pub upper_panel_addition: Length,
    /// What a lower panel loses from its length to the junction line.
    pub lower_panel_hold_back: Length,
}

impl TransitionLinesOut {
    /// The line of this name.
    #[must_use]
    pub fn line(&self, name: &str) -> Option<&LayoutLine> {
        self.lines.iter().find(|l| l.name == name)
    }
}

impl TransitionLines {
    fn lengths(&self) -> [(&'static str, Length); 15] {
        let (c, k) = (&self.closure, &self.cleat);
        [
            ("lower_flange", self.lower_flange),
            ("upper_flange", self.upper_flange),
            ("closure.setback", c.setback),
            ("closure.face_to_screws", c.face_to_screws),
            ("closure.screws_to_edge", c.screws_to_edge),
            ("closure.tape_width", c.tape_width),
            ("closure.panel_margin", c.panel_margin),
            ("cleat.front_below_top", k.front_below_top),
            ("cleat.width", k.width),
            ("cleat.tape_width", k.tape_width),
            ("cleat.screws_below_tape_edge", k.screws_below_tape_edge),
            ("cleat.top_screws_below_top", k.top_screws_below_top),
            ("cleat.head_lap", k.head_lap),
            ("cleat.gap", k.gap),
            ("cleat.fold", k.fold),
        ]
    }
}

/// A fault unless `have` is at least `need`: the part, where it must lie, and by how much it fails.
fn reaches(
    faults: &mut Faults,
    path: &str,
    what: &'static str,
    have: impl Into<Sum>,
    need: impl Into<Sum>,
    value: Length,
    cure: &'static str,
) -> Result<(), Error> {
    let short = need.into() - have;
    if short > Sum::ZERO {
        let short = short.length()?;
        faults
            .add(Error::new(ErrorKind::Impossible, format!("{what} by {short}")).at(path).value_of(value).accepts(format!("{short} more room")).cured_by(cure));
    }
    Ok(())
}

impl Calculation for TransitionLines {
    type Out = TransitionLinesOut;

    fn title(&self) -> String {
        format!("lines of the {}", self.transition.title())
    }

    /// Refuses a line that misses the metal that it needs or what must back its fasteners; all such faults at once.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<TransitionLinesOut, Error> {
        let mut faults = Faults::default();
        for (name, length) in self.lengths() {
            faults.keep(length.not_negative(name));
        }
        core::mem::take(&mut faults).check()?;
        let section = r.part(|| self.transition.title(), |r| self.transition.run(r).map_err(|e| e.under("transition")))?;
        let (c, k) = (&self.closure, &self.cleat);
        let hold_back = self.transition.lower_hold_back;

        let edge = section.bend_on_lower - self.lower_flange;
        let lower = |name: &'static str, from_edge: Sum| -> Result<LayoutLine, Error> {
            Ok(LayoutLine {
                name: name.into(),
                side: Side::First,
                datum: Datum::TrimLowerEdge,
                from_datum: from_edge.length()?,
                from_line: (edge + from_edge).length()?,
            })
        };
        let screws = c.setback + c.face_to_screws;
        let half_tape = c.tape_width.station(1, 2)?;
        let flange_edge = screws + c.screws_to_edge;

        let top = section.bend_on_upper + self.upper_flange;
        let upper = |name: &'static str, below: Sum| -> Result<LayoutLine, Error> {
            Ok(LayoutLine { name: name.into(), side: Side::Second, datum: Datum::TrimTopEdge, from_datum: below.length()?, from_line: (top - below).length()? })
        };
        let back = k.front_below_top - k.width;
        let cleat_screws = back + k.screws_below_tape_edge;
        let lines = vec![
            LayoutLine { name: "trim lower edge".into(), side: Side::First, datum: Datum::JunctionLine, from_datum: edge.length()?, from_line: edge.length()? },
            lower("closure face", c.setback.into())?,
            lower("closure tape, lower edge", screws - half_tape)?,
            lower("closure screws", screws)?,
            lower("closure tape, upper edge", screws + half_tape)?,
            lower("closure flange, upper edge", flange_edge)?,
            LayoutLine {
                name: "lower panel end".into(),
                side: Side::First,
                datum: Datum::JunctionLine,
                from_datum: (-hold_back).length()?,
                from_line: (-hold_back).length()?,
            },
            LayoutLine { name: "trim top edge".into(), side: Side::Second, datum: Datum::JunctionLine, from_datum: top.length()?, from_line: top.length()? },
            upper("screws along the top edge", k.top_screws_below_top.into())?,
            upper("cleat back", back)?,
            upper("cleat screws", cleat_screws)?,
            upper("cleat tape, lower edge", back + k.tape_width)?,
            upper("cleat front", k.front_below_top.into())?,
            upper("upper panel nose", k.front_below_top + k.gap)?,
        ];
        for line in &lines {
            r.step(|| Step::new(line.name.clone()).formula(format!("measured from {}", line.datum)).gives(line.from_datum).source(Source::user()));
        }

        let cure_lower = "a longer lower flange, or a smaller hold-back of the lower panels";
        let panel_end = -hold_back;
        reaches(
            &mut faults,
            "closure",
            "the closure's flange falls off the lower panel",
            panel_end - c.panel_margin,
            edge + flange_edge,
            c.panel_margin,
            cure_lower,
        )?;
        reaches(&mut faults, "closure.setback", "the closure's face passes the trim's bend", self.lower_flange, c.setback, c.setback, "a longer lower flange")?;
        let cure_upper = "a longer upper flange";
        let front = top - k.front_below_top;
        reaches(
            &mut faults,
            "cleat.front_below_top",
            "the cleat's front lies too near the bend",
            front,
            section.bend_on_upper + k.head_lap,
            k.front_below_top,
            cure_upper,
        )?;
        reaches(
            &mut faults,
            "cleat.width",
            "the cleat passes the trim's top edge",
            k.front_below_top,
            k.width,
            k.width,
            "a narrower cleat, or a front farther from the top",
        )?;
        reaches(&mut faults, "cleat.tape_width", "the cleat's tape is wider than the cleat", k.width, k.tape_width, k.tape_width, "narrower tape")?;
        reaches(
            &mut faults,
            "cleat.screws_below_tape_edge",
            "the cleat's screws miss their tape",
            k.tape_width,
            k.screws_below_tape_edge,
            k.screws_below_tape_edge,
            "wider tape",
        )?;
        reaches(
            &mut faults,
            "cleat.top_screws_below_top",
            "the screws along the top edge fall on the cleat",
            back,
            k.top_screws_below_top,
            k.top_screws_below_top,
            "screws nearer the edge",
        )?;
        reaches(&mut faults, "cleat.gap", "the nose of the fold passes the head-lap", k.head_lap, k.gap, k.gap, "a greater head-lap")?;
        // Below the line the flange hangs in the air where the roof below is the steeper: cleat, tape and screws lie over the upper deck.
        reaches(&mut faults, "cleat", "the cleat misses the upper deck", front, Sum::ZERO, k.front_below_top, cure_upper)?;
        faults.check()?;
        let upper_panel_addition = (k.gap + k.fold).length()?;
        r.step(|| {
            Step::new("an upper panel adds beyond the cleat's front").formula("gap + fold").with("gap", k.gap).with("fold", k.fold).gives(upper_panel_addition)
        });
        Ok(TransitionLinesOut { section, lines, upper_panel_addition, lower_panel_hold_back: hold_back })
    }
}
