//! `seamwright.job.Job`.

use super::Packet;
use super::progress::{Callback, told};
use crate::error::Raise;
use crate::given::Text;
use crate::json::{Json, dict, of_dict, restored, written};
use crate::panel::Panel;
use crate::record::Worksheet;
use crate::roof::RoofInput;
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyDict;
use seamwright::job as core_job;

/// A job: a measured roof, a panel, metals, a detail for each kind of junction, supplies, and the engineer's schedule where there is one.
///
/// It is read from JSON or from a dict of the same form, in which quantities may stand as themselves. A field that is unknown, missing or of
/// another kind is refused with its path.
///
/// >>> from seamwright import InputError
/// >>> from seamwright.job import Job
/// >>> try:
/// ...     Job.from_dict({"format": "seamwright-job", "version": 1, "colour": "red"})
/// ... except InputError as e:
/// ...     print(e.kind, e.path)
/// unknown colour
#[pyclass(module = "seamwright.job", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct Job(pub(super) core_job::Job);

impl Hash for Job {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (self.0.version, &self.0.name, self.0.roof.planes.len()).hash(state);
    }
}

#[pymethods]
impl Job {
    /// Reads a job from JSON, as text or as bytes in UTF-8.
    #[staticmethod]
    fn from_json(py: Python<'_>, json: Json<'_>) -> PyResult<Job> {
        let bytes = json.bytes()?;
        py.detach(|| core_job::Job::from_json(bytes)).raise().map(Job)
    }

    /// Reads a job from a dict.
    #[staticmethod]
    fn from_dict(py: Python<'_>, mapping: &Bound<'_, PyDict>) -> PyResult<Job> {
        let json = of_dict(mapping)?;
        py.detach(|| core_job::Job::from_json(json.as_bytes())).raise().map(Job)
    }

    /// The job as JSON text, with every quantity in its canonical form and every default written out.
    fn to_json(&self, py: Python<'_>) -> PyResult<String> {
        py.detach(|| written(&self.0))
    }

    /// The job as a dict, with every quantity as text in its canonical form.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        dict(py, &self.to_json(py)?)
    }

    /// What it is called.
    #[getter]
    fn name(&self) -> &str {
        &self.0.name
    }

    /// Its roof, as given.
    #[getter]
    fn roof(&self) -> RoofInput {
        RoofInput(self.0.roof.clone())
    }

    /// Its panel.
    #[getter]
    fn panel(&self) -> Panel {
        Panel(self.0.panel)
    }

    /// The job worked out.
    ///
    /// ``progress`` is called with a ``Progress`` after every part of the work. Where it returns ``False`` the work stops with a
    /// ``SeamwrightError`` of the kind ``cancelled``; what it raises is raised. Other threads of Python run meanwhile.
    #[pyo3(signature = (progress=None))]
    fn compute(slf: &Bound<'_, Self>, progress: Option<Callback>) -> PyResult<Packet> {
        let job = &slf.get().0;
        told(slf.py(), progress, |tell| job.packet(tell))?.raise().map(|packet| Packet::of(slf.clone().unbind(), packet))
    }

    /// The job worked out, and the worksheet. ``progress`` is as in ``compute``.
    #[pyo3(signature = (progress=None))]
    fn explain(slf: &Bound<'_, Self>, progress: Option<Callback>) -> PyResult<(Packet, Worksheet)> {
        let job = &slf.get().0;
        let (packet, sheet) = told(slf.py(), progress, |tell| job.packet_explained(tell))?.raise()?;
        Ok((Packet::of(slf.clone().unbind(), packet), Worksheet(sheet)))
    }

    fn __repr__(&self) -> String {
        format!("<Job {:?}: {} planes>", self.0.name, self.0.roof.planes.len())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (String,))> {
        Ok((slf.get_type().getattr("_restored")?, (slf.get().to_json(slf.py())?,)))
    }

    /// For unpickling.
    #[staticmethod]
    fn _restored(text: Text) -> PyResult<Job> {
        restored(&text.0).map(Job)
    }
}
