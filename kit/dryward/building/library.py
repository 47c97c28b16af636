"""The library: generic materials, sheets and air layers, each with its source.

Three tables in ``data/``: materials.csv (things with thickness), sheets.csv
(things that count by permeance) and air_spaces.csv.  All are generic; none
is a product.  A ``low`` and ``high`` value says how far the true one may lie:
of the dry conductivity, of the permeability or permeance at a mean humidity
of one half, and of the water content at 80 %.

A row names a source, a place in it and how it was read.  All three belong to
an origin: a handbook's number that was written down from memory is not the
handbook's.  Curves that few numbers stand for (the water in wood, two cup
values, how fast liquid moves) are drawn here too.
"""

import dataclasses
import difflib
import math
import re
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any, TypeVar

from dryward import air, units
from dryward.building import schema
from dryward.building.schema import Row
from dryward.building.substances import (
    HIGHEST,
    AirSpace,
    FixedMembrane,
    LaminateMembrane,
    Material,
    Membrane,
    Origin,
    Points,
    Substance,
    VariableMembrane,
)
from dryward.checks import BadFile, Numeric, OutOfRange, PlainError, UnknownName, within
from dryward.language import called, listing, message
from dryward.units import to_si, written

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


def _speech(row: Row) -> dict[str, Any]:
    return {key: row[key] for key in ("id", "name", "category", "source", "where", "how_read")}


def _span(row: Row, low: str, high: str, name: str, unit: str | None = None) -> tuple[float, float] | None:
    """The two ends of a range in SI, the lower first."""
    ends = [schema.cell_number(row, column, name) for column in (low, high)]
    found = [to_si(end, unit) if unit else end for end in ends if end is not None]
    return (min(found), max(found)) if len(found) == len(ends) else None


def _material(row: Row) -> Material:
    name = "materials.csv"

    def number(column):
        return schema.cell_number(row, column, name)

    unit = row["vapor_unit"]
    dry = _si(number("vapor_dry"), unit)
    wet = dry if number("vapor_wet") is None else to_si(number("vapor_wet"), unit)
    density, share = number("density_kg_m3"), number("wood_share")
    if share is not None:
        held = wood_points(density, number("free_saturation_kg_m3"), share)
    else:
        held = schema.cell_points(row, "sorption_rh_kg_m3", name)
        if held and number("free_saturation_kg_m3") is not None:
            held = (*held, (1.0, number("free_saturation_kg_m3")))
    absorption = number("absorption_kg_m2_s05")
    if not absorption and len(held) > 2 and held[-1][0] == 1.0:
        held = non_absorbing(held)
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
        vapor_permeability=cup_curve(dry, wet) if dry else 0.0,
        sorption=held,
        liquid_conductivity=liquid_conductivity(absorption, held) if absorption else None,
        wood=share is not None,
        ranges=tuple((key, *span) for key, span in ranges.items() if span),
    )


def _si(number: float | None, unit: str) -> float:
    """A number in SI."""
    if number is None:
        raise TypeError("an empty field")
    return to_si(number, unit)


def _sheet(row: Row) -> FixedMembrane | VariableMembrane | LaminateMembrane:
    name, unit = "sheets.csv", row["unit"]
    span = _span(row, "low", "high", name, unit)
    origin = Origin(**_speech(row), ranges=(("permeance", *span),) if span else ())
    dry, wet = (schema.cell_number(row, column, name) for column in ("dry", "wet"))
    if row["kind"] == "fixed":
        level = _si(dry, unit)
        return FixedMembrane(level, origin) if wet is None else cup_membrane(level, _si(wet, unit), origin)
    if row["kind"] not in ("variable", "laminate"):
        raise BadFile(message("building.no-kind-of-sheet", table=name, line=row["line"], kind=repr(row["kind"])))
    curve = schema.cell_points(row, "points", name)
    sheet = VariableMembrane([rh for rh, _ in curve], [_si(level, unit) for _, level in curve], origin)
    if row["kind"] == "variable":
        return sheet
    return LaminateMembrane(sheet, _si(schema.cell_number(row, "backing", name), unit), origin=origin)


def _air_space(row: Row) -> AirSpace:
    name = "air_spaces.csv"
    permeance = schema.cell_number(row, "permeance_perm", name)
    return AirSpace(
        **_speech(row),
        thermal_resistance=_si(schema.cell_number(row, "resistance_R", name), "R"),
        vapor_permeance=math.inf if permeance is None else _si(permeance, "perm"),
        vented=row["vented"] == "yes",
    )


def read_table(name: str, text: str | None = None) -> dict[str, Substance]:
    """One table of the library as things by id."""
    makers: dict[str, Callable[[Row], Substance]] = {
        "materials.csv": _material,
        "sheets.csv": _sheet,
        "air_spaces.csv": _air_space,
    }
    make, found = makers[name], {}
    for row in schema.rows(name, COLUMNS[name], text):
        try:
            found[row["id"]] = make(row)
        except BadFile:
            raise
        except PlainError as error:
            place = {"table": name, "line": row["line"], "id": row["id"]}
            raise BadFile(message("building.in-a-row", **place, sentence=str(error))) from None
        except TypeError:  # an empty field where a number is needed
            place = {"table": name, "line": row["line"], "id": row["id"]}
            raise BadFile(message("building.lacks-a-number", **place)) from None
    return found


#: What is picked by its id.
Picked = TypeVar("Picked")


@cache
def _whole() -> dict[str, Substance]:
    found: dict[str, Substance] = {}
    for name in COLUMNS:
        for key, thing in read_table(name).items():
            if key in found:
                raise BadFile(message("building.id-in-two-tables", id=key))
            found[key] = thing
    return found


def _pick(kind: str, key: str, among: Mapping[str, Picked]) -> Picked:
    try:
        return among[key]
    except (KeyError, TypeError):
        raise UnknownName(kind, key, among) from None


def substance(id: str) -> Substance:
    """Anything of the library by its id."""
    return _pick("material or sheet", id, _whole())


def material(id: str) -> Material:
    """A material of the library by its id.

    Parameters
    ----------
    id : str
        Such as ``"cellulose-dense"``.

    Returns
    -------
    Material

    Raises
    ------
    UnknownName
        For what no material is called, with the nearest ids.

    Examples
    --------
    >>> material("spruce").wood
    True
    """
    return _pick("material", id, {key: each for key, each in _whole().items() if isinstance(each, Material)})


def membrane(id: str) -> FixedMembrane | VariableMembrane | LaminateMembrane:
    """A membrane, sheet or paint of the library by its id.

    Parameters
    ----------
    id : str
        Such as ``"teaching-variable"``.

    Returns
    -------
    FixedMembrane, VariableMembrane or LaminateMembrane
        Whose permeance the rest of the kit asks for in the same way.

    Raises
    ------
    UnknownName
        For what no sheet is called, with the nearest ids.

    Examples
    --------
    >>> from dryward.units import from_si
    >>> round(from_si(membrane("teaching-variable").permeance(0.4, 0.2), "perm"), 3)
    0.5
    """
    return _pick("membrane", id, {key: each for key, each in _whole().items() if isinstance(each, Membrane)})


def air_space(id: str) -> AirSpace:
    """An air layer of the library by its id.

    Parameters
    ----------
    id : str
        Such as ``"service-cavity"``.

    Returns
    -------
    AirSpace

    Raises
    ------
    UnknownName
        For what no air layer is called, with the nearest ids.

    Examples
    --------
    >>> air_space("vent-space").vented
    True
    """
    return _pick("air space", id, {key: each for key, each in _whole().items() if isinstance(each, AirSpace)})


def category(thing: Substance) -> str:
    """What kind of thing it is, as the library is sorted."""
    return thing.origin.category if hasattr(thing, "origin") else thing.category


def by_category() -> dict[str, tuple[Substance, ...]]:
    """The whole library, sorted by category, in the order of its tables."""
    found: dict[str, list[Substance]] = {}
    for thing in _whole().values():
        found.setdefault(category(thing), []).append(thing)
    return {key: tuple(things) for key, things in found.items()}


def search(text: str) -> tuple[Substance, ...]:
    """Things of the library whose id, name or category has all the typed words."""
    words = str(text).lower().split()
    things = _whole()
    found = tuple(
        thing
        for key, thing in things.items()
        if all(word in f"{key} {thing.name} {category(thing)}".lower() for word in words)
    )
    if found:
        return found
    close = difflib.get_close_matches(str(text).lower().replace(" ", "-"), things, n=5, cutoff=0.6)
    return tuple(things[key] for key in close)


#: Words of `how_read` that no short form may leave out.
CAUTIONS = ("from memory", "estimated", "invented", "typed by the reader", "given with the layer")
_INVENTED = "Invented for teaching"
#: That something was read as well.
_READ = re.compile(r"(?<!none )\bread in\b")


def origin_of(thing: Substance) -> Material | AirSpace | Origin:
    """What carries the source of a thing: itself, or the origin of a membrane."""
    return thing if isinstance(thing, Material | AirSpace) else thing.origin


def cautions(words: str) -> str:
    """What a reader must know of how a value came about, in a few words."""
    found = [each for each in CAUTIONS if each in words.lower()]
    said = listing([called(each) for each in found])
    return message("building.partly", cautions=said) if found and _READ.search(words) else said


def source_of(thing: Substance, longest: int | None = None) -> str:
    """The origin of a thing's values in one phrase."""
    row = origin_of(thing)
    source = row.source or message("building.own-value")
    # A place that is not known is written "-", one for each source.
    places = [part.strip() for part in row.where.split(";") if part.strip() not in ("", "-")]
    # What is invented need not say so twice.
    how = row.how_read.removeprefix("invented for teaching: ").removeprefix("invented: ")
    how = how if source == _INVENTED else row.how_read
    whole = ", ".join(part for part in (source, "; ".join(places)) if part) + (f" ({how})" if how else "")
    if longest is None or len(whole) <= longest:
        return whole
    caution = cautions(row.how_read) if source != _INVENTED else ""
    end = f" ({caution})" if caution else ""
    room = longest - len(end)
    if len(source) > room:
        source = f"{source[: room - 2].rsplit(' ', 1)[0].rstrip(',;')} …"
    return f"{source}{end}"


def with_value_of(
    thing: Material | AirSpace | FixedMembrane, what: str, by: str
) -> Material | AirSpace | FixedMembrane:
    """The same thing, its origin saying that a value is not the library's.

    Notes
    -----
    Nothing is left of the source of a sheet that had only its permeance.
    """
    if isinstance(thing, FixedMembrane):
        return FixedMembrane(thing.level, dataclasses.replace(thing.origin, source=by, where="", how_read=""))
    note = f"{what} {by}"
    if note in thing.how_read:
        return thing
    return dataclasses.replace(thing, how_read="; ".join(part for part in (note, thing.how_read) if part))


# --- what a row's few numbers stand for ----------------------------------------------

# The water that wood holds: all wood rows of the library get their sorption points from
# this one curve (Hailwood-Horrobin), so that no wood can drift away from another.
#
# Wood Handbook coefficients, temperature in degC: each row c0 + c1 T + c2 T2.
_W = (349.0, 1.29, 0.0135)
_K = (0.805, 0.000736, -0.00000273)
_K1 = (6.27, -0.00938, -0.000303)
_K2 = (1.91, 0.0407, -0.000293)

#: Humidities at which the library tabulates a wood curve [-].
WOOD_HUMIDITIES = (0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.98, 0.99)


def wood_moisture(relative_humidity: Numeric, temperature: Numeric = 20.0) -> Any:
    """Moisture content of wood in balance with air.

    Notes
    -----
    One curve for all species; a species differs from it by 1 to 2 points of
    moisture content, and wood that is drying holds more than wood that is
    wetting.

    References
    ----------
    USDA Forest Products Laboratory, Wood Handbook (2010), chapter 4, equation
    of Table 4-2 (Hailwood and Horrobin); read in public files that quote it.
    """
    h = within("Relative humidity", relative_humidity, 0.0, 1.0, "%")
    t = within("Wood temperature", temperature, -10.0, 130.0, "degC")
    w, k, k1, k2 = (a + b * t + c * t * t for a, b, c in (_W, _K, _K1, _K2))
    kh = k * h
    bound = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 18.0 / w * (kh / (1 - kh) + bound)


def humidity_of_wood(moisture: float, temperature: float = 20.0) -> float:
    """Relative humidity of air in balance with wood: the inverse of `wood_moisture`.

    Notes
    -----
    Above a quarter the wood is near fiber saturation and its moisture says
    little about the humidity.
    """
    wanted = within("Moisture content of wood", moisture, 0.0, 0.25, "%")
    low, high = 0.0, 1.0
    for _ in range(60):  # halvings; the curve rises all the way
        middle = 0.5 * (low + high)
        if wood_moisture(middle, temperature) < wanted:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def wood_points(density: float, free_saturation: float, share: float = 1.0, temperature: float = 20.0) -> Points:
    """Sorption points of a wood product.

    Notes
    -----
    Below 99 % the curve is bound water; the step from there to the free
    saturation at 100 % is water in the cell hollows.
    """
    within("Density", density, 0.0, 1500.0, "kg/m3", above=True)
    within("Share of the wood curve", share, 0.3, 1.2)
    held = tuple((rh, round(float(wood_moisture(rh, temperature)) * share * density, 4)) for rh in WOOD_HUMIDITIES)
    within("Free saturation", free_saturation, held[-1][1], 1500.0, "kg/m3", above=True)
    return (*held, (1.0, float(free_saturation)))


#: Humidity up to which a material that does not soak up binds its water [-]: the openings between fibers are wider
#: than a hundredth of a millimeter, and water in those is in balance with 99.99 % and more (Kelvin equation).
NEARLY_FULL = 0.9995


def non_absorbing(points: Points) -> Points:
    """The curve of a material that takes up no liquid, with its last step as late as it is.

    Notes
    -----
    A straight line from the last measured point to the free saturation would
    let vapor fill a fleece that no water runs into.
    """
    (before, less), (last, held), full = points[-3:]
    most = min(held + (held - less) / (last - before) * (NEARLY_FULL - last), full[1])
    return (*points[:-1], (NEARLY_FULL, round(most, 4)), full) if held < most < full[1] else points


# Liquid conductivity of a porous material from how fast it sucks up water.  The hourly
# method needs K in ``flux = K x gradient of suction``.  Such curves are seldom published;
# what is published is the water absorption coefficient A of a one-day soaking test.  Here
# K follows from A, with the usual assumption that the liquid diffusivity rises
# exponentially with the water content.  Liquid moves only where pores are full: below the
# last point of the sorption curve before saturation K is nothing, for there the vapor
# permeability, dry cup and wet cup, already holds all that moves.

# Exponent of the diffusivity over the relative water content, the same for
# many stones, bricks and plasters: Hall and Hoff, Water Transport in Brick,
# Stone and Concrete (from memory).
_EXPONENT = 6.0
#: Parts of the way to free saturation at which K is given [-].
_FILLED = (0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0)
_SOAKED_AT = 20.0  # of the soaking test [degC]


def lowest_diffusivity(absorption: float, free_saturation: float, beginning: float = 0.0) -> float:
    """Liquid diffusivity where liquid begins to move, the factor before the exponential.

    Notes
    -----
    From A2 = integral of (w_f + w) D(w) dw from w_0 to w_f for a slab that
    starts dry, with D = D0 exp(n u) and u = (w - w_0)/(w_f - w_0).

    References
    ----------
    Parlange's integral for the sorptivity; Lockington, Parlange and Dux
    (1999), Materials and Structures 32 (from memory).
    """
    a = within("Water absorption coefficient", absorption, 0.0, 2.0, "kg/(m2 s^0.5)", above=True)
    full = within("Free saturation", free_saturation, 0.0, 1500.0, "kg/m3", above=True)
    start = within("Water content where liquid begins to move", beginning, 0.0, 0.9 * full, "kg/m3")
    n, span = _EXPONENT, full - start
    grown = math.exp(n)
    integral = (full + start) * (grown - 1) / n + span * (grown * (n - 1) + 1) / n**2
    return a**2 / (span * integral)


def liquid_conductivity(absorption: float, sorption: Points) -> Points:
    """Liquid conductivity against water content.

    Notes
    -----
    K = D dw/ds, with the suction s = -rho R T ln(rh) at 20 degC and the slope
    of the last straight piece of the sorption curve.
    """
    (start_rh, start), (_, full) = sorption[-2:]
    base = lowest_diffusivity(absorption, full, start)
    pull = units.WATER_DENSITY * air.VAPOR_GAS_CONSTANT * (_SOAKED_AT + units.KELVIN)
    slope = (full - start) / (1.0 - start_rh)
    found = [(0.0, 0.0), (start, 0.0)]
    for u in _FILLED:
        humidity = start_rh + u * (1.0 - start_rh)
        found.append((start + u * (full - start), base * math.exp(_EXPONENT * u) * slope * humidity / pull))
    return tuple(found)


#: Mean humidity of the two faces in each test [-].
#: ASTM E96 desiccant method (0 and 50 %) and water method (100 and 50 %).
DRY_CUP, WET_CUP = 0.25, 0.75
#: Points that draw the log-straight part of a material curve.
_BETWEEN = 5


def _checked_cups(dry: float, wet: float, highest: float, unit: str) -> tuple[float, float]:
    dry = within("Dry-cup value", dry, 0.0, highest, unit, above=True)
    wet = within("Wet-cup value", wet, 0.0, highest, unit, above=True)
    if wet < dry:
        values = {"wet": written(wet, ".4g", unit), "dry": written(dry, ".4g", unit)}
        raise OutOfRange(message("building.wet-cup-below", **values))
    return dry, wet


def cup_curve(dry: float, wet: float) -> float | tuple[tuple[float, float], ...]:
    """Vapor permeability of a material against humidity, from its two cup values.

    Notes
    -----
    Assumes that the value belongs to the mean humidity of the test, 25 % and
    75 %.
    """
    dry, wet = _checked_cups(dry, wet, 1e-9, "kg/(s m Pa)")
    if wet == dry:
        return dry
    last = _BETWEEN - 1
    inner = tuple(
        (DRY_CUP + (WET_CUP - DRY_CUP) * i / last, dry * math.exp(math.log(wet / dry) * i / last))
        for i in range(1, last)
    )
    return ((DRY_CUP, dry), *inner, (WET_CUP, wet))


def cup_membrane(dry: float, wet: float, origin: Origin | None = None) -> FixedMembrane | VariableMembrane:
    """A membrane from its dry-cup and wet-cup permeance."""
    dry, wet = _checked_cups(dry, wet, HIGHEST, "kg/(s m2 Pa)")
    if wet == dry:
        return FixedMembrane(dry, origin)
    return VariableMembrane((DRY_CUP, WET_CUP), (dry, wet), origin)
