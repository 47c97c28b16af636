"""Reads an EPW weather file: a year of hours measured or modelled for a place.

The parsing is pvlib's.  What stands around it is what a real file needs: rows
that are missing, doubled or broken, codes for "not measured", and a sentence
for each that says what was done.
"""

import io

import numpy as np

from dryward import air
from dryward.checks import BadFile
from dryward.weather import epw_rows, gaps
from dryward.weather.epw_rows import HEADER, SERIES, when
from dryward.weather.hourly import YEAR, HourlyWeather

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
