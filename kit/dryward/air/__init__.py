"""Moist air: saturation, dew point, humidity ratio, vapor density.

==========  ==========================================================
curves      the saturation equation over ice and over water, and slopes
saturation  the vapor pressure of air that can hold no more
dew         the dew point and the frost point
humidity    vapor pressure, relative humidity, humidity ratio, density
atmosphere  air pressure at a height
real_air    real moist air, by CoolProp
==========  ==========================================================
"""

from dryward.air.atmosphere import STANDARD_PRESSURE, standard_pressure
from dryward.air.curves import TRIPLE_POINT, log_saturation_over_ice, log_saturation_over_water
from dryward.air.dew import dew_point
from dryward.air.humidity import (
    AIR_GAS_CONSTANT,
    MASS_RATIO,
    VAPOR_GAS_CONSTANT,
    humidity_ratio,
    relative_humidity,
    vapor_density,
    vapor_pressure,
)
from dryward.air.real_air import MoistAir, moist_air
from dryward.air.saturation import COLDEST, HOTTEST, saturation_vapor_pressure

__all__ = [
    "saturation_vapor_pressure",
    "vapor_pressure",
    "relative_humidity",
    "dew_point",
    "humidity_ratio",
    "vapor_density",
    "standard_pressure",
    "moist_air",
    "MoistAir",
    "log_saturation_over_ice",
    "log_saturation_over_water",
    "TRIPLE_POINT",
    "COLDEST",
    "HOTTEST",
    "VAPOR_GAS_CONSTANT",
    "AIR_GAS_CONSTANT",
    "MASS_RATIO",
    "STANDARD_PRESSURE",
]
