"""A sweep at its edges: thick layers that answer, membranes of no permeance, nodes by name, ranges."""

import dataclasses

import numpy as np
import pytest
from roofs import JANUARY, VARIABLE, perm, sheet, vault

from dryward.building import Assembly, Layer, Material
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import limits, steady
from dryward.weather import Air

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
        ({"indoor_temperature": [-61.0]}, "Air temperature is -61 °C; it must be -60 to 95 °C"),
        ({"outdoor_temperature": [96.0]}, "Air temperature is 96 °C; it must be -60 to 95 °C"),
        ({"outdoor_relative_humidity": [-0.1]}, "Relative humidity is -10 %; it must be 0 to 100 %"),
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
