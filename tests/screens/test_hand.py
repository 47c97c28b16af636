"""The lines of a hand calculation that lessons share, in both unit systems; each worked by hand."""

import re

import pytest

from dryward import air, building
from dryward.panels import hand
from dryward.physics import steady
from dryward.units import from_si, to_si
from dryward.weather import Air

ROOM, YARD = to_si(70.0, "degF"), to_si(20.0, "degF")


def test_the_vapor_pressure_of_an_air():
    full = air.saturation_vapor_pressure(ROOM)
    step = hand.pressure("The room.", ROOM, 0.4, full, "us")
    assert step.line == "The room. The most there can be at 70.0 °F is 0.740 in. Hg. 40 % × 0.740 in. Hg = 0.296 in. Hg"
    assert hand.pressure("The room.", 20.0, 0.5, 2338.0, "si").formula == "50 % × 2338 Pa"


def test_the_temperature_of_a_plane():
    """Three quarters of the R are before it: three quarters of the way down."""
    step = hand.plane("The plane.", ROOM, YARD, to_si(15.0, "R"), to_si(20.0, "R"), "us")
    assert step.formula == "70.0 °F − (70.0 °F − 20.0 °F) × R 15 / 20"
    assert step.result == "32.5 °F"
    assert hand.plane("The plane.", 20.0, 0.0, 3.0, 4.0, "si").line == (
        "The plane. 20.0 °C − (20.0 °C − 0.0 °C) × RSI 3 / 4 = 5.0 °C"
    )


def test_the_flow_through_one_perm():
    """One perm under 654 Pa: 57.2 ng x 654 x 86 400 = 3.23 g/m2 a day, 4.64 grains/ft2 a day."""
    one = to_si(1.0, "perm")
    step = hand.flow("Vapor.", 1002.0, 348.0, one, "si")
    assert step.line == "Vapor. (1002 Pa − 348 Pa) × 57.2 ng/(s m² Pa) × 86 400 s / 10⁹ = 3.23 g/m² day"
    step = hand.flow("Vapor.", 1002.0, 348.0, one, "us")
    assert (step.formula.endswith("× 1 perm × 24 h"), step.result) == (True, "4.64 gr/ft² day")


def worked(step):
    """The difference that a line asks for, and the one it gives."""
    first, second = re.fullmatch(r"([\d.]+) g/m² day − ([\d.]+) g/m² day", step.formula).groups()
    return float(first) - float(second), float(step.result.split()[0])


@pytest.mark.parametrize(
    ("airs", "words"),
    [
        ((Air(21.0, 0.4), Air(-7.0, 0.8)), ("arrives from the room", "leaves to outdoors")),
        ((Air(21.0, 0.4), Air(38.0, 0.8)), ("leaves to the room", "arrives from outdoors")),
    ],
)
def test_what_stays_is_what_arrives_less_what_leaves(airs, words):
    """January and July: the same lines, the two sides change places."""
    found = steady.profile(building.preset("vented-vault-osb"), *airs)
    steps = hand.stays(found, *airs, hand.at_risk(found), "si")
    assert [tail in step.words for tail, step in zip(words, steps[-3:-1], strict=True)] == [True, True]
    by_hand, told = worked(steps[-1])
    assert by_hand == pytest.approx(told, rel=0.01)
    assert told == pytest.approx(from_si(found.gain, "g/m2/day"), rel=0.01)


def test_with_no_water_the_last_line_is_the_humidity():
    airs = Air(21.0, 0.4), Air(4.4, 0.8)
    found = steady.profile(building.preset("vented-vault-osb"), *airs)
    assert not found.wet_planes
    *_, nothing, humid = hand.stays(found, *airs, hand.at_risk(found), "us")
    assert nothing.result == "0 gr/ft² day"
    assert humid.result == f"{100 * found.relative_humidity[found.face('outer layer', 0)]:.0f} %"
    held, limit = (float(each.split()[0]) for each in humid.formula.split(" / "))
    assert 100 * held / limit == pytest.approx(float(humid.result.split()[0]), abs=1)


def test_numbers_have_no_powers_of_ten():
    assert hand.flow("Vapor.", 1002.0, 348.0, to_si(50.0, "perm"), "si").formula.split(" × ")[1] == "2860 ng/(s m² Pa)"
    assert [hand.plain(each) for each in (2861.0, 0.0495, 1e-5, 100.0)] == ["2860", "0.0495", "0.00001", "100"]
    assert [hand.times(each) for each in (99.7, 4230.0, 0.034)] == ["100 times", "4200 times", "0.034 times"]
