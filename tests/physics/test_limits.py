"""Ranges along a slider agree with one steady state at a time."""

import numpy as np
import pytest
from roofs import JANUARY, VARIABLE, perm, sheet, vault

from dryward.checks import UnknownName
from dryward.physics import limits, steady
from dryward.weather import Air


def test_a_range_is_what_each_state_says():
    roof, values = vault(sheet(1), 1.5, 0.6), np.linspace(0.15, 0.7, 23)
    found = limits.safe_range(roof, *JANUARY, "indoor_relative_humidity", values)
    each = [not steady.profile(roof, Air(JANUARY[0].temperature, rh), JANUARY[1]).wet_planes for rh in values]
    assert found.holds.tolist() == each
    assert not found.everywhere
    assert not found.nowhere
    (span,) = found.spans
    assert span[0] == values[0]


@pytest.mark.parametrize("film", [sheet(1), VARIABLE])
def test_several_at_once_equal_one_at_a_time(film):
    roof = vault(film, 1.5, 0.6)
    variables = {
        "indoor_relative_humidity": np.linspace(0.15, 0.7, 12),
        "outdoor_temperature": np.linspace(-29, 38, 12),
        "film_permeance": perm(np.geomspace(0.05, 100, 12)),
        "outer layer": {
            "outer_permeance": perm(np.array([50, 20, 1.5, 0.1])),
            "outer_thermal_resistance": np.array([0, 0.7, 0.1, 0.0]),
        },
    }
    together = limits.safe_ranges(roof, *JANUARY, variables)
    for name in list(variables)[:3]:
        alone = limits.safe_range(roof, *JANUARY, name, variables[name])
        assert together[name].holds.tolist() == alone.holds.tolist()
    wet = [
        bool(steady.profile(vault(film, p, r_us), *JANUARY).wet_planes)
        for p, r_us in ((50, 0), (20, 0.7 / 0.1761), (1.5, 0.1 / 0.1761), (0.1, 0))
    ]
    assert together["outer layer"].holds.tolist() == [not w for w in wet]


def test_criteria():
    roof, values = vault(sheet(1)), np.linspace(0.15, 0.7, 12)
    dry = limits.safe_range(roof, *JANUARY, "indoor_relative_humidity", values)
    eighty = limits.safe_range(roof, *JANUARY, "indoor_relative_humidity", values, "below 80 %")
    own = limits.safe_range(
        roof, *JANUARY, "indoor_relative_humidity", values, lambda s: s.highest_relative_humidity <= 0.8
    )
    assert eighty.holds.sum() < dry.holds.sum()
    assert own.holds.tolist() == eighty.holds.tolist()


def test_plain_sentences():
    with pytest.raises(UnknownName, match='There is no criterion "dry"'):
        limits.safe_range(vault(), *JANUARY, "outdoor_temperature", [0.0], "dry")
    with pytest.raises(UnknownName, match='There is no thing to vary "film_perms"'):
        limits.safe_range(vault(sheet(1)), *JANUARY, "film_perms", [1e-10])
