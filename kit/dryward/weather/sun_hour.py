"""Which moment of its hour the sun of a weather file belongs to, found from its own numbers.

Stations give the mean of the hour, which the sun of its middle stands for;
satellites give an instant, near the hour's end or its start.  Global sun is
direct sun times the cosine of the zenith plus diffuse sun, so the three series
close only with the sun where it stood.
"""

import warnings
from dataclasses import dataclass

import numpy as np

from dryward.storage import cached
from dryward.weather.hourly import MIDDLE, SUN_OFFSETS

# Root mean square of global - direct x cos(zenith) - diffuse over the hours with direct sun, in the middle against the
# best moment.  Means of the hour: 1.00 times in four typical years of stations and in a month of one-minute readings
# made into means, at most 1.02 in invented years at 0 to 68 degrees with clouds of three minutes to three hours.
# Instants: 40 and 44 times in two years from satellites (38 W/m2 in the middle, 10 at the end of the hour, 0.9 at
# 0.18 h after it), 2.7 times in the one-minute readings at full hours, 1.2 times and more in the invented years even
# where every reading is off by 10 W/m2.
#: A moment that closes so many times better than another is the right one of the two [-].
CLEARLY = 1.25
#: Nearer to the middle than this it is the middle [h]; the sun goes 1.5 degrees meanwhile.
NEAR = 0.1
#: With fewer hours of direct sun a few odd ones decide.
LEAST = 100
_STEP = 0.25


@dataclass(frozen=True)
class SunHour:
    """The moment that was found, or why there is none.

    Attributes
    ----------
    offset : float
        Hours from the end of the hour to the moment; the middle where it was not told.
    unclear : str
        Empty where it was told; else "missing" (a series, or sun), "noise" (no
        moment closes clearly better than another) or "outside" (the best one
        lies further from its hour than any convention).
    """

    offset: float
    unclear: str = ""


def found(direct, diffuse, level, latitude, longitude, time_zone, known=True):
    """The moment of the hour with which the three series close best.

    Parameters
    ----------
    direct, diffuse, level : array of n or None
        Direct normal, diffuse and global sun [W/m2], 0 to 1500 (global 2000); whole years.
    latitude, longitude : float
        [deg], -90 to 90 and -180 to 180.
    time_zone : float
        Hours ahead of UTC [h], -14 to 14.
    known : array of n, optional
        False where a value was filled in; those hours tell nothing.

    Returns
    -------
    SunHour
        Another moment than the middle only where it closes clearly better.

    Examples
    --------
    >>> found(None, None, None, 45.0, 8.0, 1.0)
    SunHour(offset=-0.5, unclear='missing')
    """
    if direct is None or diffuse is None or level is None:
        return SunHour(MIDDLE, "missing")
    hours = np.flatnonzero((direct > 0) & known)
    if hours.size < LEAST:
        return SunHour(MIDDLE, "missing")
    rest = (level - diffuse)[hours]
    best, error, start, middle, end = _closed(hours, direct[hours], rest, latitude, longitude, time_zone)
    if middle >= CLEARLY * error and abs(best - MIDDLE) > NEAR:
        low, high = SUN_OFFSETS
        return SunHour(round(float(best), 2)) if low < best < high else SunHour(MIDDLE, "outside")
    return SunHour(MIDDLE, "" if min(start, end) >= CLEARLY * middle else "noise")


@cached("pvlib", "pandas", "numpy")
def _closed(hours, direct, rest, latitude, longitude, time_zone):
    """The best moment [h]; how far direct sun is from the rest then, and at start, middle and end of the hour."""
    import pandas
    import pvlib

    end = pandas.Timestamp("2001-01-01 01:00") + pandas.to_timedelta(hours - time_zone, unit="h")
    end = pandas.DatetimeIndex(end, tz="UTC")

    def off(offset):
        with warnings.catch_warnings():
            # pvlib still asks pandas for a name that pandas is about to drop.
            warnings.simplefilter("ignore", DeprecationWarning)
            sun = pvlib.solarposition.ephemeris(end + pandas.Timedelta(hours=offset), latitude, longitude)
        height = np.maximum(np.cos(np.radians(sun["apparent_zenith"].to_numpy())), 0.0)
        return np.sqrt(np.mean((rest - direct * height) ** 2))

    low, high = SUN_OFFSETS
    tried = np.arange(low, high + _STEP / 2, _STEP)
    errors = np.array([off(offset) for offset in tried])
    lowest = int(np.argmin(errors))
    best = tried[lowest]
    if 0 < lowest < tried.size - 1:
        # The square of the error is a parabola around its lowest point.
        before, there, after = errors[lowest - 1 : lowest + 2] ** 2
        best += 0.5 * _STEP * (before - after) / (before - 2 * there + after)
    return best, off(best), off(-1.0), off(MIDDLE), off(0.0)
