"""Controls: ends, steps, places along a slider, typed numbers; and what strips and readouts say."""

import math

import pytest

from dryward import units
from dryward.checks import NotUnderstood, OutOfRange, UnknownName
from dryward.panels.controls import STANDARD, Choice, Scale, Slider, standard
from dryward.panels.readouts import Readout, Strip

_YEAR, _SHARE = Scale(30, 210, 150, 10), Scale(0.1, 0.95, 0.9, 0.05)
#: Of kinds that no shared slider has: a time, and a bare number.
OWN = {
    "Days": Slider("Days", "Days of winter", "time", _YEAR, _YEAR),
    "Emissivity": Slider("Emissivity", "Emissivity of the covering", "number", _SHARE, _SHARE),
}


def slider(name):
    return OWN.get(name) or standard(name)


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("name", STANDARD)
def test_every_shared_control_starts_on_itself(name, system):
    control = standard(name).control(system)
    assert control.min <= control.value <= control.max
    assert control.min < control.max
    assert control.notches >= 4
    assert control.say(control.value)
    assert math.isfinite(control.si)


@pytest.mark.parametrize("name", STANDARD)
def test_both_systems_begin_and_end_at_the_same_thing(name):
    us, si = (standard(name).control(system) for system in ("us", "si"))
    if us.slider.quantity in ("number", "relative humidity"):
        return
    # The ends are round numbers of each system: near each other, within a twelfth of the slider.
    for end in ("left", "right"):
        shown = units.from_si(units.to_si(getattr(us.slider.us, end), us._unit.name), si._unit.name)
        assert abs(si.fraction(shown) - (0.0 if end == "left" else 1.0)) < 0.08, (name, end)


def test_si_and_back_across_a_switch_of_units():
    us = standard("M_in").control("us")
    us.value = 0.7
    si = standard("M_in").control("si", us.si)
    assert si.si == pytest.approx(us.si, rel=1e-12)
    assert si.unit == "m sd"
    assert si.min == 0.035


def test_another_start_is_given_in_both_systems():
    slider = standard("T_out").starting(0)
    assert slider.control("us").value == 0
    assert slider.control("si").value == pytest.approx(-17.8)
    assert standard("T_out").starting(0, -18).control("si").value == -18


def test_places_along_a_slider():
    log = standard("M_in").control("us")
    places = log.along(3)
    assert [units.from_si(each, "perm") for each in places] == pytest.approx([0.05, math.sqrt(5), 100])
    assert log.fraction(math.sqrt(5)) == pytest.approx(0.5)
    assert log.notches == 83  # 25 a decade over 3.3 decades
    assert standard("T_out").control("us").notches == 120


@pytest.mark.parametrize(
    ("name", "system", "text", "value"),
    [
        ("Gap", "us", "3/4 in", 0.75),
        ("Gap", "us", "1-1/2", 1.5),
        ("Gap", "us", "38 mm", 1.496),
        ("R_ins", "us", "R-20", 20.0),
        ("R_ins", "si", "R-20", 3.522),
        ("Air", "us", "20 ft/min", 20.0),
        ("Air", "si", "0,1", 0.1),
        ("Days", "us", "90 days", 90.0),
        ("ACH50", "us", "0.6", 0.6),
        ("Emissivity", "si", "0.5", 0.5),
    ],
)
def test_typed(name, system, text, value):
    assert slider(name).control(system).read(text) == pytest.approx(value, rel=1e-3)


@pytest.mark.parametrize(
    ("name", "text", "error", "sentence"),
    [
        ("Gap", "a lot", NotUnderstood, r'The length "a lot" is not understood; write it like "3/4 in"'),
        ("Air", "fast", NotUnderstood, r'The air speed in the gap "fast" is not understood; write it like "20 ft/min"'),
        (
            "Emissivity",
            "?",
            NotUnderstood,
            r'The emissivity of the covering "\?" is not understood; write it like "0.9"',
        ),
        (
            "Sky",
            "eleven",
            NotUnderstood,
            r'The difference between air and sky "eleven" is not understood; write it like "36 °F"',
        ),
        ("Sky", "99", OutOfRange, r"Difference between air and sky is 99 °F; it must be 0 to 45 °F\."),
        ("Sky", "1e400", OutOfRange, r"Difference between air and sky is too large; it must be 0 to 45 °F\."),
        ("T_out", "1e400", OutOfRange, r"Outdoor temperature is too large; it must be −20 to 100 °F\."),
        ("T_out", "-1e400 F", OutOfRange, r"Outdoor temperature is too small; it must be −20 to 100 °F\."),
        ("Gap", "12 in", OutOfRange, r"Vent gap is 12 in\.; it must be 0\.5 to 4 in\."),
        ("RH_in", "0.4 %", OutOfRange, r"Indoor humidity is 0\.4 %; it must be 15 to 70 %\."),
    ],
)
def test_bad_entries(name, text, error, sentence):
    with pytest.raises(error, match=sentence):
        slider(name).control("us").read(text)


def test_what_is_no_number():
    with pytest.raises(OutOfRange, match=r"Vent gap must be a number, not 'wide'\."):
        standard("Gap").control("us").value = "wide"
    with pytest.raises(OutOfRange, match="Vent gap is not a number"):
        standard("Gap").control("us").value = math.nan


def test_unknown_names():
    with pytest.raises(UnknownName, match='There is no control "RH_inn"; did you mean RH_in'):
        standard("RH_inn")
    with pytest.raises(UnknownName, match='There is no choice of film "fixd"; did you mean fixed'):
        Choice("Film", "Film", (("fixed", "fixed"), ("open", "open"))).control("us").value = "fixd"


def test_a_choice_says_it_in_both_systems():
    choice = Choice("Outer", "Outer layer", (("a", "1 perm", "sd 3.5 m"), ("b", "open")), start="b")
    assert choice.control("us").value == "b"
    assert choice.control("si").label("a") == "sd 3.5 m"
    assert choice.control("si").label() == "open"


RISING, FALLING = (
    Slider("x", "X", "number", Scale(*ends, 5, 1), Scale(*ends, 5, 1)).control("us") for ends in ((0, 10), (10, 0))
)


def states(letters):
    """States by their first letters; ? for what is not known yet."""
    known = {"d": "dry", "a": "damp", "w": "wet", "?": "not known yet"}
    return tuple(known[each] for each in letters)


@pytest.mark.parametrize(
    ("letters", "control", "words"),
    [
        ("dddddd", RISING, "Dry at every setting"),
        ("wwwwww", RISING, "Wet at every setting"),
        ("dddwww", RISING, "Dry up to 4, wet from 6 on"),
        ("wwwddd", RISING, "Wet up to 4, dry from 6 on"),
        ("waddaw", RISING, "Wet up to 0, damp 2, dry 4 to 6, damp 8, wet from 10 on"),
        ("ddwwww", FALLING, "Dry at least 8, wet up to 6"),
        ("ddaaww", FALLING, "Dry at least 8, damp 6 to 4, wet up to 2"),
        ("dd?w?w", RISING, "Not known yet: 4 of 6 worked out"),
    ],
)
def test_strips_in_words(letters, control, words):
    assert Strip(states(letters)).shown(control)["words"] == words


@pytest.mark.parametrize(
    ("letters", "places", "control", "words"),
    [
        ("wadd", (0, 0.51, 0.54, 1), RISING, "Wet up to 0, damp 5, dry above 5"),
        ("wwdd", (0, 0.46, 0.54, 1), RISING, "Wet up to 5, dry above 5"),
        ("waad", (0.46, 0.54, 0.9, 1), RISING, "Wet up to 5, damp above 5 to 9, dry from 10 on"),
        ("wad", (0.46, 0.5, 0.54), RISING, "Wet below 5, damp 5, dry above 5"),
        ("ddaa", (0, 0.46, 0.5, 1), RISING, "Dry below 5, damp from 5 on"),
        ("ddaa", (0, 0.46, 0.5, 1), FALLING, "Dry above 5, damp up to 5"),
        ("daaw", (0.2, 0.3, 0.46, 0.5), RISING, "Dry up to 2, damp 3 to just below 5, wet from 5 on"),
        ("ddaawww", (0, 0.46, 0.52, 0.66, 0.7, 0.8, 1), RISING, "Dry up to 5, damp between 5 and 7, wet from 7 on"),
        ("daw", (0.3, 0.46, 0.5), RISING, "Dry up to 3, damp just below 5, wet from 5 on"),
        ("daw", (0.46, 0.52, 0.54), RISING, "Dry up to 5, damp just above 5, wet above 5"),
        ("dwww", (0.46, 0.54, 0.9, 1), FALLING, "Dry at least 5, wet below 5"),
        ("dawww", (0, 0.46, 0.54, 0.9, 1), FALLING, "Dry at least 10, damp 5, wet below 5"),
    ],
)
def test_two_stretches_that_meet_in_one_printed_number_are_told_apart(letters, places, control, words):
    assert Strip(states(letters), places).shown(control)["words"] == words


def test_a_strip_is_stretches_that_cover_the_slider():
    shown = Strip(states("dwwada")).shown(RISING)
    ends = [(low, high) for low, high, _ in shown["spans"]]
    assert [each for *_, each in shown["spans"]] == ["dry", "wet", "damp", "dry", "damp"]
    assert [low for low, _ in ends] == pytest.approx([0.0, 0.1, 0.5, 0.7, 0.9])
    assert [high for _, high in ends] == pytest.approx([0.1, 0.5, 0.7, 0.9, 1.0])
    shown = Strip(states("dw"), (0.2, 0.4)).shown(RISING)
    assert shown["spans"] == [[0.0, pytest.approx(0.3), "dry"], [pytest.approx(0.3), 1.0, "wet"]]


def test_a_strip_of_a_choice_names_the_options_of_each_state():
    choice = Choice("Film", "Film", (("a", "plastic"), ("b", "paper"), ("c", "open"))).control("us")
    assert Strip(states("wdw")).shown(choice) == {"spans": [], "words": 'Dry with "paper". Wet with "plastic", "open"'}
    assert Strip(states("aaa")).shown(choice)["words"] == "Damp with every one of them"
    assert Strip(states("d??")).shown(choice)["words"] == 'Dry with "plastic". Not known yet with "paper", "open"'
    assert Strip(states("dwa")).holds == (True, False, False)


def test_readouts():
    both = Readout("gain", "Gain", 2.0833e-8, "vapor flux", both=True)
    assert both.shown("si") == {"name": "gain", "value": "1.8 g/m² day", "also": "2.58 gr/ft² day"}
    assert Readout("x", "X", None, "length").shown("us")["value"] == "none"
    assert Readout("x", "X", 3.0, text="three").shown("us")["value"] == "three"
    assert Readout("x", "X", 3.14159, digits=1).shown("us")["value"] == "3.1"
