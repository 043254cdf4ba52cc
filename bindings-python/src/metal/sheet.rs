//! `seamwright.metal.Sheet`.

use super::Gauge;
use crate::error::Raise;
use crate::names::name_of;
use crate::place::part;
use crate::units::{Length, SurfaceMass};
use pyo3::prelude::*;
use seamwright::metal as core_metal;

part! {
    /// A sheet of one alloy, of a thickness, with the coating that a coated steel carries.
    Sheet(core_metal::Sheet) in "seamwright.metal",
    shown sheet: sheet;

    /// The alloy.
    alloy(sheet) -> String = name_of(&sheet.alloy())?;
    /// The thickness, coating included.
    thickness(sheet) -> Length = Length(sheet.thickness());
    /// The gauge that it was given by; ``None`` where it was given as a length.
    gauge(sheet) -> Option<Gauge> = match sheet.thickness_as_given() {
        core_metal::Thickness::Gauge(gauge) => Some(Gauge(gauge)),
        core_metal::Thickness::Length(_) => None,
    };
    /// The designation of its coating; ``None`` where it carries none.
    coating(sheet) -> Option<String> = sheet.coating().as_ref().map(name_of).transpose()?;
    /// The thickness without the coating.
    base_thickness(sheet) -> Length = Length(sheet.base_thickness().raise()?);
    /// Mass for each area of flat sheet, both sides of the coating included.
    surface_mass(sheet) -> SurfaceMass = SurfaceMass(sheet.surface_mass().raise()?);
    {
        fn __str__(&self) -> String {
            self.core.to_string()
        }
    }
}
