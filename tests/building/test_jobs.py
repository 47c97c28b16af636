"""Job files: round trips, typed units, and a sentence for every fault."""

import dataclasses
import multiprocessing
import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from second_writer import write

from dryward.building import preset, presets
from dryward.building.assembly import text
from dryward.building.job import (
    DESIGNS,
    ROOMS,
    Job,
    Place,
    Room,
    Tightness,
    Vent,
    job_text,
    load_job,
    parse_job,
    save_job,
)
from dryward.checks import BadFile, OutOfRange, PlainError

FULL = Job(
    preset("vented-vault"),
    Place("means", "", tuple(range(12)), (0.8,) * 12, "6"),
    Room("class", humidity_class=3),
    Tightness(3.0),
    Vent(),
    azimuth=180,
    years=3,
)


@pytest.mark.parametrize("id", presets())
def test_a_job_comes_back_as_it_was(id, tmp_path):
    job = dataclasses.replace(FULL, assembly=preset(id))
    token = save_job(job, tmp_path / "roof.toml", "new")
    again, read = load_job(tmp_path / "roof.toml")
    assert again == job
    assert read == token


@pytest.mark.parametrize("design", DESIGNS)
def test_the_design_year_and_the_summer_room_come_back(design, tmp_path):
    job = dataclasses.replace(FULL, room=Room(summer_temperature=26.5, summer_relative_humidity=0.62), design=design)
    save_job(job, tmp_path / "roof.toml", "new")
    assert load_job(tmp_path / "roof.toml")[0] == job


def of_version_1(job):
    """The file as it was written before the summer room and the design year were known."""
    words = job_text(job)
    for line in (r"summer_temperature = .*", r"summer_relative_humidity = .*", r"design = .*"):
        words, found = re.subn(rf"^{line}\n", "", words, flags=re.MULTILINE)
        assert found == 1
    return words.replace("version = 2\n", "version = 1\n", 1)


@pytest.mark.parametrize("kind", ROOMS)
def test_a_file_of_version_1_opens(kind):
    """With the summer air that the check of the warmest month had, and the typical year."""
    job = dataclasses.replace(FULL, room=Room(kind, temperature=20.0, relative_humidity=0.35))
    again = parse_job(of_version_1(job))
    assert again == job
    assert (again.room.summer_temperature, again.room.summer_relative_humidity) == (24.0, 0.5)
    assert again.design == "typical"
    assert "version = 2\n" in job_text(again), "saved anew it is of the present version"


def test_a_file_of_version_1_without_a_room_opens():
    words = re.sub(r"\[room\]\n(?:[a-z_]+ = .*\n)+", "", of_version_1(FULL))
    assert "[room]" not in words
    assert parse_job(words).room == Room()
    with pytest.raises(BadFile, match="room: it must be a table of words and values"):
        parse_job(words.replace("version = 1\n", "version = 1\nroom = 3\n", 1))


def test_an_assembly_file_is_a_job_too():
    job = parse_job(text(preset("wood-frame-wall")))
    assert job.assembly == preset("wood-frame-wall")
    assert job.place == Place()


def test_units_may_be_typed():
    words = (
        job_text(FULL)
        .replace("volume = 566.0", 'volume = "20000 ft3"')
        .replace("share = 0.2", 'share = "20 %"')
        .replace("summer_temperature = 24.0", 'summer_temperature = "75 F"')
        .replace("summer_relative_humidity = 0.5", 'summer_relative_humidity = "55 %"')
    )
    job = parse_job(words)
    assert job.tightness.volume == pytest.approx(566.34, abs=0.01)
    assert job.room.summer_temperature == pytest.approx(23.889, abs=0.001)
    assert job.room.summer_relative_humidity == pytest.approx(0.55)


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        (
            "version = 2\n",
            "version = 9\n",
            "roof: it is of version 9, newer than this kit, which reads up to version 2.",
        ),
        ('design = "typical"', 'design = "wet year"', "roof: The design year must be one of typical, damp house, cold"),
        ('design = "typical"', "design = 3", "roof: The design year must be one of typical, damp house, cold winter, "),
        (
            "summer_temperature = 24.0",
            "summer_temperature = 60",
            "roof: room: Room temperature in summer is 60 °C; it must be 10 to 35 °C.",
        ),
        (
            "summer_relative_humidity = 0.5",
            "summer_relative_humidity = 1.5",
            "roof: room: Room humidity in summer is 150 %; it must be 5 to 95 %.",
        ),
        ("azimuth", "azimut", 'roof: the top of the file: the word "azimut" is not known.'),
        ("azimuth = 180.0", "azimuth = 999", "roof: Azimuth is 999 degrees; it must be 0 to 360 degrees."),
        ("azimuth = 180.0", "azimuth = true", "roof: azimuth must be a number or a short text."),
        ("azimuth = 180.0", "azimuth = 1" + "0" * 400, "roof: azimuth must be a number of ordinary size."),
        ("ach50 = 3.0", "ach50 = -1", "roof: tightness: Air changes at 50 Pa is −1 1/h; it must be 0 to 50 1/h."),
        (
            "ach50 = 3.0",
            'ach50 = "tight"',
            'roof: tightness: The air changes at 50 Pa "tight" is not understood; write it like "3 ACH50"',
        ),
        ("ach50", "ach5", 'roof: tightness: the word "ach5" is not known.'),
        ('kind = "class"', 'kind = "wet"', "roof: room: The rule for room air must be one of constant"),
        ("humidity_class = 3", "humidity_class = 7", "roof: room: The humidity class must be one of"),
        ("[assembly]", "[asembly]", 'roof: the top of the file: the word "asembly" is not known.'),
        ('zone = "6"', "zone = [1,2,3,4,5,6,7,8,9,10,11,12,13]", "roof: place, zone must have at most 12 values."),
        ("volume = 566.0", 'volume = "big"', 'roof: tightness: The volume "big" is not understood'),
    ],
)
def test_a_fault_is_one_plain_sentence(old, new, sentence):
    words = job_text(FULL)
    assert old in words
    with pytest.raises(BadFile) as caught:
        parse_job(words.replace(old, new, 1), "roof")
    assert str(caught.value).startswith(sentence)
    assert "\n" not in str(caught.value)


def test_what_is_missing_is_named():
    with pytest.raises(BadFile, match=r"the table \[assembly\] is missing"):
        parse_job('format = "dryward job"\nversion = 1')
    with pytest.raises(BadFile, match="place: it must be a table of words and values"):
        parse_job('format = "dryward job"\nversion = 1\nplace = 3\n[assembly]\n')


@settings(max_examples=150)
@given(st.integers(0, 4000), st.text(max_size=20), st.integers(0, 30))
def test_any_damage_is_a_sentence_or_a_job(at, put, cut):
    words = job_text(FULL)
    at %= len(words)
    try:
        parse_job(words[:at] + put + words[at + cut :])
    except PlainError:
        return  # a sentence; anything else fails the test


def test_values_out_of_range_are_refused():
    with pytest.raises(OutOfRange, match="Monthly temperature needs 12 values for typed means"):
        Place("means", "", (1.0,), (0.8,) * 12)
    with pytest.raises(OutOfRange, match="Inlet area is 0 m²/m; it must be above 0"):
        Vent(inlet_area=0)
    with pytest.raises(OutOfRange, match="The number of years is 20; it must be 1 to 10"):
        Job(preset("vented-vault"), years=20)
    with pytest.raises(OutOfRange, match="The kind of place must be one of demo, file, means, not 'moon'"):
        Place("moon")


def test_two_programs_saving_one_job_lose_neither(tmp_path):
    path = tmp_path / "roof.toml"
    save_job(FULL, path, "new")
    apart = multiprocessing.get_context("spawn")
    opened, answers = apart.Barrier(2), apart.Queue()
    writers = [apart.Process(target=write, args=(path, years, opened, answers)) for years in (4, 5)]
    for writer in writers:
        writer.start()
    told = dict(answers.get(timeout=60) for _ in writers)
    for writer in writers:
        writer.join(60)
        assert writer.exitcode == 0
    (first,) = [years for years, sentence in told.items() if not sentence]
    (second,) = {4, 5} - {first}
    assert re.fullmatch(r"roof\.toml: [^\n]*(changed|another program)[^\n]*\.", told[second])
    assert load_job(path)[0] == dataclasses.replace(FULL, years=first)
    assert load_job(tmp_path / f"mine-{second}.toml")[0] == dataclasses.replace(FULL, years=second)
    assert sorted(each.name for each in tmp_path.iterdir()) == [f"mine-{second}.toml", "roof.toml"]
