"""Medians, turn by turn, and the table of what was measured."""

import datetime
import gc
import operator
import os
import platform
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from dryward import units
from dryward.cli import front_page
from dryward.language import message

_COMPARE = {"at most": operator.le, "at least": operator.ge}


@dataclass(frozen=True)
class Measurement:
    """One line of the table."""

    what: str  # the work that was done
    value: float
    unit: str
    beside: str = ""  # what it is compared with
    other: float | None = None  # the value of that
    rule: str = ""  # "at most" or "at least"
    target: float | None = None  # what is aimed at: of the value, or of the ratio
    of_ratio: bool = False

    @property
    def ratio(self) -> float | None:
        """How many times faster than what stands beside it."""
        return None if self.other is None else self.other / self.value

    @property
    def met(self) -> bool | None:
        """Whether the target is met; None without one."""
        measured = self.ratio if self.of_ratio else self.value
        if self.target is None or measured is None:
            return None
        return _COMPARE[self.rule](measured, self.target)

    @property
    def comparison(self) -> str:
        """The ratio in words."""
        if self.ratio is None:
            return ""
        return message("cli.bench-times-as-fast", number=units.number(self.ratio), other=self.beside)

    @property
    def aim(self) -> str:
        """The target in words."""
        if self.target is None:
            return ""
        unit = message("cli.bench-times") if self.of_ratio else self.unit
        target = units.number(self.target, figures=6)
        return message("cli.bench-aim", rule=self.rule.replace(" ", "-"), target=target, unit=unit)

    def __str__(self) -> str:
        verdict = self.aim
        if self.met is not None:
            verdict = message("cli.bench-met" if self.met else "cli.bench-missed", aim=self.aim)
        return f"{self.what:<58} {units.number(self.value):>9} {self.unit:<9} {self.comparison:<52} {verdict}".rstrip()


def medians(*works: Callable[[], object], repeats: int = 7, least: float = 0.02) -> list[float]:
    """Median seconds a call of several works, taken turn by turn; a turn takes `least` seconds or more."""
    often = []
    for work in works:
        work()  # warm
        start = time.perf_counter()
        work()
        often.append(max(1, round(least / max(time.perf_counter() - start, 1e-7))))
    taken: list[list[float]] = [[] for _ in works]
    gc.collect()
    for _ in range(repeats):
        for work, times, found in zip(works, often, taken, strict=True):
            start = time.perf_counter()
            for _ in range(times):
                work()
            found.append((time.perf_counter() - start) / times)
    return [statistics.median(found) for found in taken]


def in_a_new_process(code: str, repeats: int = 3, **environment: str) -> float:
    """Median of the number that some code prints last, each time in a process of its own."""
    found, around = [], {**os.environ, **environment}
    for _ in range(repeats):
        done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=around)
        found.append(float(done.stdout.split()[-1]))
    return statistics.median(found)


def table(found: Sequence[Measurement]) -> str:
    """The measurements as a Markdown table."""
    heads = (
        message("cli.bench-head-work"),
        message("cli.bench-head-took"),
        message("cli.bench-head-beside"),
        message("cli.bench-head-aim"),
    )
    rows = []
    for each in found:
        aim = message("cli.bench-aim-missed", aim=each.aim) if each.met is False else each.aim
        rows.append((each.what, f"{units.number(each.value)} {each.unit}", each.comparison, aim))
    when = datetime.date.today().isoformat()
    facts = {"day": when, "system": platform.system(), "python": platform.python_version()}
    return front_page.table(heads, rows) + "\n\n" + message("cli.bench-when", cores=os.cpu_count() or 0, **facts)
