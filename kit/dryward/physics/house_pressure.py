"""What pushes room air out through the roof, and how much a house leaks by itself."""

from dryward.checks import within
from dryward.physics.moving_air import density, stack_pressure
from dryward.units import HOUR, KELVIN

#: Pressure of a blower-door test [Pa].
TEST_PRESSURE = 50.0
#: Density of air at 20 degC and standard pressure, on which openings are rated [kg/m3].
RATED_DENSITY = float(density(20.0 + KELVIN))


def outward_pressure(height, indoor_temperature, outdoor_temperature, suction=0.0):
    """Pressure on the assembly from indoors: stack, and what else pulls.

    Parameters
    ----------
    height : float or array
        Above the neutral level [m], -1000 to 1000.
    indoor_temperature, outdoor_temperature : float or array
        [degC], -100 to 200.
    suction : float or array
        Of fans, wind or vents, outward [Pa], -100 to 100.

    Returns
    -------
    float or array
        Indoor minus outdoor, broadcast shape [Pa].

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> round(outward_pressure(3.6576, 21.11, -6.67), 1)
    4.5
    """
    pull = within("Suction", suction, -100.0, 100.0, "Pa")
    return stack_pressure(height, indoor_temperature, outdoor_temperature) + pull


def natural_airflow(ach50, volume, divisor=20.0):
    """Mean leak of a house in a season, by the rule of thumb.

    Parameters
    ----------
    ach50 : float or array
        Air changes at 50 Pa [1/h], 0 to 50.
    volume : float
        [m3], above 0 to 1e5.
    divisor : float
        [-], 10 to 35: smaller for cold, tall and windy.

    Returns
    -------
    float or array
        [m3/s].

    Raises
    ------
    OutOfRange
        Outside a range.

    References
    ----------
    Common practice: air changes at 50 Pa over 20, with 12 to 30 by climate,
    height and shelter.

    Examples
    --------
    >>> round(natural_airflow(3.0, 566.3) / 4.719474e-4)  # cfm
    50
    """
    changes = within("Air changes at 50 Pa", ach50, 0.0, 50.0, "1/h")
    volume = within("Volume of the house", volume, 0.0, 1e5, "m³", above=True)
    return changes * volume / HOUR / within("Divisor", divisor, 10.0, 35.0)
