"""The floors of the house: which room may use which, no module in a circle, and what a lesson may load.

The rules of the rooms stand in pyproject.toml; this runs them, follows the
imports of every module, and measures in a fresh process what a lesson really
imports.
"""

import ast
import subprocess
import sys
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import grimp
import pytest

from dryward.teaching import lessons
from package import ROOT, modules, tree

PROJECT = Path(__file__).parents[1]
HEAVY = ("numba", "scipy", "pvlib", "CoolProp", "fluids", "pandas")
#: Our own modules that a function imports, and the library that makes them too heavy for the head of the file.
LATE = {
    ("dryward.cli.bench", "dryward.panels"): "anywidget",
    ("dryward.cli.bench", "dryward.panels.controls"): "anywidget",
    ("dryward.cli.bench", "dryward.panels.learner"): "anywidget",
    ("dryward.cli.check", "dryward.report.document"): "matplotlib",
    ("dryward.cli.pages", "dryward.school.learners"): "tornado",
    ("dryward.cli.pages", "dryward.school.server"): "voila",
    ("dryward.cli.report", "dryward.report.document"): "matplotlib",
    ("dryward.cli.report", "dryward.report.printed"): "fpdf",
    ("dryward.panels.desk.results", "dryward.report.printed"): "fpdf",
    ("dryward.panels.page", "dryward.pictures.drawing"): "matplotlib",
    ("dryward.physics.hourly.simulate", "dryward.physics.hourly.march"): "numba",
}
#: Who imports a module by a name that is known only when it runs, and what for.
BY_NAME = {
    "dryward": "a public name is loaded when it is first asked for",
    "dryward.cli": "the command that was typed, and no other",
    "dryward.cli.api": "the docstrings of the public names",
    "dryward.evidence": "a topic is a module, and nothing else lists it",
    "dryward.exhibit": "a result is drawn and put in a table by rooms above it, when a person asks",
    "dryward.teaching.lessons": "a lesson is a folder, and nothing else lists it",
    "dryward.weather": "the readers of files are loaded when first used",
}


def circle(imports):
    """The modules of a circle, in order, or None; `imports` has for each module those that it imports."""
    try:
        TopologicalSorter(imports).prepare()
    except CycleError as found:
        return found.args[1]
    return None


def late(source):
    """Our own modules that functions of a module import; one named from where the file stands keeps its dots."""
    found = set()
    for function in ast.walk(source):
        if not isinstance(function, (ast.FunctionDef, ast.AsyncFunctionDef, ast.Lambda)):
            continue
        for node in ast.walk(function):
            if isinstance(node, ast.Import):
                found |= {each.name for each in node.names}
            elif isinstance(node, ast.ImportFrom):
                home = "." * node.level + (node.module or "")
                found |= {f"{home}.{each.name}" for each in node.names} & set(modules()) or {home}
    return {each for each in found if each.split(".")[0] in ("dryward", "")}


def by_name(source):
    """Whether a module imports others by name."""
    names = {getattr(node, part, "") for node in ast.walk(source) for part in ("attr", "id", "name")}
    return bool(names & {"import_module", "__import__"})


def loaded_by(code, heavy=HEAVY):
    """The heavy modules a fresh process holds after running some code."""
    ask = f"{code}\nimport sys\nprint(*[m for m in {heavy!r} if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True)
    return done.stdout.split()


def test_every_room_uses_only_the_rooms_below_it():
    done = subprocess.run(
        [Path(sys.executable).with_name("lint-imports"), "--no-cache"],
        cwd=PROJECT,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stdout[-3000:] + done.stderr[-500:]


@pytest.fixture(scope="module")
def graph():
    """What each module imports."""
    return grimp.build_graph("dryward", cache_dir=None)


def test_the_rules_see_every_file(graph):
    """A folder without an ``__init__.py`` loads all the same, but is passed by."""
    stems = [path.relative_to(ROOT.parent).with_suffix("").parts for path in ROOT.rglob("*.py")]
    files = {".".join(parts).removesuffix(".__init__") for parts in stems}
    assert set(modules()) == files
    assert graph.modules == files


def test_no_module_imports_itself_by_way_of_others(graph):
    """Nor for an annotation alone, nor inside a function: a circle says that a part stands in the wrong file."""
    assert circle({name: graph.find_modules_directly_imported_by(name) for name in graph.modules}) is None


def test_the_test_sees_a_circle():
    assert circle({"roof": {"layer"}, "layer": {"wood"}, "wood": set()}) is None
    assert set(circle({"roof": {"layer"}, "layer": {"wood"}, "wood": {"roof"}})) == {"roof", "layer", "wood"}


def test_only_what_is_heavy_is_imported_inside_a_function():
    """An import there may hide a circle, and is found out only when the function runs."""
    assert {(name, each) for name in modules() for each in late(tree(name))} == set(LATE)


def test_the_test_sees_an_import_inside_a_function():
    source = "import dryward.air\nclass Roof:\n    def f(self):\n        {}"
    for line in (
        "from dryward.weather import places",
        "from dryward.weather.places import demo",
        "import dryward.weather.places",
    ):
        assert late(ast.parse(source.format(line))) == {"dryward.weather.places"}
    assert late(ast.parse(source.format("from .places import demo"))) == {".places"}
    assert late(ast.parse(source.format("import pandas"))) == set()


@pytest.mark.parametrize(
    ("module", "imported"),
    # One for each library in every run.
    [
        pytest.param(*each, marks=() if LATE[each] not in list(LATE.values())[:at] else pytest.mark.slow)
        for at, each in enumerate(LATE)
    ],
)
def test_what_is_imported_inside_a_function_is_heavy(module, imported):
    heavy = LATE[module, imported]
    code = f"import sys, {module}\nprint({heavy!r} in sys.modules)\nimport {imported}\nprint({heavy!r} in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "True"]


def test_few_import_by_name():
    """No tool can follow those."""
    assert by_name(ast.parse("from importlib import import_module as load"))
    assert {name for name in modules() if by_name(tree(name))} == set(BY_NAME)


def test_what_a_steady_lesson_uses_loads_nothing_heavy():
    """Nor the library that draws: it takes as long to load as all the rest, and a page needs it only once it opens."""
    steady = ("air", "building", "weather", "physics.steady", "physics.drying", "physics.limits", "physics.monthly")
    names = ", ".join(f"dryward.{each}" for each in (*steady, "panels", "cli"))
    assert loaded_by(f"import {names}", (*HEAVY, "matplotlib")) == []


def test_no_lesson_but_the_hourly_ones_loads_anything_heavy():
    """Opened one after the other in one process; fluids and pandas are heavy too."""
    ids = [each.id for each in lessons.lessons() if each.number and not each.hourly]
    assert len(ids) >= 13
    assert loaded_by(f"from dryward import panels\nfor id in {ids!r}: panels.page(id).picture") == []


def test_the_test_sees_a_heavy_import():
    assert "CoolProp" in loaded_by("from dryward import air; air.moist_air(20.0, 0.5)")
