"""What the hourly room refuses or does in rare cases, without a run."""

import numpy as np
import pytest
from few_hours import PANEL

from dryward.building import Assembly, LaminateMembrane, Layer, VariableMembrane
from dryward.checks import OutOfRange, UnknownName
from dryward.physics.hourly import grid, surfaces, vary
from dryward.weather import HourlyWeather

WALL = Assembly("wall", [Layer(PANEL, 0.012, "panel")])
SHEET = VariableMembrane((0.3, 0.8), (2e-11, 8e-10))


def test_a_property_that_is_none():
    with pytest.raises(UnknownName, match='There is no property "color"'):
        vary.changed(WALL, "panel", "color", 1.0)


def test_more_sorption_keeps_the_conductivity_with_the_humidity():
    new = vary.changed(WALL, "panel", "sorption", 1.2).layer("panel").substance
    assert new.sorption == tuple((rh, pytest.approx(1.2 * w)) for rh, w in PANEL.sorption)
    assert new.conductivity == tuple((pytest.approx(1.2 * w), k) for w, k in PANEL.conductivity)


def test_a_laminate_has_its_backing_on_the_side_it_is():
    backing = pytest.approx(1 / 3e-10)
    assert grid.parts(LaminateMembrane(SHEET, 3e-10)) == (SHEET, 0.0, backing)
    assert grid.parts(LaminateMembrane(SHEET, 3e-10, turned=True)) == (SHEET, backing, 0.0)
    assert grid.parts(SHEET) == (SHEET, 0.0, 0.0)


def test_direct_sun_alone_is_only_a_part():
    still = np.zeros(24)
    half = HourlyWeather(still, still + 300.0, direct_normal=still + 100.0, latitude=45.0, longitude=8.0)
    with pytest.raises(OutOfRange, match="The weather has only a part of the sun"):
        surfaces.irradiance(half, 30.0, 180.0)
