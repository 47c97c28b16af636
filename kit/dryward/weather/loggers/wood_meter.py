"""Pin meters for wood: what a reading means when the wood is cold."""

import numpy as np

from dryward.checks import within


def moisture_content(reading, temperature, slope=1.0, offset=0.0):
    """Moisture content of wood from a pin meter's reading and the wood's temperature.

    Cold wood conducts less, so a meter set for room temperature reads too
    low in a cold roof: 15 on the dial at -7 degC is near 19 %.

    Parameters
    ----------
    reading : float or array
        On the dial, set to Douglas fir [mass %], 0 to 60.
    temperature : float or array
        Of the wood [degC], -35 to 60.
    slope, offset : float, optional
        Of the species, from the meter's booklet: slope [-] 0.5 to 2, offset
        [mass %] -10 to 10; 1 and 0 for Douglas fir.

    Returns
    -------
    float or array
        [mass %].

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    Good to about one point between 7 and 25 %; above fiber saturation (near
    28 %) a pin meter gives no number to trust.  Charts in meters' booklets
    differ from it, and from each other, by up to one and a half points.

    References
    ----------
    Pfaff and Garrahan 1986, Forest Products Journal 36(3), 28, from memory;
    held against correction charts printed in two meters' manuals.

    Examples
    --------
    >>> round(moisture_content(15.0, -7.0), 1)
    18.6
    """
    dial = within("Meter reading", reading, 0.0, 60.0, "mass %")
    t = within("Wood temperature", temperature, -35.0, 60.0, "°C")
    a = within("Slope of the species", slope, 0.5, 2.0)
    b = within("Offset of the species", offset, -10.0, 10.0, "mass %")
    at_room = (dial + 0.567 - 0.0260 * t + 0.000051 * t**2) / (0.881 * np.power(1.0056, t))
    found = (at_room - b) / a
    return float(found) if np.ndim(found) == 0 else found
