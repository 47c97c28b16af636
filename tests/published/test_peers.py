"""Moist air beside three independent libraries over the whole range of a roof.

CoolProp (real moist air, ASHRAE RP-1485), PsychroLib (ASHRAE Handbook of
Fundamentals 2017, chapter 1) and iapws (the IAPWS releases) are installed and
called; nothing is quoted from memory.
"""

import iapws
import numpy as np
import psychrolib
import pytest
from CoolProp.HumidAirProp import HAPropsSI

from dryward import air
from dryward.units import KELVIN

TEMPERATURES = np.arange(-40.0, 60.5, 2.5)


@pytest.fixture(autouse=True)
def si_units():
    psychrolib.SetUnitSystem(psychrolib.SI)


def test_saturation_as_in_psychrolib():
    theirs = [psychrolib.GetSatVapPres(t) for t in TEMPERATURES]
    assert air.saturation_vapor_pressure(TEMPERATURES) == pytest.approx(theirs, rel=1e-9)


def test_dew_point_as_in_psychrolib():
    for rh in (0.05, 0.3, 0.6, 1.0):
        theirs = [psychrolib.GetTDewPointFromRelHum(t, rh) for t in TEMPERATURES]
        ours = air.dew_point(air.vapor_pressure(TEMPERATURES, rh))
        assert ours == pytest.approx(theirs, abs=1e-3)  # its own stop is 1e-3 K


def test_humidity_ratio_as_in_psychrolib():
    theirs = [psychrolib.GetHumRatioFromRelHum(t, 0.7, 95000.0) for t in TEMPERATURES]
    assert air.humidity_ratio(air.vapor_pressure(TEMPERATURES, 0.7), 95000.0) == pytest.approx(theirs, rel=2e-6)


def test_humidity_ratio_near_real_air():
    """An ideal gas holds up to 0.7 % less than real air from -40 to 60 °C: the enhancement factor."""
    for rh in (0.2, 0.5, 1.0):
        real = np.array([HAPropsSI("W", "T", t + KELVIN, "R", rh, "P", air.STANDARD_PRESSURE) for t in TEMPERATURES])
        ideal = air.humidity_ratio(air.vapor_pressure(TEMPERATURES, rh))
        assert np.all(ideal <= real * 1.0003)
        assert ideal == pytest.approx(real, rel=0.008)


def test_dew_point_near_real_air():
    for rh in (0.2, 0.5, 0.9):
        real = [HAPropsSI("D", "T", t + KELVIN, "R", rh, "P", air.STANDARD_PRESSURE) - KELVIN for t in TEMPERATURES]
        assert air.dew_point(air.vapor_pressure(TEMPERATURES, rh)) == pytest.approx(real, abs=0.03)


def test_moist_air_is_coolprop_in_every_shape():
    ours = air.moist_air(TEMPERATURES[:, None], np.array([0.3, 0.9]))
    assert ours.enthalpy.shape == (TEMPERATURES.size, 2)
    theirs = HAPropsSI("H", "T", TEMPERATURES[5] + KELVIN, "R", 0.9, "P", air.STANDARD_PRESSURE)
    assert ours.enthalpy[5, 1] == pytest.approx(theirs)
    assert isinstance(air.moist_air(20.0, 0.5).wet_bulb, float)


def test_over_ice_within_the_promise_of_iapws():
    ice = np.arange(-40.0, 0.0, 1.0)
    theirs = [iapws._iapws._Sublimation_Pressure(t + KELVIN) * 1e6 for t in ice]
    assert air.saturation_vapor_pressure(ice) == pytest.approx(theirs, rel=5e-4)


def test_over_water_within_the_promise_of_iapws():
    water = np.arange(1.0, 81.0, 1.0)
    theirs = [iapws.iapws97._PSat_T(t + KELVIN) * 1e6 for t in water]
    assert air.saturation_vapor_pressure(water) == pytest.approx(theirs, rel=5e-4)


@pytest.mark.parametrize(
    ("ratio", "wet_bulb", "volume", "enthalpy"),
    [(0.0, 45.07, 1.341, 202520), (0.5, 81.12, 2.416, 1641400), (1.0, 88.15, 3.489, 3079550)],
)
def test_the_peer_agrees_with_its_own_source(ratio, wet_bulb, volume, enthalpy):
    """CoolProp against RP-1485, Table A.11, 200 °C and 101 325 Pa, read in CoolProp's source; 1 % there."""
    found = [HAPropsSI(what, "T", 200 + KELVIN, "W", ratio, "P", air.STANDARD_PRESSURE) for what in "BVH"]
    assert found == pytest.approx([wet_bulb + KELVIN, volume, enthalpy], rel=2e-4)
