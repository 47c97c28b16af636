"""Surface films, air spaces and framing: printed tables and worked walls."""

from dryward.building import Assembly, Framing, Layer, Material, films, framing
from dryward.evidence import table
from dryward.units import to_si

_ANY = {"density": 1000.0, "specific_heat": 1000.0, "vapor_permeability": 1e-11}  # plays no part here
_DEEP = 0.089  # depth of the framed layer of the worked wall [m]


def _plate(name, resistance):
    """A layer of that resistance [m2 K/W], one framed depth thick."""
    return Layer(Material(name, name, conductivity=_DEEP / resistance, **_ANY), _DEEP)


def _wall(row):
    """The wood-frame wall of the American handbook, with its films."""
    wood = Material("stud", "stud", conductivity=_DEEP / to_si(row.given("stud"), "R"), **_ANY)
    names = ("gypsum", "cavity", "sheathing", "siding")
    layers = [_plate(name, to_si(row.given(name), "R")) for name in names]
    share = row.given("share")
    whole = Assembly(
        "wood-frame wall",
        layers,
        to_si(row.given("inside"), "R"),
        to_si(row.given("outside"), "R"),
        framing=Framing(share, wood, ("cavity",)),
    )
    return framing.whole(whole)


def _of_wall(quantity):
    return lambda row: row.in_its_unit(getattr(_wall(row), quantity))


def _still(row):
    return row.in_its_unit(films.still_air(row.given("slope"), row.text("direction")))


_ANSWERS = {
    "still air": _still,
    "moving air": lambda row: row.in_its_unit(films.moving_air(row.text("direction"))),
    "interior": lambda row: films.iso_interior(row.text("direction")),
    "exterior": lambda row: films.iso_exterior(row.text("direction")),
    "for moisture": lambda row: films.MOISTURE_INTERIOR,
    "air space table": lambda row: films.air_space_resistance(row.given("thickness"), row.text("direction")),
    "air space formula": lambda row: films.reflective_air_space(
        row.given("thickness"), row.text("direction"), row.given("emittance"), row.given("emittance")
    ),
    "between studs": _of_wall("cavity"),
    "through studs": _of_wall("through_framing"),
    "parallel": _of_wall("parallel"),
    "isothermal": _of_wall("isothermal"),
    "parallel U": _of_wall("u_parallel"),
    "isothermal U": _of_wall("u_isothermal"),
    "combined within bounds": lambda row: (
        "yes" if (wall := _wall(row)).isothermal <= wall.combined <= wall.parallel else "no"
    ),
    "error bound": lambda row: _wall(row).error,
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
    return table.answer("films_and_framing", _ANSWERS)
