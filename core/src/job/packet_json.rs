//! The packet as text.

use super::packet::Packet;
use crate::error::{Error, ErrorKind};

impl Packet {
    /// The packet as JSON, in one line: fields in snake_case, choices in kebab-case, quantities as text with their unit.
    ///
    /// # Errors
    /// [`ErrorKind::Internal`] if the packet cannot be written, which would be a fault of the library.
    ///
    /// ```
    /// use seamwright::job::Job;
    /// use seamwright::record::Calculation;
    /// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
    /// assert!(packet.to_json()?.starts_with(r#"{"format":"seamwright-packet","version":1,"#));
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    pub fn to_json(&self) -> Result<String, Error> {
        serde_json::to_string(self).map_err(|e| Error::new(ErrorKind::Internal, "the packet cannot be written as JSON").value_of(e))
    }
}
