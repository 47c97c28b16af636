"""Vapor pressure of air that can hold no more."""

import numpy as np

from dryward.air.curves import TRIPLE_POINT, log_saturation_over_ice, log_saturation_over_water
from dryward.checks import OutOfRange, within
from dryward.units import KELVIN

#: Range of the saturation equation [degC].
COLDEST, HOTTEST = -100.0, 200.0


def known_phase(over):
    """What saturation is over, if it is a word that is known."""
    if over not in ("auto", "water", "ice"):
        raise OutOfRange(f'Saturation is over "auto", "water" or "ice", not "{over}".')
    return over


def saturation_vapor_pressure(temperature, over="auto"):
    """Vapor pressure of air that can hold no more.

    Parameters
    ----------
    temperature : float or array
        Air temperature, any shape [degC], -100 to 200.
    over : {"auto", "water", "ice"}
        ``"auto"``: over ice below the triple point (0.01 degC), over water
        above.  Weather services quote humidity over water in frost too.

    Returns
    -------
    float or array
        Saturation pressure, same shape [Pa].

    Raises
    ------
    OutOfRange
        Outside the range, or with an unknown `over`.

    Notes
    -----
    Within 0.04 % of the IAPWS release values over water and over ice from
    -40 to 80 degC.

    References
    ----------
    ASHRAE Handbook of Fundamentals 2017, chapter 1, equations 5 and 6.

    Examples
    --------
    >>> round(saturation_vapor_pressure(20.0), 2)
    2338.8
    """
    kelvin = within("Temperature", temperature, COLDEST, HOTTEST, "°C") + KELVIN
    over = known_phase(over)
    if over == "water":
        log = log_saturation_over_water(kelvin)
    elif over == "ice":
        log = log_saturation_over_ice(kelvin)
    elif isinstance(kelvin, float):
        frost = kelvin < TRIPLE_POINT + KELVIN
        log = log_saturation_over_ice(kelvin) if frost else log_saturation_over_water(kelvin)
    else:
        log = _log_auto(kelvin)
    pressure = np.exp(log)
    return float(pressure) if isinstance(kelvin, float) else pressure


def _log_auto(kelvin):
    """Both branches where both are needed, one where one is enough."""
    frost = kelvin < TRIPLE_POINT + KELVIN
    if not frost.any():
        return log_saturation_over_water(kelvin)
    if frost.all():
        return log_saturation_over_ice(kelvin)
    log = log_saturation_over_water(kelvin)
    log[frost] = log_saturation_over_ice(kelvin[frost])
    return log
