"""What the rooms below the screens hand out cannot be changed: a page keeps an old state beside a new one."""

import dataclasses
import importlib
import inspect

import numpy as np
import pytest

from dryward import building
from dryward.physics import hourly, monthly, steady
from dryward.weather import Air, HourlyWeather, MonthlyClimate
from package import modules, room

ROOMS = ("dryward.air", "dryward.building", "dryward.weather", "dryward.physics", "dryward.evidence")


@pytest.mark.parametrize("name", [name for name in modules() if room(name) in ROOMS])
def test_every_public_dataclass_is_frozen(name):
    module = importlib.import_module(name)
    for found, what in inspect.getmembers(module, inspect.isclass):
        own = what.__module__ == name and not found.startswith("_") and dataclasses.is_dataclass(what)
        if own:
            assert what.__dataclass_params__.frozen, f"{name}.{found} can be changed"


def test_the_arrays_of_a_result_cannot_be_changed_either():
    roof, indoor, outdoor = building.preset("vented-vault"), Air(21.0, 0.4), Air(-7.0, 0.8)
    for result in (
        steady.profile(roof, indoor, outdoor),
        steady.sweep(roof, indoor, outdoor, indoor_relative_humidity=[0.3, 0.4]),
        monthly.balance(roof, MonthlyClimate([0.0] * 12, [0.8] * 12), indoor),
        hourly.simulate(roof, HourlyWeather.constant(outdoor), indoor, hours=3),
    ):
        arrays = [value for value in vars(result).values() if isinstance(value, np.ndarray)]
        assert len(arrays) > 3
        for array in arrays:
            with pytest.raises(ValueError, match="read-only"):
                array[...] = 0
