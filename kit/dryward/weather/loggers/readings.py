"""Reads a logger's file: in SI, on standard time, one record for each place."""

from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import numpy as np

from dryward.checks import BadFile
from dryward.units import to_si
from dryward.weather.loggers import clock, sheet
from dryward.weather.loggers.assumptions import PLACES
from dryward.weather.loggers.guessing import date_parts, place_in
from dryward.weather.loggers.guessing import guess as guessed
from dryward.weather.loggers.record import Readings, Record, saturation

# What a sensor can show; anything beyond is an error code [SI].
_CAN_BE = {
    "temperature": (-60.0, 95.0),
    "dew point": (-80.0, 95.0),
    "relative humidity": (0.0, 1.1),
    "moisture content": (0.0, 200.0),
    "rain": (0.0, 0.5),
}


def read(path, guess=None, place=None):
    """The readings in a CSV file from any logger.

    Parameters
    ----------
    path : path
    guess : Guess, optional
        What the file is, where the reader's own guess is wrong; see
        `Guess.change` and `Guess.column`.
    place : str, optional
        Where the sensor was, for columns that do not say it.

    Returns
    -------
    Readings
        In SI and standard time, rising; a row that stands twice is read once.

    Raises
    ------
    BadFile
        One sentence that says what is wrong, and where.

    Notes
    -----
    Humidity sensors are taken to show relative humidity over liquid water in
    frost too, as most do; the vapor pressure is worked out so.

    Examples
    --------
    >>> from dryward.weather.loggers import sample
    >>> with sample("messy-semicolon") as path:
    ...     readings = read(path, place="cavity")
    >>> readings["cavity"].interval
    3600.0
    """
    name = Path(path).name
    guess = guess or guessed(path)
    rows = sheet.lines(path)
    table = sheet.cells(name, rows, guess.delimiter)[guess.header_lines :]
    notes, kept, times = [], [], []
    width = max(c.number for c in guess.columns if c.unit) if any(c.unit for c in guess.columns) else 0
    if table and len(table[-1]) < width:
        table[-1] = ["cut off"]  # a last line without all its cells is not trusted
    for number, row in enumerate(table, start=guess.header_lines + 1):
        found = date_parts(row, guess.columns)
        at = clock.moment(found, guess.date_order) if found else None
        if at is None:
            if any(row):
                notes.append(number)
            continue
        kept.append(row)
        times.append(at)
    if len(kept) < 2:
        raise BadFile(f"{name} has {len(kept)} readings with a date that is understood so; at least 2 are needed.")
    notes = _left_out(name, notes, rows)
    times = _standard(times, guess, notes, name)
    series = {c: _series(c, kept, guess.decimal, notes, name) for c in guess.columns if c.unit}
    order, times = _ordered(times, notes, name)
    fallback = place or place_in(name.lower()) or "cavity"
    records = _records({c: values[order] for c, values in series.items()}, times, fallback, name, notes)
    return Readings(records, guess, tuple(notes))


def _left_out(name, numbers, rows):
    if not numbers:
        return []
    last = len(rows)
    if numbers == [last]:
        return [f"{name}: the last line is cut off or no reading, and left out."]
    some = ", ".join(str(n) for n in numbers[:5]) + (" and more" if len(numbers) > 5 else "")
    return [f"{name}: lines without a date are left out: {some}."]


def _standard(times, guess, notes, name):
    """Naive standard time for each row."""
    aware = [t for t in times if t.tzinfo is not None]
    if aware:
        zone = min(t.utcoffset() for t in aware)
        hours = zone.total_seconds() / 3600
        notes.append(f"{name}: times carry their zone and are put on UTC{hours:+g} h.")
        times = [t if t.tzinfo is None else (t - t.utcoffset() + zone).replace(tzinfo=None) for t in times]
    stamps = np.array(times, dtype="datetime64[s]")
    if guess.clock == "daylight saving time":
        return stamps - np.timedelta64(3600, "s")
    if guess.clock == "standard time":
        return stamps
    steps = np.diff(stamps).astype(float)
    interval = float(np.median(steps[steps > 0])) if np.any(steps > 0) else 0.0
    changes = [(i + 1, way) for i, (a, b) in enumerate(pairwise(times))
               if (way := clock.clock_change(a, b, interval))]  # fmt: skip
    ahead = np.zeros(stamps.size, dtype=bool)
    # Before a step back and after a step ahead the clock runs an hour ahead.
    if changes and changes[0][1] < 0:
        ahead[: changes[0][0]] = True
    for row, way in changes:
        ahead[row:] = way > 0
    notes.append(f"{name}: rows in daylight saving time, put on standard time: {int(ahead.sum())}.")
    return stamps - np.where(ahead, np.timedelta64(3600, "s"), np.timedelta64(0, "s"))


def _series(column, rows, decimal, notes, name):
    i = column.number - 1
    values = np.array([sheet.number(row[i], decimal) if i < len(row) else np.nan for row in rows])
    if column.quantity in ("temperature", "dew point", "relative humidity", "rain"):
        values = to_si(values, column.unit)
    low, high = _CAN_BE[column.quantity]
    known = np.isfinite(values)
    with np.errstate(invalid="ignore"):
        values = np.where(known & (values >= low) & (values <= high), values, np.nan)
    lost = int(np.sum(~np.isfinite(values)))
    if lost:
        title = f' "{column.header}"' if column.header else ""
        notes.append(f"{name}: column {column.number}{title} has no usable number in {lost} of {len(rows)} rows.")
    return values


def _ordered(times, notes, name):
    order = np.argsort(times, kind="stable")
    if np.any(np.diff(times) < np.timedelta64(0, "s")):
        notes.append(f"{name}: rows were not in the order of time and are sorted.")
    times = times[order]
    first = np.concatenate([[True], np.diff(times) > np.timedelta64(0, "s")])
    if not first.all():
        notes.append(f"{name}: rows for a time already read are left out: {int((~first).sum())}.")
    times = times[first]
    if times.size < 2:
        raise BadFile(f"{name} has one time only; at least 2 are needed.")
    steps = np.diff(times).astype(float)
    gaps = steps[steps > 1.5 * np.median(steps)]
    if gaps.size:
        notes.append(f"{name}: gaps: {gaps.size}, the longest of {gaps.max() / 3600:.1f} h.")
    return order[first], times


def _records(series, times, fallback, name, notes):
    places = {}
    for column, values in series.items():
        places.setdefault(column.place or fallback, {}).setdefault(column.quantity, values)
    found, gauge = [], None
    for place, values in places.items():
        temperature, humidity, dew = (values.get(q) for q in ("temperature", "relative humidity", "dew point"))
        nothing = np.full(times.size, np.nan)
        vapor = nothing
        if dew is not None:
            vapor = saturation(dew, over="water")
        elif temperature is not None and humidity is not None:
            over = np.minimum(humidity, 1.0)
            if np.nanmax(humidity, initial=0.0) > 1.0:
                notes.append(f"{name}: relative humidity above 100 % ({place}) is taken as 100 %.")
            vapor = over * saturation(temperature, over="water")
        if set(values) == {"rain"}:
            gauge = values["rain"]
            continue
        warmth = nothing if temperature is None else temperature
        found.append(Record(place, times, warmth, vapor, values.get("moisture content"), values.get("rain")))
    if gauge is not None and found and all(record.rain is None for record in found):
        found[-1] = replace(found[-1], rain=gauge)  # a lone rain gauge is kept with the last place
    if not found:
        raise BadFile(f"{name} has no column of temperature, humidity, dew point or wood moisture.")
    rank = {p: i for i, p in enumerate(PLACES)}
    return tuple(sorted(found, key=lambda record: rank.get(record.place, len(rank))))
