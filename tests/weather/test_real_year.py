"""A year that none of us made, through the rules for room air and a year's balance."""

from importlib.resources import as_file, files

import numpy as np
import pytest

from dryward import air, building, weather
from dryward.physics import monthly


@pytest.fixture(scope="module")
def year():
    with as_file(files("dryward.evidence") / "data" / "typical-year-45N-8E.epw.gz") as path:
        return weather.read_epw(path)


@pytest.mark.parametrize("rule", ["class", "dwelling", "design", "balance"])
def test_room_air_follows_the_year(year, rule):
    indoor = {
        "class": weather.indoor.humidity_class(2),
        "dwelling": weather.indoor.by_outdoor_temperature(),
        "design": weather.indoor.by_daily_mean(),
        "balance": weather.indoor.moisture_balance(10 / 86400, 0.03),
    }[rule]
    warmth, vapor = indoor.at(year)
    assert warmth.shape == vapor.shape == (8760,)
    humidity = vapor / air.saturation_vapor_pressure(warmth)
    assert np.all((humidity > 0.1) & (humidity <= 1.0 + 1e-12))
    # The room is drier in winter than in summer, in every rule.
    assert humidity[:1400].mean() < humidity[4400:5800].mean()


def test_a_years_balance_runs_on_it(year):
    climate, closed = year.monthly(), building.preset("vented-vault-closed")
    by_class = [monthly.balance(closed, climate, weather.indoor.humidity_class(n)) for n in (1, 2, 3, 4)]
    peaks = [months.peak for months in by_class]
    assert peaks == sorted(peaks)  # a damper house wets the roof more
    damp = by_class[-1]
    assert damp.ending == "dries"
    assert damp.month[0] in (10, 11, 12)
    # What condensed and did not evaporate is what is held, month by month.
    kept = np.cumsum(damp.condensed.sum(axis=1) - damp.evaporated.sum(axis=1))
    assert kept == pytest.approx(damp.held.sum(axis=1), abs=1e-9)


def test_a_roof_open_to_its_vent_space_has_nothing_to_hold(year):
    months = monthly.balance(building.preset("vented-vault"), year.monthly(), weather.indoor.humidity_class(3))
    assert months.ending == "no wetting"
