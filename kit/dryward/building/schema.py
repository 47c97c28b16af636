"""Tables read with care: TOML that a person wrote, and CSV files of the package.

What is wrong is said with its place.  Every row of the package says where its
numbers come from; a row that does not is refused.  Lines of a CSV that begin
with ``#`` are remarks.
"""

import csv
import dataclasses
import difflib
import re
import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any, TypeAlias

from dryward import units
from dryward.checks import BadFile, OutOfRange, subject
from dryward.language import listing, message
from dryward.units import SHOWN

MOST_POINTS, LONGEST_NAME, LONGEST_TEXT = 200, 80, 4000
#: Words that every substance may carry.
ORIGIN = ("id", "name", "category", "source", "where", "how_read", "ranges")
_SPANS = ("conductivity", "vapor_permeability", "sorption", "permeance")  # what a range may be given for


# A key of ten and more parts: none of ours has more than four, and the TOML
# reader's memory grows with the square of their number.
_LONG_KEY = re.compile(
    r"""(?<![\w-])(?:(?:[\w-]++|"(?:[^"\\\n]|\\.)*+"|'[^'\n]*+')[ \t]*+\.[ \t]*+){10}""",
)


def toml(text: str, name: str) -> dict[str, object]:
    """The tables of a TOML text, or a BadFile with the line and what is wrong there."""
    if _LONG_KEY.search(text):
        raise BadFile(message("building.nested-too-deeply", file=name))
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise BadFile(message("building.nested-too-deeply", file=name)) from None
    except tomllib.TOMLDecodeError as error:  # says line and column
        said = str(error)[:120].rstrip(".")
        raise BadFile(message("building.no-toml", file=name, said=said)) from None
    except ValueError:
        raise BadFile(message("building.too-many-digits", file=name)) from None


#: One row of a table of the package: a text for each column, and the number of its line.
Row: TypeAlias = dict[str, Any]


@dataclass(frozen=True)
class Entry:
    """What an entry of a job is called and what it may be, for a file, a field, the command line and Python alike."""

    called: str
    #: One of `units.QUANTITIES`; empty for words.
    quantity: str = ""
    #: Range in SI; otherwise that of the quantity.
    low: float | None = None
    high: float | None = None
    #: The words or whole numbers that it may be; any in the range where there are none.
    known: tuple[str | int, ...] = ()
    #: Whether it is a whole number.
    whole: bool = False
    #: Unit of a number without one in a field of a page, US and SI; otherwise the one its quantity is shown in.
    bare: tuple[str, str] | None = None

    def shown_in(self, system: str) -> str | None:
        """Unit of the field on a page in a unit system."""
        return self.bare[system == "si"] if self.bare else SHOWN[system].get(self.quantity)

    def taken(self, value: Any, system: str | None = None) -> Any:
        """The value in SI, when it may be; a text without a unit is meant in that of the page's field."""
        if self.known:
            if self.whole and isinstance(value, str):
                value = units.quantity(value, "number")
            if value not in self.known:
                known = listing([str(each) for each in self.known])
                facts = {"what": subject(self.called), "known": known, "given": repr(str(value)[:40])}
                raise OutOfRange(message("building.one-of", **facts))
            return int(value) if self.whole and isinstance(value, float) else value
        bare = self.shown_in(system) if system else None
        found = units.checked(self.called, value, self.quantity, self.low, self.high, bare=bare)
        return int(found) if self.whole else found


def entry(
    called: str, quantity: str = "", low: float | None = None, high: float | None = None, **more: Any
) -> dict[str, Entry]:
    """Metadata of a field of a dataclass that `settle` checks; as in `Entry`."""
    return {"entry": Entry(called, quantity, low, high, **more)}


@cache
def entries(kind: Any) -> dict[str, Entry]:
    """The entries of a dataclass by field."""
    return {each.name: each.metadata["entry"] for each in dataclasses.fields(kind) if "entry" in each.metadata}


def settle(thing: Any) -> None:
    """Bring every entry of a frozen dataclass to SI, or refuse it in one sentence."""
    for name, each in entries(thing.__class__).items():
        object.__setattr__(thing, name, each.taken(getattr(thing, name)))


def unknown_word(place: str, word: str, near: str = "") -> BadFile:
    """A word that a table of a file does not have, and one that may be meant."""
    if near:
        return BadFile(message("building.word-nearly", place=place, word=word[:40], near=near))
    return BadFile(message("building.no-such-word", place=place, word=word[:40]))


class Table:
    """One table of the file and its place, read word by word."""

    def __init__(self, place: str, table: object, words: Sequence[str]) -> None:
        if not isinstance(table, dict):
            raise BadFile(message("building.no-table", place=place))
        for key in table:
            if key not in words:
                near = difflib.get_close_matches(key, words, n=1, cutoff=0.6)
                raise unknown_word(place, key, *near)
        self.place, self.table = place, table

    def __contains__(self, key: str) -> bool:
        return key in self.table

    def wrong(self, key: str, rule: str) -> BadFile:
        """What the value of a word must be; `rule` is the end of the sentence."""
        return BadFile(message("building.must-be", place=self.place, key=key, rule=rule))

    def text(self, key: str, default: str = "", longest: int = LONGEST_NAME) -> str:
        value = self.table.get(key, default)
        if not isinstance(value, str) or len(value) > longest:
            raise self.wrong(key, message("building.short-text", most=longest))
        if any(ord(sign) < 32 and sign != "\n" for sign in value):
            raise self.wrong(key, message("building.clean-text"))
        return value

    def flag(self, key: str) -> bool:
        value = self.table.get(key, False)
        if not isinstance(value, bool):
            raise self.wrong(key, message("building.true-or-false"))
        return value

    def quantity(self, key: str, quantity: str | None = None, default: Any = None) -> Any:
        if key not in self.table:
            if default is None:
                raise BadFile(message("building.missing", place=self.place, key=key))
            return default
        return self._value(key, self.table[key], quantity)

    def _value(self, key: str, value: Any, quantity: str | None) -> float:
        if isinstance(value, str) and quantity:
            return units.quantity(value, quantity)
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            if not quantity:
                raise self.wrong(key, message("building.a-number"))
            example = units.QUANTITIES[quantity].examples[0]
            raise self.wrong(key, message("building.a-number-or-text", example=example))
        try:
            return float(value)
        except OverflowError:
            raise self.wrong(key, message("building.ordinary-number")) from None

    def points(self, key: str, first: str | None = None, second: str | None = None) -> tuple[tuple[float, float], ...]:
        rows = self.table.get(key, [])
        if not isinstance(rows, list) or len(rows) > MOST_POINTS:
            raise self.wrong(key, message("building.few-pairs", most=MOST_POINTS))
        if any(not isinstance(row, list) or len(row) != 2 for row in rows):
            raise self.wrong(key, message("building.pairs", example="[[0.25, 1.0], [0.75, 9.0]]"))
        return tuple((self._value(key, x, first), self._value(key, y, second)) for x, y in rows)

    def curve(self, key: str, quantity: str | None = None, first: str | None = None) -> Any:
        if isinstance(self.table.get(key), list):
            return self.points(key, first, quantity)
        return self.quantity(key, quantity)

    def names(self, key: str) -> tuple[str, ...]:
        value = self.table.get(key, [])
        if not isinstance(value, list) or any(not isinstance(each, str) for each in value):
            raise self.wrong(key, message("building.layer-names"))
        return tuple(value)

    def origin(self) -> dict[str, Any]:
        spans = self.table.get("ranges", {})
        if not isinstance(spans, dict):
            raise self.wrong("ranges", message("building.a-table", example="{ conductivity = [0.03, 0.05] }"))
        inner = Table(message("building.within", outer=self.place, inner="ranges"), spans, _SPANS)
        ranges = []
        for name, span in spans.items():
            if not isinstance(span, list) or len(span) != 2:
                raise inner.wrong(name, message("building.pair-of-numbers"))
            ranges.append((name, *(inner._value(name, each, None) for each in span)))
        words = {
            key: self.text(key, longest=LONGEST_TEXT if key in ("source", "where", "how_read") else LONGEST_NAME)
            for key in ORIGIN[:-1]
        }
        return {**words, "ranges": tuple(ranges)}


#: What every row must say.
REQUIRED = ("id", "source", "where", "how_read")


def rows(name: str, columns: Sequence[str], text: str | None = None) -> list[Row]:
    """The rows of one table."""
    if text is None:
        text = resources.files("dryward.building").joinpath("data", *name.split("/")).read_text(encoding="utf-8")
    lines = [(number, line) for number, line in enumerate(text.splitlines(), 1) if line and not line.startswith("#")]
    reader = csv.DictReader((line for _, line in lines), strict=True)
    lacking = [column for column in (*REQUIRED, *columns) if column not in (reader.fieldnames or ())]
    if lacking:
        raise BadFile(message("building.no-column", table=name, column=lacking[0]))
    found, seen = [], set()
    for row, (number, _) in zip(reader, lines[1:], strict=True):
        if None in row or None in row.values():
            raise BadFile(message("building.ragged-line", table=name, line=number))
        for column in REQUIRED:
            if not row[column].strip():
                place = {"table": name, "line": number, "id": row["id"] or message("building.no-id")}
                raise BadFile(message("building.lacks-column", **place, column=column))
        if row["id"] in seen:
            raise BadFile(message("building.id-again", table=name, line=number, id=row["id"]))
        seen.add(row["id"])
        found.append({**{key: value.strip() for key, value in row.items()}, "line": number})
    return found


def cell_number(row: Row, column: str, name: str) -> float | None:
    """The number in one cell."""
    if not row[column]:
        return None
    try:
        return float(row[column])
    except ValueError:
        raise _wrong(row, column, name, message("building.a-number")) from None


def cell_points(row: Row, column: str, name: str) -> tuple[tuple[float, float], ...]:
    """The points in one cell, written ``0.5:12 0.8:20``."""
    try:
        pairs = [each.split(":") for each in row[column].split()]
        found = tuple((float(left), float(right)) for left, right in pairs)  # a ValueError where it is no pair
    except ValueError:
        raise _wrong(row, column, name, message("building.points", example="0.5:12 0.8:20")) from None
    return found


def _wrong(row: Row, column: str, name: str, what: str) -> BadFile:
    place = {"table": name, "line": row["line"], "column": column}
    return BadFile(message("building.wrong-cell", **place, given=repr(row[column][:40]), rule=what))
