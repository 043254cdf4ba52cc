//! The public functions that cases name, called with text.

use crate::case::Values;
use seamwright::error::Error;
use seamwright::units::{
    Area, AreaUnit, Density, DensityUnit, Expansion, ExpansionUnit, Force, ForceUnit, Length, LengthFormat, LengthUnit, LineLoad, LineLoadUnit, LineMass,
    LineMassUnit, Mass, MassUnit, Pressure, PressureUnit, Rounding, ShopRounding, SurfaceMass, SurfaceMassUnit, Temperature, TemperatureDifference,
    TemperatureDifferenceUnit, TemperatureScale, Volume, VolumeUnit,
};

/// Why an operation gave no outputs.
#[derive(Debug)]
pub enum Fault {
    /// The case itself is wrong: an unknown operation, or an input that is not there.
    Case(String),
    /// The library refused.
    Refused(Error),
}

impl From<Error> for Fault {
    fn from(e: Error) -> Fault {
        Fault::Refused(e)
    }
}

struct Inputs<'a>(&'a Values);

impl Inputs<'_> {
    fn text(&self, name: &str) -> Result<&str, Fault> {
        self.0.get(name).map(String::as_str).ok_or_else(|| Fault::Case(format!("no input {name}")))
    }

    fn length(&self, name: &str) -> Result<Length, Fault> {
        Ok(Length::parse(self.text(name)?)?)
    }
}

fn one(name: &str, value: impl ToString) -> Result<Values, Fault> {
    Ok(Values::from([(name.to_owned(), value.to_string())]))
}

/// Runs a case's operation.
///
/// # Errors
/// A fault of the case, or the library's refusal.
pub fn run(op: &str, inputs: &Values) -> Result<Values, Fault> {
    let i = Inputs(inputs);
    match op {
        "units.length.parse" => one("length", i.length("text")?),
        "units.length.format" => one("text", i.length("length")?.format(LengthFormat::parse(i.text("format")?)?)?),
        "units.length.round" => {
            let rule = ShopRounding::new(i.length("increment")?, Rounding::parse(i.text("rounding")?)?)?;
            one("length", rule.round(i.length("length")?)?)
        }
        "units.length.station" => {
            let count = |name: &str| -> Result<u32, Fault> { i.text(name)?.parse().map_err(|_| Fault::Case(format!("{name} is not a count"))) };
            one("length", i.length("length")?.station(count("i")?, count("n")?)?)
        }
        "units.convert" => one("value", convert(i.text("quantity")?, i.text("value")?, i.text("unit")?)?),
        _ => Err(Fault::Case(format!("no operation {op}"))),
    }
}

fn convert(quantity: &str, value: &str, unit: &str) -> Result<f64, Fault> {
    macro_rules! in_unit {
        ($quantity:ty, $unit:ty) => {{
            let unit = <$unit>::ALL.iter().find(|u| u.symbol() == unit).ok_or_else(|| Fault::Case(format!("no unit {unit}")))?;
            Ok(<$quantity>::parse(value)?.get(*unit))
        }};
    }
    match quantity {
        "length" => Ok(Length::parse(value)?.get(LengthUnit::parse(unit)?)),
        "area" => in_unit!(Area, AreaUnit),
        "volume" => in_unit!(Volume, VolumeUnit),
        "mass" => in_unit!(Mass, MassUnit),
        "force" => in_unit!(Force, ForceUnit),
        "pressure" => in_unit!(Pressure, PressureUnit),
        "line-load" => in_unit!(LineLoad, LineLoadUnit),
        "surface-mass" => in_unit!(SurfaceMass, SurfaceMassUnit),
        "line-mass" => in_unit!(LineMass, LineMassUnit),
        "density" => in_unit!(Density, DensityUnit),
        "expansion" => in_unit!(Expansion, ExpansionUnit),
        "temperature-difference" => in_unit!(TemperatureDifference, TemperatureDifferenceUnit),
        "temperature" => {
            let scale = match unit {
                "degC" => TemperatureScale::Celsius,
                "degF" => TemperatureScale::Fahrenheit,
                "K" => TemperatureScale::Kelvin,
                _ => return Err(Fault::Case(format!("no scale {unit}"))),
            };
            Ok(Temperature::parse(value)?.get(scale))
        }
        _ => Err(Fault::Case(format!("no quantity {quantity}"))),
    }
}
