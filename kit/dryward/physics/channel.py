"""Flow between two plates: what pressure it takes, and how well the air warms.

One curve tells it for every temperature.  With the Reynolds number ``Re =
v D / nu`` and ``D`` twice the gap, the pressure ``rho v^2/2 (K + f L/D)``
becomes the plain number ``Re^2 (K + f L/D) = 2 dp D^2 / (rho nu^2)``: a
table of that number against Re, made once, gives the speed without any
iteration, in NumPy or in compiled code.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from dryward.checks import within

#: Prandtl number of air [-], from memory; 0.70 to 0.72 between -40 and 60 degC.
PRANDTL = 0.71
#: Laminar flow between wide plates: friction is this many times that of a
#: round pipe (96/Re against 64/Re), and the Nusselt number with both plates
#: at one temperature [-].  Shah and London 1978 (from memory).
_PLATES, _NUSSELT_LAMINAR = 1.5, 7.541
#: Range of the table [-], and its points.
_SLOWEST, _FASTEST, _POINTS = 1e-3, 1e6, 2400
#: Points of the turbulent branch, between which log f is a straight line.
_KNOTS = 220


@lru_cache(maxsize=64)
def _friction_table(relative_roughness):
    # fluids comes in here, not at the top: only who asks for a flow pays for it.
    from fluids.friction import Clamond, friction_laminar

    reynolds = np.geomspace(_SLOWEST, _FASTEST, _POINTS)
    knots = np.geomspace(500.0, _FASTEST, _KNOTS)
    rough = [Clamond(re, relative_roughness) for re in knots]
    laminar = _PLATES * friction_laminar(1.0) / reynolds
    turbulent = np.exp(np.interp(np.log(reynolds), np.log(knots), np.log(rough)))
    # Below 500 the turbulent law means nothing; the laminar one is larger there anyway.
    return reynolds, np.where(reynolds < 500.0, laminar, np.maximum(laminar, turbulent))


@dataclass(frozen=True)
class Curve:
    """How a channel answers to pressure, as three tables of one length.

    Attributes
    ----------
    log_reynolds : array
        Natural logarithm of the Reynolds number, evenly spaced.
    log_drive : array
        Natural logarithm of ``2 dp D^2 / (rho nu^2)``, rising.
    nusselt : array
        Nusselt number on D, both faces at one temperature [-].

    Examples
    --------
    >>> curve(100.0).log_drive.size == curve(100.0).log_reynolds.size
    True
    """

    log_reynolds: np.ndarray
    log_drive: np.ndarray
    nusselt: np.ndarray


def curve(length_ratio, losses=1.5, relative_roughness=0.0):
    """The curve of a channel.

    Parameters
    ----------
    length_ratio : float
        Length over hydraulic diameter, which is twice the gap [-], 0 to 10 000.
    losses : float
        Sum of the loss coefficients of openings and bends, on the speed in
        the channel [-], 0 to 1e8.
    relative_roughness : float
        Roughness of the faces over the hydraulic diameter [-], 0 to 0.05.

    Returns
    -------
    Curve

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    Friction is the larger of the laminar and the turbulent law, so that it
    has no step: they meet near a Reynolds number of 1900 between smooth
    plates.  The Nusselt number is the larger of 7.541 and Gnielinski's.

    References
    ----------
    Shah and London, Laminar Flow Forced Convection in Ducts, 1978 (laminar;
    from memory).  Clamond 2009 for the turbulent friction, by the library
    fluids.  Gnielinski 1976 (from memory).

    Examples
    --------
    >>> laminar = curve(100.0, losses=0.0)
    >>> round(float(np.exp(laminar.log_drive - laminar.log_reynolds)[0]))  # 96 * 100
    9600
    """
    ratio = within("Length over hydraulic diameter", length_ratio, 0.0, 1e4)
    losses = within("Sum of the losses", losses, 0.0, 1e8)
    rough = within("Relative roughness", relative_roughness, 0.0, 0.05)
    reynolds, friction = _friction_table(rough)
    drive = reynolds**2 * (losses + friction * ratio)
    # Gnielinski's law has a meaning above a Reynolds number of 1000 only.
    fast = np.maximum(reynolds, 1000.0)
    eighth = friction / 8.0
    turbulent = eighth * (fast - 1000.0) * PRANDTL / (1.0 + 12.7 * np.sqrt(eighth) * (PRANDTL ** (2.0 / 3.0) - 1.0))
    nusselt = np.where(reynolds > 1000.0, np.maximum(turbulent, _NUSSELT_LAMINAR), _NUSSELT_LAMINAR)
    return Curve(np.log(reynolds), np.log(drive), nusselt)


def speed(push, density, viscosity, diameter, log_drive, log_reynolds):
    """Speed of the air under a pressure, for numbers, arrays or compiled code.

    Parameters
    ----------
    push : float or array
        Pressure along the channel [Pa], any; the speed has its sign.
    density : float or array
        Of the air [kg/m3], above 0.
    viscosity : float or array
        Dynamic viscosity of the air [kg/(m s)], above 0.
    diameter : float
        Hydraulic diameter, twice the gap [m], above 0.
    log_drive, log_reynolds : array
        Of the `Curve` [-], rising.

    Returns
    -------
    float or array
        Mean speed in the channel, broadcast shape [m/s].

    Notes
    -----
    Nothing is checked and nothing is imported here: ``numba.njit`` takes it
    as it stands.  Still air stays still.

    Examples
    --------
    >>> c = curve(100.0)
    >>> float(speed(0.0, 1.2, 1.8e-5, 0.05, c.log_drive, c.log_reynolds))
    0.0
    """
    kinematic = viscosity / density
    # 1e-30 keeps the logarithm finite; the sign of a push of zero is zero.
    drive = 2.0 * np.abs(push) * diameter**2 / (density * kinematic**2) + 1e-30
    reynolds = np.exp(np.interp(np.log(drive), log_drive, log_reynolds))
    return np.sign(push) * reynolds * kinematic / diameter
