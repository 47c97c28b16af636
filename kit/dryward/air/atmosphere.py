"""Air pressure, and what height above the sea makes of it."""

from dryward.checks import within

#: Standard pressure at sea level [Pa].
STANDARD_PRESSURE = 101325.0


def standard_pressure(altitude):
    """Air pressure of the standard atmosphere.

    Parameters
    ----------
    altitude : float or array
        Height above sea level [m], -5000 to 11 000.

    Returns
    -------
    float or array
        Pressure [Pa].

    Raises
    ------
    OutOfRange
        Outside the range.

    References
    ----------
    ASHRAE Handbook of Fundamentals 2017, chapter 1, equation 3.

    Examples
    --------
    >>> round(standard_pressure(1000.0))
    89875
    """
    height = within("Altitude", altitude, -5000.0, 11000.0, "m")
    return STANDARD_PRESSURE * (1 - 2.25577e-5 * height) ** 5.2559
