"""Water in wood and mold on it: the sorption curve, the limits of wood, the mold index and its formulas."""

import numpy as np

from dryward.building import codes, library
from dryward.building.library import humidity_of_wood, wood_moisture
from dryward.checks import Floats
from dryward.evidence.table import Answers, Row
from dryward.physics import mold
from dryward.units import DAY, HOUR, from_si


def _library_moisture(row: Row) -> float:
    """Moisture content [%] of a library wood, read on its own points."""
    wood = library.material(row.text("item"))
    return 100 * wood.water_content(row.given("humidity")) / wood.density


_WOOD: Answers = {
    "moisture": lambda row: 100 * float(wood_moisture(row.given("humidity"), row.given("temperature"))),
    "humidity": lambda row: 100 * humidity_of_wood(row.given("moisture"), row.given("temperature")),
    "library moisture": _library_moisture,
    "pore humidity": lambda row: 100 * codes.wood_pore_humidity_limit(row.given("temperature")),
    "limit": lambda row: 100 * codes.required(row.text("item")),
}


_WEEK = int(7 * DAY / HOUR)  # hours


def _air(row: Row) -> tuple[float, float]:
    return row.given("temperature"), row.given("humidity")


def _weeks_of(count: float, row: Row) -> Floats:
    """The index through so many weeks of the row's air."""
    temperature, humidity = _air(row)
    hours = round(count * _WEEK)
    return mold.index(np.full(hours, temperature), np.full(hours, humidity), row.text("sensitivity"))


def _weeks_until(row: Row) -> float | str:
    there = np.flatnonzero(_weeks_of(104, row) >= row.given("level"))
    return (there[0] + 1) / _WEEK if there.size else "never"


def _decline(row: Row) -> float:
    """Change an hour between two hours of dry air, after an index of 3."""
    first, last = int(row.given("from")), int(row.given("to"))
    dry = mold.index(np.full(last, 20.0), np.full(last, 0.3), start=3.0)
    return (dry[last - 1] - (dry[first - 1] if first else 3.0)) / (last - first)


def _highest(row: Row) -> float:
    return mold.highest_index(*_air(row), row.text("sensitivity") or row.text("species"))


_MOLD: Answers = {
    "critical": lambda row: from_si(mold.critical_humidity(row.given("temperature")), "%"),
    "start": lambda row: mold.weeks_to_start(*_air(row), row.text("species")),
    "sight": lambda row: mold.weeks_to_sight(*_air(row), row.text("species")),
    "speed": lambda row: mold.speed_when_visible(*_air(row), row.text("species")),
    "highest": _highest,
    "weeks until": _weeks_until,
    "index after": lambda row: _weeks_of(row.given("weeks"), row)[-1],
    "decline": _decline,
}

#: How each kind of row is computed, by topic.
TOPICS = {"wood": _WOOD, "mold": _MOLD}
