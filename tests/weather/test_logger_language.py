"""What is said of a logger's file in another language: no word of it stands in the code."""

from dataclasses import replace

import numpy as np
import pytest

import made_up
from dryward import language
from dryward.checks import PlainError
from dryward.weather import loggers
from dryward.weather.loggers import samples


@pytest.fixture
def elsewhere():
    """The made-up language."""
    with made_up.spoken():
        yield


def named(path):
    """The words that a file's own name and titles give to a text."""
    raw = path.read_bytes()
    text = raw.decode("utf-16" if raw[:2] in (b"\xff\xfe", b"\xfe\xff") else "cp1252")
    head = text[:600].replace("Ã¼", "ü").encode("cp1252", "ignore").decode("utf-8", "ignore") + text[:600]
    return {*made_up.unmarked(path.name), *made_up.unmarked(head)}


@pytest.mark.parametrize("name", loggers.names())
def test_a_file_is_told_of_in_another_language(elsewhere, name):
    with loggers.sample(name) as path:
        guess = loggers.guess(path)
        own = named(path)
        readings = loggers.read(path, guess)
        turned = guess.change(clock="daylight saving time").column(1, place="Dachboden")
        for said in (*guess.sentences(), *turned.sentences(), *readings.notes):
            assert "⟦" in said
            assert made_up.unmarked(said, {*own, "Dachboden", "UTC"}) == [], said


@pytest.mark.parametrize("cause", samples.CAUSES)
def test_what_readings_point_to_follows_the_language(cause):
    with loggers.sample(f"cause-{cause}") as path:
        found = loggers.diagnose(loggers.read(path))
    before = found.evidence
    with made_up.spoken():
        assert len(found.evidence) == len(before) == 5 + (found.numbers["share saturated"] >= 0.05)
        assert all(made_up.unmarked(each) == [] for each in found.evidence)
        assert all(made_up.unmarked(language.called(each)) == [] for each in (*loggers.CAUSES, found.cause))
    assert found.evidence == before
    assert all(made_up.unmarked(each) for each in before)


def test_what_the_file_holds_has_a_name_in_another_language(elsewhere):
    for each in (*loggers.QUANTITIES, *loggers.CLOCKS, *loggers.PLACES, *loggers.CAUSES):
        assert language.called(each) != each
        assert made_up.unmarked(language.called(each)) == []
    for each in (unit for units in loggers.UNITS.values() for unit in units):
        assert made_up.unmarked(loggers.unit_as_read(each)) == []
        assert made_up.OPEN in loggers.unit_as_read(each)


def test_readings_as_weather_say_what_was_filled_in(elsewhere):
    with loggers.sample("cause-air-leak") as path:
        readings = loggers.read(path)
    records = []
    for record, more in zip(readings.records, (1.0, 1.0, 3.0), strict=True):
        gaps = record.temperature.copy(), record.vapor_pressure.copy()
        for series in gaps:
            series[50:55] = np.nan
        records.append(replace(record, temperature=gaps[0], vapor_pressure=more * gaps[1]))
    weather, _ = loggers.driving(replace(readings, records=tuple(records)), sun=None)
    assert len(weather.notes) == 5
    for note in (*weather.notes, weather.name):
        assert made_up.unmarked(note) == [], note
    holed = [replace(each, temperature=np.where(np.arange(each.time.size) % 2, np.nan, 5.0)) for each in records]
    with pytest.raises(PlainError, match="⟦") as refused:
        loggers.driving(replace(readings, records=tuple(holed)))
    assert made_up.unmarked(str(refused.value)) == []


FILES = {
    "missing": None,
    "empty": b"\n\n",
    "binary": b"\x00\x01\x02",
    "a letter": b"Dear all\nhere are the readings\nof the roof\n",
    "no readings": b"a,b,c\n1,2,3\n4,5,6\n",
    "one reading": b"time,temp C\n2023-01-01 00:00,1.0\n",
    "a formula": b"time,temp C\n2023-01-01 00:00,1.0\n2023-01-01 01:00,=SUM(1)\n",
    "no quantity": b"time,battery\n2023-01-01 00:00,1.0\n2023-01-01 01:00,1.0\n2023-01-01 02:00,1.0\n",
    "one time": b"time,temp C\n2023-01-01 00:00,1.0\n2023-01-01 00:00,1.0\n2023-01-01 00:00,1.0\n",
}


@pytest.mark.parametrize("name", FILES)
def test_a_file_is_refused_in_another_language(elsewhere, tmp_path, name):
    path = tmp_path / "x.y"
    if FILES[name] is not None:
        path.write_bytes(FILES[name])
    with pytest.raises(PlainError, match="⟦") as refused:
        loggers.read(path)
    # Why the system cannot open a file is said by the system.
    assert made_up.unmarked(str(refused.value), {"no", "such", "file", "or", "directory"}) == []


def test_what_cannot_be_so_is_refused_in_another_language(elsewhere):
    with loggers.sample("messy-no-titles") as path:
        guess = loggers.guess(path)
    for change in (
        lambda: guess.change(delimiter=";"),
        lambda: guess.change(header_lines=-1),
        lambda: guess.column(99),
        lambda: loggers.agreement([1.0], [1.0, 2.0]),
        lambda: loggers.agreement([np.nan], [1.0]),
    ):
        with pytest.raises(PlainError, match="⟦") as refused:
            change()
        assert made_up.unmarked(str(refused.value)) == []
