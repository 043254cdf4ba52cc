//! The sheet: alloy, thickness and coating.

use super::{Alloy, Coating, Gauge, cautions};
#[cfg(feature = "serde")]
use crate::error::told::Told;
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{DensityUnit, Length, SurfaceMass, SurfaceMassUnit};
use core::fmt;

/// A sheet's thickness as given: a length, or a gauge in its system.
///
/// ```
/// use seamwright::metal::Thickness;
/// use seamwright::units::Length;
/// assert_eq!("0.7 mm".parse::<Thickness>()?.length(), Length::micrometres(700));
/// assert_eq!("24 ga us-standard".parse::<Thickness>()?.length(), Length::mils(25));
/// assert!("24 ga".parse::<Thickness>().is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Thickness {
    /// A length.
    Length(Length),
    /// A gauge in its system.
    Gauge(Gauge),
}

impl Thickness {
    /// The thickness as a length.
    #[must_use]
    pub const fn length(self) -> Length {
        match self {
            Thickness::Length(l) => l,
            Thickness::Gauge(g) => g.thickness(),
        }
    }

    /// Reads a length with its unit, or a gauge with its system.
    ///
    /// # Errors
    /// Those of [`Gauge::parse`] where the text speaks of gauge or ounces, else those of [`Length::parse`].
    pub fn parse(text: &str) -> Result<Thickness, Error> {
        let gauge = text.split_whitespace().any(|w| matches!(w.trim_start_matches(|c: char| c.is_ascii_digit()), "ga" | "gauge" | "oz"));
        if gauge {
            return Gauge::parse(text).map(Thickness::Gauge);
        }
        let length = Length::parse(text);
        length.map(Thickness::Length).map_err(|e| if e.kind() == ErrorKind::Unit { e.accepts("0.0236 in, 0.6 mm, 24 ga galvanized") } else { e })
    }
}

impl From<Length> for Thickness {
    fn from(l: Length) -> Thickness {
        Thickness::Length(l)
    }
}

impl From<Gauge> for Thickness {
    fn from(g: Gauge) -> Thickness {
        Thickness::Gauge(g)
    }
}

impl fmt::Display for Thickness {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Thickness::Length(l) => l.fmt(f),
            Thickness::Gauge(g) => g.fmt(f),
        }
    }
}

impl core::str::FromStr for Thickness {
    type Err = Error;
    fn from_str(text: &str) -> Result<Thickness, Error> {
        Thickness::parse(text)
    }
}

/// A sheet of one alloy, of a thickness, with the coating that a coated steel carries.
///
/// The thickness is that of the sheet as ordered, metallic coating included (as ASTM A653 and A792 order it, from memory) and paint not.
///
/// ```
/// use seamwright::metal::{Alloy, Coating, Sheet};
/// use seamwright::units::{Length, SurfaceMassUnit};
/// let s = Sheet::new(Alloy::Aluminium3003, Length::mils(32), None)?;
/// assert!((s.surface_mass()?.get(SurfaceMassUnit::PoundPerSquareFoot) - 0.45448).abs() < 5e-6);
/// assert!(Sheet::new(Alloy::ZincCoatedSteel, Length::mils(24), Some(Coating::G90)).is_ok());
/// assert!(Sheet::new(Alloy::Copper, Length::ZERO, None).is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "Given", into = "Given"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Sheet {
    alloy: Alloy,
    thickness: Thickness,
    coating: Option<Coating>,
}

#[cfg(feature = "serde")]
#[derive(serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename = "Sheet", deny_unknown_fields)]
struct Given {
    alloy: Alloy,
    thickness: Thickness,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    coating: Option<Coating>,
}

#[cfg(feature = "serde")]
impl TryFrom<Given> for Sheet {
    type Error = Told;
    fn try_from(g: Given) -> Result<Sheet, Told> {
        Ok(Sheet::new(g.alloy, g.thickness, g.coating)?)
    }
}

#[cfg(feature = "serde")]
impl From<Sheet> for Given {
    fn from(s: Sheet) -> Given {
        Given { alloy: s.alloy, thickness: s.thickness, coating: s.coating }
    }
}

impl Sheet {
    /// A sheet.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] at `thickness` where it is zero or less, or no more than its coating; [`ErrorKind::Missing`] at `coating` for a coated steel without its
    /// designation; [`ErrorKind::Conflict`] at `coating` for one that the alloy does not carry. Every fault is reported.
    pub fn new(alloy: Alloy, thickness: impl Into<Thickness>, coating: Option<Coating>) -> Result<Sheet, Error> {
        let thickness = thickness.into();
        let mut faults = Faults::default();
        let positive = faults.keep(thickness.length().positive("thickness")).is_some();
        let carried: Vec<&str> = Coating::ALL.iter().filter(|c| c.goes_on(alloy)).map(|c| c.name()).collect();
        match coating {
            None if !carried.is_empty() => {
                faults.add(Error::new(ErrorKind::Missing, "a coated steel needs its coating").at("coating").value_of(alloy).accepts(carried.join(", ")));
            }
            Some(c) if !c.goes_on(alloy) => {
                let accepted = if carried.is_empty() { "no coating".to_owned() } else { carried.join(", ") };
                faults.add(Error::new(ErrorKind::Conflict, format!("{alloy} does not carry this coating")).at("coating").value_of(c).accepts(accepted));
            }
            Some(c) if positive => {
                let of_coating = c.thickness()?;
                if thickness.length() <= of_coating {
                    let fault = Error::new(ErrorKind::OutOfRange, "the sheet is no thicker than its coating").at("thickness").value_of(thickness);
                    faults.add(fault.accepts(format!("more than {of_coating}")));
                }
            }
            _ => {}
        }
        faults.check()?;
        Ok(Sheet { alloy, thickness, coating })
    }

    /// The alloy.
    #[must_use]
    pub const fn alloy(&self) -> Alloy {
        self.alloy
    }

    /// The thickness, coating included.
    #[must_use]
    pub const fn thickness(&self) -> Length {
        self.thickness.length()
    }

    /// The thickness as it was given.
    #[must_use]
    pub const fn thickness_as_given(&self) -> Thickness {
        self.thickness
    }

    /// The coating.
    #[must_use]
    pub const fn coating(&self) -> Option<Coating> {
        self.coating
    }

    /// The thickness without the coating at its triple-spot mass.
    ///
    /// # Errors
    /// None in practice: a sheet is thicker than its coating.
    pub fn base_thickness(&self) -> Result<Length, Error> {
        match self.coating {
            Some(c) => (self.thickness() - c.thickness()?).length(),
            None => Ok(self.thickness()),
        }
    }

    /// Mass for each area of flat sheet, both sides of the coating included.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] never occurs for a thickness that a mill can roll.
    pub fn surface_mass(&self) -> Result<SurfaceMass, Error> {
        self.compute()
    }

    /// What to know of this sheet; subjects are `thickness`, `alloy.density` and `alloy.expansion`.
    #[must_use]
    pub fn cautions(&self) -> Vec<Caution> {
        let mut out = Vec::new();
        if let Thickness::Gauge(g) = self.thickness
            && !g.system().is_usual_for(self.alloy)
        {
            out.push(Caution::new(cautions::UNUSUAL_GAUGE_SYSTEM, "thickness", Source::CommonPractice).arg("system", g.system()).arg("alloy", self.alloy));
        }
        for (property, source) in [("density", &self.alloy.density().source), ("expansion", &self.alloy.expansion().source)] {
            if source.rests_on_memory() {
                let caution = Caution::new(cautions::PROPERTY_FROM_MEMORY, format!("alloy.{property}"), source.clone());
                out.push(caution.arg("property", property).arg("alloy", self.alloy));
            }
        }
        out
    }
}

impl Calculation for Sheet {
    type Out = SurfaceMass;

    fn title(&self) -> String {
        format!("Mass of {self}")
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<SurfaceMass, Error> {
        let base = self.base_thickness()?;
        if let Some(c) = self.coating {
            r.step(|| {
                let step =
                    Step::new("thickness of the steel").formula("thickness - coating at its least mass").with("thickness", self.thickness()).with("coating", c);
                step.gives(base).source(c.thickness_source())
            });
        }
        let density = self.alloy.density();
        let metal = SurfaceMass::new(base.mm() * density.value.get(DensityUnit::KilogramPerCubicMetre) / 1000.0, SurfaceMassUnit::KilogramPerSquareMetre)?;
        r.step(|| {
            let step = Step::new("mass of the metal for each area").formula("density x thickness").with("density", density.value).with("thickness", base);
            step.gives(metal).source(density.source.clone())
        });
        let Some(c) = self.coating else { return Ok(metal) };
        let total = SurfaceMass::new(
            metal.get(SurfaceMassUnit::KilogramPerSquareMetre) + c.triple_spot().get(SurfaceMassUnit::KilogramPerSquareMetre),
            SurfaceMassUnit::KilogramPerSquareMetre,
        )?;
        r.step(|| {
            let step = Step::new("mass with the coating").formula("metal + coating, both sides").with("metal", metal).with("coating", c.triple_spot());
            step.gives(total).source(c.source())
        });
        Ok(total)
    }
}

impl fmt::Display for Sheet {
    /// As an order says it: `0.6 mm zinc-coated-steel Z275`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = match self.coating {
            Some(c) => format!("{} {} {c}", self.thickness, self.alloy),
            None => format!("{} {}", self.thickness, self.alloy),
        };
        f.pad(&text)
    }
}

#[cfg(feature = "serde")]
crate::units::serde_text!(Thickness => "a thickness, or a gauge with its system", ["0.0276 in", "0.7 mm", "24 ga galvanized"]);
