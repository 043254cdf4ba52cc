//! Names of core's plain enumerations, as jobs write them: read and written by core's own serial form, so that no table stands here.

use crate::error::{Raise, raised};
use crate::given::Text;
use core::fmt::Debug;
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use seamwright::error::{Error, ErrorKind};
use serde::Serialize;
use serde::de::DeserializeOwned;

/// The value with this name; a refusal names the argument and lists the names.
pub(crate) fn named<T: DeserializeOwned>(name: &Text, path: &str) -> PyResult<T> {
    serde_json::from_value(serde_json::Value::String(name.0.clone())).map_err(|e| {
        let reason = e.to_string();
        let accepted = reason.split_once("expected ").map_or("one of its names", |(_, names)| names).replace('`', "");
        raised(&Error::new(ErrorKind::Unknown, "not a name that is known here").at(path).value_of(&name.0).accepts(accepted))
    })
}

/// The name of a value.
pub(crate) fn name_of<T: Serialize>(value: &T) -> PyResult<String> {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(name)) => Ok(name),
        _ => Err(Error::new(ErrorKind::Internal, "a value without a name")).raise(),
    }
}

/// The name of a value that may carry figures with it.
pub(crate) fn tag_of<T: Serialize>(value: &T) -> PyResult<String> {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(name)) => Ok(name),
        Ok(serde_json::Value::Object(fields)) if fields.len() == 1 => Ok(fields.into_iter().map(|(name, _)| name).collect()),
        _ => Err(Error::new(ErrorKind::Internal, "a value without a name")).raise(),
    }
}

/// Hashes what core compares but does not hash: equal values are written alike.
pub(crate) fn hash_written<H: Hasher>(value: &impl Debug, state: &mut H) {
    format!("{value:?}").hash(state);
}
