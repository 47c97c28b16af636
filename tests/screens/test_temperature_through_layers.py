"""Lesson 4: the page against a wall added up by hand, its known numbers, its strips."""

import pytest
from lesson_page import check_replies, open_page, places

from dryward import air, units
from dryward.panels.lessons.temperature_through_layers import NOTHING

ID = "temperature-through-layers"
ROOM = units.to_si(70, "degF")
BEFORE, AFTER = units.to_si(0.68 + 0.45, "R"), units.to_si(0.62 + 0.17, "R")


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_ratio_of_r(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for at in places(page):
        outside = at.R_out if at.R_out > NOTHING else 0.0
        total = BEFORE + at.R_ins + AFTER + outside
        share = (AFTER + outside) / total
        expected = at.T_out + (ROOM - at.T_out) * share
        assert page.readouts["total"] == pytest.approx(total)
        assert page.readouts["share"] == pytest.approx(share)
        assert page.readouts["sheathing"] == pytest.approx(expected)
        limit = air.saturation_vapor_pressure(expected) / air.saturation_vapor_pressure(ROOM)
        assert page.readouts["humidity_limit"] == pytest.approx(min(limit, 1.0))
        assert f"{share * 100:.0f} % of the way" in page.sentence
        assert page.show(expected, "temperature") in page.sentence


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path)
    assert units.from_si(page.readouts["sheathing"], "degF") == pytest.approx(22, abs=0.5)
    page.controls["R_out"].value = 10
    assert units.from_si(page.readouts["sheathing"], "degF") == pytest.approx(37, abs=0.5)


def test_the_drawing_against_r_is_a_straight_line(tmp_path):
    page = open_page(ID, tmp_path)
    profile = page.state.profile
    slopes = (profile.temperature[1:] - profile.temperature[:-1]) / (
        profile.thermal_resistance[1:] - profile.thermal_resistance[:-1]
    )
    assert slopes == pytest.approx(slopes[0])
    by_depth = page.picture
    page.controls["Axis"].value = "resistance"
    assert page.picture != by_depth


def test_strips_are_the_page_itself(tmp_path):
    page = open_page(ID, tmp_path)
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start, along = control.value, page.along(name)
        for place in (0, 10, 20, 30, 40):
            control.put(control.shown(along[place]))
            page.refresh()
            assert bool(strip.holds[place]) == (page.readouts["humidity_limit"] > 0.40), (name, place)
        control.value = start


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))
