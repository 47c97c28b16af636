"""Steady states: one case with a variable membrane, and ten thousand at once."""

import numpy as np

from dryward import building
from dryward.cli.bench.timing import Measurement, medians
from dryward.physics import steady
from dryward.weather import Air

_CASES = 10_000
_SAMPLE = 100  # cases timed one by one


def measurements():
    """Milliseconds a profile and a sweep.

    Yields
    ------
    Measurement
    """
    indoor, outdoor = Air(21.1, 0.4), Air(-6.7, 0.8)
    fixed, variable = building.preset("vented-vault"), building.preset("vented-vault-variable")
    one, other = medians(
        lambda: steady.profile(fixed, indoor, outdoor), lambda: steady.profile(variable, indoor, outdoor)
    )
    yield Measurement("steady profile, fixed membrane", one * 1e3, "ms")
    yield Measurement("steady profile, variable membrane", other * 1e3, "ms", rule="at most", target=0.3)
    draw = np.random.default_rng(7)
    humidity, cold = draw.uniform(0.2, 0.7, _CASES), draw.uniform(-30.0, 15.0, _CASES)
    inner = np.exp(draw.uniform(np.log(3e-12), np.log(6e-10), _CASES))

    def one_by_one():
        for k in range(_SAMPLE):
            steady.profile(fixed, Air(21.1, float(humidity[k])), Air(float(cold[k]), 0.8))

    whole, singly = medians(
        lambda: steady.sweep(
            fixed,
            indoor,
            outdoor,
            indoor_relative_humidity=humidity,
            outdoor_temperature=cold,
            inner_membrane_permeance=inner,
        ),
        one_by_one,
    )
    yield Measurement(
        "sweep of 10 000 steady states",
        whole * 1e3,
        "ms",
        "one profile after another",
        singly * _CASES / _SAMPLE * 1e3,
        "at most",
        60.0,
    )
    answering = medians(
        lambda: steady.sweep(variable, indoor, outdoor, indoor_relative_humidity=humidity, outdoor_temperature=cold),
        repeats=3,
    )[0]
    yield Measurement("the same with a variable membrane", answering * 1e3, "ms")
