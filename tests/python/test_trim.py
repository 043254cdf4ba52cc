"""The classes of seamwright.trim, metal and movement as Python sees them. Figures stand in the reference cases."""

import copy
import pickle
from collections.abc import Callable
from typing import Any

import pytest
from seamwright import InputError, metal, movement, trim
from seamwright.metal import Gauge, GaugeSystem
from seamwright.movement import LengthChange
from seamwright.record import Source
from seamwright.trim import (
    Bend,
    BendRule,
    BendSize,
    Deduction,
    DeductionTable,
    DinFactor,
    Edge,
    FlatBend,
    FlatLeg,
    FlatPattern,
    Leg,
    NeutralFactor,
    Profile,
    SetbackFactor,
    din_compensation,
)
from seamwright.units import BendAngle, Length
from test_brake import BRAKE

TABLE = DeductionTable([Deduction("0.05 in", "0.032 in", "90 deg", "0.079 in")], Source.user("trial bends"))
RULES = [
    BendRule.neutral_axis(NeutralFactor(0.4)),
    BendRule.neutral_axis(NeutralFactor(0.4), Source.user("trial bend of 3 May")),
    BendRule.din_6935(),
    BendRule.handbook("soft-steel"),
    BendRule.handbook("soft-copper"),
    BendRule.aviation(),
    BendRule.deductions(TABLE),
    BendRule.sharp_corner(),
]
EDGES = [
    Edge.raw(),
    Edge.closed_hem('1/2"', "up"),
    Edge.closed_hem('1/2"', "down"),
    Edge.closed_hem('1/2"', "down", BendRule.sharp_corner()),
    Edge.open_hem('1/2"', '5/32"', "down"),
]
LEGS = [Leg("deck flange", '4"', "sheet-edge", "outer-corner"), Leg("face", '3"', "outer-corner", "outer-tangent")]
BENDS = [Bend("90 deg", "down", "0.03 in"), Bend("90 deg", "down", "0.03 in", BendRule.din_6935())]
DRIP = Profile("0.024 in", LEGS, BENDS[:1], painted="upper", end_edge=EDGES[4])
FLAT = DRIP.unfold(RULES[0])
VALUES: list[Any] = [
    *[NeutralFactor.MIDDLE, NeutralFactor(0.4), DinFactor.of("6 mm", "5 mm"), SetbackFactor.of("90 deg")],
    *[BendSize("5 mm", "6 mm", "120 deg"), TABLE.rows[0], TABLE],
    *RULES,
    *EDGES,
    *LEGS,
    *BENDS,
    *[DRIP, DRIP.reversed(), FlatPattern(DRIP, RULES[0]), FLAT, DRIP.unfold(RULES[3])],
    *[Gauge("24 ga galvanized"), Gauge("24 ga manufacturers-standard"), Gauge.new("copper", 16), *GaugeSystem.all()],
    *[LengthChange("9.5e-6 /degF", "40'", "100 degF"), LengthChange("9.5e-6 /degF", "40'", "-100 degF")],
]
# Read from a flat pattern, which is what pickles.
PARTS: list[Any] = [*FLAT.legs, *FLAT.bends]


def test_every_class_stands_in_the_list() -> None:
    assert {type(v).__name__ for v in [*VALUES, *PARTS]} == {*trim.__all__, *metal.__all__, *movement.__all__} - {"din_compensation", "EndVerdict"} - BRAKE


def test_values_are_told_apart() -> None:
    values = [*VALUES, *PARTS]
    for i, a in enumerate(values):
        for j, b in enumerate(values):
            assert (a == b) is (i == j), (a, b)
    assert len(set(values)) == len(values)


@pytest.mark.parametrize("value", VALUES, ids=lambda v: type(v).__name__)
def test_value_semantics(value: Any) -> None:
    again = [pickle.loads(pickle.dumps(value, protocol)) for protocol in range(pickle.HIGHEST_PROTOCOL + 1)]
    for other in (*again, copy.copy(value), copy.deepcopy(value)):
        assert type(other) is type(value) and other == value and hash(other) == hash(value)
        assert repr(other) == repr(value) and str(other) == str(value)
    with pytest.raises(AttributeError):
        value.anything = 1
    if not repr(value).startswith("<"):
        assert eval(repr(value), {**vars(trim), **vars(metal), **vars(movement)}) == value


def test_a_flat_pattern_adds_up() -> None:
    for rule in (RULES[0], RULES[3], RULES[5], RULES[7]):
        flat = DRIP.unfold(rule)
        assert flat == FlatPattern(DRIP, rule).compute() == FlatPattern(DRIP, rule).explain()[0]
        assert flat.girth == DRIP.girth(rule) == DRIP.reversed().girth(rule)
        assert flat.girth == Length.total([leg.length for leg in flat.legs] + [bend.allowance for bend in flat.bends])
        assert flat.rule == rule and flat.thickness == DRIP.thickness
        parts: list[FlatLeg | FlatBend] = [flat.legs[0], flat.bends[0], flat.legs[1], flat.bends[1], flat.legs[2]]
        assert parts[0].start == Length.ZERO and parts[-1].end == flat.girth
        assert all(a.end == b.start for a, b in zip(parts, parts[1:], strict=False))
        for bend in flat.bends:
            assert abs(((bend.line - bend.start) - (bend.end - bend.line)).pm) <= 1 and bend.rule == rule
            assert flat.from_end(flat.from_end(bend.line)) == bend.line
    assert [leg.part for leg in FLAT.legs] == [0, 1, "end-hem"] and [bend.part for bend in FLAT.bends] == [0, "end-hem"]
    assert [b.direction for b in FLAT.bends] == ["down", "down"]
    assert FLAT.bends[0].angle == BendAngle.SQUARE and FLAT.bends[0].inside_radius == Length("0.03 in")
    assert FLAT.line_mass("1 lb/ft2").get("lb/ft") == pytest.approx(FLAT.girth.get("ft"), rel=1e-12)


def test_a_sharp_corner_says_that_it_is_nominal() -> None:
    assert "nominal-sum" in [c.name for c in DRIP.unfold(BendRule.sharp_corner()).cautions]


def test_a_profile_gives_back_its_parts() -> None:
    assert (DRIP.legs, DRIP.bends, DRIP.painted) == (LEGS, BENDS[:1], "upper")
    assert DRIP.start_edge.is_raw and DRIP.end_edge == EDGES[4] and DRIP.thickness == Length("0.024 in")
    assert (LEGS[0].name, LEGS[0].length, LEGS[0].start, LEGS[0].end) == ("deck flange", Length('4"'), "sheet-edge", "outer-corner")
    assert BENDS[1].rule == BendRule.din_6935() and BENDS[0].rule is None
    assert DRIP.reversed().reversed() == DRIP
    own = Profile("0.024 in", LEGS, [Bend("90 deg", "down", "0.03 in", RULES[3])], "upper", end_edge=EDGES[4])
    assert own.unfold(RULES[0]).bends[0].rule == RULES[3]


def test_rules_and_factors() -> None:
    size = BendSize("0.05 in", "0.032 in", "90 deg")
    assert BendRule.deductions(TABLE).deduction(size) == Length("0.079 in") and TABLE.source == BendRule.deductions(TABLE).source
    assert size.outside_setback() == Length("0.082 in") and size.inside_setback() == Length("0.032 in")
    for rule in (RULES[0], RULES[3], RULES[5]):
        both = rule.allowance(size) + rule.deduction(size)
        assert abs((both - size.outside_setback() * 2).pm) <= 2
    assert [r.name for r in RULES[2:6]] == ["DIN 6935", "handbook", "handbook", "aviation"]
    k = DinFactor.of("6 mm", "5 mm")
    assert k.neutral.value == k.value / 2
    assert isinstance(din_compensation(BendSize("5 mm", "6 mm", "90 deg")), Length)


def test_gauges() -> None:
    g = Gauge("24 ga galvanized")
    assert (g.system, g.number) == (GaugeSystem("galvanized"), 24) and Gauge.new("galvanized", 24) == g
    assert g.least_thickness is None and Gauge.new("copper", 16).least_thickness is not None
    for system in GaugeSystem.all():
        assert system.numbers
    assert str(g.source)


def test_length_change() -> None:
    change = LengthChange("9.5e-6 /degF", "40'", "100 degF")
    out, sheet = change.explain()
    assert out == change.compute() and [s.formula for s in sheet.steps()] == ["alpha L dT"]
    assert LengthChange("9.5e-6 /degF", "40'", "-100 degF").compute() == -out


REFUSED: list[tuple[Callable[[], object], str, str]] = [
    (lambda: Gauge("24 ga"), "unit", ""),
    (lambda: Gauge("24"), "unit", ""),
    (lambda: Gauge.new("galvanized", 99), "out of range", "number"),
    (lambda: GaugeSystem("wire"), "unknown", ""),
    (lambda: GaugeSystem("galvanized").nearest("0 mm"), "out of range", "thickness"),
    (lambda: LengthChange("9.5e-6", "40'", "100 degF"), "unit", "expansion"),
    (lambda: LengthChange("9.5e-6 /degF", "-40'", "100 degF").compute(), "out of range", "length"),
    (lambda: NeutralFactor(float("nan")), "not finite", ""),
    (lambda: BendRule.handbook("brass"), "unknown", "metal"),
    (lambda: BendRule.aviation().allowance(BendSize('0"', '0"', "90 deg")), "out of range", "thickness"),
    (lambda: Leg("a", '1"', "corner", "tangent"), "unknown", "start"),
    (lambda: Leg("a", "1", "tangent", "tangent"), "unit", "length"),
    (lambda: Bend("90 deg", "left", '0"'), "unknown", "direction"),
    (lambda: DeductionTable([], Source.user("none")), "missing", "rows"),
    (lambda: Profile('0"', LEGS[:1], [], "upper"), "out of range", "thickness"),
    (lambda: Profile("0.024 in", LEGS, BENDS[:1], "inner"), "unknown", "painted"),
]


@pytest.mark.parametrize(("call", "kind", "path"), REFUSED, ids=[str(i) for i in range(len(REFUSED))])
def test_bad_input_names_its_kind_and_place(call: Callable[[], object], kind: str, path: str) -> None:
    with pytest.raises(InputError) as caught:
        call()
    every = [(e.kind, e.path) for e in (caught.value, *caught.value.others)]
    assert (kind, path) in every, str(caught.value)


def test_names_are_listed_in_the_refusal() -> None:
    with pytest.raises(InputError) as caught:
        Bend("90 deg", "left", '0"')
    assert caught.value.allowed == "up or down" and caught.value.value == "left"
