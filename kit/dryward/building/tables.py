"""The tables of the library, row by row, as materials, sheets and air layers.

A ``low`` and ``high`` value says how far the true one may lie: of the dry
conductivity, of the permeability or permeance at a mean humidity of one
half, and of the water content at 80 %.
"""

import math

from dryward.building import cups, liquid, rows, sorption
from dryward.building.layers import AirSpace
from dryward.building.materials import Material
from dryward.building.membranes import FixedMembrane, LaminateMembrane, Origin, VariableMembrane
from dryward.checks import BadFile, PlainError
from dryward.units import to_si

#: Columns of each table, beside those every table has.
COLUMNS = {
    "materials.csv": (
        "name",
        "category",
        "density_kg_m3",
        "specific_heat_J_kgK",
        "conductivity_W_mK",
        "conductivity_W_mK_low",
        "conductivity_W_mK_high",
        "vapor_dry",
        "vapor_wet",
        "vapor_low",
        "vapor_high",
        "vapor_unit",
        "sorption_rh_kg_m3",
        "free_saturation_kg_m3",
        "water_80_kg_m3_low",
        "water_80_kg_m3_high",
        "absorption_kg_m2_s05",
        "wood_share",
        "note",
    ),
    "sheets.csv": ("name", "category", "kind", "dry", "wet", "low", "high", "points", "backing", "unit", "note"),
    "air_spaces.csv": (
        "name",
        "category",
        "resistance_R",
        "permeance_perm",
        "vented",
        "note",
    ),
}


def _speech(row):
    return {key: row[key] for key in ("id", "name", "category", "source", "where", "how_read")}


def _span(row, low, high, name, unit=None):
    """The two ends of a range in SI, the lower first."""
    ends = [rows.number(row, column, name) for column in (low, high)]
    if None in ends:
        return None
    if unit:
        ends = [to_si(end, unit) for end in ends]
    return min(ends), max(ends)


def _material(row):
    name = "materials.csv"

    def number(column):
        return rows.number(row, column, name)

    unit = row["vapor_unit"]
    dry = _si(number("vapor_dry"), unit)
    wet = dry if number("vapor_wet") is None else to_si(number("vapor_wet"), unit)
    density, share = number("density_kg_m3"), number("wood_share")
    if share is not None:
        held = sorption.wood_points(density, number("free_saturation_kg_m3"), share)
    else:
        held = rows.points(row, "sorption_rh_kg_m3", name)
        if held and number("free_saturation_kg_m3") is not None:
            held = (*held, (1.0, number("free_saturation_kg_m3")))
    absorption = number("absorption_kg_m2_s05")
    if not absorption and len(held) > 2 and held[-1][0] == 1.0:
        held = sorption.unsoaked(held)
    ranges = {
        "conductivity": _span(row, "conductivity_W_mK_low", "conductivity_W_mK_high", name),
        "vapor_permeability": _span(row, "vapor_low", "vapor_high", name, unit),
        "sorption": _span(row, "water_80_kg_m3_low", "water_80_kg_m3_high", name),
    }
    return Material(
        **_speech(row),
        density=density,
        specific_heat=number("specific_heat_J_kgK"),
        conductivity=number("conductivity_W_mK"),
        vapor_permeability=cups.curve(dry, wet) if dry else 0.0,
        sorption=held,
        liquid_conductivity=liquid.conductivity(absorption, held) if absorption else None,
        wood=share is not None,
        ranges=tuple((key, *span) for key, span in ranges.items() if span),
    )


def _si(number, unit):
    """A number in SI."""
    if number is None:
        raise TypeError("an empty field")
    return to_si(number, unit)


def _sheet(row):
    name, unit = "sheets.csv", row["unit"]
    span = _span(row, "low", "high", name, unit)
    origin = Origin(**_speech(row), ranges=(("permeance", *span),) if span else ())
    dry, wet = (rows.number(row, column, name) for column in ("dry", "wet"))
    if row["kind"] == "fixed":
        level = _si(dry, unit)
        return FixedMembrane(level, origin) if wet is None else cups.membrane(level, _si(wet, unit), origin)
    if row["kind"] not in ("variable", "laminate"):
        raise BadFile(f"The table {name}, line {row['line']}: there is no kind of sheet {row['kind']!r}.")
    curve = rows.points(row, "points", name)
    sheet = VariableMembrane([rh for rh, _ in curve], [_si(level, unit) for _, level in curve], origin)
    if row["kind"] == "variable":
        return sheet
    return LaminateMembrane(sheet, _si(rows.number(row, "backing", name), unit), origin=origin)


def _air_space(row):
    name = "air_spaces.csv"
    permeance = rows.number(row, "permeance_perm", name)
    return AirSpace(
        **_speech(row),
        thermal_resistance=_si(rows.number(row, "resistance_R", name), "R"),
        vapor_permeance=math.inf if permeance is None else _si(permeance, "perm"),
        vented=row["vented"] == "yes",
    )


def read(name, text=None):
    """One table of the library as things by id.

    Parameters
    ----------
    name : {"materials.csv", "sheets.csv", "air_spaces.csv"}
    text : str, optional
        Read this text in place of the file.

    Returns
    -------
    dict
        Id to Material, membrane or AirSpace, in the order of the file.

    Raises
    ------
    BadFile
        When a row lacks a source or holds a value that is out of range, with
        table, line and reason.

    Examples
    --------
    >>> len(read("materials.csv")) > 30
    True
    """
    make = {"materials.csv": _material, "sheets.csv": _sheet, "air_spaces.csv": _air_space}[name]
    found = {}
    for row in rows.read(name, COLUMNS[name], text):
        try:
            found[row["id"]] = make(row)
        except BadFile:
            raise
        except PlainError as error:
            raise BadFile(f"The table {name}, line {row['line']} ({row['id']}): {error}") from None
        except TypeError:  # an empty field where a number is needed
            raise BadFile(f"The table {name}, line {row['line']} ({row['id']}), lacks a number it needs.") from None
    return found
