"""Beliefs: what builders hold, why it seems right, and what is right.

A belief is met in at least one lesson.  A slip is a wrong turn in the
arithmetic; the questions use both, so that a wrong answer says what to teach.
"""

from dataclasses import dataclass
from functools import cache

from dryward.checks import UnknownName
from dryward.teaching.words import build, table


@dataclass(frozen=True)
class Belief:
    """One belief of the trade, or one slip of the pencil.

    Attributes
    ----------
    id : str
    claim : str
        As it is said on the job.
    seems : str
        Why it looks right.
    right : str
        What is right.
    number : int
        1 to 26; 0 for a slip.
    grain : str
        The grain of truth in it.
    source : str
        Where the belief or the correction was read, and how.
    """

    id: str
    claim: str
    seems: str
    right: str
    number: int = 0
    grain: str = ""
    source: str = ""

    @property
    def is_slip(self):
        """Whether it is a slip of the arithmetic rather than a belief."""
        return self.number == 0


@cache
def beliefs():
    """The beliefs of the trade, by number.

    Returns
    -------
    tuple of Belief

    Examples
    --------
    >>> beliefs()[0].id
    'rh-drives-vapor'
    """
    rows = [build(Belief, row, "beliefs.toml") for row in table("beliefs.toml")["belief"]]
    return tuple(sorted(rows, key=lambda each: each.number))


@cache
def slips():
    """The slips of the arithmetic, in the order of the file.

    Returns
    -------
    tuple of Belief

    Examples
    --------
    >>> all(each.is_slip for each in slips())
    True
    """
    return tuple(build(Belief, row, "beliefs.toml") for row in table("beliefs.toml")["slip"])


def belief(id):
    """The belief or slip of that id.

    Parameters
    ----------
    id : str

    Returns
    -------
    Belief

    Raises
    ------
    UnknownName
        When there is none.

    Examples
    --------
    >>> belief("rh-drives-vapor").number
    1
    """
    everything = (*beliefs(), *slips())
    for each in everything:
        if each.id == id:
            return each
    raise UnknownName("belief", id, [each.id for each in everything])
