"""One room air and one outdoor year for all checks of a page, in every design year and for every kind of room."""

import argparse
import dataclasses
import io

import numpy as np
import pytest
from jobs_at_hand import OPEN, TIGHT, TYPED
from pypdf import PdfReader

from dryward import weather
from dryward.building import preset
from dryward.building.job import DESIGNS, ROOMS, Job, Place, Room
from dryward.cli import check
from dryward.report import document, moisture_checks, printed, review
from dryward.report.setting import inputs, setting
from dryward.verdict import STATES
from dryward.weather import Air

PLACES = {"demo": Place("demo", "mixed-humid"), "means": TYPED.place}


def job(kind="constant", design="typical", place="demo", **room):
    return Job(preset("vented-vault-osb"), PLACES[place], Room(kind, **room), years=1, design=design)


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("design", DESIGNS)
@pytest.mark.parametrize("kind", ROOMS)
def test_steady_checks_take_the_coldest_and_warmest_month_of_the_year_and_its_room(kind, design, place):
    here = setting(job(kind, design, place))
    warmth, vapor = here.room.at(here.months)
    found = review(here.job, hourly=False)
    for id, month, room, outdoor in (
        ("winter", int(np.argmin(here.months.temperature)), here.winter_room, here.winter),
        ("summer", int(np.argmax(here.months.temperature)), here.summer_room, here.summer),
    ):
        assert room.temperature == warmth[month]
        assert room.vapor_pressure == pytest.approx(vapor[month], rel=1e-11)
        assert outdoor == here.months.air(month + 1)
        check = found.check(id)
        assert check.number("room-air") == room.temperature
        assert check.number("room-humidity") == room.relative_humidity
        assert check.number("outdoor-air") == outdoor.temperature


@pytest.mark.parametrize("design", DESIGNS)
@pytest.mark.parametrize("kind", ROOMS)
def test_months_and_hours_are_one_year_and_the_room_is_one_rule(kind, design):
    here = setting(job(kind, design))
    own = here.hours.monthly()
    assert here.months.temperature == pytest.approx(own.temperature, abs=1e-3)  # the table of a place has three digits
    assert here.months.vapor_pressure == pytest.approx(own.vapor_pressure, rel=1e-3)
    run = moisture_checks.run_years(here)
    warmth, vapor = here.room.at(here.hours)
    # The air that the march had indoors, from what came in through the inner film.
    assert run.vapor_flux_in.shape == vapor.shape
    again = dataclasses.replace(here, room=weather.indoor.measured(warmth, vapor))
    assert moisture_checks.run_years(again).vapor_flux_in == pytest.approx(run.vapor_flux_in, rel=1e-9, abs=1e-18)


def test_the_held_room_goes_from_its_winter_to_its_summer_air():
    here = setting(job(temperature=20.0, relative_humidity=0.35, summer_temperature=25.0, summer_relative_humidity=0.6))
    assert (here.winter_room, here.summer_room) == (Air(20.0, 0.35), Air(25.0, 0.6))
    mild = setting(dataclasses.replace(here.job, place=Place("demo", "hot-humid")))
    share = (mild.winter.temperature - 10.0) / 10.0
    assert 0 < share < 1, "no month there is a heating month"
    assert mild.winter_room.temperature == pytest.approx(20.0 + share * 5.0)


@pytest.mark.parametrize("kind", ROOMS)
def test_a_damp_house_is_ten_points_damper_in_winter_and_summer(kind):
    usual, damp = (setting(job(kind, design)) for design in ("typical", "damp house"))
    for name in ("winter_room", "summer_room"):
        before, after = getattr(usual, name), getattr(damp, name)
        assert after.temperature == before.temperature
        assert after.relative_humidity == pytest.approx(min(before.relative_humidity + 0.10, 1.0))
    assert np.array_equal(damp.hours.temperature, usual.hours.temperature)


@pytest.mark.parametrize("place", PLACES)
def test_a_cold_winter_is_two_kelvin_colder_in_every_check(place):
    usual, cold = (setting(job(design=design, place=place)) for design in ("typical", "cold winter"))
    assert cold.months.temperature == pytest.approx(usual.months.temperature - 2.0, abs=1e-3)
    assert cold.winter.temperature == pytest.approx(usual.winter.temperature - 2.0, abs=1e-3)
    if place == "means":
        assert cold.hours is None
    else:
        assert cold.hours.temperature == pytest.approx(usual.hours.temperature - 2.0)


def test_both_hard_years_wet_a_roof_more_than_the_typical_one():
    found = {design: review(dataclasses.replace(TIGHT, design=design), with_trials=False) for design in DESIGNS}
    usual = found.pop("typical")
    for hard in found.values():
        assert hard.check("winter").number("water-gained") > usual.check("winter").number("water-gained")
        assert hard.check("twelve-months").number("most-held") > usual.check("twelve-months").number("most-held")
        peaks = [each.verdict.finding("wood-moisture").value for each in (hard, usual)]
        assert peaks[0] > peaks[1]
        assert STATES.index(hard.state) >= STATES.index(usual.state)


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize(
    ("design", "start", "how"),
    [
        ("typical", "A typical year: ", "as they are given"),
        ("damp house", "A damp house: ", "10 points more relative humidity than given"),
        ("cold winter", "A cold winter: ", "2 K colder than given, at the same relative humidity"),
    ],
)
def test_the_first_note_says_which_year_it_is_and_how_it_is_made(design, start, how, place):
    here = setting(job(design=design, place=place))
    assert here.notes[0].startswith(start)
    assert how in here.notes[0]
    assert here.notes[0].count(". ") == 0
    assert here.notes[0].endswith(".")
    assert review(here.job, hourly=False).notes[: len(here.notes)] == here.notes
    if design == "cold winter":
        assert ("each month" if place == "means" else "each hour") in here.notes[0]
    if design != "typical":
        assert "EN 15026" in here.notes[0]
        assert "from memory" in here.notes[0]


def rows(job, system="us"):
    return dict(inputs(setting(job), system, True))


def test_the_printed_inputs_name_the_year_and_both_rooms():
    shown = rows(job(design="cold winter", temperature=20.0, summer_temperature=25.0))
    assert shown["Design year"] == "cold winter, 3.6 °F colder than given"
    assert (shown["Room air in winter"], shown["Room air in summer"]) == ("68.0 °F, 40 %", "77.0 °F, 50 %")
    assert rows(job(design="cold winter"), "si")["Design year"] == "cold winter, 2 K colder than given"
    assert rows(job(design="damp house"))["Design year"] == "damp house, rooms 10 points damper than given"
    assert rows(job(design="damp house"))["Room air in winter"].endswith(", 50 %")
    assert rows(job())["Design year"] == "typical"
    by_class = rows(job("class", humidity_class=3))
    assert by_class["Room air in winter"].startswith("by humidity class; ")


@pytest.mark.parametrize("design", DESIGNS)
def test_the_page_in_si_shows_si_in_every_design_year(design):
    made = document.document(review(dataclasses.replace(OPEN, design=design), hourly=False), "si")
    text = " ".join(each.extract_text() for each in PdfReader(io.BytesIO(printed.pdf(made, "a4"))).pages)
    assert "°F" not in text
    assert " ".join(setting(dataclasses.replace(OPEN, design=design)).notes[0].split()) in " ".join(text.split())


def test_a_weather_files_own_notes_come_after_the_design_year(tmp_path):
    from importlib.resources import as_file, files

    with as_file(files("dryward.evidence") / "data" / "typical-year-45N-8E.epw.gz") as path:
        here = setting(Job(preset("vented-vault"), Place("file", str(path)), design="cold winter"))
        file = weather.read_epw(path)
    assert here.notes[1:] == file.notes
    assert here.hours.sun_offset == file.sun_offset
    assert here.months.temperature == pytest.approx(file.monthly().temperature - 2.0)


@pytest.mark.parametrize(
    ("kind", "typed", "after"),
    [
        ("class", {"humidity": "45"}, "constant"),
        ("class", {"room_temperature": "20C"}, "class"),
        ("by outdoor temperature", {"room_temperature": "20C"}, "constant"),
        ("by outdoor temperature", {}, "by outdoor temperature"),
        ("constant", {"humidity": "45"}, "constant"),
    ],
)
def test_a_room_typed_at_the_command_is_the_room_of_the_checks(kind, typed, after):
    none = dict.fromkeys(
        ("steady", "spread", "place", "epw", "zone", "humidity", "room_temperature", "years", "design")
    )
    changed = check.changed(job(kind), argparse.Namespace(**{**none, **typed}))
    assert changed.room.kind == after
    room = setting(changed).winter_room
    if "humidity" in typed:
        assert room.relative_humidity == pytest.approx(0.45)
    if "room_temperature" in typed:
        assert room.temperature == pytest.approx(20.0)
