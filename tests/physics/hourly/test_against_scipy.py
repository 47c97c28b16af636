"""One full roof against the same equations in other hands: within 0.1 K and 0.5 % RH.

The other hands (`hourly.reference`) are the method of lines with SciPy's
LSODA on an even grid of 141 cells: no line of the march is shared.
"""

from functools import cache

import numpy as np
import pytest

from dryward import weather
from dryward.physics.hourly import reference

FIRST = {"winter": 0, "summer": 4300}


@cache
def other(season):
    return reference.by_scipy(hours(season))


def hours(season):
    return reference.part(weather.demo("cold"), FIRST[season], 240)


@pytest.mark.slow
@pytest.mark.parametrize("season", FIRST)
def test_ten_days_of_a_roof(season):
    """Vent, leak, variable membrane, sorption, sky and wind: every layer's mean at the end of every hour.

    From the second hour on: the start is a jump of all airs at once.
    """
    run = reference.by_march(hours(season), step=60.0, refine=4)
    assert run.balance_error < 1e-6
    for name, (temperature, humidity) in other(season).items():
        mine = run.layer(name)
        assert mine.temperature[1:] == pytest.approx(temperature.mean(axis=1)[1:], abs=0.1), name
        assert mine.relative_humidity[1:] == pytest.approx(humidity.mean(axis=1)[1:], abs=0.005), name


@pytest.mark.slow
@pytest.mark.parametrize("season", FIRST)
def test_how_much_whole_hour_steps_and_the_usual_cells_lose(season):
    """For sliders: root mean square within 0.5 K and 1 % RH."""
    run = reference.by_march(hours(season))
    for name, (temperature, humidity) in other(season).items():
        mine = run.layer(name)
        assert np.sqrt(np.mean((mine.temperature - temperature.mean(axis=1)) ** 2)) < 0.5, name
        assert np.sqrt(np.mean((mine.relative_humidity - humidity.mean(axis=1)) ** 2)) < 0.01, name
