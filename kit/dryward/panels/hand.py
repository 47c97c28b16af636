"""Lines of a hand calculation that several lessons need, in either unit system.

Each gives a `Step` whose formula, typed into a calculator as it stands,
gives its result.
"""

from dryward import units
from dryward.teaching.arithmetic import Step


def pressure(words, temperature, relative_humidity, saturation, system):
    """The vapor pressure of an air: its relative humidity of the most it can have."""
    show = units.show
    most = show(saturation, "pressure", system)
    at = show(temperature, "temperature", system)
    return Step(
        f"{words} The most at {at} is {most}, from a table.",
        f"{relative_humidity * 100:.3g} % × {most}",
        show(saturation * relative_humidity, "pressure", system),
    )


def plane(words, indoor, outdoor, before, total, system):
    """The temperature of a plane, by the share of R between the room and it.

    `before` and `total` are thermal resistances from the room [m2 K/W].
    """
    show = units.show
    room, yard = (show(each, "temperature", system) for each in (indoor, outdoor))
    shares = " / ".join(f"{units.from_si(each, _R[system]):.3g}" for each in (before, total))
    return Step(
        words,
        f"{room} − ({room} − {yard}) × {_SIGN[system]} {shares}",
        show(indoor - (indoor - outdoor) * before / total, "temperature", system),
    )


def flow(words, high, low, permeance, system):
    """The vapor that a pressure step drives through a permeance in a day."""
    show = units.show
    if system == "us":
        much, tail = units.from_si(permeance, "perm"), "perm × 24 h"
    else:
        much, tail = units.from_si(permeance, "ng/(s m2 Pa)"), "ng/(s m² Pa) × 86 400 s / 10⁹"
    return Step(
        words,
        f"({show(high, 'pressure', system)} − {show(low, 'pressure', system)}) × {much:.3g} {tail}",
        show((high - low) * permeance, "vapor flux", system),
    )


_R = {"us": "R", "si": "m2 K/W"}
_SIGN = {"us": "R", "si": "RSI"}
