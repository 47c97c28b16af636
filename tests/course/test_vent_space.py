"""Lesson 11: the page against vent and leak physics, its known numbers, its ends."""

import math
import re

import asked
import numpy as np
import pytest
from lesson_page import check_replies, open_page, to_both_ends

from dryward import building, units
from dryward.course.vent_space.questions import RAFTER, power
from dryward.physics import steady
from dryward.physics.airleak import LONG_SHARE, Leak
from dryward.physics.ventspace import carrying_limit
from dryward.teaching import lessons, vault
from dryward.teaching.vault import roof
from dryward.units import from_si, to_si
from dryward.weather import Air
from dryward.weather.places import demo_climate

ID = "vent-space"
COLD = units.to_si(20, "degF")
ROOM = Air(units.to_si(70, "degF"), 0.4)
PUSH = {"leaky": 4.0, "leaky-and-pulled": 6.0}


def leak(option, temperature):
    """What straight air of the leaks brings over what air that cold can have, worked out here again."""
    if option == "airtight":
        return 0.0
    house = Leak.from_blower_door(3.0, units.to_si(20_000, "ft3"), 0.2, area=units.to_si(600, "ft2"))
    return (1 - LONG_SHARE) * house.moisture(PUSH[option], ROOM, temperature).excess


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
        below = LONG_SHARE / (1 - LONG_SHARE) * leak(at.Leak, COLD)
        assert page.readouts["below"] == pytest.approx(below, rel=1e-9)
        share = load / power if power > 0 else math.inf
        assert page.verdict.worst.value == pytest.approx(share, rel=1e-9)
        assert page.verdict.state == ("dry" if share < 0.5 else "damp" if share < 1 else "wet")
        assert ("it can keep up" in page.sentence) == (share < 0.5)
        assert ("at best it keeps up" in page.sentence) == (0.5 <= share < 1)


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path, "si")  # 0.1 m/s and 38 mm; 20 ft/min is 1.6 % more
    assert units.from_si(page.readouts["power"], "g/m2/day") == pytest.approx(37, rel=0.02)
    assert units.from_si(page.readouts["leak"], "g/m2/day") == pytest.approx(123.2, abs=0.1)
    assert units.from_si(page.readouts["below"], "g/m2/day") == pytest.approx(13.7, abs=0.05)
    assert units.from_si(page.readouts["load"], "g/m2/day") == pytest.approx(124.7, abs=0.1)
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
    assert "seal" not in page.sentence.lower()
    assert "The ceiling is airtight" in page.sentence
    page.controls["Leak"].value = "leaky"
    assert "Seal the ceiling first" in page.sentence
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


@pytest.mark.parametrize("option", ["leaky", "airtight"])
def test_strips_are_the_state_at_each_place(option, tmp_path):
    page = open_page(ID, tmp_path)
    for name, at in (("RH_out", {}), ("Gap", {"RH_out": 97}), ("Air", {"RH_out": 85}), ("Leak", {"RH_out": 80})):
        page.controls["Leak"].value = option
        for other, value in at.items():
            page.controls[other].value = value
        strip, control = page.strips(page.at, page.state)[name], page.controls[name]
        places = page.along(name)
        for place in range(0, len(places), max(1, len(places) // 8)):
            control.value = places[place] if control.options else control.shown(places[place])
            edge = min(abs(page.verdict.worst.value / limit - 1) for limit in (0.5, 1.0))
            assert strip.states[place] == page.verdict.state or edge < 0.02, (name, place)
        control.value = option if control.options else control.shown(places[10])


def test_air_that_can_carry_nothing_is_wet_at_every_gap_and_speed(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_out"].value = 100
    for option in ("leaky", "leaky-and-pulled", "airtight"):
        page.controls["Leak"].value = option
        assert page.readouts["power"] == 0 < page.readouts["load"]
        assert page.verdict.state == "wet"
        assert "carries nothing off, however wide the gap: all of it stays" in page.sentence
        strips = page.strips(page.at, page.state)
        assert {*strips["Gap"].states, *strips["Air"].states, *strips["Leak"].states} == {"wet"}
        assert strips["RH_out"].states[-1] == "wet"


def test_where_the_ceiling_leaks_the_leak_is_named_before_the_vent(tmp_path):
    page = open_page(ID, tmp_path)
    for option in ("leaky", "leaky-and-pulled"):
        page.controls["Leak"].value = option
        for speed in (10, 20, 50, 85, 100):
            for humidity in (30, 80, 99, 100):
                page.controls["Air"].value, page.controls["RH_out"].value = speed, humidity
                told = page.sentence
                if page.verdict.state == "dry":
                    assert told.startswith("Dry. Leaks bring")
                    assert "A sealed ceiling would bring" in told
                else:
                    assert told.startswith(f"{page.verdict.state.capitalize()}. The ceiling leaks: ")
                    assert told.endswith("a vent that pulls more draws more through the leaks.")
                    assert told.index("leaks") < told.index("vent")


def test_nothing_on_the_page_says_that_air_can_carry_it(tmp_path):
    page = open_page(ID, tmp_path)
    words = [page.sentence, *(strip["words"] for strip in page.strips_shown.values())]
    assert not re.search(r"can carry it", " ".join(words))
    assert page.strips_shown["Gap"]["words"] == "Wet at every setting"
    assert "dry" not in page.strips_shown["Air"]["words"].lower()


def test_what_seeps_stays_below_and_is_said_beside_the_load(tmp_path):
    page = open_page(ID, tmp_path)
    note = next(each.note for each in page.readout_list if each.name == "load")
    assert note == "177 gr/ft² day by air, 2.23 gr/ft² day by vapor; 19.6 gr/ft² day more stay in the roof below"
    page.controls["Leak"].value = "airtight"
    note = next(each.note for each in page.readout_list if each.name == "load")
    assert note == "2.23 gr/ft² day by vapor"


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_reveal_is_what_the_page_shows(system, tmp_path):
    """A bigger vent that also pulls leaves more behind than the small one."""
    page = open_page(ID, tmp_path, system)
    lesson = lessons.lesson(ID, system)
    inches, fast = (1.0, 2.0), units.from_si(units.to_si(20, "ft/min"), "ft/min" if system == "us" else "m/s")
    page.controls["Air"].value = fast
    shown = {}
    for gap, option in zip(inches, ("leaky", "leaky-and-pulled"), strict=True):
        page.controls["Gap"].value = gap if system == "us" else 25.4 * gap
        page.controls["Leak"].value = option
        shown[option] = {each.name: each.shown(system)["value"] for each in page.readout_list}
    assert shown["leaky"]["load"] in lesson.prediction.prompt
    for text in (shown["leaky-and-pulled"]["load"], *(each["rest"].lstrip("−") for each in shown.values())):
        assert text in lesson.prediction.reveal, text
    rest = [page.readouts["rest"]]
    page.controls["Gap"].value, page.controls["Leak"].value = (1.0 if system == "us" else 25.4), "leaky"
    assert rest[0] < page.readouts["rest"] < 0


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


def test_the_checks_with_their_fixed_numbers():
    fog, code, fix = asked.fixed("vent-space")
    assert fog.answer / next(each.value for each in fog.choices if each.belief == "more-vents-always-help") == (
        pytest.approx(0.25, rel=1e-6)
    )
    assert "288 in²" in code.prompt
    assert "177 gr/ft² day" in fix.prompt  # 123 g/m2 a day
    assert fix.answer == "Air-seal the ceiling."


def test_the_prediction_and_its_numbers():
    """More vent does not fix it, and more vent that also pulls leaves more behind than before."""
    cold, house = to_si(20.0, "degF"), to_si(20_000.0, "ft3")
    leak = Leak.from_blower_door(3.0, house, 0.2, area=to_si(600.0, "ft2"))
    still, pulled = (leak.moisture(push, vault.air(70, 40), cold) for push in (4.0, 6.0))
    through = max(steady.profile(roof(), vault.air(70, 40), vault.air(20, 80)).vapor_flux_out, 0.0)
    loads = [from_si(each.excess - each.stays + through, "g/m2/day") for each in (still, pulled)]
    small, wide = (power(gap, 20, RAFTER, (20, 80)) for gap in (1, 2))
    lesson = lessons.lesson("vent-space", "si").prediction
    assert f"{loads[0]:.0f} g/m² day" in lesson.prompt
    assert loads[0] > 2 * wide
    for number in (f"{loads[1]:.0f}", f"{loads[0] - small:.1f}", f"{loads[1] - wide:.0f}"):
        assert f"{number} g/m² day" in lesson.reveal, number
    assert loads[1] - wide > loads[0] - small
