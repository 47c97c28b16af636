"""A new lesson works as it is made; an instructor's own stand beside the kit's; a broken one is told and left out."""

import json
import re
import runpy
import subprocess
import sys
from pathlib import Path

import pytest

from dryward import cli, panels
from dryward.checks import BadFile, OutOfRange
from dryward.course.start import page as start
from dryward.panels.learner import Settings
from dryward.school import folders
from dryward.teaching import guide, lessons, notebooks, pathways, practical, questions
from dryward.teaching.progress import Progress

KITS = len(lessons.lessons())


@pytest.fixture
def own(tmp_path, monkeypatch):
    """A folder of one's own lessons, with a new one in it."""
    folder = tmp_path / "own"
    folder.mkdir()
    monkeypatch.setenv(lessons.OWN, str(folder))
    lessons.forget()
    notebooks.new("own-trial", folder)
    yield folder
    lessons.forget()


def settings(tmp_path):
    return Settings(Progress(tmp_path / "learner"))


def change(folder, file, was, put):
    """Change a file of the new lesson."""
    path = folder / "own_trial" / file
    text = path.read_text("utf-8")
    assert was in text
    path.write_text(text.replace(was, put, 1), "utf-8")
    lessons.forget()


def test_a_new_lesson_is_listed_last_and_counts_everywhere(own, tmp_path):
    this = lessons.lessons()[-1]
    assert (this.id, this.own, this.number, this.file) == ("own-trial", True, KITS, f"{KITS}-own-trial.ipynb")
    assert lessons.troubles() == ()
    assert len(lessons.lessons()) == KITS + 1
    assert pathways.pathway("self-study").sessions[-1].lessons == ("own-trial",)
    progress = Progress(tmp_path)
    progress.predicted("own-trial", "a")
    assert Progress(tmp_path).prediction("own-trial") == "a"
    shown = panels.page("start", settings=settings(tmp_path))
    assert isinstance(shown, start.PAGE)
    assert "Own trial" in json.dumps(shown.desk())
    assert "## If the vote splits" in guide.sheet("own-trial")


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_page_of_a_new_lesson_follows_its_sliders(own, tmp_path, system):
    page = panels.page("own-trial", unit_system=system, settings=settings(tmp_path))
    alts = set()
    for control in page.controls.values():
        start_at = control.value
        for value in (control.min, control.max):
            control.value = value
            assert page.trouble == ""
            assert page.show(page.readouts["dew_point"], "temperature") in page.sentence
            alts |= set(page.alts)
        control.value = start_at
    assert len(alts) > 2
    assert page.picture[8:12] == b"WEBP"
    assert page.steps(page.state)
    assert [each.words for each in page.controls.values()][2] == "Temperature of the face"
    assert set(page.strips_shown) == set(page.controls)
    assert page.sentence.startswith(page.verdict.state.capitalize())


def test_the_checks_of_a_new_lesson_are_clear_for_every_seed(own):
    for seed in (None, *range(30)):
        for question in questions.checks("own-trial", seed, "si"):
            assert sum(each.right for each in question.choices) == 1
            assert len(question.choices) == 3
    assert practical.tasks("own-trial") == ()


def test_the_tests_made_with_a_new_lesson_pass(own, tmp_path):
    tests = tmp_path / "tests"
    notebooks.new("dry-corner", own, tests)
    for path in (Path(__file__).parents[1] / "screens", tests):
        sys.path.insert(0, str(path))
    try:
        made = runpy.run_path(str(tests / "test_dry_corner.py"))
        made["test_every_place_is_the_physics"]("us", tmp_path / "a")
        made["test_checks_reply"](tmp_path / "b")
    finally:
        del sys.path[:2]


def test_a_new_lesson_is_plain_python_and_its_number_is_worked(own):
    ruff = Path(sys.executable).with_name("ruff")
    done = subprocess.run([ruff, "check", "--config", "pyproject.toml", own], capture_output=True, text=True)
    assert done.returncode == 0, done.stdout
    assert notebooks.output(lessons.lesson("own-trial")) == "dew point of the room: 44.6 °F\n"


def test_a_name_that_is_no_lesson_or_is_taken_is_one_sentence(own):
    with pytest.raises(OutOfRange, match="such as wet-corner, not "):
        notebooks.new("Wet Corner", own)
    with pytest.raises(BadFile, match=r"for the lesson own-trial already; nothing was made\."):
        notebooks.new("own-trial", own)


@pytest.mark.parametrize(
    ("file", "was", "put", "said"),
    [
        ("lesson.toml", "minutes = 20", "", 'own_trial/lesson.toml lacks the key "minutes".'),
        ("lesson.toml", "minutes = 20", "minutes = = 20", "own_trial/lesson.toml cannot be read"),
        ("lesson.toml", f"number = {KITS}", "number = 5", "has the number 5, which is another lesson's."),
        ("lesson.toml", '"read-the-air"', '"read-air"', 'There is no lesson "read-air"; did you mean read-the-air'),
        ("questions.py", "def dew", "def def dew", "own_trial/questions.py, line "),
    ],
)
def test_a_broken_lesson_is_told_and_does_not_take_down_the_others(own, tmp_path, file, was, put, said):
    change(own, file, was, put)
    (trouble,) = lessons.troubles()
    assert trouble.startswith("Your lesson own_trial is left out. ")
    assert said in trouble
    assert len(lessons.lessons()) == KITS
    assert json.dumps(trouble) in json.dumps(panels.page("start", settings=settings(tmp_path)).desk())
    assert panels.page("july", settings=settings(tmp_path)).sentence


def test_a_page_that_stops_is_told_with_its_line(own, tmp_path):
    change(own, "page.py", "from .scene import", "from .scene import Nothing,")
    with pytest.raises(BadFile, match=r"Your lesson own_trial cannot be opened: page\.py, line \d+: ImportError, "):
        panels.page("own-trial", settings=settings(tmp_path))


def test_a_folder_that_is_gone_is_told(tmp_path, monkeypatch):
    monkeypatch.setenv(lessons.OWN, str(tmp_path / "gone"))
    assert lessons.troubles() == (f"Your own lessons are looked for in {tmp_path / 'gone'}, which is no folder.",)
    assert len(lessons.lessons()) == KITS


def test_the_notebooks_of_own_lessons_are_made_beside_the_kits(own, tmp_path):
    (name,) = notebooks.write_own(tmp_path)
    body = json.loads((tmp_path / name).read_text("utf-8"))
    assert body["metadata"]["dryward"] == {"lesson": "own-trial"}
    assert 'panels.page("own-trial")' in "".join(body["cells"][1]["source"])
    with folders.served_lessons() as served:
        assert len(list(served.glob("*.ipynb"))) == KITS + 1
    assert not served.exists()


def test_without_own_lessons_the_kits_own_folder_is_served():
    with folders.served_lessons() as served:
        assert served == folders.shipped_lessons()


def test_the_command_remembers_a_folder_makes_a_lesson_and_forgets(tmp_path, monkeypatch, capsys):
    monkeypatch.delenv(lessons.OWN)
    monkeypatch.setattr(lessons, "_remembered", lambda: tmp_path / "config" / "own-lessons.txt")
    assert cli.main(["lessons", "--own", str(tmp_path / "mine"), "--new", "cold-corner"]) == 0
    assert lessons.own_folder() == tmp_path / "mine"
    assert lessons.lesson("cold-corner").own
    said = capsys.readouterr().out
    assert re.search(rf"A new lesson, cold-corner, number {KITS}:", said)
    assert cli.main(["lessons", "--own", "-"]) == 0
    assert lessons.own_folder() is None
    assert len(lessons.lessons()) == KITS
