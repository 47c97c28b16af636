"""Snow on a roof: by hand, at its limits, and that nothing is made of nothing."""

import numpy as np
import pytest

from dryward.checks import OutOfRange
from dryward.physics.snow import MELTING_HEAT, RESISTIVITY, taken_by_vent, under_snow
from dryward.units import from_si, to_si

COLD, WARM = to_si(20.0, "degF"), to_si(70.0, "degF")


@pytest.mark.parametrize(("r", "inches"), [(60, 12), (49, 12), (38, 10), (30, 6)])
def test_a_covering_stands_above_outdoors_by_the_share_of_the_snow(r, inches):
    found = under_snow(COLD, WARM, 1 / to_si(float(r), "R"), to_si(float(inches), "in") * RESISTIVITY)
    assert from_si(found.temperature, "degF") == pytest.approx(20 + 50 * inches / (inches + r), abs=1e-6)
    assert found.melting == 0.0


def test_what_melts_is_the_heat_that_is_left_at_freezing():
    """R-20 under R-12: 21.11 degC / 3.522 comes, 6.667 / 2.113 goes; W/m2 over 334 kJ/kg."""
    found = under_snow(COLD, WARM, 1 / to_si(20.0, "R"), to_si(12.0, "R"))
    assert found.temperature == 0.0
    assert found.melting == pytest.approx((21.111 / 3.5222 - 6.6667 / 2.1133) / 334e3, rel=1e-3)


def test_more_snow_more_heat_and_milder_air_melt_more_and_vent_air_less():
    snow = np.linspace(0.5, 6.0, 40)
    assert (np.diff(under_snow(COLD, WARM, 0.4, snow, 0.3).melting) >= 0).all()
    assert (np.diff(under_snow(COLD, WARM, np.linspace(0.1, 2.0, 40), 2.0, 0.3).melting) >= 0).all()
    assert (np.diff(under_snow(COLD, WARM, 0.4, 2.0, np.linspace(0.0, 3.0, 40)).melting) <= 0).all()
    assert (np.diff(under_snow(np.linspace(-20.0, -1.0, 40), WARM, 0.4, 2.0).melting) >= 0).all()
    assert (np.diff(under_snow(COLD, WARM, 0.6, 2.0, 0.1, np.linspace(0.0, 3.0, 40)).melting) <= 0).all()


def test_heat_balances_with_a_layer_under_the_covering():
    """By what passes each part: from below, to the vent, through the layer, through the snow, into melting."""
    below, vent, layer, snow = 0.5, 0.3, 0.4, 2.0
    found = under_snow(COLD, WARM, below, snow, vent, layer)
    air = (below * WARM + vent * COLD + found.temperature / layer) / (below + vent + 1 / layer)
    up = (air - found.temperature) / layer
    assert up == pytest.approx(below * (WARM - air) - vent * (air - COLD))
    assert up - (found.temperature - COLD) / snow == pytest.approx(found.melting * MELTING_HEAT, abs=1e-9)


def test_vent_air_takes_its_heat_capacity_over_the_length():
    """1 in. at 0.1 m/s over 5 m: 1.325 kg/m3 x 1006 J/(kg K) x 0.0254 x 0.1 / 5."""
    assert taken_by_vent(0.0254, 0.1, 5.0, COLD) == pytest.approx(1.325 * 1006 * 0.0254 * 0.1 / 5, rel=5e-3)
    with pytest.raises(OutOfRange):
        taken_by_vent(0.0, 0.1, 5.0, COLD)
