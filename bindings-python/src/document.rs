//! Calculations that are read from a document, all of one shape: from JSON or a dict, and computed.

/// The class of what a calculation gives: one, or in brackets that of each in a list.
macro_rules! given_class {
    ([$out:ident]) => { Vec<$out> };
    ($out:ident) => { $out };
}

/// What a calculation gives, at its place under the calculation.
macro_rules! given_at {
    ([$out:ident], $slf:expr, $value:expr) => {
        $value
            .into_iter()
            .enumerate()
            .map(|(n, one)| <$out as $crate::place::Part>::at(one, $crate::place::Place::numbered($slf, "compute", n)))
            .collect::<Vec<_>>()
    };
    ($out:ident, $slf:expr, $value:expr) => {
        <$out as $crate::place::Part>::at($value, $crate::place::Place::under($slf, "compute"))
    };
}

/// Makes the class of a calculation: how it is read and written, what it gives, and its value semantics.
macro_rules! document {
    (
        $(#[$meta:meta])*
        $class:ident($core:ty) in $module:literal gives $out:tt
        $({ $($more:tt)* })?
    ) => {
        $crate::document::document! {
            $(#[$meta])*
            $class($core) in $module with {
                /// What it comes to.
                fn compute(slf: &Bound<'_, Self>) -> PyResult<$crate::document::given_class!($out)> {
                    let out = $crate::error::Raise::raise(::seamwright::record::Calculation::compute(&slf.get().0))?;
                    Ok($crate::document::given_at!($out, slf, out))
                }

                /// What it comes to, and the worksheet.
                fn explain(slf: &Bound<'_, Self>) -> PyResult<($crate::document::given_class!($out), $crate::record::Worksheet)> {
                    let (out, sheet) = $crate::error::Raise::raise(::seamwright::record::Calculation::explain(&slf.get().0))?;
                    Ok(($crate::document::given_at!($out, slf, out), $crate::record::Worksheet(sheet)))
                }

                $($($more)*)?
            }
        }
    };
    // With methods of its own to compute by.
    (
        $(#[$meta:meta])*
        $class:ident($core:ty) in $module:literal with { $($methods:tt)* }
    ) => {
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
                $crate::error::Raise::raise(::seamwright::record::read_json(json.bytes()?, ::seamwright::job::LONGEST_INPUT)).map($class)
            }

            /// Reads it from a dict of the same form, in which quantities may stand as themselves.
            #[staticmethod]
            fn from_dict(mapping: &Bound<'_, ::pyo3::types::PyDict>) -> PyResult<$class> {
                let json = $crate::json::of_dict(mapping)?;
                $crate::error::Raise::raise(::seamwright::record::read_json(json.as_bytes(), ::seamwright::job::LONGEST_INPUT)).map($class)
            }

            /// It as JSON text, with every quantity in its canonical form and every default written out.
            fn to_json(&self) -> PyResult<String> {
                $crate::json::written(&self.0)
            }

            /// It as a dict, with every quantity as text in its canonical form.
            fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, ::pyo3::types::PyDict>> {
                $crate::json::dict(py, &self.to_json()?)
            }

            /// What it is, in words.
            #[getter]
            fn title(&self) -> String {
                ::seamwright::record::Calculation::title(&self.0)
            }

            $($methods)*

            fn __repr__(&self) -> String {
                format!("<{}: {}>", stringify!($class), self.title())
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

pub(crate) use {document, given_at, given_class};
