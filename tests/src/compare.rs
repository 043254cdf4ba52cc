//! Comparing outputs as quantities: a length by its picometres, a number with its unit by its value, a quantity in another unit by what it
//! is in the unit that the library holds, the rest as text.

use crate::case::{Case, Values};
use seamwright::units::{
    Area, AreaUnit, Density, DensityUnit, Expansion, ExpansionUnit, Force, ForceUnit, Length, LineLoad, LineLoadUnit, LineMass, LineMassUnit, Mass, MassUnit,
    Pressure, PressureUnit, SurfaceMass, SurfaceMassUnit, Volume, VolumeUnit,
};

/// What does not match, one line an output; empty where all do.
#[must_use]
pub fn differences(case: &Case, got: &Values) -> Vec<String> {
    case.out
        .iter()
        .filter_map(|(name, expected)| difference(name, expected, got.get(name)?, case.tol.get(name).map(String::as_str)))
        .collect::<Vec<_>>()
        .into_iter()
        .chain(missing(case, got))
        .collect()
}

fn missing(case: &Case, got: &Values) -> Vec<String> {
    case.out.keys().filter(|name| !got.contains_key(*name)).map(|name| format!("{name}: no such output")).collect()
}

fn difference(name: &str, expected: &str, got: &str, tol: Option<&str>) -> Option<String> {
    let fault = |reason: String| Some(format!("{name}: expected {expected}, got {got}{reason}"));
    if let (Ok(a), Ok(b)) = (Length::parse(expected), Length::parse(got)) {
        let allowed = match tol.map(Length::parse) {
            None => 0,
            Some(Ok(t)) => i128::from(t.pm()),
            Some(Err(e)) => return fault(format!(", tolerance: {e}")),
        };
        let off = i128::from(a.pm()) - i128::from(b.pm());
        return if off.abs() <= allowed { None } else { fault(format!(", off by {off} pm")) };
    }
    let ((a, unit_a), (b, unit_b)) = match (number(expected), number(got)) {
        (Some(a), Some(b)) => (a, b),
        _ => return if expected == got { None } else { fault(String::new()) },
    };
    let allowed = tol.map(|t| number(t).filter(|(_, unit)| *unit == unit_a));
    if unit_a != unit_b || allowed == Some(None) {
        let texts = [Some(expected), Some(got), tol];
        return match held(texts) {
            Some([Some(a), Some(b), allowed]) => off(a, b, allowed.unwrap_or(0.0), &fault),
            _ => fault(", or its tolerance, in another unit".to_owned()),
        };
    }
    off(a, b, allowed.flatten().map_or(0.0, |(t, _)| t), &fault)
}

fn off(a: f64, b: f64, allowed: f64, fault: &dyn Fn(String) -> Option<String>) -> Option<String> {
    // A printed decimal and its tolerance are themselves rounded to the nearest double.
    let noise = 4.0 * f64::EPSILON * a.abs().max(b.abs());
    if (a - b).abs() <= allowed + noise { None } else { fault(format!(", off by {}", b - a)) }
}

/// Texts of one quantity as numbers of the unit that it is held in. A temperature is not among them: `5 K` is one and a difference too.
fn held(texts: [Option<&str>; 3]) -> Option<[Option<f64>; 3]> {
    macro_rules! first_of {
        ($($quantity:ident in $unit:ident),+) => {
            $(
                let all: Result<Vec<Option<f64>>, _> =
                    texts.iter().map(|text| text.map($quantity::parse).transpose().map(|q| q.map(|q| q.get($unit::ALL[0])))).collect();
                if let Ok([a, b, c]) = all.as_deref() {
                    return Some([*a, *b, *c]);
                }
            )+
        };
    }
    first_of!(
        Area in AreaUnit, Volume in VolumeUnit, Mass in MassUnit, Force in ForceUnit, Pressure in PressureUnit, LineLoad in LineLoadUnit,
        SurfaceMass in SurfaceMassUnit, LineMass in LineMassUnit, Density in DensityUnit, Expansion in ExpansionUnit
    );
    None
}

fn number(text: &str) -> Option<(f64, &str)> {
    let (head, unit) = text.split_once(' ').unwrap_or((text, ""));
    head.parse().ok().map(|n| (n, unit))
}
