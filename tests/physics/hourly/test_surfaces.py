"""Sun, sky and wind on the outer surface, and what they do to a roof."""

import numpy as np
import pytest

from dryward import building, weather
from dryward.building import Assembly, Layer, Material
from dryward.checks import OutOfRange
from dryward.physics import hourly
from dryward.physics.hourly import surfaces
from dryward.units import STEFAN_BOLTZMANN
from dryward.weather import Air, HourlyWeather

YEAR = weather.demo("cold")
STONE = Material("stone", "stone", 2000.0, 900.0, 1.5, 1e-12)


def test_surface_balance_of_the_night():
    """A slab at 20 °C inside under a cold sky: eps sigma (Ts^4 - Tsky^4) + h (Ts - Ta) = U (Ti - Ts)."""
    for outdoor, sky, h, u, want in (
        (0.0, -18.0, 10.0, 0.2, -4.4745),
        (0.0, -18.0, 5.0, 0.2, -6.9316),
        (10.0, -5.0, 8.0, 0.15, 5.0505),
    ):
        light = Material("light", "light", 20.0, 1000.0, 0.03, 1e-16)
        radiant = 4 * 0.9 * STEFAN_BOLTZMANN * 283.15**3
        roof = Assembly(
            "roof", [Layer(light, 0.03 * (1 / u - 0.1))], interior_film=0.1, exterior_film=1 / (h + radiant), slope=0
        )
        n = 300
        down = STEFAN_BOLTZMANN * (sky + 273.15) ** 4
        night = HourlyWeather(np.full(n, outdoor), np.full(n, 1.0), sky_longwave=np.full(n, down))
        run = hourly.simulate(roof, night, Air(20.0, 0.0), surface=hourly.Surface(emittance=0.9))
        assert run.surface_temperature[-1] == pytest.approx(want, abs=2e-3)


def test_south_is_sunnier_than_north_and_dark_hotter_than_pale():
    vault = building.preset("vented-vault")

    def run(**change):
        return hourly.simulate(vault, YEAR, Air(21.0, 0.4), surface=hourly.Surface(**change)).surface_temperature

    south, north = run(azimuth=180.0), run(azimuth=0.0)
    dark, pale = run(absorptance=0.9), run(absorptance=0.3)
    assert south.mean() > north.mean() + 0.5
    assert south.max() > north.max()
    assert dark.max() > pale.max() + 5.0
    assert dark.mean() > pale.mean()
    night = YEAR.global_horizontal == 0
    assert dark[night].mean() == pytest.approx(pale[night].mean(), abs=1.0)
    assert south[night].min() < YEAR.temperature[night].min()  # colder than the air, by the sky


def test_sun_on_a_level_roof_is_the_global_sun():
    level = surfaces.irradiance(YEAR, 0.0, 180.0)
    assert level.sum() == pytest.approx(YEAR.global_horizontal.sum(), rel=0.02)
    assert np.all(level >= 0)


def test_a_dark_room_without_emittance_is_the_film_alone():
    wall = Assembly("wall", [Layer(STONE, 0.2)], exterior_film=0.05)
    bare = hourly.simulate(wall, YEAR, Air(20.0, 0.4), hours=500)
    surface = hourly.Surface(absorptance=0.0, emittance=0.0, wind_film=False)
    same = hourly.simulate(wall, YEAR, Air(20.0, 0.4), hours=500, surface=surface)
    assert same.temperature == pytest.approx(bare.temperature, abs=1e-6)


def test_wind_makes_the_film():
    gale = HourlyWeather(np.zeros(3), np.full(3, 300.0), wind_speed=np.array([0.0, 5.0, 10.0]))
    assert surfaces.film(gale, 0.04, hourly.Surface()) == pytest.approx([4.0, 24.0, 44.0])
    assert surfaces.film(gale, 0.04, None) == pytest.approx([25.0, 25.0, 25.0])


def test_global_sun_alone_is_split():
    split = HourlyWeather(
        YEAR.temperature, YEAR.vapor_pressure, global_horizontal=YEAR.global_horizontal,
        latitude=YEAR.latitude, longitude=YEAR.longitude, time_zone=YEAR.time_zone,
    )  # fmt: skip
    assert surfaces.irradiance(split, 35.0, 180.0).sum() == pytest.approx(
        surfaces.irradiance(YEAR, 35.0, 180.0).sum(), rel=0.15
    )


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"direct_normal": YEAR.direct_normal, "latitude": 45.0, "longitude": 0.0}, "has only a part of the sun"),
        ({"global_horizontal": YEAR.global_horizontal}, "no latitude and longitude"),
    ],
)
def test_sun_that_is_not_enough(given, words):
    part = HourlyWeather(YEAR.temperature, YEAR.vapor_pressure, **given)
    with pytest.raises(OutOfRange, match=words):
        surfaces.irradiance(part, 35.0, 180.0)


def test_a_surface_has_ranges():
    with pytest.raises(OutOfRange, match=r"Absorptance is 1\.2; it must be 0 to 1"):
        hourly.Surface(absorptance=1.2)
