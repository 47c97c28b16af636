"""How much vapor moving outdoor air can carry off."""

from dataclasses import dataclass

import numpy as np

from dryward import air
from dryward.checks import within
from dryward.physics.moving_air import film_permeance
from dryward.physics.shape import plain
from dryward.physics.vent_air import Airflow
from dryward.units import KELVIN


@dataclass(frozen=True)
class DryingPower:
    """What moving air takes off a wet face: what `VentSpace.drying_power` gives.

    Attributes
    ----------
    carried : float or array
        Vapor taken up, over the area of the face; below zero when the air
        leaves water behind [kg/(s m2)].
    limit : float or array
        The same if the air left as humid as the face [kg/(s m2)].
    leaving_vapor_pressure : float or array
        [Pa].
    airflow : Airflow
    """

    carried: float
    limit: float
    leaving_vapor_pressure: float
    airflow: Airflow


def taken_up(moving, area, outdoor, wet):
    """What moving air takes off a face of one vapor pressure.

    Parameters
    ----------
    moving : Airflow
    area : float
        Of the face [m2], above 0.
    outdoor : weather.Air
        Air that comes in.
    wet : float or array
        Vapor pressure at the face [Pa], 0 or more.

    Returns
    -------
    DryingPower

    Examples
    --------
    >>> from dryward.weather import Air
    >>> steady = Airflow(0.004, 0.1, 0.5, 500.0, 2.4, 5.0, 0.0, 0.0)
    >>> power = taken_up(steady, 5.0, Air(0.0, 0.8), 611.0)
    >>> 0 < power.carried < power.limit
    True
    """
    dry = outdoor.vapor_pressure
    # Vapor that the air carries for each Pa, and that the film passes for each Pa [kg/(s Pa)].
    carries = np.abs(moving.flow) / (air.VAPOR_GAS_CONSTANT * (moving.air_temperature + KELVIN))
    passes = film_permeance(moving.film, moving.air_temperature) * area
    share = -np.expm1(-passes / (carries + 1e-30))  # 1e-30: still air is saturated, not 0/0
    limit = carries * (wet - dry) / area
    return DryingPower(*(plain(each) for each in (limit * share, limit, dry + (wet - dry) * share)), moving)


def carrying_limit(gap, speed, length, outdoor, warming=0.0):
    """The most that vent air can carry off: it leaves saturated.

    Parameters
    ----------
    gap : float or array
        Height of the vent space [m], above 0 to 1.
    speed : float or array
        Of the air in it [m/s], 0 to 20.
    length : float or array
        From inlet to outlet [m], above 0 to 100.
    outdoor : weather.Air
        Air that comes in.
    warming : float or array
        How much warmer it leaves [K], -30 to 60.

    Returns
    -------
    float or array
        Vapor for each area of roof, broadcast shape [kg/(s m2)]; below zero
        when it leaves so cold that it drops water.

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    Flow times (vapor density at saturation where it leaves - vapor density
    that comes in), over the length.  Every cubic meter is counted as one,
    warmed or not.

    Examples
    --------
    >>> from dryward.weather import Air
    >>> round(carrying_limit(0.0381, 0.1, 5.0, Air(-6.667, 0.8)) * 86400e3)  # g/m2 day
    37
    """
    gap = within("Height of the gap", gap, 0.0, 1.0, "m", above=True)
    speed = within("Air speed", speed, 0.0, 20.0, "m/s")
    length = within("Length of the vent space", length, 0.0, 100.0, "m", above=True)
    leaving = outdoor.temperature + within("Warming of the vent air", warming, -30.0, 60.0, "K")
    most = air.vapor_density(leaving, air.saturation_vapor_pressure(leaving))
    return gap * speed / length * (most - air.vapor_density(outdoor.temperature, outdoor.vapor_pressure))
