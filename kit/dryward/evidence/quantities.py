"""Units of the trade and moist air against printed tables: the short formulas and real air.

The short formulas treat moist air as an ideal gas; a row about real air (the
handbook's table of moist air, wet bulb, enthalpy, volume) is answered by
`air.moist_air`.
"""

from typing import Any

from dryward import air, units
from dryward.evidence import examples, table
from dryward.evidence.table import Answers, InSI, Row
from dryward.units import KELVIN

#: The US handbook counts the heat of dry air from 0 °F, the SI one from 0 °C.
_US_DATUM = -160 / 9


def _pressure(row: Row) -> float:
    return row.given("pressure", air.STANDARD_PRESSURE)


def _humidity_where(quantity: str, target: float, temperature: float, pressure: float) -> float:
    """The relative humidity at which real air has a given humidity ratio or wet bulb."""
    low, high = 1e-3, 1.0
    for _ in range(40):
        middle = 0.5 * (low + high)
        if getattr(air.moist_air(temperature, middle, pressure), quantity) < target:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def _real(row: Row) -> tuple[float, Any]:
    """Real air, a `MoistAir` of numbers, from its temperature and one of: humidity, humidity ratio, wet bulb."""
    temperature, pressure = row.given("temperature"), _pressure(row)
    share = row.given("humidity", -1.0)
    for name, quantity in (("ratio", "humidity_ratio"), ("wet_bulb", "wet_bulb")):
        target = row.given(name, -99.0)
        if target > -99.0:
            share = _humidity_where(quantity, target, temperature, pressure)
    return share, air.moist_air(temperature, share, pressure)


def _saturation(row: Row) -> float:
    return air.saturation_vapor_pressure(row.given("temperature"), over=row.text("over") or "auto")


def _vapor_pressure(row: Row) -> float:
    return air.vapor_pressure(row.given("temperature"), row.given("humidity"))


def _dew_point(row: Row) -> float:
    pressure = row.given("vapor_pressure", -1.0)
    return air.dew_point(pressure if pressure > 0 else _vapor_pressure(row), over=row.text("over") or "auto")


def _ratio(row: Row) -> float:
    pressure = row.given("vapor_pressure", -1.0)
    return air.humidity_ratio(pressure if pressure >= 0 else _vapor_pressure(row), _pressure(row))


def _humidity_of_dew_point(row: Row) -> float:
    pressure = air.saturation_vapor_pressure(row.given("dew_point"))
    return air.relative_humidity(row.given("temperature"), pressure)


def _enhancement(row: Row) -> float:
    """How much more vapor saturated real air holds than the saturation pressure says."""
    pressure = _pressure(row)
    ratio = float(air.moist_air(row.given("temperature"), 1.0, pressure).humidity_ratio)
    return ratio * pressure / (air.MASS_RATIO + ratio) / _saturation(row)


def _us_enthalpy(row: Row) -> float:
    return _real(row)[1].enthalpy - air.moist_air(_US_DATUM, 0.0).enthalpy


def _of_moist_mass(row: Row) -> float:
    """Enthalpy of each kilogram of moist air, not of dry air."""
    _, real = _real(row)
    return real.enthalpy / (1 + real.humidity_ratio)


def _density(row: Row) -> float:
    _, real = _real(row)
    return (1 + real.humidity_ratio) / real.specific_volume


_PSYCHROMETRICS_SI: InSI = {
    "saturation": _saturation,
    "saturation by ISO 13788": lambda row: examples.iso_13788(row.given("temperature")),
    "saturation by the power form": lambda row: examples.power_form(row.given("temperature")),
    "saturation by Magnus": lambda row: examples.magnus_over_water(row.given("temperature")),
    "vapor pressure by ISO 13788": lambda row: examples.iso_13788(row.given("temperature")) * row.given("humidity"),
    "vapor pressure by the power form": lambda row: (
        examples.power_form(row.given("temperature")) * row.given("humidity")
    ),
    "saturation temperature": lambda row: _dew_point(row) + KELVIN,
    "vapor pressure": _vapor_pressure,
    "dew point": _dew_point,
    "humidity ratio": _ratio,
    "relative humidity": _humidity_of_dew_point,
    "vapor density": lambda row: air.vapor_density(
        row.given("temperature"), row.given("vapor_pressure", air.saturation_vapor_pressure(row.given("temperature")))
    ),
    "standard pressure": lambda row: air.standard_pressure(row.given("altitude")),
    "real humidity ratio": lambda row: _real(row)[1].humidity_ratio,
    "real relative humidity": lambda row: _real(row)[0],
    "real enthalpy": lambda row: _real(row)[1].enthalpy,
    "real enthalpy, US datum": _us_enthalpy,
    "real enthalpy of moist mass": _of_moist_mass,
    "real volume": lambda row: _real(row)[1].specific_volume,
    "real density": _density,
    "real wet bulb": lambda row: _real(row)[1].wet_bulb,
    "real dew point": lambda row: _real(row)[1].dew_point,
    "enhancement factor": _enhancement,
}
_PSYCHROMETRICS = table.in_row_units(_PSYCHROMETRICS_SI)


_UNITS: Answers = {
    "one unit": lambda row: units.from_si(units.to_si(row.number("amount"), row.text("of")), row.text("unit")),
    "read": lambda row: units.from_si(units.quantity(row.text("of"), row.text("as_quantity")), row.text("unit")),
}

#: How each kind of row is computed, by topic.
TOPICS = {"psychrometrics": _PSYCHROMETRICS, "units": _UNITS}
