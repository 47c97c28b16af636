"""Logger files of any maker: what is guessed, what is read, and how a wrong guess is put right."""

import re
from datetime import datetime

import numpy as np
import pytest

from dryward import air
from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.weather import loggers
from dryward.weather.loggers import samples, sheet


def sample_read(name, **more):
    with loggers.sample(name) as path:
        return loggers.read(path, **more)


def write(tmp_path, text, name="readings.csv"):
    path = tmp_path / name
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def hours_of(record):
    return (record.time - record.time[0]).astype(float) / 3600


def numbers_in(raw):
    """Every number in a file, to hold a kept file against a new one."""
    text = raw.decode("utf-16" if raw[:2] == b"\xff\xfe" else "cp1252")
    return np.array([float(n.replace(",", ".")) for n in re.findall(r"\d+[.,]\d+|\d+", text)])


# --- the samples ---------------------------------------------------------


@pytest.mark.parametrize("name", loggers.names())
def test_sample_files_are_what_their_generator_writes(name):
    with loggers.sample(name) as path:
        kept = path.read_bytes()
    made = samples.files()[name]
    assert kept.count(b"\n") == made.count(b"\n")
    # Another computer may round the last digit shown the other way.
    assert numbers_in(kept) == pytest.approx(numbers_in(made), abs=0.101)


def test_the_samples_can_be_written_out(tmp_path):
    assert sorted(p.stem for p in samples.write(tmp_path)) == sorted(loggers.names())


def test_an_unknown_sample_names_its_neighbors():
    with pytest.raises(UnknownName, match='There is no sample file "messy-semicolons"; did you mean messy-semicolon'):
        sample_read("messy-semicolons")


def test_decimal_comma_day_first_and_a_doubled_row():
    story = samples.four_weeks("nothing")
    readings = sample_read("messy-semicolon")
    guess, cavity = readings.guess, readings["cavity"]
    assert (guess.delimiter, guess.decimal, guess.date_order, guess.header_lines) == (";", ",", "dmy", 2)
    assert [c.quantity for c in guess.columns] == ["date", "time of day", "temperature", "relative humidity"]
    assert cavity.time[0] == np.datetime64("2023-01-08T00:00:00")
    assert np.array_equal(hours_of(cavity), np.arange(96))
    lost = ~np.isfinite(cavity.temperature)
    assert lost.sum() == 1
    assert cavity.temperature[~lost] == pytest.approx(story.cavity[0][:96][~lost], abs=0.06)
    assert cavity.vapor_pressure[~lost] == pytest.approx(story.cavity[1][:96][~lost], rel=0.02)
    assert any("rows for a time already read are left out: 1." in note for note in readings.notes)


def test_a_report_in_fahrenheit_with_the_clock_put_back():
    readings = sample_read("messy-report", place="indoors")
    guess, room = readings.guess, readings["indoors"]
    assert (guess.date_order, guess.columns[2].unit) == ("mdy", "degF")
    assert guess.clock == "changes with the season"
    assert "back an hour on 2023-11-05" in guess.reasons["clock"]
    # In standard time the half hours run on without a jump or a double.
    assert np.array_equal(hours_of(room), np.arange(239) / 2)
    assert room.time[0] == np.datetime64("2023-11-02T23:00:00")
    assert any("lines without a date are left out: 246, 247." in note for note in readings.notes)


def test_dew_points_with_a_zone_and_gaps():
    story = samples.four_weeks("indoor-humidity")
    readings = sample_read("messy-dew-point")
    cavity = readings["cavity"]
    known = np.isfinite(cavity.vapor_pressure)
    rows = hours_of(cavity).astype(int)
    assert (~known).sum() == 2
    assert cavity.vapor_pressure[known] == pytest.approx(story.cavity[1][rows][known], rel=0.001)
    assert any("gaps: 1, the longest of 10.0 h" in note for note in readings.notes)
    assert any("put on UTC−5 h" in note for note in readings.notes)


def test_no_titles_and_days_that_could_be_months():
    readings = sample_read("messy-no-titles")
    guess, record = readings.guess, readings["cavity"]
    assert (guess.header_lines, guess.decimal, guess.date_order) == (0, ",", "dmy")
    assert "even steps" in guess.reasons["date_order"]
    assert "no title" in guess.reasons["column 3"]
    assert np.array_equal(hours_of(record), np.arange(72))


def test_three_places_sorted_with_error_codes_and_a_cut_off_end():
    story = samples.four_weeks("rain-leak")
    readings = sample_read("messy-three-places")
    assert readings.places == ("indoors", "cavity", "outdoors")
    for place in readings.places:
        record = readings[place]
        assert np.array_equal(hours_of(record), np.arange(72))  # spring forward taken out, rows sorted
        known = np.isfinite(record.temperature)
        assert record.temperature[known] == pytest.approx(getattr(story, place)[0][:72][known], abs=0.06)
    assert np.flatnonzero(~np.isfinite(readings["cavity"].temperature)).tolist() == [20, 21]
    said = " ".join(readings.notes)
    assert "the last line is cut off" in said
    assert "not in the order of time" in said
    with pytest.raises(UnknownName, match='There is no place in the readings "attic"'):
        readings["attic"]


# --- every guess is shown and can be put right ---------------------------


@pytest.mark.parametrize("name", loggers.names())
def test_every_guess_is_said(name):
    with loggers.sample(name) as path:
        guess = loggers.guess(path)
    said = guess.sentences()
    assert len(said) == 5 + len(guess.columns)
    assert all(sentence.endswith(".") for sentence in said)


def test_a_wrong_date_order_is_put_right(tmp_path):
    # Three days, once a day: nothing tells the day from the month.
    path = write(tmp_path, "when,T (C),RH\n01/02/2023,5.0,50\n02/02/2023,5.5,51\n03/02/2023,6.0,52\n")
    first = loggers.guess(path)
    right = first.change(date_order="dmy" if first.date_order == "mdy" else "mdy")
    months = {
        guess.date_order: loggers.read(path, guess)["cavity"].time[0].astype("datetime64[M]").astype(str)
        for guess in (first, right)
    }
    assert months == {"mdy": "2023-01", "dmy": "2023-02"}
    assert right.reasons["date_order"] == "set by you"
    # And undone: the first guess is as it was.
    assert loggers.read(path, first).guess.date_order == first.date_order


def test_a_wrong_unit_is_put_right(tmp_path):
    path = write(tmp_path, "time,temp,rh\n2023-01-01 00:00,40,50\n2023-01-01 01:00,41,50\n2023-01-01 02:00,40,51\n")
    guess = loggers.guess(path)
    assert guess.columns[1].unit == "degC"
    assert "not sure" in guess.reasons["column 2"]
    record = loggers.read(path, guess.column(2, unit="degF"))["cavity"]
    assert record.temperature[0] == pytest.approx(4.444, abs=0.001)


def test_a_column_is_given_another_meaning_and_place(tmp_path):
    path = write(tmp_path, "time,channel 1,channel 2\n2023-01-01 00:00,40,50\n2023-01-01 01:00,41,50\n")
    guess = loggers.guess(path)
    assert [c.quantity for c in guess.columns] == ["date and time", "not used", "not used"]
    guess = guess.column(2, quantity="temperature", unit="degF", place="outdoors")
    guess = guess.column(3, quantity="relative humidity", place="outdoors")
    record = loggers.read(path, guess)["outdoors"]
    assert record.relative_humidity[0] == pytest.approx(0.5)


def test_what_a_person_knows_is_not_guessed(tmp_path):
    path = write(tmp_path, "time;temp C;rh\n2023-01-01 00:00;4;50\n2023-01-01 01:00;4;50\n")
    guess = loggers.guess(path, clock="daylight saving time", header_lines=1)
    assert guess.reasons["clock"] == "set by you"
    assert loggers.read(path, guess)["cavity"].time[0] == np.datetime64("2022-12-31T23:00:00")


@pytest.mark.parametrize(
    ("change", "kind", "sentence"),
    [
        (lambda g: g.change(decimal=";"), UnknownName, 'There is no decimal sign ";"'),
        (lambda g: g.change(date_order="ydm"), UnknownName, 'There is no date order "ydm"; did you mean ymd'),
        (lambda g: g.change(clock="summer"), UnknownName, 'There is no clock "summer"'),
        (lambda g: g.change(header_lines=-1), OutOfRange, "Number of header lines is −1; it must be 0 to 1000"),
        (lambda g: g.change(delimiter=","), OutOfRange, "A new delimiter makes new columns; guess the file again"),
        (lambda g: g.column(9, unit="degF"), OutOfRange, "Column is 9; it must be 1 to 4"),
        (lambda g: g.column(3, unit="K"), UnknownName, 'There is no unit of temperature "K"'),
        (lambda g: g.column(3, quantity="heat"), UnknownName, 'There is no quantity "heat"'),
    ],
)
def test_a_change_that_makes_no_sense_gets_a_sentence(change, kind, sentence):
    with loggers.sample("messy-semicolon") as path:
        guess = loggers.guess(path)
    with pytest.raises(kind, match=sentence):
        change(guess)


def test_a_part_that_does_not_exist(tmp_path):
    path = write(tmp_path, "time;T;RH\n2023-01-01 00:00;4;50\n2023-01-01 01:00;4;50\n")
    with pytest.raises(UnknownName, match='There is no part of a guess "date_ordr"; did you mean date_order'):
        loggers.guess(path, date_ordr="dmy")


# --- dates and clocks ----------------------------------------------------


@pytest.mark.parametrize(
    ("text", "order", "expected"),
    [
        ("2024-03-04 05:06:07", "mdy", datetime(2024, 3, 4, 5, 6, 7)),
        ("2024-03-04T05:06", "dmy", datetime(2024, 3, 4, 5, 6)),
        ("3/4/24 12:05 AM", "mdy", datetime(2024, 3, 4, 0, 5)),
        ("3/4/24 12:05:59 pm", "dmy", datetime(2024, 4, 3, 12, 5, 59)),
        ("4.3.2024", "dmy", datetime(2024, 3, 4)),
        ("04 Mar 2024 17:00", "mdy", datetime(2024, 3, 4, 17)),
        ("4-Mar-24 05:00", "ymd", datetime(2024, 3, 4, 5)),
        ("31.12.2024 24:00", "dmy", datetime(2025, 1, 1)),
        ("45355.5", "dmy", datetime(2024, 3, 4, 12)),
        ("30/2/2024", "dmy", None),
        ("13/13/2024", "mdy", None),
        ("2024-03-04 25:00", "ymd", None),
    ],
)
def test_dates_as_loggers_write_them(text, order, expected):
    found = sheet.date_parts(text)
    assert (sheet.moment(found, order) if found else None) == expected


def test_no_date_is_none():
    for text in ("", "12", "hello", "21.4", "13:99 PM", "4 Foo 2024", "3/4/24 13:00 PM"):
        assert sheet.date_parts(text) is None or sheet.moment(sheet.date_parts(text), "dmy") is None


def test_dates_in_no_order(tmp_path):
    with pytest.raises(BadFile, match="some file: the dates are not understood in any order of day, month and year"):
        sheet.likely_order("some file", [(13, 32, 2024, 0, 0, 0, None), (32, 13, 2024, 0, 0, 0, None)])


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [
        (datetime(2024, 3, 10, 1, 30), datetime(2024, 3, 10, 3, 0), 1),
        (datetime(2024, 11, 3, 1, 30), datetime(2024, 11, 3, 1, 0), -1),
        (datetime(2024, 3, 12, 1, 30), datetime(2024, 3, 12, 3, 0), 0),  # a Tuesday: a gap
        (datetime(2024, 11, 24, 1, 30), datetime(2024, 11, 24, 3, 0), 0),  # a Sunday, but not that one
        (datetime(2024, 3, 31, 1, 30), datetime(2024, 3, 31, 3, 0), 1),
        (datetime(2024, 4, 7, 2, 30), datetime(2024, 4, 7, 2, 0), -1),
        (datetime(2024, 6, 9, 1, 30), datetime(2024, 6, 9, 3, 0), 0),  # June
        (datetime(2024, 3, 10, 1, 30), datetime(2024, 3, 10, 2, 0), 0),
    ],
)
def test_clock_changes(before, after, expected):
    assert sheet.clock_change(before, after, 1800) == expected


def test_times_with_two_zones_are_put_on_one(tmp_path):
    path = write(
        tmp_path,
        "time,T (C),RH\n2023-11-05T00:00:00-04:00,5,50\n"
        "2023-11-05T01:00:00-04:00,5,50\n2023-11-05T01:00:00-05:00,5,50\n",
    )
    assert np.array_equal(hours_of(loggers.read(path)["cavity"]), [0, 1, 2])


# --- the air in frost ----------------------------------------------------


def test_sensors_in_frost_show_humidity_over_water(tmp_path):
    path = write(tmp_path, "time,T (F),RH %\n2023-01-01 00:00,14,90\n2023-01-01 01:00,14,90\n")
    record = loggers.read(path)["cavity"]
    assert record.vapor_pressure[0] == pytest.approx(0.9 * air.saturation_vapor_pressure(-10.0, over="water"))
    assert record.relative_humidity[0] == pytest.approx(0.99, abs=0.01)


def test_offsets_and_a_wrong_clock():
    record = sample_read("cause-air-leak")["cavity"]
    warm = record.corrected(temperature=1.0, relative_humidity=-0.02, hours=-5)
    assert warm.temperature == pytest.approx(record.temperature + 1.0)
    assert warm.logged_humidity == pytest.approx(record.logged_humidity - 0.02)
    assert warm.time[0] == record.time[0] - np.timedelta64(5, "h")
    with pytest.raises(OutOfRange, match="Temperature offset is 40 K; it must be −20 to 20 K"):
        record.corrected(temperature=40)
    with pytest.raises(OutOfRange, match="Humidity offset is 90 %; it must be −50 to 50 %"):
        record.corrected(relative_humidity=0.9)
    with pytest.raises(OutOfRange, match="Time shift is 30 h; it must be −24 to 24 h"):
        record.corrected(hours=30)


def test_humidity_above_full_is_said(tmp_path):
    path = write(tmp_path, "time,T (C),RH %\n2023-01-01 00:00,4,104\n2023-01-01 01:00,4,99\n")
    readings = loggers.read(path)
    assert readings["cavity"].relative_humidity[0] == pytest.approx(1.0)
    assert any("relative humidity above 100 %" in note for note in readings.notes)


# --- files that are none -------------------------------------------------


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        ("", r"readings\.csv is empty"),
        ("\n\n\n", r"readings\.csv is empty"),
        (b"PK\x03\x04\x00\x00binary\x01", r"readings\.csv is not text; save the readings as CSV"),
        (b"\xff\xfe\x00", r"readings\.csv is not text"),
        ("hello\nworld\n", r"readings\.csv is no table: no comma, semicolon or tab"),
        ("a,b\nc,d\n", r"readings\.csv has no line with a date and a number"),
        ("time,T\n2023-01-01 00:00,5\n", r"readings\.csv has 1 readings; at least 2 are needed"),
        ("time,T\n2023-01-01 00:00,5\n2023-01-01 00:00,5\n", r"has one time only; at least 2 are needed"),
        ("time,volt\n2023-01-01 00:00,5\n2023-01-01 01:00,5\n", r"has no column of temperature, humidity, dew point"),
        (
            "time,T\n31/31/2023 10:00,5\n31/31/2023 11:00,5\n",
            r"readings\.csv: the dates are not understood in any order of day, month and year",
        ),
        (
            "a,b\n2023-01-01 00:00,5\n5,2023-01-02 00:00\n",
            r"readings\.csv has no column of dates that can be understood",
        ),
        (
            "time,T\n99/99/99 10:00,5\n98/97/99 11:00,5\n",
            "has 0 readings with a date that is understood so; at least 2",
        ),
        (
            'time,T,RH\n2023-01-01,5,50\n2023-01-02,"=HYPERLINK(""x"")",50\n2023-01-03,5,50\n',
            r'readings\.csv, line 3: a cell begins with "=", like a formula of a spreadsheet',
        ),
        ("time,@SUM(A1),RH\n2023-01-01,5,50\n2023-01-02,5,50\n", r'line 1: a cell begins with "@"'),
        ("time,+cmd|x,RH\n2023-01-01,5,50\n2023-01-02,5,50\n", r'line 1: a cell begins with "\+"'),
        ("time,T\n2023-01-01," + "9" * 200_000 + "\n2023-01-02,4\n", "a cell is too long to be a reading"),
    ],
)
def test_files_that_are_none_get_one_sentence(tmp_path, content, sentence):
    path = write(tmp_path, content)
    with pytest.raises(BadFile, match=sentence):
        loggers.read(path)


def test_the_reader_changes_nothing(tmp_path):
    with loggers.sample("messy-report") as path:
        before = path.read_bytes()
        loggers.read(path)
        assert path.read_bytes() == before


def test_files_that_are_missing_or_huge(tmp_path, monkeypatch):
    with pytest.raises(BadFile, match=r"gone\.csv cannot be opened: no such file or directory"):
        loggers.read(tmp_path / "gone.csv")
    with pytest.raises(BadFile, match="cannot be opened: is a directory"):
        loggers.read(tmp_path)
    path = tmp_path / "huge.csv"
    with open(path, "wb") as file:
        file.truncate(100_000_000)
    with pytest.raises(BadFile, match=r"huge\.csv is too large; a file of readings is at most 40 MB"):
        loggers.read(path)
    monkeypatch.setattr(sheet, "MOST_ROWS", 10)
    many = write(tmp_path, "1\n" * 11, "many.csv")
    with pytest.raises(BadFile, match=r"many\.csv has 11 lines; at most 10 are read"):
        loggers.read(many)


def test_a_title_with_a_zone_is_a_clock_that_stands(tmp_path):
    rows = [f"11/0{5 + (22 + i) // 24}/23 {(22 + i) % 24:02d}:00,5,50" for i in range(-22, 6)]
    path = write(tmp_path, '"Date Time, GMT-05:00",T (C),RH\n' + "\n".join(rows) + "\n")
    guess = loggers.guess(path)
    assert guess.clock == "standard time"
    assert "GMT-05" in guess.reasons["clock"]


def test_a_stray_date_below_the_readings_does_no_harm(tmp_path):
    rows = [f"0{i % 9 + 1}/01/2023 0{i % 9}:00,5.0,50" for i in range(9)] + [
        f"{i}/01/2023 05:00,5,5" for i in range(13, 20)
    ]
    path = write(tmp_path, "when,T (C),RH\n" + "\n".join(rows) + "\n99/99/9999,end,\n")
    readings = loggers.read(path)
    assert readings.guess.date_order == "dmy"
    assert readings["cavity"].time.size == 16
    assert any("the last line is cut off or no reading" in note for note in readings.notes)


def test_a_lone_rain_gauge_is_kept(tmp_path):
    rows = "".join(f"2023-01-01 0{i}:00,5,50,0.{i}\n" for i in range(9))
    path = write(tmp_path, "time,Cavity T (C),Cavity RH %,Outdoors rain (in)\n" + rows)
    record = loggers.read(path)["cavity"]
    assert record.rain[1] == pytest.approx(0.00254)


def test_days_counted_by_a_spreadsheet(tmp_path):
    rows = "".join(f"{45292 + i / 24:.6f};{i / 10};50\n" for i in range(30))
    record = loggers.read(write(tmp_path, "Date;T (C);RH %\n" + rows))["cavity"]
    assert record.time[0] == np.datetime64("2024-01-01T00:00:00")
    assert np.array_equal(hours_of(record), np.arange(30))


def test_a_date_order_that_is_known(tmp_path):
    path = write(tmp_path, "when,T (C),RH\n01/02/2023,5.0,50\n02/02/2023,5.5,51\n03/02/2023,6.0,52\n")
    guess = loggers.guess(path, date_order="dmy")
    assert guess.reasons["date_order"] == "set by you"
    assert loggers.read(path, guess)["cavity"].time[0] == np.datetime64("2023-02-01T00:00:00")


@pytest.mark.parametrize("indoors", [68.0, 72.0])
def test_one_file_has_one_unit_of_temperature(tmp_path, indoors):
    """A winter in degF: the cold columns alone could be degC, beside the warm one they are not."""
    rows = "".join(f"2023-01-01 {k:02}:00,{indoors + k % 2},{30 + k},{21 + k % 3}\n" for k in range(12))
    guess = loggers.guess(write(tmp_path, "time,Room temperature,Roof temperature,Outside temperature\n" + rows))
    assert [each.unit for each in guess.columns[1:]] == ["degF"] * 3
    assert sum("check it" in each for each in guess.sentences()) == 2, "what was not written is said"
    part = "time,Room temperature (F),Roof temperature,Outside temperature\n"
    guess = loggers.guess(write(tmp_path, part + rows))
    assert [each.unit for each in guess.columns[1:]] == ["degF"] * 3
    cold = "".join(f"2023-01-01 {k:02}:00,{20 + k % 2},{3 + k},{k % 3}\n" for k in range(12))
    guess = loggers.guess(write(tmp_path, "time,Room temperature,Roof temperature,Outside temperature\n" + cold))
    assert [each.unit for each in guess.columns[1:]] == ["degC"] * 3
