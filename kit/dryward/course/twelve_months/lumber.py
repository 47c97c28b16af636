"""Wet rafters in a closed-up roof: how their moisture goes through a year."""

from __future__ import annotations

from functools import lru_cache

from dryward.building import Assembly
from dryward.building.framing import DEEP_2X12
from dryward.building.library import humidity_of_wood, material
from dryward.physics import drying
from dryward.pictures.film import ORDER
from dryward.units import DAY, to_si
from dryward.weather import DAYS, Air
from dryward.weather.places import demo_climate

#: Rafters of 2x12 at 16 in., of the dry weight of the library's spruce [kg/m2 of roof].
RAFTERS = material("spruce").density * to_si(1.5, "in") * DEEP_2X12 / to_si(16.0, "in")
#: Moisture at which the roof is closed up, on the first of September [mass %].
START = 24.0
#: Steps of a month; a step is two days, in which no rafter loses more than a point or two.
_STEPS = 15
#: Above it the moisture of wood says nothing of the humidity at its face [mass %].
_MOST = 25.0


@lru_cache(maxsize=64)
def year(roof: Assembly, place: str, indoor: Air) -> tuple[float, ...]:
    """Moisture of the rafters at the end of each month, from September on [mass %].

    As quick as it could be: each face of the wood stands at the humidity of
    the wood as a whole, and the wood itself holds nothing back.
    """
    climate = demo_climate(place)
    moisture, found = START, []
    for number in ORDER:
        k = number - 1
        outdoor = Air(float(climate.temperature[k]), float(climate.relative_humidity[k]))
        seconds = float(DAYS[k]) * DAY / _STEPS
        for _ in range(_STEPS):
            face = humidity_of_wood(min(moisture, _MOST) / 100)
            leaving = drying.of_a_wet_face(roof, "outer layer", indoor, outdoor, face).total
            moisture -= 100 * leaving * seconds / RAFTERS
        found.append(moisture)
    return tuple(found)
