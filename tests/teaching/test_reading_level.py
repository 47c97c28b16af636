"""Everything a learner reads stays at or below the eighth grade, by two indexes."""

import re
from pathlib import Path

import nbformat
import pytest
from reading import grades

from dryward.teaching import beliefs, kinds, lessons, practical, questions, words

GRADE = 8.0
GUIDE = sorted((Path(__file__).parents[2] / "lessons" / "guide").rglob("*.md"))
NOTEBOOKS = sorted((Path(__file__).parents[2] / "lessons").glob("*.ipynb"))


def sentence(text):
    """A text that ends like a sentence, so that the next one does not run into it."""
    return text if text.endswith((".", "?", "!")) else f"{text}."


def of_lesson(lesson):
    """What a page of a lesson says."""
    yield from (lesson.question, *lesson.objectives, lesson.prediction.prompt, lesson.prediction.reveal)
    yield from (text for each in lesson.prediction.choices for text in (each.text, each.reply) if text)
    yield from (text for _, text in lesson.still)
    yield from (lesson.takeaway, *lesson.limits)


@pytest.mark.parametrize("lesson", lessons.lessons(), ids=lambda each: each.id)
@pytest.mark.parametrize("system", ["us", "si"])
def test_lessons(lesson, system):
    lesson = lessons.lesson(lesson.id, system)
    assert max(grades(" ".join(map(sentence, of_lesson(lesson))))) <= GRADE


@pytest.mark.parametrize("id", lessons.pages())
def test_checks(id):
    said = []
    for question in questions.checks(id, 2):
        said += [question.prompt, *(each.text for each in question.choices), *(each.reply for each in question.choices)]
        said += {each.hint for each in question.choices if each.hint}
    assert max(grades(" ".join(map(sentence, said)))) <= GRADE


@pytest.mark.parametrize("kind", kinds.KINDS)
def test_kinds(kind):
    question = kinds.draw(kind, 2)
    said = [question.prompt, *(each.text for each in question.choices), *(each.reply for each in question.choices)]
    assert max(grades(" ".join(map(sentence, said)))) <= GRADE


def test_beliefs_cautions_words_and_tasks():
    for each in (*beliefs.beliefs(), *beliefs.slips()):
        said = (each.claim, each.seems, each.right, each.grain or each.right, each.hint)
        assert max(grades(words.shown(" ".join(map(sentence, said))))) <= GRADE + 1, each.id
    assert max(grades(" ".join(each.text for each in words.cautions()))) <= GRADE
    assert max(grades(" ".join(each.meaning for each in words.glossary()))) <= GRADE
    assert max(grades(" ".join(words.shown(each.text) for each in practical.tasks()))) <= GRADE


@pytest.mark.parametrize("page", GUIDE, ids=lambda page: page.stem)
def test_the_guide(page):
    assert max(grades(page.read_text("utf-8"))) <= GRADE


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_notebooks(path):
    cells = nbformat.read(path, as_version=4).cells
    said = "\n\n".join(cell.source for cell in cells if cell.cell_type == "markdown")
    links = re.sub(r"\[([^\]]+)\]\([^)]*\)", r"\1", said)
    assert max(grades(links)) <= GRADE


def test_the_measure_sees_a_hard_text():
    hard = (
        "Hygrothermal characterization of the envelope necessitates simultaneous consideration of convective and "
        "diffusive transport mechanisms notwithstanding considerable uncertainty regarding material properties."
    )
    assert min(grades(hard)) > 14
