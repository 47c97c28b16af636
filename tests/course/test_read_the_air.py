"""Lesson 1: the page against the air itself, and its known numbers."""

import re
from pathlib import Path
from types import SimpleNamespace

import asked
import pytest
from lesson_page import check_replies, first_visit, open_page, places

from dryward import air, units
from dryward.course import read_the_air
from dryward.course.read_the_air import beats, closed_jar
from dryward.course.read_the_air.beats import PLAY
from dryward.course.read_the_air.page import ReadTheAir
from dryward.pictures import scenery
from dryward.teaching import questions
from dryward.units import to_si
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


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH"].value = 40
    assert page.readouts["vapor_pressure"] == pytest.approx(1002, rel=0.002)
    assert units.from_si(page.readouts["vapor_pressure"], "inHg") == pytest.approx(0.296, rel=0.002)
    assert units.from_si(page.readouts["humidity_ratio"], "gr/lb") == pytest.approx(43.5, rel=0.005)
    assert page.readouts["vapor_density"] * 1e3 == pytest.approx(7.38, rel=0.005)
    page = open_page(ID, tmp_path)  # the two airs of the prediction
    assert page.readouts["vapor_pressure"] == pytest.approx(751, rel=0.002)
    assert page.state.second.vapor_pressure == pytest.approx(446, rel=0.002)
    assert "though its RH is lower" in page.sentence


def test_the_same_air_twice(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH"].value, page.controls["T_2"].value, page.controls["RH_2"].value = 40, 70, 40
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
    page.controls["RH"].value, page.controls["T_2"].value = 40, 70
    for humidity in range(30, 51):
        page.controls["RH_2"].value = humidity
        assert "has 1.0 times" not in page.sentence
        assert ("nearly the same" in page.sentence) == (39 <= humidity <= 42)  # within a twentieth


def test_the_checks_with_their_fixed_numbers():
    cooled, heated, fog, high = asked.fixed("read-the-air")
    assert round(cooled.answer) == 82
    assert {round(each.value) for each in cooled.choices} == {20, 40, 82, 100}
    assert round(heated.answer, 1) == 44.6
    outdoors, indoors = (float(air.saturation_vapor_pressure(to_si(each, "degF"))) for each in (30, 70))
    assert fog.answer == f"As little as before: about {95 * outdoors / indoors:.0f} % RH."
    assert high.answer == "As high as at sea level."
    assert "26 %" in high.prompt  # 75.3 kPa at 8000 ft, of 101.3 at sea level
    assert {each.belief for each in fog.choices} == {"", "winter-fog-is-wet-air", "heating-dries-the-air"}


def test_the_prediction_and_its_numbers():
    assert f"{asked.pressure(70, 30):.0f} Pa" in asked.reveal("read-the-air")
    assert f"{asked.pressure(30, 80):.0f} Pa" in asked.reveal("read-the-air")


# --- the beats, against direct physics -----------------------------------------------


def ratio(fahrenheit, percent):
    """Water per dry air [kg/kg], from the saturation curve alone."""
    pressure = percent / 100 * float(air.saturation_vapor_pressure(to_si(fahrenheit, "degF")))
    return air.MASS_RATIO * pressure / (air.STANDARD_PRESSURE - pressure)


def beat(page, id):
    """The page on one of its beats, the bets before it made."""
    while page.stage.beat.id != id:
        lay(page, *(bet.spots[0].key for bet in page.stage.beat.bets))
        page.hear({"kind": "beat", "number": page.stage.at + 1})
    return page.stage


def lay(page, *keys):
    """Make the bets of the beat that is on."""
    for bet, key in zip(page.stage.beat.bets, keys, strict=True):
        page.hear({"kind": "bet", "choice": [spot.key for spot in bet.spots].index(key)})
    return page.widget.live["stage"], page.widget.frame["stage"]


def words_of(scene):
    return [each["text"].replace("\xa0", " ") for each in scene["tags"]]


def marks_of(scene, kind, look=""):
    return [each for each in scene["marks"] if each["kind"] == kind and look in ("", each["look"])]


@pytest.mark.parametrize(("system", "room", "yard"), [("us", "5.3 fl oz", "3.2 fl oz"), ("si", "160 mL", "93 mL")])
def test_the_first_bet_is_on_the_jars(system, room, yard, tmp_path):
    page = first_visit(ID, tmp_path, system)
    before = page.widget.live["stage"]["scenes"][0]
    assert not marks_of(before, "dots")
    assert not marks_of(before, "area", "wet")
    assert not [text for text in words_of(before) if "fl oz" in text or "mL" in text]
    live, frame = lay(page, "b")
    scene, bet = live["scenes"][0], frame["bets"][0]
    # 34.02 kg of dry air by hand: 4.645 and 2.750 g/kg of water.
    assert [ratio(70, 30) * 1e3, ratio(30, 80) * 1e3] == pytest.approx([4.645, 2.750], rel=2e-3)
    assert [text for text in words_of(scene) if text in (room, yard)] == [room, yard]
    assert bet["right"] == 0
    said = f"{bet['reply']} {live['told']}".replace("\xa0", " ")
    assert said.count(room) == said.count(yard) == 2
    assert "1.7 times" in said
    low, high = (max(point[2] for point in each["points"]) for each in marks_of(scene, "area", "wet"))
    assert low / high == pytest.approx(ratio(70, 30) / ratio(30, 80), rel=2e-3)  # 21.1 degC in SI
    many, few = (each["count"] for each in marks_of(scene, "dots"))
    assert many / few == pytest.approx(low / high, abs=0.12)


@pytest.mark.parametrize("key", "abc")
@pytest.mark.parametrize("system", ["us", "si"])
def test_every_number_of_a_reply_to_the_first_bet_is_on_the_screen(system, key, tmp_path):
    page = first_visit(ID, tmp_path, system)
    live, frame = lay(page, key)
    shown = " ".join([*words_of(live["scenes"][0]), live["told"], live["also"]]).replace("\xa0", " ")
    reply = frame["bets"][0]["reply"].replace("\xa0", " ")
    for number in re.findall(r"\d[\d.,]*(?= ?(?:fl oz|mL|%|°|times))", reply):
        assert number in shown, number


def test_the_same_reading_has_little_water_in_january_and_much_in_august(tmp_path):
    """Whatever fog: from 90 to 100 % the two jars stay far apart, on either side of half a jar."""
    page = first_visit(ID, tmp_path)
    beat(page, "fog")
    live, frame = lay(page, "high", "high")
    assert [bet["right"] for bet in frame["bets"]] == [2, 0]
    january, august = (words_of(scene) for scene in live["scenes"])
    assert ["3.8 fl oz" in january, "20 fl oz" in august] == [True, True]
    ounce, mass = to_si(1, "fl oz") * 1e3, to_si(75, "lb")
    assert [ratio(30, 95) * mass / ounce, ratio(75, 95) * mass / ounce] == pytest.approx([3.76, 20.5], rel=3e-3)
    for percent in (90, 100):
        assert ratio(75, percent) * mass / ounce > 12 > 3 * ratio(30, percent) * mass / ounce
    heated = 95 * air.saturation_vapor_pressure(to_si(30, "degF")) / air.saturation_vapor_pressure(to_si(70, "degF"))
    assert f"{heated:.0f}%" in live["also"].replace("\xa0", "").replace(" ", "")
    reply = frame["bets"][0]["reply"].replace("\xa0", " ")
    assert "3.8 fl oz" in reply


def test_two_meters_fall_alike_and_one_jar_keeps_its_water(tmp_path):
    page = first_visit(ID, tmp_path)
    stage = beat(page, "heat")
    scenes = page.widget.live["stage"]["scenes"]
    assert not marks_of(scenes[0], "area", "wet")
    assert not marks_of(scenes[1], "dots")
    _, frame = lay(page, "lower", "same")
    assert [bet["right"] for bet in frame["bets"]] == [0, 1]
    heated, dried = (state.first for state in stage.states)
    assert heated.relative_humidity == dried.relative_humidity  # what the meters read
    before = ratio(55, 60)
    assert air.humidity_ratio(heated.vapor_pressure) == pytest.approx(before, rel=1e-9)
    assert air.humidity_ratio(dried.vapor_pressure) == pytest.approx(before / 2, rel=0.02)
    assert heated.dew_point == pytest.approx(stage.states[0].second.dew_point)
    assert heated.dew_point > dried.dew_point + 5
    # So it is from any cool room to any warmer one: what the heater leaves is all, and half the reading half the water.
    for cool, warm, percent in ((45, 60, 50), (55, 75, 60), (65, 80, 70)):
        most = [float(air.saturation_vapor_pressure(to_si(each, "degF"))) for each in (cool, warm)]
        reads = percent * most[0] / most[1]
        assert ratio(warm, reads) == pytest.approx(ratio(cool, percent))
        assert ratio(cool, reads) == pytest.approx(ratio(cool, percent) * reads / percent, rel=0.02)
    # The spots stand at what may be: the level as it was, and half of it.
    share = before * to_si(75, "lb") / 1e3 / to_si(24, "fl oz")
    spots = [spot.at[2] for spot in stage.beat.bets[0].spots]
    assert spots == pytest.approx([share, share / 2], abs=0.01)


@pytest.mark.parametrize(("system", "volume"), [("us", to_si(1000, "ft3")), ("si", 28.0)])
def test_a_box_is_about_the_room_that_is_named(system, volume):
    """Dry air at 70 degF and 30 %, by the gas law: some percent more than the room in the lesson's limits."""
    density = (air.STANDARD_PRESSURE - 0.3 * air.saturation_vapor_pressure(to_si(70, "degF"))) / (287.055 * 294.26)
    assert 0 < beats.AIR[system] / density / volume - 1 < 0.025
    assert beats.ROOM[system] == pytest.approx(beats.AIR[system] / density, rel=0.02)


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_can_sweats_where_the_water_stayed(system, tmp_path):
    """There are drops on the can where the most vapor there can be at it is less than what is there."""
    page = first_visit(ID, tmp_path, system)
    stage = beat(page, "heat")
    live, _ = lay(page, "same", "same")
    can = float(air.saturation_vapor_pressure(to_si(40, "degF")))
    wet = [any(mark["points"][0][0] == "can" for mark in marks_of(scene, "drops")) for scene in live["scenes"]]
    assert wet == [state.first.vapor_pressure >= can for state in stage.states] == [True, False]
    assert ["sweats" in " ".join(words_of(scene)) for scene in live["scenes"]] == wet


@pytest.mark.parametrize("system", ["us", "si"])
def test_vapor_stands_as_high_without_air(system, tmp_path):
    """Both jars at any warmth: the saturation pressure, which has no number of the air in it."""
    page = first_visit(ID, tmp_path, system)
    beat(page, "jar")
    live, frame = lay(page, "none", "none")
    assert [bet["right"] for bet in frame["bets"]] == [1, 1]
    assert not live["done"]
    control, seen = page.controls["T"], set()
    for part in (0.0, 0.3, 0.7, 0.9, 0.95, 1.0):
        page.hear({"kind": "moved", "serial": 1, "system": system, "values": {"T": control.at(part)}})
        live = page.widget.live["stage"]
        stands = float(air.saturation_vapor_pressure(control.si))
        filled = [max(point[2] for point in mark["points"]) for scene in live["scenes"]
                  for mark in marks_of(scene, "area", "vapor-pressure")]  # fmt: skip
        assert filled == pytest.approx([stands / 7000] * 2)
        counts = [mark["count"] for scene in live["scenes"] for mark in marks_of(scene, "dots")]
        assert counts[0] == counts[1]
        seen.add(stands >= 2 * float(air.saturation_vapor_pressure(to_si(70, "degF"))))
        assert live["done"] == (True in seen)
    assert seen == {True, False}
    assert page.show(stands, "pressure") in live["told"].replace("\u00a0", " ")


def test_what_is_bet_on_is_marked_in_every_shape():
    """Whatever a scene tells of, its drawing has axes for, in all four shapes."""
    page = SimpleNamespace(unit_system="us", show=lambda value, quantity, digits=None: f"{value}")
    for each in PLAY.beats:
        for case in each.cases:
            state = ReadTheAir.compute(
                page, SimpleNamespace(**{"T": 21.1, "RH": 0.4, "T_2": -1.1, "RH_2": 0.8, **case})
            )
            page.stage = SimpleNamespace(states=each.cases, beat=each, on=True)
            given, shows = each.given or PLAY.given, each.shows or PLAY.shows
            before = [mark for mark in given(page, state)["marks"] if each.bets]
            assert not [mark for mark in before if mark["kind"] == "dots" or mark["look"] == "wet"]
            told = [part(page, state) for part in (given, shows, *([each.marks] if each.marks else []))]
            named = {place[0] for part in told for mark in part["marks"] for place in mark["points"]}
            named |= {tag["at"][0] for part in told for tag in part["tags"]}
            named |= {spot.at[0] for bet in each.bets for spot in bet.spots}
            for shape in ("wide", "tall") if len(each.cases) == 1 else ("post", "strip"):
                scene = scenery.begin(shape)
                (each.draw or PLAY.draw)(scene, state)
                assert named <= set(scene.axes)


#: Air as a vessel or a sponge, which the lesson argues against: how much vapor there can be is set by warmth alone.
SPONGE = re.compile(
    r"\bair\b[^.;]*\b(holds? (at most|more|less|water|vapor|no more)|(is|was|gets?|how|nearly|quite) full)\b"
    r"|\bhow full\b[^.;]*\bair\b|\bfull(er)? air\b|\bholds? (more|most|less) (water|vapor)\b"
    r"|% full\b|\b(below|until|nearly|less|is) full\b|\broom left\b|\bfills the air\b",
    re.IGNORECASE,
)


@pytest.mark.parametrize("seed", [None, *range(6)])
def test_thin_air_is_asked_of_in_every_draw(seed):
    high = questions.checks(ID, seed)[3]
    pressure = float(air.saturation_vapor_pressure(to_si(high.given["warm"], "degF")))
    assert f"{pressure:.0f} Pa" in next(each for each in high.choices if not each.right).reply
    assert "air-is-a-sponge" in [each.belief for each in high.choices]


def test_no_text_of_the_kit_says_that_air_holds_water():
    kit = Path(read_the_air.__file__).parents[2]
    texts = [
        *kit.rglob("en.ftl"),
        *kit.glob("language/en/*.ftl"),
        *kit.rglob("lesson.toml"),
        *kit.glob("teaching/data/*.toml"),
    ]
    said = []
    for file in texts:
        for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
            # What is offered as that belief says it; a comment and a full disk do not.
            if SPONGE.search(line) and not re.match(r"#|claim =|\S*-air-is-a-sponge =|.*\bdisk\b", line):
                said.append(f"{file.parent.name}/{file.name}:{number} {line}")
    assert said == []
    for each in ("Warm air holds more water.", "How full is this air?", "It is nearly full.", "Full air at 70"):
        assert SPONGE.search(each)


@pytest.mark.parametrize(("temperature", "ice"), [(-0.5, True), (0.5, False)])
def test_water_below_freezing_is_drawn_and_called_ice(temperature, ice):
    state = SimpleNamespace(first=Air(temperature, 1.0), second=Air(temperature, 1.0))
    scene = scenery.begin("post")
    closed_jar.draw(scene, state)
    assert ("sc-frozen" in scene.still()["svg"], "sc-water" in scene.still()["svg"]) == (ice, not ice)
    words = closed_jar.message("jar-with-air", frozen=closed_jar.frozen(state))
    assert ("ice" in words) == ice
