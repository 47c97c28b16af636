"""Twelve monthly means: the climate of the hand method."""

from dataclasses import dataclass, field

import numpy as np

from dryward import air
from dryward.checks import OutOfRange, within
from dryward.weather.conditions import Air

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
#: Days in each month of a year of 365 days.
DAYS = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
DAYS.flags.writeable = False


def _twelve(what, values, low, high, unit):
    found = np.array(within(what, values, low, high, unit), dtype=float)
    if found.shape != (12,):
        raise OutOfRange(f"{what} needs 12 values, one for each month from January; {found.size} are given.")
    found.flags.writeable = False
    return found


@dataclass(frozen=True, eq=False)
class MonthlyClimate:
    """Monthly means of outdoor air, January to December.

    Parameters
    ----------
    temperature : array of 12
        Mean air temperature [degC], -60 to 60.
    relative_humidity : array of 12
        Mean relative humidity [-], 0 to 1; over ice below 0 degC.
    name : str, optional
        What to call the place.
    notes : tuple of str, optional
        What was assumed on the way here, in sentences for a reader.

    Raises
    ------
    OutOfRange
        When there are not twelve of each, or one lies outside its range.

    Examples
    --------
    >>> climate = MonthlyClimate([5.0] * 12, [0.8] * 12)
    >>> round(climate.vapor_pressure[0])
    698
    """

    temperature: np.ndarray = field(repr=False)
    relative_humidity: np.ndarray = field(repr=False)
    name: str = ""
    notes: tuple = ()

    def __post_init__(self):
        put = object.__setattr__
        put(self, "temperature", _twelve("Monthly temperature", self.temperature, -60.0, 60.0, "°C"))
        put(self, "relative_humidity", _twelve("Monthly relative humidity", self.relative_humidity, 0.0, 1.0, "%"))

    @property
    def vapor_pressure(self):
        """Array of 12 [Pa]."""
        return air.vapor_pressure(self.temperature, self.relative_humidity)

    def air(self, month):
        """The mean air of one month.

        Parameters
        ----------
        month : int
            1 for January to 12 for December.

        Returns
        -------
        Air

        Raises
        ------
        OutOfRange
            For any other month.

        Examples
        --------
        >>> MonthlyClimate(range(12), [0.8] * 12).air(3).temperature
        2.0
        """
        index = int(within("Month", month, 1, 12)) - 1
        return Air(float(self.temperature[index]), float(self.relative_humidity[index]))

    @property
    def coldest(self):
        """The coldest month, 1 to 12."""
        return int(np.argmin(self.temperature)) + 1

    @property
    def warmest(self):
        """The warmest month, 1 to 12."""
        return int(np.argmax(self.temperature)) + 1
