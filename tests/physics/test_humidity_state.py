"""Fixed points of layers that answer to humidity: against SciPy's root finder, and what cannot settle."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from dryward.checks import NotConverged
from dryward.physics.vapor_line import settle, settle_one


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
