"""The nodes of an assembly, its sums, its names, and that it is worked out once."""

import numpy as np
import pytest
from roofs import VARIABLE, inches, perm, sheet, vault

from dryward.building import Assembly, FixedMembrane, LaminateMembrane, Layer, Material
from dryward.physics.nodes import PIECE, TIGHT, nodes_of

BOARD = Material("board", "board", 640, 1090, 0.16, 5e-11)


def test_sums_are_those_of_the_assembly():
    roof = vault(sheet(1), 1.5, 0.6)
    nodes = nodes_of(roof)
    assert nodes.heat.sum() == pytest.approx(roof.thermal_resistance)
    assert nodes.vapor.sum() == pytest.approx(roof.vapor_resistance)
    assert nodes.depth[[0, 1]].tolist() == [0.0, 0.0]
    assert nodes.depth[-1] == nodes.depth[-2] == pytest.approx(inches(0.5 + 1.5 + 12 + 0.5))
    assert nodes.place[[0, -1]].tolist() == [-1, -2]


def test_a_piece_is_as_thin_as_asked_and_no_thinner():
    for heat, count in ((0.9 * PIECE, 1), (PIECE, 1), (1.01 * PIECE, 2), (4 * PIECE, 4)):
        nodes = nodes_of(Assembly("wall", [Layer(BOARD, 0.16 * heat)]))
        assert (nodes.place == 0).sum() == count
        assert nodes.heat[1:-1] == pytest.approx([heat / count] * count)
        assert nodes.depth[1:-1] == pytest.approx([0.16 * heat * k / count for k in range(count + 1)])


def test_a_sweep_asks_for_finer_pieces():
    wall = Assembly("wall", [Layer(BOARD, 0.016, "board")])
    assert (nodes_of(wall).place == 0).sum() == 1
    assert (nodes_of(wall, {"board": 4 * PIECE}).place == 0).sum() == 4
    assert (nodes_of(wall).place == 0).sum() == 1


def test_it_is_worked_out_once():
    roof = vault(sheet(1))
    assert nodes_of(roof) is nodes_of(roof)


def test_what_lies_beside_a_node():
    nodes = nodes_of(vault(VARIABLE))
    assert nodes.beside(0) == ("room air", "room air")
    assert nodes.beside(1) == ("room air", "drywall")
    assert nodes.beside(nodes.face(nodes.names.index("film"), 0)) == ("cavity", "film")
    assert nodes.beside(nodes.face(nodes.names.index("film"), 1)) == ("film", "fill")
    last = len(nodes.depth) - 1
    assert nodes.beside(last - 1) == ("outer", "outdoor air")
    assert nodes.beside(last) == ("outdoor air", "outdoor air")


def test_the_humidity_dependent_layer_is_where_it_stands():
    nodes = nodes_of(vault(VARIABLE))
    (answer,) = nodes.humidity_dependent
    assert nodes.names[answer.place] == "film"
    assert (answer.first, answer.last) == tuple(nodes.face(answer.place, side) for side in (0, 1))
    assert answer.permeance(0.8) == pytest.approx(perm(13))


@pytest.mark.parametrize(("turned", "place"), [(False, 0), (True, 1)])
def test_a_laminate_is_two_pieces_of_one_layer(turned, place):
    film = LaminateMembrane(VARIABLE, perm(2), turned=turned)
    nodes = nodes_of(Assembly("film", [Layer(film, name="film")], 0.13, 0.04))
    assert nodes.place.tolist() == [-1, 0, 0, -2]
    assert nodes.humidity_dependent[0].first == 1 + place
    assert nodes.vapor[2 - place] == pytest.approx(1 / perm(2))
    assert nodes.depth.tolist() == [0.0] * 5


def test_a_foil_is_tight_but_not_without_end():
    nodes = nodes_of(Assembly("foil", [Layer(FixedMembrane(0.0)), Layer(BOARD, 0.016)]))
    assert nodes.vapor[1] == TIGHT
    assert nodes.vapor[2] == pytest.approx(0.016 / 5e-11)


@pytest.mark.parametrize("film", [VARIABLE, LaminateMembrane(VARIABLE, perm(2))])
def test_the_depth_reaches_as_far_as_the_layers_are_thick(film):
    """A sheet with a thickness has it, be it one sheet or two."""
    wool = Material("wool", "wool", 40, 840, 0.04, 1.9e-10)
    wall = Assembly("wall", [Layer(wool, 0.05, "in"), Layer(film, 0.001, "film"), Layer(wool, 0.07, "out")])
    nodes = nodes_of(wall)
    assert nodes.depth[-1] == pytest.approx(wall.thickness, rel=1e-12)
    assert nodes.depth[nodes.face(1, 0)] == pytest.approx(0.05)
    assert nodes.depth[nodes.face(1, 1)] == pytest.approx(0.051)
    assert np.all(np.diff(nodes.depth) >= 0)


def test_films_of_vapor_resist_at_their_own_side():
    """One over the permeance of each film, first and last; the sum is the assembly's."""
    wall = Assembly("wall", [Layer(BOARD, 0.016)], interior_vapor_film=2e-8, exterior_vapor_film=8e-8)
    nodes = nodes_of(wall)
    assert nodes.vapor[0] == pytest.approx(5e7)
    assert nodes.vapor[-1] == pytest.approx(1.25e7)
    assert nodes.vapor.sum() == pytest.approx(wall.vapor_resistance, rel=1e-12)
