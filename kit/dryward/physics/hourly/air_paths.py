"""Air that moves: through the vent space, and through a leak."""

from dataclasses import dataclass
from functools import reduce

import numpy as np

from dryward.building import Assembly
from dryward.checks import Floats, Ints, Numeric, OutOfRange, of_kind, single, subject, within
from dryward.language import called, message
from dryward.physics import moving_air
from dryward.physics.airleak import Leak, outward_pressure
from dryward.physics.hourly import layout as n
from dryward.physics.hourly.grid import Grid
from dryward.physics.ventspace import VentSpace
from dryward.units import KELVIN, written
from dryward.weather import HourlyWeather

#: Air through a vent space of which nothing is said: so much that it is outdoor air [kg/(s m2)].
_OUTDOORS = 100.0
#: Temperatures of the vent air above outdoor air in the table of its flow [K].
WARMER = np.linspace(-30.0, 60.0, 61)
#: Wind speeds in that table.
_WINDS = 17


@dataclass(frozen=True, eq=False)
class AirFlow:
    """Air that flows out of the room through the assembly, hour by hour."""

    rate: Numeric  # dry air through each square meter [kg/(s m2)], positive outward, -0.1 to 0.1; one or for each hour
    #: Of a leak: the part of it that seeps through the open layers and cools on its way [-], 0 to 1.  It passes
    #: tight layers by their joints; the rest goes straight through and touches none.  Not given: all of it passes
    #: the body of every layer evenly, as through a porous block.
    long_share: float | None = None

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "rate", within("Air flow", self.rate, -0.1, 0.1, "kg/(s m2)"))
        if self.long_share is not None:
            put(self, "long_share", single("Long share of a leak", self.long_share, 0.0, 1.0, "%"))

    @property
    def seeping(self) -> Numeric:
        """The part in balance with the layers it passes [kg/(s m2)]."""
        return self.rate if self.long_share is None else self.long_share * self.rate

    @property
    def straight(self) -> Numeric:
        """The part that touches no layer [kg/(s m2)]."""
        return self.rate - self.seeping


@dataclass(frozen=True, eq=False)
class Path:
    """The way of leaking air through the cells of an assembly."""

    face: Ints  # how it passes each face: `layout.NO_AIR`, `TOUCHING` or `HOLES`
    runs: Ints  # first and last cell of each run of open cells, counted from 1


def path(assembly: Assembly, cut: Grid, flow: AirFlow) -> Path:
    """The way that an air flow takes.

    A leak seeps through the open layers inside any vent space, where it ends
    (or begins).  Cells that lie beside one another are one run: a membrane
    between them is passed by its holes.  A layer with cells that is tight
    ends a run.
    """
    count = cut.width.size
    face = np.full(count + 1, n.NO_AIR, np.int64)
    if flow.long_share is None:
        face[:] = [n.HOLES if membranes or i in (0, count) else n.TOUCHING for i, membranes in enumerate(cut.membranes)]
        return Path(face, np.zeros((0, 2), np.int64))
    # A plane of air between two membranes belongs to the way through them.
    open_ = [place < 0 or assembly.layers[place].lets_air_through for place in cut.layer]
    vented = [place for place, layer in enumerate(assembly.layers) if layer.vented]
    if vented:
        end = int(np.flatnonzero(cut.layer == vented[0])[0])
        open_[end:] = [False] * (count - end)
    runs: list[list[int]] = []
    for cell in np.flatnonzero(open_).tolist():
        if runs and runs[-1][1] == cell:  # cells from 1: the one before
            runs[-1][1] = cell + 1
            face[cell] = n.HOLES if cut.membranes[cell] else n.TOUCHING
        else:
            runs.append([cell + 1, cell + 1])
    return Path(face, np.array(runs, np.int64).reshape(-1, 2))


def vent_air(vent: VentSpace | Numeric | None, weather: HourlyWeather, assembly: Assembly) -> tuple[Floats, Floats]:
    """Flow of vent air [kg/(s m2)] as a table over wind and warmth, and the row of each hour, between rows too.

    A vent space answers to warmth, which the march knows only as it goes: so
    its flow is tabulated, at the year's mean temperature outdoors.
    """
    still = np.zeros((2, WARMER.size)), np.zeros(weather.hours)
    vented = any(layer.vented for layer in assembly.layers)
    if vent is None:
        return (np.full((2, WARMER.size), _OUTDOORS), still[1]) if vented else still
    if not vented:
        raise OutOfRange(message("physics.no-vent-space", name=called(assembly.name)))
    if not isinstance(vent, VentSpace):
        flow = within("Vent air flow", vent, 0.0, 10.0, "m3/(s m2)")
        by_hours("The vent air flow", flow, weather)
        mass = np.broadcast_to(flow, weather.hours) * moving_air.density(weather.temperature + KELVIN)
        most = mass.max()
        if most == 0.0:
            return still
        return np.outer([0.0, most], np.ones(WARMER.size)), mass / most
    wind = np.zeros(weather.hours) if weather.wind_speed is None else weather.wind_speed
    speeds = np.linspace(0.0, max(wind.max(), 1.0), _WINDS)
    middle = float(np.mean(weather.temperature))
    flow = np.abs(vent.flow_at(middle, middle + WARMER[None, :], speeds[:, None]))
    mass = flow * moving_air.density(middle + KELVIN) / vent.area
    return np.ascontiguousarray(mass), wind / (speeds[1] - speeds[0])


def leak_air(leak: Leak | AirFlow | None, weather: HourlyWeather, warmth: Numeric) -> AirFlow:
    """A leak as an air flow in each hour."""
    if leak is None:
        return AirFlow(0.0)
    if not isinstance(leak, AirFlow):
        return leak_flow(leak, weather, warmth)
    by_hours("The air flow", leak.rate, weather)
    return leak


def by_hours(what: str, values: Numeric, weather: HourlyWeather) -> None:
    """Refuse what is neither one number nor one for each hour of the weather."""
    if np.ndim(values) and np.shape(values) != (weather.hours,):
        count = reduce(lambda first, each: message("physics.by", first=first, next=each), map(str, np.shape(values)))
        facts = {"what": subject(what), "count": count, "hours": written(weather.hours, "d", "h")}
        raise OutOfRange(message("physics.one-an-hour", **facts))


#: Height of a leaky plane above the neutral level of the house [m], where nothing else is said: assumption.
ABOVE_NEUTRAL = 3.7


def leak_flow(
    leak: Leak,
    weather: HourlyWeather,
    indoor_temperature: Numeric,
    height: float = ABOVE_NEUTRAL,
    suction: Numeric = 0.0,
) -> AirFlow:
    """Air flow of a leak in each hour, driven by warmth; where it passes, with its long share."""
    of_kind("The leak", leak, Leak, "an air leak or an air flow")
    push = outward_pressure(height, indoor_temperature, weather.temperature, suction)
    flow = leak.airflow(push) / (leak.area * leak.area_share)
    source = np.where(flow > 0.0, indoor_temperature, weather.temperature)
    return AirFlow(flow * moving_air.density(source + KELVIN), leak.long_share)
