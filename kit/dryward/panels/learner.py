"""The learner at one page: what they predicted, answered and solved, and what is remembered of it."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from dryward.checks import PlainError
from dryward.language import message
from dryward.panels.desk import parts
from dryward.panels.desk.parts import Part
from dryward.panels.protocol import Malformed, place
from dryward.teaching import beliefs, lessons, pathways, practical, questions, words
from dryward.teaching.progress import Event, Progress
from dryward.units import SHOWN

if TYPE_CHECKING:
    from dryward.panels.controls import Control

#: The settings that a page reads.
NAMES = ("unit_system", "type_size", "projector", "instructor")
#: A lesson on more beliefs than this asks only for the ones behind the learner's own wrong answers.
_BELIEFS = 4


class Settings:
    """The settings and answers of one learner, as a page sees them, through the learner's own file.

    Where that file cannot be read or written the page works all the same,
    remembers until it is closed, and says so in one sentence.
    """

    def __init__(self, progress: Progress | None = None) -> None:
        self.progress = progress or Progress()
        # A page's own: another window's switch does not turn this one over.
        self._here: dict[str, Any] = {name: self.progress.setting(name) for name in NAMES}

    @property
    def trouble(self) -> str:
        """Why something could not be kept, in one sentence; empty when all is well."""
        return self.progress.trouble

    def __getitem__(self, name: str) -> Any:
        return self._here[name]

    def __setitem__(self, name: str, value: str | int | bool) -> None:
        self._here[name] = value
        self._keep(self.progress.set, name, value)

    def refresh(self) -> None:
        """Take in what other windows have kept in the learner's file."""
        self._keep(self.progress.save)

    def opened(self, lesson: str) -> None:
        """Keep that a lesson was opened."""
        self._keep(self.progress.opened, lesson)

    def prediction(self, lesson: str) -> str | None:
        """Key of the prediction made last, or None."""
        return self.progress.prediction(lesson)

    def predicted(self, lesson: str, key: str) -> None:
        """Keep a prediction."""
        self._keep(self.progress.predicted, lesson, key)

    def left(self, lesson: str, beat: str) -> None:
        """Keep the beat at which a lesson is left; empty for its free page."""
        if self.progress.left_off(lesson) != (beat, beat == ""):
            self._keep(self.progress.left, lesson, beat)

    def left_off(self, lesson: str) -> tuple[str | None, bool]:
        """The beat at which a lesson was left, None where there is none, and whether its free page was ever reached."""
        return self.progress.left_off(lesson)

    def bets(self, lesson: str) -> dict[str, str]:
        """Bet of a beat -> the choice made last."""
        return {each["bet"]: each["choice"] for each in self.progress.events("bet", lesson)}

    def bet(self, lesson: str, bet: str, choice: str, right: str, beliefs: Mapping[str, str]) -> None:
        """Keep a bet of a beat; `beliefs` are those behind its choices, by key."""
        offers = sorted({each for each in beliefs.values() if each})
        self._keep(self.progress.bet, lesson, bet, choice, choice == right, beliefs[choice], offers)

    def answered(self, lesson: str, question: questions.Question, choice: questions.Choice) -> None:
        """Keep an answer to a question."""
        self._keep(self.progress.answered, lesson, question, choice)

    def answers(self, lesson: str) -> tuple[Event, ...]:
        """The answers kept of a lesson, in the order of time."""
        return self.progress.events("answer", lesson)

    def said_of(self, lesson: str, belief: str, still: bool) -> None:
        """Keep whether a belief is still held."""
        self._keep(self.progress.said_of, lesson, belief, still)

    def solved(self, lesson: str, task: str) -> None:
        """Keep that a practical task was solved."""
        self._keep(self.progress.solved, lesson, task)

    def _keep(self, record: Callable[..., object], *what: object) -> None:
        # The file's own sentence then stands in `trouble`; what was made stays in memory.
        with contextlib.suppress(PlainError):
            record(*what)


@dataclass
class Prediction:
    """The bet before the drawing is uncovered: the choice made, whether the answer shows, the hands of a class."""

    asked: lessons.Prediction
    chosen: int | None = None
    reveal: bool = False
    hands: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.hands = [0] * len(self.asked.choices)

    def key(self) -> str | None:
        """Key of the choice made."""
        return None if self.chosen is None else self.asked.choices[self.chosen].key

    def number(self, key: str) -> int:
        """Where the choice of a key stands in the list."""
        return [choice.key for choice in self.asked.choices].index(key)

    def again(self, key: str | None) -> None:
        """Take the choice of an earlier visit, if it is still one."""
        self.chosen = next((k for k, choice in enumerate(self.asked.choices) if choice.key == key), None)

    def choose(self, choice: int | None) -> None:
        """Bet, or with None take the bet back; the answer is hidden again."""
        self.chosen, self.reveal = None if choice is None else place(choice, self.asked.choices), False

    def raise_hand(self, choice: int, by: int) -> None:
        """One hand more for a choice, or one less."""
        k = place(choice, self.hands)
        self.hands[k] = max(0, self.hands[k] + (1 if by > 0 else -1))

    def reply(self, to_class: bool) -> str:
        """What is said once the answer shows: to the choice made, or to a class, which has made them all."""
        made = None if self.chosen is None or to_class else self.asked.choices[self.chosen]
        return (made and made.reply) or self.asked.reveal

    def frame(self, to_class: bool = False) -> dict[str, Any]:
        """What the browser needs to show it; which choice is right only while the answer shows."""
        return {
            "prompt": self.asked.prompt,
            "choices": [choice.text for choice in self.asked.choices],
            "chosen": self.chosen,
            "right": self.number(self.asked.right) if self.reveal else None,
            "reply": self.reply(to_class) if self.reveal else "",
            "hands": list(self.hands),
        }


class Questions:
    """The questions at the end of a lesson: as they are asked, the tries made, the replies.

    The first wrong try gets a hint; the second one is told, and so is a right
    one.  Until then nothing of what goes to the browser says which is right.
    """

    def __init__(self, lesson_id: str, unit_system: str) -> None:
        self.lesson_id = lesson_id
        #: None for the fixed numbers of the lesson; others draw new numbers.
        self.seed: int | None = None
        #: Number -> the choices made, the first one first.
        self.tries: dict[int, list[int]] = {}
        self.ask(unit_system)

    def again(self, answers: Sequence[Event], unit_system: str) -> None:
        """Show the answers of an earlier visit: those to the numbers that were asked last."""
        if not answers:
            return
        seed = answers[-1].get("seed")
        if type(seed) is int and seed >= 0:
            self.seed = seed
            self.ask(unit_system)
        # An answer is kept by its text, in the units in which it was read.
        known: dict[tuple[Any, Any], tuple[int, int]] = {}
        for system in SHOWN:
            for number, question in enumerate(questions.checks(self.lesson_id, self.seed, unit_system=system)):
                for choice, each in enumerate(question.choices):
                    known[question.kind, each.text] = number, choice
        for each in answers:
            if each.get("seed") == self.seed and (found := known.get((each["question"], str(each.get("text"))))):
                self.answer(*found)

    def ask(self, unit_system: str) -> None:
        """Draw them, in a unit system; what was chosen stays chosen."""
        self.asked = tuple(questions.checks(self.lesson_id, self.seed, unit_system=unit_system))

    def renew(self, unit_system: str) -> None:
        """Draw other numbers and forget the choices."""
        self.seed = 1 if self.seed is None else self.seed + 1
        self.tries = {}
        self.ask(unit_system)

    def answer(self, number: int, choice: int) -> questions.Choice:
        """Choose an answer, both counted from 0; gives it, with its reply."""
        choices = self.asked[place(number, self.asked)].choices
        tries = self.tries.setdefault(number, [])
        if tries[-1:] != [place(choice, choices)]:  # the same one sent twice is one try
            tries.append(choice)
        return choices[choice]

    def told(self, number: int) -> bool:
        """Whether all may be said of a question: after a right try, or the second wrong one."""
        tries, choices = self.tries.get(number, []), self.asked[number].choices
        return len(tries) > 1 or any(choices[each].right for each in tries)

    def reply(self, number: int) -> str:
        """What is said to the last try: empty before the first one."""
        tries = self.tries.get(number)
        if not tries:
            return ""
        made = self.asked[number].choices[tries[-1]]
        if not self.told(number):
            return message("panels.hint", hint=made.hint)
        return made.reply or (message("panels.right") if made.right else "")

    def frame(self) -> list[dict[str, Any]]:
        """What the browser needs to show them."""
        shown = []
        for number, question in enumerate(self.asked):
            tries = self.tries.get(number, [])
            chosen = tries[-1] if tries else None
            shown.append(
                {
                    "prompt": question.prompt,
                    "choices": [choice.text for choice in question.choices],
                    "chosen": chosen,
                    "right": chosen is not None and question.choices[chosen].right,
                    "wrong": sorted({each for each in tries if not question.choices[each].right}),
                    "found": next((each for each in tries if question.choices[each].right), None),
                    "hint": chosen is not None and not self.told(number),
                    "reply": self.reply(number),
                }
            )
        return shown


class Leaving:
    """What stands below the checks once all are answered right: do you still say so, and the way on."""

    def __init__(self, lesson: lessons.Lesson, settings: Settings) -> None:
        self.lesson, self.settings = lesson, settings

    @property
    def ready(self) -> bool:
        """Whether the lesson's checks were answered right."""
        return bool(self.lesson.number) and self.settings.progress.finished(self.lesson.id) is not None

    @property
    def waits(self) -> bool:
        """Whether beliefs will be asked for, once the checks are answered right."""
        return bool(self.lesson.number and self.beliefs()) and not self.ready

    def beliefs(self) -> tuple[str, ...]:
        """The beliefs that are asked for; of a lesson on all of them, those behind the learner's own wrong answers."""
        asked = self.lesson.beliefs
        if len(asked) <= _BELIEFS:
            return asked
        behind = [id for id, _ in self.settings.progress.beliefs() if id in asked]
        return tuple(behind[:_BELIEFS])

    def say(self, belief: str, still: bool) -> None:
        """Keep whether a belief of the lesson is still held."""
        if not self.ready or belief not in self.beliefs():
            raise Malformed
        self.settings.said_of(self.lesson.id, belief, still)

    def frame(self, unit_system: str) -> list[dict[str, Any]]:
        """The beliefs for the browser: empty before the checks are answered right."""
        if not self.ready:
            return []
        held, denied = self.settings.progress.still_held(self.lesson.id), dict(self.lesson.still)
        shown = []
        for id in self.beliefs():
            known, still = beliefs.belief(id), held.get(id)
            claim, right, grain = (words.shown(each, unit_system) for each in (known.claim, known.right, known.grain))
            reply = ""
            if still is False:
                reply = message("panels.belief-left", grain=grain)
            elif still:
                reply = (
                    message("panels.belief-denied", right=right, here=denied[id])
                    if id in denied
                    else message("panels.belief-held", right=right)
                )
            sets = id in dict(self.lesson.sets)
            shown.append({"id": id, "claim": claim, "still": still, "reply": reply, "sets": sets})
        return shown

    def way(self) -> dict[str, Any]:
        """Pathway -> the lesson that comes next on it, as a link; the learner's own way; empty before it is ready."""
        if not self.ready:
            return {}
        links = {each.id: self._link(pathways.around(self.lesson.id, each.id)[1]) for each in pathways.pathways()}
        return {"chosen": self.settings.progress.setting("pathway"), "links": links}

    def _link(self, id: str | None) -> Part:
        """A link to a lesson; after the last one to the index."""
        if id is None:
            index = next(each for each in lessons.lessons() if not each.number)
            return parts.lesson("on", message("panels.on-index", title=index.title), index.id, index.file)
        next_one = lessons.lesson(id)
        text = message("panels.on-next", number=next_one.number, title=next_one.title)
        return parts.lesson("on", text, id, next_one.file)


class Tasks:
    """The practical items of a lesson, "set the sliders so that ...", and what came of each."""

    def __init__(self, lesson_id: str) -> None:
        self.tasks = practical.tasks(lesson_id)
        #: Task -> (whether it is solved, what was said).
        self.words: dict[str, tuple[bool, str]] = {}
        self._starts: dict[str, dict[str, float | str]] = {}

    def sections(self, say: Callable[[str], str]) -> list[Part]:
        """A section of the desk for each task; `say` puts its text in the reader's units."""
        return [self._section(task, say) for task in self.tasks]

    def _section(self, task: practical.Task, say: Callable[[str], str]) -> Part:
        solved, said = self.words.get(task.id, (False, ""))
        return parts.section(
            f"task-{task.id}",
            message("panels.task"),
            parts.text(say(task.text)),
            parts.row(
                parts.button(f"task:start:{task.id}", message("panels.task-start")),
                parts.button(f"task:check:{task.id}", message("panels.task-check")),
                parts.text(said, "dw-verdict" if solved else "") if said else None,
            ),
        )

    def start(self, id: str, controls: Mapping[str, Control]) -> None:
        """Put the sliders at the start of a task, and every choice at its own."""
        task = practical.task(id)
        mine = {name: each for name, each in controls.items() if name in task.start}
        for name, control in mine.items():
            control.put_si(task.start[name])
        for control in controls.values():
            if control.options:
                control.put(control.start)
        # A slider stands on its notches: where it stood at the start counts as not moved.
        self._starts[id] = {name: each.si for name, each in mine.items()}
        self.words.pop(id, None)

    def judge(
        self,
        id: str,
        controls: Mapping[str, Control],
        unit_system: str,
        meant: Callable[[], Mapping[str, float]],
        answered: Collection[str],
    ) -> bool:
        """Judge the sliders as they stand; gives whether the task is solved.

        `meant` says what the choices of the page mean to a task, in SI by
        control; `answered` are the choices it answers for.
        """
        task = practical.task(id)
        if id not in self._starts:
            self.words[id] = (False, message("panels.task-first-start"))
            return False
        known = (*task.start, *answered)
        stray = next(
            (
                each
                for name, each in controls.items()
                if each.options and name not in known and each.value != each.start
            ),
            None,
        )
        if stray is not None:
            self.words[id] = (False, message("panels.task-stays", control=stray.words))
            return False
        mine = {name: each for name, each in controls.items() if name in task.start}
        moved = {name: each.si for name, each in mine.items() if each.si != self._starts[id].get(name)}
        try:
            moved |= {name: value for name, value in meant().items() if name in task.start}
            labels = {name: each.words for name, each in controls.items()}
            outcome = practical.judge(id, moved, unit_system, labels)
        except PlainError as reason:
            self.words[id] = (False, message("panels.task-not-yet", why=str(reason)))
            return False
        said = message("panels.task-solved" if outcome.solved else "panels.task-not-yet", why=outcome.words)
        self.words[id] = (outcome.solved, said)
        return outcome.solved
