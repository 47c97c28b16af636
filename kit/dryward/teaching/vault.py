"""The roof that the questions are asked about, and the steady answers on it.

It is the preset vault of the library: painted drywall, a service cavity, the
film, 12 in. of fiber, an outer layer, and the vent space.
"""

import dataclasses
from functools import cache

from dryward.building import AirSpace, Assembly, FixedMembrane, Layer, Material, VariableMembrane, preset
from dryward.building.library import membrane
from dryward.physics import steady
from dryward.units import from_si, to_si
from dryward.verdict import DAMP, of_steady
from dryward.weather import Air

#: The outer layers and the preset that has each, with its perms.
OUTERS = {
    "open membrane": ("vented-vault", 50.0),
    "fiberboard": ("vented-vault-fiberboard", 20.0),
    "OSB": ("vented-vault-osb", 1.5),
    "closed sheet": ("vented-vault-closed", 0.1),
}
FILM, FILL, OUTER, CAVITY = "inner membrane", "insulation", "outer layer", "service cavity"


def film(dry=None, wet=None):
    """The variable film of the lessons, or one of the same kind with other perms.

    Parameters
    ----------
    dry, wet : float, optional
        Perms at its dry end and at its damp end.

    Returns
    -------
    VariableMembrane

    Examples
    --------
    >>> film().points[0][0]
    0.3
    """
    known = membrane("teaching-variable")
    if dry is None:
        return known
    return VariableMembrane([rh for rh, _ in known.points], (to_si(dry, "perm"), to_si(wet, "perm")))


@cache
def roof(inner="variable", outer="open membrane", inside_r=None, fill_r=None):
    """The roof with one film and one outer layer.

    Parameters
    ----------
    inner : float, "variable" or None
        Perms of the film; None for no film.
    outer : str or float
        A key of `OUTERS`, or the perms of a thin outer layer.
    inside_r, fill_r : float, optional
        R of the service cavity and of the fill, where they differ.

    Returns
    -------
    Assembly

    Examples
    --------
    >>> roof(1.0, "OSB").layer("outer layer").name
    'outer layer'
    """
    built = preset(OUTERS[outer][0] if isinstance(outer, str) else OUTERS["open membrane"][0])
    if not isinstance(outer, str):
        built = built.replace(OUTER, FixedMembrane(to_si(outer, "perm")))
    if inner is None:
        built = dataclasses.replace(built, layers=tuple(each for each in built.layers if each.name != FILM))
    else:
        built = built.replace(FILM, film() if inner == "variable" else FixedMembrane(to_si(inner, "perm")))
    if inside_r is not None:
        old = built.layer(CAVITY).substance
        built = built.replace(CAVITY, AirSpace(to_si(inside_r, "R"), old.vapor_permeance))
    if fill_r is not None:
        old = built.layer(FILL)
        conductivity = old.thickness / to_si(fill_r, "R")
        built = built.replace(FILL, dataclasses.replace(old.substance, conductivity=conductivity))
    return built


def stack(*layers):
    """A plain assembly of layers given as (name, inches, R), with no films.

    Parameters
    ----------
    *layers : (str, float, float)

    Returns
    -------
    Assembly

    Examples
    --------
    >>> round(stack(("board", 1, 5)).thermal_resistance, 2)
    0.88
    """
    made = []
    for name, inches, r in layers:
        thickness = to_si(float(inches), "in")
        substance = Material(name.replace(" ", "-"), name, 50, 1000, thickness / to_si(float(r), "R"), 1e-11)
        made.append(Layer(substance, thickness, name))
    return Assembly("stack", made, interior_film=0.0, exterior_film=0.0)


def plane(layers, inside, outside, name):
    """Temperature [degF] at the outside face of one layer of a stack.

    Parameters
    ----------
    layers : sequence of (str, float, float)
        As in `stack`.
    inside, outside : float
        Of the two faces [degF].
    name : str
        Of the layer.

    Returns
    -------
    float

    Examples
    --------
    >>> round(plane((("batt", 5.5, 15), ("board", 1, 5)), 70, 20, "batt"), 1)
    32.5
    """
    found = steady.profile(stack(*layers), air(inside, 0.1), air(outside, 0.1))
    return from_si(float(found.temperature[found.face(name, 1)]), "degF")


def air(fahrenheit, percent):
    """Air of that temperature and RH.

    Parameters
    ----------
    fahrenheit : float
        [degF], -76 to 203.
    percent : float
        RH [%], 0 to 100.

    Returns
    -------
    Air

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> round(air(70, 40).vapor_pressure)
    1002
    """
    return Air(to_si(float(fahrenheit), "degF"), percent / 100)


def state(assembly, indoor, outdoor):
    """The steady state between two airs.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : (float, float)
        Air on each side: [degF] and RH [%].

    Returns
    -------
    steady.Profile

    Examples
    --------
    >>> len(state(roof(), (70, 40), (20, 80)).wet_planes)
    0
    """
    return steady.profile(assembly, air(*indoor), air(*outdoor))


def gain(assembly, indoor, outdoor):
    """Water that stays in the roof on such a day.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : (float, float)
        Air on each side: [degF] and RH [%].

    Returns
    -------
    float
        [g/m2/day]

    Examples
    --------
    >>> round(gain(roof(1.0, "OSB"), (70, 40), (20, 80)), 1)
    1.8
    """
    return from_si(state(assembly, indoor, outdoor).gain, "g/m2/day")


def verdict(assembly, indoor, outdoor):
    """What such a day, if it never ended, would mean to the roof.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : (float, float)
        Air on each side: [degF] and RH [%].

    Returns
    -------
    verdict.Verdict

    Examples
    --------
    >>> verdict(roof(1.0, "OSB"), (70, 40), (36, 80)).state
    'damp'
    """
    return of_steady(state(assembly, indoor, outdoor))


def damp_all_the_same(assembly, indoor, outdoor):
    """A sentence for a day on which no water gathers and that is not dry either.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : (float, float)
        Air on each side: [degF] and RH [%].

    Returns
    -------
    str
        Empty where it is dry or wet.

    Examples
    --------
    >>> damp_all_the_same(roof(1.0, "OSB"), (70, 40), (36, 80))
    ' It is damp all the same: the wood would settle at 22 % MC.'
    """
    found = verdict(assembly, indoor, outdoor)
    if found.state != DAMP or found.worst.what == "steady-gain":
        return ""
    wood = found.worst.what == "wood-moisture"
    why = f"the wood would settle at {found.worst.value:.0f} % MC" if wood else "mold can grow there"
    return f" It is damp all the same: {why}."


def line_inches(assembly, indoor, outdoor):
    """How far into the fill the dew-point line lies.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : (float, float)
        Air on each side: [degF] and RH [%].

    Returns
    -------
    float or None
        [in.] from the room side of the fill; None without a line.

    Examples
    --------
    >>> round(line_inches(roof(), (70, 40), (20, 80)), 1)
    5.9
    """
    depth = state(assembly, indoor, outdoor).dew_point_depth
    if depth is None:
        return None
    start = sum(each.thickness or 0.0 for each in assembly.layers[: assembly.index(FILL)])
    return from_si(depth - start, "in")


def face(assembly, indoor, outdoor, layer=OUTER, side=0):
    """Temperature and RH at one face of one layer.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : (float, float)
        Air on each side: [degF] and RH [%].
    layer : str
        Its name.
    side : int
        0 for the inside face, 1 for the outside face.

    Returns
    -------
    tuple of (float, float)
        [degF] and [%].

    Examples
    --------
    >>> [round(each) for each in face(roof(), (70, 40), (20, 80))]
    [21, 79]
    """
    found = state(assembly, indoor, outdoor)
    node = found.face(layer, side)
    return from_si(float(found.temperature[node]), "degF"), 100 * float(found.relative_humidity[node])


def film_state(assembly, indoor, outdoor):
    """What the film feels, and how open it is.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : (float, float)
        Air on each side: [degF] and RH [%].

    Returns
    -------
    tuple of float
        RH at its room face, at its outer face, and their mean [%]; its perms.

    Examples
    --------
    >>> [round(each, 1) for each in film_state(roof(), (70, 40), (20, 80))]
    [40.7, 13.6, 27.2, 0.5]
    """
    inside, outside = (face(assembly, indoor, outdoor, FILM, side)[1] for side in (0, 1))
    mean = 0.5 * (inside + outside)
    return inside, outside, mean, from_si(assembly.layer(FILM).substance.at_mean(mean / 100), "perm")
