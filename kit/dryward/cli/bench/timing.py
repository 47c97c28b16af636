"""Medians, turn by turn, and one line of the table."""

import gc
import operator
import os
import statistics
import subprocess
import sys
import time
from dataclasses import dataclass

from dryward import units

_COMPARE = {"at most": operator.le, "at least": operator.ge}


@dataclass(frozen=True)
class Measurement:
    """One line of the table.

    Attributes
    ----------
    what : str
        The work that was done.
    value : float
        What was measured, in `unit`.
    unit : str
    beside : str
        What it is compared with; empty when it stands alone.
    other : float or None
        The same of what it is compared with.
    rule, target : str, float or None
        "at most" or "at least", and the number aimed at: of `value`, or of
        the ratio when `of_ratio`.
    of_ratio : bool
    """

    what: str
    value: float
    unit: str
    beside: str = ""
    other: float | None = None
    rule: str = ""
    target: float | None = None
    of_ratio: bool = False

    @property
    def ratio(self):
        """How many times faster than what stands beside it."""
        return None if self.other is None else self.other / self.value

    @property
    def met(self):
        """Whether the target is met; None without one."""
        if self.target is None:
            return None
        return _COMPARE[self.rule](self.ratio if self.of_ratio else self.value, self.target)

    @property
    def comparison(self):
        """The ratio in words."""
        return "" if self.ratio is None else f"{units.number(self.ratio)} times as fast as {self.beside}"

    @property
    def aim(self):
        """The target in words."""
        if self.target is None:
            return ""
        unit = "times" if self.of_ratio else self.unit
        return f"{self.rule} {self.target:g} {unit}"

    def __str__(self):
        verdict = {None: "", True: "met: ", False: "MISSED: "}[self.met] + self.aim
        return f"{self.what:<58} {units.number(self.value):>9} {self.unit:<9} {self.comparison:<52} {verdict}".rstrip()


def medians(*works, repeats=7, least=0.02):
    """Median seconds of several works, taken turn by turn.

    Parameters
    ----------
    *works : callable
        Each is called as often in a row as takes `least` seconds.
    repeats : int, optional
        Turns, 3 to 100.
    least : float, optional
        Seconds a turn takes at least [s], 0 or more.

    Returns
    -------
    list of float
        Seconds a call, in the order of the works.
    """
    often = []
    for work in works:
        work()  # warm
        start = time.perf_counter()
        work()
        often.append(max(1, round(least / max(time.perf_counter() - start, 1e-7))))
    taken = [[] for _ in works]
    gc.collect()
    for _ in range(repeats):
        for work, times, found in zip(works, often, taken, strict=True):
            start = time.perf_counter()
            for _ in range(times):
                work()
            found.append((time.perf_counter() - start) / times)
    return [statistics.median(found) for found in taken]


def in_a_new_process(code, repeats=3, **environment):
    """Median of the number that some code prints last, each time in a process of its own.

    Parameters
    ----------
    code : str
        Prints one number.
    repeats : int, optional
    **environment : str
        Set for that process.

    Returns
    -------
    float
    """
    found, around = [], {**os.environ, **environment}
    for _ in range(repeats):
        done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=around)
        found.append(float(done.stdout.split()[-1]))
    return statistics.median(found)
