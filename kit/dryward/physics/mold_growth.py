"""Where mold grows, how soon, and how far: the formulas behind the mold index."""

import numpy as np

from dryward.checks import OutOfRange, within
from dryward.physics.shape import plain
from dryward.verdict.surfaces import COLDEST_GROWTH, WARMEST_GROWTH, Sensitivity, critical_humidity, sensitivity


def _weeks(temperature, relative_humidity, powers, start, wood, sawn):
    t = within("Surface temperature", temperature, COLDEST_GROWTH, WARMEST_GROWTH, "°C", above=True)
    rh = within("Relative humidity", relative_humidity, 0.0, 1.0, "%", above=True) * 100.0
    return np.exp(-powers[0] * np.log(t) - powers[1] * np.log(rh) + wood + sawn + start)


def _species(species):
    if species not in ("pine", "spruce"):
        raise OutOfRange(f'The wood is "pine" or "spruce", not "{str(species)[:40]}".')
    return 1.0 if species == "spruce" else 0.0


def weeks_to_start(temperature, relative_humidity, species="pine", kiln_dried=False):
    """Weeks of steady air until the index reaches 1.

    Parameters
    ----------
    temperature : float or array
        [degC], above 0 to 50.
    relative_humidity : float or array
        [-], above 0 to 1; meant above the critical humidity.
    species : {"pine", "spruce"}
    kiln_dried : bool
        Whether the surface is as it left the kiln, not sawn after it.

    Returns
    -------
    float or array
        Broadcast shape [weeks].

    Raises
    ------
    OutOfRange
        Outside a range, or for another wood.

    References
    ----------
    Hukka and Viitanen 1999, as quoted in Austrian course notes.

    Examples
    --------
    >>> round(float(weeks_to_start(20.0, 0.9)), 3)
    4.202
    """
    w, sq = _species(species), 1.0 if kiln_dried else 0.0
    return _weeks(temperature, relative_humidity, (0.68, 13.9), 66.02, 0.14 * w, -0.33 * sq)


def weeks_to_sight(temperature, relative_humidity, species="pine"):
    """Weeks of steady air until the index reaches 3, mold that the eye sees.

    Parameters
    ----------
    temperature : float or array
        [degC], above 0 to 50.
    relative_humidity : float or array
        [-], above 0 to 1; meant above the critical humidity.
    species : {"pine", "spruce"}

    Returns
    -------
    float or array
        Broadcast shape [weeks].

    Raises
    ------
    OutOfRange
        Outside a range, or for another wood.

    References
    ----------
    Hukka and Viitanen 1999, as quoted in Austrian course notes.

    Examples
    --------
    >>> round(float(weeks_to_sight(20.0, 0.9)), 3)
    7.734
    """
    return _weeks(temperature, relative_humidity, (0.74, 12.72), 61.50, 0.06 * _species(species), 0.0)


def speed_when_visible(temperature, relative_humidity, species="pine"):
    """How many times faster the index grows above 1 than below, on wood.

    Parameters
    ----------
    temperature : float or array
        [degC], above 0 to 50.
    relative_humidity : float or array
        [-], above 0 to 1.
    species : {"pine", "spruce"}

    Returns
    -------
    float or array
        2 / (weeks to sight / weeks to start - 1) [-].

    Raises
    ------
    OutOfRange
        Outside a range, or for another wood.

    References
    ----------
    Hukka and Viitanen 1999, as quoted in Austrian course notes.

    Examples
    --------
    >>> round(float(speed_when_visible(20.0, 0.9)), 4)
    2.3796
    """
    start = weeks_to_start(temperature, relative_humidity, species)
    return 2.0 / (weeks_to_sight(temperature, relative_humidity, species) / start - 1.0)


def highest_index(temperature, relative_humidity, sensitivity="very sensitive"):
    """The index that steady air can bring, given time.

    Parameters
    ----------
    temperature : float or array
        [degC], -60 to 95.
    relative_humidity : float or array
        [-], 0 to 1.
    sensitivity : str or Sensitivity
        A key of `SENSITIVITIES`, or your own.

    Returns
    -------
    float or array
        Broadcast shape [-]: 0 below the critical humidity, 6 at most.

    Raises
    ------
    OutOfRange
        Outside a range.
    UnknownName
        For an unknown class.

    References
    ----------
    Hukka and Viitanen 1999; Ojanen et al. 2010 for the classes.

    Examples
    --------
    >>> round(highest_index(20.0, 0.9), 4)
    3.995
    """
    kind = class_of(sensitivity)
    critical = critical_humidity(temperature, kind.lowest_humidity)
    rh = within("Relative humidity", relative_humidity, 0.0, 1.0, "%")
    # At 0 degC the critical humidity is 1: nothing grows, and x would be 0/0.
    x = (critical - rh) / np.minimum(critical - 1.0, -1e-12)
    top = np.where(rh >= critical, kind.a + (kind.b - kind.c * x) * x, 0.0)
    top = np.maximum(np.where(critical < 1.0, top, 0.0), 0.0)
    return plain(top)


def class_of(name):
    """The class itself, or the one of that name.

    Parameters
    ----------
    name : str or Sensitivity

    Returns
    -------
    Sensitivity

    Raises
    ------
    UnknownName
        When there is no such class.

    Examples
    --------
    >>> class_of(class_of("resistant")).name
    'resistant'
    """
    return name if isinstance(name, Sensitivity) else sensitivity(name)
