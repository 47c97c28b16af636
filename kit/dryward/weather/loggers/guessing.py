"""What a logger's file is taken to be: every guess has a reason, and can be put right."""

import re
import statistics
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from datetime import datetime
from itertools import pairwise
from os import PathLike
from pathlib import Path
from typing import Any, Self

from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.language import called, message, sign
from dryward.units import written
from dryward.weather.loggers import sheet

QUANTITIES = (
    "date and time",
    "date",
    "time of day",
    "temperature",
    "relative humidity",
    "dew point",
    "moisture content",
    "rain",
    "not used",
)
UNITS = {
    "temperature": ("degC", "degF"),
    "dew point": ("degC", "degF"),
    "relative humidity": ("%", "fraction"),
    "moisture content": ("%",),
    "rain": ("mm", "in"),
}


def unit_as_read(unit: str) -> str:
    """A unit of a column as people read it.

    >>> unit_as_read("degC"), unit_as_read("fraction")
    ('°C', 'fraction')
    """
    return sign(unit) or called(unit)


CLOCKS = ("standard time", "daylight saving time", "changes with the season")
PLACES = ("indoors", "cavity", "outdoors")


def place_name(place: str) -> str:
    """What a place of the logger is called; any other word of a file stays.

    >>> place_name("cavity"), place_name("attic hatch")
    ('in the roof', 'attic hatch')
    """
    return message(f"loggers.place-{place}") if place in PLACES else called(place)


#: Why, for each part that was guessed.
Reasons = dict[str, str]


@dataclass(frozen=True)
class Column:
    """One column of the file: what it holds, in which unit, and where it was measured."""

    number: int  # counted from 1
    header: str
    quantity: str = "not used"  # one of `QUANTITIES`
    unit: str = ""  # one of `UNITS` of that quantity
    place: str = ""  # one of `PLACES`, any other word, or empty


@dataclass(frozen=True)
class Guess:
    """Everything that was assumed; each part can be put right with `change`."""

    delimiter: str
    decimal: str  # the decimal sign
    header_lines: int  # above the first reading
    columns: tuple[Column, ...]
    date_order: str  # one of `sheet.ORDERS`
    clock: str = "standard time"  # one of `CLOCKS`; readings are put on standard time
    reasons: Reasons = field(default_factory=dict)

    def __post_init__(self) -> None:
        for words, value, known in (
            ("delimiter", self.delimiter, sheet.DELIMITERS),
            ("decimal sign", self.decimal, (".", ",")),
            ("date order", self.date_order, sheet.ORDERS),
            ("clock", self.clock, CLOCKS),
        ):
            if value not in known:
                raise UnknownName(words, value, known)
        if self.header_lines != int(self.header_lines) or not 0 <= self.header_lines <= 1000:
            raise OutOfRange(message("loggers.header-lines", given=written(self.header_lines, "g")))
        for column in self.columns:
            if column.quantity not in QUANTITIES:
                raise UnknownName("quantity", column.quantity, QUANTITIES)
            if column.quantity in UNITS and column.unit not in UNITS[column.quantity]:
                raise UnknownName(f"unit of {column.quantity}", column.unit, UNITS[column.quantity])

    def change(self, **parts: Any) -> Self:
        """The guess with some parts put right by a person."""
        if "columns" not in parts and {"delimiter"} & set(parts):
            raise OutOfRange(message("loggers.new-delimiter"))
        reasons = {**self.reasons, **dict.fromkeys(parts, message("loggers.set-by-you"))}
        return replace(self, **parts, reasons=reasons)

    def column(
        self, number: int, *, quantity: str | None = None, unit: str | None = None, place: str | None = None
    ) -> Self:
        """The guess with one column (counted from 1) put right: quantity, unit, place."""
        if not 1 <= number <= len(self.columns):
            raise OutOfRange(message("loggers.no-such-column", number=number, count=len(self.columns)))
        old = self.columns[number - 1]
        holds = old.quantity if quantity is None else quantity
        if unit is None:
            unit = old.unit if holds == old.quantity else UNITS.get(holds, ("",))[0]
        new = replace(old, quantity=holds, unit=unit, place=old.place if place is None else place)
        columns = (*self.columns[: number - 1], new, *self.columns[number:])
        reasons = {**self.reasons, f"column {number}": message("loggers.set-by-you")}
        return replace(self, columns=columns, reasons=reasons)

    def sentences(self) -> tuple[str, ...]:
        """What was assumed, one plain sentence for each part."""
        said = [
            self._with_reason(message("loggers.between-cells", delimiter=_DELIMITERS[self.delimiter]), "delimiter"),
            self._with_reason(message("loggers.decimal-sign", sign=self.decimal), "decimal"),
            self._with_reason(message("loggers.lines-above", count=int(self.header_lines)), "header_lines"),
            self._with_reason(message("loggers.dates", order=self.date_order), "date_order"),
            self._with_reason(message("loggers.clock", clock=self.clock.partition(" ")[0]), "clock"),
        ]
        for column in self.columns:
            said.append(self._with_reason(_of_column(column), f"column {column.number}"))
        return tuple(said)

    def _with_reason(self, assumed: str, part: str) -> str:
        """A sentence of what was assumed for a part, with the reason where there is one."""
        why = self.reasons.get(part)
        return (
            message("loggers.assumed-why", what=assumed, why=why) if why else message("loggers.assumed", what=assumed)
        )


_DELIMITERS = {";": "semicolon", ",": "comma", "\t": "tab", "|": "line"}


def _of_column(column: Column) -> str:
    """What a column was taken to hold, without a full stop."""
    holds = message("loggers.holds", quantity=called(column.quantity))
    if column.unit:
        holds = message("loggers.holds-in", quantity=called(column.quantity), unit=unit_as_read(column.unit))
    if column.place:
        holds = message("loggers.holds-at", what=holds, place=place_name(column.place))
    if column.header:
        return message("loggers.column-with-title", number=column.number, title=column.header, holds=holds)
    return message("loggers.column", number=column.number, holds=holds)


_SAMPLE = 3000  # rows
_UNUSED = r"^(#|no\.?|nr\.?|index|record|id)$|batter|volt|lux|light|vapou?r pressure|vpd|abs|serial|event|signal"
_HEADERS = (
    (r"dew|taupunkt|ros[ée]e", "dew point"),
    (r"moisture content|\bmc\b|wood|holz", "moisture content"),
    (r"rain|precip|regen", "rain"),
    (r"\brh\b|humid|feucht|humidit|r\.h\.", "relative humidity"),
    (r"temp|°\s*[cf]|\bt\b|^t_", "temperature"),
    (r"date|datum|stamp|^time\b.*(gmt|utc)|zeitpunkt", "date"),
    (r"time|uhrzeit|zeit|heure|clock", "time of day"),
)
_WHERE = (
    (r"outdoor|outside|exterior|ambient|au(ß|ss)en|\bout\b|weather", "outdoors"),
    (r"cavity|sheathing|deck|rafter|ridge|roof|attic|wood|\bmc\b|vault", "cavity"),
    (r"indoor|inside|interior|room|innen|\bin\b|living|bed", "indoors"),
)


def guess(path: str | PathLike[str], **known: Any) -> Guess:
    """What a file of readings seems to be; parts of a `Guess` that a person knows are not guessed."""
    name, rows = Path(path).name, sheet.lines(path)
    unknown = set(known) - {"delimiter", "decimal", "header_lines", "columns", "date_order", "clock"}
    if unknown:
        raise UnknownName("part of a guess", unknown.pop(), ("delimiter", "decimal", "header_lines", "date_order"))
    reasons = dict.fromkeys(known, message("loggers.set-by-you"))
    delimiter = known.get("delimiter") or sheet.likely_delimiter(rows)
    if delimiter is None:
        raise BadFile(message("loggers.no-table", file=name))
    table = sheet.cells(name, rows, delimiter)
    first = known.get("header_lines")
    if first is None:
        first = next((i for i, row in enumerate(table) if _is_reading(row)), None)
        if first is None:
            raise BadFile(message("loggers.no-reading", file=name))
    # What the columns are shows in the first rows; dates are looked at in all.
    body = [row for row in table[first : first + _SAMPLE] if _is_reading(row)]
    if len(body) < 2:
        raise BadFile(message("loggers.too-few", file=name, count=len(body)))
    width = max(map(len, body))
    header = _header(table[:first], width)
    decimal = known.get("decimal")
    if decimal is None:
        decimal = _decimal(body)
    columns = known.get("columns") or _columns(header, body, decimal, reasons)
    order = known.get("date_order")
    if order is None:
        dates = [p for row in table[first:] if (p := row_date(row, columns))]
        if not dates:
            raise BadFile(message("loggers.no-dates", file=name))
        order, reasons["date_order"] = sheet.likely_order(name, dates)
    else:
        dates = [p for row in table[first:] if (p := row_date(row, columns))]
    fixed = re.search(r"(GMT|UTC) ?[+-]?\d{0,2}", " ".join(header))
    if fixed and "clock" not in known:
        known["clock"], reasons["clock"] = CLOCKS[0], message("loggers.fixed-clock", title=fixed[0])
    watch = known.get("clock") or _clock([t for p in dates if (t := sheet.moment(p, order)) is not None], reasons)
    return Guess(delimiter, decimal, first, tuple(columns), order, watch, reasons)


def place_in(words: str) -> str:
    """Where a sensor was, from the title of a column or the name of a file; empty where they do not say."""
    return next((place for pattern, place in _WHERE if re.search(pattern, words.lower())), "")


def row_date(row: list[str], columns: Iterable[Column]) -> sheet.DateParts | None:
    """The date in one row, from one column or from two."""
    text = [
        row[c.number - 1]
        for kind in ("date and time", "date", "time of day")
        for c in columns
        if c.quantity == kind and c.number <= len(row)
    ]
    return sheet.date_parts(" ".join(text)) if text else None


def _is_reading(row: list[str]) -> bool:
    dated = any(sheet.date_parts(cell) and not re.fullmatch(r"\d{5}", cell) for cell in row[:4])
    dated = dated or any(sheet.date_parts(f"{a} {b}") for a, b in pairwise(row[:4]))
    numbers = sum(1 for cell in row if not _is_nan(sheet.number(cell)) or not _is_nan(sheet.number(cell, ",")))
    return dated and numbers >= 1


def _is_nan(value: float) -> bool:
    return value != value


def _header(above: list[list[str]], width: int) -> list[str]:
    for row in reversed(above):
        if len(row) >= max(2, width - 1) and sum(bool(c) for c in row) >= 2:
            return [*row, *[""] * width][:width]
    return [""] * width


def _decimal(body: list[list[str]]) -> str:
    text = [cell for row in body[:500] for cell in row if not sheet.date_parts(cell)]
    commas = sum(bool(re.fullmatch(r"[+-]?\d+,\d+\D{0,4}", cell)) for cell in text)
    points = sum(bool(re.fullmatch(r"[+-]?\d+\.\d+\D{0,4}", cell)) for cell in text)
    return "," if commas > points else "."


def _columns(header: list[str], body: list[list[str]], decimal: str, reasons: Reasons) -> list[Column]:
    columns: list[Column] = []
    for i, title in enumerate(header):
        cells = [row[i] for row in body if i < len(row)]
        values = [v for cell in cells if not _is_nan(v := sheet.number(cell, decimal))]
        quantity = _quantity(title, cells, values, columns)
        place = place_in(title)
        column = Column(i + 1, title[:80], quantity, "", place if quantity in UNITS else "")
        columns.append(replace(column, unit=_unit(column, cells, values, reasons)))
        if not title and quantity in UNITS:
            reasons[f"column {i + 1}"] = message("loggers.no-title")
    columns = _one_unit(columns, reasons)
    if not any(c.quantity == "date and time" for c in columns) and not any(
        c.quantity == "time of day" for c in columns
    ):
        columns = [replace(c, quantity="date and time") if c.quantity == "date" else c for c in columns]
    return columns


def _one_unit(columns: list[Column], reasons: Reasons) -> list[Column]:
    """Temperatures without a written unit in that of the others: a logger writes one unit in a file."""
    degrees = [c for c in columns if c.quantity in ("temperature", "dew point")]
    bare = [c for c in degrees if f"column {c.number}" in reasons]
    written = {c.unit for c in degrees if c not in bare}
    # Numbers too warm for Celsius are seen indoors first; the same file's cold ones could be either.
    unit = written.pop() if len(written) == 1 else "degF" if any(c.unit == "degF" for c in bare) else "degC"
    changed = {c.number for c in bare if c.unit != unit}
    for number in changed:
        reasons[f"column {number}"] = message("loggers.unit-of-the-others")
    return [replace(c, unit=unit) if c.number in changed else c for c in columns]


def _quantity(title: str, cells: list[str], values: list[float], before: list[Column]) -> str:
    low = title.lower().strip()
    dated = [sheet.date_parts(cell) for cell in cells[:50]]
    taken = {c.quantity for c in before}
    if re.search(_UNUSED, low):
        return "not used"
    if sum(bool(d) for d in dated) > len(dated) / 2 and not (
        values and not re.search("date|time", low) and len(values) > len(cells) / 2
    ):
        if taken & {"date", "date and time"}:
            return "not used"
        return "date and time" if any(re.search(r"[:T]\d|^\d+\.\d+$", c) for c in cells[:50]) else "date"
    if sum(bool(sheet.date_parts(f"2024-01-01 {cell}")) for cell in cells[:50]) > len(dated) / 2 and ":" in "".join(
        cells[:5]
    ):
        return "not used" if "time of day" in taken or "date and time" in taken else "time of day"
    if len(values) < 2:
        return "not used"
    for pattern, quantity in _HEADERS:
        if re.search(pattern, low) and quantity in UNITS:
            return quantity
    if low:
        return "not used"
    # No title: temperature comes first, as a rule, then humidity.
    if "temperature" not in taken:
        return "temperature"
    steps = {round(b - a, 6) for a, b in pairwise(values)}
    if "relative humidity" not in taken and len(steps) > 1 and min(values) >= 0 and max(values) <= 105:
        return "relative humidity"
    return "not used"


def _unit(column: Column, cells: list[str], values: list[float], reasons: Reasons) -> str:
    choices, low = UNITS.get(column.quantity, ("",)), column.header.lower()
    part = f"column {column.number}"
    if column.quantity in ("temperature", "dew point"):
        words = low + " " + (cells[0].lower() if cells else "")
        if re.search(r"°\s*f|[([]f[])]|deg ?f|fahrenheit|[_ ,]f\b|\d\s*f$", words):
            return "degF"
        if re.search(r"°\s*c|[([]c[])]|deg ?c|celsius|[_ ,]c\b|\d\s*c$", words):
            return "degC"
        warm = statistics.median(values) > 45 or max(values) > 75
        sure = warm or min(values) < -5
        reasons[part] = message("loggers.no-unit" if sure else "loggers.no-unit-unsure")
        return "degF" if warm else "degC"
    if column.quantity == "relative humidity":
        if values and max(values) <= 1.05 and max(values) > 0:
            reasons[part] = message("loggers.none-above-one")
            return "fraction"
        return "%"
    if column.quantity == "rain":
        return "in" if re.search(r"\bin\b|\(in|inch", low) else "mm"
    return choices[0]


def _clock(times: list[datetime], reasons: Reasons) -> str:
    if len(times) < 3 or any(t.tzinfo is not None for t in times):
        return CLOCKS[0]
    steps = [(b - a).total_seconds() for a, b in pairwise(times)]
    interval = statistics.median(s for s in steps if s > 0) if any(s > 0 for s in steps) else 0
    for a, b in pairwise(times):
        way = sheet.clock_change(a, b, interval) if interval else 0
        if way:
            reasons["clock"] = message("loggers.jumps-ahead" if way > 0 else "loggers.jumps-back", date=f"{b:%Y-%m-%d}")
            return CLOCKS[2]
    reasons["clock"] = message("loggers.no-jump")
    return CLOCKS[0]
