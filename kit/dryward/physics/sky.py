"""The night sky: how cold it looks from a roof, and how cold a roof gets under it."""

import numpy as np

from dryward.air import COLDEST
from dryward.checks import NotConverged, OutOfRange, within
from dryward.units import KELVIN

#: Stefan-Boltzmann constant [W/(m2 K4)], CODATA 2018.
STEFAN_BOLTZMANN = 5.670374419e-8
#: Cloud factor: 1 + 0.022 N - 0.0035 N^2 + 0.00028 N^3, N in tenths; Walton 1983.
_CLOUD = (0.022, -0.0035, 0.00028)
_STEPS = 30


def clear_emissivity(dew_point, model="clark-allen", hour=None, pressure=None):
    """Emissivity of a clear sky from the dew point at the ground.

    Parameters
    ----------
    dew_point : float or array
        Over water, as weather services give it [degC], -80 to 40.
    model : {"clark-allen", "berdahl-martin"}
    hour : float or array, optional
        Solar time [h], 0 to 24, for the daily swing of Berdahl and Martin.
    pressure : float or array, optional
        Air pressure [Pa], 40 000 to 110 000, for their altitude term.

    Returns
    -------
    float or array
        Broadcast shape [-].

    Raises
    ------
    OutOfRange
        Outside a range; for an unknown model; for an hour or a pressure with
        Clark and Allen, who have neither.

    References
    ----------
    Berdahl and Martin 1984, quoted in a thermography guide; the hour and
    pressure terms from memory.  Clark and Allen 1978, as an open
    weather-data library has it.

    Examples
    --------
    >>> round(clear_emissivity(10.0, "berdahl-martin"), 4), round(clear_emissivity(10.0), 4)
    (0.7743, 0.8145)
    """
    dew = within("Dew point", dew_point, -80.0, 40.0, "°C")
    if model == "clark-allen":
        if hour is not None or pressure is not None:
            raise OutOfRange('The sky model "clark-allen" takes no hour and no pressure.')
        emissivity = 0.787 + 0.764 * np.log((dew + KELVIN) / KELVIN)
    elif model == "berdahl-martin":
        emissivity = 0.711 + 0.56 * (dew / 100.0) + 0.73 * (dew / 100.0) ** 2
        if hour is not None:
            emissivity = emissivity + 0.013 * np.cos(2.0 * np.pi * within("Hour", hour, 0.0, 24.0, "h") / 24.0)
        if pressure is not None:
            total = within("Air pressure", pressure, 4e4, 1.1e5, "Pa")
            emissivity = emissivity + 0.00012 * (total / 100.0 - 1000.0)
    else:
        raise OutOfRange(f'The sky model is "clark-allen" or "berdahl-martin", not "{str(model)[:40]}".')
    return _plain(emissivity)


def cloud_factor(cover):
    """How many times more a cloudy sky radiates than a clear one.

    Parameters
    ----------
    cover : float or array
        Part of the sky under cloud [-], 0 to 1.

    Returns
    -------
    float or array
        Same shape [-], 1 to 1.15.

    Raises
    ------
    OutOfRange
        Outside the range.

    References
    ----------
    Walton 1983, NBSSIR 83-2655, as an open weather-data library has it.

    Examples
    --------
    >>> round(cloud_factor(0.5), 5)
    1.0575
    """
    tenths = within("Cloud cover", cover, 0.0, 1.0, "%") * 10.0
    a, b, c = _CLOUD
    return 1.0 + tenths * (a + tenths * (b + tenths * c))


def temperature(air_temperature, dew_point, cloud=0.0, model="clark-allen", hour=None, pressure=None):
    """Temperature of a black sky that would radiate as the real one does.

    Parameters
    ----------
    air_temperature : float or array
        At the ground [degC], -80 to 60.
    dew_point : float or array
        Over water [degC], -80 to 40.
    cloud : float or array
        Part of the sky under cloud [-], 0 to 1.
    model : {"clark-allen", "berdahl-martin"}
    hour, pressure : float or array, optional
        As in `clear_emissivity`.

    Returns
    -------
    float or array
        Broadcast shape [degC].

    Raises
    ------
    OutOfRange
        Outside a range, or for an unknown model.

    Notes
    -----
    Emissivity^(1/4) times the absolute air temperature.  The cloud factor
    was made for Clark and Allen's clear sky; it serves the other model too.
    Under full cloud in very damp heat (dew point above 30 degC) the product
    passes one by some thousandths and is left so.

    Examples
    --------
    >>> round(temperature(0.0, -3.0, model="berdahl-martin"), 2)
    -23.76
    """
    kelvin = within("Air temperature", air_temperature, -80.0, 60.0, "°C") + KELVIN
    emissivity = clear_emissivity(dew_point, model, hour, pressure) * cloud_factor(cloud)
    return _plain(emissivity**0.25 * kelvin - KELVIN)


def from_long_wave(radiation):
    """Sky temperature from the measured long-wave radiation of the sky.

    Parameters
    ----------
    radiation : float or array
        From the whole sky on the level [W/m2], 20 to 700.

    Returns
    -------
    float or array
        Same shape [degC].

    Raises
    ------
    OutOfRange
        Outside the range.

    Examples
    --------
    >>> round(from_long_wave(341.032), 1)
    5.3
    """
    flux = within("Long-wave radiation of the sky", radiation, 20.0, 700.0, "W/m²")
    return (flux / STEFAN_BOLTZMANN) ** 0.25 - KELVIN


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
    return _plain(0.5 * (1.0 + np.cos(tilt)))


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
            return _plain(surface - KELVIN)
    raise NotConverged("The temperature of the roof surface was not found: check its sky, air and gains.")


def _plain(value):
    """A float where there is only one number."""
    return float(value) if np.ndim(value) == 0 else value
