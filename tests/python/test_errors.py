"""The exceptions: classes, attributes, pickling."""

import copy
import pickle
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
import seamwright
from seamwright import InputError, SeamwrightError, _seamwright
from seamwright._seamwright import _error_kinds, _raise_kind
from seamwright.error import PANICS_ARE_ERRORS, Panic
from seamwright.units import Length

# The number of every kind of fault and the class that it arrives as. Numbers are never used again for another kind.
CLASSES = {
    1: ("parse", InputError),
    2: ("unit", InputError),
    3: ("not finite", InputError),
    4: ("out of range", InputError),
    5: ("missing", InputError),
    6: ("unknown", InputError),
    7: ("conflict", InputError),
    8: ("geometry", InputError),
    9: ("impossible", InputError),
    10: ("overflow", InputError),
    11: ("format", InputError),
    12: ("too large", InputError),
    13: ("cancelled", SeamwrightError),
    255: ("internal", SeamwrightError),
}


def test_the_table_holds_every_kind_once() -> None:
    kinds = _error_kinds()
    assert len({code for code, _ in kinds}) == len(kinds)
    assert dict(kinds) == {code: name for code, (name, _) in CLASSES.items()}


@pytest.mark.parametrize("code", [code for code, _ in _error_kinds()])
def test_each_kind_arrives_as_its_class(code: int) -> None:
    name, cls = CLASSES[code]
    with pytest.raises(SeamwrightError) as caught:
        _raise_kind(code)
    e = caught.value
    assert type(e) is cls
    assert isinstance(e, ValueError) is (cls is InputError)
    assert (e.kind, e.code) == (name, code)
    assert (e.message, e.path, e.value, e.allowed, e.cure) == ("a fault raised on purpose", "field", "5\u2033,", "nothing", "not asking")
    # Core points at bytes; here the mark takes three of them and is one character.
    assert e.span == (2, 3)
    assert e.value is not None and e.value[2:3] == ","
    assert [type(o) for o in e.others] == [cls]
    assert e.others[0].path == "further"
    assert str(e).startswith("field: a fault raised on purpose, got ")
    assert "accepted: nothing" in str(e)


@pytest.mark.parametrize("protocol", range(pickle.HIGHEST_PROTOCOL + 1))
def test_a_refusal_pickles_with_all_that_it_says(protocol: int) -> None:
    with pytest.raises(InputError) as caught:
        _raise_kind(1)
    e = caught.value
    for other in (pickle.loads(pickle.dumps(e, protocol)), copy.copy(e), copy.deepcopy(e)):
        assert type(other) is InputError
        assert str(other) == str(e)
        for name in ("kind", "code", "message", "path", "value", "allowed", "span", "cure"):
            assert getattr(other, name) == getattr(e, name), name
        assert [str(o) for o in other.others] == [str(o) for o in e.others]


def test_the_classes_have_an_importable_path() -> None:
    for cls in (InputError, SeamwrightError):
        assert cls.__module__ == "seamwright"
        assert getattr(seamwright, cls.__name__) is cls
        assert getattr(seamwright.error, cls.__name__) is cls


def test_a_refusal_can_be_made_by_hand() -> None:
    e = InputError("no such thing")
    assert (str(e), e.message, e.path, e.value, e.others) == ("no such thing", "no such thing", "", None, ())


def test_the_span_points_at_the_character() -> None:
    with pytest.raises(InputError) as caught:
        Length("3\u00a05\u20448\u2033,")
    e = caught.value
    assert e.value is not None and e.span is not None
    assert e.value[slice(*e.span)] == ","


class Panics:
    """Raises the class in which a panic arrives: on its way through the extension it becomes a panic in Rust again, as PyO3 has it."""

    def __iter__(self) -> Iterator[object]:
        raise Panic("on purpose")


def test_a_panic_is_an_exception_of_the_kind_internal() -> None:
    try:
        Length.total(Panics())  # type: ignore[arg-type]
    except Exception as e:
        caught = e
    assert isinstance(caught, SeamwrightError) and not isinstance(caught, InputError) and not isinstance(caught, ValueError)
    assert (caught.kind, caught.code, caught.path, caught.value, caught.others) == ("internal", 255, "", None, ())
    assert "on purpose" in str(caught)
    again = pickle.loads(pickle.dumps(caught))
    assert type(again) is SeamwrightError and str(again) == str(caught) and again.kind == "internal"


# What an interpreter does that keeps extension classes from being changed: CPython's own flag is set on the class, whose structure is public.
REFUSING = """
import ctypes
from seamwright_extension import _seamwright

panic = _seamwright._panic_class()
flags = ctypes.c_ulong.from_address(id(panic) + 21 * ctypes.sizeof(ctypes.c_void_p))
assert flags.value == panic.__flags__, "the layout of a class is not the one assumed"
flags.value |= 1 << 8
try:
    panic.__bases__ = (Exception,)
except TypeError as refusal:
    assert "immutable" in str(refusal), refusal
else:
    raise AssertionError("the class can still be changed")

import seamwright
from seamwright.error import PANICS_ARE_ERRORS, Panic
from seamwright.units import Length

assert sys.modules["seamwright._seamwright"] is _seamwright and Panic is panic
assert PANICS_ARE_ERRORS is False and Panic.__bases__ == (BaseException,)


class Panics:
    def __iter__(self):
        raise Panic("on purpose")


try:
    Length.total(Panics())
except seamwright.SeamwrightError:
    raise AssertionError("it is no SeamwrightError here")
except Panic as caught:
    assert "on purpose" in str(caught)
else:
    raise AssertionError("nothing was raised")
try:
    Length("3")
except seamwright.InputError as refusal:
    assert refusal.kind == "unit", refusal.kind
print("survived")
"""


def test_an_interpreter_that_refuses_the_base_leaves_the_package_usable(tmp_path: Path) -> None:
    # The extension is loaded under its own name before the package, which then takes it as it is.
    loader = f"""
import importlib.util, sys
spec = importlib.util.spec_from_file_location("seamwright._seamwright", {_seamwright.__file__!r})
_seamwright = importlib.util.module_from_spec(spec)
sys.modules[spec.name] = _seamwright
spec.loader.exec_module(_seamwright)
"""
    (tmp_path / "seamwright_extension.py").write_text(loader, encoding="utf-8")
    code = f"import sys; sys.path.insert(0, {str(tmp_path)!r})\n{REFUSING}"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, cwd=tmp_path)
    assert (done.stdout, done.returncode) == ("survived\n", 0), done.stderr


def test_here_panics_are_errors() -> None:
    assert PANICS_ARE_ERRORS and issubclass(Panic, SeamwrightError)
    with pytest.raises((SeamwrightError, Panic)):
        Length.total(Panics())  # type: ignore[arg-type]


def test_a_number_that_is_no_kind_is_refused() -> None:
    with pytest.raises(TypeError):
        _raise_kind(0)
