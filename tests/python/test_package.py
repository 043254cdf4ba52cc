"""The package around the extension: rooms, typing, import time, docstrings that run."""

import doctest
import importlib
import pickle
import pkgutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from types import FunctionType
from typing import Any

import pytest
import seamwright
from seamwright import _seamwright

FOLDER = Path(seamwright.__file__).parent
ROOMS = [m.name for m in pkgutil.iter_modules([str(FOLDER)]) if not m.name.startswith("_")]
# The errors are written in Python.
COMPILED = [room for room in ROOMS if room != "error"]
# What is written in Python in rooms that are compiled.
WRITTEN = {"job": ["compute", "compute_all", "explain", "names"], "layout": ["StripArrays", "strips"], "trim": ["girths"]}


def items() -> Iterator[tuple[str, str, Any]]:
    """Every class and function of the extension, with its room."""
    for room in COMPILED:
        importlib.import_module(f"seamwright.{room}")
        module = getattr(_seamwright, room)
        for name in dir(module):
            if not name.startswith("_"):
                yield room, name, getattr(module, name)


def classes() -> Iterator[tuple[str, Any]]:
    return ((f"{room}.{name}", item) for room, name, item in items() if isinstance(item, type))


def test_the_installed_package_is_tested() -> None:
    assert "site-packages" in FOLDER.parts
    assert (FOLDER / "py.typed").exists()
    assert (FOLDER / "_seamwright" / "__init__.pyi").exists()


def test_the_version_is_the_wheel_s() -> None:
    from importlib.metadata import version

    assert seamwright.__version__ == version("seamwright")


@pytest.mark.parametrize("room", ROOMS)
def test_rooms_say_what_they_export(room: str) -> None:
    module = importlib.import_module(f"seamwright.{room}")
    assert room in seamwright.__all__ and getattr(seamwright, room) is module
    assert module.__doc__
    assert sorted(module.__all__) == list(module.__all__)
    for name in module.__all__:
        assert getattr(module, name).__doc__, name


def test_every_class_of_the_extension_is_public_in_its_own_room() -> None:
    for room in COMPILED:
        importlib.import_module(f"seamwright.{room}")
    assert {name for name in dir(_seamwright) if not name.startswith("_")} == {*COMPILED, "VERSION"}
    for room in COMPILED:
        assert sys.modules[f"seamwright._seamwright.{room}"] is getattr(_seamwright, room)
        public = importlib.import_module(f"seamwright.{room}")
        assert list(public.__all__) == sorted([*(name for r, name, _ in items() if r == room), *WRITTEN.get(room, [])])
    for room, name, item in items():
        assert item is getattr(importlib.import_module(f"seamwright.{room}"), name)
        assert not isinstance(item, type) or item.__module__ == f"seamwright.{room}", name


def loaded_by(code: str) -> set[str]:
    """The modules that this code loads in a fresh interpreter."""
    code = f"import sys; before = set(sys.modules); {code}; print(*set(sys.modules) - before)"
    return set(subprocess.run([sys.executable, "-I", "-c", code], capture_output=True, text=True, check=True).stdout.split())


def test_the_import_is_light() -> None:
    # What takes time is made when first needed, the rooms' classes above all; the time itself is told by import_time.py, not asserted.
    assert loaded_by("import seamwright") == {"__future__", "seamwright", *(f"seamwright.{own}" for own in ("_errors", "_seamwright", "_start"))}


@pytest.mark.parametrize("code", ["import seamwright.trim", "from seamwright import trim", "import seamwright; seamwright.trim.Profile"])
def test_a_room_is_loaded_alone_however_it_is_asked_for(code: str) -> None:
    more = {m.removeprefix("seamwright.") for m in loaded_by(code) - loaded_by("import seamwright")}
    # PyO3 makes a room with the help of `types`.
    assert more - {"types"} == {"trim", "_seamwright.trim"}


def test_a_pickle_loads_the_room_that_it_needs() -> None:
    from seamwright.units import Length

    code = f"import pickle; pickle.loads({pickle.dumps(Length('3 in'))!r})"
    assert {"seamwright.units", "seamwright._seamwright.units"} <= loaded_by(code)


def test_the_package_knows_its_rooms_and_no_others() -> None:
    assert set(ROOMS) <= set(dir(seamwright))
    with pytest.raises(AttributeError, match="'seamwright' has no attribute 'gutter'"):
        seamwright.gutter  # type: ignore[attr-defined]
    with pytest.raises(KeyError, match="gutter"):
        _seamwright._room("gutter")


def docstrings() -> list[tuple[str, str]]:
    found = [(f"{room}.{name}", item.__doc__ or "") for room, name, item in items()]
    for name, item in classes():
        found += [(f"{name}.{m}", getattr(v, "__doc__", None) or "") for m, v in vars(item).items() if not m.startswith("__")]
    # What is written in Python itself.
    for room in ROOMS:
        module = importlib.import_module(f"seamwright.{room}")
        found += [(f"{room}.{n}", getattr(module, n).__doc__ or "") for n in module.__all__ if isinstance(getattr(module, n), FunctionType)]
    return [(name, text) for name, text in found if ">>>" in text]


@pytest.mark.parametrize(("name", "text"), docstrings(), ids=[name for name, _ in docstrings()])
def test_docstrings_run(name: str, text: str) -> None:
    room = name.partition(".")[0]
    public: dict[str, Any] = dict(vars(importlib.import_module(f"seamwright.{room}")))
    test = doctest.DocTestParser().get_doctest(text, public, name, None, None)
    assert doctest.DocTestRunner(verbose=False).run(test).failed == 0


def test_methods_have_docstrings() -> None:
    for name, item in classes():
        for member, value in vars(item).items():
            if not member.startswith("__") and not isinstance(value, item):
                assert value.__doc__, f"{name}.{member}"
