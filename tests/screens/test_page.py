"""A page without a browser: what it offers, its lock, its messages, its errors."""

import asyncio
import inspect
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor

import pytest

from dryward import building, panels, units
from dryward.checks import OutOfRange, UnknownName
from dryward.panels import protocol
from dryward.panels.learner import Settings
from dryward.panels.page import Page
from dryward.physics import steady
from dryward.teaching import lessons
from dryward.teaching.progress import Progress
from dryward.verdict import of_steady
from dryward.weather import Air

ID = "where-it-gets-wet"
#: A lesson whose beats are taken away, as one of an instructor's own has none: its page is covered until a bet is made.
BEHIND_ITS_BET = "july"


@pytest.fixture
def settings(tmp_path):
    """Of one who made every prediction before."""
    kept = Settings(Progress(tmp_path))
    for id in (ID, BEHIND_ITS_BET):
        kept.predicted(id, lessons.lesson(id).prediction.right)
    return kept


@pytest.fixture
def page(settings):
    """The free page of one who comes back."""
    return panels.page(ID, unit_system="us", settings=settings)


@pytest.fixture
def fresh(tmp_path, monkeypatch):
    """A page that waits for its bet and has no beats."""
    monkeypatch.setattr(lessons.module(BEHIND_ITS_BET, "page").PAGE, "play", None)
    return panels.page(BEHIND_ITS_BET, unit_system="us", settings=Settings(Progress(tmp_path / "new")))


def test_the_first_state_is_the_physics(page):
    state = steady.profile(
        building.preset("vented-vault-osb"), Air(units.to_si(70, "degF"), 0.4), Air(units.to_si(20, "degF"), 0.8)
    )
    assert page.readouts["gain"] == pytest.approx(state.gain, rel=1e-9)
    assert page.readouts["dew_point_depth"] == pytest.approx(state.dew_point_depth, rel=1e-9)
    assert page.readouts["wet_plane"] == pytest.approx(state.wet_planes[0].depth, rel=1e-9)
    assert page.picture[:4] == b"RIFF"
    assert page.picture[8:12] == b"WEBP"


def test_setting_a_value_moves_everything(page):
    before = page.picture, page.sentence, dict(page.readouts)
    page.controls["RH_in"].value = 60
    assert page.controls["RH_in"].si == pytest.approx(0.6)
    assert page.picture != before[0]
    assert page.sentence != before[1]
    assert page.readouts["gain"] > before[2]["gain"]
    assert page.widget.live["sentence"] == page.sentence


def test_the_ground_is_sent_only_when_it_is_another(page, monkeypatch):
    sent = []
    monkeypatch.setattr(page.widget, "send_state", lambda key=None: sent.append(set(key)))
    for value, keys in ((41, {"live"}), (42, {"live"})):
        page.controls["RH_in"].value = value
        assert sent.pop() == keys
    for value in (100, -20):  # over the end of an axis and back
        page.controls["T_out"].value = value
        assert sent.pop() == {"live", "grounds"}
        assert page.widget.grounds == [ground for ground, _ in page.layers]
    page.hear({"kind": "system", "value": "si"})
    assert {"live", "grounds"} in sent


def test_the_whole_picture_is_drawn_only_when_asked_for(page, monkeypatch):
    drawn = []
    (picture,) = page.live_pictures()
    render = picture.render
    monkeypatch.setattr(picture, "render", lambda state: drawn.append(1) or render(state))
    page.controls["RH_in"].value = 60
    assert drawn == []
    assert page.picture == page.picture == page.kinds[0]("us").render(page.views(page.state))
    assert drawn == [1]
    page.controls["RH_in"].value = 61
    assert page.picture == page.kinds[0]("us").render(page.views(page.state))


def test_every_control_to_both_ends_and_every_choice(page):
    for control in page.controls.values():
        start = control.value
        for value in control.options or (control.min, control.max):
            control.value = value
            assert control.value == value
            assert page.trouble == ""
            assert page.sentence.endswith(".")
        control.value = start


@pytest.mark.parametrize(
    ("name", "value", "sentence"),
    [
        ("RH_in", 140, r"Indoor humidity is 140 %; it must be 15 to 70 %\."),
        ("T_out", -60, r"Outdoor temperature is −60 °F; it must be −20 to 100 °F\."),
        ("M_in", 0, r"Inner membrane is 0 perm; it must be 0\.05 to 100 perm\."),
    ],
)
def test_beyond_the_ends_is_one_sentence(page, name, value, sentence):
    kept = page.controls[name].value
    with pytest.raises(OutOfRange, match=sentence):
        page.controls[name].value = value
    assert page.controls[name].value == kept


def test_unknown_choice_lesson_and_units(page, settings):
    with pytest.raises(UnknownName, match='There is no choice of outer layer "ozb"; did you mean osb'):
        page.controls["Outer"].value = "ozb"
    with pytest.raises(
        UnknownName, match='There is no lesson page "where-it-gets-wett"; did you mean where-it-gets-wet'
    ):
        panels.page("where-it-gets-wett", settings=settings)
    with pytest.raises(UnknownName, match='There is no unit system "metric"'):
        panels.page(ID, unit_system="metric", settings=settings)


def test_both_unit_systems_are_one_roof(page):
    us = dict(page.readouts)
    page.hear({"kind": "system", "value": "si"})
    assert page.unit_system == "si"
    assert page.controls["T_out"].value == pytest.approx(-6.667, abs=1e-3)
    assert page.readouts.pop("state") == us.pop("state") == "wet"
    for name, value in us.items():
        assert page.readouts[name] == pytest.approx(value, rel=1e-9)
    assert "mm" in page.sentence
    assert page.widget.frame["system"] == "si"


def test_the_prediction_unlocks_and_is_remembered(fresh, tmp_path):
    assert fresh.widget.frame["locked"]
    fresh.hear({"kind": "predict", "choice": 3})
    assert not fresh.widget.frame["locked"]
    assert fresh.widget.frame["prediction"]["chosen"] == 3
    again = panels.page(fresh.id, settings=Settings(Progress(tmp_path / "new")))
    assert again.widget.frame["prediction"]["chosen"] == 3
    fresh.hear({"kind": "predict", "choice": None})
    assert fresh.widget.frame["locked"]


def test_nothing_of_the_answer_is_sent_before_a_bet(fresh):
    """Not the picture nor its words, no number, no sentence, no state along a slider."""
    shown = fresh.picture, fresh.sentence  # what code asks for is there
    assert all(shown)
    live = fresh.widget.live
    for empty in ("pictures", "alts", "readouts", "strips", "sentence", "state", "steps"):
        assert not live[empty], empty
    assert fresh.widget.grounds == []
    fresh.hear({"kind": "predict", "choice": 0})
    assert fresh.widget.live["pictures"]
    assert fresh.widget.live["sentence"] == fresh.sentence


def test_nothing_is_revealed_before_a_prediction(fresh):
    fresh.hear({"kind": "reveal"})
    assert not fresh.widget.frame["reveal"]
    fresh.hear({"kind": "predict", "choice": 0})
    fresh.hear({"kind": "reveal"})
    assert fresh.widget.frame["reveal"]


def test_instructor_mode_unlocks_counts_hands_and_is_kept(fresh, tmp_path):
    fresh.hear({"kind": "instructor", "value": True})
    assert not fresh.widget.frame["locked"]
    for by in (1, 1, -1, -1, -1, 1):
        fresh.hear({"kind": "hands", "choice": 2, "by": by})
    assert fresh.widget.frame["prediction"]["hands"][:3] == [0, 0, 1]
    fresh.hear({"kind": "reveal"})
    assert fresh.widget.frame["reveal"]
    assert Progress(tmp_path / "new").setting("instructor") is True


def test_a_move_of_the_browser(page):
    page.widget.moves = {"serial": 7, "system": "us", "values": {"T_out": 0.0, "RH_in": 50.0}}
    assert page.controls["T_out"].value == 0.0
    assert page.widget.live["seen"] == 7
    page.widget.moves = {"serial": 8, "system": "si", "values": {"T_out": 20.0}}  # sent before a switch: too late
    assert page.controls["T_out"].value == 0.0


@pytest.mark.parametrize(
    ("name", "text", "value"),
    [
        ("T_out", "20 F", 20.0),
        ("T_out", "-7 C", 19.4),
        ("M_in", "0.7 perm", 0.7),
        ("M_in", "sd 2.5 m", 1.398),
        ("M_in", "0,7", 0.7),
        ("RH_in", "55", 55.0),
        ("RH_in", "55 %", 55.0),
    ],
)
def test_typed_numbers(page, name, text, value):
    page.hear({"kind": "typed", "name": name, "text": text})
    assert page.widget.live["errors"] == {}
    assert page.controls[name].value == pytest.approx(value, rel=1e-3)


def test_a_typed_error_is_taken_back(page):
    before = page.controls["T_out"].value
    page.hear({"kind": "typed", "name": "T_out", "text": "hot"})
    assert set(page.widget.live["errors"]) == {"T_out"}
    page.hear({"kind": "typed", "name": "T_out", "text": None})
    assert page.widget.live["errors"] == {}
    assert page.controls["T_out"].value == before


@pytest.mark.parametrize(
    ("name", "text", "sentence"),
    [
        ("T_out", "hot", 'The temperature "hot" is not understood; write it like "20 F" or "-7 C".'),
        ("RH_in", "140", "Indoor humidity is 140 %; it must be 15 to 70 %."),
        ("M_in", "3/4 in", 'The permeance "3/4 in" is not understood; write it like "0.7 perm" or "sd 2.5 m".'),
        ("M_in", "sd 0 m", 'The permeance "sd 0 m" is not understood; write it like "0.7 perm" or "sd 2.5 m".'),
    ],
)
def test_a_bad_entry_is_one_sentence_and_changes_nothing(page, name, text, sentence):
    before = page.controls[name].value, page.picture
    page.hear({"kind": "typed", "name": name, "text": text})
    assert page.widget.live["errors"] == {name: sentence}
    assert (page.controls[name].value, page.picture) == before
    page.hear({"kind": "typed", "name": name, "text": str(before[0])})
    assert page.widget.live["errors"] == {}


def test_what_physics_refuses_is_one_sentence_and_the_picture_stays(page, monkeypatch):
    before = page.picture
    monkeypatch.setattr(page, "compute", lambda at: (_ for _ in ()).throw(OutOfRange("Too hot.")))
    page.refresh()
    assert page.trouble == page.widget.live["trouble"] == "Too hot."
    assert page.picture == before


def test_a_mistake_in_a_page_is_raised_from_code_and_said_in_the_browser(page, monkeypatch):
    monkeypatch.setattr(page, "compute", lambda at: {}["nothing"])
    with pytest.raises(KeyError, match="nothing"):
        page.controls["RH_in"].value = 50
    page.widget.moves = {"serial": 1, "system": "us", "values": {"RH_in": 30.0}}
    assert page.widget.live["trouble"] == (
        "This page could not do that (KeyError). Run its cell again to start afresh."
    )


#: What no page of this version sends: an unknown kind, fields missing, of another kind or beyond what there is.
MALFORMED = (
    None,
    [],
    "typed",
    {},
    {"kind": 7},
    {"kind": ["moved"]},
    {"kind": "erase"},
    {"kind": "__init__"},
    {"kind": "typed"},
    {"kind": "typed", "name": "T_out", "text": 20},
    {"kind": "typed", "name": "T_outt", "text": "20"},
    {"kind": "typed", "name": "Outer", "text": "osb"},
    {"kind": "moved", "serial": "1", "system": "us", "values": {}},
    {"kind": "moved", "serial": 1, "system": "us", "values": [20.0]},
    {"kind": "action", "name": "refresh"},
    {"kind": "desk", "key": None, "value": ""},
    {"kind": "desk", "key": "task:start:no-such-task", "value": ""},
    {"kind": "desk", "key": "task:", "value": ""},
    {"kind": "predict", "choice": 99},
    {"kind": "predict", "choice": -1},
    {"kind": "predict", "choice": True},
    {"kind": "hands", "choice": 99, "by": 1},
    {"kind": "answer", "number": 99, "choice": 0},
    {"kind": "answer", "number": -1, "choice": 0},
    {"kind": "answer", "number": 0, "choice": 99},
    {"kind": "fold", "key": "arithmetic", "open": "yes"},
    {"kind": "projector", "value": 1},
    {"kind": "narrow", "value": 1},
)


@pytest.mark.parametrize("content", MALFORMED, ids=repr)
def test_what_no_page_sends_is_one_sentence_and_changes_nothing(page, content):
    before = page.at, page.result, dict(page.widget.frame)
    page.hear(content)
    assert page.trouble == "This page did not understand what the browser sent; run its cell again."
    assert page.widget.live["trouble"] == page.trouble
    assert (page.at, page.result, page.widget.frame) == before
    page.hear({"kind": "typed", "name": "T_out", "text": "20"})
    assert page.trouble == ""


def test_a_page_drawn_by_another_version_says_so(page):
    page.hear({"kind": "opened", "version": protocol.VERSION + 1})
    assert page.trouble == "This page was drawn by another version of the kit; run its cell again."


def test_values_of_controls_that_are_not_there_or_cannot_be_are_left(page):
    kept = page.at
    page.widget.moves = {"serial": 3, "system": "us", "values": {"Tout": 5, "T_out": "warm", "Outer": ["osb"]}}
    assert page.at == kept
    assert set(page.widget.live["errors"]) == {"T_out", "Outer"}
    assert page.trouble == ""


@pytest.mark.parametrize("kind", protocol.MESSAGES)
def test_each_message_has_the_method_that_answers_it(kind):
    taken = list(inspect.signature(getattr(Page, f"_on_{kind}")).parameters)[1:]
    assert [name for name in taken if name != "buffers"] == list(protocol.MESSAGES[kind])


def test_the_browser_sends_and_reads_what_the_tables_have(page):
    script = page.widget._esm
    sent = set(re.findall(r'kind: "([a-z_]+)"', script))
    assert sent | {"moved"} == set(protocol.MESSAGES)
    assert f"const VERSION = {protocol.VERSION};" in script
    for name, table in (("frame", protocol.Frame), ("live", protocol.Live)):
        read = set(re.findall(rf"\b{name}\.([a-z_]+)", script))
        assert read == set(table.__annotations__) == set(getattr(page.widget, name)), name


def test_strips_agree_with_the_physics(page):
    for name in ("T_out", "RH_in", "M_in"):
        control, spans = page.controls[name], page.widget.live["strips"][name]["spans"]
        start = control.value
        for part in (0.02, 0.31, 0.55, 0.62, 0.98):
            left, right = control.scale.left, control.scale.right
            control.put(left * (right / left) ** part if control.slider.log else left + part * (right - left))
            found = of_steady(page.compute(page.at).profile).state
            assert [state for low, high, state in spans if low <= part <= high] == [found], (name, part)
        control.put(start)
    assert page.widget.live["strips"]["Outer"]["words"] == (
        'Dry with "open sheet (50 perm)", "fiberboard (20 perm)". Wet with "OSB (1.5 perm)", "closed (0.1 perm)"'
    )


def test_a_slider_of_degrees_meets_in_one_printed_number(settings):
    """75.5 and 76 degF both print as 76, and 76 is damp: the first stretch is said to lie below it."""
    page = panels.page("july", unit_system="us", settings=settings)
    assert page.widget.live["strips"]["T_in"]["words"] == "Wet below 76, damp from 76 °F on"


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_arithmetic_ends_at_the_gain_or_at_the_humidity(settings, system):
    page = panels.page(ID, unit_system=system, settings=settings)
    assert page.widget.live["steps"] == []
    page.hear({"kind": "fold", "key": "arithmetic", "open": True})
    steps = page.widget.live["steps"]
    assert steps[-1]["result"] == page.show(page.readouts["gain"], "vapor flux")
    page.controls["Outer"].value = "open-sheet"
    nothing, humid = page.widget.live["steps"][-2:]
    assert nothing["result"].startswith("0 ")
    assert humid["result"] == page.show(page.readouts["highest_relative_humidity"], "relative humidity")


def test_checks_reply_to_every_answer(page):
    for number, question in enumerate(page.questions.asked):
        for choice, answer in enumerate(question.choices):
            page.hear({"kind": "answer", "number": number, "choice": choice})
            shown = page.widget.frame["questions"][number]
            assert shown["right"] == answer.right
            assert shown["reply"]
    prompts = [check["prompt"] for check in page.widget.frame["questions"]]
    page.hear({"kind": "new_questions"})
    assert [check["prompt"] for check in page.widget.frame["questions"]] != prompts
    assert all(check["chosen"] is None for check in page.widget.frame["questions"])


def test_projector_draws_another_picture(page):
    before = page.picture
    page.hear({"kind": "projector", "value": True})
    assert page.picture != before
    page.hear({"kind": "projector", "value": False})
    assert page.picture == before


def test_a_narrow_place_has_a_picture_of_its_own(page):
    before, state = page.picture, page.state
    page.hear({"kind": "narrow", "value": True})
    assert page.widget.frame["narrow"]
    assert page.state is state, "nothing is computed again"
    assert page.live_pictures()[0].width < 400
    assert page.picture != before
    page.hear({"kind": "projector", "value": True})
    assert not page.widget.frame["projector"], "a phone is no projector"
    page.hear({"kind": "projector", "value": False})
    page.hear({"kind": "narrow", "value": False})
    assert page.picture == before


def test_an_unwritable_folder_is_said_and_stops_nothing(tmp_path):
    (tmp_path / "folder").write_text("a file where the folder should be")
    page = panels.page(ID, settings=Settings(Progress(tmp_path / "folder")))
    page.hear({"kind": "predict", "choice": 1})
    assert "cannot be" in page.widget.frame["unkept"]
    assert not page.widget.frame["locked"]


def test_what_stands_where_no_kernel_runs(page):
    assert repr(page) == repr(page.widget)
    bundle = page._repr_mimebundle_()
    shown = bundle[0] if isinstance(bundle, tuple) else bundle
    assert shown["text/plain"] == repr(page)
    assert "application/vnd.jupyter.widget-view+json" in shown


def test_a_slow_page_previews_and_then_runs_once(page, monkeypatch):
    runs = []
    real = page.compute
    monkeypatch.setattr(page, "slow", True, raising=False)
    monkeypatch.setattr(page, "compute", lambda at: runs.append(at.T_out) or real(at))
    monkeypatch.setattr(page, "preview", lambda at: real(at))

    async def drag():
        for serial in range(1, 6):
            page.widget.moves = {"serial": serial, "system": "us", "values": {"T_out": float(serial)}}
            assert page.widget.live["busy"]
        assert runs == []
        await asyncio.sleep(0.6)

    # On a thread of its own: a browser test before this one may hold this thread's loop.
    with ThreadPoolExecutor(1) as apart:
        apart.submit(asyncio.run, drag()).result()
    assert runs == [units.to_si(5.0, "degF")]
    assert not page.widget.live["busy"]


def test_the_kernel_stays_light():
    ask = (
        "import sys; from dryward import panels; panels.page('where-it-gets-wet').picture;"
        "print([m for m in ('numba', 'scipy', 'pvlib', 'CoolProp', 'pandas') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
