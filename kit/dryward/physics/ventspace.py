"""A vent space: how much outdoor air moves through it, and what it carries off.

For the hourly engine.  Make the `VentSpace` once.  Then either

* before the march, in one call: ``space.flow_at(outdoor, air, wind)`` for a
  table over warmth and wind (0.3 ms for 8760 numbers, no iteration), or
  ``space.airflow(outdoor, faces, wind)`` for the whole year, which settles
  flow and air temperature together (about 25 ms); divide by ``space.area``
  for each square meter; or
* within the march, hour by hour, when the faces are unknowns: compile
  `channel.speed`, `moving_air.density` and `moving_air.viscosity` with
  ``numba.njit`` and hand them ``space.curve.log_drive``,
  ``space.curve.log_reynolds`` and ``space.diameter``; the push is that of
  `vent_air.push`, and the air temperature of the
  step before is good enough for it.

Air of speed v then comes to its faces exponentially: over a length L the
mean difference is ``(1 - e^-N)/N`` of that at the inlet, N = conductance of
the faces / heat that the air carries (`Airflow.transfer_units`).
"""

import math
from dataclasses import dataclass
from functools import cached_property

from dryward import air
from dryward.checks import within
from dryward.physics import channel, vent_air
from dryward.physics.free_area import NetFreeArea, clear_area, net_free_area, ratio_provided
from dryward.physics.shape import plain
from dryward.physics.vent_air import Airflow, mean_approach
from dryward.physics.vent_drying import DryingPower, carrying_limit, taken_up

__all__ = ["VentSpace", "Airflow", "DryingPower", "carrying_limit", "mean_approach"]
__all__ += ["NetFreeArea", "net_free_area", "ratio_provided", "clear_area"]


@dataclass(frozen=True)
class VentSpace:
    """A gap under a deck or a covering, open at the eave and at the ridge.

    Parameters
    ----------
    height : float
        The gap [m], 0.003 to 0.5.
    length : float
        From inlet to outlet along the slope [m], 0.1 to 50.
    slope : float
        From the horizontal [degrees], 0 to 90.
    inlet_area, outlet_area : float
        Net free area over the width [m2], above 0; inf for wide open.
    width : float
        Across the slope [m], above 0 to 1000.
    losses : float
        Of entry, exit and bends, on the speed in the channel [-], 0 to 100.
    discharge : float
        Discharge coefficient of the openings [-], above 0 to 1.
    wind_coefficient : float
        Difference of the wind pressure coefficients of inlet and outlet, on
        the wind speed handed in [-], -2 to 2.
    roughness : float
        Of the faces [m], 0 to 0.003.

    Raises
    ------
    OutOfRange
        Outside a range.

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

    def __post_init__(self):
        for name, what, low, high, unit, above in _RANGES:
            object.__setattr__(self, name, within(what, getattr(self, name), low, high, unit, above))

    @property
    def diameter(self):
        """Hydraulic diameter, twice the gap [m]."""
        return 2.0 * self.height

    @property
    def area(self):
        """Of one face [m2]."""
        return self.length * self.width

    @property
    def rise(self):
        """Height of the outlet above the inlet [m]."""
        return self.length * math.sin(math.radians(self.slope))

    @cached_property
    def curve(self):
        """How the channel and its openings answer to pressure, a `channel.Curve`."""
        section = self.height * self.width
        openings = sum((section / (self.discharge * each)) ** 2 for each in (self.inlet_area, self.outlet_area))
        return channel.curve(self.length / self.diameter, self.losses + openings, self.roughness / self.diameter)

    def push(self, outdoor_temperature, air_temperature, wind=0.0):
        """Pressure that drives air from inlet to outlet: warmth and wind.

        Parameters
        ----------
        outdoor_temperature, air_temperature : float or array
            Of outdoor air, and the mean in the channel [degC], -80 to 120.
        wind : float or array
            Wind speed [m/s], 0 to 100.

        Returns
        -------
        float or array
            Broadcast shape [Pa].

        Raises
        ------
        OutOfRange
            Outside a range.
        """
        return vent_air.push(self, *vent_air.checked(outdoor_temperature, air_temperature, wind))

    def flow_at(self, outdoor_temperature, air_temperature, wind=0.0):
        """Flow when the mean temperature of the air in the channel is known.

        Parameters
        ----------
        outdoor_temperature, air_temperature : float or array
            [degC], -80 to 120.
        wind : float or array
            Wind speed [m/s], 0 to 100.

        Returns
        -------
        float or array
            From inlet to outlet, over the width, broadcast shape [m3/s].

        Raises
        ------
        OutOfRange
            Outside a range.
        """
        outdoor, mean, wind = vent_air.checked(outdoor_temperature, air_temperature, wind)
        return plain(vent_air.speed(self, outdoor, mean, wind) * self.height * self.width)

    def airflow(self, outdoor_temperature, surface_temperature, wind=0.0):
        """Flow and air temperature together, from the warmth of the faces.

        Parameters
        ----------
        outdoor_temperature : float or array
            [degC], -80 to 120.
        surface_temperature : float or array
            Mean of the two faces of the channel [degC], -80 to 120.
        wind : float or array
            Wind speed [m/s], 0 to 100.

        Returns
        -------
        Airflow

        Raises
        ------
        OutOfRange
            Outside a range.

        Notes
        -----
        Steady flow.  The air comes to the temperature of the faces
        exponentially; the speed at which push and resistance agree is found
        by halving a bracket that always holds it.

        Examples
        --------
        >>> VentSpace(0.025, 5.0, 30.0).airflow(10.0, 0.0).flow < 0  # cold faces: down and out at the eave
        True
        """
        return vent_air.settled(self, *vent_air.checked(outdoor_temperature, surface_temperature, wind))

    def drying_power(self, outdoor, surface_temperature=None, wind=0.0, surface_humidity=1.0):
        """What the air takes off one wet face along its length.

        Parameters
        ----------
        outdoor : weather.Air
            Outdoor air; one or many.
        surface_temperature : float or array, optional
            Of the faces [degC], -80 to 120; otherwise that of outdoor air.
        wind : float or array
            Wind speed [m/s], 0 to 100.
        surface_humidity : float or array
            Relative humidity at the wet face [-], 0 to 1.

        Returns
        -------
        DryingPower

        Raises
        ------
        OutOfRange
            Outside a range.

        Notes
        -----
        The vapor pressure of the air comes to that of the face
        exponentially, as its temperature does.  The film lets vapor through
        as it lets heat through (Lewis).  The face keeps its temperature:
        the heat that evaporation needs comes from elsewhere.

        Examples
        --------
        >>> from dryward.weather import Air
        >>> power = VentSpace(0.038, 5.0, 30.0).drying_power(Air(-6.67, 0.8), -5.0, wind=3.0)
        >>> 0 < power.carried < power.limit
        True
        """
        faces = outdoor.temperature if surface_temperature is None else surface_temperature
        moving = self.airflow(outdoor.temperature, faces, wind)
        return taken_up(moving, self.area, outdoor, air.vapor_pressure(faces, surface_humidity))


_RANGES = (
    ("height", "Height of the gap", 0.003, 0.5, "m", False),
    ("length", "Length of the vent space", 0.1, 50.0, "m", False),
    ("slope", "Slope", 0.0, 90.0, "degrees", False),
    ("inlet_area", "Inlet area", 0.0, math.inf, "m²", True),
    ("outlet_area", "Outlet area", 0.0, math.inf, "m²", True),
    ("width", "Width of the vent space", 0.0, 1000.0, "m", True),
    ("losses", "Sum of the losses", 0.0, 100.0, "", False),
    ("discharge", "Discharge coefficient", 0.0, 1.0, "", True),
    ("wind_coefficient", "Wind pressure coefficient", -2.0, 2.0, "", False),
    ("roughness", "Roughness", 0.0, 0.003, "m", False),
)
