"""Layers that answer to humidity: the permeances that agree with the line.

A variable membrane has the permeance of the mean RH of its faces, and that
RH depends on its permeance.  For one such layer the answer lies between two
ends and is closed in on (regula falsi, Illinois form), so it is found for any
curve that rises, from any start.  For several, each steps toward its own
answer and halves its step whenever it overshoots.
"""

import numpy as np

from dryward.checks import NotConverged

_NEAR = 1e-10  # of the mean relative humidity
_ROUNDS = 200


def settle(solve, count, names, start=0.5):
    """Mean humidities that reproduce themselves.

    Parameters
    ----------
    solve : callable
        ``solve(x, rows)`` with x ndarray (rows, count) of mean RH [-] for
        the cases `rows`, gives the mean RH that follows, same shape.
    count : int
        How many layers answer.
    names : sequence of str
        Of those layers, for the error.
    start : ndarray (cases, count)
        Where to begin.

    Returns
    -------
    ndarray (cases, count)

    Raises
    ------
    NotConverged
        Naming the layer, when 200 rounds were not enough.
    """
    return _close_in(solve, start, names) if count == 1 else _step(solve, start, names)


def settle_one(solve, name):
    """The same for one layer of one case, in plain floats: ten times quicker.

    Parameters
    ----------
    solve : callable
        ``solve(x)``: mean RH [-] -> the mean RH that follows.
    name : str
        Of the layer, for the error.

    Returns
    -------
    float

    Raises
    ------
    NotConverged
        Naming the layer, when 200 rounds were not enough.
    """
    low, high, off_low, off_high, side = 0.0, 1.0, 1.0, -1.0, 0
    x, found = 0.5, solve(0.5)
    for turn in range(_ROUNDS):
        off = found - x
        if abs(off) <= _NEAR or high - low <= _NEAR:
            return x
        if off > 0:
            low, off_low = x, off
            off_high = 0.5 * off_high if side > 0 else off_high
            side = 1
        else:
            high, off_high = x, off
            off_low = 0.5 * off_low if side < 0 else off_low
            side = -1
        x = min(max(found, 0.0), 1.0) if turn == 0 else (low * off_high - high * off_low) / (off_high - off_low)
        found = solve(x)
    raise NotConverged(_sentence([name], 0))


def _close_in(solve, start, names):
    every = np.arange(len(start))
    answer, x, found = start.copy(), start, solve(start, every)
    low, high = np.zeros_like(x), np.ones_like(x)
    # How far the ends overshoot is unknown at first: at most their distance.
    off_low, off_high = np.ones_like(x), -np.ones_like(x)
    side = np.zeros_like(x)
    for turn in range(_ROUNDS):
        off = found - x
        open_still = ((np.abs(off) > _NEAR) & (high - low > _NEAR)).any(axis=1)
        answer[every] = x
        if not open_still.any():
            return answer
        if not open_still.all():  # go on with the cases that are not settled
            every, x, found, off = every[open_still], x[open_still], found[open_still], off[open_still]
            low, high, side = low[open_still], high[open_still], side[open_still]
            off_low, off_high = off_low[open_still], off_high[open_still]
        rising = off > 0
        # Illinois: an end that stays twice is trusted half as much.
        off_high = np.where(rising & (side > 0), 0.5 * off_high, off_high)
        off_low = np.where(~rising & (side < 0), 0.5 * off_low, off_low)
        low, off_low = np.where(rising, x, low), np.where(rising, off, off_low)
        high, off_high = np.where(rising, high, x), np.where(rising, off_high, off)
        side = np.where(rising, 1.0, -1.0)
        # The humidity that follows is the answer at once where the curve is
        # flat, so it is tried first.
        x = np.clip(found, 0.0, 1.0) if turn == 0 else (low * off_high - high * off_low) / (off_high - off_low)
        found = solve(x, every)
    raise NotConverged(_sentence(names, 0))


def _step(solve, start, names):
    every = np.arange(len(start))
    x = start
    off = solve(x, every) - x
    weight = np.ones_like(x)
    for _ in range(_ROUNDS):
        if np.all(np.abs(off) <= _NEAR):
            return x
        x = np.clip(x + weight * off, 0.0, 1.0)
        new = solve(x, every) - x
        weight = np.where(new * off < 0, 0.5 * weight, np.minimum(1.0, 1.15 * weight))
        off = new
    raise NotConverged(_sentence(names, int(np.argmax(np.abs(off).max(axis=0)))))


def _sentence(names, worst):
    return f"The layer {names[worst]} found no steady permeance in {_ROUNDS} rounds; its curve may be too steep."
