"""Rules of the codes that take more than one number.

Each function gives a ruling from facts; a fact that is not known is None,
and the ruling then says what is missing.
"""

from dryward.building.code_rows import (
    CANNOT_TELL,
    CLASS_2,
    LIMITS,
    MET,
    NOT_MET,
    RETARDERS,
    amount,
    in_si,
    newest,
    ruling,
    shown,
    table,
    zone,
)
from dryward.checks import UnknownName, within
from dryward.units import from_si, to_si

_WALLS = ("2x4", "2x6")


def _missing(rule, row, **facts):
    """A ruling that names what is not known; None when everything is."""
    names = [name.replace("_", " ") for name, value in facts.items() if value is None]
    if not names:
        return None
    both = " both" if len(names) == 2 else ""
    listed = f"{', the '.join(names[:-1])} and the {names[-1]}" if len(names) > 1 else names[0]
    return ruling(rule, CANNOT_TELL, f"the {listed} must{both} be known", row)


def _rows(rule, edition):
    return newest([row for row in table(LIMITS) if row["rule"] == rule], edition)


def retarder_class(permeance):
    """The vapor-retarder class of a dry-cup permeance.

    Parameters
    ----------
    permeance : float
        Dry cup [kg/(s m2 Pa)], 0 to 6e-7.

    Returns
    -------
    {"I", "II", "III", "none"}

    Raises
    ------
    OutOfRange
        Outside the range.

    References
    ----------
    IRC 2021 Table R702.7(1), read in a reference page that quotes it.

    Examples
    --------
    >>> retarder_class(to_si(0.7, "perm")), retarder_class(to_si(12, "perm"))
    ('II', 'none')
    """
    level = from_si(within("Permeance", permeance, 0.0, 6e-7, "kg/(s m² Pa)"), "perm")
    level = round(level, 9)  # a limit typed in perms stays on its own side
    for row in _rows("retarder-class", None):
        if level <= amount(row, "high"):
            return row["relation"].removeprefix("class ")
    return "none"


def vent_area(rule, edition=None, **facts):
    """Net free area of a vented roof: a share of its area, a smaller one where the conditions hold.

    Parameters
    ----------
    rule : str
        Id for the ruling.
    edition : str or int, optional
        Otherwise the newest.
    **facts
        vented_area and free_area [m2]; zone; permeance of the warm side, dry
        cup [kg/(s m2 Pa)]; upper_share of the area [-]; upper_depth of the
        upper vents below the ridge [m].

    Returns
    -------
    Ruling

    References
    ----------
    IRC R806.2; editions up to 2009 ask for one of the two conditions, later
    ones for both.

    Examples
    --------
    >>> vent_area("vent-area", vented_area=111.5, free_area=0.75).answer
    'met'
    """
    plain, reduced = _rows("vent-area-plain", edition), _rows("vent-area-reduced", edition)
    if not plain:
        return ruling(rule, CANNOT_TELL, f"there is no row for the edition {edition}")
    plain, reduced = plain[0], reduced[0]
    most, least = plain["value"], reduced["value"]
    area, free = facts.get("vented_area"), facts.get("free_area")
    unknown = _missing(rule, plain, vented_area=area, net_free_area=free)
    if unknown:
        return unknown
    area = within("Vented area", area, 0.0, 1e5, "m²", above=True)
    free = within("Net free area", free, 0.0, 1e4, "m²")
    full, half = area * amount(plain), area * amount(reduced)
    have = f"{free:.4g} m² of net free area"
    nearly = 1 - 1e-9  # areas come from whole inches
    if free >= full * nearly:
        return ruling(rule, MET, f"{have} is at least {most} of {area:.4g} m², {full:.4g} m²", plain)
    if free < half * nearly:
        return ruling(rule, NOT_MET, f"{have} is below even {least} of {area:.4g} m², {half:.4g} m²", reduced)
    high, tight = _upper(edition, facts), _warm_side(edition, facts)
    if _rows("vent-area-conditions", edition)[0]["relation"] == "either":
        answer = MET if MET in (high, tight) else NOT_MET if high == tight == NOT_MET else CANNOT_TELL
        asked = "one of: high vents, or a retarder inside"
    else:
        both = (high, tight)
        answer = NOT_MET if NOT_MET in both else MET if both == (MET, MET) else CANNOT_TELL
        asked = "both: a share of high vents, and in zones 6 to 8 a class I or II retarder inside"
    why = f"{have} is between {least} and {most}, which asks for {asked}; high vents: {high}; retarder: {tight}"
    return ruling(rule, answer, why, reduced, f"{asked}; high vents: {high}; retarder: {tight}")


def _upper(edition, facts):
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


def _warm_side(edition, facts):
    row, where, level = _rows("vent-area-retarder", edition)[0], facts.get("zone"), facts.get("permeance")
    if row["zones"] != "all":
        if where is None:
            return CANNOT_TELL
        if zone(where)[0] not in row["zones"].split():
            return MET  # asked in the cold zones only
    if level is None:
        return CANNOT_TELL
    return MET if retarder_class(level) in ("I", "II") else NOT_MET


def retarder(rule, edition=None, **facts):
    """The interior vapor retarder of a frame wall by climate zone.

    Parameters
    ----------
    rule : str
        Id for the ruling.
    edition : str or int, optional
        Otherwise the newest.
    **facts
        zone; permeance of the retarder, dry cup [kg/(s m2 Pa)]; for class
        III: wall ("2x4" or "2x6"), exterior_insulation [m2 K/W],
        vented_cladding_over ("panel", "fiberboard", "gypsum" or "none");
        outer_permeance [kg/(s m2 Pa)]; responsive (True when more than 1
        perm in the wet cup).

    Returns
    -------
    Ruling

    References
    ----------
    IRC R702.7 and its tables; R601.3 in the edition of 2009, R318.1 and
    N1102.5 before it.

    Examples
    --------
    >>> retarder("retarder", zone="6", permeance=to_si(0.7, "perm")).answer
    'met'
    """
    found = newest(table(RETARDERS), edition)
    if not found:
        return ruling(rule, CANNOT_TELL, f"there is no row for the edition {edition}")
    known = {"climate zone": facts.get("zone"), "dry-cup permeance": facts.get("permeance")}
    unknown = _missing(rule, found[0], **known)
    if unknown:
        return unknown
    where = zone(facts["zone"])
    fitting = [row for row in found if row["zone"] == where] or [row for row in found if row["zone"] == where[0]]
    if not fitting:
        return ruling(rule, CANNOT_TELL, f"the table has no row for zone {where}", found[0])
    row, kind = fitting[0], retarder_class(facts["permeance"])
    level = f"{shown(facts['permeance'], 'perm')}, class {kind}," if kind != "none" else "no retarder (over 10 perm)"
    if kind == "none":
        needed = row["none"] == "prohibited"
        why = f"{level}: zone {where} {'asks for one' if needed else 'asks for none'}"
        return ruling(rule, NOT_MET if needed else MET, why, row)
    opens = facts.get("responsive")
    says = row[f"class_{len(kind)}"]
    if says == "prohibited":
        if opens and row["responsive"] == "permitted":
            why = f"{level} is permitted inside in zone {where} because it opens to more than 1 perm in the wet cup"
            return ruling(rule, MET, why, row)
        return ruling(rule, NOT_MET, f"{level} is prohibited inside in zone {where}", row)
    if says == "too open":
        return ruling(rule, NOT_MET, f"{level} lets through more than the 1 perm that zone {where} asks for", row)
    outer = facts.get("outer_permeance")
    both = kind == "I" and outer is not None and retarder_class(outer) == "I"
    if both and not opens and row["both_sides"] == "design":
        return ruling(rule, NOT_MET, "class I on both sides needs an approved design", row)
    if says == "permitted":
        return ruling(rule, MET, f"{level} is permitted inside in zone {where}", row)
    found = _conditional(rule, row, where, level, facts)
    if says == "texts differ" and found.answer != MET:
        why = f"{found.why}; the texts of this edition differ on whether zone {where} asks for it: read the adopted one"
        return ruling(rule, CANNOT_TELL, why, row)
    return found


def _conditional(rule, row, where, level, facts):
    """Class III where it needs insulation outside or vented cladding."""
    over = facts.get("vented_cladding_over")
    if over and over in row["vented_cladding_over"].split():
        return ruling(rule, MET, f"{level} is permitted in zone {where} with vented cladding over {over}", row)
    outside, wall = facts.get("exterior_insulation"), facts.get("wall")
    if wall is None or (outside is None and over is None):
        why = f"{level} is permitted in zone {where} only with insulation outside or vented cladding"
        asked = {"the wall (2x4 or 2x6)": wall, "the R outside it": outside, "the cladding": over}
        tell = [name for name, value in asked.items() if value is None]
        return ruling(rule, CANNOT_TELL, f"{why}; not known: {', '.join(tell)}", row)
    if wall not in _WALLS:
        raise UnknownName("wall", wall, _WALLS)
    least = to_si(amount(row, f"ci_{wall}_R"), "R")
    have = within("Insulation outside", outside or 0.0, 0.0, 20.0, "m² K/W")
    answer = MET if have >= least - 1e-9 else NOT_MET
    why = f"{level} in zone {where} on a {wall} wall asks for {shown(least, 'R')} outside; there is {shown(have, 'R')}"
    return ruling(rule, answer, why, row)


def class_2_insulation(rule, edition=None, **facts):
    """Insulation outside a frame wall that has a class II retarder inside.

    Parameters
    ----------
    rule : str
        Id for the ruling.
    edition : str or int, optional
        Otherwise the newest.
    **facts
        zone, wall ("2x4" or "2x6"), exterior_insulation [m2 K/W].

    Returns
    -------
    Ruling

    Raises
    ------
    UnknownName
        For another wall.

    References
    ----------
    IRC 2021 Table R702.7(4), read in a state's code that takes over the same
    table of the IBC.

    Examples
    --------
    >>> class_2_insulation("class-2-insulation", zone="7", wall="2x6", exterior_insulation=to_si(5, "R")).answer
    'not met'
    """
    found = newest(table(CLASS_2), edition)
    if not found:
        return ruling(rule, CANNOT_TELL, f"there is no row for the edition {edition}")
    where, wall, have = (facts.get(key) for key in ("zone", "wall", "exterior_insulation"))
    unknown = _missing(rule, found[0], **{"climate zone": where, "wall (2x4 or 2x6)": wall, "R outside": have})
    if unknown:
        return unknown
    if wall not in _WALLS:
        raise UnknownName("wall", wall, _WALLS)
    where = zone(where)
    fitting = [row for row in found if row["zone"] == where[0]]
    if not fitting:
        return ruling(rule, CANNOT_TELL, f"the table has no row for zone {where}", found[0])
    least = to_si(amount(fitting[0], f"ci_{wall}_R"), "R")
    have = within("Insulation outside", have, 0.0, 20.0, "m² K/W")
    why = f"zone {where} on a {wall} wall asks for {shown(least, 'R')} outside; there is {shown(have, 'R')}"
    return ruling(rule, MET if have >= least - 1e-9 else NOT_MET, why, fitting[0])
