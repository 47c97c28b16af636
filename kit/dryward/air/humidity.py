"""Ways to say how much vapor is in the air, each from another, and the pressure of the air itself."""

from typing import overload

import numpy as np

from dryward.air.saturation import COLDEST, HOTTEST, Floats, Value, saturation_vapor_pressure
from dryward.checks import OutOfRange, together, within
from dryward.language import message
from dryward.units import KELVIN, written

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
