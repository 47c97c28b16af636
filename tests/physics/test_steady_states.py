"""What any steady state must do, whatever the numbers: mirror, balance, agree."""

import dataclasses
import itertools

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from roofs import JANUARY, JULY, VARIABLE, fahrenheit, grams_a_day, perm, r, sheet, vault

from dryward import air
from dryward.building import Assembly, FixedMembrane, LaminateMembrane, Layer, Material, VariableMembrane
from dryward.checks import NotConverged, OutOfRange, UnknownName
from dryward.physics import steady
from dryward.physics.nodes import nodes_of
from dryward.weather import Air

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
    from dryward.physics import vapor_line

    cliff = VariableMembrane((0.40, 0.405), (perm(0.01), perm(60)))
    damp = (Air(fahrenheit(70), 0.6), JANUARY[1])
    found = []
    for film in (cliff, VariableMembrane((0.0, 1.0), (perm(0.001), perm(500)))):
        roof = vault(film, 1.5, 0.6)
        state = steady.sweep(roof, *damp)
        nodes = nodes_of(roof)
        real = vapor_line.settle

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
    with pytest.raises(OutOfRange, match="Permeance of film is -1"):
        steady.sweep(vault(sheet(1)), *JANUARY, film_permeance=[-1.0])


def test_a_curve_that_never_agrees_says_which(monkeypatch):
    monkeypatch.setattr("dryward.physics.vapor_line._ROUNDS", 2)
    with pytest.raises(NotConverged, match="The layer film found no steady permeance in 2 rounds"):
        steady.profile(vault(VARIABLE, 1.5, 0.6), Air(fahrenheit(70), 0.7), JANUARY[1])
    with pytest.raises(NotConverged, match="The layer film found"):
        steady.sweep(vault(VARIABLE, 1.5, 0.6), Air(fahrenheit(70), 0.7), JANUARY[1])
