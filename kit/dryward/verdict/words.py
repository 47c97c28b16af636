"""A verdict in words: made from its facts at the last moment, in the reader's units.

Each function gives a piece of a sentence without its full stop.  `system`
is "us" or "si"; None writes both, for a page that is printed in either.
"""

import math

from dryward import units
from dryward.language import listed
from dryward.verdict.findings import DRY, LATER, NEVER, UNKNOWN, WET, WITHIN, Decides, Finding, Place, Verdict
from dryward.weather import DAYS

#: Names of the months.
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
#: What a verdict leaves out, in words.
LEFT_OUT = {
    "rain": "rain",
    "framing": "framing",
    "leak": "air leaks",
    "storage": "storage in the layers",
    "time": "time",
    "sun": "sun",
}


def capital(text: str) -> str:
    """The text with a capital."""
    return f"{text[:1].upper()}{text[1:]}"


def word(state: str) -> str:
    """The state as a head: Dry, Damp, Wet, Not known yet."""
    return capital(state)


def adjective(state: str) -> str:
    """The state as it stands in a sentence: dry, damp, wet, not known yet."""
    return state


def month(number: int) -> str:
    """Name of a month, 1 to 12."""
    return MONTHS[number - 1]


def month_of(hour: float) -> str:
    """Name of the month of an hour of the year."""
    day = int(hour) // 24
    for name, days in zip(MONTHS, DAYS, strict=True):
        if day < days:
            return name
        day -= int(days)
    return MONTHS[-1]


def amount(value: float, unit: str, system: str | None, digits: int | None = None) -> str:
    """A number with the unit of a limit, as it is shown."""
    quantity = {"kg/m2": "area density", "kg/(s m2)": "vapor flux"}.get(unit)
    if quantity == "area density" and value >= MUCH:
        shown = [units.show_in(value, _LARGE[each]) for each in _both(system)]
        return shown[0] if len(shown) == 1 else f"{shown[0]} ({shown[1]})"
    if quantity:
        shown = [units.show(value, quantity, each, digits) for each in _both(system)]
        return shown[0] if len(shown) == 1 else f"{shown[0]} ({shown[1]})"
    if unit == "% MC":
        return f"{units.number(value, digits or 0)} % moisture content"
    if unit == "of 6":
        return f"{units.number(value, 1 if digits is None else digits)} of 6"
    return units.show(value, "relative humidity", "si", digits or 0)


#: From this much water on the larger units are written [kg/m2]: more than 7000 grains a square foot.
MUCH = 5.0
_LARGE = {"si": "kg/m2", "us": "lb/ft2"}


def _both(system: str | None) -> tuple[str, ...]:
    return (system,) if system else ("si", "us")


#: Size of one in the last digit that is shown first, by unit of a limit.
_LAST = {"% MC": 1.0, "of 6": 0.1, "": 0.01, "kg/m2": 1e-3}


def shown(found: Finding, system: str | None = None) -> str:
    """The value of a finding: with one digit more where rounding would carry it over a limit."""
    unit, last = found.criterion.unit, _LAST.get(found.criterion.unit)
    if last is None:
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
        return "in the whole assembly"
    if not place.side or not place.beside:
        return f"in the {place.layer}"
    if place.beside in ("room air", "outdoor air"):
        return f"at the {place.side} face of the {place.layer}"
    pair = (place.beside, place.layer) if place.side == "inner" else (place.layer, place.beside)
    return f"between {pair[0]} and {pair[1]}"


def face(place: Place) -> str:
    """A face by its own layer, where both sides of a gap are told apart."""
    return f"at the {place.side} face of the {place.layer}" if place.side else where(place)


def how_wet(verdict: Verdict, system: str | None = None) -> str:
    """How wet at worst, and where: the first part."""
    found = verdict.worst
    if found is None:
        return "nothing gathers anywhere"
    return told(found, verdict.method, system)


def told(found: Finding, method: str, system: str | None = None) -> str:
    """One finding in words."""
    unit, said = found.criterion.unit, _SAID.get(found.what)
    much, there = shown(found, system), where(found.place)
    if found.what == "vent-share" and math.isinf(found.value):
        return "water comes, and the vent air can carry none of it"
    if said:
        settles, lasting = ("would settle", when(found, method)) if found.if_it_lasted else ("settles", "")
        return said.format(shown=much, there=there, settles=settles, lasting=lasting, mold=mold(found))
    if found.what == "wood-moisture":
        if found.full:
            return f"the {found.place.layer} is soaked: it holds all it can, {much}"
        would = method in ("steady", "face") or found.if_it_lasted
        verb = "would settle at" if would else "reaches" if method == "months" else "peaks at"
        return f"the {found.place.layer} {verb} {much}{when(found, method)}"
    if found.what == "cladding-moisture":
        return f"the {found.place.layer}, which the weather reaches, peaks at {much}{when(found, method)}"
    if found.what == "mold-index":
        return f"the mold index reaches {much} {face(found.place)}"
    if found.what == "free-water":
        kind = "frost" if found.frost else "water"
        held, off = found.value - found.ran_off, amount(found.ran_off, unit, system)
        if found.ran_off <= 0.5e-3:
            return f"up to {much} of {kind} gather {there}{when(found, method)}"
        if held <= 0.5e-3:
            return f"{off} of {kind} run off {there} in the year"
        most = amount(held, unit, system)
        return f"up to {most} of {kind} gather {there}{when(found, method)} (and {off} run off in the year)"
    if found.what == "steady-gain":
        kind = "frost" if found.frost else "water"
        return f"{much} of {kind} gather {there}"
    return f"{found.quantity}: {much}"


_SAID = {
    "growth": "each year adds {shown}",
    "carry-over": "{shown} need more than a year to leave",
    "face-humidity": "the dampest face {settles} at {shown} humidity{lasting}, {there}{mold}",
    "winter-water": "the winter leaves {shown} at the cold face",
    "night-frost": "a night leaves {shown} of frost",
    "vent-share": "{shown} of what the vent air can carry comes",
    "window-edge": "the air at the edge of the pane is at {shown}",
    "window-glass": "the air at the middle of the pane is at {shown}",
}


def mold(found: Finding) -> str:
    """Why the humidity of a face counts or does not, with a comma before it; empty for a face that is full."""
    if found.state == WET:
        return ""
    if found.state != DRY:
        return ", and mold can grow"
    if math.isinf(found.criterion.caution):
        return ", too cold there for mold"
    return f", below the {found.criterion.caution * 100:.0f} % at which mold can start there"


def when(found: Finding, method: str) -> str:
    """In which month it is at its worst, with a space before it; empty where no time is counted."""
    if found.when is None:
        return ""
    if found.if_it_lasted:
        return f" if {MONTHS[found.when - 1]} lasted"
    return f" in {month_of(found.when)}" if method == "year" else f" in {MONTHS[found.when - 1]}"


def heading(found: Finding) -> str:
    """What one finding is of, as the head of a row."""
    return capital(_quantity(found).removeprefix("the "))


def how_long(verdict: Verdict) -> str:
    """How long it is past its caution limit: the second part; empty where no time is counted."""
    return lasted(verdict.worst, verdict.method) if verdict.worst else ""


def lasted(found: Finding, method: str) -> str:
    """How long one finding was at or above its caution limit; empty where no time is counted."""
    if found.lasted is None:
        return ""
    limit = found.criterion
    over = f"{limit.caution:.0f} %" if limit.unit == "% MC" else "the caution level"
    if method == "months":
        count = round(found.lasted)
        if found.if_it_lasted:
            return f"{f'{count} of the 12 months' if count else 'no month'} would take it over {over}"
        return f"over {over} in {count} of 12 months" if count else f"over {over} in no month"
    if not found.lasted:
        return f"never over {over}"
    days = found.lasted / 24.0
    if days < 1.0:
        return f"over {over} for less than a day"
    count = round(days)
    return f"over {over} for {count} day{'s' * (count > 1)}" if count < 365 else f"over {over} all year"


def wet_and_how_long(verdict: Verdict, system: str | None = None) -> str:
    """The first two parts."""
    wet, long = how_wet(verdict, system), how_long(verdict)
    mark = ";" if verdict.worst and verdict.worst.if_it_lasted else ","
    return f"{wet}{mark} {long}" if long else wet


def does_it_dry(verdict: Verdict) -> str:
    """Whether it dries, and whither: the third part; empty where the method cannot say."""
    way = {None: "", "both ways": ", both ways"}.get(verdict.toward, f", mostly {verdict.toward}")
    if verdict.dries is None or (verdict.worst and verdict.worst.what in ("growth", "carry-over")):
        return ""  # the first part has said it
    return {
        WITHIN: f"what gathers leaves within the year{way}",
        LATER: f"it needs more than a year to give its water back{way}",
        NEVER: "it stays so all year" if verdict.repeats else _GROWS,
    }[verdict.dries]


_GROWS = "it never gives all of it back: each year ends wetter than it began"


def account(verdict: Verdict, system: str | None = None) -> str:
    """All parts without the state, as a piece of a sentence."""
    said = wet_and_how_long(verdict, system)
    dries = does_it_dry(verdict)
    return f"{said}{f'; {dries}' if dries else ''}"


def sentence(verdict: Verdict, system: str | None = None) -> str:
    """All parts as one sentence, the state first."""
    if verdict.state == UNKNOWN:
        return f"{word(verdict.state)}."
    return f"{word(verdict.state)}: {account(verdict, system)}."


def left_out(verdict: Verdict) -> str:
    """What was not counted, as a list in words; empty for nothing."""
    named = [LEFT_OUT[each] for each in verdict.left_out]
    return listed(named) if named else ""


def input_of(decides: Decides) -> str:
    """An uncertain input in words, with its article."""
    return f"the {_INPUTS[decides.what].format(decides.layer)}"


def decides(verdict: Verdict, system: str | None = None) -> str:
    """What decides: the uncertain input and where it takes the answer; empty where that was not worked out."""
    found = verdict.decides
    if found is None:
        return ""
    first, last = found.states
    turns = f", {first} to {last}" if first != last else f", {first} at both ends"
    if verdict.worst is None:
        return f"{input_of(found)}: within its range{turns.removeprefix(',')}"
    unit = verdict.worst.criterion.unit
    low, high = (_bare(amount(each, unit, system)) for each in (found.low, found.high))
    alone = tuple(verdict.worst.criterion.state(each) for each in (found.low, found.high))
    if alone != found.states:  # another finding makes an end what it is
        turns = f", and the whole {first} to {last}" if first != last else f", and the whole {first} at both ends"
    return f"{input_of(found)}: within its range {_quantity(verdict.worst)} is {low} to {high}{turns}"


def flat(verdict: Verdict) -> bool:
    """Whether what decides takes the answer nowhere that could be read."""
    found, worst = verdict.decides, verdict.worst
    unit = worst.criterion.unit if worst else ""
    return found is None or found.low == found.high or amount(found.low, unit, "si") == amount(found.high, unit, "si")


def _bare(text: str) -> str:
    return text.removesuffix(" moisture content")


def _quantity(found: Finding) -> str:
    return _QUANTITIES.get(found.what, found.quantity).format(
        there=where(found.place), face=face(found.place), layer=found.place.layer
    )


_QUANTITIES = {
    "wood-moisture": "the moisture of the {layer}",
    "cladding-moisture": "the moisture of the {layer}",
    "mold-index": "the mold index {face}",
    "free-water": "the water {there}",
    "growth": "what each year adds",
    "carry-over": "what stays from year to year",
    "steady-gain": "the water gained {there}",
    "face-humidity": "the humidity of the dampest face",
}


_INPUTS = {
    "conductivity": "heat conduction of the {}",
    "permeance": "permeance of the {}",
    "sorption": "water the {} holds",
    "leak": "size of the air leak",
    "long share": "part of the air leak that seeps through the insulation",
}
