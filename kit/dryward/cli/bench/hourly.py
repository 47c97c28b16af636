"""A year hour by hour: one roof with everything on, a batch on all cores, SciPy's integrator, the first run."""

import os
import tempfile
import time
import warnings

import numpy as np

from dryward import building, weather
from dryward.checks import PlainError
from dryward.cli.bench.timing import Measurement, in_a_new_process, medians
from dryward.physics import airleak, hourly, ventspace
from dryward.physics.hourly import reference
from dryward.weather import indoor

_FIRST = """
import time
start = time.perf_counter()
from dryward.physics import hourly
hourly.warm_up()
print(time.perf_counter() - start)
"""


def _everything():
    """A vented roof with a variable membrane, sun, sky, wind, a vent space and a leak."""
    roof = building.preset("vented-vault-variable")
    switched_on = {
        "surface": hourly.Surface(absorptance=0.8, azimuth=0.0),
        "vent": ventspace.VentSpace(0.038, 6.0, roof.slope, 0.02, 0.02),
        "leak": airleak.Leak.from_blower_door(3.0, 400.0, share=0.3, area=100.0),
    }
    return roof, weather.demo("cold"), indoor.by_outdoor_temperature(), switched_on


def _error(found, truth):
    """Largest root mean square of a layer's mean humidity, against a fine solution [-]."""
    return max(float(np.sqrt(np.mean((found[name] - truth[name]) ** 2))) for name in truth)


def _beside_scipy():
    """March and stiff integrator on the same equations, each no better than the other.

    A winter day.  Of the integrator's runs that are at least as near to a fine
    solution as the march, with fewer and more cells, loose and tight, the
    fastest counts.
    """
    days = reference.part(weather.demo("cold"), 0, 24)

    def humidity(layers):
        return {name: rh.mean(axis=1) for name, (_, rh, *_) in layers.items()}

    truth = humidity(reference.by_scipy(days))
    run = reference.by_march(days)
    ours = _error({name: run.layer(name).relative_humidity for name in truth}, truth)
    rivals = []
    for share in (4, 3, 2):
        cells = {name: max(count // share, 1) for name, count in reference.LAYERS.items()}
        for loose in (1e-2, 1e-3, 1e-4):
            start = time.perf_counter()
            try:
                with warnings.catch_warnings(action="ignore"):  # the integrator tells of its troubles
                    theirs = _error(humidity(reference.by_scipy(days, cells, loose, loose / 10)), truth)
            except PlainError:
                continue  # too loose: it runs away
            rivals.append((theirs > ours, time.perf_counter() - start, theirs))
    _, taken, theirs = min(rivals)
    march = medians(lambda: reference.by_march(days), repeats=5)[0]
    return march / days.hours, taken / days.hours, ours, theirs


def measurements():
    """Milliseconds a year, years a second on all cores, seconds of the first run.

    Yields
    ------
    Measurement
    """
    roof, year, room, options = _everything()
    run = hourly.simulate(roof, year, room, **options)
    cells = run.depth.size
    one, fine = medians(
        lambda: hourly.simulate(roof, year, room, **options),
        lambda: hourly.simulate(roof, year, room, refine=2, **options),
        repeats=5,
    )
    yield Measurement(f"hourly year, {cells} cells, everything on", one * 1e3, "ms", rule="at most", target=100.0)
    yield Measurement(f"the same with {2 * cells} cells", fine * 1e3, "ms")
    cores = os.cpu_count() or 1
    many = [(roof, year, room, options)] * (4 * cores)
    together = medians(lambda: hourly.batch(many, lambda run: run.water[-1]), repeats=3)[0]
    yield Measurement(
        f"a year of {len(many)} on {cores} cores at once", together / len(many) * 1e3, "ms", "one at a time", one * 1e3
    )
    march, lsoda, ours, theirs = _beside_scipy()
    yield Measurement(
        f"an hour of a roof, humidity within {ours * 100:.2g} %",
        march * 1e3,
        "ms",
        f"SciPy's LSODA, within {theirs * 100:.2g} %",
        lsoda * 1e3,
        "at least",
        500.0,
        True,
    )
    kept = in_a_new_process(_FIRST)
    with tempfile.TemporaryDirectory() as empty:
        first = in_a_new_process(_FIRST, repeats=1, NUMBA_CACHE_DIR=empty)
    yield Measurement("first hourly run ever, compilation and all", first, "s", rule="at most", target=10.0)
    yield Measurement("first hourly run of a new process", kept, "s", rule="at most", target=1.0)
