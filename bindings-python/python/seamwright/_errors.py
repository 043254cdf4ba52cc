"""The exceptions. They are defined here, and not in the extension, so that they pickle and have an importable path."""

from __future__ import annotations

__all__ = ["InputError", "SeamwrightError"]


class SeamwrightError(Exception):
    """A refusal: what is wrong, where, with which value, and what would be accepted."""

    __module__ = "seamwright"
    # Without a slot for weak references it keeps the layout of Exception, which `adopt_panics` needs.
    __slots__ = ()

    kind: str
    """The kind of fault in words, for instance ``"parse"`` or ``"out of range"``."""
    code: int
    """The fixed number of the kind, the same as in C."""
    message: str
    """The message alone, without path and value."""
    path: str
    """Where the fault is, as a path into the input; empty where the whole input is at fault."""
    value: str | None
    """The offending value as text."""
    allowed: str | None
    """What would be accepted."""
    span: tuple[int, int] | None
    """What the fault points at: ``value[start:end]``."""
    cure: str | None
    """The input that would cure it, where one can be named."""
    others: tuple[SeamwrightError, ...]
    """Further faults found in the same validation."""

    def __init__(
        self,
        text: str,
        kind: str = "internal",
        code: int = 255,
        message: str | None = None,
        path: str = "",
        value: str | None = None,
        allowed: str | None = None,
        span: tuple[int, int] | None = None,
        cure: str | None = None,
        others: list[SeamwrightError] | tuple[SeamwrightError, ...] = (),
    ) -> None:
        # One argument for Exception: pickling then calls the class with the text and restores the attributes.
        super().__init__(text)
        self.kind = kind
        self.code = code
        self.message = text if message is None else message
        self.path = path
        self.value = value
        self.allowed = allowed
        self.span = span
        self.cure = cure
        self.others = tuple(others)


class InputError(SeamwrightError, ValueError):
    """An input that cannot be worked with."""

    __module__ = "seamwright"
    __slots__ = ()


def _as_seamwright_error(panic: SeamwrightError) -> tuple[type[SeamwrightError], tuple[object, ...], dict[str, object]]:
    return SeamwrightError, panic.args, panic.__dict__


def adopt_panics(panic: type[BaseException]) -> bool:
    """Makes the class in which a panic of the compiled part arrives a SeamwrightError of the kind ``internal``, and says whether it is one.

    PyO3 gives every entry point, slots and conversions of arguments among them, a guard that turns a panic into this one class. It derives
    it from BaseException, which ``except Exception`` misses; so the class, which no other extension shares, is given another base here.
    An interpreter that refuses this must not keep the package from being imported: the panic then stays what PyO3 made it.
    """
    try:
        panic.__bases__ = (SeamwrightError,)
        # It has no importable path; its pickle is a plain SeamwrightError.
        panic.__reduce__ = _as_seamwright_error  # type: ignore[assignment]
    except (AttributeError, TypeError):
        return issubclass(panic, SeamwrightError)
    return True
