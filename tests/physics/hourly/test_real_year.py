"""A year of weather that others made and wrote runs through, and slopes and colors differ the right way."""

from importlib.resources import as_file, files

import numpy as np
import pytest

from dryward import building, weather
from dryward.physics import airleak, hourly, ventspace
from dryward.weather import indoor


@pytest.fixture(scope="module")
def year():
    with as_file(files("dryward.evidence") / "data" / "typical-year-45N-8E.epw.gz") as path:
        return weather.read_epw(path)


@pytest.fixture(scope="module")
def runs(year):
    vault = building.preset("vented-vault-osb")
    found = {}
    for name, azimuth, absorptance in (("north", 0.0, 0.8), ("south", 180.0, 0.8), ("pale", 180.0, 0.2)):
        found[name] = hourly.simulate(
            vault, year, indoor.by_outdoor_temperature(),
            surface=hourly.Surface(absorptance=absorptance, azimuth=azimuth),
            vent=ventspace.VentSpace(0.038, 5.0, vault.slope, 0.02, 0.02),
            leak=airleak.Leak.from_blower_door(3.0, 500.0, 0.2, area=100.0),
        )  # fmt: skip
    return found


def test_every_preset_goes_through(year):
    for id in building.presets():
        run = hourly.simulate(building.preset(id), year, indoor.humidity_class(3), surface=hourly.Surface())
        assert run.balance_error < 1e-6
        assert -60 < run.temperature.min() < run.temperature.max() < 100
        assert run.halvings < 50


def test_all_physics_keeps_its_water(runs):
    for run in runs.values():
        assert run.balance_error < 1e-6
        assert run.heat_balance_error < 1e-6


def test_north_is_colder_and_wetter_than_south(runs):
    north, south = (runs[name].layer("deck") for name in ("north", "south"))
    assert south.temperature.mean() > north.temperature.mean() + 1.0
    assert south.moisture_content.mean() < north.moisture_content.mean()


def test_pale_is_colder_and_wetter_than_dark(runs):
    pale, dark = (runs[name].layer("deck") for name in ("pale", "south"))
    assert dark.temperature.mean() > pale.temperature.mean() + 1.0
    assert dark.temperature.max() > pale.temperature.max() + 10.0
    assert dark.moisture_content.mean() < pale.moisture_content.mean()


def test_the_vent_flow_follows_the_sun(runs, year):
    noon = (np.arange(8760) % 24 == 13) & (year.global_horizontal > 500)
    night = (np.arange(8760) % 24 == 2) & (year.wind_speed < 2)
    assert runs["south"].vent_flow[noon].mean() > 1.5 * runs["south"].vent_flow[night].mean()
    assert runs["south"].vent_flow[noon].mean() > runs["pale"].vent_flow[noon].mean()
