"""One thing of a case changed, the rest as it is: for sliders, batches and bands."""

import dataclasses
from typing import Any

import numpy as np

from dryward.building import AirSpace, Assembly, FixedMembrane, Material
from dryward.checks import OutOfRange, UnknownName, within
from dryward.language import called, message
from dryward.physics.airleak import LONG_SHARE
from dryward.physics.hourly.air_paths import AirFlow
from dryward.weather import Air
from dryward.weather.indoor import Room

#: Keywords of `hourly.simulate`.
Options = dict[str, Any]
_Curve = float | tuple[tuple[float, float], ...]
#: Variables that belong to no layer.
GENERAL = (
    "indoor_temperature", "indoor_relative_humidity", "leak", "long_share", "vent", "absorptance", "azimuth", "slope",
)  # fmt: skip
_OF_A_LAYER = ("permeance", "thermal_resistance", "thickness", "conductivity", "sorption")
_UNITS = {
    "permeance": ("Permeance", 0.0, 1.0, "kg/(s m2 Pa)"),
    "thermal_resistance": ("Thermal resistance", 1e-4, 50.0, "m2 K/W"),
    "thickness": ("Thickness", 1e-4, 3.0, "m"),
    "conductivity": ("Factor on the conductivity", 0.05, 20.0, ""),
    "sorption": ("Factor on the sorption", 0.05, 20.0, ""),
}


def variables(assembly: Assembly) -> dict[str, tuple[str | None, str]]:
    """What can be varied in an hourly case: keyword -> (layer name or None, property).

    For a layer, by its name with underscores: ``..._permeance``,
    ``..._thermal_resistance``, ``..._thickness``, and factors
    ``..._conductivity`` and ``..._sorption``.  Besides: the room's air,
    ``leak`` (of an `airleak.Leak` its coefficient, otherwise the air flow),
    ``long_share`` of the leak, ``vent`` [m3/(s m2)], ``absorptance``,
    ``azimuth`` and ``slope`` [degrees].
    """
    found: dict[str, tuple[str | None, str]] = {name: (None, name) for name in GENERAL}
    for layer in assembly.layers:
        count = 1
        if isinstance(layer.substance, Material):
            count = len(_OF_A_LAYER)
        elif isinstance(layer.substance, AirSpace):
            count = 2
        for what in _OF_A_LAYER[:count]:
            found[f"{layer.name.replace(' ', '_').replace('-', '_')}_{what}"] = (layer.name, what)
    return found


def varied(
    assembly: Assembly, indoor: Room, options: Options, variable: str, value: float
) -> tuple[Assembly, Room, Options]:
    """Assembly, room air and options of a case with one thing changed."""
    known = variables(assembly)
    if variable not in known:
        raise UnknownName("thing to vary", variable, known)
    name, what = known[variable]
    if name is not None:
        return changed(assembly, name, what, value), indoor, options
    if what.startswith("indoor"):
        if not isinstance(indoor, Air):
            raise OutOfRange(message("physics.room-by-rule"))
        part = what.removeprefix("indoor_")
        return assembly, dataclasses.replace(indoor, **{part: float(value)}), options
    if what == "slope":
        return dataclasses.replace(assembly, slope=float(value)), indoor, options
    if what in ("absorptance", "azimuth"):
        surface = options.get("surface")
        if surface is None:
            raise OutOfRange(message("physics.needs-a-surface", what=called(what)))
        return assembly, indoor, {**options, "surface": dataclasses.replace(surface, **{what: float(value)})}
    return assembly, indoor, {**options, **_of_the_air(options, what, float(value))}


def _of_the_air(options: Options, what: str, value: float) -> Options:
    """The option that a change of vent air or leak is."""
    if what == "vent":
        return {"vent": value}
    leak = options.get("leak")
    if leak is None:
        if what == "long_share":
            raise OutOfRange(message("physics.needs-a-leak"))
        return {"leak": AirFlow(value, LONG_SHARE)}
    if what == "leak":
        what = "rate" if isinstance(leak, AirFlow) else "coefficient"
    return {"leak": dataclasses.replace(leak, **{what: value})}


def changed(assembly: Assembly, name: str, what: str, value: float) -> Assembly:
    """An assembly with one property of one layer changed; conductivity and sorption by a factor.

    A permeance scales the whole curve of a material so that it has this
    value at 50 %; a membrane becomes a fixed one.  A thermal resistance
    changes the thickness of a material.
    """
    if what not in _UNITS:
        raise UnknownName("property", what, _UNITS)
    words, low, high, unit = _UNITS[what]
    value = within(words, value, low, high, unit, of=name)
    layer = assembly.layer(name)
    substance = layer.substance
    if isinstance(substance, AirSpace):
        space: Options = {{"permeance": "vapor_permeance"}.get(what, what): value}
        return assembly.replace(name, dataclasses.replace(substance, **space))
    if layer.is_membrane:
        return assembly.replace(name, FixedMembrane(value, layer.membrane.origin))
    substance = layer.material
    if what == "thickness":
        return assembly.replace(name, thickness=value)
    if what == "thermal_resistance":
        return assembly.replace(name, thickness=value * substance.conductivity_at(0.0))
    if what == "permeance":
        factor = value / layer.permeance if layer.permeance else 0.0
        new: Options = {"vapor_permeability": _scaled(substance.vapor_permeability, factor)}
    elif what == "conductivity":
        new = {"conductivity": _scaled(substance.conductivity, value)}
    else:
        new = {"sorption": tuple((rh, w * value) for rh, w in substance.sorption)}
        if substance.liquid_conductivity is not None:  # it is given over water content: keep it with the humidity
            new["liquid_conductivity"] = tuple((w * value, k) for w, k in substance.liquid_conductivity)
        if isinstance(substance.conductivity, tuple):
            new["conductivity"] = tuple((w * value, k) for w, k in substance.conductivity)
    return assembly.replace(name, dataclasses.replace(substance, **new))


def _scaled(curve: _Curve, factor: float) -> _Curve:
    if isinstance(curve, float):
        return curve * factor
    return tuple((x, float(np.multiply(value, factor))) for x, value in curve)
