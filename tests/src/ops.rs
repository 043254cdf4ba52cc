//! The public functions that cases name, called with text; every other name is a calculation's.

use crate::by_name;
use crate::case::{Case, Values};
use seamwright::error::Error;
use seamwright::metal::{Gauge, GaugeSystem};
use seamwright::movement::LengthChange;
use seamwright::pitch::{Corner, Framing, Pitch};
use seamwright::record::Calculation;
use seamwright::trim::{BendRule, BendSize, HandbookMetal, NeutralFactor, SetbackFactor, din_compensation};
use seamwright::units::{
    Angle, Area, AreaUnit, BendAngle, Density, DensityUnit, Expansion, ExpansionUnit, Force, ForceUnit, Length, LengthFormat, LengthUnit, LineLoad,
    LineLoadUnit, LineMass, LineMassUnit, Mass, MassUnit, Pressure, PressureUnit, Rounding, ShopRounding, SurfaceMass, SurfaceMassUnit, Temperature,
    TemperatureDifference, TemperatureDifferenceUnit, TemperatureScale, Volume, VolumeUnit,
};

/// Why an operation gave no outputs.
#[derive(Debug)]
pub enum Fault {
    /// No function of the harness has this name.
    NoFunction,
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

struct Inputs<'a>(&'a toml::Table);

impl Inputs<'_> {
    fn text(&self, name: &str) -> Result<&str, Fault> {
        self.0.get(name).and_then(toml::Value::as_str).ok_or_else(|| Fault::Case(format!("no input {name}, or one that is not text")))
    }

    fn pitch(&self, name: &str) -> Result<Pitch, Fault> {
        Ok(Pitch::parse(self.text(name)?)?)
    }

    fn bend_angle(&self, name: &str) -> Result<BendAngle, Fault> {
        Ok(self.text(name)?.parse()?)
    }

    fn bend_size(&self) -> Result<BendSize, Fault> {
        Ok(BendSize { thickness: self.length("thickness")?, inside_radius: self.length("inside_radius")?, angle: self.bend_angle("angle")? })
    }

    /// A rule by its name, then its figure or its metal.
    fn bend_rule(&self) -> Result<BendRule, Fault> {
        let text = self.text("rule")?;
        let (name, argument) = text.split_once(' ').unwrap_or((text, ""));
        let unknown = || Fault::Case(format!("no bend rule {text}"));
        Ok(match name {
            "neutral-axis" => BendRule::neutral_axis(NeutralFactor::new(argument.parse().map_err(|_| unknown())?)?),
            "din-6935" => BendRule::Din6935,
            "aviation" => BendRule::Aviation,
            "sharp-corner" => BendRule::SharpCorner,
            "handbook" => BendRule::Handbook(match argument {
                "soft-copper" => HandbookMetal::SoftCopper,
                "soft-steel" => HandbookMetal::SoftSteel,
                "cold-rolled-steel" => HandbookMetal::ColdRolledSteel,
                _ => return Err(unknown()),
            }),
            _ => return Err(unknown()),
        })
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
pub fn run(case: &Case) -> Result<Values, Fault> {
    match function(&case.op, &Inputs(&case.inputs)) {
        Err(Fault::NoFunction) => by_name::run(case),
        found => found,
    }
}

fn function(op: &str, i: &Inputs<'_>) -> Result<Values, Fault> {
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
        "pitch.angle" => one("angle", i.pitch("pitch")?.angle()),
        "pitch.percent" => one("percent", i.pitch("pitch")?.percent()),
        "pitch.slope_factor" => one("factor", i.pitch("pitch")?.slope_factor()),
        "pitch.slope_length" => one("length", i.pitch("pitch")?.slope_length(i.length("run")?)?),
        "pitch.at_least" => one("passes", i.pitch("pitch")?.at_least(&i.pitch("minimum")?)),
        "pitch.corner" => {
            let g = Corner { first: i.pitch("first")?, second: i.pitch("second")?, plan: Angle::parse(i.text("plan")?)? }.compute()?;
            Ok(Values::from([
                ("plan_first".to_owned(), g.first.plan.to_string()),
                ("plan_second".to_owned(), g.second.plan.to_string()),
                ("slope".to_owned(), g.slope.to_string()),
                ("backing_first".to_owned(), g.first.backing.to_string()),
                ("backing_second".to_owned(), g.second.backing.to_string()),
                ("dihedral".to_owned(), g.dihedral.to_string()),
                ("in_plane_first".to_owned(), g.first.in_plane.to_string()),
                ("in_plane_second".to_owned(), g.second.in_plane.to_string()),
                ("factor".to_owned(), g.first.length_factor.to_string()),
            ]))
        }
        "pitch.framing" => {
            let row = Framing { pitch: i.pitch("pitch")?, spacing: i.length("spacing")? }.compute()?;
            Ok(Values::from([
                ("common_per_foot".to_owned(), row.common_per_foot.to_string()),
                ("hip_per_foot".to_owned(), row.hip_per_foot.to_string()),
                ("hip_run_per_foot".to_owned(), row.hip_run_per_foot.to_string()),
                ("jack_difference".to_owned(), row.jack_difference.to_string()),
                ("jack_side_cut".to_owned(), row.jack_side_cut.to_string()),
                ("hip_side_cut".to_owned(), row.hip_side_cut.to_string()),
            ]))
        }
        "metal.gauge" => {
            let gauge = Gauge::parse(i.text("gauge")?)?;
            let mut out = one("thickness", gauge.thickness())?;
            if let Some(weight) = gauge.defining_weight() {
                out.insert("weight".to_owned(), format!("{} lb/ft2", weight.get(SurfaceMassUnit::PoundPerSquareFoot)));
            }
            Ok(out)
        }
        "metal.nearest_gauge" => one("number", GaugeSystem::parse(i.text("system")?)?.nearest(Gauge::parse(i.text("gauge")?)?.thickness())?.number()),
        "movement.length_change" => {
            let change = LengthChange {
                expansion: Expansion::parse(i.text("expansion")?)?,
                length: i.length("length")?,
                difference: TemperatureDifference::parse(i.text("difference")?)?,
            };
            one("change", change.compute()?)
        }
        "trim.setback_factor" => one("factor", SetbackFactor::of(i.bend_angle("angle")?)?.value()),
        "trim.din_compensation" => one("compensation", din_compensation(i.bend_size()?)?),
        "trim.allowance" => one("allowance", i.bend_rule()?.allowance(i.bend_size()?)?),
        "trim.deduction" => one("deduction", i.bend_rule()?.deduction(i.bend_size()?)?),
        "units.convert" => one("value", convert(i.text("quantity")?, i.text("value")?, i.text("unit")?)?),
        _ => Err(Fault::NoFunction),
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
            let scale = TemperatureScale::ALL.iter().copied().find(|s| s.symbol() == unit).ok_or_else(|| Fault::Case(format!("no scale {unit}")))?;
            Ok(Temperature::parse(value)?.get(scale))
        }
        _ => Err(Fault::Case(format!("no quantity {quantity}"))),
    }
}
