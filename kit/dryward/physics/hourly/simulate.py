"""One run: from an assembly, weather and room air to `Hours`."""

import os
import sys
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor, as_completed
from time import perf_counter
from typing import Any, TypeVar

import numpy as np

from dryward.building import Assembly, Layer, Material
from dryward.checks import Floats, NotConverged, Numeric, OutOfRange, PlainError, of_kind, within
from dryward.language import called, message
from dryward.physics.airleak import Leak
from dryward.physics.hourly import case as cases
from dryward.physics.hourly import layout, tables
from dryward.physics.hourly.air_paths import AirFlow
from dryward.physics.hourly.result import Hours, over_cells
from dryward.physics.hourly.surfaces import Surface
from dryward.physics.ventspace import VentSpace
from dryward.units import HOUR, written
from dryward.weather import YEAR, Air, HourlyWeather
from dryward.weather.indoor import Room

#: Hours between two calls of a progress function.
CHUNK = 730
#: A year repeats when no layer holds more or less than this after it [kg/m2]: far below any reading.
REPEATS = 5e-3


#: What a run begins with: an air in balance with all layers, water contents by layer name, or an earlier run.
Start = Air | Mapping[str, float] | Hours | None
#: Assembly, weather, room air and keywords of `simulate`.
Given = tuple[Assembly, HourlyWeather | Air, Room, dict[str, Any]]
Measured = TypeVar("Measured")


class Stopped(PlainError):
    """A run that its progress function ended."""


def simulate(
    assembly: Assembly,
    weather: HourlyWeather | Air,
    indoor: Room,
    *,
    years: int = 1,
    hours: int | None = None,
    initial: Start = None,
    step: float = HOUR,
    vent: VentSpace | Numeric | None = None,
    leak: Leak | AirFlow | None = None,
    surface: Surface | None = None,
    refine: int = 1,
    progress: Callable[[int, int], object] | None = None,
    until_it_repeats: bool = False,
) -> Hours:
    """Heat and moisture in an assembly, hour by hour.

    Parameters
    ----------
    assembly : Assembly
        Inside to outside.  Framing is left out: the section is between it.
    weather : HourlyWeather or Air
        Hours outdoors; one air stands for a constant year.
    indoor : Air or a rule of `weather.indoor`
    years : int
        How many times the weather is run through, 1 to 100.
    hours : int, optional
        Run that many instead, 1 to 876 000; the weather repeats as needed.
    initial : Air, dict or Hours, optional
        Air that all layers are in balance with at the start (20 degC and
        80 % when not given); or water content by layer name [kg/m3], the
        others at 80 %; or an earlier run of the same assembly to go on from.
    step : float
        Longest time step [s], above 0 to 3600; weather is constant in an hour.
    vent : ventspace.VentSpace, float or array of hours, optional
        The vent space, or the flow in it over the area of the roof
        [m3/(s m2)], 0 to 10.  Not given: as much air as the steady method
        assumes, so that the vented layer holds outdoor air; 0: still air.
    leak : airleak.Leak or AirFlow, optional
        A leak driven by warmth at 3.7 m above the neutral level, part of it
        seeping through the open layers, part straight; or any air flow.
    surface : Surface, optional
        Sun, sky and wind on the outer surface; without it there is only the
        film to outdoor air.
    refine : int
        Cuts every cell into that many, 1 to 50.
    progress : function, optional
        Called with (hours done, hours in all) about once a month; when it
        returns False the run ends.
    until_it_repeats : bool
        Ends after the first year, from the second on, in which no layer's
        water changed by more than 5 g/m2; `years` is then the most.

    Returns
    -------
    Hours

    Raises
    ------
    OutOfRange
        For a value out of range.
    NotConverged
        When a step fails however short; it says when, where and which layer.
    Stopped
        When the progress function ended the run.

    Notes
    -----
    Coupled heat and moisture in one dimension after EN 15026: finite volumes,
    implicit in time, vapor and liquid flow, sorption, latent heat; see
    `hourly.march` for the equations and what is left out.  The first run on
    a machine compiles the march, which takes some seconds.

    References
    ----------
    EN 15026:2007, Assessment of moisture transfer by numerical simulation.

    Examples
    --------
    >>> from dryward import building
    >>> wall = building.preset("wood-frame-wall")
    >>> run = simulate(wall, Air(0.0, 0.8), Air(20.0, 0.4), hours=48)
    >>> run.temperature.shape[0], run.balance_error < 1e-6
    (48, True)
    """
    total = _count(years, hours, weather)
    ready = cases.ready(
        assembly,
        cases.as_weather(weather, min(total, YEAR)),
        indoor,
        step=step,
        vent=vent,
        leak=leak,
        surface=surface,
        refine=refine,
    )
    return run(ready, total, initial, progress, until_it_repeats)


def _count(years: int, hours: int | None, weather: HourlyWeather | Air) -> int:
    if hours is not None:
        count = within("Hours", hours, 1, 876_000, "h")
        if count != int(count):
            raise OutOfRange(message("physics.whole-hours", given=str(hours), most=written(876_000, "d", "h")))
        return int(count)
    if not isinstance(years, (int, np.integer)) or not 1 <= years <= 100:
        raise OutOfRange(message("physics.whole-years", given=str(years)))
    return int(years) * getattr(weather, "hours", YEAR)


def run(
    ready: cases.Case,
    total: int,
    initial: Start = None,
    progress: Callable[[int, int], object] | None = None,
    until_it_repeats: bool = False,
) -> Hours:
    """March through a case that is made ready; the rest as in `simulate`."""
    from dryward.physics.hourly.march import march  # brings Numba

    cells = ready.grid.width.size
    state = _start(ready, initial)
    first_water, first_heat = state.water[1:-1].copy(), state.heat[1:-1].copy()
    now = first_water
    hourly = [np.empty((total, cells)) for _ in range(4)]
    ran_off, given = np.zeros((-(-total // YEAR), cells)), np.empty((total, layout.GIVEN))
    scratch = layout.scratch(cells)
    done = 0
    step = total if progress is None else CHUNK
    while done < total:
        last = min(done + step, total)
        if until_it_repeats:
            last = min(last, done - done % YEAR + YEAR)
        here = slice(done, last)
        temperature, humidity, water, free = (each[here] for each in hourly)
        output = layout.Output(temperature, humidity, water, free, ran_off, given[here])
        failed = march(
            done, last, ready.forcing, ready.constants, ready.cells, ready.faces, ready.curves, ready.paths, state,
            scratch, output,
        )  # fmt: skip
        if failed > 0:
            raise NotConverged(_trouble(ready, failed - 1, int(scratch.counts[layout.FAILED_HOUR]), state))
        done = last
        if progress is not None and progress(done, total) is False and done < total:
            raise Stopped(message("physics.stopped-after", done=str(done), total=str(total)))
        if until_it_repeats and done % YEAR == 0:
            before, now = now, state.water[1:-1].copy()
            if done > YEAR and _repeats(ready, before, now):
                break
    if done < total:
        hourly, given, ran_off = [each[:done] for each in hourly], given[:done], ran_off[: done // YEAR]
    return _hours(ready, state, scratch, hourly, ran_off, given, (first_water, first_heat), _humidity_of(initial))


def _hours(
    ready: cases.Case,
    state: layout.State,
    scratch: layout.Scratch,
    hourly: list[Floats],
    ran_off: Floats,
    given: Floats,
    first: tuple[Floats, Floats],
    start_humidity: float | None,
) -> Hours:
    """What was marched as `Hours`, with what its books miss; `first`: water and heat at the start."""
    out_t, out_u, out_w, out_free = hourly
    first_w, first_e = first
    total, k, count = len(given), layout, scratch.counts
    w, e = state.water, state.heat
    width = ready.grid.width
    flux = {name: given[:, place] for name, place in _FLUXES.items()}
    water_in = HOUR * (flux["vapor_flux_in"] + flux["leak_in"])
    water_out = HOUR * (flux["vapor_flux_out"] + flux["leak_out"] + flux["vent_out"] + flux["runoff"])
    through = HOUR * sum(np.abs(flux[name]).sum() for name in _WATER)
    stored = float(over_cells(w[1:-1] - first_w, width))
    warm_in = HOUR * (flux["heat_flux_in"] + flux["leak_heat_in"])
    warm_out = HOUR * (flux["heat_flux_out"] + flux["leak_heat_out"] + given[:, k.Q_OTHER])
    warmth = float(over_cells(e[1:-1] - first_e, width))
    return Hours(
        ready.assembly,
        np.arange(1.0, total + 1.0),
        ready.grid.depth,
        width,
        ready.grid.layer,
        out_t,
        out_u,
        out_w,
        out_free,
        ran_off,
        vent_flow=given[:, k.VENT_FLOW],
        surface_temperature=given[:, k.T_SURFACE],
        initial_water=first_w,
        most_bound=ready.cells.bound[1:-1].copy(),
        balance_error=_share(water_in.sum() - water_out.sum() - stored, through),
        heat_balance_error=_share(
            warm_in.sum() - warm_out.sum() - warmth, np.abs(warm_in).sum() + np.abs(warm_out).sum()
        ),
        steps=int(count[k.STEPS_DONE]),
        iterations=int(count[k.PASSES]),
        halvings=int(count[k.HALVINGS]),
        end=(state.temperature.copy(), state.potential.copy(), w.copy(), e.copy()),
        leaking=bool(ready.forcing[:, [k.SEEP, k.STRAIGHT]].any()),
        start_humidity=start_humidity,
        **flux,
    )


_WATER = ("vapor_flux_in", "vapor_flux_out", "leak_in", "leak_out", "vent_out", "runoff")


#: Name in `Hours` -> column of what an hour gives back.
_FLUXES = {
    "vapor_flux_in": layout.G_IN,
    "vapor_flux_out": layout.G_OUT,
    "leak_in": layout.G_LEAK_IN,
    "leak_out": layout.G_LEAK_OUT,
    "leak_left": layout.G_LEFT,
    "vent_out": layout.G_VENT,
    "runoff": layout.G_OFF,
    "heat_flux_in": layout.Q_IN,
    "heat_flux_out": layout.Q_OUT,
    "leak_heat_in": layout.Q_LEAK_IN,
    "leak_heat_out": layout.Q_LEAK_OUT,
}


def _share(missing: float, through: float) -> float:
    """Missing by what went through; below a tenth of a milligram that is rounding of what is held."""
    return abs(float(missing)) / max(float(through), 1e-7)


def _start(ready: cases.Case, initial: Start) -> layout.State:
    """Temperature, moisture potential, water and heat of all cells at the start."""
    n = ready.grid.width.size
    if isinstance(initial, Hours):
        if initial.end[0].size != n + 2:
            raise OutOfRange(message("physics.other-cells"))
        return _with_membranes(ready, *(each.copy() for each in initial.end))
    given = initial if isinstance(initial, Air) else cases.START
    t, u, w, e = (np.zeros(n + 2) for _ in range(4))
    t[:] = given.temperature
    u[1:-1] = given.relative_humidity
    if isinstance(initial, Mapping):
        for name, held in initial.items():
            cells = np.flatnonzero(ready.grid.layer == ready.assembly.index(name)) + 1
            if not cells.size:
                raise OutOfRange(message("physics.holds-no-water", layer=called(name)))
            held = within(message("physics.water-in", layer=called(name)), held, 0.0, 2000.0, "kg/m3")
            u[cells] = tables.potential(ready.curves.material[ready.cells.material[cells[0]]], held)
    elif initial is not None:
        of_kind("The start", initial, Air, "an air, water contents by layer or an earlier run")
    u[1:-1] = np.maximum(u[1:-1], 1e-6)
    at = np.minimum((u[1:-1] * tables.STEPS).astype(int), tables.STEPS)
    rows = ready.curves.material[ready.cells.material[1:-1], at]
    w[1:-1] = rows[:, 0] + rows[:, 1] * (u[1:-1] - at / tables.STEPS)
    e[1:-1] = (ready.cells.capacity[1:-1] + cases.WATER_HEAT * w[1:-1]) * t[1:-1]
    return _with_membranes(ready, t, u, w, e)


def _repeats(ready: cases.Case, before: Floats, now: Floats) -> bool:
    """Whether a year leaves every layer as it found it."""
    change = (now - before) * ready.grid.width
    layers = ready.grid.layer
    return all(abs(float(change[layers == place].sum())) < REPEATS for place in np.unique(layers))


def _humidity_of(initial: Start) -> float | None:
    """Relative humidity that all layers started with [-], where they did."""
    if initial is None:
        return cases.START.relative_humidity
    return float(initial.relative_humidity) if isinstance(initial, Air) else None


def _with_membranes(
    ready: cases.Case, temperature: Floats, potential: Floats, water: Floats, heat: Floats
) -> layout.State:
    """The state of the cells, and each variable membrane on its curve at the humidity of the cells beside it."""
    which = ready.faces.membrane
    along = np.zeros(which.size)
    for face in np.flatnonzero(which >= 0):
        beside = [min(potential[cell], 1.0) for cell in (face, face + 1) if 0 < cell < potential.size - 1]
        along[face] = tables.along_membrane(ready.curves.membrane[which[face]], np.mean(beside))
    return layout.State(temperature, potential, water, heat, along)


def _trouble(ready: cases.Case, cell: int, hour: int, state: layout.State) -> str:
    place = ready.grid.layer[cell]
    name = ready.assembly.layers[place].name if place >= 0 else message("physics.between-two-membranes")
    day, of_day = divmod(hour % YEAR, 24)
    rh = min(state.potential[cell + 1], 1.0) * 100.0
    facts = {
        "hour": str(of_day + 1),
        "day": str(day + 1),
        "of_run": str(hour + 1),
        "place": called(name),
        "depth": written(ready.grid.depth[cell] * 1000, ".1f", "mm"),
        "temperature": written(state.temperature[cell + 1], ".1f", "degC"),
        "humidity": written(rh, ".0f", "%"),
    }
    return message("physics.no-hourly-answer", **facts)


def getting_ready() -> bool:
    """Whether the first run still has to compile the march."""
    module = sys.modules.get("dryward.physics.hourly.march")
    return module is None or not module.march.signatures


def warm_up() -> float:
    """Compile or load the march, so that the next run starts at once; the seconds it took."""
    start = perf_counter()
    block = Material("block", "block", 1000.0, 1000.0, 1.0, 2e-11)
    simulate(Assembly("block", (Layer(block, 0.1),)), Air(10.0, 0.5), Air(20.0, 0.5), hours=1)
    return perf_counter() - start


def batch(
    cases: Sequence[Given],
    measure: Callable[[Hours], Measured],
    found: Callable[[int, Measured], object] | None = None,
    workers: int | None = None,
) -> list[Measured]:
    """Run many cases and keep one measure of each.

    Parameters
    ----------
    cases : sequence of (assembly, weather, indoor, options)
        `options` are keywords of `simulate`.
    measure : function
        From `Hours` to what is kept.
    found : function, optional
        Called with (place in the sequence, measure) as each run ends; when it
        returns False, the runs not yet begun are dropped.
    workers : int, optional
        Runs at a time, 1 or more [-]; otherwise one for each core.

    Returns
    -------
    list
        The measures, in the order of the cases.

    Raises
    ------
    Stopped
        When `found` ended it.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.weather import Air
    >>> wall = building.preset("wood-frame-wall")
    >>> cases = [(wall, Air(0.0, 0.8), Air(20.0, rh), {"hours": 24}) for rh in (0.3, 0.5)]
    >>> dry, humid = batch(cases, lambda run: run.water[-1])
    >>> bool(dry < humid)
    True
    """
    warm_up()  # threads that compile the same thing wait for each other

    def one(place: int) -> Measured:
        assembly, weather, indoor, options = cases[place]
        return measure(simulate(assembly, weather, indoor, **options))

    results: dict[int, Measured] = {}
    with ThreadPoolExecutor(max_workers=workers or os.cpu_count()) as pool:
        waiting = {pool.submit(one, place): place for place in range(len(cases))}
        try:
            for done in as_completed(waiting):
                place = waiting[done]
                results[place] = done.result()
                if found is not None and found(place, results[place]) is False:
                    raise Stopped(message("physics.batch-stopped"))
        except BaseException:
            pool.shutdown(wait=True, cancel_futures=True)
            raise
    return [results[place] for place in range(len(cases))]
