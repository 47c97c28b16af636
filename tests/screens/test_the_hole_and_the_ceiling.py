"""Lesson 10: the page against the leak physics, its known numbers, its ends."""

import pytest
from lesson_page import check_replies, open_page, to_both_ends

from dryward import air, units
from dryward.physics.airleak import Leak, brought, orifice_flow, stack_pressure
from dryward.teaching import lessons
from dryward.weather import Air

ID = "the-hole-and-the-ceiling"
ROOM, COLD = units.to_si(70, "degF"), units.to_si(20, "degF")
WINTER = 150 * units.DAY


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        at = page.at
        room = Air(ROOM, at.RH_in)
        deposit = brought(orifice_flow(at.dP, at.Hole), room, COLD).deposit * WINTER
        drive = max(room.vapor_pressure - air.saturation_vapor_pressure(COLD), 0.0)
        vapor = drive * at.M_in * units.to_si(32, "ft2") * WINTER
        assert page.readouts["by_air"] == pytest.approx(deposit, rel=1e-9)
        assert page.readouts["by_vapor"] == pytest.approx(vapor, rel=1e-9)
        assert ("nothing of it stays" in page.sentence) == (vapor == 0)
        assert ("by this count nothing stays from the hole" in page.sentence) == (deposit == 0 and vapor > 0)
        if deposit:
            assert units.show(deposit, "mass", system) in page.sentence
        if vapor:
            assert units.show(vapor, "mass", system) in page.sentence


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.readouts["by_air"] == pytest.approx(29, rel=0.02)
    assert page.readouts["by_vapor"] == pytest.approx(8.6, rel=0.02)
    assert units.from_si(page.readouts["air_flow"], "cfm") == pytest.approx(1.06, rel=0.02)
    assert page.readouts["stack"] == pytest.approx(4.5, rel=0.02)
    assert units.from_si(page.readouts["flow_at_50"], "cfm") == pytest.approx(1000, rel=0.001)
    assert units.from_si(page.readouts["leakage_area"], "in2") == pytest.approx(54.9, rel=0.02)
    page.controls["M_in"].value = 1
    assert page.readouts["times"] == pytest.approx(20, rel=0.03)  # "about twenty": 29.4 over 1.44
    page.controls["M_in"].value = 0.2
    assert page.readouts["times"] == pytest.approx(100, rel=0.03)


def test_the_count_is_no_upper_bound_and_says_so(tmp_path):
    page = open_page(ID, tmp_path)
    said = " ".join((page.sentence, *(f"{each.words} {each.note}" for each in page.readout_list)))
    assert "about" in page.sentence
    assert "most" not in said
    assert any("Cold air shrinks" in step.words for step in page.steps(page.state))
    limits = " ".join(lessons.lesson(ID, "si").limits)
    for humidity, more, words in ((0.4, 1.059, "6 % at 40 %"), (0.2, 1.31, "a third at 20 %")):
        flow = orifice_flow(1.0, units.to_si(1, "in2"))
        plain, shrinking = (brought(flow, Air(ROOM, humidity), COLD, shrinking=each).deposit for each in (False, True))
        assert shrinking / plain == pytest.approx(more, abs=0.002)
        assert words in limits
        if humidity == 0.4:
            assert shrinking * WINTER == pytest.approx(31, rel=0.02)
            assert "1.73 kg" in limits
            assert (shrinking - plain) * WINTER == pytest.approx(1.73, abs=0.005)


def test_in_dry_air_a_little_still_goes_through_the_ceiling(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_in"].value = 15
    assert page.readouts["by_air"] == 0
    assert page.readouts["by_vapor"] > 0
    assert page.sentence.startswith("The dew point of the room is just above the cold face")
    assert Air(ROOM, 0.15).dew_point > COLD


def test_times_are_written_out(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["M_in"].value = 0.2
    page.controls["RH_in"].value = 43
    assert page.readouts["times"] == pytest.approx(99.9, abs=3)
    assert "e+" not in page.sentence


def test_hole_flow_and_half_the_humidity(tmp_path):
    page = open_page(ID, tmp_path)
    whole = page.readouts["by_air"]
    page.controls["Hole"].value = 0.5
    assert page.readouts["by_air"] == pytest.approx(whole / 2)
    page.controls["Hole"].value = 1
    page.controls["dP"].value = 4
    assert page.readouts["by_air"] == pytest.approx(2 * whole)
    page.controls["dP"].value = 1
    page.controls["RH_in"].value = 20
    assert page.readouts["by_air"] == pytest.approx(whole * 0.86 / 4.55, rel=0.02)


def test_strips_stop_where_the_two_are_equal(tmp_path):
    page = open_page(ID, tmp_path)
    holds = page.strips(page.at, page.state)
    for name, strip in holds.items():
        control = page.controls[name]
        start = control.value
        for place in (0, 20, 40):
            control.value = min(control.max, max(control.min, control.shown(control.along()[place])))
            less = page.readouts["by_air"] <= page.readouts["by_vapor"]
            assert bool(strip.holds[place]) == less, (name, place)
        control.value = start


def test_the_house_is_the_blower_door(tmp_path):
    page = open_page(ID, tmp_path)
    house = Leak.from_blower_door(3.0, units.to_si(20_000, "ft3"))
    assert page.readouts["holes"] == pytest.approx(0.2 * house.leakage_area() / units.to_si(1, "in2"))
    state = page.views(page.state)
    assert state.top == page.controls["dP"].value
    assert state.top - state.bottom == pytest.approx(stack_pressure(units.to_si(12, "ft"), ROOM, COLD))


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))
