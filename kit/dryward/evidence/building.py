"""What is built against printed tables: materials, surface films, air spaces, framing, and rules of the codes.

A printed value of a material stands in its table as it was printed; the
library gives its own in the same unit and for the same thickness.
"""

from collections.abc import Callable
from typing import Any

from dryward.building import Assembly, Framing, Layer, codes, films, library
from dryward.building.framing import WholeAssembly, with_framing
from dryward.building.library import DRY_CUP, WET_CUP
from dryward.checks import BadFile
from dryward.evidence.examples import plate
from dryward.evidence.table import Answers, Row
from dryward.language import message
from dryward.units import AIR_PERMEABILITY, from_si, to_si

_CUP = {"": 0.5, "dry": DRY_CUP, "wet": WET_CUP}


def _thing(row: Row) -> Any:  # which of the library's things it is, the row says
    return library.substance(row.text("item"))


def _mean(row: Row) -> float:
    return _CUP[row.text("cup")]


def _permeability(row: Row) -> float:
    return row.in_its_unit(_thing(row).permeability_at(_mean(row)))


def _permeance(row: Row) -> float:
    thing = _thing(row)
    if hasattr(thing, "at_mean"):
        return row.in_its_unit(thing.at_mean(_mean(row)))
    return row.in_its_unit(thing.permeability_at(_mean(row)) / row.given("thickness"))


def _range_holds(prop: str) -> Callable[[Row], str]:
    """Whether the printed range ``low x; high y`` lies within the library's."""

    def ask(row: Row) -> str:
        low, high = sorted((row.given("low"), row.given("high")))
        for name, least, most in _thing(row).ranges:
            if name == prop:
                slack = 1e-9
                return "yes" if least <= low * (1 + slack) and high * (1 - slack) <= most else "no"
        raise BadFile(message("evidence.no-range", row=row.id, item=row.text("item"), property=prop))

    return ask


_MATERIALS: Answers = {
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


_PERMEABILITY = 1e-11  # plays no part here
_DEEP = 0.089  # depth of the framed layer of the worked wall [m]


def _plate(name: str, resistance: float) -> Layer:
    """A layer of that resistance [m2 K/W], one framed depth thick."""
    return Layer(plate(name, _DEEP / resistance, _PERMEABILITY), _DEEP)


def _wall(row: Row) -> WholeAssembly:
    """The wood-frame wall of the American handbook, with its films."""
    wood = plate("stud", _DEEP / to_si(row.given("stud"), "R"), _PERMEABILITY)
    names = ("gypsum", "cavity", "sheathing", "siding")
    layers = tuple(_plate(name, to_si(row.given(name), "R")) for name in names)
    share = row.given("share")
    whole = Assembly(
        "wood-frame wall",
        layers,
        to_si(row.given("inside"), "R"),
        to_si(row.given("outside"), "R"),
        framing=Framing(share, wood, ("cavity",)),
    )
    return with_framing(whole)


def _of_wall(quantity: str) -> Callable[[Row], float]:
    return lambda row: row.in_its_unit(getattr(_wall(row), quantity))


def _still(row: Row) -> float:
    return row.in_its_unit(films.still_air(row.given("slope"), row.text("direction")))


_FILMS_AND_FRAMING: Answers = {
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


_WORDS = ("wall", "vented_cladding_over", "zone")


def _facts(row: Row) -> dict[str, float | bool | str]:
    """The facts of ``inputs``: numbers with units, and a few words."""
    facts: dict[str, float | bool | str] = {}
    for part in filter(None, (each.strip() for each in row.text("inputs").split(";"))):
        name, _, rest = part.partition(" ")
        if name in _WORDS:
            facts[name] = rest
        elif rest == "yes":
            facts[name] = True
        else:
            number, _, unit = rest.partition(" ")
            try:
                facts[name] = to_si(float(number), unit) if unit else float(number)
            except ValueError:
                raise BadFile(message("evidence.part-of-codes", row=row.id, part=part)) from None
    return facts


def _zone(row: Row) -> str | None:
    return row.text("zone") or None


def _judged(row: Row) -> str:
    return codes.judge(row.text("rule"), zone=_zone(row), edition=row.text("edition") or None, **_facts(row)).answer


def _section(row: Row) -> str:
    return codes.judge(row.text("rule"), zone=_zone(row), edition=row.text("edition"), **_facts(row)).section


def _required(row: Row) -> float:
    return row.in_its_unit(codes.required(row.text("rule"), zone=_zone(row), edition=row.text("edition") or None))


def _area(row: Row) -> float:
    """The area that a ratio asks for, in the unit of the row."""
    ratio = codes.required(row.text("rule"), edition=row.text("edition") or None)
    return row.in_its_unit(ratio * row.given("area") * row.given("share", 1.0))


_CODES: Answers = {
    "class": lambda row: codes.retarder_class(row.given("permeance")),
    "judged": _judged,
    "section": _section,
    "required": _required,
    "area": _area,
}

#: How each kind of row is computed, by topic.
TOPICS = {"materials": _MATERIALS, "films_and_framing": _FILMS_AND_FRAMING, "codes": _CODES}
