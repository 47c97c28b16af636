"""What readings say: likeness, lag, cold pins, which of four causes left its trace; and readings as drivers."""

from dataclasses import replace

import numpy as np
import pytest

from dryward import building, weather
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import hourly
from dryward.weather import Air, HourlyWeather, demos, indoor, loggers
from dryward.weather.loggers import samples
from dryward.weather.loggers.comparison import hour_of_year

NAMES = {
    "indoor-humidity": "indoor humidity",
    "air-leak": "air leak",
    "blocked-vents": "blocked vents",
    "built-in-water": "built-in water",
    "rain-leak": "rain leak",
    "nothing": "outdoor air",
}


def readings_of(cause, tmp_path, place="cold"):
    path = tmp_path / "roof.csv"
    path.write_bytes(samples.cause_file(cause, place))
    return loggers.read(path)


@pytest.mark.parametrize("cause", [*samples.CAUSES, samples.FOG])
def test_each_sample_file_names_its_cause(cause):
    with loggers.sample(f"cause-{cause}") as path:
        found = loggers.diagnose(loggers.read(path))
    assert found.cause == {**NAMES, samples.FOG: "outdoor air"}[cause]


def test_wood_alike_two_causes():
    """A leak and a shut vent: the wood of both rises by the same, and no spell of rain wets it."""
    leak, shut = (four_weeks_read(cause) for cause in ("air-leak", "blocked-vents"))
    ends = [each["wood at the end against the start"] for each in (leak, shut)]
    assert ends[0] == pytest.approx(ends[1], abs=0.3)
    assert leak["wet spells that wet the wood"] == shut["wet spells that wet the wood"] == 0
    assert leak["changes with the room"] > 0.8
    assert shut["changes with the room"] < 0.2
    assert leak["changes with outdoors"] > 0.5 > 0.3 > shut["changes with outdoors"]


def four_weeks_read(cause):
    with loggers.sample(f"cause-{cause}") as path:
        return loggers.diagnose(loggers.read(path)).numbers


@pytest.mark.parametrize("place", ["very-cold", "cold", "mixed-humid"])
def test_a_strong_leak_in_the_cold_is_told_by_the_hours_that_are_not_full(place, tmp_path, monkeypatch):
    """A roof full of vapor shows its temperature alone; such hours are left out, and that is said."""
    strong = replace(samples.FAULTS["air-leak"], first_day=8, fresh_air=0.02, hole=6.0, outside=0.5)
    monkeypatch.setitem(samples.FAULTS, "air-leak", strong)
    monkeypatch.setattr(samples, "_HOLLOW", (0.12, 0.04))
    found = loggers.diagnose(readings_of("air-leak", tmp_path, place))
    assert found.numbers["share saturated"] > 0.3
    assert found.cause == "air leak"
    assert "all the vapor there can be" in found.evidence[-1]


def test_a_roof_too_full_of_vapor_to_tell_is_not_laid_to_its_vents(tmp_path, monkeypatch):
    leak = replace(samples.FAULTS["air-leak"], first_day=8, fresh_air=0.02, outside=0.5)
    monkeypatch.setitem(samples.FAULTS, "air-leak", leak)
    monkeypatch.setattr(samples, "_HOLLOW", (0.05, 0.02))
    found = loggers.diagnose(readings_of("air-leak", tmp_path))
    assert found.numbers["share saturated"] > 0.7
    assert found.numbers["changes with outdoors"] < 0.4
    assert found.cause == "not clear"


@pytest.mark.parametrize("place", demos())
@pytest.mark.parametrize("cause", NAMES)
def test_the_same_roof_in_another_climate_has_the_same_cause(cause, place, tmp_path):
    if (cause, place) == ("blocked-vents", "hot-dry"):
        pytest.skip("there the wood gives off more than seeps in")
    assert loggers.diagnose(readings_of(cause, tmp_path, place)).cause == NAMES[cause]


@pytest.mark.parametrize("cause", NAMES)
def test_sensors_a_little_off_do_not_change_the_cause(cause, tmp_path):
    readings = readings_of(cause, tmp_path)
    dice = np.random.default_rng(7)
    noisy = []
    for record, offset in zip(readings.records, (0.3, -0.4, 0.2), strict=True):
        off = record.corrected(temperature=offset, relative_humidity=offset / 20)
        noise = dice.normal(1.0, 0.005, off.time.size)
        noisy.append(replace(off, vapor_pressure=off.vapor_pressure * noise))
    assert loggers.diagnose(replace(readings, records=tuple(noisy))).cause == NAMES[cause]


def test_a_shower_reaches_the_cavity_within_the_hour(tmp_path):
    numbers = loggers.diagnose(readings_of("air-leak", tmp_path)).numbers
    assert numbers["changes with the room"] > 0.8
    assert numbers["lag behind the room"] in (0.0, 1.0)
    quiet = loggers.diagnose(readings_of("built-in-water", tmp_path)).numbers
    assert abs(quiet["changes with the room"]) < 0.3


def test_the_evidence_leads_with_the_cause_and_holds_numbers(tmp_path):
    found = loggers.diagnose(readings_of("rain-leak", tmp_path))
    assert found.evidence[0].startswith("After 100 % of 5 wet spells the wood was wetter")
    assert len(found.evidence) == 5
    assert all(sentence.endswith(".") and any(c.isdigit() for c in sentence) for sentence in found.evidence)


def test_without_rain_readings_a_leak_is_not_claimed(tmp_path):
    readings = readings_of("rain-leak", tmp_path)
    dry = replace(readings, records=tuple(replace(record, rain=None) for record in readings.records))
    found = loggers.diagnose(dry)
    assert found.cause != "rain leak"
    assert any("no readings of rain" in sentence for sentence in found.evidence)


def test_without_a_pin_meter_the_humidity_stands_in(tmp_path):
    readings = readings_of("built-in-water", tmp_path)
    bare = replace(readings, records=tuple(replace(record, moisture_content=None) for record in readings.records))
    assert loggers.diagnose(bare).numbers["wood at the end against the start"] < 0


def test_a_place_is_missing(tmp_path):
    readings = readings_of("air-leak", tmp_path)
    with pytest.raises(UnknownName, match='There is no place in the readings "indoors"'):
        loggers.diagnose(replace(readings, records=readings.records[1:]))


def test_too_few_hours_say_nothing(tmp_path):
    readings = readings_of("air-leak", tmp_path)
    short = tuple(
        replace(r, time=r.time[:50], temperature=r.temperature[:50], vapor_pressure=r.vapor_pressure[:50],
                moisture_content=None, rain=None)
        for r in readings.records
    )  # fmt: skip
    with pytest.raises(OutOfRange, match="Hours known at all three places are 50; at least 72 are needed"):
        loggers.diagnose(replace(readings, records=short))


def test_records_of_other_days_share_no_clock():
    with loggers.sample("cause-air-leak") as path:
        room = loggers.read(path)["indoors"]
    later = replace(room, time=room.time + np.timedelta64(400, "D"))
    with pytest.raises(OutOfRange, match="The records have no two hours in common; check their dates and time zones"):
        loggers.shared_clock(room, later)


def test_half_hours_and_hours_meet_on_full_hours():
    with loggers.sample("messy-report") as path:
        room = loggers.read(path, place="indoors")["indoors"]
    (shared,) = loggers.shared_clock(room)
    assert shared.interval == 3600
    assert shared.temperature[0] == pytest.approx(room.temperature[:2].mean())


# --- bias, likeness, lag -------------------------------------------------


def test_bias_and_spread():
    model = np.sin(np.arange(100) / 7) * 5 + 10
    measured = model + 1.5 + 0.2 * np.cos(np.arange(100) * 2.1)
    measured[3] = np.nan
    found = loggers.agreement(measured, model)
    assert found.bias == pytest.approx(1.5, abs=0.01)
    assert found.spread == pytest.approx(0.2 / np.sqrt(2), rel=0.05)
    assert found.correlation > 0.99
    assert found.hours == 99


@pytest.mark.parametrize("shift", [-13, -4, 0, 1, 9, 13])
def test_a_lag_is_found_both_ways(shift):
    dice = np.random.default_rng(3)
    driver = np.convolve(dice.normal(size=400), np.ones(5) / 5, "same")
    hours, likeness = loggers.lag(driver, np.roll(driver, shift))
    assert hours == shift
    assert likeness > 0.95


def test_what_never_changes_is_like_nothing():
    assert np.isnan(loggers.correlation([1.0, 1.0, 1.0], [1.0, 2.0, 3.0]))
    assert np.isnan(loggers.lag(np.ones(50), np.arange(50.0))[1])


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (lambda: loggers.agreement([1.0], [1.0, 2.0]), "The two series have 1 and 2 values; they must have the same"),
        (lambda: loggers.agreement([np.nan], [1.0]), "The two series have no hour in common"),
        (lambda: loggers.lag([1.0], [1.0, 2.0]), "The two series have 1 and 2 values"),
        (lambda: loggers.lag([1.0], [1.0], longest=0), "Longest lag is 0 h; it must be 1 to 240 h"),
    ],
)
def test_series_that_cannot_be_compared_get_a_sentence(ask, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        ask()


# --- cold pins -----------------------------------------------------------


def test_cold_wood_is_wetter_than_the_dial_says():
    at_room = loggers.moisture_content(15.0, 21.0)
    cold = loggers.moisture_content(15.0, -7.0)
    assert at_room == pytest.approx(15.0, abs=0.4)
    assert 3.0 < cold - at_room < 4.5
    assert np.all(np.diff(loggers.moisture_content(15.0, np.linspace(-30, 55, 50))) < 0)


def test_the_species_has_a_say():
    assert loggers.moisture_content(15.0, 21.0, slope=1.1, offset=0.5) == pytest.approx(
        (loggers.moisture_content(15.0, 21.0) - 0.5) / 1.1
    )


@pytest.mark.parametrize(
    ("numbers", "sentence"),
    [
        ((80.0, 20.0), "Meter reading is 80 mass %; it must be 0 to 60 mass %"),
        ((15.0, 90.0), "Wood temperature is 90 °C; it must be −35 to 60 °C"),
        ((15.0, 20.0, 3.0), "Slope of the species is 3; it must be 0.5 to 2"),
        ((15.0, 20.0, 1.0, 11.0), "Offset of the species is 11 mass %; it must be −10 to 10 mass %"),
    ],
)
def test_a_meter_that_cannot_be(numbers, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        loggers.moisture_content(*numbers)


@pytest.fixture(scope="module")
def readings():
    with loggers.sample("cause-air-leak") as path:
        return loggers.read(path)


def with_gap(readings, hours):
    records = []
    for record in readings.records:
        temperature = record.temperature.copy()
        temperature[100 : 100 + hours] = np.nan
        records.append(replace(record, temperature=temperature))
    return replace(readings, records=tuple(records))


def test_the_sun_is_that_of_the_same_hours(readings):
    year = weather.demo("cold")
    outdoors, _ = loggers.driving(readings, sun=year)
    first = hour_of_year(readings["outdoors"].time[:1])[0]
    assert np.array_equal(outdoors.global_horizontal, year.global_horizontal[first : first + outdoors.hours])
    assert (outdoors.latitude, outdoors.time_zone) == (year.latitude, year.time_zone)
    instants, _ = loggers.driving(readings, sun=replace(year, sun_offset=0.0))
    assert (outdoors.sun_offset, instants.sun_offset) == (-0.5, 0.0)
    assert "Sun, sky and wind are those of cold" in outdoors.notes[-1]


def test_gaps_are_filled_and_said(readings):
    outdoors, _ = loggers.driving(with_gap(readings, 5))
    assert np.all(np.isfinite(outdoors.temperature))
    assert outdoors.notes[0] == "Temperature outdoors is filled in for 5 hours."


def test_air_above_saturation_outdoors_is_said(readings):
    records = [
        replace(r, vapor_pressure=r.vapor_pressure * 1.6) if r.place == "outdoors" else r for r in readings.records
    ]
    outdoors, _ = loggers.driving(replace(readings, records=tuple(records)))
    assert "hours above saturation are taken as saturated" in outdoors.notes[0]


def test_the_model_runs_on_readings(readings):
    outdoors, room = loggers.driving(readings)
    run = hourly.simulate(building.preset("vented-vault-closed"), outdoors, room, hours=48)
    assert run.temperature.shape[0] == 48
    assert np.all(np.isfinite(run.temperature))


def test_leap_days_count_as_the_day_before():
    times = np.array(["2024-02-28T05", "2024-02-29T05", "2024-03-01T00", "2023-12-31T23"], dtype="datetime64[s]")
    assert hour_of_year(times).tolist() == [57 * 24 + 29, 57 * 24 + 29, 59 * 24, 8759]


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (
            lambda r: loggers.driving(with_gap(r, 200)),
            "Of the 672 hours 200 have no temperature outdoors; at most 10 %",
        ),
        (
            lambda r: loggers.driving(r, sun=HourlyWeather.constant(Air(0, 0.5), hours=5)),
            "The year of the sun has 5 hours; it must have 8760",
        ),
        (lambda r: indoor.measured([21.0], [1.0, 2.0]), "The room has 1 temperatures, but 2 vapor pressures"),
        (
            lambda r: indoor.measured([21.0], [3000.0]),
            "Vapor pressure in the room in hour 1 is 3000 Pa; at 21.0 °C there can be",
        ),
        (
            lambda r: indoor.measured([21.0], [900.0]).at(HourlyWeather.constant(Air(0, 0.5), hours=5)),
            "The room was read in 1 hours, but the weather has 5",
        ),
    ],
)
def test_what_cannot_drive_gets_a_sentence(readings, ask, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        ask(readings)
