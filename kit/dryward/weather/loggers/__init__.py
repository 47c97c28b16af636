"""Readings from a real roof: read a logger's file, put it right, ask what it says.

``guess(path)`` says what a file seems to be, ``read(path, guess)`` reads it,
``diagnose(readings)`` names the cause the readings point to; ``sample(name)``
gives a file of our own making to try it on.
"""

from dryward.weather.loggers.comparison import Agreement, agreement, correlation, driving, lag, shared_clock
from dryward.weather.loggers.diagnosis import CAUSES, Diagnosis, diagnose, numbers
from dryward.weather.loggers.guessing import (
    CLOCKS,
    PLACES,
    QUANTITIES,
    UNITS,
    Column,
    Guess,
    guess,
    place_name,
    unit_as_read,
)
from dryward.weather.loggers.readings import Readings, Record, moisture_content, read
from dryward.weather.loggers.samples import names, sample

__all__ = [
    "guess",
    "read",
    "Guess",
    "Column",
    "Readings",
    "Record",
    "QUANTITIES",
    "UNITS",
    "unit_as_read",
    "place_name",
    "CLOCKS",
    "PLACES",
    "moisture_content",
    "shared_clock",
    "agreement",
    "Agreement",
    "correlation",
    "lag",
    "diagnose",
    "Diagnosis",
    "numbers",
    "driving",
    "CAUSES",
    "sample",
    "names",
]
