"""Three ways through the lessons: a half day, eight weeks, or alone."""

from dataclasses import dataclass
from functools import cache

from dryward.checks import UnknownName
from dryward.teaching import lessons
from dryward.teaching.tables import build, table


@dataclass(frozen=True)
class Session:
    """One sitting.

    Attributes
    ----------
    title : str
    minutes : int
    lessons : tuple of str
        Ids, in order; none for a break.
    """

    title: str
    minutes: int
    lessons: tuple


@dataclass(frozen=True)
class Pathway:
    """One way through the lessons.

    Attributes
    ----------
    id, title, who : str
    sessions : tuple of Session
    homework : int
        Minutes after each session.
    """

    id: str
    title: str
    who: str
    sessions: tuple
    homework: int = 0

    @property
    def minutes(self):
        """All sessions together, without homework."""
        return sum(each.minutes for each in self.sessions)


@cache
def pathways():
    """The three ways.

    Returns
    -------
    tuple of Pathway

    Examples
    --------
    >>> [each.id for each in pathways()]
    ['half-day', 'eight-week', 'self-study']
    """
    found = []
    for row in table("pathways.toml")["pathway"]:
        row = dict(row)
        if row.pop("each_lesson", False):
            row["session"] = [
                {"title": each.title, "minutes": each.minutes, "lessons": [each.id]}
                for each in lessons.lessons()
                if each.number
            ]
        sessions = [build(Session, each, "pathways.toml") for each in row.pop("session")]
        found.append(build(Pathway, {**row, "sessions": sessions}, "pathways.toml"))
    return tuple(found)


def pathway(id):
    """The way of that id.

    Parameters
    ----------
    id : str

    Returns
    -------
    Pathway

    Raises
    ------
    UnknownName
        When there is none.

    Examples
    --------
    >>> pathway("half-day").minutes
    210
    """
    for each in pathways():
        if each.id == id:
            return each
    raise UnknownName("pathway", id, [each.id for each in pathways()])
