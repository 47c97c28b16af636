"""Moist air: round trips, shapes, order, and what it refuses.

Published values are in tests/published.
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryward import air
from dryward.air import vapor
from dryward.checks import OutOfRange
from dryward.units import KELVIN
from dryward.weather import Air


@given(st.floats(-100, 200))
def test_dew_point_undoes_saturation(temperature):
    assert air.dew_point(air.saturation_vapor_pressure(temperature)) == pytest.approx(temperature, abs=1e-6)


@given(st.floats(-100, 200), st.sampled_from(["ice", "water"]))
def test_dew_point_undoes_saturation_over_one_phase(temperature, over):
    if over == "ice":
        temperature = min(temperature, 0.0)
    if over == "water":
        temperature = max(temperature, -60.0)
    pressure = air.saturation_vapor_pressure(temperature, over)
    assert air.dew_point(pressure, over) == pytest.approx(temperature, abs=1e-6)


def test_dew_point_of_an_array_is_that_of_each():
    temperature = np.linspace(-60, 90, 301).reshape(43, 7)
    pressure = air.saturation_vapor_pressure(temperature)
    found = air.dew_point(pressure)
    assert found.shape == temperature.shape
    assert found == pytest.approx(temperature, abs=1e-6)
    assert found[3, 2] == pytest.approx(air.dew_point(float(pressure[3, 2])), abs=1e-9)


@given(st.floats(-60, 90), st.floats(0, 1))
def test_relative_humidity_undoes_vapor_pressure(temperature, share):
    assert air.relative_humidity(temperature, air.vapor_pressure(temperature, share)) == pytest.approx(share, abs=1e-12)


def test_saturation_rises_everywhere():
    for over in ("auto", "ice", "water"):
        low, high = {"auto": (-100, 200), "ice": (-100, 0), "water": (-60, 200)}[over]
        assert np.all(np.diff(air.saturation_vapor_pressure(np.linspace(low, high, 4001), over)) > 0)


def test_water_is_above_ice_below_the_triple_point():
    below = np.linspace(-60, -0.5, 50)
    assert np.all(air.saturation_vapor_pressure(below, "water") > air.saturation_vapor_pressure(below, "ice"))
    above = np.linspace(0.5, 5.0, 10)  # the curves cross there, so the other one is higher if it is carried on
    assert np.all(air.saturation_vapor_pressure(above, "water") < air.saturation_vapor_pressure(above, "ice"))
    assert air.saturation_vapor_pressure(5.0, "water") < air.saturation_vapor_pressure(5.0, "ice")


def test_density_of_vapor():
    """p = density x gas constant x absolute temperature."""
    assert air.vapor_density(20.0, 1000.0) * air.VAPOR_GAS_CONSTANT * 293.15 == pytest.approx(1000.0)


def test_gas_constants_and_mass_ratio_belong_together():
    assert pytest.approx(air.MASS_RATIO, rel=5e-6) == air.AIR_GAS_CONSTANT / air.VAPOR_GAS_CONSTANT


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: air.saturation_vapor_pressure(250.0), "Temperature is 250 °C; it must be −100 to 200 °C."),
        (
            lambda: air.saturation_vapor_pressure(20.0, "snow"),
            'Saturation is over "auto", "water" or "ice", not "snow".',
        ),
        (lambda: air.vapor_pressure(20.0, 1.4), "Relative humidity is 140 %; it must be 0 to 100 %."),
        (lambda: air.vapor_pressure(np.array([20.0, 300.0]), 0.5), "Temperature is 300 °C"),
        (lambda: air.relative_humidity(20.0, -1.0), "Vapor pressure is −1 Pa; it must be at least 0 Pa."),
        (lambda: air.dew_point(0.0), "Vapor pressure is 0 Pa; it must be 0.001 to 1.6e\\+06 Pa."),
        (lambda: air.dew_point(float("nan")), "Vapor pressure is not a number"),
        (lambda: air.dew_point(500.0, "snow"), 'Saturation is over "auto", "water" or "ice", not "snow".'),
        (lambda: air.humidity_ratio(1000.0, 100.0), "Air pressure is 100 Pa; it must be 10000 to 200000 Pa."),
        (lambda: air.humidity_ratio(2e4, 1e4), "Vapor pressure is 20000 Pa; it must be below the air pressure."),
        (lambda: air.humidity_ratio(1e4, 1e4), "Vapor pressure is 10000 Pa; it must be below the air pressure."),
        (lambda: air.humidity_ratio(-0.5), "Vapor pressure is −0.5 Pa; it must be at least 0 Pa."),
        (lambda: air.humidity_ratio(np.array([900.0, 2e4]), 1e4), "Vapor pressure is 20000 Pa; it must be below"),
        (lambda: air.vapor_density(20.0, -0.5), "Vapor pressure is −0.5 Pa; it must be at least 0 Pa."),
        (lambda: air.vapor_density(-300.0, 1.0), "Temperature is −300 °C"),
        (lambda: air.standard_pressure(20000.0), "Altitude is 20000 m; it must be −5000 to 11000 m."),
        (lambda: air.moist_air(150.0, 0.5), "Temperature is 150 °C; it must be −60 to 100 °C."),
        (lambda: air.moist_air(20.0, 0.5, 10.0), "Air pressure is 10 Pa; it must be 10000 to 200000 Pa."),
        (lambda: air.vapor_pressure("warm", 0.5), "Temperature must be a number, not 'warm'."),
    ],
)
def test_what_it_refuses(call, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        call()


@pytest.mark.parametrize("over", ["ice", "water", "auto"])
def test_an_array_over_one_phase_is_each_over_that_phase(over):
    for temperature in (np.linspace(-50.0, -1.0, 8), np.linspace(-10.0, 0.0, 8), np.linspace(1.0, 60.0, 8)):
        if over == "ice" and temperature.max() > 0:
            continue
        pressure = air.saturation_vapor_pressure(temperature, over)
        assert pressure.tolist() == pytest.approx([air.saturation_vapor_pressure(float(t), over) for t in temperature])
        assert air.dew_point(pressure, over) == pytest.approx(temperature, abs=1e-6)


def test_at_the_triple_point_itself_it_is_over_water():
    at = air.TRIPLE_POINT
    assert at + KELVIN == pytest.approx(273.16, abs=1e-9)  # by the definition of the kelvin until 2019
    over_water = air.saturation_vapor_pressure(at, "water")
    assert air.saturation_vapor_pressure(at) == over_water
    assert air.saturation_vapor_pressure(np.array([at, at]))[0] == over_water


@pytest.mark.parametrize(
    ("steps", "low", "high", "near"), [(2, -40.0, 60.0, 1e-6), (3, -100.0, 200.0, 1e-7), (4, -100.0, 200.0, 1e-11)]
)
def test_the_dew_point_is_found_in_a_few_steps(monkeypatch, steps, low, high, near):
    """The first guess is good: each round squares the error that it leaves."""
    monkeypatch.setattr(vapor, "_STEPS", steps)
    temperature = np.linspace(low, high, 601)
    pressure = air.saturation_vapor_pressure(temperature)
    assert air.dew_point(pressure) == pytest.approx(temperature, abs=near)
    for k in (0, 150, 300, 450, 600):
        assert air.dew_point(float(pressure[k])) == pytest.approx(temperature[k], abs=near)


def test_real_moist_air_of_an_array_keeps_its_shape():
    found = air.moist_air(np.array([[0.0, 20.0], [30.0, 40.0]]), 1.0)
    assert found.humidity_ratio.shape == (2, 2)
    assert found.dew_point == pytest.approx(np.array([[0.0, 20.0], [30.0, 40.0]]), abs=0.01)
    assert air.moist_air(20.0, 0.5).wet_bulb == pytest.approx(13.8, abs=0.1)
    with pytest.raises(OutOfRange, match="Relative humidity is 120 %; it must be 0 to 100 %"):
        air.moist_air(20.0, 1.2)


def test_no_vapor_is_no_vapor():
    assert air.humidity_ratio(0.0) == 0.0
    assert air.vapor_density(20.0, 0.0) == 0.0
    assert air.relative_humidity(20.0, 0.0) == 0.0


@pytest.mark.parametrize(
    ("log", "slope", "low", "high", "latent"),
    [
        (vapor.log_saturation_over_ice, vapor.slope_over_ice, 173.15, 273.15, 2834.4e3),
        (vapor.log_saturation_over_water, vapor.slope_over_water, 233.15, 473.15, 2500.9e3),
    ],
)
def test_the_slopes_are_those_of_the_curves(log, slope, low, high, latent):
    """By differences, and at the triple point by Clapeyron: latent heat [J/kg] over R T squared.

    Latent heats of sublimation and of evaporation at 0.01 °C: IAPWS values, from memory.
    """
    kelvin, step = np.linspace(low, high, 41), 0.01
    differences = (log(kelvin + step) - log(kelvin - step)) / (2 * step)
    assert slope(kelvin) == pytest.approx(differences, rel=1e-7)
    triple = air.TRIPLE_POINT + KELVIN
    assert slope(triple) == pytest.approx(latent / (air.VAPOR_GAS_CONSTANT * triple**2), rel=2e-3)


@pytest.mark.parametrize(
    "ask",
    [
        lambda: air.vapor_pressure(np.zeros(3), np.full(4, 0.5)),
        lambda: air.relative_humidity(np.zeros(3), np.full(4, 300.0)),
        lambda: air.humidity_ratio(np.full(3, 900.0), np.full(4, 1e5)),
        lambda: air.vapor_density(np.zeros(3), np.full(4, 300.0)),
        lambda: air.moist_air(np.zeros(3), np.full(4, 0.5)),
        lambda: Air(np.zeros(3), np.full(4, 0.5)),
    ],
)
def test_arrays_that_do_not_fit_get_a_sentence(ask):
    with pytest.raises(OutOfRange, match=r"\(3\) and .* \(4\) do not fit together in shape\.$"):
        ask()
