"""The library: every row speaks, holds sensible numbers, and is refused when it does not."""

import re

import numpy as np
import pytest

from dryward import building
from dryward.building import library, schema
from dryward.building.library import category
from dryward.checks import BadFile, UnknownName
from dryward.units import AIR_PERMEABILITY, from_si

THINGS = [thing for things in building.by_category().values() for thing in things]
MATERIALS = [thing for thing in THINGS if isinstance(thing, building.Material)]
SHEETS = [thing for thing in THINGS if hasattr(thing, "at_mean")]


def spoken(thing):
    return getattr(thing, "origin", thing)


def by_id(things):
    return pytest.mark.parametrize("thing", things, ids=lambda thing: thing.id)


def test_at_least_seventy_rows_over_all_shelves():
    shelves = building.by_category()
    assert len(THINGS) >= 70
    assert {
        "wood and framing",
        "wood panels and sheathing",
        "boards",
        "fibrous insulation",
        "foam insulation",
        "masonry and concrete",
        "roof coverings and cladding",
        "membranes and sheets",
        "finishes and paints",
        "air layers",
    } <= set(shelves)
    assert all(category(thing) == shelf for shelf, things in shelves.items() for thing in things)


@by_id(THINGS)
def test_every_row_says_where_it_comes_from(thing):
    words = spoken(thing)
    assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", thing.id)
    assert building.substance(thing.id) is thing
    for text in (words.name, words.source, words.where, words.how_read):
        assert text


@by_id(MATERIALS + SHEETS)
def test_everything_that_counts_has_a_range(thing):
    names = [name for name, _, _ in spoken(thing).ranges]
    assert ("conductivity" if thing in MATERIALS else "permeance") in names


@by_id(THINGS)
def test_a_range_holds_its_value(thing):
    here = {
        "conductivity": lambda: thing.conductivity_at(0.0),
        "vapor_permeability": lambda: thing.permeability_at(0.5),
        "sorption": lambda: thing.water_content(0.8),
        "permeance": lambda: thing.permeance(0.5, 0.5),
    }
    for name, low, high in spoken(thing).ranges:
        assert low <= here[name]() * (1 + 1e-9), name
        assert here[name]() <= high * (1 + 1e-9), name


@by_id(MATERIALS)
def test_a_material_is_physical(thing):
    assert thing.ranges, "every material says how far its conductivity may lie"
    assert thing.density * thing.specific_heat < 4e6, "no building material stores more heat than water"
    rh = np.linspace(0, 1, 41)
    assert np.all(np.diff(thing.permeability_at(rh)) >= 0), "no product here tightens when damp"
    assert thing.permeability_at(0.0) <= AIR_PERMEABILITY, "no more open than still air"
    if thing.sorption:
        assert np.all(np.diff(thing.water_content(rh)) > 0)
        assert thing.water_content(1.0) < 1000.0
    if thing.liquid_conductivity:
        assert thing.sorption[-1][0] == 1.0
        assert thing.liquid_conductivity[-1][0] == pytest.approx(thing.sorption[-1][1])


@by_id([thing for thing in MATERIALS if thing.wood])
def test_wood_follows_one_curve(thing):
    share = thing.water_content(0.65) / thing.density / 0.12
    assert 0.75 <= share <= 1.01
    assert thing.water_content(0.9) / thing.water_content(0.5) == pytest.approx(20.53 / 9.27, rel=0.01)


def test_wood_gypsum_and_masonry_carry_liquid():
    for name in ("spruce", "osb", "plywood", "gypsum-board", "brick", "concrete", "lime-plaster"):
        assert building.material(name).liquid_conductivity, name


def test_what_the_lessons_build_with():
    perm = 57.2134951e-12
    film = building.membrane("teaching-variable")
    assert film.permeance(0.30, 0.30) == pytest.approx(0.5 * perm)
    assert film.permeance(0.20, 0.20) == pytest.approx(0.5 * perm)
    assert film.permeance(0.80, 0.80) == pytest.approx(13 * perm)
    assert film.permeance(0.55, 0.55) == pytest.approx((0.5 * 13) ** 0.5 * perm), "straight on a log scale"
    assert "invented for teaching" in film.origin.how_read
    for name, level in (
        ("teaching-fixed-1-perm", 1),
        ("polyethylene-6-mil", 0.06),
        ("vapor-open-50-perm", 50),
        ("closed-tenth-perm", 0.1),
        ("latex-paint-7-perm", 7),
    ):
        assert building.membrane(name).permeance() == pytest.approx(level * perm), name
    cavity = building.air_space("service-cavity")
    assert from_si(cavity.thermal_resistance, "R") == pytest.approx(1.0)
    assert from_si(cavity.vapor_permeance, "perm") == pytest.approx(80.0)
    assert building.air_space("vent-space").vented


def test_osb_opens_when_damp():
    board = building.material("osb")
    assert board.permeability_at(0.8) > 2 * board.permeability_at(0.2)


@pytest.mark.parametrize(
    ("ask", "name", "words"),
    [
        (building.material, "sprucce", r'There is no material "sprucce"; did you mean spruce'),
        (building.material, "polyethylene-6-mil", 'There is no material "polyethylene-6-mil"'),
        (building.membrane, "spruce", 'There is no membrane "spruce"'),
        (building.air_space, "vent-spce", "did you mean vent-space"),
        (building.substance, "../../passwords", 'There is no material or sheet "../../passwords"'),
        (building.substance, ["list"], "There is no material or sheet"),
    ],
)
def test_an_unknown_id_gets_a_sentence(ask, name, words):
    with pytest.raises(UnknownName, match=re.escape(words)):
        ask(name)


def test_search_finds_words_in_any_order():
    assert [thing.id for thing in building.search("board gypsum")][:2] == ["gypsum-board", "gypsum-board-900"]
    assert building.search("FOAM closed")[0].id == "spray-foam-closed-cell"
    assert len(building.search("")) == len(THINGS)
    assert "spruce" in [thing.id for thing in building.search("sprue")]
    assert building.search("xyzzy") == ()


HEAD = "id,name,category,kind,dry,wet,low,high,points,backing,unit,source,where,how_read,note\n"
GOOD = "a,sheet,things,fixed,1,,,,,,perm,by hand,-,counted,\n"


def test_a_good_row_is_read():
    sheet = library.read_table("sheets.csv", "# a remark\n" + HEAD + GOOD)["a"]
    assert sheet.permeance() == pytest.approx(57.2134951e-12)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (HEAD.replace("unit,", "") + GOOD, "The table sheets.csv lacks the column unit."),
        (HEAD.replace("source,", "") + GOOD, "The table sheets.csv lacks the column source."),
        (HEAD + GOOD.replace("by hand", ""), "The table sheets.csv, line 2 (a), lacks its source."),
        (HEAD + GOOD.replace(",-,", ",,"), "The table sheets.csv, line 2 (a), lacks its where."),
        (HEAD + GOOD.replace("counted", " "), "The table sheets.csv, line 2 (a), lacks its how_read."),
        (HEAD + GOOD + GOOD, "The table sheets.csv, line 3, has the id a a second time."),
        (HEAD + "a,sheet,things\n", "The table sheets.csv, line 2, does not have one value for each column."),
        (HEAD + GOOD.replace(",1,", ",one,"), "line 2, column dry: 'one' is not a number."),
        (HEAD + GOOD.replace(",1,", ",,"), "line 2 (a), lacks a number it needs."),
        (HEAD + GOOD.replace("fixed", "magic"), "line 2: there is no kind of sheet 'magic'."),
        (HEAD + GOOD.replace(",1,", ",-1,"), "line 2 (a): Permeance of sheet is −5.72135e-11"),
        (HEAD + GOOD.replace(",1,,", ",2,1,"), "line 2 (a): The wet-cup value"),
        (HEAD + GOOD.replace("perm,", "perms,"), 'line 2 (a): There is no unit "perms"; did you mean perm'),
        (
            HEAD + "a,film,things,variable,,,,,0.3:1 0.8,,perm,by hand,-,counted,\n",
            "is not made of points like",
        ),
        (
            HEAD + "a,film,things,variable,,,,,0.3:2 0.8:1,,perm,by hand,-,counted,\n",
            "line 2 (a): A membrane curve must not fall",
        ),
    ],
)
def test_a_bad_row_is_refused(text, words):
    with pytest.raises(BadFile, match=re.escape(words)):
        library.read_table("sheets.csv", text)


def test_every_table_of_the_package_speaks():
    for name in ("codes/limits.csv", "codes/retarders.csv", "codes/class_2_insulation.csv"):
        assert schema.rows(name, ("edition", "section"))
    assert schema.rows("codes/unread.csv", ("edition", "shown"))
