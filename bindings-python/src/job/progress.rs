//! How far a job is, told to the caller's function, which may stop it.

use crate::error::raised;
use crate::given::{Text, Whole, described};
use crate::names::name_of;
use core::ops::ControlFlow;
#[cfg(feature = "stubs")]
use pyo3::PyTypeInfo;
use pyo3::exceptions::PyTypeError;
#[cfg(feature = "stubs")]
use pyo3::inspect::{PyStaticExpr, PyStaticOperator};
use pyo3::prelude::*;
#[cfg(feature = "stubs")]
use pyo3::types::PyNone;
use pyo3::types::{PyBool, PyType};
use seamwright::error::{Error, ErrorKind};
use seamwright::job as core_job;

/// How far the work is: so many things of a stage are done.
///
/// >>> from seamwright.job import Progress
/// >>> print(Progress("panels", 3, 8))
/// panels 3 of 8
#[pyclass(module = "seamwright.job", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Progress(core_job::Progress);

/// The stages, by the names that core writes them with.
const STAGES: [core_job::Stage; 7] = [
    core_job::Stage::Roof,
    core_job::Stage::Sections,
    core_job::Stage::Panels,
    core_job::Stage::Lines,
    core_job::Stage::Clips,
    core_job::Stage::Trims,
    core_job::Stage::Order,
];

fn stage(name: &Text) -> PyResult<core_job::Stage> {
    let mut known = Vec::with_capacity(STAGES.len());
    for stage in STAGES {
        let written = name_of(&stage)?;
        if written == name.0 {
            return Ok(stage);
        }
        known.push(written);
    }
    Err(raised(&Error::new(ErrorKind::Unknown, "not a stage of the work").at("stage").value_of(&name.0).accepts(known.join(", "))))
}

#[pymethods]
impl Progress {
    #[new]
    fn new(stage: Text, done: Whole<u32>, of: Whole<u32>) -> PyResult<Progress> {
        let count = |whole: Whole<u32>, path: &str| whole.at(path).map(|n| usize::try_from(n).unwrap_or(usize::MAX));
        Ok(Progress(core_job::Progress { stage: self::stage(&stage)?, done: count(done, "done")?, of: count(of, "of")? }))
    }

    /// The stage: roof, sections, panels, lines, clips, trims or order.
    #[getter]
    fn stage(&self) -> PyResult<String> {
        name_of(&self.0.stage)
    }

    /// How many of its things are done.
    #[getter]
    fn done(&self) -> usize {
        self.0.done
    }

    /// How many there are.
    #[getter]
    fn of(&self) -> usize {
        self.0.of
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> PyResult<String> {
        Ok(format!("Progress('{}', {}, {})", self.stage()?, self.0.done, self.0.of))
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyType>, (String, usize, usize))> {
        let p = slf.get();
        Ok((slf.get_type(), (p.stage()?, p.done(), p.of())))
    }
}

/// An argument that is a function to tell how far the work is.
pub(super) struct Callback(Py<PyAny>);

impl<'py> FromPyObject<'_, 'py> for Callback {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = PyStaticExpr::Subscript {
        value: &pyo3::type_hint_identifier!("collections.abc", "Callable"),
        slice: &PyStaticExpr::Tuple {
            elts: &[
                PyStaticExpr::List { elts: &[<Progress as PyTypeInfo>::TYPE_HINT] },
                PyStaticExpr::BinOp { left: &<PyBool as PyTypeInfo>::TYPE_HINT, op: PyStaticOperator::BitOr, right: &<PyNone as PyTypeInfo>::TYPE_HINT },
            ],
        },
    };

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if obj.is_callable() {
            Ok(Callback(obj.to_owned().unbind()))
        } else {
            Err(PyTypeError::new_err(format!("progress must be a function of one argument, not {}", described(&obj))))
        }
    }
}

/// Runs work of core without the interpreter's lock, and tells a function of Python's how far it is.
///
/// What that function raises stops the work and is raised again; so does an interrupt from the keyboard, with a function or without.
pub(super) fn told<T, W>(py: Python<'_>, progress: Option<Callback>, work: W) -> PyResult<Result<T, Error>>
where
    T: Send,
    W: Send + FnOnce(&mut dyn FnMut(core_job::Progress) -> ControlFlow<()>) -> Result<T, Error>,
{
    let (done, raised) = py.detach(|| {
        let mut raised = None;
        let mut tell = |at: core_job::Progress| {
            let goes_on = Python::attach(|py| {
                py.check_signals()?;
                progress.as_ref().map_or(Ok(true), |function| goes_on(function.0.bind(py), at))
            });
            match goes_on {
                Ok(true) => ControlFlow::Continue(()),
                Ok(false) => ControlFlow::Break(()),
                Err(exception) => {
                    raised = Some(exception);
                    ControlFlow::Break(())
                }
            }
        };
        let done = work(&mut tell);
        (done, raised)
    });
    raised.map_or(Ok(done), Err)
}

fn goes_on(function: &Bound<'_, PyAny>, at: core_job::Progress) -> PyResult<bool> {
    let answer = function.call1((Progress(at),))?;
    if answer.is_none() {
        return Ok(true);
    }
    answer
        .cast::<PyBool>()
        .map(|b| b.is_true())
        .map_err(|_| PyTypeError::new_err(format!("progress must return None, or False to stop the work, not {}", described(&answer))))
}
