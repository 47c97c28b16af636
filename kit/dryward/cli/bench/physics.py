"""How fast the physics is: moist air, steady states, a year hour by hour."""

import importlib.util
import os
import sys
import tempfile
import time
import warnings
from collections.abc import Iterator
from types import ModuleType
from typing import Any

import numpy as np
from numpy.typing import NDArray

from dryward import air, building, weather
from dryward.checks import PlainError
from dryward.cli.bench.timing import Measurement, in_a_new_process, medians
from dryward.language import message
from dryward.physics import airleak, hourly, steady, ventspace
from dryward.physics.hourly import reference
from dryward.units import KELVIN, number, with_unit
from dryward.weather import Air, indoor

Floats = NDArray[np.float64]

# --- moist air --------------------------------------------------------------------

_MANY, _FEW = 1_000_000, 2000


class _Missing(PlainError):
    """A peer that is not installed."""


def _psychrolib(compiled: bool) -> ModuleType:
    """The peer with its formulas compiled, or as they are written."""
    spec = importlib.util.find_spec("psychrolib")
    if spec is None or spec.loader is None:
        raise _Missing(message("cli.bench-no-peer", library="PsychroLib"))
    module = importlib.util.module_from_spec(spec)
    modules: dict[str, ModuleType | None] = sys.modules  # type: ignore[assignment] # None: as good as not installed
    numba = modules.get("numba")
    if not compiled:
        modules["numba"] = None  # the library goes on without it
    try:
        spec.loader.exec_module(module)
    finally:
        if not compiled:
            del modules["numba"]
            if numba is not None:
                modules["numba"] = numba
    module.SetUnitSystem(module.SI)
    return module


def moist_air() -> Iterator[Measurement]:
    """Saturation and dew point beside CoolProp and PsychroLib: nanoseconds a value, from -40 to 60 °C."""
    from CoolProp.HumidAirProp import HAPropsSI

    many, few = np.linspace(-40.0, 60.0, _MANY), np.linspace(-40.0, 60.0, _FEW)
    kelvin, halves, pressures = few + KELVIN, np.full(_FEW, 0.5), np.full(_FEW, air.STANDARD_PRESSURE)
    plain, compiled = _psychrolib(False), _psychrolib(True)
    vectorized = np.vectorize(plain.GetSatVapPres)
    vectorized_dew = np.vectorize(plain.GetTDewPointFromRelHum)
    vapor = air.vapor_pressure(many, 0.5)
    works = {
        "cli.bench-saturation": {
            "dryward": (lambda: air.saturation_vapor_pressure(many), _MANY),
            message("cli.bench-arrays", library="CoolProp"): (
                lambda: HAPropsSI("P_w", "T", kelvin, "R", halves * 2, "P", pressures),
                _FEW,
            ),
            message("cli.bench-singly", library="PsychroLib"): (lambda: [plain.GetSatVapPres(t) for t in few], _FEW),
            message("cli.bench-vectorize", library="PsychroLib"): (lambda: vectorized(few), _FEW),
            message("cli.bench-compiled", library="PsychroLib"): (lambda: compiled.GetSatVapPres(many), _MANY),
        },
        "cli.bench-dew-point": {
            "dryward": (lambda: air.dew_point(vapor), _MANY),
            message("cli.bench-arrays", library="CoolProp"): (
                lambda: HAPropsSI("D", "T", kelvin, "R", halves, "P", pressures),
                _FEW,
            ),
            message("cli.bench-singly", library="PsychroLib"): (
                lambda: [plain.GetTDewPointFromRelHum(t, 0.5) for t in few],
                _FEW,
            ),
            message("cli.bench-vectorize", library="PsychroLib"): (lambda: vectorized_dew(few, 0.5), _FEW),
            message("cli.bench-compiled", library="PsychroLib"): (
                lambda: compiled.GetTDewPointFromRelHum(few, 0.5),
                _FEW,
            ),
        },
    }
    for what, rivals in works.items():
        taken = medians(*(work for work, _ in rivals.values()), repeats=5)
        each = [seconds / count * 1e9 for seconds, (_, count) in zip(taken, rivals.values(), strict=True)]
        for place, (name, other) in enumerate(zip(list(rivals)[1:], each[1:], strict=True)):
            aim = ("at least", 100.0, True) if place == 0 else ("", None, False)  # the reference comes first
            yield Measurement(message(what), each[0], "ns", name, other, *aim)


# --- steady states ----------------------------------------------------------------

_CASES, _SINGLY = 10_000, 100  # cases of a sweep, and those timed one by one


def steady_states() -> Iterator[Measurement]:
    """One case with a variable membrane, and ten thousand at once: milliseconds."""
    indoor, outdoor = Air(21.1, 0.4), Air(-6.7, 0.8)
    fixed, variable = building.preset("vented-vault"), building.preset("vented-vault-variable")
    one, other = medians(
        lambda: steady.profile(fixed, indoor, outdoor), lambda: steady.profile(variable, indoor, outdoor)
    )
    yield Measurement(message("cli.bench-fixed"), one * 1e3, "ms")
    yield Measurement(message("cli.bench-variable"), other * 1e3, "ms", rule="at most", target=0.3)
    draw = np.random.default_rng(7)
    humidity, cold = draw.uniform(0.2, 0.7, _CASES), draw.uniform(-30.0, 15.0, _CASES)
    inner = np.exp(draw.uniform(np.log(3e-12), np.log(6e-10), _CASES))

    def one_by_one() -> None:
        for k in range(_SINGLY):
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
        message("cli.bench-sweep"),
        whole * 1e3,
        "ms",
        message("cli.bench-one-after-another"),
        singly * _CASES / _SINGLY * 1e3,
        "at most",
        60.0,
    )
    answering = medians(
        lambda: steady.sweep(variable, indoor, outdoor, indoor_relative_humidity=humidity, outdoor_temperature=cold),
        repeats=3,
    )[0]
    yield Measurement(message("cli.bench-sweep-variable"), answering * 1e3, "ms")


# --- a year, hour by hour ------------------------------------------------------------

_FIRST = """
import time
start = time.perf_counter()
from dryward.physics import hourly
hourly.warm_up()
print(time.perf_counter() - start)
"""


def _everything() -> tuple[building.Assembly, weather.HourlyWeather, Any, dict[str, Any]]:
    """A vented roof with a variable membrane, sun, sky, wind, a vent space and a leak."""
    roof = building.preset("vented-vault-variable")
    switched_on = {
        "surface": hourly.Surface(absorptance=0.8, azimuth=0.0),
        "vent": ventspace.VentSpace(0.038, 6.0, roof.slope, 0.02, 0.02),
        "leak": airleak.Leak.from_blower_door(3.0, 400.0, share=0.3, area=100.0),
    }
    return roof, weather.demo("cold"), indoor.by_outdoor_temperature(), switched_on


def _error(found: dict[str, Floats], truth: dict[str, Floats]) -> float:
    """Largest root mean square of a layer's mean humidity, against a fine solution [-]."""
    return max(float(np.sqrt(np.mean((found[name] - truth[name]) ** 2))) for name in truth)


def _beside_scipy() -> tuple[float, float, float, float]:
    """March and stiff integrator on the same equations, each no better than the other.

    A winter day.  Of the integrator's runs that are at least as near to a fine
    solution as the march, with fewer and more cells, loose and tight, the
    fastest counts.
    """
    days = reference.part(weather.demo("cold"), 0, 24)

    def humidity(layers: dict[str, tuple[Floats, ...]]) -> dict[str, Floats]:
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


def hourly_years() -> Iterator[Measurement]:
    """One roof with everything on [ms], a batch on all cores, an integrator beside it, the first run [s]."""
    roof, year, room, options = _everything()
    run = hourly.simulate(roof, year, room, **options)
    cells = run.depth.size
    one, fine = medians(
        lambda: hourly.simulate(roof, year, room, **options),
        lambda: hourly.simulate(roof, year, room, refine=2, **options),
        repeats=5,
    )
    yield Measurement(message("cli.bench-year", cells=str(cells)), one * 1e3, "ms", rule="at most", target=100.0)
    yield Measurement(message("cli.bench-year-finer", cells=str(2 * cells)), fine * 1e3, "ms")
    cores = os.cpu_count() or 1
    many = [(roof, year, room, options)] * (4 * cores)
    together = medians(lambda: hourly.batch(many, lambda run: run.water[-1]), repeats=3)[0]
    batch = message("cli.bench-batch", count=str(len(many)), cores=str(cores))
    yield Measurement(batch, together / len(many) * 1e3, "ms", message("cli.bench-one-at-a-time"), one * 1e3)
    march, lsoda, ours, theirs = _beside_scipy()
    yield Measurement(
        message("cli.bench-hour", error=with_unit(number(ours * 100, figures=2, rounded=True), "%")),
        march * 1e3,
        "ms",
        message("cli.bench-integrator", error=with_unit(number(theirs * 100, figures=2, rounded=True), "%")),
        lsoda * 1e3,
        "at least",
        500.0,
        True,
    )
    kept = in_a_new_process(_FIRST)
    with tempfile.TemporaryDirectory() as empty:
        first = in_a_new_process(_FIRST, repeats=1, NUMBA_CACHE_DIR=empty)
    yield Measurement(message("cli.bench-first-ever"), first, "s", rule="at most", target=10.0)
    yield Measurement(message("cli.bench-first"), kept, "s", rule="at most", target=1.0)
