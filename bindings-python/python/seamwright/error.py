"""The exceptions of the library."""

from ._errors import InputError, SeamwrightError

__all__ = ["InputError", "SeamwrightError"]
