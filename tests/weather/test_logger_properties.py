"""Logger files by the hundred: however readings are written they are read alike, and junk never breaks the reader."""

import itertools
from datetime import datetime, timedelta

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from dryward.checks import PlainError
from dryward.units import from_si
from dryward.weather import loggers

QUICK = settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])

DATES = {
    "ymd": ("%Y-%m-%d %H:%M", "%Y/%m/%d %H:%M:%S", "%Y-%m-%dT%H:%M"),
    "dmy": ("%d.%m.%Y %H:%M", "%d/%m/%Y %H:%M:%S", "%d-%m-%y %H:%M", "%d %b %Y %H:%M"),
    "mdy": ("%m/%d/%Y %I:%M %p", "%m/%d/%y %H:%M:%S", "%m-%d-%Y %H:%M"),
}


def read_or_refused(path):
    """The records of a file; none when it was refused, which must be in one sentence."""
    sentence = None
    try:
        return loggers.read(path).records
    except PlainError as refused:
        sentence = str(refused)
    assert sentence.endswith(".")
    assert "\n" not in sentence
    return ()


WAYS = [(order, form) for order, forms in DATES.items() for form in forms]


@st.composite
def ways_to_write(draw):
    """A file, and what stands in it."""
    order, form = draw(st.sampled_from(WAYS))
    delimiter = draw(st.sampled_from([",", ";", "\t", "|"]))
    decimal = draw(st.sampled_from([".", ","]))
    fahrenheit = draw(st.booleans())
    share = draw(st.booleans())
    above = draw(st.integers(0, 5))
    bom = draw(st.sampled_from(["utf-8", "utf-8-sig", "utf-16"]))
    end = draw(st.sampled_from(["\n", "\r\n"]))
    # June: no clock changes; at least half a day beyond the twelfth, so the date order can be told.
    start = datetime(2023, 6, draw(st.integers(11, 25)), draw(st.integers(0, 23)))
    count = draw(st.integers(30, 60))
    temperature = np.array(draw(st.lists(st.integers(-200, 350), min_size=count, max_size=count))) / 10
    humidity = np.array(draw(st.lists(st.integers(50, 990), min_size=count, max_size=count))) / 10
    shown = np.round(from_si(temperature, "degF"), 2) if fahrenheit else temperature

    def cell(number):
        text = f"{number:.3f}".replace(".", decimal)
        return f'"{text}"' if decimal == delimiter else text

    unit = "°F" if fahrenheit else "°C"
    lines = [f"station {n}" for n in range(above)]
    lines.append(delimiter.join(["Date and time", f"Temp {unit}", "RH" if share else "RH %"]))
    for i in range(count):
        at = (start + timedelta(hours=i)).strftime(form)
        damp = humidity[i] / 100 if share else humidity[i]
        lines.append(delimiter.join([at, cell(shown[i]), cell(damp)]))
    order = "ymd" if "%b" in form else order  # a month in words settles it
    return (end.join(lines) + end).encode(bom), order, start, temperature, humidity / 100


@QUICK
@given(ways_to_write())
def test_any_way_of_writing_gives_the_same_readings(tmp_path, case):
    raw, order, start, temperature, humidity = case
    path = tmp_path / "any.csv"
    path.write_bytes(raw)
    readings = loggers.read(path)
    record = readings["cavity"]
    assert readings.guess.date_order == order
    assert record.time[0] == np.datetime64(start)
    assert np.array_equal(np.diff(record.time).astype(float), np.full(record.time.size - 1, 3600.0))
    assert record.temperature == pytest.approx(temperature, abs=0.006)
    over_water = record.relative_humidity[record.temperature > 0.01]
    assert over_water == pytest.approx(humidity[record.temperature > 0.01], abs=1e-3)


@QUICK
@given(st.text(st.characters(exclude_categories=("Cs",)), max_size=400))
def test_any_text_is_read_or_refused_in_a_sentence(tmp_path, text):
    path = tmp_path / "any.csv"
    path.write_bytes(text.encode())
    read_or_refused(path)


@QUICK
@given(st.binary(max_size=400))
def test_any_bytes_are_read_or_refused_in_a_sentence(tmp_path, raw):
    path = tmp_path / "any.csv"
    path.write_bytes(raw)
    with pytest.raises(PlainError, match=r"\.$"):
        loggers.read(path)


PIECES = [
    "2023-01-0{}",
    "1/{}/23 10:00",
    "{}",
    "-999",
    "=1",
    "",
    "21,{}",
    "4.{} °C",
    "2023-01-01T0{}:00Z",
    "Date",
    "RH %",
    "12:0{}",
    "99/99/9{}",
    "1e{}",
    '"',
    "4530{}.5",
]


@QUICK
@given(
    st.lists(st.lists(st.sampled_from(PIECES), min_size=1, max_size=4), min_size=1, max_size=12),
    st.sampled_from(",;\t"),
)
def test_near_misses_are_read_or_refused_in_a_sentence(tmp_path, rows, delimiter):
    digit = itertools.cycle("1234567")
    path = tmp_path / "any.csv"
    path.write_text("\n".join(delimiter.join(p.format(next(digit)) for p in row) for row in rows), encoding="utf-8")
    for record in read_or_refused(path):
        assert np.all(np.diff(record.time).astype(float) > 0)
        known = record.temperature[np.isfinite(record.temperature)]
        assert np.all((known >= -60) & (known <= 95))


@settings(QUICK, max_examples=20)
@given(st.integers(0, 671), st.integers(1, 60), st.randoms())
def test_cut_doubled_or_shuffled_rows_lose_nothing_else(tmp_path, where, count, dice):
    with loggers.sample("cause-air-leak") as sample:
        head, *rows = sample.read_text(encoding="utf-8").splitlines()
        whole = loggers.read(sample)["cavity"]
    kept = rows[:where] + rows[where + count :]
    kept += dice.sample(kept, 5)
    part = slice(0, 40)
    shuffled = kept[part]
    dice.shuffle(shuffled)
    path = tmp_path / "any.csv"
    path.write_text("\n".join([head, *shuffled, *kept[40:]]) + "\n", encoding="utf-8")
    found = loggers.read(path)["cavity"]
    where_found = np.searchsorted(whole.time, found.time)
    assert np.array_equal(whole.time[where_found], found.time)
    assert np.array_equal(whole.temperature[where_found], found.temperature)
    assert found.time.size == len(rows[:where] + rows[where + count :])
