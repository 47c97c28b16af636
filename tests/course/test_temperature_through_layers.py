"""Lesson 4: the page against a wall added up by hand, its known numbers, its strips."""

import asked
import pytest
from lesson_page import check_replies, open_page, places

from dryward import air, building, units
from dryward.course.temperature_through_layers.page import NOTHING
from dryward.teaching import lessons, vault
from dryward.verdict import of_face

ID = "temperature-through-layers"
ROOM = units.to_si(70, "degF")
BEFORE, AFTER = units.to_si(0.68 + 0.45, "R"), units.to_si(0.62 + 0.17, "R")


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_ratio_of_r(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for at in places(page):
        outside = at.R_out if at.R_out > NOTHING else 0.0
        total = BEFORE + at.R_ins + AFTER + outside
        share = (AFTER + outside) / total
        expected = at.T_out + (ROOM - at.T_out) * share
        assert page.readouts["total"] == pytest.approx(total)
        assert page.readouts["share"] == pytest.approx(share)
        assert page.readouts["sheathing"] == pytest.approx(expected)
        limit = air.saturation_vapor_pressure(expected) / air.saturation_vapor_pressure(ROOM)
        assert page.readouts["humidity_limit"] == pytest.approx(min(limit, 1.0))
        assert f"{share * 100:.0f} % of the way" in page.sentence
        assert page.show(expected, "temperature") in page.sentence


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path)
    assert units.from_si(page.readouts["sheathing"], "degF") == pytest.approx(22, abs=0.5)
    page.controls["R_out"].value = 10
    assert units.from_si(page.readouts["sheathing"], "degF") == pytest.approx(37, abs=0.5)


def test_the_drawing_against_r_is_a_straight_line(tmp_path):
    page = open_page(ID, tmp_path)
    profile = page.state.profile
    slopes = (profile.temperature[1:] - profile.temperature[:-1]) / (
        profile.thermal_resistance[1:] - profile.thermal_resistance[:-1]
    )
    assert slopes == pytest.approx(slopes[0])
    by_depth = page.picture
    page.controls["Axis"].value = "resistance"
    assert page.picture != by_depth


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_state_is_what_room_air_does_at_the_face(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    pressure = 0.4 * air.saturation_vapor_pressure(ROOM)
    osb, seen = building.material("teaching-osb"), set()
    for outside in page.along("R_out", 3):
        page.controls["R_out"].put(page.controls["R_out"].shown(outside))
        for cold in page.along("T_out"):
            page.controls["T_out"].put(page.controls["T_out"].shown(cold))
            page.refresh()
            face = page.readouts["sheathing"]
            most = air.saturation_vapor_pressure(face)
            judged = of_face(face, pressure, most, osb)
            assert page.readouts["state"] == judged.state
            assert page.readouts["there"] == pytest.approx(pressure / most)
            wood, mold = judged.finding("wood-moisture"), judged.finding("face-humidity")
            if judged.state == "wet":
                kind = "frost forms" if face < 0 else "drops form"
                seen.add(kind)
                assert page.sentence.endswith(f": {kind}.")
                assert page.readouts["humidity_limit"] <= 0.4 + 1e-9
                if pressure / most >= 1.005:
                    assert f"with {pressure / most:.3g} times the vapor that can stay" in page.sentence
            else:
                assert f"would come to {page.show(pressure / most, 'relative humidity')} there" in page.sentence
                assert f"would settle at {wood.value:.0f} % moisture content" in page.sentence
                assert ("mold can grow" in page.sentence) == (mold.state == "damp")
                seen.add(judged.state)
    assert seen == {"frost forms", "drops form", "damp", "dry"}


def test_the_words_name_the_r_that_stops_the_drops(tmp_path):
    """Frost with no board, drops with R-10, none from about R-20 on: as the reveal has it."""
    page = open_page(ID, tmp_path)
    board = page.controls["R_out"]
    assert "frost forms" in page.sentence
    board.value = 10
    assert "drops form" in page.sentence
    board.value = 19
    assert "drops form" in page.sentence
    board.value = 20.5
    assert page.readouts["state"] == "damp"
    assert "still leaves drops, and from about R-20 outside it leaves none" in lessons.lesson(ID).prediction.reveal
    said = " ".join(lessons.lesson(ID).limits)
    room = page.show(ROOM, "temperature")
    assert "room air at 70 °F and 40 % would do" in said
    assert room == "70.0 °F"


@pytest.mark.parametrize("system", ["us", "si"])
def test_strips_are_the_page_itself(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    page.controls["T_out"].value = 30 if system == "us" else -1
    page.controls["R_out"].value = 10 if system == "us" else 1.8
    seen = set()
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start, along = control.value, page.along(name)
        for place in (0, 10, 20, 30, 40):
            control.put(control.shown(along[place]))
            page.refresh()
            assert strip.states[place] == page.readouts["state"], (name, place)
        seen |= set(strip.states)
        control.value = start
    assert seen == {"dry", "damp", "wet"}


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


def test_the_checks_with_their_fixed_numbers():
    plane, doubled, squeezed = asked.fixed("temperature-through-layers")
    assert round(plane.answer, 1) == 32.5
    assert {round(each.value, 1) for each in plane.choices} >= {57.5, 45.0}
    assert "warmer" in doubled.answer
    assert "Less than the label" in squeezed.answer


def test_the_prediction_and_its_numbers():
    inside = (("room film and drywall", 0.5, 1.1), ("batt", 5.5, 20))
    outside = ("sheathing and outer film", 0.5, 0.8)
    bare = vault.plane((*inside, outside), 70, 20, "batt")
    boarded = vault.plane((*inside, ("board", 2, 10), outside), 70, 20, "batt")
    assert bare == pytest.approx(22, abs=0.5)
    assert boarded == pytest.approx(37, abs=0.6)
