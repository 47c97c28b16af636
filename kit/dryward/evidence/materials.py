"""The library against printed tables: permeance, mu, conductivity, density, heat.

The printed value stands in the table as it was printed; the library gives
its own in the same unit and for the same thickness.
"""

from dryward.building import library
from dryward.building.membranes import DRY_CUP, WET_CUP
from dryward.checks import BadFile
from dryward.evidence import table
from dryward.units import AIR_PERMEABILITY, from_si, to_si

_CUP = {"": 0.5, "dry": DRY_CUP, "wet": WET_CUP}


def _thing(row):
    return library.substance(row.text("item"))


def _mean(row):
    return _CUP[row.text("cup")]


def _permeability(row):
    return row.in_its_unit(_thing(row).permeability_at(_mean(row)))


def _permeance(row):
    thing = _thing(row)
    if hasattr(thing, "at_mean"):
        return row.in_its_unit(thing.at_mean(_mean(row)))
    return row.in_its_unit(thing.permeability_at(_mean(row)) / row.given("thickness"))


def _range_holds(prop):
    """Whether the printed range ``low x; high y`` lies within the library's."""

    def ask(row):
        low, high = sorted((row.given("low"), row.given("high")))
        for name, least, most in _thing(row).ranges:
            if name == prop:
                slack = 1e-9
                return "yes" if least <= low * (1 + slack) and high * (1 - slack) <= most else "no"
        raise BadFile(f"Row {row.id}: {row.text('item')} has no range of {prop}.")

    return ask


_ANSWERS = {
    "unit": lambda row: row.in_its_unit(to_si(row.given("amount"), row.text("item"))),
    "still air": lambda row: row.in_its_unit(AIR_PERMEABILITY),
    "permeability": _permeability,
    "permeance": _permeance,
    "permeability range": _range_holds("vapor_permeability"),
    "conductivity": lambda row: _thing(row).conductivity_at(0.0),
    "resistance": lambda row: row.in_its_unit(row.given("thickness") / _thing(row).conductivity_at(0.0)),
    "density": lambda row: _thing(row).density,
    "specific heat": lambda row: _thing(row).specific_heat,
    "label": lambda row: from_si(_thing(row).permeance(row.given("inside_rh"), row.given("outside_rh")), "perm"),
}


def checks():
    """The checks of this topic, computed now.

    Yields
    ------
    Check

    Raises
    ------
    BadFile
        When the table cannot be read or a row cannot be computed.
    """
    return table.answer("materials", _ANSWERS)
