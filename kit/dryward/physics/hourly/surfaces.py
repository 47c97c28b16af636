"""The outer surface: sun, sky and wind on a slope, one number for each hour.

What reaches the surface does not depend on what the assembly does, so it is
prepared as arrays before the march.  Only what the surface radiates itself
is solved in the march, hour by hour, with the fourth power of its own
temperature.
"""

from dataclasses import dataclass
from functools import lru_cache
from types import ModuleType

import numpy as np

from dryward import air
from dryward.checks import Floats, OutOfRange, within
from dryward.language import message
from dryward.physics import sky
from dryward.storage import cached
from dryward.units import KELVIN, STEFAN_BOLTZMANN
from dryward.weather import HourlyWeather

#: Film of moving air, h = a + b v [W/(m2 K)] with v in m/s: ISO 6946 annex on surface resistances (from memory).
_FILM = 4.0, 4.0
#: The least a convective film can be [W/(m2 K)], still air: assumption.
_STILL = 2.0
#: A film resistance of 0 is taken as this [m2 K/W]: the surface has the temperature of the air.
NO_FILM = 1e-7


@dataclass(frozen=True)
class Surface:
    """How the outer surface meets sun, sky and wind.

    The slope is the assembly's.  Sun by the Hay-Davies model of pvlib; the
    part of the view that is not sky is ground at air temperature.  With
    `wind_film` the film is h = 4 + 4 v, otherwise the assembly's film less
    its radiant share at 10 degC.

    Source: ISO 6946, surface resistances with wind (from memory).
    """

    absorptance: float = 0.7  # share of the sun taken in [-], 0 to 1: pale about 0.3, dark 0.9
    emittance: float = 0.9  # long-wave emittance [-], 0 to 1; most building surfaces 0.9
    azimuth: float = 180.0  # the way the slope faces [degrees], 0 to 360: 0 north, 90 east, 180 south
    ground_reflectance: float = 0.2  # of what lies before it [-], 0 to 1
    wind_film: bool = True  # whether the film follows the wind; otherwise it is the assembly's

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "absorptance", within("Absorptance", self.absorptance, 0.0, 1.0))
        put(self, "emittance", within("Emittance", self.emittance, 0.0, 1.0))
        put(self, "azimuth", within("Azimuth", self.azimuth, 0.0, 360.0, "degrees"))
        put(self, "ground_reflectance", within("Ground reflectance", self.ground_reflectance, 0.0, 1.0))


@lru_cache(maxsize=32)
def irradiance(weather: HourlyWeather, slope: float, azimuth: float, ground_reflectance: float = 0.2) -> Floats:
    """Sun on a slope [W/m2]: mean over each hour, or at its moment where the weather's sun has one.

    The sun stands where it is at the weather's `sun_offset` from the end of
    the hour: in the middle, unless the file tells another moment.  Kept for
    each weather, so that a slider pays for it once, and in the user's cache.

    Source: pvlib: solar position after Michalsky's ephemeris form, transposition
    after Hay and Davies.
    """
    if weather.global_horizontal is None and weather.direct_normal is None and weather.diffuse_horizontal is None:
        return np.zeros(weather.hours)
    if weather.latitude is None or weather.longitude is None:
        raise OutOfRange(message("physics.no-place-of-sun"))
    found = _on_slope(weather, slope, azimuth, ground_reflectance)
    found.flags.writeable = False
    return found


@cached("pvlib", "pandas", "numpy")
def _on_slope(weather: HourlyWeather, slope: float, azimuth: float, ground_reflectance: float) -> Floats:
    import pandas
    import pvlib

    start = pandas.Timestamp("2001-01-01 01:00") + pandas.Timedelta(hours=weather.sun_offset - weather.time_zone)
    times = pandas.date_range(start, periods=weather.hours, freq="h", tz="UTC")
    poa = _transposed(pvlib, weather, times, slope, azimuth, ground_reflectance)
    return np.maximum(np.nan_to_num(np.asarray(poa)), 0.0)


def _transposed(
    pvlib: ModuleType,
    weather: HourlyWeather,
    times: object,
    slope: float,
    azimuth: float,
    ground_reflectance: float,
) -> Floats:
    sun = pvlib.solarposition.ephemeris(times, weather.latitude, weather.longitude)
    zenith, toward = sun["apparent_zenith"].to_numpy(), sun["azimuth"].to_numpy()
    height = np.maximum(np.cos(np.radians(zenith)), 0.0)
    direct, diffuse, total = weather.direct_normal, weather.diffuse_horizontal, weather.global_horizontal
    if diffuse is None or direct is None:
        if total is None:
            raise OutOfRange(message("physics.part-of-the-sun"))
        split = pvlib.irradiance.erbs(total, zenith, times)
        direct = np.nan_to_num(np.asarray(split["dni"]))
        diffuse = np.nan_to_num(np.asarray(split["dhi"]))
    if total is None:
        total = diffuse + direct * height
    parts = pvlib.irradiance.get_total_irradiance(
        slope,
        azimuth,
        zenith,
        toward,
        direct,
        total,
        diffuse,
        dni_extra=np.asarray(pvlib.irradiance.get_extra_radiation(times)),
        albedo=ground_reflectance,
        model="haydavies",
    )
    return parts["poa_global"]


def longwave(weather: HourlyWeather, slope: float) -> Floats:
    """Long-wave radiation that reaches a slope from sky and ground [W/m2].

    Where the weather does not give it, the sky is a clear one after
    `physics.sky`: on the cold side.
    """
    around = STEFAN_BOLTZMANN * (weather.temperature + KELVIN) ** 4
    down = weather.sky_longwave
    if down is None:
        dew = air.dew_point(np.maximum(weather.vapor_pressure, 1.0), over="water")
        down = STEFAN_BOLTZMANN * (np.asarray(sky.temperature(weather.temperature, dew)) + KELVIN) ** 4
    share = 0.5 * (1.0 + np.cos(np.radians(slope)))
    return share * down + (1.0 - share) * around


def film(weather: HourlyWeather, exterior_film: float, surface: Surface | None) -> Floats:
    """Convective film coefficient of the outer surface; without a `Surface` the whole film, radiation with it."""
    whole = 1.0 / max(exterior_film, NO_FILM)
    if surface is None:
        return np.full(weather.hours, whole)
    if surface.wind_film and weather.wind_speed is not None:
        return _FILM[0] + _FILM[1] * weather.wind_speed
    radiant = 4.0 * surface.emittance * STEFAN_BOLTZMANN * (KELVIN + 10.0) ** 3
    return np.full(weather.hours, max(whole - radiant, _STILL))
