"""Where learners are: one of them on the ways through the lessons, and a class on the instructor's board."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from dryward.checks import BadFile, UnknownName
from dryward.language import joined, message
from dryward.teaching import beliefs, lessons, pathways
from dryward.teaching.lessons import Lesson
from dryward.teaching.progress import FILE, Progress

#: How deep below a folder a learner's file may lie.
_DEPTH = 3
#: What stands where nothing was predicted.
NOTHING = "-"


# --- one learner: what stands on the first page ----------------------------------


def known_way(id: str | None) -> str | None:
    """The id of a pathway, or None for anything else.

    Examples
    --------
    >>> known_way("half-day"), known_way("no-such")
    ('half-day', None)
    """
    return id if id in [each.id for each in pathways.pathways()] else None


def following(id: str, way: str | None) -> dict[str, dict[str, Any] | None]:
    """The lessons ``before`` and ``after`` one, on a way; None at its ends."""
    before, after = pathways.around(id, way)
    return {"before": _short(before) if before else None, "after": _short(after) if after else None}


def _short(id: str) -> dict[str, Any]:
    lesson = lessons.lesson(id)
    return {"id": id, "number": lesson.number, "title": lesson.title, "minutes": lesson.minutes}


def _state(progress: Progress, id: str, opened: set[str]) -> str:
    if progress.finished(id) is not None:
        return message("school.finished")
    if progress.events("answer", id) or progress.prediction(id) is not None:
        return message("school.begun")
    return message("school.looked-at") if id in opened else ""


def contents(folder: Path, way: str | None = None) -> dict[str, Any]:
    """What the first page says to one learner, on the pathway that was chosen or else the one of the settings."""
    progress = Progress(folder)
    opened = {each["lesson"] for each in progress.events("opened")}
    chosen = known_way(way) or progress.setting("pathway")
    ways = []
    for each in pathways.pathways():
        sessions = [
            {
                "title": session.title,
                "minutes": session.minutes,
                "lessons": [
                    {**_short(id), "state": _state(progress, id, opened)}
                    for id in session.lessons
                    if id in lessons.pages()
                ],
            }
            for session in each.sessions
        ]
        ways.append(
            {"id": each.id, "title": each.title, "who": each.who, "minutes": each.minutes, "sessions": sessions}
        )
    resume = progress.resume()
    return {
        "ways": ways,
        "chosen": chosen,
        "resume": _short(resume) if opened and resume else None,
        "reviews": [_short(each.lesson) for each in progress.reviews()],
        "trouble": progress.trouble,
    }


# --- a class: the instructor's board -------------------------------------------


@dataclass(frozen=True)
class Learner:
    """Where one learner is."""

    label: str  # the name of the folder, shortened; no other name is known
    lesson: str  # id of the one opened last; empty before the first
    prediction: str  # key of the choice made there, or `NOTHING`
    right: int  # checks of that lesson
    answered: int
    first: int  # checks of that lesson that were right at the first try; with new numbers one is another
    tried: int
    finished: int  # lessons
    minutes: int | None  # since the last thing in the learner's file [min]
    trouble: str = ""  # why the file could not be read


@dataclass(frozen=True)
class Group:
    """One lesson of the class."""

    lesson: str
    here: int  # learners whose last lesson it is
    choices: tuple[tuple[str, str, bool, int], ...]  # key, text, whether it is right, how many chose it
    right: int  # checks, over all learners
    answered: int
    first: int  # of those tried, right at the first try
    tried: int
    beliefs: tuple[tuple[str, int], ...]  # behind the wrong answers, and how often; the most frequent first
    #: Its beliefs: how many bet on them before, of how many who could; how many still say so after, of how many asked.
    held: tuple[tuple[str, int, int, int, int], ...]


@dataclass(frozen=True)
class Board:
    """A class: its learners, and the lessons that somebody has opened, in order."""

    learners: tuple[Learner, ...]
    groups: tuple[Group, ...]


def learner_folders(folder: str | Path) -> dict[str, Path]:
    """The learners' folders below a folder, by a short label."""
    folder = Path(folder)
    if not folder.is_dir():
        raise BadFile(message("school.no-answers-folder", folder=str(folder)))
    files = [folder / FILE] + [path for depth in range(1, _DEPTH + 1) for path in folder.glob("*/" * depth + FILE)]
    found = {}
    for path in sorted(path for path in files if path.is_file()):
        # The part below the folder that tells learners apart: a code, or a name at the class server.
        parts = path.parent.relative_to(folder).parts or (folder.name,)
        found[parts[0] if parts[0] not in found else "/".join(parts)] = path.parent
    return found


def _last(answers: Iterable[dict[str, Any]]) -> Collection[bool]:
    """The last answer to each question."""
    return {each["question"]: each["right"] for each in answers}.values()


def board(folders: dict[str, Path], now: datetime | None = None) -> Board:
    """How the learners of these folders, by label, stand."""
    now = now or datetime.now(UTC)
    known = {each.id: each for each in lessons.lessons()}
    files = {label: Progress(folder) for label, folder in folders.items()}
    learners = tuple(_learner(label[:12], file, known, now) for label, file in files.items())
    groups = tuple(
        _group(lesson, files.values(), learners)
        for id, lesson in known.items()
        if lesson.number and any(file.events(lesson=id) for file in files.values())
    )
    return Board(learners, groups)


def _learner(label: str, file: Progress, known: dict[str, Lesson], now: datetime) -> Learner:
    events = file.events()
    visited = [each["lesson"] for each in events if each.get("lesson") in known]
    lesson = visited[-1] if visited else ""
    answers = _last(file.events("answer", lesson)) if lesson else ()
    first = file.first_tries(lesson) if lesson else ()
    minutes = int((now - datetime.fromisoformat(events[-1]["when"])).total_seconds() // 60) if events else None
    return Learner(
        label,
        lesson,
        (file.prediction(lesson) if lesson else None) or NOTHING,
        sum(answers),
        len(answers),
        sum(first),
        len(first),
        sum(file.finished(id) is not None for id in lessons.pages()),
        minutes if minutes is None else max(minutes, 0),
        file.trouble,
    )


def _group(lesson: Lesson, files: Collection[Progress], learners: tuple[Learner, ...]) -> Group:
    chosen = [file.prediction(lesson.id) for file in files]
    answers = [right for file in files for right in _last(file.events("answer", lesson.id))]
    first = [right for file in files for right in file.first_tries(lesson.id)]
    before = [file.held_before(lesson.id) for file in files]
    after = [file.still_held(lesson.id) for file in files]
    held = [(_belief(id), *_counted(id, before), *_counted(id, after)) for id in lesson.beliefs]
    count: dict[str, int] = {}
    for file in files:
        for each in file.events("answer", lesson.id):
            if not each["right"] and each.get("belief"):
                count[each["belief"]] = count.get(each["belief"], 0) + 1
    return Group(
        lesson.id,
        sum(each.lesson == lesson.id for each in learners),
        tuple(
            (each.key, each.text, each.key == lesson.prediction.right, chosen.count(each.key))
            for each in lesson.prediction.choices
        ),
        sum(answers),
        len(answers),
        sum(first),
        len(first),
        tuple(sorted(((_belief(id), times) for id, times in count.items()), key=lambda each: (-each[1], each[0]))),
        tuple(each for each in held if each[2] or each[4]),
    )


def _counted(id: str, files: Iterable[dict[str, bool]]) -> tuple[int, int]:
    """How many hold a belief, of how many who were asked."""
    said = [each[id] for each in files if id in each]
    return sum(said), len(said)


def _belief(id: str) -> str:
    try:
        return beliefs.belief(id).claim
    except UnknownName:  # of a later version of the kit
        return id


# --- the board in words ----------------------------------------------------------


def nobody_yet() -> str:
    """What a board without learners says."""
    return message("school.nobody-yet")


def titles() -> dict[str, str]:
    """The lessons as a board names them, by id."""
    return {each.id: message("school.page-lesson", number=each.number, title=each.title) for each in lessons.lessons()}


def right_of(right: int, answered: int) -> str:
    """How many of the checks that were answered are right; empty for none."""
    return message("school.right-of", right=str(right), answered=str(answered)) if answered else ""


def words_of(group: Group) -> tuple[str, str]:
    """The head of a lesson's table on the board, and what stands behind the wrong answers."""
    facts = {"lesson": titles()[group.lesson], "here": str(group.here)}
    head = message("school.here-now", **facts)
    if group.answered:
        facts |= {"right": str(group.right), "answered": str(group.answered)}
        head = message("school.here-now-checks", first=str(group.first), tried=str(group.tried), **facts)
    claims = [message("school.belief-times", claim=claim, times=str(times)) for claim, times in group.beliefs[:3]]
    told = joined("school.belief-after-belief", claims)
    behind = message("school.behind-wrong", beliefs=told) if told else ""
    return head, behind


def held_heads() -> tuple[str, str, str]:
    """The heads of the table of beliefs."""
    return message("school.belief-said"), message("school.held-before"), message("school.held-after")


def held_rows(group: Group) -> list[tuple[str, str, str]]:
    """The beliefs of a lesson: who bet on each before it was shown, and who still says so after the checks."""
    return [(claim, right_of(before, bet), right_of(after, asked)) for claim, before, bet, after, asked in group.held]
