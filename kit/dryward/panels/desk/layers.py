"""The layers of the roof on the desk: the table, what typing in it does, and things of the reader's own."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Collection, Iterable, Mapping

from dryward import units
from dryward.building import (
    AirSpace,
    Assembly,
    FixedMembrane,
    Framing,
    LaminateMembrane,
    Layer,
    Material,
    Origin,
    VariableMembrane,
    library,
)
from dryward.building.library import cup_membrane
from dryward.checks import OutOfRange
from dryward.language import called, message
from dryward.panels.desk import parts
from dryward.panels.desk.parts import Part

Membrane = FixedMembrane | VariableMembrane | LaminateMembrane
Substance = Material | Membrane | AirSpace
#: Key of a field -> what is wrong with what was typed there.
Troubles = Mapping[str, str]

#: Characters of a source in the table of the layers, and in the table of what was found.
_NARROW, _WIDE = 60, 160


def table(assembly: Assembly, system: str, troubles: Troubles, now: int) -> Part:
    """The layers as a table; new ones go outside of row `now`."""
    rows = []
    count = len(assembly.layers)
    for k, layer in enumerate(assembly.layers):
        name = called(layer.name)
        cells = [
            _field(f"layer:{k}:name", message("panels.name-of-layer", number=k + 1), called(layer.name), troubles, 16),
            called(layer.substance.name),
            _thickness(k, layer, system, troubles),
            _resistance(k, layer, system, troubles),
            _vapor(k, layer, system, troubles),
            library.source_of(layer.substance, _NARROW),
            parts.row(
                parts.button(
                    f"here:{k}",
                    "+",
                    label=message("panels.add-or-replace-at", layer=name),
                    title=message("panels.add-or-replace"),
                ),
                parts.button(f"layer:{k}:up", "↑", label=message("panels.move-inward", layer=name), disabled=k == 0),
                parts.button(
                    f"layer:{k}:down", "↓", label=message("panels.move-outward", layer=name), disabled=k == count - 1
                ),
                parts.button(
                    f"layer:{k}:remove",
                    message("panels.remove"),
                    label=message("panels.remove-layer", layer=name),
                    disabled=count == 1,
                ),
                style="dw-tight",
            ),
        ]
        rows.append((cells, "dw-now" if k == now else ""))
    head = (
        message("panels.head-layer"),
        message("panels.head-made-of"),
        message("panels.head-thickness"),
        message("panels.head-resistance"),
        message("panels.head-vapor"),
        message("panels.head-source"),
        "",
    )
    return parts.table(head, rows)


def _field(key: str, label: str, value: str, troubles: Troubles, size: int = 8) -> Part:
    return parts.field(key, label, value, bare=True, size=size, error=troubles.get(key, ""))


def _thickness(k: int, layer: Layer, system: str, troubles: Troubles) -> Part | str:
    if layer.is_membrane:
        return message("panels.sheet")
    shown = "" if layer.thickness is None else units.show(layer.thickness, "length", system, _digits(system))
    return _field(f"layer:{k}:thickness", message("panels.thickness-of", layer=called(layer.name)), shown, troubles)


def _digits(system: str) -> int:
    return 3 if system == "us" else 1


def _resistance(k: int, layer: Layer, system: str, troubles: Troubles) -> Part | str:
    if layer.is_membrane:
        return "—"
    shown = units.r_value(layer.thermal_resistance, system, 2)
    return _field(f"layer:{k}:resistance", message("panels.resistance-of", layer=called(layer.name)), shown, troubles)


def _vapor(k: int, layer: Layer, system: str, troubles: Troubles) -> Part | str:
    if layer.vented:
        return message("panels.vented")
    if isinstance(layer.substance, (VariableMembrane, LaminateMembrane)):
        dry, wet = layer.substance.permeance(0.3, 0.2), layer.substance.permeance(0.9, 0.8)
        return _dry_and_humid(units.show(dry, "permeance", system), units.show(wet, "permeance", system))
    if layer.permeance == float("inf"):
        return message("panels.open")
    shown = units.show(layer.permeance, "permeance", system)
    shown = f"sd {shown.split()[0]} m" if system == "si" else shown
    return _field(f"layer:{k}:permeance", message("panels.permeance-of", layer=called(layer.name)), shown, troubles, 9)


def _dry_and_humid(dry: str, humid: str) -> str:
    """Two permeances of a film that changes."""
    return message("panels.dry-and-humid", dry=dry, humid=humid)


def found_table(found: Iterable[tuple[str, Substance]], system: str, inner: str, over: str | None) -> Part:
    """What the search found, with values and sources, each to be added outside `inner` or put in place of `over`."""
    rows = []
    for id, thing in found:
        rows.append([
            called(thing.name),
            *_values(thing, system),
            library.source_of(thing, _WIDE),
            parts.row(
                parts.button(
                    f"add:{id}",
                    message("panels.add"),
                    label=message("panels.add-outside", thing=called(thing.name), layer=called(inner)),
                ),
                parts.button(
                    f"replace:{id}",
                    message("panels.replace"),
                    label=message("panels.replace-by", thing=called(thing.name), layer=called(over)),
                )
                if over
                else None,
                style="dw-tight",
            ),
        ])  # fmt: skip
    head = (
        message("panels.head-found"),
        message("panels.head-heat"),
        message("panels.head-vapor"),
        message("panels.head-source"),
        "",
    )
    return parts.table(head, rows)


def _values(thing: Substance, system: str) -> tuple[str, str]:
    """Heat and vapor of a substance in words."""
    if isinstance(thing, Material):
        heat, level = thing.conductivity_at(0), thing.permeability_at(0.5)
        if system == "us":
            inch = units.INCH  # of the thing: R and perms of one inch
            return (
                message("panels.r-per-inch", number=units.written(units.from_si(inch / heat, "R"), ".2g")),
                units.written(units.from_si(level / inch, "perm"), ".3g", "perm in"),
            )
        return units.written(heat, ".3g", "W/(m K)"), units.written(level * 1e12, ".3g", "ng/(s m Pa)")
    if isinstance(thing, AirSpace):
        return units.written(units.from_si(thing.thermal_resistance, "R"), ".2g", "R"), message(
            "panels.vented"
        ) if thing.vented else message("panels.air-space")
    dry, wet = thing.permeance(0.5, 0.0), thing.permeance(0.9, 0.8)
    dry, wet = (units.show(each, "permeance", system) for each in (dry, wet))
    return message("panels.sheet"), dry if dry == wet else _dry_and_humid(dry, wet)


def edited(assembly: Assembly, k: int, what: str, typed: str) -> Assembly:
    """The assembly with row k moved "up" or "down", gone with "remove", or one cell of it typed anew.

    The cells are "name", "thickness", "resistance" and "permeance";
    NotUnderstood or OutOfRange for what cannot be meant.
    """
    layers = list(assembly.layers)
    if what in ("up", "down"):
        other = k + (-1 if what == "up" else 1)
        if not 0 <= other < len(layers):
            raise OutOfRange(message("panels.outermost-there", layer=called(layers[k].name)))
        layers[k], layers[other] = layers[other], layers[k]
    elif what == "remove":
        del layers[k]
    else:
        layers[k] = _typed(layers[k], what, typed)
    kept = _framing(
        assembly, {layer.name for layer in layers}, assembly.layers[k].name, layers[k].name if k < len(layers) else ""
    )
    return dataclasses.replace(assembly, layers=tuple(layers), framing=kept)


def _framing(assembly: Assembly, names: Collection[str], old: str, new: str) -> Framing | None:
    """Framing that still runs through layers that exist."""
    if assembly.framing is None:
        return None
    wanted = [new if each == old and old not in names else each for each in assembly.framing.layers]
    left = tuple(each for each in wanted if each in names)
    return dataclasses.replace(assembly.framing, layers=left) if left else None


def _typed(layer: Layer, what: str, typed: str) -> Layer:
    substance = layer.substance
    own: Substance
    if what == "name":
        name = str(typed).strip()[:60]
        if not name:
            raise OutOfRange(message("panels.layer-needs-name"))
        return dataclasses.replace(layer, name=name)
    if what == "thickness":
        thickness = units.quantity(typed, "length")
        return dataclasses.replace(layer, thickness=thickness)
    if what == "resistance":
        resistance = units.quantity(typed, "thermal resistance", "R")
        if isinstance(substance, AirSpace):
            own = dataclasses.replace(substance, thermal_resistance=resistance)
        else:
            material, thickness = _whole(layer)
            if not resistance > 0:
                value = units.number(resistance, figures=6)
                raise OutOfRange(message("panels.resistance-above-zero", layer=called(layer.name), value=value))
            own = dataclasses.replace(material, conductivity=thickness / resistance)
        return dataclasses.replace(
            layer, substance=library.with_value_of(own, "thermal resistance", message("panels.typed-by-reader"))
        )
    level = units.quantity(typed, "permeance", "perm")
    if isinstance(substance, AirSpace):
        own = dataclasses.replace(substance, vapor_permeance=level)
    elif isinstance(substance, Material):
        material, thickness = _whole(layer)
        own = dataclasses.replace(material, vapor_permeability=level * thickness)
    else:
        own = FixedMembrane(level, substance.origin)
    return dataclasses.replace(
        layer, substance=library.with_value_of(own, "permeance", message("panels.typed-by-reader"))
    )


def _whole(layer: Layer) -> tuple[Material, float]:
    """The material and thickness of a layer that is no sheet."""
    if not isinstance(layer.substance, Material) or layer.thickness is None:
        raise OutOfRange(message("panels.layer-is-a-sheet", layer=called(layer.name)))
    return layer.substance, layer.thickness


#: Thickness that a library material starts with, where nothing else is said [m].
_USUAL = 0.0127
#: Depth that an air space starts with [m].
_GAP = 0.038


def replaced(assembly: Assembly, k: int, substance: Substance) -> Assembly:
    """The assembly with a layer made of something else, its name, place and thickness kept.

    A layer that was a sheet gets the usual thickness of its new kind.
    """
    old, layers = assembly.layers[k], list(assembly.layers)
    thickness = None
    if isinstance(substance, (Material, AirSpace)):
        thickness = old.thickness or (_GAP if isinstance(substance, AirSpace) else _USUAL)
    layers[k] = Layer(substance, thickness, old.name)
    return dataclasses.replace(assembly, layers=tuple(layers))


def put(assembly: Assembly, after: int, substance: Substance) -> Assembly:
    """The assembly with a substance put outside a row; -1 for innermost."""
    thickness = None if not isinstance(substance, (Material, AirSpace)) else _USUAL
    if isinstance(substance, AirSpace):
        thickness = _GAP
    layer = Layer(substance, thickness)
    layers = (*assembly.layers[: after + 1], layer, *assembly.layers[after + 1 :])
    return dataclasses.replace(assembly, layers=layers)


def blank() -> dict[str, str]:
    """What the fields of a thing of the reader's own start with."""
    return {
        "name": message("panels.own-material"),
        "conductivity": "R-3.7 per in",
        "permeability": "116 perm-in",
        "density": "2.5 lb/ft3",
        "film": message("panels.own-membrane"),
        "dry": "0.7 perm",
        "wet": "10 perm",
        "curve": "30 % 0.5 perm; 80 % 13 perm",
    }


#: An own material has no measured specific heat; common practice, no source.
_SPECIFIC_HEAT = 1400.0


def own_section(typed: Mapping[str, str], troubles: Troubles) -> Part:
    """The fields for things of the reader's own, with what stands in them."""

    def field(name: str, label: str, size: int = 12) -> Part:
        return parts.field(f"own:{name}", label, typed[name], size=size, error=troubles.get(f"own:{name}", ""))

    def thing(kind: str, add: str, *fields: Part) -> Part:
        """What one is described by, the button that adds it, and why it could not be."""
        wrong = troubles.get(f"own:add-{kind}")
        told = parts.text(wrong, "dw-error", alert=True) if wrong else None
        return parts.row(*fields, parts.button(f"own:add-{kind}", add), told)

    return parts.section(
        "own",
        message("panels.own"),
        thing(
            "material",
            message("panels.own-add-material"),
            field("name", message("panels.own-name"), 16),
            field("conductivity", message("panels.own-conductivity")),
            field("permeability", message("panels.own-permeability")),
            field("density", message("panels.own-density")),
        ),
        thing(
            "cups",
            message("panels.own-add-cups"),
            field("film", message("panels.own-film"), 16),
            field("dry", message("panels.own-dry")),
            field("wet", message("panels.own-wet")),
        ),
        thing("curve", message("panels.own-add-curve"), field("curve", message("panels.own-curve"), 34)),
        parts.text(message("panels.own-hint")),
        fold="open" if any(key.startswith("own:") for key in troubles) else "shut",
    )


def own_made(kind: str, typed: Mapping[str, str]) -> Substance:
    """What the fields describe, a "material", a membrane by "cups" or one by its "curve".

    NotUnderstood or OutOfRange with a sentence about the field.
    """
    source, sheet = message("panels.typed-by-reader"), message("panels.readers-data-sheet")
    if kind == "material":
        return Material(
            id="own-material",
            name=_name(typed["name"]),
            density=units.quantity(typed["density"], "density"),
            specific_heat=_SPECIFIC_HEAT,
            conductivity=units.quantity(typed["conductivity"], "conductivity"),
            vapor_permeability=units.quantity(typed["permeability"], "permeability"),
            category="own",
            source=source,
            where="-",
            how_read=sheet,
        )
    origin = Origin(
        id="own-membrane", name=_name(typed["film"]), category="own", source=source, where="-", how_read=sheet
    )
    if kind == "cups":
        dry = units.quantity(typed["dry"], "permeance", "perm")
        if not typed["wet"].strip():
            return FixedMembrane(dry, origin)
        return cup_membrane(dry, units.quantity(typed["wet"], "permeance", "perm"), origin)
    points = [_point(each) for each in typed["curve"].split(";") if each.strip()]
    return VariableMembrane([rh for rh, _ in points], [level for _, level in points], origin)


def _name(typed: str) -> str:
    name = str(typed).strip()[:60]
    if not name:
        raise OutOfRange(message("panels.own-needs-name"))
    return name


def _point(typed: str) -> tuple[float, float]:
    match = re.fullmatch(r"\s*(\d+(?:[.,]\d+)?)\s*%\s*[:,]?\s*(.+?)\s*", typed)
    if not match:
        raise OutOfRange(message("panels.own-curve-point", typed=typed.strip()[:30]))
    return float(match.group(1).replace(",", ".")) / 100, units.quantity(match.group(2), "permeance", "perm")
