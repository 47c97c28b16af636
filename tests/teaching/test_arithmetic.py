"""The hand calculation: each step's result follows from its formula."""

import pytest

from dryward import air
from dryward.checks import OutOfRange
from dryward.teaching import arithmetic
from dryward.units import to_si


def test_vapor_pressure():
    step = arithmetic.vapor_pressure("the room", air.saturation_vapor_pressure(to_si(70.0, "degF")), 0.4)
    assert step.formula == "40 % × 0.740 in. Hg"
    assert step.result == "0.296 in. Hg"


def test_plane_temperature():
    step = arithmetic.plane_temperature(
        "the plane", to_si(70.0, "degF"), to_si(20.0, "degF"), to_si(15.0, "R"), to_si(20.0, "R")
    )
    assert step.formula == "70.0 °F − (70.0 °F − 20.0 °F) × 15.0 R / 20.0 R"
    assert step.result == "32.5 °F"
    with pytest.raises(OutOfRange, match="R in all is 0 m² K/W; it must be above 0 m² K/W"):
        arithmetic.plane_temperature("x", 20.0, 0.0, 0.0, 0.0)


def test_layers_in_a_row():
    layers = [to_si(each, "perm") for each in (40, 7)]
    assert arithmetic.series(layers).result == "5.96 perm"
    assert arithmetic.series(layers).formula == "1 / (1/40 + 1/7)"
    assert arithmetic.series(layers, "si").result.endswith("m sd")
    for bad in ([], [0.0], [1e-10, -1.0]):
        with pytest.raises(OutOfRange, match="Layers in a row need at least one layer, each with a permeance above 0"):
            arithmetic.series(bad)


def test_flow_of_one_perm():
    """One perm at 654 Pa: 3.2 g/m2 a day, 4.6 grains/ft2 a day; worked by hand."""
    step = arithmetic.flow("Vapor", 654.0, to_si(1.0, "perm"), "si")
    assert step.result == "3.23 g/m² day"
    assert arithmetic.flow("Vapor", 654.0, to_si(1.0, "perm")).result == "4.64 gr/ft² day"
    assert step.line.startswith("Vapor: push times permeance, for one day. 654 Pa × ")
