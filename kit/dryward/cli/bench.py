"""``dryward bench``: how fast the kit is, beside its peers, in one run.

Peers are timed in the same run, turn by turn with the kit, so
that the ratios mean something on any machine.
"""

import argparse
import dataclasses
import datetime
import gc
import importlib.util
import io
import json
import operator
import os
import platform
import statistics
import subprocess
import sys
import tempfile
import time
import warnings
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from types import ModuleType
from typing import Any

import numpy as np

from dryward import __version__, air, building, units, weather
from dryward.checks import Floats, OutOfRange, PlainError, UnknownName
from dryward.cli import front_page
from dryward.language import joined, message
from dryward.physics import airleak, hourly, steady, ventspace
from dryward.physics.hourly import reference
from dryward.teaching import lessons
from dryward.teaching.progress import Progress
from dryward.units import KELVIN, number, with_unit
from dryward.weather import Air, indoor

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
    march = medians(lambda: reference.by_march(days), repeats=60)[0]  # a day takes a millisecond
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


_MOVED_PAGE = "where-it-gets-wet"
_MOVED = "RH_in"


def _inline(state: Any) -> None:
    """What a notebook does with pyplot at each move: a new figure, two axes, its labels, a PNG."""
    import matplotlib as mpl

    mpl.use("agg")
    from matplotlib import pyplot

    profile = state.profile
    figure, (left, right) = pyplot.subplots(1, 2, figsize=(9, 4.5))
    left.plot(profile.depth, profile.temperature, label="temperature")
    left.axvspan(profile.depth[1], profile.depth[-2], alpha=0.2)
    left.set(xlabel="depth", ylabel="temperature")
    left.legend()
    right.plot(profile.vapor_resistance, profile.vapor_pressure, label="vapor")
    right.plot(profile.vapor_resistance, profile.saturation_vapor_pressure, label="saturation")
    right.set(xlabel="vapor resistance", ylabel="pressure")
    right.legend()
    figure.savefig(io.BytesIO(), format="png")
    pyplot.close(figure)


def pictures() -> Iterator[Measurement]:
    """A slider's move to the picture's bytes, beside the usual ways to draw: milliseconds."""
    from dryward import panels  # the widgets are not needed to measure anything else
    from dryward.panels.controls import SliderControl
    from dryward.panels.learner import Settings

    # Of one who made the bet: before it no picture is drawn for the browser.
    with tempfile.TemporaryDirectory() as folder:
        settings = Settings(Progress(folder))
        settings.predicted(_MOVED_PAGE, lessons.lesson(_MOVED_PAGE).prediction.right)
        page = panels.page(_MOVED_PAGE, "us", settings)
    control = page.controls[_MOVED]
    assert isinstance(control, SliderControl)
    values = [control.min + (control.max - control.min) * share for share in (0.35, 0.45, 0.55, 0.65)]
    turn = iter(range(10**9))

    def update() -> None:
        control.value = values[next(turn) % len(values)]

    drawing, again_drawing = page.kinds[0](), page.kinds[0]()
    state = page.views(page.state)

    def whole() -> None:
        again_drawing.redraw(state)
        again_drawing.canvas.print_png(io.BytesIO())

    ours, kept, again, usual = medians(update, lambda: drawing.layers(state), whole, lambda: _inline(page.state))
    yield Measurement(message("cli.bench-slider"), ours * 1e3, "ms", rule="at most", target=15.0)
    yield Measurement(message("cli.bench-picture"), kept * 1e3, "ms", message("cli.bench-drawn-again"), again * 1e3)
    yield Measurement(message("cli.bench-picture"), kept * 1e3, "ms", message("cli.bench-pyplot"), usual * 1e3)


_CLOCK = "import time; start = time.perf_counter()\n{code}\nprint(time.perf_counter() - start)"
_PAGE = "from dryward import panels; page = panels.page('{id}'); page.picture"
#: Private and shared memory of the process, by its share [MB].
_MEMORY = """
{code}
import os, sys
try:
    lines = open(f"/proc/{{os.getpid()}}/smaps_rollup").read().splitlines()
    print(next(int(line.split()[1]) for line in lines if line.startswith("Pss:")) / 1000)
except OSError:
    import resource
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    print(most / (1e6 if sys.platform == "darwin" else 1e3))
"""


def start() -> Iterator[Measurement]:
    """Import, first picture, memory; each in new processes: seconds, MB."""
    steady = _PAGE.format(id=_MOVED_PAGE)
    seconds = in_a_new_process(_CLOCK.format(code="import dryward.panels"))
    yield Measurement(message("cli.bench-import"), seconds, "s")
    seconds = in_a_new_process(_CLOCK.format(code=steady))
    yield Measurement(message("cli.bench-first-picture"), seconds, "s", rule="at most", target=2.5)
    bare = in_a_new_process(_MEMORY.format(code="import matplotlib.figure, ipywidgets"))
    ours = in_a_new_process(_MEMORY.format(code=steady))
    yield Measurement(message("cli.bench-memory"), ours, "MB", rule="at most", target=100.0)
    yield Measurement(message("cli.bench-memory-bare"), bare, "MB")


#: The groups of measurements, in the order of the table.
GROUPS: dict[str, Callable[[], Iterator[Measurement]]] = {
    "moist_air": moist_air,
    "steady": steady_states,
    "hourly": hourly_years,
    "pictures": pictures,
    "start": start,
}


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    groups = joined("cli.name-after-name", list(GROUPS))
    parser.add_argument(
        "groups", nargs="*", metavar=message("cli.meta-group"), help=message("cli.bench-groups", groups=groups)
    )
    parser.add_argument("--json", action="store_true", help=message("cli.bench-json"))
    parser.add_argument("--readme", action="store_true", help=message("cli.bench-readme"))


def run(args: argparse.Namespace) -> int:
    """Measure, print; 1 when a target is missed."""
    for name in args.groups:
        if name not in GROUPS:
            raise UnknownName("group of measurements", name, GROUPS)
    if args.readme and args.groups:
        raise OutOfRange(message("cli.bench-all-groups"))
    found = []
    for name in args.groups or GROUPS:
        for each in GROUPS[name]():
            found.append(each)
            if not args.json:
                print(each, flush=True)
    if args.json:
        machine = {"python": platform.python_version(), "system": platform.system(), "dryward": __version__}
        rows = [{**dataclasses.asdict(each), "met": each.met} for each in found]
        print(json.dumps({"machine": machine, "measurements": rows}, indent=1))
    missed = [each for each in found if each.met is False]
    if args.readme:
        print(message("cli.table-stands", file=str(front_page.write("speed", table(found)))))
    if not args.json:
        print(message("cli.bench-done", count=str(len(found)), missed=len(missed)))
    return 1 if missed else 0
