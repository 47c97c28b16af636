"""Monthly and hourly climates: shapes, ranges, and means that lose no vapor."""

import dataclasses

import numpy as np
import pytest

from dryward import air, weather
from dryward.checks import OutOfRange
from dryward.weather import Air, HourlyWeather, MonthlyClimate


def test_twelve_months_hold_what_they_were_given():
    climate = MonthlyClimate([0.2, *[10.0] * 11], [0.86, *[0.5] * 11], "somewhere")
    assert climate.vapor_pressure[0] == pytest.approx(air.vapor_pressure(0.2, 0.86))
    assert climate.air(1) == Air(0.2, 0.86)
    assert (climate.coldest, climate.name) == (1, "somewhere")


@pytest.mark.parametrize(
    ("temperature", "humidity", "sentence"),
    [
        ([1.0] * 11, [0.5] * 12, "Monthly temperature needs 12 values, one for each month from January; 11 are given"),
        ([1.0] * 12, [0.5], "Monthly relative humidity needs 12 values"),
        ([1.0] * 12, [1.4] * 12, "Monthly relative humidity is 140 %; it must be 0 to 100 %"),
        ([99.0] * 12, [0.4] * 12, "Monthly temperature is 99 °C; it must be -60 to 60 °C"),
    ],
)
def test_bad_months_get_a_sentence(temperature, humidity, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        MonthlyClimate(temperature, humidity)


def test_a_month_is_one_to_twelve():
    with pytest.raises(OutOfRange, match="Month is 13; it must be 1 to 12"):
        MonthlyClimate([1.0] * 12, [0.5] * 12).air(13)


def test_nothing_can_be_changed_afterwards():
    climate, hours = MonthlyClimate([1.0] * 12, [0.5] * 12), HourlyWeather.constant(Air(1, 0.5), hours=3)
    with pytest.raises(dataclasses.FrozenInstanceError):
        climate.name = "else"
    with pytest.raises(ValueError, match="read-only"):
        climate.temperature[0] = 5.0
    with pytest.raises(ValueError, match="read-only"):
        hours.vapor_pressure[0] = 5.0


def test_the_callers_own_array_stays_writable():
    mine = np.full(12, 3.0)
    climate = MonthlyClimate(mine, mine / 10)
    mine[0] = 7.0
    assert climate.temperature[0] == 3.0


def test_constant_weather_has_constant_months():
    months = HourlyWeather.constant(Air(-7.0, 0.8)).monthly()
    assert months.temperature == pytest.approx(np.full(12, -7.0))
    assert months.relative_humidity == pytest.approx(np.full(12, 0.8))


def test_months_start_and_end_where_the_calendar_says():
    temperature = np.zeros(8760)
    temperature[31 * 24 : (31 + 28) * 24] = 10.0  # February and nothing else
    months = HourlyWeather(temperature, np.full(8760, 300.0)).monthly()
    assert months.temperature == pytest.approx([0, 10, *[0] * 10])


def test_monthly_means_lose_no_vapor():
    hours = weather.demo("cold")
    months = hours.monthly()
    assert months.vapor_pressure[0] == pytest.approx(hours.vapor_pressure[: 31 * 24].mean(), rel=1e-12)


def test_two_years_average_into_twelve_months():
    temperature = np.concatenate([np.full(8760, 2.0), np.full(8760, 4.0)])
    assert HourlyWeather(temperature, np.full(17520, 500.0)).monthly().temperature == pytest.approx(np.full(12, 3.0))


def test_frost_measured_over_water_is_said_aloud():
    vapor = air.saturation_vapor_pressure(-20.0, over="water")
    months = HourlyWeather(np.full(8760, -20.0), np.full(8760, vapor)).monthly()
    assert months.relative_humidity == pytest.approx(np.ones(12))
    assert "In 12 of 12 months the mean vapor pressure lies above saturation" in months.notes[-1]


@pytest.mark.parametrize(
    ("make", "sentence"),
    [
        (lambda: HourlyWeather.constant(Air(5, 0.5), hours=100).monthly(), "There are 100 hours of weather"),
        (lambda: HourlyWeather.constant(Air(5, 0.5), hours=0), "Number of hours is 0 h; it must be 1 to 1e\\+06 h"),
        (lambda: HourlyWeather([1.0, 2.0], [300.0]), "Vapor pressure has 1 hours, but temperature has 2"),
        (lambda: HourlyWeather([1.0], [300.0], [-1.0]), "Wind speed is -1 m/s; it must be 0 to 120 m/s"),
        (lambda: HourlyWeather([0.0, 1.0], [300.0, 900.0]), "Vapor pressure in hour 2 is 900 Pa; air at 1.0 °C holds"),
        (lambda: HourlyWeather([[1.0]], [[300.0]]), "Air temperature must be a list of hours"),
        (lambda: HourlyWeather([1.0], [300.0], latitude=91), "Latitude is 91 °; it must be -90 to 90 °"),
        (lambda: HourlyWeather([1.0, np.nan], [300.0, 300.0]), "Air temperature is not a number"),
    ],
)
def test_bad_hours_get_a_sentence(make, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        make()


def test_dew_points_and_frost_points():
    hours = HourlyWeather.constant(Air(-5.0, 0.8), hours=2)
    assert hours.dew_point[0] == pytest.approx(Air(-5.0, 0.8).dew_point)
    assert Air(-5.0, 0.8).frost_point_over_water < Air(-5.0, 0.8).dew_point
