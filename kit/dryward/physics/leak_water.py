"""Water that leaking room air carries past a cold plane, and what of it stays there."""

from dataclasses import dataclass

import numpy as np

from dryward import air
from dryward.checks import within
from dryward.physics.moving_air import density
from dryward.physics.shape import plain
from dryward.units import KELVIN


@dataclass(frozen=True)
class Brought:
    """Water that leaking air brings: what `brought` gives.

    Attributes
    ----------
    carried : float or array
        All vapor in the air [kg/s].
    excess : float or array
        What it can no longer carry at the temperature of the plane: the most
        that could stay, if all of it cooled there [kg/s].
    stays : float or array
        What does stay: the excess of the part that seeps [kg/s].
    """

    carried: float
    excess: float
    stays: float


def brought(flow, indoor, plane_temperature, long_share=1.0):
    """Vapor that leaking room air carries past a cold plane, and what stays behind.

    Parameters
    ----------
    flow : float or array
        Room air that leaks outward [m3/s], 0 to 1000.
    indoor : weather.Air
        Room air.
    plane_temperature : float or array
        Of the cold plane that the air meets [degC], -100 to 200.
    long_share : float, optional
        The part that seeps, comes to the temperature of the plane and leaves
        saturated [-], 0 to 1; the rest goes by warm and leaves nothing.

    Returns
    -------
    Brought

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    Mass of dry air times the difference of humidity ratio: no cooling of the
    air can change either.  That the plane is warmed by the air is left out.

    Examples
    --------
    >>> from dryward.weather import Air
    >>> from dryward.physics.moving_air import orifice_flow
    >>> hole = orifice_flow(1.0, 6.4516e-4)  # one square inch at 1 Pa
    >>> round(brought(hole, Air(21.11, 0.4), -6.67).excess * 86400 * 150)  # kg in 150 days
    31
    """
    flow = within("Leaking air", flow, 0.0, 1000.0, "m³/s")
    share = within("Long share of the leak", long_share, 0.0, 1.0, "%")
    dry = flow * density(indoor.temperature + KELVIN, air.STANDARD_PRESSURE - indoor.vapor_pressure)
    inside = air.humidity_ratio(indoor.vapor_pressure)
    held = air.humidity_ratio(air.saturation_vapor_pressure(plane_temperature))
    excess = dry * np.maximum(inside - held, 0.0)
    return Brought(plain(dry * inside), plain(excess), plain(share * excess))
