"""The committed stub against the extension, both ways."""

import ast
import subprocess
import sys
from pathlib import Path

import seamwright
from seamwright import _seamwright

STUB = Path(seamwright.__file__).parent / "_seamwright.pyi"
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


def test_the_stub_and_the_extension_have_the_same_names() -> None:
    tree = ast.parse(STUB.read_text(encoding="utf-8"))
    public = {n for n in dir(_seamwright) if not n.startswith("__")}
    assert names(tree.body) == public
    classes = {node.name: names(node.body) for node in tree.body if isinstance(node, ast.ClassDef)}
    assert set(classes) == {n for n in public if isinstance(getattr(_seamwright, n), type)}
    for name, stubbed in classes.items():
        built = set(vars(getattr(_seamwright, name)))
        assert stubbed - INHERITED == built - INHERITED, name


def test_the_stub_knows_every_type() -> None:
    # What pickling calls to make a value again has no type worth telling.
    lines = [line for line in STUB.read_text(encoding="utf-8").splitlines() if "def __reduce__" not in line and not line.startswith("from ")]
    assert [line for line in lines if "Any" in line or "Incomplete" in line] == []


def run(*arguments: str) -> None:
    done = subprocess.run([sys.executable, "-m", *arguments], capture_output=True, text=True, cwd=HERE)
    assert done.returncode == 0, done.stdout + done.stderr


def test_stubtest_agrees() -> None:
    run("mypy.stubtest", "--ignore-disjoint-bases", "seamwright._seamwright")


def test_types_as_a_user_sees_them() -> None:
    files = [str(HERE / name) for name in ("typed.py", "cases.py", "test_units.py", "test_pitch.py", "test_trim.py", "test_job.py")]
    run("mypy", "--strict", "--cache-dir", str(HERE.parents[1] / "target" / "mypy"), *files)
