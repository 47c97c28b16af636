"""What is around the assembly: air, months, hours, and the air indoors.

``Air``, ``MonthlyClimate`` and ``HourlyWeather`` are the three ways to say
what the weather is.  ``read_epw`` reads a weather file, ``demo`` gives an
invented year, ``colder`` makes a cold winter's year of one, ``indoor`` has the
rules for room air, ``loggers`` the readings somebody took in a real roof.  The
readers of files load when first used.
"""

from importlib import import_module
from typing import TYPE_CHECKING

from dryward.air import Air
from dryward.weather import indoor
from dryward.weather.climate import DAYS, YEAR, HourlyWeather, MonthlyClimate, colder
from dryward.weather.places import demo, demo_climate, demos

if TYPE_CHECKING:
    from dryward.weather.epw import read_epw

__all__ = [
    "Air",
    "MonthlyClimate",
    "HourlyWeather",
    "DAYS",
    "YEAR",
    "read_epw",
    "demo",
    "demos",
    "demo_climate",
    "colder",
    "indoor",
    "loggers",
]


def __getattr__(name: str) -> object:
    if name == "loggers":
        return import_module("dryward.weather.loggers")
    if name == "read_epw":
        return import_module("dryward.weather.epw").read_epw
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
