"""What the reader assumed about a file, and how a person puts it right."""

from dataclasses import dataclass, field, replace

from dryward.checks import OutOfRange, UnknownName
from dryward.weather.loggers import clock, sheet

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
CLOCKS = ("standard time", "daylight saving time", "changes with the season")
PLACES = ("indoors", "cavity", "outdoors")


@dataclass(frozen=True)
class Column:
    """One column of the file: what it holds, in which unit, and where it was measured.

    Parameters
    ----------
    number : int
        Counted from 1.
    header : str
        Its title in the file, empty when it has none.
    quantity : str
        One of `QUANTITIES`.
    unit : str
        One of `UNITS` of that quantity.
    place : str
        ``"indoors"``, ``"cavity"``, ``"outdoors"``, any other word, or empty.

    Examples
    --------
    >>> Column(2, "T").quantity
    'not used'
    """

    number: int
    header: str
    quantity: str = "not used"
    unit: str = ""
    place: str = ""


@dataclass(frozen=True)
class Guess:
    """Everything that was assumed; each part can be put right with `change`.

    Parameters
    ----------
    delimiter : str
        What stands between the cells.
    decimal : {".", ","}
        The decimal sign.
    header_lines : int
        Lines above the first reading.
    columns : tuple of Column
        What each column holds.
    date_order : {"ymd", "mdy", "dmy"}
    clock : str
        One of `CLOCKS`; readings are put on standard time.
    reasons : dict of str to str
        Why, for each part that was guessed.

    Examples
    --------
    >>> guess = Guess(",", ".", 1, (Column(1, "when", "date and time"), Column(2, "T", "temperature", "degC")), "ymd")
    >>> guess.column(2, unit="degF").columns[1].unit
    'degF'
    """

    delimiter: str
    decimal: str
    header_lines: int
    columns: tuple
    date_order: str
    clock: str = "standard time"
    reasons: dict = field(default_factory=dict)

    def __post_init__(self):
        for words, value, known in (
            ("delimiter", self.delimiter, sheet.DELIMITERS),
            ("decimal sign", self.decimal, (".", ",")),
            ("date order", self.date_order, clock.ORDERS),
            ("clock", self.clock, CLOCKS),
        ):
            if value not in known:
                raise UnknownName(words, value, known)
        if self.header_lines != int(self.header_lines) or not 0 <= self.header_lines <= 1000:
            raise OutOfRange(f"Number of header lines is {self.header_lines}; it must be 0 to 1000.")
        for column in self.columns:
            if column.quantity not in QUANTITIES:
                raise UnknownName("quantity", column.quantity, QUANTITIES)
            if column.quantity in UNITS and column.unit not in UNITS[column.quantity]:
                raise UnknownName(f"unit of {column.quantity}", column.unit, UNITS[column.quantity])

    def change(self, **parts):
        """The guess with some parts put right by a person."""
        if "columns" not in parts and {"delimiter"} & set(parts):
            raise OutOfRange("A new delimiter makes new columns; guess the file again with it.")
        reasons = {**self.reasons, **dict.fromkeys(parts, "set by you")}
        return replace(self, **parts, reasons=reasons)

    def column(self, number, **parts):
        """The guess with one column (counted from 1) put right: quantity, unit, place."""
        if not 1 <= number <= len(self.columns):
            raise OutOfRange(f"Column is {number}; it must be 1 to {len(self.columns)}.")
        old = self.columns[number - 1]
        quantity = parts.get("quantity", old.quantity)
        if quantity != old.quantity and "unit" not in parts:
            parts["unit"] = UNITS.get(quantity, ("",))[0]
        columns = (*self.columns[: number - 1], replace(old, **parts), *self.columns[number:])
        reasons = {**self.reasons, f"column {number}": "set by you"}
        return replace(self, columns=columns, reasons=reasons)

    def sentences(self):
        """What was assumed, one plain sentence for each part."""
        names = {";": "a semicolon", ",": "a comma", "\t": "a tab", "|": "an upright line"}
        dates = {"ymd": "year, month, day", "mdy": "month, day, year", "dmy": "day, month, year"}

        def why(part):
            return f" ({self.reasons[part]})" if self.reasons.get(part) else ""

        said = [
            f"Between the cells stands {names[self.delimiter]}{why('delimiter')}.",
            f'The decimal sign is "{self.decimal}"{why("decimal")}.',
            f"Above the first reading stand {self.header_lines or 'no'} line{'s' * (self.header_lines != 1)}"
            f"{why('header_lines')}.",
            f"Dates are {dates[self.date_order]}{why('date_order')}.",
            f"The clock shows {self.clock}{why('clock')}."
            if self.clock != CLOCKS[2]
            else f"The clock {self.clock}{why('clock')}.",
        ]
        for c in self.columns:
            where = f", {c.place}" if c.place else ""
            unit = f" in {c.unit}" if c.unit else ""
            title = f' "{c.header}"' if c.header else ""
            said.append(f"Column {c.number}{title} is {c.quantity}{unit}{where}{why(f'column {c.number}')}.")
        return tuple(said)
