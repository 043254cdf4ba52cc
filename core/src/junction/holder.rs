//! Which trims hold others and shed no water themselves.

use super::parts::JunctionTrim;

/// A cleat or a strip: it holds the edge of another part and sheds no water itself.
///
/// ```
/// use seamwright::junction::Holder;
/// assert_eq!(Holder::of("continuous cleat, outside"), Some(Holder::ContinuousCleat));
/// assert_eq!(Holder::of("eave trim"), None);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Holder {
    /// A cleat along a face, which a trim's hem hooks.
    ContinuousCleat,
    /// A cleat over a flange or a pan, which the panels' folds hook.
    OffsetCleat,
    /// A strip along an eave, which the panels' folds hook.
    HookStrip,
    /// A cleat on the curb of an expansion joint, which its cap hooks or is riveted to.
    JointCleat,
}

impl Holder {
    /// Every kind.
    pub const ALL: [Holder; 4] = [Holder::ContinuousCleat, Holder::OffsetCleat, Holder::HookStrip, Holder::JointCleat];

    /// What it is called in every section; where there are two, each says its side after a comma.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Holder::ContinuousCleat => "continuous cleat",
            Holder::OffsetCleat => "offset cleat",
            Holder::HookStrip => "hook strip",
            Holder::JointCleat => "joint cleat",
        }
    }

    /// The kind of a trim of this name, if it is one.
    #[must_use]
    pub fn of(trim: &str) -> Option<Holder> {
        let name = trim.split(',').next().unwrap_or_default();
        Holder::ALL.into_iter().find(|h| h.name() == name)
    }
}

impl JunctionTrim {
    /// Whether it is a cleat or a strip: it holds the edge of another part, and no lap of it is sealed.
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
        Holder::of(&self.name).is_some()
    }
}
