"""The learner's file: nothing is lost, whatever two windows, a full disk or an old file do."""

import errno
import json
import subprocess
import sys
import tempfile
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.teaching import beliefs, lessons, questions
from dryward.teaching.progress import FILE, FORMAT, Progress

START = datetime(2030, 1, 1, 12, tzinfo=UTC)


class Clock:
    """A clock that the test turns."""

    def __init__(self):
        self.time = START

    def __call__(self):
        self.time += timedelta(microseconds=1)
        return self.time


def finish(progress, lesson, seed=1):
    for question in questions.checks(lesson, seed):
        progress.answered(lesson, question, question.right)


LESSON = st.sampled_from(lessons.pages())
ACT = st.one_of(
    st.tuples(st.just("opened"), LESSON),
    st.tuples(st.just("task"), LESSON, st.text(max_size=20)),
    st.tuples(st.just("units"), st.sampled_from(("us", "si"))),
    st.tuples(st.just("size"), st.integers(12, 40)),
    st.tuples(st.just("predicted"), LESSON),
    st.tuples(st.just("said"), LESSON, st.booleans()),
)


def do(progress, act):
    what, *rest = act
    if what == "opened":
        progress.opened(*rest)
    elif what == "task":
        progress.solved(*rest)
    elif what == "said":
        progress.said_of(rest[0], beliefs.beliefs()[0].id, rest[1])
    elif what == "units":
        progress.set("unit_system", *rest)
    elif what == "size":
        progress.set("type_size", *rest)
    else:
        progress.predicted(rest[0], lessons.lesson(rest[0]).prediction.choices[0].key)


@settings(max_examples=25)
@given(st.lists(ACT, max_size=8))
def test_what_was_kept_is_there_when_opened_again(acts):
    with tempfile.TemporaryDirectory() as folder:
        first = Progress(folder)
        for act in acts:
            do(first, act)
        assert Progress(folder).events() == first.events()


@settings(max_examples=25)
@given(st.lists(st.tuples(st.booleans(), ACT), max_size=10))
def test_two_windows_lose_nothing(acts):
    with tempfile.TemporaryDirectory() as folder:
        windows = Progress(folder), Progress(folder)
        for second, act in acts:
            do(windows[second], act)
        together = {each["id"] for window in windows for each in window.events()}
        assert {each["id"] for each in Progress(folder).events()} == together


def test_four_processes_at_once_lose_nothing(tmp_path):
    code = "import sys; from dryward.teaching.progress import Progress; p = Progress(sys.argv[1])\n"
    code += "for _ in range(15): p.opened('july')"
    running = [subprocess.Popen([sys.executable, "-c", code, str(tmp_path)]) for _ in range(4)]
    assert [each.wait(120) for each in running] == [0] * 4
    assert len(Progress(tmp_path).events("opened")) == 60


def test_a_full_disk_is_one_sentence_and_loses_nothing(tmp_path, monkeypatch):
    progress = Progress(tmp_path)
    progress.predicted("july", "b")
    before = (tmp_path / FILE).read_text()

    def full(_):
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr("os.fsync", full)
        with pytest.raises(BadFile, match=r"dryward-progress\.json cannot be written: the disk is full; your answers"):
            progress.predicted("winter-house", "b")
    assert (tmp_path / FILE).read_text() == before
    assert progress.trouble
    assert {each.name for each in tmp_path.iterdir()} == {FILE}
    progress.opened("july")
    assert progress.trouble == ""
    assert Progress(tmp_path).prediction("winter-house") == "b"


def test_a_folder_that_is_a_file_is_one_sentence(tmp_path):
    (tmp_path / "taken").write_text("x")
    with pytest.raises(BadFile, match=r"cannot be written: .+; your answers are kept while this is open\."):
        Progress(tmp_path / "taken").opened("july")


@pytest.mark.parametrize("text", ["", "{", "[]", '{"format": "other"}', '{"format": "dryward progress"}', "[" * 5000])
def test_an_unreadable_file_is_kept_aside(tmp_path, text):
    (tmp_path / FILE).write_text(text)
    progress = Progress(tmp_path)
    assert "kept aside" in progress.trouble
    progress.opened("july")
    assert (tmp_path / "dryward-progress-unreadable-1.json").read_text() == text
    assert len(Progress(tmp_path).events()) == 1


JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-5, 5) | st.text(max_size=5) | st.sampled_from(("july", START.isoformat())),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=4), inner, max_size=3),
    max_leaves=6,
)
EVENT = st.fixed_dictionaries(
    {
        "id": JSON,
        "when": JSON,
        "kind": st.sampled_from(("answer", "prediction", "setting", "opened", "task", "belief", "x")),
    },
    optional=dict.fromkeys(
        ("lesson", "question", "right", "belief", "choice", "name", "value", "task", "still", "seed", "text"), JSON
    ),
)


@settings(max_examples=150)
@given(
    st.fixed_dictionaries(
        {"format": st.just("dryward progress"), "version": st.sampled_from(range(1, FORMAT.version + 1))},
        optional={
            "events": st.lists(EVENT, max_size=3) | JSON,
            "predictions": JSON,
            "settings": JSON,
            "answers": st.lists(EVENT, max_size=2) | JSON,
            "saved": JSON,
        },
    )
)
def test_no_file_whatever_brings_more_than_a_sentence(body):
    with tempfile.TemporaryDirectory() as folder:
        Path(folder, FILE).write_text(json.dumps(body))
        progress = Progress(folder)
        progress.reviews()
        progress.resume()
        progress.beliefs()
        progress.first_tries("july")
        progress.still_held("july")
        progress.prediction("july")
        progress.setting("unit_system")
        progress.opened("july")
        assert progress.trouble == ""
        assert len(Progress(folder).events("opened", "july")) >= 1


def test_a_newer_file_is_left_alone(tmp_path):
    text = json.dumps({"format": "dryward progress", "version": FORMAT.version + 1, "events": []})
    (tmp_path / FILE).write_text(text)
    progress = Progress(tmp_path)
    assert "newer version" in progress.trouble
    with pytest.raises(
        BadFile, match="was written by a newer version of this kit; update the kit, nothing was changed"
    ):
        progress.opened("july")
    assert (tmp_path / FILE).read_text() == text


def test_the_first_version_still_opens(tmp_path):
    old = {
        "format": "dryward progress",
        "version": 1,
        "saved": "2029-12-01T10:00:00+00:00",
        "predictions": {"july": "b"},
        "settings": {"unit_system": "si"},
        "answers": [{"lesson": "july", "question": "july/colder_room", "seed": 1, "right": True, "belief": ""}],
    }
    (tmp_path / FILE).write_text(json.dumps(old))
    one, two = Progress(tmp_path), Progress(tmp_path)
    assert one.prediction("july") == "b"
    assert one.setting("unit_system") == "si"
    assert len(one.events("answer")) == 1
    one.opened("july")
    two.opened("july")
    found = Progress(tmp_path)
    assert len(found.events()) == 5
    assert json.loads((tmp_path / FILE).read_text())["version"] == FORMAT.version


def test_the_second_version_still_opens(tmp_path):
    event = {"id": "a", "when": START.isoformat(), "kind": "answer", "lesson": "july", "question": "q", "right": True}
    (tmp_path / FILE).write_text(json.dumps({"format": "dryward progress", "version": 2, "events": [event]}))
    assert Progress(tmp_path).events() == (event,)


def test_first_tries_are_kept_whatever_is_clicked_later(tmp_path):
    progress = Progress(tmp_path, Clock())
    one, two, *others = questions.checks("july", None)
    for asked in (one, two):  # clicked through until it is right
        for choice in sorted(asked.choices, key=lambda each: each.right):
            progress.answered("july", asked, choice)
    for asked in others:
        progress.answered("july", asked, asked.right)
    assert progress.finished("july")
    tries = (False, False, *(True for _ in others))
    assert progress.first_tries("july") == tries
    other = questions.checks("july", 1)[0]  # new numbers: a new first try
    progress.answered("july", other, other.right)
    assert Progress(tmp_path).first_tries("july") == (*tries, True)
    assert Progress(tmp_path).first_tries("winter-house") == ()


def test_the_third_version_still_opens_on_its_course(tmp_path):
    event = {
        "id": "a",
        "when": "2026-01-02T00:00:00+00:00",
        "kind": "setting",
        "name": "pathway",
        "value": "eight-week",
    }
    (tmp_path / FILE).write_text(json.dumps({"format": "dryward progress", "version": 3, "events": [event]}))
    found = Progress(tmp_path)
    assert (found.setting("pathway"), found.trouble) == ("nine-evenings", "")


def test_what_is_still_said_is_kept_and_the_last_word_counts(tmp_path):
    progress = Progress(tmp_path, Clock())
    progress.said_of("july", "barrier-always-inside", True)
    progress.said_of("july", "two-barriers-twice-as-good", True)
    progress.said_of("july", "barrier-always-inside", False)
    found = Progress(tmp_path)
    assert found.still_held("july") == {"barrier-always-inside": False, "two-barriers-twice-as-good": True}
    assert found.still_held("winter-house") == {}
    with pytest.raises(UnknownName, match='There is no belief "no-such"'):
        progress.said_of("july", "no-such", True)


def test_a_lesson_comes_back_after_two_days_and_after_two_weeks(tmp_path):
    clock = Clock()
    progress = Progress(tmp_path, clock)
    finish(progress, "july")
    assert progress.reviews() == ()
    clock.time = START + timedelta(days=2, hours=1)
    assert [(each.lesson, each.stage) for each in progress.reviews()] == [("july", 1)]
    finish(progress, "july", 2)
    assert progress.reviews() == ()
    clock.time = START + timedelta(days=14, hours=1)
    assert [(each.lesson, each.stage) for each in progress.reviews()] == [("july", 2)]
    finish(progress, "july", 3)
    clock.time = START + timedelta(days=400)
    assert progress.reviews() == ()


def test_a_lesson_is_finished_by_a_right_answer_to_each_check(tmp_path):
    progress = Progress(tmp_path, Clock())
    asked = questions.checks("july", 1)
    wrong = next(each for each in asked[0].choices if not each.right)
    progress.answered("july", asked[0], wrong)
    for each in asked[1:]:
        progress.answered("july", each, each.right)
    assert progress.finished("july") is None
    assert progress.beliefs() == ((wrong.belief, 1),)
    progress.answered("july", asked[0], asked[0].right)
    assert progress.finished("july") > START


def test_it_goes_on_where_it_stopped(tmp_path):
    progress = Progress(tmp_path, Clock())
    assert progress.resume() == lessons.pages()[0]
    progress.opened("july")
    assert Progress(tmp_path).resume() == "july"
    finish(progress, "july")
    assert progress.resume() == lessons.pages()[0]
    for id in lessons.pages():
        finish(progress, id)
    assert progress.resume() is None


def test_settings_have_a_start_and_a_range(tmp_path):
    progress = Progress(tmp_path)
    assert progress.setting("unit_system") == "us"
    progress.set("type_size", 24)
    progress.set("projector", True)
    assert Progress(tmp_path).setting("type_size") == 24
    assert Progress(tmp_path).setting("projector") is True
    with pytest.raises(OutOfRange, match="Type size is 400; it must be 12 to 40 points"):
        progress.set("type_size", 400)
    with pytest.raises(OutOfRange, match="The setting unit_system is 'metric'; it must be us or si"):
        progress.set("unit_system", "metric")
    with pytest.raises(UnknownName, match='There is no setting "colour"'):
        progress.set("colour", "red")
    with pytest.raises(UnknownName, match='There is no setting "colour"'):
        progress.setting("colour")


def test_names_that_are_not_there_are_refused(tmp_path):
    progress = Progress(tmp_path)
    with pytest.raises(UnknownName, match='There is no lesson "jully"'):
        progress.opened("jully")
    with pytest.raises(UnknownName, match='There is no choice "z"'):
        progress.predicted("july", "z")
    assert progress.events() == ()


def test_without_a_folder_it_is_the_one_the_program_runs_in(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    Progress().opened("july")
    assert Path(tmp_path, FILE).exists()


#: Slips and keys of choices, lesson by lesson, that files of learners hold.
SLIPS = """
adds-perms averages-layers tightest-is-all inches-not-r counts-from-wrong-side half-way temperature-times-rh
rule-of-fifths dew-point-is-air-temperature class-limits-mixed middle-of-the-curve forgets-saturation
swaps-vent-ratios all-area-at-one-end area-units-mixed forgets-density percent-of-wet-weight forgets-sixty
twenty-too-early correction-wrong-way flow-with-square falls-in-step rh-alone water-leaves-on-cooling thickest-layer
line-moves-wrong-way only-at-night wrong-side-of-the-film treats-the-sign trust-the-trend-later sun-does-not-matter
film-is-a-check-valve wrong-tool months-stand-alone coldest-is-wettest cold-face-always-wet starts-with-dry-air
"""
# Lesson 7 once had a fifth choice: who made it is asked again.
KEYS = "abcd abc abc abc abcd abcd abcd abcd abcd abcd abcd abcd abcd abcde abcde abcd abcd abcd"
# Of lesson 17 another question is asked now.
RIGHT = "dabbcdccabbbbccbbb"


def test_ids_and_keys_that_old_files_hold_stay():
    """One that is gone or renamed would lose what a learner did."""
    assert set(SLIPS.split()) <= {each.id for each in beliefs.slips()}
    found = [{choice.key for choice in each.prediction.choices} for each in lessons.lessons()]
    assert all(set(old) <= now for old, now in zip(KEYS.split(), found, strict=False))
    assert "".join(each.prediction.right for each in lessons.lessons()).startswith(RIGHT)


def test_what_was_bet_before_counts_once_and_only_where_it_was_wrong(tmp_path):
    found = Progress(tmp_path)
    found.predicted("where-it-gets-wet", "c")
    found.predicted("where-it-gets-wet", "d")  # the second word is no first one
    pair = ("one-check-decides",)
    found.bet("where-it-gets-wet", "check-osb", "gone", True, "", pair)
    found.bet("where-it-gets-wet", "check-closed", "stays", True, "one-check-decides", pair)
    held = found.held_before("where-it-gets-wet")
    assert held["no-drops-no-problem"]
    assert not held["dew-point-is-a-place"]
    assert not held["one-check-decides"], "of this roof it was so"
    found.bet("where-it-gets-wet", "drops-milder", "dry", False, "no-drops-no-problem", ("no-drops-no-problem",))
    assert Progress(tmp_path).held_before("where-it-gets-wet") == found.held_before("where-it-gets-wet") != {}
    assert found.held_before("july") == {}
