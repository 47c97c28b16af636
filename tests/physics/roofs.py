"""Small roofs and walls that the physics tests share."""

from dryward import units
from dryward.building import AirSpace, Assembly, FixedMembrane, Layer, Material, VariableMembrane
from dryward.weather import Air


def perm(value):
    return units.to_si(value, "perm")


def r(value):
    return units.to_si(value, "R")


def fahrenheit(value):
    return units.to_si(value, "degF")


def inches(value):
    return units.to_si(value, "in")


def grams_a_day(flux):
    return units.from_si(flux, "g/m2/day")


#: Opens from 0.5 perm at a mean RH of 30 % to 13 perm at 80 %; invented for teaching.
VARIABLE = VariableMembrane((0.3, 0.8), (perm(0.5), perm(13)))
JANUARY = (Air(fahrenheit(70), 0.4), Air(fahrenheit(20), 0.8))
JULY = (Air(fahrenheit(75), 0.5), Air(fahrenheit(85), 0.75))


def sheet(perms):
    return FixedMembrane(perm(perms))


def vault(inner=None, outer=50.0, outer_r=0.0, fill_r=44.0, cavity_r=1.0):
    """The vented vault: painted drywall, cavity, film, 12 in. of fiber, outer layer, vent."""
    fill = Material("fiber", "fiber", 40, 840, inches(12) / r(fill_r), perm(10) * inches(12))
    layers = [
        Layer(AirSpace(r(0.45), perm(1 / (1 / 40 + 1 / 7))), inches(0.5), "drywall"),
        Layer(AirSpace(r(cavity_r), perm(80)), inches(1.5), "cavity"),
    ]
    if inner is not None:
        layers.append(Layer(inner, name="film"))
    layers += [
        Layer(fill, inches(12), "fill"),
        Layer(AirSpace(r(outer_r), perm(outer)), inches(0.5), "outer"),
        Layer(AirSpace(r(0.6), vented=True), inches(2), "vent"),
    ]
    return Assembly("vault", layers, interior_film=r(0.61))
