"""The roof that the questions are asked about, and the steady answers on it.

It is the preset vault of the library: painted drywall, a service cavity, the
film, 12 in. of fiber, an outer layer, and the vent space.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable
from functools import cache

from dryward.building import AirSpace, Assembly, FixedMembrane, Layer, Material, VariableMembrane, preset
from dryward.building.library import membrane
from dryward.language import message
from dryward.physics import steady
from dryward.teaching import words
from dryward.units import from_si, to_si
from dryward.verdict import DAMP, Verdict, of_steady
from dryward.weather import Air

#: The outer layers and the preset that has each, with its perms.
OUTERS = {
    "open membrane": ("vented-vault", 50.0),
    "fiberboard": ("vented-vault-fiberboard", 20.0),
    "OSB": ("vented-vault-osb", 1.5),
    "closed sheet": ("vented-vault-closed", 0.1),
}
#: Air on one side: [degF] and RH [%].
Side = tuple[float, float]
FILM, FILL, OUTER, CAVITY = "inner membrane", "insulation", "outer layer", "service cavity"


def film(dry: float | None = None, wet: float | None = None) -> VariableMembrane:
    """The variable film of the lessons, or one of the same kind with other perms."""
    known = membrane("teaching-variable")
    assert isinstance(known, VariableMembrane)
    if dry is None or wet is None:
        return known
    return VariableMembrane([rh for rh, _ in known.points], (to_si(dry, "perm"), to_si(wet, "perm")))


@cache
def roof(
    inner: float | str | None = "variable",
    outer: str | float = "open membrane",
    inside_r: float | None = None,
    fill_r: float | None = None,
) -> Assembly:
    """The roof with one film and one outer layer."""
    built = preset(OUTERS[outer][0] if isinstance(outer, str) else OUTERS["open membrane"][0])
    if not isinstance(outer, str):
        built = built.replace(OUTER, FixedMembrane(to_si(outer, "perm")))
    if inner is None:
        built = dataclasses.replace(built, layers=tuple(each for each in built.layers if each.name != FILM))
    else:
        built = built.replace(FILM, film() if inner == "variable" else FixedMembrane(to_si(inner, "perm")))
    if inside_r is not None:
        old = built.layer(CAVITY).air_space
        built = built.replace(CAVITY, AirSpace(to_si(inside_r, "R"), old.vapor_permeance))
    if fill_r is not None:
        fill = built.layer(FILL)
        conductivity = fill.drawn_thickness / to_si(fill_r, "R")
        built = built.replace(FILL, dataclasses.replace(fill.material, conductivity=conductivity))
    return built


def stack(*layers: tuple[str, float, float]) -> Assembly:
    """A plain assembly of layers given as (name, inches, R), with no films."""
    made = []
    for name, inches, r in layers:
        thickness = to_si(float(inches), "in")
        substance = Material(name.replace(" ", "-"), name, 50, 1000, thickness / to_si(float(r), "R"), 1e-11)
        made.append(Layer(substance, thickness, name))
    return Assembly("stack", tuple(made), interior_film=0.0, exterior_film=0.0)


def plane(layers: Iterable[tuple[str, float, float]], inside: float, outside: float, name: str) -> float:
    """Temperature [degF] at the outside face of one layer of a stack."""
    found = steady.profile(stack(*layers), air(inside, 0.1), air(outside, 0.1))
    return from_si(float(found.temperature[found.face(name, 1)]), "degF")


def air(fahrenheit: float, percent: float) -> Air:
    """Air of that temperature and RH."""
    return Air(to_si(float(fahrenheit), "degF"), percent / 100)


def state(assembly: Assembly, indoor: Side, outdoor: Side) -> steady.Profile:
    """The steady state between two airs."""
    return steady.profile(assembly, air(*indoor), air(*outdoor))


def gain(assembly: Assembly, indoor: Side, outdoor: Side) -> float:
    """Water that stays in the roof on such a day."""
    return from_si(state(assembly, indoor, outdoor).gain, "g/m2/day")


def verdict(assembly: Assembly, indoor: Side, outdoor: Side) -> Verdict:
    """What such a day, if it never ended, would mean to the roof."""
    return of_steady(state(assembly, indoor, outdoor))


def why_damp(assembly: Assembly, indoor: Side, outdoor: Side) -> str:
    """Why a day on which no water gathers is damp all the same; empty where it is not."""
    found = verdict(assembly, indoor, outdoor)
    if found.state != DAMP or found.worst is None or found.worst.what == "steady-gain":
        return ""
    if found.worst.what == "wood-moisture":
        return message("vault.wood-settles", moisture=words.number(round(found.worst.value), "%"))
    return message("vault.mold-can-grow")


def damp_all_the_same(assembly: Assembly, indoor: Side, outdoor: Side) -> str:
    """A sentence for a day on which no water gathers and that is not dry either."""
    why = why_damp(assembly, indoor, outdoor)
    return f" {message('vault.damp-all-the-same', why=why)}" if why else ""


def face(assembly: Assembly, indoor: Side, outdoor: Side, layer: str = OUTER, side: int = 0) -> tuple[float, float]:
    """Temperature and RH at one face of one layer."""
    found = state(assembly, indoor, outdoor)
    node = found.face(layer, side)
    return from_si(float(found.temperature[node]), "degF"), 100 * float(found.relative_humidity[node])


def film_state(assembly: Assembly, indoor: Side, outdoor: Side) -> tuple[float, float, float, float]:
    """What the film feels, and how open it is."""
    inside, outside = (face(assembly, indoor, outdoor, FILM, side)[1] for side in (0, 1))
    mean = 0.5 * (inside + outside)
    return inside, outside, mean, from_si(assembly.layer(FILM).membrane.permeance(inside / 100, outside / 100), "perm")
