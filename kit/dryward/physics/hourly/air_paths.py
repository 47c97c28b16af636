"""Air that moves: through the vent space, and through a leak."""

from dataclasses import dataclass

import numpy as np

from dryward.checks import OutOfRange, of_kind, single, within
from dryward.physics import moving_air
from dryward.physics.hourly import layout as n
from dryward.units import KELVIN

#: Air through a vent space of which nothing is said: so much that it is outdoor air [kg/(s m2)].
_OUTDOORS = 100.0
#: Temperatures of the vent air above outdoor air in the table of its flow [K].
WARMER = np.linspace(-30.0, 60.0, 61)
#: Wind speeds in that table.
_WINDS = 17


@dataclass(frozen=True, eq=False)
class AirFlow:
    """Air that flows out of the room through the assembly, hour by hour.

    Parameters
    ----------
    rate : float or array of hours
        Dry air through each square meter [kg/(s m2)], positive outward, -0.1 to 0.1.
    long_share : float, optional
        Of a leak: the part of it that seeps through the open layers and cools
        on its way [-], 0 to 1.  It passes tight layers by their joints; the
        rest goes straight through and touches none.  Not given: all of it
        passes the body of every layer evenly, as through a porous block.

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> AirFlow(1e-5, long_share=0.1).long_share
    0.1
    """

    rate: float
    long_share: float | None = None

    def __post_init__(self):
        put = object.__setattr__
        put(self, "rate", within("Air flow", self.rate, -0.1, 0.1, "kg/(s m²)"))
        if self.long_share is not None:
            put(self, "long_share", single("Long share of a leak", self.long_share, 0.0, 1.0, "%"))

    @property
    def seeping(self):
        """The part in balance with the layers it passes [kg/(s m2)]."""
        return self.rate if self.long_share is None else self.long_share * self.rate

    @property
    def straight(self):
        """The part that touches no layer [kg/(s m2)]."""
        return self.rate - self.seeping


@dataclass(frozen=True, eq=False)
class Path:
    """The way of leaking air through the cells of an assembly.

    Attributes
    ----------
    face : ndarray of int (cells + 1)
        How it passes each face: `layout.NO_AIR`, `TOUCHING` or `HOLES`.
    runs : ndarray of int (runs, 2)
        First and last cell of each run of open cells, counted from 1.
    """

    face: np.ndarray
    runs: np.ndarray


def path(assembly, cut, flow):
    """The way that an air flow takes.

    Parameters
    ----------
    assembly : Assembly
    cut : grid.Grid
    flow : AirFlow

    Returns
    -------
    Path

    Notes
    -----
    A leak seeps through the open layers inside any vent space, where it ends
    (or begins).  Cells that lie beside one another are one run: a membrane
    between them is passed by its holes.  A layer with cells that is tight
    ends a run.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.physics.hourly import grid
    >>> vault = building.preset("vented-vault-osb")
    >>> cut = grid.cells(vault)
    >>> way = path(vault, cut, AirFlow(1e-5, long_share=0.1))
    >>> [vault.layers[cut.layer[cell - 1]].name for cell in way.runs[0]]
    ['service cavity', 'insulation']
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
    runs = []
    for cell in np.flatnonzero(open_):
        if runs and runs[-1][1] == cell:  # cells from 1: the one before
            runs[-1][1] = cell + 1
            face[cell] = n.HOLES if cut.membranes[cell] else n.TOUCHING
        else:
            runs.append([cell + 1, cell + 1])
    return Path(face, np.array(runs, np.int64).reshape(-1, 2))


def vent_air(vent, weather, assembly):
    """Flow of vent air as a table over wind and warmth, and the row of each hour.

    Parameters
    ----------
    vent : ventspace.VentSpace, float, array or None
        As in `hourly.simulate`; a flow in [m3/(s m2)], 0 to 10.
    weather : HourlyWeather
    assembly : Assembly

    Returns
    -------
    tuple of ndarray
        Flow [kg/(s m2)] (rows, warmth), and the row of each hour, between
        rows too.

    Raises
    ------
    OutOfRange
        For a flow out of range, or vent air without a vent space.

    Notes
    -----
    A vent space answers to warmth, which the march knows only as it goes: so
    its flow is tabulated, at the year's mean temperature outdoors.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.weather import Air, HourlyWeather
    >>> day = HourlyWeather.constant(Air(0.0, 0.8), hours=24)
    >>> table, row = vent_air(0.01, day, building.preset("vented-vault"))
    >>> round(float(table[1, 0] * row[0]), 5)
    0.01292
    """
    still = np.zeros((2, WARMER.size)), np.zeros(weather.hours)
    vented = any(layer.vented for layer in assembly.layers)
    if vent is None:
        return (np.full((2, WARMER.size), _OUTDOORS), still[1]) if vented else still
    if not vented:
        raise OutOfRange(f"Vent air is given, but the assembly {assembly.name} has no vent space.")
    if not hasattr(vent, "flow_at"):
        flow = within("Vent air flow", vent, 0.0, 10.0, "m³/(s m²)")
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


def leak_air(leak, weather, warmth):
    """A leak as an air flow in each hour.

    Parameters
    ----------
    leak : airleak.Leak, AirFlow or None
    weather : HourlyWeather
    warmth : float or array of hours
        Indoors [degC], -60 to 95.

    Returns
    -------
    AirFlow

    Raises
    ------
    OutOfRange
        For something that is no leak.

    Examples
    --------
    >>> leak_air(AirFlow(1e-5), None, 20.0).rate
    1e-05
    """
    if leak is None:
        return AirFlow(0.0)
    if not isinstance(leak, AirFlow):
        return leak_flow(leak, weather, warmth)
    by_hours("The air flow", leak.rate, weather)
    return leak


def by_hours(what, values, weather):
    """Refuse what is neither one number nor one for each hour of the weather."""
    if np.ndim(values) and np.shape(values) != (weather.hours,):
        count = " by ".join(str(each) for each in np.shape(values))
        raise OutOfRange(f"{what} has {count} numbers; it must have one, or one for each of {weather.hours} h.")


#: Height of a leaky plane above the neutral level of the house [m], where nothing else is said: assumption.
ABOVE_NEUTRAL = 3.7


def leak_flow(leak, weather, indoor_temperature, height=ABOVE_NEUTRAL, suction=0.0):
    """Air flow of a leak in each hour, driven by warmth; where it passes, with its long share.

    Parameters
    ----------
    leak : airleak.Leak
    weather : HourlyWeather
    indoor_temperature : float or array of hours
        [degC], -60 to 95.
    height : float
        Above the neutral level [m], -1000 to 1000.
    suction : float or array of hours
        What else pulls outward [Pa], -100 to 100.

    Returns
    -------
    AirFlow

    Raises
    ------
    OutOfRange
        For something that is no leak, or a value out of range.

    Examples
    --------
    >>> from dryward.physics import airleak
    >>> from dryward.weather import Air, HourlyWeather
    >>> winter = HourlyWeather.constant(Air(-10.0, 0.8), hours=24)
    >>> flow = leak_flow(airleak.Leak(1e-4), winter, 20.0)
    >>> bool((flow.rate > 0).all()), flow.long_share
    (True, 0.1)
    """
    from dryward.physics import airleak

    of_kind("The leak", leak, airleak.Leak, "an air leak or an air flow")
    push = airleak.outward_pressure(height, indoor_temperature, weather.temperature, suction)
    flow = leak.airflow(push) / (leak.area * leak.area_share)
    source = np.where(flow > 0.0, indoor_temperature, weather.temperature)
    return AirFlow(flow * moving_air.density(source + KELVIN), leak.long_share)
