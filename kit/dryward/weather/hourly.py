"""Hour-by-hour weather: what drives the simulation of a year."""

from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np

from dryward import air
from dryward.checks import OutOfRange, within
from dryward.weather.monthly import DAYS, MonthlyClimate

#: Hours in a year of 365 days.
YEAR = 8760
#: Where the sun of an hour's mean stands, from the end of the hour [h].
MIDDLE = -0.5
#: The moments a sun can belong to, from the end of the hour [h]: one named after
#: the nearest full hour lies up to half an hour before the start or after the end.
SUN_OFFSETS = (-1.5, 0.5)

# Air over snow and in freezing fog holds as much vapor as water lets it, not
# ice; dew points in files are rounded to 0.1 K, which is 0.8 % of pressure.
_SLACK = 1.01

_SERIES = (
    ("temperature", "Air temperature", -70.0, 70.0, "°C"),
    ("vapor_pressure", "Vapor pressure", 0.0, 20_000.0, "Pa"),
    ("wind_speed", "Wind speed", 0.0, 120.0, "m/s"),
    ("direct_normal", "Direct normal sun", 0.0, 1500.0, "W/m²"),
    ("diffuse_horizontal", "Diffuse sun", 0.0, 1500.0, "W/m²"),
    ("global_horizontal", "Global sun", 0.0, 2000.0, "W/m²"),
    ("sky_longwave", "Long-wave radiation from the sky", 0.0, 800.0, "W/m²"),
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

    temperature: np.ndarray = field(repr=False)
    vapor_pressure: np.ndarray = field(repr=False)
    wind_speed: np.ndarray | None = field(default=None, repr=False)
    direct_normal: np.ndarray | None = field(default=None, repr=False)
    diffuse_horizontal: np.ndarray | None = field(default=None, repr=False)
    global_horizontal: np.ndarray | None = field(default=None, repr=False)
    sky_longwave: np.ndarray | None = field(default=None, repr=False)
    latitude: float | None = None
    longitude: float | None = None
    time_zone: float = 0.0
    altitude: float = 0.0
    name: str = ""
    notes: tuple = ()
    sun_offset: float = MIDDLE

    def __post_init__(self):
        put = object.__setattr__
        for name, words, low, high, unit in _SERIES:
            values = getattr(self, name)
            if values is None and name not in ("temperature", "vapor_pressure"):
                continue
            series = np.array(within(words, values, low, high, unit), dtype=float)
            if series.ndim != 1 or series.size == 0:
                raise OutOfRange(f"{words} must be a list of hours, one number for each.")
            series.flags.writeable = False
            put(self, name, series)
            if series.size != self.temperature.size:
                raise OutOfRange(f"{words} has {series.size} hours, but temperature has {self.temperature.size}.")
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
                f"Vapor pressure in hour {hour + 1} is {self.vapor_pressure[hour]:.0f} Pa; "
                f"air at {self.temperature[hour]:.1f} °C holds at most {limit[hour] / _SLACK:.0f} Pa."
            )

    @classmethod
    def constant(cls, air, hours=YEAR):
        """The same air in every hour: no sun, no sky, no wind given.

        Parameters
        ----------
        air : Air
            One state of air.
        hours : int, optional
            How many, 1 to 1 000 000.

        Returns
        -------
        HourlyWeather

        Raises
        ------
        OutOfRange
            For a number of hours outside the range.

        Examples
        --------
        >>> from dryward.weather import Air
        >>> float(HourlyWeather.constant(Air(5.0, 0.8)).temperature.mean())
        5.0
        """
        count = int(within("Number of hours", hours, 1, 1_000_000, "h"))
        return cls(np.full(count, air.temperature), np.full(count, air.vapor_pressure), name="constant air")

    @property
    def hours(self):
        """How many hours there are."""
        return self.temperature.size

    @property
    def relative_humidity(self):
        """[-]; over ice below 0 degC, where fog and snow air can lie above 1."""
        return air.relative_humidity(self.temperature, self.vapor_pressure)

    @property
    def dew_point(self):
        """Dew point, or frost point below 0 degC [degC]."""
        return air.dew_point(self.vapor_pressure)

    def monthly(self):
        """The twelve monthly means.

        Temperature and vapor pressure are averaged; the relative humidity is
        the one that belongs to those two means, so that no vapor is lost.

        Returns
        -------
        MonthlyClimate
            Where the mean vapor pressure lies above saturation at the mean
            temperature (long fog, or frost measured over water) the month is
            taken as saturated and a note says so.

        Raises
        ------
        OutOfRange
            When there are not whole years of 8760 hours.

        Examples
        --------
        >>> from dryward.weather import Air
        >>> float(HourlyWeather.constant(Air(5.0, 0.8)).monthly().relative_humidity[0].round(6))
        0.8
        """
        if self.hours % YEAR:
            raise OutOfRange(
                f"There are {self.hours} hours of weather; monthly means need whole years of {YEAR} hours."
            )
        ends = np.concatenate([[0], np.cumsum(DAYS * 24)])

        def means(series):
            year = series.reshape(-1, YEAR).mean(axis=0)
            return np.array([year[a:b].mean() for a, b in pairwise(ends)])

        temperature = means(self.temperature)
        humidity = air.relative_humidity(temperature, means(self.vapor_pressure))
        full = humidity > 1.0
        notes = self.notes
        if np.any(humidity > 1.0 + 1e-9):
            notes += (
                f"In {int(full.sum())} of 12 months the mean vapor pressure lies above saturation (over ice in "
                "frost); those months are taken as saturated.",
            )
        return MonthlyClimate(temperature, np.where(full, 1.0, humidity), self.name, notes)
