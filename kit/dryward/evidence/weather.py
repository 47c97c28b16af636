"""Room air, monthly means, a weather file and the night sky against published and hand-made numbers."""

from functools import cache
from importlib.resources import as_file, files

import numpy as np

from dryward import air
from dryward.evidence import table
from dryward.evidence.table import InSI, Row
from dryward.physics import sky
from dryward.weather import Air, HourlyWeather, MonthlyClimate, indoor, loggers
from dryward.weather.epw import read_epw


def _same(row: Row) -> MonthlyClimate:
    """A climate with the row's outdoor air in every month."""
    return MonthlyClimate(np.full(12, row.given("temperature")), np.full(12, row.given("humidity", 0.5)))


def _room(rule: indoor.Rule, row: Row) -> tuple[float, float]:
    """Temperature and relative humidity that a rule for room air gives."""
    temperature, vapor = (float(values[0]) for values in rule.at(_same(row)))
    return temperature, air.relative_humidity(temperature, vapor)


def _class(row: Row) -> indoor.HumidityClass:
    return indoor.humidity_class(int(row.given("class")))


def _house(row: Row) -> float:
    outdoor = Air(row.given("temperature"), row.given("humidity"))
    return indoor.steady_humidity(row.given("production"), row.given("air"), outdoor, row.given("room"))


@cache
def _file() -> HourlyWeather:
    with as_file(files("dryward.evidence") / "data" / "typical-year-45N-8E.epw.gz") as path:
        return read_epw(path)


def _mean_of_file(series: str) -> float:
    return float(getattr(_file(), series).mean())


def _month(row: Row) -> int:
    return int(row.given("month")) - 1


_WEATHER_SI: InSI = {
    "monthly vapor pressure": lambda row: _same(row).vapor_pressure[0],
    "class room vapor pressure": lambda row: _class(row).at(_same(row))[1][0],
    "class room humidity": lambda row: _room(_class(row), row)[1],
    "dwelling temperature": lambda row: _room(indoor.by_outdoor_temperature(), row)[0],
    "dwelling humidity, normal": lambda row: _room(indoor.by_outdoor_temperature("normal"), row)[1],
    "dwelling humidity, high": lambda row: _room(indoor.by_outdoor_temperature("high"), row)[1],
    "design humidity": lambda row: _room(indoor.by_daily_mean(), row)[1],
    "design temperature": lambda row: _room(indoor.by_daily_mean(row.given("conditioned") > 0), row)[0],
    "moisture by bedrooms": lambda row: indoor.moisture_by_bedrooms(int(row.given("bedrooms"))),
    # Per kg/s and m3/s; asked at a size of house the kit allows.
    "balance factor": lambda row: indoor.vapor_excess(1e-3, 1.0, row.given("temperature")) * 1e3,
    "house humidity": _house,
    "pin meter": lambda row: loggers.moisture_content(row.given("dial"), row.given("temperature")),
    "file temperature": lambda row: _file().monthly().temperature[_month(row)],
    "file vapor pressure": lambda row: _file().monthly().vapor_pressure[_month(row)],
    "file year ghi": lambda row: _mean_of_file("global_horizontal"),
    "file year dni": lambda row: _mean_of_file("direct_normal"),
    "file year dhi": lambda row: _mean_of_file("diffuse_horizontal"),
    "file year sky": lambda row: _mean_of_file("sky_longwave"),
}
_WEATHER = table.in_row_units(_WEATHER_SI)


def _sky(row: Row) -> float:
    return sky.temperature(row.given("air"), row.given("dew"), row.given("cloud"), row.text("model"))


def _roof(row: Row) -> float:
    return sky.roof_surface(
        row.given("air"), row.given("sky"), row.given("coefficient"), row.given("transmittance"), row.given("room")
    )


_SKY_SI: InSI = {
    "emissivity": lambda row: sky.clear_emissivity(row.given("dew"), row.text("model")),
    "cloud": lambda row: sky.cloud_factor(row.given("cloud")),
    "sky": _sky,
    "swinbank": lambda row: sky.by_air_temperature(row.given("air")),
    "radiation": lambda row: sky.long_wave(_sky(row)),
    "roof": _roof,
    "below air": lambda row: row.given("air") - _roof(row),
    "margin": lambda row: sky.frost_margin(Air(row.given("air"), row.given("humidity"))),
}
_SKY = table.in_row_units(_SKY_SI)

#: How each kind of row is computed, by topic.
TOPICS = {"weather": _WEATHER, "sky": _SKY}
