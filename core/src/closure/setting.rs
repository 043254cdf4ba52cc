//! The lines that the crew strikes for a row of closures.

use crate::error::{Error, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::units::Length;

/// The plane of a closure from which distances are measured.
///
/// ```
/// use seamwright::closure::{ClosureSetting, Face};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let lines = ClosureSetting { set_back: Length::inches(2), face: Face::Web, lower_flange: Length::inches(2), top_flange: Length::inches(1) }.compute()?;
/// assert_eq!(lines.web, Length::inches(2));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Face {
    /// The web.
    Web,
    /// The downhill edge of the top flange.
    LeadingEdge,
}

/// A row of closures set back from the edge of the trim above it.
///
/// # Errors
/// Computing refuses a negative set-back or top flange, and a lower flange of zero or less
/// ([`ErrorKind::OutOfRange`](crate::error::ErrorKind::OutOfRange)).
///
/// ```
/// use seamwright::closure::{ClosureSetting, Face};
/// use seamwright::practice;
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let lines = ClosureSetting {
///     set_back: practice::closure::SET_BACK,
///     face: Face::LeadingEdge,
///     lower_flange: Length::parse("2 1/2\"")?,
///     top_flange: Length::parse("1 1/8\"")?,
/// }
/// .compute()?;
/// assert_eq!(lines.fasteners, Length::parse("2 7/8\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct ClosureSetting {
    /// From the trim's edge back, up the slope, to the closure's face.
    pub set_back: Length,
    /// Which plane the face is.
    pub face: Face,
    /// Width of the lower flange.
    pub lower_flange: Length,
    /// Width of the top flange.
    pub top_flange: Length,
}

/// Lines of a row of closures, each measured up the slope from the trim's edge, square to it.
///
/// ```
/// use seamwright::closure::{ClosureSetting, Face};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let lines = ClosureSetting { set_back: Length::inches(2), face: Face::Web, lower_flange: Length::inches(2), top_flange: Length::inches(1) }.compute()?;
/// assert_eq!((lines.leading_edge, lines.fasteners, lines.back), (Length::inches(1), Length::inches(3), Length::inches(4)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct ClosureLines {
    /// The downhill edge of the top flange; negative where it would show under the trim's edge.
    pub leading_edge: Length,
    /// The web.
    pub web: Length,
    /// The centre of the lower flange: tape and fasteners.
    pub fasteners: Length,
    /// The uphill edge of the lower flange.
    pub back: Length,
}

impl Calculation for ClosureSetting {
    type Out = ClosureLines;

    fn title(&self) -> String {
        "lines of a row of closures".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<ClosureLines, Error> {
        let mut faults = Faults::default();
        faults.keep(self.set_back.not_negative("set_back"));
        faults.keep(self.lower_flange.positive("lower_flange"));
        faults.keep(self.top_flange.not_negative("top_flange"));
        faults.check()?;
        let web = match self.face {
            Face::Web => self.set_back,
            Face::LeadingEdge => (self.set_back + self.top_flange).length()?,
        };
        r.step(|| {
            let s = Step::new("web from the trim's edge").with("set-back", self.set_back).gives(web).source(Source::geometry());
            match self.face {
                Face::Web => s.formula("set-back"),
                Face::LeadingEdge => s.formula("set-back + top flange").with("top flange", self.top_flange),
            }
        });
        let leading_edge = (web - self.top_flange).length()?;
        let fasteners = (web + self.lower_flange.station(1, 2)?).length()?;
        r.step(|| {
            Step::new("fastener line from the trim's edge")
                .formula("web + lower flange / 2")
                .with("web", web)
                .with("lower flange", self.lower_flange)
                .gives(fasteners)
                .source(Source::geometry())
        });
        let back = (web + self.lower_flange).length()?;
        Ok(ClosureLines { leading_edge, web, fasteners, back })
    }
}
