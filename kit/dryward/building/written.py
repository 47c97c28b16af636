"""An assembly as plain tables of numbers and words, and back.

The tables are what a TOML file holds.  A bare number is SI; a text carries
its unit ("3/4 in", "R-20", "0.7 perm", "sd 2.5 m").  What the kit writes
holds every property of every layer, so the file opens without the library.
What a person writes may name a library id instead.
"""

import dataclasses
import math

from dryward import storage
from dryward.building import library, origins
from dryward.building.assembly import Assembly
from dryward.building.layers import THICKEST, AirSpace, Framing, Layer
from dryward.building.materials import CONDUCTS, PASSES, Material
from dryward.building.membranes import FixedMembrane, LaminateMembrane, Origin, VariableMembrane
from dryward.building.typed_table import LONGEST_TEXT, ORIGIN, TypedTable
from dryward.checks import BadFile, PlainError, listed
from dryward.units import from_si

_MOST_LAYERS = 60
_MATERIAL = (
    "density",
    "specific_heat",
    "conductivity",
    "vapor_permeability",
    "sorption",
    "liquid_conductivity",
    "wood",
)
_RESISTANCE, _PERMEANCE = "thermal resistance", "permeance"
#: What the origin of a value that stands in a layer's own table says.
_GIVEN = "given with the layer"

# Its version 1 said "layers", "inside_film", "outside_film" and "pitch", gave
# thickness in mm and permeance in perm as bare numbers.
_RENAMED = {"layers": "layer", "inside_film": "interior_film", "outside_film": "exterior_film", "pitch": "slope"}


def _from_1(table):
    new = {_RENAMED.get(key, key): value for key, value in table.items()}
    layers = []
    if not isinstance(new.get("layer", []), list):
        raise BadFile("its layers must be written as [[layers]]")
    for layer in new.get("layer", ()):
        if isinstance(layer, dict):
            layer = dict(layer)
            for old, key, unit in (("thickness_mm", "thickness", "mm"), ("perms", "permeance", "perm")):
                if old in layer:
                    layer[key] = f"{layer.pop(old)} {unit}"
        layers.append(layer)
    return {**new, "layer": layers}


#: A whole assembly.
FORMAT = storage.Format("dryward assembly", 2, {1: _from_1})


def _without_empty(table):
    return {key: value for key, value in table.items() if value not in ("", None, {}, [], False)}


def _plain(value):
    return [list(row) for row in value] if isinstance(value, tuple) else value


def _origin_table(thing):
    spans = {name: [low, high] for name, low, high in thing.ranges}
    return {**{key: getattr(thing, key) for key in ORIGIN[:-1]}, "ranges": spans}


def substance_table(thing):
    """A material, membrane or air space as a table.

    Parameters
    ----------
    thing : Material, membrane or AirSpace

    Returns
    -------
    dict
        Of numbers [SI], texts, lists and tables.

    Examples
    --------
    >>> substance_table(FixedMembrane(5.7e-11))["kind"]
    'fixed'
    """
    if isinstance(thing, Material):
        table = {key: _plain(getattr(thing, key)) for key in _MATERIAL}
        more = {key: table.pop(key) for key in ("sorption", "liquid_conductivity", "wood")}
        return {**table, **_without_empty({**more, **_origin_table(thing)})}
    if isinstance(thing, AirSpace):
        table = {"thermal_resistance": thing.thermal_resistance, "vapor_permeance": thing.vapor_permeance}
        return {**table, **_without_empty({"vented": thing.vented, **_origin_table(thing)})}
    words = _without_empty(_origin_table(thing.origin))
    if isinstance(thing, FixedMembrane):
        return {"kind": "fixed", "permeance": thing.level, **words}
    if isinstance(thing, VariableMembrane):
        return {"kind": "variable", "points": _plain(thing.points), **words}
    sheets = {"sensitive": substance_table(thing.sensitive), "backing": substance_table(thing.backing)}
    return {"kind": "laminate", **_without_empty({"turned": thing.turned}), **words, **sheets}


def _material(place, value):
    if isinstance(value, str):
        return library.material(value)
    table = TypedTable(place, value, _MATERIAL + ORIGIN)
    return Material(
        **table.origin(),
        density=table.quantity("density", "density"),
        specific_heat=table.quantity("specific_heat"),
        conductivity=table.curve("conductivity", "conductivity"),
        vapor_permeability=table.curve("vapor_permeability", "permeability", "relative humidity"),
        sorption=table.points("sorption", "relative humidity"),
        liquid_conductivity=table.points("liquid_conductivity") if "liquid_conductivity" in table else None,
        wood=table.flag("wood"),
    )


def _membrane(place, value, kinds=("fixed", "variable", "laminate")):
    if isinstance(value, str):
        return library.membrane(value)
    words = ("kind", "permeance", "points", "sensitive", "backing", "turned")
    table = TypedTable(place, value, words + ORIGIN)
    origin = Origin(**table.origin())
    kind = table.text("kind", "variable" if "points" in table else "laminate" if "sensitive" in table else "fixed")
    if kind not in kinds:
        raise table.wrong("kind", " or ".join(kinds))
    if kind == "fixed":
        return FixedMembrane(table.quantity("permeance", _PERMEANCE), origin)
    if kind == "variable":
        points = table.points("points", "relative humidity", _PERMEANCE)
        return VariableMembrane([rh for rh, _ in points], [level for _, level in points], origin)
    for key in ("sensitive", "backing"):
        if key not in table:
            raise BadFile(f"{place}: {key} is missing")
    sensitive = _membrane(f"{place}, sensitive", value["sensitive"], ("variable",))
    if isinstance(value["backing"], dict):
        backing = _membrane(f"{place}, backing", value["backing"], ("fixed",))
    else:
        backing = table.quantity("backing", _PERMEANCE)
    return LaminateMembrane(sensitive, backing, table.flag("turned"), origin)


def _air_space(place, value):
    if isinstance(value, str):
        return library.air_space(value)
    table = TypedTable(place, value, ("thermal_resistance", "vapor_permeance", "vented", *ORIGIN))
    return AirSpace(
        **table.origin(),
        thermal_resistance=table.quantity("thermal_resistance", _RESISTANCE),
        vapor_permeance=table.quantity("vapor_permeance", _PERMEANCE, math.inf),
        vented=table.flag("vented"),
    )


_KINDS = {"material": _material, "membrane": _membrane, "air_space": _air_space}


def _typed(table, key):
    value = table.table[key]
    return f'"{value[:40]}"' if isinstance(value, str) else f"{value:.6g}"


def _checked(table, thickness):
    """Refuse what no layer has, in the words that were typed, before anything is worked out from it."""
    if thickness is None:
        return
    if not 0 < thickness <= THICKEST:
        most = f"{THICKEST:g} m ({from_si(THICKEST, 'in'):.0f} in.)"
        raise table.wrong("thickness", f"above 0 and at most {most}, not {_typed(table, 'thickness')}")
    if "material" not in table:
        return
    if "thermal_resistance" in table:
        low, high = (from_si(thickness / each, "R") for each in reversed(CONDUCTS))
        if not low <= from_si(table.quantity("thermal_resistance", _RESISTANCE), "R") <= high:
            span = f"R-{low:.2g} to R-{high:.0f} at this thickness"
            raise table.wrong("thermal_resistance", f"{span}, not {_typed(table, 'thermal_resistance')}")
    if "permeance" in table:
        most = PASSES / thickness
        if not 0 <= table.quantity("permeance", _PERMEANCE) <= most:
            span = f"0 to {from_si(most, 'perm'):.4g} perm at this thickness"
            raise table.wrong("permeance", f"{span}, not {_typed(table, 'permeance')}")


def _measured(table, thing, thickness):
    """The substance with a permeance or a resistance given for the whole layer."""
    _checked(table, thickness)
    change = {}
    if "permeance" in table:
        level = table.quantity("permeance", _PERMEANCE)
        if isinstance(thing, Material) and thickness:
            change["vapor_permeability"] = level * thickness
        elif isinstance(thing, AirSpace):
            change["vapor_permeance"] = level
        elif isinstance(thing, FixedMembrane):
            return origins.given(FixedMembrane(level, thing.origin), "permeance", _GIVEN)
        else:
            raise table.wrong("permeance", "given for a material with a thickness, an air space or a fixed membrane")
    if "thermal_resistance" in table:
        resistance = table.quantity("thermal_resistance", _RESISTANCE)
        if isinstance(thing, Material) and thickness and resistance > 0:
            change["conductivity"] = thickness / resistance
        elif isinstance(thing, AirSpace):
            change["thermal_resistance"] = resistance
        else:
            raise table.wrong("thermal_resistance", "above 0, for a material with a thickness or an air space")
    what = listed([key.replace("_", " ") for key in ("permeance", "thermal_resistance") if key in table])
    return origins.given(dataclasses.replace(thing, **change), what, _GIVEN) if change else thing


def _layer(number, value):
    name = value.get("name") if isinstance(value, dict) else None
    place = f"layer {number}" + (f" ({name[:40]})" if isinstance(name, str) and name else "")
    try:
        table = TypedTable(
            place, value, ("name", "thickness", "open_to_air", *_KINDS, "permeance", "thermal_resistance")
        )
        kinds = [kind for kind in _KINDS if kind in table]
        if len(kinds) != 1:
            raise BadFile(f"{place}: it must have one of material, membrane or air_space")
        thing = _KINDS[kinds[0]](place, value[kinds[0]])
        thickness = table.quantity("thickness", "length") if "thickness" in table else None
        opened = table.flag("open_to_air") if "open_to_air" in table else None
        return Layer(_measured(table, thing, thickness), thickness, table.text("name"), opened)
    except BadFile:
        raise
    except PlainError as error:
        raise BadFile(f"{place}: {str(error).rstrip('.?')}") from None


_FILMS = (
    ("interior_film", _RESISTANCE),
    ("exterior_film", _RESISTANCE),
    ("interior_vapor_film", _PERMEANCE),
    ("exterior_vapor_film", _PERMEANCE),
)


def assembly(table):
    """An assembly from the table of a file of the present version.

    Parameters
    ----------
    table : dict

    Returns
    -------
    Assembly

    Raises
    ------
    BadFile
        With the place and what is wrong there, without a full stop.
    OutOfRange, NotUnderstood, UnknownName
        For values of the whole assembly.

    Examples
    --------
    >>> found = assembly({"name": "wall", "layer": [{"material": "gypsum-board", "thickness": "1/2 in"}]})
    >>> round(found.thickness, 4)
    0.0127
    """
    known = ("format", "version", "name", "slope", "notes", "framing", "layer", *(key for key, _ in _FILMS))
    top = TypedTable("the top of the file", table, known)
    layers = table.get("layer", [])
    if not isinstance(layers, list):
        raise BadFile("the layers must be written as [[layer]]")
    if len(layers) > _MOST_LAYERS:
        raise BadFile(f"it has {len(layers)} layers; it must have 1 to {_MOST_LAYERS}")
    framing = None
    if "framing" in table:
        inner = TypedTable("framing", table["framing"], ("share", "material", "layers"))
        if "material" not in inner:
            raise BadFile("framing: material is missing")
        share = inner.quantity("share", "relative humidity")
        framing = Framing(share, _material("framing", table["framing"]["material"]), inner.names("layers"))
    return Assembly(
        name=top.text("name", "without a name"),
        layers=tuple(_layer(number, each) for number, each in enumerate(layers, 1)),
        slope=top.quantity("slope", default=0.0),
        notes=top.text("notes", longest=LONGEST_TEXT),
        framing=framing,
        **{key: top.quantity(key, quantity) for key, quantity in _FILMS if key in top},
    )


def table(built):
    """The table of an assembly, complete, in the present version.

    Parameters
    ----------
    built : Assembly

    Returns
    -------
    dict
        What a file holds.

    Examples
    --------
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> table(Assembly("wall", [Layer(board, 0.016)]))["layer"][0]["thickness"]
    0.016
    """
    found = FORMAT.headed({"name": built.name, "slope": built.slope})
    found |= {key: getattr(built, key) for key, _ in _FILMS}
    if built.notes:
        found["notes"] = built.notes
    if built.framing:
        found["framing"] = {
            "share": built.framing.share,
            "layers": list(built.framing.layers),
            "material": substance_table(built.framing.material),
        }
    found["layer"] = []
    for layer in built.layers:
        kind = "membrane" if layer.is_membrane else "air_space" if isinstance(layer.substance, AirSpace) else "material"
        row = {"name": layer.name}
        if layer.thickness is not None:
            row["thickness"] = layer.thickness
        if layer.open_to_air is not None:
            row["open_to_air"] = layer.open_to_air
        found["layer"].append({**row, kind: substance_table(layer.substance)})
    return found
