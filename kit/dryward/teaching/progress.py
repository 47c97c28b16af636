"""The learner's own file: predictions, answers, settings, and what is due for review.

A JSON file in the learner's folder.  It is a list of small events, each with
its own mark, so two windows that write at the same time lose nothing: the
file is the union of what both saw.  It is written whole or not at all.
"""

from __future__ import annotations

import json
import uuid
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.language import listed, message
from dryward.storage import Format, NewerFile, locked, reason, set_aside, write_whole
from dryward.teaching import beliefs, lessons
from dryward.teaching.questions import Choice, Question, check_names

#: An event as it stands in the file.
Event = dict[str, Any]
Setting = str | bool | int | float
FILE = "dryward-progress.json"
#: Review after these days, counted from the day a lesson was finished.
REVIEW = (timedelta(days=2), timedelta(days=14))
#: Settings, what they start from, and what they may be.
SETTINGS = {
    "unit_system": ("us", ("us", "si")),
    "type_size": (16, (12, 40)),
    "projector": (False, (True, False)),
    "instructor": (False, (True, False)),
    "pathway": ("self-study", ("half-day", "nine-evenings", "self-study")),
}
#: How long a window waits for another that writes [s]: a learner's answer is worth more than a moment.
_PATIENCE = 20.0
#: What an event of each kind must hold; more is kept as it is.
_NEEDS: dict[str, dict[str, Any]] = {
    "prediction": {"lesson": str, "choice": str},
    "answer": {"lesson": str, "question": str, "right": bool},
    "setting": {"name": str, "value": (str, bool, int, float)},
    "opened": {"lesson": str},
    "task": {"lesson": str, "task": str},
    "left": {"lesson": str, "beat": str},
    "bet": {"lesson": str, "bet": str, "choice": str, "right": bool},
    "belief": {"lesson": str, "belief": str, "still": bool},
}


@dataclass(frozen=True)
class DueLesson:
    """A lesson that is due for review."""

    lesson: str
    #: 1 for two days, 2 for two weeks.
    stage: int
    #: When it became due.
    due: datetime


class Progress:
    """What one learner has done.

    A file that cannot be read is never overwritten: it is moved aside when
    the next event is kept, and `trouble` says so.
    """

    def __init__(self, folder: str | Path | None = None, now: Callable[[], datetime] | None = None) -> None:
        self.path = Path(folder if folder is not None else Path.cwd()) / FILE
        self._now = now or (lambda: datetime.now(UTC))
        self.trouble = ""
        self._events = {}
        try:
            self._events = _read(self.path)
        except NewerFile as newer:
            self.trouble = str(newer)
        except BadFile as bad:
            self.trouble = str(bad)

    # --- keeping -----------------------------------------------------------

    def predicted(self, lesson: str, key: str) -> None:
        """Keep a prediction."""
        lessons.lesson(lesson).prediction.choice(key)
        self._keep("prediction", lesson=lesson, choice=key)

    def answered(self, lesson: str, question: Question, choice: Choice) -> None:
        """Keep an answer to a check."""
        lessons.lesson(lesson)
        self._keep(
            "answer",
            lesson=lesson,
            question=question.kind,
            seed=question.seed,
            text=choice.text,
            right=choice.right,
            belief=choice.belief,
        )

    def left(self, lesson: str, beat: str) -> None:
        """Keep the beat at which a lesson is left; empty for its free page."""
        lessons.lesson(lesson)
        self._keep("left", lesson=lesson, beat=beat)

    def left_off(self, lesson: str) -> tuple[str | None, bool]:
        """The beat at which a lesson was left, None where none is known, and whether its free page was ever reached."""
        beats = [each["beat"] for each in self.events("left", lesson)]
        return (beats[-1] if beats else None), "" in beats

    def bet(
        self, lesson: str, bet: str, choice: str, right: bool, belief: str = "", offers: Sequence[str] = ()
    ) -> None:
        """Keep a bet of a beat, the belief behind it, and those that its choices offered."""
        lessons.lesson(lesson)
        self._keep("bet", lesson=lesson, bet=bet, choice=choice, right=right, belief=belief, offers=list(offers))

    def solved(self, lesson: str, task: str) -> None:
        """Keep a practical task that was solved."""
        lessons.lesson(lesson)
        self._keep("task", lesson=lesson, task=task)

    def said_of(self, lesson: str, belief: str, still: bool) -> None:
        """Keep whether a belief is still held at the end of a lesson."""
        lessons.lesson(lesson)
        beliefs.belief(belief)
        self._keep("belief", lesson=lesson, belief=belief, still=still)

    def opened(self, lesson: str) -> None:
        """Keep that a lesson was opened, for resuming."""
        lessons.lesson(lesson)
        self._keep("opened", lesson=lesson)

    def set(self, name: str, value: Setting) -> None:
        """Keep a setting."""
        _checked(name, value)
        if self.setting(name) != value:
            self._keep("setting", name=name, value=value)

    # --- asking ------------------------------------------------------------

    def setting(self, name: str) -> Any:
        """A setting as it stands."""
        if name not in SETTINGS:
            raise UnknownName("setting", name, SETTINGS)
        kept = [each["value"] for each in self.events("setting") if each.get("name") == name]
        return kept[-1] if kept and _fits(name, kept[-1]) else SETTINGS[name][0]

    def events(self, kind: str | None = None, lesson: str | None = None) -> tuple[Event, ...]:
        """The events in the order of time."""
        found = sorted(self._events.values(), key=lambda each: (each["when"], each["id"]))
        return tuple(each for each in found if kind in (None, each["kind"]) and lesson in (None, each.get("lesson")))

    def prediction(self, lesson: str) -> str | None:
        """Key of the last prediction made in a lesson, or None."""
        kept = self.events("prediction", lesson)
        return kept[-1]["choice"] if kept else None

    def first_tries(self, lesson: str) -> tuple[bool, ...]:
        """Whether the first answer to each check was right; a check with new numbers is another."""
        first: dict[tuple[str, Any], bool] = {}
        for each in self.events("answer", lesson):
            first.setdefault((each["question"], json.dumps(each.get("seed"))), each["right"])
        return tuple(first.values())

    def held_before(self, lesson: str) -> dict[str, bool]:
        """Belief -> whether it was behind a first bet of the lesson, of all that the bets made there offered."""
        first: dict[str, Event] = {}
        for each in self.events("bet", lesson):
            first.setdefault(each["bet"], each)
        # In one of a pair what the holder says is so.
        told = [("" if each["right"] else each.get("belief"), each.get("offers")) for each in first.values()]
        if predicted := self.events("prediction", lesson):
            asked = lessons.lesson(lesson).prediction
            chosen = {each.key: each.belief for each in asked.choices}.get(predicted[0]["choice"])
            told.append((chosen, [each.belief for each in asked.choices]))
        held: dict[str, bool] = {}
        for belief, offers in told:
            for each in offers if isinstance(offers, list) else ():
                if isinstance(each, str) and each:
                    held[each] = held.get(each, False) or each == belief
        return held

    def still_held(self, lesson: str) -> dict[str, bool]:
        """Belief -> whether it was still held when it was last asked for in a lesson."""
        return {each["belief"]: each["still"] for each in self.events("belief", lesson)}

    def finished(self, lesson: str) -> datetime | None:
        """When a lesson was finished: all its checks answered right."""
        right: dict[str, str] = {}
        for each in self.events("answer", lesson):
            if each["right"]:
                right.setdefault(each["question"], each["when"])
        asked = check_names(lesson) if right else ()
        return _moment(max(right[each] for each in asked)) if asked and set(asked) <= right.keys() else None

    def resume(self) -> str | None:
        """The lesson to go on with, or None when all are finished."""
        last = [each["lesson"] for each in self.events("opened")][-1:]
        for id in (*last, *lessons.pages()):
            if id in lessons.pages() and self.finished(id) is None:
                return id
        return None

    def reviews(self) -> tuple[DueLesson, ...]:
        """Lessons that are due for review now, the longest due first."""
        now, found = self._now(), []
        for id in lessons.pages():
            done = self.finished(id)
            if done is None:
                continue
            answers = [_moment(each["when"]) for each in self.events("answer", id)]
            stages = [(stage, done + after) for stage, after in enumerate(REVIEW, 1)]
            open_ = [(stage, due) for stage, due in stages if due <= now and not any(when >= due for when in answers)]
            if open_:
                found.append(DueLesson(id, *open_[-1]))
        return tuple(sorted(found, key=lambda each: each.due))

    def beliefs(self) -> tuple[tuple[str, int], ...]:
        """Beliefs behind the wrong answers, the most frequent first."""
        count: dict[str, int] = {}
        for each in self.events("answer"):
            if not each["right"] and isinstance(each.get("belief"), str) and each["belief"]:
                count[each["belief"]] = count.get(each["belief"], 0) + 1
        return tuple(sorted(count.items(), key=lambda each: (-each[1], each[0])))

    # --- the file ----------------------------------------------------------

    def save(self) -> None:
        """Write the file: what is in it already and what is here, together."""
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            with locked(self.path, _PATIENCE):
                self._merge_and_write()
        except OSError as error:
            why = reason(error)
            self.trouble = message("teaching.cannot-be-written", file=self.path.name, reason=why)
            raise BadFile(self.trouble) from None
        self.trouble = ""

    def _keep(self, kind: str, **what: Setting | list[str] | None) -> None:
        event: Event = {"id": uuid.uuid4().hex, "when": self._now().astimezone(UTC).isoformat(timespec="microseconds")}
        event |= {"kind": kind, **what}
        self._events[event["id"]] = event
        self.save()

    def _merge_and_write(self) -> None:
        try:
            self._events |= _read(self.path)
        except NewerFile:
            raise
        except BadFile:
            set_aside(self.path)
        body = FORMAT.headed({"events": list(self.events())})
        write_whole(self.path, json.dumps(body, indent=1, ensure_ascii=False) + "\n")


def _fits(name: str, value: Any) -> bool:
    start, allowed = SETTINGS[name]
    if name == "type_size":
        number = isinstance(value, (int, float)) and not isinstance(value, bool)
        return number and allowed[0] <= value <= allowed[1]
    return type(value) is type(start) and value in allowed


def _checked(name: str, value: object) -> None:
    if name not in SETTINGS:
        raise UnknownName("setting", name, SETTINGS)
    if not _fits(name, value):
        allowed = SETTINGS[name][1]
        if name == "type_size":
            raise OutOfRange(message("teaching.type-size", given=str(value), low=allowed[0], high=allowed[1]))
        either = listed([str(each) for each in allowed], "or")
        raise OutOfRange(message("teaching.setting", name=name, given=f"{value!r:.40}", allowed=either))


# --- reading the file -----------------------------------------------------------


def _moment(text: str) -> datetime:
    """A time as it stands in the file."""
    return datetime.fromisoformat(text)


def _read(path: Path) -> dict[str, Event]:
    """Events of a file by their marks; none when there is no file."""
    try:
        body = json.loads(path.read_text("utf-8"))
    except FileNotFoundError:
        return {}
    except (ValueError, RecursionError):
        raise BadFile(message("teaching.no-progress", file=path.name)) from None
    except OSError as error:
        raise NewerFile(message("teaching.cannot-be-read", file=path.name, reason=reason(error))) from None
    return _events(path, body)


def _events(path: Path, body: Any) -> dict[str, Event]:
    strange = BadFile(message("teaching.strange-progress", file=path.name))
    try:
        body = FORMAT.current(body)
    except NewerFile:
        raise NewerFile(message("teaching.newer-progress", file=path.name)) from None
    except (AttributeError, TypeError, ValueError):
        raise strange from None
    listed = body.get("events")
    if not isinstance(listed, list) or not all(_is_event(each) for each in listed):
        raise strange
    return {each["id"]: each for each in listed}


def _is_event(each: Any) -> bool:
    if not isinstance(each, dict) or not isinstance(each.get("kind"), str) or each["kind"] not in _NEEDS:
        return False
    if not isinstance(each.get("id"), str) or not isinstance(each.get("when"), str):
        return False
    if any(not isinstance(each.get(key), kind) for key, kind in _NEEDS[each["kind"]].items()):
        return False
    try:
        return _moment(each["when"]).tzinfo is not None
    except (ValueError, OverflowError):
        return False


def _from_1(body: dict[str, Any]) -> dict[str, Any]:
    """Version 1 held the last state only: tables of predictions and settings, and a list of answers."""
    when = body.get("saved", "2000-01-01T00:00:00+00:00")
    events = [
        {"kind": "prediction", "lesson": lesson, "choice": key} for lesson, key in body.get("predictions", {}).items()
    ]
    events += [{"kind": "setting", "name": name, "value": value} for name, value in body.get("settings", {}).items()]
    events += [{"kind": "answer", **each} for each in body.get("answers", ())]
    # The mark follows from the content, so that two windows migrate to the same events.
    return {
        "events": [
            {
                "id": uuid.uuid5(uuid.NAMESPACE_OID, json.dumps([count, each], sort_keys=True)).hex,
                "when": each.get("when", when),
                **each,
            }
            for count, each in enumerate(events)
        ]
    }


def _from_2(body: dict[str, Any]) -> dict[str, Any]:
    """Version 2 knew no beliefs that are still held: nothing to change."""
    return body


def _from_3(body: dict[str, Any]) -> dict[str, Any]:
    """The course of version 3 had eight weeks; it has nine evenings now."""

    def moved(each: Any) -> Any:
        old = isinstance(each, dict) and (each.get("name"), each.get("value")) == ("pathway", "eight-week")
        return {**each, "value": "nine-evenings"} if old else each

    events = body.get("events")
    return {**body, "events": [moved(each) for each in events]} if isinstance(events, list) else body


FORMAT = Format("dryward progress", 4, {1: _from_1, 2: _from_2, 3: _from_3})
