"""An air leak: how much air goes through it, and how much water that brings.

For the hourly engine: ``leak.airflow(pressure) / leak.area`` is the flow
through each square meter of the assembly [m3/s], ``moving_air.density`` turns
it into kilograms, and `outward_pressure` gives the pressure for a whole year
of temperatures at once.  Vapor then goes by humidity ratio, which no cooling
of the air can change.
"""

from dataclasses import dataclass

import numpy as np

from dryward.checks import single, within
from dryward.physics.house_pressure import RATED_DENSITY, TEST_PRESSURE, natural_airflow, outward_pressure
from dryward.physics.layer_flow import LayerFlow, layer_flow, permeance_with_gaps
from dryward.physics.leak_water import Brought, brought
from dryward.physics.moving_air import orifice_flow, stack_pressure
from dryward.physics.shape import plain
from dryward.units import HOUR

__all__ = ["Leak", "Brought", "brought", "natural_airflow", "outward_pressure", "orifice_flow", "stack_pressure"]
__all__ += ["LayerFlow", "layer_flow", "permeance_with_gaps"]


#: The part of the small leaks of a house that seeps through its insulation [-], and how far it may lie off: an
#: assumption, see `Leak`.
LONG_SHARE, LONG_SHARES = 0.1, (0.03, 0.3)


@dataclass(frozen=True)
class Leak:
    """A leak that follows the power law: flow = coefficient times pressure^exponent.

    Parameters
    ----------
    coefficient : float
        Flow at 1 Pa [m3/s], 0 to 100.
    exponent : float
        [-], 0.5 (a wide hole) to 1 (fine cracks).
    area : float
        Of the assembly that it is spread over [m2], above 0 to 1e5.
    long_share : float
        The part of the leak that seeps through open layers, cools on its way
        and leaves water; the rest goes straight through and stays warm [-], 0 to 1.
    area_share : float
        The part of the area that it is spread over: 1 for the sum of many
        small leaks, little for a can light or a chase [-], 0.01 to 1.

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    The long share of a house's small leaks is an assumption, `LONG_SHARE`:
    it is chosen so that a roof sealed with care takes in about the published
    water of a winter (see the check "long share" in `evidence.airleak`).

    References
    ----------
    The power law of blower-door testing; an exponent of 0.65 where none is
    measured, as a public library of building standards has it.

    Examples
    --------
    >>> leak = Leak.from_blower_door(3.0, 566.3, 0.2, area=55.74)
    >>> round(leak.airflow(4.0) * 1000, 1)  # L/s
    18.3
    """

    coefficient: float
    exponent: float = 0.65
    area: float = 1.0
    long_share: float = LONG_SHARE
    area_share: float = 1.0

    def __post_init__(self):
        put = object.__setattr__
        put(self, "coefficient", single("Leakage coefficient", self.coefficient, 0.0, 100.0, "m³/s"))
        put(self, "exponent", single("Leakage exponent", self.exponent, 0.5, 1.0))
        put(self, "area", single("Area of the leaky assembly", self.area, 0.0, 1e5, "m²", above=True))
        put(self, "long_share", single("Long share of the leak", self.long_share, 0.0, 1.0, "%"))
        put(self, "area_share", single("Share of the area with the leak", self.area_share, 0.01, 1.0, "%"))

    @classmethod
    def from_blower_door(cls, ach50, volume, share=1.0, exponent=0.65, area=1.0, long_share=LONG_SHARE, area_share=1.0):
        """The share of a house's leak that lies in one assembly.

        Parameters
        ----------
        ach50 : float
            Air changes at 50 Pa [1/h], 0 to 50.
        volume : float
            Of the house [m3], above 0 to 1e5.
        share : float
            Part of the leak that lies in this assembly [-], 0 to 1.
        exponent : float
            [-], 0.5 to 1.
        area : float
            Of the assembly [m2], above 0 to 1e5.
        long_share, area_share : float
            As in `Leak` [-].

        Returns
        -------
        Leak

        Raises
        ------
        OutOfRange
            Outside a range.

        Examples
        --------
        >>> house = Leak.from_blower_door(3.0, 400.0)
        >>> round(house.airflow(50.0) * 3600, 9)
        1200.0
        """
        changes = single("Air changes at 50 Pa", ach50, 0.0, 50.0, "1/h")
        volume = single("Volume of the house", volume, 0.0, 1e5, "m³", above=True)
        share = single("Share of the leak", share, 0.0, 1.0, "%")
        exponent = single("Leakage exponent", exponent, 0.5, 1.0)
        at_one = share * changes * volume / HOUR / TEST_PRESSURE**exponent
        return cls(at_one, exponent, area, long_share, area_share)

    @classmethod
    def from_area(cls, leakage_area, reference=4.0, discharge=1.0, exponent=0.65, area=1.0):
        """The leak of an effective leakage area: the inverse of `leakage_area`.

        Parameters
        ----------
        leakage_area : float
            [m2], 0 to 10.
        reference : float
            Pressure at which the area is rated [Pa], above 0 to 100.
        discharge : float
            Discharge coefficient of the rating [-], above 0 to 1.
        exponent : float
            [-], 0.5 to 1.
        area : float
            Of the assembly [m2], above 0 to 1e5.

        Returns
        -------
        Leak

        Raises
        ------
        OutOfRange
            Outside a range.

        Examples
        --------
        >>> round(Leak.from_area(0.025).leakage_area(), 6)
        0.025
        """
        size = single("Leakage area", leakage_area, 0.0, 10.0, "m²")
        reference = single("Reference pressure", reference, 0.0, 100.0, "Pa", above=True)
        flow = orifice_flow(reference, size, discharge, RATED_DENSITY)
        exponent = single("Leakage exponent", exponent, 0.5, 1.0)
        return cls(flow / reference**exponent, exponent, area)

    def airflow(self, pressure):
        """Air through the leak; it has the sign of the pressure.

        Parameters
        ----------
        pressure : float or array
            Indoor minus outdoor [Pa], -1000 to 1000.

        Returns
        -------
        float or array
            Outward flow, same shape [m3/s].

        Raises
        ------
        OutOfRange
            Outside the range.
        """
        push = within("Pressure", pressure, -1000.0, 1000.0, "Pa")
        flow = np.sign(push) * self.coefficient * np.abs(push) ** self.exponent
        return plain(flow)

    def leakage_area(self, reference=4.0, discharge=1.0):
        """The sharp-edged hole that would leak as much at one pressure.

        Parameters
        ----------
        reference : float
            [Pa], above 0 to 100: 4 for the effective leakage area, 10 for
            the equivalent one.
        discharge : float
            Discharge coefficient of the hole [-], above 0 to 1: 1 for the
            effective, 0.611 for the equivalent leakage area.

        Returns
        -------
        float
            [m2].

        Raises
        ------
        OutOfRange
            Outside a range.

        References
        ----------
        ASTM E779 and CGSB 149.10 give the two references (from memory).

        Examples
        --------
        >>> house = Leak.from_blower_door(3.0, 400.0)
        >>> round(house.leakage_area() * 1e4, 1)  # cm2
        250.4
        """
        reference = within("Reference pressure", reference, 0.0, 100.0, "Pa", above=True)
        return self.airflow(reference) / orifice_flow(reference, 1.0, discharge, RATED_DENSITY)

    def changes_at_50(self, volume):
        """Air changes of a house of this volume at 50 Pa [1/h].

        Parameters
        ----------
        volume : float
            [m3], above 0 to 1e5.

        Returns
        -------
        float

        Raises
        ------
        OutOfRange
            Outside the range.
        """
        volume = within("Volume of the house", volume, 0.0, 1e5, "m³", above=True)
        return self.airflow(TEST_PRESSURE) * HOUR / volume

    def moisture(self, pressure, indoor, plane_temperature):
        """Vapor that the leak brings to each square meter of the assembly, and what its seeping part leaves there.

        Parameters
        ----------
        pressure : float or array
            Indoor minus outdoor [Pa], -1000 to 1000; nothing comes out below 0.
        indoor : weather.Air
            Room air.
        plane_temperature : float or array
            Of the cold plane that the air meets [degC], -100 to 200.

        Returns
        -------
        Brought
            Over the area [kg/(s m2)].

        Raises
        ------
        OutOfRange
            Outside a range.

        Examples
        --------
        >>> from dryward.weather import Air
        >>> leak = Leak.from_blower_door(3.0, 566.3, 0.2, area=55.74)
        >>> round(leak.moisture(4.0, Air(21.11, 0.4), -6.67).excess * 86400e3)  # g/m2 day
        137
        """
        outward = np.maximum(self.airflow(pressure), 0.0) / (self.area * self.area_share)
        return brought(plain(outward), indoor, plane_temperature, self.long_share)
