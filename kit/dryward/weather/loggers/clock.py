"""Dates as loggers write them, in any order, and the clock they were written by."""

import re
from datetime import UTC, datetime, timedelta, timezone
from itertools import pairwise

from dryward.checks import BadFile

ORDERS = ("ymd", "mdy", "dmy")
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_CLOCK = r"(?:(?:T|,?\s+|:)(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*([AaPp])?\.?(?:[Mm]\.?)?)?"
_ZONE = r"\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?"
_NUMERIC = re.compile(rf"(\d{{1,4}})[./-](\d{{1,2}})[./-](\d{{1,4}}){_CLOCK}{_ZONE}")
_WORDS = re.compile(rf"(\d{{1,2}})[\s.-]*([A-Za-z]{{3,9}})[\s.,-]*(\d{{2,4}}){_CLOCK}{_ZONE}")
# Days since the last day of 1899, as spreadsheets count.
_SERIAL = re.compile(r"([2-6]\d{4})(?:[.,](\d+))?")
_SERIAL_START = datetime(1899, 12, 30)


def parts(text):
    """The numbers in a written date, before anyone says which is the day.

    Parameters
    ----------
    text : str
        Such as ``"3/4/2024 1:05 PM"``.

    Returns
    -------
    tuple or None
        Three numbers of the date as written, hour, minute, second, zone; None
        for anything else.

    Examples
    --------
    >>> parts("3/4/2024 1:05 PM")
    (3, 4, 2024, 13, 5, 0, None)
    """
    text = text.strip()
    match = _NUMERIC.fullmatch(text) or _WORDS.fullmatch(text)
    if not match:
        return _serial(text)
    a, b, c, hour, minute, second, half, zone = match.groups()
    if not b.isdigit():  # a month in words settles the order: day, month, year
        if b[:3].lower() not in _MONTHS:
            return None
        a, b, c = (4000 + int(c) if len(c) == 2 else int(c)), _MONTHS.index(b[:3].lower()) + 1, a
        a = a - 2000 if a >= 4000 else a
    hour = int(hour or 0)
    if half:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half in "pP" else 0)
    return int(a), int(b), int(c), hour, int(minute or 0), int(second or 0), zone


def _serial(text):
    match = _SERIAL.fullmatch(text)
    if not match:
        return None
    moment = _SERIAL_START + timedelta(days=float(f"{match[1]}.{match[2] or 0}"))
    moment = (moment + timedelta(seconds=0.5)).replace(microsecond=0)
    return moment.year, moment.month, moment.day, moment.hour, moment.minute, moment.second, None


def moment(found, order):
    """The time that some parts mean, in one order of the date.

    Parameters
    ----------
    found : tuple
        From `parts`.
    order : {"ymd", "mdy", "dmy"}
        A year of four digits in front always means year, month, day.

    Returns
    -------
    datetime or None
        None when there is no such day.

    Examples
    --------
    >>> moment(parts("3/4/2024 1:05 PM"), "dmy").month
    4
    """
    a, b, c, hour, minute, second, zone = found
    if a > 31:
        order = "ymd"
    year, month, day = {"ymd": (a, b, c), "mdy": (c, a, b), "dmy": (c, b, a)}[order]
    year += 2000 if year < 100 else 0
    if not 1970 <= year <= 2100:
        return None
    if hour > 24 or (hour == 24 and (minute or second)):
        return None
    try:
        at = datetime(year, month, day, hour % 24, minute, second)
    except ValueError:
        return None
    at += timedelta(days=1) if hour == 24 else timedelta()
    return at if zone is None else at.replace(tzinfo=_zone(zone))


def _zone(text):
    if text in ("Z", "UTC", "GMT"):
        return UTC
    sign = -1 if text[0] == "-" else 1
    return timezone(sign * timedelta(hours=min(int(text[1:3]), 23), minutes=min(int(text[-2:]), 59)))


def likely_order(found):
    """Which order of day, month and year the dates are written in.

    Parameters
    ----------
    found : sequence of tuple
        From `parts`, in the order of the file.

    Returns
    -------
    tuple of str
        The order, and why.

    Raises
    ------
    BadFile
        When no order makes dates of them all.

    Examples
    --------
    >>> likely_order([parts("13/4/2024"), parts("14/4/2024")])
    ('dmy', 'only so is every date a date')
    """
    if all(f[0] > 31 for f in found):
        return "ymd", "the year stands first"
    read = {order: [t.replace(tzinfo=None) for f in found if (t := moment(f, order))] for order in ORDERS}
    most = max(map(len, read.values()))
    fits = {}
    for order, times in read.items():
        # A stray line below the readings may hold anything.
        if len(times) == most and most > 0.9 * len(found):
            steps = sorted(abs((b - a).total_seconds()) for a, b in pairwise(times))
            # Read in the right order, time runs on in even steps.
            middle = steps[len(steps) // 2] if steps else 0.0
            fits[order] = (sum(1 for s in steps if s > 86400 * 1.5 + 2 * middle), sum(steps))
    if not fits:
        raise BadFile("The dates are not understood in any order of day, month and year.")
    if len(fits) == 1:
        return next(iter(fits)), "only so is every date a date"
    best = min(fits, key=fits.get)
    if sorted(fits.values())[0] < sorted(fits.values())[1]:
        return best, "only so does time run on in even steps"
    return ("mdy" if "mdy" in fits else best), "not sure: day and month can be swapped"


def clock_change(before, after, interval):
    """Whether the clock was put forward or back between two rows.

    Parameters
    ----------
    before, after : datetime
        Two rows that follow each other.
    interval : float
        The usual step between rows [s], above 0.

    Returns
    -------
    int
        1 forward (to daylight saving time), -1 back, 0 neither.

    Notes
    -----
    A change is a step one hour too long or too short, up to four in the
    morning of a Sunday on which clocks are changed somewhere.  A row that is
    missing in just that hour looks the same.

    Examples
    --------
    >>> clock_change(datetime(2024, 11, 3, 1, 30), datetime(2024, 11, 3, 1, 0), 1800)
    -1
    """
    if after.weekday() != 6 or after.hour > 4 or interval > 7200:
        return 0
    surplus = (after - before).total_seconds() - interval
    for way, days in _CHANGES.items():
        first, last = days.get(after.month, (0, -1))
        if first <= after.day <= last and abs(surplus - 3600 * way) < 61:
            return way
    return 0


# Days of the month between which the Sunday of the change falls, by month:
# North America, Europe, southern Australia and New Zealand.  From memory.
_CHANGES = {
    1: {3: (8, 31), 9: (24, 30), 10: (1, 7)},
    -1: {11: (1, 7), 10: (25, 31), 4: (1, 7)},
}
