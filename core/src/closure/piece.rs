//! The piece for one bay.

use super::cautions::{BENDS_IGNORED, FASTENER_FROM_TAB_UNUSUAL, FASTENERS_NOT_ENGINEERED};
use crate::error::{Error, ErrorKind, Faults};
use crate::practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::spacing::{Spacing, SpacingRule, Stations};
use crate::units::{Angle, BendAngle, Length};

/// How the lower flange is fastened.
///
/// ```
/// use seamwright::closure::ClosureFasteners;
/// use seamwright::practice;
/// assert_eq!(ClosureFasteners::usual().from_tab, practice::closure::FASTENER_FROM_TAB);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosureFasteners {
    /// Distance of the end fasteners from their tabs, along the line.
    pub from_tab: Length,
    /// The engineer's greatest spacing on centre; without it the starting figure of common practice is used, and said so.
    #[cfg_attr(feature = "serde", serde(default))]
    pub engineered: Option<Length>,
}

impl ClosureFasteners {
    /// As is common practice, without an engineer's figure.
    #[must_use]
    pub const fn usual() -> Self {
        ClosureFasteners { from_tab: practice::closure::FASTENER_FROM_TAB, engineered: None }
    }
}

/// One bay to be closed.
///
/// # Errors
/// Computing refuses, with the field: a coverage, seam height, tab or lower flange of zero or less, any other length under zero, a meeting angle
/// outside 0 to 180 degrees ([`ErrorKind::OutOfRange`]); a seam as wide as the bay, tape as thick as the seam is high, a clearance that
/// leaves nothing, tabs or a lap longer than the piece, or no room for two fasteners ([`ErrorKind::Impossible`]); a lap of a top flange that is not there ([`ErrorKind::Conflict`]).
///
/// ```
/// use seamwright::closure::{ClosureBay, ClosureFasteners};
/// use seamwright::practice;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length, LengthUnit};
/// let bay = ClosureBay {
///     coverage: Length::inches(16),
///     seam_width_at_foot: Length::inches_64(32),
///     seam_height: Length::inches_64(112),
///     compressed_tape: Length::inches_64(4),
///     meeting: Angle::parse("30 deg")?,
///     clearance: Length::inches_64(16),
///     tab: practice::closure::TAB,
///     lower_flange: Length::inches(2),
///     top_flange: Length::inches(1),
///     top_lap: Length::ZERO,
///     fasteners: ClosureFasteners::usual(),
/// };
/// let piece = bay.compute()?;
/// assert_eq!(piece.length, Length::parse("30 3/4\"")?);
/// assert_eq!(piece.fasteners.count(), 4);
/// assert_eq!((piece.tab_bends.0.degrees(), piece.tab_bends.1.degrees()), (30.0, 150.0));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosureBay {
    /// Seam to seam, square to the seams.
    pub coverage: Length,
    /// Width of a seam where it meets the pan, square to the seams.
    pub seam_width_at_foot: Length,
    /// Pan to top of seam.
    pub seam_height: Length,
    /// The tape under the lower flange, pressed.
    pub compressed_tape: Length,
    /// Angle between seams and junction line, in the roof plane; 90 degrees is square.
    pub meeting: Angle,
    /// What the piece is shorter than its bay, both ends together, along the line.
    pub clearance: Length,
    /// Length of each end tab.
    pub tab: Length,
    /// Width of the lower flange.
    pub lower_flange: Length,
    /// Width of the top flange; 0 for a piece without one.
    pub top_flange: Length,
    /// How far the top flange runs over each seam, along the line; 0 for a piece that stays between the seams.
    pub top_lap: Length,
    /// How the lower flange is fastened.
    pub fasteners: ClosureFasteners,
}

/// A flat blank, the smallest rectangle that the piece is cut from.
///
/// ```
/// use seamwright::closure::{ClosureBay, ClosureFasteners};
/// use seamwright::practice;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length};
/// let piece = ClosureBay {
///     coverage: Length::inches(16),
///     seam_width_at_foot: Length::inches(1),
///     seam_height: Length::inches(2),
///     compressed_tape: Length::ZERO,
///     meeting: Angle::SQUARE,
///     clearance: Length::ZERO,
///     tab: practice::closure::TAB,
///     lower_flange: Length::inches(2),
///     top_flange: Length::inches(1),
///     top_lap: Length::ZERO,
///     fasteners: ClosureFasteners::usual(),
/// }
/// .compute()?;
/// assert_eq!((piece.blank.length, piece.blank.width), (Length::inches(17), Length::inches(5)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Blank {
    /// Along the bends of flanges and web.
    pub length: Length,
    /// Across them: lower flange, web and top flange.
    pub width: Length,
}

/// A closure piece for one bay.
///
/// ```
/// use seamwright::closure::{ClosureBay, ClosureFasteners};
/// use seamwright::practice;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length};
/// let piece = ClosureBay {
///     coverage: Length::inches(16),
///     seam_width_at_foot: Length::inches(1),
///     seam_height: Length::inches(2),
///     compressed_tape: Length::ZERO,
///     meeting: Angle::SQUARE,
///     clearance: Length::ZERO,
///     tab: practice::closure::TAB,
///     lower_flange: Length::inches(2),
///     top_flange: Length::inches(1),
///     top_lap: Length::ZERO,
///     fasteners: ClosureFasteners::usual(),
/// }
/// .compute()?;
/// assert_eq!((piece.length, piece.web_height), (Length::inches(15), Length::inches(2)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosurePiece {
    /// Length of the web, along the line, between its tabs.
    pub length: Length,
    /// Height of the web.
    pub web_height: Length,
    /// Bends of the two tabs, both turning uphill: at the end to which the seams lean as they rise for a meeting angle under 90
    /// degrees, and at the other. They are the meeting angle and 180 degrees less it.
    pub tab_bends: (BendAngle, BendAngle),
    /// Angle at which the ends of the flanges are cut, from the line.
    pub flange_cut: Angle,
    /// Fasteners along the centreline of the lower flange, from where that line meets the first seam's clearance.
    pub fasteners: Stations,
    /// How far the centreline of the lower flange is shifted along the line against the web, by the skew of its ends; toward the
    /// first end where positive.
    pub flange_shift: Length,
    /// The blank.
    pub blank: Blank,
    /// What to know before it is cut.
    pub cautions: Vec<Caution>,
}

impl ClosureBay {
    fn validate(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        faults.keep(self.coverage.positive("coverage"));
        faults.keep(self.seam_width_at_foot.not_negative("seam_width_at_foot"));
        faults.keep(self.seam_height.positive("seam_height"));
        faults.keep(self.compressed_tape.not_negative("compressed_tape"));
        faults.keep(self.clearance.not_negative("clearance"));
        faults.keep(self.tab.positive("tab"));
        faults.keep(self.lower_flange.positive("lower_flange"));
        faults.keep(self.top_flange.not_negative("top_flange"));
        faults.keep(self.top_lap.not_negative("top_lap"));
        faults.keep(self.fasteners.from_tab.not_negative("fasteners.from_tab"));
        if let Some(s) = self.fasteners.engineered {
            faults.keep(s.positive("fasteners.engineered"));
        }
        faults.keep(self.meeting.meeting());
        if self.top_flange == Length::ZERO && self.top_lap.is_positive() {
            faults.add(
                Error::new(ErrorKind::Conflict, "a lap of the top flange, and no top flange")
                    .at("top_lap")
                    .value_of(self.top_lap)
                    .accepts("0 mm where the top flange is 0 mm")
                    .cured_by("a top flange, or no lap"),
            );
        }
        if faults.is_empty() && self.seam_width_at_foot >= self.coverage {
            faults.add(
                Error::new(ErrorKind::Impossible, "the seam is as wide as the bay")
                    .at("seam_width_at_foot")
                    .value_of(self.seam_width_at_foot)
                    .accepts(format!("less than {}", self.coverage)),
            );
        }
        if faults.is_empty() && self.compressed_tape >= self.seam_height {
            // A picometre of web is no closure; the figure says how far the seam is from holding the tape at all.
            let over = (self.compressed_tape - self.seam_height).length()?;
            faults.add(
                Error::new(ErrorKind::Impossible, format!("the tape leaves no height for the web: it passes the seam's top by {over}"))
                    .at("compressed_tape")
                    .value_of(self.compressed_tape)
                    .accepts(format!("less than {}", self.seam_height))
                    .cured_by(format!("tape thinner by more than {over}, or a higher seam")),
            );
        }
        faults.check()
    }

    /// A width up the slope as a shift along the line, by the skew of the seams.
    fn shift(&self, width: Length) -> Result<Length, Error> {
        Length::from_mm(width.mm() * self.meeting.cos() / self.meeting.sin())
    }

    fn fasteners<R: Recorder>(&self, length: Length, cautions: &mut Vec<Caution>, r: &mut R) -> Result<Stations, Error> {
        let from_tab = self.fasteners.from_tab;
        if from_tab + from_tab >= length.into() {
            return Err(Error::new(ErrorKind::Impossible, "no room for two fasteners on the piece")
                .at("fasteners.from_tab")
                .value_of(from_tab)
                .accepts(format!("less than half of {length}")));
        }
        let (least, greatest) = (practice::closure::LEAST_FROM_TAB, practice::closure::GREATEST_FROM_TAB);
        if from_tab < least || from_tab > greatest {
            cautions.push(
                Caution::new(FASTENER_FROM_TAB_UNUSUAL, "fasteners.from_tab", Source::CommonPractice)
                    .arg("found", from_tab)
                    .arg("least", least)
                    .arg("greatest", greatest),
            );
        }
        let maximum = match self.fasteners.engineered {
            Some(s) => s,
            None => {
                let s = practice::closure::ON_CENTRE;
                cautions.push(Caution::new(FASTENERS_NOT_ENGINEERED, "fasteners", Source::CommonPractice).arg("spacing", s));
                s
            }
        };
        let line = Spacing { run: length, end_distance: from_tab, rule: SpacingRule::Equal { maximum } };
        // Too many for one piece: by the engineer's spacing, or, where there is none, by the piece's own length.
        let field = if self.fasteners.engineered.is_some() { "fasteners.engineered" } else { "coverage" };
        r.part(|| line.title(), |r| line.run(r)).map_err(|e| e.under("fasteners").moved("fasteners.rule.maximum", field))
    }
}

impl Calculation for ClosureBay {
    type Out = ClosurePiece;

    fn title(&self) -> String {
        "closure piece for a bay".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<ClosurePiece, Error> {
        self.validate()?;
        let clear = (self.coverage - self.seam_width_at_foot).length()?;
        let bay = Length::from_mm(clear.mm() / self.meeting.sin()).map_err(|e| e.under("meeting"))?;
        let length = (bay - self.clearance).length()?;
        r.step(|| {
            Step::new("length between the seams")
                .formula("(coverage - seam width at foot) / sin(phi) - clearance")
                .with("coverage", self.coverage)
                .with("seam width at foot", self.seam_width_at_foot)
                .with("phi", self.meeting)
                .with("clearance", self.clearance)
                .gives(length)
                .source(Source::geometry())
        });
        if !length.is_positive() {
            return Err(Error::new(ErrorKind::Impossible, "the clearance leaves nothing of the piece")
                .at("clearance")
                .value_of(self.clearance)
                .accepts(format!("less than {bay}")));
        }
        if self.tab > length {
            return Err(Error::new(ErrorKind::Impossible, "the tabs are longer than the piece")
                .at("tab")
                .value_of(self.tab)
                .accepts(format!("at most {length}")));
        }
        if self.top_lap >= length {
            return Err(Error::new(ErrorKind::Impossible, "the top flange's lap is longer than the piece that it would lap over")
                .at("top_lap")
                .value_of(self.top_lap)
                .accepts(format!("less than {length}")));
        }
        let web_height = (self.seam_height - self.compressed_tape).length()?;
        r.step(|| {
            Step::new("web height")
                .formula("seam height - compressed tape")
                .with("seam height", self.seam_height)
                .with("compressed tape", self.compressed_tape)
                .gives(web_height)
                .source(Source::geometry())
        });
        let tab_bends = (BendAngle::from_flat(self.meeting)?, BendAngle::between_flanges(self.meeting)?);
        r.step(|| {
            Step::new("bends of the tabs")
                .formula("phi and 180 - phi")
                .with("phi", self.meeting)
                .gives(format!("{} and {}", tab_bends.0, tab_bends.1))
                .source(Source::geometry())
        });
        let mut cautions = Vec::new();
        let fasteners = self.fasteners(length, &mut cautions, r)?;
        let shift = |width: Length, field: &'static str| self.shift(width).map_err(|e| e.under(field));
        let flange_shift = shift(self.lower_flange.station(1, 2)?, "lower_flange")?;
        // The flanges' ends follow the seams: the lower one overhangs the web at one end, the top one, which points the other way, at the other.
        let lower = Length::from_pm(shift(self.lower_flange, "lower_flange")?.pm().saturating_abs());
        let top = (self.top_lap + Length::from_pm(shift(self.top_flange, "top_flange")?.pm().saturating_abs())).length()?;
        let one_end = self.tab.max(lower).max(self.top_lap);
        let other_end = self.tab.max(top);
        let blank = Blank { length: (length + one_end + other_end).length()?, width: (self.lower_flange + web_height + self.top_flange).length()? };
        r.step(|| {
            Step::new("length of the blank")
                .formula("length + most of (tab, lower flange |cot phi|, lap) + most of (tab, lap + top flange |cot phi|)")
                .with("length", length)
                .with("tab", self.tab)
                .with("lower flange |cot phi|", lower)
                .with("lap + top flange |cot phi|", top)
                .gives(blank.length)
                .source(Source::geometry())
        });
        r.step(|| {
            Step::new("width of the blank")
                .formula("lower flange + web + top flange")
                .with("lower flange", self.lower_flange)
                .with("web", web_height)
                .with("top flange", self.top_flange)
                .gives(blank.width)
                .source(Source::CommonPractice)
        });
        cautions.push(Caution::new(BENDS_IGNORED, "blank", Source::CommonPractice));
        Ok(ClosurePiece { length, web_height, tab_bends, flange_cut: self.meeting, fasteners, flange_shift, blank, cautions })
    }
}
