"""Surface films and air spaces, by direction of heat flow and by slope.

Two families are in use.  The American tables give a film for still air by
position, and for moving air by wind speed.  ISO 6946 gives a film by the
direction in which the heat flows.  They are near each other; the kit never
mixes them in one assembly by itself.
"""

from collections.abc import Collection
from typing import Any

import numpy as np

from dryward.checks import Numeric, UnknownName, within
from dryward.units import KELVIN, STEFAN_BOLTZMANN, to_si

# Still air, non-reflective surface (emittance 0.90) [h ft2 F/Btu], at slopes
# 0, 45 and 90 degrees.  ASHRAE Handbook of Fundamentals, surface-film table
# of chapter 26; from memory.
_STILL = {"up": (0.61, 0.62, 0.68), "down": (0.92, 0.76, 0.68)}
_SLOPES = (0.0, 45.0, 90.0)
# Moving air, any position [h ft2 F/Btu]: 15 mph and 7.5 mph; the same table.
_MOVING = {"winter": 0.17, "summer": 0.25}

# ISO 6946, surface resistances [m2 K/W]; read in a textbook summary, Tab. 17.18.
_ISO_INTERIOR = {"up": 0.10, "horizontal": 0.13, "down": 0.17}
_ISO_EXTERIOR = {"open": 0.04, "ventilated": 0.08, "ground": 0.0}
#: Interior surface resistance for moisture checks [m2 K/W], DIN 4108-3 A.2.3,
#: read in a textbook summary.
MOISTURE_INTERIOR = 0.25

# ISO 6946:2007 Table 2, unventilated air layers [m2 K/W] by thickness [mm];
# from memory, and reproduced within 0.01 by the formula of its annex.
_SPACE_MM = (0.0, 5.0, 7.0, 10.0, 15.0, 25.0, 50.0, 100.0, 300.0)
_SPACE = {
    "up": (0.00, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16),
    "horizontal": (0.00, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18),
    "down": (0.00, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23),
}


def _direction(direction: str, known: Collection[str]) -> str:
    if direction not in known:
        raise UnknownName("direction of heat flow", direction, known)
    return direction


def still_air(slope: float, direction: str = "up") -> float:
    """Surface resistance in still air, American tables.

    Notes
    -----
    The table has three slopes, 0, 45 and 90 degrees; between them straight
    lines are drawn here, which is not in the table.

    References
    ----------
    ASHRAE Handbook of Fundamentals, chapter 26, surface-film table (from
    memory).
    """
    slope = within("Slope", slope, 0.0, 90.0, "degrees")
    return to_si(float(np.interp(slope, _SLOPES, _STILL[_direction(direction, _STILL)])), "R")


def moving_air(season: str = "winter") -> float:
    """Surface resistance in wind, American tables.

    References
    ----------
    ASHRAE Handbook of Fundamentals, chapter 26, surface-film table (from
    memory).
    """
    if season not in _MOVING:
        raise UnknownName("season", season, _MOVING)
    return to_si(_MOVING[season], "R")


def iso_interior(direction: str = "horizontal") -> float:
    """Interior surface resistance after ISO 6946.

    References
    ----------
    ISO 6946, surface resistances; read in a textbook summary, Tab. 17.18.
    """
    return _ISO_INTERIOR[_direction(direction, _ISO_INTERIOR)]


def iso_exterior(side: str = "open") -> float:
    """Exterior surface resistance after ISO 6946 and DIN 4108.

    References
    ----------
    Read in a textbook summary, Tab. 17.18.
    """
    if side not in _ISO_EXTERIOR:
        raise UnknownName("outer side", side, _ISO_EXTERIOR)
    return _ISO_EXTERIOR[side]


def air_space_resistance(thickness: Numeric, direction: str = "horizontal") -> Any:
    """Thermal resistance of a closed air space, ISO 6946 table.

    Notes
    -----
    Straight lines between the rows of the table, as the standard says.  For
    ordinary surfaces (emittance at least 0.8), no air exchange.

    References
    ----------
    ISO 6946:2007 Table 2 (from memory).
    """
    depth = within("Thickness of the air space", thickness, 0.0, _SPACE_MM[-1] / 1000, "m")
    row = _SPACE[_direction(direction, _SPACE)]
    found = np.interp(np.asarray(depth) * 1000.0, _SPACE_MM, row)
    return float(found) if np.ndim(found) == 0 else found


def reflective_air_space(
    thickness: float, direction: str, warm_emittance: float, cold_emittance: float, temperature: float = 10.0
) -> float:
    """Thermal resistance of a closed air space from the emittances of its faces.

    Notes
    -----
    A foil counts only while it is clean and dry.  For less than 5 K across
    the space.

    References
    ----------
    ISO 6946:2007 annex B, equations B.1 to B.3 and Table B.1 (from memory);
    gives the table of ordinary surfaces within 0.01 m2 K/W.
    """
    depth = within("Thickness of the air space", thickness, 0.0, _SPACE_MM[-1] / 1000, "m", above=True)
    warm = within("Emittance", warm_emittance, 0.0, 1.0, above=True)
    cold = within("Emittance", cold_emittance, 0.0, 1.0, above=True)
    kelvin = within("Temperature of the air space", temperature, -40.0, 80.0, "degC") + KELVIN
    moving = {"up": 1.95, "horizontal": 1.25, "down": 0.12 * depth**-0.44}[_direction(direction, _SPACE)]
    conduction = max(moving, 0.025 / depth)  # still air conducts at least this
    radiation = 4 * STEFAN_BOLTZMANN * kelvin**3 / (1 / warm + 1 / cold - 1)
    return 1.0 / (conduction + radiation)
