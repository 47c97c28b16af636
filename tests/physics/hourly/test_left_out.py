"""How much it matters that the heat of freezing is left out."""

import numpy as np
import pytest

from dryward import building, weather
from dryward.physics import hourly
from dryward.physics.hourly import case
from dryward.weather import Air

FUSION = 0.334e6  # J/kg, heat of fusion of ice


@pytest.mark.parametrize("id", ["vented-vault-osb", "wood-frame-wall", "vented-vault-closed"])
def test_heat_of_sublimation_everywhere(id, monkeypatch):
    """The largest it can be for vapor: every gram that comes or goes, in summer too, as ice (13 % more heat)."""
    year, room = weather.demo("very-cold"), Air(21.0, 0.4)

    def run():
        return hourly.simulate(building.preset(id), year, room, surface=hourly.Surface())

    without = run()
    monkeypatch.setattr(case, "EVAPORATION", case.EVAPORATION + FUSION)
    bound = run()
    assert np.sqrt(np.mean((without.temperature - bound.temperature) ** 2)) < 0.1  # K
    assert np.abs(without.temperature - bound.temperature).max() < 3.0
    assert without.water == pytest.approx(bound.water, rel=0.02)  # frost on the siding of a night
    assert np.sqrt(np.mean((without.relative_humidity - bound.relative_humidity) ** 2)) < 0.005


def test_thaw_comes_early_by_hours_not_by_days():
    """Frost of a whole winter in the vault against the warmth that reaches it: what the missing heat delays."""
    run = hourly.simulate(
        building.preset("vented-vault-closed"), weather.demo("cold"), Air(21.0, 0.4), surface=hourly.Surface()
    )
    frost = run.condensed.max()
    gain = np.abs(run.heat_flux_in).mean()
    assert frost * FUSION / gain / 3600.0 < 48.0  # hours
