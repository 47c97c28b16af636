"""Lesson 2: the page against the balance of the house, its known numbers, its strips."""

import pytest
from lesson_page import check_replies, open_page, places, to_both_ends

from dryward import air, units
from dryward.teaching import lessons
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
        notes = {each.name: each.note for each in page.readout_list}
        assert notes["limit"].startswith("middle of the glass")
        if humidity > 1:
            warm = at.T_out >= ROOM
            assert ("This page is for winter." in page.sentence) == warm
            assert ("windows and walls" in page.sentence) == ("walls" in notes["relative_humidity"]) == (not warm)
            assert ("glass is wet" in page.alts[0]) == (limit < 1)
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
            assert bool(strip.holds[place]) == ("the middle of the glass stays dry" in page.sentence), (name, place)
        control.value = start


def test_warm_outdoors_no_glass_is_called_cold(tmp_path):
    page = open_page(ID, tmp_path)
    for outdoors, damp, words in ((100, 80, "Outdoor air this damp"), (80, 30, "no glass is cold")):
        page.controls["T_out"].value, page.controls["RH_out"].value = outdoors, damp
        page.controls["Water"].value, page.controls["Fresh_air"].value = 40, 15
        assert words in page.sentence
        assert "runs down" not in page.sentence


def test_edges_get_wet_before_the_glass(tmp_path):
    def limit(r_value):
        face = ROOM - (ROOM - units.to_si(20, "degF")) * 0.68 / r_value
        return 100 * air.saturation_vapor_pressure(face) / air.saturation_vapor_pressure(ROOM)

    said = " ".join(lessons.lesson(ID).limits)
    assert f"an edge of R-1.5 is wet from {limit(1.5):.0f} % on, the glass from {limit(3.0):.0f} %" in said


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_number_that_turns_the_units_is_explained(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    step = page.steps(page.state)[1]
    assert f"{step.formula.split(' ')[0]} turns these units into pressure at" in step.words


def test_ends_and_checks(tmp_path):
    page = open_page(ID, tmp_path)
    assert to_both_ends(page)
    check_replies(page)
