"""Steady states, one and many at once: what the books say, and what happens at the edges."""

import dataclasses
import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from roofs import JANUARY, JULY, VARIABLE, fahrenheit, grams_a_day, perm, r, sheet, vault

from dryward import air
from dryward.building import AirSpace, Assembly, FixedMembrane, LaminateMembrane, Layer, Material, VariableMembrane
from dryward.checks import NotConverged, OutOfRange, UnknownName
from dryward.physics import drying, limits, monthly, steady
from dryward.physics.nodes import nodes_of
from dryward.weather import Air, MonthlyClimate

AIRS = st.builds(Air, st.floats(-35, 40), st.floats(0.05, 0.99))
OUTERS = st.sampled_from([(50.0, 0.0), (20.0, 4.0), (1.5, 0.6), (0.1, 0.0)])
FILMS = st.sampled_from([None, sheet(0.06), sheet(1), sheet(3), VARIABLE])


def closed(roof):
    """The same roof with an ordinary film outside instead of a vent space."""
    return Assembly("closed", roof.inner_layers, roof.interior_film, roof.outer_film)


def mirrored(assembly):
    layers = [dataclasses.replace(layer, name=f"{layer.name}") for layer in reversed(assembly.layers)]
    return Assembly("mirror", layers, assembly.exterior_film, assembly.interior_film)


@settings(max_examples=60)
@given(AIRS, AIRS, OUTERS, FILMS)
def test_swapping_the_sides_mirrors_the_answer(indoor, outdoor, outer, film):
    roof = closed(vault(film, *outer))
    there, back = steady.profile(roof, indoor, outdoor), steady.profile(mirrored(roof), outdoor, indoor)
    assert back.temperature[::-1] == pytest.approx(there.temperature, abs=1e-9)
    assert back.vapor_pressure[::-1] == pytest.approx(there.vapor_pressure, rel=1e-6, abs=1e-6)
    if np.isfinite(there.vapor_flux_in):
        assert back.vapor_flux_out == pytest.approx(-there.vapor_flux_in, rel=1e-6, abs=1e-16)
        assert back.gain == pytest.approx(there.gain, rel=1e-6, abs=1e-12)


@settings(max_examples=60)
@given(AIRS, AIRS, OUTERS, FILMS)
def test_nothing_is_lost_and_nothing_is_above_saturation(indoor, outdoor, outer, film):
    state = steady.profile(vault(film, *outer), indoor, outdoor)
    assert np.all(state.vapor_pressure[1:-1] <= state.saturation_vapor_pressure[1:-1] * (1 + 1e-9))
    if not state.wet_planes:
        assert state.vapor_flux_in == pytest.approx(state.vapor_flux_out, rel=1e-9, abs=1e-16)
    elif np.isfinite(state.gain):
        assert state.vapor_flux_in - state.vapor_flux_out == pytest.approx(state.gain, rel=1e-6, abs=2e-12)
        assert all(plane.rate > 0 for plane in state.wet_planes)


@settings(max_examples=40)
@given(st.lists(st.tuples(st.floats(-29, 30), st.floats(0.15, 0.8)), min_size=1, max_size=8), OUTERS, FILMS)
def test_many_at_once_equal_one_by_one(cases, outer, film):
    roof = vault(film, *outer)
    outdoors = np.array([t for t, _ in cases])
    indoors = np.array([rh for _, rh in cases])
    many = steady.sweep(roof, JANUARY[0], JANUARY[1], outdoor_temperature=outdoors, indoor_relative_humidity=indoors)
    for k, (t, rh) in enumerate(cases):
        one = steady.profile(roof, Air(JANUARY[0].temperature, rh), Air(t, 0.8))
        assert many.vapor_pressure[k] == pytest.approx(one.vapor_pressure, rel=1e-7)
        assert many.gain[k] == pytest.approx(one.gain, rel=1e-6, abs=1e-12)
        assert many.wet_planes[k] == len(one.wet_planes)
        if one.dew_point_depth is None:
            assert np.isnan(many.dew_point_depth[k])
        else:
            assert many.dew_point_depth[k] == pytest.approx(one.dew_point_depth, abs=1e-12)


def test_a_thinner_slice_changes_nothing(monkeypatch):
    roof = vault(VARIABLE, 1.5, 0.6)
    coarse = steady.profile(roof, *JANUARY)
    monkeypatch.setattr("dryward.physics.nodes.PIECE", 0.05)
    fine = steady.profile(vault(VARIABLE, 1.5, 0.6), *JANUARY)
    assert len(fine.depth) > 3 * len(coarse.depth)
    assert fine.gain == pytest.approx(coarse.gain, rel=1e-6)
    assert fine.dew_point_depth == pytest.approx(coarse.dew_point_depth, abs=1e-9)
    assert fine.relative_humidity.max() == pytest.approx(coarse.relative_humidity.max(), rel=1e-9)


def test_more_humidity_indoors_never_dries():
    humidity = np.linspace(0.05, 0.95, 181)
    for film, outer in itertools.product((None, sheet(1), VARIABLE), ((50.0, 0.0), (1.5, 0.6), (0.1, 0.0))):
        many = steady.sweep(vault(film, *outer), *JANUARY, indoor_relative_humidity=humidity)
        assert np.all(np.diff(many.gain) >= -1e-13)
        assert np.all(np.diff(many.vapor_flux_in) >= -1e-15)


def test_condensation_inside_a_layer_is_found():
    """Moist warm air into thick open fill with a tight cold skin: a zone, not a plane."""
    fill = Material("fiber", "fiber", 40, 840, 0.04, 1.9e-10)
    wall = Assembly("thick", [Layer(fill, 0.4, "fill"), Layer(FixedMembrane(perm(200)), name="skin")])
    state = steady.profile(wall, Air(24, 0.95), Air(-25, 0.9))
    inside = [plane for plane in state.wet_planes if plane.inner_layer == plane.outer_layer == "fill"]
    assert len(inside) >= 3


def test_two_planes_wet_at_once():
    """Two tight skins with an open layer between: both faces gather water."""
    wool = Material("wool", "wool", 40, 840, 0.04, 1.9e-10)
    layers = [
        Layer(wool, 0.10, "in"),
        Layer(FixedMembrane(perm(2)), name="middle"),
        Layer(wool, 0.10, "out"),
        Layer(FixedMembrane(perm(0.05)), name="skin"),
    ]
    state = steady.profile(Assembly("two", layers), Air(22, 0.6), Air(-15, 0.8))
    assert [(plane.inner_layer, plane.outer_layer) for plane in state.wet_planes] == [("in", "middle"), ("out", "skin")]
    assert state.gain == pytest.approx(state.vapor_flux_in - state.vapor_flux_out, rel=1e-9)


def test_the_dew_point_depth_is_not_the_wet_plane():
    open_roof = steady.profile(vault(VARIABLE, 50), *JANUARY)
    assert open_roof.dew_point_depth is not None
    assert not open_roof.wet_planes
    tight_roof = steady.profile(vault(VARIABLE, 1.5, 0.6), *JANUARY)
    assert tight_roof.wet_planes[0].depth > tight_roof.dew_point_depth + 0.1


@pytest.mark.parametrize("start", [0.0, 0.25, 0.5, 0.75, 1.0])
def test_a_steep_curve_settles_from_any_start(start, monkeypatch):
    from dryward.physics import nodes as row

    cliff = VariableMembrane((0.40, 0.405), (perm(0.01), perm(60)))
    damp = (Air(fahrenheit(70), 0.6), JANUARY[1])
    found = []
    for film in (cliff, VariableMembrane((0.0, 1.0), (perm(0.001), perm(500)))):
        roof = vault(film, 1.5, 0.6)
        state = steady.sweep(roof, *damp)
        nodes = nodes_of(roof)
        real = row.settle

        def elsewhere(solve, count, names, begin, real=real):
            return real(solve, count, names, np.full_like(begin, start))

        monkeypatch.setattr("dryward.physics.steady.settle", elsewhere)
        again = steady.sweep(roof, *damp)
        monkeypatch.undo()
        assert again.gain == pytest.approx(state.gain, rel=1e-6, abs=1e-13)
        one = steady.profile(roof, *damp)
        answer = nodes.humidity_dependent[0]
        mean = 0.5 * (one.relative_humidity[answer.first] + one.relative_humidity[answer.last])
        assert float(answer.permeance(mean)) == pytest.approx(one.permeance["film"], rel=1e-3)
        found.append(one.gain)
    assert found[0] != found[1]


def test_two_layers_that_answer_settle_together():
    board = Material("board", "board", 640, 1800, 0.12, ((0.0, 1e-12), (0.9, 1e-11)))
    roof = vault(VARIABLE).replace("outer", Layer(board, 0.011, "outer"))
    state = steady.profile(roof, *JANUARY)
    many = steady.sweep(roof, *JANUARY)
    assert set(state.permeance) == {"film", "outer"}
    assert many.gain == pytest.approx(state.gain, rel=1e-7)
    node = state.face("outer", 0)
    mean = 0.5 * (state.relative_humidity[node] + state.relative_humidity[node + 1])
    assert state.permeance["outer"] == pytest.approx(board.permeability_at(mean) / 0.011, rel=1e-6)


def test_a_laminate_is_its_two_sheets():
    """Through the nodes, and by its own permeance at one temperature."""
    sensitive = VariableMembrane((0.3, 0.9), (perm(0.5), perm(20)))
    for film in (LaminateMembrane(sensitive, perm(2)), LaminateMembrane(sensitive, perm(2)).flipped()):
        wall = Assembly("film", [Layer(film, name="film")], 0.13, 0.04)
        state = steady.profile(wall, Air(20, 0.75), Air(20, 0.25))
        flux = film.permeance(0.75, 0.25) * (state.vapor_pressure[0] - state.vapor_pressure[-1])
        assert state.vapor_flux_in == pytest.approx(flux, rel=1e-6)
        whole = film.permeance(0.75, 0.25)
        many = steady.sweep(wall, Air(20, 0.75), Air(20, 0.25))
        assert state.permeance["film"] == pytest.approx(whole, rel=1e-6)
        assert float(many.permeance["film"]) == pytest.approx(whole, rel=1e-6)


def test_nothing_leaves_for_a_foil():
    state = steady.profile(vault(FixedMembrane(0.0), 50), *JANUARY)
    assert grams_a_day(state.vapor_flux_in) < 1e-4
    assert not state.wet_planes


def test_frost_is_over_ice():
    state = steady.profile(vault(sheet(1), 1.5, 0.6), *JANUARY)
    plane = state.wet_planes[0]
    assert plane.temperature < 0
    assert state.vapor_pressure[plane.node] == pytest.approx(air.saturation_vapor_pressure(plane.temperature, "ice"))


def test_july_turns_the_arrow():
    state = steady.profile(vault(sheet(0.06)), *JULY)
    assert state.vapor_flux_out < 0
    assert [plane.inner_layer for plane in state.wet_planes] == ["film"]


def test_a_bare_cold_surface_sweats_without_limit():
    board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    wall = Assembly("thin", [Layer(board, 0.016)])
    one = steady.profile(wall, Air(20, 0.6), Air(-20, 0.8))
    many = steady.sweep(wall, Air(20, 0.6), Air(-20, 0.8))
    assert one.gain == many.gain == np.inf
    assert one.wet_planes[0].inner_layer == "room air"
    assert one.dew_point_depth == many.dew_point_depth == 0.0


@settings(max_examples=40)
@given(st.floats(0.5, 50.0), st.floats(0.02, 100.0))
def test_a_sweep_builds_what_replace_builds(fill_r, film_perm):
    many = steady.sweep(
        vault(sheet(1), 1.5, 0.6), *JANUARY, fill_thermal_resistance=[r(fill_r)], film_permeance=[perm(film_perm)]
    )
    one = steady.profile(vault(sheet(film_perm), 1.5, 0.6, fill_r), *JANUARY)
    assert many.gain[0] == pytest.approx(one.gain, rel=2e-3, abs=1e-10)


def test_plain_sentences():
    with pytest.raises(UnknownName, match='There is no thing to vary "indoor_humidity"; did you mean'):
        steady.sweep(vault(), *JANUARY, indoor_humidity=[0.4])
    with pytest.raises(OutOfRange, match="do not fit together in shape"):
        steady.sweep(vault(), *JANUARY, indoor_relative_humidity=[0.3, 0.4], outdoor_temperature=[1.0, 2.0, 3.0])
    with pytest.raises(OutOfRange, match="Relative humidity is 140 %; it must be 0 to 100 %"):
        steady.sweep(vault(), *JANUARY, indoor_relative_humidity=[1.4])
    with pytest.raises(OutOfRange, match="Permeance of film is −1"):
        steady.sweep(vault(sheet(1)), *JANUARY, film_permeance=[-1.0])


def test_a_curve_that_never_agrees_says_which(monkeypatch):
    monkeypatch.setattr("dryward.physics.nodes._ROUNDS", 2)
    with pytest.raises(NotConverged, match="The layer film found no steady permeance in 2 rounds"):
        steady.profile(vault(VARIABLE, 1.5, 0.6), Air(fahrenheit(70), 0.7), JANUARY[1])
    with pytest.raises(NotConverged, match="The layer film found"):
        steady.sweep(vault(VARIABLE, 1.5, 0.6), Air(fahrenheit(70), 0.7), JANUARY[1])


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


#: Insulation that opens when damp, thick enough to be cut into pieces.
MAT = Material("mat", "mat", 60, 1700, 0.04, ((0.0, 2e-12), (1.0, 9e-11)))


def test_a_thick_layer_that_answers_is_the_same_in_one_and_in_many():
    wall = Assembly("mat", [Layer(MAT, 0.12, "mat"), Layer(sheet(20), name="skin")], 0.13, 0.04)
    one, many = steady.profile(wall, *JANUARY), steady.sweep(wall, *JANUARY)
    assert (one.place == 0).sum() > 5
    assert many.vapor_pressure == pytest.approx(one.vapor_pressure, rel=1e-8)
    assert float(many.permeance["mat"]) == pytest.approx(one.permeance["mat"], rel=1e-7)


def test_two_humidity_dependent_layers_of_several_pieces():
    wall = Assembly("mats", [Layer(MAT, 0.05, "in"), Layer(VARIABLE, name="film"), Layer(MAT, 0.07, "out")], 0.13, 0.04)
    one, many = steady.profile(wall, *JANUARY), steady.sweep(wall, *JANUARY)
    assert many.vapor_pressure == pytest.approx(one.vapor_pressure, rel=1e-7)
    for name in ("in", "film", "out"):
        assert float(many.permeance[name]) == pytest.approx(one.permeance[name], rel=1e-6)


def test_faces_and_neighbors_by_name():
    roof = vault(sheet(1), 1.5, 0.6)
    one, many = steady.profile(roof, *JANUARY), steady.sweep(roof, *JANUARY)
    for name in one.names:
        faces = [many.face(name, side) for side in (0, 1)]
        assert faces == [one.face(name, side) for side in (0, 1)]
        assert many.depth[faces[1]] - many.depth[faces[0]] == pytest.approx(roof.layer(name).thickness or 0.0)
    assert one.between(0) == ("room air", "room air")
    assert one.between(1) == ("room air", "drywall")
    assert one.between(one.face("film", 1)) == ("film", "fill")
    assert one.between(len(one.depth) - 1) == ("outdoor air", "outdoor air")


def test_a_membrane_swept_to_no_permeance_is_a_foil():
    many = steady.sweep(vault(sheet(1), 1.5, 0.6), *JANUARY, film_permeance=[0.0, perm(1.0)])
    foil = steady.profile(vault(sheet(0.0), 1.5, 0.6), *JANUARY)
    assert many.vapor_flux_in[0] == pytest.approx(foil.vapor_flux_in, rel=1e-6)
    assert many.gain[0] == pytest.approx(foil.gain, abs=1e-12)
    assert many.gain[1] > 1e-9


def test_a_swept_variable_membrane_answers_no_more():
    many = steady.sweep(vault(VARIABLE, 1.5, 0.6), *JANUARY, film_permeance=[perm(2.0)])
    assert many.gain[0] == pytest.approx(steady.profile(vault(sheet(2), 1.5, 0.6), *JANUARY).gain, rel=1e-9)
    assert many.permeance == {}


def test_no_film_at_either_side():
    """Surfaces straight at the airs: what arrives is told by the first piece that resists."""
    bare = dataclasses.replace(vault(sheet(1), 1.5, 0.6), interior_vapor_film=np.inf, exterior_vapor_film=np.inf)
    one, many = steady.profile(bare, *JANUARY), steady.sweep(bare, *JANUARY)
    assert np.isfinite(one.gain)
    assert float(many.vapor_flux_in) == pytest.approx(one.vapor_flux_in, rel=1e-9)
    assert float(many.vapor_flux_out) == pytest.approx(one.vapor_flux_out, rel=1e-9)
    assert int(many.wet_planes) == len(one.wet_planes)


def test_a_surface_that_sweats_is_one_plane():
    board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    wall = Assembly("thin", [Layer(board, 0.016)], interior_vapor_film=np.inf)
    cold = Air(20, 0.6), Air(-20, 0.8)
    one, many = steady.profile(wall, *cold), steady.sweep(wall, *cold)
    assert int(many.wet_planes) == len(one.wet_planes) == 1


def test_a_cold_surface_sweats_on_the_side_of_the_damp_air():
    """An air-conditioned room behind a thin board in tropical air, and the same in winter: the vapor runs into it."""
    board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    wall = Assembly("thin", [Layer(board, 0.016, "board")])
    for airs, side, inner in (
        ((Air(15, 0.5), Air(35, 0.9)), 1, "board"),
        ((Air(20, 0.6), Air(-20, 0.8)), 0, "room air"),
    ):
        one, many = steady.profile(wall, *airs), steady.sweep(wall, *airs)
        assert [plane.inner_layer for plane in one.wet_planes] == [inner]
        assert int(many.wet_planes) == 1
        assert one.gain == many.gain == np.inf
        fluxes = (one.vapor_flux_in, one.vapor_flux_out), (float(many.vapor_flux_in), float(many.vapor_flux_out))
        for flux in fluxes:
            assert flux[side] == (-np.inf if side else np.inf)
            assert np.isfinite(flux[1 - side])
            assert flux[1 - side] * flux[side] > 0


def test_a_surface_in_dry_air_does_not_sweat():
    """The other way round: the air that is colder outdoors is drier than its surface."""
    board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    wall = Assembly("thin", [Layer(board, 0.016, "board")])
    for airs in ((Air(20, 0.2), Air(0, 0.8)), (Air(24, 0.5), Air(35, 0.4)), (Air(20, 0.5), Air(20, 0.5))):
        many = steady.sweep(wall, *airs)
        assert int(many.wet_planes) == 0
        assert many.gain == 0.0
        assert many.vapor_flux_in == pytest.approx(many.vapor_flux_out, rel=1e-9, abs=1e-18)


def test_the_wettest_rung_is_the_one_of_the_highest_humidity():
    for roof in (vault(sheet(1), 1.5, 0.6), vault(sheet(0.06)), vault(sheet(3), 0.1)):
        one, many = steady.profile(roof, *JANUARY), steady.sweep(roof, *JANUARY)
        inner = one.relative_humidity[1:-1]
        assert inner[one.wettest - 1] == inner.max() == pytest.approx(float(many.highest_relative_humidity))
        assert 1 < one.wettest < len(one.depth) - 1


def test_room_air_without_vapor_has_no_dew_point():
    dry = Air(20.0, 0.0)
    assert steady.profile(vault(), dry, JANUARY[1]).dew_point_depth is None
    assert np.isnan(steady.sweep(vault(), dry, JANUARY[1]).dew_point_depth)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"indoor_temperature": [-61.0]}, "Air temperature is −61 °C; it must be −60 to 95 °C"),
        ({"outdoor_temperature": [96.0]}, "Air temperature is 96 °C; it must be −60 to 95 °C"),
        ({"outdoor_relative_humidity": [-0.1]}, "Relative humidity is −10 %; it must be 0 to 100 %"),
        ({"fill_thermal_resistance": [51.0]}, "Thermal resistance of fill is 51 m² K/W; it must be 0 to 50"),
    ],
)
def test_ranges(change, words):
    with pytest.raises(OutOfRange, match=words):
        steady.sweep(vault(), *JANUARY, **change)


def test_an_empty_sweep_is_refused():
    with pytest.raises(OutOfRange, match=r"^The arrays of a sweep are empty; they must hold at least one number\.$"):
        steady.sweep(vault(sheet(1), 1.5), *JANUARY, indoor_relative_humidity=[])
    with pytest.raises(OutOfRange, match=r"^The arrays of a sweep are empty"):
        limits.dry_range(vault(sheet(1), 1.5), *JANUARY, "indoor_relative_humidity", [])


def test_a_face_is_told_by_number_or_by_word():
    roof = vault(sheet(1), 1.5)
    for found in (steady.profile(roof, *JANUARY), steady.sweep(roof, *JANUARY)):
        assert (
            found.face("fill", "inner") == found.face("fill", 0) < found.face("fill", "outer") == found.face("fill", 1)
        )
        with pytest.raises(UnknownName, match='There is no side of a layer "left"'):
            found.face("fill", "left")
        with pytest.raises(UnknownName, match='There is no layer "fil"; did you mean film or fill'):
            found.face("fil", 0)
