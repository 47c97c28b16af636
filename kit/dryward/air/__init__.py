"""Moist air: saturation, dew point, humidity ratio, vapor density.

========  ============================================================
vapor     saturation over ice and over water, the dew point, humidity and
          density; one state of air; air pressure at a height
real_air  real moist air, by CoolProp
========  ============================================================
"""

from dryward.air.real_air import MoistAir, moist_air
from dryward.air.vapor import (
    AIR_GAS_CONSTANT,
    COLDEST,
    HOTTEST,
    MASS_RATIO,
    STANDARD_PRESSURE,
    TRIPLE_POINT,
    VAPOR_GAS_CONSTANT,
    Air,
    dew_point,
    humidity_ratio,
    log_saturation_over_ice,
    log_saturation_over_water,
    relative_humidity,
    saturation_vapor_pressure,
    standard_pressure,
    vapor_density,
    vapor_pressure,
)

__all__ = [
    "Air",
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
