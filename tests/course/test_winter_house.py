"""Lesson 2: the page against the balance of the house, its known numbers, its strips."""

import asked
import pytest
from lesson_page import check_replies, open_page, places, to_both_ends

from dryward import air, units
from dryward.teaching import lessons, practical, questions
from dryward.units import to_si
from dryward.weather import Air, indoor
from dryward.weather.indoor import steady_humidity

ID = "winter-house"
ROOM = units.to_si(70, "degF")


def fogs_at(r_value, outdoors):
    """Room humidity from which a part of the window with that R fogs; its room film is R-0.68."""
    face = ROOM - (ROOM - outdoors) * 0.68 / r_value
    return air.saturation_vapor_pressure(face) / air.saturation_vapor_pressure(ROOM)


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for at in places(page):
        outdoor = Air(at.T_out, at.RH_out)
        humidity = float(indoor.steady_humidity(at.Water, at.Fresh_air, outdoor, ROOM))
        assert page.readouts["relative_humidity"] == pytest.approx(min(humidity, 1.0))
        alone = outdoor.vapor_pressure / air.saturation_vapor_pressure(ROOM)
        assert page.readouts["outdoor_warmed"] == pytest.approx(min(alone, 1.0))
        edge, glass = fogs_at(1.5, at.T_out), fogs_at(3.0, at.T_out)
        assert page.readouts["limit"] == pytest.approx(min(edge, 1.0))
        assert page.readouts["glass_limit"] == pytest.approx(min(glass, 1.0))
        notes = {each.name: each.note for each in page.readout_list}
        warm = at.T_out >= ROOM
        assert notes["limit"].startswith("no glass is colder" if warm else "the middle of the glass at")
        wet = humidity >= min(glass, 1.0)
        state = "wet" if wet else "damp" if humidity >= min(edge, 0.8) else "dry"
        assert page.readouts["state"] == state, (at, humidity)
        if humidity >= 1:
            assert ("This page is for winter." in page.sentence) == warm
            assert ("windows and walls" in page.sentence) == ("walls" in notes["relative_humidity"]) == (not warm)
            assert ("whole pane runs" in page.alts[0]) == (glass < 1)
        else:
            assert f"settles at {humidity * 100:.0f} %" in page.sentence
            assert ("whole pane runs with water" in page.sentence) == (humidity >= glass)
            assert ("edge of the pane fogs" in page.sentence) == (edge <= humidity < glass)
            assert ("the panes stay clear" in page.sentence) == (humidity < edge)
            assert ("mold can grow" in page.sentence) == (humidity >= 0.8)


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


@pytest.mark.parametrize("system", ["us", "si"])
def test_strips_are_the_page_itself(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    seen = set()
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start, along = control.value, page.along(name)
        for place in range(0, 41, 2):
            control.put(control.shown(along[place]))
            page.refresh()
            assert strip.states[place] == page.readouts["state"], (name, place)
        seen |= set(strip.states)
        control.value = start
    assert seen == {"dry", "damp", "wet"}


def test_the_edge_is_judged_before_the_middle(tmp_path):
    """At 20 degF a room at 55 % fogs the edge of the pane, one at 71 % the whole of it."""
    page = open_page(ID, tmp_path)
    found = {}
    for fresh in (45, 30, 20):
        page.controls["Fresh_air"].value = fresh
        found[round(100 * page.readouts["relative_humidity"])] = page.readouts["state"]
    assert list(found.values()) == ["dry", "damp", "wet"]
    assert 44 < sorted(found)[1] < 67 < sorted(found)[2]
    page.controls["Fresh_air"].value = 30
    edge, glass = (page.verdict.finding(f"window-{part}") for part in ("edge", "glass"))
    assert (edge.state, glass.state) == ("damp", "dry")
    assert edge.value == pytest.approx(page.readouts["relative_humidity"] / page.readouts["limit"])


def test_a_damp_room_is_not_called_dry_because_no_glass_is_cold(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["T_out"].value, page.controls["RH_out"].value = 80, 40
    assert 0.8 < page.readouts["relative_humidity"] < 1
    assert page.readouts["limit"] == 1
    assert page.sentence.startswith("Damp. ")
    assert "but mold can grow on any wall" in page.sentence


def test_the_task_is_done_where_the_page_says_dry(tmp_path):
    """One limit for both: the edge of the pane."""
    page, start = open_page(ID, tmp_path), practical.task("january-air").start
    page.controls["T_out"].value = 10
    seen = set()
    for fresh in range(15, 105, 5):
        page.controls["Fresh_air"].value = fresh
        task = practical.judge("january-air", {"Fresh_air": page.at.Fresh_air})
        assert page.at.Water == pytest.approx(start["Water"])
        assert task.solved == (page.readouts["state"] == "dry"), fresh
        assert f"fogs from {100 * page.readouts['limit']:.0f} % on" in task.words
        seen.add(page.readouts["state"])
    assert seen == {"dry", "damp", "wet"}


def test_wet_edges_are_asked_about_where_they_are_wet():
    limit = 100 * fogs_at(1.5, units.to_si(20, "degF"))
    for seed in (None, *range(40)):
        asked = questions.checks(ID, seed)[2]
        before = int(asked.prompt.split("the room is ")[1].split(" and ")[1].split(" %")[0])
        after = int(asked.right.reply.split("would sit at ")[1].split(" %")[0])
        assert after < limit < before
        assert f"fog from {limit:.0f} % on" in asked.right.reply


def test_warm_outdoors_no_glass_is_called_cold(tmp_path):
    page = open_page(ID, tmp_path)
    for outdoors, damp, words in ((100, 80, "dried by the air conditioning"), (80, 30, "No glass is cold")):
        page.controls["T_out"].value, page.controls["RH_out"].value = outdoors, damp
        page.controls["Water"].value, page.controls["Fresh_air"].value = 40, 15
        assert words in page.sentence
        assert "runs down" not in page.sentence


def test_edges_get_wet_before_the_glass():
    said = " ".join(lessons.lesson(ID).limits)
    cold = units.to_si(20, "degF")
    edge, glass = (f"{100 * fogs_at(each, cold):.0f} %" for each in (1.5, 3.0))
    assert f"the edge fogs from {edge} on, the middle from {glass}" in said
    assert "(R-1.5)" in said
    assert "(R-3)" in said


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_limit_of_the_edge_can_be_done_by_hand(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    *_, plane, limit = page.steps(page.state)
    assert limit.result == page.show(page.readouts["limit"], "relative humidity")
    top, bottom = (float(each.split()[0]) for each in limit.formula.split(" / "))
    assert f"{100 * top / bottom:.0f} %" == limit.result
    assert plane.result.split()[0] in {"47.3", "8.4"}


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_number_that_turns_the_units_is_explained(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    step = page.steps(page.state)[1]
    assert f"{step.formula.split(' ')[0]} turns these units into pressure at" in step.words


def test_ends_and_checks(tmp_path):
    page = open_page(ID, tmp_path)
    assert to_both_ends(page)
    check_replies(page)


def test_the_checks_with_their_fixed_numbers():
    tight, milder, _ = asked.fixed("winter-house")
    assert "From 26 % up to 55 %" in tight.answer
    assert round(milder.answer) == 61
    share = steady_humidity(to_si(10, "kg/day"), to_si(60, "cfm"), asked.outside(20, 80), to_si(70.0, "degF"))
    assert round(100 * share) == 33


def test_the_prediction_and_its_numbers():
    brought_in = air.relative_humidity(to_si(70.0, "degF"), asked.pressure(20, 90))
    assert f"{100 * brought_in:.1f} %" in asked.reveal("winter-house")
