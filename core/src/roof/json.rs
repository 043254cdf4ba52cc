//! A roof's input from JSON.

use super::RoofInput;
use crate::error::Error;
#[cfg(doc)]
use crate::error::ErrorKind;
use crate::record::read_json;

/// The longest text that is read, in bytes: 16 MiB, some ten thousand planes with room to spare.
const LIMIT: usize = 16 << 20;

impl RoofInput {
    /// Reads a roof from JSON.
    ///
    /// Whether the planes can be is not checked here: computing does that.
    ///
    /// # Errors
    /// [`ErrorKind::TooLarge`] for more than 16 MiB, [`ErrorKind::Parse`] for text that is not UTF-8, [`ErrorKind::Format`] for text that is not
    /// JSON, which is pointed at, or a value that does not belong where it stands, the kinds of the quantities for their texts, [`ErrorKind::Missing`] for a field that is not there,
    /// [`ErrorKind::Unknown`] for a name that is not known, [`ErrorKind::Conflict`] for a field given twice; each at its path.
    ///
    /// ```
    /// use seamwright::error::ErrorKind;
    /// use seamwright::record::Calculation;
    /// use seamwright::roof::RoofInput;
    /// let json = r#"{"planes": [{"name": "shed", "shape": {"space": {"outer": [
    ///     {"x": "0 ft", "y": "0 ft", "z": "10 ft"}, {"x": "40 ft", "y": "0 ft", "z": "10 ft"},
    ///     {"x": "40 ft", "y": "20 ft", "z": "20 ft"}, {"x": "0 ft", "y": "20 ft", "z": "20 ft"}]}}}]}"#;
    /// assert_eq!(RoofInput::from_json(json.as_bytes())?.compute()?.lines().len(), 4);
    /// let e = RoofInput::from_json(json.replace("\"20 ft\", \"z\"", "\"20\", \"z\"").as_bytes()).unwrap_err();
    /// assert_eq!((e.kind(), e.path()), (ErrorKind::Unit, "planes[0].shape.space.outer[2].y"));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn from_json(json: &[u8]) -> Result<RoofInput, Error> {
        read_json(json, LIMIT)
    }
}
