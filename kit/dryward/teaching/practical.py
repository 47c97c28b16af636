"""Practical tasks: set the sliders so that ...; physics says whether it is done.

There are several right ways.  A task names its start, what may not be
touched, how many controls may be changed, and how it is judged; it stands in
the ``TASKS`` of its lesson's ``questions.py``, its text in ``[tasks]`` of ``lesson.toml``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from math import isclose

from dryward.checks import UnknownName
from dryward.language import message
from dryward.physics import steady
from dryward.teaching import lessons, words
from dryward.teaching.vault import roof
from dryward.units import from_si, to_si
from dryward.verdict import DRY, Verdict, of_steady
from dryward.verdict.words import sentence
from dryward.weather import Air

#: From here on an inner film counts as none at all [perm].
NO_FILM = 1000.0
#: Controls by name, in SI.
Values = Mapping[str, float]


@dataclass(frozen=True)
class Outcome:
    """What came of a try at a task: solved or not, a sentence with the number, and the number [SI]."""

    solved: bool
    words: str
    value: float


@dataclass(frozen=True)
class Say:
    """Numbers and verdicts in the reader's units."""

    unit_system: str

    def __call__(self, value: float, unit: str) -> str:
        """A number given in SI, said in a unit or its twin in the reader's system."""
        return words.number(from_si(value, unit), unit, self.unit_system)

    def verdict(self, found: Verdict) -> str:
        """The sentence of a verdict."""
        return sentence(found, self.unit_system)


@dataclass(frozen=True)
class Task:
    """One practical task."""

    id: str
    #: Control name -> value.
    start: Values
    may_change: tuple[str, ...]
    most_changes: int
    #: One solution, for the instructor and the tests.
    one_way: Values
    #: Says what came of the controls as they stand.
    outcome: Callable[[Values, Say], Outcome]
    lesson: str = ""
    #: From its ``lesson.toml``; numbers with units stand in braces.
    text: str = ""


def in_si(**values: tuple[float, str]) -> dict[str, float]:
    """Control values given with their units."""
    return {name: to_si(float(value), unit) for name, (value, unit) in values.items()}


def perms(**values: float) -> dict[str, float]:
    """Control values given in perm."""
    return {name: to_si(float(value), "perm") for name, value in values.items()}


#: The winter and the July that several tasks start from.
WINTER = in_si(T_in=(70, "degF"), RH_in=(40, "%"), T_out=(20, "degF"), RH_out=(80, "%"))
JULY = in_si(T_in=(70, "degF"), RH_in=(50, "%"), T_out=(85, "degF"), RH_out=(75, "%"))


def tasks(lesson: str | None = None) -> tuple[Task, ...]:
    """The tasks, or those of one lesson."""
    found = []
    for id in lessons.pages() if lesson is None else (lesson,):
        if lessons.lesson(id).number:
            texts = lessons.tasks(id)
            asked = getattr(lessons.module(id, "questions"), "TASKS", ())
            found += [replace(each, lesson=id, text=texts[each.id]) for each in asked]
    return tuple(found)


def task(id: str) -> Task:
    """The task of that id."""
    known = {each.id: each for each in tasks()}
    if id not in known:
        raise UnknownName("practical task", id, known)
    return known[id]


def judge(id: str, values: Values, unit_system: str = "us", labels: Mapping[str, str] | None = None) -> Outcome:
    """Whether the sliders as they stand [SI] solve a task; those left out stand at their start.

    `labels` says what the page calls a control.
    """
    what = task(id)
    for name in values:
        if name not in what.start:
            raise UnknownName("control in this task", name, what.start)
    now = {**what.start, **values}
    moved = [name for name in now if not isclose(now[name], what.start[name], rel_tol=1e-6, abs_tol=1e-15)]
    kept = [name for name in moved if name not in what.may_change]
    if kept:
        label = (labels or {}).get(kept[0], kept[0])
        return Outcome(False, message("teaching.stays-as-it-is", control=label), float("nan"))
    if len(moved) > what.most_changes:
        return Outcome(
            False, message("teaching.too-many-changes", count=len(moved), most=what.most_changes), float("nan")
        )
    return what.outcome(now, Say(unit_system))


def airs(now: Values) -> tuple[Air, Air]:
    """The air on both sides, from the controls."""
    return Air(now["T_in"], now["RH_in"]), Air(now["T_out"], now["RH_out"])


def vault_state(now: Values, outer: str | float) -> steady.Profile:
    """The steady state of the teaching vault with the inner film of the controls and an outer layer [perm]."""
    inner = from_si(now["M_in"], "perm")
    return steady.profile(roof(None if inner >= 0.999 * NO_FILM else inner, outer), *airs(now))


def dry(profile: steady.Profile, say: Say) -> Outcome:
    """Done when the page's own verdict is dry."""
    found = of_steady(profile)
    return Outcome(found.state == DRY, say.verdict(found), profile.gain)
