"""Lesson 3: the page against the two vapor pressures, and its known numbers."""

import math
import re
from decimal import Decimal

import asked
import pytest
from lesson_page import bet_all, check_replies, first_visit, open_page, places

from dryward.course.which_way_vapor_goes import beats, stage_scene
from dryward.panels.stage import LESSON
from dryward.teaching import questions
from dryward.weather import Air

ID = "which-way-vapor-goes"


def go(page, **values):
    for name, value in values.items():
        page.controls[name].value = value


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for at in places(page):
        inside, outside = Air(at.T_in, at.RH_in), Air(at.T_out, at.RH_out)
        push = inside.vapor_pressure - outside.vapor_pressure
        assert page.readouts["inside"] == pytest.approx(inside.vapor_pressure)
        assert page.readouts["outside"] == pytest.approx(outside.vapor_pressure)
        assert page.readouts["push"] == pytest.approx(push)
        if abs(push) >= 50:
            assert page.sentence.startswith("Vapor goes out" if push > 0 else "Vapor goes in")
            against = push * (inside.relative_humidity - outside.relative_humidity) < 0
            assert ("from low RH to high RH" in page.sentence) == against
        else:
            assert page.sentence.startswith("Almost no push")


@pytest.mark.parametrize(
    ("room", "yard", "push"),
    [
        ((75, 50), (85, 75), -1602),
        ((70, 40), (20, 80), 724),
        ((70, 35), (20, 90), 877 - 313),
        ((70, 50), (20, 50), 1252 - 174),
        ((75, 50), (60, 90), 1483 - 1591),
    ],
)
def test_known_numbers(room, yard, push, tmp_path):
    page = open_page(ID, tmp_path)
    go(page, T_in=room[0], RH_in=room[1], T_out=yard[0], RH_out=yard[1])
    assert page.readouts["push"] == pytest.approx(push, rel=0.02)


def test_low_rh_to_high_rh_is_said(tmp_path):
    page = open_page(ID, tmp_path)
    go(page, T_in=70, RH_in=35, T_out=20, RH_out=90)
    assert page.sentence.startswith("Vapor goes out, from low RH to high RH:")
    shown = {each.name: each.shown("us")["value"] for each in page.readout_list}
    assert (shown["way"], shown["folk"]) == ("out", "in")


def test_cold_to_warm_is_said(tmp_path):
    page = open_page(ID, tmp_path)
    go(page, T_in=75, RH_in=50, T_out=65, RH_out=95)
    assert page.sentence.startswith("Vapor goes in, from cold to warm:")


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


def test_equal_rh_goes_neither_way_by_the_rh_rule(tmp_path):
    page = open_page(ID, tmp_path)
    go(page, RH_in=50, RH_out=50)
    assert {each.name: each.text for each in page.readout_list}["folk"] == "neither way"


def test_the_page_says_what_warmth_would_say_too(tmp_path):
    """In the desert it is the other way round; of two airs as warm as each other it says nothing."""
    page = open_page(ID, tmp_path)
    go(page, T_in=75, RH_in=50, T_out=95, RH_out=15)
    way, folk = page.readout_list[3:]
    assert (way.text, folk.note) == ("out", "from warm to cold: in")
    go(page, T_out=75)
    assert page.readout_list[4].note == "from warm to cold: neither way"


def test_the_checks_with_their_fixed_numbers():
    up, desert, none, out, boards = asked.fixed("which-way-vapor-goes")
    assert (up.answer, none.answer, out.answer) == ("Up into the room.", "Almost none.", "Out.")
    assert (desert.answer, boards.answer) == ("Out, into the heat.", "The one in the garage.")
    assert f"{asked.pressure(76, 45):.0f} Pa" in asked.said(desert)
    assert f"{asked.pressure(100, 10):.0f} Pa" in asked.said(desert)
    assert "at 85 % it settles at about 19 % MC, at 35 % at about 7 %" in asked.said(boards)
    assert "2003 Pa" in asked.said(up)
    assert "1186 Pa" in asked.said(none)
    assert "1190 Pa" in asked.said(none)
    assert "1252 Pa" in asked.said(out)
    assert "174 Pa" in asked.said(out)


def test_the_prediction_and_its_numbers():
    assert f"{asked.pressure(70, 35):.0f} Pa" in asked.reveal("which-way-vapor-goes")
    assert f"{asked.pressure(20, 90):.0f} Pa" in asked.reveal("which-way-vapor-goes")


def test_what_a_check_calls_almost_none_the_page_does_too(tmp_path):
    """And the difference that it tells is that of the two numbers beside it, in both unit systems."""
    asked_airs = set()
    for seed in range(12):
        for system in ("us", "si"):
            question = questions.check(f"{ID}/no_push", seed, system)
            warm, cool = (tuple(question.given[side]) for side in ("warm", "cool"))
            asked_airs.add((warm, cool))
            for pressure in (r"([\d.]+) in\. Hg", r"([\d.]+) Pa"):
                numbers = [Decimal(each) for each in re.findall(pressure, asked.said(question))]
                if numbers:
                    assert abs(numbers[0] - numbers[1]) == numbers[2], asked.said(question)
    assert len(asked_airs) > 3
    page = open_page(ID, tmp_path)
    for warm, cool in asked_airs:
        go(page, T_in=warm[0], RH_in=warm[1], T_out=cool[0], RH_out=cool[1])
        assert page.sentence.startswith("Almost no push: "), (warm, cool)
        assert page.readout_list[3].text == "hardly at all"


def test_the_push_is_the_difference_of_the_two_pressures_shown(tmp_path):
    for system in ("us", "si"):
        page = open_page(ID, tmp_path, system)
        page.hear({"kind": "fold", "key": "arithmetic", "open": True})
        for humidity in (20, 35, 43, 50, 61):
            page.controls["RH_in"].value = humidity
            inside, outside, push = (
                Decimal(re.search(r"−?[\d.]+", each["value"])[0].replace("−", "-"))
                for each in page.widget.live["readouts"][:3]
            )
            assert inside - outside == push
            shown = page.widget.live["readouts"][2]["value"]
            assert shown.lstrip("−") in page.sentence
            assert page.widget.live["steps"][-1]["result"] == shown
            assert shown.lstrip("−") in page.alts[0]


# --- the beats ------------------------------------------------------------------------


def vapor(warmth, humidity):
    """Vapor pressure by the equation of the handbook, written out again [degF, % -> Pa]."""
    kelvin = (warmth - 32) / 1.8 + 273.15
    water = (-5800.2206, 1.3914993, -0.048640239, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673)
    ice = (-5674.5359, 6.3925247, -0.009677843, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)
    a = ice if warmth < 32 else water
    return (
        humidity / 100 * math.exp(a[0] / kelvin + sum(a[k + 1] * kelvin**k for k in range(5)) + a[6] * math.log(kelvin))
    )


def played(tmp_path, system="us"):
    """The lesson as it is met for the first time, with its beats and how to lay a bet by its key."""
    page = first_visit(ID, tmp_path, system)

    def lay(key):
        bet = page.stage.open_bet
        page.hear({"kind": "bet", "choice": [spot.key for spot in bet.spots].index(key)})

    return page, lay


#: Beat -> the room, the other side of each of its scenes, and which way vapor goes there.
PLAYED = {
    "first": ((70, 35), {(20, 90): "out", (60, 90): "in"}),
    "heat": ((75, 50), {(95, 15): "out", (95, 45): "in"}),
    "floor": ((72, 45), {(62, 95): "in", (62, 50): "out"}),
    "crawlspace": ((72, 45), {(62, 95): "in"}),
}


def test_each_beat_is_the_physics(tmp_path):
    """The airs of each scene, which way it goes by the handbook's equation, and that a pair comes out opposite."""
    page, lay = played(tmp_path)
    for number, (room, others) in enumerate(PLAYED.values()):
        page.hear({"kind": "beat", "number": number})
        assert page.stage.beat.id == list(PLAYED)[number]
        for state, (other, goes) in zip(page.stage.states, others.items(), strict=True):
            push = vapor(*room) - vapor(*other)
            assert state.push == pytest.approx(push, abs=2)
            assert abs(push) > 4 * 50, "no pair hangs on a degree or two"
            assert stage_scene.way(push) == goes
        for bet in page.stage.beat.bets:
            lay(bet.spots[0].key)
        rights = [bet["choices"][bet["right"]]["glyph"] for bet in page.stage.frame()["bets"]]
        ways = list(others.values())[: len(rights)]
        # A glyph is an arrow as it stands on the screen: into the room is down from the sky, and up from the earth.
        turned = {"in": "out", "out": "in"} if page.stage.beat.id == "floor" else {"in": "in", "out": "out"}
        assert rights == [turned[each] for each in ways]


def test_a_belief_is_wrong_in_one_of_each_pair():
    """Who goes by RH, or by warmth, loses one bet of each pair; and what is so is no belief."""
    won = {"rh": [], "warmth": []}
    for room, others in list(PLAYED.values())[:3]:
        for other, goes in others.items():
            won["rh"].append((goes == "in") == (other[1] > room[1]))
            won["warmth"].append((goes == "in") == (other[0] > room[0]))
    pairs = {rule: list(zip(found[::2], found[1::2], strict=True)) for rule, found in won.items()}
    assert all(sum(pair) == 1 for found in pairs.values() for pair in found), won
    for beat in (beats.FIRST, beats.HEAT, beats.FLOOR):
        for bet in beat.bets:
            lessons_own = bet.name == LESSON
            for spot in bet.spots:
                of_others = {"up": "in", "down": "out"}
                key = (
                    {"a": "in", "b": "out", "c": "none"}[spot.key] if lessons_own else of_others.get(spot.key, spot.key)
                )
                if spot.belief:
                    room, others = PLAYED[beat.id]
                    assert key != list(others.values())[spot.scene], "what is so is no belief"


def test_nothing_is_told_before_both_bets(tmp_path):
    page, lay = played(tmp_path)
    for number in (0, 1):
        page.hear({"kind": "beat", "number": number})
        for bet in page.stage.beat.bets:
            told = str([page.widget.live["stage"], page.widget.frame["stage"]])
            assert not re.search(r"in\.\sHg|pint|gr/ft", told)
            assert all(not scene["marks"] and not scene["flows"] for scene in page.widget.live["stage"]["scenes"])
            lay(bet.spots[0].key)
        assert page.widget.live["stage"]["done"]


def ceiling_a_day(push):
    """Pints a day through 1000 ft2 of drywall of 40 perm with paint of 7 perm, by hand: gr/(h ft2 in. Hg)."""
    perm = 1 / (1 / 40 + 1 / 7)
    grains = perm * push / 3386.389 * 24 * 1000
    return grains / 7000 / (8.345 / 8)


def test_the_answers_by_hand(tmp_path):
    page, lay = played(tmp_path)
    for number, (room, others) in enumerate(list(PLAYED.values())[:2]):
        page.hear({"kind": "beat", "number": number})
        for bet in page.stage.beat.bets:
            lay(bet.spots[0].key)
        push = vapor(*room) - vapor(*next(iter(others)))
        shown = float(re.search(r"([\d.]+)\spints a day", page.stage.live()["told"])[1])
        assert shown == pytest.approx(ceiling_a_day(push), rel=0.02)


@pytest.mark.parametrize("system", ["us", "si"])
def test_dots_are_the_flux_of_the_push(system, tmp_path):
    page, lay = played(tmp_path, system)
    lay("a")
    lay("in")
    counted = {"us": "6 perm", "si": "0.6 m sd"}[system]
    assert counted in page.widget.frame["stage"]["scale"].replace("\N{NO-BREAK SPACE}", " ")
    for state, scene in zip(page.stage.states, page.stage.live()["scenes"], strict=True):
        (flow,) = scene["flows"]
        ounces = 16 * ceiling_a_day(abs(state.push))
        assert flow["rate"] == pytest.approx(stage_scene.DOTS * ounces, rel=0.01)
        (_, _, start), (_, _, end) = flow["points"]
        assert (start < end) == (state.push > 0)
        arrow = next(mark for mark in scene["marks"] if mark["kind"] == "arrow")
        assert arrow["points"][0][0] == ("inside" if state.push > 0 else "outside")


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_arrow_is_turned_with_one_slider(system, tmp_path):
    """It turns where the crawlspace has the vapor pressure of the room: far from the RH of the room."""
    page, _ = played(tmp_path, system)
    page.hear({"kind": "instructor", "value": True})
    page.hear({"kind": "beat", "number": 3})
    turn = 100 * vapor(72, 45) / vapor(62, 100)
    assert turn == pytest.approx(64, abs=0.5)
    control = page.controls["RH_out"]
    assert page.widget.frame["stage"]["control_words"] == "Crawlspace RH"
    assert not page.stage.live()["done"]
    seen = []
    for humidity in (100, 95, 75, 64, 62, 60, 45, 10):
        control.value = humidity
        live = page.stage.live()
        way = stage_scene.way(vapor(72, 45) - vapor(62, humidity))
        assert way == ("none" if abs(humidity - turn) < 2.6 else "in" if humidity > turn else "out")
        covered = [mark for mark in live["scenes"][0]["marks"] if mark["look"] == "permeance"]
        assert bool(covered) == (humidity < 95), "a cover lies where the RH is lower than over bare earth"
        if not live["done"]:
            assert way != "out"
            continue
        seen.append(humidity)
        assert "64 %, not at the 45 % of the room" in live["told"]
        assert "go down" in live["told"]
        if system == "us":  # 23/32 in. of 1.5 perm at 7/16 in., a gallon of 128 fl oz is 8.345 lb
            grains = 1.5 * (7 / 16) / (23 / 32) * (vapor(72, 45) - vapor(62, humidity)) / 3386.389 * 24 * 1000
            shown = float(re.search(r"([\d.]+)\sfl\soz", live["told"])[1])
            assert shown == pytest.approx(grains / 7000 / 8.345 * 128, rel=0.05)
    assert seen == [60, 45, 10]
    assert page.sentence.startswith("Vapor goes down, from warm") or page.sentence.startswith("Vapor goes down: ")
    control.value = 100
    assert "come up" in page.stage.live()["told"]
    assert page.sentence.startswith("Vapor goes up, from cold to warm: the room air has ")
    control.value = 64
    assert "almost no push" in page.stage.live()["told"]


def test_the_push_in_the_picture_is_the_difference_of_its_columns(tmp_path):
    for system in ("us", "si"):
        page, lay = played(tmp_path, system)
        for number in range(4):
            page.hear({"kind": "beat", "number": number})
            while page.stage.open_bet:
                lay(page.stage.open_bet.spots[0].key)
            for scene in page.stage.live()["scenes"]:
                words = [each["text"] for each in scene["tags"] if each["look"] == "vapor-pressure"]
                inside, outside, push = (Decimal(re.search(r"[\d.]+(?=\s)", each)[0]) for each in words)
                assert abs(inside - outside) == push


def test_each_number_of_a_reply_is_in_the_picture(tmp_path):
    """In both unit systems, for every choice: pressures of the two columns, airs as they are named."""
    for system in ("us", "si"):
        page, _ = played(tmp_path, system)
        page.hear({"kind": "instructor", "value": True})
        for number in (0, 1, 2):
            page.hear({"kind": "beat", "number": number})
            bet_all(page)
            tags = [each["text"] for scene in page.stage.live()["scenes"] for each in scene["tags"]]
            there = set(re.findall(r"−?[\d.]*\d\s(?:°F|°C|%|in\.|Pa)", " ".join(tags)))
            for bet in page.stage.beat.bets:
                if bet.name != LESSON:
                    for spot in bet.spots:
                        said = page.stage._reply(bet, spot.key)
                        told = set(re.findall(r"−?[\d.]*\d\s(?:°F|°C|%|in\.|Pa)", said))
                        assert told
                        assert told <= there, (spot.key, told - there)
