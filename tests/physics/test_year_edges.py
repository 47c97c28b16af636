"""The twelve months at their edges: where the year begins, how it ends, what each plane is given."""

import dataclasses

import numpy as np
import pytest
from roofs import VARIABLE, perm, sheet, vault

from dryward import air
from dryward.building import Assembly, FixedMembrane, Layer, Material
from dryward.checks import NotConverged
from dryward.physics import monthly, steady
from dryward.units import DAY
from dryward.weather import DAYS, Air, MonthlyClimate

COLD = MonthlyClimate([-10, -8, -2, 5, 11, 16, 19, 18, 13, 7, 0, -7], [0.8] * 12)
#: South of the equator: December is the warmest month, and none is warm.
SOUTH = MonthlyClimate([-6, -7, -10, -15, -20, -23, -25, -24, -20, -15, -10, -5], [0.8] * 12)
ROOM = Air(21, 0.45)
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
