"""Weather files: one that none of us made, the same one broken in many ways, and files that are none."""

import gzip
from importlib.resources import files

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from dryward import air, weather
from dryward.checks import BadFile

TEXT = gzip.decompress(files("dryward.evidence").joinpath("data/typical-year-45N-8E.epw.gz").read_bytes()).decode()
LINES = TEXT.splitlines()
COLUMN = {"temperature": 6, "dew point": 7, "humidity": 8, "sky": 12, "global": 13, "direct": 14, "wind": 21}


@pytest.fixture
def written(tmp_path):
    """Writes lines as a file and reads it."""

    def write(lines, name="roof.epw"):
        path = tmp_path / name
        path.write_text("\n".join(lines) + "\n", encoding="utf-8")
        return path

    return write


def changed(rows, column, value, lines=LINES):
    """The file with another value in one column of some lines (counted from 1)."""
    lines = list(lines)
    for row in rows:
        fields = lines[row - 1].split(",")
        fields[COLUMN[column]] = value
        lines[row - 1] = ",".join(fields)
    return lines


@pytest.fixture(scope="module")
def original(tmp_path_factory):
    path = tmp_path_factory.mktemp("epw") / "original.epw"
    path.write_text(TEXT, encoding="utf-8")
    return weather.read_epw(path)


def test_a_file_made_by_others_is_read_whole(original):
    assert original.hours == 8760
    assert original.notes == (
        "original.epw: its sun is not the mean of the hour but that of 11 minutes after the end of each hour.",
    )
    assert original.name == "original"  # the file calls its place "unknown"
    assert (original.latitude, original.longitude, original.time_zone, original.altitude) == (45.0, 8.0, 1.0, 250.0)
    assert (original.temperature[0], original.wind_speed[0], original.sky_longwave[0]) == (2.04, 0.7, 283.58)
    assert original.vapor_pressure[0] == pytest.approx(air.saturation_vapor_pressure(1.21, over="water"))


def test_the_first_row_is_the_hour_that_ends_at_one(original):
    day = original.global_horizontal.reshape(365, 24).mean(axis=0)
    fields = [line.split(",") for line in LINES[8:]]
    at_noon = [float(f[13]) for f in fields if f[3] == "12"]
    assert day[11] == pytest.approx(np.mean(at_noon))


def test_frost_dew_points_are_over_water(original):
    hour = int(np.argmin(original.temperature))
    dew = float(LINES[8 + hour].split(",")[7])
    assert dew < 0
    assert original.vapor_pressure[hour] == pytest.approx(air.saturation_vapor_pressure(dew, over="water"))
    assert original.vapor_pressure[hour] > air.saturation_vapor_pressure(dew) * 1.01


def test_packed_and_plain_are_the_same(original, tmp_path):
    packed = tmp_path / "roof.epw.gz"
    packed.write_bytes(gzip.compress(TEXT.encode()))
    assert np.array_equal(weather.read_epw(packed).temperature, original.temperature)


def test_a_year_runs_through_the_monthly_means(original):
    months = original.monthly()
    assert months.coldest == 12
    assert months.warmest == 6
    assert np.all((months.relative_humidity > 0.4) & (months.relative_humidity <= 1.0))


# --- few faults: named, filled in, said ----------------------------------


def test_codes_for_not_measured_are_filled_and_named(written, original):
    found = weather.read_epw(written(changed([109, 110], "temperature", "99.9")))
    assert found.temperature[100] == pytest.approx(
        original.temperature[99] + (original.temperature[102] - original.temperature[99]) / 3
    )
    assert found.notes[0] == "roof.epw: temperature filled in from the hours around for line 109 and line 110."
    others = np.ones(8760, dtype=bool)
    others[100:102] = False
    assert np.array_equal(found.temperature[others], original.temperature[others])


def test_missing_rows_are_named_by_date_and_the_rest_stays_in_place(written, original):
    found = weather.read_epw(written(LINES[:1000] + LINES[1003:]))
    assert "(no row)" in found.notes[0]
    assert "Feb 11 hour 9" in found.notes[0]
    assert found.temperature[992 + 3 :] == pytest.approx(original.temperature[992 + 3 :])


def test_sun_is_filled_by_the_days_around_not_through_the_night(written, original):
    rows = range(9 + 4000, 9 + 4024)  # one whole day
    found = weather.read_epw(written(changed(rows, "global", "9999")))
    hole = slice(4000, 4024)
    assert found.global_horizontal[hole] == pytest.approx(
        (original.global_horizontal[3976:4000] + original.global_horizontal[4024:4048]) / 2
    )


def test_dew_point_from_relative_humidity(written, original):
    found = weather.read_epw(written(changed(range(9, 9 + 3000), "dew point", "99.9")))
    assert "dew point from the relative humidity in 3000 hours" in found.notes[0]
    # The file's own two columns differ where its first hours are joined to its last.
    ratio = found.vapor_pressure / original.vapor_pressure
    assert np.mean(np.abs(ratio - 1) < 0.02) > 0.999


def test_a_series_nobody_measured_is_none(written):
    found = weather.read_epw(written(changed(range(9, 8769), "sky", "9999")))
    assert found.sky_longwave is None
    assert found.notes[0].endswith("is missing in 8760 of 8760 hours, so the file gives none.")


def test_broken_and_doubled_lines_are_named(written, original):
    lines = list(LINES)
    lines[50] = "what is this"
    lines.insert(200, lines[199])
    found = weather.read_epw(written(lines))
    assert "line 51 could not be understood and is left out" in found.notes[0]
    assert "line 201 is a second row for an hour" in found.notes[1]
    assert np.array_equal(found.temperature[60:], original.temperature[60:])


def test_stray_quotation_marks_swallow_nothing(written, original):
    lines = list(LINES)
    lines[5] += '"a comment that never ends'
    lines[100] = lines[100].replace("999999", '"99', 1)
    found = weather.read_epw(written(lines))
    assert np.array_equal(found.temperature, original.temperature)
    assert np.array_equal(found.wind_speed, original.wind_speed)


def test_a_leap_day_is_left_out(written, original):
    march = next(i for i, line in enumerate(LINES[8:], start=8) if line.split(",")[1] == "3")
    leap = [line.split(",") for line in LINES[march - 24 : march]]
    for fields in leap:
        fields[2] = "29"
    found = weather.read_epw(written(LINES[:march] + [",".join(f) for f in leap] + LINES[march:]))
    assert found.notes[:-1] == ("roof.epw: February 29 is left out.",)
    assert np.array_equal(found.temperature, original.temperature)


def test_rounding_of_the_dew_point_is_said(written):
    temperature = LINES[8].split(",")[6]
    found = weather.read_epw(written(changed([9], "dew point", str(float(temperature) + 0.3))))
    assert "dew point up to 1 K above the temperature in 1 hours, lowered to it" in found.notes[0]
    assert found.relative_humidity[0] == pytest.approx(1.0)


def test_small_negative_sun_is_said(written):
    found = weather.read_epw(written(changed([9], "global", "-1.2")))
    assert found.global_horizontal[0] == 0
    assert "small negative readings of the sun" in found.notes[0]


# --- files that are none: one sentence -----------------------------------


@pytest.mark.parametrize(
    ("lines", "sentence"),
    [
        (["hello"], 'roof.epw is no EPW weather file: its first line must begin with "LOCATION"'),
        ([""], "roof.epw is no EPW weather file"),
        (LINES[:5], "roof.epw is cut off or has a broken header: its line 8 must begin with"),
        (LINES[:7] + LINES[8:], "roof.epw is cut off or has a broken header"),
        (LINES[:5000], "roof.epw has 4992 usable hours of 8760; at most 175 may be missing"),
        (["LOCATION,a,b,c,d,e,north,8,1,250", *LINES[1:]], "line 1: latitude, longitude, time zone and altitude must"),
        (["LOCATION,a,b,c,d,e,95,8,1,250", *LINES[1:]], "line 1: latitude 95, .* are no place on earth"),
        (["LOCATION,a,b,c,d,e,nan,8,1,250", *LINES[1:]], "are no place on earth"),
        (
            [*LINES[:7], "DATA PERIODS,1,4,Data,Sunday,1/1,12/31", *LINES[8:]],
            "has 4 records an hour; only files with one",
        ),
        (changed(range(9, 400), "temperature", "99.9"), r"lacks temperature in 391 of 8760 hours \(first at line 9\)"),
        (changed(range(9, 69), "temperature", "x"), "lacks temperature in 60 of 8760 hours .* and 48 in a row"),
        ([line.replace(",", ";") for line in LINES[8:]], "is no EPW weather file"),
        (LINES[:8] + [line.replace(",", ";") for line in LINES[8:]], "0 usable hours of 8760.*line 9 is the first"),
    ],
)
def test_files_that_are_none_get_one_sentence(written, lines, sentence):
    with pytest.raises(BadFile, match=sentence):
        weather.read_epw(written(lines))


def test_files_that_are_not_even_text(tmp_path, monkeypatch):
    path = tmp_path / "roof.epw"
    with pytest.raises(BadFile, match=r"roof\.epw cannot be opened: no such file or directory\."):
        weather.read_epw(path)
    with pytest.raises(BadFile, match="cannot be opened: is a directory"):
        weather.read_epw(tmp_path)
    path.write_bytes(b"LOCATION\0\1\2" * 100)
    with pytest.raises(BadFile, match=r"roof\.epw is not text, so it is no EPW weather file"):
        weather.read_epw(path)
    path.write_bytes(gzip.compress(TEXT.encode())[:5000])
    with pytest.raises(BadFile, match=r"roof\.epw is cut off: the packed file ends too early"):
        weather.read_epw(path)
    path.write_bytes(b"\x1f\x8b not gzip at all")
    with pytest.raises(BadFile, match=r"roof\.epw cannot be opened: "):
        weather.read_epw(path)
    path.write_bytes(gzip.compress(b"0" * 40_000_000))  # 40 kB that unpack to 40 MB
    with pytest.raises(BadFile, match=r"roof\.epw is too large; a weather file of one year is at most 30 MB"):
        weather.read_epw(path)


@settings(max_examples=12, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    row=st.integers(9, 8768),
    junk=st.text(st.characters(exclude_characters="\0", exclude_categories=("Cs",)), max_size=60),
)
def test_one_line_of_anything_never_breaks_the_reader(written, original, row, junk):
    lines = list(LINES)
    lines[row - 1] = junk
    found = weather.read_epw(written(lines))
    assert found.hours == 8760
    kept = np.ones(8760, dtype=bool)
    kept[row - 9] = False
    # Whatever stands there, no other hour moves.
    assert np.array_equal(found.temperature[kept], original.temperature[kept])


@settings(max_examples=12, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    row=st.integers(10, 8767),
    value=st.one_of(st.floats(), st.just("=1+1"), st.just("9999999"), st.just("-"), st.just("1e999")),
)
def test_one_cell_of_anything_is_a_number_or_is_filled(written, row, value):
    found = weather.read_epw(written(changed([row], "temperature", str(value))))
    assert np.all(np.isfinite(found.temperature))
    assert np.all(np.abs(found.temperature) <= 70)
