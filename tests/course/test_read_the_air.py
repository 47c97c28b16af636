"""Lesson 1: the page against the air itself, and its known numbers."""

import asked
import pytest
from lesson_page import check_replies, open_page, places

from dryward import air, units
from dryward.weather import Air

ID = "read-the-air"


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for at in places(page):
        first, second = Air(at.T, at.RH), Air(at.T_2, at.RH_2)
        assert page.readouts["vapor_pressure"] == pytest.approx(first.vapor_pressure)
        assert page.readouts["dew_point"] == pytest.approx(first.dew_point)
        assert page.readouts["humidity_ratio"] == pytest.approx(air.humidity_ratio(first.vapor_pressure))
        assert page.readouts["humidity_ratio_2"] == pytest.approx(air.humidity_ratio(second.vapor_pressure))
        if "times the water" in page.sentence:
            more = "A" if first.vapor_pressure > second.vapor_pressure else "B"
            assert page.sentence.startswith(f"Air {more} has")


@pytest.mark.parametrize(
    ("temperature", "humidity", "dew_point"), [(70, 40, 44.6), (70, 50, 50.5), (75, 50, 55.1), (85, 75, 76.2)]
)
def test_known_dew_points(temperature, humidity, dew_point, tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["T"].value, page.controls["RH"].value = temperature, humidity
    assert units.from_si(page.readouts["dew_point"], "degF") == pytest.approx(dew_point, abs=0.1)


def test_known_numbers_of_the_start(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.readouts["vapor_pressure"] == pytest.approx(1002, rel=0.002)
    assert units.from_si(page.readouts["vapor_pressure"], "inHg") == pytest.approx(0.296, rel=0.002)
    assert units.from_si(page.readouts["humidity_ratio"], "gr/lb") == pytest.approx(43.5, rel=0.005)
    assert page.readouts["vapor_density"] * 1e3 == pytest.approx(7.38, rel=0.005)
    page.controls["RH"].value = 30  # the two airs of the prediction
    assert page.readouts["vapor_pressure"] == pytest.approx(751, rel=0.002)
    assert page.state.second.vapor_pressure == pytest.approx(446, rel=0.002)
    assert "though its RH is lower" in page.sentence


def test_the_same_air_twice(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["T_2"].value, page.controls["RH_2"].value = 70, 40
    assert page.sentence == "Both airs have nearly the same water, 43.5 gr/lb, whatever their RH."


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


@pytest.mark.parametrize("system", ["us", "si"])
def test_a_little_water_is_not_rounded_to_nothing(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for control in page.controls.values():
        control.put(control.min)
    page.refresh()
    shown = {each.name: each.shown(system)["value"] for each in page.readout_list}
    water = shown["humidity_ratio"]
    assert float(water.split()[0]) > 0
    assert water in page.sentence
    assert page.steps(page.state)[-1].result == water


def test_the_dry_air_is_named_in_the_arithmetic(tmp_path):
    words = open_page(ID, tmp_path).steps(open_page(ID, tmp_path).state)[-1].words
    assert "0.622 times the vapor pressure, over the pressure of the dry air alone" in words


def test_no_air_has_one_times_the_water_of_the_other(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["T_2"].value = 70
    for humidity in range(30, 51):
        page.controls["RH_2"].value = humidity
        assert "has 1.0 times" not in page.sentence
        assert ("nearly the same" in page.sentence) == (39 <= humidity <= 42)  # within a twentieth


def test_the_checks_with_their_fixed_numbers():
    cooled, heated, wet = asked.fixed("read-the-air")
    assert round(cooled.answer) == 82
    assert {round(each.value) for each in cooled.choices} == {20, 40, 82, 100}
    assert round(heated.answer, 1) == 44.6
    assert wet.answer == "Only the pipe."


def test_the_prediction_and_its_numbers():
    assert f"{asked.pressure(70, 30):.0f} Pa" in asked.reveal("read-the-air")
    assert f"{asked.pressure(30, 80):.0f} Pa" in asked.reveal("read-the-air")
