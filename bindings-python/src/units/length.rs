//! `seamwright.units.Length`.

use super::{Area, LengthFormat};
use crate::error::Raise;
use crate::given::{Given, GivenAll, Text, Whole, Wraps, unlike};
#[cfg(feature = "stubs")]
use pyo3::PyTypeInfo;
use pyo3::exceptions::PyTypeError;
#[cfg(feature = "stubs")]
use pyo3::inspect::PyStaticExpr;
use pyo3::prelude::*;
use pyo3::types::{PyFloat, PyInt, PyType};
use seamwright::units as core;

/// A length, held as a whole number of picometres (``pm``), so that inches and millimetres add, compare and hash without drift.
///
/// Made from text with its unit, in any notation of a tape, a drawing or a spreadsheet; a bare number is refused.
///
/// >>> from seamwright.units import Length
/// >>> Length("12'-3 5/8\"") == Length("3749.675 mm")
/// True
/// >>> format(Length("10'") + Length('3 1/2"'), "ft-in/16")
/// '10\'-3 1/2"'
#[pyclass(module = "seamwright.units", frozen, eq, ord, hash)]
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) struct Length(pub(crate) core::Length);

impl Wraps for Length {
    type Core = core::Length;
    const WHAT: &'static str = "a length with its unit, such as '3 5/8\"' or '92.075 mm'";
    fn core(&self) -> core::Length {
        self.0
    }
}

/// A ratio of whole numbers on its way to Python's own.
pub(crate) struct Fraction {
    numerator: i64,
    denominator: i64,
}

impl<'py> IntoPyObject<'py> for Fraction {
    type Target = PyAny;
    type Output = Bound<'py, PyAny>;
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const OUTPUT_TYPE: PyStaticExpr = pyo3::type_hint_identifier!("fractions", "Fraction");

    fn into_pyobject(self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        // Imported when first needed: it is heavier than this whole package.
        py.import("fractions")?.getattr("Fraction")?.call1((self.numerator, self.denominator))
    }
}

fn sum(total: core::Sum) -> PyResult<Length> {
    total.length().raise().map(Length)
}

/// The other side of `+` and `-`. Extraction never fails, because Python would hide the reason behind its own.
enum Operand {
    Length(core::Length),
    Refused(PyErr),
    /// An object that may itself know what to do.
    Other,
}

impl<'py> FromPyObject<'_, 'py> for Operand {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = <Length as PyTypeInfo>::TYPE_HINT;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(if let Ok(length) = obj.cast::<Length>() {
            Operand::Length(length.get().0)
        } else if obj.is_instance_of::<PyFloat>() || obj.is_instance_of::<PyInt>() {
            Operand::Refused(unlike::<Length>(&obj))
        } else {
            Operand::Other
        })
    }
}

/// The other side of `*`.
enum Times {
    Whole(i32),
    Refused(PyErr),
    Other,
}

impl<'py> FromPyObject<'_, 'py> for Times {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = <i64 as FromPyObject<'_, '_>>::INPUT_TYPE;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(if obj.is_instance_of::<PyFloat>() {
            Times::Refused(PyTypeError::new_err("a length is multiplied by whole numbers only; for a part of it use station(i, n)"))
        } else if let Ok(n) = obj.extract::<Whole<i32>>() {
            n.at("times").map_or_else(Times::Refused, Times::Whole)
        } else {
            Times::Other
        })
    }
}

/// A length, or Python's `NotImplemented`.
struct LengthOrNot(Option<Length>);

impl<'py> IntoPyObject<'py> for LengthOrNot {
    type Target = PyAny;
    type Output = Bound<'py, PyAny>;
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const OUTPUT_TYPE: PyStaticExpr = <Length as PyTypeInfo>::TYPE_HINT;

    fn into_pyobject(self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        match self.0 {
            Some(length) => Ok(length.into_pyobject(py)?.into_any()),
            None => Ok(py.NotImplemented().into_bound(py)),
        }
    }
}

#[pymethods]
impl Length {
    /// No length.
    #[classattr]
    const ZERO: Length = Length(core::Length::ZERO);
    /// The greatest length.
    #[classattr]
    const MAX: Length = Length(core::Length::MAX);
    /// The least length.
    #[classattr]
    const MIN: Length = Length(core::Length::MIN);

    #[new]
    fn new(length: Given<Length>) -> PyResult<Length> {
        length.value().map(Length)
    }

    /// Reads a length with its unit.
    ///
    /// >>> Length.parse("3 5/8\"").pm
    /// 92075000000
    #[staticmethod]
    fn parse(text: Text) -> PyResult<Length> {
        core::Length::parse(&text.0).raise().map(Length)
    }

    /// Reads a length; ``unit`` (in, ft, mm, cm, m, um) is that of a number without one.
    ///
    /// >>> Length.parse_in("39", "in") == Length('39"')
    /// True
    #[staticmethod]
    fn parse_in(text: Text, unit: Text) -> PyResult<Length> {
        let unit = core::LengthUnit::parse(&unit.0).raise_at("unit")?;
        core::Length::parse_in(&text.0, unit).raise().map(Length)
    }

    /// Reads a length with its unit, and refuses one that is not a whole number of picometres.
    #[staticmethod]
    fn parse_exact(text: Text) -> PyResult<Length> {
        core::Length::parse_exact(&text.0).raise().map(Length)
    }

    /// A length of so many picometres.
    #[staticmethod]
    fn from_pm(pm: Whole<i64>) -> PyResult<Length> {
        pm.at("pm").map(|pm| Length(core::Length::from_pm(pm)))
    }

    /// The one conversion from a floating-point number: exact in its bits, then rounded half-even to a picometre.
    ///
    /// >>> Length.from_f64(0.5, "in")
    /// Length('12.7 mm')
    #[staticmethod]
    fn from_f64(value: f64, unit: Text) -> PyResult<Length> {
        let unit = core::LengthUnit::parse(&unit.0).raise_at("unit")?;
        core::Length::from_f64(value, unit).raise_at("value").map(Length)
    }

    /// So many whole inches.
    #[staticmethod]
    fn inches(n: Whole<i16>) -> PyResult<Length> {
        n.at("n").map(|n| Length(core::Length::inches(n)))
    }

    /// So many whole feet.
    #[staticmethod]
    fn feet(n: Whole<i16>) -> PyResult<Length> {
        n.at("n").map(|n| Length(core::Length::feet(n)))
    }

    /// So many 64ths of an inch.
    #[staticmethod]
    fn inches_64(n: Whole<i32>) -> PyResult<Length> {
        n.at("n").map(|n| Length(core::Length::inches_64(n)))
    }

    /// So many thousandths of an inch.
    #[staticmethod]
    fn mils(n: Whole<i32>) -> PyResult<Length> {
        n.at("n").map(|n| Length(core::Length::mils(n)))
    }

    /// So many whole micrometres.
    #[staticmethod]
    fn micrometres(n: Whole<i32>) -> PyResult<Length> {
        n.at("n").map(|n| Length(core::Length::micrometres(n)))
    }

    /// The sum of lengths, checked once at the end.
    ///
    /// >>> Length.total(["1'", "6\""])
    /// Length('457.2 mm')
    #[staticmethod]
    fn total(lengths: GivenAll<Length>) -> PyResult<Length> {
        core::Length::total(&lengths.at("lengths")?).raise().map(Length)
    }

    /// Picometres, exact.
    #[getter]
    fn pm(&self) -> i64 {
        self.0.pm()
    }

    /// The number of this unit (in, ft, mm, cm, m, um) in floating point.
    ///
    /// >>> Length("1'").get("in")
    /// 12.0
    fn get(&self, unit: Text) -> PyResult<f64> {
        Ok(self.0.get(core::LengthUnit::parse(&unit.0).raise_at("unit")?))
    }

    /// The number of this unit (in, ft, mm, cm, m, um), exactly.
    ///
    /// >>> Length("3 5/8\"").fraction("in")
    /// Fraction(29, 8)
    fn fraction(&self, unit: Text) -> PyResult<Fraction> {
        Ok(Fraction { numerator: self.0.pm(), denominator: core::LengthUnit::parse(&unit.0).raise_at("unit")?.picometres() })
    }

    /// The length as text in this format, as ``format(length, "ft-in/16")`` gives it.
    fn format(&self, format: Given<LengthFormat>) -> PyResult<String> {
        Ok(self.0.format(format.at("format")?).raise()?.as_str().to_owned())
    }

    /// The end of the ``i``-th of ``n`` equal parts, rounded once: stations do not accumulate error.
    ///
    /// >>> Length("10\"").station(3, 3) == Length("10\"")
    /// True
    fn station(&self, i: Whole<u32>, n: Whole<u32>) -> PyResult<Length> {
        self.0.station(i.at("i")?, n.at("n")?).raise().map(Length)
    }

    /// The area of a rectangle with these two sides.
    fn times(&self, other: Given<Length>) -> PyResult<Area> {
        Ok(Area(self.0.times(other.at("other")?)))
    }

    /// Whether it is less than nothing.
    #[getter]
    fn is_negative(&self) -> bool {
        self.0.is_negative()
    }

    /// Whether it is more than nothing.
    #[getter]
    fn is_positive(&self) -> bool {
        self.0.is_positive()
    }

    fn __add__(&self, value: Operand) -> PyResult<LengthOrNot> {
        match value {
            Operand::Length(other) => sum(self.0 + other).map(|l| LengthOrNot(Some(l))),
            Operand::Refused(reason) => Err(reason),
            Operand::Other => Ok(LengthOrNot(None)),
        }
    }

    fn __sub__(&self, value: Operand) -> PyResult<LengthOrNot> {
        match value {
            Operand::Length(other) => sum(self.0 - other).map(|l| LengthOrNot(Some(l))),
            Operand::Refused(reason) => Err(reason),
            Operand::Other => Ok(LengthOrNot(None)),
        }
    }

    fn __radd__(&self, value: Operand) -> PyResult<LengthOrNot> {
        self.__add__(value)
    }

    fn __rsub__(&self, value: Operand) -> PyResult<LengthOrNot> {
        match value {
            Operand::Length(other) => sum(other - self.0).map(|l| LengthOrNot(Some(l))),
            Operand::Refused(reason) => Err(reason),
            Operand::Other => Ok(LengthOrNot(None)),
        }
    }

    fn __mul__(&self, value: Times) -> PyResult<LengthOrNot> {
        match value {
            Times::Whole(n) => sum(self.0 * n).map(|l| LengthOrNot(Some(l))),
            Times::Refused(reason) => Err(reason),
            Times::Other => Ok(LengthOrNot(None)),
        }
    }

    fn __rmul__(&self, value: Times) -> PyResult<LengthOrNot> {
        self.__mul__(value)
    }

    fn __neg__(&self) -> PyResult<Length> {
        sum(-self.0)
    }

    fn __pos__(&self) -> Length {
        *self
    }

    fn __abs__(&self) -> PyResult<Length> {
        if self.0.is_negative() { self.__neg__() } else { Ok(*self) }
    }

    fn __bool__(&self) -> bool {
        self.0 != core::Length::ZERO
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Length('{}')", self.0)
    }

    fn __format__(&self, format_spec: Text) -> PyResult<String> {
        if format_spec.0.is_empty() {
            return Ok(self.__str__());
        }
        let format = core::LengthFormat::parse(&format_spec.0).raise_at("format_spec")?;
        Ok(self.0.format(format).raise()?.as_str().to_owned())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String,)) {
        (slf.get_type(), (slf.get().__str__(),))
    }
}
