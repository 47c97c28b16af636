"""Readings beside the model: on one clock, as what drives it, and how far apart, how alike, how late."""

from dataclasses import dataclass, replace

import numpy as np

from dryward import air
from dryward.checks import OutOfRange, within
from dryward.units import HOUR
from dryward.weather import gaps, indoor
from dryward.weather.climate import YEAR, HourlyWeather

_STEP = np.timedelta64(int(HOUR), "s")


@dataclass(frozen=True)
class Agreement:
    """How a measured series compares with a modelled one."""

    bias: float
    spread: float
    correlation: float
    hours: int


def shared_clock(*records):
    """Records of several places as hourly means over the time they have in common."""
    hour = "datetime64[h]"
    start = max(record.time[0] for record in records).astype(hour)
    end = min(record.time[-1] for record in records).astype(hour)
    if end - start < np.timedelta64(1, "h"):
        raise OutOfRange("The records have no two hours in common; check their dates and time zones.")
    grid = np.arange(start, end + np.timedelta64(1, "h")).astype("datetime64[s]")
    return tuple(_hourly(record, grid) for record in records)


def _hourly(record, grid):
    slot = ((record.time - grid[0]) // _STEP).astype(int)
    inside = (slot >= 0) & (slot < grid.size)

    def means(values, total=False):
        if values is None:
            return None
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
        moisture_content=means(record.moisture_content),
        rain=means(record.rain, total=True),
    )


def _both(a, b):
    a, b = np.asarray(a, dtype=float), np.asarray(b, dtype=float)
    if a.shape != b.shape:
        raise OutOfRange(f"The two series have {a.size} and {b.size} values; they must have the same number.")
    known = np.isfinite(a) & np.isfinite(b)
    return a[known], b[known]


def correlation(a, b):
    """How alike two series go up and down."""
    a, b = _both(a, b)
    if a.size < 3 or np.ptp(a) == 0 or np.ptp(b) == 0:
        return float("nan")
    return float(np.corrcoef(a, b)[0, 1])


def agreement(measured, modelled):
    """Bias, spread and likeness of a measured and a modelled series."""
    a, b = _both(measured, modelled)
    if not a.size:
        raise OutOfRange("The two series have no hour in common.")
    return Agreement(float(np.mean(a - b)), float(np.std(a - b)), correlation(a, b), int(a.size))


def lag(driver, follower, longest=13):
    """By how many hours one series follows another."""
    reach = int(within("Longest lag", longest, 1, 240, "h"))
    a, b = np.asarray(driver, dtype=float), np.asarray(follower, dtype=float)
    if a.shape != b.shape:
        raise OutOfRange(f"The two series have {a.size} and {b.size} values; they must have the same number.")
    best = (0, float("nan"))
    for shift in sorted(range(-reach, reach + 1), key=abs):
        early, late = (a[: a.size - shift], b[shift:]) if shift >= 0 else (a[-shift:], b[:shift])
        found = correlation(early, late)
        if not np.isnan(found) and (np.isnan(best[1]) or found > best[1] + 1e-9):
            best = (shift, found)
    return best


#: At most this share of the hours may be filled in [-].
MOST_FILLED = 0.1


def hour_of_year(time):
    """Which hour of a year of 365 days each time falls in."""
    year = time.astype("datetime64[Y]")
    hour = (time - year).astype("timedelta64[h]").astype(int)
    number = year.astype(int) + 1970
    leap = (number % 4 == 0) & ((number % 100 != 0) | (number % 400 == 0))
    return np.where(leap & (hour >= _END_OF_FEBRUARY), hour - 24, hour)


_END_OF_FEBRUARY = (31 + 28) * 24


def driving(readings, sun=None):
    """Outdoor weather and room air from readings, for a run of the model over the same hours."""
    room, outside = shared_clock(readings["indoors"], readings["outdoors"])
    notes = []
    warm, vapor = (_whole(outside, name, notes) for name in ("temperature", "vapor_pressure"))
    room_warm, room_vapor = (_whole(room, name, notes) for name in ("temperature", "vapor_pressure"))
    limit = air.saturation_vapor_pressure(warm, over="water")
    if np.any(vapor > limit):
        notes.append(f"Outdoors {int(np.sum(vapor > limit))} hours above saturation are taken as saturated.")
        vapor = np.minimum(vapor, limit)
    weather = HourlyWeather(warm, vapor, name="readings outdoors")
    if sun is not None:
        if sun.hours != YEAR:
            raise OutOfRange(f"The year of the sun has {sun.hours} hours; it must have {YEAR}.")
        pick = hour_of_year(outside.time)
        series = ("wind_speed", "direct_normal", "diffuse_horizontal", "global_horizontal", "sky_longwave")
        taken = {name: None if getattr(sun, name) is None else getattr(sun, name)[pick] for name in series}
        place = {name: getattr(sun, name) for name in ("latitude", "longitude", "time_zone", "altitude", "sun_offset")}
        weather = replace(weather, **taken, **place)
        notes.append(f"Sun, sky and wind are those of {sun.name or 'another year'}, not read here.")
    return replace(weather, notes=tuple(notes)), indoor.measured(room_warm, room_vapor)


def _whole(record, name, notes):
    """A series without gaps."""
    values = getattr(record, name)
    bad = ~np.isfinite(values)
    words = f"{name.replace('_', ' ')} {record.place}"
    if bad.mean() > MOST_FILLED:
        raise OutOfRange(
            f"Of the {bad.size} hours {int(bad.sum())} have no {words}; at most {MOST_FILLED:.0%} can be filled in."
        )
    if bad.any():
        notes.append(f"{words.capitalize()} is filled in for {int(bad.sum())} hours.")
    return gaps.filled(values, bad)
