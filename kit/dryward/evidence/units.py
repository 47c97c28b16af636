"""US and SI: each factor of the trade against its printed value."""

from dryward import units
from dryward.evidence import table

_ANSWERS = {
    "one unit": lambda row: units.from_si(units.to_si(row.number("amount"), row.text("of")), row.text("unit")),
    "read": lambda row: units.from_si(units.quantity(row.text("of"), row.text("as_quantity")), row.text("unit")),
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
    return table.answer("units", _ANSWERS)
