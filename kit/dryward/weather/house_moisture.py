"""A house as a tank: people pour vapor in, fresh air carries it out."""

import numpy as np

from dryward import air
from dryward.checks import OutOfRange, within
from dryward.units import DAY, KELVIN

# ASHRAE Standard 160, intermediate method: water given off by number of
# bedrooms [kg/day], one more for each further bedroom.  From memory.
_BEDROOMS = (8.0, 12.0, 14.0, 15.0)


def vapor_excess(production, fresh_air, temperature=21.0):
    """How far the vapor pressure indoors stands above outdoors.

    Parameters
    ----------
    production : float or array
        Water given off indoors [kg/s], 0 to 0.01.
    fresh_air : float or array
        Outdoor air that comes in [m3/s], above 0 to 10, at room temperature.
    temperature : float or array, optional
        Of the room [degC], 5 to 40.

    Returns
    -------
    float or array
        [Pa].

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    Steady balance of an ideal gas: production = fresh air x difference of
    vapor pressure / (gas constant of vapor x absolute temperature).

    Examples
    --------
    >>> round(vapor_excess(10 / 86400, 0.0212, 21.1))
    741
    """
    made = within("Moisture production", production, 0.0, 0.01, "kg/s")
    flow = within("Fresh air", fresh_air, 0.0, 10.0, "m³/s", above=True)
    kelvin = within("Room temperature", temperature, 5.0, 40.0, "°C") + KELVIN
    return made / flow * air.VAPOR_GAS_CONSTANT * kelvin


def steady_humidity(production, fresh_air, outdoor, temperature=21.0):
    """Relative humidity indoors from production, fresh air and the air outdoors.

    Parameters
    ----------
    production : float or array
        Water given off indoors [kg/s], 0 to 0.01.
    fresh_air : float or array
        Outdoor air that comes in [m3/s], above 0 to 10, at room temperature.
    outdoor : Air
        The air outdoors.
    temperature : float or array, optional
        Of the room [degC], 5 to 40.

    Returns
    -------
    float or array
        [-]; above 1 says that water runs down the windows.

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> from dryward.units import to_si
    >>> from dryward.weather import Air
    >>> outdoor = Air(to_si(20, "degF"), 0.8)
    >>> round(steady_humidity(to_si(10, "kg/day"), to_si(30, "cfm"), outdoor, to_si(70, "degF")), 2)
    0.55
    """
    inside = outdoor.vapor_pressure + vapor_excess(production, fresh_air, temperature)
    return inside / air.saturation_vapor_pressure(temperature)


def fresh_air_needed(production, relative_humidity, outdoor, temperature=21.0):
    """Fresh air that holds the room at a relative humidity.

    Parameters
    ----------
    production : float or array
        Water given off indoors [kg/s], 0 to 0.01.
    relative_humidity : float or array
        Wanted indoors [-], 0 to 1.
    outdoor : Air
        The air outdoors.
    temperature : float or array, optional
        Of the room [degC], 5 to 40.

    Returns
    -------
    float or array
        [m3/s] at room temperature.

    Raises
    ------
    OutOfRange
        Outside a range, or when the air outdoors holds as much vapor as is
        wanted indoors: then no amount of it can dry the room.

    Examples
    --------
    >>> from dryward.weather import Air
    >>> round(fresh_air_needed(10 / 86400, 0.4, Air(-6.67, 0.8), 21.1), 4)
    0.0217
    """
    made = within("Moisture production", production, 0.0, 0.01, "kg/s")
    warmth = within("Room temperature", temperature, 5.0, 40.0, "°C")
    room = air.vapor_pressure(warmth, relative_humidity) - outdoor.vapor_pressure
    if np.any(room <= 0):
        raise OutOfRange(
            f"Vapor pressure outdoors is {np.max(outdoor.vapor_pressure):.0f} Pa, not below the one wanted indoors; "
            "no amount of fresh air dries the room."
        )
    return made * air.VAPOR_GAS_CONSTANT * (warmth + KELVIN) / room


def moisture_by_bedrooms(bedrooms):
    """Design water production of a dwelling by its number of bedrooms.

    Parameters
    ----------
    bedrooms : int
        1 to 12.

    Returns
    -------
    float
        [kg/s].

    Raises
    ------
    OutOfRange
        Outside the range.

    References
    ----------
    ASHRAE Standard 160, intermediate method, from memory.

    Examples
    --------
    >>> round(moisture_by_bedrooms(3) * 86400, 6)
    14.0
    """
    count = int(within("Number of bedrooms", bedrooms, 1, 12))
    last = len(_BEDROOMS)
    return (_BEDROOMS[min(count, last) - 1] + max(0, count - last)) / DAY
