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
from dryward.weather.conditions import Air

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
    """
    found = steady.profile(stack(*layers), air(inside, 0.1), air(outside, 0.1))
    return from_si(float(found.temperature[found.face(name, 1)]), "degF")


def air(fahrenheit, percent):
    """Air of that temperature [degF] and RH [%]."""
    return Air(to_si(float(fahrenheit), "degF"), percent / 100)


def state(assembly, indoor, outdoor):
    """The steady state between two airs, each as (degF, percent).

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : (float, float)

    Returns
    -------
    steady.Profile
    """
    return steady.profile(assembly, air(*indoor), air(*outdoor))


def gain(assembly, indoor, outdoor):
    """Water that stays in the roof on such a day [g/m2/day]."""
    return from_si(state(assembly, indoor, outdoor).gain, "g/m2/day")


def line_inches(assembly, indoor, outdoor):
    """How far into the fill the dew-point line lies [in.], from the room side; None without one."""
    depth = state(assembly, indoor, outdoor).dew_point_depth
    if depth is None:
        return None
    start = sum(each.thickness or 0.0 for each in assembly.layers[: assembly.index(FILL)])
    return from_si(depth - start, "in")


def face(assembly, indoor, outdoor, layer=OUTER, side=0):
    """Temperature [degF] and RH [%] at the inside face (0) or the outside face (1) of one layer."""
    found = state(assembly, indoor, outdoor)
    rung = found.face(layer, side)
    return from_si(float(found.temperature[rung]), "degF"), 100 * float(found.relative_humidity[rung])


def film_state(assembly, indoor, outdoor):
    """RH at both faces of the film [%], their mean [%], and its perms."""
    inside, outside = (face(assembly, indoor, outdoor, FILM, side)[1] for side in (0, 1))
    mean = 0.5 * (inside + outside)
    return inside, outside, mean, from_si(assembly.layer(FILM).substance.at_mean(mean / 100), "perm")
