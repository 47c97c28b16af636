"""The lines of a hand calculation that lessons share, in both unit systems; each worked by hand."""

from dryward import air
from dryward.panels import hand
from dryward.units import to_si

ROOM, YARD = to_si(70.0, "degF"), to_si(20.0, "degF")


def test_the_vapor_pressure_of_an_air():
    full = air.saturation_vapor_pressure(ROOM)
    step = hand.pressure("The room.", ROOM, 0.4, full, "us")
    assert (
        step.line == "The room. The most at 70.0 °F is 0.740 in. Hg, from a table. 40 % × 0.740 in. Hg = 0.296 in. Hg"
    )
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


def test_numbers_have_no_powers_of_ten():
    assert hand.flow("Vapor.", 1002.0, 348.0, to_si(50.0, "perm"), "si").formula.split(" × ")[1] == "2860 ng/(s m² Pa)"
    assert [hand.plain(each) for each in (2861.0, 0.0495, 1e-5, 100.0)] == ["2860", "0.0495", "0.00001", "100"]
    assert [hand.times(each) for each in (99.7, 4230.0, 0.034)] == ["100 times", "4200 times", "0.034 times"]
