"""The nodes of an assembly, the vapor line by hand and by another way, and layers that depend on humidity."""

import pickle

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from roofs import VARIABLE, inches, perm, sheet, vault
from scipy.optimize import brentq, linprog

from dryward.building import Assembly, FixedMembrane, LaminateMembrane, Layer, Material
from dryward.checks import NotConverged
from dryward.physics.nodes import (
    PIECE,
    TIGHT,
    nodes_of,
    settle,
    settle_one,
    tight_line,
    tight_line_through,
    tight_lines,
)

BOARD = Material("board", "board", 640, 1090, 0.16, 5e-11)


def test_sums_are_those_of_the_assembly():
    roof = vault(sheet(1), 1.5, 0.6)
    nodes = nodes_of(roof)
    assert nodes.heat.sum() == pytest.approx(roof.thermal_resistance)
    assert nodes.vapor.sum() == pytest.approx(roof.vapor_resistance)
    assert nodes.depth[[0, 1]].tolist() == [0.0, 0.0]
    assert nodes.depth[-1] == nodes.depth[-2] == pytest.approx(inches(0.5 + 1.5 + 12 + 0.5))
    assert nodes.place[[0, -1]].tolist() == [-1, -2]


def test_a_roof_goes_to_another_process_with_what_was_worked_out_of_it():
    """Nodes and parts stay on an assembly and its layers."""
    open_board = Material("board", "board", 640, 1090, 0.16, ((0.25, 1e-11), (0.75, 5e-11)))
    roof = Assembly("roof", [Layer(BOARD, 0.016), Layer(VARIABLE), Layer(open_board, 0.012, "open board")])
    before = nodes_of(roof)
    again = pickle.loads(pickle.dumps(roof))
    assert again == roof
    assert nodes_of(again).vapor.tolist() == before.vapor.tolist()
    assert [float(each.permeance(0.5)) for each in nodes_of(again).humidity_dependent] == [
        float(each.permeance(0.5)) for each in before.humidity_dependent
    ]
    assert len(before.humidity_dependent) == 2


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


def both(resistance, ceiling, start, end):
    """One at a time and many at once, which must agree."""
    one, bends = tight_line(resistance, ceiling, start, end)
    many = tight_lines(np.array([resistance, resistance], float), np.array([ceiling, ceiling], float),
                       np.array([start, start], float), np.array([end, end], float))  # fmt: skip
    assert many == pytest.approx(np.array([one, one]), rel=1e-12)
    return one, bends


def test_a_straight_line_where_nothing_is_in_its_way():
    line, bends = both([0.0, 1.0, 3.0, 4.0], [900.0] * 4, 800.0, 400.0)
    assert line == pytest.approx([800.0, 700.0, 500.0, 400.0])
    assert bends == [0, 3]


def test_one_bend():
    line, bends = both([0.0, 1.0, 2.0, 4.0], [2000.0, 1500.0, 300.0, 900.0], 1000.0, 200.0)
    assert line == pytest.approx([1000.0, 650.0, 300.0, 200.0])
    assert bends == [0, 2, 3]


def test_two_bends_and_a_point_between_them_on_their_line():
    line, bends = both([0.0, 1.0, 2.0, 3.0, 4.0], [2000.0, 500.0, 300.0, 100.0, 900.0], 1000.0, 80.0)
    assert line == pytest.approx([1000.0, 500.0, 300.0, 100.0, 80.0])
    assert bends[0] == 0
    assert bends[-1] == 4
    assert {1, 3} <= set(bends)


def test_surfaces_without_a_film_are_held_at_their_own_saturation():
    """Nodes with no resistance to the air beside them cannot be above saturation."""
    line, bends = both([0.0, 0.0, 2.0, 2.0], [2000.0, 600.0, 700.0, 900.0], 1000.0, 800.0)
    assert line == pytest.approx([1000.0, 600.0, 700.0, 800.0])
    assert bends == [0, 1, 2, 3]


def test_several_rungs_without_resistance_at_both_ends():
    line, bends = both([0.0, 0.0, 0.0, 1.0, 2.0, 2.0, 2.0],
                       [2000.0, 900.0, 600.0, 5000.0, 400.0, 450.0, 900.0], 1000.0, 800.0)  # fmt: skip
    assert line[2:5] == pytest.approx([600.0, 500.0, 400.0])
    assert line[0] == 1000.0
    assert line[-1] == 800.0
    assert bends[0] == 0
    assert bends[-1] == 6
    assert {2, 4} <= set(bends)


def test_no_resistance_inside_a_wall_makes_no_jump():
    line, _ = both([0.0, 1.0, 1.0, 2.0], [2000.0, 500.0, 400.0, 900.0], 1000.0, 100.0)
    assert line[2] == pytest.approx(400.0)
    assert line[1] == pytest.approx(400.0)


def test_the_size_of_the_resistances_does_not_matter():
    z, top = np.array([0.0, 1.0, 2.0, 4.0]), [2000.0, 1500.0, 300.0, 900.0]
    for scale in (1e-6, 1e-2, 1e12):
        line, bends = both((scale * z).tolist(), top, 1000.0, 200.0)
        assert line == pytest.approx([1000.0, 650.0, 300.0, 200.0])
        assert bends == [0, 2, 3]


def test_a_higher_rung_behind_a_lower_one_at_the_same_place_is_left_out():
    line, bends = both([0.0, 1.0, 1.0, 1.0, 2.0], [2000.0, 500.0, 400.0, 900.0, 900.0], 1000.0, 100.0)
    assert line[1:4] == pytest.approx([400.0] * 3)
    assert bends == [0, 2, 4]


def test_a_held_rung_stays_at_saturation_and_feeds_both_sides():
    line, bends = tight_line_through([0.0, 1.0, 2.0, 4.0], [900.0, 800.0, 700.0, 900.0], 300.0, 100.0, [2])
    assert line == pytest.approx([300.0, 500.0, 700.0, 100.0])
    assert bends == [0, 2, 3]


def test_two_held_rungs():
    z, top = [0.0, 1.0, 2.0, 3.0, 5.0, 6.0], [900.0, 800.0, 700.0, 900.0, 600.0, 900.0]
    line, bends = tight_line_through(z, top, 300.0, 100.0, [2, 4])
    assert line == pytest.approx([300.0, 500.0, 700.0, 700.0 - 100.0 / 3.0, 600.0, 100.0])
    assert bends == [0, 2, 4, 5]
    assert tight_line_through(z, top, 300.0, 100.0) == tight_line(z, top, 300.0, 100.0)


@settings(max_examples=60)
@given(
    st.lists(st.tuples(st.floats(0.1, 5.0), st.floats(50.0, 3000.0)), min_size=2, max_size=9),
    st.floats(0.0, 1.0),
    st.floats(0.0, 1.0),
)
def test_it_is_the_highest_convex_line_under_saturation(pieces, wet_in, wet_out):
    """The same line as the answer of a linear program: as high as can be, bent upward only, below saturation."""
    z = np.concatenate(([0.0], np.cumsum([step for step, _ in pieces])))
    top = np.array([pieces[0][1], *(height for _, height in pieces)])
    start, end = wet_in * top[0], wet_out * top[-1]
    line, bends = both(z.tolist(), top.tolist(), start, end)
    last = len(z) - 1
    convex = np.zeros((last - 1, last + 1))
    for k in range(1, last):
        left, right = z[k] - z[k - 1], z[k + 1] - z[k]
        convex[k - 1, [k - 1, k, k + 1]] = -1 / left, 1 / left + 1 / right, -1 / right
    bounds = [(start, start), *((None, height) for height in top[1:-1]), (end, end)]
    best = linprog(-np.ones(last + 1), A_ub=convex, b_ub=np.zeros(last - 1), bounds=bounds, method="highs")
    assert best.status == 0
    assert line == pytest.approx(best.x, rel=1e-6, abs=1e-4)
    assert all(line[k] == pytest.approx(top[k]) for k in bends[1:-1])


PIECES = st.lists(st.tuples(st.sampled_from([0.0, 0.0, 1.0, 2.5]), st.floats(100.0, 3000.0)), min_size=3, max_size=9)


@settings(max_examples=80)
@given(PIECES, st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_the_line_read_from_outside_is_the_same_line(pieces, inside, outside):
    """Nodes without resistance at either end, many or few: the mirror image has the mirrored pressures and bends."""
    resistance = np.concatenate(([0.0], np.cumsum([gap for gap, _ in pieces[1:]])))
    resistance[-1] += 1.0  # something between the two airs
    ceiling = [top for _, top in pieces]
    start, end = inside * ceiling[0], outside * ceiling[-1]
    line, bends = both(resistance.tolist(), ceiling, start, end)
    back, turns = both((resistance[-1] - resistance[::-1]).tolist(), ceiling[::-1], end, start)
    assert back[::-1] == pytest.approx(line, rel=1e-9, abs=1e-9)
    assert [resistance[len(pieces) - 1 - k] for k in reversed(turns)] == [resistance[k] for k in bends]


def test_many_rungs_without_resistance_before_the_outdoor_air():
    line, bends = both([0.0, 1.0, 2.0, 2.0, 2.0, 2.0, 2.0, 2.0], [2000.0, 900.0] + [400.0] + [500.0] * 5, 600.0, 450.0)
    assert line == pytest.approx([600.0, 500.0] + [400.0] * 5 + [450.0])
    assert bends == [0, 2, 7]


def test_only_differences_of_resistance_count():
    ceiling = [2000.0, 1500.0, 300.0, 900.0]
    for first in (0.0, 1.0, 50.0):
        line, bends = both([first, first + 1.0, first + 2.0, first + 4.0], ceiling, 1000.0, 200.0)
        assert line == pytest.approx([1000.0, 650.0, 300.0, 200.0])
        assert bends == [0, 2, 3]
        line, bends = both([first, first + 1.0, first + 2.0, first + 4.0], [3000.0] * 4, 1000.0, 200.0)
        assert line == pytest.approx([1000.0, 800.0, 600.0, 200.0])
        assert bends == [0, 3]


def answer(steep, middle):
    """A falling answer: the more humid the layer is thought to be, the drier it comes out."""
    return lambda x: 0.5 - 0.5 * np.tanh(steep * (x - middle))


def counted(solve):
    calls = []

    def count(*given):
        calls.append(given)
        return solve(*given)

    return count, calls


@settings(max_examples=60)
@given(st.floats(0.0, 300.0), st.floats(0.05, 0.95))
def test_it_is_the_root_that_a_library_finds(steep, middle):
    solve = answer(steep, middle)
    root = brentq(lambda x: solve(x) - x, 0.0, 1.0, xtol=1e-14)
    one, calls = counted(solve)
    assert settle_one(one, "film") == pytest.approx(root, abs=1e-8)
    assert len(calls) <= 40
    many, rounds = counted(lambda x, rows: solve(x))
    assert settle(many, 1, ["film"], np.array([[0.5], [0.01], [0.99]])) == pytest.approx(root, abs=1e-8)
    assert len(rounds) <= 40


def test_cases_that_settle_early_leave_the_others_alone():
    steeps, middles = np.array([[0.0], [5.0], [80.0], [250.0]]), np.array([[0.5], [0.3], [0.7], [0.2]])
    rows_asked = []

    def solve(x, rows):
        rows_asked.append(len(rows))
        return 0.5 - 0.5 * np.tanh(steeps[rows] * (x - middles[rows]))

    found = settle(solve, 1, ["film"], np.full((4, 1), 0.5))
    for k in range(4):
        alone = answer(steeps[k, 0], middles[k, 0])
        root = brentq(lambda x, alone=alone: alone(x) - x, 0.0, 1.0, xtol=1e-14)
        assert found[k, 0] == pytest.approx(root, abs=1e-8)
    assert rows_asked[0] == 4
    assert rows_asked[-1] < 4


def test_two_layers_that_pull_against_each_other():
    """x = 0.9 - 0.6 y, y = 0.8 - 0.7 x: solved by hand."""
    found = settle(
        lambda x, rows: np.stack([0.9 - 0.6 * x[:, 1], 0.8 - 0.7 * x[:, 0]], axis=1),
        2, ["one", "two"], np.full((1, 2), 0.5),
    )  # fmt: skip
    x = (0.9 - 0.48) / (1 - 0.42)
    assert found[0] == pytest.approx([x, 0.8 - 0.7 * x], abs=1e-8)


def test_what_cannot_settle_is_named():
    def jumpy(x):
        jumpy.turn = not jumpy.turn
        return 1.0 if jumpy.turn else 0.0

    jumpy.turn = False
    with pytest.raises(NotConverged, match="The layer other found no steady permeance in 200 rounds"):
        settle(lambda x, rows: np.array([[0.5, jumpy(0)]]), 2, ["film", "other"], np.full((1, 2), 0.5))
    with pytest.raises(NotConverged, match="The layer film found no steady permeance in 200 rounds"):
        settle_one(lambda x: float("nan"), "film")
