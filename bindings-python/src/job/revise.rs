//! A job before and a job now.

use crate::document::document;
use crate::layout::Revised;
use crate::place::part;
use pyo3::prelude::*;
use seamwright::job as core_job;

document! {
    /// Two states of a job, and what is formed by the first: which panels change, are new or are gone, and what can be cut down, with no mark renumbered.
    ///
    /// >>> from seamwright import InputError
    /// >>> from seamwright.job import JobRevision
    /// >>> try:
    /// ...     JobRevision.from_dict({"before": {}, "now": {}})
    /// ... except InputError as e:
    /// ...     print(e.kind, e.path)
    /// missing before.format
    JobRevision(core_job::JobRevision) in "seamwright.job" gives JobRevised
}

part! {
    /// A job's revised list.
    JobRevised(core_job::JobRevised) in "seamwright.job",
    shown of: format_args!("{} rows, {} places change", of.revised.rows.len(), of.panels.len());

    /// The list.
    revised(of, here) -> Revised = here.one("revised", &of.revised);
    /// The places whose panel changes, is new or is gone.
    panels(of, here) -> Vec<PanelChange> = here.all("panels", &of.panels);
}

part! {
    /// A panel whose place has another piece than before.
    PanelChange(core_job::PanelChange) in "seamwright.job",
    shown of: format_args!("{}, strip {}, run {}", of.plane, of.strip, of.run);

    /// The plane.
    plane(of) -> String = of.plane.clone();
    /// The strip, from the left.
    strip(of) -> usize = of.strip;
    /// The run of the strip, from the foot.
    run(of) -> usize = of.run;
    /// The mark before; ``None`` for a place that is new.
    before(of) -> Option<String> = of.before.clone();
    /// The mark now, as revised; ``None`` for a place that is gone.
    now(of) -> Option<String> = of.now.clone();
}
