"""What a page holds fixed stands beside its picture: every air and every constant that no control moves."""

import ast
import dataclasses
import importlib.util
import itertools
from functools import cache
from types import SimpleNamespace

import pytest
from lesson_page import open_page

from dryward import units
from dryward.teaching import lessons
from dryward.weather import Air
from package import tree

#: Pages that fix nothing: the index, and those that work on what the learner brings.
NOTHING = ("start", "your-readings", "your-roof")
PAGES = [id for id in lessons.pages() if id not in NOTHING]
#: A constant of a page -> the quantity in which it is told.
TOLD = {
    "ROOM_TEMPERATURE": "temperature", "OUTDOORS": "temperature", "COLD": "temperature", "ROOM": "temperature",
    "OUTDOOR_HUMIDITY": "relative humidity", "ROOM_HUMIDITY": "relative humidity",
    "PAINTED_DRYWALL": "permeance", "CEILING": "area", "AREA": "area", "VOLUME": "volume",
    "SHARE": "relative humidity", "LONG_SHARE": "relative humidity",
}  # fmt: skip
#: Constants told in another writing, by what stands in the line in US units.
WRITTEN = {
    ("winter-house", "EDGE"): "R-1.5",
    ("winter-house", "GLASS"): "R-3",
    ("vent-space", "RAFTER"): "16.4 ft",
    ("vent-space", "SPACING"): "one bay 16 in. wide",
    ("vent-space", "FAN"): "80 cfm",
    ("vent-space", "SHOWER"): "20 minutes",
    ("clear-night", "HOURS"): "12 hours",
    ("the-hole-and-the-ceiling", "WINTER"): "150 days",
}
#: Constants that are no given of the page, and why.
LEFT_OUT = {
    "HOUR": "a unit",
    "DAY": "a unit",
    "HOURS": "of a whole year",
    "KEPT": "how many runs are remembered",
    "EVERY": "hours between points of the picture",
    "MOST_YEARS": "how long a run may take",
    "NORTH": "told in words: facing north",
    "UNDER": "an assumption of the method; the fold says it",
    "DEEP_FILL": "of an option, whose words say it",
    "ALMOST_EMPTY": "from where the cavity is drawn with a batt in it",
    "TIGHT": "where a word of the film begins",
    "OPEN": "where a word of the film begins",
}


def airs(thing, at=()):
    """Every air in a state: where it stands, and itself."""
    if isinstance(thing, Air):
        yield at, thing
    elif dataclasses.is_dataclass(thing) and not type(thing).__module__.startswith("dryward.physics"):
        for field in dataclasses.fields(thing):
            yield from airs(getattr(thing, field.name), (*at, field.name))


@cache
def used(id):
    """Numbers and airs in capitals that the page's `compute` and what it calls in the page's module use."""
    name = f"dryward.course.{id.replace('-', '_')}.page"
    module, parts = importlib.import_module(name), {}
    # A page whose beats are played on the same day or night has that in a module of its own.
    beside = [f"{name.rpartition('.')[0]}.{each}" for each in ("day", "night")]
    names = [*filter(importlib.util.find_spec, beside), name]
    for node in itertools.chain.from_iterable(tree(each).body for each in names):
        if isinstance(node, ast.ClassDef):
            parts |= {each.name: each for each in node.body if isinstance(each, ast.FunctionDef)} | {node.name: node}
        elif isinstance(node, ast.FunctionDef):
            parts[node.name] = node
    page = next(each for each in parts.values() if isinstance(each, ast.ClassDef) and hasattr(
        getattr(module, each.name), "handles"))  # fmt: skip
    seen, left, found = {page.name}, ["compute"], {}
    while left:
        for inner in ast.walk(parts[left.pop()]):
            name = getattr(inner, "id", "") or getattr(inner, "attr", "")
            if name in parts and name not in seen:
                seen.add(name)
                left.append(name)
            value = getattr(module, name, None) if name.isupper() else None
            if isinstance(value, (float, int, Air)):
                found[name] = value
    return found


@pytest.mark.parametrize("id", [each for each in PAGES if each != "hour-by-hour"])
def test_every_air_that_no_control_moves_is_told(id, tmp_path):
    page = open_page(id, tmp_path)
    assert page.widget.live["given"].startswith("Given: ")
    first = dict(airs(page.state))
    still = {(at, part) for at in first for part in ("temperature", "relative_humidity")}
    for name in page.controls:
        for value in page.along(name, 2):
            now = dict(airs(page.compute(SimpleNamespace(**{**vars(page.at), name: value}))))
            still -= {(at, part) for at, part in still if getattr(now[at], part) != getattr(first[at], part)}
    for system in ("us", "si"):
        page.switch_units(system)
        for at, part in still:
            value = float(getattr(first[at], part))
            assert page.held(value, part.replace("_", " ")) in page.widget.live["given"], (at, part)


@pytest.mark.parametrize("id", PAGES)
def test_every_constant_that_is_worked_with_is_told(id, tmp_path):
    page = open_page(id, tmp_path)
    line = page.widget.live["given"]
    for name, value in used(id).items():
        if isinstance(value, Air):
            assert page.air_held(value) in line, name
        elif name in TOLD:
            assert page.held(value, TOLD[name]) in line, name
        elif (id, name) in WRITTEN:
            assert WRITTEN[id, name] in line, name
        else:
            assert name in LEFT_OUT, f"{name} of {id} is neither told nor left out for a reason"


@pytest.mark.parametrize("id", ["where-it-gets-wet", "open-out-tight-in", "inside-the-film", "the-film-that-changes"])
@pytest.mark.parametrize("system", ["us", "si"])
def test_a_roof_is_told_by_what_it_is_made_of(id, system, tmp_path):
    """By hand: paint of 7 perm and gypsum of 40 perm in a row are 1 / (1/7 + 1/40) = 5.957 perm."""
    page = open_page(id, tmp_path, system)
    drywall = units.show(units.to_si(5.957, "perm"), "permeance", system)
    assert f"painted drywall {drywall}" in page.widget.live["given"]
    assert ("12 in. of fiber" if system == "us" else "305 mm of fiber") in page.widget.live["given"]


def test_what_the_weather_sets_follows_the_weather(tmp_path):
    page = open_page("the-film-that-changes", tmp_path)
    page.controls["Weather"].value = "winter"
    assert "room 70 °F, outdoor air 20 °F and 80 %" in page.widget.live["given"]
    page.controls["Weather"].value = "summer"
    assert "room 75 °F, outdoor air 85 °F and 75 %" in page.widget.live["given"]


def test_nothing_is_told_where_nothing_is_fixed(tmp_path):
    assert open_page("your-readings", tmp_path).widget.live["given"] == ""


def test_the_names_in_the_tables_are_in_use():
    names = {name for id in PAGES for name in used(id)}
    assert set(TOLD) | set(LEFT_OUT) <= names
    assert {(id, name) for id in PAGES for name in used(id)} >= set(WRITTEN)
