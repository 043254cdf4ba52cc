//! Calculations by their names, for `seamwright.job`: a plain Python document in, JSON out.

use crate::error::{Raise, raised};
use crate::given::{Text, described};
use crate::json::written;
use crate::metal::Gauge;
use crate::pitch::Pitch;
use crate::record::Worksheet;
use crate::trim::{BendRule, Profile};
use crate::units::{
    Angle, Area, BendAngle, Density, Expansion, Force, Length, LengthFormat, LineLoad, LineMass, Mass, Pressure, ShopRounding, SurfaceMass, Temperature,
    TemperatureDifference, Volume,
};
use pyo3::exceptions::PyTypeError;
#[cfg(feature = "stubs")]
use pyo3::inspect::PyStaticExpr;
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyList, PyString, PyTuple};
use seamwright::error::{Error, ErrorKind};
use seamwright::job;

/// How deep a document may nest, as in the reader of JSON.
const DEEPEST: usize = 128;

/// A document: JSON text, or plain Python values with the library's own quantities among them.
pub(crate) struct Document(pub(crate) String);

impl<'py> FromPyObject<'_, 'py> for Document {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = pyo3::type_hint_identifier!("builtins", "object");

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if obj.is_instance_of::<PyString>() {
            let Text(text) = obj.extract()?;
            return Ok(Document(text));
        }
        let mut writer = Writer::default();
        writer.value(&obj)?;
        Ok(Document(writer.json))
    }
}

/// Many documents.
pub(crate) struct Documents(Vec<String>);

impl<'py> FromPyObject<'_, 'py> for Documents {
    type Error = PyErr;

    #[cfg(feature = "stubs")]
    const INPUT_TYPE: PyStaticExpr = pyo3::type_hint_identifier!("builtins", "list");

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        let items: Vec<Bound<'py, PyAny>> = if let Ok(items) = obj.cast::<PyList>() {
            items.iter().collect()
        } else if let Ok(items) = obj.cast::<PyTuple>() {
            items.iter().collect()
        } else {
            return Err(PyTypeError::new_err(format!("a list of documents is expected, not {}", described(&obj))));
        };
        let mut out = Vec::with_capacity(items.len());
        for (i, item) in items.iter().enumerate() {
            if item.is_instance_of::<PyString>() {
                let Text(text) = item.extract()?;
                out.push(text);
            } else {
                let mut writer = Writer { json: String::new(), path: vec![format!("inputs[{i}]")] };
                writer.value(item)?;
                out.push(writer.json);
            }
        }
        Ok(Documents(out))
    }
}

/// Writes a document as JSON, knowing where in it it is.
#[derive(Default)]
struct Writer {
    json: String,
    path: Vec<String>,
}

impl Writer {
    fn here(&self) -> String {
        let path = self.path.concat();
        path.strip_prefix('.').unwrap_or(&path).to_owned()
    }

    fn inside(&mut self, step: String, value: &Bound<'_, PyAny>) -> PyResult<()> {
        if self.path.len() == DEEPEST {
            // A document that holds itself comes here too. The beginning of the path says where to look.
            self.path.truncate(4);
            let deep = Error::new(ErrorKind::TooLarge, "the document nests too deeply").at(self.here()).accepts(format!("at most {DEEPEST} levels"));
            return Err(raised(&deep));
        }
        self.path.push(step);
        self.value(value)?;
        self.path.pop();
        Ok(())
    }

    fn text(&mut self, text: &Bound<'_, PyString>) -> PyResult<()> {
        let Ok(text) = text.to_str() else {
            let half = Error::new(ErrorKind::Parse, "the text is not whole Unicode").at(self.here());
            return Err(raised(&half.value_of(text.to_string_lossy()).accepts("text without lone surrogates")));
        };
        self.json.push_str(&serde_json::Value::from(text).to_string());
        Ok(())
    }

    fn value(&mut self, obj: &Bound<'_, PyAny>) -> PyResult<()> {
        if obj.is_none() {
            self.json.push_str("null");
        } else if let Ok(truth) = obj.cast::<PyBool>() {
            self.json.push_str(if truth.is_true() { "true" } else { "false" });
        } else if let Ok(text) = obj.cast::<PyString>() {
            self.text(text)?;
        } else if obj.is_instance_of::<PyInt>() {
            let digits = obj.py().get_type::<PyInt>().call_method1("__repr__", (obj,))?;
            self.json.push_str(digits.cast::<PyString>()?.to_str()?);
        } else if let Ok(number) = obj.cast::<PyFloat>() {
            let number = number.value();
            if !number.is_finite() {
                return Err(raised(&Error::new(ErrorKind::NotFinite, "not a finite number").at(self.here()).value_of(number).accepts("a finite number")));
            }
            self.json.push_str(&serde_json::Value::from(number).to_string());
        } else if let Ok(fields) = obj.cast::<PyDict>() {
            self.fields(fields)?;
        } else if let Ok(items) = obj.cast::<PyList>() {
            self.items(items.iter())?;
        } else if let Ok(items) = obj.cast::<PyTuple>() {
            self.items(items.iter())?;
        } else if let Ok(profile) = obj.cast::<Profile>() {
            self.json.push_str(&written(&profile.get().0)?);
        } else if let Ok(rule) = obj.cast::<BendRule>() {
            self.json.push_str(&written(&rule.get().0)?);
        } else if is_written_as_text(obj) {
            self.text(&obj.str()?)?;
        } else {
            return Err(self.unlike("a dict, list, text, number or quantity is expected", obj));
        }
        Ok(())
    }

    fn unlike(&self, expected: &str, obj: &Bound<'_, PyAny>) -> PyErr {
        let here = self.here();
        let at = if here.is_empty() { "the document" } else { &here };
        PyTypeError::new_err(format!("{at}: {expected}, not {}", described(obj)))
    }

    fn fields(&mut self, fields: &Bound<'_, PyDict>) -> PyResult<()> {
        self.json.push('{');
        for (i, (key, value)) in fields.iter().enumerate() {
            let Ok(key) = key.cast::<PyString>() else {
                return Err(self.unlike("a field's name must be text", &key));
            };
            if i > 0 {
                self.json.push(',');
            }
            self.text(key)?;
            self.json.push(':');
            self.inside(format!(".{key}"), &value)?;
        }
        self.json.push('}');
        Ok(())
    }

    fn items<'py>(&mut self, items: impl Iterator<Item = Bound<'py, PyAny>>) -> PyResult<()> {
        self.json.push('[');
        for (i, item) in items.enumerate() {
            if i > 0 {
                self.json.push(',');
            }
            self.inside(format!("[{i}]"), &item)?;
        }
        self.json.push(']');
        Ok(())
    }
}

/// Whether the value is one of the library's that core writes as text.
fn is_written_as_text(obj: &Bound<'_, PyAny>) -> bool {
    macro_rules! any_of {
        ($($class:ty),+) => { $(obj.is_instance_of::<$class>())||+ };
    }
    any_of!(
        Length,
        LengthFormat,
        ShopRounding,
        Angle,
        BendAngle,
        Area,
        Volume,
        Mass,
        Force,
        Pressure,
        LineLoad,
        SurfaceMass,
        LineMass,
        Density,
        Expansion,
        Temperature,
        TemperatureDifference,
        Pitch,
        Gauge
    )
}

/// The names of all calculations.
#[pyfunction]
pub(crate) fn _calculation_names() -> Vec<&'static str> {
    job::names().collect()
}

/// The result of a calculation as JSON.
#[pyfunction]
pub(crate) fn _compute_json(name: Text, inputs: Document) -> PyResult<String> {
    job::compute_json(&name.0, &inputs.0).raise()
}

/// The results of a calculation for many inputs as one list in JSON.
#[pyfunction]
pub(crate) fn _compute_all_json(name: Text, inputs: Documents) -> PyResult<String> {
    Ok(format!("[{}]", job::compute_all_json(&name.0, &inputs.0).raise()?.join(",")))
}

/// The result of a calculation as JSON, and its worksheet.
#[pyfunction]
pub(crate) fn _explain_json(name: Text, inputs: Document) -> PyResult<(String, Worksheet)> {
    let (out, sheet) = job::explain_json(&name.0, &inputs.0).raise()?;
    Ok((out, Worksheet(sheet)))
}
