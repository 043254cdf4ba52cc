"""What is done before any room of the compiled part is used."""

import sys

from . import _seamwright
from ._errors import adopt_panics

__all__ = ["PANICS_ARE_ERRORS", "Panic", "open_room"]

Panic = _seamwright._panic_class()
PANICS_ARE_ERRORS = adopt_panics(Panic)


def open_room(name: str) -> None:
    """Make the compiled part of a room: its classes are made when the room is first imported, not when the package is."""
    # A room is a module within the one extension: the import machinery looks for it in files unless it knows it already.
    known = f"{_seamwright.__name__}.{name}"
    if known not in sys.modules:
        sys.modules[known] = room = _seamwright._room(name)
        setattr(_seamwright, name, room)
