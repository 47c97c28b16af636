"""A cold winter's year: what is shifted, what is kept, and that months and hours stay one climate."""

from importlib.resources import as_file, files

import numpy as np
import pytest

from dryward import air, weather
from dryward.checks import OutOfRange
from dryward.units import KELVIN
from dryward.weather import Air, HourlyWeather, MonthlyClimate


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
    assert cold.name == "Cold, 2 K colder"
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
        (lambda: weather.colder(weather.demo_climate("cold"), -1), "How much colder is -1 K; it must be 0 to 10 K"),
        (lambda: weather.colder(weather.demo_climate("cold"), 20), "How much colder is 20 K; it must be 0 to 10 K"),
        (lambda: weather.colder(MonthlyClimate([-59.0] * 12, [0.5] * 12)), "Monthly temperature is -61 °C; it must be"),
    ],
)
def test_what_cannot_be_gets_a_sentence(make, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        make()
