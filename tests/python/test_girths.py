"""Girths over arrays against NumPy written bend by bend from the published formulas, and against the girth of one profile."""

import math
import sys
import threading
import time
from collections.abc import Callable

import numpy as np
import numpy.typing as npt
import pytest
from seamwright import InputError
from seamwright.trim import Bend, BendRule, Edge, Leg, NeutralFactor, Profile, girths
from seamwright.units import Length

Array = npt.NDArray[np.float64]
ANGLES = [30.0, 90.0, 135.0, 10.0, 100.0]
LEGS = [40.0, 55.0, 60.0, 45.0, 50.0, 70.0]


def profile(edge: Edge | None = None) -> Profile:
    ends = ["sheet-edge"] + ["outer-corner"] * (2 * len(ANGLES)) + ["sheet-edge" if edge is None else "outer-tangent"]
    legs = [Leg(str(i), f"{length} mm", ends[2 * i], ends[2 * i + 1]) for i, length in enumerate(LEGS)]
    bends = [Bend(f"{a} deg", "up" if i % 2 else "down", "1 mm") for i, a in enumerate(ANGLES)]
    return Profile("0.6 mm", legs, bends, "upper", end_edge=edge)


def unfolded(t: Array, r: Array, allowance: Callable[[float, Array, Array], Array]) -> Array:
    """Legs to the outer corners, bend by bend."""
    total = np.full(t.shape, sum(LEGS))
    for degrees in ANGLES:
        total = total - 2 * (r + t) * math.tan(math.radians(degrees) / 2) + allowance(degrees, t, r)
    return total


def neutral(degrees: float, t: Array, r: Array) -> Array:
    """BA = A (R + K T), geometry."""
    return math.radians(degrees) * (r + 0.4 * t)


def din(degrees: float, t: Array, r: Array) -> Array:
    """DIN 6935: k = 0.65 + 0.5 log10(r/s), 1 above 5; v is 0 for openings above 165 degrees. As table books print it."""
    k = np.where(r / t > 5, 1.0, 0.65 + 0.5 * np.log10(r / t))
    arc = np.pi * degrees / 180 * (r + k * t / 2)
    return np.where(degrees < 15, 2 * (r + t) * math.tan(math.radians(degrees) / 2), arc)


def handbook(degrees: float, t: Array, r: Array) -> Array:
    """Machinery's Handbook, 28th edition: (pi/2 R + 0.64 T) A/90 for soft steel."""
    return (np.pi / 2 * r + 0.64 * t) * degrees / 90


@pytest.mark.parametrize(
    ("rule", "allowance"),
    [(BendRule.neutral_axis(NeutralFactor(0.4)), neutral), (BendRule.din_6935(), din), (BendRule.handbook("soft-steel"), handbook)],
    ids=["neutral-axis", "din-6935", "handbook"],
)
def test_each_element_is_what_numpy_says(rule: BendRule, allowance: Callable[[float, Array, Array], Array]) -> None:
    random = np.random.default_rng(7)
    t, r = random.uniform(0.4, 1.2, (40, 50)), random.uniform(0.2, 3.5, (40, 50))
    found = girths(profile(), rule, t, r, unit="mm")
    assert found.shape == (40, 50) and found.dtype == np.float64
    np.testing.assert_allclose(found, unfolded(t, r, allowance), rtol=0, atol=1e-10)
    # And what one profile gives, to its roundings.
    bends = [Bend(f"{a} deg", "up", Length.from_f64(float(r[3, 4]), "mm")) for a in ANGLES]
    single = Profile(Length.from_f64(float(t[3, 4]), "mm"), profile().legs, bends, "upper").girth(rule)
    assert abs(single.get("mm") - found[3, 4]) < 2e-8


def test_hems_keep_their_radius() -> None:
    rule = BendRule.neutral_axis(NeutralFactor(0.4))
    t, r = np.array([0.5, 1.0]), np.array([1.0, 2.0])
    found = girths(profile(Edge.open_hem("12 mm", "4 mm", "up")), rule, t, r, unit="mm")
    # Leg and return each lose R + T to the fold, which takes pi (R + K T).
    np.testing.assert_allclose(found, unfolded(t, r, neutral) + 12 - 2 * (2 + t) + np.pi * (2 + 0.4 * t), rtol=0, atol=1e-10)


def test_arrays_are_broadcast_and_may_have_gaps() -> None:
    rule, t = BendRule.aviation(), np.linspace(0.4, 1.0, 12)
    full = girths(profile(), rule, t, np.full(12, 1.0), unit="mm")
    assert np.array_equal(girths(profile(), rule, t, 1, unit="mm"), full)
    assert np.array_equal(girths(profile(), rule, list(t), [1], unit="mm"), full)
    assert np.array_equal(girths(profile(), rule, t[::-3], 1.0, unit="mm"), full[::-3])
    assert np.array_equal(girths(profile(), rule, t.astype(np.float32)[:2], np.int8(1), unit="mm"), girths(profile(), rule, np.float32(t[:2]), 1.0, unit="mm"))
    grid = girths(profile(), rule, t[:, None], [1.0, 2.0], unit="mm")
    assert grid.shape == (12, 2) and np.array_equal(grid[:, 0], full)
    assert girths(profile(), rule, 0.4, 1.0, unit="mm").shape == () and girths(profile(), rule, [], 1.0, unit="mm").shape == (0,)
    inches = girths(profile(), rule, t / 25.4, 1 / 25.4, unit="in")
    np.testing.assert_allclose(inches * 25.4, full, rtol=1e-14)


def test_a_refusal_names_its_element() -> None:
    rule, t = BendRule.din_6935(), np.full((3, 5), 0.6)
    t[2, 1] = -0.6
    with pytest.raises(InputError) as caught:
        girths(profile(), rule, t, 1.0, unit="mm")
    assert caught.value.path == "elements[11].thickness"
    with pytest.raises(InputError) as caught:
        girths(profile(), rule, 0.6, [1.0, np.nan], unit="mm")
    assert caught.value.path == "elements[1].inside_radius"
    with pytest.raises(InputError) as caught:
        girths(profile(), rule, 0.6, [1.0, 0.01], unit="furlong")
    assert caught.value.path == "unit"


@pytest.mark.parametrize("wrong", ["0.6", ["0.6"], [True], [1j], None, np.ma.array([1.0], mask=[True]), np.array(["2020"], "M8[Y]")])
def test_what_is_no_array_of_numbers_is_refused(wrong: npt.ArrayLike) -> None:
    with pytest.raises(TypeError, match="thickness"):
        girths(profile(), BendRule.aviation(), wrong, 1.0, unit="mm")
    with pytest.raises(ValueError, match="broadcast"):
        girths(profile(), BendRule.aviation(), [0.6, 0.6, 0.6], [1.0, 1.0], unit="mm")


def test_other_threads_run_meanwhile() -> None:
    t, done, counted, interval = np.full(200_000, 0.6), threading.Event(), [0], sys.getswitchinterval()

    def count() -> None:
        while not done.is_set():
            counted[0] += 1
            time.sleep(0)

    thread = threading.Thread(target=count)
    thread.start()
    # From here on nobody takes the interpreter's lock from a thread that holds it: the counter moves only while it is given away.
    sys.setswitchinterval(1000)
    try:
        moved = False
        for _ in range(100):
            before = counted[0]
            girths(profile(), BendRule.din_6935(), t, 1.0, unit="mm")
            moved = counted[0] > before
            if moved:
                break
    finally:
        sys.setswitchinterval(interval)
        done.set()
        thread.join()
    assert moved
