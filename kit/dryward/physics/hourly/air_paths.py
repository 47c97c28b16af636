"""Air that moves: through the vent space, and through a leak."""

from dataclasses import dataclass

import numpy as np

from dryward.checks import OutOfRange, within
from dryward.physics import moving_air
from dryward.units import KELVIN

#: Air through a vent space of which nothing is said: so much that it is outdoor air [kg/(s m2)].
_OUTDOORS = 100.0
#: Temperatures of the vent air above outdoor air in the table of its flow [K].
WARMER = np.linspace(-30.0, 60.0, 61)
#: Wind speeds in that table.
_WINDS = 17


@dataclass(frozen=True, eq=False)
class AirFlow:
    """Air that flows out of the room through the assembly, or into one plane of it.

    Parameters
    ----------
    rate : float or array of hours
        [kg/(s m2)] of the assembly, positive outward, -0.1 to 0.1.
    into : str, optional
        Name of the layer at whose inner face it meets the cold, and from
        there goes outdoors; without it the air passes all layers evenly.

    Raises
    ------
    OutOfRange
        Outside the range.

    Examples
    --------
    >>> AirFlow(1e-5, into="sheathing").into
    'sheathing'
    """

    rate: float
    into: str | None = None

    def __post_init__(self):
        object.__setattr__(self, "rate", within("Air flow", self.rate, -0.1, 0.1, "kg/(s m²)"))


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


def cold_plane(assembly):
    """Name of the layer whose inner face is where leaking air meets the cold.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    str
        The first layer with a thickness outside the one that insulates most.

    Examples
    --------
    >>> from dryward import building
    >>> cold_plane(building.preset("wood-frame-wall")) != ""
    True
    """
    solid = [layer for layer in assembly.inner_layers if not layer.is_membrane]
    most = max(range(len(solid)), key=lambda i: solid[i].thermal_resistance)
    return solid[min(most + 1, len(solid) - 1)].name


def leak_air(leak, weather, warmth, assembly):
    """A leak as an air flow in each hour.

    Parameters
    ----------
    leak : airleak.Leak, AirFlow or None
    weather : HourlyWeather
    warmth : float or array of hours
        Indoors [degC], -60 to 95.
    assembly : Assembly

    Returns
    -------
    AirFlow

    Raises
    ------
    OutOfRange
        For something that is no leak.

    Examples
    --------
    >>> leak_air(AirFlow(1e-5), None, 20.0, None).rate
    1e-05
    """
    if leak is None:
        return AirFlow(0.0)
    return leak if isinstance(leak, AirFlow) else leak_flow(leak, weather, warmth, assembly)


#: Height of a leaky plane above the neutral level of the house [m], where nothing else is said: assumption.
ABOVE_NEUTRAL = 2.5


def leak_flow(leak, weather, indoor_temperature, assembly, height=ABOVE_NEUTRAL, suction=0.0, into=None):
    """Air flow of a leak in each hour, driven by warmth.

    Parameters
    ----------
    leak : airleak.Leak
    weather : HourlyWeather
    indoor_temperature : float or array of hours
        [degC], -60 to 95.
    assembly : Assembly
    height : float
        Above the neutral level [m], -1000 to 1000.
    suction : float or array of hours
        What else pulls outward [Pa], -100 to 100.
    into : str, optional
        Layer at whose inner face it meets the cold; otherwise `cold_plane`.

    Returns
    -------
    AirFlow

    Raises
    ------
    OutOfRange
        For something that is no leak, or a value out of range.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.physics import airleak
    >>> from dryward.weather import Air, HourlyWeather
    >>> winter = HourlyWeather.constant(Air(-10.0, 0.8), hours=24)
    >>> flow = leak_flow(airleak.Leak(1e-4), winter, 20.0, building.preset("wood-frame-wall"))
    >>> bool((flow.rate > 0).all())
    True
    """
    from dryward.physics import airleak

    if not isinstance(leak, airleak.Leak):
        raise OutOfRange(f"The leak must be an air leak or an air flow, not {str(leak)[:40]!r}.")
    push = airleak.outward_pressure(height, indoor_temperature, weather.temperature, suction)
    flow = leak.airflow(push) / leak.area
    source = np.where(flow > 0.0, indoor_temperature, weather.temperature)
    return AirFlow(flow * moving_air.density(source + KELVIN), into or cold_plane(assembly))
