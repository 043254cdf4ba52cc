"""What is done once, before any room of the compiled part is used."""

import sys

from . import _seamwright
from ._errors import adopt_panics

__all__ = ["PANICS_ARE_ERRORS", "Panic"]

Panic = _seamwright._panic_class()
PANICS_ARE_ERRORS = adopt_panics(Panic)

# The rooms are modules within one extension: the import machinery looks for them in files unless it knows them already.
for _name, _room in list(vars(_seamwright).items()):
    if isinstance(_room, type(sys)):
        sys.modules[f"{_seamwright.__name__}.{_name}"] = _room
