"""Twelve months: order, balance, endings, two planes, what is left; and where the year begins."""

import dataclasses

import numpy as np
import pytest
from roofs import VARIABLE, perm, sheet, vault

from dryward import air, building
from dryward.building import Assembly, FixedMembrane, Layer, Material
from dryward.checks import NotConverged
from dryward.physics import monthly, steady
from dryward.units import DAY
from dryward.weather import DAYS, Air, MonthlyClimate

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


#: South of the equator: December is the warmest month, and none is warm.
SOUTH = MonthlyClimate([-6, -7, -10, -15, -20, -23, -25, -24, -20, -15, -10, -5], [0.8] * 12)
WOOL = Material("wool", "wool", 40, 840, 0.04, 1.9e-10)


class Rule:
    """A room that is told its temperature and its vapor pressure for each month."""

    def __init__(self, temperature, pressure):
        self.temperature, self.pressure = np.array(temperature, float), np.array(pressure, float)

    def at(self, climate):
        return self.temperature, self.pressure


def two_planes():
    """Two tight skins with an open layer between."""
    layers = [
        Layer(WOOL, 0.10, "in"),
        Layer(FixedMembrane(perm(2)), name="middle"),
        Layer(WOOL, 0.10, "out"),
        Layer(FixedMembrane(perm(0.05)), name="skin"),
    ]
    return Assembly("two", layers)


def test_a_dry_year_is_twelve_empty_months_from_january():
    year = monthly.balance(vault(VARIABLE), COLD, Air(21, 0.3))
    assert year.month == (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12)
    for table in (year.condensed, year.evaporated, year.held, year.dried_within):
        assert table.shape == (12, 0)
    assert year.peak == 0.0
    assert year.growth == 0.0
    assert year.dries_out
    assert (
        dataclasses.replace(year, planes=(monthly.Plane(0.0, "in", "out"),), held=np.zeros((12, 1))).ending == "dries"
    )


def test_what_is_gone_in_the_last_month_is_gone():
    """Eleven cold months wet the roof and one hot month dries it: it dries out, though the month before held water."""
    hot_december = MonthlyClimate([-8, -8, -8, -8, -8, -8, -8, -8, -8, -8, 10, 45], [0.8] * 10 + [0.5, 0.1])
    year = monthly.balance(vault(sheet(1), 1.5, 0.6), hot_december, ROOM)
    assert year.month[0] == 1
    assert year.held[-2].sum() > 0
    assert year.left == 0.0
    assert year.dries_out
    assert year.ending == "dries"
    assert year.growth == 0.0


def test_a_wet_year_whose_warmest_month_is_december_starts_in_january():
    year = monthly.balance(vault(sheet(3), 0.1), SOUTH, ROOM)
    assert np.all(year.condensed.sum(axis=1) > 0)
    assert year.month == (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12)


def test_the_least_drive_is_the_least_difference_of_pressure():
    """What pushes vapor outward is the difference of the two pressures, not how many times one is the other."""
    cold = MonthlyClimate([-25.0] * 6 + [-5.0] * 6, [0.8] * 12)
    extra = [700.0] * 12
    extra[1] = 500.0  # February: the least difference, though the room holds ten times what is outdoors
    year = monthly.balance(vault(sheet(3), 0.1), cold, Rule([21.0] * 12, cold.vapor_pressure + extra))
    assert np.all(year.condensed.sum(axis=1) > 0)
    assert year.month[-1] == 2


def test_each_plane_gathers_in_the_first_month_what_the_steady_state_gives_it():
    """Before anything is held a month is one steady state: rate times days, plane by plane."""
    room = Air(22, 0.6)
    year = monthly.balance(two_planes(), COLD, room)
    first = year.month[0]
    state = steady.profile(two_planes(), room, COLD.air(first))
    days = int(DAYS[first - 1])
    expected = {(plane.inner_layer, plane.outer_layer): plane.rate * days * DAY for plane in state.wet_planes}
    found = {(plane.inner_layer, plane.outer_layer): year.condensed[0, k] for k, plane in enumerate(year.planes)}
    assert found == pytest.approx({place: expected.get(place, 0.0) for place in found}, rel=1e-9)


def test_two_wet_planes_each_gather_their_own():
    """In a year that never dries, every month of every plane is that month's steady state."""
    room = Air(22, 0.6)
    year = monthly.balance(two_planes(), SOUTH, room)
    assert len(year.planes) == 2
    for k, month in enumerate(year.month):
        state = steady.profile(two_planes(), room, SOUTH.air(month))
        rates = [plane.rate * int(DAYS[month - 1]) * DAY for plane in state.wet_planes]
        assert year.condensed[k].tolist() == pytest.approx(rates, rel=1e-6)


def test_less_than_a_tenth_of_a_milligram_a_day_is_no_water():
    """Between two foils the steady state lets a few grams pass in ten thousand years: rounding, not a wet plane."""
    layers = [
        Layer(FixedMembrane(1e-16), name="foil"),
        Layer(WOOL, 0.10, "wool"),
        Layer(FixedMembrane(1e-17), name="skin"),
    ]
    assert monthly.balance(Assembly("sealed", layers), SOUTH, Air(22, 0.5)).ending == "no wetting"


def test_a_thaw_that_does_not_empty_the_roof_hides_nothing():
    """A mild January, a warm February, a long cold: it begins after the thaw, and the next year with what is left."""
    thaw = MonthlyClimate([4, 15] + [-20] * 9 + [12], [0.8, 0.6] + [0.8] * 10)
    year = monthly.balance(vault(sheet(3), 0.1), thaw, ROOM)
    assert year.month[0] == 3
    assert year.condensed[0].sum() > 0
    assert year.evaporated[-1].sum() > 0
    assert year.left > 0
    # Nothing is dry when the second year begins: it leaves more.
    assert year.growth > 0.1 * year.left
    assert year.ending == "grows"


def test_a_little_left_can_still_grow():
    """Less than a kilogram left is still left: what the summer cannot take is there again after the next winter."""
    cool = MonthlyClimate([-10, -9, -6, 0, 6, 9, 10, 9, 6, 0, -6, -9], [0.8] * 12)
    year = monthly.balance(vault(sheet(0.5), 0.1), cool, ROOM)
    assert year.held[1].sum() > 0
    assert 0 < year.left < 1.0
    assert year.growth > 0.1 * year.left
    assert year.ending == "grows"


def test_a_month_in_which_nothing_drives_leaves_the_water_where_it_is():
    """Room, roof and outdoors at one temperature, all saturated: no vapor moves either way."""
    outdoors = [-10.0] * 4 + [10.0] + [25.0] * 3 + [-10.0] * 4
    climate = MonthlyClimate(outdoors, [0.8] * 4 + [1.0] + [0.3] * 3 + [0.8] * 4)
    indoors = [21.0] * 4 + [10.0] + [21.0] * 7
    pressure = [1100.0] * 4 + [float(air.saturation_vapor_pressure(10.0))] + [1100.0] * 7
    year = monthly.balance(vault(sheet(1), 0.1), climate, Rule(indoors, pressure))
    may = year.month.index(5)
    assert year.held[may - 1].sum() > 0
    assert year.held[may] == pytest.approx(year.held[may - 1], rel=1e-12)
    assert year.condensed[may].sum() == pytest.approx(0.0, abs=1e-15)


def test_the_sentence_names_the_month_and_the_plane(monkeypatch):
    """The plane that dries and is wetted again without end is the one that is named."""
    roof = vault(sheet(1), 1.5, 0.6)
    year = monthly.balance(roof, COLD, ROOM)
    dries = int(np.argmax(year.dried_within.any(axis=1)))
    plane = year.planes[int(np.argmax(year.dried_within[dries]))]
    monkeypatch.setattr(monthly, "_CUTS", 1)
    with pytest.raises(NotConverged, match=f"in month {year.month[dries]} beside the {plane.inner_layer}\\."):
        monthly.balance(roof, COLD, ROOM)


def test_a_surface_that_sweats_without_limit_is_no_plane_inside():
    """A thin board in winter: its room side sweats, which the steady state tells, and nothing gathers within."""
    wall = Assembly("thin", [Layer(Material("board", "board", 640, 1090, 0.16, 5e-11), 0.016, "board")])
    for climate, room in ((MonthlyClimate([-10.0] * 12, [0.8] * 12), ROOM), (COLD, Air(21, 0.8))):
        assert np.isinf(steady.profile(wall, room, climate.air(1)).gain)
        assert monthly.balance(wall, climate, room).ending == "no wetting"
    humid = MonthlyClimate([33.0] * 12, [0.95] * 12)
    assert np.isinf(steady.profile(wall, Air(15, 0.5), humid.air(1)).gain)
    assert monthly.balance(wall, humid, Air(15, 0.5)).ending == "no wetting"


def test_a_winter_that_begins_to_wet_in_december():
    """Three cold months around the turn of the year: the count starts with the last month of the calendar."""
    mild = MonthlyClimate([-10, -10, 12, 14, 16, 18, 20, 20, 18, 16, 14, -10], [0.8, 0.8] + [0.5] * 9 + [0.8])
    year = monthly.balance(vault(sheet(1), 1.5, 0.6), mild, ROOM)
    assert year.month == (12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11)
    assert np.flatnonzero(year.condensed.sum(axis=1) > 0).tolist() == [0, 1, 2]
