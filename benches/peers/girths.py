"""A million girths of one profile in NumPy: bend by bend as one would write it, and folded by hand and worked in blocks.

Both ask what the library asks of an element: that there is a thickness, no radius below nothing, no leg swallowed by its setbacks, and under
DIN 6935 no bend sharper than the formula covers.
"""

import math
from collections.abc import Callable, Iterator

import numpy as np

COUNT = 1_000_000
BLOCK = 8192
RULES = ("neutral axis", "DIN 6935")
SHAPES = {"square": [90.0] * 8, "different": [30.0, 45.0, 60.0, 75.0, 90.0, 100.0, 110.0, 120.0]}
LEGS = [25.4] * 9
FACTOR = 0.44


def elements() -> tuple[np.ndarray, np.ndarray]:
    """Thickness and inside radius, those of the Rust bench."""
    i = np.arange(COUNT, dtype=np.int64)
    return 0.5 + 0.5 * (i * 1607 % COUNT) / COUNT, 0.6 + 2.0 * (i * 2203 % COUNT) / COUNT


def din_factor(t: np.ndarray, r: np.ndarray) -> np.ndarray:
    ratio = r / t
    k = np.where(ratio > 5, 1.0, 0.65 + 0.5 * np.log10(ratio))
    if (k < 0).any():
        raise ValueError("sharper than the formula covers")
    return k


def neutral(degrees: float, t: np.ndarray, r: np.ndarray) -> np.ndarray:
    return math.radians(degrees) * (r + FACTOR * t)


def din(degrees: float, t: np.ndarray, r: np.ndarray) -> np.ndarray:
    k = din_factor(t, r)
    return 2 * (r + t) * math.tan(math.radians(degrees) / 2) if degrees < 15 else math.radians(degrees) * (r + k * t / 2)


def by_bends(bends: list[float], t: np.ndarray, r: np.ndarray, allowance: Callable[[float, np.ndarray, np.ndarray], np.ndarray]) -> np.ndarray:
    if not ((t > 0).all() and (r >= 0).all()):
        raise ValueError("no thickness or no radius")
    total, before = np.zeros_like(t), 0.0
    for leg, degrees in zip(LEGS, bends):
        after = (r + t) * math.tan(math.radians(degrees) / 2)
        flat = leg - before - after
        if (flat < 0).any():
            raise ValueError("a leg is swallowed")
        total += flat + allowance(degrees, t, r)
        before = after
    flat = LEGS[-1] - before
    if (flat < 0).any():
        raise ValueError("a leg is swallowed")
    return total + flat


def blocks(t: np.ndarray, r: np.ndarray, out: np.ndarray) -> Iterator[tuple[np.ndarray, np.ndarray, np.ndarray]]:
    for start in range(0, len(t), BLOCK):
        yield t[start : start + BLOCK], r[start : start + BLOCK], out[start : start + BLOCK]


def folded(bends: list[float], t: np.ndarray, r: np.ndarray, rule: str) -> np.ndarray:
    """The sum over the bends taken before the elements: c + a r + b t, under DIN 6935 with another term in k t."""
    tangents = [0.0, *(math.tan(math.radians(d) / 2) for d in bends), 0.0]
    angle = sum(math.radians(d) for d in bends)
    setbacks = 2 * sum(tangents)
    # The leg that is swallowed first, by R + T.
    most = min(leg / (a + b) for leg, a, b in zip(LEGS, tangents, tangents[1:]))
    of_r, of_t = angle - setbacks, (FACTOR * angle if rule == "neutral axis" else 0.0) - setbacks
    out = np.empty_like(t)
    one, two = np.empty(BLOCK), np.empty(BLOCK)
    for t, r, girth in blocks(t, r, out):
        a, b = one[: len(t)], two[: len(t)]
        np.add(t, r, out=a)
        if not (t.min() > 0 and r.min() >= 0 and a.max() <= most):
            raise ValueError("an element that cannot be folded")
        np.multiply(r, of_r, out=girth)
        np.multiply(t, of_t, out=a)
        girth += a
        girth += sum(LEGS)
        if rule == "DIN 6935":
            np.divide(r, t, out=a)
            np.log10(a, out=b)
            b *= 0.5
            b += 0.65
            np.copyto(b, 1.0, where=a > 5)
            if b.min() < 0:
                raise ValueError("sharper than the formula covers")
            b *= t
            b *= angle / 2
            girth += b
    return out


def works() -> Iterator[tuple[str, Callable[[], np.ndarray], Callable[[], np.ndarray]]]:
    """Name, bend by bend, folded."""
    t, r = elements()
    for shape, bends in SHAPES.items():
        for rule, allowance in zip(RULES, (neutral, din)):
            yield (
                f"a million girths, 8 {shape} bends, {rule}",
                lambda bends=bends, allowance=allowance: by_bends(bends, t, r, allowance),
                lambda bends=bends, rule=rule: folded(bends, t, r, rule),
            )


def check() -> None:
    for name, one, other in works():
        assert np.allclose(one(), other(), rtol=0, atol=1e-10), name
