//! Which trims hold others and shed no water themselves.

use super::parts::JunctionTrim;

/// Cleats and strips, by their names in every section; where there are two, each says its side after a comma.
const HOLDERS: &[&str] = &["continuous cleat", "offset cleat", "hook strip", "joint cleat"];

impl JunctionTrim {
    /// Whether it is a cleat or a strip: it holds the edge of another part, and its pieces butt.
    ///
    /// ```
    /// use seamwright::job::Job;
    /// use seamwright::record::Calculation;
    /// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
    /// let eave = &packet.junctions.iter().find(|j| j.name == "eave 1").expect("the demo has eaves").section;
    /// assert!(eave.trim("hook strip").unwrap().is_holder() && !eave.trim("eave trim").unwrap().is_holder());
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub fn is_holder(&self) -> bool {
        HOLDERS.contains(&self.name.split(',').next().unwrap_or_default())
    }
}
