"""Beliefs: what builders hold, why it seems right, and what is right.

A belief is met in at least one lesson.  A slip is a wrong turn in the
arithmetic; the questions use both, so that a wrong answer says what to teach.
"""

from __future__ import annotations

from dataclasses import dataclass

from dryward.checks import UnknownName
from dryward.language import once
from dryward.teaching.words import build, table


@dataclass(frozen=True)
class Belief:
    """One belief of the trade, or one slip of the pencil."""

    id: str
    #: As it is said on the job.
    claim: str
    #: Why it looks right.
    seems: str
    #: What is right.
    right: str
    #: Where to look again, for whom it led astray; it does not tell the answer.
    hint: str
    #: Counted from 1; 0 for a slip.
    number: int = 0
    #: The grain of truth in it.
    grain: str = ""
    #: The kind of question that always offers it as a wrong answer: of `kinds`, or ``lesson/check``.
    asked: str = ""
    #: Where two cases that look alike to who holds it come out opposite: the lesson, and which of its steps.
    lesson: str = ""
    step: int = 0
    #: By what it is broken there, with the numbers.
    broken: str = ""
    #: What was changed in the lessons after they were read as by one who wants to keep it.
    changed: str = ""
    #: What a stubborn holder can still say.
    survives: str = ""
    #: Where the belief or the correction was read, and how.
    source: str = ""


@once
def beliefs() -> tuple[Belief, ...]:
    """The beliefs of the trade, by number."""
    rows = [build(Belief, row, "beliefs.toml") for row in table("beliefs.toml")["belief"]]
    return tuple(sorted(rows, key=lambda each: each.number))


@once
def slips() -> tuple[Belief, ...]:
    """The slips of the arithmetic, in the order of the file."""
    return tuple(build(Belief, row, "beliefs.toml") for row in table("beliefs.toml")["slip"])


def belief(id: str) -> Belief:
    """The belief or slip of that id."""
    everything = (*beliefs(), *slips())
    for each in everything:
        if each.id == id:
            return each
    raise UnknownName("belief", id, [each.id for each in everything])
