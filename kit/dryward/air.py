"""Moist air: saturation, dew point, humidity ratio, vapor density.

The saturation equation stands here once, as two small functions of the
absolute temperature that NumPy and compiled code can both call; the rest of
the kit, the hour-by-hour kernel included, uses them.
"""

from dataclasses import dataclass

import numpy as np

from dryward.checks import OutOfRange, within
from dryward.units import KELVIN

#: Where the curves over ice and over water meet [degC].
TRIPLE_POINT = 0.01
#: Range of the saturation equation [degC].
COLDEST, HOTTEST = -100.0, 200.0
#: Specific gas constant of water vapor and of dry air [J/(kg K)], ASHRAE Handbook of Fundamentals 2017 ch. 1.
VAPOR_GAS_CONSTANT = 461.524
AIR_GAS_CONSTANT = 287.042
#: Ratio of the molar masses of water and dry air [-], ASHRAE Handbook of Fundamentals 2017 ch. 1.
MASS_RATIO = 0.621945
#: Standard pressure at sea level [Pa].
STANDARD_PRESSURE = 101325.0

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


def _slope_over_ice(kelvin):
    a, _, c, d, e, f, g = _ICE
    return -a / kelvin**2 + c + kelvin * (2 * d + kelvin * (3 * e + kelvin * 4 * f)) + g / kelvin


def _slope_over_water(kelvin):
    a, _, c, d, e, g = _WATER
    return -a / kelvin**2 + c + kelvin * (2 * d + kelvin * 3 * e) + g / kelvin


def _over(over):
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
    over = _over(over)
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


def vapor_pressure(temperature, relative_humidity):
    """Vapor pressure of air from its temperature and relative humidity.

    Parameters
    ----------
    temperature : float or array
        Air temperature [degC], -100 to 200.
    relative_humidity : float or array
        Relative humidity [-], 0 to 1; over ice below 0 degC.

    Returns
    -------
    float or array
        Vapor pressure, broadcast shape [Pa].

    Raises
    ------
    OutOfRange
        Outside either range.

    Examples
    --------
    >>> round(vapor_pressure(20.0, 0.5), 1)
    1169.4
    """
    share = within("Relative humidity", relative_humidity, 0.0, 1.0, "%")
    return saturation_vapor_pressure(temperature) * share


def relative_humidity(temperature, vapor_pressure):
    """Relative humidity of air from its temperature and vapor pressure.

    Parameters
    ----------
    temperature : float or array
        Air temperature [degC], -100 to 200.
    vapor_pressure : float or array
        Vapor pressure [Pa], 0 or more.

    Returns
    -------
    float or array
        Relative humidity [-]; above 1 says that the air cannot be so.

    Raises
    ------
    OutOfRange
        Outside either range.

    Examples
    --------
    >>> round(relative_humidity(20.0, 1169.4), 3)
    0.5
    """
    pressure = within("Vapor pressure", vapor_pressure, 0.0, np.inf, "Pa")
    return pressure / saturation_vapor_pressure(temperature)


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
    over = _over(over)
    target = np.log(pressure)
    if isinstance(pressure, float):
        frost = over == "ice" or (over == "auto" and target < _LOG_TRIPLE)
        return float(_invert(target, frost))
    if over != "auto":
        return _invert(target, over == "ice")
    frost = target < _LOG_TRIPLE
    if not frost.any():
        return _invert(target, False)
    if frost.all():
        return _invert(target, True)
    found = np.empty_like(target)
    found[frost] = _invert(target[frost], True)
    found[~frost] = _invert(target[~frost], False)
    return found


def _invert(target, frost):
    # First guess: the Clausius-Clapeyron line 1/T against ln p, bent by two
    # terms so that four steps reach machine accuracy over the whole range.
    curve, slope = (
        (log_saturation_over_ice, _slope_over_ice) if frost else (log_saturation_over_water, _slope_over_water)
    )
    kelvin = KELVIN / (1.0 - (target - _LOG_TRIPLE) * (KELVIN / (6140.0 if frost else 5420.0)))
    # Far above the triple point the guess can shoot past the pole; the
    # curve is concave in ln p over T, so a start below the root is enough.
    kelvin = np.where((kelvin > 300.0) | (kelvin < 0.0), 300.0 if not frost else 260.0, kelvin)
    for _ in range(_STEPS):
        step = (curve(kelvin) - target) / slope(kelvin)
        kelvin = kelvin - step
        if np.all(np.abs(step) < 1e-7):  # quadratic: the next step would be 1e-16
            break
    return kelvin - KELVIN


_STEPS = 12
_LOG_TRIPLE = float(log_saturation_over_water(TRIPLE_POINT + KELVIN))


def humidity_ratio(vapor_pressure, pressure=STANDARD_PRESSURE):
    """Mass of vapor carried by each mass of dry air.

    Parameters
    ----------
    vapor_pressure : float or array
        Vapor pressure [Pa], 0 to below the air pressure.
    pressure : float or array
        Air pressure [Pa], 10 000 to 200 000.

    Returns
    -------
    float or array
        Humidity ratio [kg/kg of dry air].

    Raises
    ------
    OutOfRange
        Outside either range, or when the vapor pressure reaches the air
        pressure.

    References
    ----------
    ASHRAE Handbook of Fundamentals 2017, chapter 1, equation 20.

    Examples
    --------
    >>> round(humidity_ratio(1002.0) * 7000, 1)
    43.5
    """
    total = within("Air pressure", pressure, 1e4, 2e5, "Pa")
    part = within("Vapor pressure", vapor_pressure, 0.0, np.inf, "Pa")
    if np.any(part >= total):
        raise OutOfRange(f"Vapor pressure is {np.max(part):.6g} Pa; it must be below the air pressure.")
    return MASS_RATIO * part / (total - part)


def vapor_density(temperature, vapor_pressure):
    """Mass of vapor in each volume of air.

    Parameters
    ----------
    temperature : float or array
        Air temperature [degC], -100 to 200.
    vapor_pressure : float or array
        Vapor pressure [Pa], 0 or more.

    Returns
    -------
    float or array
        Vapor density [kg/m3].

    Raises
    ------
    OutOfRange
        Outside either range.

    Notes
    -----
    Ideal gas.

    Examples
    --------
    >>> round(vapor_density(21.11, 1002.0) * 1000, 2)
    7.38
    """
    kelvin = within("Temperature", temperature, COLDEST, HOTTEST, "°C") + KELVIN
    return within("Vapor pressure", vapor_pressure, 0.0, np.inf, "Pa") / (VAPOR_GAS_CONSTANT * kelvin)


def standard_pressure(altitude):
    """Air pressure of the standard atmosphere.

    Parameters
    ----------
    altitude : float or array
        Height above sea level [m], -5000 to 11 000.

    Returns
    -------
    float or array
        Pressure [Pa].

    Raises
    ------
    OutOfRange
        Outside the range.

    References
    ----------
    ASHRAE Handbook of Fundamentals 2017, chapter 1, equation 3.

    Examples
    --------
    >>> round(standard_pressure(1000.0))
    89875
    """
    height = within("Altitude", altitude, -5000.0, 11000.0, "m")
    return STANDARD_PRESSURE * (1 - 2.25577e-5 * height) ** 5.2559


@dataclass(frozen=True)
class MoistAir:
    """Real moist air: what `moist_air` gives, each in the shape of its input.

    Attributes
    ----------
    humidity_ratio : float or array [kg/kg of dry air]
    enthalpy : float or array [J/kg of dry air]
    specific_volume : float or array [m3/kg of dry air]
    wet_bulb : float or array [degC]
    dew_point : float or array [degC]
    """

    humidity_ratio: float
    enthalpy: float
    specific_volume: float
    wet_bulb: float
    dew_point: float


def moist_air(temperature, relative_humidity, pressure=STANDARD_PRESSURE):
    """Real moist air by CoolProp: the reference the short formulas are held to.

    Parameters
    ----------
    temperature : float or array
        Air temperature [degC], -60 to 100.
    relative_humidity : float or array
        Relative humidity [-], 0 to 1.
    pressure : float or array
        Air pressure [Pa], 10 000 to 200 000.

    Returns
    -------
    MoistAir

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    CoolProp is imported when this is first called: it costs more than a
    second and 70 MB, which no lesson should pay at its start.

    References
    ----------
    ASHRAE research project 1485, as implemented in CoolProp's humid air.

    Examples
    --------
    >>> round(moist_air(25.0, 1.0).humidity_ratio, 5)
    0.02017
    """
    kelvin = within("Temperature", temperature, -60.0, 100.0, "°C") + KELVIN
    share = within("Relative humidity", relative_humidity, 0.0, 1.0, "%")
    total = within("Air pressure", pressure, 1e4, 2e5, "Pa")
    from CoolProp.HumidAirProp import HAPropsSI

    kelvin, share, total = np.broadcast_arrays(kelvin, share, total)

    def ask(what):
        flat = np.array(
            [
                HAPropsSI(what, "T", t, "R", r, "P", p)
                for t, r, p in zip(kelvin.flat, share.flat, total.flat, strict=True)
            ]
        )
        return float(flat[0]) if kelvin.ndim == 0 else flat.reshape(kelvin.shape)

    return MoistAir(ask("W"), ask("H"), ask("V"), ask("B") - KELVIN, ask("D") - KELVIN)
