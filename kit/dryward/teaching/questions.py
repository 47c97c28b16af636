"""What a question is, the draw it is made from, and the checks of a lesson; those that lessons share: `kinds`."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from dryward import units
from dryward.checks import OutOfRange, UnknownName
from dryward.language import Beside, beside, message
from dryward.teaching import lessons, words
from dryward.teaching.beliefs import belief


@dataclass(frozen=True)
class Choice:
    """One answer to choose."""

    text: str
    right: bool
    #: Id of the belief or slip behind a wrong answer; empty for the right one.
    belief: str = ""
    #: For a wrong one: why it looked right, and what is right.
    reply: str = ""
    #: For a wrong one: where to look, without the answer; said at the first try.
    hint: str = ""
    #: The number it states, in the unit of the question.
    value: float | None = None
    #: For the right one: why it is right; empty where nothing is said.
    why: str = ""


@dataclass(frozen=True)
class Question:
    """One question with its answers in the order they are shown."""

    #: A kind of the generator, or the name of a lesson's check.
    kind: str
    prompt: str
    #: Exactly one is right; empty for a question in the learner's own words.
    choices: tuple
    #: None for the fixed numbers of the lesson.
    seed: int | None
    #: The number in `unit`, or the text of the right choice.
    answer: float | str
    #: A key of `units.UNITS`, or empty.
    unit: str = ""
    #: How far a typed number may be off, in `unit`.
    tolerance: float = 0.0
    #: The numbers drawn, by name, in the units of the prompt.
    given: dict = field(default_factory=dict)
    #: Whether a pass needs this one right.
    must: bool = False

    @property
    def right(self) -> Choice | None:
        """The right choice, or None where the learner writes the answer."""
        return next((each for each in self.choices if each.right), None)


class Draw:
    """The numbers of one question: drawn from a seed, or the fixed ones.

    >>> Draw("any", None).pick(40, (20, 30, 50))
    40
    >>> Draw("any", 3).pick(40, (20, 30, 50)) in (20, 30, 50)
    True
    """

    def __init__(self, kind: str, seed: int | None, unit_system: str = "us", texts: Beside | None = None) -> None:
        self.kind, self.seed, self.unit_system = kind, seed, unit_system
        #: The messages of the lesson, for a check that asks by its name.
        self.texts = texts
        self.facts: dict[str, Any] = {}
        # A text seed is hashed the same way on every machine and version.
        self.random = random.Random(f"{kind}/{seed}")
        #: Tossed once, so that an answer of two kinds is each as often right, however often the draw is repeated.
        self.coin = self.random.random() < 0.5
        self.given: dict[str, Any] = {}

    def pick(self, fixed: Any, options: Iterable[Any]) -> Any:
        """One of the options, or the fixed value when there is no seed."""
        return fixed if self.seed is None else self.random.choice(tuple(options))

    def say(self, value: float, unit: str) -> str:
        """A number in the reader's unit system."""
        return words.number(value, unit, self.unit_system)

    def note(self, **numbers: Any) -> None:
        """Keep the drawn numbers beside the question."""
        self.given = numbers

    def tell(self, unit: str = "", /, **facts: Any) -> None:
        """Facts for the texts of the question: numbers in a unit, or without one what is shown as it is."""
        self.facts |= {name: self.say(value, unit) for name, value in facts.items()} if unit else facts

    def ask(self, *wrong: str | tuple[str, str], must: bool = False) -> Question:
        """A question by the name of its function, whose texts are messages of the lesson.

        ``<name>-ask`` asks, ``-right`` answers, ``-why`` says why, where there
        is one.  A wrong answer is a belief or slip: ``<name>-<belief>`` says
        it, ``-<belief>-reply`` what is right and ``-<belief>-seems`` why it
        looked right, where the belief's own words do not serve.  ``-hint``
        says where to look on the page, before anything is told; without it
        that of the belief does.  Two of one belief are told apart by a second
        name: ``(belief, name)``.
        """
        answers = [(each, each) if isinstance(each, str) else each for each in wrong]
        told = [(self._text(name), belief, *self._ends(name)) for belief, name in answers]
        return self.words(self._prompt(), self._text("right"), *told, must=must)

    def ask_number(
        self, answer: float, unit: str, tolerance: float, *wrong: tuple[float, str] | tuple[float, str, str]
    ) -> Question | None:
        """The same with a number as the answer; a wrong one is ``(value, belief)`` or ``(value, belief, name)``."""
        told = [(value, belief, *self._ends(*name or (belief,))) for value, belief, *name in wrong]
        return self.number(self._prompt(), answer, unit, tolerance, *told)

    def words(self, prompt: str, right: str, *wrong: Sequence[str], must: bool = False) -> Question:
        """A question whose answers are words."""
        choices = [Choice(right, True, "", self._praise(), why=self.why)]
        for text, id, *here in wrong:
            choices.append(Choice(text, False, id, self._reply(id, here), self._hint(id)))
        return self._question(prompt, choices, right, "", 0.0, must)

    def number(
        self,
        prompt: str,
        answer: float,
        unit: str,
        tolerance: float,
        *wrong: Sequence[Any],
        must: bool = False,
        tail: str = "",
    ) -> Question | None:
        """A question whose answers are numbers."""
        kept: list[tuple[float, str, list[str]]] = [(answer, "", [])]
        for value, id, *here in wrong:
            if all(abs(value - each) > 1.2 * tolerance for each, _, _ in kept):
                kept.append((value, id, here))
        seen = words.reader_unit(unit, self.unit_system) if unit else ""

        def turned(number: float) -> float:
            return units.from_si(units.to_si(float(number), unit), seen) if unit else float(number)

        tolerance = abs(turned(answer + tolerance) - turned(answer))
        answer = turned(answer)
        choices: list[Choice] = []
        for value, id, here in kept:
            text = self._said(turned(value), seen, tail)
            if text not in [each.text for each in choices]:
                reply = self._reply(id, here) if id else self._praise()
                hint = self._hint(id) if id else ""
                choices.append(Choice(text, not id, id, reply, hint, turned(value), "" if id else self.why))
        if len(choices) < 3:
            return None
        return self._question(prompt, choices, answer, seen, tolerance, must)

    def written(self, prompt: str, looked_for: str) -> Question:
        """A question in the learner's own words, and what a person who marks it looks for."""
        return Question(self.kind, prompt, (), self.seed, looked_for, given=dict(self.given))

    why = ""

    def because(self, text: str) -> Draw:
        """What the reply to the right answer says, and every wrong one ends with."""
        self.why = text
        return self

    def _prompt(self) -> str:
        """The question, once the reason of its answer is known to the replies."""
        if self._has("why"):
            self.because(self._text("why"))
        return self._text("ask")

    def _ends(self, name: str) -> list[str]:
        """Of a wrong answer: what is right and why it looked right; empty where nothing of its own is said."""
        return [self._text(each) if self._has(each) else "" for each in (f"{name}-reply", f"{name}-seems")]

    def _id(self, name: str) -> str:
        return f"{self.kind.rpartition('/')[2].replace('_', '-')}-{name}"

    def _has(self, name: str) -> bool:
        return self.texts is not None and self._id(name) in self.texts

    def _text(self, name: str) -> str:
        if self.texts is None:
            raise AssertionError(f"{self.kind} has no messages of a lesson")
        return self.texts(self._id(name), **self.facts)

    def _said(self, value: float, unit: str, tail: str) -> str:
        return (words.number(value, unit, self.unit_system) if unit else units.number(value)) + tail

    def _praise(self) -> str:
        return message("questions.right-because", why=self.why) if self.why else message("questions.right")

    def _hint(self, id: str) -> str:
        """Where to look, and not what is right: as the check says it, else as its belief does."""
        return self._text("hint") if self._has("hint") else words.shown(belief(id).hint, self.unit_system)

    def _reply(self, id: str, here: Sequence[str]) -> str:
        known = belief(id)
        seems, right = (words.shown(text, self.unit_system) for text in (known.seems, known.right))
        end = here[0] if here and here[0] else self.why or right
        seems = here[1] if len(here) > 1 and here[1] else seems
        return message("questions.wrong", seems=seems, right=end)

    def _question(
        self, prompt: str, choices: list[Choice], answer: float | str, unit: str, tolerance: float, must: bool
    ) -> Question:
        self.random.shuffle(choices)
        told = tuple(
            replace(
                each,
                text=_stopped(each.text),
                reply=_stopped(each.reply),
                hint=_stopped(each.hint),
                why=_stopped(each.why),
            )
            for each in choices
        )
        answer = _stopped(answer) if isinstance(answer, str) else answer
        given = dict(self.given)
        return Question(self.kind, _stopped(prompt), told, self.seed, answer, unit, tolerance, given, must)


def _stopped(text: str) -> str:
    """No second period after a unit that ends in one."""
    return text.replace("..", ".").replace(".?", "?")


#: Makes a question from a draw; None where the numbers drawn make no clear one.
Maker = Callable[[Draw], "Question | None"]
#: How often a draw whose wrong answers fall on the right one is repeated.
_TRIES = 2000


def made(maker: Maker, name: str, seed: int | None, unit_system: str, texts: Beside | None = None) -> Question:
    """A question by its maker, the draw repeated until it is clear; OutOfRange for a seed that is no whole number."""
    if seed is not None and (isinstance(seed, bool) or not isinstance(seed, int) or seed < 0):
        raise OutOfRange(message("questions.seed", given=f"{seed!r:.40}"))
    draw = Draw(name, seed, unit_system, texts)
    for _ in range(_TRIES):
        draw.facts = {}
        found = maker(draw)
        if found is not None:
            return found
    raise AssertionError(f"{name} gives no clear question with seed {seed}")


def checks(lesson_id: str, seed: int | None = None, unit_system: str = "us") -> tuple[Question, ...]:
    """The checks of a lesson."""
    return tuple(check(kind, seed, unit_system) for kind in check_names(lesson_id))


def check_names(lesson_id: str) -> tuple[str, ...]:
    """The checks of a lesson by both their names, ``lesson/check``, in order."""
    return tuple(f"{lesson_id}/{name}" for name in _makers(lesson_id))


def check(kind: str, seed: int | None = None, unit_system: str = "us") -> Question:
    """One check of a lesson by both their names."""
    lesson_id, _, name = kind.partition("/")
    makers = _makers(lesson_id)
    if name not in makers:
        raise UnknownName("kind of question", kind, check_names(lesson_id))
    texts = beside(str(lessons.module(lesson_id, "questions").__file__))
    return made(makers[name], kind, seed, unit_system, texts)


def _makers(lesson_id: str) -> dict[str, Maker]:
    if not lessons.lesson(lesson_id).number:
        return {}
    return {each.__name__: each for each in lessons.module(lesson_id, "questions").CHECKS}
