"""Every public name says its types, and mypy reads all of the package by them."""

import ast
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from package import ROOT, modules, path, room, tree

PROJECT = Path(__file__).parents[1]
#: Rooms that are still to do; none in the end.
TO_DO = {"dryward.course"}


def functions(name):
    """(syntax tree, name with its class) of the public functions and methods of a module."""
    for node in tree(name).body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield node, node.name
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            for each in node.body:
                if isinstance(each, ast.FunctionDef) and (not each.name.startswith("_") or each.name == "__init__"):
                    yield each, f"{node.name}.{each.name}"


def untyped(node):
    """Parameters of a function without a type, and "return" where that has none."""
    given = node.args
    every = [*given.posonlyargs, *given.args, *given.kwonlyargs, *filter(None, (given.vararg, given.kwarg))]
    missing = [each.arg for each in every if each.annotation is None and each.arg not in ("self", "cls")]
    return missing + ["return"] * (node.returns is None)


@pytest.mark.parametrize("name", [each for each in modules() if room(each) not in TO_DO])
def test_every_public_function_says_its_types(name):
    bare = {called: missing for node, called in functions(name) if (missing := untyped(node))}
    assert not bare, f"{name} has no types at {bare}"


def test_what_counts_as_untyped():
    bare, typed = ast.parse("def one(a, *b, c: int = 1, **d): ...\ndef other(self, a: int) -> None: ...").body
    assert untyped(bare) == ["a", "b", "d", "return"]
    assert untyped(typed) == []


def overloaded(node):
    """Whether it has no body of its own: one of the signatures of another, or of a protocol."""
    return isinstance(node.body[-1], ast.Expr) and getattr(node.body[-1].value, "value", None) is ...


def mypy(source, cache):
    """What mypy says of a copy of the package by the project's own settings: line by line."""
    command = [sys.executable, "-m", "mypy", "--config-file", PROJECT / "pyproject.toml", "--cache-dir", cache]
    environment = {**os.environ, "MYPYPATH": str(source), "PYTHONPATH": str(source)}
    done = subprocess.run([*command, "-p", "dryward"], capture_output=True, text=True, cwd=source, env=environment)
    assert done.returncode in (0, 1), done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def copied(tmp_path_factory):
    """A copy of the package's source."""
    folder = tmp_path_factory.mktemp("typed")
    shutil.copytree(ROOT, folder / "dryward", ignore=shutil.ignore_patterns("__pycache__", "lessons"))
    return folder


@pytest.mark.slow
def test_mypy_finds_nothing(copied, tmp_path):
    assert mypy(copied, tmp_path).startswith("Success")


#: What is typed at a prompt, texts with their units too, and what an editor then knows of it.
TYPED = """
from dryward.building import Framing, library
from dryward.physics.ventspace import VentSpace
from dryward.weather import Air

reveal_type(Air("70 F", "40 %").temperature)
reveal_type(VentSpace("1-1/2 in", "16 ft", "4/12", "10 in2").height)
reveal_type(Framing("a tenth", library.material("spruce"), ["fill"]).share)
reveal_type(library.membrane("teaching-variable").name)
reveal_type(library.substance("spruce").name)
reveal_type([each.name for each in library.search("spruce")])
"""
KNOWN = ["float", "float", "float", "str", "str", "list[str]"]


@pytest.mark.slow
def test_what_takes_texts_says_so_and_what_is_looked_up_has_a_type(copied, tmp_path):
    place = copied / "dryward" / "typed.py"
    place.write_text(TYPED, encoding="utf-8")
    said = mypy(copied, tmp_path)
    place.unlink()
    assert "error" not in said, said
    assert [each.replace("builtins.", "") for each in re.findall(r'Revealed type is "(.*)"', said)] == KNOWN


@pytest.mark.slow
def test_mypy_sees_a_slip_in_every_public_function(copied, tmp_path):
    """A wrong sum as the first line of each: it must be reported at each of them."""
    expected = set()
    for name in modules():
        lines = path(name).read_text(encoding="utf-8").splitlines()
        nodes = [node for node, _ in functions(name) if not overloaded(node)]
        for node in sorted(nodes, key=lambda each: each.lineno, reverse=True):
            first = node.body[0]
            documented = isinstance(first, ast.Expr) and isinstance(getattr(first, "value", None), ast.Constant)
            below = first.end_lineno if documented else first.lineno - 1
            lines.insert(below, f'{" " * first.col_offset}return 1 + "a"  # {name}.{node.name}')
        where = path(name).relative_to(ROOT)
        (copied / "dryward" / where).write_text("\n".join(lines) + "\n", encoding="utf-8")
        expected |= {(where.as_posix(), number) for number, line in enumerate(lines, 1) if 'return 1 + "a"  # ' in line}
    assert len(expected) > 500
    said = mypy(copied, tmp_path)
    reported = {
        (file, int(line)) for file, line in re.findall(r"^dryward/(\S+?):(\d+): error: Unsupported", said, re.M)
    }
    missed = sorted(expected - reported)
    assert not missed, f"mypy does not read {len(missed)} of {len(expected)} functions, such as {missed[:10]}"
