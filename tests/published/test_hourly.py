"""The hourly engine against a standard's benchmark and closed solutions.

EN 15026:2007 annex A (definition from memory, profile computed beforehand by
an independent stiff integration), isothermal drying of a layer, Fourier's
slabs with and without films, steps and swings on a semi-infinite solid, and
diffusion with air flow (OENORM B 8110-2:2020, formula read in course notes).
Each row of evidence/data/hourly.csv names its source and how it was read.
"""

import numpy as np
import pytest

from dryward.evidence import hourly


def test_the_benchmark_depends_on_depth_over_root_of_time_alone():
    """The exact problem is self-similar: the depth of w = 80 and the uptake grow with the root of time."""
    run = hourly.semi_infinite(refine=16)
    days = np.array([7, 15, 30])
    profiles = run.water_content[days * 24 - 1]
    front = [np.interp(-80.0, -held[:400], run.depth[:400]) for held in profiles] / np.sqrt(days)
    uptake = (run.water[days * 24 - 1] - run.initial_water @ run.width) / np.sqrt(days)
    assert front == pytest.approx(np.full(3, 1.899e-3), rel=0.02)  # mm by root of a day; 2 %: sorption taken at 30 °C
    assert front / front.mean() == pytest.approx(np.ones(3), abs=0.005)
    assert uptake / uptake.mean() == pytest.approx(np.ones(3), abs=0.005)


def test_the_year_of_the_benchmark():
    """At 365 days the uptake is that of 30 days times the root of the ratio."""
    run = hourly.semi_infinite(refine=4, hours=8760)
    uptake = run.water[[719, 8759]] - run.initial_water @ run.width
    assert uptake[1] / uptake[0] == pytest.approx(np.sqrt(365 / 30), rel=0.01)
    assert run.balance_error < 1e-6
