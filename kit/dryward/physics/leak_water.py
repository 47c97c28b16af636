"""Water that leaking room air brings to a cold plane."""

from dataclasses import dataclass

import numpy as np

from dryward import air
from dryward.checks import within
from dryward.physics.shape import plain
from dryward.units import KELVIN


@dataclass(frozen=True)
class Brought:
    """Water that leaking air brings: what `brought` gives.

    Attributes
    ----------
    carried : float or array
        All vapor in the air [kg/s].
    deposit : float or array
        What can stay of it at the cold plane [kg/s].
    """

    carried: float
    deposit: float


def brought(flow, indoor, plane_temperature, shrinking=False):
    """Vapor that leaking room air carries, and what can stay behind.

    Parameters
    ----------
    flow : float or array
        Room air that leaks outward [m3/s], 0 to 1000.
    indoor : weather.Air
        Room air.
    plane_temperature : float or array
        Of the cold plane that the air meets [degC], -100 to 200.
    shrinking : bool, optional
        Whether to count that air shrinks as it cools.  The short hand
        calculation does not; from 21 to -7 degC it gives 6 % less at 40 %
        indoors, and a quarter less at 20 %.

    Returns
    -------
    Brought

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    All air meets the plane, comes to its temperature and leaves saturated;
    with `shrinking` that is the most that can stay.  Part of the real leak
    goes by too fast or by another way.

    Examples
    --------
    >>> from dryward.weather import Air
    >>> from dryward.physics.moving_air import orifice_flow
    >>> hole = orifice_flow(1.0, 6.4516e-4)  # one square inch at 1 Pa
    >>> round(brought(hole, Air(21.11, 0.4), -6.67).deposit * 86400 * 150)  # kg in 150 days
    29
    """
    flow = within("Leaking air", flow, 0.0, 1000.0, "m³/s")
    inside = air.vapor_density(indoor.temperature, indoor.vapor_pressure)
    held = air.vapor_density(plane_temperature, air.saturation_vapor_pressure(plane_temperature))
    if shrinking:
        held = held * (plane_temperature + KELVIN) / (indoor.temperature + KELVIN)
    deposit = flow * np.maximum(inside - held, 0.0)
    return Brought(flow * inside, plain(deposit))
