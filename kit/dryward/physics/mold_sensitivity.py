"""How sensitive a surface is to mold: four classes, and the wood of the first tests."""

from dataclasses import dataclass

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
