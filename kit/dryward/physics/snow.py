"""Snow on a roof: how warm it keeps the covering under it, and how much of it heat from below melts.

Steady: heat comes up from the house, and goes out through the snow and with
the air of a vent space.  Where the covering would be warmer than 0 degC it
stays at 0 degC, and the heat that is left melts snow.
"""

from dataclasses import dataclass

import numpy as np

from dryward.checks import Numeric, plain, within
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT, density
from dryward.units import KELVIN, to_si

__all__ = ["RESISTIVITY", "MELTING_HEAT", "UnderSnow", "under_snow", "taken_by_vent"]

#: Thermal resistance of snow over its depth [m K/W]: R-1 an inch.  Read in excerpts of a trade video and of a builders'
#: forum, which give R-0.5 to R-2 an inch by how light it is.
RESISTIVITY = to_si(1.0, "R") / to_si(1.0, "in")
#: Heat that melts snow [J/kg], from memory.
MELTING_HEAT = 3.34e5


@dataclass(frozen=True)
class UnderSnow:
    """The covering under snow: what `under_snow` gives."""

    temperature: Numeric  # [degC], never above 0
    melting: Numeric  # [kg/(s m2)]


def under_snow(
    outdoor_temperature: Numeric,
    indoor_temperature: Numeric,
    from_below: Numeric,
    resistance: Numeric,
    to_vent: Numeric = 0.0,
    layer: Numeric = 0.0,
) -> UnderSnow:
    """How warm the covering is under snow, and what melts there.

    `from_below` is what the house lets up to the covering, with what leaking
    air brings [W/(m2 K)]; `resistance` that of the snow and the air film over
    it; `to_vent` what vent air takes along (`taken_by_vent`); `layer` the
    resistance of what is fixed under the covering, over that air [m2 K/W].

    Examples
    --------
    By hand: R-12 of snow over R-38, 20 degF outside and 70 degF inside: 20 + 50 * 12/50 = 32 degF.

    >>> from dryward.units import from_si
    >>> outside, inside = to_si(20.0, "degF"), to_si(70.0, "degF")
    >>> found = under_snow(outside, inside, 1 / to_si(38.0, "R"), to_si(11.9, "R"))
    >>> round(from_si(found.temperature, "degF")), found.melting
    (32, 0.0)
    """
    cold = within("Outdoor temperature", outdoor_temperature, -80.0, 60.0, "degC")
    warm = within("Indoor temperature", indoor_temperature, -60.0, 60.0, "degC")
    comes = within("Heat from below", from_below, 0.0, 50.0, "W/(m2 K)", above=True)
    away = 1.0 / within("Resistance of the snow", resistance, 0.0, 100.0, "m2 K/W", above=True)
    vent = within("Heat taken by vent air", to_vent, 0.0, 50.0, "W/(m2 K)")
    under = within("Resistance under the covering", layer, 0.0, 5.0, "m2 K/W")
    # The air under the covering, were it shut off from it, and what joins the two.
    rest = (comes * warm + vent * cold) / (comes + vent)
    joined = 1.0 / (under + 1.0 / (comes + vent))
    # Of a covering at 0 degC: the heat that is left when as much goes as can.
    left = joined * rest + away * cold
    return UnderSnow(plain(np.minimum(left / (joined + away), 0.0)), plain(np.maximum(left, 0.0) / MELTING_HEAT))


def taken_by_vent(gap: Numeric, speed: Numeric, length: Numeric, outdoor_temperature: Numeric) -> Numeric:
    """The most heat that vent air takes from the covering over it [W/(m2 K)]: it leaves as warm as that is."""
    height = within("Height of the gap", gap, 0.0, 1.0, "m", above=True)
    moves = within("Air speed", speed, 0.0, 20.0, "m/s")
    along = within("Length of the vent space", length, 0.0, 100.0, "m", above=True)
    heavy = density(within("Outdoor temperature", outdoor_temperature, -80.0, 60.0, "degC") + KELVIN)
    return plain(heavy * AIR_SPECIFIC_HEAT * height * moves / along)
