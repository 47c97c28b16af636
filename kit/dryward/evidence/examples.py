"""The published and worked examples as their sources write them: layers, and other saturation formulas.

One layer between bars: thickness ``d`` [m], conductivity ``k`` [W/(m K)] and
the ratio ``mu`` of still air's permeability to the material's; or ``R`` (US),
``r`` (SI) with ``perm`` (US) or ``sd`` [m].  What a source leaves out
(density, heat capacity) plays no part in these checks.

A number that was published with another saturation formula than the kit's is
checked with it, so that the tolerance measures the method and not the
formula.  The kit itself uses only the one equation in `dryward.air`.
"""

from typing import overload

import numpy as np

from dryward.building import AirSpace, Assembly, FixedMembrane, Layer, Material
from dryward.checks import BadFile, Floats
from dryward.language import message
from dryward.units import to_si

#: Layers from inside to outside.
EXAMPLES = {
    "masonry": "inner plaster d=0.015 k=0.70 mu=15 | masonry d=0.240 k=0.30 mu=10 | outer plaster d=0.020 k=0.87 mu=15",
    "A": "gypsum d=0.0125 k=0.25 mu=8 | wool d=0.060 k=0.035 mu=1 | brick d=0.365 k=0.68 mu=10"
    " | render d=0.020 k=0.87 mu=35",
    "A2": "gypsum d=0.0125 k=0.25 mu=8 | retarder sd=2.0 | wool d=0.060 k=0.035 mu=1 | brick d=0.365 k=0.68 mu=10"
    " | render d=0.020 k=0.87 mu=35",
    "D": "gypsum d=0.0125 k=0.25 mu=8 | retarder sd=5.0 | wool d=0.140 k=0.035 mu=1 | OSB d=0.012 k=0.13 mu=50"
    " | wood fiber d=0.06 k=0.045 mu=5 | render d=0.008 k=0.87 mu=20",
    "E4": "gypsum d=0.0125 k=0.25 mu=10 | wool d=0.140 k=0.035 mu=1 | OSB d=0.012 k=0.13 mu=50"
    " | EPS d=0.05 k=0.035 mu=60 | render d=0.005 k=0.87 mu=20",
    "E5": "gypsum d=0.0125 k=0.25 mu=10 | retarder sd=2.0 | wool d=0.140 k=0.035 mu=1 | OSB d=0.012 k=0.13 mu=50"
    " | wood fiber d=0.060 k=0.045 mu=5 | render d=0.008 k=0.87 mu=20",
    "walk": "paint perm=5.0 | gypsum R=0.45 perm=37.6 | fiberglass R=19.0 perm=21.0909090909 | OSB R=0.62 perm=0.91"
    " | sheet perm=54 | siding R=0.60",
    "board": "gypsum wallboard d=0.0095 k=0.16 mass=2.86e-9",
}
_PLATE = 0.01  # thickness that stands for a layer known by R and perms alone [m]


def plate(name: str, conductivity: float, permeability: float) -> Material:
    """A material whose density and heat capacity play no part."""
    return Material(name, name, 1000.0, 1000.0, conductivity, permeability)


def _layer(words: str) -> Layer:
    numbers = dict(part.split("=") for part in words.split() if "=" in part)
    name = " ".join(part for part in words.split() if "=" not in part)
    value = {key: float(number) for key, number in numbers.items()}
    permeance = None
    if "perm" in value:
        permeance = to_si(value["perm"], "perm")
    elif "sd" in value:
        permeance = to_si(value["sd"], "sd m")
    elif "mass" in value:
        permeance = value["mass"]
    resistance = to_si(value["R"], "R") if "R" in value else value.get("r")
    if "k" in value:
        depth = value["d"]
        permeability = to_si(value["mu"], "mu") if permeance is None else permeance * depth
        return Layer(plate(name, value["k"], permeability), depth)
    if resistance is None:
        if permeance is None:
            raise BadFile(message("evidence.layer-lacks", layer=name))
        return Layer(FixedMembrane(permeance), name=name)
    if permeance is None:
        return Layer(AirSpace(resistance), name=name)
    return Layer(plate(name, _PLATE / resistance, permeance * _PLATE), _PLATE)


def example(words: str, interior_film: float, exterior_film: float) -> Assembly:
    """An assembly from the name of an example, or from its layers in words."""
    try:
        layers = tuple(_layer(part) for part in EXAMPLES.get(words, words).split("|"))
    except (KeyError, ValueError) as trouble:
        raise BadFile(message("evidence.layers-not-understood", layers=words, trouble=str(trouble))) from trouble
    return Assembly(words, layers, interior_film, exterior_film)


@overload
def iso_13788(temperature: float) -> float: ...
@overload
def iso_13788(temperature: Floats) -> Floats: ...
def iso_13788(temperature: float | Floats) -> float | Floats:
    """Saturation pressure as ISO 13788 writes it, over ice below 0 degC.

    The two formulas with 610.5 Pa; read in documents that quote them (DIN
    4108-3:2024, equations C.15 and C.16).
    """
    t = np.asarray(temperature, dtype=float)
    water, ice = 17.269 * t / (237.3 + t), 21.875 * t / (265.5 + t)
    found = 610.5 * np.exp(np.where(t < 0, ice, water))
    return float(found) if np.ndim(temperature) == 0 else found


@overload
def power_form(temperature: float) -> float: ...
@overload
def power_form(temperature: Floats) -> Floats: ...
def power_form(temperature: float | Floats) -> float | Floats:
    """Saturation pressure by the power form of DIN 4108-3 before 2014; read in a textbook summary that quotes it."""
    t = np.asarray(temperature, dtype=float) / 100
    found = np.where(t < 0, 4.689 * (1.486 + t) ** 12.3, 288.68 * (1.098 + t) ** 8.02)
    return float(found) if np.ndim(temperature) == 0 else found


@overload
def magnus_over_water(temperature: float) -> float: ...
@overload
def magnus_over_water(temperature: Floats) -> Floats: ...
def magnus_over_water(temperature: float | Floats) -> float | Floats:
    """Saturation pressure by the Magnus form over water only, up to half as much again as over ice.

    The widespread coefficients 610.94 Pa, 17.625 and 243.04 degC; from memory.
    """
    t = np.asarray(temperature, dtype=float)
    found = 610.94 * np.exp(17.625 * t / (243.04 + t))
    return float(found) if np.ndim(temperature) == 0 else found
