//! Minimum slopes, compared as ratios.
//!
//! The codes print a percentage beside each ratio, rounded to whole numbers: "2 %" beside 1/4:12, which is 2.0833 %. The ratio is the rule.
//! Soldered flat-seam roofing has no numeric minimum of its own in the codes that were searched, so there is no row for it here.

use super::{Pitch, cautions};
use crate::record::{Caution, Seen, Source};
use crate::units::Length;
use std::borrow::Cow;

const RUN: Length = Length::inches(12);

/// The least pitch that a document allows for a covering.
///
/// ```
/// use seamwright::pitch::{Pitch, SlopeRule};
/// let check = SlopeRule::IBC_STANDING_SEAM.check(&Pitch::parse("2 %")?);
/// assert!(!check.passes());
/// assert_eq!(check.source().to_string(), "IBC (2012), 1507.4.2 [secondary]");
/// assert!(SlopeRule::IBC_STANDING_SEAM.check(&Pitch::parse("1/4:12")?).passes());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SlopeRule {
    /// The covering that the rule speaks of.
    pub covering: Cow<'static, str>,
    /// The least pitch.
    pub limit: Pitch,
    /// The whole percentage that the document prints beside it, if it prints one; it is never compared.
    pub printed_percentage: Option<u8>,
    /// Where the rule stands.
    pub source: Source,
}

macro_rules! rules {
    ($($(#[$doc:meta])* $name:ident = $covering:expr, $limit:expr, $printed:expr, $source:expr;)+) => {
        impl SlopeRule {
            $($(#[$doc])*
            pub const $name: SlopeRule =
                SlopeRule { covering: Cow::Borrowed($covering), limit: Pitch::of($limit, RUN), printed_percentage: $printed, source: $source };)+

            /// Every rule that the library holds.
            pub const ALL: &'static [SlopeRule] = &[$(SlopeRule::$name),+];
        }
    };
}

const UNSEALED: &str = "lapped, nonsoldered seams without lap sealant";
const SEALED: &str = "lapped, nonsoldered seams with applied lap sealant";
const STANDING: &str = "standing seams";

rules! {
    /// Lapped, nonsoldered seams without lap sealant: 3:12.
    IBC_LAPPED_UNSEALED = UNSEALED, Length::inches(3), Some(25), Source::published("IBC", "2012", "1507.4.2", Seen::Secondary);
    /// Lapped, nonsoldered seams with applied lap sealant: 1/2:12.
    IBC_LAPPED_SEALED = SEALED, Length::inches_64(32), Some(4), Source::published("IBC", "2012", "1507.4.2", Seen::Secondary);
    /// Standing seams: 1/4:12.
    IBC_STANDING_SEAM = STANDING, Length::inches_64(16), Some(2), Source::published("IBC", "2012", "1507.4.2", Seen::Secondary);
    /// Metal roof shingles: 3:12.
    IBC_METAL_SHINGLES = "metal roof shingles", Length::inches(3), Some(25), Source::published("North Carolina State Building Code: Building Code", "2018", "1507.5.2", Seen::Text);
    /// The residential code of Florida, without lap sealant: 3:12.
    FLORIDA_LAPPED_UNSEALED = UNSEALED, Length::inches(3), Some(25), Source::published("Florida Building Code, Residential", "5th edition", "R905.10.2.1", Seen::Secondary);
    /// The residential code of Florida, with applied lap sealant: 1/2:12.
    FLORIDA_LAPPED_SEALED = SEALED, Length::inches_64(32), Some(4), Source::published("Florida Building Code, Residential", "5th edition", "R905.10.2.1", Seen::Secondary);
    /// The residential code of Florida, standing seams: 1/4:12.
    FLORIDA_STANDING_SEAM = STANDING, Length::inches_64(16), Some(2), Source::published("Florida Building Code, Residential", "5th edition", "R905.10.2.1", Seen::Secondary);
    /// The residential code, without lap sealant: 3:12.
    IRC_LAPPED_UNSEALED = UNSEALED, Length::inches(3), Some(25), Source::published("IRC", "2006 to 2021", "R905.10.2", Seen::Memory);
    /// The residential code, with applied lap sealant: 1/2:12.
    IRC_LAPPED_SEALED = SEALED, Length::inches_64(32), Some(4), Source::published("IRC", "2006 to 2021", "R905.10.2", Seen::Memory);
    /// The residential code, standing seams: 1/4:12.
    IRC_STANDING_SEAM = STANDING, Length::inches_64(16), Some(2), Source::published("IRC", "2006 to 2021", "R905.10.2", Seen::Memory);
    /// The residential code, metal roof shingles: 3:12.
    IRC_METAL_SHINGLES = "metal roof shingles", Length::inches(3), Some(25), Source::published("IRC", "2006 to 2021", "R905.4.2", Seen::Memory);
}

impl SlopeRule {
    /// A rule from another document: the panel's own approval, the engineer, a local code.
    ///
    /// ```
    /// use seamwright::pitch::{Pitch, SlopeRule};
    /// use seamwright::record::Source;
    /// let rule = SlopeRule::given("double-lock seams", Pitch::parse("1/2:12")?, Source::user());
    /// assert!(!rule.check(&Pitch::parse("0.48:12")?).passes());
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn given(covering: impl Into<Cow<'static, str>>, limit: Pitch, source: Source) -> SlopeRule {
        SlopeRule { covering: covering.into(), limit, printed_percentage: None, source }
    }

    /// Compares a pitch with the rule: ratios exactly, degrees through the tangent.
    #[must_use]
    pub fn check(&self, pitch: &Pitch) -> SlopeCheck {
        let passes = pitch.at_least(&self.limit);
        let mut cautions = Vec::new();
        let caution = |code| Caution::new(code, "pitch", self.source.clone()).arg("pitch", pitch).arg("limit", self.limit).arg("covering", &self.covering);
        if !passes {
            cautions.push(caution(cautions::BELOW_MINIMUM_SLOPE));
            if let Some(printed) = self.printed_percentage
                && pitch.percent() >= f64::from(printed)
            {
                cautions.push(caution(cautions::ROUNDED_PERCENTAGE).arg("printed", printed));
            }
        }
        if self.source.rests_on_memory() {
            cautions.push(caution(cautions::MINIMUM_FROM_MEMORY));
        }
        SlopeCheck { rule: self.clone(), pitch: *pitch, passes, cautions }
    }
}

/// The answer to a slope check, with the rule that gave it.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct SlopeCheck {
    rule: SlopeRule,
    pitch: Pitch,
    passes: bool,
    cautions: Vec<Caution>,
}

impl SlopeCheck {
    /// Whether the pitch is the limit or steeper.
    #[must_use]
    pub fn passes(&self) -> bool {
        self.passes
    }

    /// The pitch that was checked.
    #[must_use]
    pub fn pitch(&self) -> Pitch {
        self.pitch
    }

    /// The rule.
    #[must_use]
    pub fn rule(&self) -> &SlopeRule {
        &self.rule
    }

    /// The document and clause of the rule.
    #[must_use]
    pub fn source(&self) -> &Source {
        &self.rule.source
    }

    /// What to know of the answer; their subject is `pitch`.
    #[must_use]
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }
}
