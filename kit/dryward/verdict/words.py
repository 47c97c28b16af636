"""A verdict in words: made from its facts at the last moment, in the reader's units.

Each function gives a piece of a sentence without its full stop.  `system`
is "us" or "si"; None writes both, for a page that is printed in either.
"""

from dryward import units
from dryward.checks import listed
from dryward.verdict.criteria import UNKNOWN
from dryward.verdict.findings import LATER, NEVER, WITHIN
from dryward.weather.monthly import DAYS

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


def capital(text):
    """The text with a capital."""
    return f"{text[:1].upper()}{text[1:]}"


def word(state):
    """The state as a head: Dry, Damp, Wet, Not known yet."""
    return capital(state)


def month_of(hour):
    """Name of the month of an hour of the year."""
    day = int(hour) // 24
    for name, days in zip(MONTHS, DAYS, strict=True):
        if day < days:
            return name
        day -= int(days)
    return MONTHS[-1]


def amount(value, unit, system):
    """A number with the unit of a limit, as it is shown.

    Examples
    --------
    >>> amount(0.388, "kg/m2", "si"), amount(0.388, "kg/m2", None)
    ('388 g/m²', '388 g/m² (556 gr/ft²)')
    """
    quantity = {"kg/m2": "area density", "kg/(s m2)": "vapor flux"}.get(unit)
    if quantity:
        shown = [units.show(value, quantity, each) for each in ((system,) if system else ("si", "us"))]
        return shown[0] if len(shown) == 1 else f"{shown[0]} ({shown[1]})"
    if unit == "% MC":
        return f"{value:.0f} % moisture content"
    if unit == "of 6":
        return f"{value:.1f} of 6"
    return f"{value * 100:.0f} %"


def where(place):
    """A place: "in the deck", "between insulation and outer layer"."""
    if not place.layer:
        return "in the whole assembly"
    if not place.side or not place.beside:
        return f"in the {place.layer}"
    if place.beside in ("room air", "outdoor air"):
        return f"at the {place.side} face of the {place.layer}"
    pair = (place.beside, place.layer) if place.side == "inner" else (place.layer, place.beside)
    return f"between {pair[0]} and {pair[1]}"


def how_wet(verdict, system=None):
    """How wet at worst, and where: the first part.

    Examples
    --------
    >>> from dryward.verdict import of_amount
    >>> how_wet(of_amount("winter", "winter-water", 0.3), "si")
    'the winter leaves 300 g/m² at the cold face'
    """
    found = verdict.worst
    if found is None:
        return "nothing gathers anywhere"
    return told(found, verdict.method, system)


def told(found, method, system=None):
    """One finding in words."""
    value, unit = found.value, found.criterion.unit
    shown, there = amount(value, unit, system), where(found.place)
    said = _SAID.get(found.what)
    if said:
        return said.format(shown=shown, there=there)
    if found.what == "wood-moisture":
        if found.full:
            return f"the {found.place.layer} is soaked: it holds all it can, {shown}"
        when = _when(found, method)
        verb = "would settle at" if method in ("steady", "face") else "reaches" if method == "months" else "peaks at"
        return f"the {found.place.layer} {verb} {shown}{when}"
    if found.what == "cladding-moisture":
        return f"the {found.place.layer}, which the weather reaches, peaks at {shown}{_when(found, method)}"
    if found.what == "mold-index":
        return f"the mold index reaches {shown} {there}"
    if found.what == "free-water":
        kind = "frost" if found.frost else "water"
        off = f", of which {amount(found.ran_off, unit, system)} run off" if found.ran_off > 0.5e-3 else ""
        return f"up to {shown} of {kind} gather {there}{_when(found, method)}{off}"
    if found.what == "steady-gain":
        kind = "frost" if found.frost else "water"
        return f"{shown} of {kind} gather {there}"
    return f"{found.quantity}: {shown}"


_SAID = {
    "growth": "each year adds {shown}",
    "carry-over": "{shown} need more than a year to leave",
    "face-humidity": "the dampest face settles at {shown} humidity, {there}",
    "winter-water": "the winter leaves {shown} at the cold face",
    "night-frost": "a night leaves {shown} of frost",
    "vent-share": "{shown} of what the vent air can carry comes",
    "window-edge": "the air at the edge of the pane is at {shown}",
    "window-glass": "the air at the middle of the pane is at {shown}",
}


def _when(found, method):
    if found.when is None:
        return ""
    return f" in {month_of(found.when)}" if method == "year" else f" in {MONTHS[found.when - 1]}"


def how_long(verdict):
    """How long it is past its caution limit: the second part; empty where no time is counted."""
    found = verdict.worst
    if found is None or found.lasted is None:
        return ""
    limit = found.criterion
    over = f"{limit.caution:.0f} %" if limit.unit == "% MC" else "the caution level"
    if verdict.method == "months":
        count = round(found.lasted)
        return f"over {over} in {count} of 12 months" if count else f"over {over} in no month"
    if not found.lasted:
        return f"never over {over}"
    days = found.lasted / 24.0
    if days < 1.0:
        return f"over {over} for less than a day"
    count = round(days)
    return f"over {over} for {count} day{'s' * (count > 1)}" if count < 365 else f"over {over} all year"


def does_it_dry(verdict):
    """Whether it dries, and whither: the third part; empty where the method cannot say."""
    way = {None: "", "both ways": ", both ways"}.get(verdict.toward, f", mostly {verdict.toward}")
    if verdict.dries is None or (verdict.worst and verdict.worst.what in ("growth", "carry-over")):
        return ""  # the first part has said it
    return {
        WITHIN: f"what gathers leaves within the year{way}",
        LATER: f"it needs more than a year to dry{way}",
        NEVER: "it does not dry: each year ends wetter than it began",
    }[verdict.dries]


def sentence(verdict, system=None):
    """All parts as one sentence, the state first.

    Examples
    --------
    >>> from dryward.verdict import unknown
    >>> sentence(unknown("year"))
    'Not known yet.'
    """
    if verdict.state == UNKNOWN:
        return f"{word(verdict.state)}."
    parts = [how_wet(verdict, system), how_long(verdict)]
    said = ", ".join(part for part in parts if part)
    dries = does_it_dry(verdict)
    return f"{word(verdict.state)}: {said}{f'; {dries}' if dries else ''}."


def left_out(verdict):
    """What was not counted, as a list in words; empty for nothing."""
    named = [LEFT_OUT[each] for each in verdict.left_out]
    return listed(named) if named else ""


def decides(verdict, system=None):
    """What decides: the uncertain input and where it takes the answer; empty where that was not worked out."""
    found = verdict.decides
    if found is None:
        return ""
    name = _INPUTS[found.what].format(found.layer)
    unit = verdict.worst.criterion.unit if verdict.worst else ""
    span = f"{amount(found.low, unit, system)} to {amount(found.high, unit, system)}"
    first, last = found.states
    turns = f", {first} to {last}" if first != last else f", {first} all along"
    return f"the {name}: within its range {span}{turns}"


_INPUTS = {
    "conductivity": "heat conduction of the {}",
    "permeance": "permeance of the {}",
    "sorption": "water the {} holds",
    "leak": "size of the air leak",
    "long share": "part of the air leak that seeps through the insulation",
}
