"""The state along a slider agrees with one steady state at a time."""

import numpy as np
import pytest
from roofs import JANUARY, VARIABLE, perm, sheet, vault

from dryward import building
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import limits, steady
from dryward.verdict import of_steady
from dryward.weather import Air, indoor


def one_by_one(roofs_and_airs):
    """The state of each case, worked alone."""
    return [of_steady(steady.profile(*case)).state for case in roofs_and_airs]


def test_a_range_is_what_each_state_says():
    roof, values = vault(sheet(1), 1.5, 0.6), np.linspace(0.15, 0.7, 23)
    found = limits.dry_range(roof, *JANUARY, "indoor_relative_humidity", values)
    each = one_by_one((roof, Air(JANUARY[0].temperature, rh), JANUARY[1]) for rh in values)
    assert found.states.tolist() == each
    assert found.holds.tolist() == [state == "dry" for state in each]
    # Between them a stretch that gathers less than counts.
    assert list(dict.fromkeys(each)) == ["dry", "damp", "wet"]
    (span,) = found.spans
    assert span == (values[0], values[each.index("damp") - 1])


def test_a_range_has_three_states_where_wood_would_take_up_water():
    """The same roof with wood outside and a milder day: between dry and wet it is damp."""
    roof, values = building.preset("vented-vault-osb"), np.linspace(-10.0, 20.0, 31)
    found = limits.dry_range(roof, *JANUARY, "outdoor_temperature", values)
    assert found.states.tolist() == one_by_one((roof, JANUARY[0], Air(t, 0.8)) for t in values)
    assert list(dict.fromkeys(found.states)) == ["wet", "damp", "dry"]


def test_spans_are_the_dry_stretches():
    states = np.array(["dry", "damp", "dry", "dry", "wet", "not known yet", "dry"], dtype=object)
    found = limits.Range("x", np.arange(7.0), states)
    assert found.spans == ((0.0, 0.0), (2.0, 3.0), (6.0, 6.0))
    assert limits.Range("x", np.arange(2.0), states[4:6]).spans == ()


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
    together = limits.dry_ranges(roof, *JANUARY, variables)
    for name in list(variables)[:3]:
        alone = limits.dry_range(roof, *JANUARY, name, variables[name])
        assert together[name].states.tolist() == alone.states.tolist()
    outer = ((50, 0), (20, 0.7 / 0.1761), (1.5, 0.1 / 0.1761), (0.1, 0))
    assert together["outer layer"].states.tolist() == one_by_one((vault(film, *each), *JANUARY) for each in outer)


def test_plain_sentences():
    with pytest.raises(UnknownName, match='There is no thing to vary "film_perms"'):
        limits.dry_range(vault(sheet(1)), *JANUARY, "film_perms", [1e-10])


def test_a_room_by_a_rule_has_no_steady_state():
    with pytest.raises(OutOfRange, match="A room that follows a rule has no steady state"):
        limits.dry_range(vault(sheet(1)), indoor.humidity_class(2), JANUARY[1], "outdoor_temperature", [0.0])
