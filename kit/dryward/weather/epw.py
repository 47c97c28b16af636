"""Reads an EPW weather file: a year of hours measured or modelled for a place.

The parsing is pvlib's.  What stands around it is what a real file needs: rows
that are missing, doubled or broken, codes for "not measured", a sentence for
each that says what was done, and the moment of its hour that the sun of the
file belongs to.
"""

import gzip
import io
import zlib
from dataclasses import dataclass
from os import PathLike
from pathlib import Path
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from dryward import air, units
from dryward.checks import BadFile, Floats, within
from dryward.language import called, message
from dryward.storage import cached
from dryward.weather import gaps
from dryward.weather.climate import DAYS, MIDDLE, MONTHS, SUN_OFFSETS, YEAR, HourlyWeather

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
#: Series by the name of their column; one that the file lacks is left out.
Series = dict[str, Floats]
Marks = dict[str, NDArray[np.bool_]]
_SUN = ("ghi", "dni", "dhi")
#: A dew point this far above the temperature is rounding, not a fault [K].
_ROUNDING = 1.0


def read_epw(path: str | PathLike[str], sun_offset: float | None = None) -> HourlyWeather:
    """The weather in an EPW file.

    Parameters
    ----------
    path : path
        A file of one year with one row for each hour, packed with gzip or not.
    sun_offset : float, optional
        The moment its sun belongs to, from the end of the hour [h], -1.5 to
        0.5; otherwise it is found from the data.

    Returns
    -------
    HourlyWeather
        8760 hours.  `notes` says which rows were missing, broken or marked
        as not measured, and that they were filled in, and which moment the
        sun belongs to where that is not the middle of the hour or could not
        be told.  A series that is mostly missing is None; sun and sky may be.

    Raises
    ------
    BadFile
        When the file is no such file, or lacks too many hours of temperature
        and humidity: one sentence that names the first place.
    OutOfRange
        For a moment out of range.

    Notes
    -----
    A row stands for the hour that *ends* at its time, in local standard time
    (hour 1 is midnight to 1 am).  The vapor pressure comes from the dew
    point over liquid water, as weather services give it in frost too; where
    the dew point is missing, from the relative humidity over water.  Gaps of
    at most 48 hours and 2 % of the year are filled by a straight line, for
    the sun by the same hour of the days around.  February 29 is left out.

    A file has the sun as the mean of the hour, for which the middle stands,
    or as it was in one moment.  Which, its own numbers tell: global sun is
    direct sun times the cosine of the zenith plus diffuse sun, and that closes
    best where the sun stood.  Another moment than the middle is taken where it
    closes at least 1.25 times better.

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
    if sun_offset is not None:
        sun_offset = within("Moment of the sun from the end of the hour", sun_offset, *SUN_OFFSETS, "h")
    name, lines = _text(path)
    site = _header(name, lines)
    rows, line_of, notes = _rows(name, lines)
    series = _parsed(rows, lines)
    bad = {column: ~((series[column] >= low) & (series[column] <= high)) for column, _, _, low, high in SERIES}
    _dew_point(name, series, bad, notes)
    for column, _, words, *_ in SERIES:
        if column == "relative_humidity":
            continue
        missing = np.flatnonzero(bad[column]).tolist()
        if not missing:
            continue
        first = _line(line_of[missing[0]]) if missing[0] in line_of else _when(missing[0])
        if gaps.can_be_filled(bad[column]):
            places = [_line(line_of[h]) if h in line_of else message("weather.no-row", hour=_when(h)) for h in missing]
            notes.append(message("weather.filled-in", file=name, what=called(words), places=gaps.named(places)))
            series[column] = gaps.filled(series[column], bad[column], by_day=column in _SUN)
        elif column in ("temp_air", "temp_dew"):
            raise BadFile(
                message(
                    "weather.lacks",
                    file=name,
                    what=called(words),
                    count=len(missing),
                    hours=YEAR,
                    first=first,
                    most=gaps.MOST,
                    run=gaps.RUN,
                )
            )
        else:
            notes.append(message("weather.left-out", file=name, what=called(words), count=len(missing), hours=YEAR))
            del series[column]
    _small_faults(name, series, notes)
    offset = _sun_offset(name, series, bad, site, sun_offset, notes)
    # Only the sun needs its moment.  Half an hour moves it by 7.5 degrees, so that the direct part is laid on the
    # wrong slope: the sum over a year is then another.  The other series, and the sun on the slope itself, may come
    # half an hour early or late: means and swings stay, and a roof takes hours to follow.
    return HourlyWeather(
        series["temp_air"],
        air.saturation_vapor_pressure(series["temp_dew"], over="water"),
        series.get("wind_speed"),
        series.get("dni"),
        series.get("dhi"),
        series.get("ghi"),
        series.get("ghi_infrared"),
        site.latitude,
        site.longitude,
        site.time_zone,
        site.altitude,
        site.name,
        tuple(notes),
        offset,
    )


def _parsed(rows: dict[int, list[str]], lines: list[str]) -> Series:
    """The series of the year by pvlib; hours without a row are not numbers."""
    from pvlib.iotools import read_epw as parse

    hours = sorted(rows)
    # A stray quotation mark would swallow the lines that follow.
    body = [",".join(rows[hour]).replace('"', "") for hour in hours]
    clean = [lines[0].replace('"', ""), *[""] * (HEADER - 2), "data", *body]
    table, _ = parse(io.StringIO("\n".join(clean) + "\n"), coerce_year=2001)
    series: Series = {}
    for column, *_ in SERIES:
        series[column] = np.full(YEAR, np.nan)
        series[column][hours] = table[column].to_numpy(dtype=float)
    return series


def _dew_point(name: str, series: Series, bad: Marks, notes: list[str]) -> None:
    """Where only the relative humidity was measured, the dew point that belongs to it."""
    use = bad["temp_dew"] & ~bad["temp_air"] & ~bad["relative_humidity"] & (series["relative_humidity"] > 1.0)
    if use.any():
        share = np.minimum(series["relative_humidity"][use], 100.0) / 100
        vapor = share * air.saturation_vapor_pressure(series["temp_air"][use], over="water")
        series["temp_dew"][use] = air.dew_point(vapor, over="water")
        bad["temp_dew"][use] = False
        notes.append(message("weather.dew-from-humidity", file=name, count=int(use.sum())))
    both = ~bad["temp_dew"] & ~bad["temp_air"]
    bad["temp_dew"] |= both & (series["temp_dew"] > series["temp_air"] + _ROUNDING)


def _small_faults(name: str, series: Series, notes: list[str]) -> None:
    """Rounding that would otherwise be refused: said, not hidden."""
    over = series["temp_dew"] > series["temp_air"]
    if over.any():
        series["temp_dew"] = np.minimum(series["temp_dew"], series["temp_air"])
        most = units.written(_ROUNDING, "g", "K")
        notes.append(message("weather.dew-lowered", file=name, most=most, count=int(over.sum())))
    for column in _SUN:
        values = series.get(column)
        if values is not None and np.any(values < 0):
            notes.append(message("weather.negative-sun", file=name))
        if values is not None:
            series[column] = np.maximum(values, 0.0)


# --- the text of a file ----------------------------------------------------------


def _text(path: str | PathLike[str]) -> tuple[str, list[str]]:
    """The lines of a file, packed with gzip or not."""
    name = Path(path).name
    try:
        with open(path, "rb") as file:
            # One byte more than allowed tells a file that is too large, packed or not.
            packed = file.read(2) == b"\x1f\x8b"
            file.seek(0)
            raw = (gzip.GzipFile(fileobj=file) if packed else file).read(LARGEST + 1)
    except OSError as error:
        cause = (error.strerror or message("weather.unknown-reason")).lower()
        raise BadFile(message("weather.cannot-be-opened", file=name, cause=cause)) from None
    except (EOFError, zlib.error):
        raise BadFile(message("weather.cut-off", file=name)) from None
    if len(raw) > LARGEST:
        raise BadFile(message("weather.too-large", file=name, most=units.written(LARGEST / 1e6, ".0f")))
    if b"\0" in raw:
        raise BadFile(message("weather.no-text", file=name))
    return name, raw.decode("utf-8-sig", errors="replace").splitlines()


class _Site(NamedTuple):
    """Where the file is from."""

    name: str
    latitude: float  # [deg], north positive
    longitude: float  # [deg], east positive
    time_zone: float  # ahead of UTC [h]
    altitude: float  # [m]


def _header(name: str, lines: list[str]) -> _Site:
    """What the eight lines above the data say about the place."""
    place = lines[0].split(",") if lines else [""]
    if place[0].strip().upper() != "LOCATION":
        raise BadFile(message("weather.first-line", file=name, word="LOCATION"))
    if len(lines) <= HEADER or not lines[HEADER - 1].upper().startswith("DATA PERIODS"):
        raise BadFile(message("weather.broken-header", file=name, line=HEADER, word="DATA PERIODS"))
    periods = lines[HEADER - 1].split(",")
    if len(periods) > 2 and periods[2].strip() not in ("1", ""):
        raise BadFile(message("weather.records-an-hour", file=name, count=periods[2].strip()[:10]))
    try:
        latitude, longitude, zone, altitude = (float(part) for part in place[6:10])
    except ValueError:
        raise BadFile(message("weather.four-numbers", file=name)) from None
    if not (abs(latitude) <= 90 and abs(longitude) <= 180 and abs(zone) <= 14 and -500 <= altitude <= 9000):
        numbers = {"latitude": latitude, "longitude": longitude, "zone": zone, "altitude": altitude}
        said = {key: units.written(value, "g", "m" if key == "altitude" else "") for key, value in numbers.items()}
        raise BadFile(message("weather.no-place-on-earth", file=name, **said))
    title = "".join(c for c in place[1] if c.isprintable()).strip()[:60]
    if title.lower() in ("", "-", "unknown"):
        title = Path(name).stem[:60]
    return _Site(title, latitude, longitude, zone, altitude)


def _whole(text: str, low: int, high: int) -> int | None:
    return int(text) if text.strip().isdecimal() and low <= int(text) <= high else None


def _hour_of_year(fields: list[str]) -> int | None:
    """Which hour of the year a row stands for, None for February 29, or -1 when it says no time."""
    month, hour = _whole(fields[1], 1, 12), _whole(fields[3], 1, 24)
    if month is None or hour is None:
        return -1
    if month == 2 and _whole(fields[2], 29, 29):
        return None
    day = _whole(fields[2], 1, int(DAYS[month - 1]))
    return -1 if day is None else (int(DAYS[: month - 1].sum()) + day - 1) * 24 + hour - 1


def _cell(text: str) -> str:
    """A number as text, or nothing where there is no finite one."""
    try:
        return text if np.isfinite(float(text)) else ""
    except ValueError:
        return ""


def _rows(name: str, lines: list[str]) -> tuple[dict[int, list[str]], dict[int, int], list[str]]:
    """The cells and the number of the line by hour of the year, and sentences about what was left out."""
    found: dict[int, list[str]] = {}
    line_of: dict[int, int] = {}
    broken: list[str] = []
    doubled: list[str] = []
    notes, leap = [], 0
    for number, line in enumerate(lines[HEADER:], start=HEADER + 1):
        if not line.strip():
            continue
        fields = line.split(",")[:_COLUMNS]
        place = _hour_of_year(fields) if len(fields) >= _NEEDED else -1
        if place is None:
            leap += 1
        elif place < 0:
            broken.append(_line(number))
        elif place in found:
            doubled.append(_line(number))
        else:
            for _, column, *_rest in SERIES:
                fields[column] = _cell(fields[column])
            found[place], line_of[place] = fields, number
    if len(found) < YEAR - gaps.MOST:
        facts = {"file": name, "count": len(found), "hours": YEAR, "most": gaps.MOST}
        first = broken[0] if broken else ""
        raise BadFile(message("weather.too-few-hours", **facts, first=first, broken=bool(broken)))
    if broken:
        notes.append(message("weather.not-understood", file=name, places=gaps.named(broken), count=len(broken)))
    if doubled:
        notes.append(message("weather.second-row", file=name, places=gaps.named(doubled), count=len(doubled)))
    if leap:
        notes.append(message("weather.leap-day", file=name))
    return found, line_of, notes


def _line(number: int) -> str:
    """A line of the file in words."""
    return message("weather.line", number=number)


def _when(hour: int) -> str:
    """The hour of the year in words."""
    day, clock = divmod(hour, 24)
    month = int(np.searchsorted(np.cumsum(DAYS), day, side="right"))
    facts = {"day": str(day - int(DAYS[:month].sum()) + 1), "hour": str(clock + 1)}
    return message(f"weather.hour-in-{MONTHS[month].lower()}", **facts)


# --- the moment the sun belongs to -------------------------------------------------

# Root mean square of global - direct x cos(zenith) - diffuse over the hours with direct sun, in the middle against the
# best moment.  Means of the hour: 1.00 times in four typical years of stations and in a month of one-minute readings
# made into means, at most 1.02 in invented years at 0 to 68 degrees with clouds of three minutes to three hours.
# Instants: 40 and 44 times in two years from satellites (38 W/m2 in the middle, 10 at the end of the hour, 0.9 at
# 0.18 h after it), 2.7 times in the one-minute readings at full hours, 1.2 times and more in the invented years even
# where every reading is off by 10 W/m2.
#: A moment that closes so many times better than another is the right one of the two [-].
CLEARLY = 1.25
#: Nearer to the middle than this it is the middle [h]; the sun goes 1.5 degrees meanwhile.
NEAR = 0.1
#: With fewer hours of direct sun a few odd ones decide.
LEAST = 100
_STEP = 0.25


@dataclass(frozen=True)
class SunHour:
    """The moment that was found, or why there is none."""

    #: Hours from the end of the hour to the moment; the middle where it was not told.
    offset: float
    #: Empty where it was told; else "missing" (a series, or sun), "noise" (no moment closes clearly better than
    #: another) or "outside" (the best one lies further from its hour than any convention).
    unclear: str = ""


def sun_hour(
    direct: Floats | None,
    diffuse: Floats | None,
    level: Floats | None,
    latitude: float,
    longitude: float,
    time_zone: float,
    known: NDArray[np.bool_] | bool = True,
) -> SunHour:
    """The moment of the hour with which direct, diffuse and global sun close best.

    Stations give the mean of the hour, which the sun of its middle stands for;
    satellites give an instant, near the hour's end or its start.  Global sun
    is direct sun times the cosine of the zenith plus diffuse sun, so the three
    series [W/m2] close only with the sun where it stood.  Another moment than
    the middle is taken only where it closes clearly better; hours that are
    not `known` tell nothing.
    """
    if direct is None or diffuse is None or level is None:
        return SunHour(MIDDLE, "missing")
    hours = np.flatnonzero((direct > 0) & known)
    if hours.size < LEAST:
        return SunHour(MIDDLE, "missing")
    rest = (level - diffuse)[hours]
    best, error, start, middle, end = _closed(hours, direct[hours], rest, latitude, longitude, time_zone)
    if middle >= CLEARLY * error and abs(best - MIDDLE) > NEAR:
        low, high = SUN_OFFSETS
        return SunHour(round(float(best), 2)) if low < best < high else SunHour(MIDDLE, "outside")
    return SunHour(MIDDLE, "" if min(start, end) >= CLEARLY * middle else "noise")


@cached("pvlib", "pandas", "numpy")
def _closed(
    hours: NDArray[np.int_], direct: Floats, rest: Floats, latitude: float, longitude: float, time_zone: float
) -> tuple[float, ...]:
    """The best moment [h]; how far direct sun is from the rest then, and at start, middle and end of the hour."""
    import pandas
    import pvlib

    end = pandas.Timestamp("2001-01-01 01:00") + pandas.to_timedelta(hours - time_zone, unit="h")
    end = pandas.DatetimeIndex(end, tz="UTC")

    def off(offset: float) -> float:
        sun = pvlib.solarposition.ephemeris(end + pandas.Timedelta(hours=offset), latitude, longitude)
        height = np.maximum(np.cos(np.radians(sun["apparent_zenith"].to_numpy())), 0.0)
        return np.sqrt(np.mean((rest - direct * height) ** 2))

    low, high = SUN_OFFSETS
    tried = np.arange(low, high + _STEP / 2, _STEP)
    errors = np.array([off(offset) for offset in tried])
    lowest = int(np.argmin(errors))
    best = tried[lowest]
    if 0 < lowest < tried.size - 1:
        # The square of the error is a parabola around its lowest point.
        before, there, after = errors[lowest - 1 : lowest + 2] ** 2
        best += 0.5 * _STEP * (before - after) / (before - 2 * there + after)
    return best, off(best), off(-1.0), off(MIDDLE), off(0.0)


def _sun_offset(name: str, series: Series, bad: Marks, site: _Site, asked: float | None, notes: list[str]) -> float:
    """The moment the sun belongs to, found or asked; what a reader should know of it is noted."""
    sun = [series.get(column) for column in ("dni", "dhi", "ghi")]
    if all(values is None for values in sun):
        return MIDDLE if asked is None else asked
    if asked is not None:
        if asked != MIDDLE:
            notes.append(message("weather.sun-as-asked", file=name, moment=_moment(asked)))
        return asked
    known = ~(bad["dni"] | bad["dhi"] | bad["ghi"])
    found = sun_hour(sun[0], sun[1], sun[2], site.latitude, site.longitude, site.time_zone, known)
    if found.unclear:
        notes.append(message("weather.sun-unclear", file=name, why=found.unclear))
    elif found.offset != MIDDLE:
        notes.append(message("weather.sun-of-a-moment", file=name, moment=_moment(found.offset)))
    return found.offset


def _moment(offset: float) -> str:
    """A moment of an hour in words."""
    near, edge = min(((0.0, "end"), (-1.0, "start")), key=lambda each: abs(offset - each[0]))
    minutes = round(60 * (offset - near))
    if abs(minutes) < 2:  # no nearer than that is it known
        return message("weather.edge-of-hour", edge=edge)
    return message("weather.minutes-from-edge", minutes=abs(minutes), after=minutes > 0, edge=edge)
