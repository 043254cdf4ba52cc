"""Arrays that a caller hands in, brought to the types that the compiled part reads. NumPy is imported when first needed."""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = ["numbers", "offsets"]


def _given(given: npt.ArrayLike, name: str, kinds: str, expected: str) -> npt.NDArray[np.generic]:
    import numpy as np

    if isinstance(given, np.ma.MaskedArray):
        raise TypeError(f"{name}: a masked array has elements without a value; fill or drop them first")
    array = np.asarray(given)
    if array.dtype.kind not in kinds:
        raise TypeError(f"{name}: {expected} are expected, not {array.dtype}")
    return array


def numbers(given: npt.ArrayLike, name: str) -> npt.NDArray[np.float64]:
    """Numbers as floats."""
    import numpy as np

    return np.asarray(_given(given, name, "fiu", "numbers"), dtype=np.float64)


def offsets(given: npt.ArrayLike, name: str) -> npt.NDArray[np.uintp]:
    """Places in another array: whole numbers, none below 0."""
    import numpy as np

    array = _given(given, name, "iu", "whole numbers")
    if array.ndim != 1:
        raise TypeError(f"{name}: one row of whole numbers is expected, not {array.ndim} dimensions")
    if array.size and int(array.min()) < 0:
        raise ValueError(f"{name}: no place is less than 0, got {int(array.min())}")
    return np.ascontiguousarray(array, dtype=np.uintp)
