"""Readings from a real roof: read a logger's file, put it right, ask what it says.

``guess(path)`` says what a file seems to be, ``read(path, guess)`` reads it,
``diagnose(readings)`` names the cause the readings point to; ``sample(name)``
gives a file of our own making to try it on.
"""

from dryward.weather.loggers.assumptions import CLOCKS, PLACES, QUANTITIES, UNITS, Column, Guess
from dryward.weather.loggers.compare import Agreement, agreement, correlation, lag, shared_clock
from dryward.weather.loggers.diagnosis import CAUSES, Diagnosis, diagnose, numbers
from dryward.weather.loggers.driving import driving
from dryward.weather.loggers.guessing import guess
from dryward.weather.loggers.readings import read
from dryward.weather.loggers.record import Readings, Record
from dryward.weather.loggers.samples import names, sample
from dryward.weather.loggers.wood_meter import moisture_content

__all__ = [
    "guess",
    "read",
    "Guess",
    "Column",
    "Readings",
    "Record",
    "QUANTITIES",
    "UNITS",
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
