"""Which checks a lesson has, and which kinds the generator knows."""

from importlib import import_module

from dryward.checks import OutOfRange, UnknownName
from dryward.teaching import lessons
from dryward.teaching.questions.question import Draw

#: The kinds of the generator: name, and the module that makes it.
KINDS = {
    "dew-point": "readings",
    "direction": "readings",
    "plane-temperature": "layers",
    "series-perms": "layers",
    "retarder-class": "layers",
    "line-or-water": "layers",
    "film-state": "layers",
    "summer-face": "layers",
    "leak-or-diffusion": "moving_air",
    "vent-area": "moving_air",
    "vent-power": "moving_air",
    "storage": "wood",
    "air-changes": "moving_air",
    "logger-cause": "wood",
    "meter": "wood",
    "explain": "explain",
}

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
    lessons.lesson(lesson_id, unit_system)
    if lesson_id == "start":
        return ()
    module = import_module(f"dryward.teaching.questions.by_lesson.{lesson_id.replace('-', '_')}")
    return tuple(_made(each, f"{lesson_id}/{each.__name__}", seed, unit_system) for each in module.CHECKS)


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
    module = import_module(f"dryward.teaching.questions.by_kind.{KINDS[kind]}")
    return _made(getattr(module, kind.replace("-", "_")), kind, seed, unit_system)
