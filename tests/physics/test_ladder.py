"""The ladder of an assembly: its rungs, its sums, its names, and that it is worked out once."""

import numpy as np
import pytest
from roofs import VARIABLE, inches, perm, sheet, vault

from dryward.building import Assembly, FixedMembrane, LaminateMembrane, Layer, Material
from dryward.physics.ladder import PIECE, TIGHT, ladder

BOARD = Material("board", "board", 640, 1090, 0.16, 5e-11)


def test_sums_are_those_of_the_assembly():
    roof = vault(sheet(1), 1.5, 0.6)
    steps = ladder(roof)
    assert steps.heat.sum() == pytest.approx(roof.thermal_resistance)
    assert steps.vapor.sum() == pytest.approx(roof.vapor_resistance)
    assert steps.depth[[0, 1]].tolist() == [0.0, 0.0]
    assert steps.depth[-1] == steps.depth[-2] == pytest.approx(inches(0.5 + 1.5 + 12 + 0.5))
    assert steps.place[[0, -1]].tolist() == [-1, -2]


def test_a_piece_is_as_thin_as_asked_and_no_thinner():
    for heat, count in ((0.9 * PIECE, 1), (PIECE, 1), (1.01 * PIECE, 2), (4 * PIECE, 4)):
        steps = ladder(Assembly("wall", [Layer(BOARD, 0.16 * heat)]))
        assert (steps.place == 0).sum() == count
        assert steps.heat[1:-1] == pytest.approx([heat / count] * count)
        assert steps.depth[1:-1] == pytest.approx([0.16 * heat * k / count for k in range(count + 1)])


def test_a_sweep_asks_for_finer_pieces():
    wall = Assembly("wall", [Layer(BOARD, 0.016, "board")])
    assert (ladder(wall).place == 0).sum() == 1
    assert (ladder(wall, {"board": 4 * PIECE}).place == 0).sum() == 4
    assert (ladder(wall).place == 0).sum() == 1


def test_it_is_worked_out_once():
    roof = vault(sheet(1))
    assert ladder(roof) is ladder(roof)


def test_what_lies_beside_a_rung():
    steps = ladder(vault(VARIABLE))
    assert steps.beside(0) == ("room air", "room air")
    assert steps.beside(1) == ("room air", "drywall")
    assert steps.beside(steps.face(steps.names.index("film"), 0)) == ("cavity", "film")
    assert steps.beside(steps.face(steps.names.index("film"), 1)) == ("film", "fill")
    last = len(steps.depth) - 1
    assert steps.beside(last - 1) == ("outer", "outdoor air")
    assert steps.beside(last) == ("outdoor air", "outdoor air")


def test_the_answering_layer_is_where_it_stands():
    steps = ladder(vault(VARIABLE))
    (answer,) = steps.answering
    assert steps.names[answer.place] == "film"
    assert (answer.first, answer.last) == tuple(steps.face(answer.place, side) for side in (0, 1))
    assert answer.permeance(0.8) == pytest.approx(perm(13))


@pytest.mark.parametrize(("turned", "place"), [(False, 0), (True, 1)])
def test_a_laminate_is_two_pieces_of_one_layer(turned, place):
    film = LaminateMembrane(VARIABLE, perm(2), turned=turned)
    steps = ladder(Assembly("film", [Layer(film, name="film")], 0.13, 0.04))
    assert steps.place.tolist() == [-1, 0, 0, -2]
    assert steps.answering[0].first == 1 + place
    assert steps.vapor[2 - place] == pytest.approx(1 / perm(2))
    assert steps.depth.tolist() == [0.0] * 5


def test_a_foil_is_tight_but_not_without_end():
    steps = ladder(Assembly("foil", [Layer(FixedMembrane(0.0)), Layer(BOARD, 0.016)]))
    assert steps.vapor[1] == TIGHT
    assert steps.vapor[2] == pytest.approx(0.016 / 5e-11)


@pytest.mark.parametrize("film", [VARIABLE, LaminateMembrane(VARIABLE, perm(2))])
def test_the_depth_reaches_as_far_as_the_layers_are_thick(film):
    """A sheet with a thickness has it, be it one sheet or two."""
    wool = Material("wool", "wool", 40, 840, 0.04, 1.9e-10)
    wall = Assembly("wall", [Layer(wool, 0.05, "in"), Layer(film, 0.001, "film"), Layer(wool, 0.07, "out")])
    steps = ladder(wall)
    assert steps.depth[-1] == pytest.approx(wall.thickness, rel=1e-12)
    assert steps.depth[steps.face(1, 0)] == pytest.approx(0.05)
    assert steps.depth[steps.face(1, 1)] == pytest.approx(0.051)
    assert np.all(np.diff(steps.depth) >= 0)


def test_films_of_vapor_resist_at_their_own_side():
    """One over the permeance of each film, first and last; the sum is the assembly's."""
    wall = Assembly("wall", [Layer(BOARD, 0.016)], interior_vapor_film=2e-8, exterior_vapor_film=8e-8)
    steps = ladder(wall)
    assert steps.vapor[0] == pytest.approx(5e7)
    assert steps.vapor[-1] == pytest.approx(1.25e7)
    assert steps.vapor.sum() == pytest.approx(wall.vapor_resistance, rel=1e-12)
