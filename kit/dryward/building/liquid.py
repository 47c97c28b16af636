"""Liquid conductivity of a porous material from how fast it sucks up water.

The hour-by-hour method needs K in ``flux = K x gradient of suction``.  Such
curves are seldom published.  What is published is the water absorption
coefficient A of a one-day soaking test.  Here K follows from A, with the
usual assumption that the liquid diffusivity rises exponentially with the
water content.

Liquid moves only where pores are full.  Below the last point of the sorption
curve before saturation K is nothing: there the vapor permeability, dry cup
and wet cup, already holds all that moves, and it would be counted twice.
"""

import math

from dryward import air, units
from dryward.checks import within

# Exponent of the diffusivity over the relative water content, the same for
# many stones, bricks and plasters: Hall and Hoff, Water Transport in Brick,
# Stone and Concrete (from memory).
_EXPONENT = 6.0
#: Parts of the way to free saturation at which K is given [-].
_AT = (0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0)
_TEMPERATURE = 20.0  # of the soaking test [degC]


def lowest_diffusivity(absorption, free_saturation, beginning=0.0):
    """Liquid diffusivity where liquid begins to move, the factor before the exponential.

    Parameters
    ----------
    absorption : float
        Water absorption coefficient [kg/(m2 s^0.5)], above 0 to 2.
    free_saturation : float
        Capillary water content [kg/m3], above 0 to 1500.
    beginning : float, optional
        Water content from which liquid moves [kg/m3], 0 to nine tenths of
        the free saturation.

    Returns
    -------
    float
        [m2/s].

    Raises
    ------
    OutOfRange
        Outside the ranges.

    Notes
    -----
    From A2 = integral of (w_f + w) D(w) dw from w_0 to w_f for a slab that
    starts dry, with D = D0 exp(n u) and u = (w - w_0)/(w_f - w_0).

    References
    ----------
    Parlange's integral for the sorptivity; Lockington, Parlange and Dux
    (1999), Materials and Structures 32 (from memory).

    Examples
    --------
    >>> round(lowest_diffusivity(0.1, 200.0) * 1e9, 4)
    2.0304
    """
    a = within("Water absorption coefficient", absorption, 0.0, 2.0, "kg/(m² s^0.5)", above=True)
    full = within("Free saturation", free_saturation, 0.0, 1500.0, "kg/m³", above=True)
    start = within("Water content where liquid begins to move", beginning, 0.0, 0.9 * full, "kg/m³")
    n, span = _EXPONENT, full - start
    grown = math.exp(n)
    integral = (full + start) * (grown - 1) / n + span * (grown * (n - 1) + 1) / n**2
    return a**2 / (span * integral)


def conductivity(absorption, sorption):
    """Liquid conductivity against water content.

    Parameters
    ----------
    absorption : float
        Water absorption coefficient [kg/(m2 s^0.5)], above 0 to 2.
    sorption : ((relative humidity, water content [kg/m3]), ...)
        At least two points, rising, the last at a relative humidity of 1.

    Returns
    -------
    ((water content [kg/m3], K [s]), ...)
        None up to the last point before saturation.

    Raises
    ------
    OutOfRange
        Outside the ranges.

    Notes
    -----
    K = D dw/ds, with the suction s = -rho R T ln(rh) at 20 degC and the slope
    of the last straight piece of the sorption curve.

    Examples
    --------
    >>> points = conductivity(0.1, ((0.8, 10.0), (1.0, 200.0)))
    >>> points[:2]
    ((0.0, 0.0), (10.0, 0.0))
    """
    (start_rh, start), (_, full) = sorption[-2:]
    base = lowest_diffusivity(absorption, full, start)
    pull = units.WATER_DENSITY * air.VAPOR_GAS_CONSTANT * (_TEMPERATURE + units.KELVIN)
    slope = (full - start) / (1.0 - start_rh)
    found = [(0.0, 0.0), (start, 0.0)]
    for u in _AT:
        humidity = start_rh + u * (1.0 - start_rh)
        found.append((start + u * (full - start), base * math.exp(_EXPONENT * u) * slope * humidity / pull))
    return tuple(found)
