"""Films and air spaces by direction and slope."""

import numpy as np
import pytest

from dryward.building import films
from dryward.checks import OutOfRange, UnknownName
from dryward.units import from_si


def test_a_wall_has_one_film_whichever_way_the_heat_goes():
    assert films.still_air(90.0, "up") == films.still_air(90.0, "down")


def test_heat_leaves_a_ceiling_more_easily_upward():
    for slope in np.linspace(0, 89, 10):
        assert films.still_air(slope, "up") < films.still_air(slope, "down")
    assert films.iso_interior("up") < films.iso_interior("horizontal") < films.iso_interior("down")


def test_between_the_slopes_of_the_table():
    assert from_si(films.still_air(22.5), "R") == pytest.approx(0.615)


@pytest.mark.parametrize("direction", ["up", "horizontal", "down"])
def test_the_table_and_the_formula_agree(direction):
    for depth in (0.005, 0.007, 0.010, 0.015, 0.025, 0.050, 0.100, 0.300):
        table = films.air_space_resistance(depth, direction)
        assert films.reflective_air_space(depth, direction, 0.9, 0.9) == pytest.approx(table, abs=0.0056)


def test_an_array_of_thicknesses():
    assert films.air_space_resistance(np.array([0.0, 0.01, 0.05])).tolist() == [0.0, 0.15, 0.18]


def test_foil_helps_most_when_heat_flows_down():
    gain = {
        way: films.reflective_air_space(0.05, way, 0.05, 0.9) / films.reflective_air_space(0.05, way, 0.9, 0.9)
        for way in ("up", "horizontal", "down")
    }
    assert gain["down"] > gain["horizontal"] > gain["up"] > 1.5


@pytest.mark.parametrize(
    ("call", "error", "words"),
    [
        (lambda: films.still_air(95.0), OutOfRange, "Slope is 95 degrees; it must be 0 to 90 degrees"),
        (lambda: films.still_air(0.0, "sideways"), UnknownName, 'no direction of heat flow "sideways"'),
        (lambda: films.iso_interior("upp"), UnknownName, "did you mean up"),
        (lambda: films.iso_exterior("sea"), UnknownName, 'no outer side "sea"'),
        (lambda: films.moving_air("fall"), UnknownName, 'no season "fall"'),
        (lambda: films.air_space_resistance(0.5), OutOfRange, "Thickness of the air space is 0.5 m"),
        (lambda: films.reflective_air_space(0.0, "up", 0.9, 0.9), OutOfRange, "Thickness of the air space is 0 m"),
        (lambda: films.reflective_air_space(0.1, "up", 0.0, 0.9), OutOfRange, "Emittance is 0"),
        (lambda: films.reflective_air_space(0.1, "up", 0.9, 0.9, 200.0), OutOfRange, "Temperature of the air space"),
    ],
)
def test_bad_values_get_a_sentence(call, error, words):
    with pytest.raises(error, match=words):
        call()
