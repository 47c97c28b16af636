"""One state at its edges: saturated air, no thermal resistance, foils, a node at the dew point itself."""

import numpy as np
import pytest
from roofs import JANUARY, sheet, vault

from dryward import air
from dryward.building import AirSpace, Assembly, FixedMembrane, Layer, Material
from dryward.physics import drying, monthly, steady
from dryward.weather import Air, MonthlyClimate

WOOL = Material("wool", "wool", 40, 840, 0.04, 1.9e-10)
PERMEANCE = 1e-10
#: As in the dry-cup and wet-cup test: a sheet between two airs of one temperature, nothing else in the way.
CUP = Assembly("cup", [Layer(FixedMembrane(PERMEANCE), name="sheet")], 0.0, 0.0)


@pytest.mark.parametrize(("inside", "outside"), [(1.0, 0.5), (0.5, 1.0), (0.9, 0.5), (0.0, 0.5), (1.0, 1.0)])
def test_a_cup_test_gives_the_permeance_back(inside, outside):
    """Permeance times difference of pressure passes, wet cup and dry cup; nothing condenses, no heat flows."""
    airs = Air(23, inside), Air(23, outside)
    passes = PERMEANCE * (inside - outside) * air.saturation_vapor_pressure(23.0)
    one, many = steady.profile(CUP, *airs), steady.sweep(CUP, *airs)
    for state in (one, many):
        assert float(state.vapor_flux_in) == pytest.approx(passes, rel=1e-12, abs=1e-20)
        assert float(state.vapor_flux_out) == pytest.approx(passes, rel=1e-12, abs=1e-20)
        assert float(state.gain) == 0.0
        assert float(state.heat_flux) == 0.0
    assert one.temperature == pytest.approx(23.0)
    assert one.wet_planes == ()


def test_saturated_room_air_on_a_surface_of_its_own_temperature():
    """No film of heat or vapor inside: the surface is not colder than the air, so it takes no water from it."""
    wall = Assembly("wall", [Layer(WOOL, 0.05, "wool")], 0.0, 0.04)
    one, many = (form(wall, Air(20, 1.0), Air(10, 0.5)) for form in (steady.profile, steady.sweep))
    assert 0 < one.vapor_flux_in < np.inf
    assert float(many.vapor_flux_in) == pytest.approx(one.vapor_flux_in, rel=1e-9)
    assert one.vapor_flux_in == pytest.approx(one.vapor_flux_out + one.gain, rel=1e-9)


def test_the_other_methods_take_the_cup_too():
    year = monthly.balance(CUP, MonthlyClimate([23.0] * 12, [0.5] * 12), Air(23, 0.9))
    assert year.ending == "no wetting"
    assert drying.rates(CUP, "sheet", Air(23, 0.5), Air(23, 0.5)).temperature == 23.0


@pytest.mark.parametrize(("films", "sheet_at"), [((0.0, 0.04), 20.0), ((0.13, 0.0), -5.0), ((0.13, 0.13), 7.5)])
def test_temperature_falls_where_the_resistance_is(films, sheet_at):
    """A sheet has none of its own: the one film carries all of the fall."""
    wall = Assembly("sheet", [Layer(FixedMembrane(PERMEANCE), name="sheet")], *films)
    one, many = (form(wall, Air(20, 0.2), Air(-5, 0.8)) for form in (steady.profile, steady.sweep))
    assert one.heat_flux == pytest.approx(25.0 / sum(films), rel=1e-12)
    assert float(many.heat_flux) == pytest.approx(25.0 / sum(films), rel=1e-12)
    assert one.temperature[1:-1] == pytest.approx(sheet_at, abs=1e-12)
    assert many.temperature[1:-1] == pytest.approx(sheet_at, abs=1e-12)


def test_resistances_count_from_the_room_to_those_of_the_assembly():
    roof = vault(sheet(1), 1.5, 0.6)
    state = steady.profile(roof, *JANUARY)
    assert state.thermal_resistance[0] == 0.0
    assert state.vapor_resistance[0] == 0.0
    assert state.thermal_resistance[-1] == pytest.approx(roof.thermal_resistance, rel=1e-13)
    assert state.vapor_resistance[-1] == pytest.approx(roof.vapor_resistance, rel=1e-13)


def test_less_than_a_tenth_of_a_milligram_a_day_is_no_water():
    """Between two foils some vapor still comes and cannot leave: rounding, not a wet plane."""
    layers = [
        Layer(FixedMembrane(1e-16), name="foil"),
        Layer(WOOL, 0.10, "wool"),
        Layer(FixedMembrane(1e-17), name="skin"),
    ]
    for one in (
        form(Assembly("sealed", layers), Air(22, 0.5), Air(-20, 0.8)) for form in (steady.profile, steady.sweep)
    ):
        assert float(one.gain) == 0.0
        assert 0 < float(one.vapor_flux_in) < steady.LEAST_RATE


@pytest.mark.parametrize(
    ("room", "outdoors", "depth"),
    [
        (Air(21, 1.0), Air(-5, 0.8), 0.0),  # saturated: any colder surface is below its dew point
        (Air(21, 1.0), Air(21, 0.5), None),  # nothing is colder
        (Air(21, 1.0), Air(30, 0.5), None),
        (Air(21, 0.5), Air(30, 0.5), None),
    ],
)
def test_the_dew_point_of_saturated_room_air_lies_at_the_surface(room, outdoors, depth):
    roof = vault(sheet(1))
    one, many = steady.profile(roof, room, outdoors), steady.sweep(roof, room, outdoors)
    assert one.dew_point_depth == depth
    assert np.isnan(many.dew_point_depth) if depth is None else float(many.dew_point_depth) == depth


def test_a_rung_at_the_dew_point_is_its_place():
    """Where a layer's face has the dew point to the last digit, that face is the place."""
    pressure = 1002.0
    dew = air.dew_point(pressure)
    depth = np.array([0.0, 0.0, 0.1, 0.3, 0.3])
    assert steady.dew_point_depth(np.array([21.0, 20.0, dew, 0.0, -1.0]), depth, pressure) == pytest.approx(
        0.1, abs=1e-12
    )
    assert steady.dew_point_depth(np.array([21.0, dew, 5.0, 0.0, -1.0]), depth, pressure) == 0.0
    half = steady.dew_point_depth(np.array([21.0, 20.0, dew + 1.0, dew - 1.0, -1.0]), depth, pressure)
    assert half == pytest.approx(0.2, abs=1e-12)


@pytest.mark.parametrize(
    ("inside", "outside", "flux"), [(0.5, 0.5, 0.0), (0.5, 0.3, np.inf), (0.3, 0.5, -np.inf), (1.0, 0.2, np.inf)]
)
def test_where_nothing_resists_vapor_passes_without_limit_or_not_at_all(inside, outside, flux):
    """An open air space without films between two airs of one temperature: no plane in it is wet."""
    opening = Assembly("opening", [Layer(AirSpace(0.1), 0.02, "air")])
    for form in (steady.profile, steady.sweep):
        state = form(opening, Air(20, inside), Air(20, outside))
        assert (float(state.vapor_flux_in), float(state.vapor_flux_out), float(state.gain)) == (flux, flux, 0.0)
    assert int(steady.sweep(opening, Air(20, inside), Air(20, outside)).wet_planes) == 0
    assert steady.profile(opening, Air(20, inside), Air(20, outside)).wet_planes == ()


def test_the_outermost_face_can_be_the_wettest_node():
    """A dry room and fog outdoors: the humidity rises all the way to the outer face."""
    board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    wall = Assembly("thin", [Layer(board, 0.08, "board")])
    one, many = (form(wall, Air(20, 0.2), Air(5, 0.99)) for form in (steady.profile, steady.sweep))
    assert one.wettest == int(many.wettest) == one.face("board", 1) == len(one.depth) - 2
    assert float(many.highest_depth) == pytest.approx(0.08)


def test_the_dew_point_in_the_last_piece_and_in_the_film_outdoors():
    """Within the outermost layer it is told; when only the air film outdoors is that cold, no layer is."""
    board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    wall = Assembly("thin", [Layer(board, 0.016, "board")], 0.13, 0.2)
    for outdoors, inside in ((Air(-12, 0.8), True), (Air(2, 0.8), False)):
        one, many = (form(wall, Air(20, 0.4), outdoors) for form in (steady.profile, steady.sweep))
        dew = air.dew_point(Air(20, 0.4).vapor_pressure)
        assert (one.temperature[2] < dew < one.temperature[1]) == inside
        assert one.temperature[-1] < dew
        if inside:
            share = (one.temperature[1] - dew) / (one.temperature[1] - one.temperature[2])
            assert one.dew_point_depth == pytest.approx(0.016 * share, rel=1e-9)
            assert float(many.dew_point_depth) == pytest.approx(0.016 * share, rel=1e-9)
        else:
            assert one.dew_point_depth is None
            assert np.isnan(many.dew_point_depth)


def test_half_a_pascal_of_vapor_has_a_frost_point():
    depth = np.array([0.0, 0.0, 0.1, 0.1])
    frost = air.dew_point(0.5)
    assert frost < -60
    cold = np.array([-40.0, -50.0, -80.0, -81.0])
    assert steady.dew_point_depth(cold, depth, 0.5) == pytest.approx(0.1 * (-50.0 - frost) / 30.0)
