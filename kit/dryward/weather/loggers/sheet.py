"""A logger's file as text: its lines and cells, the numbers and dates in them, and the clock they were written by."""

import csv
import re
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime, timedelta, timezone, tzinfo
from itertools import pairwise
from os import PathLike
from pathlib import Path

from dryward.checks import BadFile
from dryward.language import message
from dryward.units import written

#: Larger than years of readings every minute are [bytes]; and rows.
LARGEST, MOST_ROWS = 40_000_000, 1_000_000
DELIMITERS = (";", "\t", "|", ",")
_CONTROL = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f]")
# What a spreadsheet would run when it opens the cell.
_FORMULA = re.compile(r"\s*(=|@|[+-]\s*[A-Za-z]+\s*[(!|])")


def lines(path: str | PathLike[str]) -> tuple[str, ...]:
    """The lines of a text file, in UTF-8, UTF-16 with its mark, or the Windows alphabet of western Europe."""
    name = Path(path).name
    try:
        with open(path, "rb") as file:
            raw = file.read(LARGEST + 1)
    except OSError as error:
        reason = error.strerror.lower() if error.strerror else message("loggers.unknown-reason")
        raise BadFile(message("loggers.cannot-be-opened", file=name, reason=reason)) from None
    if len(raw) > LARGEST:
        raise BadFile(message("loggers.too-large", file=name, most=written(LARGEST / 1e6, ".0f")))
    text = _decoded(raw)
    if text is None or _CONTROL.search(text):
        raise BadFile(message("loggers.no-text", file=name))
    found = text.splitlines()
    while found and not found[-1].strip():
        found.pop()
    if not found:
        raise BadFile(message("loggers.empty", file=name))
    if len(found) > MOST_ROWS:
        raise BadFile(message("loggers.too-many-lines", file=name, count=len(found), most=MOST_ROWS))
    return tuple(found)


def _decoded(raw: bytes) -> str | None:
    marked = raw.startswith((b"\xff\xfe", b"\xfe\xff"))
    alphabets = ("utf-16",) if marked else ("utf-8-sig", "cp1252")
    for alphabet in alphabets:
        try:
            return raw.decode(alphabet)
        except UnicodeDecodeError:
            continue
    return None


def cells(name: str, rows: Iterable[str], delimiter: str) -> list[list[str]]:
    """Each line cut into cells; one like a spreadsheet's formula is refused, for whoever opens it would run it."""
    found = []
    for number, line in enumerate(rows, start=1):
        try:
            row = [cell.strip() for cell in next(csv.reader([line], delimiter=delimiter), [])]
        except csv.Error:
            raise BadFile(message("loggers.cell-too-long", file=name, line=number)) from None
        for cell in row:
            if _FORMULA.match(cell):
                raise BadFile(message("loggers.formula", file=name, line=number, sign=cell.lstrip()[0]))
        found.append(row)
    return found


def likely_delimiter(rows: Sequence[str]) -> str | None:
    """The character that cuts the most lines into the same number of cells.

    Between equals the comma loses: where another one stands, it is a decimal
    comma.
    """
    best, score = None, 0.5
    sample = [row for row in rows[:3000] if row.strip()]
    for delimiter in DELIMITERS:
        counts: dict[int, int] = {}
        for row in sample:
            width = len(next(csv.reader([row[:5000]], delimiter=delimiter), []))
            counts[width] = counts.get(width, 0) + 1
        counts.pop(1, None)
        if counts:
            share = max(counts.values()) / len(sample)
            if share > score + 0.02:
                best, score = delimiter, share
    return best


def number(cell: str, decimal: str = ".") -> float:
    """The number in a cell, with or without a unit behind it; not a number where there is none."""
    match = _NUMBER[decimal].fullmatch(cell)
    return float(match[1].replace(",", ".")) if match else float("nan")


_NUMBER = {
    sign: re.compile(
        rf"([+-]?\d{{1,9}}(?:{re.escape(sign)}\d{{0,12}})?)\s*(?:°?\s*[CF]|%|% ?RH|mm|in|V|K)?", re.IGNORECASE
    )
    for sign in (".", ",")
}


ORDERS = ("ymd", "mdy", "dmy")
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_CLOCK = r"(?:(?:T|,?\s+|:)(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?\s*([AaPp])?\.?(?:[Mm]\.?)?)?"
_ZONE = r"\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2})?"
_NUMERIC = re.compile(rf"(\d{{1,4}})[./-](\d{{1,2}})[./-](\d{{1,4}}){_CLOCK}{_ZONE}")
_WORDS = re.compile(rf"(\d{{1,2}})[\s.-]*([A-Za-z]{{3,9}})[\s.,-]*(\d{{2,4}}){_CLOCK}{_ZONE}")
# Days since the last day of 1899, as spreadsheets count.
_SERIAL = re.compile(r"([2-6]\d{4})(?:[.,](\d+))?")
_SERIAL_START = datetime(1899, 12, 30)


#: Three numbers of a date as written, hour, minute, second, zone.
DateParts = tuple[int, int, int, int, int, int, str | None]


def date_parts(text: str) -> DateParts | None:
    """The numbers in a written date, before anyone says which is the day; None for anything else.

    >>> date_parts("3/4/2024 1:05 PM")
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


def _serial(text: str) -> DateParts | None:
    match = _SERIAL.fullmatch(text)
    if not match:
        return None
    moment = _SERIAL_START + timedelta(days=float(f"{match[1]}.{match[2] or 0}"))
    moment = (moment + timedelta(seconds=0.5)).replace(microsecond=0)
    return moment.year, moment.month, moment.day, moment.hour, moment.minute, moment.second, None


def moment(found: DateParts, order: str) -> datetime | None:
    """The time that some parts mean in one order of the date; None when there is no such day."""
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


def _zone(text: str) -> tzinfo:
    if text in ("Z", "UTC", "GMT"):
        return UTC
    sign = -1 if text[0] == "-" else 1
    return timezone(sign * timedelta(hours=min(int(text[1:3]), 23), minutes=min(int(text[-2:]), 59)))


def likely_order(name: str, found: Sequence[DateParts]) -> tuple[str, str]:
    """Which order of day, month and year the dates of a file of that name are written in, and why."""
    if all(f[0] > 31 for f in found):
        return "ymd", message("loggers.year-first")
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
        raise BadFile(message("loggers.order-not-understood", file=name))
    if len(fits) == 1:
        return next(iter(fits)), message("loggers.only-dates")
    best = min(fits, key=lambda order: fits[order])
    if sorted(fits.values())[0] < sorted(fits.values())[1]:
        return best, message("loggers.even-steps")
    return ("mdy" if "mdy" in fits else best), message("loggers.day-or-month")


def clock_change(before: datetime, after: datetime, interval: float) -> int:
    """Whether the clock was put forward (1) or back (-1) between two rows that follow each other, or neither (0).

    A change is a step one hour too long or too short, up to four in the
    morning of a Sunday on which clocks are changed somewhere.  A row that is
    missing in just that hour looks the same.
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
