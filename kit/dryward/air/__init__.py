"""Moist air: saturation, dew point, humidity ratio, vapor density.

==========  ==========================================================
saturation  the saturation equation over ice and over water, the dew point
humidity    vapor pressure, relative humidity, humidity ratio, density; air
            pressure at a height
real_air    real moist air, by CoolProp
==========  ==========================================================
"""

from dryward.air.humidity import (
    AIR_GAS_CONSTANT,
    MASS_RATIO,
    STANDARD_PRESSURE,
    VAPOR_GAS_CONSTANT,
    humidity_ratio,
    relative_humidity,
    standard_pressure,
    vapor_density,
    vapor_pressure,
)
from dryward.air.real_air import MoistAir, moist_air
from dryward.air.saturation import (
    COLDEST,
    HOTTEST,
    TRIPLE_POINT,
    dew_point,
    log_saturation_over_ice,
    log_saturation_over_water,
    saturation_vapor_pressure,
)

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
