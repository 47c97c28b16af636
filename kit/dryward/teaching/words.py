"""The words: texts with numbers in them, the word lists that are read from files, the lines of a sum.

A text of the teaching data writes a number with its unit in braces, such as
``{70 degF}`` or ``{1.5 perm}``.  `shown` prints it in the unit system of the
reader, so that one text serves both.  Where one sentence cannot be true in
both (perms add as 1/perm, sd values simply add), the text has two:
``{us: turn each perm over | si: add the sd values}``.
"""

from __future__ import annotations

import dataclasses
import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from dryward import language, units
from dryward.checks import BadFile, UnknownName
from dryward.language import message, once

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

#: A dataclass that is built from a table of a file.
Built = TypeVar("Built", bound="DataclassInstance")

_DATA = files("dryward.teaching") / "data"
_NUMBER = re.compile(r"\{(-?\d+(?:[.,]\d+)*(?:/\d+)?) ([^{}]+)\}")
_EITHER = re.compile(r"\{us: ((?:[^{}]|\{[^{}]*\})*?) \| si: ((?:[^{}]|\{[^{}]*\})*)\}")
# Where the trade has a second unit that does not follow from the quantity.
_OTHER = {
    "ft": "m",
    "in2": "cm2",
    "ft2": "m2",
    "ft3": "m3",
    "qt": "L",
    "quart": "L",
    "lb": "kg",
    "pint": "L",
    "degF difference": "K",
    "gr/ft2/day": "g/m2/day",
}
_BACK = {"m": "ft", "cm2": "in2", "kg": "lb", "K": "degF difference", "g/m2": "gr/ft2", "g/m2/day": "gr/ft2/day"}


def number(value: float | str, unit: str, unit_system: str = "us") -> str:
    """A number given in one unit, printed in the reader's unit system.

    >>> number(70, "degF", "us"), number(70, "degF", "si")
    ('70 °F', '21.1 °C')
    >>> number(1002, "Pa")
    '0.296 in. Hg (1002 Pa)'
    """
    this = units.unit(unit)
    if unit_system not in units.SHOWN:
        raise UnknownName("unit system", unit_system, units.SHOWN)
    si = units.to_si(float(value), unit)
    if this.quantity == "pressure" and unit == "Pa":
        pascals = units.with_unit(units.number(si, 0), "Pa")
        return pascals if unit_system == "si" else units.in_both(units.show(si, "pressure", "us"), pascals)
    target = reader_unit(unit, unit_system)
    return _said(float(value) if target == unit else units.from_si(si, target), target)


def reader_unit(unit: str, unit_system: str) -> str:
    """The unit in which a reader of a unit system sees what is given in another."""
    this = units.unit(unit)
    if unit_system not in units.SHOWN:
        raise UnknownName("unit system", unit_system, units.SHOWN)
    if _native(unit, unit_system):
        return unit
    return (_OTHER if unit_system == "si" else _BACK).get(unit) or units.shown_unit(this.quantity, unit_system).name


def _native(unit: str, unit_system: str) -> bool:
    """Whether a unit is one that this system's readers use."""
    both = {"%", "fraction", "1/h", "day", "h", "inHg", "Pa"}
    american = set(units.SHOWN["us"].values()) | set(_OTHER) | {"mph", "gr", "lb/ft2", "inH2O", "psi"}
    return unit in both or (unit in american) == (unit_system == "us")


_PLACES = {"degF": 1, "degC": 1, "K": 1, "degF difference": 1, "%": 1, "mm": 0, "day": 0}


def _said(value: float, unit: str) -> str:
    places = _PLACES.get(unit)
    if unit == "in":  # tape-measure fractions as they are, anything worked to a tenth
        places = 4 if value * 16 == round(value * 16) else 1
    text = units.number(value, most=2) if places is None else units.number(value, figures=12, most=places)
    if unit == "m2 K/W":
        return message("teaching.rsi", number=text)
    if unit in ("quart", "pint") and text != "1":
        return message("teaching.pints" if unit == "pint" else "teaching.quarts", number=text)
    return units.with_unit(text, unit)


def shown(text: str, unit_system: str = "us") -> str:
    """A text with its numbers in the reader's unit system.

    >>> shown("It is {20 degF} and {80 %} outside.", "si")
    'It is −6.7 °C and 80 % outside.'
    >>> shown("{us: Read the perms | si: Read the sd} at {20 degF}.", "si")
    'Read the sd at −6.7 °C.'
    """
    if unit_system not in units.SHOWN:
        raise UnknownName("unit system", unit_system, units.SHOWN)
    text = _EITHER.sub(lambda m: m.group(1 if unit_system == "us" else 2), text)
    return _NUMBER.sub(lambda m: number(m.group(1).replace(",", ""), m.group(2), unit_system), text)


def table(name: str) -> dict[str, Any]:
    """One TOML file of the teaching data, with the words of the language in use.

    Another language gives its words in a file of the same name in its folder,
    in the same tables: each beside its ``id``, or in the same place where the
    tables have none.
    """
    return _table(name, language.folder())


@cache
def _table(name: str, spoken: Path | None) -> dict[str, Any]:
    try:
        english = tomllib.loads(_DATA.joinpath(name).read_text("utf-8"))
        twin = spoken / name if spoken else None
        return _laid_over(english, tomllib.loads(twin.read_text("utf-8"))) if twin and twin.is_file() else english
    except FileNotFoundError:
        raise BadFile(message("teaching.missing", file=name)) from None
    except tomllib.TOMLDecodeError as reason:
        raise BadFile(message("teaching.unreadable", file=name, reason=str(reason))) from None


def _laid_over(english: Any, other: Any) -> Any:
    """A table with the words of another language in the places of the English ones."""
    if isinstance(english, dict) and isinstance(other, dict):
        return {key: _laid_over(value, other[key]) if key in other else value for key, value in english.items()}
    if isinstance(english, list) and isinstance(other, list) and any(isinstance(each, dict) for each in english):
        named = {each["id"]: each for each in other if "id" in each}
        places = [*other, *[{}] * len(english)]
        return [
            _laid_over(each, named.get(each["id"], {}) if "id" in each else places[k]) for k, each in enumerate(english)
        ]
    return other if type(other) is type(english) else english


def build(kind: type[Built], row: Mapping[str, Any], file: str) -> Built:
    """One dataclass from one table of a file; a wrong key is said in one sentence.

    >>> from dataclasses import dataclass
    >>> @dataclass
    ... class Word:
    ...     term: str
    >>> build(Word, {"term": "perm"}, "words.toml").term
    'perm'
    """
    known = dataclasses.fields(kind)
    needed = {each.name for each in known if each.default is dataclasses.MISSING}
    for key in sorted(set(row) - {each.name for each in known}):
        raise BadFile(message("teaching.unknown-key", file=file, key=key))
    for key in sorted(needed - set(row)):
        raise BadFile(message("teaching.lacks-key", file=file, key=key))
    return kind(**{key: tuple(value) if isinstance(value, list) else value for key, value in row.items()})


@dataclass(frozen=True)
class Step:
    """One line of a hand calculation."""

    #: What is worked out, in one short sentence.
    words: str
    #: The sum with the numbers in it, as a calculator takes it; empty where a table is read.
    formula: str
    #: The number with its unit.
    result: str

    @property
    def sum(self) -> str:
        """The formula as it is shown, with the reader's marks."""
        return language.sums(self.formula)

    @property
    def line(self) -> str:
        """The step on one line."""
        sum_ = f"{self.sum} = {self.result}" if self.formula else self.result
        return f"{self.words} {sum_}"


@dataclass(frozen=True)
class Term:
    """One word of the trade."""

    #: The word as the kit uses it.
    term: str
    #: One or two plain sentences.
    meaning: str
    #: What to leave unsaid, or an empty string.
    avoid: str = ""


@dataclass(frozen=True)
class Caution:
    """One caution, printed where it belongs."""

    id: str
    title: str
    text: str
    #: Law, section or "common practice, no source", and how it was read.
    source: str


@once
def glossary() -> tuple[Term, ...]:
    """All words, in the order of the alphabet."""
    rows = [build(Term, row, "glossary.toml") for row in table("glossary.toml")["term"]]
    return tuple(sorted(rows, key=lambda each: each.term.lower()))


@once
def cautions() -> tuple[Caution, ...]:
    """All cautions, in the order of the file."""
    return tuple(build(Caution, row, "cautions.toml") for row in table("cautions.toml")["caution"])


def caution(id: str) -> Caution:
    """The caution of that id."""
    for each in cautions():
        if each.id == id:
            return each
    raise UnknownName("caution", id, [each.id for each in cautions()])


def glossary_page() -> str:
    """The glossary as a Markdown page: the file ``lessons/guide/glossary.md`` is exactly this."""
    lines = [f"# {message('teaching.glossary')}", "", message("teaching.glossary-intro"), ""]
    for each in glossary():
        if each.avoid:
            told = message("teaching.term-avoid", term=each.term, meaning=each.meaning, avoid=each.avoid)
        else:
            told = message("teaching.term", term=each.term, meaning=each.meaning)
        lines += [told, ""]
    return "\n".join(lines)
