"""The committed stubs against the extension, both ways."""

import ast
import importlib
import subprocess
import sys
from pathlib import Path

import pytest
import seamwright

# The compiled part of a room is made when the room is imported.
for room in seamwright.__all__:
    getattr(seamwright, room)

STUBS = sorted((Path(seamwright.__file__).parent / "_seamwright").glob("*.pyi"))
HERE = Path(__file__).parent
# What every class has without its stub saying so.
INHERITED = set(dir(object)) | {"__module__"}


def names(body: list[ast.stmt]) -> set[str]:
    found = set()
    for node in body:
        if isinstance(node, (ast.ClassDef, ast.FunctionDef)):
            found.add(node.name)
        elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
            found.add(node.target.id)
    return found


def compiled(stub: Path) -> object:
    return importlib.import_module("seamwright._seamwright" if stub.stem == "__init__" else f"seamwright._seamwright.{stub.stem}")


@pytest.mark.parametrize("stub", STUBS, ids=lambda stub: stub.stem)
def test_the_stub_and_the_extension_have_the_same_names(stub: Path) -> None:
    tree, module = ast.parse(stub.read_text(encoding="utf-8")), compiled(stub)
    rooms = {other.stem for other in STUBS} - {"__init__"} if stub.stem == "__init__" else set()
    public = {n for n in dir(module) if not n.startswith("__")}
    assert rooms <= public
    assert names(tree.body) == public - rooms
    classes = {node.name: names(node.body) for node in tree.body if isinstance(node, ast.ClassDef)}
    assert set(classes) == {n for n in public if isinstance(getattr(module, n), type)}
    for name, stubbed in classes.items():
        built = set(vars(getattr(module, name)))
        assert stubbed - INHERITED == built - INHERITED, name


@pytest.mark.parametrize("stub", STUBS, ids=lambda stub: stub.stem)
def test_the_stub_knows_every_type(stub: Path) -> None:
    # What pickling calls to make a value again has no type worth telling.
    lines = [line for line in stub.read_text(encoding="utf-8").splitlines() if "def __reduce__" not in line and not line.startswith("from ")]
    assert [line for line in lines if "Any" in line or "Incomplete" in line] == []


def run(*arguments: str) -> None:
    done = subprocess.run([sys.executable, *arguments], capture_output=True, text=True, cwd=HERE)
    assert done.returncode == 0, done.stdout + done.stderr


def test_stubtest_agrees() -> None:
    run("-c", "from seamwright import *; from mypy.stubtest import main; main()", "--ignore-disjoint-bases", "seamwright._seamwright")


def test_types_as_a_user_sees_them() -> None:
    tests = ("blanks", "brake", "city", "cut_shapes", "errors", "example_jobs", "girths", "job", "junction", "layout", "layout_strips", "packet", "pitch", "roof", "strip_arrays", "trim", "units", "water_and_work")
    files = [str(HERE / name) for name in ("typed.py", "cases.py", "demo.py", *(f"test_{test}.py" for test in tests))]
    run("-m", "mypy", "--strict", "--cache-dir", str(HERE.parents[1] / "target" / "mypy"), *files)
