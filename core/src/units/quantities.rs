//! The physical quantities. Factors are those of NIST SP 811 (2008), Appendix B.8, built from the exact anchors
//! 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, g0 = 9.806 65 m/s2 and 1 US gallon = 231 in3.

use super::quantity::quantity;

const IN: f64 = 0.0254;
const FT: f64 = 0.3048;
const LB: f64 = 0.453_592_37;
const LBF: f64 = LB * 9.806_65;

quantity!(
    /// An area.
    ///
    /// ```
    /// use seamwright::units::{Area, AreaUnit};
    /// assert_eq!(Area::parse("1 square")?, Area::new(9.290304, AreaUnit::SquareMetre)?);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    Area, AreaUnit, "area", "m2, mm2, cm2, ft2, in2, yd2, square (100 ft2)",
    [(SquareMetre, "m2", 1.0), (SquareMillimetre, "mm2", 1e-6), (SquareCentimetre, "cm2", 1e-4), (SquareFoot, "ft2", FT * FT), (SquareInch, "in2", IN * IN),
     (SquareYard, "yd2", 9.0 * FT * FT), (Square, "square", 9.290_304)]
);
quantity!(
    /// A volume.
    ///
    /// ```
    /// use seamwright::units::{Volume, VolumeUnit};
    /// let tube = Volume::parse("10.1 floz")?;
    /// assert!((tube.get(VolumeUnit::Millilitre) - 298.69).abs() < 0.005);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    Volume, VolumeUnit, "volume", "m3, mL, L, in3, ft3, floz (US), gal (US)",
    [(CubicMetre, "m3", 1.0), (Millilitre, "mL", 1e-6), (Litre, "L", 1e-3), (CubicInch, "in3", IN * IN * IN), (CubicFoot, "ft3", FT * FT * FT),
     (FluidOunce, "floz", 231.0 / 128.0 * IN * IN * IN), (Gallon, "gal", 231.0 * IN * IN * IN)]
);
quantity!(
    /// A mass.
    ///
    /// ```
    /// use seamwright::units::{Mass, MassUnit};
    /// assert!((Mass::parse("1 lb")?.get(MassUnit::Gram) - 453.592).abs() < 0.0005);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    Mass, MassUnit, "mass", "kg, g, t, lb, oz",
    [(Kilogram, "kg", 1.0), (Gram, "g", 1e-3), (Tonne, "t", 1e3), (Pound, "lb", LB), (Ounce, "oz", LB / 16.0)]
);
quantity!(
    /// A force.
    ///
    /// ```
    /// use seamwright::units::{Force, ForceUnit};
    /// assert!((Force::parse("1 lbf")?.get(ForceUnit::Newton) - 4.448222).abs() < 5e-7);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    Force, ForceUnit, "force", "N, kN, lbf, kip",
    [(Newton, "N", 1.0), (Kilonewton, "kN", 1e3), (PoundForce, "lbf", LBF), (Kip, "kip", 1000.0 * LBF)]
);
quantity!(
    /// A pressure, or a stress.
    ///
    /// ```
    /// use seamwright::units::{Pressure, PressureUnit};
    /// assert!((Pressure::parse("1 psf")?.get(PressureUnit::Pascal) - 47.88026).abs() < 5e-6);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    Pressure, PressureUnit, "pressure", "Pa, kPa, MPa, GPa, psf, psi, ksi",
    [(Pascal, "Pa", 1.0), (Kilopascal, "kPa", 1e3), (Megapascal, "MPa", 1e6), (Gigapascal, "GPa", 1e9), (PoundPerSquareFoot, "psf", LBF / (FT * FT)),
     (PoundPerSquareInch, "psi", LBF / (IN * IN)), (KipPerSquareInch, "ksi", 1000.0 * LBF / (IN * IN))]
);
quantity!(
    /// A force along a line.
    ///
    /// ```
    /// use seamwright::units::{LineLoad, LineLoadUnit};
    /// assert!((LineLoad::parse("1 lbf/ft")?.get(LineLoadUnit::NewtonPerMetre) - 14.5939).abs() < 5e-5);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    LineLoad, LineLoadUnit, "line load", "N/m, kN/m, lbf/ft, lbf/in",
    [(NewtonPerMetre, "N/m", 1.0), (KilonewtonPerMetre, "kN/m", 1e3), (PoundPerFoot, "lbf/ft", LBF / FT), (PoundPerInch, "lbf/in", LBF / IN)]
);
quantity!(
    /// A mass for each area: of a sheet, or of its coating.
    ///
    /// ```
    /// use seamwright::units::{SurfaceMass, SurfaceMassUnit};
    /// let oz = SurfaceMass::parse("1 oz/ft2")?;
    /// assert!((oz.get(SurfaceMassUnit::GramPerSquareMetre) - 305.15).abs() < 0.005);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    SurfaceMass, SurfaceMassUnit, "mass per area", "kg/m2, g/m2, lb/ft2, oz/ft2",
    [(KilogramPerSquareMetre, "kg/m2", 1.0), (GramPerSquareMetre, "g/m2", 1e-3), (PoundPerSquareFoot, "lb/ft2", LB / (FT * FT)),
     (OuncePerSquareFoot, "oz/ft2", LB / 16.0 / (FT * FT))]
);
quantity!(
    /// A mass for each length: of a trim.
    ///
    /// ```
    /// use seamwright::units::{LineMass, LineMassUnit};
    /// assert!((LineMass::parse("1 lb/ft")?.get(LineMassUnit::KilogramPerMetre) - 1.488164).abs() < 5e-7);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    LineMass, LineMassUnit, "mass per length", "kg/m, lb/ft",
    [(KilogramPerMetre, "kg/m", 1.0), (PoundPerFoot, "lb/ft", LB / FT)]
);
quantity!(
    /// A density.
    ///
    /// ```
    /// use seamwright::units::{Density, DensityUnit};
    /// assert!((Density::parse("8.89 g/cm3")?.get(DensityUnit::PoundPerCubicInch) - 0.321).abs() < 0.0005);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    Density, DensityUnit, "density", "kg/m3, g/cm3, lb/in3, lb/ft3",
    [(KilogramPerCubicMetre, "kg/m3", 1.0), (GramPerCubicCentimetre, "g/cm3", 1e3), (PoundPerCubicInch, "lb/in3", LB / (IN * IN * IN)),
     (PoundPerCubicFoot, "lb/ft3", LB / (FT * FT * FT))]
);
quantity!(
    /// A coefficient of linear thermal expansion. Per degree Fahrenheit to per kelvin is a factor of 1.8, never an offset.
    ///
    /// ```
    /// use seamwright::units::{Expansion, ExpansionUnit};
    /// let copper = Expansion::parse("17.3e-6 /K")?;
    /// assert!((copper.get(ExpansionUnit::PerDegreeFahrenheit) - 9.61e-6).abs() < 5e-9);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    Expansion, ExpansionUnit, "expansion", "/K, /degC, /degF",
    [(PerKelvin, "/K", 1.0), (PerDegreeCelsius, "/degC", 1.0), (PerDegreeFahrenheit, "/degF", 1.8)]
);
