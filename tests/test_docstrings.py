"""Every public name says what it is, in the form the whole kit keeps.

A docstring in numpydoc form: the parameters by their names and in their
order, each number with its unit and range, every error that the function
raises, and an example that runs.
"""

import ast
import inspect
import re

import pytest
from numpydoc.docscrape import FunctionDoc

from package import node, parameters, public_objects

OBJECTS = [pytest.param(m, n, o, id=f"{m}.{n}".removeprefix("dryward.")) for m, n, o in public_objects()]
#: Rooms whose functions take and give quantities.
NUMBERS = ("dryward.air", "dryward.building", "dryward.weather", "dryward.physics")
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


@pytest.mark.parametrize(("module", "name", "thing"), OBJECTS)
def test_summary(module, name, thing):
    first = (inspect.getdoc(thing) or "").split("\n")[0]
    assert first, f"{name} has no docstring"
    assert first.endswith((".", ":", "?", "!")), f"the summary of {name} is not a sentence: {first}"


@pytest.mark.parametrize(("module", "name", "thing"), OBJECTS)
def test_parameters_are_those_of_the_signature(module, name, thing):
    if inspect.isclass(thing) and (issubclass(thing, Exception) or "__init__" not in vars(thing)):
        pytest.skip("takes what its base takes")
    doc = documentation(thing)
    named = [n.strip().lstrip("*") for p in doc["Parameters"] or doc["Attributes"] for n in p.name.split(",")]
    is_room = module.startswith((*NUMBERS, "dryward.units", "dryward.checks", "dryward.evidence"))
    if not named and not is_room:
        pytest.skip("a screen's or a command's own helper: its summary is enough")
    given = [p for p in parameters(thing) if not p.startswith("_")]
    assert named[: len(given)] == given or (inspect.isclass(thing) and set(given) <= set(named)), (
        f"{name} takes {given} but its docstring lists {named}"
    )


@pytest.mark.parametrize(("module", "name", "thing"), [p for p in OBJECTS if p.values[0].startswith(NUMBERS)])
def test_every_number_has_unit_and_range(module, name, thing):
    for part in documentation(thing)["Parameters"]:
        if not NUMERIC.search(part.type):
            continue
        words = part.type + " " + " ".join(part.desc)
        assert UNIT.search(words), f"{name}: {part.name} has no [unit]"
        assert RANGE.search(words), f"{name}: {part.name} has no range"


@pytest.mark.parametrize(("module", "name", "thing"), [p for p in OBJECTS if inspect.isfunction(p.values[2])])
def test_every_error_is_listed(module, name, thing):
    listed = " ".join(part.type + part.name for part in documentation(thing)["Raises"])
    for error in set(raised(node(module, name))) & {
        "OutOfRange", "NotUnderstood", "UnknownName", "BadFile", "NotConverged"
    }:  # fmt: skip
        assert error in listed, f"{name} raises {error} but does not say so"


@pytest.mark.parametrize(("module", "name", "thing"), [p for p in OBJECTS if p.values[0].startswith(NUMBERS)])
def test_returns_and_example(module, name, thing):
    doc = documentation(thing)
    if inspect.isfunction(thing):
        assert doc["Returns"] or doc["Yields"], f"{name} does not say what it gives"
    if not inspect.isclass(thing) or doc["Parameters"]:
        assert any(">>>" in line for line in doc["Examples"]), f"{name} has no example"
