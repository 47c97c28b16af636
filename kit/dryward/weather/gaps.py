"""Holes in a series of hours: which can be filled, how, and in what words."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from dryward.checks import Floats
from dryward.language import listed, listing, message
from dryward.weather.climate import YEAR

#: At most this share of a year, and this many hours in a row, may be filled.
SHARE, RUN = 0.02, 48
#: How many hours that is.
MOST = int(SHARE * YEAR)


def longest_run(bad: ArrayLike) -> int:
    """The longest stretch of marked hours [h]."""
    best = now = 0
    for missing in np.asarray(bad):
        now = now + 1 if missing else 0
        best = max(best, now)
    return best


def can_be_filled(bad: ArrayLike) -> bool:
    """Whether few enough of the marked hours are missing: at most `SHARE` of them, and `RUN` in a row."""
    return bool(np.asarray(bad).mean() <= SHARE and longest_run(bad) <= RUN)


def filled(values: ArrayLike, bad: ArrayLike, by_day: bool = False) -> Floats:
    """A series with its marked holes filled by a straight line; the year is taken to repeat.

    By day, for sunshine: from the same hour on the nearest days that have it,
    not by a line through the night.
    """
    series, hole = np.array(values, dtype=float), np.asarray(bad, dtype=bool)
    if not hole.any():
        return series
    if by_day and series.size % 24 == 0 and not hole.reshape(-1, 24).all(axis=0).any():
        days, holes = series.reshape(-1, 24), hole.reshape(-1, 24)
        number = np.arange(len(days))
        for hour in range(24):
            hole = holes[:, hour]
            if hole.any():
                known = number[~hole], days[~hole, hour]
                days[hole, hour] = np.interp(number[hole], *known, period=len(days))
        return days.ravel()
    number = np.arange(series.size)
    series[hole] = np.interp(number[hole], number[~hole], series[~hole], period=series.size)
    return series


def named(places: Sequence[str], shown: int = 5) -> str:
    """Places in a file, in words: the first few, then how many more."""
    some, rest = list(places[:shown]), len(places) - shown
    if rest > 0:
        return message("weather.and-more", some=listing(some), count=rest)
    return listed(some)
