"""
The classes of `seamwright.units`.
"""

from collections.abc import Iterable
from fractions import Fraction
from typing import Final, SupportsFloat, SupportsIndex, final

__all__ = ["Angle", "Area", "BendAngle", "Density", "Expansion", "Force", "Length", "LengthFormat", "LineLoad", "LineMass", "Mass", "Pressure", "ShopRounding", "SurfaceMass", "Temperature", "TemperatureDifference", "Volume"]

@final
class Angle:
    """
    An angle in degrees, kept as given. Text is ``18.5 deg``, ``18.5°`` or ``0.3 rad``; a bare number is refused.

    >>> from seamwright.units import Angle
    >>> Angle("30 deg").sin()
    0.5
    """
    SQUARE: Final[Angle]
    """
    The square.
    """
    ZERO: Final[Angle]
    """
    No angle.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, angle: Angle | str) -> Angle: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def cos(self, /) -> float:
        """
        Its cosine.
        """
    @property
    def degrees(self, /) -> float:
        """
        The angle in degrees.
        """
    @staticmethod
    def degrees_from(degrees: SupportsFloat | SupportsIndex) -> Angle:
        """
        An angle of so many degrees.
        """
    @staticmethod
    def parse(text: str) -> Angle:
        """
        Reads an angle with its unit.
        """
    @property
    def radians(self, /) -> float:
        """
        The angle in radians.
        """
    def sin(self, /) -> float:
        """
        Its sine.
        """
    def tan(self, /) -> float:
        """
        Its tangent; infinite at 90 degrees.
        """

@final
class Area:
    """
    An area: ``12 ft2``, ``1 square`` (100 ft2).
    """
    ZERO: Final[Area]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Area | str) -> Area: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Area:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Area:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class BendAngle:
    """
    How far sheet is bent, measured from flat: 0 is flat, 90 is square, 180 is folded back on itself. Text gives degrees from flat.

    >>> from seamwright.units import BendAngle
    >>> BendAngle.between_flanges("120 deg") == BendAngle.from_flat("60 deg")
    True
    """
    FOLDED: Final[BendAngle]
    """
    A fold back on itself, as in a hem.
    """
    SQUARE: Final[BendAngle]
    """
    A square bend.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, from_flat: BendAngle | str) -> BendAngle: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def angle(self, /) -> Angle:
        """
        The angle from flat.
        """
    @staticmethod
    def between_flanges(angle: Angle | str) -> BendAngle:
        """
        The bend whose flanges stand at this angle to each other.
        """
    @property
    def degrees(self, /) -> float:
        """
        Degrees from flat.
        """
    @staticmethod
    def from_flat(angle: Angle | str) -> BendAngle:
        """
        The bend, measured from flat.
        """
    def half_tangent(self, /) -> float:
        """
        Tangent of half the bend, the factor from radius to setback; infinite at 180 degrees.
        """
    @property
    def opening(self, /) -> Angle:
        """
        The angle between the flanges; negative where the bend goes past 180 degrees.
        """

@final
class Density:
    """
    A density: ``8.89 g/cm3``.
    """
    ZERO: Final[Density]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Density | str) -> Density: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Density:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Density:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Expansion:
    """
    A coefficient of linear thermal expansion: ``17.3e-6 /K``.
    """
    ZERO: Final[Expansion]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Expansion | str) -> Expansion: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Expansion:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Expansion:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Force:
    """
    A force: ``200 lbf``, ``0.9 kN``.
    """
    ZERO: Final[Force]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Force | str) -> Force: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Force:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Force:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Length:
    """
    A length, held as a whole number of picometres (``pm``), so that inches and millimetres add, compare and hash without drift.

    Made from text with its unit, in any notation of a tape, a drawing or a spreadsheet; a bare number is refused.

    >>> from seamwright.units import Length
    >>> Length("12'-3 5/8\\"") == Length("3749.675 mm")
    True
    >>> format(Length("10'") + Length('3 1/2"'), "ft-in/16")
    '10\\'-3 1/2"'
    """
    MAX: Final[Length]
    """
    The greatest length.
    """
    MIN: Final[Length]
    """
    The least length.
    """
    ZERO: Final[Length]
    """
    No length.
    """
    def __abs__(self, /) -> Length: ...
    def __add__(self, value: object, /) -> Length: ...
    def __bool__(self, /) -> bool: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __format__(self, /, format_spec: str) -> str: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __mul__(self, value: object, /) -> Length: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __neg__(self, /) -> Length: ...
    def __new__(cls, /, length: Length | str) -> Length: ...
    def __pos__(self, /) -> Length: ...
    def __radd__(self, value: object, /) -> Length: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __rmul__(self, value: object, /) -> Length: ...
    def __rsub__(self, value: object, /) -> Length: ...
    def __str__(self, /) -> str: ...
    def __sub__(self, value: object, /) -> Length: ...
    @staticmethod
    def feet(n: SupportsIndex) -> Length:
        """
        So many whole feet.
        """
    def format(self, /, format: LengthFormat | str) -> str:
        """
        The length as text in this format, as ``format(length, "ft-in/16")`` gives it.
        """
    def fraction(self, /, unit: str) -> Fraction:
        """
        The number of this unit (in, ft, mm, cm, m, um), exactly.

        >>> Length("3 5/8\\"").fraction("in")
        Fraction(29, 8)
        """
    @staticmethod
    def from_f64(value: SupportsFloat | SupportsIndex, unit: str) -> Length:
        """
        The one conversion from a floating-point number: exact in its bits, then rounded half-even to a picometre.

        >>> Length.from_f64(0.5, "in")
        Length('12.7 mm')
        """
    @staticmethod
    def from_pm(pm: SupportsIndex) -> Length:
        """
        A length of so many picometres.
        """
    def get(self, /, unit: str) -> float:
        """
        The number of this unit (in, ft, mm, cm, m, um) in floating point.

        >>> Length("1'").get("in")
        12.0
        """
    @staticmethod
    def inches(n: SupportsIndex) -> Length:
        """
        So many whole inches.
        """
    @staticmethod
    def inches_64(n: SupportsIndex) -> Length:
        """
        So many 64ths of an inch.
        """
    @property
    def is_negative(self, /) -> bool:
        """
        Whether it is less than nothing.
        """
    @property
    def is_positive(self, /) -> bool:
        """
        Whether it is more than nothing.
        """
    @staticmethod
    def micrometres(n: SupportsIndex) -> Length:
        """
        So many whole micrometres.
        """
    @staticmethod
    def mils(n: SupportsIndex) -> Length:
        """
        So many thousandths of an inch.
        """
    @staticmethod
    def parse(text: str) -> Length:
        """
        Reads a length with its unit.

        >>> Length.parse("3 5/8\\"").pm
        92075000000
        """
    @staticmethod
    def parse_exact(text: str) -> Length:
        """
        Reads a length with its unit, and refuses one that is not a whole number of picometres.
        """
    @staticmethod
    def parse_in(text: str, unit: str) -> Length:
        """
        Reads a length; ``unit`` (in, ft, mm, cm, m, um) is that of a number without one.

        >>> Length.parse_in("39", "in") == Length('39"')
        True
        """
    @property
    def pm(self, /) -> int:
        """
        Picometres, exact.
        """
    def station(self, /, i: SupportsIndex, n: SupportsIndex) -> Length:
        """
        The end of the ``i``-th of ``n`` equal parts, rounded once: stations do not accumulate error.

        >>> Length("10\\"").station(3, 3) == Length("10\\"")
        True
        """
    def times(self, /, other: Length | str) -> Area:
        """
        The area of a rectangle with these two sides.
        """
    @staticmethod
    def total(lengths: Iterable[Length | str]) -> Length:
        """
        The sum of lengths, checked once at the end.

        >>> Length.total(["1'", "6\\""])
        Length('457.2 mm')
        """

@final
class LengthFormat:
    """
    How a length is written, itself written as text.

    ``mm`` is exact; ``ft-in/16`` and ``in/32`` are feet, inches and fractions; ``in.3``, ``ft.4``, ``mm.1``, ``cm.1``, ``m.3`` and
    ``um.0`` are decimal. A direction may follow: ``in/16 ceil``. Without one, ties go to the even step.

    >>> from seamwright.units import LengthFormat
    >>> LengthFormat("in/2 floor").text('3 5/8"')
    '3 1/2"'
    """
    EXACT: Final[LengthFormat]
    """
    The canonical form: decimal millimetres, whose round trip is the identity.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, format: LengthFormat | str) -> LengthFormat: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @staticmethod
    def parse(text: str) -> LengthFormat:
        """
        Reads a format from its text.
        """
    def rounded(self, /, length: Length | str) -> Length:
        """
        The length as this format rounds it.
        """
    @property
    def rounding(self, /) -> str:
        """
        The direction of rounding: ceil, floor, away, toward, half-even or half-away.
        """
    @property
    def step(self, /) -> Length:
        """
        The step that this format shows; a picometre for the exact form.
        """
    def text(self, /, length: Length | str) -> str:
        """
        The length as text.
        """

@final
class LineLoad:
    """
    A force for each length: ``60 lbf/ft``.
    """
    ZERO: Final[LineLoad]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: LineLoad | str) -> LineLoad: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> LineLoad:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> LineLoad:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class LineMass:
    """
    A mass for each length, of a trim: ``1 lb/ft``.
    """
    ZERO: Final[LineMass]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: LineMass | str) -> LineMass: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> LineMass:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> LineMass:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Mass:
    """
    A mass: ``2 lb``, ``0.9 kg``.
    """
    ZERO: Final[Mass]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Mass | str) -> Mass: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Mass:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Mass:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Pressure:
    """
    A pressure or a stress: ``30 psf``, ``1.4 kPa``, ``36 ksi``.
    """
    ZERO: Final[Pressure]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Pressure | str) -> Pressure: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Pressure:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Pressure:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class ShopRounding:
    """
    The shop's rule: a step, a direction (ceil, floor, away, toward, half-even, half-away), and a tolerance within which an excess is noise.

    The tolerance is a micrometre unless given.

    >>> from seamwright.units import ShopRounding
    >>> format(ShopRounding('1"', "ceil").round('120 1/16"'), "in/16")
    '121"'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, increment: Length | str, rounding: str, tolerance: Length | str | None = None) -> ShopRounding: ...
    def __reduce__(self, /) -> tuple[type, tuple[str, str, str]]: ...
    def __repr__(self, /) -> str: ...
    @property
    def increment(self, /) -> Length:
        """
        The step.
        """
    def round(self, /, length: Length | str) -> Length:
        """
        The length at the whole step.
        """
    @property
    def rounding(self, /) -> str:
        """
        The direction: ceil, floor, away, toward, half-even or half-away.
        """
    @property
    def tolerance(self, /) -> Length:
        """
        The tolerance.
        """

@final
class SurfaceMass:
    """
    A mass for each area, of a sheet or of its coating: ``275 g/m2``.
    """
    ZERO: Final[SurfaceMass]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: SurfaceMass | str) -> SurfaceMass: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> SurfaceMass:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> SurfaceMass:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Temperature:
    """
    A temperature, held in degrees Celsius. Text is ``20 degC``, ``68 degF`` or ``293.15 K``.

    >>> from seamwright.units import Temperature
    >>> Temperature("32 degF").get("degC")
    0.0
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, temperature: Temperature | str) -> Temperature: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def above(self, /, other: Temperature | str) -> TemperatureDifference:
        """
        How much warmer this is than the other; negative where it is colder.
        """
    def get(self, /, scale: str) -> float:
        """
        The number on this scale.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, scale: str) -> Temperature:
        """
        A temperature on this scale.
        """
    @staticmethod
    def parse(text: str) -> Temperature:
        """
        Reads a number with its scale.
        """
    @staticmethod
    def scales() -> list[str]:
        """
        The symbols of the scales, the one that is held first.
        """

@final
class TemperatureDifference:
    """
    A difference of temperature, never a temperature: ``200 degF`` here is 111 K.
    """
    ZERO: Final[TemperatureDifference]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: TemperatureDifference | str) -> TemperatureDifference: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> TemperatureDifference:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> TemperatureDifference:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """

@final
class Volume:
    """
    A volume: ``300 mL``, ``10.1 floz``.
    """
    ZERO: Final[Volume]
    """
    None of it.
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __ge__(self, value: object, /) -> bool: ...
    def __gt__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, value: object, /) -> bool: ...
    def __lt__(self, value: object, /) -> bool: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, quantity: Volume | str) -> Volume: ...
    def __reduce__(self, /) -> tuple[type, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def get(self, /, unit: str) -> float:
        """
        The number of this unit.
        """
    @staticmethod
    def new(value: SupportsFloat | SupportsIndex, unit: str) -> Volume:
        """
        So much of this unit.
        """
    @staticmethod
    def parse(text: str) -> Volume:
        """
        Reads a number with its unit.
        """
    @staticmethod
    def units() -> list[str]:
        """
        The symbols of the units, the one that is held first.
        """
