"""Quantities of the trade: exact lengths, angles, and the physical quantities that loads and orders need.

A quantity is text with its unit, in and out; a bare number is refused.
"""

from ._start import open_room

open_room("units")
from ._seamwright.units import (
    Angle,
    Area,
    BendAngle,
    Density,
    Expansion,
    Force,
    Length,
    LengthFormat,
    LineLoad,
    LineMass,
    Mass,
    Pressure,
    ShopRounding,
    SurfaceMass,
    Temperature,
    TemperatureDifference,
    Volume,
)

__all__ = [
    "Angle",
    "Area",
    "BendAngle",
    "Density",
    "Expansion",
    "Force",
    "Length",
    "LengthFormat",
    "LineLoad",
    "LineMass",
    "Mass",
    "Pressure",
    "ShopRounding",
    "SurfaceMass",
    "Temperature",
    "TemperatureDifference",
    "Volume",
]
