"""One state of air: a temperature and a relative humidity."""

from dataclasses import dataclass

from dryward import air
from dryward.checks import together, within


@dataclass(frozen=True)
class Air:
    """Air on one side of an assembly, or many such airs at once.

    Parameters
    ----------
    temperature : float or array
        [degC], -60 to 95.
    relative_humidity : float or array
        [-], 0 to 1; over ice below 0 degC.

    Raises
    ------
    OutOfRange
        One sentence naming the quantity, the value and the range.

    Examples
    --------
    >>> round(Air(20.0, 0.5).dew_point, 2)
    9.27
    """

    temperature: float
    relative_humidity: float

    def __post_init__(self):
        put = object.__setattr__
        put(self, "temperature", within("Air temperature", self.temperature, -60.0, 95.0, "°C"))
        put(self, "relative_humidity", within("Relative humidity", self.relative_humidity, 0.0, 1.0, "%"))
        together(temperature=self.temperature, relative_humidity=self.relative_humidity)

    @property
    def vapor_pressure(self):
        """[Pa]."""
        return air.vapor_pressure(self.temperature, self.relative_humidity)

    @property
    def dew_point(self):
        """Dew point, or frost point below 0 degC [degC]."""
        return air.dew_point(self.vapor_pressure)

    @property
    def frost_point_over_water(self):
        """Dew point over supercooled water, as weather services quote it [degC]."""
        return air.dew_point(self.vapor_pressure, over="water")
