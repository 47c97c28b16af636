"""One full roof against the same equations in other hands: within 0.1 K, 0.5 % RH and 2 % of the water's swing.

The other hands (`hourly.reference`) are the method of lines with SciPy's
LSODA on an even grid of 141 cells: no line of the march is shared, the path
of the leak included.  In winter the leak goes out, in summer it comes in.
"""

from functools import cache

import numpy as np
import pytest

from dryward import weather
from dryward.physics.hourly import reference

FIRST = {"winter": (0, reference.LEAK), "summer": (4300, -reference.LEAK)}


@cache
def other(season, count=240):
    return reference.by_scipy(hours(season, count), leak=FIRST[season][1])


def hours(season, count=240):
    return reference.part(weather.demo("cold"), FIRST[season][0], count)


def alike(run, season, count=240):
    """Means and water of every layer at the end of every hour from the second on: the start is a jump of all airs."""
    for name, (temperature, humidity, water) in other(season, count).items():
        mine = run.layer(name)
        assert mine.temperature[1:] == pytest.approx(temperature.mean(axis=1)[1:], abs=0.1), name
        assert mine.relative_humidity[1:] == pytest.approx(humidity.mean(axis=1)[1:], abs=0.005), name
        layer = run.assembly.layer(name)
        held = mine.water_content + mine.condensed / (layer.thickness or 1.0)
        # A gram on a square meter is less than any book of a roof shows.
        swing = max(np.ptp(water.mean(axis=1)), 1e-3 / layer.thickness)
        assert held == pytest.approx(water.mean(axis=1), abs=0.02 * swing), name


@pytest.mark.parametrize("season", FIRST)
def test_two_days_of_a_roof(season):
    alike(reference.by_march(hours(season, 48), step=60.0, refine=4, leak=FIRST[season][1]), season, 48)


@pytest.mark.slow
@pytest.mark.parametrize("season", FIRST)
def test_ten_days_of_a_roof(season):
    """Vent, leak, variable membrane, sorption, sky and wind."""
    run = reference.by_march(hours(season), step=60.0, refine=4, leak=FIRST[season][1])
    assert run.balance_error < 1e-6
    alike(run, season)


@pytest.mark.slow
@pytest.mark.parametrize("season", FIRST)
def test_how_much_whole_hour_steps_and_the_usual_cells_lose(season):
    """For sliders: root mean square within 0.5 K and 1 % RH."""
    run = reference.by_march(hours(season), leak=FIRST[season][1])
    for name, (temperature, humidity, _) in other(season).items():
        mine = run.layer(name)
        assert np.sqrt(np.mean((mine.temperature - temperature.mean(axis=1)) ** 2)) < 0.5, name
        assert np.sqrt(np.mean((mine.relative_humidity - humidity.mean(axis=1)) ** 2)) < 0.01, name
