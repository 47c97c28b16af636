"""Liquid conductivity of a porous material from how fast it sucks up water.

The hour-by-hour method needs K in ``flux = K x gradient of suction``.  Such
curves are seldom published.  What is published is the water absorption
coefficient A of a one-day soaking test.  Here K follows from A, with the
usual assumption that the liquid diffusivity rises exponentially with the
water content.
"""

import math
from itertools import pairwise

from dryward import air, units
from dryward.checks import within

# Exponent of the diffusivity over the relative water content, the same for
# many stones, bricks and plasters: Hall and Hoff, Water Transport in Brick,
# Stone and Concrete (from memory).
_EXPONENT = 6.0
#: Relative water contents at which K is given [-].
_AT = (0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0)
_TEMPERATURE = 20.0  # of the soaking test [degC]


def lowest_diffusivity(absorption, free_saturation):
    """Liquid diffusivity of the nearly dry material, the factor before the exponential.

    Parameters
    ----------
    absorption : float
        Water absorption coefficient [kg/(m2 s^0.5)], above 0 to 2.
    free_saturation : float
        Capillary water content [kg/m3], above 0 to 1500.

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
    From A2 = integral of (1 + u) D(u) du over the relative water content u,
    times the capillary water content squared, with D = D0 exp(n u).

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
    w = within("Free saturation", free_saturation, 0.0, 1500.0, "kg/m³", above=True)
    n = _EXPONENT
    integral = (math.exp(n) * (2 * n - 1) - n + 1) / n**2
    return (a / w) ** 2 / integral


def conductivity(absorption, sorption):
    """Liquid conductivity against water content.

    Parameters
    ----------
    absorption : float
        Water absorption coefficient [kg/(m2 s^0.5)], above 0 to 2.
    sorption : ((relative humidity, water content [kg/m3]), ...)
        Rising, the last point at a relative humidity of 1.

    Returns
    -------
    ((water content [kg/m3], K [s]), ...)
        Starting with none at no water.

    Raises
    ------
    OutOfRange
        Outside the ranges.

    Notes
    -----
    K = D dw/ds, with the suction s = -rho R T ln(rh) at 20 degC and the slope
    of the same straight pieces that the sorption curve is made of.

    Examples
    --------
    >>> points = conductivity(0.1, ((0.8, 10.0), (1.0, 200.0)))
    >>> points[0]
    (0.0, 0.0)
    """
    full = sorption[-1][1]
    base = lowest_diffusivity(absorption, full)
    pull = units.WATER_DENSITY * air.VAPOR_GAS_CONSTANT * (_TEMPERATURE + units.KELVIN)
    found = [(0.0, 0.0)]
    curve = sorption if sorption[0][0] == 0 else ((0.0, 0.0), *sorption)
    for u in _AT:
        w = u * full
        for (rh0, w0), (rh1, w1) in pairwise(curve):
            if w <= w1:
                slope = (w1 - w0) / (rh1 - rh0)
                humidity = rh0 + (w - w0) / slope
                break
        found.append((w, base * math.exp(_EXPONENT * u) * slope * humidity / pull))
    return tuple(found)
