"""Lesson 11: the page against vent and leak physics, its known numbers, its ends."""

import math
import re

import asked
import numpy as np
import pytest
from asked import outside
from lesson_page import bet_all, check_replies, first_visit, open_page, to_both_ends

from dryward import building, units
from dryward.air import MASS_RATIO
from dryward.course.vent_space.questions import RAFTER, power
from dryward.physics import steady
from dryward.physics.airleak import LONG_SHARE, Leak
from dryward.physics.ventspace import carrying_limit
from dryward.teaching import lessons, questions
from dryward.units import from_si, to_si
from dryward.weather import Air
from dryward.weather.places import demo_climate

ID = "vent-space"
COLD = units.to_si(20, "degF")
ROOM = Air(units.to_si(70, "degF"), 0.4)
PUSH = {"leaky": 4.0, "leaky-and-pulled": 6.0}


def leak(option, temperature):
    """What straight air of the leaks brings over what air that cold can have, worked out here again."""
    if option not in PUSH:
        return 0.0
    house = Leak.from_blower_door(3.0, units.to_si(20_000, "ft3"), 0.2, area=units.to_si(600, "ft2"))
    return (1 - LONG_SHARE) * house.moisture(PUSH[option], ROOM, temperature).excess


def shower_water(fahrenheit):
    """Of 20 minutes of a fan at 80 cfm, 75 degF and 85 %: what cold air cannot have [kg], by hand."""
    bath, held = outside(75, 85), outside(fahrenheit, 100)
    ratios = [MASS_RATIO * each.vapor_pressure / (101325.0 - each.vapor_pressure) for each in (bath, held)]
    dry = (101325.0 - bath.vapor_pressure) / (287.055 * (bath.temperature + 273.15))
    return to_si(80.0, "cfm") * 1200 * dry * (ratios[0] - ratios[1])


def fan(option):
    """One shower a day in a bay of 16 in. by 5 m [kg/(s m2)]."""
    return shower_water(20) / (to_si(16.0, "in") * 5.0 * 86400) if option == "bath-fan" else 0.0


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    roof = building.preset("vented-vault-variable")
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        at = page.at
        outdoor = Air(COLD, at.RH_out)
        power = 0.0 if at.Leak == "cut" else carrying_limit(at.Gap, at.Air, 5.0, outdoor)
        load = leak(at.Leak, COLD) + fan(at.Leak) + steady.profile(roof, ROOM, outdoor).vapor_flux_out
        assert page.readouts["power"] == pytest.approx(power, rel=1e-9, abs=1e-15)
        assert page.readouts["load"] == pytest.approx(load, rel=1e-4 if at.Leak == "bath-fan" else 1e-9)
        assert page.readouts["rest"] == pytest.approx(power - load, rel=1e-4)
        below = LONG_SHARE / (1 - LONG_SHARE) * leak(at.Leak, COLD)
        assert page.readouts["below"] == pytest.approx(below, rel=1e-9)
        share = load / power if power > 0 else math.inf
        assert page.verdict.worst.value == pytest.approx(share, rel=1e-4)
        assert page.verdict.state == ("dry" if share < 0.5 else "damp" if share < 1 else "wet")
        assert ("it can keep up" in page.sentence) == (share < 0.5)
        assert ("at best it keeps up" in page.sentence) == (0.5 <= share < 1)


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path, "si")  # 0.1 m/s and 38 mm; 20 ft/min is 1.6 % more
    page.controls["Gap"].value, page.controls["Air"].value = 38, 0.1
    assert units.from_si(page.readouts["power"], "g/m2/day") == pytest.approx(37, rel=0.02)
    assert units.from_si(page.readouts["leak"], "g/m2/day") == pytest.approx(123.2, abs=0.1)
    assert units.from_si(page.readouts["below"], "g/m2/day") == pytest.approx(13.7, abs=0.05)
    assert units.from_si(page.readouts["load"], "g/m2/day") == pytest.approx(124.7, abs=0.1)
    page.controls["RH_out"].value = 90
    assert units.from_si(page.readouts["power"], "g/m2/day") == pytest.approx(19, rel=0.025)  # 18.6, printed as 19
    page.controls["RH_out"].value = 95
    assert units.from_si(page.readouts["power"], "g/m2/day") == pytest.approx(37.3 / 4, rel=0.02)
    us = open_page(ID, tmp_path)
    us.controls["Gap"].value = 1.5
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


def test_a_bay_that_is_cut_off_carries_nothing_under_the_same_vents(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["Leak"].value = "airtight"
    assert page.readouts["rest"] > 0
    page.controls["Leak"].value = "cut"
    for gap in (0.5, 4):
        page.controls["Gap"].value = gap
        assert page.readouts["power"] == 0.0
        assert page.verdict.state == "wet"
        assert page.sentence.startswith("Wet. No air goes through this bay")
        assert "No air moves through the gap" in page.alts[0]


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
    for option in ("leaky", "leaky-and-pulled", "airtight", "bath-fan"):
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
                    assert "on a still day it cannot" in told, "nobody orders a wind"
                else:
                    assert told.startswith(f"{page.verdict.state.capitalize()}. The ceiling leaks: ")
                    assert "Seal the ceiling first. " in told
                    assert told.index("leaks") < told.index("vent")
                # At any wind: what more pull draws in, and what no vent gets at.
                more, less = (page.show(leak(each, COLD), "vapor flux") for each in ("leaky-and-pulled", "leaky"))
                assert (f"draws {more}" if option == "leaky" else f"the leaks bring {less}, not {more}") in told
                stays = LONG_SHARE / (1 - LONG_SHARE) * leak(option, COLD) * 150 * 86400
                assert f"{page.show(stays, 'area density')} in 150 such days" in told


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
    for text in (
        shown["leaky"]["load"],
        shown["leaky-and-pulled"]["load"],
        *(each["rest"].lstrip("−") for each in shown.values()),
    ):
        assert text in lesson.prediction.reveal, text
    rest = [page.readouts["rest"]]
    page.controls["Gap"].value, page.controls["Leak"].value = (1.0 if system == "us" else 25.4), "leaky"
    assert rest[0] < page.readouts["rest"] < 0


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


def test_the_checks_with_their_fixed_numbers():
    fog, code, fix, duct, hip = asked.fixed("vent-space")
    small, large = (power(1.5, 20, RAFTER, (20, rh)) for rh in (95, 80))
    assert small / large == pytest.approx(0.25, rel=1e-6)
    assert f"{units.show(to_si(small, 'g/m2/day'), 'vapor flux', 'us')}, a quarter as much" in fog.answer
    assert "288 in²" in code.prompt
    leaks = Leak.from_blower_door(4.0, to_si(20_000, "ft3"), 0.25, area=to_si(600, "ft2"))
    brings = leaks.moisture(4.0, outside(70, 40), to_si(32.0, "degF"))
    assert units.show(brings.excess - brings.stays, "vapor flux", "us") in fix.prompt
    assert fix.answer == "Air-seal the ceiling."
    assert f"{from_si(shower_water(40), 'lb'):.3g} lb more than air that cold can have" in duct.right.reply
    assert hip.answer == "Through 12 bays."


@pytest.mark.parametrize("seed", [None, *range(25)])
def test_each_belief_is_offered_in_every_draw_of_its_check(seed):
    offered = [{each.belief for each in found.choices} for found in questions.checks(ID, seed)]
    for number, belief in enumerate(
        ("one-in-300-is-physics", "one-in-300-is-physics", "more-vents-always-help", "bath-fan-into-vent",
         "ridge-vent-vents-every-bay")
    ):  # fmt: skip
        assert belief in offered[number]


# --- the beats ---------------------------------------------------------------------------


def day(option, inches, humidity=0.8, fahrenheit=20.0):
    """What comes, what can go and what is left on a day, without the page [g/m2 day]."""
    cold = to_si(fahrenheit, "degF")
    can_go = (
        0.0 if option == "cut" else carrying_limit(to_si(inches, "in"), to_si(20.0, "ft/min"), 5.0, Air(cold, humidity))
    )
    by_layers = steady.profile(building.preset("vented-vault-variable"), ROOM, Air(cold, humidity)).vapor_flux_out
    comes = max(by_layers, 0.0) + leak(option, cold) + fan(option)
    return [from_si(each, "g/m2/day") for each in (comes, can_go, max(comes - can_go, 0.0))]


@pytest.fixture(scope="module")
def played(tmp_path_factory):
    """Each beat with its states and what is shown, by its id."""
    page, found = first_visit(ID, tmp_path_factory.mktemp("played")), {}
    for beat in page.stage.beats:
        bet_all(page)
        found[beat.id] = beat, page.stage.states, page.widget.live["stage"]
        page.hear({"kind": "beat", "number": page.stage.at + 1})
    return found


def right(beat, states):
    return [bet.right(states) for bet in beat.bets]


def test_each_bet_comes_out_as_the_physics_says(played):
    found = played
    assert right(*found["first"][:2]) == ["b"]
    assert day("airtight", 1)[2] == 0.0 < day("leaky", 1)[2]
    assert right(*found["doubled"][:2]) == ["same", "more"]
    assert day("airtight", 2)[2] == day("airtight", 1)[2]
    assert day("leaky-and-pulled", 2)[2] > day("leaky", 1)[2] > day("leaky", 2)[2]
    assert right(*found["shower"][:2]) == ["none", "much"]
    assert day("bath-fan", 1)[2] > 0
    assert right(*found["bays"][:2]) == ["all", "none"]
    assert day("cut", 1)[1] == 0.0
    # Nor does it hang on the one day: drier, damper, colder.
    for humidity, fahrenheit in ((0.6, 20.0), (0.9, 20.0), (0.8, 5.0)):
        left = [
            day(*each, humidity, fahrenheit)[2] for each in (("leaky-and-pulled", 2), ("airtight", 1), ("leaky", 1))
        ]
        assert left[0] > 0 == left[1] < left[2], (humidity, fahrenheit)


def test_the_numbers_of_the_beats(played):
    """By hand: g/m2 a day on 92.9 m2 in 150 days, in buckets of 5 gallons; a bay has 2.03 m2."""
    found = {id: live["told"].replace("\xa0", " ") for id, (_, _, live) in played.items()}
    bucket, roof_area, bay = 5 * 3.785, 92.9, 5.0 * 0.4064

    def winter(grams):
        return f"{grams * roof_area * 0.15 / bucket:.2g} buckets of 5 gallons"

    small, large = day("leaky", 1)[2], day("leaky-and-pulled", 2)[2]
    assert f"The other keeps {winter(small)}" in found["first"]
    assert f"left {winter(small)}" in found["doubled"]
    assert f"leaves {winter(large)}" in found["doubled"]
    assert f"150 showers of a winter: {day('bath-fan', 1)[2] * bay * 0.15 / bucket:.2g} buckets" in found["shower"]
    can_go, stays = day("airtight", 1)[1] * bay / 29.57, day("cut", 1)[2] * bay * 150 / 29.57
    assert f"carry off {can_go:.2g} fl oz a day" in found["bays"]
    assert f"{stays:.2g} fl oz a winter" in found["bays"]
    leaky = f"{day('leaky', 1)[0] * bay * 0.15 / bucket:.2g} buckets of 5 gallons in this one bay"
    assert leaky in found["bays"]


def test_the_dots_are_what_comes_split_where_the_air_is_full(played):
    """A dot a minute is a fluid ounce a day on the roof; one that ends beyond the ridge is carried off."""
    ounce = 29.57e-3 / (92.9 * 86400)
    for id in ("first", "doubled"):
        _, states, live = played[id]
        for state, scene in zip(states, live["scenes"], strict=True):
            gone, stays = (
                sum(each["rate"] for each in scene["flows"] if (each["points"][-1][1] > 1) == out)
                for out in (True, False)
            )
            assert gone == pytest.approx(min(state.load, state.power) / ounce, rel=0.01)
            assert stays == pytest.approx(state.left / ounce, rel=0.01)
            assert bool(scene["marks"]) == (state.left > 0)


def test_the_prediction_and_its_numbers():
    """Over an airtight ceiling the vent keeps up; over a leaky one twice the vent leaves more, where it pulls too."""
    small, pulled, doubled = day("leaky", 1), day("leaky-and-pulled", 2), day("airtight", 1)
    lesson = lessons.lesson(ID, "si").prediction
    assert doubled[0] < doubled[1] < small[0]
    for number in (f"{small[0]:.0f}", f"{pulled[0]:.0f}", f"{small[2]:.1f}", f"{pulled[2]:.0f}"):
        assert f"{number} g/m² day" in lesson.reveal, number
    assert pulled[2] > small[2]
