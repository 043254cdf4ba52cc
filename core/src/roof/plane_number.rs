//! Planes that an input names.

use crate::error::{Error, ErrorKind};

/// The number of the plane of this name, which the input says at this path.
pub(super) fn plane_number<'a>(planes: impl Iterator<Item = &'a str> + Clone, name: &str, path: String) -> Result<usize, Error> {
    planes.clone().position(|p| p == name).ok_or_else(|| {
        let names = planes.collect::<Vec<_>>().join(", ");
        Error::new(ErrorKind::Unknown, "the roof has no plane of this name").at(path).value_of(name).accepts(names)
    })
}
