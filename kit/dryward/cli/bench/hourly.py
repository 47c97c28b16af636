"""A year hour by hour: one roof with everything on, a batch on all cores, and the first run of all."""

import os
import tempfile

from dryward import building, weather
from dryward.cli.bench.timing import Measurement, in_a_new_process, medians
from dryward.physics import airleak, hourly, ventspace
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


def measurements():
    """Milliseconds a year, years a second on all cores, seconds of the first run.

    Yields
    ------
    Measurement
    """
    roof, year, room, options = _everything()
    run = hourly.simulate(roof, year, room, **options)
    cells = run.depth.size
    finer = -(-60 // cells)  # at least 60 cells
    one, fine = medians(
        lambda: hourly.simulate(roof, year, room, **options),
        lambda: hourly.simulate(roof, year, room, refine=finer, **options),
        repeats=5,
    )
    yield Measurement(f"hourly year, {cells} cells, everything on", one * 1e3, "ms")
    yield Measurement(
        f"hourly year, {cells * finer} cells, everything on", fine * 1e3, "ms", rule="at most", target=100.0
    )
    cores = os.cpu_count() or 1
    many = [(roof, year, room, options)] * (4 * cores)
    together = medians(lambda: hourly.batch(many, lambda run: run.water[-1]), repeats=3)[0]
    yield Measurement(
        f"a year of {len(many)} on {cores} cores at once", together / len(many) * 1e3, "ms", "one at a time", one * 1e3
    )
    kept = in_a_new_process(_FIRST)
    with tempfile.TemporaryDirectory() as empty:
        first = in_a_new_process(_FIRST, repeats=1, NUMBA_CACHE_DIR=empty)
    yield Measurement("first hourly run ever, compilation and all", first, "s", rule="at most", target=10.0)
    yield Measurement("first hourly run of a new process", kept, "s", rule="at most", target=1.0)
