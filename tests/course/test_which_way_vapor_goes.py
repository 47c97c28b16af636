"""Lesson 3: the page against the two vapor pressures, and its known numbers."""

import re
from decimal import Decimal

import asked
import pytest
from lesson_page import check_replies, open_page, places

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
    assert page.at.RH_in == page.at.RH_out
    assert {each.name: each.text for each in page.readout_list}["folk"] == "neither way"


def test_the_checks_with_their_fixed_numbers():
    up, none, out = asked.fixed("which-way-vapor-goes")
    assert (up.answer, none.answer, out.answer) == ("Up into the room.", "Almost none.", "Out.")
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
            question = questions.checks(ID, seed, system)[1]
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
