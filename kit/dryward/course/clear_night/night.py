"""A night over a vented covering: bare under the sky with its frost, or under snow with what melts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from dryward import air
from dryward.checks import Numeric
from dryward.course.clear_night import snow
from dryward.physics.moving_air import film_permeance
from dryward.physics.sky import SUBLIMATION_HEAT, Night, dry_underside, frost_margin, night
from dryward.physics.snow import UnderSnow
from dryward.units import HOUR, to_si
from dryward.verdict import STATES, criterion
from dryward.weather import Air

#: The night of this lesson, and its length [h].
OUTDOORS, HOURS = to_si(20.0, "degF"), 12
#: The house under the vent space lets this much heat up [W/(m2 K)], at this indoor temperature [degC].
HOUSE: dict[str, Any] = {"u_value": 0.126, "indoor_temperature": 21.1}
#: Part of the heat exchange with the air that is at the lower face [-]; an assumption of `physics.sky.night`.
UNDER = 0.4
#: Option -> R of the layer under a covering without snow [m2 K/W].
LAYERS = {"none": 0.0, "thin-layer": to_si(1.0, "R"), "layer": to_si(4.0, "R")}
#: The roof that drips in the morning.
AREA = to_si(600.0, "ft2")


@dataclass(frozen=True)
class FrostNight:
    """One night, and the covering before any frost."""

    outdoor: Air
    cooling: float
    wind: float
    layer: float
    night: Night
    underside: float
    bare: float
    #: What is on or under the covering: one of `LAYERS`, or snow on one of the roofs of `snow`.
    snow: str = "none"
    #: Of snow, over the hours of the night [kg/m2].
    melt: float = 0.0

    @property
    def snowed(self) -> bool:
        """Whether snow lies on the roof."""
        return self.snow in snow.ROOFS

    @property
    def below(self) -> float:
        """How far the lower face is below the air, with no frost on it yet [K]."""
        return self.outdoor.temperature - self.underside

    @property
    def frosted(self) -> float:
        """The same with the frost on it, which gives off heat as it forms [K]."""
        return self.outdoor.temperature - float(self.night.underside_temperature[-1])

    @property
    def margin(self) -> float:
        """How far below the air a face may be before that air frosts it [K]."""
        return round(float(frost_margin(self.outdoor)), 9)  # saturated air has none; the last bits are rounding

    @property
    def frost(self) -> float:
        """At the night's end [kg/m2]."""
        return float(self.night.frost[-1])


def frost_of(outdoor: Air, cooling: float, wind: float, layer: float) -> Night:
    """The night of this lesson with its frost."""
    return night(outdoor, cooling, wind, resistance=layer, under_share=UNDER, hours=HOURS, **HOUSE)


def under_snow(roof: str) -> UnderSnow:
    """The covering under the snow of this lesson."""
    return snow.on_roof(roof, OUTDOORS, area=AREA, **HOUSE)


def snowed_night(outdoor: Air, cooling: float, wind: float, roof: str) -> FrostNight:
    """The same night with snow on the roof: the covering no longer sees the sky."""
    found = under_snow(roof)
    hours = np.array([0.25, HOURS])

    def steady(value: float) -> NDArray[Any]:
        return np.full(hours.shape, float(value))

    covering, around = steady(float(found.temperature)), steady(outdoor.temperature)
    still = Night(hours, around, steady(outdoor.dew_point), around - cooling, covering, covering, steady(0.0))
    melted = float(found.melting) * HOURS * HOUR
    return FrostNight(outdoor, cooling, wind, 0.0, still, float(found.temperature), 0.0, roof, melted)


def states_of_nights(vapor_pressure: Numeric, cooling: Numeric, wind: Numeric, layer: Numeric) -> NDArray[Any]:
    """The state of many nights at once, each of one weather; numbers or arrays of one shape.

    Frost forms as fast as vapor reaches the face, and its heat warms the
    face.  So a limit is passed where vapor would still come as fast as the
    limit asks if the face had that much heat from below.
    """
    limit = criterion("night-frost")
    film, rank = film_permeance(UNDER * np.asarray(wind), OUTDOORS), 0
    for amount in (limit.caution, limit.damage):
        rate = amount / (HOURS * HOUR)
        below = HOUSE["indoor_temperature"] + rate * SUBLIMATION_HEAT / HOUSE["u_value"]
        face = dry_underside(
            OUTDOORS, cooling, wind, resistance=layer, under_share=UNDER, **{**HOUSE, "indoor_temperature": below}
        )
        rank = rank + (film * (vapor_pressure - air.saturation_vapor_pressure(face)) >= rate)
    return np.asarray(STATES, dtype=object)[rank]


def state_of_melting(roof: str) -> str:
    """The state of a night with snow on a roof."""
    return str(criterion("night-melt").state(float(under_snow(roof).melting) * HOURS * HOUR))
