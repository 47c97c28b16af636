"""The desk of one's own roof, every action without a browser: built, spoiled, saved, compared, printed."""

import dataclasses
import gzip
import io
import json
from importlib.resources import files

import pytest
from lesson_page import first_visit, open_page
from pypdf import PdfReader

from dryward import building, cli, units
from dryward.building.framing import with_framing
from dryward.building.job import DESIGNS, Job, Place, Room, Tightness, job_text, load_job, parse_job, save_job
from dryward.course.your_roof import beats
from dryward.panels.desk.results import difference, names_of
from dryward.physics import drying, steady
from dryward.physics.airleak import Leak, stack_pressure
from dryward.report import document, many, review
from dryward.report import setting as weathered
from dryward.verdict.words import heading


@pytest.fixture
def page(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    return open_page("your-roof", tmp_path)


def job(page):
    return page.draft.job


def parts(page):
    """All parts of the desk by key."""
    found, waiting = {}, list(page.widget.desk["sections"])
    while waiting:
        part = waiting.pop()
        if isinstance(part, dict):
            found[part.get("key")] = part
            waiting += part.get("parts", [])
            if part.get("kind") == "table":
                waiting += [cell for row in part["rows"] for cell in row["cells"]]
    return found


def rows(page):
    return [each.name for each in job(page).assembly.layers]


def spoken(page):
    sections = [part for part in page.widget.desk["sections"] if part["key"] != "print"]
    return json.dumps(sections, ensure_ascii=False, default=lambda content: f"{len(content)} bytes")


def test_a_room_of_whole_degrees(page, tmp_path):
    assert job(page).room.temperature == units.to_si(70, "degF")
    assert job(page).room.summer_temperature == units.to_si(75, "degF")
    assert parts(page)["set:room.temperature"]["value"] == "70 F"
    assert parts(page)["set:room.summer_temperature"]["value"] == "75 F"
    assert open_page("your-roof", tmp_path, "si").draft.job.room.temperature == 21.0


def test_the_page_is_the_physics(page):
    here = weathered.setting(job(page))
    state = steady.profile(job(page).assembly, here.winter_room, here.winter)
    assert page.readouts["gain"] == state.gain
    page.controls["Season"].value = "summer"
    state = steady.profile(job(page).assembly, here.summer_room, here.summer)
    assert page.readouts["highest_relative_humidity"] == state.relative_humidity[state.dampest]
    inner, outer = state.between(state.dampest)
    assert {inner, outer} <= set(state.names)
    assert f"{100 * page.readouts['highest_relative_humidity']:.0f}" in page.sentence.split("dampest face")[1][:30]


def test_the_summer_room_is_that_of_the_bench(page):
    page.controls["Season"].value = "summer"
    page.act("set:room.summer_temperature", "72 F")
    page.act("set:room.summer_relative_humidity", "65 %")
    assert (page.state.indoor.temperature, page.state.indoor.relative_humidity) == (
        pytest.approx(units.to_si(72, "degF")),
        pytest.approx(0.65),
    )
    assert weathered.setting(job(page)).summer_room == page.state.indoor
    page.act("set:room.summer_temperature", "20 F")
    assert parts(page)["set:room.summer_temperature"]["error"].startswith("Room temperature in summer is 20 °F;")


def test_only_the_fields_a_rule_takes_are_there(page):
    fields = {
        "constant": {"temperature", "relative_humidity", "summer_temperature", "summer_relative_humidity"},
        "class": {"temperature", "humidity_class"},
        "by outdoor temperature": {"occupancy"},
        "moisture balance": {"temperature", "production", "fresh_air"},
    }
    for kind, wanted in fields.items():
        page.act("set:room.kind", kind)
        there = {key.removeprefix("set:room.") for key in parts(page) if key and key.startswith("set:room.")}
        assert there == {"kind", *wanted}


def test_every_design_year_is_the_picture_the_bench_and_the_checks(page):
    usual = page.state
    said = set()
    for design in DESIGNS:
        page.act("set:design", design)
        assert job(page).design == design
        assert parts(page)["set:design"]["value"] == design
        sentence = weathered.setting(job(page)).notes[0]
        assert sentence in spoken(page)
        said.add(sentence)
    assert len(said) == 3
    page.act("set:design", "damp house")
    assert page.state.indoor.relative_humidity == pytest.approx(usual.indoor.relative_humidity + 0.10)
    assert page.controls["RH_in"].si == pytest.approx(0.40), "the slider is what is given"
    page.act("set:design", "cold winter")
    assert page.state.outdoor.temperature == pytest.approx(usual.outdoor.temperature - 2.0, abs=1e-3)
    assert page.state.indoor == usual.indoor


@pytest.mark.parametrize("design", DESIGNS)
@pytest.mark.parametrize(("roof", "place"), [("wood-frame-wall", "cold"), ("vented-vault-closed", "hot-humid")])
def test_the_strip_is_true_of_the_picture(page, roof, place, design):
    """Where the coldest month is mild, or the house damp, the room is not at the slider's own number."""
    page.act("preset", roof)
    page.act("set:place.id", place)
    page.act("set:design", design)
    states = page.strips(page.at, page.state)["RH_in"].states
    places, turns = page.along("RH_in"), [k for k in range(1, len(states)) if states[k] != states[k - 1]]
    assert turns
    for k in {0, len(places) - 1, *turns, *(turn - 1 for turn in turns)}:
        page.controls["RH_in"].value = places[k] * 100
        assert page.verdict.state == states[k]
        assert (page.verdict.state == "wet") <= (page.readouts["gain"] > 0)


def test_the_slider_follows_a_rule_and_takes_over_when_it_is_moved(page):
    page.act("set:room.kind", "by outdoor temperature")
    here = weathered.setting(job(page))
    assert page.state.indoor == here.winter_room
    assert page.controls["RH_in"].si == pytest.approx(here.winter_room.relative_humidity)
    page.switch_units("si")
    page.switch_units("us")
    assert job(page).room.kind == "by outdoor temperature", "nothing was moved"
    page.controls["RH_in"].value = 45
    assert job(page).room.kind == "constant"
    assert parts(page)["set:room.kind"]["value"] == "constant"
    assert page.state.indoor.relative_humidity == pytest.approx(0.45)
    page.act("undo")
    assert job(page).room.kind == "by outdoor temperature"


def test_the_slider_is_the_room_of_the_season_that_is_shown(page):
    page.act("set:room.summer_relative_humidity", "60 %")
    page.controls["Season"].value = "summer"
    assert page.controls["RH_in"].si == pytest.approx(0.60)
    assert (job(page).room.relative_humidity, job(page).room.summer_relative_humidity) == (0.40, 0.60)
    page.controls["RH_in"].value = 65
    assert (job(page).room.relative_humidity, job(page).room.summer_relative_humidity) == (0.40, pytest.approx(0.65))
    assert page.state.indoor.relative_humidity == pytest.approx(0.65)
    assert parts(page)["set:room.summer_relative_humidity"]["value"] == "65 %"
    states = page.strips(page.at, page.state)["RH_in"].states
    assert len(states) == len(page.along("RH_in"))
    page.controls["Season"].value = "winter"
    assert page.controls["RH_in"].si == pytest.approx(0.40)
    page.act("undo")
    assert job(page).room.summer_relative_humidity == 0.60


def test_checks_of_another_room_say_so_as_soon_as_the_slider_moves(page):
    page.act("set:years", "1")
    page.act("check:run")
    assert "run them again" not in spoken(page)
    page.controls["RH_in"].value = 55
    assert "The roof has changed since these checks: run them again." in spoken(page)
    assert parts(page)["set:room.relative_humidity"]["value"] == "55 %"
    page.controls["RH_in"].value = 40
    assert "run them again" not in spoken(page)


@pytest.mark.parametrize("system", ["us", "si"])
def test_what_a_field_shows_can_be_typed_into_it(page, system):
    """Nothing doubled, nothing that only a reader understands: each is taken back without a word."""
    page.switch_units(system)
    page.act("set:tested", True)
    page.act("set:vents", True)
    page.act("set:framed", True)
    typed = {key: part["value"] for key, part in parts(page).items() if part.get("kind") == "field" and part["value"]}
    assert len(typed) > 30
    for key, value in typed.items():
        page.act(key, value)
        assert parts(page)[key]["error"] == "", (key, value)
        assert parts(page)[key]["value"] == value, key


def test_search_shows_values_and_source_before_adding(page):
    page.act("search", "cellulose")
    table = next(part for part in page.widget.desk["sections"][1]["parts"] if part.get("head", [""])[0] == "Found")
    for row in table["rows"]:
        name, heat, vapor, source, _ = row["cells"]
        assert "cellulose" in name.lower()
        assert "R-" in heat
        assert "perm" in vapor
        assert len(source) > 3
    page.act("search", "no such thing")
    assert 'nothing called \\"no such thing\\"' in spoken(page)


def test_add_at_the_highlighted_row_replace_move_remove(page):
    start = rows(page)
    page.act("here:1")
    page.act("search", "osb")
    key = next(key for key in parts(page) if key and key.startswith("add:"))
    page.act(key)
    assert len(rows(page)) == len(start) + 1
    assert rows(page)[:2] == start[:2]
    assert page.after == 2
    page.act("layer:2:down")
    assert rows(page)[2] == start[2]
    page.act("layer:3:remove")
    assert rows(page) == start
    page.act("here:0")
    name, thick = job(page).assembly.layers[0].name, job(page).assembly.layers[0].thickness
    page.act(next(key for key in parts(page) if key and key.startswith("replace:")))
    assert job(page).assembly.layers[0].name == name
    assert (
        job(page).assembly.layers[0].substance.name != building.preset("vented-vault-variable").layers[0].substance.name
    )
    assert job(page).assembly.layers[0].thickness == (thick or 0.0127)


@pytest.mark.parametrize(
    ("key", "typed", "sentence"),
    [
        ("set:room.temperature", "warm", 'The temperature "warm" is not understood; write it like "20 F" or "-7 C".'),
        ("set:room.relative_humidity", "140 %", "Room humidity is 140 %; it must be 5 to 95 %."),
        ("layer:1:thickness", "1e99 in", "Thickness of"),
        ("set:place.id", "mars", 'There is no demo climate "mars"; there are very-cold, cold, '),
        ("set:years", "999", "The number of years is 999; it must be 1 to 10."),
        ("set:slope", "steep", 'The slope "steep" is not understood; write it like "4/12" or "18 deg".'),
        ("name", "../../roof", "must be a plain name such as my-roof.toml, without a folder."),
        ("own:add-curve", None, "A point of the curve is written like"),
        ("open", "none.toml", "none.toml"),
    ],
)
def test_a_wrong_entry_keeps_its_words_and_changes_nothing(page, key, typed, sentence):
    if key.startswith("own"):
        page.act("own:curve", "wet")
    before = job(page)
    page.act(key, typed)
    assert job(page) == before
    assert sentence in (spoken(page).replace('\\"', '"'))
    if key in parts(page) and typed and parts(page)[key]["kind"] == "field":
        assert parts(page)[key]["value"] == typed
        page.act("set:start_humidity", "75 %")
        assert parts(page)[key]["value"] == typed, "kept until it is put right"


def test_put_right_the_error_goes(page):
    page.act("set:room.temperature", "warm")
    assert parts(page)["set:room.temperature"]["error"]
    page.act("set:room.temperature", "68")
    assert parts(page)["set:room.temperature"]["error"] == ""
    assert parts(page)["set:room.temperature"]["value"] == "68 F"


def test_a_dragged_slider_is_one_step_back(page):
    start = job(page)
    for percent in (45, 46, 47, 48):
        page.controls["RH_in"].value = percent
    assert job(page).room.relative_humidity == pytest.approx(0.48)
    page.act("undo")
    assert job(page) == start
    page.act("redo")
    assert job(page).room.relative_humidity == pytest.approx(0.48)
    page.draft._when -= 5  # later
    page.controls["RH_in"].value = 50
    page.act("undo")
    assert job(page).room.relative_humidity == pytest.approx(0.48)


def test_own_material_cups_and_curve(page):
    for kind in ("material", "cups", "curve"):
        count = len(rows(page))
        page.act(f"own:add-{kind}")
        assert len(rows(page)) == count + 1
    assert job(page).assembly.layers[3].substance.permeance(0.3, 0.3) == pytest.approx(units.to_si(0.5, "perm"))


def test_framing_shows_the_whole_resistance(page):
    page.act("set:framed", True)
    page.act("set:framing.share", "12 %")
    whole = units.show(with_framing(job(page).assembly).parallel, "thermal resistance", "us")
    assert page.readout_list[0].note == f"whole {whole}"


def test_twelve_typed_means_and_every_choice_of_the_bench(page):
    for kind in ("class", "by outdoor temperature", "moisture balance", "constant"):
        page.act("set:room.kind", kind)
        assert job(page).room.kind == kind
        assert page.trouble == ""
    for key in ("set:tested", "set:vents", "set:framed"):
        page.act(key, True)
    page.act("set:place.kind", "means")
    page.act("set:place.temperature", ", ".join(str(t) for t in range(20, 32)))
    assert job(page).place.temperature[0] == pytest.approx(units.to_si(20, "degF"))
    selects = {
        key: part for key, part in parts(page).items() if key and key.startswith("set:") and part["kind"] == "select"
    }
    for key, part in selects.items():
        for option in part["options"]:
            page.act(key, option["id"])
            assert page.words == ""
            assert page.trouble == ""
    assert not [part for part in parts(page).values() if part.get("error")]


def test_a_weather_file_of_ones_own_overwrites_nothing(page, tmp_path):
    content = gzip.decompress(files("dryward.evidence").joinpath("data/typical-year-45N-8E.epw.gz").read_bytes())
    (tmp_path / "town.epw").write_text("mine")
    page.act("set:place.kind", "file")
    assert job(page).place.kind == "demo"
    page.act("epw", "town.epw", [content])
    assert job(page).place.id == "town-2.epw"
    assert (tmp_path / "town.epw").read_text() == "mine"
    before = job(page)
    page.act("epw", "../../evil.epw", [b"\x00\x01binary"])
    assert job(page) == before
    assert "evil.epw" in page.words
    assert sorted(each.name for each in tmp_path.glob("*epw")) == ["town-2.epw", "town.epw"]


HOSTILE = {
    "truncated": job_text(parse_job(job_text(Job(building.preset("vented-vault")))))[:900],
    "binary": b"\x00\xff\xfe\x80" * 50,
    "wrong unit": 'format = "dryward job"\nversion = 1\n[room]\ntemperature = "20 perm"\n',
    "huge number": 'format = "dryward job"\nversion = 1\nyears = 1' + "0" * 5000,
    "large": b"#" * 2_000_000,
    "deep": "a = " + "[" * 5000,
    "weather elsewhere": job_text(Job(building.preset("vented-vault"), Place("file", "../../secret.epw"))),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_files_get_a_sentence_and_change_nothing(page, tmp_path, name, capsys):
    content = HOSTILE[name] if isinstance(HOSTILE[name], bytes) else HOSTILE[name].encode()
    before, there = job(page), set(tmp_path.iterdir())
    page.act("take", f"../{name}.toml", [content])
    assert job(page) == before
    assert page.words.endswith(".")
    assert page.words.count("\n") == 0
    assert len(page.words) < 250
    assert set(tmp_path.iterdir()) == there
    (tmp_path / "bad.toml").write_bytes(content)
    page.act("open", "bad.toml")
    assert job(page) == before
    assert cli.main(["check", "bad.toml", "--steady"]) == 2
    said = capsys.readouterr().err.strip()
    assert len(said.splitlines()) == 1
    assert "Traceback" not in said


def test_a_hundred_megabytes_are_never_read(page, tmp_path, capsys):
    with (tmp_path / "big.toml").open("wb") as file:
        file.truncate(100_000_000)
    page.act("open", "big.toml")
    assert "too large" in page.words
    assert cli.main(["check", "big.toml"]) == 2
    assert "too large" in capsys.readouterr().err


def test_save_reopen_and_a_second_writer(page, tmp_path):
    page.act("set:room.relative_humidity", "45 %")
    assert page.widget.desk["unsaved"]
    page.act("name", "mine")
    page.act("save")
    assert not page.widget.desk["unsaved"]
    kept = load_job(tmp_path / "mine.toml")[0]
    assert kept == job(page)
    other = open_page("your-roof", tmp_path)
    other.act("open", "mine.toml")
    assert job(other) == kept
    other.act("set:years", "2")
    other.act("save")
    page.act("set:years", "5")
    page.act("save")
    assert "mine.toml" in parts(page)["name"]["error"]
    assert load_job(tmp_path / "mine.toml")[0].years == 2, "the other's work stands"
    assert job(page).years == 5, "and mine is not lost"
    page.act("name", "mine-2")
    page.act("save")
    assert load_job(tmp_path / "mine-2.toml")[0].years == 5


def test_page_command_line_and_report_agree_to_the_last_digit(page, tmp_path, capsys):
    page.act("preset", "vented-vault-osb")
    page.act("set:years", "1")
    page.act("name", "osb")
    page.act("save")
    page.act("check:run")
    shown = many.plain(page.checking.review, "osb.toml")
    cli.main(["check", "osb.toml", "--json"])
    assert json.loads(capsys.readouterr().out) == json.loads(json.dumps(shown))
    page.act("print:pdf")
    words = " ".join(
        " ".join(each.extract_text() for each in PdfReader(io.BytesIO(page.printing.made["pdf"][1])).pages).split()
    )
    assert cli.main(["report", "osb.toml", "-o", "again.pdf"]) == 0
    assert (tmp_path / "again.pdf").read_bytes() == (tmp_path / "osb.pdf").read_bytes()
    for each in page.checking.review.checks:
        if not each.id.startswith("code-"):
            assert " ".join(units.read_in(each.what, "us").split()) in words
    assert units.read_in(page.checking.review.headline, "us") in words


def test_the_limits_of_the_verdict_stand_beside_it(page):
    page.act("set:years", "1")
    page.act("check:run")
    said = [part["text"] for part in parts(page).values() if part.get("kind") == "text"]
    words = spoken(page)
    assert units.read_in(page.checking.review.headline, "us") in words
    assert page.checking.review.limits in words or page.checking.review.limits in said
    assert document.legend() in words


def test_uncertain_inputs_on_the_page(page, monkeypatch):
    monkeypatch.setattr("dryward.course.your_roof.page.DRAWS", 4)
    page.act("set:years", "1")
    page.act("check:spread")
    found = page.checking.review.check("years")
    assert found.numbers[0].low <= found.numbers[0].value <= found.numbers[0].high
    assert units.read_in(found.matters, "us") in spoken(page)
    # The last digits of a long sum hang on where the arrays lie in memory; the plain form has nine.
    assert many.plain(page.checking.review) == many.plain(review(job(page), spread=4))


@pytest.mark.parametrize(
    "id",
    [
        "place:hot-dry",
        *(pytest.param(id, marks=pytest.mark.slow) for id in ("preset:vented-vault-closed", "file:a.toml", "saved")),
    ],
)
def test_compare_with_preset_climate_and_file(page, id):
    page.act("set:years", "1")
    page.act("name", "a")
    page.act("save")
    page.act("compare", id)
    assert page.comparing.trouble == ""
    pair = page.comparing.pair
    assert difference(pair, names_of(*page.comparing.jobs), page.unit_system) in spoken(page)
    (section,) = (part for part in page.widget.desk["sections"] if part["key"] == "compare")
    (table,) = (part for part in section["parts"] if part.get("kind") == "table")
    heads = [row["cells"][0] for row in table["rows"]]
    for one in pair:  # every place that either verdict names has its row
        assert {heading(each) for each in one.verdict.findings} <= set(heads)


@pytest.mark.parametrize(
    ("change", "names"),
    [
        ({"place": Place("demo", "hot-dry")}, ("cold", "hot dry")),
        ({"assembly": building.preset("vented-vault")}, None),
        ({"design": "cold winter"}, ("typical", "cold winter")),
        ({"years": 5}, ("now", "the other")),
    ],
)
def test_two_roofs_compared_have_two_names(page, change, names):
    page.comparing.jobs = job(page), dataclasses.replace(job(page), **change)
    found = names_of(*page.comparing.jobs)
    assert found[0] != found[1]
    assert names is None or found == names


def test_compare_with_a_file_that_is_gone(page):
    page.act("compare", "file:gone.toml")
    assert "gone.toml" in page.comparing.trouble


def test_printing_needs_checks_of_this_roof(page):
    page.act("print:pdf")
    assert "Run all checks first" in page.printing.trouble


def test_a_layer_moved_to_the_wrong_side_is_named_at_once(page):
    def said():
        (layers,) = (part for part in page.widget.desk["sections"] if part["key"] == "layers")
        return [part["text"] for part in layers["parts"] if part.get("class") == "dw-trouble"]

    def inward():
        page.act(f"layer:{rows(page).index('vent space')}:up")

    assert said() == []
    inward()
    assert said() == [], "a membrane over the vent space is not plainly wrong"
    inward()
    (warning,) = said()
    assert warning.startswith("Vent space lies on the room side of the insulation")
    assert rows(page).index("vent space") < rows(page).index("insulation"), "nothing is refused"
    page.act("undo")
    assert said() == []


def test_the_tables_say_what_was_not_read(page):
    def sources(head):
        (section,) = (part for part in page.widget.desk["sections"] if part["key"] == "layers")
        (table,) = (part for part in section["parts"] if part.get("head", [""])[0] == head)
        return [row["cells"][table["head"].index("Source")] for row in table["rows"]]

    page.act("search", "polyethylene")
    assert all(source.endswith("(from memory)") for source in sources("Found"))
    page.act("here:3")
    page.act("replace:polyethylene-6-mil")
    assert sources("Layer, inside first")[3] == "ASHRAE Handbook of Fundamentals, permeance … (from memory)"
    page.act("layer:3:permeance", "0.3 perm")
    assert sources("Layer, inside first")[3] == "typed by the reader"
    page.act("layer:1:resistance", "R-0.5")
    assert "typed by the reader" in sources("Layer, inside first")[1]


# --- the beats ------------------------------------------------------------------------


def kept(folder, **more):
    """A roof of the learner's that is in the folder: OSB over the fill, with a room of its own."""
    job = Job(building.preset("vented-vault-osb"), room=Room(relative_humidity=0.33), **more)
    save_job(job, folder / "my-roof.toml")
    return job


def test_a_kept_roof_is_drawn_as_it_is_and_no_beat_changes_it(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    job = kept(tmp_path, tightness=Tightness(7.0))
    page = first_visit("your-roof", tmp_path)
    for _ in page.stage.beats:
        assert page.draft.job == job
        assert not page.unsaved
        (state,) = page.stage.states
        assert state.here.job.assembly == job.assembly
        assert state.indoor == (state.here.winter_room if page.stage.at == 0 else state.here.summer_room)
        page.hear({"kind": "bet", "choice": 0})
        page.hear({"kind": "beat", "number": page.stage.at + 1})
    assert not page.stage.on
    assert page.draft.job == job
    assert page.controls["RH_in"].value == pytest.approx(33)


def test_a_file_that_cannot_be_read_leaves_the_teaching_roof(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "my-roof.toml").write_text("no roof")
    page = first_visit("your-roof", tmp_path)
    assert rows(page) == [each.name for each in building.preset("vented-vault-variable").layers]


@pytest.mark.parametrize("ach", [None, 0.6, 7.0])
def test_the_winter_of_the_roof_is_the_physics(tmp_path, monkeypatch, ach):
    monkeypatch.chdir(tmp_path)
    kept(tmp_path, tightness=None if ach is None else Tightness(ach))
    page = first_visit("your-roof", tmp_path)
    (state,) = page.stage.states
    here, house = weathered.setting(page.draft.job), Tightness(ach or 3.0)
    profile = steady.profile(page.draft.job.assembly, here.winter_room, here.winter)
    leak = Leak.from_blower_door(house.ach50, house.volume, house.share, area=house.area)
    push = stack_pressure(house.height, here.winter_room.temperature, here.winter.temperature)
    wanted = leak.moisture(push, here.winter_room, profile.temperature[profile.wettest]).stays
    assert beats.house_air(state) == pytest.approx(wanted)
    assert state.profile.gain == profile.gain > 0
    assert beats.first_right((state,)) == ("b" if wanted > profile.gain else "a")
    page.hear({"kind": "bet", "choice": 0})
    assert f"{ach or 3:g} air changes" in page.widget.live["stage"]["also"]
    assert ("has none yet" in page.widget.live["stage"]["also"]) == (ach is None)


def test_where_no_air_leaks_the_film_is_the_point(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    kept(tmp_path, tightness=Tightness(0.0))
    (state,) = first_visit("your-roof", tmp_path).stage.states
    assert beats.first_right((state,)) == "a"


@pytest.mark.parametrize("preset", building.presets())
def test_each_roof_dries_the_way_the_physics_say(page, preset):
    page.act("preset", preset)
    page.controls["Season"].value = "summer"
    state = page.state
    name = beats.wet_layer(state)
    found = drying.rates(job(page).assembly, name, state.indoor, state.outdoor)
    assert beats.dries(state) == (max(found.inward, 0), max(found.outward, 0))
    right = "out" if found.outward >= found.inward else "in"
    assert beats.summer_right((state,)) == right
    assert {"vented-vault-closed": "in", "vented-vault": "out"}.get(preset, right) == right
