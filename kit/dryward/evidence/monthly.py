"""Twelve months: what gathers at the wet plane and what leaves it again."""

from dataclasses import dataclass
from functools import cache

import numpy as np

from dryward.evidence import formulas, table
from dryward.evidence.examples import example
from dryward.physics import monthly
from dryward.weather import MonthlyClimate, indoor

# Mean of each month of a typical year of a Polish city, 1971 to 2000, as a
# public worked example after ISO 13788 prints them [degC] and [%].
_TEMPERATURE = (0.2, -1.8, 2.7, 8.3, 13.0, 16.8, 18.2, 18.4, 13.5, 7.0, 2.2, -0.1)
_HUMIDITY = (86, 86, 79, 68, 62, 70, 72, 72, 81, 88, 91, 93)
_ROOM = 20.0
_FILMS = (0.13, 0.04)  # [m2 K/W]


@dataclass(frozen=True)
class _ClassThree:
    """Class 3 room air, worked with the saturation formula of ISO 13788 all through."""

    def at(self, climate):
        outdoors = formulas.iso_13788(climate.temperature) * climate.relative_humidity
        most = formulas.iso_13788(_ROOM)
        excess = indoor.humidity_class(3).excess(climate.temperature)
        return np.full(12, _ROOM), np.minimum(outdoors + excess, most)


def _climate():
    return MonthlyClimate(_TEMPERATURE, np.array(_HUMIDITY) / 100)


@cache
def _year(layers, formula):
    wall = example(layers, *_FILMS)
    if formula == "ISO 13788":
        return monthly.balance(wall, _climate(), _ClassThree(), saturation=formulas.iso_13788)
    return monthly.balance(wall, _climate(), indoor.humidity_class(3, _ROOM))


def _months(row):
    return _year(row.text("layers"), row.text("formula"))


def _of_month(quantity):
    def ask(row):
        year = _months(row)
        return quantity(year, year.month.index(int(row.number("month"))))

    return ask


def _pressure(of):
    return lambda row: of(_climate())[int(row.number("month")) - 1]


_SI = {
    "gained": _of_month(lambda year, k: (year.condensed[k] - year.evaporated[k]).sum()),
    "held": _of_month(lambda year, k: year.held[k].sum()),
    "left": lambda row: _months(row).left,
    "peak": lambda row: _months(row).peak,
    "outdoor vapor pressure": _pressure(lambda c: formulas.iso_13788(c.temperature) * c.relative_humidity),
    "room vapor pressure": _pressure(lambda c: _ClassThree().at(c)[1]),
    "outdoor vapor pressure, kit": _pressure(lambda c: c.vapor_pressure),
    "thermal resistance": lambda row: example(row.text("layers"), *_FILMS).thermal_resistance,
}
_ANSWERS = table.in_row_units(_SI)
_ANSWERS |= {
    "ending": lambda row: _months(row).ending,
    "first month": lambda row: _months(row).month[0],
    "peak month": lambda row: _months(row).peak_month,
    "wet plane": lambda row: " and ".join(f"{p.inner_layer}|{p.outer_layer}" for p in _months(row).planes) or "none",
    "dries within": _of_month(lambda year, k: "yes" if year.dried_within[k].any() else "no"),
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
    return table.answer("monthly", _ANSWERS)
