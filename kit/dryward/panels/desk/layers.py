"""Layers."""

import dataclasses
import re

from dryward import building, units
from dryward.building import AirSpace, FixedMembrane, Layer, Material, Origin, VariableMembrane, library
from dryward.building.membranes import cup_membrane
from dryward.checks import OutOfRange
from dryward.panels.desk import parts

#: Characters of a source in the table of the layers, and in the table of what was found.
_NARROW, _WIDE = 60, 160
#: What the origin of a value that was typed here says.
_TYPED = "typed by the reader"
_HEAD = ("Layer, inside first", "Made of", "Thickness", "R", "Vapor", "Source", "")


def table(work, system, troubles, now):
    """The layers of a job as a table of the desk.

    Parameters
    ----------
    work : Work
    system : {"us", "si"}
    troubles : dict
        Key of a field -> what is wrong with what was typed there.
    now : int
        Row that new layers go outside of.

    Returns
    -------
    dict
    """
    rows = []
    count = len(work.job.assembly.layers)
    for k, layer in enumerate(work.job.assembly.layers):
        cells = [
            _field(f"layer:{k}:name", f"Name of layer {k + 1}", layer.name, troubles, 16),
            layer.substance.name,
            _thickness(k, layer, system, troubles),
            _resistance(k, layer, system, troubles),
            _vapor(k, layer, system, troubles),
            library.source_of(layer.substance, _NARROW),
            parts.row(
                parts.button(f"here:{k}", "+", label=f"Add or replace at {layer.name}", title="Add or replace here"),
                parts.button(f"layer:{k}:up", "↑", label=f"Move {layer.name} inward", disabled=k == 0),
                parts.button(f"layer:{k}:down", "↓", label=f"Move {layer.name} outward", disabled=k == count - 1),
                parts.button(f"layer:{k}:remove", "Remove", label=f"Remove {layer.name}", disabled=count == 1),
                style="dw-tight",
            ),
        ]
        rows.append((cells, "dw-now" if k == now else ""))
    return parts.table(_HEAD, rows)


def _field(key, label, value, troubles, size=8):
    return parts.field(key, label, value, bare=True, size=size, error=troubles.get(key, ""))


def _thickness(k, layer, system, troubles):
    if layer.is_membrane:
        return "sheet"
    shown = "" if layer.thickness is None else units.show(layer.thickness, "length", system, _digits(system))
    return _field(f"layer:{k}:thickness", f"Thickness of {layer.name}", shown, troubles)


def _digits(system):
    return 3 if system == "us" else 1


def _resistance(k, layer, system, troubles):
    if layer.is_membrane:
        return "—"
    shown = units.show(layer.thermal_resistance, "thermal resistance", system, 2)
    if system == "si":
        shown = f"RSI {shown.split()[0]}"
    return _field(f"layer:{k}:resistance", f"Thermal resistance of {layer.name}", shown, troubles)


def _vapor(k, layer, system, troubles):
    if layer.vented:
        return "vented"
    if layer.is_membrane and not isinstance(layer.substance, FixedMembrane):
        dry, wet = layer.substance.permeance(0.3, 0.2), layer.substance.permeance(0.9, 0.8)
        return f"{units.show(dry, 'permeance', system)} dry, {units.show(wet, 'permeance', system)} humid"
    if layer.permeance == float("inf"):
        return "open"
    shown = units.show(layer.permeance, "permeance", system)
    shown = f"sd {shown.split()[0]} m" if system == "si" else shown
    return _field(f"layer:{k}:permeance", f"Permeance of {layer.name}", shown, troubles, 9)


def found_table(found, system, put, over):
    """What the search found, with values and sources, each to be added or put in place of a layer.

    Parameters
    ----------
    found : sequence of (id, substance)
    system : {"us", "si"}
    put : str
        Layer, or "the room", outside of which it would go.
    over : str or None
        Layer whose substance it would replace.

    Returns
    -------
    dict
    """
    rows = []
    for id, thing in found:
        rows.append([
            thing.name,
            *_values(thing, system),
            library.source_of(thing, _WIDE),
            parts.row(
                parts.button(f"add:{id}", "Add", label=f"Add {thing.name} outside of {put}"),
                parts.button(f"replace:{id}", "Replace", label=f"Make {over} of {thing.name}") if over else None,
                style="dw-tight",
            ),
        ])  # fmt: skip
    return parts.table(("Found", "Heat", "Vapor", "Source", ""), rows)


def _values(thing, system):
    """Heat and vapor of a substance in words."""
    if isinstance(thing, Material):
        heat, level = thing.conductivity_at(0), thing.permeability_at(0.5)
        if system == "us":
            inch = units.INCH  # of the thing: R and perms of one inch
            return (
                f"R-{units.from_si(inch / heat, 'R'):.2g} per in.",
                f"{units.from_si(level / inch, 'perm'):.3g} perm-in.",
            )
        return f"{heat:.3g} W/(m K)", f"{level * 1e12:.3g} ng/(s m Pa)"
    if isinstance(thing, AirSpace):
        return f"R-{units.from_si(thing.thermal_resistance, 'R'):.2g}", "vented" if thing.vented else "air space"
    dry, wet = thing.permeance(0.5, 0.0), thing.permeance(0.9, 0.8)
    dry, wet = (units.show(each, "permeance", system) for each in (dry, wet))
    return "sheet", dry if dry == wet else f"{dry} dry, {wet} humid"


def edited(assembly, k, what, typed):
    """The assembly with one cell of its table typed anew.

    Parameters
    ----------
    assembly : Assembly
    k : int
        Row, from inside.
    what : {"name", "thickness", "resistance", "permeance", "up", "down", "remove"}
    typed : str

    Returns
    -------
    Assembly

    Raises
    ------
    NotUnderstood, OutOfRange
        For what cannot be meant.
    """
    layers = list(assembly.layers)
    if what in ("up", "down"):
        other = k + (-1 if what == "up" else 1)
        if not 0 <= other < len(layers):
            raise OutOfRange(f"The layer {layers[k].name} is already the outermost there.")
        layers[k], layers[other] = layers[other], layers[k]
    elif what == "remove":
        del layers[k]
    else:
        layers[k] = _typed(layers[k], what, typed)
    kept = _framing(
        assembly, {layer.name for layer in layers}, assembly.layers[k].name, layers[k].name if k < len(layers) else ""
    )
    return dataclasses.replace(assembly, layers=tuple(layers), framing=kept)


def _framing(assembly, names, old, new):
    """Framing that still runs through layers that exist."""
    if assembly.framing is None:
        return None
    wanted = [new if each == old and old not in names else each for each in assembly.framing.layers]
    left = tuple(each for each in wanted if each in names)
    return dataclasses.replace(assembly.framing, layers=left) if left else None


def _typed(layer, what, typed):
    substance = layer.substance
    if what == "name":
        name = str(typed).strip()[:60]
        if not name:
            raise OutOfRange("A layer needs a name.")
        return dataclasses.replace(layer, name=name)
    if what == "thickness":
        thickness = units.quantity(typed, "length")
        return dataclasses.replace(layer, thickness=thickness)
    if what == "resistance":
        resistance = units.quantity(typed, "thermal resistance", "R")
        if isinstance(substance, AirSpace):
            own = dataclasses.replace(substance, thermal_resistance=resistance)
            return dataclasses.replace(layer, substance=library.with_value_of(own, "thermal resistance", _TYPED))
        if not resistance > 0:
            raise OutOfRange(f"Thermal resistance of {layer.name} is {resistance:g}; it must be above 0 m² K/W.")
        own = dataclasses.replace(substance, conductivity=layer.thickness / resistance)
        return dataclasses.replace(layer, substance=library.with_value_of(own, "thermal resistance", _TYPED))
    level = units.quantity(typed, "permeance", "perm")
    if isinstance(substance, AirSpace):
        own = dataclasses.replace(substance, vapor_permeance=level)
    elif isinstance(substance, Material):
        own = dataclasses.replace(substance, vapor_permeability=level * layer.thickness)
    else:
        own = FixedMembrane(level, substance.origin)
    return dataclasses.replace(layer, substance=library.with_value_of(own, "permeance", _TYPED))


#: Thickness that a library material starts with, where nothing else is said [m].
_USUAL = 0.0127
#: Depth that an air space starts with [m].
_GAP = 0.038


def added(assembly, after, id):
    """The assembly with a thing of the library put outside a row.

    Parameters
    ----------
    assembly : Assembly
    after : int
        Row; -1 for innermost.
    id : str
        Of the library.

    Returns
    -------
    Assembly

    Raises
    ------
    UnknownName
        When the library has no such thing.
    """
    return put(assembly, after, building.substance(id))


def replaced(assembly, k, substance):
    """The assembly with a layer made of something else, its name and place kept.

    Parameters
    ----------
    assembly : Assembly
    k : int
        Row.
    substance : Material, membrane or AirSpace

    Returns
    -------
    Assembly
        A layer that was a sheet gets the usual thickness of its new kind.
    """
    old, layers = assembly.layers[k], list(assembly.layers)
    thickness = None
    if isinstance(substance, (Material, AirSpace)):
        thickness = old.thickness or (_GAP if isinstance(substance, AirSpace) else _USUAL)
    layers[k] = Layer(substance, thickness, old.name)
    return dataclasses.replace(assembly, layers=tuple(layers))


def put(assembly, after, substance):
    """The assembly with a substance put outside a row.

    Parameters
    ----------
    assembly : Assembly
    after : int
    substance : Material, membrane or AirSpace

    Returns
    -------
    Assembly
    """
    thickness = None if not isinstance(substance, (Material, AirSpace)) else _USUAL
    if isinstance(substance, AirSpace):
        thickness = _GAP
    layer = Layer(substance, thickness)
    layers = (*assembly.layers[: after + 1], layer, *assembly.layers[after + 1 :])
    return dataclasses.replace(assembly, layers=layers)


#: What the fields start with.
BLANK = {
    "name": "own material",
    "conductivity": "R-3.7 per in",
    "permeability": "116 perm-in",
    "density": "2.5 lb/ft3",
    "film": "own membrane",
    "dry": "0.7 perm",
    "wet": "10 perm",
    "curve": "30 % 0.5 perm; 80 % 13 perm",
}
#: An own material has no measured specific heat; common practice, no source.
_SPECIFIC_HEAT = 1400.0


def own_section(typed, troubles):
    """The fields for own things.

    Parameters
    ----------
    typed : dict
        What stands in the fields.
    troubles : dict

    Returns
    -------
    dict
    """

    def field(name, label, size=12):
        return parts.field(f"own:{name}", label, typed[name], size=size, error=troubles.get(f"own:{name}", ""))

    def wrong(kind):
        words = troubles.get(f"own:add-{kind}")
        return parts.text(words, "dw-error", alert=True) if words else None

    return parts.section(
        "own",
        "A material or membrane of your own",
        parts.row(
            field("name", "Name", 16),
            field("conductivity", "Conductivity"),
            field("permeability", "Vapor permeability"),
            field("density", "Density"),
            parts.button("own:add-material", "Add this material"),
            wrong("material"),
        ),
        parts.row(
            field("film", "Membrane", 16),
            field("dry", "Dry cup"),
            field("wet", "Wet cup (empty: one value)"),
            parts.button("own:add-cups", "Add by cups"),
            wrong("cups"),
        ),
        parts.row(
            field("curve", "Curve: mean RH of the two faces, then permeance", 34),
            parts.button("own:add-curve", "Add by curve"),
            wrong("curve"),
        ),
        parts.text(
            "It opens with the mean humidity of its two faces. Take the values from a data sheet, and keep the sheet."
        ),
        fold="open" if any(key.startswith("own:") for key in troubles) else "shut",
    )


def own_made(kind, typed):
    """The thing that the fields describe.

    Parameters
    ----------
    kind : {"material", "cups", "curve"}
    typed : dict

    Returns
    -------
    Material or membrane

    Raises
    ------
    NotUnderstood, OutOfRange
        With a sentence about the field.
    """
    source = {"source": "typed by the reader", "where": "-", "how_read": "from the reader's data sheet"}
    if kind == "material":
        return Material(
            id="own-material",
            name=_name(typed["name"]),
            density=units.quantity(typed["density"], "density"),
            specific_heat=_SPECIFIC_HEAT,
            conductivity=units.quantity(typed["conductivity"], "conductivity"),
            vapor_permeability=units.quantity(typed["permeability"], "permeability"),
            category="own",
            **source,
        )
    origin = Origin(id="own-membrane", name=_name(typed["film"]), category="own", **source)
    if kind == "cups":
        dry = units.quantity(typed["dry"], "permeance", "perm")
        if not typed["wet"].strip():
            return FixedMembrane(dry, origin)
        return cup_membrane(dry, units.quantity(typed["wet"], "permeance", "perm"), origin)
    points = [_point(each) for each in typed["curve"].split(";") if each.strip()]
    return VariableMembrane([rh for rh, _ in points], [level for _, level in points], origin)


def _name(typed):
    name = str(typed).strip()[:60]
    if not name:
        raise OutOfRange("It needs a name.")
    return name


def _point(typed):
    match = re.fullmatch(r"\s*(\d+(?:[.,]\d+)?)\s*%\s*[:,]?\s*(.+?)\s*", typed)
    if not match:
        raise OutOfRange(f'A point of the curve is written like "30 % 0.5 perm", not "{typed.strip()[:30]}".')
    return float(match.group(1).replace(",", ".")) / 100, units.quantity(match.group(2), "permeance", "perm")
