"""One winter state and twelve months of vapor diffusion, against printed and worked examples."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import TypeVar

import numpy as np

from dryward import air
from dryward.building import AirSpace, Assembly, Layer
from dryward.checks import Floats
from dryward.evidence import examples, table
from dryward.evidence.table import Answers, InSI, Row
from dryward.physics import drying, monthly, steady
from dryward.units import DAY
from dryward.weather import Air, HourlyWeather, MonthlyClimate, indoor

_SATURATION = {"": None, "ISO 13788": examples.iso_13788}
#: Relative humidity at a surface above which mold is to be expected, ISO 13788 clause 5 [-].
_MOLD_LIMIT = 0.8


def _assembly(row: Row) -> Assembly:
    return examples.example(row.text("layers"), row.given("film_in", 0.0), row.given("film_out", 0.0))


def _state(row: Row) -> steady.Profile:
    indoor = Air(row.given("indoor"), row.given("indoor_rh", 0.5))
    outdoor = Air(row.given("outdoor"), row.given("outdoor_rh", 0.8))
    return steady.profile(_assembly(row), indoor, outdoor, saturation=_SATURATION[row.text("formula")])


def _node(row: Row, state: steady.Profile) -> int:
    """The place of the row: ``layer inside`` or ``layer outside``, its two faces."""
    layer, _, side = row.text("at").rpartition(" ")
    return state.face(layer, ("inside", "outside").index(side))


def _at(quantity: str) -> Callable[[Row], float]:
    def ask(row: Row) -> float:
        state = _state(row)
        return getattr(state, quantity)[_node(row, state)]

    return ask


def _wet_plane(row: Row) -> str:
    """Between which layers it gets wet; "none" when nowhere."""
    return " and ".join(f"{p.inner_layer}|{p.outer_layer}" for p in _state(row).wet_planes) or "none"


def _straight_pressure(row: Row) -> float:
    """Vapor pressure at a place if nothing could condense: straight over the vapor resistance."""
    state = _state(row)
    p, z = state.vapor_pressure, state.vapor_resistance
    return p[0] + (p[-1] - p[0]) * z[_node(row, state)] / z[-1]


def _evaporated(row: Row) -> float:
    """Leaving a wet plane to both sides, all at the temperature that gives its pressure."""
    whole = _assembly(row)
    plane = whole.index(row.text("at").rpartition(" ")[0])
    layers = (*whole.layers[: plane + 1], Layer(AirSpace(0.0), name="wet plane"), *whole.layers[plane + 1 :])
    wet = row.given("wet_pressure")
    around = Air(air.dew_point(wet), row.given("air_pressure") / wet)
    leaving = drying.rates(
        Assembly(whole.name, layers, whole.interior_film, whole.exterior_film), "wet plane", around, around
    )
    return leaving.total * row.given("days") * DAY


def _surface_factor(row: Row) -> float:
    """How near the room's side of the surface is to the room's temperature, 0 to 1."""
    state = _state(row)
    inside, outside = state.temperature[0], state.temperature[-1]
    return (state.temperature[_node(row, state)] - outside) / (inside - outside)


def _least_surface(row: Row) -> float:
    """The coldest a surface may be before its humidity passes the mold limit."""
    return air.dew_point(row.given("room_pressure") / _MOLD_LIMIT)


def _least_factor(row: Row) -> float:
    outdoor = row.given("outdoor")
    return (_least_surface(row) - outdoor) / (row.given("indoor") - outdoor)


_STEADY_SI: InSI = {
    "thermal resistance": lambda row: _assembly(row).thermal_resistance,
    "thermal transmittance": lambda row: _assembly(row).u_value,
    "whole permeance": lambda row: 1 / _assembly(row).vapor_resistance,
    "temperature": _at("temperature"),
    "saturation pressure": _at("saturation_vapor_pressure"),
    "vapor pressure": _at("vapor_pressure"),
    "thermal resistance so far": _at("thermal_resistance"),
    "vapor resistance so far": lambda row: 1 / _at("vapor_resistance")(row),
    "unconstrained vapor pressure": _straight_pressure,
    "room vapor pressure": lambda row: _state(row).vapor_pressure[0],
    "outdoor vapor pressure": lambda row: _state(row).vapor_pressure[-1],
    "room dew point": lambda row: air.dew_point(_state(row).vapor_pressure[0]),
    "heat flux": lambda row: _state(row).heat_flux,
    "vapor in": lambda row: _state(row).vapor_flux_in,
    "vapor out": lambda row: _state(row).vapor_flux_out,
    "gain": lambda row: _state(row).gain,
    "gathered": lambda row: _state(row).gain * row.given("days") * DAY,
    "passed": lambda row: _state(row).vapor_flux_in * row.given("area") * row.given("days") * DAY,
    "evaporated": _evaporated,
    "surface factor": _surface_factor,
    "least surface temperature": _least_surface,
    "least surface factor": _least_factor,
}
_STEADY: Answers = {**table.in_row_units(_STEADY_SI), "wet plane": _wet_plane}


T = TypeVar("T", float, str)

# Mean of each month of a typical year of a Polish city, 1971 to 2000, as a
# public worked example after ISO 13788 prints them [degC] and [%].
_TEMPERATURE = (0.2, -1.8, 2.7, 8.3, 13.0, 16.8, 18.2, 18.4, 13.5, 7.0, 2.2, -0.1)
_HUMIDITY = (86, 86, 79, 68, 62, 70, 72, 72, 81, 88, 91, 93)
_ROOM = 20.0
_FILMS = (0.13, 0.04)  # [m2 K/W]


@dataclass(frozen=True)
class _ClassThree:
    """Class 3 room air, worked with the saturation formula of ISO 13788 all through."""

    def at(self, climate: HourlyWeather | MonthlyClimate) -> tuple[Floats, Floats]:
        outdoors = examples.iso_13788(climate.temperature) * climate.relative_humidity
        most = examples.iso_13788(_ROOM)
        excess = indoor.humidity_class(3).excess(climate.temperature)
        return np.full(12, _ROOM), np.minimum(outdoors + excess, most)


def _climate() -> MonthlyClimate:
    return MonthlyClimate(np.array(_TEMPERATURE), np.array(_HUMIDITY) / 100)


@cache
def _year(layers: str, formula: str) -> monthly.Months:
    wall = examples.example(layers, *_FILMS)
    if formula == "ISO 13788":
        return monthly.balance(wall, _climate(), _ClassThree(), saturation=examples.iso_13788)
    return monthly.balance(wall, _climate(), indoor.humidity_class(3, _ROOM))


def _months(row: Row) -> monthly.Months:
    return _year(row.text("layers"), row.text("formula"))


def _of_month(quantity: Callable[[monthly.Months, int], T]) -> Callable[[Row], T]:
    def ask(row: Row) -> T:
        year = _months(row)
        return quantity(year, year.month.index(int(row.number("month"))))

    return ask


def _pressure(of: Callable[[MonthlyClimate], Floats]) -> Callable[[Row], float]:
    return lambda row: of(_climate())[int(row.number("month")) - 1]


_MONTHLY_SI: InSI = {
    "gained": _of_month(lambda year, k: (year.condensed[k] - year.evaporated[k]).sum()),
    "held": _of_month(lambda year, k: year.held[k].sum()),
    "left": lambda row: _months(row).left,
    "peak": lambda row: _months(row).peak,
    "outdoor vapor pressure": _pressure(lambda c: examples.iso_13788(c.temperature) * c.relative_humidity),
    "room vapor pressure": _pressure(lambda c: _ClassThree().at(c)[1]),
    "outdoor vapor pressure, kit": _pressure(lambda c: c.vapor_pressure),
    "thermal resistance": lambda row: examples.example(row.text("layers"), *_FILMS).thermal_resistance,
}
_MONTHLY: Answers = {
    **table.in_row_units(_MONTHLY_SI),
    "ending": lambda row: _months(row).ending,
    "first month": lambda row: _months(row).month[0],
    "peak month": lambda row: _months(row).peak_month or "none",
    "wet plane": lambda row: " and ".join(f"{p.inner_layer}|{p.outer_layer}" for p in _months(row).planes) or "none",
    "dries within": _of_month(lambda year, k: "yes" if year.dried_within[k].any() else "no"),
}

#: How each kind of row is computed, by topic.
TOPICS = {"steady": _STEADY, "monthly": _MONTHLY}
