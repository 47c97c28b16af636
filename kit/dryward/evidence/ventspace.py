"""Vent spaces: free area, what vent air can carry, and flow between plates."""

import numpy as np

from dryward.evidence import table
from dryward.physics import moving_air, ventspace
from dryward.units import FOOT, INCH, KELVIN
from dryward.weather import Air

_IN2_PER_FT = INCH**2 / FOOT


def _need(row):
    return ventspace.net_free_area(
        row.given("roof"), row.given("ratio"), 0.5, row.given("eave", 1.0), row.given("ridge", 1.0)
    )


def _carries(row):
    outdoor = Air(row.given("air"), row.given("humidity"))
    return ventspace.carrying_limit(
        row.given("gap"), row.given("speed"), row.given("length"), outdoor, row.given("warming")
    )


def _space(row):
    return ventspace.VentSpace(row.given("gap"), row.given("length"), row.given("slope"))


def _speed(row):
    space = _space(row)
    return space.flow_at(row.given("air"), row.given("mean")) / (space.height * space.width)


def _friction(row):
    """Friction factor times Reynolds number: the drive of a channel of one diameter, without losses."""
    plates = ventspace.channel_curve(1.0, losses=0.0)
    at = np.log(row.given("reynolds"))
    return float(np.exp(np.interp(at, plates.log_reynolds, plates.log_drive) - at))


def _nusselt(row):
    plates = ventspace.channel_curve(1.0)
    return float(np.interp(np.log(row.given("reynolds")), plates.log_reynolds, plates.nusselt))


_SI = {
    "free area": lambda row: _need(row).total,
    "carries": _carries,
    "push": lambda row: _space(row).push(row.given("air"), row.given("mean")),
    "speed": _speed,
}
_ANSWERS = table.in_row_units(_SI)
_ANSWERS |= {
    "eave": lambda row: _need(row).lower_per_length / _IN2_PER_FT,
    "ridge": lambda row: _need(row).upper_per_length / _IN2_PER_FT,
    "gap area": lambda row: (
        ventspace.clear_area(row.given("gap"), row.given("bay"), row.given("spacing")) / _IN2_PER_FT
    ),
    "viscosity": lambda row: moving_air.viscosity(row.given("air") + KELVIN),
    "friction": _friction,
    "nusselt": _nusselt,
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
    return table.answer("ventspace", _ANSWERS)
