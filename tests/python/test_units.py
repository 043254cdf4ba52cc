"""The classes of seamwright.units as Python sees them: laws, protocols, refusals. Figures stand in the reference cases."""

import copy
import math
import pickle
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from seamwright import InputError, units
from seamwright.units import Angle, Area, BendAngle, Length, LengthFormat, Pressure, ShopRounding, Temperature, TemperatureDifference

# Two values of every class, the first the smaller where the class has an order.
PAIRS: list[tuple[Any, Any]] = [
    (Length('3 5/8"'), Length("12'")),
    (LengthFormat("ft-in/16"), LengthFormat("mm.1 ceil")),
    (ShopRounding('1/16"', "ceil"), ShopRounding('1/16"', "floor", "0.01 mm")),
    (Angle("18.5 deg"), Angle("2 rad")),
    (BendAngle("89.9 deg"), BendAngle("90 deg")),
    (Temperature("20 degF"), Temperature("20 degC")),
    *[
        (getattr(units, name).new(1.1, getattr(units, name).units()[0]), getattr(units, name).new(1e9 / 7, getattr(units, name).units()[-1]))
        for name in units.__all__
        if hasattr(getattr(units, name), "units")
    ],
]
ORDERED = [(a, b) for a, b in PAIRS if not isinstance(a, (LengthFormat, ShopRounding))]


def name_of(value: Any) -> str:
    return type(value).__name__


def test_every_class_stands_in_the_list() -> None:
    assert sorted(name_of(a) for a, _ in PAIRS) == sorted(units.__all__)


@pytest.mark.parametrize(("a", "b"), PAIRS, ids=name_of)
def test_value_semantics(a: Any, b: Any) -> None:
    assert a != b
    assert len({a, b, copy.copy(a), copy.deepcopy(b)}) == 2
    assert a != "text" and a != 1.0 and a is not None
    assert eval(repr(a), vars(units)) == a
    for value in (a, b):
        for protocol in range(pickle.HIGHEST_PROTOCOL + 1):
            again = pickle.loads(pickle.dumps(value, protocol))
            assert again == value and hash(again) == hash(value) and type(again) is type(value)
    with pytest.raises(AttributeError):
        a.anything = 1
    assert type(a).__module__ == "seamwright.units"
    assert type(a).__doc__


@pytest.mark.parametrize(("a", "b"), PAIRS, ids=name_of)
def test_classes_are_final(a: Any, b: Any) -> None:
    with pytest.raises(TypeError):
        type("Derived", (type(a),), {})


@pytest.mark.parametrize(("a", "b"), ORDERED, ids=name_of)
def test_order(a: Any, b: Any) -> None:
    assert a < b and a <= b and b > a and b >= a and not b < a
    assert sorted([b, a]) == [a, b]
    with pytest.raises(TypeError):
        _ = a < "text"


@pytest.mark.parametrize(("a", "b"), [p for p in PAIRS if not isinstance(p[0], ShopRounding)], ids=name_of)
def test_text_in_and_out(a: Any, b: Any) -> None:
    for value in (a, b):
        cls = type(value)
        assert cls(str(value)) == value
        assert cls(value) == value
        if hasattr(cls, "parse"):
            assert cls.parse(str(value)) == value


@pytest.mark.parametrize(("a", "b"), [p for p in PAIRS if hasattr(type(p[0]), "units")], ids=name_of)
def test_units_both_ways(a: Any, b: Any) -> None:
    cls = type(a)
    assert str(cls.ZERO).startswith("0 ")
    for unit in cls.units():
        assert math.isclose(cls.new(b.get(unit), unit).get(cls.units()[0]), b.get(cls.units()[0]), rel_tol=1e-15)
        assert cls(f"2 {unit}") == cls.new(2, unit)
    with pytest.raises(InputError) as caught:
        a.get("furlong")
    assert (caught.value.kind, caught.value.path, caught.value.value) == ("unit", "unit", "furlong")
    assert cls.units()[0] in (caught.value.allowed or "")
    for bad in (math.nan, math.inf, -math.inf):
        with pytest.raises(InputError) as caught:
            cls.new(bad, cls.units()[0])
        assert (caught.value.kind, caught.value.path) == ("not finite", "value")


pms = st.integers(min_value=-(2**63), max_value=2**63 - 1)


@given(pms)
def test_a_length_survives_text_and_pickle(pm: int) -> None:
    length = Length.from_pm(pm)
    assert Length(str(length)) == length
    assert pickle.loads(pickle.dumps(length)) == length
    assert length.pm == pm
    assert length.fraction("in") == Fraction(pm, 25_400_000_000)
    assert length.fraction("m") == Fraction(pm, 10**12)
    assert Decimal(str(length).removesuffix(" mm")) == Decimal(pm).scaleb(-9)


@given(pms, pms)
def test_arithmetic_is_that_of_whole_numbers(a: int, b: int) -> None:
    x, y = Length.from_pm(a), Length.from_pm(b)
    results: list[tuple[Callable[[], Length], int]] = [
        (lambda: x + y, a + b),
        (lambda: x - y, a - b),
        (lambda: -x, -a),
        (lambda: abs(x), abs(a)),
        (lambda: x * 3, a * 3),
        (lambda: 3 * x, a * 3),
    ]
    for op, exact in results:
        if -(2**63) <= exact < 2**63:
            assert op().pm == exact
        else:
            with pytest.raises(InputError) as caught:
                op()
            assert caught.value.kind == "overflow"
    assert (x < y) is (a < b) and (x == y) is (a == b)
    assert bool(x) is (a != 0) and +x == x


@given(st.lists(pms, max_size=20))
def test_a_total_is_checked_once(parts: list[int]) -> None:
    assume(-(2**63) <= sum(parts) < 2**63)
    assert Length.total(Length.from_pm(pm) for pm in parts).pm == sum(parts)


@given(pms, st.integers(0, 1000), st.integers(1, 1000))
def test_a_station_is_the_rounded_share(pm: int, i: int, n: int) -> None:
    assume(i <= n)
    assert Length.from_pm(pm).station(i, n).pm == round(Fraction(pm * i, n))


@given(st.floats(-1e6, 1e6))
def test_a_float_is_rounded_once(value: float) -> None:
    assert Length.from_f64(value, "in").pm == round(Fraction(value) * 25_400_000_000)


@given(st.integers(-(10**6), 10**6), st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
def test_inch_fractions_come_back(parts: int, denominator: int) -> None:
    length = Length.parse_in(f"{parts}/{denominator}", "in") if parts >= 0 else -Length.parse_in(f"{-parts}/{denominator}", "in")
    assert length.fraction("in") == Fraction(parts, denominator)
    for spec in (f"in/{denominator}", f"ft-in/{denominator}"):
        assert Length(format(length, spec)) == length
        assert length.format(spec) == format(length, spec) == LengthFormat(spec).text(length)


def test_format() -> None:
    length = Length("92.075 mm")
    assert f"{length:ft-in/16}" == "0'-3 5/8\""
    assert f"{length}" == str(length) == "92.075 mm"
    assert f"{length:mm.1}" == "92.1 mm"
    assert LengthFormat("in/2 floor").rounded(length) == Length('3.5"')
    assert LengthFormat("in/16").step == Length('1/16"')
    assert LengthFormat("in/16 ceil").rounding == "ceil"
    assert LengthFormat.EXACT == LengthFormat("mm")
    with pytest.raises(InputError) as caught:
        format(length, ">20")
    assert (caught.value.kind, caught.value.path) == ("parse", "format_spec")


def test_shop_rounding() -> None:
    rule = ShopRounding('1"', "ceil")
    assert rule.round('120 1/16"') == Length('121"')
    assert rule.round("3048.0005 mm") == Length('120"')
    assert (rule.increment, rule.rounding, rule.tolerance) == (Length('1"'), "ceil", Length("1 um"))
    assert ShopRounding('1"', "ceil", tolerance='1/8"').round('120 1/16"') == Length('120"')
    for arguments, path in [(('1"', "upward"), "rounding"), (('0"', "ceil"), "increment"), (('1"', "ceil", '1"'), "tolerance"), (("1", "ceil"), "increment")]:
        with pytest.raises(InputError) as caught:
            ShopRounding(*arguments)
        assert caught.value.path == path


def test_angles() -> None:
    assert Angle("180 deg").radians == math.pi
    assert Angle("30 deg").sin() == 0.5 and Angle("60 deg").cos() == 0.5 and Angle("45 deg").tan() == 1.0
    assert Angle.degrees_from(90) == Angle.SQUARE and Angle.ZERO.degrees == 0.0
    assert hash(Angle.degrees_from(-0.0)) == hash(Angle.ZERO)
    bend = BendAngle.between_flanges("120 deg")
    assert bend == BendAngle.from_flat(Angle("60 deg")) and bend.opening == Angle("120 deg") and bend.angle == Angle("60 deg")
    assert BendAngle.SQUARE.half_tangent() == 1.0 and BendAngle.FOLDED.degrees == 180.0
    with pytest.raises(InputError):
        BendAngle.from_flat("360 deg")


def test_a_temperature_is_not_a_difference() -> None:
    assert Temperature("32 degF") == Temperature.new(0, "degC")
    assert Temperature("100 degC").above("0 degC") == TemperatureDifference("100 K")
    assert TemperatureDifference.new(180, "degF").get("K") == 100.0
    with pytest.raises(InputError) as caught:
        Temperature("-1 K")
    assert caught.value.kind == "out of range"


def test_areas_come_from_two_lengths() -> None:
    assert math.isclose(Length("10'").times("10'").get("square"), 1, rel_tol=1e-15)


BARE: list[tuple[Callable[[], object], str]] = [
    (lambda: Length(3.5), "float 3.5"),  # type: ignore[arg-type]
    (lambda: Length(3), "int 3"),  # type: ignore[arg-type]
    (lambda: Length('1"') + 3.5, "float 3.5"),
    (lambda: 3.5 + Length('1"'), "float 3.5"),
    (lambda: 3.5 - Length('1"'), "float 3.5"),
    (lambda: sum([Length('1"'), Length('1"')]), "int 0"),
    (lambda: Length('1"').times(2.0), "float 2.0"),  # type: ignore[arg-type]
    (lambda: Length.total([Length('1"'), 2.0]), "float 2.0"),  # type: ignore[list-item]
    (lambda: Angle(30.0), "float 30.0"),  # type: ignore[arg-type]
    (lambda: BendAngle.from_flat(30), "int 30"),  # type: ignore[arg-type]
    (lambda: Pressure(30.0), "float 30.0"),  # type: ignore[arg-type]
    (lambda: ShopRounding(1, "ceil"), "int 1"),  # type: ignore[arg-type]
    (lambda: Length(None), "NoneType"),  # type: ignore[arg-type]
    (lambda: Length(b"3 in"), "bytes"),  # type: ignore[arg-type]
    (lambda: Length(Area("1 ft2")), "Area"),  # type: ignore[arg-type]
    (lambda: Length.parse(3.5), "float 3.5"),  # type: ignore[arg-type]
    (lambda: Length('1"') * 2.5, "whole numbers"),
    (lambda: Length('1"') * Length('1"'), "unsupported"),
    (lambda: Length('1"') + '1"', "unsupported"),
    (lambda: Length.from_pm(1.0), "float 1.0"),  # type: ignore[arg-type]
    (lambda: Length.from_f64("1", "in"), "str"),  # type: ignore[arg-type]
    (lambda: Length('1"').station(1.0, 2), "float 1.0"),  # type: ignore[arg-type]
    (lambda: Length.total('1"'), "not one text"),
]


@pytest.mark.parametrize("call", [c for c, _ in BARE], ids=[str(i) for i in range(len(BARE))])
def test_what_is_neither_a_value_nor_text_is_a_type_error(call: Callable[[], object]) -> None:
    with pytest.raises(TypeError) as caught:
        call()
    assert dict(BARE)[call] in str(caught.value)


REFUSED: list[tuple[Callable[[], object], str, str]] = [
    (lambda: Length("3"), "unit", ""),
    (lambda: Length("3,5 mm"), "parse", ""),
    (lambda: Length("12-3"), "parse", ""),
    (lambda: Length(""), "parse", ""),
    (lambda: Length('1/0"'), "parse", ""),
    (lambda: Length("\ud800"), "parse", ""),
    (lambda: Length("9" * 100_000 + " m"), "overflow", ""),
    (lambda: Length.parse_exact('1/7"'), "out of range", ""),
    (lambda: Length.parse_in("3", "furlong"), "unit", "unit"),
    (lambda: Length.from_pm(2**63), "overflow", "pm"),
    (lambda: Length.from_pm(-(2**200)), "overflow", "pm"),
    (lambda: Length.inches(40_000), "overflow", "n"),
    (lambda: Length.from_f64(math.nan, "in"), "not finite", "value"),
    (lambda: Length.from_f64(1e300, "in"), "overflow", "value"),
    (lambda: Length('1"').station(1, 0), "out of range", ""),
    (lambda: Length('1"').station(-1, 2), "overflow", "i"),
    (lambda: Length('1"') * 2**40, "overflow", "times"),
    (lambda: Length.MAX + Length.MAX, "overflow", ""),
    (lambda: -Length.MIN, "overflow", ""),
    (lambda: Length('1"').get("furlong"), "unit", "unit"),
    (lambda: Length.total(['1"', "2"]), "unit", "lengths[1]"),
    (lambda: Length('1"').times("2 kg"), "unit", "other"),
    (lambda: Angle("30"), "unit", ""),
    (lambda: Angle.degrees_from(math.inf), "not finite", "degrees"),
    (lambda: Area("1 m"), "unit", ""),
    (lambda: Pressure("1,000 psf"), "parse", ""),
    (lambda: Pressure("1e999 psf"), "not finite", ""),
    (lambda: Temperature("20"), "unit", ""),
    (lambda: Temperature("20 degC").get("degR"), "unit", "scale"),
    (lambda: LengthFormat("in/3"), "out of range", ""),
    (lambda: LengthFormat("feet"), "parse", ""),
]


@pytest.mark.parametrize(("call", "kind", "path"), REFUSED, ids=[str(i) for i in range(len(REFUSED))])
def test_bad_input_names_its_kind_and_place(call: Callable[[], object], kind: str, path: str) -> None:
    with pytest.raises(InputError) as caught:
        call()
    assert (caught.value.kind, caught.value.path) == (kind, path), str(caught.value)
