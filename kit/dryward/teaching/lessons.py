"""The lessons: a folder each, found by looking, with what each asks, shows and leaves behind.

The kit's own stand in ``dryward/course``, an instructor's in a folder of the
instructor's choice (`own_folder`).  A folder is named by the lesson's id with
underscores and holds ``lesson.toml`` (the words), ``questions.py`` (the
checks), ``page.py`` and, where only this lesson draws it, ``scene.py``.  Code
is loaded by name when it is wanted: this room stands below the pages.

Another language gives the words of a lesson of the kit again, in the shape of
its ``lesson.toml``, as ``course/<folder of the lesson>.toml`` in its own folder:
the keys of `WORDS` alone, a choice beside its ``key`` and a passage beside its
``id``.  What it does not give is shown in English.
"""

from __future__ import annotations

import ast
import importlib
import os
import re
import sys
import tomllib
from dataclasses import dataclass, fields, is_dataclass, replace
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any

import platformdirs

from dryward import language
from dryward.checks import BadFile, PlainError, UnknownName
from dryward.language import message
from dryward.storage import write_whole
from dryward.teaching import words
from dryward.teaching.beliefs import belief, beliefs
from dryward.teaching.words import build

#: The kit's own lessons.
COURSE = Path(__file__).resolve().parent.parent / "course"
#: Names a folder of one's own lessons and counts before the remembered one; empty for none.
OWN = "DRYWARD_OWN_LESSONS"
#: The module under which one's own lessons are loaded.
_OWN_PACKAGE = "dryward_own_lessons"
_FOLDER = re.compile(r"[a-z][a-z0-9]*(_[a-z0-9]+)*")
_CODE = ("questions.py", "page.py")
#: What of a ``lesson.toml`` is words, table by table; all else is the same in every language.
WORDS: dict[str, tuple[str, ...]] = {
    "": ("title", "objectives", "question", "care", "takeaway", "limits", "sources", "handout", "intro", "opens"),
    "prediction": ("prompt", "reveal"),
    "notes": ("ask", "props", "traps", "split", "more"),
    "worked": ("text", "code", "heading"),
    "choices": ("text", "reply"),
    "passages": ("text",),
    "tasks": ("*",),  # each id is a key
    "still": ("*",),  # and each belief
}


@dataclass(frozen=True)
class Option:
    """One answer to a prediction: a letter, its text, the belief behind a wrong one, what is said to who chose it."""

    key: str
    text: str
    belief: str = ""
    #: What made it seem right, what is so, and the number; without it the `reveal` is said.
    reply: str = ""


@dataclass(frozen=True)
class Prediction:
    """The question that unlocks the sliders, its right key, and what is said once the learner has looked."""

    prompt: str
    choices: tuple[Option, ...]
    right: str
    reveal: str

    def choice(self, key: str) -> Option:
        """The choice of that key."""
        for each in self.choices:
            if each.key == key:
                return each
        raise UnknownName("choice", key, [each.key for each in self.choices])


@dataclass(frozen=True)
class Notes:
    """What an instructor has at hand: opening questions, cheap props, traps, a split vote, one more task."""

    ask: tuple[str, ...]
    props: tuple[str, ...]
    traps: tuple[str, ...]
    split: str
    more: str


@dataclass(frozen=True)
class Worked:
    """The number behind the picture, worked again in the notebook without sliders: words, then code that prints."""

    text: str
    code: str
    #: Over it in the notebook; empty for the usual one.
    heading: str = ""


@dataclass(frozen=True)
class Passage:
    """A text of a notebook between its page and its number."""

    id: str
    text: str


@dataclass(frozen=True)
class Lesson:
    """One lesson, in the words of the learner; each field is a key of its ``lesson.toml``, but for the folder."""

    folder: Path
    number: int
    title: str
    minutes: int
    #: Ids of the lessons to take first.
    needs: tuple[str, ...]
    #: Ids of the beliefs it meets.
    beliefs: tuple[str, ...]
    #: Remember, Understand, Apply, Analyze.
    levels: tuple[str, ...]
    objectives: tuple[str, ...]
    #: One sentence from the job site.
    question: str
    prediction: Prediction
    takeaway: str
    #: Ids of the cautions.
    cautions: tuple[str, ...]
    sources: tuple[str, ...]
    limits: tuple[str, ...]
    worked: Worked
    #: What to mind before the act that question and takeaway propose; they are never shown without it.
    care: str = ""
    #: For the instructor's sheet; a lesson without has no sheet.
    notes: Notes | None = None
    #: Pathway -> id of the session in which it is taken.
    sessions: tuple[tuple[str, str], ...] = ()
    #: Kind of the pre-test's question that lets a skilled person skip it.
    pretest: str = ""
    #: Taken whatever the pre-test says.
    always: bool = False
    #: Whether its page runs the hour-by-hour method, which loads a compiler.
    hourly: bool = False
    #: The prediction in short, for the handout that is filled in at home.
    handout: str = ""
    #: Under the title of the notebook.
    intro: str = ""
    #: The comment over its page; empty for the usual one.
    opens: str = ""
    passages: tuple[Passage, ...] = ()
    #: Id -> text of each practical task.
    tasks: tuple[tuple[str, str], ...] = ()
    #: Belief -> what on this page denies it, for whom still holds it at the end.
    still: tuple[tuple[str, str], ...] = ()
    #: Belief -> what stands as `still` says: by the name of a control a number with its unit, or the id of an option;
    #: by the key of a field of the desk its text.
    sets: tuple[tuple[str, dict[str, str]], ...] = ()

    @property
    def id(self) -> str:
        """The name of its folder, with hyphens."""
        return self.folder.name.replace("_", "-")

    @property
    def file(self) -> str:
        """Name of its notebook."""
        return f"{self.number:02d}-{self.id}.ipynb"

    @property
    def own(self) -> bool:
        """Whether it is an instructor's and no lesson of the kit."""
        return self.folder.parent != COURSE


# --- reading --------------------------------------------------------------------------


def read(folder: Path) -> Lesson:
    """The lesson of one folder, in the language in use; a fault is said in one sentence that names the file."""
    name = f"{folder.name}/lesson.toml"
    if not _FOLDER.fullmatch(folder.name):
        raise BadFile(message("lessons.folder-name", folder=folder.name))
    path = folder / "lesson.toml"
    try:
        row = _table(path, name)
    except OSError:
        raise BadFile(message("lessons.no-file", folder=folder.name, file=path.name)) from None
    for key in ("prediction", "worked"):
        if not isinstance(row.get(key), dict):
            raise BadFile(message("lessons.lacks-table", file=name, table=key))
    spoken = language.folder()
    if spoken is not None and folder.parent == COURSE:
        twin = spoken / "course" / f"{folder.name}.toml"
        if twin.is_file():
            row = _laid_over(row, _table(twin, twin.name), "", twin.name)
    guess = dict(row["prediction"])
    guess["choices"] = [build(Option, each, name) for each in guess.get("choices", ())]
    row["prediction"] = build(Prediction, guess, name)
    row["worked"] = build(Worked, {key: text.strip("\n") for key, text in row["worked"].items()}, name)
    row["passages"] = [build(Passage, each, name) for each in row.get("passages", ())]
    for key in ("sessions", "tasks", "still", "sets"):
        row[key] = list(row.get(key, {}).items())
    if "notes" in row:
        row["notes"] = build(Notes, row["notes"], name)
    if row.get("beliefs") == "all":
        row["beliefs"] = [each.id for each in beliefs()]
    lesson = build(Lesson, {**row, "folder": folder}, name)
    _checked(lesson, name)
    return lesson


def _table(path: Path, name: str) -> dict[str, Any]:
    """A file of words, called by that name where it cannot be read."""
    try:
        return tomllib.loads(path.read_text("utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as reason:
        raise BadFile(message("lessons.unreadable", file=name, reason=str(reason))) from None


def is_word(table: str, key: str) -> bool:
    """Whether a key of a table of ``lesson.toml`` is words; "" is the table of the lesson itself."""
    return bool({key, "*"} & set(WORDS.get(table, ())))


def _laid_over(english: dict[str, Any], other: dict[str, Any], at: str, name: str) -> dict[str, Any]:
    """A table with the words of another language in the places of the English ones."""
    laid = dict(english)
    for key, given in other.items():
        here = english.get(key)
        if isinstance(given, dict) and isinstance(here, dict):
            laid[key] = _laid_over(here, given, key, name)
        elif key in ("choices", "passages") and isinstance(given, list):
            mark = "key" if key == "choices" else "id"
            known = {each[mark]: each for each in here or ()}
            for row in given:
                if not isinstance(row, dict) or row.get(mark) not in known:
                    raise BadFile(message("lessons.not-in-english", file=name, key=f"{key}.{mark}"))
                words_alone = {k: v for k, v in row.items() if k != mark}
                known[row[mark]] = _laid_over(known[row[mark]], words_alone, key, name)
            laid[key] = list(known.values())
        elif is_word(at, key) and type(given) is type(english.get(key, given)):
            laid[key] = given
        else:
            raise BadFile(message("lessons.not-in-english", file=name, key=f"{at}.{key}" if at else key))
    return laid


def _checked(lesson: Lesson, name: str) -> None:
    """Raise a sentence where a lesson names what is not there, or its code cannot be read."""
    for what, value, kind in (("number", lesson.number, int), ("minutes", lesson.minutes, int)):
        if type(value) is not kind or value < 0:
            raise BadFile(message("lessons.not-whole", file=name, key=what, value=repr(value)))
    try:
        lesson.prediction.choice(lesson.prediction.right)
        for each in (*lesson.beliefs, *(each.belief for each in lesson.prediction.choices if each.belief)):
            belief(each)
        for each, _ in (*lesson.still, *lesson.sets):
            if each not in lesson.beliefs:
                raise UnknownName("belief", each, lesson.beliefs)
        for each in lesson.cautions:
            words.caution(each)
        _in_units(lesson, "us")
    except PlainError as reason:
        raise BadFile(message("lessons.fault", file=name, reason=str(reason))) from None
    for file in _CODE if lesson.number else _CODE[1:]:
        path = lesson.folder / file
        try:
            # The kit's own are read by its tests: to parse them all takes a learner as long as the rest of this room.
            if lesson.own or not path.is_file():
                ast.parse(path.read_text("utf-8"))
        except OSError:
            raise BadFile(message("lessons.no-file", folder=lesson.folder.name, file=file)) from None
        except (SyntaxError, ValueError) as reason:
            line = (reason.lineno or 0) if isinstance(reason, SyntaxError) else 0
            raise BadFile(
                message("lessons.no-python", file=f"{lesson.folder.name}/{file}", line=line, reason=str(reason.args[0]))
            ) from None


def _folders(where: Path) -> list[Path]:
    return sorted(each for each in where.iterdir() if each.is_dir() and not each.name.startswith(("_", ".")))


@dataclass(frozen=True)
class Course:
    """All lessons in order, and a sentence for each of one's own that cannot be used."""

    lessons: tuple[Lesson, ...]
    troubles: tuple[str, ...] = ()


def _course() -> Course:
    """The course in the language in use, with one's own lessons."""
    return _read_course(own_folder(), language.folder())


@cache
def _read_course(own: Path | None, spoken: Path | None) -> Course:
    found = {each.id: each for each in map(read, _folders(COURSE))}
    troubles = []
    if own is not None and not own.is_dir():
        troubles.append(message("lessons.own-no-folder", folder=str(own)))
    for folder in _folders(own) if own is not None and own.is_dir() else ():
        try:
            lesson = read(folder)
            taken = next((each for each in found.values() if each.number == lesson.number), None)
            if lesson.id in found or taken:
                file = f"{folder.name}/lesson.toml"
                if lesson.id in found:
                    raise BadFile(message("lessons.name-taken", file=file, name=lesson.id))
                raise BadFile(message("lessons.number-taken", file=file, number=lesson.number))
            found[lesson.id] = lesson
        except PlainError as reason:
            troubles.append(message("lessons.left-out", folder=folder.name, reason=str(reason)))
    for lesson in tuple(found.values()):
        for need in lesson.needs:
            if need not in found:
                unknown = UnknownName("lesson", need, found)
                if not lesson.own:
                    raise unknown
                found.pop(lesson.id, None)
                troubles.append(message("lessons.needs-unknown", folder=lesson.folder.name, reason=str(unknown)))
                break
    return Course(tuple(sorted(found.values(), key=lambda each: each.number)), tuple(troubles))


# --- one's own --------------------------------------------------------------------------


def _remembered() -> Path:
    return platformdirs.user_config_path("dryward") / "own-lessons.txt"


def own_folder() -> Path | None:
    """The folder of one's own lessons: the environment's, else the remembered one; None where there is none."""
    named = os.environ.get(OWN)
    if named is None:
        try:
            named = _remembered().read_text("utf-8")
        except OSError:
            return None
    return Path(named.strip()).expanduser().resolve() if named.strip() else None


def remember_own(folder: Path | None) -> None:
    """Keep where one's own lessons are, for all commands from now on; None forgets it."""
    path = _remembered()
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, "" if folder is None else str(folder.expanduser().resolve()))
    except OSError as reason:
        raise BadFile(message("lessons.cannot-write", file=str(path), reason=reason.strerror or str(reason))) from None


# --- asking -----------------------------------------------------------------------------


def _in_units(thing: Any, unit_system: str) -> Any:
    """A copy with every text in the reader's unit system."""
    if isinstance(thing, str):
        return words.shown(thing, unit_system)
    if isinstance(thing, tuple):
        return tuple(_in_units(each, unit_system) for each in thing)
    if isinstance(thing, dict):
        return {key: _in_units(each, unit_system) for key, each in thing.items()}
    if isinstance(thing, Worked):
        return thing  # code, and the words to it, are as in the notebook
    if is_dataclass(thing) and not isinstance(thing, type):
        return replace(thing, **{f.name: _in_units(getattr(thing, f.name), unit_system) for f in fields(thing)})
    return thing


def lessons(unit_system: str = "us") -> tuple[Lesson, ...]:
    """All lessons in order, the index first, with one's own; texts in "us" or "si"."""
    return tuple(_in_units(each, unit_system) for each in _course().lessons)


def forget() -> None:
    """Look at the folders again, after one was made or changed."""
    _read_course.cache_clear()


def troubles() -> tuple[str, ...]:
    """A sentence for each of one's own lessons that is left out, and why."""
    return _course().troubles


def lesson(id: str, unit_system: str = "us") -> Lesson:
    """The lesson of an id such as ``"where-it-gets-wet"``."""
    known = {each.id: each for each in _course().lessons}
    if id not in known:
        raise UnknownName("lesson", id, known)
    return _in_units(known[id], unit_system)


def tasks(id: str) -> dict[str, str]:
    """Id -> text of each practical task of a lesson, its numbers still in braces."""
    return dict(next(each for each in _course().lessons if each.id == id).tasks)


def pages() -> tuple[str, ...]:
    """Ids of the lessons in order: all but the index."""
    return tuple(each.id for each in _course().lessons if each.number)


def module(id: str, name: str) -> ModuleType:
    """A module of a lesson, ``"page"`` or ``"questions"``, loaded when it is first wanted."""
    this = lesson(id)
    if not this.own:
        return importlib.import_module(f"dryward.course.{this.folder.name}.{name}")
    _make_importable(this.folder.parent)
    try:
        return importlib.import_module(f"{_OWN_PACKAGE}.{this.folder.name}.{name}")
    except Exception as reason:
        told = _told(reason, this.folder)
        raise BadFile(message("lessons.cannot-open", folder=this.folder.name, reason=told)) from None


def _make_importable(folder: Path) -> None:
    """Let the folders below be loaded as packages under one name, so that a page may use its scene."""
    if getattr(sys.modules.get(_OWN_PACKAGE), "__path__", None) == [str(folder)]:
        return
    for name in [name for name in sys.modules if name.split(".")[0] == _OWN_PACKAGE]:
        del sys.modules[name]
    package = ModuleType(_OWN_PACKAGE, "The lessons of an instructor.")
    package.__path__ = [str(folder)]
    sys.modules[_OWN_PACKAGE] = package
    importlib.invalidate_caches()


def _told(reason: BaseException, folder: Path) -> str:
    """What went wrong in code of one's own, and in which line of the folder."""
    error, said = type(reason).__name__, str(reason).rstrip(".")
    told, trace = message("lessons.error", error=error, reason=said), reason.__traceback__
    while trace is not None:
        path = Path(trace.tb_frame.f_code.co_filename)
        if folder in path.parents:
            told = message("lessons.error-in", file=path.name, line=trace.tb_lineno, error=error, reason=said)
        trace = trace.tb_next
    return told
