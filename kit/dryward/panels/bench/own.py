"""A material or a membrane of the reader's own, from what is typed."""

import re

from dryward import units
from dryward.building import FixedMembrane, Material, Origin, VariableMembrane
from dryward.building.membranes import cup_membrane
from dryward.checks import OutOfRange
from dryward.panels.bench import parts

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


def section(typed, troubles):
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


def made(kind, typed):
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
