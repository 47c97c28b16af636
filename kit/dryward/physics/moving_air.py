"""Moving air: how heavy it is, what pushes it, and what goes through a hole.

The vent space and the leak both stand on these few lines.  Functions of the
absolute temperature carry no checks, so that compiled code can call them too.
"""

import numpy as np

from dryward.air import AIR_GAS_CONSTANT, COLDEST, HOTTEST, STANDARD_PRESSURE, VAPOR_GAS_CONSTANT
from dryward.checks import Numeric, plain, within
from dryward.units import GRAVITY, KELVIN

#: Specific heat of dry air at constant pressure [J/(kg K)], ASHRAE Handbook of Fundamentals 2017 ch. 1 (from memory).
AIR_SPECIFIC_HEAT = 1006.0
#: Sutherland's law for air: factor [kg/(m s K^0.5)] and temperature [K], U.S. Standard Atmosphere 1976, equation 51.
_SUTHERLAND = 1.458e-6, 110.4


def density(kelvin: Numeric, pressure: Numeric = STANDARD_PRESSURE) -> Numeric:
    """Density of dry air, an ideal gas."""
    return pressure / (AIR_GAS_CONSTANT * kelvin)


def viscosity(kelvin: Numeric) -> Numeric:
    """Dynamic viscosity of air by Sutherland's law.

    Source: U.S. Standard Atmosphere 1976, equation 51.
    """
    factor, constant = _SUTHERLAND
    return factor * kelvin**1.5 / (kelvin + constant)


def stack_pressure(height: Numeric, warm: Numeric, cold: Numeric, pressure: Numeric = STANDARD_PRESSURE) -> Numeric:
    """Pressure that a column of warm air gains over cold air beside it.

    (cold density - warm density) times gravity times height; dry air.
    """
    height = within("Height", height, -1000.0, 1000.0, "m")
    total = within("Air pressure", pressure, 1e4, 2e5, "Pa")
    warm = within("Temperature", warm, COLDEST, HOTTEST, "degC") + KELVIN
    cold = within("Temperature", cold, COLDEST, HOTTEST, "degC") + KELVIN
    return (density(cold, total) - density(warm, total)) * GRAVITY * height


def orifice_flow(pressure: Numeric, area: Numeric, discharge: float = 0.6, density: Numeric = 1.2) -> Numeric:
    """Air that a pressure drives through a sharp-edged hole.

    Source: Bernoulli's equation with a discharge coefficient; 0.6 for a sharp edge
    is common practice (from memory).
    """
    push = within("Pressure", pressure, -1000.0, 1000.0, "Pa")
    area = within("Area of the hole", area, 0.0, 100.0, "m2")
    discharge = within("Discharge coefficient", discharge, 0.0, 1.0, above=True)
    density = within("Air density", density, 0.0, 3.0, "kg/m3", above=True)
    flow = discharge * area * np.sign(push) * np.sqrt(2.0 * np.abs(push) / density)
    return plain(flow)


def film_permeance(coefficient: Numeric, temperature: Numeric, pressure: Numeric = STANDARD_PRESSURE) -> Numeric:
    """Vapor permeance of the air film that has this heat transfer coefficient.

    Lewis' relation with a Lewis number of one: what carries heat carries
    vapor.  Near 20 degC it is the common 7e-9 times the coefficient.

    Source: Lewis 1922, as taught in heat and mass transfer (from memory).
    """
    heat = within("Heat transfer coefficient", coefficient, 0.0, 1000.0, "W/(m2 K)")
    kelvin = within("Temperature", temperature, COLDEST, HOTTEST, "degC") + KELVIN
    total = within("Air pressure", pressure, 1e4, 2e5, "Pa")
    return heat / (density(kelvin, total) * AIR_SPECIFIC_HEAT * VAPOR_GAS_CONSTANT * kelvin)
