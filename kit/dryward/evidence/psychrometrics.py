"""Moist air against the printed tables: saturation, humidity, real gas."""

from dryward import air
from dryward.evidence import table


def _saturation(row):
    return air.saturation_vapor_pressure(row.number("temperature_C"), over=row.text("over") or "auto")


_ANSWERS = {"saturation": _saturation}


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
    return table.answer("psychrometrics", _ANSWERS)
