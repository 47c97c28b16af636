"""Every name says what it is, and the names a user types say it in full.

`CONTRACT` holds what a user of the package types.  Their docstrings are in
numpydoc form: the parameters by their names and in their order, each number
with its unit and range, every error that the function raises, and an example
that runs.  All else has one good line, and describes no parameter it has not.
"""

import ast
import importlib
import inspect
import re

import pytest
from numpydoc.docscrape import FunctionDoc

from dryward.cli.api import CHAPTERS
from package import all_names, load, parameters, tree

#: What a user types, by the door it stands at: what `dryward api` shows.
CONTRACT = {door: names.split() for door, names in CHAPTERS}


def public(door, name):
    """Where a name of the contract is defined: (module, syntax tree)."""
    thing = getattr(importlib.import_module(f"dryward.{door}"), name)
    module = thing.__module__
    *_, node = [n for n in tree(module).body if getattr(n, "name", "") == thing.__name__]  # above it its overloads
    return module, node


OBJECTS = [pytest.param(*public(door, name), id=f"{door}.{name}") for door, names in CONTRACT.items() for name in names]
#: Rooms whose functions take and give quantities.
NUMBERS = ("dryward.air", "dryward.building", "dryward.weather", "dryward.physics", "dryward.api")
#: Words by which a range is given.
RANGE = re.compile(
    r"\d[\d ]*(\.\d+)?(e-?\d+)? (\([^)]*\) )?to |above|below|or more|at least|at most|\bany\b|rising|as in|same|one of"
)
UNIT = re.compile(r"\[[^\]]+\]|\(\w+ \[")
NUMERIC = re.compile(r"\b(float|array)\b")


def documentation(thing):
    """The docstring of a function or class, in parts."""
    return FunctionDoc(thing, doc=inspect.getdoc(thing))


def raised(function):
    """Names of the errors a function raises in its own lines."""
    for inner in ast.walk(function):
        if isinstance(inner, ast.Raise) and isinstance(inner.exc, ast.Call):
            yield getattr(inner.exc.func, "id", "")


def test_every_name_begins_with_a_sentence():
    firsts = {(module, node.name): (ast.get_docstring(node) or "").split("\n")[0] for module, node in all_names()}
    assert len(firsts) > 1000
    assert {name: first for name, first in firsts.items() if not first.endswith((".", ":", "?", "!"))} == {}


def described(thing):
    """Names of the parameters that a docstring describes."""
    doc = documentation(thing)
    return [n.strip().lstrip("*") for p in doc["Parameters"] or doc["Attributes"] for n in p.name.split(",")]


def test_no_parameter_is_described_that_is_not_there():
    things = [load(module, node.name) for module, node in all_names()]
    functions = [thing for thing in things if inspect.isfunction(thing)]
    assert len(functions) > 500
    wrong = {f.__qualname__: set(described(f)) - set(parameters(f)) for f in functions}
    assert {name: left for name, left in wrong.items() if left} == {}


@pytest.mark.parametrize(("module", "node"), OBJECTS)
def test_parameters_are_those_of_the_signature(module, node):
    name, thing = node.name, load(module, node.name)
    if inspect.isclass(thing) and (issubclass(thing, Exception) or "__init__" not in vars(thing)):
        return  # takes what its base takes
    if inspect.isclass(thing) and "see `" in inspect.getdoc(thing):
        return  # made by the function named there
    named, given = described(thing), [p for p in parameters(thing) if not p.startswith("_")]
    assert [n for n in named if n in given] == given, f"{name} takes {given} but its docstring lists {named}"


@pytest.mark.parametrize(("module", "node"), [p for p in OBJECTS if p.values[0].startswith(NUMBERS)])
def test_every_number_has_unit_and_range(module, node):
    name, thing = node.name, load(module, node.name)
    for part in documentation(thing)["Parameters"]:
        if not NUMERIC.search(part.type):
            continue
        words = part.type + " " + " ".join(part.desc)
        assert UNIT.search(words), f"{name}: {part.name} has no [unit]"
        assert RANGE.search(words), f"{name}: {part.name} has no range"


@pytest.mark.parametrize(("module", "node"), [p for p in OBJECTS if isinstance(p.values[1], ast.FunctionDef)])
def test_every_error_is_listed(module, node):
    name, thing = node.name, load(module, node.name)
    listed = " ".join(part.type + part.name for part in documentation(thing)["Raises"])
    for error in set(raised(node)) & {
        "OutOfRange", "NotUnderstood", "UnknownName", "BadFile", "NotConverged"
    }:  # fmt: skip
        assert error in listed, f"{name} raises {error} but does not say so"


@pytest.mark.parametrize(("module", "node"), [p for p in OBJECTS if p.values[0].startswith(NUMBERS)])
def test_returns_and_example(module, node):
    name, thing = node.name, load(module, node.name)
    doc = documentation(thing)
    if inspect.isfunction(thing):
        assert doc["Returns"] or doc["Yields"], f"{name} does not say what it gives"
    if inspect.isfunction(thing) and "path" in parameters(thing):
        return  # an example would need a file on the reader's disk
    if not inspect.isclass(thing) or doc["Parameters"]:
        assert any(">>>" in line for line in doc["Examples"]), f"{name} has no example"
