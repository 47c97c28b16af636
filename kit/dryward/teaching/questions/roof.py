"""The roof that the questions are asked about, and the steady answers on it.

Inside to outside: painted drywall, a service cavity, the film, 12 in. of
fiber R-44, an outer layer, and the vent space.  Its numbers are round ones
made up for teaching.
"""

import math
from functools import cache

from dryward.building import AirSpace, Assembly, FixedMembrane, Layer, Material, VariableMembrane
from dryward.physics import steady
from dryward.units import from_si, to_si
from dryward.weather.conditions import Air

#: The variable film of all lessons, made up for teaching: mean RH [-] and perms.
FILM_HUMIDITY, FILM_PERMS = (0.3, 0.8), (0.5, 13.0)
#: Perms of the outer layers, and R of a board among them.
OUTERS = {"open membrane": (50.0, 0.0), "fiberboard": (20.0, 4.0), "OSB": (1.5, 0.6), "closed sheet": (0.1, 0.0)}
#: Inches and R of the fill.
FILL_INCHES, FILL_R = 12.0, 44.0


def film(dry=FILM_PERMS[0], wet=FILM_PERMS[1]):
    """The variable film, by its perms when dry and when damp.

    Parameters
    ----------
    dry, wet : float
        [perm]

    Returns
    -------
    VariableMembrane
    """
    return VariableMembrane(FILM_HUMIDITY, (to_si(dry, "perm"), to_si(wet, "perm")))


def _slab(name, inches, r, perms):
    """A plain layer of that R and those perms, whatever its thickness."""
    thickness = to_si(inches, "in")
    conductivity = thickness / to_si(r, "R") if r else 500.0
    return Layer(
        Material(name.replace(" ", "-"), name, 100, 1500, conductivity, to_si(perms, "perm") * thickness),
        thickness,
        name,
    )


@cache
def roof(inner="variable", outer="open membrane", inside_r=1.0, fill_r=FILL_R):
    """The roof with one film and one outer layer.

    Parameters
    ----------
    inner : float, "variable" or None
        Perms of the film; None for no film.
    outer : str or float
        A key of `OUTERS`, or the perms of a thin outer layer.
    inside_r : float
        R of the service cavity.
    fill_r : float

    Returns
    -------
    Assembly
        With layers "drywall", "service cavity", "film", "fill", "outer layer".
    """
    perms, r = OUTERS[outer] if isinstance(outer, str) else (outer, 0.0)
    layers = [
        _slab("drywall", 0.5, 0.45, 1 / (1 / 40 + 1 / 7)),
        _slab("service cavity", 1.5, inside_r, 80.0),
        _slab("fill", FILL_INCHES, fill_r, 10.0),
        _slab("outer layer", 0.5, r, perms) if r else Layer(FixedMembrane(to_si(perms, "perm")), None, "outer layer"),
        Layer(AirSpace(to_si(0.6, "R"), math.inf, vented=True), to_si(1.5, "in"), "vent space"),
    ]
    if inner is not None:
        sheet = film() if inner == "variable" else FixedMembrane(to_si(inner, "perm"))
        layers.insert(2, Layer(sheet, None, "film"))
    return Assembly("teaching roof", tuple(layers), interior_film=to_si(0.61, "R"))


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
    return from_si(sum(plane.rate for plane in state(assembly, indoor, outdoor).wet_planes), "g/m2/day")


def line_inches(assembly, indoor, outdoor):
    """How far into the fill the dew-point line lies [in.], from the room side; None without one."""
    depth = state(assembly, indoor, outdoor).dew_point_depth
    if depth is None:
        return None
    start = sum(each.thickness or 0.0 for each in assembly.layers[: assembly.index("fill")])
    return from_si(depth - start, "in")


def face_humidity(assembly, indoor, outdoor, layer="outer layer", side=0):
    """RH [%] at the inside face (0) or the outside face (1) of one layer."""
    found = state(assembly, indoor, outdoor)
    return 100 * float(found.relative_humidity[found.face(layer, side)])
