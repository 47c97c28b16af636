"""One published number beside ours, and the tables they are read from.

A table is a CSV file with at least the columns of `COLUMNS`; the topic's own
input columns carry their unit in the name or in the words of `what`.  Lines
that begin with ``#`` are remarks.  An optional column ``inputs`` holds
quantities with their units: ``temperature 25 degC; pressure 101325 Pa``.
``expected`` is a number or a word; ``tolerance`` is in the unit of the row, or
a percentage of the expected value (``0.5 %``), and is left empty for a word.
"""

import csv
import math
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from importlib import resources

from dryward.checks import BadFile, PlainError
from dryward.language import figures, message, read_off, sign
from dryward.units import from_si, to_si

#: Columns every table has.
COLUMNS = ("id", "what", "expected", "tolerance", "unit", "source", "where", "how_read")
#: What the kit says of a curve or a case that it made up itself; it proves the sum, not the number.
OWN = "the kit's own"
#: How the published side came about; the last is no outside value.
READINGS = ("read", "worked", "from memory", OWN)
_OWN = re.compile(r"\binvented\b|\bteaching\b|\bof (the|this) kit\b|\b(the|this) kit's\b")
_MUST_SPEAK = ("id", "what", "expected", "source", "where", "how_read")


@dataclass(frozen=True)
class Check:
    """A published number and the kit's own answer to the same question."""

    id: str  # unique within its topic
    what: str  # the question in words, inputs included
    source: str
    where: str  # the place in the source
    how_read: str
    expected: float | str
    got: float | str
    tolerance: float  # how far they may differ; 0 for a word
    unit: str  # of expected, got and tolerance

    @property
    def difference(self) -> float:
        """Got minus expected [unit]; for a word 0 when it is the same, else nan."""
        if isinstance(self.expected, str) or isinstance(self.got, str):
            return 0.0 if self.got == self.expected else math.nan
        return self.got - self.expected

    @property
    def passed(self) -> bool:
        """Whether they differ by no more than the tolerance."""
        return abs(self.difference) <= self.tolerance

    @property
    def reading(self) -> str:
        """How the published side came about: one of `READINGS`."""
        return _reading(self.source, self.where, self.how_read)

    def __str__(self) -> str:
        published, here, allowed = (
            message("evidence.with-unit", number=each, unit=sign(self.unit)) if self.unit else each
            for each in (_shown(self.expected), _shown(self.got), figures(f"{self.tolerance:.3g}"))
        )
        return message(
            "evidence.check", what=read_off(self.what), published=published, here=here, allowed=allowed,
            source=self.source, where=self.where,
        )  # fmt: skip


def _reading(source: str, where: str, how_read: str) -> str:
    """How an expected value came about, by the words of its row."""
    words = how_read.lower()
    if "invented" in f"{words} {where.lower()}" or _OWN.search(source.lower()):
        return OWN
    if "memory" in words or "remembered" in words:
        return "from memory"
    return "worked" if any(word in words for word in ("comput", "calculat", "by hand")) else "read"


def _shown(value: float | str) -> str:
    return value if isinstance(value, str) else figures(f"{value:.7g}")


@dataclass(frozen=True)
class Row:
    """One line of a table, before the kit has answered it."""

    topic: str
    columns: dict[str, str]  # every column of the line, blanks stripped

    @property
    def id(self) -> str:
        """Short name, unique within the topic."""
        return self.columns["id"]

    @property
    def reading(self) -> str:
        """How the published side came about: one of `READINGS`."""
        return _reading(*(self.columns[name] for name in ("source", "where", "how_read")))

    def text(self, column: str) -> str:
        """The words of a column; empty when left blank."""
        if column not in self.columns:
            raise BadFile(message("evidence.no-column", table=self.topic, column=column))
        return self.columns[column]

    def number(self, column: str, default: float | None = None) -> float:
        """The number of a column, or `default` when it is left blank."""
        words = self.text(column)
        if not words and default is not None:
            return default
        try:
            return float(words)
        except ValueError:
            raise BadFile(
                message("evidence.no-number", row=self.id, table=self.topic, column=column, text=words)
            ) from None

    def given(self, name: str, default: float | None = None) -> float:
        """One quantity of the column ``inputs``, in SI."""
        for part in self.text("inputs").split(";"):
            found, _, amount = part.strip().rpartition(f"{name} ")
            if not found and amount != part.strip():
                value, _, unit = amount.partition(" ")
                try:
                    return to_si(float(value), unit) if unit else float(value)
                except ValueError:
                    break
        if default is None:
            raise BadFile(message("evidence.not-given", row=self.id, table=self.topic, name=name))
        return default

    def in_its_unit(self, value: float) -> float:
        """A number of SI in the unit of the row."""
        unit = self.text("unit")
        return from_si(value, unit) if unit else value

    @property
    def expected(self) -> float | str:
        """The published number, or the published word."""
        words = self.columns["expected"]
        try:
            return float(words)
        except ValueError:
            return words

    @property
    def tolerance(self) -> float:
        """How far the answer may differ, in the unit of the row."""
        words, expected = self.columns["tolerance"], self.expected
        if isinstance(expected, str):
            if words:
                raise BadFile(message("evidence.word-with-tolerance", row=self.id, table=self.topic))
            return 0.0
        if words.endswith("%"):
            try:
                return abs(expected) * float(words[:-1]) / 100
            except ValueError:
                pass  # number() below says what is wrong
        return self.number("tolerance")

    def check(self, got: float | str) -> Check:
        """The row with the kit's answer beside it."""
        if not isinstance(got, str):
            got = float(got)
        given = {name: self.columns[name] for name in ("id", "what", "source", "where", "how_read", "unit")}
        return Check(expected=self.expected, got=got, tolerance=self.tolerance, **given)


#: How to compute each kind of row: a function of the row gives the number, or the word, in the unit of the row.
Answers = Mapping[str, Callable[[Row], float | str]]
#: The same for such as answer by a number in SI.
InSI = Mapping[str, Callable[[Row], float]]


def read(topic: str) -> list[Row]:
    """The rows of a topic's table; one without a source, a place or the way it was read is refused."""
    file = resources.files("dryward.evidence") / "data" / f"{topic}.csv"
    try:
        lines = file.read_text(encoding="utf-8").splitlines()
    except OSError:
        raise BadFile(message("evidence.no-table", table=topic)) from None
    return parse(topic, lines)


def parse(topic: str, lines: Iterable[str]) -> list[Row]:
    """The rows in the lines of a table; see `read`."""
    table = csv.DictReader(line for line in lines if line.strip() and not line.startswith("#"))
    missing = [name for name in COLUMNS if name not in (table.fieldnames or ())]
    if missing:
        raise BadFile(message("evidence.lacks-column", table=topic, column=missing[0]))
    rows: list[Row] = []
    seen: set[str] = set()
    for line in table:
        if None in line or None in line.values():
            raise BadFile(message("evidence.fields", row=line["id"], table=topic))
        row = Row(topic, {name: words.strip() for name, words in line.items()})
        for name in _MUST_SPEAK:
            if not row.columns[name]:
                raise BadFile(message("evidence.lacks", row=row.id or len(rows) + 1, table=topic, column=name))
        if row.id in seen:
            raise BadFile(message("evidence.stands-twice", row=row.id, table=topic))
        seen.add(row.id)
        rows.append(row)
    return rows


def answer(topic: str, answers: Answers) -> Iterator[Check]:
    """The checks of a table, each computed by the function that its column ``kind`` names, or else ``quantity``."""
    for row in read(topic):
        asked = row.text("kind" if "kind" in row.columns else "quantity")
        if asked not in answers:
            raise BadFile(message("evidence.nothing-computes", row=row.id, table=topic, asked=asked))
        try:
            yield row.check(answers[asked](row))
        except PlainError as trouble:
            raise BadFile(message("evidence.trouble", row=row.id, table=topic, trouble=str(trouble))) from trouble


def in_row_units(answers: InSI) -> Answers:
    """Functions that answer in SI, turned into such that answer in the unit of the row."""

    def turned(ask: Callable[[Row], float]) -> Callable[[Row], float]:
        return lambda row: row.in_its_unit(ask(row))

    return {name: turned(ask) for name, ask in answers.items()}
