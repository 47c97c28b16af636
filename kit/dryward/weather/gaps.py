"""Holes in a series of hours: which can be filled, how, and in what words."""

import numpy as np

from dryward.checks import listed
from dryward.weather.climate import YEAR

#: At most this share of a year, and this many hours in a row, may be filled.
SHARE, RUN = 0.02, 48
#: How many hours that is.
MOST = int(SHARE * YEAR)


def longest_run(bad):
    """The longest stretch of marked hours."""
    best = now = 0
    for missing in bad:
        now = now + 1 if missing else 0
        best = max(best, now)
    return best


def can_be_filled(bad):
    """Whether few enough hours are missing to fill them in."""
    return bool(np.mean(bad) <= SHARE and longest_run(bad) <= RUN)


def filled(values, bad, by_day=False):
    """A series with its holes filled from the hours or days around them."""
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
    """Places in a file, in words: the first few, then how many more."""
    some, rest = list(places[:shown]), len(places) - shown
    if rest > 0:
        return f"{', '.join(some)} and {rest} more"
    return listed(some)
