"""What the rooms below the screens hand out cannot be changed: a page keeps an old state beside a new one."""

import dataclasses
import importlib
import inspect

import pytest

from package import modules, room

ROOMS = ("dryward.air", "dryward.building", "dryward.weather", "dryward.physics", "dryward.evidence")


@pytest.mark.parametrize("name", [name for name in modules() if room(name) in ROOMS])
def test_every_public_dataclass_is_frozen(name):
    module = importlib.import_module(name)
    for found, what in inspect.getmembers(module, inspect.isclass):
        own = what.__module__ == name and not found.startswith("_") and dataclasses.is_dataclass(what)
        if own:
            assert what.__dataclass_params__.frozen, f"{name}.{found} can be changed"
