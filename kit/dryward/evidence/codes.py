"""Code rules: the numbers they ask for, and verdicts on printed cases."""

from dryward.building import codes
from dryward.checks import BadFile
from dryward.evidence import table
from dryward.units import to_si

_WORDS = ("wall", "vented_cladding_over", "zone")


def _facts(row):
    """The facts of ``inputs``: numbers with units, and a few words."""
    facts = {}
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
                raise BadFile(f'Row {row.id} of the table codes: "{part}" is not understood.') from None
    return facts


def _zone(row):
    return row.text("zone") or None


def _judged(row):
    return codes.judge(row.text("rule"), zone=_zone(row), edition=row.text("edition") or None, **_facts(row)).answer


def _section(row):
    return codes.judge(row.text("rule"), zone=_zone(row), edition=row.text("edition"), **_facts(row)).section


def _required(row):
    return row.in_its_unit(codes.required(row.text("rule"), zone=_zone(row), edition=row.text("edition") or None))


def _area(row):
    """The area that a ratio asks for, in the unit of the row."""
    ratio = codes.required(row.text("rule"), edition=row.text("edition") or None)
    return row.in_its_unit(ratio * row.given("area") * row.given("share", 1.0))


_ANSWERS = {
    "class": lambda row: codes.retarder_class(row.given("permeance")),
    "judged": _judged,
    "section": _section,
    "required": _required,
    "area": _area,
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
    return table.answer("codes", _ANSWERS)
