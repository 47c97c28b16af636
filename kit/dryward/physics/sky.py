"""The night sky: how cold it looks from a roof, and how cold a roof gets under it."""

from dryward.checks import within
from dryward.physics.roof_surface import roof_surface, view
from dryward.physics.shape import plain
from dryward.physics.sky_emissivity import clear_emissivity, cloud_factor
from dryward.units import KELVIN, STEFAN_BOLTZMANN

__all__ = [
    "temperature",
    "clear_emissivity",
    "cloud_factor",
    "by_air_temperature",
    "long_wave",
    "from_long_wave",
    "roof_surface",
    "view",
    "STEFAN_BOLTZMANN",
]

#: Swinbank 1963: sky temperature = this times air temperature^1.5, both absolute [K^-0.5].
_SWINBANK = 0.0552


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
    hour : float or array, optional
        Solar time [h], 0 to 24.
    pressure : float or array, optional
        Air pressure [Pa], 40 000 to 110 000; both for Berdahl and Martin only.

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
    return plain(emissivity**0.25 * kelvin - KELVIN)


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


def long_wave(sky_temperature):
    """Long-wave radiation of the sky on the level: the inverse of `from_long_wave`.

    Parameters
    ----------
    sky_temperature : float or array
        [degC], -150 to 60.

    Returns
    -------
    float or array
        Same shape [W/m2].

    Raises
    ------
    OutOfRange
        Outside the range.

    Examples
    --------
    >>> round(from_long_wave(long_wave(-20.0)), 9)
    -20.0
    """
    kelvin = within("Sky temperature", sky_temperature, -150.0, 60.0, "°C") + KELVIN
    return STEFAN_BOLTZMANN * kelvin**4


def by_air_temperature(air_temperature):
    """Temperature of a clear sky where the dew point is not known.

    Parameters
    ----------
    air_temperature : float or array
        At the ground [degC], -80 to 60.

    Returns
    -------
    float or array
        Same shape [degC].

    Raises
    ------
    OutOfRange
        Outside the range.

    References
    ----------
    Swinbank 1963, as several public files have it.

    Examples
    --------
    >>> round(by_air_temperature(20.0), 2)
    3.91
    """
    kelvin = within("Air temperature", air_temperature, -80.0, 60.0, "°C") + KELVIN
    return _SWINBANK * kelvin**1.5 - KELVIN
