"""The text of an EPW file: what it is, where it is from, and its rows hour by hour."""

import gzip
import zlib
from pathlib import Path

import numpy as np

from dryward.checks import BadFile
from dryward.weather import gaps
from dryward.weather.hourly import YEAR
from dryward.weather.monthly import DAYS, MONTHS

#: Larger than any year of hours is [bytes].
LARGEST = 30_000_000
HEADER = 8
_COLUMNS = 35  # what the format has
_NEEDED = 22  # up to wind speed

# Column of pvlib, its place in a row, words, lowest and highest that can be.
# Every code for "not measured" (99.9, 999, 9999) lies above the highest.
SERIES = (
    ("temp_air", 6, "temperature", -70.0, 70.0),
    ("temp_dew", 7, "dew point", -95.0, 70.0),
    ("relative_humidity", 8, "relative humidity", 0.0, 110.0),
    ("ghi_infrared", 12, "long-wave radiation from the sky", 30.0, 800.0),
    ("ghi", 13, "global sun", -5.0, 1500.0),
    ("dni", 14, "direct sun", -5.0, 1400.0),
    ("dhi", 15, "diffuse sun", -5.0, 1000.0),
    ("wind_speed", 21, "wind speed", 0.0, 60.0),
)


def text(path):
    """The lines of a file, packed with gzip or not.

    Parameters
    ----------
    path : path

    Returns
    -------
    tuple of str and list of str
        The file's name and its lines.

    Raises
    ------
    BadFile
        When it cannot be opened, is cut off, too large, or not text.

    Examples
    --------
    >>> text("nowhere.epw")
    Traceback (most recent call last):
    dryward.checks.BadFile: nowhere.epw cannot be opened: no such file or directory.
    """
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


def header(name, lines):
    """What the eight lines above the data say about the place.

    Parameters
    ----------
    name : str
        Of the file.
    lines : list of str
        The whole file.

    Returns
    -------
    tuple
        Name of the place, latitude, longitude [deg], time zone [h], altitude [m].

    Raises
    ------
    BadFile
        When they are not those of an EPW file with one row an hour.

    Examples
    --------
    >>> header("a.epw", ["hello"])
    Traceback (most recent call last):
    dryward.checks.BadFile: a.epw is no EPW weather file: its first line must begin with "LOCATION".
    """
    place = lines[0].split(",") if lines else [""]
    if place[0].strip().upper() != "LOCATION":
        raise BadFile(f'{name} is no EPW weather file: its first line must begin with "LOCATION".')
    if len(lines) <= HEADER or not lines[HEADER - 1].upper().startswith("DATA PERIODS"):
        raise BadFile(f'{name} is cut off or has a broken header: its line {HEADER} must begin with "DATA PERIODS".')
    periods = lines[HEADER - 1].split(",")
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
    return int(text) if text.strip().isdecimal() and low <= int(text) <= high else None


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


def rows(name, lines):
    """One clean row for each hour of the year.

    Parameters
    ----------
    name : str
        Of the file.
    lines : list of str
        The whole file.

    Returns
    -------
    tuple
        The cells by hour of the year, the number of the line by hour of the
        year, and sentences about what was left out.

    Raises
    ------
    BadFile
        When too many hours have no row.

    Examples
    --------
    >>> rows("a.epw", ["x"] * 8)
    Traceback (most recent call last):
    dryward.checks.BadFile: a.epw has 0 usable hours of 8760; at most 175 may be missing.
    """
    found, line_of, notes = {}, {}, []
    broken, doubled, leap = [], [], 0
    for number, line in enumerate(lines[HEADER:], start=HEADER + 1):
        if not line.strip():
            continue
        fields = line.split(",")[:_COLUMNS]
        place = _hour_of_year(fields) if len(fields) >= _NEEDED else -1
        if place is None:
            leap += 1
        elif place < 0:
            broken.append(f"line {number}")
        elif place in found:
            doubled.append(f"line {number}")
        else:
            for _, column, *_rest in SERIES:
                fields[column] = _cell(fields[column])
            found[place], line_of[place] = fields, number
    if len(found) < YEAR - gaps.MOST:
        first = f"; {broken[0]} is the first that is not understood" if broken else ""
        raise BadFile(f"{name} has {len(found)} usable hours of {YEAR}; at most {gaps.MOST} may be missing{first}.")
    if broken:
        notes.append(f"{name}: {gaps.named(broken)} could not be understood and {_are(broken)} left out.")
    if doubled:
        notes.append(f"{name}: {gaps.named(doubled)} {_are(doubled)} a second row for an hour and left out.")
    if leap:
        notes.append(f"{name}: February 29 is left out.")
    return found, line_of, notes


def _are(places):
    return "is" if len(places) == 1 else "are"


def when(hour):
    """The hour of the year in words.

    Parameters
    ----------
    hour : int
        0 to 8759.

    Returns
    -------
    str

    Examples
    --------
    >>> when(0), when(8759)
    ('Jan 1 hour 1', 'Dec 31 hour 24')
    """
    day, clock = divmod(hour, 24)
    month = int(np.searchsorted(np.cumsum(DAYS), day, side="right"))
    return f"{MONTHS[month]} {day - int(DAYS[:month].sum()) + 1} hour {clock + 1}"
