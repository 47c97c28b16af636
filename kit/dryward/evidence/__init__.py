"""Every published number the kit is held to, computed again.

A topic is one module here (its name is the topic) and one table of the same
name in ``data/``.  The module says how each kind of row is computed; the
table says what was published, where, and how it was read.  A new topic is
found by itself: there is no list to keep.
"""

import importlib
import pkgutil

from dryward.checks import UnknownName
from dryward.evidence.table import Check, Row, read

__all__ = ["Check", "Row", "read", "topics", "checks"]

_FRAMEWORK = ("table", "formulas", "examples")


def topics():
    """The names of all topics, in alphabetical order.

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> "psychrometrics" in topics()
    True
    """
    found = (module.name for module in pkgutil.iter_modules(__path__))
    return tuple(sorted(name for name in found if name not in _FRAMEWORK))


def checks(*names):
    """Every published check of some topics, computed now, one by one.

    Parameters
    ----------
    *names : str
        Topics; none for all of them.

    Yields
    ------
    Check

    Raises
    ------
    UnknownName
        When there is no such topic.
    BadFile
        When a table lacks a source or holds a row that cannot be computed.

    Examples
    --------
    >>> next(checks("psychrometrics")).passed
    True
    """
    known = topics()
    for name in names:
        if name not in known:
            raise UnknownName("topic", name, known)
    for name in names or known:
        yield from importlib.import_module(f"{__name__}.{name}").checks()
