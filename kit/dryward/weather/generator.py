"""How an invented year is made: a few cosines, the sun, and no dice.

Season        one cosine over the year.
Spells        warm, cold, cloudy and windy spells are sums of cosines with
              periods of 1 to 19 days.  Each goes a whole number of times into
              the year, so December joins January; the phases follow the
              golden section, shifted by the seed of the place.
Day           warmest near three in the afternoon; the swing shrinks under
              cloud.
Vapor         follows the daily mean temperature; it hardly changes over a
              day, and never passes 98 % of saturation (the rest is dew).
Sun           pvlib: sun position (NREL algorithm), clear sky after Ineichen
              and Perez; thinned by cloud after Kasten and Czeplak 1980; split
              into direct and diffuse after Erbs 1982.
Sky           emissivity of the clear sky after Brutsaert 1975, filled up to
              one by cloud (Crawford and Duchon 1999).  From memory.
Wind          mean wind times spells, stronger in the afternoon.
"""

from dataclasses import dataclass

import numpy as np

from dryward import air
from dryward.checks import Floats
from dryward.language import called, message
from dryward.storage import cached
from dryward.units import KELVIN, STEFAN_BOLTZMANN
from dryward.weather.climate import YEAR, HourlyWeather

# Cycles in a year: primes, so that the pattern of a spell does not come back.
_SLOW = (19, 31, 47, 79, 113)
_FAST = (*_SLOW, 211, 307)
_GOLDEN = (5**0.5 - 1) / 2
#: Share of saturation at which dew takes the rest [-].
_DEW = 0.98


@dataclass(frozen=True)
class Place:
    """The numbers that a year is made from; pairs are (mid-winter, mid-summer)."""

    id: str
    name: str
    latitude: float  # [deg]
    time_zone: float  # [h]; the longitude is the middle of the zone
    altitude: float  # [m]
    mean: float  # yearly mean temperature [degC]
    season: float  # half the difference between mid-summer and mid-winter [K]
    warmest_day: float  # day of the year
    swing: tuple[float, float]  # half the daily swing under a clear sky [K]
    spells: tuple[float, float]  # standard deviation of warm and cold spells [K]
    humidity: tuple[float, float]  # daily vapor pressure over saturation at the daily mean [-]
    cloud: tuple[float, float]  # middle cloud cover [-]
    haze: tuple[float, float]  # Linke turbidity [-]
    wind: float  # mean wind [m/s]
    seed: int  # shifts the spells, so that no two places have them together

    @property
    def longitude(self) -> float:
        """[deg]."""
        return 15.0 * self.time_zone


def _spells(hour: Floats, cycles: tuple[int, ...], seed: int) -> Floats:
    """A sum of cosines with mean 0 and variance 1."""
    phases = [(seed * _GOLDEN * (k + 1) + k * k * _GOLDEN) % 1.0 for k in range(len(cycles))]
    waves = [np.cos(2 * np.pi * (n * hour / YEAR + p)) for n, p in zip(cycles, phases, strict=True)]
    return np.sum(waves, axis=0) * np.sqrt(2 / len(cycles))


@cached("pvlib", "pandas", "numpy")
def _sun(place: Place, cloud: Floats, haze: Floats) -> tuple[Floats, Floats, Floats]:
    """Direct normal, diffuse and global sun [W/m2] in the middle of each hour."""
    import pandas
    import pvlib

    times = pandas.date_range("2001-01-01 00:30", periods=YEAR, freq="h", tz=f"Etc/GMT{-int(place.time_zone):+d}")
    sun = pvlib.solarposition.get_solarposition(times, place.latitude, place.longitude, place.altitude)
    mass = pvlib.atmosphere.get_absolute_airmass(
        pvlib.atmosphere.get_relative_airmass(sun["apparent_zenith"]), air.standard_pressure(place.altitude)
    )
    clear = pvlib.clearsky.ineichen(sun["apparent_zenith"], mass, haze, place.altitude)["ghi"].to_numpy()
    level = np.nan_to_num(clear) * (1 - 0.75 * cloud**3.4)  # Kasten and Czeplak
    zenith = sun["zenith"].to_numpy()
    direct = np.asarray(pvlib.irradiance.erbs(level, zenith, times.day_of_year.to_numpy())["dni"])
    height = np.maximum(np.cos(np.radians(zenith)), 0.0)
    return direct, level - direct * height, level


def year(place: Place) -> HourlyWeather:
    """The invented year of a place; each value is that of the middle of its hour.

    Kasten and Czeplak 1980, Solar Energy 24, 177; Erbs, Klein and Duffie
    1982, Solar Energy 28, 293 (by pvlib); Crawford and Duchon 1999, Journal
    of Applied Meteorology 38, 474, with Brutsaert 1975; from memory.
    """
    hour = np.arange(YEAR).astype(np.float64) + 0.5
    summer = np.cos(2 * np.pi * (hour / 24 - place.warmest_day) / 365)

    def through_year(pair: tuple[float, float]) -> Floats:
        winter_value, summer_value = pair
        return winter_value + (summer_value - winter_value) * (1 + summer) / 2

    cover = through_year(place.cloud)
    cloud = 1 / (1 + np.exp(-(np.log(cover / (1 - cover)) + 1.8 * _spells(hour, _FAST, place.seed + 20))))
    day = place.mean + place.season * summer + through_year(place.spells) * _spells(hour, _SLOW, place.seed)
    clock = 2 * np.pi * (hour % 24 - 15) / 24
    swing = through_year(place.swing) * (1 - 0.65 * cloud)
    temperature = day + swing * (0.92 * np.cos(clock) + 0.15 * np.cos(2 * clock))
    damp = through_year(place.humidity) * (1 + 0.25 * (cloud - cover))
    vapor = np.minimum(damp * air.saturation_vapor_pressure(day), _DEW * air.saturation_vapor_pressure(temperature))
    direct, diffuse, level = _sun(place, cloud, through_year(place.haze))
    kelvin = temperature + KELVIN
    clear_sky = 1.24 * (vapor / 100 / kelvin) ** (1 / 7)  # Brutsaert, vapor pressure in hPa
    longwave = (cloud + (1 - cloud) * clear_sky) * STEFAN_BOLTZMANN * kelvin**4
    gusts = np.exp(0.45 * _spells(hour, _FAST, place.seed + 40) - 0.1)
    wind = place.wind * gusts * (1 + 0.25 * np.cos(clock))
    return HourlyWeather(
        temperature,
        vapor,
        wind,
        direct,
        np.maximum(diffuse, 0.0),  # rounding at sunrise
        level,
        longwave,
        place.latitude,
        place.longitude,
        place.time_zone,
        place.altitude,
        called(place.name),
        (message("weather.invented-year"),),
    )
