//! Planes that an input names.

use crate::error::{Error, ErrorKind, Faults};

/// The number of the plane of this name, which the input says at this path.
pub(crate) fn plane_number<'a>(planes: impl Iterator<Item = &'a str> + Clone, name: &str, path: impl Into<String>) -> Result<usize, Error> {
    planes.clone().position(|p| p == name).ok_or_else(|| {
        let names = planes.collect::<Vec<_>>().join(", ");
        Error::new(ErrorKind::Unknown, "the roof has no plane of this name").at(path).value_of(name).accepts(names)
    })
}

/// Whether the roof has the plane that the input names at this path; a fault where not. A roof without planes is refused by itself.
pub(crate) fn has_plane(planes: &[&str], name: &str, path: &str, faults: &mut Faults) -> bool {
    planes.is_empty() || faults.keep(plane_number(planes.iter().copied(), name, path)).is_some()
}
