"""One thing of a case changed, the rest as it is: for sliders, batches and bands."""

import dataclasses

import numpy as np

from dryward.building import AirSpace, FixedMembrane, Material
from dryward.checks import OutOfRange, UnknownName, within
from dryward.physics.airleak import LONG_SHARE
from dryward.physics.hourly.air_paths import AirFlow
from dryward.weather import Air

#: Variables that belong to no layer.
GENERAL = (
    "indoor_temperature", "indoor_relative_humidity", "leak", "long_share", "vent", "absorptance", "azimuth", "slope",
)  # fmt: skip
_OF_A_LAYER = ("permeance", "thermal_resistance", "thickness", "conductivity", "sorption")
_UNITS = {
    "permeance": ("Permeance", 0.0, 1.0, "kg/(s m² Pa)"),
    "thermal_resistance": ("Thermal resistance", 1e-4, 50.0, "m² K/W"),
    "thickness": ("Thickness", 1e-4, 3.0, "m"),
    "conductivity": ("Factor on the conductivity", 0.05, 20.0, ""),
    "sorption": ("Factor on the sorption", 0.05, 20.0, ""),
}


def variables(assembly):
    """What can be varied in an hourly case.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    dict
        Keyword -> (layer name or None, property).  For a layer, by its name
        with underscores: ``..._permeance`` [kg/(s m2 Pa)],
        ``..._thermal_resistance`` [m2 K/W], ``..._thickness`` [m], and
        factors ``..._conductivity`` and ``..._sorption`` [-].  Besides:
        ``indoor_temperature`` [degC], ``indoor_relative_humidity`` [-],
        ``leak`` (of an `airleak.Leak` its coefficient [m3/s], otherwise the
        air flow [kg/(s m2)]), ``long_share`` of the leak [-], ``vent``
        [m3/(s m2)], ``absorptance`` [-], ``azimuth`` and ``slope`` [degrees].

    Examples
    --------
    >>> from dryward import building
    >>> "deck_thickness" in variables(building.preset("vented-vault"))
    True
    """
    found = {name: (None, name) for name in GENERAL}
    for layer in assembly.layers:
        kinds = _OF_A_LAYER if isinstance(layer.substance, Material) else _OF_A_LAYER[:1]
        if isinstance(layer.substance, AirSpace):
            kinds = _OF_A_LAYER[:2]
        for what in kinds:
            found[f"{layer.name.replace(' ', '_').replace('-', '_')}_{what}"] = (layer.name, what)
    return found


def varied(assembly, indoor, options, variable, value):
    """Assembly, room air and options of a case with one thing changed.

    Parameters
    ----------
    assembly : Assembly
    indoor : Air or a rule of `weather.indoor`
    options : dict
        Keywords of `hourly.simulate`.
    variable : str
        A key of `variables`.
    value : float
        In its unit [SI]; any that the property allows.

    Returns
    -------
    tuple
        The three, changed.

    Raises
    ------
    UnknownName
        For a variable that is none of these.
    OutOfRange
        For a value out of range, or a change that does not fit the case.

    Examples
    --------
    >>> from dryward import building
    >>> vault = building.preset("vented-vault")
    >>> varied(vault, Air(20.0, 0.4), {}, "deck_thickness", 0.025)[0].layer("deck").thickness
    0.025
    """
    known = variables(assembly)
    if variable not in known:
        raise UnknownName("thing to vary", variable, known)
    name, what = known[variable]
    if name is not None:
        return changed(assembly, name, what, value), indoor, options
    if what.startswith("indoor"):
        if not isinstance(indoor, Air):
            raise OutOfRange("Room air that follows a rule has no temperature or humidity of its own to vary.")
        part = what.removeprefix("indoor_")
        return assembly, dataclasses.replace(indoor, **{part: float(value)}), options
    if what == "slope":
        return dataclasses.replace(assembly, slope=float(value)), indoor, options
    if what in ("absorptance", "azimuth"):
        surface = options.get("surface")
        if surface is None:
            raise OutOfRange(f"The {what} can be varied only when the case has an outer surface with sun and sky.")
        return assembly, indoor, {**options, "surface": dataclasses.replace(surface, **{what: float(value)})}
    return assembly, indoor, {**options, **_of_the_air(options, what, float(value))}


def _of_the_air(options, what, value):
    """The option that a change of vent air or leak is."""
    if what == "vent":
        return {"vent": value}
    leak = options.get("leak")
    if leak is None:
        if what == "long_share":
            raise OutOfRange("The long share can be varied only when the case has a leak.")
        return {"leak": AirFlow(value, LONG_SHARE)}
    if what == "leak":
        what = "rate" if isinstance(leak, AirFlow) else "coefficient"
    return {"leak": dataclasses.replace(leak, **{what: value})}


def changed(assembly, name, what, value):
    """An assembly with one property of one layer changed.

    Parameters
    ----------
    assembly : Assembly
    name : str
        Of the layer.
    what : {"permeance", "thermal_resistance", "thickness", "conductivity", "sorption"}
    value : float
        Of the property [SI]; the last two are factors, 0.05 to 20.

    Returns
    -------
    Assembly

    Raises
    ------
    UnknownName, OutOfRange
        For an unknown layer or property, or a value out of range.

    Notes
    -----
    A permeance scales the whole curve of a material so that it has this
    value at 50 %; a membrane becomes a fixed one.  A thermal resistance
    changes the thickness of a material.

    Examples
    --------
    >>> from dryward import building
    >>> vault = building.preset("vented-vault")
    >>> changed(vault, "deck", "permeance", 1e-11).layer("deck").permeance
    1e-11
    """
    if what not in _UNITS:
        raise UnknownName("property", what, _UNITS)
    words, low, high, unit = _UNITS[what]
    value = within(f"{words} of {name}", value, low, high, unit)
    layer = assembly.layer(name)
    substance = layer.substance
    if isinstance(substance, AirSpace):
        kind = {"permeance": "vapor_permeance"}.get(what, what)
        return assembly.replace(name, dataclasses.replace(substance, **{kind: value}))
    if layer.is_membrane:
        return assembly.replace(name, FixedMembrane(value, substance.origin))
    if what == "thickness":
        return assembly.replace(name, thickness=value)
    if what == "thermal_resistance":
        return assembly.replace(name, thickness=value * substance.conductivity_at(0.0))
    if what == "permeance":
        factor = value / layer.permeance if layer.permeance else 0.0
        new = {"vapor_permeability": _scaled(substance.vapor_permeability, factor)}
    elif what == "conductivity":
        new = {"conductivity": _scaled(substance.conductivity, value)}
    else:
        new = {"sorption": tuple((rh, w * value) for rh, w in substance.sorption)}
        if substance.liquid_conductivity is not None:  # it is given over water content: keep it with the humidity
            new["liquid_conductivity"] = tuple((w * value, k) for w, k in substance.liquid_conductivity)
        if not isinstance(substance.conductivity, float):
            new["conductivity"] = tuple((w * value, k) for w, k in substance.conductivity)
    return assembly.replace(name, dataclasses.replace(substance, **new))


def _scaled(curve, factor):
    if isinstance(curve, float):
        return curve * factor
    return tuple((x, float(np.multiply(value, factor))) for x, value in curve)
