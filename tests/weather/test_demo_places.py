"""The invented places: repeatable, physical, told apart, and cheap to open."""

import subprocess
import sys
from importlib.resources import files

import numpy as np
import pytest

from dryward import air, weather
from dryward.checks import UnknownName
from dryward.weather import generator, places


@pytest.fixture(params=weather.demos())
def year(request):
    return weather.demo(request.param)


def test_there_are_six_named_by_kind_of_climate():
    assert weather.demos() == ("very-cold", "cold", "cool-marine", "mixed-humid", "hot-humid", "hot-dry")


def test_an_unknown_place_names_its_neighbors():
    with pytest.raises(UnknownName, match='There is no demo climate "hot-wet"; did you mean hot-dry'):
        weather.demo("hot-wet")
    with pytest.raises(UnknownName, match='There is no demo climate "colt"; did you mean cold'):
        weather.demo_climate("colt")


def test_every_hour_is_physical(year):
    assert year.hours == 8760
    assert np.all(year.relative_humidity <= 0.98 + 1e-12)
    assert np.all(year.relative_humidity > 0.05)
    assert np.all(year.wind_speed > 0)
    # Black-body radiation of the air bounds that of the sky from above.
    assert np.all(year.sky_longwave < 5.6704e-8 * (year.temperature + 273.15) ** 4)
    assert np.all(year.sky_longwave > 0.5 * 5.6704e-8 * (year.temperature + 273.15) ** 4)


def test_the_sun_adds_up_and_sleeps_at_night(year):
    clock = np.arange(8760) % 24
    night = (clock == 0) | (clock == 23)
    assert np.all(year.global_horizontal[night] == 0)
    assert year.global_horizontal.max() > 700
    assert np.all(year.diffuse_horizontal <= year.global_horizontal + 1e-9)
    # Direct sun on level ground is never more than the beam itself.
    assert np.all(year.global_horizontal - year.diffuse_horizontal <= year.direct_normal + 1e-9)


def test_noon_is_at_noon(year):
    mean_day = year.global_horizontal.reshape(365, 24).mean(axis=0)
    before, after = mean_day[:12].sum(), mean_day[12:].sum()
    assert before == pytest.approx(after, rel=0.03)  # the middle of the time zone, hour-ending


def test_december_joins_january(year):
    steps = np.abs(np.diff(year.temperature))
    assert abs(year.temperature[0] - year.temperature[-1]) <= steps.max()


def test_the_same_year_every_time():
    again = generator.year(places.place("cold"))
    assert np.array_equal(again.temperature, weather.demo("cold").temperature)
    assert np.array_equal(again.direct_normal, weather.demo("cold").direct_normal)


def test_each_place_is_what_its_name_says():
    means = {id: weather.demo_climate(id) for id in weather.demos()}
    january = {id: m.temperature[0] for id, m in means.items()}
    july = {id: m.temperature[6] for id, m in means.items()}
    assert january["very-cold"] < -10 < january["cold"] < 0 < january["mixed-humid"] < january["hot-humid"]
    assert july["cool-marine"] == min(july.values())
    assert july["hot-dry"] == max(july.values())
    dew = {id: air.dew_point(m.vapor_pressure[6]) for id, m in means.items()}
    assert dew["hot-humid"] > 22
    assert dew["hot-dry"] < 12
    assert dew["hot-humid"] > dew["mixed-humid"] > dew["cold"]


def test_the_small_table_is_the_generators_own(year):
    months, computed = {m.name: m for m in map(weather.demo_climate, weather.demos())}[year.name], year.monthly()
    assert months.temperature == pytest.approx(computed.temperature, abs=6e-4)
    assert months.relative_humidity == pytest.approx(computed.relative_humidity, abs=6e-6)


def test_the_table_file_is_the_output_of_its_command():
    kept = files("dryward.weather").joinpath("data/demo-climates.csv").read_text(encoding="utf-8").splitlines()
    made = places.table().splitlines()
    assert kept[:2] == made[:2]
    assert [line.split(",")[:2] for line in kept] == [line.split(",")[:2] for line in made]


def test_monthly_climates_load_nothing_heavy():
    code = (
        "import sys; from dryward import weather; weather.demo_climate('cold');"
        "print([m for m in ('pvlib', 'pandas', 'scipy', 'numba', 'CoolProp') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_an_invented_year_says_that_it_is_invented(year):
    assert "invented" in year.notes[0]
