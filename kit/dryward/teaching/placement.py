"""A pre-test of ten items: it tells a skilled person which lessons to skip."""

from dryward.checks import OutOfRange
from dryward.teaching import lessons, questions

#: The ten kinds, and the lessons that a wrong answer points to.
ITEMS = {
    "dew-point": ("read-the-air", "winter-house"),
    "direction": ("which-way-vapor-goes",),
    "plane-temperature": ("temperature-through-layers",),
    "line-or-water": ("where-it-gets-wet", "open-out-tight-in", "twelve-months"),
    "series-perms": ("how-fast-perms",),
    "film-state": ("the-film-that-changes", "inside-the-film"),
    "summer-face": ("july",),
    "leak-or-diffusion": ("the-hole-and-the-ceiling",),
    "vent-power": ("vent-space", "clear-night"),
    "storage": ("hour-by-hour", "your-readings"),
}


def items(seed, unit_system="us"):
    """The ten questions.

    Parameters
    ----------
    seed : int
    unit_system : {"us", "si"}

    Returns
    -------
    tuple of Question

    Raises
    ------
    UnknownName
        For an unknown unit system.
    OutOfRange
        For a seed that is no whole number.

    Examples
    --------
    >>> len(items(1))
    10
    """
    return tuple(questions.draw(kind, seed, unit_system) for kind in ITEMS)


def placed(right):
    """The lessons to take, from which of the ten answers were right.

    Parameters
    ----------
    right : sequence of bool
        One for each item, in order.

    Returns
    -------
    tuple of str
        Lesson ids in the order of the series; the last lesson always.

    Raises
    ------
    OutOfRange
        When there are not ten.

    Examples
    --------
    >>> placed([True] * 10)
    ('your-roof',)
    """
    right = tuple(right)
    if len(right) != len(ITEMS):
        raise OutOfRange(f"The pre-test has {len(ITEMS)} answers, not {len(right)}.")
    wanted = {id for ok, taken in zip(right, ITEMS.values(), strict=True) if not ok for id in taken}
    return tuple(id for id in lessons.pages() if id in wanted or id == "your-roof")
