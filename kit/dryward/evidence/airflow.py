"""Moving air: leaks with blower-door arithmetic and the water they bring, vent spaces and what they carry off."""

import numpy as np

from dryward import building, weather
from dryward.evidence import table
from dryward.evidence.table import Answers, InSI, Row
from dryward.physics import airleak, hourly, moving_air, ventspace
from dryward.units import DAY, FOOT, INCH, KELVIN, from_si
from dryward.weather import YEAR, Air


def _house(row: Row) -> airleak.Leak:
    exponent, area, share = row.given("exponent", 0.65), row.given("roof", 1.0), row.given("share", 1.0)
    return airleak.Leak.from_blower_door(row.given("changes"), row.given("volume"), share, exponent, area)


def _opening(row: Row) -> float:
    return _house(row).leakage_area(row.given("pressure"), row.given("discharge"))


def _reference(row: Row) -> float:
    leak = airleak.Leak(1.0, row.given("exponent"))
    return leak.airflow(row.given("pressure")) / leak.airflow(row.given("test"))


def _rule(row: Row) -> float:
    """Flow at 50 Pa in cfm for each square inch of leakage area."""
    leak = airleak.Leak(1.0, row.given("exponent"))
    area = leak.leakage_area(row.given("pressure"), row.given("discharge"))
    return from_si(leak.airflow(airleak.TEST_PRESSURE), "cfm") / from_si(area, "in2")


def _hole(row: Row) -> float:
    return airleak.orifice_flow(row.given("pressure"), row.given("hole"))


def _water(row: Row) -> tuple[float, float]:
    seconds = row.given("days") * DAY
    water = airleak.brought(_hole(row), Air(row.given("room"), row.given("moist")), row.given("plane"))
    return water.carried * seconds, water.excess * seconds


def _vault(row: Row) -> float:
    room = Air(row.given("room"), row.given("moist"))
    return _house(row).moisture(row.given("pressure"), room, row.given("plane")).excess


def _winter_by_air(row: Row) -> float:
    """What the seeping part of a leak adds to the peak of a sheathing's water in the second year."""
    roof = building.preset("vented-vault-osb").replace("inner membrane", building.membrane("teaching-variable"))
    roof = roof.replace("insulation", building.material("cellulose-dense"))
    year, room = weather.demo("cold"), Air(row.given("room"), row.given("moist"))
    flow = hourly.leak_flow(_house(row), year, room.temperature, height=row.given("height"))
    peaks = []
    for leak in (None, hourly.AirFlow(flow.seeping, 1.0)):
        run = hourly.simulate(roof, year, room, years=2, leak=leak, surface=hourly.Surface(azimuth=0.0))
        board, fill = run.layer("outer layer"), run.layer("insulation")
        held = board.water_content * roof.layer("outer layer").drawn_thickness + board.condensed + fill.condensed
        peaks.append(float(held[-YEAR:].max()))
    return peaks[1] - peaks[0]


def _layer(row: Row) -> airleak.LayerFlow:
    thickness = row.given("thickness")
    inner, outer = (row.given("room"), row.given("inner")), (row.given("outdoors"), row.given("outer"))
    conductance, permeance = row.given("conductivity") / thickness, row.given("permeability") / thickness
    return airleak.layer_flow(row.given("moving"), conductance, permeance, inner, outer)


def _gaps(row: Row) -> float:
    return airleak.permeance_with_gaps(row.given("film"), row.given("wall"), row.given("gaps"))


_AIRLEAK_SI: InSI = {
    "airflow": lambda row: _house(row).airflow(row.given("pressure")),
    "cfm50": lambda row: _house(row).airflow(row.given("pressure")),
    "leakage area": _opening,
    "leakage area in2": _opening,
    "hole": _hole,
    "hole cfm": _hole,
    "stack": lambda row: airleak.stack_pressure(row.given("height"), row.given("room"), row.given("outdoors")),
    "natural": lambda row: airleak.natural_airflow(row.given("changes"), row.given("volume")),
    "carried": lambda row: _water(row)[0],
    "excess": lambda row: _water(row)[1],
    "winter by air": _winter_by_air,
    "vault": _vault,
    "layer heat": lambda row: _layer(row).heat,
    "layer vapor": lambda row: _layer(row).vapor,
    "gaps": _gaps,
    "gaps cut": lambda row: 1.0 - _gaps(row) / row.given("wall"),
}
_AIRLEAK: Answers = {**table.in_row_units(_AIRLEAK_SI), "reference": _reference, "cfm for each in2": _rule}


_IN2_PER_FT = INCH**2 / FOOT


def _need(row: Row) -> ventspace.NetFreeArea:
    return ventspace.net_free_area(
        row.given("roof"), row.given("ratio"), 0.5, row.given("eave", 1.0), row.given("ridge", 1.0)
    )


def _carries(row: Row) -> float:
    outdoor = Air(row.given("air"), row.given("humidity"))
    return ventspace.carrying_limit(
        row.given("gap"), row.given("speed"), row.given("length"), outdoor, row.given("warming")
    )


def _space(row: Row) -> ventspace.VentSpace:
    return ventspace.VentSpace(row.given("gap"), row.given("length"), row.given("slope"))


def _speed(row: Row) -> float:
    space = _space(row)
    return space.flow_at(row.given("air"), row.given("mean")) / (space.height * space.width)


def _friction(row: Row) -> float:
    """Friction factor times Reynolds number: the drive of a channel of one diameter, without losses."""
    plates = ventspace.channel_curve(1.0, losses=0.0)
    at = np.log(row.given("reynolds"))
    return float(np.exp(np.interp(at, plates.log_reynolds, plates.log_drive) - at))


def _nusselt(row: Row) -> float:
    plates = ventspace.channel_curve(1.0)
    return float(np.interp(np.log(row.given("reynolds")), plates.log_reynolds, plates.nusselt))


_VENTSPACE_SI: InSI = {
    "free area": lambda row: _need(row).total,
    "carries": _carries,
    "push": lambda row: _space(row).push(row.given("air"), row.given("mean")),
    "speed": _speed,
}
_VENTSPACE: Answers = {
    **table.in_row_units(_VENTSPACE_SI),
    "eave": lambda row: _need(row).lower_per_length / _IN2_PER_FT,
    "ridge": lambda row: _need(row).upper_per_length / _IN2_PER_FT,
    "gap area": lambda row: (
        ventspace.clear_area(row.given("gap"), row.given("bay"), row.given("spacing")) / _IN2_PER_FT
    ),
    "viscosity": lambda row: moving_air.viscosity(row.given("air") + KELVIN),
    "friction": _friction,
    "nusselt": _nusselt,
}

#: How each kind of row is computed, by topic.
TOPICS = {"airleak": _AIRLEAK, "ventspace": _VENTSPACE}
