"""The march gives the same answer compiled and as plain Python.

So what is read in the files is what runs, and no liberty that the compiler
takes with the order of sums can be seen.  It also lets a tool that follows
Python lines see the march: set NUMBA_DISABLE_JIT=1.
"""

import json
import os
import subprocess
import sys

import few_hours
import pytest


@pytest.fixture(scope="module")
def plain():
    """The runs of `few_hours` from a process that compiles nothing."""
    told = subprocess.run(
        [sys.executable, few_hours.__file__],
        env={**os.environ, "NUMBA_DISABLE_JIT": "1"},
        capture_output=True,
        text=True,
        timeout=300,
        check=True,
    )
    return json.loads(told.stdout)


@pytest.fixture(scope="module")
def here():
    return few_hours.results()


@pytest.mark.parametrize("name", few_hours.RUNS)
def test_compiled_is_what_is_written(name, plain, here):
    assert here[name] == pytest.approx(plain[name], rel=1e-6, abs=1e-9)


def test_the_runs_take_the_roads_they_are_for(here):
    wet = few_hours.wetting()
    assert wet.condensed.max() > 0
    assert few_hours.roof().vent_out.any()
    assert (few_hours.roof().leak_in > 0).any()
    assert (few_hours.roof().leak_in < 0).any()
    assert few_hours.dripping().runoff.any()
    assert few_hours.liquid().water_content[-1].max() < 180.0
    assert all(len(values) > 10 for values in here.values())
