"""How well a sky radiates: clear, by the dew point at the ground, and with clouds."""

import numpy as np

from dryward.checks import OutOfRange, within
from dryward.physics.shape import plain
from dryward.units import KELVIN

#: Cloud factor: 1 + 0.022 N - 0.0035 N^2 + 0.00028 N^3, N in tenths; Walton 1983.
_CLOUD = (0.022, -0.0035, 0.00028)


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
    return plain(emissivity)


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
