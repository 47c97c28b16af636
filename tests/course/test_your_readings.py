"""One's own readings, every action without a browser: opened, put right, refused, asked for the cause, modelled."""

import errno
import json
import tempfile

import asked
import numpy as np
import pytest
from lesson_page import first_visit, open_page

from dryward import air, building, units
from dryward.building import material
from dryward.course.your_readings import beats
from dryward.course.your_readings.page import HOUSES
from dryward.panels.desk import readings as desk_readings
from dryward.panels.desk.readings import LIMIT
from dryward.physics import mold
from dryward.teaching import questions
from dryward.units import from_si, to_si
from dryward.verdict.findings import criterion
from dryward.weather import loggers

MESSY = [name for name in loggers.names() if name.startswith("messy")]
CAUSES = {
    "cause-indoor-humidity": "indoor humidity",
    "cause-air-leak": "air leak",
    "cause-blocked-vents": "blocked vents",
    "cause-built-in-water": "built-in water",
    "cause-rain-leak": "rain leak",
    "cause-outdoor-air": "outdoor air",
}


@pytest.fixture
def page(tmp_path, monkeypatch):
    work, drafts = tmp_path / "work", tmp_path / "drafts"
    work.mkdir()
    drafts.mkdir()
    monkeypatch.chdir(work)
    monkeypatch.setattr(tempfile, "tempdir", str(drafts))
    return open_page("your-readings", work)


def spoken(page):
    return json.dumps(page.widget.desk["sections"], ensure_ascii=False).replace('\\"', '"')


def direct(name):
    with loggers.sample(name) as path:
        return loggers.read(path)


def same(found, wanted):
    """Two readings hold the same places, times and numbers."""
    assert [each.place for each in found.records] == list(wanted.places)
    for mine, its in zip(found.records, wanted.records, strict=True):
        assert np.array_equal(mine.time, its.time)
        for name in ("temperature", "vapor_pressure", "moisture_content", "rain"):
            one, other = getattr(mine, name), getattr(its, name)
            assert (one is None) == (other is None)
            assert one is None or np.array_equal(one, other, equal_nan=True)


def upload(page, text, name="mine.csv"):
    page.act("upload", name, [text if isinstance(text, bytes) else text.encode()])


def files_below(folder):
    return sorted(str(each.relative_to(folder)) for each in folder.rglob("*"))


def refused(page, sentence):
    """One plain sentence on the page."""
    assert sentence in page.words
    assert page.words.endswith((".", "?"))
    assert "\n" not in page.words
    assert len(page.words) < 250
    assert "Traceback" not in page.words
    assert page.words in spoken(page)


# --- the messy samples ---------------------------------------------------------


@pytest.mark.parametrize("name", MESSY)
def test_a_messy_sample_is_read_as_by_the_reader_of_files(page, name):
    page.act("sample", name)
    assert page.words == page.trouble == ""
    same(page.file.readings, direct(name))
    for note in page.file.readings.notes:
        assert note in spoken(page)
    shown = page.state.records.get("cavity")
    assert page.readouts["cavity_pressure"] == pytest.approx(float(np.nanmean(shown.vapor_pressure)), rel=1e-12)
    assert page.picture[8:12] == b"WEBP"


@pytest.mark.parametrize("name", [name for name in MESSY if name != "messy-three-places"])
def test_a_messy_sample_says_which_places_are_missing(page, name):
    page.act("sample", name)
    assert page.sentence.endswith("missing: indoors, outdoors.")
    assert page.readouts["share_above_outdoors"] is None


def test_three_places_with_too_few_hours_say_so_and_are_still_shown(page):
    page.act("sample", "messy-three-places")
    assert "at least 72 are needed" in page.sentence
    assert list(page.state.records) == ["indoors", "cavity", "outdoors"]
    assert page.state.found is None


# --- a wrong guess put right -----------------------------------------------------

ROWS = "time,temp,rh\n01/02/2023,40.0,50\n02/02/2023,41.0,50\n03/02/2023,40.5,51\n"


def test_a_wrong_unit_is_put_right(page):
    upload(page, ROWS)
    page.act("guess:column:2:unit", "degC")
    assert page.file.readings.records[0].temperature[0] == 40.0
    page.act("guess:column:2:unit", "degF")
    assert page.file.readings.records[0].temperature[0] == pytest.approx(units.to_si(40.0, "degF"))
    assert page.state.records["cavity"].temperature[0] == pytest.approx(units.to_si(40.0, "degF"))


def test_a_wrong_date_order_is_put_right(page):
    upload(page, ROWS)
    for order, month in (("dmy", "2023-02"), ("mdy", "2023-01")):
        page.act("guess:date_order", order)
        assert str(page.file.readings.records[0].time[0])[:7] == month


def test_a_wrong_place_is_put_right(page):
    upload(page, ROWS)
    page.act("guess:column:2:place", "outdoors")
    page.act("guess:column:3:place", "outdoors")
    assert list(page.state.records) == ["outdoors"]
    assert page.sentence.endswith("missing: indoors, in the roof.")


def test_a_wrong_quantity_is_put_right(page):
    upload(page, ROWS)
    page.act("guess:column:3:quantity", "dew point")
    page.act("guess:column:3:unit", "degF")
    vapor = page.file.readings.records[0].vapor_pressure[0]
    assert vapor == pytest.approx(float(air.saturation_vapor_pressure(units.to_si(50.0, "degF"))))


def test_a_wrong_number_of_header_lines_is_put_right(page):
    upload(page, ROWS)
    page.act("guess:header_lines", "2")
    assert page.file.readings.records[0].temperature.size == 2
    page.act("guess:header_lines", "1")
    assert page.file.readings.records[0].temperature.size == 3


def test_a_wrong_delimiter_and_a_wrong_decimal_sign_are_put_right(page):
    # Cut at the comma each number is two; cut at the semicolon it is one.
    upload(page, "time;temp;rh\n2023-01-01 00:00;4,5;50,5\n2023-01-01 01:00;5,5;51,5\n2023-01-01 02:00;6,5;52,5\n")
    right = page.file.readings
    assert right.records[0].temperature.tolist() == [4.5, 5.5, 6.5]
    page.act("guess:decimal", ".")
    assert page.file.guess.decimal == "."
    assert not np.isfinite(page.file.readings.records[0].temperature).any()
    assert page.trouble == ""
    assert page.sentence.startswith("No hour has both a temperature and a humidity")
    assert page.readouts["cavity_pressure"] is None
    assert page.steps(page.state)[0].words == page.sentence
    for view in ("vapor", "model", "readings"):
        page.controls["View"].value = view
        assert page.trouble == ""
        assert "nothing that can be used" in page.alts[0]
    page.act("guess:decimal", ",")
    same(page.file.readings, right)
    page.act("sample", "messy-no-titles")
    page.act("guess:delimiter", ",")
    assert page.file.guess.reasons["delimiter"] == "set by you"
    same(page.file.readings, direct("messy-no-titles"))


@pytest.mark.parametrize(
    ("key", "value", "sentence"),
    [
        ("guess:delimiter", "|", "has no line with a date and a number."),
        ("guess:delimiter", "x", ""),
        ("guess:decimal", "x", 'There is no decimal sign "x"'),
        ("guess:header_lines", "many", 'The lines above the first reading must be a whole number, not "many".'),
        ("guess:header_lines", "9999", "Number of header lines is 9999; it must be 0 to 1000."),
        ("guess:header_lines", "500", "has 0 readings with a date that is understood so; at least 2 are needed."),
        ("guess:date_order", "ydm", 'There is no date order "ydm"'),
        ("guess:date_order", "ymd", "readings with a date that is understood so; at least 2 are needed."),
        ("guess:clock", "moon time", 'There is no clock "moon time"'),
        ("guess:column:3:unit", "K", 'There is no unit of temperature "K"'),
        ("guess:column:3:quantity", "smell", 'There is no quantity "smell"'),
        ("guess:column:99:place", "indoors", "Column is 99; it must be 1 to 4."),
    ],
)
def test_a_wrong_value_is_one_sentence_and_changes_nothing(page, key, value, sentence):
    page.act("sample", "messy-semicolon")
    guess, kept, numbers = page.file.guess, page.file.readings, page.readouts
    page.act(key, value)
    said = page.troubles[key]
    assert sentence in said
    assert said.endswith((".", "?"))
    assert "\n" not in said
    assert len(said) < 250
    assert said in spoken(page)
    assert page.file.guess is guess
    assert page.file.readings is kept
    assert page.readouts == numbers
    page.act(key, {"guess:decimal": ",", "guess:header_lines": "2", "guess:date_order": "dmy"}.get(key, value))
    assert (key in page.troubles) == (key.split(":")[1] in ("delimiter", "clock", "column")), "put right, it goes"


# --- files that are no readings ----------------------------------------------------

CUT = loggers.names()[-1]
HOSTILE = {
    "binary": (bytes(range(256)) * 20, "is not text"),
    "a picture": (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "is not text"),
    "empty": (b"", "is empty."),
    "only blank lines": (b"\n\n  \n", "is empty."),
    "only titles": (b"time,temp,rh\n", ""),
    "one reading": (b"time,temp,rh\n2023-01-01 00:00,4,50\n", "at least 2 are needed."),
    "prose": (b"The roof is wet.\nNobody knows why.\n", ""),
    "no dates": (b"a,b\n1,2\n3,4\n5,6\n", "has no line with a date and a number."),
    "only formulas": (b"=cmd()|'/c calc'!A0,=1+1\n@x,+1\n", ""),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_what_is_no_readings_gets_a_sentence_and_changes_nothing(page, tmp_path, name):
    content, sentence = HOSTILE[name]
    kept, numbers, before = page.file, page.readouts, files_below(tmp_path)
    upload(page, content)
    refused(page, sentence)
    assert page.file is kept
    assert page.readouts == numbers
    assert files_below(tmp_path) == before
    page.act("sample", "cause-rain-leak")
    assert page.words == "", "the next file opens as always"


def test_a_file_cut_anywhere_is_read_so_far_or_gets_a_sentence(page):
    with loggers.sample("cause-air-leak") as path:
        whole = path.read_bytes()
    for at in (5, 150, 300, 345, 400, 5003, 20011):
        kept = page.file
        upload(page, whole[:at], "cut.csv")
        if page.words:
            refused(page, "cut.csv")
            assert page.file is kept
        else:
            assert 2 <= page.file.readings.records[0].time.size <= whole[:at].count(b"\n")
    assert page.file.name == "cut.csv", "the longest one was read"


def test_a_file_too_large_is_not_taken(page):
    part = next(p for s in page.widget.desk["sections"] for p in s["parts"][0].get("parts", []) if p["key"] == "upload")
    assert str(LIMIT) in json.dumps(part), "the screen knows the limit"
    kept = page.file
    page.act("upload-too-large", "../../" + "n" * 300 + ".csv")
    refused(page, f"it is larger than {LIMIT} bytes, too large for a logger file.")
    assert page.file is kept


def test_an_upload_without_bytes_gets_a_sentence(page):
    kept = page.file
    page.act("upload", "mine.csv", [])
    refused(page, "nothing was changed.")
    assert page.file is kept


@pytest.mark.parametrize("cell", ["=cmd()", "=1+1", "@x", "+cmd(1)", "-x!A0", '=HYPERLINK("x")'])
def test_a_formula_is_never_a_number(page, cell):
    quoted = '"' + cell.replace('"', '""') + '"'
    upload(page, f"time,temp,rh,{quoted}\n" + "".join(f"2023-01-01 0{i}:00,4.5,50,{quoted}\n" for i in range(5)))
    if page.words:
        refused(page, "mine.csv")
        return
    assert page.file.readings.records[0].temperature.tolist() == [4.5] * 5
    assert page.file.guess.columns[3].quantity == "not used"


def test_a_number_with_a_plus_is_a_number(page):
    upload(page, "time,temp (C),rh\n" + "".join(f"2023-01-01 0{i}:00,+1,50\n" for i in range(5)))
    assert page.words == ""
    assert page.file.readings.records[0].temperature.tolist() == [1.0] * 5


@pytest.mark.parametrize(
    "name",
    [
        "../../x.csv",
        "/etc/x.csv",
        "..\\..\\x.csv",
        "C:\\x.csv",
        "..",
        ".",
        "",
        "a/../..",
        "x\0.csv",
        "n" * 5000,
        "é" * 90,
    ],
)
def test_a_path_in_the_file_name_leads_nowhere(page, tmp_path, name):
    before, kept = files_below(tmp_path), page.file
    upload(page, ROWS, name)
    assert files_below(tmp_path) == before
    assert not list(tmp_path.parent.glob("x.csv"))
    if page.words:
        refused(page, "")
        assert page.file is kept
    else:
        assert "/" not in page.file.name
        assert len(page.file.name) <= 60
        assert page.file.readings.records[0].time.size == 3
        page.act("guess:column:2:unit", "degC")
        assert files_below(tmp_path) == before


@pytest.mark.parametrize("key", ["guess:color", "guess:column:2:color", "guess:column:two:unit", "nothing", "meter:x"])
def test_a_message_that_the_page_does_not_know_changes_nothing(page, key):
    kept, numbers = page.file.readings, page.readouts
    page.act(key, "1")
    assert page.words in ("", "That could not be done; nothing was changed.")
    assert page.file.readings is kept
    assert page.readouts == numbers


def test_temperatures_alone_are_shown(page):
    upload(page, "time,temp (C)\n" + "".join(f"2023-01-01 0{i}:00,{i},\n" for i in range(5)))
    assert page.trouble == page.words == ""
    assert "highest 39" in page.alts[0]
    assert page.readouts["cavity_pressure"] is None


# --- the cause -----------------------------------------------------------------------


@pytest.mark.parametrize("name", CAUSES)
def test_the_cause_is_the_direct_diagnosis(page, name):
    page.act("sample", name)
    found = loggers.diagnose(direct(name))
    assert found.cause == page.state.found.cause == CAUSES[name]
    # The last digit of a sum follows where the numbers lie in memory.
    assert page.state.found.numbers == pytest.approx(found.numbers, rel=1e-9, abs=1e-12, nan_ok=True)
    assert page.readouts["share_above_outdoors"] == found.numbers["share above outdoors"]
    assert page.readouts["margin"] == found.numbers["dew point margin"]
    assert "They point to" not in spoken(page), "one's own answer comes first"
    page.act("cause", CAUSES[name])
    page.act("show")
    assert f"They point to: {found.cause}. You said the same." in spoken(page)
    for sentence in found.evidence:
        assert units.read_in(sentence, "us") in spoken(page)
    other = next(each for each in CAUSES.values() if each != found.cause)
    page.act("cause", other)
    page.act("show")
    assert f"They point to: {found.cause}. You said: {other}." in spoken(page)


# --- the pin meter -------------------------------------------------------------------


def test_the_pin_meter_is_the_direct_correction(page):
    for name, typed in (("reading", "14 %"), ("temperature", "-7 C"), ("slope", "0.9"), ("offset", "1.5")):
        page.act(f"meter:{name}", typed)
    assert f"Corrected: {loggers.moisture_content(14.0, -7.0, 0.9, 1.5):.1f} % MC." in spoken(page)


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("reading", "wet", 'The relative humidity "wet" is not understood'),
        ("reading", "90 %", "Meter reading is 90 mass %; it must be 0 to 60 mass %."),
        ("temperature", "cold", 'The temperature "cold" is not understood; write it like "20 F" or "-7 C".'),
        ("temperature", "-80 C", "Wood temperature is −80 °C; it must be −35 to 60 °C."),
        ("slope", "steep", "Slope and offset must be numbers."),
        ("slope", "9", "Slope of the species is 9; it must be 0.5 to 2."),
        ("offset", "nan", "Offset of the species is not a number; it must be −10 to 10 mass %."),
    ],
)
def test_a_wrong_meter_field_is_one_sentence(page, field, typed, sentence):
    numbers, old = page.readouts, page.meter[field]
    page.act(f"meter:{field}", typed)
    assert sentence in spoken(page)
    assert "Corrected:" not in spoken(page)
    assert page.readouts == numbers
    page.act(f"meter:{field}", old)
    assert "Corrected:" in spoken(page)


# --- the model and the offsets -----------------------------------------------------------


def test_the_model_run_is_the_direct_run(page):
    page.act("sample", "cause-air-leak")
    page.act("roof", "vented-vault-osb")
    page.act("model")
    assert page.words == ""
    mine = direct("cause-air-leak")
    run, time = desk_readings.modelled(mine, building.preset("vented-vault-osb"))
    warm, humid = run.face(*desk_readings.cold_face(run))
    pressure = air.saturation_vapor_pressure(warm) * humid
    cavity = loggers.shared_clock(*(mine[place] for place in loggers.PLACES))[1]
    _, ours, its = np.intersect1d(cavity.time, time, return_indices=True)
    wanted = loggers.agreement(cavity.vapor_pressure[ours], pressure[its])
    assert page.state.agreement.hours == wanted.hours > 600
    assert page.state.agreement.bias == pytest.approx(wanted.bias, rel=1e-12)
    assert page.state.agreement.correlation == pytest.approx(wanted.correlation, rel=1e-12)
    assert page.readouts["bias"] == page.state.agreement.bias
    assert f"over {wanted.hours} hours" in spoken(page)
    page.controls["View"].value = "model"
    assert page.trouble == ""
    assert page.picture[8:12] == b"WEBP"
    page.controls["Offset_RH"].value = 5
    moved = page.state.records["cavity"]
    again = loggers.shared_clock(mine["indoors"], moved, mine["outdoors"])[1].vapor_pressure[ours]
    assert page.readouts["bias"] == pytest.approx(loggers.agreement(again, pressure[its]).bias, rel=1e-12)
    assert page.readouts["bias"] > wanted.bias
    page.act("roof", "vented-vault")
    assert page.state.agreement is None, "another roof, another run"


def test_the_model_counts_the_leak_that_is_typed(page):
    page.act("sample", "cause-air-leak")
    page.act("model")
    tight = page.state.agreement.bias
    page.act("ach50", "3")
    assert page.state.agreement is None, "another house, another run"
    page.act("model")
    run, _ = desk_readings.modelled(direct("cause-air-leak"), building.preset("vented-vault-osb"), ach50=3.0)
    assert run.leaking
    assert np.array_equal(page.state.model[0].water, run.water)
    assert page.state.agreement.bias < tight, "leaking air brings vapor to the model's cold face"
    page.act("ach50", "")
    page.act("model")
    assert page.state.agreement.bias == tight


@pytest.mark.parametrize("typed", ["many", "-1", "99", "nan"])
def test_a_blower_door_that_cannot_be_is_a_sentence_at_its_field(page, typed):
    page.act("ach50", typed)
    assert page.troubles["ach50"].startswith("Air changes at 50 Pa is ")
    assert "0 to 50 1/h." in page.troubles["ach50"]
    page.act("ach50", "2")
    assert "ach50" not in page.troubles


def test_a_model_run_without_the_places_is_a_sentence(page):
    page.act("sample", "messy-semicolon")
    page.act("model")
    refused(page, 'There is no place in the readings "')
    assert page.state.agreement is None


@pytest.mark.parametrize("system", ["us", "si"])
def test_offsets_are_those_of_the_record(page, tmp_path, system):
    page = open_page("your-readings", tmp_path, system)
    page.act("sample", "cause-indoor-humidity")
    for name, value in (("Offset_T", 2.0), ("Offset_RH", 4.0), ("Shift", 3.0)):
        page.controls[name].value = value
    warm = 2.0 if system == "si" else 2.0 / 1.8
    plain = direct("cause-indoor-humidity")
    wanted = plain["cavity"].corrected(warm, 0.04, 3.0)
    cavity = page.state.records["cavity"]
    assert np.array_equal(cavity.time, wanted.time)
    assert cavity.temperature == pytest.approx(wanted.temperature, rel=1e-12)
    assert cavity.vapor_pressure == pytest.approx(wanted.vapor_pressure, rel=1e-12)
    assert page.readouts["cavity_pressure"] == pytest.approx(float(np.mean(wanted.vapor_pressure)), rel=1e-12)
    assert page.readouts["cavity_pressure"] != pytest.approx(float(np.mean(plain["cavity"].vapor_pressure)), rel=0.01)
    same(page.file.readings, plain)


def test_a_full_disk_is_one_sentence_and_the_file_before_stays(page, monkeypatch):
    before = page.file

    def full(self, content):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("pathlib.Path.write_bytes", full)
    upload(page, "time,temperature (F)\n2024-01-01 00:00,70\n")
    refused(page, "mine.csv: it cannot be kept while it is read (No space left on device).")
    assert page.file is before


def test_the_share_is_of_hours_with_a_tenth_more(page):
    room, hollow, out = loggers.shared_clock(
        *(next(each for each in page.file.readings.records if each.place == place) for place in loggers.PLACES)
    )
    known = np.isfinite(room.vapor_pressure + hollow.vapor_pressure + out.vapor_pressure + hollow.temperature)
    share = (hollow.vapor_pressure[known] > 1.1 * out.vapor_pressure[known]).mean()
    assert page.readouts["share_above_outdoors"] == pytest.approx(share)
    assert f"In {share * 100:.0f} % of the hours the roof has at least a tenth more vapor" in page.sentence


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_arithmetic_shows_all_three_places(tmp_path, system):
    page = open_page("your-readings", tmp_path, system)
    page.act("sample", "cause-air-leak")
    *places, compared = page.steps(page.state)
    results = [step.result for step in places]
    assert [step.words.split(" ")[0] for step in places] == ["The", "Outdoors,", "Indoors,"]
    assert len(set(results)) == 3
    cavity, outdoors = (float(each.split()[0]) for each in results[:2])
    assert float(compared.result.split()[0]) == pytest.approx(cavity - outdoors, abs=1.5 if system == "si" else 0.0015)
    page.act("sample", loggers.names()[0])
    assert page.steps(page.state)


def test_the_checks_with_their_fixed_numbers():
    shower, noon, months, pins = asked.fixed("your-readings")
    assert shower.answer.startswith("Find the air path")
    assert noon.answer.startswith("Water stored in the wood")
    assert months.answer.startswith("The one in May")
    weeks = mold.weeks_to_start(to_si(58, "degF"), 0.86)
    assert f"about {weeks:.0f} weeks" in asked.said(months)
    assert pins.answer == f"No. It is about {loggers.moisture_content(17.0, to_si(10, 'degF')):.0f} %."


@pytest.mark.parametrize("seed", [None, *range(8)])
def test_each_draw_offers_what_a_holder_would_say(seed):
    """The words of a wrong answer are the belief; and it is wrong by the physics."""
    _, _, months, pins = questions.checks("your-readings", seed)
    for asks, held in ((months, "logger-90-means-wet"), (pins, "meter-reads-true")):
        assert held in {each.belief for each in asks.choices}
    given = months.given
    assert given["rh"] > given["lower"]
    assert mold.highest_index(to_si(given["cold"], "degF"), given["rh"] / 100) == 0
    assert mold.highest_index(to_si(given["mild"], "degF"), given["lower"] / 100) > 1
    true = loggers.moisture_content(float(pins.given["dial"]), to_si(pins.given["cold"], "degF"))
    assert pins.given["dial"] < criterion("wood-moisture").caution < true


# --- the beats ---------------------------------------------------------------------------


def test_the_roof_of_the_first_beat_reads_what_the_yard_reads(tmp_path):
    page = first_visit("your-readings", tmp_path)
    assert page.file.name == "cause-outdoor-air", "the page stands in the bet's case"
    (state,) = page.stage.states
    for place in ("cavity", "outdoors"):
        warm, humid = state.mean(place)
        assert round(from_si(warm, "degF")) == 21
        assert round(100 * humid) == 90
    assert [round(each) for each in state.ends] == [12, 14]
    assert beats.first_right((state,)) == "b"
    assert beats.first_right((beats.house("air-leak"),)) != "b"


def test_the_same_ninety_costs_a_roof_in_april_alone():
    january, april = beats.APRIL.states(None)
    spruce = material("spruce")
    assert january.wood == april.wood == pytest.approx(100 * float(spruce.water_content(0.9)) / spruce.density)
    assert [bet.right((january, april)) for bet in beats.APRIL.bets] == ["no", "yes"]
    assert april.weeks == mold.weeks_to_start(april.temperature, 0.9)
    # So it stays from freezing down, and from a mild spring day up.
    assert all(beats.Logger(to_si(each, "degF")).weeks is None for each in (-10, 10, 32))
    assert all(beats.Logger(to_si(each, "degF")).weeks for each in (41, 50, 70))


def test_two_roofs_whose_wood_rises_alike_need_two_things():
    leak, shut = beats.VENTS.states(None)
    assert [round(each) for each in leak.ends] == [round(each) for each in shut.ends] == [14, 17]
    assert [bet.right((leak, shut)) for bet in beats.VENTS.bets] == ["seal", "vents"]
    room = direct("cause-air-leak")["indoors"].vapor_pressure
    showers = int((np.diff(room) > 150).sum())
    assert leak.showers == (showers, 50)
    assert shut.showers == (showers, 0)
    assert showers == 56, "two a day for four weeks"


def test_one_dial_holds_two_moistures():
    warm, cold = beats.METER.states(None)
    assert warm.dial == cold.dial
    assert [bet.right((warm, cold)) for bet in beats.METER.bets] == ["same", "more"]
    assert warm.true < beats.CARE < cold.true


def test_one_reading_of_a_logger_says_where_wood_ends(page):
    for humidity, temperature, told in (
        ("90 %", "21 F", "ends at 21 % MC. No mold starts"),
        ("90 %", "45 F", "ends at 21 % MC. Mold could start after about 8 weeks"),
        ("60 %", "70 F", "No mold starts"),
    ):
        page.act("spot:humidity", humidity)
        page.act("spot:temperature", temperature)
        assert told in spoken(page)
    for field, typed in (("humidity", "much"), ("humidity", "140 %"), ("temperature", "-90 C")):
        old = page.spot[field]
        page.act(f"spot:{field}", typed)
        assert "ends at" not in spoken(page)
        page.act(f"spot:{field}", old)


@pytest.mark.parametrize("name", CAUSES)
def test_the_sentence_and_the_cause_are_told_by_the_same_numbers(page, name):
    page.act("sample", name)
    most = {"air leak": "most like the room", "outdoor air": "most like outdoors"}
    told = most.get(CAUSES[name])
    for each in most.values():
        assert (each in page.sentence) == (each == told)


def test_no_sample_prints_its_cause_over_the_question(page):
    assert {*HOUSES.values()} == {*CAUSES}
    for name in loggers.names():
        page.act("sample", name)
        file = next(each for each in page.widget.desk["sections"] if each["key"] == "file")
        options = [each["text"] for part in everything(file) for each in part.get("options", [])]
        assert not any(cause.split()[0] in option for cause in CAUSES.values() for option in options), options


@pytest.mark.parametrize("id", [name for name in loggers.names() if name.startswith("cause-")])
def test_what_moves_before_the_room_does_not_lag_behind_it(tmp_path, id):
    """An effect does not come before its cause: no negative lag is shown, and what it means is said."""
    page = open_page("your-readings", tmp_path / "p.json")
    page.act("sample", id)
    for shift in (-13, 0, 13):
        page.controls["Shift"].value = shift
        lag = page.readouts["lag"]
        shown = next(each for each in page.readout_list if each.name == "lag").shown("us")
        if lag < 0:
            assert shown["value"] == "none"
            assert shown["also"].startswith(f"it moves {-lag:.0f} h before the room: ")
        else:
            assert (shown["value"], shown["also"]) == (f"{lag:.0f} h", "")


@pytest.mark.parametrize("system", ["us", "si"])
def test_units_of_a_column_are_shown_as_people_write_them_and_taken_as_files_have_them(tmp_path, system):
    page = open_page("your-readings", tmp_path / "p.json", system)
    units_of = {
        option["id"]: option["text"]
        for part in everything(page.desk())
        if str(part.get("key", "")).startswith("guess:column:") and part["key"].endswith(":unit")
        for option in part["options"]
    }
    assert units_of["degC"] == "°C"
    assert units_of["degF"] == "°F"
    assert not {"degC", "degF"} & set(units_of.values())
    assert "in °F" in " ".join(page.file.guess.sentences()) or "in °C" in " ".join(page.file.guess.sentences())
    assert "deg" not in " ".join(page.file.guess.sentences())
    assert not page.troubles


def everything(part):
    """All parts of a desk, however deep."""
    if isinstance(part, dict):
        yield part
        for inside in part.values():
            yield from everything(inside)
    elif isinstance(part, (list, tuple)):
        for inside in part:
            yield from everything(inside)


def test_as_logged_is_drawn_what_stands_in_the_file(page):
    with loggers.sample("cause-outdoor-air") as path:
        lines = path.read_text().splitlines()
    column = next(k for k, name in enumerate(lines[0].split(",")) if "RH" in name)
    written = [float(line.split(",")[column]) / 100 for line in lines[1:]]
    drawn = page.views(page.state).lower
    assert any(np.allclose(trace.values, written) for trace in drawn)
    assert "over 100 %" not in page.sentence
    page.controls["Offset_RH"].value = 10
    roof = page.state.records["cavity"].logged_humidity
    assert f"In {100 * np.mean(roof > 1.005):.0f} % of the hours the roof reads over 100 %" in page.sentence.replace(
        "\N{NO-BREAK SPACE}", " "
    )
    assert max(trace.values.max() for trace in page.views(page.state).lower) > 1.0


def test_rain_that_was_read_is_not_called_missing(page):
    assert page.state.records["outdoors"].rain is not None
    said = " ".join(page.state.found.evidence)
    assert "no readings of rain" not in said
    assert "no wet spell" in said
