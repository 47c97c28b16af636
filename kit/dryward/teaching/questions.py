"""What a question is, the draw it is made from, and the checks of a lesson."""

import random
from dataclasses import dataclass, field, replace

from dryward import units
from dryward.checks import OutOfRange, UnknownName
from dryward.teaching import lessons, words
from dryward.teaching.beliefs import belief
from dryward.teaching.kinds import KINDS


@dataclass(frozen=True)
class Choice:
    """One answer to choose.

    Attributes
    ----------
    text : str
    right : bool
    belief : str
        Id of the belief or slip behind a wrong answer; empty for the right one.
    reply : str
        For a wrong one: why it looked right, and what is right.
    value : float or None
        The number it states, in the unit of the question.
    """

    text: str
    right: bool
    belief: str = ""
    reply: str = ""
    value: float | None = None


@dataclass(frozen=True)
class Question:
    """One question with its answers in the order they are shown.

    Attributes
    ----------
    kind : str
        A kind of the generator, or the name of a lesson's check.
    prompt : str
    choices : tuple of Choice
        Exactly one is right; empty for a question in the learner's own words.
    seed : int or None
        None for the fixed numbers of the lesson.
    answer : float or str
        The number in `unit`, or the text of the right choice.
    unit : str
        A key of `units.UNITS`, or empty.
    tolerance : float
        How far a typed number may be off, in `unit`.
    given : dict
        The numbers drawn, by name, in the units of the prompt.
    must : bool
        Whether a pass needs this one right.
    """

    kind: str
    prompt: str
    choices: tuple
    seed: int | None
    answer: float | str
    unit: str = ""
    tolerance: float = 0.0
    given: dict = field(default_factory=dict)
    must: bool = False

    @property
    def right(self):
        """The right choice, or None where the learner writes the answer."""
        return next((each for each in self.choices if each.right), None)

    def accepts(self, value):
        """Whether a typed number is near enough.

        Parameters
        ----------
        value : float
            In the unit of the question.

        Returns
        -------
        bool
        """
        return not isinstance(self.answer, str) and abs(value - self.answer) <= self.tolerance


class Draw:
    """The numbers of one question: drawn from a seed, or the fixed ones.

    Parameters
    ----------
    kind : str
    seed : int or None
        None gives the fixed numbers.
    unit_system : {"us", "si"}

    Examples
    --------
    >>> Draw("any", None).pick(40, (20, 30, 50))
    40
    >>> Draw("any", 3).pick(40, (20, 30, 50)) in (20, 30, 50)
    True
    """

    def __init__(self, kind, seed, unit_system="us"):
        self.kind, self.seed, self.unit_system = kind, seed, unit_system
        # A text seed is hashed the same way on every machine and version.
        self.random = random.Random(f"{kind}/{seed}")
        #: Tossed once, so that an answer of two kinds is each as often right, however often the draw is repeated.
        self.coin = self.random.random() < 0.5
        self.given = {}

    def pick(self, fixed, options):
        """One of the options, or the fixed value when there is no seed."""
        return fixed if self.seed is None else self.random.choice(tuple(options))

    def say(self, value, unit):
        """A number in the reader's unit system."""
        return words.number(value, unit, self.unit_system)

    def note(self, **numbers):
        """Keep the drawn numbers beside the question."""
        self.given = numbers

    def words(self, prompt, right, *wrong, must=False):
        """A question whose answers are words.

        Parameters
        ----------
        prompt, right : str
        *wrong : (text, belief id, what is right here, why it looked right here)
            The last two may be left out; an empty third one says what is right as for the right answer.
        must : bool

        Returns
        -------
        Question
        """
        choices = [Choice(right, True, "", f"Right. {self.why}" if self.why else "Right.")]
        for text, id, *here in wrong:
            choices.append(Choice(text, False, id, self._reply(id, here)))
        return self._question(prompt, choices, right, "", 0.0, must)

    def number(self, prompt, answer, unit, tolerance, *wrong, must=False, tail=""):
        """A question whose answers are numbers.

        Parameters
        ----------
        prompt : str
        answer : float
            In `unit`.
        unit : str
        tolerance : float
            In `unit`.
        *wrong : (value, belief id, what is right here) or (value, belief id)
            Left out when too near to the right answer or to another one.
        must : bool
        tail : str
            Behind every number, for a quantity the unit does not name.

        Returns
        -------
        Question or None
            None when fewer than two wrong answers stand clear of the right one.
        """
        kept = [(answer, "", [])]
        for value, id, *here in wrong:
            if all(abs(value - each) > 1.2 * tolerance for each, _, _ in kept):
                kept.append((value, id, here))
        seen = words.reader_unit(unit, self.unit_system) if unit else ""

        def turned(number):
            return units.from_si(units.to_si(float(number), unit), seen) if unit else float(number)

        tolerance = abs(turned(answer + tolerance) - turned(answer))
        answer, choices = turned(answer), []
        for value, id, here in kept:
            text = self._said(turned(value), seen, tail)
            if text not in [each.text for each in choices]:
                reply = self._reply(id, here) if id else f"Right. {self.why}".strip()
                choices.append(Choice(text, not id, id, reply, turned(value)))
        if len(choices) < 3:
            return None
        return self._question(prompt, choices, answer, seen, tolerance, must)

    def written(self, prompt, looked_for):
        """A question in the learner's own words, and what a person who marks it looks for."""
        return Question(self.kind, prompt, (), self.seed, looked_for, given=dict(self.given))

    why = ""

    def because(self, text):
        """What the reply to the right answer says, and every wrong one ends with."""
        self.why = text
        return self

    def _said(self, value, unit, tail):
        plain = units.number(value)
        tail = tail.removesuffix("s") if plain == "1" else tail
        return (words.number(value, unit, self.unit_system) if unit else plain) + tail

    def _reply(self, id, here):
        known = belief(id)
        seems, right = (words.shown(text, self.unit_system) for text in (known.seems, known.right))
        end = here[0] if here and here[0] else self.why or right
        seems = here[1] if len(here) > 1 else seems
        return f"Why it looked right: {seems} What is right: {end}"

    def _question(self, prompt, choices, answer, unit, tolerance, must):
        self.random.shuffle(choices)
        choices = tuple(replace(each, text=_stopped(each.text), reply=_stopped(each.reply)) for each in choices)
        answer = _stopped(answer) if isinstance(answer, str) else answer
        given = dict(self.given)
        return Question(self.kind, _stopped(prompt), choices, self.seed, answer, unit, tolerance, given, must)


def _stopped(text):
    """No second period after a unit that ends in one."""
    return text.replace("..", ".").replace(".?", "?")


#: How often a draw whose wrong answers fall on the right one is repeated.
_TRIES = 2000


def _made(maker, name, seed, unit_system):
    if seed is not None and (isinstance(seed, bool) or not isinstance(seed, int) or seed < 0):
        raise OutOfRange(f"A seed is a whole number from 0 up, not {seed!r:.40}.")
    draw = Draw(name, seed, unit_system)
    for _ in range(_TRIES):
        found = maker(draw)
        if found is not None:
            return found
    raise AssertionError(f"{name} gives no clear question with seed {seed}")


def checks(lesson_id, seed=None, unit_system="us"):
    """The three checks of a lesson.

    Parameters
    ----------
    lesson_id : str
    seed : int, optional
        Without one the numbers are the fixed ones of the lesson.
    unit_system : {"us", "si"}

    Returns
    -------
    tuple of Question
        Three; none for the index.

    Raises
    ------
    UnknownName
        For an unknown lesson or unit system.
    OutOfRange
        For a seed that is no whole number.

    Examples
    --------
    >>> len(checks("where-it-gets-wet", 1))
    3
    """
    if not lessons.lesson(lesson_id, unit_system).number:
        return ()
    made = lessons.module(lesson_id, "questions").CHECKS
    return tuple(_made(each, f"{lesson_id}/{each.__name__}", seed, unit_system) for each in made)


def kinds():
    """Names of the kinds of the generator, in order.

    Returns
    -------
    tuple of str
    """
    return tuple(KINDS)


def draw(kind, seed=None, unit_system="us"):
    """One question of a kind.

    Parameters
    ----------
    kind : str
        One of `kinds`.
    seed : int, optional
    unit_system : {"us", "si"}

    Returns
    -------
    Question

    Raises
    ------
    UnknownName
        For an unknown kind or unit system.
    OutOfRange
        For a seed that is no whole number.
    """
    if kind not in KINDS:
        raise UnknownName("kind of question", kind, KINDS)
    return _made(KINDS[kind], kind, seed, unit_system)
