"""Lesson 12: the page against the night physics, its known numbers, its ends."""

import re

import asked
import pytest
from lesson_page import bet_all, check_replies, first_visit, open_page, to_both_ends

from dryward import units
from dryward.course.clear_night.night import states_of_nights
from dryward.course.clear_night.questions import below_air
from dryward.physics import sky
from dryward.physics.sky import frost_margin, night
from dryward.teaching import lessons, questions
from dryward.units import to_si
from dryward.verdict import criterion
from dryward.weather import Air

ID = "clear-night"
#: The roofs that amounts are told on; the number behind is that of the first.
ROOF = {"us": units.to_si(1000, "ft2"), "si": 100.0}
COLD = units.to_si(20, "degF")
#: R under the metal, by option.
LAYERS = {"none": 0, "thin-layer": 1, "layer": 4}


def melts(roof, inches=12, gap=1.0):
    """How warm the covering is under snow of R-1 an inch [degC], and what melts there [kg/(s m2)], by hand.

    Of the house 18.32 L/s leak at 4 Pa into 600 ft2; a gap of 1 in. at 20 ft/min on 5 m; air of 1.2 and 1.32 kg/m3.
    """
    leak = 0.01832 / 55.74 * 1.2 * 1006 if roof.startswith("leaky") else 0.0
    below = leak + (1 / (60 * 0.17611) if roof == "leaky-and-thick" else 0.126)
    vent = 1.324 * 1006 * gap * 0.0254 * 0.1016 / 5.0
    snow = 1 / (inches * 0.17611 + 0.125)
    cold = (20 - 32) / 1.8
    left = below * 21.1 + (vent + snow) * cold
    return min(left / (below + vent + snow), 0.0), max(left, 0.0) / 334e3


def test_a_vent_space_twice_as_deep_melts_nothing_as_the_limits_say():
    """In the best case of the vent; over both leaky ceilings, and with the usual inch it does melt."""
    assert any("vent space of {2 in}" in each for each in lessons.read(lessons.lesson(ID).folder).limits)
    for roof in ("leaky", "leaky-and-thick"):
        assert melts(roof, gap=2.0)[1] == 0 < melts(roof)[1]


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        at = page.at
        if at.Snow not in LAYERS:
            assert page.readouts["melt"] == pytest.approx(melts(at.Snow)[1] * 43200, rel=0.03, abs=0.002)
            assert page.readouts["drip"] == pytest.approx(page.readouts["melt"] * ROOF["us"])
            assert page.readouts["state"] == criterion("night-melt").state(page.readouts["melt"])
            assert ("of snow melt from" in page.sentence) == (page.readouts["melt"] > 0)
            continue
        found = night(
            Air(COLD, at.RH_out),
            at.Sky,
            at.Wind,
            resistance=units.to_si(float(LAYERS[at.Snow]), "R"),
            u_value=0.126,
            indoor_temperature=21.1,
        )
        assert page.readouts["frost"] == pytest.approx(found.frost[-1], rel=1e-9)
        assert page.readouts["drip"] == pytest.approx(found.frost[-1] * ROOF["us"])
        drip = next(each for each in page.readout_list if each.name == "drip").shown(system)
        assert drip["value"] == page.show(found.frost[-1] * ROOF[system], "mass")
        assert page.readouts["margin"] == pytest.approx(frost_margin(Air(COLD, at.RH_out)), abs=1e-8)
        assert ("form by morning" in page.sentence) == (found.frost[-1] > 0)
        assert page.readouts["state"] == criterion("night-frost").state(found.frost[-1])
        assert page.readouts["frosted"] == pytest.approx(COLD - found.underside_temperature[-1])
        if found.frost[-1] == 0:  # a dry covering is what the night itself gives
            assert COLD - found.underside_temperature[-1] == pytest.approx(page.readouts["below"], abs=1e-6)


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.readouts["below"] * 1.8 == pytest.approx(9.9, rel=0.02)
    top = sky.roof_surface(COLD, COLD - 20.0, page.at.Wind, u_value=0.126, indoor_temperature=21.1)
    assert page.readouts["below"] == pytest.approx(COLD - top)
    for humidity, margin in ((70, 7.3), (80, 4.6), (90, 2.2), (95, 1.1)):
        page.controls["RH_out"].value = humidity
        assert page.readouts["margin"] * 1.8 == pytest.approx(margin, abs=0.05)
    page.controls["RH_out"].value = 90
    page.controls["Wind"].value = 3.52
    assert page.readouts["below"] * 1.8 == pytest.approx(4.9, rel=0.02)


def test_cloud_and_a_layer_bring_less_frost(tmp_path):
    page = open_page(ID, tmp_path)
    clear = page.readouts["frost"]
    page.controls["Sky"].value = 10
    assert page.readouts["frost"] < 0.5 * clear
    page.controls["Sky"].value = 36
    page.controls["Snow"].value = "layer"
    assert page.readouts["frost"] < 0.5 * clear


@pytest.mark.parametrize("system", ["us", "si"])
def test_strips_are_the_night_itself(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    seen = set()
    for humidity in (70, 90):
        page.controls["RH_out"].value = humidity
        for name, strip in page.strips(page.at, page.state).items():
            control = page.controls[name]
            start, places = control.value, page.along(name)
            for place in range(0, len(places), 1 if control.options else 4):
                control.put(places[place] if control.options else control.shown(places[place]))
                page.refresh()
                assert strip.states[place] == page.readouts["state"], (name, place)
            seen |= set(strip.states)
            control.value = start
    assert seen == {"dry", "damp", "wet"}
    page.controls["Snow"].value = "leaky-and-thick"
    for name, strip in page.strips(page.at, page.state).items():
        control, start, places = page.controls[name], page.controls[name].value, page.along(name)
        for place in (0, len(places) // 2, -1):
            control.put(places[place] if control.options else control.shown(places[place]))
            page.refresh()
            assert strip.states[place] == page.readouts["state"], (name, place)
        control.value = start


def test_many_nights_at_once_are_as_one_after_the_other():
    """Just beside the limits too: the weather in which a night just reaches one is looked for."""
    limit = criterion("night-frost")

    def frost(humidity, cooling, wind, layer):
        given = {"resistance": layer, "u_value": 0.126, "indoor_temperature": 21.1, "steps_per_hour": 1}
        return float(night(Air(COLD, humidity), cooling, wind, **given).frost[-1])

    for wind, layer in ((3.0, 0.0), (8.0, 0.0), (8.0, 0.2), (25.0, 0.0)):
        for humidity in (0.75, 0.95):
            for amount in (limit.caution, limit.damage):
                low, high = 0.0, 25.0
                if frost(humidity, high, wind, layer) < amount:
                    continue
                for _ in range(30):
                    middle = (low + high) / 2
                    low, high = (middle, high) if frost(humidity, middle, wind, layer) < amount else (low, middle)
                skies = [max(low - 0.01, 0.0), min(high + 0.01, 25.0)]
                found = states_of_nights(Air(COLD, humidity).vapor_pressure, skies, wind, layer).tolist()
                assert found == [limit.state(frost(humidity, sky, wind, layer)) for sky in skies]
                assert found[0] != found[1], (wind, layer, humidity, amount)


@pytest.mark.parametrize("system", ["us", "si"])
def test_a_layer_is_seen_to_change_the_night(system, tmp_path):
    """Less than a twentieth of the frost is left, and strip and sentence show it: wet, damp, dry."""
    page = open_page(ID, tmp_path, system)
    bare = page.readouts["frost"]
    assert page.readouts["state"] == "wet"
    assert "bare covering" not in page.sentence
    control = page.controls["Snow"]
    control.value = "thin-layer"
    assert page.readouts["state"] == "damp"
    assert "enough to see and feel" in page.sentence
    control.value = "layer"
    assert page.readouts["state"] == "dry"
    assert 0 < page.readouts["frost"] < bare / 20
    assert page.readouts["bare"] == pytest.approx(bare)
    assert f"On the bare covering it would be {page.show(bare, 'area density')}." in page.sentence
    assert page.strips(page.at, page.state)["Snow"].states[:3] == ("wet", "damp", "dry")
    lesson = lessons.lesson(ID, system)
    assert f"By morning it holds {lesson_number(bare, system)} of frost" in lesson.prediction.reveal
    assert "less than a twentieth" in lesson.prediction.reveal


def test_a_layer_that_ends_the_frost_says_what_it_spares(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_out"].value, page.controls["Snow"].value = 80, "layer"
    assert page.readouts["frost"] == 0 < page.readouts["bare"]
    assert page.sentence.endswith(
        f"none forms. On the bare covering it would be {page.show(page.readouts['bare'], 'area density')}."
    )


def lesson_number(frost, system):
    """As the words round it: 77 g/m2."""
    return units.show(round(frost * 1000) / 1000, "area density", system)


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_words_name_the_limits_and_both_temperatures(system, tmp_path):
    limit, page = criterion("night-frost"), open_page(ID, tmp_path, system)
    said = " ".join(lessons.lesson(ID, system).limits)
    for amount in (limit.caution, limit.damage):
        assert f"From {units.show(amount, 'area density', system)} o" in said
    scale, unit = (1.8, "°F") if system == "us" else (1.0, "K")
    for name in ("below", "frosted"):
        assert f"{page.readouts[name] * scale:.1f} {unit}" in said
    note = {each.name: each.note for each in page.readout_list}["below"]
    assert note == f"{page.show(page.readouts['frosted'], 'temperature difference')} with frost on it"
    drawn = COLD - page.readouts["frosted"]
    assert page.show(drawn, "temperature") in page.alts[0]


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


@pytest.mark.parametrize("system", ["us", "si"])
def test_a_covering_that_keeps_its_temperature_is_so_all_night(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        under = page.state.night.underside_temperature
        assert under.max() - under.min() < 0.02  # one weather all night: nothing falls
        assert f"The lower face of the covering is at {page.show(under[0], 'temperature')} all night" in page.alts[0]
        assert "after sunset" not in page.alts[0]


def test_full_air_frosts_at_once(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_out"].value = 100
    assert "frost starts at once" in page.sentence
    assert "0 °F colder" not in page.sentence.replace("10 °F", "")


def test_the_wind_says_what_its_numbers_mean(tmp_path):
    """In each system's own unit, and the same winds in both."""
    for system, unit in (("us", "Btu/(h ft² °F)"), ("si", "W/(m² K)")):
        control = open_page(ID, tmp_path / system, system).controls["Wind"]
        named = re.findall(r"([\d.]+) (\w+)", control.words)
        assert [word for _, word in named] == ["calm", "breeze", "windy"]
        assert [units.to_si(float(number), control._unit.name) for number, _ in named] == pytest.approx(
            [3, 8, 20], rel=0.01
        )
        assert control.unit == unit
        assert control.min == float(named[0][0])
        assert control.start == float(named[1][0])


def test_the_checks_with_their_fixed_numbers():
    clouds, vent, drip, dew, twins = asked.fixed("clear-night")
    assert dew.answer.startswith("Yes")
    assert twins.answer.startswith("Only the one with R-20")
    for r, warm in ((20, 38.8), (60, 28.3)):  # 20 + 50 * 12 / (12 + R)
        assert round(20 + 50 * 12 / (12 + r), 1) == warm
        assert f"{warm} °F" in twins.right.reply
    assert clouds.answer.startswith("Less")
    assert vent.answer.startswith("It can bring more")
    assert drip.answer.startswith("The outer membrane")
    for rh, margin in ((70, 7.3), (80, 4.6), (90, 2.2), (95, 1.1)):
        assert round(1.8 * frost_margin(asked.outside(20, rh)), 1) == margin
    cold = to_si(20.0, "degF")
    roof = sky.roof_surface(cold, cold - 20, 8.0, u_value=asked.vault().u_value, indoor_temperature=to_si(70.0, "degF"))
    assert 1.8 * (cold - roof) == pytest.approx(9.9, abs=0.1)


@pytest.mark.parametrize("seed", [None, *range(25)])
def test_each_belief_is_offered_in_every_draw_of_its_check(seed):
    offered = [{each.belief for each in found.choices} for found in questions.checks(ID, seed)]
    assert "roof-never-colder-than-air" in offered[3]
    assert "ice-dams-are-gutters" in offered[4]


# --- the beats ---------------------------------------------------------------------------


@pytest.fixture(scope="module")
def played(tmp_path_factory):
    """Each beat with its states and what is shown, by its id; of what is moved both ends."""
    page, found = first_visit(ID, tmp_path_factory.mktemp("played")), {}
    for beat in page.stage.beats:
        bet_all(page)
        if beat.unlocks:
            control = page.controls[beat.unlocks]
            page.widget.moves = {"serial": 1, "system": "us", "values": {beat.unlocks: (control.options or [0.0])[-1]}}
        found[beat.id] = beat, page.stage.states, page.widget.live["stage"]
        page.hear({"kind": "beat", "number": page.stage.at + 1})
    return found


def test_each_bet_comes_out_as_the_physics_says(played):
    beat, states, _ = played["first"]
    assert [bet.right(states) for bet in beat.bets] == ["b", "like"]
    for cooling, far in ((20.0, (8.0, 11.0)), (7 / 1.8, (0.5, 3.0))):
        found = night(Air(COLD, 0.9), cooling, 8.0, u_value=0.126, indoor_temperature=21.1)
        assert far[0] < 1.8 * (COLD - found.underside_temperature[-1]) < far[1]
    beat, states, _ = played["dam"]
    assert [bet.right(states) for bet in beat.bets] == ["heat", "none"]
    # The same under less and under more snow, with the same gutter and the same vents.
    for inches in (10, 12, 14):
        assert melts("leaky", inches)[1] > melts("leaky-and-thick", inches)[1] > 0 == melts("tight", inches)[1]
    assert melts("leaky", gap=2.0)[1] == 0.0, "vents that are twice as open would do here, and the text grants it"


def test_the_numbers_of_the_beats(played):
    """By hand: 0.45 kg/m2 in 12 hours are 83 kg a day on 92.9 m2, 22 gallons."""
    told = {id: live["told"].replace("\xa0", " ") for id, (_, _, live) in played.items()}
    assert "20 °F both times" in told["first"]
    assert "9.2 °F colder than that, under clouds 1.7 °F" in told["first"]
    assert f"left {76.86 * 92.9 / 3785:.1f} gallons on 1000 ft²" in told["clouds"]
    for id, roof in (("dam", "leaky"), ("mend", "leaky-and-thick")):
        assert f"{melts(roof)[1] * 86400 * 92.9 / 3.785:.2g} gallons a day" in told[id]
    shown = [tag["text"] for scene in played["dam"][2]["scenes"] for tag in scene["tags"]]
    assert [f"Roof under the snow: {each} °F" in shown for each in (32, 25)] == [True, True]


def test_clouds_end_the_frost_before_the_sky_is_as_warm_as_the_air(played):
    _, states, live = played["clouds"]
    assert live["done"]
    assert states[0].frost == 0


def test_each_roof_of_the_last_beat_that_is_no_answer_says_why(tmp_path):
    """Under the sky of the page itself: what is dry, damp or wet there is so on the free page too."""
    page, said = first_visit(ID, tmp_path), {}
    for number in range(4):
        page.hear({"kind": "beat", "number": number})
        bet_all(page)
    for option in page.controls["Snow"].options:
        page.widget.moves = {"serial": 1, "system": "us", "values": {"Snow": option}}
        live = page.widget.live["stage"]
        assert page.stage.states[0].cooling == pytest.approx(20.0)
        said[option] = live["done"], str(live["scenes"])
    assert [name for name, (_, text) in said.items() if "No snow on this roof" in text] == [
        "none",
        "thin-layer",
        "layer",
    ]
    assert [name for name, (_, text) in said.items() if "it still melts" in text] == ["leaky-and-thick"]
    assert [name for name, (_, text) in said.items() if "Warm air leaks up" in text] == ["leaky"]
    assert [name for name, (done, _) in said.items() if done] == ["tight"]


def test_calm_air_says_why_a_colder_metal_has_less_frost(tmp_path):
    page = open_page(ID, tmp_path)
    before = page.readouts["frost"], page.readouts["frosted"]
    assert "The stiller the air" not in page.sentence
    page.controls["Wind"].value = 0.53
    assert page.readouts["frost"] < before[0]
    assert page.readouts["frosted"] > before[1]
    assert "The stiller the air" in page.sentence


def test_the_prediction_and_its_numbers():
    assert below_air(20, 20.0) == pytest.approx(9.9, abs=0.1)
