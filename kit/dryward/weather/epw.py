"""Reads an EPW weather file: a year of hours measured or modelled for a place.

The parsing is pvlib's.  What stands around it is what a real file needs: rows
that are missing, doubled or broken, codes for "not measured", and a sentence
for each that says what was done.
"""

import gzip
import io
import zlib
from pathlib import Path

import numpy as np

from dryward import air
from dryward.checks import BadFile
from dryward.weather import gaps
from dryward.weather.hourly import YEAR, HourlyWeather
from dryward.weather.monthly import DAYS, MONTHS

#: Larger than any year of hours is [bytes].
LARGEST = 30_000_000
_HEADER = 8
_COLUMNS = 35  # what the format has
_NEEDED = 22  # up to wind speed

# Column of pvlib, its place in a row, words, lowest and highest that can be.
# Every code for "not measured" (99.9, 999, 9999) lies above the highest.
_SERIES = (
    ("temp_air", 6, "temperature", -70.0, 70.0),
    ("temp_dew", 7, "dew point", -95.0, 70.0),
    ("relative_humidity", 8, "relative humidity", 0.0, 110.0),
    ("ghi_infrared", 12, "long-wave radiation from the sky", 30.0, 800.0),
    ("ghi", 13, "global sun", -5.0, 1500.0),
    ("dni", 14, "direct sun", -5.0, 1400.0),
    ("dhi", 15, "diffuse sun", -5.0, 1000.0),
    ("wind_speed", 21, "wind speed", 0.0, 60.0),
)
_SUN = ("ghi", "dni", "dhi")
#: A dew point this far above the temperature is rounding, not a fault [K].
_ROUNDING = 1.0


def _text(path):
    name = Path(path).name
    try:
        with open(path, "rb") as file:
            # One byte more than allowed tells a file that is too large, packed or not.
            packed = file.read(2) == b"\x1f\x8b"
            file.seek(0)
            raw = (gzip.GzipFile(fileobj=file) if packed else file).read(LARGEST + 1)
    except OSError as error:
        raise BadFile(f"{name} cannot be opened: {(error.strerror or 'unknown reason').lower()}.") from None
    except (EOFError, zlib.error):
        raise BadFile(f"{name} is cut off: the packed file ends too early.") from None
    if len(raw) > LARGEST:
        raise BadFile(f"{name} is too large; a weather file of one year is at most {LARGEST / 1e6:.0f} MB.")
    if b"\0" in raw:
        raise BadFile(f"{name} is not text, so it is no EPW weather file.")
    return name, raw.decode("utf-8-sig", errors="replace").splitlines()


def _header(name, lines):
    """Checks the eight lines above the data; gives the place."""
    place = lines[0].split(",") if lines else [""]
    if place[0].strip().upper() != "LOCATION":
        raise BadFile(f'{name} is no EPW weather file: its first line must begin with "LOCATION".')
    if len(lines) <= _HEADER or not lines[_HEADER - 1].upper().startswith("DATA PERIODS"):
        raise BadFile(f'{name} is cut off or has a broken header: its line {_HEADER} must begin with "DATA PERIODS".')
    periods = lines[_HEADER - 1].split(",")
    if len(periods) > 2 and periods[2].strip() not in ("1", ""):
        raise BadFile(f"{name} has {periods[2].strip()[:10]} records an hour; only files with one are understood.")
    try:
        latitude, longitude, zone, altitude = (float(part) for part in place[6:10])
    except ValueError:
        raise BadFile(f"{name}, line 1: latitude, longitude, time zone and altitude must be four numbers.") from None
    if not (abs(latitude) <= 90 and abs(longitude) <= 180 and abs(zone) <= 14 and -500 <= altitude <= 9000):
        raise BadFile(
            f"{name}, line 1: latitude {latitude:g}, longitude {longitude:g}, time zone {zone:g} and "
            f"altitude {altitude:g} m are no place on earth."
        )
    title = "".join(c for c in place[1] if c.isprintable()).strip()[:60]
    if title.lower() in ("", "-", "unknown"):
        title = Path(name).stem[:60]
    return title, latitude, longitude, zone, altitude


def _whole(text, low, high):
    return int(text) if text.strip().isdigit() and low <= int(text) <= high else None


def _hour_of_year(fields):
    """Which hour of the year a row stands for, None for February 29, or -1 when it says no time."""
    month, hour = _whole(fields[1], 1, 12), _whole(fields[3], 1, 24)
    if month is None or hour is None:
        return -1
    if month == 2 and _whole(fields[2], 29, 29):
        return None
    day = _whole(fields[2], 1, int(DAYS[month - 1]))
    return -1 if day is None else (int(DAYS[: month - 1].sum()) + day - 1) * 24 + hour - 1


def _cell(text):
    """A number as text, or nothing where there is no finite one."""
    try:
        return text if np.isfinite(float(text)) else ""
    except ValueError:
        return ""


def _rows(name, lines):
    """One clean row for each hour, its line in the file, and what was wrong."""
    rows, line_of, notes = {}, {}, []
    broken, doubled, leap = [], [], 0
    for number, line in enumerate(lines[_HEADER:], start=_HEADER + 1):
        if not line.strip():
            continue
        fields = line.split(",")[:_COLUMNS]
        place = _hour_of_year(fields) if len(fields) >= _NEEDED else -1
        if place is None:
            leap += 1
        elif place < 0:
            broken.append(f"line {number}")
        elif place in rows:
            doubled.append(f"line {number}")
        else:
            for _, column, *_rest in _SERIES:
                fields[column] = _cell(fields[column])
            rows[place], line_of[place] = fields, number
    if len(rows) < YEAR - gaps.MOST:
        first = f"; {broken[0]} is the first that is not understood" if broken else ""
        raise BadFile(f"{name} has {len(rows)} usable hours of {YEAR}; at most {gaps.MOST} may be missing{first}.")
    if broken:
        notes.append(f"{name}: {gaps.named(broken)} could not be understood and {_are(broken)} left out.")
    if doubled:
        notes.append(f"{name}: {gaps.named(doubled)} {_are(doubled)} a second row for an hour and left out.")
    if leap:
        notes.append(f"{name}: February 29 is left out.")
    return rows, line_of, notes


def _are(places):
    return "is" if len(places) == 1 else "are"


def _when(hour):
    day, clock = divmod(hour, 24)
    month = int(np.searchsorted(np.cumsum(DAYS), day, side="right"))
    return f"{MONTHS[month]} {day - int(DAYS[:month].sum()) + 1} hour {clock + 1}"


def _parsed(rows, lines):
    """The series of the year by pvlib; hours without a row are not numbers."""
    from pvlib.iotools import read_epw as parse

    hours = sorted(rows)
    clean = [*lines[:_HEADER], *(",".join(rows[hour]) for hour in hours)]
    table, _ = parse(io.StringIO("\n".join(clean) + "\n"), coerce_year=2001)
    series = {}
    for column, *_ in _SERIES:
        series[column] = np.full(YEAR, np.nan)
        series[column][hours] = table[column].to_numpy(dtype=float)
    return series


def read_epw(path):
    """The weather in an EPW file.

    Parameters
    ----------
    path : path
        A file of one year with one row for each hour, packed with gzip or not.

    Returns
    -------
    HourlyWeather
        8760 hours.  `notes` says which rows were missing, broken or marked
        as not measured, and that they were filled in.  A series that is
        mostly missing is None; sun and sky may be.

    Raises
    ------
    BadFile
        When the file is no such file, or lacks too many hours of temperature
        and humidity: one sentence that names the first place.

    Notes
    -----
    A row stands for the hour that *ends* at its time, in local standard time
    (hour 1 is midnight to 1 am).  The vapor pressure comes from the dew
    point over liquid water, as weather services give it in frost too; where
    the dew point is missing, from the relative humidity over water.  Gaps of
    at most 48 hours and 2 % of the year are filled by a straight line, for
    the sun by the same hour of the days around.  February 29 is left out.

    References
    ----------
    The columns, units and hours of the format as the documentation of
    pvlib's ``iotools.read_epw`` gives them; the codes from memory.

    Examples
    --------
    >>> read_epw("nowhere.epw")
    Traceback (most recent call last):
    dryward.checks.BadFile: nowhere.epw cannot be opened: no such file or directory.
    """
    name, lines = _text(path)
    title, *where = _header(name, lines)
    rows, line_of, notes = _rows(name, lines)
    series = _parsed(rows, lines)
    bad = {column: ~((series[column] >= low) & (series[column] <= high)) for column, _, _, low, high in _SERIES}
    _dew_point(name, series, bad, notes)
    for column, _, words, *_ in _SERIES:
        if column == "relative_humidity" or series[column] is None:
            continue
        missing = np.flatnonzero(bad[column])
        if not missing.size:
            continue
        first = f"line {line_of[missing[0]]}" if missing[0] in line_of else _when(missing[0])
        if gaps.can_be_filled(bad[column]):
            places = [f"line {line_of[h]}" if h in line_of else f"{_when(h)} (no row)" for h in missing]
            notes.append(f"{name}: {words} filled in from the hours around for {gaps.named(places)}.")
            series[column] = gaps.filled(series[column], bad[column], by_day=column in _SUN)
        elif column in ("temp_air", "temp_dew"):
            raise BadFile(
                f"{name} lacks {words} in {missing.size} of {YEAR} hours (first at {first}); at most {gaps.MOST}, "
                f"and {gaps.RUN} in a row, can be filled in."
            )
        else:
            notes.append(f"{name}: {words} is missing in {missing.size} of {YEAR} hours, so the file gives none.")
            series[column] = None
    _small_faults(name, series, notes)
    return HourlyWeather(
        series["temp_air"],
        air.saturation_vapor_pressure(series["temp_dew"], over="water"),
        series["wind_speed"],
        series["dni"],
        series["dhi"],
        series["ghi"],
        series["ghi_infrared"],
        *where,
        title,
        tuple(notes),
    )


def _dew_point(name, series, bad, notes):
    """Where only the relative humidity was measured, the dew point that belongs to it."""
    use = bad["temp_dew"] & ~bad["temp_air"] & ~bad["relative_humidity"] & (series["relative_humidity"] > 1.0)
    if use.any():
        share = np.minimum(series["relative_humidity"][use], 100.0) / 100
        vapor = share * air.saturation_vapor_pressure(series["temp_air"][use], over="water")
        series["temp_dew"][use] = air.dew_point(vapor, over="water")
        bad["temp_dew"][use] = False
        notes.append(f"{name}: dew point from the relative humidity in {int(use.sum())} hours without one.")
    both = ~bad["temp_dew"] & ~bad["temp_air"]
    bad["temp_dew"] |= both & (series["temp_dew"] > series["temp_air"] + _ROUNDING)


def _small_faults(name, series, notes):
    """Rounding that would otherwise be refused: said, not hidden."""
    over = series["temp_dew"] > series["temp_air"]
    if over.any():
        series["temp_dew"] = np.minimum(series["temp_dew"], series["temp_air"])
        notes.append(
            f"{name}: dew point up to {_ROUNDING:g} K above the temperature in {int(over.sum())} hours, lowered to it."
        )
    for column in _SUN:
        values = series[column]
        if values is not None and np.any(values < 0):
            notes.append(f"{name}: small negative readings of the sun at night taken as none.")
        if values is not None:
            series[column] = np.maximum(values, 0.0)
