"""Code rules, judged: met, not met, or cannot tell, and why.

A rule is a row of ``data/codes/``: edition, section, zone, number, source,
and how it was read.  Most were read in documents that quote the code, some
are from memory; each ruling says so.  Unless another edition is asked for, a
rule is judged by the newest that was read; where an edition could not be
read, another is shown in its place and the ruling says which.  A fact that
is not known is None, and the ruling then says what is missing.  What counts
is the code as adopted locally; the building official decides.
"""

import dataclasses
from typing import Any, TypeVar, overload

from dryward.building.code_rows import (
    CANNOT_TELL,
    CLASS_2,
    EDITIONS,
    LIMITS,
    MET,
    NOT_MET,
    RETARDERS,
    Edition,
    Row,
    Rows,
    Ruling,
    amount,
    in_si,
    in_unit,
    key,
    locally,
    newest,
    of_zone,
    ruling,
    several,
    shown,
    table,
    unread,
    years,
    zone,
)
from dryward.checks import UnknownName, within
from dryward.language import listing, message
from dryward.units import from_si, number, to_si

_WALLS = ("2x4", "2x6")


def _missing(rule: str, row: Row, **facts: Any) -> Ruling | None:
    """A ruling that names what is not known, by the names of its messages; None when everything is."""
    names = [message(f"codes.fact-{name.replace('_', '-')}") for name, value in facts.items() if value is None]
    if not names:
        return None
    first, second, third, *_ = [*names, "", ""]
    needed = message("codes.needed", count=len(names), first=first, second=second, third=third)
    return ruling(rule, CANNOT_TELL, needed, row)


def _no_row(rule: str, edition: Edition) -> Ruling:
    return ruling(rule, CANNOT_TELL, message("codes.no-row", edition=str(edition)))


def _rows(rule: str, edition: Edition) -> list[Row]:
    return newest([row for row in table(LIMITS) if row["rule"] == rule], edition)


def retarder_class(permeance: float) -> str:
    """The vapor-retarder class of a dry-cup permeance.

    References
    ----------
    IRC 2021 Table R702.7(1), read in a reference page that quotes it.
    """
    level = from_si(within("Permeance", permeance, 0.0, 6e-7, "kg/(s m2 Pa)"), "perm")
    level = round(level, 9)  # a limit typed in perms stays on its own side
    for row in _rows("retarder-class", None):
        if level <= amount(row, "high"):
            return row["relation"].removeprefix("class ")
    return "none"


def vent_area(rule: str, edition: Edition = None, **facts: Any) -> Ruling:
    """Net free area of a vented roof: a share of its area, a smaller one where the conditions hold.

    References
    ----------
    IRC R806.2; editions up to 2009 ask for one of the two conditions, later
    ones for both.
    """
    plain_rows, reduced_rows = _rows("vent-area-plain", edition), _rows("vent-area-reduced", edition)
    if not plain_rows:
        return _no_row(rule, edition)
    plain, reduced = plain_rows[0], reduced_rows[0]
    most, least = plain["value"], reduced["value"]
    area, free = facts.get("vented_area"), facts.get("free_area")
    unknown = _missing(rule, plain, vented_area=area, net_free_area=free)
    if unknown:
        return unknown
    area = within("Vented area", area, 0.0, 1e5, "m2", above=True)
    free = within("Net free area", free, 0.0, 1e4, "m2")
    full, half = area * amount(plain), area * amount(reduced)
    told = {"free": _square(free), "area": _square(area)}
    nearly = 1 - 1e-9  # areas come from whole inches
    if free >= full * nearly:
        return ruling(rule, MET, message("codes.openings-enough", most=most, asked=_square(full), **told), plain)
    if free < half * nearly:
        why = message("codes.openings-too-small", least=least, asked=_square(half), **told)
        return ruling(rule, NOT_MET, why, reduced)
    high, tight = _upper(edition, facts), _warm_side(edition, facts)
    how = "both"
    if _rows("vent-area-conditions", edition)[0]["relation"] == "either":
        how = "either"
        answer = MET if MET in (high, tight) else NOT_MET if high == tight == NOT_MET else CANNOT_TELL
    else:
        both = (high, tight)
        answer = NOT_MET if NOT_MET in both else MET if both == (MET, MET) else CANNOT_TELL
    said = {"high": _answer(high), "retarder": _answer(tight)}
    asked = message(f"codes.conditions-{how}", **said)
    why = message("codes.openings-between", free=told["free"], least=least, most=most, conditions=asked)
    return ruling(rule, answer, why, reduced, asked)


def _square(area: float) -> str:
    return message("codes.square-meters", number=number(area, figures=4))


def _answer(answer: str) -> str:
    return message(f"codes.answer-{key(answer)}")


def _upper(edition: Edition, facts: dict[str, Any]) -> str:
    row, share, depth = _rows("vent-area-upper-share", edition)[0], facts.get("upper_share"), facts.get("upper_depth")
    if share is None:
        return CANNOT_TELL
    share = within("Share of high vents", share, 0.0, 1.0, "%")
    if not amount(row) - 1e-9 <= share <= amount(row, "high") + 1e-9:
        return NOT_MET
    limits = _rows("vent-area-upper-depth", edition)
    if not limits:
        return MET
    if depth is None:
        return CANNOT_TELL
    return MET if depth <= in_si(limits[0]) + 1e-9 else NOT_MET


def _warm_side(edition: Edition, facts: dict[str, Any]) -> str:
    row, where, level = _rows("vent-area-retarder", edition)[0], facts.get("zone"), facts.get("permeance")
    if row["zones"] != "all":
        if where is None:
            return CANNOT_TELL
        if zone(where)[0] not in row["zones"].split():
            return MET  # asked in the cold zones only
    if level is None:
        return CANNOT_TELL
    return MET if retarder_class(level) in ("I", "II") else NOT_MET


def retarder(rule: str, edition: Edition = None, **facts: Any) -> Ruling:
    """The interior vapor retarder of a frame wall by climate zone.

    References
    ----------
    IRC R702.7 and its tables; R601.3 in the edition of 2009, R318.1 and
    N1102.5 before it.
    """
    found = newest(table(RETARDERS), edition)
    if not found:
        return _no_row(rule, edition)
    unknown = _missing(rule, found[0], climate_zone=facts.get("zone"), dry_cup_permeance=facts.get("permeance"))
    if unknown:
        return unknown
    where = zone(facts["zone"])
    fitting = [row for row in found if row["zone"] == where] or [row for row in found if row["zone"] == where[0]]
    if not fitting:
        return ruling(rule, CANNOT_TELL, message("codes.no-zone-row", zone=where), found[0])
    row, kind = fitting[0], retarder_class(facts["permeance"])
    if kind == "none":
        needed = row["none"] == "prohibited"
        why = message("codes.no-retarder", zone=where, asked=needed)
        return ruling(rule, NOT_MET if needed else MET, why, row)
    film = {"permeance": shown(facts["permeance"], "perm"), "class": kind, "zone": where}
    opens = facts.get("responsive")
    says = row[f"class_{len(kind)}"]
    if says == "prohibited":
        if opens and row["responsive"] == "permitted":
            return ruling(rule, MET, message("codes.permitted-since-it-opens", **film), row)
        return ruling(rule, NOT_MET, message("codes.prohibited", **film), row)
    if says == "too open":
        return ruling(rule, NOT_MET, message("codes.too-open", **film), row)
    outer = facts.get("outer_permeance")
    both = kind == "I" and outer is not None and retarder_class(outer) == "I"
    if both and not opens and row["both_sides"] == "design":
        return ruling(rule, NOT_MET, message("codes.both-sides"), row)
    if says == "permitted":
        return ruling(rule, MET, message("codes.permitted", **film), row)
    judged = _conditional(rule, row, film, facts)
    if says == "texts differ" and judged.answer != MET:
        return ruling(rule, CANNOT_TELL, message("codes.texts-differ", why=judged.why, zone=where), row)
    return judged


def _conditional(rule: str, row: Row, film: dict[str, str], facts: dict[str, Any]) -> Ruling:
    """Class III where it needs insulation outside or vented cladding."""
    over = facts.get("vented_cladding_over")
    if over and over in row["vented_cladding_over"].split():
        return ruling(rule, MET, message("codes.vented-cladding", over=over, **film), row)
    outside, wall = facts.get("exterior_insulation"), facts.get("wall")
    if wall is None or (outside is None and over is None):
        asked = {"wall": wall, "outside": outside, "cladding": over}
        tell = listing([message(f"codes.unknown-{name}") for name, value in asked.items() if value is None])
        return ruling(rule, CANNOT_TELL, message("codes.only-with", list=tell, **film), row)
    if wall not in _WALLS:
        raise UnknownName("wall", wall, _WALLS)
    least = to_si(amount(row, f"ci_{wall}_R"), "R")
    have = within("Insulation outside", outside or 0.0, 0.0, 20.0, "m2 K/W")
    answer = MET if have >= least - 1e-9 else NOT_MET
    why = message("codes.wall-asks", wall=wall, asked=shown(least, "R"), have=shown(have, "R"), **film)
    return ruling(rule, answer, why, row)


def class_2_insulation(rule: str, edition: Edition = None, **facts: Any) -> Ruling:
    """Insulation outside a frame wall that has a class II retarder inside.

    References
    ----------
    IRC 2021 Table R702.7(4), read in a state's code that takes over the same
    table of the IBC.
    """
    found = newest(table(CLASS_2), edition)
    if not found:
        return _no_row(rule, edition)
    where, wall, have = (facts.get(key) for key in ("zone", "wall", "exterior_insulation"))
    unknown = _missing(rule, found[0], climate_zone=where, wall=wall, outside=have)
    if unknown:
        return unknown
    if wall not in _WALLS:
        raise UnknownName("wall", wall, _WALLS)
    where = zone(str(where))
    fitting = [row for row in found if row["zone"] == where[0]]
    if not fitting:
        return ruling(rule, CANNOT_TELL, message("codes.no-zone-row", zone=where), found[0])
    least = to_si(amount(fitting[0], f"ci_{wall}_R"), "R")
    have = within("Insulation outside", have, 0.0, 20.0, "m2 K/W")
    why = message("codes.class-2-wall-asks", zone=where, wall=wall, asked=shown(least, "R"), have=shown(have, "R"))
    return ruling(rule, MET if have >= least - 1e-9 else NOT_MET, why, fitting[0])


__all__ = [
    "EDITIONS",
    "Ruling",
    "judge",
    "key",
    "locally",
    "retarder_class",
    "required",
    "rules",
    "several",
    "unvented_roof",
    "wood_pore_humidity_limit",
    "years",
]

# Rules made of more than one row or fact.
_TOGETHER = {
    "retarder": retarder,
    "class-2-insulation": class_2_insulation,
    "vent-area": vent_area,
}
# Rows that only such a rule can judge.
_PARTS = (
    "retarder-class",
    "vent-area-plain",
    "vent-area-reduced",
    "vent-area-conditions",
    "vent-area-upper-share",
    "vent-area-upper-depth",
)
_FACTS = (
    "value",
    "vented_area",
    "free_area",
    "permeance",
    "upper_share",
    "upper_depth",
    "wall",
    "exterior_insulation",
    "vented_cladding_over",
    "outer_permeance",
    "responsive",
)
_EXACT = 1e-9
#: In place of what to give where a rule asks for no number.
_REFUSED = object()
T = TypeVar("T")


def rules() -> dict[str, str]:
    """Every rule that `judge` knows, with what it takes in words."""
    found = {rule: message(f"codes.rule-{rule}") for rule in _TOGETHER}
    for row in table(LIMITS):
        if row["rule"] not in _PARTS:
            found.setdefault(row["rule"], _quantity(row["rule"]))
    return found


def _quantity(rule: str) -> str:
    """What a rule of one row takes."""
    return message(f"codes.quantity-{rule}")


def _all(rule: str) -> Rows:
    """Every row of a rule, whatever its edition."""
    if rule in ("retarder", "class-2-insulation"):
        return table(RETARDERS if rule == "retarder" else CLASS_2)
    part = "vent-area-plain" if rule == "vent-area" else rule
    return [row for row in table(LIMITS) if row["rule"] == part]


def _limit(rule: str, where: str | int | None, edition: Edition) -> Row | Ruling:
    """The one row of a rule, or a ruling that says why there is none."""
    found = newest(_all(rule), edition)
    if not found:
        return _no_row(rule, edition)
    zoned = any(row["zones"] not in ("", "all") for row in found)
    if not zoned:
        return found[0]
    if where is None:
        return ruling(
            rule, CANNOT_TELL, message("codes.quantity-needed", quantity=message("codes.fact-climate-zone")), found[0]
        )
    where = zone(where)
    fitting = of_zone(found, where)
    if len({row["value"] for row in fitting}) > 1:
        return ruling(rule, CANNOT_TELL, message("codes.needs-letter", zone=where), fitting[0])
    if fitting:
        return fitting[0]
    answer = {"not asked": MET, "not allowed": NOT_MET}.get(found[0]["elsewhere"], CANNOT_TELL)
    id = {MET: "codes.not-asked", NOT_MET: "codes.not-allowed", CANNOT_TELL: "codes.no-row-names"}[answer]
    return ruling(rule, answer, message(id, zone=where), found[0])


@overload
def required(rule: str, zone: str | int | None = None, edition: Edition = None) -> float: ...
@overload
def required(rule: str, zone: str | int | None = None, edition: Edition = None, *, otherwise: T) -> float | T: ...
def required(
    rule: str, zone: str | int | None = None, edition: Edition = None, *, otherwise: object = _REFUSED
) -> object:
    """The number a rule asks for, in SI; where it asks for none `otherwise`, or an error that says so."""
    if rule not in {row["rule"] for row in table(LIMITS)}:
        raise UnknownName("code rule", rule, rules())
    instead = unread(rule, _all(rule), edition)
    row = _limit(rule, zone, instead["shown"] if instead else edition)
    if not isinstance(row, Ruling):
        return in_si(row)
    if otherwise is _REFUSED:
        raise UnknownName("number of the code rule", rule, ())
    return otherwise


def _holds(row: Row, value: float) -> bool:
    low = amount(row)
    slack = _EXACT * max(1.0, abs(low))
    given = value
    relation = row["relation"]
    if relation == "at least":
        return given >= low - slack
    if relation == "at most":
        return given <= low + slack
    if relation == "below":
        return given < low - slack
    if relation == "above":
        return given > low + slack
    return low - slack <= given <= amount(row, "high") + slack  # between


def judge(rule: str, zone: str | int | None = None, edition: Edition = None, **facts: Any) -> Ruling:
    """Whether facts meet a rule of the codes, and why."""
    for name in facts:
        if name not in _FACTS:
            raise UnknownName("fact", name, _FACTS)
    if rule not in rules():
        raise UnknownName("code rule", rule, rules())
    instead = unread(rule, _all(rule), edition)
    if instead:
        found = judge(rule, zone, instead["shown"], **facts)
        how = "; ".join(part for part in (instead["how_read"], found.how_read) if part)
        said = message("codes.not-read", asked=str(edition), shown=instead["shown"])
        return dataclasses.replace(found, instead=said, how_read=how)
    if rule in _TOGETHER:
        return _TOGETHER[rule](rule, edition, zone=zone, **facts)
    row = _limit(rule, zone, edition)
    if isinstance(row, Ruling):
        return row
    value = facts.get("value")
    quantity = _quantity(rule)
    if value is None:
        return ruling(rule, CANNOT_TELL, message("codes.quantity-needed", quantity=quantity), row)
    value = within(message("codes.the-quantity", quantity=quantity), value, -1e6, 1e6)
    holds = _holds(row, in_unit(value, row["unit"]))
    asks = message(f"codes.asks-{row['asks']}", value=shown(in_si(row), row["unit"]))
    why = message("codes.row-says", quantity=quantity, shown=shown(value, row["unit"]), asks=asks)
    return ruling(rule, MET if holds else NOT_MET, why, row)


def wood_pore_humidity_limit(temperature: float) -> float:
    """Highest daily mean humidity of the air in the pores of solid wood.

    Notes
    -----
    95 % at 0 degC and 86 % at 30 degC; the straight line between them is from
    memory.

    References
    ----------
    WTA rule for solid wood, read in a text that quotes it.
    """
    t = within("Wood temperature", temperature, 0.0, 30.0, "degC")
    return 0.95 - (0.95 - 0.86) * t / 30.0


def unvented_roof(
    zone: str | int | None,
    edition: Edition = None,
    *,
    resistance: float | None = None,
    inner_permeance: float | None = None,
    foam_permeance: float | None = None,
    shingle_gap: float | None = None,
    tile: bool = False,
) -> tuple[Ruling, ...]:
    """The conditions of an unvented rafter roof, one ruling each.

    References
    ----------
    IRC R806.5, read in documents that quote it.
    """
    under_tiles = tile and zone and required("unvented-insulation-tile", zone, edition, otherwise=None) is not None
    asked = {
        "unvented-insulation-tile" if under_tiles else "unvented-insulation": resistance,
        "unvented-inner-class": inner_permeance,
    }
    if resistance != 0:
        asked["unvented-class-2"] = foam_permeance
    if shingle_gap is not None:
        asked["unvented-shingle-gap"] = shingle_gap
    return tuple(judge(rule, zone=zone, edition=edition, value=value) for rule, value in asked.items())
