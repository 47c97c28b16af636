"""Lesson 2: the page against the balance of the house, its known numbers, its strips."""

import pytest
from lesson_page import check_replies, open_page, places, to_both_ends

from dryward import air, units
from dryward.weather import Air, indoor

ID = "winter-house"
ROOM = units.to_si(70, "degF")


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for at in places(page):
        outdoor = Air(at.T_out, at.RH_out)
        humidity = float(indoor.steady_humidity(at.Water, at.Fresh_air, outdoor, ROOM))
        assert page.readouts["relative_humidity"] == pytest.approx(min(humidity, 1.0))
        alone = outdoor.vapor_pressure / air.saturation_vapor_pressure(ROOM)
        assert page.readouts["outdoor_warmed"] == pytest.approx(min(alone, 1.0))
        glass = ROOM - (ROOM - at.T_out) * 0.68 / 3.0
        limit = min(1.0, air.saturation_vapor_pressure(glass) / air.saturation_vapor_pressure(ROOM))
        assert page.readouts["limit"] == pytest.approx(limit)
        if humidity > 1:
            assert page.sentence.startswith("More water comes in")
        else:
            assert f"settles at {humidity * 100:.0f} %" in page.sentence
            assert ("windows get wet" in page.sentence) == (humidity > limit)


@pytest.mark.parametrize(("fresh", "humidity"), [(30, 55), (45, 41), (60, 33), (90, 26)])
def test_known_numbers(fresh, humidity, tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["Water"].put(units.from_si(units.to_si(10, "kg/day"), "pint/day"))
    page.controls["Fresh_air"].value = fresh
    assert page.readouts["relative_humidity"] * 100 == pytest.approx(humidity, abs=1)


def test_known_outdoor_air_warmed(tmp_path):
    page = open_page(ID, tmp_path)
    for outdoors, damp, warmed in ((20, 80, 11), (0, 80, 4), (40, 85, 28)):
        page.controls["T_out"].value, page.controls["RH_out"].value = outdoors, damp
        assert page.readouts["outdoor_warmed"] * 100 == pytest.approx(warmed, abs=0.5)


def test_strips_are_the_page_itself(tmp_path):
    page = open_page(ID, tmp_path)
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start, along = control.value, page.along(name)
        for place in (0, 10, 20, 30, 40):
            control.put(control.shown(along[place]))
            page.refresh()
            assert bool(strip.holds[place]) == ("windows stay dry" in page.sentence), (name, place)
        control.value = start


def test_ends_and_checks(tmp_path):
    page = open_page(ID, tmp_path)
    assert to_both_ends(page)
    check_replies(page)
