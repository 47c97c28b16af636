"""Twelve months: order, balance, endings, two planes, and what is left."""

import dataclasses

import numpy as np
import pytest
from roofs import VARIABLE, perm, sheet, vault

from dryward import building
from dryward.building import Assembly, FixedMembrane, Layer, Material
from dryward.checks import NotConverged
from dryward.physics import monthly
from dryward.units import DAY
from dryward.weather import Air, MonthlyClimate

COLD = MonthlyClimate([-10, -8, -2, 5, 11, 16, 19, 18, 13, 7, 0, -7], [0.8] * 12)
BITTER = MonthlyClimate([-25, -24, -20, -15, -10, -7, -5, -6, -10, -15, -20, -24], [0.8] * 12)
ROOM = Air(21, 0.45)


def test_what_comes_goes_or_stays():
    year = monthly.balance(vault(sheet(1), 1.5, 0.6), COLD, ROOM)
    came, went = year.condensed.sum(axis=0), year.evaporated.sum(axis=0)
    assert came - went == pytest.approx(year.held[-1], abs=1e-12)
    assert np.all(year.condensed >= 0)
    assert np.all(year.evaporated >= 0)
    assert np.all(year.held >= 0)
    running = np.cumsum(year.condensed - year.evaporated, axis=0)
    assert running == pytest.approx(year.held, abs=1e-12)
    assert year.peak == pytest.approx(year.held.sum(axis=1).max())


def test_it_starts_dry_with_the_first_month_that_wets():
    year = monthly.balance(vault(sheet(1), 1.5, 0.6), COLD, ROOM)
    assert year.condensed[0].sum() > 0
    assert year.month[0] in (10, 11)
    assert sorted(year.month) == list(range(1, 13))
    assert year.ending == "dries"
    assert year.peak_month in (2, 3, 4)


def test_no_wetting_says_none():
    year = monthly.balance(vault(VARIABLE), COLD, Air(21, 0.3))
    assert year.ending == "no wetting"
    assert year.planes == ()
    assert year.left == 0.0
    assert year.peak_month is None


def test_a_roof_that_does_not_dry_says_by_how_much_it_grows():
    year = monthly.balance(vault(sheet(3), 0.1), BITTER, ROOM)
    assert year.ending == "grows"
    assert not year.dries_out
    assert year.growth == pytest.approx(year.left, rel=1e-6)  # the same again: it never dries


def test_months_count_their_days():
    """A climate that never changes: each month in proportion to its days."""
    still = MonthlyClimate([-10.0] * 12, [0.8] * 12)
    year = monthly.balance(vault(sheet(3), 0.1), still, ROOM)
    by_month = dict(zip(year.month, year.condensed.sum(axis=1), strict=True))
    assert by_month[1] / by_month[2] == pytest.approx(31 / 28, rel=1e-12)
    assert by_month[4] / by_month[3] == pytest.approx(30 / 31, rel=1e-12)
    from dryward.physics import steady

    rate = steady.profile(vault(sheet(3), 0.1), ROOM, Air(-10.0, 0.8)).gain
    assert by_month[1] == pytest.approx(rate * 31 * DAY, rel=1e-9)


def test_two_planes_wet_at_once():
    wool = Material("wool", "wool", 40, 840, 0.04, 1.9e-10)
    layers = [
        Layer(wool, 0.10, "in"),
        Layer(FixedMembrane(perm(2)), name="middle"),
        Layer(wool, 0.10, "out"),
        Layer(FixedMembrane(perm(0.05)), name="skin"),
    ]
    year = monthly.balance(Assembly("two", layers), COLD, Air(22, 0.6))
    assert len(year.planes) == 2
    january = year.month.index(1)
    assert np.all(year.condensed[january] > 0)


def test_water_held_keeps_its_plane_at_saturation_in_spring():
    """Drying goes on after wetting ends, at the rate of a saturated plane."""
    year = monthly.balance(vault(sheet(1), 1.5, 0.6), COLD, ROOM)
    drying = np.flatnonzero(year.evaporated.sum(axis=1) > 0)
    assert len(drying) >= 1
    assert np.all(year.condensed[drying].sum(axis=1) == 0)
    assert year.dried_within.any()


def test_the_rooms_own_rule_is_followed():
    class Rule:
        def at(self, climate):
            return np.full(12, 21.0), np.full(12, 200.0)

    assert monthly.balance(vault(sheet(3), 1.5), COLD, Rule()).ending == "no wetting"


def test_a_wet_zone_makes_no_water_from_nothing():
    """No month gathers more than the room side can let in, whatever dries inside it."""
    fill = Material("fiber", "fiber", 40, 840, 0.04, 1.9e-10)
    layers = [
        Layer(FixedMembrane(perm(50)), name="paint"),
        Layer(fill, 0.4, "fill"),
        Layer(FixedMembrane(perm(0.05)), name="skin"),
    ]
    room = Air(24, 0.85)
    year = monthly.balance(Assembly("thick", layers), BITTER, room)
    assert len(year.planes) > 3
    most = perm(50) * room.vapor_pressure * 31 * DAY
    net = (year.condensed - year.evaporated).sum(axis=1)
    assert np.all(net < most)
    assert year.held.sum(axis=1) == pytest.approx(np.cumsum(net), abs=1e-9)


def test_a_year_that_does_not_settle_says_so(monkeypatch):
    monkeypatch.setattr(monthly, "_CUTS", 1)
    with pytest.raises(NotConverged, match="The twelve months do not settle in month"):
        monthly.balance(vault(sheet(1), 1.5, 0.6), COLD, ROOM)


def test_the_peak_is_that_of_its_month():
    year = monthly.balance(vault(sheet(1), 1.5, 0.6), COLD, ROOM)
    held = year.held.sum(axis=1)
    assert year.peak_month == year.month[int(held.argmax())]
    assert year.month[(year.month.index(12) + 1) % 12] == 1


@pytest.mark.parametrize(
    ("growth", "ending"), [(0.0, "holds"), (0.9e-3, "holds"), (1.1e-3, "grows"), (1.0, "grows"), (-0.2, "holds")]
)
def test_a_thousandth_of_what_is_left_is_no_growth(growth, ending):
    one = monthly.balance(vault(sheet(3), 0.1), BITTER, ROOM)
    assert dataclasses.replace(one, growth=growth * one.left).ending == ending


def test_a_year_that_wets_in_every_month_starts_after_the_least_drive():
    year = monthly.balance(vault(sheet(3), 0.1), BITTER, ROOM)
    assert np.all(year.condensed.sum(axis=1) > 0)
    least = int(np.argmin(ROOM.vapor_pressure - BITTER.vapor_pressure)) + 1
    assert year.month[-1] == least


def test_a_plane_without_resistance_to_the_next_gathers_nothing():
    """Two membranes that touch: the node between the two films of air is no plane of its own."""
    wool = Material("wool", "wool", 40, 840, 0.04, 1.9e-10)
    one = [Layer(wool, 0.2, "wool"), Layer(FixedMembrane(perm(0.05)), name="skin")]
    two = [
        Layer(wool, 0.2, "wool"),
        Layer(FixedMembrane(perm(0.1)), name="a"),
        Layer(FixedMembrane(perm(0.1)), name="b"),
    ]
    single, double = (monthly.balance(Assembly("wall", layers), COLD, ROOM) for layers in (one, two))
    assert double.peak == pytest.approx(single.peak, rel=1e-9)
    assert len(double.planes) == len(single.planes)


def test_another_saturation_formula_counts_at_both_ends():
    from dryward import air

    same = monthly.balance(vault(sheet(1), 1.5, 0.6), COLD, ROOM, saturation=air.saturation_vapor_pressure)
    plain = monthly.balance(vault(sheet(1), 1.5, 0.6), COLD, ROOM)
    assert same.condensed == pytest.approx(plain.condensed, rel=1e-9)


def test_a_wall_without_films_of_vapor_gathers_the_same():
    bare = dataclasses.replace(vault(sheet(1), 1.5, 0.6), interior_vapor_film=np.inf, exterior_vapor_film=np.inf)
    assert monthly.balance(bare, COLD, ROOM).peak == pytest.approx(
        monthly.balance(vault(sheet(1), 1.5, 0.6), COLD, ROOM).peak, rel=0.02
    )


@pytest.mark.parametrize(
    ("roof", "humidity"), [("vented-vault-osb", 0.40), ("vented-vault-osb", 0.45), ("vented-vault-closed", 0.30)]
)
def test_a_mild_month_in_the_winter_does_not_begin_the_year(roof, humidity):
    """The calendar turned by some months gives the same year, but for the days of the months."""
    temperature = np.array([4, -6, 0, 7, 13, 18, 21, 20, 15, 9, 3, -5], dtype=float)
    indoor, found = Air(21.0, humidity), {}
    for turn in (0, 3, 6, 9):
        climate = MonthlyClimate(np.roll(temperature, turn), np.full(12, 0.78))
        found[turn] = monthly.balance(building.preset(roof), climate, indoor)
        assert found[turn].month[0] == (11 + turn) % 12 + 1  # the first cold month, not the one after the thaw
        assert found[turn].ending == "dries"
        assert found[turn].peak == pytest.approx(found[0].peak, rel=0.09)  # months of 28 to 31 days
