"""Surface films and air spaces, by direction of heat flow and by slope.

Two families are in use.  The American tables give a film for still air by
position, and for moving air by wind speed.  ISO 6946 gives a film by the
direction in which the heat flows.  They are near each other; the kit never
mixes them in one assembly by itself.
"""

import numpy as np

from dryward.checks import UnknownName, within
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
#: Slope from which ISO 6946 counts heat flow as horizontal [degrees]: within
#: 30 degrees of the horizontal plane.
_STEEP = 60.0

# ISO 6946:2007 Table 2, unventilated air layers [m2 K/W] by thickness [mm];
# from memory, and reproduced within 0.01 by the formula of its annex.
_SPACE_MM = (0.0, 5.0, 7.0, 10.0, 15.0, 25.0, 50.0, 100.0, 300.0)
_SPACE = {
    "up": (0.00, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16),
    "horizontal": (0.00, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18),
    "down": (0.00, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23),
}


def _direction(direction, known):
    if direction not in known:
        raise UnknownName("direction of heat flow", direction, known)
    return direction


def still_air(slope, direction="up"):
    """Surface resistance in still air, American tables.

    Parameters
    ----------
    slope : float
        From the horizontal [degrees], 0 (ceiling) to 90 (wall).
    direction : {"up", "down"}, optional
        Of the heat flow: up through a ceiling in winter, down in summer.

    Returns
    -------
    float
        [m2 K/W].

    Raises
    ------
    OutOfRange, UnknownName
        For a slope out of range or another direction.

    Notes
    -----
    The table has three slopes, 0, 45 and 90 degrees; between them straight
    lines are drawn here, which is not in the table.

    References
    ----------
    ASHRAE Handbook of Fundamentals, chapter 26, surface-film table (from
    memory).

    Examples
    --------
    >>> round(still_air(0.0), 4), round(still_air(90.0), 4)
    (0.1074, 0.1198)
    """
    slope = within("Slope", slope, 0.0, 90.0, "degrees")
    return to_si(float(np.interp(slope, _SLOPES, _STILL[_direction(direction, _STILL)])), "R")


def moving_air(season="winter"):
    """Surface resistance in wind, American tables.

    Parameters
    ----------
    season : {"winter", "summer"}, optional
        The design wind: 15 mph in winter, 7.5 mph in summer.

    Returns
    -------
    float
        [m2 K/W].

    Raises
    ------
    UnknownName
        For another season.

    References
    ----------
    ASHRAE Handbook of Fundamentals, chapter 26, surface-film table (from
    memory).

    Examples
    --------
    >>> round(moving_air("winter"), 3)
    0.03
    """
    if season not in _MOVING:
        raise UnknownName("season", season, _MOVING)
    return to_si(_MOVING[season], "R")


def flow_direction(slope, warm_inside=True):
    """The direction of heat flow through a roof or wall, as ISO 6946 counts it.

    Parameters
    ----------
    slope : float
        From the horizontal [degrees], 0 to 90.
    warm_inside : bool, optional
        Whether the room is the warmer side.

    Returns
    -------
    {"up", "horizontal", "down"}

    Raises
    ------
    OutOfRange
        For a slope out of range.

    Examples
    --------
    >>> flow_direction(35.0), flow_direction(90.0), flow_direction(35.0, warm_inside=False)
    ('up', 'horizontal', 'down')
    """
    if within("Slope", slope, 0.0, 90.0, "degrees") >= _STEEP:
        return "horizontal"
    return "up" if warm_inside else "down"


def iso_interior(direction="horizontal"):
    """Interior surface resistance after ISO 6946.

    Parameters
    ----------
    direction : {"up", "horizontal", "down"}, optional

    Returns
    -------
    float
        [m2 K/W].

    Raises
    ------
    UnknownName
        For another direction.

    References
    ----------
    ISO 6946, surface resistances; read in a textbook summary, Tab. 17.18.

    Examples
    --------
    >>> iso_interior("up")
    0.1
    """
    return _ISO_INTERIOR[_direction(direction, _ISO_INTERIOR)]


def iso_exterior(side="open"):
    """Exterior surface resistance after ISO 6946 and DIN 4108.

    Parameters
    ----------
    side : {"open", "ventilated", "ground"}, optional
        Open air, the moving air of a ventilated layer, or soil.

    Returns
    -------
    float
        [m2 K/W].

    Raises
    ------
    UnknownName
        For another side.

    References
    ----------
    Read in a textbook summary, Tab. 17.18.

    Examples
    --------
    >>> iso_exterior("ventilated")
    0.08
    """
    if side not in _ISO_EXTERIOR:
        raise UnknownName("outer side", side, _ISO_EXTERIOR)
    return _ISO_EXTERIOR[side]


def air_space_resistance(thickness, direction="horizontal"):
    """Thermal resistance of a closed air space, ISO 6946 table.

    Parameters
    ----------
    thickness : float or array
        In the direction of heat flow [m], 0 to 0.3.
    direction : {"up", "horizontal", "down"}, optional

    Returns
    -------
    float or array
        [m2 K/W].

    Raises
    ------
    OutOfRange, UnknownName
        For a thickness out of range or another direction.

    Notes
    -----
    Straight lines between the rows of the table, as the standard says.  For
    ordinary surfaces (emittance at least 0.8), no air exchange.

    References
    ----------
    ISO 6946:2007 Table 2 (from memory).

    Examples
    --------
    >>> round(air_space_resistance(0.020), 3)
    0.175
    """
    depth = within("Thickness of the air space", thickness, 0.0, _SPACE_MM[-1] / 1000, "m")
    row = _SPACE[_direction(direction, _SPACE)]
    found = np.interp(np.asarray(depth) * 1000.0, _SPACE_MM, row)
    return float(found) if np.ndim(found) == 0 else found


def reflective_air_space(thickness, direction, warm_emittance, cold_emittance, temperature=10.0):
    """Thermal resistance of a closed air space from the emittances of its faces.

    Parameters
    ----------
    thickness : float
        [m], above 0 to 0.3.
    direction : {"up", "horizontal", "down"}
        Of the heat flow.
    warm_emittance, cold_emittance : float
        Of the two faces [-], above 0 to 1.
    temperature : float, optional
        Mean of the space [degC], -40 to 80.

    Returns
    -------
    float
        [m2 K/W].

    Raises
    ------
    OutOfRange, UnknownName
        Outside the ranges.

    Notes
    -----
    A foil counts only while it is clean and dry.  For less than 5 K across
    the space.

    References
    ----------
    ISO 6946:2007 annex B, equations B.1 to B.3 and Table B.1 (from memory);
    gives the table of ordinary surfaces within 0.01 m2 K/W.

    Examples
    --------
    >>> round(reflective_air_space(0.05, "horizontal", 0.9, 0.9), 3)
    0.183
    >>> round(reflective_air_space(0.05, "down", 0.05, 0.9), 2)
    1.32
    """
    depth = within("Thickness of the air space", thickness, 0.0, _SPACE_MM[-1] / 1000, "m", above=True)
    warm = within("Emittance", warm_emittance, 0.0, 1.0, above=True)
    cold = within("Emittance", cold_emittance, 0.0, 1.0, above=True)
    kelvin = within("Temperature of the air space", temperature, -40.0, 80.0, "°C") + KELVIN
    moving = {"up": 1.95, "horizontal": 1.25, "down": 0.12 * depth**-0.44}[_direction(direction, _SPACE)]
    conduction = max(moving, 0.025 / depth)  # still air conducts at least this
    radiation = 4 * STEFAN_BOLTZMANN * kelvin**3 / (1 / warm + 1 / cold - 1)
    return 1.0 / (conduction + radiation)
