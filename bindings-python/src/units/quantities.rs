//! The physical quantities of `seamwright.units`, all of one shape.

use crate::error::Raise;
use crate::given::{Given, Text, Wraps};
use pyo3::prelude::*;
use pyo3::types::PyType;
use seamwright::error::{Error, ErrorKind};
use seamwright::units as core;

/// Makes the class of a quantity that core holds in one SI unit.
macro_rules! quantity {
    ($name:ident, $unit:ident, $what:literal, $doc:literal) => {
        #[doc = $doc]
        #[pyclass(module = "seamwright.units", frozen, eq, ord, hash)]
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub(crate) struct $name(pub(crate) core::$name);

        impl Wraps for $name {
            type Core = core::$name;
            const WHAT: &'static str = $what;
            fn core(&self) -> core::$name {
                self.0
            }
        }

        impl $name {
            fn unit(symbol: &Text) -> PyResult<core::$unit> {
                core::$unit::ALL
                    .iter()
                    .copied()
                    .find(|u| u.symbol() == symbol.0)
                    .ok_or_else(|| Error::new(ErrorKind::Unit, "not a unit of this quantity").value_of(&symbol.0).accepts(Self::units().join(", ")))
                    .raise_at("unit")
            }
        }

        #[pymethods]
        impl $name {
            /// None of it.
            #[classattr]
            const ZERO: $name = $name(core::$name::ZERO);

            #[new]
            fn __new__(quantity: Given<$name>) -> PyResult<$name> {
                quantity.value().map($name)
            }

            /// So much of this unit.
            #[staticmethod]
            fn new(value: f64, unit: Text) -> PyResult<$name> {
                core::$name::new(value, Self::unit(&unit)?).raise_at("value").map($name)
            }

            /// Reads a number with its unit.
            #[staticmethod]
            fn parse(text: Text) -> PyResult<$name> {
                core::$name::parse(&text.0).raise().map($name)
            }

            /// The symbols of the units, the one that is held first.
            #[staticmethod]
            fn units() -> Vec<&'static str> {
                core::$unit::ALL.iter().map(|u| u.symbol()).collect()
            }

            /// The number of this unit.
            fn get(&self, unit: Text) -> PyResult<f64> {
                Ok(self.0.get(Self::unit(&unit)?))
            }

            fn __str__(&self) -> String {
                self.0.to_string()
            }

            fn __repr__(&self) -> String {
                format!(concat!(stringify!($name), "('{}')"), self.0)
            }

            fn __reduce__<'py>(slf: &Bound<'py, Self>) -> (Bound<'py, PyType>, (String,)) {
                (slf.get_type(), (slf.get().__str__(),))
            }
        }
    };
}

quantity!(Area, AreaUnit, "an area with its unit, such as '12 ft2'", "An area: ``12 ft2``, ``1 square`` (100 ft2).");
quantity!(Volume, VolumeUnit, "a volume with its unit, such as '10 floz'", "A volume: ``300 mL``, ``10.1 floz``.");
quantity!(Mass, MassUnit, "a mass with its unit, such as '2 lb'", "A mass: ``2 lb``, ``0.9 kg``.");
quantity!(Force, ForceUnit, "a force with its unit, such as '200 lbf'", "A force: ``200 lbf``, ``0.9 kN``.");
quantity!(Pressure, PressureUnit, "a pressure with its unit, such as '30 psf'", "A pressure or a stress: ``30 psf``, ``1.4 kPa``, ``36 ksi``.");
quantity!(LineLoad, LineLoadUnit, "a line load with its unit, such as '60 lbf/ft'", "A force for each length: ``60 lbf/ft``.");
quantity!(
    SurfaceMass,
    SurfaceMassUnit,
    "a mass per area with its unit, such as '275 g/m2'",
    "A mass for each area, of a sheet or of its coating: ``275 g/m2``."
);
quantity!(LineMass, LineMassUnit, "a mass per length with its unit, such as '1 lb/ft'", "A mass for each length, of a trim: ``1 lb/ft``.");
quantity!(Density, DensityUnit, "a density with its unit, such as '8.89 g/cm3'", "A density: ``8.89 g/cm3``.");
quantity!(Expansion, ExpansionUnit, "an expansion with its unit, such as '17.3e-6 /K'", "A coefficient of linear thermal expansion: ``17.3e-6 /K``.");
quantity!(
    TemperatureDifference,
    TemperatureDifferenceUnit,
    "a temperature difference with its unit, such as '100 K'",
    "A difference of temperature, never a temperature: ``200 degF`` here is 111 K."
);
