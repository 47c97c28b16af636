"""Surfaces that can mold: classes of sensitivity, where growth begins, and which materials belong to which."""

from dataclasses import dataclass

import numpy as np

from dryward.building import Material
from dryward.checks import UnknownName, within


@dataclass(frozen=True)
class Sensitivity:
    """How fast and how far mold grows on a kind of surface.

    Parameters
    ----------
    name : str
    speed, visible_speed : float
        Growth below and above an index of 1, in parts of that of pine below
        it [-], 0 to 10.  `visible_speed` None: from the times of the wood.
    a, b, c : float
        The highest index is a + b x - c x^2 [-], each -10 to 10.
    lowest_humidity : float
        Below it nothing grows [-], 0.5 to 1.
    decline : float
        Decline in parts of that of pine [-], 0 to 1.
    species : {"pine", "spruce"}
        Whose times to start and to sight are taken.
    kiln_dried : bool
        Whether the surface is as it left the kiln.

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> sensitivity("resistant").lowest_humidity
    0.85
    """

    name: str
    speed: float
    visible_speed: float | None
    a: float
    b: float
    c: float
    lowest_humidity: float
    decline: float = 1.0
    species: str = "pine"
    kiln_dried: bool = False

    def __post_init__(self):
        within("Growth speed", self.speed, 0.0, 10.0)
        if self.visible_speed is not None:
            within("Growth speed when visible", self.visible_speed, 0.0, 10.0)
        for each in (self.a, self.b, self.c):
            within("Term of the highest index", each, -10.0, 10.0)
        within("Lowest humidity of the class", self.lowest_humidity, 0.5, 1.0, "%")
        within("Share of the decline", self.decline, 0.0, 1.0)


#: The classes by name.  a, b, c: read in the source of an open-source climate
#: package; lowest humidity: in Austrian course notes; speeds: from memory.
#: The decline of every class is that of pine, the quickest: see `Sensitivity`
#: for another share (0.5, 0.25 and 0.1 are in use, from memory).
SENSITIVITIES = {
    each.name: each
    for each in (
        Sensitivity("very sensitive", 1.0, 2.0, 1.0, 7.0, 2.0, 0.80),
        Sensitivity("sensitive", 0.578, 0.386, 0.3, 6.0, 1.0, 0.80),
        Sensitivity("medium resistant", 0.072, 0.097, 0.0, 5.0, 1.5, 0.85),
        Sensitivity("resistant", 0.033, 0.014, 0.0, 3.0, 1.0, 0.85),
        # The model of 1999: sapwood, with the speed above 1 from its own two times.
        Sensitivity("pine", 1.0, None, 1.0, 7.0, 2.0, 0.80),
        Sensitivity("spruce", 1.0, None, 1.0, 7.0, 2.0, 0.80, species="spruce"),
    )
}


def sensitivity(name):
    """The class of that name.

    Parameters
    ----------
    name : str
        A key of `SENSITIVITIES`.

    Returns
    -------
    Sensitivity

    Raises
    ------
    UnknownName
        When there is no such class.

    Examples
    --------
    >>> sensitivity("very sensitive").visible_speed
    2.0
    """
    if name not in SENSITIVITIES:
        raise UnknownName("sensitivity class", name, SENSITIVITIES)
    return SENSITIVITIES[name]


#: Mold grows between these temperatures [degC]; Hukka and Viitanen 1999.
COLDEST_GROWTH, WARMEST_GROWTH = 0.0, 50.0
#: The critical humidity is a cubic up to here [degC], then the lowest of the class.
_LEVEL_FROM = 20.0


def critical_humidity(temperature, lowest=0.8):
    """Relative humidity below which mold does not grow.

    Parameters
    ----------
    temperature : float or array
        Of the surface [degC], -60 to 95; growth needs 0 to 50.
    lowest : float
        Lowest humidity of the sensitivity class [-], 0 to 1.

    Returns
    -------
    float or array
        Same shape [-]; above 1 far below freezing, where nothing grows.

    Raises
    ------
    OutOfRange
        Outside a range.

    References
    ----------
    Hukka and Viitanen 1999, with the lowest humidity of Ojanen et al. 2010,
    as quoted in Austrian course notes.

    Examples
    --------
    >>> round(critical_humidity(5.0), 5)
    0.88016
    """
    t = within("Surface temperature", temperature, -60.0, 95.0, "°C")
    floor = within("Lowest humidity of the class", lowest, 0.0, 1.0, "%")
    cubic = ((-0.00267 * t + 0.160) * t - 3.13) * t + 100.0
    found = np.where(t > _LEVEL_FROM, floor, np.maximum(cubic / 100.0, floor))
    return float(found) if np.ndim(found) == 0 else found


def mold_limit(temperature, kind):
    """Humidity from which on mold grows on a surface of a class; no humidity is too much where it is too cold.

    Parameters
    ----------
    temperature : float or array
        Of the surface [degC], -60 to 95.
    kind : str
        A key of `SENSITIVITIES`.

    Returns
    -------
    float or array
        Same shape [-]; infinite where nothing grows.

    Raises
    ------
    OutOfRange, UnknownName
        For a temperature out of range, or another class.

    Examples
    --------
    >>> mold_limit(-20.0, "sensitive"), mold_limit(25.0, "resistant")
    (inf, 0.85)
    """
    level = critical_humidity(temperature, sensitivity(kind).lowest_humidity)
    found = np.where(np.asarray(level) > 1.0, np.inf, level)
    return float(found) if np.ndim(found) == 0 else found


#: Class of a surface by the shelf of its material: wood and paper-faced boards grow mold soon, glass and stone wool
#: hardly; from memory of the tables of Ojanen et al. 2010, for kinds of material and not for products.
_CLASSES = {
    "wood and framing": "sensitive",
    "wood panels and sheathing": "sensitive",
    "boards": "medium resistant",
    "fibrous insulation": "medium resistant",
}


def class_of_surface(substance):
    """Sensitivity class of what a layer is made of.

    Parameters
    ----------
    substance : Material, membrane or AirSpace

    Returns
    -------
    str or None
        A key of `SENSITIVITIES`; None for what is not judged: foam, stone,
        metal, coverings, membranes and air.

    Examples
    --------
    >>> from dryward import building
    >>> class_of_surface(building.material("osb")), class_of_surface(building.material("eps"))
    ('sensitive', None)
    """
    if not isinstance(substance, Material):
        return None
    if substance.category in _CLASSES:
        return _CLASSES[substance.category]
    return "sensitive" if substance.wood and not substance.category else None
