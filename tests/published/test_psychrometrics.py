"""Moist air against printed tables and release values.

Sources: ASHRAE Handbook of Fundamentals 2017, chapter 1 (Tables 1 to 3 and
Example 1, SI and I-P), read in the test suites of PsychroLib that quote it;
IAPWS releases R14-08, R7-97, R6-95 and G8-10, read in the tests of the iapws
package; ASHRAE RP-1485, read in the source of CoolProp; Bolton's formula,
read in MetPy's tests; ISO 13788 and DIN 4108-3, read in documents that quote
them.  Edition, place, how it was read and the reason for any wider tolerance
stand in each row of evidence/data/psychrometrics.csv.

Not among the rows, because the kit computes no such quantity: temperature of
the standard atmosphere, pressure reduced to sea level, specific humidity,
enthalpy of liquid water, melting pressure.
"""

import numpy as np
import pytest

from dryward import air, evidence
from dryward.evidence import examples


def test_a_tolerance_wider_than_the_source_has_a_reason():
    """Half the last printed digit, the source's own tolerance, or a reason in words."""
    for row in evidence.read("psychrometrics"):
        if row.tolerance > 0.011 * abs(row.expected) and not row.text("wider_because"):
            assert "tolerance" in row.text("how_read") or "whole degrees" in row.text("where"), row.id


def test_frost_is_not_supercooled_water():
    """Trap: water below 0 °C where the rest uses ice is 5 % off at -5 °C, 10 % at -10 °C."""
    for temperature, share in ((-5.0, 1.05), (-10.0, 1.10)):
        wrong = examples.magnus_over_water(temperature)
        assert wrong / air.saturation_vapor_pressure(temperature) == pytest.approx(share, abs=0.005)
        row = next(r for r in evidence.read("psychrometrics") if r.id == f"formula-ashrae-{temperature:g}")
        assert not row.check(wrong).passed


def test_the_short_dew_point_rule_is_for_celsius():
    """Trap: T - (100 - RH)/5 is a rule of thumb in °C; used with °F it is far off."""

    def rule(temperature, percent):
        return temperature - (100 - percent) / 5

    dew = air.dew_point(air.vapor_pressure(20.0, 0.6))
    assert rule(20.0, 60) == pytest.approx(dew, abs=0.1)
    assert abs((rule(68.0, 60) - 32) / 1.8 - dew) > 3


def test_branches_meet_at_the_triple_point_and_not_at_zero():
    """The dew point has no gap there: ice and water agree at 0.01 °C only."""
    ice, water = (air.saturation_vapor_pressure(air.TRIPLE_POINT, over=kind) for kind in ("ice", "water"))
    assert ice == pytest.approx(water, rel=1e-6)
    pressures = air.saturation_vapor_pressure(np.linspace(-0.05, 0.05, 201))
    assert np.all(np.diff(air.dew_point(pressures)) > 0)
