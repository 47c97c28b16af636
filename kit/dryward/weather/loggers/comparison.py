"""Readings beside the model: on one clock, as what drives it, and how far apart, how alike, how late."""

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from dryward import air
from dryward.checks import Floats, OutOfRange, within
from dryward.language import message
from dryward.units import HOUR, written
from dryward.weather import gaps, indoor
from dryward.weather.climate import YEAR, HourlyWeather
from dryward.weather.loggers.readings import Readings, Record, Times

_STEP = np.timedelta64(int(HOUR), "s")


@dataclass(frozen=True)
class Agreement:
    """How a measured series compares with a modelled one."""

    bias: float  # mean of measured minus modelled
    spread: float  # standard deviation of that difference
    correlation: float  # -1 to 1; not a number where one of them never changes
    hours: int  # in which both have a value


def shared_clock(*records: Record) -> tuple[Record, ...]:
    """Records of several places as means of the full hours they have in common; not a number in a gap."""
    hour = "datetime64[h]"
    start = max(record.time[0] for record in records).astype(hour)
    end = min(record.time[-1] for record in records).astype(hour)
    if end - start < np.timedelta64(1, "h"):
        raise OutOfRange(message("loggers.no-hours-in-common"))
    grid = np.arange(start, end + np.timedelta64(1, "h")).astype("datetime64[s]")
    return tuple(_hourly(record, grid) for record in records)


def _hourly(record: Record, grid: Times) -> Record:
    slot = ((record.time - grid[0]) // _STEP).astype(int)
    inside = (slot >= 0) & (slot < grid.size)

    def means(values: Floats, total: bool = False) -> Floats:
        known = inside & np.isfinite(values)
        count = np.bincount(slot[known], minlength=grid.size)
        sums = np.bincount(slot[known], weights=values[known], minlength=grid.size)
        found = np.full(grid.size, np.nan)
        found[count > 0] = sums[count > 0] / (1 if total else count[count > 0])
        return found

    return replace(
        record,
        time=grid,
        temperature=means(record.temperature),
        vapor_pressure=means(record.vapor_pressure),
        moisture_content=None if record.moisture_content is None else means(record.moisture_content),
        rain=None if record.rain is None else means(record.rain, total=True),
    )


def _both(a: ArrayLike, b: ArrayLike) -> tuple[Floats, Floats]:
    a, b = np.asarray(a, dtype=float), np.asarray(b, dtype=float)
    if a.shape != b.shape:
        raise OutOfRange(message("loggers.different-lengths", first=a.size, second=b.size))
    known = np.isfinite(a) & np.isfinite(b)
    return a[known], b[known]


def correlation(a: ArrayLike, b: ArrayLike) -> float:
    """How alike two series go up and down, -1 to 1; gaps are left out, and one that never changes is like none."""
    a, b = _both(a, b)
    if a.size < 3 or np.ptp(a) == 0 or np.ptp(b) == 0:
        return float("nan")
    return float(np.corrcoef(a, b)[0, 1])


def agreement(measured: ArrayLike, modelled: ArrayLike) -> Agreement:
    """Bias, spread and likeness of a measured and a modelled series."""
    a, b = _both(measured, modelled)
    if not a.size:
        raise OutOfRange(message("loggers.no-hour-in-common"))
    return Agreement(float(np.mean(a - b)), float(np.std(a - b)), correlation(a, b), int(a.size))


def lag(driver: ArrayLike, follower: ArrayLike, longest: int = 13) -> tuple[int, float]:
    """By how many hours one hourly series follows another (below 0 where it leads), and how alike they are then."""
    reach = int(within("Longest lag", longest, 1, 240, "h"))
    a, b = np.asarray(driver, dtype=float), np.asarray(follower, dtype=float)
    if a.shape != b.shape:
        raise OutOfRange(message("loggers.different-lengths", first=a.size, second=b.size))
    best = (0, float("nan"))
    for shift in sorted(range(-reach, reach + 1), key=abs):
        early, late = (a[: a.size - shift], b[shift:]) if shift >= 0 else (a[-shift:], b[:shift])
        found = correlation(early, late)
        if not np.isnan(found) and (np.isnan(best[1]) or found > best[1] + 1e-9):
            best = (shift, found)
    return best


#: At most this share of the hours may be filled in [-].
MOST_FILLED = 0.1


def hour_of_year(time: Times) -> NDArray[np.int_]:
    """Which hour of a year of 365 days each time falls in, from 0; February 29 counts as February 28."""
    year = time.astype("datetime64[Y]")
    hour = (time - year).astype("timedelta64[h]").astype(int)
    number = year.astype(int) + 1970
    leap = (number % 4 == 0) & ((number % 100 != 0) | (number % 400 == 0))
    return np.where(leap & (hour >= _END_OF_FEBRUARY), hour - 24, hour)


_END_OF_FEBRUARY = (31 + 28) * 24


def driving(readings: Readings, sun: HourlyWeather | None = None) -> tuple[HourlyWeather, indoor.Measured]:
    """Outdoor weather and room air from readings, for a run of the model over the same hours.

    Sun, sky and wind are those of the same hours of the calendar in the year
    `sun`, or none.  The notes of the weather say what was filled in.
    """
    room, outside = shared_clock(readings["indoors"], readings["outdoors"])
    notes: list[str] = []
    warm, vapor = (_whole(outside, name, notes) for name in ("temperature", "vapor_pressure"))
    room_warm, room_vapor = (_whole(room, name, notes) for name in ("temperature", "vapor_pressure"))
    limit = air.saturation_vapor_pressure(warm, over="water")
    if np.any(vapor > limit):
        notes.append(message("loggers.taken-as-saturated", count=int(np.sum(vapor > limit))))
        vapor = np.minimum(vapor, limit)
    weather = HourlyWeather(warm, vapor, name=message("loggers.readings-outdoors"))
    if sun is not None:
        if sun.hours != YEAR:
            raise OutOfRange(message("loggers.hours-of-the-sun", hours=sun.hours, must=YEAR))
        pick = hour_of_year(outside.time)
        series = ("wind_speed", "direct_normal", "diffuse_horizontal", "global_horizontal", "sky_longwave")
        taken: dict[str, Any] = {
            name: getattr(sun, name) for name in ("latitude", "longitude", "time_zone", "altitude", "sun_offset")
        }
        taken |= {name: None if getattr(sun, name) is None else getattr(sun, name)[pick] for name in series}
        weather = replace(weather, **taken)
        notes.append(message("loggers.sun-of", year=sun.name or message("loggers.another-year")))
    return replace(weather, notes=tuple(notes)), indoor.measured(room_warm, room_vapor)


def _whole(record: Record, name: str, notes: list[str]) -> Floats:
    """A series without gaps."""
    values = getattr(record, name)
    bad = ~np.isfinite(values)
    series = f"{name.replace('_', '-')}-{record.place}"
    if bad.mean() > MOST_FILLED:
        most = written(100 * MOST_FILLED, ".0f")
        raise OutOfRange(
            message("loggers.too-many-gaps", series=series, hours=bad.size, lost=int(bad.sum()), most=most)
        )
    if bad.any():
        notes.append(message("loggers.filled-in", series=series, count=int(bad.sum())))
    return gaps.filled(values, bad)
