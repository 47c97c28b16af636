"""The edge of the map of gain lies where the gain ends, not on the grid it was worked out on."""

import numpy as np

from dryward.course.open_out_tight_in.scene import edged


def test_a_clipped_plane_comes_back():
    inner, outer = np.geomspace(0.1, 10, 15), np.geomspace(0.1, 10, 15)
    whole = 3.0 * inner[None, :] - 2.0 * outer[:, None] - 1.0
    found = edged(inner, outer, np.maximum(whole, 0.0))
    # Each row and column with two gaining roofs or more is drawn on exactly, next to the edge.
    rows = (whole > 0).sum(axis=1) >= 2
    columns = (whole > 0).sum(axis=0) >= 2
    known = rows[:, None] & columns[None, :]
    assert known.sum() > 50
    assert np.allclose(found[known], whole[known])


def test_what_gains_is_left_alone_and_the_rest_is_not_above_nothing():
    gain = np.array([[0.0, 1.0, 5.0], [0.0, 0.0, 2.0], [0.0, 0.0, 0.0]])
    found = edged([1, 2, 3], [1, 2, 3], gain)
    assert (found[gain > 0] == gain[gain > 0]).all()
    assert (found[gain == 0] <= 0).all()


def test_a_map_without_gain_stays_so():
    assert (edged([1, 2, 3], [1, 2, 3], np.zeros((3, 3))) == 0).all()
