"""Holes in a series of hours: which can be filled, how, and in what words."""

import numpy as np

from dryward.checks import listed
from dryward.weather.climate import YEAR

#: At most this share of a year, and this many hours in a row, may be filled.
SHARE, RUN = 0.02, 48
#: How many hours that is.
MOST = int(SHARE * YEAR)


def longest_run(bad):
    """The longest stretch of marked hours.

    Parameters
    ----------
    bad : array of n
        True where the value is missing.

    Returns
    -------
    int
        [h].

    Examples
    --------
    >>> longest_run([False, True, True, False, True])
    2
    """
    best = now = 0
    for missing in bad:
        now = now + 1 if missing else 0
        best = max(best, now)
    return best


def can_be_filled(bad):
    """Whether few enough hours are missing to fill them in.

    Parameters
    ----------
    bad : array of n
        True where the value is missing.

    Returns
    -------
    bool
        At most 2 % of the hours and 48 in a row.

    Examples
    --------
    >>> can_be_filled([True] + [False] * 99)
    True
    """
    return bool(np.mean(bad) <= SHARE and longest_run(bad) <= RUN)


def filled(values, bad, by_day=False):
    """A series with its holes filled from the hours or days around them.

    Parameters
    ----------
    values : array of n
        The series, [any], any numbers; those marked bad are not looked at.
    bad : array of n
        True where the value is missing.
    by_day : bool, optional
        For sunshine: take the mean of the same hour on the nearest days
        before and after that have it, not a straight line through the night.

    Returns
    -------
    array of n
        The year is taken to repeat, so the first hour has a neighbor too.

    Examples
    --------
    >>> filled([1.0, 9.0, 3.0], [False, True, False]).tolist()
    [1.0, 2.0, 3.0]
    """
    values, bad = np.array(values, dtype=float), np.asarray(bad, dtype=bool)
    if not bad.any():
        return values
    if by_day and values.size % 24 == 0 and not bad.reshape(-1, 24).all(axis=0).any():
        days, holes = values.reshape(-1, 24), bad.reshape(-1, 24)
        number = np.arange(len(days))
        for hour in range(24):
            hole = holes[:, hour]
            if hole.any():
                known = number[~hole], days[~hole, hour]
                days[hole, hour] = np.interp(number[hole], *known, period=len(days))
        return days.ravel()
    number = np.arange(values.size)
    values[bad] = np.interp(number[bad], number[~bad], values[~bad], period=values.size)
    return values


def named(places, shown=5):
    """Places in a file, in words: the first few, then how many more.

    Parameters
    ----------
    places : sequence of str
        At least one.
    shown : int, optional
        How many are written out.

    Returns
    -------
    str

    Examples
    --------
    >>> named(["line 9", "line 12", "line 40"])
    'line 9, line 12 and line 40'
    >>> named([f"line {n}" for n in range(9)], shown=2)
    'line 0, line 1 and 7 more'
    """
    some, rest = list(places[:shown]), len(places) - shown
    if rest > 0:
        return f"{', '.join(some)} and {rest} more"
    return listed(some)
