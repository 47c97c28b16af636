"""What the air outdoors is: twelve monthly means, a year of hours, and that year colder."""

from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Self, TypeVar

import numpy as np

from dryward import air
from dryward.air.vapor import Air
from dryward.checks import Floats, OutOfRange, subject, within
from dryward.language import message
from dryward.units import KELVIN, written

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
#: Days in each month of a year of 365 days.
DAYS = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
DAYS.flags.writeable = False
#: Hours in a year of 365 days.
YEAR = 8760


def _twelve(what: str, values: Floats, low: float, high: float, unit: str) -> Floats:
    found = np.array(within(what, values, low, high, unit), dtype=float)
    if found.shape != (12,):
        raise OutOfRange(message("weather.twelve-values", what=subject(what), count=found.size))
    found.flags.writeable = False
    return found


@dataclass(frozen=True, eq=False)
class MonthlyClimate:
    """Monthly means of outdoor air, January to December.

    Parameters
    ----------
    temperature : array of 12
        Mean air temperature [degC], -60 to 60.
    relative_humidity : array of 12
        Mean relative humidity [-], 0 to 1; over ice below 0 degC.
    name : str, optional
        What to call the place.
    notes : tuple of str, optional
        What was assumed on the way here, in sentences for a reader.

    Raises
    ------
    OutOfRange
        When there are not twelve of each, or one lies outside its range.

    Examples
    --------
    >>> climate = MonthlyClimate([5.0] * 12, [0.8] * 12)
    >>> round(climate.vapor_pressure[0])
    698
    """

    temperature: Floats = field(repr=False)
    relative_humidity: Floats = field(repr=False)
    name: str = ""
    notes: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "temperature", _twelve("Monthly temperature", self.temperature, -60.0, 60.0, "degC"))
        put(self, "relative_humidity", _twelve("Monthly relative humidity", self.relative_humidity, 0.0, 1.0, "%"))

    @property
    def vapor_pressure(self) -> Floats:
        """Array of 12 [Pa]."""
        return air.vapor_pressure(self.temperature, self.relative_humidity)

    def air(self, month: int) -> Air:
        """The mean air of one month, 1 to 12."""
        index = int(within("Month", month, 1, 12)) - 1
        return Air(float(self.temperature[index]), float(self.relative_humidity[index]))

    @property
    def coldest(self) -> int:
        """The coldest month, 1 to 12."""
        return int(np.argmin(self.temperature)) + 1

    @property
    def warmest(self) -> int:
        """The warmest month, 1 to 12."""
        return int(np.argmax(self.temperature)) + 1


#: Where the sun of an hour's mean stands, from the end of the hour [h].
MIDDLE = -0.5
#: The moments a sun can belong to, from the end of the hour [h]: one named after
#: the nearest full hour lies up to half an hour before the start or after the end.
SUN_OFFSETS = (-1.5, 0.5)

# Air over snow and in freezing fog holds as much vapor as water lets it, not
# ice; dew points in files are rounded to 0.1 K, which is 0.8 % of pressure.
_SLACK = 1.01

_SERIES = (
    ("temperature", "Air temperature", -70.0, 70.0, "degC"),
    ("vapor_pressure", "Vapor pressure", 0.0, 20_000.0, "Pa"),
    ("wind_speed", "Wind speed", 0.0, 120.0, "m/s"),
    ("direct_normal", "Direct normal sun", 0.0, 1500.0, "W/m2"),
    ("diffuse_horizontal", "Diffuse sun", 0.0, 1500.0, "W/m2"),
    ("global_horizontal", "Global sun", 0.0, 2000.0, "W/m2"),
    ("sky_longwave", "Long-wave radiation from the sky", 0.0, 800.0, "W/m2"),
)


@dataclass(frozen=True, eq=False)
class HourlyWeather:
    """Outdoor air, sun, sky and wind, one value for each hour.

    Every value is for the hour that ends at its time: the first one stands
    for midnight to 1 am of January 1, local standard time.  The sun may be
    that of a single moment; `sun_offset` says which.

    Parameters
    ----------
    temperature : array of n
        Air temperature [degC], -70 to 70.
    vapor_pressure : array of n
        [Pa], at most saturation over water.
    wind_speed : array of n, optional
        [m/s], 0 to 120.
    direct_normal, diffuse_horizontal, global_horizontal : array of n, optional
        Sun on a face turned to it, from the sky, and both together on level
        ground [W/m2], 0 to 1500 (global 2000).
    sky_longwave : array of n, optional
        Long-wave radiation that comes down from the sky [W/m2], 0 to 800.
    latitude, longitude : float, optional
        [deg], -90 to 90 and -180 to 180, north and east positive.
    time_zone : float, optional
        Hours ahead of UTC [h], -14 to 14.
    altitude : float, optional
        [m], -500 to 9000.
    name : str, optional
        What to call the place.
    notes : tuple of str, optional
        What was assumed on the way here, in sentences for a reader.
    sun_offset : float, optional
        When the sun stood where the series of the sun have it, from the end
        of the hour [h], -1.5 to 0.5: -0.5 for means of the hour, 0 for the
        instant at its end, -1 for the instant at its start.

    Raises
    ------
    OutOfRange
        When the lengths differ or a value lies outside its range.

    Examples
    --------
    >>> from dryward.weather import Air
    >>> HourlyWeather.constant(Air(5.0, 0.8), hours=24).hours
    24
    """

    temperature: Floats = field(repr=False)
    vapor_pressure: Floats = field(repr=False)
    wind_speed: Floats | None = field(default=None, repr=False)
    direct_normal: Floats | None = field(default=None, repr=False)
    diffuse_horizontal: Floats | None = field(default=None, repr=False)
    global_horizontal: Floats | None = field(default=None, repr=False)
    sky_longwave: Floats | None = field(default=None, repr=False)
    latitude: float | None = None
    longitude: float | None = None
    time_zone: float = 0.0
    altitude: float = 0.0
    name: str = ""
    notes: tuple[str, ...] = ()
    sun_offset: float = MIDDLE

    def __post_init__(self) -> None:
        put = object.__setattr__
        for name, words, low, high, unit in _SERIES:
            values = getattr(self, name)
            if values is None and name not in ("temperature", "vapor_pressure"):
                continue
            series = np.array(within(words, values, low, high, unit), dtype=float)
            if series.ndim != 1 or series.size == 0:
                raise OutOfRange(message("weather.list-of-hours", what=subject(words)))
            series.flags.writeable = False
            put(self, name, series)
            if series.size != self.temperature.size:
                raise OutOfRange(
                    message("weather.other-hours", what=subject(words), count=series.size, hours=self.temperature.size)
                )
        for name, words, low, high, unit in (
            ("latitude", "Latitude", -90.0, 90.0, "°"),
            ("longitude", "Longitude", -180.0, 180.0, "°"),
            ("time_zone", "Time zone", -14.0, 14.0, "h"),
            ("altitude", "Altitude", -500.0, 9000.0, "m"),
            ("sun_offset", "Moment of the sun from the end of the hour", *SUN_OFFSETS, "h"),
        ):
            if getattr(self, name) is not None:
                put(self, name, within(words, getattr(self, name), low, high, unit))
        limit = air.saturation_vapor_pressure(self.temperature, over="water") * _SLACK
        wet = np.flatnonzero(self.vapor_pressure > limit)
        if wet.size:
            hour = wet[0]
            raise OutOfRange(
                message(
                    "weather.above-saturation",
                    hour=str(hour + 1),
                    pressure=written(self.vapor_pressure[hour], ".0f", "Pa"),
                    temperature=written(self.temperature[hour], ".1f", "degC"),
                    most=written(limit[hour] / _SLACK, ".0f", "Pa"),
                )
            )

    @classmethod
    def constant(cls, air: Air, hours: int = YEAR) -> Self:
        """The same air in every hour: no sun, no sky, no wind given."""
        count = int(within("Number of hours", hours, 1, 1_000_000, "h"))
        return cls(
            np.full(count, air.temperature), np.full(count, air.vapor_pressure), name=message("weather.constant-air")
        )

    @property
    def hours(self) -> int:
        """How many hours there are."""
        return self.temperature.size

    @property
    def relative_humidity(self) -> Floats:
        """[-]; over ice below 0 degC, where fog and snow air can lie above 1."""
        return air.relative_humidity(self.temperature, self.vapor_pressure)

    @property
    def dew_point(self) -> Floats:
        """Dew point, or frost point below 0 degC [degC]."""
        return air.dew_point(self.vapor_pressure)

    def monthly(self) -> MonthlyClimate:
        """The twelve monthly means.

        Temperature and vapor pressure are averaged; the relative humidity is
        the one that belongs to those two means, so that no vapor is lost.
        Where that lies above saturation (long fog, or frost measured over
        water) the month is taken as saturated, and a note says so.
        """
        if self.hours % YEAR:
            raise OutOfRange(message("weather.whole-years", count=self.hours, hours=YEAR))
        ends = np.concatenate([[0], np.cumsum(DAYS * 24)])

        def means(series: Floats) -> Floats:
            year = series.reshape(-1, YEAR).mean(axis=0)
            return np.array([year[a:b].mean() for a, b in pairwise(ends)])

        temperature = means(self.temperature)
        humidity = air.relative_humidity(temperature, means(self.vapor_pressure))
        full = humidity > 1.0
        notes = self.notes
        if np.any(humidity > 1.0 + 1e-9):
            notes += (message("weather.saturated-months", count=int(full.sum())),)
        return MonthlyClimate(temperature, np.where(full, 1.0, humidity), self.name, notes)


#: Weather of either kind.
Weather = TypeVar("Weather", HourlyWeather, MonthlyClimate)
#: How much colder a cold winter's year is than a typical one [K]; EN 15026:2007, from memory.
COLDER = 2.0


def colder(weather: Weather, by: float = COLDER) -> Weather:
    """A cold winter's year from a typical one: every hour, or month, so much colder [K], 0 to 10.

    The relative humidity stays as it was, over ice below 0 degC and over
    water above, so colder air holds less vapor and never more than it can.
    The long-wave radiation of the sky falls with the fourth power of the
    absolute temperature.  Sun and wind stay.  Summer is colder too: a roof
    is wetted by the winter and dried by the summer, and this spares neither.

    EN 15026:2007 lets a year that is met once in ten be made by a
    shift of a mean year by 2 K; from memory.
    """
    shift = within("How much colder", by, 0.0, 10.0, "K")
    by_so_much = written(shift, ".3g", "K")
    temperature, humidity = weather.temperature - shift, np.asarray(weather.relative_humidity)
    name = message("weather.colder-name", name=weather.name or message("weather.a-year"), by=by_so_much)
    if isinstance(weather, MonthlyClimate):
        note = message("weather.colder-months", by=by_so_much)
        return replace(weather, temperature=temperature, name=name, notes=(*weather.notes, note))
    sky = weather.sky_longwave
    if sky is not None:
        sky = sky * (1.0 - shift / (weather.temperature + KELVIN)) ** 4
    # Not by `vapor_pressure`: air measured over water in frost lies above 1 over ice.
    vapor = humidity * air.saturation_vapor_pressure(temperature)
    note = message("weather.colder-hours", by=by_so_much, sky=sky is not None)
    notes = (*weather.notes, note)
    return replace(weather, temperature=temperature, vapor_pressure=vapor, sky_longwave=sky, name=name, notes=notes)
