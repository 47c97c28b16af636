"""Rules for room air: the numbers they give, on hours and on months, and what they refuse."""

import numpy as np
import pytest

from dryward import air, weather
from dryward.checks import OutOfRange, UnknownName
from dryward.units import to_si
from dryward.weather import Air, HourlyWeather, MonthlyClimate, indoor

RULES = {
    "constant": indoor.constant(Air(21.0, 0.4)),
    "class": indoor.humidity_class(3),
    "occupancy": indoor.by_outdoor_temperature("high"),
    "daily mean": indoor.by_daily_mean(),
    "balance": indoor.moisture_balance(10 / 86400, 0.03),
    "heated and cooled": indoor.heated_and_cooled(Air(21.0, 0.4), Air(24.0, 0.5)),
    "damper": indoor.damper(indoor.humidity_class(4)),
}


@pytest.mark.parametrize("name", RULES)
def test_months_and_hours_of_the_same_air_give_the_same_room(name):
    rule = RULES[name]
    hours = rule.at(HourlyWeather.constant(Air(3.0, 0.8), hours=50))
    months = rule.at(MonthlyClimate([3.0] * 12, [0.8] * 12))
    for hourly, monthly in zip(hours, months, strict=True):
        assert (hourly.shape, monthly.shape) == ((50,), (12,))
        assert hourly[-1] == pytest.approx(monthly[0], rel=1e-12)
        assert np.ptp(hourly) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("name", RULES)
@pytest.mark.parametrize("place", ["very-cold", "hot-humid"])
def test_no_room_is_ever_above_saturation(name, place):
    warmth, vapor = RULES[name].at(weather.demo(place))
    assert np.all(vapor <= air.saturation_vapor_pressure(warmth) * (1 + 1e-12))
    assert np.all(vapor > 0)


def test_a_room_feels_the_day_not_the_hour():
    temperature = np.tile([0.0] * 12 + [20.0] * 12, 4)
    warmth, vapor = indoor.by_outdoor_temperature().at(HourlyWeather(temperature, np.full(96, 500.0)))
    assert np.ptp(vapor) < 1e-9  # the mean of any 24 hours is 10 degC
    assert warmth == pytest.approx(np.full(96, 20.0))


def test_the_weather_repeats_across_the_new_year():
    temperature = np.zeros(48)
    temperature[-12:] = 24.0
    warmth, vapor = indoor.by_daily_mean().at(HourlyWeather(temperature, np.full(48, 400.0)))
    # The first hour looks back on the last 23 of the year before: 12 of them warm.
    expected = 0.40 + (12 * 24.0 / 24 + 10.0) / 100
    assert vapor[0] == pytest.approx(air.vapor_pressure(warmth[0], expected), rel=1e-9)


def test_water_above_saturation_ends_on_the_windows():
    warmth, vapor = indoor.moisture_balance(40 / 86400, 0.005, 20.0).at(HourlyWeather.constant(Air(0, 0.9), hours=2))
    assert vapor == pytest.approx(air.saturation_vapor_pressure(warmth))


def test_fresh_air_and_its_inverse_agree():
    outdoor = Air(to_si(20, "degF"), 0.8)
    need = indoor.fresh_air_needed(to_si(10, "kg/day"), 0.40, outdoor, 21.0)
    assert indoor.steady_humidity(to_si(10, "kg/day"), need, outdoor, 21.0) == pytest.approx(0.40, rel=1e-12)


def test_opening_the_window_on_a_foggy_winter_day_dries_the_room():
    fog, room = Air(to_si(20, "degF"), 0.9), to_si(70, "degF")
    shut = indoor.steady_humidity(to_si(10, "kg/day"), to_si(30, "cfm"), fog, room)
    opened = indoor.steady_humidity(to_si(10, "kg/day"), to_si(150, "cfm"), fog, room)
    assert opened < shut / 2


@pytest.mark.parametrize(
    ("outdoors", "room"),
    [(-25.0, (21.0, 0.40)), (10.0, (21.0, 0.40)), (12.5, (21.75, 0.425)), (15.0, (22.5, 0.45)), (20.0, (24.0, 0.5)),
     (32.0, (24.0, 0.5))],
)  # fmt: skip
def test_a_heated_and_cooled_room_between_its_two_airs(outdoors, room):
    rule = indoor.heated_and_cooled(Air(21.0, 0.4), Air(24.0, 0.5))
    warmth, vapor = rule.at(MonthlyClimate([outdoors] * 12, [0.5] * 12))
    assert warmth == pytest.approx(np.full(12, room[0]))
    assert air.relative_humidity(warmth, vapor) == pytest.approx(np.full(12, room[1]))


def test_one_air_winter_and_summer_is_the_constant_room():
    same, year = Air(20.5, 0.45), weather.demo("cold")
    for seasons, all_year in zip(
        indoor.heated_and_cooled(same, same).at(year), indoor.constant(same).at(year), strict=True
    ):
        assert seasons == pytest.approx(all_year, rel=1e-12)


@pytest.mark.parametrize("name", RULES)
def test_a_damper_house_is_as_warm_and_ten_points_damper(name):
    year = weather.demo("cold")
    (usual, vapor), (warmth, more) = RULES[name].at(year), indoor.damper(RULES[name]).at(year)
    assert np.array_equal(warmth, usual)
    before, after = air.relative_humidity(usual, vapor), air.relative_humidity(warmth, more)
    assert after == pytest.approx(np.minimum(before + 0.10, 1.0))
    assert after.max() > before.max() or before.max() == pytest.approx(1.0)


def test_a_crowded_dwelling_is_the_usual_one_ten_points_damper():
    """The two occupancies of the standard differ by just that."""
    year = weather.demo("mixed-humid")
    for ours, theirs in zip(
        indoor.damper(indoor.by_outdoor_temperature("normal"), 0.10).at(year),
        indoor.by_outdoor_temperature("high").at(year),
        strict=True,
    ):
        assert ours == pytest.approx(theirs)


@pytest.mark.parametrize(
    ("make", "kind", "sentence"),
    [
        (lambda: indoor.humidity_class(5), OutOfRange, "Humidity class is 5, which has no upper limit"),
        (lambda: indoor.humidity_class(0), OutOfRange, "Humidity class is 0; it must be 1, 2, 3 or 4"),
        (lambda: indoor.humidity_class(3, factor=2), OutOfRange, "Factor on the excess is 2; it must be 1 to 1.5"),
        (lambda: indoor.humidity_class(3, 60), OutOfRange, "Room temperature is 60 °C; it must be 5 to 40 °C"),
        (lambda: indoor.by_outdoor_temperature("hihg"), UnknownName, 'no occupancy "hihg"; did you mean high'),
        (lambda: indoor.moisture_balance(1e-4, 0.0), OutOfRange, "Fresh air is 0 m³/s; it must be above 0"),
        (lambda: indoor.moisture_balance(-1, 0.1), OutOfRange, "Moisture production is −1 kg/s; it must be 0 to 0.01"),
        (lambda: indoor.damper(RULES["class"], 0.99), OutOfRange, "Humidity added is 99 %; it must be −95 to 95 %"),
        (lambda: indoor.moisture_by_bedrooms(0), OutOfRange, "Number of bedrooms is 0; it must be 1 to 12"),
        (
            lambda: indoor.fresh_air_needed(1e-4, 0.4, Air(30, 0.9)),
            OutOfRange,
            "Vapor pressure outdoors is 3821 Pa, not below the one wanted indoors; no amount of fresh air dries",
        ),
    ],
)
def test_what_makes_no_sense_gets_a_sentence(make, kind, sentence):
    with pytest.raises(kind, match=sentence):
        make()
