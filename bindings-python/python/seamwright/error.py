"""The exceptions of the library.

A fault of the library itself, a panic of its compiled part, arrives as a ``Panic``, which is a ``SeamwrightError`` of the kind ``internal``.
An interpreter may refuse to make it one: then ``PANICS_ARE_ERRORS`` is false, ``Panic`` derives from ``BaseException`` alone, and whoever
must go on after such a fault names it: ``except (SeamwrightError, Panic)``, which is right in both cases.
"""

from ._errors import InputError, SeamwrightError
from ._start import PANICS_ARE_ERRORS, Panic

__all__ = ["InputError", "PANICS_ARE_ERRORS", "Panic", "SeamwrightError"]
