//! Calculations as classes, all of one shape: an input that core reads from its serial form, and what it computes.
//!
//! Where the macro is used, `Raise`, `Part` and core's `Calculation` are in scope.

/// Makes the class of a calculation: read from JSON or from a dict, computed or explained. Its result is a part, which pickles as this calculation.
macro_rules! calculation {
    ($(#[$meta:meta])* $class:ident($core:ty) -> $out:ident in $module:literal) => {
        $(#[$meta])*
        #[pyclass(module = $module, frozen, eq, hash)]
        #[derive(Clone, PartialEq)]
        pub(crate) struct $class(pub(crate) $core);

        impl ::core::hash::Hash for $class {
            fn hash<H: ::core::hash::Hasher>(&self, state: &mut H) {
                $crate::names::hash_written(&self.0, state);
            }
        }

        #[pymethods]
        impl $class {
            /// Reads it from JSON, as text or as bytes in UTF-8. A field that is unknown or missing is refused with its path.
            #[staticmethod]
            fn from_json(json: $crate::json::Json<'_>) -> PyResult<$class> {
                ::seamwright::record::read_json(json.bytes()?, ::seamwright::job::LONGEST_INPUT).raise().map($class)
            }

            /// Reads it from a dict of the same form, in which quantities may stand as themselves.
            #[staticmethod]
            fn from_dict(mapping: &Bound<'_, pyo3::types::PyDict>) -> PyResult<$class> {
                ::seamwright::record::read_json($crate::json::of_dict(mapping)?.as_bytes(), ::seamwright::job::LONGEST_INPUT).raise().map($class)
            }

            /// It as JSON text, with every quantity in its canonical form and every default written out.
            fn to_json(&self) -> PyResult<String> {
                $crate::json::written(&self.0)
            }

            /// It as a dict, with every quantity as text in its canonical form.
            fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, pyo3::types::PyDict>> {
                $crate::json::dict(py, &self.to_json()?)
            }

            /// What it is, in words.
            #[getter]
            fn title(&self) -> String {
                self.0.title()
            }

            /// The result.
            fn compute(slf: &Bound<'_, Self>) -> PyResult<$out> {
                slf.get().0.compute().raise().map(|out| $out::at(out, $crate::place::Place::under(slf, "compute")))
            }

            /// The result, and the worksheet.
            fn explain(slf: &Bound<'_, Self>) -> PyResult<($out, $crate::record::Worksheet)> {
                let (out, sheet) = slf.get().0.explain().raise()?;
                Ok(($out::at(out, $crate::place::Place::under(slf, "compute")), $crate::record::Worksheet(sheet)))
            }

            fn __repr__(&self) -> String {
                format!("<{}: {}>", stringify!($class), self.0.title())
            }

            fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (String,))> {
                Ok((slf.get_type().getattr("_restored")?, (slf.get().to_json()?,)))
            }

            /// For unpickling.
            #[staticmethod]
            fn _restored(text: $crate::given::Text) -> PyResult<$class> {
                $crate::json::restored(&text.0).map($class)
            }
        }
    };
}

pub(crate) use calculation;
