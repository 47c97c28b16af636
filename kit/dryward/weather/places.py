"""Six invented places, named by their kind of climate only.

Nothing here was measured.  Each place is a handful of numbers (latitude,
mean temperature, how far the seasons swing, how cloudy it is); the year made
from them in `dryward.weather.generator` is smooth, repeats exactly and joins
on to itself, so that a lesson gives the same answer on every computer.

The monthly table ``data/demo-climates.csv`` is the output of `table`::

    python -c "from dryward.weather import places; print(places.table(), end='')"
"""

import csv
from functools import cache
from importlib.resources import files
from pathlib import Path

import numpy as np

from dryward import language
from dryward.checks import UnknownName
from dryward.language import called
from dryward.weather.climate import MONTHS, HourlyWeather, MonthlyClimate
from dryward.weather.generator import Place, year

_PLACES = {
    place.id: place
    for place in (
        Place(
            "very-cold", "very cold", 48.0, -6, 300, 3.5, 16.5, 203,
            (5.0, 6.5), (6.5, 3.2), (0.80, 0.68), (0.58, 0.45), (2.0, 3.0), 4.5, 1,
        ),
        Place(
            "cold", "cold", 43.0, -5, 220, 8.5, 13.5, 203,
            (4.0, 6.5), (5.5, 3.0), (0.80, 0.69), (0.68, 0.45), (2.2, 3.3), 4.2, 2,
        ),
        Place(
            "cool-marine", "cool marine", 47.5, -8, 40, 11.0, 7.0, 208,
            (2.5, 6.0), (2.8, 2.2), (0.85, 0.68), (0.90, 0.46), (2.2, 2.8), 3.4, 3,
        ),
        Place(
            "mixed-humid", "mixed humid", 38.0, -5, 80, 13.5, 11.8, 203,
            (5.0, 5.8), (5.0, 2.3), (0.67, 0.71), (0.56, 0.47), (2.4, 3.8), 3.5, 4,
        ),
        Place(
            "hot-humid", "hot humid", 29.5, -6, 10, 20.5, 8.3, 206,
            (5.0, 4.8), (4.3, 1.2), (0.75, 0.77), (0.52, 0.46), (2.6, 4.2), 3.3, 5,
        ),
        Place(
            "hot-dry", "hot dry", 33.0, -7, 340, 22.5, 10.3, 202,
            (7.0, 7.5), (2.8, 1.7), (0.42, 0.24), (0.28, 0.14), (2.6, 3.6), 2.9, 6,
        ),
    )
}  # fmt: skip


def place(id: str) -> Place:
    """The numbers behind one invented place."""
    try:
        return _PLACES[id]
    except (KeyError, TypeError):
        raise UnknownName("demo climate", id, _PLACES) from None


def demos() -> tuple[str, ...]:
    """The invented places.

    Returns
    -------
    tuple of str
        Their ids, from cold to hot.

    Examples
    --------
    >>> demos()[0]
    'very-cold'
    """
    return tuple(_PLACES)


def demo(id: str) -> HourlyWeather:
    """The invented year of a place, hour by hour.

    Parameters
    ----------
    id : str
        One of `demos`.

    Returns
    -------
    HourlyWeather
        8760 hours with temperature, vapor pressure, sun, sky and wind.

    Raises
    ------
    UnknownName
        When there is no such place.

    Notes
    -----
    Loads pvlib for the sun when it is first called on a machine, and then
    keeps it; `demo_climate` does not.

    Examples
    --------
    >>> demo("cold").hours
    8760
    """
    return _year(place(id), language.folder())


@cache
def _year(found: Place, spoken: Path | None) -> HourlyWeather:
    """The year, with its name and notes in the language in use."""
    return year(found)


@cache
def _climates(spoken: Path | None) -> dict[str, MonthlyClimate]:
    text = files("dryward.weather").joinpath("data/demo-climates.csv").read_text(encoding="utf-8")
    rows: dict[str, list[dict[str, str]]] = {}
    for row in csv.DictReader(line for line in text.splitlines() if not line.startswith("#")):
        rows.setdefault(row["place"], []).append(row)
    return {
        id: MonthlyClimate(
            np.array([float(row["temperature [degC]"]) for row in months]),
            np.array([float(row["relative_humidity [-]"]) for row in months]),
            called(place(id).name),
        )
        for id, months in rows.items()
    }


def demo_climate(id: str) -> MonthlyClimate:
    """The twelve monthly means of an invented place, from a small table: nothing is computed."""
    place(id)
    return _climates(language.folder())[id]


def table() -> str:
    """The monthly means of every invented place, as CSV text."""
    lines = [
        "# Invented. Made by places.table(); a test holds this file to it. Do not edit by hand.",
        "place,month,temperature [degC],relative_humidity [-],source,where,how_read",
    ]
    for id in demos():
        climate = demo(id).monthly()
        for month, warmth, share in zip(MONTHS, climate.temperature, climate.relative_humidity, strict=True):
            lines.append(f"{id},{month},{warmth:.3f},{share:.5f},invented for teaching,generator.year,computed")
    return "\n".join(lines) + "\n"
