//! What Python hands in: a wrapped value or its text, whole numbers, names of units. Each refusal says what would be accepted.

use crate::error::Raise;
use pyo3::PyClass;
#[cfg(feature = "stubs")]
use pyo3::PyTypeInfo;
use pyo3::exceptions::PyTypeError;
#[cfg(feature = "stubs")]
use pyo3::inspect::PyStaticExpr;
use pyo3::prelude::*;
use pyo3::pyclass::boolean_struct::True;
use pyo3::types::{PyBool, PyFloat, PyInt, PyString};
use seamwright::error::{Error, ErrorKind};

/// A class that holds one value of core.
pub(crate) trait Wraps: PyClass<Frozen = True> + Sync {
    /// The value's type in core.
    type Core: Copy + core::str::FromStr<Err = Error>;
    /// What it is, with an example of its text.
    const WHAT: &'static str;
    /// The value.
    fn core(&self) -> Self::Core;
}

/// An argument that is a value of the class, or its text with the unit. A bare number is refused.
pub(crate) struct Given<W: Wraps>(Result<W::Core, Error>);

impl<W: Wraps> Given<W> {
    /// The value, or core's refusal.
    pub(crate) fn core(self) -> Result<W::Core, Error> {
        self.0
    }

    /// The value.
    pub(crate) fn value(self) -> PyResult<W::Core> {
        self.0.raise()
    }

    /// The value; a refusal names this argument.
    pub(crate) fn at(self, path: &str) -> PyResult<W::Core> {
        self.0.raise_at(path)
    }
}

impl<'py, W: Wraps> FromPyObject<'_, 'py> for Given<W> {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr =
        PyStaticExpr::BinOp { left: &<W as PyTypeInfo>::TYPE_HINT, op: pyo3::inspect::PyStaticOperator::BitOr, right: &<PyString as PyTypeInfo>::TYPE_HINT };

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(wrapped) = obj.cast::<W>() {
            Ok(Given(Ok(wrapped.get().core())))
        } else if obj.is_instance_of::<PyString>() {
            let Text(text) = obj.extract()?;
            Ok(Given(text.parse()))
        } else {
            Err(unlike::<W>(&obj))
        }
    }
}

/// An argument that is several of them: a list, a tuple, a generator.
pub(crate) struct GivenAll<W: Wraps>(Vec<Given<W>>);

impl<W: Wraps> GivenAll<W> {
    /// The values; a refusal names this argument and the place in it.
    pub(crate) fn at(self, path: &str) -> PyResult<Vec<W::Core>> {
        self.0.into_iter().enumerate().map(|(i, given)| given.at(&format!("{path}[{i}]"))).collect()
    }
}

impl<'py, W: Wraps> FromPyObject<'_, 'py> for GivenAll<W> {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr =
        pyo3::type_hint_subscript!(pyo3::type_hint_identifier!("collections.abc", "Iterable"), <Given<W> as FromPyObject<'_, '_>>::INPUT_TYPE);

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        // Text is iterable too, letter by letter, which nobody means.
        if obj.is_instance_of::<PyString>() {
            return Err(PyTypeError::new_err(format!("several are expected, each {} (a {} or text), not one text", W::WHAT, W::NAME)));
        }
        obj.try_iter()?.map(|item| item?.extract::<Given<W>>()).collect::<PyResult<_>>().map(GivenAll)
    }
}

/// The refusal of anything that is neither the class nor text.
pub(crate) fn unlike<W: Wraps>(obj: &Bound<'_, PyAny>) -> PyErr {
    let reason = if obj.is_instance_of::<PyFloat>() || (obj.is_instance_of::<PyInt>() && !obj.is_instance_of::<PyBool>()) {
        "a bare number has no unit"
    } else {
        "not of the type expected"
    };
    PyTypeError::new_err(format!("{reason}: give {} (a {} or text), not {}", W::WHAT, W::NAME, described(obj)))
}

/// The type of an object, with its value if it is a number.
pub(crate) fn described(obj: &Bound<'_, PyAny>) -> String {
    let name = obj.get_type().name().map_or_else(|_| "an object".to_owned(), |n| n.to_string());
    if (obj.is_instance_of::<PyFloat>() || obj.is_instance_of::<PyInt>())
        && let Ok(text) = obj.repr()
    {
        return format!("the {name} {text}");
    }
    name
}

/// An argument that is text.
pub(crate) struct Text(pub(crate) String);

impl<'py> FromPyObject<'_, 'py> for Text {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = <PyString as PyTypeInfo>::TYPE_HINT;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        let text = obj.cast::<PyString>().map_err(|_| PyTypeError::new_err(format!("text is expected, not {}", described(&obj))))?;
        // Half of a surrogate pair is text in Python and nowhere else.
        match text.to_str() {
            Ok(text) => Ok(Text(text.to_owned())),
            Err(_) => {
                Err(Error::new(ErrorKind::Parse, "the text is not whole Unicode").value_of(text.to_string_lossy()).accepts("text without lone surrogates"))
                    .raise()
            }
        }
    }
}

/// An argument that is a whole number; one that is too large for core is refused as other input is.
pub(crate) struct Whole<T>(Result<T, Error>);

impl<T> Whole<T> {
    /// The number; a refusal names this argument.
    pub(crate) fn at(self, path: &str) -> PyResult<T> {
        self.0.raise_at(path)
    }
}

/// The whole numbers that core takes.
pub(crate) trait Integer: TryFrom<i128> {
    /// The range in words.
    const RANGE: &'static str;
}

impl Integer for i16 {
    const RANGE: &'static str = "-32768 to 32767";
}
impl Integer for i32 {
    const RANGE: &'static str = "-2147483648 to 2147483647";
}
impl Integer for u32 {
    const RANGE: &'static str = "0 to 4294967295";
}
impl Integer for i64 {
    const RANGE: &'static str = "-9223372036854775808 to 9223372036854775807";
}

impl<'py, T: Integer> FromPyObject<'_, 'py> for Whole<T> {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = <i64 as FromPyObject<'_, '_>>::INPUT_TYPE;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        match obj.extract::<i128>() {
            Ok(n) => Ok(Whole(T::try_from(n).map_err(|_| beyond(&n.to_string(), T::RANGE)))),
            Err(_) if obj.is_instance_of::<PyInt>() => Ok(Whole(Err(beyond("an integer of more than 128 bits", T::RANGE)))),
            Err(_) => Err(PyTypeError::new_err(format!("a whole number is expected, not {}", described(&obj)))),
        }
    }
}

fn beyond(value: &str, range: &'static str) -> Error {
    Error::new(ErrorKind::Overflow, "a whole number beyond the range").value_of(value).accepts(range)
}
