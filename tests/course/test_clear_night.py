"""Lesson 12: the page against the night physics, its known numbers, its ends."""

import asked
import pytest
from lesson_page import check_replies, open_page, to_both_ends

from dryward import units
from dryward.course.clear_night.page import states_of_nights
from dryward.course.clear_night.questions import below_air
from dryward.physics import sky
from dryward.physics.sky import frost_margin, night
from dryward.teaching import lessons
from dryward.units import to_si
from dryward.verdict import criterion
from dryward.weather import Air

ID = "clear-night"
COLD = units.to_si(20, "degF")


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        at = page.at
        found = night(
            Air(COLD, at.RH_out), at.Sky, at.Wind, resistance=at.R_cover, u_value=0.126, indoor_temperature=21.1
        )
        assert page.readouts["frost"] == pytest.approx(found.frost[-1], rel=1e-9)
        assert page.readouts["drip"] == pytest.approx(found.frost[-1] * units.to_si(600, "ft2"))
        assert page.readouts["margin"] == pytest.approx(frost_margin(Air(COLD, at.RH_out)), abs=1e-8)
        assert ("form by morning" in page.sentence) == (found.frost[-1] > 0)
        assert page.readouts["state"] == criterion("night-frost").state(found.frost[-1])
        assert page.readouts["frosted"] == pytest.approx(COLD - found.underside_temperature[-1])
        if found.frost[-1] == 0:  # a dry covering is what the night itself gives
            assert COLD - found.underside_temperature[-1] == pytest.approx(page.readouts["below"], abs=1e-6)


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.readouts["below"] * 1.8 == pytest.approx(9.9, rel=0.02)
    top = sky.roof_surface(COLD, COLD - 20.0, 8.0, u_value=0.126, indoor_temperature=21.1)
    assert page.readouts["below"] == pytest.approx(COLD - top)
    for humidity, margin in ((70, 7.3), (80, 4.6), (90, 2.2), (95, 1.1)):
        page.controls["RH_out"].value = humidity
        assert page.readouts["margin"] * 1.8 == pytest.approx(margin, abs=0.05)
    page.controls["RH_out"].value = 90
    page.controls["Wind"].value = 20
    assert page.readouts["below"] * 1.8 == pytest.approx(4.9, rel=0.02)


def test_cloud_and_a_layer_bring_less_frost(tmp_path):
    page = open_page(ID, tmp_path)
    clear = page.readouts["frost"]
    page.controls["Sky"].value = 10
    assert page.readouts["frost"] < 0.5 * clear
    page.controls["Sky"].value = 36
    page.controls["R_cover"].value = 4
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
            for place in range(0, 41, 4):
                control.put(control.shown(places[place]))
                page.refresh()
                assert strip.states[place] == page.readouts["state"], (name, place)
            seen |= set(strip.states)
            control.value = start
    assert seen == {"dry", "damp", "wet"}


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


@pytest.mark.parametrize(("system", "thick"), [("us", 4), ("si", 0.7)])
def test_a_layer_is_seen_to_change_the_night(system, thick, tmp_path):
    """Less than a twentieth of the frost is left, and strip and sentence show it: wet, damp, dry."""
    page = open_page(ID, tmp_path, system)
    bare = page.readouts["frost"]
    assert page.readouts["state"] == "wet"
    assert "bare covering" not in page.sentence
    control = page.controls["R_cover"]
    control.put(thick / 4)
    page.refresh()
    assert page.readouts["state"] == "damp"
    assert "enough to see and feel" in page.sentence
    control.value = thick
    assert page.readouts["state"] == "dry"
    assert 0 < page.readouts["frost"] < bare / 20
    assert page.readouts["bare"] == pytest.approx(bare)
    assert f"On the bare covering it would be {page.show(bare, 'area density')}." in page.sentence
    found = page.strips_shown["R_cover"]["spans"]
    assert [state for *_, state in found] == ["wet", "damp", "dry"]
    lesson = lessons.lesson(ID, system)
    assert f"By morning it holds {lesson_number(bare, system)} of frost" in lesson.prediction.reveal
    assert "less than a twentieth" in lesson.prediction.reveal


def test_a_layer_that_ends_the_frost_says_what_it_spares(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_out"].value, page.controls["R_cover"].value = 80, 4
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
    control = open_page(ID, tmp_path).controls["Wind"]
    for number, word in ((3, "calm"), (8, "breeze"), (20, "windy")):
        assert f"{number} {word}" in control.words
    assert (control.min, control.max, control.unit) == (3, 25, "W/(m² K)")


def test_the_checks_with_their_fixed_numbers():
    clouds, vent, drip = asked.fixed("clear-night")
    assert clouds.answer.startswith("Less")
    assert vent.answer.startswith("It can bring more")
    assert drip.answer.startswith("The outer membrane")
    for rh, margin in ((70, 7.3), (80, 4.6), (90, 2.2), (95, 1.1)):
        assert round(1.8 * frost_margin(asked.outside(20, rh)), 1) == margin
    cold = to_si(20.0, "degF")
    roof = sky.roof_surface(cold, cold - 20, 8.0, u_value=asked.vault().u_value, indoor_temperature=to_si(70.0, "degF"))
    assert 1.8 * (cold - roof) == pytest.approx(9.9, abs=0.1)


def test_the_prediction_and_its_numbers():
    assert below_air(20, 20.0) == pytest.approx(9.9, abs=0.1)
