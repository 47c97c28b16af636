"""A quiz on paper, and its key: two pages to print, the same for the same seed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING
from zlib import crc32

from dryward import language, units
from dryward.checks import OutOfRange, UnknownName
from dryward.language import message
from dryward.teaching.beliefs import belief, beliefs
from dryward.teaching.kinds import KINDS, draw
from dryward.teaching.questions import Question

if TYPE_CHECKING:
    from jinja2 import Template

#: The six items of the exit quiz of a four-hour day.
EXIT = ("direction", "line-or-water", "film-state", "leak-or-diffusion", "vent-power", "air-changes")
#: What a quiz may ask: one of each kind, the exit quiz, or one question for each belief.
SETS = ("kinds", "exit", "beliefs")
PASS = 0.8
LETTERS = "ABCDEF"


def pass_share() -> str:
    """The part of the lettered items that a pass needs, in words."""
    return units.written(100 * PASS, ".0f", "%")


@dataclass(frozen=True)
class Paper:
    """A quiz: its seed and its questions."""

    title: str
    seed: int
    unit_system: str
    questions: tuple[Question, ...]

    @property
    def code(self) -> str:
        """What stands on both pages, so that a key finds its quiz."""
        kinds = ",".join(each.kind for each in self.questions)
        return f"{self.seed}-{self.unit_system}-{crc32(kinds.encode()) % 10000:04d}"

    def quiz(self) -> str:
        """The page for the learner, as HTML that needs nothing else."""
        return _page(
            "quiz.html.j2",
            self,
            name=message("teaching.quiz-name"),
            date=message("teaching.quiz-date"),
            how=message("teaching.quiz-how"),
            foot=message("teaching.quiz-foot", code=self.code),
        )

    def key(self) -> str:
        """The page for the instructor, as HTML that needs nothing else."""
        answers = [each.answer for each in self.questions if not each.choices]
        return _page(
            "key.html.j2",
            self,
            title=message("teaching.key-title", title=self.title),
            how=message("teaching.key-pass", share=pass_share()),
            behind=message("teaching.key-behind"),
            marked=[message("teaching.key-marked", answer=str(each)) for each in answers],
            foot=message("teaching.key-foot", code=self.code),
        )

    def letter(self, number: int) -> str:
        """Letter of the right answer of one question, counted from 0; empty for one in words."""
        choices = self.questions[number].choices
        return next((LETTERS[place] for place, each in enumerate(choices) if each.right), "")


def paper(
    seed: int,
    kinds: Sequence[str] | None = None,
    unit_system: str = "us",
    title: str | None = None,
) -> Paper:
    """A quiz of some kinds; it has a title of its own where none is given."""
    chosen = tuple(KINDS) if kinds is None else tuple(kinds)
    if not chosen:
        raise OutOfRange(message("teaching.quiz-no-kind"))
    if seed is None:
        raise OutOfRange(message("teaching.quiz-no-seed"))
    title = message("teaching.quiz-title") if title is None else title
    return Paper(title, seed, unit_system, tuple(draw(kind, seed, unit_system) for kind in chosen))


def asks(name: str) -> tuple[str, ...]:
    """The kinds of question of one of the `SETS`.

    >>> asks("exit") == EXIT
    True
    """
    if name not in SETS:
        raise UnknownName("quiz", name, SETS)
    asked = tuple(dict.fromkeys(each.asked for each in beliefs()))
    return {"kinds": tuple(KINDS), "exit": EXIT, "beliefs": asked}[name]


def passed(quiz: Paper, letters: Sequence[str]) -> tuple[bool, int, int]:
    """Whether a filled-in quiz is a pass: four of five right, and those that must be.

    >>> quiz = paper(7, EXIT)
    >>> passed(quiz, [quiz.letter(k) for k in range(6)])
    (True, 6, 6)
    """
    if len(letters) != len(quiz.questions):
        raise OutOfRange(message("teaching.quiz-answers", count=len(quiz.questions), given=len(letters)))
    right, missed, counted = 0, False, 0
    for number, (question, given) in enumerate(zip(quiz.questions, letters, strict=True)):
        if not question.choices:
            continue
        counted += 1
        good = given.strip().upper() == quiz.letter(number)
        right += good
        missed |= question.must and not good
    return (right >= PASS * counted and not missed, right, counted)


@cache
def _template(name: str) -> Template:
    from jinja2 import Environment, StrictUndefined

    text = (files("dryward.teaching") / "data" / name).read_text("utf-8")
    return Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True).from_string(
        text
    )


def _page(file: str, quiz: Paper, **texts: str | list[str]) -> str:
    return _template(file).render(
        quiz=quiz, letters=LETTERS, belief=belief, lines=range(8), language=language.name(), **texts
    )
