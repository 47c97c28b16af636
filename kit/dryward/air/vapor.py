"""Vapor in the air: saturation over ice and over water, the dew point, how much there is, and one state of air.

The saturation equation stands here once, as small functions of the absolute
temperature that check nothing; the rest of the kit, the table of the
hour-by-hour kernel included, is made from them.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar, overload

import numpy as np

from dryward.checks import Floats, OutOfRange, together, within
from dryward.language import message
from dryward.units import KELVIN, checked, written

#: One number, or an array of them; what comes back has the same shape.
Value = TypeVar("Value", float, Floats)

#: Range of the saturation equation [degC].
COLDEST, HOTTEST = -100.0, 200.0
#: Where the curves over ice and over water meet [degC].
TRIPLE_POINT = 0.01

# Hyland and Wexler 1983, as printed in ASHRAE Handbook of Fundamentals 2017
# chapter 1, equations 5 (ice) and 6 (water): ln p = c0/T + c1 + c2 T + ... + c5 ln T.
_ICE = (-5674.5359, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)
_WATER = (-5800.2206, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673)


def log_saturation_over_ice(kelvin: Value) -> Value:
    """Natural logarithm of the saturation pressure in Pa over ice, 173.15 to 273.16 K."""
    a, b, c, d, e, f, g = _ICE
    return a / kelvin + b + kelvin * (c + kelvin * (d + kelvin * (e + kelvin * f))) + g * np.log(kelvin)


def log_saturation_over_water(kelvin: Value) -> Value:
    """Natural logarithm of the saturation pressure in Pa over water, 273.15 to 473.15 K; supercooled from 233 K."""
    a, b, c, d, e, g = _WATER
    return a / kelvin + b + kelvin * (c + kelvin * (d + kelvin * e)) + g * np.log(kelvin)


def slope_over_ice(kelvin: Value) -> Value:
    """Slope of `log_saturation_over_ice` [1/K]."""
    a, _, c, d, e, f, g = _ICE
    return -a / kelvin**2 + c + kelvin * (2 * d + kelvin * (3 * e + kelvin * 4 * f)) + g / kelvin


def slope_over_water(kelvin: Value) -> Value:
    """Slope of `log_saturation_over_water` [1/K]."""
    a, _, c, d, e, g = _WATER
    return -a / kelvin**2 + c + kelvin * (2 * d + kelvin * 3 * e) + g / kelvin


#: Natural logarithm of the pressure where the curves meet.
LOG_TRIPLE = float(log_saturation_over_water(TRIPLE_POINT + KELVIN))


def _known_phase(over: str) -> str:
    """What saturation is over, if it is a word that is known."""
    if over not in ("auto", "water", "ice"):
        raise OutOfRange(message("air.saturation-over", given=str(over)))
    return over


@overload
def saturation_vapor_pressure(temperature: float, over: str = "auto") -> float: ...
@overload
def saturation_vapor_pressure(temperature: Floats, over: str = "auto") -> Floats: ...
def saturation_vapor_pressure(temperature: float | Floats, over: str = "auto") -> float | Floats:
    """The most vapor pressure there can be at a temperature.

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
    kelvin = within("Temperature", temperature, COLDEST, HOTTEST, "degC") + KELVIN
    over = _known_phase(over)
    log: float | Floats
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


def _log_auto(kelvin: Floats) -> Floats:
    """Both branches where both are needed, one where one is enough."""
    frost = kelvin < TRIPLE_POINT + KELVIN
    if not frost.any():
        return log_saturation_over_water(kelvin)
    if frost.all():
        return log_saturation_over_ice(kelvin)
    log = log_saturation_over_water(kelvin)
    log[frost] = log_saturation_over_ice(kelvin[frost])
    return log


#: Newton's steps at the most.
_STEPS = 12


@overload
def dew_point(vapor_pressure: float, over: str = "auto") -> float: ...
@overload
def dew_point(vapor_pressure: Floats, over: str = "auto") -> Floats: ...
def dew_point(vapor_pressure: float | Floats, over: str = "auto") -> float | Floats:
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
        For a pressure that no dew point answers to, or an unknown `over`.

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
    over = _known_phase(over)
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


def _invert(target: Value, frost: bool) -> Value:
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


#: Specific gas constant of water vapor and of dry air [J/(kg K)], ASHRAE Handbook of Fundamentals 2017 ch. 1.
VAPOR_GAS_CONSTANT = 461.524
AIR_GAS_CONSTANT = 287.042
#: Ratio of the molar masses of water and dry air [-], ASHRAE Handbook of Fundamentals 2017 ch. 1.
MASS_RATIO = 0.621945

#: Standard pressure at sea level [Pa].
STANDARD_PRESSURE = 101325.0


@overload
def vapor_pressure(temperature: float, relative_humidity: float) -> float: ...
@overload
def vapor_pressure(temperature: Floats, relative_humidity: float | Floats) -> Floats: ...
@overload
def vapor_pressure(temperature: float, relative_humidity: Floats) -> Floats: ...
def vapor_pressure(temperature: float | Floats, relative_humidity: float | Floats) -> float | Floats:
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
    together(temperature=temperature, relative_humidity=share)
    return saturation_vapor_pressure(temperature) * share


@overload
def relative_humidity(temperature: float, vapor_pressure: float) -> float: ...
@overload
def relative_humidity(temperature: Floats, vapor_pressure: float | Floats) -> Floats: ...
@overload
def relative_humidity(temperature: float, vapor_pressure: Floats) -> Floats: ...
def relative_humidity(temperature: float | Floats, vapor_pressure: float | Floats) -> float | Floats:
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
    together(temperature=temperature, vapor_pressure=pressure)
    return pressure / saturation_vapor_pressure(temperature)


@overload
def humidity_ratio(vapor_pressure: float, pressure: float = STANDARD_PRESSURE) -> float: ...
@overload
def humidity_ratio(vapor_pressure: Floats, pressure: float | Floats = STANDARD_PRESSURE) -> Floats: ...
@overload
def humidity_ratio(vapor_pressure: float, pressure: Floats) -> Floats: ...
def humidity_ratio(vapor_pressure: float | Floats, pressure: float | Floats = STANDARD_PRESSURE) -> float | Floats:
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
    together(vapor_pressure=part, air_pressure=total)
    if np.any(part >= total):
        raise OutOfRange(message("air.above-air-pressure", pressure=written(np.max(part), ".6g", "Pa")))
    return MASS_RATIO * part / (total - part)


@overload
def vapor_density(temperature: float, vapor_pressure: float) -> float: ...
@overload
def vapor_density(temperature: Floats, vapor_pressure: float | Floats) -> Floats: ...
@overload
def vapor_density(temperature: float, vapor_pressure: Floats) -> Floats: ...
def vapor_density(temperature: float | Floats, vapor_pressure: float | Floats) -> float | Floats:
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
    kelvin = within("Temperature", temperature, COLDEST, HOTTEST, "degC") + KELVIN
    pressure = within("Vapor pressure", vapor_pressure, 0.0, np.inf, "Pa")
    together(temperature=kelvin, vapor_pressure=pressure)
    return pressure / (VAPOR_GAS_CONSTANT * kelvin)


def standard_pressure(altitude: Value) -> Value:
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
class Air:
    """Air on one side of an assembly, or many such airs at once.

    Parameters
    ----------
    temperature : float, array or str
        [degC], -60 to 95, or text such as ``"70 F"``.
    relative_humidity : float, array or str
        [-], 0 to 1, or text such as ``"40 %"``; over ice below 0 degC.

    Raises
    ------
    OutOfRange, NotUnderstood
        One sentence naming the quantity, the value and the range.

    Examples
    --------
    >>> round(Air(20.0, 0.5).dew_point, 2)
    9.27
    >>> Air("68 F", "50 %").relative_humidity
    0.5
    """

    # As arrays they are many airs; most of the kit asks for one.
    temperature: float
    relative_humidity: float

    if TYPE_CHECKING:  # what it takes is more than what it keeps

        def __init__(self, temperature: float | str | Floats, relative_humidity: float | str | Floats) -> None: ...

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "temperature", checked("Air temperature", self.temperature, "temperature", -60.0, 95.0))
        put(self, "relative_humidity", checked("Relative humidity", self.relative_humidity, "relative humidity"))
        together(temperature=self.temperature, relative_humidity=self.relative_humidity)

    @property
    def vapor_pressure(self) -> float:
        """[Pa]."""
        return vapor_pressure(self.temperature, self.relative_humidity)

    @property
    def dew_point(self) -> float:
        """Dew point, or frost point below 0 degC [degC]."""
        return dew_point(self.vapor_pressure)

    @property
    def frost_point_over_water(self) -> float:
        """Dew point over supercooled water, as weather services quote it [degC]."""
        return dew_point(self.vapor_pressure, over="water")
