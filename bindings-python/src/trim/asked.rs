//! Calculations of trims that are read from JSON or a dict, all of one shape.

/// Makes the class of a calculation: what it is read from, and the class of its result.
macro_rules! asked {
    ($(#[$meta:meta])* $class:ident gives $made:ident) => {
        $(#[$meta])*
        #[pyclass(module = "seamwright.trim", frozen, eq, hash)]
        #[derive(Clone, PartialEq)]
        pub(crate) struct $class(seamwright::trim::$class);

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
                $crate::error::Raise::raise(seamwright::record::read_json(json.bytes()?, seamwright::job::LONGEST_INPUT)).map($class)
            }

            /// Reads it from a dict of the same form, in which quantities may stand as themselves.
            #[staticmethod]
            fn from_dict(mapping: &Bound<'_, pyo3::types::PyDict>) -> PyResult<$class> {
                let text = $crate::json::of_dict(mapping)?;
                $crate::error::Raise::raise(seamwright::record::read_json(text.as_bytes(), seamwright::job::LONGEST_INPUT)).map($class)
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
                seamwright::record::Calculation::title(&self.0)
            }

            /// The result.
            fn compute(slf: &Bound<'_, Self>) -> PyResult<$made> {
                let made = $crate::error::Raise::raise(seamwright::record::Calculation::compute(&slf.get().0))?;
                Ok($crate::place::Part::at(made, $crate::place::Place::under(slf, "compute")))
            }

            /// The result, and the worksheet.
            fn explain(slf: &Bound<'_, Self>) -> PyResult<($made, $crate::record::Worksheet)> {
                let (made, sheet) = $crate::error::Raise::raise(seamwright::record::Calculation::explain(&slf.get().0))?;
                Ok(($crate::place::Part::at(made, $crate::place::Place::under(slf, "compute")), $crate::record::Worksheet(sheet)))
            }

            fn __repr__(&self) -> String {
                format!("<{}: {}>", stringify!($class), seamwright::record::Calculation::title(&self.0))
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

pub(crate) use asked;
