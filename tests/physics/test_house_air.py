"""Air through a house: balanced, with the neutral level where nothing pushes, and turned by cold, height and a fan."""

import pytest

from dryward.checks import OutOfRange
from dryward.physics.house_air import balanced, with_fresh_air
from dryward.physics.moving_air import stack_pressure

PLACES = ((0.0, 0.4), (2.0, 0.4), (4.0, 0.2))


@pytest.mark.parametrize("cold", [-20.0, 0.0, 18.0, 35.0])
@pytest.mark.parametrize("fan", [0.0, 0.01, 0.1])
def test_as_much_goes_out_as_comes_in(cold, fan):
    found = balanced(0.04, PLACES, 21.0, cold, fan)
    assert sum(found.flows) + fan == pytest.approx(0.0, abs=1e-9)
    for (height, part), push, flow in zip(PLACES, found.pushes, found.flows, strict=True):
        assert flow == pytest.approx(0.04 * part * abs(push) ** 0.65 * (1 if push > 0 else -1))
        assert push == pytest.approx(stack_pressure(height - found.neutral, 21.0, cold), abs=1e-9)


def test_holes_alike_have_the_neutral_level_half_way():
    """By hand: 4 m of 21 degC against -7 degC are 4.95 Pa, half of it each way."""
    found = balanced(0.04, ((0.0, 0.5), (4.0, 0.5)), 21.0, -7.0)
    assert found.neutral == pytest.approx(2.0)
    assert found.pushes == pytest.approx([-2.476, 2.476], abs=0.001)


def test_a_fan_lifts_it_and_a_hole_draws_it_near():
    levels = [balanced(0.04, PLACES, 21.0, -7.0, fan).neutral for fan in (0.0, 0.01, 0.02, 0.05, 0.2)]
    assert levels == sorted(levels)
    assert levels[-1] > 4.0
    low, high = (balanced(0.04, ((0.0, a), (4.0, 1 - a)), 21.0, -7.0).neutral for a in (0.7, 0.3))
    assert low < 2.0 < high


def test_in_summer_it_goes_the_other_way_and_without_stack_nowhere():
    assert balanced(0.04, PLACES, 24.0, 35.0).flows[0] > 0 > balanced(0.04, PLACES, 24.0, 35.0).flows[-1]
    still = balanced(0.04, PLACES, 21.0, 21.0)
    assert still.fresh_air == pytest.approx(0.0, abs=1e-9)
    assert still.neutral == float("inf")


@pytest.mark.parametrize("fresh", [0.005, 0.0135, 0.02, 0.08])
def test_a_fan_or_closed_leaks_bring_the_fresh_air_that_is_asked_for(fresh):
    found = with_fresh_air(0.04, PLACES, 21.0, -7.0, fresh)
    assert found.fresh_air == pytest.approx(fresh)
    alone = balanced(0.04, PLACES, 21.0, -7.0).fresh_air
    assert (found.fan > 0) == (fresh > alone)
    if found.fan:
        assert balanced(0.04, PLACES, 21.0, -7.0, found.fan).neutral == pytest.approx(found.neutral)


def test_what_cannot_be_is_refused():
    for wrong in ({"coefficient": 0.0}, {"fan": -1.0}, {"places": ((0.0, 0.7), (1.0, 0.7))}):
        with pytest.raises(OutOfRange):
            balanced(**{"coefficient": 0.04, "places": PLACES, "warm": 21.0, "cold": 0.0, **wrong})
