"""The mold index: its formulas, its classes, and whole runs of steady air."""

import numpy as np

from dryward.evidence import table
from dryward.physics import mold
from dryward.units import DAY, HOUR, from_si

_WEEK = int(7 * DAY / HOUR)  # hours


def _air(row) -> tuple[float, float]:
    return row.given("temperature"), row.given("humidity")


def _weeks_of(count, row):
    """The index through so many weeks of the row's air."""
    temperature, humidity = _air(row)
    hours = round(count * _WEEK)
    return mold.index(np.full(hours, temperature), np.full(hours, humidity), row.text("sensitivity"))


def _weeks_until(row):
    there = np.flatnonzero(_weeks_of(104, row) >= row.given("level"))
    return (there[0] + 1) / _WEEK if there.size else "never"


def _decline(row):
    """Change an hour between two hours of dry air, after an index of 3."""
    first, last = int(row.given("from")), int(row.given("to"))
    dry = mold.index(np.full(last, 20.0), np.full(last, 0.3), start=3.0)
    return (dry[last - 1] - (dry[first - 1] if first else 3.0)) / (last - first)


def _highest(row):
    return mold.highest_index(*_air(row), row.text("sensitivity") or row.text("species"))


_ANSWERS = {
    "critical": lambda row: from_si(mold.critical_humidity(row.given("temperature")), "%"),
    "start": lambda row: mold.weeks_to_start(*_air(row), row.text("species")),
    "sight": lambda row: mold.weeks_to_sight(*_air(row), row.text("species")),
    "speed": lambda row: mold.speed_when_visible(*_air(row), row.text("species")),
    "highest": _highest,
    "weeks until": _weeks_until,
    "index after": lambda row: _weeks_of(row.given("weeks"), row)[-1],
    "decline": _decline,
}


def checks():
    """The checks of this topic, computed now.

    Yields
    ------
    Check

    Raises
    ------
    BadFile
        When the table cannot be read or a row cannot be computed.
    """
    return table.answer("mold", _ANSWERS)
