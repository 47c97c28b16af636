"""What is written from the folders of the lessons is what they say now."""

import json
import re
import shutil
from pathlib import Path

import pytest

import made_up
from dryward import cli, language
from dryward.checks import BadFile
from dryward.teaching import guide, lessons, notebooks

CHECKOUT = Path(__file__).parents[2]
LESSONS = CHECKOUT / "lessons"


def test_the_files_are_as_the_folders_say():
    """After a change of a lesson: ``dryward lessons --write``."""
    assert notebooks.stale(LESSONS) == ()
    assert f"\n{notebooks.table()}\n" in (CHECKOUT / "README.md").read_text("utf-8")


@pytest.fixture
def copy(tmp_path):
    """A copy of what is written."""
    shutil.copytree(LESSONS, tmp_path / "lessons", ignore=shutil.ignore_patterns("pictures"))
    return tmp_path / "lessons"


@pytest.mark.parametrize("name", ["05-where-it-gets-wet.ipynb", "guide/pathways.md", "guide/handouts/predictions.md"])
def test_a_file_that_was_changed_by_hand_is_found(copy, name):
    path = copy / name
    path.write_text(path.read_text("utf-8").replace("e", "f", 1), "utf-8")
    assert notebooks.stale(copy) == (name,)


def test_what_is_missing_or_left_over_is_found(copy):
    (copy / "09-july.ipynb").unlink()
    (copy / "guide" / "sheets" / "99-gone.md").write_text("# Gone", "utf-8")
    assert notebooks.stale(copy) == ("09-july.ipynb", "guide/sheets/99-gone.md")


def test_a_number_whose_code_has_changed_is_worked_again(copy, monkeypatch):
    """Its output cannot be kept: the file that is written has the new one."""
    path = copy / "00-start.ipynb"
    path.write_text(path.read_text("utf-8").replace("0.40", "0.50"), "utf-8")
    found = notebooks.written(copy, run=False)["00-start.ipynb"]
    assert "dew point of the room: 44.6 °F" in found
    assert notebooks.stale(copy) == ("00-start.ipynb",)


def test_writing_mends_all_of_it(copy, monkeypatch):
    (copy / "09-july.ipynb").unlink()
    (copy / "guide" / "sheets" / "99-gone.md").write_text("# Gone", "utf-8")
    monkeypatch.setattr(notebooks, "output", lambda lesson: notebooks._stored(LESSONS / lesson.file, lesson))
    assert notebooks.write(copy) == (("09-july.ipynb",), ("guide/sheets/99-gone.md",))
    assert notebooks.stale(copy) == ()
    assert not (copy / "guide" / "sheets" / "99-gone.md").exists()


def test_the_command_tells_what_it_wrote_from_what_it_removed(copy, monkeypatch, capsys):
    (copy / "09-july.ipynb").unlink()
    (copy / "98-gone.ipynb").write_text("{}", "utf-8")
    monkeypatch.chdir(copy.parent)
    shutil.copy(CHECKOUT / "README.md", copy.parent)
    monkeypatch.setattr("dryward.cli.lessons._lessons_folder", lambda: copy)
    monkeypatch.setattr(notebooks, "output", lambda lesson: notebooks._stored(LESSONS / lesson.file, lesson))
    assert cli.main(["lessons", "--write"]) == 0
    assert capsys.readouterr().out == "written: lessons/09-july.ipynb\nremoved: lessons/98-gone.ipynb\n"


def test_check_ends_with_1_where_a_file_is_not_as_it_should_be(copy, monkeypatch, capsys):
    monkeypatch.chdir(copy.parent)
    shutil.copy(CHECKOUT / "README.md", copy.parent)
    monkeypatch.setattr("dryward.cli.lessons._lessons_folder", lambda: copy)
    assert cli.main(["lessons", "--check"]) == 0
    (copy / "guide" / "pathways.md").unlink()
    assert cli.main(["lessons", "--check"]) == 1
    assert capsys.readouterr().out.endswith("not as the lesson folders say: lessons/guide/pathways.md\n")


def test_outside_a_checkout_it_says_where_to_type_it(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert cli.main(["lessons", "--write"]) == 2
    assert "Type this in the folder of a checkout" in capsys.readouterr().err


def test_the_predictions_handout_asks_in_the_order_of_the_lessons():
    asked = [each.handout for each in lessons.lessons() if each.handout]
    text = guide.predictions_page()
    assert len(asked) == 7
    assert [text.index(each) for each in asked] == sorted(text.index(each) for each in asked)


@pytest.fixture
def spoken(tmp_path):
    """The made-up language."""
    language.use(made_up.write(tmp_path / "xx"))
    yield tmp_path / "xx"
    language.use(None)
    lessons.forget()


def test_a_notebook_is_written_in_the_language_in_use(spoken):
    for lesson in lessons.lessons():
        for cell in json.loads(notebooks.notebook(lesson, ""))["cells"]:
            text = re.sub(r"\]\([^)]*\)", "]", "".join(cell["source"]))
            if cell["cell_type"] == "markdown":
                assert made_up.unmarked(text) == [], (lesson.id, text)
            elif cell["id"] == "page":
                assert made_up.unmarked(text.splitlines()[0]) == []
    assert made_up.unmarked(re.sub(r"\]\([^)]*\)", "]", notebooks.table())) == []
    assert "⟦dew point of the room:" in notebooks.output(lessons.lesson("start"))


def test_the_words_of_a_lesson_are_laid_over_the_english_ones(spoken):
    english = lessons.read(lessons.COURSE / "july").prediction.right
    (spoken / "course" / "july.toml").write_text('title = "Juli"\n[prediction]\nprompt = "Wo?"\n', "utf-8")
    lessons.forget()
    july = lessons.lesson("july")
    assert (july.title, july.prediction.prompt, july.number) == ("Juli", "Wo?", 9)
    assert july.prediction.right == english
    assert july.takeaway.startswith("For January")


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("number = 3", "number"),
        ('[prediction]\nright = "a"', "prediction.right"),
        ('[[prediction.choices]]\nkey = "z"\ntext = "x"', "choices.key"),
        ('[[prediction.choices]]\nkey = "a"\nbelief = "x"', "choices.belief"),
        ('objectives = "one"', "objectives"),
    ],
)
def test_what_is_no_word_of_a_lesson_is_refused(spoken, text, key):
    (spoken / "course" / "july.toml").write_text(text, "utf-8")
    with pytest.raises(BadFile) as refused:
        lessons.read(lessons.COURSE / "july")
    assert made_up.bare(str(refused.value)).split() == ["july.toml", key]
