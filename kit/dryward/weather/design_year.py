"""A year that is colder than usual, made from a typical one."""

import dataclasses

import numpy as np

from dryward import air
from dryward.checks import within
from dryward.units import KELVIN
from dryward.weather.monthly import MonthlyClimate

#: How much colder a cold winter's year is than a typical one [K]; EN 15026:2007, from memory.
COLDER = 2.0


def colder(weather, by=COLDER):
    """A cold winter's year from a typical one: every hour, or month, so much colder.

    Parameters
    ----------
    weather : HourlyWeather or MonthlyClimate
        The typical year.
    by : float, optional
        [K], 0 to 10.

    Returns
    -------
    HourlyWeather or MonthlyClimate
        Of the same kind; its name and the last of its `notes` say what was done.

    Raises
    ------
    OutOfRange
        For another shift, or where the colder air leaves the range of its series.

    Notes
    -----
    The relative humidity stays as it was, over ice below 0 degC and over
    water above, so colder air holds less vapor and never more than it can.
    The long-wave radiation of the sky falls with the fourth power of the
    absolute temperature.  Sun and wind stay.  Summer is colder too: a roof
    is wetted by the winter and dried by the summer, and this spares neither.

    References
    ----------
    EN 15026:2007 lets a year that is met once in ten be made by a shift of a
    mean year by 2 K; from memory.

    Examples
    --------
    >>> from dryward.weather import Air, HourlyWeather
    >>> cold = colder(HourlyWeather.constant(Air(5.0, 0.8)))
    >>> float(cold.temperature[0]), float(cold.relative_humidity[0].round(6))
    (3.0, 0.8)
    """
    shift = within("How much colder", by, 0.0, 10.0, "K")
    words = f"{shift:.3g} K colder"
    rest = "the same relative humidity"
    temperature, humidity = weather.temperature - shift, np.asarray(weather.relative_humidity)
    changed = {"temperature": temperature, "name": f"{weather.name or 'a year'}, {words}"}
    if isinstance(weather, MonthlyClimate):
        note = f"Each month is {words} than in the typical year, at {rest}."
        return dataclasses.replace(weather, **changed, notes=(*weather.notes, note))
    note = f"Each hour is {words} than in the typical year, at {rest}, with the same sun and wind"
    if weather.sky_longwave is not None:
        changed["sky_longwave"] = weather.sky_longwave * (1.0 - shift / (weather.temperature + KELVIN)) ** 4
        note += "; the sky sends as much less as the fourth power of the absolute temperature falls"
    # Not by `vapor_pressure`: air measured over water in frost lies above 1 over ice.
    vapor = humidity * air.saturation_vapor_pressure(temperature)
    return dataclasses.replace(weather, **changed, vapor_pressure=vapor, notes=(*weather.notes, f"{note}."))
