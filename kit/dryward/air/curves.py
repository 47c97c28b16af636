"""The saturation equation, over ice and over water, and the slope of each.

It stands here once, as small functions of the absolute temperature that
check nothing; the rest of the kit, the table of the hour-by-hour kernel
included, is made from them.
"""

import numpy as np

from dryward.units import KELVIN

#: Where the curves over ice and over water meet [degC].
TRIPLE_POINT = 0.01

# Hyland and Wexler 1983, as printed in ASHRAE Handbook of Fundamentals 2017
# ch. 1, equations 5 (ice) and 6 (water): ln p = c0/T + c1 + c2 T + ... + c5 ln T.
_ICE = (-5674.5359, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)
_WATER = (-5800.2206, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673)


def log_saturation_over_ice(kelvin):
    """Natural logarithm of the saturation pressure over ice.

    Parameters
    ----------
    kelvin : float or array
        Absolute temperature [K], 173.15 to 273.16; not checked here.

    Returns
    -------
    float or array
        ln of the pressure in Pa.

    References
    ----------
    ASHRAE Handbook of Fundamentals 2017, chapter 1, equation 5.

    Examples
    --------
    >>> round(float(np.exp(log_saturation_over_ice(253.15))), 2)
    103.26
    """
    a, b, c, d, e, f, g = _ICE
    return a / kelvin + b + kelvin * (c + kelvin * (d + kelvin * (e + kelvin * f))) + g * np.log(kelvin)


def log_saturation_over_water(kelvin):
    """Natural logarithm of the saturation pressure over liquid water.

    Parameters
    ----------
    kelvin : float or array
        Absolute temperature [K], 273.15 to 473.15, and with good accuracy
        over supercooled water down to 233 K; not checked here.

    Returns
    -------
    float or array
        ln of the pressure in Pa.

    References
    ----------
    ASHRAE Handbook of Fundamentals 2017, chapter 1, equation 6.

    Examples
    --------
    >>> round(float(np.exp(log_saturation_over_water(293.15))), 2)
    2338.8
    """
    a, b, c, d, e, g = _WATER
    return a / kelvin + b + kelvin * (c + kelvin * (d + kelvin * e)) + g * np.log(kelvin)


def slope_over_ice(kelvin):
    """Slope of `log_saturation_over_ice` [1/K]."""
    a, _, c, d, e, f, g = _ICE
    return -a / kelvin**2 + c + kelvin * (2 * d + kelvin * (3 * e + kelvin * 4 * f)) + g / kelvin


def slope_over_water(kelvin):
    """Slope of `log_saturation_over_water` [1/K]."""
    a, _, c, d, e, g = _WATER
    return -a / kelvin**2 + c + kelvin * (2 * d + kelvin * 3 * e) + g / kelvin


#: Natural logarithm of the pressure where the curves meet.
LOG_TRIPLE = float(log_saturation_over_water(TRIPLE_POINT + KELVIN))
