"""How a class stands: who is where, what was predicted, which checks were right."""

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from dryward.checks import BadFile, UnknownName
from dryward.teaching import beliefs, lessons
from dryward.teaching.progress import FILE, Progress

#: How deep below a folder a learner's file may lie.
_DEPTH = 3
#: What stands where nothing was chosen.
NOTHING = "-"


@dataclass(frozen=True)
class Learner:
    """Where one learner is.

    Attributes
    ----------
    label : str
        The name of the folder, shortened; no other name is known.
    lesson : str
        Id of the lesson opened last; empty before the first.
    prediction : str
        Key of the choice made there, or a dash.
    right, answered : int
        Checks of that lesson answered right, and answered at all.
    finished : int
        Lessons finished.
    minutes : int or None
        Since the last thing that was kept.
    trouble : str
        Why the file could not be read.
    """

    label: str
    lesson: str
    prediction: str
    right: int
    answered: int
    finished: int
    minutes: int | None
    trouble: str = ""


@dataclass(frozen=True)
class Group:
    """One lesson of the class.

    Attributes
    ----------
    lesson : str
    here : int
        Learners whose last lesson it is.
    choices : tuple of (str, str, bool, int)
        Key, text, whether it is right, and how many chose it.
    right, answered : int
        Checks, over all learners.
    beliefs : tuple of (str, int)
        What is believed behind the wrong answers, the most frequent first.
    """

    lesson: str
    here: int
    choices: tuple
    right: int
    answered: int
    beliefs: tuple


@dataclass(frozen=True)
class Board:
    """All of it.

    Attributes
    ----------
    learners : tuple of Learner
    groups : tuple of Group
        The lessons somebody has opened, in order.
    """

    learners: tuple
    groups: tuple


def find(folder):
    """The learners' folders below a folder, by a short label.

    Parameters
    ----------
    folder : Path

    Returns
    -------
    dict

    Raises
    ------
    BadFile
        When it is no folder.
    """
    folder = Path(folder)
    if not folder.is_dir():
        raise BadFile(f"There is no folder {folder}; name the one in which the learners' answers are kept.")
    places = [folder / FILE] + [path for depth in range(1, _DEPTH + 1) for path in folder.glob("*/" * depth + FILE)]
    found = {}
    for path in sorted(path for path in places if path.is_file()):
        # The part below the folder that tells learners apart: a code, or a name at the class server.
        parts = path.parent.relative_to(folder).parts or (folder.name,)
        found[parts[0] if parts[0] not in found else "/".join(parts)] = path.parent
    return found


def _last(answers):
    """The last answer to each question."""
    return {each["question"]: each["right"] for each in answers}.values()


def board(folders, now=None):
    """How the learners of these folders stand.

    Parameters
    ----------
    folders : dict
        Folder by label.
    now : datetime, optional
        The clock's otherwise.

    Returns
    -------
    Board
    """
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


def _learner(label, file, known, now):
    events = file.events()
    visited = [each["lesson"] for each in events if each.get("lesson") in known]
    lesson = visited[-1] if visited else ""
    answers = _last(file.events("answer", lesson)) if lesson else ()
    minutes = int((now - datetime.fromisoformat(events[-1]["when"])).total_seconds() // 60) if events else None
    return Learner(
        label,
        lesson,
        (file.prediction(lesson) if lesson else None) or NOTHING,
        sum(answers),
        len(answers),
        sum(file.finished(id) is not None for id in lessons.pages()),
        minutes if minutes is None else max(minutes, 0),
        file.trouble,
    )


def _group(lesson, files, learners):
    chosen = [file.prediction(lesson.id) for file in files]
    answers = [right for file in files for right in _last(file.events("answer", lesson.id))]
    count = {}
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
        tuple(sorted(((_belief(id), times) for id, times in count.items()), key=lambda each: (-each[1], each[0]))),
    )


def _belief(id):
    try:
        return beliefs.belief(id).claim
    except UnknownName:  # of a later version of the kit
        return id
