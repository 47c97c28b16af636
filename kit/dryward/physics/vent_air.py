"""Air on its way through a vent space: what pushes it, and how it warms.

These functions take a `ventspace.VentSpace` and absolute temperatures [K],
all checked by its methods.
"""

import math
from dataclasses import dataclass

import numpy as np

from dryward.checks import within
from dryward.physics import channel
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT, density, viscosity
from dryward.physics.shape import plain
from dryward.units import GRAVITY, KELVIN

#: Halvings of the bracket of the air speed: 1e-9 of the fastest possible.
_HALVINGS = 30
#: Keeps a division and a logarithm finite in still air; nothing real is so small.
_TINY = 1e-30


def mean_approach(transfer_units):
    """Mean over a channel of the difference left, when it starts at one.

    Parameters
    ----------
    transfer_units : float or array
        Number of transfer units [-], 0 or more; inf gives 0.

    Returns
    -------
    float or array
        (1 - e^-N)/N, same shape [-].

    Raises
    ------
    OutOfRange
        Below zero.

    Examples
    --------
    >>> round(mean_approach(1.0), 4)
    0.6321
    """
    number = within("Number of transfer units", transfer_units, 0.0, math.inf)
    small = np.maximum(number, 1e-9)  # at N = 0 the limit is 1, reached to 1e-9
    return plain(-np.expm1(-small) / small)


@dataclass(frozen=True)
class Airflow:
    """Air in a vent space: what `VentSpace.airflow` gives, in the shape of its input.

    Attributes
    ----------
    flow : float or array
        From inlet to outlet; below zero when it goes down [m3/s].
    speed : float or array
        Mean speed in the channel, same sign [m/s].
    push : float or array
        Pressure from warmth and wind together [Pa].
    reynolds : float or array
        Reynolds number on twice the gap [-].
    film : float or array
        Heat transfer coefficient at each face [W/(m2 K)].
    transfer_units : float or array
        Conductance of both faces over the heat that the air carries [-].
    air_temperature, leaving_temperature : float or array
        Mean over the length, and where the air leaves [degC].
    """

    flow: float
    speed: float
    push: float
    reynolds: float
    film: float
    transfer_units: float
    air_temperature: float
    leaving_temperature: float


def checked(outdoor, other, wind):
    """Two temperatures and a wind speed within their ranges.

    Parameters
    ----------
    outdoor, other : float or array
        Outdoor air, and air or faces of the vent space [degC], -80 to 120.
    wind : float or array
        Wind speed [m/s], 0 to 100.

    Returns
    -------
    tuple
        Both temperatures [K], and the wind speed [m/s].

    Raises
    ------
    OutOfRange
        Outside a range.
    """
    return (
        within("Outdoor temperature", outdoor, -80.0, 120.0, "°C") + KELVIN,
        within("Temperature in the vent space", other, -80.0, 120.0, "°C") + KELVIN,
        within("Wind speed", wind, 0.0, 100.0, "m/s"),
    )


def push(space, outdoor, mean, wind):
    """Pressure from inlet to outlet: warmth and wind.

    Parameters
    ----------
    space : VentSpace
    outdoor, mean : float or array
        Outdoor air, and the mean of the air in the channel [K].
    wind : float or array
        Wind speed [m/s].

    Returns
    -------
    float or array
        Broadcast shape [Pa].
    """
    outside = density(outdoor)
    return (outside - density(mean)) * GRAVITY * space.rise + 0.5 * outside * space.wind_coefficient * wind**2


def speed(space, outdoor, mean, wind):
    """Speed in the channel at a mean air temperature.

    Parameters
    ----------
    space : VentSpace
    outdoor, mean : float or array
        [K].
    wind : float or array
        Wind speed [m/s].

    Returns
    -------
    float or array
        Broadcast shape [m/s].
    """
    curve = space.curve
    force = push(space, outdoor, mean, wind)
    return channel.speed(force, density(mean), viscosity(mean), space.diameter, curve.log_drive, curve.log_reynolds)


def transfer(space, speed, kelvin):
    """How well the faces reach the air at a speed.

    Parameters
    ----------
    space : VentSpace
    speed : float or array
        [m/s].
    kelvin : float or array
        Temperature that sets the properties of the air [K].

    Returns
    -------
    tuple
        Reynolds number [-], heat transfer coefficient at each face
        [W/(m2 K)], number of transfer units of both faces [-].
    """
    curve, mu = space.curve, viscosity(kelvin)
    reynolds = np.abs(speed) * space.diameter * density(kelvin) / mu
    nusselt = np.interp(np.log(reynolds + _TINY), curve.log_reynolds, curve.nusselt)
    film = nusselt * mu * AIR_SPECIFIC_HEAT / channel.PRANDTL / space.diameter
    carried = density(kelvin) * AIR_SPECIFIC_HEAT * np.abs(speed) * space.height
    return reynolds, film, 2.0 * film * space.length / (carried + _TINY)


def settled(space, outdoor, faces, wind):
    """Flow and air temperature that agree with each other.

    Parameters
    ----------
    space : VentSpace
    outdoor, faces : float or array
        Outdoor air, and the mean of the two faces [K].
    wind : float or array
        Wind speed [m/s].

    Returns
    -------
    Airflow
    """
    outdoor, faces, wind = np.broadcast_arrays(outdoor, faces, wind)

    def mean(now):
        return faces + (outdoor - faces) * mean_approach(transfer(space, now, outdoor)[2])

    # The air is between outdoors and the faces, so the push lies between
    # theirs; twice the larger speed leaves room for its viscosity.
    bound = np.maximum(np.abs(speed(space, outdoor, faces, wind)), np.abs(speed(space, outdoor, outdoor, wind)))
    low, high = -2.0 * bound - 1e-9, 2.0 * bound + 1e-9
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        faster = speed(space, outdoor, mean(middle), wind) > middle
        low, high = np.where(faster, middle, low), np.where(faster, high, middle)
    now = 0.5 * (low + high)
    warm = mean(now)
    reynolds, film, units = transfer(space, now, outdoor)
    leaving = faces + (outdoor - faces) * np.exp(-units)
    found = (
        now * space.height * space.width,
        now,
        push(space, outdoor, warm, wind),
        reynolds,
        film,
        units,
        warm - KELVIN,
        leaving - KELVIN,
    )
    return Airflow(*(plain(each) for each in found))
