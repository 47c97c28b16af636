"""Every text a reader sees, out of the messages of one language.

The texts stand in files of messages (Project Fluent: plurals, choices, named
places for numbers and names), one set a language: a file a room in
``language/<language>/<room>.ftl``, and in each lesson's own folder
``<language>.ftl``.  Code holds facts and asks for a message at the last
moment::

    message("report.dry-up-to", roof="roof", limit="45 %")

asks for ``dry-up-to`` of ``report.ftl``.  A lesson asks for its own::

    message = language.beside(__file__)
    message("gains", rate=page.show(rate, "vapor flux"))

Facts are texts that are shown as they are (a number goes through
`units.show` first) and whole numbers that choose a plural.  A text is never
glued together from pieces of grammar: where the words depend on a fact, the
message chooses by it.

Another language is another folder with files of the same names; the lessons'
stand in it under ``course/<lesson>.ftl``.  It is taken with `use`, or from
the start by naming the folder in ``DRYWARD_LANGUAGE``.  What it lacks is
shown in English.
"""

from __future__ import annotations

import contextlib
import os
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path
from typing import Any, TypeVar

Made = TypeVar("Made")

ENGLISH = "en"
_HOME = Path(__file__).parent


class MissingMessage(LookupError):
    """A message that no file has: a slip in the code, not a reader's."""


class Catalog:
    """The messages of one file."""

    def __init__(self, path: Path, locale: str) -> None:
        from fluent.syntax import FluentParser, ast

        self._path, self._locale = path, locale
        #: What each message is made of; None for one that needs the interpreter.
        self.parts: dict[str, _Parts | None] = {}
        # Only what a message is made of stays: the tree it is read into takes ten times the room.
        for entry in FluentParser(with_spans=False).parse(path.read_text(encoding="utf-8")).body:
            if isinstance(entry, ast.Message) and entry.value is not None:
                self.parts.setdefault(entry.id.name, _parts(entry.value))

    def text(self, id: str, facts: dict[str, Any]) -> str:
        """One message with its facts in their places."""
        parts = self.parts[id]
        if parts is None:
            return self._interpreted(id, facts)
        try:
            return _filled(parts, facts, self._plural)
        except KeyError as lacking:
            raise MissingMessage(f"{self._path.name}, {id}: the fact {lacking} is not given") from None

    def _plural(self, count: float) -> str:
        """Which form a number takes: English is known, others cost a library of them."""
        if self._locale == ENGLISH:
            return "one" if count == 1 else "other"
        return _plural_rule(self._locale)(count)

    @cached_property
    def _bundle(self) -> Any:
        """The interpreter of the whole file, for messages that ask for others or for a function."""
        from fluent.runtime import FluentBundle, FluentResource

        bundle = FluentBundle([self._locale], use_isolating=False)
        bundle.add_resource(FluentResource(self._path.read_text(encoding="utf-8")))
        return bundle

    def _interpreted(self, id: str, facts: dict[str, Any]) -> str:
        """A message that asks for others, or for a function."""
        from fluent.runtime.types import fluent_number

        told = {
            # As it is read aloud: no comma in thousands; a true or false chooses by its name.
            name: ("yes" if value else "no")
            if isinstance(value, bool)
            else fluent_number(value, useGrouping=False)
            if isinstance(value, int)
            else str(value)
            for name, value in facts.items()
        }
        text, slips = self._bundle.format_pattern(self._bundle.get_message(id).value, told)
        if slips:
            raise MissingMessage(f"{self._path.name}, {id}: {slips[0]}")
        return str(text)


@dataclass(frozen=True)
class _Fact:
    """The place of a fact."""

    name: str


@dataclass(frozen=True)
class _Choice:
    """What a message says by a fact: for each of its values, and for any other."""

    name: str
    said: dict[str | float, _Parts]
    other: _Parts


_Parts = tuple["str | _Fact | _Choice", ...]


def _parts(pattern: Any) -> _Parts | None:
    """The parts of a message that names facts and chooses by them; None for one that needs the interpreter."""
    from fluent.syntax import ast

    found: list[str | _Fact | _Choice] = []
    for each in pattern.elements:
        inner = getattr(each, "expression", each)
        if isinstance(inner, ast.TextElement):
            found.append(inner.value)
        elif isinstance(inner, ast.StringLiteral):
            found.append(inner.parse()["value"])
        elif isinstance(inner, ast.VariableReference):
            found.append(_Fact(inner.id.name))
        elif isinstance(inner, ast.SelectExpression) and isinstance(inner.selector, ast.VariableReference):
            said = {_key(variant.key): _parts(variant.value) for variant in inner.variants}
            other = next(_key(variant.key) for variant in inner.variants if variant.default)
            whole = {key: parts for key, parts in said.items() if parts is not None}
            if len(whole) < len(said):
                return None
            found.append(_Choice(inner.selector.id.name, whole, whole[other]))
        else:
            return None
    return tuple(found)


def _key(key: Any) -> str | float:
    """What a variant is chosen by: a word, or a number."""
    return str(key.name) if hasattr(key, "name") else float(key.value)


def _filled(parts: _Parts, facts: dict[str, Any], plural: Callable[[float], str]) -> str:
    """The parts with their facts, as one text."""
    said = ""
    for each in parts:
        if isinstance(each, str):
            said += each
        elif isinstance(each, _Fact):
            said += str(facts[each.name])
        else:
            by = facts[each.name]
            if isinstance(by, bool):
                by = "yes" if by else "no"
            elif isinstance(by, int) and by not in each.said:
                by = plural(by)
            said += _filled(each.said.get(by, each.other), facts, plural)
    return said


@cache
def _plural_rule(locale: str) -> Callable[[float], str]:
    """Which form a number takes in a language ("one", "few", "other"); as in English where nobody knows."""
    from babel import Locale, UnknownLocaleError

    try:
        return Locale.parse(locale.replace("-", "_")).plural_form
    except (UnknownLocaleError, ValueError):
        return Locale(ENGLISH).plural_form


_loaded: dict[Path, Catalog] = {}
_folder: Path | None = Path(os.environ["DRYWARD_LANGUAGE"]) if os.environ.get("DRYWARD_LANGUAGE") else None


def use(folder: str | Path | None) -> None:
    """Speak the language of a folder from now on; None for English."""
    global _folder
    _folder = None if folder is None else Path(folder)


def folder() -> Path | None:
    """The folder of the language in use; None for English."""
    return _folder


def name() -> str:
    """The language in use, by the name of its folder; as it stands in a page's ``lang``."""
    return _folder.name if _folder else ENGLISH


def _catalog(path: Path, locale: str) -> Catalog | None:
    if path not in _loaded:
        if not path.is_file():
            return None
        _loaded[path] = Catalog(path, locale)
    return _loaded[path]


def _text(places: tuple[str, Path], id: str, facts: dict[str, Any]) -> str:
    """A message from the language in use, else from English."""
    other, english = places
    if _folder is not None:
        found = _catalog(_folder / other, _folder.name)
        if found is not None and id in found.parts:
            with contextlib.suppress(MissingMessage):  # a slip of that language: English is shown
                return found.text(id, facts)
    found = _loaded.get(english) or _catalog(english, ENGLISH)
    if found is None or id not in found.parts:
        raise MissingMessage(f"{english.name} has no message {id}")
    return found.text(id, facts)


def message(id: str, /, **facts: Any) -> str:
    """The text of ``room.message`` with its facts in their places.

    Parameters
    ----------
    id : str
        The file, a point, and the name in it: ``"report.dry-up-to"``.
    **facts : str, int or bool
        What the message names, shown as it is; an int chooses a plural, a
        bool between ``[yes]`` and ``[no]``.

    Returns
    -------
    str

    Raises
    ------
    MissingMessage
        For a name or a fact that is not there.

    Examples
    --------
    >>> message("language.listed", first="batt", last="board")
    'batt and board'
    """
    room, _, own = id.partition(".")
    return _text(_places(room), own, facts)


#: Lessons whose code was read, by their folders' names: a page names its labels by them, an instructor's own too.
_lessons: dict[str, tuple[str, Path]] = {}


def _places(room: str) -> tuple[str, Path]:
    """The file of a room in another language's folder, and in English; a lesson is a room by its folder's name."""
    other, english, there = _kits(room)
    return (other, english) if there else _lessons.get(room, (other, english))


@cache
def _kits(room: str) -> tuple[str, Path, bool]:
    """The two files of a room that the kit brings along, and whether it does."""
    lesson = _HOME.parent / "course" / room / f"{ENGLISH}.ftl"
    if lesson.is_file():
        return f"course/{room}.ftl", lesson, True
    english = _HOME / ENGLISH / f"{room}.ftl"
    return f"{room}.ftl", english, english.is_file()


def once(make: Callable[[], Made]) -> Callable[[], Made]:
    """What is made of the messages once in each language, and kept."""
    kept: dict[Path | None, Made] = {}

    def made() -> Made:
        if _folder not in kept:
            kept[_folder] = make()
        return kept[_folder]

    return made


def has(id: str) -> bool:
    """Whether English has a message of that name: ``"names.inner-membrane"``."""
    room, _, own = id.partition(".")
    found = _catalog(_places(room)[1], ENGLISH)
    return found is not None and own in found.parts


_ID = re.compile(r"[a-z_]+\.[a-z][a-z0-9-]*")


def told(given: str, **facts: Any) -> str:
    """The text of a message that a table or a class names by its id; what is no id is a text as it is.

    A class of a lesson is read before the language is chosen, so it names its
    labels: ``words="read_the_air.air-a"``.

    Examples
    --------
    >>> told("language.listed", first="batt", last="board"), told("A label of my own")
    ('batt and board', 'A label of my own')
    """
    return message(given, **facts) if _ID.fullmatch(given) and has(given) else given


class Beside:
    """Like `message` and `has`, for the messages that stand in the folder of a module."""

    def __init__(self, file: str) -> None:
        home = Path(file).parent
        self._places = f"course/{home.name}.ftl", home / f"{ENGLISH}.ftl"
        _lessons[home.name] = self._places

    def __call__(self, id: str, /, **facts: Any) -> str:
        return _text(self._places, id, facts)

    def __contains__(self, id: str) -> bool:
        found = _catalog(self._places[1], ENGLISH)
        return found is not None and id in found.parts


def beside(file: str) -> Beside:
    """The messages in the folder of a module: ``beside(__file__)``."""
    return Beside(file)


def called(given: str) -> str:
    """A name of the kit's own, such as that of a layer, in the reader's language; any other name as it is.

    The English names stand in ``names.ftl``, each under its own letters.

    Examples
    --------
    >>> called("inner membrane"), called("my own felt")
    ('inner membrane', 'my own felt')
    """
    if _folder is None:
        return given
    id = slug(given.lower())
    english = _catalog(_HOME / ENGLISH / "names.ftl", ENGLISH)
    if english is None or id not in english.parts or english.text(id, {}) != given:
        return given
    return message(f"names.{id}")


def joined(id: str, texts: Sequence[str]) -> str:
    """Texts in a row, each put after the others by a message of ``first`` and ``next``; empty for none.

    Examples
    --------
    >>> joined("language.listing", ["batt", "board", "film"])
    'batt, board, film'
    """
    found = "".join(texts[:1])
    for each in texts[1:]:
        found = message(id, first=found, next=each)
    return found


def slug(name: str) -> str:
    """A name in the letters that the name of a message may have.

    >>> slug("m2 K/W"), slug("%"), slug("1/h")
    ('m2-K-per-W', 'percent', 'n-1-per-h')
    """
    found = "-".join(re.findall("[A-Za-z0-9]+", name.replace("%", " percent ").replace("/", " per ")))
    return f"n-{found}" if found[:1].isdigit() else found


def sign(unit: str) -> str:
    """The sign of a unit, alone as on an axis, by its name in the kit; what is no such name as it is.

    >>> sign("m2"), sign("in"), sign("mass %"), sign("boards")
    ('m²', 'in.', 'mass %', 'boards')
    """
    known = _signs()
    if unit not in known:
        there = unit.isascii() and has(f"units.sign-{slug(unit)}")
        known[unit] = message(f"units.sign-{slug(unit)}") if there else unit
    return known[unit]


@once
def _signs() -> dict[str, str]:
    """Those that were asked for."""
    return {}


@once
def _marks() -> tuple[str, str]:
    """The decimal mark of a number and its minus sign."""
    return message("units.decimal-mark"), message("units.minus-sign")


def figures(text: str) -> str:
    """A number as Python writes it, with the reader's decimal mark and minus sign; a power of ten stays one.

    >>> figures("-1.5"), figures("4e-11")
    ('−1.5', '4e-11')
    """
    point, minus = _marks()
    if text.startswith("-"):
        text = minus + text[1:]
    return text if point == "." else text.replace(".", point)


def read_off(text: str) -> str:
    """A text of a file, where numbers have the hyphen of the keys, as it is shown.

    >>> read_off("saturation at -20 °C, wet-cup, 2 - 3")
    'saturation at −20 °C, wet-cup, 2 - 3'
    """
    return re.sub(r"(?<![^\s(])-(?=[.\d])", lambda _: _marks()[1], text)


def typed(text: str) -> str:
    """A number that was written for a reader, as it stands in a field to be typed over: with the hyphen of the keys.

    >>> typed("−1.5")
    '-1.5'
    """
    return text.replace(_marks()[1], "-")


#: A point between digits, and a hyphen that is a minus: before a number, with nothing that it could join to it.
_POINT, _MINUS = re.compile(r"(?<=\d)\.(?=\d)"), re.compile(r"(?<![\w)])-(?=\d)")


def sums(text: str) -> str:
    """A sum as code writes it, with the reader's decimal marks and minus signs; its words and units stay.

    >>> sums("0.6 × -1.5 in. × R-20 / 5.67e-8")
    '0.6 × −1.5 in. × R-20 / 5.67e-8'
    """
    point, minus = _marks()
    return _POINT.sub(lambda _: point, _MINUS.sub(lambda _: minus, text))


def plain(text: str) -> str:
    """A typed text with the reader's decimal mark and minus sign as Python writes them, where no digit is meant.

    A comma stays: whoever reads the text knows whether it may stand for thousands.

    >>> plain("−1.5 in")
    '-1.5 in'
    """
    point, minus = _marks()
    return (text if point == "," else text.replace(point, ".")).replace(minus, "-")


def has_decimal_comma() -> bool:
    """Whether the reader's decimal mark is a comma: then one before three digits is no thousands'."""
    return _marks()[0] == ","


def listed(words: Sequence[str], last: str = "and") -> str:
    """Words as they stand in a sentence: "a", "a and b", "a, b and c", or with "or" before the last.

    Examples
    --------
    >>> listed(["batt"]), listed(["batt", "board"]), listed(["batt", "board", "film"], "or")
    ('batt', 'batt and board', 'batt, board or film')
    """
    if len(words) < 2:
        return "".join(words)
    return message("language.listed" if last == "and" else "language.either", first=listing(words[:-1]), last=words[-1])


def listing(words: Sequence[str]) -> str:
    """Words after each other, the last like the others: "a, b, c".

    Examples
    --------
    >>> listing(["batt", "board", "film"])
    'batt, board, film'
    """
    return joined("language.listing", words)
