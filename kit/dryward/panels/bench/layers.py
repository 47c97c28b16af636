"""Layers on the bench: the table, and what typing in it does."""

import dataclasses

from dryward import building, units
from dryward.building import AirSpace, FixedMembrane, Layer, Material
from dryward.checks import OutOfRange
from dryward.panels.bench import parts

_HEAD = ("Layer, inside first", "Made of", "Thickness", "R", "Vapor", "Source", "")


def table(work, system, troubles, now):
    """The layers of a job as a table of the bench.

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
            _source(layer),
            parts.row(
                parts.button(f"layer:{k}:up", "↑", label=f"Move {layer.name} inward", disabled=k == 0),
                parts.button(f"layer:{k}:down", "↓", label=f"Move {layer.name} outward", disabled=k == count - 1),
                parts.button(f"layer:{k}:remove", "Remove", label=f"Remove {layer.name}", disabled=count == 1),
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
    shown = shown if system == "us" else f"RSI {shown.split()[0]}"
    shown = f"R-{shown.split()[0]}" if system == "us" else shown
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


def _source(layer):
    thing = layer.substance if hasattr(layer.substance, "source") else layer.substance.origin
    return thing.source[:60] or "own value"


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
        thickness = units.read(typed, "length")
        return dataclasses.replace(layer, thickness=thickness)
    if what == "resistance":
        resistance = units.read(typed, "thermal resistance", "R")
        if isinstance(substance, AirSpace):
            return dataclasses.replace(layer, substance=dataclasses.replace(substance, thermal_resistance=resistance))
        if not resistance > 0:
            raise OutOfRange(f"Thermal resistance of {layer.name} is {resistance:g}; it must be above 0 m² K/W.")
        own = dataclasses.replace(substance, conductivity=layer.thickness / resistance)
        return dataclasses.replace(layer, substance=_own(own, "conductivity"))
    level = units.read(typed, "permeance", "perm")
    if isinstance(substance, AirSpace):
        return dataclasses.replace(layer, substance=dataclasses.replace(substance, vapor_permeance=level))
    if isinstance(substance, Material):
        own = dataclasses.replace(substance, vapor_permeability=level * layer.thickness)
        return dataclasses.replace(layer, substance=_own(own, "vapor permeability"))
    return dataclasses.replace(layer, substance=FixedMembrane(level, substance.origin))


def _own(material, what):
    """A library material with a value of the reader's own says so."""
    note = f"{what} typed by the reader"
    return material if note in material.where else dataclasses.replace(
        material, where="; ".join(part for part in (material.where, note) if part)
    )  # fmt: skip


#: Thickness that a library material starts with, where nothing else is said [m].
_USUAL = 0.0127


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
        thickness = 0.038
    layer = Layer(substance, thickness)
    layers = (*assembly.layers[: after + 1], layer, *assembly.layers[after + 1 :])
    return dataclasses.replace(assembly, layers=layers)
