"""Dew point and frost point: the saturation equation the other way round."""

import numpy as np

from dryward.air.curves import (
    LOG_TRIPLE,
    log_saturation_over_ice,
    log_saturation_over_water,
    slope_over_ice,
    slope_over_water,
)
from dryward.air.saturation import known_phase
from dryward.checks import within
from dryward.units import KELVIN

#: Newton's steps at the most.
_STEPS = 12


def dew_point(vapor_pressure, over="auto"):
    """Temperature at which air of this vapor pressure is saturated.

    Below 0 degC it is the frost point, unless `over` is ``"water"``.

    Parameters
    ----------
    vapor_pressure : float or array
        Vapor pressure [Pa], 0.001 to 1 600 000 (about -100 to 200 degC).
    over : {"auto", "water", "ice"}
        As in `saturation_vapor_pressure`.

    Returns
    -------
    float or array
        Dew point or frost point, same shape [degC].

    Raises
    ------
    OutOfRange
        Outside the range, or with an unknown `over`.

    Notes
    -----
    Newton's method on the logarithm of the saturation pressure; agrees with
    `saturation_vapor_pressure` to 1e-9 K.

    Examples
    --------
    >>> round(dew_point(1002.0), 1)
    7.0
    """
    pressure = within("Vapor pressure", vapor_pressure, 0.001, 1.6e6, "Pa")
    over = known_phase(over)
    target = np.log(pressure)
    if isinstance(pressure, float):
        frost = over == "ice" or (over == "auto" and target < LOG_TRIPLE)
        return float(_invert(target, frost))
    if over != "auto":
        return _invert(target, over == "ice")
    frost = target < LOG_TRIPLE
    if not frost.any():
        return _invert(target, False)
    if frost.all():
        return _invert(target, True)
    found = np.empty_like(target)
    found[frost] = _invert(target[frost], True)
    found[~frost] = _invert(target[~frost], False)
    return found


def _invert(target, frost):
    # First guess: the Clausius-Clapeyron line 1/T against ln p; from it four
    # steps reach machine accuracy over the whole range.
    curve, slope = (log_saturation_over_ice, slope_over_ice) if frost else (log_saturation_over_water, slope_over_water)
    kelvin = KELVIN / (1.0 - (target - LOG_TRIPLE) * (KELVIN / (6140.0 if frost else 5420.0)))
    for _ in range(_STEPS):
        step = (curve(kelvin) - target) / slope(kelvin)
        kelvin = kelvin - step
        if np.all(np.abs(step) < 1e-7):  # quadratic: the next step would be 1e-16
            break
    return kelvin - KELVIN
