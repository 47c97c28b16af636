"""Reads an EPW weather file: a year of hours measured or modelled for a place.

The parsing is pvlib's.  What stands around it is what a real file needs: rows
that are missing, doubled or broken, codes for "not measured", and a sentence
for each that says what was done.
"""

import io

import numpy as np

from dryward import air
from dryward.checks import BadFile, within
from dryward.weather import epw_rows, gaps, sun_hour
from dryward.weather.epw_rows import HEADER, SERIES, when
from dryward.weather.hourly import MIDDLE, SUN_OFFSETS, YEAR, HourlyWeather

_SUN = ("ghi", "dni", "dhi")
#: A dew point this far above the temperature is rounding, not a fault [K].
_ROUNDING = 1.0


def _parsed(rows, lines):
    """The series of the year by pvlib; hours without a row are not numbers."""
    from pvlib.iotools import read_epw as parse

    hours = sorted(rows)
    # A stray quotation mark would swallow the lines that follow.
    body = [",".join(rows[hour]).replace('"', "") for hour in hours]
    clean = [lines[0].replace('"', ""), *[""] * (HEADER - 2), "data", *body]
    table, _ = parse(io.StringIO("\n".join(clean) + "\n"), coerce_year=2001)
    series = {}
    for column, *_ in SERIES:
        series[column] = np.full(YEAR, np.nan)
        series[column][hours] = table[column].to_numpy(dtype=float)
    return series


def read_epw(path, sun_offset=None):
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
    closes at least 1.25 times better (`weather.sun_hour`).

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
    name, lines = epw_rows.text(path)
    title, *where = epw_rows.header(name, lines)
    rows, line_of, notes = epw_rows.rows(name, lines)
    series = _parsed(rows, lines)
    bad = {column: ~((series[column] >= low) & (series[column] <= high)) for column, _, _, low, high in SERIES}
    _dew_point(name, series, bad, notes)
    for column, _, words, *_ in SERIES:
        if column == "relative_humidity" or series[column] is None:
            continue
        missing = np.flatnonzero(bad[column])
        if not missing.size:
            continue
        first = f"line {line_of[missing[0]]}" if missing[0] in line_of else when(missing[0])
        if gaps.can_be_filled(bad[column]):
            places = [f"line {line_of[h]}" if h in line_of else f"{when(h)} (no row)" for h in missing]
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
    sun_offset = _sun_offset(name, series, bad, where, sun_offset, notes)
    # Only the sun needs its moment.  Half an hour moves it by 7.5 degrees, so that the direct part is laid on the
    # wrong slope: the sum over a year is then another.  The other series, and the sun on the slope itself, may come
    # half an hour early or late: means and swings stay, and a roof takes hours to follow.
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
        sun_offset,
    )


def _sun_offset(name, series, bad, where, asked, notes):
    """The moment the sun belongs to, found or asked; what a reader should know of it is noted."""
    sun = [series[column] for column in ("dni", "dhi", "ghi")]
    if all(values is None for values in sun):
        return MIDDLE if asked is None else asked
    if asked is not None:
        if asked != MIDDLE:
            notes.append(f"{name}: its sun is taken as that of {_moment(asked)}, as asked.")
        return asked
    known = ~(bad["dni"] | bad["dhi"] | bad["ghi"])
    latitude, longitude, time_zone, _ = where
    found = sun_hour.found(*sun, latitude, longitude, time_zone, known)
    if found.unclear:
        notes.append(f"{name}: {_UNCLEAR[found.unclear]}; it is taken as the mean of the hour.")
    elif found.offset != MIDDLE:
        notes.append(f"{name}: its sun is not the mean of the hour but that of {_moment(found.offset)}.")
    return found.offset


_UNCLEAR = {
    "missing": "which moment its sun belongs to cannot be told without global, direct and diffuse sun",
    "noise": "which moment its sun belongs to cannot be told, for global, direct and diffuse sun do not agree",
    "outside": "its sun fits no moment near its hour, so its clock or its place may be wrong",
}


def _moment(offset):
    """A moment of an hour in words."""
    near, words = min(((0.0, "end"), (-1.0, "start")), key=lambda edge: abs(offset - edge[0]))
    minutes = round(60 * (offset - near))
    if abs(minutes) < 2:  # no nearer than that is it known
        return f"the {words} of each hour"
    return f"{abs(minutes)} minutes {'after' if minutes > 0 else 'before'} the {words} of each hour"


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
