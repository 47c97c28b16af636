"""Lesson 2: the page against the balance of the house, its known numbers, its strips."""

import asked
import pytest
from lesson_page import check_replies, first_visit, on_beat, open_page, places, to_beat, to_both_ends

from dryward import air, units
from dryward.course.winter_house import beats
from dryward.physics.airleak import Leak, brought
from dryward.physics.house_air import balanced
from dryward.pictures import house
from dryward.teaching import lessons, practical, questions
from dryward.units import DAY, to_si
from dryward.weather import Air, indoor
from dryward.weather.indoor import steady_humidity

ID = "winter-house"
ROOM = units.to_si(70, "degF")


def at_eighty(tmp_path, system="us"):
    """The page with 80 % outdoors, as its known numbers have it."""
    page = open_page(ID, tmp_path, system)
    page.controls["RH_out"].value = 80
    return page


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
    page = at_eighty(tmp_path)
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
        for place in range(0, 41, 5):
            control.put(control.shown(along[place]))
            page.refresh()
            assert strip.states[place] == page.readouts["state"], (name, place)
        seen |= set(strip.states)
        control.value = start
    assert seen == {"dry", "damp", "wet"}


def test_the_edge_is_judged_before_the_middle(tmp_path):
    """At 20 degF a room at 55 % fogs the edge of the pane, one at 71 % the whole of it."""
    page = at_eighty(tmp_path)
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
    page, start = at_eighty(tmp_path), practical.task("january-air").start
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
        asked = questions.checks(ID, seed)[3]
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
    tight, milder, july, _, burner = asked.fixed("winter-house")
    assert "From 26 % up to 55 %" in tight.answer
    assert round(milder.answer) == 61
    # By hand: 120 and 50 cfm, 85 degF and 70 % (2880 Pa) against 75 degF and 50 % (1482 Pa): 10.2 g/m3.
    assert "105 pints/day against 43.9 pints/day" in july.right.reply
    assert "32.7 lb from a bottle of 20 lb" in burner.right.reply
    share = steady_humidity(to_si(10, "kg/day"), to_si(60, "cfm"), asked.outside(20, 80), to_si(70.0, "degF"))
    assert round(100 * share) == 33


@pytest.mark.parametrize("seed", range(0, 40, 5))
def test_each_belief_is_a_wrong_answer_in_every_draw(seed):
    """What carries a belief over to a cooled house, or to a basement in spring, always offers it, and it is wrong."""
    drawn = questions.checks(ID, seed)
    for number, belief in ((2, "house-must-breathe"), (4, "propane-heater-dries")):
        assert belief in {each.belief for each in drawn[number].choices if not each.right}
    assert drawn[2].answer.startswith("In the drafty one.")


def test_the_prediction_and_its_numbers():
    brought_in = air.relative_humidity(to_si(70.0, "degF"), asked.pressure(20, 90))
    assert f"{100 * brought_in:.1f} %" in asked.reveal("winter-house")


# --- the beats ------------------------------------------------------------------------


def right(page):
    return [bet.right(page.stage.states) for bet in page.stage.beat.bets]


def in_roof(changes, fan, cold, humid=0.8, made=None):
    """What a roof takes in, and the RH: a house of so many air changes at 50 Pa, worked from the physics again."""
    made = to_si(21, "pint/day") if made is None else made
    outdoor = Air(to_si(cold, "degF"), humid)
    leak = Leak.from_blower_door(changes, to_si(20_000, "ft3"))
    found = balanced(leak.coefficient, house.PLACES, ROOM, outdoor.temperature, to_si(fan, "cfm"))
    rh = float(indoor.steady_humidity(made, found.fresh_air, outdoor, ROOM))
    out = max(0.0, found.flows[-1])
    return float(brought(out, Air(ROOM, rh), outdoor.temperature, 0.1).stays) * 150 * DAY, rh


@pytest.mark.parametrize("system", ["us", "si"])
def test_raw_air_brings_the_level_down_in_any_cold(system, tmp_path):
    page = on_beat(ID, tmp_path, 0, system)
    assert right(page) == ["b"]
    told = page.widget.live["stage"]["told"].replace("\u00a0", " ")
    assert "from 42 % to 27 %" in told
    brings, takes, makes = {"us": ("18", "39", "21"), "si": ("8", "18", "10")}[system]
    assert f"People make {makes} " in told
    assert f"brings {brings} " in told
    assert f"takes {takes} " in told
    for cold in range(-20, 41, 10):
        slow, fast = (
            indoor.steady_humidity(to_si(21, "pint/day"), to_si(cfm, "cfm"), Air(to_si(cold, "degF"), 0.9), ROOM)
            for cfm in (45, 90)
        )
        assert fast < slow


@pytest.mark.parametrize("system", ["us", "si"])
def test_tight_is_wetter_without_a_fan_and_drier_with_one(system, tmp_path):
    page = on_beat(ID, tmp_path, 1, system)
    assert right(page) == ["more", "less"]
    (drafty, dry), (closed, damp), (fan, between) = (in_roof(*each, 20) for each in ((8, 0), (2, 0), (2, 60)))
    assert fan < drafty < closed
    assert dry < between < damp  # the drafty house has the driest air, and not the driest roof
    states = page.stage.states
    assert [beats.roof_of(each) for each in states] == pytest.approx([closed, fan], rel=0.02)
    assert [each.humidity for each in states] == pytest.approx([damp, between], rel=0.02)
    for cold in (5, 10, 20, 30, 40):
        (drafty, _), (closed, _), (fan, _) = (in_roof(*each, cold) for each in ((8, 0), (2, 0), (2, 60)))
        assert fan < 0.5 * drafty < closed, cold
    told = page.widget.live["stage"]["told"].replace("\u00a0", " ")
    assert (
        told
        == {
            "us": "Sealed, no fan: 23 gallons. Drafty: 18 gallons. Sealed with a fan: 5.1 gallons.",
            "si": "Sealed, no fan: 89 L. Drafty: 70 L. Sealed with a fan: 19 L.",
        }[system]
    )


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_fan_clears_the_glass_and_lifts_the_neutral_level(system, tmp_path):
    page = on_beat(ID, tmp_path, 2, system)
    control, before, done = page.controls["Fresh_air"], -1.0, set()
    for k in range(21):
        page.widget.moves = {"serial": 1, "system": system, "values": {"Fresh_air": control.at(k / 20)}}
        state = page.stage.states[0]
        found = beats.house_air(state)
        assert found.fresh_air == pytest.approx(state.fresh_air)
        assert found.neutral >= before - 1e-6
        before = found.neutral
        live = page.widget.live["stage"]
        assert live["done"] == (state.humidity < state.edge)
        done.add(live["done"])
        if found.neutral > house.HEIGHT:
            assert all(flow <= 0 for flow in found.flows)
            assert not live["done"] or "even at the ridge" in live["told"]
    assert done == {True, False}
    assert before > house.HEIGHT


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_same_heat_dries_one_job_and_wets_the_other(system, tmp_path):
    page = on_beat(ID, tmp_path, 3, system)
    assert right(page) == ["low", "high"]
    electric, burner = page.stage.states
    # By hand: 4500 W at 46.4 MJ/kg are 8.38 kg of propane a day, which make 1.634 times as much water.
    assert (burner.production - electric.production) * DAY == pytest.approx(13.69, abs=0.01)
    outdoor = Air(to_si(30, "degF"), 0.8)
    for job, cfm in ((10, 35), (10, 45), (15, 60)):
        made = to_si(job, "pint/day")
        low, high = (
            indoor.steady_humidity(each, to_si(cfm, "cfm"), outdoor, ROOM) for each in (made, made + 13.69 / DAY)
        )
        assert low < 0.4 < 0.6 < high + 0.05, (job, cfm)
    told = page.widget.live["stage"]["told"].replace("\u00a0", " ")
    assert f"{100 * electric.humidity:.0f} % and {100 * burner.humidity:.0f} %" in told


def test_the_level_stands_in_the_picture_where_the_air_is(tmp_path):
    page = on_beat(ID, tmp_path, 1)
    for state, scene in zip(page.stage.states, page.widget.live["stage"]["scenes"], strict=True):
        (level,) = (each for each in scene["marks"] if each["look"] == "level")
        assert max(d for _, _, d in level["points"]) == pytest.approx(state.humidity)
        air_flows = [each["rate"] for each in scene["flows"]]
        inward = beats.house_air(state)
        total = sum(abs(flow) for flow in inward.flows) + inward.fan
        assert sum(air_flows) == pytest.approx(total * 60 / to_si(0.5, "ft3"), rel=1e-6)


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_books_of_the_tank_are_right_where_it_runs_over(system, tmp_path):
    """What comes in leaves with the air as far as full air can carry it; the rest is told, and only then."""
    page = open_page(ID, tmp_path, system)
    seen = set()
    for at in places(page):
        tank = page.views(page.state)
        full = float(air.vapor_density(ROOM, air.saturation_vapor_pressure(ROOM))) * at.Fresh_air
        rest = tank.people + tank.from_outside - tank.carried_out
        assert tank.carried_out <= full * (1 + 1e-9)
        assert rest == pytest.approx(max(0.0, tank.people + tank.from_outside - full), abs=1e-12)
        over = page.state.humidity > 1.01
        assert not over or "stay in the house as drops" in page.alts[0]
        assert page.state.humidity > 1 or "as drops" not in page.alts[0]
        seen.add(over)
    assert seen == {True, False}


def test_a_fan_that_is_off_is_told(tmp_path):
    page = first_visit(ID, tmp_path)
    to_beat(page, 2)
    said = []
    for fresh in (15, 90):
        page.widget.moves = {"serial": 1, "system": "us", "values": {"Fresh_air": fresh}}
        words = " ".join(tag["text"] for tag in page.widget.live["stage"]["scenes"][0]["tags"])
        said.append("fan off" in words)
        assert ("out" in words.partition("fan ")[2]) == (fresh == 90)
    assert said == [True, False]
