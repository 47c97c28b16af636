"""Every published number the kit is held to, computed again.

A topic is a table in ``data/`` and an entry of the same name in the `TOPICS`
of the module of its subject.  The entry says how each kind of row is
computed; the table says what was published, where, and how it was read.  A
new topic is found by itself: there is no list to keep.
"""

import importlib
import pkgutil
from collections.abc import Iterator
from functools import cache

from dryward.checks import UnknownName
from dryward.evidence.table import Answers, Check, Row, answer, read

__all__ = ["Check", "Row", "read", "topics", "checks"]


@cache
def _answers() -> dict[str, Answers]:
    modules = (importlib.import_module(f"{__name__}.{module.name}") for module in pkgutil.iter_modules(__path__))
    found = [(topic, answers) for module in modules for topic, answers in getattr(module, "TOPICS", {}).items()]
    return dict(sorted(found))


def topics() -> tuple[str, ...]:
    """The names of all topics, in alphabetical order."""
    return tuple(_answers())


def checks(*names: str) -> Iterator[Check]:
    """Every published check of some topics, or of all, computed now, one by one."""
    known = _answers()
    for name in names:
        if name not in known:
            raise UnknownName("topic", name, known)
    for name in names or known:
        yield from answer(name, known[name])
