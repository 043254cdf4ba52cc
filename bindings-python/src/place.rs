//! Parts of a result as classes: each holds one value of core, and its place in the result that it was read from, by which it pickles.

use pyo3::prelude::*;
use pyo3::types::PyTuple;

/// A step from a thing to a part of it.
#[derive(Debug, Clone, Copy, IntoPyObject)]
pub(crate) enum Step {
    /// An attribute, or a method that gives the part.
    Name(&'static str),
    /// A number in a list.
    Number(usize),
}

/// Where a part stands: what it was read from, and the steps to it.
pub(crate) struct Place {
    root: Py<PyAny>,
    steps: Vec<Step>,
}

impl Place {
    /// Directly under a thing that pickles by itself.
    pub(crate) fn under<T>(root: &Bound<'_, T>, name: &'static str) -> Place {
        Place { root: root.as_any().clone().unbind(), steps: vec![Step::Name(name)] }
    }

    /// In a list of a thing that pickles by itself.
    pub(crate) fn numbered<T>(root: &Bound<'_, T>, list: &'static str, number: usize) -> Place {
        Place { root: root.as_any().clone().unbind(), steps: vec![Step::Name(list), Step::Number(number)] }
    }

    fn then(&self, py: Python<'_>, more: &[Step]) -> Place {
        Place { root: self.root.clone_ref(py), steps: [self.steps.as_slice(), more].concat() }
    }

    /// What a part reduces to: the function that finds it again, and the root with the steps. The root is then written once, however many parts are.
    pub(crate) fn reduced<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyTuple>)> {
        let steps = self.steps.iter().map(|step| Ok(step.into_pyobject(py)?.into_any()));
        let arguments = core::iter::once(Ok(self.root.bind(py).clone())).chain(steps).collect::<PyResult<Vec<_>>>()?;
        Ok((py.import("seamwright._parts")?.getattr("find")?, PyTuple::new(py, arguments)?))
    }
}

/// A class whose instances are parts of a result.
pub(crate) trait Part: Sized {
    /// The part in core.
    type Core: Clone;
    /// The part at its place.
    fn at(core: Self::Core, place: Place) -> Self;
}

/// The part that is being read, from which its own parts are read.
pub(crate) struct Here<'a, 'py> {
    pub(crate) py: Python<'py>,
    pub(crate) place: &'a Place,
}

impl Here<'_, '_> {
    /// The place of a part of it.
    pub(crate) fn place(&self, name: &'static str) -> Place {
        self.place.then(self.py, &[Step::Name(name)])
    }

    /// A part of it.
    pub(crate) fn one<P: Part>(&self, name: &'static str, part: &P::Core) -> P {
        P::at(part.clone(), self.place(name))
    }

    /// Those of a list of it.
    pub(crate) fn all<P: Part>(&self, name: &'static str, parts: &[P::Core]) -> Vec<P> {
        let at = |number| self.place.then(self.py, &[Step::Name(name), Step::Number(number)]);
        parts.iter().enumerate().map(|(number, part)| P::at(part.clone(), at(number))).collect()
    }
}

/// Makes the class of a part: its getters, each from the value of core, and what every part has.
macro_rules! part {
    (
        $(#[$meta:meta])*
        $class:ident($core:ty) in $module:literal,
        shown $shown:ident: $text:expr;
        $($(#[$doc:meta])* $name:ident($it:ident $(, $here:ident)?) -> $ty:ty = $value:expr;)*
        $({ $($more:tt)* })?
    ) => {
        $(#[$meta])*
        #[pyclass(module = $module, frozen, eq, hash)]
        pub(crate) struct $class {
            core: $core,
            place: $crate::place::Place,
        }

        impl PartialEq for $class {
            fn eq(&self, other: &$class) -> bool {
                self.core == other.core
            }
        }

        impl ::core::hash::Hash for $class {
            fn hash<H: ::core::hash::Hasher>(&self, state: &mut H) {
                $crate::names::hash_written(&self.core, state);
            }
        }

        impl $crate::place::Part for $class {
            type Core = $core;

            fn at(core: $core, place: $crate::place::Place) -> $class {
                $class { core, place }
            }
        }

        #[pymethods]
        impl $class {
            $(
                $(#[$doc])*
                #[getter]
                fn $name(&self, py: Python<'_>) -> PyResult<$ty> {
                    let $it = &self.core;
                    $(let $here = &$crate::place::Here { py, place: &self.place };)?
                    let _ = py;
                    Ok($value)
                }
            )*

            $($($more)*)?

            fn __repr__(&self) -> PyResult<String> {
                let $shown = &self.core;
                Ok(format!("<{}: {}>", stringify!($class), $text))
            }

            fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Bound<'py, pyo3::types::PyTuple>)> {
                self.place.reduced(py)
            }
        }
    };
}

pub(crate) use part;

/// The cautions of a result.
pub(crate) fn cautions(all: &[seamwright::record::Caution]) -> Vec<crate::record::Caution> {
    all.iter().map(crate::record::Caution::from).collect()
}

/// Lengths of core as Python has them.
pub(crate) fn lengths(all: &[seamwright::units::Length]) -> Vec<crate::units::Length> {
    all.iter().copied().map(crate::units::Length).collect()
}
