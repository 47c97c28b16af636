"""Lesson 13: the page against the monthly balance, and its ends."""

import subprocess
import sys

import asked
import numpy as np
import pytest
from lesson_page import check_replies, open_page, to_both_ends

from dryward import building, units
from dryward.building import FixedMembrane
from dryward.course.twelve_months import questions as twelve_months
from dryward.physics import monthly
from dryward.teaching import lessons, vault
from dryward.teaching.vault import roof
from dryward.units import from_si, to_si
from dryward.verdict import STATES, criterion, of_months
from dryward.verdict.words import amount, how_long, how_wet
from dryward.weather import Air, demo_climate

ID = "twelve-months"
PRESETS = {"open-sheet": "vented-vault", "fiberboard": "vented-vault-fiberboard", "osb": "vented-vault-osb"}
PRESETS["closed-sheet"] = "vented-vault-closed"


def year(at):
    """The balance of the roof on the sliders, built here again."""
    roof = building.preset(PRESETS[at.Outer]).replace("inner membrane", FixedMembrane(at.M_in))
    return monthly.balance(roof, demo_climate(at.Place), Air(units.to_si(70, "degF"), at.RH_in))


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        found = year(page.at)
        assert page.readouts["peak"] == pytest.approx(found.peak)
        assert page.readouts["left"] == pytest.approx(found.left)
        assert page.readouts["growth"] == pytest.approx(found.growth)
        assert page.readouts["peak_month"] == found.peak_month
        assert page.verdict == of_months(found)
        says_how_the_year_ends(page, found)
        says_what_the_state_hangs_on(page)
        page.controls[name].value = value


def says_how_the_year_ends(page, found):
    """Nothing gathers, all of it leaves, or so much is left."""
    ends = {
        "no wetting": "No month adds water to this roof",
        "dries": "dries back each year: the last of it is gone in",
        "grows": "are left when the next winter comes, and the second year adds to it.",
        "holds": "are left when the next winter comes, and the second year ends the same.",
    }
    assert [ending for ending, words in ends.items() if words in page.sentence] == [found.ending]
    if found.planes:
        assert page.show(found.peak, "area density") in page.sentence
        assert (page.show(found.left, "area density") in page.sentence) or found.ending == "dries"


def says_what_the_state_hangs_on(page):
    """The worst finding with its number, and its months; never a month that would last as one that did."""
    worst, system = page.verdict.worst, page.unit_system
    assert how_long(page.verdict) in page.sentence
    if worst.what == "wood-moisture" and worst.place.side:
        shown = amount(worst.value, worst.criterion.unit, system)
        assert f"would settle at {shown} if " in page.sentence
        assert "reaches" not in page.sentence
    else:
        assert how_wet(page.verdict, system).lower() in page.sentence.lower()


def test_it_opens_where_the_prediction_is_answered(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.state.months.month[0] == 11  # from November on
    assert page.readouts["peak_month"] == 3  # not January: near the end of winter
    assert "the last of it is gone in June" in page.sentence


def test_to_dry_back_is_not_enough(tmp_path):
    """A roof whose water is gone by fall has the state of its worst months."""
    page = open_page(ID, tmp_path)
    seen = set()
    for outer, state in (("osb", "damp"), ("closed-sheet", "wet"), ("open-sheet", "dry")):
        page.controls["Outer"].value = outer
        assert page.readouts["left"] == 0
        assert page.readouts["state"] == state
        seen.add(page.readouts["state"])
    assert seen == set(STATES)


def test_the_most_open_ceiling_is_damp_by_what_its_wood_holds(tmp_path):
    """Nearly a kilogram a square meter that dries back by fall: its OSB stands far over 20 % by then."""
    page = open_page(ID, tmp_path)
    page.controls["M_in"].value = 100
    assert page.readouts["peak"] == pytest.approx(0.973, rel=0.01)
    osb = building.preset("vented-vault-osb").layer("outer layer")
    weight = osb.substance.density * osb.thickness
    before = 100 * osb.substance.water_content(0.80) / osb.substance.density
    assert page.verdict.worst.value == pytest.approx(before + 100 * page.readouts["peak"] / weight)
    assert page.verdict.worst.value > criterion("wood-moisture").caution
    assert "The outer layer reaches 27 % moisture content in March, over 20 % in 5 of 12 months." in page.sentence
    assert any("the wood stands at 80 % RH, and all that gathers" in limit for limit in lessons.lesson(ID).limits)


def test_water_behind_plastic_in_a_hot_town_is_wet_though_it_dries_back(tmp_path):
    page = open_page(ID, tmp_path)
    for name, value in (("Place", "hot-humid"), ("Outer", "open-sheet"), ("M_in", 0.06)):
        page.controls[name].value = value
    assert page.readouts["peak"] == pytest.approx(1.316, rel=0.01)
    assert page.readouts["peak_month"] == 8
    assert page.readouts["left"] == 0
    assert page.readouts["state"] == "wet"
    assert "gather between inner membrane and insulation in August" in page.sentence


def test_what_is_gained_is_dried_or_left(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_in"].value = 70
    months = page.state.months
    assert page.readouts["left"] > 0
    assert months.condensed.sum() - months.evaporated.sum() == pytest.approx(page.readouts["left"])
    assert page.readouts["state"] == "wet"
    assert "the second year adds to it. Each year adds" in page.sentence
    running = np.cumsum(months.condensed.sum(axis=1) - months.evaporated.sum(axis=1))
    assert page.views(page.state).held == pytest.approx(tuple(running))


def test_strips_judge_the_same_years(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_in"].value = 62
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start = control.value
        places = control.options or page.along(name, len(strip.states))
        for place, state in zip(places, strip.states, strict=True):
            control.value = place if control.options else control.shown(place)
            assert page.readouts["state"] == state, (name, place)
        assert len(set(strip.states)) > 1, name
        control.value = start


def test_the_page_says_that_no_leak_is_counted(tmp_path):
    page = open_page(ID, tmp_path)
    assert "leak" in page.verdict.left_out
    assert any(limit.startswith("No air leaks.") for limit in lessons.lesson(ID).limits)


@pytest.mark.parametrize("id", [ID, "hour-by-hour"])
def test_the_sources_name_the_limits_that_judge(id):
    said = " ".join(lessons.lesson(id, "si").sources)
    wood, water = criterion("wood-moisture"), criterion("free-water")
    assert f"{wood.caution:.0f} percent MC is common practice with no source. {wood.damage:.0f} percent, " in said
    assert f"DIN 4108-3, {water.damage * 1000:.0f} g/m² read in a secondary source, " in said
    assert f"{water.caution * 1000:.0f} g/m² from memory" in said
    assert (f"limit of {criterion('mold-index').damage:.0f}: ASHRAE" in said) == (id == "hour-by-hour")


def test_the_town_loads_no_sun_library():
    code = "from dryward import panels; panels.page('twelve-months')\nimport sys; print('pvlib' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


def test_the_checks_with_their_fixed_numbers():
    adding, wettest, left = asked.fixed("twelve-months")
    assert from_si(to_si(adding.answer, "gr/ft2"), "g/m2") == pytest.approx(190)
    assert wettest.answer in ("February", "March", "April")
    assert left.answer.startswith("It grows")


def test_the_prediction_and_its_numbers():
    found = monthly.balance(roof(3.0, "OSB"), twelve_months.demo_climate("cold"), vault.air(70, 40))
    assert found.month[0] in (10, 11, 12)
    assert found.peak_month in (2, 3)
    assert twelve_months.demo_climate("cold").coldest == 1
