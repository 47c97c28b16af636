"""A vent space: how much outdoor air moves through it, and what it carries off.

For the hourly engine.  Make the `VentSpace` once.  Then either

* before the march, in one call: ``space.flow_at(outdoor, air, wind)`` for a
  table over warmth and wind (0.3 ms for 8760 numbers, no iteration), or
  ``space.airflow(outdoor, faces, wind)`` for the whole year, which settles
  flow and air temperature together (about 25 ms); divide by ``space.area``
  for each square meter; or
* within the march, hour by hour, when the faces are unknowns: compile
  `channel_speed`, `moving_air.density` and `moving_air.viscosity` with
  ``numba.njit`` and hand them ``space.curve.log_drive``,
  ``space.curve.log_reynolds`` and ``space.diameter``; the push is that of
  `VentSpace.push`, and the air temperature of the step before is good enough
  for it.

Air of speed v then comes to its faces exponentially: over a length L the
mean difference is ``(1 - e^-N)/N`` of that at the inlet, N = conductance of
the faces / heat that the air carries (`Airflow.transfer_units`).
"""

import math
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING

import numpy as np

from dryward import air
from dryward.building import codes
from dryward.checks import Floats, Numeric, plain, within
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT, density, film_permeance, viscosity
from dryward.units import GRAVITY, KELVIN, checked
from dryward.weather import Air

__all__ = ["VentSpace", "Airflow", "DryingPower", "carrying_limit", "mean_approach"]
__all__ += ["NetFreeArea", "net_free_area", "ratio_provided", "clear_area"]


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
def _friction_table(relative_roughness: float) -> tuple[Floats, Floats]:
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
    """How a channel answers to pressure, as three tables of one length."""

    log_reynolds: Floats  # natural logarithm of the Reynolds number, evenly spaced
    log_drive: Floats  # natural logarithm of ``2 dp D^2 / (rho nu^2)``, rising
    nusselt: Floats  # Nusselt number on D, both faces at one temperature [-]


def channel_curve(length_ratio: float, losses: float = 1.5, relative_roughness: float = 0.0) -> Curve:
    """The curve of a channel, its length by hydraulic diameter, which is twice the gap.

    Friction is the larger of the laminar and the turbulent law, so that it
    has no step: they meet near a Reynolds number of 1900 between smooth
    plates.  The Nusselt number is the larger of 7.541 and Gnielinski's.

    Source: Shah and London, Laminar Flow Forced Convection in Ducts, 1978 (laminar;
    from memory).  Clamond 2009 for the turbulent friction, by the library
    fluids.  Gnielinski 1976 (from memory).
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


def channel_speed(
    push: Numeric, density: Numeric, viscosity: Numeric, diameter: float, log_drive: Floats, log_reynolds: Floats
) -> Numeric:
    """Speed of the air under a pressure, for numbers, arrays or compiled code.

    Nothing is checked and nothing is imported here: ``numba.njit`` takes it
    as it stands.  Still air stays still.
    """
    kinematic = viscosity / density
    # 1e-30 keeps the logarithm finite; the sign of a push of zero is zero.
    drive = 2.0 * np.abs(push) * diameter**2 / (density * kinematic**2) + 1e-30
    reynolds = np.exp(np.interp(np.log(drive), log_drive, log_reynolds))
    return np.sign(push) * reynolds * kinematic / diameter


#: Halvings of the bracket of the air speed: 1e-9 of the fastest possible.
_HALVINGS = 30
#: Keeps a division and a logarithm finite in still air; nothing real is so small.
_TINY = 1e-30


def mean_approach(transfer_units: Numeric) -> Numeric:
    """Mean over a channel of the difference left, when it starts at one: (1 - e^-N)/N."""
    number = within("Number of transfer units", transfer_units, 0.0, math.inf)
    small = np.maximum(number, 1e-9)  # at N = 0 the limit is 1, reached to 1e-9
    return plain(-np.expm1(-small) / small)


@dataclass(frozen=True)
class Airflow:
    """Air in a vent space: what `VentSpace.airflow` gives, in the shape of its input."""

    flow: Numeric  # from inlet to outlet; below zero when it goes down [m3/s]
    speed: Numeric  # mean speed in the channel, same sign [m/s]
    push: Numeric  # pressure from warmth and wind together [Pa]
    reynolds: Numeric  # Reynolds number on twice the gap [-]
    film: Numeric  # heat transfer coefficient at each face [W/(m2 K)]
    transfer_units: Numeric  # conductance of both faces over the heat that the air carries [-]
    air_temperature: Numeric  # mean over the length [degC]
    leaving_temperature: Numeric  # where the air leaves [degC]


def _checked(outdoor: Numeric, other: Numeric, wind: Numeric) -> tuple[Numeric, Numeric, Numeric]:
    """Two temperatures [K] and a wind speed, each within its range."""
    return (
        within("Outdoor temperature", outdoor, -80.0, 120.0, "degC") + KELVIN,
        within("Temperature in the vent space", other, -80.0, 120.0, "degC") + KELVIN,
        within("Wind speed", wind, 0.0, 100.0, "m/s"),
    )


@dataclass(frozen=True)
class DryingPower:
    """What moving air takes off a wet face: what `VentSpace.drying_power` gives."""

    carried: Numeric  # vapor taken up, over the area of the face; below zero when the air leaves water [kg/(s m2)]
    limit: Numeric  # the same if the air left as humid as the face [kg/(s m2)]
    leaving_vapor_pressure: Numeric
    airflow: Airflow


def taken_up(moving: Airflow, area: float, outdoor: Air, wet: Numeric) -> DryingPower:
    """What moving air takes off a face of an area and one vapor pressure `wet`."""
    dry = outdoor.vapor_pressure
    # Vapor that the air carries for each Pa, and that the film passes for each Pa [kg/(s Pa)].
    carries = np.abs(moving.flow) / (air.VAPOR_GAS_CONSTANT * (moving.air_temperature + KELVIN))
    passes = film_permeance(moving.film, moving.air_temperature) * area
    share = -np.expm1(-passes / (carries + 1e-30))  # 1e-30: still air is saturated, not 0/0
    limit = carries * (wet - dry) / area
    return DryingPower(plain(limit * share), plain(limit), plain(dry + (wet - dry) * share), moving)


def carrying_limit(gap: Numeric, speed: Numeric, length: Numeric, outdoor: Air, warming: Numeric = 0.0) -> Numeric:
    """The most that vent air can carry off: it leaves saturated.

    Flow times (vapor density at saturation where it leaves - vapor density
    that comes in), over the length.  Every cubic meter is counted as one,
    warmed or not.
    """
    gap = within("Height of the gap", gap, 0.0, 1.0, "m", above=True)
    speed = within("Air speed", speed, 0.0, 20.0, "m/s")
    length = within("Length of the vent space", length, 0.0, 100.0, "m", above=True)
    leaving = outdoor.temperature + within("Warming of the vent air", warming, -30.0, 60.0, "K")
    most = air.vapor_density(leaving, air.saturation_vapor_pressure(leaving))
    return gap * speed / length * (most - air.vapor_density(outdoor.temperature, outdoor.vapor_pressure))


@dataclass(frozen=True)
class VentSpace:
    """A gap under a deck or a covering, open at the eave and at the ridge.

    Parameters
    ----------
    height : float or str
        The gap [m], 0.003 to 0.5, or a text such as ``"1-1/2 in"``.
    length : float or str
        From inlet to outlet along the slope [m], 0.1 to 50.
    slope : float or str
        From the horizontal [degrees], 0 to 90, or a text such as ``"4/12"``.
    inlet_area, outlet_area : float or str
        Net free area over the width [m2], above 0; inf for wide open.
    width : float or str
        Across the slope [m], above 0 to 1000.
    losses : float
        Of entry, exit and bends, on the speed in the channel [-], 0 to 100.
    discharge : float
        Discharge coefficient of the openings [-], above 0 to 1.
    wind_coefficient : float
        Difference of the wind pressure coefficients of inlet and outlet, on
        the wind speed handed in [-], -2 to 2.
    roughness : float or str
        Of the faces [m], 0 to 0.003.

    Raises
    ------
    OutOfRange
        For a channel or an opening outside these ranges.

    Notes
    -----
    The width of the rafter bays is taken as large beside the gap.  The
    default of `wind_coefficient`, 0.1, is a difference of 0.4 met by half
    the wind of the weather station; it is an assumption with no source, and
    real roofs differ widely.  So are the losses: 0.5 for entry and 1 for
    exit.

    Examples
    --------
    >>> space = VentSpace(0.038, 5.0, 30.0, 0.005, 0.005)
    >>> round(space.airflow(0.0, 5.0).speed, 2)
    0.05
    """

    height: float
    length: float
    slope: float
    inlet_area: float = math.inf
    outlet_area: float = math.inf
    width: float = 1.0
    losses: float = 1.5
    discharge: float = 0.6
    wind_coefficient: float = 0.1
    roughness: float = 0.0

    if TYPE_CHECKING:  # what it takes is more than what it keeps

        def __init__(
            self,
            height: float | str,
            length: float | str,
            slope: float | str,
            inlet_area: float | str = math.inf,
            outlet_area: float | str = math.inf,
            width: float | str = 1.0,
            losses: float = 1.5,
            discharge: float = 0.6,
            wind_coefficient: float = 0.1,
            roughness: float | str = 0.0,
        ) -> None: ...

    def __post_init__(self) -> None:
        for name, what, low, high, quantity, above in _RANGES:
            object.__setattr__(self, name, checked(what, getattr(self, name), quantity, low, high, above=above))

    @property
    def diameter(self) -> float:
        """Hydraulic diameter, twice the gap [m]."""
        return 2.0 * self.height

    @property
    def area(self) -> float:
        """Of one face [m2]."""
        return self.length * self.width

    @property
    def rise(self) -> float:
        """Height of the outlet above the inlet [m]."""
        return self.length * math.sin(math.radians(self.slope))

    @cached_property
    def curve(self) -> Curve:
        """How the channel and its openings answer to pressure, a `Curve`."""
        section = self.height * self.width
        openings = sum((section / (self.discharge * each)) ** 2 for each in (self.inlet_area, self.outlet_area))
        return channel_curve(self.length / self.diameter, self.losses + openings, self.roughness / self.diameter)

    def push(self, outdoor_temperature: Numeric, air_temperature: Numeric, wind: Numeric = 0.0) -> Numeric:
        """Pressure that drives air from inlet to outlet: warmth and wind."""
        return self._push(*_checked(outdoor_temperature, air_temperature, wind))

    def flow_at(self, outdoor_temperature: Numeric, air_temperature: Numeric, wind: Numeric = 0.0) -> Numeric:
        """Flow from inlet to outlet [m3/s] when the mean temperature of the air in the channel is known."""
        outdoor, mean, wind = _checked(outdoor_temperature, air_temperature, wind)
        return plain(self._speed(outdoor, mean, wind) * self.height * self.width)

    def airflow(self, outdoor_temperature: Numeric, surface_temperature: Numeric, wind: Numeric = 0.0) -> Airflow:
        """Flow and air temperature together, from the warmth of the faces.

        Steady flow.  The air comes to the temperature of the faces
        exponentially; the speed at which push and resistance agree is found
        by halving a bracket that always holds it.
        """
        return self._settled(*_checked(outdoor_temperature, surface_temperature, wind))

    def drying_power(
        self,
        outdoor: Air,
        surface_temperature: Numeric | None = None,
        wind: Numeric = 0.0,
        surface_humidity: Numeric = 1.0,
    ) -> DryingPower:
        """What the air takes off one wet face along its length.

        The vapor pressure of the air comes to that of the face
        exponentially, as its temperature does.  The film lets vapor through
        as it lets heat through (Lewis).  The face keeps its temperature:
        the heat that evaporation needs comes from elsewhere.
        """
        faces = outdoor.temperature if surface_temperature is None else surface_temperature
        moving = self.airflow(outdoor.temperature, faces, wind)
        return taken_up(moving, self.area, outdoor, air.vapor_pressure(faces, surface_humidity))

    # The methods below take absolute temperatures [K], checked by those above.

    def _push(self, outdoor: Numeric, mean: Numeric, wind: Numeric) -> Numeric:
        """Pressure from inlet to outlet: warmth and wind."""
        outside = density(outdoor)
        return (outside - density(mean)) * GRAVITY * self.rise + 0.5 * outside * self.wind_coefficient * wind**2

    def _speed(self, outdoor: Numeric, mean: Numeric, wind: Numeric) -> Numeric:
        """Speed in the channel at a mean air temperature."""
        curve = self.curve
        force = self._push(outdoor, mean, wind)
        return channel_speed(force, density(mean), viscosity(mean), self.diameter, curve.log_drive, curve.log_reynolds)

    def _transfer(self, speed: Numeric, kelvin: Numeric) -> tuple[Numeric, Numeric, Numeric]:
        """How well the faces reach the air: Reynolds number, film coefficient, transfer units of both faces."""
        curve, mu = self.curve, viscosity(kelvin)
        reynolds = np.abs(speed) * self.diameter * density(kelvin) / mu
        nusselt = np.interp(np.log(reynolds + _TINY), curve.log_reynolds, curve.nusselt)
        film = nusselt * mu * AIR_SPECIFIC_HEAT / PRANDTL / self.diameter
        carried = density(kelvin) * AIR_SPECIFIC_HEAT * np.abs(speed) * self.height
        return reynolds, film, 2.0 * film * self.length / (carried + _TINY)

    def _settled(self, outdoor: Numeric, faces: Numeric, wind: Numeric) -> Airflow:
        """Flow and air temperature that agree with each other."""
        outdoor, faces, wind = np.broadcast_arrays(outdoor, faces, wind)

        def mean(now: Floats) -> Floats:
            return faces + (outdoor - faces) * mean_approach(self._transfer(now, outdoor)[2])

        # The air is between outdoors and the faces, so the push lies between
        # theirs; twice the larger speed leaves room for its viscosity.
        bound = np.maximum(np.abs(self._speed(outdoor, faces, wind)), np.abs(self._speed(outdoor, outdoor, wind)))
        low, high = -2.0 * bound - 1e-9, 2.0 * bound + 1e-9
        for _ in range(_HALVINGS):
            middle = 0.5 * (low + high)
            faster = self._speed(outdoor, mean(middle), wind) > middle
            low, high = np.where(faster, middle, low), np.where(faster, high, middle)
        now = 0.5 * (low + high)
        warm = mean(now)
        reynolds, film, units = self._transfer(now, outdoor)
        leaving = faces + (outdoor - faces) * np.exp(-units)
        found = (
            now * self.height * self.width,
            now,
            self._push(outdoor, warm, wind),
            reynolds,
            film,
            units,
            warm - KELVIN,
            leaving - KELVIN,
        )
        return Airflow(*(plain(each) for each in found))


_RANGES = (
    ("height", "Height of the gap", 0.003, 0.5, "length", False),
    ("length", "Length of the vent space", 0.1, 50.0, "length", False),
    ("slope", "Slope", 0.0, 90.0, "slope", False),
    ("inlet_area", "Inlet area", 0.0, math.inf, "area", True),
    ("outlet_area", "Outlet area", 0.0, math.inf, "area", True),
    ("width", "Width of the vent space", 0.0, 1000.0, "length", True),
    ("losses", "Sum of the losses", 0.0, 100.0, "number", False),
    ("discharge", "Discharge coefficient", 0.0, 1.0, "number", True),
    ("wind_coefficient", "Wind pressure coefficient", -2.0, 2.0, "number", False),
    ("roughness", "Roughness", 0.0, 0.003, "length", False),
)


@dataclass(frozen=True)
class NetFreeArea:
    """What an area of roof needs: what `net_free_area` gives."""

    total: float  # net free area [m2]
    upper: float  # high, near the ridge [m2]
    lower: float  # low, at the eave [m2]
    upper_per_length: float  # on each length of ridge [m2/m]; nan without a length
    lower_per_length: float  # on each length of eave [m2/m]


def net_free_area(
    area: float,
    ratio: float | None = None,
    upper_share: float = 0.5,
    eave_length: float | None = None,
    ridge_length: float | None = None,
) -> NetFreeArea:
    """Net free vent area that a ratio asks for, and its split high and low.

    Source: IRC R806.2, 2012 and later, as quoted in secondary sources; as adopted
    locally.
    """
    area = within("Vented area", area, 0.0, 1e6, "m2", above=True)
    ratio = 1.0 / codes.required("vent-area-reduced") if ratio is None else within("Vent ratio", ratio, 1.0, 2000.0)
    share = within("Share of the openings that is high", upper_share, 0.0, 1.0, "%")
    total = area / ratio
    upper, lower = total * share, total * (1.0 - share)
    return NetFreeArea(total, upper, lower, _per(upper, "ridge", ridge_length), _per(lower, "eave", eave_length))


def _per(area: float, where: str, length: float | None) -> float:
    if length is None:
        return math.nan
    return area / within(f"Length of the {where}", length, 0.0, 1e4, "m", above=True)


def ratio_provided(area: float, upper: float, lower: float) -> tuple[float, float]:
    """Area of roof for one of opening (inf without any), and the part of the openings that stands high (else nan)."""
    area = within("Vented area", area, 0.0, 1e6, "m2", above=True)
    upper = within("Upper net free area", upper, 0.0, 1e4, "m2")
    lower = within("Lower net free area", lower, 0.0, 1e4, "m2")
    total = upper + lower
    return (area / total, upper / total) if total > 0 else (math.inf, math.nan)


def clear_area(gap: float, bay_width: float, spacing: float) -> float:
    """Open area of a gap between rafters on each length of eave [m2/m], before screens and louvers."""
    gap = within("Height of the gap", gap, 0.0, 1.0, "m")
    spacing = within("Spacing of the rafters", spacing, 0.0, 5.0, "m", above=True)
    return gap * within("Clear width between rafters", bay_width, 0.0, spacing, "m") / spacing
