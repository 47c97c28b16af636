"""US and SI at the edge of the kit: everything inside is SI.

A unit is a name, the quantity it measures, and how it turns into SI.  There
is no global switch: whoever shows or reads a number names the unit.

Why not a general units library: the trade's own units (perm, R, the
equivalent air layer "sd") are exactly what such libraries lack, and the
kit needs a plain multiplication on every slider move.  The factors are
checked against one in the tests.
"""

from dryward.units.quantities import QUANTITIES, Quantity, checked, quantity
from dryward.units.table import (
    AIR_PERMEABILITY,
    BTU,
    DAY,
    FOOT,
    GRAIN,
    GRAVITY,
    HOUR,
    INCH,
    INCH_OF_MERCURY,
    INCH_OF_WATER,
    KELVIN,
    PINT,
    POUND,
    SHOWN,
    STEFAN_BOLTZMANN,
    UNITS,
    WATER_DENSITY,
    Unit,
    from_si,
    grain_of_water,
    liquid,
    number,
    opening,
    r_value,
    show,
    show_in,
    shown_unit,
    thickness,
    to_si,
    unit,
    with_unit,
    written,
)

__all__ = [
    "Unit",
    "UNITS",
    "SHOWN",
    "unit",
    "to_si",
    "from_si",
    "shown_unit",
    "number",
    "show",
    "show_in",
    "r_value",
    "thickness",
    "opening",
    "liquid",
    "grain_of_water",
    "with_unit",
    "written",
    "Quantity",
    "QUANTITIES",
    "quantity",
    "checked",
    "FOOT",
    "INCH",
    "POUND",
    "GRAIN",
    "BTU",
    "GRAVITY",
    "HOUR",
    "DAY",
    "INCH_OF_MERCURY",
    "INCH_OF_WATER",
    "PINT",
    "WATER_DENSITY",
    "KELVIN",
    "STEFAN_BOLTZMANN",
    "AIR_PERMEABILITY",
]
