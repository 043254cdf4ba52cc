//! Structured input: JSON text, or what JSON holds as Python's own objects.

use crate::error::Raise;
use crate::given::{Text, Wraps};
use crate::pitch::Pitch;
use crate::units::{
    Angle, Area, BendAngle, Density, Expansion, Force, Length, LengthFormat, LineLoad, LineMass, Mass, Pressure, SurfaceMass, Temperature,
    TemperatureDifference, Volume,
};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyList, PyString, PyTuple};
use serde_json::{Map, Number, Value};

/// Levels of nesting that are read, as the reader of JSON text has it.
const DEPTH: usize = 127;

/// The JSON text of a mapping. Quantities may stand in it as themselves or as text.
pub(crate) fn json_of(mapping: &Bound<'_, PyDict>) -> PyResult<String> {
    Ok(value_of(mapping.as_any(), "", DEPTH)?.to_string())
}

/// The value as Python's own objects.
pub(crate) fn objects_of<'py>(py: Python<'py>, value: &Value) -> PyResult<Bound<'py, PyAny>> {
    Ok(match value {
        Value::Null => py.None().into_bound(py),
        Value::Bool(b) => PyBool::new(py, *b).to_owned().into_any(),
        Value::Number(n) => match n.as_i64() {
            Some(whole) => PyInt::new(py, whole).into_any(),
            None => PyFloat::new(py, n.as_f64().unwrap_or_default()).into_any(),
        },
        Value::String(s) => PyString::new(py, s).into_any(),
        Value::Array(items) => {
            let list = PyList::empty(py);
            for item in items {
                list.append(objects_of(py, item)?)?;
            }
            list.into_any()
        }
        Value::Object(fields) => {
            let dict = PyDict::new(py);
            for (name, field) in fields {
                dict.set_item(name, objects_of(py, field)?)?;
            }
            dict.into_any()
        }
    })
}

fn value_of(object: &Bound<'_, PyAny>, path: &str, depth: usize) -> PyResult<Value> {
    let Some(deeper) = depth.checked_sub(1) else {
        return Err(seamwright::error::Error::new(seamwright::error::ErrorKind::TooLarge, "nested too deeply").accepts(format!("at most {DEPTH} levels")))
            .raise_at(path);
    };
    if object.is_none() {
        Ok(Value::Null)
    } else if let Ok(text) = object.cast::<PyString>() {
        Ok(Value::String(text.extract::<Text>()?.0))
    } else if let Ok(truth) = object.cast::<PyBool>() {
        Ok(Value::Bool(truth.is_true()))
    } else if let Ok(fields) = object.cast::<PyDict>() {
        let mut map = Map::new();
        for (name, field) in fields.iter() {
            let Text(name) = name.extract()?;
            let inside = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
            map.insert(name, value_of(&field, &inside, deeper)?);
        }
        Ok(Value::Object(map))
    } else if object.is_instance_of::<PyList>() || object.is_instance_of::<PyTuple>() {
        let items = object.try_iter()?.enumerate().map(|(i, item)| value_of(&item?, &format!("{path}[{i}]"), deeper));
        Ok(Value::Array(items.collect::<PyResult<_>>()?))
    } else if let Some(number) = number_of(object) {
        Ok(Value::Number(number))
    } else if let Some(text) = quantity_of(object) {
        Ok(Value::String(text))
    } else {
        let name = object.get_type().name().map_or_else(|_| "an object".to_owned(), |n| n.to_string());
        let place = if path.is_empty() { String::new() } else { format!("{path}: ") };
        Err(PyTypeError::new_err(format!("{place}a dict, a list, text, a quantity, a number, True, False or None is expected, not {name}")))
    }
}

fn number_of(object: &Bound<'_, PyAny>) -> Option<Number> {
    if object.is_instance_of::<PyInt>() {
        object.extract::<i64>().map(Number::from).or_else(|_| object.extract::<u64>().map(Number::from)).ok()
    } else {
        object.cast::<PyFloat>().ok().and_then(|f| Number::from_f64(f.value()))
    }
}

/// The canonical text of a quantity.
fn quantity_of(object: &Bound<'_, PyAny>) -> Option<String> {
    fn text<W: Wraps<Core: core::fmt::Display>>(object: &Bound<'_, PyAny>) -> Option<String> {
        object.cast::<W>().ok().map(|wrapped| wrapped.get().core().to_string())
    }
    let readers = [
        text::<Length>,
        text::<Angle>,
        text::<Pitch>,
        text::<BendAngle>,
        text::<LengthFormat>,
        text::<Temperature>,
        text::<TemperatureDifference>,
        text::<Area>,
        text::<Volume>,
        text::<Mass>,
        text::<Force>,
        text::<Pressure>,
        text::<LineLoad>,
        text::<SurfaceMass>,
        text::<LineMass>,
        text::<Density>,
        text::<Expansion>,
    ];
    readers.iter().find_map(|read| read(object))
}
