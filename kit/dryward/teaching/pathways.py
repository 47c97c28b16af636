"""Ways through the lessons: a day of four hours, nine evenings, or alone; and the pre-test for who may skip."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from dryward import language
from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.language import message
from dryward.teaching import lessons
from dryward.teaching.kinds import KINDS, draw
from dryward.teaching.questions import Question
from dryward.teaching.words import build, table


@dataclass(frozen=True)
class Session:
    """One sitting, and the ids of its lessons in order; none for a break."""

    title: str
    minutes: int
    lessons: tuple[str, ...] = ()
    #: What a lesson names to be taken in it; empty where no lesson is.
    id: str = ""

    @property
    def walked(self) -> int:
        """Minutes of its lessons on the screen, as one learner walks them; the rest is for talk and props."""
        return sum(lessons.lesson(each).minutes for each in self.lessons)


@dataclass(frozen=True)
class Pathway:
    """One way through the lessons, for whom it is, and the minutes of homework after each session."""

    id: str
    title: str
    who: str
    sessions: tuple[Session, ...]
    homework: int = 0

    @property
    def minutes(self) -> int:
        """All sessions together, without homework."""
        return sum(each.minutes for each in self.sessions)


def pathways() -> tuple[Pathway, ...]:
    """The three ways, each lesson in the sessions that its folder names; who learns alone takes all of them."""
    return _pathways(lessons.own_folder(), language.folder())


@cache
def _pathways(own: Path | None, spoken: Path | None) -> tuple[Pathway, ...]:
    found = []
    for row in table("pathways.toml")["pathway"]:
        row = dict(row)
        if row.pop("each_lesson", False):
            sessions = [Session(each.title, each.minutes, (each.id,)) for each in lessons.lessons() if each.number]
        else:
            sessions = [build(Session, _taken(row["id"], each), "pathways.toml") for each in row.pop("session")]
        found.append(build(Pathway, {**row, "sessions": sessions}, "pathways.toml"))
    known = {(way.id, each.id) for way in found for each in way.sessions if each.id}
    for each in lessons.lessons():
        for named in each.sessions:
            if named not in known and not each.own:
                file = f"{each.folder.name}/lesson.toml"
                raise BadFile(message("teaching.no-session", file=file, session=" ".join(named)))
    return tuple(found)


def _taken(way: str, session: dict) -> dict:
    """A session with the lessons that say they are taken in it."""
    named = (way, session.get("id"))
    return {**session, "lessons": [each.id for each in lessons.lessons() if named in each.sessions]}


def pathway(id: str) -> Pathway:
    """The way of that id."""
    for each in pathways():
        if each.id == id:
            return each
    raise UnknownName("pathway", id, [each.id for each in pathways()])


def order(way: str | None) -> tuple[str, ...]:
    """The lessons of a way in order, each once; all lessons without one.

    Examples
    --------
    >>> order("half-day")[0]
    'read-the-air'
    """
    if way is None:
        return lessons.pages()
    found = [id for session in pathway(way).sessions for id in session.lessons]
    return tuple(dict.fromkeys(id for id in found if id in lessons.pages()))


def around(id: str, way: str | None) -> tuple[str | None, str | None]:
    """The lessons before and after one on a way, None at its ends; by number where the way does not have it."""
    on = order(way) if id in order(way) else (*({id} - set(lessons.pages())), *lessons.pages())
    at = on.index(id)
    return on[at - 1] if at else None, on[at + 1] if at + 1 < len(on) else None


# --- the pre-test ------------------------------------------------------------------------


def pretest() -> dict[str, tuple[str, ...]]:
    """The kinds of question of the pre-test, and the lessons that a wrong answer points to."""
    found: dict[str, tuple[str, ...]] = {}
    for each in lessons.lessons():
        if each.pretest in KINDS:
            found[each.pretest] = (*found.get(each.pretest, ()), each.id)
    return found


def pretest_questions(seed: int, unit_system: str = "us") -> tuple[Question, ...]:
    """The questions of the pre-test, one of each kind, the same for the same seed."""
    return tuple(draw(kind, seed, unit_system) for kind in pretest())


def placed(right: Sequence[bool]) -> tuple[str, ...]:
    """The lessons to take, from which answers of the pre-test were right; those that are always taken with them."""
    asked = pretest()
    if len(right) != len(asked):
        raise OutOfRange(message("teaching.pretest-answers", count=len(asked), given=len(right)))
    wanted = {id for ok, taken in zip(right, asked.values(), strict=True) if not ok for id in taken}
    return tuple(each.id for each in lessons.lessons() if each.number and (each.id in wanted or each.always))
