"""Readings that drive the model: whole hours, the sun of the same days, and what was filled in is said."""

from dataclasses import replace

import numpy as np
import pytest

from dryward import building, weather
from dryward.checks import OutOfRange
from dryward.physics import hourly
from dryward.weather import Air, HourlyWeather, indoor, loggers
from dryward.weather.loggers.comparison import hour_of_year


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
    assert "Sun, sky and wind are those of Cold" in outdoors.notes[-1]


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
        (lambda r: loggers.driving(with_gap(r, 200)), "Of the 672 hours 200 have no temperature outdoors; at most 10%"),
        (
            lambda r: loggers.driving(r, sun=HourlyWeather.constant(Air(0, 0.5), hours=5)),
            "The year of the sun has 5 hours; it must have 8760",
        ),
        (lambda r: indoor.measured([21.0], [1.0, 2.0]), "The room has 1 temperatures, but 2 vapor pressures"),
        (
            lambda r: indoor.measured([21.0], [3000.0]),
            "Vapor pressure in the room in hour 1 is 3000 Pa; air at 21.0 °C",
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
