"""The snow of this lesson: one depth of it, on roofs that differ in their heat from below and in nothing else."""

from __future__ import annotations

from dryward.physics.airleak import Leak
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT, density
from dryward.physics.snow import RESISTIVITY, UnderSnow, taken_by_vent, under_snow
from dryward.units import KELVIN, to_si

#: How deep it lies [m], and the air film over it [m2 K/W], which is that of a breeze.
DEPTH, FILM = to_si(12.0, "in"), 1.0 / 8.0
#: R of both [m2 K/W].
RESISTANCE = DEPTH * RESISTIVITY + FILM
#: A house at 3 ACH50 with a fifth of its leaks in this roof, at 4 Pa.
ACH50, VOLUME, SHARE, PUSH = 3.0, to_si(20_000.0, "ft3"), 0.2, 4.0
#: The vent space: its gap [m], its air [m/s], its length [m].
GAP, SPEED, RAFTER = to_si(1.0, "in"), to_si(20.0, "ft/min"), 5.0
#: Option -> R below the vent space [m2 K/W], None for that of the lesson; whether the ceiling leaks.
ROOFS: dict[str, tuple[float | None, bool]] = {
    "leaky": (None, True),
    "leaky-and-thick": (to_si(60.0, "R"), True),
    "tight": (None, False),
}


def by_leaks(area: float, indoor_temperature: float) -> float:
    """Heat that leaking air brings to the covering [W/(m2 K)]: it leaves as cold as that is."""
    flow = Leak.from_blower_door(ACH50, VOLUME, SHARE, area=area).airflow(PUSH)
    return float(flow) / area * float(density(indoor_temperature + KELVIN)) * AIR_SPECIFIC_HEAT


def from_below(roof: str, u_value: float, area: float, indoor_temperature: float) -> float:
    """All heat that comes up to the covering [W/(m2 K)]."""
    thick, leaks = ROOFS[roof]
    through = u_value if thick is None else 1.0 / thick
    return through + (by_leaks(area, indoor_temperature) if leaks else 0.0)


def to_vent(outdoor_temperature: float) -> float:
    """What the vent air takes at most [W/(m2 K)]; alike under all of them."""
    return float(taken_by_vent(GAP, SPEED, RAFTER, outdoor_temperature))


def on_roof(roof: str, outdoor_temperature: float, u_value: float, indoor_temperature: float, area: float) -> UnderSnow:
    """The covering of a roof under this snow."""
    below, vent = from_below(roof, u_value, area, indoor_temperature), to_vent(outdoor_temperature)
    return under_snow(outdoor_temperature, indoor_temperature, below, RESISTANCE, vent)
