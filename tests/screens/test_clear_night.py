"""Lesson 12: the page against the night physics, its known numbers, its ends."""

import pytest
from lesson_page import check_replies, open_page, to_both_ends

from dryward import units
from dryward.physics import sky
from dryward.physics.night import frost_margin, night
from dryward.weather import Air

ID = "clear-night"
COLD = units.to_si(20, "degF")


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        at = page.at
        found = night(
            Air(COLD, at.RH_out), at.Sky, at.Wind, resistance=at.R_cover, u_value=0.126, indoor_temperature=21.1
        )
        assert page.readouts["frost"] == pytest.approx(found.frost[-1], rel=1e-9)
        assert page.readouts["drip"] == pytest.approx(found.frost[-1] * units.to_si(600, "ft2"))
        assert page.readouts["margin"] == pytest.approx(frost_margin(Air(COLD, at.RH_out)), abs=1e-8)
        assert ("form by morning" in page.sentence) == (found.frost[-1] > 0)
        if found.frost[-1] == 0:  # a dry covering is what the night itself gives
            assert COLD - found.underside_temperature[-1] == pytest.approx(page.readouts["below"], abs=1e-6)


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.readouts["below"] * 1.8 == pytest.approx(9.9, rel=0.02)
    top = sky.roof_surface(COLD, COLD - 20.0, 8.0, u_value=0.126, indoor_temperature=21.1)
    assert page.readouts["below"] == pytest.approx(COLD - top)
    for humidity, margin in ((70, 7.3), (80, 4.6), (90, 2.2), (95, 1.1)):
        page.controls["RH_out"].value = humidity
        assert page.readouts["margin"] * 1.8 == pytest.approx(margin, abs=0.05)
    page.controls["RH_out"].value = 90
    page.controls["Wind"].value = 20
    assert page.readouts["below"] * 1.8 == pytest.approx(4.9, rel=0.02)


def test_cloud_and_a_layer_bring_less_frost(tmp_path):
    page = open_page(ID, tmp_path)
    clear = page.readouts["frost"]
    page.controls["Sky"].value = 10
    assert page.readouts["frost"] < 0.5 * clear
    page.controls["Sky"].value = 36
    page.controls["R_cover"].value = 4
    assert page.readouts["frost"] < 0.5 * clear


def test_strips_are_the_night_itself(tmp_path):
    page = open_page(ID, tmp_path)
    for humidity in (70, 90):
        page.controls["RH_out"].value = humidity
        for name, strip in page.strips(page.at, page.state).items():
            control = page.controls[name]
            start, places = control.value, page.along(name)
            for place in (0, 10, 20, 30, 40):
                control.value = control.shown(places[place])
                assert bool(strip.holds[place]) == (page.readouts["frost"] == 0), (name, place)
            control.value = start


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


@pytest.mark.parametrize("system", ["us", "si"])
def test_a_covering_that_keeps_its_temperature_is_so_all_night(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        under = page.state.night.underside_temperature
        assert under.max() - under.min() < 0.02  # one weather all night: nothing falls
        assert f"The covering is at {page.show(under[0], 'temperature')} all night" in page.alts[0]
        assert "after sunset" not in page.alts[0]


def test_full_air_frosts_at_once(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_out"].value = 100
    assert "frost starts at once" in page.sentence
    assert "0 °F colder" not in page.sentence.replace("10 °F", "")


def test_the_wind_says_what_its_numbers_mean(tmp_path):
    control = open_page(ID, tmp_path).controls["Wind"]
    for number, word in ((3, "calm"), (8, "breeze"), (20, "windy")):
        assert f"{number} {word}" in control.words
    assert (control.min, control.max, control.unit) == (3, 25, "W/(m² K)")
