"""Code rules, judged: met, not met, or cannot tell, and why.

A rule is a row of ``data/codes/``: edition, section, zone, number, source,
and how it was read.  Most were read in documents that quote the code, some
are from memory; each ruling says so.  Unless another edition is asked for, a
rule is judged by the newest that was read; where an edition could not be
read, another is shown in its place and the ruling says which.  What counts
is the code as adopted locally; the building official decides.
"""

import dataclasses

from dryward.building import code_rules
from dryward.building.code_rows import (
    CANNOT_TELL,
    CLASS_2,
    EDITIONS,
    LIMITS,
    LOCALLY,
    MET,
    NOT_MET,
    RETARDERS,
    Ruling,
    amount,
    in_si,
    newest,
    of_zone,
    ruling,
    shown,
    table,
    unread,
    zone,
)
from dryward.building.code_rules import retarder_class
from dryward.checks import UnknownName, within
from dryward.units import UNITS, from_si

__all__ = [
    "EDITIONS",
    "LOCALLY",
    "Ruling",
    "judge",
    "retarder_class",
    "required",
    "rules",
    "unvented_roof",
    "wood_pore_humidity_limit",
]

# Rules made of more than one row or fact.
_TOGETHER = {
    "retarder": code_rules.retarder,
    "class-2-insulation": code_rules.class_2_insulation,
    "vent-area": code_rules.vent_area,
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


def rules():
    """Every rule that `judge` knows, with what it takes in words.

    Returns
    -------
    dict
        Id to the quantity that is judged.

    Examples
    --------
    >>> rules()["vent-air-space"]
    'air space between insulation and sheathing'
    """
    found = {
        "retarder": "interior vapor retarder of a frame wall",
        "class-2-insulation": "insulation outside a wall with a class II retarder",
        "vent-area": "net free area of a vented roof",
    }
    for row in table(LIMITS):
        if row["rule"] not in _PARTS:
            found.setdefault(row["rule"], row["quantity"])
    return found


def _all(rule):
    """Every row of a rule, whatever its edition."""
    if rule in ("retarder", "class-2-insulation"):
        return table(RETARDERS if rule == "retarder" else CLASS_2)
    part = "vent-area-plain" if rule == "vent-area" else rule
    return [row for row in table(LIMITS) if row["rule"] == part]


def _limit(rule, where, edition):
    """The one row of a rule, or a ruling that says why there is none."""
    found = newest(_all(rule), edition)
    if not found:
        return None, ruling(rule, CANNOT_TELL, f"there is no row for the edition {edition}")
    zoned = any(row["zones"] not in ("", "all") for row in found)
    if not zoned:
        return found[0], None
    if where is None:
        return None, ruling(rule, CANNOT_TELL, "the climate zone must be known", found[0])
    where = zone(where)
    fitting = of_zone(found, where)
    if len({row["value"] for row in fitting}) > 1:
        return None, ruling(rule, CANNOT_TELL, f"zone {where} needs its letter here", fitting[0])
    if fitting:
        return fitting[0], None
    answer = {"not asked": MET, "not allowed": NOT_MET}.get(found[0]["elsewhere"], CANNOT_TELL)
    words = {MET: f"not asked in zone {where}", NOT_MET: f"not allowed in zone {where}"}
    return None, ruling(rule, answer, words.get(answer, f"no row names zone {where}"), found[0])


def required(rule, zone=None, edition=None):
    """The number a rule asks for, in SI.

    Parameters
    ----------
    rule : str
        One of `rules()` that is a single limit.
    zone : str, optional
        Climate zone, where the rule has zones.
    edition : str or int, optional
        Otherwise the newest that was read.

    Returns
    -------
    float or None
        None where the rule has no number for the zone or the edition; for an
        edition that could not be read, that of the edition shown in its place.

    Raises
    ------
    UnknownName
        For a rule or a zone that is not known.

    Examples
    --------
    >>> round(required("unvented-insulation", zone="5A"), 3)
    3.522
    """
    if rule not in {row["rule"] for row in table(LIMITS)}:
        raise UnknownName("code rule", rule, rules())
    instead = unread(rule, _all(rule), edition)
    row, _ = _limit(rule, zone, instead["shown"] if instead else edition)
    return None if row is None else in_si(row)


def _holds(row, value):
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


def judge(rule, zone=None, edition=None, **facts):
    """Whether facts meet a rule of the codes, and why.

    Parameters
    ----------
    rule : str
        One of `rules()`.
    zone : str or int, optional
        Climate zone such as ``"5A"`` or ``"marine 4"``.
    edition : str or int, optional
        A year; otherwise the newest edition that was read.
    **facts
        In SI.  A rule with one number takes ``value``; "retarder",
        "class-2-insulation" and "vent-area" take those of their own.

    Returns
    -------
    Ruling
        Never more than an opinion: as adopted locally; the building official
        decides.

    Raises
    ------
    UnknownName
        For a rule, a fact or a zone that is not known.
    OutOfRange
        For a fact out of range.

    Examples
    --------
    >>> judge("vent-air-space", value=0.019).answer
    'not met'
    >>> judge("unvented-insulation", zone="4", value=3.0).answer
    'cannot tell'
    """
    for name in facts:
        if name not in _FACTS:
            raise UnknownName("fact", name, _FACTS)
    if rule not in rules():
        raise UnknownName("code rule", rule, rules())
    instead = unread(rule, _all(rule), edition)
    if instead:
        found = judge(rule, zone, instead["shown"], **facts)
        how = "; ".join(part for part in (instead["how_read"], found.how_read) if part)
        said = f"{edition} was not read, so this is the row of {instead['shown']}"
        return dataclasses.replace(found, instead=said, how_read=how)
    if rule in _TOGETHER:
        return _TOGETHER[rule](rule, edition, zone=zone, **facts)
    row, reason = _limit(rule, zone, edition)
    if row is None:
        return reason
    value = facts.get("value")
    if value is None:
        return ruling(rule, CANNOT_TELL, f"the {row['quantity']} must be known", row)
    value = within(f"The {row['quantity']}", value, -1e6, 1e6)
    holds = _holds(row, _in_unit(value, row))
    why = f"{row['quantity']} {shown(value, row['unit'])}; the rule: {row['words']}"
    return ruling(rule, MET if holds else NOT_MET, why, row)


def _in_unit(value, row):
    return from_si(value, row["unit"]) if row["unit"] in UNITS else value


def wood_pore_humidity_limit(temperature):
    """Highest daily mean humidity of the air in the pores of solid wood.

    Parameters
    ----------
    temperature : float
        Of the wood [degC], 0 to 30.

    Returns
    -------
    float
        [-].

    Raises
    ------
    OutOfRange
        Outside 0 to 30 degC.

    Notes
    -----
    95 % at 0 degC and 86 % at 30 degC; the straight line between them is from
    memory.

    References
    ----------
    WTA rule for solid wood, read in a text that quotes it.

    Examples
    --------
    >>> round(wood_pore_humidity_limit(20.0), 3)
    0.89
    """
    t = within("Wood temperature", temperature, 0.0, 30.0, "°C")
    return 0.95 - (0.95 - 0.86) * t / 30.0


def unvented_roof(
    zone,
    edition=None,
    *,
    resistance=None,
    inner_permeance=None,
    foam_permeance=None,
    shingle_gap=None,
    tile=False,
):
    """The conditions of an unvented rafter roof, one ruling each.

    Parameters
    ----------
    zone : str or int
        Climate zone.
    edition : str or int, optional
        Otherwise the newest that was read.
    resistance : float, optional
        Of the air-impermeable insulation at or above the deck [m2 K/W], at
        least 0; 0 where there is none, None where it is not known.
    inner_permeance : float, optional
        Of the tightest layer on the ceiling side, dry cup [kg/(s m2 Pa)], 0
        to 6e-7.
    foam_permeance : float, optional
        Of the air-impermeable insulation or its coating, dry cup
        [kg/(s m2 Pa)], 0 to 6e-7.  With no insulation of that kind the
        condition falls away.
    shingle_gap : float, optional
        Vented gap under wood shingles [m], at least 0; None without wood
        shingles.
    tile : bool, optional
        Whether the roof is covered with tiles.

    Returns
    -------
    tuple of Ruling
        A fact that was not given is answered with "cannot tell".

    Raises
    ------
    UnknownName
        For a zone that is not known.

    References
    ----------
    IRC R806.5, read in documents that quote it.

    Examples
    --------
    >>> from dryward.units import to_si
    >>> [each.answer for each in unvented_roof("6", resistance=to_si(20, "R"), inner_permeance=to_si(7, "perm"))]
    ['not met', 'met', 'cannot tell']
    >>> [each.answer for each in unvented_roof("6", resistance=0.0, inner_permeance=to_si(7, "perm"))]
    ['not met', 'met']
    """
    under_tiles = tile and zone and required("unvented-insulation-tile", zone, edition) is not None
    asked = {
        "unvented-insulation-tile" if under_tiles else "unvented-insulation": resistance,
        "unvented-inner-class": inner_permeance,
    }
    if resistance != 0:
        asked["unvented-class-2"] = foam_permeance
    if shingle_gap is not None:
        asked["unvented-shingle-gap"] = shingle_gap
    return tuple(judge(rule, zone=zone, edition=edition, value=value) for rule, value in asked.items())
