"""Lesson 13: the page against the monthly balance, and its ends."""

import subprocess
import sys

import numpy as np
import pytest
from lesson_page import check_replies, open_page, to_both_ends

from dryward import building, units
from dryward.building import FixedMembrane
from dryward.physics import monthly
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
        words = {"dries": "comes home", "grows": "does not come home", "no wetting": "No month adds", "holds": "stay"}
        assert words[found.verdict] in page.sentence
        page.controls[name].value = value


def test_it_opens_where_the_prediction_is_answered(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.state.months.month[0] == 11  # from November on
    assert page.readouts["peak_month"] == 3  # not January: near the end of winter
    assert "the last of it is gone in June" in page.sentence


def test_what_is_gained_is_dried_or_left(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_in"].value = 70
    months = page.state.months
    assert page.readouts["left"] > 0
    assert months.condensed.sum() - months.evaporated.sum() == pytest.approx(page.readouts["left"])
    assert "does not come home" in page.sentence
    running = np.cumsum(months.condensed.sum(axis=1) - months.evaporated.sum(axis=1))
    assert page.views(page.state).held == pytest.approx(tuple(running))


def test_strips_judge_the_same_years(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_in"].value = 65
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start = control.value
        places = control.options or control.along(len(strip.holds))
        for place, fits in zip(places, strip.holds, strict=True):
            control.value = place if control.options else control.shown(place)
            assert bool(fits) == (page.readouts["left"] == 0), (name, place)
        control.value = start


def test_the_town_loads_no_sun_library():
    code = "from dryward import panels; panels.page('twelve-months')\nimport sys; print('pvlib' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))
