"""One winter state: resistances, temperatures, the vapor line, the wet plane, drying."""

from dryward import air
from dryward.building import AirSpace, Assembly, Layer
from dryward.evidence import formulas, table
from dryward.evidence.examples import example
from dryward.physics import drying, steady
from dryward.units import DAY
from dryward.weather import Air

_SATURATION = {"": None, "ISO 13788": formulas.iso_13788}
#: Relative humidity at a surface above which mold is to be expected, ISO 13788 clause 5 [-].
_MOLD_LIMIT = 0.8


def _assembly(row):
    return example(row.text("layers"), row.given("film_in", 0.0), row.given("film_out", 0.0))


def _state(row):
    indoor = Air(row.given("indoor"), row.given("indoor_rh", 0.5))
    outdoor = Air(row.given("outdoor"), row.given("outdoor_rh", 0.8))
    return steady.profile(_assembly(row), indoor, outdoor, saturation=_SATURATION[row.text("formula")])


def _node(row, state):
    """The place of the row: ``layer inside`` or ``layer outside``, its two faces."""
    layer, _, side = row.text("at").rpartition(" ")
    return state.face(layer, ("inside", "outside").index(side))


def _at(quantity):
    def ask(row):
        state = _state(row)
        return getattr(state, quantity)[_node(row, state)]

    return ask


def _wet_plane(row):
    """Between which layers it gets wet; "none" when nowhere."""
    return " and ".join(f"{p.inner_layer}|{p.outer_layer}" for p in _state(row).wet_planes) or "none"


def _straight_pressure(row):
    """Vapor pressure at a place if nothing could condense: straight over the vapor resistance."""
    state = _state(row)
    p, z = state.vapor_pressure, state.vapor_resistance
    return p[0] + (p[-1] - p[0]) * z[_node(row, state)] / z[-1]


def _evaporated(row):
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


def _surface_factor(row):
    """How near the room's side of the surface is to the room's temperature, 0 to 1."""
    state = _state(row)
    inside, outside = state.temperature[0], state.temperature[-1]
    return (state.temperature[_node(row, state)] - outside) / (inside - outside)


def _least_surface(row):
    """The coldest a surface may be before its humidity passes the mold limit."""
    return air.dew_point(row.given("room_pressure") / _MOLD_LIMIT)


def _least_factor(row):
    outdoor = row.given("outdoor")
    return (_least_surface(row) - outdoor) / (row.given("indoor") - outdoor)


_SI = {
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
_ANSWERS = table.in_row_units(_SI)
_ANSWERS["wet plane"] = _wet_plane


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
    return table.answer("steady", _ANSWERS)
