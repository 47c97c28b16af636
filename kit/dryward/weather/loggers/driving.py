"""Readings of the room and of outdoors, as what drives the hour-by-hour model."""

from dataclasses import replace

import numpy as np

from dryward import air
from dryward.checks import OutOfRange
from dryward.weather import gaps, indoor
from dryward.weather.hourly import YEAR, HourlyWeather
from dryward.weather.loggers.compare import shared_clock

#: At most this share of the hours may be filled in [-].
MOST_FILLED = 0.1


def hour_of_year(time):
    """Which hour of a year of 365 days each time falls in.

    Parameters
    ----------
    time : array of n
        datetime64.

    Returns
    -------
    array of n
        0 to 8759; February 29 counts as February 28.

    Examples
    --------
    >>> hour_of_year(np.array(["2024-03-01T02:30"], dtype="datetime64[s]"))
    array([1418])
    """
    year = time.astype("datetime64[Y]")
    hour = (time - year).astype("timedelta64[h]").astype(int)
    number = year.astype(int) + 1970
    leap = (number % 4 == 0) & ((number % 100 != 0) | (number % 400 == 0))
    return np.where(leap & (hour >= _END_OF_FEBRUARY), hour - 24, hour)


_END_OF_FEBRUARY = (31 + 28) * 24


def driving(readings, sun=None):
    """Outdoor weather and room air from readings, for a run of the model over the same hours.

    Parameters
    ----------
    readings : Readings
        With records of ``"indoors"`` and ``"outdoors"``.
    sun : HourlyWeather, optional
        A year whose sun, sky and wind are taken for the same hours of the
        calendar; without it there are none.

    Returns
    -------
    tuple of HourlyWeather and a rule for room air
        Hourly, over the time that both were read; `notes` of the weather
        says what was filled in and where the sun came from.

    Raises
    ------
    UnknownName
        When one of the two places is missing.
    OutOfRange
        When they share no hours, more than a tenth of them is missing, or
        the year of the sun is not one.

    Examples
    --------
    >>> from dryward.weather.loggers import read, sample
    >>> with sample("cause-air-leak") as path:
    ...     outdoors, room = driving(read(path))
    >>> outdoors.hours, room.at(outdoors)[0].size
    (672, 672)
    """
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
