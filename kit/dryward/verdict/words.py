"""A verdict in words: made from its facts at the last moment, in the reader's language and units.

Each function gives a piece of a sentence without its full stop.  `system`
is "us" or "si"; None writes both, where the reader is not known yet.
"""

import math

from dryward import units
from dryward.language import called, listed, message
from dryward.units import amounts
from dryward.verdict.findings import DRY, LATER, SOAKED, UNKNOWN, WET, WITHIN, Decides, Finding, Place, Verdict
from dryward.weather import DAYS


def month(number: int) -> str:
    """Name of a month, 1 to 12."""
    return message("verdict.month", number=int(number))


def month_of(hour: float) -> str:
    """Name of the month of an hour of the year."""
    return month(_month_number(hour))


def _month_number(hour: float) -> int:
    day = int(hour) // 24
    for number, days in enumerate(DAYS, start=1):
        if day < days:
            return number
        day -= int(days)
    return len(DAYS)


def amount(value: float, unit: str, system: str | None, digits: int | None = None, *, named: bool = True) -> str:
    """A number with the unit of a limit, as it is shown; `named`: a moisture of wood is called so."""
    quantity = {"kg/m2": "area density", "kg/(s m2)": "vapor flux"}.get(unit)
    if quantity:
        if system is None:
            return units.in_both(amount(value, unit, "us", digits), amount(value, unit, "si", digits))
        if quantity == "area density" and value >= MUCH:
            return units.show_in(value, _LARGE[system])
        return units.show(value, quantity, system, digits)
    if unit == "of 6":
        return message("verdict.of-six", number=units.number(value, 1 if digits is None else digits))
    if unit == "% MC":
        share = units.show(value / 100.0, "relative humidity", "si", digits or 0)
        return message("verdict.moisture-content", share=share) if named else share
    return units.show(value, "relative humidity", "si", digits or 0)


def reading(moisture: float, digits: int = 0) -> str:
    """A moisture of wood [mass %] as it is shown; above what it tells of, that the wood is soaked.

    Examples
    --------
    >>> reading(26.04, 1), reading(122.0)
    ('26.0 %', 'over 45 %, soaked')
    """
    if moisture > SOAKED:
        return message("verdict.soaked", top=amount(SOAKED, "% MC", None, named=False))
    return amount(moisture, "% MC", None, digits, named=False)


#: From this much water on the larger units are written [kg/m2]: more than 7000 grains a square foot.
MUCH = 5.0
_LARGE = {"si": "kg/m2", "us": "lb/ft2"}
#: Size of one in the last digit that is shown first, by unit of a limit.
_LAST = {"% MC": 1.0, "of 6": 0.1, "": 0.01, "kg/m2": 1e-3}


def shown(found: Finding, system: str | None = None) -> str:
    """The value of a finding: with one digit more where rounding would carry it over a limit; or that it is soaked."""
    if found.soaked:
        return reading(found.value)
    unit, last = found.criterion.unit, _LAST.get(found.criterion.unit)
    if last is None or math.isinf(found.value):
        return amount(found.value, unit, system)
    first = 1 if unit == "of 6" else 0
    for more in range(3):
        step = last / 10**more
        if found.criterion.rank(round(found.value / step) * step + 1e-9) == found.criterion.rank(found.value):
            return amount(found.value, unit, system, first + more if more else None)
    return amount(found.value, unit, system, first + 2)


def where(place: Place) -> str:
    """A place: "in the deck", "between insulation and outer layer"."""
    if not place.layer:
        return message("verdict.in-the-whole")
    if not place.side or not place.beside:
        return message("verdict.in-the-layer", layer=called(place.layer))
    if place.beside in ("room air", "outdoor air"):
        return face(place)
    pair = (place.beside, place.layer) if place.side == "inner" else (place.layer, place.beside)
    return message("verdict.between", inner=called(pair[0]), outer=called(pair[1]))


def face(place: Place) -> str:
    """A face by its own layer, where both sides of a gap are told apart."""
    if not place.side:
        return where(place)
    return message("verdict.at-the-face", side=place.side, layer=called(place.layer))


def how_wet(verdict: Verdict, system: str | None = None) -> str:
    """How wet at worst, and where: the first part."""
    found = verdict.worst
    return message("verdict.nothing-gathers") if found is None else told(found, verdict.method, system)


def told(found: Finding, method: str, system: str | None = None) -> str:
    """One finding in words."""
    much = shown(found, system)
    if found.what == "wood-moisture":
        return _told_of_wood(found, method, much, system)
    if found.what == "cladding-moisture":
        return message(
            "verdict.found-cladding-moisture", layer=called(found.place.layer), amount=much,
            **_with_time("peaks", found, method),
        )  # fmt: skip
    if found.what == "free-water":
        return _told_of_water(found, method, much, system)
    if found.what == "face-humidity":
        return dampest(found, much)
    if found.what == "mold-index":
        return message("verdict.found-mold-index", amount=much, face=face(found.place))
    if found.what == "steady-gain":
        return message("verdict.found-steady-gain", amount=much, place=where(found.place), frost=found.frost)
    return message(f"verdict.found-{found.what}", amount=much, none=math.isinf(found.value))


def pores(found: Finding, system: str | None = None) -> str:
    """The water or frost in the pores of soaked wood, on the roof that amounts are told on."""
    systems = ("us", "si") if system is None else (system,)
    held = [amounts.whole_roof(found.unbound, each) for each in systems]
    areas = [amounts.roof_area(each) for each in systems]
    water, area = ((units.in_both(*each) if system is None else each[0]) for each in (held, areas))
    return message("verdict.on-the-roof", amount=water, area=area)


def _told_of_wood(found: Finding, method: str, much: str, system: str | None) -> str:
    if found.soaked:
        much, said = pores(found, system), _with_time("pores", found, method)
    elif found.full:
        said = {"how": "soaked", "when": ""}
    elif method in ("steady", "face") or found.if_it_lasted:
        said = _with_time("settles", found, method)
    else:
        said = _with_time("months" if method == "months" else "peaks", found, method)
    return message("verdict.found-wood-moisture", layer=called(found.place.layer), amount=much, **said)


def _told_of_water(found: Finding, method: str, much: str, system: str | None) -> str:
    """Water at a place: what is held there at most, and what runs off."""
    unit, held = found.criterion.unit, found.value - found.ran_off
    off, said = amount(found.ran_off, unit, system), _with_time("gathers", found, method)
    if found.ran_off > 0.5e-3:
        much, said = amount(held, unit, system), _with_time("both", found, method)
        if held <= 0.5e-3:
            said = {"how": "runs-off", "when": ""}
    return message(
        "verdict.found-free-water", amount=much, off=off, place=where(found.place), frost=found.frost, **said
    )


def _with_time(how: str, found: Finding, method: str) -> dict[str, str]:
    """How something is told, and with which time: facts of a message."""
    time = when(found, method)
    return {"how": f"{how}-when" if time else how, "when": time}


def dampest(found: Finding, much: str) -> str:
    """The humidity of a face, shown as `much`, and why it counts or does not."""
    facts = {
        "amount": much,
        "place": where(found.place),
        "mold": _mold(found),
        "limit": "" if math.isinf(found.criterion.caution) else amount(found.criterion.caution, "", "si"),
    }
    if found.if_it_lasted:
        return message("verdict.would-face-humidity", when=when(found, "months"), **facts)
    return message("verdict.found-face-humidity", **facts)


def _mold(found: Finding) -> str:
    """Why the humidity of a face counts or does not."""
    if found.state == WET:
        return "full"
    if found.state != DRY:
        return "grows"
    return "cold" if math.isinf(found.criterion.caution) else "below"


def when(found: Finding, method: str) -> str:
    """In which month it is at its worst; empty where no time is counted."""
    if found.when is None:
        return ""
    if found.if_it_lasted:
        return message("verdict.if-month-lasted", number=found.when)
    return message("verdict.in-month", number=_month_number(found.when) if method == "year" else found.when)


def shown_when(found: Finding, method: str, system: str | None = None) -> str:
    """The value of a finding, with the month it is reached in where time is counted."""
    much, time = shown(found, system), when(found, method)
    return message("verdict.amount-when", amount=much, when=time) if time else much


def limit_of(found: Finding) -> str:
    """The quantity that is limited, as the limits name it."""
    return message(f"verdict.limit-{found.what}")


def heading(found: Finding) -> str:
    """What one finding is of, as the head of a row."""
    return message(f"verdict.heading-{found.what}", **_of(found.place))


def _quantity(found: Finding) -> str:
    """What one finding is of, in a sentence."""
    return message(f"verdict.quantity-{found.what}", **_of(found.place))


def _of(place: Place) -> dict[str, str]:
    return {"layer": called(place.layer), "place": where(place), "face": face(place)}


def how_long(verdict: Verdict) -> str:
    """How long it is past its caution limit: the second part; empty where no time is counted."""
    return lasted(verdict.worst, verdict.method) if verdict.worst else ""


def lasted(found: Finding, method: str) -> str:
    """How long one finding was at or above its caution limit; empty where no time is counted."""
    if found.lasted is None:
        return ""
    own = found.criterion.unit == "% MC"
    limit = amount(found.criterion.caution, "% MC", "si", named=False) if own else message("verdict.caution-level")
    if method == "months":
        count = round(found.lasted)
        if found.if_it_lasted:
            return message("verdict.would-months", count=count, limit=limit)
        return message("verdict.lasted-months", count=count, limit=limit)
    if not found.lasted:
        return message("verdict.never-over", limit=limit)
    days = found.lasted / 24.0
    if days < 1.0:
        return message("verdict.over-less-than-a-day", limit=limit)
    if round(days) >= 365:
        return message("verdict.over-all-year", limit=limit)
    return message("verdict.over-days", count=round(days), limit=limit)


def wet_and_how_long(verdict: Verdict, system: str | None = None) -> str:
    """The first two parts."""
    wet, long = how_wet(verdict, system), how_long(verdict)
    if not long:
        return wet
    if verdict.worst and verdict.worst.if_it_lasted:
        return message("verdict.would-wet-and-how-long", wet=wet, long=long)
    return message("verdict.wet-and-how-long", wet=wet, long=long)


def does_it_dry(verdict: Verdict) -> str:
    """Whether it dries, and whither: the third part; empty where the method cannot say."""
    if verdict.dries is None or (verdict.worst and verdict.worst.what in ("growth", "carry-over")):
        return ""  # the first part has said it
    toward = {None: "untold", "both ways": "both"}.get(verdict.toward, verdict.toward)
    if verdict.dries == WITHIN:
        return message("verdict.leaves-within-the-year", toward=toward)
    if verdict.dries == LATER:
        return message("verdict.leaves-later", toward=toward)
    return message("verdict.stays-so") if verdict.repeats else message("verdict.grows-wetter")


def account(verdict: Verdict, system: str | None = None) -> str:
    """All parts without the state, as a piece of a sentence."""
    said, dries = wet_and_how_long(verdict, system), does_it_dry(verdict)
    return message("verdict.and-whether-it-dries", said=said, dries=dries) if dries else said


def sentence(verdict: Verdict, system: str | None = None) -> str:
    """All parts as one sentence, the state first."""
    head = message("verdict.head", state=verdict.state)
    if verdict.state == UNKNOWN:
        return message("verdict.unknown", head=head)
    return message("verdict.sentence", head=head, account=account(verdict, system))


def not_counted(what: str) -> str:
    """One of what a verdict leaves out, in words."""
    return message(f"verdict.left-out-{what}")


def left_out(verdict: Verdict) -> str:
    """What was not counted, as a list in words; empty for nothing."""
    return listed([not_counted(each) for each in verdict.left_out])


def input_of(decides: Decides) -> str:
    """An uncertain input in words, with its article."""
    return message(f"verdict.input-{decides.what.replace(' ', '-')}", layer=called(decides.layer))


def decides(verdict: Verdict, system: str | None = None) -> str:
    """What decides: the uncertain input and where it takes the answer; empty where that was not worked out."""
    found, worst = verdict.decides, verdict.worst
    if found is None:
        return ""
    turn = "same" if found.states[0] == found.states[-1] else "turns"
    facts = {
        "input": input_of(found),
        "first": message("verdict.state", state=found.states[0]),
        "last": message("verdict.state", state=found.states[-1]),
    }
    if worst is None:
        return message("verdict.decides-state", turn=turn, **facts)
    limit = worst.criterion
    low, high = (amount(each, limit.unit, system, named=False) for each in (found.low, found.high))
    if tuple(limit.state(each) for each in (found.low, found.high)) != found.states:
        turn = f"whole-{turn}"  # another finding makes an end what it is
        if low == high:
            turn = f"{turn}-flat"  # a range of one number would be no range
    return message("verdict.decides", turn=turn, quantity=_quantity(worst), low=low, high=high, **facts)


def flat(verdict: Verdict) -> bool:
    """Whether what decides takes the answer nowhere that could be read."""
    found, worst = verdict.decides, verdict.worst
    unit = worst.criterion.unit if worst else ""
    return found is None or found.low == found.high or amount(found.low, unit, "si") == amount(found.high, unit, "si")
