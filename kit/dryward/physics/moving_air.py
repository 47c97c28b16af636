"""Moving air: how heavy it is, what pushes it, and what goes through a hole.

The vent space and the leak both stand on these few lines.  Functions of the
absolute temperature carry no checks, so that compiled code can call them too.
"""

import numpy as np

from dryward.air import AIR_GAS_CONSTANT, COLDEST, HOTTEST, STANDARD_PRESSURE, VAPOR_GAS_CONSTANT
from dryward.checks import within
from dryward.physics.shape import plain
from dryward.units import GRAVITY, KELVIN

#: Specific heat of dry air at constant pressure [J/(kg K)], ASHRAE Handbook of Fundamentals 2017 ch. 1 (from memory).
AIR_SPECIFIC_HEAT = 1006.0
#: Sutherland's law for air: factor [kg/(m s K^0.5)] and temperature [K], U.S. Standard Atmosphere 1976, equation 51.
_SUTHERLAND = 1.458e-6, 110.4


def density(kelvin, pressure=STANDARD_PRESSURE):
    """Density of dry air, an ideal gas.

    Parameters
    ----------
    kelvin : float or array
        Absolute temperature, any shape [K], above 0; not checked here.
    pressure : float or array
        Air pressure [Pa], 0 or more; not checked here.

    Returns
    -------
    float or array
        Density, broadcast shape [kg/m3].

    Examples
    --------
    >>> round(density(293.15), 4)
    1.2042
    """
    return pressure / (AIR_GAS_CONSTANT * kelvin)


def viscosity(kelvin):
    """Dynamic viscosity of air by Sutherland's law.

    Parameters
    ----------
    kelvin : float or array
        Absolute temperature, any shape [K], above 0; not checked here.

    Returns
    -------
    float or array
        Viscosity, same shape [kg/(m s)].

    References
    ----------
    U.S. Standard Atmosphere 1976, equation 51.

    Examples
    --------
    >>> round(viscosity(288.15) * 1e5, 4)
    1.7894
    """
    factor, constant = _SUTHERLAND
    return factor * kelvin**1.5 / (kelvin + constant)


def stack_pressure(height, warm, cold, pressure=STANDARD_PRESSURE):
    """Pressure that a column of warm air gains over cold air beside it.

    Parameters
    ----------
    height : float or array
        Of the column; above the neutral level it is the outward pressure
        there [m], -1000 to 1000.
    warm, cold : float or array
        Temperatures of the two columns [degC], -100 to 200.
    pressure : float or array
        Air pressure [Pa], 10 000 to 200 000.

    Returns
    -------
    float or array
        Pressure difference, broadcast shape [Pa]; below zero when the
        "warm" column is the colder one.

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    (cold density - warm density) times gravity times height; dry air.

    Examples
    --------
    >>> round(stack_pressure(3.6576, 21.11, -6.67), 2)
    4.49
    """
    height = within("Height", height, -1000.0, 1000.0, "m")
    total = within("Air pressure", pressure, 1e4, 2e5, "Pa")
    warm = within("Temperature", warm, COLDEST, HOTTEST, "°C") + KELVIN
    cold = within("Temperature", cold, COLDEST, HOTTEST, "°C") + KELVIN
    return (density(cold, total) - density(warm, total)) * GRAVITY * height


def orifice_flow(pressure, area, discharge=0.6, density=1.2):
    """Air that a pressure drives through a sharp-edged hole.

    Parameters
    ----------
    pressure : float or array
        Across the hole [Pa], -1000 to 1000; the flow has its sign.
    area : float or array
        Of the hole [m2], 0 to 100.
    discharge : float
        Discharge coefficient [-], above 0 to 1.
    density : float or array
        Of the air in the hole [kg/m3], above 0 to 3.

    Returns
    -------
    float or array
        Flow, broadcast shape [m3/s].

    Raises
    ------
    OutOfRange
        Outside a range.

    References
    ----------
    Bernoulli's equation with a discharge coefficient; 0.6 for a sharp edge
    is common practice (from memory).

    Examples
    --------
    >>> round(orifice_flow(1.0, 6.4516e-4) / 4.719474e-4, 2)  # one square inch, in cfm
    1.06
    """
    push = within("Pressure", pressure, -1000.0, 1000.0, "Pa")
    area = within("Area of the hole", area, 0.0, 100.0, "m²")
    discharge = within("Discharge coefficient", discharge, 0.0, 1.0, above=True)
    density = within("Air density", density, 0.0, 3.0, "kg/m³", above=True)
    flow = discharge * area * np.sign(push) * np.sqrt(2.0 * np.abs(push) / density)
    return plain(flow)


def film_permeance(coefficient, temperature, pressure=STANDARD_PRESSURE):
    """Vapor permeance of the air film that has this heat transfer coefficient.

    Parameters
    ----------
    coefficient : float or array
        Convective heat transfer coefficient [W/(m2 K)], 0 to 1000.
    temperature : float or array
        Of the film [degC], -100 to 200.
    pressure : float or array
        Air pressure [Pa], 10 000 to 200 000.

    Returns
    -------
    float or array
        Permeance, broadcast shape [kg/(s m2 Pa)].

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    Lewis' relation with a Lewis number of one: what carries heat carries
    vapor.  Near 20 degC it is the common 7e-9 times the coefficient.

    References
    ----------
    Lewis 1922, as taught in heat and mass transfer (from memory).

    Examples
    --------
    >>> round(film_permeance(1.0, 10.0) * 1e9, 1)
    6.1
    """
    heat = within("Heat transfer coefficient", coefficient, 0.0, 1000.0, "W/(m² K)")
    kelvin = within("Temperature", temperature, COLDEST, HOTTEST, "°C") + KELVIN
    total = within("Air pressure", pressure, 1e4, 2e5, "Pa")
    return heat / (density(kelvin, total) * AIR_SPECIFIC_HEAT * VAPOR_GAS_CONSTANT * kelvin)
