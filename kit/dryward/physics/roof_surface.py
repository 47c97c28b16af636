"""How cold a roof gets: the balance of its surface with sky, air and house."""

import numpy as np

from dryward.air import COLDEST
from dryward.checks import NotConverged, OutOfRange, within
from dryward.physics.shape import plain
from dryward.units import KELVIN, STEFAN_BOLTZMANN

_STEPS = 30


def view(slope):
    """Part of the sky that a slope sees; it sees ground in the rest.

    Parameters
    ----------
    slope : float or array
        From the horizontal [degrees], 0 to 90.

    Returns
    -------
    float or array
        Same shape [-].

    Raises
    ------
    OutOfRange
        Outside the range.

    Examples
    --------
    >>> round(view(60.0), 9)
    0.75
    """
    tilt = np.radians(within("Slope", slope, 0.0, 90.0, "degrees"))
    return plain(0.5 * (1.0 + np.cos(tilt)))


def roof_surface(
    air_temperature,
    sky_temperature,
    coefficient=8.0,
    u_value=0.0,
    indoor_temperature=20.0,
    emissivity=0.9,
    slope=0.0,
    gain=0.0,
):
    """Temperature of a roof surface in balance with sky, air and house.

    Parameters
    ----------
    air_temperature : float or array
        Outdoors [degC], -100 to 60.
    sky_temperature : float or array
        [degC], -150 to 60.
    coefficient : float or array
        Convective heat transfer coefficient [W/(m2 K)], 0 to 200; about 3
        for calm, 8 for a breeze, 20 for wind.
    u_value : float or array
        From indoor air to this surface [W/(m2 K)], 0 to 10.
    indoor_temperature : float or array
        [degC], -60 to 60.
    emissivity : float or array
        Of the surface for long waves [-], 0 to 1.
    slope : float or array
        From the horizontal [degrees], 0 to 90; what is not sky is ground at
        air temperature.
    gain : float or array
        Other heat: sun absorbed, frost that forms [W/m2], -2000 to 2000.

    Returns
    -------
    float or array
        Broadcast shape [degC].

    Raises
    ------
    OutOfRange
        Outside a range; when nothing holds the surface (all of coefficient,
        U and emissivity zero).
    NotConverged
        When Newton's method finds no balance.

    Notes
    -----
    e s (Ts^4 - Tsky^4) + h (Ts - Ta) = U (Ti - Ts) + gain, steady: no heat
    stored in the covering.

    Examples
    --------
    >>> round(roof_surface(0.0, -18.0, coefficient=10.0, u_value=0.2), 4)
    -4.4745
    """
    outdoor = within("Air temperature", air_temperature, COLDEST, 60.0, "°C") + KELVIN
    cold = within("Sky temperature", sky_temperature, -150.0, 60.0, "°C") + KELVIN
    convection = within("Heat transfer coefficient", coefficient, 0.0, 200.0, "W/(m² K)")
    through = within("U-value", u_value, 0.0, 10.0, "W/(m² K)")
    indoor = within("Indoor temperature", indoor_temperature, -60.0, 60.0, "°C") + KELVIN
    radiates = within("Emissivity", emissivity, 0.0, 1.0) * STEFAN_BOLTZMANN
    if np.any(convection + through + radiates == 0.0):
        raise OutOfRange("A roof surface without emissivity, heat transfer coefficient and U-value has no temperature.")
    sees = view(slope)
    gain = within("Heat gain", gain, -2000.0, 2000.0, "W/m²")
    given = radiates * (sees * cold**4 + (1.0 - sees) * outdoor**4) + convection * outdoor + through * indoor + gain
    surface = outdoor + 0.0 * given
    for _ in range(_STEPS):
        left = radiates * surface**4 + (convection + through) * surface - given
        step = left / (4.0 * radiates * surface**3 + convection + through)
        surface = surface - step
        if np.all(np.abs(step) < 1e-9):
            return plain(surface - KELVIN)
    raise NotConverged("The temperature of the roof surface was not found: check its sky, air and gains.")
