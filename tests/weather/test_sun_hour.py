"""Which moment the sun of a file belongs to: found in years made from a known sun, in every convention, and asked."""

import gzip
from importlib.resources import as_file, files

import numpy as np
import pytest

from dryward import storage, weather
from dryward.checks import OutOfRange
from dryward.physics.hourly import surfaces
from dryward.weather import epw
from dryward.weather.climate import MIDDLE, YEAR, HourlyWeather

LINES = (
    gzip.decompress(files("dryward.evidence").joinpath("data/typical-year-45N-8E.epw.gz").read_bytes())
    .decode()
    .splitlines()
)
PLACES = {
    "equator": (0.0, 3.0, 0.0),
    "middle": (45.0, 8.0, 1.0),
    "west": (38.0, -83.0, -5.0),
    "north": (64.0, 26.0, 2.0),
}
#: Moments of an hour that are looked at; even, so that the mean is that of two minutes each.
EACH = 30
SKIES = {"clear": (-3.0, 1.0), "broken": (0.3, 0.1), "slow": (0.0, 3.0), "dull": (1.3, 0.7)}


@pytest.fixture(autouse=True)
def folder(tmp_path, monkeypatch):
    """The many years of these tests stay out of the user's cache."""
    monkeypatch.setattr(storage, "cache_folder", lambda: tmp_path / "cache")


def cosine_of_zenith(place, hour):
    """The height of the sun after Spencer 1971 (from memory), apart from the kit's own; `hour` of local time."""
    latitude, longitude, zone = place
    day = 2 * np.pi * (hour / 24) / 365
    declination = (
        0.006918 - 0.399912 * np.cos(day) + 0.070257 * np.sin(day) - 0.006758 * np.cos(2 * day)
        + 0.000907 * np.sin(2 * day) - 0.002697 * np.cos(3 * day) + 0.00148 * np.sin(3 * day)
    )  # fmt: skip
    minutes = 229.18 * (
        0.000075 + 0.001868 * np.cos(day) - 0.032077 * np.sin(day) - 0.014615 * np.cos(2 * day)
        - 0.040849 * np.sin(2 * day)
    )  # fmt: skip
    turned = np.radians(15 * (hour + (longitude - 15 * zone) / 15 + minutes / 60 - 12))
    north = np.radians(latitude)
    height = np.sin(north) * np.sin(declination) + np.cos(north) * np.cos(declination) * np.cos(turned)
    return np.maximum(height, 0.0)


def clouds(sky, count):
    """How much of the direct sun comes through, moment by moment."""
    dull, hours = SKIES[sky]
    dice, kept = np.random.default_rng(7), np.exp(-1 / (EACH * hours))
    drawn = dice.standard_normal(count) * np.sqrt(1 - kept**2)
    drift = np.empty(count)
    drift[0] = drawn[0]
    for moment in range(1, count):
        drift[moment] = kept * drift[moment - 1] + drawn[moment]
    return 1 / (1 + np.exp(-6 * (drift - dull)))


@pytest.fixture(scope="module")
def suns():
    """Direct, diffuse and global sun of every place and sky, moment by moment, from two hours before the year on."""
    found = {}
    hour = (np.arange((YEAR + 4) * EACH) + 0.5) / EACH - 2
    for sky in SKIES:
        through = clouds(sky, hour.size)
        for name, place in PLACES.items():
            height = cosine_of_zenith(place, hour)
            clear = np.where(height > 0, 1100 * np.exp(-0.25 * np.maximum(height, 0.03) ** -0.7), 0.0)
            direct = clear * through
            diffuse = np.where(height > 0, 90 * np.sqrt(height) + 250 * height * (1 - through), 0.0)
            found[name, sky] = direct, diffuse, direct * height + diffuse
    return found


def hours_of(sun, moment):
    """Each hour's mean, or its instant, `moment` hours from its end."""
    if moment is None:
        return [series[2 * EACH :][: YEAR * EACH].reshape(YEAR, EACH).mean(axis=1) for series in sun]
    # The moments stand for the middle of two minutes each: two of them around a full hour.
    at = (2 + 1 + np.arange(YEAR)) * EACH + round(moment * EACH)
    return [0.5 * (series[at - 1] + series[at]) for series in sun]


def noisy(series, noise):
    """As instruments read it: off by so many W/m2, and whole numbers."""
    dice = np.random.default_rng(3)
    return [np.maximum(np.round(v + np.where(v > 0, noise * dice.standard_normal(v.size), 0.0)), 0.0) for v in series]


@pytest.mark.parametrize("noise", [0.0, 3.0])
@pytest.mark.parametrize("sky", SKIES)
@pytest.mark.parametrize("place", PLACES)
def test_each_convention_is_found_in_a_year_made_from_it(suns, place, sky, noise):
    for moment in (None, 0.0, -1.0, MIDDLE, 0.2, -1.3):
        found = epw.sun_hour(*noisy(hours_of(suns[place, sky], moment), noise), *PLACES[place])
        if moment is None or moment == MIDDLE:
            assert found == epw.SunHour(MIDDLE)
        else:
            assert found.unclear == ""
            assert found.offset == pytest.approx(moment, abs=0.03)  # two minutes


@pytest.mark.parametrize("sky", SKIES)
@pytest.mark.parametrize("place", PLACES)
def test_much_noise_may_hide_the_moment_but_never_names_a_wrong_one(suns, place, sky):
    for moment in (None, 0.0, -1.0):
        found = epw.sun_hour(*noisy(hours_of(suns[place, sky], moment), 25.0), *PLACES[place])
        if found.unclear:
            assert found == epw.SunHour(MIDDLE, "noise")
        else:
            assert found.offset == pytest.approx(MIDDLE if moment is None else moment, abs=0.1)


def test_means_of_the_hour_close_no_better_elsewhere(suns):
    """What the factor stands on: the sun of the mean is that of the middle, whatever the clouds do within the hour."""
    for (place, _), sun in suns.items():
        direct, diffuse, level = hours_of(sun, None)
        hours = np.flatnonzero(direct > 0)
        best, error, _, middle, _ = epw._closed(hours, direct[hours], (level - diffuse)[hours], *PLACES[place])
        assert middle < 1.02 * error
        assert best == pytest.approx(MIDDLE, abs=0.02)


@pytest.mark.parametrize("id", weather.demos())
def test_the_invented_years_have_the_sun_of_the_middle_that_they_say(id):
    year = weather.demo(id)
    place = year.latitude, year.longitude, year.time_zone
    found = epw.sun_hour(year.direct_normal, year.diffuse_horizontal, year.global_horizontal, *place)
    assert found == epw.SunHour(year.sun_offset) == epw.SunHour(MIDDLE)


def test_a_clock_or_place_that_is_wrong_is_said(suns):
    latitude, longitude, zone = PLACES["middle"]
    sun = hours_of(suns["middle", "slow"], None)
    for wrong in (zone + 2, zone - 2):
        assert epw.sun_hour(*sun, latitude, longitude, wrong) == epw.SunHour(MIDDLE, "outside")


def test_a_sun_that_cannot_tell(suns):
    direct, diffuse, level = hours_of(suns["middle", "slow"], 0.0)
    place, none = PLACES["middle"], np.zeros(YEAR)
    assert epw.sun_hour(none, none, none, *place) == epw.SunHour(MIDDLE, "missing")
    for given in ((None, diffuse, level), (direct, None, level), (direct, diffuse, None)):
        assert epw.sun_hour(*given, *place) == epw.SunHour(MIDDLE, "missing")
    # Direct sun as it falls on the level, not on a face turned to it; and direct sun of other days.
    for other in (level - diffuse, np.roll(direct, 24 * 11)):
        assert epw.sun_hour(other, diffuse, level, *place) == epw.SunHour(MIDDLE, "noise")


def test_hours_that_were_filled_in_tell_nothing(suns):
    """A fortnight of nonsense would hide the moment; marked as filled in it does not."""
    direct, diffuse, level = hours_of(suns["middle", "slow"], 0.0)
    spoiled, known = level.copy(), np.ones(YEAR, dtype=bool)
    spoiled[4000:4400], known[4000:4400] = 900.0, False
    assert epw.sun_hour(direct, diffuse, spoiled, *PLACES["middle"]).unclear == "noise"
    assert epw.sun_hour(direct, diffuse, spoiled, *PLACES["middle"], known).offset == pytest.approx(0.0, abs=0.03)


# --- through a file -------------------------------------------------------


@pytest.fixture
def written(tmp_path):
    """Writes a file with another sun."""

    def write(sun, place=PLACES["middle"]):
        latitude, longitude, zone = place
        lines = [f"LOCATION,a,b,c,d,e,{latitude},{longitude},{zone:g},250", *LINES[1:8]]
        for line, direct, diffuse, level in zip(LINES[8:], *sun, strict=True):
            fields = line.split(",")
            fields[13:16] = f"{level:.0f}", f"{direct:.0f}", f"{diffuse:.0f}"
            lines.append(",".join(fields))
        path = tmp_path / "town.epw"
        path.write_text("\n".join(lines) + "\n", encoding="utf-8")
        return path

    return write


@pytest.mark.parametrize(
    ("moment", "said"),
    [
        (None, ()),
        (0.0, ("town.epw: its sun is not the mean of the hour but that of the end of each hour.",)),
        (-1.0, ("town.epw: its sun is not the mean of the hour but that of the start of each hour.",)),
        (0.2, ("town.epw: its sun is not the mean of the hour but that of 12 minutes after the end of each hour.",)),
    ],
)
def test_a_file_says_what_is_not_the_middle(suns, written, moment, said):
    year = weather.read_epw(written(hours_of(suns["middle", "slow"], moment)))
    assert year.sun_offset == pytest.approx(MIDDLE if moment is None else moment, abs=0.011)
    assert year.notes == said


def test_a_file_that_cannot_tell_says_so(suns, written):
    none = np.zeros(YEAR)
    year = weather.read_epw(written((none, none, none)))
    assert year.sun_offset == MIDDLE
    assert year.notes == (
        "town.epw: which moment its sun belongs to cannot be told without global, direct and diffuse sun; "
        "it is taken as the mean of the hour.",
    )
    direct, diffuse, level = hours_of(suns["middle", "slow"], 0.0)
    assert "do not agree; it is taken as the mean" in weather.read_epw(written((level, diffuse, direct))).notes[-1]
    shifted = hours_of(suns["middle", "slow"], None)
    year = weather.read_epw(written(shifted, (45.0, 8.0, 3.0)))
    assert year.notes == (
        "town.epw: its sun fits no moment near its hour, so its clock or its place may be wrong; "
        "it is taken as the mean of the hour.",
    )
    absent = np.full(YEAR, 9999.0)
    year = weather.read_epw(written((absent, absent, absent)))
    assert not [note for note in year.notes if "moment" in note], "no sun, no moment of it"


def test_what_is_asked_overrules_the_data(suns, written):
    path = written(hours_of(suns["middle", "slow"], 0.0))
    asked = weather.read_epw(path, sun_offset=-0.25)
    assert asked.sun_offset == -0.25
    assert asked.notes == ("town.epw: its sun is taken as that of 15 minutes before the end of each hour, as asked.",)
    assert weather.read_epw(path, sun_offset=MIDDLE).notes == ()
    with pytest.raises(
        OutOfRange, match=r"Moment of the sun from the end of the hour is 2 h; it must be −1.5 to 0.5 h"
    ):
        weather.read_epw(path, sun_offset=2)
    with pytest.raises(OutOfRange, match="Moment of the sun from the end of the hour is −3 h"):
        HourlyWeather([1.0], [300.0], sun_offset=-3)


def test_the_slope_gets_the_sun_of_the_moment():
    """With its own moment the sun on a level face is the file's global sun, hour by hour; in the middle it is not."""
    with as_file(files("dryward.evidence") / "data" / "typical-year-45N-8E.epw.gz") as path:
        own, middle = weather.read_epw(path), weather.read_epw(path, sun_offset=MIDDLE)

    def off(year):
        return float(np.sqrt(np.mean((surfaces.irradiance(year, 0.0, 180.0) - year.global_horizontal) ** 2)))

    assert own.sun_offset == pytest.approx(0.18, abs=0.011)  # its header says 10.6 minutes after the hour
    assert "11 minutes after the end of each hour" in own.notes[0]
    assert off(own) < 2.0
    assert off(middle) > 20.0
    # Late in its hours, the sun lies more to the west.
    east, west = (surfaces.irradiance(own, 45.0, way) - surfaces.irradiance(middle, 45.0, way) for way in (90.0, 270.0))
    assert east.sum() < 0 < west.sum()


@pytest.mark.parametrize("moment", [0.0, -1.0])
def test_a_year_of_instants_lays_the_sun_of_its_means_on_every_slope(suns, moment):
    """The yearly sum of one sky, read either way; taken for means, instants put it on the wrong side."""

    def laid(way, moment, taken):
        still, series = np.full(YEAR, 10.0), hours_of(suns["middle", "clear"], moment)
        year = HourlyWeather(still, still, None, *series, None, *PLACES["middle"], sun_offset=taken)
        return surfaces.irradiance(year, 45.0, way).sum()

    for way in (0.0, 90.0, 180.0, 270.0):
        assert laid(way, moment, moment) == pytest.approx(laid(way, None, MIDDLE), rel=0.01)
    wrong = [laid(way, moment, MIDDLE) / laid(way, None, MIDDLE) for way in (90.0, 270.0)]
    assert sorted(wrong) == pytest.approx([0.91, 1.10], abs=0.02)
    assert (wrong[0] > wrong[1]) == (moment == 0.0)  # what is read too early in the day falls on the east
