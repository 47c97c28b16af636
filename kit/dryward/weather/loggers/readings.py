"""Reads a logger's file: in SI, on standard time, one record for each place."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from itertools import pairwise
from os import PathLike
from pathlib import Path
from typing import Self, overload

import numpy as np
from numpy.typing import NDArray

from dryward import air
from dryward.checks import BadFile, Floats, UnknownName, within
from dryward.language import listing, message
from dryward.units import number as shown
from dryward.units import to_si, written
from dryward.weather.loggers import sheet
from dryward.weather.loggers.guessing import PLACES, Column, Guess, place_in, place_name, row_date
from dryward.weather.loggers.guessing import guess as guessed

Times = NDArray[np.datetime64]


def saturation(temperature: Floats, over: str = "auto") -> Floats:
    """Saturation pressure where the temperature is known, not a number elsewhere."""
    found = np.full(np.shape(temperature), np.nan)
    known = np.isfinite(temperature)
    found[known] = air.saturation_vapor_pressure(temperature[known], over=over)
    return found


@dataclass(frozen=True, eq=False)
class Record:
    """What was measured at one place."""

    place: str
    time: Times = field(repr=False)  # standard time, rising
    temperature: Floats = field(repr=False)  # not a number where nothing was read
    vapor_pressure: Floats = field(repr=False)  # the same
    moisture_content: Floats | None = field(default=None, repr=False)  # of wood [mass %]
    rain: Floats | None = field(default=None, repr=False)  # since the row before [m]

    @property
    def relative_humidity(self) -> Floats:
        """[-]; over ice below 0 degC, as everywhere in this kit."""
        return self.vapor_pressure / saturation(self.temperature)

    @property
    def logged_humidity(self) -> Floats:
        """What the humidity sensor shows: over water, in frost too [-]."""
        return self.vapor_pressure / saturation(self.temperature, over="water")

    @property
    def dew_point(self) -> Floats:
        """Dew point, or frost point below 0 degC [degC]."""
        known = np.isfinite(self.vapor_pressure) & (self.vapor_pressure > 1.0)
        found = np.full(self.time.size, np.nan)
        found[known] = air.dew_point(self.vapor_pressure[known])
        return found

    @property
    def interval(self) -> float:
        """The usual step between rows [s]."""
        return float(np.median(np.diff(self.time)).astype("timedelta64[s]").astype(float))

    def corrected(self, temperature: float = 0.0, relative_humidity: float = 0.0, hours: float = 0.0) -> Self:
        """The record with a sensor's offsets [K] and [-] added, and its clock put ahead by so many hours."""
        warm = within("Temperature offset", temperature, -20.0, 20.0, "K")
        damp = within("Humidity offset", relative_humidity, -0.5, 0.5, "%")
        late = within("Time shift", hours, -24.0, 24.0, "h")
        # The offset is one of the sensor, so it is put right on what the sensor shows.
        vapor = np.maximum(self.logged_humidity + damp, 0.0) * saturation(self.temperature + warm, over="water")
        shift = np.timedelta64(round(late * 3600), "s")
        return replace(self, time=self.time + shift, temperature=self.temperature + warm, vapor_pressure=vapor)


@dataclass(frozen=True, eq=False)
class Readings:
    """A file, read: its records, what was assumed, what was odd."""

    records: tuple[Record, ...]  # one for each place
    guess: Guess
    notes: tuple[str, ...] = ()  # what was left out or filled, in sentences

    @property
    def places(self) -> tuple[str, ...]:
        """The places there are records of."""
        return tuple(record.place for record in self.records)

    def __getitem__(self, place: str) -> Record:
        for record in self.records:
            if record.place == place:
                return record
        raise UnknownName("place in the readings", place, self.places)


# What a sensor can show; anything beyond is an error code [SI].
_CAN_BE = {
    "temperature": (-60.0, 95.0),
    "dew point": (-80.0, 95.0),
    "relative humidity": (0.0, 1.1),
    "moisture content": (0.0, 200.0),
    "rain": (0.0, 0.5),
}


def read(path: str | PathLike[str], guess: Guess | None = None, place: str | None = None) -> Readings:
    """The readings in a CSV file from any logger.

    Humidity sensors are taken to show relative humidity over liquid water in
    frost too, as most do; the vapor pressure is worked out so.
    """
    name = Path(path).name
    guess = guess or guessed(path)
    rows = sheet.lines(path)
    table = sheet.cells(name, rows, guess.delimiter)[guess.header_lines :]
    undated: list[int] = []  # numbers of lines
    kept: list[list[str]] = []
    moments: list[datetime] = []
    width = max(c.number for c in guess.columns if c.unit) if any(c.unit for c in guess.columns) else 0
    if table and len(table[-1]) < width:
        table[-1] = ["cut off"]  # a last line without all its cells is not trusted
    for number, row in enumerate(table, start=guess.header_lines + 1):
        found = row_date(row, guess.columns)
        at = sheet.moment(found, guess.date_order) if found else None
        if at is None:
            if any(row):
                undated.append(number)
            continue
        kept.append(row)
        moments.append(at)
    if len(kept) < 2:
        raise BadFile(message("loggers.too-few-dated", file=name, count=len(kept)))
    notes = _left_out(name, undated, rows)
    times = _standard(moments, guess, notes, name)
    series = {c: _series(c, kept, guess.decimal, notes, name) for c in guess.columns if c.unit}
    order, times = _ordered(times, notes, name)
    fallback = place or place_in(name.lower()) or "cavity"
    records = _records({c: values[order] for c, values in series.items()}, times, fallback, name, notes)
    return Readings(records, guess, tuple(notes))


def _left_out(name: str, numbers: list[int], rows: Sequence[str]) -> list[str]:
    if not numbers:
        return []
    last = len(rows)
    if numbers == [last]:
        return [message("loggers.last-line-left-out", file=name)]
    some = listing([str(n) for n in numbers[:5]])
    return [message("loggers.lines-left-out", file=name, lines=some, more=len(numbers) > 5)]


def _standard(times: list[datetime], guess: Guess, notes: list[str], name: str) -> Times:
    """Naive standard time for each row."""
    aware = [t for t in times if t.tzinfo is not None]
    if aware:
        zone = min(t.utcoffset() or timedelta() for t in aware)
        hours = zone.total_seconds() / 3600
        notes.append(message("loggers.zone-of-times", file=name, hours=written(hours, "+g")))
        times = [
            t if t.tzinfo is None else (t - (t.utcoffset() or timedelta()) + zone).replace(tzinfo=None) for t in times
        ]
    stamps: Times = np.array(times, dtype="datetime64[s]")
    if guess.clock == "daylight saving time":
        return stamps - np.timedelta64(3600, "s")
    if guess.clock == "standard time":
        return stamps
    steps = np.diff(stamps).astype(float)
    interval = float(np.median(steps[steps > 0])) if np.any(steps > 0) else 0.0
    changes = [(i + 1, way) for i, (a, b) in enumerate(pairwise(times))
               if (way := sheet.clock_change(a, b, interval))]  # fmt: skip
    ahead = np.zeros(stamps.size, dtype=bool)
    # Before a step back and after a step ahead the clock runs an hour ahead.
    if changes and changes[0][1] < 0:
        ahead[: changes[0][0]] = True
    for row, way in changes:
        ahead[row:] = way > 0
    notes.append(message("loggers.daylight-rows", file=name, count=int(ahead.sum())))
    return stamps - np.where(ahead, np.timedelta64(3600, "s"), np.timedelta64(0, "s"))


def _series(column: Column, rows: list[list[str]], decimal: str, notes: list[str], name: str) -> Floats:
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
        facts = {"file": name, "number": column.number, "lost": lost, "rows": len(rows)}
        notes.append(
            message("loggers.no-usable-number-titled", title=column.header, **facts)
            if column.header
            else message("loggers.no-usable-number", **facts)
        )
    return values


def _ordered(times: Times, notes: list[str], name: str) -> tuple[NDArray[np.int_], Times]:
    order = np.argsort(times, kind="stable")
    if np.any(np.diff(times) < np.timedelta64(0, "s")):
        notes.append(message("loggers.rows-sorted", file=name))
    times = times[order]
    first = np.concatenate([[True], np.diff(times) > np.timedelta64(0, "s")])
    if not first.all():
        notes.append(message("loggers.rows-doubled", file=name, count=int((~first).sum())))
    times = times[first]
    if times.size < 2:
        raise BadFile(message("loggers.one-time", file=name))
    steps = np.diff(times).astype(float)
    gaps = steps[steps > 1.5 * np.median(steps)]
    if gaps.size:
        notes.append(message("loggers.gaps", file=name, count=gaps.size, hours=shown(gaps.max() / 3600, 1)))
    return order[first], times


def _records(
    series: dict[Column, Floats], times: Times, fallback: str, name: str, notes: list[str]
) -> tuple[Record, ...]:
    places: dict[str, dict[str, Floats]] = {}
    for column, numbers in series.items():
        places.setdefault(column.place or fallback, {}).setdefault(column.quantity, numbers)
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
                notes.append(message("loggers.above-saturation", file=name, place=place_name(place)))
            vapor = over * saturation(temperature, over="water")
        if set(values) == {"rain"}:
            gauge = values["rain"]
            continue
        warmth = nothing if temperature is None else temperature
        found.append(Record(place, times, warmth, vapor, values.get("moisture content"), values.get("rain")))
    if gauge is not None and found and all(record.rain is None for record in found):
        found[-1] = replace(found[-1], rain=gauge)  # a lone rain gauge is kept with the last place
    if not found:
        raise BadFile(message("loggers.no-measurement", file=name))
    rank = {p: i for i, p in enumerate(PLACES)}
    return tuple(sorted(found, key=lambda record: rank.get(record.place, len(rank))))


@overload
def moisture_content(reading: float, temperature: float, slope: float = 1.0, offset: float = 0.0) -> float: ...
@overload
def moisture_content(
    reading: float | Floats, temperature: Floats, slope: float = 1.0, offset: float = 0.0
) -> Floats: ...
def moisture_content(
    reading: float | Floats, temperature: float | Floats, slope: float = 1.0, offset: float = 0.0
) -> float | Floats:
    """Moisture content of wood from a pin meter's reading and the wood's temperature.

    Cold wood conducts less, so a meter set for room temperature reads too
    low in a cold roof: 15 on the dial at -7 degC is near 19 %.

    Good to about one point between 7 and 25 %; above fiber saturation (near
    28 %) a pin meter gives no number to trust.  Charts in meters' booklets
    differ from it, and from each other, by up to one and a half points.
    `slope` and `offset` are those of the species in the meter's booklet, 1
    and 0 for Douglas fir.

    Pfaff and Garrahan 1986, Forest Products Journal 36(3), 28, from memory;
    held against correction charts printed in two meters' manuals.
    """
    dial = within("Meter reading", reading, 0.0, 60.0, "mass %")
    t = within("Wood temperature", temperature, -35.0, 60.0, "degC")
    a = within("Slope of the species", slope, 0.5, 2.0)
    b = within("Offset of the species", offset, -10.0, 10.0, "mass %")
    at_room = (dial + 0.567 - 0.0260 * t + 0.000051 * t**2) / (0.881 * np.power(1.0056, t))
    found = (at_room - b) / a
    return float(found) if np.ndim(found) == 0 else found
