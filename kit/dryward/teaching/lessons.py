"""The lessons: what each asks, shows and leaves behind."""

import re
from dataclasses import dataclass, fields, is_dataclass, replace
from functools import cache

from dryward.checks import BadFile, UnknownName
from dryward.teaching import words
from dryward.teaching.tables import build, names, table


@dataclass(frozen=True)
class Option:
    """One answer to a prediction.

    Attributes
    ----------
    key : str
        A letter.
    text : str
    belief : str
        Id of the belief behind a wrong one; empty for the right one.
    """

    key: str
    text: str
    belief: str = ""


@dataclass(frozen=True)
class Prediction:
    """The question that unlocks the sliders.

    Attributes
    ----------
    prompt : str
    choices : tuple of Option
    right : str
        Key of the right choice.
    reveal : str
        Said once the learner has chosen and looked.
    """

    prompt: str
    choices: tuple
    right: str
    reveal: str

    def choice(self, key):
        """The choice of that key.

        Raises
        ------
        UnknownName
            When there is none.
        """
        for each in self.choices:
            if each.key == key:
                return each
        raise UnknownName("choice", key, [each.key for each in self.choices])


@dataclass(frozen=True)
class Lesson:
    """One lesson, in the words of the learner.

    Attributes
    ----------
    id : str
        The file name without its number.
    number : int
    title : str
    minutes : int
    needs : tuple of str
        Ids of the lessons to take first.
    beliefs : tuple of str
        Ids of the beliefs it meets.
    levels : tuple of str
        Remember, Understand, Apply, Analyze.
    objectives : tuple of str
    question : str
        One sentence from the job site.
    prediction : Prediction
    takeaway : str
    cautions : tuple of str
        Ids.
    sources, limits : tuple of str
    """

    id: str
    number: int
    title: str
    minutes: int
    needs: tuple
    beliefs: tuple
    levels: tuple
    objectives: tuple
    question: str
    prediction: Prediction
    takeaway: str
    cautions: tuple
    sources: tuple
    limits: tuple

    @property
    def file(self):
        """Name of its notebook."""
        return f"{self.number:02d}-{self.id}.ipynb"


def _read(name):
    row = dict(table("lessons", name))
    if not isinstance(row.get("prediction"), dict):
        raise BadFile(f"The teaching file {name} lacks the table [prediction].")
    guess = dict(row["prediction"])
    guess["choices"] = [build(Option, each, name) for each in guess.get("choices", ())]
    row["prediction"] = build(Prediction, guess, name)
    lesson = build(Lesson, row, name)
    if not re.fullmatch(rf"{lesson.number:02d}-{lesson.id}\.toml", name):
        raise BadFile(
            f"The teaching file {name} holds lesson {lesson.number}, {lesson.id}; name and content must agree."
        )
    return lesson


@cache
def _all():
    return tuple(_read(name) for name in names("lessons"))


def _in_units(thing, unit_system):
    """A copy with every text in the reader's unit system."""
    if isinstance(thing, str):
        return words.shown(thing, unit_system)
    if isinstance(thing, tuple):
        return tuple(_in_units(each, unit_system) for each in thing)
    if is_dataclass(thing):
        return replace(thing, **{f.name: _in_units(getattr(thing, f.name), unit_system) for f in fields(thing)})
    return thing


def lessons(unit_system="us"):
    """All lessons in order, the index first.

    Parameters
    ----------
    unit_system : {"us", "si"}

    Returns
    -------
    tuple of Lesson

    Raises
    ------
    UnknownName
        For an unknown unit system.

    Examples
    --------
    >>> lessons()[0].id
    'start'
    """
    return tuple(_in_units(each, unit_system) for each in _all())


def lesson(id, unit_system="us"):
    """The lesson of that id.

    Parameters
    ----------
    id : str
        Such as ``"where-it-gets-wet"``.
    unit_system : {"us", "si"}

    Returns
    -------
    Lesson

    Raises
    ------
    UnknownName
        For an unknown lesson or unit system.

    Examples
    --------
    >>> lesson("where-it-gets-wet").file
    '05-where-it-gets-wet.ipynb'
    """
    for each in _all():
        if each.id == id:
            return _in_units(each, unit_system)
    raise UnknownName("lesson", id, [each.id for each in _all()])


def pages():
    """Ids of the lessons that have a page, in order: all but the index.

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> "start" in pages()
    False
    """
    return tuple(each.id for each in _all() if each.number)
