"""House rules that a linter does not know.

No constant stands twice, nothing printed promises what the kit cannot, and
no file names a place on the machine it was written on.
"""

import ast
import os
import re
import subprocess
from collections import defaultdict
from pathlib import Path

import pytest

from package import docstrings, modules, tree

PROJECT = Path(__file__).parents[1]
SKIPPED = {".git", ".venv", "venv", "node_modules", "build", "dist"}
#: Never to be promised by a teaching kit.
PROMISES = re.compile(
    r"\b(is|are|be|stays?|perfectly|completely) safe\b|\bsafe (roof|wall|design|assembl)|\bcertif(ied|y|ies)\b",
    re.IGNORECASE,
)
#: Places on one machine, and hosts a package may be fetched from; put together here so as not to find themselves.
PLACES = re.compile(
    "|".join(("/" + "work/", "/" + "root/", "/" + "home/[a-z]+/", "python" + "hosted", "index" + "-url"))
)


def files():
    """Every text file of the checkout, as the version control lists it."""
    listed = subprocess.run(
        ["git", "ls-files", "-co", "--exclude-standard"], cwd=PROJECT, capture_output=True, text=True
    )
    if listed.returncode == 0:
        return [PROJECT / line for line in listed.stdout.splitlines() if (PROJECT / line).is_file()]
    found = []
    for folder, below, names in os.walk(PROJECT):
        below[:] = [name for name in below if name not in SKIPPED and not name.startswith(".")]
        found += [Path(folder, name) for name in names]
    return found


def text(path):
    """What a file says, or nothing for a picture."""
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return ""


def significant(number):
    """How many significant digits a literal has."""
    digits = f"{abs(number):.15g}".split("e")[0].replace(".", "")
    return len(digits.strip("0"))


def literals():
    """Where each number of four digits or more stands in the package."""
    found = defaultdict(list)
    for name in modules():
        for node in ast.walk(tree(name)):
            if isinstance(node, ast.Constant) and type(node.value) in (int, float) and significant(node.value) >= 4:
                if 0.99 < node.value < 1.01:
                    continue  # a margin for rounding, not a property of anything
                found[float(node.value)].append(f"{name}:{node.lineno}")
    return found


def test_no_constant_stands_twice():
    twice = {value: places for value, places in literals().items() if len(places) > 1}
    assert not twice, f"give the number a name in the lowest room that needs it: {twice}"


def test_the_count_of_digits():
    assert [significant(x) for x in (273.15, 101325, 3600.0, 1e-9, 0.0366, 2501e3)] == [5, 6, 2, 1, 3, 4]


def printed():
    """Every string of the package that is no docstring, with its place."""
    for name in modules():
        silent = {id(node) for node in docstrings(name)}
        for node in ast.walk(tree(name)):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in silent:
                yield f"{name}:{node.lineno}", node.value


def test_nothing_printed_promises_safety():
    for place, words in printed():
        assert not PROMISES.search(words), f"{place} promises: {words}"
    for path in files():
        if path.suffix in {".ipynb", ".md", ".html", ".csv", ".toml"}:
            found = PROMISES.search(text(path))
            assert not found, f"{path.relative_to(PROJECT)} promises: {found.group()}"


def test_no_file_names_a_place_on_one_machine():
    for path in files():
        found = PLACES.search(text(path))
        assert not found, f"{path.relative_to(PROJECT)} names {found.group()}"


@pytest.mark.parametrize("name", [m for m in modules() if m.startswith(("dryward.physics", "dryward.air"))])
def test_physics_prints_and_reads_nothing(name):
    for node in ast.walk(tree(name)):
        if isinstance(node, ast.Call):
            called = getattr(node.func, "id", getattr(node.func, "attr", ""))
            assert called not in {"print", "open", "read_text", "write_text", "read_csv", "loadtxt"}, (
                f"{name}:{node.lineno} calls {called}"
            )
