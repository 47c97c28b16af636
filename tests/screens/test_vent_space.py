"""Lesson 11: the page against vent and leak physics, its known numbers, its ends."""

import numpy as np
import pytest
from lesson_page import check_replies, open_page, to_both_ends

from dryward import building, units
from dryward.physics import steady
from dryward.physics.airleak import Leak
from dryward.physics.ventspace import carrying_limit
from dryward.weather import Air
from dryward.weather.places import demo_climate

ID = "vent-space"
COLD = units.to_si(20, "degF")
ROOM = Air(units.to_si(70, "degF"), 0.4)
PUSH = {"leaky": 4.0, "leaky-and-pulled": 6.0}


def leak(option, temperature):
    """What leaks leave, worked out here again."""
    if option == "airtight":
        return 0.0
    house = Leak.from_blower_door(3.0, units.to_si(20_000, "ft3"), 0.2, area=units.to_si(600, "ft2"))
    return house.moisture(PUSH[option], ROOM, temperature).deposit


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    roof = building.preset("vented-vault-variable")
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        at = page.at
        outdoor = Air(COLD, at.RH_out)
        power = carrying_limit(at.Gap, at.Air, 5.0, outdoor)
        load = leak(at.Leak, COLD) + steady.profile(roof, ROOM, outdoor).vapor_flux_out
        assert page.readouts["power"] == pytest.approx(power, rel=1e-9, abs=1e-15)
        assert page.readouts["load"] == pytest.approx(load, rel=1e-9)
        assert page.readouts["rest"] == pytest.approx(power - load, rel=1e-9)
        assert ("it can keep up" in page.sentence) == (power > 0 and power >= 2 * load)
        assert ("at best it keeps up" in page.sentence) == (load <= power < 2 * load)


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path, "si")  # 0.1 m/s and 38 mm; 20 ft/min is 1.6 % more
    assert units.from_si(page.readouts["power"], "g/m2/day") == pytest.approx(37, rel=0.02)
    assert units.from_si(page.readouts["leak"], "g/m2/day") == pytest.approx(128, rel=0.02)
    page.controls["RH_out"].value = 90
    assert units.from_si(page.readouts["power"], "g/m2/day") == pytest.approx(19, rel=0.025)  # 18.6, printed as 19
    page.controls["RH_out"].value = 95
    assert units.from_si(page.readouts["power"], "g/m2/day") == pytest.approx(37.3 / 4, rel=0.02)
    us = open_page(ID, tmp_path)
    assert units.from_si(us.readouts["needed"], "in2") == pytest.approx(288)
    assert us._opening(us.readouts["eave"]) == "2.4 in²/ft"
    assert us._opening(us.readouts["ridge"]) == "4.8 in²/ft"
    assert us._opening(us.readouts["provided"]) == "16.3 in²/ft"


def test_the_page_never_calls_a_code_minimum_physics(tmp_path):
    page = open_page(ID, tmp_path)
    notes = [each.note for each in page.readout_list]
    assert "a code minimum is not physics" in notes


def test_doubling_the_gap_does_not_fix_the_leak_but_sealing_does(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["Gap"].value = 1
    page.controls["Gap"].value = 2
    assert page.readouts["rest"] < 0
    page.controls["Leak"].value = "airtight"
    assert page.readouts["rest"] > 0


def test_an_airtight_ceiling_is_not_told_to_be_sealed(tmp_path):
    page = open_page(ID, tmp_path)
    for name, value in (("RH_out", 99), ("Gap", 0.5), ("Leak", "airtight")):
        page.controls[name].value = value
    assert page.readouts["rest"] < 0 < page.readouts["power"]
    assert "seal" not in page.sentence
    assert "The ceiling is airtight" in page.sentence
    page.controls["Leak"].value = "leaky"
    assert "seal the ceiling first" in page.sentence
    assert "e+" not in page.sentence


def test_more_pull_can_bring_more_than_it_carries(tmp_path):
    page = open_page(ID, tmp_path)
    before = page.readouts["load"]
    page.controls["Leak"].value = "leaky-and-pulled"
    assert page.readouts["load"] - before > 0.5 * page.readouts["power"]


def test_the_picture_shows_the_same_air_and_months(tmp_path):
    page = open_page(ID, tmp_path)
    state = page.views(page.state)
    assert state.humidity[0] == pytest.approx(0.8)
    assert state.humidity[-1] == 1.0
    assert (np.diff(state.humidity) >= 0).all()
    january = demo_climate("cold").air(1)
    assert state.power[0] == pytest.approx(carrying_limit(page.at.Gap, page.at.Air, 5.0, january))
    assert state.leak[0] == pytest.approx(leak("leaky", january.temperature))
    page.controls["Leak"].value = "airtight"
    dry = page.views(page.state)
    rise = (dry.humidity[-1] - dry.humidity[0]) / 0.2
    assert rise == pytest.approx(page.readouts["load"] / page.readouts["power"], rel=1e-9)


def test_strips_say_where_the_air_can_carry_it(tmp_path):
    page = open_page(ID, tmp_path)
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start, places = control.value, page.along(name)
        for place in range(0, len(places), max(1, len(places) // 5)):
            control.value = places[place] if control.options else control.shown(places[place])
            assert bool(strip.holds[place]) == (page.readouts["rest"] >= 0), (name, place)
        control.value = start


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))
