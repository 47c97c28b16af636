"""Reads a logger's file: in SI, on standard time, one record for each place."""

from dataclasses import dataclass, field, replace
from itertools import pairwise
from pathlib import Path

import numpy as np

from dryward import air
from dryward.checks import BadFile, UnknownName, within
from dryward.units import to_si
from dryward.weather.loggers import sheet
from dryward.weather.loggers.guessing import PLACES, place_in, row_date
from dryward.weather.loggers.guessing import guess as guessed

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

    Humidity sensors are taken to show relative humidity over liquid water in
    frost too, as most do; the vapor pressure is worked out so.
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
        found = row_date(row, guess.columns)
        at = sheet.moment(found, guess.date_order) if found else None
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
               if (way := sheet.clock_change(a, b, interval))]  # fmt: skip
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


def saturation(temperature, over="auto"):
    """Saturation pressure where the temperature is known."""
    found = np.full(np.shape(temperature), np.nan)
    known = np.isfinite(temperature)
    found[known] = air.saturation_vapor_pressure(temperature[known], over=over)
    return found


@dataclass(frozen=True, eq=False)
class Record:
    """What was measured at one place."""

    place: str
    time: np.ndarray = field(repr=False)
    temperature: np.ndarray = field(repr=False)
    vapor_pressure: np.ndarray = field(repr=False)
    moisture_content: np.ndarray | None = field(default=None, repr=False)
    rain: np.ndarray | None = field(default=None, repr=False)

    @property
    def relative_humidity(self):
        """[-]; over ice below 0 degC, as everywhere in this kit."""
        return self.vapor_pressure / saturation(self.temperature)

    @property
    def dew_point(self):
        """Dew point, or frost point below 0 degC [degC]."""
        known = np.isfinite(self.vapor_pressure) & (self.vapor_pressure > 1.0)
        found = np.full(self.time.size, np.nan)
        found[known] = air.dew_point(self.vapor_pressure[known])
        return found

    @property
    def interval(self):
        """The usual step between rows [s]."""
        return float(np.median(np.diff(self.time)).astype("timedelta64[s]").astype(float))

    def corrected(self, temperature=0.0, relative_humidity=0.0, hours=0.0):
        """The record with a sensor's offset and a wrong clock put right."""
        warm = within("Temperature offset", temperature, -20.0, 20.0, "K")
        damp = within("Humidity offset", relative_humidity, -0.5, 0.5, "%")
        late = within("Time shift", hours, -24.0, 24.0, "h")
        vapor = np.maximum(self.relative_humidity + damp, 0.0) * saturation(self.temperature + warm)
        shift = np.timedelta64(round(late * 3600), "s")
        return replace(self, time=self.time + shift, temperature=self.temperature + warm, vapor_pressure=vapor)


@dataclass(frozen=True, eq=False)
class Readings:
    """A file, read: its records, what was assumed, what was odd."""

    records: tuple
    guess: object
    notes: tuple = ()

    @property
    def places(self):
        """The places there are records of."""
        return tuple(record.place for record in self.records)

    def __getitem__(self, place):
        for record in self.records:
            if record.place == place:
                return record
        raise UnknownName("place in the readings", place, self.places)


def moisture_content(reading, temperature, slope=1.0, offset=0.0):
    """Moisture content of wood from a pin meter's reading and the wood's temperature.

    Cold wood conducts less, so a meter set for room temperature reads too
    low in a cold roof: 15 on the dial at -7 degC is near 19 %.

    Good to about one point between 7 and 25 %; above fiber saturation (near
    28 %) a pin meter gives no number to trust.  Charts in meters' booklets
    differ from it, and from each other, by up to one and a half points.

    Source: Pfaff and Garrahan 1986, Forest Products Journal 36(3), 28, from memory;
    held against correction charts printed in two meters' manuals.
    """
    dial = within("Meter reading", reading, 0.0, 60.0, "mass %")
    t = within("Wood temperature", temperature, -35.0, 60.0, "°C")
    a = within("Slope of the species", slope, 0.5, 2.0)
    b = within("Offset of the species", offset, -10.0, 10.0, "mass %")
    at_room = (dial + 0.567 - 0.0260 * t + 0.000051 * t**2) / (0.881 * np.power(1.0056, t))
    found = (at_room - b) / a
    return float(found) if np.ndim(found) == 0 else found
