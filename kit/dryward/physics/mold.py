"""Mold index: how far mold grows on a surface, from its temperature and humidity.

The scale: 0 none; 1 seen with a microscope; 2 over a tenth of what the
microscope shows; 3 seen by eye; 4 over a tenth; 5 over half; 6 nearly all.
An index is a sign of favorable weather for mold on a kind of surface.  It is
no test of a real surface, and none of health.
"""

import math

import numpy as np
from numpy.typing import NDArray

from dryward.checks import Floats, Numeric, OutOfRange, plain, within
from dryward.language import message
from dryward.units import DAY, HOUR
from dryward.verdict.findings import (
    COLDEST_GROWTH,
    SENSITIVITIES,
    WARMEST_GROWTH,
    Sensitivity,
    critical_humidity,
    sensitivity,
)

__all__ = [
    "SENSITIVITIES",
    "Sensitivity",
    "sensitivity",
    "index",
    "critical_humidity",
    "weeks_to_start",
    "weeks_to_sight",
    "highest_index",
    "speed_when_visible",
]


def _weeks(
    temperature: Numeric,
    relative_humidity: Numeric,
    powers: tuple[float, float],
    start: float,
    wood: float,
    sawn: float,
) -> Numeric:
    t = within("Surface temperature", temperature, COLDEST_GROWTH, WARMEST_GROWTH, "degC", above=True)
    rh = within("Relative humidity", relative_humidity, 0.0, 1.0, "%", above=True) * 100.0
    return np.exp(-powers[0] * np.log(t) - powers[1] * np.log(rh) + wood + sawn + start)


def _species(species: str) -> float:
    if species not in ("pine", "spruce"):
        raise OutOfRange(message("physics.species", given=str(species)[:40]))
    return 1.0 if species == "spruce" else 0.0


def weeks_to_start(
    temperature: Numeric, relative_humidity: Numeric, species: str = "pine", kiln_dried: bool = False
) -> Numeric:
    """Weeks of steady air until the index reaches 1.

    Source: Hukka and Viitanen 1999, as quoted in Austrian course notes.
    """
    w, sq = _species(species), 1.0 if kiln_dried else 0.0
    return _weeks(temperature, relative_humidity, (0.68, 13.9), 66.02, 0.14 * w, -0.33 * sq)


def weeks_to_sight(temperature: Numeric, relative_humidity: Numeric, species: str = "pine") -> Numeric:
    """Weeks of steady air until the index reaches 3, mold that the eye sees.

    Source: Hukka and Viitanen 1999, as quoted in Austrian course notes.
    """
    return _weeks(temperature, relative_humidity, (0.74, 12.72), 61.50, 0.06 * _species(species), 0.0)


def speed_when_visible(temperature: Numeric, relative_humidity: Numeric, species: str = "pine") -> Numeric:
    """How many times faster the index grows above 1 than below, on wood.

    Source: Hukka and Viitanen 1999, as quoted in Austrian course notes.
    """
    start = weeks_to_start(temperature, relative_humidity, species)
    return 2.0 / (weeks_to_sight(temperature, relative_humidity, species) / start - 1.0)


def highest_index(
    temperature: Numeric, relative_humidity: Numeric, sensitivity: str | Sensitivity = "very sensitive"
) -> Numeric:
    """The index that steady air can bring, given time.

    Source: Hukka and Viitanen 1999; Ojanen et al. 2010 for the classes.
    """
    kind = class_of(sensitivity)
    critical = critical_humidity(temperature, kind.lowest_humidity)
    rh = within("Relative humidity", relative_humidity, 0.0, 1.0, "%")
    # At 0 degC the critical humidity is 1: nothing grows, and x would be 0/0.
    x = (critical - rh) / np.minimum(critical - 1.0, -1e-12)
    top = np.where(rh >= critical, kind.a + (kind.b - kind.c * x) * x, 0.0)
    top = np.maximum(np.where(critical < 1.0, top, 0.0), 0.0)
    return plain(top)


def class_of(name: str | Sensitivity) -> Sensitivity:
    """The class itself, or the one of that name."""
    return name if isinstance(name, Sensitivity) else sensitivity(name)


#: Decline on pine in [1/h]: for the first hours, between, and from then on; and where they change [h].
_DECLINE = -0.032 / 24.0, 0.0, -0.016 / 24.0
_DECLINE_HOURS = 6.0, 24.0
#: Steepness of the approach to the highest index [-].
_APPROACH = 2.3
_WEEK = 7.0 * DAY


def index(
    temperature: Floats,
    relative_humidity: Floats,
    sensitivity: str | Sensitivity = "very sensitive",
    step: float = HOUR,
    start: float = 0.0,
) -> Floats:
    """The mold index of a surface through time.

    Parameters
    ----------
    temperature : array
        Of the surface, at least one step [degC], -60 to 95.
    relative_humidity : array
        At the surface, same length [-], 0 to 1.
    sensitivity : str or Sensitivity
        A key of `SENSITIVITIES`, or your own.
    step : float
        Time between values [s], 60 to 31 days; steps longer than an hour
        are gone through hour by hour.
    start : float
        Index before the first step [-], 0 to 6.

    Returns
    -------
    array
        The index after each step, 0 to 6 [-].

    Raises
    ------
    OutOfRange
        Outside a range, or for two series of unequal length.
    UnknownName
        For an unknown class.

    Notes
    -----
    Growth: speed / (weeks to start) for each week, slowing toward the
    highest index of the moment and never past it.  Decline, when the air is
    too dry, too cold or too hot: 0.032 a day for the first 6 hours, nothing
    to 24 hours, then 0.016 a day, times the class's share.

    References
    ----------
    Hukka and Viitanen 1999; Ojanen et al. 2010, as quoted in Austrian
    course notes.  Class speeds and decline shares from memory.

    Examples
    --------
    >>> weeks = index(np.full(12 * 7 * 24, 20.0), np.full(12 * 7 * 24, 0.9))
    >>> round(float(weeks[-1]), 2)
    3.92
    """
    kind = class_of(sensitivity)
    t = np.atleast_1d(within("Surface temperature", temperature, -60.0, 95.0, "degC"))
    rh = np.atleast_1d(within("Relative humidity", relative_humidity, 0.0, 1.0, "%"))
    if t.ndim != 1 or t.shape != rh.shape:
        raise OutOfRange(message("physics.series-of-one-length", first=str(t.size), second=str(rh.size)))
    step = within("Time step", step, 60.0, 31 * DAY, "s")
    now = within("Mold index at the start", start, 0.0, 6.0)
    grows = (t > COLDEST_GROWTH) & (t <= WARMEST_GROWTH) & (rh >= critical_humidity(t, kind.lowest_humidity))
    grows &= highest_index(t, rh, kind) > 0.0
    pieces = max(1, math.ceil(step / HOUR - 1e-9))
    slow, fast = _rates(t, rh, kind, grows, step / pieces)
    return _march(now, grows, slow, fast, highest_index(t, rh, kind), kind.decline, step / pieces / HOUR, pieces)


def _rates(t: Floats, rh: Floats, kind: Sensitivity, grows: NDArray[np.bool_], step: float) -> tuple[Floats, Floats]:
    """Growth of the index in a step, below 1 and above it, far from its highest."""
    slow, fast = np.zeros(t.size), np.zeros(t.size)
    if grows.any():
        warm, damp = t[grows], rh[grows]
        base = step / _WEEK / weeks_to_start(warm, damp, kind.species, kind.kiln_dried)
        slow[grows] = kind.speed * base
        visible = kind.visible_speed
        fast[grows] = base * (speed_when_visible(warm, damp, kind.species) if visible is None else visible)
    return slow, fast


def _march(
    now: float,
    grows: NDArray[np.bool_],
    slow: Floats,
    fast: Floats,
    top: Floats,
    decline: float,
    hours: float,
    pieces: int,
) -> Floats:
    """Step by step; plain numbers are faster here than arrays of one."""
    found = np.empty(grows.size)
    early, pause, late = (rate * decline * hours for rate in _DECLINE)
    first, second = _DECLINE_HOURS
    exp = math.exp
    idle = 0.0  # hours since growth stopped
    series = zip(grows.tolist(), slow.tolist(), fast.tolist(), top.tolist(), strict=True)
    for place, (growing, below, above, high) in enumerate(series):
        for _ in range(pieces):
            if growing:
                idle = 0.0
                if now < high:
                    gain = (below if now < 1.0 else above) * (1.0 - exp(_APPROACH * (now - high)))
                    now = min(now + gain, high)
            else:
                idle += hours
                now += early if idle <= first + 1e-9 else pause if idle <= second + 1e-9 else late
                if now < 0.0:
                    now = 0.0
        found[place] = now
    return found
