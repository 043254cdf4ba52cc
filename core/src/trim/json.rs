//! Bend rules and flat patterns from JSON, with refusals that name the place in the text.

use super::flat::FlatPattern;
use super::rule::BendRule;
use crate::error::Error;
use crate::record::read_json;

/// The longest text that is read, in bytes: 1 MiB.
const LIMIT: usize = 1 << 20;

impl FlatPattern {
    /// Reads a profile with its rule from JSON.
    ///
    /// Whether the profile can be bent is not checked here: computing does that.
    ///
    /// # Errors
    /// By its [kind](crate::error::ErrorKind): `TooLarge` for more than 1 MiB, `Parse` for text that is not UTF-8, `Format` for text that is
    /// not JSON, which is pointed at, or a value that does not belong where it stands, `Missing` for a field that is not there, `Unknown` for a
    /// name that is not known, `Conflict` for a field given twice; each at its path.
    ///
    /// ```
    /// use seamwright::error::ErrorKind;
    /// use seamwright::trim::FlatPattern;
    /// let json = br#"{"profile": {"thickness": "0.6 mm", "legs": [], "painted": "upper"}, "rule": "din"}"#;
    /// let e = FlatPattern::from_json(json).unwrap_err();
    /// assert_eq!((e.kind(), e.path(), e.value()), (ErrorKind::Unknown, "rule", Some("din")));
    /// assert!(e.allowed().unwrap().contains("din-6935"));
    /// ```
    pub fn from_json(json: &[u8]) -> Result<FlatPattern, Error> {
        read_json(json, LIMIT)
    }
}

impl BendRule {
    /// Reads a bend rule from JSON.
    ///
    /// # Errors
    /// As [`FlatPattern::from_json`].
    ///
    /// ```
    /// use seamwright::trim::BendRule;
    /// assert_eq!(BendRule::from_json(br#""din-6935""#)?, BendRule::Din6935);
    /// let e = BendRule::from_json(br#"{"neutral-axis": {"factor": 1.5}}"#).unwrap_err();
    /// assert_eq!(e.path(), "neutral-axis.factor");
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn from_json(json: &[u8]) -> Result<BendRule, Error> {
        read_json(json, LIMIT)
    }
}
