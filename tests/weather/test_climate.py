"""Monthly and hourly climates: shapes, ranges, means that lose no vapor, a cold winter, a year none of us made."""

import dataclasses
from importlib.resources import as_file, files

import numpy as np
import pytest

from dryward import air, building, weather
from dryward.checks import OutOfRange
from dryward.physics import monthly
from dryward.units import KELVIN
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
        ([99.0] * 12, [0.4] * 12, "Monthly temperature is 99 °C; it must be −60 to 60 °C"),
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
        (lambda: HourlyWeather([1.0], [300.0], [-1.0]), "Wind speed is −1 m/s; it must be 0 to 120 m/s"),
        (
            lambda: HourlyWeather([0.0, 1.0], [300.0, 900.0]),
            "Vapor pressure in hour 2 is 900 Pa; at 1.0 °C there can be",
        ),
        (lambda: HourlyWeather([[1.0]], [[300.0]]), "Air temperature must be a list of hours"),
        (lambda: HourlyWeather([1.0], [300.0], latitude=91), "Latitude is 91 °; it must be −90 to 90 °"),
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


@pytest.fixture(scope="module", params=[*weather.demos(), "file"])
def typical(request):
    if request.param != "file":
        return weather.demo(request.param)
    with as_file(files("dryward.evidence") / "data" / "typical-year-45N-8E.epw.gz") as path:
        return weather.read_epw(path)


def test_every_hour_is_colder_by_just_that_and_as_damp(typical):
    cold = weather.colder(typical)
    assert cold.temperature == pytest.approx(typical.temperature - 2.0, abs=1e-12)
    assert cold.monthly().temperature == pytest.approx(typical.monthly().temperature - 2.0, abs=1e-9)
    assert cold.relative_humidity == pytest.approx(typical.relative_humidity, rel=1e-12)
    assert np.all(cold.vapor_pressure < typical.vapor_pressure)


def test_no_hour_holds_more_than_air_over_water_can(typical):
    """Frost read over water lies above 1 over ice, before and after; over water it never does more than before."""
    for by in (2.0, 10.0):
        cold = weather.colder(typical, by)
        before, after = (
            each.vapor_pressure / air.saturation_vapor_pressure(each.temperature, over="water")
            for each in (typical, cold)
        )
        assert np.all(after <= before * (1 + 1e-12))


def test_the_sky_radiates_as_much_colder_and_sun_and_wind_stay(typical):
    cold = weather.colder(typical, 3.0)
    # The temperature the sky seems to have keeps its ratio to that of the air.
    ratio = [(each.sky_longwave**0.25) / (each.temperature + KELVIN) for each in (typical, cold)]
    assert ratio[1] == pytest.approx(ratio[0], rel=1e-12)
    for name in ("direct_normal", "diffuse_horizontal", "global_horizontal", "wind_speed"):
        assert np.array_equal(getattr(cold, name), getattr(typical, name))
    for name in ("latitude", "longitude", "time_zone", "altitude", "sun_offset"):
        assert getattr(cold, name) == getattr(typical, name)


def test_months_of_colder_hours_and_colder_months_are_one_climate(typical):
    by_hours, by_months = weather.colder(typical).monthly(), weather.colder(typical.monthly())
    assert by_months.temperature == pytest.approx(by_hours.temperature, abs=1e-9)
    # Not the same: vapor is averaged over hours above and below freezing.
    assert by_months.relative_humidity == pytest.approx(by_hours.relative_humidity, abs=0.012)
    assert by_months.vapor_pressure == pytest.approx(by_hours.vapor_pressure, rel=0.014)


def test_name_and_notes_say_it():
    hours, months = weather.demo("cold"), weather.demo_climate("cold")
    cold = weather.colder(hours)
    assert cold.name == "cold, 2 K colder"
    assert cold.notes[:-1] == hours.notes
    assert cold.notes[-1] == (
        "Each hour is 2 K colder than in the typical year, at the same relative humidity, with the same sun and wind; "
        "the sky sends as much less as the fourth power of the absolute temperature falls."
    )
    assert weather.colder(months, 1.5).notes[-1] == (
        "Each month is 1.5 K colder than in the typical year, at the same relative humidity."
    )
    still = weather.colder(HourlyWeather.constant(Air(5.0, 0.8), hours=3))
    assert still.sky_longwave is None
    assert still.notes[-1].endswith("with the same sun and wind.")
    assert weather.colder(MonthlyClimate([1.0] * 12, [0.5] * 12)).name == "a year, 2 K colder"


def test_no_shift_is_the_same_year():
    year = weather.demo("very-cold")
    same = weather.colder(year, 0.0)
    assert same.vapor_pressure == pytest.approx(year.vapor_pressure, rel=1e-12)
    assert same.sky_longwave == pytest.approx(year.sky_longwave, rel=1e-12)


@pytest.mark.parametrize(
    ("make", "sentence"),
    [
        (lambda: weather.colder(weather.demo_climate("cold"), -1), "How much colder is −1 K; it must be 0 to 10 K"),
        (lambda: weather.colder(weather.demo_climate("cold"), 20), "How much colder is 20 K; it must be 0 to 10 K"),
        (lambda: weather.colder(MonthlyClimate([-59.0] * 12, [0.5] * 12)), "Monthly temperature is −61 °C; it must be"),
    ],
)
def test_what_cannot_be_gets_a_sentence(make, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        make()


@pytest.fixture(scope="module")
def year():
    with as_file(files("dryward.evidence") / "data" / "typical-year-45N-8E.epw.gz") as path:
        return weather.read_epw(path)


@pytest.mark.parametrize("rule", ["class", "dwelling", "design", "balance"])
def test_room_air_follows_the_year(year, rule):
    indoor = {
        "class": weather.indoor.humidity_class(2),
        "dwelling": weather.indoor.by_outdoor_temperature(),
        "design": weather.indoor.by_daily_mean(),
        "balance": weather.indoor.moisture_balance(10 / 86400, 0.03),
    }[rule]
    warmth, vapor = indoor.at(year)
    assert warmth.shape == vapor.shape == (8760,)
    humidity = vapor / air.saturation_vapor_pressure(warmth)
    assert np.all((humidity > 0.1) & (humidity <= 1.0 + 1e-12))
    # The room is drier in winter than in summer, in every rule.
    assert humidity[:1400].mean() < humidity[4400:5800].mean()


def test_a_years_balance_runs_on_it(year):
    climate, closed = year.monthly(), building.preset("vented-vault-closed")
    by_class = [monthly.balance(closed, climate, weather.indoor.humidity_class(n)) for n in (1, 2, 3, 4)]
    peaks = [months.peak for months in by_class]
    assert peaks == sorted(peaks)  # a damper house wets the roof more
    damp = by_class[-1]
    assert damp.ending == "dries"
    assert damp.month[0] in (10, 11, 12)
    # What condensed and did not evaporate is what is held, month by month.
    kept = np.cumsum(damp.condensed.sum(axis=1) - damp.evaporated.sum(axis=1))
    assert kept == pytest.approx(damp.held.sum(axis=1), abs=1e-9)


def test_a_roof_open_to_its_vent_space_has_nothing_to_hold(year):
    months = monthly.balance(building.preset("vented-vault"), year.monthly(), weather.indoor.humidity_class(3))
    assert months.ending == "no wetting"
